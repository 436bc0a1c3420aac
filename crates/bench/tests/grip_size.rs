//! Goal: the thickness of a grip in the work agrees with what can be worked out by hand, a caliper reading of one club tells of
//! the others of its model, a caliper misread is doubted, and the wraps that are advised bring the grip there at the price told.
//! Method: diameters by the trade's rule and by kept volume written out here; the swing weight of tape by its moment about the
//! fulcrum; bands against simulated grips with the stated scatter.

use crate::set::{Set, WHOLE};
use bench::grip_size::{GripPlace, SIZE_TOLERANCE_MM};
use bench::wrap_advice::GripSizeOfClub;
use trade::grip::GripSize;
use trade::reading::What;
use trade::wrap::Wraps;

fn sizes(set: &Set) -> Vec<GripSizeOfClub> {
    set.assembly().believe(&set.readings).unwrap().grip_sizes().unwrap()
}

fn at(club: &GripSizeOfClub, place: GripPlace) -> (f64, f64) {
    let found = club.places.iter().find(|at| at.place == place).unwrap();
    (found.diameter_mm, found.band_mm)
}

fn ask(set: &mut Set, upper_mm: f64, lower_mm: Option<f64>) {
    for club in &mut set.job.clubs {
        club.target.grip_size = Some(GripSize { upper_mm, lower_mm });
    }
}

fn caliper(set: &mut Set, slot: i64, what: What, value: f64, minute: i64) {
    set.read_on(slot, "finish", what, value, minute, WHOLE.to_vec());
}

/// Rule: D = own + (butt − core) + 2·t·(layers − 1). Kept volume: √((butt + growth)² + own² − core²). The forecast is half way.
#[test]
fn a_grip_is_as_thick_as_rule_and_volume_allow() {
    let mut set = Set::planned();
    for (full, lower_hand) in [(0, 0), (3, 0), (1, 2)] {
        for club in &mut set.job.clubs {
            club.target.wraps = Wraps { base: 1, full, lower_hand };
        }
        let club = &set.job.clubs[0];
        let grip = set.library.grip(&club.target.grip_model).unwrap();
        let shaft = set.library.shaft(&club.target.shaft_model).unwrap();
        let tape = set.library.tape(club.target.tape_in(&set.shop).unwrap()).unwrap();
        let (butt, core) = (shaft.butt_diameter_mm, grip.core_diameter_mm);
        for (place, own, layers) in [
            (GripPlace::Upper, grip.upper_mm.unwrap(), f64::from(full)),
            (GripPlace::Lower, grip.lower_mm.unwrap(), f64::from(full + lower_hand)),
        ] {
            let growth = 2.0 * tape.thickness_mm * layers;
            let rule = own + butt - core + growth;
            let volume = ((butt + growth).powi(2) + own * own - core * core).sqrt();
            let (found, band) = at(&sizes(&set)[0], place);
            assert!((found - f64::midpoint(rule, volume)).abs() < 1e-6, "{found} {rule} {volume}");
            assert!(volume <= rule + 1e-9 && (rule - found).abs() < band, "{rule} {found} ± {band}");
        }
    }
}

#[test]
fn a_caliper_reading_tells_of_its_model() {
    let mut set = Set::planned();
    let (before, wide) = at(&sizes(&set)[1], GripPlace::Upper);
    caliper(&mut set, 1, What::GripSize, before + 0.4, 10);
    let found = sizes(&set);
    let (own, own_band) = at(&found[0], GripPlace::Upper);
    let (other, other_band) = at(&found[1], GripPlace::Upper);
    assert!(own > other + 0.02 && other > before + 0.1, "{own} {other} {before}");
    assert!(own_band < other_band && other_band < wide, "{own_band} {other_band} {wide}");
    // The lower hand of the same grip moves with it, less than the place that was read.
    let lower = at(&found[0], GripPlace::Lower).0 - at(&sizes(&Set::planned())[0], GripPlace::Lower).0;
    assert!(lower > 0.1 && lower < own - before, "{lower}");
    // What a caliper shows is forecast for the next club.
    let believed = set.assembly().believe(&set.readings).unwrap();
    let step = set.job.step("finish").unwrap();
    let expected = believed.expected_at(&set.club(2), step, What::GripSize, &WHOLE).unwrap().unwrap();
    assert!((expected.value - other).abs() < 0.1 && expected.band > other_band, "{expected:?} {other}");
}

#[test]
fn a_caliper_misread_is_doubted() {
    let mut set = Set::planned();
    let (sound, _) = at(&sizes(&set)[0], GripPlace::Upper);
    for slot in 1..=4 {
        caliper(&mut set, slot, What::GripSize, sound + 0.05, 10 + slot);
    }
    // Ten divisions of a dial caliper: 0.1 in.
    caliper(&mut set, 5, What::GripSize, sound + 2.54, 20);
    let found = sizes(&set);
    let doubted: Vec<i64> =
        found.iter().filter(|club| club.places.iter().any(|at| at.doubted)).map(|club| club.slot).collect();
    assert_eq!(doubted, [5]);
    assert!((at(&found[4], GripPlace::Upper).0 - sound).abs() < 0.3);
}

