//! A day's jobs on shared stock.
//!
//! Lagrangian relaxation couples the sets only through prices of parts: for given prices every set is its own small
//! problem, and the sum is a lower bound. The same prices guide "ruin and recreate" (Schrimpf et al. 2000): some clubs
//! are taken apart and put together again at the cheapest of cost and price, because a part that others would pay for is
//! worth leaving to them. Dual steps and plan improvement alternate, so that both a plan and a bound are there at any
//! time and both get better while there is time.

use crate::check::checked;
use crate::climb::stock_worth;
use crate::compile::compile;
use crate::compiled::Compiled;
use crate::diagnose::unbuildable;
use crate::dual::Dual;
use crate::error::MatchError;
use crate::grid::{DeciGrams, QUANTUM, Steps, Total};
use crate::insert::{cheapest, outside, widening};
use crate::model::DayProblem;
use crate::oracle::{SetOracle, span};
use crate::pool::{self, Pool};
use crate::prices::{Prices, by_type};
use crate::ruin::{Improver, total};
use crate::set::{Progress, range};
use crate::shortage::{crowds, moderate_skip, unavoidable};
use crate::solution::{DaySolution, JobPlan};
use crate::stockleft::StockLeft;
use crate::table::Column;
use crate::thin::least_cost;

/// Plans a day. `go_on` is asked after every small step of work (about a millisecond) and ends the search by saying
/// `false`; the clock is the caller's. A first plan is finished even if it says so at once (320 clubs: a tenth of a
/// second). The search ends by itself only when the plan is proven. The same seed and the same number of steps give the
/// same plan.
///
/// # Examples
/// ```
/// use matching::instance::{Size, Variant, day};
///
/// let problem = day(7, Size { jobs: 2, heads_per_number: 20, shafts: 60, grips: 50 }, Variant::Plain);
/// let mut steps = 0;
/// let plan = matching::solve_day(&problem, 1, &mut |_| {
///     steps += 1;
///     steps < 500
/// })?;
/// assert!(plan.bound <= plan.cost);
/// assert!(plan.unbuildable.is_empty());
/// # Ok::<(), matching::MatchError>(())
/// ```
///
/// # Errors
/// See [`MatchError`]; clubs that cannot be built are named in the solution.
pub fn solve_day(
    problem: &DayProblem,
    seed: u64,
    go_on: &mut dyn FnMut(Progress) -> bool,
) -> Result<DaySolution, MatchError> {
    let compiled = compile(&problem.sets, &problem.stock, &problem.weights)?;
    // Prices that ignore the mass are found in a hundredth of the time, and are near those that do not.
    let free = compiled.clubs.iter().any(|c| c.mass.is_some()).then(|| compiled.without_masses());
    let mut day = Day::new(&compiled, free.as_ref(), seed, go_on);
    day.run();
    let (cost, bound, rounds) = (day.improver.best_cost, day.bound().whole_up(), day.rounds);
    let bound = bound.clamp(Total(0), cost);
    let columns: Vec<Option<Column>> = day.improver.best.concat();
    let plan = checked(&compiled, &problem.sets, &problem.stock, &problem.weights, &columns, cost)?;
    let unbuildable = unbuildable(&problem.sets, &problem.stock, &plan);
    let sets = plan
        .into_iter()
        .zip(&problem.sets)
        .map(|(clubs, set)| {
            let (shaft_range_g, shaft_range_cost) = range(&clubs, &problem.weights, set.priority);
            JobPlan { clubs, shaft_range_g, shaft_range_cost }
        })
        .collect();
    Ok(DaySolution { sets, cost: compiled.cost(cost), bound: compiled.cost(bound), rounds, unbuildable })
}

/// What clubs surely left unbuilt cost, where only a selection of the parts is planned from: of parts left out there are as
/// many as anybody asks for.
fn surely(p: &Compiled) -> Total {
    p.relaxed.as_ref().map_or(Total(0), |all| unavoidable(all, &crowds(all)))
}

/// Rounds in which bound and plan get equal work; afterwards the plan gets most.
const DUAL_ROUNDS: u64 = 150;

/// Rounds from one reheating to the next and the temperature after it: first short and cool, for a good plan soon; slower
/// cooling from hotter pays once the plan is good.
fn schedule(rounds: u64) -> (u32, f64) {
    match rounds {
        0..361 => (60, 1.0),
        361..1921 => (240, 1.0),
        _ => (960, 1.5),
    }
}

/// The temperature of that table that is 1, as a share of what a built club costs on average.
const HEAT: f64 = 0.06;

/// Clubs touched by plan moves in a round, as a multiple of all clubs.
const TOUCHES: usize = 4;
/// A club that costs this many times the average is a worry.
const WORRY: i32 = 4;
/// Parts are dealt out once in this many blocks of sixteen moves.
const DEAL_EVERY: usize = 8;
/// Rounds at first in which prices ignore target masses.
const FREE_ROUNDS: u64 = 60;
/// Rounds between new short lists later on.
const RELIST_LATER: u64 = 500;
/// Rounds after which there are new short lists while the prices still move.
const RELIST: [u64; 8] = [3, 6, 10, 20, 40, 70, 100, 150];
/// The same while prices ignore target masses, which columns do not.
const RELIST_FREE: [u64; 2] = [8, 30];

