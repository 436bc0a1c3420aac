//! Which head masses to ask for.
//!
//! The plain club, worked by hand from M = Σ m·(x − 14 in) (the 14-inch fulcrum: US patent 1,953,916) and
//! points = (M − 161 oz·in)/1.75 oz·in, 1 oz = 28.349523125 g:
//! - 37 in to the cap, cap 0.1 in, bore to ground 1 in: the cut shaft is 35.9 in long and begins 0.1 in from the stop.
//! - A shaft of 120 g evenly over 1000 mm = 39.370079 in: 3.048 g/in, cut 109.4232 g about 0.1 + 17.95 = 18.05 in:
//!   109.4232 × 4.05 = 443.164 g·in.
//! - A grip of 50 g about 4 in: 50 × (−10) = −500 g·in. No adhesive, tape or ferrule.
//! - D2: 161 + 32 × 1.75 = 217 oz·in = 6151.847 g·in. The head's centre at 37 in, arm 23 in:
//!   (6151.847 − 443.164 + 500)/23 = 269.943 g.
//! - A tip weight about 10 mm above the tip: 0.1 + 35.9 − 0.3937 = 35.6063 in, arm 21.6063: 9 g of it stand for
//!   9 × 21.6063/23 = 8.4546 g of head.
//! - Grips of 48 and 52 g move the head by 2 × 10/23 = 0.8696 g.

use super::{library, shop_of, weighed};
use desk::ask::{AskClub, AskGround, HeadAsk, Supply, SupplyFrom, ask, heads_to_order};
use desk::sheet_check::head_window;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use trade::kind::LengthTo;
use trade::model::{Library, Model, PartKind};
use trade::part::Part;
use trade::shop::Shop;
use trade::wrap::Wraps;
use words::check::InWords;

const OZ_G: f64 = 28.349_523_125;

fn plain_models() -> Library {
    let from = |document: serde_json::Value| -> Model { serde_json::from_value(document).unwrap() };
    [
        from(serde_json::json!({ "kind": "head", "code": "PLAIN", "name": "Plain", "club_kind": "iron",
            "hand": "right", "bore_diameter_mm": 9.4, "bore_depth_mm": 30.0, "offset_mm": 0.0, "offset_sd_mm": 0.0,
            "bend_limit_deg": 2.0, "chart_length_to": "cap", "numbers": [{ "number": "7", "mass_g": 268.0,
            "loft_deg": 31.0, "lie_deg": 62.0, "bore_to_ground_mm": 25.4,
            "chart": { "length_mm": 939.8, "swing_weight_points": 32.0 } }] })),
        from(serde_json::json!({ "kind": "shaft", "code": "EVEN", "name": "Even", "material": "steel",
            "tip": "parallel", "tip_diameter_mm": 9.4, "butt_diameter_mm": 15.2, "mass_sd_g": 1.2,
            "blanks": [{ "mass_g": 120.0, "length_mm": 1000.0, "balance_point_mm": 500.0 }] })),
        from(serde_json::json!({ "kind": "grip", "code": "ROUND", "name": "Round", "mass_g": 50.0, "mass_sd_g": 1.0,
            "core_diameter_mm": 15.2, "length_mm": 266.7, "centre_mm": 101.6, "cap_mm": 2.54, "shape": "round" })),
    ]
    .into_iter()
    .collect()
}

fn plain_club() -> AskClub {
    AskClub {
        head_model: "PLAIN".into(),
        number: "7".into(),
        shaft_model: "EVEN".into(),
        grip_model: "ROUND".into(),
        ferrule_model: None,
        adhesive: None,
        tape: None,
        length_mm: 939.8,
        length_to: LengthTo::Cap,
        swing_weight_points: 32.0,
        wraps: Wraps::default(),
    }
}

fn grips(masses_g: &[f64]) -> Vec<Part> {
    let one = |(i, m): (usize, &f64)| weighed(PartKind::Grip, "ROUND", &format!("G-{i}"), None, *m);
    masses_g.iter().enumerate().map(one).collect()
}

fn supply(mean_g: f64, sd_g: f64) -> Supply {
    Supply { head_model: "PLAIN".into(), number: "7".into(), mean_g, sd_g }
}

