//! Least squares for readings of any covariance, and conditioning of a Gaussian: the general case that the belief of a
//! job is a special, larger one of.
//!
//! Accuracy: orthogonal triangularisation of the whitened design; NIST's Norris problem is met to 11 digits
//! (`tests/published.rs`).

use crate::error::{CovarianceFault, EstimationError as E};
use nalgebra::{DMatrix, DVector};

/// What is known of the noise of the readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Noise<'a> {
    /// Independent and equal, of unknown size: taken from the residuals.
    FromResiduals,
    /// Independent, with these variances.
    Variances(&'a [f64]),
    /// With this covariance, one row a reading.
    Covariance(&'a [Vec<f64>]),
}

/// A fitted linear model.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The coefficients, one a column of the design.
    pub coefficients: Vec<f64>,
    /// Covariance of the coefficients, one row each, in the products of their units.
    pub covariance: Vec<Vec<f64>>,
    /// Residual standard deviation: in the unit of the readings when the noise was unknown, else against the stated
    /// noise (about 1 when that was right); none when nothing is left over.
    pub residual_sd: Option<f64>,
    /// Readings less coefficients: what is left to judge the noise by; 0 leaves nothing.
    pub degrees_of_freedom: usize,
}

impl Fit {
    /// Value and standard deviation of `Σ weights·coefficients`.
    ///
    /// # Errors
    ///
    /// Another number of weights than of coefficients.
    pub fn combine(&self, weights: &[f64]) -> Result<crate::Forecast, E> {
        check_len("weights", weights.len(), self.coefficients.len())?;
        let mean = weights.iter().zip(&self.coefficients).map(|(w, c)| w * c).sum();
        let variance: f64 = self
            .covariance
            .iter()
            .zip(weights)
            .map(|(row, w)| w * row.iter().zip(weights).map(|(c, v)| c * v).sum::<f64>())
            .sum();
        Ok(crate::Forecast { mean, sd: variance.max(0.0).sqrt() })
    }

    /// Correlation of two coefficients.
    ///
    /// # Errors
    ///
    /// No such coefficient, or one without uncertainty.
    pub fn correlation(&self, i: usize, j: usize) -> Result<f64, E> {
        let least = i.max(j) + 1;
        if least > self.coefficients.len() {
            return Err(E::TooFew { place: "coefficients".into(), count: self.coefficients.len(), least });
        }
        let scale = E::positive(|| "covariance".into(), self.covariance[i][i] * self.covariance[j][j])?;
        Ok(self.covariance[i][j] / scale.sqrt())
    }
}

/// Fit `values = design·coefficients + noise`, one row of the design a reading.
///
/// # Errors
///
/// Sizes that do not fit, numbers that are not finite, fewer readings than coefficients (one more is needed when the
/// noise is to come from the residuals), a covariance that is none, columns that do not differ.
///
/// # Examples
///
/// ```
/// use estimation::gls::{Noise, fit};
/// let line = fit(&[vec![1.0, 0.0], vec![1.0, 1.0], vec![1.0, 2.0]], &[1.0, 3.0, 5.0], Noise::Variances(&[0.01; 3]))?;
/// assert!((line.coefficients[1] - 2.0).abs() < 1e-12);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn fit(design: &[Vec<f64>], values: &[f64], noise: Noise<'_>) -> Result<Fit, E> {
    let n = values.len();
    check_len("design", design.len(), n)?;
    let p = design.first().map_or(0, Vec::len);
    let unknown = noise == Noise::FromResiduals;
    let least = (p + usize::from(unknown)).max(1);
    if n < least || p == 0 {
        return Err(E::TooFew { place: "readings".into(), count: n, least });
    }
    for row in design {
        check_len("design.row", row.len(), p)?;
    }
    let mut a = DMatrix::from_fn(n, p, |i, j| design[i][j]);
    let mut y = DVector::from_column_slice(values);
    for value in a.iter().chain(y.iter()) {
        E::finite(|| "readings".into(), *value)?;
    }
    match noise {
        Noise::FromResiduals => {}
        Noise::Variances(variances) => {
            check_len("variances", variances.len(), n)?;
            for (i, variance) in variances.iter().enumerate() {
                let weight = 1.0 / E::positive(|| format!("variances[{i}]"), *variance)?.sqrt();
                a.row_mut(i).scale_mut(weight);
                y[i] *= weight;
            }
        }
        Noise::Covariance(rows) => {
            let factor = cholesky("covariance", rows, n)?;
            // The factor's diagonal is positive, so the triangular solves cannot fail.
            factor.solve_lower_triangular_mut(&mut a);
            factor.solve_lower_triangular_mut(&mut y);
        }
    }
    // Columns of unlike size would hide a near-singular design from the pivots.
    let sizes: Vec<f64> = (0..p).map(|j| a.column(j).norm()).collect();
    for (j, size) in sizes.iter().enumerate() {
        if *size <= 0.0 {
            return Err(E::Singular { place: format!("design.column[{j}]") });
        }
        a.column_mut(j).unscale_mut(*size);
    }
    let qr = a.clone().qr();
    let r = qr.r();
    if (0..p).any(|i| r[(i, i)].abs() < 1e-13) {
        return Err(E::Singular { place: "least_squares".into() });
    }
    let singular = || E::Singular { place: "least_squares".into() };
    let mut scaled = r.solve_upper_triangular(&(qr.q().transpose() * &y)).ok_or_else(singular)?;
    // One round of refinement recovers what the triangularisation rounded away.
    let left = &y - &a * &scaled;
    scaled += r.solve_upper_triangular(&(qr.q().transpose() * left)).ok_or_else(singular)?;
    let square = (&y - &a * &scaled).norm_squared();
    let root = r.solve_upper_triangular(&DMatrix::identity(p, p)).ok_or_else(singular)?;
    let dof = n - p;
    let residual_sd = (dof > 0).then(|| (square / dof as f64).sqrt());
    let times = if unknown { square / dof as f64 } else { 1.0 };
    let covariance = &root * root.transpose() * times;
    Ok(Fit {
        coefficients: (0..p).map(|j| scaled[j] / sizes[j]).collect(),
        covariance: (0..p).map(|i| (0..p).map(|j| covariance[(i, j)] / (sizes[i] * sizes[j])).collect()).collect(),
        residual_sd,
        degrees_of_freedom: dof,
    })
}

