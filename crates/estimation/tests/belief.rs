//! Goal: a belief depends on the set of readings only, says nothing it does not know, and refuses what makes no sense.

use crate::common::{DRY, FINISHED, GLUED, Truth, WEIGHTED, job, key, rng, swing_weight};
use estimation::{
    Belief, Club, Drift, EstimationError, JobModel, JointPrior, Observation, OnClub, Piece, Prior, Probe, Quantity,
    Role, ScalePrior, Share, SharedPrior, Source, Standing,
};
use proptest::prelude::*;
use words::check::InWords;

type Tested = Result<(), EstimationError>;

fn close(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found} instead of {expected} ± {tolerance}");
}

/// Dry, glued and finished readings of a job, masses, check weights and coarse lengths among them.
fn readings(clubs: usize, seed: u64) -> Vec<Observation> {
    let mut random = rng(seed);
    let truth = Truth::draw(&mut random, clubs);
    let mut all = Vec::new();
    for i in 0..clubs {
        for on in [&DRY[..], &GLUED, &FINISHED] {
            all.push(swing_weight(&format!("swing_weight-{i}-{}", on.len()), i, on, truth.shown(&mut random, i, on)));
        }
        let of_club = |id: &str, quantity, value, sd| {
            Observation::new(format!("{id}-{i}"), quantity, value, sd).of_club(key(i), OnClub::of(&FINISHED))
        };
        let mass_g = truth.clubs[i].pieces.iter().map(|(_, mass_g, _)| mass_g).sum();
        all.push(of_club("total", Quantity::TotalMass, mass_g, 0.1).rounded_to(0.1));
        let length_in = ((truth.clubs[i].length_in) * 16.0).round() / 16.0;
        all.push(of_club("length-x", Quantity::ShaftLength, length_in, 0.01).rounded_to(1.0 / 16.0));
        all.push(of_club("length-y", Quantity::ShaftLength, length_in, 0.01).rounded_to(1.0 / 16.0));
    }
    let check = Quantity::CheckWeight { true_points: 30.0, mass_g: 400.0, shared: None };
    all.push(Observation::new("check", check, 30.0 + truth.offset, 0.03).on_scale("bench"));
    all
}

/// Everything that a belief says, as bits.
fn fingerprint(belief: &Belief, clubs: usize) -> Result<Vec<u64>, EstimationError> {
    let mut bits = vec![belief.chi_square().to_bits(), belief.log_evidence().to_bits()];
    for i in 0..clubs {
        for on in [&DRY[..], &WEIGHTED, &GLUED, &FINISHED] {
            for scale in [None, Some("bench")] {
                let forecast = belief.forecast(&key(i), &Quantity::SwingWeight, OnClub::of(on), scale)?;
                bits.extend([forecast.mean.to_bits(), forecast.sd.to_bits()]);
            }
        }
        for part in belief.budget(&key(i), OnClub::of(&FINISHED))? {
            bits.push(part.share.to_bits());
        }
    }
    for shared in belief.shared_keys() {
        bits.push(belief.marginal(shared)?.mean.to_bits());
    }
    bits.extend(belief.innovations()?.iter().filter(|i| i.believed).map(|i| i.z.to_bits()));
    Ok(bits)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Any order of readings, clubs, shared values gives the same belief, bit for bit.
    #[test]
    fn order_does_not_matter(shuffled in Just(readings(4, 3)).prop_shuffle(), clubs in Just(vec![0, 1, 2, 3]).prop_shuffle()) {
        let model = job(4);
        let mut other = model.clone();
        other.clubs = clubs.iter().map(|i| model.clubs[*i].clone()).collect();
        other.shared.reverse();
        let expected = fingerprint(&model.solve(&readings(4, 3)).unwrap(), 4).unwrap();
        let found = fingerprint(&other.solve(&shuffled).unwrap(), 4).unwrap();
        prop_assert_eq!(expected, found);
    }

    /// A reading taken out leaves exactly the belief that never had it, whatever way it is taken out.
    #[test]
    fn removal_is_exact(out in 0_usize..25, blunder in -50.0_f64..50.0) {
        let model = job(4);
        let mut with = readings(4, 4);
        let mut without = with.clone();
        without.remove(out);
        let expected = fingerprint(&model.solve(&without).unwrap(), 4).unwrap();
        with[out].value += blunder;
        for standing in [Standing::Doubted, Standing::Withdrawn] {
            with[out].standing = standing;
            prop_assert_eq!(&expected, &fingerprint(&model.solve(&with).unwrap(), 4).unwrap());
        }
    }

    /// A step that is skipped widens bands and never narrows one. The tolerance is for the derivatives, which are taken
    /// at another point when the readings differ.
    #[test]
    fn skipped_readings_only_widen(skipped in proptest::sample::subsequence((0..25).collect::<Vec<usize>>(), 1..20)) {
        let model = job(4);
        let all = readings(4, 5);
        let kept: Vec<Observation> =
            all.iter().enumerate().filter(|(i, _)| !skipped.contains(i)).map(|(_, r)| r.clone()).collect();
        let (full, less) = (model.solve(&all).unwrap(), model.solve(&kept).unwrap());
        for i in 0..4 {
            for on in [&DRY[..], &GLUED, &FINISHED] {
                let sd = |b: &Belief| b.forecast(&key(i), &Quantity::SwingWeight, OnClub::of(on), None).map(|f| f.sd);
                prop_assert!(sd(&less).unwrap() >= sd(&full).unwrap() * 0.999);
            }
        }
    }
}

