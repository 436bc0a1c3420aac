//! The demonstration: loads the invented shop into an empty database, with jobs that it finished weeks ago.

use crate::past_work::{BY, load_past, morning, plan};
use app::customer::TakeName;
use app::order::{JobCount, NewOrder, Receive};
use app::sheet::Approve;
use app::{App, AppError, Clock};
use desk::scale_health::judge;
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp, ToSpan};
use std::sync::Arc;
use store::{PartFilter, StudyReading, StudyRow, Tx};
use trade::customer::Customer;
use trade::event_kind::EventKind;
use trade::gauge::print_value;
use trade::id::EventId;
use trade::part::Part;
use trade::scale_event::{CheckRead, Happened, ScaleEvent};
use trade::shop::Shop;
use trade::wrap::Wraps;

/// Seed of the demonstration's stock: the same shop every time.
const SEED: u64 = 7;

/// How long ago the stock came in, days: before the first of the past jobs.
const STOCKED_DAYS_AGO: i64 = 91;

/// Events that mark a database as the demonstration's: one when loading begins, one when all is there. A shop with the
/// first and without the second was broken off.
const BEGUN: EventKind = EventKind::DemoBegun;
const LOADED: EventKind = EventKind::DemoLoaded;

/// What a database holds, as far as the demonstration is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Holds {
    Nothing,
    HalfADemo,
    Demo,
    AnotherShop,
}

