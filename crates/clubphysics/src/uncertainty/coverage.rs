//! How many standard deviations hold a stated share.

use crate::advice::Advice;
use statrs::distribution::{ContinuousCDF, Normal, StudentsT};

use crate::{PhysicsError, check};

/// Factor k for which ±k standard deviations hold the probability, with so many degrees of freedom.
///
/// Definition: the two-sided quantile of Student's t; infinity gives the normal one. Accuracy: 1e-6, held against
/// published tables in `tests/val_uncertainty.rs`.
///
/// # Errors
///
/// [`PhysicsError`] where the probability is not between 0 and 1 or the degrees of freedom are not positive.
///
/// # Examples
///
/// ```
/// // Tables of Student's t, two-sided 95 %: 2.228 with ten degrees of freedom, 1.960 with endless ones.
/// use clubphysics::uncertainty::coverage_factor;
/// assert!((coverage_factor(0.95, 10.0)? - 2.228).abs() < 5e-4);
/// assert!((coverage_factor(0.95, f64::INFINITY)? - 1.960).abs() < 5e-4);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn coverage_factor(probability: f64, degrees_of_freedom: f64) -> Result<f64, PhysicsError> {
    let advice = Advice::ShareFromZeroToOne;
    check::above("probability", probability, 0.0, "", advice.clone())?;
    check::below("probability", probability, 1.0, "", advice)?;
    if degrees_of_freedom == f64::INFINITY {
        return Ok(coverage_factor_normal(probability));
    }
    check::positive("degrees_of_freedom", degrees_of_freedom, "")?;
    let student = StudentsT::new(0.0, 1.0, degrees_of_freedom)
        .map_err(|_| PhysicsError::NotFinite { field: "degrees_of_freedom".to_owned(), unit: "" })?;
    Ok(student.inverse_cdf(f64::midpoint(1.0, probability)))
}

/// Factor k for which ±k standard deviations of a normal distribution hold the probability: 1.96 for 0.95.
///
/// A probability outside 0…1 is taken as the nearer end.
#[must_use]
pub fn coverage_factor_normal(probability: f64) -> f64 {
    Normal::standard().inverse_cdf(f64::midpoint(1.0, probability.clamp(0.0, 1.0)))
}
