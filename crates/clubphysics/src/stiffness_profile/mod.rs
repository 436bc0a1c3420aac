//! How stiff one shaft is along its length, from readings of it clamped at several lengths.
//!
//! A reading is a frequency with a known weight at the tip, or a deflection under a known weight. Each says one thing: the
//! stiffness weighed by where the shaft bends in it, next to the clamp most of all. So `n` readings at `n` lengths tell `n` figures
//! of a smooth line and no more. What they leave open is filled by what was believed before: the model's line, its level and its
//! tilt, and smooth deviations from it whose neighbours are alike over [`ProfilePrior::shape_length_mm`]. With them comes how much
//! longer the shaft acts because its clamp gives, which all readings share.
//!
//! The estimate is the most probable line (Gauss and Newton on the logarithms); its deviation is that of the straight problem
//! there. Held against a shooting method, shapes that no prior has, and draws: `tests/stiffness_profile.rs`.

mod sensed;

pub use sensed::{Seen, Sensed, sensed};

use crate::advice::{Advice, Settling};
use crate::check::{above, enough};
use crate::error::PhysicsError;
use crate::vibration::{BetweenRows, LineRow, MeasuredFrom, StiffnessLine};
use nalgebra::{DMatrix, DVector};

/// Stretches between the places at which a profile is stated: eight bring a smooth line within a fraction of its band.
pub const STRETCHES: usize = 8;
/// Rounds of the fit before it is given up; readings that agree take four.
const ROUNDS_MAX: usize = 60;
/// Change of a logarithm at which it has settled.
const SETTLED: f64 = 1e-7;

/// What is believed of a shaft before it is read.
#[derive(Debug, Clone)]
pub struct ProfilePrior {
    /// Stiffness and mass along the raw shaft by its model, from the butt; the first row at 0, the last at its length.
    pub rows: Vec<LineRow>,
    /// Length of the shaft, mm.
    pub length_mm: f64,
    /// Standard deviation of the logarithm of its stiffness as a whole.
    pub level_sd: f64,
    /// Of how it tilts toward the tip: of `t` where the line becomes `EI·exp(t·(2x/L − 1))`.
    pub tilt_sd: f64,
    /// Of what is neither, at one place.
    pub shape_sd: f64,
    /// How far apart two places may be and still deviate alike, mm: the length of a squared exponential correlation.
    pub shape_length_mm: f64,
    /// How much longer the shaft acts than it is because its clamp gives, mm: mean and standard deviation.
    pub gives_mm: (f64, f64),
}

impl ProfilePrior {
    /// Places at which a profile of a shaft of this length is stated, mm from the butt.
    #[must_use]
    pub fn places_mm(length_mm: f64) -> Vec<f64> {
        (0..=STRETCHES).map(|i| length_mm * i as f64 / STRETCHES as f64).collect()
    }

    /// Lower triangular root of the covariance of the smooth deviations at these places, row by row, for a standard deviation of one:
    /// independent figures of one unit each, times this, deviate as the prior says.
    #[must_use]
    pub fn shape_root(length_mm: f64, shape_length_mm: f64) -> Vec<Vec<f64>> {
        let places = Self::places_mm(length_mm);
        let mut covariance = smooth(&places, shape_length_mm);
        // A squared exponential is next to singular; a millionth keeps its root without being seen.
        for i in 0..places.len() {
            covariance[(i, i)] += 1e-6;
        }
        let root = covariance.cholesky().map_or_else(|| DMatrix::identity(places.len(), places.len()), |c| c.l());
        (0..places.len()).map(|i| (0..places.len()).map(|j| root[(i, j)]).collect()).collect()
    }

    /// The line with these logarithms on its places.
    fn line(&self, places: &[f64], ln_ratio: &[f64]) -> Result<StiffnessLine, PhysicsError> {
        let model = StiffnessLine::new(&self.rows, MeasuredFrom::Butt, BetweenRows::Straight, self.length_mm)?;
        let mut rows = self.rows.clone();
        for place in places {
            if self.rows.iter().all(|row| (row.position_mm - place).abs() > 0.5) {
                let (stiffness_n_m2, mass_kg_m) = model.at(place / 1000.0);
                rows.push(LineRow { position_mm: *place, stiffness_n_m2, mass_g_m: mass_kg_m * 1000.0 });
            }
        }
        rows.sort_by(|a, b| a.position_mm.total_cmp(&b.position_mm));
        for row in &mut rows {
            row.stiffness_n_m2 *= between(places, ln_ratio, row.position_mm).exp();
        }
        StiffnessLine::new(&rows, MeasuredFrom::Butt, BetweenRows::Straight, self.length_mm)
    }

