//! A page held against the rules of axe-core.

use crate::harness::Browser;
use std::process::Command;

/// The checker's source, fetched once into the target folder.
pub fn axe() -> String {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/../../scripts/axe-for-tests");
    let told = Command::new(script).output().expect("scripts/axe-for-tests can be run");
    assert!(told.status.success(), "axe-core was not fetched: {}", String::from_utf8_lossy(&told.stderr));
    let path = String::from_utf8(told.stdout).expect("a path");
    std::fs::read_to_string(path.trim()).expect("axe-core")
}

/// What the checker finds on the page that is open, each with the elements it means.
pub async fn found(browser: &Browser, axe: &str) -> Vec<String> {
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

/// Fails where the checker is blind: what is wrong must be found, or silence means nothing.
pub async fn is_awake(browser: &Browser, axe: &str) {
    browser.open("/").await;
    browser.value("document.querySelector('main').insertAdjacentHTML('beforeend', '<button></button>')").await;
    assert!(found(browser, axe).await.iter().any(|line| line.contains("button-name")));
}
