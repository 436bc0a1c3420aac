//! What a planned deviation costs: the chance that the club will not finish in tolerance.
//!
//! A curve is tabulated once at steps of [`STEP_POINTS`] and shared; the search only looks values up. Costs are
//! counted from the curve's own minimum, because what no choice of parts can avoid should not blur how close a plan is
//! to its bound.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::error::{Asked, MatchError};
use crate::grid::MilliPoints;

/// Grid of deviations, points: a step is one of the grid's thousandths. One display step of a 0.1 g scale is about 0.05 point in the head, fifty times coarser.
pub const STEP_POINTS: f64 = 0.001;

/// Whether clubs count one by one or the set as a whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum LossForm {
    /// 1 − P: the expected number of clubs missed.
    Yield,
    /// −ln P: the logarithm of the chance that all of a set are in tolerance.
    WholeSet,
}

/// Tabulated cost of a deviation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Loss {
    /// Chance of finishing in tolerance at −reach … +reach in steps of [`STEP_POINTS`].
    probability: Arc<[f64]>,
    form: LossForm,
}

/// What the planning formula needs to know about a club whose grip is still to be chosen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripStillToChoose {
    /// Half-width of the tolerance, points.
    pub tolerance_points: f64,
    /// Standard deviation of what the reading after the cure will tell, points.
    pub sigma_learned_points: f64,
    /// Standard deviation of what stays unknown after it, points.
    pub sigma_rest_points: f64,
    /// Standard deviation of the spare grips' effect, points.
    pub grip_spread_points: f64,
    /// Spare grips to choose from.
    pub spare_grips: u32,
}

impl Loss {
    /// A club finished as planned up to a Gaussian error: `P(r) = Φ((τ−r)/σ) − Φ((−τ−r)/σ)`.
    ///
    /// # Errors
    /// `sigma_points` outside 0.001–5 or `tolerance_points` outside 0.01–20.
    ///
    /// # Examples
    ///
    /// ```
    /// use matching::{Loss, LossForm};
    /// // Tables of the normal distribution: within ±3 sd lie 0.99730; at the edge of the tolerance half of all clubs pass.
    /// let loss = Loss::from_sigma(0.1, 0.3, LossForm::Yield)?;
    /// assert!((loss.probability(0.0) - 0.99730).abs() < 5e-6 && (loss.probability(0.3) - 0.5).abs() < 1e-6);
    /// # Ok::<(), matching::MatchError>(())
    /// ```
    pub fn from_sigma(sigma_points: f64, tolerance_points: f64, form: LossForm) -> Result<Self, MatchError> {
        ranged(Asked::StandardDeviationOfFinish, sigma_points, 0.001, 5.0)?;
        ranged(Asked::Tolerance, tolerance_points, 0.01, 20.0)?;
        Ok(Self::from_probability(tolerance_points + 3.0 * sigma_points, form, |r| {
            within(r, tolerance_points, sigma_points)
        }))
    }

