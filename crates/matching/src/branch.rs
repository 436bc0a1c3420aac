//! Branch and bound inside one window.
//!
//! Each node climbs on prices, takes candidates out by reduced cost, and is finished by depth-first search as soon as
//! few columns are left. Otherwise it is split where the relaxed solutions of the last steps disagree most about one
//! club: on the effect of its tip weight, or else of its grip, head or shaft, at or below against above a threshold.

use std::sync::Arc;

use crate::climb::Climb;
use crate::compiled::Club;
use crate::error::PartKind;
use crate::exact::Search;
use crate::grid::{MilliPoints, QUANTUM, Total};
use crate::index::{ByKind, MAIN, MainKind};
use crate::oracle::Window;

/// Price steps a node.
const STEPS: usize = 40;
/// Steps of which the relaxed solutions are held against each other.
const REMEMBERED: usize = 24;
/// Column lists shorter than this, all clubs together, are searched at once.
const FEW_COLUMNS: usize = 300;
/// Nodes of depth-first search after which a node is split after all.
const DIVE_NODES: u64 = 2000;

/// By club, the points of what the relaxed solutions chose.
type Seen = Vec<Vec<ByKind<MilliPoints>>>;

/// What a club may be split by, with the weight of each. A step of tip weight outweighs any change of grip, head or shaft
/// of the same size in points, because it is what cannot be had in small steps. An adapter goes in at the tip.
const SPLITS: [(PartKind, f64); 4] =
    [(PartKind::Tip, 1.0), (PartKind::Grip, 0.5), (PartKind::Head, 0.25), (PartKind::Shaft, 0.5)];

/// Where to split.
#[derive(Debug, Clone, Copy)]
struct Split {
    club: usize,
    what: PartKind,
    /// At or below against above.
    at: MilliPoints,
    /// Whether the side at or below is tried first.
    low_first: bool,
}

impl Search<'_, '_> {
    /// Settles a window by branch and bound; leaves the oracle's clubs as they were.
    pub(crate) fn branch_window(&mut self, w: Window, climb: &Climb) {
        let kept: Vec<_> = (0..self.o.len()).map(|c| self.o.replace(c, self.o.clubs[c].clone())).collect();
        let start = Climb::new(self.o.contended(), climb.best_prices.clone(), 4);
        self.node(w, start, 0);
        for (c, old) in kept.into_iter().enumerate() {
            self.o.restore(c, old);
        }
    }

    fn node(&mut self, w: Window, mut climb: Climb, depth: usize) {
        if !self.count() {
            return;
        }
        let Some(seen) = self.climb_node(w, &mut climb, if depth == 0 { REMEMBERED } else { STEPS }) else { return };
        // Back to the best prices for fixing and listing.
        let prices = climb.best_prices.clone();
        self.price_window(w, &prices);
        let worth = crate::climb::stock_worth(self.o.p, &prices);
        let slack = self.cost - QUANTUM + worth - self.o.window_value(w).0;
        if slack < Total(0) {
            return;
        }
        let mut kept = Vec::new();
        for c in 0..self.o.len() {
            let most = slack + self.o.least(c, w);
            let club = self.o.reduced(c, &prices, w.lo, w.hi, most);
            kept.push(self.o.replace(c, club));
        }
        self.price_window(w, &prices);
        let range = Total::from(self.o.shape.range_cost(self.o.levels[w.hi] - self.o.levels[w.lo]));
        let few = self.open_columns(w, &prices, slack, FEW_COLUMNS);
        if !few.is_some_and(|lists| self.depth_first(lists, range - worth, DIVE_NODES)) {
            if let Some(split) = self.split(&seen) {
                self.children(w, &climb, split, depth);
            } else if let Some(lists) = self.open_columns(w, &prices, slack, usize::MAX) {
                self.depth_first(lists, range - worth, u64::MAX);
            }
        }
        for (c, old) in kept.into_iter().enumerate() {
            self.o.restore(c, old);
        }
    }

    fn children(&mut self, w: Window, climb: &Climb, split: Split, depth: usize) {
        // Both sides begin at the prices of the node: what one learns holds for its own candidates only.
        for low in [split.low_first, !split.low_first] {
            let club = side(&self.o.clubs[split.club], split, low);
            let old = self.o.replace(split.club, club);
            self.node(w, Climb::new(self.o.contended(), climb.best_prices.clone(), 4), depth + 1);
            self.o.restore(split.club, old);
        }
    }

