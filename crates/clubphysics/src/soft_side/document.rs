//! Input and output documents of the topic `soft-side`.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::uncertainty::Correlation;

/// Which principal plane a shop marks.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// The direction in which the shaft bends most easily.
    #[default]
    Soft,
    /// The direction across it.
    Stiff,
}

/// Input of the topic `soft-side`: readings at angles around the shaft.
///
/// An angle is that of the shaft's own direction that is pushed (or swings), counted around the shaft from any mark.
/// Exactly one of `forces_n`, `deflections_mm` and `frequencies_cpm` is given, one entry for each angle.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SoftSideInput {
    /// Angles, degrees; at least six different ones, spread around the turn.
    pub angles_deg: Vec<f64>,
    /// Force at the tip that holds the fixed deflection, N.
    pub forces_n: Option<Vec<f64>>,
    /// Standard deviation of one force reading, N; found from the residuals when left out.
    pub forces_n_sd: Option<f64>,
    /// The fixed deflection that goes with `forces_n`, mm.
    pub fixed_deflection_mm: Option<f64>,
    /// Standard deviation of the fixed deflection, mm: one error shared by all readings.
    pub fixed_deflection_mm_sd: Option<f64>,
    /// Deflection of the tip under the fixed force, mm.
    pub deflections_mm: Option<Vec<f64>>,
    /// Standard deviation of one deflection reading, mm; found from the residuals when left out.
    pub deflections_mm_sd: Option<f64>,
    /// The fixed force that goes with `deflections_mm`, N.
    pub fixed_force_n: Option<f64>,
    /// Standard deviation of the fixed force, N: one error shared by all readings.
    pub fixed_force_n_sd: Option<f64>,
    /// Frequency in the plane of the angle, cycles per minute.
    pub frequencies_cpm: Option<Vec<f64>>,
    /// Standard deviation of one frequency reading, cycles per minute; found from the residuals when left out.
    pub frequencies_cpm_sd: Option<f64>,
    /// Deflection in the roller test, mm; the fixed or mean deflection of the readings when left out.
    pub roller_deflection_mm: Option<f64>,
    /// Chance at which an effect that is not there would be called there; 0.05 when left out.
    pub significance: Option<f64>,
    /// Stiffness asymmetry that would matter, percent; 0.4 % when left out: 1 cpm in 250, what welded steel mostly
    /// keeps (article 'All About Spines').
    pub asymmetry_that_matters_percent: Option<f64>,
    /// Bow that would matter, mm; 0.5 mm when left out (no source).
    pub bow_that_matters_mm: Option<f64>,
    /// Which direction to mark; the soft one when left out.
    #[serde(default)]
    pub mark: Mark,
    /// Correlations between readings, or of a reading with what was held fixed: `forces_n[0]`, `fixed_deflection_mm`.
    /// They need the standard deviation of a reading to be given.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// Whether an effect is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Presence {
    /// The readings show it.
    There,
    /// If there, it is smaller than what matters.
    TooSmallToMatter,
    /// It is hidden in the noise, and could still be large enough to matter.
    CannotTell,
}

/// Outcome of the test of one effect.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Finding {
    /// Whether it is there.
    pub presence: Presence,
    /// Chance of readings like these if it were not there (F test of its two harmonics).
    pub p_value: f64,
    /// Value it hardly exceeds (95 %), in the unit of the effect: percent of asymmetry, mm of bow.
    pub at_most: f64,
}

/// What a roller test would show.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct RestingPlaces {
    /// Number of places where the loaded shaft comes to rest in one turn: 1 or 2.
    pub count: u8,
    /// Whether the number is the same all over the 95 % region of the fit.
    pub sure: bool,
    /// Deflection it holds for, mm.
    pub roller_deflection_mm: f64,
}

/// Output of the topic `soft-side`.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SoftSideOutput {
    /// Mean bending stiffness at the tip, N/m; not from frequencies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_stiffness_n_m: Option<f64>,
    /// Its standard deviation, newtons per metre.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_stiffness_n_m_sd: Option<f64>,
    /// Frequency of a shaft of the mean stiffness, cycles per minute; only from frequencies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_frequency_cpm: Option<f64>,
    /// Its standard deviation, cycles per minute.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_frequency_cpm_sd: Option<f64>,
    /// Frequency of the stiff plane less that of the soft plane, cycles per minute; only from frequencies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequency_difference_cpm: Option<f64>,
    /// Its standard deviation, cycles per minute.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequency_difference_cpm_sd: Option<f64>,
    /// Stiffness asymmetry ε, percent: the planes have (1+ε) and (1-ε) times the mean stiffness.
    pub asymmetry_percent: f64,
    /// Its standard deviation, percent.
    pub asymmetry_percent_sd: f64,
    /// Whether there is an asymmetry.
    pub asymmetry: Finding,
    /// Direction in which the shaft is softest, degrees in [0, 180); only when there is an asymmetry.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soft_direction_deg: Option<f64>,
    /// Its standard deviation, degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soft_direction_deg_sd: Option<f64>,
    /// Residual bow at the tip, mm; not from frequencies, which do not feel it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bow_mm: Option<f64>,
    /// Its standard deviation, millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bow_mm_sd: Option<f64>,
    /// Whether there is a bow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bow: Option<Finding>,
    /// Direction in which the unloaded tip stands off the axis, degrees in [0, 360); only when there is a bow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bow_direction_deg: Option<f64>,
    /// Its standard deviation, degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bow_direction_deg_sd: Option<f64>,
    /// Chance of a once-a-turn change like this if there were none.
    pub once_a_turn_p_value: f64,
    /// What a roller test would show; not from frequencies, nor when neither effect is there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resting_places: Option<RestingPlaces>,
    /// Direction to mark, degrees in [0, 360); the end on the side of the bow when there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_deg: Option<f64>,
    /// Its standard deviation: that of the soft direction.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_deg_sd: Option<f64>,
    /// Standard deviation of one force reading, N, given or found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub force_n_sd: Option<f64>,
    /// Standard deviation of one deflection reading, mm, given or found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection_mm_sd: Option<f64>,
    /// Standard deviation of one frequency reading, cycles per minute, given or found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frequency_cpm_sd: Option<f64>,
    /// Whether that standard deviation was given.
    pub noise_given: bool,
    /// Readings beyond the five that the fit uses up.
    pub residual_freedoms: usize,
    /// Factor from a standard deviation to a 95 % interval.
    pub coverage_factor_95: f64,
    /// What to know about the result, and what to do next.
    pub notes: Vec<SoftSideNote>,
}

fact::facts! {
    /// What to know about the result, and what to do next.
    pub enum SoftSideNote: "soft_side_note" {
        /// The planes are alike.
        PlanesAlike {
            /// The asymmetry is at most this share of the mean stiffness.
            at_most_share: f64,
        },
        /// The readings cannot tell whether there is a soft side.
        CannotTellSoftSide {
            /// The asymmetry is at most this share of the mean stiffness.
            at_most_share: f64,
        },
        /// The readings cannot tell whether the shaft is bowed.
        CannotTellBow {
            /// The bow is at most this, millimetres.
            at_most_mm: f64,
        },
        /// The frequency changes once a turn.
        OnceATurn,
        /// There are few readings beyond those that the fit uses up.
        FewSpare {
            /// Readings beyond the five that the fit uses up.
            spare: usize,
        },
        /// The readings scatter more than was given.
        Scatter {
            /// How many times as much.
            times: f64,
        },
    }
}
