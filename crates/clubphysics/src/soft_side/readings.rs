//! The readings and options of a `soft-side` document, checked.

use super::document::SoftSideInput;
use super::shaft::{Held, wrapped};
use crate::advice::{Advice, Clash};
use crate::check::{above, below, enough, finite};
use crate::error::PhysicsError;
use crate::vibration::require::deviation;

/// Different angles that are needed: five terms and one to see the noise.
const ANGLES_MIN: usize = 6;

/// Angles closer than this count as one.
const SAME_ANGLE_DEG: f64 = 0.5;

/// The readings in the form that the fit takes.
pub(super) struct Readings {
    pub(super) held: Held,
    pub(super) held_sd: f64,
    pub(super) values: Vec<f64>,
    /// Standard deviation of each value in units of the noise of one reading.
    pub(super) spreads: Vec<f64>,
    pub(super) noise: Option<f64>,
    /// Standard deviation that the rounding of the readings alone makes.
    pub(super) rounding: f64,
}

impl Readings {
    pub(super) fn read(input: &SoftSideInput) -> Result<Self, PhysicsError> {
        check_angles(&input.angles_deg)?;
        let one_kind = PhysicsError::Contradiction { what: Clash::OneKind, advice: Box::new(Advice::OneKindOfReading) };
        let readings = match (&input.forces_n, &input.deflections_mm, &input.frequencies_cpm) {
            (Some(forces), None, None) => Self::forces(input, forces)?,
            (None, Some(deflections), None) => Self::deflections(input, deflections)?,
            (None, None, Some(frequencies)) => Self::frequencies(input, frequencies)?,
            _ => return Err(one_kind),
        };
        check_leftovers(input, readings.held)?;
        Ok(readings)
    }

    fn forces(input: &SoftSideInput, forces: &[f64]) -> Result<Self, PhysicsError> {
        check_list("forces_n", forces, input.angles_deg.len(), "N")?;
        let held = needed("fixed_deflection_mm", input.fixed_deflection_mm, "mm")?;
        Ok(Self {
            held: Held::Deflection(held),
            held_sd: deviation("fixed_deflection_mm_sd", input.fixed_deflection_mm_sd, "mm")?,
            values: forces.to_vec(),
            spreads: vec![1.0; forces.len()],
            noise: noise("forces_n_sd", input.forces_n_sd, "N")?,
            rounding: rounding(forces),
        })
    }

    fn deflections(input: &SoftSideInput, deflections: &[f64]) -> Result<Self, PhysicsError> {
        check_list("deflections_mm", deflections, input.angles_deg.len(), "mm")?;
        let held = needed("fixed_force_n", input.fixed_force_n, "N")?;
        Ok(Self {
            held: Held::Force(held),
            held_sd: deviation("fixed_force_n_sd", input.fixed_force_n_sd, "N")?,
            values: deflections.to_vec(),
            spreads: vec![1.0; deflections.len()],
            noise: noise("deflections_mm_sd", input.deflections_mm_sd, "mm")?,
            rounding: rounding(deflections),
        })
    }

    /// Stiffness goes with the square of the frequency, the modal mass being the same in all planes.
    fn frequencies(input: &SoftSideInput, frequencies: &[f64]) -> Result<Self, PhysicsError> {
        check_list("frequencies_cpm", frequencies, input.angles_deg.len(), "cpm")?;
        Ok(Self {
            held: Held::Nothing,
            held_sd: 0.0,
            values: frequencies.iter().map(|cpm| cpm * cpm).collect(),
            spreads: frequencies.iter().map(|cpm| 2.0 * cpm).collect(),
            noise: noise("frequencies_cpm_sd", input.frequencies_cpm_sd, "cpm")?,
            rounding: rounding(frequencies),
        })
    }
}

fn check_angles(angles_deg: &[f64]) -> Result<(), PhysicsError> {
    for (i, angle) in angles_deg.iter().enumerate() {
        finite(&format!("angles_deg[{i}]"), *angle, "deg")?;
    }
    let mut turned: Vec<f64> = angles_deg.iter().map(|angle| wrapped(*angle, 360.0)).collect();
    turned.sort_by(f64::total_cmp);
    let mut different = turned.windows(2).filter(|pair| pair[1] - pair[0] >= SAME_ANGLE_DEG).count();
    if let (Some(first), Some(last)) = (turned.first(), turned.last()) {
        // The last may be the first again, one turn on.
        different += usize::from(first + 360.0 - last >= SAME_ANGLE_DEG);
    }
    let advice = Advice::ReadSixDirections;
    enough("angles_deg", different, ANGLES_MIN, advice)
}

