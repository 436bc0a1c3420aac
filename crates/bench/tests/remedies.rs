//! What can still be done.

use crate::set::{Set, time};
use bench::remedy::{Remedy, Spare, assign_grips, remedies};
use trade::action::Action;
use trade::kind::Role;
use trade::model::PartKind;
use trade::plan::Extra;
use trade::reading::What;
use trade::swing_weight::points_per_g;

fn remedies_of(set: &Set, slot: i64, spares: &[Spare<'_>]) -> Vec<Remedy> {
    let believed = set.assembly().believe(&set.readings).unwrap();
    remedies(&believed, &set.state(slot), spares).unwrap()
}

#[test]
fn a_club_that_reads_heavy_is_offered_less_in_the_tip() {
    let mut set = Set::planned();
    // Several clubs say that it is this one's head and not the model's centre or the scale.
    for slot in 1..=set.job.clubs.len() as i64 {
        set.read_off(slot, "dry", if slot == 3 { 1.2 } else { 0.0 }, slot);
        set.insist();
    }
    let now_g = set.job.clubs[2].plan.as_ref().unwrap().mass_g(Role::TipWeight);
    let finish = set.state(3).finish.unwrap();
    assert!(finish.deviation_points > 0.3, "{finish:?}");
    let found = remedies_of(&set, 3, &set.spares());
    assert!(found[0].more_g < 0.0, "{now_g} g now; {:?}", found[0]);
    assert!(found[0].chance_at_end > finish.chance + 0.1);
    let tips: Vec<&Remedy> = found.iter().filter(|r| r.action == Action::TipWeight).collect();
    assert!(tips.iter().all(|r| now_g + r.more_g <= set.shop.tip_weight_cap_g + 1e-9));
    let small: Vec<Spare<'_>> =
        set.spares().into_iter().filter(|s| s.part.kind != PartKind::TipWeight || s.mass_g < 5.5).collect();
    let pairs = remedies_of(&set, 3, &small);
    assert!(pairs.iter().any(|r| r.code.len() == 2), "pairs are weighed up where no single weight does it");
    assert!(found.iter().any(|r| r.action == Action::Head), "another head is a way too");
    assert!(found.windows(2).all(|w| w[0].chance_at_end + 0.005 >= w[1].chance_at_end - 1e-9));
}

/// Spare grips can still correct, so a club half a point off is not lost before it is glued; without them it is worse.
#[test]
fn spare_grips_count_before_the_grip_is_chosen() {
    let mut set = Set::planned();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
    }
    let with = remedies_of(&set, 1, &set.spares());
    let no_grips: Vec<Spare<'_>> = set.spares().into_iter().filter(|s| s.part.kind != PartKind::Grip).collect();
    let without = remedies_of(&set, 1, &no_grips);
    for remedy in with.iter().filter(|r| r.action == Action::TipWeight) {
        let same = without.iter().find(|r| r.code == remedy.code).unwrap();
        assert!(remedy.chance_at_end >= same.chance_at_end - 1e-6, "{:?}", remedy.fact);
        assert!((same.finish.chance - remedy.finish.chance).abs() < 1e-9, "the finish as planned is the same");
    }
    assert!(with.iter().zip(&without).any(|(a, b)| a.chance_at_end > b.chance_at_end + 0.05));
}

/// The joint choice against every choice tried out, for three clubs and the six grips that matter.
#[test]
fn grips_of_a_set_are_chosen_together() {
    let mut set = Set::planned();
    let clubs = 3;
    for slot in 1..=clubs {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 10 + slot);
        // All three want a heavier grip, and there are few.
        set.read_off(slot, "cured", 0.35, 600 + slot);
    }
    let all = set.spares();
    let mut grips: Vec<Spare<'_>> =
        all.into_iter().filter(|s| s.part.kind == PartKind::Grip && s.part.model == "OLIVINE").collect();
    grips.sort_by(|a, b| b.mass_g.total_cmp(&a.mass_g));
    let few: Vec<Spare<'_>> = grips.iter().copied().step_by(9).take(6).collect();
    let believed = set.assembly().believe(&set.readings).unwrap();
    let picks = assign_grips(&believed, &few).unwrap();
    assert_eq!(picks.len(), 3, "only clubs that were read after the cure");
    let inside: f64 = picks.iter().map(|p| p.finish.chance).sum();

    let model = set.library.grip("OLIVINE").unwrap();
    let planned: Vec<f64> = (0..3).map(|i| set.job.clubs[i].plan.as_ref().unwrap().mass_g(Role::Grip)).collect();
    let masses: Vec<f64> = planned.iter().copied().chain(few.iter().map(|s| s.mass_g)).collect();
    let chance = |slot: usize, grip: usize| {
        let f = set.state(slot as i64 + 1).finish.unwrap();
        let d = f.deviation_points + (masses[grip] - planned[slot]) * points_per_g(model.centre_mm);
        let by = d - f.deviation_points;
        let of = |(weight, one): &(f64, estimation::Forecast)| {
            weight * estimation::normal::between(-f.tolerance_points, f.tolerance_points, one.mean + by, one.sd)
        };
        f.spread.parts().iter().map(of).sum::<f64>()
    };
    let mut best = 0.0f64;
    for a in 0..masses.len() {
        for b in (0..masses.len()).filter(|b| *b != a) {
            for c in (0..masses.len()).filter(|c| *c != a && *c != b) {
                best = best.max(chance(0, a) + chance(1, b) + chance(2, c));
            }
        }
    }
    assert!((inside - best).abs() < 1e-3, "{inside} of {best}");
    // What the remedies of one club say of the set agrees with it.
    let found = remedies_of(&set, 1, &few);
    let first = found.iter().find(|r| r.action == Action::Grip).unwrap();
    assert!(first.set_inside.unwrap() <= best + 1e-3, "{first:?}");
    assert!(
        found.iter().filter(|r| r.action == Action::Grip).all(|r| r.set_inside <= first.set_inside.map(|s| s + 0.005))
    );
}

