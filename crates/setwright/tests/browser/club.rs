//! One club from its dry reading to the record, with no pointer; its first reading also without scripts; the set grid.

use crate::harness::{Bench, Browser};
use serde_json::Value;

/// The 4 iron of the set at the bench.
const SLOT: i64 = 1;
/// The Tab key, as WebDriver names it.
const TAB: char = '\u{e004}';
/// More stops of the Tab key than any page has.
const TAB_STOPS: usize = 90;

#[tokio::test]
async fn one_club_from_dry_to_the_record_by_keyboard() {
    let bench = Bench::open();
    let browser = bench.browser().await;

    a_slip_then_the_reading(&bench, &browser).await;
    assert_eq!(ask(&bench, SLOT, "dry", "swing_weight")["doubted"], false);
    swing_weight(&bench, &browser, "tip", 0.1).await;

    // Nothing that needs the joint before it is glued; the key of the way to a batch leads there.
    browser.open("/bench/1/1?step=cured").await;
    shows(&browser, ".waits", "Not glued yet").await;
    browser.keys("g").await;
    cursor_in(&browser, "lot").await;
    browser.enter("L-7").await;
    shows(&browser, "main", "Lot L-7").await;
    browser.open("/bench/1/1?step=cured").await;
    shows(&browser, ".waits", "Waits for handling strength until").await;

    // One word for the batch opens every step that needs no more than handling strength.
    let_pass(&browser, "turned").await;
    tab_to(&browser, "form[data-keep] button").await;
    browser.enter("").await;
    kept(&browser, "turned").await;

    swing_weight(&bench, &browser, "cured", 0.1).await;
    swing_weight(&bench, &browser, "gripped", -0.1).await;
    browser.open("/bench/1/1?step=finish").await;
    let finish = finish(&bench, &browser).await;

    let target = bench.api("/jobs/1")["job"]["clubs"][0]["target"].clone();
    let_pass(&browser, "bend").await;
    cursor_in(&browser, "read-loft").await;
    browser.keys(&format!("{}{TAB}", target["loft_deg"])).await;
    cursor_in(&browser, "read-lie").await;
    browser.enter(&target["lie_deg"].to_string()).await;
    kept(&browser, "bend").await;

    browser.open("/records/1").await;
    let row = "[...document.querySelectorAll('section')].find((s) => s.querySelector('h2, h3')?.innerText.startsWith('4-iron'))
        ?.querySelector('table').rows[1].innerText";
    let row = browser.value(row).await;
    let cells: Vec<&str> = row.as_str().expect("the 4 iron has its table").split('\t').map(str::trim).collect();
    assert_eq!(cells[0], "swing weight", "{row}");
    let built = points(cells[2].split('±').next().expect("a figure"));
    assert!((built - finish).abs() < 0.15, "read {finish}, in the record {built}");
    assert!(["in", "too close to say"].contains(&cells[3]), "{row}");
    let passed = bench.api("/jobs/1/record")["clubs"][0]["let_pass"].clone();
    let strengths: Vec<&Value> = passed.as_array().expect("let pass").iter().map(|p| &p["strength"]).collect();
    assert_eq!(strengths, ["full", "handling"], "the newest first, one for each strength");
    browser.close().await;
}

#[tokio::test]
async fn the_first_reading_without_scripts() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.scripts_off().await;
    let probe = "data:text/html,<title>off</title><script>document.title = 'on'</script>";
    browser.driver.goto(probe).await.expect("a page");
    assert_eq!(browser.driver.title().await.expect("a title"), "off", "this browser runs scripts");
    a_slip_then_the_reading(&bench, &browser).await;
    browser.close().await;
}

#[tokio::test]
async fn three_clubs_of_the_set_grid_with_digits_and_enter() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/bench/1/grid/cpm").await;
    for (slot, cpm) in [(1, "252"), (2, "256"), (3, "261")] {
        grid_at(&browser, slot).await;
        browser.enter(cpm).await;
    }
    grid_at(&browser, 4).await;
    for (slot, cpm) in [(1, 252.0), (2, 256.0), (3, 261.0)] {
        assert_eq!(ask(&bench, slot, "cpm", "cpm")["reading"]["value"], cpm);
    }
    assert!(bench.readings(4).is_empty());
    browser.close().await;
}

/// What cannot be read is told beside its field and saves nothing; then the reading.
async fn a_slip_then_the_reading(bench: &Bench, browser: &Browser) {
    browser.open("/bench/1/1?step=dry").await;
    let expected = points(&browser.text(".expected .figure-value").await);
    cursor_in(browser, "read-swing_weight").await;
    browser.enter("D9..x").await;
    browser.until("document.querySelector('#read-swing_weight-error')?.innerText").await;
    cursor_in(browser, "read-swing_weight").await;
    assert_eq!(browser.value("document.activeElement.value").await, "D9..x");
    assert!(bench.readings(1).is_empty());

    let reading = hurried(expected + 0.2);
    browser.enter_instead(&reading).await;
    kept(browser, "dry").await;
    shows(browser, ".verdict", "Finish").await;
    browser.until("document.querySelector('.verdict:not(.doubt)')").await;
    assert_eq!(bench.readings(1), [reading]);
}

