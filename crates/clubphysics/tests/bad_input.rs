//! Goal: what cannot be calculated is refused with field, value, limit, unit and what to do; what is misspelt is named.

use crate::spoken::{tell, words};
use crate::told;
use clubphysics::{
    PhysicsError, calc,
    inertia::{InertiaInput, InertiaPart, inertia},
    swing_weight::{PartInput, SwingWeightInput, swing_weight},
    trim::{TrimInput, trim},
};
use rstest::rstest;
use serde_json::{Value, json};

fn refused(topic: &str, input: Value) -> PhysicsError {
    calc::run(topic, input).expect_err("must be refused")
}

#[test]
fn an_unknown_topic_lists_the_known() {
    let text = told(&refused("swing-wieght", json!({})));
    assert!(text.contains("Did you mean swing-weight?") && text.contains("grip-size"), "{text}");
    let text = told(&refused("grip_size", json!({})));
    assert!(text.contains("Did you mean grip-size?"), "{text}");
    let text = told(&refused("weather", json!({})));
    assert!(!text.contains("Did you mean") && text.contains("swing-weight"), "{text}");
}

#[rstest]
#[case("swing-weight", json!({ "totl_mass_g": 1.0 }), "unknown field “totl_mass_g”", "Did you mean total_mass_g?")]
#[case("swing-weight", json!({ "parts": [{ "mass_g": 1.0, "position_mm": 2.0, "positon_mm": 2.0 }] }), "“positon_mm”", "Did you mean position_mm?")]
#[case("swing-weight", json!({ "what_if": { "longer_in": 1.0 } }), "“longer_in”", "Did you mean longer_mm?")]
#[case("trim", json!({ "mass_g": 1.0, "lenght_mm": 2.0 }), "“lenght_mm”", "Did you mean length_mm?")]
#[case("trim", json!({ "mass_g": 120.0, "length_mm": 1000.0, "balance_point_mm": 500.0, "tip": "tapered" }), "unknown choice “tapered”", "Did you mean taper?")]
#[case("inertia", json!({ "pendulum": { "periods": 1.9 } }), "“periods”", "Did you mean period_s?")]
#[case("grip-size", json!({ "core_mm": 14.7 }), "“core_mm”", "Did you mean core_in?")]
#[case("lie", json!({ "loft": {} }), "“loft”", "Known here: length, aim, bend and correlations")]
#[case("glue", json!({ "joints": {} }), "“joints”", "Did you mean joint?")]
fn an_unknown_field_is_named(#[case] topic: &str, #[case] input: Value, #[case] what: &str, #[case] advice: &str) {
    let error = refused(topic, input);
    assert!(matches!(error, PhysicsError::Unreadable { .. }), "{error}");
    assert!(told(&error).contains(what) && told(&error).contains(advice), "{error}");
}

