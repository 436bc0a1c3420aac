//! Goal: a builder's own units on every page, and a bench that goes on by one key.
//! Method: the pages as two people see them; the forms as their browsers send them; what was kept, from the API.

use crate::support::answer::Answer;
use crate::support::truth::{DRY, Truth};
use crate::support::{Bench, planned, reading};
use app::{App, SystemClock};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::{Value, json};
use std::sync::Arc;
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
    assert!(page.contains("class=\"unit\" aria-hidden=\"true\">mm<"), "the field says which unit it takes");
}

#[tokio::test]
async fn enter_with_nothing_typed_goes_on_once_all_is_read() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let plan = bench.get("/jobs/1").await["job"]["clubs"][0]["plan"].clone();
    let points = Truth::of(&plan).points(&DRY);
    let empty = [("step", "dry"), ("version", ""), ("request_key", "a"), ("read-swing_weight", " ")];
    let early = bench.form("/bench/1/1", &empty).await;
    assert!(early.status.is_client_error() && early.text.contains("othing was entered"), "{}", early.status);
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": points }]))).await;
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
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": points }]))).await;
    let page = bench.page("/bench/1/grid/dry?what=swing_weight&kept=1").await.text;
    let id =
        page.split("name=\"reading\" value=\"").nth(1).and_then(|t| t.split('"').next()).expect("the last reading");
    let form = [("reading", id), ("step", "dry"), ("grid", "swing_weight")];
    let back = bench.form("/bench/1/1/take-back", &form).await;
    assert_eq!(back.location, "/bench/1/grid/dry?what=swing_weight&at=1");
    assert!(kept(&bench, 1).await.is_empty());
    // The cursor is on the club that was taken back, and nothing is offered to be taken back twice.
    let page = bench.page("/bench/1/grid/dry?what=swing_weight&at=1").await.text;
    assert!(page.contains("name=\"slot\" value=\"1\"") && !page.contains("that was wrong"));
}

#[tokio::test]
async fn the_next_cup_is_of_the_last_tins_unless_another_lot_is_entered() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let page = bench.page("/glue/new?job=1").await.text;
    assert!(page.contains("name=\"last_lot\" value=\"\""), "no cup yet");
    let cup = |slot: &'static str, lot: &'static str, last: &'static str| {
        // Nothing was read of these clubs, so that gluing them takes a reason.
        let reason = ("reason", "dry fit looked at");
        [
            ("job", "1"),
            ("slot", slot),
            ("adhesive", "BASALT"),
            ("lot", lot),
            ("last_lot", last),
            ("room_c", "21"),
            reason,
        ]
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

/// One meaning for each word: what the glue page mixes is what the calculation says, through the API both.
#[tokio::test]
async fn the_mix_of_the_bench_is_that_of_the_calculation() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let model = bench.get("/models/BASALT").await;
    let sheet = |points: &Value| -> Value {
        let point =
            |p: &Value| json!({ "temperature_c": p["at_c"], "time_min": p["hours"].as_f64().expect("hours") * 60.0 });
        points.as_array().expect("points").iter().map(point).collect()
    };
    for (joints, percent, room_c) in [(8, 10.0, 20.0), (1, 0.0, 23.0), (60, 2.0, 26.0)] {
        let mixed = bench
            .get(&format!("/glue/mix?joints={joints}&adhesive=BASALT&bead_share_percent={percent}&room_c={room_c}"))
            .await;
        let document = json!({
            "batch": {
                "joints": joints, "adhesive_a_joint_g": model["joint_mass_g"], "bead_share_percent": percent, "ratio": "by_mass",
                "resin_parts": model["resin_per_hardener_by_mass"], "hardener_parts": 1.0,
                "resin_density_g_ml": model["resin_density_g_per_ml"], "hardener_density_g_ml": model["hardener_density_g_per_ml"]
            },
            "cure": {
                "temperature_c": room_c, "pot_life_mass_g": model["pot_life_mass_g"],
                "pot_life": [{ "temperature_c": model["pot_life_at_c"], "time_min": model["pot_life_min"] }],
                "handling": sheet(&model["handling"]), "full_cure": sheet(&model["full_cure"])
            }
        });
        let said = bench.made("/calc/glue", document).await;
        let close =
            |a: f64, b: &Value| assert!((a / b.as_f64().expect("a number") - 1.0).abs() < 1e-12 || a == 0.0, "{a} {b}");
        let figure = |name: &str| mixed[name].as_f64().expect("a number");
        for name in ["mix_g", "resin_g", "hardener_g", "beads_g", "resin_ml", "hardener_ml"] {
            close(figure(name), &said["batch"][name]);
        }
        close(figure("pot_life_min"), &said["cure"]["pot_life_min"]);
        close(figure("handling_h") * 60.0, &said["cure"]["handling_min"]);
        close(figure("full_cure_h") * 60.0, &said["cure"]["full_cure_min"]);
    }
    let many = bench.get("/glue/mix?joints=60&adhesive=BASALT&bead_share_percent=0&room_c=23").await;
    assert_eq!(many["warnings"][0]["code"], "mix.several_cups", "{many}");
}

