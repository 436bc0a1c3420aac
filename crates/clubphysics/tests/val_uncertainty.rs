//! Goal: the propagation that every topic uses gives the published results of the GUM and of JCGM 101. Method: each
//! published model written once over `Real`, sent through `Inputs::propagate`, and where the publication simulates,
//! simulated here too with a fixed seed.

use crate::told;
use clubphysics::{
    PhysicsError,
    real::{Dual, Real},
    uncertainty::{Correlation, Inputs, Point, Var, coverage_factor, coverage_factor_normal},
};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;
use rstest::rstest;

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

/// Standard deviation of a rectangular distribution of this half width.
fn rectangular(half_width: f64) -> Option<f64> {
    Some(half_width / 3f64.sqrt())
}

/// l = l_s + d − l_s·(δα·θ + α_s·δθ), d and θ each in the parts that their uncertainty comes from.
fn gauge_block<T: Real>(x: &Point<'_, T>, vars: &[Var]) -> Result<Vec<T>, PhysicsError> {
    let [standard, difference, repeated, random, systematic, alpha, delta_alpha, delta_theta, theta, cycle] =
        std::array::from_fn(|i| x[vars[i]]);
    let length = standard + difference + repeated + random + systematic
        - standard * (delta_alpha * (theta + cycle) + alpha * delta_theta);
    Ok(vec![length])
}

/// GUM (JCGM 100:2008) H.1, published: l 50 000 838 nm, u 32 nm, ν_eff 16, k₉₉ 2.92, U₉₉ 93 nm (unrounded 92.48), with
/// second-order terms u 34 nm. Tolerances: published rounding; U ± 1 nm since it is published rounded up.
#[test]
fn gum_h1_gauge_block() {
    let mut inputs = Inputs::default();
    let mut vars = Vec::new();
    let mut add = |name: &str, value: f64, sd: Option<f64>, degrees: f64| {
        vars.push(inputs.add_estimated(name, value, sd, degrees).expect("a good input"));
    };
    add("l_s", 50_000_623.0, Some(25.0), 18.0);
    add("d", 215.0, None, f64::INFINITY);
    add("d repeated", 0.0, Some(5.8), 24.0);
    add("d random", 0.0, Some(3.9), 5.0);
    add("d systematic", 0.0, Some(6.7), 8.0);
    add("alpha_s", 11.5e-6, rectangular(2e-6), f64::INFINITY);
    add("delta alpha", 0.0, rectangular(1e-6), 50.0);
    add("delta theta", 0.0, rectangular(0.05), 2.0);
    add("theta", -0.1, Some(0.2), f64::INFINITY);
    add("theta cycle", 0.0, Some(0.5 / 2f64.sqrt()), f64::INFINITY);
    let result = inputs.propagate(|x| gauge_block(x, &vars)).expect("a good model");
    close(result.value(0), 50_000_838.0, 0.5);
    let u = result.sd(0).expect("inputs have sd");
    close(u, 32.0, 0.5);
    let degrees = result.effective_degrees_of_freedom(0).expect("independent inputs").floor();
    close(degrees, 16.0, 0.0);
    let k = coverage_factor(0.99, degrees).expect("a good share");
    close(k, 2.92, 0.005);
    close(k * u, 92.48, 1.0);
    let second = inputs.second_order_variances(|x| gauge_block(x, &vars)).expect("independent inputs");
    close(second[0].sqrt(), 34.0, 0.5);
}

