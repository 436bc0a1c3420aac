//! The grip sizes of a set, and the layers of tape that bring its grips there.

use crate::need::{need_at_bench, need_name};
use crate::{App, AppError};
use bench::remedy::Progress;
use bench::wrap_advice::GripSizeOfClub;
use serde::{Deserialize, Serialize};
use trade::event_kind::EventKind;
use trade::job::JobClub;
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// The layers of tape of one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WrapsOf {
    /// Place in the tray.
    pub slot: i64,
    /// The layers that lie under its grip.
    pub wraps: Wraps,
}

/// Laying other layers of tape than the sheet says, before the grips go on.
#[derive(Debug, Clone, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeWraps {
    /// Which clubs get which layers; left out: all that is advised for the sizes that are asked.
    #[serde(default)]
    pub wraps: Option<Vec<WrapsOf>>,
    /// Who.
    pub by: String,
}

/// What was taken, all or none.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct WrapsTaken {
    /// The layers that the clubs get now.
    pub taken: Vec<WrapsOf>,
    /// Those that they had before: the same request with these takes it back.
    pub before: Vec<WrapsOf>,
    /// The grips of the set with them.
    pub clubs: Vec<GripSizeOfClub>,
}

/// Nobody lays more, of any sort.
const LAYERS_MAX: u8 = 20;

impl App {
    /// How thick the grip of each club of a job will be, and the tape that brings it to its size.
    ///
    /// # Errors
    /// No such job; figures that the belief cannot work with; what the store says.
    pub async fn grip_sizes(&self, number: i64) -> Result<Vec<GripSizeOfClub>, AppError> {
        Ok(self.job_file(number).await?.believe()?.grip_sizes()?)
    }

    /// Lays other layers of tape under grips that are not on yet, all or none. The job's copy of its sheet changes with it, so that
    /// forecast, list of strips and record speak of the tape that lies there.
    ///
    /// # Errors
    /// Nothing to lay; a grip that is on; nobody named; what the store says.
    pub async fn take_wraps(&self, number: i64, take: &TakeWraps) -> Result<WrapsTaken, AppError> {
        need_name(&take.by)?;
        let mut tx = self.store.write().await?.signed(&take.by);
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let mut changed = Vec::new();
        let taken = {
            let believed = file.believe()?;
            let taken = match &take.wraps {
                Some(wraps) => wraps.clone(),
                None => {
                    let advised = believed.grip_sizes()?.into_iter();
                    advised.filter_map(|club| Some(WrapsOf { slot: club.slot, wraps: club.advised?.wraps })).collect()
                }
            };
            if taken.is_empty() {
                return Err(AppError::conflict(WrapFault::Nothing { job: number }));
            }
            for (i, of) in taken.iter().enumerate() {
                let club = file.club_at(of.slot)?;
                let wraps = of.wraps;
                if [wraps.base, wraps.full, wraps.lower_hand].iter().any(|n| *n > LAYERS_MAX) {
                    return Err(AppError::invalid(WrapFault::TooMany { slot: of.slot, most: i64::from(LAYERS_MAX) }));
                }
                if taken[..i].iter().any(|other| other.slot == of.slot) {
                    return Err(AppError::invalid(WrapFault::Twice { slot: of.slot }));
                }
                if club.plan.is_none() || Progress::of(&believed, club).gripped {
                    return Err(AppError::conflict(WrapFault::On { number: club.target.number.clone() }));
                }
                changed.push((club, of.wraps));
            }
            taken
        };
        for (club, wraps) in &changed {
            let mut with = (*club).clone();
            with.target.wraps = *wraps;
            tx.save_club(&with, &file.job.id).await?;
            let note = serde_json::json!({ "wraps": wraps, "were": club.target.wraps });
            self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::WrapsChanged, &take.by, note).await?;
        }
        let of = |(club, _): &(&JobClub, Wraps)| WrapsOf { slot: club.slot, wraps: club.target.wraps };
        let before = changed.iter().map(of).collect();
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(WrapsTaken { taken, before, clubs: self.grip_sizes(number).await? })
    }
}

fact::facts! {
    /// What is refused of layers of tape.
    pub(crate) enum WrapFault: "wrap_fault" {
        Nothing { job: i64 },
        Twice { slot: i64 },
        TooMany { slot: i64, most: i64 },
        On { number: String },
    }
}