#[test]
fn text_for_a_number_and_a_missing_field() {
    let text = told(&refused("swing-weight", json!({ "total_mass_g": "350", "balance_point_mm": 800.0 })));
    assert!(text.contains("“350”") && text.contains("without quotes"), "{text}");
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
#[case(json!({ "total_mass_g": 349.8, "balance_point_mm": 800.0, "fulcrum_in": 355.6 }), "fulcrum_in", "355.6 mm is 14 in")]
#[case(json!({ "parts": [{ "mass_g": 256.0, "position_mm": 950.0 }, { "mass_g": -5.0, "position_mm": 100.0 }] }), "parts[1].mass_g", "at least 0 g")]
#[case(json!({ "parts": [{ "mass_g": 256.0, "position_mm": -950.0 }] }), "parts[0].position_mm", "at least 0 mm")]
#[case(json!({ "parts": [{ "mass_g": 0.0, "position_mm": 950.0 }] }), "total mass", "above 0 g")]
#[case(json!({ "parts": [{ "mass_g": 200.0, "position_mm": 950.0 }], "what_if": { "add": [{ "mass_g": -200.0, "position_mm": 900.0 }] } }), "mass of the club after what_if", "above 0 g")]
fn impossible_swing_weights(#[case] input: Value, #[case] field: &str, #[case] text: &str) {
    let error = refused("swing-weight", input);
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
    assert!(told(&error).contains(text), "{error}");
}

#[test]
fn a_club_is_given_one_way() {
    let parts = json!([{ "mass_g": 256.0, "position_mm": 950.0 }]);
    let twice = refused("swing-weight", json!({ "parts": parts, "total_mass_g": 350.0, "balance_point_mm": 800.0 }));
    assert!(matches!(twice, PhysicsError::Contradiction { .. }), "{twice}");
    let neither = refused("swing-weight", json!({}));
    assert!(matches!(&neither, PhysicsError::Missing { field, .. } if field == "total_mass_g or parts"), "{neither}");
    let half = refused("swing-weight", json!({ "total_mass_g": 350.0 }));
    assert!(matches!(&half, PhysicsError::Missing { field, .. } if field == "balance_point_mm"), "{half}");
    let none = refused("swing-weight", json!({ "parts": [] }));
    assert!(matches!(none, PhysicsError::TooFew { count: 0, needed: 1, .. }), "{none}");
    let shared =
        refused("swing-weight", json!({ "total_mass_g": 350.0, "balance_point_mm": 800.0, "shared_mass_g_sd": 0.1 }));
    assert!(matches!(shared, PhysicsError::Contradiction { .. }), "{shared}");
}

#[test]
fn parts_that_look_like_inches_are_pointed_out() {
    let output =
        calc::run("swing-weight", json!({ "parts": [{ "mass_g": 256.0, "position_mm": 37.4 }] })).expect("possible");
    assert!(words(&output["warnings"][0]).contains("inches"), "{output}");
}

/// JSON cannot write NaN, but the library can be handed one.
#[test]
fn not_a_number_is_named() {
    for bad in [f64::NAN, f64::INFINITY] {
        let club =
            SwingWeightInput { total_mass_g: Some(bad), balance_point_mm: Some(800.0), ..SwingWeightInput::default() };
        let error = swing_weight(&club).expect_err("must be refused");
        assert!(
            matches!(&error, PhysicsError::NotFinite { field, unit } if field == "total_mass_g" && *unit == "g"),
            "{error}"
        );
        let part = PartInput { mass_g: 200.0, position_mm: bad, ..PartInput::default() };
        let club = SwingWeightInput { parts: Some(vec![part]), ..SwingWeightInput::default() };
        assert!(
            matches!(swing_weight(&club), Err(PhysicsError::NotFinite { field, .. }) if field == "parts[0].position_mm")
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
        assert!(!tell(&topic.title()).is_empty() && tell(&topic.summary()).ends_with('.'), "{}", topic.name);
    }
}

/// Figures in another unit, or of no club: refused with the limit and with what was probably meant, converted by hand
/// (1 in = 25.4 mm, 1 oz = 28.3495 g). Each of these gave an answer without a word.
#[rstest]
#[case("trim", json!({ "mass_g": 128.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "finished": {
    "length_mm": 38.0, "convention": "to_cap", "cap_mm": 3.0, "bore_to_ground_mm": 33.0
} }), "finished.length_mm", "at least 254 mm. This looks like inches, and 38 in is 965.2 mm")]
#[case("trim", json!({ "mass_g": 0.128, "length_mm": 1016.0, "balance_point_mm": 500.0 }), "mass_g", "kilograms, and 0.128 kg is 128 g")]
#[case("trim", json!({ "mass_g": 1e9, "length_mm": 1016.0, "balance_point_mm": 500.0 }), "mass_g", "at most 400 g")]
#[case("trim", json!({ "mass_g": 128.0, "length_mm": 40.0, "balance_point_mm": 20.0 }), "length_mm", "inches, and 40 in is 1016 mm")]
#[case("trim", json!({ "mass_g": 128.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "finished": {
    "length_mm": 965.2, "convention": "to_cap", "cap_mm": 3.0, "bore_to_ground_mm": 33.0, "bore_depth_mm": 1.25
} }), "finished.bore_depth_mm", "inches, and 1.25 in is 31.8 mm")]
#[case("trim", json!({ "mass_g": 128.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "finished": {
    "length_mm": 965.2, "convention": "to_cap", "cap_mm": 3.0, "bore_to_ground_mm": 33.0,
    "rules": { "lie_deg": 61.0, "heel_radius_mm": 6.5, "sole_contact_mm": 2000.0 }
} }), "finished.rules.sole_contact_mm", "at most 150 mm")]
#[case("swing-weight", json!({ "total_mass_g": 426.0, "balance_point_mm": 71.5 }), "balance_point_mm", "centimetres, and 71.5 cm is 715 mm")]
#[case("swing-weight", json!({ "total_mass_g": 0.426, "balance_point_mm": 715.0 }), "total_mass_g", "kilograms, and 0.426 kg is 426 g")]
#[case("swing-weight", json!({ "total_mass_g": 376.0, "balance_point_mm": 800.0, "what_if": { "grip": { "mass_g": 1.8, "position_mm": 105.0 } } }), "what_if.grip.mass_g", "ounces, and 1.8 oz is 51 g")]
#[case("swing-weight", json!({ "total_mass_g": 376.0, "balance_point_mm": 800.0, "what_if": { "grip": { "mass_g": 50.0, "position_mm": 4.1 } } }), "what_if.grip.position_mm", "inches, and 4.1 in is 104.1 mm")]
#[case("inertia", json!({ "pendulum": { "period_s": 0.939, "total_mass_g": 426.0, "balance_point_mm": 714.9 } }), "pendulum.period_s", "half a swing")]
#[case("inertia", json!({ "pendulum": { "period_s": 1.88, "total_mass_g": 15.03, "balance_point_mm": 714.9 } }), "pendulum.total_mass_g", "ounces, and 15.03 oz is 426.1 g")]
#[case("frequency", json!({
    "stiffness_line": [
        { "position_mm": 0.0, "stiffness_n_m2": 80.0, "mass_g_m": 128.0 }, { "position_mm": 960.0, "stiffness_n_m2": 26.0, "mass_g_m": 95.0 }
    ],
    "tip_body": { "mass_g": 256.0 }, "measured": { "frequency_cpm": 5.08 }
}), "measured.frequency_cpm", "hertz, and 5.08 Hz is 304.8 cpm")]
#[case("lie", json!({ "length": { "lie_deg": 60.0, "length_mm": 965.0, "new_length_mm": 97.8 } }), "length.new_length_mm", "centimetres, and 97.8 cm is 978 mm")]
fn figures_of_no_club_are_refused_with_what_was_meant(
    #[case] topic: &str,
    #[case] input: Value,
    #[case] field: &str,
    #[case] text: &str,
) {
    let error = refused(topic, input);
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
    assert!(told(&error).contains(text), "{error}");
}

