//! The demonstration: loads the invented shop into an empty database.

use crate::plan::Accept;
use crate::sheet::Approve;
use crate::{App, AppError};
use store::PartFilter;
use workshop::demo;
use workshop::part::Part;

/// Seed of the demonstration's stock: the same shop every time.
const SEED: u64 = 7;
/// Who does what in the demonstration.
const BY: &str = "Ines";

impl App {
    /// Loads the invented shop, its stock and its sheets; the first sheet is approved and planned, ready for the bench.
    /// A database that holds models already is left as it is.
    ///
    /// # Errors
    /// What the store says.
    pub async fn load_demo(&self) -> Result<bool, AppError> {
        let mut tx = self.store.write().await?;
        if !tx.models(None).await?.is_empty() || tx.count_parts(&PartFilter::default()).await? > 0 {
            return Ok(false);
        }
        let now = self.now();
        for model in demo::models() {
            tx.put_model(&model, now).await?;
        }
        for part in demo::parts(SEED) {
            tx.insert_part(&Part { id: crate::new_id().as_str().into(), ..part }, now).await?;
        }
        tx.save_shop(&demo::shop(), now).await?;
        tx.commit().await?;
        for (i, sheet) in demo::sheets(self.today()).iter().enumerate() {
            let saved = self.save_sheet(sheet).await?;
            // The first goes to the bench, the second waits for its plan, the others for approval.
            if i < 2 {
                let job = self.approve_sheet(&saved.id, &Approve { steps: None, by: BY.into() }).await?;
                if i == 0 {
                    let proposal = self.propose(job.number, &[]).await?;
                    let accept = Accept {
                        fingerprint: proposal.fingerprint,
                        locks: Vec::new(),
                        partly: true,
                        neighbour_reason: String::new(),
                        by: BY.into(),
                    };
                    self.accept(job.number, &accept).await?;
                }
            }
        }
        Ok(true)
    }
}
