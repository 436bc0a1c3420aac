//! The whole-number grid that the search works on, so that its proof is exact: deviations in thousandths of a point,
//! masses in hundredths of a gram, shaft residuals in tenths (what the scale shows), costs in multiples of
//! [`crate::CostWeights::quantum`]. Every contribution is rounded by itself, so sums of rounded parts are exact.
//!
//! A figure of one unit is not added to one of another.
//!
//! # Examples
//! ```
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = MilliPoints::of(0.3) + MilliPoints::of(0.1);
//! let _ = CentiGrams::of(4.0) + CentiGrams::of(0.1);
//! let _ = DeciGrams::of(0.3) < DeciGrams::of(0.1);
//! let _ = Quanta::default() + Quanta::default();
//! let _ = Quanta::default().steps() + Quanta::default().steps();
//! let _ = Total::from(Quanta::default()) + Quanta::default().steps();
//! ```
//!
//! Points are no cost:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = MilliPoints::of(0.3) + Quanta::default();
//! ```
//!
//! Nor price steps:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = MilliPoints::of(0.3) + Quanta::default().steps();
//! ```
//!
//! Points are no mass:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = MilliPoints::of(0.3) + CentiGrams::of(0.1);
//! ```
//!
//! Tenths of a gram are not hundredths:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = DeciGrams::of(0.3) < CentiGrams::of(0.1);
//! ```
//!
//! Quanta are no price steps:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = Quanta::default().steps() + Quanta::default();
//! ```
//!
//! A sum of a whole set is not put back into 32 bits:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = Quanta::default().steps() + Total::from(Quanta::default());
//! ```
//!
//! A bare number has no unit:
//!
//! ```compile_fail
//! use matching::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta, Total};
//!
//! let _ = MilliPoints::of(0.3) + 1;
//! ```

use std::iter::Sum;
use std::ops::{Add, AddAssign, Neg, Sub, SubAssign};

/// Price steps within one quantum of cost. Prices of parts may be fractions of a quantum; plan costs are not.
const FRAC: i32 = 16;

/// One quantum of cost: plans differ by this or not at all.
pub(crate) const QUANTUM: Steps = Steps(FRAC);

/// [`QUANTUM`] where prices are not rounded, in the arithmetic of price steps with fractions.
pub(crate) const QUANTUM_EXACT: f64 = FRAC as f64;

/// Stands for "not allowed"; adding a handful of real costs neither overflows nor brings it below any real cost.
pub(crate) const FORBIDDEN: Steps = Steps(1 << 29);

/// Greatest price of a part, unrounded: no part is worth more than a few unbuilt clubs.
pub(crate) const MOST_PRICE: f64 = (FORBIDDEN.0 / 16) as f64;

/// Greatest single cost in quanta: 300 missed clubs' worth at the default quantum. A club's seven costs and four prices
/// then stay below [`FORBIDDEN`], and all together within 32 bits.
pub(crate) const MOST_QUANTA: f64 = 3e6;