/// Clubs at the edge of the trade are clubs: a child's of 18 in, a putter with a counterweight, a shaft of 60 in.
#[rstest]
#[case("trim", json!({ "mass_g": 32.0, "length_mm": 430.0, "balance_point_mm": 210.0, "finished": {
    "length_mm": 457.2, "convention": "to_cap", "cap_mm": 3.0, "bore_to_ground_mm": 30.0
} }))]
#[case("trim", json!({ "mass_g": 110.0, "length_mm": 1524.0, "balance_point_mm": 740.0, "tip_trim_mm": 50.8 }))]
#[case("trim", json!({ "mass_g": 21.0, "length_mm": 254.0, "balance_point_mm": 126.0 }))]
#[case("swing-weight", json!({ "total_mass_g": 905.0, "balance_point_mm": 560.0 }))]
#[case("swing-weight", json!({ "total_mass_g": 225.0, "balance_point_mm": 330.0 }))]
#[case("swing-weight", json!({ "total_mass_g": 560.0, "balance_point_mm": 700.0, "what_if": {
    "grip": { "old_mass_g": 65.0, "old_position_mm": 110.0, "mass_g": 210.0, "position_mm": 90.0 }
} }))]
fn clubs_at_the_edge_of_the_trade_are_taken(#[case] topic: &str, #[case] input: Value) {
    calc::run(topic, input).unwrap_or_else(|error| panic!("{error}"));
}

