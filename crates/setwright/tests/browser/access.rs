//! Every page held against the rules of axe-core, in both colour schemes, on a tablet and on a phone.

use crate::harness::{Bench, Browser};
use serde_json::Value;
use std::process::Command;

const PAGES: [&str; 50] = [
    "/",
    "/sheets",
    "/sheets/new",
    "/sheets/file",
    "/stock",
    "/stock/new",
    "/stock/new?model=SISKIN&number=7&kept=S7-03",
    "/bench/1/1?step=weighed&scanned=S5-01",
    "/stock/import",
    "/stock/needs",
    "/stock/sort?model=SISKIN&number=7",
    "/stock/ask?job=1",
    "/stock/parts/S7-01",
    "/orders",
    "/orders/2",
    "/orders/new",
    "/stock/models",
    "/stock/models/new",
    "/stock/models/file",
    "/plan",
    "/plan/day",
    "/plan/1",
    "/plan/1/again",
    "/plan/1/cards",
    "/plan/2",
    "/plan/2/options",
    "/bench",
    "/bench/1",
    "/bench/1/1?step=cut",
    "/bench/1/1?step=dry",
    "/bench/1/1?step=glue",
    "/bench/1/grid/dry",
    "/glue",
    "/glue/new?job=1",
    "/records",
    "/records/1",
    "/learned",
    "/capability",
    "/scales",
    "/scales/mass",
    "/scales/mass/check",
    "/scales/setup",
    "/scales/studies/new",
    "/shop",
    "/shop/scales",
    "/labels",
    "/calc",
    "/calc/balance",
    "/calc/frequency",
    "/calc/glue",
    "/calc/grip-size",
    "/calc/inertia",
    "/calc/lie",
    "/calc/pluck",
    "/calc/soft-side",
    "/calc/trim",
    "/style",
];

/// The checker's source, fetched once into the target folder.
fn axe() -> String {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/../../scripts/axe-for-tests");
    let told = Command::new(script).output().expect("scripts/axe-for-tests can be run");
    assert!(told.status.success(), "axe-core was not fetched: {}", String::from_utf8_lossy(&told.stderr));
    let path = String::from_utf8(told.stdout).expect("a path");
    std::fs::read_to_string(path.trim()).expect("axe-core")
}

/// What the checker finds on the page that is open, each with the elements it means.
async fn found(browser: &Browser, axe: &str) -> Vec<String> {
    browser.driver.execute(axe, vec![]).await.expect("axe-core runs");
    let violations = browser
        .value(
            "axe.run(document, { resultTypes: ['violations'] }).then(result => result.violations.map(v => \
             `${v.impact} ${v.id}: ${v.nodes.slice(0, 3).map(n => n.html.slice(0, 200)).join(' | ')}`))",
        )
        .await;
    let list = violations.as_array().expect("a list").iter();
    list.map(|v| v.as_str().expect("text").to_owned()).collect()
}

/// The demo's pages whose addresses it makes anew each time.
fn made(bench: &Bench) -> Vec<String> {
    let sheets = bench.api("/sheets");
    let id = sheets.as_array().and_then(|list| list.first()).and_then(|sheet| sheet["id"].as_str());
    let id = id.unwrap_or_else(|| panic!("the demo has no sheet: {sheets}"));
    let models = bench.api("/models");
    let first =
        |list: &Value| list.as_array().and_then(|l| l.first()).and_then(|m| m["code"].as_str()).map(str::to_owned);
    let code = first(&models).unwrap_or_else(|| panic!("the demo has no model: {models}"));
    let studies = bench.api("/gauge-studies");
    let study = studies.as_array().and_then(|list| list.first()).and_then(|study| study["id"].as_str());
    let study = study.unwrap_or_else(|| panic!("the demo has no gauge study: {studies}"));
    vec![
        format!("/sheets/{id}"),
        format!("/sheets/{id}/clubs/0"),
        format!("/stock/models/{code}"),
        format!("/scales/studies/{study}"),
        // A reading of a study that is corrected: the screen of one reading.
        format!("/scales/studies/{study}?place=3"),
    ]
}

#[tokio::test]
async fn no_page_breaks_a_rule_of_axe() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let axe = axe();
    // The checker itself must find what is wrong, or silence means nothing.
    browser.open("/").await;
    browser.value("document.querySelector('main').insertAdjacentHTML('beforeend', '<button></button>')").await;
    assert!(found(&browser, &axe).await.iter().any(|line| line.contains("button-name")));

    let mut wrong = Vec::new();
    for (width, height, dark) in [(1024, 768, false), (390, 844, true)] {
        browser.size(width, height).await;
        browser.dark(dark).await;
        for page in PAGES.iter().map(|page| (*page).to_owned()).chain(made(&bench)) {
            browser.open(&page).await;
            let status = browser.value("performance.getEntriesByType('navigation')[0].responseStatus").await;
            if status != 200 {
                wrong.push(format!("{page}: status {status}"));
            }
            wrong.extend(found(&browser, &axe).await.iter().map(|line| format!("{page} at {width}: {line}")));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}
