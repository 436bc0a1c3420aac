//! Goal: the solver's optimum is the optimum. Method: random small sets and days, all plans tried (see [`brute`]).

mod brute;
mod referee;
mod rounding;
mod whole;

use std::ops::RangeInclusive;
use std::sync::Arc;

use brute::least_of_all;
use matching::instance::all_pairs;
use matching::{
    Candidate, ClubNeed, CostWeights, DayProblem, JobSet, Limits, Loss, LossForm, MassTarget, SetProblem, Stock, Tip,
    TipFit, TipPair, solve_day, solve_set,
};
use proptest::prelude::*;

/// The clubs of a set as a day of sets of so many clubs each, at a priority each in turn.
fn as_day(problem: &SetProblem, split: usize, priorities: &[f64]) -> DayProblem {
    let sets = problem.clubs.chunks(split).zip(priorities.iter().cycle());
    let sets = sets.map(|(clubs, &priority)| JobSet { clubs: clubs.to_vec(), priority }).collect();
    DayProblem { sets, stock: problem.stock.clone(), weights: problem.weights }
}

/// A cost that is whole quanta.
fn whole(cost: f64, weights: &CostWeights) -> i64 {
    let quanta = cost / weights.quantum;
    assert!((quanta - quanta.round()).abs() < 1e-6, "{cost} is not whole quanta");
    quanta.round() as i64
}

/// A day's bound, the cost of the best of all its plans, and that of the plan that is found; in quanta.
fn bounded(day: &DayProblem) -> (i64, i64, i64) {
    let mut steps = 0;
    let plan = solve_day(day, 1, &mut |_| {
        steps += 1;
        steps < 2000
    })
    .expect("valid problem");
    (whole(plan.bound, &day.weights), least_of_all(day), whole(plan.cost, &day.weights))
}

/// A part: offset in tenths of a gram, extra cost in quanta, capacity.
fn part() -> impl Strategy<Value = (i32, u32, u32)> {
    (
        -15..15_i32,
        prop_oneof![3 => Just(0_u32), 1 => 0..60_u32],
        prop_oneof![1 => Just(0_u32), 8 => Just(1), 2 => Just(2)],
    )
}

fn small_set(most: [usize; 4], clubs: RangeInclusive<usize>) -> impl Strategy<Value = SetProblem> {
    let parts = |n| prop::collection::vec(part(), 1..=n);
    let clubs = prop::collection::vec((-30..10_i32, any::<bool>(), any::<bool>(), 0..8_u8), clubs);
    let tips = prop::collection::vec((1..5_u32, 0..3_u32), 0..=most[3]);
    let stacked = (0..3_u32, 0..80_u32);
    // Every second club or every third takes an adapter, or none does.
    let adapters = (prop::collection::vec(part(), 0..=2), prop_oneof![Just(usize::MAX), Just(2), Just(3)]);
    (parts(most[0]), parts(most[1]), parts(most[2]), tips, clubs, 0..3_usize, stacked, adapters).prop_map(
        |(heads, shafts, grips, tips, clubs, range, (second, lost), (adapters, one_in))| {
            let stock = Stock {
                heads: heads.iter().map(|h| h.2).collect(),
                shafts: shafts.iter().map(|h| h.2).collect(),
                grips: grips.iter().map(|h| h.2).collect(),
                adapters: adapters.iter().map(|h| h.2).collect(),
                tips: tips.iter().map(|&(grams, count)| Tip { grams: f64::from(grams), count }).collect(),
            };
            let loss = Loss::from_sigma(0.12, 0.3, LossForm::Yield).expect("valid");
            let list = |parts: &[(i32, u32, u32)], per_g: f64, mean: f64| -> Vec<Candidate> {
                parts
                    .iter()
                    .enumerate()
                    .map(|(part, p)| {
                        let g = f64::from(p.0) / 10.0;
                        Candidate { part, points: per_g * g, mass_g: mean + g, extra_cost: f64::from(p.1) * 1e-4 }
                    })
                    .collect()
            };
            let lost_points = f64::from(lost) / 1000.0;
            let pairs: Arc<[TipPair]> = all_pairs(tips.len()).iter().map(|p| TipPair { lost_points, ..*p }).collect();
            let clubs = clubs
                .into_iter()
                .zip(1_usize..)
                .map(|((base, pair, mass, missing), at)| {
                    let mut heads = list(&heads, 0.49, 250.0);
                    if missing < 3 && heads.len() > 1 {
                        heads.remove(usize::from(missing) % heads.len());
                    }
                    ClubNeed {
                        base_points: f64::from(base) / 10.0,
                        heads,
                        shafts: list(&shafts, 0.08, 110.0),
                        grips: list(&grips, -0.2, 50.0),
                        adapters: at.is_multiple_of(one_in).then(|| list(&adapters, 0.45, 5.0)),
                        tips: (0..tips.len())
                            .map(|tip| TipFit { tip, points: 0.45 * f64::from(tips[tip].0) })
                            .collect(),
                        tip_cap_g: 7.0,
                        tip_pairs: if pair { pairs.clone() } else { [].into() },
                        shaft_nominal_g: 110.0,
                        mass_target: mass.then_some(MassTarget { base_mass_g: 10.0, target_g: 423.0 }),
                        head_scale: None,
                        loss: loss.clone(),
                    }
                })
                .collect();
            let weights = CostWeights {
                shaft_range_per_g: [0.0, 0.01, 0.1][range],
                second_tip: 0.004 * f64::from(second),
                ..CostWeights::default()
            };
            SetProblem { clubs, stock, weights }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases.max(400), ..ProptestConfig::default() })]

    #[test]
    fn optimum_is_the_best_of_all_plans(problem in small_set([4, 3, 4, 2], 1..=3)) {
        let solved = solve_set(&problem, Limits::default()).expect("valid problem");
        prop_assert!(solved.proven);
        let got = whole(solved.cost, &problem.weights);
        prop_assert_eq!(got, least_of_all(&as_day(&problem, problem.clubs.len(), &[1.0])));
    }

    /// Sets that vie for the same few shafts, so that inequalities over sets matter; `wide` shifts one club's nominal
    /// shaft mass, so that a shaft is not at the same residual everywhere.
    #[test]
    fn a_days_bound_is_below_the_best_of_all_plans(
        problem in small_set([4, 5, 3, 1], 2..=4),
        split in 1..3_usize,
        wide in 0..4_i32,
    ) {
        let mut problem = problem;
        problem.clubs[0].shaft_nominal_g += 0.1 * f64::from(wide);
        // Two of three shafts alike.
        let alike = problem.clubs[0].shafts[0];
        for club in &mut problem.clubs {
            for shaft in club.shafts.iter_mut().filter(|s| s.part % 3 != 2) {
                (shaft.points, shaft.mass_g) = (alike.points, alike.mass_g);
            }
        }
        let day = as_day(&problem, split, &[1.0]);
        let (bound, best, cost) = bounded(&day);
        prop_assert!(bound <= best, "bound {bound} above {best}");
        prop_assert!(best <= cost, "cost {cost} below {best}");
    }
}

