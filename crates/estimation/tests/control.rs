//! Goal: the run rules of a control chart fire where they must and only there. Method: runs written by hand from the
//! rules' own words, and the mean run length that is published for the four rules together.

use estimation::EstimationError;
use estimation::chart::{Pattern, Signal, signals};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;

/// The patterns that the last value of a run completes, about 10 with a scatter of 2.
fn last(values: &[f64]) -> Vec<(Pattern, usize, bool)> {
    let found = signals(values, 10.0, 2.0, 0.0).expect("sound figures");
    let of_last = found.into_iter().filter(|s| s.at + 1 == values.len());
    of_last.map(|Signal { pattern, from, above, .. }| (pattern, from, above)).collect()
}

#[test]
fn each_rule_fires_on_its_own_run() {
    assert_eq!(last(&[10.0, 16.1]), [(Pattern::Beyond, 1, true)]);
    assert_eq!(last(&[10.0, 3.9]), [(Pattern::Beyond, 1, false)]);
    assert_eq!(last(&[14.1, 9.0, 14.2]), [(Pattern::TwoOfThree, 0, true)]);
    assert_eq!(last(&[9.0, 5.9, 5.8]), [(Pattern::TwoOfThree, 1, false)]);
    assert_eq!(last(&[12.1, 12.2, 9.0, 12.3, 12.4]), [(Pattern::FourOfFive, 0, true)]);
    assert_eq!(last(&[9.9, 9.8, 9.7, 9.9, 9.6, 9.9, 9.8, 9.7]), [(Pattern::EightOnOneSide, 0, false)]);
}

#[test]
fn a_run_that_is_not_complete_says_nothing() {
    assert_eq!(last(&[10.0, 15.9]), [], "just within three scatters");
    assert_eq!(last(&[14.1, 9.0, 9.0, 14.2]), [], "two of four");
    assert_eq!(last(&[14.1, 9.0, 5.8]), [], "two beyond, but on two sides");
    assert_eq!(last(&[12.1, 12.2, 9.0, 12.3, 9.0]), [], "the last belongs to no run");
    assert_eq!(last(&[9.9, 9.8, 9.7, 9.9, 9.6, 9.9, 9.8]), [], "seven");
    assert_eq!(last(&[9.9, 9.8, 9.7, 10.1, 9.6, 9.9, 9.8, 9.7]), [], "one on the other side");
    assert_eq!(last(&[]), []);
}

/// A display of 0.1 shows 200.0 for ever of a weight of 200.02: the rounding is no drift.
#[test]
fn values_within_half_a_step_of_the_line_are_on_no_side() -> Result<(), EstimationError> {
    let values = [200.0; 20];
    assert!(signals(&values, 200.02, 0.05, 0.05)?.is_empty());
    assert_eq!(signals(&values, 200.02, 0.05, 0.0)?.len(), 13, "from the eighth on, every one");
    Ok(())
}

#[test]
fn what_is_no_number_is_refused() {
    assert!(signals(&[1.0, f64::NAN], 0.0, 1.0, 0.0).is_err());
    assert!(signals(&[1.0], f64::INFINITY, 1.0, 0.0).is_err());
    assert!(signals(&[1.0], 0.0, 0.0, 0.0).is_err());
    assert!(signals(&[1.0], 0.0, 1.0, -0.1).is_err());
}

/// A sound process is called out once in 91.75 values on average with all four rules, in 370.4 with the limits alone
/// (Champ and Woodall, Technometrics 29, 1987; quoted in the NIST/SEMATECH e-Handbook 6.3.2; from memory). The run
/// length is nearly geometric, so its standard error over 20,000 runs is 0.7 %: four of them are allowed.
#[test]
fn val_mean_run_length_of_the_rules() -> Result<(), EstimationError> {
    let mut rng = Pcg64::seed_from_u64(7);
    let mut normal = move || {
        let (u, v): (f64, f64) = (1.0 - rng.random::<f64>(), rng.random());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    };
    let runs = 20_000;
    let mut total = 0_usize;
    for _ in 0..runs {
        // Eight values are all that any rule looks back on.
        let mut window: Vec<f64> = Vec::new();
        loop {
            if window.len() == 8 {
                window.remove(0);
            }
            window.push(normal());
            total += 1;
            if signals(&window, 0.0, 1.0, 0.0)?.iter().any(|s| s.at + 1 == window.len()) {
                break;
            }
        }
    }
    let mean = total as f64 / f64::from(runs);
    assert!((mean / 91.75 - 1.0).abs() < 0.028, "{mean} instead of 91.75");
    Ok(())
}
