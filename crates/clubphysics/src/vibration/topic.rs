//! From the document to frequencies: set-ups, calibration, derivatives, uncertainty.

use crate::advice::Advice;
use serde_json::{Value, json};

use super::beam::Beam;
use super::document::{Calibration, FrequencyInput, FrequencyOutput, FrequencyRemark, Prediction, Sensitivity};
use super::figures::{Figures, Setup};
use super::spread::Spread;
use crate::error::{Bound, PhysicsError};
use crate::plausible::{STIFFNESS_FACTOR, STIFFNESS_FACTOR_USUAL, TIP_BODY_MASS_G};
use crate::topic::{Topic, described, through_json};

/// Modes that are answered.
pub(super) const MODES: usize = 3;
const MM_PER_INCH: f64 = 25.4;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "frequency",
    example,
    input: described::<FrequencyInput>,
    output: described::<FrequencyOutput>,
    run: |input| through_json(&input, frequency),
};

fn example() -> Value {
    json!({
        "stiffness_line": [
            { "position_mm": 0.0, "stiffness_n_m2": 26.0, "mass_g_m": 95.0 },
            { "position_mm": 300.0, "stiffness_n_m2": 31.0, "mass_g_m": 104.0 },
            { "position_mm": 960.0, "stiffness_n_m2": 80.0, "mass_g_m": 128.0 }
        ],
        "measured_from": "tip",
        "tip_body": { "mass_g": 256.0, "mass_g_sd": 0.5, "offset_mm": 12.0, "inertia_g_cm2": 2500.0 },
        "measured": { "frequency_cpm": 305.0, "frequency_cpm_sd": 0.5 },
        "what_if": [
            { "name": "half an inch off the butt", "butt_trim_mm": 12.7 },
            { "name": "next head", "tip_body": { "mass_g": 263.0, "offset_mm": 12.0, "inertia_g_cm2": 2500.0 } }
        ]
    })
}

/// Frequencies, deflection, calibration, sensitivities and predictions of a clamped club.
///
/// Accuracy: 1e-5 relative or better with the default 30 elements for the first three modes and the deflection, of
/// smooth or stepped tables (`tests/vibration.rs`) and for rows at any distance from each other and from the cuts
/// (`tests/vibration_close_rows.rs`). Standard deviations are first order, with the correlations that the document states;
/// what two outputs share stays shared (a calibrated prediction does not depend on the table's overall scale).
///
/// # Errors
/// [`PhysicsError`] naming the field, for values that are not finite, negative or out of order, tables that do not
/// cover the free shaft, and trims longer than the shaft.
///
/// # Examples
/// ```
/// let input: clubphysics::vibration::FrequencyInput = serde_json::from_str(
///     r#"{"stiffness_line": [
///           {"position_mm": 0, "stiffness_n_m2": 40, "mass_g_m": 63.15789473684211},
///           {"position_mm": 950, "stiffness_n_m2": 40, "mass_g_m": 63.15789473684211}],
///         "clamp_mm": 0, "tip_body": {"mass_g": 205}}"#,
/// )?;
/// let output = clubphysics::vibration::frequency(&input)?;
/// assert!((output.frequencies_cpm[0] - 241.3).abs() < 0.05);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn frequency(input: &FrequencyInput) -> Result<FrequencyOutput, PhysicsError> {
    let figures = Figures::read(input)?;
    let full = evaluate(input, &figures)?;
    refuse_another_shaft(input, &full)?;
    let main = figures.main_setup();
    let beam = figures.beam(&figures.line(input)?, input.elements, &main)?;
    let spread = Spread::of(input, &figures, &full)?;
    let calibration = input.measured.as_ref().map(|_| Calibration {
        stiffness_factor: full.factor,
        stiffness_factor_sd: spread.set_up(|set_up| set_up.factor),
        uncalibrated_cpm: full.uncalibrated_cpm,
        uncalibrated_cpm_sd: spread.set_up(|set_up| set_up.uncalibrated_cpm),
    });
    let predictions = input
        .what_if
        .iter()
        .enumerate()
        .map(|(i, what_if)| Prediction {
            name: what_if.name.clone(),
            frequency_cpm: full.predicted[i].0,
            frequency_cpm_sd: spread.what_if(i, |other| other.frequency_cpm),
            change_cpm: full.predicted[i].0 - full.frequencies_cpm[0],
            change_cpm_sd: spread.what_if(i, |other| other.change_cpm),
            deflection_mm: full.predicted[i].1,
            deflection_mm_sd: spread.what_if(i, |other| other.deflection_mm),
        })
        .collect();
    Ok(FrequencyOutput {
        frequencies_cpm_sd: (0..full.frequencies_cpm.len()).map(|mode| spread.frequency_cpm(mode)).collect(),
        deflection_mm: full.deflection_mm,
        deflection_mm_sd: spread.set_up(|set_up| set_up.deflection_mm),
        tip_stiffness_n_m: full.tip_stiffness_n_m,
        tip_stiffness_n_m_sd: spread.set_up(|set_up| set_up.tip_stiffness_n_m),
        free_length_mm: full.free_length_mm,
        free_length_mm_sd: spread.set_up(|set_up| set_up.free_length_mm),
        free_shaft_mass_g: full.free_shaft_mass_g,
        free_shaft_mass_g_sd: spread.set_up(|set_up| set_up.free_shaft_mass_g),
        calibration,
        sensitivity: sensitivity(input, &figures, full.factor)?,
        predictions,
        warnings: warnings(input, &beam, &full),
        frequencies_cpm: full.frequencies_cpm,
    })
}

