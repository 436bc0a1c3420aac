//! Wide where ignorant: a belief that allows for a shop, a lot or a maker's figure being far from the usual.
//!
//! A shared mean whose figure may be wrong has two priors: the usual one, and one centred elsewhere, several times as wide,
//! with more scatter of single pieces. Each combination of them is a Gaussian belief of its own, weighed by how likely it
//! makes all readings (its evidence); forecasts are those of the mixture. So several good readings that are off the same
//! way move the shared mean, where a narrow Gaussian would doubt them one by one.

use crate::belief::{Belief, Forecast};
use crate::doubt::Doubt;
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::normal;
use crate::reading::{Observation, Standing};

/// Combinations less likely than this are dropped.
const LEAST: f64 = 1e-3;
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

    /// The model with the wide prior in place of the usual one.
    fn instead(&self, model: &JobModel) -> JobModel {
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
    /// Solves the job under each combination of usual and wide means. Which readings are set aside is told by the
    /// combination that makes all readings together the likeliest; then each is solved for the same readings.
    ///
    /// # Errors
    ///
    /// As [`JobModel::solve_with_doubt`]; a chance that is not between 0 and 1.
    pub fn solve_mixture(&self, wide: &[WideMean], readings: &[Observation], limit: f64) -> Result<Mixture, E> {
        let mut combinations: Vec<(f64, Vec<&WideMean>)> = vec![(1.0, Vec::new())];
        for mean in wide {
            let chance = E::positive(|| format!("wide[{}].chance", mean.key), mean.chance)?;
            E::positive(|| format!("wide[{}].chance", mean.key), 1.0 - chance)?;
            let with = combinations.clone().into_iter().map(|(p, mut of)| {
                of.push(mean);
                (p * chance, of)
            });
            let with: Vec<_> = with.collect();
            combinations.iter_mut().for_each(|(p, _)| *p *= 1.0 - chance);
            combinations.extend(with);
            combinations.sort_by(|a, b| b.0.total_cmp(&a.0));
            combinations.retain(|(p, _)| *p >= LEAST);
            combinations.truncate(MOST);
        }
        let mut tried = Vec::with_capacity(combinations.len());
        for (prior, of) in combinations {
            let model = of.iter().fold(self.clone(), |model, mean| mean.instead(&model));
            let doubt = model.solve_with_doubt(readings, limit)?;
            let bad: f64 =
                doubt.set_aside.len() as f64 * (BAD_READING / BAD_SD / (2.0 * std::f64::consts::PI).sqrt()).ln();
            let score = prior.ln() + doubt.belief.log_evidence() + bad;
            tried.push((prior, of, model, doubt, score));
        }
        tried.sort_by(|a, b| b.4.total_cmp(&a.4));
        let set_aside = tried[0].3.set_aside.clone();
        let mut standing = readings.to_vec();
        for reading in &mut standing {
            if matches!(reading.standing, Standing::Believed | Standing::Doubted) {
                let aside = set_aside.contains(&reading.id);
                reading.standing = if aside { Standing::Doubted } else { Standing::Believed };
            }
        }
        let (mut parts, mut chosen) = (Vec::with_capacity(tried.len()), None);
        for (prior, of, model, doubt, _) in tried {
            let belief = if doubt.set_aside == set_aside { doubt.belief.clone() } else { model.solve(&standing)? };
            chosen.get_or_insert(doubt);
            let score = prior.ln() + belief.log_evidence();
            parts.push(Part { weight: score, wide: of.into_iter().map(|w| w.key.clone()).collect(), belief });
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

    /// One forecast from those of all parts: their common mean, and half the width of their common 95 % band as a standard
    /// deviation, so that ±1.96 of it holds 95 %.
    ///
    /// # Errors
    ///
    /// What `of` says.
    pub fn forecast<X>(&self, of: impl Fn(&Belief) -> Result<Forecast, X>) -> Result<Forecast, X> {
        let each: Vec<(f64, Forecast)> =
            self.parts.iter().map(|p| Ok((p.weight, of(&p.belief)?))).collect::<Result<_, X>>()?;
        if let [(_, only)] = each.as_slice() {
            return Ok(*only);
        }
        let mean = each.iter().map(|(w, f)| w * f.mean).sum();
        let half = half_band(&each, mean);
        Ok(Forecast { mean, sd: half / 1.959_963_984_540_054 })
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

/// Half the width of the band about the mean that holds 95 % of a mixture.
fn half_band(each: &[(f64, Forecast)], mean: f64) -> f64 {
    let held = |half: f64| -> f64 {
        each.iter().map(|(w, f)| w * normal::between(mean - half, mean + half, f.mean, f.sd)).sum()
    };
    let (mut low, mut high) = (0.0, each.iter().map(|(_, f)| (f.mean - mean).abs() + 4.0 * f.sd).fold(0.0, f64::max));
    // Forty halvings leave less than a millionth of a millionth.
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if held(middle) < 0.95 { low = middle } else { high = middle }
    }
    high
}
