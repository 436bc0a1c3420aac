//! The first mode of a clamped club with its exact derivatives: what a forecast and a trim need at once.
//!
//! Derivatives are those of first-order perturbation: of a mode `φ` with unit modal mass, `ω² = ∫EI·φ''²`, so that a change
//! of stiffness or mass changes `ω²` by `∫δEI·φ''² − ω²·∫δm·φ²`, and letting go of a length `δ` at the clamp changes it by
//! `−EI·φ''²·δ` there (Rayleigh, Theory of Sound, and Hadamard's formula, from memory; held against differences in
//! `tests/vibration_clamped.rs`).

use super::beam::{Beam, RigidTip};
use super::line::StiffnessLine;
use crate::error::PhysicsError;

/// Gauss–Legendre rule of three points on (−1, 1).
const GAUSS: [(f64, f64); 3] =
    [(0.0, 8.0 / 9.0), (-0.774_596_669_241_483_4, 5.0 / 9.0), (0.774_596_669_241_483_4, 5.0 / 9.0)];

/// Step of the slope of the table, m: well inside what a table is continued by past its ends.
const STEP_M: f64 = 5e-4;

/// How fast a clamped club swings, and how that changes with each of its figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClampedMode {
    /// Natural logarithm of the first frequency in cycles a minute.
    pub ln_cpm: f64,
    /// Change of `ln_cpm` with the tilt `t` of a stiffness line that becomes `EI·(1 + t·(2x/L − 1))`: stiffer toward the tip.
    pub by_tilt: f64,
    /// Change of `ln_cpm` with a millimetre more of free shaft at the clamp; negative.
    pub by_free_mm: f64,
    /// Change of `ln_cpm` with a millimetre cut off the tip and left on at the butt: the club keeps its length.
    pub by_tip_trim_mm: f64,
    /// Deflection of the tip in the mode of unit modal mass, 1/√kg.
    deflection: f64,
    /// Slope there, 1/(m·√kg).
    slope: f64,
    tip: RigidTip,
}

impl ClampedMode {
    /// Of a shaft that is held up to `clamp_m` and ends at `tip_m`, both from the raw butt.
    ///
    /// # Errors
    /// As [`Beam::new`] and [`Beam::first_mode`].
    ///
    /// # Examples
    ///
    /// ```
    /// use clubphysics::vibration::{BetweenRows, ClampedMode, LineRow, MeasuredFrom, RigidTip, StiffnessLine};
    ///
    /// // An even, massless rod of 40 N·m² and 0.9 m with 0.25 kg at its tip: ω² = 3·EI/(m·l³), so 245.0 cycles a minute (by
    /// // hand), and half a per cent more for one per cent of stiffness.
    /// let row = |position_mm| LineRow { position_mm, stiffness_n_m2: 40.0, mass_g_m: 0.0 };
    /// let line = StiffnessLine::new(&[row(0.0), row(1000.0)], MeasuredFrom::Butt, BetweenRows::Straight, 1000.0)?;
    /// let tip = RigidTip { mass_kg: 0.25, ..RigidTip::default() };
    /// let mode = ClampedMode::new(&line, 0.1, 1.0, tip, 16)?;
    /// assert!((mode.cpm() - 245.0).abs() < 0.05, "{}", mode.cpm());
    /// // A gram at the tip takes half of a 250th off.
    /// assert!((mode.by_mass_g(0.0) + 0.5 / 250.0).abs() < 1e-9);
    /// # Ok::<(), clubphysics::PhysicsError>(())
    /// ```
    pub fn new(
        line: &StiffnessLine,
        clamp_m: f64,
        tip_m: f64,
        tip: RigidTip,
        elements: usize,
    ) -> Result<Self, PhysicsError> {
        Self::with_bending(line, clamp_m, tip_m, tip, elements).map(|(mode, _)| mode)
    }