/// In a room that is too cold for the sheet the clock does not start until somebody says why it cures all the same; the
/// reason is kept with the batch and in the record.
#[tokio::test]
async fn a_cold_room_starts_no_clock_without_a_reason() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let mixed = bench.get("/glue/mix?joints=8&adhesive=BASALT&room_c=6").await;
    assert_eq!(mixed["warnings"][0]["code"], "mix.colder_than_sheet", "{mixed}");
    let batch = |reason: Value| json!({ "job": 1, "slots": [1], "adhesive": "BASALT", "lot": "K-1", "room_c": 6.0, "by": "Ada", "cold_reason": reason });
    let (status, problem) = bench.post("/batches", batch(Value::Null)).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{problem}");
    assert!(
        problem["detail"]
            .as_str()
            .is_some_and(|d| d.contains("never cure fully") && d.contains("Warm the room to 18 °C")),
        "{problem}"
    );
    assert_eq!(bench.get("/batches").await, json!([]), "no clock runs");
    // On the page the refusal comes back with the field for the reason, and what was typed.
    let cold = [("job", "1"), ("slot", "1"), ("adhesive", "BASALT"), ("lot", "K-1"), ("room_c", "6")];
    let page = bench.form("/glue/new", &cold).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.text.contains("name=\"cold_reason\"") && page.text.contains("never cure fully"), "{}", page.text);
    assert!(!bench.page("/glue/new?job=1").await.text.contains("cold_reason"), "nothing to ask at 20 °C");
    let mut first = batch(json!(" the maker says 60 h at 5 °C "));
    first["reason"] = "glued before its dry reading, for this test".into();
    let kept = bench.made("/batches", first).await;
    assert_eq!(kept["batch"]["cold_reason"], "the maker says 60 h at 5 °C");
    assert_eq!(kept["warnings"][0]["code"], "mix.colder_than_sheet", "{kept}");
    assert!(bench.page("/glue").await.text.contains("Started in the cold: the maker says 60 h at 5 °C."));
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["batches"][0]["cold_reason"], "the maker says 60 h at 5 °C", "{record}");
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
    ::demo::load(&app).await.expect("the invented shop");
    let router = web::router(app, web::ServerNames::default());
    let (_, today) = sent(&router, "/").await;
    // Style and scripts: all of them, as if no page had been seen before.
    let folder = today.split("/assets/").nth(1).and_then(|t| t.split('/').next()).expect("a tag").to_owned();
    let mut carried = 0;
    for file in std::fs::read_dir("../look/assets").expect("the assets") {
        let file = file.expect("a file");
        // The letters of the player's sheet are asked for by that page alone.
        if file.path().is_dir() {
            continue;
        }
        let name = file.file_name().into_string().expect("a plain name");
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
        "/calc/swing-weight",
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
            page.split("It will finish at ").nth(1).expect("the beam in words").split_whitespace().next().expect("D");
        let points = quantity::parse_swing_weight(said).expect("a swing weight").points();
        (points, page)
    };
    let before = bench.get("/jobs/1").await;
    let (own, page) = finish("/bench/1/1?step=dry").await;
    let plan = &before["job"]["clubs"][0]["plan"];
    let tried =
        page.split("name=\"head_g\"").nth(1).and_then(|t| t.split("value=\"").nth(1)).and_then(|t| t.split('"').next());
    let head_g: f64 = tried.expect("the slider stands at the planned head").parse().expect("grams");
    // 4 g more in the head, by the swing weight of the two clubs as they are weighed out by hand.
    let (truth, mut heavier) = (Truth::of(plan), Truth::of(plan));
    heavier.pieces.iter_mut().find(|p| p.0 == "head").expect("a head").1 += 4.0;
    let by_hand = heavier.points(&DRY) - truth.points(&DRY);
    let (moved, page) = finish(&format!("/bench/1/1?step=dry&head_g={}", head_g + 4.0)).await;
    assert!((moved - own - by_hand).abs() < 0.11, "{own} to {moved}, by hand {by_hand} more");
    assert!(page.contains("As planned"));
    assert_eq!(bench.get("/jobs/1").await, before);
    // A tablet with a decimal comma has it beside the slider, and its scripts know it for what a scale shows.
    let address = format!("/bench/1/1?step=dry&head_g={:.1}", head_g + 4.3);
    let comma = with_cookie(&bench, "decimal=comma", &address, None).await.text;
    let figure = format!("{:.1} g</output>", head_g + 4.3).replace('.', ",");
    assert!(comma.contains(&figure) && comma.contains("data-decimal=\"comma\""), "{figure}");
    assert!(!page.contains("data-decimal"));
}

