//! Swing weight: the moment of a club about a fulcrum, and the letter scale.
//!
//! Definition: `M = Σ mᵢ·(xᵢ − f)`, every place measured from the butt end along the shaft axis. The letter scale is
//! `(M − 161 oz·in) / 1.75 oz·in` points above A0 for the fulcrum at 14 in (from memory, the constants of the trade's
//! scale; apparatus: US patent 1,953,916). The 12-inch moment is `M₁₄ + 2 in × W`, an identity (derived).

mod document;
mod kernel;
mod topic;
mod what_if;

pub use document::{PartInput, SwingWeightInput, SwingWeightOutput};
pub use kernel::{moment_g_in, points_from_oz_in};
pub use topic::{TOPIC, swing_weight};
pub use what_if::{AddedMass, ChangeStep, Effect, GripChange, WhatIf, WhatIfOutput};
