//! Goal: optimal on problems whose optimum is known from elsewhere. Method: a club's loss curve is arbitrary, so an axial
//! three-index assignment problem can be written as a set: shaft `j` adds j thousandths of a point, grip `k` adds n·k,
//! and the curve of club `i` looks up the cost of (i, j, k).

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, constraint, variable};
use matching::instance::{Rng, Variant, set};
use matching::{Candidate, ClubNeed, CostWeights, Limits, Loss, LossForm, SetProblem, Stock, Tip, TipFit, solve_set};

fn bare(part: usize, points: f64) -> Candidate {
    Candidate { part, points, mass_g: 0.0, extra_cost: 0.0 }
}

/// Costs 0–99 as 0–0.495 of a club.
fn axial(n: usize, costs: &[u32]) -> (SetProblem, u32) {
    let base = costs.chunks(n * n).map(|table| table.iter().min().expect("costs")).sum();
    (three_index(n, costs, |cost| 1.0 - f64::from(cost) / 200.0), base)
}

/// A set whose club `i` is in tolerance with a probability that depends on the cost of (i, j, k).
fn three_index(n: usize, costs: &[u32], probability: impl Fn(u32) -> f64) -> SetProblem {
    let clubs = (0..n)
        .map(|i| {
            let table = &costs[i * n * n..(i + 1) * n * n];
            let loss = Loss::from_probability(0.001 * (n * n) as f64, LossForm::Yield, |r| {
                let at = (r * 1000.0).round();
                if at < 0.0 || at >= (n * n) as f64 {
                    return 0.0;
                }
                let (j, k) = (at as usize % n, at as usize / n);
                probability(table[j * n + k])
            });
            ClubNeed {
                base_points: 0.0,
                heads: vec![bare(i, 0.0)],
                shafts: (0..n).map(|j| bare(j, 0.001 * j as f64)).collect(),
                grips: (0..n).map(|k| bare(k, 0.001 * (n * k) as f64)).collect(),
                adapters: None,
                tips: vec![],
                tip_cap_g: 0.0,
                tip_pairs: [].into(),
                shaft_nominal_g: 0.0,
                mass_target: None,
                head_scale: None,
                loss,
            }
        })
        .collect();
    let stock = Stock { heads: vec![1; n], shafts: vec![1; n], grips: vec![1; n], ..Stock::default() };
    let weights = CostWeights { quantum: 0.005, shaft_range_per_g: 0.0, ..CostWeights::default() };
    SetProblem { clubs, stock, weights }
}

/// Test family computed independently (two general solvers agree): linear congruential costs, third index fastest.
fn family(n: usize) -> Vec<u32> {
    let mut s: u64 = 12345;
    (0..n * n * n)
        .map(|_| {
            s = (1_103_515_245 * s + 12345) % (1 << 31);
            ((s >> 16) % 100) as u32
        })
        .collect()
}

#[test]
fn val_axial_three_index_family() {
    assert_eq!(family(2)[..4], [68, 88, 17, 98]);
    for (n, least) in [(6, 41), (8, 31), (10, 26)] {
        let (problem, base) = axial(n, &family(n));
        let plan = solve_set(&problem, Limits { max_nodes: 50_000_000 }).expect("valid");
        assert!(plan.proven, "n {n}");
        assert_eq!((plan.cost * 200.0).round() as u32 + base, least, "n {n}");
    }
}

/// The least worst cost is the least at which all can be built when every dearer triple is out of reach.
#[test]
fn val_axial_three_index_least_worst() {
    for (n, worst) in [(6, 14), (8, 9), (10, 5)] {
        let built = |most: u32| {
            let problem = three_index(n, &family(n), |cost| f64::from(u32::from(cost <= most)));
            let plan = solve_set(&problem, Limits { max_nodes: 50_000_000 }).expect("valid");
            assert!(plan.proven, "n {n}, at most {most}");
            plan.clubs.iter().flatten().count()
        };
        assert_eq!(built(worst), n, "n {n}");
        assert!(built(worst - 1) < n, "n {n}");
    }
}

/// A full-sized set, whose optimum HiGHS 1.16 proves in 6.5 s by another formulation (bound 920 quanta, of a problem that
/// is nowhere dearer than the real one): `python3 crates/matching/peers/compare.py BINARY S Plain 0 10`.
#[test]
fn val_full_set_against_a_general_solver() {
    let plan = solve_set(&set(0, Variant::Plain), Limits::default()).expect("valid");
    assert!(plan.proven);
    assert_eq!((plan.cost * 1e4).round(), 920.0);
}

