//! What a job's belief must know of the shop's scales: the checks of its days, and which scales are not trusted.

use super::event::{CheckRead, ScaleEvent};
use super::trust::Trust;
use crate::assembly::{Assembly, CHECK_WEIGHT};
use crate::belief::BAND_95;
use crate::error::WorkshopError;
use crate::job::Job;
use crate::kind::Hand;
use crate::learned::Learned;
use crate::model::Library;
use crate::sheet::{SetRule, Sheet};
use crate::shop::Shop;
use estimation::{DOUBT_LIMIT, JobModel, Probe, Quantity};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Serialize;
use utoipa::ToSchema;

/// A check as the belief takes it.
#[derive(Debug, Clone, PartialEq)]
pub struct WatchedCheck {
    /// Identity.
    pub id: String,
    /// Key of the scale.
    pub scale: String,
    /// When.
    pub at: Timestamp,
    /// Who.
    pub by: String,
    /// What was put on and what the scale showed.
    pub read: CheckRead,
}

impl WatchedCheck {
    /// A check among a scale's events.
    #[must_use]
    pub fn of(event: &ScaleEvent, read: &CheckRead) -> Self {
        Self {
            id: event.id.0.clone(),
            scale: event.scale.clone(),
            at: event.at,
            by: event.by.clone(),
            read: read.clone(),
        }
    }

    /// Key of the deviation that all readings of this check weight share: of the shop's own the one that a job's own
    /// readings of it have.
    pub(crate) fn shared_key(&self) -> String {
        if self.read.standard == CHECK_WEIGHT {
            CHECK_WEIGHT.into()
        } else {
            format!("{CHECK_WEIGHT}:{}", self.read.standard)
        }
    }
}

/// The shop's scales as one job sees them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ScaleWatch {
    /// Checks of the job's days that were not read at its own bench.
    pub checks: Vec<WatchedCheck>,
    /// Scales that are not trusted, by key.
    pub not_trusted: Vec<(String, Trust)>,
    /// Whether the reference club was read on a day on which the bench reads: what the balance scale was off by is then
    /// the same for both.
    pub reference_same_day: bool,
}

impl ScaleWatch {
    /// No check, and every scale trusted.
    #[must_use]
    pub const fn nothing() -> &'static Self {
        static NOTHING: ScaleWatch =
            ScaleWatch { checks: Vec::new(), not_trusted: Vec::new(), reference_same_day: false };
        &NOTHING
    }

    /// Why a scale is not trusted; none where it is.
    #[must_use]
    pub fn against(&self, scale: &str) -> Option<&Trust> {
        self.not_trusted.iter().find(|(key, _)| key == scale).map(|(_, trust)| trust)
    }

    /// By how much more a scale may be off than it states itself, one standard deviation; 0 for a trusted one.
    pub(crate) fn extra_sd(&self, scale: &str) -> f64 {
        self.against(scale).map_or(0.0, |trust| trust.extra_sd)
    }
}

/// What the belief of a job begins with: what a scale shows too much now.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct TodayOffset {
    /// Mean, in the scale's unit.
    pub offset: f64,
    /// Half width of its 95 % band.
    pub offset_band: f64,
    /// Half width without the checks: what the shop has learned of the scale, or states.
    pub without_checks_band: f64,
    /// Checks that went into it.
    pub checks: usize,
}

/// What a job that began now would believe of a scale's offset, by the same arithmetic as the bench; none for an
/// instrument that the belief does not know.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn today_offset(
    shop: &Shop,
    learned: &Learned,
    watch: &ScaleWatch,
    scale: &str,
) -> Result<Option<TodayOffset>, WorkshopError> {
    let of_swing_weight = scale == shop.balance_scale.key;
    if !of_swing_weight && scale != shop.mass_scale.key {
        return Ok(None);
    }
    let (job, library) = (no_job(), Library::default());
    let assembly = Assembly { job: &job, library: &library, shop, learned, watch };
    // A weight of nothing shows what the scale is off by now, drift and all.
    let quantity = if of_swing_weight {
        Quantity::CheckWeight { true_points: 0.0, mass_g: 0.0, shared: None }
    } else {
        Quantity::CheckMass { true_g: 0.0, shared: None }
    };
    let probe = Probe::of_job(quantity).on_scale(scale);
    let mut model: JobModel = assembly.job_model()?;
    let before = model.solve(&[])?.answer(&probe)?;
    assembly.let_drift(&mut model, &[]);
    let observations = assembly.observations(&[]);
    // A check that the belief would doubt is doubted here as well.
    let after = model.solve_with_doubt(&observations, DOUBT_LIMIT)?;
    let believed = |o: &&estimation::Observation| !after.set_aside.contains(&o.id);
    let now = after.belief.answer(&probe)?;
    Ok(Some(TodayOffset {
        offset: now.mean,
        offset_band: BAND_95 * now.sd,
        without_checks_band: BAND_95 * before.sd,
        checks: observations.iter().filter(believed).filter(|o| o.scale.as_deref() == Some(scale)).count(),
    }))
}

/// A job without clubs: what is believed of the scales alone.
fn no_job() -> Job {
    let sheet = Sheet {
        player: String::new(),
        due: Date::ZERO,
        hand: Hand::Right,
        note: String::new(),
        rule: SetRule::ConstantSwingWeight,
        written: String::new(),
        reference: None,
        clubs: Vec::new(),
    };
    Job::of_sheet(&sheet, Vec::new(), Timestamp::UNIX_EPOCH)
}
