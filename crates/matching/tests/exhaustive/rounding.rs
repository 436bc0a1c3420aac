//! Goal: costs that are half a quantum just so are rounded alike by the search, its check, the costs that a plan gives as
//! its reasons, and by hand. Method: what a shop has (jobs due in 0 to 15 days, tip prices from a tenth to ten times the
//! usual, masses to a tenth of a gram, target masses, losses of whole and half quanta), one club enumerated and small sets
//! and days against all plans.

use super::brute::least_of_all;
use super::{as_day, whole};
use matching::instance::{Rng, all_pairs};
use matching::{
    Candidate, ClubNeed, CostWeights, DayProblem, JobPlan, JobSet, Limits, Loss, LossForm, MassTarget, SetProblem,
    Stock, TRADE_OFF, Tip, TipFit, TipPair, solve_day, solve_set,
};
use std::sync::Arc;

/// What a job due in so many days counts: twice when due at once, once from a fortnight on.
fn priority(days: u32) -> f64 {
    2.0 - f64::from(days.min(14)) / 14.0
}

/// A loss of so many half quanta at each thousandth of a point off its least; the chance is never under 0.6.
fn half_quanta(rng: &mut Rng) -> Loss {
    let steps: Vec<f64> = (0..4001).map(|_| rng.below(7) as f64).collect();
    Loss::from_probability(2.0, LossForm::Yield, move |points| {
        let at = (points.abs() * 1000.0).round() as usize;
        1.0 - 0.5e-4 * (1.5 * at as f64).floor() - 0.5e-4 * if at == 0 { 0.0 } else { steps[at] }
    })
}

fn club(loss: &Loss, tips: usize) -> ClubNeed {
    ClubNeed {
        base_points: 0.0,
        heads: vec![],
        shafts: vec![],
        grips: vec![],
        adapters: None,
        tips: (0..tips).map(|tip| TipFit { tip, points: 0.0 }).collect(),
        tip_cap_g: 40.0,
        tip_pairs: [].into(),
        shaft_nominal_g: 100.0,
        mass_target: None,
        head_scale: None,
        loss: loss.clone(),
    }
}

fn part(part: usize, points: f64, mass_g: f64) -> Candidate {
    Candidate { part, points, mass_g, extra_cost: 0.0 }
}

/// The plan's own reasons, clubs, ranges and clubs left unbuilt, must add up to its cost.
fn adds_up(day: &DayProblem, plans: &[JobPlan], cost: f64) {
    let mut sum = 0;
    for (set, plan) in day.sets.iter().zip(plans) {
        sum += whole(plan.shaft_range_cost, &day.weights);
        let built = plan.clubs.iter().flatten();
        sum += built.map(|c| whole(c.cost.total(), &day.weights)).sum::<i64>();
        let unbuilt = plan.clubs.iter().filter(|c| c.is_none()).count() as f64;
        sum += whole(unbuilt * (day.weights.unbuilt * set.priority / day.weights.quantum).round() * 1e-4, &day.weights);
    }
    assert_eq!(sum, whole(cost, &day.weights));
}

fn solved(day: &DayProblem, steps: usize) -> (f64, f64) {
    let mut done = 0;
    let plan = solve_day(day, 1, &mut |_| {
        done += 1;
        done < steps
    })
    .expect("passes its check");
    adds_up(day, &plan.sets, plan.cost);
    (plan.cost, plan.bound)
}

