//! The inputs of a formula: values, standard deviations, correlations.

use crate::advice::{Advice, Clash, ReadFault};
use std::ops::Index;

use nalgebra::DMatrix;

use super::results::{listed, read_back};
use super::{Correlation, Estimate, Propagated, Results};
use crate::{
    Bound, PhysicsError, check,
    real::{Dual, Real},
};

/// One input of a formula.
#[derive(Debug, Clone)]
struct Entry {
    name: String,
    value: f64,
    sd: f64,
    degrees_of_freedom: f64,
}

/// Names one input within its [`Inputs`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Var(usize);

/// Values of all inputs, indexed by [`Var`].
#[derive(Debug, Clone, Copy)]
pub struct Point<'a, T>(&'a [T]);

impl<T> Index<Var> for Point<'_, T> {
    type Output = T;
    fn index(&self, var: Var) -> &T {
        &self.0[var.0]
    }
}

/// Inputs of a formula with what is known about each.
///
/// # Examples
///
/// ```
/// use clubphysics::uncertainty::Inputs;
/// let mut inputs = Inputs::default();
/// let mass = inputs.add("mass_g", 350.0, Some(0.3))?;
/// let arm = inputs.add("arm_mm", 468.0, Some(0.4))?;
/// let moment = inputs.propagate(|x| Ok(vec![x[mass] * x[arm]]))?;
/// // 468 × 0.3 = 140.4 and 350 × 0.4 = 140 add as squares.
/// assert!((moment.sd(0).unwrap() - 198.3).abs() < 0.05);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Inputs {
    entries: Vec<Entry>,
    correlations: Vec<(usize, usize, f64)>,
}

impl Inputs {
    /// Adds an input under the name it has in the document. Without a standard deviation it is exact.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where the value is not finite, or the standard deviation is negative or not finite; the field
    /// of the latter is the name with `_sd` behind it.
    pub fn add(&mut self, name: impl Into<String>, value: f64, sd: Option<f64>) -> Result<Var, PhysicsError> {
        self.add_estimated(name, value, sd, f64::INFINITY)
    }

    /// Adds an input whose standard deviation was itself estimated from few readings.
    ///
    /// # Errors
    ///
    /// As [`Inputs::add`], and where the degrees of freedom are not positive (infinity is allowed).
    pub fn add_estimated(
        &mut self,
        name: impl Into<String>,
        value: f64,
        sd: Option<f64>,
        degrees_of_freedom: f64,
    ) -> Result<Var, PhysicsError> {
        let name = name.into();
        check::finite(&name, value, "")?;
        let sd = sd.unwrap_or(0.0);
        check::not_negative(&format!("{name}_sd"), sd, "")?;
        if degrees_of_freedom.is_nan() || degrees_of_freedom <= 0.0 {
            return Err(PhysicsError::OutOfRange {
                field: format!("degrees of freedom of {name}"),
                value: degrees_of_freedom,
                bound: Bound::Above,
                limit: 0.0,
                unit: "",
                advice: Box::new(Advice::DegreesOfFreedom),
            });
        }
        self.entries.push(Entry { name, value, sd, degrees_of_freedom });
        Ok(Var(self.entries.len() - 1))
    }

    /// States a correlation between two inputs.
    ///
    /// # Errors
    ///
    /// [`PhysicsError`] where the coefficient is not within −1…1 or an input is correlated with itself.
    pub fn correlate(&mut self, a: Var, b: Var, coefficient: f64) -> Result<(), PhysicsError> {
        let field = format!("correlation of {} and {}", self.entries[a.0].name, self.entries[b.0].name);
        check::at_least(&field, coefficient, -1.0, "", Advice::CorrelationRange)?;
        check::at_most(&field, coefficient, 1.0, "", Advice::CorrelationRange)?;
        if a == b {
            return Err(PhysicsError::Contradiction {
                what: Clash::SameInput { name: field },
                advice: Box::new(Advice::TwoDifferentInputs),
            });
        }
        self.correlations.push((a.0, b.0, coefficient));
        Ok(())
    }

    /// States a covariance between two inputs that have standard deviations.
    ///
    /// # Errors
    ///
    /// As [`Inputs::correlate`]; a covariance greater than the product of the standard deviations is one beyond ±1.
    pub fn covary(&mut self, a: Var, b: Var, covariance: f64) -> Result<(), PhysicsError> {
        let product = self.entries[a.0].sd * self.entries[b.0].sd;
        if covariance == 0.0 { Ok(()) } else { self.correlate(a, b, covariance / product) }
    }

    /// States correlations by the names of the document.
    ///
    /// # Errors
    ///
    /// [`PhysicsError::Unreadable`] where a name is not an input with a value; else as [`Inputs::correlate`].
    pub fn correlate_named(&mut self, correlations: &[Correlation]) -> Result<(), PhysicsError> {
        for correlation in correlations {
            let [a, b] = [self.named(&correlation.a)?, self.named(&correlation.b)?];
            self.correlate(a, b, correlation.coefficient)?;
        }
        Ok(())
    }

