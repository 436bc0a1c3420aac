//! Goal: one club's beam, its entries with Keep, the verdict and the first advice stand on the screen together, at every step
//! and in every state that matters, and nothing covers them. Method: measured in the browser, from the top of the page.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};

/// Tablet, phone, large screen.
const SIZES: [(u32, u32); 3] = [(1024, 768), (390, 844), (1600, 1000)];

/// What lies outside of the screen or is covered there, of what a builder must see at once.
async fn outside(browser: &Browser) -> Vec<String> {
    let found = browser
        .value(
            "(() => {
                scrollTo(0, 0);
                const wanted = {
                    beam: '.bench-beam svg', entry: '.bench-decision [data-bench-entry]', keep: '.bench-decision button.big',
                    verdict: '.bench-outlook .verdict', line: '.outlook-line.stands', cause: '.causes li:first-child',
                    advice: '.bench-outlook .advice button', expected: '.expected .figure-value'
                };
                const wrong = [];
                for (const [name, selector] of Object.entries(wanted)) {
                    const shown = [...document.querySelectorAll(selector)].filter((one) => one.getClientRects().length && one.textContent + one.tagName !== 'SPAN');
                    for (const one of shown) {
                        const box = one.getBoundingClientRect();
                        if (box.top < 0 || box.left < -1 || box.bottom > innerHeight + 1 || box.right > innerWidth + 1)
                            wrong.push(`${name} from ${Math.round(box.top)} to ${Math.round(box.bottom)} of ${innerHeight}`);
                        else {
                            const there = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
                            if (there && !one.contains(there) && !there.contains(one)) wrong.push(`${name} is covered by ${there.className || there.tagName}`);
                        }
                    }
                }
                if (document.scrollingElement.scrollWidth > innerWidth) wrong.push(`${document.scrollingElement.scrollWidth} wide`);
                return wrong;
            })()",
        )
        .await;
    found.as_array().expect("a list").iter().map(|one| one.as_str().expect("text").to_owned()).collect()
}

/// How many entries, and whether a beam, a verdict and an advice are there at all: what is not there cannot lie outside.
async fn there(browser: &Browser) -> (u64, bool, bool, bool) {
    let count = browser.value("document.querySelectorAll('.bench-decision [data-bench-entry]').length").await;
    let has = async |selector: &str| {
        browser.value(&format!("!!document.querySelector({})", json!(selector))).await == Value::Bool(true)
    };
    (
        count.as_u64().expect("a number"),
        has(".bench-beam svg").await,
        has(".bench-outlook .verdict").await,
        has(".bench-outlook .advice button").await,
    )
}

async fn looked_at(browser: &Browser, page: &str, wrong: &mut Vec<String>) {
    for (width, height) in SIZES {
        browser.size(width, height).await;
        browser.open(page).await;
        browser.until("'ready' in document.documentElement.dataset").await;
        wrong.extend(outside(browser).await.iter().map(|one| format!("{page} at {width}: {one}")));
    }
}

#[tokio::test]
async fn every_step_of_a_club_fits_one_screen() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let steps = bench.api("/jobs/1")["job"]["steps"].as_array().expect("steps").clone();
    assert!(steps.len() > 13, "{steps:?}");
    let (mut wrong, mut counts) = (Vec::new(), std::collections::BTreeSet::new());
    for step in &steps {
        let page = format!("/bench/1/2?step={}", step["key"].as_str().expect("a key"));
        looked_at(&browser, &page, &mut wrong).await;
        let (entries, beam, verdict, _) = there(&browser).await;
        assert!(beam && verdict, "{page}");
        counts.insert(entries);
    }
    // Those after the cure show their entries once they may be read.
    browser.open("/bench/1").await;
    for step in ["gripped", "finish", "bend", "hand_over"] {
        browser.post("/bench/1/2/let-pass", &format!("step={step}&reason=the joint was tried by hand")).await;
        let page = format!("/bench/1/2?step={step}");
        looked_at(&browser, &page, &mut wrong).await;
        counts.insert(there(&browser).await.0);
    }
    assert!(counts.is_superset(&[1, 2, 3].into()), "pages with one, two and three entries: {counts:?}");
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}