    /// Covariance of the logarithms at the places, and of what the clamp gives in the last row and column.
    fn covariance(&self, places: &[f64]) -> DMatrix<f64> {
        let n = places.len();
        let shape = smooth(places, self.shape_length_mm);
        let tilt = |x: f64| 2.0 * x / self.length_mm - 1.0;
        DMatrix::from_fn(n + 1, n + 1, |i, j| match (places.get(i), places.get(j)) {
            (Some(a), Some(b)) => {
                self.level_sd.powi(2)
                    + self.tilt_sd.powi(2) * tilt(*a) * tilt(*b)
                    + self.shape_sd.powi(2) * shape[(i, j)]
            }
            (None, None) => self.gives_mm.1.powi(2),
            _ => 0.0,
        })
    }
}

fn smooth(places: &[f64], length_mm: f64) -> DMatrix<f64> {
    DMatrix::from_fn(places.len(), places.len(), |i, j| (-0.5 * ((places[i] - places[j]) / length_mm).powi(2)).exp())
}

/// One reading of a clamped shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClampedReading {
    /// How much of the butt the clamp held, mm.
    pub held_mm: f64,
    /// How well that was set, mm.
    pub held_sd_mm: f64,
    /// What was read.
    pub seen: Seen,
    /// Standard deviation of the reading, in its own unit.
    pub sd: f64,
}

/// A reading beside what all the others make of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// What the fitted line reads, in the unit of the reading.
    pub fitted: f64,
    /// What was read less what the other readings and the prior expect, in standard deviations of that difference.
    pub off_sds: f64,
}

/// The stiffness of one shaft along its length, with what is not known of it.
#[derive(Debug, Clone)]
pub struct StiffnessProfile {
    places_mm: Vec<f64>,
    /// Logarithm of the stiffness over that of the model, at the places.
    ln_ratio: Vec<f64>,
    covariance: DMatrix<f64>,
    line: StiffnessLine,
    /// What the clamp gives, mm: mean and standard deviation.
    pub gives_mm: (f64, f64),
    /// Each reading beside what the line makes of it.
    pub readings: Vec<Fitted>,
    /// How many figures of the line the readings tell: never more than there are readings, and less where they repeat each other.
    pub told_figures: f64,
}

