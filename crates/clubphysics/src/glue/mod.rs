//! The glued joint: how much adhesive, how long it can be worked and must cure, and what the swing asks of it.
//!
//! Definitions: the gap between tip and bore is a ring, `V = π/4·(D² − d²)·depth`. Times by temperature follow
//! Arrhenius, `t(T) = t₁·exp(Ea/R·(1/T − 1/T₁))`, through the two points of the product's own sheet, which always wins.
//! The swing pulls the head with `F = m·v²/r`; the mean shear stress is F over the glued face `π·d·depth`.

mod batch;
mod cure;
mod document;
mod joint;
mod topic;

pub use batch::{BatchInput, BatchOutput, Ratio};
pub use cure::{CureInput, CureOutput, GAS_CONSTANT_J_MOL_K, SheetPoint, SheetReading, relative_rate, time_at};
pub use document::{GlueInput, GlueOutput};
pub use joint::{JointInput, JointOutput, PullInput, PullOutput, gap_volume_mm3, pull_n};
pub use topic::{TOPIC, glue};
