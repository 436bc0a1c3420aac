//! Goal: a part goes through its life by deeds that say who and when, no deed puts it into two clubs or takes it out of a
//! plan in silence, and what it weighs or measures now is what the next plan counts with.
//! Method: the eight-club shop; two requests at once where two tablets could meet.

use crate::support::truth::DRY;
use crate::support::{Bench, although, job_of, planned, proposed, reading, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

async fn deed(bench: &Bench, code: &str, body: Value) -> Value {
    bench.made(&format!("/parts/{code}/life"), body).await
}

async fn refused(bench: &Bench, code: &str, status: StatusCode, body: Value) -> String {
    let problem = bench.refused("POST", &format!("/parts/{code}/life"), status, body.to_string()).await;
    problem["detail"].as_str().expect("words").to_owned()
}

fn steps(life: &Value) -> Vec<&str> {
    life["life"].as_array().expect("entries").iter().filter_map(|e| e["step"].as_str()).collect()
}

/// Code of the part of a kind that the plan gives a place in the tray.
async fn planned_code(bench: &Bench, slot: usize, kind: &str) -> String {
    let view = bench.get("/jobs/1").await;
    let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts").clone();
    parts.iter().find(|p| p["kind"] == kind).and_then(|p| p["code"].as_str()).expect("a code").to_owned()
}

#[tokio::test]
async fn what_is_reserved_is_what_the_plan_takes() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let sheet = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    job_of(&bench, sheet).await;
    // The plan would not choose the lightest head by itself.
    let sevens = bench.get("/parts?model=WREN-I&number=7").await;
    let mut masses: Vec<(f64, String)> = sevens["parts"]
        .as_array()
        .expect("parts")
        .iter()
        .map(|p| (p["mass_g"].as_f64().expect("a mass"), p["code"].as_str().expect("a code").to_owned()))
        .collect();
    masses.sort_by(|a, b| a.0.total_cmp(&b.0));
    let first = bench.made("/jobs/1/plan/propose", json!({})).await;
    let chosen = first["plan"]["clubs"][3]["parts"][0]["code"].as_str().expect("a code").to_owned();
    let wanted = masses.iter().map(|m| m.1.clone()).find(|code| *code != chosen).expect("another");
    let held = deed(&bench, &wanted, json!({ "deed": "reserve", "job": 1, "slot": 4, "by": "Ada" })).await;
    assert_eq!((&held["part"]["state"], &held["club"], &held["job"]), (&json!("held"), &json!("7"), &json!(1)));

    let other =
        refused(&bench, &chosen, StatusCode::CONFLICT, json!({ "deed": "reserve", "job": 1, "slot": 4, "by": "Bo" }))
            .await;
    assert!(other.contains(&format!("{wanted} is reserved for the 7 of job 1 already")), "{other}");
    let wrong =
        refused(&bench, &chosen, StatusCode::CONFLICT, json!({ "deed": "reserve", "job": 1, "slot": 5, "by": "Bo" }))
            .await;
    assert!(wrong.contains("the 8 of job 1 asks for another"), "{wrong}");
    let twice =
        refused(&bench, &wanted, StatusCode::CONFLICT, json!({ "deed": "reserve", "job": 1, "slot": 4, "by": "Bo" }))
            .await;
    assert!(twice.contains(&wanted), "{twice}");

    let accept = proposed(&bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    assert_eq!(planned_code(&bench, 4, "head").await, wanted);
    let life = bench.get(&format!("/parts/{wanted}/life")).await;
    assert_eq!(steps(&life), ["came_in", "held"], "held once, and the plan kept it");
}

#[tokio::test]
async fn a_part_in_a_plan_is_not_taken_away_in_silence() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let code = planned_code(&bench, 4, "head").await;
    for (body, what) in [
        (json!({ "deed": "scrap", "reason": "dented", "by": "Ada" }), "is held for the 7 of job 1"),
        (json!({ "deed": "return", "by": "Ada" }), "is held for the 7 of job 1"),
        (json!({ "deed": "pull", "by": "Ada" }), "is held for the 7 of job 1 and not glued yet"),
        (json!({ "deed": "use", "reason": "for a friend", "by": "Ada" }), "is held for the 7 of job 1"),
    ] {
        let words = refused(&bench, &code, StatusCode::CONFLICT, body).await;
        assert!(words.contains(&format!("{code} {what}")), "{words}");
    }
    bench.made("/jobs/1/readings", reading(4, "dry", json!([{ "what": "swing_weight", "value": 42.0 }]))).await;
    let scrap = json!({ "deed": "scrap", "reason": "dented", "lose_plan": true, "by": "Ada" });
    let life = deed(&bench, &code, scrap).await;
    assert_eq!((&life["part"]["state"], &life["job"]), (&json!("rejected"), &Value::Null));
    assert_eq!(steps(&life), ["came_in", "held", "freed", "scrapped"]);
    let entry = &life["life"][3];
    assert_eq!((&entry["by"], &entry["reason"]), (&json!("Ada"), &json!("dented")));
    let view = bench.get("/jobs/1").await;
    assert_eq!(view["job"]["clubs"][3]["plan"], Value::Null);
    let readings = view["clubs"][3]["steps"].as_array().expect("steps");
    assert!(readings.iter().all(|s| s["status"] != "done"), "its reading does not count any more");
    // The club waits for a new plan, which does not take the scrapped head.
    let again = bench.made("/jobs/1/plan/again", json!({})).await;
    let seven = again["plan"]["clubs"][3]["parts"].as_array().expect("a plan");
    assert!(seven.iter().all(|p| p["code"] != code.as_str()));
}

