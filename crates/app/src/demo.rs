//! The demonstration: loads the invented shop into an empty database, with jobs that it finished weeks ago.

mod past;

use crate::order::{JobCount, NewOrder, Receive};
use crate::plan::Accept;
use crate::sheet::Approve;
use crate::{App, AppError, Clock, load_shop};
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp, ToSpan};
use std::sync::Arc;
use store::{PartFilter, StudyReading, StudyRow, Tx};
use workshop::demo;
use workshop::health::{CheckRead, Happened, ScaleEvent, judge, print_value};
use workshop::id::EventId;
use workshop::part::Part;
use workshop::shop::Shop;

/// Seed of the demonstration's stock: the same shop every time.
const SEED: u64 = 7;
/// Who does what in the demonstration.
const BY: &str = "Ines";

/// How long ago the stock came in, days: before the first of the past jobs.
const STOCKED_DAYS_AGO: i64 = 91;

/// Events that mark a database as the demonstration's: one when loading begins, one when all is there. A shop with the
/// first and without the second was broken off.
const BEGUN: &str = "demo_begun";
const LOADED: &str = "demo_loaded";

/// What a database holds, as far as the demonstration is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Holds {
    Nothing,
    HalfADemo,
    Demo,
    AnotherShop,
}

impl App {
    /// Opens the invented shop at an address, and loads it where there is none. It is there as a whole or not at all: a
    /// file is made beside its place and put there when it is complete; on a server, what was broken off is erased and
    /// begun again. With `reset` it is begun again in any case. Returns whether it was loaded now.
    ///
    /// # Errors
    /// [`AppError::Conflict`] where the database holds another shop, or where it is to be erased while another program
    /// has it open; what the store says.
    pub async fn open_demo(url: &str, clock: Arc<dyn Clock>, reset: bool) -> Result<(Self, bool), AppError> {
        let Some(file) = store::ShopFile::of(url)? else { return Self::demo_on_server(url, clock, reset).await };
        if file.exists() {
            let app = Self::open(url, clock.clone()).await?;
            match app.holds().await? {
                Holds::AnotherShop => {
                    app.close().await;
                    return Err(another_shop(url));
                }
                Holds::Demo if !reset => return Ok((app, false)),
                Holds::Demo | Holds::HalfADemo | Holds::Nothing => app.close().await,
            }
            file.erase().await?;
        }
        let making = file.begin()?;
        let app = Self::open(making.url(), clock.clone()).await?;
        app.load_demo().await?;
        app.close().await;
        making.finish()?;
        Ok((Self::open_existing(url, clock).await?, true))
    }

    async fn demo_on_server(url: &str, clock: Arc<dyn Clock>, reset: bool) -> Result<(Self, bool), AppError> {
        let app = Self::open(url, clock.clone()).await?;
        let app = match app.holds().await? {
            Holds::AnotherShop => {
                app.close().await;
                return Err(another_shop(url));
            }
            Holds::Demo if !reset => return Ok((app, false)),
            Holds::Nothing => app,
            Holds::Demo | Holds::HalfADemo => {
                app.store.erase().await?;
                app.close().await;
                Self::open(url, clock).await?
            }
        };
        app.load_demo().await?;
        Ok((app, true))
    }

    /// Whose shop this is.
    async fn holds(&self) -> Result<Holds, AppError> {
        let mut tx = self.store.read().await?;
        if tx.has_event(LOADED).await? {
            return Ok(Holds::Demo);
        }
        if tx.has_event(BEGUN).await? {
            return Ok(Holds::HalfADemo);
        }
        let empty = tx.models(None).await?.is_empty() && tx.count_parts(&PartFilter::default()).await? == 0;
        if empty {
            return Ok(Holds::Nothing);
        }
        // Versions before the marks loaded it without them.
        let name = load_shop(&mut tx).await?.name.clone();
        Ok(if name == demo::shop().name { Holds::Demo } else { Holds::AnotherShop })
    }

