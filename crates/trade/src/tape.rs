//! The tape under a grip, as a model.

use crate::error::TradeError;
use crate::error::within;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A tape under the grip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TapeModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the roll.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Mass per area with its adhesive, without its liner.
    #[schema(minimum = 10, maximum = 2000)]
    pub mass_per_area_g_per_m2: f64,
    /// Thickness as it lies on the shaft.
    #[schema(minimum = 0.01, maximum = 2)]
    pub thickness_mm: f64,
    /// Width of the roll.
    #[schema(minimum = 5, maximum = 200)]
    pub width_mm: f64,
}

impl TapeModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("mass_per_area_g_per_m2", self.mass_per_area_g_per_m2, 10.0, 2000.0, "g/m²")?;
        within("thickness_mm", self.thickness_mm, 0.01, 2.0, "mm")?;
        within("width_mm", self.width_mm, 5.0, 200.0, "mm").map(|_| ())
    }
}
