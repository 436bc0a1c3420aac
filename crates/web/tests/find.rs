//! Goal: the one field leads to customers, jobs, models, notes and parts by parts of words; what has a slip is offered and never
//! opened by itself. Method: the invented shop, as pages and by the API.

use crate::demo_past::demo;
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn parts_of_words_and_slips_find_what_is_meant() {
    let bench = demo().await;
    let found = |all: &Value| -> Vec<String> {
        let all = all.as_array().expect("a list");
        all.iter().filter_map(|one| one.as_object()?.keys().next().cloned()).collect()
    };
    let jobs = bench.get("/find?text=farrow").await;
    assert!(found(&jobs).contains(&"job".to_owned()), "{jobs}");
    assert_eq!(bench.get("/find?text=farrwoby").await, json!([]), "a program gets no guess that it did not ask for");
    let near = bench.get("/find?text=farrwoby&near=true").await;
    assert!(found(&near).contains(&"job".to_owned()), "{near}");
    let models = bench.get("/find?text=sisk").await;
    assert!(found(&models).contains(&"model".to_owned()), "{models}");
    // A reason that somebody gave is found again.
    let made = json!({ "recall": { "part": "S4-01" }, "word": "quernstone dust in the hosel", "by": "Ada" });
    bench.made("/marks", made).await;
    let note = bench.get("/find?text=quernst").await;
    assert!(found(&note).is_empty() || found(&note) == ["note"], "{note}");

    // One hit is opened, one that was guessed is offered.
    let opened = bench.page("/scan?code=job%201").await;
    assert_eq!((opened.status, opened.location.as_str()), (StatusCode::SEE_OTHER, "/bench/1"));
    let offered = bench.page("/scan?code=farrwoby").await;
    assert_eq!(offered.status, StatusCode::OK);
    assert!(offered.text.contains("Did you mean “farrowby”?") && offered.text.contains("Odell Farrowby"));
    let empty = bench.page("/scan").await;
    assert!(empty.status == StatusCode::OK && empty.text.contains("autofocus"), "{}", empty.status);
    assert!(bench.page("/glue").await.text.contains("data-key=\"/\""), "on every page by one key");
    assert_eq!(bench.page("/scan?code=xyzzyplugh").await.status, StatusCode::NOT_FOUND);
}
