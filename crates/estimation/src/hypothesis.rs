//! What may have gone wrong, weighed against everything that was read.
//!
//! A hypothesis is a named change with a prior probability: an unknown amount (grams, inches, points …) that shifts some
//! of the readings by so much a unit, or a reading that was meant to be another value. Its evidence is the probability
//! density of all readings in question under it, given all other readings. With `r` the readings less their forecast
//! from the others, `C` the covariance of that difference and `A` the shifts of the readings by the unknown amounts
//! `u ~ N(μ, Σ)`,
//!
//! ```text
//! evidence = N(r; A·μ, C + A·Σ·Aᵀ)
//! ```
//!
//! (derived; exact where the model is linear, and the moments of a club are within 0.002 point of it). `C` is factorised
//! once, so that a hypothesis costs two triangular solutions, however large the job. A reading that was meant to be `v`
//! and shows `y` enters with `v` in place of `y`; what was typed is not a shift of what was forecast. Where the slip
//! stretches the scale (grams for ounces) the density is multiplied by `|dv/dy|`.
//!
//! Readings that share the rounding of a coarse display count here as if each rounded by itself.

use crate::belief::{Belief, Forecast};
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::layout::Layout;
use crate::predict::Row;
use crate::reading::{Observation, Standing};
use crate::rounding::step_variance;
use crate::solve::in_order;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use utoipa::ToSchema;

/// How a change shows in one reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Effect {
    /// The reading, taken or planned.
    pub reading: String,
    /// What one unit of the amount adds to it, in the reading's unit.
    pub per_unit: f64,
}

/// An unknown amount that shifts readings together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Change {
    /// Expected amount, in any unit.
    pub mean: f64,
    /// Its standard deviation, same unit; 0 when it is known.
    pub sd: f64,
    /// The readings that it shifts.
    pub effects: Vec<Effect>,
}

/// A reading that was meant to be another value than it says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Misread {
    /// Key of the reading in the model of the job.
    pub reading: String,
    /// What it was meant to be, in its unit.
    pub meant: f64,
    /// How much the meant value changes with the one shown: 1 for swapped digits, 28.35 for ounces taken as grams.
    pub stretch: f64,
}

/// One thing that may have gone wrong, or several at once; without changes: nothing did.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Hypothesis {
    /// Name.
    pub key: String,
    /// How likely it is before the readings, against the others; they need not add up to 1.
    pub prior: f64,
    /// Amounts that shift readings, independent of each other.
    #[serde(default)]
    pub changes: Vec<Change>,
    /// Readings that were meant otherwise.
    #[serde(default)]
    pub misread: Vec<Misread>,
}

impl Hypothesis {
    /// Nothing went wrong.
    #[must_use]
    pub fn nothing(key: impl Into<String>, prior: f64) -> Self {
        Self { key: key.into(), prior, changes: Vec::new(), misread: Vec::new() }
    }

    /// An amount that shifts one reading one for one.
    #[must_use]
    pub fn shift(key: impl Into<String>, prior: f64, reading: impl Into<String>, mean: f64, sd: f64) -> Self {
        let effects = vec![Effect { reading: reading.into(), per_unit: 1.0 }];
        Self { changes: vec![Change { mean, sd, effects }], ..Self::nothing(key, prior) }
    }
}

/// What a planned reading would show.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlook {
    /// Name that the planned reading will have.
    pub id: String,
    /// What it will show under each hypothesis, noise and rounding included.
    pub under: Vec<Forecast>,
}

/// Hypotheses after the readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed {
    /// Names of the hypotheses, in the order given.
    pub keys: Vec<String>,
    /// Probability of each; they add up to 1.
    pub posterior: Vec<f64>,
    /// Logarithm of the density of the readings in question under each, given the other readings.
    pub log_evidence: Vec<f64>,
    /// The amounts of each hypothesis as the readings leave them, in the order of its changes.
    pub amounts: Vec<Vec<Forecast>>,
    /// What the planned readings would show.
    pub outlooks: Vec<Outlook>,
}

