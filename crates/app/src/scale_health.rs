//! The health of the shop's scales: checks kept, trust taken away and given back, calibrations, what a job must know.

use crate::clock::CLOCKS_DIFFER;
use crate::look_up::LookUp;
use crate::need::need_reason;
use crate::scale_watch::watch_now;
use crate::{App, AppError, load_shop, new_id};
use bench::today_offset::{TodayOffset, today_offset};
use desk::scale_health::{CheckChart, Doubtful, Offset, charts, judge, offset, question, trust};
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};
use store::Tx;
use trade::error::Noun;
use trade::gauge::{Gauge, Measures, Standard, parse_value};
use trade::id::EventId;
use trade::reading::{Reading, What};
use trade::scale_event::{CheckRead, Happened, ScaleEvent, standing_checks};
use trade::shop::Shop;
use trade::trust::Trust;
use utoipa::ToSchema;

/// Events that a scale's page shows.
const EVENTS_SHOWN: usize = 60;
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
    /// By whom.
    #[schema(min_length = 1, pattern = r"\S")]
    pub by_whom: String,
    /// When it is due again.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub next_due: Option<Date>,
    /// Number of the certificate, what was adjusted.
    #[serde(default)]
    pub note: String,
    /// Whether it was adjusted: its chart then begins anew.
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

/// The last calibration.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CalibrationView {
    /// When.
    #[schema(value_type = String, format = Date)]
    pub on: Date,
    /// By whom.
    pub by_whom: String,
    /// When it is due again.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub next_due: Option<Date>,
    /// Whether that day is past.
    pub overdue: bool,
    /// Number of the certificate, what was adjusted.
    pub note: String,
}

/// How a scale stands.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ScaleHealth {
    /// The scale.
    pub gauge: Gauge,
    /// Unit of all figures of it.
    pub unit: String,
    /// What it is held against.
    pub standards: Vec<Standard>,
    /// Whether it is trusted, and why not.
    pub trust: Trust,
    /// Whether it was checked today.
    pub checked_today: bool,
    /// The latest check that counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_check: Option<ScaleEvent>,
    /// The last calibration.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub calibration: Option<CalibrationView>,
    /// What it is off by, and how fast it wanders, over the days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Option<Offset>,
    /// What the belief of a job begins with today.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub belief: Option<TodayOffset>,
    /// A chart for each check weight.
    pub charts: Vec<CheckChart>,
    /// What happened to it, the newest first, at most 60.
    pub events: Vec<ScaleEvent>,
    /// What is odd about the clock; empty where nothing is.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub clock: String,
}

/// A scale on the Today page.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ScaleToday {
    /// Its key.
    pub key: String,
    /// What people call it.
    pub name: String,
    /// Whether there is something to check it with.
    pub has_standard: bool,
    /// Whether it is a scale that is read every day, a mass or a swing weight.
    pub daily: bool,
    /// Whether it was checked today.
    pub checked: bool,
    /// What speaks against it; empty where nothing does.
    pub words: String,
    /// Whether it can be trusted again with a reason, since it passed its last check.
    pub passed: bool,
}

/// Since which day a scale is not trusted, by the last word on it; none where it is.
fn lost_since(events: &[ScaleEvent], scale: &str) -> Option<Date> {
    let spoken = |e: &&ScaleEvent| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. });
    match events.iter().rev().filter(|e| e.scale == scale).find(spoken).map(|e| &e.what) {
        Some(Happened::Distrusted { since, .. }) => Some(*since),
        _ => None,
    }
}

type Drawn = (Option<Offset>, Vec<CheckChart>);
type DrawnFrom = (Arc<Vec<ScaleEvent>>, Arc<Drawn>);

/// Offset and charts of each scale as they were worked out last, with the events that they follow from. Those are asked
/// of the database each time; the same events are the same list.
#[derive(Debug, Clone, Default)]
pub(crate) struct KeptCharts(Arc<Mutex<BTreeMap<String, DrawnFrom>>>);

