//! Goal: the ledger has everything that was written of a job, says the same by API, file and page, and its seal holds. Method: the
//! invented shop's finished set.

use crate::demo_past::{demo, list};
use axum::http::StatusCode;
use serde_json::Value;

#[tokio::test]
async fn the_ledger_has_every_reading_with_forecast_and_difference() {
    let bench = demo().await;
    let (ledger, record) = (bench.get("/jobs/3/ledger").await, bench.get("/jobs/3/record").await);
    assert_eq!(ledger["record"], record);
    let entries = list(&ledger, "entries");
    let places: Vec<i64> = entries.iter().filter_map(|entry| entry["entry"].as_i64()).collect();
    assert_eq!(places, (1..=entries.len() as i64).collect::<Vec<_>>(), "in the order of the chain, none left out");
    let mut readings = 0;
    for club in list(&record, "clubs") {
        for one in list(club, "readings") {
            let reading = &one["reading"];
            let is_it = |entry: &&Value| {
                entry["slot"] == club["slot"]
                    && entry["reading"]["what"] == reading["what"]
                    && entry["reading"]["value"] == reading["value"]
                    && entry["reading"]["typed"] == reading["typed"]
                    && entry["at"] == reading["at"]
                    && entry["by"] == reading["by"]
                    && entry["reading"]["stands"] == one["stands"]
            };
            let entry = entries.iter().find(is_it).unwrap_or_else(|| panic!("no entry for {reading}"));
            if let Some(forecast) = reading["forecast"]["value"].as_f64() {
                let difference = entry["reading"]["difference"].as_f64().expect("a difference");
                assert!((reading["value"].as_f64().expect("a value") - forecast - difference).abs() < 1e-9);
            }
            readings += 1;
        }
    }
    let of = |kind: &str| entries.iter().filter(|entry| entry["kind"] == kind).count();
    assert_eq!((of("reading"), of("finished_club"), of("job_club")), (readings, 8, 8));
    assert_eq!(of("batch_club"), 8);
    assert_eq!(list(&ledger, "clocks").len(), list(&record, "batches").len());
    assert!(list(&ledger, "clocks").iter().all(|clock| clock["cured_from"].is_string()), "{}", ledger["clocks"]);
    // The same as a file: one row each.
    let file = bench.page("/api/v1/jobs/3/ledger/entries").await.text;
    assert!(file.starts_with("entry,kind,at,by,card,step,what,unit,value,"), "{file}");
    assert_eq!(file.lines().count(), 1 + entries.len());
}

#[tokio::test]
async fn the_seal_of_every_job_holds_and_the_page_prints_its_end() {
    let bench = demo().await;
    let all = bench.get("/seals").await;
    let all = all.as_array().expect("a list");
    assert!(all.len() >= 3 && all.iter().all(|one| one["intact"] == true && one["late_entries"] == 0), "{all:?}");
    let seal = bench.get("/jobs/3/seal").await;
    let end = seal["end_sha256"].as_str().expect("an end");
    let page = bench.page("/records/3/ledger").await.text;
    for part in
        [&end[..8], &end[8..16], "entries are as they were sealed", "plan accepted", "handling from", "expected"]
    {
        assert!(page.contains(part), "{part}");
    }
    assert!(bench.page("/records/3").await.text.contains("/records/3/ledger"));
    // The printed end, typed as it is printed.
    let typed = format!("{}%20{}", end[..8].to_uppercase(), &end[8..20]);
    let printed = bench.get(&format!("/jobs/3/seal?end={typed}")).await;
    assert_eq!((&printed["intact"], &printed["printed_entry"]), (&Value::from(true), &seal["entries"]));
    let other = bench.get("/jobs/3/seal?end=0123456789abcdef").await;
    assert_eq!((&other["intact"], &other["faults"][0]["fault"]), (&Value::from(false), &Value::from("other_end")));
}

#[tokio::test]
async fn what_is_no_end_and_no_job_is_refused() {
    let bench = demo().await;
    for (address, status) in [
        ("/api/v1/jobs/3/seal?end=0123", StatusCode::UNPROCESSABLE_ENTITY),
        ("/api/v1/jobs/3/seal?end=no%20digits%20of%20a%20seal", StatusCode::UNPROCESSABLE_ENTITY),
        ("/api/v1/jobs/3/seal?start=1", StatusCode::BAD_REQUEST),
        ("/api/v1/jobs/999/seal", StatusCode::NOT_FOUND),
        ("/api/v1/jobs/999/ledger", StatusCode::NOT_FOUND),
        ("/api/v1/jobs/999/ledger/entries", StatusCode::NOT_FOUND),
        ("/records/999/ledger", StatusCode::NOT_FOUND),
        ("/records/x/ledger", StatusCode::BAD_REQUEST),
    ] {
        assert_eq!(bench.page(address).await.status, status, "{address}");
    }
}
