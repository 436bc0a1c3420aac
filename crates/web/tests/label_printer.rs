//! Goal: a label comes out of the shop's printer at one touch, and a printer that cannot print is told in words with nothing lost. Method:
//! a printer of our own behind a TCP port of this machine, set up on the page; what it was sent, read for its codes.

use crate::demo_past::demo;
use crate::keys::from;
use crate::support::{Bench, stocked};
use axum::http::StatusCode;
use serde_json::json;
use std::io::Read;
use std::net::TcpListener;
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

/// A printer that tells nothing of its state, for some calls; what it was sent comes out of the channel, call by call.
fn printer() -> (u16, Receiver<String>) {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = listener.local_addr().expect("an address").port();
    let (tell, told) = channel();
    std::thread::spawn(move || {
        for call in listener.incoming() {
            let mut heard = Vec::new();
            if call.expect("a call").read_to_end(&mut heard).is_err() || tell.send(heard).is_err() {
                break;
            }
        }
    });
    let (text_tell, text_told) = channel();
    std::thread::spawn(move || {
        while let Ok(bytes) = told.recv() {
            let text: String = bytes.iter().map(|byte| char::from(*byte)).collect();
            if text_tell.send(text).is_err() {
                break;
            }
        }
    });
    (port, text_told)
}

fn next(told: &Receiver<String>) -> String {
    told.recv_timeout(Duration::from_secs(5)).expect("pages")
}

async fn set_up(bench: &Bench, port: u16, size: (&str, &str)) {
    let to = format!("127.0.0.1:{port}");
    let kept = bench
        .form(
            "/shop/printers",
            &[
                ("name", "shelf"),
                ("to", &to),
                ("language", "epl"),
                ("fineness", "203"),
                ("width", size.0),
                ("height", size.1),
                ("gap", "3 mm"),
            ],
        )
        .await;
    assert_eq!((kept.status, kept.location.as_str()), (StatusCode::SEE_OTHER, "/shop/printers"), "{}", kept.text);
}

#[tokio::test]
async fn labels_of_parts_and_clubs_come_out_of_the_shops_printer() {
    let bench = demo().await;
    let (port, told) = printer();
    assert!(bench.page("/labels?clubs=C1").await.text.contains("No printer is set up"));
    set_up(&bench, port, ("62 mm", "29 mm")).await;
    let kept = bench.get("/shop").await;
    assert_eq!(kept["label_printers"][0]["width_mm"], 62.0);
    assert_eq!(kept["label_printers"][0]["language"], "epl");

    let part = bench.get("/parts?limit=1").await["parts"][0]["code"].as_str().expect("a code").to_owned();
    let page = bench.page(&format!("/labels?codes={part}")).await.text;
    assert!(page.contains("Print on shelf") && page.contains(&format!("value=\"{part}\"")), "{page}");
    let sent = bench.form("/labels/print", &[("codes", &part), ("printer", "shelf"), ("copies", "2")]).await;
    sent.says(StatusCode::OK, &["2 labels sent to shelf", "look whether it printed"]);
    let pages = next(&told);
    assert!(pages.contains(&format!(",\"{part}\"\n")) && pages.contains("\nP2\n"), "{pages}");

    // A program prints parts and clubs at once; without a name it is the first printer.
    let clubs = bench.get("/clubs").await;
    let club = clubs[0]["code"].as_str().expect("a code");
    let sent = bench.post("/labels/print", json!({ "codes": [part], "clubs": [club] })).await;
    assert_eq!(sent, (StatusCode::OK, json!({ "printer": "shelf", "labels": 2, "ready": false })));
    let pages = next(&told);
    for code in [part.as_str(), club] {
        assert!(pages.contains(&format!(",eM,iA,\"{code}\"\n")), "{code}: {pages}");
    }
    assert!(bench.page(&format!("/clubs/{club}")).await.text.contains(&format!("/labels?clubs={club}")));
    assert!(bench.page(&format!("/labels?club={club}")).await.text.contains(club));
    bench.form("/labels/test", &[("name", "shelf")]).await.says(StatusCode::OK, &["1 label sent to shelf"]);
    assert!(next(&told).contains("\"TEST-1\""));

    // Nothing to print is no blank label, and what is not there is told.
    for (asked, status, code) in [
        (json!({}), StatusCode::UNPROCESSABLE_ENTITY, "label_fault.nothing"),
        (json!({ "codes": [part], "copies": 51 }), StatusCode::UNPROCESSABLE_ENTITY, "printer_setting.copies"),
        (json!({ "codes": [part], "printer": "attic" }), StatusCode::NOT_FOUND, "printer_setting.unknown"),
        (json!({ "codes": ["NOBODY-1"] }), StatusCode::NOT_FOUND, "not_found.named"),
    ] {
        let (answered, said) = bench.post("/labels/print", asked.clone()).await;
        assert_eq!((answered, said["code"].as_str()), (status, Some(code)), "{asked}: {said}");
    }
    assert!(told.recv_timeout(Duration::from_millis(300)).is_err(), "something was printed");
    // Removed, it is gone.
    bench.form("/shop/printers/remove", &[("name", "shelf")]).await;
    let (status, said) = bench.post("/labels/print", json!({ "codes": [part] })).await;
    assert_eq!((status, said["code"].as_str()), (StatusCode::NOT_FOUND, Some("printer_setting.none")));
}

