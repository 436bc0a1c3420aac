//! What a mass at a place does to the swing weight.

use quantity::INCH_MM;

/// Points that one gram at a place adds: arm from the end that sits on the stop.
#[must_use]
pub fn points_per_g(arm_from_stop_mm: f64) -> f64 {
    (arm_from_stop_mm / INCH_MM - estimation::FULCRUM_IN) / estimation::GRAM_INCH_PER_POINT
}
