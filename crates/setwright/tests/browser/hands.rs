//! How little it takes: a set read with wet gloves, counted in inputs besides the digits of the readings.

use crate::harness::{Bench, Browser};

/// Keys as WebDriver names them.
const F7: char = '\u{e037}';
const F8: char = '\u{e038}';
const PAGE_DOWN: char = '\u{e00f}';

/// Waits until the cursor is in the entry of this club and nothing stands in it.
async fn entry_of(browser: &Browser, slot: i64) {
    let ready = format!(
        "document.readyState === 'complete' && document.activeElement?.matches('[data-bench-entry]')
            && document.activeElement.value === ''
            && (location.pathname === '/bench/1/{slot}' || document.querySelector('[name=slot]')?.value === '{slot}')"
    );
    browser.until(&ready).await;
}

#[tokio::test]
async fn from_club_to_club_in_two_inputs_besides_the_digits() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/1?step=dry").await;
    for slot in 1..=3 {
        entry_of(&browser, slot).await;
        let reading = browser.text(".expected .figure-value").await;
        browser.enter(&reading).await;
        browser.until("location.search.includes('kept=1') && document.readyState === 'complete'").await;
        entry_of(&browser, slot).await;
        assert_eq!(bench.readings(slot as usize), [reading]);
        browser.enter("").await;
    }
    entry_of(&browser, 4).await;
    assert!(bench.readings(4).is_empty());
    browser.close().await;
}

#[tokio::test]
async fn a_pedal_keeps_the_entry_and_a_scroll_key_does_not() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/grid/cpm").await;
    for (slot, cpm, pedal) in [(1, "252", F7), (2, "256", F8)] {
        entry_of(&browser, slot).await;
        browser.keys(cpm).await;
        // A hand on the keyboard scrolls: what is typed so far is not a reading.
        browser.keys(PAGE_DOWN.to_string()).await;
        assert_eq!(browser.value("document.querySelector('[name=typed]').value").await, cpm);
        let kept = bench.readings(usize::try_from(slot).expect("small"));
        assert!(kept.is_empty(), "a scroll key kept half a reading: {kept:?}");
        // The glove has brushed the glass: the focus is anywhere.
        browser.value("document.activeElement.blur()").await;
        browser.keys(pedal.to_string()).await;
    }
    entry_of(&browser, 3).await;
    assert_eq!(bench.readings(1), ["252"]);
    assert_eq!(bench.readings(2), ["256"]);

    // The last one was wrong: one key takes it back, and its entry is the one at hand.
    browser.one_key("z").await;
    entry_of(&browser, 2).await;
    assert!(bench.readings(2).is_empty());
    browser.enter("257").await;
    entry_of(&browser, 3).await;
    // Read again: the newer one counts.
    browser.one_key("r").await;
    entry_of(&browser, 2).await;
    browser.enter("258").await;
    entry_of(&browser, 3).await;
    assert_eq!(bench.readings(2), ["258"]);
    browser.close().await;
}

#[tokio::test]
async fn the_grid_and_the_single_club_are_one_key_apart() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/3?step=dry").await;
    entry_of(&browser, 3).await;
    browser.one_key("a").await;
    browser.until("location.pathname === '/bench/1/grid/dry'").await;
    browser.press(".set-grid tbody th a[href='/bench/1/3?step=dry']").await;
    entry_of(&browser, 3).await;
    browser.close().await;
}

#[tokio::test]
async fn a_slider_moves_the_beam_while_it_is_dragged() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/1?step=dry").await;
    browser.value("(window.neverLoadedAnew = true)").await;
    let finish = "document.querySelector('#beam-1 .finish-text')?.textContent";
    let planned = browser.value(finish).await;
    browser.press(".what-if summary").await;
    // Arrow keys move a slider as a finger does, a tenth of a gram each.
    browser.value("document.querySelector('.what-if [name=head_g]').focus()").await;
    for _ in 0..30 {
        browser.keys("\u{e014}").await;
    }
    browser.until(&format!("{finish} !== {planned} && window.neverLoadedAnew")).await;
    let said = "document.querySelector('.what-if output').textContent === document.querySelector('.what-if [name=head_g]').value + ' g'";
    browser.until(said).await;
    assert!(bench.readings(1).is_empty());
    browser.close().await;
}

