//! What is easily lost: an answer on its way, an entry that was refused while another tablet goes on.

use crate::harness::{Bench, Browser};

#[tokio::test]
async fn an_entry_whose_answer_was_lost_is_sent_again_and_kept_once() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/2?step=dry").await;
    let reading = browser.text(".expected .figure-value").await;
    // The program has it, the tablet never learns so.
    let lose_one_answer = "(() => {
        const real = window.fetch;
        window.sent = 0;
        window.fetch = async (...all) => {
            const answer = await real(...all);
            if (all[1]?.method === 'POST' && (window.sent += 1) === 1) throw new TypeError('lost');
            return answer;
        };
    })()";
    browser.value(lose_one_answer).await;
    browser.enter(&reading).await;
    browser.until("!document.getElementById('waiting').hidden").await;
    assert_eq!(browser.value("window.sent").await, 1);
    assert_eq!(bench.readings(2), [reading.as_str()]);

    browser.value("window.dispatchEvent(new Event('online'))").await;
    browser.until("window.sent === 2 && document.getElementById('waiting').hidden").await;
    browser.until(&format!("document.querySelector('ul.readings')?.textContent.includes('{reading}')")).await;
    let all = bench.api("/jobs/1/record")["clubs"][1]["readings"].as_array().map(Vec::len);
    assert_eq!(all, Some(1), "sent twice, kept once");
    browser.close().await;
}

#[tokio::test]
async fn a_refused_entry_stays_in_its_field_while_another_tablet_goes_on() {
    let bench = Bench::open();
    let (one, two) = (bench.browser().await, bench.browser().await);
    two.open("/bench/1/1?step=dry").await;
    two.enter("e1..").await;
    two.until("document.querySelector('#read-balance-error')").await;
    let listen = "(() => {
        const events = new EventSource('/api/v1/live');
        events.addEventListener('open', () => (window.heard ??= 0));
        events.addEventListener('job', () => (window.heard += 1));
    })()";
    two.value(listen).await;
    two.until("window.heard === 0").await;

    read_as_expected(&one, 2).await;
    two.until("window.heard > 0").await;
    // A part fetched anew for that reading would be in the page before this later answer is.
    two.value("void fetch(location.href).then((answer) => answer.text()).then(() => (window.answered = true))").await;
    two.until("window.answered").await;
    assert_eq!(two.value("document.querySelector('#read-balance').value").await, "e1..");
    assert_eq!(two.value("document.activeElement.id").await, "read-balance");
    assert!(!two.text("#read-balance-error").await.is_empty());

    // Once it is corrected and kept, the page follows the others again.
    two.enter_instead("e0.2").await;
    two.until("location.search.includes('kept') && document.readyState === 'complete'").await;
    assert_eq!(bench.readings(1), ["e0.2"]);
    one.close().await;
    two.close().await;
}

async fn read_as_expected(browser: &Browser, slot: i64) {
    browser.open(&format!("/bench/1/{slot}?step=dry")).await;
    let reading = browser.text(".expected .figure-value").await;
    browser.enter(&reading).await;
    browser.until("location.search.includes('kept')").await;
}
