//! Goal: a scale on a serial line is set on a page, heard, and seen on every screen. Method: a pseudo-terminal stands for
//! the cable; nothing is timed, each wait ends when what must come has come, at most half a minute.

use app::{App, SystemClock};
use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serialport::{SerialPort, TTYPort};
use std::io::Write;
use std::sync::Arc;
use std::time::Duration;
use tower::ServiceExt;

async fn ask(router: &Router, method: &str, address: &str, body: &str) -> (StatusCode, String) {
    let request = Request::builder()
        .method(method)
        .uri(address)
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(body.to_owned()))
        .unwrap();
    let answer = router.clone().oneshot(request).await.unwrap();
    let status = answer.status();
    let bytes = axum::body::to_bytes(answer.into_body(), 10_000_000).await.unwrap();
    (status, String::from_utf8(bytes.to_vec()).unwrap())
}

#[tokio::test(flavor = "multi_thread")]
async fn a_scale_set_on_the_page_is_heard_and_its_settled_value_taken_once() {
    let folder = tempfile::tempdir().unwrap();
    let app =
        App::open(&format!("sqlite:{}", folder.path().join("shop.db").display()), Arc::new(SystemClock)).await.unwrap();
    app.start_scales().await.unwrap();
    let router = web::router(app.clone(), web::ServerNames::default());
    let (mut far, near) = TTYPort::pair().unwrap();
    let port = near.name().unwrap();
    drop(near);

    let refused =
        ask(&router, "POST", "/shop/scales", "name=Parts+scale&port=&baud=fast&data_bits=8&stop_bits=1&shows=mass")
            .await;
    assert_eq!(refused.0, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.1.contains("Say which port it is on"), "the mistake stands beside its field");
    assert!(app.shop().await.unwrap().scales.is_empty(), "nothing half kept");

    let mut events = app.hear_scales();
    let form = format!(
        "name=Parts+scale&port={}&baud=9600&data_bits=8&stop_bits=1&shows=mass&parity=none&mark=ST&means=settled&unit=g&overload=OL&ignore=&skip=&ask=",
        port.replace('/', "%2F")
    );
    let kept = ask(&router, "POST", "/shop/scales", &form).await;
    assert_eq!(kept.0, StatusCode::SEE_OTHER, "{}", kept.1);
    let mut next = async |wanted: &dyn Fn(&app::scales::ScaleNow) -> bool| loop {
        let now = tokio::time::timeout(Duration::from_secs(30), events.recv()).await.expect("it comes").unwrap();
        if wanted(&now) {
            return now;
        }
    };
    next(&|now| now.connected).await;
    // Bytes that come at once would count as the rest of a line that was begun before.
    tokio::time::sleep(Duration::from_millis(400)).await;
    far.write_all(b"what is this\r\n+ 256.0 g\r\nST + 256.1 g\r\nST + 256.1 g\r\n").unwrap();
    let taken = next(&|now| now.taken).await;
    assert_eq!((taken.text.as_str(), taken.figure), ("256.1", Some(256.1)));
    // Lifted, then another part: one value more and no second of the first.
    far.write_all(b"ST + 256.1 g\r\n+ 3.0 g\r\nST + 254.3 g\r\n").unwrap();
    let second = next(&|now| now.taken).await;
    assert_eq!(second.text, "254.3");

    let (status, body) = ask(&router, "GET", "/api/v1/scales", "").await;
    assert_eq!(status, StatusCode::OK);
    let scales: serde_json::Value = serde_json::from_str(&body).unwrap();
    assert_eq!(scales[0]["scale"], "parts-scale");
    let lines = scales[0]["lines"].as_array().unwrap();
    assert!(lines.iter().any(|l| l["raw"] == "what is this" && l["refused"] == true), "{lines:?}");
    let (_, page) = ask(&router, "GET", "/shop/scales", "").await;
    assert!(page.contains("what is this") && page.contains("refused") && page.contains("254.3"));

    // Pulled out: said, and no figure stands there as if it were now.
    drop(far);
    let lost = next(&|now| !now.connected).await;
    let english = words::Words::english(quantity::Units::default());
    assert!(
        lost.figure.is_none() && lost.trouble.as_ref().is_some_and(|said| english.tell(said).contains("tried again")),
        "{lost:?}"
    );
    let gone = ask(&router, "POST", "/shop/scales/remove", "key=parts-scale").await;
    assert_eq!(gone.0, StatusCode::SEE_OTHER);
    assert!(app.scales().is_empty());
    app.stop_scales().await;
}
