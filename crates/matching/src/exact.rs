//! One set, proven.
//!
//! 1. Lagrangian relaxation of "each part at most as often as it is there": prices by subgradient steps (Held & Karp
//!    1971; step length after Polyak), each giving a lower bound; each price vector also guides a greedy plan, which is
//!    improved by taking out one or two clubs and putting them back at their cheapest.
//! 2. The range of shaft residuals is charged by windows. A window is closed when its bound reaches the best plan;
//!    prices are steered toward the windows still open, one at a time.
//! 3. A window that resists is branched on, with candidates taken out by reduced cost at every node; small nodes are
//!    finished by depth-first search over the few columns left.
//!
//! Costs are whole quanta, so a bound less than one quantum below the best plan is a proof.

use crate::climb::Climb;
use crate::grid::{DeciGrams, QUANTUM, Steps, Total};
use crate::insert::{cheapest, outside, widening};
use crate::oracle::{SetOracle, Window, span};
use crate::prices::{Prices, by_type};
use crate::stockleft::StockLeft;
use crate::table::Column;

/// Outcome.
pub(crate) struct Proof {
    pub plan: Vec<Option<Column>>,
    pub cost: Total,
    pub bound: Total,
    pub nodes: u64,
    /// Prices of the best bound before any branching.
    pub prices: Prices,
}

/// How far a search has come, for a caller that wants to stop it.
pub(crate) struct Status {
    pub cost: Total,
    pub bound: Total,
    pub nodes: u64,
}

/// Asks the caller whether to go on.
pub(crate) type Watch<'w> = dyn FnMut(Status) -> bool + 'w;

const ROOT_STEPS: usize = 60;

pub(crate) struct Search<'a, 'w> {
    pub(crate) o: SetOracle<'a>,
    pub(crate) best: Vec<Option<Column>>,
    pub(crate) cost: Total,
    pub(crate) nodes: u64,
    pub(crate) max_nodes: u64,
    pub(crate) stopped: bool,
    pub(crate) bound: Total,
    pub(crate) watch: &'w mut Watch<'w>,
    pub(crate) guard: Prices,
    pub(crate) zero: Prices,
}

/// Finds the cheapest plan of a set and proves it, within the given number of nodes.
pub(crate) fn solve<'w>(oracle: SetOracle<'_>, max_nodes: u64, watch: &'w mut Watch<'w>) -> Proof {
    let zero = by_type(oracle.p, Steps(0));
    let best = vec![None; oracle.len()];
    let cost = oracle.plan_cost(&best);
    let guard = zero.clone();
    let mut search = Search {
        o: oracle,
        best,
        cost,
        nodes: 0,
        max_nodes,
        stopped: false,
        bound: Total::UNKNOWN,
        watch,
        guard,
        zero,
    };
    let (prices, bound) = search.root();
    search.bound = bound;
    if search.cost - bound >= QUANTUM.into() && !search.stopped {
        search.close(&prices);
    }
    let bound = if search.stopped { search.bound } else { search.cost };
    // A plan costs whole quanta, so a bound may be rounded up to one.
    let bound = bound.whole_up().min(search.cost);
    Proof { plan: search.best, cost: search.cost, bound, nodes: search.nodes, prices }
}

impl Search<'_, '_> {
    /// Prices with the best bound found, and the bound.
    fn root(&mut self) -> (Prices, Total) {
        let mut climb = Climb::new(self.o.contended(), self.zero.clone(), 4);
        let mut demand = Vec::new();
        for step in 0..ROOT_STEPS {
            self.o.price_all(&climb.prices);
            let (value, window) = self.o.best_window();
            let cells = self.o.cells_in(window);
            demand.clear();
            self.o.demand(&cells, &climb.prices, &mut demand);
            climb.score(value);
            self.bound = climb.best_bound;
            if step % 16 == 0 {
                self.greedy(window, &climb.prices);
            }
            if self.cost - climb.best_bound < QUANTUM.into() || !climb.step(&demand, value, self.cost) {
                break;
            }
            if !self.ask(climb.best_bound) {
                break;
            }
        }
        (climb.best_prices, climb.best_bound)
    }

