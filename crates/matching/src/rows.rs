//! The table of shafts and grips of a club with a target mass, worked out no further than it is looked at.
//!
//! With a target mass each entry takes a walk over heads and tip weights (`mass`), some hundred times as long as the look-up
//! that does without. But few entries matter. So the table keeps lower bounds: first those that ignore the mass or the
//! prices of heads (`table`, `tension`), and where an entry was worked out, what it came to. When prices of heads and tip
//! weights fall, every entry falls by no more than the greatest of these falls together, the *drift*, which is noted by row.
//! Whoever looks for the cheapest entry works out the one that may be cheapest until it is.

use crate::compiled::{Club, MassCharge};
use crate::grid::{FORBIDDEN, Steps};
use crate::index::{GRIP, HEAD, Place, SHAFT};
use crate::narrow::{DEAR, least_sum, narrow, wide};
use crate::prices::{Prices, tip_price};
use crate::table::Folded;
use crate::tension::Tension;

/// Tables above this many entries are bounded afresh at every look.
const MATRIX_LIMIT: usize = 1 << 17;

/// What is known of one club's table.
#[derive(Debug, Default)]
pub(crate) struct Rows {
    /// Shafts × grips above `offset`: each costs at least that, less what prices have drifted since.
    least: Vec<i16>,
    offset: Steps,
    /// How far prices had drifted when each row was last bounded.
    at: Vec<Steps>,
    drift: Steps,
    /// How far the prices asked for lie below those that the bounds hold for.
    slip: Steps,
    /// Prices of heads and of what goes in at the tip that the bounds hold for.
    under: Vec<Steps>,
    /// Whether the bounds are to be kept: not those under prices that forbid what has run out.
    keep: bool,
    tension: Tension,
    /// Under the prices last asked for: each shaft's and grip's own, and each row's cheapest entry or a bound of it.
    shafts: Vec<Steps>,
    grips: Vec<Steps>,
    row: Vec<Steps>,
    /// The grip of each row that is worked out.
    grip: Vec<Option<Place>>,
    narrow: Vec<i16>,
    base: Steps,
    /// Room to work a row out.
    known: Vec<Steps>,
    exact: Vec<bool>,
}

impl Rows {
    pub fn new(club: &Club, charge: MassCharge) -> Self {
        Self { tension: Tension::new(club, charge), ..Self::default() }
    }

    /// For the same club with candidates taken out.
    pub fn of_fewer(&self, club: &Club) -> Self {
        Self { tension: self.tension.of_fewer(club), ..Self::default() }
    }

    /// Takes up prices of heads, tip weights and adapters; `folded` is up to date with them.
    pub fn renew(&mut self, club: &Club, prices: &Prices, folded: &Folded) {
        let heads = club.cands[HEAD].iter().map(|h| prices[HEAD][h.ty]);
        let asked: Vec<Steps> = heads.chain(club.tips.iter().map(|t| tip_price(t, prices))).collect();
        self.tension.renew(club, prices);
        if self.under.is_empty() {
            self.under = asked;
            self.keep = true;
            self.begin(club, folded);
            return;
        }
        let (heads, tips) = self.under.split_at(club.cands[HEAD].len());
        let fall = |old: &[Steps], new: &[Steps]| {
            old.iter().zip(new).map(|(&old, &new)| old - new).max().unwrap_or_default().max(Steps(0))
        };
        let (asked_heads, asked_tips) = asked.split_at(heads.len());
        self.slip = fall(heads, asked_heads) + fall(tips, asked_tips);
        self.keep = asked.iter().all(|&x| x < FORBIDDEN);
        if self.keep {
            self.drift += self.slip;
            self.slip = Steps(0);
            self.under = asked;
            // Long before the sum of all falls would leave 32 bits.
            if self.drift > FORBIDDEN {
                self.drift = Steps(0);
                self.begin(club, folded);
            }
        }
    }

    /// Bounds all entries by what ignores the mass, or the prices of heads.
    fn begin(&mut self, club: &Club, folded: &Folded) {
        let (shafts, grips) = (club.cands[SHAFT].len(), club.cands[GRIP].len());
        self.at = vec![self.drift; shafts];
        self.least.clear();
        if shafts * grips > MATRIX_LIMIT || shafts * grips == 0 {
            return;
        }
        let mut all = Vec::with_capacity(shafts * grips);
        for s in 0..shafts {
            all.extend((0..grips).map(|g| self.bound(club, folded, s, g)));
        }
        let least = all.iter().copied().min().unwrap_or_default();
        // Half of the room is for what gets cheaper.
        self.offset = least + wide(DEAR / 2);
        self.least.extend(all.into_iter().map(|x| narrow(x - self.offset)));
    }

