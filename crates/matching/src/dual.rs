//! The day's lower bound: prices of parts that many sets want.
//!
//! Surrogate subgradient steps (Zhao, Luh & Wang 1999): one set is planned anew under the present prices, the others
//! keep their last demand, and the prices move at once. That is as good a direction as planning all sets anew, at a
//! fraction of the work. A set is planned from short lists of columns (`pool`), fifty times as fast as from all parts; what
//! that says is no bound. So now and then all sets are planned from all parts under the running mean of the prices, which
//! moves far less than the prices themselves: that look gives a bound, and new lists. Where it does not better the bound,
//! prices start over from those that gave the best one, with shorter steps and the lists of both (as null steps of a bundle
//! method do: Lemaréchal 1975, from memory). The inequalities of `cuts` are priced along with the parts; those of
//! `shortage` have prices that are set anew before every planning, so that just the clubs that must stay out do.

use crate::compiled::Compiled;
use crate::crowd::Crowding;
use crate::cuts::{Cuts, Which};
use crate::error::PartKind;
use crate::grid::{MOST_PRICE, QUANTUM_EXACT, Steps, Total};
use crate::index::{ByType, TIP, Ty};
use crate::level::{Family, by_points, families};
use crate::oracle::SetOracle;
use crate::pool::Pool;
use crate::prices::{Prices, by_type};
use crate::shortage::{crowds, unavoidable};
use crate::stockleft::StockLeft;

/// First step length as a share of Polyak's, for a day of [`FEW_SETS`].
const FIRST_FACTOR: f64 = 0.3;
/// With more sets than this the steps, one a set, get shorter, and the mean of the prices longer, so that a round does not
/// move them farther.
const FEW_SETS: f64 = 10.0;
/// The share shrinks by this each time round.
const DECAY: f64 = 0.98;
/// It does not shrink below this.
const LEAST_FACTOR: f64 = 0.002;
/// So much shorter are the steps from the prices of the best bound, when those of the last did not better it.
const SHORTER: f64 = 0.7;
/// So much longer, when they did by this share of what is missing.
const LONGER: f64 = 2.0;
const MUCH: f64 = 0.02;
/// Where weights for the tip are scarce, all prices have far to go together, and steps are not cut short meanwhile: they
/// begin with this share, and get longer and shorter by these.
const FAR_FACTOR: f64 = 0.01;
const FAR_LONGER: f64 = 2.0;
const FAR_SHORTER: f64 = 0.5;
const FAR_MUCH: f64 = 0.002;
/// What a point is worth at first when prices by points are tried, in price steps, and how often the best is closed in on.
const FIRST_POINT: f64 = 50.0 * QUANTUM_EXACT;
const NEARER: usize = 2;
/// Prices are brought up or down together by so much at first (a logarithm), so often at most, and where what is wanted beyond
/// the stock is worth more than this share of it.
const STRIDE: f64 = 0.25;
const SCALINGS: usize = 7;
const LEVEL: f64 = 0.01;
/// Weight of the newest prices in the running mean, per set planned.
const NEWEST: f64 = 0.05;

/// Prices, what each set would take at its last planning, and the best bound.
pub(crate) struct Dual {
    contended: Vec<(PartKind, Ty, i32)>,
    families: Vec<Family>,
    price: ByType<f64>,
    mean: ByType<f64>,
    /// Those of the best bound.
    centre: ByType<f64>,
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
    /// Every set has been planned once.
    planned: bool,
    looked: bool,
    /// Prices by points were tried, and whether that was worth it: weights for the tip are scarce then.
    tried: bool,
    far: bool,
    /// The prices by place in the list of what is in stock.
    at: Vec<Steps>,
    whole: Prices,
    /// Prices that gave the best bound.
    pub best_prices: Prices,
    /// No plan costs less.
    pub best_bound: Total,
    /// Whether the last look bettered the bound.
    pub better: bool,
}

impl Dual {
    pub fn new(p: &Compiled, contended: Vec<(PartKind, Ty, i32)>) -> Self {
        let crowds = crowds(p);
        let zero = by_type(p, 0.0);
        Self {
            families: families(p, &contended),
            contended,
            price: zero.clone(),
            mean: zero.clone(),
            centre: zero,
            count: by_type(p, 0),
            demand: vec![Vec::new(); p.sets.len()],
            real: vec![0.0; p.sets.len()],
            cuts: Cuts::new(p),
            best_bound: unavoidable(p, &crowds),
            crowding: Crowding::new(p, crowds),
            better: true,
            factor: FIRST_FACTOR,
            pace: pace(p.sets.len()),
            planned: false,
            looked: false,
            tried: false,
            far: false,
            at: Vec::new(),
            whole: by_type(p, Steps(0)),
            best_prices: by_type(p, Steps(0)),
        }
    }