#[test]
fn finishing_one_club_narrows_the_others() -> Tested {
    let model = job(8);
    let all = readings(8, 6);
    let dry: Vec<Observation> = all.iter().filter(|r| r.id.ends_with("-3")).cloned().collect();
    let mut one = dry.clone();
    one.extend(all.iter().filter(|r| r.id == "swing_weight-0-5" || r.id == "swing_weight-0-7").cloned());
    let (before, after) = (model.solve(&dry)?, model.solve(&one)?);
    for i in 1..8 {
        let sd = |b: &Belief| {
            Ok::<f64, EstimationError>(
                b.forecast(&key(i), &Quantity::SwingWeight, OnClub::of(&FINISHED), Some("bench"))?.sd,
            )
        };
        assert!(sd(&after)? < 0.75 * sd(&before)?, "{} of {}", sd(&after)?, sd(&before)?);
    }
    Ok(())
}

/// Eight dry readings hardly tell the scale's offset and tie it to the head's offset: the design of the model, not a
/// defect. (Prior 0.20; simulated elsewhere with other priors: 0.197, correlation −0.81.)
#[test]
fn dry_readings_do_not_tell_the_offset() -> Tested {
    let dry: Vec<Observation> = readings(8, 7).into_iter().filter(|r| r.id.ends_with("-3")).collect();
    let belief = job(8).solve(&dry)?;
    let joint = belief.joint_shared(&["scale:bench:offset", "delta:blade"])?;
    let offset = joint.covariance[0][0].sqrt();
    let correlation = joint.covariance[0][1] / (offset * joint.covariance[1][1].sqrt());
    assert!(offset > 0.185 && offset < 0.2, "{offset}");
    assert!(correlation < -0.6, "{correlation}");
    Ok(())
}

/// Two check weights ten points apart, 0.01 each, leave a gain of prior 0.5 % at 0.14 %: √2·0.01/10, a little less for
/// the prior.
#[test]
fn two_check_weights_tell_the_gain() -> Tested {
    // An offset of which next to nothing is known: a well known one would help to tell the gain.
    let scale = ScalePrior::new("bench").offset_sd(5.0).gain_sd(0.005);
    let model = JobModel { scales: vec![scale], ..JobModel::default() };
    let check = |id: &str, points: f64| {
        let weight = Quantity::CheckWeight { true_points: points, mass_g: 400.0, shared: None };
        Observation::new(id, weight, points + 0.1, 0.01).on_scale("bench")
    };
    let belief = model.solve(&[check("1", 30.0), check("2", 40.0)])?;
    close("gain", belief.marginal("scale:bench:gain")?.sd, 0.0014, 5e-5);
    Ok(())
}

