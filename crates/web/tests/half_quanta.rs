//! Goal: where a cost is half of the unit in which plans are counted, pages and API give plans. Method: the shop of
//! `docs/example` with eight times its parts; a tray of 1.9, 3.9, 6.1 and 7.9 g with ten jobs due in a week, and sheets
//! that ask for whole masses with ten jobs due tomorrow. Of both, such halves are frequent.

use crate::support::Bench;
use axum::http::StatusCode;
use serde_json::{Value, json};

const MODELS: &str = include_str!("../../../docs/example/models.json");
const PARTS: &str = include_str!("../../../docs/example/parts.csv");
const SHEET: &str = include_str!("../../../docs/example/sheet.json");

/// The example's parts so many times over, a little lighter or heavier each time; `tray` are masses of its four weights.
fn parts(times: usize, tray: [&str; 4]) -> Vec<u8> {
    let mut lines = PARTS.lines();
    let mut out = format!("{}\n", lines.next().expect("a head line"));
    for line in lines {
        let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
        if let Some(at) = ["TIP-2", "TIP-4", "TIP-6", "TIP-8"].iter().position(|model| cells[2] == *model) {
            tray[at].clone_into(&mut cells[4]);
            cells[13] = "400".into();
        }
        let single = ["head", "shaft", "grip"].contains(&cells[1].as_str());
        let (code, mass_g) = (cells[0].clone(), cells[4].parse::<f64>());
        for k in 0..if single { times } else { 1 } {
            if let (true, Ok(mass_g)) = (single, &mass_g) {
                cells[0] = format!("{code}.{k}");
                cells[4] = format!("{:.1}", mass_g + 0.1 * (7 * k % 11) as f64 - 0.4);
            }
            out.push_str(&cells.join(","));
            out.push('\n');
        }
    }
    out.into_bytes()
}

/// A shop with that tray, and so many jobs due on a day; `masses`: each club with a target for its whole mass.
async fn shop(tray: [&str; 4], jobs: usize, due: &str, masses: bool) -> (Bench, Value) {
    let bench = Bench::open().await;
    let models: Value = serde_json::from_str(MODELS).expect("models");
    bench.made("/models/import", models).await;
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", parts(8, tray)).await;
    assert_eq!((status, &kept["bad"]), (StatusCode::OK, &json!([])), "{kept}");
    let mut sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    sheet["due"] = json!(due);
    if masses {
        for (club, i) in sheet["clubs"].as_array_mut().expect("clubs").iter_mut().zip(0..) {
            club["total_mass_g"] = json!(411.3 + 6.4 * f64::from(i));
        }
    }
    for _ in 0..jobs {
        crate::support::job_of(&bench, sheet.clone()).await;
    }
    (bench, sheet)
}

const NOMINAL: [&str; 4] = [""; 4];
const ODD: [&str; 4] = ["1.9", "3.9", "6.1", "7.9"];
/// In a week and tomorrow, by the clock of these tests.
const IN_A_WEEK: &str = "2026-03-09";
const TOMORROW: &str = "2026-03-03";

/// Every club of every job of a day.
fn all_built(day: &Value, jobs: usize) {
    let planned = day["jobs"].as_array().expect("jobs");
    assert_eq!(planned.len(), jobs);
    for job in planned {
        assert_eq!(job["plan"]["missing"], json!([]), "job {}", job["number"]);
        assert!(job["plan"]["clubs"].as_array().expect("clubs").iter().all(Value::is_object));
    }
    let (cost, bound) = (day["cost"].as_f64().expect("a cost"), day["bound"].as_f64().expect("a bound"));
    assert!(0.0 <= bound && bound <= cost, "{bound} {cost}");
}

async fn day_by_page_and_api(bench: &Bench, jobs: usize, seeds: u64) {
    let page = bench.page("/plan/day").await;
    page.says(StatusCode::OK, &["Hold these parts"]);
    assert_eq!(page.text.matches("Hold these parts").count(), jobs);
    for seed in 0..seeds {
        let day = bench.made("/match/day", json!({ "seconds": 0.1, "seed": seed })).await;
        all_built(&day, jobs);
    }
}

#[tokio::test]
async fn ten_jobs_due_in_a_week_with_a_tray_a_tenth_off() {
    let (bench, _) = shop(ODD, 10, IN_A_WEEK, false).await;
    day_by_page_and_api(&bench, 10, 4).await;
}

#[tokio::test]
async fn one_of_ten_jobs_due_in_a_week_does_not_lose_the_others() {
    let (bench, mut sheet) = shop(ODD, 9, "2026-05-02", false).await;
    sheet["due"] = json!(IN_A_WEEK);
    crate::support::job_of(&bench, sheet).await;
    day_by_page_and_api(&bench, 10, 7).await;
}

#[tokio::test]
async fn ten_jobs_due_tomorrow_with_target_masses() {
    let (bench, _) = shop(NOMINAL, 10, TOMORROW, true).await;
    day_by_page_and_api(&bench, 10, 20).await;
}

#[tokio::test]
async fn plans_to_choose_from_with_a_tray_a_tenth_off() {
    let (bench, sheet) = shop(ODD, 1, "2026-05-02", false).await;
    let options = bench.made("/jobs/1/plan/options", json!({})).await;
    assert!(options.as_array().is_some_and(|o| o.len() >= 2), "{options}");
    let page = bench.page("/plan/1/options").await;
    page.says(StatusCode::OK, &["Hold these parts", "g in the tips"]);
    let found = bench.made("/match/set", json!({ "sheet": sheet })).await;
    assert_eq!(found["plan"]["proven"], json!(true));
    assert!(found["options"].as_array().is_some_and(|o| o.len() >= 2), "{found}");
}

#[tokio::test]
async fn a_set_with_target_masses_at_odd_prices() {
    let (bench, sheet) = shop(NOMINAL, 0, "2026-05-02", true).await;
    for mass_per_g in [0.009, 0.011, 0.013, 0.015, 0.019] {
        let asked = json!({ "sheet": sheet, "weights": { "mass_per_g": mass_per_g } });
        let found = bench.made("/match/set", asked).await;
        assert_eq!(found["plan"]["missing"], json!([]), "{mass_per_g}");
        assert!(found["options"].as_array().is_some_and(|o| !o.is_empty()), "{mass_per_g}");
    }
}
