//! Goal: the standard deviations that topics state are those that simulation finds. Method: every figure that has a
//! `_sd` companion is drawn anew from a normal distribution, the topic is run on the drawn document without standard
//! deviations, and the scatter of each output is held against the `_sd` stated beside it.
//!
//! Tolerance: with 4000 draws a standard deviation is known to 1/√8000 = 1.1 %; 5 % is more than four of those.

use crate::told;
use clubphysics::{PhysicsError, calc};
use nalgebra::{DMatrix, DVector};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use rstest::rstest;
use serde_json::{Map, Value, json};

const DRAWS: usize = 4000;
/// Scatter of a figure that does not vary: what its sums round.
const ROUNDING: f64 = 1e-12;

fn standard_normal(random: &mut Pcg64) -> f64 {
    let radius = (-2.0 * (1.0 - random.random::<f64>()).ln()).sqrt();
    radius * (std::f64::consts::TAU * random.random::<f64>()).cos()
}

/// The document with each figure drawn and its standard deviation taken out.
fn drawn(document: &Value, random: &mut Pcg64) -> Value {
    match document {
        Value::Object(fields) => {
            let mut out = Map::new();
            for (name, value) in fields {
                if name.ends_with("_sd") {
                    continue;
                }
                let sd = fields.get(&format!("{name}_sd")).and_then(Value::as_f64);
                out.insert(
                    name.clone(),
                    match (value.as_f64(), sd) {
                        (Some(value), Some(sd)) => json!(value + sd * standard_normal(random)),
                        // One standard deviation for every reading of a list.
                        (None, Some(sd)) => list(value).map(|value| value + sd * standard_normal(random)).collect(),
                        _ => drawn(value, random),
                    },
                );
            }
            Value::Object(out)
        }
        Value::Array(items) => items.iter().map(|item| drawn(item, random)).collect(),
        other => other.clone(),
    }
}

fn list(value: &Value) -> impl Iterator<Item = f64> {
    value.as_array().into_iter().flatten().map(|value| value.as_f64().expect("a number"))
}

/// Path and value of every output that has a standard deviation beside it.
fn stated(document: &Value, path: &str, found: &mut Vec<(String, f64)>) {
    match document {
        Value::Object(fields) => {
            for (name, value) in fields {
                // `noise_sd` of a recording stands alone: it is a result itself.
                let plain = name.strip_suffix("_sd").filter(|plain| fields.contains_key(*plain));
                match (plain, value.as_f64()) {
                    (Some(plain), Some(sd)) => found.push((format!("{path}/{plain}"), sd)),
                    (Some(plain), None) => {
                        found.extend(list(value).enumerate().map(|(i, sd)| (format!("{path}/{plain}/{i}"), sd)));
                    }
                    _ => stated(value, &format!("{path}/{name}"), found),
                }
            }
        }
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, item)| stated(item, &format!("{path}/{i}"), found));
        }
        _ => {}
    }
}

fn scatter(values: &[f64]) -> f64 {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    (values.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / (values.len() - 1) as f64).sqrt()
}

/// Runs the topic on drawn documents and compares.
fn check(topic: &str, input: &Value, mut draw: impl FnMut(&mut Pcg64) -> Value, at_least: usize) {
    let mut outputs = Vec::new();
    stated(&calc::run(topic, input.clone()).expect("a good document"), "", &mut outputs);
    assert!(outputs.len() >= at_least, "{topic} states only {outputs:?}");
    let mut random = Pcg64::seed_from_u64(7);
    let mut values = vec![Vec::with_capacity(DRAWS); outputs.len()];
    for _ in 0..DRAWS {
        let output = calc::run(topic, draw(&mut random)).expect("a drawn document is good too");
        for ((path, _), values) in outputs.iter().zip(&mut values) {
            values.push(output.pointer(path).and_then(Value::as_f64).unwrap_or_else(|| panic!("{topic}: no {path}")));
        }
    }
    for ((path, sd), values) in outputs.iter().zip(&values) {
        let simulated = scatter(values);
        assert!(
            (sd - simulated).abs() <= 0.05 * simulated + ROUNDING * (1.0 + values[0].abs()),
            "{topic} {path}: states {sd}, simulated {simulated}"
        );
    }
}

