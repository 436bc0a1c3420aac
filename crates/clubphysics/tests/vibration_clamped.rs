//! The derivatives of a clamped club against differences of frequencies that an integration of its own finds.

use clubphysics::vibration::{BetweenRows, ClampedMode, LineRow, MeasuredFrom, RigidTip, StiffnessLine};
use std::f64::consts::PI;

const LENGTH_MM: f64 = 1041.4;

/// A steel shaft like many: 62 N·m² at the butt and 22 at the tip, with a steep middle; a row every 26 mm, so that what is
/// straight between the rows follows a tilt of all of it.
fn rows(tilt: f64) -> Vec<LineRow> {
    let stiffness = |x: f64| 42.0 - 20.0 * ((x - 560.0) / 260.0).tanh();
    (0..=40)
        .map(|i| LENGTH_MM * f64::from(i) / 40.0)
        .map(|position_mm| LineRow {
            position_mm,
            stiffness_n_m2: stiffness(position_mm) * (1.0 + tilt * (2.0 * position_mm / LENGTH_MM - 1.0)),
            mass_g_m: 122.0 - 0.02 * position_mm,
        })
        .collect()
}

fn head(mass_kg: f64, offset_m: f64, inertia_kg_m2: f64) -> RigidTip {
    RigidTip { mass_kg, offset_m, inertia_kg_m2 }
}

fn mode(rows: &[LineRow], clamp_m: f64, tip_m: f64, tip: RigidTip) -> ClampedMode {
    let line = StiffnessLine::new(rows, MeasuredFrom::Butt, BetweenRows::Straight, LENGTH_MM).unwrap();
    ClampedMode::new(&line, clamp_m, tip_m, tip, 24).unwrap()
}

/// The beam's equation by a shooting method of this test alone: `w' = θ, θ' = M/EI, M' = −Q, Q' = m·ω²·w` by Runge and Kutta
/// from the clamp, two solutions combined to the conditions at the tip; the frequency by bisection of their determinant.
fn shot_cpm(rows: &[LineRow], clamp_m: f64, tip_m: f64, tip: RigidTip) -> f64 {
    let at = |x: f64| {
        let mm = x * 1000.0;
        let i = rows.windows(2).position(|p| mm <= p[1].position_mm).unwrap_or(rows.len() - 2);
        let (a, b) = (&rows[i], &rows[i + 1]);
        let share = (mm - a.position_mm) / (b.position_mm - a.position_mm);
        let between = |p: f64, q: f64| p + (q - p) * share;
        (between(a.stiffness_n_m2, b.stiffness_n_m2), between(a.mass_g_m, b.mass_g_m) / 1000.0)
    };
    let determinant = |omega: f64| {
        let w2 = omega * omega;
        let run = |start: [f64; 4]| {
            let (n, mut y) = (4000, start);
            let h = (tip_m - clamp_m) / f64::from(n);
            let slope = |x: f64, y: [f64; 4]| {
                let (ei, m) = at(x);
                [y[1], y[2] / ei, -y[3], -m * w2 * y[0]]
            };
            let add = |y: [f64; 4], k: [f64; 4], f: f64| std::array::from_fn(|i| y[i] + f * k[i]);
            for i in 0..n {
                let x = clamp_m + h * f64::from(i);
                let k1 = slope(x, y);
                let k2 = slope(x + h / 2.0, add(y, k1, h / 2.0));
                let k3 = slope(x + h / 2.0, add(y, k2, h / 2.0));
                let k4 = slope(x + h, add(y, k3, h));
                y = std::array::from_fn(|i| y[i] + h / 6.0 * (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]));
            }
            let centre = y[0] + tip.offset_m * y[1];
            // Shear and moment that the body at the tip asks for.
            [
                y[3] - tip.mass_kg * w2 * centre,
                y[2] - tip.inertia_kg_m2 * w2 * y[1] - tip.mass_kg * w2 * centre * tip.offset_m,
            ]
        };
        let (a, b) = (run([0.0, 0.0, 1.0, 0.0]), run([0.0, 0.0, 0.0, 1.0]));
        a[0] * b[1] - a[1] * b[0]
    };
    let (mut low, mut high) = (10.0, 60.0);
    let sign = determinant(low).signum();
    assert!(determinant(high).signum() != sign, "one frequency between");
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if determinant(middle).signum() == sign { low = middle } else { high = middle }
    }
    0.5 * (low + high) * 30.0 / PI
}

#[test]
fn frequency_and_derivatives_agree_with_a_shooting_method() {
    let tip = head(0.262, 0.028, 3.0e-4);
    let (clamp, end) = (0.18, 0.99);
    let found = mode(&rows(0.0), clamp, end, tip);
    let cpm = shot_cpm(&rows(0.0), clamp, end, tip);
    assert!((found.cpm() / cpm - 1.0).abs() < 2e-6, "{} against {cpm}", found.cpm());
    // Relative slopes by central differences of the shooting method; the element's own curvature is good to about a 500th.
    let slope = |high: f64, low: f64, step: f64| (high / low).ln() / (2.0 * step);
    let same =
        |found: f64, by: f64, what: &str| assert!((found / by - 1.0).abs() < 4e-3, "{what}: {found} against {by}");
    let tilt = slope(shot_cpm(&rows(0.01), clamp, end, tip), shot_cpm(&rows(-0.01), clamp, end, tip), 0.01);
    same(found.by_tilt, tilt, "tilt");
    let free = slope(shot_cpm(&rows(0.0), clamp - 1e-3, end, tip), shot_cpm(&rows(0.0), clamp + 1e-3, end, tip), 1.0);
    same(found.by_free_mm, free, "free length");
    let trim = slope(
        shot_cpm(&rows(0.0), clamp - 1e-3, end - 1e-3, tip),
        shot_cpm(&rows(0.0), clamp + 1e-3, end + 1e-3, tip),
        1.0,
    );
    same(found.by_tip_trim_mm, trim, "tip trim");
    let body = |m: f64, o: f64, i: f64| shot_cpm(&rows(0.0), clamp, end, head(m, o, i));
    let mass = {
        // A gram at the centre changes neither the centre nor the inertia about it.
        slope(body(0.263, 0.028, 3.0e-4), body(0.261, 0.028, 3.0e-4), 1.0)
    };
    same(found.by_mass_g(0.028), mass, "mass");
    same(found.by_place_mm(0.262, 0.028), slope(body(0.262, 0.029, 3.0e-4), body(0.262, 0.027, 3.0e-4), 1.0), "place");
    let inertia = slope(body(0.262, 0.028, 4.0e-4), body(0.262, 0.028, 2.0e-4), 1000.0);
    same(found.by_inertia_g_cm2(), inertia, "inertia");
    // Trimming the tip of a shaft that tapers stiffens the club.
    assert!(found.by_tip_trim_mm > 0.0 && found.by_free_mm < 0.0);
}
