//! The day's lower bound: prices of parts that many sets want.
//!
//! Surrogate subgradient steps (Zhao, Luh & Wang 1999): one set is planned anew under the present prices, the others
//! keep their last demand, and the prices move at once. That is as good a direction as planning all sets anew, at a
//! fraction of the work. Now and then all sets are planned under the running mean of the prices, which moves far less
//! than the prices themselves; that gives a bound. The inequalities of `cuts` are priced along with the parts; those of
//! `shortage` have prices that are set anew before every planning, so that just the clubs that must stay out do.

use crate::compiled::Compiled;
use crate::crowd::Crowding;
use crate::cuts::{Cuts, Which};
use crate::error::PartKind;
use crate::grid::{MOST_PRICE, Steps, Total};
use crate::index::{ByType, Ty};
use crate::level::{Family, families};
use crate::oracle::SetOracle;
use crate::prices::{Prices, by_type};
use crate::shortage::{crowds, unavoidable};

/// First step length as a share of Polyak's, for a day of [`FEW_SETS`].
const FIRST_FACTOR: f64 = 0.3;
/// With more sets than this the steps, one a set, get shorter, and the mean of the prices longer, so that a round does not
/// move them farther.
const FEW_SETS: f64 = 10.0;
/// The share shrinks by this each time round.
const DECAY: f64 = 0.98;
/// When the share has shrunk to this, it starts over (a little shorter).
const LEAST_FACTOR: f64 = 0.004;
/// Weight of the newest prices in the running mean, per set planned.
const NEWEST: f64 = 0.05;
/// Rounds from one bound to the next.
const BOUND_EVERY: u64 = 5;

/// Prices, what each set would take at its last planning, and the best bound.
pub(crate) struct Dual {
    contended: Vec<(PartKind, Ty, i32)>,
    families: Vec<Family>,
    price: ByType<f64>,
    mean: ByType<f64>,
    /// How many of each type the sets together take at their last planning.
    count: ByType<i32>,
    demand: Vec<Vec<(PartKind, Ty)>>,
    /// Cost of each set's last planning, without prices.
    real: Vec<f64>,
    cuts: Cuts,
    crowding: Crowding,
    factor: f64,
    /// What share of a step and of the newest prices counts, because there are many in a round.
    pace: f64,
    restarts: i32,
    round: u64,
    whole: Prices,
    /// Prices that gave the best bound.
    pub best_prices: Prices,
    /// No plan costs less.
    pub best_bound: Total,
}

impl Dual {
    pub fn new(p: &Compiled, contended: Vec<(PartKind, Ty, i32)>) -> Self {
        let crowds = crowds(p);
        let zero = by_type(p, 0.0);
        Self {
            families: families(p, &contended),
            contended,
            price: zero.clone(),
            mean: zero,
            count: by_type(p, 0),
            demand: vec![Vec::new(); p.sets.len()],
            real: vec![0.0; p.sets.len()],
            cuts: Cuts::new(p),
            best_bound: unavoidable(p, &crowds),
            crowding: Crowding::new(p, crowds),
            factor: FIRST_FACTOR,
            pace: pace(p.sets.len()),
            restarts: 0,
            round: 0,
            whole: by_type(p, Steps(0)),
            best_prices: by_type(p, Steps(0)),
        }
    }

    /// How many clubs surely stay unbuilt.
    pub fn surely_unbuilt(&self) -> usize {
        self.crowding.short()
    }

