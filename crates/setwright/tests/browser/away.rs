//! The open job while the network is away: moving between its clubs and steps, and each entry sent once, with its own time.

use crate::harness::Bench;
use serde_json::json;

#[tokio::test]
async fn clubs_and_steps_of_the_open_job_are_there_without_network() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    go_away(&browser).await;
    // To another club, and to another step of that.
    browser.press(".clubs a[href='/bench/1/3?step=dry']").await;
    browser.until("location.pathname === '/bench/1/3' && document.querySelector('#held')").await;
    let dry = browser.text(".expected .figure-value").await;
    browser.value("document.querySelector('[data-bench-entry]').focus()").await;
    browser.enter(&dry).await;
    browser.until("!document.getElementById('waiting').hidden").await;
    browser.press(".step-line > ol a[href='/bench/1/3?step=tip']").await;
    browser.until("location.search === '?step=tip'").await;
    let tip = browser.text(".expected .figure-value").await;
    browser.value("document.querySelector('[data-bench-entry]').focus()").await;
    browser.enter(&tip).await;
    browser.until("JSON.parse(localStorage['setwright.waiting']).length === 2").await;
    assert!(bench.readings(3).is_empty());
    // Back: both come in, once each, in their order.
    browser.offline(false).await;
    browser.until("localStorage['setwright.waiting'] === '[]'").await;
    assert_eq!(bench.readings(3), [dry, tip]);
    let all = bench.api("/jobs/1/record")["clubs"][2]["readings"].as_array().map(Vec::len);
    assert_eq!(json!(all), json!(2));
    browser.close().await;
}

/// Opens the dry step, waits until the job is held, and takes the network away. What is held is fetched while nobody types.
async fn go_away(browser: &crate::harness::Browser) {
    browser.open("/bench/1/1?step=dry").await;
    browser.until("'ready' in document.documentElement.dataset").await;
    held(browser).await;
    browser.offline(true).await;
}

/// Waits until the page of every club and step is held.
async fn held(browser: &crate::harness::Browser) {
    let count = "(async () => new Promise((then) => {
        const asked = indexedDB.open('setwright-job-1', 1);
        asked.onsuccess = () => { const all = asked.result.transaction('pages').objectStore('pages').count(); all.onsuccess = () => { asked.result.close(); then(all.result); }; };
        asked.onerror = () => then(0);
    }))()";
    let begun = std::time::Instant::now();
    while browser.value(count).await.as_u64().unwrap_or(0) < 135 {
        assert!(begun.elapsed().as_secs() < 120, "{} pages are held", browser.value(count).await);
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
    }
}

#[tokio::test]
async fn what_another_tablet_read_meanwhile_is_not_replaced_and_both_values_are_told() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    go_away(&browser).await;
    // Two clubs from held pages; one of them is corrected before anything could be sent.
    for (slot, typed) in [(3, "E1.1"), (3, "E1.2"), (4, "E1.3")] {
        browser.press(&format!(".clubs a[href='/bench/1/{slot}?step=dry']")).await;
        browser.until(&format!("location.pathname === '/bench/1/{slot}' && document.querySelector('#held')")).await;
        let before = browser.value("JSON.parse(localStorage['setwright.waiting'] ?? '[]').length").await;
        browser.value("document.querySelector('[data-bench-entry]').focus()").await;
        browser.enter(typed).await;
        browser.until(&format!("JSON.parse(localStorage['setwright.waiting']).length > {before}")).await;
    }
    // Meanwhile the other tablet reads one of them at that step, and the other at another step.
    let other = bench.browser().await;
    for (slot, step, typed) in [(4, "dry", "E0.7"), (3, "received", "21.0")] {
        other.open(&format!("/bench/1/{slot}?step={step}")).await;
        other.until("'ready' in document.documentElement.dataset").await;
        other.value("document.querySelector('[data-bench-entry]').focus()").await;
        other.enter(typed).await;
        other.until("location.search.includes('kept=1')").await;
    }
    browser.offline(false).await;
    browser.until("JSON.parse(localStorage['setwright.waiting']).length === 1").await;
    browser.until("JSON.parse(localStorage['setwright.waiting'])[0].refused").await;
    // The club that nobody else read at that step has this tablet's correction.
    assert_eq!(bench.readings(3), ["21.0", "E1.2"]);
    // The other's reading stands, and this tablet tells both.
    assert_eq!(bench.readings(4), ["E0.7"]);
    let told = browser.text("#waiting").await;
    assert!(told.contains("E1.3") && told.contains("E0.7") && told.contains("Nothing was overwritten"), "{told}");
    other.close().await;
    browser.close().await;
}