    /// A club whose grip will be chosen after the cure reading, from `K` grips scattered with standard deviation `s`.
    ///
    /// Derived: with `D` the deviation that the reading shows before the grip, `D ~ N(r, σ_e²)`, the grip taken is the
    /// one nearest to `D`; its distance `x` has survival `(1 − Φ((D+x)/s) + Φ((D−x)/s))^K`, and the finish is in
    /// tolerance with probability `π(x) = Φ((τ−x)/σ_r) − Φ((−τ−x)/σ_r)`. Integrating by parts over `x`:
    /// `P(r) = ∫ N(D; r, σ_e²) ∫₀^∞ −π′(x)·{1 − survival} dx dD`.
    ///
    /// Accuracy: 1e-4 in P; `val_planning_table` holds values computed independently.
    ///
    /// # Errors
    /// Spreads outside 0.001–5 points, tolerance outside 0.01–20 points, or no spare grip.
    ///
    /// # Examples
    ///
    /// ```
    /// use matching::{GripStillToChoose, Loss, LossForm};
    /// // From the table of `val_planning_table`: three spare grips for a club planned 0.2 point off.
    /// let club = GripStillToChoose {
    ///     tolerance_points: 0.3, sigma_learned_points: 0.16, sigma_rest_points: 0.13, grip_spread_points: 0.241879, spare_grips: 3,
    /// };
    /// let loss = Loss::from_spare_grips(&club, LossForm::Yield)?;
    /// assert!((loss.probability(0.2) - 0.8272).abs() < 1e-4);
    /// # Ok::<(), matching::MatchError>(())
    /// ```
    pub fn from_spare_grips(club: &GripStillToChoose, form: LossForm) -> Result<Self, MatchError> {
        let GripStillToChoose { tolerance_points: tau, sigma_learned_points: se, sigma_rest_points: sr, .. } = *club;
        let (s, k) = (club.grip_spread_points, club.spare_grips);
        ranged(Asked::Tolerance, tau, 0.01, 20.0)?;
        ranged(Asked::StandardDeviationOfWhatReadingTells, se, 0.001, 5.0)?;
        ranged(Asked::StandardDeviationOfWhatStaysUnknown, sr, 0.001, 5.0)?;
        ranged(Asked::SpreadOfSpareGrips, s, 0.001, 5.0)?;
        ranged(Asked::NumberOfSpareGrips, f64::from(k), 1.0, 1e6)?;
        let reach = tau + 3.0 * (se * se + sr * sr).sqrt() + 3.0 * s;
        let learned = FinishTable::new(tau, sr, s, k, reach + 6.0 * se, se);
        let coarse = CubicTable::new(reach, 0.01, |r| learned.expect(r));
        Ok(Self::from_probability(reach, form, |r| coarse.at(r.abs())))
    }

    /// Any curve of the chance of finishing in tolerance, tabulated over ±`reach_points` (rounded up to the grid, at
    /// most 50 points). Deviations beyond the reach are not planned at all; so are those where the chance is under
    /// 0.1 %.
    ///
    /// # Examples
    ///
    /// ```
    /// use matching::{Loss, LossForm};
    /// // A club that passes within a quarter of a point and never beyond it: the reach of 0.5 is planned, at a whole miss
    /// // only where the chance is not under 0.1 %.
    /// let loss = Loss::from_probability(0.5, LossForm::Yield, |r| if r.abs() <= 0.25 { 1.0 } else { 0.01 });
    /// assert_eq!((loss.cost(0.25), loss.cost(0.4), loss.cost(0.6)), (Some(0.0), Some(0.99), None));
    /// ```
    pub fn from_probability(reach_points: f64, form: LossForm, probability: impl Fn(f64) -> f64) -> Self {
        let half = whole((reach_points.clamp(0.01, 50.0) / STEP_POINTS).ceil());
        let table: Vec<f64> = (-half..=half).map(|i| probability(f64::from(i) * STEP_POINTS).clamp(0.0, 1.0)).collect();
        Self { probability: table.into(), form }
    }

    /// Greatest deviation that is planned at all; the curve has an entry for it and one for each nearer to 0.
    pub(crate) fn half(&self) -> MilliPoints {
        MilliPoints::at_place(MilliPoints(0), self.probability.len() / 2)
    }

    /// Greatest deviation that is planned at all, points.
    pub fn reach_points(&self) -> f64 {
        self.half().exact() * STEP_POINTS
    }

    /// Chance of finishing in tolerance at a deviation, to the nearest grid step; 0 beyond the reach.
    pub fn probability(&self, deviation_points: f64) -> f64 {
        let at = (deviation_points / STEP_POINTS).round() + self.half().exact();
        // What is no number is out of reach too.
        if at >= 0.0 { self.probability.get(split(at, usize::MAX).0).copied().unwrap_or(0.0) } else { 0.0 }
    }

    /// Cost of a deviation above the least cost of the curve; `None` beyond the reach or where the chance is under
    /// 0.1 %.
    ///
    /// # Examples
    ///
    /// ```
    /// use matching::{Loss, LossForm};
    /// // In the middle 0.99730 pass, at the edge of the tolerance 0.5: the difference is the cost (tables of the normal
    /// // distribution).
    /// let loss = Loss::from_sigma(0.1, 0.3, LossForm::Yield)?;
    /// assert!((loss.cost(0.3).unwrap() - 0.49730).abs() < 5e-6);
    /// # Ok::<(), matching::MatchError>(())
    /// ```
    pub fn cost(&self, deviation_points: f64) -> Option<f64> {
        self.of_chance(self.probability(deviation_points), self.form_of(self.best()))
    }