impl JobModel {
    /// Weigh hypotheses about the readings `about` against each other, the other believed readings being given.
    ///
    /// Readings in `about` count whatever their standing, unless they were withdrawn; among the others those that are
    /// doubted are left out. `planned` readings are not taken yet: their values do not matter.
    ///
    /// # Errors
    ///
    /// As [`JobModel::solve`]; no hypothesis with a positive prior; a hypothesis about a reading that is not in
    /// question; numbers that are not finite.
    pub fn weigh(
        &self,
        readings: &[Observation],
        about: &BTreeSet<String>,
        planned: &[Observation],
        hypotheses: &[Hypothesis],
    ) -> Result<Weighed, E> {
        let layout = Arc::new(Layout::new(self)?);
        let mut readings = in_order(readings)?;
        let in_question = |r: &Observation| about.contains(&r.id) && r.standing != Standing::Withdrawn;
        let questioned: Vec<Observation> = readings.iter().filter(|r| in_question(r)).cloned().collect();
        readings.retain(|r| !about.contains(&r.id));
        let planned = in_order_given(planned)?;
        let given = Belief::new(layout, readings)?;
        let ground = Ground::new(&given, &questioned, &planned)?;
        ground.weigh(hypotheses)
    }
}

/// Readings less their forecasts with the covariance of that difference: all that hypotheses about a set need to know of
/// it. What several readings have in common stands beside the diagonal, their noise on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Deviations {
    /// Names of the readings, each once.
    pub readings: Vec<String>,
    /// Each reading less its forecast, in its unit.
    pub deviation: Vec<f64>,
    /// Covariance of the deviations where nothing is wrong, one row a reading.
    pub covariance: Vec<Vec<f64>>,
}

impl Deviations {
    /// Weighs hypotheses against each other. The meant value of a misread reading counts from its forecast, too.
    ///
    /// # Errors
    ///
    /// Numbers that are not finite; another number of names, rows or columns than of deviations; a covariance that is
    /// none; a reading that occurs twice; no hypothesis with a positive prior; a hypothesis about a reading that is not
    /// there.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Deviations, Hypothesis};
    /// let one = Deviations { readings: vec!["r".into()], deviation: vec![2.0], covariance: vec![vec![1.0]] };
    /// let wrong = Hypothesis::shift("wrong", 0.1, "r", 0.0, 3.0);
    /// // By hand: N(2; 0, 1) = 0.05399 and 0.1·N(2; 0, 10) = 0.01033, so 0.1606.
    /// let weighed = one.weigh(&[Hypothesis::nothing("nothing", 1.0), wrong])?;
    /// assert!((weighed.posterior[1] - 0.1606).abs() < 5e-5);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn weigh(&self, hypotheses: &[Hypothesis]) -> Result<Weighed, E> {
        let n = self.deviation.len();
        let shape = |place: &str, found| {
            if found == n { Ok(()) } else { Err(E::Shape { place: place.into(), found, expected: n }) }
        };
        shape("deviations.readings", self.readings.len())?;
        shape("deviations.covariance", self.covariance.len())?;
        for row in &self.covariance {
            shape("deviations.covariance", row.len())?;
        }
        let mut lower: Vec<Vec<f64>> = Vec::with_capacity(n);
        for (i, full) in self.covariance.iter().enumerate() {
            E::finite(|| format!("deviations[{}]", self.readings[i]), self.deviation[i])?;
            let mut row = full[..=i].to_vec();
            for j in 0..i {
                row[j] = (row[j] - dot(&row[..j], &lower[j][..j])) / lower[j][j];
            }
            let pivot = row[i] - dot(&row[..i], &row[..i]);
            row[i] = E::positive(|| format!("deviations.covariance[{}]", self.readings[i]), pivot)?.sqrt();
            lower.push(row);
        }
        let mut place = BTreeMap::new();
        for (i, reading) in self.readings.iter().enumerate() {
            if place.insert(reading.as_str(), i).is_some() {
                return Err(E::Duplicate { what: "readings", key: reading.clone() });
            }
        }
        let (residual, forecast) = (self.deviation.clone(), vec![0.0; n]);
        Ground { planned: Vec::new(), place, lower, residual, forecast, ahead: Vec::new() }.weigh(hypotheses)
    }
}

/// Planned readings keep their order; what they say of their noise is checked.
fn in_order_given(planned: &[Observation]) -> Result<Vec<Observation>, E> {
    in_order(planned)?;
    Ok(planned.to_vec())
}

/// The readings in question given the others, factorised.
struct Ground<'a> {
    /// Names of the planned readings.
    planned: Vec<&'a str>,
    /// Places of the readings in question by their names, then those of the planned ones.
    place: BTreeMap<&'a str, usize>,
    /// Lower Cholesky factor of the covariance of readings less forecasts, row after row.
    lower: Vec<Vec<f64>>,
    /// Readings less forecasts.
    residual: Vec<f64>,
    forecast: Vec<f64>,
    /// Of each planned reading: forecast, variance with noise given the readings in question, and `L⁻¹` of its
    /// covariance with them.
    ahead: Vec<(f64, f64, Vec<f64>)>,
}

