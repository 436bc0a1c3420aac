//! Goal: what is said of a scale is what its checks say: charts, trust, offset and drift, questions before an entry is
//! kept, the belief of a job, the gauge study. Method: checks written by hand or drawn with a fixed seed from a scale
//! whose truth is known; published figures where there are some.

mod checks;
mod gauge_study;
mod questions;

use jiff::Timestamp;
use jiff::civil::{Date, date};
use quantity::Units;
use trade::gauge::{Gauge, Measures, Standard};
use trade::id::EventId;
use trade::scale_event::{CheckRead, Happened, ScaleEvent};
use words::Words;

/// What a reader of English is told.
fn w() -> Words {
    Words::english(Units::default())
}

fn gram_scale() -> Gauge {
    Gauge {
        key: "mass".into(),
        name: "gram scale".into(),
        measures: Measures::Mass,
        display_step: 0.1,
        noise_sd: 0.05,
        offset_sd: 0.05,
    }
}

fn weight(key: &str, value: f64) -> Standard {
    Standard {
        key: key.into(),
        name: format!("{value} g weight"),
        scale: "mass".into(),
        value,
        sd: 0.01,
        certified_on: Some(date(2025, 6, 1)),
        certificate: "K 7".into(),
        tolerance: Some(0.3),
        mass_g: None,
    }
}

/// Monday 2 March 2026 and the days after it.
fn day(n: i32) -> Date {
    date(2026, 3, 2).checked_add(jiff::Span::new().days(n)).expect("a day")
}

fn event(n: i32, id: &str, what: Happened) -> ScaleEvent {
    let at: Timestamp = "2026-03-02T08:00:00Z".parse().expect("a time");
    let at = at + jiff::SignedDuration::from_hours(24 * i64::from(n));
    ScaleEvent { id: EventId(id.into()), scale: "mass".into(), at, kept_at: at, day: day(n), by: "Ada".into(), what }
}

fn read(standard: &Standard, reading: f64) -> CheckRead {
    CheckRead {
        standard: standard.key.clone(),
        name: standard.name.clone(),
        typed: reading.to_string(),
        reading,
        certified: standard.value,
        certified_sd: standard.sd,
        tolerance: standard.tolerance_on(&gram_scale()),
        display_step: 0.1,
        noise_sd: 0.05,
        kept_though: None,
        job: None,
    }
}

fn check(n: i32, reading: f64) -> ScaleEvent {
    event(n, &format!("check-{n:03}"), Happened::Check(read(&weight("w200", 200.0), reading)))
}

/// One check a day, of readings.
fn daily(readings: &[f64]) -> Vec<ScaleEvent> {
    (0..).zip(readings).map(|(n, reading)| check(n, *reading)).collect()
}
