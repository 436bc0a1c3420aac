//! Goal: parts come in by the hundred without a pointer, by keyboard and by a scale; each is kept once and asked about
//! where its mass speaks for something else. Method: the invented shop's Redstart irons, 14 heads of each number in
//! stock; a pseudo-terminal stands for the scale's cable. Nothing is timed.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};
use std::io::Write;

/// Heads of one Redstart number that are in stock before.
const BEFORE: usize = 14;

/// The heads of a number, in the order in which they came in.
fn heads(bench: &Bench, number: &str) -> Vec<Value> {
    let found = bench.api(&format!("/parts?model=REDSTART&number={number}"));
    let parts = found["parts"].as_array().expect("parts");
    parts.iter().filter(|p| p["state"] != "rejected").cloned().collect()
}

/// What a head of this number weighs by its model.
fn nominal(bench: &Bench, number: &str) -> f64 {
    let model = bench.api("/models/REDSTART");
    let numbers = model["numbers"].as_array().expect("numbers");
    numbers.iter().find(|n| n["number"] == number).and_then(|n| n["mass_g"].as_f64()).expect("a mass")
}

/// Counts pointers and page loads from here on, and keeps the codes of the labels that are sent to the printer.
async fn watch(browser: &Browser) {
    let watch = "(window.pointers = 0, window.labels = [],
        ['pointerdown', 'mousedown', 'touchstart'].forEach((e) => addEventListener(e, () => (window.pointers += 1), true)),
        window.print = () => window.labels.push(document.querySelector('[data-weigh-label]').dataset.weighLabel), 1)";
    browser.value(watch).await;
}

async fn dots(browser: &Browser, count: usize) {
    browser.until(&format!("document.querySelectorAll('#heap .calc-wide circle').length === {count}")).await;
}

#[tokio::test]
async fn a_hundred_heads_by_keyboard_without_a_pointer() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/stock/new").await;
    browser.post("/stock/new/settings", "print_labels=1&sound=1").await;
    browser.open("/stock/new?model=REDSTART").await;
    browser.press("a[href*='number=7']").await;
    browser.until("document.activeElement?.name === 'mass'").await;
    watch(&browser).await;
    let (seven, eight) = (nominal(&bench, "7"), nominal(&bench, "8"));
    let mut typed = Vec::new();
    for i in 0..100_u32 {
        // Four grams from end to end, as a lot may be, and one head of the next number among them.
        let mass = if i == 50 { eight } else { seven - 2.0 + f64::from(i * 37 % 41) / 10.0 };
        let text = format!("{mass:.1}");
        browser.enter(&text).await;
        if i == 50 {
            browser.until("document.querySelector('[data-weigh-sign=ask]')").await;
            assert!(browser.text(".weigh-sign").await.contains("it looks like the next number, 8"));
            assert_eq!(heads(&bench, "7").len(), BEFORE + 50, "not kept before it is answered");
            assert_eq!(browser.value("document.querySelector('[name=mass]').value").await, json!(text));
            // Enter, which the hand presses after every part, answers nothing.
            let key = "document.querySelector('[data-weigh] [name=request_key]').value";
            let before = browser.value(key).await;
            browser.enter("").await;
            browser.until(&format!("{key} !== {before} && document.querySelector('[data-weigh-sign=ask]')")).await;
            assert_eq!(heads(&bench, "7").len(), BEFORE + 50);
            browser.press("button[name=sure]").await;
        }
        dots(&browser, BEFORE + typed.len() + 1).await;
        browser.until("document.activeElement?.name === 'mass' && document.activeElement.value === ''").await;
        typed.push(text);
    }
    // The last one was wrong: one key, and the code is free for it again.
    let last = browser.value("document.querySelector('[data-weigh-code]').dataset.weighCode").await;
    browser.keys("z").await;
    dots(&browser, BEFORE + 99).await;
    browser.until("!document.querySelector('[data-weigh-sign]') && document.activeElement?.name === 'mass'").await;
    browser.enter(&typed[99]).await;
    dots(&browser, BEFORE + 100).await;
    browser.until("document.querySelector('[data-weigh-code]')").await;
    assert_eq!(browser.value("document.querySelector('[data-weigh-code]').dataset.weighCode").await, last);

    let kept: Vec<String> =
        heads(&bench, "7")[BEFORE..].iter().map(|p| p["mass_typed"].as_str().expect("typed").to_owned()).collect();
    assert_eq!(kept, typed);
    assert_eq!(browser.value("window.pointers").await, json!(0), "no pointer, and no page loaded anew");
    crate::printing::prints_labels(&browser, 1).await;
    // The last label is printed after its part is shown: on a busy machine a moment later.
    browser.until("window.labels.length >= 101").await;
    let labels = browser.value("window.labels").await;
    let labels: Vec<&str> = labels.as_array().expect("labels").iter().filter_map(Value::as_str).collect();
    assert_eq!(labels.len(), 101, "one for each part that was kept, the one weighed again twice");
    let codes: Vec<String> =
        heads(&bench, "7")[BEFORE..].iter().map(|p| p["code"].as_str().expect("a code").to_owned()).collect();
    assert_eq!(labels[..100], codes);
    let errors: Vec<String> = browser.console_errors().await;
    // A question comes with the status of an entry that is not kept.
    assert!(errors.iter().all(|e| e.contains("422")), "{errors:?}");
    browser.close().await;
}

