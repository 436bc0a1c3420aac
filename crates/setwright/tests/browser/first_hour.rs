//! Goal: from an empty shop to the first reading of one club with its builder's own figures in at most 12 touches and 45 keys,
//! on a tablet and, with a typing error on the way, on a phone. Reloading, going back and a second tablet lose nothing.
//!
//! Method: a real browser; every key that is pressed and every place that is touched is counted, digits too.

use crate::harness::{Bench, Browser};
use serde_json::json;

const TOUCHES: usize = 12;
const KEYS: usize = 45;

/// A hand at a tablet, and what it did.
struct Hand<'a> {
    browser: &'a Browser,
    touches: usize,
    keys: usize,
}

impl<'a> Hand<'a> {
    fn at(browser: &'a Browser) -> Self {
        Self { browser, touches: 0, keys: 0 }
    }

    /// One touch of something that can be seen.
    async fn touch(&mut self, selector: &str) {
        let seen = format!("document.querySelector({})?.offsetParent", json!(selector));
        self.browser.until(&seen).await;
        self.browser.press(selector).await;
        self.touches += 1;
    }

    /// Keys to the field that has the cursor.
    async fn types(&mut self, text: &str) {
        self.browser.keys(text).await;
        self.keys += text.chars().count();
    }

    async fn next_field(&mut self) {
        self.types("\u{e004}").await;
    }

    async fn enter(&mut self) {
        self.browser.enter("").await;
        self.keys += 1;
    }

    /// The page at an address, with the cursor where it begins to type.
    async fn comes_to(&self, path: &str, field: &str) {
        self.browser
            .until(&format!(
                "document.readyState === 'complete' && location.pathname.startsWith({}) && (document.activeElement?.name ?? '').includes({})",
                json!(path),
                json!(field)
            ))
            .await;
    }

    async fn count_holds(&self) {
        assert!(self.touches <= TOUCHES, "{} touches", self.touches);
        assert!(self.keys <= KEYS, "{} keys", self.keys);
        println!("{} touches, {} keys", self.touches, self.keys);
    }
}

/// The masses of head, shaft and grip, each ended by the key that goes on.
async fn weigh(hand: &mut Hand<'_>) {
    hand.comes_to("/begin/parts/", "-head").await;
    hand.types("268.4").await;
    hand.next_field().await;
    hand.types("113.2").await;
    hand.next_field().await;
    hand.types("50.3").await;
    hand.enter().await;
}

/// From the plan to the first reading.
async fn plan_and_read(bench: &Bench, hand: &mut Hand<'_>) {
    hand.touch("form[action='/plan/1'] button").await;
    hand.touch("main a.button.primary[href='/bench/1']").await;
    hand.browser.until("location.pathname.startsWith('/bench/1')").await;
    hand.browser.until("document.activeElement?.tagName === 'INPUT'").await;
    // The first thing that the bench asks is the loft of the head that came.
    hand.types("30.5").await;
    hand.enter().await;
    hand.browser
        .until("location.search.includes('kept') || document.querySelector('[data-kept], .readings, output')")
        .await;
    for _ in 0..50 {
        if !bench.readings(1).is_empty() {
            return;
        }
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    }
    panic!("no reading was kept: {}", hand.browser.text("main").await);
}

#[tokio::test]
async fn the_first_reading_takes_few_touches_and_keys_on_a_tablet() {
    let bench = Bench::empty();
    let browser = bench.browser().await;
    browser.size(1024, 768).await;
    browser.open("/").await;
    let mut hand = Hand::at(&browser);
    hand.touch("main a.button.primary").await;
    hand.comes_to("/begin", "joint.points").await;
    hand.types("0.7").await;
    hand.enter().await;
    hand.comes_to("/begin/set", "player").await;
    hand.types("Ann").await;
    hand.next_field().await;
    hand.types("7, D2").await;
    hand.enter().await;
    weigh(&mut hand).await;
    plan_and_read(&bench, &mut hand).await;
    hand.count_holds().await;
    browser.close().await;
}

#[tokio::test]
async fn a_typing_error_a_reload_and_another_tablet_lose_nothing_on_a_phone() {
    let bench = Bench::empty();
    let browser = bench.browser().await;
    browser.size(390, 844).await;
    browser.open("/").await;
    let mut hand = Hand::at(&browser);
    hand.touch("main a.button.primary").await;
    hand.comes_to("/begin", "joint.points").await;
    // Nothing is known: on at once, and back for a look, and on again.
    hand.enter().await;
    hand.comes_to("/begin/set", "player").await;
    browser.value("history.back()").await;
    browser
        .until("location.pathname === '/begin' && document.querySelector('[name=adhesive]')?.value === 'ANY-EPOXY-DAY'")
        .await;
    browser.value("history.forward()").await;
    hand.comes_to("/begin/set", "").await;
    browser.value("document.querySelector('[name=player]').focus()").await;
    hand.types("Bo").await;
    hand.next_field().await;
    hand.types("7,, X2").await;
    hand.enter().await;
    browser.until("document.querySelector('#written-error')").await;
    assert_eq!(
        browser.value("document.querySelector('[name=player]').value").await,
        json!("Bo"),
        "what was right stays"
    );
    browser.value("document.querySelector('[name=written]').select()").await;
    browser.enter("7, D2").await;
    hand.comes_to("/begin/parts/", "-head").await;
    // The page is loaded again.
    let at = browser.value("location.pathname").await;
    browser.open(at.as_str().expect("a path")).await;
    hand.comes_to("/begin/parts/", "-head").await;
    // Another tablet goes on where this one is.
    let other = bench.browser().await;
    other.size(1024, 768).await;
    other.open("/").await;
    let mut second = Hand::at(&other);
    second.touch("ol.guide a.button.primary").await;
    weigh(&mut second).await;
    other.until("location.pathname === '/plan/1'").await;
    // The first one's page is out of date, and leads on all the same: nothing is made twice.
    browser.open(at.as_str().expect("a path")).await;
    let mut hand = Hand::at(&browser);
    hand.touch("main form button").await;
    browser.until("location.pathname === '/plan/1'").await;
    assert_eq!(bench.api("/jobs").as_array().map(Vec::len), Some(1));
    assert_eq!(bench.api("/parts?kind=head")["total"], json!(1));
    plan_and_read(&bench, &mut hand).await;
    let wide = browser.value("document.scrollingElement.scrollWidth").await;
    assert!(wide.as_u64().is_some_and(|wide| wide <= 390), "{wide}");
    browser.close().await;
    other.close().await;
}
