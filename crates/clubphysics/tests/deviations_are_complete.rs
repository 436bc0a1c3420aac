//! Goal: where inputs carry standard deviations, outputs do too. Method: every uncertain figure of a document is moved,
//! and every output that moves with it must have its `_sd` beside it.

use std::collections::BTreeSet;

use clubphysics::calc;
use rstest::rstest;
use serde_json::{Value, json};

/// Lines to draw, slopes and limits of a test: figures about the result, or whose mass and place carry the deviation.
const WITHOUT: [&str; 5] = ["/mass_line/", "/raw_mass_line/", "/sensitivity/", "/at_most", "p_value"];

fn walk(value: &Value, path: &str, see: &mut impl FnMut(&str, f64)) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| walk(value, &format!("{path}/{name}"), see)),
        Value::Array(items) => items.iter().enumerate().for_each(|(i, item)| walk(item, &format!("{path}/{i}"), see)),
        Value::Number(number) => see(path, number.as_f64().expect("a number")),
        _ => {}
    }
}

/// Places of the figures that have a standard deviation, with it.
fn uncertain(document: &Value) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    walk(document, "", &mut |path, sd| {
        if let Some(plain) = path.strip_suffix("_sd") {
            match document.pointer(plain) {
                Some(Value::Array(list)) => found.extend((0..list.len()).map(|i| (format!("{plain}/{i}"), sd))),
                Some(_) => found.push((plain.to_owned(), sd)),
                None => panic!("{path} stands alone"),
            }
        }
    });
    found
}

fn has_deviation(output: &Value, path: &str) -> bool {
    let (list, last) = path.rsplit_once('/').expect("a path");
    let beside = if last.parse::<usize>().is_ok() { list } else { path };
    output.pointer(&format!("{beside}_sd")).is_some()
}

