//! Goal: what cannot be calculated is refused with field, value, limit, unit and what to do; what is misspelt is named.

use clubphysics::{
    PhysicsError,
    balance::{BalanceInput, PartInput, balance},
    calc,
    inertia::{InertiaInput, InertiaPart, inertia},
    trim::{TrimInput, trim},
};
use rstest::rstest;
use serde_json::{Value, json};

fn refused(topic: &str, input: Value) -> PhysicsError {
    calc::run(topic, input).expect_err("must be refused")
}

#[test]
fn an_unknown_topic_lists_the_known() {
    let text = refused("balence", json!({})).to_string();
    assert!(text.contains("did you mean balance?") && text.contains("grip-size"), "{text}");
    let text = refused("grip_size", json!({})).to_string();
    assert!(text.contains("did you mean grip-size?"), "{text}");
    let text = refused("weather", json!({})).to_string();
    assert!(!text.contains("did you mean") && text.contains("balance"), "{text}");
}

#[rstest]
#[case("balance", json!({ "totl_mass_g": 1.0 }), "unknown field \"totl_mass_g\"", "did you mean total_mass_g?")]
#[case("balance", json!({ "parts": [{ "mass_g": 1.0, "position_mm": 2.0, "positon_mm": 2.0 }] }), "\"positon_mm\"", "did you mean position_mm?")]
#[case("balance", json!({ "what_if": { "longer_in": 1.0 } }), "\"longer_in\"", "did you mean longer_mm?")]
#[case("trim", json!({ "mass_g": 1.0, "lenght_mm": 2.0 }), "\"lenght_mm\"", "did you mean length_mm?")]
#[case("trim", json!({ "mass_g": 120.0, "length_mm": 1000.0, "balance_point_mm": 500.0, "tip": "tapered" }), "unknown choice \"tapered\"", "did you mean taper?")]
#[case("inertia", json!({ "pendulum": { "periods": 1.9 } }), "\"periods\"", "did you mean period_s?")]
#[case("grip-size", json!({ "core_mm": 14.7 }), "\"core_mm\"", "did you mean core_in?")]
#[case("lie", json!({ "loft": {} }), "\"loft\"", "known here: length, aim, bend")]
#[case("glue", json!({ "joints": {} }), "\"joints\"", "did you mean joint?")]
fn an_unknown_field_is_named(#[case] topic: &str, #[case] input: Value, #[case] what: &str, #[case] advice: &str) {
    let error = refused(topic, input);
    assert!(matches!(error, PhysicsError::Unreadable { .. }), "{error}");
    assert!(error.to_string().contains(what) && error.to_string().contains(advice), "{error}");
}

#[test]
fn text_for_a_number_and_a_missing_field() {
    let text = refused("balance", json!({ "total_mass_g": "350", "balance_point_mm": 800.0 })).to_string();
    assert!(text.contains("\"350\"") && text.contains("without quotes"), "{text}");
    let missing = refused("trim", json!({ "mass_g": 120.0, "length_mm": 1000.0 }));
    assert!(matches!(&missing, PhysicsError::Missing { field, .. } if field == "balance_point_mm"), "{missing}");
}

#[rstest]
#[case(json!({ "total_mass_g": 0.0, "balance_point_mm": 800.0 }), "total_mass_g", "above 0 g")]
#[case(json!({ "total_mass_g": -350.0, "balance_point_mm": 800.0 }), "total_mass_g", "above 0 g")]
#[case(json!({ "total_mass_g": 13.25, "balance_point_mm": 762.0 }), "total_mass_g", "looks like ounces")]
#[case(json!({ "total_mass_g": 349.8, "balance_point_mm": 30.0 }), "balance_point_mm", "looks like inches")]
#[case(json!({ "total_mass_g": 349.8, "balance_point_mm": 30000.0 }), "balance_point_mm", "at most 3000 mm")]
#[case(json!({ "total_mass_g": 349.8, "balance_point_mm": 800.0, "balance_point_mm_sd": -1.0 }), "balance_point_mm_sd", "at least 0")]
#[case(json!({ "total_mass_g": 349.8, "balance_point_mm": 800.0, "fulcrum_in": 355.6 }), "fulcrum_in", "inches from the butt")]
#[case(json!({ "parts": [{ "mass_g": 256.0, "position_mm": 950.0 }, { "mass_g": -5.0, "position_mm": 100.0 }] }), "parts[1].mass_g", "at least 0 g")]
#[case(json!({ "parts": [{ "mass_g": 256.0, "position_mm": -950.0 }] }), "parts[0].position_mm", "at least 0 mm")]
#[case(json!({ "parts": [{ "mass_g": 0.0, "position_mm": 950.0 }] }), "total mass", "above 0 g")]
#[case(json!({ "parts": [{ "mass_g": 200.0, "position_mm": 950.0 }], "what_if": { "add": [{ "mass_g": -200.0, "position_mm": 900.0 }] } }), "mass of the club after what_if", "above 0 g")]
fn impossible_balances(#[case] input: Value, #[case] field: &str, #[case] text: &str) {
    let error = refused("balance", input);
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
    assert!(error.to_string().contains(text), "{error}");
}