#[cfg(unix)]
#[tokio::test(flavor = "multi_thread")]
async fn a_settled_value_and_a_pedal_read_the_set_without_a_touch() {
    use std::io::Write;
    let bench = Bench::open();
    let browser = bench.browser().await;
    let mut far = browser.connect_scale().await;
    browser.open("/bench/1/grid/weighed?what=head_mass").await;
    entry_of(&browser, 1).await;
    // Until the first value is seen the line may still be opening.
    while browser.text("[data-scale-beside]").await.is_empty() {
        far.write_all(b"   + 0.0 g\r\n").expect("a line");
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    }
    let view = bench.api("/jobs/1");
    for slot in 1..=2_usize {
        let parts = view["job"]["clubs"][slot - 1]["plan"]["parts"].as_array().expect("parts").clone();
        let head = parts.iter().find(|p| p["kind"] == "head").expect("a head");
        let mass = head["mass_g"].as_f64().expect("a mass");
        // Still moving: shown beside the entry and not in it. A scale goes on sending; what came just before the page took
        // the last reading's answer is shown with the next.
        while !browser.text("[data-scale-beside]").await.contains(&format!("{:.1}", mass - 3.0)) {
            far.write_all(format!("   + {:.1} g\r\n", mass - 3.0).as_bytes()).expect("a line");
            tokio::time::sleep(std::time::Duration::from_millis(100)).await;
        }
        assert_eq!(browser.value("document.querySelector('[name=typed]').value").await, "");
        far.write_all(format!("ST + {mass:.1} g\r\nST + {mass:.1} g\r\n").as_bytes()).expect("a line");
        browser.until(&format!("document.querySelector('[name=typed]').value === '{mass:.1}'")).await;
        browser.keys(F7.to_string()).await;
        entry_of(&browser, i64::try_from(slot).expect("small") + 1).await;
        assert_eq!(bench.readings(slot), [format!("{mass:.1}")]);
        far.write_all(b"   + 0.0 g\r\n").expect("a line");
    }
    // A tablet with a decimal comma shows the scale's figure with one.
    browser.value("(document.cookie = 'decimal=comma; path=/')").await;
    browser.open("/bench/1/grid/weighed?what=head_mass").await;
    entry_of(&browser, 3).await;
    while !browser.text("[data-scale-beside]").await.contains("12,3") {
        far.write_all(b"   + 12.3 g\r\n").expect("a line");
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    }
    browser.close().await;
}

/// Holds each answer to an entry back, as a slow network does.
async fn slow_answers(browser: &Browser) {
    let slow = "(() => {
        const [real, timer] = [window.fetch, window.setTimeout];
        window.fetch = async (...all) => {
            const answer = await real(...all);
            if (all[1]?.method === 'POST') await new Promise((on) => timer(on, 400));
            return answer;
        };
    })()";
    browser.value(slow).await;
}

/// Types as fast as keys come, and Enter.
async fn fast(browser: &Browser, text: &str) {
    for letter in text.chars() {
        browser.one_key(&letter.to_string()).await;
    }
    browser.enter("").await;
}

#[tokio::test]
async fn what_is_typed_without_a_pause_is_kept_for_one_club_after_the_other() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    // Half of the set with answers that come late, half as fast as this machine is.
    for (first, slow) in [(1, true), (5, false)] {
        browser.open("/bench/1/grid/cpm").await;
        entry_of(&browser, first).await;
        browser.until("'ready' in document.documentElement.dataset").await;
        if slow {
            slow_answers(&browser).await;
        }
        let typed: Vec<(i64, String)> = (first..first + 4).map(|slot| (slot, (248 + 4 * slot).to_string())).collect();
        for (_, cpm) in &typed {
            fast(&browser, cpm).await;
        }
        let last = first + 3;
        let all = format!("location.search.includes('kept={last}') && !document.querySelector('form[data-busy]')");
        browser.until(&all).await;
        for (slot, cpm) in typed {
            assert_eq!(bench.readings(usize::try_from(slot).expect("small")), [cpm], "slow: {slow}");
        }
        assert_eq!(browser.text(".notice.bad").await, "");
    }
    browser.close().await;
}

