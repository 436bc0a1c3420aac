//! The adapter between a head and its shaft, as a model.

use crate::error::TradeError;
use crate::error::within;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// An adapter between shaft tip and head.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdapterModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the box.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// What the adapter weighs.
    #[schema(minimum = 0.5, maximum = 40)]
    pub mass_g: f64,
    /// Length outside of which the shaft's tip stands: from the bottom of its bore to its lower end.
    #[schema(minimum = 0, maximum = 80)]
    pub length_mm: f64,
    /// Bore for the shaft's tip.
    #[schema(minimum = 6, maximum = 20)]
    pub bore_diameter_mm: f64,
    /// Code of the head model it fits.
    pub fits_head_model: String,
    /// The setting that the club is built at.
    #[serde(default)]
    pub setting: String,
}

impl AdapterModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("mass_g", self.mass_g, 0.5, 40.0, "g")?;
        within("length_mm", self.length_mm, 0.0, 80.0, "mm")?;
        within("bore_diameter_mm", self.bore_diameter_mm, 6.0, 20.0, "mm").map(|_| ())
    }
}
