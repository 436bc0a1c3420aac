//! A club put in where its parts are taken: those who have them change theirs, and so on.
//!
//! Where parts are scarce a club finds nothing left, or nothing good, and no few clubs taken apart at random free just what
//! it wants. So it takes the column that it would like by cost and price, whoever has the parts; the clubs that lose them are
//! put together again in the same way, until one finds all that it wants in stock or the chain is long enough (ejection chains: Glover, *Discrete
//! Applied Mathematics* 65, 1996). The chain stays or is undone as a whole. It goes through all kinds of parts, and across
//! jobs.

use std::collections::VecDeque;

use crate::error::PartKind;
use crate::grid::{DeciGrams, Steps, Total};
use crate::index::Ty;
use crate::insert::{cheapest, widening};
use crate::oracle::{SetOracle, span};
use crate::pool::{Pool, Priced};
use crate::prices::Prices;
use crate::ruin::{BLINK, Improver, RETRY};
use crate::table::Column;

/// Clubs after which a chain makes do with what is in stock.
const LONGEST: usize = 10;
/// Clubs that have a part that is wanted, of which the one that can do without it most cheaply gives it up.
const ASKED: usize = 6;

/// What a chain has touched so far.
#[derive(Default)]
struct Links {
    /// Clubs and what they had.
    clubs: Vec<(usize, usize, Option<Column>)>,
    /// Sets and what they cost.
    sets: Vec<(usize, Total)>,
    queue: VecDeque<(usize, usize)>,
}

