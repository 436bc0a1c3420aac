//! Input and output documents of the topic `frequency`.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::slip::LooksLike;

use crate::uncertainty::Correlation;

use super::line::{BetweenRows, LineRow, MeasuredFrom};

fn five_inches_mm() -> f64 {
    127.0
}

fn one_kilogram_n() -> f64 {
    9.80665
}

fn thirty() -> usize {
    30
}

/// What is fixed to the tip of the shaft: the head, or the weight of a frequency meter.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TipBody {
    /// What it weighs, g; 0 for a bare shaft.
    pub mass_g: f64,
    /// Standard deviation of the mass, g.
    pub mass_g_sd: Option<f64>,
    /// Centre of mass beyond the tip end along the shaft axis, mm. Negative when it lies on the shaft's side.
    #[serde(default)]
    pub offset_mm: f64,
    /// Standard deviation of the offset, mm.
    pub offset_mm_sd: Option<f64>,
    /// Moment of inertia about its own centre, across the shaft axis, g·cm².
    #[serde(default)]
    pub inertia_g_cm2: f64,
    /// Standard deviation of the inertia, g·cm².
    pub inertia_g_cm2_sd: Option<f64>,
}

/// A frequency read on a meter, from which the stiffness line is calibrated.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Measured {
    /// First frequency as read, cycles per minute.
    pub frequency_cpm: f64,
    /// Standard deviation of the reading, cycles per minute.
    pub frequency_cpm_sd: Option<f64>,
    /// Head or test weight at the reading; that of the main document when left out.
    pub tip_body: Option<TipBody>,
    /// Length held in the clamp at the reading, mm; that of the main document when left out.
    pub clamp_mm: Option<f64>,
    /// Tip trim at the reading, mm; that of the main document when left out.
    pub tip_trim_mm: Option<f64>,
    /// Butt trim at the reading, mm; that of the main document when left out.
    pub butt_trim_mm: Option<f64>,
}

/// The same shaft in another club or clamp.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(as = FrequencyWhatIf)]
pub struct WhatIf {
    /// Name that comes back with the prediction.
    #[serde(default)]
    pub name: String,
    /// Other head; that of the main document when left out.
    pub tip_body: Option<TipBody>,
    /// Other length in the clamp, mm; that of the main document when left out.
    pub clamp_mm: Option<f64>,
    /// Other tip trim, mm; that of the main document when left out.
    pub tip_trim_mm: Option<f64>,
    /// Other butt trim, mm; that of the main document when left out.
    pub butt_trim_mm: Option<f64>,
}

/// Input of the topic `frequency`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FrequencyInput {
    /// Stiffness and mass along the raw shaft, sorted by position. Two rows at one position are a step.
    pub stiffness_line: Vec<LineRow>,
    /// End the positions are measured from; the butt when left out.
    #[serde(default)]
    pub measured_from: MeasuredFrom,
    /// How stiffness and mass run between the rows; straight lines when left out.
    #[serde(default)]
    pub between_rows: BetweenRows,
    /// Length of the raw shaft, mm; the last position of the table when left out.
    pub length_mm: Option<f64>,
    /// Standard deviation of the raw length, mm.
    pub length_mm_sd: Option<f64>,
    /// Cut from the tip, mm.
    #[serde(default)]
    pub tip_trim_mm: f64,
    /// Standard deviation of the tip cut, mm.
    pub tip_trim_mm_sd: Option<f64>,
    /// Cut from the butt, mm.
    #[serde(default)]
    pub butt_trim_mm: f64,
    /// Standard deviation of the butt cut, mm.
    pub butt_trim_mm_sd: Option<f64>,
    /// Length of the cut butt held in the clamp, mm; 127 mm (5 in, from memory: a common clamp) when left out.
    #[serde(default = "five_inches_mm")]
    pub clamp_mm: f64,
    /// Standard deviation of the length in the clamp, mm.
    pub clamp_mm_sd: Option<f64>,
    /// Body at the tip; none when left out.
    #[serde(default)]
    pub tip_body: TipBody,
    /// Force across the tip for the static deflection, N; 9.80665 N (1 kg hung there) when left out.
    #[serde(default = "one_kilogram_n")]
    pub tip_load_n: f64,
    /// Standard deviation of that force, N.
    pub tip_load_n_sd: Option<f64>,
    /// Relative standard deviation of the stiffness line, one common factor (0.03 is 3 %).
    pub stiffness_factor_sd: Option<f64>,
    /// Relative standard deviation of the mass line, one common factor.
    pub mass_factor_sd: Option<f64>,
    /// A reading that the stiffness line is scaled to.
    pub measured: Option<Measured>,
    /// Other set-ups to predict.
    #[serde(default)]
    pub what_if: Vec<WhatIf>,
    /// Finite elements, 2 to 400; 30 when left out. Rows that lie close together add elements of their own.
    #[serde(default = "thirty")]
    pub elements: usize,
    /// Correlations between figures that have standard deviations; the factors are called `stiffness_factor` and
    /// `mass_factor`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// The factor that brings the stiffness line to a measured frequency.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Calibration {
    /// Factor on every stiffness of the table.
    pub stiffness_factor: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stiffness_factor_sd: Option<f64>,
    /// First frequency of the uncalibrated line in the set-up of the reading, cycles per minute.
    pub uncalibrated_cpm: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncalibrated_cpm_sd: Option<f64>,
}

