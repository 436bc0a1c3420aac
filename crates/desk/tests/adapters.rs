//! Adapters: each piece goes into one club, a box of them into as many clubs as it holds, and which goes where is chosen
//! with everything else.

use crate::set::Set;
use demo as shop_of;
use desk::planner::{Lock, Picks, Taken, fingerprint, plan_of, plan_with, propose, propose_again, propose_day};
use trade::action::Action;
use trade::id::{ClubId, JobId, PartId};
use trade::model::{Model, PartKind};
use trade::part::{Part, PartState};
use trade::plan::{ClubPlan, Plan};
use trade::reading::What;
use trade::swing_weight::points_per_g;
use words::check::InWords;

/// A job of a driver and a 3-wood of the demonstration shop, with these adapters on the shelf: code, mass where it was
/// weighed, count where it is a box.
fn woods(adapters: &[(&str, Option<f64>, Option<i64>)]) -> Set {
    let mut set = Set::open();
    let sheet = shop_of::sheets(jiff::civil::date(2026, 3, 2))
        .into_iter()
        .find(|s| s.clubs.iter().any(|c| c.head_model == "FIELDFARE"))
        .expect("a wood");
    let driver = sheet.clubs[0].clone();
    let mut three = driver.clone();
    three.number = "3".into();
    // Two inches shorter.
    three.length_mm -= 50.8;
    set.job.sheet = sheet;
    set.job.clubs.truncate(2);
    for (club, target) in set.job.clubs.iter_mut().zip([driver, three]) {
        club.target = target;
    }
    set.parts.retain(|p| p.kind != PartKind::Adapter);
    for (i, &(code, mass_g, count)) in adapters.iter().enumerate() {
        let part = Part::new(code, PartKind::Adapter, "FIELDFARE-A");
        set.parts.push(Part { id: PartId(format!("adapter-{i}")), mass_g, count, ..part });
    }
    set
}

fn plan(set: &Set, locks: &[Lock]) -> Plan {
    propose(set.assembly(), &set.parts, locks).unwrap()
}

fn adapters(plan: &Plan) -> Vec<Option<String>> {
    let code = |club: &ClubPlan| club.part(PartKind::Adapter).expect("a wood has an adapter").code.clone();
    plan.clubs.iter().map(|club| club.as_ref().map(code)).collect()
}

fn some(codes: [&str; 2]) -> Vec<Option<String>> {
    codes.map(|code| Some(code.to_owned())).to_vec()
}

const FEW: [(&str, Option<f64>, Option<i64>); 3] =
    [("AD-0", Some(5.0), None), ("AD-1", Some(5.3), None), ("AD-2", Some(4.8), None)];

fn screws(plan: &Plan) -> Vec<f64> {
    plan.clubs.iter().flatten().map(|club| club.extras_g(Action::Screw)).collect()
}

fn tips(plan: &Plan) -> Vec<usize> {
    let count = |club: &ClubPlan| club.parts.iter().filter(|p| p.kind == PartKind::TipWeight).count();
    plan.clubs.iter().flatten().map(count).collect()
}

