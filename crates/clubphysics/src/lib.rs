//! The physics of a golf club: pure functions, no I/O, no clock.

pub mod error;

pub use error::{Bound, PhysicsError};
