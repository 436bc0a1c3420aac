//! Size of a grip on its shaft, and what tape under it does.
//!
//! Definition (the trade's rule): a grip whose core equals the butt has its nominal diameter; a thicker butt, or tape
//! under the grip, adds its own growth: `D = D₀ + (butt − core) + growth·layers`, the growth of a layer being twice its
//! thickness. Source of the rule and of 0.010 in a layer of 0.005 in tape: 'Grip Sizing', D. Eagar 2009; another shop's
//! note says 0.015 in, so the growth can be given. A rubber that keeps its volume grows less; that figure stands beside.

mod document;
mod topic;

pub use document::{GripRemark, GripSizeInput, GripSizeOutput, GripStation, GripStationOutput, TapeInput, TapeOutput};
pub use topic::{TOPIC, diameter_in, diameter_of_kept_volume_in, grip_size};
