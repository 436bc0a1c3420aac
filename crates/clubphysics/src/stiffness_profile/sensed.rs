//! One reading of a clamped shaft as a function of its line: its logarithm, and how that moves with each piece of the shaft.

use crate::advice::{Advice, Clash};
use crate::check::above;
use crate::error::PhysicsError;
use crate::vibration::{ClampedMode, RigidTip, StiffnessLine};

/// Finite elements of the shaft: as many as bring a frequency within 1e-5 of itself.
const ELEMENTS: usize = 24;
/// Pieces over which a deflection is added up, each with two points.
const PIECES: usize = 96;
/// Two points of Gauss and Legendre in a piece, as shares of it.
const GAUSS: [f64; 2] = [0.211_324_865_405_187_1, 0.788_675_134_594_812_9];
/// Standard gravity, m/s² (SI Brochure, 9th edition: exact).
const GRAVITY_M_S2: f64 = 9.806_65;
/// Less free shaft than this is no beam, mm: its length is no longer large against its diameter (a judgement, no source).
const LEAST_FREE_MM: f64 = 150.0;

/// What was read of a clamped shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Seen {
    /// Its frequency, with a weight at its tip.
    Frequency {
        /// Cycles a minute.
        cpm: f64,
        /// The weight; its offset counts from the tip of the shaft.
        tip: RigidTip,
    },
    /// How far it goes down at the place where a weight is hung on, beside the weight of the shaft itself.
    Deflection {
        /// Millimetres.
        mm: f64,
        /// The weight, g.
        load_g: f64,
        /// Where it hangs and the deflection is read, mm from the butt.
        from_butt_mm: f64,
    },
}

impl Seen {
    pub(super) fn field(self) -> &'static str {
        match self {
            Self::Frequency { .. } => "cpm",
            Self::Deflection { .. } => "deflection_mm",
        }
    }

    pub(super) fn sign(self) -> &'static str {
        match self {
            Self::Frequency { .. } => "cpm",
            Self::Deflection { .. } => "mm",
        }
    }

    pub(super) fn value(self) -> f64 {
        match self {
            Self::Frequency { cpm, .. } => cpm,
            Self::Deflection { mm, .. } => mm,
        }
    }
}

/// See [`sensed`].
#[derive(Debug, Clone)]
pub struct Sensed {
    /// Natural logarithm of what is to be read, in its unit.
    pub ln_value: f64,
    /// Change of it with a millimetre more of free shaft at the clamp.
    pub by_free_mm: f64,
    /// Places from the butt, m, and the change of it with the logarithm of the stiffness there. They add up to a half for a
    /// frequency and to minus one for a deflection: stiffer all along.
    pub bending: Vec<(f64, f64)>,
}

/// What a shaft of this line reads, held to this place from its butt, mm.
///
/// # Errors
/// The clamp leaves hardly any free shaft; a weight or a place is not a number; as [`ClampedMode::new`].
pub fn sensed(line: &StiffnessLine, held_mm: f64, seen: Seen) -> Result<Sensed, PhysicsError> {
    let tip_m = line.length_m();
    let clamp_m = held_mm / 1000.0;
    if (tip_m - clamp_m) * 1000.0 < LEAST_FREE_MM {
        let what = Clash::NoFreeShaft { free_mm: (tip_m - clamp_m) * 1000.0 };
        return Err(PhysicsError::Contradiction { what, advice: Box::new(Advice::CheckClampAndTrims) });
    }
    match seen {
        Seen::Frequency { tip, .. } => {
            let (mode, bending) = ClampedMode::with_bending(line, clamp_m, tip_m, tip, ELEMENTS)?;
            Ok(Sensed { ln_value: mode.ln_cpm, by_free_mm: mode.by_free_mm, bending })
        }
        Seen::Deflection { load_g, from_butt_mm, .. } => {
            above("load_g", load_g, 0.0, "g", Advice::EnterMeasuredFigure)?;
            above("from_butt_mm", from_butt_mm, held_mm, "mm", Advice::CheckClampAndTrims)?;
            Ok(deflection(line, clamp_m, from_butt_mm / 1000.0, load_g))
        }
    }
}

/// `δ = F·∫(a − x)²/EI dx` from the clamp to the load, or to the tip where the load hangs beyond it (the area-moment theorem;
/// Gere and Goodno, Mechanics of Materials, from memory); small slopes.
fn deflection(line: &StiffnessLine, clamp_m: f64, load_m: f64, load_g: f64) -> Sensed {
    let end_m = load_m.min(line.length_m());
    let step = (end_m - clamp_m) / PIECES as f64;
    let mut bending = Vec::with_capacity(PIECES * GAUSS.len());
    for i in 0..PIECES {
        for point in GAUSS {
            let x = clamp_m + (i as f64 + point) * step;
            bending.push((x, 0.5 * step * (load_m - x).powi(2) / line.at(x).0));
        }
    }
    let flexibility: f64 = bending.iter().map(|(_, part)| part).sum();
    bending.iter_mut().for_each(|(_, part)| *part /= -flexibility);
    let force_n = load_g / 1000.0 * GRAVITY_M_S2;
    let by_free_m = (load_m - clamp_m).powi(2) / line.at(clamp_m).0 / flexibility;
    Sensed { ln_value: (force_n * flexibility * 1000.0).ln(), by_free_mm: by_free_m / 1000.0, bending }
}
