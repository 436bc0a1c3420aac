//! The open job while the network is away: moving between its clubs and steps, and each entry sent once, with its own time.

use crate::harness::Bench;
use serde_json::json;

#[tokio::test]
async fn clubs_and_steps_of_the_open_job_are_there_without_network() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/1?step=dry").await;
    browser.until("'ready' in document.documentElement.dataset").await;
    // What is held is fetched while nobody types.
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
    browser.offline(true).await;
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
