//! Propagation of a table of 14 clubs: mass, moment and inertia of each from weighed parts, with what they share (scale,
//! stop, head's offset, grip's cap) as common inputs. Aim: below 1 ms for all 42 results and their covariance.

use std::hint::black_box;

use clubphysics::{
    real::Dual,
    uncertainty::{Inputs, Point, Var},
};
use criterion::{Criterion, criterion_group, criterion_main};

const CLUBS: usize = 14;
const PARTS: usize = 4;

struct Table {
    inputs: Inputs,
    clubs: Vec<[(Var, Var); PARTS]>,
    shared_mass: Var,
    shared_place: Var,
    head_offset: Var,
    cap: Var,
}

fn table() -> Table {
    let mut inputs = Inputs::default();
    let mut add = |name: String, value: f64, sd: f64| inputs.add(name, value, Some(sd)).expect("a good input");
    let clubs = (0..CLUBS)
        .map(|club| {
            let shorter = club as f64;
            let parts = [
                ("head", 240.0 + 7.0 * shorter, 0.06, 960.0 - 12.7 * shorter, 1.0),
                ("shaft", 118.0 - shorter, 0.06, 470.0 - 6.0 * shorter, 1.0),
                ("glue", 2.0, 0.4, 930.0 - 12.7 * shorter, 2.0),
                ("grip", 50.0, 0.06, 103.0, 2.0),
            ];
            parts.map(|(name, mass_g, mass_sd_g, place_mm, place_sd_mm)| {
                let mass = add(format!("clubs[{club}].{name}.mass_g"), mass_g, mass_sd_g);
                (mass, add(format!("clubs[{club}].{name}.position_mm"), place_mm, place_sd_mm))
            })
        })
        .collect();
    Table {
        clubs,
        shared_mass: add("scale_g".to_owned(), 0.0, 0.05),
        shared_place: add("stop_mm".to_owned(), 0.0, 0.2),
        head_offset: add("head_offset_mm".to_owned(), 2.0, 1.5),
        cap: add("cap_mm".to_owned(), 3.0, 0.3),
        inputs,
    }
}

/// Mass, moment about the fulcrum (g·mm) and inertia about the butt (g·mm²) of every club.
fn figures(table: &Table, x: &Point<'_, Dual>) -> Vec<Dual> {
    const FULCRUM_MM: f64 = 355.6;
    let zero = Dual::fixed(0.0);
    let mut results = Vec::with_capacity(3 * CLUBS);
    for club in &table.clubs {
        let [mut mass, mut moment, mut inertia] = [zero; 3];
        for (i, (part_mass, part_place)) in club.iter().enumerate() {
            let part_g = x[*part_mass] + x[table.shared_mass];
            let own_shift = if i == 0 { x[table.head_offset] } else { zero };
            let cap = if i == PARTS - 1 { zero } else { x[table.cap] };
            let place_mm = x[*part_place] + x[table.shared_place] + own_shift + cap;
            mass = mass + part_g;
            moment = moment + part_g * (place_mm - FULCRUM_MM);
            inertia = inertia + part_g * place_mm * place_mm;
        }
        results.extend([mass, moment, inertia]);
    }
    results
}

fn propagation(criterion: &mut Criterion) {
    let table = table();
    criterion.bench_function("propagation of a 14-club table", |bencher| {
        bencher.iter(|| black_box(&table).inputs.propagate(|x| Ok(figures(&table, x))));
    });
    let example = clubphysics::calc::topics()[0];
    criterion.bench_function("swing weight topic through JSON", |bencher| {
        bencher.iter(|| (example.run)(black_box((example.example)())));
    });
}

criterion_group!(benches, propagation);
criterion_main!(benches);