fn asked(club: &AskClub, parts: &[Part], supply: &[Supply], within_points: f64) -> HeadAsk {
    let (library, shop) = (plain_models(), Shop::default());
    let ground = AskGround { library: &library, shop: &shop, parts, supply, cap_g: None, within_points };
    ask(std::slice::from_ref(club), ground).unwrap().swap_remove(0)
}

#[test]
fn the_plain_club_by_hand() {
    let found = asked(&plain_club(), &grips(&[48.0, 52.0]), &[supply(266.0, 2.0)], 0.0);
    // The sums above are written to a thousandth of a gram.
    assert!((found.bare_g - 269.943).abs() < 2e-3, "{found:?}");
    assert!((found.to_g - (269.943 + 0.8696)).abs() < 2e-3, "{found:?}");
    assert!((found.from_g - (269.943 - 0.8696 - 8.4546)).abs() < 2e-3, "{found:?}");
    // (270.8126 − 266)/2 = 2.4063 and (260.6188 − 266)/2 = −2.6906: Φ = 0.991942 − 0.003566 by table.
    assert!((found.inside - 0.98838).abs() < 1e-4, "{found:?}");
    assert_eq!((found.grips, found.grip_from_g, found.grip_to_g, found.cap_g), (2, 48.0, 52.0, 9.0));
    // One point within tolerance is 49.612/23 g of head on each side.
    let wider = asked(&plain_club(), &grips(&[48.0, 52.0]), &[supply(266.0, 2.0)], 1.0);
    assert!((wider.to_g - found.to_g - 2.1570).abs() < 2e-3 && (found.from_g - wider.from_g - 2.1570).abs() < 2e-3);
}

/// Two normal draws by Box and Muller's method.
fn bells(rng: &mut Pcg64) -> (f64, f64) {
    let (u, v): (f64, f64) = (1.0 - rng.random::<f64>(), rng.random());
    let r = (-2.0 * u.ln()).sqrt();
    (r * (std::f64::consts::TAU * v).cos(), r * (std::f64::consts::TAU * v).sin())
}

/// Heads and shafts drawn at random, each club weighed up part by part: does some grip and some weight in the tip bring
/// it to D2? 200,000 draws: three standard errors of a share are at most 0.0034, so 0.005 is asked.
#[test]
fn the_probability_is_what_a_simulation_finds() {
    let mut rng = Pcg64::seed_from_u64(1953);
    let wanted_g_in = (161.0 + 32.0 * 1.75) * OZ_G;
    let stock = [47.6, 49.8, 50.4, 52.3];
    for (mean_g, sd_g) in [(266.0, 2.0), (270.5, 1.5), (262.0, 3.0), (275.0, 2.5)] {
        let found = asked(&plain_club(), &grips(&stock), &[supply(mean_g, sd_g)], 0.0);
        let (mut inside, mut inside_any_shaft) = (0_u32, 0_u32);
        const DRAWS: u32 = 200_000;
        for _ in 0..DRAWS {
            let (a, b) = bells(&mut rng);
            let (head_g, shaft_g) = (mean_g + sd_g * a, 120.0 + 1.2 * b);
            let reaches = |raw_shaft_g: f64| {
                let shaft = raw_shaft_g / (1000.0 / 25.4) * 35.9 * (0.1 + 35.9 / 2.0 - 14.0);
                let without = head_g * 23.0 + shaft;
                // What the lightest grip with a full tip and the heaviest with an empty one give: all between is had.
                let light = without + stock.iter().map(|g| g * (4.0 - 14.0)).fold(f64::MIN, f64::max);
                let heavy = without + stock.iter().map(|g| g * (4.0 - 14.0)).fold(f64::MAX, f64::min);
                let tip_arm = 0.1 + 35.9 - 10.0 / 25.4 - 14.0;
                heavy <= wanted_g_in && light + 9.0 * tip_arm >= wanted_g_in
            };
            inside += u32::from(reaches(120.0));
            inside_any_shaft += u32::from(reaches(shaft_g));
        }
        let share = |n: u32| f64::from(n) / f64::from(DRAWS);
        assert!((found.inside - share(inside)).abs() < 0.005, "{mean_g}: {} {}", found.inside, share(inside));
        let (p, seen) = (found.inside_any_shaft, share(inside_any_shaft));
        assert!((p - seen).abs() < 0.005, "{mean_g}: {p} {seen}");
    }
}