/// The topics' own examples.
#[rstest]
#[case("swing-weight", 6)]
#[case("inertia", 8)]
#[case("trim", 8)]
#[case("frequency", 12)]
#[case("grip-size", 4)]
#[case("lie", 4)]
#[case("glue", 10)]
fn examples(#[case] topic: &str, #[case] at_least: usize) {
    let example = (calc::topics().iter().find(|known| known.name == topic).expect("a topic").example)();
    check(topic, &example, |random| drawn(&example, random), at_least);
}

#[test]
fn every_step_of_a_change() {
    let input = json!({
        "total_mass_g": 390.0, "total_mass_g_sd": 0.3, "balance_point_mm": 760.0, "balance_point_mm_sd": 0.5,
        "what_if": {
            "grip": {
                "mass_g": 50.0, "mass_g_sd": 0.5, "position_mm": 102.0, "position_mm_sd": 3.0,
                "cap_change_mm": 3.0, "cap_change_mm_sd": 0.3
            },
            "longer_mm": -6.0, "longer_mm_sd": 0.3, "butt_density_g_m": 130.0,
            "add": [{ "mass_g": 4.0, "mass_g_sd": 0.1, "position_mm": 900.0, "position_mm_sd": 2.0 }]
        }
    });
    check("swing-weight", &input, |random| drawn(&input, random), 8);
}

#[test]
fn a_trim_by_table_with_an_uncertain_saw() {
    let input = json!({
        "mass_g": 126.0, "mass_g_sd": 0.1, "length_mm": 1016.0, "length_mm_sd": 0.15,
        "balance_point_mm": 492.0, "balance_point_mm_sd": 1.0, "tip_trim_mm": 20.0, "tip_trim_mm_sd": 0.5,
        "butt_trim_mm": 30.0, "butt_trim_mm_sd": 0.5,
        "mass_table": [
            { "position_mm": 0.0, "density_g_m": 140.0 }, { "position_mm": 400.0, "density_g_m": 126.0 },
            { "position_mm": 1016.0, "density_g_m": 112.0 }
        ],
        "finished": {
            "convention": "to_cap", "cap_mm": 3.0, "cap_mm_sd": 0.2, "bore_to_ground_mm": 35.0, "bore_to_ground_mm_sd": 0.4,
            "rules": { "lie_deg": 62.0, "lie_deg_sd": 0.5, "heel_radius_mm": 6.5, "sole_contact_mm": 35.0, "sole_radius_mm": 250.0 }
        }
    });
    check("trim", &input, |random| drawn(&input, random), 10);
}

/// One scale for all parts and one stop for all places: their errors do not average out.
#[test]
fn errors_that_parts_share() {
    let parts = json!([
        { "mass_g": 256.0, "mass_g_sd": 0.1, "position_mm": 950.0 },
        { "mass_g": 120.0, "mass_g_sd": 0.1, "position_mm": 467.5 },
        { "mass_g": 50.0, "mass_g_sd": 0.1, "position_mm": 105.0 }
    ]);
    let input = json!({ "parts": parts, "shared_mass_g_sd": 0.2, "shared_position_mm_sd": 0.8 });
    let draw = |random: &mut Pcg64| {
        let mut document = drawn(&json!({ "parts": parts }), random);
        let [mass_g, place_mm] = [0.2 * standard_normal(random), 0.8 * standard_normal(random)];
        for part in document["parts"].as_array_mut().expect("parts") {
            part["mass_g"] = json!(part["mass_g"].as_f64().expect("a number") + mass_g);
            part["position_mm"] = json!(part["position_mm"].as_f64().expect("a number") + place_mm);
        }
        document
    };
    check("swing-weight", &input, draw, 6);
}