/// One club that must take one weight of so many grams: every tenth of a gram to 15 g, every price, every due date.
#[test]
fn a_gram_of_tip_weight_costs_what_the_arithmetic_says() {
    let loss = Loss::from_sigma(0.2, 0.3, LossForm::Yield).expect("valid");
    let mut ties = 0;
    for tenths in 1..=150_u32 {
        for days in 0..=15 {
            for factor in TRADE_OFF {
                let mut need = club(&loss, 1);
                // Without the weight it is ten points off, which is not planned at all.
                need.base_points = -10.0;
                need.tips[0].points = 10.0;
                need.heads = vec![part(0, 0.0, 250.0)];
                need.shafts = vec![part(0, 0.0, 100.0)];
                need.grips = vec![part(0, 0.0, 50.0)];
                let stock = Stock {
                    heads: vec![1],
                    shafts: vec![1],
                    grips: vec![1],
                    tips: vec![Tip { grams: f64::from(tenths) / 10.0, count: 1 }],
                    ..Stock::default()
                };
                let usual = CostWeights::default();
                let weights = CostWeights { tip_per_g: usual.tip_per_g * factor, ..usual };
                let sets = vec![JobSet { clubs: vec![need], priority: priority(days) }];
                let (cost, _) = solved(&DayProblem { sets, stock, weights }, 1);
                // In whole numbers: tenths of a gram, fourteenths of priority, tenths of the factor; 5 quanta a tenth.
                let (num, den) =
                    (u64::from(tenths) * 5 * u64::from(28 - days.min(14)) * (factor * 10.0).round() as u64, 140);
                ties += u32::from(2 * num % (2 * den) == den);
                let by_hand = (2 * num + den) / (2 * den);
                assert_eq!(whole(cost, &weights), by_hand as i64, "{tenths} tenths, {days} days, price times {factor}");
            }
        }
    }
    assert!(ties > 300, "only {ties} ties: the test shows nothing");
}

/// One club a mass off its target: every twentieth of a gram to 10 g, prices that shops may choose, every due date.
#[test]
fn a_gram_off_the_target_mass_costs_what_the_arithmetic_says() {
    let loss = Loss::from_sigma(0.2, 0.3, LossForm::Yield).expect("valid");
    let mut ties = 0;
    for twentieths in 0..=200_u32 {
        for days in 0..=15 {
            for thousandths in [1_u32, 2, 5, 9, 10, 11, 13, 15, 19] {
                let mut need = club(&loss, 0);
                need.heads = vec![part(0, 0.0, 250.0 + f64::from(twentieths) / 20.0)];
                need.shafts = vec![part(0, 0.0, 100.0)];
                need.grips = vec![part(0, 0.0, 50.0)];
                need.mass_target = Some(MassTarget { base_mass_g: 10.0, target_g: 410.0 });
                let stock = Stock { heads: vec![1], shafts: vec![1], grips: vec![1], ..Stock::default() };
                let weights = CostWeights { mass_per_g: f64::from(thousandths) / 1000.0, ..CostWeights::default() };
                let sets = vec![JobSet { clubs: vec![need], priority: priority(days) }];
                let (cost, _) = solved(&DayProblem { sets, stock, weights }, 1);
                let (num, den) = (u64::from(twentieths * thousandths) * 10 * u64::from(28 - days.min(14)), 280);
                ties += u32::from(2 * num % (2 * den) == den);
                let by_hand = (2 * num + den) / (2 * den);
                assert_eq!(whole(cost, &weights), by_hand as i64, "{twentieths}, {days} days, {thousandths}");
            }
        }
    }
    assert!(ties > 300, "only {ties} ties: the test shows nothing");
}

