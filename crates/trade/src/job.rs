//! A job: the work on one approved sheet, club by club.

use crate::id::{ClubId, JobId, SheetId};
use crate::kind::closed_list;
use crate::plan::ClubPlan;
use crate::sheet::{Sheet, SheetClub};
use crate::step::Step;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// Where a job stands.
    JobState {
        /// The sheet is approved, no parts are chosen.
        Open = "open";
        /// A plan is accepted and its parts are held.
        Planned = "planned";
        /// Every club is handed over.
        Finished = "finished";
        /// Given up; its parts are free again.
        Dropped = "dropped";
    }
}

impl JobState {
    /// The states of jobs that are not over.
    pub const UNDER_WAY: [Self; 2] = [Self::Open, Self::Planned];
}

/// A job with its clubs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Job {
    /// Identity.
    pub id: JobId,
    /// The running number that people say.
    pub number: i64,
    /// The sheet it was made from.
    pub sheet_id: SheetId,
    /// The sheet as it was approved. A later change of the sheet does not reach back into a job.
    pub sheet: Sheet,
    /// Where it stands.
    pub state: JobState,
    /// Its own copy of the shop's steps.
    pub steps: Vec<Step>,
    /// When it was made.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// Its clubs, in the order of the tray.
    pub clubs: Vec<JobClub>,
    /// Goes up by one with every change of the job itself.
    pub version: i64,
}

/// One club of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct JobClub {
    /// Identity.
    pub id: ClubId,
    /// Place in the tray, from 1.
    pub slot: i64,
    /// What its card says when it is scanned, for example `J42-3`.
    pub card: String,
    /// What it is to become.
    pub target: SheetClub,
    /// What was chosen for it, once a plan is accepted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plan: Option<ClubPlan>,
    /// Goes up by one with every reading and change of this club.
    pub version: i64,
}

impl Job {
    /// A sheet as the job that it would become, to be weighed up before anything is saved. It has no number.
    #[must_use]
    pub fn of_sheet(sheet: &Sheet, steps: Vec<Step>, made_at: Timestamp) -> Self {
        let clubs = (1_i64..)
            .zip(&sheet.clubs)
            .map(|(slot, target)| JobClub {
                id: ClubId(format!("slot-{slot}")),
                slot,
                card: String::new(),
                target: target.clone(),
                plan: None,
                version: 0,
            })
            .collect();
        Self {
            id: JobId("sheet".into()),
            number: 0,
            sheet_id: SheetId("sheet".into()),
            sheet: sheet.clone(),
            state: JobState::Open,
            steps,
            made_at,
            clubs,
            version: 0,
        }
    }

    /// The step with this key.
    #[must_use]
    pub fn step(&self, key: &str) -> Option<&Step> {
        self.steps.iter().find(|s| s.key == key)
    }

    /// The club with this identity.
    #[must_use]
    pub fn club(&self, id: &ClubId) -> Option<&JobClub> {
        self.clubs.iter().find(|c| &c.id == id)
    }
}