impl<'a> Ground<'a> {
    fn new(given: &Belief, questioned: &'a [Observation], planned: &'a [Observation]) -> Result<Self, E> {
        let rows: Vec<Row> =
            questioned.iter().chain(planned).map(|r| given.row(&r.probe())).collect::<Result<_, E>>()?;
        let halves: Vec<_> = rows.iter().map(|row| given.half(row)).collect();
        let noise = |r: &Observation| r.sd.powi(2) + step_variance(r.resolution);
        let n = questioned.len();
        let mut lower: Vec<Vec<f64>> = Vec::with_capacity(n);
        for i in 0..n {
            let mut row: Vec<f64> = (0..=i).map(|j| halves[i].covariance(&halves[j])).collect();
            row[i] += noise(&questioned[i]);
            for j in 0..i {
                row[j] = (row[j] - dot(&row[..j], &lower[j][..j])) / lower[j][j];
            }
            // With the reading's own noise on the diagonal the pivot is at least that noise.
            row[i] = (row[i] - dot(&row[..i], &row[..i])).max(noise(&questioned[i])).sqrt();
            lower.push(row);
        }
        let mut ahead = Vec::with_capacity(planned.len());
        for (k, reading) in planned.iter().enumerate() {
            let half = &halves[n + k];
            let mut across: Vec<f64> = halves[..n].iter().map(|other| other.covariance(half)).collect();
            forward(&lower, &mut across);
            let variance = (half.variance() - dot(&across, &across)).max(0.0) + noise(reading);
            ahead.push((rows[n + k].value, variance, across));
        }
        let forecast: Vec<f64> = rows[..n].iter().map(|row| row.value).collect();
        let residual = questioned.iter().zip(&forecast).map(|(r, f)| r.value - f).collect();
        let ids = questioned.iter().chain(planned).enumerate();
        let place: BTreeMap<&str, usize> = ids.map(|(i, r)| (r.id.as_str(), i)).collect();
        if place.len() < n + planned.len() {
            let twice = planned.iter().find(|p| questioned.iter().any(|q| q.id == p.id)).or(planned.first());
            return Err(E::Duplicate { what: "readings", key: twice.map_or_else(String::new, |r| r.id.clone()) });
        }
        let planned = planned.iter().map(|p| p.id.as_str()).collect();
        Ok(Self { planned, place, lower, residual, forecast, ahead })
    }

    fn weigh(&self, hypotheses: &[Hypothesis]) -> Result<Weighed, E> {
        let n = self.lower.len();
        let determinant: f64 = (0..n).map(|i| 2.0 * self.lower[i][i].ln()).sum();
        let constant = -0.5 * (determinant + n as f64 * (2.0 * std::f64::consts::PI).ln());
        let mut weighed = Weighed {
            keys: hypotheses.iter().map(|h| h.key.clone()).collect(),
            posterior: Vec::with_capacity(hypotheses.len()),
            log_evidence: Vec::with_capacity(hypotheses.len()),
            amounts: Vec::with_capacity(hypotheses.len()),
            outlooks: self.planned.iter().map(|id| Outlook { id: (*id).to_owned(), under: Vec::new() }).collect(),
        };
        let mut scores = Vec::with_capacity(hypotheses.len());
        for hypothesis in hypotheses {
            let prior = E::not_negative(|| format!("hypotheses[{}].prior", hypothesis.key), hypothesis.prior)?;
            let under = self.under(hypothesis)?;
            weighed.log_evidence.push(constant + under.log_density);
            scores.push(constant + under.log_density + prior.ln());
            weighed.amounts.push(under.amounts);
            for (outlook, forecast) in weighed.outlooks.iter_mut().zip(under.ahead) {
                outlook.under.push(forecast);
            }
        }
        let top = scores.iter().fold(f64::NEG_INFINITY, |most: f64, s| most.max(*s));
        E::finite(|| "hypotheses.evidence".into(), top)?;
        let total: f64 = scores.iter().map(|s| (s - top).exp()).sum();
        weighed.posterior = scores.iter().map(|s| (s - top).exp() / total).collect();
        Ok(weighed)
    }

