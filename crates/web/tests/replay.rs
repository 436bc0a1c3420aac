//! Goal: what is sent twice with one key is kept once and answered whole, and what is not the same is not taken for it.
//! Method: several figures in one request, sent again as a tablet or a program does that lost the answer, on a clock
//! that moves on with every look at it, as the machine's does.

use crate::support::answer::detail;
use crate::support::{Bench, planned, reading};
use app::{App, Clock};
use axum::http::StatusCode;
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};
use std::time::Duration;

const CONFLICT: StatusCode = StatusCode::CONFLICT;

/// A clock that has moved on each time that it is looked at.
#[derive(Default)]
struct Ticking(AtomicI64);

impl Clock for Ticking {
    fn now(&self) -> Timestamp {
        let start: Timestamp = "2026-03-02T08:00:00Z".parse().expect("a time");
        start + SignedDuration::from_micros(70 * self.0.fetch_add(1, Ordering::Relaxed))
    }

    fn passed(&self) -> Duration {
        Duration::from_micros(70) * u32::try_from(self.0.load(Ordering::Relaxed)).expect("a short test")
    }
}

/// A job ready for the bench, on such a clock.
async fn ticking_bench(folder: &tempfile::TempDir) -> Bench {
    let mut bench = Bench::open_in(folder.path()).await;
    let url = format!("sqlite:{}", folder.path().join("shop.db").display());
    bench.app = App::open(&url, Arc::new(Ticking::default())).await.expect("a shop");
    bench.router = web::router(bench.app.clone(), web::ServerNames::default());
    planned(&bench).await;
    bench
}

/// Loft and lie of the loose head of the last club.
fn as_received(lie: &str, key: &str) -> Value {
    let entries = json!([{ "what": "loft", "typed": "49.5" }, { "what": "lie", "typed": lie }]);
    keyed(reading(8, "received", entries), key)
}

fn keyed(mut request: Value, key: &str) -> Value {
    request["request_key"] = json!(key);
    request
}

/// What was read of a club, as typed, in the order of entry.
async fn typed(bench: &Bench, slot: usize) -> Vec<String> {
    let record = bench.get("/jobs/1/record").await;
    let readings = record["clubs"][slot - 1]["readings"].as_array().expect("readings");
    let of = |r: &Value| format!("{} {}", r["reading"]["what"].as_str().expect("what"), r["reading"]["typed"]);
    readings.iter().map(|r| of(r).replace('"', "")).collect()
}

#[tokio::test]
async fn two_figures_that_are_sent_again_are_both_in_the_answer_and_kept_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = ticking_bench(&folder).await;
    let first = bench.made("/jobs/1/readings", as_received("63.5", "K")).await;
    assert_eq!(first["repeated"], json!(false));
    let (status, again) = bench.post("/jobs/1/readings", as_received("63.5", "K")).await;
    assert_eq!((status, &again["repeated"]), (StatusCode::OK, &json!(true)), "{again}");
    let whats = |kept: &Value| -> Vec<Value> {
        kept["readings"].as_array().expect("readings").iter().map(|r| r["what"].clone()).collect()
    };
    assert_eq!(whats(&first), ["loft", "lie"]);
    assert_eq!(again["readings"], first["readings"]);
    assert_eq!(again["club"]["version"], first["club"]["version"], "the club did not change");
    assert_eq!(typed(&bench, 8).await, ["loft 49.5", "lie 63.5"]);

    // One of the two is taken back: the answer to the same request says so, and keeps nothing in its place.
    let lie = first["readings"][1]["id"].as_str().expect("an id");
    bench.made(&format!("/jobs/1/readings/{lie}/take-back"), json!({ "why": "read off the label", "by": "Ada" })).await;
    let (status, again) = bench.post("/jobs/1/readings", as_received("63.5", "K")).await;
    assert_eq!(status, StatusCode::OK, "{again}");
    assert_eq!(again["readings"][1]["taken_back"]["words"], "read off the label");
    assert_eq!(again["readings"][0], first["readings"][0]);
    assert_eq!(typed(&bench, 8).await.len(), 2);
}

