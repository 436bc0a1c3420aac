//! Control charts: is a process, a scale or a check weight still what it was?
//!
//! Constants of ranges and standard deviations of normal samples are computed, not tabled (W. A. Shewhart's charts;
//! definitions as in the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3).

use crate::error::EstimationError as E;
use crate::normal;
use serde::{Deserialize, Serialize};
use statrs::function::gamma::ln_gamma;
use std::f64::consts::PI;
use utoipa::ToSchema;

/// Expected range of `n` standard normal values; 0 below two.
///
/// `∫ 1 − Φⁿ − (1 − Φ)ⁿ`, by the trapezoidal rule, which converges exponentially here.
///
/// # Examples
///
/// ```
/// // Tables of control chart constants (ASTM E2587 and others, from memory): 1.128 for two, 2.326 for five.
/// assert!((estimation::chart::d2(2) - 1.128).abs() < 5e-4 && (estimation::chart::d2(5) - 2.326).abs() < 5e-4);
/// ```
#[must_use]
pub fn d2(n: usize) -> f64 {
    if n < 2 {
        return 0.0;
    }
    let step = 0.02;
    let value = |i: i32| {
        let p = normal::below(f64::from(i) * step);
        1.0 - p.powf(n as f64) - (1.0 - p).powf(n as f64)
    };
    (-500..=500).map(value).sum::<f64>() * step
}

/// Standard deviation of the range of `n` standard normal values; 0 below two.
///
/// From `E[R²] = n(n−1) ∫∫ (y−x)²·(Φ(y)−Φ(x))ⁿ⁻²·φ(x)·φ(y)` over `y > x`; accurate to about 1e-6.
#[must_use]
pub fn d3(n: usize) -> f64 {
    if n < 2 {
        return 0.0;
    }
    let step = 0.04;
    let grid: Vec<(f64, f64, f64)> =
        (-200..=200).map(|i| f64::from(i) * step).map(|x| (x, normal::below(x), normal::density(x))).collect();
    let mut sum = 0.0;
    for (i, (x, px, fx)) in grid.iter().enumerate() {
        let inner = grid[i + 1..].iter().map(|(y, py, fy)| (y - x).powi(2) * (py - px).powf(n as f64 - 2.0) * fy);
        sum += fx * inner.sum::<f64>();
    }
    let mean_square = n as f64 * (n as f64 - 1.0) * sum * step * step;
    (mean_square - d2(n).powi(2)).max(0.0).sqrt()
}

/// Expected standard deviation of `n` standard normal values (with n − 1 below the root); 0 below two.
///
/// # Examples
///
/// ```
/// // Tables of control chart constants (from memory): 0.9400 for five.
/// assert!((estimation::chart::c4(5) - 0.9400).abs() < 5e-5);
/// ```
#[must_use]
pub fn c4(n: usize) -> f64 {
    if n < 2 {
        return 0.0;
    }
    let n = n as f64;
    (2.0 / (n - 1.0)).sqrt() * (ln_gamma(0.5 * n) - ln_gamma(0.5 * (n - 1.0))).exp()
}

/// A chart of single values with the moving range of two.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Individuals {
    /// Centre line: the mean of the values, in their unit.
    pub mean: f64,
    /// Mean of the ranges from each value to the next, in their unit.
    pub mean_range: f64,
    /// Scatter from the moving ranges: mean range over [`d2`] of 2.
    pub sd: f64,
    /// Lower limit, three scatters below the mean.
    pub lower: f64,
    /// Upper limit, three scatters above the mean.
    pub upper: f64,
    /// Upper limit of a moving range.
    pub range_upper: f64,
    /// Positions of the values outside their limits.
    pub outside: Vec<usize>,
    /// Positions of the values whose range from the one before is beyond its limit.
    pub jumps: Vec<usize>,
}