/// A mid-sized set, whole, as a mixed-integer programme over columns, solved by a general solver.
#[test]
fn val_mid_sets_against_a_general_solver() {
    for seed in 0..6 {
        let problem = mid(seed);
        let plan = solve_set(&problem, Limits::default()).expect("valid");
        assert!(plan.proven);
        let quanta = (plan.cost / problem.weights.quantum).round();
        assert_eq!(quanta, general(&problem).round(), "seed {seed}");
    }
}

fn mid(seed: u64) -> SetProblem {
    let mut rng = Rng::new(seed);
    let mut tenths =
        |n: usize, sd: f64| -> Vec<f64> { (0..n).map(|_| (rng.gauss(0.0, sd) * 10.0).round() / 10.0).collect() };
    let (heads, shafts, grips) = (tenths(4 * 3, 1.2), tenths(6, 1.0), tenths(5, 1.2));
    let light = tenths(4, 0.4);
    let loss = Loss::from_sigma(0.12, 0.3, LossForm::Yield).expect("valid");
    let list = |masses: &[f64], from: usize, per_g: f64| -> Vec<Candidate> {
        let part = |(i, &g): (usize, &f64)| Candidate {
            part: from + i,
            points: per_g * g,
            mass_g: 100.0 + g,
            extra_cost: 0.0,
        };
        masses.iter().enumerate().map(part).collect()
    };
    let clubs = (0..4)
        .map(|c| ClubNeed {
            base_points: -1.0 + light[c],
            heads: list(&heads[3 * c..3 * c + 3], 3 * c, 0.49),
            shafts: list(&shafts, 0, 0.08),
            grips: list(&grips, 0, -0.2),
            adapters: None,
            tips: (0..3).map(|tip| TipFit { tip, points: 0.45 * (tip + 1) as f64 }).collect(),
            tip_cap_g: 3.0,
            tip_pairs: [].into(),
            shaft_nominal_g: 100.0,
            mass_target: None,
            head_scale: None,
            loss: loss.clone(),
        })
        .collect();
    let tips = [1.0, 2.0, 3.0].map(|grams| Tip { grams, count: 2 }).to_vec();
    let stock = Stock { heads: vec![1; 12], shafts: vec![1; 6], grips: vec![1; 5], tips, ..Stock::default() };
    SetProblem { clubs, stock, weights: CostWeights::default() }
}

fn general(p: &SetProblem) -> f64 {
    let w = &p.weights;
    let quanta = |x: f64| (x / w.quantum).round();
    let mut vars = ProblemVariables::new();
    let (lo, hi) = (vars.add(variable().min(-10.0).max(10.0)), vars.add(variable().min(-10.0).max(10.0)));
    let mut cost: Expression = quanta(w.shaft_range_per_g) * (hi - lo);
    let mut rows: Vec<(Expression, f64, bool)> = Vec::new();
    let mut used: std::collections::BTreeMap<(usize, usize), Expression> = std::collections::BTreeMap::new();
    for club in &p.clubs {
        let (mut one, mut residual) = (Expression::default(), Expression::default());
        for h in &club.heads {
            for s in &club.shafts {
                for g in &club.grips {
                    for tip in std::iter::once(None).chain(club.tips.iter().map(Some)) {
                        let milli = |x: f64| (x * 1000.0).round();
                        let points = [club.base_points, h.points, s.points, g.points, tip.map_or(0.0, |t| t.points)];
                        let deviation: f64 = points.into_iter().map(milli).sum();
                        let Some(loss) = club.loss.cost(deviation / 1000.0) else { continue };
                        let grams = tip.map_or(0.0, |t| p.stock.tips[t.tip].grams);
                        let own = quanta(loss) + quanta(grams * w.tip_per_g);
                        let x = vars.add(variable().binary());
                        cost += own * x;
                        one += x;
                        residual += (s.mass_g - club.shaft_nominal_g) * x;
                        let mut take = |kind: usize, part: usize| *used.entry((kind, part)).or_default() += x;
                        take(0, h.part);
                        take(1, s.part);
                        take(2, g.part);
                        if let Some(t) = tip {
                            take(3, t.tip);
                        }
                    }
                }
            }
        }
        let skip = vars.add(variable().binary());
        cost += quanta(w.unbuilt) * skip;
        rows.push((one + skip, 1.0, true));
        // An unbuilt club does not widen the range.
        rows.push((residual.clone() - hi - 20.0 * skip, 0.0, false));
        rows.push((lo - residual - 20.0 * skip, 0.0, false));
    }
    let mut model = vars.minimise(cost.clone()).using(good_lp::microlp);
    for (row, right, equal) in rows {
        model = if equal { model.with(constraint!(row == right)) } else { model.with(constraint!(row <= right)) };
    }
    for ((kind, part), row) in used {
        let there = if kind == 3 { p.stock.tips[part].count } else { 1 };
        model = model.with(constraint!(row <= f64::from(there)));
    }
    model.solve().expect("leaving all unbuilt is a solution").eval(cost)
}
