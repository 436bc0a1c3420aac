//! What can be wrong with an input, with the figures a person needs to put it right.

use std::borrow::Cow;

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
    #[error("{field} is {}, but must be {bound} {}: {advice}", Figure(*value, unit), Figure(*limit, unit))]
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
        /// What was probably meant, or what to do next.
        advice: Cow<'static, str>,
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
        advice: Cow<'static, str>,
    },
    /// Two inputs contradict each other or do not go together.
    #[error("{what}: {advice}")]
    Contradiction {
        /// What does not fit.
        what: String,
        /// What to do next.
        advice: &'static str,
    },
    /// A value of another kind than the field takes: a text for a number, a list for an object.
    #[error("{field} is {found}, but must be {wanted}: {advice}")]
    WrongKind {
        /// Field as named in the input document.
        field: String,
        /// What was found.
        found: String,
        /// What the field takes.
        wanted: &'static str,
        /// How to write it.
        advice: &'static str,
    },
    /// The document could not be read: an unknown field, a topic that does not exist.
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

impl PhysicsError {
    /// The field that the message belongs beside, as it is named in the document.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Self::NotFinite { field, .. }
            | Self::OutOfRange { field, .. }
            | Self::Missing { field, .. }
            | Self::TooFew { field, .. }
            | Self::WrongKind { field, .. } => Some(field),
            Self::Contradiction { .. } | Self::Unreadable { .. } | Self::NotConverged { .. } => None,
        }
    }
}

/// A figure with its unit, where it has one.
struct Figure<'a>(f64, &'a str);

impl std::fmt::Display for Figure<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.1 {
            "" => Plain(self.0).fmt(f),
            unit => write!(f, "{} {unit}", Plain(self.0)),
        }
    }
}

/// A figure as a person reads it: as it was given where that is short, else to six digits.
///
/// A limit that is worked out may have sixteen digits, of which no one reads more than a few.
pub(crate) struct Plain(pub f64);

impl std::fmt::Display for Plain {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        const SHORT: usize = 9;
        let exact = self.0.to_string();
        if exact.len() <= SHORT || !self.0.is_finite() {
            return f.write_str(&exact);
        }
        let size = self.0.abs();
        if !(1e-6..1e9).contains(&size) {
            return write!(f, "{:.2e}", self.0);
        }
        // Six digits: as many behind the point as those before it leave.
        let before = size.log10().floor() as i32 + 1;
        let rounded = format!("{:.*}", usize::try_from(6 - before).unwrap_or(0), self.0);
        let text = if rounded.contains('.') { rounded.trim_end_matches('0').trim_end_matches('.') } else { &rounded };
        f.write_str(text)
    }
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

impl fact::Fact for PhysicsError {
    fn told(&self) -> fact::Told {
        fact::Told::verbatim(self.to_string())
    }
}

impl PhysicsError {
    /// What is wrong, what to do next and at which field.
    #[must_use]
    pub fn refusal(&self) -> fact::Refusal {
        let refusal = fact::Refusal::new(self);
        match self.field() {
            Some(field) => refusal.at(field),
            None => refusal,
        }
    }
}
