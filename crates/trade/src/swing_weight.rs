//! What a mass at a place does to the swing weight.

use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};

/// Points that one gram at a place adds: arm from the end that sits on the stop.
///
/// # Examples
///
/// ```
/// use trade::swing_weight::points_per_g;
///
/// // By hand: a point is 1.75 oz·in, 49.6117 g·in. A head 38 in from the butt end lies 24 in beyond the fulcrum, so that a
/// // gram in it makes 24 / 49.6117 points. The common rule of 2 g a point is near.
/// assert!((points_per_g(38.0 * 25.4) - 0.4838).abs() < 0.0001);
/// // A grip lies on the other side and takes points off.
/// assert!(points_per_g(4.0 * 25.4) < 0.0);
/// ```
#[must_use]
pub fn points_per_g(arm_from_stop_mm: f64) -> f64 {
    (arm_from_stop_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN
}