impl StiffnessProfile {
    /// Fits the line of a shaft to its readings; without any it is the prior.
    ///
    /// # Errors
    /// A table that is no line, a clamp that holds all of the shaft, a reading that is not above zero; readings that no line
    /// near the model can have.
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::stiffness_profile::{ClampedReading, ProfilePrior, Seen, StiffnessProfile};
    /// use clubphysics::vibration::LineRow;
    ///
    /// // A rod that its model calls 40 N·m² sags 45.6 mm under 1 kg at its end, 0.9 m from the clamp. By hand, without mass and
    /// // with a clamp that does not give: EI = F·l³/(3·δ) = 9.80665·0.729/(3·0.0456) = 52.3 N·m².
    /// let row = |position_mm| LineRow { position_mm, stiffness_n_m2: 40.0, mass_g_m: 100.0 };
    /// let prior = ProfilePrior {
    ///     rows: vec![row(0.0), row(1000.0)],
    ///     length_mm: 1000.0,
    ///     level_sd: 1.0,
    ///     tilt_sd: 1e-6,
    ///     shape_sd: 1e-6,
    ///     shape_length_mm: 200.0,
    ///     gives_mm: (0.0, 1e-6),
    /// };
    /// let seen = Seen::Deflection { mm: 45.6, load_g: 1000.0, from_butt_mm: 1000.0 };
    /// let read = ClampedReading { held_mm: 100.0, held_sd_mm: 0.1, seen, sd: 0.1 };
    /// let found = StiffnessProfile::fit(&prior, &[read])?;
    /// let (stiffness_n_m2, sd_share) = found.at(500.0);
    /// assert!((stiffness_n_m2 - 52.3).abs() < 0.05 && sd_share < 0.004, "{stiffness_n_m2} ± {sd_share}");
    /// # Ok::<(), clubphysics::PhysicsError>(())
    /// ```
    pub fn fit(prior: &ProfilePrior, readings: &[ClampedReading]) -> Result<Self, PhysicsError> {
        enough("stiffness_line", prior.rows.len(), 2, Advice::StiffnessAtBothEnds)?;
        let places = ProfilePrior::places_mm(prior.length_mm);
        let before = prior.covariance(&places);
        let n = places.len();
        let mut mean = DVector::zeros(n + 1);
        mean[n] = prior.gives_mm.0;
        let precision = {
            // Smooth deviations are next to singular; a billionth of the least variance is never seen.
            let jitter = DMatrix::identity(n + 1, n + 1) * 1e-9;
            (&before + jitter).cholesky().ok_or_else(|| not_settled(0.0, 0))?.inverse()
        };
        let cost = |at: &DVector<f64>, seen: &Straight| {
            let (from, off) = (at - &mean, &seen.ln_read - &seen.ln_fitted);
            let misfit: f64 = off.iter().zip(seen.variance.iter()).map(|(off, variance)| off * off / variance).sum();
            from.dot(&(&precision * &from)) + misfit
        };
        let seen_at = |at: &DVector<f64>| -> Result<(StiffnessLine, Straight), PhysicsError> {
            let line = prior.line(&places, &at.as_slice()[..n])?;
            let seen = Straight::of(&line, &places, readings, at[n])?;
            Ok((line, seen))
        };
        let mut at = mean.clone();
        let (mut line, mut seen) = seen_at(&at)?;
        for step in 0..ROUNDS_MAX {
            let off = &seen.ln_read - &seen.ln_fitted + &seen.gradient * (&at - &mean);
            let spread = &seen.gradient * &before * seen.gradient.transpose() + DMatrix::from_diagonal(&seen.variance);
            let root = spread.cholesky().ok_or_else(|| not_settled(0.0, step))?;
            let moves = &mean + &before * seen.gradient.transpose() * root.solve(&off) - &at;
            let change = moves.iter().enumerate().map(|(i, d)| if i == n { d.abs() / 1000.0 } else { d.abs() });
            let change = change.fold(0.0, f64::max);
            if !change.is_finite() {
                return Err(not_settled(change, step));
            }
            // Readings that contradict each other would make whole steps go to and fro: a step is halved until it is one to the
            // better, and where none is, the line is as near to them as lines get.
            let now = cost(&at, &seen);
            let halved = (0..12).map(|halvings| 0.5_f64.powi(halvings));
            let better = halved.filter(|_| change >= SETTLED && step + 1 < ROUNDS_MAX).find_map(|share| {
                let there = &at + &moves * share;
                let (line, seen) = seen_at(&there).ok()?;
                (cost(&there, &seen) < now * (1.0 - 1e-9)).then_some((there, line, seen))
            });
            if let Some(better) = better {
                (at, line, seen) = better;
                continue;
            }
            let inverse = root.inverse();
            let known = &before * seen.gradient.transpose() * &inverse;
            let covariance = &before - &known * &seen.gradient * &before;
            let weighed = &inverse * &off;
            let readings = (0..readings.len())
                .map(|i| Fitted { fitted: seen.ln_fitted[i].exp(), off_sds: weighed[i] / inverse[(i, i)].sqrt() });
            return Ok(Self {
                gives_mm: (at[n], covariance[(n, n)].max(0.0).sqrt()),
                readings: readings.collect(),
                told_figures: (&seen.gradient * known).trace(),
                ln_ratio: at.as_slice()[..n].to_vec(),
                covariance,
                line,
                places_mm: places,
            });
        }
        Err(not_settled(f64::NAN, ROUNDS_MAX))
    }

    /// Places at which it is stated, mm from the butt; between them its logarithm runs straight.
    #[must_use]
    pub fn places_mm(&self) -> &[f64] {
        &self.places_mm
    }

    /// Stiffness at a place from the butt, N·m², and the standard deviation of its logarithm.
    #[must_use]
    pub fn at(&self, from_butt_mm: f64) -> (f64, f64) {
        let hats: Vec<f64> = hats(&self.places_mm, from_butt_mm);
        let variance: f64 = hats
            .iter()
            .enumerate()
            .map(|(i, a)| hats.iter().enumerate().map(|(j, b)| a * b * self.covariance[(i, j)]).sum::<f64>())
            .sum();
        (self.line.at(from_butt_mm / 1000.0).0, variance.max(0.0).sqrt())
    }

    /// Logarithm of its stiffness over the model's there.
    #[must_use]
    pub fn ln_ratio(&self, from_butt_mm: f64) -> f64 {
        between(&self.places_mm, &self.ln_ratio, from_butt_mm)
    }

