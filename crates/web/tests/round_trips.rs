//! Goal: one reading costs one load of the job's file, one solve of the belief before it and one after, and one ranking
//! of what can be done; and what is kept of that is never older than the database.
//! Method: what the program counts of its own work around a form and the page that it leads to; files and pages held
//! against those of a second program that opens the same database and has kept nothing.

use crate::support::truth::{DRY, Truth};
use crate::support::{Bench, although, hidden, planned, reading};
use app::WorkDone;
use axum::http::StatusCode;
use serde_json::json;

/// A swing weight as it is typed: `D9.183`.
fn notation(points: f64) -> String {
    let letter = (points / 10.0).floor();
    format!("{}{:.3}", char::from(b'A' + letter as u8), points - 10.0 * letter)
}

/// What a club reads dry.
async fn dry(bench: &Bench, slot: usize) -> f64 {
    let plan = bench.get("/jobs/1").await["job"]["clubs"][slot - 1]["plan"].clone();
    Truth::of(&plan).points(&DRY)
}

/// Types a swing weight at the screen of a club, and looks at the page that it leads to.
async fn typed(bench: &Bench, slot: usize, page: &str, points: f64) -> String {
    let (version, key) = (hidden(page, "version"), hidden(page, "request_key"));
    let points = notation(points);
    let fields = [("step", "dry"), ("version", version), ("request_key", key), ("read-swing_weight", &points)];
    let sent = bench.form(&format!("/bench/1/{slot}"), &fields).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
    bench.page(&sent.location).await.text
}

/// What the program does for a reading that is typed, and for the page that it leads to.
async fn work_of(bench: &Bench, slot: usize, page: &str, points: f64) -> WorkDone {
    let before = bench.app.work_done();
    typed(bench, slot, page, points).await;
    bench.app.work_done().since(before)
}

/// A page without what is made for each look at it.
fn without_keys(page: &str) -> String {
    let mut pieces = page.split("name=\"request_key\" value=\"");
    let mut rest = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        rest.push_str(piece.split_once('"').map_or(piece, |(_, rest)| rest));
    }
    rest
}

#[tokio::test]
async fn a_reading_typed_at_the_bench_is_worked_out_once() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let (first, second) = (dry(&bench, 1).await, dry(&bench, 2).await);
    let page = bench.page("/bench/1/1?step=dry").await.text;
    // Something was changed since the screen was shown, so that nothing kept from it may be used.
    bench.made("/models/import", crate::support::models()).await;
    let done = work_of(&bench, 1, &page, first).await;
    assert_eq!(done, WorkDone { loads: 1, solves: 2, rankings: 1, offers: 1 }, "from nothing");
    // The screen that is shown has what the next reading is held against: only the belief with the reading is to solve.
    let page = bench.page("/bench/1/2?step=dry").await.text;
    let done = work_of(&bench, 2, &page, second).await;
    assert_eq!(done, WorkDone { loads: 0, solves: 1, rankings: 1, offers: 1 }, "after the screen");
    // One that takes the place of another is held against the belief without that other.
    let page = bench.page("/bench/1/2?step=dry").await.text;
    let done = work_of(&bench, 2, &page, second + 0.2).await;
    assert_eq!(done, WorkDone { loads: 0, solves: 2, rankings: 1, offers: 1 }, "in place of another");
    // Looking again is no work.
    let before = bench.app.work_done();
    bench.page("/bench/1/2?step=dry&kept=1").await;
    bench.page("/bench/1/grid/dry?kept=2").await;
    bench.get("/jobs/1").await;
    assert_eq!(bench.app.work_done().since(before), WorkDone::default());
}

