//! From harmonics to the shaft: stiffness ellipse, bow, resting places.

use std::f64::consts::{PI, TAU};

use super::harmonics::TERMS;

/// What was held fixed while the shaft was turned, in the unit of the input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Held {
    /// Deflection, mm; forces in N were read.
    Deflection(f64),
    /// Force, N; deflections in mm were read.
    Force(f64),
    /// Nothing: squares of frequencies stand for stiffness.
    Nothing,
}

/// A shaft whose stiffness is an ellipse and whose tip stands off the axis.
///
/// Stiffness along θ is `k(θ) = k̄·(1 + ε·cos 2(θ-θ_s))` with the stiff direction θ_s. Force at a fixed deflection D
/// along the unit vector D̂: `F = k(θ)·D - D̂ᵀ·K·b`. Deflection under a fixed force W: `d = D̂ᵀ·b + W·D̂ᵀ·K⁻¹·D̂`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shaft {
    /// k̄: N/mm, or square of cycles per minute when frequencies were read.
    pub(super) mean_stiffness: f64,
    /// ε: how far the stiffest direction is above the mean, as a share of it; the softest is as far below.
    pub(super) asymmetry: f64,
    /// θ_s, radians.
    pub(super) stiff_rad: f64,
    /// Bow, mm, in the axes of the angles.
    pub(super) bow_mm: (f64, f64),
}

impl Shaft {
    /// Inverts the two formulas above, term by term.
    pub(super) fn from_terms(terms: &[f64; TERMS], held: Held) -> Self {
        let [mean, c1, s1, c2, s2] = *terms;
        let twice = c2.hypot(s2);
        let asymmetry = twice / mean;
        let phase = 0.5 * s2.atan2(c2);
        match held {
            Held::Nothing => Self { mean_stiffness: mean, asymmetry, stiff_rad: phase, bow_mm: (0.0, 0.0) },
            Held::Force(force) => Self {
                // K⁻¹ has the mean 1/(k̄·(1-ε²)) and is largest along the soft direction.
                mean_stiffness: force / (mean * (1.0 - asymmetry * asymmetry)),
                asymmetry,
                stiff_rad: phase + 0.5 * PI,
                bow_mm: (c1, s1),
            },
            Held::Deflection(deflection) => {
                let mean_stiffness = mean / deflection;
                let (sin, cos) = phase.sin_cos();
                // b = -K⁻¹·(c1, s1), in the principal axes.
                let stiff = -(c1 * cos + s1 * sin) / (mean_stiffness * (1.0 + asymmetry));
                let soft = -(s1 * cos - c1 * sin) / (mean_stiffness * (1.0 - asymmetry));
                let bow_mm = (stiff * cos - soft * sin, stiff * sin + soft * cos);
                Self { mean_stiffness, asymmetry, stiff_rad: phase, bow_mm }
            }
        }
    }

    pub(super) fn bow_size_mm(&self) -> f64 {
        self.bow_mm.0.hypot(self.bow_mm.1)
    }

    /// Direction of the bow, degrees in [0, 360).
    pub(super) fn bow_direction_deg(&self) -> f64 {
        wrapped(self.bow_mm.1.atan2(self.bow_mm.0), TAU).to_degrees()
    }

    /// Direction of least stiffness, degrees in [0, 180).
    pub(super) fn soft_direction_deg(&self) -> f64 {
        wrapped(self.stiff_rad + 0.5 * PI, PI).to_degrees()
    }

    /// Difference of the principal frequencies when `mean_stiffness` is the square of a frequency.
    pub(super) fn frequency_difference_cpm(&self) -> f64 {
        let mean = self.mean_stiffness.sqrt();
        mean * ((1.0 + self.asymmetry).sqrt() - (1.0 - self.asymmetry).sqrt())
    }

    /// Energy of the shaft bent by the deflection along an angle, N·mm: `½·(D·D̂ - b)ᵀ·K·(D·D̂ - b)`.
    fn energy_n_mm(&self, deflection_mm: f64, angle_rad: f64) -> f64 {
        let (sin, cos) = self.stiff_rad.sin_cos();
        let (along_x, along_y) =
            (deflection_mm * angle_rad.cos() - self.bow_mm.0, deflection_mm * angle_rad.sin() - self.bow_mm.1);
        let (stiff, soft) = (along_x * cos + along_y * sin, along_y * cos - along_x * sin);
        0.5 * self.mean_stiffness * ((1.0 + self.asymmetry) * stiff * stiff + (1.0 - self.asymmetry) * soft * soft)
    }

    /// Directions that are pushed where the loaded shaft comes to rest, degrees in [0, 360).
    ///
    /// Accuracy: a twentieth of a degree; for drawing. The number is that of [`Shaft::resting_places`] but for a shaft
    /// on the border between one and two.
    pub(super) fn resting_directions_deg(&self, deflection_mm: f64) -> Vec<f64> {
        const STEPS: i32 = 7200;
        let angle = |i: i32| TAU * f64::from(i) / f64::from(STEPS);
        let energy: Vec<f64> = (0..STEPS).map(|i| self.energy_n_mm(deflection_mm, angle(i))).collect();
        let at = |i: i32| energy[i.rem_euclid(STEPS) as usize];
        let rest = |i: &i32| at(*i) < at(i - 1) && at(*i) <= at(i + 1);
        (0..STEPS).filter(rest).map(|i| angle(i).to_degrees()).collect()
    }

    /// Places where the loaded shaft comes to rest in rollers that hold the deflection.
    ///
    /// Derived: the energy `½·(D·D̂ - b)ᵀ·K·(D·D̂ - b)` has two minima while the bow lies inside the astroid
    /// `|(1+ε)·b_stiff|^⅔ + |(1-ε)·b_soft|^⅔ < (2·ε·D)^⅔`, else one.
    pub(super) fn resting_places(&self, deflection_mm: f64) -> u8 {
        let (sin, cos) = self.stiff_rad.sin_cos();
        let stiff = (1.0 + self.asymmetry) * (self.bow_mm.0 * cos + self.bow_mm.1 * sin);
        let soft = (1.0 - self.asymmetry) * (self.bow_mm.1 * cos - self.bow_mm.0 * sin);
        let two_thirds = |value: f64| value.abs().cbrt().powi(2);
        let two = two_thirds(stiff) + two_thirds(soft) < two_thirds(2.0 * self.asymmetry * deflection_mm);
        if two { 2 } else { 1 }
    }
}

/// What a reading at the angle would be without noise, by the terms of the fit.
pub(super) fn reading(terms: &[f64; TERMS], angle_rad: f64) -> f64 {
    let [mean, c1, s1, c2, s2] = terms;
    let ((s, c), (ss, cc)) = (angle_rad.sin_cos(), (2.0 * angle_rad).sin_cos());
    mean + c1 * c + s1 * s + c2 * cc + s2 * ss
}

/// The angle in `[0, turn)`.
pub(super) fn wrapped(angle: f64, turn: f64) -> f64 {
    let rest = angle.rem_euclid(turn);
    // rem_euclid of a tiny negative angle rounds up to the whole turn.
    if rest >= turn { 0.0 } else { rest }
}
