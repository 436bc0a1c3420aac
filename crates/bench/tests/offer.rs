//! What to measure next.

use crate::set::Set;
use bench::offer::{Measure, Offer, offers};
use bench::work_order::{GripOrder, GripOrderSays, WorkOrder, grips_in_turn, set_advice};
use trade::model::Model;
use trade::reading::What;

fn offers_of(set: &Set, slot: i64) -> Vec<Offer> {
    let believed = set.assembly().believe(&set.readings).unwrap();
    offers(&believed, &set.club(slot), &set.spares(), &[]).unwrap().offers
}

fn find(offers: &[Offer], measure: Measure) -> Option<&Offer> {
    offers.iter().find(|o| o.measure == measure)
}

#[test]
fn a_new_shop_is_asked_for_its_check_weight_until_it_was_read() {
    let mut set = Set::planned();
    // A target in true points: where it is a reading of a reference club, that club is worth reading and not the check weight.
    set.job.sheet.reference = None;
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
    set.job.sheet.reference = None;
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

/// The gains of a bundle add up to what it promises together, each is worth its minutes beyond those before it, and the best
/// measurement by itself would not have promised it.
#[test]
fn a_bundle_adds_up_and_ends_where_the_next_is_not_worth_its_minute() {
    let set = Set::planned();
    let believed = set.assembly().believe(&set.readings).unwrap();
    let bundle = offers(&believed, &set.club(1), &set.spares(), &[]).unwrap();
    assert!(bundle.offers.len() >= 3 && bundle.of_clubs == 8, "{bundle:?}");
    let gained: f64 = bundle.offers.iter().map(|o| o.clubs_gained).sum();
    assert!((bundle.clubs_after - bundle.clubs_before - gained).abs() < 1e-9);
    let minutes: f64 = bundle.offers.iter().map(|o| o.minutes).sum();
    assert!((bundle.minutes - minutes).abs() < 1e-9);
    for offer in &bundle.offers {
        assert!(offer.clubs_gained >= 0.05 * offer.minutes - 1e-9, "{offer:?}");
    }
    assert!(gained > 1.5 && bundle.clubs_after < 8.0, "{bundle:?}");
    // Once all of it is measured, little is left to measure.
    let mut done = Set::planned();
    let target = done.job.sheet.reference.as_ref().unwrap().swing_weight_points.unwrap();
    let grip = done.library.grip("OLIVINE").unwrap().clone();
    for minute in 1..=4 {
        done.read(1, "weighed", What::ReferenceSwingWeight, target, minute);
    }
    done.read(1, "weighed", What::GripCentre, grip.centre_mm, 5);
    done.read(1, "weighed", What::CapThickness, grip.cap_mm, 6);
    let tape = done.assembly().believe(&done.readings).unwrap().piece(&done.club(1), trade::kind::Role::Tape);
    done.read(1, "weighed", What::TapeMass, tape.unwrap().unwrap().0, 7);
    let believed = done.assembly().believe(&done.readings).unwrap();
    let after = offers(&believed, &done.club(1), &done.spares(), &[]).unwrap();
    assert!(
        (after.clubs_before - bundle.clubs_after).abs() < 0.25,
        "{} for {}",
        after.clubs_before,
        bundle.clubs_after
    );
    assert!(after.clubs_after - after.clubs_before < 0.3, "{after:?}");
}

/// What was declined is neither offered nor counted with: the bundle's total is of what is left.
#[test]
fn what_is_declined_is_not_counted_with() {
    let set = Set::planned();
    let believed = set.assembly().believe(&set.readings).unwrap();
    let all = offers(&believed, &set.club(1), &set.spares(), &[]).unwrap();
    let declined = [all.offers[0].measure, Measure::Weighed];
    let rest = offers(&believed, &set.club(1), &set.spares(), &declined).unwrap();
    assert!(rest.offers.iter().all(|o| !declined.contains(&o.measure)), "{rest:?}");
    assert!((rest.clubs_before - all.clubs_before).abs() < 1e-9 && rest.clubs_after < all.clubs_after - 0.05);
}

/// A tin that nobody knows: one club glued and cured first is proposed from a quarter of a club on, and insisted on from one
/// on; once a club has cured it is not needed any more.
#[test]
fn one_club_goes_first_where_the_joint_is_not_known() {
    let worth = |sd_g: f64, cured: bool| {
        let mut set = Set::planned();
        set.job.sheet.reference = None;
        let code = set.shop.adhesive.clone().unwrap();
        let mut adhesive = set.library.adhesive(&code).unwrap().clone();
        adhesive.joint_mass_sd_g = sd_g;
        let others = demo::models().into_iter().filter(|m| m.code() != code).collect::<Vec<_>>();
        set.library = others.into_iter().chain([Model::Adhesive(adhesive)]).collect();
        for slot in 1..=8 {
            set.read_off(slot, "dry", 0.0, slot);
        }
        if cured {
            set.read(1, "glue", What::Done, 0.0, 20);
            set.read_off(1, "cured", 0.0, 600);
        }
        let believed = set.assembly().believe(&set.readings).unwrap();
        set_advice(&believed, &set.spares(), &[]).unwrap().unwrap()
    };
    let known = worth(0.1, false);
    assert!(known.proposed_with_bundle.is_none(), "{:?}", known.proposed_with_bundle);
    let unknown = worth(1.2, false);
    let proposed = unknown.proposed_with_bundle.unwrap_or_else(|| panic!("an order: {:?}", unknown.orders_with_bundle));
    assert_eq!(proposed.order, WorkOrder::OneCuredFirst, "the bundle tells the rest: {:?}", unknown.orders_with_bundle);
    assert!(proposed.clubs_gained > 0.5, "{proposed:?}");
    assert!(worth(1.8, false).proposed_with_bundle.expect("an order").insisted);
    assert!(worth(1.2, true).proposed_with_bundle.is_none_or(|p| p.clubs_gained < 0.5));
    // The orders come in the order of their worth.
    let clubs: Vec<f64> = unknown.orders_with_bundle.iter().map(|o| o.clubs).collect();
    assert!(clubs[1] > clubs[0] && clubs[2] >= clubs[1] - 0.01 && clubs[4] >= clubs[3] - 0.01, "{clubs:?}");
}

/// After the cure, nothing measured: one grip on and read first tells what all the others take off.
#[test]
fn one_grip_goes_on_first_where_the_grip_is_not_known() {
    let mut set = Set::planned();
    set.job.sheet.reference = None;
    for slot in 1..=8 {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 20);
        set.read_off(slot, "cured", 0.0, 600 + slot);
    }
    let grips = |set: &Set| {
        let believed = set.assembly().believe(&set.readings).unwrap();
        grips_in_turn(&believed, &set.spares()).unwrap()
    };
    let first = grips(&set).expect("eight wait");
    assert_eq!((first.of_clubs, first.next_slot), (8, Some(1)));
    assert_ne!(first.order, GripOrder::AtOnce, "{first:?}");
    assert!(first.clubs_one_first > first.clubs_at_once + 0.2 && first.clubs_in_turn > first.clubs_one_first - 0.02);
    // The first is on and wet: its reading once it is dry is worth waiting for.
    set.read_off(1, "gripped", 0.0, 1200);
    let wet = grips(&set).expect("seven wait");
    let Some(GripOrderSays::WaitForSolvent { before, after, clubs: 7, dry_at }) = wet.says else { panic!("{wet:?}") };
    assert!(after > before + 0.2 && dry_at == crate::set::time(1200 + 120) && wet.dry_at == Some(dry_at));
    // Read dry: what it told is there for the others.
    set.read_off(1, "finish", 0.0, 1500);
    let then = grips(&set).expect("seven wait");
    assert_eq!(then.of_clubs, 7);
    assert!(then.dry_at.is_none() && then.clubs_at_once / 7.0 > first.clubs_at_once / 8.0 + 0.02, "{then:?} {first:?}");
    for slot in 2..=8 {
        set.read_off(slot, "finish", 0.0, 1500 + slot);
    }
    assert!(grips(&set).is_none());
}

