//! Goal: the solver's optimum is the optimum. Method: random small sets, all plans tried by a plain recursion that
//! shares nothing with the solver but the question; costs are added up here in whole quanta.

use std::ops::RangeInclusive;

use matching::{
    Candidate, ClubNeed, CostWeights, DayProblem, JobSet, Limits, Loss, LossForm, MassTarget, SetProblem, Stock, Tip,
    TipFit, solve_day, solve_set,
};
use proptest::prelude::*;

fn quanta(cost: f64, w: &CostWeights) -> i64 {
    (cost / w.quantum).round() as i64
}

fn milli(points: f64) -> i64 {
    (points * 1000.0).round() as i64
}

struct Tried<'a> {
    problem: &'a SetProblem,
    left: [Vec<u32>; 4],
    /// Where sets end (and the next begins).
    ends: &'a [usize],
    best: i64,
}

impl Tried<'_> {
    /// Plans club `at`, given cost so far and shaft residuals (tenths of a gram) so far.
    fn club(&mut self, at: usize, mut cost: i64, residuals: &mut Vec<i64>) {
        let problem = self.problem;
        let w = &problem.weights;
        let mut next_set = Vec::new();
        let residuals = if self.ends.contains(&at) {
            let range = residuals.iter().max().unwrap_or(&0) - residuals.iter().min().unwrap_or(&0);
            cost += quanta(range as f64 / 10.0 * w.shaft_range_per_g, w);
            &mut next_set
        } else {
            residuals
        };
        // Nothing costs less than nothing.
        if cost >= self.best {
            return;
        }
        let Some(club) = problem.clubs.get(at) else {
            self.best = cost;
            return;
        };
        self.club(at + 1, cost + quanta(w.unbuilt, w), residuals);
        let tip_sets = tip_sets(club);
        for h in &club.heads {
            for s in &club.shafts {
                for g in &club.grips {
                    for tips in &tip_sets {
                        let Some(own) = own_cost(problem, club, [h, s, g], tips) else { continue };
                        let mut taken = vec![(0, h.part), (1, s.part), (2, g.part)];
                        taken.extend(tips.iter().map(|&t| (3, t)));
                        if self.take(&taken) {
                            residuals.push(((s.mass_g - club.shaft_nominal_g) * 10.0).round() as i64);
                            self.club(at + 1, cost + own, residuals);
                            residuals.pop();
                            taken.iter().for_each(|&(k, part)| self.left[k][part] += 1);
                        }
                    }
                }
            }
        }
    }

    fn take(&mut self, parts: &[(usize, usize)]) -> bool {
        for (i, &(k, part)) in parts.iter().enumerate() {
            if self.left[k][part] == 0 {
                parts[..i].iter().for_each(|&(k, part)| self.left[k][part] += 1);
                return false;
            }
            self.left[k][part] -= 1;
        }
        true
    }
}

fn tip_sets(club: &ClubNeed) -> Vec<Vec<usize>> {
    let mut sets = vec![vec![]];
    for a in &club.tips {
        sets.push(vec![a.tip]);
        if club.tip_pair_allowed {
            sets.extend(club.tips.iter().filter(|b| b.tip >= a.tip).map(|b| vec![a.tip, b.tip]));
        }
    }
    sets
}

