//! What came out of one job, counted so that jobs can be added up.

pub use bench::held::{Count, Difference, Share, paired, share};
use serde::Serialize;
use std::collections::BTreeMap;

/// When the finish was forecast.
pub const STAGES: [&str; 5] = ["planned", "dry", "tip", "cured", "finish"];
/// What was forecast before it was read.
pub const READ: [&str; 6] = ["check", "dry", "tip", "cured", "gripped", "finish"];

/// Sum and sum of squares.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Moments {
    n: f64,
    sum: f64,
    squares: f64,
}

impl Moments {
    /// Adds a value.
    pub fn add(&mut self, value: f64) {
        self.n += 1.0;
        self.sum += value;
        self.squares += value * value;
    }

    /// Adds another sum.
    pub fn join(&mut self, other: Self) {
        self.n += other.n;
        self.sum += other.sum;
        self.squares += other.squares;
    }

    /// Mean; 0 of nothing.
    #[must_use]
    pub fn mean(&self) -> f64 {
        if self.n > 0.0 { self.sum / self.n } else { 0.0 }
    }

    /// Root of the mean square; 0 of nothing.
    #[must_use]
    pub fn rms(&self) -> f64 {
        if self.n > 0.0 { (self.squares / self.n).sqrt() } else { 0.0 }
    }
}

/// What was done wrong on purpose, and what became of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BlunderSeen {
    /// Which blunder.
    pub kind: &'static str,
    /// How far the first reading that it touched was shifted, in standard deviations of its innovation.
    pub shift_in_s: f64,
    /// Whether that reading was doubted when it came in.
    pub at_once: bool,
    /// Whether a reading of the club that it touched was doubted at all before hand-over.
    pub found: bool,
    /// Whether the right cause was named first; none where causes were not asked.
    pub named: Option<bool>,
    /// The cause that was named first.
    pub first_cause: Option<String>,
}

/// What came out of one job, or of many.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Tally {
    /// Within ±0.3 points.
    pub within_03: Count,
    /// Within ±0.5 points.
    pub within_05: Count,
    /// True finish less goal.
    pub deviation: Moments,
    /// True finish less forecast when the last choice was made.
    pub error: Moments,
    /// Forecast less goal after the last choice: what the grips at hand could not correct.
    pub left: Moments,
    /// Chance of finishing in tolerance that was told after the last choice.
    pub chance: Moments,
    /// Grams in the tip.
    pub tip_g: Moments,
    /// Clubs taken apart again after gluing.
    pub rework: u32,
    /// Whether the 95 % band of the finish held, by stage.
    pub bands: [Count; STAGES.len()],
    /// Half width of that band.
    pub widths: [Moments; STAGES.len()],
    /// Whether a reading lay in the 95 % band of its forecast, by reading.
    pub innovations: [Count; READ.len()],
    /// Normalised innovations, by reading.
    pub z: [Moments; READ.len()],
    /// Good readings that were doubted at the end.
    pub false_doubts: Count,
    /// The same by what was read.
    pub false_doubts_by: BTreeMap<&'static str, Count>,
    /// Every blunder that was seeded, with what became of it.
    pub blunders: Vec<BlunderSeen>,
}

impl Tally {
    /// Counts a finished club.
    pub fn finished(&mut self, true_deviation_points: f64, tip_g: f64) {
        // A thousandth is less than anyone can tell.
        self.within_03.add(true_deviation_points.abs() <= 0.3 + 1e-3);
        self.within_05.add(true_deviation_points.abs() <= 0.5 + 1e-3);
        self.deviation.add(true_deviation_points);
        self.tip_g.add(tip_g);
    }

    /// Adds another tally.
    pub fn join(&mut self, other: &Self) {
        self.within_03.join(other.within_03);
        self.within_05.join(other.within_05);
        self.deviation.join(other.deviation);
        self.error.join(other.error);
        self.left.join(other.left);
        self.chance.join(other.chance);
        self.tip_g.join(other.tip_g);
        self.rework += other.rework;
        for i in 0..STAGES.len() {
            self.bands[i].join(other.bands[i]);
            self.widths[i].join(other.widths[i]);
        }
        for i in 0..READ.len() {
            self.innovations[i].join(other.innovations[i]);
            self.z[i].join(other.z[i]);
        }
        self.false_doubts.join(other.false_doubts);
        for (what, count) in &other.false_doubts_by {
            self.false_doubts_by.entry(what).or_default().join(*count);
        }
        self.blunders.extend(other.blunders.iter().cloned());
    }
}
