//! Goal: nothing that cannot be undone is done unseen: what is open in a set before its shafts are cut, its clubs glued, bent
//! or handed over is one list on the page and in the API, each with one touch to where it is put right, and one reason goes
//! on with all of it. An override of a cure belongs to its batch.
//! Method: a set with a head beyond bending and a doubted reading; a batch at its clock; by the pages as a browser sends
//! them and by the API, both held against the record.

use crate::support::answer::detail;
use crate::support::{Bench, although, planned, reading};
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::{Value, json};

/// The 4 has a loft that its head cannot be bent to, the 5 a doubted head mass; the others have nothing open.
async fn two_open() -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    // The sheet's loft of the 4 is 21°, and its head may be bent by 2°.
    let loft = json!([{ "what": "loft", "value": 24.5 }]);
    bench.made("/jobs/1/readings", reading(1, "received", loft)).await;
    let mass = json!([{ "what": "head_mass", "value": 260.0 }]);
    let kept = bench.made("/jobs/1/readings", reading(2, "weighed", mass)).await;
    assert_eq!(kept["meaning"]["tone"], "doubt", "{kept}");
    bench
}

/// Job 1, its first four clubs read, glued in one batch, and waiting.
async fn curing() -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    for slot in 1..=4 {
        let value = bench.expected(slot, "dry").await;
        bench.made("/jobs/1/readings", reading(slot, "dry", json!([{ "what": "swing_weight", "value": value }]))).await;
    }
    bench.made("/batches", json!({ "job": 1, "slots": [1, 2, 3, 4], "lot": "K-1", "room_c": 23.0, "by": "Ada" })).await;
    bench
}

/// The cut of a club, its shaft as heavy as expected.
async fn cut(bench: &Bench, slot: usize) -> Value {
    let value = bench.asked(slot, "cut", "shaft_mass").await["expected"]["value"].as_f64().expect("a forecast");
    reading(slot, "cut", json!([{ "what": "shaft_mass", "value": (value * 10.0).round() / 10.0 }]))
}

/// The list of what is open on a page, and nothing else of it.
fn list(page: &str) -> &str {
    let from = page.find("open-list").unwrap_or_else(|| panic!("no list: {page}"));
    page[from..].split("</ul>").next().expect("an end")
}

async fn passed_of(bench: &Bench, slot: usize) -> Vec<Value> {
    let record = bench.get("/jobs/1/record").await;
    record["clubs"][slot - 1]["passed"].as_array().cloned().unwrap_or_default()
}

