//! What is worth doing before a set is glued says the same to a program and on every page: the bundle with its total on the
//! plan and on Today, another order of work until it is declined, the order of the grips on the grid.

use crate::support::{Bench, planned};
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn before_the_glue_the_plan_says_what_is_worth_doing() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let set = bench.get("/jobs/1/advice").await;
    let of = set["of_clubs"].as_u64().expect("clubs");
    let clubs = |value: &Value| value.as_f64().expect("clubs");
    let (before, after) = (clubs(&set["bundle"]["clubs_before"]), clubs(&set["bundle"]["clubs_after"]));
    let gained: f64 =
        set["bundle"]["offers"].as_array().expect("offers").iter().map(|o| clubs(&o["clubs_gained"])).sum();
    assert!(after > before && after <= of as f64 && (after - before - gained).abs() < 1e-9, "{set}");
    assert_eq!(set["bundle"]["worth"]["code"], "bundle.worth");
    let worth = set["bundle"]["worth"]["words"].as_str().expect("words");
    assert!(worth.contains(&format!("{of} clubs expected inside")), "{worth}");
    let orders: Vec<&str> =
        set["orders"].as_array().expect("orders").iter().filter_map(|o| o["order"].as_str()).collect();
    assert_eq!(orders, ["batch", "one_cured_first", "one_finished_first", "one_one_rest", "one_by_one"]);
    assert!((clubs(&set["orders"][0]["clubs"]) - before).abs() < 1e-9);

    let plan = bench.page("/plan/1").await;
    plan.says(StatusCode::OK, &["Before you glue", worth]);
    bench.page("/").await.says(StatusCode::OK, &["Before you glue"]);
    // Declined as the offers are: the order is not proposed again.
    let (status, _) = bench.post("/jobs/1/decline-offer", json!({ "measure": "pilot", "by": "Ada" })).await;
    assert_eq!(status, StatusCode::NO_CONTENT);
    let set = bench.get("/jobs/1/advice").await;
    assert!(set.get("proposed").is_none() && set.get("proposed_with_bundle").is_none(), "{set}");
    // A measurement that was declined is not counted with either.
    let first = set["bundle"]["offers"][0]["measure"].as_str().expect("a measure").to_owned();
    bench.post("/jobs/1/decline-offer", json!({ "measure": first, "by": "Ada" })).await;
    let set = bench.get("/jobs/1/advice").await;
    let left = set["bundle"]["offers"].as_array().expect("offers");
    assert!(left.iter().all(|o| o["measure"] != first.as_str()));
    assert!(clubs(&set["bundle"]["clubs_after"]) < after - 1e-6, "{set}");
}