/// GUM H.3, published: y₁ −0.1712 (0.0029), y₂ 0.00218 (0.00067), r −0.930, b(30) −0.1494 (0.0041). The line is fitted
/// inside the propagated formula, so its covariance comes from the propagation alone. Tolerance: published rounding.
#[test]
fn gum_h3_thermometer() {
    let t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
    let b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
    let line = |b: &[Dual]| {
        let n = b.len() as f64;
        let from_20 = t.map(|t| t - 20.0);
        let (sum, squares) = from_20.iter().fold((0.0, 0.0), |(sum, squares), t| (sum + t, squares + t * t));
        let zero = Dual::fixed(0.0);
        let sum_b = b.iter().fold(zero, |sum, b| sum + *b);
        let sum_tb = b.iter().zip(from_20).fold(zero, |sum, (b, t)| sum + *b * t);
        let determinant = n * squares - sum * sum;
        let intercept = (sum_b * squares - sum_tb * sum) / determinant;
        let slope = (sum_tb * n - sum_b * sum) / determinant;
        [intercept, slope]
    };
    let [intercept, slope] = line(&b.map(Dual::fixed));
    let residuals = t.iter().zip(b).map(|(t, b)| (b - intercept.value - slope.value * (t - 20.0)).powi(2)).sum::<f64>();
    let s = (residuals / 9.0).sqrt();
    let mut inputs = Inputs::default();
    let vars: Vec<_> = b.iter().map(|b| inputs.add("b", *b, Some(s)).expect("a good input")).collect();
    let result = inputs
        .propagate(|x| {
            let b: Vec<_> = vars.iter().map(|var| x[*var]).collect();
            let [intercept, slope] = line(&b);
            Ok(vec![intercept, slope, intercept + slope * 10.0])
        })
        .expect("a good model");
    close(result.value(0), -0.1712, 0.000_05);
    close(result.sd(0).expect("sd"), 0.0029, 0.000_05);
    close(result.value(1), 0.00218, 0.000_005);
    close(result.sd(1).expect("sd"), 0.00067, 0.000_005);
    close(result.correlation(0, 1).expect("both uncertain"), -0.930, 0.000_5);
    close(result.value(2), -0.1494, 0.000_1);
    close(result.sd(2).expect("sd"), 0.0041, 0.000_05);
}

/// The same b(30) from y₁, y₂ and their covariance as inputs: what H.3 does by hand with r −0.930.
#[test]
fn gum_h3_by_covariance_of_inputs() {
    let mut inputs = Inputs::default();
    let intercept = inputs.add("y1", -0.1712, Some(0.0029)).expect("good");
    let slope = inputs.add("y2", 0.00218, Some(0.00067)).expect("good");
    inputs.covary(intercept, slope, -0.930 * 0.0029 * 0.00067).expect("good");
    let result = inputs.propagate(|x| Ok(vec![x[intercept] + x[slope] * 10.0])).expect("a good model");
    close(result.value(0), -0.1494, 0.000_05);
    close(result.sd(0).expect("sd"), 0.0041, 0.000_1);
}

fn standard_normal(random: &mut Pcg64) -> f64 {
    let radius = (-2.0 * (1.0 - random.random::<f64>()).ln()).sqrt();
    radius * (std::f64::consts::TAU * random.random::<f64>()).cos()
}

fn uniform(random: &mut Pcg64, low: f64, high: f64) -> f64 {
    low + (high - low) * random.random::<f64>()
}

/// JCGM 101 9.2.2 and 9.2.3, published: four inputs of u 1 add to u 2.0; 95 % within ±3.92 when normal, ±3.88 when
/// rectangular. The first order knows only the normal interval; the other is simulated. Tolerance of the simulation:
/// the quantile of 400 000 draws wanders by √(0.95·0.05/n)/density ≈ 0.006 (one sigma), allowed 0.02.
#[test]
fn jcgm_101_additive() {
    let mut inputs = Inputs::default();
    let vars: Vec<_> =
        (0..4).map(|i| inputs.add(format!("x{i}"), 0.0, rectangular(3f64.sqrt())).expect("good")).collect();
    let result = inputs.propagate(|x| Ok(vec![x[vars[0]] + x[vars[1]] + x[vars[2]] + x[vars[3]]])).expect("a model");
    let u = result.sd(0).expect("sd");
    close(u, 2.0, 1e-12);
    close(u * coverage_factor_normal(0.95), 3.92, 0.005);
    let mut random = Pcg64::seed_from_u64(20_080_901);
    let half = 3f64.sqrt();
    let mut sums: Vec<f64> =
        (0..400_000).map(|_| (0..4).map(|_| uniform(&mut random, -half, half)).sum::<f64>().abs()).collect();
    sums.sort_by(f64::total_cmp);
    close(sums[380_000], 3.88, 0.02);
}

