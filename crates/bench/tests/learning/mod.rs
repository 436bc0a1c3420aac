//! Goal: the shop learns from its jobs what is there to be learned, says truthfully how well it knows it, and is not led
//! astray. Method: simulated shops whose true values are drawn from the stated priors (see `shop`).

mod shop;

use self::shop::{DRY, FINISHED, Simulated, World};
use bench::belief::BAND_95;
use bench::learned::Learned;
use trade::reading::{Reading, What};
use words::check::InWords;

/// Distance of each learned value from the truth in its own standard deviations.
fn errors(sim: &Simulated<'_>, learned: &Learned) -> Vec<(String, f64)> {
    let z = |(at, v): (usize, &bench::learned::LearnedValue)| {
        (v.key.clone(), (sim.truth[&v.key] - v.mean_shift) / learned.covariance[at][at].sqrt())
    };
    learned.values.iter().enumerate().map(z).collect()
}

/// 95 % bands of the learned values hold the truth, after the first job as well as after many, and the values together
/// lie as far from the truth as their joint covariance says.
#[test]
fn bands_of_learned_values_hold_the_truth() {
    let world = World::new();
    let (mut inside, mut all) = (0.0, 0.0);
    let mut squares = Vec::new();
    for seed in 0..80 {
        let mut sim = Simulated::new(&world, seed);
        let mut learned = Learned::default();
        for job in 0..6 {
            learned = sim.learn(job % 2, &learned);
            if job == 0 || job == 2 || job == 5 {
                for (_, z) in errors(&sim, &learned) {
                    all += 1.0;
                    inside += f64::from(u8::from(z.abs() <= BAND_95));
                }
            }
        }
        squares.push(distance(&sim, &learned));
    }
    let share = inside / all;
    // 80 shops, values of one shop tied to each other: an effective number of some 800, sd 0.8 %.
    assert!((0.92..=0.98).contains(&share), "{share} of {all}");
    let mean = squares.iter().sum::<f64>() / squares.len() as f64;
    let spread = (2.0 / squares.len() as f64).sqrt();
    assert!((mean - 1.0).abs() < 4.0 * spread, "squared distance a value {mean}");
}

/// Squared distance from the truth by the joint covariance, a value.
fn distance(sim: &Simulated<'_>, learned: &Learned) -> f64 {
    let n = learned.values.len();
    // Solve P·y = e by elimination with the largest pivot.
    let e: Vec<f64> = learned.values.iter().map(|v| sim.truth[&v.key] - v.mean_shift).collect();
    let mut a: Vec<Vec<f64>> =
        learned.covariance.iter().zip(&e).map(|(row, e)| [row.as_slice(), &[*e]].concat()).collect();
    for i in 0..n {
        let pivot = (i..n).max_by(|x, y| a[*x][i].abs().total_cmp(&a[*y][i].abs())).unwrap();
        a.swap(i, pivot);
        for j in i + 1..n {
            let f = a[j][i] / a[i][i];
            let above = a[i].clone();
            a[j].iter_mut().zip(&above).for_each(|(x, y)| *x -= f * y);
        }
    }
    let mut y = vec![0.0; n];
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|j| a[i][j] * y[j]).sum();
        y[i] = (a[i][n] - known) / a[i][i];
    }
    e.iter().zip(&y).map(|(e, y)| e * y).sum::<f64>() / n as f64
}

/// A shop that is heavy-handed with its adhesive and whose tape is light is found out within a few jobs.
#[test]
fn a_shop_that_differs_is_found_out() {
    let world = World::new();
    let mut sim = Simulated::new(&world, 11);
    sim.truth.insert("adhesive:DOLERITE".into(), 0.9);
    sim.truth.insert("tape:TAPE-2S".into(), -0.35);
    let mut learned = Learned::default();
    for _ in 0..5 {
        let (job, readings) = sim.build(0);
        let believed = world.assembly(&job, &learned).believe(&readings).unwrap();
        learned = learned.after(&believed).unwrap();
    }
    let value = |key: &str| &learned.values[learned.position(key).unwrap()];
    // One job's mix scatters by 0.2 g and its tape by 3 %: five of them leave 0.09 g and 1.3 %.
    assert!((value("adhesive:DOLERITE").mean_shift - 0.9).abs() < 0.3, "{:?}", value("adhesive:DOLERITE"));
    assert!((value("tape:TAPE-2S").mean_shift + 0.35).abs() < 0.05, "{:?}", value("tape:TAPE-2S"));
    assert!(learned.sd("adhesive:DOLERITE").unwrap() < 0.2);
    assert_eq!((value("tape:TAPE-2S").jobs, value("tape:TAPE-2S").clubs), (5, 40));
    assert_eq!(value("tape:TAPE-2S").from.last().unwrap().clubs[0], world.jobs[0].clubs[0].target.number);
}

