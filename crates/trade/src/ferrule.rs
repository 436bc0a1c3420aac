//! The ferrule: the ring that covers the joint between hosel and shaft.

use crate::error::TradeError;
use crate::error::within;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A ferrule model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FerruleModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the bag.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Inside diameter; it fits tips of the same diameter.
    #[schema(minimum = 6, maximum = 20)]
    pub inside_diameter_mm: f64,
    /// How much of the shaft it covers, along the axis.
    #[schema(minimum = 3, maximum = 80)]
    pub length_mm: f64,
    /// Nominal mass.
    #[schema(minimum = 0.1, maximum = 10)]
    pub mass_g: f64,
}

impl FerruleModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("inside_diameter_mm", self.inside_diameter_mm, 6.0, 20.0, "mm")?;
        within("length_mm", self.length_mm, 3.0, 80.0, "mm")?;
        within("mass_g", self.mass_g, 0.1, 10.0, "g").map(|_| ())
    }
}

/// Whether a ferrule slides over a tip: up to 0.1 mm narrower, since it is driven on, or 0.4 mm wider.
#[must_use]
pub fn ferrule_fits(ferrule: &FerruleModel, tip_diameter_mm: f64) -> bool {
    (-0.1..=0.4).contains(&(ferrule.inside_diameter_mm - tip_diameter_mm))
}
