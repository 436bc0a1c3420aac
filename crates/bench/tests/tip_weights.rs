//! Weights in the tip: one where one does, two where none reaches, and the second where it lies.

use crate::set::Set;
use bench::remedy::remedies;
use trade::action::Action;
use trade::kind::Role;
use trade::model::{Model, PartKind};
use trade::part::Part;
use trade::plan::{ClubPlan, PlannedPart};
use trade::tip_weight::TipWeightModel;

/// The demonstration set with heads so many grams lighter and a tray of these masses, so many pieces of each; a weight of
/// 2 g is 12 mm long, one of 8 g 30 mm.
fn with_tray(lighter_g: f64, tray: &[(f64, i64)]) -> Set {
    let mut set = Set::open();
    for head in set.parts.iter_mut().filter(|p| p.kind == PartKind::Head) {
        head.mass_g = head.mass_g.map(|mass_g| mass_g - lighter_g);
    }
    set.parts.retain(|p| p.kind != PartKind::TipWeight);
    let shaft = set.library.shaft(&set.job.clubs[0].target.shaft_model).unwrap().tip_diameter_mm;
    let mut models: Vec<Model> = demo::models();
    models.retain(|m| m.kind() != PartKind::TipWeight);
    for (i, &(mass_g, count)) in tray.iter().enumerate() {
        let code = format!("W{i}");
        models.push(Model::TipWeight(TipWeightModel {
            code: code.clone(),
            name: format!("{mass_g} g"),
            label: String::new(),
            mass_g,
            tip_min_mm: shaft - 0.1,
            tip_max_mm: shaft + 0.1,
            length_mm: 6.0 + 3.0 * mass_g,
            flange_mm: 0.0,
        }));
        let part = Part::new(&format!("T{i}"), PartKind::TipWeight, &code);
        set.parts.push(Part { id: format!("tray-{i}").as_str().into(), count: Some(count), ..part });
    }
    set.library = models.into_iter().collect();
    set
}

fn propose(set: &Set) -> Vec<ClubPlan> {
    let plan = desk::planner::propose(set.assembly(), &set.parts, &[]).unwrap();
    assert!(plan.proven);
    plan.clubs.into_iter().map(|c| c.expect("the stock is enough")).collect()
}

fn in_tip(plan: &ClubPlan) -> Vec<&PlannedPart> {
    plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).collect()
}

/// Of all clubs in a few shops: one with two weights has no single one in the tray that weighs as much.
#[test]
fn two_weights_are_planned_only_where_no_single_one_weighs_as_much() {
    let (mut two, mut clubs) = (0, 0);
    for tray in [
        &[(2.0, 40), (2.0, 40), (4.0, 40)][..],
        &[(2.0, 40), (4.0, 40), (6.0, 40), (8.0, 40)],
        &[(2.0, 40), (3.0, 40), (4.0, 40), (5.0, 40), (6.0, 40), (7.0, 40), (8.0, 40), (9.0, 40)],
        &[(2.0, 40), (3.0, 40)],
        &[(1.0, 40), (2.5, 40), (6.0, 40)],
    ] {
        for lighter_g in [0.0, 2.5, 5.0] {
            for plan in propose(&with_tray(lighter_g, tray)) {
                let weights = in_tip(&plan);
                clubs += 1;
                if weights.len() == 2 {
                    two += 1;
                    let grams = plan.mass_g(Role::TipWeight);
                    let single = tray.iter().any(|(mass_g, _)| (mass_g - grams).abs() < 0.05);
                    assert!(!single, "two weights of {grams} g in all from {tray:?}");
                }
            }
        }
    }
    assert!(two > 5 && two < clubs / 2, "{two} of {clubs}: the test shows nothing");
}

/// With 2, 2 and 4 g in the tray a club that wants 4 g has the one of 4 g; without it, and only then, the two of 2 g.
#[test]
fn the_weight_of_4_g_is_taken_before_two_of_2_g() {
    let mut set = with_tray(0.0, &[(2.0, 1), (2.0, 1), (4.0, 1)]);
    set.job.clubs.truncate(1);
    // One head that leaves the club 4 g light.
    let number = set.job.clubs[0].target.number.clone();
    let mut heads: Vec<f64> = Vec::new();
    for head in set.parts.iter_mut().filter(|p| p.kind == PartKind::Head && p.number.as_deref() == Some(&number)) {
        heads.push(head.mass_g.unwrap());
        head.mass_g = None;
    }
    let usual = heads.iter().sum::<f64>() / heads.len() as f64;
    let weights_at = |set: &Set, head_g: f64| {
        let mut parts = set.parts.clone();
        let head = parts.iter_mut().find(|p| p.kind == PartKind::Head && p.number.as_deref() == Some(&number)).unwrap();
        head.mass_g = Some(head_g);
        let plan = desk::planner::propose(set.assembly(), &parts, &[]).unwrap();
        plan.clubs[0].as_ref().map(|c| in_tip(c).iter().map(|p| p.mass_g).collect::<Vec<_>>())
    };
    let taken: Vec<(f64, Vec<f64>)> = (-100..=100)
        .filter_map(|i| Some((usual + 0.1 * f64::from(i), weights_at(&set, usual + 0.1 * f64::from(i))?)))
        .collect();
    let with = |wanted: &[f64]| taken.iter().filter(|(_, w)| w == wanted).count();
    assert!(with(&[4.0]) > 10 && with(&[2.0]) > 10 && with(&[]) > 10);
    assert_eq!(with(&[2.0, 2.0]), 0);
    assert!(with(&[2.0, 4.0]) + with(&[4.0, 2.0]) > 10, "6 g are to be had from two only");
    set.parts.retain(|p| p.code != "T2");
    let (head_g, _) = taken.iter().find(|(_, w)| w == &[4.0]).unwrap();
    assert_eq!(weights_at(&set, head_g - 0.3), Some(vec![2.0, 2.0]));
}

