//! Soft side and bow of a shaft from readings around it (topic `soft-side`).
//!
//! Bending stiffness against direction is an ellipse: two cycles a turn. A bow gives one. Both are fitted together, so
//! that one is never taken for the other, and each is tested before a direction is stated.

mod correlated;
mod document;
mod harmonics;
mod readings;
mod shaft;
mod topic;

pub use document::{Finding, Mark, Presence, RestingPlaces, SoftSideInput, SoftSideNote, SoftSideOutput};
pub use topic::{Around, TOPIC, around, soft_side};
