//! One blunder after the other, many times.

use super::fault::{Fault, Lasts, Slip};
use super::shop::{Bench, Front, STEPS, normal};
use bench::cause::inquire;
use quantity::INCH_MM;
use rand::RngExt;
use rand::SeedableRng;
use rand_pcg::Pcg64;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::What;

/// Looks before a measurement at most: the empty scale, the ferrule, the number on the sole.
const LOOKS: usize = 3;

/// A shift this many standard deviations of the forecast large is doubted 95 times in 100.
const LARGE: f64 = 4.65;

/// What became of the blunders of a kind.
#[derive(Debug, Default, Clone)]
pub struct Tally {
    pub seeded: usize,
    pub doubted: usize,
    pub first_at_once: usize,
    pub first_after: usize,
    /// After a second measurement, where one was asked for.
    pub first_after_two: usize,
    /// Of those that shift the doubted reading by more than [`LARGE`].
    pub large: usize,
    pub large_first_after: usize,
    pub wrong: Vec<String>,
}

/// Reads the job on until the blundered club is doubted; then asks for the causes, takes the one measurement, and asks
/// again.
pub fn run(front: &Front, seed: u64, key: &str, faults: Vec<Fault>, tally: &mut Tally) {
    let mut bench = Bench::new(front, seed);
    let club = faults[0].club;
    let id = front.job.clubs[club].id.clone();
    let began = STEPS.iter().position(|(s, _)| *s == faults[0].step).unwrap();
    bench.faults = faults;
    tally.seeded += 1;
    let spares = front.spares();
    for (at, (step, whats)) in STEPS.iter().enumerate() {
        for other in 0..front.job.clubs.len() {
            for what in *whats {
                bench.read(other, step, *what, None);
            }
            if at < began || other != club {
                continue;
            }
            let believed = front.assembly().believe(&bench.readings).unwrap();
            // A good reading of before that is doubted by chance is not what is looked for.
            let touched = |i: &usize| bench.readings[*i].club == id && bench.shifts[*i].abs() > 1e-9;
            let doubted =
                (0..bench.readings.len()).rev().filter(touched).find(|i| believed.is_doubted(&bench.readings[*i].id));
            let Some(place) = doubted else { continue };
            let doubted = bench.readings[place].clone();
            tally.doubted += 1;
            let expected = believed.expected(&id, doubted.what, &doubted.on).unwrap().unwrap();
            let size = bench.shifts[place].abs() / (expected.band / 1.96);
            let inquest = inquire(&believed, &doubted, &spares).unwrap();
            tally.first_at_once += usize::from(same(&inquest.causes[0].key, key));
            let mut after = inquest.clone();
            // Looks, which take three seconds each, and then the one measurement.
            for _ in 0..=LOOKS {
                let Some(telling) = after.telling.clone() else { break };
                bench.read(club, &telling.step, telling.what, Some(&telling.on));
                let believed = front.assembly().believe(&bench.readings).unwrap();
                after = inquire(&believed, &doubted, &spares).unwrap();
                if !telling.what.is_look() {
                    break;
                }
            }
            let named = same(&after.causes[0].key, key);
            tally.first_after += usize::from(named);
            let mut second = after.clone();
            if let Some(telling) = after.telling.as_ref().filter(|_| !named) {
                bench.read(club, &telling.step, telling.what, Some(&telling.on));
                let believed = front.assembly().believe(&bench.readings).unwrap();
                second = inquire(&believed, &doubted, &spares).unwrap();
            }
            tally.first_after_two += usize::from(same(&second.causes[0].key, key));
            if size > LARGE {
                tally.large += 1;
                tally.large_first_after += usize::from(named);
            }
            if !named {
                let told = inquest.telling.as_ref().map_or("nothing", |t| t.what.key());
                let list = |of: &bench::cause::Inquest| {
                    of.causes
                        .iter()
                        .take(4)
                        .map(|c| format!("{} {:.2}", c.key, c.probability))
                        .collect::<Vec<_>>()
                        .join(", ")
                };
                tally.wrong.push(format!(
                    "{size:4.1} S, {} {}: {} | by {told}: {}",
                    doubted.step,
                    doubted.what.key(),
                    list(&inquest),
                    list(&after)
                ));
            }
            return;
        }
    }
}

/// Two at once are named in either order.
fn same(named: &str, key: &str) -> bool {
    let sorted = |key: &str| {
        let mut both: Vec<String> = key.split('+').map(str::to_owned).collect();
        both.sort();
        both
    };
    sorted(named) == sorted(key)
}

