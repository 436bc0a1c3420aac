//! One set, proven.
//!
//! 1. Lagrangian relaxation of "each part at most as often as it is there": prices by subgradient steps (Held & Karp
//!    1971; step length after Polyak), each giving a lower bound; each price vector also guides a greedy plan, which is
//!    improved by taking out one or two clubs and putting them back at their cheapest.
//! 2. The range of shaft residuals is charged by windows. A window is closed when its bound reaches the best plan.
//! 3. For each window still open, prices are tightened for that window alone; then all columns whose reduced cost fits
//!    in the remaining gap are listed, and a depth-first search over clubs settles the window.
//!
//! Costs are whole quanta, so a bound less than one quantum below the best plan is a proof.

use crate::climb::{Climb, priced_stock};
use crate::compile::{Club, GRIP, HEAD, SHAFT, TIP};
use crate::grid::{FORBIDDEN, FRAC};
use crate::oracle::{SetOracle, Window};
use crate::stockleft::StockLeft;
use crate::table::{ByType, Column, by_type, pick, tip_price};

/// Outcome in quanta × FRAC.
pub(crate) struct Proof {
    pub plan: Vec<Option<Column>>,
    pub cost: i64,
    pub bound: i64,
    pub nodes: u64,
}

/// How far a search has come, for a caller that wants to stop it.
pub(crate) struct Status {
    pub cost: i64,
    pub bound: i64,
    pub nodes: u64,
}

/// Asks the caller whether to go on.
pub(crate) type Watch<'w> = dyn FnMut(Status) -> bool + 'w;

const ROOT_STEPS: usize = 60;
const WINDOW_STEPS: usize = 40;
/// Column lists shorter than this (all clubs together) are searched at once, without tightening prices first.
const FEW_COLUMNS: usize = 400;

struct Search<'a, 'w> {
    o: SetOracle<'a>,
    best: Vec<Option<Column>>,
    cost: i64,
    nodes: u64,
    max_nodes: u64,
    stopped: bool,
    bound: i64,
    watch: &'w mut Watch<'w>,
    guard: ByType,
    zero: ByType,
}

/// A column that may still be part of a better plan.
#[derive(Debug, Clone, Copy)]
struct Open {
    reduced: i32,
    shaft: u32,
    grip: u32,
    /// Head and tip weight where they can run out; otherwise filled in at the end.
    head_tip: Option<(u32, u32)>,
}

/// Finds the cheapest plan of a set and proves it, within the given number of nodes.
pub(crate) fn solve<'w>(oracle: SetOracle<'_>, max_nodes: u64, watch: &'w mut Watch<'w>) -> Proof {
    let zero = by_type(oracle.p, 0);
    let best = vec![None; oracle.len()];
    let cost = oracle.plan_cost(&best);
    let guard = zero.clone();
    let mut search =
        Search { o: oracle, best, cost, nodes: 0, max_nodes, stopped: false, bound: i64::MIN, watch, guard, zero };
    let (prices, bound) = search.root();
    search.bound = bound;
    if search.cost - bound >= i64::from(FRAC) && !search.stopped {
        search.close(&prices);
    }
    let bound = if search.stopped { search.bound } else { search.cost };
    Proof { plan: search.best, cost: search.cost, bound: whole_up(bound).min(search.cost), nodes: search.nodes }
}

/// A plan costs whole quanta, so a bound may be rounded up to one.
pub(crate) fn whole_up(bound: i64) -> i64 {
    let f = i64::from(FRAC);
    bound.div_euclid(f) * f + if bound.rem_euclid(f) == 0 { 0 } else { f }
}

