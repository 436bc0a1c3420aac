//! The documents of the trim topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::{Convention, RulesLengthInput, RulesLengthOutput};
use crate::uncertainty::Correlation;

/// Shape of a shaft's tip.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Tip {
    /// Even diameter over the tip: may be trimmed from the tip.
    #[default]
    Parallel,
    /// Tapered to its end: normally cut at the butt only, since a cut changes the fit in the bore.
    Taper,
}

/// A raw shaft and its cuts.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TrimInput {
    /// Mass of the raw shaft in grams.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Length of the raw shaft in millimetres.
    pub length_mm: f64,
    /// Standard deviation of `length_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm_sd: Option<f64>,
    /// Balance point of the raw shaft from its butt end, in millimetres.
    pub balance_point_mm: f64,
    /// Standard deviation of `balance_point_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// Density at places along the shaft, butt end first; scaled and tilted to the three figures above.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass_table: Option<Vec<DensityRow>>,
    /// Steps of the shaft, butt end first; scaled and tilted to the three figures above. Instead of `mass_table`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steps: Option<Vec<StepRow>>,
    /// Shape of the tip; parallel where left out.
    #[serde(default)]
    pub tip: Tip,
    /// Length cut from the tip in millimetres.
    #[serde(default)]
    pub tip_trim_mm: f64,
    /// Standard deviation of `tip_trim_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tip_trim_mm_sd: Option<f64>,
    /// Length cut from the butt in millimetres. Where left out with `finished` given, it follows from the finished length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub butt_trim_mm: Option<f64>,
    /// Standard deviation of `butt_trim_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub butt_trim_mm_sd: Option<f64>,
    /// Set to cut a taper tip all the same.
    #[serde(default)]
    pub allow_taper_tip_trim: bool,
    /// The finished club: the length it is to have, or with `butt_trim_mm` given, what lies between shaft and length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub finished: Option<FinishedInput>,
    /// Correlations between inputs that have standard deviations.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// Density of the shaft at a place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DensityRow {
    /// Place from the butt end in millimetres.
    pub position_mm: f64,
    /// Mass a length there, in grams a metre.
    pub density_g_m: f64,
}

/// One step of a stepped shaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StepRow {
    /// Length of the step in millimetres, above 0.
    pub length_mm: f64,
    /// Mass of the step in grams, at least 0.
    pub mass_g: f64,
}

/// What ties the cut shaft to the length of the finished club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FinishedInput {
    /// Length of the finished club along the shaft axis from the ground line; leave out where `butt_trim_mm` is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm: Option<f64>,
    /// Where that length ends at the grip.
    pub convention: Convention,
    /// Thickness of the grip's cap in millimetres.
    pub cap_mm: f64,
    /// Standard deviation of `cap_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cap_mm_sd: Option<f64>,
    /// From the bottom of the bore to the ground line along the axis, in millimetres: a property of the head.
    pub bore_to_ground_mm: f64,
    /// Standard deviation of `bore_to_ground_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bore_to_ground_mm_sd: Option<f64>,
    /// Gap left between tip end and bottom of the bore, in millimetres.
    #[serde(default)]
    pub off_bottom_mm: f64,
    /// Depth of the bore in millimetres: how much of the tip must be prepared.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bore_depth_mm: Option<f64>,
    /// Geometry for the length by the rules' 60-degree plane.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rules: Option<RulesLengthInput>,
}

/// The shaft after its cuts.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct TrimOutput {
    /// Mass of the cut shaft in grams.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Length of the cut shaft in millimetres.
    pub length_mm: f64,
    /// Standard deviation of `length_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_mm_sd: Option<f64>,
    /// Balance point of the cut shaft from its new butt end, in millimetres.
    pub balance_point_mm: f64,
    /// Standard deviation of `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// Inertia of the cut shaft about its own centre of mass, in kg·cm².
    pub inertia_about_centre_kg_cm2: f64,
    /// Standard deviation of `inertia_about_centre_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_centre_kg_cm2_sd: Option<f64>,
    /// What comes off at the tip.
    pub tip_piece: TrimmedPiece,
    /// What comes off at the butt.
    pub butt_piece: TrimmedPiece,
    /// Mass line of the raw shaft, butt end first.
    pub raw_mass_line: Vec<MassLinePiece>,
    /// Mass line of the cut shaft, from its new butt end.
    pub mass_line: Vec<MassLinePiece>,
    /// Lengths of the finished club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finished: Option<FinishedOutput>,
    /// What to think about before the saw is used.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<TrimRemark>,
}

/// A piece cut off.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct TrimmedPiece {
    /// Length of the piece in millimetres; 0 where nothing was cut.
    pub length_mm: f64,
    /// Standard deviation of `length_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_mm_sd: Option<f64>,
    /// Mass of the piece in grams.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
}

/// A piece of a mass line, straight from one end to the other.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct MassLinePiece {
    /// Where it starts, from the butt end, in millimetres.
    pub from_mm: f64,
    /// Where it ends, in millimetres.
    pub to_mm: f64,
    /// Density at its start in grams a metre.
    pub from_g_m: f64,
    /// Density at its end in grams a metre.
    pub to_g_m: f64,
}

/// Lengths of the finished club, all along the shaft axis from the ground line unless said otherwise.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct FinishedOutput {
    /// Length to the end of the shaft, in millimetres.
    pub to_shaft_end_mm: f64,
    /// Standard deviation of `to_shaft_end_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_shaft_end_mm_sd: Option<f64>,
    /// Length to the end of the grip's cap, in millimetres.
    pub to_cap_mm: f64,
    /// Standard deviation of `to_cap_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_cap_mm_sd: Option<f64>,
    /// Length of tip inside the bore, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub insertion_mm: Option<f64>,
    /// Length by the rules' 60-degree plane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rules: Option<RulesLengthOutput>,
}

fact::facts! {
    /// What to think about before the saw is used.
    pub enum TrimRemark: "trim_remark" {
        /// Something is cut from a taper tip.
        TaperTipCut {
            /// How much, millimetres.
            tip_trim_mm: f64,
        },
    }
}