    /// How many clubs surely stay unbuilt.
    pub fn surely_unbuilt(&self) -> usize {
        self.crowding.short()
    }

    /// One round over all sets by their short lists; `target` is what the prices reach for.
    pub fn round(&mut self, oracles: &mut [SetOracle<'_>], pools: &[Vec<Pool>], stock: &StockLeft, target: Total) {
        for family in &self.families {
            family.lower(&mut self.price);
            family.lower(&mut self.mean);
        }
        for s in 0..oracles.len() {
            self.plan_set(s, &mut oracles[s], &pools[s], stock);
            // The first directions mean something only once every set has been planned.
            if self.planned || s + 1 == oracles.len() {
                self.step(target.exact());
            }
        }
        self.planned = true;
        let decay = if self.far { 1.0 } else { DECAY };
        self.factor = (self.factor * decay).max(LEAST_FACTOR);
    }

    /// Brings all prices up or down together, by the short lists: where something is scarce that all parts can help with, as
    /// weight in the tip is, every price has to rise in step, and steps along single prices find that out slowly. The bound is
    /// concave along this line, and its slope is what is wanted beyond the stock, times its price.
    pub fn rescale(&mut self, oracles: &mut [SetOracle<'_>], pools: &[Vec<Pool>], stock: &StockLeft) {
        if !self.far {
            return;
        }
        let (mut stride, mut turned) = (STRIDE, false);
        for _ in 0..SCALINGS {
            for s in 0..oracles.len() {
                self.plan_set(s, &mut oracles[s], &pools[s], stock);
            }
            let (mut slope, mut worth) = (0.0, 0.0);
            for &(k, ty, cap) in &self.contended {
                slope += self.price[k][ty] * f64::from(self.count[k][ty] - cap);
                worth += self.price[k][ty] * f64::from(cap);
            }
            if slope.abs() <= worth * LEVEL {
                return;
            }
            if (slope > 0.0) != (stride > 0.0) {
                (stride, turned) = (-stride / 2.0, true);
            } else if turned {
                stride /= 2.0;
            }
            for &(k, ty, _) in &self.contended {
                for list in [&mut self.price, &mut self.mean] {
                    list[k][ty] = (list[k][ty] * stride.exp()).min(MOST_PRICE);
                }
            }
        }
    }

    /// The prices that the tables of all sets were last worked out under.
    pub fn looked(&self) -> &Prices {
        &self.whole
    }

    /// A look at all parts under the mean prices, which gives a bound; whether there was time for it. `go_on` is asked after
    /// each set.
    pub fn look(&mut self, oracles: &mut [SetOracle<'_>], target: Total, go_on: &mut dyn FnMut(Total) -> bool) -> bool {
        let Some(bound) = self.bound_at_the_mean(oracles, go_on) else { return false };
        self.better = bound > self.best_bound || !self.looked;
        if self.better {
            let (gained, missing) = ((bound - self.best_bound).exact(), (target - self.best_bound).exact());
            let (much, longer) = if self.far { (FAR_MUCH, FAR_LONGER) } else { (MUCH, LONGER) };
            if self.looked && gained > missing * much {
                self.factor = (self.factor * longer).min(FIRST_FACTOR);
            }
            self.best_bound = bound.max(self.best_bound);
            self.best_prices.clone_from(&self.whole);
            self.centre.clone_from(&self.mean);
            self.cuts.keep_centre();
        } else {
            self.price.clone_from(&self.centre);
            self.mean.clone_from(&self.centre);
            self.cuts.back_to_centre();
            let shorter = if self.far { FAR_SHORTER } else { SHORTER };
            self.factor = (self.factor * shorter).max(LEAST_FACTOR);
        }
        self.looked = true;
        true
    }

    /// What the mean prices prove, from all parts; none where there was no time.
    fn bound_at_the_mean(
        &mut self,
        oracles: &mut [SetOracle<'_>],
        go_on: &mut dyn FnMut(Total) -> bool,
    ) -> Option<Total> {
        round_all(&self.mean, &mut self.whole);
        self.cuts.fix(Which::Mean);
        for o in oracles.iter_mut() {
            o.price_all(&self.whole);
            if !self.looked {
                o.leave_out_at_moderate_cost();
            }
            self.cuts.charge(o);
            if !go_on(self.best_bound) {
                return None;
            }
        }
        let best = self.best_bound;
        let value = self.crowding.search(oracles, &mut || go_on(best))?;
        self.crowding.raise_skips(oracles);
        let worth = |&(k, ty, cap): &(PartKind, Ty, i32)| self.whole[k][ty].times(cap);
        Some(value - self.cuts.worth() - self.contended.iter().map(worth).sum::<Total>())
    }

    /// After the first look: prices to go on from where weights for the tip are scarce, so much a point in all parts. How much
    /// is found by looks along that line, on which the bound is concave. Whether there are such prices; the tables are out of
    /// date then.
    pub fn first_by_points(
        &mut self,
        oracles: &mut [SetOracle<'_>],
        p: &Compiled,
        go_on: &mut dyn FnMut(Total) -> bool,
    ) -> bool {
        if std::mem::replace(&mut self.tried, true) || !self.wants_more_tips(oracles) {
            return false;
        }
        let points = by_points(p, &self.families);
        let set = |dual: &mut Self, per_point: f64| {
            for &(k, ty, _) in &dual.contended {
                dual.mean[k][ty] = (points[k][ty] * per_point).min(MOST_PRICE);
            }
        };
        let mut at = |dual: &mut Self, per_point: f64| {
            set(dual, per_point);
            dual.bound_at_the_mean(oracles, go_on)
        };
        let (mut best, mut found, mut per_point) = (self.best_bound, 0.0, FIRST_POINT);
        while per_point < MOST_PRICE
            && let Some(bound) = at(self, per_point)
            && bound > best
        {
            (best, found, per_point) = (bound, per_point, per_point * 2.0);
        }
        let mut stride = std::f64::consts::SQRT_2;
        for _ in 0..NEARER {
            for per_point in [found * stride, found / stride] {
                if per_point > 0.0
                    && let Some(bound) = at(self, per_point)
                    && bound > best
                {
                    (best, found) = (bound, per_point);
                    break;
                }
            }
            stride = stride.sqrt();
        }
        set(self, found);
        self.price.clone_from(&self.mean);
        self.far = found > 0.0;
        if self.far {
            self.factor = FAR_FACTOR;
        }
        true
    }

    /// Whether all sets together take more weights for the tip than there are, at the prices last looked at.
    fn wants_more_tips(&self, oracles: &mut [SetOracle<'_>]) -> bool {
        let mut taken = Vec::new();
        for o in oracles {
            let cells = o.cells_in(o.cheapest_window().1);
            o.demand(&cells, &self.whole, &mut taken);
        }
        let of = |ty: Ty| taken.iter().filter(|x| **x == (TIP, ty)).count();
        self.contended.iter().any(|&(k, ty, cap)| k == TIP && of(ty) > usize::try_from(cap).unwrap_or(0))
    }

    fn plan_set(&mut self, s: usize, o: &mut SetOracle<'_>, pools: &[Pool], stock: &StockLeft) {
        stock.prices(&self.price, &mut self.at);
        for (cells, pool) in o.cells.iter_mut().zip(pools) {
            pool.price(&self.at, cells);
        }
        self.cuts.fix(Which::Present);
        self.cuts.charge(o);
        self.crowding.skips(s, o);
        let (value, window) = o.cheapest_window();
        self.crowding.note(s, o, window);
        let cells = o.cells_in(window);
        let whole = cells.iter().all(Option::is_some);
        self.cuts.note(s, cells.len(), window.filter(|_| whole).map(|w| (o.levels[w.lo], o.levels[w.hi])));
        let demand = &mut self.demand[s];
        demand.iter().for_each(|&(k, ty)| self.count[k][ty] -= 1);
        demand.clear();
        let mut real = window.map_or(value, |w| w.value);
        for (cell, pool) in cells.iter().zip(pools) {
            let Some(cell) = cell else { continue };
            let column = pool.column(cell.shaft);
            demand.extend(column.uses());
            real -= Total::from(cell.value - column.cost);
        }
        demand.iter().for_each(|&(k, ty)| self.count[k][ty] += 1);
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
                norm += excess * excess / weight(cap);
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
            *price = (*price + step * excess / weight(cap)).clamp(0.0, MOST_PRICE);
            let mean = &mut self.mean[k][ty];
            *mean += newest * (*price - *mean);
        }
        self.cuts.step(step, newest, MOST_PRICE / 16.0);
    }
}

/// A type of which there are many is wanted many times too often, and moves no farther for it.
fn weight(cap: i32) -> f64 {
    f64::from(cap.max(1))
}

fn pace(sets: usize) -> f64 {
    (FEW_SETS / sets.max(1) as f64).min(1.0)
}

fn round_all(exact: &ByType<f64>, whole: &mut Prices) {
    for (exact, whole) in exact.values().zip(whole.values_mut()) {
        exact.iter().zip(whole).for_each(|(x, w)| *w = Steps::half_up(*x));
    }
}
