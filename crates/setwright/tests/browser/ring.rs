//! Clocks that ring: the calls that a page makes for a tone, a notification and a screen that stays awake are seen through
//! stand-ins, since a headless browser has no loudspeaker and no desktop.

use crate::harness::{Bench, Browser};
use serde_json::{Value, json};

/// Stand-ins that note their calls in `window.calls`; and the batches as they will be when the first pot life is about to end,
/// 25 seconds from the first look, since no test waits for an hour.
const STAND_INS: &str = "
    window.calls = [];
    const node = () => ({ frequency: {}, gain: { setValueAtTime() {}, exponentialRampToValueAtTime() {} }, connect: (to) => to, stop() {},
        start() { calls.push('tone'); } });
    window.AudioContext = class { currentTime = 0; destination = {}; resume() {} createOscillator() { return node(); } createGain() { return node(); } };
    window.Notification = class { static permission = 'granted'; constructor(text) { calls.push('notice: ' + text); } };
    const fetched = window.fetch;
    window.fetch = async (address, ...rest) => {
        const answer = await fetched(address, ...rest);
        if (address !== '/api/v1/batches') return answer;
        const all = await answer.json();
        localStorage['test.sooner'] ??= Date.parse(all[0].pot_life_until) - Date.now() - 25000;
        for (const one of all) for (const kind of ['pot_life_until', 'handling_at', 'full_cure_at'])
            one[kind] = new Date(Date.parse(one[kind]) - localStorage['test.sooner']).toISOString();
        return new Response(JSON.stringify(all));
    };
    Object.defineProperty(navigator, 'wakeLock', { value: { request: (what) => { calls.push('awake: ' + what); return Promise.resolve({ release() {}, addEventListener() {} }); } } });
";

/// Mixes a cup for a club of job 1; gives its number.
async fn cup(browser: &Browser, slot: u32) -> Value {
    let mix = format!(
        "(async () => {{
            const body = {{ job: 1, slots: [{slot}], lot: 'L-7', reason: 'a test of the clocks', by: 'Ada' }};
            const answer = await fetch('/api/v1/batches', {{ method: 'POST', headers: {{ 'Content-Type': 'application/json' }}, body: JSON.stringify(body) }});
            const said = await answer.json();
            return said.batch?.number ?? JSON.stringify(said);
        }})()"
    );
    let number = browser.value(&mix).await;
    assert!(number.is_u64(), "{number}");
    number
}

#[tokio::test]
async fn the_end_of_a_pot_life_rings_on_another_tablet_until_somebody_has_seen_it() {
    let bench = Bench::open();
    let (glue, other) = (bench.browser().await, bench.browser().await);
    glue.open("/glue").await;
    let number = cup(&glue, 1).await;
    other.before_each_page(STAND_INS).await;
    other.open("/stock").await;
    other.until("'ready' in document.documentElement.dataset").await;
    other.keys("\u{e00c}").await; // A touch, so that the page may sound.
    // The last minutes stand over the page, and the screen stays awake.
    other.until("document.querySelector('.ring.soon time')?.textContent.match(/^0:/)").await;
    assert!(other.text(".ring.soon").await.contains(&format!("batch {number}")));
    assert_eq!(other.value("calls.includes('awake: screen')").await, true);
    // It ends: the line, the tone again and again, and one notification.
    other.until_within(std::time::Duration::from_secs(40), "document.querySelector('.ring.now')").await;
    other.until("calls.filter((call) => call === 'tone').length > 5").await;
    let told = other.value("calls.filter((call) => call.startsWith('notice')).join()").await;
    assert!(told.as_str().is_some_and(|t| t.contains("pot life is over") && t.contains(&number.to_string())), "{told}");
    // Put off, it is silent; seen, it is gone on the next page as well.
    other.press(".ring.now button:nth-of-type(1)").await;
    other.until("!document.querySelector('.ring.now')").await;
    let put_off = other.value("Object.values(JSON.parse(localStorage['setwright.rings']).seen)[0] - Date.now()").await;
    assert!(put_off.as_f64().is_some_and(|ms| (200_000.0..=310_000.0).contains(&ms)), "{put_off}");
    other.value("(localStorage['setwright.rings'] = JSON.stringify({ ...JSON.parse(localStorage['setwright.rings']), seen: {} }))").await;
    other.until("document.querySelector('.ring.now')").await;
    other.press(".ring.now button:nth-of-type(2)").await;
    other.until("!document.querySelector('.ring.now')").await;
    other.open("/").await;
    other.until("'ready' in document.documentElement.dataset").await;
    tokio::time::sleep(std::time::Duration::from_secs(3)).await;
    assert_eq!(other.value("!!document.querySelector('.ring.now')").await, json!(false));
    glue.close().await;
    other.close().await;
}