impl Search<'_, '_> {
    /// Prices with the best bound found, and the bound.
    fn root(&mut self) -> (ByType, i64) {
        let mut climb = Climb::from_zero(self.o.p, 4);
        for step in 0..ROOT_STEPS {
            for c in 0..self.o.len() {
                self.o.refold(c, &climb.prices, false);
                self.o.cells_of(c, &climb.prices);
            }
            let (value, window) = self.o.best_window();
            let columns = self.o.columns(&self.o.cells_in(window), &climb.prices);
            let improved = climb.score(self.o.p, value);
            if step % 8 == 0 || (improved && step % 3 == 0) {
                let prices = climb.prices.clone();
                self.greedy(window, &prices);
            }
            if self.cost - climb.best_bound < i64::from(FRAC)
                || !climb.step(self.o.p, self.o.demand(&columns), value, self.cost)
            {
                break;
            }
            if !self.ask(climb.best_bound) {
                break;
            }
        }
        (climb.best_prices, climb.best_bound)
    }

    fn ask(&mut self, bound: i64) -> bool {
        if !self.stopped {
            let go_on = (self.watch)(Status { cost: self.cost, bound, nodes: self.nodes });
            self.stopped = !go_on || self.nodes >= self.max_nodes;
        }
        !self.stopped
    }

    /// A plan by prices, then improved by real costs.
    fn greedy(&mut self, window: Option<Window>, prices: &ByType) {
        let mut left = StockLeft::new(self.o.p);
        let mut plan = vec![None; self.o.len()];
        let mut order: Vec<usize> = (0..plan.len()).collect();
        let regret = |c: &usize| self.o.cells[*c].iter().map(|x| x.value).min().unwrap_or(0);
        order.sort_by_key(|c| std::cmp::Reverse(regret(c)));
        for c in order {
            plan[c] = self.cheapest(c, prices, &mut left, |levels, i| match window {
                Some(w) if i < w.lo || i > w.hi => FORBIDDEN / 2 + (levels[i] - levels[w.lo]).abs(),
                _ => 0,
            });
        }
        self.improve(&mut plan, &mut left);
        let cost = self.o.plan_cost(&plan);
        if cost < self.cost {
            self.cost = cost;
            self.best = plan;
        }
    }

    /// Takes the cheapest column that the stock still allows, with a surcharge by level of shaft residual.
    fn cheapest(
        &mut self,
        c: usize,
        prices: &ByType,
        left: &mut StockLeft,
        surcharge: impl Fn(&[i32], usize) -> i32,
    ) -> Option<Column> {
        left.guard(prices, &mut self.guard);
        for _ in 0..4 {
            let guard = std::mem::take(&mut self.guard);
            self.o.refold(c, &guard, false);
            self.o.cells_of(c, &guard);
            let levels = &self.o.levels;
            let cell = self.o.cells[c].iter().enumerate().filter(|(_, x)| x.value < FORBIDDEN);
            let cell = cell.min_by_key(|(i, x)| i64::from(x.value) + i64::from(surcharge(levels, *i)));
            let club = self.o.club(c);
            let found =
                cell.and_then(|(_, x)| pick(club, x.shaft as usize, x.grip as usize, &guard[HEAD], &guard[TIP]));
            self.guard = guard;
            let (_, column) = found?;
            if left.take(club, &column) {
                return Some(column);
            }
            // Only a pair of one tip weight of which a single one is left can fail.
            for tip in club.tips[column.tip as usize].uses.iter().flatten() {
                self.guard[TIP][*tip as usize] = FORBIDDEN;
            }
        }
        None
    }

    /// Takes out one club, then two, and puts them back at their cheapest, until nothing gets cheaper.
    fn improve(&mut self, plan: &mut [Option<Column>], left: &mut StockLeft) {
        let n = plan.len();
        let mut cost = self.o.plan_cost(plan);
        for _ in 0..8 {
            let before = cost;
            for a in 0..n {
                for b in a..n {
                    cost = self.reinsert(plan, left, a, b, cost);
                }
            }
            if cost == before {
                break;
            }
        }
    }

