//! Goal: a builder's own units on every page, and a bench that goes on by one key.
//! Method: the pages as two people see them; the forms as their browsers send them; what was kept, from the API.

mod support;

use app::{App, SystemClock};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::{Value, json};
use std::sync::Arc;
use support::answer::Answer;
use support::truth::{DRY, Truth};
use support::{Bench, planned, reading};
use tower::ServiceExt;

/// A page, or a form where there is a body, with cookies.
async fn with_cookie(bench: &Bench, cookie: &str, address: &str, form: Option<&str>) -> Answer {
    let request = Request::builder()
        .method(if form.is_some() { "POST" } else { "GET" })
        .uri(address)
        .header(header::COOKIE, cookie)
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(form.map_or_else(Body::empty, |f| Body::from(f.to_owned())))
        .expect("a request");
    Answer::of(bench.router.clone().oneshot(request).await.expect("an answer")).await
}

/// The readings of a club that stand: as typed, and in the unit of the store.
async fn kept(bench: &Bench, slot: usize) -> Vec<(String, f64)> {
    let record = bench.get("/jobs/1/record").await;
    let readings = record["clubs"][slot - 1]["readings"].as_array().expect("readings").clone();
    readings
        .iter()
        .filter(|r| r["stands"] == json!(true))
        .map(|r| {
            (
                r["reading"]["typed"].as_str().expect("typed").to_owned(),
                r["reading"]["value"].as_f64().expect("a value"),
            )
        })
        .collect()
}

async fn version(bench: &Bench, slot: usize) -> Value {
    bench.get("/jobs/1").await["clubs"][slot - 1]["version"].clone()
}

#[tokio::test]
async fn a_name_brings_its_units_to_any_tablet() {
    let bench = Bench::open().await;
    let named = bench.form("/shop/who", &[("who", "Ada"), ("units", "mm-oz")]).await;
    assert_eq!(named.status, StatusCode::SEE_OTHER);
    let chosen =
        |answer: &Answer, units: &str| answer.cookies.iter().any(|c| c.starts_with(&format!("units={units};")));
    assert!(chosen(&named, "mm-oz"), "{:?}", named.cookies);
    // On another tablet only the name is entered.
    let elsewhere = bench.form("/shop/who", &[("who", "Ada"), ("units", "")]).await;
    assert!(chosen(&elsewhere, "mm-oz"), "{:?}", elsewhere.cookies);
    // Somebody else begins with inches and grams; what was chosen is the shop's own record.
    let other = bench.form("/shop/who", &[("who", "Bo")]).await;
    assert!(chosen(&other, "in-g"), "{:?}", other.cookies);
    let people = bench.get("/shop").await["people"].clone();
    assert_eq!(people, json!([{ "name": "Ada", "units": "mm-oz" }, { "name": "Bo", "units": "in-g" }]));
    // Units that do not exist are refused by the API with the four that do.
    let mut shop = bench.get("/shop").await;
    shop["people"] = json!([{ "name": "Ada", "units": "furlong" }]);
    let (status, problem) = bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await;
    assert!(status.is_client_error() && problem.to_string().contains("mm-oz"), "{status} {problem}");
}

#[tokio::test]
async fn figures_are_shown_and_read_in_the_persons_units() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let stock = with_cookie(&bench, "units=mm-oz", "/stock", None).await.text;
    // H40 weighs 243.9 g: 8.603 oz of 28.349 52 g (NIST SP 811, appendix B.8).
    assert!(stock.contains("8.603 oz") && !stock.contains("243.9 g"), "no ounces on the page");
    let stock = with_cookie(&bench, "units=in-g", "/stock", None).await.text;
    assert!(stock.contains("243.9 g") && !stock.contains(" oz<"));

    // A finished length typed without a unit: millimetres for one, inches for the other.
    let finish = |slot: usize, version: Value, typed: &str| {
        format!("step=finish&version={version}&request_key=k{slot}&read-finished_length={typed}")
    };
    let reason = json!({ "slot": 1, "step": "finish", "reason": "a test", "by": "Ada" });
    for (slot, cookie, typed, words, mm) in
        [(1, "units=mm-g", "977.9", "977.9 mm", 977.9), (2, "units=in-g", "38", "38", 965.2)]
    {
        let mut reason = reason.clone();
        reason["slot"] = json!(slot);
        bench.made("/jobs/1/let-pass", reason).await;
        let form = finish(slot, version(&bench, slot).await, typed);
        let sent = with_cookie(&bench, cookie, &format!("/bench/1/{slot}"), Some(&form)).await;
        assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
        let (kept_words, kept_mm) = kept(&bench, slot).await.remove(0);
        assert_eq!(kept_words, words);
        assert!((kept_mm - mm).abs() < 1e-9, "{kept_mm}");
    }
    let page = with_cookie(&bench, "units=mm-g", "/bench/1/1?step=finish", None).await.text;
    assert!(page.contains("mm, or 36 3/4 in"), "the field says which unit it takes");
}

