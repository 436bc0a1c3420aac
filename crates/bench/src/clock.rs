//! Hours of work and days of a job, and how far its scale may have drifted over them.

use crate::assembly::Assembly;
use estimation::{Drift, JobModel};
use jiff::Timestamp;
use trade::reading::{Reading, standing};

/// Hours of work since the first reading or check, in quarters, and the days among them.
pub(crate) struct Clock {
    /// Quarter hours in which something was read, rising, with the hours of work at each.
    quarters: Vec<(i64, f64)>,
    /// Hours of work at which another day begins, the next one among them on which nothing was read yet.
    days_h: Vec<f64>,
    /// When that next day begins, where it has.
    next_day_h: Option<f64>,
}

/// A longer pause than this is a night or a weekend, and the scale is zeroed again after it. Common practice, no source.
const NIGHT_H: f64 = 8.0;
/// Hours of work after which a scale that drifts one way has come to rest: a working day.
const STEADY_H: f64 = 8.0;

impl Clock {
    /// Of a job without readings.
    pub(crate) const fn none() -> Self {
        Self { quarters: Vec::new(), days_h: Vec::new(), next_day_h: None }
    }

    fn of(times: impl Iterator<Item = Timestamp>, next_day: bool) -> Self {
        let mut all: Vec<i64> = times.map(quarter).collect();
        all.sort_unstable();
        all.dedup();
        let mut clock = Self { quarters: Vec::with_capacity(all.len()), ..Self::none() };
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
        if next_day && before.is_some() {
            clock.days_h.push(hours + NIGHT_H);
            clock.next_day_h = Some(hours + NIGHT_H);
        }
        clock
    }

    /// Times of the knots of a drift, hours of work, rising.
    fn knots_h(&self) -> Vec<f64> {
        self.quarters.iter().map(|(_, hours)| *hours).chain(self.next_day_h).collect()
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
        Clock::of(standing(readings).into_iter().map(|r| r.at).chain(checks), self.watch.next_day)
    }

    /// Whether a night lies between the last of a job's readings and checks, and now: the scale will have been zeroed again,
    /// and what it shows next it shows on another day.
    #[must_use]
    pub fn is_next_day(&self, readings: &[Reading], now: Timestamp) -> bool {
        let checks = self.watch.checks.iter().map(|check| check.at);
        let last = standing(readings).into_iter().map(|r| r.at).chain(checks).max();
        last.is_some_and(|last| (quarter(now) - quarter(last)) as f64 / 4.0 > NIGHT_H)
    }

    /// Gives the balance scale its drift over the hours and days of the job's readings.
    pub(crate) fn let_drift(&self, model: &mut JobModel, readings: &[Reading]) {
        let clock = self.clock(readings);
        let (scale, day_sd) = (&self.shop.balance_scale, self.drift_day_sd());
        let knots_h = clock.knots_h();
        let may = scale.drift_sd_per_root_h > 0.0 || day_sd > 0.0 || !clock.days_h.is_empty();
        if knots_h.len() < 2 || !may {
            return;
        }
        let today_sd = self.today_sd(scale);
        for prior in model.scales.iter_mut().filter(|s| s.key == scale.key) {
            let own_share = if prior.offset_sd > 0.0 { (today_sd / prior.offset_sd).powi(2) } else { 0.0 };
            prior.drift = Some(Drift {
                sd_per_root_h: scale.drift_sd_per_root_h,
                knots_h: knots_h.clone(),
                sd_per_h: day_sd / STEADY_H,
                steady_h: STEADY_H,
                days_h: clock.days_h.clone(),
                habit_share: (1.0 - own_share).clamp(0.0, 1.0),
                now_h: clock.next_day_h,
            });
        }
    }
}