#[tokio::test]
async fn another_request_under_a_key_that_was_used_is_refused_whole() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = ticking_bench(&folder).await;
    bench.made("/jobs/1/readings", as_received("63.5", "K")).await;
    let before = bench.picture().await;
    let loft = json!({ "what": "loft", "typed": "49.5" });
    let lie = json!({ "what": "lie", "typed": "63.5" });
    let at_received = |slot, entries: Value| keyed(reading(slot, "received", entries), "K");
    let others = [
        ("another second figure", as_received("60.0", "K")),
        ("another first figure", at_received(8, json!([{ "what": "loft", "typed": "49" }, lie]))),
        ("one figure less", at_received(8, json!([loft]))),
        ("the second figure alone", at_received(8, json!([lie]))),
        ("the other order", at_received(8, json!([lie, loft]))),
        ("another club", at_received(7, json!([loft, lie]))),
        ("another step", keyed(reading(8, "cut", json!([loft, lie])), "K")),
        (
            "a reading of another step",
            keyed(reading(8, "dry", json!([{ "what": "swing_weight", "typed": "D2" }])), "K"),
        ),
    ];
    for (what, request) in others {
        let problem = bench.refused("POST", "/jobs/1/readings", CONFLICT, request.to_string()).await;
        let words = detail(&problem);
        assert!(words.contains("kept already, as loft “49.5” and lie “63.5”"), "{what}: {words}");
        assert!(words.contains("take it back and enter it again"), "{what}: {words}");
    }
    assert_eq!(bench.picture().await, before);
    // The same figure in other words is the same request; a key of its own makes another one.
    let same = json!([{ "what": "loft", "typed": "49,50" }, { "what": "lie", "value": 63.5 }]);
    let (status, again) = bench.post("/jobs/1/readings", at_received(8, same)).await;
    assert_eq!(status, StatusCode::OK, "{again}");
    bench.made("/jobs/1/readings", as_received("60.0", "K2")).await;
    assert_eq!(typed(&bench, 8).await, ["loft 49.5", "lie 63.5", "loft 49.5", "lie 60.0"]);
}

#[tokio::test]
async fn a_form_of_two_fields_that_is_sent_again_keeps_both_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = ticking_bench(&folder).await;
    let send = async |lie: &str| {
        let fields = [("step", "received"), ("request_key", "form-1"), ("read-loft", "49.5"), ("read-lie", lie)];
        bench.form("/bench/1/8", &fields).await
    };
    for _ in 0..2 {
        let kept = send("63.5").await;
        assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
        assert_eq!(kept.location, "/bench/1/8?step=received&kept=1");
        assert_eq!(typed(&bench, 8).await, ["loft 49.5", "lie 63.5"]);
    }
    bench.page("/bench/1/8?step=received&kept=1").await.says(StatusCode::OK, &["49.5", "63.5"]);
    // Back, corrected, sent: it is another figure, and the page says that it was not kept.
    let refused = send("60.0").await;
    refused.says(CONFLICT, &["kept already, as loft “49.5” and lie “63.5”", "value=\"60.0\""]);
    assert_eq!(typed(&bench, 8).await, ["loft 49.5", "lie 63.5"]);
}

#[tokio::test]
async fn the_same_request_twice_at_once_keeps_both_figures_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = ticking_bench(&folder).await;
    let one = || bench.post("/jobs/1/readings", as_received("63.5", "K"));
    let ((first, a), (second, b)) = tokio::join!(one(), one());
    let mut statuses = [first, second];
    statuses.sort_by_key(StatusCode::as_u16);
    assert_eq!(statuses, [StatusCode::OK, StatusCode::CREATED]);
    assert_eq!(a["readings"], b["readings"]);
    assert_eq!(typed(&bench, 8).await, ["loft 49.5", "lie 63.5"]);
}

#[tokio::test]
async fn a_cup_that_is_sent_again_is_mixed_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = ticking_bench(&folder).await;
    let cup = |slots: &[i64], lot: &str| json!({ "job": 1, "slots": slots, "lot": lot, "reason": "no dry reading", "by": "Ada", "request_key": "cup" });
    let first = bench.made("/batches", cup(&[1, 2], "B-7")).await;
    let again = bench.made("/batches", cup(&[1, 2], "B-7")).await;
    assert_eq!(again["batch"], first["batch"]);
    for other in [cup(&[1, 3], "B-7"), cup(&[1], "B-7"), cup(&[1, 2], "B-8")] {
        let problem = bench.refused("POST", "/batches", CONFLICT, other.to_string()).await;
        assert!(detail(&problem).contains("started batch 1 already, with other clubs"), "{problem}");
    }
    let form = [
        ("job", "1"),
        ("slot", "1"),
        ("slot", "2"),
        ("lot", "B-7"),
        ("reason", "no dry reading"),
        ("request_key", "cup"),
    ];
    assert_eq!(bench.form("/glue/new", &form).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.get("/batches").await.as_array().map(Vec::len), Some(1));
    assert_eq!(typed(&bench, 1).await, ["done batch 1"]);
    assert_eq!(typed(&bench, 3).await, [""; 0]);
}
