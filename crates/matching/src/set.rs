//! One set: the public entry.

use crate::check::checked;
use crate::climb::stock_worth;
use crate::compile::compile;
use crate::cost::Tariff;
use crate::diagnose::unbuildable;
use crate::error::MatchError;
use crate::exact;
use crate::grid::{DeciGrams, Steps, Total};
use crate::model::{CostWeights, JobSet, SetProblem};
use crate::oracle::SetOracle;
use crate::prices::{Prices, by_type};
use crate::solution::{Choice, SetSolution};
use crate::thin::least_cost;

/// How much work a proof may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Search nodes; at the limit the best plan so far is returned with its bound.
    pub max_nodes: u64,
}

impl Default for Limits {
    /// Two million nodes, well under a second.
    fn default() -> Self {
        Self { max_nodes: 2_000_000 }
    }
}

/// Where a running search stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Progress {
    /// Cost of the best plan so far.
    pub cost: f64,
    /// No plan can cost less than this.
    pub bound: f64,
    /// Steps of work done: search nodes for one set, rounds for a day.
    pub steps: u64,
}

/// Plans one set and proves it.
///
/// # Examples
/// ```
/// use matching::{Limits, instance};
///
/// let problem = instance::set(3, instance::Variant::Plain);
/// let plan = matching::solve_set(&problem, Limits::default())?;
/// assert!(plan.proven);
/// for club in plan.clubs.iter().flatten() {
///     println!("head {} with {} g of tip weight", club.head, club.tip_g);
/// }
/// # Ok::<(), matching::MatchError>(())
/// ```
///
/// # Errors
/// See [`MatchError`]; clubs that cannot be built are no error but named in the solution.
pub fn solve_set(problem: &SetProblem, limits: Limits) -> Result<SetSolution, MatchError> {
    solve_set_watched(problem, limits, &mut |_| true)
}

/// As [`solve_set`], asking `go_on` now and then; when it says `false` the best plan so far is returned.
///
/// # Errors
/// As [`solve_set`].
pub fn solve_set_watched(
    problem: &SetProblem,
    limits: Limits,
    go_on: &mut dyn FnMut(Progress) -> bool,
) -> Result<SetSolution, MatchError> {
    let sets = [JobSet { clubs: problem.clubs.clone(), priority: 1.0 }];
    let compiled = compile(&sets, &problem.stock, &problem.weights)?;
    // From a selection of the parts only what all of them allow is a bound.
    let from_all = |prices: &Prices, now: Progress, go_on: &mut dyn FnMut(Progress) -> bool| {
        let all = compiled.relaxed.as_ref()?;
        let least = least_cost(all, 0, prices, &mut || go_on(now));
        Some(least.map_or(Total(0), |least| least - stock_worth(&compiled, prices)))
    };
    let unbuilt = compiled.clubs.iter().map(|c| Total::from(c.skip)).sum();
    let nothing_yet = Progress { cost: compiled.cost(unbuilt), bound: 0.0, steps: 0 };
    let at_once = from_all(&by_type(&compiled, Steps(0)), nothing_yet, go_on).unwrap_or(Total::ANY);
    let mut over = false;
    let mut watch = |s: exact::Status| {
        let bound = compiled.cost(s.bound.min(at_once));
        over = !go_on(Progress { cost: compiled.cost(s.cost), bound, steps: s.nodes });
        !over
    };
    let mut proof = exact::solve(SetOracle::new(&compiled, 0), limits.max_nodes, &mut watch);
    if proof.bound > at_once {
        // At the search's prices it is a better one, if there is still time.
        let bound = compiled.cost(at_once);
        let now = Progress { cost: compiled.cost(proof.cost), bound, steps: proof.nodes };
        let priced = if over { None } else { from_all(&proof.prices, now, go_on) };
        proof.bound = proof.bound.min(priced.map_or(at_once, Total::whole_up).max(at_once));
    }
    let plan = checked(&compiled, &sets, &problem.stock, &problem.weights, &proof.plan, proof.cost)?;
    let unbuildable = unbuildable(&sets, &problem.stock, &plan);
    let clubs = plan.into_iter().next().unwrap_or_default();
    let (shaft_range_g, shaft_range_cost) = range(&clubs, &problem.weights, 1.0);
    Ok(SetSolution {
        shaft_range_g,
        shaft_range_cost,
        clubs,
        cost: compiled.cost(proof.cost),
        bound: compiled.cost(proof.bound),
        proven: proof.bound >= proof.cost,
        nodes: proof.nodes,
        unbuildable,
    })
}

/// Range of shaft residuals of a set's built clubs, g, and what it costs.
pub(crate) fn range(clubs: &[Option<Choice>], weights: &CostWeights, priority: f64) -> (f64, f64) {
    let built = || clubs.iter().flatten().map(|c| c.shaft_residual_g);
    let (lo, hi) = built().fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), r| (lo.min(r), hi.max(r)));
    let quanta = Tariff::new(weights, priority).range(built().map(DeciGrams::of));
    ((hi - lo).max(0.0), quanta.cost(weights.quantum))
}
