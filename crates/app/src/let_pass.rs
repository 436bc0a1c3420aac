//! Letting a joint pass before its time: what is kept of it. An override of a cure belongs to its batch.

use crate::{App, AppError};
use bench::glue::{Batch, CureOverride};
use bench::record::LetPass;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::event_kind::EventKind;
use trade::id::{ClubId, JobId};
use trade::step::{Step, Strength};
use utoipa::ToSchema;

/// That somebody takes the joints of a batch to have a strength before their time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct BatchLetPass {
    /// The strength: every step that needs no more than it is open.
    pub strength: Strength,
    /// Why.
    pub reason: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// Letting a batch pass before its time.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LetBatchPass {
    /// How strong its joints are taken to be: every step that needs no more is open, for all clubs of the batch.
    pub strength: Strength,
    /// Why, once for the batch; the record keeps it.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who lets it pass.
    pub by: String,
}

/// Letting a step pass before the joint has its strength.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LetPassRequest {
    /// Place in the tray.
    pub slot: i64,
    /// Key of the step.
    pub step: String,
    /// Why, for the record.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who lets it pass.
    pub by: String,
}

/// What is given for letting a batch pass.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub strength: Strength,
    /// The step at which it was given, where it was.
    pub step: Option<&'a Step>,
    pub reason: &'a str,
    pub by: &'a str,
}

impl App {
    /// Keeps that a batch is let pass.
    pub(crate) async fn let_cure_pass(
        &self,
        tx: &mut Tx,
        job: &JobId,
        batch: &Batch,
        given: Given<'_>,
    ) -> Result<(), AppError> {
        let mut note = serde_json::json!({
            "batch": batch.number, "strength": given.strength.key(), "reason": given.reason.trim()
        });
        if let Some(step) = given.step {
            note["step"] = step.key.clone().into();
        }
        self.log(tx, Some(job), None, EventKind::LetPass, given.by, note).await
    }
}

/// That somebody let a joint pass before its time, from an entry of the log.
#[derive(Debug, Clone)]
pub(crate) struct CureLetPass {
    /// Which joints may go on by it: those of a batch, or that of one club at one step.
    pub opens: CureOverride,
    step: Option<String>,
    reason: String,
    by: String,
    at: Timestamp,
}

impl CureLetPass {
    /// None for an entry that cannot be read.
    pub fn of(event: &store::Event) -> Option<Self> {
        let text = |key: &str| event.body.get(key).and_then(|v| v.as_str()).map(str::to_owned);
        let step = text("step");
        let opens = match event.body.get("batch").and_then(serde_json::Value::as_i64) {
            Some(batch) => CureOverride::Batch { batch, strength: Strength::from_key(&text("strength")?)? },
            None => CureOverride::Step { club: event.club.clone()?, step: step.clone()? },
        };
        Some(Self { opens, step, reason: text("reason")?, by: event.by.clone(), at: event.at })
    }

    /// The clubs that it is about.
    pub fn clubs(&self, batches: &[Batch]) -> Vec<ClubId> {
        match &self.opens {
            CureOverride::Step { club, .. } => vec![club.clone()],
            CureOverride::Batch { batch, .. } => {
                batches.iter().filter(|b| b.number == *batch).flat_map(|b| b.clubs.clone()).collect()
            }
        }
    }

    /// As the record of a club has it.
    pub fn of_club(&self, club: ClubId) -> LetPass {
        let (batch, strength) = match self.opens {
            CureOverride::Batch { batch, strength } => (Some(batch), Some(strength)),
            CureOverride::Step { .. } => (None, None),
        };
        let (step, reason, by) = (self.step.clone(), self.reason.clone(), self.by.clone());
        LetPass { club, step, batch, strength, reason, by, at: self.at }
    }

    /// As its batch shows it; none where it is of one step of one club.
    pub fn of_batch(&self) -> Option<(i64, BatchLetPass)> {
        let CureOverride::Batch { batch, strength } = self.opens else { return None };
        let (reason, by) = (self.reason.clone(), self.by.clone());
        Some((batch, BatchLetPass { strength, reason, by, at: self.at }))
    }
}
