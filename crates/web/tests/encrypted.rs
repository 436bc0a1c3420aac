//! Goal: where connections are encrypted, nothing of the shop goes over the network without; a tablet that does not trust this machine
//! yet is told how, and nothing else. Method: requests as they come over the network against the whole site. Limits: OWASP ASVS
//! 4.0.3, 9.1.1; RFC 9110 15.4.8 (what is led on keeps its method).

use crate::support::Bench;
use crate::support::answer::Answer;
use axum::body::Body;
use axum::extract::ConnectInfo;
use axum::http::{Request, StatusCode};
use std::net::SocketAddr;
use std::sync::Arc;
use tower::ServiceExt;
use web::{Door, Encryption};

const SUM: &str = "AB:CD:EF:01";

fn door(own_root: bool) -> Door {
    let encryption = Encryption {
        port: 7443,
        root: own_root.then(|| (vec![0x30, 0x82, 1, 2], SUM.to_owned())),
        begins_at: Some("http://192.168.1.20:7340".to_owned()),
    };
    Door {
        address: Some("https://192.168.1.20:7443".to_owned()),
        encryption: Some(Arc::new(encryption)),
        ..Door::default()
    }
}

async fn from(router: &axum::Router, peer: &str, method: &str, address: &str) -> Answer {
    let accept = if method == "GET" { "text/html" } else { "application/json" };
    let peer: SocketAddr = format!("{peer}:50123").parse().expect("an address");
    let request = Request::builder().method(method).uri(address).header("host", "192.168.1.20:7340");
    let mut request = request.header("accept", accept).body(Body::empty()).expect("a request");
    request.extensions_mut().insert(ConnectInfo(peer));
    Answer::of(router.clone().oneshot(request).await.expect("an answer")).await
}

#[tokio::test]
async fn what_comes_unencrypted_over_the_network_is_led_on_and_reads_nothing() {
    let bench = Bench::open().await;
    let router = web::router(bench.app.clone(), door(true));
    let first = from(&router, "192.168.1.31", "GET", "/").await;
    assert_eq!((first.status, first.location.as_str()), (StatusCode::SEE_OTHER, "/trust"));
    for (address, on) in
        [("/stock?kind=head", "/stock?kind=head"), ("/come-in", "/come-in"), ("/api/v1/jobs", "/api/v1/jobs")]
    {
        let led = from(&router, "192.168.1.31", "GET", address).await;
        assert_eq!(led.status, StatusCode::TEMPORARY_REDIRECT, "{address}");
        assert_eq!(led.location, format!("https://192.168.1.20:7443{on}"));
    }
    // A key that a program sent over the open line is lost; it is not used as well.
    for (method, address) in
        [("POST", "/api/v1/keys/come-in"), ("POST", "/api/v1/jobs"), ("DELETE", "/api/v1/models/SISKIN")]
    {
        let refused = from(&router, "192.168.1.31", method, address).await;
        let problem = refused.problem(StatusCode::FORBIDDEN);
        assert_eq!(
            (&problem["code"], &problem["figures"]["port"]),
            (&"edge_fault.not_encrypted".into(), &"7443".into())
        );
    }
    assert_eq!(from(&router, "192.168.1.31", "POST", "/come-in").await.status, StatusCode::FORBIDDEN);
    // This machine, and a proxy on it, go on as they did.
    assert_eq!(from(&router, "127.0.0.1", "GET", "/stock").await.status, StatusCode::OK);
    assert_eq!(from(&router, "192.168.1.31", "GET", "/health").await.status, StatusCode::OK);
    // With a certificate that tablets trust already there is nothing to tell them.
    let brought = web::router(bench.app.clone(), door(false));
    let led = from(&brought, "192.168.1.31", "GET", "/").await;
    assert_eq!((led.status, led.location.as_str()), (StatusCode::TEMPORARY_REDIRECT, "https://192.168.1.20:7443/"));
    assert_eq!(from(&brought, "192.168.1.31", "GET", "/trust").await.status, StatusCode::NOT_FOUND);
    // Without encryption nothing is led anywhere but to the door.
    let plain = from(&bench.router, "192.168.1.31", "GET", "/stock").await;
    assert!(plain.location.starts_with("/come-in?to="), "{}", plain.location);
}

#[tokio::test]
async fn a_tablet_is_told_in_three_steps_how_to_trust_this_machine() {
    let bench = Bench::open().await;
    let router = web::router(bench.app.clone(), door(true));
    let page = from(&router, "192.168.1.31", "GET", "/trust").await;
    assert_eq!(page.status, StatusCode::OK);
    for told in ["/trust/setwright.crt", "https://192.168.1.20:7443/", "Android", "iPad", "Windows"] {
        assert!(page.text.contains(told), "{told}");
    }
    // What came over an open line cannot vouch for itself.
    assert!(!page.text.contains(SUM));
    let file = from(&router, "192.168.1.31", "GET", "/trust/setwright.crt").await;
    assert_eq!((file.status, &file.headers["content-type"] == "application/x-x509-ca-cert"), (StatusCode::OK, true));
    assert!(file.headers["content-disposition"].to_str().is_ok_and(|v| v.contains("setwright.crt")));
    // The owner's page shows the same sum, and where a tablet begins.
    let keys = from(&router, "127.0.0.1", "GET", "/keys").await.text;
    for told in ["https://192.168.1.20:7443", "http://192.168.1.20:7340", SUM, "<svg"] {
        assert!(keys.contains(told), "{told}");
    }
    assert!(!keys.contains("is not encrypted"));
    assert!(!from(&bench.router, "127.0.0.1", "GET", "/keys").await.text.contains("/trust"));
}
