//! What instruments deliver and take: recordings of a plucked club, values of scales on a serial line, labels for a printer.
//!
//! Reading a recording takes bytes and gives samples; where the bytes come from is the caller's business.

pub mod printer;
pub mod recording;
pub mod scale;

pub use recording::{Recording, RecordingError, read_csv, read_recording, read_wav};
