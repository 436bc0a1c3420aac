//! Subgradient ascent on the prices of parts.

use crate::compiled::Compiled;
use crate::error::PartKind;
use crate::grid::{MOST_PRICE, Steps, Total};
use crate::index::{ByType, PerType, Ty};
use crate::prices::Prices;

/// What the whole stock is worth at given prices; comes off the relaxed cost to give the bound.
pub(crate) fn stock_worth(p: &Compiled, prices: &Prices) -> Total {
    let mut sum = Total(0);
    for (types, prices) in p.types.values().zip(prices.values()) {
        for (t, &price) in types.iter().zip(prices) {
            if price != Steps(0) {
                sum += price.times(t.cap);
            }
        }
    }
    sum
}

/// Prices on their way up.
#[derive(Debug)]
pub(crate) struct Climb {
    pub prices: Prices,
    pub best_prices: Prices,
    pub best_bound: Total,
    /// Unrounded prices.
    exact: ByType<f64>,
    factor: f64,
    idle: usize,
    patience: usize,
    /// Kind, type and count of everything that can run out.
    contended: Vec<(PartKind, Ty, i32)>,
    excess: ByType<i32>,
}

impl Climb {
    /// Starts from given prices; `contended` lists kind, type and count of everything that can run out, and the rest
    /// has no price.
    pub fn new(contended: Vec<(PartKind, Ty, i32)>, mut prices: Prices, patience: usize) -> Self {
        let excess = prices.each(|list| PerType::new(list.len(), 0));
        let mut kept = prices.each(|list| PerType::new(list.len(), Steps(0)));
        for &(k, ty, _) in &contended {
            kept[k][ty] = prices[k][ty];
        }
        prices = kept;
        let exact = prices.each(|list| list.each(|&x| x.exact()));
        let best_prices = prices.clone();
        Self {
            prices,
            best_prices,
            best_bound: Total::UNKNOWN,
            exact,
            factor: 1.0,
            idle: 0,
            patience,
            contended,
            excess,
        }
    }

    /// Forgets bounds and step length but keeps the prices: for a new goal near the old one.
    pub fn restart(&mut self) {
        (self.best_bound, self.factor, self.idle) = (Total::UNKNOWN, 1.0, 0);
    }

    /// What the whole stock is worth at the present prices.
    pub fn worth(&self) -> Total {
        let worth = |&(k, ty, cap): &(PartKind, Ty, i32)| self.prices[k][ty].times(cap);
        self.contended.iter().map(worth).sum()
    }

    /// Notes the relaxed cost at the present prices; whether the bound got better.
    pub fn score(&mut self, value: Total) -> bool {
        let bound = value - self.worth();
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

    /// Moves the prices along demand (kind and type) less stock, by Polyak's step toward the best plan's cost. `false`
    /// when demand meets stock everywhere, that is when the prices cannot get better.
    pub fn step(&mut self, demand: &[(PartKind, Ty)], value: Total, cost: Total) -> bool {
        for &(k, ty, cap) in &self.contended {
            self.excess[k][ty] = -cap;
        }
        for &(k, ty) in demand {
            self.excess[k][ty] += 1;
        }
        let mut norm = 0.0;
        for &(k, ty, _) in &self.contended {
            let e = &mut self.excess[k][ty];
            if *e < 0 && self.exact[k][ty] == 0.0 {
                *e = 0;
            }
            norm += f64::from(*e).powi(2);
        }
        if norm == 0.0 {
            return false;
        }
        let gap = (cost - value + self.worth()).exact().max(1.0);
        let step = self.factor * gap / norm;
        for &(k, ty, _) in &self.contended {
            let e = self.excess[k][ty];
            if e != 0 {
                let next = (self.exact[k][ty] + step * f64::from(e)).clamp(0.0, MOST_PRICE);
                self.exact[k][ty] = next;
                self.prices[k][ty] = Steps::nearest(next);
            }
        }
        true
    }
}
