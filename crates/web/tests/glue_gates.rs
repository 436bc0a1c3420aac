//! Goal: gluing cannot be undone, so that it is asked about: what is open on a club, how cold the room is, when the cup was
//! mixed, whether the same cup was entered before; and a batch that was entered wrongly can be taken back.
//! Method: one set with a club of every sort, by the page as a browser sends it and by the API; what was kept, from the API.
//! The times of the cure are those of the product's own sheet (6 h and 24 h at 23 °C), counted by hand.

use crate::support::answer::{Answer, detail};
use crate::support::{Bench, hidden, planned, reading};
use axum::http::StatusCode;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};

/// Clubs of the set, by what is open on them.
const CLEAR: [usize; 2] = [1, 2];
const DOUBTED: usize = 3;
const UNREAD: usize = 4;
const GLUED: usize = 5;
const OFF_TARGET: usize = 6;
const BEYOND_BENDING: usize = 7;
/// Slot, number of the club, and the words for what is open.
const OPEN: [(usize, &str, &str); 5] = [
    (DOUBTED, "6", "swing weight at “Dry” is doubted"),
    (UNREAD, "7", "swing weight is not read"),
    (GLUED, "8", "glued in batch 1 already"),
    (OFF_TARGET, "9", "points heavy, and no free grip brings it in"),
    (BEYOND_BENDING, "P", "loft 3.0° weak; this head may be bent 2.0° at most"),
];

/// Reads the dry swing weight of a club so far off what is expected: the reading's identity.
async fn read_dry(bench: &Bench, slot: usize, off_points: f64) -> String {
    let value = bench.expected(slot, "dry").await + off_points;
    let kept =
        bench.made("/jobs/1/readings", reading(slot, "dry", json!([{ "what": "swing_weight", "value": value }]))).await;
    kept["readings"][0]["id"].as_str().expect("an identity").to_owned()
}

/// Job 1 with clubs 1 and 2 clear, and one club each for what may be open before gluing.
async fn with_open_clubs() -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    for slot in [CLEAR[0], CLEAR[1], GLUED, BEYOND_BENDING] {
        read_dry(&bench, slot, 0.0).await;
    }
    // Nothing is open on this one: no reason is asked.
    bench.made("/batches", batch(&[GLUED])).await;
    // The sheet's loft of the P is 45°, and its head may be bent by 2°.
    let loft = json!([{ "what": "loft", "value": 48.0 }]);
    bench.made("/jobs/1/readings", reading(BEYOND_BENDING, "received", loft)).await;
    read_dry(&bench, DOUBTED, 5.0).await;
    let id = read_dry(&bench, OFF_TARGET, 3.0).await;
    let stood_by = json!({ "reason": "read it twice", "by": "Ada" });
    bench.made(&format!("/jobs/1/readings/{id}/insist"), stood_by).await;
    bench
}

/// Job 1 with the first clubs read and clear to glue.
async fn with_clear_clubs(count: usize) -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    for slot in 1..=count {
        read_dry(&bench, slot, 0.0).await;
    }
    bench
}

fn batch(slots: &[usize]) -> Value {
    json!({ "job": 1, "slots": slots, "lot": "K-1", "room_c": 23.0, "by": "Ada" })
}

/// A document with one more field.
fn and(document: &Value, field: &str, value: &str) -> Value {
    let mut document = document.clone();
    document[field] = json!(value);
    document
}

/// The form of the glue page as a browser sends it.
async fn glue_form(bench: &Bench, slots: &[usize], more: &[(&str, &str)]) -> Answer {
    let slots: Vec<String> = slots.iter().map(ToString::to_string).collect();
    let mut fields = vec![("job", "1"), ("adhesive", "BASALT"), ("lot", "K-1")];
    fields.extend(slots.iter().map(|slot| ("slot", slot.as_str())));
    if !more.iter().any(|(name, _)| *name == "room_c") {
        fields.push(("room_c", "23"));
    }
    fields.extend(more);
    bench.form("/glue/new", &fields).await
}

async fn batches(bench: &Bench) -> Vec<Value> {
    bench.get("/batches").await.as_array().expect("batches").clone()
}