/// The straight line `y = c₀ + c₁·x` with noise from the residuals.
///
/// # Errors
///
/// As [`fit`].
pub fn line(x: &[f64], y: &[f64]) -> Result<Fit, E> {
    let design: Vec<Vec<f64>> = x.iter().map(|x| vec![1.0, *x]).collect();
    fit(&design, y, Noise::FromResiduals)
}

/// A Gaussian: mean and covariance.
#[derive(Debug, Clone, PartialEq)]
pub struct Gaussian {
    /// Expected values.
    pub mean: Vec<f64>,
    /// Covariance, one row a value.
    pub covariance: Vec<Vec<f64>>,
}

impl Gaussian {
    /// The Gaussian given that `design·x + noise` was read as `values`.
    ///
    /// # Errors
    ///
    /// Sizes that do not fit; readings of which the forecast covariance is not one.
    pub fn given(&self, design: &[Vec<f64>], noise: &[Vec<f64>], values: &[f64]) -> Result<Self, E> {
        let (n, k) = (self.mean.len(), values.len());
        check_len("covariance", self.covariance.len(), n)?;
        check_len("design", design.len(), k)?;
        check_len("noise", noise.len(), k)?;
        for (what, rows, len) in [("covariance", &self.covariance[..], n), ("design", design, n), ("noise", noise, k)] {
            for row in rows {
                check_len(what, row.len(), len)?;
            }
        }
        let p = DMatrix::from_fn(n, n, |i, j| self.covariance[i][j]);
        let h = DMatrix::from_fn(k, n, |i, j| design[i][j]);
        let mean = DVector::from_column_slice(&self.mean);
        let hp = &h * &p;
        let s = &hp * h.transpose();
        let total: Vec<Vec<f64>> = (0..k).map(|i| (0..k).map(|j| s[(i, j)] + noise[i][j]).collect()).collect();
        let factor = cholesky("forecast of the readings", &total, k)?;
        let (mut half, mut left) = (hp, DVector::from_column_slice(values) - &h * &mean);
        factor.solve_lower_triangular_mut(&mut half);
        factor.solve_lower_triangular_mut(&mut left);
        let mean = mean + half.transpose() * left;
        let covariance = p - half.transpose() * half;
        Ok(Self {
            mean: mean.iter().copied().collect(),
            covariance: (0..n).map(|i| (0..n).map(|j| covariance[(i, j)]).collect()).collect(),
        })
    }
}

fn cholesky(place: &str, rows: &[Vec<f64>], n: usize) -> Result<DMatrix<f64>, E> {
    check_len(place, rows.len(), n)?;
    for row in rows {
        check_len(place, row.len(), n)?;
    }
    let refuse = || E::NotCovariance { place: place.into(), reason: CovarianceFault::NotPositive };
    Ok(DMatrix::from_fn(n, n, |i, j| rows[i][j]).cholesky().ok_or_else(refuse)?.unpack())
}

fn check_len(place: &str, found: usize, expected: usize) -> Result<(), E> {
    if found == expected { Ok(()) } else { Err(E::Shape { place: place.into(), found, expected }) }
}
