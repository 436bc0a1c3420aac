//! Goal: from outside this machine nobody reads or changes anything without a key, and a key goes as far as its role. Method:
//! requests as they come over the network, with the address of who sent them, against the whole site. Limits: OWASP ASVS 4.0.3,
//! 2.2.1 (attempts are limited), 2.7.2 (a code of one use, at most ten minutes), 3.1–3.4 (sessions, cookies), 13.1.4
//! (the decision is made for each address).

use crate::support::Bench;
use crate::support::answer::Answer;
use axum::body::Body;
use axum::extract::ConnectInfo;
use axum::http::{Request, StatusCode};
use serde_json::{Value, json};
use std::net::SocketAddr;
use tower::ServiceExt;

/// A tablet somewhere in the network.
const TABLET: &str = "192.168.1.31";

/// A request from an address of the network.
pub async fn from(
    bench: &Bench,
    ip: &str,
    method: &str,
    address: &str,
    headers: &[(&str, &str)],
    body: &str,
) -> Answer {
    let peer: SocketAddr = format!("{ip}:50123").parse().expect("an address");
    let mut request = Request::builder().method(method).uri(address).header("host", "192.168.1.20:7340");
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    let mut request = request.body(Body::from(body.to_owned())).expect("a request");
    request.extensions_mut().insert(ConnectInfo(peer));
    Answer::of(bench.router.clone().oneshot(request).await.expect("an answer")).await
}

const JSON: (&str, &str) = ("content-type", "application/json");
const FORM: (&str, &str) = ("content-type", "application/x-www-form-urlencoded");
const PAGE: (&str, &str) = ("accept", "text/html,application/xhtml+xml");

async fn program_key(bench: &Bench, role: &str, days: i64) -> (i64, String) {
    let given = bench.made("/keys", json!({ "name": role, "role": role, "days": days, "by": "Ines" })).await;
    (given["number"].as_i64().expect("a number"), format!("Bearer {}", given["secret"].as_str().expect("a secret")))
}

async fn digits(bench: &Bench, role: &str) -> String {
    let shown = bench.made("/keys/codes", json!({ "name": "Bench 2", "role": role, "by": "Ines" })).await;
    shown["code"].as_str().expect("digits").to_owned()
}

async fn type_in(bench: &Bench, ip: &str, code: &str) -> Answer {
    let body = json!({ "code": code }).to_string();
    from(bench, ip, "POST", "/api/v1/keys/come-in", &[JSON], &body).await
}

#[tokio::test]
async fn a_stranger_sees_the_door_and_nothing_else() {
    let bench = Bench::open().await;
    let before = bench.picture().await;
    // Every address of the API, by its own description: without a key none does anything.
    let api = bench.get("/openapi.json").await;
    let mut asked = 0;
    for (path, item) in api["paths"].as_object().expect("paths") {
        for method in
            item.as_object().expect("methods").keys().filter(|m| path != "/keys/come-in" && *m != "parameters")
        {
            let address = format!("/api/v1{}", path.replace(['{', '}'], ""));
            let answer = from(&bench, TABLET, &method.to_uppercase(), &address, &[JSON], "{}").await;
            let problem = answer.problem(StatusCode::UNAUTHORIZED);
            assert_eq!(answer.headers["www-authenticate"], "Bearer realm=\"setwright\"", "{address}");
            assert_eq!(problem["code"], "access_fault.no_key", "{address}");
            asked += 1;
        }
    }
    assert!(asked > 100, "{asked}");
    for address in ["/", "/stock", "/records/1", "/keys", "/nowhere", "/shop?x=1&y=2"] {
        let answer = from(&bench, TABLET, "GET", address, &[PAGE], "").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{address}");
        assert!(answer.location.starts_with("/come-in?to=%2F"), "{address}: {}", answer.location);
    }
    for address in ["/shop", "/shop/who", "/bench/1/1", "/keys/code", "/stock/new", "/nowhere"] {
        let answer = from(&bench, TABLET, "POST", address, &[FORM, PAGE], "name=x").await;
        assert_eq!(answer.status, StatusCode::UNAUTHORIZED, "{address}: {}", answer.text);
        assert!(answer.text.contains("needs a key"), "{}", answer.text);
    }
    let door = from(&bench, TABLET, "GET", "/come-in?to=%2Fbench%2F1%2F3", &[PAGE], "").await;
    assert_eq!(door.status, StatusCode::OK);
    assert!(door.text.contains("Six digits") && door.text.contains("value=\"/bench/1/3\""), "{}", door.text);
    assert!(!door.text.contains("href=\"/stock\""), "the places of the shop are not for strangers");
    let style = from(&bench, TABLET, "GET", &look::assets::asset_url("setwright.css"), &[], "").await;
    assert_eq!(style.status, StatusCode::OK);
    assert_eq!(bench.picture().await, before, "something was saved");
}

