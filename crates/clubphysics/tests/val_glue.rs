//! Goal: adhesive, amounts, times and pull as published or worked by hand.

use clubphysics::{
    PhysicsError, calc,
    glue::{SheetPoint, relative_rate, time_at},
};
use proptest::prelude::*;
use rstest::rstest;
use serde_json::{Value, json};

fn run(input: Value) -> Value {
    calc::run("glue", input).unwrap_or_else(|error| panic!("{error}"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

/// Published worked value: 0.320 kg at 44.704 m/s on 2 m, 319.75 N. Tolerance: half the last digit.
#[test]
fn pull_of_a_swing() {
    let output = run(json!({ "pull": { "head_mass_g": 320.0, "head_speed_m_s": 44.704, "radius_m": 2.0 } }));
    close(number(&output["pull"]["pull_n"]), 319.75, 0.005);
    assert!(output["pull"].get("shear_mpa").is_none(), "no joint, no stress");
    assert_eq!(output["pull"]["assumptions"].as_array().map(Vec::len), Some(3));
}

/// 319.75 N over π × 9.4 mm × 32 mm = 945.0 mm²: 0.3384 MPa, by hand.
#[test]
fn stress_in_the_joint() {
    let output = run(json!({
        "joint": { "bore_mm": 9.65, "tip_mm": 9.4, "depth_mm": 32.0, "density_g_ml": 1.15 },
        "pull": { "head_mass_g": 320.0, "head_speed_m_s": 44.704, "radius_m": 2.0, "shear_strength_mpa": 16.92 }
    }));
    close(number(&output["pull"]["shear_mpa"]), 0.3384, 0.000_1);
    close(number(&output["pull"]["strength_over_stress"]), 50.0, 0.02);
}

/// Derived from an activation energy of 52.95 kJ/mol: the rate doubles from 25 to 35 °C; against 25 °C it is 0.477 at
/// 15 °C, 0.695 at 20, 1.422 at 30, 2.782 at 40. Tolerance: half the last digit.
#[rstest]
#[case(15.0, 0.477)]
#[case(20.0, 0.695)]
#[case(25.0, 1.0)]
#[case(30.0, 1.422)]
#[case(35.0, 2.0)]
#[case(40.0, 2.782)]
fn rates_by_temperature(#[case] temperature_c: f64, #[case] rate: f64) {
    close(relative_rate(52.95, temperature_c, 25.0), rate, 0.000_5);
    // The same by two points of a sheet, half the time at 35 °C: times are the inverse of rates.
    let sheet =
        [SheetPoint { temperature_c: 25.0, time_min: 40.0 }, SheetPoint { temperature_c: 35.0, time_min: 20.0 }];
    let (time_min, energy_kj_mol) = time_at("pot_life", sheet, temperature_c).expect("a good sheet");
    close(40.0 / time_min, rate, 0.000_6);
    close(energy_kj_mol, 52.95, 0.005);
}

proptest! {
    /// The line goes through both points of the sheet, in whichever order they stand.
    #[test]
    fn the_sheet_wins_at_its_own_points(cold_c in 5.0f64..25.0, span_c in 1.0f64..40.0, warm_min in 1.0f64..500.0, factor in 1.0f64..20.0, turn: bool) {
        let cold = SheetPoint { temperature_c: cold_c, time_min: warm_min * factor };
        let warm = SheetPoint { temperature_c: cold_c + span_c, time_min: warm_min };
        let sheet = if turn { [warm, cold] } else { [cold, warm] };
        for point in sheet {
            let (time_min, _) = time_at("full_cure", sheet, point.temperature_c).unwrap();
            prop_assert!((time_min / point.time_min - 1.0).abs() < 1e-9);
        }
    }

    /// Everything that goes into the cup adds up, and the ratio is the sheet's.
    #[test]
    fn a_batch_adds_up(joints in 1u32..40, waste in 0.0f64..0.9, beads in 0.0f64..0.3, hardener in 0.1f64..2.0, by_volume: bool) {
        let output = run(json!({ "batch": {
            "joints": joints, "adhesive_a_joint_g": 0.8, "waste_share": waste, "bead_share": beads,
            "ratio": if by_volume { "by_volume" } else { "by_mass" }, "resin_parts": 1.0, "hardener_parts": hardener,
            "resin_density_g_ml": 1.2, "hardener_density_g_ml": 1.0
        } }));
        let [resin, hard, bead, mix] = ["resin_g", "hardener_g", "beads_g", "mix_g"].map(|name| number(&output["batch"][name]));
        prop_assert!((resin + hard + bead - mix).abs() < 1e-9 * mix);
        prop_assert!((mix * (1.0 - waste) - 0.8 * f64::from(joints)).abs() < 1e-9 * mix);
        prop_assert!((bead - beads * (resin + hard)).abs() < 1e-9 * mix);
        let volumes = if by_volume { (hard / 1.0) / (resin / 1.2) } else { hard / resin };
        prop_assert!((volumes - hardener).abs() < 1e-9);
    }
}

/// A ring of 9.65 and 9.40 mm over 32 mm: π/4 × 4.7625 mm² × 32 mm = 119.69 mm³, by hand.
#[test]
fn volume_of_a_joint() {
    let output = run(json!({ "joint": { "bore_mm": 9.65, "tip_mm": 9.4, "depth_mm": 32.0, "density_g_ml": 1.2 } }));
    close(number(&output["joint"]["volume_ml"]), 0.119_69, 0.000_005);
    close(number(&output["joint"]["adhesive_g"]), 0.119_69 * 1.2, 0.000_01);
    close(number(&output["joint"]["gap_mm"]), 0.125, 1e-12);
    // A gap of 1 mm under the tip holds π/4 × 9.65² = 73.14 mm³ more.
    let deeper = run(
        json!({ "joint": { "bore_mm": 9.65, "tip_mm": 9.4, "depth_mm": 32.0, "bottom_gap_mm": 1.0, "density_g_ml": 1.2 } }),
    );
    close(number(&deeper["joint"]["volume_ml"]) - number(&output["joint"]["volume_ml"]), 0.073_14, 0.000_005);
}

#[test]
fn a_cup_larger_than_the_sheets_is_pointed_out() {
    let output = run(json!({
        "batch": { "joints": 20, "adhesive_a_joint_g": 6.0, "ratio": "by_mass", "resin_parts": 2.0, "hardener_parts": 1.0 },
        "cure": {
            "temperature_c": 30.0, "pot_life_mass_g": 100.0,
            "pot_life": [{ "temperature_c": 25.0, "time_min": 40.0 }, { "temperature_c": 35.0, "time_min": 20.0 }]
        }
    }));
    assert!(output["cure"]["warnings"][0].as_str().is_some_and(|text| text.contains("120 g in one cup")), "{output}");
}

#[test]
fn wide_and_thin_gaps_are_pointed_out() {
    let gap = |bore_mm: f64| {
        run(json!({ "joint": { "bore_mm": bore_mm, "tip_mm": 9.4, "depth_mm": 32.0, "density_g_ml": 1.2 } }))
    };
    assert!(gap(9.45)["warnings"][0].as_str().is_some_and(|text| text.contains("thinner")));
    assert!(gap(10.2)["warnings"][0].as_str().is_some_and(|text| text.contains("shim")));
    assert!(gap(9.7).get("warnings").is_none());
}

#[rstest]
#[case(json!({ "joint": { "bore_mm": 9.3, "tip_mm": 9.4, "depth_mm": 32.0, "density_g_ml": 1.2 } }), "joint.bore_mm")]
#[case(json!({ "joint": { "bore_mm": 0.375, "tip_mm": 0.37, "depth_mm": 32.0, "density_g_ml": 1.2 } }), "joint.tip_mm")]
#[case(json!({ "joint": { "bore_mm": 9.6, "tip_mm": 9.4, "depth_mm": 0.0, "density_g_ml": 1.2 } }), "joint.depth_mm")]
#[case(json!({ "pull": { "head_mass_g": 300.0, "head_speed_m_s": 40.0, "radius_m": 0.0 } }), "pull.radius_m")]
#[case(json!({ "batch": { "joints": 0, "adhesive_a_joint_g": 1.0, "ratio": "by_mass", "resin_parts": 1.0, "hardener_parts": 1.0 } }), "batch.joints")]
#[case(json!({ "batch": { "joints": 2, "adhesive_a_joint_g": 1.0, "waste_share": 30.0, "ratio": "by_mass", "resin_parts": 1.0, "hardener_parts": 1.0 } }), "batch.waste_share")]
#[case(json!({ "cure": { "temperature_c": 20.0, "pot_life": [{ "temperature_c": 25.0, "time_min": 20.0 }, { "temperature_c": 35.0, "time_min": 40.0 }] } }), "cure.pot_life, time at 35 °C")]
#[case(json!({ "cure": { "temperature_c": 295.0, "pot_life": [{ "temperature_c": 25.0, "time_min": 40.0 }, { "temperature_c": 35.0, "time_min": 20.0 }] } }), "cure.temperature_c")]
fn impossible_figures_are_refused(#[case] input: Value, #[case] field: &str) {
    let error = calc::run("glue", input).expect_err("must be refused");
    assert!(matches!(&error, PhysicsError::OutOfRange { field: named, .. } if named == field), "{error}");
}

#[test]
fn what_goes_together_is_asked_together() {
    let volume = json!({ "batch": { "joints": 2, "adhesive_a_joint_g": 1.0, "ratio": "by_volume", "resin_parts": 1.0, "hardener_parts": 1.0 } });
    let error = calc::run("glue", volume).expect_err("needs densities");
    assert!(matches!(&error, PhysicsError::Missing { field, .. } if field.contains("density")), "{error}");
    let alike = json!({ "cure": { "temperature_c": 20.0, "pot_life": [{ "temperature_c": 25.0, "time_min": 40.0 }, { "temperature_c": 25.0, "time_min": 40.0 }] } });
    assert!(matches!(calc::run("glue", alike), Err(PhysicsError::Contradiction { .. })));
}
