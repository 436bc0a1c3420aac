//! Wide where ignorant: a belief that allows for a shop, a lot or a maker's figure being far from the usual.
//!
//! A shared mean whose figure may be wrong has two priors: the usual one, and one centred elsewhere, several times as wide,
//! with more scatter of single pieces. Each combination of them is a Gaussian belief of its own, weighed by how likely it
//! makes all readings (its evidence); forecasts are those of the mixture. So several good readings that are off the same
//! way move the shared mean, where a narrow Gaussian would doubt them one by one.

use crate::belief::{Belief, Forecast};
use crate::doubt::{Doubt, NO_DOUBT};
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::normal;
use crate::reading::{Observation, Probe, Standing};

/// Combinations less likely than this are dropped, and not solved where the others tell as much.
const LEAST: f64 = 0.005;
/// At most so many combinations are carried.
const MOST: usize = 8;
/// A reading that a combination sets aside counts as a bad one in its evidence: once in so many, …
const BAD_READING: f64 = 0.02;
/// … and anywhere within this standard deviation, in the unit of the reading.
const BAD_SD: f64 = 3.0;

/// A shared mean that may lie far from its figure.
#[derive(Debug, Clone, PartialEq)]
pub struct WideMean {
    /// Key of the shared deviation.
    pub key: String,
    /// How likely it is that the usual prior does not hold.
    pub chance: f64,
    /// How far the middle of the wide prior lies from that of the usual one, in the unit of the deviation.
    pub shift: f64,
    /// How many times as wide it is.
    pub times_wide: f64,
    /// How many times as much single pieces scatter with it.
    pub times_scatter: f64,
}

impl WideMean {
    /// A tenth lies a quarter of `mean` above, three times as wide, with half as much scatter again (common practice, no
    /// source; five forms were tried in simulated shops, none was clearly best).
    #[must_use]
    pub fn of(key: impl Into<String>, mean: f64) -> Self {
        Self { key: key.into(), chance: 0.1, shift: 0.25 * mean, times_wide: 3.0, times_scatter: 1.5 }
    }

    /// A tenth lies to either side, three times as wide, with half as much scatter again.
    #[must_use]
    pub fn either_way(key: impl Into<String>) -> Self {
        Self::of(key, 0.0)
    }

    /// The same with no more scatter than usual. It costs little: as long as no reading is set aside, nothing is solved again.
    #[must_use]
    pub fn of_mean_alone(key: impl Into<String>) -> Self {
        Self { times_scatter: 1.0, ..Self::either_way(key) }
    }

    /// The model with the wide prior in place of the usual one.
    #[must_use]
    pub fn instead(&self, model: &JobModel) -> JobModel {
        let mut model = model.clone();
        for shared in model.shared.iter_mut().filter(|s| s.key == self.key) {
            shared.mean_shift += self.shift;
            shared.sd *= self.times_wide;
        }
        for joint in &mut model.joint {
            let Some(at) = joint.keys.iter().position(|key| *key == self.key) else { continue };
            for (i, row) in joint.covariance.iter_mut().enumerate() {
                row[at] *= self.times_wide;
                if i == at {
                    row.iter_mut().for_each(|c| *c *= self.times_wide);
                }
            }
        }
        for club in &mut model.clubs {
            let of_pieces = club.pieces.iter_mut().flat_map(|p| [&mut p.mass_g, &mut p.arm_in]);
            for value in of_pieces.chain([&mut club.cap_in]) {
                if value.shared.iter().any(|s| s.key == self.key) {
                    value.piece_sd *= self.times_scatter;
                }
            }
        }
        model
    }
}

/// One combination of usual and wide priors after the readings.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its probability; those of all parts add up to 1.
    pub weight: f64,
    /// Keys of the means that are wide in it.
    pub wide: Vec<String>,
    /// The belief under it.
    pub belief: Belief,
}

/// A belief that allows for some means lying far from their figures.
#[derive(Debug, Clone)]
pub struct Mixture {
    /// The combinations, the likeliest first; at least one.
    pub parts: Vec<Part>,
    /// The readings set aside, as the likeliest combination tells them.
    pub doubt: Doubt,
}

