//! Calculations by name: the same for the library, the command line, the API and the pages.

use crate::AppError;
use serde_json::Value;

/// Runs a calculation topic.
///
/// # Errors
/// An unknown topic, an unknown field, figures that the calculation refuses.
pub fn run(topic: &str, input: Value) -> Result<Value, AppError> {
    Ok(clubphysics::calc::run(topic, input)?)
}
