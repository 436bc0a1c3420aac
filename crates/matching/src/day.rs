//! A day's jobs on shared stock.
//!
//! Lagrangian relaxation couples the sets only through prices of parts: for given prices every set is its own small
//! problem, and the sum is a lower bound. The same prices guide "ruin and recreate" (Schrimpf et al. 2000): some clubs
//! are taken apart and put together again at the cheapest of cost and price, because a part that others would pay for is
//! worth leaving to them. Dual steps and plan improvement alternate, so that both a plan and a bound are there at any
//! time and both get better while there is time.

use crate::apart::apart;
use crate::check::checked;
use crate::climb::stock_worth;
use crate::compile::compile;
use crate::compiled::Compiled;
use crate::diagnose::unbuildable;
use crate::dual::Dual;
use crate::error::MatchError;
use crate::grid::{DeciGrams, FORBIDDEN, MOST_PRICE, QUANTUM, Steps, Total};
use crate::index::TIP;
use crate::insert::{cheapest, outside, widening};
use crate::model::{DayProblem, JobSet};
use crate::oracle::{SetOracle, span};
use crate::pool::{self, Pool};
use crate::prices::{Prices, by_type};
use crate::ruin::{Improver, Plan, total};
use crate::set::{Progress, range};
use crate::shortage::{crowds, moderate_skip, unavoidable};
use crate::solution::{Apart, DaySolution, JobPlan};
use crate::stockleft::StockLeft;
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
    let plans = |plan: &Plan, cost: Total| {
        let plan = checked(&compiled, &problem.sets, &problem.stock, &problem.weights, &plan.concat(), cost)?;
        let unbuildable = unbuildable(&problem.sets, &problem.stock, &plan);
        let with_range = |(clubs, set): (Vec<_>, &JobSet)| {
            let (shaft_range_g, shaft_range_cost) = range(&clubs, &problem.weights, set.priority);
            JobPlan { clubs, shaft_range_g, shaft_range_cost }
        };
        let sets: Vec<JobPlan> = plan.into_iter().zip(&problem.sets).map(with_range).collect();
        Ok::<_, MatchError>((sets, unbuildable))
    };
    let (sets, unbuildable) = plans(&day.improver.best, cost)?;
    let apart = match &day.apart {
        Some((plan, cost)) => {
            let (sets, unbuildable) = plans(plan, *cost)?;
            Some(Apart { sets, cost: compiled.cost(*cost), unbuildable })
        }
        None => None,
    };
    Ok(DaySolution { sets, cost: compiled.cost(cost), bound: compiled.cost(bound), rounds, unbuildable, apart })
}

/// The best plan that is found while `go_on` says so, what it costs, and what no plan costs less than; nothing is checked.
pub(crate) fn search(p: &Compiled, seed: u64, go_on: &mut dyn FnMut(Progress) -> bool) -> (Plan, Total, Total) {
    let mut day = Day::new(p, None, seed, go_on);
    day.run();
    let bound = day.bound().whole_up();
    (day.improver.best, day.improver.best_cost, bound)
}