fn own_cost(p: &SetProblem, club: &ClubNeed, parts: [&Candidate; 3], tips: &[usize]) -> Option<i64> {
    let w = &p.weights;
    let grams: f64 = tips.iter().map(|&t| p.stock.tips[t].grams).sum();
    if grams > club.tip_cap_g {
        return None;
    }
    let fit = |t: usize| club.tips.iter().find(|f| f.tip == t).map_or(0, |f| milli(f.points));
    let deviation = milli(club.base_points)
        + parts.iter().map(|c| milli(c.points)).sum::<i64>()
        + tips.iter().map(|&t| fit(t)).sum::<i64>();
    let loss = club.loss.cost(deviation as f64 / 1000.0)?;
    let mut sum = quanta(loss * w.loss, w) + quanta(grams * w.tip_per_g, w);
    sum += parts.iter().map(|c| quanta(c.extra_cost, w)).sum::<i64>();
    if let Some(m) = club.mass_target {
        let centi = |g: f64| (g * 100.0).round();
        let all = parts.iter().map(|c| centi(c.mass_g)).sum::<f64>() + centi(grams) + centi(m.base_mass_g - m.target_g);
        sum += (all.abs() * w.mass_per_g / 100.0 / w.quantum).round() as i64;
    }
    Some(sum)
}

fn exhaustive(problem: &SetProblem, ends: &[usize]) -> i64 {
    let s = &problem.stock;
    let tips = s.tips.iter().map(|t| t.count).collect();
    let left = [s.heads.clone(), s.shafts.clone(), s.grips.clone(), tips];
    let mut tried = Tried { problem, left, ends, best: i64::MAX };
    tried.club(0, 0, &mut vec![]);
    tried.best
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
    (parts(most[0]), parts(most[1]), parts(most[2]), tips, clubs, 0..3_usize).prop_map(
        |(heads, shafts, grips, tips, clubs, range)| {
            let stock = Stock {
                heads: heads.iter().map(|h| h.2).collect(),
                shafts: shafts.iter().map(|h| h.2).collect(),
                grips: grips.iter().map(|h| h.2).collect(),
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
            let clubs = clubs
                .into_iter()
                .map(|(base, pair, mass, missing)| {
                    let mut heads = list(&heads, 0.49, 250.0);
                    if missing < 3 && heads.len() > 1 {
                        heads.remove(usize::from(missing) % heads.len());
                    }
                    ClubNeed {
                        base_points: f64::from(base) / 10.0,
                        heads,
                        shafts: list(&shafts, 0.08, 110.0),
                        grips: list(&grips, -0.2, 50.0),
                        tips: (0..tips.len())
                            .map(|tip| TipFit { tip, points: 0.45 * f64::from(tips[tip].0) })
                            .collect(),
                        tip_cap_g: 7.0,
                        tip_pair_allowed: pair,
                        shaft_nominal_g: 110.0,
                        mass_target: mass.then_some(MassTarget { base_mass_g: 10.0, target_g: 423.0 }),
                        head_scale: None,
                        loss: loss.clone(),
                    }
                })
                .collect();
            let weights = CostWeights { shaft_range_per_g: [0.0, 0.01, 0.1][range], ..CostWeights::default() };
            SetProblem { clubs, stock, weights }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn optimum_is_the_best_of_all_plans(problem in small_set([4, 3, 4, 2], 1..=3)) {
        let solved = solve_set(&problem, Limits::default()).expect("valid problem");
        prop_assert!(solved.proven);
        let got = (solved.cost / problem.weights.quantum).round() as i64;
        prop_assert_eq!(got, exhaustive(&problem, &[problem.clubs.len()]));
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
        let n = problem.clubs.len();
        let ends: Vec<usize> = (1..=n).filter(|at| at % split == 0 || *at == n).collect();
        let sets = problem.clubs.chunks(split).map(|c| JobSet { clubs: c.to_vec(), priority: 1.0 }).collect();
        let day = DayProblem { sets, stock: problem.stock.clone(), weights: problem.weights };
        let mut steps = 0;
        let plan = solve_day(&day, 1, &mut |_| {
            steps += 1;
            steps < 2000
        })
        .expect("valid problem");
        let whole = |cost: f64| (cost / problem.weights.quantum).round() as i64;
        let best = exhaustive(&problem, &ends);
        prop_assert!(whole(plan.bound) <= best, "bound {} above {best}", whole(plan.bound));
        prop_assert!(best <= whole(plan.cost), "cost {} below {best}", whole(plan.cost));
    }
}
