//! A job: the work on one approved sheet, club by club.

use crate::club::{ClubFigure, Made};
use crate::id::{ClubCode, ClubId, JobId, PartId, SheetId};
use crate::kind::{Role, closed_list};
use crate::model::PartKind;
use crate::plan::{ClubPlan, PlannedPart};
use crate::reading::{Reading, What};
use crate::sheet::{Sheet, SheetClub};
use crate::step::{NEW_CLUB, Step};
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
    /// The work on a club that was there before; none where the club is built new.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub work: Option<ClubWork>,
    /// What was chosen for it, once a plan is accepted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plan: Option<ClubPlan>,
    /// Goes up by one with every reading and change of this club.
    pub version: i64,
}

/// Work on a club that was there before the job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubWork {
    /// Code of the club.
    pub club: ClubCode,
    /// Key of the kind of job: `regrip`.
    pub kind: String,
    /// Whether it is to keep the swing weight that it comes with: what is read of it on arrival is then its target.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub keeps_swing_weight: bool,
    /// Whether its joint is opened, though its head and shaft stay.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub opens_joint: bool,
    /// What the piece weighs that lengthens its shaft, where it is lengthened.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub extension_mass_g: Option<f64>,
    /// What it was made of when the job was made.
    pub came: Made,
    /// What had been read of it by then.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub known: Vec<ClubFigure>,
}

impl ClubWork {
    /// Whether a kind of part stays on the club: the plan has the very parts that it came with.
    #[must_use]
    pub fn keeps(&self, plan: &ClubPlan, kind: PartKind) -> bool {
        let of = |pieces: &ClubPlan| pieces.parts.iter().filter(|p| p.kind == kind).cloned().collect::<Vec<_>>();
        of(plan) == of(&self.came.pieces)
    }

    /// Whether the joint of head and shaft is left as it is.
    #[must_use]
    pub fn keeps_joint(&self, plan: &ClubPlan) -> bool {
        !self.opens_joint
            && [PartKind::Head, PartKind::Adapter, PartKind::Shaft, PartKind::Ferrule, PartKind::TipWeight]
                .into_iter()
                .all(|kind| self.keeps(plan, kind))
    }
}

impl JobClub {
    /// Identity, within the belief, of this club as it came.
    #[must_use]
    pub fn came_id(&self) -> ClubId {
        ClubId(format!("{}:came", self.id))
    }

    /// The parts of its plan that come from stock: not those that it came with.
    pub fn parts_from_stock(&self) -> impl Iterator<Item = &PartId> {
        let came = self.work.as_ref().map(|work| &work.came.pieces.parts);
        let of_club = move |part: &PlannedPart| came.is_some_and(|parts| parts.contains(part));
        self.plan.iter().flat_map(|plan| &plan.parts).filter(move |part| !of_club(part)).map(|part| &part.part)
    }

    /// The club as it came, as the belief sees it beside the club that it becomes; none for a new one.
    #[must_use]
    pub fn as_it_came(&self) -> Option<Self> {
        let work = self.work.as_ref()?;
        Some(Self {
            id: self.came_id(),
            target: work.came.row.clone(),
            work: None,
            plan: Some(work.came.pieces.clone()),
            ..self.clone()
        })
    }
}

impl Job {
    /// The steps that one of its clubs goes through.
    pub fn steps_of<'a>(&'a self, club: &'a JobClub) -> impl Iterator<Item = &'a Step> {
        let kind = club.work.as_ref().map_or(NEW_CLUB, |work| work.kind.as_str());
        self.steps.iter().filter(move |step| step.is_of(kind))
    }

    /// Whether a step is the last that one of its clubs goes through.
    #[must_use]
    pub fn is_last_of(&self, club: &JobClub, step: &Step) -> bool {
        self.steps_of(club).last().is_some_and(|last| last.key == step.key)
    }

    /// Whether a step is the last for any club: there it leaves the shop.
    #[must_use]
    pub fn is_last(&self, step: &Step) -> bool {
        self.steps.last().is_some_and(|last| last.key == step.key)
            || self.clubs.iter().any(|club| self.is_last_of(club, step))
    }

    /// Whether a reading is of a club as it came, before anything was done with it.
    #[must_use]
    pub fn is_of_club_as_it_came(&self, reading: &Reading) -> bool {
        self.step(&reading.step).is_some_and(|step| step.before)
            && self.club(&reading.club).is_some_and(|club| club.work.is_some())
    }

    /// The job with the swing weight that was read on arrival as the target of each club that keeps it: the last one that
    /// was read of the whole club.
    #[must_use]
    pub fn with_targets_read(mut self, readings: &[Reading]) -> Self {
        let standing = crate::reading::standing(readings);
        let read: Vec<(usize, f64)> = (0..self.clubs.len())
            .filter_map(|i| {
                let club = &self.clubs[i];
                club.work.as_ref().filter(|work| work.keeps_swing_weight)?;
                let whole = |r: &&&Reading| {
                    r.club == club.id
                        && r.what == What::SwingWeight
                        && r.on.contains(&Role::Grip)
                        && self.is_of_club_as_it_came(r)
                };
                Some((i, standing.iter().rev().find(whole)?.value))
            })
            .collect();
        for (i, points) in read {
            self.clubs[i].target.swing_weight_points = points;
        }
        self
    }

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
                work: None,
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
