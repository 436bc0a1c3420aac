//! The documents of the grip-size topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::uncertainty::Correlation;

/// A grip, the shaft it goes on, and the tape between.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GripSizeInput {
    /// Inside diameter of the grip's core in inches.
    pub core_in: f64,
    /// Standard deviation of `core_in`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub core_in_sd: Option<f64>,
    /// Outside diameter of the shaft at the butt in inches.
    pub butt_diameter_in: f64,
    /// Standard deviation of `butt_diameter_in`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub butt_diameter_in_sd: Option<f64>,
    /// Places along the grip; one at 2 in with 0.900 in where left out (the men's size, 'Grip Sizing', D. Eagar 2009).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stations: Option<Vec<GripStation>>,
    /// Tape under the grip.
    #[serde(default)]
    pub tape: TapeInput,
    /// Diameter wanted at the first place, in inches: how many layers give it?
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wanted_in: Option<f64>,
    /// Correlations between inputs that have standard deviations.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// A place along the grip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GripStation {
    /// Below the end of the cap, in inches.
    pub below_cap_in: f64,
    /// Diameter there when the core equals the shaft, in inches.
    pub nominal_in: f64,
    /// Core there, where it is not `core_in`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub core_in: Option<f64>,
    /// Shaft there, where it is not `butt_diameter_in`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shaft_diameter_in: Option<f64>,
}

/// Tape wound or laid along the shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct TapeInput {
    /// Layers under the grip.
    pub layers: u32,
    /// Thickness of one layer in inches.
    pub thickness_in: f64,
    /// Standard deviation of `thickness_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thickness_in_sd: Option<f64>,
    /// Growth in diameter a layer in inches, where the shop knows better than twice the thickness.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_a_layer_in: Option<f64>,
    /// Standard deviation of `growth_a_layer_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_a_layer_in_sd: Option<f64>,
    /// Length of the tape from the butt end in inches; it ends short of the grip's mouth.
    pub length_in: f64,
    /// Mass of one layer as weighed, in grams.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layer_mass_g: Option<f64>,
    /// Standard deviation of `layer_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layer_mass_g_sd: Option<f64>,
    /// Mass an area of the tape in grams a square metre, where no layer was weighed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub areal_density_g_m2: Option<f64>,
    /// Standard deviation of `areal_density_g_m2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub areal_density_g_m2_sd: Option<f64>,
    /// Width of the strip of one layer in inches, with `areal_density_g_m2`; one turn of the butt where left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strip_width_in: Option<f64>,
    /// Thickness of the grip's cap in inches, by which the tape moves from the stop when the club is gripped.
    pub cap_in: f64,
}

impl Default for TapeInput {
    /// A layer of 0.005 in tape over 10 in, none of it laid, no cap.
    fn default() -> Self {
        Self {
            layers: 0,
            thickness_in: 0.005,
            thickness_in_sd: None,
            growth_a_layer_in: None,
            growth_a_layer_in_sd: None,
            length_in: 10.0,
            layer_mass_g: None,
            layer_mass_g_sd: None,
            areal_density_g_m2: None,
            areal_density_g_m2_sd: None,
            strip_width_in: None,
            cap_in: 0.0,
        }
    }
}

/// Size of the grip as fitted.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct GripSizeOutput {
    /// Diameter along the grip.
    pub stations: Vec<GripStationOutput>,
    /// Growth in diameter that one layer gives, in inches.
    pub growth_a_layer_in: f64,
    /// Standard deviation of `growth_a_layer_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub growth_a_layer_in_sd: Option<f64>,
    /// Layers that give `wanted_in` at the first place, not rounded; negative where the grip is already larger.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layers_exact: Option<f64>,
    /// Standard deviation of `layers_exact`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layers_exact_sd: Option<f64>,
    /// Whole layers that come nearest to `wanted_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layers_needed: Option<u32>,
    /// Diameter at the first place with those layers, in inches.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_with_layers_needed_in: Option<f64>,
    /// Standard deviation of `diameter_with_layers_needed_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_with_layers_needed_in_sd: Option<f64>,
    /// What the tape does to the swing weight, where its mass is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tape: Option<TapeOutput>,
    /// What to think about before the grip goes on.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<GripRemark>,
}

/// Diameter at a place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct GripStationOutput {
    /// Below the end of the cap, in inches.
    pub below_cap_in: f64,
    /// Layers of tape under this place.
    pub layers: u32,
    /// Diameter by the trade's rule, in inches.
    pub diameter_in: f64,
    /// Standard deviation of `diameter_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_in_sd: Option<f64>,
    /// Diameter if the rubber keeps its volume and its length, in inches: the least to expect.
    pub diameter_of_kept_volume_in: f64,
    /// Standard deviation of `diameter_of_kept_volume_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_of_kept_volume_in_sd: Option<f64>,
}

/// What the tape does to the swing weight.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct TapeOutput {
    /// Mass of one layer in grams.
    pub layer_mass_g: f64,
    /// Standard deviation of `layer_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub layer_mass_g_sd: Option<f64>,
    /// Mass of all layers in grams.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Centre of the tape from the butt end of the gripped club, in inches.
    pub position_in: f64,
    /// Points of swing weight that one layer gives about the 14-inch fulcrum.
    pub change_a_layer_points: f64,
    /// Standard deviation of `change_a_layer_points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_a_layer_points_sd: Option<f64>,
    /// Points of swing weight that all layers give.
    pub change_points: f64,
    /// Standard deviation of `change_points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_points_sd: Option<f64>,
}

fact::facts! {
    /// What to think about before the grip is put on.
    pub enum GripRemark: "grip_remark" {
        /// The grip is larger than wanted even without tape.
        LargeWithoutTape {
            /// How much larger, millimetres.
            by_mm: f64,
        },
        /// More layers would be needed than can be laid.
        TooManyLayers {
            /// The most that can be laid.
            most: u32,
        },
        /// The grip is wider than the Equipment Rules allow.
        BeyondRules {
            /// Its widest diameter, millimetres.
            widest_mm: f64,
            /// The limit, millimetres.
            limit_mm: f64,
        },
    }
}