/// Chart values in the order in which they came.
///
/// # Errors
///
/// Fewer than two values; values that are not finite.
///
/// # Examples
///
/// ```
/// let chart = estimation::chart::individuals(&[38.1, 38.0, 38.2, 38.1, 40.0, 38.1, 38.0, 38.1, 38.2, 38.1, 38.0])?;
/// assert_eq!(chart.outside, [4]);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn individuals(values: &[f64]) -> Result<Individuals, E> {
    if values.len() < 2 {
        return Err(E::TooFew { place: "chart".into(), count: values.len(), least: 2 });
    }
    for (i, value) in values.iter().enumerate() {
        E::finite(|| format!("chart[{i}]"), *value)?;
    }
    let ranges: Vec<f64> = values.windows(2).map(|pair| (pair[1] - pair[0]).abs()).collect();
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let mean_range = ranges.iter().sum::<f64>() / ranges.len() as f64;
    // The range of two is the size of a normal with twice the variance: its mean and its scatter in closed form.
    let (of_two, scatter_of_two) = (2.0 / PI.sqrt(), (2.0 - 4.0 / PI).sqrt());
    let sd = mean_range / of_two;
    let (lower, upper) = (mean - 3.0 * sd, mean + 3.0 * sd);
    let range_upper = mean_range + 3.0 * scatter_of_two * sd;
    let positions = |test: &dyn Fn(usize) -> bool| (0..values.len()).filter(|i| test(*i)).collect();
    let outside = positions(&|i| values[i] < lower || values[i] > upper);
    let jumps = positions(&|i| i > 0 && ranges[i - 1] > range_upper);
    Ok(Individuals { mean, mean_range, sd, lower, upper, range_upper, outside, jumps })
}

/// A pattern on a chart that chance alone seldom makes (Western Electric, Statistical Quality Control Handbook, 1956).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// One value beyond three scatters.
    Beyond,
    /// Two of three values in a row beyond two scatters on one side.
    TwoOfThree,
    /// Four of five values in a row beyond one scatter on one side.
    FourOfFive,
    /// Eight values in a row on one side.
    EightOnOneSide,
}

impl Pattern {
    /// All of them: how many scatters, how many of how many values.
    const RULES: [(Self, f64, usize, usize); 4] = [
        (Self::Beyond, 3.0, 1, 1),
        (Self::TwoOfThree, 2.0, 2, 3),
        (Self::FourOfFive, 1.0, 4, 5),
        (Self::EightOnOneSide, 0.0, 8, 8),
    ];
}

/// A pattern that a chart shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct Signal {
    /// Which one.
    pub pattern: Pattern,
    /// Position of its first value.
    pub from: usize,
    /// Position of the value that completes it.
    pub at: usize,
    /// Above the centre line, or below it.
    pub above: bool,
}

/// The patterns that values make about a centre line of known place and scatter, in the order in which they are
/// completed.
///
/// `on_line` is how near to the centre line a value counts as on it, so on neither side: half a step for a display that
/// rounds, whose values would otherwise lie on the side on which the rounding puts them; 0 for one that does not.
/// Each value is judged as the last of its own run; a run that goes on is told anew with each value.
///
/// # Errors
///
/// Values or a centre that are not finite; a scatter that is not positive; a negative `on_line`.
///
/// # Examples
///
/// ```
/// use estimation::chart::{Pattern, signals};
/// let found = signals(&[0.1, 2.2, -0.3, 2.4], 0.0, 1.0, 0.0)?;
/// assert_eq!((found[0].pattern, found[0].from, found[0].at), (Pattern::TwoOfThree, 1, 3));
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn signals(values: &[f64], mean: f64, sd: f64, on_line: f64) -> Result<Vec<Signal>, E> {
    let place = || "chart".to_owned();
    E::finite(place, mean)?;
    E::positive(place, sd)?;
    E::not_negative(place, on_line)?;
    for (i, value) in values.iter().enumerate() {
        E::finite(|| format!("chart[{i}]"), *value)?;
    }
    let mut found = Vec::new();
    for at in 0..values.len() {
        for above in [true, false] {
            let side = if above { 1.0 } else { -1.0 };
            for (pattern, scatters, wanted, of) in Pattern::RULES {
                let beyond = |i: &usize| side * (values[*i] - mean) > (scatters * sd).max(on_line);
                // A run is completed by a value that belongs to it.
                if !beyond(&at) {
                    continue;
                }
                let from = (at + 1).saturating_sub(of);
                let hits: Vec<usize> = (from..=at).filter(beyond).collect();
                if hits.len() >= wanted {
                    found.push(Signal { pattern, from: hits[hits.len() - wanted], at, above });
                }
            }
        }
    }
    Ok(found)
}
