//! Exact fractions, so that a formula can be evaluated in a test without any rounding.

use std::ops::{Add, Mul, Sub};

/// A fraction of two whole numbers in lowest terms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fraction {
    over: i128,
    under: i128,
}

impl Fraction {
    pub fn new(over: i128, under: i128) -> Self {
        let sign = if under < 0 { -1 } else { 1 };
        let common = greatest_common(over.unsigned_abs(), under.unsigned_abs()).max(1);
        Self { over: sign * over / common, under: sign * under / common }
    }

    pub fn whole(value: i128) -> Self {
        Self::new(value, 1)
    }

    /// A decimal figure as it is written.
    pub fn decimal(text: &str) -> Self {
        let (whole, part) = text.split_once('.').unwrap_or((text, ""));
        let under = 10i128.pow(u32::try_from(part.len()).expect("a short figure"));
        Self::new(format!("{whole}{part}").parse().expect("digits"), under)
    }

    pub fn over(self, other: Self) -> Self {
        Self::new(self.over * other.under, self.under * other.over)
    }

    /// Nearest binary number, through whole part and remainder so that large fractions lose nothing.
    pub fn to_f64(self) -> f64 {
        let whole = self.over / self.under;
        whole as f64 + (self.over % self.under) as f64 / self.under as f64
    }
}

fn greatest_common(a: u128, b: u128) -> i128 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    i128::try_from(a).expect("small")
}

impl Add for Fraction {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.over * other.under + other.over * self.under, self.under * other.under)
    }
}

impl Sub for Fraction {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.over * other.under - other.over * self.under, self.under * other.under)
    }
}

impl Mul for Fraction {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self::new(self.over * other.over, self.under * other.under)
    }
}
