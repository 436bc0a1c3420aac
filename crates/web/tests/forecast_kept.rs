//! Goal: what the bench expected before a reading stays beside it for good, with the difference. A forecast that bends to
//! the reading would make every reading look like a hit.
//! Method: the forecast is noted from the API before the reading comes; the same figure must stand in state, page, grid and
//! record afterwards, whatever is read later. Differences are counted here.

use crate::support::truth::near;
use crate::support::{Bench, although, planned, reading};
use axum::http::StatusCode;
use quantity::{SwingWeight, decimal};
use serde_json::{Value, json};

/// A forecast as the API gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Forecast {
    value: f64,
    band: f64,
}

impl Forecast {
    fn of(forecast: &Value) -> Self {
        let figure = |name: &str| forecast[name].as_f64().unwrap_or_else(|| panic!("no {name}: {forecast}"));
        Self { value: figure("value"), band: figure("band") }
    }

    /// As a page writes it: `D9.7 ± 0.6`.
    fn words(self) -> String {
        let band = decimal(self.band.max(0.05), 1);
        format!("{} ± {band}", SwingWeight::from_points(self.value).letter(1))
    }

    fn near(self, other: Self, of: &str) {
        near(of, self.value, other.value, 1e-9);
        near(of, self.band, other.band, 1e-9);
    }
}

/// What is expected of a swing weight now; once it is read, what stood before.
async fn expected(bench: &Bench, slot: usize, step: &str) -> Forecast {
    Forecast::of(&bench.asked(slot, step, "swing_weight").await["expected"])
}

/// Reads a swing weight: the reading as it was kept.
async fn read(bench: &Bench, slot: usize, step: &str, points: f64) -> Value {
    let entry = json!([{ "what": "swing_weight", "value": points }]);
    bench.made("/jobs/1/readings", reading(slot, step, entry)).await["readings"][0].clone()
}

async fn take_back(bench: &Bench, reading: &Value) {
    let id = reading["id"].as_str().expect("an identity");
    let word = json!({ "reason": "it was seated askew", "by": "Ada" });
    bench.made(&format!("/jobs/1/readings/{id}/take-back"), word).await;
}

/// The readings of a club in the record.
async fn recorded(bench: &Bench, slot: usize) -> Vec<Value> {
    let record = bench.get("/jobs/1/record").await;
    record["clubs"][slot - 1]["readings"].as_array().expect("readings").clone()
}

/// The row of a club in the set grid.
fn row<'p>(page: &'p str, number: &str) -> &'p str {
    let rows = page.split("<tr").find(|row| row.contains(&format!(">{number}</a></th>")));
    rows.unwrap_or_else(|| panic!("no row of the {number}: {page}")).split("</tr>").next().expect("a row")
}

/// Forecast, reading and difference of a dry swing weight stand on every screen and in the record.
async fn stands(bench: &Bench, slot: usize, number: &str, before: Forecast, read: f64, difference: &str) {
    expected(bench, slot, "dry").await.near(before, "the state of the club");
    let kept = recorded(bench, slot).await;
    let kept = kept.iter().find(|r| r["stands"] == json!(true) && r["reading"]["step"] == "dry").expect("the reading");
    Forecast::of(&kept["reading"]["forecast"]).near(before, "the record");
    near("the reading", kept["reading"]["value"].as_f64().expect("a value"), read, 1e-9);

    let letters = SwingWeight::from_points(read).letter(1);
    let page = bench.page(&format!("/bench/1/{slot}?step=dry&kept=1")).await.text;
    let middle = SwingWeight::from_points(before.value).letter(1);
    let band = decimal(before.band.max(0.05), 1);
    assert!(
        page.contains(&format!("<span class=\"figure-value\">{middle}</span>")),
        "{middle} is not the largest: {page}"
    );
    assert!(page.contains(&format!("± {band} expected")), "± {band} expected: {page}");
    assert!(page.contains(&format!("read: {letters}, {difference} from expected")), "{letters}, {difference}: {page}");
    let line = format!("expected {}, {difference}", before.words());
    assert!(page.contains(&line), "among the readings of the club: {line}: {page}");
    let grid = bench.page("/bench/1/grid/dry?at=8").await.text;
    let row = row(&grid, number);
    let cell = format!("<td class=\"grid-expected\" role=\"cell\">{}</td>", before.words());
    assert!(row.contains(&cell), "{cell}: {row}");
    assert!(row.contains(&letters) && row.contains(&format!("<span class=\"small\">{difference}</span>")), "{row}");
    assert!(bench.page("/records/1").await.text.contains(&line), "the record's page: {line}");
}