/// Refuses a reading that the table's own shaft cannot give, and names what it probably is.
fn refuse_another_shaft(input: &FrequencyInput, full: &Answer) -> Result<(), PhysicsError> {
    let Some(measured) = &input.measured else { return Ok(()) };
    let factor = full.factor;
    if STIFFNESS_FACTOR.contains(factor) {
        return Ok(());
    }
    let (low, high) = STIFFNESS_FACTOR.range();
    let (bound, limit) = if factor < low { (Bound::AtLeast, low) } else { (Bound::AtMost, high) };
    let bare = factor > high && input.tip_body.mass_g > 0.0 && measured.tip_body.is_none();
    let (table_cpm, reading_cpm) = (full.uncalibrated_cpm, measured.frequency_cpm);
    Err(PhysicsError::OutOfRange {
        field: "stiffness factor of measured.frequency_cpm".to_owned(),
        value: quantity::round_to(factor, 3),
        bound,
        limit,
        unit: "",
        advice: Box::new(if bare {
            Advice::ReadWithoutHead { table_cpm, reading_cpm }
        } else {
            Advice::CheckTable { table_cpm, reading_cpm }
        }),
    })
}

/// Everything that gets a standard deviation.
#[derive(Debug, Clone)]
pub(super) struct Answer {
    pub(super) frequencies_cpm: Vec<f64>,
    pub(super) deflection_mm: f64,
    pub(super) tip_stiffness_n_m: f64,
    pub(super) free_length_mm: f64,
    pub(super) free_shaft_mass_g: f64,
    pub(super) factor: f64,
    /// First frequency in the set-up of the reading before calibration; nothing without a reading.
    pub(super) uncalibrated_cpm: f64,
    /// First frequency (cpm) and deflection (mm) of each what-if.
    pub(super) predicted: Vec<(f64, f64)>,
}

pub(super) fn evaluate(input: &FrequencyInput, figures: &Figures) -> Result<Answer, PhysicsError> {
    let line = figures.line(input)?;
    let beam_of = |setup: &Setup| figures.beam(&line, input.elements, setup);
    // All frequencies go with the square root of a common factor on the stiffness, so the factor is found in one step.
    let (factor, uncalibrated_cpm) = match (&input.measured, figures.measured_cpm) {
        (Some(measured), Some(cpm)) => {
            let model = beam_of(&figures.measured_setup(measured))?.first_mode()?;
            ((cpm / model.frequency_cpm()).powi(2), model.frequency_cpm())
        }
        _ => (1.0, 0.0),
    };
    let beam = beam_of(&figures.main_setup())?;
    let deflection_mm = beam.tip_deflection_m(figures.load_n) * 1000.0 / factor;
    let frequencies_cpm = beam.modes(MODES)?.iter().map(|mode| mode.frequency_cpm() * factor.sqrt()).collect();
    let mut predicted = Vec::with_capacity(input.what_if.len());
    for (i, what_if) in input.what_if.iter().enumerate() {
        let beam = beam_of(&figures.what_if_setup(i, what_if))?;
        let cpm = beam.first_mode()?.frequency_cpm() * factor.sqrt();
        predicted.push((cpm, beam.tip_deflection_m(figures.load_n) * 1000.0 / factor));
    }
    Ok(Answer {
        frequencies_cpm,
        deflection_mm,
        tip_stiffness_n_m: figures.load_n * 1000.0 / deflection_mm,
        free_length_mm: beam.free_length_m() * 1000.0,
        free_shaft_mass_g: beam.shaft_mass_kg() * 1000.0,
        factor,
        uncalibrated_cpm,
        predicted,
    })
}

