//! The documents of the inertia topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::{SeriesInput, SeriesRow};
use crate::plausible::PartsRemark;
use crate::uncertainty::Correlation;

/// A club by its parts, a pendulum reading, a series of lengths: any of the three.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct InertiaInput {
    /// The parts of the club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub parts: Option<Vec<InertiaPart>>,
    /// A reading of the swinging club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pendulum: Option<PendulumInput>,
    /// Head masses that match a series of lengths to this club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub series: Option<SeriesInput>,
    /// Axis asked for, from the butt end along the shaft, in millimetres; the butt end where left out.
    pub axis_mm: f64,
    /// Gravity in m/s²; 9.80665 where left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gravity_m_s2: Option<f64>,
    /// Correlations between inputs that have standard deviations.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// A part of a club with its spread. Without `length_mm` or `own_inertia_kg_cm2` it is a point.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct InertiaPart {
    /// What it is, in the shop's words; the calculation does not look at it.
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
    /// Length of a part that is like an even rod, in millimetres: its own inertia is mL²/12.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm: Option<f64>,
    /// Its inertia about its own centre in kg·cm², instead of `length_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub own_inertia_kg_cm2: Option<f64>,
    /// Standard deviation of `own_inertia_kg_cm2`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub own_inertia_kg_cm2_sd: Option<f64>,
}

/// A club swinging on a pivot.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PendulumInput {
    /// Time of one full swing, there and back, in seconds.
    pub period_s: f64,
    /// Standard deviation of `period_s`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub period_s_sd: Option<f64>,
    /// Mass of the club in grams.
    pub total_mass_g: f64,
    /// Standard deviation of `total_mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub total_mass_g_sd: Option<f64>,
    /// Balance point from the butt end in millimetres.
    pub balance_point_mm: f64,
    /// Standard deviation of `balance_point_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// Pivot from the butt end toward the head, in millimetres; negative beyond the butt.
    #[serde(default)]
    pub pivot_mm: f64,
    /// Standard deviation of `pivot_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pivot_mm_sd: Option<f64>,
    /// Greatest angle from the vertical in degrees; nothing means swings too small to matter.
    #[serde(default)]
    pub amplitude_deg: f64,
    /// Standard deviation of `amplitude_deg`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amplitude_deg_sd: Option<f64>,
}

/// Inertia of a club. What was not asked for is left out; standard deviations are there where inputs had them.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct InertiaOutput {
    /// Mass of the whole club in grams, from its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g: Option<f64>,
    /// Standard deviation of `total_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g_sd: Option<f64>,
    /// Balance point from the butt end in millimetres, from its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm: Option<f64>,
    /// Standard deviation of `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// Inertia about the butt end in kg·cm², from its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_butt_kg_cm2: Option<f64>,
    /// Standard deviation of `inertia_about_butt_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_butt_kg_cm2_sd: Option<f64>,
    /// Inertia about the axis asked for, in kg·cm², from its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_axis_kg_cm2: Option<f64>,
    /// Standard deviation of `inertia_about_axis_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_axis_kg_cm2_sd: Option<f64>,
    /// Inertia about the balance point in kg·cm², from its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_balance_point_kg_cm2: Option<f64>,
    /// Standard deviation of `inertia_about_balance_point_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_balance_point_kg_cm2_sd: Option<f64>,
    /// Period of small swings on the axis asked for, in seconds; left out where the club has no arm about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub period_s: Option<f64>,
    /// Standard deviation of `period_s`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub period_s_sd: Option<f64>,
    /// What the pendulum says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pendulum: Option<PendulumOutput>,
    /// Head masses for the series of lengths.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub series: Option<Vec<SeriesRow>>,
    /// What looks odd about the input without being impossible.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<PartsRemark>,
}

/// Inertia from a pendulum reading.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PendulumOutput {
    /// Inertia about the pivot in kg·cm².
    pub inertia_about_pivot_kg_cm2: f64,
    /// Standard deviation of `inertia_about_pivot_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_pivot_kg_cm2_sd: Option<f64>,
    /// Inertia about the butt end in kg·cm².
    pub inertia_about_butt_kg_cm2: f64,
    /// Standard deviation of `inertia_about_butt_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_butt_kg_cm2_sd: Option<f64>,
    /// Inertia about the axis asked for, in kg·cm².
    pub inertia_about_axis_kg_cm2: f64,
    /// Standard deviation of `inertia_about_axis_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_axis_kg_cm2_sd: Option<f64>,
    /// Inertia about the balance point in kg·cm².
    pub inertia_about_balance_point_kg_cm2: f64,
    /// Standard deviation of `inertia_about_balance_point_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_about_balance_point_kg_cm2_sd: Option<f64>,
    /// The period freed from its amplitude, in seconds.
    pub small_period_s: f64,
    /// Standard deviation of `small_period_s`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub small_period_s_sd: Option<f64>,
}
