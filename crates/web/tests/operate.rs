//! Goal: a program that watches the machine learns whether the shop answers and how busy it is, in the text form of OpenMetrics
//! 1.0 (the specification's rules: a family begins with its TYPE, a counter ends in _total, buckets add up, # EOF ends it).

use crate::support::Bench;
use axum::body::Body;
use axum::extract::ConnectInfo;
use axum::http::{Request, StatusCode};
use std::collections::BTreeMap;
use std::net::SocketAddr;
use tower::ServiceExt;

#[tokio::test]
async fn health_is_told_to_strangers_and_nothing_else() {
    let bench = Bench::open().await;
    let stranger = async |path: &str| {
        let mut request = Request::get(path).body(Body::empty()).expect("a request");
        request.extensions_mut().insert(ConnectInfo("192.168.1.9:4".parse::<SocketAddr>().expect("an address")));
        bench.router.clone().oneshot(request).await.expect("an answer").status()
    };
    assert_eq!((stranger("/health").await, stranger("/metrics").await), (StatusCode::OK, StatusCode::UNAUTHORIZED));
    assert_eq!(bench.page("/health").await.text, r#"{"status":"ok"}"#);
    bench.app.close().await;
    let failed = bench.page("/health").await;
    assert_eq!((failed.status, failed.text.as_str()), (StatusCode::SERVICE_UNAVAILABLE, r#"{"status":"failed"}"#));
}

/// The values of a text by name and labels.
fn values(text: &str) -> BTreeMap<String, f64> {
    let mut typed = std::collections::BTreeSet::new();
    let mut values = BTreeMap::new();
    for line in text.lines() {
        if let Some(family) = line.strip_prefix("# TYPE ") {
            assert!(typed.insert(family.split(' ').next().expect("a name").to_owned()), "{family} twice");
        } else if !line.starts_with('#') {
            let (name, value) = line.rsplit_once(' ').expect("a value");
            let family = name.split('{').next().expect("a name");
            assert!(typed.iter().any(|known| family.starts_with(known.as_str())), "{family} has no TYPE before it");
            values.insert(name.to_owned(), value.parse().expect("a number"));
        }
    }
    values
}

#[tokio::test]
async fn requests_are_counted_by_status_and_time() {
    let bench = Bench::open().await;
    let read = async || {
        let answer = bench.page("/metrics").await;
        assert!(
            answer.kind.starts_with("application/openmetrics-text") && answer.text.ends_with("# EOF\n"),
            "{}",
            answer.text
        );
        values(&answer.text)
    };
    let before = read().await;
    for (path, _) in [("/", 0), ("/stock", 0), ("/nowhere", 0), ("/api/v1/parts", 0)] {
        bench.page(path).await;
    }
    let after = read().await;
    let more = |name: &str| after[name] - before[name];
    // The first look at the figures is itself counted by the second.
    assert_eq!(more("setwright_requests_total{status=\"2xx\"}"), 4.0);
    assert_eq!(more("setwright_requests_total{status=\"4xx\"}"), 1.0);
    assert_eq!(more("setwright_answer_seconds_count"), 5.0);
    assert_eq!(after["setwright_answer_seconds_bucket{le=\"+Inf\"}"], after["setwright_answer_seconds_count"]);
    assert!(more("setwright_answer_seconds_sum") > 0.0);
    assert_eq!(after["setwright_requests_under_way"], 1.0);
    assert_eq!(after["setwright_clock_doubted"], 0.0);
}

#[tokio::test]
async fn a_request_has_a_name_its_own_or_the_one_that_it_brought() {
    let bench = Bench::open().await;
    let named = async |id: &str| {
        let request = Request::get("/health").header("x-request-id", id).body(Body::empty()).expect("a request");
        let answer = bench.router.clone().oneshot(request).await.expect("an answer");
        answer.headers()["x-request-id"].to_str().expect("a text").to_owned()
    };
    assert_eq!(named("proxy-17").await, "proxy-17");
    let (one, other) = (named("").await, named("a b; c").await);
    assert!(one.len() == 36 && other.len() == 36 && one != other, "{one} {other}");
}