#[tokio::test]
async fn what_was_expected_stays_beside_the_reading() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = expected(&bench, 1, "dry").await;
    let value = before.value + 0.34;
    let kept = read(&bench, 1, "dry", value).await;
    Forecast::of(&kept["forecast"]).near(before, "the answer to the reading");
    stands(&bench, 1, "4", before, value, "+0.3").await;

    // The belief did learn: what is expected of the next club has moved towards the reading, the forecast has not.
    let second = expected(&bench, 2, "dry").await;
    assert!(second.band < before.band, "{second:?} after {before:?}");
    read(&bench, 2, "dry", second.value - 0.12).await;
    stands(&bench, 2, "5", second, second.value - 0.12, "−0.1").await;
    // Later readings of this club and of others change nothing about it.
    for (slot, step) in [(1, "tip"), (3, "dry"), (4, "dry"), (2, "tip")] {
        let expected = bench.expected(slot, step).await;
        read(&bench, slot, step, expected - 0.2).await;
    }
    let head = json!([{ "what": "head_mass", "value": 244.6 }]);
    bench.made("/jobs/1/readings", although(reading(1, "weighed", head), "weighed again")).await;
    stands(&bench, 1, "4", before, value, "+0.3").await;
    stands(&bench, 2, "5", second, second.value - 0.12, "−0.1").await;
}

/// A reading that cannot be is doubted, and still the forecast stands that it missed.
#[tokio::test]
async fn a_doubted_reading_keeps_the_forecast_that_it_missed() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = expected(&bench, 1, "dry").await;
    let value = before.value - 5.04;
    read(&bench, 1, "dry", value).await;
    assert_eq!(bench.asked(1, "dry", "swing_weight").await["doubted"], json!(true));
    expected(&bench, 1, "dry").await.near(before, "the state");
    let page = bench.page("/bench/1/1?step=dry&kept=1").await.text;
    assert!(page.contains("−5.0 from expected"), "{page}");
    // Stood by, it counts: every other forecast moves, its own does not.
    let other = expected(&bench, 2, "dry").await;
    let id = recorded(&bench, 1).await[0]["reading"]["id"].as_str().expect("an identity").to_owned();
    let word = json!({ "reason": "read it three times", "by": "Ada" });
    bench.made(&format!("/jobs/1/readings/{id}/insist"), word).await;
    expected(&bench, 1, "dry").await.near(before, "the state");
    assert_ne!(expected(&bench, 2, "dry").await, other);
}

#[tokio::test]
async fn a_reading_taken_back_leaves_no_trace_in_the_next_forecast() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = expected(&bench, 1, "dry").await;
    let wrong = read(&bench, 1, "dry", before.value + 0.41).await;
    let with_it = expected(&bench, 2, "dry").await;
    take_back(&bench, &wrong).await;
    // What is expected now is what was expected before it came, and that is what the next reading keeps.
    expected(&bench, 1, "dry").await.near(before, "after it was taken back");
    assert_eq!(bench.asked(1, "dry", "swing_weight").await.get("reading"), None);
    let second = expected(&bench, 2, "dry").await;
    assert_ne!(second, with_it, "the wrong reading had told of the other club, too");
    let right = read(&bench, 1, "dry", before.value - 0.2).await;
    Forecast::of(&right["forecast"]).near(before, "the next reading");
    stands(&bench, 1, "4", before, before.value - 0.2, "−0.2").await;
    // The one that was taken back keeps its own forecast in the record, struck out.
    let kept = recorded(&bench, 1).await;
    assert_eq!((kept.len(), &kept[0]["stands"], &kept[1]["stands"]), (2, &json!(false), &json!(true)));
    Forecast::of(&kept[0]["reading"]["forecast"]).near(before, "the one that was taken back");
    assert_eq!(kept[0]["reading"]["taken_back"]["words"], "it was seated askew");
}

/// The forecast of another club, read while a wrong reading stood, is what stood then. It is not changed when that one goes;
/// the next one is made without it.
#[tokio::test]
async fn a_forecast_made_with_a_wrong_reading_stays_as_it_stood() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let clean = expected(&bench, 3, "dry").await;
    let first = expected(&bench, 1, "dry").await;
    let wrong = read(&bench, 1, "dry", first.value + 0.4).await;
    let second = expected(&bench, 2, "dry").await;
    let other = read(&bench, 2, "dry", second.value).await;
    take_back(&bench, &wrong).await;
    stands(&bench, 2, "5", second, second.value, "0.0").await;
    take_back(&bench, &other).await;
    expected(&bench, 3, "dry").await.near(clean, "with both gone");
    let third = read(&bench, 3, "dry", clean.value).await;
    Forecast::of(&third["forecast"]).near(clean, "the reading of a third club");
}

