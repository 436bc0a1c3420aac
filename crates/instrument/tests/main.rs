//! Recordings and scales as they come in.

mod recording;
#[cfg(unix)]
mod scale;
