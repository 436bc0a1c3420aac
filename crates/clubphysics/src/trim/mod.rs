//! Trimming a shaft: mass, balance point and mass line after the cut, and the cut that gives a finished length.
//!
//! All places are measured along the shaft axis from the butt end. A club's length L starts where the shaft axis meets
//! the ground line.

mod finished;
mod mass_line;
mod shaft;

pub use finished::{Convention, FinishedLength};
pub use mass_line::{MassLine, Segment};
pub use shaft::Shaft;