    /// A bound of one entry from nothing but the present prices of heads and tip weights.
    fn bound(&self, club: &Club, folded: &Folded, s: usize, g: usize) -> Steps {
        let (shaft, grip) = (&club.cands[SHAFT][s], &club.cands[GRIP][g]);
        let own = shaft.cost + grip.cost;
        let apart = self.tension.least(s, g).unwrap_or_default();
        (folded.without_mass(shaft.pts, grip.pts).max(apart) + own).min(FORBIDDEN)
    }

    /// Takes up prices of shafts and grips, and bounds the rows `from..to`.
    pub fn price(&mut self, club: &Club, prices: &Prices, folded: &Folded, rows: std::ops::Range<usize>) {
        let list = &club.cands[GRIP];
        self.grips.clear();
        self.grips.extend(list.iter().map(|g| prices[GRIP][g.ty]));
        self.shafts.clear();
        self.shafts.extend(club.cands[SHAFT].iter().map(|s| prices[SHAFT][s.ty]));
        self.base = self.grips.iter().copied().min().unwrap_or_default();
        self.narrow.clear();
        self.narrow.extend(self.grips.iter().map(|&g| narrow(g - self.base)));
        self.row.resize(self.shafts.len(), FORBIDDEN);
        self.grip.clear();
        self.grip.resize(self.shafts.len(), None);
        for s in rows {
            self.row[s] = self.row_bound(club, folded, s);
        }
    }

    fn row_bound(&self, club: &Club, folded: &Folded, s: usize) -> Steps {
        let own = self.shafts[s];
        if own >= FORBIDDEN || self.base >= FORBIDDEN {
            return FORBIDDEN;
        }
        let grips = self.grips.len();
        if let Some(row) = self.least.get(s * grips..(s + 1) * grips) {
            let least = self.offset + self.base + wide(least_sum(row, &self.narrow));
            return least - (self.drift - self.at[s]) - self.slip + own;
        }
        let bound = |(g, &price): (usize, &Steps)| self.bound(club, folded, s, g).saturating_add(price);
        self.grips.iter().enumerate().map(bound).min().unwrap_or(FORBIDDEN).saturating_add(own)
    }

    /// Cheapest entry of a row, or what it costs at least.
    pub fn row(&self, s: usize) -> Steps {
        self.row[s]
    }

    /// [`Rows::row`] of all rows.
    pub fn bounds(&self) -> &[Steps] {
        &self.row
    }

    /// Whether a row is worked out: [`Rows::row`] is the cost of an entry.
    pub fn is_exact(&self, s: usize) -> bool {
        self.grip[s].is_some() || self.row[s] >= FORBIDDEN
    }

    /// The grip of a row that is worked out.
    pub fn grip(&self, s: usize) -> Option<Place> {
        self.grip[s]
    }

    /// Works a row out, or so far that it is known to cost `stop` or more: the entry that may be the cheapest is worked out
    /// until it is.
    pub fn work_out(&mut self, club: &Club, charge: MassCharge, folded: &Folded, s: usize, stop: Steps) {
        let own = self.shafts[s];
        let mut known = std::mem::take(&mut self.known);
        self.bound_row(club, folded, s, &mut known);
        let mut exact = std::mem::take(&mut self.exact);
        exact.clear();
        exact.resize(known.len(), false);
        let priced = |known: &[Steps], grips: &[Steps]| {
            let all = known.iter().zip(grips).map(|(&x, &price)| x.saturating_add(price));
            all.enumerate().min_by_key(|x| x.1).filter(|x| x.1 < FORBIDDEN)
        };
        (self.row[s], self.grip[s]) = (FORBIDDEN, None);
        while let Some((g, least)) = priced(&known, &self.grips) {
            self.row[s] = (least + own).min(FORBIDDEN);
            if exact[g] {
                self.grip[s] = Some(Place::of(g));
                break;
            }
            if self.row[s] >= stop {
                break;
            }
            known[g] = self.exactly(club, charge, folded, s, g, FORBIDDEN);
            exact[g] = true;
        }
        self.keep_row(club, folded, s, &known);
        (self.known, self.exact) = (known, exact);
    }

    /// Bounds of a row's entries, without prices of shaft and grip.
    fn bound_row(&self, club: &Club, folded: &Folded, s: usize, out: &mut Vec<Steps>) {
        let n = self.grips.len();
        let since = self.drift + self.slip - self.at[s];
        out.clear();
        out.extend((0..n).map(|g| self.bound(club, folded, s, g)));
        if let Some(kept) = self.least.get(s * n..(s + 1) * n) {
            for (out, &kept) in out.iter_mut().zip(kept) {
                *out = (*out).max(self.offset + wide(kept) - since);
            }
        }
    }

    /// What an entry costs, or `limit`, if that is less.
    fn exactly(&self, club: &Club, charge: MassCharge, folded: &Folded, s: usize, g: usize, limit: Steps) -> Steps {
        let (shaft, grip) = (&club.cands[SHAFT][s], &club.cands[GRIP][g]);
        let own = shaft.cost + grip.cost;
        let (pts, cg) = (club.base + shaft.pts + grip.pts, shaft.cg + grip.cg);
        folded.fits.least(club, charge, pts, cg, limit - own) + own
    }