/// The check box of a club on the glue page: its tag up to the end.
fn box_of(page: &str, slot: usize) -> &str {
    let from = page.find(&format!("name=\"slot\" value=\"{slot}\"")).unwrap_or_else(|| panic!("no box for {slot}"));
    page[from..].split_once('>').expect("a tag").0
}

/// The gate of a club at a step.
async fn gate(bench: &Bench, slot: usize, step: &str) -> Value {
    let view = bench.get("/jobs/1").await;
    let steps = view["clubs"][slot - 1]["steps"].as_array().expect("steps");
    steps.iter().find(|s| s["key"] == step).expect("the step")["gate"].clone()
}

fn time(text: &str) -> Timestamp {
    text.parse().expect("a time")
}

fn at(value: &Value) -> Timestamp {
    time(value.as_str().expect("a time"))
}

/// A time as a tablet's own field sends it: to the minute, in the time zone of the shop.
fn typed(at: Timestamp) -> String {
    at.to_zoned_datetime(TimeZone::system()).strftime("%Y-%m-%dT%H:%M").to_string()
}

#[tokio::test]
async fn the_glue_page_ticks_what_is_clear_and_names_what_is_open() {
    let bench = with_open_clubs().await;
    let page = bench.page("/glue/new?job=1").await.text;
    for slot in CLEAR {
        assert!(box_of(&page, slot).contains("checked"), "club {slot} is clear: {}", box_of(&page, slot));
    }
    let said = bench.get("/jobs/1/open?step=glue").await;
    for (slot, number, words) in OPEN {
        assert!(!box_of(&page, slot).contains("checked"), "club {slot} has {words}");
        // The page says it beside that very box.
        let beside = page.split(&format!("name=\"slot\" value=\"{slot}\"")).nth(1).expect("after the box");
        let beside = beside.split("</li>").next().expect("the club's line").to_lowercase();
        assert!(beside.contains(&words.to_lowercase()), "“{words}” does not stand at club {slot}: {beside}");
        let way = [format!("href=\"/bench/1/{slot}?step="), "href=\"/glue\"".to_owned()];
        assert!(way.iter().any(|href| beside.contains(href)), "the way to where it is put right: {beside}");
        let club = said.as_array().expect("clubs").iter().find(|club| club["slot"] == slot).expect("the API says it");
        assert_eq!(club["number"], number);
        let points = club["facts"].as_array().expect("facts");
        assert!(points.iter().any(|w| w["words"].as_str().is_some_and(|w| w.contains(words))), "{club}");
    }
    for slot in CLEAR {
        assert!(said.as_array().expect("clubs").iter().all(|club| club["slot"] != slot), "{said}");
    }
    // The cup is for the ticked clubs: 1, 2 and nothing of those that are open or have no reading (the G).
    assert!(page.contains("Weigh out for 2 joints"), "the amounts are those of the ticked clubs");
    assert!(page.contains("name=\"reason\""), "a reason can be given");
}

#[tokio::test]
async fn a_set_with_nothing_open_asks_for_no_reason() {
    let bench = with_clear_clubs(8).await;
    let page = bench.page("/glue/new?job=1").await.text;
    for slot in 1..=8 {
        assert!(box_of(&page, slot).contains("checked"), "club {slot}");
    }
    assert!(!page.contains("name=\"reason\"") && !page.contains("Something is open"));
    let glued = glue_form(&bench, &[1, 2, 3, 4, 5, 6, 7, 8], &[]).await;
    assert_eq!((glued.status, glued.location.as_str()), (StatusCode::SEE_OTHER, "/glue?job=1"), "{}", glued.text);
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["batches"][0]["clubs"].as_array().map(Vec::len), Some(8));
    // A bad lot finds its clubs again, however its name is written; another lot finds none.
    let lot = record["batches"][0]["lot"].as_str().expect("a lot").to_lowercase();
    let found = bench.page(&format!("/recall?lot={lot}")).await.text;
    for slot in 1..=8 {
        assert!(found.contains(&format!("href=\"/bench/1/{slot}\"")), "club {slot} is of lot {lot}");
    }
    assert!(found.contains("glued from batch 1"), "{found}");
    let none = bench.page("/recall?lot=no-such-lot").await.text;
    assert!(none.contains("No club has anything to do with lot no-such-lot."), "{none}");
    assert!(record["clubs"].as_array().expect("clubs").iter().all(|c| c.get("passed").is_none()), "{record}");
}

