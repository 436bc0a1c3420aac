//! The demonstration: loads the invented shop into an empty database.

use crate::order::{JobCount, NewOrder, Receive};
use crate::plan::Accept;
use crate::sheet::Approve;
use crate::{App, AppError};
use jiff::{SignedDuration, Timestamp, ToSpan};
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
        let shop = demo::shop();
        tx.save_shop(&shop, now).await?;
        scales_before(&mut tx, &shop, now).await?;
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
        self.order_demo().await?;
        Ok(true)
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

/// What the scales showed on the days before, when they were calibrated, and a study that was finished.
async fn scales_before(tx: &mut Tx, shop: &Shop, now: Timestamp) -> Result<(), AppError> {
    let ago = |days: i64| now - SignedDuration::from_hours(24 * days);
    let day = |at: Timestamp| at.to_zoned_datetime(jiff::tz::TimeZone::system()).date();
    let event = |scale: &str, at: Timestamp, by: &str, what| ScaleEvent {
        id: EventId(crate::new_id()),
        scale: scale.to_owned(),
        at,
        kept_at: at,
        day: day(at),
        by: by.to_owned(),
        what,
    };
    for gauge in shop.instruments() {
        let mut events: Vec<ScaleEvent> = Vec::new();
        let standards = shop.standards_of(&gauge.key);
        if gauge.key != "frequency" {
            let calibrated = Happened::Calibrated {
                on: day(ago(200)),
                by_whom: "Wexholme Calibrations".into(),
                next_due: Some(day(now + SignedDuration::from_hours(24 * 165))),
                note: "HK-2290".into(),
                adjusted: false,
            };
            events.push(event(&gauge.key, ago(200), BY, calibrated));
        }
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
            let (at, by) = (ago(check.days_ago), if check.days_ago % 3 == 0 { "Tobin" } else { BY });
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
    let row = StudyRow { id: crate::new_id(), at: ago(14), by: BY.into(), plan };
    tx.begin_study(&row, None).await?;
    for (place, reading) in (0..).zip(readings) {
        let reading = StudyReading {
            id: crate::new_id(),
            study: row.id.clone(),
            place,
            typed: format!("{reading:.1}"),
            reading,
            at: ago(14),
            by: BY.into(),
        };
        tx.append_study_reading(&reading, None).await?;
    }
    Ok(())
}
