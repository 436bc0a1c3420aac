//! One decaying tone, in one axis or shared by two, by least squares.

use nalgebra::{SMatrix, SVector};

use crate::error::PhysicsError;

/// Iterations before the fit is given up.
const STEPS_MAX: usize = 60;

/// Change of phase and of log amplitude over the whole recording at which the fit has settled in any case.
pub(super) const SETTLED: f64 = 1e-10;

/// How far a fit is taken: it stops when a step would lower the residual by a smaller share than this.
#[derive(Debug, Clone, Copy)]
pub(super) struct Care(pub(super) f64);

impl Care {
    /// Good enough to compare starts.
    pub(super) const ROUGH: Self = Self(1e-6);
    /// A few ten-thousandths of a standard deviation from the bottom with 40,000 samples of noise.
    pub(super) const FULL: Self = Self(1e-12);
}

/// Frequency and decay of a tone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tone {
    /// Angular frequency, rad/s.
    pub(super) omega: f64,
    /// Decay of the amplitude, 1/s.
    pub(super) gamma: f64,
}

/// Cosine, sine and offset of a tone in one axis.
pub(super) type Parts = [f64; 3];

impl Tone {
    /// Calls `each(i, time, cosine, sine)` for the decaying pair at every sample.
    pub(super) fn walk(self, count: usize, step_s: f64, mut each: impl FnMut(usize, f64, f64, f64)) {
        let shrink = (-self.gamma * step_s).exp();
        let (sin, cos) = (self.omega * step_s).sin_cos();
        let (turn_cos, turn_sin) = (shrink * cos, shrink * sin);
        let (mut cosine, mut sine) = (1.0, 0.0);
        for i in 0..count {
            each(i, i as f64 * step_s, cosine, sine);
            (cosine, sine) = (cosine * turn_cos - sine * turn_sin, cosine * turn_sin + sine * turn_cos);
        }
    }

    /// The best cosine, sine and offset for this tone.
    pub(super) fn parts(self, values: &[f64], step_s: f64) -> Option<Parts> {
        let (mut cc, mut cs, mut ss, mut c, mut s) = (0.0, 0.0, 0.0, 0.0, 0.0);
        let (mut cv, mut sv, mut v) = (0.0, 0.0, 0.0);
        self.walk(values.len(), step_s, |i, _, cosine, sine| {
            let value = values[i];
            cc += cosine * cosine;
            cs += cosine * sine;
            ss += sine * sine;
            c += cosine;
            s += sine;
            cv += cosine * value;
            sv += sine * value;
            v += value;
        });
        let normal = SMatrix::<f64, 3, 3>::new(cc, cs, c, cs, ss, s, c, s, values.len() as f64);
        solved(&normal, &SVector::from([cv, sv, v])).map(Into::into)
    }

    /// The fitted values.
    pub(super) fn model(self, parts: Parts, count: usize, step_s: f64) -> Vec<f64> {
        let mut model = vec![0.0; count];
        self.walk(count, step_s, |i, _, cosine, sine| model[i] = parts[0] * cosine + parts[1] * sine + parts[2]);
        model
    }
}

/// Normal equations of one tone in one axis, unknowns ω, γ, cosine, sine, offset.
#[derive(Debug, Clone)]
pub(super) struct Normals {
    pub(super) matrix: SMatrix<f64, 5, 5>,
    pub(super) right: SVector<f64, 5>,
    /// Sum of the squared residuals.
    pub(super) square: f64,
    /// Products of the slopes with a second series, for an unknown that moves the model along it.
    pub(super) along: SVector<f64, 5>,
}

impl Normals {
    /// Sums over the samples; `other` is the series for `along`, empty for none.
    pub(super) fn sum(tone: Tone, parts: Parts, values: &[f64], other: &[f64], step_s: f64) -> Self {
        let mut sums = [[0.0; 5]; 5];
        let (mut right, mut along, mut square) = ([0.0; 5], [0.0; 5], 0.0);
        tone.walk(values.len(), step_s, |i, time, cosine, sine| {
            let swing = parts[0] * cosine + parts[1] * sine;
            let slopes = [time * (parts[1] * cosine - parts[0] * sine), -time * swing, cosine, sine, 1.0];
            let rest = values[i] - swing - parts[2];
            square += rest * rest;
            for j in 0..5 {
                right[j] += slopes[j] * rest;
                for k in 0..=j {
                    sums[j][k] += slopes[j] * slopes[k];
                }
            }
            if let Some(other) = other.get(i) {
                for j in 0..5 {
                    along[j] += slopes[j] * other;
                }
            }
        });
        let matrix = SMatrix::from_fn(|j, k| if k <= j { sums[j][k] } else { sums[k][j] });
        Self { matrix, right: right.into(), square, along: along.into() }
    }
}

