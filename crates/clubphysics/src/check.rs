//! Refusing what no calculation can take, with the field named.

use crate::advice::Advice;
use crate::{Bound, PhysicsError};

/// A finite number.
pub(crate) fn finite(field: &str, value: f64, unit: &'static str) -> Result<f64, PhysicsError> {
    if value.is_finite() { Ok(value) } else { Err(PhysicsError::NotFinite { field: field.to_owned(), unit }) }
}

/// A finite number greater than nothing.
pub(crate) fn positive(field: &str, value: f64, unit: &'static str) -> Result<f64, PhysicsError> {
    above(field, value, 0.0, unit, Advice::EnterMeasuredFigure)
}

/// A finite number that is not negative.
pub(crate) fn not_negative(field: &str, value: f64, unit: &'static str) -> Result<f64, PhysicsError> {
    at_least(field, value, 0.0, unit, Advice::EnterFigureWithoutSign)
}

/// A finite number above a limit.
pub(crate) fn above(
    field: &str,
    value: f64,
    limit: f64,
    unit: &'static str,
    advice: Advice,
) -> Result<f64, PhysicsError> {
    bounded(field, value, Bound::Above, limit, unit, advice)
}

/// A finite number at a limit or above it.
pub(crate) fn at_least(
    field: &str,
    value: f64,
    limit: f64,
    unit: &'static str,
    advice: Advice,
) -> Result<f64, PhysicsError> {
    bounded(field, value, Bound::AtLeast, limit, unit, advice)
}

/// A finite number at a limit or below it.
pub(crate) fn at_most(
    field: &str,
    value: f64,
    limit: f64,
    unit: &'static str,
    advice: Advice,
) -> Result<f64, PhysicsError> {
    bounded(field, value, Bound::AtMost, limit, unit, advice)
}

/// A finite number below a limit.
pub(crate) fn below(
    field: &str,
    value: f64,
    limit: f64,
    unit: &'static str,
    advice: Advice,
) -> Result<f64, PhysicsError> {
    bounded(field, value, Bound::Below, limit, unit, advice)
}

fn bounded(
    field: &str,
    value: f64,
    bound: Bound,
    limit: f64,
    unit: &'static str,
    advice: Advice,
) -> Result<f64, PhysicsError> {
    finite(field, value, unit)?;
    let kept = match bound {
        Bound::Above => value > limit,
        Bound::AtLeast => value >= limit,
        Bound::Below => value < limit,
        Bound::AtMost => value <= limit,
    };
    if kept {
        Ok(value)
    } else {
        Err(PhysicsError::OutOfRange { field: field.to_owned(), value, bound, limit, unit, advice: Box::new(advice) })
    }
}

/// A list that is long enough.
pub(crate) fn enough(field: &str, count: usize, needed: usize, advice: Advice) -> Result<(), PhysicsError> {
    if count >= needed {
        Ok(())
    } else {
        Err(PhysicsError::TooFew { field: field.to_owned(), count, needed, advice: Box::new(advice) })
    }
}
