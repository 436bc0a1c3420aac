//! Goal: every list leaves as a file that a spreadsheet opens, with what the shop holds. Method: the invented shop's files, read by
//! a CSV reader and held against the API.

use crate::demo_past::{demo, list};
use crate::support::Bench;
use axum::http::StatusCode;
use serde_json::json;
use std::collections::BTreeMap;

/// The rows of a file by their headings.
async fn rows(bench: &Bench, path: &str) -> Vec<BTreeMap<String, String>> {
    let answer = bench.page(&format!("/api/v1{path}")).await;
    assert_eq!(answer.status, StatusCode::OK, "{path}: {}", answer.text);
    assert_eq!(answer.headers["content-type"], "text/csv; charset=utf-8");
    let disposition = answer.headers["content-disposition"].to_str().expect("a header").to_owned();
    assert!(disposition.starts_with("attachment; filename=\"") && disposition.ends_with(".csv\""), "{disposition}");
    let mut lines = answer.text.split("\r\n").filter(|line| !line.is_empty());
    let heading: Vec<&str> = lines.next().expect("a heading").split(',').collect();
    // Cells of these files with quotes hold no line breaks in the invented shop.
    lines
        .map(|line| {
            let mut cells = Vec::new();
            let (mut cell, mut quoted) = (String::new(), false);
            for letter in line.chars() {
                match letter {
                    '"' => quoted = !quoted,
                    ',' if !quoted => cells.push(std::mem::take(&mut cell)),
                    other => cell.push(other),
                }
            }
            cells.push(cell);
            assert_eq!(cells.len(), heading.len(), "{line}");
            heading.iter().map(|name| (*name).to_owned()).zip(cells).collect()
        })
        .collect()
}

#[tokio::test]
async fn clubs_jobs_and_records_leave_as_they_are_kept() {
    let bench = demo().await;
    let customer = bench.made("/customers", json!({ "name": "Quill Harrow" })).await["number"].clone();
    let club = json!({ "player": "Quill Harrow", "owner": customer, "club_kind": "wedge", "number": "S", "hand": "left",
        "arrival": { "swing_weight_points": 34.0 }, "by": "Ada" });
    bench.made("/clubs", club).await;
    let clubs = rows(&bench, "/clubs/export").await;
    let kept = bench.get("/clubs").await;
    let kept = kept.as_array().expect("clubs");
    assert_eq!(clubs.len(), kept.len());
    for (row, club) in clubs.iter().zip(kept) {
        assert_eq!(row["code"], club["code"].as_str().expect("a code"));
        let figures = club["figures"].as_array().expect("figures");
        let read = figures.iter().find(|figure| figure["what"] == "swing_weight").and_then(|f| f["value"].as_f64());
        assert_eq!(row["read_swing_weight_points"].parse::<f64>().ok(), read, "{row:?}");
    }
    // One customer's are theirs alone.
    let owner = kept.iter().find_map(|club| club["owner"].as_i64()).expect("an owner");
    let theirs = rows(&bench, &format!("/clubs/export?owner={owner}")).await;
    assert!(!theirs.is_empty() && theirs.len() < clubs.len());
    assert!(theirs.iter().all(|row| row["customer"] == owner.to_string()));
    assert!(bench.page(&format!("/customers/{owner}")).await.text.contains(&format!("/clubs/export?owner={owner}")));
    bench.refused("GET", "/clubs/export?owner=9999", StatusCode::NOT_FOUND, "").await;

    let jobs = rows(&bench, "/jobs/export").await;
    let numbers: Vec<i64> = jobs.iter().map(|row| row["job"].parse().expect("a number")).collect();
    assert!(numbers.is_sorted() && numbers.len() > bench.get("/jobs").await.as_array().map_or(0, Vec::len));
    let finished: Vec<&BTreeMap<String, String>> = jobs.iter().filter(|row| row["state"] == "finished").collect();
    assert!(finished.iter().any(|row| !row["finished_at"].is_empty()));

    let records = rows(&bench, "/records/export").await;
    let record = bench.get("/jobs/3/record").await;
    for club in list(&record, "clubs") {
        let number = club["target"]["number"].as_str().expect("a number");
        let row = records.iter().find(|row| row["job"] == "3" && row["number"] == number).expect(number);
        let line = list(club, "lines").iter().find(|line| line["what"] == "swing_weight" && line["within_set"] != true);
        let line = line.expect("the swing weight");
        assert_eq!(row["verdict"], line["verdict"].as_str().expect("a verdict"), "{row:?}");
        let built: f64 = row["built_points"].parse().expect("a figure");
        assert!((built - line["built"].as_f64().expect("a figure")).abs() < 2e-3, "{row:?} {line}");
    }
}

#[tokio::test]
async fn readings_leave_by_day_and_by_job() {
    let bench = demo().await;
    let all = rows(&bench, "/readings/export").await;
    let of_job = rows(&bench, "/readings/export?job=3").await;
    assert!(!of_job.is_empty() && of_job.len() < all.len());
    let kept = bench.get("/jobs/3/record").await;
    let kept: usize = list(&kept, "clubs").iter().map(|club| list(club, "readings").len()).sum();
    assert_eq!(of_job.len(), kept);
    // Each day once: the days together are all.
    let mut days: Vec<&str> = all.iter().map(|row| &row["at"][..10]).collect();
    days.sort_unstable();
    let (first, last) = (days[0], days[days.len() - 1]);
    let until = rows(&bench, &format!("/readings/export?to={first}")).await.len();
    let after: jiff::civil::Date = first.parse().expect("a day");
    let since = rows(&bench, &format!("/readings/export?from={}", after.tomorrow().expect("a day"))).await.len();
    assert_eq!(until + since, all.len());
    assert!(until > 0 && since > 0 && first < last);
    // What cannot be is told, to a program and on the page.
    let refused = bench
        .refused("GET", "/readings/export?from=2026-02-02&to=2026-02-01", StatusCode::UNPROCESSABLE_ENTITY, "")
        .await;
    assert_eq!(refused["code"], "export_fault.backwards");
    bench.refused("GET", "/readings/export?job=9999", StatusCode::NOT_FOUND, "").await;
    bench.refused("GET", "/readings/export?from=soon", StatusCode::BAD_REQUEST, "").await;
    let page = bench.page("/exports/readings?from=2026-02-02&to=2026-02-01").await;
    page.says(StatusCode::UNPROCESSABLE_ENTITY, &["The last day is before the first", "2026-02-02"]);
    let file = bench.page("/exports/readings?from=&to=").await;
    assert_eq!((file.status, file.text.lines().count()), (StatusCode::OK, all.len() + 1));
}

/// A name is what somebody typed: a spreadsheet must not run it.
#[tokio::test]
async fn a_name_that_looks_like_a_formula_is_a_name() {
    let bench = Bench::open().await;
    let club = json!({ "player": "=HYPERLINK(\"http://evil.example\")", "club_kind": "iron", "number": "7", "hand": "right",
        "arrival": { "swing_weight_points": 32.0 }, "by": "Ada" });
    bench.made("/clubs", club).await;
    let rows = rows(&bench, "/clubs/export").await;
    assert!(rows[0]["player"].starts_with("'="), "{:?}", rows[0]);
}
