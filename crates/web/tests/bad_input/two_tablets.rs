//! Two tablets that save the same thing: the second is told, overwrites nothing, and keeps what was typed.

use crate::support::answer::{Answer, detail};
use crate::support::{Bench, planned, reading, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

const CONFLICT: StatusCode = StatusCode::CONFLICT;

/// The value of a hidden field of a page.
fn hidden(page: &Answer, name: &str) -> String {
    let mark = format!("name=\"{name}\" value=\"");
    let rest = page.text.split(mark.as_str()).nth(1).unwrap_or_else(|| panic!("no field {name}: {}", page.text));
    rest.split('"').next().unwrap_or_default().to_owned()
}

async fn swing_weights(bench: &Bench) -> Vec<Value> {
    let record = bench.get("/jobs/1/record").await;
    let readings = record["clubs"][0]["readings"].as_array().expect("readings");
    readings.iter().map(|r| r["reading"]["typed"].clone()).collect()
}

#[tokio::test]
async fn a_club_that_was_read_on_another_tablet_is_not_read_over() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let seen = bench.get("/jobs/1").await["clubs"][0]["version"].clone();
    let entry = |typed: &str| {
        let mut entry = reading(1, "dry", json!([{ "what": "swing_weight", "typed": typed }]));
        entry["version"] = seen.clone();
        entry
    };
    bench.made("/jobs/1/readings", entry("D9.7")).await;
    let before = bench.picture().await;
    let problem = bench.refused("POST", "/jobs/1/readings", CONFLICT, entry("D9.1").to_string()).await;
    assert!(detail(&problem).contains("was read as D9.7 on another screen"), "{problem}");
    assert!(
        detail(&problem).contains("D9.1 was typed") && detail(&problem).contains("Nothing was overwritten"),
        "{problem}"
    );
    let swap = json!({ "kind": "tip_weight", "code": "", "by": "Ada", "version": seen });
    bench.refused("POST", "/jobs/1/clubs/1/parts", CONFLICT, swap.to_string()).await;
    assert_eq!(bench.picture().await, before);
    // Another club of the same job is free to be read.
    let mut other = reading(2, "dry", json!([{ "what": "swing_weight", "typed": "D9.7" }]));
    other["version"] = bench.get("/jobs/1").await["clubs"][1]["version"].clone();
    bench.made("/jobs/1/readings", other).await;
}

#[tokio::test]
async fn the_bench_page_keeps_what_the_second_tablet_typed() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let page = bench.page("/bench/1/1?step=dry").await;
    let version = hidden(&page, "version");
    let send = |typed: &'static str, key: &'static str| {
        let version = version.clone();
        let bench = &bench;
        async move {
            let fields =
                [("step", "dry"), ("version", version.as_str()), ("request_key", key), ("read-swing_weight", typed)];
            bench.form("/bench/1/1", &fields).await
        }
    };
    let first = send("D9.7", "tablet-1").await;
    assert_eq!((first.status, first.location.as_str()), (StatusCode::SEE_OTHER, "/bench/1/1?step=dry&kept=1"));
    let second = send("D9.1", "tablet-2").await;
    second.says(CONFLICT, &["was read as D9.7 on another screen", "value=\"D9.1\""]);
    assert_ne!(hidden(&second, "version"), version, "sent again, it is the second tablet's own reading");
    assert_eq!(swing_weights(&bench).await, ["D9.7"]);
    // Enter pressed twice on the first tablet is one reading.
    assert_eq!(send("D9.7", "tablet-1").await.status, StatusCode::SEE_OTHER);
    assert_eq!(swing_weights(&bench).await, ["D9.7"]);
}

#[tokio::test]
async fn the_grid_keeps_it_as_well() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let version = hidden(&bench.page("/bench/1/grid/dry?at=1").await, "version");
    let fields = |typed: &'static str, key: &'static str| {
        [
            ("slot", "1".to_owned()),
            ("what", "swing_weight".to_owned()),
            ("typed", typed.to_owned()),
            ("request_key", key.to_owned()),
            ("version", version.clone()),
        ]
    };
    let send = async |typed: &'static str, key: &'static str| {
        let fields = fields(typed, key);
        let fields: Vec<(&str, &str)> = fields.iter().map(|(k, v)| (*k, v.as_str())).collect();
        bench.form("/bench/1/grid/dry", &fields).await
    };
    assert_eq!(send("D9.7", "g-1").await.status, StatusCode::SEE_OTHER);
    send("D9.1", "g-2").await.says(CONFLICT, &["was read as D9.7 on another screen", "value=\"D9.1\""]);
    assert_eq!(swing_weights(&bench).await, ["D9.7"]);
}

