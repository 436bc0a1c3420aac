//! What happens to a scale: kept in the order in which it was told, never changed.

use crate::id::{EventId, JobId};
use fact::Told;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use std::collections::HashSet;
use utoipa::ToSchema;

use crate::trust::TrustCause;

/// Something that happened to a scale.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ScaleEvent {
    /// Identity.
    pub id: EventId,
    /// Key of the scale.
    pub scale: String,
    /// When, as it was told.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// When it was kept.
    #[schema(value_type = String, format = DateTime)]
    pub kept_at: Timestamp,
    /// The shop's day of `at`.
    #[schema(value_type = String, format = Date)]
    pub day: Date,
    /// Who.
    pub by: String,
    /// What happened to the scale: a check, a calibration, a loss of trust …
    pub what: Happened,
}

/// A check weight or check club put on a scale.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct CheckRead {
    /// Key of what was put on.
    pub standard: String,
    /// Its name then.
    pub name: String,
    /// The entry as typed.
    pub typed: String,
    /// What the scale showed, in its unit.
    pub reading: f64,
    /// What a true scale shows, same unit.
    pub certified: f64,
    /// How surely: one standard deviation.
    pub certified_sd: f64,
    /// By how much the reading may be off.
    pub tolerance: f64,
    /// Step of the display then.
    pub display_step: f64,
    /// Standard deviation of one reading before rounding, as stated then.
    pub noise_sd: f64,
    /// What was asked before it was kept as it is, where it looked wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept_though: Option<Told>,
    /// The job at whose bench it was read, where it was one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<JobId>,
}

impl CheckRead {
    /// What the scale showed too much; negative for too little.
    #[must_use]
    pub fn error(&self) -> f64 {
        self.reading - self.certified
    }

    /// Whether it lies within its tolerance, allowing for the last digit of a sum of decimals.
    #[must_use]
    pub fn passed(&self) -> bool {
        self.error().abs() <= self.tolerance + 1e-9
    }
}

/// What can happen to a scale.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Happened {
    /// It was checked.
    Check(CheckRead),
    /// A check was wrong and does not count.
    TakenBack {
        /// Identity of the check that was wrong.
        check: EventId,
        /// Why, as it was said.
        reason: Told,
    },
    /// It was calibrated.
    Calibrated {
        /// When.
        #[schema(value_type = String, format = Date)]
        on: Date,
        /// Who calibrated it: a person, or a laboratory's name.
        by_whom: String,
        /// When it is due again.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(value_type = Option<String>, format = Date)]
        next_due: Option<Date>,
        /// Number of the certificate, what was adjusted.
        note: String,
        /// Whether it was adjusted, so that earlier checks no longer count.
        adjusted: bool,
    },
    /// It is no longer trusted.
    Distrusted {
        /// What speaks against it.
        cause: TrustCause,
        /// What was found, or the reason that was given.
        reason: Told,
        /// The check that spoke against it, where one did.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        check: Option<EventId>,
        /// The first day of what speaks against it.
        #[schema(value_type = String, format = Date)]
        since: Date,
        /// What it shows too much, in its unit; 0 where that is not known.
        off_by: f64,
    },
    /// It is trusted again.
    Trusted {
        /// Why, as it was said.
        reason: Told,
        /// The check that it passed; none: on the owner's word.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        check: Option<EventId>,
    },
    /// A new chart begins: the scale was adjusted, moved or repaired.
    NewBase {
        /// Why.
        reason: String,
    },
    /// The scatter that a gauge study found is this scale's stated noise from now on.
    NoiseTaken {
        /// Identity of the gauge study.
        study: String,
        /// Standard deviation now, in the scale's unit.
        noise_sd: f64,
        /// Standard deviation that was stated before it, in the scale's unit.
        before_sd: f64,
    },
}

impl Happened {
    /// The key of its kind.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Check(_) => "check",
            Self::TakenBack { .. } => "taken_back",
            Self::Calibrated { .. } => "calibrated",
            Self::Distrusted { .. } => "distrusted",
            Self::Trusted { .. } => "trusted",
            Self::NewBase { .. } => "new_base",
            Self::NoiseTaken { .. } => "noise_taken",
        }
    }
}

impl ScaleEvent {
    /// The check that it is, if it is one.
    #[must_use]
    pub const fn check(&self) -> Option<&CheckRead> {
        match &self.what {
            Happened::Check(check) => Some(check),
            _ => None,
        }
    }
}

/// The checks that count, in order: not taken back.
#[must_use]
pub fn standing_checks(events: &[ScaleEvent]) -> Vec<(&ScaleEvent, &CheckRead)> {
    let taken_back: HashSet<&EventId> = events
        .iter()
        .filter_map(|e| match &e.what {
            Happened::TakenBack { check, .. } => Some(check),
            _ => None,
        })
        .collect();
    events.iter().filter_map(|e| e.check().map(|c| (e, c))).filter(|(e, _)| !taken_back.contains(&e.id)).collect()
}
