//! Goal: where shafts were measured, a plan keeps to their line, says so on the page and in the API, follows a part put
//! in by hand, and lets the shop say how much it counts; a part in another job's hands is named with the job. Method: the
//! stock of the support module, whose shafts weigh a tenth of a gram apart, with frequencies given here.

use crate::support::answer::detail;
use crate::support::{Bench, job_of, proposed, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// Every other shaft on the line, the others 8 cpm off it to either side.
async fn measured(bench: &Bench) {
    for i in 0..12 {
        let cpm = [262.0, 270.0, 262.0, 254.0][i % 4];
        let change = json!({ "version": 0, "cpm": cpm, "reason": "plucked", "by": "Ada" });
        let (status, answer) =
            bench.send("PATCH", &format!("/parts/S{i:02}"), "application/json", change.to_string().into_bytes()).await;
        assert_eq!(status, StatusCode::OK, "{answer}");
    }
}

async fn weight(bench: &Bench, value: f64) {
    let mut shop = bench.get("/shop").await;
    shop["plan_weights"]["cpm_per_tolerance"] = json!(value);
    let (status, answer) = bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{answer}");
}

async fn job(bench: &Bench, written: &str) -> i64 {
    let sheet = sheet(bench, "Nobody Inparticular", written).await;
    job_of(bench, sheet).await
}

fn shaft(club: &Value) -> &str {
    let parts = club["parts"].as_array().expect("parts");
    parts.iter().find(|p| p["kind"] == "shaft").and_then(|p| p["code"].as_str()).expect("a shaft")
}

fn clubs(proposal: &Value) -> &Vec<Value> {
    proposal["plan"]["clubs"].as_array().expect("clubs")
}

#[tokio::test]
async fn a_plan_keeps_to_the_line_and_says_so() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    assert_eq!(job(&bench, "5-9, D2, 1 wrap").await, 1);
    let before = bench.made("/jobs/1/plan/propose", json!({})).await;
    assert_eq!(before["plan"].get("frequency"), None, "nothing was measured");
    let page = bench.page("/plan/1").await;
    assert!(!page.text.contains("Frequency") && !page.text.contains("frequency"), "and nothing is said of it");
    measured(&bench).await;
    let counted = bench.made("/jobs/1/plan/propose", json!({})).await;
    for club in clubs(&counted) {
        assert_eq!(club["frequency"]["off_cpm"], json!(0.0), "{club}");
        let reasons = club["reasons"].as_array().expect("reasons");
        let told = |r: &Value| r["words"] == "Its shaft is on its frequency line, 262.0 cpm.";
        assert!(reasons.iter().any(told), "{reasons:?}");
    }
    assert_eq!(
        counted["plan"]["frequency"],
        json!([{ "shaft_model": "SCREE-P", "measured": 12, "line_cpm": 262.0,
            "code": "planner_line.line",
            "figures": { "shaft": "Scree parallel", "number": null, "line_cpm": 262.0, "measured": 12 },
            "words": "Scree parallel: its line is 262.0 cpm, of 12 measured." }])
    );
    let page = bench.page("/plan/1").await;
    page.says(
        StatusCode::OK,
        &[
            "Frequency of the shafts",
            "Scree parallel: its line is 262.0 cpm, of 12 measured.",
            "on its line",
            "shafts on their frequency line, then by even shafts",
        ],
    );
    bench.page("/plan/1/options").await.says(StatusCode::OK, &["Shafts at most 0.0 cpm off their line."]);
    // Not counted, it is the plan of before; what is known is told all the same.
    weight(&bench, 0.0).await;
    let uncounted = bench.made("/jobs/1/plan/propose", json!({})).await;
    assert_eq!(uncounted["fingerprint"], before["fingerprint"]);
    assert!(clubs(&uncounted).iter().any(|c| c["frequency"]["off_cpm"] != json!(0.0)));
    // For one sheet alone the same is said with the request.
    weight(&bench, 0.004).await;
    let sheet = sheet(&bench, "Nobody Inparticular", "5-9, D2, 1 wrap").await;
    let weights = json!({ "cpm_per_tolerance": 0.0 });
    let alone = bench.made("/match/set", json!({ "sheet": sheet, "weights": weights })).await;
    let codes =
        |plan: &Value| plan["clubs"].as_array().expect("clubs").iter().map(|c| shaft(c).to_owned()).collect::<Vec<_>>();
    assert_eq!(codes(&alone["plan"]), codes(&before["plan"]));
    let wrong = json!({ "sheet": sheet, "weights": { "cpm_per_tolerance": -1.0 } });
    let problem = bench.refused("POST", "/match/set", StatusCode::UNPROCESSABLE_ENTITY, wrong.to_string()).await;
    assert!(detail(&problem).contains("plan_weights.cpm_per_tolerance"), "{problem}");
}

