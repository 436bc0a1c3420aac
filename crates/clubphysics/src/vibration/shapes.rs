//! How the club of a `frequency` document bends: lines for a picture.

use super::beam::Beam;
use super::document::FrequencyInput;
use super::figures::Figures;
use super::topic::{MODES, evaluate};
use crate::error::PhysicsError;

/// A line along the shaft: places from the clamp in mm, and how far the shaft stands off its rest there.
pub type BentLine = Vec<(f64, f64)>;

/// How a clamped club swings and bends.
#[derive(Debug, Clone, PartialEq)]
pub struct Shapes {
    /// Each mode from the clamp to the tip; its largest deflection is 1, that of the tip positive.
    pub modes: Vec<BentLine>,
    /// Deflection in mm under the document's tip load, for the calibrated line.
    pub bent_mm: BentLine,
}

/// Shapes of the first three modes and of the shaft under its tip load.
///
/// # Errors
/// As [`frequency`](super::frequency).
pub fn shapes(input: &FrequencyInput) -> Result<Shapes, PhysicsError> {
    let figures = Figures::read(input)?;
    let factor = evaluate(input, &figures)?.factor;
    let beam = figures.beam(&figures.line(input)?, input.elements, &figures.main_setup())?;
    let modes = beam.modes(MODES)?;
    let one = |line: BentLine| {
        let most = line.iter().map(|(_, off)| off.abs()).fold(f64::MIN_POSITIVE, f64::max);
        let sign = if line.last().is_some_and(|(_, off)| *off < 0.0) { -1.0 } else { 1.0 };
        line.into_iter().map(|(at, off)| (at, sign * off / most)).collect()
    };
    Ok(Shapes {
        modes: modes.iter().map(|mode| one(line(&beam, &mode.shape))).collect(),
        bent_mm: line(&beam, &beam.bent_shape(figures.load_n * 1000.0 / factor)),
    })
}

/// Deflections of the nodes, with the clamp's own zero before them.
fn line(beam: &Beam, shape: &[f64]) -> BentLine {
    let nodes_m = beam.nodes_m();
    let off = std::iter::once(0.0).chain(shape.iter().copied().step_by(2));
    nodes_m.iter().map(|at_m| (at_m - nodes_m[0]) * 1000.0).zip(off).collect()
}