/// Screws of 4, 6, 8 and 10 g, of which the head comes with the first. Two clubs that are on target as they come want 4 g
/// more in the head each: the screw of 8 g, which costs nothing, and not a weight in the tip.
#[test]
fn a_screw_brings_a_wood_to_its_swing_weight_before_a_weight_in_the_tip() {
    let mut set = woods(&FEW);
    let plain = plan(&set, &[]);
    let arms: Vec<f64> = set
        .job
        .clubs
        .iter()
        .zip(plain.clubs.iter().flatten())
        .map(|(club, plan)| {
            let head = set.library.head(&club.target.head_model).unwrap();
            let cap_mm = set.library.grip(&club.target.grip_model).unwrap().cap_mm;
            trade::places::Places::of_plan(plan, head.bore_depth_mm).head_mm(head.offset_prior_mm().0) + cap_mm
        })
        .collect();
    // First on target as they come, then 4 g of head beyond it.
    let finish = |plan: &Plan| -> Vec<f64> {
        plan.clubs.iter().flatten().map(|club| club.expected.last().unwrap().swing_weight_points).collect()
    };
    let bare: Vec<f64> = finish(&plain)
        .iter()
        .zip(&arms)
        .zip(screws(&plain))
        .map(|((at, &arm), more_g)| at - more_g * points_per_g(arm))
        .collect();
    for ((club, bare), &arm) in set.job.clubs.iter_mut().zip(&bare).zip(&arms) {
        club.target.swing_weight_points = bare + 4.0 * points_per_g(arm);
        club.target.tip_weight = Some(true);
    }
    // The same pieces again, so that only the screws are left to choose.
    let codes: Vec<String> =
        plain.clubs.iter().flatten().flat_map(|club| &club.parts).map(|p| p.code.clone()).collect();
    set.parts.retain(|p| codes.contains(&p.code) || p.kind == PartKind::TipWeight);
    let found = plan(&set, &[]);
    assert_eq!((screws(&found), tips(&found)), (vec![4.0, 4.0], vec![0, 0]));
    for (at, club) in finish(&found).iter().zip(&set.job.clubs) {
        assert!((at - club.target.swing_weight_points).abs() < 0.05, "{at} {}", club.target.swing_weight_points);
    }
    let reasons: Vec<String> = found.clubs[0].as_ref().unwrap().reasons.iter().map(said).collect();
    assert!(reasons.iter().any(|r| r.contains("screw 8, +4.0 g against the one that it comes with")), "{reasons:?}");
}

/// Beyond what the screws can do, weight goes into the tip of a 3-wood, and into a driver's only where the sheet has it.
#[test]
fn weight_goes_into_a_drivers_tip_only_where_the_sheet_allows_it() {
    let mut set = woods(&FEW);
    for club in &mut set.job.clubs {
        club.target.swing_weight_points += 6.0;
    }
    let found = plan(&set, &[]);
    let in_driver = |plan: &Plan| {
        let club = plan.clubs[0].as_ref();
        club.is_some_and(|club| club.part(PartKind::TipWeight).is_some())
    };
    assert!(!in_driver(&found), "{found:?}");
    assert!(found.clubs[1].as_ref().is_some_and(|club| club.part(PartKind::TipWeight).is_some()), "{found:?}");
    set.job.clubs[0].target.tip_weight = Some(true);
    set.job.clubs[1].target.tip_weight = Some(false);
    let found = plan(&set, &[]);
    assert!(in_driver(&found) && found.clubs[1].as_ref().is_none_or(|c| c.part(PartKind::TipWeight).is_none()));
}

/// Picks that were shown with a screw are held with it; a screw that the model does not have is refused.
#[test]
fn a_screw_is_picked_as_it_was_shown() {
    let set = woods(&FEW);
    let found = plan(&set, &[]);
    let club = found.clubs[0].as_ref().unwrap();
    let parts: Vec<Part> =
        club.parts.iter().map(|p| set.parts.iter().find(|q| q.code == p.code).unwrap().clone()).collect();
    let lines = desk::planner::Lines::default();
    let pick = |screw_more_g| {
        plan_of(set.assembly(), &[Taken { slot: set.job.clubs[0].slot, parts: &parts, screw_more_g }], &lines)
    };
    let held = pick(2.0).unwrap();
    let extra = &held.clubs[0].as_ref().unwrap().extras[0];
    assert_eq!((extra.action, extra.mass_g, extra.at), (Action::Screw, 2.0, set.job.made_at));
    // The same parts with another screw are another plan.
    let marks = [0.0, 2.0, 4.0].map(|more_g| fingerprint(&pick(more_g).unwrap()));
    assert!(marks[0] != marks[1] && marks[1] != marks[2] && marks[2] != marks[0], "{marks:?}");
    assert_eq!(marks[1], fingerprint(&held));
    let refused = pick(3.0).unwrap_err().in_words();
    assert!(refused.contains("no screw of a") && refused.contains("+3.0 g"), "{refused}");
}

