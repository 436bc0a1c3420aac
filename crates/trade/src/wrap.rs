//! Wraps: the layers of tape under a grip, what they weigh and where they lie.

use crate::grip::GripModel;
use crate::tape::TapeModel;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Layers of tape under the grip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Wraps {
    /// The base layer that carries the grip: normally 1, double-sided.
    #[serde(default)]
    #[schema(maximum = 255)]
    pub base: u8,
    /// Layers over the full length.
    #[serde(default)]
    #[schema(maximum = 255)]
    pub full: u8,
    /// Layers under the lower hand only.
    #[serde(default)]
    #[schema(maximum = 255)]
    pub lower_hand: u8,
}

/// Length of a strip of tape over the full length under a grip, mm: from the end of the shaft to 13 mm short of the grip's
/// mouth, since a grip swells over tape and shortens (common practice, no source). The lower hand's strip is half of it.
#[must_use]
pub fn strip_mm(grip: &GripModel) -> f64 {
    (grip.length_mm - grip.cap_mm - 13.0).max(50.0)
}

/// Mass of all the tape of a club and where it lies: (mass g, arm mm from the shaft's end, equivalent base layers).
///
/// A strip goes once round the shaft and is as long as [`strip_mm`] says; the lower hand's strip is the lower half of that.
#[must_use]
pub fn tape_on(wraps: Wraps, tape: &TapeModel, grip: &GripModel, butt_diameter_mm: f64) -> (f64, f64, f64) {
    let strip_mm = strip_mm(grip);
    let round_mm = std::f64::consts::PI * butt_diameter_mm;
    let full_g = strip_mm * round_mm * tape.mass_per_area_g_per_m2 * 1e-6;
    let full_layers = f64::from(wraps.base) + f64::from(wraps.full);
    let lower_layers = f64::from(wraps.lower_hand) / 2.0;
    let layers = full_layers + lower_layers;
    if layers == 0.0 {
        return (0.0, strip_mm / 2.0, 0.0);
    }
    let arm_mm = (full_layers * strip_mm / 2.0 + lower_layers * strip_mm * 0.75) / layers;
    (layers * full_g, arm_mm, layers)
}
