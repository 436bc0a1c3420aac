//! Symmetric matrices of the beam: each row couples to the three before it.

/// Entries left of the diagonal in a row: two nodes of two freedoms share an element.
const LEFT: usize = 3;

/// A symmetric band matrix; row `i` holds columns `i-3 ..= i`, zero where they do not exist.
#[derive(Debug, Clone)]
pub(super) struct Band {
    rows: Vec<[f64; LEFT + 1]>,
}

impl Band {
    pub(super) fn zeros(size: usize) -> Self {
        Self { rows: vec![[0.0; LEFT + 1]; size] }
    }

    pub(super) fn size(&self) -> usize {
        self.rows.len()
    }

    /// Adds to the entry at `(row, column)`, `column <= row <= column + 3`.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.rows[row][column + LEFT - row] += value;
    }

    /// `out = A·x`.
    pub(super) fn times(&self, x: &[f64], out: &mut [f64]) {
        out.fill(0.0);
        for (i, row) in self.rows.iter().enumerate() {
            let start = i.saturating_sub(LEFT);
            let offset = start + LEFT - i;
            let mut sum = row[LEFT] * x[i];
            for (entry, j) in row[offset..LEFT].iter().zip(start..i) {
                sum += entry * x[j];
                out[j] += entry * x[i];
            }
            out[i] += sum;
        }
    }

    /// Cholesky factor of a positive definite matrix; `None` if a pivot is not positive.
    pub(super) fn cholesky(&self) -> Option<Cholesky> {
        let mut rows = self.rows.clone();
        let mut inverse_pivots = vec![0.0; rows.len()];
        for i in 0..rows.len() {
            let start = i.saturating_sub(LEFT);
            let mut row = rows[i];
            for j in start..i {
                let mut sum = row[j + LEFT - i];
                for k in start..j {
                    sum -= row[k + LEFT - i] * rows[j][k + LEFT - j];
                }
                row[j + LEFT - i] = sum * inverse_pivots[j];
            }
            let pivot = row[LEFT] - row[..LEFT].iter().map(|entry| entry * entry).sum::<f64>();
            // A pivot at rounding level of its own diagonal means that the beam can fold there.
            if !(pivot > row[LEFT] * 1e-15 && pivot.is_finite()) {
                return None;
            }
            row[LEFT] = pivot.sqrt();
            inverse_pivots[i] = 1.0 / row[LEFT];
            rows[i] = row;
        }
        Some(Cholesky { rows, inverse_pivots })
    }
}

/// Lower factor of a [`Band`].
#[derive(Debug, Clone)]
pub(super) struct Cholesky {
    rows: Vec<[f64; LEFT + 1]>,
    inverse_pivots: Vec<f64>,
}

impl Cholesky {
    /// Solves `A·x = x` in place.
    pub(super) fn solve(&self, x: &mut [f64]) {
        for i in 0..x.len() {
            let start = i.saturating_sub(LEFT);
            let offset = start + LEFT - i;
            let row = &self.rows[i];
            let mut sum = x[i];
            for (entry, value) in row[offset..LEFT].iter().zip(&x[start..i]) {
                sum -= entry * value;
            }
            x[i] = sum * self.inverse_pivots[i];
        }
        for i in (0..x.len()).rev() {
            let value = x[i] * self.inverse_pivots[i];
            x[i] = value;
            let start = i.saturating_sub(LEFT);
            let offset = start + LEFT - i;
            for (entry, earlier) in self.rows[i][offset..LEFT].iter().zip(&mut x[start..i]) {
                *earlier -= entry * value;
            }
        }
    }
}

/// Inner product.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}
