//! Goal: no joint counts as cured, and no entry bears a time, by a clock that is wrong; and what a tablet kept while the
//! network was away bears the time when it was typed.
//! Method: the clock is set as a small computer without a battery has it, as a hand sets it, and as the network does;
//! what is refused, what is kept and what the Today page says are looked at through the API and the pages.

use crate::support::answer::{Answer, detail};
use crate::support::{Bench, hidden, planned, reading};
use app::clock_doubt::ClockDoubt;
use axum::http::StatusCode;
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};

/// When the bench of these tests opens.
const MORNING: &str = "2026-03-02T08:00:00Z";

fn time(text: &str) -> Timestamp {
    text.parse().expect("a time")
}

fn hours(hours: i64) -> SignedDuration {
    SignedDuration::from_hours(hours)
}

fn cup(slots: &[i64]) -> Value {
    json!({ "job": 1, "slots": slots, "lot": "B-7", "reason": "no dry reading in this test", "by": "Ada" })
}

fn dry(slot: usize) -> Value {
    reading(slot, "dry", json!([{ "what": "swing_weight", "typed": "D9.7" }]))
}

fn turned(slot: usize) -> Value {
    reading(slot, "turned", json!([{ "what": "done" }]))
}

/// What is kept of the job and its glue, whatever the time is.
async fn kept(bench: &Bench) -> (Value, Vec<i64>) {
    let mut record = bench.get("/jobs/1/record").await;
    let job = bench.get("/jobs/1").await;
    let versions = job["job"]["clubs"].as_array().expect("clubs").iter().map(|c| c["version"].as_i64().expect("one"));
    let versions = versions.collect();
    (json!([record["clubs"].take(), record["batches"].take()]), versions)
}

fn is_of_the_clock(problem: &Value, words: &[&str]) {
    assert_eq!(problem["type"], "urn:setwright:problem:clock", "{problem}");
    for word in words {
        assert!(detail(problem).contains(word), "“{word}” is not in {problem}");
    }
}

/// The forms of the pages that keep a reading or start a batch.
async fn sent_by_pages(bench: &Bench, key: &str) -> Vec<(&'static str, Answer)> {
    let one = bench.form("/bench/1/2", &[("step", "dry"), ("request_key", key), ("read-swing_weight", "D9.7")]).await;
    let version = hidden(&bench.page("/bench/1/grid/dry?at=3").await.text, "version").to_owned();
    let key_of_grid = format!("{key}-grid");
    let fields = [
        ("slot", "3"),
        ("what", "swing_weight"),
        ("typed", "D9.7"),
        ("request_key", key_of_grid.as_str()),
        ("version", version.as_str()),
    ];
    let grid = bench.form("/bench/1/grid/dry", &fields).await;
    vec![("one club", one), ("grid", grid), ("glue", glued_by_page(bench, "4", &format!("{key}-cup")).await)]
}

async fn glued_by_page(bench: &Bench, slot: &str, key: &str) -> Answer {
    let fields = [("job", "1"), ("slot", slot), ("lot", "B-7"), ("reason", "no dry reading"), ("request_key", key)];
    bench.form("/glue/new", &fields).await
}

/// The shop after its program was started again, with the clock as it is then.
async fn started_again(folder: &tempfile::TempDir, at: Timestamp) -> Bench {
    let bench = Bench::open_in(folder.path()).await;
    bench.clock.set(at);
    bench
}

