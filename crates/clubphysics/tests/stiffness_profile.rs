//! The stiffness along a shaft from its readings: truths of this test, read by an integration of the beam's equation of its own.

use clubphysics::stiffness_profile::{ClampedReading, ProfilePrior, Seen, StiffnessProfile, worth_of_readings};
use clubphysics::vibration::{LineRow, RigidTip};
use std::f64::consts::{PI, TAU};

const LENGTH_MM: f64 = 1000.0;
const WEIGHT_KG: f64 = 0.205;
const METER_SD_CPM: f64 = 0.3;
const HELD_SD_MM: f64 = 0.5;
/// Clamps to hold this much of the butt, mm.
const HELD_MM: [f64; 7] = [127.0, 200.0, 275.0, 350.0, 430.0, 510.0, 600.0];

/// A number stream of this test (an LCG by D. Knuth, MMIX; bell of twelve uniform draws).
struct Draw(u64);

impl Draw {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn bell(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

fn model_n_m2(x_mm: f64) -> f64 {
    66.0 - 0.045 * x_mm
}

fn density_g_m(x_mm: f64) -> f64 {
    126.0 - 0.03 * x_mm
}

fn prior() -> ProfilePrior {
    let row = |i: i32| {
        let x = LENGTH_MM * f64::from(i) / 8.0;
        LineRow { position_mm: x, stiffness_n_m2: model_n_m2(x), mass_g_m: density_g_m(x) }
    };
    ProfilePrior {
        rows: (0..=8).map(row).collect(),
        length_mm: LENGTH_MM,
        level_sd: 0.15,
        tilt_sd: 0.15,
        shape_sd: 0.08,
        shape_length_mm: 180.0,
        gives_mm: (4.0, 4.0),
    }
}

/// First frequency by Runge and Kutta from the clamp and the secant method on the determinant of the tip's two conditions.
fn shot_cpm(stiffness: &dyn Fn(f64) -> f64, clamp_mm: f64, tip_kg: f64) -> f64 {
    let steps = 120;
    let h = (LENGTH_MM - clamp_mm) / 1000.0 / f64::from(steps);
    let places: Vec<(f64, f64)> = (0..=2 * steps)
        .map(|i| clamp_mm + h * 500.0 * f64::from(i))
        .map(|x| (stiffness(x), density_g_m(x) / 1000.0))
        .collect();
    let determinant = |w2: f64| {
        let run = |mut y: [f64; 4]| {
            let slope = |at: usize, y: [f64; 4]| [y[1], y[2] / places[at].0, -y[3], -places[at].1 * w2 * y[0]];
            let add = |y: [f64; 4], k: [f64; 4], f: f64| -> [f64; 4] { std::array::from_fn(|i| y[i] + f * k[i]) };
            for i in 0..steps as usize {
                let k1 = slope(2 * i, y);
                let k2 = slope(2 * i + 1, add(y, k1, h / 2.0));
                let k3 = slope(2 * i + 1, add(y, k2, h / 2.0));
                let k4 = slope(2 * i + 2, add(y, k3, h));
                y = std::array::from_fn(|i| y[i] + h / 6.0 * (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]));
            }
            [y[3] - tip_kg * w2 * y[0], y[2]]
        };
        let (a, b) = (run([0.0, 0.0, 1.0, 0.0]), run([0.0, 0.0, 0.0, 1.0]));
        a[0] * b[1] - a[1] * b[0]
    };
    // Rayleigh's bound with the shape under a load at the tip begins a little above the first root.
    let free = (LENGTH_MM - clamp_mm) / 1000.0;
    let middle = stiffness(clamp_mm + 300.0 * free);
    let mut low = 0.25 * 3.0 * middle / (free.powi(3) * (tip_kg + 0.03));
    let mut high = low * 1.1;
    let sign = determinant(low).signum();
    while determinant(high).signum() == sign {
        low = high;
        high *= 1.3;
    }
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if determinant(middle).signum() == sign { low = middle } else { high = middle }
    }
    (0.5 * (low + high)).sqrt() * 30.0 / PI
}

fn read(cpm: f64, held_mm: f64) -> ClampedReading {
    let tip = RigidTip { mass_kg: WEIGHT_KG, ..RigidTip::default() };
    ClampedReading { held_mm, held_sd_mm: HELD_SD_MM, seen: Seen::Frequency { cpm, tip }, sd: METER_SD_CPM }
}