fn pick<T: Copy>(rng: &mut Pcg64, of: &[T]) -> T {
    of[(rng.random::<f64>() * of.len() as f64) as usize % of.len()]
}

/// A blunder of a kind, its amount and place drawn.
fn draw(front: &Front, kind: &str, club: usize, rng: &mut Pcg64) -> Fault {
    let clubs = front.job.clubs.len();
    let on = |slip, steps: &[&'static str], rng: &mut Pcg64| Fault {
        slip,
        club,
        step: pick(rng, steps),
        what: What::SwingWeight,
        lasts: Lasts::On,
    };
    let once = |slip, rng: &mut Pcg64| Fault {
        lasts: Lasts::Reading,
        ..on(slip, &["dry", "tip", "cured", "gripped", "finish"], rng)
    };
    let inch = |mean: f64, sd: f64, rng: &mut Pcg64| (mean + sd * normal(rng)).abs() / INCH_MM;
    let sign = |rng: &mut Pcg64| if rng.random::<bool>() { 1.0 } else { -1.0 };
    let own_tip_g = front.planned_g(club, Role::TipWeight);
    let spare = |kind: PartKind, number: Option<&str>, rng: &mut Pcg64| {
        let target = &front.job.clubs[club].target;
        let model = if kind == PartKind::Head { &target.head_model } else { &target.grip_model };
        let of: Vec<f64> = front
            .parts
            .iter()
            .filter(|p| p.kind == kind && p.model == *model && (number.is_none() || p.number.as_deref() == number))
            .filter_map(|p| p.mass_g)
            .collect();
        pick(rng, &of)
    };
    match kind {
        "neighbour_head" => {
            let other = if club == 0 || (club + 1 < clubs && rng.random::<bool>()) { club + 1 } else { club - 1 };
            on(Slip::OtherNumber(front.planned_g(other, Role::Head)), &["dry", "tip", "cured"], rng)
        }
        "wrong_part" => {
            let number = front.job.clubs[club].target.number.clone();
            on(Slip::Head(spare(PartKind::Head, Some(&number), rng)), &["dry", "cured"], rng)
        }
        "grip_or_tape" if rng.random::<bool>() => on(Slip::GripIs(spare(PartKind::Grip, None, rng)), &["gripped"], rng),
        "tip_left_out" => on(Slip::TipOut, &["tip", "cured"], rng),
        "tip_swapped" => {
            let others: Vec<f64> = (2..=9).map(f64::from).filter(|g| (g - own_tip_g).abs() > 0.5).collect();
            on(Slip::TipIs(pick(rng, &others)), &["tip", "cured"], rng)
        }
        "tip_not_seated" => on(Slip::HeadOut(inch(5.0, 2.5, rng)), &["tip"], rng),
        "head_not_seated" => on(Slip::HeadOut(inch(5.0, 2.5, rng)), &["dry", "cured"], rng),
        "ferrule_missing" => on(Slip::FerruleOff, &["dry", "cured"], rng),
        "film_on" => on(Slip::HeadGrams((1.2 + 0.6 * normal(rng)).abs()), &["dry"], rng),
        "solvent_in" => Fault { lasts: Lasts::Step, ..on(Slip::SolventIn, &["finish"], rng) },
        "butt_off_stop" => once(Slip::Gap(inch(4.0, 2.5, rng)), rng),
        "grip_on" => Fault { lasts: Lasts::Step, ..on(Slip::GripOn, &["dry", "cured"], rng) },
        "grip_off" => Fault { lasts: Lasts::Step, ..on(Slip::GripOff, &["gripped"], rng) },
        "cap_missing" => on(Slip::CapOff, &["gripped"], rng),
        "grip_not_home" => on(Slip::GripOut(inch(5.0, 2.5, rng)), &["gripped"], rng),
        "grip_or_tape" => on(Slip::Tape(1.4 * sign(rng)), &["gripped"], rng),
        "cut_off" => on(Slip::Longer(pick(rng, &[0.5, -0.5, 1.0, -1.0])), &["cut"], rng),
        "scale_not_zeroed" => Fault { lasts: Lasts::Scale, ..once(Slip::ScaleOff(normal(rng)), rng) },
        "digits_swapped" => once(Slip::SwapDigits, rng),
        "misread" => match pick(rng, &[0, 1, 2]) {
            0 => once(Slip::Off(10.0 * sign(rng)), rng),
            1 => Fault { what: What::ShaftLength, ..Fault { step: "cut", ..once(Slip::Off(12.7 * sign(rng)), rng) } },
            _ => Fault { what: What::HeadMass, ..Fault { step: "weighed", ..once(Slip::Off(10.0 * sign(rng)), rng) } },
        },
        other => panic!("no blunder {other}"),
    }
}

