//! Cells of clubs with target masses, worked out no further than a plan of the set would take them (see `rows`).

use crate::grid::{DeciGrams, FORBIDDEN, Steps, Total};
use crate::index::Place;
use crate::oracle::{Cell, NO_CELL, SetOracle, Window};
use crate::prices::Prices;

impl SetOracle<'_> {
    /// As [`Self::cells_between`], with a target mass: how cheap each cell may be.
    pub fn bound_cells(&mut self, c: usize, prices: &Prices, lo: usize, hi: usize) {
        let club = self.clubs[c].clone();
        let table = &mut self.tables[c];
        let Some(rows) = &mut table.rows else { return };
        let first = table.level.partition_point(|l| l.index() < lo);
        let end = table.level.partition_point(|l| l.index() <= hi);
        rows.price(&club, prices, &table.folded, first..end);
        self.cells[c][lo..=hi].fill(NO_CELL);
        for s in first..end {
            let (cell, value) = (&mut self.cells[c][table.level[s].index()], rows.row(s));
            if value < cell.value {
                *cell = Cell { value, shaft: Place::of(s), exact: false };
            }
        }
    }

    /// Works out the shaft that may be the cheapest of a cell, until it is, or is known not to be, or costs `stop`.
    fn work_out(&mut self, c: usize, level: usize, stop: Steps) {
        let club = self.clubs[c].clone();
        let table = &mut self.tables[c];
        let cell = &mut self.cells[c][level];
        let (Some(charge), Some(rows)) = (club.mass, &mut table.rows) else { return };
        let first = table.level.partition_point(|l| l.index() < level);
        let end = first + table.level[first..].partition_point(|l| l.index() == level);
        let others = (first..end).filter(|&s| s != cell.shaft.index()).map(|s| rows.row(s));
        let stop = others.min().unwrap_or(FORBIDDEN).min(stop);
        rows.work_out(&club, charge, &table.folded, cell.shaft.index(), stop.saturating_add(Steps(1)));
        *cell = NO_CELL;
        for s in first..end {
            if rows.row(s) < cell.value {
                *cell = Cell { value: rows.row(s), shaft: Place::of(s), exact: rows.is_exact(s) };
            }
        }
    }

    /// A club's cheapest cell by its value and a surcharge by level, worked out.
    pub fn cheapest_cell(
        &mut self,
        c: usize,
        surcharge: impl Fn(&[DeciGrams], usize) -> Steps,
    ) -> Option<(Total, Cell)> {
        loop {
            let charged = self.cells[c].iter().enumerate();
            let charged = charged.map(|(i, x)| (Total::from(x.value) + surcharge(&self.levels, i), i, *x));
            let (value, level, cell) = charged.min_by_key(|x| x.0)?;
            if cell.exact {
                return Some((value, cell));
            }
            self.work_out(c, level, FORBIDDEN);
        }
    }

    /// Works out the cells of a window that its clubs would take; whether one of them comes to more than it seemed.
    pub fn settle(&mut self, w: Window) -> bool {
        let mut dearer = false;
        for c in 0..self.len() {
            loop {
                let cells = self.cells[c][w.lo..=w.hi].iter().enumerate();
                let Some((at, cell)) = cells.min_by_key(|x| x.1.value) else { break };
                if cell.exact || cell.value >= self.skips[c] {
                    break;
                }
                let (level, seemed) = (w.lo + at, cell.value);
                let others = (w.lo..=w.hi).filter(|&l| l != level).map(|l| self.cells[c][l].value);
                let stop = others.fold(self.skips[c], std::cmp::Ord::min);
                self.work_out(c, level, stop);
                dearer |= self.cells[c][level].value > seemed;
            }
        }
        dearer
    }
}
