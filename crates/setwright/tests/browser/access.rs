//! Every page held against the rules of axe-core, in both colour schemes, on a tablet and on a phone.

use crate::harness::{Bench, Browser};
use crate::pages;
use std::process::Command;

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

#[tokio::test]
async fn no_page_breaks_a_rule_of_axe() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let axe = axe();
    // The checker itself must find what is wrong, or silence means nothing.
    browser.open("/").await;
    browser.value("document.querySelector('main').insertAdjacentHTML('beforeend', '<button></button>')").await;
    assert!(found(&browser, &axe).await.iter().any(|line| line.contains("button-name")));

    let pages = pages::all(&bench);
    assert!(pages.len() > 50, "the links led to {pages:?} only");
    let mut wrong = Vec::new();
    for (width, height, dark) in [(1024, 768, false), (390, 844, true)] {
        browser.size(width, height).await;
        browser.dark(dark).await;
        for page in &pages {
            browser.open(page).await;
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