/// One tone fitted to one axis or, with parts of its own in each, to two.
#[derive(Debug, Clone)]
pub(super) struct ToneFit {
    pub(super) tone: Tone,
    /// Parts in each axis.
    pub(super) parts: Vec<Parts>,
    /// Sum of the squared residuals.
    pub(super) square: f64,
    /// Inverse Fisher matrix of ω and γ at unit noise.
    pub(super) inverse: SMatrix<f64, 2, 2>,
}

impl ToneFit {
    /// Gauss–Newton in ω and γ with the parts solved exactly; damped when a step does not lower the residual.
    pub(super) fn from(start: Tone, axes: &[&[f64]], step_s: f64, care: Care) -> Result<Self, PhysicsError> {
        let duration_s = step_s * axes[0].len() as f64;
        let mut here = State::at(start, axes, step_s).ok_or_else(not_determined)?;
        let mut damping = 1e-4;
        let mut moved = f64::INFINITY;
        for _ in 0..STEPS_MAX {
            let mut curved = here.schur;
            curved[(0, 0)] *= 1.0 + damping;
            curved[(1, 1)] *= 1.0 + damping;
            let step = solved(&curved, &here.pull).ok_or_else(not_determined)?;
            let tone = Tone { omega: here.tone.omega + step[0], gamma: here.tone.gamma + step[1] };
            moved = step.abs().max() * duration_s;
            let gain = step.dot(&here.pull);
            // A tone that grows or fades thousandfold over the recording has run away.
            let tame = tone.omega > 0.0 && (tone.gamma * duration_s > -7.0) && tone.gamma * step_s < 1.0;
            let trial = if tame { State::at(tone, axes, step_s) } else { None };
            match trial {
                Some(trial) if trial.square <= here.square => {
                    let done = moved < SETTLED || gain < care.0 * trial.square;
                    here = trial;
                    damping *= 0.1;
                    if done {
                        moved = 0.0;
                        break;
                    }
                }
                // No way down any more: at the bottom, up to rounding.
                _ if moved < 1e3 * SETTLED || damping > 1e8 => break,
                _ => damping = (damping * 10.0).max(1e-6),
            }
        }
        if moved > 1e-4 {
            return Err(PhysicsError::NotConverged { what: "the tone", residual: moved, steps: STEPS_MAX });
        }
        let inverse = inverted(&here.schur).ok_or_else(not_determined)?;
        Ok(Self { tone: here.tone, parts: here.parts, square: here.square, inverse })
    }
}

/// Everything the iteration needs at one tone.
struct State {
    tone: Tone,
    parts: Vec<Parts>,
    square: f64,
    /// Normal matrix of ω and γ with the parts eliminated.
    schur: SMatrix<f64, 2, 2>,
    pull: SVector<f64, 2>,
}

impl State {
    fn at(tone: Tone, axes: &[&[f64]], step_s: f64) -> Option<Self> {
        let mut state = Self { tone, parts: Vec::new(), square: 0.0, schur: SMatrix::zeros(), pull: SVector::zeros() };
        for values in axes {
            let parts = tone.parts(values, step_s)?;
            let normals = Normals::sum(tone, parts, values, &[], step_s);
            let linear = normals.matrix.fixed_view::<3, 3>(2, 2).into_owned();
            let cross = normals.matrix.fixed_view::<2, 3>(0, 2).into_owned();
            state.schur += normals.matrix.fixed_view::<2, 2>(0, 0) - cross * inverted(&linear)? * cross.transpose();
            // The parts are at their best, so their own pull is zero.
            state.pull += normals.right.fixed_rows::<2>(0);
            state.square += normals.square;
            state.parts.push(parts);
        }
        state.square.is_finite().then_some(state)
    }
}

pub(super) fn not_determined() -> PhysicsError {
    PhysicsError::Contradiction {
        what: "the samples do not determine a tone".to_owned(),
        advice: "record the swing for at least four periods, without a stop",
    }
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
