//! Check weights that were read at a job's bench: checks of the balance scale as well.

use crate::{App, AppError};
use fact::{Fact, Told};
use store::Tx;
use trade::id::EventId;
use trade::reading::{Reading, What};
use trade::scale_event::{CheckRead, Happened, ScaleEvent, standing_checks};
use trade::shop::Shop;
use trade::trust::TrustFinding;

impl App {
    /// A check weight that was read at a job's bench is a check of the balance scale as well; an earlier one that it
    /// takes the place of no longer counts.
    pub(crate) async fn note_bench_check(&self, tx: &mut Tx, shop: &Shop, reading: &Reading) -> Result<(), AppError> {
        let gauge = shop.instrument(&shop.balance_scale.key)?;
        let standards = shop.standards_of(&gauge.key);
        let Some(standard) = standards.first().filter(|_| reading.what == What::CheckWeight) else { return Ok(()) };
        if let Some(earlier) = &reading.replaces {
            self.withdraw_bench_check(tx, shop, earlier.as_str(), TrustFinding::ReadAgain.told(), &reading.by).await?;
        }
        let read = CheckRead {
            standard: standard.key.clone(),
            name: standard.name.clone(),
            typed: reading.typed.clone(),
            reading: reading.value,
            certified: standard.value,
            certified_sd: standard.sd,
            tolerance: standard.tolerance_on(&gauge),
            display_step: reading.display_step,
            noise_sd: gauge.noise_sd,
            kept_though: None,
            job: Some(reading.job.clone()),
        };
        let event = ScaleEvent {
            id: EventId(reading.id.0.clone()),
            ..self.event(&gauge, reading.at, &reading.by, Happened::Check(read))
        };
        tx.append_scale_event(&event, None).await?;
        self.speak(tx, &gauge, &reading.by).await
    }

    /// The reading of a check weight at a bench was taken back, so the check is.
    pub(crate) async fn withdraw_bench_check(
        &self,
        tx: &mut Tx,
        shop: &Shop,
        reading: &str,
        reason: Told,
        by: &str,
    ) -> Result<(), AppError> {
        let id = EventId(reading.to_owned());
        let Some(event) = tx.scale_event(&id).await? else { return Ok(()) };
        let Ok(gauge) = shop.instrument(&event.scale) else { return Ok(()) };
        let events = tx.scale_events(&gauge.key).await?;
        if standing_checks(&events).iter().any(|(e, _)| e.id == id) {
            self.withdraw(tx, &gauge, &id, reason, by).await?;
        }
        Ok(())
    }
}
