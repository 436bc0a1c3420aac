//! The documents of the swing weight topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::{WhatIf, WhatIfOutput};
use crate::plausible::PartsRemark;
use crate::uncertainty::Correlation;

/// A club whose swing weight is asked: either weighed and balanced whole, or part by part.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct SwingWeightInput {
    /// Mass of the whole club in grams; goes with `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g: Option<f64>,
    /// Standard deviation of `total_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g_sd: Option<f64>,
    /// Balance point of the whole club from the butt end, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm: Option<f64>,
    /// Standard deviation of `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// The parts of the club, instead of the two figures above.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parts: Option<Vec<PartInput>>,
    /// Standard deviation of an error that the masses of all parts share, as of a drifting scale, in grams.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_mass_g_sd: Option<f64>,
    /// Standard deviation of an error that the places of all parts share, as of a butt stop, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shared_position_mm_sd: Option<f64>,
    /// Correlations between inputs that have standard deviations.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
    /// Distance of the fulcrum from the butt end in inches; 14 where left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fulcrum_in: Option<f64>,
    /// A change to try.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub what_if: Option<WhatIf>,
}

/// One part of a club.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PartInput {
    /// What it is, in the shop's words; only a part named `grip` is treated as one.
    #[serde(default)]
    pub name: String,
    /// Mass in grams, up to 4000.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Place of its centre of mass from the butt end, in millimetres.
    pub position_mm: f64,
    /// Standard deviation of `position_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub position_mm_sd: Option<f64>,
}

/// The swing weight of a club. Standard deviations are there where inputs had them.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SwingWeightOutput {
    /// Fulcrum that moment and points are about, in inches from the butt end.
    pub fulcrum_in: f64,
    /// Moment about the fulcrum in ounce inches.
    pub moment_oz_in: f64,
    /// Standard deviation of `moment_oz_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moment_oz_in_sd: Option<f64>,
    /// Moment about the fulcrum in gram centimetres.
    pub moment_g_cm: f64,
    /// Standard deviation of `moment_g_cm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moment_g_cm_sd: Option<f64>,
    /// Letter form. The scale is that of a 14-inch fulcrum; at another fulcrum it is the letter of this moment.
    pub letter: String,
    /// Points above A0, of this moment.
    pub points: f64,
    /// Standard deviation of `points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub points_sd: Option<f64>,
    /// Mass of the whole club in grams.
    pub total_mass_g: f64,
    /// Standard deviation of `total_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g_sd: Option<f64>,
    /// Balance point from the butt end in millimetres.
    pub balance_point_mm: f64,
    /// Standard deviation of `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// Moment about a fulcrum at 12 in, the older scale, in ounce inches.
    pub moment_12_in_oz_in: f64,
    /// Standard deviation of `moment_12_in_oz_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moment_12_in_oz_in_sd: Option<f64>,
    /// The change that was tried.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub what_if: Option<WhatIfOutput>,
    /// What looks odd about the input without being impossible.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<PartsRemark>,
}