impl KeptCharts {
    fn of(&self, scale: &str, events: &Arc<Vec<ScaleEvent>>) -> Result<Arc<Drawn>, AppError> {
        let lock = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let known = lock().get(scale).filter(|(of, _)| Arc::ptr_eq(of, events)).map(|(_, drawn)| Arc::clone(drawn));
        if let Some(drawn) = known {
            return Ok(drawn);
        }
        let drawn = Arc::new((offset(events)?, charts(events)?));
        lock().insert(scale.to_owned(), (Arc::clone(events), Arc::clone(&drawn)));
        Ok(drawn)
    }
}

impl App {
    /// How every scale of the shop stands.
    ///
    /// # Errors
    /// Figures that no chart can be made of; what the store says.
    pub async fn scales_health(&self) -> Result<Vec<ScaleHealth>, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let mut all = Vec::new();
        for gauge in shop.instruments() {
            all.push(self.health_of(&mut tx, &shop, gauge).await?);
        }
        Ok(all)
    }

    /// How a scale stands.
    ///
    /// # Errors
    /// No such scale; figures that no chart can be made of; what the store says.
    pub async fn scale_health(&self, scale: &str) -> Result<ScaleHealth, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let gauge = shop.instrument(scale)?;
        self.health_of(&mut tx, &shop, gauge).await
    }

    async fn health_of(&self, tx: &mut Tx, shop: &Shop, gauge: Gauge) -> Result<ScaleHealth, AppError> {
        let events = tx.scale_events(&gauge.key).await?;
        let (now, today) = (self.now(), self.today());
        let last = standing_checks(&events).last().map(|(e, _)| (*e).clone());
        let calibration = events.iter().rev().find_map(|e| match &e.what {
            Happened::Calibrated { on, by_whom, next_due, note, .. } => Some(CalibrationView {
                on: *on,
                by_whom: by_whom.clone(),
                next_due: *next_due,
                overdue: next_due.is_some_and(|due| due < today),
                note: note.clone(),
            }),
            _ => None,
        });
        let learned = tx.learned().await?.unwrap_or_default();
        let watch = watch_now(tx, shop, now, today).await?;
        let drawn = self.charts.of(&gauge.key, &events)?;
        let behind = events.iter().map(|e| e.kept_at).max().filter(|newest| *newest > now + CLOCKS_DIFFER);
        Ok(ScaleHealth {
            unit: gauge.measures.unit().to_owned(),
            standards: shop.standards_of(&gauge.key),
            trust: trust(&events, &gauge, today),
            checked_today: standing_checks(&events).iter().any(|(e, _)| e.day == today),
            last_check: last,
            calibration,
            offset: drawn.0.clone(),
            belief: today_offset(shop, &learned, &watch, &gauge.key)?,
            charts: drawn.1.clone(),
            clock: behind.map_or_else(String::new, |newest| {
                format!("The clock stands at {now}, before the last entry of {newest}. Set this machine's clock right; nothing is lost")
            }),
            events: events.iter().rev().take(EVENTS_SHOWN).cloned().collect(),
            gauge,
        })
    }

    /// Which scales are to be checked today, and which are not trusted; and whether anything was read today already.
    ///
    /// # Errors
    /// What the store says.
    pub async fn scales_today(&self) -> Result<(Vec<ScaleToday>, bool), AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let today = self.today();
        let morning = today.to_zoned_datetime(jiff::tz::TimeZone::system()).map(|z| z.timestamp());
        let morning = morning.unwrap_or_else(|_| self.now());
        // Only what is said of today: the checks since yesterday, or since the first day on which a scale that is not
        // trusted was not.
        let before = |at: Timestamp| at.checked_sub(SignedDuration::from_hours(24)).unwrap_or(Timestamp::MIN);
        let mut events = tx.scale_events_between(before(morning), Timestamp::MAX).await?;
        let lost = shop.instruments().iter().filter_map(|gauge| lost_since(&events, &gauge.key)).min();
        if let Some(day) = lost
            && let Ok(from) = day.to_zoned_datetime(jiff::tz::TimeZone::system()).map(|z| z.timestamp())
            && from < morning
        {
            events = tx.scale_events_between(before(from), Timestamp::MAX).await?;
        }
        let mut all = Vec::new();
        for gauge in shop.instruments() {
            let events: Vec<ScaleEvent> = events.iter().filter(|e| e.scale == gauge.key).cloned().collect();
            let trust = trust(&events, &gauge, today);
            all.push(ScaleToday {
                has_standard: !shop.standards_of(&gauge.key).is_empty(),
                checked: standing_checks(&events).iter().any(|(e, _)| e.day == today),
                daily: matches!(gauge.measures, Measures::Mass | Measures::SwingWeight),
                words: trust.words,
                passed: trust.passed.is_some(),
                key: gauge.key,
                name: gauge.name,
            });
        }
        let read = tx.read_since(morning).await?;
        Ok((all, read))
    }

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
            kept_though: asked.map(|a| a.words),
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
        self.withdraw(&mut tx, &gauge, check, word.reason.trim(), &word.by).await?;
        let health = self.health_of(&mut tx, &shop, gauge).await?;
        tx.commit().await?;
        self.tell(None, "scale");
        Ok(health)
    }

    async fn withdraw(
        &self,
        tx: &mut Tx,
        gauge: &Gauge,
        check: &EventId,
        reason: &str,
        by: &str,
    ) -> Result<(), AppError> {
        let back = Happened::TakenBack { check: check.clone(), reason: reason.to_owned() };
        tx.append_scale_event(&self.event(gauge, self.now(), by, back), None).await?;
        let events = tx.scale_events(&gauge.key).await?;
        let word =
            events.iter().rev().find(|e| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. }));
        let spoke =
            word.is_some_and(|e| matches!(&e.what, Happened::Distrusted { check: Some(id), .. } if id == check));
        if spoke {
            let reason = format!("the check that spoke against it was taken back: {reason}");
            let again = Happened::Trusted { reason, check: None };
            tx.append_scale_event(&self.event(gauge, self.now(), by, again), None).await?;
        }
        Ok(())
    }

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
        let distrusted = now.reasons.iter().any(|r| r.cause != trade::trust::TrustCause::Overdue);
        let reason = word.reason.trim().to_owned();
        let what = match (word.trusted, distrusted) {
            (true, true) => Happened::Trusted { reason, check: now.passed },
            (false, false) => Happened::Distrusted {
                cause: trade::trust::TrustCause::Word,
                reason,
                check: None,
                since: self.today(),
                off_by: 0.0,
            },
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
        let tx = self.store.write().await?;
        let mut tx = tx;
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

    /// Begins a scale's chart anew: it was moved or repaired, so that earlier checks say nothing of it any more.
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

    fn event(&self, gauge: &Gauge, at: Timestamp, by: &str, what: Happened) -> ScaleEvent {
        ScaleEvent {
            id: EventId(new_id()),
            scale: gauge.key.clone(),
            at,
            kept_at: self.now(),
            day: day_of(at),
            by: by.trim().to_owned(),
            what,
        }
    }

    /// Takes the trust away where the newest check speaks against the scale and nothing has so far.
    async fn speak(&self, tx: &mut Tx, gauge: &Gauge, by: &str) -> Result<(), AppError> {
        let events = tx.scale_events(&gauge.key).await?;
        let word =
            events.iter().rev().find(|e| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. }));
        if word.is_some_and(|e| matches!(e.what, Happened::Distrusted { .. })) {
            return Ok(());
        }
        let Some(spoken) = judge(&events, gauge)? else { return Ok(()) };
        let what = Happened::Distrusted {
            cause: spoken.cause,
            reason: spoken.reason,
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

    /// A check weight that was read at a job's bench is a check of the balance scale as well; an earlier one that it
    /// takes the place of no longer counts.
    pub(crate) async fn note_bench_check(&self, tx: &mut Tx, shop: &Shop, reading: &Reading) -> Result<(), AppError> {
        let gauge = shop.instrument(&shop.balance_scale.key)?;
        let standards = shop.standards_of(&gauge.key);
        let Some(standard) = standards.first().filter(|_| reading.what == What::CheckWeight) else { return Ok(()) };
        if let Some(earlier) = &reading.replaces {
            self.withdraw_bench_check(tx, shop, earlier.as_str(), "read again", &reading.by).await?;
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
        reason: &str,
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

/// The shop's day of a time.
fn day_of(at: Timestamp) -> Date {
    at.to_zoned_datetime(jiff::tz::TimeZone::system()).date()
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
        CalibratedLater { calibrated_on: Date },
        DueBefore { due_on: Date, calibrated_on: Date },
    }
}
