//! Goal: the belief of a whole job and the general conditioning against numpy and scipy. Method: `reference/job.py`
//! and `reference/conditioning.py` (run with `python job.py`, numpy 2.4.6, scipy 1.17.1) were written from the model
//! alone; they minimise with a general optimiser and differentiate by differences. Their output stands below.

use estimation::gls::{Gaussian, Noise, fit};
use estimation::{
    Club, EstimationError, JobModel, Observation, OnClub, Piece, Prior, Probe, Quantity, Role, ScalePrior, SharedPrior,
};

fn close(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found} instead of {expected} ± {tolerance}");
}

fn club(key: &str, head_g: f64, shaft: (f64, f64), length_in: f64, wraps: f64, grip_g: f64) -> Club {
    Club::new(key, length_in)
        .with_length_sd(0.03)
        .with_cap(Prior::new(0.12, 0.006).with_shared("cap"))
        .with_piece(
            Piece::new(Role::Head, Prior::new(head_g, 0.1), Prior::known(length_in + 0.1).with_shared("delta"))
                .moving_with_length(),
        )
        .with_piece(Piece::new(Role::Shaft, Prior::new(shaft.0, 0.2), Prior::new(shaft.1, 0.06)))
        .with_piece(
            Piece::new(Role::Adhesive, Prior::new(2.0, 0.25).with_shared("glue"), Prior::known(length_in - 0.6))
                .moving_with_length(),
        )
        // In the reference the tape lies 5.2 in from the shaft's butt and the grip's centre 4 in from its cap.
        .with_piece(Piece::new(
            Role::Tape,
            Prior::new(1.6 * wraps, 0.2).with_shared_gain("tape", wraps),
            Prior::known(5.2),
        ))
        .with_piece(
            Piece::new(Role::Grip, Prior::new(grip_g, 0.1), Prior::new(4.0, 0.03).with_shared("centre"))
                .from_grip_cap(),
        )
}

fn job() -> JobModel {
    let mut bench = ScalePrior::new("bench").offset_sd(0.2).gain_sd(0.004).noise_sd(0.06).resolution(0.1);
    bench.fulcrum_sd_in = 0.0;
    JobModel {
        clubs: vec![club("b", 269.0, (110.5, 17.1), 36.0, 2.0, 48.5), club("a", 262.0, (112.0, 17.4), 36.5, 1.0, 50.0)],
        shared: vec![
            SharedPrior::new("delta", 0.12),
            SharedPrior::new("glue", 0.4),
            SharedPrior::new("tape", 0.35),
            SharedPrior::new("centre", 0.1),
            SharedPrior::new("cap", 0.02),
        ],
        scales: vec![bench],
        joint: Vec::new(),
    }
}

const DRY: [Role; 2] = [Role::Head, Role::Shaft];
const GLUED: [Role; 3] = [Role::Head, Role::Shaft, Role::Adhesive];
const FINISHED: [Role; 5] = [Role::Head, Role::Shaft, Role::Adhesive, Role::Tape, Role::Grip];

fn readings() -> Vec<Observation> {
    let swing_weight = |id: &str, club: &str, on: &[Role], value: f64| {
        Observation::new(id, Quantity::SwingWeight, value, 0.06)
            .of_club(club, OnClub::of(on))
            .on_scale("bench")
            .rounded_to(0.1)
    };
    let check = Quantity::CheckWeight { true_points: 30.0, mass_g: 400.0, shared: None };
    vec![
        swing_weight("1", "a", &DRY, 34.10),
        swing_weight("2", "a", &GLUED, 35.02),
        swing_weight("3", "a", &FINISHED, 25.31),
        swing_weight("4", "b", &DRY, 35.46),
        swing_weight("5", "b", &DRY, 35.62),
        Observation::new("6", Quantity::PartMass(Role::Head), 261.9, 0.05).of_club("a", OnClub::NONE),
        Observation::new("7", check, 30.05, 0.03).on_scale("bench"),
    ]
}

