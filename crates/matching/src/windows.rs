//! Closing the windows that the common prices leave open.
//!
//! Prices are steered toward one window at a time, the one with the least bound; since any prices give a valid bound
//! for every window, each step closes neighbours as well. A window that resists is branched on.

use crate::climb::Climb;
use crate::exact::Search;
use crate::grid::{QUANTUM, Total};
use crate::oracle::Window;
use crate::prices::Prices;

/// Price steps toward one window before it is branched on.
const STEPS: usize = 120;

/// A window that may hold a better plan, and its best bound so far.
#[derive(Debug, Clone, Copy)]
struct OpenWindow {
    w: Window,
    bound: Total,
}

impl Search<'_, '_> {
    /// Goes through all windows that could hold a better plan.
    pub(crate) fn close(&mut self, prices: &Prices) {
        let mut open = self.open_windows(prices);
        let mut climb = Climb::new(self.o.contended(), prices.clone(), 6);
        let mut best_cost = Total::ANY;
        while let Some(target) = open.iter().min_by_key(|x| (x.bound, x.w.lo, x.w.hi)).copied() {
            self.bound = self.bound.max(target.bound);
            if !self.ask(self.bound) {
                return;
            }
            if self.cost < best_cost {
                best_cost = self.cost;
                climb = self.reduce(&climb.prices, &open);
            }
            climb.restart();
            if self.steer(&mut climb, target.w, &mut open) && !self.stopped {
                self.branch_window(target.w, &climb);
                open.retain(|x| (x.w.lo, x.w.hi) != (target.w.lo, target.w.hi));
            }
            let most = self.cost - QUANTUM;
            open.retain(|x| x.bound <= most);
        }
    }

    fn open_windows(&mut self, prices: &Prices) -> Vec<OpenWindow> {
        self.o.price_all(prices);
        let worth = crate::climb::stock_worth(self.o.p, prices);
        let limit = self.cost - QUANTUM + worth;
        let mut open = Vec::new();
        self.o.scan_windows(&mut |w, touching| {
            if touching <= limit {
                open.push(OpenWindow { w, bound: touching - worth });
            }
            limit
        });
        open
    }

    /// Takes out candidates that fit into no open window; prices carry over.
    fn reduce(&mut self, prices: &Prices, open: &[OpenWindow]) -> Climb {
        self.o.price_all(prices);
        let limit = self.cost - QUANTUM + crate::climb::stock_worth(self.o.p, prices);
        let lo = open.iter().map(|x| x.w.lo).min().unwrap_or(0);
        let hi = open.iter().map(|x| x.w.hi).max().unwrap_or(0);
        for c in 0..self.o.len() {
            // Cheapest rest of the set over all open windows.
            let rest = open.iter().map(|x| self.o.window_value(x.w).0 - Total::from(self.o.least(c, x.w))).min();
            let club = self.o.reduced(c, prices, lo, hi, limit - rest.unwrap_or_default());
            self.o.clubs[c] = club;
        }
        self.o.renew();
        Climb::new(self.o.contended(), prices.clone(), 6)
    }

    /// Climbs toward a window, closing others on the way; `true` when the window stays open.
    fn steer(&mut self, climb: &mut Climb, target: Window, open: &mut Vec<OpenWindow>) -> bool {
        let mut demand = Vec::new();
        let is_target = |x: &OpenWindow| (x.w.lo, x.w.hi) == (target.lo, target.hi);
        for step in 0..STEPS {
            let lo = open.iter().map(|x| x.w.lo).min().unwrap_or(0);
            let hi = open.iter().map(|x| x.w.hi).max().unwrap_or(0);
            for c in 0..self.o.len() {
                self.o.refold(c, &climb.prices);
                self.o.cells_between(c, &climb.prices, lo, hi);
            }
            self.o.settle(target);
            let value = self.o.window_value(target).0;
            climb.score(value);
            self.tighten(open, climb.worth());
            if !open.iter().any(is_target) {
                return false;
            }
            let cells = self.o.cells_in(Some(target));
            demand.clear();
            self.o.demand(&cells, &climb.prices, &mut demand);
            if step % 50 == 25 {
                self.greedy(Some(target), &climb.prices);
            }
            if !climb.step(&demand, value, self.cost) || !self.ask(self.bound) {
                return true;
            }
        }
        true
    }

    /// Raises the bounds of all open windows to what the present cells prove, and drops those that are closed.
    fn tighten(&mut self, open: &mut Vec<OpenWindow>, worth: Total) {
        let most = self.cost - QUANTUM;
        for x in open.iter_mut() {
            x.bound = x.bound.max(self.o.window_value(x.w).1 - worth);
        }
        open.retain(|x| x.bound <= most);
    }
}
