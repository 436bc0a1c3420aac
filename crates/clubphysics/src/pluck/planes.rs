//! Two tones along perpendicular directions, fitted to two axes.

use crate::advice::Settling;
use nalgebra::{SMatrix, SVector};

use super::damped::{Care, Descent, Stand, inverted, not_determined};
use super::tone::{Normals, Parts, Tone, ToneFit};
use crate::error::PhysicsError;

/// Unknowns: five for each tone, and the direction.
const UNKNOWNS: usize = 11;
/// Place of the direction among them.
const DIRECTION: usize = 10;

/// Directions tried at the start, over the quarter turn after which the two planes change names.
const STARTS: usize = 12;

/// Two tones, the first along `direction_rad` from the first axis, the second a quarter turn on.
#[derive(Debug, Clone)]
pub(super) struct PlanesFit {
    pub(super) tones: [Tone; 2],
    pub(super) direction_rad: f64,
    pub(super) parts: [Parts; 2],
    pub(super) square: f64,
    /// Inverse Fisher matrix at unit noise: ω, γ, cosine, sine, offset of both tones, direction.
    pub(super) inverse: SMatrix<f64, UNKNOWNS, UNKNOWNS>,
}

/// Samples along a direction and across it.
pub(super) fn rotated(axes: [&[f64]; 2], direction_rad: f64) -> [Vec<f64>; 2] {
    let (sin, cos) = direction_rad.sin_cos();
    let along = axes[0].iter().zip(axes[1]).map(|(x, y)| cos * x + sin * y).collect();
    let across = axes[0].iter().zip(axes[1]).map(|(x, y)| cos * y - sin * x).collect();
    [along, across]
}

/// Finds a start by fitting one tone along and one across each of a fan of directions of the thinned-out samples.
///
/// `peak_near(cos, sin)` gives the tone at the peak of the spectrum of `cos·axis_1 + sin·axis_2`.
pub(super) fn search(
    axes: [&[f64]; 2],
    step_s: f64,
    peak_near: impl Fn(f64, f64) -> Tone,
) -> Result<PlanesFit, PhysicsError> {
    let mut starts: Vec<(f64, f64, [Tone; 2])> = Vec::new();
    for i in 0..STARTS {
        let direction_rad = std::f64::consts::FRAC_PI_2 * i as f64 / STARTS as f64;
        let [along, across] = rotated(axes, direction_rad);
        let (sin, cos) = direction_rad.sin_cos();
        let fits = [(cos, sin, &along), (-sin, cos, &across)]
            .map(|(x, y, values)| ToneFit::from(peak_near(x, y), &[values.as_slice()], step_s, Care::ROUGH));
        if let [Ok(first), Ok(second)] = fits {
            starts.push((first.square + second.square, direction_rad, [first.tone, second.tone]));
        }
    }
    starts.sort_by(|a, b| a.0.total_cmp(&b.0));
    // The two best of the fan: the best alone may sit on a ridge between two tones that are nearly alike.
    let mut best: Option<PlanesFit> = None;
    for (_, direction_rad, tones) in starts.into_iter().take(2) {
        if let Ok(fit) = PlanesFit::from(tones, direction_rad, axes, step_s, Care::ROUGH)
            && best.as_ref().is_none_or(|known| fit.square < known.square)
        {
            best = Some(fit);
        }
    }
    best.ok_or_else(not_determined)
}

impl PlanesFit {
    /// Least squares in both tones and the direction with the parts solved exactly.
    pub(super) fn from(
        tones: [Tone; 2],
        direction_rad: f64,
        axes: [&[f64]; 2],
        step_s: f64,
        care: Care,
    ) -> Result<Self, PhysicsError> {
        let duration_s = step_s * axes[0].len() as f64;
        let found = Descent {
            what: Settling::TwoPlanes,
            damped: [0, 1, 5, 6, DIRECTION].as_slice(),
            length: |step: &SVector<f64, UNKNOWNS>| {
                let tones = [0, 1, 5, 6].iter().map(|unknown| step[*unknown].abs() * duration_s);
                step[DIRECTION].abs().max(tones.fold(0.0, f64::max))
            },
            moved: |from: &Fitted, step: &SVector<f64, UNKNOWNS>| {
                let next = |k: usize| Tone {
                    omega: from.tones[k].omega + step[5 * k],
                    gamma: from.tones[k].gamma + step[5 * k + 1],
                };
                let tones = [next(0), next(1)];
                // A turn by a radian has left the hill that it began on.
                let tame = step[DIRECTION].abs() < 1.0 && !tones.iter().any(|tone| tone.ran_away(duration_s, step_s));
                if tame { fitted(tones, from.direction_rad + step[DIRECTION], axes, step_s) } else { None }
            },
        }
        .bottom(fitted(tones, direction_rad, axes, step_s).ok_or_else(not_determined)?, care)?;
        let inverse = inverted(&found.normal).ok_or_else(not_determined)?;
        let Fitted { tones, direction_rad, parts } = found.at;
        Ok(Self { tones, direction_rad, parts, square: found.square, inverse })
    }

    /// What the fit leaves over, along and across its direction.
    pub(super) fn residuals(&self, axes: [&[f64]; 2], step_s: f64) -> [Vec<f64>; 2] {
        let mut rests = rotated(axes, self.direction_rad);
        for (k, rest) in rests.iter_mut().enumerate() {
            let model = self.tones[k].model(self.parts[k], rest.len(), step_s);
            rest.iter_mut().zip(model).for_each(|(value, fitted)| *value -= fitted);
        }
        rests
    }
}

/// Two tones, their direction, and their best parts.
struct Fitted {
    tones: [Tone; 2],
    direction_rad: f64,
    parts: [Parts; 2],
}

/// The normal equations of all eleven unknowns.
fn fitted(tones: [Tone; 2], direction_rad: f64, axes: [&[f64]; 2], step_s: f64) -> Option<Stand<Fitted, UNKNOWNS>> {
    let turned = rotated(axes, direction_rad);
    let count = turned[0].len();
    let parts = [tones[0].parts(&turned[0], step_s)?, tones[1].parts(&turned[1], step_s)?];
    let models = [tones[0].model(parts[0], count, step_s), tones[1].model(parts[1], count, step_s)];
    let mut normal = SMatrix::<f64, UNKNOWNS, UNKNOWNS>::zeros();
    let mut pull = SVector::<f64, UNKNOWNS>::zeros();
    let mut square = 0.0;
    for k in 0..2 {
        // Turning the directions moves the model of the first tone along minus the second, and the second along
        // plus the first.
        let (other, sign) = if k == 0 { (&models[1], -1.0) } else { (&models[0], 1.0) };
        let normals = Normals::sum(tones[k], parts[k], &turned[k], other, step_s);
        normal.fixed_view_mut::<5, 5>(5 * k, 5 * k).copy_from(&normals.matrix);
        pull.fixed_rows_mut::<5>(5 * k).copy_from(&normals.right);
        square += normals.square;
        for j in 0..5 {
            normal[(5 * k + j, DIRECTION)] = sign * normals.along[j];
            normal[(DIRECTION, 5 * k + j)] = sign * normals.along[j];
        }
        for ((value, model), moved) in turned[k].iter().zip(&models[k]).zip(other) {
            pull[DIRECTION] += sign * moved * (value - model);
            normal[(DIRECTION, DIRECTION)] += moved * moved;
        }
    }
    square.is_finite().then_some(Stand { at: Fitted { tones, direction_rad, parts }, square, normal, pull })
}