#[tokio::test]
async fn what_is_open_is_not_glued_without_a_reason() {
    let bench = with_open_clubs().await;
    let before = bench.picture().await;
    for (slot, number, words) in OPEN {
        // A clear club in the same cup is not glued either: all or none.
        let body = batch(&[CLEAR[0], slot]);
        let problem = bench.refused("POST", "/batches", StatusCode::CONFLICT, body.to_string()).await;
        assert_eq!(problem["type"], "urn:setwright:problem:open");
        assert!(detail(&problem).contains(&format!("the {number}: ")), "{problem}");
        assert!(detail(&problem).contains(words), "{problem}");
        assert!(!detail(&problem).contains("the 4:"), "the clear club is not accused: {problem}");
        for blank in ["", "  "] {
            let body = and(&body, "reason", blank).to_string();
            bench.refused("POST", "/batches", StatusCode::CONFLICT, body).await;
        }
        let short = and(&body, "reason", "ok").to_string();
        let problem = bench.refused("POST", "/batches", StatusCode::UNPROCESSABLE_ENTITY, short).await;
        assert!(detail(&problem).contains("reason is needed"), "{problem}");

        let refused = glue_form(&bench, &[CLEAR[0], slot], &[]).await;
        refused.says(StatusCode::CONFLICT, &[&format!("the {number}: "), words]);
        // What was ticked and typed comes back.
        assert!(box_of(&refused.text, slot).contains("checked") && box_of(&refused.text, 1).contains("checked"));
        assert!(!box_of(&refused.text, CLEAR[1]).contains("checked"));
        assert!(refused.text.contains("value=\"K-1\""), "the lot comes back");
        let refused = glue_form(&bench, &[slot], &[("reason", "ok")]).await;
        refused.says(StatusCode::UNPROCESSABLE_ENTITY, &["reason is needed", "value=\"ok\""]);
    }
    assert_eq!(bench.picture().await, before, "nothing was written");
}

#[tokio::test]
async fn the_reason_for_gluing_all_the_same_stands_in_the_record() {
    let bench = with_open_clubs().await;
    let why = " the player asked for it ";
    bench.made("/batches", and(&batch(&[CLEAR[0], DOUBTED, GLUED]), "reason", why)).await;
    let by_page = [("reason", "weighed on the other scale")];
    let glued = glue_form(&bench, &[CLEAR[1], OFF_TARGET, UNREAD], &by_page).await;
    assert_eq!(glued.status, StatusCode::SEE_OTHER, "{}", glued.text);
    assert_eq!(batches(&bench).await.len(), 3);

    let record = bench.get("/jobs/1/record").await;
    let page = bench.page("/records/1").await.text;
    for (slot, point, reason) in [
        (DOUBTED, "doubted", "the player asked for it"),
        (GLUED, "glued", "the player asked for it"),
        (OFF_TARGET, "off_target", "weighed on the other scale"),
        (UNREAD, "unread", "weighed on the other scale"),
    ] {
        let passed = record["clubs"][slot - 1]["passed"].as_array().expect("what was passed over").clone();
        assert_eq!(passed.len(), 1, "{passed:?}");
        assert_eq!(passed[0]["step"], "glue");
        assert_eq!(passed[0]["reason"].as_str().map(str::trim), Some(reason));
        assert!(passed[0]["points"].as_array().expect("points").iter().any(|p| p["open"] == point), "{passed:?}");
        assert!(page.contains(reason), "the record's page says why");
    }
    assert_eq!(record["clubs"][DOUBTED - 1]["passed"][0]["by"], "Ada");
    // The clear clubs of the same cups were not passed over, and what was glued twice says so.
    for slot in CLEAR {
        assert!(record["clubs"][slot - 1].get("passed").is_none(), "{record}");
    }
    assert_eq!(record["clubs"][GLUED - 1]["batches"], json!([1, 2]));
    assert!(page.contains("swing weight at “Dry” is doubted"), "the record's page says what was open");
}