#[tokio::test]
async fn two_tablets_reserve_one_part_for_two_clubs() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for player in ["Nobody Inparticular", "Somebody Else"] {
        let sheet = sheet(&bench, player, "7, D2, 1 wrap").await;
        job_of(&bench, sheet).await;
    }
    let sevens = bench.get("/parts?model=WREN-I&number=7").await;
    for part in sevens["parts"].as_array().expect("parts").iter().take(4) {
        let code = part["code"].as_str().expect("a code");
        let path = format!("/parts/{code}/life");
        let body = |job: i64| json!({ "deed": "reserve", "job": job, "slot": 1, "by": "Ada" });
        let (one, two) = tokio::join!(bench.post(&path, body(1)), bench.post(&path, body(2)));
        let ok = [&one, &two].iter().filter(|a| a.0 == StatusCode::OK).count();
        assert_eq!(ok, 1, "{one:?} {two:?}");
        let refused = if one.0 == StatusCode::OK { &two } else { &one };
        assert!(refused.1["detail"].as_str().expect("words").contains("held already by job"), "{refused:?}");
        let life = bench.get(&path).await;
        assert_eq!(steps(&life).iter().filter(|s| **s == "held").count(), 1);
        let winner = life["job"].as_i64().expect("a job");
        let back = json!({ "deed": "return", "place": "shelf 2", "by": "Bo" });
        let life = deed(&bench, code, back).await;
        assert_eq!((&life["part"]["state"], &life["part"]["place"]), (&json!("free"), &json!("shelf 2")));
        assert_eq!(
            life["life"].as_array().and_then(|l| l.last()).map(|e| (&e["step"], &e["job"])),
            Some((&json!("returned"), &json!(winner)))
        );
    }
}

