//! Numbers that formulas are written in: plain `f64`, or [`Dual`] numbers that carry a derivative along.
//!
//! A formula written once over [`Real`] gives its value in `f64` and its exact slope in `Dual`: there is no step width
//! to choose, and the slope is as accurate as the value (a few units in the last place an operation). Duals nest, so
//! `Dual<Dual<f64>>` gives second derivatives.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A number that the formulas of this crate can be evaluated in.
pub trait Real:
    Copy
    + std::fmt::Debug
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
{
    /// A number that does not vary.
    fn constant(value: f64) -> Self;
    /// The plain figure, without slopes.
    fn value(self) -> f64;
    /// Square root.
    #[must_use]
    fn sqrt(self) -> Self;
    /// Sine of an angle in radians.
    #[must_use]
    fn sin(self) -> Self;
    /// Cosine of an angle in radians.
    #[must_use]
    fn cos(self) -> Self;
    /// Angle in radians of this sine.
    #[must_use]
    fn asin(self) -> Self;
    /// Angle in radians of this tangent.
    #[must_use]
    fn atan(self) -> Self;
    /// Exponential.
    #[must_use]
    fn exp(self) -> Self;
    /// Natural logarithm.
    #[must_use]
    fn ln(self) -> Self;

    /// Tangent of an angle in radians.
    #[must_use]
    fn tan(self) -> Self {
        self.sin() / self.cos()
    }

    /// Square.
    #[must_use]
    fn squared(self) -> Self {
        self * self
    }
}

impl Real for f64 {
    fn constant(value: f64) -> Self {
        value
    }
    fn value(self) -> f64 {
        self
    }
    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }
    fn sin(self) -> Self {
        f64::sin(self)
    }
    fn cos(self) -> Self {
        f64::cos(self)
    }
    fn asin(self) -> Self {
        f64::asin(self)
    }
    fn atan(self) -> Self {
        f64::atan(self)
    }
    fn exp(self) -> Self {
        f64::exp(self)
    }
    fn ln(self) -> Self {
        f64::ln(self)
    }
    fn tan(self) -> Self {
        f64::tan(self)
    }
}

/// A value and its derivative with respect to one input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dual<T = f64> {
    /// The value of the formula here.
    pub value: T,
    /// Its derivative by the one input that was made a [`Dual::variable`]: unit of the value over that of the input.
    pub slope: T,
}

impl<T: Real> Dual<T> {
    /// The input that the derivative is taken by.
    #[must_use]
    pub fn variable(value: T) -> Self {
        Self { value, slope: T::constant(1.0) }
    }

    /// Anything else.
    #[must_use]
    pub fn fixed(value: T) -> Self {
        Self { value, slope: T::constant(0.0) }
    }

    /// Chain rule: a function's value here and its derivative here.
    fn chain(self, value: T, derivative: T) -> Self {
        Self { value, slope: derivative * self.slope }
    }
}

impl<T: Real> Add for Dual<T> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { value: self.value + other.value, slope: self.slope + other.slope }
    }
}

impl<T: Real> Sub for Dual<T> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self { value: self.value - other.value, slope: self.slope - other.slope }
    }
}

impl<T: Real> Mul for Dual<T> {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        Self { value: self.value * other.value, slope: self.slope * other.value + self.value * other.slope }
    }
}

impl<T: Real> Div for Dual<T> {
    type Output = Self;
    fn div(self, other: Self) -> Self {
        let value = self.value / other.value;
        Self { value, slope: (self.slope - value * other.slope) / other.value }
    }
}

impl<T: Real> Neg for Dual<T> {
    type Output = Self;
    fn neg(self) -> Self {
        Self { value: -self.value, slope: -self.slope }
    }
}

impl<T: Real> Add<f64> for Dual<T> {
    type Output = Self;
    fn add(self, other: f64) -> Self {
        Self { value: self.value + other, slope: self.slope }
    }
}

impl<T: Real> Sub<f64> for Dual<T> {
    type Output = Self;
    fn sub(self, other: f64) -> Self {
        Self { value: self.value - other, slope: self.slope }
    }
}

impl<T: Real> Mul<f64> for Dual<T> {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self { value: self.value * factor, slope: self.slope * factor }
    }
}

impl<T: Real> Div<f64> for Dual<T> {
    type Output = Self;
    fn div(self, divisor: f64) -> Self {
        Self { value: self.value / divisor, slope: self.slope / divisor }
    }
}

impl<T: Real> Real for Dual<T> {
    fn constant(value: f64) -> Self {
        Self::fixed(T::constant(value))
    }
    fn value(self) -> f64 {
        self.value.value()
    }
    fn sqrt(self) -> Self {
        let root = self.value.sqrt();
        self.chain(root, T::constant(0.5) / root)
    }
    fn sin(self) -> Self {
        self.chain(self.value.sin(), self.value.cos())
    }
    fn cos(self) -> Self {
        self.chain(self.value.cos(), -self.value.sin())
    }
    fn asin(self) -> Self {
        self.chain(self.value.asin(), T::constant(1.0) / (-self.value.squared() + 1.0).sqrt())
    }
    fn atan(self) -> Self {
        self.chain(self.value.atan(), T::constant(1.0) / (self.value.squared() + 1.0))
    }
    fn exp(self) -> Self {
        let value = self.value.exp();
        self.chain(value, value)
    }
    fn ln(self) -> Self {
        self.chain(self.value.ln(), T::constant(1.0) / self.value)
    }
}
