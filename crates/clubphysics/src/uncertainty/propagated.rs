//! Results with their covariance.

/// A figure and, where it is known, its standard deviation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The figure, in the unit of its name.
    pub value: f64,
    /// Its standard deviation; `None` where no input that it depends on had one.
    pub sd: Option<f64>,
}

/// Results of a formula, their covariance, and what each input gave to it.
#[derive(Debug, Clone)]
pub struct Propagated {
    values: Vec<f64>,
    /// Row by row, results × results.
    covariance: Vec<f64>,
    names: Vec<String>,
    /// For each input its slope × standard deviation, one entry a result; empty for an exact input.
    contributions: Vec<Vec<f64>>,
    degrees: Vec<f64>,
    correlated: Vec<bool>,
}

impl Propagated {
    /// Adds up the contributions.
    pub(super) fn assemble(
        values: Vec<f64>,
        names: Vec<String>,
        contributions: Vec<Vec<f64>>,
        degrees: Vec<f64>,
        correlations: &[(usize, usize, f64)],
    ) -> Self {
        let count = values.len();
        let mut covariance = vec![0.0; count * count];
        for given in contributions.iter().filter(|given| !given.is_empty()) {
            for (a, row) in given.iter().zip(covariance.chunks_exact_mut(count)).filter(|(a, _)| **a != 0.0) {
                for (b, cell) in given.iter().zip(row) {
                    *cell += a * b;
                }
            }
        }
        let mut correlated = vec![false; contributions.len()];
        for (i, j, coefficient) in correlations {
            let [one, other] = [&contributions[*i], &contributions[*j]];
            if one.is_empty() || other.is_empty() {
                continue;
            }
            (correlated[*i], correlated[*j]) = (true, true);
            for (a, row) in covariance.chunks_exact_mut(count).enumerate() {
                for (b, cell) in row.iter_mut().enumerate() {
                    *cell += coefficient * (one[a] * other[b] + other[a] * one[b]);
                }
            }
        }
        Self { values, covariance, names, contributions, degrees, correlated }
    }

    /// Value of a result.
    ///
    /// # Panics
    ///
    /// Where there is no result of that number, as with a slice.
    #[must_use]
    pub fn value(&self, result: usize) -> f64 {
        self.values[result]
    }

    /// All values.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Variance of a result.
    #[must_use]
    pub fn variance(&self, result: usize) -> f64 {
        // Perfect correlations that cancel may leave a rounding below nothing.
        self.covariance(result, result).max(0.0)
    }

    /// Covariance of two results.
    #[must_use]
    pub fn covariance(&self, one: usize, other: usize) -> f64 {
        self.covariance[one * self.values.len() + other]
    }

    /// Correlation of two results; `None` where one of them is exact.
    #[must_use]
    pub fn correlation(&self, one: usize, other: usize) -> Option<f64> {
        let product = (self.variance(one) * self.variance(other)).sqrt();
        (product > 0.0).then(|| self.covariance(one, other) / product)
    }

    /// Standard deviation of a result; `None` where no input that it depends on had one.
    #[must_use]
    pub fn sd(&self, result: usize) -> Option<f64> {
        let depends = |given: &Vec<f64>| given.get(result).is_some_and(|share| *share != 0.0);
        self.contributions.iter().any(depends).then(|| self.variance(result).sqrt())
    }

    /// Value and standard deviation of a result.
    #[must_use]
    pub fn estimate(&self, result: usize) -> Estimate {
        Estimate { value: self.value(result), sd: self.sd(result) }
    }

    /// What each inexact input alone would give a result: name and standard deviation with the sign of its slope.
    pub fn budget(&self, result: usize) -> impl Iterator<Item = (&str, f64)> {
        let inexact = self.names.iter().zip(&self.contributions).filter(|(_, given)| !given.is_empty());
        inexact.map(move |(name, given)| (name.as_str(), given[result]))
    }

    /// Effective degrees of freedom of a result.
    ///
    /// Definition: Welch–Satterthwaite, `u⁴ / Σ uᵢ⁴/νᵢ` (JCGM 100:2008, G.4.1), infinite where every input's is.
    /// `None` where an input with finite degrees of freedom is correlated with another: the formula does not hold then.
    #[must_use]
    pub fn effective_degrees_of_freedom(&self, result: usize) -> Option<f64> {
        let mut sum = 0.0;
        for (i, given) in self.contributions.iter().enumerate().filter(|(_, given)| !given.is_empty()) {
            if self.degrees[i].is_finite() {
                if self.correlated[i] {
                    return None;
                }
                sum += given[result].powi(4) / self.degrees[i];
            }
        }
        Some(if sum == 0.0 { f64::INFINITY } else { self.variance(result).powi(2) / sum })
    }
}