/// A drift of 0.1 a root hour: 0.02 after a reading of 0.02 with an offset of 0.2, plus the root of 0.08 after 8 hours.
#[test]
fn a_check_weight_ages() -> Tested {
    let drift = Drift { sd_per_root_h: 0.1, knots_h: vec![0.0, 4.0, 8.0], ..Drift::default() };
    let mut model = job(1);
    model.scales = vec![ScalePrior::new("bench").offset_sd(0.2).drift(drift)];
    let weight = Quantity::CheckWeight { true_points: 30.0, mass_g: 400.0, shared: None };
    let belief = model.solve(&[Observation::new("1", weight.clone(), 30.1, 0.02).on_scale("bench")])?;
    let ask = |at_h| Probe {
        club: None,
        quantity: weight.clone(),
        on: OnClub::NONE,
        scale: Some("bench".into()),
        at_h,
        less: None,
        less_club: None,
    };
    close("at once", belief.answer(&ask(Some(0.0)))?.sd, 0.0199, 1e-4);
    close("when none is said", belief.answer(&ask(None))?.sd, 0.0199, 1e-4);
    close("after eight hours", belief.answer(&ask(Some(8.0)))?.sd, 0.2835, 1e-4);
    assert!(matches!(belief.answer(&ask(Some(9.0))), Err(EstimationError::OutsideDrift { .. })));
    Ok(())
}

/// Exact derivatives: with a single uncertain value, the forecast's standard deviation is the slope times its own.
/// The slope is taken from forecasts with that value's mean moved, for every quantity.
#[test]
fn derivatives_agree_with_differences() -> Tested {
    let on = OnClub::finished();
    let (h, sd) = (1e-4, 1e-6);
    let quantities = [
        Quantity::SwingWeight,
        Quantity::BalancePoint,
        Quantity::Inertia,
        Quantity::SwingPeriod { pivot_in: 0.0, gravity_in_s2: 386.089 },
        Quantity::SwingPeriod { pivot_in: 5.5, gravity_in_s2: 386.089 },
        Quantity::TotalMass,
        Quantity::LengthToCap,
        Quantity::ShaftLength,
        Quantity::CapThickness,
        Quantity::PartMass(Role::Extra),
        Quantity::PartArm(Role::Extra),
        Quantity::PartArm(Role::Head),
    ];
    type Edit = fn(&mut Club, f64, f64);
    let edits: [Edit; 6] = [
        |c, mean, sd| (c.pieces[0].mass_g.mean, c.pieces[0].mass_g.piece_sd) = (c.pieces[0].mass_g.mean + mean, sd),
        |c, mean, sd| (c.pieces[0].arm_in.mean, c.pieces[0].arm_in.piece_sd) = (c.pieces[0].arm_in.mean + mean, sd),
        |c, mean, sd| (c.cap_in.mean, c.cap_in.piece_sd) = (c.cap_in.mean + mean, sd),
        |c, mean, sd| (c.pieces[2].mass_g.mean, c.pieces[2].mass_g.piece_sd) = (c.pieces[2].mass_g.mean + mean, sd),
        |c, mean, sd| (c.pieces[3].arm_in.mean, c.pieces[3].arm_in.piece_sd) = (c.pieces[3].arm_in.mean + mean, sd),
        |c, mean, sd| (c.pieces[1].mass_g.mean, c.pieces[1].mass_g.piece_sd) = (c.pieces[1].mass_g.mean + mean, sd),
    ];
    let club = Club::new("c", 37.0)
        .with_cap(Prior::known(0.12))
        .with_piece(Piece::new(Role::Head, Prior::known(260.0), Prior::known(37.1)).with_own_inertia(500.0))
        .with_piece(Piece::new(Role::Grip, Prior::known(50.0), Prior::known(4.0)).from_grip_cap())
        .with_piece(Piece::new(Role::Extra, Prior::known(6.0), Prior::known(3.0)))
        .with_piece(Piece::new(Role::Extra, Prior::known(9.0), Prior::known(30.0)));
    let mut scale = ScalePrior::new("bench");
    scale.gain_mean = 0.02;
    for quantity in &quantities {
        for (number, edit) in edits.iter().enumerate() {
            for read_on in [None, Some("bench")] {
                let ask = |shift: f64, sd: f64| {
                    let mut club = club.clone();
                    edit(&mut club, shift, sd);
                    let model = JobModel { clubs: vec![club], scales: vec![scale.clone()], ..JobModel::default() };
                    model.solve(&[])?.forecast("c", quantity, on, read_on)
                };
                let slope = (ask(h, 0.0)?.mean - ask(-h, 0.0)?.mean) / (2.0 * h);
                let found = ask(0.0, sd)?.sd / sd;
                // Differences of inertias of 4e5 g·in² leave about 1e-6 of themselves.
                close(&format!("{quantity:?}, edit {number}"), found, slope.abs(), 1e-6 * (1.0 + slope.abs()));
            }
        }
    }
    Ok(())
}