    /// Loads the invented shop into an empty database: its stock, its sheets, jobs that it finished weeks ago. The first
    /// sheet is approved and planned, ready for the bench. A database that holds models already is left as it is.
    ///
    /// # Errors
    /// What the store says.
    pub async fn load_demo(&self) -> Result<bool, AppError> {
        let mut tx = self.store.write().await?;
        if !tx.models(None).await?.is_empty() || tx.count_parts(&PartFilter::default()).await? > 0 {
            return Ok(false);
        }
        let now = self.now();
        self.log(&mut tx, None, None, BEGUN, BY, serde_json::json!({})).await?;
        let stocked = past::morning(self.today().saturating_sub(STOCKED_DAYS_AGO.days()));
        for model in demo::models() {
            tx.put_model(&model, stocked).await?;
        }
        let parts = demo::parts(SEED).into_iter();
        let parts: Vec<Part> = parts.map(|part| Part { id: crate::new_id().as_str().into(), ..part }).collect();
        tx.insert_parts(&parts, stocked).await?;
        let shop = demo::shop();
        tx.save_shop(&shop, now).await?;
        calibrations(&mut tx, &shop, now).await?;
        tx.commit().await?;
        let (mut sheets, mut jobs) = (Vec::new(), Vec::new());
        for sheet in demo::sheets(self.today()) {
            sheets.push(self.save_sheet(&sheet).await?);
        }
        // The first goes to the bench, the second waits for its plan, the others for approval.
        for sheet in sheets.iter().take(2) {
            jobs.push(self.approve_sheet(&sheet.id, &Approve { steps: None, by: BY.into() }).await?.number);
        }
        // What the past taught counts in the plan of today.
        self.load_past(SEED).await?;
        let mut tx = self.store.write().await?;
        checks_before(&mut tx, &shop, now).await?;
        tx.commit().await?;
        if let Some(&number) = jobs.first() {
            self.plan_demo(number).await?;
        }
        self.order_demo().await?;
        let mut tx = self.store.write().await?;
        self.log(&mut tx, None, None, LOADED, BY, serde_json::json!({})).await?;
        tx.commit().await?;
        Ok(true)
    }

    /// Accepts the plan of a job as it is proposed.
    async fn plan_demo(&self, number: i64) -> Result<(), AppError> {
        let proposal = self.propose(number, &[]).await?;
        let accept = Accept {
            fingerprint: proposal.fingerprint,
            locks: Vec::new(),
            partly: true,
            neighbour_reason: String::new(),
            by: BY.into(),
        };
        self.accept(number, &accept).await?;
        Ok(())
    }

    /// Orders under way: some heads came, grips are late, and the second job waits for a head.
    async fn order_demo(&self) -> Result<(), AppError> {
        let day = |days: i64| Some(self.today().saturating_add(days.days()));
        let order = |supplier: &str, model: &str, number: Option<&str>, count, ordered: i64, expected: i64| NewOrder {
            supplier: supplier.into(),
            model: model.into(),
            number: number.map(str::to_owned),
            count,
            from_g: None,
            to_g: None,
            jobs: Vec::new(),
            note: String::new(),
            ordered_on: day(-ordered),
            expected_on: day(expected),
            by: BY.into(),
        };
        let lighter = NewOrder {
            from_g: Some(188.0),
            to_g: Some(191.5),
            jobs: vec![JobCount { job: 2, count: 1 }],
            note: "a lighter one, so that nothing goes into the tip".into(),
            ..order("Pellitory Forge", "FIELDFARE", Some("1"), 1, 6, 3)
        };
        let sevens = NewOrder {
            from_g: Some(264.0),
            to_g: Some(268.0),
            ..order("Pellitory Forge", "SISKIN", Some("7"), 12, 10, 5)
        };
        self.place_orders(&[lighter, sevens, order("Sallow & Rime", "FELDSPAR", None, 24, 16, -2)]).await?;
        let came = Receive {
            count: 5,
            model: None,
            number: None,
            short: false,
            anyway: false,
            note: "the others follow".into(),
            by: BY.into(),
            version: None,
        };
        self.receive_order(2, &came).await?;
        Ok(())
    }
}