struct Day<'a, 'g> {
    compiled: &'a Compiled,
    oracles: Vec<SetOracle<'a>>,
    /// The same without target masses, for the first prices.
    free: Vec<SetOracle<'a>>,
    pools: Vec<Vec<Pool>>,
    dual: Dual,
    /// The bound where only a selection of the parts is planned from.
    from_all: Option<Total>,
    improver: Improver,
    guard: Prices,
    rounds: u64,
    stopped: bool,
    go_on: &'g mut dyn FnMut(Progress) -> bool,
}

impl<'a, 'g> Day<'a, 'g> {
    fn new(p: &'a Compiled, free: Option<&'a Compiled>, seed: u64, go_on: &'g mut dyn FnMut(Progress) -> bool) -> Self {
        let contended = p.contended();
        let oracles = |p: &'a Compiled| {
            let mut oracles: Vec<SetOracle<'a>> = (0..p.sets.len()).map(|s| SetOracle::new(p, s)).collect();
            for o in &mut oracles {
                o.share(&contended);
                o.skips = o.clubs.iter().map(|c| moderate_skip(c)).collect();
            }
            oracles
        };
        let (oracles, free) = (oracles(p), free.map_or_else(Vec::new, oracles));
        let improver = Improver::new(p, &oracles, seed);
        let dual = Dual::new(p, contended);
        let surely = surely(p);
        Self {
            compiled: p,
            oracles,
            free,
            pools: Vec::new(),
            dual,
            from_all: p.relaxed.as_ref().map(|_| surely),
            improver,
            guard: by_type(p, Steps(0)),
            rounds: 0,
            stopped: false,
            go_on,
        }
    }

    fn run(&mut self) {
        // A plan first: the length of the price steps depends on what a plan costs.
        self.construct(true);
        self.deal_all();
        if let Some(all) = &self.compiled.relaxed {
            self.bound_from_all(all);
        }
        while !self.stopped && self.improver.best_cost - self.bound() >= QUANTUM.into() {
            self.rounds += 1;
            if self.rounds == FREE_ROUNDS {
                for (o, free) in self.oracles.iter_mut().zip(&self.free) {
                    o.skips.clone_from(&free.skips);
                }
                self.free.clear();
            }
            if self.rounds <= DUAL_ROUNDS || self.rounds.is_multiple_of(4) {
                self.dual_round();
            }
            let list = if self.free.is_empty() { &RELIST[..] } else { &RELIST_FREE };
            if list.contains(&self.rounds) || self.rounds.is_multiple_of(RELIST_LATER) {
                self.relist();
                if let Some(all) = &self.compiled.relaxed {
                    self.bound_from_all(all);
                }
                if self.rounds <= DUAL_ROUNDS {
                    self.construct(false);
                    self.deal_all();
                    // A plan from scratch is worth going on from only where it is nearly as good.
                    if self.improver.cost > self.improver.best_cost {
                        self.improver.back_to_best(self.compiled);
                    }
                }
            }
            let (cycle, heat) = schedule(self.rounds);
            if self.rounds.is_multiple_of(cycle.into()) {
                self.improver.back_to_best(self.compiled);
            }
            let past = u32::try_from(self.rounds % u64::from(cycle)).unwrap_or(cycle);
            let cooled = 1.0 - f64::from(past) / f64::from(cycle);
            let scale = self.improver.scale(&self.oracles);
            self.improver.heat = heat * HEAT * scale.exact() * cooled * cooled;
            self.improver.look_for_worries(scale.saturating_mul(WORRY));
            self.improve();
        }
    }

    /// No plan costs less.
    fn bound(&self) -> Total {
        self.from_all.unwrap_or(self.dual.best_bound)
    }

    /// What the sets cost at least from all parts under the best prices, as far as there is time: no set costs less than
    /// nothing.
    fn bound_from_all(&mut self, all: &Compiled) {
        let prices = self.dual.best_prices.clone();
        let mut bound = -stock_worth(self.compiled, &prices);
        for set in 0..all.sets.len() {
            if !self.ask() {
                break;
            }
            let Some(least) = least_cost(all, set, &prices, &mut || self.ask()) else { break };
            bound += least;
            self.from_all = self.from_all.max(Some(bound));
        }
    }

    fn ask(&mut self) -> bool {
        if !self.stopped {
            let (cost, bound) = (self.improver.best_cost, self.bound());
            let bound = self.compiled.cost(bound.min(cost));
            self.stopped = !(self.go_on)(Progress { cost: self.compiled.cost(cost), bound, steps: self.rounds });
        }
        !self.stopped
    }

    /// What the price steps reach for: the best plan's cost, with clubs that need not have stayed out at a moderate cost.
    /// One of them alone would make the steps a hundred times too long.
    fn target(&self) -> Total {
        let left_out = self.oracles.iter().zip(&self.improver.best).flat_map(|(o, plan)| {
            let unbuilt = o.clubs.iter().zip(plan).filter(|x| x.1.is_none());
            unbuilt.map(|(club, _)| Total::from(club.skip - moderate_skip(club)))
        });
        let mut beyond: Vec<Total> = left_out.collect();
        beyond.sort_unstable();
        let needless: Total = beyond.into_iter().skip(self.dual.surely_unbuilt()).sum();
        (self.improver.best_cost - needless).max(self.dual.best_bound + QUANTUM)
    }

    fn dual_round(&mut self) {
        let (best, compiled, rounds) = (self.improver.best_cost, self.compiled, self.rounds);
        let (from_all, target) = (self.from_all, self.target());
        let (stopped, go_on) = (&mut self.stopped, &mut self.go_on);
        let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
        self.dual.round(oracles, target, &mut |bound| {
            let (cost, bound) = (compiled.cost(best), compiled.cost(from_all.unwrap_or(bound).min(best)));
            *stopped = *stopped || !go_on(Progress { cost, bound, steps: rounds });
            !*stopped
        });
    }

    /// New short lists from the best prices.
    fn relist(&mut self) {
        self.pools.clear();
        let slack = self.improver.scale(&self.oracles);
        let mut pools = Vec::with_capacity(self.oracles.len());
        for s in 0..self.oracles.len() {
            let o = &mut self.oracles[s];
            o.price_all(&self.dual.best_prices);
            let (prices, stock) = (&self.dual.best_prices, &self.improver.left);
            pools.push((0..o.len()).map(|c| pool::list(o, c, prices, slack, stock)).collect());
            if !self.ask() {
                return;
            }
        }
        self.pools = pools;
    }

    /// A plan from scratch, set by set, guided by the best prices, from all parts. `finish`: even when time is up,
    /// because a late plan is better than none.
    fn construct(&mut self, finish: bool) {
        let x = &mut self.improver;
        x.left = StockLeft::new(self.compiled);
        x.plan.iter_mut().flatten().for_each(|x| *x = None);
        let mut order: Vec<usize> = (0..self.oracles.len()).collect();
        x.shuffle(&mut order);
        // Dearest to leave unbuilt first.
        order.sort_by_key(|&s| std::cmp::Reverse(self.oracles[s].clubs.iter().map(|c| c.skip).max()));
        for s in order {
            self.build_set(s);
            if !self.ask() && !finish {
                break;
            }
        }
        self.improver.cost = total(&self.oracles, &self.improver.plan);
        self.improver.keep_best();
    }

    /// Deals out all parts among the clubs of the plan as it stands.
    fn deal_all(&mut self) {
        self.improver.heat = 0.0;
        let (compiled, rounds, bound) = (self.compiled, self.rounds, self.bound());
        let best = self.improver.best_cost;
        let (stopped, go_on) = (&mut self.stopped, &mut self.go_on);
        self.improver.deal_all(&self.oracles, &self.dual.best_prices, &mut || {
            let (cost, bound) = (compiled.cost(best), compiled.cost(bound.min(best)));
            *stopped = *stopped || !go_on(Progress { cost, bound, steps: rounds });
            !*stopped
        });
    }

    /// Builds an empty set in its cheapest window.
    fn build_set(&mut self, s: usize) {
        let (o, x) = (&mut self.oracles[s], &mut self.improver);
        let guide = &self.dual.best_prices;
        x.left.guard(guide, &mut self.guard);
        o.price_all(&self.guard);
        let window = o.best_window().1;
        let mut order: Vec<usize> = (0..o.len()).collect();
        x.shuffle(&mut order);
        for c in order {
            let inside = |_: &[DeciGrams], i: usize| outside(window, i);
            x.plan[s][c] = cheapest(o, c, guide, &mut x.left, &mut self.guard, inside);
        }
        for c in 0..o.len() {
            if x.plan[s][c].is_none() {
                let (span, shape) = (span(&x.plan[s]), o.shape.clone());
                let charge = |levels: &[DeciGrams], i: usize| widening(&shape, span, levels[i]);
                x.plan[s][c] = cheapest(o, c, guide, &mut x.left, &mut self.guard, charge);
            }
        }
    }

    /// About as much work on the plan as a dual round has.
    fn improve(&mut self) {
        if self.pools.is_empty() {
            return;
        }
        let clubs: usize = self.oracles.iter().map(SetOracle::len).sum();
        let (mut work, mut times) = (0, 0);
        while work < TOUCHES * clubs && !self.stopped {
            let guide = &self.dual.best_prices;
            for _ in 0..16 {
                work += self.improver.step(&mut self.oracles, &self.pools, guide, &mut self.guard);
            }
            times += 1;
            if times % DEAL_EVERY == 0 {
                work += self.improver.deal_some(&self.oracles, guide);
            }
            self.ask();
        }
    }
}
