//! Goal: what a job teaches of the values that it has reaches those that it has not, exactly as if all had stood in one
//! belief; and what is forgotten slides to the prior and not beyond.
//! Method: the solver itself with all values in it, against the carried Gaussian that saw only some.

use estimation::{Gaussian, JobModel, JointPrior, Link, Observation, Quantity, ScalePrior, Share, SharedPrior};
use words::check::InWords;

const NAMES: [&str; 3] = ["a", "b", "c"];

fn prior() -> Gaussian {
    Gaussian {
        mean: vec![0.4, -1.0, 2.0],
        covariance: vec![vec![0.25, -0.12, 0.05], vec![-0.12, 0.16, 0.02], vec![0.05, 0.02, 0.09]],
    }
}

/// A job whose joint prior is over the first `n` values.
fn job(n: usize) -> JobModel {
    let prior = prior();
    let shared = (0..n).map(|i| SharedPrior {
        key: NAMES[i].into(),
        mean_shift: prior.mean[i],
        sd: prior.covariance[i][i].sqrt(),
    });
    JobModel {
        shared: shared.collect(),
        joint: vec![JointPrior {
            keys: NAMES[..n].iter().map(|k| (*k).into()).collect(),
            covariance: (0..n).map(|i| prior.covariance[i][..n].to_vec()).collect(),
        }],
        ..JobModel::default()
    }
}

fn close(a: &Gaussian, mean: &[f64], covariance: &[Vec<f64>]) {
    for (i, row) in a.covariance.iter().enumerate() {
        assert!((a.mean[i] - mean[i]).abs() < 1e-9, "mean {i}: {} and {}", a.mean[i], mean[i]);
        for (j, x) in row.iter().enumerate() {
            assert!((x - covariance[i][j]).abs() < 1e-9, "covariance {i} {j}: {x} and {}", covariance[i][j]);
        }
    }
}

#[test]
fn an_unseen_value_moves_as_if_it_had_been_there() {
    let sum = vec![Share { key: "a".into(), gain: 1.0 }, Share { key: "b".into(), gain: -2.0 }];
    let readings = [
        Observation::new("1", Quantity::Shared("a".into()), 1.1, 0.2),
        Observation::new("2", Quantity::Combination(sum), 2.0, 0.3),
    ];
    let whole = job(3).solve(&readings).unwrap().joint_shared(&NAMES).unwrap();
    let seen = job(2).solve(&readings).unwrap().joint_shared(&NAMES[..2]).unwrap();
    let links = [0, 1].map(|value| Link { value, own_variance: 0.0 });
    let seen = Gaussian { mean: seen.mean, covariance: seen.covariance };
    let carried = prior().carried(&links, &seen).unwrap();
    close(&carried.values, &whole.mean, &whole.covariance);
    assert!((carried.values.mean[2] - 2.0).abs() > 0.05, "c moved");
    assert_eq!(carried.own, [None, None]);
}

/// A scale's offset is its habit and today's own: the habit is carried, today's own is told apart.
#[test]
fn a_habit_is_told_from_the_day() {
    let (habit_sd, today_sd): (f64, f64) = (0.3, 0.4);
    let scale = ScalePrior { offset_mean: 0.1, offset_sd: habit_sd.hypot(today_sd), ..ScalePrior::new("s") };
    let weight = Quantity::CheckWeight { true_points: 30.0, mass_g: 400.0, shared: None };
    let model = JobModel { scales: vec![scale], ..JobModel::default() };
    let belief = model.solve(&[Observation::new("1", weight, 30.9, 0.2).on_scale("s")]).unwrap();
    let seen = belief.joint_shared(&[&ScalePrior::offset_key("s")]).unwrap();
    let before = Gaussian { mean: vec![0.1], covariance: vec![vec![habit_sd * habit_sd]] };
    let link = [Link { value: 0, own_variance: today_sd * today_sd }];
    let carried = before.carried(&link, &Gaussian { mean: seen.mean, covariance: seen.covariance }).unwrap();
    // By hand: the reading is 0.8 off with variance 0.09 + 0.16 + 0.04 = 0.29.
    let mean = 0.1 + 0.8 * 0.09 / 0.29;
    close(&carried.values, &[mean], &[vec![0.09 - 0.09 * 0.09 / 0.29]]);
    let today = carried.own[0].unwrap();
    assert!((today.mean * today_sd - 0.8 * 0.16 / 0.29).abs() < 1e-9, "{today:?}");
    assert!((today.variance * 0.16 - (0.16 - 0.16 * 0.16 / 0.29)).abs() < 1e-9, "{today:?}");
}

#[test]
fn forgetting_ends_at_the_prior() {
    let mut values = prior();
    let sd = [Some(0.6), None, Some(0.3)];
    values.forget(0.9, &sd).unwrap();
    close(
        &values,
        &[0.36, -1.0, 1.8],
        &[vec![0.270_9, -0.108, 0.040_5], vec![-0.108, 0.16, 0.018], vec![0.040_5, 0.018, 0.09]],
    );
    for _ in 0..400 {
        values.forget(0.9, &sd).unwrap();
        assert!(values.covariance[0][0] <= 0.36 + 1e-12 && values.covariance[2][2] <= 0.09 + 1e-12);
    }
    close(&values, &[0.0, -1.0, 0.0], &[vec![0.36, 0.0, 0.0], vec![0.0, 0.16, 0.0], vec![0.0, 0.0, 0.09]]);
}

#[test]
fn what_does_not_fit_together_is_refused() {
    let one = Gaussian { mean: vec![0.0], covariance: vec![vec![1.0]] };
    let link = |value| Link { value, own_variance: 0.0 };
    assert!(prior().carried(&[link(0), link(1)], &one).unwrap_err().in_words().contains("1 values where 2"));
    assert!(prior().carried(&[link(3)], &one).unwrap_err().in_words().contains("link"));
    let wrong = Gaussian { mean: vec![f64::NAN], covariance: vec![vec![1.0]] };
    assert!(prior().carried(&[link(0)], &wrong).unwrap_err().in_words().contains("not a finite number"));
    assert!(prior().forget(1.1, &[None; 3]).unwrap_err().in_words().contains("between 0 and 1"));
    assert!(prior().forget(0.9, &[None; 2]).unwrap_err().in_words().contains("2 values where 3"));
}
