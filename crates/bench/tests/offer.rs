//! What to measure next.

use crate::set::Set;
use bench::offer::{Measure, Offer, offers};
use trade::reading::What;

fn offers_of(set: &Set, slot: i64) -> Vec<Offer> {
    let believed = set.assembly().believe(&set.readings).unwrap();
    offers(&believed, &set.club(slot), &set.spares()).unwrap()
}

fn find(offers: &[Offer], measure: Measure) -> Option<&Offer> {
    offers.iter().find(|o| o.measure == measure)
}

#[test]
fn a_new_shop_is_asked_for_its_check_weight_until_it_was_read() {
    let mut set = Set::planned();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
    }
    let before = offers_of(&set, 1);
    let check = find(&before, Measure::CheckWeight).expect("the scale's offset is not known");
    assert!(check.band_with_points < check.band_without_points && check.clubs_gained > 0.05, "{check:?}");
    for minute in 5..8 {
        set.read(1, "dry", What::CheckWeight, set.shop.check_weight.as_ref().unwrap().swing_weight_points, minute);
    }
    assert!(find(&offers_of(&set, 1), Measure::CheckWeight).is_none(), "{:?}", offers_of(&set, 1));
}

#[test]
fn what_is_known_is_not_asked_for() {
    let mut set = Set::planned();
    set.read_off(1, "dry", 0.0, 1);
    assert!(find(&offers_of(&set, 1), Measure::GripCentre).is_some());
    for slot in 1..=4 {
        set.read(slot, "dry", What::GripCentre, set.library.grip("OLIVINE").unwrap().centre_mm, 2);
    }
    assert!(find(&offers_of(&set, 1), Measure::GripCentre).is_none());
    // Without a check weight there is none to put on the scale.
    set.shop.check_weight = None;
    assert!(find(&offers_of(&set, 1), Measure::CheckWeight).is_none());
}

/// The promise is kept: after the measurement the band is what the offer said, whatever it showed.
#[test]
fn the_band_becomes_what_the_offer_said() {
    let mut set = Set::planned();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 10);
        set.read_off(slot, "cured", 0.1, 12);
    }
    let offer = find(&offers_of(&set, 2), Measure::CheckWeight).cloned().expect("offered");
    let now = set.state(2).finish.unwrap().band_points;
    assert!((now - offer.band_without_points).abs() < 1e-9);
    set.read(2, "cured", What::CheckWeight, set.shop.check_weight.as_ref().unwrap().swing_weight_points + 0.2, 13);
    let then = set.state(2).finish.unwrap().band_points;
    assert!((then - offer.band_with_points).abs() < 0.002, "{then} for {}", offer.band_with_points);
}

/// The reference club read in another room leaves the finish as wide as the two scales disagree, until it is read here.
#[test]
fn two_rooms_are_tied_by_the_reference_club() {
    let mut set = Set::planned();
    // A target that rests on no reading is what it is.
    set.job.sheet.reference = None;
    let here = set.state(1).finish.unwrap();
    let target = set.job.clubs[0].target.swing_weight_points;
    set.job.sheet.reference = Some(
        serde_json::from_value(serde_json::json!({
            "number": "7", "swing_weight_points": target, "scale": "fitting bay", "total_mass_g": 430.0
        }))
        .unwrap(),
    );
    let elsewhere = set.state(1).finish.unwrap();
    assert!((elsewhere.own_band_points - here.band_points).abs() < 1e-6, "likeness within the set is as it was");
    assert!(elsewhere.band_points > here.band_points + 0.05);
    let offer = find(&offers_of(&set, 1), Measure::Reference).cloned().expect("worth reading here");
    assert_eq!(offer.what, What::ReferenceSwingWeight);
    for minute in 1..=4 {
        set.read(1, "dry", What::CheckWeight, set.shop.check_weight.as_ref().unwrap().swing_weight_points, minute);
        set.read(1, "dry", What::ReferenceSwingWeight, target + 0.2, minute);
    }
    let tied = set.state(1).finish.unwrap();
    assert!(tied.band_points < elsewhere.band_points - 0.02);
    // This scale shows two tenths more than the bay's for the same club, so the target stands two tenths higher here.
    assert!((tied.deviation_points - elsewhere.deviation_points + 0.2).abs() < 0.06, "{tied:?} {elsewhere:?}");
}

#[test]
fn nothing_is_offered_once_the_grip_is_on() {
    let mut set = Set::planned();
    set.read(1, "glue", What::Done, 0.0, 10);
    set.read_off(1, "cured", 0.0, 600);
    set.read_off(1, "finish", 0.0, 1500);
    assert!(offers_of(&set, 1).is_empty());
}

/// The check weight does not silence the reference club: on another day than its own, reading it again stays on offer after
/// the check weight, before it where it brings more, and goes when it was read here.
#[test]
fn the_reference_stays_on_offer_after_a_check_weight() {
    let mut set = Set::planned();
    set.job.sheet.reference = Some(
        serde_json::from_value(serde_json::json!({
            "number": "7", "swing_weight_points": 32.0, "scale": set.shop.balance_scale.name, "read_on": "2026-01-20"
        }))
        .unwrap(),
    );
    for club in &mut set.job.clubs {
        club.target.swing_weight_points = 32.0;
    }
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "dry", What::GripCentre, set.library.grip("OLIVINE").unwrap().centre_mm, 2);
        set.read(slot, "dry", What::CapThickness, set.library.grip("OLIVINE").unwrap().cap_mm, 2);
        set.read(slot, "dry", What::TapeMass, set.state_mass(slot, trade::kind::Role::Tape), 3);
    }
    let before = offers_of(&set, 1);
    let place = |offers: &[Offer], measure| offers.iter().position(|o| o.measure == measure);
    let (again, check) = (place(&before, Measure::Reference), place(&before, Measure::CheckWeight));
    assert!(again.is_some() && check.is_none_or(|check| again.is_some_and(|again| again < check)), "{before:?}");
    let points = set.shop.check_weight.as_ref().unwrap().swing_weight_points;
    (5..8).for_each(|minute| _ = set.read(1, "dry", What::CheckWeight, points + 0.2, minute));
    let after = offers_of(&set, 1);
    let offer = find(&after, Measure::Reference).expect("the check weight tells nothing of the target");
    assert_eq!(offer.minutes, 1.0);
    let words = words::Words::english(quantity::Units::default()).tell(&offer.fact);
    assert!(words.contains("20 Jan 2026") && words.contains("on this scale"), "{words}");
    (8..12).for_each(|minute| _ = set.read(1, "dry", What::ReferenceSwingWeight, 32.1, minute));
    assert!(find(&offers_of(&set, 1), Measure::Reference).is_none_or(|o| o.clubs_gained < offer.clubs_gained / 3.0));
    assert!(find(&offers_of(&set, 1), Measure::CheckWeight).is_none(), "{:?}", offers_of(&set, 1));
}
