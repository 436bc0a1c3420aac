//! Goal: lie, aim and bending as derived by hand, with the trade's rule beside.

use crate::spoken::words;
use clubphysics::{PhysicsError, calc};
use proptest::prelude::*;
use rstest::rstest;
use serde_json::{Value, json};

fn run(input: Value) -> Value {
    calc::run("lie", input).unwrap_or_else(|error| panic!("{error}"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

fn length(new_length_in: f64, hands_in: f64) -> Value {
    run(json!({ "length": {
        "lie_deg": 60.0, "length_mm": 37.5 * 25.4, "new_length_mm": new_length_in * 25.4, "hands_below_butt_mm": hands_in * 25.4
    } }))["length"]
        .clone()
}

/// Derived for 37.5 in at 60°: first order 1.32° per half inch; exact 1.281° longer, 1.370° shorter; hands 4 in down
/// 1.48° to first order. Tolerance: half the last digit.
#[test]
fn length_at_a_fixed_height() {
    let longer = length(38.0, 0.0);
    close(number(&longer["change_deg"]), -1.281, 0.000_5);
    close(number(&longer["first_order_change_deg"]), -1.32, 0.005);
    close(number(&length(37.0, 0.0)["change_deg"]), 1.370, 0.000_5);
    close(number(&length(38.0, 4.0)["first_order_change_deg"]), -1.48, 0.005);
}

proptest! {
    /// The hands stay at their height: checked by the height, not by the arcsine.
    #[test]
    fn the_hands_keep_their_height(lie_deg in 50.0f64..70.0, length_mm in 800.0f64..1150.0, longer_mm in -25.0f64..60.0, hands_mm in 0.0f64..250.0) {
        let output = run(json!({ "length": {
            "lie_deg": lie_deg, "length_mm": length_mm, "new_length_mm": length_mm + longer_mm, "hands_below_butt_mm": hands_mm
        } }));
        let before = (length_mm - hands_mm) * lie_deg.to_radians().sin();
        let after = (length_mm + longer_mm - hands_mm) * number(&output["length"]["lie_deg"]).to_radians().sin();
        prop_assert!((before - after).abs() < 1e-9);
    }
}

/// Derived: atan(tan(loft)·sin(1°)) is 0.40° at 22° and 1.04° at 46°. Half the last digit allowed.
#[rstest]
#[case(22.0, 0.40)]
#[case(46.0, 1.04)]
fn aim_error_a_degree(#[case] loft_deg: f64, #[case] aim_deg: f64) {
    let output = run(json!({ "aim": { "loft_deg": loft_deg, "lie_error_deg": 1.0, "distance_m": 100.0 } }));
    close(number(&output["aim"]["aim_error_deg"]), aim_deg, 0.005);
    // At 100 m a degree is 1.7455 m; at such angles the offset is proportional to 1e-3.
    close(number(&output["aim"]["offset_m"]), 1.7455 * number(&output["aim"]["aim_error_deg"]), 0.002);
}

/// The normal of the face, turned about the line of play as the head is: independent of the formula.
#[test]
fn aim_error_by_turning_the_face() {
    let (loft, lean) = (46f64.to_radians(), 3f64.to_radians());
    // Along play, to the side, up: loft tips the normal up, leaning turns "up" toward the side.
    let normal = [loft.cos(), loft.sin() * lean.sin(), loft.sin() * lean.cos()];
    let output = run(json!({ "aim": { "loft_deg": 46.0, "lie_error_deg": 3.0 } }));
    close(number(&output["aim"]["aim_error_deg"]), normal[1].atan2(normal[0]).to_degrees(), 1e-12);
    let none = run(json!({ "aim": { "loft_deg": 46.0, "lie_error_deg": 0.0 } }));
    assert_eq!(none["aim"]["aim_error_deg"], 0.0);
    assert!(none["aim"].get("offset_m").is_none());
}

#[test]
fn bending_goes_in_steps_and_takes_the_bounce_along() {
    let output = run(json!({ "bend": {
        "lie_deg": 61.0, "wanted_lie_deg": 63.5, "loft_deg": 30.0, "wanted_loft_deg": 29.0, "bounce_deg": 6.0, "limit_deg": 3.0
    } }));
    let steps = output["bend"]["steps"].as_array().expect("steps");
    assert_eq!(steps.len(), 3);
    let mut last_deg = 61.0;
    for step in steps {
        let lie_deg = number(&step["lie_deg"]);
        assert!(lie_deg > last_deg && lie_deg - last_deg <= 1.0 + 1e-12);
        last_deg = lie_deg;
    }
    close(last_deg, 63.5, 1e-12);
    close(number(&steps[2]["loft_deg"]), 29.0, 1e-12);
    close(number(&output["bend"]["bounce"]["bounce_deg"]), 5.0, 1e-12);
    close(number(&output["bend"]["left_to_limit_deg"]), 0.5, 1e-12);
}

#[test]
fn nothing_to_bend_needs_no_step() {
    let output = run(json!({ "bend": { "lie_deg": 61.0, "wanted_lie_deg": 61.0, "limit_deg": 2.0 } }));
    assert_eq!(output["bend"]["steps"].as_array().map(Vec::len), Some(0));
}

#[test]
fn the_makers_limit_counts_what_was_bent_before() {
    let mut input = json!({ "bend": {
        "lie_deg": 61.0, "wanted_lie_deg": 62.0, "limit_deg": 2.0, "already_bent_lie_deg": 1.5
    } });
    let error = calc::run("lie", input.clone()).expect_err("beyond the limit");
    assert!(
        matches!(&error, PhysicsError::OutOfRange { value, limit, .. } if *value == 2.5 && *limit == 2.0),
        "{error}"
    );
    input["bend"]["allow_beyond_limit"] = json!(true);
    let output = run(input);
    assert!(words(&output["bend"]["warnings"][0]).contains("0.50° beyond"), "{output}");
    close(number(&output["bend"]["left_to_limit_deg"]), -0.5, 1e-12);
}

#[rstest]
#[case(json!({ "length": { "lie_deg": 60.0, "length_mm": 37.5, "new_length_mm": 965.0 } }), "length.length_mm")]
#[case(json!({ "length": { "lie_deg": 95.0, "length_mm": 950.0, "new_length_mm": 965.0 } }), "length.lie_deg")]
#[case(json!({ "length": { "lie_deg": 60.0, "length_mm": 950.0, "new_length_mm": 700.0 } }), "length.new_length_mm")]
#[case(json!({ "aim": { "loft_deg": 46.0, "lie_error_deg": 61.0 } }), "aim.lie_error_deg")]
#[case(json!({ "bend": { "lie_deg": 61.0, "wanted_lie_deg": 62.0, "limit_deg": -1.0 } }), "bend.limit_deg")]
fn impossible_angles_are_refused(#[case] input: Value, #[case] field: &str) {
    let error = calc::run("lie", input).expect_err("must be refused");
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
}

#[test]
fn half_a_question_is_named() {
    for input in [
        json!({}),
        json!({ "bend": { "wanted_lie_deg": 62.0, "limit_deg": 2.0 } }),
        json!({ "bend": { "limit_deg": 2.0 } }),
    ] {
        let error = calc::run("lie", input).expect_err("must be refused");
        assert!(matches!(error, PhysicsError::Missing { .. }), "{error}");
    }
}