#[tokio::test]
async fn behind_the_newest_entry_no_glue_is_mixed_no_gate_opens_and_nothing_is_read() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    planned(&bench).await;
    bench.made("/jobs/1/readings", dry(1)).await;
    bench.made("/batches", cup(&[1])).await;
    // So long after the mixing that the first joint can be handled; another reading makes it the newest entry.
    bench.clock.advance(hours(7));
    bench.made("/jobs/1/readings", dry(2)).await;
    let newest = bench.clock.as_ref();
    let newest = app::Clock::now(newest);
    drop(bench);

    // No battery, four hundred days, and little more than two clocks may differ.
    let behind = [time("1970-01-01T00:00:00Z"), newest - hours(24 * 400), newest - SignedDuration::from_secs(301)];
    for at in behind {
        let bench = started_again(&folder, at).await;
        let before = kept(&bench).await;
        let state = bench.get("/clock").await;
        assert_eq!(state["doubt"]["doubt"], "behind_newest", "{state}");
        assert_eq!(time(state["doubt"]["newest"].as_str().expect("a time")), newest);
        let words = ["but an entry was made on", "Nothing is kept until it is right", "Set the clock"];
        for (path, body) in [("/jobs/1/readings", dry(3)), ("/jobs/1/readings", turned(1)), ("/batches", cup(&[4]))] {
            let problem = bench.refused("POST", path, StatusCode::CONFLICT, body.to_string()).await;
            is_of_the_clock(&problem, &words);
        }
        for (page, answer) in sent_by_pages(&bench, "k").await {
            assert!(answer.text.contains("Nothing is kept until it is right"), "{page} at {at}: {}", answer.text);
            answer.says(StatusCode::CONFLICT, &words);
        }
        assert_eq!(kept(&bench).await, before, "at {at} something was kept");
        let today = bench.page("/").await;
        today.says(
            StatusCode::OK,
            &["not relied on", "Nothing is kept until it is right. Set the clock", "/clock/confirm"],
        );
    }

    // Clocks of tablets and machines differ by some minutes: that alone is no wrong clock.
    let bench = started_again(&folder, newest - SignedDuration::from_mins(4)).await;
    assert_eq!(bench.get("/clock").await["doubt"], Value::Null);
    bench.made("/jobs/1/readings", dry(3)).await;
    drop(bench);
    // Once the clock is right everything is open, without a word from anybody.
    let bench = started_again(&folder, newest + hours(1)).await;
    bench.made("/jobs/1/readings", turned(1)).await;
    for (page, answer) in sent_by_pages(&bench, "right").await {
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{page}: {}", answer.text);
    }
    assert!(!bench.page("/").await.text.contains("not relied on"));
}

#[tokio::test]
async fn a_jump_forward_opens_no_gate_until_somebody_has_looked() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    planned(&bench).await;
    bench.made("/batches", cup(&[1])).await;
    let gate = bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, turned(1).to_string()).await;
    assert_eq!(gate["type"], "urn:setwright:problem:waits_for_cure", "{gate}");
    // Two days by the wall and no time at all: the joint is as fresh as before.
    let after = time(MORNING) + hours(48);
    bench.clock.set(after);
    let before = kept(&bench).await;
    let words = ["was changed from", "while the program ran", "no glue is mixed and no cure counts as done"];
    let gate = bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, turned(1).to_string()).await;
    is_of_the_clock(&gate, &words);
    let page = bench.form("/bench/1/1", &[("step", "turned"), ("request_key", "k1"), ("read-done", "1")]).await;
    page.says(StatusCode::CONFLICT, &words);
    is_of_the_clock(&bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[2]).to_string()).await, &words);
    glued_by_page(&bench, "2", "k2").await.says(StatusCode::CONFLICT, &words);
    assert_eq!(kept(&bench).await, before);
    // What waits for no cure is read all the same: a reading is worth more than its hour.
    bench.made("/jobs/1/readings", dry(2)).await;

    let state = bench.get("/clock").await;
    let doubt = json!({ "doubt": "jumped", "from": MORNING, "to": after });
    assert_eq!(state["doubt"], doubt);
    let today = ["not relied on", "Until somebody confirms it on the Today page", "Check the clock"];
    bench.page("/").await.says(StatusCode::OK, &today);
    // The program is stopped and started: what was noticed is in the log.
    bench.app.watch_clock().await.expect("watched");
    drop(bench);
    let bench = started_again(&folder, after).await;
    assert_eq!(bench.get("/clock").await["doubt"], doubt);
    is_of_the_clock(&bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[2]).to_string()).await, &words);
}

