//! The glued joint: how much adhesive, how long it can be worked and must cure, and what the swing asks of it.
//!
//! Definitions: the gap between tip and bore is a ring, `V = π/4·(D² − d²)·depth`; what a joint takes beside it is a stated
//! allowance. What to mix is the need and a spare on top of it, the spacers a share of the whole mix: the bench mixes by
//! the same functions. Times by temperature follow Arrhenius, `t(T) = t₁·exp(Ea/R·(1/T − 1/T₁))`, through one or two points
//! of the product's own sheet, which always wins; beyond its temperatures they are guesses, and said to be.
//! The swing pulls the head with `F = m·v²/r`; the mean shear stress is F over the glued face `π·d·depth`.

mod batch;
mod cure;
mod document;
mod joint;
mod mix;
mod remark;
mod topic;

pub use batch::{BatchInput, BatchOutput, Ratio};
pub use cure::{
    CureInput, CureOutput, GAS_CONSTANT_J_MOL_K, ONE_POINT_ENERGY_KJ_MOL, Reach, SHEET_MARGIN_C, SheetPoint,
    SheetReading, pot_life_share, reach, relative_rate, time_at,
};
pub use document::{GlueInput, GlueOutput};
pub use joint::{JointInput, JointOutput, PullInput, PullOutput, gap_volume_mm3, pull_n};
pub use mix::{Amounts, BEYOND_RING_G, Cups, MIX_LEAST_G, MixFor, SPARE_PERCENT, amounts, cups, work_min};
pub use remark::{CureTime, GlueRemark, PullAssumption, PullReserve};
pub use topic::{TOPIC, glue};
