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
}

/// Inner product.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}
