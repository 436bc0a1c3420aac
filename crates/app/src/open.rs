//! What is open on the clubs before a step that cannot be undone: who goes on all the same says why, once for all.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::let_pass::Given;
use crate::need::{need_at_bench, need_name, need_reason};
use crate::{App, AppError};
use bench::belief::Believed;
use bench::club_state::{ClubState, StepStatus};
use bench::open_point::{Final, OpenClub, OpenPoint, open_club};
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::event_kind::EventKind;
use trade::step::Step;
use utoipa::ToSchema;

/// What is open in a set before a step that cannot be undone.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct OpenBefore {
    /// Key of the step; none where no such step is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
    /// What cannot be undone there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub done: Option<Final>,
    /// The clubs with what is open on each, in the order of the tray; those without anything open are left out.
    pub clubs: Vec<OpenClub>,
}

/// Going on with what is open in a set.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PassOpen {
    /// Key of the step that cannot be undone.
    pub step: String,
    /// Places in the tray of the clubs to go on with; left out: all on which something is open.
    #[serde(default)]
    pub slots: Option<Vec<i64>>,
    /// Why, once for all of them; the record keeps it.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who goes on.
    pub by: String,
}

impl App {
    /// What is open on the clubs of a job before one of its steps that cannot be undone, in the order of the tray; clubs
    /// without anything open are left out.
    ///
    /// # Errors
    /// No such job or step; what the store says.
    pub async fn open_before(&self, number: i64, step: &str) -> Result<Vec<OpenClub>, AppError> {
        let job = self.job_file(number).await?;
        let step = job.step(step)?;
        let believed = job.believe()?;
        let states = job.states_of(&believed, self.now())?;
        job.open_on(&believed, &states, step)
    }

    /// The same before the next step that cannot be undone: the first that not every club has done.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn open_next(&self, number: i64) -> Result<OpenBefore, AppError> {
        let job = self.job_file(number).await?;
        let believed = job.believe()?;
        let states = job.states_of(&believed, self.now())?;
        let done = |state: &ClubState, key: &str| {
            let step = state.steps.iter().find(|step| step.key == key);
            step.is_none_or(|step| matches!(step.status, StepStatus::Done | StepStatus::LeftOut))
        };
        let built = || states.iter().filter(|state| state.finish.is_some());
        let next = job.job.steps.iter().find_map(|step| {
            let kind = Final::of(&job.job, step)?;
            built().any(|state| !done(state, &step.key)).then_some((step, kind))
        });
        let Some((step, kind)) = next else { return Ok(OpenBefore { step: None, done: None, clubs: Vec::new() }) };
        let clubs = job.open_on(&believed, &states, step)?;
        Ok(OpenBefore { step: Some(step.key.clone()), done: Some(kind), clubs })
    }

    /// Goes on with what is open in a set, with one reason for all of it: at this step nobody is asked again, until a club
    /// is read once more. Where a joint has not cured, its batch is let pass for what the step needs. Gives what is open.
    ///
    /// # Errors
    /// No such job, step or club; one without anything open; no reason, nobody named; what the store says.
    pub async fn pass_all_open(&self, number: i64, pass: &PassOpen) -> Result<Vec<OpenClub>, AppError> {
        need_reason(&pass.reason)?;
        need_name(&pass.by)?;
        let reason = pass.reason.trim();
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let step = file.step(&pass.step)?;
        let believed = file.believe()?;
        let states = file.states_of(&believed, self.now())?;
        let mut open = file.open_on(&believed, &states, step)?;
        if let Some(slots) = &pass.slots {
            for slot in slots {
                let club = file.club_at(*slot)?;
                if !open.iter().any(|club| club.slot == *slot) {
                    let number = club.target.number.clone();
                    return Err(AppError::conflict(OpenFault::Nothing { number, step: step.label.clone() }));
                }
            }
            open.retain(|club| slots.contains(&club.slot));
        }
        open.retain(|club| club.passed.is_none());
        self.pass_open(&mut tx, &file, step, &open, reason, &pass.by).await?;
        for batch in not_cured(&open) {
            let Some(batch) = file.batches.iter().find(|b| b.number == batch) else { continue };
            let given = Given { strength: step.needs, step: Some(step), reason, by: &pass.by };
            self.let_cure_pass(&mut tx, &file.job.id, batch, given).await?;
        }
        tx.commit().await?;
        self.tell(Some(number), "reading");
        self.open_before(number, &pass.step).await
    }

    /// Keeps that somebody goes on with something open, and why.
    pub(crate) async fn pass_open(
        &self,
        tx: &mut Tx,
        file: &JobFile,
        step: &Step,
        open: &[OpenClub],
        reason: &str,
        by: &str,
    ) -> Result<(), AppError> {
        for club in open.iter().filter(|club| club.passed.is_none()) {
            let note = serde_json::json!({ "step": step.key, "points": club.points, "reason": reason });
            self.log(tx, Some(&file.job.id), Some(&club.club), EventKind::PassedOpen, by, note).await?;
        }
        Ok(())
    }
}

/// The batches that have not cured, each once.
fn not_cured(open: &[OpenClub]) -> Vec<i64> {
    let waiting = |point: &OpenPoint| match point {
        OpenPoint::NotCured { batch, .. } => Some(*batch),
        _ => None,
    };
    let mut batches: Vec<i64> = open.iter().flat_map(|club| &club.points).filter_map(waiting).collect();
    batches.sort_unstable();
    batches.dedup();
    batches
}

impl KeptJob {
    /// What is open on these clubs before a step that cannot be undone, in the order of the tray; clubs without anything
    /// open are left out.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn open_on(
        &self,
        believed: &Believed<'_>,
        states: &[ClubState],
        step: &Step,
    ) -> Result<Vec<OpenClub>, AppError> {
        if Final::of(&self.job, step).is_none() {
            return Ok(Vec::new());
        }
        let spares = self.spares();
        let open = |state| open_club(believed, state, &self.batches, &spares, step, &self.passed, &self.marks);
        Ok(states.iter().filter_map(|state| open(state).transpose()).collect::<Result<_, _>>()?)
    }
}

/// The reason for going on with something open; none is asked where nothing is, or where it was given before.
pub(crate) fn reason_for<'r>(
    step: &Step,
    open: &[OpenClub],
    reason: Option<&'r str>,
) -> Result<Option<&'r str>, AppError> {
    let asked: Vec<OpenClub> = open.iter().filter(|club| club.passed.is_none()).cloned().collect();
    if asked.is_empty() {
        return Ok(None);
    }
    match reason.map(str::trim).filter(|reason| !reason.is_empty()) {
        Some(reason) => need_reason(reason).map(|()| Some(reason)),
        None => Err(AppError::Open { step: step.label.clone(), clubs: asked }),
    }
}

fact::facts! {
    /// What is refused of going on with something open.
    pub(crate) enum OpenFault: "open_fault" {
        Nothing { number: String, step: String },
    }
}
