//! Goal: what measurements and an order of work are worth is what an independent computation gives, and what happens when
//! clubs are built. Method: tables of the formula that were computed apart from this code (given to four decimals); a Monte
//! Carlo of the same choices written here without the formula; covariances against the belief's own conditioning.

use estimation::worth::{Batch, ClubAhead, Covariances, GripTurns, GripsAhead, bundle, chances};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;

/// Spread of 1.2 g of grips with their centre at 4 in: 0.20157 point a gram.
const SPREAD: f64 = 0.2419;
/// 2 g in the tip.
const STEP: f64 = 0.88;

/// The table of the formula: rows σ_r, columns σ_e. Computed apart from this code by quadrature; four decimals.
#[test]
fn val_tables_of_the_formula() {
    let told = [0.05, 0.10, 0.15, 0.20, 0.30, 0.45, 0.60, 0.90];
    let table: [(usize, f64, f64, [f64; 8]); 6] = [
        (60, STEP, 0.10, [0.9968, 0.9961, 0.9934, 0.9870, 0.9597, 0.8881, 0.7995, 0.6347]),
        (60, STEP, 0.13, [0.9778, 0.9767, 0.9735, 0.9666, 0.9395, 0.8700, 0.7842, 0.6239]),
        (60, STEP, 0.20, [0.8650, 0.8638, 0.8609, 0.8553, 0.8335, 0.7772, 0.7057, 0.5676]),
        (60, STEP, 0.35, [0.6081, 0.6076, 0.6064, 0.6041, 0.5943, 0.5659, 0.5256, 0.4376]),
        (12, STEP, 0.13, [0.9574, 0.9501, 0.9373, 0.9189, 0.8688, 0.7746, 0.6784, 0.5222]),
        (60, STEP / 2.0, 0.13, [0.9787, 0.9786, 0.9782, 0.9764, 0.9616, 0.8993, 0.8091, 0.6372]),
    ];
    for (count, step, rest, row) in table {
        let grips = GripsAhead::new(count, SPREAD, 0.3);
        for (told, expected) in told.into_iter().zip(row) {
            let found = grips.chance(told, rest, step);
            assert!(
                (found - expected).abs() < 6e-5,
                "K {count} h {step} σ_r {rest} σ_e {told}: {found} for {expected}"
            );
        }
    }
}

/// Without a tray and from where a club stands: the table of the planning formula, four decimals, and no end of grips.
#[test]
fn val_club_whose_weight_is_in() {
    let table: [(f64, usize, [f64; 4]); 5] = [
        (0.10, 3, [0.9233, 0.8552, 0.6000, 0.1292]),
        (0.10, 20, [0.9957, 0.9893, 0.9192, 0.4094]),
        (0.13, 3, [0.8916, 0.8272, 0.5896, 0.1402]),
        (0.13, 8, [0.9613, 0.9351, 0.7846, 0.2652]),
        (0.13, 60, [0.9786, 0.9769, 0.9507, 0.5953]),
    ];
    for (rest, count, row) in table {
        let grips = GripsAhead::new(count, 0.241_879, 0.3);
        for (off, expected) in [0.0, 0.2, 0.43, 0.8].into_iter().zip(row) {
            let found = grips.chance_from(off, 0.16, rest);
            assert!((found - expected).abs() < 6e-5, "K {count} σ_r {rest} at {off}: {found} for {expected}");
        }
    }
    // As many grips as one likes: 2Φ(0.3/0.13) − 1 = 0.97898 (tables of the normal distribution).
    assert!((GripsAhead::new(100_000, 0.241_879, 0.3).chance_from(0.0, 0.16, 0.13) - 0.978_98).abs() < 2e-4);
}

/// What a reference club's reading leaves open, u, adds to σ_r: clubs of 8 at σ_e 0.31, σ_r 0.134 without it. Computed apart
/// from this code; two decimals.
#[test]
fn val_what_the_reference_leaves_open() {
    let grips = GripsAhead::new(60, SPREAD, 0.3);
    for (u, expected) in [(0.19, 6.19), (0.17, 6.42), (0.12, 6.92), (0.085, 7.19), (0.06, 7.33), (0.0, 7.45)] {
        let found = 8.0 * grips.chance(0.31, 0.134_f64.hypot(u), STEP);
        assert!((found - expected).abs() < 0.012, "u {u}: {found} for {expected}");
    }
}

