//! The check weight: what the balance scale is held against.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Name of the shared deviation of the check weight from its own figure, points.
pub const CHECK_WEIGHT: &str = "check_weight";

/// A weight, best shaped like a club, whose swing weight the shop trusts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CheckWeight {
    /// What people call it.
    pub name: String,
    /// What a true scale shows for it, points since A0.
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// How surely that is known: one standard deviation, points.
    #[schema(minimum = 0.001, maximum = 1)]
    pub sd_points: f64,
    /// What the weight itself weighs.
    #[schema(minimum = 50, maximum = 1000)]
    pub mass_g: f64,
}