#[tokio::test]
async fn an_entry_that_cannot_be_read_stays_in_its_field() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let fields = [("step", "dry"), ("request_key", "k"), ("read-swing_weight", "D3 and a <bit>")];
    let page = bench.form("/bench/1/1", &fields).await;
    let unreadable = StatusCode::UNPROCESSABLE_ENTITY;
    page.says(unreadable, &["value=\"D3 and a &lt;bit&gt;\"", "at character", "Write for example D3.5"]);
    assert!(swing_weights(&bench).await.is_empty());
    // Of several entries all stay, and none is kept.
    let fields = [
        ("step", "finish"),
        ("request_key", "k2"),
        ("read-swing_weight", "D2"),
        ("read-total_mass", "5 kg"),
        ("read-finished_length", "38 1/2"),
    ];
    bench
        .made(
            "/jobs/1/let-pass",
            json!({ "slot": 1, "step": "finish", "reason": "only the form is tried", "by": "Ada" }),
        )
        .await;
    let page = bench.form("/bench/1/1", &fields).await;
    page.says(unreadable, &["value=\"D2\"", "value=\"5 kg\"", "value=\"38 1/2\""]);
    assert!(swing_weights(&bench).await.is_empty());
}

#[tokio::test]
async fn a_part_and_a_sheet_are_not_overwritten_either() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let part = hidden(&bench.page("/stock/parts/H70").await, "version");
    let change =
        |place: &'static str| [("mass", "265.2"), ("place", place), ("state", "free"), ("version", part.as_str())];
    assert_eq!(bench.form("/stock/parts/H70", &change("shelf A")).await.status, StatusCode::SEE_OTHER);
    bench
        .form("/stock/parts/H70", &change("shelf B"))
        .await
        .says(CONFLICT, &["changed on another screen", "value=\"shelf B\""]);
    assert_eq!(bench.get("/parts/H70").await["place"], "shelf A");
    let by_program = json!({ "version": 0, "place": "shelf C", "by": "Ada" });
    let problem = bench.refused("PATCH", "/parts/H70", CONFLICT, by_program.to_string()).await;
    assert_eq!(problem["type"], "urn:setwright:problem:stale");

    let set = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set.clone()).await;
    let id = saved["id"].as_str().expect("an id");
    let version = hidden(&bench.page(&format!("/sheets/{id}")).await, "version");
    let head = |player: &'static str| {
        [("player", player), ("due", "2026-03-20"), ("hand", "right"), ("version", version.as_str())]
    };
    let address = format!("/sheets/{id}");
    assert_eq!(bench.form(&address, &head("First Name")).await.status, StatusCode::SEE_OTHER);
    bench
        .form(&address, &head("Second Name"))
        .await
        .says(CONFLICT, &["changed on another screen", "value=\"Second Name\""]);
    let body = json!({ "version": saved["version"], "sheet": set });
    let problem = bench.refused("PUT", &format!("/sheets/{id}"), CONFLICT, body.to_string()).await;
    assert_eq!(problem["type"], "urn:setwright:problem:stale");
    assert_eq!(bench.get(&format!("/sheets/{id}")).await["sheet"]["player"], "First Name");
}

#[tokio::test]
async fn a_sheet_is_approved_once_and_stays_as_it_was() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let set = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set.clone()).await;
    let path = format!("/sheets/{}", saved["id"].as_str().expect("an id"));
    let by = json!({ "by": "Ada" }).to_string();
    let approve = format!("/api/v1{path}/approve");
    let (a, b) = tokio::join!(
        bench.ask("POST", &approve, "application/json", by.clone()),
        bench.ask("POST", &approve, "application/json", by.clone())
    );
    let mut statuses = [a.status, b.status];
    statuses.sort();
    assert_eq!(statuses, [StatusCode::CREATED, CONFLICT], "{} {}", a.text, b.text);
    assert_eq!(bench.get("/jobs").await.as_array().map(Vec::len), Some(1));
    let body = json!({ "version": bench.get(&path).await["version"], "sheet": set });
    let problem = bench.refused("PUT", &path, CONFLICT, body.to_string()).await;
    assert!(detail(&problem).contains("approved"), "{problem}");
}
