//! A job: its clubs, what they share, the scales it is read on.

use crate::club::Club;
use crate::drift::Drift;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A deviation that several values have in common, before any reading of this job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SharedPrior {
    /// Name, for example `delta:MODEL`, `adhesive:LOT`, `tape:ROLL`, `grip_centre:MODEL`, `cap:MODEL`.
    pub key: String,
    /// Expected deviation, in the unit of the values that it enters (per wrap for tape); 0 where nothing was learned.
    #[serde(default)]
    pub mean_shift: f64,
    /// Its standard deviation, same unit.
    pub sd: f64,
}

impl SharedPrior {
    /// A deviation expected to be nought.
    #[must_use]
    pub fn new(key: impl Into<String>, sd: f64) -> Self {
        Self { key: key.into(), mean_shift: 0.0, sd }
    }
}

/// What is believed of a scale before today's readings. Units are those that it shows: points on a balance, grams on
/// a weighing scale.
///
/// A reading is `true + offset + drift + gain·(whole amount) + fulcrum·mass`, then noise, then rounding. The whole
/// amount is the moment from nothing (points above A0 plus 92) on a balance, the value itself elsewhere; the fulcrum
/// acts on a balance only (derived from the lever).
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScalePrior {
    /// Name.
    pub key: String,
    /// Expected offset: what the scale shows too much, in its unit; 0 for one that was never checked.
    #[serde(default)]
    pub offset_mean: f64,
    /// Standard deviation of the offset.
    #[serde(default)]
    pub offset_sd: f64,
    /// Expected relative error (0.001 shows one part in a thousand too much).
    #[serde(default)]
    pub gain_mean: f64,
    /// Standard deviation of the relative error.
    #[serde(default)]
    pub gain_sd: f64,
    /// Standard deviation of the fulcrum's place, inches; its mean is nought.
    #[serde(default)]
    pub fulcrum_sd_in: f64,
    /// Standard deviation of one re-seated reading, before rounding: used for forecasts of what it will show.
    #[serde(default)]
    pub noise_sd: f64,
    /// Smallest step of the display: used for forecasts of what it will show.
    #[serde(default)]
    pub resolution: f64,
    /// Drift within the job, if any.
    #[serde(default)]
    pub drift: Option<Drift>,
}

impl ScalePrior {
    /// A scale without error.
    #[must_use]
    pub fn new(key: impl Into<String>) -> Self {
        Self { key: key.into(), ..Self::default() }
    }

    /// The same with a standard deviation of the offset.
    #[must_use]
    pub fn offset_sd(mut self, offset_sd: f64) -> Self {
        self.offset_sd = offset_sd;
        self
    }

    /// The same with a standard deviation of the relative error.
    #[must_use]
    pub fn gain_sd(mut self, gain_sd: f64) -> Self {
        self.gain_sd = gain_sd;
        self
    }

    /// The same with noise.
    #[must_use]
    pub fn noise_sd(mut self, noise_sd: f64) -> Self {
        self.noise_sd = noise_sd;
        self
    }

    /// The same with a rounding step.
    #[must_use]
    pub fn resolution(mut self, resolution: f64) -> Self {
        self.resolution = resolution;
        self
    }

    /// The same with drift.
    #[must_use]
    pub fn drift(mut self, drift: Drift) -> Self {
        self.drift = Some(drift);
        self
    }

    /// Key under which the offset stands among the shared deviations.
    #[must_use]
    pub fn offset_key(scale: &str) -> String {
        format!("scale:{scale}:offset")
    }

    /// Key under which the relative error stands among the shared deviations.
    #[must_use]
    pub fn gain_key(scale: &str) -> String {
        format!("scale:{scale}:gain")
    }

    /// Key under which the fulcrum's place stands among the shared deviations.
    #[must_use]
    pub fn fulcrum_key(scale: &str) -> String {
        format!("scale:{scale}:fulcrum")
    }
}

/// Joint covariance of some shared deviations, as it is carried from job to job. It takes the place of their single
/// standard deviations; their means stay.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JointPrior {
    /// The keys; offsets and gains of scales may be among them (see [`ScalePrior::offset_key`]).
    pub keys: Vec<String>,
    /// Their covariance, one row a key.
    pub covariance: Vec<Vec<f64>>,
}

/// Everything that is believed before the first reading.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JobModel {
    /// The clubs of the job, each key once.
    pub clubs: Vec<Club>,
    /// Deviations that clubs have in common, each key once.
    #[serde(default)]
    pub shared: Vec<SharedPrior>,
    /// The scales that readings name, each key once.
    #[serde(default)]
    pub scales: Vec<ScalePrior>,
    /// Joint covariances of shared deviations; a key may stand in one of them only.
    #[serde(default)]
    pub joint: Vec<JointPrior>,
}