#[tokio::test]
async fn a_correction_keeps_the_old_value_and_the_plan_follows() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let code = planned_code(&bench, 4, "head").await;
    let before = bench.get(&format!("/parts/{code}")).await;
    let (old, version) = (before["mass_g"].as_f64().expect("a mass"), before["version"].clone());
    let right = old + 0.5;
    let correct = json!({ "deed": "correct", "mass_typed": format!("{right:.1}"), "version": version, "reason": "film was on", "by": "Ada" });
    let life = deed(&bench, &code, correct.clone()).await;
    let entry = life["life"].as_array().and_then(|l| l.last()).expect("an entry").clone();
    assert_eq!((&entry["figures"][0]["from"], &entry["step"]), (&json!(old), &json!("corrected")));
    let view = bench.get("/jobs/1").await;
    let parts = view["job"]["clubs"][3]["plan"]["parts"].as_array().expect("parts");
    let head = parts.iter().find(|p| p["kind"] == "head").expect("a head");
    assert!((head["mass_g"].as_f64().expect("a mass") - right).abs() < 1e-9, "{head}");
    let stale = refused(&bench, &code, StatusCode::CONFLICT, correct).await;
    assert!(stale.contains("was changed on another screen"), "{stale}");
    let same = refused(
        &bench,
        &code,
        StatusCode::UNPROCESSABLE_ENTITY,
        json!({ "deed": "correct", "mass_typed": format!("{right:.1}"), "by": "Ada" }),
    )
    .await;
    assert!(same.contains("has these figures already"), "{same}");
    let wrong = refused(
        &bench,
        &code,
        StatusCode::UNPROCESSABLE_ENTITY,
        json!({ "deed": "correct", "mass_typed": "26.4", "by": "Ada" }),
    )
    .await;
    assert!(wrong.contains("mass_g is 26.4 g"), "{wrong}");
}

#[tokio::test]
async fn a_shaft_cut_wrongly_serves_shorter_clubs() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let code = planned_code(&bench, 1, "shaft").await;
    let returned = json!({ "deed": "miscut", "length_mm": 900.0, "mass_typed": "104.0", "reason": "read the wrong line", "by": "Ada" });
    let words = refused(&bench, &code, StatusCode::CONFLICT, returned.clone()).await;
    assert!(words.contains("is held for the 4 of job 1"), "{words}");
    for (body, what) in [
        (json!({ "deed": "miscut", "by": "Ada" }), "no current length"),
        (json!({ "deed": "miscut", "length_mm": 1400.0, "mass_typed": "104", "by": "Ada" }), "cannot be cut from it"),
        (
            json!({ "deed": "miscut", "length_mm": 900.0, "off_the_tip_mm": 500.0, "mass_typed": "104", "by": "Ada" }),
            "cannot be cut from it",
        ),
        (
            json!({ "deed": "miscut", "length_mm": 900.0, "lose_plan": true, "reason": "slipped", "by": "Ada" }),
            "no current weight",
        ),
    ] {
        let words = refused(&bench, &code, StatusCode::UNPROCESSABLE_ENTITY, body).await;
        assert!(words.contains(what), "{words}");
    }
    let mut lost = returned;
    lost["lose_plan"] = json!(true);
    let life = deed(&bench, &code, lost).await;
    let part = &life["part"];
    assert_eq!((&part["state"], &part["length_mm"], &part["mass_g"]), (&json!("free"), &json!(900.0), &json!(104.0)));
    assert!(
        life["life"].as_array().and_then(|l| l.last()).expect("an entry")["words"]
            .as_str()
            .expect("words")
            .starts_with("Cut: mass")
    );
    // Too short for the 4 (its cut shaft is 38.5 in less cap and bore: 945 mm), long enough for the G.
    let again = bench.made("/jobs/1/plan/again", json!({ "locks": [{ "slot": 8, "code": code }] })).await;
    let gap = again["plan"]["clubs"][7]["parts"].as_array().expect("a plan");
    assert!(gap.iter().any(|p| p["code"] == code.as_str()), "{gap:?}");
    let answer = bench.post("/jobs/1/plan/again", json!({ "locks": [{ "slot": 1, "code": code }] })).await;
    assert!(answer.1["detail"].as_str().expect("words").contains("does not fit there"), "{answer:?}");
}

