//! The frequencies of a set, and the tip trims that bring its clubs to a slope.

use crate::kept_job::KeptJob;
use crate::need::{need_at_bench, need_name};
use crate::{App, AppError};
use bench::trim_to_cpm::{STEP_CPM, SetCpm, Slope, SlopeAsked, may_be_trimmed, set_cpm, with_tip_trim};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::event_kind::EventKind;
use trade::job::JobClub;
use trade::plan::ClubPlan;
use trade::reading::What;
use utoipa::ToSchema;

/// The slope of a set as somebody asks for it; what is left out is as usual for the job.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct AskCpm {
    /// Which law; none: what the sheet asks, or the usual step where it asks nothing.
    pub slope: Option<Slope>,
    /// Cycles a minute for a half inch less of length.
    pub step_cpm: Option<f64>,
    /// What the first club of the tray is to read.
    pub level_cpm: Option<f64>,
}

/// The tip trim of one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TipTrimOf {
    /// Place in the tray.
    pub slot: i64,
    /// Cut off the tip in all; what that is more comes off the butt less.
    #[schema(minimum = 0, maximum = 300)]
    pub tip_trim_mm: f64,
}

/// Taking tip trims into the plans of a set, before the cut.
#[derive(Debug, Clone, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeTrims {
    /// Which clubs are trimmed how; left out: all that is advised for the slope.
    #[serde(default)]
    pub trims: Option<Vec<TipTrimOf>>,
    /// What the clubs are to read, where trims are left out; left out as well: as the sheet asks, or the usual step.
    #[serde(default)]
    pub slope: Option<Slope>,
    /// Cycles a minute for a half inch less of length.
    #[serde(default)]
    pub step_cpm: Option<f64>,
    /// What the first club of the tray is to read.
    #[serde(default)]
    pub level_cpm: Option<f64>,
    /// Who.
    pub by: String,
}

/// What was taken, all or none.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct TrimsTaken {
    /// The tip trims that the plans have now.
    pub taken: Vec<TipTrimOf>,
    /// Those that they had before: the same request with these takes it back.
    pub before: Vec<TipTrimOf>,
    /// The frequencies of the set with them.
    pub cpm: SetCpm,
}

/// Steps of a set beyond this are slips of the key, cycles a half inch.
const STEP_MOST_CPM: f64 = 30.0;

impl App {
    /// What each club of a job will read in the clamp, what it is to read, and the tip trim that brings it there.
    ///
    /// # Errors
    /// No such job; a slope that no set has; figures that the belief cannot work with; what the store says.
    pub async fn set_cpm(&self, number: i64, ask: AskCpm) -> Result<SetCpm, AppError> {
        let job = self.job_file(number).await?;
        asked_cpm(&job, ask)
    }

    /// Takes tip trims into the plans of clubs whose shafts are not cut yet, all or none.
    ///
    /// # Errors
    /// Nothing to trim; a club that is cut, or whose tip is not trimmed; a trim that its shaft does not allow; nobody named; what the
    /// store says.
    pub async fn take_trims(&self, number: i64, take: &TakeTrims) -> Result<TrimsTaken, AppError> {
        need_name(&take.by)?;
        let ask = AskCpm { slope: take.slope, step_cpm: take.step_cpm, level_cpm: take.level_cpm };
        let mut tx = self.store.write().await?.signed(&take.by);
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let trims = match &take.trims {
            Some(trims) => trims.clone(),
            None => {
                let advised = asked_cpm(&file, ask)?.clubs.into_iter();
                let of =
                    |slot, trim: bench::trim_to_cpm::TipTrimChange| TipTrimOf { slot, tip_trim_mm: trim.tip_trim_mm };
                advised.filter_map(|club| Some(of(club.slot, club.trim?))).collect()
            }
        };
        if trims.is_empty() {
            return Err(AppError::conflict(TrimFault::Nothing { job: number }));
        }
        let mut before = Vec::with_capacity(trims.len());
        {
            let believed = file.believe()?;
            for (i, trim) in trims.iter().enumerate() {
                let club = file.club_at(trim.slot)?;
                if trims[..i].iter().any(|other| other.slot == trim.slot) {
                    return Err(AppError::invalid(TrimFault::Twice { slot: trim.slot }));
                }
                let fixed = || AppError::conflict(TrimFault::Fixed { number: club.target.number.clone() });
                let plan = club.plan.as_ref().filter(|_| may_be_trimmed(&believed, club)).ok_or_else(fixed)?;
                before.push((club, plan, with_tip_trim(&file.library, club, plan, trim.tip_trim_mm)?));
            }
        }
        for (club, old, plan) in &before {
            let changed = JobClub { plan: Some(plan.clone()), ..(*club).clone() };
            tx.save_club(&changed, &file.job.id).await?;
            let note = serde_json::json!({ "tip_trim_mm": plan.tip_trim_mm, "was_mm": old.tip_trim_mm });
            self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::TipTrimmed, &take.by, note).await?;
        }
        let of = |(club, old, _): &(&JobClub, &ClubPlan, ClubPlan)| TipTrimOf {
            slot: club.slot,
            tip_trim_mm: old.tip_trim_mm,
        };
        let before = before.iter().map(of).collect();
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(TrimsTaken { taken: trims, before, cpm: self.set_cpm(number, ask).await? })
    }
}

/// The frequencies of a job for a slope as it is asked for.
fn asked_cpm(job: &KeptJob, ask: AskCpm) -> Result<SetCpm, AppError> {
    let usual = SlopeAsked::usual(&job.job);
    let limit = |name: &str, value: Option<f64>, low: f64, high: f64| -> Result<(), TradeError> {
        value.map_or(Ok(()), |value| trade::error::within(name, value, low, high, "cpm").map(|_| ()))
    };
    let (low, high) = What::Cpm.possible();
    limit("level_cpm", ask.level_cpm, low, high)?;
    limit("step_cpm", ask.step_cpm, -STEP_MOST_CPM, STEP_MOST_CPM)?;
    let asked = SlopeAsked {
        slope: ask.slope.unwrap_or(usual.slope),
        step_cpm: ask.step_cpm.unwrap_or(STEP_CPM),
        level_cpm: ask.level_cpm,
    };
    Ok(set_cpm(&job.believe()?, asked)?)
}

fact::facts! {
    /// What is refused of tip trims.
    pub(crate) enum TrimFault: "trim_fault" {
        Nothing { job: i64 },
        Twice { slot: i64 },
        Fixed { number: String },
    }
}
