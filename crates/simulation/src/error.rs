//! What a simulation refuses.

use fact::Told;

fact::facts! {
    /// Why a simulation could not be run.
    pub enum SimulationError: "simulation" {
        /// A setting out of its range.
        Setting {
            /// Which setting.
            what: Setting,
            /// Value that was given.
            value: f64,
            /// Lowest value.
            low: f64,
            /// Highest value.
            high: f64,
        },
        /// No kind of job that is simulated.
        Kind {
            /// Its key as it was given.
            kind: String,
        },
        /// The advice failed on a simulated job.
        Advice {
            /// Number of the simulated shop, each with its own truth.
            shop: u64,
            /// Job in the shop.
            job: u64,
            /// Which strategy.
            way: String,
            /// What the workshop said.
            what: Told,
        },
        /// A plan left a club of a simulated job without parts.
        Unplanned {
            /// Number of the simulated shop, each with its own truth.
            shop: u64,
            /// Job in the shop.
            job: u64,
            /// Number of the club.
            club: String,
        },
    }
}

fact::facts! {
    /// A setting of a simulation.
    pub enum Setting: "setting" {
        /// How many jobs.
        Jobs,
        /// After how many jobs a shop is known.
        KnownAfter,
        /// The share of blunders.
        Blunders,
        /// The factor of scatter.
        Scatter,
    }
}

/// The form of a log.
impl std::fmt::Display for SimulationError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        fact::Fact::told(self).fmt(f)
    }
}

impl std::error::Error for SimulationError {}