/// Fulcrum, gain, offset and the club's length, the same way.
#[test]
fn derivatives_of_scale_and_length() -> Tested {
    let piece = Piece::new(Role::Head, Prior::known(260.0), Prior::known(37.1)).moving_with_length();
    let club = Club::new("c", 37.0).with_piece(piece);
    let on = OnClub::of(&[Role::Head]);
    let sd_of = |club: &Club, scale: ScalePrior| {
        let model = JobModel { clubs: vec![club.clone()], scales: vec![scale], ..JobModel::default() };
        Ok::<f64, EstimationError>(model.solve(&[])?.forecast("c", &Quantity::SwingWeight, on, Some("bench"))?.sd)
    };
    // One inch under 260 g is 260/49.6117 points.
    let point = 49.611_665;
    let mut fulcrum = ScalePrior::new("bench");
    fulcrum.fulcrum_sd_in = 0.01;
    close("fulcrum", sd_of(&club, fulcrum)?, 0.01 * 260.0 / point, 1e-7);
    close("offset", sd_of(&club, ScalePrior::new("bench").offset_sd(0.3))?, 0.3, 1e-12);
    // The gain acts on the whole moment: 260 g at 23.1 in from the fulcrum.
    close("gain", sd_of(&club, ScalePrior::new("bench").gain_sd(0.001))?, 0.001 * 260.0 * 23.1 / point, 1e-7);
    close("length", sd_of(&club.with_length_sd(0.02), ScalePrior::new("bench"))?, 0.02 * 260.0 / point, 1e-7);
    Ok(())
}

/// Published check of the arithmetic by hand: 349.8 g with the balance point at 824 mm are 227.54 oz·in, D8.0, 38 points
/// above A0; and gripping shifts by the cap times everything but the grip, whose centre is counted from the cap.
#[test]
fn swing_weight_by_hand() -> Tested {
    let shaft = Piece::new(Role::Shaft, Prior::known(349.8), Prior::known(824.0 / 25.4));
    let grip = Piece::new(Role::Grip, Prior::known(50.0), Prior::known(4.0)).from_grip_cap();
    let club = Club::new("c", 37.0).with_cap(Prior::known(0.118)).with_piece(shaft).with_piece(grip);
    let belief = JobModel { clubs: vec![club], ..JobModel::default() }.solve(&[])?;
    let at = |on: &[Role]| {
        Ok::<f64, EstimationError>(belief.forecast("c", &Quantity::SwingWeight, OnClub::of(on), None)?.mean)
    };
    let bare = at(&[Role::Shaft])?;
    close("bare", bare, 38.0, 0.05);
    close("moment", bare * 1.75 + 161.0, 227.54, 0.005);
    // ΔM = c·W + m·(x − 14), in g·in over 49.6117.
    close("gripped", at(&[Role::Shaft, Role::Grip])? - bare, (0.118 * 349.8 + 50.0 * (4.0 - 14.0)) / 49.611_665, 1e-6);
    Ok(())
}

#[test]
fn budget_adds_up_and_names_the_largest() -> Tested {
    let mut model = job(4);
    model.clubs[1].pieces[4].mass_g.piece_sd = 2.0;
    let belief = model.solve(&readings(4, 8).into_iter().filter(|r| r.id.ends_with("-3")).collect::<Vec<_>>())?;
    let on = OnClub::of(&FINISHED);
    let budget = belief.budget(&key(1), on)?;
    close("sum", budget.iter().map(|part| part.share).sum::<f64>(), 1.0, 1e-12);
    assert_eq!(budget[0].source, Source::Piece(Role::Adhesive));
    assert_eq!(budget[0].name, "adhesive");
    assert!(budget.windows(2).all(|pair| pair[0].share >= pair[1].share && pair[1].share > 0.0));
    let sd = belief.forecast(&key(1), &Quantity::SwingWeight, on, None)?.sd;
    close("variance", budget.iter().map(|part| part.sd.powi(2)).sum::<f64>(), sd * sd, 1e-12);
    // A joint covariance of shared values must not break the sum.
    let covariance = vec![vec![0.0144, 0.03], vec![0.03, 0.16]];
    model.joint = vec![JointPrior { keys: vec!["delta:blade".into(), "adhesive:mix".into()], covariance }];
    let belief = model.solve(&readings(4, 8))?;
    let sd = belief.forecast(&key(1), &Quantity::SwingWeight, on, None)?.sd;
    let budget = belief.budget(&key(1), on)?;
    close("variance", budget.iter().map(|part| part.sd.powi(2)).sum::<f64>(), sd * sd, 1e-12);
    Ok(())
}

