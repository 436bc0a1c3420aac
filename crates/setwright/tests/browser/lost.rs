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
    two.until("document.querySelector('#read-swing_weight-error')").await;
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
    assert_eq!(two.value("document.querySelector('#read-swing_weight').value").await, "e1..");
    assert_eq!(two.value("document.activeElement.id").await, "read-swing_weight");
    assert!(!two.text("#read-swing_weight-error").await.is_empty());

    // Once it is corrected and kept, the page follows the others again.
    two.enter_instead("e0.2").await;
    two.until("location.search.includes('kept') && document.readyState === 'complete'").await;
    assert_eq!(bench.readings(1), ["e0.2"]);
    one.close().await;
    two.close().await;
}

/// A page of the club before, still on its way for another tablet's reading, must not take the place of the next club:
/// what is typed then would be kept for the wrong one.
#[tokio::test]
async fn a_page_fetched_before_the_next_club_is_not_put_in_its_place() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for (first, second) in [("/bench/1/1?step=dry", "/bench/1/2"), ("/bench/1/grid/cpm", "/bench/1/grid/cpm")] {
        browser.open(first).await;
        let grid = first.contains("grid");
        let reading = if grid { "252".to_owned() } else { browser.text(".expected .figure-value").await };
        // The next page that is asked for is fetched at once and comes late.
        let hold_one_page = "(() => {
            const real = window.fetch;
            window.asked = false;
            window.came = false;
            window.fetch = async (...all) => {
                const answer = await real(...all);
                if (all[1]?.method === 'POST' || window.asked) return answer;
                const copy = new Response(await answer.text(), { status: answer.status });
                window.asked = true;
                await new Promise((come) => (window.come = come));
                setTimeout(() => (window.came = true), 300);
                return copy;
            };
        })()";
        browser.value(hold_one_page).await;
        browser.value("document.dispatchEvent(new Event('setwright:sent'))").await;
        browser.until("window.asked").await;

        browser.enter(&reading).await;
        browser.until("location.search.includes('kept')").await;
        if !grid {
            browser.enter("").await;
        }
        let at_second = format!(
            "location.pathname === '{second}' && document.activeElement?.matches('[data-bench-entry]')
                && (!{grid} || document.querySelector('[name=slot]')?.value === '2')"
        );
        browser.until(&at_second).await;
        // Whose entry it is, looked at after every change of the page: a later fetch would hide a wrong one.
        let watch = "(() => {
            const whose = () => {
                const form = document.querySelector('[data-bench-entry]')?.form;
                return form && form.action + (form.querySelector('[name=slot]')?.value ?? '');
            };
            const mine = whose();
            window.others = [];
            new MutationObserver(() => whose() && whose() !== mine && window.others.push(whose()))
                .observe(document.body, { childList: true, subtree: true });
        })()";
        browser.value(watch).await;
        browser.value("window.come()").await;
        browser.until("window.came").await;
        assert_eq!(browser.value("window.others.join()").await, "", "{first}");
        let what = if grid { "256".to_owned() } else { browser.text(".expected .figure-value").await };
        browser.enter(&what).await;
        browser.until("!document.querySelector('form[data-busy]') && location.search.includes('kept')").await;
        let of = |slot: usize| bench.readings(slot).last().cloned();
        assert_eq!((of(1), of(2)), (Some(reading), Some(what)), "{first}");
        let all = bench.api("/jobs/1/record")["clubs"][0]["readings"].as_array().map(Vec::len);
        assert_eq!(all, Some(if grid { 2 } else { 1 }), "nothing went to the first club instead");
    }
    browser.close().await;
}

async fn read_as_expected(browser: &Browser, slot: i64) {
    browser.open(&format!("/bench/1/{slot}?step=dry")).await;
    let reading = browser.text(".expected .figure-value").await;
    browser.enter(&reading).await;
    browser.until("location.search.includes('kept')").await;
}