#[rstest]
#[case("swing-weight", json!({
    "parts": [
        { "name": "head", "mass_g": 256.0, "mass_g_sd": 0.1, "position_mm": 950.0, "position_mm_sd": 1.0 },
        { "name": "shaft", "mass_g": 120.0, "position_mm": 467.5, "position_mm_sd": 1.0 }
    ],
    "what_if": {
        "grip": { "mass_g": 50.0, "mass_g_sd": 0.5, "position_mm": 102.0, "position_mm_sd": 3.0, "cap_change_mm": 3.0, "cap_change_mm_sd": 0.3 },
        "longer_mm": -6.0, "longer_mm_sd": 0.3, "butt_density_g_m": 130.0,
        "add": [{ "mass_g": 4.0, "mass_g_sd": 0.1, "position_mm": 900.0, "position_mm_sd": 2.0 }]
    }
}))]
#[case("inertia", json!({
    "axis_mm": 30.0,
    "parts": [
        { "name": "head", "mass_g": 256.0, "mass_g_sd": 0.1, "position_mm": 950.0, "position_mm_sd": 1.0, "own_inertia_kg_cm2": 3.0, "own_inertia_kg_cm2_sd": 0.1 },
        { "name": "shaft", "mass_g": 120.0, "mass_g_sd": 0.1, "position_mm": 467.5, "length_mm": 935.0 }
    ],
    "pendulum": {
        "period_s": 1.88, "period_s_sd": 0.001, "total_mass_g": 426.0, "total_mass_g_sd": 0.1, "balance_point_mm": 715.0,
        "balance_point_mm_sd": 0.5, "pivot_mm": 20.0, "pivot_mm_sd": 0.5, "amplitude_deg": 8.0, "amplitude_deg_sd": 0.5
    },
    "series": {
        "reference_length_mm": 950.0, "lengths_mm": [975.4, 950.0], "head_mass_g": 256.0, "head_mass_g_sd": 0.2,
        "head_position_mm": 950.0, "head_position_mm_sd": 1.0, "shaft_mass_g": 120.0, "shaft_length_mm": 935.0,
        "shaft_position_mm": 467.5, "grip_mass_g": 50.0, "grip_length_mm": 270.0, "grip_position_mm": 105.0
    }
}))]
#[case("trim", json!({
    "mass_g": 126.0, "mass_g_sd": 0.1, "length_mm": 1016.0, "length_mm_sd": 0.15, "balance_point_mm": 492.0,
    "balance_point_mm_sd": 1.0, "tip_trim_mm": 20.0, "tip_trim_mm_sd": 0.5, "butt_trim_mm": 30.0, "butt_trim_mm_sd": 0.5,
    "finished": {
        "convention": "to_cap", "cap_mm": 3.0, "cap_mm_sd": 0.2, "bore_to_ground_mm": 35.0, "bore_to_ground_mm_sd": 0.4, "bore_depth_mm": 32.0,
        "rules": { "lie_deg": 62.0, "lie_deg_sd": 0.5, "heel_radius_mm": 6.5, "sole_contact_mm": 35.0, "sole_radius_mm": 250.0 }
    }
}))]
#[case("frequency", json!({
    "stiffness_line": [
        { "position_mm": 0.0, "stiffness_n_m2": 80.0, "mass_g_m": 128.0 }, { "position_mm": 960.0, "stiffness_n_m2": 26.0, "mass_g_m": 95.0 }
    ],
    "length_mm": 960.0, "clamp_mm": 127.0, "clamp_mm_sd": 1.0, "butt_trim_mm": 10.0, "butt_trim_mm_sd": 0.5, "tip_load_n": 9.8, "tip_load_n_sd": 0.1,
    "tip_body": { "mass_g": 256.0, "mass_g_sd": 1.0, "offset_mm": 12.0, "offset_mm_sd": 1.0, "inertia_g_cm2": 2500.0, "inertia_g_cm2_sd": 50.0 },
    "measured": { "frequency_cpm": 300.0, "frequency_cpm_sd": 1.0 }, "what_if": [{ "name": "trim", "tip_trim_mm": 12.0 }]
}))]
#[case("soft-side", json!({
    "angles_deg": [0.0, 30.0, 60.0, 90.0, 120.0, 150.0, 180.0, 210.0, 240.0, 270.0, 300.0, 330.0],
    "forces_n": [15.16, 14.94, 14.94, 15.13, 15.24, 15.09, 14.74, 14.5, 14.6, 14.98, 15.32, 15.37], "forces_n_sd": 0.02,
    "fixed_deflection_mm": 100.0, "fixed_deflection_mm_sd": 0.1, "roller_deflection_mm": 100.0
}))]
#[case("grip-size", json!({
    "core_in": 0.580, "core_in_sd": 0.001, "butt_diameter_in": 0.600, "butt_diameter_in_sd": 0.001, "wanted_in": 0.940,
    "tape": { "layers": 2, "thickness_in": 0.005, "thickness_in_sd": 0.0001, "areal_density_g_m2": 125.0, "areal_density_g_m2_sd": 3.0 }
}))]
#[case("lie", json!({
    "length": { "lie_deg": 60.0, "lie_deg_sd": 0.3, "length_mm": 950.0, "length_mm_sd": 0.5, "new_length_mm": 963.0, "new_length_mm_sd": 0.5, "hands_below_butt_mm": 100.0 },
    "aim": { "loft_deg": 30.0, "loft_deg_sd": 0.3, "lie_error_deg": 1.0, "lie_error_deg_sd": 0.2, "distance_m": 150.0 }
}))]
#[case("glue", json!({
    "joint": { "bore_mm": 9.65, "bore_mm_sd": 0.005, "tip_mm": 9.40, "tip_mm_sd": 0.005, "depth_mm": 32.0, "depth_mm_sd": 0.3, "density_g_ml": 1.15, "density_g_ml_sd": 0.01 },
    "batch": { "joints": 8, "spare_percent": 40.0, "spare_percent_sd": 2.0, "ratio": "by_mass", "resin_parts": 2.0, "hardener_parts": 1.0, "hardener_parts_sd": 0.02, "bead_share_percent": 2.0, "bead_share_percent_sd": 0.2, "resin_density_g_ml": 1.16, "resin_density_g_ml_sd": 0.01 },
    "cure": {
        "temperature_c": 21.0, "temperature_c_sd": 0.5,
        "pot_life": [{ "temperature_c": 25.0, "time_min": 40.0, "time_min_sd": 2.0 }, { "temperature_c": 35.0, "time_min": 20.0 }],
        "full_cure": [{ "temperature_c": 25.0, "time_min": 1440.0 }, { "temperature_c": 60.0, "temperature_c_sd": 1.0, "time_min": 120.0 }]
    },
    "pull": { "head_mass_g": 262.0, "head_mass_g_sd": 1.0, "head_speed_m_s": 38.0, "head_speed_m_s_sd": 0.5, "radius_m": 1.7, "shear_strength_mpa": 15.0, "shear_strength_mpa_sd": 0.5 }
}))]
fn what_moves_with_an_uncertain_input_says_how_sure_it_is(#[case] topic: &str, #[case] document: Value) {
    let output = calc::run(topic, document.clone()).expect("a good document");
    let inputs = uncertain(&document);
    assert!(inputs.len() >= 4, "{inputs:?}");
    let mut bare = BTreeSet::new();
    let mut moved = 0;
    for (place, sd) in inputs {
        let mut other = document.clone();
        let figure = other.pointer_mut(&place).expect("the figure");
        *figure = json!(figure.as_f64().expect("a number") + 0.3 * sd);
        let other = calc::run(topic, other).expect("still a good document");
        walk(&output, "", &mut |path, value| {
            let after = other.pointer(path).and_then(Value::as_f64).unwrap_or(value);
            let is_figure = !path.contains("_sd") && !WITHOUT.iter().any(|part| path.contains(part));
            if is_figure && (after - value).abs() > 1e-9 * value.abs() + 1e-12 {
                moved += 1;
                if !has_deviation(&output, path) {
                    bare.insert(path.to_owned());
                }
            }
        });
    }
    assert!(moved > 5, "{topic}: only {moved} outputs moved");
    assert!(bare.is_empty(), "{topic}: without a standard deviation: {bare:?}");
}
