//! Standard deviations as they stand in a document.

use crate::advice::Advice;
use crate::check::at_least;
use crate::error::PhysicsError;

/// An optional standard deviation: absent counts as zero, a negative one is refused.
pub(crate) fn deviation(field: &str, value: Option<f64>, unit: &'static str) -> Result<f64, PhysicsError> {
    let advice = Advice::DeviationZeroOrMore;
    value.map_or(Ok(0.0), |sd| at_least(field, sd, 0.0, unit, advice))
}
