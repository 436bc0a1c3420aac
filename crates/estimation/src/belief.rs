//! The belief after some readings: what can be asked of it.

use crate::arrow::{Arrow, Half};
use crate::club::OnClub;
use crate::error::EstimationError as E;
use crate::layout::Layout;
use crate::normal;
use crate::predict::{Point, Question, Row};
use crate::reading::{Observation, Probe, Quantity};
use crate::rounding::step_variance;
use crate::term::Term;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use utoipa::ToSchema;

/// Mean and standard deviation of something asked for, in its unit.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, ToSchema)]
pub struct Forecast {
    /// Expected value: points, grams or inches, whichever the question is in.
    pub mean: f64,
    /// Standard deviation of what is believed, same unit, at least 0; ±1.96 of it is the 95 % band.
    pub sd: f64,
}

impl Forecast {
    /// The 95 % band: mean ∓ 1.959964 sd.
    ///
    /// # Examples
    ///
    /// ```
    /// // 38.2 ± 1.96 × 0.1 (tables of the normal distribution).
    /// let (low, high) = estimation::Forecast { mean: 38.2, sd: 0.1 }.band95();
    /// assert!((low - 38.004).abs() < 1e-5 && (high - 38.396).abs() < 1e-5);
    /// ```
    #[must_use]
    pub fn band95(&self) -> (f64, f64) {
        let half = 1.959_963_984_540_054 * self.sd;
        (self.mean - half, self.mean + half)
    }

    /// Probability of a value within `target ± tolerance`.
    ///
    /// # Examples
    ///
    /// ```
    /// // From 4 sd below to 2 sd above the mean: Φ(2) − Φ(−4) = 0.97725 − 0.00003 (tables of the normal distribution).
    /// let forecast = estimation::Forecast { mean: 0.1, sd: 0.1 };
    /// assert!((forecast.probability_within(0.0, 0.3) - 0.97722).abs() < 5e-6);
    /// ```
    #[must_use]
    pub fn probability_within(&self, target: f64, tolerance: f64) -> f64 {
        normal::between(target - tolerance, target + tolerance, self.mean, self.sd)
    }
}

/// Forecasts of several questions together.
#[derive(Debug, Clone, PartialEq)]
pub struct Joint {
    /// Expected values in the order of the questions, each in the unit of its question.
    pub mean: Vec<f64>,
    /// Their covariance, one row a question: the unit of an entry is the product of the units of both.
    pub covariance: Vec<Vec<f64>>,
}

/// A question's derivatives at the belief, ready for covariances with others: see [`Belief::gradient`].
#[derive(Debug, Clone, PartialEq)]
pub struct Gradient {
    /// Expected value of the question.
    pub mean: f64,
    half: Half,
}

impl Gradient {
    /// Covariance of the two questions under the belief that both came from.
    #[must_use]
    pub fn covariance(&self, other: &Self) -> f64 {
        self.half.covariance(&other.half)
    }

    /// Variance of the question.
    #[must_use]
    pub fn variance(&self) -> f64 {
        self.half.variance()
    }
}

/// What is believed of a job after readings.
///
/// Posterior mode by Gauss–Newton with exact derivatives, covariance from the curvature there. The model is bilinear
/// (mass times arm), so that the difference between mode and mean is below 0.002 point.
#[derive(Debug, Clone)]
pub struct Belief {
    pub(crate) layout: Arc<Layout>,
    pub(crate) point: Point,
    pub(crate) arrow: Arc<Arrow>,
    /// Readings in the order of their names, withdrawn and doubted ones included.
    pub(crate) readings: Arc<Vec<Observation>>,
    pub(crate) terms: Arc<Vec<Term>>,
    pub(crate) rows: Arc<Vec<(Row, f64)>>,
    pub(crate) latest_h: Vec<f64>,
    pub(crate) misfit: f64,
    /// Another prior of one shared deviation than the one it was solved with.
    pub(crate) tilt: Option<Tilt>,
}