/// What clubs surely left unbuilt cost, where only a selection of the parts is planned from: of parts left out there are as
/// many as anybody asks for.
fn surely(p: &Compiled) -> Total {
    p.relaxed.as_ref().map_or(Total(0), |all| unavoidable(all, &crowds(all)))
}

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
/// Chains in as many blocks of sixteen moves.
const CHAINS: usize = 6;
/// Parts are dealt out once in this many blocks of sixteen moves.
const DEAL_EVERY: usize = 8;
/// Rounds at first in which prices ignore target masses.
const FREE_ROUNDS: u64 = 8;
/// Rounds of price steps by the short lists in one round.
const LISTED_ROUNDS: u64 = 20;
/// Rounds in which a plan is made from scratch while clubs are unbuilt that need not be.
const TRIES: u64 = 60;
/// Short lists keep this many looks' worth of columns from one good look to the next, and are cut back to these.
const MOST_LOOKS: usize = 5;
const OLD_LOOKS: usize = 3;
/// Rounds between looks at all parts later on.
const LOOK_LATER: u64 = 50;
/// Rounds in which all parts are looked at while the prices still move.
const LOOKS: [u64; 22] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 60, 80];

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
    margin: Steps,
    /// The plan set by set and what it costs.
    apart: Option<(Plan, Total)>,
    /// Prices by which plans are made from scratch, and how many times they are those of the best bound.
    dear: Prices,
    dearer: f64,
    /// What each set costs under the prices last looked at.
    hard: Vec<Total>,
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
            margin: Steps(0),
            apart: None,
            dear: by_type(p, Steps(0)),
            dearer: 1.0,
            hard: Vec::new(),
            go_on,
        }
    }

    fn run(&mut self) {
        // A plan first: the length of the price steps depends on what a plan costs.
        self.construct(true);
        self.deal_all();
        self.apart();
        while !self.stopped && self.improver.best_cost - self.bound() >= QUANTUM.into() {
            self.rounds += 1;
            if self.rounds == FREE_ROUNDS && !self.free.is_empty() {
                for (o, free) in self.oracles.iter_mut().zip(&self.free) {
                    o.skips.clone_from(&free.skips);
                }
                self.free.clear();
                self.pools.clear();
            }
            let look = LOOKS.contains(&self.rounds) || self.rounds.is_multiple_of(LOOK_LATER) || self.pools.is_empty();
            if look {
                self.look();
            }
            self.dual_rounds(look);
            if !self.free.is_empty() {
                continue;
            }
            let needless = self.improver.best_unbuilt() > self.dual.surely_unbuilt();
            if (look && self.rounds <= 150) || (needless && self.rounds <= TRIES) {
                self.construct(false);
                self.deal_all();
                // A plan from scratch is worth going on from only where it is nearly as good.
                if self.improver.cost > self.improver.best_cost {
                    self.improver.back_to_best(self.compiled);
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
            self.margin = scale.quarter();
            self.improver.look_for_worries(scale.saturating_mul(WORRY));
            self.improve();
        }
    }

    /// Plans set by set, and goes on from that plan where it is the best so far. Without target masses that is part of the
    /// first plan, which is finished whatever the caller says; with them it may take seconds.
    fn apart(&mut self) {
        let masses = self.compiled.clubs.iter().any(|club| club.mass.is_some());
        let Some(plan) = apart(self.compiled, &mut || !masses || self.ask()) else { return };
        let cost = total(&self.oracles, &plan);
        if cost < self.improver.best_cost {
            self.improver.take_up(self.compiled, &plan, cost);
        }
        self.apart = Some((plan, cost));
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

    fn dual_rounds(&mut self, look: bool) {
        let target = self.target();
        if look && !self.pools.is_empty() {
            let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
            self.dual.rescale(oracles, &self.pools, &self.improver.left);
        }
        for _ in 0..LISTED_ROUNDS {
            if self.pools.is_empty() || !self.ask() {
                return;
            }
            let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
            self.dual.round(oracles, &self.pools, &self.improver.left, target);
        }
    }

    /// Works on prices and bound with the tables of all parts.
    fn with_all_parts<R>(
        &mut self,
        work: impl FnOnce(&mut Dual, &mut [SetOracle<'a>], &mut dyn FnMut(Total) -> bool) -> R,
    ) -> R {
        let (best, compiled, rounds, from_all) = (self.improver.best_cost, self.compiled, self.rounds, self.from_all);
        let (stopped, go_on) = (&mut self.stopped, &mut self.go_on);
        let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
        work(&mut self.dual, oracles, &mut |bound| {
            let (cost, bound) = (compiled.cost(best), compiled.cost(from_all.unwrap_or(bound).min(best)));
            *stopped = *stopped || !go_on(Progress { cost, bound, steps: rounds });
            !*stopped
        })
    }

    /// A look at all parts: a bound, and new short lists.
    fn look(&mut self) {
        let (target, compiled) = (self.target(), self.compiled);
        let whole = self.with_all_parts(|dual, oracles, go_on| {
            dual.look(oracles, target, go_on)
                && (!dual.first_by_points(oracles, compiled, go_on) || dual.look(oracles, target, go_on))
        });
        if !whole {
            return;
        }
        let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
        self.hard = oracles.iter().map(|o| o.cheapest_window().0).collect();
        self.list();
        if let Some(all) = &self.compiled.relaxed {
            self.bound_from_all(all);
        }
    }

    /// New short lists under the prices last looked at, for which the tables are up to date. Where these did not better the
    /// bound, what was listed before stays, so that the next steps neither take what was cheap there for all there is, nor
    /// what is cheap here.
    fn list(&mut self) {
        let slack = self.improver.scale(&self.oracles);
        let oracles = if self.free.is_empty() { &mut self.oracles } else { &mut self.free };
        let (prices, guide, stock) = (self.dual.looked(), &self.dual.best_prices, &self.improver.left);
        let room = pool::columns(self.compiled.clubs.len());
        // Where tip weights are dear, the best of each club without any.
        let dear = prices[TIP].iter().any(|&price| price > Steps(0));
        let mut without = prices.clone();
        without[TIP].iter_mut().for_each(|price| *price = FORBIDDEN);
        self.pools.resize_with(oracles.len(), Vec::new);
        let (cost, bound) = (self.improver.best_cost, self.from_all.unwrap_or(self.dual.best_bound));
        let now =
            Progress { cost: self.compiled.cost(cost), bound: self.compiled.cost(bound.min(cost)), steps: self.rounds };
        for (o, pools) in oracles.iter_mut().zip(&mut self.pools) {
            self.stopped = self.stopped || !(self.go_on)(now);
            if self.stopped {
                return;
            }
            pools.resize_with(o.len(), Pool::default);
            for (c, old) in pools.iter_mut().enumerate() {
                let mut found = pool::list(o, c, prices, slack, room);
                if dear {
                    o.price(c, &without);
                    for (level, more) in found.iter_mut().zip(pool::list(o, c, &without, slack, room / 8)) {
                        level.extend(more);
                    }
                }
                let kept = if self.dual.better || old.len() > MOST_LOOKS * room {
                    old.near(guide, slack.half(), OLD_LOOKS * room)
                } else {
                    std::mem::take(old)
                };
                *old = Pool::new(found, &kept, guide, stock);
            }
        }
    }

    /// A plan from scratch, set by set, guided by the best prices, from all parts. `finish`: even when time is up,
    /// because a late plan is better than none.
    fn construct(&mut self, finish: bool) {
        self.dear.clone_from(&self.dual.best_prices);
        if self.dearer > 1.0 {
            self.dear
                .values_mut()
                .flatten()
                .for_each(|x| *x = Steps::half_up((x.exact() * self.dearer).min(MOST_PRICE)));
        }
        let x = &mut self.improver;
        x.left = StockLeft::new(self.compiled);
        x.plan.iter_mut().flatten().for_each(|x| *x = None);
        let mut order: Vec<usize> = (0..self.oracles.len()).collect();
        x.shuffle(&mut order);
        // Dearest to leave unbuilt first; and every other time those that are dear whatever they take, because what is left in
        // the end does for the others only.
        let hard = |s: usize| if self.rounds.is_multiple_of(2) { self.hard.get(s).copied() } else { None };
        order.sort_by_key(|&s| std::cmp::Reverse((self.oracles[s].clubs.iter().map(|c| c.skip).max(), hard(s))));
        for s in order {
            self.build_set(s);
            if !self.ask() && !finish {
                break;
            }
        }
        self.improver.cost = total(&self.oracles, &self.improver.plan);
        // Where clubs found nothing in the end, those before them are to take less the next time.
        let unbuilt = self.improver.plan.iter().flatten().filter(|x| x.is_none()).count();
        let more = unbuilt > self.dual.surely_unbuilt();
        self.dearer = if more { (self.dearer * 1.15).min(3.0) } else { (self.dearer / 1.05).max(1.0) };
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
        let guide = &self.dear;
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
            let margin = self.margin;
            for _ in 0..CHAINS {
                let first = self.improver.begin();
                let margin = if self.improver.plan[first.0][first.1].is_none() { Steps(0) } else { margin };
                work += self.improver.chain(&mut self.oracles, &self.pools, first, margin, guide, &mut self.guard);
            }
            times += 1;
            if times % DEAL_EVERY == 0 {
                work += self.improver.deal_some(&self.oracles, guide);
            }
            self.ask();
        }
    }
}
