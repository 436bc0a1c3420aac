//! What is left of each type while a plan is being made.

use crate::compiled::Compiled;
use crate::error::PartKind;
use crate::grid::{FORBIDDEN, Steps};
use crate::index::{ADAPTER, ByKind, ByType, KINDS, Slot, TIP, Ty};
use crate::prices::Prices;
use crate::table::Column;

/// Remaining counts, and for the tables a "price" that forbids what has run out.
#[derive(Debug, Clone)]
pub(crate) struct StockLeft {
    left: ByType<u32>,
    /// Whether there is one more of each head, shaft, grip and adapter type, and each combination of up to two tip
    /// weights, in one list, so that a column is looked up by five numbers ([`StockLeft::places`]).
    open: Vec<bool>,
    /// Where each kind starts in `open`.
    start: ByKind<usize>,
}

impl StockLeft {
    pub fn new(p: &Compiled) -> Self {
        let left = p.types.each(|types| types.each(|t| t.cap));
        let (mut start, mut open) = (ByKind::default(), Vec::new());
        for k in [PartKind::Head, PartKind::Shaft, PartKind::Grip, ADAPTER] {
            start[k] = open.len();
            open.extend(left[k].iter().map(|&n| n > 0));
        }
        // The place of the adapter that a club does not need.
        open.push(true);
        start[TIP] = open.len();
        let rows = left[TIP].len() + 1;
        open.resize(start[TIP] + rows * rows, true);
        let mut stock = Self { left, open, start };
        p.types[TIP].types().for_each(|t| stock.renew_tips(t));
        stock
    }

    /// Where a column's parts stand in the list of what is there; see [`StockLeft::has`].
    pub fn places(&self, x: &Column) -> [Slot; 5] {
        let rows = self.left[TIP].len() + 1;
        let [a, b] = x.tips.map(|t| t.map_or(0, |t| t.index() + 1));
        let part = |k: PartKind, ty: Ty| Slot::of(self.start[k] + ty.index());
        let tips = Slot::of(self.start[TIP] + a * rows + b);
        let adapter = x.adapter.map_or(Slot::of(self.start[TIP] - 1), |ty| part(ADAPTER, ty));
        [part(PartKind::Shaft, x.shaft), part(PartKind::Grip, x.grip), part(PartKind::Head, x.head), tips, adapter]
    }

    /// Prices in the order of the list that [`StockLeft::places`] points into; a pair of tip weights costs both.
    pub fn prices(&self, prices: &ByType<f64>, out: &mut Vec<Steps>) {
        out.clear();
        for k in [PartKind::Head, PartKind::Shaft, PartKind::Grip, ADAPTER] {
            out.extend(prices[k].iter().map(|&x| Steps::half_up(x)));
        }
        out.push(Steps(0));
        let of = |n: usize| if n == 0 { Steps(0) } else { Steps::half_up(prices[TIP][Ty::of(n - 1)]) };
        let rows = prices[TIP].len() + 1;
        out.extend((0..rows).flat_map(|a| (0..rows).map(move |b| of(a) + of(b))));
    }

    /// Whether all of a column's parts are there.
    pub fn has(&self, places: &[Slot; 5]) -> bool {
        places.iter().all(|&at| self.open[at.index()])
    }

    /// How many of a type are there.
    pub fn count(&self, k: PartKind, ty: Ty) -> u32 {
        self.left[k][ty]
    }

    /// Brings all combinations with one tip weight up to its count.
    fn renew_tips(&mut self, t: Ty) {
        let rows = self.left[TIP].len() + 1;
        let enough = |n: usize, twice: bool| n == 0 || self.left[TIP][Ty::of(n - 1)] > u32::from(twice);
        let here = t.index() + 1;
        for other in 0..rows {
            let open = enough(here, other == here) && enough(other, false);
            self.open[self.start[TIP] + here * rows + other] = open;
            self.open[self.start[TIP] + other * rows + here] = open;
        }
    }

    fn renew(&mut self, k: PartKind, ty: Ty) {
        if k == TIP {
            self.renew_tips(ty);
        } else {
            self.open[self.start[k] + ty.index()] = self.left[k][ty] > 0;
        }
    }

    /// Takes a column's parts; leaves the stock untouched and says no when something has run out.
    pub fn take(&mut self, column: &Column) -> bool {
        self.take_all(column.uses())
    }

    /// Puts a column's parts back.
    pub fn put(&mut self, column: &Column) {
        self.put_all(column.uses());
    }

    /// [`StockLeft::take`] for kinds and types.
    pub fn take_all(&mut self, uses: impl Iterator<Item = (PartKind, Ty)> + Clone) -> bool {
        for (done, (k, ty)) in uses.clone().enumerate() {
            if self.left[k][ty] == 0 {
                self.put_all(uses.take(done));
                return false;
            }
            self.left[k][ty] -= 1;
            // A third tip weight or more changes nothing.
            if self.left[k][ty] < 2 {
                self.renew(k, ty);
            }
        }
        true
    }

    /// [`StockLeft::put`] for kinds and types.
    pub fn put_all(&mut self, uses: impl Iterator<Item = (PartKind, Ty)>) {
        for (k, ty) in uses {
            self.left[k][ty] += 1;
            if self.left[k][ty] <= 2 {
                self.renew(k, ty);
            }
        }
    }

    /// Prices with everything that has run out forbidden. A tip weight of which one is left still allows a pair of
    /// them here; [`StockLeft::take`] catches that.
    pub fn guard(&self, prices: &Prices, out: &mut Prices) {
        for k in KINDS {
            for ((o, &price), &left) in out[k].iter_mut().zip(&prices[k]).zip(&self.left[k]) {
                *o = if left == 0 { FORBIDDEN } else { price };
            }
        }
    }
}
