//! One set of eight clubs, proven: thirty seeds in turn.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use matching::instance::{Variant, set};
use matching::{Limits, solve_set};

fn one_set(c: &mut Criterion) {
    for (name, variant) in
        [("plain", Variant::Plain), ("two head models", Variant::TwoHeadModels), ("shortage", Variant::Shortage)]
    {
        let problems: Vec<_> = (0..30).map(|seed| set(seed, variant)).collect();
        let mut next = problems.iter().cycle();
        c.bench_function(&format!("one set, {name}"), |b| {
            b.iter(|| solve_set(black_box(next.next().expect("endless")), Limits::default()).expect("valid"));
        });
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(30);
    targets = one_set
}
criterion_main!(benches);
