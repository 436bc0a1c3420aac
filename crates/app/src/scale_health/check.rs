//! Checks of a scale: kept, asked about, taken back.

use super::ScaleHealth;
use crate::clock::CLOCKS_DIFFER;
use crate::look_up::LookUp;
use crate::need::need_reason;
use crate::scale_health::WithReason;
use crate::{App, AppError, load_shop};
use desk::scale_health::{Doubtful, judge, question};
use fact::{Fact, Told};
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::error::Noun;
use trade::gauge::{Gauge, Standard, parse_value};
use trade::id::EventId;
use trade::scale_event::{CheckRead, Happened, ScaleEvent, standing_checks};
use trade::trust::TrustFinding;
use utoipa::ToSchema;

/// How far back a check may be entered.
const ENTERED_LATE: SignedDuration = SignedDuration::from_hours(14 * 24);

/// A check weight or check club put on a scale.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewCheck {
    /// Key of the check weight; left out: the scale's first.
    #[serde(default)]
    pub standard: Option<String>,
    /// What the scale shows, as typed: `200.1`, `7.06 oz`, `D1.4`.
    pub typed: String,
    /// Keep it as it is though it was asked about.
    #[serde(default)]
    pub confirmed: bool,
    /// When, for entries that a screen kept while the network was away; left out: now.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
    /// Who.
    pub by: String,
    /// A key of the sender's own: the same one again keeps nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
}

/// What became of a check.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct CheckAnswer {
    /// The check as it is kept; none where it is asked about first.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kept: Option<ScaleEvent>,
    /// What is asked before it is kept; send it again with `confirmed` to keep it as it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub question: Option<Doubtful>,
    /// Whether it had been sent before; nothing was kept twice.
    pub repeated: bool,
    /// How the scale stands now.
    pub health: ScaleHealth,
}

impl App {
    /// Keeps a check, or asks about it first where it looks like a slip. A check that speaks against the scale takes its
    /// trust away.
    ///
    /// # Errors
    /// No such scale or check weight; an entry that cannot be read or cannot be; a time that cannot be; a request key
    /// that was used for another entry; what the store says.
    pub async fn check_scale(&self, scale: &str, new: &NewCheck) -> Result<CheckAnswer, AppError> {
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        let standards = shop.standards_of(scale);
        let standard = chosen(&gauge, &standards, new.standard.as_deref())?;
        let value = parse_value(gauge.measures, &new.typed)?;
        let at = self.time_of(new.at)?;
        let asked = question(&gauge, standard, &standards, &new.typed, value);
        let known = match &new.request_key {
            Some(key) => tx.scale_event_by_request_key(key).await?.is_some(),
            None => false,
        };
        if let Some(asked) = asked.clone().filter(|_| !new.confirmed && !known) {
            let health = self.health_of(&mut tx, &shop, gauge).await?;
            return Ok(CheckAnswer { kept: None, question: Some(asked), repeated: false, health });
        }
        let read = CheckRead {
            standard: standard.key.clone(),
            name: standard.name.clone(),
            typed: new.typed.trim().to_owned(),
            reading: value,
            certified: standard.value,
            certified_sd: standard.sd,
            tolerance: standard.tolerance_on(&gauge),
            display_step: gauge.display_step,
            noise_sd: gauge.noise_sd,
            kept_though: asked.map(|a| a.said.told()),
            job: None,
        };
        let event = self.event(&gauge, at, &new.by, Happened::Check(read));
        let kept = tx.append_scale_event(&event, new.request_key.as_deref()).await?;
        if !kept.repeated {
            self.speak(&mut tx, &gauge, &new.by).await?;
        }
        let health = self.health_of(&mut tx, &shop, gauge).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(CheckAnswer { kept: Some(kept.event), question: None, repeated: kept.repeated, health })
    }

