//! Goal: an empty shop comes from three questions to a planned club, and no stop on the way is a dead end. Going back, sending
//! twice and another tablet lose nothing and make nothing twice.
//! Method: the forms as a browser sends them.

use crate::support::Bench;
use axum::http::StatusCode;
use serde_json::json;

const ANSWERS: [(&str, &str); 9] = [
    ("joint.points", "0.7"),
    ("adhesive", "ANY-EPOXY-DAY"),
    ("grip.points", ""),
    ("grip", "ANY-GRIP"),
    ("wrap.points", ""),
    ("tape", "ANY-TAPE"),
    ("balance_step", "0.1"),
    ("mass_step", "0.1"),
    ("units", "in-g"),
];

fn set<'a>(written: &'a str, hand: &'a str) -> [(&'a str, &'a str); 7] {
    [
        ("player", "Nobody Inparticular"),
        ("written", written),
        ("head", "ANY-CAVITY"),
        ("shaft", ""),
        ("grip", "ANY-GRIP"),
        ("hand", hand),
        ("due", "2099-01-15"),
    ]
}

/// The fields of the parts page that wait for a mass.
async fn to_weigh(bench: &Bench, address: &str) -> Vec<String> {
    let page = bench.page(address).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text);
    let names = page.text.split("<input ").filter(|input| input.contains("inputmode=\"decimal\""));
    names
        .map(|input| input.split("name=\"").nth(1).and_then(|n| n.split('"').next()).expect("a name").to_owned())
        .collect()
}

#[tokio::test]
async fn three_questions_a_line_and_three_masses_lead_to_a_plan() {
    let bench = Bench::open().await;
    bench.page("/").await.says(StatusCode::OK, &["Begin with one set", "Bring my lists", "Try the invented shop"]);
    for address in ["/begin", "/begin/set", "/begin/lists", "/begin/try"] {
        assert_eq!(bench.page(address).await.status, StatusCode::OK, "{address}");
    }
    // A typing error stays beside its field, and what was typed stays.
    let mut wrong = ANSWERS;
    wrong[0].1 = "seven";
    bench.form("/begin", &wrong).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["seven"]);
    assert_eq!(bench.get("/models").await, json!([]), "nothing was kept of it");
    for _ in 0..2 {
        assert!(bench.form("/begin", &ANSWERS).await.location.starts_with("/begin/set"));
    }
    let learned = bench.get("/learned").await;
    assert_eq!(learned["told"].as_array().map(Vec::len), Some(1), "{learned}");

    bench.form("/begin/set", &set("seven", "right")).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["seven"]);
    let first = bench.form("/begin/set", &set("7, D2", "right")).await.location;
    let second = bench.form("/begin/set", &set("7, D2", "right")).await.location;
    assert_eq!(first, second, "the same sheet again is the same sheet");
    // Another tablet finds the place on Today.
    assert!(bench.page("/").await.text.contains(&format!("href=\"{first}\"")));

    let fields = to_weigh(&bench, &first).await;
    assert_eq!(fields.len(), 3, "{fields:?}");
    bench.form(&first, &[]).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["enter what it weighs"]);
    // A slipped digit is asked about; what was sound is kept and not asked for again.
    let slipped = [(fields[0].as_str(), "468.4"), (&fields[1], "113.2"), (&fields[2], "50.3"), ("small", "1")];
    let answer = bench.form(&first, &slipped).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(to_weigh(&bench, &first).await, fields[..1]);
    let right = [(fields[0].as_str(), "268.4"), ("small", "1")];
    let plan = bench.form(&first, &right).await;
    assert_eq!((plan.status, plan.location.as_str()), (StatusCode::SEE_OTHER, "/plan/1"), "{}", plan.text);
    assert_eq!(bench.form(&first, &right).await.location, "/plan/1", "sent twice is one job");
    assert_eq!(bench.get("/jobs").await.as_array().map(Vec::len), Some(1));
    let heads = bench.get("/parts?kind=head").await;
    assert_eq!(heads["total"], json!(1), "{heads}");

    bench.page("/plan/1").await.says(StatusCode::OK, &["Hold these parts"]);
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    bench.made("/jobs/1/plan", json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" })).await;
    let at = bench.expected(1, "dry").await;
    bench
        .made(
            "/jobs/1/readings",
            json!({ "slot": 1, "step": "dry", "by": "Ada",
        "entries": [{ "what": "swing_weight", "value": at }] }),
        )
        .await;
}

#[tokio::test]
async fn a_left_handed_set_gets_left_handed_heads() {
    let bench = Bench::open().await;
    bench.form("/begin", &ANSWERS).await;
    bench.form("/begin/set", &set("5-PW, D2", "left")).await;
    let sheets = bench.get("/sheets").await;
    let sheet = bench.get(&format!("/sheets/{}", sheets[0]["id"].as_str().expect("a sheet"))).await;
    assert_eq!(sheet["sheet"]["clubs"].as_array().map(Vec::len), Some(6));
    assert_eq!(sheet["sheet"]["clubs"][0]["head_model"], json!("ANY-CAVITY-LEFT"));
    let stops: Vec<_> =
        sheet["problems"].as_array().expect("findings").iter().filter(|p| p["severity"] == "stop").collect();
    assert!(stops.is_empty(), "{stops:?}");
}