#[tokio::test]
async fn a_jump_backward_is_noticed_and_time_that_passes_is_none() {
    let bench = Bench::open().await;
    planned(&bench).await;
    bench.clock.advance(hours(3));
    assert_eq!(bench.get("/clock").await["doubt"], Value::Null, "time passed");
    // A clock that the network steers is put right by less than two minutes at once.
    let noon = app::Clock::now(bench.clock.as_ref());
    bench.clock.set(noon - SignedDuration::from_secs(119));
    assert_eq!(bench.get("/clock").await["doubt"], Value::Null);
    bench.clock.set(noon);
    assert_eq!(bench.get("/clock").await["doubt"], Value::Null);
    bench.made("/batches", cup(&[1])).await;
    let back = noon - SignedDuration::from_secs(120);
    bench.clock.set(back);
    let state = bench.app.clock_state().await.expect("a state");
    assert_eq!(state.doubt, Some(ClockDoubt::Jumped { from: noon, to: back }));
    let refused = bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[2]).to_string()).await;
    is_of_the_clock(&refused, &["was changed from", "no glue is mixed"]);
    // Set right again it is a second jump: it says nothing of what happened in between.
    bench.clock.set(noon);
    bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[2]).to_string()).await;
    // Far back it is behind the newest entry as well, which is worse.
    bench.clock.set(noon - hours(2));
    assert_eq!(bench.get("/clock").await["doubt"]["doubt"], "behind_newest");
}

#[tokio::test]
async fn a_clock_is_relied_on_again_when_somebody_says_how_it_was_checked() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let confirm = |reason: &str, by: &str| json!({ "reason": reason, "by": by }).to_string();
    let nothing = bench.refused("POST", "/clock/confirm", StatusCode::CONFLICT, confirm("looked", "Ada")).await;
    assert!(detail(&nothing).contains("nothing is wrong with the clock"), "{nothing}");

    let later = time(MORNING) + hours(5);
    bench.get("/clock").await;
    bench.clock.set(later);
    assert_eq!(bench.get("/clock").await["doubt"]["doubt"], "jumped");
    for (reason, by) in [("", "Ada"), ("   ", "Ada"), ("ok", "Ada"), ("by the radio", " ")] {
        let refused = StatusCode::UNPROCESSABLE_ENTITY;
        bench.refused("POST", "/clock/confirm", refused, confirm(reason, by)).await;
        assert_eq!(bench.get("/clock").await["doubt"]["doubt"], "jumped", "“{reason}” by “{by}” was taken");
    }
    let page = bench.form("/clock/confirm", &[("reason", " ")]).await;
    page.says(StatusCode::UNPROCESSABLE_ENTITY, &["reason is needed", "Write in a few words why"]);
    bench.form("/clock/confirm", &[]).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["reason is needed"]);
    bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[1]).to_string()).await;

    let state = bench.made("/clock/confirm", json!({ "reason": "compared with the radio clock", "by": "Ada" })).await;
    assert_eq!((state.get("doubt"), state.get("words")), (None, None), "{state}");
    bench.made("/batches", cup(&[1])).await;
    assert!(!bench.page("/").await.text.contains("not relied on"));

    // The same by the page, and it is said of the next jump anew.
    bench.clock.set(later + hours(1));
    bench.page("/").await.says(StatusCode::OK, &["not relied on"]);
    let confirmed = bench.form("/clock/confirm", &[("reason", "by the station clock")]).await;
    assert_eq!((confirmed.status, confirmed.location.as_str()), (StatusCode::SEE_OTHER, "/"));
    bench.made("/batches", cup(&[2])).await;
    bench.clock.set(later + hours(2));
    bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[3]).to_string()).await;
}

#[tokio::test]
async fn entries_from_a_clock_that_ran_ahead_are_passed_over_once_it_is_confirmed() {
    let folder = tempfile::tempdir().expect("a folder");
    let ahead = started_again(&folder, time("2031-01-01T08:00:00Z")).await;
    planned(&ahead).await;
    ahead.made("/batches", cup(&[1])).await;
    drop(ahead);

    let morning = time(MORNING);
    let bench = started_again(&folder, morning).await;
    let words = ["1 Jan 2031", "Set the clock; if it is right, confirm it on the Today page"];
    bench.page("/").await.says(StatusCode::OK, &words);
    bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[2]).to_string()).await;
    bench.made("/clock/confirm", json!({ "reason": "the year is 2026", "by": "Ada" })).await;
    // A reading of now is before the making of the job, by the wrong clock; without a time of its own it is of now.
    bench.made("/jobs/1/readings", dry(2)).await;
    bench.made("/batches", cup(&[2])).await;
    // The cup that bears a time of 2031 opens no gate by it.
    let gate = bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, turned(1).to_string()).await;
    assert_eq!(gate["type"], "urn:setwright:problem:waits_for_cure", "{gate}");

    // A later jump that is confirmed does not bring the entries of 2031 back into the way.
    bench.clock.set(morning + hours(1));
    assert_eq!(bench.get("/clock").await["doubt"]["doubt"], "jumped");
    let state = bench.made("/clock/confirm", json!({ "reason": "summer time was set by hand", "by": "Ada" })).await;
    assert_eq!(state.get("doubt"), None, "{state}");
    bench.made("/batches", cup(&[3])).await;

    // What is entered after the confirmation counts again: a month later the battery is empty.
    bench.clock.advance(hours(24 * 30));
    bench.made("/jobs/1/readings", dry(4)).await;
    drop(bench);
    let bench = started_again(&folder, morning + hours(24)).await;
    let state = bench.get("/clock").await;
    assert_eq!(state["doubt"]["newest"], json!(morning + hours(24 * 30 + 1)), "{state}");
    bench.refused("POST", "/batches", StatusCode::CONFLICT, cup(&[5]).to_string()).await;
}