fn normal(draw: &mut Pcg64Mcg, sd: f64) -> f64 {
    // Box and Muller (1958).
    let (u, v): (f64, f64) = (draw.random::<f64>().max(1e-300), draw.random());
    sd * (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

/// Built 60,000 times: a weight that leaves a rest within half a step, what is told, the nearest of the grips, what stays
/// unknown. Four standard deviations of a share of 0.9 in so many are 0.005.
#[test]
fn a_club_that_is_built_comes_in_as_often() {
    let mut draw = Pcg64Mcg::seed_from_u64(11);
    for (told, rest, count, tau) in
        [(0.30, 0.13, 20, 0.3), (0.05, 0.35, 60, 0.3), (0.90, 0.20, 60, 0.5), (0.45, 0.10, 1, 0.3)]
    {
        let runs = 60_000;
        let mut inside = 0;
        for _ in 0..runs {
            let off = (draw.random::<f64>() - 0.5) * STEP + normal(&mut draw, told);
            let nearest = (0..count).map(|_| (off - normal(&mut draw, SPREAD)).abs()).fold(f64::INFINITY, f64::min);
            inside += u32::from((nearest + normal(&mut draw, rest)).abs() <= tau);
        }
        let share = f64::from(inside) / f64::from(runs);
        let found = GripsAhead::new(count, SPREAD, tau).chance(told, rest, STEP);
        assert!((share - found).abs() < 0.008, "{told} {rest} {count} {tau}: {share} built, {found} by the formula");
    }
}

/// Clubs that share `shared` and have `own` by themselves: question 2i is the finish, 2i + 1 what is read.
fn set(clubs: usize, shared: f64, own: f64, noise: f64) -> (Covariances, Vec<ClubAhead>) {
    let n = 2 * clubs;
    let of = |i: usize, j: usize| shared * shared + if i / 2 == j / 2 { own * own } else { 0.0 };
    let rows: Vec<Vec<f64>> = (0..n).map(|i| (0..n).map(|j| of(i, j)).collect()).collect();
    let club = |i: usize| ClubAhead {
        finish: 2 * i,
        before_tip: Vec::new(),
        before_grip: vec![(2 * i + 1, noise)],
        after_grip: Vec::new(),
        tray_step_points: STEP,
        glued_off_points: None,
        grips: 0,
    };
    (Covariances::from_rows(&rows), (0..clubs).map(club).collect())
}

fn batch(clubs: std::ops::Range<usize>, finished: bool) -> Batch {
    Batch { clubs: clubs.collect(), finished }
}

/// By hand: sd shared 0.5, own 0.2, noise 0.1. One reading leaves of a club's own finish 1/(1/0.29 + 1/0.01); another's, after
/// it, 0.29 − 0.25²/0.30 of the 0.29 that it had.
#[test]
fn one_club_first_tells_of_the_others() {
    let (start, clubs) = set(2, 0.5, 0.2, 0.1);
    let mut after = start.clone();
    after.read(1, 0.1);
    assert!((after.variance(0) - 1.0 / (1.0 / 0.29 + 1.0 / 0.01)).abs() < 1e-12);
    assert!((after.variance(2) - (0.29 - 0.0625 / 0.30)).abs() < 1e-12);
    let tables = vec![vec![GripsAhead::new(60, SPREAD, 0.3)]];
    let together = chances(&start, &[], &clubs, &[batch(0..2, true)], GripTurns::AtOnce, &tables);
    let first = chances(&start, &[], &clubs, &[batch(0..1, false), batch(1..2, true)], GripTurns::AtOnce, &tables);
    // Together the two readings are both there when the grips are chosen; the second club's weight is what gains.
    let mut both = after.clone();
    both.read(3, 0.1);
    let told = (0.29 - both.variance(2)).sqrt();
    let expected = tables[0][0].chance(told, both.variance(2).sqrt(), STEP);
    assert!((together[1] - expected).abs() < 1e-12);
    let told = (after.variance(2) - both.variance(2)).sqrt();
    let expected = tables[0][0].chance(told, both.variance(2).sqrt(), STEP);
    assert!((first[1] - expected).abs() < 1e-12 && first[1] > together[1] + 0.1, "{first:?} {together:?}");
    assert!((first[0] - together[0]).abs() < 1e-12, "the first club gains nothing from being first");
}

/// The same by building: shared and own are drawn, each is read, the weight is chosen by what is believed then.
#[test]
fn an_order_of_work_that_is_built_comes_in_as_often() {
    let (shared, own, noise, clubs, spares) = (0.5, 0.12, 0.1, 4, 40);
    let (start, ahead) = set(clubs, shared, own, noise);
    // Every club has a box of its own: where clubs that are off the same way share one, they want the same few grips, and the
    // formula is too high by some hundredths.
    let tables = vec![vec![GripsAhead::new(spares, SPREAD, 0.3)]];
    let batches = [batch(0..clubs, true)];
    let first = [batch(0..1, true), batch(1..clubs, true)];
    let mut draw = Pcg64Mcg::seed_from_u64(5);
    for order in [&batches[..], &first[..]] {
        let told: f64 = chances(&start, &[], &ahead, order, GripTurns::AtOnce, &tables).iter().sum();
        let runs = 6_000;
        let mut inside = 0;
        for _ in 0..runs {
            let all = normal(&mut draw, shared);
            let finish: Vec<f64> = (0..clubs).map(|_| all + normal(&mut draw, own)).collect();
            let reads: Vec<f64> = finish.iter().map(|f| f + normal(&mut draw, noise)).collect();
            let mut read = 0;
            for batch in order {
                // What every club of the batch is believed to be before any of it has cured: the mean of those before.
                let prior = believed(&reads[..read], None, shared, own, noise);
                let weight: Vec<f64> =
                    batch.clubs.iter().map(|_| (draw.random::<f64>() - 0.5) * STEP - prior).collect();
                read += batch.clubs.len();
                for (at, weight) in batch.clubs.iter().zip(weight) {
                    let off = believed(&reads[..read], Some(*at), shared, own, noise) + weight;
                    let grips = (0..spares).map(|_| normal(&mut draw, SPREAD));
                    let grip = grips.min_by(|a, b| (off - a).abs().total_cmp(&(off - b).abs())).expect("grips");
                    inside += u32::from((finish[*at] + weight - grip).abs() <= 0.3);
                }
            }
        }
        let built = f64::from(inside) / f64::from(runs);
        // Four standard deviations, if the clubs of a set always went together: 4 · 4 · 0.4/√6000 = 0.08.
        assert!((built - told).abs() < 0.08, "{order:?}: {built} of {clubs} built, {told} by the formula");
    }
}

/// Mean of a club's finish after some clubs were read: the shared part by their mean, its own by its own reading (two normal
/// equations, solved by hand).
fn believed(reads: &[f64], club: Option<usize>, shared: f64, own: f64, noise: f64) -> f64 {
    let n = reads.len() as f64;
    let each = own * own + noise * noise;
    let all = shared * shared * reads.iter().sum::<f64>() / (n * shared * shared + each);
    all + club.map_or(0.0, |at| own * own / each * (reads[at] - all))
}

/// Three measurements of which the first two only help together, as a scale's offset and a joint's mass do.
#[test]
fn a_bundle_adds_up_and_stops() {
    let worth = |chosen: &[usize]| {
        let has = |m| chosen.contains(&m);
        3.0 + 0.2 * f64::from(u8::from(has(0)))
            + 0.6 * f64::from(u8::from(has(1)))
            + 1.5 * f64::from(u8::from(has(0) && has(1)))
            + 0.04 * f64::from(u8::from(has(2)))
    };
    let found = bundle(&[1.0, 1.0, 1.0], 0.05, worth);
    assert_eq!(found.iter().map(|(m, _)| *m).collect::<Vec<_>>(), [1, 0], "0.04 a minute is not worth it");
    let total: f64 = found.iter().map(|(_, gain)| gain).sum();
    assert!((total - 2.3).abs() < 1e-12 && (found[1].1 - 1.7).abs() < 1e-12);
    // What greed takes first is exchanged where another, as short, is better beside the rest.
    let exchanged = bundle(&[1.0, 1.0, 1.0], 0.5, |chosen: &[usize]| match chosen {
        [] => 0.0,
        [2] => 1.0,
        [0] | [1] => 0.9,
        [0, 1] | [1, 0] => 3.0,
        [_, _] => 1.6,
        _ => 1.7,
    });
    let mut set: Vec<usize> = exchanged.iter().map(|(m, _)| *m).collect();
    set.sort_unstable();
    assert_eq!(set, [0, 1]);
}
