//! Whether a scale is trusted, and what takes the trust away.

use crate::scale_health::chart::{ChartPoint, chart};
use fact::{Fact, Told};
use jiff::civil::Date;
use trade::error::TradeError;
use trade::gauge::Gauge;
use trade::id::EventId;
use trade::scale_event::{Happened, ScaleEvent, standing_checks};
use trade::trust::{Reason, Since, Trust, TrustCause, TrustFinding, TrustSaid};

/// What the newest check says against its scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Spoken {
    /// What shows that the scale is off: a check beyond its tolerance, or a pattern of checks.
    pub cause: TrustCause,
    /// What was found.
    pub finding: TrustFinding,
    /// Identity of the newest check.
    pub check: EventId,
    /// First day of it.
    pub since: Date,
    /// What the scale shows too much, on average since then.
    pub off_by: f64,
}

/// What the newest check that counts says against its scale; none where it says nothing. `events` are those of one
/// scale, in order.
///
/// # Errors
/// Figures that no chart can be made of.
pub fn judge(events: &[ScaleEvent], gauge: &Gauge) -> Result<Option<Spoken>, TradeError> {
    let standing = standing_checks(events);
    let Some((event, check)) = standing.last() else { return Ok(None) };
    let of_weight: Vec<_> = standing.iter().filter(|(_, c)| c.standard == check.standard).collect();
    if !check.passed() {
        let same = |c: &trade::scale_event::CheckRead| !c.passed() && (c.error() > 0.0) == (check.error() > 0.0);
        let run: Vec<_> = of_weight.iter().rev().take_while(|(_, c)| same(c)).collect();
        let (reading, standard) = (gauge.reading(check.reading), check.name.clone());
        let (by, allowed) = (gauge.amount(check.error()), gauge.amount(check.tolerance));
        let finding = if check.error() > 0.0 {
            TrustFinding::TooMuch { reading, standard, by, allowed }
        } else {
            TrustFinding::TooLittle { reading, standard, by, allowed }
        };
        return Ok(Some(Spoken {
            cause: TrustCause::Tolerance,
            finding,
            check: event.id.clone(),
            since: run.last().map_or(event.day, |(e, _)| e.day),
            off_by: mean(run.iter().map(|(_, c)| c.error())),
        }));
    }
    let Some(chart) = chart(events, &check.standard)? else { return Ok(None) };
    let Some(point) = chart.points.last().filter(|p| p.check == event.id) else { return Ok(None) };
    let Some(pattern) = point.patterns.first() else { return Ok(None) };
    let from = point.pattern_from.as_ref().and_then(|id| chart.points.iter().position(|p| p.check == *id));
    let run: &[ChartPoint] = &chart.points[from.unwrap_or(chart.points.len() - 1)..];
    let cause = TrustCause::from(*pattern);
    Ok(Some(Spoken {
        cause,
        finding: TrustFinding::Pattern { standard: check.name.clone(), cause },
        check: event.id.clone(),
        since: run.first().map_or(event.day, |p| p.day),
        off_by: mean(run.iter().map(|p| p.error)),
    }))
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    if count > 0.0 { sum / count } else { 0.0 }
}

/// Whether a scale is trusted on a day. `events` are those of one scale, in order.
#[must_use]
pub fn trust(events: &[ScaleEvent], gauge: &Gauge, today: Date) -> Trust {
    let mut found = Trust {
        trusted: true,
        since: None,
        off_by: None,
        reasons: Vec::new(),
        said: None,
        passed: None,
        extra_sd: 0.0,
    };
    let spoken = events
        .iter()
        .rposition(|e| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. }))
        .map(|at| (at, &events[at].what));
    // What may be off without anybody knowing: no less than the scale may be off by on any day.
    let unknown_sd = gauge.offset_sd.max(gauge.reading_sd());
    if let Some((at, Happened::Distrusted { cause, reason, since, off_by, .. })) = spoken {
        let later: Vec<_> = standing_checks(events).into_iter().filter(|(e, _)| e.day >= *since).collect();
        let known = *cause != TrustCause::Word || !later.is_empty();
        // A check that was passed since speaks for itself and not for the fault.
        let faulty = mean(later.iter().filter(|(_, c)| !c.passed()).map(|(_, c)| c.error()));
        let off_by = if faulty == 0.0 { *off_by } else { faulty };
        found.passed = standing_checks(&events[at..]).last().filter(|(_, c)| c.passed()).map(|(e, _)| e.id.clone());
        found.since = Some(*since);
        found.off_by = (known && off_by != 0.0).then_some(off_by);
        found.reasons.push(Reason { cause: *cause, finding: reason.clone() });
        found.extra_sd = off_by.abs().max(unknown_sd);
    }
    if let Some(due) = next_due(events).filter(|due| *due < today) {
        let finding = TrustFinding::Overdue { due_on: due }.told();
        found.reasons.push(Reason { cause: TrustCause::Overdue, finding });
        found.since = found.since.or(Some(due));
        found.extra_sd = found.extra_sd.max(unknown_sd);
    }
    found.trusted = found.reasons.is_empty();
    if !found.trusted {
        found.said = said(&found, gauge, today);
    }
    found
}

/// When the scale's calibration is due; none where that was never said.
pub(crate) fn next_due(events: &[ScaleEvent]) -> Option<Date> {
    events.iter().rev().find_map(|e| match &e.what {
        Happened::Calibrated { next_due, .. } => Some(*next_due),
        _ => None,
    })?
}

/// What is said of a scale that is not trusted, with what to do, as it is said on a day; none for a trusted one.
#[must_use]
pub fn said(found: &Trust, gauge: &Gauge, today: Date) -> Option<TrustSaid> {
    let (first, day) = (found.reasons.first()?, found.since?);
    let (scale, since) = (gauge.name.clone(), Since::of(day, today));
    let overdue_only = found.reasons.iter().all(|r| r.cause == TrustCause::Overdue);
    if found.passed.is_some() && !overdue_only {
        return Some(TrustSaid::Passed { scale, since });
    }
    Some(match found.off_by {
        Some(off_by) => TrustSaid::Off { scale, off_by: gauge.amount(off_by), way: gauge.measures.way(off_by), since },
        // Since an overdue calibration was due.
        None if overdue_only => TrustSaid::Overdue { scale, due_on: day },
        None => TrustSaid::NotTrusted { scale, since, reason: Told::clone(&first.finding) },
    })
}