/// Mass and balance point that were read together and err together.
#[test]
fn correlated_inputs() {
    let input = json!({
        "total_mass_g": 390.0, "total_mass_g_sd": 0.5, "balance_point_mm": 760.0, "balance_point_mm_sd": 0.6,
        "correlations": [{ "a": "total_mass_g", "b": "balance_point_mm", "coefficient": -0.8 }]
    });
    let draw = |random: &mut Pcg64| {
        let [one, other] = [standard_normal(random), standard_normal(random)];
        json!({
            "total_mass_g": 390.0 + 0.5 * one, "balance_point_mm": 760.0 + 0.6 * (-0.8 * one + 0.6 * other)
        })
    };
    check("swing-weight", &input, draw, 6);
}

/// Name, value and standard deviation of every uncertain input of a document; a list has one name an entry.
fn uncertain(document: &Value, name: &str, found: &mut Vec<(String, f64, f64)>) {
    match document {
        Value::Object(fields) => {
            for (key, value) in fields {
                let name = if name.is_empty() { key.clone() } else { format!("{name}.{key}") };
                match (fields.get(&format!("{key}_sd")).and_then(Value::as_f64), value.as_f64()) {
                    (Some(sd), Some(value)) => found.push((name, value, sd)),
                    (Some(sd), None) => {
                        found.extend(list(value).enumerate().map(|(i, value)| (format!("{name}[{i}]"), value, sd)));
                    }
                    _ => uncertain(value, &name, found),
                }
            }
        }
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, item)| uncertain(item, &format!("{name}[{i}]"), found));
        }
        _ => {}
    }
}

/// `a.b[0].c` as a JSON pointer.
fn pointer(name: &str) -> String {
    format!("/{}", name.replace(['.', '['], "/").replace(']', ""))
}

/// Draws that err together as the document says: independent normal figures times the Cholesky factor of the stated
/// correlation matrix.
fn drawn_together(document: &Value) -> impl FnMut(&mut Pcg64) -> Value {
    let mut inputs = Vec::new();
    uncertain(document, "", &mut inputs);
    let at = |name: &Value| inputs.iter().position(|(known, ..)| *known == *name).expect("an uncertain input");
    let mut matrix = DMatrix::<f64>::identity(inputs.len(), inputs.len());
    for correlation in document["correlations"].as_array().expect("correlations") {
        let (a, b) = (at(&correlation["a"]), at(&correlation["b"]));
        matrix[(a, b)] = correlation["coefficient"].as_f64().expect("a number");
        matrix[(b, a)] = matrix[(a, b)];
    }
    let factor = matrix.cholesky().expect("possible correlations").l();
    let mut plain = document.clone();
    plain.as_object_mut().expect("a document").remove("correlations");
    let without_sds = drawn(&plain, &mut Pcg64::seed_from_u64(0));
    move |random| {
        let free = DVector::from_fn(inputs.len(), |_, _| standard_normal(random));
        let together = &factor * free;
        let mut document = without_sds.clone();
        for ((name, value, sd), unit) in inputs.iter().zip(together.iter()) {
            *document.pointer_mut(&pointer(name)).expect("the input") = json!(value + sd * unit);
        }
        document
    }
}

/// The standard deviations of a document with and without its correlations, to see that these matter at all.
fn check_correlated(topic: &str, input: &Value, at_least: usize) {
    check(topic, input, drawn_together(input), at_least);
    let mut apart = input.clone();
    apart["correlations"] = json!([]);
    let [mut with, mut without] = [Vec::new(), Vec::new()];
    stated(&calc::run(topic, input.clone()).expect("a good document"), "", &mut with);
    stated(&calc::run(topic, apart).expect("a good document"), "", &mut without);
    let changed = with.iter().zip(&without).filter(|(a, b)| (a.1 - b.1).abs() > 0.1 * b.1).count();
    assert!(changed > 0, "{topic}: the correlations change nothing: {with:?} {without:?}");
}

