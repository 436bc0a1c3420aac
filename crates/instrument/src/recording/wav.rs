//! WAV files by way of `hound`.

use hound::{SampleFormat, WavReader};

use super::{Recording, RecordingError, SAMPLES_MAX};

/// Axes that a recording may have.
pub(super) const AXES_MAX: usize = 2;

/// Samples below which nothing can be said of a swing.
pub(super) const SAMPLES_MIN: usize = 16;

/// Reads an uncompressed WAV file: whole numbers of 8 to 32 bits, scaled to ±1, or 32-bit float as they are.
///
/// Each channel is an axis.
///
/// # Errors
/// [`RecordingError`] when the file is no such WAV file, has more than two channels, is too short or too long, or
/// holds float samples that are no numbers.
pub fn read_wav(bytes: &[u8]) -> Result<Recording, RecordingError> {
    if bytes.is_empty() {
        return Err(RecordingError::Empty);
    }
    check_header(bytes)?;
    let mut reader = WavReader::new(bytes).map_err(|error| not_wav(&error))?;
    let spec = reader.spec();
    let channels = usize::from(spec.channels);
    if channels == 0 || channels > AXES_MAX {
        return Err(RecordingError::Axes { count: channels, limit: AXES_MAX });
    }
    if spec.sample_rate == 0 {
        return Err(RecordingError::Rate { value_hz: 0.0 });
    }
    let count = reader.len() as usize / channels;
    if count > SAMPLES_MAX {
        return Err(RecordingError::TooLong { limit: SAMPLES_MAX });
    }
    let samples: Vec<f64> = match spec.sample_format {
        SampleFormat::Float => reader.samples::<f32>().map(|sample| sample.map(f64::from)).collect::<Result<_, _>>(),
        SampleFormat::Int => {
            let scale = 2_f64.powi(1 - i32::from(spec.bits_per_sample));
            reader.samples::<i32>().map(|sample| sample.map(|value| f64::from(value) * scale)).collect::<Result<_, _>>()
        }
    }
    .map_err(|error: hound::Error| not_wav(&error))?;
    if let Some(at) = samples.iter().position(|sample| !sample.is_finite()) {
        return Err(RecordingError::NotWav { reason: format!("sample {} is not a finite number", at / channels) });
    }
    let axes: Vec<Vec<f64>> =
        (0..channels).map(|channel| samples.iter().skip(channel).step_by(channels).copied().collect()).collect();
    if axes[0].len() < SAMPLES_MIN {
        return Err(RecordingError::TooShort { count: axes[0].len(), limit: SAMPLES_MIN });
    }
    // Float files may legally exceed one, so their full scale is not known.
    let full_scale = (spec.sample_format == SampleFormat::Int).then_some(1.0);
    Ok(Recording { sample_rate_hz: f64::from(spec.sample_rate), axes, full_scale })
}

/// Looks at the format chunk before the reader divides by its figures.
fn check_header(bytes: &[u8]) -> Result<(), RecordingError> {
    let mut at = 12;
    while let Some(head) = bytes.get(at..at + 8) {
        let size = u32::from_le_bytes([head[4], head[5], head[6], head[7]]) as usize;
        if &head[..4] == b"fmt " {
            let channels = bytes.get(at + 10..at + 12).map_or(0, |two| u16::from_le_bytes([two[0], two[1]]));
            if channels == 0 {
                return Err(RecordingError::Axes { count: 0, limit: AXES_MAX });
            }
            return Ok(());
        }
        // Chunks are padded to even sizes.
        at = match at.checked_add(8 + size + size % 2) {
            Some(next) => next,
            None => break,
        };
    }
    Err(RecordingError::NotWav { reason: "it has no format chunk".to_owned() })
}

fn not_wav(error: &hound::Error) -> RecordingError {
    RecordingError::NotWav { reason: error.to_string() }
}
