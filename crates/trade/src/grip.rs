//! The grip, as a model.

use crate::error::TradeError;
use crate::error::within;
use crate::kind::closed_list;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Where the upper hand's thickness is taken, mm below the outside of the cap: 2 in (common practice, no source).
pub const UPPER_PLACE_MM: f64 = 50.8;
/// Where the lower hand's is taken: 6 in (common practice, no source).
pub const LOWER_PLACE_MM: f64 = 152.4;
/// What a grip's thickness can be at all, mm.
const THICKNESS_MM: (f64, f64) = (12.0, 50.0);

/// How thick a grip is asked to be where the hands hold it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GripSize {
    /// Diameter under the upper hand, 2 in below the outside of the cap.
    #[schema(minimum = 12, maximum = 50)]
    pub upper_mm: f64,
    /// Diameter under the lower hand, 6 in below it, where the grip is to be built up there; left out: what the grip gives.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 12, maximum = 50)]
    pub lower_mm: Option<f64>,
}

impl GripSize {
    /// Refuses a size that no grip has.
    ///
    /// # Errors
    /// A diameter in another unit, or of another thing.
    pub fn check(&self) -> Result<(), TradeError> {
        thickness("grip_size.upper_mm", Some(self.upper_mm))?;
        thickness("grip_size.lower_mm", self.lower_mm)
    }
}

fn thickness(name: &str, value: Option<f64>) -> Result<(), TradeError> {
    let (low, high) = THICKNESS_MM;
    value.map_or(Ok(()), |mm| within(name, mm, low, high, "mm").map(|_| ()))
}

closed_list! {
    /// Outside shape of a grip.
    GripShape {
        /// Round.
        Round = "round";
        /// With a rib along its underside.
        Ribbed = "ribbed";
        /// With a flat, for putters.
        FlatSided = "flat_sided";
    }
}

/// A grip model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GripModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the box.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Nominal mass.
    #[schema(minimum = 10, maximum = 250)]
    pub mass_g: f64,
    /// Scatter of single grips about it.
    #[schema(minimum = 0, maximum = 20)]
    pub mass_sd_g: f64,
    /// Diameter of the core that the grip is made for.
    #[schema(minimum = 10, maximum = 25)]
    pub core_diameter_mm: f64,
    /// Overall length.
    #[schema(minimum = 150, maximum = 600)]
    pub length_mm: f64,
    /// Where it balances, from the outside of its cap.
    pub centre_mm: f64,
    /// Thickness of the cap beyond the shaft's end.
    #[schema(minimum = 0.5, maximum = 15)]
    pub cap_mm: f64,
    /// Largest outside diameter, for the rules' limit; left out where unknown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub widest_mm: Option<f64>,
    /// Outside diameter 2 in below the outside of the cap, on a shaft as thick as the core with one layer of tape; left out where
    /// nobody says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 12, maximum = 50)]
    pub upper_mm: Option<f64>,
    /// The same 6 in below it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 12, maximum = 50)]
    pub lower_mm: Option<f64>,
    /// Round, ribbed or flat-sided.
    pub shape: GripShape,
}

impl GripModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("mass_g", self.mass_g, 10.0, 250.0, "g")?;
        within("mass_sd_g", self.mass_sd_g, 0.0, 20.0, "g")?;
        within("core_diameter_mm", self.core_diameter_mm, 10.0, 25.0, "mm")?;
        within("length_mm", self.length_mm, 150.0, 600.0, "mm")?;
        within("centre_mm", self.centre_mm, self.length_mm * 0.2, self.length_mm * 0.6, "mm")?;
        within("cap_mm", self.cap_mm, 0.5, 15.0, "mm")?;
        thickness("upper_mm", self.upper_mm)?;
        thickness("lower_mm", self.lower_mm)
    }
}
