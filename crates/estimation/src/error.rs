//! What can be wrong with a question or a set of readings.

use crate::club::Role;

fact::facts! {
    /// Why a belief, a forecast or a statistic cannot be given.
    #[non_exhaustive]
    pub enum EstimationError: "estimation" {
        /// A number is missing or infinite.
        NotFinite {
            /// Which value of the document.
            place: String,
            /// What was given.
            value: f64,
        },
        /// A number that may not be negative is.
        Negative {
            /// Which value of the document.
            place: String,
            /// What was given.
            value: f64,
        },
        /// A number that must be positive is not.
        NotPositive {
            /// Which value of the document.
            place: String,
            /// What was given.
            value: f64,
        },
        /// A reading claims to be exact.
        ReadingWithoutUncertainty {
            /// The reading.
            id: String,
        },
        /// A reading is so much better than what was known before that the arithmetic would lose the rest.
        TooSharp {
            /// The reading.
            id: String,
            /// Prior standard deviation of what is read over the reading's.
            ratio: f64,
            /// The greatest ratio that is computed.
            limit: f64,
        },
        /// A name was used twice.
        Duplicate {
            /// The list of the document.
            what: &'static str,
            /// The name.
            key: String,
        },
        /// A name is not known.
        Unknown {
            /// The list of the document.
            what: &'static str,
            /// The name.
            key: String,
            /// Who refers to it.
            wanted_by: String,
        },
        /// A quantity of a club was asked for without a club.
        ClubMissing {
            /// Who asks.
            wanted_by: String,
        },
        /// The club has no such piece.
        NoPiece {
            /// Key of the club in the model of the job.
            club: String,
            /// Which sort of piece it lacks: head, shaft, grip …
            role: Role,
        },
        /// A quantity was to be taken off that belongs to a club with deviations of its own.
        OwnDeviations {
            /// Key of that club in the model of the job.
            club: String,
            /// What asked for it.
            wanted_by: String,
        },
        /// A balance point was asked for where nothing weighs.
        NothingOnClub {
            /// Key of the club in the model of the job.
            club: String,
            /// Mass at that stage, grams.
            mass_g: f64,
        },
        /// A club does not hang from a pivot that is beyond its balance point: it would turn over.
        NothingHangs {
            /// Key of the club in the model of the job.
            club: String,
            /// The pivot, from the end that sits on the stop, inches.
            pivot_in: f64,
        },
        /// A time lies outside what the drift of a scale covers.
        OutsideDrift {
            /// Key of the scale in the model of the job.
            scale: String,
            /// The time asked for, hours.
            at_h: f64,
            /// First knot, hours.
            from_h: f64,
            /// Last knot, hours.
            to_h: f64,
        },
        /// A covariance is not one.
        NotCovariance {
            /// Which one.
            place: String,
            /// What is wrong with it.
            reason: CovarianceFault,
        },
        /// The iteration did not settle.
        NotConverged {
            /// Rounds made.
            iterations: usize,
            /// Largest last change in prior standard deviations.
            last_step: f64,
        },
        /// Too few values for a statistic.
        TooFew {
            /// Which statistic.
            place: String,
            /// What was given.
            count: usize,
            /// What is needed.
            least: usize,
        },
        /// Sizes do not fit together.
        Shape {
            /// Which argument.
            place: String,
            /// What was given.
            found: usize,
            /// What is needed.
            expected: usize,
        },
        /// The equations have no single solution.
        Singular {
            /// Which computation.
            place: String,
        },
        /// A figure outside of what it can be.
        Outside {
            /// Which value of the document.
            place: String,
            /// What was given.
            value: f64,
            /// Least.
            low: f64,
            /// Greatest.
            high: f64,
        },
        /// Limits in the wrong order.
        Limits {
            /// Which limits.
            place: String,
            /// The limit that should be the lower one.
            lower: f64,
            /// The limit that should be the upper one.
            upper: f64,
        },
    }
}

fact::facts! {
    /// Why a table of figures is not a covariance.
    pub enum CovarianceFault: "covariance" {
        /// A variance below zero.
        NegativeVariance {
            /// The variance.
            value: f64,
            /// Its row, from 1.
            row: usize,
        },
        /// Two entries that should be the same.
        NotSymmetric {
            /// Row, from 1.
            row: usize,
            /// Column, from 1.
            column: usize,
        },
        /// Some combination of the values would have a variance below zero.
        NotPositive,
    }
}

/// The form of a log.
impl std::fmt::Display for EstimationError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        fact::Fact::told(self).fmt(f)
    }
}

impl std::error::Error for EstimationError {}

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
