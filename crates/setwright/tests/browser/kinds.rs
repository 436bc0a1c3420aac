//! Work on clubs that come in, by the pages alone: a customer, their clubs, the job, a slip at the bench, the record.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};

/// Kind of job, what is typed for it, and what its steps are told.
type Work<'a> = (&'a str, &'a [(&'a str, &'a str)], &'a [(&'a str, &'a [(&'a str, &'a str)])]);

#[tokio::test]
async fn a_grip_a_bend_and_a_rebalance_from_the_customer_to_the_record() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/customers/new").await;
    fill(&browser, "name", "Wilmot Quenby").await;
    submit(&browser, "name").await;
    browser
        .until("/^.customers.[0-9]+$/.test(location.pathname) && document.querySelector('a[href^=\"/clubs/new?\"]')")
        .await;
    let customer = browser.value("location.pathname").await.as_str().expect("a path").to_owned();
    let free = bench.api("/parts?kind=grip&state=free");
    let grip = free["parts"].as_array().or_else(|| free.as_array()).expect("parts")[0]["model"]
        .as_str()
        .expect("a model")
        .to_owned();
    let works: [Work<'_>; 3] = [
        (
            "regrip",
            &[("grip_model", &grip)],
            &[("arrived", &[("swing_weight", "D2.1")]), ("finish", &[("swing_weight", "D2.1")])],
        ),
        (
            "bend",
            &[("loft", "34"), ("lie", "62.5")],
            &[("arrived", &[("loft", "33"), ("lie", "62")]), ("bend", &[("loft", "34"), ("lie", "62.5")])],
        ),
        (
            "rebalance",
            &[("swing_weight", "D2.1")],
            &[("arrived", &[("swing_weight", "D2.1")]), ("finish", &[("swing_weight", "D2.1")])],
        ),
    ];
    for (nth, (kind, asked, steps)) in works.iter().enumerate() {
        browser.open(&customer).await;
        browser.press("a[href^='/clubs/new?']").await;
        browser.until("location.pathname === '/clubs/new' && document.querySelector('[name=owner]')").await;
        fill(&browser, "number", "7").await;
        if nth == 0 {
            // A slip: it is told beside its field, nothing is noted, and what was typed stays.
            fill(&browser, "swing_weight", "D2..1").await;
            submit(&browser, "number").await;
            browser.until("document.querySelector('#swing_weight-error')?.innerText").await;
            assert_eq!(browser.value("document.querySelector('[name=number]').value").await, json!("7"));
            assert_eq!(bench.api("/clubs?search=quenby").as_array().map(Vec::len), Some(0));
        }
        fill(&browser, "swing_weight", "D2.1").await;
        submit(&browser, "number").await;
        browser.until("/^.clubs.C[0-9]+$/.test(location.pathname)").await;
        let code = browser.value("location.pathname.split('/')[2]").await.as_str().expect("a code").to_owned();
        browser.press(&format!("a[href*='kind={kind}']")).await;
        browser.until(&format!("document.querySelector('[name=\"{}-{code}\"]')", asked[0].0)).await;
        for (name, value) in *asked {
            fill(&browser, &format!("{name}-{code}"), value).await;
        }
        fill(&browser, "due", "2031-04-01").await;
        submit(&browser, "due").await;
        browser.until("location.pathname.startsWith('/bench/')").await;
        let job = browser.value("Number(location.pathname.split('/')[2])").await.as_f64().expect("a job") as i64;
        for (step, figures) in *steps {
            read(&browser, job, step, figures).await;
        }
        browser.open(&format!("/bench/{job}/1?step=hand_over")).await;
        browser
            .until("document.readyState === 'complete' && document.querySelector('form[data-keep] [name=read-done]')")
            .await;
        if browser.value("!!document.querySelector('form[data-keep] [name=reason]')").await == json!(true) {
            fill(&browser, "reason", "the player has seen it").await;
        }
        browser.value("document.querySelector('form[data-keep] [name=read-done]').form.querySelector('.keep-row button').click()").await;
        let over =
            format!("fetch('/api/v1/jobs/{job}/record').then((a) => a.json()).then((r) => r.state === 'finished')");
        browser.until("document.readyState === 'complete'").await;
        for _ in 0..100 {
            if browser.value(&over).await == json!(true) {
                break;
            }
            tokio::time::sleep(std::time::Duration::from_millis(50)).await;
        }
        assert_eq!(bench.api(&format!("/jobs/{job}/record"))["state"], "finished", "{kind}");
        browser.open(&format!("/records/{job}")).await;
        browser.until("document.querySelector('main').innerText.includes('Wilmot Quenby')").await;
        let life: Value = bench.api(&format!("/clubs/{code}"))["life"].clone();
        assert_eq!(life[1]["job_kind"], *kind, "{life}");
    }
    // The slip was refused with its status, which the browser notes; nothing else went wrong.
    let other: Vec<String> =
        browser.console_errors().await.into_iter().filter(|error| !error.contains("422")).collect();
    assert_eq!(other, Vec::<String>::new());
    browser.close().await;
}

/// Types into a field, or chooses in a list.
async fn fill(browser: &Browser, name: &str, text: &str) {
    let set = "((field) => { field.value = TEXT; field.dispatchEvent(new Event('change', { bubbles: true })); return field.value; })(document.querySelector('[name=\"NAME\"]'))";
    let set = set.replace("TEXT", &json!(text).to_string()).replace("NAME", name);
    assert_eq!(browser.value(&set).await, json!(text), "{name}");
}

/// Sends the form that has a field of this name, by its button.
async fn submit(browser: &Browser, name: &str) {
    let press = format!("document.querySelector('[name=\"{name}\"]').form.querySelector('button').click()");
    browser.value(&press).await;
}

async fn read(browser: &Browser, job: i64, step: &str, figures: &[(&str, &str)]) {
    browser.open(&format!("/bench/{job}/1?step={step}")).await;
    browser
        .until(&format!("document.readyState === 'complete' && document.querySelector('[name=read-{}]')", figures[0].0))
        .await;
    for (what, typed) in figures {
        fill(browser, &format!("read-{what}"), typed).await;
    }
    browser
        .value(&format!(
            "document.querySelector('[name=read-{}]').form.querySelector('.keep-row button').click()",
            figures[0].0
        ))
        .await;
    browser.until("location.search.includes('kept=1')").await;
}