#[tokio::test]
async fn a_shaft_is_not_cut_over_what_is_open_and_one_reason_goes_on_with_the_set() {
    let bench = two_open().await;
    let said = ["loft 3.5° weak; this head may be bent 2.0° at most", "head mass at “Weighed” is doubted"];

    // The same in the API, by name and as what comes next.
    let open = bench.get("/jobs/1/open?step=cut").await;
    assert_eq!(open.as_array().map(Vec::len), Some(2), "{open}");
    assert_eq!((&open[0]["number"], &open[0]["steps"]), (&json!("4"), &json!(["received"])), "{open}");
    assert_eq!((&open[1]["number"], &open[1]["steps"]), (&json!("5"), &json!(["weighed"])), "{open}");
    let next = bench.get("/jobs/1/open/next").await;
    assert_eq!((&next["step"], &next["done"], &next["clubs"]), (&json!("cut"), &json!("cut"), &open));

    // On the page, each with its touch.
    let grid = bench.page("/bench/1/grid/cut").await.text;
    for (words, place) in said.iter().zip(["/bench/1/1?step=received", "/bench/1/2?step=weighed"]) {
        assert!(list(&grid).contains(words), "“{words}” is not in {}", list(&grid));
        assert!(list(&grid).contains(&format!("href=\"{place}\"")), "{place}: {}", list(&grid));
    }
    assert!(bench.page("/bench/1/1?step=cut").await.text.contains(said[0]));

    // What is read at the cut is refused, with its words; a clear club goes.
    let before = bench.picture().await;
    for (slot, words) in [(1, "loft 3.5° weak"), (2, "head mass at “Weighed” is doubted")] {
        let problem =
            bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, cut(&bench, slot).await.to_string()).await;
        assert_eq!(problem["type"], "urn:setwright:problem:open");
        assert!(detail(&problem).contains(words), "{problem}");
    }
    assert_eq!(bench.picture().await, before, "nothing was written");
    bench.made("/jobs/1/readings", cut(&bench, 3).await).await;

    // One reason, once for all of it, with the builder's name.
    for reason in ["", "ok"] {
        let refused = bench.form("/bench/1/open/cut", &[("reason", reason)]).await;
        refused.says(StatusCode::UNPROCESSABLE_ENTITY, &["reason is needed", said[0]]);
    }
    let unnamed = json!({ "step": "cut", "reason": "both looked at", "by": " " }).to_string();
    bench.refused("POST", "/jobs/1/open/pass", StatusCode::UNPROCESSABLE_ENTITY, unnamed).await;
    let done = bench.form("/bench/1/open/cut", &[("reason", "the player wants them so")]).await;
    assert_eq!((done.status, done.location.as_str()), (StatusCode::SEE_OTHER, "/bench/1/grid/cut"), "{}", done.text);
    for slot in [1, 2] {
        let passed = passed_of(&bench, slot).await;
        assert_eq!(passed.len(), 1, "{passed:?}");
        assert_eq!((&passed[0]["step"], &passed[0]["reason"]), (&json!("cut"), &json!("the player wants them so")));
        assert_eq!(passed[0]["by"], "bench");
        bench.made("/jobs/1/readings", cut(&bench, slot).await).await;
    }
    let grid = bench.page("/bench/1/grid/cut").await.text;
    assert!(grid.contains("the player wants them so") && !grid.contains("name=\"reason\""), "asked once: {grid}");
    assert!(bench.page("/records/1").await.text.contains("the player wants them so"));
    // Passed over once, it is passed over: nothing more is written.
    let again = json!({ "step": "cut", "reason": "said already", "by": "Bo" });
    let open = bench.made("/jobs/1/open/pass", again).await;
    assert_eq!(open[0]["passed"]["reason"], "the player wants them so", "{open}");
    assert_eq!(passed_of(&bench, 1).await.len(), 1);
    // Read once more, it is asked once more.
    let loft = json!([{ "what": "loft", "value": 24.6 }]);
    bench.made("/jobs/1/readings", reading(1, "received", loft)).await;
    bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, cut(&bench, 1).await.to_string()).await;
    bench.made("/jobs/1/readings", although(cut(&bench, 1).await, "and once more")).await;
    let twice = passed_of(&bench, 1).await;
    assert_eq!(twice.len(), 2, "{twice:?}");
}

#[tokio::test]
async fn some_clubs_are_passed_by_their_places_and_a_clear_one_is_named() {
    let bench = two_open().await;
    let pass = |slots: Value| json!({ "step": "cut", "slots": slots, "reason": "weighed again", "by": "Ada" });
    let problem =
        bench.refused("POST", "/jobs/1/open/pass", StatusCode::CONFLICT, pass(json!([1, 3])).to_string()).await;
    assert!(detail(&problem).contains("nothing is open on the 6"), "{problem}");
    let open = bench.made("/jobs/1/open/pass", pass(json!([2]))).await;
    assert!(open[0].get("passed").is_none() && open[1]["passed"]["by"] == "Ada", "{open}");
    bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, cut(&bench, 1).await.to_string()).await;
    bench.made("/jobs/1/readings", cut(&bench, 2).await).await;
}

/// The gates of a club's steps by key.
async fn gates(bench: &Bench, slot: usize) -> Vec<(String, String)> {
    let view = bench.get("/jobs/1").await;
    let text = |value: &Value| value.as_str().expect("a text").to_owned();
    let steps = view["clubs"][slot - 1]["steps"].as_array().expect("steps").clone();
    steps.iter().map(|step| (text(&step["key"]), text(&step["gate"]["gate"]))).collect()
}

