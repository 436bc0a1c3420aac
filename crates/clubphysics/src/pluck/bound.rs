//! How well a frequency can be known at all.

use nalgebra::{SMatrix, SVector};

/// Least standard deviation of the frequency of a real tone `A·exp(-γt)·cos(ωt + φ)` in white noise, Hz.
///
/// Inverse of the exact Fisher matrix with amplitude, phase and frequency unknown, and the decay too where it is not
/// zero. Without decay and averaged over phases it is Rife and Boorstyn's `24σ²/(A²·N·(N²-1))` (1974), in rad² per
/// sample². Returns NaN when the samples do not determine the tone.
///
/// # Examples
/// ```
/// let bound = clubphysics::pluck::frequency_bound_hz(1.0, 0.0, 10.3, 0.0, 0.1, 1000, 1000.0);
/// assert!((bound - 0.002453).abs() < 1e-6);
/// ```
#[must_use]
pub fn frequency_bound_hz(
    amplitude: f64,
    phase_rad: f64,
    frequency_hz: f64,
    decay_per_s: f64,
    noise_sd: f64,
    samples: usize,
    sample_rate_hz: f64,
) -> f64 {
    let omega = std::f64::consts::TAU * frequency_hz;
    let mut fisher = SMatrix::<f64, 4, 4>::zeros();
    for i in 0..samples {
        let time = i as f64 / sample_rate_hz;
        let envelope = (-decay_per_s * time).exp();
        let (sin, cos) = (omega * time + phase_rad).sin_cos();
        let slope = SVector::from([
            -amplitude * envelope * time * sin,
            envelope * cos,
            -amplitude * envelope * sin,
            -amplitude * envelope * time * cos,
        ]);
        fisher += slope * slope.transpose();
    }
    let variance = if decay_per_s == 0.0 {
        fisher.fixed_view::<3, 3>(0, 0).into_owned().try_inverse().map(|inverse| inverse[(0, 0)])
    } else {
        fisher.try_inverse().map(|inverse| inverse[(0, 0)])
    };
    variance.map_or(f64::NAN, |variance| noise_sd * variance.sqrt() / std::f64::consts::TAU)
}