/// What was learned is carried in its joint covariance: two jobs one after the other are as good as both at once.
/// Linear readings, so that the two agree but for rounding.
#[test]
fn carrying_over_is_the_same_as_both_at_once() -> Tested {
    let weigh = |id: &str, i: usize, on: &[Role], value: f64| {
        Observation::new(id, Quantity::TotalMass, value, 0.05).of_club(key(i), OnClub::of(on)).on_scale("tray")
    };
    let mut both = job(2);
    both.scales = vec![ScalePrior::new("tray").offset_sd(0.3)];
    let first = [weigh("1", 0, &GLUED, 366.0), weigh("2", 0, &FINISHED, 418.0)];
    let second = [weigh("3", 1, &GLUED, 371.0)];
    let (mut one, mut two) = (both.clone(), both.clone());
    one.clubs.truncate(1);
    two.clubs.remove(0);
    let after = one.solve(&first)?;
    let keys = ["adhesive:mix", "tape:roll", "scale:tray:offset"];
    let joint = after.joint_shared(&keys)?;
    for shared in &mut two.shared {
        shared.mean_shift = after.marginal(&shared.key)?.mean;
    }
    two.scales[0].offset_mean = after.marginal("scale:tray:offset")?.mean;
    two.joint = vec![JointPrior { keys: keys.map(String::from).to_vec(), covariance: joint.covariance }];
    let carried = two.solve(&second)?;
    let together = both.solve(&[&first[..], &second].concat())?;
    for on in [&GLUED[..], &FINISHED] {
        let a = carried.forecast(&key(1), &Quantity::TotalMass, OnClub::of(on), None)?;
        let b = together.forecast(&key(1), &Quantity::TotalMass, OnClub::of(on), None)?;
        close("mean", a.mean, b.mean, 1e-9);
        close("sd", a.sd, b.sd, 1e-9);
    }
    Ok(())
}

/// The band that a planned reading will leave is the one that it leaves. Tolerance: derivatives at another point.
#[test]
fn planned_readings_narrow_as_promised() -> Tested {
    let model = job(3);
    let dry: Vec<Observation> = readings(3, 9).into_iter().filter(|r| r.id.ends_with("-3")).collect();
    let ask = |i: usize, on: &[Role]| Probe::of_club(key(i), Quantity::SwingWeight, OnClub::of(on));
    let noise = (crate::common::NOISE.powi(2) + crate::common::STEP.powi(2) / 12.0).sqrt();
    let planned = [(ask(0, &GLUED).on_scale("bench"), noise), (ask(0, &FINISHED).on_scale("bench"), noise)];
    let promised = model.solve(&dry)?.sd_after(&ask(1, &FINISHED), &planned)?;
    let mut taken = dry.clone();
    taken.extend(readings(3, 9).into_iter().filter(|r| r.id == "swing_weight-0-5" || r.id == "swing_weight-0-7"));
    let found = model.solve(&taken)?.answer(&ask(1, &FINISHED))?.sd;
    close("sd", promised, found, 2e-3 * found);
    assert!(promised < model.solve(&dry)?.answer(&ask(1, &FINISHED))?.sd);
    Ok(())
}

#[test]
fn nothing_uncertain_gives_no_band() -> Tested {
    let on = OnClub::of(&[Role::Head]);
    let club = Club::new("c", 37.0).with_target(29.0, 0.3).with_piece(Piece::new(
        Role::Head,
        Prior::known(260.0),
        Prior::known(37.1),
    ));
    let model = JobModel { clubs: vec![club], scales: vec![ScalePrior::new("bench")], ..JobModel::default() };
    let reading = Observation::new("1", Quantity::SwingWeight, 29.5, 0.1).of_club("c", on).on_scale("bench");
    for belief in [model.solve(&[])?, model.solve(&[reading])?] {
        let forecast = belief.forecast("c", &Quantity::SwingWeight, on, Some("bench"))?;
        assert_eq!(forecast.sd, 0.0);
        assert!(belief.budget("c", on)?.is_empty());
        assert_eq!(belief.probability_on_target("c", on)?, 1.0);
        assert_eq!(belief.probability_within("c", on, 40.0, 0.3)?, 0.0);
        assert!(belief.innovations()?.iter().all(|i| (i.z - (29.5 - forecast.mean) / 0.1).abs() < 1e-9));
    }
    assert_eq!(JobModel::default().solve(&[])?.unknowns(), 0);
    Ok(())
}

