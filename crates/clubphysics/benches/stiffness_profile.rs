//! How long the line of a shaft takes from its readings: seven clamp lengths, with all that it says of them.

use clubphysics::stiffness_profile::{ClampedReading, ProfilePrior, Seen, StiffnessProfile, worth_of_readings};
use clubphysics::vibration::{LineRow, RigidTip};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

fn prior() -> ProfilePrior {
    let row = |i: i32| {
        let position_mm = 125.0 * f64::from(i);
        LineRow { position_mm, stiffness_n_m2: 66.0 - 0.045 * position_mm, mass_g_m: 126.0 - 0.03 * position_mm }
    };
    ProfilePrior {
        rows: (0..=8).map(row).collect(),
        length_mm: 1000.0,
        level_sd: 0.15,
        tilt_sd: 0.2,
        shape_sd: 0.08,
        shape_length_mm: 180.0,
        gives_mm: (4.0, 4.0),
    }
}

fn read(held_mm: f64, cpm: f64) -> ClampedReading {
    let tip = RigidTip { mass_kg: 0.205, ..RigidTip::default() };
    ClampedReading { held_mm, held_sd_mm: 0.5, seen: Seen::Frequency { cpm, tip }, sd: 0.3 }
}

fn fits(c: &mut Criterion) {
    let prior = prior();
    // What a shaft a tenth softer than its model reads, within a cycle.
    let readings: Vec<ClampedReading> = [
        (127.0, 249.0),
        (200.0, 282.0),
        (275.0, 323.0),
        (350.0, 376.0),
        (430.0, 451.0),
        (510.0, 559.0),
        (600.0, 739.0),
    ]
    .map(|(held, cpm)| read(held, cpm))
    .to_vec();
    let found = StiffnessProfile::fit(&prior, &readings).expect("a line");
    assert!(found.told_figures > 2.0);
    c.bench_function("profile_from_seven_readings", |b| {
        b.iter(|| StiffnessProfile::fit(black_box(&prior), black_box(&readings)));
    });
    c.bench_function("worth_of_one_to_ten_readings", |b| {
        b.iter(|| worth_of_readings(black_box(&prior), 127.0, 600.0, 10, |held| Ok(read(held, 300.0))));
    });
}

criterion_group!(benches, fits);
criterion_main!(benches);
