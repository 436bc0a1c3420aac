//! Whether the machine's clock can be relied on. The cure of every joint and every line of the record go by it, and a
//! small computer without a battery starts with a wrong one.
//!
//! Two things give a wrong clock away: it is behind an entry that was made before, or it moved against the time that
//! passed while the program ran. In the first case nothing is kept; in the second no glue is mixed and no step that
//! waits for a cure is opened. Either ends when the clock is right again, or when somebody who has looked says that it is.

use crate::clock::CLOCKS_DIFFER;
use crate::clock_doubt::ClockDoubt;
use crate::{App, AppError};
use fact::{Fact, Told};
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use std::sync::Mutex;
use std::time::Duration;
use store::Tx;
use trade::event_kind::EventKind;
use utoipa::ToSchema;

/// A clock that is steered by the network is put right by less than this at once.
const JUMP_LEAST: SignedDuration = SignedDuration::from_secs(120);
/// Entries that are looked at for the newest one; those before them are older, or were looked at in their time.
const NEWEST_OF: i64 = 50;

/// What a clock is needed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ClockUse {
    /// To say when something was read.
    Reading,
    /// To say how long a joint has cured.
    Cure,
}

/// The clock as the program's state, and whether anybody may say that it is right.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ClockState {
    /// What it shows.
    #[schema(value_type = String, format = DateTime)]
    pub now: Timestamp,
    /// Why it is not relied on; left out: it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub doubt: Option<ClockDoubt>,
    /// The same as a fact, with what to do about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub said: Option<Told>,
}

/// Somebody has looked: the machine's clock is right.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConfirmClock {
    /// How it was checked, for the log.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who.
    pub by: String,
}

/// A jump of the clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Jump {
    from: Timestamp,
    to: Timestamp,
}

/// Watches the clock against the time that passes.
#[derive(Debug)]
pub(crate) struct ClockWatch {
    /// Wall and passed time that belong together.
    base: Mutex<Option<(Timestamp, Duration)>>,
    /// Jumps that are not in the log yet.
    noticed: Mutex<Vec<Jump>>,
    /// The demonstration's past is made on a clock of its own, behind everything.
    trusting: bool,
}

impl ClockWatch {
    pub(crate) const fn new() -> Self {
        Self { base: Mutex::new(None), noticed: Mutex::new(Vec::new()), trusting: false }
    }

    /// One that takes every clock as it is.
    pub(crate) fn trusting() -> Self {
        Self { trusting: true, ..Self::new() }
    }
}

impl App {
    /// Whether the machine's clock can be relied on.
    ///
    /// # Errors
    /// What the store says.
    pub async fn clock_state(&self) -> Result<ClockState, AppError> {
        let mut tx = self.store.read().await?;
        let doubt = self.clock_doubt(&mut tx).await?;
        let said = doubt.as_ref().map(Fact::told);
        Ok(ClockState { now: self.now(), doubt, said })
    }

    /// Looks whether the clock moved against the time that passed, and keeps it if so. To be called now and then while the
    /// program runs.
    ///
    /// # Errors
    /// What the store says.
    pub async fn watch_clock(&self) -> Result<(), AppError> {
        self.look_at_clock();
        let noticed = self.clock_watch.noticed.lock().map(|n| n.clone()).unwrap_or_default();
        if noticed.is_empty() {
            return Ok(());
        }
        let mut tx = self.store.write().await?;
        for jump in &noticed {
            let body = serde_json::json!({ "from": jump.from, "to": jump.to });
            self.log(&mut tx, None, None, EventKind::ClockJumped, "the program", body).await?;
        }
        tx.commit().await?;
        if let Ok(mut waiting) = self.clock_watch.noticed.lock() {
            waiting.retain(|jump| !noticed.contains(jump));
        }
        self.tell(None, "clock");
        Ok(())
    }

