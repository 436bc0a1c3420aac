//! Calculations by name: the same for the library, the command line, the API and the pages.

use crate::lanes::Lane;
use crate::{App, AppError};
use serde_json::Value;

/// Runs a calculation topic.
///
/// # Errors
/// An unknown topic, an unknown field, figures that the calculation refuses.
pub fn run(topic: &str, input: Value) -> Result<Value, AppError> {
    Ok(clubphysics::calc::run(topic, input)?)
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

impl App {
    /// [`run`] for a server: beside the threads that answer pages.
    ///
    /// # Errors
    /// As [`run`].
    pub async fn calculate(&self, topic: &str, input: Value) -> Result<Value, AppError> {
        self.on_lane(Lane::Desk, || run(topic, input)).await
    }

    /// [`pluck`] for a server: beside the threads that answer pages.
    ///
    /// # Errors
    /// As [`pluck`].
    pub async fn calculate_pluck(&self, recording: &[u8]) -> Result<Value, AppError> {
        self.on_lane(Lane::Desk, || pluck(recording)).await
    }
}
