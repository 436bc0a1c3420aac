//! What the shop has learned of its models and of its hands, as the prior of the next job.
//!
//! Three levels are told apart. What a *piece* deviates is its own affair; what a *job* deviates (today's mix, today's
//! hand) is shared by its clubs and forgotten with it; what the *shop* deviates (a model's offset, a tape's mass per
//! area) is carried from job to job with its joint covariance, and slides slowly back toward the prior of a new shop.

mod key;
mod say;
mod told;

pub use key::{LearnedKey, ScatterKey, Scattered, UnknownKey, ValueKey};
pub use say::{LearnedUnit, LearnedWhat, Said, say};
pub use told::BesideTold;
pub(crate) use told::{CAP_SD_MM, GRIP_CENTRE_SD_MM, TAPE_SHARE_SD, Tied, ferrule_key};

use crate::told::ToldFigure;
use serde::{Deserialize, Serialize};
use trade::adhesive::AdhesiveModel;
use trade::error::TradeError;
use trade::kind::closed_list;
use utoipa::ToSchema;

/// Observations that a hand's figure must be worth before it is used.
pub(crate) const FEW_READINGS: f64 = 12.0;
/// Suffix of the deviations that belong to one job and are not carried.
pub const JOB_LEVEL: &str = "@job";
/// How much of what was learned of a value is kept from one job that has it to the next; the rest slides back toward
/// what a new shop knows. Half is kept over 34 jobs (derived: ln ½ / ln 0.98). A choice, no source.
pub const KEPT_PER_JOB: f64 = 0.98;
/// Share of a new scale's offset that is its habit, in standard deviations; the rest is today's. Common practice, no
/// source.
pub(crate) const HABIT_SHARE: f64 = std::f64::consts::FRAC_1_SQRT_2;
/// How far a balance scale may drift one way over a day of work in a shop that has not learned it, points (common practice, no
/// source).
pub(crate) const DRIFT_DAY_SD_POINTS: f64 = 0.15;
/// How much longer the free shaft acts than it is because a clamp gives, mm, and the same of a grip held with it: mean and
/// standard deviation (judgements, no source: a shop's own readings tell).
pub(crate) const CLAMP_GIVES_MM: (f64, f64) = (4.0, 4.0);
pub(crate) const GRIP_GIVES_MM: (f64, f64) = (8.0, 6.0);
/// Most jobs that a value names as what it was learned from.
pub(crate) const JOBS_NAMED: usize = 12;

closed_list! {
    /// Why what the shop knows has changed.
    LearnedCause {
        /// A job was finished.
        Job = "job";
        /// The owner reset something.
        Reset = "reset";
        /// The owner locked a value.
        Pin = "pin";
        /// The owner let a value learn again.
        Unpin = "unpin";
        /// A builder said what he knows.
        Told = "told";
        /// What a builder said was withdrawn.
        Withdrawn = "withdrawn";
        /// The shop does not want to be asked what it knows.
        NotAsked = "not_asked";
    }
}

/// A job that a value was learned from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LearnedFrom {
    /// Running number of the job.
    pub job: i64,
    /// Numbers of the clubs that have a part in it.
    pub clubs: Vec<String>,
}

/// One value of the shop that its readings have told something about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LearnedValue {
    /// What it is of, as [`ValueKey`] writes it: `delta:MODEL`, `grip_centre:MODEL`, `cap:MODEL`, `shaft_centre:MODEL`,
    /// `shaft_cut:MODEL`, `stiffness:MODEL`, `stiffness_tilt:MODEL`, `clamp_gives`, `grip_gives`, `adhesive:CODE`, `tape:CODE`, `solvent`, `usual_offset:SCALE`.
    pub key: String,
    /// Mean deviation from the model's own figure: inches, grams, for tape a share of its mass, for a scale its unit.
    pub mean_shift: f64,
    /// Standard deviation that a new shop starts with, same unit.
    pub prior_sd: f64,
    /// Clubs that it was learned from.
    pub clubs: i64,
    /// Jobs that it was learned from.
    #[serde(default)]
    pub jobs: i64,
    /// The latest of those jobs, the newest last.
    #[serde(default)]
    pub from: Vec<LearnedFrom>,
    /// Whether the owner has fixed it: it is used as it stands and learns nothing.
    #[serde(default)]
    pub pinned: bool,
}

/// How far single pieces, jobs, readings or hands scatter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Scatter {
    /// What scatters, as [`ScatterKey`] writes it: `adhesive.piece`, `adhesive.job`, `tape.piece` and so on; `noise:SCALE`
    /// for one re-seated reading, `today:SCALE` for what a scale is off from day to day, `drift:SCALE` for how far
    /// it drifts one way over a day, `hand:NAME` for how many times as much as the
    /// shop's the readings of one hand scatter.
    pub key: String,
    /// Standard deviation, in the unit of the value.
    pub sd: f64,
    /// Standard deviation that a new shop starts with.
    pub prior_sd: f64,
    /// How many independent observations it is worth, those of the new shop's figure left out.
    pub weight: f64,
    /// Whether the owner has fixed it.
    #[serde(default)]
    pub pinned: bool,
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
    /// What builders said, apart from what was learned.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub told: Vec<ToldFigure>,
    /// Whether the shop does not want to be asked for that.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub not_asked: bool,
}

