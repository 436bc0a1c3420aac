//! The causes of a doubted reading in a job of 14 clubs, all of them read up to the finish.

#![allow(dead_code, reason = "a part of what the tests use")]

#[path = "../tests/causes/fault.rs"]
mod fault;
#[path = "../tests/causes/shop.rs"]
mod shop;

use bench::cause::inquire;
use criterion::{Criterion, criterion_group, criterion_main};
use fault::{Fault, Lasts, Slip};
use shop::{Bench, Front, STEPS};
use std::hint::black_box;
use trade::reading::What;

fn causes(c: &mut Criterion) {
    let front = Front::of_fourteen(7);
    let mut bench = Bench::new(&front, 5);
    bench.faults =
        vec![Fault { slip: Slip::HeadGrams(7.0), club: 4, step: "cured", what: What::SwingWeight, lasts: Lasts::On }];
    for (step, whats) in STEPS {
        for club in 0..front.job.clubs.len() {
            for what in whats {
                bench.read(club, step, *what, None);
            }
        }
    }
    let believed = front.assembly().believe(&bench.readings).expect("the job is sound");
    let id = &front.job.clubs[4].id;
    let doubted = bench.readings.iter().rev().find(|r| r.club == *id && believed.is_doubted(&r.id));
    let doubted = doubted.expect("seven grams are found out");
    let spares = front.spares();
    println!("{} readings of {} clubs", bench.readings.len(), front.job.clubs.len());
    c.bench_function("believe 14 clubs", |b| b.iter(|| front.assembly().believe(black_box(&bench.readings))));
    c.bench_function("causes of a doubted reading, 14 clubs", |b| {
        b.iter(|| inquire(black_box(&believed), black_box(doubted), &spares));
    });
}

criterion_group!(benches, causes);
criterion_main!(benches);
