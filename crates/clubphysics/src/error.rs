//! What can be wrong with an input, with the figures a person needs to mend it.

use serde::Serialize;
use thiserror::Error;

/// Why a calculation refused its input or could not finish.
///
/// Every variant names the field as it stands in the JSON document, so that a page can put the message beside the
/// entry and the command line can point at it.
#[derive(Debug, Clone, PartialEq, Error, Serialize)]
#[serde(tag = "problem", rename_all = "snake_case")]
pub enum PhysicsError {
    /// A number is NaN or infinite.
    #[error("{field} is not a finite number: enter a figure in {unit}")]
    NotFinite {
        /// Field as named in the input document.
        field: String,
        /// Unit the field is read in.
        unit: &'static str,
    },
    /// A number is outside what the calculation can take.
    #[error("{field} is {value} {unit}, but must be {bound} {limit} {unit}: {advice}")]
    OutOfRange {
        /// Field as named in the input document.
        field: String,
        /// Value that was given.
        value: f64,
        /// "above", "at least", "below" or "at most".
        bound: Bound,
        /// The limit that was broken.
        limit: f64,
        /// Unit of value and limit.
        unit: &'static str,
        /// What to do next.
        advice: &'static str,
    },
    /// A field that the calculation needs was left out.
    #[error("{field} is missing: {advice}")]
    Missing {
        /// Field as named in the input document.
        field: String,
        /// What to do next.
        advice: &'static str,
    },
    /// Too few entries in a list.
    #[error("{field} has {count} entries, but needs at least {needed}: {advice}")]
    TooFew {
        /// Field as named in the input document.
        field: String,
        /// How many were given.
        count: usize,
        /// How many are needed.
        needed: usize,
        /// What to do next.
        advice: &'static str,
    },
    /// Two inputs contradict each other or do not go together.
    #[error("{what}: {advice}")]
    Contradiction {
        /// What does not fit.
        what: String,
        /// What to do next.
        advice: &'static str,
    },
    /// The document could not be read: an unknown field, a wrong type, a topic that does not exist.
    #[error("{what}: {advice}")]
    Unreadable {
        /// What was found, by name.
        what: String,
        /// What to do next.
        advice: String,
    },
    /// An iteration stopped before it reached its accuracy.
    #[error("{what} did not settle: residual {residual} after {steps} steps; check the figures for a slip of the keys")]
    NotConverged {
        /// Which computation.
        what: &'static str,
        /// Residual at the last step.
        residual: f64,
        /// Steps taken.
        steps: usize,
    },
}

/// Which side of a limit is allowed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bound {
    /// Strictly greater than the limit.
    Above,
    /// The limit or more.
    AtLeast,
    /// Strictly less than the limit.
    Below,
    /// The limit or less.
    AtMost,
}

impl std::fmt::Display for Bound {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Above => "above",
            Self::AtLeast => "at least",
            Self::Below => "below",
            Self::AtMost => "at most",
        })
    }
}
