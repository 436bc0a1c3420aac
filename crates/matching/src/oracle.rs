//! The cheapest set for given prices, ignoring that parts run out: the bound's subproblem.
//!
//! Within a window of shaft residuals the clubs of a set do not affect each other, so the cheapest set is found by
//! going through windows and adding each club's cheapest column inside.

use crate::compile::{Club, Compiled, GRIP, HEAD, SHAFT, SetShape, TIP};
use crate::grid::FORBIDDEN;
use crate::table::{ByType, Column, Folded, fill_row, fold, pick};

/// Tables above this many entries are not kept but worked out row by row.
const MATRIX_LIMIT: usize = 1 << 15;

/// Cheapest shaft and grip at one level of shaft residual.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cell {
    pub value: i32,
    pub shaft: u32,
    pub grip: u32,
}

const NO_CELL: Cell = Cell { value: FORBIDDEN, shaft: 0, grip: 0 };

/// One club's tables under the head and tip prices last given.
#[derive(Debug, Default)]
pub(crate) struct ClubTable {
    folded: Folded,
    matrix: Vec<i32>,
    /// Level of each shaft.
    level: Vec<u32>,
    /// Heads or tip weights can run out, so the tables depend on prices.
    varies: bool,
    fresh: bool,
}

/// All of a set's tables.
#[derive(Debug)]
pub(crate) struct SetOracle<'a> {
    pub p: &'a Compiled,
    pub shape: SetShape,
    pub tables: Vec<ClubTable>,
    /// Distinct shaft residuals, ascending.
    pub levels: Vec<i32>,
    /// Cheapest cell for each club and level, under the prices last given.
    pub cells: Vec<Vec<Cell>>,
    scratch: Vec<i32>,
    row: Vec<i32>,
    priced: Vec<i32>,
}

/// A window of levels (inclusive) and a lower bound of sets whose shafts span exactly it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Window {
    pub lo: usize,
    pub hi: usize,
    pub value: i64,
}

impl<'a> SetOracle<'a> {
    pub fn new(p: &'a Compiled, set: usize) -> Self {
        let shape = p.sets[set].clone();
        let clubs = &p.clubs[shape.clubs.clone()];
        let charged = shape.charges_range();
        let mut levels: Vec<i32> =
            clubs.iter().flat_map(|c| c.cands[SHAFT].iter().map(|s| if charged { s.res } else { 0 })).collect();
        levels.sort_unstable();
        levels.dedup();
        let tables = clubs
            .iter()
            .map(|club| {
                let level = club.cands[SHAFT].iter().map(|s| if charged { s.res } else { 0 });
                let level = level.map(|r| levels.partition_point(|&l| l < r) as u32).collect();
                let varies = club.cands[HEAD].iter().any(|h| p.contended(HEAD, h.ty))
                    || club.tips.iter().any(|t| t.uses.iter().flatten().any(|&t| p.contended(TIP, t)));
                ClubTable { level, varies, ..ClubTable::default() }
            })
            .collect();
        let cells = vec![vec![NO_CELL; levels.len()]; clubs.len()];
        Self { p, shape, tables, levels, cells, scratch: vec![], row: vec![], priced: vec![] }
    }

