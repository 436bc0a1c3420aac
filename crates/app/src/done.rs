//! A step that is only done, such as turning the ferrules: for the whole set at once.

use crate::bench::{Entry, NewReadings};
use crate::kept_job::KeptJob;
use crate::need::{need_at_bench, need_name};
use crate::{App, AppError};
use bench::club_state::{ClubState, StepStatus};
use serde::{Deserialize, Serialize};
use trade::reading::What;
use trade::step::Step;
use utoipa::ToSchema;

/// A step that is only done, for several clubs.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DoneForSet {
    /// Key of the step; it asks nothing but that it is done, as turning the ferrules does.
    pub step: String,
    /// Places in the tray of the clubs that have done it; left out: every club that can and has not.
    #[serde(default)]
    pub slots: Option<Vec<i64>>,
    /// Why a club is handed over on which something is open; the record keeps it. Left out: such a club is refused by name,
    /// and nothing is kept, unless it was passed over before.
    #[serde(default)]
    pub reason: Option<String>,
    /// Who did it.
    pub by: String,
}

/// What became of a step that was done for several clubs.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SetDone {
    /// Places of the clubs that have done it now, in the order of the tray; empty where none was left.
    pub slots: Vec<i64>,
    /// Places of the clubs that cannot yet: their joint is not glued or waits for its strength.
    pub waiting: Vec<i64>,
}

/// What a set can do at a step that is only done.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LeftToDo {
    /// Places of the clubs that can and have not.
    pub ready: Vec<i64>,
    /// Places of the clubs whose joint is not glued or waits for its strength.
    pub waiting: Vec<i64>,
}

/// Whether a step asks nothing but that it is done; the gluing has a page and clocks of its own.
fn is_only_done(step: &Step) -> bool {
    step.asks == [What::Done] && !step.glues
}

/// What is left of a step that is only done; nothing where the step asks more, or is the gluing itself.
#[must_use]
pub fn left_to_do(states: &[ClubState], step: &Step) -> LeftToDo {
    let mut left = LeftToDo::default();
    if !is_only_done(step) {
        return left;
    }
    for state in states.iter().filter(|state| state.finish.is_some()) {
        let Some(here) = state.steps.iter().find(|s| s.key == step.key) else { continue };
        match (here.status == StepStatus::Done, here.gate.is_open()) {
            (true, _) => {}
            (false, true) => left.ready.push(state.slot),
            (false, false) => left.waiting.push(state.slot),
        }
    }
    left
}

impl App {
    /// Notes that a step is done for several clubs of a job, all or none.
    ///
    /// # Errors
    /// A step that asks for a reading or glues; no such job, step or club; nobody named; a club that waits for its joint,
    /// or on which something is open without a reason; what the store says.
    pub async fn done_for_set(&self, number: i64, done: &DoneForSet) -> Result<SetDone, AppError> {
        need_name(&done.by)?;
        let mut tx = self.store.write().await?.signed(&done.by);
        let mut file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let step = file.step(&done.step)?.clone();
        if !is_only_done(&step) {
            return Err(AppError::conflict(DoneFault::AsksMore { step: step.label }));
        }
        let left = left_to_do(&states_of(self, &file)?, &step);
        let slots = done.slots.clone().unwrap_or_else(|| left.ready.clone());
        for slot in &slots {
            let one = NewReadings {
                slot: *slot,
                step: step.key.clone(),
                entries: vec![Entry {
                    what: What::Done,
                    typed: "done".to_owned(),
                    value: None,
                    pivot_mm: None,
                    again: false,
                }],
                on: None,
                by: done.by.clone(),
                version: None,
                seen: Vec::new(),
                at: None,
                reason: done.reason.clone(),
                request_key: None,
            };
            (file, _) = self.keep(&mut tx, &file, &one).await?;
        }
        if !slots.is_empty() {
            self.commit_with(tx, &file).await?;
            self.tell(Some(number), "reading");
        }
        Ok(SetDone { slots, waiting: left.waiting })
    }
}

fn states_of(app: &App, file: &KeptJob) -> Result<Vec<ClubState>, AppError> {
    let believed = file.believe()?;
    file.states_of(&believed, app.now())
}

fact::facts! {
    /// What is refused of a step that is done for a set.
    pub(crate) enum DoneFault: "done_fault" {
        AsksMore { step: String },
    }
}