/// Slopes of the first frequency by central differences.
fn sensitivity(input: &FrequencyInput, figures: &Figures, factor: f64) -> Result<Sensitivity, PhysicsError> {
    let figures = &Figures { strict: false, ..figures.clone() };
    let line = figures.line(input)?;
    let first = |setup: &Setup| -> Result<f64, PhysicsError> {
        Ok(figures.beam(&line, input.elements, setup)?.first_mode()?.frequency_cpm() * factor.sqrt())
    };
    let main = figures.main_setup();
    let free_mm = figures.length_mm - main.tip_trim_mm - main.butt_trim_mm - main.clamp_mm;
    let step_mm = (free_mm * 1e-3).min(1.0);
    // A cut cannot be negative, nor the clamp: near zero the slope is taken from one side, to second order too.
    let slope = |value: f64, with: &dyn Fn(f64) -> Setup| -> Result<f64, PhysicsError> {
        if value >= step_mm {
            Ok((first(&with(value + step_mm))? - first(&with(value - step_mm))?) / (2.0 * step_mm))
        } else {
            let (here, near, far) =
                (first(&with(value))?, first(&with(value + step_mm))?, first(&with(value + 2.0 * step_mm))?);
            Ok((4.0 * near - far - 3.0 * here) / (2.0 * step_mm))
        }
    };
    // Exact for mass: df/dm = -f/2 of the square of the mode at the mass, of unit modal mass.
    let mode = figures.beam(&line, input.elements, &main)?.first_mode()?;
    let at_tip = mode.at_tip_body(main.tip.offset_mm / 1000.0);
    Ok(Sensitivity {
        per_gram_tip_cpm: -0.5 * mode.frequency_cpm() * factor.sqrt() * at_tip * at_tip * 1e-3,
        per_inch_longer_at_butt_cpm: -MM_PER_INCH
            * slope(main.butt_trim_mm, &|butt_trim_mm| Setup { butt_trim_mm, ..main })?,
        per_inch_tip_trim_cpm: MM_PER_INCH * slope(main.tip_trim_mm, &|tip_trim_mm| Setup { tip_trim_mm, ..main })?,
        per_inch_clamp_cpm: MM_PER_INCH * slope(main.clamp_mm, &|clamp_mm| Setup { clamp_mm, ..main })?,
    })
}

fn warnings(input: &FrequencyInput, beam: &Beam, full: &Answer) -> Vec<FrequencyRemark> {
    let first_cpm = full.frequencies_cpm[0];
    let mut list = Vec::new();
    let free_mm = beam.free_length_m() * 1000.0;
    if !(300.0..=1300.0).contains(&free_mm) {
        list.push(FrequencyRemark::FreeLength { free_mm });
    }
    if let Some(meant) = TIP_BODY_MASS_G.looks_like(input.tip_body.mass_g) {
        list.push(FrequencyRemark::HeadInAnotherUnit { meant });
    }
    let read_with = input.measured.as_ref().and_then(|measured| measured.tip_body.as_ref());
    if let Some(meant) = read_with.and_then(|tip| TIP_BODY_MASS_G.looks_like(tip.mass_g)) {
        list.push(FrequencyRemark::ReadHeadInAnotherUnit { meant });
    }
    if input.measured.is_some() && !STIFFNESS_FACTOR_USUAL.contains(full.factor) {
        list.push(FrequencyRemark::TableFarOff { times: full.factor });
    }
    let (softest_n_m2, stiffest_n_m2) = input
        .stiffness_line
        .iter()
        .fold((f64::INFINITY, 0.0_f64), |(low, high), row| (low.min(row.stiffness_n_m2), high.max(row.stiffness_n_m2)));
    if stiffest_n_m2 > 400.0 || (softest_n_m2 > 0.0 && softest_n_m2 < 2.0) {
        list.push(FrequencyRemark::Stiffness { softest_n_m2, stiffest_n_m2 });
    }
    // Bare shafts run near 1,000 cpm; finished clubs 200 to 350.
    if !(120.0..=1500.0).contains(&first_cpm) {
        list.push(FrequencyRemark::Frequency { first_cpm });
    }
    list
}