/// A shaft 9 % soft, tilted, with a soft spot that neither follows.
fn spotted(x: f64) -> f64 {
    model_n_m2(x)
        * (-0.09 + 0.06 * (2.0 * x / LENGTH_MM - 1.0) - 0.14 * (-0.5 * ((x - 560.0) / 110.0).powi(2)).exp()).exp()
}

#[test]
fn seven_clamp_lengths_show_a_soft_spot_and_foretell_other_clamps() {
    let gives = 6.5;
    let readings: Vec<_> = HELD_MM.map(|held| read(shot_cpm(&spotted, held - gives, WEIGHT_KG), held)).to_vec();
    let found = StiffnessProfile::fit(&prior(), &readings).unwrap();
    for x in [200.0, 300.0, 400.0, 500.0, 600.0, 700.0] {
        let (stiffness, sd) = found.at(x);
        let off = (stiffness / spotted(x)).ln();
        assert!(off.abs() < 2.0 * sd && sd < 0.09, "{x} mm: off {off:.3}, said {sd:.3}");
    }
    // The spot is seen: next to it the shaft is softer than a straight tilt through both ends makes it.
    let ratio = |x: f64| (found.at(x).0 / model_n_m2(x)).ln();
    let dip = ratio(560.0) - 0.5 * (ratio(250.0) + ratio(870.0));
    assert!(dip < -0.06, "{dip}");
    // A clamp and a weight that were not among the readings, by the fit's own line: as the truth reads.
    let rows: Vec<LineRow> = (0..=40)
        .map(|i| LENGTH_MM * f64::from(i) / 40.0)
        .map(|x| LineRow { position_mm: x, stiffness_n_m2: found.at(x).0, mass_g_m: density_g_m(x) })
        .collect();
    let line = clubphysics::vibration::StiffnessLine::new(
        &rows,
        clubphysics::vibration::MeasuredFrom::Butt,
        clubphysics::vibration::BetweenRows::Straight,
        LENGTH_MM,
    );
    let tip = RigidTip { mass_kg: 0.262, ..RigidTip::default() };
    let mode =
        clubphysics::vibration::ClampedMode::new(&line.unwrap(), (240.0 - found.gives_mm.0) / 1000.0, 1.0, tip, 30)
            .unwrap();
    let truth = shot_cpm(&spotted, 240.0 - gives, 0.262);
    assert!((mode.cpm() - truth).abs() < 0.4, "{} against {truth}", mode.cpm());
    assert!(found.readings.iter().all(|r| r.off_sds.abs() < 2.0), "{:?}", found.readings);
    // Seven lengths tell some four figures of a line this smooth, never seven.
    assert!((3.5..6.0).contains(&found.told_figures), "{}", found.told_figures);
}

/// Shafts and clamps drawn from the prior: their smooth deviations as sums of waves with wavenumbers of the Gaussian spectrum of a
/// squared exponential (Bochner's theorem), so that nothing of the fit's own covariance is used. 150 shafts with five places each
/// that hang together: three standard errors of the mean square with a design effect of 2.5 are 0.27.
#[test]
fn bands_of_shafts_drawn_from_the_prior_hold() {
    let prior = prior();
    let mut draw = Draw(3);
    let (mut inside, mut count, mut square, mut give_square) = (0.0, 0.0, 0.0, 0.0);
    for _ in 0..150 {
        let (level, tilt) = (prior.level_sd * draw.bell(), prior.tilt_sd * draw.bell());
        let waves: Vec<(f64, f64, f64)> =
            (0..25).map(|_| (draw.bell() / prior.shape_length_mm, TAU * draw.uniform(), draw.bell())).collect();
        let shape = |x: f64| {
            let sum: f64 = waves.iter().map(|(k, phase, size)| size * (k * x + phase).cos()).sum();
            prior.shape_sd * (2.0 / waves.len() as f64).sqrt() * sum
        };
        let ratio = |x: f64| level + tilt * (2.0 * x / LENGTH_MM - 1.0) + shape(x);
        let stiffness = |x: f64| model_n_m2(x) * ratio(x).exp();
        let gives = prior.gives_mm.0 + prior.gives_mm.1 * draw.bell();
        let readings: Vec<_> = HELD_MM
            .map(|held| {
                let at = held - gives + HELD_SD_MM * draw.bell();
                read(shot_cpm(&stiffness, at, WEIGHT_KG) + METER_SD_CPM * draw.bell(), held)
            })
            .to_vec();
        let found = StiffnessProfile::fit(&prior, &readings).unwrap();
        for x in [125.0, 250.0, 375.0, 500.0, 625.0, 750.0] {
            let (fitted, sd) = found.at(x);
            let z = (fitted / stiffness(x)).ln() / sd;
            inside += f64::from(u8::from(z.abs() < 1.96));
            square += z * z;
            count += 1.0;
        }
        give_square += ((found.gives_mm.0 - gives) / found.gives_mm.1).powi(2);
    }
    let (share, square) = (inside / count, square / count);
    assert!(
        (0.92..0.975).contains(&share) && (0.78..1.27).contains(&square),
        "{share:.3} inside, mean square {square:.2}"
    );
    assert!((0.65..1.4).contains(&(give_square / 150.0)), "{}", give_square / 150.0);
}

