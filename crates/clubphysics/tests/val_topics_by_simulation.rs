//! Goal: the standard deviations that topics state are those that simulation finds. Method: every figure that has a
//! `_sd` companion is drawn anew from a normal distribution, the topic is run on the drawn document without standard
//! deviations, and the scatter of each output is held against the `_sd` stated beside it.
//!
//! Tolerance: with 4000 draws a standard deviation is known to 1/√8000 = 1.1 %; 5 % is more than four of those.

use clubphysics::calc;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use rstest::rstest;
use serde_json::{Map, Value, json};

const DRAWS: usize = 4000;

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

/// Path and value of every output that has a standard deviation beside it.
fn stated(document: &Value, path: &str, found: &mut Vec<(String, f64)>) {
    match document {
        Value::Object(fields) => {
            for (name, value) in fields {
                match (name.strip_suffix("_sd"), value.as_f64()) {
                    (Some(plain), Some(sd)) => found.push((format!("{path}/{plain}"), sd)),
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
            (sd - simulated).abs() <= 0.05 * simulated + 1e-12,
            "{topic} {path}: states {sd}, simulated {simulated}"
        );
    }
}

/// The topics' own examples.
#[rstest]
#[case("balance", 6)]
#[case("inertia", 8)]
#[case("trim", 8)]
#[case("grip-size", 2)]
#[case("lie", 4)]
#[case("glue", 4)]
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
    check("balance", &input, |random| drawn(&input, random), 8);
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
    check("balance", &input, draw, 6);
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
    check("balance", &input, draw, 6);
}
