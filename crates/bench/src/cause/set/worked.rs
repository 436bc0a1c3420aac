//! The worked numbers of an independent computation (dense matrices, every cause written out by hand), held to their
//! last digit. Deviations in points; `S` is the covariance of the deviations where nothing is wrong.

use super::*;
use estimation::Deviations;

fn name(i: usize) -> String {
    format!("r{i}")
}

/// Deviations with `shared²` in common and `own²` of their own.
fn deviations(values: &[f64], shared: f64, own: f64) -> Deviations {
    let n = values.len();
    let row = |i| (0..n).map(|j| shared * shared + if i == j { own * own } else { 0.0 }).collect();
    Deviations {
        readings: (0..n).map(name).collect(),
        deviation: values.to_vec(),
        covariance: (0..n).map(row).collect(),
    }
}

/// Nothing wrong, each of `n` readings wrong, and with `two` each pair of them wrong.
fn nothing_or_wrong(readings: usize, clubs: usize, two: bool) -> Vec<Hypothesis> {
    let one = 0.02 / clubs as f64;
    let mut all = vec![Hypothesis::nothing("nothing", 1.0)];
    let shift = |i: usize| Hypothesis::shift("wrong", one, name(i), 0.0, 3.0);
    all.extend((0..readings).map(shift));
    for i in 0..readings {
        for j in i + 1..readings {
            let changes = shift(i).changes.into_iter().chain(shift(j).changes).collect();
            if two {
                all.push(Hypothesis { changes, ..Hypothesis::nothing("two wrong", one * one) });
            }
        }
    }
    all
}

fn members(masses_g: &[f64], points_per_g: f64, read: usize) -> Vec<Member> {
    let per_g =
        |i: usize| if i < read { vec![Effect { reading: name(i), per_unit: points_per_g }] } else { Vec::new() };
    masses_g.iter().enumerate().map(|(i, mass_g)| Member { mass_g: *mass_g, per_g: per_g(i) }).collect()
}

/// Probability of all hypotheses of a name.
fn chance(of: &str, deviations: &Deviations, hypotheses: &[Hypothesis]) -> f64 {
    let weighed = deviations.weigh(hypotheses).unwrap();
    weighed.keys.iter().zip(&weighed.posterior).filter(|(key, _)| *key == of).map(|(_, p)| p).sum()
}

/// One head of a number's step is 3.25 points; here a gram is a point.
fn heads(values: &[f64]) -> f64 {
    let clubs = 8;
    let masses: Vec<f64> = (0..clubs).map(|i| 3.25 * f64::from(i)).collect();
    let of = members(&masses, 1.0, values.len());
    let n = values.len();
    let mut all = nothing_or_wrong(n, n, true);
    for i in 0..n {
        for j in i + 1..n {
            let prior = heads_prior(n, j - i);
            all.push(exchange(&format!("heads {i} {j}"), prior, (&of[i], &of[j]), 0.04));
        }
        for by in [3.25, -3.25] {
            let one = Change { mean: by, sd: 0.04, effects: of[i].per_g.clone() };
            all.push(Hypothesis { changes: vec![one], ..Hypothesis::nothing("one", 0.01 / 2.0 / n as f64) });
        }
    }
    chance("heads 0 1", &deviations(values, 1.10, 0.29), &all)
}

#[test]
fn two_heads_of_the_set_are_exchanged() {
    let p = heads(&[3.02, -3.41, 0.18, -0.12, 0.35, -0.22, 0.05, 0.10]);
    assert!((p - 0.9999).abs() < 5e-5, "{p}");
    // Only the first two clubs are read yet.
    let p = heads(&[3.02, -3.41]);
    assert!((p - 0.997).abs() < 5e-4, "{p}");
}

#[test]
fn two_grips_of_the_set_are_exchanged() {
    let masses = [48.6, 50.4, 51.9, 49.1, 50.0, 52.3, 49.6, 50.8];
    // A gram at four inches.
    let of = members(&masses, -(14.0 - 4.0) / 49.6117, 8);
    let mut all = nothing_or_wrong(8, 8, true);
    for i in 0..8 {
        for j in i + 1..8 {
            all.push(exchange(&format!("grips {i} {j}"), grips_prior(8), (&of[i], &of[j]), 0.0));
        }
    }
    let values = [-0.58, 0.06, 0.61, -0.09, 0.02, 0.11, -0.03, 0.05];
    let p = chance("grips 0 2", &deviations(&values, 0.05, 0.12), &all);
    assert!((p - 0.9999).abs() < 5e-5, "{p}");
}

