//! Input and output documents of the topic `pluck`.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Input of the topic `pluck`: evenly spaced samples of the motion of the tip.
///
/// Position, speed or acceleration will do, in any unit; both axes in the same unit, at right angles to each other and
/// to the shaft.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PluckInput {
    /// Samples per second, Hz.
    pub sample_rate_hz: f64,
    /// Samples of the first axis.
    pub axis_1: Vec<f64>,
    /// Samples of the second axis, as many as of the first.
    pub axis_2: Option<Vec<f64>>,
    /// Largest size a sample can have, in the unit of the samples; lets clipping be found for certain.
    pub full_scale: Option<f64>,
    /// Start of the part to use, seconds from the first sample; found from the motion when left out.
    pub start_s: Option<f64>,
    /// End of the part to use, seconds from the first sample; the last sample when left out.
    pub end_s: Option<f64>,
    /// Lowest frequency to look for, Hz; 1 Hz (60 cpm) when left out.
    pub lowest_hz: Option<f64>,
    /// Highest frequency to look for, Hz; 30 Hz (1,800 cpm) when left out.
    pub highest_hz: Option<f64>,
}

/// The motion in one principal plane.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Plane {
    /// Frequency, cycles per minute.
    pub frequency_cpm: f64,
    /// Its standard deviation, cycles per minute.
    pub frequency_cpm_sd: f64,
    /// Direction of the plane, degrees from the first axis toward the second, in [0, 180).
    pub direction_deg: f64,
    /// Its standard deviation; the planes stand at right angles, so both have the same.
    pub direction_deg_sd: f64,
    /// Decay of the amplitude per second: it falls as exp(-decay·t).
    pub decay_per_s: f64,
    /// Its standard deviation, per second.
    pub decay_per_s_sd: f64,
    /// Amplitude at the start of the part used, in the unit of the samples.
    pub amplitude: f64,
}

/// The two principal planes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Planes {
    /// The plane of lower frequency, in which the shaft is softer.
    pub soft: Plane,
    /// The plane of higher frequency, a quarter turn from the soft one.
    pub stiff: Plane,
    /// Difference of their frequencies, cycles per minute.
    pub difference_cpm: f64,
    /// Its standard deviation, cycles per minute.
    pub difference_cpm_sd: f64,
    /// Stiffness asymmetry `(r² - 1)/(r² + 1)`, r the ratio of the frequencies, percent.
    pub asymmetry_percent: f64,
    /// Its standard deviation, percent.
    pub asymmetry_percent_sd: f64,
    /// Time in which the motion goes from its line over an ellipse to the mirrored line, seconds: 30 over the
    /// difference in cpm.
    pub mirrored_after_s: f64,
}

/// Output of the topic `pluck`.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PluckOutput {
    /// Frequency, cycles per minute; with two planes that of the mean stiffness.
    pub frequency_cpm: f64,
    /// Its standard deviation, cycles per minute.
    pub frequency_cpm_sd: f64,
    /// The same frequency in Hz.
    pub frequency_hz: f64,
    /// Its standard deviation, Hz.
    pub frequency_hz_sd: f64,
    /// Decay of the amplitude per second; with two planes the mean of both.
    pub decay_per_s: f64,
    /// Its standard deviation, per second.
    pub decay_per_s_sd: f64,
    /// Share of critical damping, percent: decay over angular frequency.
    pub damping_percent: f64,
    /// Amplitude at the start of the part used, in the unit of the samples, both axes together.
    pub amplitude: f64,
    /// Direction of the first swing, degrees from the first axis in [0, 180); only with two axes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swing_direction_deg: Option<f64>,
    /// The principal planes; only with two axes, and only when the recording shows two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub planes: Option<Planes>,
    /// Chance of a recording like this if both planes were alike; only with two axes, and only when a second tone could
    /// be fitted at all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub one_plane_p_value: Option<f64>,
    /// Standard deviation of what the fit leaves over, in the unit of the samples.
    pub residual_sd: f64,
    /// Standard deviation of the white noise beneath it: lines such as hum or a second bending mode left out.
    pub noise_sd: f64,
    /// Standard deviation of white noise as strong as what surrounds the tone.
    pub noise_near_tone_sd: f64,
    /// Least standard deviation that any unbiased estimate could have in that white noise (Cramér–Rao), cycles per
    /// minute: the inverse Fisher matrix of the fitted tones.
    pub bound_cpm: f64,
    /// Noise around the tone over white noise: how many times the bound the estimate stands off. One, within sampling,
    /// when the noise is white.
    pub bound_ratio: f64,
    /// Strongest other tone, Hz, when one stands out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_tone_hz: Option<f64>,
    /// First instant used, seconds from the first sample.
    pub used_from_s: f64,
    /// Last instant used, seconds from the first sample.
    pub used_to_s: f64,
    /// What to know about the result, and what to do next.
    pub notes: Vec<PluckNote>,
}

fact::facts! {
    /// What to know about the result, and what to do next.
    pub enum PluckNote: "pluck_note" {
        /// The recording shows one frequency only.
        OneFrequency,
        /// One axis shows a second tone close to the first.
        TwoPlanes {
            /// The other tone, cycles a minute.
            other_cpm: f64,
        },
        /// Another tone was left out of the noise.
        OtherTone {
            /// Where it is, hertz.
            tone_hz: f64,
        },
        /// The noise around the tone is strong.
        Noise {
            /// How many times the white noise.
            times: f64,
        },
        /// The swing grows.
        Grows,
    }
}