#[tokio::test]
async fn the_same_key_starts_one_batch() {
    let bench = with_clear_clubs(4).await;
    bench.clock.advance(SignedDuration::from_hours(1));
    let body = and(&batch(&[1, 2]), "request_key", "tablet-1-0001");
    let first = bench.made("/batches", body.clone()).await;
    let again = bench.made("/batches", body.clone()).await;
    assert_eq!((&first["batch"]["id"], &again["batch"]["number"]), (&again["batch"]["id"], &json!(1)));
    assert_eq!(batches(&bench).await.len(), 1);
    // Late, too: the cup was mixed once.
    bench.clock.advance(SignedDuration::from_mins(30));
    let late = bench.made("/batches", body.clone()).await;
    assert_eq!(late["batch"]["mixed_at"], first["batch"]["mixed_at"]);

    // The same key with another body is another wish, and must not be taken for the one that was kept.
    let before = bench.picture().await;
    let mut others = Vec::new();
    for (field, value) in [
        ("slots", json!([1, 2, 3])),
        ("slots", json!([3])),
        ("lot", json!("K-2")),
        ("room_c", json!(20.0)),
        ("bead_share_percent", json!(11.0)),
        ("adhesive", json!("FLINT")),
        ("mixed_at", json!("2026-03-02T08:30:00Z")),
    ] {
        let mut other = body.clone();
        other[field] = value;
        others.push(other);
    }
    for other in others {
        let problem = bench.refused("POST", "/batches", StatusCode::CONFLICT, other.to_string()).await;
        assert!(detail(&problem).contains("started batch 1 already"), "{problem}");
    }
    assert_eq!(bench.picture().await, before, "nothing was written");

    // The page carries a key of its own: the button pressed twice starts one cup.
    let page = bench.page("/glue/new?job=1").await.text;
    let key = hidden(&page, "request_key").to_owned();
    assert!(!key.is_empty());
    for _ in 0..2 {
        let glued = glue_form(&bench, &[3, 4], &[("request_key", &key)]).await;
        assert_eq!((glued.status, glued.location.as_str()), (StatusCode::SEE_OTHER, "/glue?job=1"), "{}", glued.text);
    }
    assert_eq!(batches(&bench).await.len(), 2);
    let other = glue_form(&bench, &[4], &[("request_key", &key)]).await;
    other.says(StatusCode::CONFLICT, &["started batch 2 already"]);
    let other = glue_form(&bench, &[3, 4], &[("request_key", &key), ("mixed_at", "2026-03-02T08:40")]).await;
    other.says(StatusCode::CONFLICT, &["started batch 2 already"]);
    assert_eq!(batches(&bench).await.len(), 2);
    // A form that comes back after a refusal keeps its key, so that it is still the same wish.
    assert_eq!(hidden(&other.text, "request_key"), key);
}

#[tokio::test]
async fn a_cup_that_is_entered_late_runs_from_when_it_was_mixed() {
    let bench = with_clear_clubs(3).await;
    // Made at 08:00; it is 13:00 now, and the cup was mixed at 09:00.
    bench.clock.advance(SignedDuration::from_hours(5));
    let mixed = time("2026-03-02T09:00:00Z");
    let kept = bench.made("/batches", and(&batch(&[1]), "mixed_at", &mixed.to_string())).await;
    let now = bench.made("/batches", batch(&[2])).await;
    assert_eq!(at(&kept["batch"]["mixed_at"]), mixed);
    assert_eq!(at(&now["batch"]["mixed_at"]), time("2026-03-02T13:00:00Z"));
    let pot_life = |view: &Value| at(&view["pot_life_until"]).as_second() - at(&view["batch"]["mixed_at"]).as_second();
    assert_eq!(pot_life(&kept), pot_life(&now), "the pot life runs from the mixing");
    assert_eq!(at(&kept["handling_at"]), time("2026-03-02T15:00:00Z"));
    assert_eq!(at(&kept["full_cure_at"]), time("2026-03-03T09:00:00Z"));
    assert_eq!(at(&now["handling_at"]), time("2026-03-02T19:00:00Z"));

    // By the page, in the shop's own time zone.
    let glued = glue_form(&bench, &[3], &[("mixed_at", &typed(mixed))]).await;
    assert_eq!(glued.status, StatusCode::SEE_OTHER, "{}", glued.text);
    let by_page = batches(&bench).await.into_iter().find(|b| b["batch"]["number"] == 3).expect("the page's batch");
    assert_eq!(at(&by_page["batch"]["mixed_at"]), mixed);

    // The gates follow: shut at 14:59, open at 15:00, while the cup of now waits until 19:00.
    for slot in [1, 3] {
        assert_eq!(at(&gate(&bench, slot, "cured").await["until"]), time("2026-03-02T15:00:00Z"), "club {slot}");
        assert_eq!(at(&gate(&bench, slot, "bend").await["until"]), time("2026-03-03T09:00:00Z"), "club {slot}");
    }
    bench.clock.advance(SignedDuration::from_mins(119));
    let turned = |slot| reading(slot, "turned", json!([{ "what": "done" }]));
    bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, turned(1).to_string()).await;
    bench.clock.advance(SignedDuration::from_mins(1));
    bench.made("/jobs/1/readings", turned(1)).await;
    bench.made("/jobs/1/readings", turned(3)).await;
    let problem = bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, turned(2).to_string()).await;
    assert_eq!(problem["type"], "urn:setwright:problem:waits_for_cure");
}

