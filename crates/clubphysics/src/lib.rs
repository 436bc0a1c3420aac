//! The physics of a golf club: pure functions, no I/O, no clock.
//!
//! Each topic is a module with an input and an output document, a function between them, and plain `f64` kernels below
//! for callers that hold their own figures. [`calc`] offers all topics by name over JSON.

pub mod advice;
pub mod calc;
mod check;
pub mod error;
pub mod glue;
pub mod grip_size;
pub mod inertia;
pub mod lie;
pub mod plausible;
pub mod pluck;
pub mod real;
pub mod slip;
pub mod soft_side;
pub mod stiffness_profile;
pub mod swing_weight;
mod topic;
pub mod trim;
pub mod uncertainty;
pub mod vibration;

pub use error::{Bound, PhysicsError};
