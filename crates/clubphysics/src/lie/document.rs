//! The documents of the lie topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::uncertainty::Correlation;

/// Questions about lie and loft; any of them may be asked.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct LieInput {
    /// What does a change of length do to the lie?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Option<LengthInput>,
    /// What does an error of lie do to the aim?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<AimInput>,
    /// How is the head bent to its lie or loft within the maker's limit?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bend: Option<BendInput>,
    /// Correlations between inputs that have standard deviations.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// A change of length with the hands at their height.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LengthInput {
    /// Lie angle in degrees at the present length.
    pub lie_deg: f64,
    /// Standard deviation of `lie_deg`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie_deg_sd: Option<f64>,
    /// Present length along the shaft axis in millimetres.
    pub length_mm: f64,
    /// Standard deviation of `length_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm_sd: Option<f64>,
    /// New length along the shaft axis in millimetres, measured as `length_mm` is.
    pub new_length_mm: f64,
    /// Standard deviation of `new_length_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub new_length_mm_sd: Option<f64>,
    /// From the butt end down to the hands in millimetres; nothing keeps the butt end at its height.
    #[serde(default)]
    pub hands_below_butt_mm: f64,
}

/// An error of lie.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AimInput {
    /// Loft in degrees from the vertical, −10 to 85.
    pub loft_deg: f64,
    /// Standard deviation of `loft_deg`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub loft_deg_sd: Option<f64>,
    /// Error of the lie in degrees, positive too upright.
    pub lie_error_deg: f64,
    /// Standard deviation of `lie_error_deg`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie_error_deg_sd: Option<f64>,
    /// Distance to the target in metres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub distance_m: Option<f64>,
}

/// A head to be bent.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BendInput {
    /// Lie as measured, in degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie_deg: Option<f64>,
    /// Lie wanted, in degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wanted_lie_deg: Option<f64>,
    /// Loft as measured, in degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub loft_deg: Option<f64>,
    /// Loft wanted, in degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wanted_loft_deg: Option<f64>,
    /// Bounce as measured, in degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bounce_deg: Option<f64>,
    /// The maker's limit for bending this head either way, in degrees. There is no safe figure for all heads.
    pub limit_deg: f64,
    /// What this head has been bent in lie before, in degrees, upright positive.
    #[serde(default)]
    pub already_bent_lie_deg: f64,
    /// What this head has been bent in loft before, in degrees, weaker positive.
    #[serde(default)]
    pub already_bent_loft_deg: f64,
    /// Most to bend between two measurements, in degrees; 1 where left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step_deg: Option<f64>,
    /// Set to see the steps beyond the maker's limit all the same.
    #[serde(default)]
    pub allow_beyond_limit: bool,
}

/// Answers about lie and loft.
#[derive(Debug, Clone, Default, PartialEq, Serialize, ToSchema)]
pub struct LieOutput {
    /// What the length does to the lie.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Option<LengthOutput>,
    /// What the lie does to the aim.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<AimOutput>,
    /// How to bend.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bend: Option<BendOutput>,
}

/// Lie at the new length.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct LengthOutput {
    /// Lie that keeps the hands at their height, in degrees.
    pub lie_deg: f64,
    /// Standard deviation of `lie_deg`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lie_deg_sd: Option<f64>,
    /// Change of the lie in degrees, upright positive.
    pub change_deg: f64,
    /// Standard deviation of `change_deg`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_deg_sd: Option<f64>,
    /// The change by the first-order rule −tan(lie)·ΔL/(L − hands), in degrees, for comparison.
    pub first_order_change_deg: f64,
    /// Standard deviation of `first_order_change_deg`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_order_change_deg_sd: Option<f64>,
}

/// Where the ball starts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct AimOutput {
    /// Error of aim in degrees, positive toward the heel's side.
    pub aim_error_deg: f64,
    /// Standard deviation of `aim_error_deg`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim_error_deg_sd: Option<f64>,
    /// What that is at the distance, in metres, flight straight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset_m: Option<f64>,
    /// Standard deviation of `offset_m`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset_m_sd: Option<f64>,
}

/// How to bend, and what else moves.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct BendOutput {
    /// Change of lie in degrees, upright positive.
    pub lie_change_deg: f64,
    /// Change of loft in degrees, weaker positive.
    pub loft_change_deg: f64,
    /// Room left to the maker's limit after bending, in degrees, the smaller of lie and loft; negative is beyond it.
    pub left_to_limit_deg: f64,
    /// What the loft does to the bounce.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bounce: Option<BounceOutput>,
    /// Readings to bend to, one after the other, measuring after each.
    pub steps: Vec<BendStep>,
    /// What to think about before the bar is used.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<BendRemark>,
}

/// Bounce after the loft is bent.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct BounceOutput {
    /// Bounce afterwards, in degrees.
    pub bounce_deg: f64,
    /// Change of the bounce in degrees: that of the loft.
    pub change_deg: f64,
}

/// A reading to bend to.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct BendStep {
    /// Lie to reach, in degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lie_deg: Option<f64>,
    /// Loft to reach, in degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loft_deg: Option<f64>,
}

fact::facts! {
    /// What to think about before the bar is used.
    pub enum BendRemark: "bend_remark" {
        /// The bend is beyond the maker's limit.
        BeyondLimit {
            /// How far beyond, degrees.
            by_deg: f64,
            /// The limit, degrees.
            limit_deg: f64,
        },
    }
}
