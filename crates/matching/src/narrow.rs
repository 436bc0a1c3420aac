//! Differences of costs in 16 bits, for tables that are gone through often.

use crate::grid::Steps;

/// In the 16-bit tables: this much dearer than the club's cheapest, or more. A minimum that comes out at this value is
/// worked out again in 32 bits; any other minimum is exact.
pub(crate) const DEAR: i16 = i16::MAX;

/// A difference of costs in 16 bits. Only here costs are bare numbers: a row of differences is gone through eight at a
/// time, which the compiler does for integers.
pub(crate) fn narrow(difference: Steps) -> i16 {
    i16::try_from(difference.0.max(i32::from(i16::MIN))).unwrap_or(DEAR)
}

/// Undoes [`narrow`] for what is less than [`DEAR`].
pub(crate) fn wide(difference: i16) -> Steps {
    Steps(i32::from(difference))
}

/// Least sum of two rows, [`DEAR`] at most; the compiler vectorises it.
pub(crate) fn least_sum(a: &[i16], b: &[i16]) -> i16 {
    a.iter().zip(b).fold(DEAR, |m, (&x, &y)| m.min(x.saturating_add(y)))
}
