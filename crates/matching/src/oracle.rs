//! The cheapest set for given prices, ignoring that parts run out: the bound's subproblem.
//!
//! Within a window of shaft residuals the clubs of a set do not affect each other, so the cheapest set is found by
//! going through windows and adding each club's cheapest column inside.

use std::sync::Arc;

use crate::charges::Charges;
use crate::compiled::{Club, Compiled, SetShape};
use crate::error::PartKind;
use crate::grid::{DeciGrams, FORBIDDEN, MilliPoints, Steps, Total};
use crate::index::{ADAPTER, ByKind, ByType, GRIP, HEAD, Level, MainKind, PerType, Place, SHAFT, TIP, Ty};
use crate::narrow::{DEAR, least_sum, narrow, wide};
use crate::prices::{Prices, by_type};
use crate::rows::Rows;
use crate::shortage::moderate_skip;
use crate::table::{Column, Folded, fill_row, fold, pick};

/// Tables above this many entries are not kept but worked out row by row.
const MATRIX_LIMIT: usize = 1 << 15;

/// Cheapest shaft and grip at one level of shaft residual.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cell {
    pub value: Steps,
    pub shaft: Place,
    /// Whether the cell costs that, and not just that at least (see `rows`).
    pub exact: bool,
}

pub(crate) const NO_CELL: Cell = Cell { value: FORBIDDEN, shaft: Place::of(0), exact: true };

/// One club's tables under the head and tip prices last given.
#[derive(Debug, Default)]
pub(crate) struct ClubTable {
    pub folded: Folded,
    /// Shafts × grips, above `offset`.
    matrix: Vec<i16>,
    offset: Steps,
    /// Instead of that, with a target mass.
    pub rows: Option<Rows>,
    /// Level of each shaft.
    pub level: Vec<Level>,
    /// Heads, tip weights or adapters can run out, so the tables depend on prices.
    varies: bool,
    /// Prices of heads, tip weights and adapters that the tables were worked out under; empty before the first time.
    under: Vec<Steps>,
}

/// All of a set's tables.
#[derive(Debug)]
pub(crate) struct SetOracle<'a> {
    pub p: &'a Compiled,
    pub shape: SetShape,
    pub clubs: Vec<Arc<Club>>,
    pub tables: Vec<ClubTable>,
    /// Distinct shaft residuals, ascending.
    pub levels: Vec<DeciGrams>,
    /// Cheapest cell for each club and level, under the prices last given.
    pub cells: Vec<Vec<Cell>>,
    /// Cost of leaving each club out, as the relaxed problem sees it.
    pub(crate) skips: Vec<Steps>,
    /// What windows cost beside their range.
    pub(crate) charges: Charges,
    /// Shafts below each level, counted once for every level they can be at.
    shafts_below: Vec<u64>,
    /// How many of each type the clubs could take at most.
    wanted: ByType<i32>,
    scratch: Vec<Steps>,
    row: Vec<Steps>,
    priced: Vec<i16>,
}

/// A window of levels (inclusive) and a lower bound of sets whose shafts span exactly it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Window {
    pub lo: usize,
    pub hi: usize,
    pub value: Total,
}

impl<'a> SetOracle<'a> {
    pub fn new(p: &'a Compiled, set: usize) -> Self {
        let shape = p.sets[set].clone();
        let clubs = p.clubs[shape.clubs.clone()].to_vec();
        let charged = shape.charges_range();
        let level = |res: DeciGrams| if charged { res } else { DeciGrams(0) };
        let mut levels: Vec<DeciGrams> =
            clubs.iter().flat_map(|c| c.cands[SHAFT].iter().map(|s| level(s.res))).collect();
        levels.sort_unstable();
        levels.dedup();
        let cells = vec![vec![NO_CELL; levels.len()]; clubs.len()];
        let tables = clubs.iter().map(|_| ClubTable::default()).collect();
        let skips = clubs.iter().map(|c| c.skip).collect();
        let mut oracle = Self {
            p,
            shape,
            clubs,
            tables,
            levels,
            cells,
            skips,
            charges: Charges::default(),
            shafts_below: vec![],
            wanted: by_type(p, 0),
            scratch: vec![],
            row: vec![],
            priced: vec![],
        };
        oracle.renew();
        oracle
    }