#[tokio::test]
async fn a_shaft_put_in_by_hand_is_held_against_the_line() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    measured(&bench).await;
    assert_eq!(job(&bench, "6-7, D2, 1 wrap").await, 1);
    let accept = proposed(&bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    let swapped = bench
        .made("/jobs/1/clubs/1/parts", json!({ "kind": "shaft", "code": "S01", "reason": "tried", "by": "Ada" }))
        .await;
    assert_eq!(swapped["frequency"]["off_cpm"], json!(8.0), "{swapped}");
    assert_eq!(swapped["reasons"][0]["words"], "Its shaft is 8.0 cpm stiffer than its line, 262.0 cpm.");
    assert_eq!(swapped["reasons"].as_array().map(Vec::len), Some(1));
    bench.page("/plan/1").await.says(StatusCode::OK, &["8.0 cpm stiff", "8.0 cpm stiffer than its line"]);
    // A reading put right later moves the plan that counts with it.
    let deed = json!({ "deed": "correct", "cpm": 266.0, "reason": "clamped again", "by": "Ada" });
    bench.made("/parts/S01/life", deed).await;
    let view = bench.get("/jobs/1").await;
    assert_eq!(view["job"]["clubs"][0]["plan"]["frequency"]["off_cpm"], json!(4.0), "{view}");
    // Chosen by its codes, the same.
    assert_eq!(job(&bench, "8, D2, 1 wrap").await, 2);
    let picks = json!({ "clubs": [{ "slot": 1, "codes": ["H80", "S03", "G00", "FB", "T4"] }], "by": "Ada" });
    let plan = bench.made("/jobs/2/plan/picks", picks).await;
    assert_eq!(plan["clubs"][0]["frequency"]["off_cpm"], json!(-8.0), "{plan}");
    assert_eq!(plan["frequency"][0]["measured"], json!(12), "held ones count for the line");
}

#[tokio::test]
async fn a_head_in_another_jobs_hands_is_named_with_the_job() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for number in 1..=3 {
        assert_eq!(job(&bench, "7, D2, 1 wrap").await, number);
    }
    for number in 1..=2 {
        let accept = proposed(&bench, number).await;
        bench.made(&format!("/jobs/{number}/plan"), accept).await;
    }
    let named = |proposal: &Value| -> Vec<(String, i64)> {
        let missing = proposal["plan"]["missing"].as_array().expect("a list");
        let instead = missing.iter().flat_map(|m| m["instead"].as_array().into_iter().flatten());
        let held = instead.filter_map(|i| Some((i["fact"]["words"].as_str()?.to_owned(), i["held_by"].as_i64()?)));
        held.collect()
    };
    let proposal = bench.made("/jobs/3/plan/propose", json!({})).await;
    let mut both = named(&proposal);
    both.sort_by_key(|b| b.1);
    assert_eq!(both.iter().map(|b| b.1).collect::<Vec<_>>(), [1, 2], "{both:?}");
    assert!(both[0].0.contains("(job 1 holds it for its 7): about "), "{both:?}");
    bench.page("/plan/3").await.says(StatusCode::OK, &["job 1 holds it for its 7", "href=\"/plan/2\">See job 2"]);
    // Glued, it is no longer to be had.
    let glued = crate::support::reading(1, "glue", json!([{ "what": "done", "value": 0 }]));
    bench.made("/jobs/1/readings", glued).await;
    let proposal = bench.made("/jobs/3/plan/propose", json!({})).await;
    assert_eq!(named(&proposal).iter().map(|b| b.1).collect::<Vec<_>>(), [2]);
}

#[tokio::test]
async fn the_shop_says_on_its_page_how_much_a_frequency_counts() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    bench
        .page("/shop")
        .await
        .says(StatusCode::OK, &["name=\"plan_weights.cpm_per_tolerance\"", "off its line, where the shop measures it"]);
}