#[test]
fn a_club_is_given_one_way() {
    let parts = json!([{ "mass_g": 256.0, "position_mm": 950.0 }]);
    let twice = refused("balance", json!({ "parts": parts, "total_mass_g": 350.0, "balance_point_mm": 800.0 }));
    assert!(matches!(twice, PhysicsError::Contradiction { .. }), "{twice}");
    let neither = refused("balance", json!({}));
    assert!(matches!(&neither, PhysicsError::Missing { field, .. } if field == "total_mass_g or parts"), "{neither}");
    let half = refused("balance", json!({ "total_mass_g": 350.0 }));
    assert!(matches!(&half, PhysicsError::Missing { field, .. } if field == "balance_point_mm"), "{half}");
    let none = refused("balance", json!({ "parts": [] }));
    assert!(matches!(none, PhysicsError::TooFew { count: 0, needed: 1, .. }), "{none}");
    let shared =
        refused("balance", json!({ "total_mass_g": 350.0, "balance_point_mm": 800.0, "shared_mass_g_sd": 0.1 }));
    assert!(matches!(shared, PhysicsError::Contradiction { .. }), "{shared}");
}

#[test]
fn parts_that_look_like_inches_are_pointed_out() {
    let output =
        calc::run("balance", json!({ "parts": [{ "mass_g": 256.0, "position_mm": 37.4 }] })).expect("possible");
    assert!(output["warnings"][0].as_str().is_some_and(|text| text.contains("inches")), "{output}");
}

/// JSON cannot write NaN, but the library can be handed one.
#[test]
fn not_a_number_is_named() {
    for bad in [f64::NAN, f64::INFINITY] {
        let club = BalanceInput { total_mass_g: Some(bad), balance_point_mm: Some(800.0), ..BalanceInput::default() };
        let error = balance(&club).expect_err("must be refused");
        assert!(
            matches!(&error, PhysicsError::NotFinite { field, unit } if field == "total_mass_g" && *unit == "g"),
            "{error}"
        );
        let part = PartInput { mass_g: 200.0, position_mm: bad, ..PartInput::default() };
        let club = BalanceInput { parts: Some(vec![part]), ..BalanceInput::default() };
        assert!(
            matches!(balance(&club), Err(PhysicsError::NotFinite { field, .. }) if field == "parts[0].position_mm")
        );
        let part = InertiaPart { mass_g: bad, position_mm: 900.0, ..InertiaPart::default() };
        let club = InertiaInput { parts: Some(vec![part]), ..InertiaInput::default() };
        assert!(matches!(inertia(&club), Err(PhysicsError::NotFinite { field, .. }) if field == "parts[0].mass_g"));
        let shaft = TrimInput { mass_g: 120.0, length_mm: 1000.0, balance_point_mm: bad, ..TrimInput::default() };
        assert!(matches!(trim(&shaft), Err(PhysicsError::NotFinite { field, .. }) if field == "balance_point_mm"));
    }
}

#[rstest]
#[case(json!({ "pendulum": { "period_s": 0.0, "total_mass_g": 420.0, "balance_point_mm": 700.0 } }), "pendulum.period_s")]
#[case(json!({ "pendulum": { "period_s": 1.9, "total_mass_g": 420.0, "balance_point_mm": 700.0, "pivot_mm": 700.0 } }), "pendulum.pivot_mm")]
#[case(json!({ "pendulum": { "period_s": 1.9, "total_mass_g": 420.0, "balance_point_mm": 700.0, "amplitude_deg": 120.0 } }), "pendulum.amplitude_deg")]
#[case(json!({ "parts": [{ "mass_g": 100.0, "position_mm": 500.0 }], "gravity_m_s2": 0.0 }), "gravity_m_s2")]
fn impossible_pendulums(#[case] input: Value, #[case] field: &str) {
    let error = refused("inertia", input);
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
}

/// A person starts from the example; it must work as it stands.
#[test]
fn every_example_runs_and_every_name_is_a_slug() {
    for topic in calc::topics() {
        let output = (topic.run)((topic.example)()).unwrap_or_else(|error| panic!("{}: {error}", topic.name));
        assert!(output.as_object().is_some_and(|fields| !fields.is_empty()), "{}", topic.name);
        assert!(topic.name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{}", topic.name);
        assert!(!topic.title.is_empty() && topic.summary.ends_with('.'), "{}", topic.name);
    }
}
