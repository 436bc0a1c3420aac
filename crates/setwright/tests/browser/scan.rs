//! Goal: a hand scanner that types is understood on every page and never taken for a reading. Method: the codes of the
//! invented shop, typed as fast as a scanner does.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};

/// Opens a page and waits until its scripts hear the keys.
async fn open(browser: &Browser, path: &str) {
    browser.open(path).await;
    browser.until("document.documentElement.dataset.ready === ''").await;
}

async fn at(browser: &Browser, path: &str) {
    browser.until(&format!("location.pathname + location.search === {}", json!(path))).await;
}

/// The code of the planned part of a kind in a club of job 1.
fn planned(bench: &Bench, slot: usize, kind: &str) -> String {
    let job = bench.api("/jobs/1");
    let parts = job["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts").clone();
    let part = parts.iter().find(|p| p["kind"] == kind).expect("a planned part");
    part["code"].as_str().expect("a code").to_owned()
}

#[tokio::test]
async fn a_code_opens_its_part_from_any_page() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for page in ["/", "/stock", "/plan", "/calc", "/shop", "/records"] {
        open(&browser, page).await;
        browser.enter("S7-03").await;
        at(&browser, "/stock/parts/S7-03").await;
    }
    // The first letter is a key of this page: it waits until it is clear that more follows.
    open(&browser, "/stock").await;
    assert_eq!(browser.value("document.querySelector('[data-key=n]') !== null").await, json!(true));
    browser.enter("n-404").await;
    browser.until("document.querySelector('#scanned')?.textContent.includes('n-404')").await;
    at(&browser, "/stock").await;
    // By itself it is the key.
    browser.keys("n").await;
    at(&browser, "/stock/new").await;
    // In a text field a code is a text.
    open(&browser, "/stock").await;
    browser.value("document.querySelector('#text').focus()").await;
    browser.enter("S7-03").await;
    browser.until("location.search.includes('text=S7-03')").await;
    browser.close().await;
}

#[tokio::test]
async fn at_the_bench_a_scan_is_never_a_reading() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let before = bench.readings(1);
    let (own, others) = (planned(&bench, 1, "head"), planned(&bench, 2, "head"));
    open(&browser, "/bench/1/1?step=dry").await;
    browser.until("document.activeElement?.name === 'read-swing_weight'").await;

    browser.enter(&own).await;
    browser.until("document.querySelector('[data-scan-said]') && document.documentElement.dataset.ready === ''").await;
    assert!(browser.text("[data-scan-said]").await.contains("is already in this 4-iron"));
    browser.enter(&others).await;
    let said = format!(
        "document.querySelector('[data-scan-said={}]') && document.documentElement.dataset.ready === ''",
        json!(others)
    );
    browser.until(&said).await;
    let said = browser.text("[data-scan-said]").await;
    assert!(said.contains("belongs to the 5-iron of job 1"), "{said}");
    // Half a reading is typed, by hand: the scan leaves it as it was.
    browser.keys("D").await;
    tokio::time::sleep(std::time::Duration::from_millis(400)).await;
    browser.enter(&others).await;
    browser.until("document.querySelector('#scanned')?.textContent.startsWith('D is typed and not kept yet')").await;
    assert_eq!(browser.value("document.querySelector('[name=read-swing_weight]').value").await, json!("D"));
    assert_eq!(bench.readings(1), before, "no scan became a reading");
    // A reading typed as fast is a reading.
    browser.enter_instead("D9").await;
    browser.until("location.search.includes('kept=1') && document.documentElement.dataset.ready === ''").await;
    assert_eq!(bench.readings(1).len(), before.len() + 1);
    // A card leads to its club.
    let card = bench.api("/jobs/1")["job"]["clubs"][2]["card"].as_str().expect("a card").to_owned();
    browser.enter(&card).await;
    at(&browser, "/bench/1/3").await;
    browser.close().await;
}

#[tokio::test]
async fn a_free_part_goes_into_the_step_at_hand_and_its_label_twice_does_no_harm() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let old = planned(&bench, 3, "head");
    let number = bench.api("/jobs/1")["job"]["clubs"][2]["target"]["number"].as_str().expect("a number").to_owned();
    let model = bench.api(&format!("/parts/{old}"))["model"].as_str().expect("a model").to_owned();
    let free = bench.api(&format!("/parts?model={model}&number={number}&state=free"));
    let new = free["parts"][0]["code"].as_str().expect("a free head").to_owned();
    // This step takes no head.
    open(&browser, "/bench/1/3?step=tip").await;
    browser.enter(&new).await;
    browser.until("document.querySelector('[data-scan-said]')").await;
    assert!(browser.text("[data-scan-said]").await.contains("This step takes: tip weight"));
    assert_eq!(planned(&bench, 3, "head"), old);
    open(&browser, "/bench/1/3?step=weighed").await;
    browser.enter(&new).await;
    browser.until("location.search.includes('put=1') && document.documentElement.dataset.ready === ''").await;
    assert!(browser.text("[data-scan-said]").await.contains("is the head of this"));
    assert_eq!(planned(&bench, 3, "head"), new);
    let version = |bench: &Bench| bench.api("/jobs/1")["job"]["clubs"][2]["version"].clone();
    let stands = version(&bench);
    browser.enter(&new).await;
    browser.until("!location.search.includes('put=1') && document.querySelector('[data-scan-said]')").await;
    assert!(browser.text("[data-scan-said]").await.contains("already in this"));
    assert_eq!((version(&bench), bench.api(&format!("/parts/{old}"))["state"].clone()), (stands, Value::from("free")));
    browser.close().await;
}
