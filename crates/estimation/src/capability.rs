//! Capability: how well a process fits between its limits, with how well that is known.

use crate::error::EstimationError as E;
use crate::normal;
use serde::{Deserialize, Serialize};
use statrs::distribution::{ChiSquared, ContinuousCDF};
use utoipa::ToSchema;

/// Capability indices with 95 % intervals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Capability {
    /// Mean of the values, in their unit.
    pub mean: f64,
    /// Standard deviation of the values, in their unit; n − 1 below the root for a sample.
    pub sd: f64,
    /// Width of the limits over six standard deviations.
    pub cp: f64,
    /// 95 % interval of Cp, from the chi-square distribution of the variance; none when the sample's size is unknown.
    #[schema(value_type = Option<Vec<f64>>, min_items = 2, max_items = 2)]
    pub cp_interval: Option<(f64, f64)>,
    /// Distance of the mean from the nearer limit over three standard deviations.
    pub cpk: f64,
    /// 95 % interval of Cpk by the normal approximation (A. F. Bissell, Applied Statistics 39, 1990; from memory).
    #[schema(value_type = Option<Vec<f64>>, min_items = 2, max_items = 2)]
    pub cpk_interval: Option<(f64, f64)>,
    /// Share of values expected outside the limits if they are normal.
    pub outside: f64,
}

/// Capability from a known mean and standard deviation; `count` values they come from, if known.
///
/// # Errors
///
/// Limits in the wrong order, a standard deviation that is not positive, fewer than two values.
///
/// # Examples
///
/// ```
/// let capability = estimation::capability::from_moments(38.0, 0.1, None, 37.7, 38.3)?;
/// assert!((capability.cpk - 1.0).abs() < 1e-12);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn from_moments(mean: f64, sd: f64, count: Option<usize>, lower: f64, upper: f64) -> Result<Capability, E> {
    E::finite(|| "mean".into(), mean)?;
    E::positive(|| "sd".into(), sd)?;
    E::finite(|| "lower".into(), lower)?;
    E::finite(|| "upper".into(), upper)?;
    if lower >= upper {
        return Err(E::Limits { place: "capability".into(), lower, upper });
    }
    let cp = (upper - lower) / (6.0 * sd);
    let cpk = (upper - mean).min(mean - lower) / (3.0 * sd);
    let outside = normal::below((lower - mean) / sd) + normal::below(-(upper - mean) / sd);
    let (cp_interval, cpk_interval) = match count {
        None => (None, None),
        Some(n) => intervals(cp, cpk, n)?,
    };
    Ok(Capability { mean, sd, cp, cp_interval, cpk, cpk_interval, outside })
}

/// Capability of a sample.
///
/// # Errors
///
/// As [`from_moments`]; values that are all alike have no standard deviation and are refused.
///
/// # Examples
///
/// ```
/// // By hand: the squares about 38.0 sum to 0.1, the variance is 0.1/4, and 0.6 / (6 · 0.1581) = 0.6325.
/// let capability = estimation::capability::of_sample(&[37.8, 37.9, 38.0, 38.1, 38.2], 37.7, 38.3)?;
/// assert!((capability.sd - 0.1581).abs() < 5e-5 && (capability.cp - 0.6325).abs() < 5e-5);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn of_sample(values: &[f64], lower: f64, upper: f64) -> Result<Capability, E> {
    let n = values.len();
    if n < 2 {
        return Err(E::TooFew { place: "capability".into(), count: n, least: 2 });
    }
    let mean = values.iter().sum::<f64>() / n as f64;
    let variance = values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (n as f64 - 1.0);
    from_moments(mean, variance.sqrt(), Some(n), lower, upper)
}

type Interval = Option<(f64, f64)>;

fn intervals(cp: f64, cpk: f64, n: usize) -> Result<(Interval, Interval), E> {
    if n < 2 {
        return Err(E::TooFew { place: "capability".into(), count: n, least: 2 });
    }
    let dof = n as f64 - 1.0;
    // Positive degrees of freedom are always accepted; the error names the count all the same.
    let chi = ChiSquared::new(dof).map_err(|_| E::TooFew { place: "capability".into(), count: n, least: 2 })?;
    let root = |p: f64| cp * (chi.inverse_cdf(p) / dof).sqrt();
    let half = normal::quantile(0.975) * (1.0 / (9.0 * n as f64) + cpk * cpk / (2.0 * dof)).sqrt();
    Ok((Some((root(0.025), root(0.975))), Some((cpk - half, cpk + half))))
}
