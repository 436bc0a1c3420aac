//! Ruin and recreate on a day's plan.
//!
//! Some clubs are taken apart and built again from their short lists, cheapest by cost and price. Whether the outcome
//! stays is decided by simulated annealing on the real cost, reheated now and then from the best plan.

use crate::compiled::Compiled;
use crate::grid::{DeciGrams, FORBIDDEN, QUANTUM, Steps, Total};
use crate::index::{GRIP, HEAD, MAIN, PerType, Place, SHAFT};
use crate::insert::{cheapest, widening};
use crate::oracle::{Cell, SetOracle, Window, span};
use crate::pool::{Pool, Priced};
use crate::prices::Prices;
use crate::rng::Rng;
use crate::stockleft::StockLeft;
use crate::table::Column;

/// A plan: sets, clubs.
pub(crate) type Plan = Vec<Vec<Option<Column>>>;

/// Groups of clubs, each club by its set and its place there.
type Groups = Vec<Vec<(usize, usize)>>;

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
    /// Clubs that vie for the same heads, and the group of each club.
    rivals: Groups,
    group: Vec<Vec<usize>>,
    /// Clubs that are unbuilt, or far dearer than others.
    worries: Vec<(usize, usize)>,
}

/// Clubs that parts are dealt out to at once.
const DEALT: usize = 24;
/// A club that was unbuilt looks at all parts once in this many tries, and otherwise only at its lists.
pub(crate) const RETRY: usize = 2;
/// One in so many columns is passed over.
pub(crate) const BLINK: usize = 20;

