//! Goal: the bench mixes and waits as the calculation says, with one meaning for each word; a room or a cup outside the
//! product's sheet is said, and no cure clock starts in the cold without a reason.
//! Method: the same figures through `calc glue` and through the bench; amounts and times worked by hand.

use bench::glue::{Mix, MixFact, MixNext, mix, refuse_cold_room, room_warnings};
use bench::learned::{Learned, LearnedValue};
use clubphysics::calc;
use rstest::rstest;
use serde_json::{Value, json};
use trade::adhesive::{AdhesiveModel, CurePoint};
use words::check::InWords;

/// A day cure with two temperatures on its sheet.
fn day_cure() -> AdhesiveModel {
    AdhesiveModel {
        code: "SCHIST".into(),
        name: "Schist day cure".into(),
        label: String::new(),
        resin_per_hardener_by_mass: 1.0,
        resin_per_hardener_by_volume: 1.0 / 1.16,
        resin_density_g_per_ml: 1.16,
        hardener_density_g_per_ml: 1.0,
        pot_life_min: 60.0,
        pot_life_at_c: 23.0,
        pot_life_mass_g: 100.0,
        handling: vec![CurePoint { hours: 6.0, at_c: 23.0 }, CurePoint { hours: 1.0, at_c: 60.0 }],
        full_cure: vec![CurePoint { hours: 24.0, at_c: 23.0 }, CurePoint { hours: 3.0, at_c: 60.0 }],
        joint_mass_g: 1.6,
        joint_mass_sd_g: 0.4,
    }
}

/// A quick one whose sheet states every time at one temperature.
fn quick() -> AdhesiveModel {
    AdhesiveModel {
        resin_per_hardener_by_mass: 2.0,
        pot_life_min: 5.0,
        pot_life_at_c: 25.0,
        pot_life_mass_g: 20.0,
        handling: vec![CurePoint { hours: 0.5, at_c: 25.0 }],
        full_cure: vec![CurePoint { hours: 12.0, at_c: 25.0 }],
        ..day_cure()
    }
}

/// What the calculation says of the same adhesive, joints and room.
fn calculated(of: &AdhesiveModel, joints: usize, bead_share_percent: f64, room_c: f64) -> Value {
    let sheet = |points: &[CurePoint]| -> Value {
        points.iter().map(|p| json!({ "temperature_c": p.at_c, "time_min": p.hours * 60.0 })).collect()
    };
    let document = json!({
        "batch": {
            "joints": joints, "adhesive_a_joint_g": of.joint_mass_g, "bead_share_percent": bead_share_percent,
            "ratio": "by_mass", "resin_parts": of.resin_per_hardener_by_mass, "hardener_parts": 1.0,
            "resin_density_g_ml": of.resin_density_g_per_ml, "hardener_density_g_ml": of.hardener_density_g_per_ml
        },
        "cure": {
            "temperature_c": room_c, "pot_life_mass_g": of.pot_life_mass_g,
            "pot_life": [{ "temperature_c": of.pot_life_at_c, "time_min": of.pot_life_min }],
            "handling": sheet(&of.handling), "full_cure": sheet(&of.full_cure)
        }
    });
    calc::run("glue", document).unwrap_or_else(|error| panic!("{error}"))
}

#[track_caller]
fn same(bench: f64, calculated: &Value) {
    let calculated = calculated.as_f64().unwrap_or_else(|| panic!("{calculated} is no number"));
    // One function on both sides; only the ratio is turned over once more.
    assert!((bench - calculated).abs() <= 1e-12 * calculated.abs(), "{bench} at the bench, {calculated} calculated");
}

