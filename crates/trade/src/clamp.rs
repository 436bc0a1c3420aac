//! The clamp that shafts and clubs are plucked in, for their frequency.

use crate::error::{TradeError, within};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The shop's clamp for reading frequencies.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Clamp {
    /// How much of the butt it holds; with a grip on, counted from the outside of its cap.
    #[schema(minimum = 20, maximum = 300)]
    pub held_mm: f64,
    /// Mass of the weight that hangs at the tip of a shaft without a head. Left out: not known, and readings of bare shafts say
    /// nothing of the finished club.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 20, maximum = 500)]
    pub test_weight_g: Option<f64>,
    /// Centre of that weight beyond the tip end along the shaft's axis; negative where it sits over the tip.
    #[schema(minimum = -80, maximum = 80)]
    pub test_weight_centre_mm: f64,
}

impl Default for Clamp {
    /// Five inches of butt (from memory: a common clamp), no known test weight.
    fn default() -> Self {
        Self { held_mm: 127.0, test_weight_g: None, test_weight_centre_mm: 0.0 }
    }
}

impl Clamp {
    /// Whether it is still as a new shop's.
    #[must_use]
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }

    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("clamp.held_mm", self.held_mm, 20.0, 300.0, "mm")?;
        if let Some(mass_g) = self.test_weight_g {
            within("clamp.test_weight_g", mass_g, 20.0, 500.0, "g")?;
        }
        within("clamp.test_weight_centre_mm", self.test_weight_centre_mm, -80.0, 80.0, "mm")?;
        Ok(())
    }
}