    /// Starts all tables anew after candidates have been taken out of clubs.
    pub fn renew(&mut self) {
        let mut wanted = by_type(self.p, 0);
        for club in &self.clubs {
            for (k, list) in club.cands.iter() {
                list.iter().for_each(|c| wanted[k][c.ty] += 1);
            }
            let mut most = PerType::new(wanted[TIP].len(), 0);
            for option in &club.tips {
                let twice = option.uses[0] == option.uses[1];
                for &t in option.uses.iter().flatten() {
                    most[t] = most[t].max(if twice { 2 } else { 1 });
                }
            }
            wanted[TIP].iter_mut().zip(&most).for_each(|(w, m)| *w += m);
            club.adapters.iter().flat_map(|list| list.iter()).for_each(|&a| wanted[ADAPTER][a] += 1);
        }
        let short = |k: PartKind, ty: Ty| i64::from(wanted[k][ty]) > i64::from(self.p.types[k][ty].cap);
        for c in 0..self.clubs.len() {
            let club = &self.clubs[c];
            let varies = club.cands[HEAD].iter().any(|h| short(PartKind::Head, h.ty))
                || club.tips.iter().any(|t| t.uses.iter().flatten().any(|&t| short(TIP, t)))
                || club.adapters.iter().flat_map(|list| list.iter()).any(|&a| short(ADAPTER, a));
            self.tables[c] = self.table(c, varies);
        }
        self.wanted = wanted;
        self.count_shafts();
    }

    fn count_shafts(&mut self) {
        self.shafts_below = vec![0; self.levels.len() + 1];
        if let Some(counted) = self.shape.shafts.clone() {
            for &(residual, count) in counted.iter() {
                let level = self.level_at(residual);
                self.shafts_below[level + 1] += u64::from(count);
            }
        } else {
            let mut at: Vec<(Level, Ty)> = Vec::new();
            for (table, club) in self.tables.iter().zip(&self.clubs) {
                at.extend(table.level.iter().zip(&club.cands[SHAFT]).map(|(&level, s)| (level, s.ty)));
            }
            at.sort_unstable();
            at.dedup();
            for (level, ty) in at {
                self.shafts_below[level.index() + 1] += u64::from(self.p.types[SHAFT][ty].cap);
            }
        }
        for level in 0..self.levels.len() {
            self.shafts_below[level + 1] += self.shafts_below[level];
        }
    }

    fn level_at(&self, residual: DeciGrams) -> usize {
        let counted = if self.shape.charges_range() { residual } else { DeciGrams(0) };
        self.levels.partition_point(|&l| l < counted)
    }

    /// Kind, type and count of everything that these clubs could use up.
    pub fn contended(&self) -> Vec<(PartKind, Ty, i32)> {
        let all = self.wanted.iter().flat_map(|(k, list)| list.types().map(move |ty| (k, ty)));
        let counted = all.map(|(k, ty)| (k, ty, self.p.types[k][ty].count()));
        counted.filter(|&(k, ty, cap)| self.wanted[k][ty] > cap).collect()
    }

    fn table(&self, c: usize, varies: bool) -> ClubTable {
        let level = self.clubs[c].cands[SHAFT].iter().map(|s| Level::of(self.level_at(s.res))).collect();
        let club = &self.clubs[c];
        let rows = club.mass.map(|charge| match &self.tables[c].rows {
            Some(rows) => rows.of_fewer(club),
            None => Rows::new(club, charge),
        });
        ClubTable { level, varies, rows, ..ClubTable::default() }
    }