#[test]
fn two_tip_weights_of_the_set_are_exchanged() {
    let masses = [4.0, 6.0, 2.0, 4.0, 8.0, 4.0, 6.0, 2.0];
    let (per_g, sd_g) = (0.44, 0.03 / 0.44);
    let of = members(&masses, per_g, 8);
    let unlike: Vec<(usize, usize)> =
        (0..8).flat_map(|i| (i + 1..8).map(move |j| (i, j))).filter(|(i, j)| masses[*i] != masses[*j]).collect();
    let mut all = nothing_or_wrong(8, 8, true);
    for (i, j) in &unlike {
        all.push(exchange(&format!("tips {i} {j}"), tips_prior(unlike.len()), (&of[*i], &of[*j]), sd_g));
    }
    // One weight another of the tray, and two such: the product.
    let one = 0.01 / 5.0 / 8.0;
    let tray = [0.0, 2.0, 4.0, 6.0, 8.0, 10.0];
    let other = |i: usize, g: f64| Change { mean: g - masses[i], sd: sd_g, effects: of[i].per_g.clone() };
    let single: Vec<(usize, Change)> =
        (0..8).flat_map(|i| tray.iter().filter(move |g| **g != masses[i]).map(move |g| (i, other(i, *g)))).collect();
    for (at, (i, change)) in single.iter().enumerate() {
        all.push(Hypothesis { changes: vec![change.clone()], ..Hypothesis::nothing("other", one) });
        for (_, second) in single[at + 1..].iter().filter(|(j, _)| j != i) {
            let changes = vec![change.clone(), second.clone()];
            all.push(Hypothesis { changes, ..Hypothesis::nothing("two others", one * one) });
        }
    }
    let values = [0.03, 0.92, -0.08, 0.05, -0.81, 0.1, -0.04, 0.02];
    let p = chance("tips 1 4", &deviations(&values, 0.05, 0.12), &all);
    assert!((p - 0.9997).abs() < 5e-5, "{p}");
}

fn off_zero_of(values: &[f64]) -> (Deviations, Vec<Hypothesis>) {
    let n = values.len();
    let mut all = nothing_or_wrong(n, n, false);
    let names: Vec<String> = (0..n).map(name).collect();
    for run in runs(n) {
        let on = names[run.from..=run.to].iter().map(String::as_str);
        all.push(off_zero(&format!("run {} {}", run.from, run.to), run.prior, on, OFF_ZERO_SD_POINTS));
    }
    // Drift, or one thing heavier in all of them.
    all.push(off_zero("drift", 0.02, names.iter().map(String::as_str), 0.5));
    (deviations(values, 0.05, 0.12), all)
}

#[test]
fn a_scale_off_zero_shows_in_a_run_of_readings() {
    let (values, all) = off_zero_of(&[0.02, -0.05, 0.78, 0.85, 0.74, 0.81]);
    let p = chance("run 2 5", &values, &all);
    assert!((p - 1.0).abs() < 5e-5, "{p}");
    // One reading alone cannot tell: look at the empty scale.
    let (values, all) = off_zero_of(&[0.78]);
    for (of, expected) in [("drift", 0.47), ("run 0 0", 0.28), ("wrong", 0.25)] {
        let p = chance(of, &values, &all);
        assert!((p - expected).abs() < 5e-3, "{of} {p}");
    }
}

/// Readings dry, with the tip weight and after the cure, and with `mass_g` the whole club less its plan.
fn ferrule(shared: f64, mass_g: Option<f64>) -> (f64, f64) {
    let mut of = deviations(&[-0.58, -0.63, 0.04], shared, 0.085);
    of.covariance[2][2] += 0.19 * 0.19;
    let effect = |i: usize, per_unit: f64| Effect { reading: name(i), per_unit };
    if let Some(mass_g) = mass_g {
        of.readings.push(name(3));
        of.deviation.push(mass_g);
        of.covariance.iter_mut().for_each(|row| row.push(0.0));
        of.covariance.push(vec![0.0, 0.0, 0.0, 0.45 * 0.45]);
    }
    let weighed = |per_unit: f64| mass_g.map(|_| effect(3, per_unit));
    let glued: Vec<Effect> = [effect(2, -0.62)].into_iter().chain(weighed(-1.5)).collect();
    let mut all: Vec<Hypothesis> = ferrule_off("ferrule", [&[effect(0, -0.62)], &[effect(1, -0.62)], &glued])
        .into_iter()
        .map(|(span, h)| Hypothesis { key: format!("{span:?}"), ..h })
        .collect();
    all.push(Hypothesis::nothing("nothing", 1.0));
    all.extend((0..3).map(|i| Hypothesis::shift("wrong", 0.01, name(i), 0.0, 3.0)));
    all.push(Hypothesis::shift("stop", 0.01, name(2), 0.0, 0.8));
    let fixed = |key: &str, prior: f64, points: [f64; 3], grams: f64| {
        let on = (0..3).map(|i| effect(i, points[i])).chain(weighed(grams)).collect();
        Hypothesis { changes: vec![Change { mean: 1.0, sd: 0.0, effects: on }], ..Hypothesis::nothing(key, prior) }
    };
    all.push(fixed("head", 0.005, [3.25; 3], 7.0));
    all.push(fixed("tip", 0.01, [0.0, -0.88, -0.88], -2.0));
    let mut heavier = Hypothesis::shift("joint", 0.02, name(2), 0.0, 1.0);
    let heavier_g = weighed(1.0).into_iter().collect();
    heavier.changes.push(Change { mean: 0.0, sd: 2.3, effects: heavier_g });
    all.push(heavier);
    (chance("UntilGlued", &of, &all), chance("nothing", &of, &all))
}

#[test]
fn a_ferrule_off_before_gluing_is_found_after_the_cure() {
    let (off, nothing) = ferrule(0.28, None);
    assert!((off - 0.849).abs() < 1e-3 && (nothing - 0.109).abs() < 1e-3, "{off} {nothing}");
    // The club weighs what it should: what would weigh more or less is ruled out, what was read before is not.
    let (off, _) = ferrule(0.28, Some(0.1));
    assert!((off - 0.866).abs() < 1e-3, "{off}");
    let (off, _) = ferrule(0.12, None);
    assert!((off - 0.998).abs() < 1e-3, "{off}");
}