#[test]
fn a_driver_and_a_3_wood_get_an_adapter_each() {
    let set = woods(&FEW);
    let plan = plan(&set, &[]);
    assert!(plan.missing.is_empty() && plan.proven, "{:?}", plan.missing);
    let taken = adapters(&plan);
    assert!(taken[0].is_some() && taken[1].is_some() && taken[0] != taken[1], "{taken:?}");
    assert_eq!(taken, adapters(&super::adapters::plan(&set, &[])), "the same again");
    // Not weighed, they are equal, and still each goes into one club.
    let set = woods(&[("AD-0", None, None), ("AD-1", None, None)]);
    assert_eq!(adapters(&self::plan(&set, &[])), some(["AD-0", "AD-1"]));
}

/// No pair of adapters that is kept by hand comes out better than the pair that is chosen.
#[test]
fn the_pair_that_is_chosen_costs_least() {
    let mut set = woods(&[("AD-0", Some(6.4), None), ("AD-1", Some(5.0), None), ("AD-2", Some(3.9), None)]);
    // One head a number, so that the adapter and the tip weight are what is left to choose by.
    let mut seen = Vec::new();
    set.parts.retain(|p| {
        let number = p.number.clone();
        let first = p.kind != PartKind::Head || p.model != "FIELDFARE" || !seen.contains(&number);
        seen.push(number);
        first
    });
    let best = plan(&set, &[]);
    assert!(best.proven);
    let mut costs = Vec::new();
    for a in ["AD-0", "AD-1", "AD-2"] {
        for b in ["AD-0", "AD-1", "AD-2"] {
            let keep = |slot, code: &str| Lock { slot, code: code.into() };
            if a == b {
                let refused = propose(set.assembly(), &set.parts, &[keep(1, a), keep(2, b)]).unwrap_err().in_words();
                assert!(refused.contains("is locked to two clubs of the tray: 2 and 1"), "{refused}");
            } else {
                let kept = plan(&set, &[keep(1, a), keep(2, b)]);
                assert_eq!(adapters(&kept), some([a, b]));
                costs.push(kept.cost);
            }
        }
    }
    let (least, most) = costs.iter().fold((f64::INFINITY, 0.0_f64), |(lo, hi), &c| (lo.min(c), hi.max(c)));
    assert!((best.cost - least).abs() < 1e-9 && most > least + 0.005, "{} {costs:?}", best.cost);
}

#[test]
fn an_adapter_is_kept_where_it_was_asked_for() {
    let set = woods(&FEW);
    for code in ["AD-0", "AD-1", "AD-2"] {
        let kept = plan(&set, &[Lock { slot: 2, code: code.into() }]);
        assert_eq!(adapters(&kept)[1].as_deref(), Some(code));
        assert_ne!(adapters(&kept)[0].as_deref(), Some(code));
    }
    // A box is kept for one club and serves the others as well.
    let set = woods(&[("BOX", None, Some(2)), ("AD-1", Some(5.3), None)]);
    let kept = plan(&set, &[Lock { slot: 2, code: "BOX".into() }]);
    assert_eq!(adapters(&kept)[1].as_deref(), Some("BOX"));
    assert!(kept.missing.is_empty());
    let told = |set: &Set, code: &str| {
        propose(set.assembly(), &set.parts, &[Lock { slot: 2, code: code.into() }]).unwrap_err().in_words()
    };
    assert!(told(&set, "NONE").contains("not a free head, shaft, grip or adapter"), "{}", told(&set, "NONE"));
    let mut irons = Set::open();
    irons.parts.push(Part { id: "ad".into(), ..Part::new("AD-0", PartKind::Adapter, "FIELDFARE-A") });
    assert!(told(&irons, "AD-0").contains("its head takes no adapter"), "{}", told(&irons, "AD-0"));
}

