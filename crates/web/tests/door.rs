//! Goal: no page of another site can change or read the shop, and pages say to the browser how careful to be. Method:
//! the requests that such pages can make a browser send, against the whole site; what is saved is compared before and
//! after. How browsers mark requests: Fetch Standard, "Sec-Fetch-Site" and "Origin" headers. A real browser tries the
//! same in the browser's tests of the program.

use crate::support::Bench;
use crate::support::answer::Answer;
use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::json;
use tower::ServiceExt;

const FORM: &str = "application/x-www-form-urlencoded";

/// A request with these headers.
async fn sent(bench: &Bench, method: &str, address: &str, headers: &[(&str, &str)], body: &str) -> Answer {
    let mut request = Request::builder().method(method).uri(address);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    let request = request.body(Body::from(body.to_owned())).expect("a request");
    Answer::of(bench.router.clone().oneshot(request).await.expect("an answer")).await
}

#[tokio::test]
async fn nothing_changes_for_a_page_of_another_origin() {
    let bench = Bench::open().await;
    let part = json!({ "code": "X-1", "kind": "head", "model": "NONE", "mass_g": 250.0 }).to_string();
    let before = bench.picture().await;
    let foreign: [&[(&str, &str)]; 6] = [
        &[("origin", "http://evil.example")],
        &[("sec-fetch-site", "cross-site"), ("origin", "http://evil.example")],
        &[("sec-fetch-site", "same-site"), ("origin", "http://127.0.0.1:9999")],
        // A frame without an origin, a file that was opened, a page that hides where it comes from.
        &[("origin", "null")],
        // Another port of this machine is another program.
        &[("origin", "http://127.0.0.1:9999")],
        &[("sec-fetch-site", "cross-site")],
    ];
    for marks in foreign {
        for (address, kind, body) in [
            ("/api/v1/parts", "application/json", part.as_str()),
            ("/api/v1/parts", "text/plain", part.as_str()),
            ("/api/v1/parts/import", "text/csv", "code,kind\nX-1,head\n"),
            ("/shop/who", FORM, "name=evil"),
            ("/plan/1/drop", FORM, "reason=evil"),
        ] {
            let mut headers = vec![("host", "127.0.0.1:7340"), ("content-type", kind)];
            headers.extend_from_slice(marks);
            let answer = sent(&bench, "POST", address, &headers, body).await;
            assert_eq!(answer.status, StatusCode::FORBIDDEN, "{address} {marks:?}: {}", answer.text);
            assert!(answer.text.contains("nothing was changed"), "{}", answer.text);
        }
        for method in ["PUT", "PATCH", "DELETE"] {
            let mut headers = vec![("host", "127.0.0.1:7340"), ("content-type", "application/json")];
            headers.extend_from_slice(marks);
            let answer = sent(&bench, method, "/api/v1/shop", &headers, "{}").await;
            assert_eq!(answer.status, StatusCode::FORBIDDEN, "{method} {marks:?}");
        }
    }
    assert_eq!(bench.picture().await, before, "something was saved");
}

#[tokio::test]
async fn our_own_pages_and_programs_are_let_in() {
    let bench = Bench::open().await;
    let ours: [&[(&str, &str)]; 5] = [
        &[("sec-fetch-site", "same-origin"), ("origin", "http://192.168.1.20:7340")],
        // Over plain http to a name of the network a browser sends no Sec-Fetch-Site.
        &[("origin", "http://192.168.1.20:7340")],
        // An address typed, a bookmark.
        &[("sec-fetch-site", "none")],
        // Behind a proxy that speaks https.
        &[("origin", "https://192.168.1.20:7340")],
        // A program.
        &[],
    ];
    for (n, marks) in ours.into_iter().enumerate() {
        let mut headers = vec![("host", "192.168.1.20:7340"), ("content-type", FORM)];
        headers.extend_from_slice(marks);
        let answer = sent(&bench, "POST", "/shop/who", &headers, &format!("name=Ines{n}&units=in+g")).await;
        assert!(answer.status.is_redirection(), "{marks:?}: {} {}", answer.status, answer.text);
    }
}

