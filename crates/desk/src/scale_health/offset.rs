//! What a scale is off by, and how fast it wanders, from its checks.

use crate::scale_health::chart::begins;
use bench::belief::BAND_95;
use estimation::gls::{Noise, fit};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::scale_event::{CheckRead, Happened, ScaleEvent, standing_checks};
use utoipa::ToSchema;

/// Checks older than this many days say little of today.
const DAYS: f64 = 60.0;
/// A drift needs this many checks over this many days.
const DRIFT_CHECKS: usize = 5;
const DRIFT_DAYS: f64 = 3.0;
const DAY_S: f64 = 86_400.0;

/// What a scale shows too much, as its checks of the last weeks tell.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Offset {
    /// What it shows too much at its latest check, in its unit.
    pub offset: f64,
    /// Half width of the 95 % band of that, what the check weights themselves leave open included.
    pub offset_band: f64,
    /// By how much that grows in a day; none where the checks are too few or too close together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drift_per_day: Option<f64>,
    /// Half width of its 95 % band.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drift_per_day_band: Option<f64>,
    /// Whether the drift stands out of its band.
    pub drifts: bool,
    /// From how many checks.
    pub checks: usize,
    /// Over how many days.
    pub days: f64,
}

/// Offset and drift by least squares on the standing checks of the scale as it stands now, of the last 60 days; none
/// without a check. It stands as it does since its chart was begun, since it was last trusted again, or since what takes
/// its trust began.
///
/// `error = offset + drift·days + noise`; a reading's noise is what the scale states (with its rounding), more where the
/// checks scatter more than that. The certificates' own uncertainty is added to the offset, the best of them.
///
/// # Errors
/// Figures that no line can be laid through.
pub fn offset(events: &[ScaleEvent]) -> Result<Option<Offset>, TradeError> {
    let all = of_this_state(events);
    // The latest by the clock; a clock that was set back must not make a check lie in the future.
    let Some(now_s) = all.iter().map(|(e, _)| e.at.as_second()).max() else { return Ok(None) };
    let days_ago = |s: i64| (s - now_s) as f64 / DAY_S;
    let used: Vec<_> = all.into_iter().filter(|(e, _)| days_ago(e.at.as_second()) >= -DAYS).collect();
    let days = used.iter().map(|(e, _)| -days_ago(e.at.as_second())).fold(0.0, f64::max);
    let values: Vec<f64> = used.iter().map(|(_, c)| c.error()).collect();
    let variances: Vec<f64> =
        used.iter().map(|(_, c)| (c.noise_sd.powi(2) + c.display_step.powi(2) / 12.0).max(1e-12)).collect();
    let with_drift = used.len() >= DRIFT_CHECKS && days >= DRIFT_DAYS;
    let design: Vec<Vec<f64>> =
        used.iter().map(|(e, _)| if with_drift { vec![1.0, days_ago(e.at.as_second())] } else { vec![1.0] }).collect();
    let line = fit(&design, &values, Noise::Variances(&variances))?;
    let times = line.residual_sd.unwrap_or(1.0).max(1.0);
    let certified_sd = used.iter().map(|(_, c)| c.certified_sd).fold(f64::INFINITY, f64::min);
    let sd = |i: usize| line.covariance[i][i].max(0.0).sqrt() * times;
    let drift = with_drift.then(|| (line.coefficients[1], BAND_95 * sd(1)));
    Ok(Some(Offset {
        offset: line.coefficients[0],
        offset_band: BAND_95 * sd(0).hypot(certified_sd),
        drift_per_day: drift.map(|d| d.0),
        drift_per_day_band: drift.map(|d| d.1),
        drifts: drift.is_some_and(|(per_day, band)| per_day.abs() > band),
        checks: used.len(),
        days,
    }))
}

/// The checks since something last happened to the scale: before that it was another.
fn of_this_state(events: &[ScaleEvent]) -> Vec<(&ScaleEvent, &CheckRead)> {
    let word = |e: &ScaleEvent| matches!(e.what, Happened::Trusted { .. } | Happened::Distrusted { .. });
    let (from, since) = match events.iter().rposition(word).map(|at| (at, &events[at].what)) {
        Some((at, Happened::Trusted { check, .. })) => {
            // The check that it was trusted on again is the first of the scale as it is now.
            let passed = check.as_ref().and_then(|id| events.iter().position(|e| e.id == *id));
            (passed.unwrap_or(at), None)
        }
        Some((_, Happened::Distrusted { since, .. })) => (0, Some(*since)),
        _ => (0, None),
    };
    let checks = standing_checks(&events[from.max(begins(events))..]);
    checks.into_iter().filter(|(e, _)| since.is_none_or(|since| e.day >= since)).collect()
}