#[test]
fn what_is_added_later_moves_the_finish_and_leaves_earlier_readings_standing() {
    let mut set = Set::planned();
    set.read_off(1, "dry", 0.0, 1);
    set.read(1, "glue", What::Done, 0.0, 10);
    set.read_off(1, "cured", 0.0, 600);
    set.read_off(1, "finish", -0.9, 1500);
    set.insist();
    let off = set.state(1).finish.unwrap();
    assert!(off.deviation_points < -0.3, "{off:?}");
    let found = remedies_of(&set, 1, &set.spares());
    let lead = found.iter().find(|r| r.action == Action::LeadTape).expect("lead tape on the head");
    let head_mm = {
        let plan = set.job.clubs[0].plan.as_ref().unwrap();
        plan.cut_shaft_mm + plan.tip_to_ground_mm + set.library.head("SISKIN").unwrap().offset_prior_mm().0
    };
    let cap_mm = set.library.grip("OLIVINE").unwrap().cap_mm;
    let wanted = -off.deviation_points / points_per_g(head_mm + cap_mm);
    assert!((lead.more_g - wanted).abs() <= 0.25 + 1e-9, "{} for {wanted}", lead.more_g);
    assert!(lead.finish.deviation_points.abs() < 0.15);
    assert!(found.iter().any(|r| r.action == Action::ReGrip));
    assert!(found.iter().all(|r| !matches!(r.action, Action::TipWeight | Action::Cut | Action::Powder)));

    let extra = Extra { action: Action::LeadTape, mass_g: lead.more_g, arm_mm: head_mm, at: time(1600) };
    set.job.clubs[0].plan.as_mut().unwrap().extras.push(extra);
    let after = set.state(1);
    let moved = after.finish.unwrap().deviation_points - off.deviation_points;
    assert!((moved - lead.more_g * points_per_g(head_mm + cap_mm)).abs() < 0.02, "{moved}");
    let believed = set.assembly().believe(&set.readings).unwrap();
    assert!(set.readings.iter().all(|r| !believed.is_doubted(&r.id)));
    // And a reading taken with it on fits.
    let value = (after.finish.unwrap().swing_weight_points * 10.0).round() / 10.0;
    let id = set.read(1, "finish", What::SwingWeight, value, 1700);
    assert!(!set.assembly().believe(&set.readings).unwrap().is_doubted(&id));
}

#[test]
fn a_lost_club_is_told_how_it_is_taken_apart() {
    let mut set = Set::planned();
    set.read(1, "glue", What::Done, 0.0, 10);
    for slot in 2..=6 {
        set.read_off(slot, "dry", 0.0, slot);
    }
    set.read_off(1, "cured", 2.4, 600);
    set.insist();
    set.read_off(1, "finish", 0.0, 1500);
    set.insist();
    let finish = set.state(1).finish.unwrap();
    assert!(finish.chance < 0.1 && finish.deviation_points > 0.8, "{finish:?}");
    let found = remedies_of(&set, 1, &set.spares());
    let pull = found.iter().find(|r| r.action == Action::PullHead).expect("the last way");
    assert!(pull.more_g < 0.0 && !pull.can_be_undone && pull.minutes >= 30.0);
    let words = words::Words::english(quantity::Units::default()).tell(&pull.fact);
    assert!(words.contains("glue it again"), "{words}");
}

#[test]
fn a_club_that_will_do_is_left_alone() {
    let mut set = Set::planned();
    set.shop.balance_scale.offset_sd = 0.01;
    set.read(1, "glue", What::Done, 0.0, 10);
    let target = set.job.clubs[0].target.swing_weight_points;
    for minute in 0..4 {
        set.read(1, "finish", What::SwingWeight, target, 1500 + minute);
    }
    assert!(set.state(1).finish.unwrap().chance > 0.95);
    assert!(remedies_of(&set, 1, &set.spares()).is_empty());
}

/// A reading that is taken back leaves exactly the belief that never had it, whatever came in between.
#[test]
fn a_reading_taken_back_leaves_no_trace() {
    let mut set = Set::planned();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.1, slot);
    }
    let before: Vec<_> = (1..=4).map(|s| set.state(s).finish.unwrap()).collect();
    set.read_off(2, "tip", -0.3, 50);
    assert_ne!(set.state(1).finish.unwrap(), before[0]);
    set.readings.last_mut().unwrap().taken_back = Some(fact::Told::verbatim("that was wrong"));
    for slot in 1..=4i64 {
        assert_eq!(set.state(slot).finish.unwrap(), before[slot as usize - 1]);
    }
    // The order of arrival has no part in it either.
    set.readings.reverse();
    for slot in 1..=4i64 {
        assert_eq!(set.state(slot).finish.unwrap(), before[slot as usize - 1], "in any order");
    }
}
