//! The form of refusals: unknown names, wrong order, wrong addresses, too large, and names that look like HTML.

use crate::support::answer::detail;
use crate::support::{Bench, although, job_of, planned, reading, sheet, stocked};
use axum::http::{Request, StatusCode, header};
use serde_json::{Value, json};
use tower::ServiceExt;

const UNPROCESSABLE: StatusCode = StatusCode::UNPROCESSABLE_ENTITY;
const NOT_FOUND: StatusCode = StatusCode::NOT_FOUND;
const CONFLICT: StatusCode = StatusCode::CONFLICT;

#[tokio::test]
async fn a_field_that_is_not_known_is_refused_by_name_in_every_body() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let shop = bench.get("/shop").await;
    let model = bench.get("/models/MARL").await;
    let set = sheet(&bench, "Somebody Else", "7-8, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set.clone()).await;
    let id = saved["id"].as_str().expect("an id");
    let kept =
        bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": 40.0 }]))).await;
    let of_reading = format!("/jobs/1/readings/{}", kept["readings"][0]["id"].as_str().expect("an id"));
    let short = json!({ "written": "7, D2", "rule": "as_written", "models": { "heads": ["WREN-I"], "shafts": [], "grips": [] } });
    let step = json!([{ "key": "bend", "label": "Bend", "needs": "none" }]);
    // Method, path, a body that is good, and where in it the unknown field goes.
    let bodies: Vec<(&str, String, Value, &str)> = vec![
        ("PUT", "/shop".into(), shop.clone(), ""),
        ("PUT", "/shop".into(), shop.clone(), "/balance_scale"),
        ("PUT", "/shop".into(), shop, "/steps/0"),
        ("POST", "/models".into(), model, ""),
        ("POST", "/models".into(), bench.get("/models/WREN-I").await, "/numbers/0"),
        ("POST", "/parts".into(), json!([{ "code": "N", "kind": "grip", "model": "MARL", "mass_g": 50 }]), "/0"),
        ("PATCH", "/parts/H70".into(), json!({ "version": 1, "by": "Ada" }), ""),
        ("POST", "/sheets".into(), set.clone(), ""),
        ("POST", "/sheets".into(), set.clone(), "/clubs/0"),
        ("POST", "/sheets".into(), set.clone(), "/clubs/0/tolerances"),
        ("POST", "/sheets/check".into(), set.clone(), "/clubs/1/wraps"),
        ("POST", "/sheets/expand".into(), short.clone(), ""),
        ("POST", "/sheets/expand".into(), short, "/models"),
        ("PUT", format!("/sheets/{id}"), json!({ "version": 1, "sheet": set }), ""),
        ("POST", format!("/sheets/{id}/approve"), json!({ "by": "Ada" }), ""),
        ("POST", format!("/sheets/{id}/approve"), json!({ "by": "Ada", "steps": step }), "/steps/0"),
        ("POST", "/jobs/1/plan/propose".into(), json!({}), ""),
        ("POST", "/jobs/1/plan/propose".into(), json!({ "locks": [{ "slot": 1, "code": "H70" }] }), "/locks/0"),
        ("POST", "/jobs/1/plan".into(), json!({ "fingerprint": "x", "by": "Ada" }), ""),
        ("POST", "/jobs/1/clubs/1/parts".into(), json!({ "kind": "grip", "code": "G00", "by": "Ada" }), ""),
        ("POST", "/jobs/1/drop".into(), json!({ "reason": "no longer wanted", "by": "Ada" }), ""),
        ("POST", "/jobs/1/readings".into(), reading(2, "dry", json!([{ "what": "swing_weight", "value": 40.0 }])), ""),
        (
            "POST",
            "/jobs/1/readings".into(),
            reading(2, "dry", json!([{ "what": "swing_weight", "value": 40.0 }])),
            "/entries/0",
        ),
        ("POST", format!("{of_reading}/take-back"), json!({ "by": "Ada" }), ""),
        ("POST", format!("{of_reading}/insist"), json!({ "why": "twice", "by": "Ada" }), ""),
        ("POST", "/jobs/1/let-pass".into(), json!({ "slot": 1, "step": "bend", "reason": "checked", "by": "Ada" }), ""),
        ("POST", "/batches".into(), json!({ "job": 1, "slots": [1], "lot": "B", "by": "Ada" }), ""),
        ("POST", "/calc/swing-weight".into(), json!({ "total_mass_g": 349.8, "balance_point_mm": 824.0 }), ""),
    ];
    let before = bench.picture().await;
    for (method, path, mut body, place) in bodies {
        body.pointer_mut(place).expect("there").as_object_mut().expect("an object").insert("colour".into(), json!(1));
        let problem = bench.refused(method, &path, UNPROCESSABLE, body.to_string()).await;
        assert!(detail(&problem).contains("colour"), "{method} {path} {place}: {problem}");
    }
    let mut listed = bench.get("/models/MARL").await;
    listed["colour"] = json!(1);
    let kept = bench.made("/models/import", json!([listed])).await;
    assert!(kept["bad"][0]["problem"]["words"].as_str().is_some_and(|p| p.contains("colour")), "{kept}");
    for query in ["/parts?colour=1", "/parts/export?colour=1"] {
        let answer = bench.ask("GET", &format!("/api/v1{query}"), "text/plain", "").await;
        assert!(detail(&answer.problem(StatusCode::BAD_REQUEST)).contains("colour"), "{}", answer.text);
    }
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn what_is_not_there_is_named() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.picture().await;
    let entry =
        |slot: usize, step: &str| reading(slot, step, json!([{ "what": "swing_weight", "value": 40.0 }])).to_string();
    let problem = bench.refused("POST", "/jobs/1/readings", NOT_FOUND, entry(1, "polish")).await;
    assert!(detail(&problem).contains("“polish”") && detail(&problem).contains("dry, tip"), "{problem}");
    let problem = bench.refused("POST", "/jobs/1/readings", NOT_FOUND, entry(9, "dry")).await;
    assert!(detail(&problem).contains("places 1 to 8"), "{problem}");
    let problem = bench.refused("POST", "/jobs/77/readings", NOT_FOUND, entry(1, "dry")).await;
    assert!(detail(&problem).contains("“77”"), "{problem}");
    let unknown = reading(1, "dry", json!([{ "what": "shine", "value": 40.0 }])).to_string();
    let problem = bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, unknown).await;
    assert!(detail(&problem).contains("shine") && detail(&problem).contains("finished_length"), "{problem}");
    for (method, path, body) in [
        ("GET", "/jobs/77", ""),
        ("GET", "/jobs/77/record", ""),
        ("POST", "/jobs/77/plan/propose", "{}"),
        ("POST", "/jobs/77/drop", r#"{"reason": "none at all", "by": "Ada"}"#),
        ("GET", "/cards/J1-99", ""),
        ("GET", "/parts/NONE", ""),
        ("PATCH", "/parts/NONE", r#"{"version": 1, "by": "Ada"}"#),
        ("GET", "/models/NONE", ""),
        ("DELETE", "/models/NONE", ""),
        ("GET", "/sheets/0199", ""),
        ("POST", "/sheets/0199/approve", r#"{"by": "Ada"}"#),
        ("POST", "/jobs/1/readings/0199/take-back", r#"{"by": "Ada"}"#),
        ("POST", "/jobs/1/clubs/12/parts", r#"{"kind": "grip", "code": "G00", "by": "Ada"}"#),
        ("POST", "/jobs/1/clubs/1/parts", r#"{"kind": "grip", "code": "NONE", "by": "Ada"}"#),
        ("POST", "/jobs/1/let-pass", r#"{"slot": 1, "step": "polish", "reason": "none at all", "by": "Ada"}"#),
        ("POST", "/batches", r#"{"job": 1, "slots": [9], "lot": "B", "by": "Ada"}"#),
        ("POST", "/batches", r#"{"job": 1, "slots": [1], "lot": "B", "adhesive": "NONE", "by": "Ada"}"#),
    ] {
        let problem = bench.refused(method, path, NOT_FOUND, body).await;
        assert_eq!(problem["type"], "urn:setwright:problem:not_found", "{method} {path}: {problem}");
    }
    for path in [
        "/bench/77",
        "/bench/77/1",
        "/bench/1/9",
        "/plan/77",
        "/records/77",
        "/card/J1-99",
        "/stock/parts/NONE",
        "/stock/models/NONE",
        "/sheets/0199",
        "/nowhere",
        "/assets/0/none.css",
    ] {
        bench.page(path).await.says(NOT_FOUND, &["Today"]);
    }
    assert_eq!(bench.get("/cards/J1-3").await, json!({ "job": 1, "slot": 3 }));
    assert_eq!(bench.page("/card/J1-3").await.location, "/bench/1/3");
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn nothing_is_read_before_a_plan_after_the_finish_or_of_a_dropped_job() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let set = sheet(&bench, "Nobody Inparticular", "7, D2, 1 wrap").await;
    assert_eq!(job_of(&bench, set).await, 1);
    let entry = reading(1, "dry", json!([{ "what": "swing_weight", "value": 40.0 }])).to_string();
    let problem = bench.refused("POST", "/jobs/1/readings", CONFLICT, entry.clone()).await;
    assert!(detail(&problem).contains("job 1 has no plan yet"), "{problem}");
    let batch = json!({ "job": 1, "slots": [1], "lot": "B-1", "by": "Ada" }).to_string();
    bench.refused("POST", "/batches", CONFLICT, batch.clone()).await;
    let swap = json!({ "kind": "grip", "code": "G00", "by": "Ada" }).to_string();
    bench.refused("POST", "/jobs/1/clubs/1/parts", CONFLICT, swap).await;

    let accept = crate::support::proposed(&bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
    bench.made("/batches", json!({ "job": 1, "slots": [1], "lot": "B-1", "by": "Ada", "reason": "as agreed" })).await;
    bench.clock.advance(jiff::SignedDuration::from_hours(72));
    let unread = although(reading(1, "hand_over", json!([{ "what": "done" }])), "the player is waiting");
    bench.made("/jobs/1/readings", unread).await;
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "finished");
    let before = bench.picture().await;
    let problem = bench.refused("POST", "/jobs/1/readings", CONFLICT, entry.clone()).await;
    assert!(detail(&problem).contains("job 1 is finished"), "{problem}");
    bench.refused("POST", "/jobs/1/drop", CONFLICT, json!({ "reason": "too late", "by": "Ada" }).to_string()).await;
    bench.refused("POST", "/batches", CONFLICT, batch).await;
    let swap = json!({ "kind": "grip", "code": "G05", "by": "Ada" }).to_string();
    bench.refused("POST", "/jobs/1/clubs/1/parts", CONFLICT, swap).await;
    assert_eq!(bench.picture().await, before);

    let set = sheet(&bench, "Somebody Else", "8, D2, 1 wrap").await;
    assert_eq!(job_of(&bench, set).await, 2);
    let problem = bench.refused("POST", "/jobs/2/drop", UNPROCESSABLE, r#"{"reason": " ", "by": "Ada"}"#).await;
    assert!(detail(&problem).contains("reason is needed"), "{problem}");
    bench.made("/jobs/2/drop", json!({ "reason": "no longer wanted", "by": "Ada" })).await;
    bench.refused("POST", "/jobs/2/readings", CONFLICT, entry).await;
    bench.refused("POST", "/jobs/2/plan/propose", CONFLICT, "{}").await;
}

#[tokio::test]
async fn what_cannot_be_read_gets_what_was_read_where_it_stopped_and_an_example() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let said = async |what: &str, typed: &str| {
        let entry = reading(1, "finish", json!([{ "what": what, "typed": typed }]));
        // The finish waits for its cure, so that the entry is told at a step that does not wait.
        let mut entry = entry;
        entry["step"] = json!("cut");
        let problem = bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, entry.to_string()).await;
        assert_eq!(problem["type"], "urn:setwright:problem:unreadable");
        detail(&problem).to_owned()
    };
    // What was read, where it stopped, an example.
    for (what, typed, words) in [
        ("swing_weight", "H3", ["“H3”", "A to G", "D3.5"]),
        ("swing_weight", "D12", ["“D12”", "0 to 9.9", "D3.5"]),
        ("total_mass", "428.6 lbs 3", ["“428.6 lbs 3”", "at character", "for example"]),
        ("finished_length", "36 5/4", ["“36 5/4”", "at character", "36 3/4"]),
        ("finished_length", "", ["nothing", "length", "36 3/4"]),
        ("cpm", "fast", ["“fast”", "a number is expected", "for example"]),
    ] {
        let said = said(what, typed).await;
        for word in words {
            assert!(said.contains(word), "{what} “{typed}”: {said}");
        }
    }
    let short = |written: &str| {
        json!({ "written": written, "rule": "as_written",
            "models": { "heads": ["WREN-I"], "shafts": [{ "model": "SCREE-P" }], "grips": [{ "model": "MARL" }] } })
    };
    let problem =
        bench.refused("POST", "/sheets/expand", UNPROCESSABLE, short("5-PW, +1/2, 2 sideways").to_string()).await;
    assert!(detail(&problem).contains("sideways") && detail(&problem).contains("character"), "{problem}");
    let problem = bench.refused("POST", "/sheets/expand", UNPROCESSABLE, short("").to_string()).await;
    assert!(detail(&problem).contains("for example"), "{problem}");
}

#[tokio::test]
async fn more_than_the_limit_is_refused_unread() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    let large = vec![b' '; 9 * 1024 * 1024];
    for (method, path) in [
        ("POST", "/parts/import"),
        ("POST", "/models/import"),
        ("POST", "/parts"),
        ("POST", "/sheets"),
        ("PUT", "/shop"),
        ("POST", "/calc/swing-weight"),
    ] {
        let problem = bench.refused(method, path, StatusCode::PAYLOAD_TOO_LARGE, large.clone()).await;
        assert!(detail(&problem).contains("8 MB"), "{path}: {problem}");
    }
    let form = [b"player=".to_vec(), large.clone()].concat();
    bench
        .ask("POST", "/sheets/new", "application/x-www-form-urlencoded", form)
        .await
        .says(StatusCode::PAYLOAD_TOO_LARGE, &["at most 8 MB"]);
    let page = bench.upload("/stock/import", &large).await;
    page.says(page.status, &["10 MB; at most 8 MB"]);
    assert!(page.status.is_client_error());
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn a_wrong_method_or_address_is_a_problem_on_the_api_and_a_page_elsewhere() {
    let bench = Bench::open().await;
    for (method, path, status) in [
        ("DELETE", "/jobs", StatusCode::METHOD_NOT_ALLOWED),
        ("POST", "/openapi.json", StatusCode::METHOD_NOT_ALLOWED),
        ("GET", "/sheets/check/more", NOT_FOUND),
        ("GET", "/none", NOT_FOUND),
        ("GET", "/", NOT_FOUND),
        ("GET", "/jobs/abc", StatusCode::BAD_REQUEST),
        ("GET", "/jobs/1/clubs/x/parts", StatusCode::METHOD_NOT_ALLOWED),
        ("GET", "/jobs/99999999999999999999", StatusCode::BAD_REQUEST),
        ("GET", "/jobs?state=lost", StatusCode::BAD_REQUEST),
        ("GET", "/glue/mix", StatusCode::BAD_REQUEST),
        ("GET", "/parts?limit=many", StatusCode::BAD_REQUEST),
        ("GET", "/parts/%FF", StatusCode::BAD_REQUEST),
    ] {
        bench.refused(method, path, status, "").await;
    }
    bench.ask("GET", "/api/v2/jobs", "text/plain", "").await.problem(NOT_FOUND);
    for (method, path, status) in [
        ("DELETE", "/sheets", StatusCode::METHOD_NOT_ALLOWED),
        ("GET", "/shop/who", StatusCode::METHOD_NOT_ALLOWED),
        ("GET", "/none", NOT_FOUND),
        ("GET", "/bench/abc", StatusCode::BAD_REQUEST),
        ("GET", "/bench/1/grid/dry?what=shine", StatusCode::BAD_REQUEST),
        ("POST", "/plan/1", UNPROCESSABLE),
        ("POST", "/bench/1/1/take-back", UNPROCESSABLE),
    ] {
        bench.ask(method, path, "application/x-www-form-urlencoded", "").await.says(status, &["Today"]);
    }
    bench.ask("POST", "/plan/1", "application/json", "{}").await.says(StatusCode::UNSUPPORTED_MEDIA_TYPE, &["Today"]);
    // A wrong method is told which ones there are.
    let request = Request::builder().method("DELETE").uri("/api/v1/jobs").body(String::new()).expect("a request");
    let answer = bench.router.clone().oneshot(request).await.expect("an answer");
    let allow = answer.headers().get(header::ALLOW).and_then(|v| v.to_str().ok()).unwrap_or_default().to_owned();
    assert!(allow.contains("GET"), "{allow}");
}

#[tokio::test]
async fn documents_that_are_none_are_refused_with_the_place() {
    let bench = Bench::open().await;
    for (body, words) in [
        ("", "it is empty"),
        ("{", "too early"),
        ("good morning", "line 1"),
        ("[]", "line 1"),
        ("{\"player\": \"A\",\n \"due\": \"soon\"}", "line 2"),
        ("{\"player\": \"A\", \"due\": \"2026-03-20\"}", "hand"),
        ("{\"player\": \"A\", \"player\": \"B\"}", "player"),
    ] {
        let problem = bench.refused("POST", "/sheets", UNPROCESSABLE, body).await;
        assert!(detail(&problem).contains(words), "{body}: {problem}");
    }
    // A document that nests without end breaks nothing.
    bench.refused("POST", "/sheets", UNPROCESSABLE, "[".repeat(100_000)).await;
    bench.refused("POST", "/calc/swing-weight", UNPROCESSABLE, "{\"a\":".repeat(100_000)).await;
}

/// Words of the programming language and its libraries, which say nothing to a person.
const FOREIGN: [&str; 8] = ["f64", "i64", "u64", "usize", "struct ", "enum ", "EOF", "expected"];

#[tokio::test]
async fn a_mistake_in_a_body_is_told_with_its_place_and_in_plain_words() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let order = r#"[{"model": "MARL", "count": 1, "by": "Ada"}, {"model": "MARL", "count": 0, "by": "Ada"}]"#;
    for (method, path, body, pointer) in [
        ("POST", "/sheets", r#"{"player": "A", "due": "2026-03-20", "hand": "right"}"#, "/rule"),
        ("POST", "/sheets", r#"{"player": 5}"#, "/player"),
        ("POST", "/sheets", "[]", ""),
        ("POST", "/parts", r#"[{"code": "N", "kind": "grip", "model": "MARL", "mass_g": "50"}]"#, "/0/mass_g"),
        ("POST", "/parts", r#"[{"code": "N", "kind": "hat", "model": "MARL"}]"#, "/0/kind"),
        ("POST", "/jobs/1/readings", r#"{"slot": 1.5}"#, "/slot"),
        ("POST", "/jobs/1/readings", r#"{"slot": 1, "step": "dry", "entries": {}, "by": "Ada"}"#, "/entries"),
        ("POST", "/models/import", "[{}, null]", "/1"),
        ("POST", "/models/import", r#"{"models": [7]}"#, "/models/0"),
        ("POST", "/orders", order, "/1"),
        ("PUT", "/shop", r#"{"name": "S", "room_c": null}"#, "/room_c"),
        ("POST", "/match/day", "[]", ""),
        ("POST", "/match/day", r#"{"seed": -1}"#, "/seed"),
    ] {
        let problem = bench.refused(method, path, UNPROCESSABLE, body).await;
        assert_eq!(problem["pointer"], pointer, "{method} {path} {body}: {problem}");
        for word in FOREIGN {
            assert!(!detail(&problem).contains(word), "“{word}” says nothing to a person: {problem}");
        }
    }
}

#[tokio::test]
async fn names_that_look_like_html_stay_text_on_every_page() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let name = "<script>alert('x')</script><img src=x onerror=alert(1)> \"quoted\" & 'so'";
    let mut set = sheet(&bench, name, "7-8, D2, 1 wrap").await;
    set["note"] = json!(name);
    let saved = bench.made("/sheets", set).await;
    let id = saved["id"].as_str().expect("an id");
    bench.page("/").await;
    bench.made(&format!("/sheets/{id}/approve"), json!({ "by": name })).await;
    let accept = crate::support::proposed(&bench, 1).await;
    let planning = bench.page("/plan/1").await;
    bench.made("/jobs/1/plan", accept).await;
    let part = bench.get("/parts/G11").await;
    let change = json!({ "version": part["version"], "place": name, "lot": name, "by": name });
    let (status, _) = bench.send("PATCH", "/parts/G11", "application/json", change.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK);
    let kept = bench
        .made(
            "/jobs/1/readings",
            json!({ "slot": 1, "step": "dry", "by": name,
            "entries": [{ "what": "swing_weight", "value": 40.0, "typed": name }] }),
        )
        .await;
    let reading = kept["readings"][0]["id"].as_str().expect("an id");
    bench.made(&format!("/jobs/1/readings/{reading}/take-back"), json!({ "why": name, "by": name })).await;
    bench.made("/batches", json!({ "job": 1, "slots": [1, 2], "lot": name, "by": name, "reason": "as agreed" })).await;
    bench.made("/jobs/1/let-pass", json!({ "slot": 1, "step": "bend", "reason": name, "by": name })).await;
    let mut pages = vec![planning];
    for path in [
        "/".to_owned(),
        "/sheets".to_owned(),
        format!("/sheets/{id}"),
        "/plan".to_owned(),
        "/plan/1".to_owned(),
        "/plan/1/cards".to_owned(),
        "/bench".to_owned(),
        "/bench/1/1".to_owned(),
        "/bench/1/1?step=dry&kept=1".to_owned(),
        "/bench/1/grid/dry".to_owned(),
        "/glue".to_owned(),
        "/records".to_owned(),
        "/records/1".to_owned(),
        "/stock".to_owned(),
        "/stock/parts/G11".to_owned(),
        "/stock?text=%3Cscript%3Ealert('x')%3C/script%3E".to_owned(),
        "/bench/1/1?step=%3Cscript%3Ealert('x')%3C/script%3E".to_owned(),
        "/card/%3Cscript%3Ealert('x')%3C%2Fscript%3E".to_owned(),
    ] {
        pages.push(bench.page(&path).await);
    }
    let mut shown = 0;
    for page in &pages {
        assert!(!page.text.contains("<script>alert"), "{}", page.text);
        assert!(!page.text.contains("<img src=x"), "{}", page.text);
        assert!(!page.text.contains("\"quoted\" &"), "{}", page.text);
        shown += usize::from(page.text.contains("&lt;script&gt;alert"));
    }
    assert!(shown >= 12, "the name is shown on {shown} of the pages");
}