fn another_shop(url: &str) -> AppError {
    AppError::Conflict {
        what: format!("{} holds another shop than the invented one, so nothing was changed", store::shown_address(url)),
        next: "Leave --database out: the invented shop has a database of its own".into(),
    }
}

/// The time so many days before.
fn ago(now: Timestamp, days: i64) -> Timestamp {
    now - SignedDuration::from_hours(24 * days)
}

fn day(at: Timestamp) -> Date {
    at.to_zoned_datetime(jiff::tz::TimeZone::system()).date()
}

fn event(scale: &str, at: Timestamp, by: &str, what: Happened) -> ScaleEvent {
    let (scale, by) = (scale.to_owned(), by.to_owned());
    ScaleEvent { id: EventId(crate::new_id()), scale, at, kept_at: at, day: day(at), by, what }
}

/// When the scales were calibrated.
async fn calibrations(tx: &mut Tx, shop: &Shop, now: Timestamp) -> Result<(), AppError> {
    for gauge in shop.instruments().iter().filter(|g| g.key != "frequency") {
        let calibrated = Happened::Calibrated {
            on: day(ago(now, 200)),
            by_whom: "Wexholme Calibrations".into(),
            next_due: Some(day(now + SignedDuration::from_hours(24 * 165))),
            note: "HK-2290".into(),
            adjusted: false,
        };
        tx.append_scale_event(&event(&gauge.key, ago(now, 200), BY, calibrated), None).await?;
    }
    Ok(())
}

/// What the scales showed on the days before, and a study that was finished.
async fn checks_before(tx: &mut Tx, shop: &Shop, now: Timestamp) -> Result<(), AppError> {
    for gauge in shop.instruments() {
        let mut events: Vec<ScaleEvent> = Vec::new();
        let standards = shop.standards_of(&gauge.key);
        for check in demo::checks().into_iter().filter(|c| c.scale == gauge.key) {
            let Some(standard) = standards.iter().find(|s| s.key == check.standard) else { continue };
            let reading = ((standard.value + check.error) * 10.0).round() / 10.0;
            let read = CheckRead {
                standard: standard.key.clone(),
                name: standard.name.clone(),
                typed: print_value(&gauge, reading),
                reading,
                certified: standard.value,
                certified_sd: standard.sd,
                tolerance: standard.tolerance_on(&gauge),
                display_step: gauge.display_step,
                noise_sd: gauge.noise_sd,
                kept_though: None,
                job: None,
            };
            let (at, by) = (ago(now, check.days_ago), if check.days_ago % 3 == 0 { "Tobin" } else { BY });
            events.push(event(&gauge.key, at, by, Happened::Check(read)));
            let told = events.iter().any(|e| matches!(e.what, Happened::Distrusted { .. }));
            if let Some(spoken) = judge(&events, &gauge)?.filter(|_| !told) {
                let what = Happened::Distrusted {
                    cause: spoken.cause,
                    reason: spoken.reason,
                    check: Some(spoken.check),
                    since: spoken.since,
                    off_by: spoken.off_by,
                };
                events.push(event(&gauge.key, at, by, what));
            }
        }
        for event in &events {
            tx.append_scale_event(event, None).await?;
        }
    }
    let (plan, readings) = demo::study()?;
    let row = StudyRow { id: crate::new_id(), at: ago(now, 14), by: BY.into(), plan };
    tx.begin_study(&row, None).await?;
    for (place, reading) in (0..).zip(readings) {
        let reading = StudyReading {
            id: crate::new_id(),
            study: row.id.clone(),
            place,
            typed: format!("{reading:.1}"),
            reading,
            at: ago(now, 14),
            by: BY.into(),
        };
        tx.append_study_reading(&reading, None).await?;
    }
    Ok(())
}