/// Reads a swing weight so far from what the page expects.
async fn swing_weight(bench: &Bench, browser: &Browser, step: &str, off_points: f64) {
    browser.open(&format!("/bench/1/{SLOT}?step={step}")).await;
    let reading = points(&browser.text(".expected .figure-value").await) + off_points;
    cursor_in(browser, "read-swing_weight").await;
    browser.enter(&hurried(reading)).await;
    kept(browser, step).await;
    shows(browser, ".verdict", "Finish").await;
    let ask = ask(bench, SLOT, step, "swing_weight");
    let value = ask["reading"]["value"].as_f64().expect("kept");
    assert!((value - reading).abs() < 0.001, "typed {}, kept {value}", hurried(reading));
    assert_eq!(ask["doubted"], false, "{step}: {ask}");
}

/// Three entries of one step, Tab between them; gives the swing weight in points.
async fn finish(bench: &Bench, browser: &Browser) -> f64 {
    let expected = |what: &str| ask(bench, SLOT, "finish", what)["expected"]["value"].as_f64().expect("expected");
    let reading = (expected("swing_weight") * 10.0).round() / 10.0;
    let sixteenths = (expected("finished_length") / 25.4 * 16.0).round();
    cursor_in(browser, "read-swing_weight").await;
    browser.keys(&format!("{}{TAB}", hurried(reading))).await;
    cursor_in(browser, "read-total_mass").await;
    browser.keys(&format!("{:.1}{TAB}", expected("total_mass"))).await;
    cursor_in(browser, "read-finished_length").await;
    browser.enter(&format!("{} {}/16", (sixteenths / 16.0).floor(), sixteenths % 16.0)).await;
    kept(browser, "finish").await;
    shows(browser, ".verdict", "Finish").await;
    for what in ["swing_weight", "total_mass", "finished_length"] {
        let ask = ask(bench, SLOT, "finish", what);
        assert!(ask["reading"]["value"].is_f64() && ask["doubted"] == false, "{what}: {ask}");
    }
    reading
}

/// Opens a step that waits for the joint and lets it pass with a reason; then the step can be worked.
async fn let_pass(browser: &Browser, step: &str) {
    browser.open(&format!("/bench/1/{SLOT}?step={step}")).await;
    shows(browser, ".waits", "Waits for").await;
    tab_to(browser, "details:has([name=reason]) > summary").await;
    browser.enter("").await;
    tab_to(browser, "[name=reason]").await;
    browser.enter("the joint was tried by hand").await;
    browser.until("document.readyState === 'complete' && document.querySelector('form[data-keep] button')").await;
}

/// Waits until the page says that the entry was kept.
async fn kept(browser: &Browser, step: &str) {
    browser.until(&format!("document.readyState === 'complete' && location.search === '?step={step}&kept=1'")).await;
}

/// Waits until the first such element holds these words.
async fn shows(browser: &Browser, selector: &str, words: &str) {
    browser.until(&format!("document.querySelector('{selector}')?.innerText.includes('{words}')")).await;
}

/// Waits until the cursor is in the field of this name.
async fn cursor_in(browser: &Browser, name: &str) {
    browser.until(&format!("document.readyState === 'complete' && document.activeElement?.name === '{name}'")).await;
}

/// Waits until the grid's one entry is that of this club, with the cursor in it.
async fn grid_at(browser: &Browser, slot: i64) {
    cursor_in(browser, "typed").await;
    browser.until(&format!("document.querySelector('[name=slot]')?.value === '{slot}'")).await;
    cursor_in(browser, "typed").await;
}

/// Presses Tab until the cursor is there.
async fn tab_to(browser: &Browser, selector: &str) {
    for _ in 0..TAB_STOPS {
        browser.keys(&TAB.to_string()).await;
        if browser.value(&format!("document.activeElement.matches('{selector}')")).await == true {
            return;
        }
    }
    panic!("the Tab key never comes to {selector}");
}

/// What a step of a club asks for one quantity: what is expected, what was read.
fn ask(bench: &Bench, slot: i64, step: &str, what: &str) -> Value {
    let view = bench.api("/jobs/1");
    let find = |list: &Value, key: &str, wanted: &Value| -> Value {
        list.as_array().expect("a list").iter().find(|x| x[key] == *wanted).expect("one of them").clone()
    };
    let club = find(&view["clubs"], "slot", &slot.into());
    find(&find(&club["steps"], "key", &step.into())["asks"], "what", &what.into())
}

/// Points since A0 of a swing weight as a page prints it, such as `E0.3`.
fn points(text: &str) -> f64 {
    let mut signs = text.trim().chars();
    let letter = signs.next().filter(char::is_ascii_uppercase).unwrap_or_else(|| panic!("no letter: {text}"));
    let within: f64 = signs.as_str().parse().unwrap_or_else(|_| panic!("no points: {text}"));
    f64::from(u32::from(letter) - u32::from('A')) * 10.0 + within
}

/// A swing weight as builders type it in a hurry: `e0.3`.
fn hurried(points: f64) -> String {
    let letter = ["a", "b", "c", "d", "e", "f", "g"][(points / 10.0 + 0.005).floor() as usize];
    let within = points - (points / 10.0 + 0.005).floor() * 10.0;
    format!("{letter}{:.1}", within.max(0.0))
}