/// What a job with other heads and grips says of the shaft that they share moves what is thought of the first heads.
#[test]
fn the_joint_covariance_is_carried() {
    let world = World::new();
    let (mut narrower, mut z2, mut count) = (0.0, 0.0, 0.0);
    for seed in 0..40 {
        let mut sim = Simulated::new(&world, 1000 + seed);
        let learned = sim.learn(0, &Learned::default());
        let mut alone = learned.clone();
        for (i, row) in alone.covariance.iter_mut().enumerate() {
            row.iter_mut().enumerate().filter(|(j, _)| *j != i).for_each(|(_, x)| *x = 0.0);
        }
        // The next set of the same kind: how well is its first dry reading forecast?
        let (job, readings) = sim.build(0);
        let first = readings.iter().find(|r| r.what == What::SwingWeight && r.on == DRY).unwrap();
        let expect = |learned| {
            world
                .assembly(&job, learned)
                .believe(&[])
                .unwrap()
                .expected(&first.club, What::SwingWeight, DRY)
                .unwrap()
                .unwrap()
        };
        let (joint, marginals) = (expect(&learned), expect(&alone));
        narrower += joint.band / marginals.band / 40.0;
        z2 += ((first.value - joint.value) / joint.band * BAND_95).powi(2);
        count += 1.0;
        // A job with other heads: what it says moves these heads too, though it has none of them.
        let head = learned.position("delta:SISKIN").unwrap();
        let other = sim.learn(1, &learned);
        let moved = other.position("delta:SISKIN").unwrap();
        assert!(other.covariance[moved][moved] < 0.999 * learned.covariance[head][head]);
        assert!(other.values[moved].mean_shift != learned.values[head].mean_shift);
    }
    // The band of a reading has the scale of that day and the club's own pieces in it as well.
    assert!(narrower < 0.85, "{narrower}");
    // Mean square of 40 standard normal numbers: 1 with a standard deviation of 0.22.
    assert!((z2 / count - 1.0).abs() < 0.75, "{}", z2 / count);
}

/// Jobs that say next to nothing of the adhesive let it slide back to what a new shop knows, and never beyond.
#[test]
fn what_is_not_seen_again_slides_back_to_a_new_shop() {
    let world = World::new();
    let mut sim = Simulated::new(&world, 5);
    let mut learned = sim.learn(0, &Learned::default());
    let key = "adhesive:DOLERITE";
    let prior_sd = learned.values[learned.position(key).unwrap()].prior_sd;
    let first = (learned.values[learned.position(key).unwrap()].mean_shift, learned.sd(key).unwrap());
    assert!(first.1 < 0.7 * prior_sd);
    let (mut job, readings) = sim.build(0);
    let dry: Vec<Reading> = readings.into_iter().filter(|r| r.what == What::TotalMass && r.on == DRY).collect();
    let mut before = first.1;
    for number in 0..250 {
        job.number = 100 + number;
        let believed = world.assembly(&job, &learned).believe(&dry).unwrap();
        learned = learned.after(&believed).unwrap();
        let now = learned.sd(key).unwrap();
        assert!(now >= before * 0.999_999 && now <= prior_sd * 1.000_001, "{before} {now} {prior_sd}");
        before = now;
    }
    assert!(before > 0.99 * prior_sd, "{before}");
    let mean = learned.values[learned.position(key).unwrap()].mean_shift;
    assert!(mean.abs() < 0.05 * first.0.abs() + 1e-6, "{mean} from {}", first.0);
    assert_eq!(learned.values[0].from.len(), 12, "no more jobs are named than can be looked at");
}

/// A value that the owner has fixed is used as it stands and stays, to the last bit; the others go on learning.
#[test]
fn a_pinned_value_stays() {
    let world = World::new();
    let mut sim = Simulated::new(&world, 21);
    let mut learned = sim.learn(0, &Learned::default());
    learned.pin("tape:TAPE-2S", true).unwrap();
    learned.pin("adhesive.piece", true).unwrap();
    let at = learned.position("tape:TAPE-2S").unwrap();
    let (before, variance) = (learned.values[at].clone(), learned.covariance[at][at]);
    let scatter = learned.scatter_sd("adhesive.piece", 0.25);
    let other = learned.values[learned.position("adhesive:DOLERITE").unwrap()].mean_shift;
    let mut after = sim.learn(0, &learned);
    assert_eq!(after.values[at], before);
    assert_eq!(after.covariance[at][at], variance);
    assert_eq!(after.scatter_sd("adhesive.piece", 0.25), scatter);
    assert_ne!(after.values[after.position("adhesive:DOLERITE").unwrap()].mean_shift, other);
    after.pin("tape:TAPE-2S", false).unwrap();
    let free = sim.learn(0, &after);
    assert_ne!(free.values[at].mean_shift, before.mean_shift);
    // A value set back is as if it had never been learned; the others keep what they know.
    let mut reset = free.clone();
    reset.reset("tape:TAPE-2S").unwrap();
    assert_eq!(reset.position("tape:TAPE-2S"), None);
    assert_eq!((reset.covariance.len(), reset.covariance[0].len()), (free.values.len() - 1, free.values.len() - 1));
    assert_eq!(reset.sd("adhesive:DOLERITE"), free.sd("adhesive:DOLERITE"));
    let refused = reset.reset("tape:NONE").unwrap_err().in_words();
    assert!(refused.contains("tape:NONE") && refused.contains("adhesive:DOLERITE"), "{refused}");
}