#[tokio::test]
async fn the_set_grid_and_the_api_work_out_a_reading_once() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let (first, second) = (dry(&bench, 1).await, dry(&bench, 2).await);
    let page = bench.page("/bench/1/grid/dry").await.text;
    let before = bench.app.work_done();
    let (version, key, points) = (hidden(&page, "version"), hidden(&page, "request_key"), notation(first));
    let fields =
        [("slot", "1"), ("what", "swing_weight"), ("version", version), ("request_key", key), ("typed", &points)];
    let sent = bench.form("/bench/1/grid/dry", &fields).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
    bench.page(&sent.location).await;
    let done = bench.app.work_done().since(before);
    assert_eq!(done, WorkDone { loads: 0, solves: 1, rankings: 1, offers: 1 });
    let before = bench.app.work_done();
    let entry = json!([{ "what": "swing_weight", "value": second }]);
    bench.made("/jobs/1/readings", reading(2, "dry", entry)).await;
    let done = bench.app.work_done().since(before);
    assert_eq!(done, WorkDone { loads: 0, solves: 1, rankings: 1, offers: 0 });
}

#[tokio::test]
async fn what_is_kept_is_what_the_database_holds() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    planned(&bench).await;
    // Readings that are right, one off by much, one in place of it, a check weight, one taken back, a last step.
    let mut points = Vec::new();
    for slot in 1..=3 {
        points.push(dry(&bench, slot).await);
    }
    let sw = |value: f64| json!([{ "what": "swing_weight", "value": value }]);
    let sent = [
        ("/jobs/1/readings", reading(1, "dry", sw(points[0]))),
        ("/jobs/1/readings", reading(2, "dry", sw(points[1] + 4.0))),
        ("/jobs/1/readings", reading(2, "dry", sw(points[1]))),
        ("/jobs/1/readings", reading(3, "dry", sw(points[2]))),
        ("/jobs/1/let-pass", json!({ "slot": 1, "step": "finish", "reason": "a test", "by": "Ada" })),
        (
            "/jobs/1/readings",
            although(reading(1, "finish", json!([{ "what": "total_mass", "value": 430.0 }])), "a test"),
        ),
    ];
    for (path, body) in sent {
        bench.made(path, body.clone()).await;
        let fresh = Bench::open_in(folder.path()).await;
        let (kept, loaded) = (bench.app.job_file(1).await.expect("job 1"), fresh.app.job_file(1).await.expect("job 1"));
        assert_eq!(format!("{:?}", **kept), format!("{:?}", **loaded), "after {body}");
        for page in ["/bench/1/2?step=dry", "/bench/1/1?step=finish", "/bench/1/grid/dry?kept=2"] {
            let (ours, theirs) = (bench.page(page).await.text, fresh.page(page).await.text);
            assert_eq!(without_keys(&ours), without_keys(&theirs), "{page} after {body}");
        }
    }
    // What another program changes is seen at the next look.
    let other = Bench::open_in(folder.path()).await;
    let record = bench.get("/jobs/1/record").await;
    let last = record["clubs"][2]["readings"][0]["reading"]["id"].as_str().expect("a reading");
    let path = format!("/jobs/1/readings/{last}/take-back");
    other.made(&path, json!({ "reason": "the wrong club", "by": "Bo" })).await;
    let (kept, loaded) = (bench.app.job_file(1).await.expect("job 1"), other.app.job_file(1).await.expect("job 1"));
    assert_eq!(format!("{:?}", **kept), format!("{:?}", **loaded));
    assert!(kept.readings.iter().any(|r| r.taken_back.as_deref() == Some("the wrong club")));
}

#[tokio::test]
async fn a_reading_that_is_refused_leaves_nothing_behind() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.app.job_file(1).await.expect("job 1");
    let far = json!([{ "what": "swing_weight", "value": 1.0e9 }]);
    bench
        .refused("POST", "/jobs/1/readings", StatusCode::UNPROCESSABLE_ENTITY, reading(1, "dry", far).to_string())
        .await;
    let after = bench.app.job_file(1).await.expect("job 1");
    assert!(std::sync::Arc::ptr_eq(&before, &after), "nothing was changed, so nothing is read again");
}
