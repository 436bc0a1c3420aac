//! The normal distribution, also far out in its tails.

use statrs::function::erf::{erfc, erfc_inv};
use std::f64::consts::{FRAC_1_SQRT_2, PI, SQRT_2};

/// Density of the standard normal.
#[must_use]
pub fn density(z: f64) -> f64 {
    (-0.5 * z * z).exp() / (2.0 * PI).sqrt()
}

/// Probability of a standard normal below `z`.
///
/// # Examples
///
/// ```
/// // Tables of the normal distribution.
/// assert!((estimation::normal::below(1.0) - 0.841345).abs() < 5e-7);
/// ```
#[must_use]
pub fn below(z: f64) -> f64 {
    0.5 * erfc(-z * FRAC_1_SQRT_2)
}

/// The value below which a standard normal falls with probability `p`; −∞ and ∞ at 0 and 1, NaN outside.
///
/// # Examples
///
/// ```
/// // Tables of the normal distribution.
/// assert!((estimation::normal::quantile(0.975) - 1.959964).abs() < 5e-7);
/// ```
#[must_use]
pub fn quantile(p: f64) -> f64 {
    if !(0.0..=1.0).contains(&p) {
        return f64::NAN;
    }
    -SQRT_2 * erfc_inv(2.0 * p)
}

/// Probability that a normal of the given mean and standard deviation lies between two limits.
///
/// A standard deviation of 0 gives 1 or 0; the limits themselves count as inside.
///
/// # Examples
///
/// ```
/// // Two thirds lie within one standard deviation: 0.682689 (tables of the normal distribution).
/// assert!((estimation::normal::between(37.9, 38.1, 38.0, 0.1) - 0.682689).abs() < 5e-7);
/// ```
#[must_use]
pub fn between(lower: f64, upper: f64, mean: f64, sd: f64) -> f64 {
    if sd > 0.0 {
        let (a, b) = ((lower - mean) / sd, (upper - mean) / sd);
        // Taken from the side on which both tails are small, so that nothing cancels.
        let p = if a > 0.0 { below(-a) - below(-b) } else { below(b) - below(a) };
        p.max(0.0)
    } else {
        f64::from(u8::from(mean >= lower && mean <= upper))
    }
}

/// Logarithm of the probability of a standard normal above `z`, without underflow.
#[must_use]
pub(crate) fn log_above(z: f64) -> f64 {
    if z < 30.0 {
        return (0.5 * erfc(z * FRAC_1_SQRT_2)).ln();
    }
    // Asymptotic series of the Mills ratio; at z = 30 its next term is below 1e-10.
    let s = 1.0 / (z * z);
    let series = 1.0 - s * (1.0 - 3.0 * s * (1.0 - 5.0 * s * (1.0 - 7.0 * s)));
    -0.5 * z * z - z.ln() - 0.5 * (2.0 * PI).ln() + series.ln()
}

/// Logarithm of the probability of a standard normal between `a` and `b`, without underflow; −∞ where `b ≤ a`.
#[must_use]
pub(crate) fn log_between(a: f64, b: f64) -> f64 {
    if b <= a {
        return f64::NEG_INFINITY;
    }
    let (a, b) = if a + b < 0.0 { (-b, -a) } else { (a, b) };
    if a < 0.0 {
        return (below(b) - below(a)).ln();
    }
    let upper = log_above(a);
    upper + (-(log_above(b) - upper).exp()).ln_1p()
}
