//! What a job's belief must know of the shop's scales: the checks of its days, and which scales are not trusted.

use jiff::Timestamp;
use jiff::civil::Date;
use trade::check_weight::CHECK_WEIGHT;
use trade::scale_event::{CheckRead, ScaleEvent};
use trade::trust::Trust;

/// A check as the belief takes it.
#[derive(Debug, Clone, PartialEq)]
pub struct WatchedCheck {
    /// Identity.
    pub id: String,
    /// Key of the scale.
    pub scale: String,
    /// When.
    pub at: Timestamp,
    /// Who.
    pub by: String,
    /// What was put on and what the scale showed.
    pub read: CheckRead,
}

impl WatchedCheck {
    /// A check among a scale's events.
    #[must_use]
    pub fn of(event: &ScaleEvent, read: &CheckRead) -> Self {
        Self {
            id: event.id.0.clone(),
            scale: event.scale.clone(),
            at: event.at,
            by: event.by.clone(),
            read: read.clone(),
        }
    }

    /// Key of the deviation that all readings of this check weight share: of the shop's own the one that a job's own
    /// readings of it have.
    pub(crate) fn shared_key(&self) -> String {
        if self.read.standard == CHECK_WEIGHT {
            CHECK_WEIGHT.into()
        } else {
            format!("{CHECK_WEIGHT}:{}", self.read.standard)
        }
    }
}

/// The shop's scales as one job sees them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ScaleWatch {
    /// Checks of the job's days that were not read at its own bench.
    pub checks: Vec<WatchedCheck>,
    /// Scales that are not trusted, by key.
    pub not_trusted: Vec<(String, Trust)>,
    /// The days on which the bench reads on the balance scale, by the shop's calendar, with the first moment of each. What
    /// else was read on that scale on such a day has the same offset.
    pub bench_days: Vec<(Date, Timestamp)>,
    /// Whether a night has passed since the last reading or check: what the balance scale shows next, it shows on another day.
    /// See [`Assembly::is_next_day`](crate::assembly::Assembly::is_next_day).
    pub next_day: bool,
}

impl ScaleWatch {
    /// No check, and every scale trusted.
    #[must_use]
    pub const fn nothing() -> &'static Self {
        static NOTHING: ScaleWatch =
            ScaleWatch { checks: Vec::new(), not_trusted: Vec::new(), bench_days: Vec::new(), next_day: false };
        &NOTHING
    }

    /// Why a scale is not trusted; none where it is.
    #[must_use]
    pub fn against(&self, scale: &str) -> Option<&Trust> {
        self.not_trusted.iter().find(|(key, _)| key == scale).map(|(_, trust)| trust)
    }

    /// When the bench began to read on a day; none where it does not read then.
    pub(crate) fn bench_day(&self, day: Date) -> Option<Timestamp> {
        self.bench_days.iter().find(|(on, _)| *on == day).map(|(_, at)| *at)
    }

    /// By how much more a scale may be off than it states itself, one standard deviation; 0 for a trusted one.
    pub(crate) fn extra_sd(&self, scale: &str) -> f64 {
        self.against(scale).map_or(0.0, |trust| trust.extra_sd)
    }
}
