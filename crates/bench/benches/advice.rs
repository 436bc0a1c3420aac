//! What can be done and what is worth measuring, in a job of 14 clubs with a hundred grips to choose from: before the
//! joints are glued, and when all have been read after the cure.

#![allow(dead_code, reason = "a part of what the tests use")]

#[path = "../tests/causes/fault.rs"]
mod fault;
#[path = "../tests/causes/shop.rs"]
mod shop;

use bench::club_state::{Surroundings, club_state};
use bench::offer::offers;
use bench::remedy::{Spare, assign_grips, remedies};
use criterion::{Criterion, criterion_group, criterion_main};
use jiff::Timestamp;
use shop::{Bench, Front, STEPS};
use std::hint::black_box;
use trade::model::PartKind;
use trade::reading::Reading;

fn readings(front: &Front, last: &str) -> Vec<Reading> {
    let mut bench = Bench::new(front, 5);
    for (step, whats) in STEPS {
        for club in 0..front.job.clubs.len() {
            for what in whats {
                bench.read(club, step, *what, None);
            }
        }
        if step == last {
            break;
        }
    }
    bench.readings
}

fn advice(c: &mut Criterion) {
    let front = Front::of_fourteen(7);
    let club = &front.job.clubs[4];
    // A hundred free grips of the club's model, whatever the demonstration stock holds.
    let spares = front.spares();
    let is_mine = |s: &&Spare<'_>| s.part.kind == PartKind::Grip && s.part.model == club.target.grip_model;
    let own: Vec<_> = spares.iter().filter(is_mine).map(|s| s.part.clone()).collect();
    let more: Vec<_> = (0..100usize.saturating_sub(own.len()))
        .map(|i| {
            let mut part = own[i % own.len()].clone();
            part.code = format!("MORE-{i}");
            part.id = format!("more-{i}").as_str().into();
            part.mass_g = part.mass_g.map(|g| g + 0.01 * i as f64);
            part
        })
        .collect();
    let spares: Vec<Spare<'_>> = spares
        .iter()
        .copied()
        .chain(more.iter().map(|part| Spare { part, mass_g: part.mass_g.unwrap_or_default() }))
        .collect();
    // The tray is counted bulk: it weighs what its models say.
    let tray = front.parts.iter().filter(|p| p.kind == PartKind::TipWeight).filter_map(|part| {
        front.library.tip_weight(&part.model).ok().map(|model| Spare { part, mass_g: model.mass_g })
    });
    let spares: Vec<Spare<'_>> =
        spares.iter().copied().filter(|s| s.part.kind != PartKind::TipWeight).chain(tray).collect();
    let grips = spares.iter().filter(is_mine).count();
    println!("{grips} grips to choose from, {} spare parts in all", spares.len());
    for (last, name) in [("dry", "before the glue"), ("cured", "after the cure")] {
        let readings = readings(&front, last);
        let believed = front.assembly().believe(&readings).expect("the job is sound");
        let around = Surroundings { batches: &[], overrides: &[], now: Timestamp::UNIX_EPOCH };
        let state = club_state(&believed, around, club).expect("the club is sound");
        println!("{} readings", readings.len());
        c.bench_function(&format!("believe, {name}"), |b| b.iter(|| front.assembly().believe(black_box(&readings))));
        c.bench_function(&format!("remedies, {name}"), |b| {
            b.iter(|| remedies(black_box(&believed), &state, &spares).map(|r| r.len()));
        });
        c.bench_function(&format!("offers, {name}"), |b| {
            b.iter(|| offers(black_box(&believed), &club.id, &spares, &[]).map(|o| o.offers.len()));
        });
        if last == "cured" {
            c.bench_function("grips of the set", |b| b.iter(|| assign_grips(black_box(&believed), &spares)));
        }
    }
}

criterion_group!(benches, advice);
criterion_main!(benches);
