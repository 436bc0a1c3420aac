//! Goal: days of every family are planned with parts that are there, at the cost that is told, and no plan costs less than
//! the bound. Method: a generator and a check of their own ([`draw`], [`check`]).

mod check;
mod draw;

use check::cost_of;
use draw::{FAMILIES, draw};
use matching::{DayProblem, DaySolution, solve_day};

fn whole(cost: f64, quantum: f64) -> i64 {
    let quanta = cost / quantum;
    assert!((quanta - quanta.round()).abs() < 1e-6, "{cost} is not whole quanta");
    quanta.round() as i64
}

/// Plans a day in so many steps, every plan and bound on the way held against each other.
fn planned(day: &DayProblem, steps: usize) -> DaySolution {
    let (mut done, mut least, mut most) = (0, f64::INFINITY, 0.0_f64);
    let plan = solve_day(day, 1, &mut |now| {
        done += 1;
        (least, most) = (least.min(now.cost), most.max(now.bound));
        assert!(now.bound <= now.cost);
        done < steps
    })
    .expect("valid");
    let quantum = day.weights.quantum;
    assert_eq!(cost_of(day, &plan), whole(plan.cost, quantum));
    assert!(plan.bound <= plan.cost && most <= plan.cost + 1e-9, "{most} was proven, and {} found", plan.cost);
    assert!(plan.cost <= least + 1e-9, "a plan of {least} was lost for {}", plan.cost);
    plan
}

#[test]
fn every_family_is_planned_at_the_cost_that_is_told() {
    for family in FAMILIES {
        for (jobs, seed) in [(1, 11), (3, 12), (10, 13)] {
            let day = draw(family, jobs, seed);
            planned(&day, 0);
            planned(&day, 300);
        }
    }
}