/// A grossly wrong reading is set aside and hardly moves what the shop learns.
#[test]
fn a_blunder_barely_moves_it() {
    let world = World::new();
    let mut moved = Vec::new();
    for seed in 0..10 {
        let mut sim = Simulated::new(&world, 300 + seed);
        let learned = sim.learn(0, &Learned::default());
        let (job, readings) = sim.build(0);
        let believe =
            |readings: &[Reading]| learned.after(&world.assembly(&job, &learned).believe(readings).unwrap()).unwrap();
        let good = believe(&readings);
        let mut wrong = readings.clone();
        // A neighbour's head on the third club when its finished swing weight is read: 7 g.
        let third = &job.clubs[2].id;
        wrong
            .iter_mut()
            .filter(|r| r.club == *third && r.what == What::SwingWeight && r.on == FINISHED)
            .for_each(|r| r.value += 3.2);
        let misled = believe(&wrong);
        let mut worst: f64 = 0.0;
        for (i, (a, b)) in good.values.iter().zip(&misled.values).enumerate() {
            worst = worst.max((a.mean_shift - b.mean_shift).abs() / good.covariance[i][i].sqrt());
        }
        for (a, b) in good.scatter.iter().zip(&misled.scatter) {
            // One reading less is one reading less: its own part in the figure goes with it.
            assert!((a.sd / b.sd - 1.0).abs() < 0.2, "{a:?} {b:?}");
        }
        moved.push(worst);
    }
    // Where a good reading was doubted as well, another may be in its place beside the blunder: that moves a little more.
    moved.sort_by(f64::total_cmp);
    assert!(moved[8] < 0.3 && moved[9] < 1.0, "{moved:?} standard deviations");
}

/// Scatter is learned: of pieces, of jobs, of the scale; a shop as the priors have it keeps them.
#[test]
fn scatter_is_learned() {
    let world = World::new();
    let told = |times: &[(&'static str, f64)], seed: u64| {
        let mut sim = Simulated::new(&world, seed);
        sim.times.extend(times.iter().copied());
        let mut learned = Learned::default();
        for _ in 0..40 {
            learned = sim.learn(0, &learned);
        }
        move |key: &str, new_shop: f64| learned.scatter_sd(key, new_shop) / new_shop
    };
    let usual = told(&[], 41);
    let other = told(&[("adhesive.piece", 2.0), ("tape.piece", 2.0), ("adhesive.job", 2.0), ("noise", 1.6)], 42);
    let keys = [("adhesive.piece", 0.25, 2.0), ("tape.piece", 0.08, 2.0), ("noise:balance", 0.1, 1.6)];
    for (key, new_shop, truth) in keys {
        assert!((usual(key, new_shop) - 1.0).abs() < 0.2, "{key}: {}", usual(key, new_shop));
        assert!((other(key, new_shop) / truth - 1.0).abs() < 0.2, "{key}: {} for {truth}", other(key, new_shop));
    }
    // One number a job: slower.
    assert!((usual("adhesive.job", 0.2) - 1.0).abs() < 0.35, "{}", usual("adhesive.job", 0.2));
    assert!(other("adhesive.job", 0.2) > 1.3, "{}", other("adhesive.job", 0.2));
}

/// A hand whose readings scatter more than the shop's counts for less, once enough of them were seen.
#[test]
fn a_restless_hand_counts_for_less() {
    let world = World::new();
    let mut sim = Simulated::new(&world, 77);
    let mut learned = Learned::default();
    for _ in 0..12 {
        let (job, mut readings) = sim.build(0);
        for (i, r) in readings.iter_mut().enumerate().filter(|(_, r)| r.what == What::SwingWeight) {
            if i % 2 == 0 {
                r.by = "Jay".into();
                r.value += 0.2 * sim.normal();
            }
        }
        let believed = world.assembly(&job, &learned).believe(&readings).unwrap();
        learned = learned.after(&believed).unwrap();
    }
    let (jay, wren) = (learned.hand("Jay"), learned.hand("Wren"));
    // Hands are held against what all have in common: 1.29 and 0.58 times in truth.
    assert!(jay > 1.05 && wren < 0.95 && jay / wren > 1.4, "Jay {jay}, Wren {wren}");
    assert_eq!(learned.hand("Robin"), 1.0, "nobody is judged unseen");
}

/// A job without any reading teaches nothing, and a shop that learned something keeps it.
#[test]
fn no_reading_no_lesson() {
    let world = World::new();
    let job = &world.jobs[0];
    let nothing = world.assembly(job, Learned::nothing()).believe(&[]).unwrap();
    assert_eq!(Learned::default().after(&nothing).unwrap(), Learned::default());
    let learned = Simulated::new(&world, 3).learn(0, &Learned::default());
    let believed = world.assembly(job, &learned).believe(&[]).unwrap();
    assert_eq!(learned.after(&believed).unwrap(), learned);
    let text = serde_json::to_string(&learned).unwrap();
    assert_eq!(serde_json::from_str::<Learned>(&text).unwrap(), learned);
    assert!(!learned.values.is_empty());
}