#[tokio::test]
async fn enter_with_nothing_typed_goes_on_once_all_is_read() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let plan = bench.get("/jobs/1").await["job"]["clubs"][0]["plan"].clone();
    let points = Truth::of(&plan).points(&DRY);
    let empty = [("step", "dry"), ("version", ""), ("request_key", "a"), ("read-balance", " ")];
    let early = bench.form("/bench/1/1", &empty).await;
    assert!(early.status.is_client_error() && early.text.contains("nothing was entered"), "{}", early.status);
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "balance", "value": points }]))).await;
    let on = bench.form("/bench/1/1", &empty).await;
    assert_eq!(on.status, StatusCode::SEE_OTHER);
    assert_eq!(on.location, "/bench/1/2?step=dry");
    assert_eq!(kept(&bench, 1).await.len(), 1, "nothing was added");
}

#[tokio::test]
async fn the_grid_takes_its_last_reading_back() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let plan = bench.get("/jobs/1").await["job"]["clubs"][0]["plan"].clone();
    let points = Truth::of(&plan).points(&DRY);
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "balance", "value": points }]))).await;
    let page = bench.page("/bench/1/grid/dry?what=balance&kept=1").await.text;
    let id =
        page.split("name=\"reading\" value=\"").nth(1).and_then(|t| t.split('"').next()).expect("the last reading");
    let form = [("reading", id), ("step", "dry"), ("grid", "balance")];
    let back = bench.form("/bench/1/1/take-back", &form).await;
    assert_eq!(back.location, "/bench/1/grid/dry?what=balance&at=1");
    assert!(kept(&bench, 1).await.is_empty());
    // The cursor is on the club that was taken back, and nothing is offered to be taken back twice.
    let page = bench.page("/bench/1/grid/dry?what=balance&at=1").await.text;
    assert!(page.contains("name=\"slot\" value=\"1\"") && !page.contains("that was wrong"));
}

#[tokio::test]
async fn the_next_cup_is_of_the_last_tins_unless_another_lot_is_entered() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let page = bench.page("/glue/new?job=1").await.text;
    assert!(page.contains("name=\"last_lot\" value=\"\""), "no cup yet");
    let cup = |slot: &'static str, lot: &'static str, last: &'static str| {
        [("job", "1"), ("slot", slot), ("adhesive", "BASALT"), ("lot", lot), ("last_lot", last), ("room_c", "21")]
    };
    let none = bench.form("/glue/new", &cup("1", "", "")).await;
    assert!(none.status.is_client_error(), "a cup has its lot: {}", none.status);
    assert_eq!(bench.form("/glue/new", &cup("1", "K-12", "")).await.status, StatusCode::SEE_OTHER);
    let page = bench.page("/glue/new?job=1").await.text;
    assert!(page.contains("name=\"last_lot\" value=\"K-12\"") && page.contains("Enter alone: K-12"));
    assert_eq!(bench.form("/glue/new", &cup("2", "", "K-12")).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.form("/glue/new", &cup("3", "K-13", "K-12")).await.status, StatusCode::SEE_OTHER);
    let batches = bench.get("/batches").await;
    let mut lots: Vec<&str> =
        batches.as_array().expect("batches").iter().map(|b| b["batch"]["lot"].as_str().expect("a lot")).collect();
    lots.sort_unstable();
    assert_eq!(lots, ["K-12", "K-12", "K-13"]);
}

