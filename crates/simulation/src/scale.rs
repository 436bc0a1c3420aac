//! The instruments of a simulated shop: truth, offset of the day, drift, noise, then the step of the display.

use crate::draw::{Draw, Stream};
use crate::job::SimulatedJob;
use crate::shop::SimulatedShop;
use trade::reading::What;

/// When something is read: hours since the morning. Readings of a second day follow after a night.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Hours of work since the morning of the first day.
    pub hours: f64,
    /// 0 or 1: which day's offset counts.
    pub day: usize,
}

impl Moment {
    /// Seconds since the morning of the first day.
    #[must_use]
    pub fn seconds(self) -> i64 {
        let night_h = if self.day == 0 { 0.0 } else { 15.0 };
        ((self.hours + night_h) * 3600.0).round() as i64
    }
}

/// Which reading: its noise is drawn from its name, so that every strategy that takes it meets the same noise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Name {
    /// Place of the club.
    pub slot: usize,
    /// Which stage.
    pub stage: u64,
    /// What is read.
    pub what: What,
    /// The how-manieth.
    pub nth: u64,
}

/// The instruments on the days of one job.
#[derive(Debug, Clone, Copy)]
pub struct Instruments<'a> {
    /// Whose scales they are.
    pub shop: &'a SimulatedShop,
    /// On whose days they are read.
    pub job: &'a SimulatedJob,
}

/// Step of the balance scale, points, and of the mass scale, g.
pub const STEP: f64 = 0.1;
/// Step of a rule, mm.
pub(crate) const RULE_STEP_MM: f64 = 0.5;

fn rounded(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

impl Instruments<'_> {
    fn noise(&self, name: Name, sd: f64) -> f64 {
        let path = [self.job.shop_id, self.job.number, name.slot as u64, name.stage, name.what as u64, name.nth];
        Draw::of(self.shop.seed, Stream::Reading, &path).normal(0.0, sd)
    }

    /// What the balance scale shows too much at a moment, points.
    #[must_use]
    pub(crate) fn swing_weight_error_points(&self, at: Moment) -> f64 {
        self.job.day.offset_points[at.day] + self.job.day.drift_points * (at.hours / 8.0).min(1.0)
    }

    /// The balance scale's display.
    #[must_use]
    pub fn swing_weight(&self, true_points: f64, at: Moment, name: Name) -> f64 {
        rounded(true_points + self.swing_weight_error_points(at) + self.noise(name, self.shop.noise_points), STEP)
    }

    /// The mass scale's display.
    #[must_use]
    pub fn mass(&self, true_g: f64, name: Name) -> f64 {
        rounded(true_g + self.job.day.mass_offset_g + self.noise(name, self.shop.scatter.mass_noise_g), STEP)
    }

    /// A rule.
    #[must_use]
    pub fn length(&self, true_mm: f64, name: Name) -> f64 {
        rounded(true_mm + self.noise(name, self.shop.scatter.rule_mm), RULE_STEP_MM)
    }

    /// A caliper on a cap.
    #[must_use]
    pub fn caliper(&self, true_mm: f64, name: Name) -> f64 {
        rounded(true_mm + self.noise(name, self.shop.scatter.caliper_mm), STEP)
    }

    /// A grip balanced on an edge.
    #[must_use]
    pub fn edge(&self, true_mm: f64, name: Name) -> f64 {
        rounded(true_mm + self.noise(name, self.shop.scatter.edge_mm), RULE_STEP_MM)
    }
}