    /// One round over all sets; `target` is what the prices reach for. `go_on` is asked after each set.
    pub fn round(&mut self, oracles: &mut [SetOracle<'_>], target: Total, go_on: &mut dyn FnMut(Total) -> bool) {
        self.round += 1;
        for family in &self.families {
            family.lower(&mut self.price);
            family.lower(&mut self.mean);
        }
        if self.round.is_multiple_of(BOUND_EVERY) || self.round == 1 {
            self.bound(oracles, go_on);
            return;
        }
        for s in 0..oracles.len() {
            self.plan_set(s, &mut oracles[s]);
            // The first directions mean something only once every set has been planned.
            if self.round > 2 || s + 1 == oracles.len() {
                self.step(target.exact());
            }
            if !go_on(self.best_bound) {
                return;
            }
        }
        self.factor *= DECAY;
        if self.factor < LEAST_FACTOR {
            self.restarts += 1;
            self.factor = FIRST_FACTOR * 0.5_f64.powi(self.restarts.min(4));
            self.price.clone_from(&self.mean);
            self.cuts.back_to_mean();
        }
    }

    /// A bound from the mean prices.
    fn bound(&mut self, oracles: &mut [SetOracle<'_>], go_on: &mut dyn FnMut(Total) -> bool) {
        round_all(&self.mean, &mut self.whole);
        self.cuts.fix(Which::Mean);
        for o in oracles.iter_mut() {
            o.price_all(&self.whole);
            if self.round == 1 {
                o.leave_out_at_moderate_cost();
            }
            self.cuts.charge(o);
            if !go_on(self.best_bound) {
                return;
            }
        }
        let value = self.crowding.search(oracles);
        let worth = |&(k, ty, cap): &(PartKind, Ty, i32)| self.whole[k][ty].times(cap);
        let bound = value - self.cuts.worth() - self.contended.iter().map(worth).sum::<Total>();
        if bound > self.best_bound || self.round == 1 {
            self.best_bound = bound.max(self.best_bound);
            self.best_prices.clone_from(&self.whole);
        }
    }

    fn plan_set(&mut self, s: usize, o: &mut SetOracle<'_>) {
        round_all(&self.price, &mut self.whole);
        o.price_all(&self.whole);
        self.cuts.fix(Which::Present);
        self.cuts.charge(o);
        self.crowding.skips(s, o);
        let (value, window) = o.best_window();
        self.crowding.note(s, o, window);
        let cells = o.cells_in(window);
        let whole = cells.iter().all(Option::is_some);
        self.cuts.note(s, cells.len(), window.filter(|_| whole).map(|w| (o.levels[w.lo], o.levels[w.hi])));
        let demand = &mut self.demand[s];
        demand.iter().for_each(|&(k, ty)| self.count[k][ty] -= 1);
        demand.clear();
        o.demand(&cells, &self.whole, demand);
        let mut real = window.map_or(value, |w| w.value);
        for &(k, ty) in demand.iter() {
            self.count[k][ty] += 1;
            real -= Total::from(self.whole[k][ty]);
        }
        self.real[s] = real.exact();
    }

    fn step(&mut self, target: f64) {
        let mut value: f64 = self.real.iter().sum::<f64>() + self.crowding.worth().exact();
        let (beyond, mut norm) = self.cuts.excess();
        value += beyond;
        for &(k, ty, cap) in &self.contended {
            let excess = f64::from(self.count[k][ty] - cap);
            let price = self.price[k][ty];
            value += price * excess;
            if excess > 0.0 || price > 0.0 {
                norm += excess * excess;
            }
        }
        // Nothing is wanted more often than it is there and nothing has a price: no direction to move in.
        if norm == 0.0 {
            return;
        }
        let step = self.pace * self.factor * (target - value).max(0.0) / norm;
        let newest = self.pace * NEWEST;
        for &(k, ty, cap) in &self.contended {
            let excess = f64::from(self.count[k][ty] - cap);
            let price = &mut self.price[k][ty];
            *price = (*price + step * excess).clamp(0.0, MOST_PRICE);
            let mean = &mut self.mean[k][ty];
            *mean += newest * (*price - *mean);
        }
        self.cuts.step(step, newest, MOST_PRICE / 16.0);
    }
}

fn pace(sets: usize) -> f64 {
    (FEW_SETS / sets.max(1) as f64).min(1.0)
}

fn round_all(exact: &ByType<f64>, whole: &mut Prices) {
    for (exact, whole) in exact.values().zip(whole.values_mut()) {
        exact.iter().zip(whole).for_each(|(x, w)| *w = Steps::half_up(*x));
    }
}
