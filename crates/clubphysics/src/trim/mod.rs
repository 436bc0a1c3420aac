//! Trimming a shaft: mass, balance point and mass line after the cut, and the cut that gives a finished length.
//!
//! All places are measured along the shaft axis from the butt end. A club's length L starts where the shaft axis meets
//! the ground line.

mod document;
mod finished;
mod mass_line;
mod rules_length;
mod shaft;
mod topic;

pub use document::{
    DensityRow, FinishedInput, FinishedOutput, MassLinePiece, StepRow, Tip, TrimInput, TrimOutput, TrimRemark,
    TrimmedPiece,
};
pub use finished::{Convention, FinishedLength};
pub use mass_line::{MassLine, Segment};
pub use rules_length::{RulesLengthInput, RulesLengthOutput, beyond_axis_length_mm};
pub use shaft::Shaft;
pub use topic::{TOPIC, trim};
