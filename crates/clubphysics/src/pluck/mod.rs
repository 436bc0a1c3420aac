//! The recording of a plucked club (topic `pluck`): frequency, damping, principal planes.
//!
//! A plucked club swings in each principal plane as a decaying tone. One axis of a recording is fitted by one tone, two
//! axes by two tones along perpendicular directions, all by maximum likelihood for white noise: the peak of the
//! spectrum starts a Gauss–Newton iteration in which the amplitudes are solved exactly at each step.

mod bound;
mod damped;
mod document;
mod planes;
mod recording;
mod spectrum;
mod tone;
mod topic;

pub use bound::frequency_bound_hz;
pub use document::{Plane, Planes, PluckInput, PluckNote, PluckOutput};
pub use topic::{TOPIC, pluck};
