//! Scales on a serial line: what a line says, when a value has settled, and the port itself.

mod line;
mod port;
mod settle;

pub use line::{LineFault, LineSaid, Measured, ScaleLine, read_line};
pub use port::{Heard, Ports, ScaleEvent, ScaleSaid, open};
pub use settle::Settler;