/// Change of the first frequency with one thing at a time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Sensitivity {
    /// One gram more at the centre of the tip body, cycles per minute.
    pub per_gram_tip_cpm: f64,
    /// One inch less cut from the butt (the club grows longer), cycles per inch and minute.
    pub per_inch_longer_at_butt_cpm: f64,
    /// One inch more cut from the tip (the club grows shorter), cycles per inch and minute.
    pub per_inch_tip_trim_cpm: f64,
    /// One inch more in the clamp, cycles per inch and minute.
    pub per_inch_clamp_cpm: f64,
}

/// Frequency and deflection of one set-up asked for in `what_if`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Prediction {
    /// Name from the input.
    pub name: String,
    /// First frequency, cycles per minute.
    pub frequency_cpm: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequency_cpm_sd: Option<f64>,
    /// Difference from the main set-up, cycles per minute.
    pub change_cpm: f64,
    /// Standard deviation of the difference; errors that both share cancel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_cpm_sd: Option<f64>,
    /// Deflection of the tip under `tip_load_n`, mm.
    pub deflection_mm: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection_mm_sd: Option<f64>,
}

/// Output of the topic `frequency`. With `measured` given, everything is for the calibrated line.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct FrequencyOutput {
    /// First three frequencies, cycles per minute. Fewer when fewer freedoms carry mass, as on a massless shaft.
    pub frequencies_cpm: Vec<f64>,
    /// Their standard deviations, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequencies_cpm_sd: Option<Vec<f64>>,
    /// Deflection of the tip under `tip_load_n`, mm.
    pub deflection_mm: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection_mm_sd: Option<f64>,
    /// Stiffness at the tip, N/m.
    pub tip_stiffness_n_m: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tip_stiffness_n_m_sd: Option<f64>,
    /// Length between clamp and tip, mm.
    pub free_length_mm: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub free_length_mm_sd: Option<f64>,
    /// Mass of that part of the shaft, g.
    pub free_shaft_mass_g: f64,
    /// Its standard deviation, when any input has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub free_shaft_mass_g_sd: Option<f64>,
    /// Factor on the stiffness line, when a measured frequency was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub calibration: Option<Calibration>,
    /// How the first frequency changes.
    pub sensitivity: Sensitivity,
    /// One entry for each entry of `what_if`.
    pub predictions: Vec<Prediction>,
    /// Figures that are possible but unusual for a club, with what to check.
    pub warnings: Vec<FrequencyRemark>,
}

fact::facts! {
    /// What looks odd about the figures without being impossible.
    pub enum FrequencyRemark: "frequency_remark" {
        /// The free length is not that of a club.
        FreeLength {
            /// The free length, millimetres.
            free_mm: f64,
        },
        /// The head looks as if its mass were in another unit.
        HeadInAnotherUnit {
            /// What the figure looks like.
            meant: LooksLike,
        },
        /// The head that was on for the reading looks as if its mass were in another unit.
        ReadHeadInAnotherUnit {
            /// What the figure looks like.
            meant: LooksLike,
        },
        /// The table of stiffness and the reading are far apart.
        TableFarOff {
            /// How many times as stiff the table must be made to give the reading.
            times: f64,
        },
        /// The stiffness is not that of a shaft.
        Stiffness {
            /// The softest row, newton square metres.
            softest_n_m2: f64,
            /// The stiffest row, newton square metres.
            stiffest_n_m2: f64,
        },
        /// The frequency is not that of a shaft.
        Frequency {
            /// What comes out, cycles a minute.
            first_cpm: f64,
        },
    }
}
