//! Normal equations in the shape of an arrow: one block a club, bordered by what the job shares.
//!
//! In whitened states the information is the unit matrix plus a rank-one term a reading. Clubs are coupled through the
//! shared states only, so the blocks of the clubs are eliminated one by one and a small matrix of the shared states is
//! left (a Schur complement). The whole covariance is never formed: the covariance of two forecasts is a scalar
//! product of two short vectors.

use crate::predict::Row;

/// Lower Cholesky factor of a small dense matrix, row after row.
#[derive(Debug, Clone)]
struct Factor {
    n: usize,
    lower: Vec<f64>,
}

impl Factor {
    /// Factorise a symmetric matrix of which the lower half is read. It is the unit matrix plus something semi-definite,
    /// so every pivot is at least 1 in exact arithmetic; rounding is kept from making it less than a half.
    fn new(n: usize, a: Vec<f64>) -> Self {
        Self::floored(n, a, 0.5)
    }

    /// Factorise any positive definite matrix.
    fn of(n: usize, a: Vec<f64>) -> Self {
        Self::floored(n, a, f64::MIN_POSITIVE)
    }

    fn floored(n: usize, mut a: Vec<f64>, least: f64) -> Self {
        for i in 0..n {
            let (done, rest) = a.split_at_mut(i * n);
            let row = &mut rest[..n];
            for j in 0..i {
                let other = &done[j * n..j * n + j + 1];
                let dot: f64 = row[..j].iter().zip(&other[..j]).map(|(x, y)| x * y).sum();
                row[j] = (row[j] - dot) / other[j];
            }
            let square: f64 = row[..i].iter().map(|x| x * x).sum();
            row[i] = (row[i] - square).max(least).sqrt();
        }
        Self { n, lower: a }
    }

    fn row(&self, i: usize) -> &[f64] {
        &self.lower[i * self.n..i * self.n + i + 1]
    }

    /// `L⁻¹·b`.
    fn forward(&self, b: &mut [f64]) {
        for i in 0..self.n {
            let row = self.row(i);
            let dot: f64 = row[..i].iter().zip(&*b).map(|(l, x)| l * x).sum();
            b[i] = (b[i] - dot) / row[i];
        }
    }

    /// `L⁻¹·B`, B row after row with `width` columns.
    fn forward_rows(&self, b: &mut [f64], width: usize) {
        for i in 0..self.n {
            let (done, rest) = b.split_at_mut(i * width);
            let (row, lower) = (&mut rest[..width], self.row(i));
            for (j, l) in lower[..i].iter().enumerate() {
                row.iter_mut().zip(&done[j * width..(j + 1) * width]).for_each(|(x, y)| *x -= l * y);
            }
            row.iter_mut().for_each(|x| *x /= lower[i]);
        }
    }

    /// `L⁻ᵀ·b`.
    fn backward(&self, b: &mut [f64]) {
        for i in (0..self.n).rev() {
            let row = self.row(i);
            b[i] /= row[i];
            let x = b[i];
            b[..i].iter_mut().zip(&row[..i]).for_each(|(b, l)| *b -= l * x);
        }
    }

    fn log_determinant(&self) -> f64 {
        2.0 * (0..self.n).map(|i| self.row(i)[i].ln()).sum::<f64>()
    }
}

/// The factorised information.
#[derive(Debug, Clone)]
pub(crate) struct Arrow {
    clubs: Vec<Block>,
    shared: Factor,
}

#[derive(Debug, Clone)]
struct Block {
    own: Factor,
    /// `L⁻¹` times the coupling with the shared states: one row an own state.
    coupling: Vec<f64>,
}

/// A gradient as seen through the factor: covariances are scalar products of these.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Half {
    pub club: Option<usize>,
    pub local: Vec<f64>,
    pub shared: Vec<f64>,
}

impl Half {
    pub fn covariance(&self, other: &Self) -> f64 {
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        // Own states of two clubs have nothing in common but the shared ones, which the other sum holds.
        let local = if self.club == other.club { dot(&self.local, &other.local) } else { 0.0 };
        local + dot(&self.shared, &other.shared)
    }

    pub fn variance(&self) -> f64 {
        self.covariance(self)
    }
}

impl Arrow {
    /// The unit matrix plus `row·rowᵀ/variance` for each reading.
    pub fn new(sizes: &[usize], shared: usize, readings: &[(Row, f64)]) -> Self {
        let n = shared;
        let mut of_shared = unit(n);
        let mut blocks: Vec<(Vec<f64>, Vec<f64>)> = sizes.iter().map(|m| (unit(*m), vec![0.0; m * n])).collect();
        for (row, variance) in readings {
            add_outer(&mut of_shared, &row.shared, &row.shared, 1.0 / variance);
            if let Some(club) = row.club {
                let (own, coupling) = &mut blocks[club];
                add_outer(own, &row.local, &row.local, 1.0 / variance);
                add_outer(coupling, &row.local, &row.shared, 1.0 / variance);
            }
        }
        let mut clubs = Vec::with_capacity(sizes.len());
        for (m, (own, mut coupling)) in sizes.iter().zip(blocks) {
            let own = Factor::new(*m, own);
            own.forward_rows(&mut coupling, n);
            for row in coupling.chunks_exact(n.max(1)) {
                // What this club's own states take of what the readings say of the shared ones (the Schur complement). So
                // the work grows with the clubs and not with their cube, as one matrix of all states would.
                add_outer(&mut of_shared, row, row, -1.0);
            }
            clubs.push(Block { own, coupling });
        }
        Self { clubs, shared: Factor::new(n, of_shared) }
    }

