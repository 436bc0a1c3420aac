//! What came out of one job, counted so that jobs can be added up.

use serde::Serialize;
use std::collections::BTreeMap;

/// When the finish was forecast.
pub const STAGES: [&str; 5] = ["planned", "dry", "tip", "cured", "finish"];
/// What was forecast before it was read.
pub const READ: [&str; 6] = ["check", "dry", "tip", "cured", "gripped", "finish"];

/// A count out of a total.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Count {
    /// How many are.
    pub yes: u32,
    /// Out of how many.
    pub of: u32,
}

impl Count {
    /// Counts one.
    pub fn add(&mut self, yes: bool) {
        self.yes += u32::from(yes);
        self.of += 1;
    }

    /// Adds another count.
    pub fn join(&mut self, other: Self) {
        self.yes += other.yes;
        self.of += other.of;
    }
}

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
    /// Blunders.
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

/// A share with its uncertainty, counted over clusters.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Share {
    /// Percent.
    pub percent: f64,
    /// Lower and upper 95 % limit of the cluster estimate, percent.
    pub limits_percent: [f64; 2],
    /// Variance against that of independent cases.
    pub design_effect: f64,
    /// How many.
    pub of: u32,
}

/// A share over clusters: ratio estimate with its linearised variance between clusters (W. Cochran, Sampling
/// Techniques, 1977, §3.12); none of nothing.
#[must_use]
pub fn share(clusters: &[Count]) -> Option<Share> {
    let of: u32 = clusters.iter().map(|c| c.of).sum();
    if of == 0 {
        return None;
    }
    let yes: u32 = clusters.iter().map(|c| c.yes).sum();
    let (n, p) = (f64::from(of), f64::from(yes) / f64::from(of));
    let filled = clusters.iter().filter(|c| c.of > 0).count() as f64;
    let squares: f64 = clusters.iter().map(|c| (f64::from(c.yes) - p * f64::from(c.of)).powi(2)).sum();
    let correction = if filled > 1.0 { filled / (filled - 1.0) } else { 1.0 };
    let simple = p * (1.0 - p) / n;
    // Near 0 and 100 % a few clusters say little: never narrower than independent cases (Wilson's middle).
    let variance = (squares * correction / (n * n)).max(simple);
    let sd = variance.sqrt();
    let z = 1.959_964;
    let n_effective = if variance > 0.0 { p * (1.0 - p) / variance } else { n };
    let wilson = |sign: f64| {
        let z2 = z * z / n_effective;
        (p + z2 / 2.0 + sign * z * (sd * sd + z2 / (4.0 * n_effective)).sqrt()) / (1.0 + z2)
    };
    Some(Share {
        percent: 100.0 * p,
        limits_percent: [100.0 * wilson(-1.0).max(0.0), 100.0 * wilson(1.0).min(1.0)],
        design_effect: if simple > 0.0 { variance / simple } else { 1.0 },
        of,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: two clusters of eight, all and none: p = 0.5, sum of squares 2·4² = 32, variance 32·2/16² = 0.25
    /// against 0.25/16 of independent cases: sixteen times as much.
    #[test]
    fn clusters_that_agree_within_widen_the_limits() {
        let apart = share(&[Count { yes: 8, of: 8 }, Count { yes: 0, of: 8 }]).expect("cases");
        assert!((apart.percent - 50.0).abs() < 1e-9 && (apart.design_effect - 16.0).abs() < 1e-9);
        let mixed = share(&[Count { yes: 4, of: 8 }, Count { yes: 4, of: 8 }]).expect("cases");
        assert!((mixed.design_effect - 1.0).abs() < 1e-9);
        assert!(apart.limits_percent[0] < mixed.limits_percent[0]);
        assert!(share(&[]).is_none());
    }

    /// Wilson's limits of 16 of 16, computed with `statsmodels.stats.proportion.proportion_confint(16, 16,
    /// method="wilson")`: 0.8064 to 1.
    #[test]
    fn nothing_but_successes_still_leaves_a_limit() {
        let all = share(&[Count { yes: 8, of: 8 }, Count { yes: 8, of: 8 }]).expect("cases");
        assert!((all.limits_percent[0] - 80.64).abs() < 0.01, "{all:?}");
        assert!((all.limits_percent[1] - 100.0).abs() < 1e-9);
    }
}
