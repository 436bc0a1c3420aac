//! The health of the shop's scales: how each stands, its checks, its trust and calibration, what Today says of it.

mod bench_check;
mod check;
mod today;
mod word;

pub use check::{CheckAnswer, NewCheck};
pub use today::ScaleToday;
pub use word::{NewCalibration, TrustWord, WithReason};

use crate::clock::CLOCKS_DIFFER;
use crate::scale_watch::watch_now;
use crate::{App, AppError, load_shop, new_id};
use bench::today_offset::{TodayOffset, today_offset};
use desk::scale_health::{CheckChart, Offset, charts, offset, trust};
use fact::facts;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};
use store::Tx;
use trade::gauge::{Gauge, Standard};
use trade::id::EventId;
use trade::scale_event::{Happened, ScaleEvent, standing_checks};
use trade::shop::Shop;
use trade::trust::Trust;
use utoipa::ToSchema;

/// Events that a scale's page shows.
const EVENTS_SHOWN: usize = 60;

/// The last calibration.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CalibrationView {
    /// When.
    #[schema(value_type = String, format = Date)]
    pub on: Date,
    /// Who calibrated it: a person, or a laboratory's name.
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

facts! {
    /// What is odd about this machine's clock.
    pub enum ScaleClock: "scale_clock" {
        /// It is behind an entry that is kept.
        Behind {
            /// What it shows.
            now_at: Timestamp,
            /// Time of the last entry.
            last_at: Timestamp,
        },
    }
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
    /// What is odd about the clock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clock: Option<ScaleClock>,
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
            clock: behind.map(|last_at| ScaleClock::Behind { now_at: now, last_at }),
            events: events.iter().rev().take(EVENTS_SHOWN).cloned().collect(),
            gauge,
        })
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
}

/// The shop's day of a time.
fn day_of(at: Timestamp) -> Date {
    at.to_zoned_datetime(jiff::tz::TimeZone::system()).date()
}