impl Improver {
    pub fn new(p: &Compiled, oracles: &[SetOracle<'_>], seed: u64) -> Self {
        let plan: Plan = oracles.iter().map(|o| vec![None; o.len()]).collect();
        let cost = total(oracles, &plan);
        let left = StockLeft::new(p);
        let (rivals, group) = rivals(oracles, p.types[HEAD].len());
        let rng = Rng::new(seed);
        Self {
            best: plan.clone(),
            plan,
            left,
            cost,
            best_cost: cost,
            heat: 0.0,
            rng,
            rivals,
            group,
            worries: Vec::new(),
        }
    }

    /// What a built club of the best plan costs on average, a quantum at least: what is dear and what is cheap is held
    /// against that.
    pub fn scale(&self, oracles: &[SetOracle<'_>]) -> Steps {
        let clubs = oracles.iter().zip(&self.best).flat_map(|(o, plan)| o.clubs.iter().zip(plan));
        let skips = clubs.filter(|x| x.1.is_none()).map(|x| Total::from(x.0.skip)).sum::<Total>();
        let built = self.best.iter().flatten().flatten().count();
        (self.best_cost - skips).share(built).max(QUANTUM)
    }

    /// Notes which clubs are unbuilt, or cost more than so much.
    pub fn look_for_worries(&mut self, dear: Steps) {
        self.worries.clear();
        for (s, plan) in self.plan.iter().enumerate() {
            let worry = |x: &Option<Column>| x.is_none_or(|x| x.cost > dear);
            self.worries.extend(plan.iter().enumerate().filter(|x| worry(x.1)).map(|(c, _)| (s, c)));
        }
    }

    /// Clubs that the best plan leaves unbuilt.
    pub fn best_unbuilt(&self) -> usize {
        self.best.iter().flatten().filter(|x| x.is_none()).count()
    }

    /// A club to begin a chain with: mostly one that is a worry, while there are any.
    pub fn begin(&mut self) -> (usize, usize) {
        if !self.worries.is_empty() && self.rng.below(2) == 0 {
            let (s, c) = self.worries[self.rng.below(self.worries.len())];
            return (s, c);
        }
        loop {
            let s = self.rng.below(self.plan.len());
            if !self.plan[s].is_empty() {
                return (s, self.rng.below(self.plan[s].len()));
            }
        }
    }

    /// Deals out parts of one kind among clubs drawn at random; how many.
    pub fn deal_some(&mut self, oracles: &[SetOracle<'_>], prices: &Prices) -> usize {
        let kind = MAIN[self.rng.below(MAIN.len())];
        let mut clubs: Vec<(usize, usize)> = if kind == HEAD {
            let group = self.rng.below(self.rivals.len());
            self.rivals[group].clone()
        } else {
            let (sets, several) = (self.plan.len(), 1 + self.rng.below(4));
            let mut drawn: Vec<usize> = (0..several).map(|_| self.rng.below(sets)).collect();
            drawn.sort_unstable();
            drawn.dedup();
            drawn.into_iter().flat_map(|s| (0..self.plan[s].len()).map(move |c| (s, c))).collect()
        };
        self.shuffle(&mut clubs);
        clubs.truncate(DEALT);
        self.deal(oracles, kind, &clubs, prices);
        clubs.len()
    }

    /// Deals out heads among all clubs of each group, then grips and shafts among neighbouring sets.
    pub fn deal_all(&mut self, oracles: &[SetOracle<'_>], prices: &Prices, go_on: &mut dyn FnMut() -> bool) {
        for group in 0..self.rivals.len() {
            for from in (0..self.rivals[group].len()).step_by(2 * DEALT) {
                let clubs: Vec<_> = self.rivals[group].iter().skip(from).take(2 * DEALT).copied().collect();
                self.deal(oracles, HEAD, &clubs, prices);
            }
            if !go_on() {
                return;
            }
        }
        let all: Vec<(usize, usize)> =
            self.plan.iter().enumerate().flat_map(|(s, plan)| (0..plan.len()).map(move |c| (s, c))).collect();
        for kind in [GRIP, SHAFT] {
            for clubs in all.chunks(DEALT) {
                self.deal(oracles, kind, clubs, prices);
                if !go_on() {
                    return;
                }
            }
        }
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
    pub fn step(
        &mut self,
        oracles: &mut [SetOracle<'_>],
        pools: &[Vec<Pool>],
        guide: &Prices,
        guard: &mut Prices,
    ) -> usize {
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
        for (&(s, c), old) in targets.iter().zip(&old) {
            if self.plan[s][c].is_none() {
                self.plan[s][c] = self.insert(&oracles[s], s, c, &pools[s][c]);
            }
            // Who had parts and finds none in its lists looks at all; who had none, now and then.
            if self.plan[s][c].is_none() && (old.is_some() || self.rng.below(RETRY) == 0) {
                let (span, shape) = (span(&self.plan[s]), oracles[s].shape.clone());
                let wider = |levels: &[DeciGrams], i: usize| widening(&shape, span, levels[i]);
                self.plan[s][c] = cheapest(&mut oracles[s], c, guide, &mut self.left, guard, wider);
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
        let column = self.in_stock(o, s, c, pool)?.column;
        self.left.take(&column).then_some(column)
    }

    /// Builds an empty set inside its cheapest window.
    fn rebuild_set(&mut self, s: usize, o: &mut SetOracle<'_>, pools: &[Pool]) {
        for (c, pool) in pools.iter().enumerate() {
            for level in 0..pool.levels() {
                let found = pool.level(level).first(FORBIDDEN, &self.left, &mut self.rng, BLINK);
                o.cells[c][level] =
                    Cell { value: found.map_or(FORBIDDEN, |x| x.reduced), shaft: Place::of(0), exact: true };
            }
        }
        let Some(window) = o.cheapest_window().1 else { return };
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
        for level in w.lo..=w.hi {
            let limit = best.map_or(FORBIDDEN, |b| b.reduced);
            best = pool.level(level).first(limit, &self.left, &mut self.rng, BLINK).or(best);
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
        if !self.worries.is_empty() && self.rng.below(3) == 0 {
            let (s, c) = self.worries[self.rng.below(self.worries.len())];
            let group = self.group[s][c];
            for _ in 0..1 + self.rng.below(4) {
                out.push(if self.rng.below(2) == 0 {
                    self.rivals[group][self.rng.below(self.rivals[group].len())]
                } else {
                    let s = self.rng.below(sets);
                    (s, self.rng.below(self.plan[s].len()))
                });
            }
            out.retain(|&(s, c)| c < self.plan[s].len());
            out.push((s, c));
            out.sort_unstable();
            out.dedup();
            self.shuffle(&mut out);
            return out;
        }
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

/// Clubs by the heads that they list, directly or by way of others; and the group of each.
fn rivals(oracles: &[SetOracle<'_>], heads: usize) -> (Groups, Vec<Vec<usize>>) {
    let mut group_of: PerType<Option<usize>> = PerType::new(heads, None);
    let mut groups: Groups = Vec::new();
    for (s, o) in oracles.iter().enumerate() {
        for (c, club) in o.clubs.iter().enumerate() {
            let mut met: Vec<usize> = club.cands[HEAD].iter().filter_map(|x| group_of[x.ty]).collect();
            met.sort_unstable();
            met.dedup();
            let own = met.first().copied().unwrap_or(groups.len());
            if own == groups.len() {
                groups.push(Vec::new());
            }
            for &other in met.iter().skip(1) {
                let moved = std::mem::take(&mut groups[other]);
                groups[own].extend(moved);
                group_of.iter_mut().filter(|g| **g == Some(other)).for_each(|g| *g = Some(own));
            }
            groups[own].push((s, c));
            club.cands[HEAD].iter().for_each(|x| group_of[x.ty] = Some(own));
        }
    }
    groups.retain(|group| !group.is_empty());
    let mut group: Vec<Vec<usize>> = oracles.iter().map(|o| vec![0; o.len()]).collect();
    for (g, clubs) in groups.iter().enumerate() {
        clubs.iter().for_each(|&(s, c)| group[s][c] = g);
    }
    (groups, group)
}

/// Cost of a whole plan.
pub(crate) fn total(oracles: &[SetOracle<'_>], plan: &Plan) -> Total {
    oracles.iter().zip(plan).map(|(o, x)| o.plan_cost(x)).sum()
}
