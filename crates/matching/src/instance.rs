//! Seeded instances of a workshop's stock and jobs, for tests, benches and examples: compiled for these alone, by the
//! feature `instance`. The ranges are those of a small custom shop (derived from one point = 49.6117 g·in and arms of an
//! iron).

use std::sync::Arc;

use crate::loss::{Loss, LossForm};
use crate::model::{
    Candidate, ClubNeed, CostWeights, DayProblem, HeadScale, JobSet, MassTarget, SetProblem, Stock, Tip, TipFit,
    TipPair,
};

pub use crate::rng::Rng;

impl Rng {
    /// Gaussian by Box and Muller.
    pub fn gauss(&mut self, mean: f64, sd: f64) -> f64 {
        let u = 1.0 - self.uniform(0.0, 1.0);
        let angle = self.uniform(0.0, std::f64::consts::TAU);
        mean + sd * (-2.0 * u.ln()).sqrt() * angle.cos()
    }
}

/// Which variant of instance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Variant {
    /// One head model.
    Plain,
    /// Two head models in turn from job to job, sharing shafts and grips, the second somewhat heavier.
    TwoHeadModels,
    /// Barely as many shafts and grips as clubs, and one head number short.
    Shortage,
}

/// How large an instance is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Size {
    /// Jobs of eight clubs.
    pub jobs: usize,
    /// Heads of each number (and each head model).
    pub heads_per_number: usize,
    /// Shafts in all.
    pub shafts: usize,
    /// Grips in all.
    pub grips: usize,
}

impl Size {
    /// One set.
    pub const S: Self = Self { jobs: 1, heads_per_number: 30, shafts: 120, grips: 100 };
    /// Ten jobs.
    pub const M: Self = Self { jobs: 10, heads_per_number: 60, shafts: 600, grips: 500 };
    /// Forty jobs.
    pub const L: Self = Self { jobs: 40, heads_per_number: 120, shafts: 2000, grips: 1600 };
    /// One set against a hundred thousand parts.
    pub const HUNDRED_THOUSAND: Self = Self { jobs: 1, heads_per_number: 7900, shafts: 21_000, grips: 15_800 };
}

/// Clubs of a set.
pub const CLUBS: usize = 8;
const POINT_G_IN: f64 = 49.6117;
const FULCRUM_IN: f64 = 14.0;
const GRIP_G: f64 = 50.0;

fn tenth(x: f64) -> f64 {
    (x * 10.0).round() / 10.0
}

/// Draws an instance, read to 0.1 g. The same seed gives the same instance.
pub fn day(seed: u64, size: Size, variant: Variant) -> DayProblem {
    draw(seed, size, variant, tenth)
}

/// As [`day`], the parts read without rounding, so that no two are alike.
pub fn unrounded(seed: u64, size: Size, variant: Variant) -> DayProblem {
    draw(seed, size, variant, |g| g)
}

/// Gives every club of an instance a target mass so many grams above that of its nominal parts.
pub fn with_target_masses(problem: &mut DayProblem, above_g: f64) {
    for club in problem.sets.iter_mut().flat_map(|s| &mut s.clubs) {
        let head_g = club.head_scale.map_or(0.0, |scale| scale.zero_mass_g);
        let target_g = head_g + club.shaft_nominal_g + GRIP_G + above_g;
        club.mass_target = Some(MassTarget { base_mass_g: 0.0, target_g });
    }
}

