//! Two tablets at one job, and a network that drops.

use crate::harness::Bench;
use std::time::Duration;

const DRY: &str = "/bench/1/1?step=dry";

#[tokio::test]
async fn another_tablet_sees_a_reading_and_overwrites_nothing() {
    let bench = Bench::open();
    let (one, two) = (bench.browser().await, bench.browser().await);
    one.open(DRY).await;
    two.open(DRY).await;
    two.value("(window.neverLoadedAnew = true)").await;
    // The stream of changes is open once the browser has its answer.
    two.until("performance.getEntriesByType('resource').length && document.readyState === 'complete'").await;

    let reading = one.text(".expected .figure-value").await;
    one.enter(&reading).await;
    one.until("location.search.includes('kept')").await;
    let shown =
        format!("document.querySelector('ul.readings')?.textContent.includes('{reading}') && window.neverLoadedAnew");
    // Patience only: how fast it is shown is no test of its own.
    two.until_within(Duration::from_secs(15), &shown).await;

    // While somebody types, the page stays as it is; what was typed against the old state is refused.
    two.keys("D8.7").await;
    one.press("a.step[href$='step=tip']").await;
    one.until("location.search === '?step=tip' && document.readyState === 'complete'").await;
    let tip = one.text(".expected .figure-value").await;
    one.enter(&tip).await;
    one.until("location.search.includes('kept')").await;
    assert_eq!(two.value("document.activeElement.value").await, "D8.7");
    two.enter("").await;
    two.until("document.querySelector('.notice')?.textContent.includes('changed on another screen')").await;
    assert_eq!(bench.readings(1), [reading, tip]);
    one.close().await;
    two.close().await;
}

#[tokio::test]
async fn an_entry_without_network_is_kept_told_and_sent_once() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open(DRY).await;
    let reading = browser.text(".expected .figure-value").await;
    browser.offline(true).await;
    browser.enter(&reading).await;
    browser.until("!document.getElementById('waiting').hidden").await;
    let told = browser.text("#waiting").await;
    assert!(told.starts_with("Kept on this tablet, not sent yet") && told.contains(&reading), "{told}");
    assert!(bench.readings(1).is_empty());

    browser.offline(false).await;
    browser.until("document.getElementById('waiting').hidden").await;
    assert_eq!(bench.readings(1), std::slice::from_ref(&reading));
    // The page shows it by itself, and neither a later try nor a new page sends it again.
    browser.until(&format!("document.querySelector('ul.readings')?.textContent.includes('{reading}')")).await;
    browser.open(DRY).await;
    browser.until("document.readyState === 'complete' && localStorage.getItem('setwright.waiting') === '[]'").await;
    assert_eq!(bench.readings(1), [reading]);
    let all = bench.api("/jobs/1/record")["clubs"][0]["readings"].as_array().map(Vec::len);
    assert_eq!(all, Some(1), "none that was replaced");
    browser.close().await;
}

#[tokio::test]
async fn an_entry_that_waited_bears_the_time_when_it_was_typed() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open(DRY).await;
    let reading = browser.text(".expected .figure-value").await;
    browser.offline(true).await;
    let ms = async || browser.value("Date.now()").await.as_f64().expect("milliseconds");
    let before = ms().await;
    browser.enter(&reading).await;
    browser.until("!document.getElementById('waiting').hidden").await;
    let after = ms().await;
    tokio::time::sleep(Duration::from_secs(5)).await;
    browser.offline(false).await;
    let back = ms().await;
    browser.until("document.getElementById('waiting').hidden").await;
    assert_eq!(bench.readings(1), [reading]);
    let at = bench.api("/jobs/1/record")["clubs"][0]["readings"][0]["reading"]["at"].clone();
    let at = browser.value(&format!("Date.parse({at})")).await.as_f64().expect("milliseconds");
    // The page tells the server's time by the second of its answer.
    assert!((before - 2000.0..=after + 2000.0).contains(&at), "typed {before} to {after}, kept as of {at}");
    assert!(at < back - 2500.0, "sent from {back} on, kept as of {at}");
    browser.close().await;
}