#[tokio::test]
async fn one_override_opens_the_whole_batch() {
    let bench = curing().await;
    let waiting = ["turned", "cured", "gripped", "finish", "bend", "hand_over"];
    for slot in 1..=4 {
        for (step, gate) in gates(&bench, slot).await {
            assert_eq!(gate == "waits", waiting.contains(&step.as_str()), "{step}: {gate}");
        }
    }
    // Offered in the grid as on the page of a club, for the batch.
    for address in ["/bench/1/grid/cured", "/bench/1/3?step=cured", "/glue"] {
        let page = bench.page(address).await.text;
        assert!(page.contains("Override the cure of batch 1"), "{address}");
    }
    let grid = bench.page("/bench/1/grid/cured").await.text;
    assert!(grid.contains("It holds for all clubs of batch 1: 4, 5, 6 and 7."), "{grid}");

    let bad = |body: Value| body.to_string();
    let unprocessable = StatusCode::UNPROCESSABLE_ENTITY;
    let path = "/batches/1/let-pass";
    for body in [
        json!({ "strength": "handling", "reason": "", "by": "Ada" }),
        json!({ "strength": "handling", "reason": "cured in the oven", "by": " " }),
        json!({ "strength": "none", "reason": "cured in the oven", "by": "Ada" }),
    ] {
        bench.refused("POST", path, unprocessable, bad(body)).await;
    }
    let full = json!({ "strength": "full", "reason": "cured in the oven", "by": "Ada" });
    bench.refused("POST", "/batches/7/let-pass", StatusCode::NOT_FOUND, bad(full)).await;

    // From the grid, with the strength that the step needs: every step that needs no more, for every club.
    let form = [
        ("step", "cured"),
        ("grid", "swing_weight"),
        ("batch", "1"),
        ("strength", "handling"),
        ("reason", "warmed to 60 °C for an hour"),
    ];
    let done = bench.form("/bench/1/2/let-pass", &form).await;
    assert_eq!(
        (done.status, done.location.as_str()),
        (StatusCode::SEE_OTHER, "/bench/1/grid/cured?what=swing_weight"),
        "{}",
        done.text
    );
    for slot in 1..=4 {
        for (step, gate) in gates(&bench, slot).await {
            let of_batch = ["turned", "cured", "gripped", "finish"].contains(&step.as_str());
            assert_eq!(gate == "let_pass", of_batch, "{step}: {gate}");
            assert_eq!(gate == "waits", ["bend", "hand_over"].contains(&step.as_str()), "{step}: {gate}");
        }
        let value = bench.expected(slot, "cured").await;
        let cured = reading(slot, "cured", json!([{ "what": "swing_weight", "value": value }]));
        bench.made("/jobs/1/readings", cured).await;
    }

    // The API says the same of one club's step: it belongs to the batch as well.
    let pass = json!({ "slot": 3, "step": "bend", "reason": "the oven's full time", "by": "Owner" });
    assert_eq!(bench.post("/jobs/1/let-pass", pass).await.0, StatusCode::NO_CONTENT);
    for slot in 1..=4 {
        assert!(gates(&bench, slot).await.iter().all(|(_, gate)| gate == "open" || gate == "let_pass"));
    }
    let batch = &bench.get("/batches").await[0];
    let of_batch: Vec<(&Value, &Value)> =
        batch["let_pass"].as_array().expect("overrides").iter().map(|l| (&l["strength"], &l["reason"])).collect();
    assert_eq!(
        of_batch,
        [(&json!("full"), &json!("the oven's full time")), (&json!("handling"), &json!("warmed to 60 °C for an hour"))]
    );
    // Each club's record has both, once.
    let record = bench.get("/jobs/1/record").await;
    for club in record["clubs"].as_array().expect("clubs").iter().take(4) {
        let passed = club["let_pass"].as_array().expect("overrides");
        assert_eq!(passed.len(), 2, "{passed:?}");
        assert!(passed.iter().all(|p| p["batch"] == 1), "{passed:?}");
    }
    assert_eq!(record["clubs"][4]["let_pass"], json!([]), "the P is in no batch");
    let pages = [bench.page("/records/1").await.text, bench.page("/glue").await.text];
    assert!(pages.iter().all(|page| page.contains("warmed to 60 °C for an hour")));
    // A batch that is taken back passes no more.
    bench
        .made(
            "/batches",
            although(json!({ "job": 1, "slots": [5], "lot": "K-2", "room_c": 23.0, "by": "Ada" }), "no reading"),
        )
        .await;
    bench.made("/batches/2/take-back", json!({ "reason": "another club", "by": "Ada" })).await;
    let again = json!({ "strength": "full", "reason": "cured in the oven", "by": "Ada" }).to_string();
    bench.refused("POST", "/batches/2/let-pass", StatusCode::CONFLICT, again).await;
}

