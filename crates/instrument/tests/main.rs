//! Recordings and scales as they come in.

mod printer;
mod recording;
#[cfg(unix)]
mod scale;