#[test]
fn frequency_with_figures_that_err_together() {
    let input = json!({
        "stiffness_line": [
            { "position_mm": 0.0, "stiffness_n_m2": 80.0, "mass_g_m": 128.0 },
            { "position_mm": 960.0, "stiffness_n_m2": 26.0, "mass_g_m": 95.0 }
        ],
        "elements": 8, "clamp_mm": 127.0, "clamp_mm_sd": 2.0, "butt_trim_mm": 10.0, "butt_trim_mm_sd": 1.5,
        "tip_body": {
            "mass_g": 256.0, "mass_g_sd": 2.0, "offset_mm": 12.0, "offset_mm_sd": 1.0,
            "inertia_g_cm2": 2500.0, "inertia_g_cm2_sd": 60.0
        },
        "tip_load_n": 9.8, "tip_load_n_sd": 0.1,
        "what_if": [{ "name": "other", "tip_body": { "mass_g": 262.0, "mass_g_sd": 2.0 } }],
        "correlations": [
            { "a": "tip_body.mass_g", "b": "what_if[0].tip_body.mass_g", "coefficient": 0.9 },
            { "a": "clamp_mm", "b": "butt_trim_mm", "coefficient": -0.7 },
            { "a": "tip_body.mass_g", "b": "tip_body.inertia_g_cm2", "coefficient": 0.4 }
        ]
    });
    check_correlated("frequency", &input, 7);
}

/// A calibrated club: reading and clamp err together.
#[test]
fn calibration_with_figures_that_err_together() {
    let input = json!({
        "stiffness_line": [
            { "position_mm": 0.0, "stiffness_n_m2": 80.0, "mass_g_m": 128.0 },
            { "position_mm": 960.0, "stiffness_n_m2": 26.0, "mass_g_m": 95.0 }
        ],
        "elements": 8, "clamp_mm": 127.0, "clamp_mm_sd": 1.5,
        "tip_body": { "mass_g": 256.0, "mass_g_sd": 1.0 },
        "measured": { "frequency_cpm": 300.0, "frequency_cpm_sd": 1.0, "tip_body": { "mass_g": 250.0, "mass_g_sd": 1.0 } },
        "correlations": [
            { "a": "measured.frequency_cpm", "b": "clamp_mm", "coefficient": 0.6 },
            { "a": "tip_body.mass_g", "b": "measured.tip_body.mass_g", "coefficient": 0.95 }
        ]
    });
    check_correlated("frequency", &input, 7);
}

/// Every reading errs with its neighbours, and all of them with the deflection that was held.
fn neighbours(readings: &str, count: usize, held: Option<&str>) -> Vec<Value> {
    let pair = |a: String, b: String, coefficient: f64| json!({ "a": a, "b": b, "coefficient": coefficient });
    (0..count)
        .flat_map(|i| {
            let next = pair(format!("{readings}[{i}]"), format!("{readings}[{}]", (i + 1) % count), 0.4);
            std::iter::once(next).chain(held.map(|held| pair(format!("{readings}[{i}]"), held.to_owned(), 0.2)))
        })
        .collect()
}

#[test]
fn soft_side_with_readings_that_err_together() {
    // A shaft of 6 % and a bow of 4 mm, so that the directions are straight functions of the readings; by hand.
    let angles: Vec<f64> = (0..8).map(|i| f64::from(i) * 45.0).collect();
    let reading = |scale: f64, degrees: &f64| {
        let rad = degrees.to_radians();
        scale * (1.0 + 0.06 * (2.0 * rad - 0.8).cos() + 0.04 * (rad - 2.7).cos())
    };
    let list = |scale: f64| angles.iter().map(|a| reading(scale, a)).collect::<Vec<_>>();
    let forces = json!({
        "angles_deg": angles, "forces_n": list(15.0), "forces_n_sd": 0.02,
        "fixed_deflection_mm": 100.0, "fixed_deflection_mm_sd": 0.1,
        "correlations": neighbours("forces_n", 8, Some("fixed_deflection_mm"))
    });
    check_correlated("soft-side", &forces, 5);
    let deflections = json!({
        "angles_deg": angles, "deflections_mm": list(100.0), "deflections_mm_sd": 0.2,
        "fixed_force_n": 15.0, "fixed_force_n_sd": 0.02,
        "correlations": neighbours("deflections_mm", 8, Some("fixed_force_n"))
    });
    check_correlated("soft-side", &deflections, 5);
    let planes = |degrees: &f64| 250.0 * (1.0 + 0.06 * (2.0 * degrees.to_radians() - 0.8).cos()).sqrt();
    let frequencies = json!({
        "angles_deg": angles, "frequencies_cpm": angles.iter().map(planes).collect::<Vec<_>>(), "frequencies_cpm_sd": 0.3,
        "correlations": neighbours("frequencies_cpm", 8, None)
    });
    check_correlated("soft-side", &frequencies, 4);
}