/// What was typed wrongly and entered again must not make itself look right; a second reading of the same club does count.
#[tokio::test]
async fn a_correction_is_held_against_the_forecast_without_the_slip() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = expected(&bench, 1, "dry").await;
    read(&bench, 1, "dry", before.value + 0.5).await;
    let corrected = read(&bench, 1, "dry", before.value - 0.24).await;
    Forecast::of(&corrected["forecast"]).near(before, "the correction");
    stands(&bench, 1, "4", before, before.value - 0.24, "−0.2").await;
    // The same club seated anew and read once more: the first reading counts in what is expected of the second.
    let entry = json!([{ "what": "swing_weight", "value": before.value - 0.22, "again": true }]);
    let again = bench.made("/jobs/1/readings", reading(1, "dry", entry)).await["readings"][0].clone();
    let forecast = Forecast::of(&again["forecast"]);
    assert!(forecast.band < before.band / 2.0, "{forecast:?} after {before:?}");
    near("the second reading", forecast.value, before.value - 0.24, 0.05);
}

/// Two figures of one entry are read at once: neither tells what is expected of the other.
#[tokio::test]
async fn figures_read_at_once_are_held_against_the_forecast_before_both() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let asked = async |what: &str| Forecast::of(&bench.asked(1, "weighed", what).await["expected"]);
    let (head, grip) = (asked("head_mass").await, asked("grip_mass").await);
    let entries =
        json!([{ "what": "head_mass", "value": head.value + 0.3 }, { "what": "grip_mass", "value": grip.value - 0.2 }]);
    let kept = bench.made("/jobs/1/readings", reading(1, "weighed", entries)).await;
    Forecast::of(&kept["readings"][0]["forecast"]).near(head, "the head");
    Forecast::of(&kept["readings"][1]["forecast"]).near(grip, "the grip");
    let page = bench.page("/bench/1/1?step=weighed").await.text;
    assert!(page.contains("+0.3 g from expected") && page.contains("−0.2 g from expected"), "{page}");
    // What has no forecast says so by leaving it out, and no difference is made up.
    let loft = json!([{ "what": "loft", "value": 21.4 }]);
    let kept = bench.made("/jobs/1/readings", reading(1, "received", loft)).await;
    assert_eq!(kept["readings"][0].get("forecast"), None, "{kept}");
    let page = bench.page("/bench/1/1?step=received").await.text;
    assert!(page.contains("read: 21.4°") && !page.contains("21.4°, +"), "{page}");
}

/// A reading sent twice was read once: the forecast is that of the first time.
#[tokio::test]
async fn a_reading_sent_twice_keeps_its_first_forecast() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = expected(&bench, 1, "dry").await;
    let mut entry = reading(1, "dry", json!([{ "what": "swing_weight", "value": before.value + 0.3 }]));
    entry["request_key"] = json!("tablet-4-0001");
    bench.made("/jobs/1/readings", entry.clone()).await;
    let second = bench.expected(2, "dry").await;
    read(&bench, 2, "dry", second).await;
    let (status, kept) = bench.post("/jobs/1/readings", entry).await;
    assert_eq!(status, StatusCode::OK, "{kept}");
    Forecast::of(&kept["readings"][0]["forecast"]).near(before, "sent again");
    expected(&bench, 1, "dry").await.near(before, "the state");
}

/// What the balance scale shows on the morning after is forecast with what it is off by on another day; what is believed of
/// the clubs stays, and the screen is not one that was kept from the evening.
#[tokio::test]
async fn a_night_widens_what_the_scale_will_show_and_not_the_club() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let first = expected(&bench, 1, "dry").await;
    read(&bench, 1, "dry", first.value + 0.3).await;
    let evening = expected(&bench, 2, "dry").await;
    let finish = |job: Value| job["clubs"][1]["finish"].clone();
    let finish_before = finish(bench.get("/jobs/1").await);
    bench.clock.advance(jiff::SignedDuration::from_hours(4));
    expected(&bench, 2, "dry").await.near(evening, "four hours later");
    bench.clock.advance(jiff::SignedDuration::from_hours(12));
    let morning = expected(&bench, 2, "dry").await;
    assert!(morning.band > evening.band, "{morning:?} after {evening:?}");
    let finish_now = finish(bench.get("/jobs/1").await);
    for figure in ["swing_weight_points", "band_points"] {
        let of = |finish: &Value| finish[figure].as_f64().unwrap_or_else(|| panic!("no {figure}: {finish}"));
        near(figure, of(&finish_now), of(&finish_before), 1e-6);
    }
    // Kept with the reading is the forecast of the morning, on which it was read.
    let kept = read(&bench, 2, "dry", morning.value).await;
    Forecast::of(&kept["forecast"]).near(morning, "the reading of the morning");
}
