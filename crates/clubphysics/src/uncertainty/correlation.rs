//! Correlations as they stand in an input document.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A correlation between two inputs, as from a shared scale or one batch of parts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Correlation {
    /// Name of an input as it stands in this document, for example `total_mass_g` or `parts[0].mass_g`.
    pub a: String,
    /// Name of the other.
    pub b: String,
    /// Coefficient, −1 to 1.
    pub coefficient: f64,
}