/// A reading a million times better than what was known, and one that is worthless.
#[test]
fn extreme_readings() -> Tested {
    let model = JobModel { shared: vec![SharedPrior::new("x", 1.0)], ..JobModel::default() };
    let read = |sd: f64, value: f64| Observation::new(format!("{sd}"), Quantity::Shared("x".into()), value, sd);
    let sharp = model.solve(&[read(1e-6, 0.5)])?;
    close("mean", sharp.marginal("x")?.mean, 0.5, 1e-11);
    close("sd", sharp.marginal("x")?.sd, 1e-6, 1e-12);
    let blunt = model.solve(&[read(1e9, 12.0)])?;
    close("mean", blunt.marginal("x")?.mean, 0.0, 1e-12);
    close("sd", blunt.marginal("x")?.sd, 1.0, 1e-12);
    // Both agree with the prior alone when left out.
    close("z", sharp.innovations()?[0].z, 0.5, 1e-4);
    Ok(())
}

/// The sum of two values read a million times better than either was known: their difference keeps its prior. Sharper
/// still, it is refused rather than computed wrongly.
#[test]
fn sharp_readings_leave_the_rest_alone() -> Tested {
    let model =
        JobModel { shared: vec![SharedPrior::new("a", 1.0), SharedPrior::new("b", 1.0)], ..JobModel::default() };
    let share = |key: &str, gain: f64| Share { key: key.into(), gain };
    let sum = || Quantity::Combination(vec![share("a", 1.0), share("b", 1.0)]);
    let difference = Quantity::Combination(vec![share("a", 1.0), share("b", -1.0)]);
    let belief = model.solve(&[Observation::new("sum", sum(), 0.3, 1e-6)])?;
    let probe = Probe::of_job(difference);
    close("difference", belief.answer(&probe)?.sd, 2.0_f64.sqrt(), 1e-3);
    close("a", belief.marginal("a")?.mean, 0.15, 1e-3);
    let refused = model.solve(&[Observation::new("sum", sum(), 0.3, 1e-9)]);
    assert!(matches!(refused, Err(EstimationError::TooSharp { .. })));
    Ok(())
}

/// A covariance of which one direction is known exactly.
#[test]
fn semi_definite_joint_prior() -> Tested {
    let keys = vec!["a".into(), "b".into()];
    let model = JobModel {
        shared: vec![SharedPrior::new("a", 9.0), SharedPrior::new("b", 9.0)],
        joint: vec![JointPrior { keys, covariance: vec![vec![1.0, 2.0], vec![2.0, 4.0]] }],
        ..JobModel::default()
    };
    let belief = model.solve(&[Observation::new("1", Quantity::Shared("a".into()), 0.5, 0.1)])?;
    let (a, b) = (belief.marginal("a")?, belief.marginal("b")?);
    close("b follows a", b.mean, 2.0 * a.mean, 1e-7);
    close("and is as sure", b.sd, 2.0 * a.sd, 1e-7);
    close("a", a.mean, 0.5 / 1.01, 1e-9);
    Ok(())
}

#[test]
fn nonsense_is_refused_by_name() {
    let model = job(2);
    let good = || swing_weight("r", 0, &DRY, 36.0);
    let solve = |r: Observation| model.solve(&[r]).map(|_| ());
    let with = |edit: fn(&mut Observation)| {
        let mut r = good();
        edit(&mut r);
        model.solve(&[r]).map(|_| ()).unwrap_err().in_words()
    };
    assert!(solve(good()).is_ok());
    assert!(with(|r| r.value = f64::NAN).contains("readings[r].value"));
    assert!(with(|r| r.sd = -0.1).contains("−0.1"));
    assert!(with(|r| (r.sd, r.resolution) = (0.0, 0.0)).contains("rounding step of 0"));
    assert!(with(|r| r.club = None).contains("names no club"));
    assert!(with(|r| r.club = Some("other".into())).contains("“other”"));
    assert!(with(|r| r.scale = Some("kitchen".into())).contains("“kitchen”"));
    assert!(with(|r| r.quantity = Quantity::PartMass(Role::Extra)).contains("no extra"));
    assert!(with(|r| (r.quantity, r.on) = (Quantity::BalancePoint, OnClub::NONE)).contains("balance point"));
    assert!(with(|r| r.quantity = Quantity::Shared("luck".into())).contains("“luck”"));
    assert!(matches!(model.solve(&[good(), good()]), Err(EstimationError::Duplicate { .. })));
    let broken = |edit: fn(&mut JobModel)| {
        let mut model = job(2);
        edit(&mut model);
        model.solve(&[]).map(|_| ()).unwrap_err()
    };
    assert!(matches!(broken(|m| m.clubs[1].key = m.clubs[0].key.clone()), EstimationError::Duplicate { .. }));
    assert!(matches!(broken(|m| m.shared.clear()), EstimationError::Unknown { .. }));
    assert!(matches!(broken(|m| m.clubs[0].pieces[0].mass_g.mean = -1.0), EstimationError::Negative { .. }));
    assert!(matches!(broken(|m| m.clubs[0].length_sd_in = f64::INFINITY), EstimationError::NotFinite { .. }));
    assert!(matches!(
        broken(|m| m.joint = vec![JointPrior {
            keys: vec!["delta:blade".into(), "cap:soft".into()],
            covariance: vec![vec![1.0, 2.0], vec![2.0, 1.0]],
        }]),
        EstimationError::NotCovariance { .. }
    ));
}