/// Bytes that go over the line for an address, and the body as text where it is one.
async fn sent(router: &axum::Router, address: &str) -> (usize, String) {
    let ask = async |packed: bool| {
        let mut request = Request::builder().uri(address);
        if packed {
            request = request.header(header::ACCEPT_ENCODING, "gzip");
        }
        let answer = router.clone().oneshot(request.body(Body::empty()).expect("a request")).await.expect("an answer");
        assert_eq!(answer.status(), StatusCode::OK, "{address}");
        axum::body::to_bytes(answer.into_body(), 32 << 20).await.expect("a body")
    };
    (ask(true).await.len(), String::from_utf8_lossy(&ask(false).await).into_owned())
}

#[tokio::test]
async fn no_page_weighs_more_than_a_hundred_kilobytes() {
    let folder = tempfile::tempdir().expect("a folder");
    let url = format!("sqlite:{}", folder.path().join("shop.db").display());
    let app = App::open(&url, Arc::new(SystemClock)).await.expect("a shop");
    app.load_demo().await.expect("the invented shop");
    let router = web::router(app, web::ServerNames::default());
    let (_, today) = sent(&router, "/").await;
    // Style and scripts: all of them, as if no page had been seen before.
    let folder = today.split("/assets/").nth(1).and_then(|t| t.split('/').next()).expect("a tag").to_owned();
    let mut carried = 0;
    for file in std::fs::read_dir("assets").expect("the assets") {
        let name = file.expect("a file").file_name().into_string().expect("a plain name");
        carried += sent(&router, &format!("/assets/{folder}/{name}")).await.0;
    }
    assert!(carried > 5_000, "the assets were not found");
    for address in [
        "/",
        "/sheets",
        "/sheets/new",
        "/stock",
        "/stock/new",
        "/stock/import",
        "/stock/models",
        "/plan",
        "/plan/1",
        "/plan/2",
        "/plan/day",
        "/plan/2/options",
        "/plan/1/cards",
        "/bench/1/1?step=dry",
        "/bench/1/grid/dry",
        "/glue",
        "/glue/new?job=1",
        "/records/1",
        "/learned",
        "/capability",
        "/shop",
        "/shop/scales",
        "/labels",
        "/calc",
        "/calc/balance",
        "/calc/pluck",
        "/style",
    ] {
        let (page, _) = sent(&router, address).await;
        assert!(page + carried < 100_000, "{address}: {page} bytes and {carried} of style and scripts");
    }
}

#[tokio::test]
async fn a_mass_that_is_tried_moves_the_beam_and_nothing_else() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let finish = async |address: &str| -> (f64, String) {
        let page = bench.page(address).await.text;
        let said =
            page.split("it will finish at ").nth(1).expect("the beam in words").split_whitespace().next().expect("D");
        let points = quantity::parse_balance(said).expect("a balance").points();
        (points, page)
    };
    let before = bench.get("/jobs/1").await;
    let (own, page) = finish("/bench/1/1?step=dry").await;
    let plan = &before["job"]["clubs"][0]["plan"];
    let tried =
        page.split("name=\"head_g\"").nth(1).and_then(|t| t.split("value=\"").nth(1)).and_then(|t| t.split('"').next());
    let head_g: f64 = tried.expect("the slider stands at the planned head").parse().expect("grams");
    // 4 g more in the head, by the balance of the two clubs as they are weighed out by hand.
    let (truth, mut heavier) = (Truth::of(plan), Truth::of(plan));
    heavier.pieces.iter_mut().find(|p| p.0 == "head").expect("a head").1 += 4.0;
    let by_hand = heavier.points(&DRY) - truth.points(&DRY);
    let (moved, page) = finish(&format!("/bench/1/1?step=dry&head_g={}", head_g + 4.0)).await;
    assert!((moved - own - by_hand).abs() < 0.11, "{own} to {moved}, by hand {by_hand} more");
    assert!(page.contains("As planned"));
    assert_eq!(bench.get("/jobs/1").await, before);
}
