//! What the shop has learned of its models and of its hands, as the prior of the next job.
//!
//! Three levels are told apart. What a *piece* deviates is its own affair; what a *job* deviates (today's mix, today's
//! hand) is shared by its clubs and forgotten with it; what the *shop* deviates (a model's offset, a tape's mass per
//! area) is carried from job to job with its joint covariance, and slides slowly back toward the prior of a new shop.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Suffix of the deviations that belong to one job and are not carried.
pub const JOB_LEVEL: &str = "@job";

/// One value of the shop that its readings have told something about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LearnedValue {
    /// What it is of: `delta:MODEL`, `grip_centre:MODEL`, `cap:MODEL`, `shaft_centre:MODEL`, `adhesive:CODE`,
    /// `tape:CODE`, `solvent`.
    pub key: String,
    /// Mean deviation from the model's own figure: inches, grams, for tape a share of its mass.
    pub mean_shift: f64,
    /// Standard deviation that a new shop starts with, same unit.
    pub prior_sd: f64,
    /// Clubs that it was learned from.
    pub clubs: i64,
    /// Whether the owner has fixed it: it is used as it stands and learns nothing.
    #[serde(default)]
    pub pinned: bool,
}

/// How far single pieces, or jobs, scatter about the shop's mean.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Scatter {
    /// What scatters: `adhesive.piece`, `adhesive.job`, `tape.piece` and so on.
    pub key: String,
    /// Standard deviation, in the unit of the value.
    pub sd: f64,
    /// How many independent observations it is worth.
    pub weight: f64,
}

/// Everything that a shop has learned.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Learned {
    /// The values, ordered by key.
    #[serde(default)]
    pub values: Vec<LearnedValue>,
    /// Their joint covariance, a row a value.
    #[serde(default)]
    pub covariance: Vec<Vec<f64>>,
    /// Scatter figures, ordered by key.
    #[serde(default)]
    pub scatter: Vec<Scatter>,
}

impl Learned {
    /// A shop that has learned nothing yet.
    #[must_use]
    pub const fn nothing() -> &'static Self {
        static NOTHING: Learned = Learned { values: Vec::new(), covariance: Vec::new(), scatter: Vec::new() };
        &NOTHING
    }

    /// Place of a value.
    #[must_use]
    pub fn position(&self, key: &str) -> Option<usize> {
        self.values.iter().position(|v| v.key == key)
    }

    /// A scatter figure, or the one that a new shop starts with.
    #[must_use]
    pub fn scatter_sd(&self, key: &str, new_shop: f64) -> f64 {
        self.scatter.iter().find(|s| s.key == key).map_or(new_shop, |s| s.sd)
    }
}