impl Improver {
    /// One chain from a club; how many clubs it touched. `margin` is how much cheaper than what is in stock a column must be,
    /// for others to be asked for its parts.
    pub fn chain(
        &mut self,
        oracles: &mut [SetOracle<'_>],
        pools: &[Vec<Pool>],
        first: (usize, usize),
        margin: Steps,
        guide: &Prices,
        guard: &mut Prices,
    ) -> usize {
        let mut links = Links::default();
        self.take_out(oracles, first, &mut links);
        while let Some((s, c)) = links.queue.pop_front() {
            let (o, pool) = (&oracles[s], &pools[s][c]);
            let found = self.in_stock(o, s, c, pool);
            let most = found.map_or(o.clubs[c].skip, |x| x.reduced);
            let wanted = if links.clubs.len() < LONGEST { self.wanted(o, s, pool, most - margin) } else { None };
            let column = match wanted {
                Some(wanted) if self.free(oracles, pools, &wanted, &mut links) => Some(wanted),
                _ => found.map(|x| x.column),
            };
            // What was freed in vain may be in the way of nothing: it is put in again all the same.
            self.plan[s][c] = column.filter(|x| self.left.take(x));
            if self.plan[s][c].is_none() && (links.clubs.len() > 1 || self.rng.below(RETRY) == 0) {
                let (span, shape) = (span(&self.plan[s]), oracles[s].shape.clone());
                let wider = |levels: &[DeciGrams], i: usize| widening(&shape, span, levels[i]);
                self.plan[s][c] = cheapest(&mut oracles[s], c, guide, &mut self.left, guard, wider);
            }
        }
        let after: Total = links.sets.iter().map(|&(s, _)| oracles[s].plan_cost(&self.plan[s])).sum();
        let before: Total = links.sets.iter().map(|x| x.1).sum();
        let allowed = self.heat * -(1.0 - self.rng.uniform(0.0, 1.0)).ln();
        if (after - before).exact() <= allowed {
            self.cost += after - before;
            self.keep_best();
        } else {
            for &(s, c, _) in &links.clubs {
                self.plan[s][c].take().iter().for_each(|x| self.left.put(x));
            }
            for &(s, c, old) in &links.clubs {
                old.iter().for_each(|x| {
                    self.left.take(x);
                });
                self.plan[s][c] = old;
            }
        }
        links.clubs.len()
    }

    /// Takes a club out, which waits to be put in again.
    fn take_out(&mut self, oracles: &[SetOracle<'_>], (s, c): (usize, usize), links: &mut Links) {
        if links.sets.iter().all(|x| x.0 != s) {
            links.sets.push((s, oracles[s].plan_cost(&self.plan[s])));
        }
        let old = self.plan[s][c].take();
        old.iter().for_each(|x| self.left.put(x));
        links.clubs.push((s, c, old));
        links.queue.push_back((s, c));
    }

    /// The cheapest column of a club's list that is in stock, what it adds to the range of the shafts counted.
    pub fn in_stock(&mut self, o: &SetOracle<'_>, s: usize, c: usize, pool: &Pool) -> Option<Priced> {
        let span = span(&self.plan[s]);
        let mut best: Option<Priced> = None;
        let mut limit = o.clubs[c].skip;
        for &level in &pool.order {
            let list = pool.level(level);
            if list.least().is_none_or(|least| least >= limit) {
                break;
            }
            let wider = widening(&o.shape, span, o.levels[level]);
            if let Some(found) = list.first(limit - wider, &self.left, &mut self.rng, BLINK) {
                limit = found.reduced + wider;
                best = Some(Priced { reduced: limit, column: found.column });
            }
        }
        best
    }

    /// A column that a club would like, under a limit, whoever has its parts.
    fn wanted(&mut self, o: &SetOracle<'_>, s: usize, pool: &Pool, mut limit: Steps) -> Option<Column> {
        let span = span(&self.plan[s]);
        if self.rng.below(ANY) == 0 && pool.len() > 0 {
            let found = pool.nth(self.rng.below(pool.len()));
            return (found.reduced < limit).then_some(found.column);
        }
        let mut best = None;
        for &level in &pool.order {
            let list = pool.level(level);
            if list.least().is_none_or(|least| least >= limit) {
                break;
            }
            let wider = widening(&o.shape, span, o.levels[level]);
            if let Some(found) = list.any(limit - wider, &mut self.rng, WISH) {
                limit = found.reduced + wider;
                best = Some(found.column);
            }
        }
        best
    }

    /// Makes a column's parts free, taking out clubs that have them; whether that went.
    fn free(&mut self, oracles: &[SetOracle<'_>], pools: &[Vec<Pool>], wanted: &Column, links: &mut Links) -> bool {
        let uses: Vec<(PartKind, Ty)> = wanted.uses().collect();
        for &(kind, ty) in &uses {
            let needed = uses.iter().filter(|x| **x == (kind, ty)).count();
            while (self.left.count(kind, ty) as usize) < needed {
                let Some(holder) = self.holder(oracles, pools, kind, ty, links) else { return false };
                self.take_out(oracles, holder, links);
            }
        }
        true
    }

    /// A club that has a part and can do without it.
    fn holder(
        &mut self,
        oracles: &[SetOracle<'_>],
        pools: &[Vec<Pool>],
        kind: PartKind,
        ty: Ty,
        links: &Links,
    ) -> Option<(usize, usize)> {
        let mut holders: Vec<(usize, usize)> = Vec::new();
        for (s, plan) in self.plan.iter().enumerate() {
            for (c, x) in plan.iter().enumerate() {
                if x.is_some_and(|x| x.has(kind, ty)) && links.clubs.iter().all(|l| (l.0, l.1) != (s, c)) {
                    holders.push((s, c));
                }
            }
        }
        let mut best: Option<(Steps, (usize, usize))> = None;
        for _ in 0..ASKED.min(holders.len()) {
            let at = self.rng.below(holders.len());
            let (s, c) = holders.swap_remove(at);
            if holders.is_empty() && best.is_none() {
                return Some((s, c));
            }
            let Some(old) = self.plan[s][c].take() else { continue };
            // What it would cost with what is in stock and its own other parts.
            self.left.put_all(old.uses().filter(|&x| x != (kind, ty)));
            let instead =
                self.in_stock(&oracles[s], s, c, &pools[s][c]).map_or(oracles[s].clubs[c].skip, |x| x.reduced);
            self.left.take_all(old.uses().filter(|&x| x != (kind, ty)));
            self.plan[s][c] = Some(old);
            let more = instead - old.cost;
            if best.is_none_or(|b| more < b.0) {
                best = Some((more, (s, c)));
            }
        }
        best.map(|b| b.1)
    }
}

/// While a club picks its wish, one column in this many is passed over.
const WISH: usize = 4;
/// One wish in this many may be any column at all.
const ANY: usize = 3;
