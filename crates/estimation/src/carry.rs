//! Carrying what is known from one job to the next: a joint Gaussian brought up to date, and slowly forgotten.

use crate::error::EstimationError as E;
use crate::pieces::Whitened;
use nalgebra::{DMatrix, DVector};

/// Means with their joint covariance.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Gaussian {
    /// Expected values, each in a unit of its own: points, grams, inches or shares side by side.
    pub mean: Vec<f64>,
    /// Their covariance, a row a value.
    pub covariance: Vec<Vec<f64>>,
}

/// Something that the job saw of a carried value: the value itself plus a deviation of the job's own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// Place of the carried value.
    pub value: usize,
    /// Variance of the job's own deviation from it; 0 where the job saw the value itself.
    pub own_variance: f64,
}

/// What a job taught.
#[derive(Debug, Clone, PartialEq)]
pub struct Carried {
    /// All carried values, also those that the job did not see: they move through their correlation.
    pub values: Gaussian,
    /// What the job's own deviations turned out to be, one a link; none where it has none.
    pub own: Vec<Option<Whitened>>,
}

impl Gaussian {
    /// Refuses shapes that do not fit together and figures that are none.
    fn check(&self, place: &str) -> Result<(), E> {
        let n = self.mean.len();
        for mean in &self.mean {
            E::finite(|| format!("{place}.mean"), *mean)?;
        }
        if self.covariance.len() != n || self.covariance.iter().any(|row| row.len() != n) {
            return Err(E::Shape { place: place.into(), found: self.covariance.len(), expected: n });
        }
        for value in self.covariance.iter().flatten() {
            E::finite(|| format!("{place}.covariance"), *value)?;
        }
        Ok(())
    }

    fn matrix(&self) -> DMatrix<f64> {
        let n = self.mean.len();
        DMatrix::from_fn(n, n, |i, j| self.covariance[i][j])
    }

    /// Brings the values up to date with what a job believed of `links` in the end.
    ///
    /// With the seen `z = H·x + e`, `e` of the job's own: `G = P·Hᵀ·(H·P·Hᵀ + R)⁻¹`, then `x + G·(z₁ − z₀)` and
    /// `P − G·(Z₀ − Z₁)·Gᵀ` (derived: the regression of the unseen on the seen is not touched by readings of the seen).
    ///
    /// # Errors
    ///
    /// Shapes that do not fit together, figures that are not finite.
    pub fn carried(&self, links: &[Link], seen: &Self) -> Result<Carried, E> {
        self.check("carried")?;
        seen.check("seen")?;
        if seen.mean.len() != links.len() {
            return Err(E::Shape { place: "seen".into(), found: seen.mean.len(), expected: links.len() });
        }
        let (n, k) = (self.mean.len(), links.len());
        if let Some(astray) = links.iter().find(|link| link.value >= n) {
            return Err(E::Shape { place: "links".into(), found: astray.value + 1, expected: n });
        }
        let p = self.matrix();
        let of_seen = DMatrix::from_fn(n, k, |i, j| p[(i, links[j].value)]);
        let before = DMatrix::from_fn(k, k, |i, j| {
            p[(links[i].value, links[j].value)] + if i == j { links[i].own_variance } else { 0.0 }
        });
        let inverse = inverse(&before);
        let step = DVector::from_fn(k, |i, _| seen.mean[i] - self.mean[links[i].value]);
        let less = &before - seen.matrix();
        let gain = &of_seen * &inverse;
        let mean = DVector::from_column_slice(&self.mean) + &gain * &step;
        let covariance = &p - &gain * &less * gain.transpose();
        let own = links.iter().enumerate().map(|(i, link)| {
            (link.own_variance > 0.0).then(|| {
                let gain = inverse.row(i) * link.own_variance;
                let moved = (&gain * &step)[0];
                let narrowed = (&gain * &less * gain.transpose())[0];
                Whitened {
                    mean: moved / link.own_variance.sqrt(),
                    variance: (1.0 - narrowed / link.own_variance).clamp(0.0, 1.0),
                }
            })
        });
        Ok(Carried { own: own.collect(), values: from_matrix(mean.as_slice().to_vec(), &covariance) })
    }

    /// Lets the marked values slide toward a prior of mean 0: `ρ·x` and `ρ²·P + (1 − ρ²)·P₀`, which never grows beyond
    /// the prior. `keep` is ρ, between 0 and 1; `prior_sd` one a value, none for a value that is left as it is.
    ///
    /// # Errors
    ///
    /// Shapes that do not fit together, a share that is not between 0 and 1.
    ///
    /// # Examples
    ///
    /// ```
    /// // By hand, half of it kept: 0.5 · 1 = 0.5, and 0.25 · 0.25 + (1 − 0.25) · 1 = 0.8125.
    /// let mut learned = estimation::Gaussian { mean: vec![1.0], covariance: vec![vec![0.25]] };
    /// learned.forget(0.5, &[Some(1.0)])?;
    /// assert_eq!((learned.mean[0], learned.covariance[0][0]), (0.5, 0.8125));
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn forget(&mut self, keep: f64, prior_sd: &[Option<f64>]) -> Result<(), E> {
        self.check("carried")?;
        if prior_sd.len() != self.mean.len() {
            let (found, expected) = (prior_sd.len(), self.mean.len());
            return Err(E::Shape { place: "priors".into(), found, expected });
        }
        if !(0.0..=1.0).contains(&keep) {
            return Err(E::Outside { place: "keep".into(), value: keep, low: 0.0, high: 1.0 });
        }
        let share: Vec<f64> = prior_sd.iter().map(|sd| if sd.is_some() { keep } else { 1.0 }).collect();
        for (i, row) in self.covariance.iter_mut().enumerate() {
            self.mean[i] *= share[i];
            row.iter_mut().zip(&share).for_each(|(x, other)| *x *= share[i] * other);
            if let Some(sd) = prior_sd[i] {
                row[i] += (1.0 - keep * keep) * sd * sd;
            }
        }
        Ok(())
    }
}

fn from_matrix(mean: Vec<f64>, p: &DMatrix<f64>) -> Gaussian {
    let n = mean.len();
    // Rounding must not leave two halves that differ, nor a variance below nought.
    let value = |i: usize, j: usize| {
        let both = 0.5 * (p[(i, j)] + p[(j, i)]);
        if i == j { both.max(0.0) } else { both }
    };
    Gaussian { mean, covariance: (0..n).map(|i| (0..n).map(|j| value(i, j)).collect()).collect() }
}

/// Inverse of a covariance by way of its correlation, so that grams and inches do not disturb each other; directions
/// that nothing is unknown of are left out.
fn inverse(p: &DMatrix<f64>) -> DMatrix<f64> {
    let n = p.nrows();
    let sd: Vec<f64> = (0..n).map(|i| p[(i, i)].max(0.0).sqrt()).collect();
    let scaled = |i: usize| if sd[i] > 0.0 { 1.0 / sd[i] } else { 0.0 };
    let correlation = DMatrix::from_fn(n, n, |i, j| 0.5 * (p[(i, j)] + p[(j, i)]) * scaled(i) * scaled(j));
    let eigen = correlation.symmetric_eigen();
    let inverted = eigen.eigenvalues.map(|value| if value > 1e-12 { 1.0 / value } else { 0.0 });
    let of = &eigen.eigenvectors * DMatrix::from_diagonal(&inverted) * eigen.eigenvectors.transpose();
    DMatrix::from_fn(n, n, |i, j| of[(i, j)] * scaled(i) * scaled(j))
}