/// Builds a single club to its end.
async fn finished(bench: &Bench) {
    use crate::support::truth::{CURED, FINISH, Truth};
    use jiff::SignedDuration;
    stocked(bench).await;
    let sheet = sheet(bench, "Nobody Inparticular", "7, D2, 1 wrap").await;
    job_of(bench, sheet).await;
    let accept = proposed(bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    let view = bench.get("/jobs/1").await;
    let truth = Truth::of(&view["job"]["clubs"][0]["plan"]);
    bench
        .made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": truth.points(&DRY) }])))
        .await;
    bench.made("/batches", json!({ "job": 1, "slots": [1], "lot": "B-7", "by": "Ada", "reason": "as agreed" })).await;
    bench.clock.advance(SignedDuration::from_hours(72));
    bench
        .made(
            "/jobs/1/readings",
            reading(1, "cured", json!([{ "what": "swing_weight", "value": truth.points(&CURED) }])),
        )
        .await;
    bench
        .made(
            "/jobs/1/readings",
            reading(1, "finish", json!([{ "what": "swing_weight", "value": truth.points(&FINISH) }])),
        )
        .await;
    let steps = view["job"]["steps"].as_array().expect("steps");
    let last = steps.last().and_then(|s| s["key"].as_str()).expect("a last step");
    let unread = although(reading(1, last, json!([{ "what": "done" }])), "not read in this test");
    bench.made("/jobs/1/readings", unread).await;
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "finished");
}

#[tokio::test]
async fn parts_pulled_out_of_a_finished_club_are_used_again_as_they_are_now() {
    let bench = Bench::open().await;
    finished(&bench).await;
    let (head, shaft) = (planned_code(&bench, 1, "head").await, planned_code(&bench, 1, "shaft").await);
    let record = bench.get("/jobs/1/record").await;
    let used =
        refused(&bench, &head, StatusCode::CONFLICT, json!({ "deed": "scrap", "reason": "dented", "by": "Ada" })).await;
    assert!(used.contains(&format!("{head} is used in the 7 of job 1. Pull it out of the club first")), "{used}");

    let dirty = deed(&bench, &head, json!({ "deed": "pull", "reason": "reshafted", "by": "Ada" })).await;
    assert_eq!((&dirty["part"]["state"], &dirty["job"]), (&json!("pulled"), &Value::Null));
    let unweighed =
        refused(&bench, &head, StatusCode::UNPROCESSABLE_ENTITY, json!({ "deed": "restore", "by": "Ada" })).await;
    assert!(unweighed.contains("Take the adhesive off, weigh it"), "{unweighed}");
    let clean =
        deed(&bench, &head, json!({ "deed": "restore", "mass_typed": "262.7", "place": "shelf W7", "by": "Ada" }))
            .await;
    assert_eq!((&clean["part"]["state"], &clean["part"]["mass_g"]), (&json!("free"), &json!(262.7)));
    assert_eq!(steps(&clean), ["came_in", "held", "used", "pulled", "restored"]);

    let no_mass = refused(
        &bench,
        &shaft,
        StatusCode::UNPROCESSABLE_ENTITY,
        json!({ "deed": "pull", "clean": true, "by": "Ada" }),
    )
    .await;
    assert!(no_mass.contains("no current weight is given"), "{no_mass}");
    let view = bench.get("/jobs/1").await;
    let cut_mm = view["job"]["clubs"][0]["plan"]["cut_shaft_mm"].as_f64().expect("a length");
    let pulled =
        deed(&bench, &shaft, json!({ "deed": "pull", "clean": true, "mass_typed": "103.4", "by": "Ada" })).await;
    let part = &pulled["part"];
    assert!((part["length_mm"].as_f64().expect("a length") - cut_mm).abs() < 0.06, "as long as it was cut: {part}");
    assert_eq!((&part["state"], &part["mass_g"]), (&json!("free"), &json!(103.4)));
    assert_eq!(bench.get("/jobs/1/record").await, record, "the record stays as it was");

    // The next job may take both.
    let sheet = sheet(&bench, "Somebody Else", "8, D2, 1 wrap").await;
    let job = job_of(&bench, sheet).await;
    let proposal =
        bench.made(&format!("/jobs/{job}/plan/propose"), json!({ "locks": [{ "slot": 1, "code": shaft }] })).await;
    assert!(
        proposal["plan"]["clubs"][0]["parts"].as_array().expect("parts").iter().any(|p| p["code"] == shaft.as_str())
    );
}