    /// One hypothesis against the readings.
    fn under(&self, hypothesis: &Hypothesis) -> Result<Under, E> {
        let who = || format!("hypotheses[{}]", hypothesis.key);
        let n = self.lower.len();
        let mut residual = self.residual.clone();
        let mut log_stretch = 0.0;
        for slip in &hypothesis.misread {
            let i = self.find(&slip.reading, &who)?;
            if i >= n {
                return Err(E::Unknown { what: "readings", key: slip.reading.clone(), wanted_by: who() });
            }
            residual[i] = E::finite(|| format!("{}.meant", who()), slip.meant)? - self.forecast[i];
            log_stretch += E::positive(|| format!("{}.stretch", who()), slip.stretch)?.ln();
        }
        // Unit amounts, v ~ N(0, 1): the amount is mean + sd·v.
        let mut columns: Vec<Vec<f64>> = Vec::with_capacity(hypothesis.changes.len());
        let mut on_planned: Vec<Vec<f64>> = Vec::with_capacity(hypothesis.changes.len());
        for change in &hypothesis.changes {
            E::finite(|| format!("{}.mean", who()), change.mean)?;
            E::not_negative(|| format!("{}.sd", who()), change.sd)?;
            let mut all = vec![0.0; n + self.planned.len()];
            for effect in &change.effects {
                let at = self.find(&effect.reading, &who)?;
                all[at] += E::finite(|| format!("{}.effects[{}]", who(), effect.reading), effect.per_unit)?;
            }
            residual.iter_mut().zip(&all).for_each(|(r, a)| *r -= a * change.mean);
            let mut column: Vec<f64> = all[..n].iter().map(|a| a * change.sd).collect();
            forward(&self.lower, &mut column);
            columns.push(column);
            on_planned.push(all.split_off(n));
        }
        forward(&self.lower, &mut residual);
        let amounts = Amounts::new(&columns, &residual);
        let log_density =
            -0.5 * (dot(&residual, &residual) - amounts.explained + amounts.log_determinant) + log_stretch;
        let left: Vec<f64> = (0..n)
            .map(|i| residual[i] - columns.iter().zip(&amounts.mean).map(|(c, v)| c[i] * v).sum::<f64>())
            .collect();
        let ahead = self.ahead.iter().enumerate().map(|(q, (forecast, variance, across))| {
            let shift = |(k, change): (usize, &Change)| on_planned[k][q] * (change.mean + change.sd * amounts.mean[k]);
            let shifted: f64 = hypothesis.changes.iter().enumerate().map(shift).sum();
            let open: Vec<f64> = hypothesis
                .changes
                .iter()
                .enumerate()
                .map(|(k, change)| on_planned[k][q] * change.sd - dot(across, &columns[k]))
                .collect();
            Forecast {
                mean: forecast + dot(across, &left) + shifted,
                sd: (variance + amounts.variance_of(&open)).max(0.0).sqrt(),
            }
        });
        let ahead = ahead.collect();
        let unit = |k: usize| (0..columns.len()).map(|j| f64::from(u8::from(j == k))).collect::<Vec<f64>>();
        let left_open = |(k, change): (usize, &Change)| Forecast {
            mean: change.mean + change.sd * amounts.mean[k],
            sd: change.sd * amounts.variance_of(&unit(k)).max(0.0).sqrt(),
        };
        let amounts = hypothesis.changes.iter().enumerate().map(left_open).collect();
        Ok(Under { log_density, amounts, ahead })
    }

    fn find(&self, reading: &str, who: &impl Fn() -> String) -> Result<usize, E> {
        let unknown = || E::Unknown { what: "readings", key: reading.to_owned(), wanted_by: who() };
        self.place.get(reading).copied().ok_or_else(unknown)
    }
}

struct Under {
    log_density: f64,
    amounts: Vec<Forecast>,
    ahead: Vec<Forecast>,
}

/// The unit amounts of a hypothesis as the readings leave them.
struct Amounts {
    /// Lower factor of `I + VᵀV`.
    factor: Vec<Vec<f64>>,
    mean: Vec<f64>,
    /// How much of the squared residual they explain.
    explained: f64,
    log_determinant: f64,
}

impl Amounts {
    fn new(columns: &[Vec<f64>], residual: &[f64]) -> Self {
        let k = columns.len();
        let mut factor: Vec<Vec<f64>> = Vec::with_capacity(k);
        for i in 0..k {
            let mut row: Vec<f64> = (0..=i).map(|j| dot(&columns[i], &columns[j])).collect();
            row[i] += 1.0;
            for j in 0..i {
                row[j] = (row[j] - dot(&row[..j], &factor[j][..j])) / factor[j][j];
            }
            row[i] = (row[i] - dot(&row[..i], &row[..i])).max(f64::EPSILON).sqrt();
            factor.push(row);
        }
        let mut mean: Vec<f64> = columns.iter().map(|c| dot(c, residual)).collect();
        forward(&factor, &mut mean);
        let explained = dot(&mean, &mean);
        for i in (0..k).rev() {
            mean[i] /= factor[i][i];
            let x = mean[i];
            mean[..i].iter_mut().zip(&factor[i]).for_each(|(m, l)| *m -= l * x);
        }
        let log_determinant = (0..k).map(|i| 2.0 * factor[i][i].ln()).sum();
        Self { factor, mean, explained, log_determinant }
    }

