//! Goal: an empty shop is led to its first club on Today, one step after the other, and the guide goes by itself.
//! Method: the page after each step that the guide asks for.

use crate::support::truth::{DRY, Truth};
use crate::support::{Bench, job_of, models, proposed, reading, sheet, stock};
use axum::http::StatusCode;
use serde_json::json;

/// Where the guide's one button leads.
async fn next(bench: &Bench) -> Option<String> {
    let page = bench.page("/").await;
    assert_eq!(page.status, StatusCode::OK);
    let guide = page.text.split_once("To the first club").or_else(|| page.text.split_once("Begin here"))?.1;
    let button = guide.split("<a ").find(|link| link.contains("primary")).expect("a next step");
    Some(button.split("href=\"").nth(1)?.split('"').next()?.to_owned())
}

#[tokio::test]
async fn the_guide_leads_to_the_first_reading_and_is_gone() {
    let bench = Bench::open().await;
    assert_eq!(next(&bench).await.as_deref(), Some("/begin"));
    bench.made("/models/import", models()).await;
    // What the builder knows of his shop is asked before anything is weighed; it may be skipped.
    assert_eq!(next(&bench).await.as_deref(), Some("/learned#told"));
    let asked = bench.page("/learned").await.text;
    assert!(asked.contains("A joint puts on") && asked.contains("Skip"), "{asked}");
    assert_eq!(bench.form("/learned/skip", &[]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(next(&bench).await.as_deref(), Some("/stock/new"));
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", stock()).await;
    assert_eq!((status, &kept["bad"]), (StatusCode::OK, &json!([])));
    assert_eq!(next(&bench).await.as_deref(), Some("/sheets/new"));
    let mut shop = bench.get("/shop").await;
    shop["adhesive"] = json!("BASALT");
    shop["tape"] = json!("TAPE");
    assert_eq!(bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await.0, StatusCode::OK);

    let sheet = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    assert_eq!(job_of(&bench, sheet).await, 1);
    assert_eq!(next(&bench).await.as_deref(), Some("/plan/1"));
    let accept = proposed(&bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    assert_eq!(next(&bench).await.as_deref(), Some("/bench/1"));
    for address in ["/stock/models/new", "/stock/new", "/sheets/new", "/plan/1", "/bench/1"] {
        assert!(matches!(bench.page(address).await.status, StatusCode::OK | StatusCode::SEE_OTHER), "{address}");
    }

    let view = bench.get("/jobs/1").await;
    let truth = Truth::of(&view["job"]["clubs"][0]["plan"]);
    let entry = json!([{ "what": "swing_weight", "value": truth.points(&DRY) }]);
    bench.made("/jobs/1/readings", reading(1, "dry", entry)).await;
    assert_eq!(next(&bench).await, None);
}
