//! How long the fit of 24 angles takes, document in to document out.

use std::hint::black_box;

use clubphysics::soft_side::{SoftSideInput, soft_side};
use criterion::{Criterion, criterion_group, criterion_main};

fn fit(c: &mut Criterion) {
    let angles_deg: Vec<f64> = (0..24).map(|i| 15.0 * f64::from(i)).collect();
    // Two percent of asymmetry, a small bow, and a pattern in place of noise.
    let force = |(i, angle): (usize, &f64)| {
        let turn = angle.to_radians();
        15.0 + 0.3 * (2.0 * turn - 1.0).cos() + 0.1 * turn.sin() + 0.02 * ((i * 7 % 5) as f64 - 2.0)
    };
    let input = SoftSideInput {
        forces_n: Some(angles_deg.iter().enumerate().map(force).collect()),
        fixed_deflection_mm: Some(100.0),
        angles_deg,
        ..SoftSideInput::default()
    };
    c.bench_function("soft_side_24_angles", |b| b.iter(|| soft_side(black_box(&input))));
}

criterion_group!(benches, fit);
criterion_main!(benches);
