//! What can be wrong with an input, with the figures a person needs to put it right.

use crate::advice::{Advice, Clash, Found, ReadFault, Settling, Wanted};
use fact::{Fact, Figure, Measure, Refusal, Told};
use serde::Serialize;

/// Why a calculation refused its input or could not finish.
///
/// Every variant names the field as it stands in the JSON document, so that a page can put the message beside the
/// entry and the command line can point at it.
#[derive(Debug, Clone, PartialEq)]
pub enum PhysicsError {
    /// A number is NaN or infinite.
    NotFinite {
        /// Field as named in the input document.
        field: String,
        /// Sign of the unit the field is read in; empty where it has none.
        unit: &'static str,
    },
    /// A number is outside what the calculation can take.
    OutOfRange {
        /// Field as named in the input document.
        field: String,
        /// Value that was given.
        value: f64,
        /// On which side of the limit it must be.
        bound: Bound,
        /// The limit that was broken.
        limit: f64,
        /// Sign of the unit of value and limit; empty where they have none.
        unit: &'static str,
        /// What was probably meant, or what to do next.
        advice: Box<Advice>,
    },
    /// A field that the calculation needs was left out.
    Missing {
        /// Field as named in the input document.
        field: String,
        /// What to do next.
        advice: Box<Advice>,
    },
    /// Too few entries in a list.
    TooFew {
        /// Field as named in the input document.
        field: String,
        /// How many were given.
        count: usize,
        /// How many are needed.
        needed: usize,
        /// What to do next.
        advice: Box<Advice>,
    },
    /// Two inputs contradict each other or do not go together.
    Contradiction {
        /// What does not fit.
        what: Clash,
        /// What to do next.
        advice: Box<Advice>,
    },
    /// A value of another kind than the field takes: a text for a number, a list for an object.
    WrongKind {
        /// Field as named in the input document.
        field: String,
        /// What stands in the field.
        found: Found,
        /// What the field takes.
        wanted: Wanted,
    },
    /// The document could not be read: an unknown field, a topic that does not exist.
    Unreadable {
        /// What was found, by name.
        what: ReadFault,
        /// What to do next.
        advice: Box<Advice>,
    },
    /// An iteration stopped before it reached its accuracy.
    NotConverged {
        /// Which computation.
        what: Settling,
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

impl fact::ToFigure for Bound {
    fn to_figure(&self) -> Figure {
        let key = match self {
            Self::Above => "above",
            Self::AtLeast => "at_least",
            Self::Below => "below",
            Self::AtMost => "at_most",
        };
        Figure::Fact(Told::of_list("Bound", key))
    }
}

impl Fact for PhysicsError {
    fn told(&self) -> Told {
        match self {
            Self::NotFinite { field, unit } => {
                let unit = Some(*unit).filter(|unit| !unit.is_empty());
                Told::new("calc_refused.not_finite").with("field", field).with("unit", &unit)
            }
            Self::OutOfRange { field, value, bound, limit, unit, .. } => {
                let of = |value: &f64| Measure::new(*value, unit);
                let told = Told::new("calc_refused.out_of_range").with("field", field).with("value", &of(value));
                told.with("bound", bound).with("limit", &of(limit))
            }
            Self::Missing { field, .. } => Told::new("calc_refused.missing").with("field", field),
            Self::TooFew { field, count, needed, .. } => {
                Told::new("calc_refused.too_few").with("field", field).with("n", count).with("needed", needed)
            }
            Self::Contradiction { what, .. } => what.told(),
            Self::WrongKind { field, found, wanted } => {
                Told::new("calc_refused.wrong_kind").with("field", field).with("found", found).with("what", wanted)
            }
            Self::Unreadable { what, .. } => what.told(),
            Self::NotConverged { what, residual, steps } => {
                let told = Told::new("calc_refused.not_converged").with("what", what);
                told.with("residual", residual).with("n", steps)
            }
        }
    }
}

impl PhysicsError {
    /// What is wrong, what to do next and at which field.
    #[must_use]
    pub fn refusal(&self) -> Refusal {
        let refusal = Refusal::new(self);
        let refusal = match self {
            Self::OutOfRange { advice, .. }
            | Self::Missing { advice, .. }
            | Self::TooFew { advice, .. }
            | Self::Contradiction { advice, .. }
            | Self::Unreadable { advice, .. } => refusal.next(&**advice),
            Self::NotFinite { .. } | Self::WrongKind { .. } | Self::NotConverged { .. } => refusal,
        };
        match self.field() {
            Some(field) => refusal.at(field),
            None => refusal,
        }
    }
}

impl From<PhysicsError> for fact::Refusal {
    fn from(error: PhysicsError) -> Self {
        error.refusal()
    }
}

/// The form of a log.
impl std::fmt::Display for PhysicsError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.refusal().fmt(f)
    }
}

impl std::error::Error for PhysicsError {}