#[test]
fn grip_size_with_figures_that_err_together() {
    let input = json!({
        "core_in": 0.580, "core_in_sd": 0.0012, "butt_diameter_in": 0.600, "butt_diameter_in_sd": 0.001, "wanted_in": 0.950,
        "tape": {
            "layers": 2, "thickness_in": 0.005, "thickness_in_sd": 0.0001, "length_in": 9.5,
            "areal_density_g_m2": 125.0, "areal_density_g_m2_sd": 3.0
        },
        "correlations": [
            { "a": "core_in", "b": "butt_diameter_in", "coefficient": 0.8 },
            { "a": "tape.thickness_in", "b": "tape.areal_density_g_m2", "coefficient": 0.9 }
        ]
    });
    check_correlated("grip-size", &input, 8);
    let known = json!({
        "core_in": 0.580, "butt_diameter_in": 0.600, "butt_diameter_in_sd": 0.001, "wanted_in": 0.956,
        "tape": {
            "layers": 3, "growth_a_layer_in": 0.012, "growth_a_layer_in_sd": 0.0002, "layer_mass_g": 1.5, "layer_mass_g_sd": 0.05
        },
        "correlations": [{ "a": "tape.growth_a_layer_in", "b": "butt_diameter_in", "coefficient": -0.8 }]
    });
    check_correlated("grip-size", &known, 8);
}

/// Batch, times and pull of a joint whose every figure is uncertain, apart and together.
#[test]
fn glue_with_figures_that_err_together() {
    let sheet = |cold: f64, warm: f64, at: f64| {
        json!([
            { "temperature_c": 25.0, "temperature_c_sd": 0.5, "time_min": cold, "time_min_sd": 0.03 * cold },
            { "temperature_c": at, "temperature_c_sd": 0.5, "time_min": warm, "time_min_sd": 0.03 * warm }
        ])
    };
    let input = json!({
        "joint": {
            "bore_mm": 9.65, "bore_mm_sd": 0.005, "tip_mm": 9.40, "tip_mm_sd": 0.005, "depth_mm": 32.0, "depth_mm_sd": 0.3,
            "bottom_gap_mm": 1.0, "bottom_gap_mm_sd": 0.05, "density_g_ml": 1.15, "density_g_ml_sd": 0.01
        },
        "batch": {
            "joints": 8, "spare_percent": 40.0, "spare_percent_sd": 2.0, "ratio": "by_volume",
            "resin_parts": 1.0, "resin_parts_sd": 0.02, "hardener_parts": 1.0, "hardener_parts_sd": 0.02,
            "resin_density_g_ml": 1.16, "resin_density_g_ml_sd": 0.01,
            "hardener_density_g_ml": 1.05, "hardener_density_g_ml_sd": 0.01, "bead_share_percent": 2.0, "bead_share_percent_sd": 0.2
        },
        "cure": {
            "temperature_c": 21.0, "temperature_c_sd": 0.5, "pot_life": sheet(40.0, 20.0, 35.0),
            "handling": sheet(300.0, 60.0, 45.0), "full_cure": sheet(1440.0, 120.0, 60.0)
        },
        "pull": {
            "head_mass_g": 262.0, "head_mass_g_sd": 1.0, "head_speed_m_s": 38.0, "head_speed_m_s_sd": 0.5,
            "radius_m": 1.7, "radius_m_sd": 0.02, "shear_strength_mpa": 15.0, "shear_strength_mpa_sd": 0.5
        },
        "correlations": [
            { "a": "joint.bore_mm", "b": "joint.tip_mm", "coefficient": 0.9 },
            { "a": "batch.resin_parts", "b": "batch.hardener_parts", "coefficient": 0.8 },
            { "a": "cure.temperature_c", "b": "cure.pot_life[0].temperature_c", "coefficient": 0.9 },
            { "a": "cure.full_cure[0].time_min", "b": "cure.full_cure[1].time_min", "coefficient": 0.7 },
            { "a": "pull.head_speed_m_s", "b": "pull.radius_m", "coefficient": 0.6 }
        ]
    });
    check_correlated("glue", &input, 18);
    let weighed = json!({
        "batch": {
            "joints": 30, "adhesive_a_joint_g": 0.8, "adhesive_a_joint_g_sd": 0.02, "spare_percent": 30.0, "spare_percent_sd": 2.0,
            "ratio": "by_mass", "resin_parts": 2.0, "hardener_parts": 1.0, "hardener_parts_sd": 0.03
        },
        "correlations": [{ "a": "batch.adhesive_a_joint_g", "b": "batch.spare_percent", "coefficient": 0.8 }]
    });
    check_correlated("glue", &weighed, 5);
}

