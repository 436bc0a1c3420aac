//! Goal: the frequencies of a set, their trims, and taking them are the same by API and page, and what is taken is what the cut
//! says. Method: a planned set of the support module, a steep slope, so that every club has something to trim.

use crate::support::answer::detail;
use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use serde_json::{Value, json};

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a figure: {value}"))
}

#[tokio::test]
async fn a_set_is_trimmed_to_its_slope_by_page_and_api_alike() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let found = bench.get("/jobs/1/cpm?slope=step&step_cpm=6").await;
    let clubs = found["clubs"].as_array().expect("clubs").clone();
    assert_eq!((clubs.len(), &found["slope"]), (8, &json!("step")));
    for (i, club) in clubs.iter().enumerate() {
        let (forecast, band) = (number(&club["forecast_cpm"]), number(&club["band_cpm"]));
        assert!((200.0..420.0).contains(&forecast) && band > 1.0, "{club}");
        // 6 cpm for each half inch that a club is shorter than the first.
        if i > 0 && i < 7 {
            let steps = number(&club["aim_cpm"]) - number(&clubs[0]["aim_cpm"]);
            assert!((steps - 6.0 * i as f64).abs() < 1e-6, "{steps} at {i}");
        }
    }
    // A slope that falls below what any shaft reads is refused, and told.
    let steep = "slope=step&step_cpm=-30&level_cpm=60";
    let told = bench.refused("GET", &format!("/jobs/1/cpm?{steep}"), StatusCode::UNPROCESSABLE_ENTITY, "").await;
    assert!(detail(&told).contains("cpm"), "{told}");
    let trimmed: Vec<&Value> = clubs.iter().filter(|club| club.get("trim").is_some()).collect();
    assert!(trimmed.len() >= 4, "{found}");
    let page = bench.page("/bench/1/cpm?slope=step&step=6").await;
    page.says(StatusCode::OK, &["Trim to frequency", "A tip that is cut stays cut", "Take these tip trims"]);
    assert!(bench.page("/bench/1/1?step=cut").await.text.contains("/bench/1/cpm"), "the cut leads there");

    let before = bench.get("/jobs/1").await["job"]["clubs"].clone();
    let (status, taken) = bench.post("/jobs/1/cpm", json!({ "slope": "step", "step_cpm": 6, "by": "Ada" })).await;
    assert_eq!(status, StatusCode::OK, "{taken}");
    assert_eq!(taken["taken"].as_array().map(Vec::len), Some(trimmed.len()));
    let after = bench.get("/jobs/1").await["job"]["clubs"].clone();
    for club in &trimmed {
        let at = number(&club["slot"]) as usize - 1;
        let (old, new) = (&before[at]["plan"], &after[at]["plan"]);
        let more = number(&club["trim"]["more_mm"]);
        assert!((number(&new["tip_trim_mm"]) - number(&old["tip_trim_mm"]) - more).abs() < 1e-9);
        assert!((number(&old["butt_cut_mm"]) - number(&new["butt_cut_mm"]) - more).abs() < 1e-9);
        assert_eq!(new["cut_shaft_mm"], old["cut_shaft_mm"], "the club keeps its length");
    }
    // What is left is less than a saw, and another tip weight leaves the trim as it is.
    let left = bench.get("/jobs/1/cpm?slope=step&step_cpm=6").await;
    let level = |doc: &Value| number(&doc["inside_as_planned"]);
    assert!(level(&left) > level(&found), "{left}");
    let back = json!({ "trims": taken["before"], "by": "Ada" });
    assert_eq!(bench.post("/jobs/1/cpm", back).await.0, StatusCode::OK);
    let again = bench.get("/jobs/1").await["job"]["clubs"].clone();
    assert_eq!(again[0]["plan"]["tip_trim_mm"], before[0]["plan"]["tip_trim_mm"]);

    // A cut shaft keeps its tip; a club is named once; a trim longer than the shaft has to give is refused by its limit.
    let length = bench.get("/jobs/1").await["job"]["clubs"][0]["plan"]["cut_shaft_mm"].clone();
    bench.made("/jobs/1/readings", reading(1, "cut", json!([{ "what": "shaft_length", "value": length }]))).await;
    let one = |slot: i64, mm: f64| json!({ "trims": [{ "slot": slot, "tip_trim_mm": mm }], "by": "Ada" });
    let (status, problem) = bench.post("/jobs/1/cpm", one(1, 20.0)).await;
    assert_eq!(status, StatusCode::CONFLICT, "{problem}");
    assert!(detail(&problem).contains("not trimmed any more"), "{problem}");
    let (status, problem) = bench.post("/jobs/1/cpm", one(2, 299.0)).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{problem}");
    let twice =
        json!({ "trims": [{ "slot": 2, "tip_trim_mm": 20.0 }, { "slot": 2, "tip_trim_mm": 21.0 }], "by": "Ada" });
    assert_eq!(bench.post("/jobs/1/cpm", twice).await.0, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn the_clamp_is_set_on_its_page_and_counts() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = number(&bench.get("/jobs/1/cpm").await["clubs"][0]["forecast_cpm"]);
    bench.page("/scales/setup").await.says(StatusCode::OK, &["Frequency clamp", "5.00 in"]);
    let form = [("form", "clamp"), ("held_mm", "100 mm"), ("test_weight_g", "205 g"), ("test_weight_centre_mm", "0")];
    let kept = bench.form("/scales/setup/clamp", &form).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    assert_eq!(bench.get("/shop").await["clamp"]["held_mm"], json!(100.0));
    // 27 mm more of free shaft: some 5 % slower.
    let after = number(&bench.get("/jobs/1/cpm").await["clubs"][0]["forecast_cpm"]);
    assert!((0.92..0.97).contains(&(after / before)), "{before} to {after}");
    let wrong = [("form", "clamp"), ("held_mm", "5 mm"), ("test_weight_g", ""), ("test_weight_centre_mm", "0")];
    assert_eq!(bench.form("/scales/setup/clamp", &wrong).await.status, StatusCode::UNPROCESSABLE_ENTITY);
}
