//! Every page that the invented shop leads to, on a tablet in light colours and on a phone in dark ones. Each is opened once
//! and held against all that is asked of any page, since opening it is what takes the time.

use crate::harness::{Bench, Browser};
use crate::{access, legible, pages};

/// Opens a page, and what is wrong with it as it stands: its answer, its headings, its errors, its width, the rules of
/// axe-core, and what is too small.
async fn wrong_with(browser: &Browser, page: &str, width: u32, axe: &str) -> Vec<String> {
    browser.open(page).await;
    let status = browser.value("performance.getEntriesByType('navigation')[0].responseStatus").await;
    let headings = browser.value("document.querySelectorAll('h1').length").await;
    let wide = browser.value("document.scrollingElement.scrollWidth").await;
    let errors = browser.console_errors().await;
    let mut wrong = Vec::new();
    if status != 200 || headings != 1 || wide.as_u64().is_none_or(|w| w > u64::from(width)) || !errors.is_empty() {
        wrong.push(format!("status {status}, {headings} h1, {wide} wide, {errors:?}"));
    }
    wrong.extend(legible::small(browser).await);
    wrong.extend(access::found(browser, axe).await);
    wrong.into_iter().map(|what| format!("{page} at {width}: {what}")).collect()
}

/// The addresses, a browser, and the source of axe-core, once each has been shown to find what is wrong.
async fn ready(bench: &Bench) -> (Browser, String, Vec<String>) {
    let (browser, axe, pages) = (bench.browser().await, access::axe(), pages::all(bench));
    access::is_awake(&browser, &axe).await;
    legible::is_awake(&browser).await;
    assert!(pages.len() > 50, "the links led to {pages:?} only");
    (browser, axe, pages)
}

#[tokio::test]
async fn every_page_on_a_phone_in_dark_colours() {
    let bench = Bench::open();
    let (browser, axe, pages) = ready(&bench).await;
    browser.size(390, 844).await;
    browser.dark(true).await;
    let mut wrong = Vec::new();
    for page in &pages {
        wrong.extend(wrong_with(&browser, page, 390, &axe).await);
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}

#[tokio::test]
async fn every_page_on_a_tablet_also_with_twice_the_text() {
    let bench = Bench::open();
    let (browser, axe, pages) = ready(&bench).await;
    let (lying, upright) = ((1024, 768), (768, 1024));
    browser.dark(false).await;
    let mut wrong = Vec::new();
    for page in &pages {
        browser.size(lying.0, lying.1).await;
        wrong.extend(wrong_with(&browser, page, lying.0, &axe).await);
        // The gallery of components is for those who make pages.
        if page == "/style" {
            continue;
        }
        for (size, larger) in [(lying, false), (upright, false), (upright, true), (lying, true)] {
            browser.size(size.0, size.1).await;
            if larger && size == upright {
                legible::enlarge(&browser).await;
            }
            let how = if larger { " at 200 %" } else { "" };
            let beyond = legible::beyond(&browser).await;
            wrong.extend(beyond.iter().map(|what| format!("{page} at {}{how}: {what}", size.0)));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}