    /// Reinserts clubs `a` and `b` (in that order); keeps the result if it is cheaper.
    fn reinsert(&mut self, plan: &mut [Option<Column>], left: &mut StockLeft, a: usize, b: usize, cost: i64) -> i64 {
        let old = (plan[a], plan[b]);
        let (first, second) = if (a + b).is_multiple_of(2) { (a, b) } else { (b, a) };
        let mut out = vec![first];
        if a != b {
            out.push(second);
        }
        for &c in &out {
            if let Some(column) = plan[c].take() {
                left.put(self.o.club(c), &column);
            }
        }
        for &c in &out {
            let span = self.span(plan);
            let shape = self.o.shape.clone();
            let zero = std::mem::take(&mut self.zero);
            plan[c] = self.cheapest(c, &zero, left, |levels, i| {
                span.map_or(0, |(lo, hi)| {
                    shape.range_cost(hi.max(levels[i]) - lo.min(levels[i])) - shape.range_cost(hi - lo)
                })
            });
            self.zero = zero;
        }
        let now = self.o.plan_cost(plan);
        if now < cost {
            return now;
        }
        for &c in &out {
            if let Some(column) = plan[c].take() {
                left.put(self.o.club(c), &column);
            }
        }
        (plan[a], plan[b]) = old;
        for &c in &out {
            if let Some(column) = plan[c] {
                left.take(self.o.club(c), &column);
            }
        }
        cost
    }

    fn span(&self, plan: &[Option<Column>]) -> Option<(i32, i32)> {
        let mut span = None::<(i32, i32)>;
        for (c, column) in plan.iter().enumerate() {
            if let Some(column) = column {
                let level = self.o.level_of(c, column.shaft as usize);
                let r = self.o.levels[level];
                span = Some(span.map_or((r, r), |(lo, hi)| (lo.min(r), hi.max(r))));
            }
        }
        span
    }

    /// Goes through all windows that could hold a better plan.
    fn close(&mut self, prices: &ByType) {
        for c in 0..self.o.len() {
            self.o.refold(c, prices, false);
            self.o.cells_of(c, prices);
        }
        let worth = priced_stock(&self.o, prices);
        let mut windows: Vec<(Window, i64)> = Vec::new();
        let limit = self.cost - i64::from(FRAC) + worth;
        self.o.scan_windows(&mut |w, touching| {
            if touching <= limit {
                windows.push((w, touching));
            }
            limit
        });
        windows.sort_by_key(|(w, touching)| (*touching, w.lo, w.hi));
        for (w, touching) in windows {
            // Windows come by ascending bound, so this one's is the bound of everything still open.
            self.bound = self.bound.max((touching - worth).min(self.cost));
            if touching - worth > self.cost - i64::from(FRAC) {
                return;
            }
            self.window(w, prices);
            if !self.ask(self.bound) {
                return;
            }
        }
    }

    /// Settles one window.
    fn window(&mut self, w: Window, prices: &ByType) {
        let mut prices = prices.clone();
        let mut lists = self.open_columns(w, &prices);
        if lists.as_ref().is_some_and(|l| l.iter().map(Vec::len).sum::<usize>() > FEW_COLUMNS) {
            let mut climb = Climb::new(self.o.p, prices.clone(), 3);
            for step in 0..WINDOW_STEPS {
                let value = self.window_value(w, &climb.prices);
                climb.score(self.o.p, value);
                if self.cost - climb.best_bound < i64::from(FRAC) {
                    return;
                }
                let columns = self.o.columns(&self.o.cells_in(Some(w)), &climb.prices);
                if step % 8 == 0 {
                    let guide = climb.prices.clone();
                    self.greedy(Some(w), &guide);
                }
                if !climb.step(self.o.p, self.o.demand(&columns), value, self.cost) || !self.ask(self.bound) {
                    break;
                }
            }
            prices = climb.best_prices;
            lists = self.open_columns(w, &prices);
        }
        let Some(lists) = lists else { return };
        self.depth_first(w, &prices, lists);
    }

