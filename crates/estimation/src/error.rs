//! What can be wrong with a question or a set of readings.

use crate::club::Role;

/// Why a belief, a forecast or a statistic cannot be given.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum EstimationError {
    /// A number is missing or infinite.
    #[error("{place}: {value} is not a finite number; enter the value again")]
    NotFinite {
        /// Which value.
        place: String,
        /// What was given.
        value: f64,
    },
    /// A number that may not be negative is.
    #[error("{place}: {value} is negative; it must be 0 or more")]
    Negative {
        /// Which value.
        place: String,
        /// What was given.
        value: f64,
    },
    /// A number that must be positive is not.
    #[error("{place}: {value} must be greater than 0")]
    NotPositive {
        /// Which value.
        place: String,
        /// What was given.
        value: f64,
    },
    /// A reading claims to be exact.
    #[error("reading {id}: standard deviation and rounding step are both 0; state how well it was read")]
    ReadingWithoutUncertainty {
        /// The reading.
        id: String,
    },
    /// A reading is so much better than what was known before that the arithmetic would lose the rest.
    #[error(
        "reading {id}: it is {ratio:e} times sharper than what was known before, more than {limit:e}; state its \
         uncertainty less sharply or the prior less widely"
    )]
    TooSharp {
        /// The reading.
        id: String,
        /// Prior standard deviation of what is read over the reading's.
        ratio: f64,
        /// The greatest ratio that is computed.
        limit: f64,
    },
    /// A name was used twice.
    #[error("{what} {key:?} occurs more than once; names must be unique")]
    Duplicate {
        /// Kind of thing.
        what: &'static str,
        /// The name.
        key: String,
    },
    /// A name is not known.
    #[error("{what} {key:?} is not part of this job; it is asked for by {wanted_by}")]
    Unknown {
        /// Kind of thing.
        what: &'static str,
        /// The name.
        key: String,
        /// Who refers to it.
        wanted_by: String,
    },
    /// A quantity of a club was asked for without a club.
    #[error("{wanted_by}: this quantity belongs to a club, but no club is named")]
    ClubMissing {
        /// Who asks.
        wanted_by: String,
    },
    /// The club has no such piece.
    #[error("club {club:?} has no {role}; add the piece or ask for another")]
    NoPiece {
        /// The club.
        club: String,
        /// The role.
        role: Role,
    },
    /// A balance point was asked for where nothing weighs.
    #[error("club {club:?}: {mass_g} g are on the club, so there is no balance point")]
    NothingOnClub {
        /// The club.
        club: String,
        /// Mass at that stage, grams.
        mass_g: f64,
    },
    /// A time lies outside what the drift of a scale covers.
    #[error("scale {scale:?}: {at_h} h lies outside {from_h} to {to_h} h, which its drift covers; extend its knots")]
    OutsideDrift {
        /// The scale.
        scale: String,
        /// The time asked for, hours.
        at_h: f64,
        /// First knot, hours.
        from_h: f64,
        /// Last knot, hours.
        to_h: f64,
    },
    /// A covariance is not one.
    #[error("{place}: not a covariance matrix ({reason}); learn the values anew or set them back")]
    NotCovariance {
        /// Which one.
        place: String,
        /// What is wrong with it.
        reason: String,
    },
    /// The iteration did not settle.
    #[error(
        "the belief did not settle after {iterations} rounds (last step {last_step}); look for a reading typed wrongly by a large factor"
    )]
    NotConverged {
        /// Rounds made.
        iterations: usize,
        /// Largest last change in prior standard deviations.
        last_step: f64,
    },
    /// Too few values for a statistic.
    #[error("{place}: {count} values given, at least {least} are needed")]
    TooFew {
        /// Which statistic.
        place: String,
        /// What was given.
        count: usize,
        /// What is needed.
        least: usize,
    },
    /// Sizes do not fit together.
    #[error("{place}: {found} values where {expected} are expected")]
    Shape {
        /// Which argument.
        place: String,
        /// What was given.
        found: usize,
        /// What is needed.
        expected: usize,
    },
    /// The equations have no single solution.
    #[error("{place}: the values do not determine a single answer; add readings that differ from each other")]
    Singular {
        /// Which computation.
        place: String,
    },
    /// Limits in the wrong order.
    #[error("{place}: lower limit {lower} is not below upper limit {upper}")]
    Limits {
        /// Which limits.
        place: String,
        /// The lower.
        lower: f64,
        /// The upper.
        upper: f64,
    },
}

impl EstimationError {
    /// Refuse what is not finite.
    pub(crate) fn finite(place: impl Fn() -> String, value: f64) -> Result<f64, Self> {
        if value.is_finite() { Ok(value) } else { Err(Self::NotFinite { place: place(), value }) }
    }

    /// Refuse what is not finite or is negative.
    pub(crate) fn not_negative(place: impl Fn() -> String, value: f64) -> Result<f64, Self> {
        Self::finite(&place, value)?;
        if value >= 0.0 { Ok(value) } else { Err(Self::Negative { place: place(), value }) }
    }

    /// Refuse what is not finite or not above zero.
    pub(crate) fn positive(place: impl Fn() -> String, value: f64) -> Result<f64, Self> {
        Self::finite(&place, value)?;
        if value > 0.0 { Ok(value) } else { Err(Self::NotPositive { place: place(), value }) }
    }
}
