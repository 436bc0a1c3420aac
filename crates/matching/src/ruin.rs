//! Ruin and recreate on a day's plan.
//!
//! Some clubs are taken apart and built again from their short lists, cheapest by cost and price. Whether the outcome
//! stays is decided by simulated annealing on the real cost, reheated now and then from the best plan.

use crate::compiled::Compiled;
use crate::grid::{FORBIDDEN, Steps, Total};
use crate::index::Place;
use crate::insert::widening;
use crate::oracle::{Cell, SetOracle, Window, span};
use crate::pool::{Pool, Priced};
use crate::rng::Rng;
use crate::stockleft::StockLeft;
use crate::table::Column;

/// A plan: sets, clubs.
pub(crate) type Plan = Vec<Vec<Option<Column>>>;

/// A plan being improved, and the best so far.
pub(crate) struct Improver {
    pub plan: Plan,
    pub left: StockLeft,
    pub cost: Total,
    pub best: Plan,
    pub best_cost: Total,
    /// Temperature, in the units of cost.
    pub heat: f64,
    pub rng: Rng,
}

/// One in so many columns is passed over.
const BLINK: usize = 20;

impl Improver {
    pub fn new(p: &Compiled, oracles: &[SetOracle<'_>], seed: u64) -> Self {
        let plan: Plan = oracles.iter().map(|o| vec![None; o.len()]).collect();
        let cost = total(oracles, &plan);
        let left = StockLeft::new(p);
        Self { best: plan.clone(), plan, left, cost, best_cost: cost, heat: 0.0, rng: Rng::new(seed) }
    }

    /// Starts over from the best plan.
    pub fn back_to_best(&mut self, p: &Compiled) {
        self.plan.clone_from(&self.best);
        self.cost = self.best_cost;
        self.left = StockLeft::new(p);
        self.plan.iter().flatten().flatten().for_each(|x| {
            self.left.take(x);
        });
    }

    pub fn keep_best(&mut self) {
        if self.cost < self.best_cost {
            self.best_cost = self.cost;
            self.best.clone_from(&self.plan);
        }
    }

    /// One move; says how many clubs it touched.
    pub fn step(&mut self, oracles: &mut [SetOracle<'_>], pools: &[Vec<Pool>]) -> usize {
        let mut targets = self.targets();
        let mut touched: Vec<usize> = targets.iter().map(|t| t.0).collect();
        touched.sort_unstable();
        touched.dedup();
        // Clubs of these sets that are unbuilt get their chance too.
        for &s in &touched {
            let unbuilt = (0..self.plan[s].len()).filter(|&c| self.plan[s][c].is_none());
            let more: Vec<_> = unbuilt.map(|c| (s, c)).filter(|t| !targets.contains(t)).collect();
            targets.extend(more);
        }
        let before: Total = touched.iter().map(|&s| oracles[s].plan_cost(&self.plan[s])).sum();
        let old: Vec<_> = targets.iter().map(|&(s, c)| self.plan[s][c].take()).collect();
        old.iter().flatten().for_each(|x| self.left.put(x));
        for &s in &touched {
            if self.plan[s].iter().all(Option::is_none) {
                self.rebuild_set(s, &mut oracles[s], &pools[s]);
            }
        }
        for &(s, c) in &targets {
            if self.plan[s][c].is_none() {
                self.plan[s][c] = self.insert(&oracles[s], s, c, &pools[s][c]);
            }
        }
        let after: Total = touched.iter().map(|&s| oracles[s].plan_cost(&self.plan[s])).sum();
        let allowed = self.heat * -(1.0 - self.rng.uniform(0.0, 1.0)).ln();
        if (after - before).exact() <= allowed {
            self.cost += after - before;
            self.keep_best();
        } else {
            for &(s, c) in &targets {
                self.plan[s][c].take().iter().for_each(|x| self.left.put(x));
            }
            for (&(s, c), old) in targets.iter().zip(old) {
                old.iter().for_each(|x| {
                    self.left.take(x);
                });
                self.plan[s][c] = old;
            }
        }
        targets.len()
    }

    /// Puts a club into its set.
    fn insert(&mut self, o: &SetOracle<'_>, s: usize, c: usize, pool: &Pool) -> Option<Column> {
        let span = span(&self.plan[s]);
        let mut best: Option<(Steps, Column)> = None;
        let mut limit = o.clubs[c].skip;
        for &level in &pool.order {
            let list = &pool.levels[level];
            if list.least().is_none_or(|least| least >= limit) {
                break;
            }
            let wider = widening(&o.shape, span, o.levels[level]);
            if let Some(found) = list.first(limit - wider, &self.left, &mut self.rng, BLINK) {
                limit = found.reduced + wider;
                best = Some((limit, found.column));
            }
        }
        let column = best?.1;
        self.left.take(&column).then_some(column)
    }

    /// Builds an empty set inside its cheapest window.
    fn rebuild_set(&mut self, s: usize, o: &mut SetOracle<'_>, pools: &[Pool]) {
        for (c, pool) in pools.iter().enumerate() {
            for (level, list) in pool.levels.iter().enumerate() {
                let found = list.first(FORBIDDEN, &self.left, &mut self.rng, BLINK);
                o.cells[c][level] = Cell { value: found.map_or(FORBIDDEN, |x| x.reduced), shaft: Place::of(0) };
            }
        }
        let Some(window) = o.best_window().1 else { return };
        let mut order: Vec<usize> = (0..o.len()).collect();
        self.shuffle(&mut order);
        for c in order {
            let inside = self.cheapest_in(window, &pools[c]).filter(|x| x.reduced < o.clubs[c].skip);
            if let Some(x) = inside {
                self.plan[s][c] = self.left.take(&x.column).then_some(x.column);
            }
        }
    }

    fn cheapest_in(&mut self, w: Window, pool: &Pool) -> Option<Priced> {
        let mut best: Option<Priced> = None;
        for list in &pool.levels[w.lo..=w.hi] {
            let limit = best.map_or(FORBIDDEN, |b| b.reduced);
            best = list.first(limit, &self.left, &mut self.rng, BLINK).or(best);
        }
        best
    }

    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for i in (1..list.len()).rev() {
            list.swap(i, self.rng.below(i + 1));
        }
    }

    /// Clubs to take apart: a whole set or two, clubs of one position in several sets (they vie for the same heads), or some
    /// clubs of a few sets.
    fn targets(&mut self) -> Vec<(usize, usize)> {
        let sets = self.plan.len();
        let set = self.rng.below(sets);
        let mut out: Vec<(usize, usize)> = Vec::new();
        match self.rng.below(4) {
            0 => {
                out.extend((0..self.plan[set].len()).map(|c| (set, c)));
                // Two sets change places in the range of shafts only when both are taken apart.
                if self.rng.below(4) == 0 {
                    let other = self.rng.below(sets);
                    out.extend((0..self.plan[other].len()).map(|c| (other, c)));
                }
            }
            1 => {
                let c = self.rng.below(self.plan[set].len());
                for _ in 0..2 + self.rng.below(4) {
                    out.push((self.rng.below(sets), c));
                }
            }
            2 => {
                let other = self.rng.below(sets);
                for _ in 0..2 + self.rng.below(5) {
                    let s = if self.rng.below(2) == 0 { set } else { other };
                    out.push((s, self.rng.below(self.plan[s].len())));
                }
            }
            _ => {
                for _ in 0..2 + self.rng.below(5) {
                    let s = self.rng.below(sets);
                    out.push((s, self.rng.below(self.plan[s].len())));
                }
            }
        }
        out.retain(|&(s, c)| c < self.plan[s].len());
        out.sort_unstable();
        out.dedup();
        self.shuffle(&mut out);
        out
    }
}

/// Cost of a whole plan.
pub(crate) fn total(oracles: &[SetOracle<'_>], plan: &Plan) -> Total {
    oracles.iter().zip(plan).map(|(o, x)| o.plan_cost(x)).sum()
}