/// (m_R + δ)·(1 + (ρ_a − 1.2)·(1/ρ_w − 1/ρ_R)) − 100 000, in mg and kg/m³.
fn mass_calibration<T: Real>([standard, difference, air, weight, reference]: [T; 5]) -> T {
    let one = T::constant(1.0);
    (standard + difference) * ((air - 1.2) * (one / weight - one / reference) + 1.0) - 100_000.0
}

/// JCGM 101 9.3, from memory: first order 1.2340 and u 0.0539; simulation 1.2341, u 0.0754, shortest 95 % interval
/// [1.0834, 1.3825], width 0.299. The first order misses the product term; the second-order terms bring it near the
/// simulation. Tolerances: last digit for the first order; 0.0005 in u and ±0.002 in the interval's width for 400 000
/// draws.
#[test]
fn jcgm_101_mass_calibration() {
    let mut inputs = Inputs::default();
    let vars = [
        inputs.add("m_R", 100_000.0, Some(0.050)),
        inputs.add("delta", 1.234, Some(0.020)),
        inputs.add("rho_a", 1.2, rectangular(0.1)),
        inputs.add("rho_w", 8000.0, rectangular(1000.0)),
        inputs.add("rho_R", 8000.0, rectangular(50.0)),
    ]
    .map(|var| var.expect("a good input"));
    let first = inputs.propagate(|x| Ok(vec![mass_calibration(vars.map(|var| x[var]))])).expect("a good model");
    close(first.value(0), 1.234, 0.000_05);
    close(first.sd(0).expect("sd"), 0.0539, 0.000_05);
    let second = inputs.second_order_variances(|x| Ok(vec![mass_calibration(vars.map(|var| x[var]))])).expect("model");
    let mut random = Pcg64::seed_from_u64(1_012_008);
    let mut draws: Vec<f64> = (0..400_000)
        .map(|_| {
            mass_calibration([
                100_000.0 + 0.050 * standard_normal(&mut random),
                1.234 + 0.020 * standard_normal(&mut random),
                uniform(&mut random, 1.1, 1.3),
                uniform(&mut random, 7000.0, 9000.0),
                uniform(&mut random, 7950.0, 8050.0),
            ])
        })
        .collect();
    draws.sort_by(f64::total_cmp);
    let mean = draws.iter().sum::<f64>() / draws.len() as f64;
    let u = (draws.iter().map(|draw| (draw - mean).powi(2)).sum::<f64>() / draws.len() as f64).sqrt();
    close(mean, 1.2341, 0.000_5);
    close(u, 0.0754, 0.000_5);
    let held = draws.len() * 95 / 100;
    let width = draws.windows(held).map(|window| window[held - 1] - window[0]).fold(f64::INFINITY, f64::min);
    close(width, 0.299, 0.002);
    close(second[0].sqrt(), u, 0.001);
}

/// From memory, tables of Student's t and of the normal distribution. Tolerance: the tables' rounding.
#[rstest]
#[case(0.95, 1.0, 12.706)]
#[case(0.95, 5.0, 2.571)]
#[case(0.95, 10.0, 2.228)]
#[case(0.99, 16.0, 2.921)]
#[case(0.95, 30.0, 2.042)]
#[case(0.95, f64::INFINITY, 1.960)]
#[case(0.99, f64::INFINITY, 2.576)]
fn coverage_factors(#[case] probability: f64, #[case] degrees: f64, #[case] factor: f64) {
    close(coverage_factor(probability, degrees).expect("a good share"), factor, 0.000_6);
}

