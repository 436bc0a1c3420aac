//! Least squares by damped steps, and the small linear systems that it solves.
//!
//! Gauss–Newton, damped on the diagonal where a full step does not lower the residual (Levenberg, *Quarterly of Applied
//! Mathematics* 2, 1944; Marquardt, *SIAM Journal* 11, 1963; both from memory).

use crate::advice::{Advice, Clash, Settling};
use nalgebra::{SMatrix, SVector};

use crate::error::PhysicsError;

/// Iterations before the fit is given up.
const STEPS_MAX: usize = 60;

/// Change of phase and of log amplitude over the whole recording at which the fit has settled in any case.
const SETTLED: f64 = 1e-10;

/// How far a fit is taken: it stops when a step would lower the residual by a smaller share than this.
#[derive(Debug, Clone, Copy)]
pub(super) struct Care(f64);

impl Care {
    /// Good enough to compare starts.
    pub(super) const ROUGH: Self = Self(1e-6);
    /// A few ten-thousandths of a standard deviation from the bottom with 40,000 samples of noise.
    pub(super) const FULL: Self = Self(1e-12);
}

/// A place on the way down: what was fitted there, and the normal equations.
pub(super) struct Stand<P, const N: usize> {
    pub(super) at: P,
    /// Sum of the squared residuals.
    pub(super) square: f64,
    pub(super) normal: SMatrix<f64, N, N>,
    /// Half the downward gradient of `square`.
    pub(super) pull: SVector<f64, N>,
}

/// A way down.
pub(super) struct Descent<'a, Length, Moved> {
    /// What is fitted, for an error.
    pub(super) what: Settling,
    /// The unknowns that are damped. Those that enter the model linearly need no damping: their step is exact.
    pub(super) damped: &'a [usize],
    /// How long a step is, radians over the whole recording: below [`SETTLED`] it is done.
    pub(super) length: Length,
    /// The place a step away; none where that has run away or is not determined.
    pub(super) moved: Moved,
}

impl<Length, Moved> Descent<'_, Length, Moved> {
    /// The bottom.
    ///
    /// # Errors
    ///
    /// [`PhysicsError::Contradiction`] where the samples do not determine what is fitted,
    /// [`PhysicsError::NotConverged`] where the steps stay long.
    pub(super) fn bottom<P, const N: usize>(&self, start: Stand<P, N>, care: Care) -> Result<Stand<P, N>, PhysicsError>
    where
        Length: Fn(&SVector<f64, N>) -> f64,
        Moved: Fn(&P, &SVector<f64, N>) -> Option<Stand<P, N>>,
    {
        let mut here = start;
        let mut damping = 1e-4;
        let mut length = f64::INFINITY;
        for _ in 0..STEPS_MAX {
            let mut curved = here.normal;
            for &unknown in self.damped {
                curved[(unknown, unknown)] *= 1.0 + damping;
            }
            let step = solved(&curved, &here.pull).ok_or_else(not_determined)?;
            length = (self.length)(&step);
            let gain = step.dot(&here.pull);
            match (self.moved)(&here.at, &step) {
                Some(next) if next.square <= here.square => {
                    let done = length < SETTLED || gain < care.0 * next.square;
                    here = next;
                    damping *= 0.1;
                    if done {
                        return Ok(here);
                    }
                }
                // No way down any more: at the bottom, up to rounding.
                _ if length < 1e3 * SETTLED || damping > 1e8 => break,
                _ => damping = (damping * 10.0).max(1e-6),
            }
        }
        if length > 1e-4 {
            return Err(PhysicsError::NotConverged { what: self.what, residual: length, steps: STEPS_MAX });
        }
        Ok(here)
    }
}

pub(super) fn not_determined() -> PhysicsError {
    PhysicsError::Contradiction { what: Clash::NoTone, advice: Box::new(Advice::RecordFourPeriods) }
}

/// Solves a symmetric positive system in the scale of its own diagonal.
pub(super) fn solved<const N: usize>(matrix: &SMatrix<f64, N, N>, right: &SVector<f64, N>) -> Option<SVector<f64, N>> {
    let scale = scales(matrix)?;
    let scaled = SMatrix::<f64, N, N>::from_fn(|i, j| matrix[(i, j)] * scale[i] * scale[j]);
    Some(scaled.cholesky()?.solve(&right.component_mul(&scale)).component_mul(&scale))
}

/// Inverse of a symmetric positive matrix, formed in the scale of its own diagonal.
pub(super) fn inverted<const N: usize>(matrix: &SMatrix<f64, N, N>) -> Option<SMatrix<f64, N, N>> {
    let scale = scales(matrix)?;
    let scaled = SMatrix::<f64, N, N>::from_fn(|i, j| matrix[(i, j)] * scale[i] * scale[j]);
    let inverse = scaled.cholesky()?.inverse();
    Some(SMatrix::from_fn(|i, j| inverse[(i, j)] * scale[i] * scale[j]))
}

fn scales<const N: usize>(matrix: &SMatrix<f64, N, N>) -> Option<SVector<f64, N>> {
    let scale = SVector::<f64, N>::from_fn(|i, _| matrix[(i, i)].sqrt().recip());
    scale.iter().all(|value| value.is_finite()).then_some(scale)
}
