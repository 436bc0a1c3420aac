//! Goal: good readings are hardly ever doubted, large shifts nearly always, and each cause is named first once the one
//! measurement that is asked for was taken.
//! Method: jobs of the invented shop whose truth is drawn from what the belief starts with, read by a bench that sums up
//! ounces and inches, with blunders put in; all draws seeded.

mod fault;
mod shop;
mod sweep;

use self::fault::{Fault, Lasts, Slip};
use self::shop::{Bench, Front, STEPS};
use bench::cause::inquire;
use bench::club_state::{Surroundings, club_state};
use bench::meaning::{Tone, meaning};
use bench::record::Beside;
use rand::RngExt;
use trade::kind::Role;
use trade::reading::What;

/// All readings of a job, step by step across the set.
fn read_all(bench: &mut Bench<'_>) {
    for (step, whats) in STEPS {
        for club in 0..bench.front.job.clubs.len() {
            for what in whats {
                bench.read(club, step, *what, None);
            }
        }
    }
}

/// Theory: 0.27 % of good readings lie beyond three standard deviations.
#[test]
fn good_readings_are_hardly_ever_doubted() {
    let front = Front::new(0, 7);
    let (mut good, mut doubted) = (0, 0);
    for seed in 0..130 {
        let mut bench = Bench::new(&front, 1000 + seed);
        read_all(&mut bench);
        let believed = front.assembly().believe(&bench.readings).unwrap();
        good += bench.readings.len();
        doubted += bench.readings.iter().filter(|r| believed.is_doubted(&r.id)).count();
    }
    println!("{doubted} of {good} good readings doubted: {:.2} %", 100.0 * doubted as f64 / good as f64);
    assert!(good >= 10_000);
    assert!((doubted as f64) < 0.005 * good as f64, "{doubted} of {good}");
}

/// A shift of a swing weight reading by more than 4.65 standard deviations of its forecast is doubted, at once or when later
/// readings have sharpened the belief. Theory: 95 % at 4.65, more beyond.
#[test]
fn large_shifts_are_doubted() {
    let front = Front::new(0, 7);
    let clubs = front.job.clubs.len();
    let (mut seeded, mut at_once, mut doubted) = (0, 0, 0);
    for seed in 0..160 {
        let mut bench = Bench::new(&front, 5000 + seed);
        let step = ["dry", "tip", "cured", "gripped", "finish"][seed as usize % 5];
        let club = (bench.rng.random::<f64>() * clubs as f64) as usize;
        let by = (4.65 + 2.0 * bench.rng.random::<f64>()) * if bench.rng.random::<bool>() { 1.0 } else { -1.0 };
        let mut shifted = None;
        for (key, whats) in STEPS {
            for other in 0..clubs {
                for what in whats {
                    if shifted.is_none() && key == step && other == club && *what == What::SwingWeight {
                        let id = &front.job.clubs[club].id;
                        let on = &front.job.step(step).unwrap().on;
                        let believed = front.assembly().believe(&bench.readings).unwrap();
                        let sd = believed.expected(id, What::SwingWeight, on).unwrap().unwrap().band / 1.959_964;
                        let place = bench.read(club, step, *what, None);
                        bench.readings[place].value += by * sd;
                        let believed = front.assembly().believe(&bench.readings).unwrap();
                        at_once += usize::from(believed.is_doubted(&bench.readings[place].id));
                        shifted = Some(place);
                    } else {
                        bench.read(other, key, *what, None);
                    }
                }
            }
        }
        let believed = front.assembly().believe(&bench.readings).unwrap();
        seeded += 1;
        doubted += usize::from(believed.is_doubted(&bench.readings[shifted.unwrap()].id));
    }
    println!("shifts of 4.65 to 6.65 S: {at_once} of {seeded} doubted at once, {doubted} at the end");
    assert!(doubted as f64 >= 0.95 * seeded as f64, "{doubted} of {seeded}");
}

/// The weight of the 8-iron left out, up to the reading that is doubted.
fn without_weight(front: &Front) -> (Bench<'_>, usize) {
    let club = (0..8).find(|i| front.planned_g(*i, Role::TipWeight) > 1.5).expect("a club with a weight");
    let mut bench = Bench::new(front, 77);
    bench.faults = vec![Fault { slip: Slip::TipOut, club, step: "tip", what: What::SwingWeight, lasts: Lasts::On }];
    for (step, whats) in STEPS.iter().take(4) {
        for other in 0..8 {
            for what in *whats {
                bench.read(other, step, *what, None);
            }
        }
    }
    let id = &front.job.clubs[club].id;
    let place = bench.readings.iter().rposition(|r| r.club == *id && r.step == "tip").unwrap();
    (bench, place)
}

