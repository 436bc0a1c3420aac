//! Subgradient ascent on the prices of parts.

use crate::compile::Compiled;
use crate::grid::FORBIDDEN;
use crate::oracle::SetOracle;
use crate::table::{ByType, Column, by_type};

/// What the whole stock is worth at given prices; comes off the relaxed cost to give the bound.
pub(crate) fn stock_worth(p: &Compiled, prices: &ByType) -> i64 {
    let mut sum = 0;
    for (types, prices) in p.types.iter().zip(prices) {
        for (t, &price) in types.iter().zip(prices) {
            if price != 0 {
                sum += i64::from(price) * i64::from(t.cap);
            }
        }
    }
    sum
}

/// [`stock_worth`] for a set's oracle.
pub(crate) fn priced_stock(o: &SetOracle<'_>, prices: &ByType) -> i64 {
    stock_worth(o.p, prices)
}

/// Prices on their way up.
#[derive(Debug)]
pub(crate) struct Climb {
    pub prices: ByType,
    pub best_prices: ByType,
    pub best_bound: i64,
    /// Unrounded prices.
    exact: [Vec<f64>; 4],
    factor: f64,
    idle: usize,
    patience: usize,
    contended: [Vec<bool>; 4],
}

impl Climb {
    pub fn new(p: &Compiled, prices: ByType, patience: usize) -> Self {
        let exact = [0, 1, 2, 3].map(|k| prices[k].iter().map(|&x| f64::from(x)).collect());
        let contended = [0, 1, 2, 3].map(|k| (0..p.types[k].len()).map(|t| p.contended(k, t as u32)).collect());
        let best_prices = prices.clone();
        Self { prices, best_prices, best_bound: i64::MIN, exact, factor: 1.0, idle: 0, patience, contended }
    }

    /// Starts at zero prices.
    pub fn from_zero(p: &Compiled, patience: usize) -> Self {
        Self::new(p, by_type(p, 0), patience)
    }

    /// Notes the relaxed cost at the present prices; whether the bound got better.
    pub fn score(&mut self, p: &Compiled, value: i64) -> bool {
        let bound = value - stock_worth(p, &self.prices);
        let better = bound > self.best_bound;
        if better {
            self.best_bound = bound;
            self.best_prices.clone_from(&self.prices);
            self.idle = 0;
        } else {
            self.idle += 1;
            if self.idle >= self.patience {
                self.factor *= 0.6;
                self.idle = 0;
            }
        }
        better
    }

    /// Moves the prices along demand less stock, by Polyak's step toward the best plan's cost. `false` when demand
    /// meets stock everywhere, that is when the prices cannot get better.
    pub fn step<'a>(
        &mut self,
        p: &Compiled,
        demand: impl Iterator<Item = (usize, &'a Column)>,
        value: i64,
        cost: i64,
    ) -> bool {
        let mut excess = [0, 1, 2, 3].map(|k| p.types[k].iter().map(|t| -i64::from(t.cap)).collect::<Vec<i64>>());
        for (club, column) in demand {
            for (k, ty) in column.uses(&p.clubs[club]) {
                excess[k][ty] += 1;
            }
        }
        let mut norm = 0.0;
        for (k, excess) in excess.iter_mut().enumerate() {
            for (ty, e) in excess.iter_mut().enumerate() {
                if !self.contended[k][ty] || (*e < 0 && self.prices[k][ty] == 0) {
                    *e = 0;
                }
                norm += (*e * *e) as f64;
            }
        }
        if norm == 0.0 {
            return false;
        }
        let bound = value - stock_worth(p, &self.prices);
        let gap = ((cost - bound) as f64).max(1.0);
        let step = self.factor * gap / norm;
        for (k, excess) in excess.iter().enumerate() {
            for (ty, &e) in excess.iter().enumerate() {
                if e != 0 {
                    let next = (self.exact[k][ty] + step * e as f64).clamp(0.0, f64::from(FORBIDDEN / 16));
                    self.exact[k][ty] = next;
                    self.prices[k][ty] = next.round() as i32;
                }
            }
        }
        true
    }
}