#[tokio::test]
async fn a_cure_that_is_open_before_the_bend_is_passed_with_the_rest() {
    let bench = curing().await;
    bench.clock.advance(SignedDuration::from_hours(7));
    for slot in 1..=4 {
        let value = bench.expected(slot, "cured").await;
        let cured = reading(slot, "cured", json!([{ "what": "swing_weight", "value": value }]));
        bench.made("/jobs/1/readings", cured).await;
    }
    let open = bench.get("/jobs/1/open?step=bend").await;
    let names = |club: &Value| -> Vec<String> {
        club["points"]
            .as_array()
            .expect("points")
            .iter()
            .map(|p| p["open"].as_str().expect("a name").to_owned())
            .collect()
    };
    for club in open.as_array().expect("clubs").iter().take(4) {
        assert_eq!(names(club), ["not_cured"], "{club}");
        assert_eq!(club["points"][0]["until"], "2026-03-03T08:00:00Z");
    }
    for club in open.as_array().expect("clubs").iter().skip(4) {
        assert!(names(club).contains(&"not_glued".to_owned()), "{club}");
    }
    let slots = json!([1, 2, 3, 4]);
    let pass = json!({ "step": "bend", "slots": slots, "reason": "cured in the oven", "by": "Ada" });
    bench.made("/jobs/1/open/pass", pass).await;
    for slot in 1..=4 {
        let loft = reading(slot, "bend", json!([{ "what": "loft", "value": 21.0 + 4.0 * (slot - 1) as f64 }]));
        bench.made("/jobs/1/readings", loft).await;
    }
    assert_eq!(bench.get("/batches").await[0]["let_pass"][0]["strength"], "full");
    let unglued = reading(5, "bend", json!([{ "what": "loft", "value": 37.0 }])).to_string();
    bench.refused("POST", "/jobs/1/readings", StatusCode::CONFLICT, unglued).await;
}

/// One verdict over all readings of a step: what was read at another step since says nothing of this one.
#[tokio::test]
async fn the_verdict_of_a_step_is_of_its_own_readings() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let loft = json!([{ "what": "loft", "value": 24.5 }, { "what": "lie", "value": 60.5 }]);
    bench.made("/jobs/1/readings", reading(1, "received", loft)).await;
    let value = bench.expected(1, "dry").await;
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": value }]))).await;
    let page = bench.page("/bench/1/1?step=received").await.text;
    assert!(page.contains("use another head"), "{page}");
    assert!(!bench.page("/bench/1/1?step=dry").await.text.contains("use another head"));
}

/// The dry readings of a set in which the 7 and the 8 have each other's head; everything else as expected.
async fn exchanged_heads() -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    let mut values = Vec::new();
    for slot in 1..=8 {
        values.push(bench.expected(slot, "dry").await);
    }
    let view = bench.get("/jobs/1").await;
    let head_g = |slot: usize| {
        let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts");
        parts.iter().find(|p| p["kind"] == "head").and_then(|p| p["mass_g"].as_f64()).expect("a head")
    };
    // One point is 49.612 g·in, and the heads of these clubs hang about 23 in beyond the fulcrum.
    let points = (head_g(5) - head_g(4)) * 22.75 / 49.612;
    values[3] += points;
    values[4] -= points;
    for (value, slot) in values.iter().zip(1..) {
        let dry = json!([{ "what": "swing_weight", "value": (value * 1000.0).round() / 1000.0 }]);
        bench.made("/jobs/1/readings", reading(slot, "dry", dry)).await;
    }
    bench
}