    /// Keeps bounds of a row for later prices.
    fn keep_row(&mut self, club: &Club, folded: &Folded, s: usize, known: &[Steps]) {
        let n = known.len();
        let Some(kept) = self.least.get_mut(s * n..(s + 1) * n).filter(|_| self.keep) else { return };
        let mut low = false;
        for (kept, &known) in kept.iter_mut().zip(known) {
            let above = known - self.offset;
            low |= above < wide(i16::MIN);
            *kept = narrow(above);
        }
        self.at[s] = self.drift;
        if low {
            self.begin(club, folded);
        }
    }

    /// Costs of a row's entries without prices of shaft and grip, exact where they are `most` or less with them, and more
    /// than that elsewhere.
    pub fn within(
        &mut self,
        club: &Club,
        charge: MassCharge,
        folded: &Folded,
        s: usize,
        most: Steps,
        out: &mut [Steps],
    ) {
        let own = self.shafts[s];
        let mut known = std::mem::take(&mut self.known);
        self.bound_row(club, folded, s, &mut known);
        for (g, known) in known.iter_mut().enumerate() {
            let limit = most - own.min(FORBIDDEN) - self.grips[g].min(FORBIDDEN) + Steps(1);
            if *known < limit {
                *known = self.exactly(club, charge, folded, s, g, limit);
            }
        }
        out.copy_from_slice(&known);
        self.keep_row(club, folded, s, &known);
        self.known = known;
    }
}

#[cfg(test)]
mod tests {
    use crate::compile::compile;
    use crate::grid::{FORBIDDEN, Steps};
    use crate::index::{GRIP, HEAD, SHAFT};
    use crate::instance::{Rng, Variant, set};
    use crate::model::{JobSet, MassTarget};
    use crate::oracle::SetOracle;
    use crate::prices::{Prices, by_type, tip_price};
    use crate::table::column;

    /// Against all columns, under prices that rise, fall, and forbid what has run out, one after another.
    #[test]
    fn the_cheapest_cell_is_that_of_a_look_at_all_columns() {
        let (mut cells, mut forbidden) = (0, 0);
        for seed in 0..6 {
            let mut rng = Rng::new(seed);
            let mut problem = set(seed, Variant::TwoHeadModels);
            problem.clubs.truncate(3);
            for club in &mut problem.clubs {
                let nominal_g = club.head_scale.expect("given").zero_mass_g + club.shaft_nominal_g + 50.0;
                let target_g = nominal_g + rng.uniform(-4.0, 6.0);
                club.mass_target = Some(MassTarget { base_mass_g: 0.0, target_g });
                club.heads.truncate(if seed == 5 { 1 } else { 9 });
                club.shafts.truncate(14);
                club.grips.truncate(11);
                club.heads.iter_mut().for_each(|h| h.extra_cost = rng.uniform(0.0, 0.02));
            }
            let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
            let p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
            let mut o = SetOracle::new(&p, 0);
            let mut prices = by_type(&p, Steps(0));
            for turn in 0..12 {
                for price in prices.values_mut().flatten() {
                    let moved = Steps(if *price >= FORBIDDEN { 0 } else { price.0 } + rng.below(600) as i32 - 280);
                    *price = moved.max(Steps(0));
                    if turn % 3 == 2 && rng.below(8) == 0 {
                        *price = FORBIDDEN;
                        forbidden += 1;
                    }
                }
                o.price_all(&prices);
                for c in 0..o.len() {
                    for level in 0..o.levels.len() {
                        let only = |_: &[_], i: usize| if i == level { Steps(0) } else { FORBIDDEN };
                        let told = o.cheapest_cell(c, only).expect("a level").0;
                        let least = least(&o, c, level, &prices);
                        assert_eq!(told.limit(), least.min(FORBIDDEN - Steps(1)), "seed {seed} turn {turn}");
                        cells += usize::from(least < FORBIDDEN);
                    }
                }
            }
        }
        assert!(cells > 1000 && forbidden > 100, "{cells} {forbidden}");
    }

    fn least(o: &SetOracle<'_>, c: usize, level: usize, prices: &Prices) -> Steps {
        let club = &o.clubs[c];
        let mut least = FORBIDDEN;
        for (_, shaft) in club.cands[SHAFT].iter().enumerate().filter(|&(s, _)| o.level_of(c, s) == level) {
            for grip in &club.cands[GRIP] {
                for head in &club.cands[HEAD] {
                    for tip in &club.tips {
                        let parts = prices[SHAFT][shaft.ty].saturating_add(prices[GRIP][grip.ty]);
                        let parts = parts.saturating_add(prices[HEAD][head.ty]).saturating_add(tip_price(tip, prices));
                        least = least.min(column(club, head, shaft, grip, tip).cost.saturating_add(parts));
                    }
                }
            }
        }
        least
    }
}