#[tokio::test]
async fn a_cup_mixed_before_the_job_or_after_now_is_refused() {
    let bench = with_clear_clubs(1).await;
    bench.clock.advance(SignedDuration::from_hours(5));
    let before = bench.picture().await;
    // The job was made at 08:00 and it is 13:00; clocks of two tablets may differ by five minutes.
    for wrong in ["2026-03-02T07:54:00Z", "2026-03-02T13:06:00Z", "2025-03-02T09:00:00Z", "2026-03-03T09:00:00Z"] {
        let body = and(&batch(&[1]), "mixed_at", wrong).to_string();
        let problem = bench.refused("POST", "/batches", StatusCode::UNPROCESSABLE_ENTITY, body).await;
        assert!(detail(&problem).contains("cannot be a time of this job"), "{problem}");
        let page = glue_form(&bench, &[1], &[("mixed_at", &typed(time(wrong)))]).await;
        page.says(StatusCode::UNPROCESSABLE_ENTITY, &["cannot be a time of this job", &typed(time(wrong))]);
    }
    let page = glue_form(&bench, &[1], &[("mixed_at", "this morning")]).await;
    page.says(StatusCode::UNPROCESSABLE_ENTITY, &["“this morning” is not a day and time"]);
    assert_eq!(bench.picture().await, before, "nothing was written");
    for sound in ["2026-03-02T07:56:00Z", "2026-03-02T13:04:00Z"] {
        let body = and(&and(&batch(&[1]), "mixed_at", sound), "reason", "a test of the edge");
        bench.made("/batches", body).await;
    }
}