#[tokio::test]
async fn two_exchanged_heads_are_one_message_with_one_button_and_can_be_undone() {
    let bench = exchanged_heads().await;
    let grid = bench.page("/bench/1/grid/dry").await.text;
    assert!(grid.contains("the heads of the 7-iron and the 8-iron are exchanged"), "{grid}");
    assert_eq!(grid.matches("action=\"/bench/1/exchange\"").count(), 1, "one button for both rows");
    let causes = bench.get("/jobs/1/clubs/4/causes").await;
    assert_eq!(causes[0]["causes"][0]["exchange"], json!({ "kind": "head", "slots": [4, 5] }), "{causes}");

    let form = [("kind", "head"), ("first", "4"), ("second", "5"), ("step", "dry"), ("what", "swing_weight")];
    let done = bench.form("/bench/1/exchange", &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    for slot in [4, 5] {
        assert_eq!(bench.asked(slot, "dry", "swing_weight").await.get("reading"), None, "read again");
    }
    assert!(bench.asked(3, "dry", "swing_weight").await.get("reading").is_some());
    let page = bench.page(&done.location).await.text;
    assert!(page.contains("7 and 8 exchanged: read both again.") && page.contains("/bench/1/exchange/undo"), "{page}");
    // The record keeps what was read and why it counts no more.
    let record = bench.get("/jobs/1/record").await;
    let words = record["clubs"][3]["readings"][0]["reading"]["taken_back"]["words"].as_str().expect("why").to_owned();
    assert_eq!(words, "read with the head of the 8-iron in it; exchanged since");

    let undone = bench.form("/bench/1/exchange/undo", &[("step", "dry"), ("what", "swing_weight")]).await;
    assert_eq!(undone.status, StatusCode::SEE_OTHER, "{}", undone.text);
    for slot in [4, 5] {
        assert_eq!(bench.asked(slot, "dry", "swing_weight").await["doubted"], true, "as it was read");
    }
    // By the API the same; what was read since is not overwritten by taking it back.
    let exchange = json!({ "kind": "head", "slots": [5, 4], "by": "Ada" });
    let made = bench.made("/jobs/1/exchange", exchange.clone()).await;
    assert_eq!((&made["slots"], made["readings"].as_array().map(Vec::len)), (&json!([4, 5]), Some(2)), "{made}");
    bench.refused("POST", "/jobs/1/exchange", StatusCode::CONFLICT, exchange.to_string()).await;
    bench.clock.advance(SignedDuration::from_mins(5));
    let value = bench.expected(4, "dry").await;
    let dry = json!([{ "what": "swing_weight", "value": value }]);
    bench.made("/jobs/1/readings", reading(4, "dry", dry)).await;
    let undo = json!({ "by": "Ada" }).to_string();
    let problem = bench.refused("POST", "/jobs/1/exchange/undo", StatusCode::CONFLICT, undo).await;
    assert!(detail(&problem).contains("the 7 was read since the exchange"), "{problem}");
    for bad in [json!([4]), json!([4, 4]), json!([4, 5, 6])] {
        let body = json!({ "kind": "head", "slots": bad, "by": "Ada" }).to_string();
        bench.refused("POST", "/jobs/1/exchange", StatusCode::UNPROCESSABLE_ENTITY, body).await;
    }
}

/// The dry readings of a set in which every second club came out light.
async fn light_clubs() -> Bench {
    let bench = Bench::open().await;
    planned(&bench).await;
    for slot in 1..=8 {
        let off = if slot % 2 == 0 { -0.9 } else { 0.0 };
        let value = bench.expected(slot, "dry").await + off;
        let dry = json!([{ "what": "swing_weight", "value": value }]);
        let kept = bench.made("/jobs/1/readings", reading(slot, "dry", dry)).await;
        let id = kept["readings"][0]["id"].as_str().expect("an identity").to_owned();
        bench.made(&format!("/jobs/1/readings/{id}/insist"), json!({ "reason": "read twice", "by": "Ada" })).await;
    }
    bench
}

fn tip_g(view: &Value, slot: usize) -> f64 {
    let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts");
    parts.iter().filter(|p| p["kind"] == "tip_weight").filter_map(|p| p["mass_g"].as_f64()).sum()
}

#[tokio::test]
async fn what_to_fit_stands_in_the_grid_and_is_taken_for_the_set_in_one_touch() {
    let bench = light_clubs().await;
    let fit = bench.get("/jobs/1/fit").await;
    let rows = fit["rows"].as_array().expect("rows");
    let advised: Vec<&Value> = rows.iter().filter(|row| row.get("advised").is_some()).collect();
    assert!(advised.len() >= 2, "{fit}");
    for row in &advised {
        let (before, after) =
            (row["chance"].as_f64().expect("now"), row["advised"]["chance_at_end"].as_f64().expect("then"));
        assert!(after > before, "{row}");
    }
    let before = bench.get("/jobs/1").await;
    let grid = bench.page("/bench/1/grid/dry").await.text;
    assert!(grid.contains(&format!("Take all {}", advised.len())), "{grid}");
    assert!(grid.contains("To fetch"), "{grid}");
    // Not where the weight is glued in already, nor where nothing of it is read.
    for step in ["received", "cut", "glue"] {
        assert!(!bench.page(&format!("/bench/1/grid/{step}")).await.text.contains("Take all"), "{step}");
    }

    let form = [("picks", ""), ("step", "dry"), ("what", "swing_weight")];
    let taken = bench.form("/bench/1/fit", &form).await;
    assert_eq!(taken.status, StatusCode::SEE_OTHER, "{}", taken.text);
    let after = bench.get("/jobs/1").await;
    for row in &advised {
        let slot = row["slot"].as_u64().expect("a place") as usize;
        assert!((tip_g(&after, slot) - row["advised"]["mass_g"].as_f64().expect("grams")).abs() < 1e-9, "{row}");
        assert!(bench.asked(slot, "dry", "swing_weight").await.get("reading").is_some(), "the dry reading stands");
    }
    assert!(
        bench.get("/jobs/1/fit").await["rows"].as_array().expect("rows").iter().all(|r| r.get("advised").is_none())
    );

    // The line under the grid takes it back, to the gram.
    let page = bench.page(&taken.location).await.text;
    assert!(page.contains("Undo"), "{page}");
    let picks = taken.location.split("taken=").nth(1).expect("what was there");
    // A space is a plus sign in an address; a plus sign of the text itself is written in percent.
    let spaced = picks.replace('+', " ");
    let picks = percent_encoding::percent_decode_str(&spaced).decode_utf8().expect("text");
    let undone = bench
        .form("/bench/1/fit", &[("picks", &*picks), ("undone", "1"), ("step", "dry"), ("what", "swing_weight")])
        .await;
    assert_eq!((undone.status, undone.location.contains("taken")), (StatusCode::SEE_OTHER, false), "{}", undone.text);
    let back = bench.get("/jobs/1").await;
    for slot in 1..=8 {
        assert!((tip_g(&back, slot) - tip_g(&before, slot)).abs() < 1e-9, "{slot}");
    }

    // One club, by the API; and what cannot be.
    let first = advised[0];
    let pick = json!([{ "slot": first["slot"], "kind": "tip_weight", "code": first["advised"]["code"] }]);
    let one = bench.made("/jobs/1/fit", json!({ "picks": pick, "by": "Ada" })).await;
    assert_eq!((one["taken"].as_array().map(Vec::len), one["before"].as_array().map(Vec::len)), (Some(1), Some(1)));
    let unprocessable = StatusCode::UNPROCESSABLE_ENTITY;
    for (picks, by, status) in [
        (json!([{ "slot": 1, "kind": "head", "code": "H40" }]), "Ada", unprocessable),
        (
            json!([{ "slot": 1, "kind": "tip_weight", "code": "T2" }, { "slot": 1, "kind": "tip_weight", "code": "T4" }]),
            "Ada",
            unprocessable,
        ),
        (json!([{ "slot": 1, "kind": "tip_weight", "code": "T2" }]), " ", unprocessable),
        (json!([{ "slot": 1, "kind": "grip", "code": "T2" }]), "Ada", StatusCode::CONFLICT),
        (json!([{ "slot": 1, "kind": "grip", "code": "no-such" }]), "Ada", StatusCode::NOT_FOUND),
    ] {
        bench.refused("POST", "/jobs/1/fit", status, json!({ "picks": picks, "by": by }).to_string()).await;
    }
    let nonsense = [("picks", "nonsense"), ("step", "dry"), ("what", "swing_weight")];
    bench.form("/bench/1/fit", &nonsense).await.says(unprocessable, &["does not say what goes into which club"]);
}

fn grip(view: &Value, slot: usize) -> String {
    let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts");
    let grip = parts.iter().find(|p| p["kind"] == "grip").expect("a grip");
    grip["code"].as_str().expect("its code").to_owned()
}

/// The first club may want the grip that is planned for another: alone it is taken, too, and taken back.
#[tokio::test]
async fn a_grip_that_is_planned_for_another_club_changes_places_with_its_own() {
    let bench = light_clubs().await;
    let view = bench.get("/jobs/1").await;
    let (one, two) = (grip(&view, 1), grip(&view, 2));
    let pick = json!([{ "slot": 1, "kind": "grip", "code": two }]);
    let taken = bench.made("/jobs/1/fit", json!({ "picks": pick, "by": "Ada" })).await;
    assert_eq!(taken["taken"].as_array().map(Vec::len), Some(2), "{taken}");
    let view = bench.get("/jobs/1").await;
    assert_eq!((grip(&view, 1), grip(&view, 2)), (two.clone(), one.clone()));
    bench.made("/jobs/1/fit", json!({ "picks": taken["before"], "by": "Ada" })).await;
    let view = bench.get("/jobs/1").await;
    assert_eq!((grip(&view, 1), grip(&view, 2)), (one, two));
}