/// How much strips differ is learned from strips: each is asked for in the first job of a tape, whatever it brings to this set,
/// and none that was weighed or declined.
#[test]
fn each_strip_of_a_new_tape_is_worth_weighing_to_learn_from() {
    let mut set = Set::planned();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
    }
    let asked = |set: &Set, slot: i64, declined: &[Measure]| {
        let believed = set.assembly().believe(&set.readings).unwrap();
        let bundle = offers(&believed, &set.club(slot), &set.spares(), declined).unwrap();
        let found = |offers: &[Offer]| find(offers, Measure::Tape).is_some();
        (found(&bundle.offers), found(&bundle.to_learn))
    };
    assert_eq!(asked(&set, 1, &[]), (true, false), "the first strip is worth it for the set itself");
    let tape = set.library.tape(set.shop.tape.as_ref().unwrap()).unwrap().clone();
    let strip_g = set.state_mass(1, trade::kind::Role::Tape);
    assert!(strip_g > 0.0, "{tape:?}");
    set.read(1, "dry", What::TapeMass, (strip_g * 10.0).round() / 10.0, 20);
    assert_eq!(asked(&set, 1, &[]), (false, false), "it is weighed");
    for slot in 2..=4 {
        let (worth, to_learn) = asked(&set, slot, &[]);
        assert!(worth || to_learn, "club {slot}");
    }
    assert_eq!(asked(&set, 2, &[Measure::Tape]), (false, false), "declined");
}
