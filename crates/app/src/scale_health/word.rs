//! A scale's trust by somebody's word, its calibrations, a new chart.

use super::ScaleHealth;
use crate::need::need_reason;
use crate::scale_health::check::CheckFault;
use crate::{App, AppError, load_shop};
use desk::scale_health::trust;
use fact::Told;
use jiff::civil::Date;
use serde::Deserialize;
use store::Tx;
use trade::gauge::Gauge;
use trade::scale_event::Happened;
use trade::shop::Shop;
use trade::trust::TrustCause;
use utoipa::ToSchema;

/// Trust taken away or given back by somebody's word.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TrustWord {
    /// Whether the scale is to be trusted.
    pub trusted: bool,
    /// Why: what was done, or what was seen.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who says so.
    pub by: String,
}

/// A calibration.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewCalibration {
    /// When it was calibrated.
    #[schema(value_type = String, format = Date)]
    pub on: Date,
    /// Who calibrated it: a person, or a laboratory's name.
    #[schema(min_length = 1, pattern = r"\S")]
    pub by_whom: String,
    /// When it is due again.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub next_due: Option<Date>,
    /// Number of the certificate, what was adjusted.
    #[serde(default)]
    pub note: String,
    /// Whether it was adjusted: a new chart then begins.
    #[serde(default)]
    pub adjusted: bool,
    /// Who enters it.
    pub by: String,
}

/// A reason, and who gives it.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WithReason {
    /// Why.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who.
    pub by: String,
}

impl App {
    /// Trusts a scale again, on its passed check or on somebody's word, or takes its trust away.
    ///
    /// # Errors
    /// No reason; a scale that stands so already; one that only its calibration speaks against; what the store says.
    pub async fn word_on_scale(&self, scale: &str, word: &TrustWord) -> Result<ScaleHealth, AppError> {
        need_reason(&word.reason)?;
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        let events = tx.scale_events(scale).await?;
        let now = trust(&events, &gauge, self.today());
        let distrusted = now.reasons.iter().any(|r| r.cause != TrustCause::Overdue);
        let reason = Told::verbatim(word.reason.trim());
        let what = match (word.trusted, distrusted) {
            (true, true) => Happened::Trusted { reason, check: now.passed },
            (false, false) => {
                Happened::Distrusted { cause: TrustCause::Word, reason, check: None, since: self.today(), off_by: 0.0 }
            }
            (true, false) if now.trusted => {
                return Err(AppError::conflict(CheckFault::Trusted { name: gauge.name.clone() }));
            }
            (true, false) => {
                return Err(AppError::conflict(CheckFault::OnlyOverdue { name: gauge.name.clone() }));
            }
            (false, true) => {
                return Err(AppError::conflict(CheckFault::NotTrusted { name: gauge.name.clone() }));
            }
        };
        self.happened(tx, &shop, gauge, &word.by, what).await
    }

    /// Keeps a calibration.
    ///
    /// # Errors
    /// A day that is still to come; a due day before it; nobody named; what the store says.
    pub async fn calibrated(&self, scale: &str, new: &NewCalibration) -> Result<ScaleHealth, AppError> {
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        let invalid = |fault: CheckFault| Err(AppError::invalid(fault));
        if new.by_whom.trim().is_empty() {
            return invalid(CheckFault::NobodyCalibrated);
        }
        if new.on > self.today() {
            return invalid(CheckFault::CalibratedLater { calibrated_on: new.on });
        }
        if let Some(due) = new.next_due.filter(|due| *due <= new.on) {
            return invalid(CheckFault::DueBefore { due_on: due, calibrated_on: new.on });
        }
        let what = Happened::Calibrated {
            on: new.on,
            by_whom: new.by_whom.trim().to_owned(),
            next_due: new.next_due,
            note: new.note.trim().to_owned(),
            adjusted: new.adjusted,
        };
        self.happened(tx, &shop, gauge, &new.by, what).await
    }

    /// Begins a new chart of a scale: it was moved or repaired, so that earlier checks no longer count.
    ///
    /// # Errors
    /// No reason; what the store says.
    pub async fn chart_anew(&self, scale: &str, word: &WithReason) -> Result<ScaleHealth, AppError> {
        need_reason(&word.reason)?;
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        self.happened(tx, &shop, gauge, &word.by, Happened::NewBase { reason: word.reason.trim().to_owned() }).await
    }

    pub(crate) async fn happened(
        &self,
        mut tx: Tx,
        shop: &Shop,
        gauge: Gauge,
        by: &str,
        what: Happened,
    ) -> Result<ScaleHealth, AppError> {
        tx.append_scale_event(&self.event(&gauge, self.now(), by, what), None).await?;
        let health = self.health_of(&mut tx, shop, gauge).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(health)
    }
}