/// Tolerance: the reference prints nine decimals and differentiates by differences of 1e-4.
#[test]
fn val_whole_job_against_scipy() -> Result<(), EstimationError> {
    let belief = job().solve(&readings())?;
    let finished = OnClub::of(&FINISHED);
    let ask = |club: &str, on: &[Role]| Probe::of_club(club, Quantity::SwingWeight, OnClub::of(on));
    for (what, probe, mean, sd) in [
        ("a finished", ask("a", &FINISHED), 25.285_583_460, 0.070_136_972),
        ("b finished", ask("b", &FINISHED), 26.654_687_380, 0.205_861_960),
        ("b glued", ask("b", &GLUED), 36.279_079_173, 0.163_492_516),
        ("b finished as shown", ask("b", &FINISHED).on_scale("bench"), 26.702_659_583, 0.203_817_554),
    ] {
        let forecast = belief.answer(&probe)?;
        close(what, forecast.mean, mean, 2e-7);
        close(what, forecast.sd, sd, 2e-7);
    }
    for (key, mean, sd) in
        [("delta", -0.015_393_799, 0.028_802_769), ("scale:bench:offset", -0.012_199_747, 0.184_710_191)]
    {
        let marginal = belief.marginal(key)?;
        close(key, marginal.mean, mean, 2e-7);
        close(key, marginal.sd, sd, 2e-7);
    }
    let (a, b) = (belief.gradient(&ask("a", &FINISHED))?, belief.gradient(&ask("b", &FINISHED))?);
    close("covariance", a.covariance(&b), 0.004_727_292_5, 1e-8);
    close("chi-square", belief.chi_square(), 34.787_469_43, 1e-6);
    close("log evidence", belief.log_evidence(), -14.082_888_70, 1e-5);
    // What the display will show next adds its noise and its rounding.
    let shown = belief.forecast("b", &Quantity::SwingWeight, finished, Some("bench"))?;
    close("next display", shown.sd.powi(2), 0.203_817_554_f64.powi(2) + 0.06_f64.powi(2) + 0.01 / 12.0, 1e-7);
    Ok(())
}

/// Tolerance: twelve decimals are printed.
#[test]
fn val_conditioning_against_numpy() -> Result<(), EstimationError> {
    let rows = |m: &[&[f64]]| m.iter().map(|row| row.to_vec()).collect::<Vec<_>>();
    let prior = Gaussian {
        mean: vec![1.0, -2.0, 0.5],
        covariance: rows(&[&[2.0, 0.5, 0.1], &[0.5, 1.0, -0.3], &[0.1, -0.3, 0.7]]),
    };
    let design = rows(&[&[1.0, 1.0, 0.0], &[0.0, 2.0, -1.0]]);
    let noise = rows(&[&[0.09, 0.02], &[0.02, 0.16]]);
    let after = prior.given(&design, &noise, &[-0.4, -3.9])?;
    let mean = [1.328071027259, -1.739432614275, 0.429291808282];
    let covariance = [
        [0.148165360338, -0.077741555109, -0.123992508844],
        [-0.077741555109, 0.094603592981, 0.136075466463],
        [-0.123992508844, 0.136075466463, 0.319886245405],
    ];
    for i in 0..3 {
        close("mean", after.mean[i], mean[i], 2e-12);
        for (found, expected) in after.covariance[i].iter().zip(covariance[i]) {
            close("covariance", *found, expected, 2e-12);
        }
    }
    // Conditioning is least squares with the prior as readings of the unknowns themselves.
    let stacked = rows(&[&[1.0, 0.0, 0.0], &[0.0, 1.0, 0.0], &[0.0, 0.0, 1.0], &[1.0, 1.0, 0.0], &[0.0, 2.0, -1.0]]);
    let whole = rows(&[
        &[2.0, 0.5, 0.1, 0.0, 0.0],
        &[0.5, 1.0, -0.3, 0.0, 0.0],
        &[0.1, -0.3, 0.7, 0.0, 0.0],
        &[0.0, 0.0, 0.0, 0.09, 0.02],
        &[0.0, 0.0, 0.0, 0.02, 0.16],
    ]);
    let squares = fit(&stacked, &[1.0, -2.0, 0.5, -0.4, -3.9], Noise::Covariance(&whole))?;
    for i in 0..3 {
        close("least squares", squares.coefficients[i], mean[i], 2e-12);
        for (found, expected) in squares.covariance[i].iter().zip(covariance[i]) {
            close("least squares, covariance", *found, expected, 2e-12);
        }
    }
    Ok(())
}