    /// Somebody has looked, and the clock is right.
    ///
    /// # Errors
    /// No reason, nobody named; nothing to confirm; what the store says.
    pub async fn confirm_clock(&self, confirm: &ConfirmClock) -> Result<(), AppError> {
        crate::need::need_reason(&confirm.reason)?;
        crate::need::need_name(&confirm.by)?;
        self.watch_clock().await?;
        let mut tx = self.store.write().await?;
        if self.clock_doubt(&mut tx).await?.is_none() {
            return Err(AppError::conflict(ClockFault::NothingWrong));
        }
        // If this clock is right, what bears a later time was made on a wrong one. It is not held against the clock again;
        // what is entered from now on is.
        let now = self.now();
        let mut passed_over = tx.newest_entries(NEWEST_OF).await?;
        passed_over.retain(|at| *at > now + CLOCKS_DIFFER);
        let body = serde_json::json!({ "reason": confirm.reason.trim(), "now": now, "passed_over": passed_over });
        self.log(&mut tx, None, None, EventKind::ClockConfirmed, &confirm.by, body).await?;
        tx.commit().await?;
        self.tell(None, "clock");
        Ok(())
    }

    /// Refuses to go on with a clock that is wrong for what it is needed for.
    pub(crate) async fn need_sound_clock(&self, tx: &mut Tx, needed_for: ClockUse) -> Result<(), AppError> {
        match self.clock_doubt(tx).await? {
            Some(doubt @ ClockDoubt::BehindNewest { .. }) => Err(AppError::ClockWrong(doubt)),
            Some(doubt @ ClockDoubt::Jumped { .. }) if needed_for == ClockUse::Cure => Err(AppError::ClockWrong(doubt)),
            _ => Ok(()),
        }
    }

    async fn clock_doubt(&self, tx: &mut Tx) -> Result<Option<ClockDoubt>, AppError> {
        if self.clock_watch.trusting {
            return Ok(None);
        }
        self.look_at_clock();
        let confirmed = tx.last_event_of(&[EventKind::ClockConfirmed]).await?;
        let time = |event: &store::Event, key: &str| {
            event.body.get(key).and_then(|v| v.as_str()).and_then(|t| t.parse::<Timestamp>().ok())
        };
        let passed_over: Vec<Timestamp> = confirmed
            .and_then(|event| serde_json::from_value(event.body.get("passed_over")?.clone()).ok())
            .unwrap_or_default();
        let now = self.now();
        let newest = tx.newest_entries(NEWEST_OF).await?.into_iter().filter(|at| !passed_over.contains(at)).max();
        if let Some(newest) = newest.filter(|newest| *newest > now + CLOCKS_DIFFER) {
            return Ok(Some(ClockDoubt::BehindNewest { now, newest }));
        }
        let waiting = self.clock_watch.noticed.lock().ok().and_then(|noticed| noticed.last().copied());
        if let Some(Jump { from, to }) = waiting {
            return Ok(Some(ClockDoubt::Jumped { from, to }));
        }
        let last = tx
            .last_event_of(&[EventKind::ClockJumped, EventKind::ClockConfirmed])
            .await?
            .filter(|event| event.kind == EventKind::ClockJumped);
        Ok(last.and_then(|event| Some(ClockDoubt::Jumped { from: time(&event, "from")?, to: time(&event, "to")? })))
    }

    /// Holds the clock against the time that passed since it was last found right.
    fn look_at_clock(&self) {
        let (now, passed) = (self.clock.now(), self.clock.passed());
        let Ok(mut base) = self.clock_watch.base.lock() else { return };
        let Some((wall, then)) = base.replace((now, passed)) else { return };
        let went_by = SignedDuration::try_from(passed.saturating_sub(then)).unwrap_or(SignedDuration::MAX);
        let Ok(from) = wall.checked_add(went_by) else { return };
        let moved = now.duration_since(from);
        let slept = moved.is_positive() && !self.clock.counts_sleep();
        if moved.abs() >= JUMP_LEAST
            && !slept
            && let Ok(mut noticed) = self.clock_watch.noticed.lock()
        {
            noticed.push(Jump { from, to: now });
        }
    }
}

fact::facts! {
    /// What is refused of confirming the clock.
    pub(crate) enum ClockFault: "clock_fault" {
        NothingWrong,
    }
}