    fn named(&self, name: &str) -> Result<Var, PhysicsError> {
        self.entries.iter().position(|entry| entry.name == name).map(Var).ok_or_else(|| PhysicsError::Unreadable {
            what: ReadFault::NotAnInput { name: name.to_owned() },
            advice: Box::new(Advice::Inputs { known: self.entries.iter().map(|entry| entry.name.clone()).collect() }),
        })
    }

    /// Evaluates a formula with its covariance.
    ///
    /// Cost: one evaluation more than there are inputs with a standard deviation.
    ///
    /// # Errors
    ///
    /// What the formula refuses, and [`PhysicsError::Contradiction`] where the correlations cannot all hold at once.
    pub fn propagate<F>(&self, formula: F) -> Result<Propagated, PhysicsError>
    where
        F: Fn(&Point<'_, Dual>) -> Result<Vec<Dual>, PhysicsError>,
    {
        self.refuse_impossible_correlations()?;
        let mut point: Vec<Dual> = self.entries.iter().map(|entry| Dual::fixed(entry.value)).collect();
        let values: Vec<f64> = formula(&Point(&point))?.iter().map(|result| result.value).collect();
        let varying: Vec<usize> = (0..self.entries.len()).filter(|i| self.entries[*i].sd > 0.0).collect();
        // Rows: one input each, slope × standard deviation, the contribution of that input to every result.
        let mut contributions = vec![Vec::new(); self.entries.len()];
        // One input at a time. Numbers that carry the slopes by all inputs at once would be evaluated once only, but their
        // size is known at run time, and `Real` is `Copy` so that formulas read like formulas.
        for i in varying {
            point[i] = Dual::variable(self.entries[i].value);
            contributions[i] =
                formula(&Point(&point))?.iter().map(|result| result.slope * self.entries[i].sd).collect();
            point[i] = Dual::fixed(self.entries[i].value);
        }
        Ok(self.assembled(values, contributions))
    }

    /// As [`Inputs::propagate`], the results by name.
    ///
    /// Cost: one evaluation more, to learn which results there are.
    ///
    /// # Errors
    ///
    /// As [`Inputs::propagate`].
    pub(crate) fn results<R, F>(&self, formula: F) -> Result<R::Of<Estimate>, PhysicsError>
    where
        R: Results<Dual>,
        F: Fn(&Point<'_, Dual>) -> Result<R, PhysicsError>,
    {
        let propagated = self.propagate(|x| Ok(listed(formula(x)?)))?;
        let point: Vec<Dual> = self.entries.iter().map(|entry| Dual::fixed(entry.value)).collect();
        Ok(read_back(formula(&Point(&point))?, &propagated))
    }

    /// As [`Inputs::propagate`], for a computation that has no exact slopes, such as an eigenvalue by iteration: central
    /// differences over `share` of a standard deviation to both sides.
    ///
    /// Accuracy: the share must be large against the rounding of the computation and small against its curvature; with
    /// 0.1 the second order cancels and the third is a hundredth of what it is over the whole deviation. Cost: two
    /// evaluations an input with a standard deviation, and one.
    ///
    /// # Errors
    ///
    /// As [`Inputs::propagate`], and where the number of results changes while an input is moved.
    pub(crate) fn propagate_stepped<F>(&self, share: f64, formula: F) -> Result<Propagated, PhysicsError>
    where
        F: Fn(&Point<'_, f64>) -> Result<Vec<f64>, PhysicsError>,
    {
        self.refuse_impossible_correlations()?;
        let mut point: Vec<f64> = self.entries.iter().map(|entry| entry.value).collect();
        let values = formula(&Point(&point))?;
        let mut contributions = vec![Vec::new(); self.entries.len()];
        for (i, entry) in self.entries.iter().enumerate().filter(|(_, entry)| entry.sd > 0.0) {
            let mut moved = |by: f64| {
                point[i] = entry.value + by * entry.sd;
                formula(&Point(&point))
            };
            let (up, down) = (moved(share)?, moved(-share)?);
            point[i] = entry.value;
            if up.len() != values.len() || down.len() != values.len() {
                return Err(PhysicsError::Contradiction {
                    what: Clash::DeviationChanges { name: entry.name.clone() },
                    advice: Box::new(Advice::NoDeviationOfZero),
                });
            }
            contributions[i] = up.iter().zip(&down).map(|(up, down)| (up - down) / (2.0 * share)).collect();
        }
        Ok(self.assembled(values, contributions))
    }

    /// As [`Inputs::propagate_stepped`], the results by name; `here` are those at the values of the inputs.
    ///
    /// # Errors
    ///
    /// As [`Inputs::propagate_stepped`].
    pub(crate) fn results_stepped<R, F>(&self, share: f64, here: R, formula: F) -> Result<R::Of<Estimate>, PhysicsError>
    where
        R: Results<f64>,
        F: Fn(&Point<'_, f64>) -> Result<R, PhysicsError>,
    {
        let propagated = self.propagate_stepped(share, |x| Ok(listed(formula(x)?)))?;
        Ok(read_back(here, &propagated))
    }

    fn assembled(&self, values: Vec<f64>, contributions: Vec<Vec<f64>>) -> Propagated {
        let names = self.entries.iter().map(|entry| entry.name.clone()).collect();
        let degrees = self.entries.iter().map(|entry| entry.degrees_of_freedom).collect();
        Propagated::assemble(values, names, contributions, degrees, &self.correlations)
    }

    /// Variances of the results up to second order, for independent inputs that are normally distributed.
    ///
    /// Definition: `Σ cᵢ²uᵢ² + Σᵢ Σⱼ (½·cᵢⱼ² + cᵢ·cᵢⱼⱼ)·uᵢ²·uⱼ²` (JCGM 100:2008, note to 5.1.2), c being exact partial
    /// derivatives. Cost: one evaluation a pair of inputs.
    ///
    /// # Errors
    ///
    /// What the formula refuses, and [`PhysicsError::Contradiction`] where inputs are correlated: the formula does not
    /// hold then.
    pub fn second_order_variances<F>(&self, formula: F) -> Result<Vec<f64>, PhysicsError>
    where
        F: Fn(&Point<'_, Dual<Dual<Dual>>>) -> Result<Vec<Dual<Dual<Dual>>>, PhysicsError>,
    {
        if !self.correlations.is_empty() {
            return Err(PhysicsError::Contradiction {
                what: Clash::SecondOrderCorrelated,
                advice: Box::new(Advice::CorrelationsOrFirstOrder),
            });
        }
        let zero = Dual::fixed(Dual::fixed(0.0));
        let seed = |value: f64, by_i: bool, by_j: bool| {
            let step = |on: bool| if on { 1.0 } else { 0.0 };
            let inner = Dual { value: Dual { value, slope: step(by_j) }, slope: Dual::fixed(step(by_j)) };
            Dual { value: inner, slope: zero + step(by_i) }
        };
        let mut variances: Vec<f64> = Vec::new();
        let varying: Vec<usize> = (0..self.entries.len()).filter(|i| self.entries[*i].sd > 0.0).collect();
        for &i in &varying {
            for &j in &varying {
                let seeded = |(k, entry): (usize, &Entry)| seed(entry.value, k == i, k == j);
                let point: Vec<_> = self.entries.iter().enumerate().map(seeded).collect();
                let results = formula(&Point(&point))?;
                variances.resize(results.len(), 0.0);
                let [u_i, u_j] = [self.entries[i].sd, self.entries[j].sd];
                for (variance, result) in variances.iter_mut().zip(&results) {
                    let first = result.slope.value.value;
                    let second = result.slope.slope.value;
                    let third = result.slope.slope.slope;
                    let alone = if i == j { (first * u_i).powi(2) } else { 0.0 };
                    *variance += alone + (0.5 * second * second + first * third) * (u_i * u_j).powi(2);
                }
            }
        }
        if varying.is_empty() {
            let point: Vec<_> = self.entries.iter().map(|entry| Dual::constant(entry.value)).collect();
            variances = vec![0.0; formula(&Point(&point))?.len()];
        }
        Ok(variances)
    }

    /// An error where no distribution can have the stated correlations.
    fn refuse_impossible_correlations(&self) -> Result<(), PhysicsError> {
        // Correlations of exactly ±1 are allowed; rounding may take their matrix a hair below.
        const ROUNDING: f64 = 1e-9;
        if self.correlations.len() < 2 {
            return Ok(());
        }
        let mut involved: Vec<usize> = self.correlations.iter().flat_map(|(a, b, _)| [*a, *b]).collect();
        involved.sort_unstable();
        involved.dedup();
        let at = |input: &usize| involved.binary_search(input).unwrap_or_default();
        let mut matrix = DMatrix::identity(involved.len(), involved.len());
        for (a, b, coefficient) in &self.correlations {
            matrix[(at(a), at(b))] = *coefficient;
            matrix[(at(b), at(a))] = *coefficient;
        }
        let smallest = matrix.symmetric_eigenvalues().min();
        if smallest < -ROUNDING * involved.len() as f64 {
            return Err(PhysicsError::Contradiction {
                what: Clash::CorrelationsImpossible,
                advice: Box::new(Advice::CheckSigns),
            });
        }
        Ok(())
    }
}
