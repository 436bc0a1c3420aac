//! The whole-number grid that the search works on, so that its proof is exact: deviations in thousandths of a point,
//! masses in hundredths of a gram, shaft residuals in tenths (what the scale shows), costs in multiples of
//! [`crate::CostWeights::quantum`]. Every contribution is rounded by itself, so sums of rounded parts are exact.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Neg, Sub};

/// Price steps within one quantum of cost. Prices of parts may be fractions of a quantum; plan costs are not.
pub(crate) const FRAC: i32 = 16;

/// Stands for "not allowed"; adding a handful of real costs neither overflows nor brings it below any real cost.
pub(crate) const FORBIDDEN: i32 = 1 << 29;

/// Greatest single cost in quanta: 300 missed clubs' worth at the default quantum. A club's seven costs and four prices
/// then stay below [`FORBIDDEN`], and all together within 32 bits.
pub(crate) const MOST_QUANTA: f64 = 3e6;

/// A whole number of one unit, and what can be done with it: no unit is ever added to another.
macro_rules! unit {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
        pub(crate) struct $name(pub i32);

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
                all.fold(Self(0), Add::add)
            }
        }
    };
}

unit! {
    /// Thousandths of a point of balance.
    MilliPoints
}

unit! {
    /// Hundredths of a gram.
    CentiGrams
}

unit! {
    /// Tenths of a gram, of a shaft's residual.
    DeciGrams
}

unit! {
    /// Multiples of [`crate::CostWeights::quantum`].
    Quanta
}

impl MilliPoints {
    pub fn of(points: f64) -> Self {
        Self((points * 1000.0).round() as i32)
    }

    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }
}

impl CentiGrams {
    pub fn of(mass_g: f64) -> Self {
        Self((mass_g * 100.0).round() as i32)
    }

    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }
}

impl DeciGrams {
    pub fn of(residual_g: f64) -> Self {
        Self((residual_g * 10.0).round() as i32)
    }
}

impl Quanta {
    /// In price steps, the unit in which the search adds costs and prices.
    pub fn steps(self) -> i32 {
        self.0 * FRAC
    }

    /// In the caller's unit.
    pub fn cost(self, quantum: f64) -> f64 {
        f64::from(self.0) * quantum
    }
}
