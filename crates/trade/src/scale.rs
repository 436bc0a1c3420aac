//! A scale of the shop, by what it says of itself.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A scale of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Scale {
    /// Short key, for example `bench`.
    #[schema(min_length = 1, pattern = r"\S")]
    pub key: String,
    /// What people call it.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Step of its display: points for a balance scale, grams for a mass scale.
    #[schema(minimum = 0, maximum = 5)]
    pub display_step: f64,
    /// Standard deviation of one re-seated reading, same unit.
    #[schema(minimum = 0.001, maximum = 5)]
    pub noise_sd: f64,
    /// Standard deviation of what it may be off by today, same unit.
    #[schema(minimum = 0, maximum = 5)]
    pub offset_sd: f64,
    /// Standard deviation of what it wanders in an hour of work, same unit; it grows with the root of the hours.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 5)]
    pub drift_sd_per_root_h: f64,
    /// Standard deviation of what it drifts one way over a day of work, same unit. None: 0.15 point for a balance scale until
    /// the shop has learned it, nothing for a mass scale.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 5)]
    pub drift_sd_per_day: Option<f64>,
}

impl Scale {
    /// Whether a sheet that names a scale means this one: by its key or by its name. Where none is named, it is this one.
    #[must_use]
    pub fn is_named(&self, named: &str) -> bool {
        let named = named.trim();
        named.is_empty() || named == self.key || named.to_lowercase() == self.name.trim().to_lowercase()
    }
}
