//! What can be done about a club now, what is worth measuring, which grips the set should get.

use crate::kept_job::KeptJob;
use crate::{App, AppError};
use bench::belief::Believed;
use bench::offer::{Bundle, Measure};
use bench::remedy::{GripPick, Ranking, Remedy};
use bench::work_order::{GripsInTurn, SetAdvice};
use serde::{Deserialize, Serialize};
use trade::event_kind::EventKind;
use utoipa::ToSchema;

/// Advice for one club.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Advice {
    /// Place in the tray.
    pub slot: i64,
    /// Chance of finishing in tolerance if nothing is changed now, with the choices still to come; none without a plan.
    pub chance_ahead: Option<f64>,
    /// What can still be done, the best first.
    pub remedies: Vec<Remedy>,
    /// Extra measurements that are worth their while together.
    #[serde(flatten)]
    pub bundle: Bundle,
}

/// "Not again in this job."
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DeclineOffer {
    /// What is not to be offered again.
    pub measure: Measure,
    /// Who.
    pub by: String,
}

impl App {
    /// What can be done about a club now, and what is worth measuring first.
    ///
    /// # Errors
    /// No such job or club; figures that the belief cannot work with; what the store says.
    pub async fn advice(&self, number: i64, slot: i64) -> Result<Advice, AppError> {
        let job = self.job_file(number).await?;
        let club = job.club_at(slot)?;
        let believed = job.believe()?;
        let state = bench::club_state::club_state(&believed, job.around(self.now()), club)?;
        let Ranking { remedies, chance_ahead } = job.ranking(&believed, &state)?;
        Ok(Advice { slot, chance_ahead, remedies, bundle: job.offers(&believed, &club.id)? })
    }

    /// What is worth measuring and in which order a set is best glued and gripped; none where no club waits for its grip.
    ///
    /// # Errors
    /// No such job; figures that the belief cannot work with; what the store says.
    pub async fn set_advice(&self, number: i64) -> Result<Option<SetAdvice>, AppError> {
        self.job_file(number).await?.set_advice()
    }

    /// In which order the grips of the clubs that have cured are best chosen, from a belief that the caller has already.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn grips_in_turn(job: &KeptJob, believed: &Believed<'_>) -> Result<Option<GripsInTurn>, AppError> {
        Ok(bench::work_order::grips_in_turn(believed, &job.spares())?)
    }

    /// The grip that every club read after the cure should get, the whole set looked at together.
    ///
    /// # Errors
    /// No such job; figures that the belief cannot work with; what the store says.
    pub async fn grips(&self, number: i64) -> Result<Vec<GripPick>, AppError> {
        let job = self.job_file(number).await?;
        Ok(bench::remedy::assign_grips(&job.believe()?, &job.spares())?)
    }

    /// Keeps that an extra measurement is not to be offered again in a job.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn decline_offer(&self, number: i64, decline: &DeclineOffer) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        let note = serde_json::json!({ "measure": decline.measure.key() });
        self.log(&mut tx, Some(&file.job.id), None, EventKind::OfferDeclined, &decline.by, note).await?;
        tx.commit().await?;
        self.tell(Some(number), "reading");
        Ok(())
    }
}
