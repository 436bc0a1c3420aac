//! The bare geometry of lie.

use crate::real::Real;

/// Lie at another length when the hands stay at their height above the ground.
///
/// Definition: `asin((L − h)·sin(lie)/(L′ − h))`, lengths along the shaft axis from the ground, h from the butt down to
/// the hands. Domain: the hands must be able to reach their height, `(L − h)·sin(lie) ≤ L′ − h`; beyond it NaN.
///
/// # Examples
///
/// ```
/// // Half an inch more than 37.5 in at 60°, the butt at its height: 1.28° flatter.
/// let lie_deg: f64 = clubphysics::lie::lie_at_length_deg(60.0, 37.5, 38.0, 0.0);
/// assert!((60.0 - lie_deg - 1.281).abs() < 0.001);
/// ```
#[must_use]
pub fn lie_at_length_deg<T: Real>(lie_deg: T, length: T, new_length: T, hands_below_butt: T) -> T {
    let height = (length - hands_below_butt) * to_rad(lie_deg).sin();
    to_deg((height / (new_length - hands_below_butt)).asin())
}

/// Error of aim, in degrees, of a lie that is wrong by so many degrees: `atan(tan(loft)·sin(Δlie))`.
///
/// Positive where the lie is too upright: the ball starts to the side of the heel.
#[must_use]
pub fn aim_error_deg<T: Real>(loft_deg: T, lie_error_deg: T) -> T {
    to_deg((to_rad(loft_deg).tan() * to_rad(lie_error_deg).sin()).atan())
}

fn to_rad<T: Real>(angle_deg: T) -> T {
    angle_deg * 1f64.to_radians()
}

fn to_deg<T: Real>(angle_rad: T) -> T {
    angle_rad * 1f64.to_degrees()
}
