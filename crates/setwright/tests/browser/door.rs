//! Goal: a page of another site that the builder has open can neither change nor show nor read the shop. Method: such
//! a page in a real browser, from another port of this machine and from another name, tries a script, forms, a frame
//! and a foreign name that points here; then the shop is compared with what it was.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};
use std::io::{BufRead, BufReader, Write};
use std::net::TcpListener;

/// A site of somebody else: serves one page to every request, until the program ends. Returns its port.
fn another_site(page: String) -> u16 {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = listener.local_addr().expect("an address").port();
    std::thread::spawn(move || {
        for stream in listener.incoming() {
            let (Ok(mut stream), page) = (stream, page.clone()) else { continue };
            // A browser opens connections ahead and asks nothing on them for a while: none may hold up another.
            std::thread::spawn(move || {
                let head = BufReader::new(&stream).lines().map_while(Result::ok).take_while(|line| !line.is_empty());
                let _ = head.count();
                let _ = write!(
                    stream,
                    "HTTP/1.1 200 OK\r\nContent-Type: text/html; charset=utf-8\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{page}",
                    page.len()
                );
            });
        }
    });
    port
}

/// What the shop has that such a page would like to change.
fn picture(bench: &Bench) -> Value {
    json!([
        bench.api("/jobs"),
        bench.api("/jobs/1"),
        bench.api("/shop"),
        bench.api("/parts?text=EVIL"),
        bench.api("/batches")
    ])
}

/// The page: what it could send by script is sent at once; forms and the frame are there to be used.
fn evil_page(shop: &str) -> String {
    let part =
        json!({ "code": "EVIL-1", "kind": "head", "model": "SISKIN", "number": "7", "mass_g": 266.0 }).to_string();
    let reading = json!({ "slot": 8, "step": "dry", "by": "evil page", "entries": [{ "what": "swing_weight", "typed": "D9.9" }] });
    format!(
        r#"<!DOCTYPE html><title>Elsewhere</title><h1>Elsewhere</h1>
<form id="urlencoded" method="post" action="{shop}/plan/2/drop"><input name="reason" value="evil"></form>
<form id="glue" method="post" action="{shop}/glue/new">
  <input name="job" value="1"><input name="slot" value="1"><input name="lot" value="EVIL"></form>
<form id="plain" method="post" enctype="text/plain" action="{shop}/api/v1/parts"><input name='{{"x":"' value='"}}'></form>
<iframe id="frame" src="{shop}/bench/1/1"></iframe>
<script>
window.told = [];
const send = (path, body, headers) =>
  fetch("{shop}" + path, {{ method: "POST", mode: "no-cors", headers, body, credentials: "include" }})
    .then((a) => told.push(path + " " + a.type + " " + a.status), (e) => told.push(path + " " + e));
Promise.all([
  send("/api/v1/parts", JSON.stringify({part}), {{ "Content-Type": "text/plain" }}),
  send("/api/v1/parts", new Blob([JSON.stringify({part})])),
  send("/api/v1/jobs/1/readings", JSON.stringify({reading}), {{ "Content-Type": "text/plain" }}),
  send("/bench/1/8", new URLSearchParams({{ step: "dry", "read-swing_weight": "D9.9" }})),
  send("/api/v1/jobs/2/drop", JSON.stringify({{ reason: "evil", by: "evil" }}), {{ "Content-Type": "text/plain" }}),
  fetch("{shop}/api/v1/jobs").then((a) => a.text()).then((t) => told.push("read " + t.length), () => told.push("unread")),
  fetch("{shop}/api/v1/parts", {{ method: "POST", headers: {{ "Content-Type": "application/json" }}, body: JSON.stringify({part}) }})
    .then((a) => told.push("asked " + a.status), () => told.push("not even asked")),
]).then(() => (window.done = true));
</script>"#
    )
}

/// Tries everything from one foreign address.
async fn attacked(bench: &Bench, browser: &Browser, site: &str) {
    let before = picture(bench);
    let shop = &bench.address;
    browser.driver.goto(site).await.expect("the other site");
    browser.until("window.done").await;
    let told = browser.value("window.told").await.to_string();
    assert!(told.contains("unread") && told.contains("not even asked"), "{site}: {told}");
    assert!(!told.contains("\"read "), "{site} read the jobs: {told}");
    // Nothing of the shop is in the frame: the browser shows an error page of its own, which has no address of ours.
    let framed = browser.driver.find(thirtyfour::By::Id("frame")).await.expect("the frame");
    framed.enter_frame().await.expect("into the frame");
    let in_frame = browser.text("body").await;
    assert!(!in_frame.contains("Bench") && !in_frame.contains("expected"), "{site}: {in_frame}");
    browser.driver.enter_default_frame().await.expect("out of the frame");
    for form in ["urlencoded", "glue", "plain"] {
        browser.driver.goto(site).await.expect("the other site");
        browser.until("window.done").await;
        browser.value(&format!("document.getElementById('{form}').submit()")).await;
        browser.until("document.title.startsWith('Refused') || document.body.innerText.includes('foreign_page')").await;
        let said = browser.text("body").await;
        assert!(said.contains("nothing was changed"), "{form} from {site}: {said}");
    }
    assert_eq!(picture(bench), before, "{site} changed something at {shop}");
}

#[tokio::test]
async fn a_page_of_another_site_changes_shows_and_reads_nothing() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let port = another_site(evil_page(&bench.address));
    // The builder has used the shop in this browser: his cookies are there.
    browser.open("/").await;
    browser.post("/shop/who", "name=Ines&units=in+g").await;
    for host in ["127.0.0.1", "evil.example"] {
        attacked(&bench, &browser, &format!("http://{host}:{port}/")).await;
    }

    // The foreign name points at this machine now, so that for the browser the shop is of its own origin.
    let shop_port = bench.address.rsplit(':').next().expect("a port").to_owned();
    browser.driver.goto(format!("http://evil.example:{shop_port}/sheets")).await.expect("an answer");
    let said = browser.text("body").await;
    assert!(said.contains("does not go by the name") && !said.contains("iron"), "{said}");
    let read = browser.value("fetch('/api/v1/jobs').then((a) => a.text())").await.to_string();
    assert!(read.contains("unknown_name"), "{read}");
    browser.close().await;
}