/// Reserved by hand for a club, it goes there and nowhere else.
#[test]
fn a_reserved_adapter_goes_to_its_club() {
    let mut set = woods(&FEW);
    let club = set.job.clubs[1].id.clone();
    for part in set.parts.iter_mut().filter(|p| p.code == "AD-1") {
        (part.state, part.job, part.club) = (PartState::Held, Some(set.job.id.clone()), Some(club.clone()));
    }
    let locks = desk::planner::kept(&set.job, &set.parts, &[]);
    assert_eq!(locks, [Lock { slot: 2, code: "AD-1".into() }]);
    assert_eq!(adapters(&plan(&set, &locks))[1].as_deref(), Some("AD-1"));
}

#[test]
fn a_shortage_of_adapters_is_told_with_what_to_order() {
    let missing = |adapters: &[(&str, Option<f64>, Option<i64>)]| {
        let set = woods(adapters);
        let plan = plan(&set, &[]);
        let left_out = plan.clubs.iter().filter(|c| c.is_none()).count();
        let told: Vec<(PartKind, String)> = plan.missing.iter().map(|m| (m.kind, said(&m.fact))).collect();
        let wanted = desk::order::wanted(&set.job, &plan, &set.library, &set.parts, &[]);
        let to_order: Vec<_> = wanted.iter().map(|w| (w.kind, w.model.clone(), w.count)).collect();
        (left_out, told, to_order)
    };
    let order = |count| vec![(PartKind::Adapter, "FIELDFARE-A".to_owned(), count)];
    let (left_out, told, to_order) = missing(&FEW[..1]);
    assert_eq!((left_out, to_order), (1, order(1)));
    assert_eq!(told, [(PartKind::Adapter, "Other clubs take the last adapter that fits: order one more.".to_owned())]);
    let (left_out, told, to_order) = missing(&[]);
    assert_eq!((left_out, to_order), (2, order(2)));
    let words = "Fieldfare takes an adapter, and no free one fits it: order one.".to_owned();
    assert_eq!(told, [(PartKind::Adapter, words.clone()), (PartKind::Adapter, words)]);
    // A box of one serves one club, a box of two both.
    assert_eq!(missing(&[("BOX", None, Some(1))]).0, 1);
    assert_eq!(missing(&[("BOX", None, Some(2))]).0, 0);
}

/// Two jobs of two woods each, with four adapters: none goes into two clubs.
#[test]
fn a_day_gives_no_adapter_twice() {
    let first = woods(&[("AD-0", Some(5.0), None), ("AD-1", Some(5.3), None), ("BOX", None, Some(2))]);
    let mut second = woods(&[]);
    second.job.id = JobId("other".into());
    second.job.number = 2;
    for (club, i) in second.job.clubs.iter_mut().zip(1..) {
        club.id = ClubId(format!("other-{i}"));
    }
    let mut rounds = 0;
    let jobs = [first.assembly(), second.assembly()];
    let day = propose_day(&jobs, &first.parts, first.job.sheet.due, 1, &mut |_| {
        rounds += 1;
        rounds < 400
    })
    .unwrap();
    let mut taken: Vec<String> = day.jobs.iter().flat_map(|j| adapters(&j.plan)).map(|a| a.expect("built")).collect();
    taken.sort();
    assert_eq!(taken, ["AD-0", "AD-1", "BOX", "BOX"]);
}

/// Adapters of two lengths: two clubs take one of each, and each is cut for its own.
#[test]
fn adapters_of_two_lengths_are_shared_out() {
    let mut set = woods(&FEW[..1]);
    let mut models: Vec<Model> = shop_of::models();
    let long = models.iter().find_map(|m| match m {
        Model::Adapter(a) => Some(a.clone()),
        _ => None,
    });
    let mut long = long.unwrap();
    (long.code, long.length_mm) = ("FIELDFARE-B".into(), 14.0);
    models.push(Model::Adapter(long));
    set.library = models.into_iter().collect();
    set.parts.push(Part { id: "long".into(), ..Part::new("LONG", PartKind::Adapter, "FIELDFARE-B") });
    let plan = plan(&set, &[]);
    assert!(plan.missing.is_empty(), "{:?}", plan.missing);
    assert_eq!(adapters(&plan), some(["AD-0", "LONG"]));
    let longer = |club: usize| {
        let plan = plan.clubs[club].as_ref().unwrap();
        let number = set.library.head("FIELDFARE").unwrap().number(&plan.head_number).unwrap();
        plan.tip_to_ground_mm - number.bore_to_ground_mm
    };
    assert!((longer(0) - 10.0).abs() < 1e-9 && (longer(1) - 14.0).abs() < 1e-9);
    let turned = self::plan(&set, &[Lock { slot: 1, code: "LONG".into() }]);
    assert_eq!(adapters(&turned), some(["LONG", "AD-0"]));
}