    /// Lets tables follow the prices of heads and tip weights that other sets want too.
    pub fn share(&mut self, contended: &[(PartKind, Ty, i32)]) {
        for c in 0..self.clubs.len() {
            let club = &self.clubs[c];
            let listed = |k: PartKind, ty: Ty| match k {
                PartKind::Head => club.cands[HEAD].iter().any(|h| h.ty == ty),
                PartKind::Tip => club.tips.iter().any(|t| t.uses.contains(&Some(ty))),
                PartKind::Adapter => club.adapters.iter().any(|list| list.contains(&ty)),
                PartKind::Shaft | PartKind::Grip => false,
            };
            let varies = contended.iter().any(|&(k, ty, _)| listed(k, ty));
            self.tables[c] = self.table(c, varies);
        }
    }

    /// Puts another form of a club (with candidates taken out) in its place; returns what was there.
    pub fn replace(&mut self, c: usize, club: Arc<Club>) -> (Arc<Club>, ClubTable) {
        let old = std::mem::replace(&mut self.clubs[c], club);
        let table = self.table(c, self.tables[c].varies);
        (old, std::mem::replace(&mut self.tables[c], table))
    }

    /// Undoes [`SetOracle::replace`].
    pub fn restore(&mut self, c: usize, old: (Arc<Club>, ClubTable)) {
        (self.clubs[c], self.tables[c]) = old;
    }

    pub fn len(&self) -> usize {
        self.tables.len()
    }

    /// Level of a club's shaft residual.
    pub fn level_of(&self, c: usize, shaft: usize) -> usize {
        self.tables[c].level[shaft].index()
    }

    /// Whether a club's heads, tip weights or adapters can run out.
    pub fn varies(&self, c: usize) -> bool {
        self.tables[c].varies
    }

    /// Brings a club's tables up to the given head and tip prices, unless they are so already.
    pub fn refold(&mut self, c: usize, prices: &Prices) {
        let club = self.clubs[c].clone();
        let table = &mut self.tables[c];
        let heads = club.cands[HEAD].iter().map(|h| prices[HEAD][h.ty]);
        // One leading entry, so that a club without heads is worked out once too.
        let adapters = club.adapters.iter().flat_map(|list| list.iter()).map(|&a| prices[ADAPTER][a]);
        let under = || {
            std::iter::once(Steps(0)).chain(heads.clone()).chain(prices[TIP].iter().copied()).chain(adapters.clone())
        };
        if table.under.iter().copied().eq(under()) {
            return;
        }
        table.under.clear();
        table.under.extend(under());
        fold(&club, prices, &mut table.folded, &mut self.scratch);
        if let Some(rows) = &mut table.rows {
            rows.renew(&club, prices, &table.folded);
            return;
        }
        table.matrix.clear();
        let (shafts, grips) = (club.cands[SHAFT].len(), club.cands[GRIP].len());
        let entries = shafts * grips;
        if entries > 0 && entries <= MATRIX_LIMIT {
            self.row.resize(entries, Steps(0));
            for (s, row) in self.row.chunks_exact_mut(grips).enumerate() {
                fill_row(&club, &table.folded, Place::of(s), row);
            }
            let offset = self.row.iter().copied().min().unwrap_or_default();
            table.offset = offset;
            table.matrix.extend(self.row.iter().map(|&x| narrow(x - offset)));
        }
    }

    /// The row of a club's table for one shaft: cheapest club with each grip, shaft and grip prices not included. What comes
    /// to more than `most` with them may cost more than is told.
    pub fn row(&mut self, c: usize, s: usize, most: Steps) -> &[Steps] {
        let club = self.clubs[c].clone();
        self.row.resize(club.cands[GRIP].len(), Steps(0));
        let table = &mut self.tables[c];
        match (club.mass, &mut table.rows) {
            (Some(charge), Some(rows)) => rows.within(&club, charge, &table.folded, s, most, &mut self.row),
            _ => fill_row(&club, &table.folded, Place::of(s), &mut self.row),
        }
        &self.row
    }