    /// Bound of a window under prices, before the value of the stock is taken off.
    fn window_value(&mut self, w: Window, prices: &ByType) -> i64 {
        let mut sum = i64::from(self.o.shape.range_cost(self.o.levels[w.hi] - self.o.levels[w.lo]));
        for c in 0..self.o.len() {
            self.o.refold(c, prices, false);
            self.o.cells_of(c, prices);
            let least = self.o.cells[c][w.lo..=w.hi].iter().map(|x| x.value).min().unwrap_or(FORBIDDEN);
            sum += i64::from(least.min(self.o.club(c).skip));
        }
        sum
    }

    /// For each club the columns of a window whose reduced cost fits in the gap; `None` when the window is closed.
    fn open_columns(&mut self, w: Window, prices: &ByType) -> Option<Vec<Vec<Open>>> {
        let value = self.window_value(w, prices);
        let slack = self.cost - i64::from(FRAC) + priced_stock(&self.o, prices) - value;
        if slack < 0 {
            return None;
        }
        let mut lists = Vec::with_capacity(self.o.len());
        for c in 0..self.o.len() {
            let club = self.o.club(c);
            let least = self.o.cells[c][w.lo..=w.hi].iter().map(|x| x.value).min().unwrap_or(FORBIDDEN);
            let most = i64::from(least.min(club.skip)) + slack;
            let most = most.min(i64::from(FORBIDDEN) - 1) as i32;
            let varies = self.o.varies(c);
            let mut list = Vec::new();
            for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
                let level = self.o.level_of(c, s);
                if level < w.lo || level > w.hi {
                    continue;
                }
                let own = prices[SHAFT][shaft.ty as usize];
                let row = self.o.row(c, s);
                for (g, grip) in club.cands[GRIP].iter().enumerate() {
                    let reduced = row[g] + own + prices[GRIP][grip.ty as usize];
                    if reduced > most {
                        continue;
                    }
                    let cell = Open { reduced, shaft: s as u32, grip: g as u32, head_tip: None };
                    if varies {
                        expand(club, cell, most, prices, &mut list);
                    } else {
                        list.push(cell);
                    }
                }
            }
            list.sort_by_key(|x| (x.reduced, x.shaft, x.grip, x.head_tip));
            lists.push(list);
        }
        Some(lists)
    }

    fn depth_first(&mut self, w: Window, prices: &ByType, lists: Vec<Vec<Open>>) {
        let n = lists.len();
        let mut order: Vec<usize> = (0..n).collect();
        order.sort_by_key(|&c| lists[c].len());
        let least: Vec<i64> = order
            .iter()
            .map(|&c| lists[c].first().map_or(i32::MAX, |x| x.reduced).min(self.o.club(c).skip))
            .map(i64::from)
            .collect();
        let mut rest = vec![0_i64; n + 1];
        for i in (0..n).rev() {
            rest[i] = rest[i + 1] + least[i];
        }
        let range = i64::from(self.o.shape.range_cost(self.o.levels[w.hi] - self.o.levels[w.lo]));
        let start = range - priced_stock(&self.o, prices);
        let mut dive = Dive { lists, order, rest, left: StockLeft::new(self.o.p), plan: vec![None; n] };
        self.dive(&mut dive, 0, start);
    }

    fn dive(&mut self, d: &mut Dive, depth: usize, so_far: i64) {
        if depth == d.order.len() {
            self.take_leaf(d);
            return;
        }
        let c = d.order[depth];
        let club = self.o.club(c);
        // Columns come cheapest first, so the first that does not fit ends the list.
        let fits = |reduced: i32, cost: i64, before: i64| i64::from(reduced) + before - cost <= -i64::from(FRAC);
        let before = so_far + d.rest[depth + 1];
        for i in 0..d.lists[c].len() {
            let open = d.lists[c][i];
            if !fits(open.reduced, self.cost, before) || !self.count() {
                break;
            }
            if d.take(club, &open) {
                d.plan[c] = Some(open);
                self.dive(d, depth + 1, so_far + i64::from(open.reduced));
                d.plan[c] = None;
                d.put(club, &open);
            }
        }
        if fits(club.skip, self.cost, before) && self.count() {
            self.dive(d, depth + 1, so_far + i64::from(club.skip));
        }
    }

    /// Counts a node; `false` when the search has been stopped.
    fn count(&mut self) -> bool {
        self.nodes += 1;
        if self.nodes.is_multiple_of(4096) { self.ask(self.bound) } else { !self.stopped }
    }

    fn take_leaf(&mut self, d: &Dive) {
        let plan: Vec<Option<Column>> = d
            .plan
            .iter()
            .enumerate()
            .map(|(c, open)| {
                let open = (*open)?;
                match open.head_tip {
                    Some((head, tip)) => Some(Column { head, shaft: open.shaft, grip: open.grip, tip }),
                    None => {
                        let (s, g) = (open.shaft as usize, open.grip as usize);
                        pick(self.o.club(c), s, g, &self.zero[HEAD], &self.zero[TIP]).map(|x| x.1)
                    }
                }
            })
            .collect();
        let cost = self.o.plan_cost(&plan);
        if cost < self.cost {
            self.cost = cost;
            self.best = plan;
        }
    }
}