    /// As [`Loss::cost`], of a deviation on the grid.
    pub(crate) fn cost_at(&self, deviation: MilliPoints) -> Option<f64> {
        let at = usize::try_from(i64::from(deviation.0) + i64::from(self.half().0)).ok()?;
        self.of_chance(*self.probability.get(at)?, self.form_of(self.best()))
    }

    /// Costs on the whole grid in one go (see [`Loss::cost`]).
    pub(crate) fn costs(&self) -> impl Iterator<Item = Option<f64>> + '_ {
        let least = self.form_of(self.best());
        self.probability.iter().map(move |&p| self.of_chance(p, least))
    }

    fn of_chance(&self, p: f64, least: f64) -> Option<f64> {
        (p >= LEAST_PROBABILITY).then(|| self.form_of(p) - least)
    }

    /// Address of the shared table: clubs with clones of one curve share their compiled form.
    pub(crate) fn key(&self) -> (usize, LossForm) {
        (Arc::as_ptr(&self.probability).cast::<f64>().addr(), self.form)
    }

    fn best(&self) -> f64 {
        self.probability.iter().copied().fold(0.0, f64::max).max(LEAST_PROBABILITY)
    }

    fn form_of(&self, p: f64) -> f64 {
        match self.form {
            LossForm::Yield => 1.0 - p,
            LossForm::WholeSet => -p.ln(),
        }
    }
}

/// Below this chance a deviation is not planned.
const LEAST_PROBABILITY: f64 = 0.001;

fn ranged(what: Asked, value: f64, low: f64, high: f64) -> Result<(), MatchError> {
    if value.is_finite() && (low..=high).contains(&value) {
        return Ok(());
    }
    let unit = if what == Asked::NumberOfSpareGrips { "" } else { "points" };
    Err(MatchError::OutOfRange { what, value, low, high, unit })
}

/// A number of steps that is whole already; the ranges that are asked for give a few million of them at most.
fn whole(steps: f64) -> i32 {
    steps as i32
}

/// The place in a table before a figure that is not negative, `last` at most, and how far past it the figure is.
fn split(figure: f64, last: usize) -> (usize, f64) {
    // Cutting off rounds down.
    let place = (figure as usize).min(last);
    (place, figure - place as f64)
}

/// Chance that `N(centre, sigma²)` lies within ±tau.
fn within(centre: f64, tau: f64, sigma: f64) -> f64 {
    phi_cdf((tau - centre) / sigma) - phi_cdf((-tau - centre) / sigma)
}

/// Chance of finishing given the deviation `D` that the reading shows, tabulated over `D`, and its average over a
/// Gaussian `D`.
struct FinishTable {
    step: f64,
    values: Vec<f64>,
    sigma: f64,
}

impl FinishTable {
    fn new(tau: f64, sr: f64, s: f64, k: u32, reach: f64, se: f64) -> Self {
        let step = (se.min(s).min(sr) / 4.0).min(0.02);
        let finish = Finish::new(tau, sr, s, k);
        let values = (0..=whole((reach / step).ceil()) + 4).map(|i| finish.at(f64::from(i) * step)).collect();
        Self { step, values, sigma: se }
    }

    /// Trapezoidal rule over ±6σ: for a smooth integrand that vanishes at both ends it converges faster than any power
    /// of the step.
    fn expect(&self, r: f64) -> f64 {
        let reach = whole((6.0 * self.sigma / self.step).ceil());
        let centre = whole((r / self.step).round());
        let (mut sum, mut weight) = (0.0, 0.0);
        for i in centre - reach..=centre + reach {
            let z = (f64::from(i) * self.step - r) / self.sigma;
            let w = (-0.5 * z * z).exp();
            weight += w;
            let value = usize::try_from(i.unsigned_abs()).ok().and_then(|at| self.values.get(at));
            sum += w * value.copied().unwrap_or(0.0);
        }
        sum / weight
    }
}

/// `∫₀^∞ −π′(x)·{1 − survival(x; D)} dx` by Simpson's rule over the span where π′ is not negligible. What does not depend
/// on `D` is worked out once.
struct Finish {
    /// Distances `x` in units of the grips' spread, with −π′ there and the weight of the rule.
    nodes: Vec<(f64, f64)>,
    normal: NormalTable,
    spread: f64,
    grips: i32,
}