/// What another prior of one shared deviation does to a belief.
#[derive(Debug, Clone)]
pub(crate) struct Tilt {
    pub(crate) key: String,
    /// The deviation through the factor.
    of: Half,
    /// Covariances with it times this are what two questions have in common besides: `√((v' − v)/v²)`, its variance `v` before
    /// and `v'` after.
    root: f64,
    /// What the other prior adds to the logarithm of the evidence.
    log_ratio: f64,
}

impl Tilt {
    /// What a question has of the deviation beyond the belief that was tilted: its square is variance.
    pub(crate) fn along(&self, half: &Half) -> f64 {
        self.root * half.covariance(&self.of)
    }
}

impl Belief {
    fn question(&self, probe: &Probe, who: &str) -> Result<Question, E> {
        Question::new(&self.layout, probe, &self.latest_h, who)
    }

    pub(crate) fn row(&self, probe: &Probe) -> Result<Row, E> {
        self.question(probe, "forecast")?.row(&self.layout, &self.point)
    }

    /// A gradient through the factor.
    pub(crate) fn half(&self, row: &Row) -> Half {
        let mut half = self.arrow.half(row);
        let along = self.tilt.as_ref().map(|tilt| tilt.along(&half));
        half.shared.extend(along);
        half
    }

    /// The belief with another prior `N(mean, sd²)` of one shared deviation in place of `before`, at least as wide: what the
    /// readings say stays the same, so that nothing is solved again (derived: the posterior times the ratio of both priors,
    /// exact where the model is linear).
    ///
    /// # Errors
    ///
    /// An unknown key; another prior that is narrower, or a belief that was tilted before.
    pub(crate) fn tilted(&self, key: &str, before: Forecast, now: Forecast) -> Result<Self, E> {
        let row = self.row(&shared_probe(key))?;
        let of = self.arrow.half(&row);
        let (mean, variance) = (row.value, of.variance());
        let weight = |f: Forecast| f.sd.powi(-2);
        let precision = variance.recip() + weight(now) - weight(before);
        E::positive(|| format!("wide[{key}].times_wide"), precision.min(1.0 + now.sd - before.sd))?;
        let after = precision.recip();
        let mean_after = after * (mean / variance + now.mean * weight(now) - before.mean * weight(before));
        let square = |f: Forecast| f.mean * f.mean * weight(f);
        let log_ratio = (before.sd / now.sd).ln()
            + 0.5 * (after / variance).ln()
            + 0.5 * (mean_after * mean_after / after - mean * mean / variance - square(now) + square(before));
        E::finite(|| format!("wide[{key}].evidence"), log_ratio)?;
        let mut local: Vec<Vec<f64>> = self.layout.clubs.iter().map(|club| vec![0.0; club.states.len()]).collect();
        let mut shared = row.shared.clone();
        self.arrow.solve(&mut local, &mut shared);
        let point = self.point.moved(&self.layout, (mean_after - mean) / variance, &local, &shared);
        let root = (after - variance).max(0.0).sqrt() / variance;
        let tilt = Some(Tilt { key: key.to_owned(), of, root, log_ratio });
        Ok(Self {
            layout: Arc::clone(&self.layout),
            point,
            arrow: Arc::clone(&self.arrow),
            readings: Arc::clone(&self.readings),
            terms: Arc::clone(&self.terms),
            rows: Arc::clone(&self.rows),
            latest_h: self.latest_h.clone(),
            misfit: self.misfit,
            tilt,
        })
    }

    /// The believed readings at this belief, with their variances; those of a tilted one are not those of the belief that it
    /// came from.
    pub(crate) fn rows(&self) -> Result<Arc<Vec<(Row, f64)>>, E> {
        if self.tilt.is_none() {
            return Ok(Arc::clone(&self.rows));
        }
        let rows = self.terms.iter().map(|term| Ok((term.question.row(&self.layout, &self.point)?, term.variance)));
        Ok(Arc::new(rows.collect::<Result<_, E>>()?))
    }

