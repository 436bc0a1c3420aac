//! A tablet that is let in by six digits, works, and is out once its key was taken away: with nothing that was typed lost.

use crate::harness::Bench;

const DRY: &str = "/bench/1/1?step=dry";

#[tokio::test]
async fn a_tablet_comes_in_by_six_digits_and_loses_nothing_when_its_key_is_taken_away() {
    let bench = Bench::with(&["--key-for-all"]);
    let browser = bench.browser().await;
    browser.open(DRY).await;
    assert_eq!(browser.value("location.pathname + location.search").await, "/come-in?to=%2Fbench%2F1%2F1%3Fstep%3Ddry");
    browser.keys("111111").await;
    browser.press("main .button").await;
    browser.until("document.querySelector('.notice.bad')?.textContent.includes('digits are not shown')").await;

    let shown = bench.command(&["key", "tablet", "Bench 2"]);
    let code = shown["code"].as_str().expect("digits").to_owned();
    assert_eq!(browser.value("document.activeElement.id + document.activeElement.value").await, "code");
    browser.keys(format!("{} {}", &code[..3], &code[3..])).await;
    browser.press("main .button").await;
    browser.until("location.pathname === '/bench/1/1' && document.readyState === 'complete'").await;
    assert_eq!(browser.value("document.cookie.includes('key=')").await, false, "no script sees it");
    let reading = browser.text(".expected .figure-value").await;

    // The key goes while the builder has typed, before Enter.
    browser.until("document.querySelector('[data-bench-entry]')").await;
    browser.keys(&reading).await;
    let key = bench.command(&["key", "list"])[0]["number"].to_string();
    bench.command(&["key", "withdraw", &key]);
    browser.enter("").await;
    browser.until("location.pathname === '/come-in' && document.readyState === 'complete'").await;
    let kept = browser.value("localStorage.getItem('setwright.waiting')").await;
    assert!(kept.as_str().is_some_and(|kept| kept.contains("dry")), "{kept}");

    let code = bench.command(&["key", "tablet", "Bench 2 again"])["code"].as_str().expect("digits").to_owned();
    // From the code's picture: the digits are there, one touch is left.
    browser.open(&format!("/come-in?code={code}&to=%2Fbench%2F1%2F1%3Fstep%3Ddry")).await;
    browser.press("main .button").await;
    browser.until(&format!("document.querySelector('ul.readings')?.textContent.includes('{reading}')")).await;
    browser.until("localStorage.getItem('setwright.waiting') === '[]'").await;
    browser.close().await;
}
