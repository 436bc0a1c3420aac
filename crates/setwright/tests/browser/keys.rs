//! The keys of a tablet: its pedal learned by pressing it, single letters switched off, the list of keys by key and by touch.

use crate::harness::{Bench, Browser};

const PAGE_DOWN: char = '\u{e00f}';
const F7: char = '\u{e037}';
const ARROW_LEFT: char = '\u{e012}';

async fn ready(browser: &Browser) {
    browser.until("document.readyState === 'complete' && 'ready' in document.documentElement.dataset").await;
}

async fn entry_of(browser: &Browser, slot: i64) {
    let at = format!(
        "'ready' in document.documentElement.dataset && document.activeElement?.matches('[data-bench-entry]')
            && document.querySelector('[name=slot]')?.value === '{slot}'"
    );
    browser.until(&at).await;
}

#[tokio::test]
async fn the_pedal_is_learned_by_pressing_it() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/tablet").await;
    ready(&browser).await;
    browser.value("document.querySelector('[name=pedal]').focus()").await;
    // What moves the cursor or types is no pedal, and the page says so.
    browser.keys(ARROW_LEFT.to_string()).await;
    browser.until("document.querySelector('[data-learn-pedal] [role=status]').textContent.includes('ArrowLeft')").await;
    browser.keys("b").await;
    assert_eq!(browser.value("document.querySelector('[name=pedal]').value").await, "");
    browser.keys(PAGE_DOWN.to_string()).await;
    browser.until("document.querySelector('[name=pedal]').value === 'PageDown'").await;
    browser.press("main form[action='/tablet'] .actions button").await;
    browser.until("location.search === '?kept=1'").await;

    browser.open("/bench/1/grid/cpm").await;
    entry_of(&browser, 1).await;
    browser.keys("252").await;
    // The function key that was the pedal before is none now.
    browser.keys(F7.to_string()).await;
    assert_eq!(browser.value("document.querySelector('[name=typed]').value").await, "252");
    browser.keys(PAGE_DOWN.to_string()).await;
    entry_of(&browser, 2).await;
    assert_eq!(bench.readings(1), ["252"]);

    // Without script a name can be typed; one that cannot be a pedal is refused beside the field, and nothing is kept.
    let wrong = "fetch('/tablet', { method: 'POST', body: new URLSearchParams('pedal=Tab&letters=on&theme=dark') })
        .then(async (a) => `${a.status} ${(await a.text()).includes('cannot be the pedal')}`)";
    assert_eq!(browser.value(wrong).await, "422 true");
    browser.open("/tablet").await;
    assert_eq!(browser.value("document.querySelector('[name=pedal]').value").await, "PageDown");
    browser.close().await;
}

#[tokio::test]
async fn single_letters_can_be_switched_off() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/tablet").await;
    ready(&browser).await;
    browser.value("document.querySelector('[name=letters]').click()").await;
    browser.press("main form[action='/tablet'] .actions button").await;
    browser.until("location.search === '?kept=1'").await;
    browser.open("/bench/1/3?step=dry").await;
    ready(&browser).await;
    assert_eq!(
        browser.value("[...document.querySelectorAll('kbd.letter')].filter((k) => k.offsetParent).length").await,
        0
    );
    browser.value("document.activeElement.blur()").await;
    for key in ["a", "n", "?"] {
        browser.one_key(key).await;
    }
    tokio::time::sleep(std::time::Duration::from_millis(300)).await;
    assert_eq!(browser.value("location.pathname + String(document.querySelector('dialog'))").await, "/bench/1/3null");
    // A letter goes into the entry at once, and Enter works as before.
    browser.value("document.querySelector('[data-bench-entry]').focus()").await;
    browser.one_key("a").await;
    assert_eq!(browser.value("document.querySelector('[data-bench-entry]').value").await, "a");
    let dry = browser.text(".expected .figure-value").await;
    browser.enter_instead(&dry).await;
    browser.until("location.search.includes('kept=1')").await;
    assert_eq!(bench.readings(3), [dry]);
    browser.close().await;
}