/// A whole number of one unit, and what can be done with it: no unit is ever added to another.
macro_rules! unit {
    ($(#[$doc:meta])* $name:ident, $raw:ty) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
        pub struct $name(pub(crate) $raw);

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

        impl SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                self.0 -= other.0;
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
    /// Thousandths of a point of swing weight.
    MilliPoints, i32
}

unit! {
    /// Hundredths of a gram.
    CentiGrams, i32
}

unit! {
    /// Tenths of a gram, of a shaft's residual.
    DeciGrams, i32
}

unit! {
    /// Multiples of [`crate::CostWeights::quantum`], of a single cost.
    Quanta, i32
}

unit! {
    /// Price steps, sixteen to a quantum: the unit of a club's costs and of a part's price in the search. In 32 bits,
    /// because the search goes through long lists of them.
    Steps, i32
}

unit! {
    /// Price steps of a whole set or day, and bounds of these: sums of [`Steps`] that do not fit into 32 bits.
    Total, i64
}

/// From a figure on the grid, whole but for the error of binary fractions. What is asked for has been checked to be a few
/// hundred points or a few thousand grams at most, far within 32 bits; beyond them a conversion stops at the ends.
fn whole(figure: f64) -> i32 {
    figure.round() as i32
}

impl MilliPoints {
    /// From points, to the nearest.
    pub fn of(points: f64) -> Self {
        Self(whole(points * 1000.0))
    }

    /// Without its sign.
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// To do arithmetic with that is not rounded.
    pub(crate) fn exact(self) -> f64 {
        f64::from(self.0)
    }

    /// The next one at or below a figure that is within the range of some of them.
    pub(crate) fn below(thousandths: f64) -> Self {
        Self(thousandths.floor() as i32)
    }

    /// How many thousandths from `first` up to this one: its place in a list that begins with `first`. One below `first`
    /// has the place 0.
    pub(crate) fn place_from(self, first: Self) -> usize {
        usize::try_from(self.0 - first.0).unwrap_or(0)
    }

    /// The one that has this place in a list that begins with `first`; such lists are some hundred thousand long.
    pub(crate) fn at_place(first: Self, place: usize) -> Self {
        Self(i32::try_from(place).map_or(i32::MAX, |place| first.0.saturating_add(place)))
    }
}

impl CentiGrams {
    /// From grams, to the nearest.
    pub fn of(mass_g: f64) -> Self {
        Self(whole(mass_g * 100.0))
    }

    /// Without its sign.
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }
}

impl DeciGrams {
    /// From grams, to the nearest.
    pub fn of(residual_g: f64) -> Self {
        Self(whole(residual_g * 10.0))
    }
}

impl Quanta {
    /// To the nearest quantum, from a figure that is not negative and has a half added already: cutting off rounds down.
    pub(crate) fn cut(quanta_and_half: f64) -> Self {
        Self(quanta_and_half.min(MOST_QUANTA) as i32)
    }

    /// In price steps, the unit in which the search adds costs and prices.
    pub fn steps(self) -> Steps {
        Steps(self.0 * FRAC)
    }

    /// In the caller's unit.
    pub fn cost(self, quantum: f64) -> f64 {
        f64::from(self.0) * quantum
    }
}

impl Steps {
    /// From a number of quanta.
    pub(crate) const fn quanta(quanta: i32) -> Self {
        Self(quanta * FRAC)
    }

    /// A price that is not negative, to the nearest step; half a step goes up. What is cut off is a fraction.
    pub(crate) fn half_up(price: f64) -> Self {
        Self((price + 0.5) as i32)
    }

    /// A price of any sign, to the nearest step.
    pub(crate) fn nearest(price: f64) -> Self {
        Self(whole(price))
    }

    /// With fractions, to do arithmetic with that is rounded later.
    pub(crate) fn exact(self) -> f64 {
        f64::from(self.0)
    }

    /// The sum, or the end of 32 bits.
    pub(crate) fn saturating_add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }

    /// Half way between two.
    pub(crate) fn midpoint(self, other: Self) -> Self {
        Self(i32::midpoint(self.0, other.0))
    }

    /// The cost multiplied, capped at 32 bits; the cost is not a forbidden one.
    pub(crate) fn saturating_mul(self, times: i32) -> Self {
        Self(self.0.saturating_mul(times))
    }

    /// One half, cut down.
    pub(crate) fn half(self) -> Self {
        Self(self.0 / 2)
    }

    /// A quarter, in whole quanta.
    pub(crate) fn quarter(self) -> Self {
        Self(self.0 / 4 / FRAC * FRAC)
    }

    /// How many whole units of a cost that is not negative.
    pub(crate) fn in_units(self, unit: Self) -> u32 {
        self.0.unsigned_abs() / unit.0.unsigned_abs()
    }

    /// Times a count.
    pub(crate) fn times(self, count: impl Into<i64>) -> Total {
        Total(i64::from(self.0) * count.into())
    }
}

impl Total {
    /// Stands for "nothing is known yet": less than any bound, and far enough from the end to take something off.
    pub(crate) const UNKNOWN: Self = Self(i64::MIN / 4);

    /// Stands for "any at all": more than any cost.
    pub(crate) const ANY: Self = Self(i64::MAX);

    /// In the caller's unit.
    pub(crate) fn cost(self, quantum: f64) -> f64 {
        self.exact() / QUANTUM_EXACT * quantum
    }

    /// To do arithmetic with that is rounded later. Exact up to 2⁵³, some hundred million unbuilt clubs.
    pub(crate) fn exact(self) -> f64 {
        self.0 as f64
    }

    /// The next whole quantum, unless it is whole already.
    pub(crate) fn whole_up(self) -> Self {
        let frac = i64::from(FRAC);
        Self(self.0.div_euclid(frac) * frac + if self.0.rem_euclid(frac) == 0 { 0 } else { frac })
    }

    /// One share of it when it is split `of` ways; nothing where `of` is 0.
    pub(crate) fn share(self, of: usize) -> Steps {
        let each = i64::try_from(of).ok().and_then(|of| self.0.checked_div(of)).unwrap_or_default();
        Steps(i32::try_from(each.clamp(0, i64::from(FORBIDDEN.0))).unwrap_or_default())
    }

    /// How many whole quanta.
    pub(crate) fn quanta(self) -> i64 {
        self.0 / i64::from(FRAC)
    }

    /// As a limit for single clubs, for which everything from [`FORBIDDEN`] on is out of the question.
    pub(crate) fn limit(self) -> Steps {
        let below = self.0.min(i64::from(FORBIDDEN.0) - 1);
        Steps(i32::try_from(below).unwrap_or(i32::MIN))
    }
}

impl From<Steps> for Total {
    fn from(steps: Steps) -> Self {
        Self(i64::from(steps.0))
    }
}

impl From<Quanta> for Total {
    fn from(quanta: Quanta) -> Self {
        Self(i64::from(quanta.0) * i64::from(FRAC))
    }
}

impl Add<Steps> for Total {
    type Output = Self;
    fn add(self, steps: Steps) -> Self {
        self + Self::from(steps)
    }
}

impl AddAssign<Steps> for Total {
    fn add_assign(&mut self, steps: Steps) {
        *self += Self::from(steps);
    }
}

impl Sub<Steps> for Total {
    type Output = Self;
    fn sub(self, steps: Steps) -> Self {
        self - Self::from(steps)
    }
}

impl Sum<Steps> for Total {
    fn sum<I: Iterator<Item = Steps>>(all: I) -> Self {
        all.fold(Self(0), Add::add)
    }
}
