//! Goal: a job other than a full build is a template of steps and nothing else: bending alone, a new grip without glue,
//! one reading of one club. Method: the API alone, with steps given at the approval; no step has a name that the
//! program knows.

use crate::support::answer::detail;
use crate::support::truth::{Truth, near};
use crate::support::{Bench, although, proposed, reading, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// A job of these clubs with steps of its own, planned.
async fn job_with(bench: &Bench, written: &str, steps: Value) -> Value {
    stocked(bench).await;
    let set = sheet(bench, "Nobody Inparticular", written).await;
    let saved = bench.made("/sheets", set).await;
    let id = saved["id"].as_str().expect("an id");
    let job = bench.made(&format!("/sheets/{id}/approve"), json!({ "steps": steps, "by": "Ada" })).await;
    assert_eq!(job["steps"].as_array().map(Vec::len), steps.as_array().map(Vec::len));
    let accept = proposed(bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    bench.get("/jobs/1").await
}

fn line(record: &Value, club: usize, what: &str) -> Value {
    let lines = record["clubs"][club]["lines"].as_array().expect("lines");
    lines.iter().find(|l| l["what"] == what).unwrap_or_else(|| panic!("no line {what}")).clone()
}

#[tokio::test]
async fn bending_alone_waits_for_no_glue_and_is_recorded() {
    let bench = Bench::open().await;
    // The step still says that it needs full strength; with no gluing among the steps there is nothing to wait for.
    let steps = json!([
        { "key": "look", "label": "As it came in", "asks": ["loft", "lie"], "needs": "none" },
        { "key": "bent", "label": "Bent", "asks": ["loft", "lie"], "needs": "full", "caution": "bending" }
    ]);
    let view = job_with(&bench, "6-8, D2, 1 wrap", steps).await;
    assert_eq!(view["clubs"][0]["next_step"], "look");
    let said = |slot: usize, step: &str, loft: f64, lie: f64| {
        reading(slot, step, json!([{ "what": "loft", "value": loft }, { "what": "lie", "value": lie }]))
    };
    let target = |slot: usize, field: &str| view["job"]["clubs"][slot - 1]["target"][field].as_f64().expect("a target");
    for slot in 1..=3 {
        let (loft, lie) = (target(slot, "loft_deg"), target(slot, "lie_deg"));
        let kept = bench.made("/jobs/1/readings", said(slot, "look", loft, lie - 1.5)).await;
        assert!(
            kept["meaning"]["next"]["words"].as_str().is_some_and(|n| n.contains("Bend 1.5° upright")),
            "{}",
            kept["meaning"]
        );
        let kept = bench.made("/jobs/1/readings", said(slot, "bent", loft, lie)).await;
        assert_eq!(kept["meaning"]["tone"], "good", "{}", kept["meaning"]);
    }
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["state"], "finished");
    for club in 0..3 {
        assert_eq!(line(&record, club, "lie")["verdict"], "in");
        assert_eq!(line(&record, club, "loft")["verdict"], "in");
        assert_eq!(line(&record, club, "swing_weight")["verdict"], "not_read", "nobody read a swing weight");
        assert_eq!(record["clubs"][club]["readings"].as_array().map(Vec::len), Some(4));
    }
    // Glue has no place in it.
    let batch = json!({ "job": 1, "slots": [1], "lot": "B-1", "by": "Ada" }).to_string();
    let problem = bench.refused("POST", "/batches", StatusCode::CONFLICT, batch).await;
    assert!(detail(&problem).contains("1"), "{problem}");
}

#[tokio::test]
async fn a_new_grip_without_glue_forecasts_the_finish_from_the_club_as_it_came() {
    let bench = Bench::open().await;
    let bare = json!(["head", "shaft", "ferrule", "tip_weight", "adhesive"]);
    let gripped = json!(["head", "shaft", "ferrule", "tip_weight", "adhesive", "tape", "grip"]);
    let steps = json!([
        { "key": "stripped", "label": "Old grip off", "asks": ["swing_weight"], "on": bare, "needs": "handling" },
        { "key": "new_grip", "label": "New grip on", "asks": ["swing_weight", "total_mass"], "on": gripped,
          "needs": "handling", "caution": "solvent" }
    ]);
    let view = job_with(&bench, "5-9, D2, 1 wrap", steps).await;
    let clubs = view["job"]["clubs"].as_array().expect("clubs");
    let truths: Vec<Truth> = clubs.iter().map(|c| Truth::of(&c["plan"])).collect();
    let band = |view: &Value, club: usize| view["clubs"][club]["finish"]["band_points"].as_f64().expect("a band");
    for (i, truth) in truths.iter().enumerate() {
        let before = band(&bench.get("/jobs/1").await, i);
        let stripped = truth.points(&crate::support::truth::CURED);
        let kept = bench
            .made(
                "/jobs/1/readings",
                reading(i + 1, "stripped", json!([{ "what": "swing_weight", "value": stripped }])),
            )
            .await;
        assert_ne!(kept["meaning"]["tone"], "doubt", "{}", kept["meaning"]);
        let state = &bench.get("/jobs/1").await["clubs"][i];
        let after = state["finish"]["band_points"].as_f64().expect("a band");
        assert!(after < before, "a reading narrows the band: {before} to {after}");
        let finish = truth.points(&crate::support::truth::FINISH);
        let forecast = state["finish"]["swing_weight_points"].as_f64().expect("a forecast");
        // The first club does not know this grip's centre yet; its own band says how far off it may be.
        near("forecast", forecast, finish, if i == 0 { after * 1.5 } else { 0.15 });
        let entry = json!([
            { "what": "swing_weight", "value": finish },
            { "what": "total_mass", "value": truth.mass(&crate::support::truth::FINISH) }
        ]);
        // The parts were not chosen for the old club: where it is off target, the last step takes a reason.
        let last = although(reading(i + 1, "new_grip", entry), "the player has it so");
        bench.made("/jobs/1/readings", last).await;
    }
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["state"], "finished");
    assert_eq!(record["batches"], json!([]));
    for (i, truth) in truths.iter().enumerate() {
        let built = line(&record, i, "swing_weight")["built"].as_f64().expect("built");
        near("record", built, truth.points(&crate::support::truth::FINISH), 0.02);
    }
}

