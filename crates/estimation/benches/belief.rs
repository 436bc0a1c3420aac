//! One more reading into the belief of a 14-club job with all forecasts out, and its parts.

#[path = "../tests/common/mod.rs"]
mod common;

use common::{DRY, FINISHED, GLUED, Truth, WEIGHTED, job, key, rng, swing_weight};
use criterion::{Criterion, criterion_group, criterion_main};
use estimation::{DOUBT_LIMIT, JobModel, Observation, OnClub, Quantity, Role};
use std::hint::black_box;

const CLUBS: usize = 14;

/// Seven readings a club: head, total mass, two lengths on a coarse rule, and the swing weight dry, glued and finished.
fn readings() -> Vec<Observation> {
    let mut random = rng(1);
    let truth = Truth::draw(&mut random, CLUBS);
    let mut all = Vec::new();
    for i in 0..CLUBS {
        for on in [&DRY[..], &GLUED, &FINISHED] {
            all.push(swing_weight(&format!("b{i:02}-{}", on.len()), i, on, truth.shown(&mut random, i, on)));
        }
        let mass_g = truth.clubs[i].pieces.iter().map(|(_, mass_g, _)| mass_g).sum();
        let of = |id: &str, quantity, value, sd, step| {
            Observation::new(format!("{id}{i:02}"), quantity, value, sd)
                .of_club(key(i), OnClub::of(&FINISHED))
                .rounded_to(step)
        };
        all.push(of("m", Quantity::TotalMass, mass_g, 0.1, 0.1));
        all.push(of("h", Quantity::PartMass(Role::Head), truth.clubs[i].pieces[0].1, 0.05, 0.1));
        let rounded_in = (truth.clubs[i].length_in * 16.0).round() / 16.0;
        all.push(of("l", Quantity::ShaftLength, rounded_in, 0.02, 1.0 / 16.0));
        all.push(of("n", Quantity::ShaftLength, rounded_in, 0.02, 1.0 / 16.0));
    }
    all
}

fn all_out(model: &JobModel, readings: &[Observation]) -> f64 {
    let belief = model.solve(readings).expect("the job is sound");
    let mut sum = 0.0;
    for i in 0..CLUBS {
        for on in [&DRY[..], &WEIGHTED, &GLUED, &FINISHED] {
            for scale in [None, Some("bench")] {
                let forecast = belief.forecast(&key(i), &Quantity::SwingWeight, OnClub::of(on), scale);
                sum += forecast.expect("the club is there").sd;
            }
        }
    }
    let innovations = belief.innovations().expect("the readings are sound");
    sum + innovations.iter().map(|i| i.z).sum::<f64>()
}

fn belief(c: &mut Criterion) {
    let model = job(CLUBS);
    let readings = readings();
    let solved = model.solve(&readings).expect("the job is sound");
    println!("{} unknowns, {} readings", solved.unknowns(), readings.len());
    c.bench_function("solve, 112 forecasts, all innovations", |b| {
        b.iter(|| all_out(black_box(&model), black_box(&readings)));
    });
    c.bench_function("solve alone", |b| b.iter(|| black_box(&model).solve(black_box(&readings))));
    c.bench_function("budget of one club", |b| b.iter(|| solved.budget(&key(3), OnClub::of(&FINISHED))));
    let mut blundered = readings.clone();
    blundered[10].value += 3.25;
    c.bench_function("solve with one blunder to find", |b| {
        b.iter(|| black_box(&model).solve_with_doubt(black_box(&blundered), DOUBT_LIMIT));
    });
}

criterion_group!(benches, belief);
criterion_main!(benches);