/// A small stock and clubs that vie for it, with figures of a shop's own scale and losses of half quanta.
fn tiny(rng: &mut Rng) -> SetProblem {
    let loss = half_quanta(rng);
    let counts = |n: usize, rng: &mut Rng| (0..n).map(|_| [1, 1, 1, 2, 0][rng.below(5)]).collect::<Vec<u32>>();
    let (heads, shafts, grips) = (2 + rng.below(2), 2 + rng.below(2), 2 + rng.below(2));
    let tenths = |rng: &mut Rng, most: usize| rng.below(most) as f64 / 10.0;
    let tray = [1.9, 3.9, 6.1, 7.9, 0.7, 1.5, 2.1];
    let stock = Stock {
        heads: counts(heads, rng),
        shafts: counts(shafts, rng),
        grips: counts(grips, rng),
        adapters: counts(2, rng),
        tips: (0..1 + rng.below(2)).map(|_| Tip { grams: tray[rng.below(7)], count: rng.below(3) as u32 }).collect(),
    };
    let list = |n: usize, per_g: f64, mean_g: f64, rng: &mut Rng| -> Vec<Candidate> {
        (0..n)
            .map(|i| {
                let off_g = tenths(rng, 20) - 1.0;
                let extra_cost = if rng.below(3) == 0 { 0.5e-4 * rng.below(60) as f64 } else { 0.0 };
                Candidate { part: i, points: per_g * off_g, mass_g: mean_g + off_g, extra_cost }
            })
            .collect()
    };
    let (heads, shafts) = (list(heads, 0.49, 250.0, rng), list(shafts, 0.08, 110.0, rng));
    let grips = list(grips, -0.2, 50.0, rng);
    let adapters = list(2, 0.45, 5.0, rng);
    // What a weight of a gram and a half or more loses on top of another.
    let mut pairs = all_pairs(stock.tips.len()).to_vec();
    pairs.iter_mut().for_each(|p| p.lost_points = 0.001 * rng.below(60) as f64);
    let pairs: Arc<[TipPair]> = pairs.into();
    let clubs = (0..1 + rng.below(3))
        .map(|_| ClubNeed {
            base_points: tenths(rng, 30) - 2.5,
            heads: heads.clone(),
            shafts: shafts.clone(),
            grips: grips.clone(),
            adapters: (rng.below(3) == 0).then(|| adapters.clone()),
            tips: stock.tips.iter().enumerate().map(|(tip, t)| TipFit { tip, points: 0.45 * t.grams }).collect(),
            tip_cap_g: 9.0,
            tip_pairs: if rng.below(2) == 0 { pairs.clone() } else { [].into() },
            shaft_nominal_g: 110.0,
            mass_target: (rng.below(2) == 0)
                .then(|| MassTarget { base_mass_g: 10.0, target_g: 420.0 + 0.05 * rng.below(40) as f64 }),
            head_scale: None,
            loss: loss.clone(),
        })
        .collect();
    let usual = CostWeights::default();
    let weights = CostWeights {
        tip_per_g: usual.tip_per_g * TRADE_OFF[rng.below(5)],
        mass_per_g: [0.001, 0.002, 0.005, 0.009, 0.011, 0.013, 0.015, 0.019][rng.below(8)],
        second_tip: [0.0, 0.003, 0.000_25][rng.below(3)],
        shaft_range_per_g: [0.0, 0.01, 0.005][rng.below(3)],
        ..usual
    };
    SetProblem { clubs, stock, weights }
}

#[test]
fn hundreds_of_small_sets_pass_their_check_and_equal_the_best_of_all_plans() {
    let mut rng = Rng::new(20);
    for case in 0..500 {
        let problem = tiny(&mut rng);
        let solved = solve_set(&problem, Limits::default()).unwrap_or_else(|e| panic!("case {case}: {e}"));
        assert!(solved.proven, "case {case}");
        let day = as_day(&problem, problem.clubs.len(), &[1.0]);
        assert_eq!(whole(solved.cost, &problem.weights), least_of_all(&day), "case {case}");
        let plan = JobPlan {
            clubs: solved.clubs,
            shaft_range_g: solved.shaft_range_g,
            shaft_range_cost: solved.shaft_range_cost,
        };
        adds_up(&day, &[plan], solved.cost);
    }
}

#[test]
fn hundreds_of_small_days_pass_their_check_and_enclose_the_best_of_all_plans() {
    let mut rng = Rng::new(21);
    for case in 0..500 {
        let problem = tiny(&mut rng);
        let due = [0; 3].map(|_| priority(rng.below(16) as u32));
        let day = as_day(&problem, 1 + rng.below(2), &due);
        let (cost, bound) = solved(&day, 300);
        let best = least_of_all(&day);
        let (cost, bound) = (whole(cost, &day.weights), whole(bound, &day.weights));
        assert!(bound <= best && best <= cost, "case {case}: {bound} {best} {cost}");
    }
}