impl JobModel {
    /// Solves the job under combinations of usual and wide means: none wide, each by itself, and those pairs that their single
    /// evidences leave likely. Which readings are set aside is told by the combination that makes all readings together the
    /// likeliest; then each is solved for the same readings.
    ///
    /// # Errors
    ///
    /// As [`JobModel::solve_with_doubt`]; a chance that is not between 0 and 1.
    pub fn solve_mixture(&self, wide: &[WideMean], readings: &[Observation], limit: f64) -> Result<Mixture, E> {
        for mean in wide {
            E::positive(|| format!("wide[{}].chance", mean.key), mean.chance)?;
            E::positive(|| format!("wide[{}].chance", mean.key), 1.0 - mean.chance)?;
        }
        let usual = self.tried(wide, Vec::new(), readings, limit)?;
        // What the usual means explain leaves no other combination anything to set aside.
        let explained = usual.doubt.set_aside.is_empty();
        let limit = if explained { NO_DOUBT } else { limit };
        // Then a mean with as much scatter as ever is only another prior of one state: nothing is solved again for it.
        let (solved, light): (Vec<_>, Vec<_>) =
            wide.iter().take(MOST - 1).partition(|mean| !explained || mean.times_scatter != 1.0);
        let mut tried = vec![usual];
        for mean in &solved {
            tried.push(self.tried(wide, vec![mean], readings, limit)?);
        }
        for at in 0..tried.len() {
            for mean in &light {
                let tilted = self.tilted(&tried[at], mean)?;
                tried.push(tilted);
            }
        }
        for (score, pair) in likely_pairs(&tried[..=solved.len()], &solved) {
            if score >= LEAST.ln() {
                tried.push(self.tried(wide, pair, readings, limit)?);
            }
        }
        tried.sort_by(|a, b| b.score.total_cmp(&a.score));
        tried.truncate(MOST);
        let set_aside = tried[0].doubt.set_aside.clone();
        let mut standing = readings.to_vec();
        for reading in &mut standing {
            if matches!(reading.standing, Standing::Believed | Standing::Doubted) {
                let aside = set_aside.contains(&reading.id);
                reading.standing = if aside { Standing::Doubted } else { Standing::Believed };
            }
        }
        let (mut parts, mut chosen) = (Vec::with_capacity(tried.len()), None);
        for Tried { wide, doubt, prior, .. } in tried {
            let belief = if doubt.set_aside == set_aside {
                doubt.belief.clone()
            } else {
                self.with_wide(&wide).solve(&standing)?
            };
            chosen.get_or_insert(doubt);
            let weight = prior + belief.log_evidence();
            parts.push(Part { weight, wide: wide.into_iter().map(|w| w.key.clone()).collect(), belief });
        }
        let top = parts.iter().fold(f64::NEG_INFINITY, |most: f64, p| most.max(p.weight));
        E::finite(|| "mixture.evidence".into(), top)?;
        parts.iter_mut().for_each(|p| p.weight = (p.weight - top).exp());
        let total: f64 = parts.iter().map(|p| p.weight).sum();
        // The usual one is kept however unlikely: what a shop learns is told from it.
        parts.retain(|p| p.weight >= LEAST * total || p.wide.is_empty());
        let total: f64 = parts.iter().map(|p| p.weight).sum();
        parts.iter_mut().for_each(|p| p.weight /= total);
        parts.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        let Some(mut doubt) = chosen else {
            return Err(E::NotFinite { place: "mixture".into(), value: f64::NAN });
        };
        doubt.belief = parts[0].belief.clone();
        Ok(Mixture { parts, doubt })
    }

