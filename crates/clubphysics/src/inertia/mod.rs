//! Inertia of a club: about its butt, about any axis across the shaft, from its parts or from a pendulum's period.
//!
//! Definition: `I = Σ (m·d² + I_own)`, d from the axis (parallel axes). A pendulum on a pivot gives
//! `I_pivot = m·g·d·T²/4π²` with d from the pivot to the balance point; a wide swing takes longer, by `θ²/16` to begin
//! with (from memory, the pendulum's elliptic integral).

mod document;
mod kernel;
mod series;
mod topic;

pub use document::{InertiaInput, InertiaOutput, InertiaPart, PendulumInput, PendulumOutput};
pub use kernel::{amplitude_factor, inertia_g_mm2, pendulum_inertia_kg_m2, pendulum_period_s};
pub use series::{SeriesInput, SeriesRow, ShaftLaw};
pub use topic::{TOPIC, inertia};