/// A plan made anew keeps the adapter that a glued club has, and puts a better one into another where it is worth it.
#[test]
fn a_plan_made_anew_keeps_what_is_glued() {
    let mut set = woods(&FEW);
    let accepted = plan(&set, &[]);
    for (club, plan) in set.job.clubs.iter_mut().zip(accepted.clubs) {
        let plan = plan.unwrap();
        for planned in &plan.parts {
            let part = set.parts.iter_mut().find(|p| p.id == planned.part).unwrap();
            if part.count.is_none() {
                (part.state, part.job, part.club) = (PartState::Held, Some(set.job.id.clone()), Some(club.id.clone()));
            }
        }
        club.plan = Some(plan);
    }
    set.read_off(1, "dry", 0.0, 1);
    set.read(1, "glue", What::Done, 0.0, 10);
    let code = |set: &Set, slot: usize| {
        set.job.clubs[slot].plan.as_ref().unwrap().part(PartKind::Adapter).unwrap().code.clone()
    };
    let (glued, open) = (code(&set, 0), code(&set, 1));
    // The open club's adapter turns out unfit.
    for part in set.parts.iter_mut().filter(|p| p.code == open) {
        part.state = PartState::Rejected;
    }
    let believed = set.assembly().believe(&set.readings).unwrap();
    let again = propose_again(&believed, &set.parts, &[]).unwrap();
    let taken = adapters(&again.plan);
    assert_eq!(taken[0].as_deref(), Some(glued.as_str()));
    assert!(taken[1].as_deref().is_some_and(|a| a != open && a != glued), "{taken:?}");
    let told = again.changes.iter().find(|c| c.kind == PartKind::Adapter).expect("it is told");
    assert_eq!((told.slot, told.from.as_str()), (2, open.as_str()));
}

/// The last pieces of a box that the clubs have already are there when it is planned again.
#[test]
fn a_box_that_the_job_has_emptied_still_serves_it() {
    let mut set = woods(&[("BOX", None, Some(2))]);
    let accepted = plan(&set, &[]);
    for (club, plan) in set.job.clubs.iter_mut().zip(accepted.clubs) {
        club.plan = plan;
    }
    for part in set.parts.iter_mut().filter(|p| p.code == "BOX") {
        part.count = Some(0);
    }
    let believed = set.assembly().believe(&[]).unwrap();
    let again = propose_again(&believed, &set.parts, &[]).unwrap();
    assert!(again.plan.missing.is_empty(), "{:?}", again.plan.missing);
    assert_eq!(adapters(&again.plan), some(["BOX", "BOX"]));
    assert!(again.changes.iter().all(|c| c.kind != PartKind::Adapter));
}