/// State of the depth-first search over one window.
struct Dive {
    lists: Vec<Vec<Open>>,
    order: Vec<usize>,
    rest: Vec<i64>,
    left: StockLeft,
    plan: Vec<Option<Open>>,
}

impl Dive {
    fn uses(club: &Club, x: &Open) -> ([(usize, usize); 5], usize) {
        let mut out = [(0, 0); 5];
        out[0] = (SHAFT, club.cands[SHAFT][x.shaft as usize].ty as usize);
        out[1] = (GRIP, club.cands[GRIP][x.grip as usize].ty as usize);
        let mut n = 2;
        if let Some((head, tip)) = x.head_tip {
            out[n] = (HEAD, club.cands[HEAD][head as usize].ty as usize);
            n += 1;
            for t in club.tips[tip as usize].uses.iter().flatten() {
                out[n] = (TIP, *t as usize);
                n += 1;
            }
        }
        (out, n)
    }

    fn take(&mut self, club: &Club, x: &Open) -> bool {
        let (uses, n) = Self::uses(club, x);
        for (i, &(k, ty)) in uses[..n].iter().enumerate() {
            if self.left.left[k][ty] == 0 {
                for &(k, ty) in &uses[..i] {
                    self.left.left[k][ty] += 1;
                }
                return false;
            }
            self.left.left[k][ty] -= 1;
        }
        true
    }

    fn put(&mut self, club: &Club, x: &Open) {
        let (uses, n) = Self::uses(club, x);
        for &(k, ty) in &uses[..n] {
            self.left.left[k][ty] += 1;
        }
    }
}

/// Splits a cell into one column for each head and tip weight that still fits in the gap.
fn expand(club: &Club, cell: Open, most: i32, prices: &ByType, out: &mut Vec<Open>) {
    let own = prices[SHAFT][club.cands[SHAFT][cell.shaft as usize].ty as usize]
        + prices[GRIP][club.cands[GRIP][cell.grip as usize].ty as usize];
    for (h, head) in club.cands[HEAD].iter().enumerate() {
        for (t, tip) in club.tips.iter().enumerate() {
            let column = Column { head: h as u32, shaft: cell.shaft, grip: cell.grip, tip: t as u32 };
            let cost = column.cost(club);
            if cost >= FORBIDDEN {
                continue;
            }
            let reduced = cost + own + prices[HEAD][head.ty as usize] + tip_price(tip, &prices[TIP]);
            if reduced <= most {
                out.push(Open { reduced, head_tip: Some((h as u32, t as u32)), ..cell });
            }
        }
    }
}
