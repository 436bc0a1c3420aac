//! The gauge study: order, figures, words.

use super::{gram_scale, w};
use desk::scale_health::{Category, StudyPlan, evaluate, noise_from, shuffled_plan};
use words::check::InWords;

/// AIAG, Measurement Systems Analysis, 4th ed.: `[builder][trial][part]`.
const PUBLISHED: [[[f64; 10]; 3]; 3] = [
    [
        [0.29, -0.56, 1.34, 0.47, -0.80, 0.02, 0.59, -0.31, 2.26, -1.36],
        [0.41, -0.68, 1.17, 0.50, -0.92, -0.11, 0.75, -0.20, 1.99, -1.25],
        [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
    ],
    [
        [0.08, -0.47, 1.19, 0.01, -0.56, -0.20, 0.47, -0.63, 1.80, -1.68],
        [0.25, -1.22, 0.94, 1.03, -1.20, 0.22, 0.55, 0.08, 2.12, -1.62],
        [0.07, -0.68, 1.34, 0.20, -1.28, 0.06, 0.83, -0.34, 2.19, -1.50],
    ],
    [
        [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
        [-0.11, -1.13, 1.09, 0.20, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
        [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
    ],
];

fn plan(seed: u64) -> StudyPlan {
    let names = |letter: char, n: usize| (1..=n).map(|i| format!("{letter}{i}")).collect();
    shuffled_plan("mass", names('P', 10), names('B', 3), 3, seed).expect("a sound study")
}

fn readings(plan: &StudyPlan, of: impl Fn(usize, usize, usize) -> f64) -> Vec<Option<f64>> {
    plan.order.iter().map(|s| Some(of(s.builder, s.trial, s.part))).collect()
}

#[test]
fn val_the_published_study_comes_out_whatever_the_order() {
    for seed in [1, 99] {
        let plan = plan(seed);
        let found =
            evaluate(&plan, &gram_scale(), &readings(&plan, |b, t, p| PUBLISHED[b][t][p] + 250.0)).expect("sound");
        let ranges = found.average_range;
        // The book rounds its constants to four digits and carries rounded intermediate values.
        for (got, wanted, within) in [
            (ranges.equipment, 0.2019, 1e-4),
            (ranges.appraiser, 0.2297, 1e-4),
            (ranges.gauge, 0.3058, 1e-4),
            (ranges.part, 1.1046, 3e-4),
            (ranges.gauge_percent, 26.7, 0.05),
        ] {
            assert!((got - wanted).abs() <= within, "{got} instead of {wanted}");
        }
        assert_eq!(ranges.categories, 5);
        // Computed with general-purpose libraries, interaction pooled.
        let variance = found.variance_analysis.expect("there is scatter");
        assert!((variance.equipment - 0.199_933).abs() < 1e-6 && (variance.gauge - 0.302_372).abs() < 1e-6);
        // 0.302372 / 1.085300 of the published figures.
        assert!((found.share_percent - 27.86).abs() < 0.01);
        assert_eq!((found.category, found.classes), (Category::Usable, 4));
        let words = w().tell(&found.found);
        assert!(words.starts_with("Of the spread you see, 28 % is the scale and the hands"), "{words}");
        let next = w().tell(&found.next.expect("said"));
        assert!(next.contains("in 4 classes only") && next.contains("hands differ more"), "{next}");
    }
}

#[test]
fn every_reading_is_asked_once_in_an_order_nobody_foresees() {
    let plan = plan(7);
    assert_eq!(plan.order.len(), 90);
    let mut all: Vec<_> = plan.order.iter().map(|s| (s.builder, s.trial, s.part)).collect();
    all.sort_unstable();
    all.dedup();
    assert_eq!(all.len(), 90, "each once");
    assert_eq!(plan, self::plan(7), "the same seed gives the same order");
    assert_ne!(plan.order, self::plan(8).order);
    // Trial by trial, one builder at a time, and the parts of no round in the order of their names.
    for (i, round) in plan.order.chunks(10).enumerate() {
        assert!(round.iter().all(|s| s.trial == i / 3 && s.builder == round[0].builder));
        assert!(!round.iter().map(|s| s.part).eq(0..10), "round {i}");
    }
}

#[test]
fn a_study_that_could_tell_nothing_is_refused() {
    let names = |n: usize| (1..=n).map(|i| format!("n{i}")).collect::<Vec<_>>();
    for (parts, builders, trials) in [(4, 2, 2), (5, 1, 2), (5, 2, 1), (21, 2, 2), (5, 6, 2), (5, 2, 6), (0, 0, 0)] {
        let refused = shuffled_plan("mass", names(parts), names(builders), trials, 1);
        assert!(refused.is_err(), "{parts} x {builders} x {trials}");
    }
    assert!(shuffled_plan("mass", vec!["a".into(); 5], names(2), 2, 1).is_err(), "one name five times");
    assert!(shuffled_plan("mass", names(5), vec!["Ada".into(), " ".into()], 2, 1).is_err(), "no name");
    let plan = plan(1);
    let mut some = readings(&plan, |_, _, p| p as f64);
    some[17] = None;
    let refused = evaluate(&plan, &gram_scale(), &some).expect_err("one is missing").in_words();
    assert!(refused.contains("1 of 90 readings"), "{refused}");
    some[17] = Some(f64::NAN);
    assert!(evaluate(&plan, &gram_scale(), &some).is_err());
}

#[test]
fn a_fine_scale_is_good_and_a_blind_one_says_what_to_do() {
    let plan = plan(3);
    let jitter = |b: usize, t: usize, p: usize| ((b * 7 + t * 13 + p * 29) % 5) as f64 * 0.02;
    let fine = evaluate(&plan, &gram_scale(), &readings(&plan, |b, t, p| 250.0 + 2.0 * p as f64 + jitter(b, t, p)));
    let fine = fine.expect("sound");
    assert_eq!(fine.category, Category::Good);
    assert!(fine.next.is_none() && fine.classes > 5, "{fine:?}");
    let blind =
        evaluate(&plan, &gram_scale(), &readings(&plan, |b, t, p| 250.0 + 20.0 * jitter(b, t, p))).expect("sound");
    assert_eq!(blind.category, Category::Poor);
    let next = w().tell(&blind.next.expect("said"));
    assert!(next.contains("does not tell these parts apart") && next.contains("finer scale"), "{next}");
    // A scale that repeats itself to the digit: no F test, but an answer.
    let same = evaluate(&plan, &gram_scale(), &readings(&plan, |_, _, p| 250.0 + p as f64)).expect("sound");
    assert!(same.variance_analysis.is_none() && same.share_percent == 0.0);
}

#[test]
fn the_rounding_is_not_counted_twice_in_the_noise_taken_over() {
    // 0.08² − 0.1²/12 = 0.0055667, root 0.07461 (by hand).
    assert!((noise_from(0.08, 0.1) - 0.07461).abs() < 1e-5);
    assert!((noise_from(0.0, 0.1) - 0.01).abs() < 1e-12, "a tenth of a step at least");
    assert!((noise_from(0.0, 0.0) - 0.001).abs() < 1e-12);
}
