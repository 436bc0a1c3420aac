//! The plain assignment problem: rows to columns at the least sum.
//!
//! Shortest augmenting paths with prices on both sides: Jonker & Volgenant, *Computing* 38 (1987); Burkard, Dell'Amico &
//! Martello, *Assignment Problems* (2009), chapter 4 (both from memory). Each row is added to an optimal assignment of
//! the rows before it along a cheapest path, found as in Dijkstra's algorithm. A row may also drop out; that costs more
//! than any sum of costs, which is kept exact by counting dropped rows beside the cost instead of adding a large number.

use std::ops::{Add, Sub};

use crate::error::MatchError;

/// A sum of costs that includes a number of dropped rows; compared by those first.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
struct Lex {
    dropped: i64,
    cost: f64,
}

const ZERO: Lex = Lex { dropped: 0, cost: 0.0 };
const DROP: Lex = Lex { dropped: 1, cost: 0.0 };
const UNREACHED: Lex = Lex { dropped: i64::MAX, cost: 0.0 };

impl Add for Lex {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self { dropped: self.dropped + o.dropped, cost: self.cost + o.cost }
    }
}

impl Sub for Lex {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        Self { dropped: self.dropped - o.dropped, cost: self.cost - o.cost }
    }
}

/// Gives each row a column of its own so that as many rows as possible have one and, among those, the sum of costs is
/// least: clubs to grips, say, with `costs[club][grip]`.
///
/// Rows and columns may differ in number. A cost of `f64::INFINITY` says that the pair is not allowed; costs may be
/// negative; their unit is the caller's. `None` is a row without a column. The same costs give the same answer; among
/// equal sums the columns of lower number tend to be taken. Work grows with rows² × columns.
///
/// # Examples
/// ```
/// let never = f64::INFINITY;
/// let costs = [vec![4.0, 1.0, 3.0], vec![2.0, 0.0, 5.0], vec![never, 2.0, never]];
/// assert_eq!(matching::assign(&costs)?, [Some(2), Some(0), Some(1)]);
/// # Ok::<(), matching::MatchError>(())
/// ```
///
/// # Errors
/// Rows of unequal length, and costs that are not a number or `-∞`.
pub fn assign<R: AsRef<[f64]>>(costs: &[R]) -> Result<Vec<Option<usize>>, MatchError> {
    let columns = costs.first().map_or(0, |row| row.as_ref().len());
    for (row, list) in costs.iter().enumerate() {
        let list = list.as_ref();
        if list.len() != columns {
            return Err(MatchError::CostRow { row, got: list.len(), expected: columns });
        }
        if let Some(column) = list.iter().position(|c| c.is_nan() || *c == f64::NEG_INFINITY) {
            return Err(MatchError::CostValue { row, column, value: list[column] });
        }
    }
    let mut paths = Paths::new(costs.len(), columns);
    for row in 0..costs.len() {
        paths.add_row(costs, row);
    }
    let mut out = vec![None; costs.len()];
    for (column, row) in paths.row_of.iter().enumerate() {
        if let Some(row) = *row {
            out[row] = Some(column);
        }
    }
    Ok(out)
}

/// An optimal assignment of the rows so far, and its prices.
struct Paths {
    row_of: Vec<Option<usize>>,
    row_price: Vec<Lex>,
    column_price: Vec<Lex>,
    /// Length of the cheapest path to each column, and the row it comes from.
    length: Vec<Lex>,
    from: Vec<usize>,
    /// Columns whose path is final, in the order in which they became so; the rest after them.
    order: Vec<usize>,
}

/// Where the cheapest path ends.
#[derive(Debug, Clone, Copy)]
enum End {
    /// At a free column.
    Free(usize),
    /// At a row that drops out.
    Drop(usize),
}

impl Paths {
    fn new(rows: usize, columns: usize) -> Self {
        Self {
            row_of: vec![None; columns],
            row_price: vec![ZERO; rows],
            column_price: vec![ZERO; columns],
            length: vec![UNREACHED; columns],
            from: vec![0; columns],
            order: (0..columns).collect(),
        }
    }

    fn add_row<R: AsRef<[f64]>>(&mut self, costs: &[R], start: usize) {
        self.length.fill(UNREACHED);
        self.order.sort_unstable();
        let mut settled = 0;
        let (mut row, mut so_far) = (start, ZERO);
        let mut drop = (UNREACHED, start);
        let (end, total) = loop {
            let dropped = so_far + DROP - self.row_price[row];
            if dropped < drop.0 {
                drop = (dropped, row);
            }
            let mut next = None;
            for i in settled..self.order.len() {
                let column = self.order[i];
                let cost = costs[row].as_ref()[column];
                if cost < f64::INFINITY {
                    let edge = Lex { dropped: 0, cost } - self.row_price[row] - self.column_price[column];
                    let length = so_far + edge;
                    if length < self.length[column] {
                        (self.length[column], self.from[column]) = (length, row);
                    }
                }
                if next.is_none_or(|n: usize| self.length[column] < self.length[self.order[n]]) {
                    next = Some(i);
                }
            }
            let Some(i) = next.filter(|&i| self.length[self.order[i]] < drop.0) else {
                break (End::Drop(drop.1), drop.0);
            };
            let column = self.order[i];
            self.order.swap(settled, i);
            settled += 1;
            so_far = self.length[column];
            match self.row_of[column] {
                None => break (End::Free(column), so_far),
                Some(held) => row = held,
            }
        };
        self.reprice(start, settled, total);
        self.turn(start, end);
    }

    /// Raises prices so that all pairs of the new assignment are at their price and none is below it.
    fn reprice(&mut self, start: usize, settled: usize, total: Lex) {
        self.row_price[start] = self.row_price[start] + total;
        for &column in &self.order[..settled] {
            let spare = total - self.length[column];
            self.column_price[column] = self.column_price[column] - spare;
            if let Some(row) = self.row_of[column] {
                self.row_price[row] = self.row_price[row] + spare;
            }
        }
    }

    /// Shifts columns along the path.
    fn turn(&mut self, start: usize, end: End) {
        let mut column = match end {
            End::Free(column) => column,
            End::Drop(row) if row == start => return,
            // The dropped row's column is handed on.
            End::Drop(row) => match self.row_of.iter().position(|r| *r == Some(row)) {
                Some(column) => column,
                None => return,
            },
        };
        loop {
            let row = self.from[column];
            let before = self.row_of.iter().position(|r| *r == Some(row));
            self.row_of[column] = Some(row);
            match before {
                Some(next) if row != start => column = next,
                _ => return,
            }
        }
    }
}