    /// Standard deviation of its stiffness as a share, root of the mean square over the shaft beyond a place.
    #[must_use]
    pub fn mean_sd(&self, beyond_mm: f64) -> f64 {
        let places = self.places_mm.iter().filter(|x| **x >= beyond_mm);
        let (sum, n) = places.fold((0.0, 0.0), |(sum, n), x| (sum + self.at(*x).1.powi(2), n + 1.0));
        if n > 0.0 { (sum / n).sqrt() } else { 0.0 }
    }
}

/// What 1, 2, 3 … frequencies would leave open of a shaft's stiffness, their clamp lengths spread evenly between the two given:
/// the root mean square of its standard deviation along the free shaft, as a share of the stiffness.
///
/// # Errors
/// As [`StiffnessProfile::fit`].
pub fn worth_of_readings(
    prior: &ProfilePrior,
    from_held_mm: f64,
    to_held_mm: f64,
    most: usize,
    like: impl Fn(f64) -> Result<ClampedReading, PhysicsError>,
) -> Result<Vec<f64>, PhysicsError> {
    let places = ProfilePrior::places_mm(prior.length_mm);
    let before = prior.covariance(&places);
    let line = prior.line(&places, &vec![0.0; places.len()])?;
    (1..=most)
        .map(|count| {
            let step = if count > 1 { (to_held_mm - from_held_mm) / (count - 1) as f64 } else { 0.0 };
            let readings =
                (0..count).map(|i| like(from_held_mm + step * i as f64)).collect::<Result<Vec<_>, PhysicsError>>()?;
            let seen = Straight::of(&line, &places, &readings, prior.gives_mm.0)?;
            let spread = &seen.gradient * &before * seen.gradient.transpose() + DMatrix::from_diagonal(&seen.variance);
            let root = spread.cholesky().ok_or_else(|| not_settled(0.0, 0))?;
            let after = &before - &before * seen.gradient.transpose() * root.solve(&(&seen.gradient * &before));
            let free: Vec<usize> = (0..places.len()).filter(|i| places[*i] >= from_held_mm).collect();
            let sum: f64 = free.iter().map(|i| after[(*i, *i)].max(0.0)).sum();
            Ok((sum / free.len().max(1) as f64).sqrt())
        })
        .collect()
}

fn not_settled(residual: f64, steps: usize) -> PhysicsError {
    PhysicsError::NotConverged { what: Settling::StiffnessProfile, residual, steps }
}

/// The readings as straight functions of the logarithms at the places and of what the clamp gives.
struct Straight {
    ln_read: DVector<f64>,
    ln_fitted: DVector<f64>,
    gradient: DMatrix<f64>,
    variance: DVector<f64>,
}

impl Straight {
    fn of(
        line: &StiffnessLine,
        places: &[f64],
        readings: &[ClampedReading],
        gives_mm: f64,
    ) -> Result<Self, PhysicsError> {
        let (n, count) = (places.len(), readings.len());
        let mut straight = Self {
            ln_read: DVector::zeros(count),
            ln_fitted: DVector::zeros(count),
            gradient: DMatrix::zeros(count, n + 1),
            variance: DVector::zeros(count),
        };
        for (i, read) in readings.iter().enumerate() {
            let name = |what: &str| format!("readings[{i}].{what}");
            let value =
                above(&name(read.seen.field()), read.seen.value(), 0.0, read.seen.sign(), Advice::EnterMeasuredFigure)?;
            let found = sensed(line, read.held_mm - gives_mm, read.seen)?;
            straight.ln_read[i] = value.ln();
            straight.ln_fitted[i] = found.ln_value;
            for (x, share) in &found.bending {
                for (k, hat) in hats(places, x * 1000.0).into_iter().enumerate() {
                    straight.gradient[(i, k)] += share * hat;
                }
            }
            straight.gradient[(i, n)] = found.by_free_mm;
            straight.variance[i] = (read.sd / value).powi(2) + (found.by_free_mm * read.held_sd_mm).powi(2);
        }
        Ok(straight)
    }
}

/// Shares of the places in what is straight between them.
#[must_use]
pub fn hats(places: &[f64], x: f64) -> Vec<f64> {
    let mut hats = vec![0.0; places.len()];
    let at = places.partition_point(|place| *place <= x).clamp(1, places.len() - 1);
    let share = ((x - places[at - 1]) / (places[at] - places[at - 1])).clamp(0.0, 1.0);
    hats[at - 1] = 1.0 - share;
    hats[at] = share;
    hats
}

fn between(places: &[f64], values: &[f64], x: f64) -> f64 {
    hats(places, x).iter().zip(values).map(|(hat, value)| hat * value).sum()
}