#[tokio::test]
async fn a_head_without_scripts_and_its_question() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.scripts_off().await;
    browser.open("/stock/new?model=REDSTART&number=7").await;
    let (seven, eight) = (nominal(&bench, "7"), nominal(&bench, "8"));
    let ready = "document.activeElement?.name === 'mass'";
    browser.until(ready).await;
    browser.enter(&format!("{seven:.1}")).await;
    browser.until("document.querySelector('[data-weigh-sign=kept]')").await;
    browser.until(ready).await;
    browser.enter(&format!("{eight:.1}")).await;
    browser.until("document.querySelector('[data-weigh-sign=ask]')").await;
    browser.press("button[name=as]").await;
    browser.until("document.querySelector('[data-weigh-sign=kept]')").await;
    assert!(browser.text(".weigh-sign").await.contains("Kept as the 8"), "{}", browser.text(".weigh-sign").await);
    assert_eq!((heads(&bench, "7").len(), heads(&bench, "8").len()), (BEFORE + 1, BEFORE + 1));
    browser.close().await;
}

#[cfg(unix)]
#[tokio::test(flavor = "multi_thread")]
async fn parts_on_a_connected_scale_are_taken_by_themselves_and_once() {
    let bench = Bench::open();
    let (one, two) = (bench.browser().await, bench.browser().await);
    let mut far = one.connect_scale().await;
    // Two tablets look at the same scale; each part is kept once all the same.
    for browser in [&one, &two] {
        browser.open("/stock/new?model=REDSTART&number=7").await;
        dots(browser, BEFORE).await;
    }
    let shows =
        |text: String| format!("document.querySelector('[data-scale-beside]')?.textContent.includes({})", json!(text));
    let seven = nominal(&bench, "7");
    // Until the first value is seen the line may still be opening.
    for browser in [&one, &two] {
        loop {
            far.write_all(b"ST + 0.0 g\r\n").expect("a line");
            if browser.value(&format!("!!({})", shows("0.0".into()))).await == json!(true) {
                break;
            }
            tokio::time::sleep(std::time::Duration::from_millis(100)).await;
        }
    }
    let mut put = |mass: f64| {
        let line = format!("   + {:.1} g\r\nST + {mass:.1} g\r\nST + {mass:.1} g\r\n", mass - 4.0);
        far.write_all(line.as_bytes()).expect("a line");
    };
    // A page that took a value shows the next one's; a value that is only shown was not taken.
    let taken = async |kept: usize| {
        for browser in [&one, &two] {
            dots(browser, BEFORE + kept).await;
            browser.until("document.activeElement?.name === 'mass' && document.activeElement.value === ''").await;
        }
    };
    let shown = async |text: String, kept: usize| {
        for browser in [&one, &two] {
            browser.until(&shows(text.clone())).await;
        }
        taken(kept).await;
    };
    put(seven + 0.4);
    taken(1).await;
    // Another head put beside or in its place without the pan having been empty: nothing.
    put(seven + 1.1);
    shown(format!("{:.1}", seven + 1.1), 1).await;
    for (i, off) in [-0.7, 0.9, 0.2].into_iter().enumerate() {
        put(0.0);
        shown("0.0".into(), i + 1).await;
        put(seven + off);
        taken(i + 2).await;
    }
    let kept: Vec<String> =
        heads(&bench, "7")[BEFORE..].iter().map(|p| p["mass_typed"].as_str().expect("typed").to_owned()).collect();
    assert_eq!(kept, [0.4, -0.7, 0.9, 0.2].map(|off| format!("{:.1}", seven + off)));
    one.close().await;
    two.close().await;
}