    /// Cheapest cell at each level for one club, for levels `lo..=hi`.
    pub fn cells_between(&mut self, c: usize, prices: &Prices, lo: usize, hi: usize) {
        let club = self.clubs[c].clone();
        if self.tables[c].rows.is_some() {
            self.bound_cells(c, prices, lo, hi);
            return;
        }
        let list = &club.cands[GRIP];
        let base = list.iter().map(|g| prices[GRIP][g.ty]).min().unwrap_or_default();
        let mut priced = std::mem::take(&mut self.priced);
        priced.clear();
        priced.extend(list.iter().map(|g| narrow(prices[GRIP][g.ty] - base)));
        self.cells[c][lo..=hi].fill(NO_CELL);
        let first = self.tables[c].level.partition_point(|&l| l.index() < lo);
        for s in first..club.cands[SHAFT].len() {
            let level = self.tables[c].level[s].index();
            if level > hi {
                break;
            }
            let own = prices[SHAFT][club.cands[SHAFT][s].ty];
            if own >= FORBIDDEN {
                continue;
            }
            let table = &self.tables[c];
            let narrow_row = table.matrix.get(s * list.len()..(s + 1) * list.len()).unwrap_or(&[]);
            let least = least_sum(narrow_row, &priced);
            let least = if least < DEAR {
                table.offset + base + wide(least)
            } else {
                self.row(c, s, FORBIDDEN).iter().zip(list).fold(FORBIDDEN, |m, (&r, g)| m.min(r + prices[GRIP][g.ty]))
            };
            let value = least + own;
            if value < self.cells[c][level].value {
                self.cells[c][level] = Cell { value, shaft: Place::of(s), exact: true };
            }
        }
        self.priced = priced;
    }

    /// Sets what leaving clubs out costs in the prices' problem, for clubs that are in no crowd: a moderate cost more than
    /// the club costs where it may choose among all parts. The cells must be those of no prices.
    pub fn leave_out_at_moderate_cost(&mut self) {
        for ((skip, club), cells) in self.skips.iter_mut().zip(&self.clubs).zip(&self.cells) {
            let least = cells.iter().map(|x| x.value).min().unwrap_or(FORBIDDEN);
            *skip = least.saturating_add(moderate_skip(club)).min(club.skip);
        }
    }

    /// Cheapest cell at each level for one club.
    pub fn cells_of(&mut self, c: usize, prices: &Prices) {
        if let Some(hi) = self.levels.len().checked_sub(1) {
            self.cells_between(c, prices, 0, hi);
        }
    }

    /// What each shaft's cheapest club costs at least, where that is known without looking (see `rows`).
    pub fn row_bounds(&self, c: usize) -> Option<&[Steps]> {
        self.tables[c].rows.as_ref().map(Rows::bounds)
    }

    /// Brings a club's tables and cells up to given prices.
    pub fn price(&mut self, c: usize, prices: &Prices) {
        self.refold(c, prices);
        self.cells_of(c, prices);
    }

    /// Brings all clubs' tables and cells up to given prices.
    pub fn price_all(&mut self, prices: &Prices) {
        (0..self.len()).for_each(|c| self.price(c, prices));
    }

    /// The grip behind a cell that was worked out under these prices.
    fn grip(&mut self, c: usize, cell: Cell, prices: &Prices) -> usize {
        let (club, s) = (self.clubs[c].clone(), cell.shaft.index());
        let list = &club.cands[GRIP];
        if let (Some(charge), table) = (club.mass, &mut self.tables[c])
            && let Some(rows) = &mut table.rows
        {
            if !rows.is_exact(s) {
                rows.work_out(&club, charge, &table.folded, s, FORBIDDEN);
            }
            return rows.grip(s).map_or(0, Place::index);
        }
        let wanted = cell.value - prices[SHAFT][club.cands[SHAFT][s].ty];
        let table = &self.tables[c];
        let kept = table.matrix.get(s * list.len()..(s + 1) * list.len()).unwrap_or(&[]);
        let mut priced = kept.iter().zip(list).map(|(&r, g)| wide(r) + prices[GRIP][g.ty]);
        if let Some(g) = priced.position(|x| x == wanted - table.offset) {
            return g;
        }
        let priced = self.row(c, s, FORBIDDEN).iter().zip(list).map(|(&r, g)| r + prices[GRIP][g.ty]);
        priced.enumerate().min_by_key(|x| x.1).map_or(0, |x| x.0)
    }

