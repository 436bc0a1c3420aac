//! What instruments deliver: recordings of a plucked club.
//!
//! Reading takes bytes and gives samples; where the bytes come from is the caller's business.

pub mod recording;

pub use recording::{Recording, RecordingError, read_csv, read_recording, read_wav};