#[tokio::test]
async fn an_advice_and_a_doubt_fit_one_screen() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let expected = |slot: usize| -> f64 {
        let view = bench.api("/jobs/1");
        let steps = view["clubs"][slot - 1]["steps"].as_array().expect("steps").clone();
        let dry = steps.iter().find(|s| s["key"] == "dry").expect("dry");
        dry["asks"][0]["expected"]["value"].as_f64().expect("a forecast")
    };
    let typed = |points: f64| {
        let points = (points * 10.0).round() / 10.0;
        format!("{}{:.1}", char::from(b'A' + (points / 10.0).floor() as u8), points % 10.0)
    };
    browser.open("/bench/1").await;
    for slot in 1..=6_usize {
        let off = if slot % 2 == 0 { -0.9 } else { 0.0 };
        browser
            .post(&format!("/bench/1/{slot}"), &format!("step=dry&read-swing_weight={}", typed(expected(slot) + off)))
            .await;
    }
    browser.post("/bench/1/7", &format!("step=dry&read-swing_weight={}", typed(expected(7) - 4.0))).await;
    let mut wrong = Vec::new();
    looked_at(&browser, "/bench/1/7?step=dry", &mut wrong).await;
    assert!(browser.value("document.querySelectorAll('.causes li').length").await.as_u64() > Some(0));
    let mut advised = 0;
    for slot in 1..=6 {
        looked_at(&browser, &format!("/bench/1/{slot}?step=dry"), &mut wrong).await;
        advised += u32::from(there(&browser).await.3);
    }
    assert!(advised > 0, "no club had an advice");
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}

#[tokio::test]
async fn the_steps_stand_on_one_line_with_room_for_a_thumb() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.size(1024, 768).await;
    for page in ["/bench/1/2?step=dry", "/bench/1/grid/dry"] {
        browser.open(page).await;
        let line = browser
            .value(
                "(() => {
                    const steps = [...document.querySelectorAll('.step-line > ol > li > a')].map((a) => a.getBoundingClientRect());
                    return {
                        n: steps.length, rows: new Set(steps.map((box) => Math.round(box.bottom))).size,
                        least: Math.min(...steps.map((box) => box.height)), right: Math.max(...steps.map((box) => box.right)),
                        cut: [...document.querySelectorAll('.step-line > ol span:first-child')].some((one) => one.scrollWidth > one.clientWidth + 1),
                    };
                })()",
            )
            .await;
        assert!(line["n"].as_u64() > Some(13), "{line}");
        assert_eq!(line["rows"], 1, "{page}: {line}");
        assert!(line["least"].as_f64() >= Some(44.0) && line["right"].as_f64() <= Some(1024.0), "{page}: {line}");
    }
    // A phone shows the one at hand with its neighbours; the others on a touch.
    browser.size(390, 844).await;
    browser.open("/bench/1/2?step=dry").await;
    let shown = browser
        .value(
            "[...document.querySelectorAll('.step-line > ol > li')].filter((li) => li.getClientRects().length).length",
        )
        .await;
    assert_eq!(shown, 3);
    browser.press(".step-all summary").await;
    let all = "[...document.querySelectorAll('.step-all a')].filter((a) => a.getClientRects().length).length";
    assert!(browser.value(all).await.as_u64() > Some(13));
    browser.close().await;
}

#[tokio::test]
async fn a_phone_has_its_own_keypad_and_no_other_screen_has() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.size(1024, 768).await;
    browser.open("/bench/1/2?step=dry").await;
    browser.until("'ready' in document.documentElement.dataset").await;
    assert_eq!(browser.value("document.querySelectorAll('.pad').length").await, 0);
    assert_eq!(browser.value("document.querySelector('[data-bench-entry]').inputMode").await, "text");

    browser.size(390, 844).await;
    browser.open("/bench/1/2?step=dry").await;
    browser.until("document.querySelector('.pad')").await;
    // The system's keyboard stays away; letters are there for a swing weight.
    assert_eq!(browser.value("document.querySelector('[data-bench-entry]').inputMode").await, "none");
    assert_eq!(browser.value("document.querySelector('.pad-letters').hidden").await, false);
    for key in ["E", "9", "1", ".", "1"] {
        let press =
            format!("[...document.querySelectorAll('.pad-key')].find((key) => key.textContent === '{key}').click()");
        browser.value(&press).await;
        if key == "9" {
            browser.value("document.querySelector('.pad-back').closest('button').click()").await;
        }
    }
    assert_eq!(browser.value("document.querySelector('[data-bench-entry]').value").await, "E1.1");
    browser.value("document.querySelector('.pad-keep').click()").await;
    browser.until("location.search.includes('kept=1')").await;
    assert_eq!(bench.readings(2), ["E1.1"]);
    // The page that took the place of the last has its keypad too; a mass needs no letters.
    browser.until("document.querySelector('.pad')").await;
    browser.open("/bench/1/2?step=weighed").await;
    browser.until("document.querySelector('.pad')").await;
    assert_eq!(browser.value("document.querySelector('.pad-letters').hidden").await, true);
    browser.close().await;
}