#[tokio::test]
async fn the_keys_of_a_page_are_listed_by_key_and_by_touch() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/3?step=dry").await;
    ready(&browser).await;
    browser.value("document.activeElement.blur()").await;
    browser.one_key("?").await;
    browser.until("document.querySelector('dialog[open] kbd')").await;
    let listed = browser.text("dialog dl").await;
    for key in ["A", "N"] {
        let cap = format!("[...document.querySelectorAll('dialog kbd')].some((k) => k.textContent === '{key}')");
        assert_eq!(browser.value(&cap).await, true, "{key}: {listed}");
    }
    browser.press("dialog button").await;
    browser.until("!document.querySelector('dialog')").await;
    assert_eq!(browser.value("location.pathname").await, "/bench/1/3");
    // By touch: the word in the foot of every page, large enough for a finger.
    let high = browser.value("document.querySelector('[data-key-list]').getBoundingClientRect().height").await;
    assert!(high.as_f64().expect("a height") >= 44.0, "{high}");
    browser.value("document.querySelector('[data-key-list]').click()").await;
    browser.until("document.querySelector('dialog[open]')").await;
    // Without script the same word leads to the list of all keys.
    let all = bench.page("/tablet").expect("the page");
    assert!(all.contains("id=\"keys\"") && all.contains("<kbd>Z</kbd>"));
    browser.close().await;
}

#[tokio::test]
async fn a_full_grid_is_read_again_by_touch_and_by_key() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/grid/cpm").await;
    for slot in 1..=8 {
        entry_of(&browser, slot).await;
        browser.enter(&(244 + 4 * slot).to_string()).await;
        browser.until(&format!("location.search.includes('kept={slot}')")).await;
    }
    // Opened anew, full: the row of the third is touched and read again.
    browser.open("/bench/1/grid/cpm").await;
    ready(&browser).await;
    assert_eq!(browser.value("document.querySelectorAll('.set-grid .grid-again').length").await, 8);
    let high =
        browser.value("document.querySelectorAll('.set-grid .grid-again')[2].getBoundingClientRect().height").await;
    assert!(high.as_f64().expect("a height") >= 44.0, "{high}");
    browser.value("document.querySelectorAll('.set-grid .grid-again')[2].click()").await;
    entry_of(&browser, 3).await;
    browser.enter("257").await;
    browser.until("location.search.includes('kept=3')").await;
    assert_eq!(bench.readings(3), ["257"]);
    // R reads the last one again, Z takes it back: also on a page that was opened after it.
    browser.open("/bench/1/grid/cpm").await;
    ready(&browser).await;
    browser.one_key("r").await;
    entry_of(&browser, 3).await;
    browser.enter("258").await;
    browser.until("location.search.includes('kept=3')").await;
    browser.open("/bench/1/grid/cpm").await;
    ready(&browser).await;
    browser.one_key("z").await;
    entry_of(&browser, 3).await;
    assert_ne!(bench.readings(3), ["258"]);
    browser.close().await;
}

#[tokio::test]
async fn colours_and_commas_are_the_tablets_own() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.dark(true).await;
    browser.open("/tablet").await;
    let form = "theme=light&decimal=comma&letters=on&pedal=";
    browser.post("/tablet", form).await;
    browser.open("/bench/1/1?step=dry").await;
    ready(&browser).await;
    let scheme = "getComputedStyle(document.documentElement).colorScheme";
    assert_eq!(browser.value(scheme).await, "light");
    let expected = browser.text(".expected .figure-value").await;
    assert!(expected.contains(',') && !expected.contains('.'), "{expected}");
    // No figure of the page is printed with a point; what is typed with a comma is read.
    let points = "[...document.querySelector('main').innerText.matchAll(/\\d\\.\\d/g)].map((m) => m.input.slice(m.index - 20, m.index + 9))";
    assert_eq!(browser.value(points).await, serde_json::json!([]));
    browser.value("document.querySelector('[data-bench-entry]').focus()").await;
    browser.enter(&expected).await;
    browser.until("location.search.includes('kept=1')").await;
    assert_eq!(bench.readings(1), [expected]);
    // Another tablet has its own.
    let other = bench.browser().await;
    other.dark(true).await;
    other.open("/bench/1/2?step=dry").await;
    assert_eq!(other.value(scheme).await, "dark");
    assert!(other.text(".foot .version").await.starts_with("Setwright "));
    other.close().await;
    browser.close().await;
}
