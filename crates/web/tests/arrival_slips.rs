//! Goal: a slip while a club is read as it came is doubted, and good readings are not. Method: a true club, worked out by hand as in
//! `club_work`, whose swing weight on arrival is typed with a wrong letter, so 10 points off, or its figures exchanged.

use crate::club_work::{Real, note, read, shop_with_grips, tenth};
use crate::support::Bench;
use serde_json::{Value, json};

async fn doubted(bench: &Bench) -> Vec<(String, String)> {
    let steps = bench.get("/jobs/1").await["clubs"][0]["steps"].clone();
    let mut found = Vec::new();
    for step in steps.as_array().unwrap() {
        for ask in step["asks"].as_array().unwrap().iter().filter(|ask| ask["doubted"] == json!(true)) {
            found.push((step["key"].as_str().unwrap().to_owned(), ask["what"].as_str().unwrap().to_owned()));
        }
    }
    found
}

async fn regrip(bench: &Bench, arrival: Value) {
    note(bench, arrival).await;
    let asked = json!({ "club": "C1", "kind": "regrip", "grip_model": "OLIVINE" });
    bench.made("/jobs", json!({ "due": "2026-03-09", "clubs": [asked], "by": "Ada" })).await;
}

/// The club was read at the desk, and the bench types another letter.
#[tokio::test]
async fn another_letter_than_at_the_desk_is_doubted_at_once() {
    let bench = shop_with_grips().await;
    let real = Real::seven();
    let true_points = tenth(real.points(true));
    regrip(
        &bench,
        json!({ "swing_weight_points": true_points, "total_mass_g": tenth(real.mass()), "length_mm": 939.8 }),
    )
    .await;
    let slip = read(&bench, 1, 1, "arrived", json!([{ "what": "swing_weight", "value": true_points + 10.0 }])).await;
    assert_eq!(slip["meaning"]["tone"], "doubt", "{slip}");
    assert_eq!(doubted(&bench).await, [("arrived".to_owned(), "swing_weight".to_owned())]);
}

/// Nothing was read at the desk. What comes off is weighed, and the bare club shows that one of the two was a slip.
#[tokio::test]
async fn a_slip_on_arrival_comes_out_with_the_bare_club() {
    for off in [10.0, -10.0] {
        let bench = shop_with_grips().await;
        let real = Real::seven();
        regrip(&bench, json!({ "length_mm": 939.8 })).await;
        let typed = tenth(real.points(true)) + off;
        read(&bench, 1, 1, "arrived", json!([{ "what": "swing_weight", "value": typed }])).await;
        for (what, value) in
            [("grip_mass", real.grip.0), ("tape_mass", real.tape.0), ("swing_weight", tenth(real.points(false)))]
        {
            read(&bench, 1, 1, "stripped", json!([{ "what": what, "value": value }])).await;
        }
        let found = doubted(&bench).await;
        assert!(found.iter().any(|(_, what)| what == "swing_weight"), "{off}: {found:?}");
    }
}

#[tokio::test]
async fn good_readings_on_arrival_are_not_doubted() {
    let bench = shop_with_grips().await;
    let real = Real::seven();
    regrip(&bench, json!({ "length_mm": 939.8 })).await;
    read(&bench, 1, 1, "arrived", json!([{ "what": "swing_weight", "value": tenth(real.points(true)) }, { "what": "total_mass", "value": tenth(real.mass()) }])).await;
    for (what, value) in
        [("grip_mass", real.grip.0), ("tape_mass", real.tape.0), ("swing_weight", tenth(real.points(false)))]
    {
        read(&bench, 1, 1, "stripped", json!([{ "what": what, "value": value }])).await;
    }
    assert_eq!(doubted(&bench).await, []);
}
