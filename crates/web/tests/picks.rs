//! Goal: parts chosen by hand are held all or none, and a club that cannot be built is told what else would do. Method:
//! the API alone, on a small stock with two heads a number.

mod support;

use axum::http::StatusCode;
use serde_json::{Value, json};
use support::answer::detail;
use support::{Bench, job_of, sheet, stocked};

/// The parts of a proposed club, by their codes.
fn codes(club: &Value) -> Vec<String> {
    let parts = club["parts"].as_array().expect("parts");
    parts.iter().map(|p| p["code"].as_str().expect("a code").to_owned()).collect()
}

async fn job(bench: &Bench, written: &str) -> i64 {
    let sheet = sheet(bench, "Nobody Inparticular", written).await;
    job_of(bench, sheet).await
}

async fn state(bench: &Bench, code: &str) -> Value {
    bench.get(&format!("/parts/{code}")).await["state"].clone()
}

#[tokio::test]
async fn picks_are_held_all_or_none() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    assert_eq!(job(&bench, "6-7, D2, 1 wrap").await, 1);
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    let clubs = proposal["plan"]["clubs"].as_array().expect("clubs");
    let (first, second) = (codes(&clubs[0]), codes(&clubs[1]));
    let picks = |clubs: Value| json!({ "clubs": clubs, "by": "Ada" }).to_string();
    let refused = |clubs: Value, status| bench.refused("POST", "/jobs/1/plan/picks", status, picks(clubs));

    // Nothing chosen is nothing to hold: the job must not go to the bench.
    let problem = refused(json!([]), StatusCode::CONFLICT).await;
    assert!(detail(&problem).contains("no parts for 6, 7"), "{problem}");
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "open");

    // One head for two clubs, a code nobody knows, a club without its grip: none of it holds anything.
    let mut twice = second.clone();
    twice[0].clone_from(&first[0]);
    refused(json!([{ "slot": 1, "codes": first }, { "slot": 2, "codes": twice }]), StatusCode::UNPROCESSABLE_ENTITY)
        .await;
    refused(json!([{ "slot": 1, "codes": ["H-NONE"] }]), StatusCode::NOT_FOUND).await;
    let bare: Vec<&String> = first.iter().filter(|c| !c.starts_with('G')).collect();
    refused(json!([{ "slot": 1, "codes": bare }]), StatusCode::UNPROCESSABLE_ENTITY).await;
    assert_eq!(state(&bench, &first[0]).await, "free");

    // One of the two is enough; the other stays without a plan.
    let plan = bench.made("/jobs/1/plan/picks", json!({ "clubs": [{ "slot": 1, "codes": first }], "by": "Ada" })).await;
    assert_eq!(codes(&plan["clubs"][0]), first);
    assert_eq!(plan["clubs"][1], Value::Null);
    assert_eq!(state(&bench, &first[0]).await, "held");
    assert_eq!(state(&bench, &second[0]).await, "free");
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "planned");
    // And it is planned now, so the same again is too late.
    refused(json!([{ "slot": 2, "codes": second }]), StatusCode::CONFLICT).await;
}

#[tokio::test]
async fn what_cannot_be_built_is_told_what_else_would_do() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for number in 1..=3 {
        assert_eq!(job(&bench, "7, D2, 1 wrap").await, number);
    }
    let day = bench.made("/match/day", json!({ "seconds": 0.0 })).await;
    let missing: Vec<&Value> = day["jobs"]
        .as_array()
        .expect("jobs")
        .iter()
        .flat_map(|j| j["plan"]["missing"].as_array().expect("a list"))
        .collect();
    assert_eq!(missing.len(), 1, "two heads for three clubs: {missing:?}");
    let instead = missing[0]["instead"].as_array().expect("other parts");
    let words = |code: &str| {
        let found = instead.iter().find(|x| x["code"] == code);
        found.unwrap_or_else(|| panic!("no {code} in {instead:?}"))["words"].as_str().expect("words").to_owned()
    };
    // Both sevens are taken, and said to be; of the neighbours the nearer ones are named.
    assert!(words("H70").contains("the 7 of job ") && words("H71").contains("the 7 of job "));
    assert!(words("H61").contains("the 6's head, 4.0° stronger"), "{}", words("H61"));
    assert!(instead.iter().all(|x| !x["code"].as_str().is_some_and(|c| c.starts_with("H5") || c.starts_with("H9"))));
    // A neighbour 7 g lighter needs several grams more in the tip than the seven itself would.
    let tip = |code: &str| instead.iter().find(|x| x["code"] == code).and_then(|x| x["tip_g"].as_f64()).expect("grams");
    assert!(tip("H61") - tip("H71") >= 4.0, "{instead:?}");
}