    pub fn club(&self, c: usize) -> &'a Club {
        &self.p.clubs[self.shape.clubs.start + c]
    }

    pub fn len(&self) -> usize {
        self.tables.len()
    }

    /// Level of a club's shaft residual.
    pub fn level_of(&self, c: usize, shaft: usize) -> usize {
        self.tables[c].level[shaft] as usize
    }

    /// Whether a club's heads or tip weights can run out.
    pub fn varies(&self, c: usize) -> bool {
        self.tables[c].varies
    }

    /// Brings a club's tables up to the given head and tip prices. `force` does it in any case; otherwise tables of clubs whose
    /// heads and tip weights cannot run out are kept.
    pub fn refold(&mut self, c: usize, prices: &ByType, force: bool) {
        let club = self.club(c);
        let table = &mut self.tables[c];
        if table.fresh && !table.varies && !force {
            return;
        }
        fold(club, &prices[HEAD], &prices[TIP], &mut table.folded, &mut self.scratch);
        let (s, g) = (club.cands[SHAFT].len(), club.cands[GRIP].len());
        table.matrix.clear();
        if s * g > 0 && s * g <= MATRIX_LIMIT {
            table.matrix.resize(s * g, 0);
            for (i, row) in table.matrix.chunks_exact_mut(g).enumerate() {
                fill_row(club, &table.folded, i, row);
            }
        }
        table.fresh = true;
    }

    /// The row of a club's table for one shaft: cheapest club with each grip, shaft and grip prices not included.
    pub fn row(&mut self, c: usize, s: usize) -> &[i32] {
        let club = self.club(c);
        let grips = club.cands[GRIP].len();
        let table = &self.tables[c];
        if table.matrix.is_empty() {
            self.row.resize(grips, 0);
            fill_row(club, &table.folded, s, &mut self.row);
            &self.row
        } else {
            &table.matrix[s * grips..(s + 1) * grips]
        }
    }

    /// Cheapest cell at each level for one club.
    pub fn cells_of(&mut self, c: usize, prices: &ByType) {
        let club = self.club(c);
        let mut priced = std::mem::take(&mut self.priced);
        priced.clear();
        priced.extend(club.cands[GRIP].iter().map(|g| prices[GRIP][g.ty as usize]));
        self.cells[c].fill(NO_CELL);
        for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
            let own = prices[SHAFT][shaft.ty as usize];
            if own >= FORBIDDEN {
                continue;
            }
            let level = self.tables[c].level[s] as usize;
            let row = self.row(c, s);
            let least = row.iter().zip(&priced).fold(FORBIDDEN, |m, (&r, &q)| m.min(r.saturating_add(q)));
            let value = least.saturating_add(own);
            if value < self.cells[c][level].value {
                let row = self.row(c, s);
                let grip = row.iter().zip(&priced).position(|(&r, &q)| r.saturating_add(q) == least).unwrap_or(0);
                self.cells[c][level] = Cell { value, shaft: s as u32, grip: grip as u32 };
            }
        }
        self.priced = priced;
    }

    /// The cheapest window, or `None` when leaving every club unbuilt is as cheap; and what the set costs there.
    pub fn best_window(&self) -> (i64, Option<Window>) {
        let skip: i64 = (0..self.len()).map(|c| i64::from(self.club(c).skip)).sum();
        let mut best = (skip, None);
        self.scan_windows(&mut |w, _| {
            if w.value < best.0 {
                best = (w.value, Some(w));
            }
            best.0
        });
        best
    }

    /// Visits windows (lo, hi); the visitor gets the window with the plain sum, the bound of sets that really touch
    /// both ends, and returns the value above which windows do not interest it.
    pub fn scan_windows(&self, visit: &mut dyn FnMut(Window, i64) -> i64) {
        let n = self.len();
        let floor: i64 = (0..n)
            .map(|c| self.cells[c].iter().map(|x| x.value).min().unwrap_or(FORBIDDEN).min(self.club(c).skip))
            .map(i64::from)
            .sum();
        let mut limit = i64::MAX;
        let mut run = vec![0_i32; n];
        for lo in 0..self.levels.len() {
            for (c, r) in run.iter_mut().enumerate() {
                *r = self.club(c).skip;
            }
            for hi in lo..self.levels.len() {
                let range = i64::from(self.shape.range_cost(self.levels[hi] - self.levels[lo]));
                if range + floor > limit {
                    break;
                }
                let (mut sum, mut touch_lo, mut touch_hi) = (range, i64::MAX, i64::MAX);
                for (c, r) in run.iter_mut().enumerate() {
                    let at = self.cells[c][hi].value;
                    *r = (*r).min(at);
                    sum += i64::from(*r);
                    touch_hi = touch_hi.min(i64::from(at) - i64::from(*r));
                    touch_lo = touch_lo.min(i64::from(self.cells[c][lo].value) - i64::from(*r));
                }
                let touching = sum + touch_lo.max(touch_hi);
                limit = visit(Window { lo, hi, value: sum }, touching);
            }
        }
    }

    /// Each club's cheapest cell in a window; `None` where leaving the club unbuilt is as cheap.
    pub fn cells_in(&self, window: Option<Window>) -> Vec<Option<Cell>> {
        let Some(w) = window else { return vec![None; self.len()] };
        (0..self.len())
            .map(|c| {
                let cell = self.cells[c][w.lo..=w.hi].iter().min_by_key(|x| x.value).copied()?;
                (cell.value < self.club(c).skip).then_some(cell)
            })
            .collect()
    }

    /// Columns of cells, with head and tip weight filled in.
    pub fn columns(&self, cells: &[Option<Cell>], prices: &ByType) -> Vec<Option<Column>> {
        cells
            .iter()
            .enumerate()
            .map(|(c, cell)| {
                let cell = (*cell)?;
                let found = pick(self.club(c), cell.shaft as usize, cell.grip as usize, &prices[HEAD], &prices[TIP]);
                found.map(|f| f.1)
            })
            .collect()
    }

    /// Columns with the numbers of their clubs over all sets.
    pub fn demand<'c>(&self, columns: &'c [Option<Column>]) -> impl Iterator<Item = (usize, &'c Column)> + use<'c> {
        let start = self.shape.clubs.start;
        columns.iter().enumerate().filter_map(move |(c, column)| Some((start + c, column.as_ref()?)))
    }

    /// Real cost of a plan of this set.
    pub fn plan_cost(&self, plan: &[Option<Column>]) -> i64 {
        let (mut sum, mut span) = (0_i64, None::<(i32, i32)>);
        for (c, column) in plan.iter().enumerate() {
            let club = self.club(c);
            if let Some(column) = column {
                sum += i64::from(column.cost(club));
                let r = club.cands[SHAFT][column.shaft as usize].res;
                span = Some(span.map_or((r, r), |(lo, hi)| (lo.min(r), hi.max(r))));
            } else {
                sum += i64::from(club.skip);
            }
        }
        sum + span.map_or(0, |(lo, hi)| i64::from(self.shape.range_cost(hi - lo)))
    }
}
