//! Goal: prices are kept to the coin, a quote begins from them and is changed by hand, and the bill says it with what was
//! built. Method: the API and the pages.

use crate::support::{Bench, planned, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn a_quote_begins_from_the_list_and_the_bill_says_it() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let sheet = bench.get("/sheets").await[0]["id"].as_str().expect("an id").to_owned();
    let bad = bench
        .form(
            "/prices",
            &[("currency", "EUR"), ("decimals", "2"), ("work", "Build; 25.005; club; usual"), ("part-MARL", "12,95")],
        )
        .await;
    assert_eq!(bad.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(bad.text.contains("at most 2 digits behind the point") && bad.text.contains("12,95"), "{}", bad.text);
    let work = "Build; 25.00; club; usual\nExpress; 10; job\n";
    let kept = bench
        .form(
            "/prices",
            &[
                ("currency", "EUR"),
                ("decimals", "2"),
                ("tax_text", "Tax included"),
                ("work", work),
                ("part-MARL", "12,95"),
            ],
        )
        .await;
    assert_eq!(kept.location, "/prices");
    let prices = bench.get("/prices").await;
    assert_eq!(prices["parts"], json!([{ "model": "MARL", "each_minor": 1295 }]));
    assert_eq!(prices["work"][1], json!({ "name": "Express", "per": "job", "each_minor": 1000, "usual": false }));
    assert!(bench.page("/prices").await.text.contains("Build; 25.00; club; usual"));

    // Eight clubs: eight grips and eight times the work.
    let quote = bench.get(&format!("/sheets/{sheet}/quote")).await;
    assert_eq!((quote["lines"].clone(), quote["proposed"][0]["count"].as_i64()), (json!([]), Some(8)));
    assert_eq!(quote["proposed"][1], json!({ "what": "Build", "count": 8, "each_minor": 2500 }));
    let page = bench.page(&format!("/sheets/{sheet}/quote")).await;
    assert!(page.text.contains("8; Build; 25.00"), "{}", page.text);
    let lines = "8; Grip; 12.95\n8; Build; 25\n1; For a friend; -20.00\n";
    let saved = bench.form(&format!("/sheets/{sheet}/quote"), &[("lines", lines)]).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER);
    for wrong in ["eight; Grip; 12.95", "0; Grip; 12.95", "8; Grip", "8; ; 1", "8; Grip; 1.999"] {
        let refused = bench.form(&format!("/sheets/{sheet}/quote"), &[("lines", wrong)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
        assert!(refused.text.contains(wrong), "what was typed stays: {wrong}");
    }

    // By hand: 8 × 12.95 + 8 × 25.00 − 20.00 = 283.60.
    let bill = bench.get("/jobs/1/bill").await;
    assert_eq!((bill["total_minor"].as_i64(), bill["tax_text"].as_str()), (Some(28_360), Some("Tax included")));
    assert_eq!(bill["record"]["clubs"].as_array().map(Vec::len), Some(8));
    let page = bench.page("/records/1/bill").await;
    for words in ["Bill for job 1", "283.60 EUR", "−20.00", "Tax included", "What was built", "4-iron"] {
        assert!(page.text.contains(words), "{words}: {}", page.text);
    }
    // A new price changes no quote that was made.
    let mut dearer = prices.clone();
    dearer["parts"][0]["each_minor"] = json!(9999);
    bench.send("PUT", "/prices", "application/json", dearer.to_string().into_bytes()).await;
    assert_eq!(bench.get("/jobs/1/bill").await["total_minor"], 28_360);
    let twice = json!({ "model": "marl", "each_minor": 1 });
    dearer["parts"].as_array_mut().expect("parts").push(twice);
    let (status, refused) = bench.send("PUT", "/prices", "application/json", dearer.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{refused}");
    let (_, unknown): (_, Value) = bench.send("GET", "/sheets/none/quote", "", vec![]).await;
    assert!(unknown["detail"].to_string().contains("no sheet"), "{unknown}");
}

/// A sheet that is only matched, and never saved, is held to the same limits as one that is.
#[tokio::test]
async fn an_impossible_quote_is_refused_wherever_a_sheet_comes_in() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let mut asked = sheet(&bench, "Odell", "7, D2, 1 wrap").await;
    bench.made("/match/set", json!({ "sheet": asked, "seconds": 0.1 })).await;
    asked["quote"] = json!([{ "what": "Build", "count": 1, "each_minor": -9_000_000_000_000_i64 }]);
    for (address, body) in [("/sheets", asked.clone()), ("/match/set", json!({ "sheet": asked, "seconds": 0.1 }))] {
        let problem = bench.refused("POST", address, StatusCode::UNPROCESSABLE_ENTITY, body.to_string()).await;
        assert_eq!(problem["code"], "price_fault.range", "{address}: {problem}");
    }
}