/// Two clubs with each other's piece; none where the kind is another.
fn exchange(front: &Front, kind: &str, club: usize) -> Option<Vec<Fault>> {
    let (role, step) = match kind {
        "heads_exchanged" => (Role::Head, "dry"),
        "tips_exchanged" => (Role::TipWeight, "tip"),
        "grips_exchanged" => (Role::Grip, "gripped"),
        _ => return None,
    };
    let clubs = front.job.clubs.len();
    let of = |club: usize| front.planned_g(club, role);
    let unlike = |pair: &(usize, usize)| of(pair.0) > 0.0 && of(pair.1) > 0.0 && (of(pair.0) - of(pair.1)).abs() > 0.4;
    let near = |i: usize| (0..clubs).filter(move |j| *j != i).map(move |j| (i, j));
    let pair = (club..clubs).chain(0..club).flat_map(near).filter(unlike).min_by_key(|(i, j)| i.abs_diff(*j));
    let (one, other) = pair.expect("two clubs with unlike pieces");
    let slip = |club: usize, mass_g: f64| Fault {
        slip: match role {
            Role::Head => Slip::OtherNumber(mass_g),
            Role::Grip => Slip::GripIs(mass_g),
            _ => Slip::TipIs(mass_g),
        },
        club,
        step,
        what: What::SwingWeight,
        lasts: Lasts::On,
    };
    // The one that is read later is asked about.
    let (first, second) = (one.min(other), one.max(other));
    Some(vec![slip(second, of(first)), slip(first, of(second))])
}

#[test]
fn each_cause_is_named_first_after_the_one_measurement() {
    const DRAWS: u64 = 24;
    const SHOWN: usize = 0;
    let kinds = [
        "neighbour_head",
        "wrong_part",
        "tip_left_out",
        "tip_swapped",
        "tip_not_seated",
        "head_not_seated",
        "ferrule_missing",
        "film_on",
        "solvent_in",
        "butt_off_stop",
        "grip_on",
        "grip_off",
        "cap_missing",
        "grip_not_home",
        "grip_or_tape",
        "cut_off",
        "scale_not_zeroed",
        "digits_swapped",
        "misread",
        "tip_left_out+ferrule_missing",
        "butt_off_stop+ferrule_missing",
        "heads_exchanged",
        "tips_exchanged",
        "grips_exchanged",
    ];
    let front = Front::new(0, 7);
    let mut all = Tally::default();
    for (number, kind) in kinds.iter().enumerate() {
        let mut tally = Tally::default();
        for draw_number in 0..DRAWS {
            let seed = 10_000 * (number as u64 + 1) + draw_number;
            let mut rng = Pcg64::seed_from_u64(seed ^ 0x5eed);
            let club = (rng.random::<f64>() * front.job.clubs.len() as f64) as usize;
            if let Some(faults) = exchange(&front, kind, club) {
                run(&front, seed, kind, faults, &mut tally);
                continue;
            }
            let mut faults: Vec<Fault> = kind.split('+').map(|one| draw(&front, one, club, &mut rng)).collect();
            let (step, others) = (faults[0].step, 1..);
            others.take(faults.len() - 1).for_each(|i| faults[i].step = step);
            run(&front, seed, kind, faults, &mut tally);
        }
        println!(
            "{kind:30} doubted {:2}/{:2}, first at once {:2}, after one {:2}, after two {:2}; large {:2}/{:2}",
            tally.doubted,
            tally.seeded,
            tally.first_at_once,
            tally.first_after,
            tally.first_after_two,
            tally.large_first_after,
            tally.large
        );
        tally.wrong.iter().take(SHOWN).for_each(|w| println!("      {w}"));
        all.doubted += tally.doubted;
        all.first_after += tally.first_after;
        all.first_after_two += tally.first_after_two;
        all.large += tally.large;
        all.large_first_after += tally.large_first_after;
    }
    println!(
        "after two: {}; named first: {} of {} doubted, {} of {} large",
        all.first_after_two, all.first_after, all.doubted, all.large_first_after, all.large
    );
    assert!(all.large_first_after as f64 >= 0.8 * all.large as f64, "{all:?}");
}