    /// Forecast of a quantity of a club with the given pieces on: its true value, or, when a scale is named, what that
    /// scale will show next, with its offset, gain, drift, noise and rounding.
    ///
    /// # Errors
    ///
    /// Unknown names; a piece that the club does not have; a balance point of nothing.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Club, JobModel, OnClub, Piece, Prior, Quantity, Role};
    /// // By hand: (256·23 + 110·4 − 50·10) / 49.6117 − 92 = 25.472 points; only the head's mass is not known, and 0.2 g at
    /// // 23 in are 0.2 · 23 / 49.6117 = 0.0927 point.
    /// let club = Club::new("iron-7", 36.5)
    ///     .with_piece(Piece::new(Role::Head, Prior::new(256.0, 0.2), Prior::known(37.0)))
    ///     .with_piece(Piece::new(Role::Shaft, Prior::known(110.0), Prior::known(18.0)))
    ///     .with_piece(Piece::new(Role::Grip, Prior::known(50.0), Prior::known(4.0)));
    /// let belief = JobModel { clubs: vec![club], ..JobModel::default() }.solve(&[])?;
    /// let finish = belief.forecast("iron-7", &Quantity::SwingWeight, OnClub::finished(), None)?;
    /// assert!((finish.mean - 25.472).abs() < 5e-4 && (finish.sd - 0.0927).abs() < 5e-5);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn forecast(
        &self,
        club: &str,
        quantity: &Quantity,
        on: OnClub,
        as_read_on: Option<&str>,
    ) -> Result<Forecast, E> {
        let mut probe = Probe::of_club(club, quantity.clone(), on);
        probe.scale = as_read_on.map(str::to_owned);
        let row = self.row(&probe)?;
        let mut variance = self.half(&row).variance();
        if let Some(key) = as_read_on {
            let scale = &self.layout.scales[self.layout.scale(key, "forecast")?];
            variance += scale.noise_sd.powi(2) + step_variance(scale.resolution);
        }
        Ok(Forecast { mean: row.value, sd: variance.sqrt() })
    }

    /// Forecast of any question, noise and rounding left out.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn answer(&self, probe: &Probe) -> Result<Forecast, E> {
        let gradient = self.gradient(probe)?;
        Ok(Forecast { mean: gradient.mean, sd: gradient.variance().sqrt() })
    }

    /// Mean and derivatives of a question; `a.covariance(&b)` is the `aᵀPb` of the formulas for the value of a choice.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn gradient(&self, probe: &Probe) -> Result<Gradient, E> {
        let row = self.row(probe)?;
        Ok(Gradient { mean: row.value, half: self.half(&row) })
    }

    /// Several questions together with their covariance.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn joint(&self, probes: &[Probe]) -> Result<Joint, E> {
        let all: Vec<Gradient> = probes.iter().map(|probe| self.gradient(probe)).collect::<Result<_, E>>()?;
        let covariance = all.iter().map(|a| all.iter().map(|b| a.covariance(b)).collect()).collect();
        Ok(Joint { mean: all.iter().map(|g| g.mean).collect(), covariance })
    }

    /// Standard deviation that a question will have once `planned` readings (question and noise, in sd) are taken,
    /// whatever they show.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`]; a planned reading without noise.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Club, JobModel, OnClub, Piece, Prior, Probe, Quantity, Role};
    /// let head = Piece::new(Role::Head, Prior::new(256.0, 0.3), Prior::known(37.0));
    /// let job = JobModel { clubs: vec![Club::new("iron-7", 36.5).with_piece(head)], ..JobModel::default() };
    /// let mass = Probe::of_club("iron-7", Quantity::PartMass(Role::Head), OnClub::NONE);
    /// // Weighing it once on a scale of the same 0.3 g will leave 0.3/√2 = 0.2121 g, whatever it shows.
    /// assert!((job.solve(&[])?.sd_after(&mass, &[(mass.clone(), 0.3)])? - 0.2121).abs() < 5e-5);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn sd_after(&self, probe: &Probe, planned: &[(Probe, f64)]) -> Result<f64, E> {
        let now = self.gradient(probe)?;
        let mut readings: Vec<(Gradient, f64)> = Vec::with_capacity(planned.len());
        for (probe, sd) in planned {
            let noise = E::positive(|| "planned.sd".into(), *sd)?;
            readings.push((self.gradient(probe)?, noise * noise));
        }
        // Conditioning on a scalar is a step along one direction: done one by one on explicit covariances.
        let n = readings.len() + 1;
        let all: Vec<&Gradient> = std::iter::once(&now).chain(readings.iter().map(|(g, _)| g)).collect();
        let mut p: Vec<Vec<f64>> = all.iter().map(|a| all.iter().map(|b| a.covariance(b)).collect()).collect();
        for (k, (_, noise)) in readings.iter().enumerate() {
            let column: Vec<f64> = (0..n).map(|i| p[i][k + 1]).collect();
            let total = column[k + 1] + noise;
            for i in 0..n {
                for j in 0..n {
                    p[i][j] -= column[i] * column[j] / total;
                }
            }
        }
        Ok(p[0][0].max(0.0).sqrt())
    }

    /// Probability that the true swing weight with these pieces on lies within `target ± tolerance`, points.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn probability_within(&self, club: &str, on: OnClub, target: f64, tolerance: f64) -> Result<f64, E> {
        Ok(self.forecast(club, &Quantity::SwingWeight, on, None)?.probability_within(target, tolerance))
    }

    /// Probability that the true swing weight is within the club's own target and tolerance.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn probability_on_target(&self, club: &str, on: OnClub) -> Result<f64, E> {
        let own = &self.layout.clubs[self.layout.club(club, "forecast")?];
        self.probability_within(club, on, own.target_points, own.tolerance_points)
    }

    /// Mean and standard deviation of one shared deviation.
    ///
    /// # Errors
    ///
    /// An unknown key.
    pub fn marginal(&self, key: &str) -> Result<Forecast, E> {
        self.answer(&shared_probe(key))
    }

    /// Mean and joint covariance of shared deviations: what is carried to the next job.
    ///
    /// # Errors
    ///
    /// An unknown key.
    pub fn joint_shared(&self, keys: &[&str]) -> Result<Joint, E> {
        self.joint(&keys.iter().map(|key| shared_probe(key)).collect::<Vec<_>>())
    }

    /// Names of the shared deviations, those of the scales among them, in order.
    #[must_use]
    pub fn shared_keys(&self) -> &[String] {
        &self.layout.shared_keys
    }

    /// The readings in the order of their names, believed or not.
    #[must_use]
    pub fn readings(&self) -> &[Observation] {
        &self.readings
    }

    /// Number of unknowns.
    #[must_use]
    pub fn unknowns(&self) -> usize {
        self.layout.shared_keys.len() + self.layout.clubs.iter().map(|club| club.states.len()).sum::<usize>()
    }

    /// Sum of squared deviations, of the readings from the belief and of the belief from the prior, in standard
    /// deviations: chi-square with as many degrees of freedom as there are independent readings (those that share
    /// their rounding count once).
    #[must_use]
    pub fn chi_square(&self) -> f64 {
        self.misfit
    }

    /// Logarithm of the probability density of all believed readings under the model, to compare two models of the
    /// same readings by (Laplace's approximation, exact where the model is linear).
    #[must_use]
    pub fn log_evidence(&self) -> f64 {
        let noise: f64 = self.terms.iter().map(|term| (2.0 * std::f64::consts::PI * term.variance).ln()).sum();
        let tilt = self.tilt.as_ref().map_or(0.0, |tilt| tilt.log_ratio);
        tilt - 0.5 * (self.misfit + noise + self.arrow.log_determinant())
    }
}

fn shared_probe(key: &str) -> Probe {
    Probe::of_job(Quantity::Shared(key.into()))
}