    /// The column behind a cell that was worked out under these prices.
    pub fn column(&mut self, c: usize, cell: Cell, prices: &Prices) -> Option<Column> {
        let grip = self.grip(c, cell, prices);
        pick(&self.clubs[c], cell.shaft, Place::of(grip), prices).map(|x| x.1)
    }

    /// Kinds and types that cells take from the stock; heads, tip weights and adapters only where they can run out.
    pub fn demand(&mut self, cells: &[Option<Cell>], prices: &Prices, out: &mut Vec<(PartKind, Ty)>) {
        for (c, cell) in cells.iter().enumerate() {
            let Some(cell) = *cell else { continue };
            let club = self.clubs[c].clone();
            if self.varies(c) {
                out.extend(self.column(c, cell, prices).iter().flat_map(Column::uses));
            } else {
                let grip = self.grip(c, cell, prices);
                out.push((PartKind::Shaft, club.cands[SHAFT][cell.shaft.index()].ty));
                out.push((PartKind::Grip, club.cands[GRIP][grip].ty));
            }
        }
    }

    /// The cheapest window, or `None` when leaving every club unbuilt is as cheap; and what the set costs there.
    pub fn best_window(&mut self) -> (Total, Option<Window>) {
        loop {
            let (value, window) = self.cheapest_window();
            if !window.is_some_and(|w| self.settle(w)) {
                return (value, window);
            }
        }
    }

    /// As [`Self::best_window`], by the cells as they stand.
    pub fn cheapest_window(&self) -> (Total, Option<Window>) {
        let skip: Total = self.skips.iter().copied().sum();
        let mut best = (skip, None);
        self.scan_windows(&mut |w, touching| {
            if w.value < best.0 {
                // A set that leaves a club unbuilt is not charged: one that must, for want of shafts in the window, owes
                // nothing on top of that. The charge is for sets that span just this window.
                let value = match self.charges.at(w.lo, w.hi) {
                    Steps(0) => w.value,
                    _ if self.short(w.lo, w.hi) > 0 => touching,
                    charge => touching + Total::from(charge).min(self.leave_out(1, |c| self.least(c, w))),
                };
                if value < best.0 {
                    best = (value, Some(w));
                }
            }
            best.0
        });
        best
    }

    /// Visits windows (lo, hi); the visitor gets the window with the plain sum, the bound of sets that really touch
    /// both ends, and returns the value above which windows do not interest it.
    pub fn scan_windows(&self, visit: &mut dyn FnMut(Window, Total) -> Total) {
        let n = self.len();
        let floor: Total = (0..n)
            .map(|c| self.cells[c].iter().map(|x| x.value).min().unwrap_or(FORBIDDEN).min(self.skips[c]))
            .map(Total::from)
            .sum();
        let mut limit = Total::ANY;
        let mut run = vec![Steps(0); n];
        for lo in 0..self.levels.len() {
            for (c, r) in run.iter_mut().enumerate() {
                *r = self.skips[c];
            }
            for hi in lo..self.levels.len() {
                let range = Total::from(self.shape.range_cost(self.levels[hi] - self.levels[lo]));
                if range + floor > limit {
                    break;
                }
                let (mut sum, mut touch_lo, mut touch_hi) = (range, Total::ANY, Total::ANY);
                for (c, r) in run.iter_mut().enumerate() {
                    let at = self.cells[c][hi].value;
                    *r = (*r).min(at);
                    sum += *r;
                    touch_hi = touch_hi.min(Total::from(at) - Total::from(*r));
                    touch_lo = touch_lo.min(Total::from(self.cells[c][lo].value) - Total::from(*r));
                }
                let short = self.short(lo, hi);
                if short > 0 {
                    sum += self.leave_out(short, |c| run[c]);
                }
                let touching = sum + touch_lo.max(touch_hi);
                limit = visit(Window { lo, hi, value: sum }, touching);
            }
        }
    }