/// What an adapter's mass does to the plan is what it does to the belief.
#[test]
fn a_heavier_adapter_moves_the_plan_by_its_moment() {
    let one_club = |mass_g: f64| {
        let mut set = woods(&[("AD-0", Some(mass_g), None)]);
        set.parts.retain(|p| p.kind != PartKind::TipWeight);
        set.job.clubs.truncate(1);
        // With its screws the head would take up what the adapter has more.
        let mut models: Vec<Model> = set.library.iter().cloned().collect();
        for model in &mut models {
            if let Model::Head(head) = model {
                head.screws.clear();
            }
        }
        set.library = models.into_iter().collect();
        set
    };
    let usual = plan(&one_club(5.0), &[]).clubs[0].clone().unwrap();
    let deviation = |mass_g: f64| {
        let mut set = one_club(mass_g);
        let kept = [PartKind::Head, PartKind::Shaft, PartKind::Grip].map(|kind| usual.part(kind).unwrap().code.clone());
        let plan = plan(&set, &kept.map(|code| Lock { slot: 1, code })).clubs[0].clone().unwrap();
        set.job.clubs[0].plan = Some(plan.clone());
        let believed = set.assembly().believe(&[]).unwrap();
        let finish = believed.finish(&set.job.clubs[0].id).unwrap().unwrap().deviation_points;
        let said = plan.reasons.iter().map(said).find(|r| r.starts_with("No weight in the tip: ")).expect("no weight");
        (finish, said.split(' ').nth(5).unwrap().parse::<f64>().unwrap(), plan.cut_shaft_mm)
    };
    let (light, heavy) = (deviation(4.0), deviation(6.0));
    for (finish, said, _) in [light, heavy] {
        assert!((finish.abs() - said).abs() < 0.0061, "{finish} {said}");
    }
    let cap_mm = Set::open().library.grip("OLIVINE").unwrap().cap_mm;
    // By hand: 2 g at the middle of an adapter of 10 mm.
    let by_hand = 2.0 * points_per_g(light.2 + cap_mm);
    assert!((heavy.0 - light.0 - by_hand).abs() < 0.02, "{} {by_hand}", heavy.0 - light.0);
}

#[test]
fn a_club_put_together_by_hand_needs_an_adapter_of_its_head() {
    let mut set = woods(&FEW);
    let plan = plan(&set, &[]);
    let parts: Vec<Part> = plan.clubs[0]
        .as_ref()
        .unwrap()
        .parts
        .iter()
        .map(|planned| set.parts.iter().find(|p| p.id == planned.part).unwrap().clone())
        .collect();
    let picks = Picks::of(&parts, |kind| kind).unwrap();
    assert!(plan_with(set.assembly(), &set.job.clubs[0], &picks).is_ok());
    let without = Picks { adapter: None, ..picks.clone() };
    let told = plan_with(set.assembly(), &set.job.clubs[0], &without).unwrap_err().in_words();
    assert!(told.contains("Fieldfare takes an adapter, and the 1 has none"), "{told}");
    let mut models: Vec<Model> = shop_of::models();
    for model in &mut models {
        if let Model::Adapter(a) = model {
            a.fits_head_model = "OTHER".into();
        }
    }
    set.library = models.into_iter().collect();
    let told = plan_with(set.assembly(), &set.job.clubs[0], &picks).unwrap_err().in_words();
    assert!(told.contains("does not fit Fieldfare"), "{told}");
}

/// Ferrules that are counted piece by piece are given once as well.
#[test]
fn single_ferrules_are_given_once() {
    let mut set = Set::open();
    let code = set.job.clubs[0].target.ferrule_model.clone().unwrap();
    set.parts.retain(|p| p.kind != PartKind::Ferrule);
    let clubs = set.job.clubs.len();
    for i in 0..clubs - 1 {
        let part = Part::new(&format!("FE-{i}"), PartKind::Ferrule, &code);
        set.parts.push(Part { id: PartId(format!("ferrule-{i}")), ..part });
    }
    let plan = plan(&set, &[]);
    let mut taken: Vec<&str> =
        plan.clubs.iter().flatten().filter_map(|c| c.part(PartKind::Ferrule)).map(|p| p.code.as_str()).collect();
    let all = taken.len();
    taken.sort_unstable();
    taken.dedup();
    assert_eq!((all, taken.len()), (clubs - 1, clubs - 1), "{taken:?}");
    assert_eq!(plan.missing.iter().filter(|m| m.kind == PartKind::Ferrule).count(), 1);
}

/// What a fact says to a reader of English.
fn said(fact: &impl fact::Fact) -> String {
    words::Words::english(quantity::Units::default()).tell(fact)
}
