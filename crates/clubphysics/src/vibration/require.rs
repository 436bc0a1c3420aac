//! Standard deviations as they stand in a document.

use crate::check::at_least;
use crate::error::PhysicsError;

/// An optional standard deviation: absent counts as zero, a negative one is refused.
pub(crate) fn deviation(field: &str, value: Option<f64>, unit: &'static str) -> Result<f64, PhysicsError> {
    let advice = "give a standard deviation of zero or more, or leave it out";
    value.map_or(Ok(0.0), |sd| at_least(field, sd, 0.0, unit, advice))
}
