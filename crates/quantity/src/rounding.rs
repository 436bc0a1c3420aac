//! Rounding as a person at the bench does it.

/// Rounds to a number of decimals, halves away from zero, and never returns −0.
///
/// Definition: the nearest multiple of 10^−`decimals`. A figure that lies within a billionth of a step of a half
/// counts as a half, so that 0.35 (which no binary number holds) becomes 0.4 and not 0.3.
///
/// NaN and infinities come back unchanged, and so does a figure of 2^50 steps or more, where binary numbers are too far
/// apart to tell a half.
///
/// # Examples
///
/// ```
/// assert_eq!(quantity::round_to(0.35, 1), 0.4);
/// assert_eq!(quantity::round_to(-2.5, 0), -3.0);
/// assert!(quantity::round_to(-0.04, 1).is_sign_positive());
/// ```
#[must_use]
pub fn round_to(value: f64, decimals: u8) -> f64 {
    const STEPS_MAX: f64 = 1_125_899_906_842_624.0;
    let scale = 10f64.powi(i32::from(decimals));
    let steps = value.abs() * scale;
    if !steps.is_finite() || steps >= STEPS_MAX {
        return value;
    }
    let slack = (steps * 4.0 * f64::EPSILON).clamp(1e-9, 0.1);
    let rounded = (steps + 0.5 + slack).floor() / scale;
    if rounded == 0.0 { 0.0 } else { rounded.copysign(value) }
}

/// Text of a figure rounded to `decimals`, with every decimal written out ("8.0", never "-0.0").
///
/// # Examples
///
/// ```
/// assert_eq!(quantity::decimal(227.5449, 2), "227.54");
/// assert_eq!(quantity::decimal(-0.04, 1), "0.0");
/// ```
#[must_use]
pub fn decimal(value: f64, decimals: u8) -> String {
    format!("{:.*}", usize::from(decimals), round_to(value, decimals))
}

/// Shortest text of a figure, with the noise of binary arithmetic (beyond the ninth decimal) taken off.
pub(crate) fn shortest(value: f64) -> String {
    format!("{}", round_to(value, 9))
}

/// What `Display` writes: the formatter's precision where one is given, else the shortest text.
pub(crate) fn written(value: f64, precision: Option<usize>) -> String {
    match precision {
        Some(decimals) => decimal(value, u8::try_from(decimals).unwrap_or(15).min(15)),
        None => shortest(value),
    }
}
