//! What a choice is worth while another choice is still to come.
//!
//! After the joint has cured, the club is read and a grip is taken from those that are there, so that a deviation of the
//! finish can still be put right. Before that reading the finish is `N(μ, σ_e² + σ_r²)`: `σ_e` is what the reading will
//! tell, `σ_r` what stays unknown after it. With the grips' effects `c_k` (points, against the one counted with in `μ`)
//! the one nearest to the deviation `D` is taken, and the chance of finishing in tolerance is (derived)
//!
//! ```text
//! P = Σ_k ∫ over the D for which c_k is nearest of N(D; μ, σ_e²)·π(D − c_k) dD,  π(r) = Φ((τ−r)/σ_r) − Φ((−τ−r)/σ_r)
//! ```

use crate::belief::{Belief, Gradient};
use crate::error::EstimationError as E;
use crate::normal;
use crate::reading::Probe;

/// A finish of which one more reading will tell a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prospect {
    /// Expected deviation from the target, points.
    pub deviation_points: f64,
    /// Standard deviation of what the reading to come will tell, points.
    pub told_sd: f64,
    /// Standard deviation of what stays unknown after it, points.
    pub rest_sd: f64,
    /// Half width of what is accepted, points.
    pub tolerance_points: f64,
}

/// Abscissas and weights of the Gauss–Legendre rule with eight points on −1 … 1 (computed with numpy's `leggauss(8)`).
const LEGENDRE: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_3),
];

impl Prospect {
    /// Splits the variance of a finish by what planned readings (question and noise, in sd) will tell of it.
    ///
    /// # Errors
    /// As [`Belief::sd_after`].
    pub fn of(
        belief: &Belief,
        finish: &Probe,
        target_points: f64,
        tolerance_points: f64,
        planned: &[(Probe, f64)],
    ) -> Result<Self, E> {
        let now: Gradient = belief.gradient(finish)?;
        let rest_sd = belief.sd_after(finish, planned)?;
        let told = (now.variance() - rest_sd * rest_sd).max(0.0);
        Ok(Self { deviation_points: now.mean - target_points, told_sd: told.sqrt(), rest_sd, tolerance_points })
    }

    /// The same with the finish moved by a known amount.
    #[must_use]
    pub fn moved(self, by_points: f64) -> Self {
        Self { deviation_points: self.deviation_points + by_points, ..self }
    }

    /// Chance of finishing in tolerance with nothing left to choose.
    #[must_use]
    pub fn chance_as_it_stands(&self) -> f64 {
        let sd = self.told_sd.hypot(self.rest_sd);
        normal::between(-self.tolerance_points, self.tolerance_points, self.deviation_points, sd)
    }

    /// Chance of finishing in tolerance when, after the reading, one of several corrections is taken.
    ///
    /// `effects` are the points that each choice takes off the deviation (0 for leaving it as planned); their order does
    /// not matter. Without any the finish stays as it is.
    ///
    /// The integrand has a kink where the nearest choice changes, so each such cell is integrated by itself: with
    /// Gauss–Hermite over the kinks the third digit is wrong.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::choice::Prospect;
    /// // Five grips that differ by these points; computed with scipy's bivariate normal distribution function, checked by
    /// // quadrature with break points.
    /// let club = Prospect { deviation_points: 0.0, told_sd: 0.16, rest_sd: 0.13, tolerance_points: 0.3 };
    /// assert!((club.chance_with(&[-0.3, -0.1, 0.0, 0.1, 0.35]) - 0.967828).abs() < 1e-6);
    /// ```
    #[must_use]
    pub fn chance_with(&self, effects: &[f64]) -> f64 {
        let mut sorted: Vec<f64> = effects.iter().copied().filter(|c| c.is_finite()).collect();
        sorted.sort_by(f64::total_cmp);
        sorted.dedup();
        if sorted.is_empty() {
            return self.chance_as_it_stands();
        }
        let tau = self.tolerance_points;
        let within = |r: f64| normal::between(-tau, tau, r, self.rest_sd);
        if self.told_sd < 1e-9 {
            return sorted.iter().map(|c| within(self.deviation_points - c)).fold(0.0, f64::max);
        }
        let mut total = 0.0;
        for (k, c) in sorted.iter().enumerate() {
            // Beyond these the density or the chance is below 1e-12.
            let reach = tau + 7.0 * self.rest_sd;
            let from = if k == 0 { f64::NEG_INFINITY } else { (sorted[k - 1] + c) / 2.0 };
            let to = sorted.get(k + 1).map_or(f64::INFINITY, |next| (c + next) / 2.0);
            let from = from.max(c - reach).max(self.deviation_points - 7.0 * self.told_sd);
            let to = to.min(c + reach).min(self.deviation_points + 7.0 * self.told_sd);
            if to > from {
                total += self.integral(from, to, *c, &within);
            }
        }
        total.clamp(0.0, 1.0)
    }

    fn integral(&self, from: f64, to: f64, c: f64, within: &impl Fn(f64) -> f64) -> f64 {
        // Panels no wider than the narrowest feature, on which eight points are good to ten digits.
        let narrow = self.told_sd.min(self.rest_sd.max(self.told_sd / 50.0)) * 1.5;
        let panels = ((to - from) / narrow).ceil().clamp(1.0, 400.0) as usize;
        let half = (to - from) / panels as f64 / 2.0;
        let mut sum = 0.0;
        for panel in 0..panels {
            let centre = from + half * (2 * panel + 1) as f64;
            for (x, weight) in LEGENDRE {
                for d in [centre - half * x, centre + half * x] {
                    let z = (d - self.deviation_points) / self.told_sd;
                    sum += weight * normal::density(z) * within(d - c);
                }
            }
        }
        sum * half / self.told_sd
    }

    /// Chance of finishing in tolerance once the reading has been taken and a choice made by it: what an unlimited
    /// choice would reach.
    #[must_use]
    pub fn chance_at_best(&self) -> f64 {
        normal::between(-self.tolerance_points, self.tolerance_points, 0.0, self.rest_sd)
    }
}