/// A line with correlated noise; same script, same tolerance.
#[test]
fn val_line_with_correlated_noise_against_numpy() -> Result<(), EstimationError> {
    let x = [0.0_f64, 1.0, 2.0, 3.0, 5.0];
    let design: Vec<Vec<f64>> = x.iter().map(|x| vec![1.0, *x]).collect();
    let noise: Vec<Vec<f64>> =
        x.iter().map(|a| x.iter().map(|b| 0.04 * (-(a - b).abs() / 2.0).exp()).collect()).collect();
    let line = fit(&design, &[1.02, 1.48, 2.11, 2.57, 3.49], Noise::Covariance(&noise))?;
    close("intercept", line.coefficients[0], 1.034880413139, 2e-12);
    close("slope", line.coefficients[1], 0.495468334326, 2e-12);
    close("covariance", line.covariance[0][1], -0.007223043718, 2e-12);
    close("variance of the slope", line.covariance[1][1], 0.002911258057, 2e-12);
    close("residuals", line.residual_sd.unwrap_or(f64::NAN), 0.46201980491930766, 1e-12);
    Ok(())
}

/// Masses only make the job linear: the belief is then conditioning, by another code path, of explicit matrices.
#[test]
fn linear_job_is_conditioning() -> Result<(), EstimationError> {
    let club = |key: &str| {
        Club::new(key, 36.0)
            .with_piece(Piece::new(Role::Head, Prior::new(260.0, 0.5), Prior::known(36.0)))
            .with_piece(Piece::new(Role::Adhesive, Prior::new(2.0, 0.25).with_shared("glue"), Prior::known(35.0)))
    };
    let job = JobModel {
        clubs: vec![club("a"), club("b")],
        shared: vec![SharedPrior::new("glue", 0.4)],
        ..JobModel::default()
    };
    let weigh = |id: &str, club: &str, on: &[Role], value: f64| {
        Observation::new(id, Quantity::TotalMass, value, 0.1).of_club(club, OnClub::of(on))
    };
    let both = [Role::Head, Role::Adhesive];
    let belief = job.solve(&[
        weigh("1", "a", &[Role::Head], 260.7),
        weigh("2", "a", &both, 263.2),
        weigh("3", "b", &both, 262.1),
    ])?;
    // Unknowns: head a, head b, adhesive a, adhesive b.
    let g = 0.16;
    let covariance = vec![
        vec![0.25, 0.0, 0.0, 0.0],
        vec![0.0, 0.25, 0.0, 0.0],
        vec![0.0, 0.0, g + 0.0625, g],
        vec![0.0, 0.0, g, g + 0.0625],
    ];
    let prior = Gaussian { mean: vec![260.0, 260.0, 2.0, 2.0], covariance };
    let design = vec![vec![1.0, 0.0, 0.0, 0.0], vec![1.0, 0.0, 1.0, 0.0], vec![0.0, 1.0, 0.0, 1.0]];
    let noise: Vec<Vec<f64>> = (0..3).map(|i| (0..3).map(|j| if i == j { 0.01 } else { 0.0 }).collect()).collect();
    let after = prior.given(&design, &noise, &[260.7, 263.2, 262.1])?;
    for (club, role, i) in
        [("a", Role::Head, 0), ("b", Role::Head, 1), ("a", Role::Adhesive, 2), ("b", Role::Adhesive, 3)]
    {
        let found = belief.forecast(club, &Quantity::PartMass(role), OnClub::NONE, None)?;
        close("mass", found.mean, after.mean[i], 1e-11);
        close("sd of a mass", found.sd, after.covariance[i][i].sqrt(), 1e-12);
    }
    Ok(())
}
