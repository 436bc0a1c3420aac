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

/// Runs a calculation topic on the text of a document.
///
/// # Errors
/// As [`run`]; a text that is not JSON, or that gives a field twice.
pub fn run_text(topic: &str, text: &[u8]) -> Result<Value, AppError> {
    Ok(clubphysics::calc::run_text(topic, text)?)
}

/// Runs `pluck` on a recording: a WAV file, or a CSV table of time and one or two axes.
///
/// # Errors
/// Bytes that are no recording, with what to do; a recording that tells nothing.
pub fn pluck(recording: &[u8]) -> Result<Value, AppError> {
    let recording = instrument::read_recording(recording)?;
    let mut axes = recording.axes.into_iter();
    let input = clubphysics::pluck::PluckInput {
        sample_rate_hz: recording.sample_rate_hz,
        axis_1: axes.next().unwrap_or_default(),
        axis_2: axes.next(),
        full_scale: recording.full_scale,
        ..Default::default()
    };
    let input = serde_json::to_value(input).map_err(|e| AppError::Internal(format!("the recording: {e}")))?;
    run("pluck", input)
}