/// 40 shops, each with its own truth drawn from the stated scatter: the bands hold 95 % of the grips that were not read.
#[test]
fn bands_hold() {
    let set = Set::planned();
    let clubs = set.job.clubs.len();
    let first = sizes(&set);
    let mut state = 20_261_201_u64;
    let mut normal = || {
        // Sum of twelve even numbers less 6: variance 1.
        (0..12)
            .map(|_| {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                (state >> 11) as f64 / (1_u64 << 53) as f64
            })
            .sum::<f64>()
            - 6.0
    };
    let (mut inside, mut all) = (0_usize, 0_usize);
    for _ in 0..150 {
        let mut set = Set::planned();
        let (model, caliper_off) = (0.25 * normal(), 0.05 * normal());
        let truth: Vec<f64> = (0..clubs)
            .map(|i| {
                let cut_mm = set.job.clubs[i].plan.as_ref().unwrap().butt_cut_mm.max(0.0);
                let butt = 0.05_f64.hypot(0.003 * cut_mm) * normal();
                at(&first[i], GripPlace::Upper).0 + model + 0.12 * normal() + 0.08 * normal() + butt
            })
            .collect();
        for (i, true_mm) in truth.iter().enumerate().take(2) {
            caliper(&mut set, i as i64 + 1, What::GripSize, true_mm + caliper_off + 0.15 * normal(), 10 + i as i64);
        }
        for (i, club) in sizes(&set).iter().enumerate().skip(2) {
            let (mm, band) = at(club, GripPlace::Upper);
            inside += usize::from((mm - truth[i]).abs() <= band);
            all += 1;
        }
    }
    let share = inside as f64 / all as f64;
    // Clubs of a shop hang together through the model: 150 shops, so the share is known to about ± 2 %.
    assert!((0.925..=0.985).contains(&share), "{share}");
}

#[test]
fn wraps_that_are_advised_bring_the_grip_there_and_say_their_price() {
    let mut set = Set::planned();
    for club in &mut set.job.clubs {
        club.target.wraps = Wraps { base: 1, full: 0, lower_hand: 0 };
    }
    let (bare, _) = at(&sizes(&set)[0], GripPlace::Upper);
    ask(&mut set, bare + 0.9, None);
    let found = sizes(&set)[0].clone();
    let advised = found.advised.unwrap();
    assert!((advised.upper_mm - bare - 0.9).abs() <= SIZE_TOLERANCE_MM, "{advised:?}");
    assert_eq!(found.fact.code().split('.').next(), Some("grip_size_says"));
    // The tape's moment about the 14-inch fulcrum, 1.75 oz·in a point; an ounce is 28.349 523 125 g (NIST SP 811, appendix B.8).
    let club = &set.job.clubs[0];
    let grip = set.library.grip(&club.target.grip_model).unwrap();
    let shaft = set.library.shaft(&club.target.shaft_model).unwrap();
    let tape = set.library.tape(club.target.tape_in(&set.shop).unwrap()).unwrap();
    let strip_mm = grip.length_mm - grip.cap_mm - 13.0;
    let layer_g = strip_mm * std::f64::consts::PI * shaft.butt_diameter_mm * tape.mass_per_area_g_per_m2 * 1e-6;
    let mass_g = layer_g * f64::from(advised.wraps.full);
    let points = mass_g * ((strip_mm / 2.0 + grip.cap_mm) / 25.4 - 14.0) / (1.75 * 28.349_523_125);
    assert!(
        (advised.more_g - mass_g).abs() < 1e-6 && (advised.by_points - points).abs() < 1e-6,
        "{advised:?} {points}"
    );
    // Laid, it is as asked, and nothing more is advised.
    for club in &mut set.job.clubs {
        club.target.wraps = advised.wraps;
    }
    let laid = sizes(&set)[0].clone();
    assert_eq!((laid.advised, laid.fact.code()), (None, "grip_size_says.as_asked"));
    assert!((at(&laid, GripPlace::Upper).0 - advised.upper_mm).abs() < 1e-9);
    // The lower hand built up.
    let lower = at(&laid, GripPlace::Lower).0;
    ask(&mut set, advised.upper_mm, Some(lower + 0.8));
    let built_up = sizes(&set)[0].advised.unwrap();
    assert!(built_up.wraps.lower_hand > 0 && built_up.wraps.full == advised.wraps.full, "{built_up:?}");
    // Without a tape nothing can be laid, and it is not the grip that is at fault.
    let shops = set.shop.tape.take();
    let of_sheet: Vec<Option<String>> = set.job.clubs.iter_mut().map(|club| club.target.tape.take()).collect();
    assert_eq!(sizes(&set)[0].fact.code(), "grip_size_says.no_tape");
    set.shop.tape = shops;
    set.job.clubs.iter_mut().zip(of_sheet).for_each(|(club, tape)| club.target.tape = tape);
    // No number of layers makes a grip thinner than it is, nor a hand's breadth thicker.
    ask(&mut set, bare - 2.0, None);
    assert_eq!(sizes(&set)[0].fact.code(), "grip_size_says.too_thick");
    ask(&mut set, bare + 9.0, None);
    assert_eq!(sizes(&set)[0].fact.code(), "grip_size_says.too_thin");
}

#[test]
fn size_and_swing_weight_that_want_different_tape_are_told() {
    let mut set = Set::planned();
    for club in &mut set.job.clubs {
        club.target.wraps = Wraps { base: 1, full: 0, lower_hand: 0 };
    }
    let (bare, _) = at(&sizes(&set)[0], GripPlace::Upper);
    ask(&mut set, bare + 1.7, None);
    let believed = set.assembly().believe(&[]).unwrap();
    let now = believed.finish(&set.club(1)).unwrap().unwrap();
    // The target put where the club finishes as it is: much tape takes it off.
    set.job.clubs[0].target.swing_weight_points += now.deviation_points;
    let found = sizes(&set)[0].clone();
    let advised = found.advised.unwrap();
    assert!(advised.by_points < -0.3, "{advised:?}");
    assert!(advised.costs_swing_weight(), "{advised:?}");
    assert_eq!(found.fact.code(), "grip_size_says.wraps_cost");
}