#[tokio::test]
async fn a_sentence_confirms_what_was_done_and_says_it_once() {
    let bench = Bench::open().await;
    crate::support::stocked(&bench).await;
    let set = crate::support::sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set).await;
    let address = format!("/sheets/{}/approve", saved["id"].as_str().expect("an id"));
    let done = with_cookie(&bench, "", &address, Some("")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let cookie =
        done.cookies.iter().find_map(|c| c.split(';').next().filter(|c| c.starts_with("done="))).expect("a cookie");
    let next = done.location.as_str();
    let page = with_cookie(&bench, cookie, next, None).await;
    assert!(page.text.contains("Approved: the sheet is a job now."), "{}", page.text);
    // The page forgets it, and the next one says nothing.
    assert!(page.cookies.iter().any(|c| c.starts_with("done=;") && c.contains("Max-Age=0")), "{:?}", page.cookies);
    assert!(!with_cookie(&bench, "", next, None).await.text.contains("Approved: the sheet"));
    // A name that is none says nothing either.
    let other = with_cookie(&bench, "done=shop-title", next, None).await;
    assert_eq!(other.status, StatusCode::OK);
    assert!(!other.text.contains("class=\"notice"), "{}", other.text);
}

/// An entry that waited for the network and the version that its page showed.
#[tokio::test]
async fn a_late_entry_takes_no_unseen_readings_place() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let shown = version(&bench, 1).await;
    let at = bench.get("/jobs/1").await["job"]["made_at"].clone();
    let entry = |typed: &str, key: &str, seen: Value| {
        json!({
            "slot": 1, "step": "dry", "by": "Ada", "version": shown, "at": at, "request_key": key, "seen": seen,
            "entries": [{ "what": "swing_weight", "typed": typed }]
        })
    };
    // Two of the same tablet, one after the other: the second corrects the first.
    bench.made("/jobs/1/readings", entry("E0.1", "first", json!([]))).await;
    bench.made("/jobs/1/readings", entry("E0.2", "second", json!(["first"]))).await;
    // Another tablet's, which had seen neither: refused with both values.
    let (status, problem) = bench.post("/jobs/1/readings", entry("E0.9", "third", json!([]))).await;
    assert_eq!(status, StatusCode::CONFLICT, "{problem}");
    let said = problem["detail"].as_str().expect("words");
    assert!(said.contains("E0.2") && said.contains("E0.9") && said.contains("Ada"), "{said}");
    // The same figure is the same reading; and another quantity takes nobody's place.
    bench.made("/jobs/1/readings", entry("E0.2", "fourth", json!([]))).await;
    let mut other = entry("", "fifth", json!([]));
    (other["step"], other["entries"]) = (json!("received"), json!([{ "what": "loft", "typed": "21.0" }]));
    bench.made("/jobs/1/readings", other.clone()).await;
    // At once and with an old version: looked at first, as before.
    let now = other.as_object_mut().expect("an object");
    now.remove("at");
    now.insert("request_key".into(), json!("sixth"));
    now.insert("entries".into(), json!([{ "what": "lie", "typed": "61.0" }]));
    let (status, problem) = bench.post("/jobs/1/readings", other).await;
    assert_eq!(status, StatusCode::CONFLICT, "{problem}");
}
