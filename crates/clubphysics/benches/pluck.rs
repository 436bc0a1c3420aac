//! How long a recording takes, document in to document out.

use std::f64::consts::TAU;
use std::hint::black_box;

use clubphysics::pluck::{PluckInput, pluck};
use criterion::{Criterion, criterion_group, criterion_main};
use rand::{RngExt, SeedableRng};

/// 20 s at 1 kHz: two planes 6 cpm apart, plucked between them, in noise.
fn recording() -> PluckInput {
    let mut rng = rand_pcg::Pcg64Mcg::seed_from_u64(1);
    let mut noise = || 0.05 * (rng.random::<f64>() - 0.5);
    let sample = |i: usize| {
        let time = i as f64 / 1000.0;
        let fade = (-0.25 * time).exp();
        let (soft, stiff) = (fade * (TAU * 4.37 * time).cos(), fade * (TAU * 4.47 * time).cos());
        (0.7 * soft - 0.5 * stiff, 0.5 * soft + 0.7 * stiff)
    };
    let (axis_1, axis_2): (Vec<f64>, Vec<f64>) =
        (0..20_000).map(sample).map(|(x, y)| (x + noise(), y + noise())).unzip();
    PluckInput { sample_rate_hz: 1000.0, axis_1, axis_2: Some(axis_2), ..PluckInput::default() }
}

fn fit(c: &mut Criterion) {
    let two = recording();
    assert!(pluck(&two).expect("a pluck").planes.is_some());
    let one = PluckInput { axis_2: None, ..two.clone() };
    c.bench_function("pluck_20_s_two_axes_1_khz", |b| b.iter(|| pluck(black_box(&two))));
    c.bench_function("pluck_20_s_one_axis_1_khz", |b| b.iter(|| pluck(black_box(&one))));
}

criterion_group!(benches, fit);
criterion_main!(benches);
