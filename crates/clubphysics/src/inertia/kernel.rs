//! The bare arithmetic of inertia and of the pendulum.

use std::f64::consts::TAU;

use crate::real::Real;

/// Gravity where none is given: the standard value, exact by definition (from memory: 3rd CGPM, 1901).
pub(super) const GRAVITY_M_S2: f64 = 9.806_65;

/// Inertia about an axis of masses at places, each with its own inertia about its centre: `Σ m·(x − a)² + I_own`.
///
/// Parts are (mass g, place mm, own inertia g·mm²). Accuracy: 1e-9 relative against exact fractions
/// (`tests/val_inertia.rs`).
///
/// # Examples
///
/// ```
/// // A rod of 120 g and 600 mm about its end: mL²/3.
/// let own = 120.0 * 600.0 * 600.0 / 12.0;
/// assert_eq!(clubphysics::inertia::inertia_g_mm2(&[(120.0, 300.0, own)], 0.0), 120.0 * 600.0 * 600.0 / 3.0);
/// ```
#[must_use]
pub fn inertia_g_mm2(parts: &[(f64, f64, f64)], axis_mm: f64) -> f64 {
    inertia(parts.iter().copied(), axis_mm)
}

/// Inertia about the pivot from the period of small swings: `m·g·d·T²/4π²`.
#[must_use]
pub fn pendulum_inertia_kg_m2<T: Real>(mass_kg: T, pivot_to_balance_point_m: T, small_period_s: T, g_m_s2: f64) -> T {
    mass_kg * pivot_to_balance_point_m * small_period_s.squared() * (g_m_s2 / (TAU * TAU))
}

/// Period of small swings: `2π·√(I/(m·g·d))`.
///
/// # Examples
///
/// ```
/// // A small weight on a thread of one metre: 2π·√(1 m / 9.80665 m/s²) = 2.00641 s.
/// let period_s: f64 = clubphysics::inertia::pendulum_period_s(0.4, 0.4, 1.0, 9.80665);
/// assert!((period_s - 2.00641).abs() < 5e-6);
/// ```
#[must_use]
pub fn pendulum_period_s<T: Real>(inertia_kg_m2: T, mass_kg: T, pivot_to_balance_point_m: T, g_m_s2: f64) -> T {
    (inertia_kg_m2 / (mass_kg * pivot_to_balance_point_m * g_m_s2)).sqrt() * TAU
}

/// How many times longer the period is at an amplitude than at a small one: `1/agm(1, cos θ/2)`, which begins
/// `1 + θ²/16` (from memory, Gauss's form of the complete elliptic integral).
///
/// Domain: amplitudes below 180°. Accuracy: rounding, held against the integral itself in `tests/val_inertia.rs`.
///
/// # Examples
///
/// ```
/// // At 90° the period is 1.18034 times that of small swings: 2/π times the complete elliptic integral K of sin 45°,
/// // 1.854075 (tables of K, from memory).
/// let factor: f64 = clubphysics::inertia::amplitude_factor(90f64.to_radians());
/// assert!((factor - 1.854075 * 2.0 / std::f64::consts::PI).abs() < 1e-6);
/// ```
#[must_use]
pub fn amplitude_factor<T: Real>(amplitude_rad: T) -> T {
    // Each step doubles the digits: five reach the last one for any swing below 150°.
    const STEPS: usize = 6;
    let (mut arithmetic, mut geometric) = (T::constant(1.0), (amplitude_rad * 0.5).cos());
    for _ in 0..STEPS {
        (arithmetic, geometric) = ((arithmetic + geometric) * 0.5, (arithmetic * geometric).sqrt());
    }
    T::constant(1.0) / arithmetic
}

pub(super) fn inertia<T: Real>(parts: impl IntoIterator<Item = (T, T, T)>, axis_mm: T) -> T {
    parts.into_iter().fold(T::constant(0.0), |sum, (mass, place, own)| sum + mass * (place - axis_mm).squared() + own)
}