#[tokio::test]
async fn a_batch_taken_back_leaves_its_clubs_not_glued_and_stays_in_the_record() {
    let bench = with_clear_clubs(2).await;
    bench.made("/batches", batch(&[1, 2])).await;
    assert_eq!(gate(&bench, 1, "cured").await["gate"], "waits");
    assert!(bench.page("/glue").await.text.contains("Clocks of batch 1"));
    assert!(!bench.app.running_cups().await.expect("cups").is_empty());

    // No reason, no name: nothing is taken back.
    let before = bench.picture().await;
    let back = |reason: &str, by: &str| json!({ "reason": reason, "by": by }).to_string();
    for body in [back("", "Ada"), back("  ", "Ada"), back("no", "Ada"), back("wrong lot typed", " ")] {
        bench.refused("POST", "/batches/1/take-back", StatusCode::UNPROCESSABLE_ENTITY, body).await;
    }
    let page = bench.form("/glue/1/take-back", &[("reason", "")]).await;
    page.says(StatusCode::UNPROCESSABLE_ENTITY, &["reason is needed"]);
    bench.refused("POST", "/batches/7/take-back", StatusCode::NOT_FOUND, back("wrong lot typed", "Ada")).await;
    assert_eq!(bench.picture().await, before, "nothing was taken back");

    // "That was wrong" at one club would leave the clocks of its batch running: it is sent to the batch.
    let gluing = bench.asked(1, "glue", "done").await["reading"]["id"].as_str().expect("a gluing").to_owned();
    let one = format!("/jobs/1/readings/{gluing}/take-back");
    let problem = bench.refused("POST", &one, StatusCode::CONFLICT, back("wrong lot typed", "Ada")).await;
    assert!(problem["detail"].as_str().is_some_and(|d| d.contains("Take the batch back under Glue")), "{problem}");
    let form = bench.form("/bench/1/1/take-back", &[("reading", &gluing), ("step", "glue")]).await;
    assert!(form.text.contains("Take the batch back under Glue"), "{}", form.text);
    assert_eq!(bench.picture().await, before, "nothing was taken back");

    let done = bench.form("/glue/1/take-back", &[("reason", "wrong job chosen")]).await;
    assert_eq!((done.status, done.location.as_str()), (StatusCode::SEE_OTHER, "/glue"), "{}", done.text);
    let page = bench.page("/glue").await.text;
    assert!(page.contains("wrong job chosen") && !page.contains("Clocks of batch 1"), "{page}");
    assert!(bench.app.running_cups().await.expect("cups").is_empty(), "its pot life is shown nowhere");
    for slot in [1, 2] {
        assert_eq!(gate(&bench, slot, "cured").await, json!({ "gate": "not_glued" }));
        assert_eq!(bench.asked(slot, "glue", "done").await.get("reading"), None, "the club is not glued");
    }
    let cured = reading(1, "turned", json!([{ "what": "done" }])).to_string();
    bench.clock.advance(SignedDuration::from_hours(48));
    let problem = bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, cured).await;
    assert_eq!(problem["type"], "urn:setwright:problem:not_glued", "no old clock opens the gate");

    // The record keeps the batch, why it was taken back, and the readings that say so; the clubs are of no batch.
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["batches"][0]["taken_back"], "wrong job chosen");
    for slot in [1, 2] {
        let club = &record["clubs"][slot - 1];
        assert_eq!(club["batches"], json!([]));
        let glued = club["readings"].as_array().expect("readings").iter().find(|r| r["reading"]["step"] == "glue");
        let glued = glued.expect("the reading stays");
        assert_eq!(
            (&glued["stands"], &glued["reading"]["taken_back"]["words"]),
            (&json!(false), &json!("wrong job chosen"))
        );
    }
    assert!(bench.page("/records/1").await.text.contains("; taken back: wrong job chosen"));
    bench.refused("POST", "/batches/1/take-back", StatusCode::CONFLICT, back("wrong lot typed", "Ada")).await;

    // They can be glued again, and nothing is open on them.
    let page = bench.page("/glue/new?job=1").await.text;
    assert!(box_of(&page, 1).contains("checked") && !page.contains("glued in batch"), "{page}");
    assert_eq!(bench.made("/batches", batch(&[1, 2])).await["batch"]["number"], 2);
}

#[tokio::test]
async fn a_batch_that_a_reading_rests_on_is_not_taken_back() {
    let bench = with_clear_clubs(2).await;
    bench.made("/batches", batch(&[1, 2])).await;
    bench.clock.advance(SignedDuration::from_hours(7));
    let turned = reading(2, "turned", json!([{ "what": "done" }]));
    let kept = bench.made("/jobs/1/readings", turned).await;
    let before = bench.picture().await;
    let back = json!({ "reason": "wrong lot typed", "by": "Ada" });
    let problem = bench.refused("POST", "/batches/1/take-back", StatusCode::CONFLICT, back.to_string()).await;
    assert!(detail(&problem).contains("the 5 was read at “Turned”"), "{problem}");
    let page = bench.form("/glue/1/take-back", &[("reason", "wrong lot typed")]).await;
    page.says(StatusCode::CONFLICT, &["he 5 was read at “Turned”"]);
    assert_eq!(bench.picture().await, before, "nothing was taken back");
    // Once that reading is gone, the batch may go.
    let id = kept["readings"][0]["id"].as_str().expect("an identity");
    bench.made(&format!("/jobs/1/readings/{id}/take-back"), json!({ "by": "Ada" })).await;
    let taken = bench.made("/batches/1/take-back", back).await;
    assert_eq!(taken["batch"]["taken_back"], "wrong lot typed");
    assert_eq!(gate(&bench, 2, "cured").await["gate"], "not_glued");
}