/// On a tablet with too much to do, timers come late and keys come first.
#[tokio::test]
async fn a_figure_typed_while_the_one_before_is_sent_does_not_join_it() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/grid/cpm").await;
    entry_of(&browser, 1).await;
    browser.until("'ready' in document.documentElement.dataset").await;
    slow_answers(&browser).await;
    let late = "(() => {
        const timer = window.setTimeout;
        window.setTimeout = (then, after, ...all) => timer(then, (after ?? 0) + 2000, ...all);
    })()";
    browser.value(late).await;
    fast(&browser, "252").await;
    fast(&browser, "256").await;
    // The first is kept; the page sends the second while the third is typed.
    browser.until("location.search.includes('kept=1')").await;
    fast(&browser, "260").await;
    browser.until("location.search.includes('kept=3') && !document.querySelector('form[data-busy]')").await;
    for (slot, cpm) in [(1, "252"), (2, "256"), (3, "260")] {
        assert_eq!(bench.readings(slot), [cpm]);
    }
    browser.close().await;
}

#[tokio::test]
async fn a_second_reading_typed_ahead_goes_to_no_club_that_it_was_not_meant_for() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/1?step=dry").await;
    entry_of(&browser, 1).await;
    browser.until("'ready' in document.documentElement.dataset").await;
    slow_answers(&browser).await;
    let reading = browser.text(".expected .figure-value").await.to_lowercase();
    fast(&browser, &reading).await;
    fast(&browser, "d1").await;
    // Still typing when the answer comes: that stays in the field.
    for letter in ["d", "2"] {
        browser.one_key(letter).await;
    }
    browser.until("document.querySelector('.notice.bad')").await;
    let said = browser.text(".notice.bad").await;
    assert!(said.contains("Not kept: d1") && said.contains("enter it again"), "{said}");
    let kept: Vec<String> = bench.readings(1).iter().map(|typed| typed.to_lowercase()).collect();
    assert_eq!(kept, [reading]);
    browser.close().await;
}

#[tokio::test]
async fn enter_and_the_pedal_do_what_a_step_without_a_figure_asks() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1").await;
    for slot in 1..=4 {
        let form = "step=turned&reason=the joint was tried by hand";
        browser.post(&format!("/bench/1/{slot}/let-pass"), form).await;
    }
    let done = |slot: usize| {
        let record = bench.api("/jobs/1/record");
        let readings = record["clubs"][slot - 1]["readings"].as_array().expect("readings").clone();
        readings.iter().filter(|r| r["reading"]["step"] == "turned" && r["reading"]["what"] == "done").count()
    };
    let at_hand = "'ready' in document.documentElement.dataset && document.querySelector('button[data-key=Enter]')
        && !document.querySelector('form[data-busy]') && !document.activeElement.matches('button, a, input')";
    // One club, with the focus where a page begins.
    browser.open("/bench/1/1?step=turned").await;
    browser.until(at_hand).await;
    browser.enter("").await;
    browser.until("location.search.includes('kept=1')").await;
    assert_eq!(done(1), 1);
    // The set: one Enter or pedal a club, and each page stands ready for the next.
    browser.open("/bench/1/grid/turned").await;
    for slot in 2..=4 {
        browser.until(at_hand).await;
        browser.until(&format!("document.querySelector('[name=slot]')?.value === '{slot}'")).await;
        if slot == 3 {
            browser.keys(F7.to_string()).await;
        } else {
            browser.enter("").await;
        }
        browser.until(&format!("location.search.includes('kept={slot}')")).await;
        assert_eq!((done(slot), done(slot + 1)), (1, 0));
    }
    browser.close().await;
}
