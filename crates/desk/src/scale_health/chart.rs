//! The chart of a scale's checks: one picture a check weight, limits from its first checks.

use estimation::chart::{Pattern, individuals, signals};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::EventId;
use trade::scale_event::Happened;
use trade::scale_event::{CheckRead, ScaleEvent, standing_checks};
use utoipa::ToSchema;

/// Checks that the limits are computed from; later ones are held against them (common practice: 20 to 25).
pub const BASE_FULL: usize = 20;
/// Fewer checks than this give no limits; the tolerance alone judges them (a judgement, no source).
const BASE_LEAST: usize = 8;

/// Upper limit of the range of two readings, in standard deviations of one: d2 + 3·d3 of two (derived; 3.267 times
/// 1.128).
const RANGE_LIMIT: f64 = 3.686;

/// One check on the chart.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ChartPoint {
    /// Identity of the check.
    pub check: EventId,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// The shop's day.
    #[schema(value_type = String, format = Date)]
    pub day: Date,
    /// Who.
    pub by: String,
    /// What the scale showed too much, in its unit.
    pub error: f64,
    /// How far from the check before; none for the first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub range: Option<f64>,
    /// Whether the limits were computed from it.
    pub in_base: bool,
    /// Whether it lies within its tolerance.
    pub passed: bool,
    /// Whether the range lies beyond its own limit: a jump.
    pub jump: bool,
    /// The patterns that it completes.
    pub patterns: Vec<Pattern>,
    /// The first of the checks that such a pattern is made of; none where there is no pattern.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pattern_from: Option<EventId>,
}

/// The chart of one check weight on one scale: what the scale shows too much, check by check, and how far one is from
/// the next.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct CheckChart {
    /// Key of the check weight.
    pub standard: String,
    /// What people call the check weight.
    pub name: String,
    /// By how much a check may be off, in the scale's unit.
    pub tolerance: f64,
    /// How many checks the limits were computed from; 0 while there are too few.
    pub base: usize,
    /// Centre line: the mean of the base period.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean: Option<f64>,
    /// Scatter from the moving ranges of the base period, no less than what one reading scatters by and than half a step
    /// of the display.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sd: Option<f64>,
    /// Lower limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower: Option<f64>,
    /// Upper limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper: Option<f64>,
    /// Mean moving range of the base period.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_range: Option<f64>,
    /// Upper limit of a moving range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub range_upper: Option<f64>,
    /// The checks since the chart was begun, in the order in which they were kept.
    pub points: Vec<ChartPoint>,
}

/// Where the chart begins: after the last adjustment, or where a new one was started.
pub(crate) fn begins(events: &[ScaleEvent]) -> usize {
    let starts =
        |e: &ScaleEvent| matches!(e.what, Happened::NewBase { .. } | Happened::Calibrated { adjusted: true, .. });
    events.iter().rposition(starts).map_or(0, |at| at + 1)
}

/// The chart of one check weight; none without a check of it. `events` are those of one scale, in order.
///
/// One check far out tells from the ninth on, the other patterns once the base period is whole; both from the
/// first check after the scale was last trusted again.
///
/// # Errors
/// Figures that no chart can be made of.
pub fn chart(events: &[ScaleEvent], standard: &str) -> Result<Option<CheckChart>, TradeError> {
    let first = begins(events);
    let checks: Vec<(&ScaleEvent, &CheckRead)> =
        standing_checks(&events[first..]).into_iter().filter(|(_, c)| c.standard == standard).collect();
    let Some((_, latest)) = checks.last() else { return Ok(None) };
    let errors: Vec<f64> = checks.iter().map(|(_, c)| c.error()).collect();
    let range = |i: usize| (i > 0).then(|| (errors[i] - errors[i - 1]).abs());
    let mut made = CheckChart {
        standard: standard.to_owned(),
        name: latest.name.clone(),
        tolerance: latest.tolerance,
        base: 0,
        mean: None,
        sd: None,
        lower: None,
        upper: None,
        mean_range: None,
        range_upper: None,
        points: checks
            .iter()
            .enumerate()
            .map(|(i, (event, check))| ChartPoint {
                check: event.id.clone(),
                at: event.at,
                day: event.day,
                by: event.by.clone(),
                error: errors[i],
                range: range(i),
                in_base: false,
                passed: check.passed(),
                jump: false,
                patterns: Vec::new(),
                pattern_from: None,
            })
            .collect(),
    };
    if errors.len() < BASE_LEAST {
        return Ok(Some(made));
    }
    made.base = errors.len().min(BASE_FULL);
    let base = individuals(&errors[..made.base])?;
    let half_step = 0.5 * latest.display_step;
    // Few checks that happen to lie close together must not make the limits narrower than one reading's own scatter.
    let reading_sd = latest.noise_sd.hypot(latest.display_step / 12f64.sqrt());
    let sd = base.sd.max(half_step).max(reading_sd).max(1e-9);
    let range_upper = base.range_upper.max(3.0 * half_step).max(RANGE_LIMIT * reading_sd);
    (made.mean, made.sd, made.mean_range) = (Some(base.mean), Some(sd), Some(base.mean_range));
    (made.lower, made.upper) = (Some(base.mean - 3.0 * sd), Some(base.mean + 3.0 * sd));
    made.range_upper = Some(range_upper);
    for (i, point) in made.points.iter_mut().enumerate() {
        point.in_base = i < made.base;
        point.jump = range(i).is_some_and(|r| r > range_upper + 1e-9);
    }
    let judged_from = (errors.len() - since_trusted(&events[first..], standard)).max(BASE_LEAST);
    for signal in signals(&errors[judged_from..], base.mean, sd, half_step)? {
        // Runs tell of a base period that is whole; one check far out tells at once.
        if signal.pattern != Pattern::Beyond && judged_from + signal.at < BASE_FULL {
            continue;
        }
        let from = made.points[judged_from + signal.from].check.clone();
        let point = &mut made.points[judged_from + signal.at];
        point.patterns.push(signal.pattern);
        point.pattern_from.get_or_insert(from);
    }
    Ok(Some(made))
}

/// How many checks of a check weight came after the scale was last trusted again; all of them where it never was.
fn since_trusted(events: &[ScaleEvent], standard: &str) -> usize {
    let trusted = events.iter().rposition(|e| matches!(e.what, Happened::Trusted { .. }));
    let after = &events[trusted.map_or(0, |at| at + 1)..];
    standing_checks(after).into_iter().filter(|(_, c)| c.standard == standard).count()
}

/// The charts of all check weights that were on the scale since its chart was begun, the latest used first.
///
/// # Errors
/// As [`chart`].
pub fn charts(events: &[ScaleEvent]) -> Result<Vec<CheckChart>, TradeError> {
    let mut keys: Vec<&str> = Vec::new();
    for (_, check) in standing_checks(&events[begins(events)..]).into_iter().rev() {
        if !keys.contains(&check.standard.as_str()) {
            keys.push(&check.standard);
        }
    }
    let mut all = Vec::new();
    for key in keys {
        all.extend(chart(events, key)?);
    }
    Ok(all)
}