#[tokio::test]
async fn one_step_for_one_club_is_a_job_too() {
    let bench = Bench::open().await;
    let steps = json!([{ "key": "weigh_only", "label": "Weigh it", "asks": ["total_mass"], "needs": "none",
        "on": ["head", "shaft", "ferrule", "tip_weight", "adhesive", "tape", "grip"] }]);
    let view = job_with(&bench, "7, D2, 1 wrap", steps).await;
    let truth = Truth::of(&view["job"]["clubs"][0]["plan"]);
    let mass = truth.mass(&crate::support::truth::FINISH);
    bench.made("/jobs/1/readings", reading(1, "weigh_only", json!([{ "what": "total_mass", "value": mass }]))).await;
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["state"], "finished");
    near("total mass", line(&record, 0, "total_mass")["built"].as_f64().expect("built"), mass, 0.1);
    for path in ["/records/1", "/bench/1/1", "/plan/1/cards"] {
        bench.page(path).await.says(StatusCode::OK, &["Nobody Inparticular"]);
    }
    bench.page("/bench/1/grid/weigh_only").await.says(StatusCode::OK, &["Weigh it"]);
    // A finished job is no work for today.
    bench.page("/").await.says(StatusCode::OK, &["No job is under way"]);
}

#[tokio::test]
async fn steps_that_the_bench_could_not_follow_are_refused_and_no_job_is_made() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let set = sheet(&bench, "Nobody Inparticular", "7, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set).await;
    let path = format!("/sheets/{}/approve", saved["id"].as_str().expect("an id"));
    let step = |key: &str| json!({ "key": key, "label": "Bend", "asks": ["lie"], "needs": "none" });
    for (steps, words) in [
        (json!([]), "the job has no steps"),
        (json!([step("bend"), step("bend")]), "“bend” is given twice"),
        (json!([step("Bend it")]), "“Bend it” cannot be a key"),
        (json!([step("")]), "cannot be a key"),
        (json!([{ "key": "bend", "label": "Bend", "asks": ["shine"], "needs": "none" }]), "shine"),
        (json!([{ "key": "bend", "label": "Bend", "asks": ["lie"], "needs": "patience" }]), "patience"),
    ] {
        let body = json!({ "steps": steps, "by": "Ada" }).to_string();
        let problem = bench.refused("POST", &path, StatusCode::UNPROCESSABLE_ENTITY, body).await;
        assert!(detail(&problem).contains(words), "{problem}");
    }
    assert_eq!(bench.get("/jobs").await, json!([]));
}