    /// The same, with how much each stretch of the shaft has to do with it: places from the raw butt, m, and the change of
    /// `ln_cpm` with the logarithm of the stiffness there. Their sum is one half: a shaft that is stiffer all along.
    ///
    /// # Errors
    /// As [`ClampedMode::new`].
    pub fn with_bending(
        line: &StiffnessLine,
        clamp_m: f64,
        tip_m: f64,
        tip: RigidTip,
        elements: usize,
    ) -> Result<(Self, Vec<(f64, f64)>), PhysicsError> {
        let beam = Beam::new(line, clamp_m, tip_m, tip, elements)?;
        let mode = beam.first_mode()?;
        let omega2 = mode.angular_rad_s * mode.angular_rad_s;
        let (mut tilted, mut shifted) = (0.0, 0.0);
        let mut bending = Vec::with_capacity(GAUSS.len() * beam.nodes_m().len());
        let length_m = line.length_m();
        let nodes = beam.nodes_m();
        let whole: Vec<f64> = [0.0, 0.0].into_iter().chain(mode.shape.iter().copied()).collect();
        for (e, pair) in nodes.windows(2).enumerate() {
            let q = [whole[2 * e], whole[2 * e + 1], whole[2 * e + 2], whole[2 * e + 3]];
            let h = pair[1] - pair[0];
            for (point, weight) in GAUSS {
                let s = 0.5 * (1.0 + point);
                let x = pair[0] + s * h;
                let (bend, off) = (curvature(q, h, s), deflection(q, h, s));
                let (here, before, after) = (line.at(x), line.at(x - STEP_M), line.at(x + STEP_M));
                let part = 0.5 * weight * h;
                let energy = part * here.0 * bend * bend;
                tilted += energy * (2.0 * x / length_m - 1.0);
                bending.push((x, energy));
                let (stiffer, heavier) = ((before.0 - after.0) / (2.0 * STEP_M), (before.1 - after.1) / (2.0 * STEP_M));
                shifted += part * (stiffer * bend * bend - omega2 * heavier * off * off);
            }
        }
        let first = [whole[0], whole[1], whole[2], whole[3]];
        let at_clamp = curvature(first, nodes[1] - nodes[0], 0.0);
        let by_free_m = -line.at(clamp_m).0 * at_clamp * at_clamp / (2.0 * omega2);
        let last = mode.shape.len();
        // The curvature of an element is good to about a 500th; that a stiffness twice as high all along makes half of its
        // logarithm is exact.
        let all: f64 = bending.iter().map(|(_, energy)| energy).sum();
        bending.iter_mut().for_each(|(_, energy)| *energy *= 0.5 / all);
        let found = Self {
            ln_cpm: mode.frequency_cpm().ln(),
            by_tilt: tilted / (2.0 * omega2),
            by_free_mm: by_free_m / 1000.0,
            by_tip_trim_mm: shifted / (2.0 * omega2) / 1000.0,
            deflection: mode.shape[last - 2],
            slope: mode.shape[last - 1],
            tip,
        };
        Ok((found, bending))
    }

    /// First frequency, cycles a minute.
    #[must_use]
    pub fn cpm(&self) -> f64 {
        self.ln_cpm.exp()
    }

    /// Change of `ln_cpm` with a gram fixed so far beyond the tip, m.
    #[must_use]
    pub fn by_mass_g(&self, beyond_tip_m: f64) -> f64 {
        let there = self.deflection + beyond_tip_m * self.slope;
        -0.5 * there * there / 1000.0
    }

    /// Change of `ln_cpm` where a part of the tip's body moves a millimetre further beyond the tip: its mass and place.
    #[must_use]
    pub fn by_place_mm(&self, mass_kg: f64, beyond_tip_m: f64) -> f64 {
        -mass_kg * (self.deflection + beyond_tip_m * self.slope) * self.slope / 1000.0
    }

    /// Change of `ln_cpm` with a g·cm² more of the tip body's own inertia.
    #[must_use]
    pub fn by_inertia_g_cm2(&self) -> f64 {
        -0.5 * self.slope * self.slope / 1e7
    }

    /// The body at the tip.
    #[must_use]
    pub fn tip(&self) -> RigidTip {
        self.tip
    }
}

/// Second derivative within an element of length `h` at its share `s`, by deflection and slope of its two ends.
fn curvature(q: [f64; 4], h: f64, s: f64) -> f64 {
    let (d, r) = ((12.0 * s - 6.0) / (h * h), h.recip());
    d * (q[0] - q[2]) + r * ((6.0 * s - 4.0) * q[1] + (6.0 * s - 2.0) * q[3])
}

/// Deflection likewise.
fn deflection(q: [f64; 4], h: f64, s: f64) -> f64 {
    let (s2, s3) = (s * s, s * s * s);
    q[0] * (1.0 - 3.0 * s2 + 2.0 * s3)
        + q[1] * h * (s - 2.0 * s2 + s3)
        + q[2] * (3.0 * s2 - 2.0 * s3)
        + q[3] * h * (s3 - s2)
}