#[tokio::test]
async fn six_digits_let_one_tablet_in_once() {
    let mut bench = Bench::open().await;
    let shown = bench.form("/keys/code", &[("name", "Bench 2"), ("role", "builder")]).await;
    let at = shown.text.find("door-digits").expect("the digits");
    let code: String = shown.text[at + 13..].chars().take(7).filter(char::is_ascii_digit).collect();
    assert_eq!(code.len(), 6, "{}", shown.text);
    // As a hand types them, with the gap that the page shows.
    let typed = format!("code={}+{}&to=%2Fstock", &code[..3], &code[3..]);
    let came = from(&bench, TABLET, "POST", "/come-in", &[FORM], &typed).await;
    assert_eq!((came.status, came.location.as_str()), (StatusCode::SEE_OTHER, "/stock"), "{}", came.text);
    let cookie = came.headers["set-cookie"].to_str().expect("a cookie").to_owned();
    for wanted in ["HttpOnly", "SameSite=Lax", "Path=/", "Max-Age=34560000"] {
        assert!(cookie.contains(wanted), "{cookie}");
    }
    let kept = cookie.split(';').next().expect("a pair").to_owned();
    let stock = from(&bench, TABLET, "GET", "/stock", &[PAGE, ("cookie", &kept)], "").await;
    assert_eq!(stock.status, StatusCode::OK, "{}", stock.text);
    let again = from(&bench, "192.168.1.32", "POST", "/come-in", &[FORM], &typed).await;
    assert_eq!(again.status, StatusCode::FORBIDDEN, "used once");
    // A new start of the program knows it still.
    bench.router = web::router(bench.app.clone(), web::ServerNames::default());
    assert_eq!(from(&bench, TABLET, "GET", "/stock", &[PAGE, ("cookie", &kept)], "").await.status, StatusCode::OK);
    // The owner takes it away: the next request is a stranger's.
    let key = bench.get("/keys").await[0].clone();
    assert_eq!((&key["name"], &key["used_from"]), (&json!("Bench 2"), &json!(TABLET)));
    let left = bench.form(&format!("/keys/{}/withdraw", key["number"]), &[]).await;
    assert_eq!(left.location, "/keys");
    let out = from(&bench, TABLET, "GET", "/stock", &[PAGE, ("cookie", &kept)], "").await;
    assert_eq!(out.status, StatusCode::SEE_OTHER);
    let path = format!("/keys/{}/withdraw", key["number"]);
    let gone = bench.refused("POST", &path, StatusCode::NOT_FOUND, r#"{"by":"Ines"}"#).await;
    assert_eq!(gone["code"], "access_fault.no_such_key");
}

#[tokio::test]
async fn digits_end_after_five_minutes_and_a_programs_key_with_its_days() {
    let bench = Bench::open().await;
    let code = digits(&bench, "reader").await;
    let (_, key) = program_key(&bench, "reader", 2).await;
    bench.clock.advance(jiff::SignedDuration::from_secs(301));
    assert_eq!(type_in(&bench, TABLET, &code).await.problem(StatusCode::FORBIDDEN)["code"], "access_fault.wrong_code");
    let stock = async || from(&bench, TABLET, "GET", "/api/v1/parts", &[("authorization", key.as_str())], "").await;
    assert_eq!(stock().await.status, StatusCode::OK);
    bench.clock.advance(jiff::SignedDuration::from_hours(48));
    assert_eq!(stock().await.problem(StatusCode::UNAUTHORIZED)["code"], "access_fault.bad_key");
}

#[tokio::test]
async fn wrong_digits_are_counted_and_stop() {
    let bench = Bench::open().await;
    let code = digits(&bench, "builder").await;
    let wrong = |n: u32| format!("{:06}", (code.parse::<u32>().expect("a number") + 1 + n) % 1_000_000);
    for n in 0..5 {
        let problem = type_in(&bench, TABLET, &wrong(n)).await.problem(StatusCode::FORBIDDEN);
        assert_eq!(problem["code"], "access_fault.wrong_code", "{n}");
    }
    // Now the right ones are of no use from there; from elsewhere they are.
    let problem = type_in(&bench, TABLET, &code).await.problem(StatusCode::FORBIDDEN);
    assert_eq!(problem["code"], "access_fault.too_many_wrong");
    let page = from(&bench, TABLET, "POST", "/come-in", &[FORM], &format!("code={code}")).await;
    assert!(page.status == StatusCode::FORBIDDEN && page.text.contains("Wait 10 minutes"), "{}", page.text);
    assert_eq!(type_in(&bench, "192.168.1.40", &code).await.status, StatusCode::CREATED);
    // Many addresses together: twenty guesses, and what is shown then ends.
    let code = digits(&bench, "builder").await;
    for n in 0..15 {
        let ip = format!("192.168.2.{n}");
        assert_eq!(
            type_in(&bench, &ip, "000 00").await.problem(StatusCode::FORBIDDEN)["code"],
            "access_fault.wrong_code"
        );
    }
    let problem = type_in(&bench, "192.168.3.1", &code).await.problem(StatusCode::FORBIDDEN);
    assert_eq!(problem["code"], "access_fault.too_many_wrong");
    bench.clock.advance(jiff::SignedDuration::from_mins(11));
    let code = digits(&bench, "builder").await;
    assert_eq!(type_in(&bench, TABLET, &code).await.status, StatusCode::CREATED);
}

#[tokio::test]
async fn a_key_goes_as_far_as_its_role() {
    let bench = Bench::open().await;
    let shop = bench.get("/shop").await.to_string();
    let part = json!({ "code": "X-1", "kind": "head", "model": "NONE", "mass_g": 250.0 }).to_string();
    let code = json!({ "name": "x", "role": "owner", "by": "x" }).to_string();
    let trim = bench.get("/calc").await;
    assert!(trim.is_array());
    // Method, address, body; whether owner, builder, reader get past the door.
    let asked: [(&str, &str, &str, [bool; 3]); 9] = [
        ("GET", "/api/v1/parts", "", [true, true, true]),
        ("GET", "/api/v1/keys", "", [true, false, false]),
        ("POST", "/api/v1/keys/codes", &code, [true, false, false]),
        ("POST", "/api/v1/keys/1/withdraw", "{}", [true, false, false]),
        ("PUT", "/api/v1/shop", &shop, [true, false, false]),
        ("PUT", "/api/v1/prices", "{}", [true, false, false]),
        ("POST", "/api/v1/customers/1/deletion", "{}", [true, false, false]),
        ("POST", "/api/v1/parts", &part, [true, true, false]),
        ("POST", "/api/v1/calc/swing-weight", "{}", [true, true, true]),
    ];
    for (at, role) in ["owner", "builder", "reader"].into_iter().enumerate() {
        let (_, key) = program_key(&bench, role, 30).await;
        for (method, address, body, may) in asked {
            let answer = from(&bench, TABLET, method, address, &[JSON, ("authorization", &key)], body).await;
            let stopped = answer.text.contains("access_fault.not_allowed");
            assert_eq!(!stopped, may[at], "{role} {method} {address}: {} {}", answer.status, answer.text);
            assert_eq!(stopped, answer.status == StatusCode::FORBIDDEN, "{role} {method} {address}: {}", answer.text);
        }
        // A key that is brought counts on this machine too.
        let here = from(&bench, "127.0.0.1", "GET", "/api/v1/keys", &[("authorization", &key)], "").await;
        assert_eq!(here.status == StatusCode::OK, role == "owner");
    }
    let (_, key) = program_key(&bench, "builder", 1).await;
    let page = from(&bench, TABLET, "POST", "/shop", &[FORM, ("authorization", &key)], "name=x").await;
    assert!(page.status == StatusCode::FORBIDDEN && page.text.contains("does not go so far"), "{}", page.text);
}

#[tokio::test]
async fn a_made_up_key_or_a_hand_between_opens_nothing() {
    let mut bench = Bench::open().await;
    for key in ["Bearer setwright_00", "Bearer ", "Basic b3duZXI6", "setwright_", "Bearer ' OR 1=1 --"] {
        for ip in ["127.0.0.1", TABLET] {
            let answer = from(&bench, ip, "GET", "/api/v1/parts", &[("authorization", key)], "").await;
            assert_eq!(answer.problem(StatusCode::UNAUTHORIZED)["code"], "access_fault.bad_key", "{key} from {ip}");
        }
    }
    let own = [("127.0.0.1", StatusCode::OK), ("::1", StatusCode::OK), (TABLET, StatusCode::UNAUTHORIZED)];
    for (ip, status) in own {
        let ip = if ip.contains(':') { format!("[{ip}]") } else { ip.to_owned() };
        assert_eq!(from(&bench, &ip, "GET", "/api/v1/parts", &[], "").await.status, status, "{ip}");
    }
    for handed_on in
        [("x-forwarded-for", "127.0.0.1"), ("forwarded", "for=127.0.0.1"), ("via", "1.1 x"), ("x-real-ip", "::1")]
    {
        let answer = from(&bench, "127.0.0.1", "GET", "/api/v1/parts", &[handed_on], "").await;
        assert_eq!(answer.status, StatusCode::UNAUTHORIZED, "{handed_on:?}");
    }
    // Where everybody needs a key, this machine does.
    let door = web::Door { key_for_all: true, ..web::Door::default() };
    bench.router = web::router(bench.app.clone(), door);
    assert_eq!(from(&bench, "127.0.0.1", "GET", "/api/v1/parts", &[], "").await.status, StatusCode::UNAUTHORIZED);
}

#[tokio::test]
async fn the_door_leads_only_into_this_shop() {
    let bench = Bench::open().await;
    for (n, to) in ["//evil.example", "https://evil.example", "/\\evil.example", "\\\\evil", "", "/come-in?to=/"]
        .into_iter()
        .enumerate()
    {
        let code = digits(&bench, "reader").await;
        let to =
            to.replace('%', "%25").replace('/', "%2F").replace('\\', "%5C").replace(':', "%3A").replace('?', "%3F");
        let came =
            from(&bench, &format!("10.0.0.{n}"), "POST", "/come-in", &[FORM], &format!("code={code}&to={to}")).await;
        assert_eq!((came.status, came.location.as_str()), (StatusCode::SEE_OTHER, "/"), "{to}");
    }
}

#[tokio::test]
async fn secrets_are_not_kept_and_what_is_given_stands_in_the_log() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    let (number, key) = program_key(&bench, "reader", 2).await;
    let code = digits(&bench, "owner").await;
    let came = type_in(&bench, TABLET, &code).await;
    assert_eq!(came.status, StatusCode::CREATED);
    let secret = came.value()["secret"].as_str().expect("a secret").to_owned();
    let mut tx = bench.app.store().read().await.expect("a reader");
    let log = format!("{:?}", tx.events(None, 99).await.expect("the log"));
    for kind in ["KeyGiven", "DoorCodeShown"] {
        assert!(log.contains(kind), "{log}");
    }
    drop(tx);
    bench.app.close().await;
    let own_part = key.trim_start_matches("Bearer setwright_").to_owned();
    for file in std::fs::read_dir(folder.path()).expect("the folder") {
        let bytes = std::fs::read(file.expect("a file").path()).expect("a file");
        let text = String::from_utf8_lossy(&bytes);
        assert!(!text.contains(&own_part) && !text.contains(secret.trim_start_matches("setwright_")), "key {number}");
        assert!(!log.contains(&own_part) && !log.contains(&code));
    }
}