/// Parts may weigh next to nothing or sit near the butt, so another unit is a remark there, in both topics. By hand: the
/// 5-iron in centimetres, in ounces, in inches.
#[rstest]
#[case([(256.0, 95.0), (120.0, 46.75), (50.0, 10.5)], "centimetres, and 95 cm is 950 mm")]
#[case([(9.03, 950.0), (4.23, 467.5), (1.76, 105.0)], "ounces, and 15.02 oz is 425.8 g")]
#[case([(0.256, 950.0), (0.12, 467.5), (0.05, 105.0)], "kilograms, and 0.426 kg is 426 g")]
#[case([(256.0, 37.4), (120.0, 18.4), (50.0, 4.1)], "inches, and 37.4 in is 950 mm")]
fn parts_in_another_unit_are_pointed_out(#[case] parts: [(f64, f64); 3], #[case] text: &str) {
    let parts = parts.map(|(mass_g, position_mm)| json!({ "mass_g": mass_g, "position_mm": position_mm })).to_vec();
    for topic in ["swing-weight", "inertia"] {
        let output = calc::run(topic, json!({ "parts": parts })).expect("possible");
        assert!(words(&output["warnings"][0]).contains(text), "{topic}: {output}");
    }
}

/// The grip among the parts comes off for the new one. By hand: the 5-iron of 426 g with 30 g for 50 g weighs 406 g, and
/// 20 g less at 105 mm are 20·(14 − 105/25.4)/49.612 = 3.977 points more. Before, it kept both grips: 456 g, −5.97.
#[test]
fn a_new_grip_takes_the_place_of_the_named_one() {
    let parts = json!([
        { "name": "head", "mass_g": 256.0, "position_mm": 950.0 },
        { "name": "shaft", "mass_g": 120.0, "position_mm": 467.5 },
        { "name": "grip", "mass_g": 50.0, "mass_g_sd": 0.3, "position_mm": 105.0 }
    ]);
    let new = json!({ "grip": { "mass_g": 30.0, "position_mm": 105.0 } });
    let output = calc::run("swing-weight", json!({ "parts": parts, "what_if": new })).expect("a good club");
    let [total_g, change] = ["total_mass_g", "change_points"].map(|name| output["what_if"][name].as_f64().expect("it"));
    assert!((total_g - 406.0).abs() < 1e-9, "{output}");
    assert!((change - 20.0 * (14.0 - 105.0 / 25.4) / 49.611_665).abs() < 1e-6, "{output}");
    // What was not known of the grip that came off is not in the club any more.
    assert!(output["total_mass_g_sd"].is_number() && output["what_if"].get("total_mass_g_sd").is_none(), "{output}");
    // Said twice and differently, it is asked about.
    let twice = json!({ "grip": { "old_mass_g": 47.0, "mass_g": 30.0, "position_mm": 105.0 } });
    let error = told(&refused("swing-weight", json!({ "parts": parts, "what_if": twice })));
    assert!(error.contains("weighs 50 g") && error.contains("takes off 47 g"), "{error}");
}