#[rstest]
fn the_bench_mixes_as_the_calculation_says(
    #[values(day_cure(), quick())] of: AdhesiveModel,
    #[values(1, 8, 60)] joints: usize,
    #[values(0.0, 2.0, 10.0)] bead_share_percent: f64,
    #[values(6.0, 20.0, 23.0, 35.0)] room_c: f64,
) {
    let bench = mix(&of, joints, None, bead_share_percent, room_c).expect("a good batch");
    let said = calculated(&of, joints, bead_share_percent, room_c);
    let (batch, cure) = (&said["batch"], &said["cure"]);
    for (bench, name) in [
        (bench.mix_g, "mix_g"),
        (bench.resin_g, "resin_g"),
        (bench.hardener_g, "hardener_g"),
        (bench.beads_g, "beads_g"),
        (bench.resin_ml, "resin_ml"),
        (bench.hardener_ml, "hardener_ml"),
    ] {
        same(bench, &batch[name]);
    }
    same(bench.pot_life_min, &cure["pot_life_min"]);
    same(bench.handling_h * 60.0, &cure["handling_min"]);
    same(bench.full_cure_h * 60.0, &cure["full_cure_min"]);
}

/// By hand: 8 × 1.6 g and 30 % are 16.64 g, a tenth of it spacers, the rest half and half; at 23 °C the sheet's own times.
#[test]
fn eight_joints_by_hand() {
    let bench = mix(&day_cure(), 8, None, 10.0, 23.0).expect("a good batch");
    for (got, want) in [
        (bench.mix_g, 16.64),
        (bench.beads_g, 1.664),
        (bench.resin_g, 7.488),
        (bench.hardener_g, 7.488),
        (bench.resin_ml, 7.488 / 1.16),
        (bench.pot_life_min, 60.0),
        (bench.handling_h, 6.0),
        (bench.full_cure_h, 24.0),
    ] {
        assert!((got - want).abs() < 1e-9, "{got} is not {want}");
    }
    assert!(bench.warnings.is_empty() && !bench.joint_mass_learned);
}

/// A shop whose clubs gain 0.5 g more at the joint than the model says mixes for that: 8 × 2.1 g × 1.3 = 21.84 g.
#[test]
fn the_bench_mixes_for_what_the_shop_has_learned() {
    let value = LearnedValue {
        key: "adhesive:SCHIST".into(),
        mean_shift: 0.5,
        prior_sd: 0.4,
        clubs: 8,
        jobs: 1,
        from: Vec::new(),
        pinned: false,
    };
    let learned = Learned { values: vec![value], covariance: vec![vec![0.01]], ..Learned::default() };
    let joint_mass_g = learned.joint_mass_g(&day_cure());
    assert_eq!(joint_mass_g, Some(2.1));
    let bench = mix(&day_cure(), 8, joint_mass_g, 0.0, 23.0).expect("a good batch");
    assert!((bench.mix_g - 21.84).abs() < 1e-9 && bench.joint_mass_learned, "{bench:?}");
    assert_eq!(learned.joint_mass_g(&AdhesiveModel { code: "OTHER".into(), ..day_cure() }), None);
}

/// The sheet's points are 23 and 60 °C. A line through them gives 75 h at 6 °C, where the adhesive may never cure.
#[test]
fn no_clock_starts_in_the_cold_without_a_reason() {
    let bench = mix(&day_cure(), 8, None, 2.0, 6.0).expect("amounts are known all the same");
    let [cold] = bench.warnings.as_slice() else { panic!("{:?}", bench.warnings) };
    assert_eq!(cold.fact, MixFact::ColderThanSheet { room_c: 6.0, sheet_c: 23.0, warm_to_c: 18.0 });
    let refused = refuse_cold_room(&day_cure(), 6.0, None).expect_err("no clock").in_words();
    for part in [
        "the room is 6 °C",
        "coldest cure is at 23 °C",
        "never cure fully",
        "Warm the room to 18 °C",
        "give the reason",
    ] {
        assert!(refused.contains(part), "{refused}");
    }
    assert!(refuse_cold_room(&day_cure(), 6.0, Some("  ")).is_err(), "blanks are no reason");
    refuse_cold_room(&day_cure(), 6.0, Some("the maker says 40 h at 5 °C")).expect("a reason");
    // Twenty degrees are room temperature, whether the sheet says 23 or 25 °C for it.
    for of in [day_cure(), quick()] {
        refuse_cold_room(&of, 20.0, None).expect("a room that people work in");
        assert!(room_warnings(&of, 20.0).is_empty());
    }
}

