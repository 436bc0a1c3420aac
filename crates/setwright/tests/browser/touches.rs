//! How many inputs a set of eight takes from the dry reading to the hand over, held against `docs/touches.md`.
//!
//! Method: every reading of the set is typed as expected, without a slip, step by step in the set grid. Counted are keys and
//! touches; the digits and letters of a reading are not, since any way of writing it down takes them. The wait for the cure is
//! let pass through the API: waiting takes no input.

use crate::harness::{Bench, Browser};
use serde_json::Value;

/// What was counted.
#[derive(Default)]
struct Count {
    readings: u64,
    /// Inputs that keep a reading, beside its digits.
    keeps: u64,
    /// Everything else that was touched or pressed, in its order.
    touches: Vec<String>,
}

/// What a club should read at a step, as a hand types it.
fn typed(bench: &Bench, slot: usize, step: &str, what: &str) -> String {
    as_expected(&bench.api("/jobs/1"), slot, step, what, 0.0)
}

/// What a club of a job should read at a step, so much more than expected, as a hand types it.
pub fn as_expected(job: &Value, slot: usize, step: &str, what: &str, more: f64) -> String {
    let steps = job["clubs"][slot - 1]["steps"].as_array().expect("steps").clone();
    let asks = steps.iter().find(|s| s["key"] == step).expect("the step")["asks"].as_array().expect("asks").clone();
    let ask = asks.iter().find(|a| a["what"] == what).expect("asked").clone();
    let value = ask["expected"]["value"].as_f64().or(ask["target"]["value"].as_f64());
    // Where the soft side lies nobody can expect; a frequency that is not asked for has no forecast.
    let value = value.unwrap_or(if what == "cpm" { 300.0 } else { 40.0 }) + more;
    match what {
        "swing_weight" => {
            let points = (value * 10.0).round() / 10.0;
            format!("{}{:.1}", char::from(b'a' + (points / 10.0 + 0.005).floor() as u8), points % 10.0)
        }
        "finished_length" | "shaft_length" => format!("{:.2}", value / 25.4),
        _ => format!("{value:.1}"),
    }
}

/// Reads one quantity of every club in the grid that is open.
async fn read_set(bench: &Bench, browser: &Browser, count: &mut Count, step: &str, what: &str) {
    for slot in 1..=8_usize {
        browser
            .until(&format!(
                "document.readyState === 'complete' && 'ready' in document.documentElement.dataset
                 && document.activeElement?.name === 'typed' && document.activeElement.value === ''
                 && document.querySelector('[name=slot]')?.value === '{slot}' && document.querySelector('[name=what]').value === '{what}'"
            ))
            .await;
        browser.enter(&typed(bench, slot, step, what)).await;
        count.readings += 1;
        count.keeps += 1;
    }
    browser.until("location.search.includes('kept=8') && !document.querySelector('form[data-busy]')").await;
}

/// One touch on something that is on the screen.
async fn touch(browser: &Browser, count: &mut Count, what: &str, selector: &str, then: &str) {
    browser.press(selector).await;
    count.touches.push(what.to_owned());
    browser
        .until(&format!(
            "document.readyState === 'complete' && 'ready' in document.documentElement.dataset && ({then})"
        ))
        .await;
}

const NEXT: &str = "main a.button[data-key=n]";

fn at(step: &str) -> String {
    format!("location.pathname === '/bench/1/grid/{step}'")
}

#[tokio::test]
async fn a_set_of_eight_takes_fewer_inputs_than_paper() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let mut count = Count::default();
    browser.open("/bench/1/grid/dry").await;
    read_set(&bench, &browser, &mut count, "dry", "swing_weight").await;
    if browser.value("!!document.querySelector('.take-all')").await == Value::Bool(true) {
        touch(
            &browser,
            &mut count,
            "take the tip weights advised",
            ".take-all button",
            "location.search.includes('taken=')",
        )
        .await;
    }
    touch(&browser, &mut count, "on to the tip weight", NEXT, &at("tip")).await;
    read_set(&bench, &browser, &mut count, "tip", "swing_weight").await;
    touch(&browser, &mut count, "on to the glue", NEXT, &at("glue")).await;
    touch(&browser, &mut count, "mix a batch", "main a.button[data-key=g]", "document.activeElement?.name === 'lot'")
        .await;
    browser.enter("L-7").await;
    count.touches.push("the lot kept".to_owned());
    browser.until("document.readyState === 'complete' && location.pathname === '/glue'").await;
    // The cure passes.
    let cure = "fetch('/api/v1/batches').then((a) => a.json()).then((all) => fetch('/api/v1/batches/' + all[0].batch.number + '/let-pass', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ strength: 'full', reason: 'the cure has passed', by: 'Ada' }) })).then((a) => a.status)";
    assert_eq!(browser.value(cure).await, 200);
    touch(&browser, &mut count, "on to the ferrules", NEXT, &at("turned")).await;
    touch(&browser, &mut count, "all ferrules turned", ".take-all button", &at("cured")).await;
    read_set(&bench, &browser, &mut count, "cured", "swing_weight").await;
    if browser.value("!!document.querySelector('.take-all')").await == Value::Bool(true) {
        touch(&browser, &mut count, "take the grips advised", ".take-all button", "location.search.includes('taken=')")
            .await;
    }
    touch(&browser, &mut count, "on to the grips", NEXT, &at("gripped")).await;
    read_set(&bench, &browser, &mut count, "gripped", "swing_weight").await;
    touch(&browser, &mut count, "on to the finish", NEXT, &at("finish")).await;
    read_set(&bench, &browser, &mut count, "finish", "swing_weight").await;
    touch(&browser, &mut count, "on to the total mass", NEXT, "location.search.includes('total_mass')").await;
    read_set(&bench, &browser, &mut count, "finish", "total_mass").await;
    touch(&browser, &mut count, "on to the length", NEXT, "location.search.includes('finished_length')").await;
    read_set(&bench, &browser, &mut count, "finish", "finished_length").await;
    touch(&browser, &mut count, "on to the bend", NEXT, &at("bend")).await;
    read_set(&bench, &browser, &mut count, "bend", "loft").await;
    touch(&browser, &mut count, "on to the lie", NEXT, "location.search.includes('what=lie')").await;
    read_set(&bench, &browser, &mut count, "bend", "lie").await;
    touch(&browser, &mut count, "on to the hand over", NEXT, &at("hand_over")).await;
    touch(&browser, &mut count, "all handed over", ".take-all button", "location.search.includes('done=hand_over')")
        .await;
    assert_eq!(bench.api("/jobs/1")["job"]["state"], "finished");

    assert!(
        count.keeps as f64 <= 1.2 * count.readings as f64,
        "{} inputs for {} readings",
        count.keeps,
        count.readings
    );
    assert!(count.touches.len() <= 20, "{} touches: {:#?}", count.touches.len(), count.touches);
    // The published table is what was counted here.
    let table =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/touches.md")).expect("the table");
    for line in [
        format!("| Readings of the set | {} |", count.readings),
        format!("| Inputs that keep them, beside their digits | {} |", count.keeps),
        format!("| Touches besides | {} |", count.touches.len()),
    ] {
        assert!(table.contains(&line), "docs/touches.md lacks {line:?}; the touches were {:#?}", count.touches);
    }
    browser.close().await;
}