#[test]
fn the_bench_says_what_is_likely_and_what_would_tell() {
    let front = Front::new(0, 7);
    let (bench, place) = without_weight(&front);
    let believed = front.assembly().believe(&bench.readings).unwrap();
    let reading = &bench.readings[place];
    assert!(believed.is_doubted(&reading.id));
    let club = front.job.club(&reading.club).unwrap();
    let around = Surroundings { batches: &[], overrides: &[], now: reading.at };
    let state = club_state(&believed, around, club).unwrap();
    let said = {
        let remedies = bench::remedy::remedies(&believed, &state, &front.spares()).unwrap();
        meaning(&believed, &state, reading, &front.spares(), &remedies).unwrap()
    };
    assert_eq!(said.tone, Tone::Doubt);
    let grams = quantity::decimal(front.planned_g(club.slot as usize - 1, Role::TipWeight), 1);
    let next = words::Words::english(quantity::Units::default()).tell(&said.next);
    assert!(next.contains(&format!("the {grams} g weight is not in the tip (")), "{next}");
    assert!(said.causes[0].shift_points < -0.5, "{:?}", said.causes[0]);
    assert!(said.causes.iter().any(|c| c.key == "something_else"));
    let total: f64 = said.causes.iter().map(|c| c.probability).sum();
    assert!((0.95..=1.0 + 1e-9).contains(&total), "{total}");
}

/// What the builder insists on is believed and stays so, and the record says that it was insisted on.
#[test]
fn the_builder_overrules_and_the_record_says_so() {
    let front = Front::new(0, 7);
    let (mut bench, place) = without_weight(&front);
    bench.readings[place].insisted = true;
    let id = bench.readings[place].id.clone();
    for (step, whats) in STEPS.iter().skip(4) {
        for other in 0..8 {
            for what in *whats {
                bench.read(other, step, *what, None);
            }
        }
    }
    let believed = front.assembly().believe(&bench.readings).unwrap();
    assert!(!believed.is_doubted(&id));
    let record =
        bench::record::record(&believed, &bench.readings, &Beside { batches: &[], let_pass: &[], passed: &[] })
            .unwrap();
    let kept = record.clubs.iter().flat_map(|c| &c.readings).find(|r| r.reading.id == id).unwrap();
    assert!(kept.reading.insisted && kept.stands && !kept.doubted);
}

/// Another screw in the driver's head: 4 g more at the head, told by weighing it or by the whole.
#[test]
fn another_screw_in_the_head_is_among_the_causes() {
    let front = Front::new(1, 7);
    let (mut doubted, mut named) = (0, 0);
    for seed in 0..20 {
        let mut bench = Bench::new(&front, 900 + seed);
        let slip = Slip::HeadGrams(if seed % 2 == 0 { 4.0 } else { -6.0 });
        bench.faults = vec![Fault { slip, club: 0, step: "cured", what: What::SwingWeight, lasts: Lasts::On }];
        for (step, whats) in STEPS.iter().take(5) {
            for what in *whats {
                bench.read(0, step, *what, None);
            }
        }
        let believed = front.assembly().believe(&bench.readings).unwrap();
        let far = bench.readings.iter().rev().find(|r| believed.is_doubted(&r.id)).cloned();
        let Some(reading) = far else { continue };
        doubted += 1;
        let inquest = inquire(&believed, &reading, &front.spares()).unwrap();
        let telling = inquest.telling.expect("something would tell");
        bench.read(0, &telling.step, telling.what, Some(&telling.on));
        let believed = front.assembly().believe(&bench.readings).unwrap();
        let after = inquire(&believed, &reading, &front.spares()).unwrap();
        named += usize::from(after.causes.iter().take(3).any(|c| c.key == "screw_swapped"));
    }
    println!("another screw: doubted {doubted} of 20, among the first three {named}");
    assert!(doubted >= 5 && named as f64 >= 0.8 * doubted as f64, "{named} of {doubted}");
}

/// Every sheet of the demonstration can be asked about: woods, wedges, putter, left-handed irons.
#[test]
fn every_sort_of_club_can_be_asked_about() {
    for sheet in 0..5 {
        let front = Front::new(sheet, 7);
        let mut bench = Bench::new(&front, 40 + sheet as u64);
        read_all(&mut bench);
        let believed = front.assembly().believe(&bench.readings).unwrap();
        for reading in &bench.readings {
            let inquest = inquire(&believed, reading, &front.spares()).unwrap();
            let total: f64 = inquest.causes.iter().map(|c| c.probability).sum();
            assert!(total > 0.9, "{sheet} {}: {total}", reading.what.key());
            assert_eq!(
                inquest.causes[0].key,
                if believed.is_doubted(&reading.id) { inquest.causes[0].key.as_str() } else { "nothing_wrong" }
            );
        }
    }
}
