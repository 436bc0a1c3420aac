//! Hours of work and days of a job, and how far its scale may have drifted over them.

use crate::assembly::Assembly;
use estimation::{Drift, JobModel};
use jiff::Timestamp;
use trade::reading::{Reading, standing};

/// Hours of work since the first reading or check, in quarters, and the days among them.
pub(crate) struct Clock {
    /// Quarter hours in which something was read, rising, with the hours of work at each.
    quarters: Vec<(i64, f64)>,
    /// Hours of work at which another day begins.
    days_h: Vec<f64>,
}

/// A longer pause than this is a night or a weekend, and the scale is zeroed again after it. Common practice, no source.
const NIGHT_H: f64 = 8.0;
/// Hours of work after which a scale that drifts one way has come to rest: a working day.
const STEADY_H: f64 = 8.0;

impl Clock {
    /// Of a job without readings.
    pub(crate) const fn none() -> Self {
        Self { quarters: Vec::new(), days_h: Vec::new() }
    }

    fn of(times: impl Iterator<Item = Timestamp>) -> Self {
        let mut all: Vec<i64> = times.map(quarter).collect();
        all.sort_unstable();
        all.dedup();
        let mut clock = Self { quarters: Vec::with_capacity(all.len()), days_h: Vec::new() };
        let mut hours = 0.0;
        let mut before = None;
        for at in all {
            let pause_h = before.map_or(0.0, |before: i64| (at - before) as f64 / 4.0);
            hours += pause_h.min(NIGHT_H);
            if pause_h > NIGHT_H {
                clock.days_h.push(hours);
            }
            before = Some(at);
            clock.quarters.push((at, hours));
        }
        clock
    }

    pub(crate) fn hours(&self, at: Timestamp) -> f64 {
        let at = quarter(at);
        self.quarters.iter().rev().find(|(q, _)| *q <= at).map_or(0.0, |(_, hours)| *hours)
    }
}

fn quarter(at: Timestamp) -> i64 {
    at.as_second().div_euclid(900)
}

impl Assembly<'_> {
    /// The hours of work of a job: its readings, and the checks of its scales on those days.
    pub(crate) fn clock(&self, readings: &[Reading]) -> Clock {
        let checks = self.watch.checks.iter().map(|check| check.at);
        Clock::of(standing(readings).into_iter().map(|r| r.at).chain(checks))
    }

    /// Gives the balance scale its drift over the hours and days of the job's readings.
    pub(crate) fn let_drift(&self, model: &mut JobModel, readings: &[Reading]) {
        let clock = self.clock(readings);
        let (scale, day_sd) = (&self.shop.balance_scale, self.drift_day_sd());
        let may = scale.drift_sd_per_root_h > 0.0 || day_sd > 0.0 || !clock.days_h.is_empty();
        if clock.quarters.len() < 2 || !may {
            return;
        }
        let today_sd = self.today_sd(scale);
        for prior in model.scales.iter_mut().filter(|s| s.key == scale.key) {
            let own_share = if prior.offset_sd > 0.0 { (today_sd / prior.offset_sd).powi(2) } else { 0.0 };
            prior.drift = Some(Drift {
                sd_per_root_h: scale.drift_sd_per_root_h,
                knots_h: clock.quarters.iter().map(|(_, hours)| *hours).collect(),
                sd_per_h: day_sd / STEADY_H,
                steady_h: STEADY_H,
                days_h: clock.days_h.clone(),
                habit_share: (1.0 - own_share).clamp(0.0, 1.0),
            });
        }
    }
}