impl Finish {
    fn new(tau: f64, sr: f64, s: f64, k: u32) -> Self {
        let (from, to) = ((tau - 8.0 * sr).max(0.0), tau + 8.0 * sr);
        let n = 80;
        let h = (to - from) / f64::from(n);
        let nodes = (0..=n)
            .map(|i| {
                let x = from + f64::from(i) * h;
                let slope = (phi_density((tau - x) / sr) - phi_density((tau + x) / sr)) / sr;
                let factor = match i {
                    0 => 1.0,
                    i if i == n => 1.0,
                    i if i % 2 == 1 => 4.0,
                    _ => 2.0,
                };
                (x / s, factor * slope * h / 3.0)
            })
            .collect();
        Self { nodes, normal: NormalTable::new(), spread: s, grips: i32::try_from(k).unwrap_or(i32::MAX) }
    }

    fn at(&self, d: f64) -> f64 {
        let d = d / self.spread;
        let of = |&(x, weight): &(f64, f64)| {
            let missed = 1.0 - self.normal.at(d + x) + self.normal.at(d - x);
            weight * (1.0 - missed.max(0.0).powi(self.grips))
        };
        self.nodes.iter().map(of).sum()
    }
}

/// Φ by four-point interpolation between values [`NormalTable::STEP`] apart: the fourth derivative of Φ is
/// (3z − z³)·φ(z), at most 0.56, so the error stays below 0.56 · 9/16 · STEP⁴ / 24, under 1e-9 (the usual bound of cubic
/// interpolation).
struct NormalTable {
    values: Vec<f64>,
}

impl NormalTable {
    const STEP: f64 = 1.0 / 64.0;
    /// Beyond this Φ is 0 or 1 to the last digit that matters here (1 − Φ(6) is 1e-9).
    const REACH: f64 = 6.0;

    fn new() -> Self {
        let last = whole(2.0 * Self::REACH / Self::STEP) + 1;
        Self { values: (-1..=last).map(|i| phi_cdf(f64::from(i) * Self::STEP - Self::REACH)).collect() }
    }

    fn at(&self, z: f64) -> f64 {
        if z.abs() >= Self::REACH {
            return if z > 0.0 { 1.0 } else { 0.0 };
        }
        let place = (z + Self::REACH) / Self::STEP;
        let (i, t) = split(place, self.values.len() - 4);
        // `values[0]` stands one step before the first place.
        cubic([self.values[i], self.values[i + 1], self.values[i + 2], self.values[i + 3]], t)
    }
}

/// Lagrange's polynomial through values at −1, 0, 1 and 2.
fn cubic([before, v0, v1, v2]: [f64; 4], t: f64) -> f64 {
    -before * t * (t - 1.0) * (t - 2.0) / 6.0 + v0 * (t + 1.0) * (t - 1.0) * (t - 2.0) / 2.0
        - v1 * (t + 1.0) * t * (t - 2.0) / 2.0
        + v2 * (t + 1.0) * t * (t - 1.0) / 6.0
}

/// An even function tabulated on a coarse grid, read by four-point Lagrange interpolation.
struct CubicTable {
    step: f64,
    values: Vec<f64>,
}

impl CubicTable {
    fn new(reach: f64, step: f64, f: impl Fn(f64) -> f64) -> Self {
        Self { step, values: (0..=whole((reach / step).ceil()) + 3).map(|i| f(f64::from(i) * step)).collect() }
    }

    fn at(&self, x: f64) -> f64 {
        let (i, t) = split(x / self.step, self.values.len() - 3);
        let before = self.values[if i == 0 { 1 } else { i - 1 }];
        cubic([before, self.values[i], self.values[i + 1], self.values[i + 2]], t)
    }
}