#[tokio::test]
async fn what_waited_for_the_network_bears_the_time_of_typing() {
    let bench = Bench::open().await;
    planned(&bench).await;
    bench.clock.advance(hours(3));
    let typed = time("2026-03-02T08:10:00Z");
    let at = |slot: usize, typed: &str| {
        let mut entry = dry(slot);
        entry["at"] = json!(typed);
        entry
    };
    let stands = async |slot: usize| {
        let readings = bench.get("/jobs/1/record").await["clubs"][slot - 1]["readings"].take();
        readings
            .as_array()
            .expect("readings")
            .iter()
            .map(|r| time(r["reading"]["at"].as_str().expect("a time")))
            .collect()
    };
    let kept: Vec<Timestamp> = {
        bench.made("/jobs/1/readings", at(1, "2026-03-02T08:10:00Z")).await;
        stands(1).await
    };
    assert_eq!(kept, [typed]);
    let typed_text = typed.to_string();
    let fields = [("step", "dry"), ("request_key", "k2"), ("read-swing_weight", "D9.7"), ("at", typed_text.as_str())];
    assert_eq!(bench.form("/bench/1/2", &fields).await.status, StatusCode::SEE_OTHER);
    let kept: Vec<Timestamp> = stands(2).await;
    assert_eq!(kept, [typed]);
    let version = hidden(&bench.page("/bench/1/grid/dry?at=3").await.text, "version").to_owned();
    let grid = [
        ("slot", "3"),
        ("what", "swing_weight"),
        ("typed", "D9.7"),
        ("request_key", "k3"),
        ("version", version.as_str()),
        ("at", typed_text.as_str()),
    ];
    assert_eq!(bench.form("/bench/1/grid/dry", &grid).await.status, StatusCode::SEE_OTHER);
    let kept: Vec<Timestamp> = stands(3).await;
    assert_eq!(kept, [typed]);

    // Before the job, beyond what clocks may differ, and what is no time: refused, and nothing is kept.
    for wrong in ["2026-03-02T11:06:00Z", "2026-03-02T07:54:00Z", "1970-01-01T00:00:00Z", "2076-01-01T00:00:00Z"] {
        let refused = StatusCode::UNPROCESSABLE_ENTITY;
        let problem = bench.refused("POST", "/jobs/1/readings", refused, at(4, wrong).to_string()).await;
        assert!(detail(&problem).contains("cannot be a time of this job"), "{problem}");
        assert!(detail(&problem).contains("Leave the time out for now"), "{problem}");
        let fields = [("step", "dry"), ("request_key", "k4"), ("read-swing_weight", "D9.7"), ("at", wrong)];
        bench.form("/bench/1/4", &fields).await.says(refused, &["cannot be a time of this job", "value=\"D9.7\""]);
    }
    let fields = [("step", "dry"), ("request_key", "k5"), ("read-swing_weight", "D9.7"), ("at", "yesterday")];
    let page = bench.form("/bench/1/4", &fields).await;
    page.says(StatusCode::UNPROCESSABLE_ENTITY, &["“yesterday” is not the time of an entry"]);
    let kept: Vec<Timestamp> = stands(4).await;
    assert_eq!(kept, []);
    // Within what the clocks may differ both ways it is taken.
    for (slot, right) in [(4, "2026-03-02T11:04:00Z"), (5, "2026-03-02T07:56:00Z")] {
        bench.made("/jobs/1/readings", at(slot, right)).await;
        let kept: Vec<Timestamp> = stands(slot).await;
        assert_eq!(kept, [time(right)]);
    }
}