/// Opens the invented shop at an address, and loads it where there is none. It is there as a whole or not at all: a
/// file is made beside its place and put there when it is complete; on a server, what was broken off is erased and
/// begun again. With `reset` it is begun again in any case. Returns whether it was loaded now.
///
/// # Errors
/// [`AppError::Conflict`] where the database holds another shop, or where it is to be erased while another program
/// has it open; what the store says.
pub async fn open(url: &str, clock: Arc<dyn Clock>, reset: bool) -> Result<(App, bool), AppError> {
    let Some(file) = store::ShopFile::of(url)? else { return on_server(url, clock, reset).await };
    if file.exists() {
        let app = App::open(url, clock.clone()).await?;
        match holds(&app).await? {
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
    let app = App::open(making.url(), clock.clone()).await?;
    load(&app).await?;
    app.close().await;
    making.finish()?;
    Ok((App::open_existing(url, clock).await?, true))
}

async fn on_server(url: &str, clock: Arc<dyn Clock>, reset: bool) -> Result<(App, bool), AppError> {
    let app = App::open(url, clock.clone()).await?;
    let app = match holds(&app).await? {
        Holds::AnotherShop => {
            app.close().await;
            return Err(another_shop(url));
        }
        Holds::Demo if !reset => return Ok((app, false)),
        Holds::Nothing => app,
        Holds::Demo | Holds::HalfADemo => {
            app.store().erase().await?;
            app.close().await;
            App::open(url, clock).await?
        }
    };
    load(&app).await?;
    Ok((app, true))
}

/// Whose shop this is.
async fn holds(app: &App) -> Result<Holds, AppError> {
    let mut tx = app.store().read().await?;
    if tx.has_event(&LOADED).await? {
        return Ok(Holds::Demo);
    }
    if tx.has_event(&BEGUN).await? {
        return Ok(Holds::HalfADemo);
    }
    let empty = tx.models(None).await?.is_empty() && tx.count_parts(&PartFilter::default()).await? == 0;
    if empty {
        return Ok(Holds::Nothing);
    }
    // Versions before the marks loaded it without them.
    let name = tx.shop().await?.unwrap_or_default().name.clone();
    Ok(if name == crate::shop().name { Holds::Demo } else { Holds::AnotherShop })
}

/// Loads the invented shop into an empty database: its stock, its sheets, jobs that it finished weeks ago. The first
/// sheet is approved and planned, ready for the bench. A database that holds models already is left as it is.
///
/// # Errors
/// What the store says.
pub async fn load(app: &App) -> Result<bool, AppError> {
    let mut tx = app.store().write().await?;
    if !tx.models(None).await?.is_empty() || tx.count_parts(&PartFilter::default()).await? > 0 {
        return Ok(false);
    }
    let now = app.now();
    mark(app, &mut tx, BEGUN).await?;
    let stocked = morning(app.today().saturating_sub(STOCKED_DAYS_AGO.days()));
    for model in crate::models() {
        tx.put_model(&model, stocked).await?;
    }
    let parts = crate::parts(SEED).into_iter();
    let parts: Vec<Part> = parts.map(|part| Part { id: app::request_key().as_str().into(), ..part }).collect();
    tx.insert_parts(&parts, stocked).await?;
    let shop = crate::shop();
    tx.save_shop(&shop, now).await?;
    calibrations(&mut tx, &shop, now).await?;
    tx.commit().await?;
    let (mut sheets, mut jobs) = (Vec::new(), Vec::new());
    for sheet in crate::sheets(app.today()) {
        sheets.push(app.save_sheet(&sheet).await?);
    }
    // The first goes to the bench, the second waits for its plan, the others for approval.
    for sheet in sheets.iter().take(2) {
        jobs.push(app.approve_sheet(&sheet.id, &Approve { steps: None, by: BY.into() }).await?.number);
    }
    // What the past taught counts in the plan of today.
    load_past(app, SEED).await?;
    // Two are kept as customers; the other names wait on the page of customers, as those of earlier versions do.
    for sheet in sheets.iter().take(2) {
        let name = sheet.sheet.player.clone();
        let kept = app.take_name(&TakeName { name, customer: None, by: BY.into() }).await?;
        let customer = Customer {
            glove: "ML".into(),
            grip_diameter_mm: Some(23.1),
            wraps: Some(Wraps { base: 1, full: 1, lower_hand: 0 }),
            ..kept.customer
        };
        app.change_customer(kept.number, &customer, kept.version).await?;
    }
    let mut tx = app.store().write().await?;
    checks_before(&mut tx, &shop, now).await?;
    tx.commit().await?;
    if let Some(&number) = jobs.first() {
        plan(app, number).await?;
    }
    order(app).await?;
    let mut tx = app.store().write().await?;
    mark(app, &mut tx, LOADED).await?;
    tx.commit().await?;
    Ok(true)
}

/// Orders under way: some heads came, grips are late, and the second job waits for a head.
async fn order(app: &App) -> Result<(), AppError> {
    let on = |days: i64| Some(app.today().saturating_add(days.days()));
    let line = |supplier: &str, model: &str, number: Option<&str>, count, ordered: i64, expected: i64| NewOrder {
        supplier: supplier.into(),
        model: model.into(),
        number: number.map(str::to_owned),
        count,
        from_g: None,
        to_g: None,
        jobs: Vec::new(),
        note: String::new(),
        ordered_on: on(-ordered),
        expected_on: on(expected),
        by: BY.into(),
    };
    let lighter = NewOrder {
        from_g: Some(188.0),
        to_g: Some(191.5),
        jobs: vec![JobCount { job: 2, count: 1 }],
        note: "a lighter one, so that nothing goes into the tip".into(),
        ..line("Pellitory Forge", "FIELDFARE", Some("1"), 1, 6, 3)
    };
    let sevens =
        NewOrder { from_g: Some(264.0), to_g: Some(268.0), ..line("Pellitory Forge", "SISKIN", Some("7"), 12, 10, 5) };
    app.place_orders(&[lighter, sevens, line("Sallow & Rime", "FELDSPAR", None, 24, 16, -2)]).await?;
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
    app.receive_order(2, &came).await?;
    Ok(())
}

/// Keeps an event by which the demonstration is known.
async fn mark(app: &App, tx: &mut Tx, kind: EventKind) -> Result<(), AppError> {
    tx.append_event(&store::Event {
        id: app::request_key().as_str().into(),
        at: app.now(),
        by: BY.to_owned(),
        job: None,
        club: None,
        kind,
        body: serde_json::json!({}),
    })
    .await?;
    Ok(())
}

fn another_shop(url: &str) -> AppError {
    AppError::conflict(DemoFault::AnotherShop { place: store::shown_address(url).to_string() })
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
    ScaleEvent { id: EventId(app::request_key()), scale, at, kept_at: at, day: day(at), by, what }
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
        for check in crate::checks().into_iter().filter(|c| c.scale == gauge.key) {
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
                    reason: spoken.finding.into(),
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
    let (plan, readings) = crate::study()?;
    let row = StudyRow { id: app::request_key(), at: ago(now, 14), by: BY.into(), plan };
    tx.begin_study(&row, None).await?;
    for (place, reading) in (0..).zip(readings) {
        let reading = StudyReading {
            id: app::request_key(),
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

fact::facts! {
    /// What is refused of loading the invented shop.
    pub(crate) enum DemoFault: "demo_fault" {
        AnotherShop { place: String },
    }
}