#[tokio::test]
async fn a_body_must_say_that_it_is_json() {
    let bench = Bench::open().await;
    let shop = bench.get("/shop").await.to_string();
    for kind in ["text/plain", FORM, "multipart/form-data; boundary=x", "", "application/jsonp"] {
        let answer = sent(&bench, "PUT", "/api/v1/shop", &[("content-type", kind)], &shop).await;
        let problem = answer.problem(StatusCode::UNSUPPORTED_MEDIA_TYPE);
        assert!(problem["detail"].as_str().expect("words").contains("application/json"), "{problem}");
    }
    assert_eq!(sent(&bench, "PUT", "/api/v1/shop", &[], &shop).await.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
    for kind in ["application/json", "Application/JSON; charset=utf-8", "application/vnd.bench+json"] {
        let answer = sent(&bench, "PUT", "/api/v1/shop", &[("content-type", kind)], &shop).await;
        assert!(answer.status.is_success(), "{kind}: {} {}", answer.status, answer.text);
    }
}

#[tokio::test]
async fn a_foreign_name_that_points_here_reads_nothing() {
    let mut bench = Bench::open().await;
    for address in ["/", "/stock", "/api/v1/jobs", "/api/v1/openapi.json", "/assets/x/setwright.css", "/nowhere"] {
        for host in ["evil.example", "evil.example:7340", "127.0.0.1.evil.example", "localhost.evil.example", "a b"] {
            let answer = sent(&bench, "GET", address, &[("host", host)], "").await;
            assert_eq!(answer.status, StatusCode::MISDIRECTED_REQUEST, "{address} as {host}: {}", answer.text);
            assert!(answer.text.contains("--name"), "{}", answer.text);
        }
        for host in ["127.0.0.1:7340", "localhost:7340", "[::1]:7340", "192.168.1.20", "10.0.0.7:80"] {
            let answer = sent(&bench, "GET", address, &[("host", host)], "").await;
            assert_ne!(answer.status, StatusCode::MISDIRECTED_REQUEST, "{address} as {host}");
        }
    }
    let names = web::ServerNames::new(["bench.local".to_owned()]).expect("a name");
    bench.router = web::router(bench.app.clone(), names);
    assert_eq!(sent(&bench, "GET", "/", &[("host", "Bench.local:7340")], "").await.status, StatusCode::OK);
    assert_eq!(sent(&bench, "GET", "/", &[("host", "evil.example")], "").await.status, StatusCode::MISDIRECTED_REQUEST);
}

#[tokio::test]
async fn every_answer_tells_the_browser_how_careful_to_be() {
    let bench = Bench::open().await;
    let asset = look::assets::asset_url("setwright.css");
    for (address, host) in [
        ("/", "localhost"),
        ("/nowhere", "localhost"),
        ("/api/v1/jobs", "localhost"),
        ("/api/v1/nowhere", "localhost"),
        ("/labels.svg", "localhost"),
        (asset.as_str(), "localhost"),
        ("/", "evil.example"),
    ] {
        let answer = sent(&bench, "GET", address, &[("host", host)], "").await;
        let header = |name: &str| answer.headers.get(name).and_then(|v| v.to_str().ok()).unwrap_or_default().to_owned();
        let policy = header("content-security-policy");
        for part in ["default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "form-action 'self'"] {
            assert!(policy.contains(part), "{address}: {policy}");
        }
        assert!(!policy.contains("unsafe"), "{policy}");
        assert_eq!(header("x-content-type-options"), "nosniff", "{address}");
        assert_eq!(header("x-frame-options"), "DENY", "{address}");
        assert_eq!(header("referrer-policy"), "same-origin", "{address}");
        let kept = header("cache-control");
        assert!(if address == asset { kept.contains("immutable") } else { kept == "no-store" }, "{address}: {kept}");
    }
}

#[tokio::test]
async fn an_error_page_leads_back_without_script() {
    let bench = Bench::open().await;
    let from = |address: &'static str| [("host", "localhost:7340"), ("referer", address), ("content-type", FORM)];
    let failed = sent(&bench, "POST", "/plan/7/drop", &from("http://localhost:7340/plan/7?keep=a"), "").await;
    assert!(failed.status.is_client_error());
    assert!(failed.text.contains("href=\"/plan/7?keep=a\""), "{}", failed.text);
    assert!(!failed.text.contains("javascript:"));
    // Neither to another site, nor to the page that failed.
    for elsewhere in ["http://evil.example/plan/7", "http://localhost:7340//evil.example/", "nonsense", "javascript:x"]
    {
        let failed = sent(&bench, "POST", "/plan/7/drop", &from(elsewhere), "").await;
        assert!(!failed.text.contains("evil") && !failed.text.contains(">Back<"), "{elsewhere}: {}", failed.text);
    }
    let missing = sent(&bench, "GET", "/plan/7", &from("http://localhost:7340/plan/7"), "").await;
    assert!(!missing.text.contains(">Back<"), "{}", missing.text);
}