    fn variance_of(&self, gradient: &[f64]) -> f64 {
        let mut half = gradient.to_vec();
        forward(&self.factor, &mut half);
        dot(&half, &half)
    }
}

impl Weighed {
    /// Probability that belongs to each of `groups` hypotheses, `group[i]` being that of hypothesis `i`.
    ///
    /// # Errors
    ///
    /// Not one group a hypothesis.
    pub fn grouped(&self, group: &[usize]) -> Result<Vec<f64>, E> {
        if group.len() != self.posterior.len() {
            let expected = self.posterior.len();
            return Err(E::Shape { place: "hypotheses.groups".into(), found: group.len(), expected });
        }
        let mut sums = vec![0.0; group.iter().map(|g| g + 1).max().unwrap_or(0)];
        for (g, p) in group.iter().zip(&self.posterior) {
            sums[*g] += p;
        }
        Ok(sums)
    }

    /// How many bits a planned reading is expected to tell about which group is the true one: the entropy now less the
    /// expected entropy after it (their mutual information), by quadrature over the mixture of what it will show.
    ///
    /// Hypotheses below one in a thousand are left out. At most the entropy of the groups, at least nought.
    ///
    /// # Errors
    ///
    /// Not one group a hypothesis; a planned reading that is not there.
    pub fn information_bits(&self, planned: usize, group: &[usize]) -> Result<f64, E> {
        let sums = self.grouped(group)?;
        let mut bits = 0.0;
        self.over_outcomes(planned, group, |weight, outcome| {
            // The share of each group among what may be shown here, against its share now.
            for (g, share) in outcome.iter().enumerate().filter(|(_, share)| **share > 0.0) {
                bits += weight * share * (share / sums[g]).log2();
            }
        })?;
        Ok(bits.max(0.0))
    }

    /// How likely the group that is likeliest after a planned reading is expected to be: the chance of naming the true
    /// one. Never below that of the likeliest group now, but for what the quadrature leaves.
    ///
    /// # Errors
    ///
    /// As [`Weighed::information_bits`].
    pub fn chance_of_naming(&self, planned: usize, group: &[usize]) -> Result<f64, E> {
        let mut chance = 0.0;
        self.over_outcomes(planned, group, |weight, outcome| {
            chance += weight * outcome.iter().fold(0.0, |most: f64, share| most.max(*share));
        })?;
        Ok(chance)
    }

    /// Calls `each` with the weight of an outcome of a planned reading and the probability of each group given it.
    fn over_outcomes(&self, planned: usize, group: &[usize], mut each: impl FnMut(f64, &[f64])) -> Result<(), E> {
        const LEAST: f64 = 1e-3;
        // Trapezoids of a quarter of a standard deviation out to five: exact to 1e-6 for smooth functions of a Gaussian.
        const STEPS: i32 = 20;
        const WIDTH: f64 = 0.25;
        let mut shares = vec![0.0; self.grouped(group)?.len()];
        let Some(outlook) = self.outlooks.get(planned) else {
            let (found, expected) = (planned, self.outlooks.len());
            return Err(E::Shape { place: "planned".into(), found, expected });
        };
        let parts: Vec<(f64, Forecast, usize)> = self
            .posterior
            .iter()
            .zip(&outlook.under)
            .zip(group)
            .filter(|((p, _), _)| **p >= LEAST)
            .map(|((p, f), g)| (*p, *f, *g))
            .collect();
        let total: f64 = parts.iter().map(|(p, ..)| p).sum();
        let root = (2.0 * std::f64::consts::PI).sqrt();
        let density = |f: &Forecast, y: f64| (-0.5 * ((y - f.mean) / f.sd).powi(2)).exp() / (f.sd * root);
        for (p, forecast, _) in &parts {
            for step in -STEPS..=STEPS {
                let z = f64::from(step) * WIDTH;
                let y = forecast.mean + z * forecast.sd;
                shares.fill(0.0);
                let mut all = 0.0;
                for (q, other, g) in &parts {
                    let d = q * density(other, y);
                    all += d;
                    shares[*g] += d;
                }
                shares.iter_mut().for_each(|s| *s /= all);
                each(p / total * (-0.5 * z * z).exp() / root * WIDTH, &shares);
            }
        }
        Ok(())
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// `L⁻¹·b` in place.
fn forward(lower: &[Vec<f64>], b: &mut [f64]) {
    for i in 0..lower.len() {
        b[i] = (b[i] - dot(&lower[i][..i], &b[..i])) / lower[i][i];
    }
}