/// What a plan says it leaves a club from its target is what the belief expects of the same parts, with one weight in the
/// tip and with two.
#[test]
fn the_plan_and_the_belief_stack_weights_alike() {
    let mut two = 0;
    for tray in [&[(2.0, 40), (3.0, 40)][..], &[(1.0, 40), (2.5, 40), (6.0, 40)]] {
        let mut set = with_tray(5.0, tray);
        let plans = propose(&set);
        for (club, plan) in set.job.clubs.iter_mut().zip(plans) {
            club.plan = Some(plan);
        }
        let believed = set.assembly().believe(&[]).unwrap();
        for club in &set.job.clubs {
            let plan = club.plan.as_ref().unwrap();
            let finish = believed.finish(&club.id).unwrap().unwrap();
            let said = plan
                .reasons
                .iter()
                .map(|r| words::Words::english(quantity::Units::default()).tell(r))
                .find_map(|r| Some(r.split_once("leaves it ")?.1.split_once(" point")?.0.to_owned()));
            let Some(said) = said else { continue };
            let off: f64 = said.parse().unwrap();
            // Two decimals are shown.
            assert!((finish.deviation_points.abs() - off).abs() < 0.0061, "{off} planned, {finish:?}");
            two += usize::from(in_tip(plan).len() == 2);
        }
    }
    assert!(two > 3, "{two} clubs with two weights: the test shows nothing");
}

/// A plan that has two weights of 2 g from before: one of 4 g is offered in their place, and moves the club by no more than
/// what the upper one lay too high.
#[test]
fn one_weight_is_offered_in_place_of_two_before_the_glue() {
    let mut set = with_tray(0.0, &[(2.0, 40), (4.0, 40)]);
    let plans = propose(&set);
    let small = set.parts.iter().find(|p| p.code == "T0").unwrap().clone();
    for (club, plan) in set.job.clubs.iter_mut().zip(plans) {
        club.plan = Some(plan);
    }
    let mut plan = set.job.clubs[0].plan.clone().unwrap();
    plan.parts.retain(|p| p.kind != PartKind::TipWeight);
    for _ in 0..2 {
        plan.parts.push(PlannedPart {
            kind: PartKind::TipWeight,
            part: small.id.clone(),
            code: small.code.clone(),
            model: small.model.clone(),
            mass_g: 2.0,
            weighed: false,
            raw_cpm: None,
            tip_lost_mm: None,
            profile: None,
            lot: String::new(),
            place: String::new(),
        });
    }
    set.job.clubs[0].plan = Some(plan);
    let believed = set.assembly().believe(&[]).unwrap();
    let (state, spares) = (set.state(1), set.spares());
    let found = remedies(&believed, &state, &spares).unwrap();
    let one =
        found.iter().find(|r| r.action == Action::TipWeight && r.code.is_only("T1")).expect("one in place of two");
    let words = words::Words::english(quantity::Units::default()).tell(&one.fact);
    assert!(words.starts_with("One weight of 4.0 g in the tip in place of two"), "{words}");
    assert!(one.more_g.abs() < 1e-9);
    let moved = one.finish.deviation_points - state.finish.unwrap().deviation_points;
    // By hand: 4 g of 18 mm against 2 g of 12 mm and 2 g of 12 mm on top; a point is 49.6117 g·in.
    let by_hand = (2.0 * 6.0 + 2.0 * 18.0 - 4.0 * 9.0) / 25.4 / 49.6117;
    assert!((moved - by_hand).abs() < 1e-4, "{moved} {by_hand}");
    // The same two once more, or the other way round, are nothing new.
    assert!(found.iter().all(|r| r.code.to_string() != "T0 + T0"));
    // With one weight of 4 g planned no pair of the same mass is offered.
    let mut plan = set.job.clubs[0].plan.clone().unwrap();
    let at = plan.parts.iter().position(|p| p.kind == PartKind::TipWeight).unwrap();
    plan.parts.remove(at);
    (plan.parts[at].code, plan.parts[at].model, plan.parts[at].mass_g) = ("T1".into(), "W1".into(), 4.0);
    set.job.clubs[0].plan = Some(plan);
    let believed = set.assembly().believe(&[]).unwrap();
    let found = remedies(&believed, &set.state(1), &set.spares()).unwrap();
    assert!(found.iter().all(|r| r.action != Action::TipWeight || r.more_g.abs() > 0.05));
}