#[tokio::test]
async fn a_bad_name_role_or_time_is_refused_in_words() {
    let bench = Bench::open().await;
    for (path, body, code) in [
        ("/keys", json!({ "name": " ", "role": "reader", "days": 1, "by": "Ines" }), "access_fault.name"),
        ("/keys", json!({ "name": "x".repeat(61), "role": "reader", "days": 1, "by": "Ines" }), "access_fault.name"),
        ("/keys", json!({ "name": "x", "role": "reader", "days": 0, "by": "Ines" }), "access_fault.days"),
        ("/keys", json!({ "name": "x", "role": "reader", "days": 9999999, "by": "Ines" }), "access_fault.days"),
        ("/keys", json!({ "name": "x", "role": "reader", "days": 1, "by": "" }), "need_fault.no_name"),
        ("/keys/codes", json!({ "name": "", "role": "reader", "by": "Ines" }), "access_fault.name"),
        ("/keys/codes", json!({ "name": "a\u{7}b", "role": "reader", "by": "Ines" }), "access_fault.name"),
    ] {
        let problem: Value = bench.refused("POST", path, StatusCode::UNPROCESSABLE_ENTITY, body.to_string()).await;
        assert_eq!(problem["code"], code, "{body}");
    }
    let page = bench.form("/keys/code", &[("name", ""), ("role", "builder")]).await;
    assert!(page.status == StatusCode::UNPROCESSABLE_ENTITY && page.text.contains("needs a name"), "{}", page.text);
    let page =
        bench.form("/keys/program", &[("program_name", "Sums"), ("program_role", "reader"), ("days", "soon")]).await;
    assert!(page.status == StatusCode::UNPROCESSABLE_ENTITY && page.text.contains("value=\"Sums\""), "{}", page.text);
    assert_eq!(bench.get("/keys").await, json!([]));
}
