//! What to fit, exchanged heads and what is open, in the grid as a builder sees and touches it.

use crate::harness::{Bench, Browser};
use serde_json::Value;

/// What the demonstration expects of each club's dry swing weight, points since A0.
fn expected(bench: &Bench) -> Vec<f64> {
    let view = bench.api("/jobs/1");
    let dry = |club: &Value| -> f64 {
        let step = club["steps"].as_array().expect("steps").iter().find(|s| s["key"] == "dry").expect("dry").clone();
        step["asks"][0]["expected"]["value"].as_f64().expect("a forecast")
    };
    view["clubs"].as_array().expect("clubs").iter().map(dry).collect()
}

/// As the scale shows it, in points.
fn typed(points: f64) -> String {
    let points = (points * 10.0).round() / 10.0;
    format!("{}{:.1}", char::from(b'a' + (points / 10.0).floor() as u8), points % 10.0)
}

/// Types a figure for each club, one after the other, as the grid asks for them.
async fn read_all(browser: &Browser, values: &[f64]) {
    browser.open("/bench/1/grid/dry").await;
    for (value, slot) in values.iter().zip(1..) {
        browser
            .until(&format!(
                "document.readyState === 'complete' && document.activeElement?.name === 'typed'
                 && document.querySelector('[name=slot]')?.value === '{slot}'"
            ))
            .await;
        browser.enter(&typed(*value)).await;
    }
    browser.until("document.readyState === 'complete' && location.search.includes('kept=8')").await;
}

fn tips(bench: &Bench) -> Vec<f64> {
    let view = bench.api("/jobs/1");
    let tip = |club: &Value| -> f64 {
        let parts = club["plan"]["parts"].as_array().expect("parts");
        parts.iter().filter(|p| p["kind"] == "tip_weight").filter_map(|p| p["mass_g"].as_f64()).sum()
    };
    view["job"]["clubs"].as_array().expect("clubs").iter().map(tip).collect()
}

#[tokio::test]
async fn the_weights_of_a_set_are_taken_in_one_touch_and_undone_in_another() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    // Reading for reading lighter than expected: what all have in common is learned, so the first ones still differ.
    let values: Vec<f64> =
        expected(&bench).iter().enumerate().map(|(i, e)| if i % 3 == 1 { e - 0.9 } else { *e }).collect();
    read_all(&browser, &values).await;
    let before = tips(&bench);
    let fit = bench.api("/jobs/1/fit");
    let advised = fit["rows"].as_array().expect("rows").iter().filter(|r| r.get("advised").is_some()).count();
    assert!(advised > 0, "{fit}");
    // Nothing of it is an alarm: a planned change of mass is brass, and rust is for doubt alone.
    let rows = "[...document.querySelectorAll('.set-grid tbody tr:has(.mass)')]";
    assert_eq!(browser.value(&format!("{rows}.length")).await, advised);
    let colours = format!(
        "{rows}.every((r) => getComputedStyle(r.querySelector('.grid-words')).color !== getComputedStyle(document.documentElement).getPropertyValue('--rust'))"
    );
    assert_eq!(browser.value(&colours).await, true);

    browser.press(".take-all button").await;
    browser.until("document.readyState === 'complete' && location.search.includes('taken=')").await;
    let after = tips(&bench);
    assert_eq!(before.iter().zip(&after).filter(|(b, a)| (*b - *a).abs() > 0.01).count(), advised);
    browser.press("form.notice.good button").await;
    browser.until("document.readyState === 'complete' && !location.search.includes('taken=')").await;
    assert_eq!(tips(&bench), before);
    browser.close().await;
}

#[tokio::test]
async fn two_exchanged_heads_are_put_right_from_their_row() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    let mut values = expected(&bench);
    let view = bench.api("/jobs/1");
    let head = |slot: usize| {
        let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts").clone();
        parts.iter().find(|p| p["kind"] == "head").and_then(|p| p["mass_g"].as_f64()).expect("a head")
    };
    // 49.612 g·in a point, the heads about 22.5 in beyond the fulcrum.
    let points = (head(5) - head(4)) * 22.5 / 49.612;
    values[3] += points;
    values[4] -= points;
    read_all(&browser, &values).await;
    browser.open("/bench/1/grid/dry").await;
    assert!(browser.text(".set-grid").await.contains("the heads of the 7-iron and the 8-iron are exchanged"));
    browser.press("form[action='/bench/1/exchange'] button").await;
    browser.until("document.readyState === 'complete' && location.search.includes('exchanged=')").await;
    // The grid goes on with the two that are to be read again.
    browser.until("document.querySelector('[name=slot]')?.value === '4'").await;
    assert!(bench.readings(4).is_empty() && bench.readings(5).is_empty());
    browser.press("form[action='/bench/1/exchange/undo'] button").await;
    browser.until("document.readyState === 'complete' && !location.search.includes('exchanged=')").await;
    assert_eq!((bench.readings(4).len(), bench.readings(5).len()), (1, 1));
    browser.close().await;
}

#[tokio::test]
async fn what_is_open_before_the_cut_is_one_touch_away_and_one_reason_goes_on() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for slot in [2, 5] {
        let target = bench.api("/jobs/1")["job"]["clubs"][slot - 1]["target"]["loft_deg"].as_f64().expect("a loft");
        browser.open("/bench/1").await;
        browser.post(&format!("/bench/1/{slot}"), &format!("step=received&read-loft={}", target + 6.0)).await;
    }
    browser.open("/bench/1/grid/cut").await;
    assert_eq!(browser.value("document.querySelectorAll('.open-list li').length").await, 2);
    browser.press(".open-list li:nth-child(2) .point a").await;
    browser.until("document.readyState === 'complete' && location.pathname === '/bench/1/5'").await;
    assert!(browser.value("location.search").await == "?step=received");
    browser.open("/bench/1/grid/cut").await;
    browser.value("document.querySelector('[name=reason]').focus()").await;
    browser.enter("the player wants them weak").await;
    browser.until("document.readyState === 'complete' && !document.querySelector('[name=reason]')").await;
    let open = bench.api("/jobs/1/open?step=cut");
    for club in open.as_array().expect("clubs") {
        assert_eq!(club["passed"]["reason"], "the player wants them weak", "{club}");
    }
    browser.close().await;
}
