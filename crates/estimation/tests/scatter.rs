//! Goal: what measured pieces say of their scatter is that of an independent computation.

use estimation::{MeasuredPiece, scatter_after};

/// From an independent computation of the same grid, to its last digit.
#[test]
fn eight_strips_of_two_layers() {
    let strips = [0.31, -0.22, 0.08, -0.45, 0.52, -0.12, 0.27, -0.38];
    let strips = strips.map(|deviation| MeasuredPiece { deviation, noise_sd: 0.042, layers: 2.0 });
    let found = scatter_after(0.12, 0.7, &strips).unwrap();
    for (is, expected) in
        [(found.mean, 0.229), (found.root_mean_square, 0.236), (found.low, 0.158), (found.high, 0.343)]
    {
        assert!((is - expected).abs() < 5e-4, "{is} {expected}");
    }
    // Theory: 1/√(2n), a quarter; the prior narrows it a little.
    assert!((0.20..0.25).contains(&found.log_sd), "{}", found.log_sd);
}

#[test]
fn nothing_measured_leaves_the_prior_and_nonsense_is_refused() {
    let found = scatter_after(0.12, 0.3, &[]).unwrap();
    // The mean square of a log-normal: median² · exp(2 s²).
    assert!((found.root_mean_square - 0.12 * 0.09f64.exp()).abs() < 1e-4, "{found:?}");
    let bad = MeasuredPiece { deviation: f64::NAN, noise_sd: 0.0, layers: 1.0 };
    assert!(scatter_after(0.12, 0.7, &[bad]).is_err() && scatter_after(0.0, 0.7, &[]).is_err());
}
