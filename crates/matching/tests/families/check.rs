//! A look at a day's plan that shares no code with the crate: parts that are there, what each club comes to, and the sum.

use std::collections::HashMap;

use matching::{Candidate, ClubNeed, DayProblem, DaySolution, Stock};

/// Rounded as the documentation of `CostWeights::quantum` says.
fn quanta(cost: f64, quantum: f64) -> i64 {
    (cost / quantum + 0.5 + 1e-6).floor() as i64
}

fn thousandths(points: f64) -> i64 {
    (points * 1000.0).round() as i64
}

fn hundredths(mass_g: f64) -> i64 {
    (mass_g * 100.0).round() as i64
}

fn listed(list: &[Candidate], part: usize) -> &Candidate {
    list.iter().find(|c| c.part == part).expect("a part that fits")
}

/// What the plan costs, in quanta; stops the test where a part is used too often, or where it does not fit.
pub fn cost_of(day: &DayProblem, plan: &DaySolution) -> i64 {
    let mut used: HashMap<(char, usize), u32> = HashMap::new();
    let mut sum = 0;
    let (weights, quantum) = (&day.weights, day.weights.quantum);
    assert_eq!(day.sets.len(), plan.sets.len());
    for (set, planned) in day.sets.iter().zip(&plan.sets) {
        assert_eq!(set.clubs.len(), planned.clubs.len());
        let mut residuals = Vec::new();
        for (club, choice) in set.clubs.iter().zip(&planned.clubs) {
            let Some(choice) = choice else {
                sum += quanta(weights.unbuilt * set.priority, quantum);
                continue;
            };
            let parts = [
                listed(&club.heads, choice.head),
                listed(&club.shafts, choice.shaft),
                listed(&club.grips, choice.grip),
            ];
            for (kind, part) in ['h', 's', 'g'].into_iter().zip(&parts) {
                *used.entry((kind, part.part)).or_default() += 1;
            }
            choice.tips.iter().for_each(|&tip| *used.entry(('t', tip)).or_default() += 1);
            sum += club_cost(club, &parts, &choice.tips, &day.stock, set.priority, day);
            residuals.push(((parts[1].mass_g - club.shaft_nominal_g) * 10.0).round() as i64);
        }
        if let (Some(least), Some(most)) = (residuals.iter().min(), residuals.iter().max()) {
            sum += quanta((most - least) as f64 / 10.0 * weights.shaft_range_per_g * set.priority, quantum);
        }
    }
    for ((kind, part), count) in used {
        let there = match kind {
            'h' => day.stock.heads[part],
            's' => day.stock.shafts[part],
            'g' => day.stock.grips[part],
            _ => day.stock.tips[part].count,
        };
        assert!(count <= there, "{kind} {part} is used {count} times of {there}");
    }
    sum
}

fn club_cost(
    club: &ClubNeed,
    parts: &[&Candidate],
    tips: &[usize],
    stock: &Stock,
    priority: f64,
    day: &DayProblem,
) -> i64 {
    let (weights, quantum) = (&day.weights, day.weights.quantum);
    let mut points = thousandths(club.base_points) + parts.iter().map(|c| thousandths(c.points)).sum::<i64>();
    let mut tip_cg = 0;
    for &tip in tips {
        points += thousandths(club.tips.iter().find(|t| t.tip == tip).expect("a weight that fits").points);
        tip_cg += hundredths(stock.tips[tip].grams);
    }
    if let [lower, upper] = tips {
        let pair = club.tip_pairs.iter().find(|p| (p.lower, p.upper) == (*lower, *upper)).expect("may be stacked");
        points -= thousandths(pair.lost_points);
    }
    assert!(tip_cg as f64 / 100.0 <= club.tip_cap_g + 1e-9);
    let loss = club.loss.cost(points as f64 / 1000.0).expect("within reach");
    let mut sum = quanta(loss * weights.loss * priority, quantum);
    sum += quanta(tip_cg as f64 / 100.0 * weights.tip_per_g * priority, quantum);
    if tips.len() > 1 {
        sum += quanta(weights.second_tip * priority, quantum);
    }
    for part in parts {
        sum += quanta(part.extra_cost * priority, quantum);
    }
    if let Some(target) = club.mass_target {
        let cg = hundredths(target.base_mass_g - target.target_g) + tip_cg;
        let cg = cg + parts.iter().map(|c| hundredths(c.mass_g)).sum::<i64>();
        sum += quanta(cg.abs() as f64 / 100.0 * weights.mass_per_g * priority, quantum);
    }
    sum
}