    fn tried<'a>(
        &self,
        all: &[WideMean],
        wide: Vec<&'a WideMean>,
        readings: &[Observation],
        limit: f64,
    ) -> Result<Tried<'a>, E> {
        let doubt = self.with_wide(&wide).solve_with_doubt(readings, limit)?;
        let is_wide = |mean: &WideMean| wide.iter().any(|other| other.key == mean.key);
        let prior = all.iter().map(|m| if is_wide(m) { m.chance.ln() } else { (1.0 - m.chance).ln() }).sum();
        let a_bad = (BAD_READING / BAD_SD / (2.0 * std::f64::consts::PI).sqrt()).ln();
        let score = prior + doubt.belief.log_evidence() + doubt.set_aside.len() as f64 * a_bad;
        Ok(Tried { wide, doubt, prior, score })
    }

    fn with_wide(&self, wide: &[&WideMean]) -> Self {
        wide.iter().fold(self.clone(), |model, mean| mean.instead(&model))
    }

    /// A combination with one more mean wide, which scatters no more for it.
    fn tilted<'a>(&self, tried: &Tried<'a>, mean: &'a WideMean) -> Result<Tried<'a>, E> {
        let Some(usual) = self.shared.iter().find(|s| s.key == mean.key) else {
            return Err(E::Unknown { what: "shared", key: mean.key.clone(), wanted_by: "wide".into() });
        };
        let before = Forecast { mean: usual.mean_shift, sd: usual.sd };
        let now = Forecast { mean: before.mean + mean.shift, sd: before.sd * mean.times_wide };
        let belief = tried.doubt.belief.tilted(&mean.key, before, now)?;
        let more = (mean.chance / (1.0 - mean.chance)).ln();
        let score = tried.score + more + belief.log_evidence() - tried.doubt.belief.log_evidence();
        let wide = tried.wide.iter().copied().chain([mean]).collect();
        // Only where nothing was set aside is nothing solved again.
        let rehabilitated = tried.doubt.rehabilitated.clone();
        let doubt = Doubt { belief, set_aside: Vec::new(), rehabilitated, suspicions: Vec::new() };
        Ok(Tried { wide, doubt, prior: tried.prior + more, score })
    }
}

/// A combination, solved.
struct Tried<'a> {
    wide: Vec<&'a WideMean>,
    doubt: Doubt,
    /// Logarithms of its prior probability, and of that with its evidence.
    prior: f64,
    score: f64,
}

/// Pairs of means by the logarithm of their share, as it would be if the readings told of each by itself: the likeliest first.
/// The first of `tried` has none wide, the others one each.
fn likely_pairs<'a>(tried: &[Tried<'_>], wide: &[&'a WideMean]) -> Vec<(f64, Vec<&'a WideMean>)> {
    let (usual, single) = (tried[0].score, &tried[1..]);
    let top = tried.iter().map(|t| t.score).fold(f64::NEG_INFINITY, f64::max);
    let total = top + tried.iter().map(|t| (t.score - top).exp()).sum::<f64>().ln();
    let mut pairs = Vec::new();
    for (i, one) in single.iter().enumerate() {
        for (j, other) in single.iter().enumerate().skip(i + 1) {
            pairs.push((one.score + other.score - usual - total, vec![wide[i], wide[j]]));
        }
    }
    pairs.sort_by(|a, b| b.0.total_cmp(&a.0));
    pairs
}

impl Mixture {
    /// The belief with all means as usual.
    #[must_use]
    pub fn usual(&self) -> &Belief {
        self.parts.iter().find(|p| p.wide.is_empty()).map_or(&self.doubt.belief, |p| &p.belief)
    }

    /// How likely it is that a mean lies far from its figure.
    #[must_use]
    pub fn chance_wide(&self, key: &str) -> f64 {
        self.parts.iter().filter(|p| p.wide.iter().any(|wide| wide == key)).map(|p| p.weight).sum()
    }

    /// A quantity as each part forecasts it.
    ///
    /// # Errors
    ///
    /// What `of` says.
    pub fn normals<X>(&self, of: impl Fn(&Belief) -> Result<Forecast, X>) -> Result<Normals, X> {
        let each = self.parts.iter().map(|p| Ok((p.weight, of(&p.belief)?)));
        Ok(Normals::of(&each.collect::<Result<Vec<_>, X>>()?))
    }

