//! Every page on a phone and on a tablet.

use crate::harness::Bench;
use crate::pages;

#[tokio::test]
async fn no_page_scrolls_sideways_or_complains() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let pages = pages::all(&bench);
    let mut wrong = Vec::new();
    for (width, height) in [(390, 844), (1024, 768)] {
        browser.size(width, height).await;
        for page in &pages {
            browser.open(page).await;
            let status = browser.value("performance.getEntriesByType('navigation')[0].responseStatus").await;
            let headings = browser.value("document.querySelectorAll('h1').length").await;
            let wide = browser.value("document.scrollingElement.scrollWidth").await;
            let errors = browser.console_errors().await;
            let fits = wide.as_u64().is_some_and(|w| w <= u64::from(width));
            if status != 200 || headings != 1 || !fits || !errors.is_empty() {
                wrong.push(format!("{page} at {width}: status {status}, {headings} h1, {wide} wide, {errors:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}