    /// A gradient through the factor.
    pub fn half(&self, row: &Row) -> Half {
        let mut shared = row.shared.clone();
        let mut local = row.local.clone();
        if let Some(club) = row.club {
            let block = &self.clubs[club];
            block.own.forward(&mut local);
            subtract_transposed(&block.coupling, &local, &mut shared);
        }
        self.shared.forward(&mut shared);
        Half { club: row.club, local, shared }
    }

    /// The same solution as of [`Arrow::solve`], of the readings alone: a club's block is inverted where it is small, over its
    /// readings and not over its states (the matrix inversion lemma). Good enough for a step of an iteration; what readings
    /// are sharp about loses digits.
    pub fn step(readings: &[(Row, f64)], local: &mut [Vec<f64>], shared: &mut [f64]) {
        let n = shared.len();
        let mut of_shared = unit(n);
        let mut of_club: Vec<Vec<&(Row, f64)>> = vec![Vec::new(); local.len()];
        for reading in readings {
            match reading.0.club {
                Some(club) => of_club[club].push(reading),
                None => add_outer(&mut of_shared, &reading.0.shared, &reading.0.shared, 1.0 / reading.1),
            }
        }
        // With G a club's rows of its own states, H of the shared ones and L·Lᵀ = V + G·Gᵀ: L⁻¹H and L⁻¹G·b of each club.
        let mut seen: Vec<(Factor, Vec<f64>, Vec<f64>)> = Vec::with_capacity(local.len());
        for (rows, b) in of_club.iter().zip(&*local) {
            let k = rows.len();
            let mut gram = vec![0.0; k * k];
            for i in 0..k {
                for j in 0..=i {
                    gram[i * k + j] = dot(&rows[i].0.local, &rows[j].0.local);
                }
                gram[i * k + i] += rows[i].1;
            }
            let factor = Factor::of(k, gram);
            let mut told: Vec<f64> = rows.iter().map(|(row, _)| dot(&row.local, b)).collect();
            factor.forward(&mut told);
            let mut coupling: Vec<f64> = rows.iter().flat_map(|(row, _)| row.shared.iter().copied()).collect();
            factor.forward_rows(&mut coupling, n);
            for (row, told) in coupling.chunks_exact(n.max(1)).zip(&told) {
                add_outer(&mut of_shared, row, row, 1.0);
                shared.iter_mut().zip(row).for_each(|(s, c)| *s -= c * told);
            }
            seen.push((factor, coupling, told));
        }
        let of_shared = Factor::new(n, of_shared);
        of_shared.forward(shared);
        of_shared.backward(shared);
        for ((rows, b), (factor, coupling, mut told)) in of_club.iter().zip(local).zip(seen) {
            for (row, told) in coupling.chunks_exact(n.max(1)).zip(&mut told) {
                *told += dot(row, shared);
            }
            factor.backward(&mut told);
            for ((row, _), told) in rows.iter().zip(told) {
                b.iter_mut().zip(&row.local).for_each(|(b, g)| *b -= g * told);
            }
        }
    }

    /// Solve for a right-hand side over all clubs and the shared states, in place.
    pub fn solve(&self, local: &mut [Vec<f64>], shared: &mut [f64]) {
        for (block, b) in self.clubs.iter().zip(&mut *local) {
            block.own.forward(b);
            subtract_transposed(&block.coupling, b, shared);
        }
        self.shared.forward(shared);
        self.shared.backward(shared);
        let n = shared.len();
        for (block, b) in self.clubs.iter().zip(local) {
            for (i, b) in b.iter_mut().enumerate() {
                *b -= dot(&block.coupling[i * n..(i + 1) * n], shared);
            }
            block.own.backward(b);
        }
    }

    pub fn log_determinant(&self) -> f64 {
        self.shared.log_determinant() + self.clubs.iter().map(|block| block.own.log_determinant()).sum::<f64>()
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn unit(n: usize) -> Vec<f64> {
    let mut matrix = vec![0.0; n * n];
    (0..n).for_each(|i| matrix[i * n + i] = 1.0);
    matrix
}

/// `matrix += factor·a·bᵀ`, skipping the rows in which `a` is nought.
fn add_outer(matrix: &mut [f64], a: &[f64], b: &[f64], factor: f64) {
    if b.is_empty() {
        return;
    }
    for (row, x) in matrix.chunks_exact_mut(b.len()).zip(a) {
        if *x != 0.0 {
            let x = x * factor;
            row.iter_mut().zip(b).for_each(|(m, y)| *m += x * y);
        }
    }
}

/// `out −= couplingᵀ·own`.
fn subtract_transposed(coupling: &[f64], own: &[f64], out: &mut [f64]) {
    if out.is_empty() {
        return;
    }
    for (row, x) in coupling.chunks_exact(out.len()).zip(own) {
        out.iter_mut().zip(row).for_each(|(o, c)| *o -= c * x);
    }
}
