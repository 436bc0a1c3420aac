//! Goal: a cut shaft has the mass that was left on it, and the finished length comes out. Method: properties, mass lines
//! integrated numerically, and the geometry of the 60-degree plane solved another way.

use crate::spoken::words;
use crate::told;
use clubphysics::{
    PhysicsError, calc,
    trim::{Convention, FinishedLength, MassLine, Shaft},
};
use proptest::prelude::*;
use serde_json::{Value, json};

fn run(input: Value) -> Value {
    calc::run("trim", input).unwrap_or_else(|error| panic!("{error}"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

prop_compose! {
    /// A shaft whose balance point lies where a straight mass line can have it.
    fn shaft()(mass_g in 40.0f64..140.0, length_mm in 700.0f64..1200.0, share in 0.34f64..0.66) -> Shaft {
        Shaft { mass_g, length_mm, balance_point_mm: share * length_mm }
    }
}

proptest! {
    #[test]
    fn cutting_nothing_changes_nothing(shaft in shaft()) {
        let cut = shaft.cut(0.0, 0.0).unwrap();
        prop_assert!((cut.mass_g - shaft.mass_g).abs() < 1e-12 * shaft.mass_g);
        prop_assert!((cut.length_mm - shaft.length_mm).abs() < 1e-12 * shaft.length_mm);
        prop_assert!((cut.balance_point_mm - shaft.balance_point_mm).abs() < 1e-12 * shaft.length_mm);
    }

    /// Tolerance: the second cut starts from three rounded figures; 1e-12 relative is a thousand roundings.
    #[test]
    fn two_cuts_equal_one(shaft in shaft(), tip in 0.0f64..100.0, butt in 0.0f64..100.0, more_tip in 0.0f64..100.0, more_butt in 0.0f64..100.0) {
        let twice = shaft.cut(tip, butt).unwrap().cut(more_tip, more_butt).unwrap();
        let once = shaft.cut(tip + more_tip, butt + more_butt).unwrap();
        prop_assert!((twice.mass_g - once.mass_g).abs() < 1e-12 * shaft.mass_g);
        prop_assert!((twice.balance_point_mm - once.balance_point_mm).abs() < 1e-12 * shaft.length_mm);
        prop_assert!((twice.length_mm - once.length_mm).abs() < 1e-12 * shaft.length_mm);
    }

    /// Mass and moment of the three pieces are those of the raw shaft.
    #[test]
    fn pieces_add_up(shaft in shaft(), tip in 1.0f64..200.0, butt in 1.0f64..200.0) {
        let kept = shaft.cut(tip, butt).unwrap();
        let tip_piece = shaft.cut(0.0, shaft.length_mm - tip).unwrap();
        let butt_piece = shaft.cut(shaft.length_mm - butt, 0.0).unwrap();
        let mass_g = kept.mass_g + tip_piece.mass_g + butt_piece.mass_g;
        prop_assert!((mass_g - shaft.mass_g).abs() < 1e-10);
        let moment = kept.mass_g * (kept.balance_point_mm + butt)
            + tip_piece.mass_g * (tip_piece.balance_point_mm + shaft.length_mm - tip)
            + butt_piece.mass_g * butt_piece.balance_point_mm;
        prop_assert!((moment - shaft.mass_g * shaft.balance_point_mm).abs() < 1e-9 * shaft.mass_g * shaft.length_mm);
    }

    /// The finished length that a cut was made for comes out of the cut.
    #[test]
    fn finished_length_comes_out(length_mm in 800.0f64..1200.0, cap_mm in 0.0f64..5.0, bore_mm in 0.0f64..60.0, off_mm in 0.0f64..5.0, to_cap: bool) {
        let convention = if to_cap { Convention::ToCap } else { Convention::ToShaftEnd };
        let club = FinishedLength {
            finished_length_mm: length_mm, convention, cap_mm, bore_to_ground_mm: bore_mm, off_bottom_mm: off_mm,
        };
        let cut_mm = club.cut_shaft_length_mm().unwrap();
        prop_assert!((club.finished_with_mm(cut_mm).unwrap() - length_mm).abs() < 1e-9);
        prop_assert!(cut_mm < length_mm + 1e-9);
    }
}

/// An even shaft of 100 g and 1000 mm, 50 mm off the tip and 150 mm off the butt: 80 g, balanced in its middle.
#[test]
fn an_even_shaft_by_hand() {
    let output = run(json!({
        "mass_g": 100.0, "length_mm": 1000.0, "balance_point_mm": 500.0, "tip_trim_mm": 50.0, "butt_trim_mm": 150.0
    }));
    close(number(&output["mass_g"]), 80.0, 1e-12);
    close(number(&output["length_mm"]), 800.0, 1e-12);
    close(number(&output["balance_point_mm"]), 400.0, 1e-12);
    close(number(&output["tip_piece"]["mass_g"]), 5.0, 1e-12);
    close(number(&output["butt_piece"]["mass_g"]), 15.0, 1e-12);
    // mL²/12: 0.080 kg × 80² cm² / 12.
    close(number(&output["inertia_about_centre_kg_cm2"]), 0.08 * 6400.0 / 12.0, 1e-10);
}

/// A triangle of mass, nothing at the tip end: balance at a third. The first half of its length holds three quarters of
/// its mass; the half's own centre is at 2/9 of the whole length (by hand).
#[test]
fn a_triangle_of_mass_by_hand() {
    let triangle = Shaft { mass_g: 120.0, length_mm: 900.0, balance_point_mm: 300.0 };
    let half = triangle.cut(450.0, 0.0).expect("a straight mass line");
    close(half.mass_g, 90.0, 1e-10);
    close(half.balance_point_mm, 200.0, 1e-10);
}

/// A stepped shaft against a sum over thin slices, after a cut through the middle of steps.
#[test]
fn a_stepped_shaft_against_slices() {
    let steps = [(300.0, 45.0), (350.0, 40.0), (366.0, 37.0)];
    let line: MassLine = MassLine::from_steps("steps", &steps).expect("good steps");
    let kept = line.part(20.0, 1016.0 - 60.0);
    let density = |x_mm: f64| match x_mm {
        x if x < 300.0 => 45.0 / 300.0,
        x if x < 650.0 => 40.0 / 350.0,
        _ => 37.0 / 366.0,
    };
    // Slices of 0.1 mm whose borders meet the steps: the midpoint rule is exact for pieces of even density but for the
    // second moment, where each slice leaves out its own dx³/12.
    let slices: Vec<f64> = (0..9360).map(|i| 20.05 + f64::from(i) * 0.1).collect();
    let mass_g: f64 = slices.iter().map(|x| density(*x) * 0.1).sum();
    let first: f64 = slices.iter().map(|x| density(*x) * 0.1 * (x - 20.0)).sum();
    let second: f64 = slices.iter().map(|x| density(*x) * 0.1 * (x - 20.0).powi(2)).sum();
    let [got_mass, got_first, got_second] = kept.moments();
    close(got_mass, mass_g, 1e-8);
    close(got_first, first, 1e-5);
    close(got_second, second, mass_g * 0.01);
}

/// A table is scaled and tilted to the weighed figures, and two cuts equal one there too.
#[test]
fn a_table_meets_the_weighed_figures() {
    let input = |tip: f64, butt: f64| {
        json!({
            "mass_g": 126.0, "length_mm": 1016.0, "balance_point_mm": 492.0, "tip_trim_mm": tip, "butt_trim_mm": butt,
            "mass_table": [
                { "position_mm": 0.0, "density_g_m": 140.0 }, { "position_mm": 400.0, "density_g_m": 126.0 },
                { "position_mm": 800.0, "density_g_m": 112.0 }, { "position_mm": 1016.0, "density_g_m": 118.0 }
            ]
        })
    };
    let uncut = run(input(0.0, 0.0));
    close(number(&uncut["mass_g"]), 126.0, 1e-10);
    close(number(&uncut["balance_point_mm"]), 492.0, 1e-9);
    assert_eq!(uncut["mass_line"].as_array().map(Vec::len), Some(3));
    let cut = run(input(30.0, 50.0));
    let sum = number(&cut["mass_g"]) + number(&cut["tip_piece"]["mass_g"]) + number(&cut["butt_piece"]["mass_g"]);
    close(sum, 126.0, 1e-10);
    // The shape matters: a straight line of the same three figures would leave another mass.
    let straight =
        Shaft { mass_g: 126.0, length_mm: 1016.0, balance_point_mm: 492.0 }.cut(30.0, 50.0).expect("straight");
    assert!((straight.mass_g - number(&cut["mass_g"])).abs() > 0.02, "{} and {}", straight.mass_g, cut["mass_g"]);
}

fn with_finish(convention: &str, length_mm: Option<f64>, butt_trim_mm: Option<f64>) -> Value {
    json!({
        "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "tip_trim_mm": 25.0, "butt_trim_mm": butt_trim_mm,
        "finished": {
            "length_mm": length_mm, "convention": convention, "cap_mm": 3.0, "bore_to_ground_mm": 35.0,
            "bore_depth_mm": 32.0, "off_bottom_mm": 1.5
        }
    })
}

/// 950 mm to the cap: 950 − 3 − 35 − 1.5 = 910.5 mm of shaft; to the shaft's end: 913.5 mm. By hand.
#[test]
fn both_length_conventions() {
    let to_cap = run(with_finish("to_cap", Some(950.0), None));
    close(number(&to_cap["length_mm"]), 910.5, 1e-9);
    close(number(&to_cap["butt_piece"]["length_mm"]), 1016.0 - 25.0 - 910.5, 1e-9);
    close(number(&to_cap["finished"]["to_cap_mm"]), 950.0, 1e-9);
    close(number(&to_cap["finished"]["to_shaft_end_mm"]), 947.0, 1e-9);
    close(number(&to_cap["finished"]["insertion_mm"]), 30.5, 1e-9);
    let to_end = run(with_finish("to_shaft_end", Some(950.0), None));
    close(number(&to_end["length_mm"]), 913.5, 1e-9);
    close(number(&to_end["finished"]["to_cap_mm"]), 953.0, 1e-9);
    // And back: that butt trim gives that length.
    let back = run(with_finish("to_shaft_end", None, Some(number(&to_end["butt_piece"]["length_mm"]))));
    close(number(&back["finished"]["to_shaft_end_mm"]), 950.0, 1e-9);
}

/// Length by the 60-degree plane (method: Equipment Rules, 2.1c). At a lie of 60° the plane lies in the ground line and
/// only the heel's radius counts: r/tan 60°. At other lies the touching point is found here by trying every point of
/// the sole's arc, not by the formula.
#[test]
fn sixty_degree_plane() {
    let rules = |lie_deg: f64, contact_mm: f64, radius_mm: f64| {
        let mut input = with_finish("to_cap", Some(950.0), None);
        input["finished"]["rules"] = json!({
            "lie_deg": lie_deg, "heel_radius_mm": 6.5, "sole_contact_mm": contact_mm, "sole_radius_mm": radius_mm
        });
        run(input)["finished"]["rules"].clone()
    };
    let flush = rules(60.0, 35.0, 250.0);
    close(number(&flush["length_mm"]), 950.0 - 6.5 / 3f64.sqrt(), 1e-9);
    close(number(&flush["below_48_in_mm"]), 1219.2 - number(&flush["length_mm"]), 1e-9);
    // 2.1c: 48 in at most and 18 in at least; local rule G-10: 46 in. By hand at 25.4 mm an inch.
    close(number(&flush["below_46_in_mm"]), 1168.4 - number(&flush["length_mm"]), 1e-9);
    close(number(&flush["above_18_in_mm"]), number(&flush["length_mm"]) - 457.2, 1e-9);
    for (lie_deg, contact_mm, radius_mm) in [(56.0, 38.0, 250.0), (64.0, 33.0, 180.0), (61.5, 35.0, 0.001)] {
        let got = number(&rules(lie_deg, contact_mm, radius_mm)["beyond_axis_length_mm"]);
        close(got, by_trying(lie_deg, contact_mm, radius_mm, 6.5), 1e-4);
    }
}

/// Rolls a 60° line against an arc that touches the ground at the contact point, and meets it with the plane under the
/// shaft. The axis runs along x, the toe points up.
fn by_trying(lie_deg: f64, contact_mm: f64, radius_mm: f64, heel_mm: f64) -> f64 {
    let (sin, cos) = lie_deg.to_radians().sin_cos();
    // Ground line: away from the butt and up; the arc's centre lies on the club's side of it.
    let centre = (contact_mm * cos - radius_mm * sin, contact_mm * sin + radius_mm * cos);
    let slope = 60f64.to_radians().tan();
    let foot = |i: i32| {
        let angle = f64::from(i) * 1e-5;
        let (x, y) = (centre.0 + radius_mm * angle.cos(), centre.1 + radius_mm * angle.sin());
        x - (y + heel_mm) / slope
    };
    (-160_000..160_000).map(foot).fold(f64::NEG_INFINITY, f64::max)
}

fn refused(input: Value) -> PhysicsError {
    calc::run("trim", input).expect_err("must be refused")
}

#[test]
fn a_taper_tip_is_cut_only_on_purpose() {
    let mut input = json!({
        "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "tip": "taper", "tip_trim_mm": 10.0
    });
    let error = refused(input.clone());
    assert!(told(&error).contains("allow_taper_tip_trim"), "{error}");
    input["allow_taper_tip_trim"] = json!(true);
    let output = run(input.clone());
    assert!(words(&output["warnings"][0]).contains("taper tip"), "{output}");
    input["tip_trim_mm"] = json!(0.0);
    input["allow_taper_tip_trim"] = json!(false);
    assert!(run(input).get("warnings").is_none());
}

#[test]
fn impossible_trims_are_refused_with_their_limit() {
    let longer_than_shaft = refused(json!({
        "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "tip_trim_mm": 1016.0
    }));
    assert!(
        matches!(longer_than_shaft, PhysicsError::OutOfRange { limit, .. } if limit == 1016.0),
        "{longer_than_shaft}"
    );
    let both = refused(json!({
        "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 500.0, "tip_trim_mm": 600.0, "butt_trim_mm": 500.0
    }));
    assert!(matches!(both, PhysicsError::OutOfRange { limit, .. } if limit == 416.0), "{both}");
    // 1016 − 25 = 991 mm of blank at most; 1000 mm to the cap needs 960.5, 1040 mm needs 1000.5: 9.5 mm short.
    let short = refused(with_finish("to_cap", Some(1040.0), None));
    let PhysicsError::OutOfRange { field, limit, .. } = &short else { panic!("{short}") };
    assert_eq!(field, "length_mm");
    close(*limit, 1025.5, 1e-9);
    let odd_swing_weight = refused(json!({ "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 300.0 }));
    assert!(
        matches!(&odd_swing_weight, PhysicsError::OutOfRange { field, .. } if field == "balance_point_mm"),
        "{odd_swing_weight}"
    );
    let unsorted = refused(json!({
        "mass_g": 120.0, "length_mm": 1016.0, "balance_point_mm": 500.0,
        "mass_table": [
            { "position_mm": 0.0, "density_g_m": 120.0 }, { "position_mm": 700.0, "density_g_m": 120.0 },
            { "position_mm": 600.0, "density_g_m": 120.0 }, { "position_mm": 1016.0, "density_g_m": 120.0 }
        ]
    }));
    assert!(
        matches!(&unsorted, PhysicsError::OutOfRange { field, .. } if field == "mass_table[2].position_mm"),
        "{unsorted}"
    );
    assert!(matches!(refused(with_finish("to_cap", Some(950.0), Some(10.0))), PhysicsError::Contradiction { .. }));
    assert!(matches!(refused(with_finish("to_cap", None, None)), PhysicsError::Missing { .. }));
}
