//! Parts of one kind dealt out among some clubs exactly.
//!
//! With everything else of these clubs held, who gets which head (or shaft, or grip) is an assignment problem, each pair at
//! its cheapest weight in the tip. Where heads are scarce a chain of ten clubs may have to change heads before one of them
//! can be built; taking some clubs apart and building them one after another hardly ever finds such a chain, an
//! assignment always does.

use crate::assign::assign;
use crate::compiled::{Cand, Club};
use crate::grid::{FORBIDDEN, Steps, Total};
use crate::index::{GRIP, HEAD, MainKind, SHAFT, TIP, Ty};
use crate::insert::widening;
use crate::oracle::{SetOracle, span};
use crate::prices::{Prices, tip_price};
use crate::ruin::Improver;
use crate::stockleft::StockLeft;
use crate::table::{Column, column};

/// Parts that nobody of them has which each club may take instead.
const OTHERS: usize = 3;

impl Improver {
    /// Deals out the parts of one kind among clubs that are built, and those that nobody has; whether the plan got cheaper, or
    /// dearer by no more than chance allows. `prices` tell what tip weights are worth to others.
    pub fn deal(
        &mut self,
        oracles: &[SetOracle<'_>],
        kind: MainKind,
        clubs: &[(usize, usize)],
        prices: &Prices,
    ) -> bool {
        let built = clubs.iter().filter_map(|&(s, c)| Some((s, c, self.plan[s][c]?)));
        let old: Vec<(usize, usize, Column)> = built.collect();
        if old.len() < 2 {
            return false;
        }
        let mut sets: Vec<usize> = old.iter().map(|x| x.0).collect();
        sets.sort_unstable();
        sets.dedup();
        let cost = |x: &Self| -> Total { sets.iter().map(|&s| oracles[s].plan_cost(&x.plan[s])).sum() };
        let before = cost(self);
        let spans: Vec<_> = old.iter().map(|x| span(&self.plan[x.0])).collect();
        for &(s, c, column) in &old {
            self.left.put(&column);
            self.plan[s][c] = None;
        }
        let dealt = self.dealt(oracles, kind, &old, &spans, prices);
        let mut whole = true;
        for (&(s, c, old), new) in old.iter().zip(dealt) {
            let held = |x: &Column| self.left.has(&self.left.places(x));
            // Two clubs may count on the same tip weight.
            let new = new.filter(&held).or_else(|| Some(old).filter(&held));
            whole &= new.is_some();
            self.plan[s][c] = new.filter(|x| self.left.take(x));
        }
        let after = cost(self);
        let allowed = self.heat * -(1.0 - self.rng.uniform(0.0, 1.0)).ln();
        if whole && (after - before).exact() <= allowed {
            self.cost += after - before;
            self.keep_best();
            return true;
        }
        for &(s, c, _) in &old {
            self.plan[s][c].take().iter().for_each(|x| self.left.put(x));
        }
        for &(s, c, column) in &old {
            self.left.take(&column);
            self.plan[s][c] = Some(column);
        }
        false
    }

    /// The cheapest deal; `old` are the clubs with what they had, which is in stock again.
    fn dealt(
        &self,
        oracles: &[SetOracle<'_>],
        kind: MainKind,
        old: &[(usize, usize, Column)],
        spans: &[Option<(crate::grid::DeciGrams, crate::grid::DeciGrams)>],
        prices: &Prices,
    ) -> Vec<Option<Column>> {
        let mut of_column: Vec<Ty> = old.iter().map(|x| own(&x.2, kind)).collect();
        let mut offers: Vec<Vec<(Steps, Column)>> = Vec::with_capacity(old.len());
        for (&(s, c, had), &span) in old.iter().zip(spans) {
            let (club, shape) = (&oracles[s].clubs[c], &oracles[s].shape);
            let mut list: Vec<(Steps, Column)> = Vec::new();
            let Some(rest) = Rest::new(club, &had) else { return old.iter().map(|x| Some(x.2)).collect() };
            for x in &club.cands[kind] {
                if self.left.count(kind.into(), x.ty) == 0 {
                    continue;
                }
                let wider = if kind == SHAFT { widening(shape, span, x.res) } else { Steps(0) };
                if let Some((cost, column)) = rest.cheapest(club, kind, x, prices, &self.left) {
                    list.push((cost.saturating_add(wider), column));
                }
            }
            list.sort_unstable_by_key(|x| x.0);
            offers.push(list);
        }
        // What the clubs had, and of the others in stock the best few for each.
        let had: std::collections::HashSet<Ty> = of_column.iter().copied().collect();
        let mut more: Vec<Ty> = Vec::new();
        for list in &offers {
            let free = list.iter().map(|x| own(&x.1, kind)).filter(|ty| !had.contains(ty));
            more.extend(free.take(OTHERS));
        }
        more.sort_unstable();
        more.dedup();
        for &ty in &more {
            let copies = usize::try_from(self.left.count(kind.into(), ty)).unwrap_or(usize::MAX).min(OTHERS);
            of_column.extend(std::iter::repeat_n(ty, copies));
        }
        let costs: Vec<Vec<f64>> = offers
            .iter()
            .map(|list| {
                let cost =
                    |ty: &Ty| list.iter().find(|x| own(&x.1, kind) == *ty).map_or(f64::INFINITY, |x| x.0.exact());
                let mut known: std::collections::HashMap<Ty, f64> = std::collections::HashMap::new();
                of_column.iter().map(|ty| *known.entry(*ty).or_insert_with(|| cost(ty))).collect()
            })
            .collect();
        let Ok(dealt) = assign(&costs) else { return old.iter().map(|x| Some(x.2)).collect() };
        let taken = |(list, at): (&Vec<(Steps, Column)>, Option<usize>)| {
            let ty = of_column[at?];
            list.iter().find(|x| own(&x.1, kind) == ty).map(|x| x.1)
        };
        offers.iter().zip(dealt).map(taken).collect()
    }
}

/// The type that a column has of a kind.
fn own(column: &Column, kind: MainKind) -> Ty {
    match kind {
        MainKind::Head => column.head,
        MainKind::Shaft => column.shaft,
        MainKind::Grip => column.grip,
    }
}

/// What a club keeps while one of its parts changes.
struct Rest<'a> {
    head: &'a Cand,
    shaft: &'a Cand,
    grip: &'a Cand,
}

impl<'a> Rest<'a> {
    fn new(club: &'a Club, had: &Column) -> Option<Self> {
        let find = |kind: MainKind| club.cands[kind].iter().find(|x| x.ty == own(had, kind));
        Some(Self { head: find(HEAD)?, shaft: find(SHAFT)?, grip: find(GRIP)? })
    }

    /// With another part of one kind and the weight in the tip that is the cheapest then.
    fn cheapest(
        &self,
        club: &Club,
        kind: MainKind,
        x: &Cand,
        prices: &Prices,
        left: &StockLeft,
    ) -> Option<(Steps, Column)> {
        let (head, shaft, grip) = match kind {
            MainKind::Head => (x, self.shaft, self.grip),
            MainKind::Shaft => (self.head, x, self.grip),
            MainKind::Grip => (self.head, self.shaft, x),
        };
        let own = head.cost + shaft.cost + grip.cost;
        let mut best: Option<(Steps, Column)> = None;
        for tip in &club.tips {
            if own + tip.cost >= best.map_or(FORBIDDEN, |b| b.0) {
                break;
            }
            let column = column(club, head, shaft, grip, tip);
            let cost = column.cost.saturating_add(tip_price(tip, prices));
            if cost < best.map_or(FORBIDDEN, |b| b.0) && tip.uses.iter().flatten().all(|&t| left.count(TIP, t) > 0) {
                best = Some((cost, column));
            }
        }
        best
    }
}
