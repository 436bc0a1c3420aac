//! Goal: causes are weighed as Bayes' rule says, against all readings, and what a further reading would tell is right.
//! Method: a worked example with its figures; whole jobs changed and solved anew, compared by their evidence; mutual
//! information against values computed with scipy.

use crate::common::{DRY, FINISHED, GLUED, Truth, WEIGHTED, job, key, rng, swing_weight};
use estimation::{
    Change, Club, Effect, EstimationError, Hypothesis, JobModel, Misread, Observation, OnClub, Piece, Prior, Quantity,
    Role, Weighed,
};
use std::collections::BTreeSet;

fn about(ids: &[&str]) -> BTreeSet<String> {
    ids.iter().map(|id| (*id).to_owned()).collect()
}

/// One reading 0.90 below its forecast with standard deviation 0.12. The posteriors are those of the normal densities
/// (computed with scipy.stats.norm.pdf).
#[test]
fn the_worked_example_comes_out() {
    // A cap's thickness is a bare number of the club: forecast 5, standard deviation 0.1; the reading adds
    // sqrt(0.12² − 0.1²).
    let mut model = JobModel::default();
    model.clubs.push(Club::new("one", 36.0).with_cap(Prior::new(5.0, 0.1)));
    let noise = 0.0044_f64.sqrt();
    let reading = Observation::new("r", Quantity::CapThickness, 4.10, noise).of_club("one", OnClub::NONE);
    let hypotheses = [
        Hypothesis::nothing("none", 0.97),
        Hypothesis::shift("tip weight 2 g short", 0.010, "r", -0.875, 0.0),
        Hypothesis::shift("ferrule missing", 0.003, "r", -0.623, 0.0),
        Hypothesis::shift("neighbour's head", 0.005, "r", -3.245, 0.03),
        Hypothesis::shift("other", 0.012, "r", 0.0, 3.0),
    ];
    let weighed = model.weigh(&[reading], &about(&["r"]), &[], &hypotheses).unwrap();
    let p = &weighed.posterior;
    assert!((p[1] - 0.936).abs() < 0.0006, "{p:?}");
    assert!((p[4] - 0.044).abs() < 0.0006, "{p:?}");
    assert!((p[2] - 0.020).abs() < 0.0006, "{p:?}");
    assert!(p[0] < 1e-9 && p[3] < 1e-9);
    assert!((p.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    // Of the broad shift the reading leaves −0.90·9/(9 + 0.0144), within about 0.12.
    let left = weighed.amounts[4][0];
    assert!((left.mean + 0.898_562).abs() < 1e-5 && (left.sd - 0.119_904).abs() < 1e-5, "{left:?}");
}

/// Readings of three clubs: dry, weighted, glued, finished, and the mass of the finished club.
fn bench(seed: u64) -> (JobModel, Vec<Observation>) {
    let mut random = rng(seed);
    let truth = Truth::draw(&mut random, 3);
    let mut all = Vec::new();
    for i in 0..3 {
        for (n, on) in [&DRY[..], &WEIGHTED, &GLUED, &FINISHED].iter().enumerate() {
            all.push(swing_weight(&format!("b{i}{n}"), i, on, truth.shown(&mut random, i, on)));
        }
        let mass_g = truth.clubs[i].pieces.iter().map(|(_, mass_g, _)| mass_g).sum();
        let weighing = Observation::new(format!("m{i}"), Quantity::TotalMass, mass_g, 0.1);
        all.push(weighing.of_club(key(i), OnClub::of(&FINISHED)));
    }
    (job(3), all)
}

/// What a gram at the head does to each reading of club 1, and a head changed in the model itself.
fn head_effects(model: &JobModel) -> Vec<Effect> {
    let club = model.clubs.iter().find(|c| c.key == key(1)).unwrap();
    let head = club.pieces.iter().find(|p| p.role == Role::Head).unwrap();
    let bare = (head.arm_in.mean - 14.0) / quantity::POINT_G_IN;
    let gripped = (head.arm_in.mean + club.cap_in.mean - 14.0) / quantity::POINT_G_IN;
    [("b10", bare), ("b11", bare), ("b12", bare), ("b13", gripped), ("m1", 1.0)]
        .map(|(reading, per_unit)| Effect { reading: reading.into(), per_unit })
        .to_vec()
}

/// The evidence of "the head is 6 ± 2 g heavier" by shifts equals that of a job whose head is so, solved anew: the
/// difference is the curvature of mass times arm only.
#[test]
fn a_shift_weighs_as_the_changed_job_solved_anew() {
    for seed in 0..6 {
        let (model, readings) = bench(seed);
        let mut heavier = model.clone();
        let club = heavier.clubs.iter_mut().find(|c| c.key == key(1)).unwrap();
        let head: &mut Piece = club.pieces.iter_mut().find(|p| p.role == Role::Head).unwrap();
        head.mass_g.mean += 6.0;
        head.mass_g.piece_sd = head.mass_g.piece_sd.hypot(2.0);
        let anew = heavier.solve(&readings).unwrap().log_evidence() - model.solve(&readings).unwrap().log_evidence();
        let change = Change { mean: 6.0, sd: 2.0, effects: head_effects(&model) };
        let hypotheses = [
            Hypothesis::nothing("none", 1.0),
            Hypothesis { changes: vec![change], ..Hypothesis::nothing("head", 1.0) },
        ];
        let club = about(&["b10", "b11", "b12", "b13", "m1"]);
        let weighed = model.weigh(&readings, &club, &[], &hypotheses).unwrap();
        let shifted = weighed.log_evidence[1] - weighed.log_evidence[0];
        assert!((shifted - anew).abs() < 2e-3 * (1.0 + anew.abs()), "seed {seed}: {shifted} {anew}");
    }
}

/// A swapped digit is another reading, not another club: the same as solving with the meant value.
#[test]
fn a_swapped_digit_weighs_as_the_meant_reading() {
    let (model, readings) = bench(3);
    let mut meant = readings.clone();
    let b11 = meant.iter_mut().find(|r| r.id == "b11").unwrap();
    b11.value += 0.9;
    let value = b11.value;
    let anew = model.solve(&meant).unwrap().log_evidence() - model.solve(&readings).unwrap().log_evidence();
    let slip = |stretch| Misread { reading: "b11".into(), meant: value, stretch };
    let hypotheses = [
        Hypothesis::nothing("none", 1.0),
        Hypothesis { misread: vec![slip(1.0)], ..Hypothesis::nothing("swap", 1.0) },
        Hypothesis { misread: vec![slip(28.35)], ..Hypothesis::nothing("unit", 1.0) },
    ];
    let weighed = model.weigh(&readings, &about(&["b11"]), &[], &hypotheses).unwrap();
    let e = &weighed.log_evidence;
    assert!((e[1] - e[0] - anew).abs() < 2e-3 * (1.0 + anew.abs()), "{e:?} {anew}");
    assert!((e[2] - e[1] - 28.35_f64.ln()).abs() < 1e-9);
}

/// A planned reading is forecast, under "nothing wrong", as the belief forecasts it; taken, it moves the posterior to
/// the place that its own evidence says.
#[test]
fn a_planned_reading_is_forecast_and_then_counts() {
    let (model, readings) = bench(4);
    let club = about(&["b10", "b11", "b12", "b13", "m1"]);
    let ask = Observation::new("ask", Quantity::PartMass(Role::Head), 0.0, 0.05).of_club(key(1), OnClub::NONE);
    let mut effects = head_effects(&model);
    effects.push(Effect { reading: "ask".into(), per_unit: 1.0 });
    let hypotheses = [
        Hypothesis::nothing("none", 0.9),
        Hypothesis {
            changes: vec![Change { mean: 7.0, sd: 1.5, effects: effects.clone() }],
            ..Hypothesis::nothing("neighbour", 0.1)
        },
    ];
    let weighed = model.weigh(&readings, &club, std::slice::from_ref(&ask), &hypotheses).unwrap();
    let belief = model.solve(&readings).unwrap();
    let own = belief.answer(&ask.probe()).unwrap();
    let planned = weighed.outlooks[0].under[0];
    assert!((planned.mean - own.mean).abs() < 1e-3, "{planned:?} {own:?}");
    assert!((planned.sd - own.sd.hypot(0.05)).abs() < 1e-4);

    // Bayes' rule with the two forecasts, against weighing anew with the reading among the others.
    let mut taken = ask.clone();
    taken.value = own.mean + 0.3;
    let density = |f: estimation::Forecast| (-0.5 * ((taken.value - f.mean) / f.sd).powi(2)).exp() / f.sd;
    let odds = weighed.posterior[1] / weighed.posterior[0] * density(weighed.outlooks[0].under[1]) / density(planned);
    let mut with = readings.clone();
    with.push(taken);
    let mut club = club;
    club.insert("ask".into());
    let after = model.weigh(&with, &club, &[], &hypotheses).unwrap();
    let odds_after = (after.log_evidence[1] - after.log_evidence[0]).exp() / 9.0;
    assert!((odds_after / odds - 1.0).abs() < 1e-2, "{odds} {odds_after}");
}

fn mixture(parts: &[(f64, f64, f64)]) -> Weighed {
    Weighed {
        keys: parts.iter().map(|_| String::new()).collect(),
        posterior: parts.iter().map(|p| p.0).collect(),
        log_evidence: vec![0.0; parts.len()],
        amounts: vec![Vec::new(); parts.len()],
        outlooks: vec![estimation::Outlook {
            id: "q".into(),
            under: parts.iter().map(|p| estimation::Forecast { mean: p.1, sd: p.2 }).collect(),
        }],
    }
}

/// Mutual information, bits. Computed with scipy.integrate.quad over the mixture density:
/// `h(sum p_i N_i) − sum p_g h(sum_{i in g} p_i N_i / p_g)`, divided by ln 2.
#[test]
fn what_a_reading_tells_is_their_mutual_information() {
    let apart = mixture(&[(0.5, 0.0, 1.0), (0.5, 40.0, 1.0)]);
    assert!((apart.information_bits(0, &[0, 1]).unwrap() - 1.0).abs() < 1e-6);
    let alike = mixture(&[(0.5, 3.0, 1.0), (0.5, 3.0, 1.0)]);
    assert!(alike.information_bits(0, &[0, 1]).unwrap() < 1e-9);
    let half = mixture(&[(0.5, 0.0, 1.0), (0.5, 2.0, 1.0)]);
    assert!((half.information_bits(0, &[0, 1]).unwrap() - 0.485_944_154_1).abs() < 1e-5);
    let three = mixture(&[(0.5, 0.0, 1.0), (0.3, 2.0, 1.0), (0.2, 5.0, 0.5)]);
    assert!((three.information_bits(0, &[0, 0, 1]).unwrap() - 0.675_645_877_3).abs() < 1e-5);
    assert!((three.information_bits(0, &[0, 1, 2]).unwrap() - 1.044_389_561_6).abs() < 1e-5);
}

/// The chance of naming the true one of two bells, two standard deviations apart, is Φ(1) = 0.841345 (published table of
/// the normal distribution): the better guess changes in the middle.
#[test]
fn the_chance_of_naming_the_cause_is_that_of_the_better_guess() {
    let half = mixture(&[(0.5, 0.0, 1.0), (0.5, 2.0, 1.0)]);
    let chance = half.chance_of_naming(0, &[0, 1]).unwrap();
    assert!((chance - 0.841_345).abs() < 2e-3, "{chance}");
    let alike = mixture(&[(0.7, 3.0, 1.0), (0.3, 3.0, 1.0)]);
    assert!((alike.chance_of_naming(0, &[0, 1]).unwrap() - 0.7).abs() < 1e-6);
    assert!(alike.chance_of_naming(1, &[0, 1]).is_err() && alike.chance_of_naming(0, &[0]).is_err());
}

#[test]
fn what_cannot_be_weighed_is_refused_by_name() {
    let (model, readings) = bench(1);
    let club = about(&["b10"]);
    let weigh = |h: Hypothesis| model.weigh(&readings, &club, &[], &[Hypothesis::nothing("none", 1.0), h]);
    let refused = weigh(Hypothesis::shift("ghost", 0.1, "b99", 1.0, 0.0)).unwrap_err();
    assert!(refused.to_string().contains("b99") && refused.to_string().contains("ghost"), "{refused}");
    assert!(matches!(weigh(Hypothesis::shift("x", f64::NAN, "b10", 1.0, 0.0)), Err(EstimationError::NotFinite { .. })));
    assert!(matches!(weigh(Hypothesis::shift("x", 0.1, "b10", 1.0, -1.0)), Err(EstimationError::Negative { .. })));
    let slip = Misread { reading: "b10".into(), meant: 3.0, stretch: 0.0 };
    let stretched = Hypothesis { misread: vec![slip], ..Hypothesis::nothing("x", 0.1) };
    assert!(matches!(weigh(stretched), Err(EstimationError::NotPositive { .. })));
    assert!(model.weigh(&readings, &club, &[], &[]).is_err());
    let zero = [Hypothesis::nothing("none", 0.0)];
    assert!(model.weigh(&readings, &club, &[], &zero).is_err());
}
