//! A regrip by the pages alone: a customer, their club, the job, a slip at the bench, the record.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};

#[tokio::test]
async fn a_regrip_from_the_customer_to_the_record() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/customers/new").await;
    fill(&browser, "name", "Wilmot Quenby").await;
    submit(&browser, "name").await;
    leads(
        &browser,
        "location.pathname.startsWith('/customers/') && document.querySelector('a[href^=\"/clubs/new?\"]')",
    )
    .await;
    browser.press("a[href^='/clubs/new?']").await;
    leads(&browser, "location.pathname === '/clubs/new' && document.querySelector('[name=owner]')").await;
    fill(&browser, "number", "7").await;
    // A slip: it is told beside its field, nothing is noted, and what was typed stays.
    fill(&browser, "swing_weight", "D2..1").await;
    submit(&browser, "number").await;
    leads(&browser, "document.querySelector('#swing_weight-error')?.innerText").await;
    assert_eq!(browser.value("document.querySelector('[name=number]').value").await, json!("7"));
    assert_eq!(bench.api("/clubs?search=quenby").as_array().map(Vec::len), Some(0));
    fill(&browser, "swing_weight", "D2.1").await;
    submit(&browser, "number").await;
    leads(&browser, "location.pathname.startsWith('/clubs/C')").await;
    browser.press("a[href*='kind=regrip']").await;
    leads(&browser, "document.querySelector('[name=\"grip_model-C16\"]')").await;
    let free = bench.api("/parts?kind=grip&state=free");
    let model = free["parts"].as_array().or_else(|| free.as_array()).expect("parts")[0]["model"].clone();
    fill(&browser, "grip_model-C16", model.as_str().expect("a model")).await;
    fill(&browser, "due", "2031-04-01").await;
    submit(&browser, "due").await;
    leads(&browser, "location.pathname.startsWith('/bench/')").await;
    let job = browser.value("Number(location.pathname.split('/')[2])").await.as_f64().expect("a job") as i64;

    read(&browser, job, "arrived", "D2..1").await;
    leads(&browser, "document.querySelector('#read-swing_weight-error')?.innerText").await;
    assert!(
        record(&bench, job)["clubs"][0]["readings"].as_array().is_none_or(Vec::is_empty),
        "nothing is kept of a slip"
    );
    read(&browser, job, "arrived", "D2.1").await;
    leads(&browser, "location.search.includes('kept=1')").await;
    read(&browser, job, "finish", "D2.1").await;
    leads(&browser, "location.search.includes('kept=1')").await;
    browser.open(&format!("/bench/{job}/1?step=hand_over")).await;
    leads(&browser, "document.readyState === 'complete' && document.querySelector('form[data-keep]')").await;
    if browser.value("!!document.querySelector('form[data-keep] [name=reason]')").await == json!(true) {
        fill(&browser, "reason", "the player has seen it").await;
    }
    browser.press("form[data-keep] button").await;
    let over = "fetch('/api/v1/jobs?state=finished').then((a) => a.json()).then((all) => all.some((job) => job.number === JOB))";
    let over = over.replace("JOB", &job.to_string());
    browser.until("document.readyState === 'complete'").await;
    for _ in 0..100 {
        if browser.value(&over).await == json!(true) {
            break;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    assert_eq!(record(&bench, job)["state"], "finished");
    browser.open(&format!("/records/{job}")).await;
    leads(&browser, "document.querySelector('main').innerText.includes('Wilmot Quenby')").await;
    browser.open("/clubs/C16").await;
    leads(&browser, "document.querySelector('main').innerText.includes('Regrip')").await;
    assert_eq!(browser.console_errors().await, Vec::<String>::new());
    browser.close().await;
}

fn record(bench: &Bench, job: i64) -> Value {
    bench.api(&format!("/jobs/{job}/record"))
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

async fn leads(browser: &Browser, expression: &str) {
    browser.until(expression).await;
}

async fn read(browser: &Browser, job: i64, step: &str, typed: &str) {
    browser.open(&format!("/bench/{job}/1?step={step}")).await;
    browser.until("document.readyState === 'complete' && document.querySelector('[name=read-swing_weight]')").await;
    fill(browser, "read-swing_weight", typed).await;
    browser.press("form[data-keep] button").await;
}
