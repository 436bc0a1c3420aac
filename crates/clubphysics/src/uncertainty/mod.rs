//! How sure a result is, from how sure its inputs are.
//!
//! Definition: with inputs x of covariance V and a formula f, the covariance of f(x) is `J·V·Jᵀ`, J being the slopes of
//! f at x (the law of propagation of uncertainty; JCGM 100:2008, clause 5). The slopes are exact (see
//! [`Dual`](crate::real::Dual)), so the only approximation is that f is taken as straight over the spread of x.
//! [`Inputs::second_order_variances`] says how much that leaves out.
//!
//! Accuracy: slopes to a few units in the last place; `tests/val_uncertainty.rs` holds the published worked cases of
//! the GUM (H.1, H.3) and of JCGM 101 (9.2, 9.3).

mod correlation;
mod coverage;
mod inputs;
mod propagated;
mod results;

pub use correlation::Correlation;
pub use coverage::{coverage_factor, coverage_factor_normal};
pub use inputs::{Inputs, Point, Var};
pub use propagated::{Estimate, Propagated};
pub(crate) use results::{Results, results};
