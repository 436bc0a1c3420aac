//! The bare arithmetic of swing weight.

use quantity::{A0_OZ_IN, POINT_OZ_IN};

use crate::real::Real;

/// Moment about a fulcrum of masses hung at arms measured from the butt end: `Σ mᵢ·(xᵢ − f)`, in gram inches.
///
/// Accuracy: the rounding of one multiplication and one sum a part; `tests/val_swing_weight.rs` holds 1e-9 relative to the
/// sum of the absolute contributions against exact fractions.
///
/// # Examples
///
/// ```
/// let parts = [(256.0, 37.0), (100.0, 18.0), (50.0, 4.0)];
/// assert_eq!(clubphysics::swing_weight::moment_g_in(&parts, 14.0), 256.0 * 23.0 + 400.0 - 500.0);
/// ```
#[must_use]
pub fn moment_g_in(parts: &[(f64, f64)], fulcrum_in: f64) -> f64 {
    parts.iter().fold(0.0, |sum, (mass_g, arm_in)| sum + mass_g * (arm_in - fulcrum_in))
}

/// Points above A0 of a moment about the 14-inch fulcrum.
///
/// # Examples
///
/// ```
/// // D2 by the scale: 161 oz·in at A0 and 1.75 for each of 32 points.
/// assert_eq!(clubphysics::swing_weight::points_from_oz_in(161.0 + 1.75 * 32.0), 32.0);
/// ```
#[must_use]
pub fn points_from_oz_in(moment_oz_in: f64) -> f64 {
    points(moment_oz_in)
}

/// Points above A0.
pub(crate) fn points<T: Real>(moment_oz_in: T) -> T {
    (moment_oz_in - A0_OZ_IN) / POINT_OZ_IN
}