/// Every function's slope against a central difference, whose own error at h = 1e-5 is below 1e-9 here.
#[test]
fn slopes_of_functions() {
    type Function = fn(Dual) -> Dual;
    let functions: [(&str, Function, f64); 9] = [
        ("sqrt", Real::sqrt, 2.3),
        ("sin", Real::sin, 0.7),
        ("cos", Real::cos, 0.7),
        ("tan", Real::tan, 0.7),
        ("asin", Real::asin, 0.4),
        ("atan", Real::atan, 1.7),
        ("exp", Real::exp, 0.9),
        ("ln", Real::ln, 1.9),
        ("quotient", |x| (x * 3.0 + 1.0) / (x.squared() - 0.2), 1.3),
    ];
    for (name, function, at) in functions {
        let h = 1e-5;
        let central = (function(Dual::fixed(at + h)).value - function(Dual::fixed(at - h)).value) / (2.0 * h);
        let slope = function(Dual::variable(at)).slope;
        assert!((slope - central).abs() < 1e-8 * slope.abs().max(1.0), "{name}: {slope} and {central}");
    }
}

#[test]
fn correlations_add_and_cancel() {
    let with = |coefficient: f64| {
        let mut inputs = Inputs::default();
        let a = inputs.add("a", 10.0, Some(3.0)).expect("good");
        let b = inputs.add("b", 20.0, Some(4.0)).expect("good");
        inputs.correlate(a, b, coefficient).expect("good");
        let result = inputs.propagate(|x| Ok(vec![x[a] + x[b], x[a] - x[b]])).expect("a model");
        [result.sd(0).expect("sd"), result.sd(1).expect("sd")]
    };
    // 3-4-5, and sums and differences of perfectly correlated figures.
    close(with(0.0)[0], 5.0, 1e-12);
    close(with(1.0)[0], 7.0, 1e-12);
    close(with(1.0)[1], 1.0, 1e-12);
    close(with(-1.0)[0], 1.0, 1e-12);
}

#[test]
fn what_cannot_be_is_refused() {
    let mut inputs = Inputs::default();
    assert!(matches!(inputs.add("a", f64::NAN, None), Err(PhysicsError::NotFinite { field, .. }) if field == "a"));
    assert!(matches!(inputs.add("a", 1.0, Some(-0.1)), Err(PhysicsError::OutOfRange { field, .. }) if field == "a_sd"));
    assert!(inputs.add_estimated("a", 1.0, Some(0.1), 0.0).is_err());
    let vars = ["a", "b", "c"].map(|name| inputs.add(name, 1.0, Some(0.1)).expect("good"));
    assert!(inputs.correlate(vars[0], vars[0], 0.5).is_err());
    assert!(inputs.correlate(vars[0], vars[1], 1.5).is_err());
    let unknown = Correlation { a: "a".into(), b: "z".into(), coefficient: 0.5 };
    let error = inputs.correlate_named(&[unknown]).expect_err("no z");
    assert!(told(&error).contains("“z”") && told(&error).contains("a, b and c"), "{error}");
    // Two things that both go strictly with a third cannot go against each other.
    for (one, other, coefficient) in [(0, 1, 0.9), (1, 2, 0.9), (0, 2, -0.9)] {
        inputs.correlate(vars[one], vars[other], coefficient).expect("each alone is possible");
    }
    let impossible = inputs.propagate(|x| Ok(vec![x[vars[0]]]));
    assert!(matches!(impossible, Err(PhysicsError::Contradiction { .. })));
}

#[test]
fn exact_inputs_give_no_sd_and_budgets_name_their_inputs() {
    let mut inputs = Inputs::default();
    let a = inputs.add("a", 3.0, None).expect("good");
    let b = inputs.add("b", 4.0, Some(0.5)).expect("good");
    let result = inputs.propagate(|x| Ok(vec![x[a] * 2.0, x[a] * x[b]])).expect("a model");
    assert_eq!((result.sd(0), result.sd(1)), (None, Some(1.5)));
    assert_eq!(result.budget(1).collect::<Vec<_>>(), [("b", 1.5)]);
    assert_eq!(result.effective_degrees_of_freedom(1), Some(f64::INFINITY));
    assert_eq!(result.correlation(0, 1), None);
}
