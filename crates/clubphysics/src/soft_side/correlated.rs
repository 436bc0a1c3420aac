//! Covariance of the fitted terms and of the thing held fixed, where readings err together.

use crate::advice::Advice;
use nalgebra::{SMatrix, SVector};

use super::document::SoftSideInput;
use super::harmonics::{Harmonics, TERMS, row};
use super::readings::Readings;
use super::shaft::Held;
use crate::error::PhysicsError;
use crate::real::{Dual, Real};
use crate::uncertainty::{Inputs, Var};

/// Terms of the fit, and the thing held fixed.
pub(super) const SOURCES: usize = TERMS + 1;

/// Covariance of the terms and the thing held fixed.
///
/// The terms are linear in the readings, so the covariance of the readings goes through the fit without a remainder.
/// The fit itself stays the one for readings that err each on their own.
///
/// # Errors
/// [`PhysicsError::Missing`] where the standard deviation of a reading is not given: the scatter about the fit does not
/// show what readings have in common. Else what [`Inputs::correlate_named`] refuses.
pub(super) fn covariance(
    input: &SoftSideInput,
    readings: &Readings,
    fit: &Harmonics,
    angles_rad: &[f64],
) -> Result<SMatrix<f64, SOURCES, SOURCES>, PhysicsError> {
    let mut sources = SMatrix::<f64, SOURCES, SOURCES>::zeros();
    if input.correlations.is_empty() {
        sources.fixed_view_mut::<TERMS, TERMS>(0, 0).copy_from(&fit.covariance);
        sources[(TERMS, TERMS)] = readings.held_sd * readings.held_sd;
        return Ok(sources);
    }
    let names = names(readings.held);
    let noise = readings.noise.ok_or_else(|| PhysicsError::Missing {
        field: format!("{}_sd", names.readings),
        advice: Box::new(Advice::GiveNoiseWithCorrelations),
    })?;
    let mut inputs = Inputs::default();
    let mut gains: Vec<(Var, SVector<f64, TERMS>)> = Vec::with_capacity(angles_rad.len());
    let inverse = fit.covariance / (fit.noise * fit.noise);
    for (i, ((angle, value), spread)) in angles_rad.iter().zip(&readings.values).zip(&readings.spreads).enumerate() {
        let var = inputs.add(format!("{}[{i}]", names.readings), *value, Some(noise * spread))?;
        gains.push((var, inverse * row(*angle) / (spread * spread)));
    }
    let held = match readings.held {
        Held::Deflection(value) | Held::Force(value) => Some(inputs.add(names.held, value, Some(readings.held_sd))?),
        Held::Nothing => None,
    };
    inputs.correlate_named(&input.correlations)?;
    let results = inputs.propagate(|x| {
        let term = |t: usize| gains.iter().fold(Dual::constant(0.0), |sum, (var, gain)| sum + x[*var] * gain[t]);
        Ok((0..TERMS).map(term).chain([held.map_or(Dual::constant(0.0), |var| x[var])]).collect())
    })?;
    for i in 0..SOURCES {
        for j in 0..SOURCES {
            sources[(i, j)] = results.covariance(i, j);
        }
    }
    // What all readings have in common leaves the harmonics without noise; what is left then is rounding.
    let least = fit.rounding();
    let floor = inverse * (least * least);
    for i in 0..TERMS {
        sources[(i, i)] += floor[(i, i)];
    }
    Ok(sources)
}

/// What the readings and the thing held fixed are called in the document.
struct Names {
    readings: &'static str,
    held: &'static str,
}

fn names(held: Held) -> Names {
    match held {
        Held::Deflection(_) => Names { readings: "forces_n", held: "fixed_deflection_mm" },
        Held::Force(_) => Names { readings: "deflections_mm", held: "fixed_force_n" },
        Held::Nothing => Names { readings: "frequencies_cpm", held: "" },
    }
}