/// A piece of shaft under the cap, by hand: 12.7 mm of 130 g/m are 1.651 g; its centre lies a cap of 3 mm and half the
/// piece from the end, and every arm of the rest but the grip's grows by 12.7 mm.
#[test]
fn the_piece_of_shaft_hangs_under_the_cap() {
    let parts = json!([
        { "name": "head", "mass_g": 256.0, "position_mm": 950.0 }, { "name": "grip", "mass_g": 50.0, "position_mm": 105.0 }
    ]);
    let change = |what_if: Value| {
        let output = calc::run("swing-weight", json!({ "parts": parts, "what_if": what_if })).expect("a good club");
        output["what_if"]["change_points"].as_f64().expect("points")
    };
    let by_hand = |cap_mm: f64| (256.0 * 12.7 + 1.651 * (cap_mm + 6.35 - 355.6)) / 25.4 / 49.611_665;
    let longer = json!({ "longer_mm": 12.7, "butt_density_g_m": 130.0 });
    assert!((change(longer) - by_hand(3.0)).abs() < 1e-6);
    assert!(
        (change(json!({ "longer_mm": 12.7, "butt_density_g_m": 130.0, "cap_mm": 0.0 })) - by_hand(0.0)).abs() < 1e-6
    );
    // A bare club that gets a grip: the cap is the grip's own.
    let bare = json!({ "parts": [{ "name": "head", "mass_g": 256.0, "position_mm": 950.0 }], "what_if": {
        "grip": { "mass_g": 50.0, "position_mm": 105.0, "cap_change_mm": 2.0 }, "longer_mm": 12.7, "butt_density_g_m": 130.0
    } });
    let output = calc::run("swing-weight", bare).expect("a good club");
    let step = output["what_if"]["effects"][1]["change_points"].as_f64().expect("points");
    assert!((step - by_hand(2.0)).abs() < 1e-6, "{step} {}", by_hand(2.0));
}

/// The example's shaft with its reading halved and doubled: another shaft, and said so. A bare reading with a head given
/// is named; a table that is a third off is only remarked.
#[test]
fn a_reading_of_another_shaft_is_refused() {
    let found = calc::topics().iter().find(|known| known.name == "frequency").expect("the topic is offered");
    let with = |cpm: f64| {
        let mut input = (found.example)();
        input["measured"]["frequency_cpm"] = json!(cpm);
        input
    };
    for (cpm, text) in [(185.0, "at least 0.5"), (450.0, "at most 2"), (900.0, "read without its head?")] {
        let error = told(&refused("frequency", with(cpm)));
        assert!(error.contains(text) && error.contains("294 cpm"), "{error}");
    }
    let remarked = calc::run("frequency", with(355.0)).expect("a rough table");
    assert!(words(&remarked["warnings"][0]).contains("1.46 times as stiff"), "{remarked}");
    let usual = calc::run("frequency", with(305.0)).expect("a good table");
    assert_eq!(usual["warnings"], json!([]));
    let mut kilograms = (found.example)();
    kilograms["tip_body"]["mass_g"] = json!(0.256);
    kilograms.as_object_mut().expect("a document").remove("measured");
    let remarked = calc::run("frequency", kilograms).expect("a very light head");
    assert!(words(&remarked["warnings"][0]).contains("0.256 kg is 256 g"), "{remarked}");
}