    /// What the set costs at least in a window, and at least if its shafts touch both ends of it; the cells must be up to
    /// date.
    pub fn window_value(&self, w: Window) -> (Total, Total) {
        let mut sum = Total::from(self.shape.range_cost(self.levels[w.hi] - self.levels[w.lo]));
        let (mut touch_lo, mut touch_hi) = (Steps(i32::MAX), Steps(i32::MAX));
        for (c, cells) in self.cells.iter().enumerate() {
            let least = cells[w.lo..=w.hi].iter().fold(self.skips[c], |m, x| m.min(x.value));
            sum += least;
            touch_lo = touch_lo.min(cells[w.lo].value - least);
            touch_hi = touch_hi.min(cells[w.hi].value - least);
        }
        let short = self.short(w.lo, w.hi);
        if short > 0 {
            sum += self.leave_out(short, |c| self.least(c, w));
        }
        (sum, sum + touch_lo.max(touch_hi))
    }

    /// How many clubs at least have no shaft in a window.
    fn short(&self, lo: usize, hi: usize) -> usize {
        let there = self.shafts_below[hi + 1] - self.shafts_below[lo];
        self.len().saturating_sub(usize::try_from(there).unwrap_or(usize::MAX))
    }

    /// What it adds at least to leave out so many clubs whose least costs are given.
    fn leave_out(&self, clubs: usize, least: impl Fn(usize) -> Steps) -> Total {
        let mut extra: Vec<Steps> = (0..self.len()).map(|c| self.skips[c] - least(c)).collect();
        extra.sort_unstable();
        extra.into_iter().take(clubs).sum()
    }

    /// A club's least cost in a window (or of leaving it unbuilt); the cells must be up to date.
    pub fn least(&self, c: usize, w: Window) -> Steps {
        self.cells[c][w.lo..=w.hi].iter().fold(self.skips[c], |m, x| m.min(x.value))
    }

    /// Points of a column's head, shaft and grip, and of what it has in the tip, adapter and weights together.
    pub fn points_of(&self, c: usize, x: &Column) -> ByKind<MilliPoints> {
        let club = &self.clubs[c];
        let points = |k: MainKind, ty: Ty| club.cands[k].iter().find(|c| c.ty == ty).map_or(MilliPoints(0), |c| c.pts);
        let tip =
            club.tips.iter().find(|t| t.uses == x.tips && t.adapter == x.adapter).map_or(MilliPoints(0), |t| t.pts);
        ByKind::from_fn(|kind| match kind {
            PartKind::Head => points(HEAD, x.head),
            PartKind::Shaft => points(SHAFT, x.shaft),
            PartKind::Grip => points(GRIP, x.grip),
            PartKind::Tip => tip,
            PartKind::Adapter => MilliPoints(0),
        })
    }

    /// Each club's cheapest cell in a window; `None` where leaving the club unbuilt is as cheap.
    pub fn cells_in(&self, window: Option<Window>) -> Vec<Option<Cell>> {
        let Some(w) = window else { return vec![None; self.len()] };
        (0..self.len())
            .map(|c| {
                let cell = self.cells[c][w.lo..=w.hi].iter().min_by_key(|x| x.value).copied()?;
                (cell.value < self.skips[c]).then_some(cell)
            })
            .collect()
    }

    /// Real cost of a plan of this set.
    pub fn plan_cost(&self, plan: &[Option<Column>]) -> Total {
        let clubs = plan.iter().zip(&self.clubs).map(|(column, club)| column.map_or(club.skip, |x| x.cost));
        let range = span(plan).map_or(Steps(0), |(lo, hi)| self.shape.range_cost(hi - lo));
        clubs.sum::<Total>() + range
    }
}

/// Least and greatest shaft residual of a plan.
pub(crate) fn span(plan: &[Option<Column>]) -> Option<(DeciGrams, DeciGrams)> {
    let residuals = plan.iter().flatten().map(|x| x.res);
    residuals.fold(None, |span, r| Some(span.map_or((r, r), |(lo, hi): (DeciGrams, DeciGrams)| (lo.min(r), hi.max(r)))))
}
