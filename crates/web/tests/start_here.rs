//! Goal: Today names the one place to start, a doubt before all work, and folds what is to be seen to under one line with its
//! count. Method: the page of a shop with a job at the bench, before and after a reading that is doubted.

use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use serde_json::json;

/// Where the first button of “Start here” leads.
fn start(page: &str) -> String {
    let card = page.split_once("Start here").expect("where to start").1;
    let button = card.split("<a ").find(|link| link.contains("primary")).expect("one chief button");
    button.split("href=\"").nth(1).expect("a way").split('"').next().expect("an address").to_owned()
}

#[tokio::test]
async fn today_says_where_to_start_and_folds_the_rest() {
    let bench = Bench::open().await;
    planned(&bench).await;
    // A reading, so that the guide of a new shop is gone.
    let at = bench.expected(1, "dry").await;
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": at }]))).await;
    let page = bench.page("/").await;
    page.says(StatusCode::OK, &["Start here"]);
    assert!(start(&page.text).starts_with("/bench/1/grid/"), "{}", start(&page.text));

    // Four points off is no club of this set: to be looked at before anything else.
    let off = bench.expected(2, "dry").await - 4.0;
    bench.made("/jobs/1/readings", reading(2, "dry", json!([{ "what": "swing_weight", "value": off }]))).await;
    let page = bench.page("/").await;
    assert_eq!(start(&page.text), "/bench/1/2", "the doubted club");
    // Folded under one line that counts it.
    let folded = page.text.split_once("<details class=\"see-to\">").expect("a fold").1;
    let (line, rest) = folded.split_once("</summary>").expect("one line");
    let count: usize = line.chars().filter(char::is_ascii_digit).collect::<String>().parse().expect("a count");
    assert!(count >= 1, "{line}");
    assert!(rest.split_once("</details>").expect("an end").0.contains("/bench/1/2"), "the doubt is in the fold");
}