/// What is not of the right kind is named with its place and in plain words, whatever it is.
#[rstest]
#[case("swing-weight", json!([350.0, null, 820.0]), "the document", "a list, but must be an object with named fields")]
#[case("swing-weight", json!(7), "the document", "the number 7, but must be an object")]
#[case("swing-weight", json!({ "total_mass_g": "350 g", "balance_point_mm": 800.0 }), "total_mass_g", "the text “350 g”, but must be a number")]
#[case("swing-weight", json!({ "total_mass_g": true, "balance_point_mm": 800.0 }), "total_mass_g", "the word true, but must be a number")]
#[case("swing-weight", json!({ "parts": { "mass_g": 1.0 } }), "parts", "must be a list")]
#[case("swing-weight", json!({ "parts": [[256.0, 950.0]] }), "parts[0]", "a list, but must be an object")]
#[case("swing-weight", json!({ "parts": [{ "mass_g": 1.0, "position_mm": null }] }), "parts[0].position_mm", "an empty value, but must be a number")]
#[case("swing-weight", json!({ "parts": [{ "mass_g": 256.0, "position_mm": 950.0 }], "what_if": { "add": [{ "mass_g": [1.0], "position_mm": 1.0 }] } }), "what_if.add[0].mass_g", "a list, but must be a number")]
#[case("glue", json!({ "batch": { "joints": 8.5, "ratio": "by_mass", "resin_parts": 1.0, "hardener_parts": 1.0 } }), "batch.joints", "the number 8.5, but must be a whole number")]
#[case("glue", json!({ "batch": { "joints": -8, "ratio": "by_mass", "resin_parts": 1.0, "hardener_parts": 1.0 } }), "batch.joints", "must be a whole number of zero or more")]
#[case("glue", json!({ "batch": { "joints": 8, "ratio": 1, "resin_parts": 1.0, "hardener_parts": 1.0 } }), "batch.ratio", "must be one of its words")]
#[case("trim", json!({ "mass_g": 120.0, "length_mm": 1000.0, "balance_point_mm": 500.0, "allow_taper_tip_trim": "yes" }), "allow_taper_tip_trim", "must be true or false")]
#[case("grip-size", json!({ "core_in": 0.58, "butt_diameter_in": 0.6, "tape": { "layers": -1 } }), "tape.layers", "the number -1, but must be a whole number")]
#[case("pluck", json!({ "sample_rate_hz": 40.0, "axis_1": [0.0, "x"] }), "axis_1[1]", "the text “x”, but must be a number")]
fn what_is_of_another_kind_is_named(
    #[case] topic: &str,
    #[case] input: Value,
    #[case] place: &str,
    #[case] text: &str,
) {
    let error = refused(topic, input);
    assert_eq!(error.field(), Some(place), "{error}");
    let said = told(&error);
    assert!(said.starts_with(place) && said.contains(text), "{said}");
    for word in ["f64", "u32", "usize", "struct", "expected", "invalid type", "Input", "sequence", "map"] {
        assert!(!said.contains(word), "{said}");
    }
}

#[test]
fn a_missing_field_and_an_unknown_word_have_their_place() {
    let missing = refused("swing-weight", json!({ "parts": [{ "mass_g": 1.0 }] }));
    assert_eq!(missing.field(), Some("parts[0].position_mm"), "{missing}");
    let unknown = refused("swing-weight", json!({ "parts": [{ "mass_g": 1.0, "position_mm": 1.0, "place_mm": 1.0 }] }));
    assert!(told(&unknown).contains("“place_mm” in parts[0]"), "{unknown}");
    let word = refused(
        "glue",
        json!({ "batch": { "joints": 8, "ratio": "by_weight", "resin_parts": 1.0, "hardener_parts": 1.0 } }),
    );
    assert!(told(&word).contains("unknown choice “by_weight” for batch.ratio"), "{word}");
    assert!(told(&word).contains("by_mass and by_volume"), "{word}");
    // A whole number may be written with its point.
    let whole =
        json!({ "core_in": 0.58, "butt_diameter_in": 0.6, "tape": { "layers": 2.0, "growth_a_layer_in": 0.01 } });
    calc::run("grip-size", whole).expect("two layers");
}

/// No limit is printed to sixteen digits: a balance point outside the middle third of 1016 mm has 338.66666666666663 as
/// its limit.
#[test]
fn limits_are_printed_as_a_person_reads_them() {
    let text = told(&refused("trim", json!({ "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 300.0 })));
    assert!(text.contains("balance_point_mm is 300 mm, but must be at least 338.667 mm"), "{text}");
}

/// Samples are counted as they were given: 400 of them at 40 kHz are 10 ms.
#[test]
fn a_short_recording_counts_its_own_samples() {
    let samples: Vec<f64> = (0..400).map(|i| (f64::from(i) * 0.02).sin()).collect();
    let text = told(&refused("pluck", json!({ "sample_rate_hz": 40000.0, "axis_1": samples })));
    assert!(text.contains("axis_1 has 400 entries, but needs at least 2560"), "{text}");
    assert!(text.contains("too short, 10 ms where 64 ms are needed; record for 10 s or more"), "{text}");
}