fn check_list(field: &str, values: &[f64], angles: usize, unit: &'static str) -> Result<(), PhysicsError> {
    if values.len() != angles {
        return Err(PhysicsError::Contradiction {
            what: Clash::ReadingsDiffer { field: field.to_owned(), n: values.len(), angles },
            advice: Box::new(Advice::OneReadingAnAngle),
        });
    }
    for (i, value) in values.iter().enumerate() {
        above(&format!("{field}[{i}]"), *value, 0.0, unit, Advice::EnterReadingWithoutSign)?;
    }
    Ok(())
}

fn needed(field: &str, value: Option<f64>, unit: &'static str) -> Result<f64, PhysicsError> {
    let advice = Advice::WhatWasHeld;
    let value =
        value.ok_or_else(|| PhysicsError::Missing { field: field.to_owned(), advice: Box::new(advice.clone()) })?;
    above(field, value, 0.0, unit, advice)
}

fn noise(field: &str, value: Option<f64>, unit: &'static str) -> Result<Option<f64>, PhysicsError> {
    let advice = Advice::NoReadingWithoutError;
    value.map(|sd| above(field, sd, 0.0, unit, advice)).transpose()
}

/// Standard deviation of the rounding, `step/√12`, when all readings sit on a grid of four decimals or coarser.
///
/// Six equal readings of a display with one decimal do not prove that there is no noise.
fn rounding(values: &[f64]) -> f64 {
    (0..=4)
        .map(|decimals| 10_f64.powi(decimals))
        .find(|per_unit| values.iter().all(|value| (value * per_unit - (value * per_unit).round()).abs() < 1e-6))
        .map_or(0.0, |per_unit| 1.0 / (per_unit * 12_f64.sqrt()))
}

/// Refuses figures that belong to another kind of reading, which would else be dropped without a word.
fn check_leftovers(input: &SoftSideInput, held: Held) -> Result<(), PhysicsError> {
    let forces = matches!(held, Held::Deflection(_));
    let deflections = matches!(held, Held::Force(_));
    let fields = [
        ("forces_n_sd", input.forces_n_sd.is_some(), forces),
        ("fixed_deflection_mm", input.fixed_deflection_mm.is_some(), forces),
        ("fixed_deflection_mm_sd", input.fixed_deflection_mm_sd.is_some(), forces),
        ("deflections_mm_sd", input.deflections_mm_sd.is_some(), deflections),
        ("fixed_force_n", input.fixed_force_n.is_some(), deflections),
        ("fixed_force_n_sd", input.fixed_force_n_sd.is_some(), deflections),
        ("frequencies_cpm_sd", input.frequencies_cpm_sd.is_some(), matches!(held, Held::Nothing)),
    ];
    match fields.iter().find(|(_, given, fits)| *given && !fits) {
        None => Ok(()),
        Some((field, ..)) => Err(PhysicsError::Contradiction {
            what: Clash::OtherKind { field: (*field).to_owned() },
            advice: Box::new(Advice::LeaveOutOrGiveReadings),
        }),
    }
}

/// What counts as there, and as mattering.
pub(super) struct Options {
    pub(super) significance: f64,
    pub(super) asymmetry_that_matters_percent: f64,
    pub(super) bow_that_matters_mm: f64,
}

impl Options {
    pub(super) fn read(input: &SoftSideInput) -> Result<Self, PhysicsError> {
        let significance = input.significance.unwrap_or(0.05);
        above("significance", significance, 0.0, "", Advice::AboutOneInTwenty)?;
        below("significance", significance, 0.5, "", Advice::AboutOneInTwenty)?;
        let asymmetry = input.asymmetry_that_matters_percent.unwrap_or(0.4);
        let bow = input.bow_that_matters_mm.unwrap_or(0.5);
        above("asymmetry_that_matters_percent", asymmetry, 0.0, "%", Advice::LeastAsymmetry)?;
        above("bow_that_matters_mm", bow, 0.0, "mm", Advice::LeastBow)?;
        if let Some(roller) = input.roller_deflection_mm {
            above("roller_deflection_mm", roller, 0.0, "mm", Advice::DeflectionOfRollers)?;
        }
        Ok(Self { significance, asymmetry_that_matters_percent: asymmetry, bow_that_matters_mm: bow })
    }
}
