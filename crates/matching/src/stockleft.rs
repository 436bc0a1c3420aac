//! What is left of each type while a plan is being made.

use crate::compile::{Compiled, GRIP, HEAD, SHAFT, TIP};
use crate::grid::FORBIDDEN;
use crate::table::{ByType, Column};

/// Remaining counts, and for the tables a "price" that forbids what has run out.
#[derive(Debug, Clone)]
pub(crate) struct StockLeft {
    pub left: [Vec<u32>; 4],
}

impl StockLeft {
    pub fn new(p: &Compiled) -> Self {
        Self { left: [0, 1, 2, 3].map(|k| p.types[k].iter().map(|t| t.cap).collect()) }
    }

    /// Whether all of a column's parts are there.
    pub fn has(&self, x: &Column) -> bool {
        let one = |k: usize, ty: u32| self.left[k][ty as usize] > 0;
        let parts = one(SHAFT, x.shaft) && one(GRIP, x.grip) && one(HEAD, x.head);
        parts
            && match x.tips {
                [Some(a), Some(b)] if a == b => self.left[TIP][a as usize] > 1,
                tips => tips.into_iter().flatten().all(|t| one(TIP, t)),
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
    pub fn take_all(&mut self, uses: impl Iterator<Item = (usize, usize)> + Clone) -> bool {
        for (done, (k, ty)) in uses.clone().enumerate() {
            if self.left[k][ty] == 0 {
                self.put_all(uses.take(done));
                return false;
            }
            self.left[k][ty] -= 1;
        }
        true
    }

    /// [`StockLeft::put`] for kinds and types.
    pub fn put_all(&mut self, uses: impl Iterator<Item = (usize, usize)>) {
        for (k, ty) in uses {
            self.left[k][ty] += 1;
        }
    }

    /// Prices with everything that has run out forbidden. A tip weight of which one is left still allows a pair of
    /// them here; [`StockLeft::take`] catches that.
    pub fn guard(&self, prices: &ByType, out: &mut ByType) {
        for k in 0..4 {
            for ((o, &price), &left) in out[k].iter_mut().zip(&prices[k]).zip(&self.left[k]) {
                *o = if left == 0 { FORBIDDEN } else { price };
            }
        }
    }
}
