//! What a mass at a place does to the swing weight.

use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};

/// Points that one gram at a place adds: arm from the end that sits on the stop.
#[must_use]
pub fn points_per_g(arm_from_stop_mm: f64) -> f64 {
    (arm_from_stop_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN
}
