//! Goal: grip sizes as the published note gives them, layers counted as a builder would, tape weighed.

use crate::spoken::words;
use clubphysics::{PhysicsError, calc};
use rstest::rstest;
use serde_json::{Value, json};

fn run(input: Value) -> Value {
    calc::run("grip-size", input).unwrap_or_else(|error| panic!("{error}"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

/// Source: 'Grip Sizing', D. Eagar 2009: 0.900 in at 2 in below the cap where core and butt agree; a 0.580 core on a
/// 0.600 butt gives 0.920; tape of 0.005 in adds 0.010 in a layer. Tolerance: none but rounding, these are the rule.
#[rstest]
#[case(0.600, 0.600, 0, 0.900)]
#[case(0.580, 0.600, 0, 0.920)]
#[case(0.600, 0.600, 1, 0.910)]
#[case(0.580, 0.600, 3, 0.950)]
fn published_sizes(#[case] core_in: f64, #[case] butt_in: f64, #[case] layers: u32, #[case] size_in: f64) {
    let output = run(json!({ "core_in": core_in, "butt_diameter_in": butt_in, "tape": { "layers": layers } }));
    close(number(&output["stations"][0]["diameter_in"]), size_in, 1e-12);
    close(number(&output["stations"][0]["below_cap_in"]), 2.0, 0.0);
}

/// Another shop's note: 0.015 in a layer.
#[test]
fn a_shop_that_knows_its_tape() {
    let output = run(json!({
        "core_in": 0.6, "butt_diameter_in": 0.6, "wanted_in": 0.9325, "tape": { "layers": 2, "growth_a_layer_in": 0.015 }
    }));
    close(number(&output["stations"][0]["diameter_in"]), 0.930, 1e-12);
    close(number(&output["layers_exact"]), 0.0325 / 0.015, 1e-9);
    assert_eq!(output["layers_needed"], 2);
}

#[rstest]
#[case(0.930, 3, 0.930)]
#[case(0.934, 3, 0.930)]
#[case(0.936, 4, 0.940)]
#[case(0.900, 0, 0.900)]
fn layers_for_a_wanted_size(#[case] wanted_in: f64, #[case] layers: u32, #[case] reached_in: f64) {
    let output = run(json!({ "core_in": 0.6, "butt_diameter_in": 0.6, "wanted_in": wanted_in }));
    assert_eq!(output["layers_needed"], layers);
    close(number(&output["diameter_with_layers_needed_in"]), reached_in, 1e-12);
    assert!(output.get("warnings").is_none());
}

#[test]
fn a_grip_too_large_already_says_so() {
    let output = run(json!({ "core_in": 0.58, "butt_diameter_in": 0.62, "wanted_in": 0.9 }));
    close(number(&output["layers_exact"]), -4.0, 1e-9);
    assert_eq!(output["layers_needed"], 0);
    assert!(words(&output["warnings"][0]).contains("0.040 in larger"), "{output}");
}

/// Derived: a strip 2 × 10 in of about 124 g/m² is 1.6 g and takes off 0.3 points with its centre at 5.2 in.
#[test]
fn tape_by_its_area() {
    let output = run(json!({
        "core_in": 0.6, "butt_diameter_in": 0.6,
        "tape": { "layers": 1, "length_in": 10.0, "strip_width_in": 2.0, "areal_density_g_m2": 124.0, "cap_in": 0.2 }
    }));
    close(number(&output["tape"]["mass_g"]), 1.6, 0.01);
    close(number(&output["tape"]["position_in"]), 5.2, 1e-12);
    close(number(&output["tape"]["change_points"]), -0.3, 0.05);
    let weighed = run(json!({
        "core_in": 0.6, "butt_diameter_in": 0.6, "tape": { "layers": 3, "layer_mass_g": 1.0, "length_in": 10.0, "cap_in": 0.2 }
    }));
    // −0.18 points a gram at 5.2 in.
    close(number(&weighed["tape"]["change_points"]), -0.53, 0.005);
    close(number(&weighed["tape"]["change_a_layer_points"]), -0.18, 0.005);
}

#[test]
fn tape_ends_before_the_mouth() {
    let output = run(json!({
        "core_in": 0.6, "butt_diameter_in": 0.6, "tape": { "layers": 2, "length_in": 9.0 },
        "stations": [
            { "below_cap_in": 2.0, "nominal_in": 0.9 },
            { "below_cap_in": 10.0, "nominal_in": 0.65, "core_in": 0.5, "shaft_diameter_in": 0.52 }
        ]
    }));
    assert_eq!(output["stations"][1]["layers"], 0);
    close(number(&output["stations"][1]["diameter_in"]), 0.67, 1e-12);
}

/// Rubber of constant area over a 0.600 core, 0.900 outside, on 0.640: √(0.64² + 0.9² − 0.6²) = 0.92715 by hand; less than
/// the rule's 0.940, and the same where nothing is stretched.
#[test]
fn rubber_that_keeps_its_volume() {
    let stretched = run(json!({ "core_in": 0.6, "butt_diameter_in": 0.6, "tape": { "layers": 4 } }));
    close(number(&stretched["stations"][0]["diameter_of_kept_volume_in"]), 0.92715, 0.000_005);
    let plain = run(json!({ "core_in": 0.6, "butt_diameter_in": 0.6 }));
    close(number(&plain["stations"][0]["diameter_of_kept_volume_in"]), 0.9, 1e-12);
}

/// Equipment Rules effective 2019, 2.3b: at most 1.75 in across.
#[test]
fn the_rules_limit_of_width_is_mentioned() {
    let wide = run(json!({
        "core_in": 0.6, "butt_diameter_in": 0.6, "stations": [{ "below_cap_in": 2.0, "nominal_in": 1.8 }]
    }));
    assert!(words(&wide["warnings"][0]).contains("2.3b"), "{wide}");
}

#[rstest]
#[case(json!({ "core_in": 15.2, "butt_diameter_in": 0.6 }), "core_in")]
#[case(json!({ "core_in": 0.6, "butt_diameter_in": -0.6 }), "butt_diameter_in")]
#[case(json!({ "core_in": 0.6, "butt_diameter_in": 0.0 }), "butt_diameter_in")]
#[case(json!({ "core_in": 0.6, "butt_diameter_in": 0.6, "stations": [{ "below_cap_in": 2.0, "nominal_in": 0.5 }] }), "stations[0].nominal_in")]
#[case(json!({ "core_in": 0.6, "butt_diameter_in": 0.6, "tape": { "thickness_in": 0.0 } }), "tape.thickness_in")]
fn impossible_sizes_are_refused(#[case] input: Value, #[case] field: &str) {
    let error = calc::run("grip-size", input).expect_err("must be refused");
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
}
