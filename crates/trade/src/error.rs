//! What the workshop's own rules refuse, in words for the person at the bench.

use clubphysics::plausible::Plausible;
use thiserror::Error;

/// A refusal by the workshop's rules.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum WorkshopError {
    /// A figure is not possible for what it describes.
    #[error("{field} is {value} {unit}: it must lie between {low} and {high} {unit}. {next}")]
    Impossible {
        /// What the figure describes, as named in the document.
        field: String,
        /// Value that was given.
        value: f64,
        /// Lowest possible value.
        low: f64,
        /// Highest possible value.
        high: f64,
        /// Unit of the three.
        unit: &'static str,
        /// What was probably meant, or what to do next.
        next: String,
    },
    /// A text could not be read.
    #[error("{field}: {problem}")]
    Unreadable {
        /// Which entry.
        field: String,
        /// What was read, where it stopped, an example.
        problem: String,
    },
    /// Something named does not exist.
    #[error("there is no {what} “{name}”. {next}")]
    Unknown {
        /// Kind of thing: "head model", "step" …
        what: &'static str,
        /// The name that was given.
        name: String,
        /// What to do next.
        next: String,
    },
    /// The document breaks a rule of the workshop.
    #[error("{what}. {next}")]
    Refused {
        /// What is wrong.
        what: String,
        /// What to do next.
        next: String,
    },
    /// The belief could not be worked out from the figures.
    #[error("the forecast could not be worked out: {0}")]
    Belief(#[from] estimation::EstimationError),
    /// A calculation refused its figures.
    #[error(transparent)]
    Physics(#[from] clubphysics::PhysicsError),
    /// The choice of parts could not be worked out.
    #[error("the plan could not be worked out: {0}")]
    Matching(String),
    /// The program itself is wrong: nothing in what was given is at fault.
    #[error("the program made a mistake: {0}. Nothing was saved. Please report it to the makers of the program")]
    Fault(String),
}

impl WorkshopError {
    /// The field that the message belongs beside, where there is one.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Self::Impossible { field, .. } | Self::Unreadable { field, .. } => Some(field),
            Self::Physics(error) => error.field(),
            _ => None,
        }
    }
}

/// Refuses a figure that is not finite or lies outside what is possible.
///
/// # Errors
/// [`WorkshopError::Impossible`] with the field, the value and the range.
pub fn within(field: &str, value: f64, low: f64, high: f64, unit: &'static str) -> Result<f64, WorkshopError> {
    if value.is_finite() && value >= low && value <= high {
        Ok(value)
    } else {
        let next = CHECK_IT.to_owned();
        Err(WorkshopError::Impossible { field: field.to_owned(), value, low, high, unit, next })
    }
}

/// Refuses a figure that its quantity cannot have, and says which unit it was probably given in. The limits are those of the
/// calculations.
///
/// # Errors
/// [`WorkshopError::Impossible`] with the field, the value and the range.
pub fn plausible(field: &str, value: f64, table: &Plausible) -> Result<f64, WorkshopError> {
    let (low, high) = table.range();
    let refused = within(field, value, low, high, table.unit());
    match (refused, table.meant(value)) {
        (Err(WorkshopError::Impossible { field, value, low, high, unit, .. }), Some(meant)) => {
            let next = meant.replacen("this", "This", 1);
            Err(WorkshopError::Impossible { field, value, low, high, unit, next })
        }
        (other, _) => other,
    }
}

/// What to do about a figure of which no more is known.
pub const CHECK_IT: &str = "Check the figure and its unit";

impl From<matching::MatchError> for WorkshopError {
    fn from(error: matching::MatchError) -> Self {
        match error {
            matching::MatchError::CheckFailed(_) => Self::Fault(error.to_string()),
            _ => Self::Matching(error.to_string()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::WorkshopError;
    use matching::MatchError;

    #[test]
    fn a_failed_check_is_our_mistake_and_a_refusal_is_not() {
        let fault = WorkshopError::from(MatchError::CheckFailed("made to fail".into()));
        assert_eq!(
            fault.to_string(),
            "the program made a mistake: the plan failed its check: made to fail. Nothing was saved. Please report it to \
             the makers of the program"
        );
        assert!(matches!(WorkshopError::from(MatchError::NoClubs), WorkshopError::Matching(_)));
    }
}