#[test]
fn deflections_tell_the_same_line_and_repeats_tell_one_figure() {
    // δ = F·∫(a − x)²/EI dx by Simpson's rule of this test.
    let sag = |held: f64| {
        let (n, a) = (2000, LENGTH_MM);
        let h = (a - held) / f64::from(n);
        let part = |i: i32| {
            let x = held + h * f64::from(i);
            let weight = if i == 0 || i == n {
                1.0
            } else if i % 2 == 1 {
                4.0
            } else {
                2.0
            };
            weight * (a - x).powi(2) / spotted(x)
        };
        // 500 g; millimetres cubed over N·m² are 1e-9·m³ …, in millimetres 1e-6.
        0.5 * 9.806_65 * (0..=n).map(part).sum::<f64>() * h / 3.0 * 1e-6
    };
    let gives = 3.0;
    let at = |held: f64| {
        let seen = Seen::Deflection { mm: sag(held - gives), load_g: 500.0, from_butt_mm: LENGTH_MM };
        ClampedReading { held_mm: held, held_sd_mm: HELD_SD_MM, seen, sd: 0.1 }
    };
    let readings: Vec<_> = HELD_MM.map(at).to_vec();
    let found = StiffnessProfile::fit(&prior(), &readings).unwrap();
    for x in [200.0, 300.0, 400.0, 500.0, 600.0] {
        let (stiffness, sd) = found.at(x);
        let off = (stiffness / spotted(x)).ln();
        assert!(off.abs() < 2.0 * sd, "{x} mm: off {off:.3}, said {sd:.3}");
    }
    let again = StiffnessProfile::fit(&prior(), &[at(127.0); 7]).unwrap();
    assert!(again.told_figures < 1.01, "{}", again.told_figures);
    assert!(again.mean_sd(127.0) > 1.5 * found.mean_sd(127.0));
    let none = StiffnessProfile::fit(&prior(), &[]).unwrap();
    assert_eq!(none.told_figures, 0.0);
    assert!((none.at(333.0).0 - model_n_m2(333.0)).abs() < 1e-9);
}

#[test]
fn a_clamp_noted_wrong_stands_out_and_more_readings_are_worth_less_and_less() {
    let mut readings: Vec<_> = HELD_MM.map(|held| read(shot_cpm(&spotted, held - 4.0, WEIGHT_KG), held)).to_vec();
    readings[3].held_mm += 25.4;
    let found = StiffnessProfile::fit(&prior(), &readings).unwrap();
    let worst = (0..7).max_by(|a, b| found.readings[*a].off_sds.abs().total_cmp(&found.readings[*b].off_sds.abs()));
    assert!(worst == Some(3) && found.readings[3].off_sds < -4.0, "{:?}", found.readings);
    let like = |held: f64| Ok(read(shot_cpm(&model_n_m2, held - 4.0, WEIGHT_KG), held));
    let worth = worth_of_readings(&prior(), 127.0, 600.0, 9, like).unwrap();
    assert!(worth.windows(2).all(|pair| pair[1] <= pair[0] + 1e-3), "{worth:?}");
    assert!(worth[6] < 0.5 * worth[0] && worth[8] > 0.8 * worth[6], "{worth:?}");
}