fn draw(seed: u64, size: Size, variant: Variant, read: fn(f64) -> f64) -> DayProblem {
    let mut rng = Rng::new(seed);
    let models = if variant == Variant::TwoHeadModels { 2 } else { 1 };
    let (shaft_count, grip_count) = if variant == Variant::Shortage {
        (size.jobs * CLUBS + 2, size.jobs * CLUBS + 2)
    } else {
        (size.shafts, size.grips)
    };
    let spread = rng.uniform(1.0, 1.5);
    let tolerance = rng.uniform(0.3, 0.5);
    let loss = Loss::from_sigma(0.12, tolerance, LossForm::Yield).expect("fixed figures are in range");
    // Head masses by model and number, and shaft and grip masses, as the scale shows them.
    let mut heads: Vec<Vec<(usize, f64)>> = Vec::new();
    let mut stock = Stock::default();
    for model in 0..models {
        for number in 0..CLUBS {
            let short = variant == Variant::Shortage && number == 2;
            let count = if short { size.jobs.saturating_sub(1).max(1) } else { size.heads_per_number };
            let nominal = 250.0 + 7.0 * number as f64 + 1.5 * model as f64;
            let masses = (0..count).map(|i| (stock.heads.len() + i, read(rng.gauss(nominal, spread)))).collect();
            stock.heads.extend(std::iter::repeat_n(1, count));
            heads.push(masses);
        }
    }
    let shafts: Vec<f64> = (0..shaft_count).map(|_| read(rng.gauss(0.0, 1.0))).collect();
    let grips: Vec<f64> = (0..grip_count).map(|_| read(rng.gauss(GRIP_G, 1.2))).collect();
    stock.shafts = vec![1; shaft_count];
    stock.grips = vec![1; grip_count];
    stock.tips =
        [2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0].map(|grams| Tip { grams, count: (3 * size.jobs + 3) as u32 }).to_vec();
    let pairs = all_pairs(stock.tips.len());
    let sets = (0..size.jobs)
        .map(|job| {
            let lengthened = 0.25 * rng.below(5) as f64 - 0.5;
            let light = rng.uniform(0.6, 4.4);
            let draw =
                Draw { heads: &heads, shafts: &shafts, grips: &grips, loss: &loss, stock: &stock, pairs: &pairs };
            let model = job % models;
            let clubs = (0..CLUBS).map(|n| draw.club(n, model, lengthened, light + rng.gauss(0.0, 0.3))).collect();
            JobSet { clubs, priority: 1.0 }
        })
        .collect();
    DayProblem { sets, stock, weights: CostWeights::default() }
}

/// One set on its own stock.
pub fn set(seed: u64, variant: Variant) -> SetProblem {
    first_set(day(seed, Size::S, variant))
}

/// The first set of an instance on the whole stock.
pub fn first_set(day: DayProblem) -> SetProblem {
    let DayProblem { mut sets, stock, weights } = day;
    SetProblem { clubs: sets.swap_remove(0).clubs, stock, weights }
}

/// All pairs of weights from a tray with this many compartments. Stacking costs none of them any swing weight.
pub fn all_pairs(compartments: usize) -> Arc<[TipPair]> {
    let upper = |lower: usize| (lower..compartments).map(move |upper| TipPair { lower, upper, lost_points: 0.0 });
    (0..compartments).flat_map(upper).collect()
}

struct Draw<'a> {
    heads: &'a [Vec<(usize, f64)>],
    shafts: &'a [f64],
    grips: &'a [f64],
    loss: &'a Loss,
    stock: &'a Stock,
    pairs: &'a Arc<[TipPair]>,
}

impl Draw<'_> {
    /// A club whose head of nominal mass is `light` points light with a nominal shaft and grip.
    fn club(&self, number: usize, model: usize, lengthened: f64, light: f64) -> ClubNeed {
        let length_in = 38.5 - 0.5 * number as f64 + lengthened;
        let per_head_g = (length_in - FULCRUM_IN) / POINT_G_IN;
        let per_tip_g = (length_in - 1.5 - FULCRUM_IN) / POINT_G_IN;
        // The cut shaft balances a little past half its length.
        let per_shaft_g = (0.54 * length_in - FULCRUM_IN) / POINT_G_IN;
        let per_grip_g = (4.0 - FULCRUM_IN) / POINT_G_IN;
        let nominal = 250.0 + 7.0 * number as f64;
        let shaft_nominal_g = tenth(118.0 - 1.7 * number as f64 + 1.5 * lengthened);
        let candidate = |part: usize, points: f64, mass_g: f64| Candidate { part, points, mass_g, extra_cost: 0.0 };
        let heads = &self.heads[model * CLUBS + number];
        ClubNeed {
            base_points: -light,
            heads: heads.iter().map(|&(i, m)| candidate(i, per_head_g * (m - nominal), m)).collect(),
            shafts: self
                .shafts
                .iter()
                .enumerate()
                .map(|(i, &m)| candidate(i, per_shaft_g * m, shaft_nominal_g + m))
                .collect(),
            grips: self.grips.iter().enumerate().map(|(i, &m)| candidate(i, per_grip_g * (m - GRIP_G), m)).collect(),
            adapters: None,
            tips: self
                .stock
                .tips
                .iter()
                .enumerate()
                .map(|(tip, t)| TipFit { tip, points: per_tip_g * t.grams })
                .collect(),
            tip_cap_g: 9.0,
            tip_pairs: self.pairs.clone(),
            shaft_nominal_g,
            mass_target: None,
            head_scale: Some(HeadScale { points_per_g: per_head_g, zero_mass_g: nominal }),
            loss: self.loss.clone(),
        }
    }
}
