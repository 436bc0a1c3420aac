//! An invented workshop, twice: as priors for the belief, and as a simulator that draws the truth from the same
//! distributions and computes swing weights in its own way (ounces and inches).

use estimation::{Club, JobModel, Observation, OnClub, Piece, Prior, Quantity, Role, ScalePrior, SharedPrior};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;

pub const DRY: [Role; 3] = [Role::Head, Role::Shaft, Role::Ferrule];
pub const WEIGHTED: [Role; 4] = [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight];
pub const GLUED: [Role; 5] = [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive];
pub const FINISHED: [Role; 7] =
    [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Tape, Role::Grip];

/// Standard deviations of the workshop.
pub const DELTA: f64 = 0.12;
pub const GLUE: (f64, f64) = (0.4, 0.25);
pub const TAPE: (f64, f64) = (0.35, 0.2);
pub const CENTRE: (f64, f64) = (0.1, 0.03);
pub const CAP: (f64, f64) = (0.02, 0.006);
pub const OFFSET: f64 = 0.2;
pub const GAIN: f64 = 0.0005;
pub const NOISE: f64 = 0.06;
pub const STEP: f64 = 0.1;

pub fn key(i: usize) -> String {
    format!("club-{i:02}")
}

fn wraps(i: usize) -> f64 {
    1.0 + (i % 2) as f64
}

fn nominal(i: usize) -> (f64, f64, f64, f64) {
    let n = i as f64;
    let length_in = 38.0 - 0.5 * n;
    (244.0 + 7.0 * n, length_in, 112.0 - 1.3 * n, 0.475 * length_in)
}

/// What the belief is told.
pub fn job(clubs: usize) -> JobModel {
    let club = |i: usize| {
        let (head_g, length_in, shaft_g, shaft_arm_in) = nominal(i);
        let arm = |mean: f64| Prior::known(mean);
        Club::new(key(i), length_in)
            .with_length_sd(0.03)
            .with_cap(Prior::new(0.12, CAP.1).with_shared("cap:soft"))
            .with_target(30.0, 0.3)
            .with_piece(
                Piece::new(Role::Head, Prior::new(head_g, 0.1), arm(length_in + 0.1).with_shared("delta:blade"))
                    .moving_with_length(),
            )
            .with_piece(Piece::new(Role::Shaft, Prior::new(shaft_g, 0.2), Prior::new(shaft_arm_in, 0.06)))
            .with_piece(Piece::new(Role::Ferrule, Prior::new(1.5, 0.1), arm(length_in - 1.5)).moving_with_length())
            .with_piece(Piece::new(Role::TipWeight, Prior::new(4.0, 0.05), arm(length_in - 0.9)).moving_with_length())
            .with_piece(
                Piece::new(Role::Adhesive, Prior::new(2.0, GLUE.1).with_shared("adhesive:mix"), arm(length_in - 0.6))
                    .moving_with_length(),
            )
            .with_piece(Piece::new(
                Role::Tape,
                Prior::new(1.6 * wraps(i), TAPE.1).with_shared_gain("tape:roll", wraps(i)),
                arm(5.2),
            ))
            .with_piece(
                Piece::new(Role::Grip, Prior::new(50.0, 0.1), Prior::new(4.0, CENTRE.1).with_shared("centre:soft"))
                    .from_grip_cap(),
            )
    };
    JobModel {
        clubs: (0..clubs).map(club).collect(),
        shared: vec![
            SharedPrior::new("delta:blade", DELTA),
            SharedPrior::new("adhesive:mix", GLUE.0),
            SharedPrior::new("tape:roll", TAPE.0),
            SharedPrior::new("centre:soft", CENTRE.0),
            SharedPrior::new("cap:soft", CAP.0),
        ],
        scales: vec![ScalePrior::new("bench").offset_sd(OFFSET).gain_sd(GAIN).noise_sd(NOISE).resolution(STEP)],
        joint: Vec::new(),
    }
}

pub fn rng(seed: u64) -> Pcg64 {
    Pcg64::seed_from_u64(seed)
}

/// A standard normal number (Box and Muller).
pub fn normal(rng: &mut Pcg64) -> f64 {
    let (u, v): (f64, f64) = (1.0 - rng.random::<f64>(), rng.random());
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

/// The truth about one club: (mass in grams, distance from the shaft's butt in inches) of its pieces.
pub struct TrueClub {
    pub pieces: Vec<(Role, f64, f64)>,
    pub cap_in: f64,
    pub length_in: f64,
}

/// The truth about a job.
pub struct Truth {
    pub clubs: Vec<TrueClub>,
    pub offset: f64,
    pub gain: f64,
}

impl Truth {
    pub fn draw(rng: &mut Pcg64, clubs: usize) -> Self {
        let delta = DELTA * normal(rng);
        let glue = GLUE.0 * normal(rng);
        let tape = TAPE.0 * normal(rng);
        let centre = CENTRE.0 * normal(rng);
        let cap = CAP.0 * normal(rng);
        let (offset, gain) = (OFFSET * normal(rng), GAIN * normal(rng));
        let clubs = (0..clubs)
            .map(|i| {
                let (head_g, planned_in, shaft_g, shaft_arm_in) = nominal(i);
                let length_in = planned_in + 0.03 * normal(rng);
                let cap_in = 0.12 + cap + CAP.1 * normal(rng);
                let pieces = vec![
                    (Role::Head, head_g + 0.1 * normal(rng), length_in + 0.1 + delta),
                    (Role::Shaft, shaft_g + 0.2 * normal(rng), shaft_arm_in + 0.06 * normal(rng)),
                    (Role::Ferrule, 1.5 + 0.1 * normal(rng), length_in - 1.5),
                    (Role::TipWeight, 4.0 + 0.05 * normal(rng), length_in - 0.9),
                    (Role::Adhesive, 2.0 + glue + GLUE.1 * normal(rng), length_in - 0.6),
                    (Role::Tape, wraps(i) * (1.6 + tape) + TAPE.1 * normal(rng), 5.2),
                    (Role::Grip, 50.0 + 0.1 * normal(rng), 4.0 + centre + CENTRE.1 * normal(rng) - cap_in),
                ];
                TrueClub { pieces, cap_in, length_in }
            })
            .collect();
        Self { clubs, offset, gain }
    }

    /// True swing weight in points, by way of ounce-inches about a fulcrum 14 in from the stop.
    pub fn swing_weight(&self, club: usize, on: &[Role]) -> f64 {
        let club = &self.clubs[club];
        let shift_in = if on.contains(&Role::Grip) { club.cap_in } else { 0.0 };
        let moment_oz_in: f64 = club
            .pieces
            .iter()
            .filter(|(role, ..)| on.contains(role))
            .map(|(_, mass_g, arm_in)| mass_g / 28.349523125 * (arm_in + shift_in - 14.0))
            .sum();
        (moment_oz_in - 161.0) / 1.75
    }

    /// What the bench shows, by way of the moment that it weighs.
    pub fn shown(&self, rng: &mut Pcg64, club: usize, on: &[Role]) -> f64 {
        let moment_oz_in = self.swing_weight(club, on) * 1.75 + 161.0;
        let shown = (moment_oz_in * (1.0 + self.gain) - 161.0) / 1.75 + self.offset + NOISE * normal(rng);
        (shown / STEP).round() * STEP
    }
}

/// A swing weight reading of the bench.
pub fn swing_weight(id: &str, club: usize, on: &[Role], value: f64) -> Observation {
    Observation::new(id, Quantity::SwingWeight, value, NOISE)
        .of_club(key(club), OnClub::of(on))
        .on_scale("bench")
        .rounded_to(STEP)
}
