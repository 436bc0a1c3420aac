//! Recordings of motion over time, one or two axes, from WAV or CSV.

mod csv_table;
mod error;
mod wav;

pub use csv_table::read_csv;
pub use error::RecordingError;
pub use wav::read_wav;

/// Most samples an axis may have: ten minutes of a sound card, far beyond any pluck.
pub const SAMPLES_MAX: usize = 30_000_000;

/// Evenly spaced samples of one or two axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Recording {
    /// Samples per second, Hz.
    pub sample_rate_hz: f64,
    /// The axes, one or two, of equal length. Whole-number WAV samples are scaled to ±1; CSV figures are as written.
    pub axes: Vec<Vec<f64>>,
    /// Largest size a sample can have, where the format knows it.
    pub full_scale: Option<f64>,
}

impl Recording {
    /// Length of the recording, seconds.
    #[must_use]
    pub fn duration_s(&self) -> f64 {
        self.axes.first().map_or(0, Vec::len) as f64 / self.sample_rate_hz
    }
}

/// Reads a WAV or CSV recording, told apart by its first bytes.
///
/// # Errors
/// As [`read_wav`] and [`read_csv`].
pub fn read_recording(bytes: &[u8]) -> Result<Recording, RecordingError> {
    // Every WAV file starts so; no table of numbers does.
    if bytes.starts_with(b"RIFF") { read_wav(bytes) } else { read_csv(bytes) }
}