/// The full cure decides, also where the sheet states the handling strength in the cold.
#[test]
fn the_coldest_full_cure_counts() {
    let of = AdhesiveModel {
        handling: vec![CurePoint { hours: 30.0, at_c: 5.0 }, CurePoint { hours: 6.0, at_c: 23.0 }],
        ..day_cure()
    };
    assert!(refuse_cold_room(&of, 10.0, None).is_err());
    let of = AdhesiveModel {
        full_cure: vec![CurePoint { hours: 90.0, at_c: 5.0 }, CurePoint { hours: 24.0, at_c: 23.0 }],
        ..of
    };
    refuse_cold_room(&of, 10.0, None).expect("on the sheet");
}

#[test]
fn a_room_warmer_than_the_sheet_is_said() {
    let warm = room_warnings(&quick(), 35.0);
    assert!(matches!(warm[0].fact, MixFact::WarmerThanSheet { sheet_c: 25.0, .. }), "{warm:?}");
    refuse_cold_room(&quick(), 35.0, None).expect("warm is no danger to the cure");
    assert!(room_warnings(&day_cure(), 35.0).is_empty());
}

/// 60 joints are 124.8 g in one cup, which is good for 60·100/124.8 = 48 min, where the work takes 92 min (2 to stir, 1.5
/// each): two cups of 30 joints, 62.4 g each. The quick one is good for 5 min, two joints a cup.
#[test]
fn a_cup_that_goes_off_too_soon_becomes_several() {
    let cups = |mix: &Mix| match mix.warnings.last().map(|w| w.next.clone()) {
        Some(MixNext::MixCups { cups, joints_a_cup, resin_g, .. }) => (cups, joints_a_cup, resin_g),
        other => panic!("{other:?}"),
    };
    let many = mix(&day_cure(), 60, None, 0.0, 23.0).expect("a good batch");
    assert_eq!((cups(&many).0, cups(&many).1), (2, 30));
    assert!((cups(&many).2 - 31.2).abs() < 1e-9);
    let w = words::Words::english(quantity::Units::default());
    let told = many.warnings.last().map(|one| (w.sentence(&one.fact), w.sentence(&one.next))).expect("a warning");
    assert!(told.0.contains("about 92 min") && told.0.contains("good for 48 min"), "{told:?}");
    assert!(
        told.1.starts_with("Mix 2 cups one after the other, 30 joints each: 31.2 g resin, 31.2 g hardener"),
        "{told:?}"
    );
    let quick_one = mix(&quick(), 8, None, 0.0, 25.0).expect("a good batch");
    assert_eq!((cups(&quick_one).0, cups(&quick_one).1), (4, 2));
    // At 40 °C it is good for 5/2.782 min: less than a joint takes.
    let hot = mix(&quick(), 8, None, 0.0, 40.0).expect("a good batch");
    assert!(hot.warnings.iter().any(|w| matches!(w.fact, MixFact::TooFast { .. })), "{hot:?}");
    assert!(mix(&day_cure(), 8, None, 0.0, 23.0).expect("a good batch").warnings.is_empty());
}

#[rstest]
#[case(0, 2.0, 20.0, "no club")]
#[case(8, 2.0, 70.0, "This looks like degrees Fahrenheit, and 70 °F is 21.1 °C")]
#[case(8, 60.0, 20.0, "between 0 % and 30 %")]
#[case(100_000, 2.0, 20.0, "joints is 100000: it must be between 1 and 500")]
fn impossible_batches_are_refused(#[case] joints: usize, #[case] beads: f64, #[case] room_c: f64, #[case] text: &str) {
    let error = mix(&day_cure(), joints, None, beads, room_c).expect_err("must be refused").in_words();
    assert!(error.contains(text), "{error}");
}