/// A name that is no input, a correlation beyond one, three that cannot hold together.
#[rstest]
#[case("frequency", "tip_body.mass_g", "tip_body.offset_mm")]
#[case("grip-size", "core_in", "butt_diameter_in")]
#[case("glue", "joint.bore_mm", "joint.tip_mm")]
fn impossible_correlations_are_refused(#[case] topic: &str, #[case] a: &str, #[case] b: &str) {
    let example = (calc::topics().iter().find(|known| known.name == topic).expect("a topic").example)();
    let with = |a: &str, b: &str, coefficient: f64| {
        let mut input = example.clone();
        input["correlations"] = json!([{ "a": a, "b": b, "coefficient": coefficient }]);
        calc::run(topic, input)
    };
    with(a, b, 0.5).expect("a possible correlation");
    let stranger = told(&with(a, "colour", 0.5).expect_err("no such input"));
    assert!(stranger.contains("“colour”") && stranger.contains(b), "{stranger}");
    let beyond = told(&with(a, b, 1.5).expect_err("beyond one"));
    assert!(beyond.contains(a) && beyond.contains("1.5") && beyond.contains("at most 1"), "{beyond}");
}

#[test]
fn readings_that_err_together_need_their_deviation() {
    let mut input = json!({
        "angles_deg": [0.0, 30.0, 60.0, 90.0, 120.0, 150.0], "frequencies_cpm": [250.0, 251.0, 252.0, 252.0, 251.0, 250.0],
        "correlations": [{ "a": "frequencies_cpm[0]", "b": "frequencies_cpm[1]", "coefficient": 0.5 }]
    });
    let error = calc::run("soft-side", input.clone()).expect_err("the deviation is missing");
    assert!(matches!(&error, PhysicsError::Missing { field, .. } if field == "frequencies_cpm_sd"), "{error}");
    input["frequencies_cpm_sd"] = json!(0.2);
    calc::run("soft-side", input.clone()).expect("complete");
    // All errors in common: the harmonics are then exact but for the square of the frequency, on which one cpm counts
    // 1 % more or less around this shaft; on its own each reading would leave 0.06 %.
    let all = (0..6).flat_map(|i| (0..i).map(move |j| (i, j)));
    input["correlations"] = all
        .map(|(i, j)| json!({ "a": format!("frequencies_cpm[{i}]"), "b": format!("frequencies_cpm[{j}]"), "coefficient": 1.0 }))
        .collect();
    let output = calc::run("soft-side", input).expect("possible");
    assert_eq!(output["asymmetry"]["presence"], "there", "{output}");
    assert!(output["asymmetry_percent_sd"].as_f64().is_some_and(|sd| sd < 1e-3), "{output}");
}
