//! What a scale shows too much now, as a job that began today would believe it.

use crate::assembly::Assembly;
use crate::belief::BAND_95;
use crate::learned::Learned;
use crate::scale_watch::ScaleWatch;
use estimation::{DOUBT_LIMIT, JobModel, Probe, Quantity};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Serialize;
use trade::error::TradeError;
use trade::job::Job;
use trade::kind::Hand;
use trade::model::Library;
use trade::sheet::{SetRule, Sheet};
use trade::shop::Shop;
use utoipa::ToSchema;

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
) -> Result<Option<TodayOffset>, TradeError> {
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
        customer: None,
        quote: Vec::new(),
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