/// A club that was glued twice, the second time by mistake, is glued from the first batch as before.
#[tokio::test]
async fn the_batch_before_counts_again_when_the_later_one_is_taken_back() {
    let bench = with_clear_clubs(1).await;
    bench.made("/batches", batch(&[1])).await;
    bench.clock.advance(SignedDuration::from_hours(4));
    bench.made("/batches", and(&batch(&[1]), "reason", "the head came loose")).await;
    assert_eq!(at(&gate(&bench, 1, "cured").await["until"]), time("2026-03-02T18:00:00Z"));
    let back = json!({ "reason": "it was another club", "by": "Ada" });
    bench.made("/batches/2/take-back", back).await;
    assert_eq!(at(&gate(&bench, 1, "cured").await["until"]), time("2026-03-02T14:00:00Z"));
    assert_eq!(bench.asked(1, "glue", "done").await["reading"]["typed"], "batch 1");
    assert_eq!(bench.get("/jobs/1/record").await["clubs"][0]["batches"], json!([1]));
}

/// Whichever of two batches goes first: once both are taken back, the club is not glued.
#[tokio::test]
async fn a_club_of_two_batches_is_not_glued_once_both_are_taken_back() {
    for order in [[1, 2], [2, 1]] {
        let bench = with_clear_clubs(1).await;
        bench.clock.advance(SignedDuration::from_hours(1));
        // Entered late, both at the same minute.
        let late = and(&batch(&[1]), "mixed_at", "2026-03-02T08:30:00Z");
        bench.made("/batches", late.clone()).await;
        bench.made("/batches", and(&late, "reason", "the head came loose")).await;
        let back = json!({ "reason": "it was another club", "by": "Ada" });
        for (number, left) in order.into_iter().zip([Some(3 - order[0]), None]) {
            bench.made(&format!("/batches/{number}/take-back"), back.clone()).await;
            let glued = bench.asked(1, "glue", "done").await;
            let of = glued["reading"]["typed"].as_str().map(str::to_owned);
            assert_eq!(of, left.map(|left| format!("batch {left}")), "{order:?}, {number} taken back: {glued}");
        }
        assert_eq!(gate(&bench, 1, "cured").await["gate"], "not_glued");
        assert_eq!(bench.get("/jobs/1/record").await["clubs"][0]["batches"], json!([]));
    }
}

#[tokio::test]
async fn a_room_colder_than_the_sheet_asks_even_for_a_clear_club() {
    let bench = with_clear_clubs(2).await;
    let before = bench.picture().await;
    let mut cold = batch(&[1]);
    // The product's sheet ends at 23 °C; 6 °C is far below it.
    cold["room_c"] = json!(6.0);
    // A reason for what is open on a club is no word of the maker's about the cold.
    for body in [cold.clone(), and(&cold, "cold_reason", " "), and(&cold, "reason", "the player waits")] {
        let problem = bench.refused("POST", "/batches", StatusCode::UNPROCESSABLE_ENTITY, body.to_string()).await;
        assert!(
            detail(&problem).contains("never cure fully") && detail(&problem).contains("Warm the room"),
            "{problem}"
        );
    }
    let refused = glue_form(&bench, &[1], &[("room_c", "6")]).await;
    refused.says(StatusCode::UNPROCESSABLE_ENTITY, &["never cure fully", "name=\"cold_reason\""]);
    assert_eq!(bench.picture().await, before, "no clock runs");
    assert!(!bench.page("/glue/new?job=1").await.text.contains("name=\"cold_reason\""), "not asked in a warm room");

    let why = "the maker says 60 h at 5 °C";
    let kept = bench.made("/batches", and(&cold, "cold_reason", why)).await;
    assert_eq!(kept["batch"]["cold_reason"], why);
    let glued = glue_form(&bench, &[2], &[("room_c", "6"), ("cold_reason", "the oven does it")]).await;
    assert_eq!(glued.status, StatusCode::SEE_OTHER, "{}", glued.text);
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["batches"][1]["cold_reason"], "the oven does it");
    assert!(bench.page("/records/1").await.text.contains(why));
}
