//! The shaft as a spring: frequencies, deflection, calibration and prediction (topic `frequency`).
//!
//! The club is a cantilever clamped over its butt, with the head as a rigid body at the tip. Stiffness and mass come
//! as a table along the raw shaft; trims shorten it before it is clamped. Bending is that of Euler and Bernoulli:
//! no shear, no rotary inertia of the shaft, no damping, no gravity, small slopes.

mod band;
mod beam;
mod chain;
mod clamped;
mod document;
mod figures;
mod line;
pub(crate) mod require;
mod shapes;
mod spread;
mod topic;

pub use beam::{Beam, Mode, RigidTip};
pub use clamped::ClampedMode;
pub use document::{
    Calibration, FrequencyInput, FrequencyOutput, FrequencyRemark, Measured, Prediction, Sensitivity, TipBody, WhatIf,
};
pub use line::{BetweenRows, LineRow, MeasuredFrom, StiffnessLine};
pub use shapes::{BentLine, Shapes, shapes};
pub use topic::{TOPIC, frequency};