#[test]
fn without_grips_or_a_stated_supply_the_models_speak() {
    let found = asked(&plain_club(), &[], &[], 0.0);
    assert_eq!((found.grips, found.grip_from_g, found.grip_to_g), (0, 50.0, 50.0));
    assert_eq!((found.mean_g, found.supply_from), (268.0, SupplyFrom::Model));
    assert!((found.to_g - found.bare_g).abs() < 1e-9);
    let heads: Vec<Part> = [264.0, 265.0, 266.0, 267.0, 268.0]
        .iter()
        .enumerate()
        .map(|(i, m)| weighed(PartKind::Head, "PLAIN", &format!("P-{i}"), Some("7"), *m))
        .collect();
    let found = asked(&plain_club(), &heads, &[], 0.0);
    assert_eq!((found.mean_g, found.supply_from), (266.0, SupplyFrom::Stock));
    assert!((found.sd_g - 2.5_f64.sqrt()).abs() < 1e-12);
}

/// The sheet's own check has a window by the nominal grip: the two must agree where the stock has only that grip.
#[test]
fn it_agrees_with_the_check_of_the_sheet() {
    let (library, shop) = (library(), shop_of::shop());
    for sheet in shop_of::sheets(super::today()) {
        for club in &sheet.clubs {
            let ground =
                AskGround { library: &library, shop: &shop, parts: &[], supply: &[], cap_g: None, within_points: 0.0 };
            let found = ask(&[AskClub::from(club)], ground).unwrap().swap_remove(0);
            let window = head_window(club, &library, &shop).unwrap();
            assert!((found.from_g - window.from_g).abs() < 1e-9 && (found.to_g - window.to_g).abs() < 1e-9);
        }
    }
}

#[test]
fn how_many_to_order() {
    // 1 − 0.2² = 0.96 ≥ 0.95, 1 − 0.2 is not.
    assert_eq!(heads_to_order(1, 0.8, 0.95), Some(2));
    assert_eq!(heads_to_order(1, 0.96, 0.95), Some(1));
    // Two of three: 3·0.8²·0.2 + 0.8³ = 0.896; two of four: 1 − 0.2⁴ − 4·0.8·0.2³ = 0.9728.
    assert_eq!(heads_to_order(2, 0.8, 0.95), Some(4));
    assert_eq!(heads_to_order(3, 1.0, 0.95), Some(3));
    for hopeless in [0.0, -0.1, f64::NAN, 1e-9, 1.5] {
        assert_eq!(heads_to_order(1, hopeless, 0.95), None, "{hopeless}");
    }
}

#[test]
fn figures_that_cannot_be_are_named() {
    let (library, shop) = (plain_models(), Shop::default());
    fn of<'a>(
        library: &'a Library,
        shop: &'a Shop,
        supply: &'a [Supply],
        cap_g: Option<f64>,
        within_points: f64,
    ) -> AskGround<'a> {
        AskGround { library, shop, parts: &[], supply, cap_g, within_points }
    }
    let (library_of, shop_of) = (&library, &shop);
    let says = |club: AskClub, ground: AskGround<'_>| ask(&[club], ground).unwrap_err().in_words();
    let (light, upside_down) = ([supply(26.6, 1.0)], [supply(266.0, -1.0)]);
    assert!(says(plain_club(), of(library_of, shop_of, &light, None, 0.0)).contains("mean_g is 26.6 g"));
    assert!(says(plain_club(), of(library_of, shop_of, &upside_down, None, 0.0)).contains("sd_g is −1 g"));
    assert!(says(plain_club(), of(library_of, shop_of, &[], Some(f64::NAN), 0.0)).contains("cap_g is NaN"));
    assert!(says(plain_club(), of(library_of, shop_of, &[], None, -0.3)).contains("within_points is −0.3"));
    let none = AskClub { number: "8".into(), ..plain_club() };
    assert!(says(none, of(library_of, shop_of, &[], None, 0.0)).contains('8'));
    let short = AskClub { length_mm: 250.0, ..plain_club() };
    assert!(says(short, of(library_of, shop_of, &[], None, 0.0)).contains("length of the 7"));
    let nan = AskClub { swing_weight_points: f64::NAN, ..plain_club() };
    assert!(says(nan, of(library_of, shop_of, &[], None, 0.0)).contains("swing_weight_points"));
}