    /// One forecast from those of all parts: their common mean, and half the width of their common 95 % band as a standard
    /// deviation, so that ±1.96 of it holds 95 %.
    ///
    /// # Errors
    ///
    /// What `of` says.
    pub fn forecast<X>(&self, of: impl Fn(&Belief) -> Result<Forecast, X>) -> Result<Forecast, X> {
        Ok(self.normals(of)?.as_one())
    }

    /// Standard deviation that a question will have once `planned` readings (question and noise, in sd) are taken, that of the
    /// common band of all parts.
    ///
    /// # Errors
    ///
    /// As [`Belief::sd_after`].
    pub fn sd_after(&self, probe: &Probe, planned: &[(Probe, f64)]) -> Result<f64, E> {
        let then = |belief: &Belief| {
            let mean = belief.answer(probe)?.mean;
            Ok::<_, E>(Forecast { mean, sd: belief.sd_after(probe, planned)? })
        };
        Ok(self.forecast(then)?.sd)
    }

    /// The mean of something over all parts, a chance for one.
    ///
    /// # Errors
    ///
    /// What `of` says.
    pub fn mean<X>(&self, of: impl Fn(&Belief) -> Result<f64, X>) -> Result<f64, X> {
        self.parts.iter().map(|p| Ok(p.weight * of(&p.belief)?)).sum()
    }
}

/// A quantity that is distributed as one of a few normal distributions.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Normals {
    of: [(f64, Forecast); MOST],
    count: usize,
}

impl Normals {
    /// From weights that add up to 1 and normal distributions; what goes beyond eight is left out.
    #[must_use]
    pub fn of(each: &[(f64, Forecast)]) -> Self {
        let mut made = Self { count: each.len().min(MOST), ..Self::default() };
        made.of.iter_mut().zip(each).for_each(|(place, one)| *place = *one);
        made
    }

    /// Weights and normal distributions.
    #[must_use]
    pub fn parts(&self) -> &[(f64, Forecast)] {
        &self.of[..self.count]
    }

    /// The same moved by a known amount, in its unit.
    #[must_use]
    pub fn moved(mut self, by: f64) -> Self {
        self.of.iter_mut().for_each(|(_, f)| f.mean += by);
        self
    }

    /// The same in another unit: every value times a factor above 0.
    #[must_use]
    pub fn scaled(mut self, by: f64) -> Self {
        self.of.iter_mut().for_each(|(_, f)| *f = Forecast { mean: f.mean * by, sd: f.sd * by });
        self
    }

    /// Probability of a value from `low` to `high`.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Forecast, Normals};
    /// // Half N(0, 1), half N(3, 1), from −1 to 1 (tables): 0.5 · 0.6827 + 0.5 · (Φ(−2) − Φ(−4)) = 0.5 · (0.6827 + 0.0227).
    /// let two = Normals::of(&[(0.5, Forecast { mean: 0.0, sd: 1.0 }), (0.5, Forecast { mean: 3.0, sd: 1.0 })]);
    /// assert!((two.between(-1.0, 1.0) - 0.3527).abs() < 5e-5);
    /// ```
    #[must_use]
    pub fn between(&self, low: f64, high: f64) -> f64 {
        self.parts().iter().map(|(weight, f)| weight * normal::between(low, high, f.mean, f.sd)).sum()
    }

    /// Mean, and half the width of the band about it that holds 95 % as a standard deviation.
    #[must_use]
    pub fn as_one(&self) -> Forecast {
        if let [(_, only)] = self.parts() {
            return *only;
        }
        let mean = self.parts().iter().map(|(weight, f)| weight * f.mean).sum();
        Forecast { mean, sd: self.half_band(mean) / 1.959_963_984_540_054 }
    }

    fn half_band(&self, mean: f64) -> f64 {
        let farthest = self.parts().iter().map(|(_, f)| (f.mean - mean).abs() + 4.0 * f.sd);
        let (mut low, mut high) = (0.0, farthest.fold(0.0, f64::max));
        // Forty halvings leave less than a millionth of a millionth.
        for _ in 0..40 {
            let middle = 0.5 * (low + high);
            if self.between(mean - middle, mean + middle) < 0.95 { low = middle } else { high = middle }
        }
        high
    }
}
