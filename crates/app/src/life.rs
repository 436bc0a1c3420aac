//! The life of a part, one entry after the other with who and when; what is done with it by hand is a [`Deed`].

mod action;
mod deed;
mod fault;

use crate::look_up::LookUp;
pub use action::{AskedAction, Deed, Given, Note, PartAction, PartDeed, PartFigures, Pulled};
use trade::error::Noun;

use crate::{App, AppError};
use desk::stock_csv;
use serde::Serialize;
use store::Tx;
use trade::fit;
use trade::job::JobClub;
use trade::life::{LifeEntry, LifeTold, without_exchanges};
use trade::part::{Part, PartState};
use utoipa::ToSchema;

/// An entry of a life, also as a fact, whose sentence an answer has beside it as `words`.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct LifeLine {
    /// What was done with the part, when and by whom.
    #[serde(flatten)]
    pub entry: LifeEntry,
    /// What was done, as a sentence can be made of it.
    pub told: LifeTold,
}

/// A part with its life.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct PartLife {
    /// The part as it is now.
    pub part: Part,
    /// Running number of the job that holds or used it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Number of the club that holds or used it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub club: Option<String>,
    /// Place of that club in the tray.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// Its life, the oldest entry first.
    pub life: Vec<LifeLine>,
}

impl App {
    /// A part with its life.
    ///
    /// # Errors
    /// No such part; what the store says.
    pub async fn part_life(&self, code: &str) -> Result<PartLife, AppError> {
        let mut tx = self.store.read().await?;
        let part = part_of(&mut tx, code).await?;
        let life = without_exchanges(tx.life(&part.id).await?);
        let life = life.into_iter().map(|entry| LifeLine { told: entry.told(), entry }).collect();
        let job = match &part.job {
            Some(id) => tx.job(id).await?,
            None => None,
        };
        let club = job.as_ref().and_then(|j| part.club.as_ref().and_then(|id| j.club(id)));
        Ok(PartLife {
            job: job.as_ref().map(|j| j.number),
            club: club.map(|c| c.target.number.clone()),
            slot: club.map(|c| c.slot),
            life,
            part,
        })
    }

    /// Clubs without a plan that a free part could be reserved for: job, place in its tray, number.
    ///
    /// # Errors
    /// No such part; what the store says.
    pub async fn clubs_for(&self, code: &str) -> Result<Vec<(i64, i64, String)>, AppError> {
        let mut tx = self.store.read().await?;
        let part = part_of(&mut tx, code).await?;
        if part.state != PartState::Free || part.count.is_some() {
            return Ok(Vec::new());
        }
        let library = crate::load_library(&mut tx).await?;
        let mut found = Vec::new();
        for job in crate::needs::lacking(&mut tx).await?.into_iter().filter(|j| part.may_go_to(j.sheet.customer)) {
            let reserved = crate::needs::reserved(&mut tx, &job.id).await?;
            let taken =
                |club: &JobClub| reserved.iter().any(|p| p.kind == part.kind && p.club.as_ref() == Some(&club.id));
            let clubs = job.clubs.iter().filter(|c| c.plan.is_none() && fit::serves(&part, &c.target, &library));
            found.extend(clubs.filter(|c| !taken(c)).map(|c| (job.number, c.slot, c.target.number.clone())));
        }
        Ok(found)
    }

    /// The life of a part as a CSV file.
    ///
    /// # Errors
    /// As [`Self::part_life`].
    pub async fn export_life(&self, code: &str) -> Result<String, AppError> {
        let life: Vec<LifeEntry> = self.part_life(code).await?.life.into_iter().map(|l| l.entry).collect();
        Ok(stock_csv::life(&life))
    }
}

async fn part_of(tx: &mut Tx, code: &str) -> Result<Part, AppError> {
    tx.part_by_code(code.trim()).await?.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))
}