fn phi_density(z: f64) -> f64 {
    (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt()
}

/// Standard normal distribution function: Taylor series of the error function inside |z| < 3, Lentz's continued
/// fraction of the tail outside (Abramowitz & Stegun 7.1.6 and 26.2.14, from memory).
fn phi_cdf(z: f64) -> f64 {
    let a = z.abs();
    if a < 3.0 {
        let (mut term, mut sum, mut n) = (a, a, 1.0);
        while term > 1e-17 * sum {
            n += 2.0;
            term *= a * a / n;
            sum += term;
        }
        return 0.5 + (sum * phi_density(a)).copysign(z);
    }
    if a > 38.0 {
        return if z > 0.0 { 1.0 } else { 0.0 };
    }
    let mut fraction = a;
    for n in (1..=60).rev() {
        fraction = a + f64::from(n) / fraction;
    }
    let tail = phi_density(a) / fraction;
    if z > 0.0 { 1.0 - tail } else { tail }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn val_normal_distribution() {
        // Values of Φ from scipy.stats.norm.cdf.
        for (z, p) in [(0.0, 0.5), (1.0, 0.841_344_746_068_542_9), (-2.5, 0.006_209_665_325_776_132)] {
            assert!((phi_cdf(z) - p).abs() < 1e-15, "{z}");
        }
        assert!((phi_cdf(-5.0) / 2.866_515_718_791_939e-7 - 1.0).abs() < 1e-12);
        assert!((phi_cdf(3.0) - 0.998_650_101_968_369_9).abs() < 1e-14);
    }

    /// What is read between the places of the table, and beyond its ends, against the function itself.
    #[test]
    fn the_table_of_the_normal_distribution_holds_its_accuracy() {
        let table = NormalTable::new();
        for i in -7000..=7000 {
            let z = f64::from(i) * 1.003e-3;
            assert!((table.at(z) - phi_cdf(z)).abs() < 2e-9, "{z}: {} {}", table.at(z), phi_cdf(z));
        }
        assert_eq!((table.at(f64::INFINITY), table.at(f64::NEG_INFINITY)), (1.0, 0.0));
    }

    /// Computed with scipy by nested quadrature and again by simulation: tolerance 0.3, what the reading tells 0.16,
    /// grips 0.241879; four decimals, hence 1e-4.
    #[test]
    fn val_planning_table() {
        let table = [
            (0.10, 3, [0.9233, 0.8552, 0.6000, 0.1292]),
            (0.10, 20, [0.9957, 0.9893, 0.9192, 0.4094]),
            (0.13, 3, [0.8916, 0.8272, 0.5896, 0.1402]),
            (0.13, 8, [0.9613, 0.9351, 0.7846, 0.2652]),
            (0.13, 60, [0.9786, 0.9769, 0.9507, 0.5953]),
        ];
        for (sr, k, row) in table {
            let club = GripStillToChoose {
                tolerance_points: 0.3,
                sigma_learned_points: 0.16,
                sigma_rest_points: sr,
                grip_spread_points: 0.241_879,
                spare_grips: k,
            };
            let loss = Loss::from_spare_grips(&club, LossForm::Yield).expect("valid");
            for (mu, p) in [0.0, 0.2, 0.43, 0.8].into_iter().zip(row) {
                assert!((loss.probability(mu) - p).abs() < 1e-4, "σ_r {sr} K {k} μ {mu}: {}", loss.probability(mu));
                assert!((loss.probability(-mu) - p).abs() < 1e-4, "even");
            }
        }
    }

    #[test]
    fn many_grips_leave_only_what_the_reading_cannot_tell() {
        let club = GripStillToChoose {
            tolerance_points: 0.3,
            sigma_learned_points: 0.16,
            sigma_rest_points: 0.13,
            grip_spread_points: 0.25,
            spare_grips: 1_000_000,
        };
        let loss = Loss::from_spare_grips(&club, LossForm::Yield).expect("valid");
        // 2Φ(0.3/0.13) − 1 from scipy.
        assert!((loss.probability(0.0) - 0.978_985_7).abs() < 2e-4, "{}", loss.probability(0.0));
    }

    #[test]
    fn curves_refuse_nonsense_and_stop_at_their_reach() {
        assert!(Loss::from_sigma(f64::NAN, 0.3, LossForm::Yield).is_err());
        assert!(Loss::from_sigma(0.1, 0.0, LossForm::Yield).is_err());
        let loss = Loss::from_sigma(0.1, 0.3, LossForm::WholeSet).expect("valid");
        assert_eq!(loss.cost(0.0), Some(0.0));
        assert!(loss.cost(0.2).expect("within reach") > loss.cost(0.1).expect("within reach"));
        assert_eq!(loss.cost(40.0), None);
        assert_eq!(loss.cost(f64::NAN), None);
    }
}
