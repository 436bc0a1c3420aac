//! Searches for a plan while they run.

/// Where a running search stands.
#[derive(Debug, Clone, Copy)]
pub struct Searching {
    /// Cost of the best plan so far.
    pub cost: f64,
    /// No plan can cost less than this.
    pub bound: f64,
    /// Seconds since it began.
    pub seconds: f64,
}

/// A day's search that goes on beside the requests.
#[derive(Debug, Clone, Copy)]
pub struct DaySearch {
    /// Where it stands.
    pub at: Searching,
    /// How long it was asked to take, s.
    pub asked_s: f64,
}
