//! In, out, or too close to say: verdicts on a measured value against limits.
//!
//! Source of the method: JCGM 106:2012, evaluation of measurement data, the role of uncertainty in conformity
//! assessment (conformance probability, guard bands).

use crate::error::EstimationError as E;
use crate::normal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Limits of what is accepted; one may be missing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Limits {
    /// Least accepted value, in the unit of the measured one; none where there is no lower limit.
    pub lower: Option<f64>,
    /// Greatest accepted value, same unit; none where there is no upper limit.
    pub upper: Option<f64>,
}

impl Limits {
    /// A target with the same tolerance to both sides.
    #[must_use]
    pub fn around(target: f64, tolerance: f64) -> Self {
        Self { lower: Some(target - tolerance), upper: Some(target + tolerance) }
    }

    fn ends(self) -> Result<(f64, f64), E> {
        let (lower, upper) = (self.lower.unwrap_or(f64::NEG_INFINITY), self.upper.unwrap_or(f64::INFINITY));
        if lower < upper && (self.lower.is_some() || self.upper.is_some()) {
            Ok((lower, upper))
        } else {
            Err(E::Limits { place: "conformity".into(), lower, upper })
        }
    }
}

/// What may be said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[schema(as = ConformityVerdict)]
pub enum Verdict {
    /// Within the limits, with the probability asked for.
    In,
    /// Outside, with the probability asked for.
    Out,
    /// Neither can be said with that probability.
    TooClose,
}

/// A verdict with what it rests on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Conformity {
    /// What may be said with the confidence that was asked for.
    pub verdict: Verdict,
    /// Probability that the true value lies within the limits.
    pub probability: f64,
    /// Limits within which a measured value is accepted; none when the uncertainty is too great to accept any.
    pub acceptance: Option<Limits>,
    /// Distance of the acceptance limits from the limits themselves, in the value's unit; none as above.
    pub guard_band: Option<f64>,
}

/// Probability that the true value lies within the limits, for a measured value with a standard uncertainty and no
/// other knowledge.
///
/// # Errors
///
/// Limits in the wrong order or both missing; a value that is not finite; a negative uncertainty.
///
/// # Examples
///
/// ```
/// use estimation::conformity::{Limits, conformance_probability};
/// let p = conformance_probability(0.1, 0.1, Limits::around(0.0, 0.3))?;
/// assert!(p > 0.97 && p < 0.98);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn conformance_probability(measured: f64, uncertainty: f64, limits: Limits) -> Result<f64, E> {
    let (lower, upper) = limits.ends()?;
    E::finite(|| "measured".into(), measured)?;
    E::not_negative(|| "uncertainty".into(), uncertainty)?;
    Ok(normal::between(lower, upper, measured, uncertainty))
}

/// Judge a measured value. `confidence` is the probability asked for, for example 0.95.
///
/// # Errors
///
/// As [`conformance_probability`]; a confidence that is not between ½ and 1.
///
/// # Examples
///
/// ```
/// use estimation::conformity::{Limits, Verdict, judge};
/// // With the further limit 4 sd away the guard band is the one-sided 1.645 · 0.1 (tables of the normal distribution;
/// // JCGM 106:2012, 8.3).
/// let judged = judge(0.1, 0.1, Limits::around(0.0, 0.3), 0.95)?;
/// assert_eq!(judged.verdict, Verdict::In);
/// assert!((judged.guard_band.unwrap() - 0.1645).abs() < 5e-4);
/// // Nearer to the limit than that nothing can be said.
/// assert_eq!(judge(0.2, 0.1, Limits::around(0.0, 0.3), 0.95)?.verdict, Verdict::TooClose);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn judge(measured: f64, uncertainty: f64, limits: Limits, confidence: f64) -> Result<Conformity, E> {
    let probability = conformance_probability(measured, uncertainty, limits)?;
    if !(confidence > 0.5 && confidence < 1.0) {
        return Err(E::Outside { place: "confidence".into(), value: confidence, low: 0.5, high: 1.0 });
    }
    let verdict = if probability >= confidence {
        Verdict::In
    } else if 1.0 - probability >= confidence {
        Verdict::Out
    } else {
        Verdict::TooClose
    };
    let guard_band = guard_band(uncertainty, limits, confidence)?;
    let acceptance = guard_band
        .map(|guard| Limits { lower: limits.lower.map(|l| l + guard), upper: limits.upper.map(|u| u - guard) });
    Ok(Conformity { verdict, probability, acceptance, guard_band })
}

/// How far inside a limit a measured value must lie to conform with the confidence asked for.
fn guard_band(uncertainty: f64, limits: Limits, confidence: f64) -> Result<Option<f64>, E> {
    let (lower, upper) = limits.ends()?;
    let one_sided = normal::quantile(confidence) * uncertainty;
    if lower.is_infinite() || upper.is_infinite() {
        return Ok(Some(one_sided));
    }
    let holds = |guard: f64| normal::between(lower, upper, lower + guard, uncertainty) >= confidence;
    let half = 0.5 * (upper - lower);
    if !holds(half) {
        return Ok(None);
    }
    // The probability rises from the limit to the middle; the far limit only makes the guard band wider.
    let (mut out, mut inside) = (one_sided.min(half), half);
    if holds(out) {
        return Ok(Some(out));
    }
    for _ in 0..80 {
        let middle = 0.5 * (out + inside);
        if holds(middle) {
            inside = middle;
        } else {
            out = middle;
        }
    }
    Ok(Some(inside))
}