#[test]
fn json_is_strict_and_round_trips() -> Result<(), serde_json::Error> {
    let reading = swing_weight("r", 0, &DRY, 36.0);
    let text = serde_json::to_string(&reading)?;
    assert_eq!(serde_json::from_str::<Observation>(&text)?, reading);
    assert!(text.contains(r#""on":["head","shaft","ferrule"]"#), "{text}");
    assert!(serde_json::from_str::<Observation>(&text.replace("\"sd\"", "\"sigma\"")).is_err());
    let model = job(2);
    assert_eq!(serde_json::from_str::<JobModel>(&serde_json::to_string(&model)?)?, model);
    Ok(())
}

/// Three days of a scale that is off by 0.2, six tenths of its variance its habit: the offset of any day, and what two days
/// have in common, are those of the first; a day drifts 0.15 in eight hours and no further, the next begins anew.
#[test]
fn a_scale_keeps_its_habit_and_begins_each_day_anew() -> Tested {
    const HABIT: f64 = 0.6;
    let drift = Drift {
        knots_h: vec![0.0, 6.0, 14.0, 26.0, 34.0],
        sd_per_h: 0.15 / 8.0,
        steady_h: 8.0,
        days_h: vec![14.0, 34.0],
        habit_share: HABIT,
        ..Drift::default()
    };
    let mut model = job(1);
    model.scales = vec![ScalePrior { offset_mean: 0.1, ..ScalePrior::new("bench").offset_sd(0.2).drift(drift) }];
    let weight = Quantity::CheckWeight { true_points: 30.0, mass_g: 400.0, shared: None };
    let ask = |at_h: f64| Probe {
        club: None,
        quantity: weight.clone(),
        on: OnClub::NONE,
        scale: Some("bench".into()),
        at_h: Some(at_h),
        less: None,
        less_club: None,
    };
    let unread = model.solve(&[])?;
    let steady = |hours: f64| 0.2_f64.hypot(0.15 * hours / 8.0);
    for (at_h, sd) in [(0.0, 0.2), (6.0, steady(6.0)), (14.0, 0.2), (26.0, steady(8.0)), (34.0, 0.2)] {
        let said = unread.answer(&ask(at_h))?;
        close("mean", said.mean, 30.1, 1e-9);
        close("sd", said.sd, sd, 1e-9);
    }
    // Read exactly on one day, another is what the habit tells of it: 0.6 of what is seen, 0.2·√(1 − 0.6²) left.
    for (read_h, asked_h) in [(0.0, 14.0), (14.0, 0.0), (14.0, 34.0), (34.0, 14.0)] {
        let seen = Observation::new("1", weight.clone(), 30.4, 1e-6).on_scale("bench").at(read_h);
        let said = model.solve(&[seen])?.answer(&ask(asked_h))?;
        close("mean after", said.mean, 30.1 + HABIT * 0.3, 1e-6);
        close("sd after", said.sd, 0.2 * (1.0 - HABIT * HABIT).sqrt(), 1e-6);
    }
    // A question without a time is about the last reading; on the morning after, about that morning.
    let seen = || Observation::new("1", weight.clone(), 30.4, 1e-6).on_scale("bench").at(0.0);
    let no_time = Probe { at_h: None, ..ask(0.0) };
    close("the same day", model.solve(&[seen()])?.answer(&no_time)?.mean, 30.4, 1e-6);
    let at_now = |now_h: f64| {
        let mut model = model.clone();
        model.scales[0].drift.as_mut().expect("a drift").now_h = Some(now_h);
        model.solve(&[seen()])
    };
    let morning = at_now(14.0)?.answer(&no_time)?;
    close("the morning after", morning.mean, 30.1 + HABIT * 0.3, 1e-6);
    close("sd of the morning after", morning.sd, 0.2 * (1.0 - HABIT * HABIT).sqrt(), 1e-6);
    assert!(matches!(at_now(40.0), Err(EstimationError::Limits { .. })), "beyond the last knot nothing can be said");
    Ok(())
}

/// An even rod hung from its end swings like a thread of two thirds of its length: 2π·√(2L/3g), a handbook formula. The rod is
/// a piece of 120 g, 23.622 in long, with mL²/12 of its own; hung from a place a third of the way down it swings like one of
/// 2L/3 as well, as the two are each other's centres of oscillation (Huygens).
#[test]
fn a_rod_swings_like_a_thread_of_two_thirds() -> Tested {
    let (length_in, mass_g) = (23.622, 120.0);
    let rod = Piece::new(Role::Shaft, Prior::known(mass_g), Prior::known(length_in / 2.0))
        .with_own_inertia(mass_g * length_in * length_in / 12.0);
    let model = JobModel { clubs: vec![Club::new("rod", length_in).with_piece(rod)], ..JobModel::default() };
    let belief = model.solve(&[])?;
    let gravity_in_s2 = 9.80665 / 0.0254;
    let by_hand_s = 2.0 * std::f64::consts::PI * (2.0 * length_in / (3.0 * gravity_in_s2)).sqrt();
    for pivot_in in [0.0, length_in / 3.0] {
        let period = Quantity::SwingPeriod { pivot_in, gravity_in_s2 };
        let found = belief.forecast("rod", &period, OnClub::of(&[Role::Shaft]), None)?;
        close(&format!("hung at {pivot_in}"), found.mean, by_hand_s, 1e-12);
    }
    // Beyond its balance point it turns over.
    let over = Quantity::SwingPeriod { pivot_in: 12.0, gravity_in_s2 };
    let refused = belief.forecast("rod", &over, OnClub::of(&[Role::Shaft]), None);
    assert!(matches!(refused, Err(EstimationError::NothingHangs { .. })), "{refused:?}");
    Ok(())
}

/// A timed swing tells the inertia: of a club whose head may weigh anything, a period known to one in a thousand leaves the inertia
/// known to about two in a thousand, as dI/I = 2 dT/T + dM/M, with the moment M known by the swing weight.
#[test]
fn a_period_and_a_swing_weight_tell_the_inertia() -> Tested {
    let club = Club::new("c", 37.0)
        .with_piece(Piece::new(Role::Head, Prior::new(260.0, 9.0), Prior::new(37.1, 0.25)))
        .with_piece(Piece::new(Role::Shaft, Prior::new(110.0, 20.0), Prior::new(18.0, 0.9)))
        .with_piece(Piece::new(Role::Grip, Prior::new(50.0, 7.0), Prior::new(4.0, 0.35)).from_grip_cap());
    let on = OnClub::of(&[Role::Head, Role::Shaft, Role::Grip]);
    let period = Quantity::SwingPeriod { pivot_in: 0.0, gravity_in_s2: 386.089 };
    let model = JobModel { clubs: vec![club], ..JobModel::default() };
    let read = |quantity: &Quantity, sd: f64| {
        let value = model.solve(&[])?.forecast("c", quantity, on, None)?.mean;
        Ok::<_, EstimationError>(
            Observation::new(format!("{quantity:?}"), quantity.clone(), value, sd).of_club("c", on),
        )
    };
    let (weighed, balanced) = (read(&Quantity::TotalMass, 0.1)?, read(&Quantity::SwingWeight, 0.1)?);
    let timed = read(&period, 0.001 * 1.88)?;
    let share = |read: &[Observation]| {
        let found = model.solve(read)?.forecast("c", &Quantity::Inertia, on, None)?;
        Ok::<_, EstimationError>(found.sd / found.mean)
    };
    let (before, after) = (share(&[weighed.clone(), balanced.clone()])?, share(&[weighed, balanced, timed])?);
    assert!(before > 0.005, "{before}");
    assert!((0.001..0.0022).contains(&after), "{after}");
    Ok(())
}