    fn price_window(&mut self, w: Window, prices: &crate::prices::Prices) {
        for c in 0..self.o.len() {
            self.o.refold(c, prices);
            self.o.cells_between(c, prices, w.lo, w.hi);
        }
        self.o.settle(w);
    }

    /// Climbs; `None` when the node is closed.
    fn climb_node(&mut self, w: Window, climb: &mut Climb, steps: usize) -> Option<Seen> {
        let mut seen: Seen = vec![Vec::new(); self.o.len()];
        let mut demand = Vec::new();
        for step in 0..steps {
            self.price_window(w, &climb.prices);
            let value = self.o.window_value(w).0;
            climb.score(value);
            if self.cost - climb.best_bound < QUANTUM.into() {
                return None;
            }
            let cells = self.o.cells_in(Some(w));
            demand.clear();
            self.o.demand(&cells, &climb.prices, &mut demand);
            if step + REMEMBERED >= steps {
                for (c, cell) in cells.iter().enumerate() {
                    let column = cell.and_then(|cell| self.o.column(c, cell, &climb.prices));
                    seen[c].extend(column.map(|x| self.o.points_of(c, &x)));
                }
            }
            if !climb.step(&demand, value, self.cost) {
                break;
            }
        }
        self.greedy(Some(w), &climb.best_prices);
        Some(seen)
    }

    /// The club and quantity about which the relaxed solutions disagree most.
    fn split(&self, seen: &Seen) -> Option<Split> {
        let mut best: Option<(f64, Split)> = None;
        for (club, chosen) in seen.iter().enumerate() {
            for (what, weight) in SPLITS {
                let Some((lo, hi)) = self.extent(club, what) else { continue };
                if lo == hi || chosen.is_empty() {
                    continue;
                }
                let mean = mean_of(chosen.iter().map(|x| x[what].exact()));
                let spread = mean_of(chosen.iter().map(|x| (x[what].exact() - mean).abs()));
                let score = spread * weight + 1e-3 * (hi - lo).exact() * weight;
                let at = MilliPoints::below(mean).clamp(lo, hi - MilliPoints(1));
                let below = chosen.iter().filter(|x| x[what] <= at).count();
                let split = Split { club, what, at, low_first: 2 * below >= chosen.len() };
                if best.is_none_or(|b| score > b.0) {
                    best = Some((score, split));
                }
            }
        }
        best.map(|b| b.1)
    }

    /// Least and greatest points that a club's candidates of one kind offer.
    fn extent(&self, c: usize, what: PartKind) -> Option<(MilliPoints, MilliPoints)> {
        let club = &self.o.clubs[c];
        let ends = |list: &mut dyn Iterator<Item = MilliPoints>| {
            list.fold(None, |e: Option<(MilliPoints, MilliPoints)>, p| {
                Some(e.map_or((p, p), |(lo, hi)| (lo.min(p), hi.max(p))))
            })
        };
        match main(what) {
            None => ends(&mut club.tips.iter().map(|t| t.pts)),
            Some(kind) => ends(&mut club.cands[kind].iter().map(|x| x.pts)),
        }
    }
}

/// The kind that a club lists by itself; none for what goes in at the tip.
fn main(kind: PartKind) -> Option<MainKind> {
    MAIN.into_iter().find(|&main| PartKind::from(main) == kind)
}

fn mean_of(figures: impl Iterator<Item = f64>) -> f64 {
    let (count, sum) = figures.fold((0.0, 0.0), |(count, sum), x| (count + 1.0, sum + x));
    sum / count
}

/// One side of a split.
fn side(club: &Arc<Club>, split: Split, low: bool) -> Arc<Club> {
    let mut club = Club::clone(club);
    let stays = |pts: MilliPoints| (pts <= split.at) == low;
    match main(split.what) {
        None => club.tips.retain(|t| stays(t.pts)),
        Some(kind) => club.cands[kind].retain(|x| stays(x.pts)),
    }
    Arc::new(club)
}
