//! Goal: the worth of a choice among what lies in the box is that of independent computations.

use estimation::choice::Prospect;
use estimation::normal;

fn prospect(mu: f64) -> Prospect {
    Prospect { deviation_points: mu, told_sd: 0.16, rest_sd: 0.13, tolerance_points: 0.3 }
}

/// Computed with scipy: bivariate normal distribution functions, ρ = σ_e/√(σ_e² + σ_r²), checked by quadrature with
/// break points; six decimals.
#[test]
fn val_real_grips() {
    let table: [(&[f64], f64, f64); 4] = [
        (&[0.0], 0.0, 0.854_390),
        (&[0.0], 0.4, 0.313_470),
        (&[-0.3, -0.1, 0.0, 0.1, 0.35], 0.0, 0.967_828),
        (&[-0.5, 0.5], 0.0, 0.315_789),
    ];
    for (effects, mu, expected) in table {
        let found = prospect(mu).chance_with(effects);
        assert!((found - expected).abs() < 6e-7, "{effects:?} at {mu}: {found}");
    }
}

#[test]
fn more_choice_is_never_worse_and_ends_at_the_best() {
    let mut effects = Vec::new();
    let mut before = 0.0;
    for k in 0..200 {
        effects.push(f64::from((k * 37) % 200 - 100) / 100.0);
        let now = prospect(0.2).chance_with(&effects);
        assert!(now >= before - 1e-9, "{k}");
        before = now;
    }
    assert!((before - prospect(0.2).chance_at_best()).abs() < 1e-3);
}

#[test]
fn nothing_to_learn_or_nothing_to_choose() {
    let settled = Prospect { told_sd: 0.0, ..prospect(0.4) };
    assert!((settled.chance_with(&[0.4, 0.0]) - settled.chance_at_best()).abs() < 1e-12);
    assert!((prospect(0.1).chance_with(&[]) - prospect(0.1).chance_with(&[0.0])).abs() < 1e-9);
    let sure = Prospect { rest_sd: 0.0, ..prospect(0.0) };
    assert!((sure.chance_with(&[0.0]) - normal::between(-0.3, 0.3, 0.0, 0.16)).abs() < 2e-3);
    assert!(prospect(0.0).chance_with(&[f64::NAN, 0.0]) > 0.85);
}
