//! Depth-first search over the clubs of one window.
//!
//! Lists, club by club, the columns whose reduced cost fits in the gap between the window's bound and the best plan;
//! every better plan of the window is made of these.

use crate::compiled::Club;
use crate::error::PartKind;
use crate::exact::Search;
use crate::grid::{FORBIDDEN, QUANTUM, Steps, Total};
use crate::index::{GRIP, HEAD, Place, SHAFT, Ty};
use crate::oracle::Window;
use crate::prices::{Prices, tip_price};
use crate::stockleft::StockLeft;
use crate::table::{Column, column, pick};

/// A column that may still be part of a better plan.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Open {
    reduced: Steps,
    shaft: Place,
    grip: Place,
    /// The types that shaft and grip take.
    pair: [(PartKind, Ty); 2],
    /// With head and tip weight where those can run out; otherwise they are filled in at the end.
    full: Option<Column>,
}

impl Open {
    fn uses(&self) -> impl Iterator<Item = (PartKind, Ty)> + Clone + use<> {
        let pair = if self.full.is_none() { self.pair.map(Some) } else { [None, None] };
        pair.into_iter().flatten().chain(self.full.into_iter().flat_map(|c| c.uses()))
    }
}

/// State of the search.
struct Dive {
    lists: Vec<Vec<Open>>,
    order: Vec<usize>,
    rest: Vec<Total>,
    left: StockLeft,
    plan: Vec<Option<Open>>,
    /// Nodes still allowed.
    budget: u64,
}

impl Search<'_, '_> {
    /// Lists the columns of a window that fit in a gap of `slack` above the window's bound, unless they are more than
    /// `most_columns` in all. The cells must be up to date for these prices.
    pub(crate) fn open_columns(
        &mut self,
        w: Window,
        prices: &Prices,
        slack: Total,
        most_columns: usize,
    ) -> Option<Vec<Vec<Open>>> {
        let mut lists = Vec::with_capacity(self.o.len());
        let mut count = 0;
        for c in 0..self.o.len() {
            let club = self.o.clubs[c].clone();
            let most = (slack + self.o.least(c, w)).limit();
            let varies = self.o.varies(c);
            let mut list = Vec::new();
            for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
                let level = self.o.level_of(c, s);
                if level < w.lo || level > w.hi {
                    continue;
                }
                let own = prices[SHAFT][shaft.ty];
                let row = self.o.row(c, s, most);
                for (g, grip) in club.cands[GRIP].iter().enumerate() {
                    let reduced = row[g] + own + prices[GRIP][grip.ty];
                    if reduced > most {
                        continue;
                    }
                    let pair = [(PartKind::Shaft, shaft.ty), (PartKind::Grip, grip.ty)];
                    let open = Open { reduced, shaft: Place::of(s), grip: Place::of(g), pair, full: None };
                    if varies {
                        expand(&club, open, most, prices, &mut list);
                    } else {
                        list.push(open);
                    }
                }
                if count + list.len() > most_columns {
                    return None;
                }
            }
            count += list.len();
            list.sort_by_key(|x| (x.reduced, x.shaft, x.grip, x.full.map(|f| (f.head, f.tips))));
            lists.push(list);
        }
        Some(lists)
    }

    /// Searches all plans made of the listed columns, with `budget` nodes at most; whether that was enough. `start` is
    /// the range cost less the worth of the stock.
    pub(crate) fn depth_first(&mut self, lists: Vec<Vec<Open>>, start: Total, budget: u64) -> bool {
        let n = lists.len();
        let mut order: Vec<usize> = (0..n).collect();
        order.sort_by_key(|&c| lists[c].len());
        let mut rest = vec![Total(0); n + 1];
        for i in (0..n).rev() {
            let c = order[i];
            let least = lists[c].first().map_or(Steps(i32::MAX), |x| x.reduced).min(self.o.clubs[c].skip);
            rest[i] = rest[i + 1] + least;
        }
        let left = StockLeft::new(self.o.p);
        let mut dive = Dive { lists, order, rest, left, plan: vec![None; n], budget };
        self.dive(&mut dive, 0, start);
        dive.budget > 0
    }

    fn dive(&mut self, d: &mut Dive, depth: usize, so_far: Total) {
        if depth == d.order.len() {
            self.take_leaf(d);
            return;
        }
        let c = d.order[depth];
        let before = so_far + d.rest[depth + 1];
        let fits = |reduced: Steps, cost: Total| Total::from(reduced) + before <= cost - QUANTUM;
        for i in 0..d.lists[c].len() {
            let open = d.lists[c][i];
            // Columns come cheapest first, so the first that does not fit ends the list.
            if !fits(open.reduced, self.cost) || !self.spend(d) {
                break;
            }
            if d.left.take_all(open.uses()) {
                d.plan[c] = Some(open);
                self.dive(d, depth + 1, so_far + open.reduced);
                d.plan[c] = None;
                d.left.put_all(open.uses());
            }
        }
        let skip = self.o.clubs[c].skip;
        if fits(skip, self.cost) && self.spend(d) {
            self.dive(d, depth + 1, so_far + skip);
        }
    }

    /// Counts a node; `false` when the search has been stopped.
    pub(crate) fn count(&mut self) -> bool {
        self.nodes += 1;
        if self.nodes.is_multiple_of(4096) { self.ask(self.bound) } else { !self.stopped }
    }

    fn spend(&mut self, d: &mut Dive) -> bool {
        d.budget = d.budget.saturating_sub(1);
        d.budget > 0 && self.count()
    }

    fn take_leaf(&mut self, d: &Dive) {
        let fill = |(c, open): (usize, &Option<Open>)| {
            let open = (*open)?;
            open.full.or_else(|| pick(&self.o.clubs[c], open.shaft, open.grip, &self.zero).map(|x| x.1))
        };
        let plan: Vec<Option<Column>> = d.plan.iter().enumerate().map(fill).collect();
        self.offer(plan);
    }
}

/// Splits a cell into one column for each head and tip weight that still fits in the gap.
fn expand(club: &Club, cell: Open, most: Steps, prices: &Prices, out: &mut Vec<Open>) {
    let (shaft, grip) = (&club.cands[SHAFT][cell.shaft.index()], &club.cands[GRIP][cell.grip.index()]);
    let own = prices[SHAFT][shaft.ty] + prices[GRIP][grip.ty];
    for head in &club.cands[HEAD] {
        let own = own + prices[HEAD][head.ty];
        for tip in &club.tips {
            if own + head.cost + tip.cost > most {
                // Tip weights come cheapest first.
                break;
            }
            let full = column(club, head, shaft, grip, tip);
            let reduced = full.cost + own + tip_price(tip, prices);
            if full.cost < FORBIDDEN && reduced <= most {
                out.push(Open { reduced, full: Some(full), ..cell });
            }
        }
    }
}