#[tokio::test]
async fn a_glued_club_is_taken_apart_and_waits() {
    let bench = Bench::open().await;
    planned(&bench).await;
    bench.made("/batches", json!({ "job": 1, "slots": [4], "lot": "B-7", "by": "Ada", "reason": "as agreed" })).await;
    let (head, shaft, grip) = (
        planned_code(&bench, 4, "head").await,
        planned_code(&bench, 4, "shaft").await,
        planned_code(&bench, 4, "grip").await,
    );
    let glued = refused(&bench, &head, StatusCode::CONFLICT, json!({ "deed": "return", "by": "Ada" })).await;
    assert!(glued.contains(&format!("{head} is on the 7 of job 1 for good: it is glued")), "{glued}");
    let silent = refused(&bench, &head, StatusCode::CONFLICT, json!({ "deed": "pull", "by": "Ada" })).await;
    assert!(silent.contains("confirm that the 7 is to be taken apart"), "{silent}");
    let apart = json!({ "deed": "pull", "lose_plan": true, "clean": true, "mass_typed": "264.1", "reason": "not seated", "by": "Ada" });
    let life = deed(&bench, &head, apart).await;
    assert_eq!((&life["part"]["state"], &life["part"]["mass_g"]), (&json!("free"), &json!(264.1)));
    for code in [&shaft, &grip] {
        assert_eq!(bench.get(&format!("/parts/{code}")).await["state"], "pulled", "{code}");
    }
    let view = bench.get("/jobs/1").await;
    assert_eq!(view["job"]["clubs"][3]["plan"], Value::Null);
    assert!(view["job"]["clubs"][2]["plan"].is_object(), "the others keep theirs");
}

#[tokio::test]
async fn the_page_of_a_part_tells_its_life_and_what_can_be_done() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let code = planned_code(&bench, 4, "head").await;
    let page = bench.page(&format!("/stock/parts/{code}")).await;
    assert!(page.text.contains("Its life") && page.text.contains("Held for the 7 of job 1."), "{}", page.text);
    assert!(page.text.contains("Give it back to the shelf") && !page.text.contains("Reserve it for a club"));
    let version = bench.get(&format!("/parts/{code}")).await["version"].to_string();
    let address = format!("/stock/parts/{code}/life");
    let refused = bench.form(&address, &[("deed", "scrap"), ("version", &version), ("reason", "dented")]).await;
    assert_eq!(refused.status, StatusCode::CONFLICT);
    assert!(refused.text.contains(&format!("{code} is held for the 7 of job 1")), "{}", refused.text);
    let nothing = bench.form(&address, &[("deed", "polish"), ("version", &version)]).await;
    assert_eq!(nothing.status, StatusCode::UNPROCESSABLE_ENTITY);
    let wrong = bench.form(&address, &[("deed", "pull"), ("version", &version), ("mass", "heavy")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    let fields = [("deed", "scrap"), ("version", version.as_str()), ("reason", "dented"), ("lose_plan", "1")];
    let done = bench.form(&address, &fields).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let page = bench.page(&format!("/stock/parts/{code}")).await;
    assert!(
        page.text.contains("Scrapped.") && page.text.contains("dented") && page.text.contains("Take it into stock")
    );
    let today = bench.page("/").await;
    assert!(today.status == StatusCode::OK);
    let csv = bench.page(&format!("/api/v1/parts/{code}/life/export")).await;
    assert!(csv.text.contains(",scrapped,") && csv.text.contains(",dented"), "{}", csv.text);
}