    /// Takes a check back: "that was wrong". It stays in the list; trust that it took away comes back.
    ///
    /// # Errors
    /// No such check; one that is taken back already; no reason; what the store says.
    pub async fn take_back_check(
        &self,
        scale: &str,
        check: &EventId,
        word: &WithReason,
    ) -> Result<ScaleHealth, AppError> {
        need_reason(&word.reason)?;
        let mut tx = self.store.write().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        let events = tx.scale_events(scale).await?;
        if !events.iter().any(|e| e.id == *check && e.check().is_some()) {
            return Err(AppError::not_found(
                Noun::Check,
                check.as_str(),
                &LookUp::LoadScale { name: gauge.name.clone() },
            ));
        }
        if !standing_checks(&events).iter().any(|(e, _)| e.id == *check) {
            return Err(AppError::conflict(CheckFault::TakenBack));
        }
        let reason = Told::verbatim(word.reason.trim());
        self.withdraw(&mut tx, &gauge, check, reason, &word.by).await?;
        let health = self.health_of(&mut tx, &shop, gauge).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(health)
    }

    pub(super) async fn withdraw(
        &self,
        tx: &mut Tx,
        gauge: &Gauge,
        check: &EventId,
        reason: Told,
        by: &str,
    ) -> Result<(), AppError> {
        let back = Happened::TakenBack { check: check.clone(), reason: reason.clone() };
        tx.append_scale_event(&self.event(gauge, self.now(), by, back), None).await?;
        let events = tx.scale_events(&gauge.key).await?;
        let word =
            events.iter().rev().find(|e| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. }));
        let spoke =
            word.is_some_and(|e| matches!(&e.what, Happened::Distrusted { check: Some(id), .. } if id == check));
        if spoke {
            let reason = TrustFinding::CheckTakenBack { reason }.told();
            let again = Happened::Trusted { reason, check: None };
            tx.append_scale_event(&self.event(gauge, self.now(), by, again), None).await?;
        }
        Ok(())
    }

    /// Takes the trust away where the newest check speaks against the scale and nothing has so far.
    pub(super) async fn speak(&self, tx: &mut Tx, gauge: &Gauge, by: &str) -> Result<(), AppError> {
        let events = tx.scale_events(&gauge.key).await?;
        let word =
            events.iter().rev().find(|e| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. }));
        if word.is_some_and(|e| matches!(e.what, Happened::Distrusted { .. })) {
            return Ok(());
        }
        let Some(spoken) = judge(&events, gauge)? else { return Ok(()) };
        let what = Happened::Distrusted {
            cause: spoken.cause,
            reason: spoken.finding.told(),
            check: Some(spoken.check),
            since: spoken.since,
            off_by: spoken.off_by,
        };
        tx.append_scale_event(&self.event(gauge, self.now(), by, what), None).await?;
        Ok(())
    }

    /// The time of an entry: now, or when a screen says that it was, within reason.
    fn time_of(&self, at: Option<Timestamp>) -> Result<Timestamp, AppError> {
        let now = self.now();
        match at {
            Some(at) if at > now + CLOCKS_DIFFER || at < now - ENTERED_LATE => {
                Err(AppError::invalid(CheckFault::WrongTime { at, now_at: now }))
            }
            at => Ok(at.unwrap_or(now)),
        }
    }
}

fn chosen<'a>(gauge: &Gauge, standards: &'a [Standard], key: Option<&str>) -> Result<&'a Standard, AppError> {
    let Some(first) = standards.first() else {
        return Err(AppError::invalid(CheckFault::NoWeight { name: gauge.name.clone() }));
    };
    let Some(key) = key.filter(|k| !k.is_empty()) else { return Ok(first) };
    let known = standards.iter().map(|s| s.key.clone()).collect();
    let next = LookUp::HasWeights { name: gauge.name.clone(), known };
    standards.iter().find(|s| s.key == key).ok_or_else(|| AppError::not_found(Noun::CheckWeight, key, &next))
}

fact::facts! {
    /// What is refused of checks and calibrations.
    pub(crate) enum CheckFault: "check_fault" {
        TakenBack,
        Trusted { name: String },
        OnlyOverdue { name: String },
        NotTrusted { name: String },
        WrongTime { at: Timestamp, now_at: Timestamp },
        NoWeight { name: String },
        NobodyCalibrated,
        CalibratedLater { calibrated_on: jiff::civil::Date },
        DueBefore { due_on: jiff::civil::Date, calibrated_on: jiff::civil::Date },
    }
}
