//! Least squares of one and two cycles a turn.

use crate::advice::{Advice, Clash};
use nalgebra::{Cholesky, SMatrix, SVector};

use crate::error::PhysicsError;

/// Mean, cosine and sine of one cycle, cosine and sine of two cycles.
pub(super) const TERMS: usize = 5;

/// Relative size below which scatter is only rounding of the figures.
const ROUNDING: f64 = 1e-9;

/// Readings fitted by `c0 + c1·cos θ + s1·sin θ + c2·cos 2θ + s2·sin 2θ`.
#[derive(Debug, Clone)]
pub(super) struct Harmonics {
    /// The coefficients in that order.
    pub(super) terms: SVector<f64, TERMS>,
    /// Their covariance.
    pub(super) covariance: SMatrix<f64, TERMS, TERMS>,
    /// Standard deviation of a reading of unit weight, given or found.
    pub(super) noise: f64,
    /// Root mean square of the weighted residuals, freedoms allowed for.
    pub(super) scatter: f64,
    /// Readings less terms.
    pub(super) freedoms: usize,
    /// Freedoms of `noise`; `None` when it was given.
    pub(super) noise_freedoms: Option<usize>,
    least: f64,
}

/// The terms at an angle.
pub(super) fn row(angle_rad: f64) -> SVector<f64, TERMS> {
    let (sin, cos) = angle_rad.sin_cos();
    SVector::from([1.0, cos, sin, cos * cos - sin * sin, 2.0 * sin * cos])
}

impl Harmonics {
    /// Fits readings with standard deviations `noise · spreads[i]`; `noise` is found from the residuals when not given,
    /// and is then at least `rounding`.
    pub(super) fn fit(
        angles_rad: &[f64],
        values: &[f64],
        spreads: &[f64],
        noise: Option<f64>,
        rounding: f64,
    ) -> Result<Self, PhysicsError> {
        let count = values.len();
        let mean = values.iter().sum::<f64>() / count as f64;
        let mut normal = SMatrix::<f64, TERMS, TERMS>::zeros();
        let mut right = SVector::<f64, TERMS>::zeros();
        let mut rows = Vec::with_capacity(count);
        for ((angle, value), spread) in angles_rad.iter().zip(values).zip(spreads) {
            let row = row(*angle) / *spread;
            // The mean is taken off first, or the small harmonics drown in the rounding of the large one.
            let rest = (value - mean) / spread;
            normal += row * row.transpose();
            right += row * rest;
            rows.push((row, rest));
        }
        let factor = well_spread(&normal)?;
        let mut terms = factor.solve(&right);
        let square: f64 = rows.iter().map(|(row, rest)| (rest - row.dot(&terms)).powi(2)).sum();
        terms[0] += mean;
        let freedoms = count - TERMS;
        let scatter = (square / freedoms as f64).sqrt();
        let typical = spreads.iter().sum::<f64>() / count as f64;
        let least = ROUNDING * mean.abs() / typical;
        let used = noise.unwrap_or(scatter.max(rounding)).max(least);
        Ok(Self {
            terms,
            covariance: factor.inverse() * (used * used),
            noise: used,
            scatter,
            freedoms,
            noise_freedoms: noise.is_none().then_some(freedoms),
            least,
        })
    }

    /// Noise of unit weight that the rounding of the figures alone makes.
    pub(super) fn rounding(&self) -> f64 {
        self.least
    }

    /// Chance of a pair of terms this large if both were zero: the tail of F with 2 and ν freedoms,
    /// `(1 + 2F/ν)^(-ν/2)`, and `exp(-F)` for known noise.
    pub(super) fn chance_of_none(&self, first_term: usize) -> f64 {
        let (a, b) = (self.terms[first_term], self.terms[first_term + 1]);
        let block = self.covariance.fixed_view::<2, 2>(first_term, first_term);
        let determinant = block[(0, 0)] * block[(1, 1)] - block[(0, 1)] * block[(0, 1)];
        let square = (a * a * block[(1, 1)] - 2.0 * a * b * block[(0, 1)] + b * b * block[(0, 0)])
            / determinant.max(f64::MIN_POSITIVE);
        match self.noise_freedoms {
            None => (-0.5 * square).exp(),
            Some(freedoms) => {
                let half = 0.5 * freedoms as f64;
                (1.0 + 0.5 * square / half).powf(-half)
            }
        }
    }
}

/// Factors the normal matrix, unless the angles leave a term undetermined.
fn well_spread(normal: &SMatrix<f64, TERMS, TERMS>) -> Result<Cholesky<f64, nalgebra::U5>, PhysicsError> {
    let refused =
        || PhysicsError::Contradiction { what: Clash::AnglesTooClose, advice: Box::new(Advice::SpreadAngles) };
    // In the scale of its own diagonal, 1/entry of the inverse is the share of a term that the others do not explain.
    let factor = normal.cholesky().ok_or_else(refused)?;
    let inverse = factor.inverse();
    let least = (0..TERMS).map(|i| 1.0 / (inverse[(i, i)] * normal[(i, i)])).fold(f64::INFINITY, f64::min);
    if least > 1e-3 { Ok(factor) } else { Err(refused()) }
}
