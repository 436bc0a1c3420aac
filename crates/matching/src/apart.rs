//! A day planned set by set: the plain way, which a plan for all together has to beat.
//!
//! The most urgent set takes what it likes best, the next what is left, and so on, each set as [`crate::solve_set`] plans it.

use std::sync::Arc;

use crate::compiled::Compiled;
use crate::exact;
use crate::left::of_what_is_left;
use crate::oracle::SetOracle;
use crate::ruin::Plan;
use crate::table::Column;

/// Search nodes a set: what is common is proven long before.
const NODES: u64 = 20_000;

/// The plan set by set; `go_on` is asked after every small step of work, and none is what comes of it when it says no.
pub(crate) fn apart(p: &Compiled, go_on: &mut dyn FnMut() -> bool) -> Option<Plan> {
    let mut plan: Plan = p.sets.iter().map(|shape| vec![None; shape.clubs.len()]).collect();
    let mut order: Vec<usize> = (0..p.sets.len()).collect();
    let skip = |s: usize| p.clubs[p.sets[s].clubs.clone()].iter().map(|club| club.skip).max();
    order.sort_by_key(|&s| std::cmp::Reverse(skip(s)));
    // All types with what is left of them, and the clubs of one set at a time.
    let mut rest =
        Compiled { clubs: Vec::new(), sets: Vec::new(), types: p.types.clone(), quantum: p.quantum, relaxed: None };
    for s in order {
        let clubs = &p.clubs[p.sets[s].clubs.clone()];
        rest.clubs = clubs.iter().map(|club| Arc::new(of_what_is_left(club, &rest))).collect();
        rest.sets = vec![crate::compiled::SetShape { clubs: 0..clubs.len(), ..p.sets[s].clone() }];
        let mut over = false;
        let mut watch = |_: exact::Status| {
            over = over || !go_on();
            !over
        };
        let proof = exact::solve(SetOracle::new(&rest, 0), NODES, &mut watch);
        if over {
            return None;
        }
        for (kind, ty) in proof.plan.iter().flatten().flat_map(Column::uses) {
            rest.types[kind][ty].cap -= 1;
        }
        plan[s] = proof.plan;
    }
    Some(plan)
}