/// Each sort of head has a shaft that goes into it and a ferrule over it without being asked.
#[tokio::test]
async fn a_shaft_that_fits_is_found_for_every_usual_head() {
    for (head, written) in [
        ("ANY-BLADE", "3-PW, D2"),
        ("ANY-WEDGE", "52, 56, D4"),
        ("ANY-DRIVER", "driver, D2"),
        ("ANY-WOOD", "3, 5, D2"),
        ("ANY-HYBRID", "3, 4, D2"),
    ] {
        let bench = Bench::open().await;
        bench.form("/begin", &ANSWERS).await;
        let mut form = set(written, "right");
        form[2].1 = head;
        let saved = bench.form("/begin/set", &form).await;
        assert!(saved.location.starts_with("/begin/parts/"), "{head}: {}", saved.text);
        let sheets = bench.get("/sheets").await;
        let sheet = bench.get(&format!("/sheets/{}", sheets[0]["id"].as_str().expect("a sheet"))).await;
        let stops: Vec<_> =
            sheet["problems"].as_array().expect("findings").iter().filter(|p| p["severity"] == "stop").collect();
        assert!(stops.is_empty(), "{head}: {stops:?}");
    }
}

/// A target that no part in stock reaches was the end of the way; the builder's word goes on with the nearest parts, and the
/// target stays.
#[tokio::test]
async fn a_target_out_of_reach_is_built_anyway_by_the_builders_word() {
    let bench = Bench::open().await;
    bench.form("/begin", &ANSWERS).await;
    let parts = bench.form("/begin/set", &set("7, +1/2, F5", "right")).await.location;
    let fields = to_weigh(&bench, &parts).await;
    // Without weights for the tip nothing makes up for the head.
    let masses = [(fields[0].as_str(), "262.0"), (&fields[1], "113.2"), (&fields[2], "50.3")];
    assert_eq!(bench.form(&parts, &masses).await.location, "/plan/1");
    let page = bench.page("/plan/1").await;
    page.says(StatusCode::OK, &["short of F5", "Build it anyway"]);
    let target = bench.get("/jobs/1").await["job"]["clubs"][0]["target"].clone();
    bench.form("/plan/1/anyway", &[("reason", "")]).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["Build it anyway"]);
    let built = bench.form("/plan/1/anyway", &[("reason", "lead tape later")]).await;
    assert_eq!((built.status, built.location.as_str()), (StatusCode::SEE_OTHER, "/plan/1"), "{}", built.text);
    let job = bench.get("/jobs/1").await["job"].clone();
    assert_eq!(job["clubs"][0]["target"], target, "the target stays what the sheet says");
    assert!(job["clubs"][0]["plan"]["chance"].as_f64().expect("a chance") < 0.05);
    bench.page("/bench/1/1").await.says(StatusCode::OK, &["F5"]);
}

#[tokio::test]
async fn a_part_that_is_missing_leads_back_to_weighing() {
    let bench = Bench::open().await;
    bench.form("/begin", &ANSWERS).await;
    let parts = bench.form("/begin/set", &set("7, D2", "right")).await.location;
    let fields = to_weigh(&bench, &parts).await;
    // The grip is weighed later.
    assert_eq!(bench.form(&parts, &[(&fields[0], "268.4"), (&fields[1], "113.2")]).await.location, "/plan/1");
    let page = bench.page("/plan/1").await;
    page.says(StatusCode::OK, &["Weigh in the missing parts"]);
    assert!(page.text.contains(&format!("href=\"{parts}\"")), "{}", page.text);
    assert_eq!(bench.form(&parts, &[(&fields[2], "50.3"), ("small", "1")]).await.location, "/plan/1");
    bench.page("/plan/1").await.says(StatusCode::OK, &["Hold these parts"]);
}

/// Of several equal pieces one is in question: the others are kept, and its own place waits for it.
#[tokio::test]
async fn a_grip_in_question_takes_no_other_grips_place() {
    let bench = Bench::open().await;
    bench.form("/begin", &ANSWERS).await;
    let parts = bench.form("/begin/set", &set("6, 7, D2", "right")).await.location;
    let fields = to_weigh(&bench, &parts).await;
    let grips: Vec<&String> = fields.iter().filter(|name| name.contains("-grip-")).collect();
    assert_eq!(grips.len(), 2, "{fields:?}");
    let answer = bench.form(&parts, &[(grips[0], "5"), (grips[1], "50.1")]).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(to_weigh(&bench, &parts).await.contains(grips[0]), "it waits under its own name");
    bench.form(&parts, &[(grips[0], "49.7")]).await;
    assert_eq!(bench.get("/parts?kind=grip").await["total"], json!(2));
}
