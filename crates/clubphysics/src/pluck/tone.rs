//! One decaying tone, in one axis or shared by two, by least squares.

use crate::advice::Settling;
use nalgebra::{SMatrix, SVector};

use super::damped::{Care, Descent, Stand, inverted, not_determined, solved};
use crate::error::PhysicsError;

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

    /// Whether it grows or fades a thousandfold over the recording: no club does, the fit has run away.
    pub(super) fn ran_away(self, duration_s: f64, step_s: f64) -> bool {
        !(self.omega > 0.0 && self.gamma * duration_s > -7.0 && self.gamma * step_s < 1.0)
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
    /// Least squares in ω and γ with the parts solved exactly.
    pub(super) fn from(start: Tone, axes: &[&[f64]], step_s: f64, care: Care) -> Result<Self, PhysicsError> {
        let duration_s = step_s * axes[0].len() as f64;
        let found = Descent {
            what: Settling::Tone,
            damped: [0, 1].as_slice(),
            // A phase and a log amplitude over the whole recording.
            length: |step: &SVector<f64, 2>| step.abs().max() * duration_s,
            moved: |from: &Fitted, step: &SVector<f64, 2>| {
                let tone = Tone { omega: from.tone.omega + step[0], gamma: from.tone.gamma + step[1] };
                if tone.ran_away(duration_s, step_s) { None } else { fitted(tone, axes, step_s) }
            },
        }
        .bottom(fitted(start, axes, step_s).ok_or_else(not_determined)?, care)?;
        let inverse = inverted(&found.normal).ok_or_else(not_determined)?;
        Ok(Self { tone: found.at.tone, parts: found.at.parts, square: found.square, inverse })
    }
}

/// A tone and its best parts in each axis.
struct Fitted {
    tone: Tone,
    parts: Vec<Parts>,
}

/// The normal equations of ω and γ, with the parts eliminated.
fn fitted(tone: Tone, axes: &[&[f64]], step_s: f64) -> Option<Stand<Fitted, 2>> {
    let mut normal = SMatrix::<f64, 2, 2>::zeros();
    let mut pull = SVector::<f64, 2>::zeros();
    let (mut square, mut fitted) = (0.0, Fitted { tone, parts: Vec::new() });
    for values in axes {
        let parts = tone.parts(values, step_s)?;
        let normals = Normals::sum(tone, parts, values, &[], step_s);
        let linear = normals.matrix.fixed_view::<3, 3>(2, 2).into_owned();
        let cross = normals.matrix.fixed_view::<2, 3>(0, 2).into_owned();
        normal += normals.matrix.fixed_view::<2, 2>(0, 0) - cross * inverted(&linear)? * cross.transpose();
        // The parts are at their best, so their own pull is zero.
        pull += normals.right.fixed_rows::<2>(0);
        square += normals.square;
        fitted.parts.push(parts);
    }
    square.is_finite().then_some(Stand { at: fitted, square, normal, pull })
}