/// What a scale is expected to be off by today.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Habit {
    pub mean: f64,
    pub sd: f64,
    /// The part of `sd` that is today's own.
    pub today_sd: f64,
}

/// Key under which a scale's usual offset is carried.
pub(crate) fn habit_key(scale: &str) -> String {
    ValueKey::UsualOffset(scale.to_owned()).to_string()
}

impl Learned {
    /// A shop that has learned nothing yet.
    #[must_use]
    pub const fn nothing() -> &'static Self {
        static NOTHING: Learned = Learned {
            values: Vec::new(),
            covariance: Vec::new(),
            scatter: Vec::new(),
            told: Vec::new(),
            not_asked: false,
        };
        &NOTHING
    }

    /// What one joint takes of an adhesive, in grams, where the shop has learned it: the model's figure and what its own
    /// clubs differ from that.
    #[must_use]
    pub fn joint_mass_g(&self, adhesive: &AdhesiveModel) -> Option<f64> {
        let at = self.position(&ValueKey::Adhesive(adhesive.code.clone()).to_string())?;
        Some(adhesive.joint_mass_g + self.values[at].mean_shift)
    }

    /// Place of a value.
    #[must_use]
    pub fn position(&self, key: &str) -> Option<usize> {
        self.values.iter().position(|v| v.key == key)
    }

    /// Standard deviation of a value as learned.
    #[must_use]
    pub fn sd(&self, key: &str) -> Option<f64> {
        self.position(key).map(|at| self.covariance[at][at].max(0.0).sqrt())
    }

    /// A scatter figure, or the one that a new shop starts with; also where that has been stated differently since.
    #[must_use]
    pub fn scatter_sd(&self, key: &str, new_shop: f64) -> f64 {
        self.scatter.iter().find(|s| s.key == key && s.prior_sd == new_shop).map_or(new_shop, |s| s.sd)
    }

    /// What a scale will be off by today, given what the shop states of it.
    pub(crate) fn habit(&self, scale: &str, stated_sd: f64) -> Habit {
        let today_sd = self.scatter_sd(
            &ScatterKey::Today(scale.to_owned()).to_string(),
            stated_sd * (1.0 - HABIT_SHARE.powi(2)).sqrt(),
        );
        match self.habit_position(scale, stated_sd) {
            Some(at) => Habit {
                mean: self.values[at].mean_shift,
                sd: self.covariance[at][at].max(0.0).sqrt().hypot(today_sd),
                today_sd,
            },
            None => Habit { mean: 0.0, sd: (stated_sd * HABIT_SHARE).hypot(today_sd), today_sd },
        }
    }

    /// Place of a scale's usual offset, unless the shop has stated the scale differently since it was learned.
    pub(crate) fn habit_position(&self, scale: &str, stated_sd: f64) -> Option<usize> {
        self.position(&habit_key(scale)).filter(|at| self.values[*at].prior_sd == stated_sd * HABIT_SHARE)
    }

    /// How many times as much as the shop's the readings of a hand scatter; 1 until enough of them were seen.
    #[must_use]
    pub fn hand(&self, name: &str) -> f64 {
        let key = ScatterKey::Hand(name.to_owned()).to_string();
        let known = self.scatter.iter().find(|s| s.key == key && (s.weight >= FEW_READINGS || s.pinned));
        known.map_or(1.0, |s| s.sd)
    }

    /// Forgets one value or scatter figure: it starts again as in a new shop. What others learned by way of it stays.
    ///
    /// # Errors
    /// A key that is not there.
    pub fn reset(&mut self, key: &str) -> Result<(), TradeError> {
        if let Some(at) = self.position(key) {
            self.values.remove(at);
            self.covariance.remove(at);
            self.covariance.iter_mut().for_each(|row| _ = row.remove(at));
            return Ok(());
        }
        let at = self.scatter.iter().position(|s| s.key == key).ok_or_else(|| self.unknown(key))?;
        self.scatter.remove(at);
        Ok(())
    }

    /// Fixes a value or lets it learn again. A fixed value is used as it stands, with the band that it has; it is cut
    /// loose from the others, since they go on learning and it does not.
    ///
    /// # Errors
    /// A key that is not there.
    pub fn pin(&mut self, key: &str, pinned: bool) -> Result<(), TradeError> {
        if let Some(at) = self.position(key) {
            self.values[at].pinned = pinned;
            if pinned {
                for other in (0..self.values.len()).filter(|other| *other != at) {
                    self.covariance[at][other] = 0.0;
                    self.covariance[other][at] = 0.0;
                }
            }
            return Ok(());
        }
        let at = self.scatter.iter().position(|s| s.key == key).ok_or_else(|| self.unknown(key))?;
        self.scatter[at].pinned = pinned;
        Ok(())
    }

    fn unknown(&self, key: &str) -> TradeError {
        let values = self.values.iter().map(|v| v.key.clone());
        let known: Vec<String> = values.chain(self.scatter.iter().map(|s| s.key.clone())).collect();
        let known = Some(known).filter(|known| !known.is_empty());
        TradeError::refused(LearnedFault::Unknown { key: key.to_owned(), known })
    }
}

fact::facts! {
    /// What is refused of the learned values.
    pub(crate) enum LearnedFault: "learned_fault" {
        Unknown { key: String, known: Option<Vec<String>> },
    }
}
