//! What is open on a club before a step that cannot be undone: who goes on all the same says why.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::need::need_reason;
use crate::{App, AppError};
use bench::belief::Believed;
use bench::club_state::ClubState;
use bench::open_point::{OpenClub, is_final, open_points};
use store::Tx;
use trade::event_kind::EventKind;
use trade::step::Step;

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
        for club in open {
            let note = serde_json::json!({ "step": step.key, "points": club.points, "reason": reason });
            self.log(tx, Some(&file.job.id), Some(&club.club), EventKind::PassedOpen, by, note).await?;
        }
        Ok(())
    }
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
        let mut found = Vec::new();
        if !is_final(&self.job, step) {
            return Ok(found);
        }
        let spares = self.spares();
        for state in states {
            let points = open_points(believed, state, &self.batches, &spares, step)?;
            if !points.is_empty() {
                let facts = points.iter().map(|point| point.fact().into()).collect();
                let (club, slot, number) = (state.club.clone(), state.slot, state.number.clone());
                found.push(OpenClub { club, slot, number, points, facts });
            }
        }
        Ok(found)
    }
}

/// The reason for going on with something open; none is asked where nothing is.
pub(crate) fn reason_for<'r>(
    step: &Step,
    open: &[OpenClub],
    reason: Option<&'r str>,
) -> Result<Option<&'r str>, AppError> {
    if open.is_empty() {
        return Ok(None);
    }
    match reason.map(str::trim).filter(|reason| !reason.is_empty()) {
        Some(reason) => need_reason(reason).map(|()| Some(reason)),
        None => Err(AppError::Open { step: step.label.clone(), clubs: open.to_vec() }),
    }
}