    pub(crate) fn ask(&mut self, bound: Total) -> bool {
        if !self.stopped {
            // Nothing costs less than nothing.
            let go_on = (self.watch)(Status { cost: self.cost, bound: bound.max(Total(0)), nodes: self.nodes });
            self.stopped = !go_on || self.nodes >= self.max_nodes;
        }
        !self.stopped
    }

    /// A plan by prices, then improved by real costs.
    pub(crate) fn greedy(&mut self, window: Option<Window>, prices: &Prices) {
        let mut left = StockLeft::new(self.o.p);
        let mut plan = vec![None; self.o.len()];
        let mut order: Vec<usize> = (0..plan.len()).collect();
        // A club that is dear even at its cheapest chooses before those that still find something later.
        let regret = |c: &usize| self.o.cells[*c].iter().map(|x| x.value).min().unwrap_or_default();
        order.sort_by_key(|c| std::cmp::Reverse(regret(c)));
        for c in order {
            let outside = |_: &[DeciGrams], i: usize| outside(window, i);
            plan[c] = cheapest(&mut self.o, c, prices, &mut left, &mut self.guard, outside);
        }
        // A club for which the window has nothing left goes outside, whatever it costs, rather than wait for improvement.
        for c in 0..plan.len() {
            if plan[c].is_none() {
                plan[c] = self.widened(&plan, c, &mut left);
            }
        }
        self.improve(&mut plan, &mut left);
        self.offer(plan);
    }

    /// Keeps a plan if it is the cheapest so far.
    pub(crate) fn offer(&mut self, plan: Vec<Option<Column>>) {
        let cost = self.o.plan_cost(&plan);
        if cost < self.cost {
            self.cost = cost;
            self.best = plan;
        }
    }

    /// Takes out one club, then two, and puts them back at their cheapest, until nothing gets cheaper or the time is over.
    fn improve(&mut self, plan: &mut [Option<Column>], left: &mut StockLeft) {
        let n = plan.len();
        let mut cost = self.o.plan_cost(plan);
        for _ in 0..8 {
            let before = cost;
            for a in 0..n {
                for b in a..n {
                    if !self.ask(self.bound) {
                        return;
                    }
                    cost = self.reinsert(plan, left, a, b, cost);
                }
            }
            if cost == before {
                break;
            }
        }
    }

    /// A club's cheapest column in a plan without it, what it adds to the range of the shafts counted.
    fn widened(&mut self, plan: &[Option<Column>], c: usize, left: &mut StockLeft) -> Option<Column> {
        let (span, shape) = (span(plan), self.o.shape.clone());
        let widening = |levels: &[DeciGrams], i: usize| widening(&shape, span, levels[i]);
        cheapest(&mut self.o, c, &self.zero, left, &mut self.guard, widening)
    }

    /// Reinserts clubs `a` and `b` (in that order); keeps the result if it is cheaper.
    fn reinsert(
        &mut self,
        plan: &mut [Option<Column>],
        left: &mut StockLeft,
        a: usize,
        b: usize,
        cost: Total,
    ) -> Total {
        let old = (plan[a], plan[b]);
        let (first, second) = if (a + b).is_multiple_of(2) { (a, b) } else { (b, a) };
        let mut out = vec![first];
        if a != b {
            out.push(second);
        }
        for &c in &out {
            if let Some(column) = plan[c].take() {
                left.put(&column);
            }
        }
        for &c in &out {
            plan[c] = self.widened(plan, c, left);
        }
        let now = self.o.plan_cost(plan);
        if now < cost {
            return now;
        }
        for &c in &out {
            if let Some(column) = plan[c].take() {
                left.put(&column);
            }
        }
        (plan[a], plan[b]) = old;
        for &c in &out {
            if let Some(column) = plan[c] {
                left.take(&column);
            }
        }
        cost
    }
}
