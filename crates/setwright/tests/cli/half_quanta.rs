//! Where a cost is half of the unit in which plans are counted, the commands give plans: a tray of 1.9, 3.9, 6.1 and
//! 7.9 g with a job due in a week, and whole masses on the sheet with jobs due tomorrow.

use crate::run::Shop;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use serde_json::{Value, json};

const MODELS: &str = include_str!("../../../../docs/example/models.json");
const PARTS: &str = include_str!("../../../../docs/example/parts.csv");
const SHEET: &str = include_str!("../../../../docs/example/sheet.json");

/// The shop of `docs/example`, its tray of four weights with these masses, and jobs due in so many days; `masses`: each
/// club with a target for its whole mass.
fn shop(tray: [&str; 4], due_in_days: &[i64], masses: bool) -> Shop {
    let shop = Shop::empty();
    shop.write("models.json", MODELS);
    let mut parts = PARTS.to_owned();
    for (model, mass_g) in ["TIP-2", "TIP-4", "TIP-6", "TIP-8"].iter().zip(tray) {
        parts = parts.replace(&format!("{model},,,"), &format!("{model},,{mass_g},"));
    }
    shop.write("parts.csv", parts);
    shop.run(&["import", "models.json"]).made();
    shop.run(&["import", "parts.csv"]).done();
    let mut sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    if masses {
        for (club, i) in sheet["clubs"].as_array_mut().expect("clubs").iter_mut().zip(0..) {
            club["total_mass_g"] = json!(411.3 + 6.4 * f64::from(i));
        }
    }
    shop.write("sheet.json", sheet.to_string());
    for &days in due_in_days {
        let mut due = Timestamp::now().to_zoned_datetime(TimeZone::system()).date();
        (0..days).for_each(|_| due = due.tomorrow().expect("a day"));
        sheet["due"] = json!(due);
        shop.write("job.json", sheet.to_string());
        shop.run(&["sheet", "add", "job.json"]).done();
    }
    shop
}

const ODD: [&str; 4] = ["1.9", "3.9", "6.1", "7.9"];

#[test]
fn a_day_is_planned_with_a_job_due_in_a_week_and_a_tray_a_tenth_off() {
    for jobs in 1..=3 {
        let shop = shop(ODD, &[7; 3][..jobs], false);
        for seed in ["1", "2", "3"] {
            let day = shop.run(&["match", "--day", "--seconds", "0.1", "--seed", seed, "--json"]).done().json();
            assert_eq!(day["jobs"].as_array().map(Vec::len), Some(jobs));
        }
    }
}

#[test]
fn a_day_is_planned_with_target_masses_and_jobs_due_tomorrow() {
    let shop = shop([""; 4], &[1; 3], true);
    for seed in 0..20 {
        let seed = seed.to_string();
        let day = shop.run(&["match", "--day", "--seconds", "0.1", "--seed", &seed, "--json"]).done().json();
        assert_eq!(day["jobs"].as_array().map(Vec::len), Some(3));
    }
}

#[test]
fn a_set_is_planned_with_a_tray_a_tenth_off_and_so_are_its_plans_to_choose_from() {
    let shop = shop(ODD, &[], false);
    let found = shop.run(&["match", "--set", "sheet.json", "--json"]).done().json();
    assert_eq!(found["plan"]["proven"], json!(true));
    assert!(found["options"].as_array().is_some_and(|o| o.len() >= 2), "{found}");
}

#[test]
fn a_set_is_planned_at_odd_prices_of_whole_mass() {
    let shop = shop([""; 4], &[], true);
    for price in ["0.009", "0.011", "0.013", "0.015", "0.019"] {
        let weight = format!("mass_per_g={price}");
        let found = shop.run(&["match", "--set", "sheet.json", "--weight", &weight, "--json"]).done().json();
        assert_eq!(found["plan"]["missing"], json!([]), "{price}");
        assert!(found["options"].as_array().is_some_and(|o| !o.is_empty()), "{price}");
    }
}