/// A set that has one shaft of a residual for two clubs leaves one of them unbuilt, so it does not count as one of the
/// sets that there are shafts for. It was charged as if it did: the bound came out at 102281 quanta, and the best of all
/// plans costs 102055.
#[test]
fn a_set_without_shafts_for_all_its_clubs_is_not_charged_for_them() {
    let bare = |part, points, mass_g| Candidate { part, points, mass_g, extra_cost: 0.0 };
    let heads =
        [bare(0, -0.637, 248.7), Candidate { extra_cost: 0.0012, ..bare(1, -0.686, 248.6) }, bare(2, 0.0, 250.0)];
    let shafts = [Candidate { extra_cost: 0.0001, ..bare(0, 0.0, 110.0) }, bare(1, 0.0, 110.0), bare(2, -0.12, 108.5)];
    let loss = Loss::from_sigma(0.12, 0.3, LossForm::Yield).expect("valid");
    let club = |base_points, fits: &[usize], pair: bool| ClubNeed {
        base_points,
        heads: fits.iter().map(|&at| heads[at]).collect(),
        shafts: shafts.to_vec(),
        grips: vec![bare(0, -0.1, 50.5), bare(1, 0.2, 49.0)],
        adapters: None,
        tips: vec![TipFit { tip: 0, points: 1.35 }],
        tip_cap_g: 7.0,
        tip_pairs: if pair { all_pairs(1) } else { [].into() },
        shaft_nominal_g: 110.0,
        mass_target: None,
        head_scale: None,
        loss: loss.clone(),
    };
    let mut clubs = vec![
        club(0.7, &[0, 2], false),
        club(0.6, &[0, 1], false),
        club(-1.8, &[0, 1, 2], true),
        club(-2.8, &[1, 2], true),
    ];
    clubs[0].shaft_nominal_g += 0.1;
    let stock = Stock {
        heads: vec![1; 3],
        shafts: vec![1; 3],
        grips: vec![2, 1],
        adapters: vec![],
        tips: vec![Tip { grams: 3.0, count: 2 }],
    };
    let weights = CostWeights { shaft_range_per_g: 0.1, second_tip: 0.0, ..CostWeights::default() };
    let (bound, best, cost) = bounded(&as_day(&SetProblem { clubs, stock, weights }, 2, &[1.0]));
    assert_eq!(best, 102_055, "all plans tried");
    assert!(bound <= best && best <= cost, "{bound} {best} {cost}");
}