#[tokio::test]
async fn a_printer_that_is_off_is_told_and_the_page_stays() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let port = TcpListener::bind("127.0.0.1:0").expect("a port").local_addr().expect("an address").port();
    set_up(&bench, port, ("62 mm", "29 mm")).await;
    let part = bench.get("/parts?limit=1").await["parts"][0]["code"].as_str().expect("a code").to_owned();
    let page = bench.form("/labels/print", &[("codes", &part), ("printer", "shelf"), ("copies", "1")]).await;
    page.says(StatusCode::CONFLICT, &["No printer answers at 127.0.0.1", "Switch it on", &part, "Print on shelf"]);
    let (status, said) = bench.post("/labels/print", json!({ "codes": [part] })).await;
    assert_eq!((status, said["code"].as_str()), (StatusCode::CONFLICT, Some("printer_fault.off")));
}

#[tokio::test]
async fn what_cannot_be_a_printer_is_refused_beside_its_field() {
    let bench = Bench::open().await;
    let usual = [
        ("name", "shelf"),
        ("to", "printer.local"),
        ("language", "zpl"),
        ("fineness", "203"),
        ("width", "62 mm"),
        ("height", "29 mm"),
        ("gap", "3 mm"),
    ];
    for (field, value, words) in [
        ("name", "", "needs a name"),
        ("to", "/etc/passwd", "is not the place of a printer"),
        ("to", "http://printer.local", "is not the place of a printer"),
        ("width", "2 mm", "a label has sides of"),
        ("height", "one", "one"),
        ("gap", "90 mm", "gap"),
    ] {
        let fields: Vec<(&str, &str)> =
            usual.iter().map(|(name, was)| (*name, if *name == field { value } else { *was })).collect();
        let answer = bench.form("/shop/printers", &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{field}={value}: {}", answer.text);
        assert!(answer.text.to_lowercase().contains(words), "{field}={value}: {}", answer.text);
    }
    assert_eq!(bench.get("/shop").await["label_printers"], serde_json::Value::Null);
    // Where the program calls is the owner's to say.
    let given = bench.made("/keys", json!({ "name": "b", "role": "builder", "days": 9, "by": "Ines" })).await;
    let bearer = format!("Bearer {}", given["secret"].as_str().expect("a secret"));
    for address in ["/shop/printers", "/shop/printers/remove"] {
        let headers = [("authorization", bearer.as_str()), ("content-type", "application/x-www-form-urlencoded")];
        let answer = from(&bench, "192.168.1.31", "POST", address, &headers, "name=shelf").await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{address}");
    }
}
