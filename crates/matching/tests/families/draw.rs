//! Days as shops have them, a family for each thing that makes a day hard. Written apart from `matching::instance`, which
//! the search was developed on: another generator of numbers, arms and masses in millimetres and grams, several models,
//! shafts whose balance point differs as well as their mass.
//!
//! Figures are those of irons, from memory; the point is the trade's 1.75 oz·in.

use std::sync::Arc;

use matching::{
    Candidate, ClubNeed, CostWeights, DayProblem, GripStillToChoose, HeadScale, JobSet, Loss, LossForm, MassTarget,
    Stock, Tip, TipFit, TipPair,
};
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64;

/// What makes a day hard, or not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Family {
    /// One model of each kind and twice as many parts as clubs.
    Ample,
    /// Three head models, two of shafts (one of them with its own blank for each number), two of grips.
    Models,
    /// Barely a head for each club; of some numbers one or two too few.
    ScarceHeads,
    /// All heads of a number, all shafts and all grips alike.
    Identical,
    /// Grips and shafts that nobody weighed: boxes that count as nominal.
    Unweighed,
    /// Shafts whose balance point scatters by 5 mm.
    Balance,
    /// Sets of 1 to 13 clubs.
    Sizes,
    /// A tray of three weights, of each fewer than there are clubs.
    FewTips,
    /// Scarce parts, and one job due far sooner than the others.
    Urgent,
    /// As `Ample`, with target masses.
    Masses,
    /// As `ScarceHeads`, with target masses.
    ScarceMasses,
    /// As `Models`, with target masses and balance points that scatter.
    ModelsMasses,
}

/// All of them.
pub const FAMILIES: [Family; 12] = [
    Family::Ample,
    Family::Models,
    Family::ScarceHeads,
    Family::Identical,
    Family::Unweighed,
    Family::Balance,
    Family::Sizes,
    Family::FewTips,
    Family::Urgent,
    Family::Masses,
    Family::ScarceMasses,
    Family::ModelsMasses,
];

/// 1.75 oz·in in g·mm.
const POINT_GMM: f64 = 1.75 * 28.349_523_125 * 25.4;
/// 14 in.
const FULCRUM_MM: f64 = 355.6;
const GRIP_ARM_MM: f64 = 105.0 - FULCRUM_MM;
/// Set sizes of `Sizes`, in turn; together 80.
const SIZES: [usize; 10] = [8, 13, 1, 10, 5, 8, 13, 3, 9, 10];

/// Heads that share a model: code of the model, nominal mass of the longest club, gram by which it is heavier.
struct HeadModel {
    nominal_g: f64,
    heads: Vec<Vec<(usize, f64)>>,
}

struct ShaftModel {
    /// Mass as cut for the longest club, and what each next club's is less, g.
    cut_g: f64,
    step_g: f64,
    /// Part, mass off nominal, balance point off nominal, and the blank's number where each number has its own.
    shafts: Vec<(usize, f64, f64, Option<usize>)>,
}

struct GripModel {
    nominal_g: f64,
    grips: Vec<(usize, f64)>,
}

struct Job {
    size: usize,
    first: usize,
    head: usize,
    shaft: usize,
    grip: usize,
    longer_mm: f64,
    light_points: f64,
    loss: Loss,
    off_mass_g: f64,
}

fn gauss(rng: &mut Pcg64, sd: f64) -> f64 {
    // Irwin and Hall: the sum of twelve has the variance of one.
    sd * ((0..12).map(|_| rng.random_range(0.0..1.0)).sum::<f64>() - 6.0)
}

fn tenth(x: f64) -> f64 {
    (x * 10.0).round() / 10.0
}

/// A day of `jobs` jobs, eight clubs each on average. The same seed gives the same day on every machine.
pub fn draw(family: Family, jobs: usize, seed: u64) -> DayProblem {
    let mut rng = Pcg64::seed_from_u64(seed ^ 0x5e7a_0000);
    let several = matches!(family, Family::Models | Family::ModelsMasses);
    let masses = matches!(family, Family::Masses | Family::ScarceMasses | Family::ModelsMasses);
    let scarce = matches!(family, Family::ScarceHeads | Family::ScarceMasses | Family::Urgent);
    let balance = several || matches!(family, Family::Balance);
    let (head_models, shaft_models, grip_models) = if several { (3, 2, 2) } else { (1, 1, 1) };
    let made: Vec<Job> = (0..jobs)
        .map(|j| {
            let size = if family == Family::Sizes { SIZES[j % SIZES.len()] } else { 8 };
            let tolerance_points = [0.3, 0.4, 0.5][rng.random_range(0..3)];
            let loss = if rng.random_range(0..3) == 0 {
                Loss::from_sigma(rng.random_range(0.1..0.16), tolerance_points, LossForm::Yield)
            } else {
                let club = GripStillToChoose {
                    tolerance_points,
                    sigma_learned_points: 0.16,
                    sigma_rest_points: 0.13,
                    grip_spread_points: 0.24,
                    spare_grips: rng.random_range(2..9),
                };
                Loss::from_spare_grips(&club, LossForm::Yield)
            };
            Job {
                size,
                first: rng.random_range(0..=13 - size.max(8)).min(13 - size),
                head: rng.random_range(0..head_models),
                shaft: rng.random_range(0..shaft_models),
                grip: rng.random_range(0..grip_models),
                longer_mm: 6.35 * f64::from(rng.random_range(-2..3)),
                light_points: rng.random_range(0.5..4.0),
                loss: loss.expect("figures in range"),
                off_mass_g: rng.random_range(-1.5..3.0),
            }
        })
        .collect();
    let mut stock = Stock::default();
    let alike = family == Family::Identical;
    let heads: Vec<HeadModel> = (0..head_models)
        .map(|m| {
            let nominal_g = 243.0 + 2.0 * m as f64;
            let spread_g = rng.random_range(1.0..1.6);
            let heads = (0..13)
                .map(|number| {
                    let of_it = |job: &&Job| job.head == m && (job.first..job.first + job.size).contains(&number);
                    let wanted = made.iter().filter(of_it).count();
                    let there = if scarce {
                        // One number in four is one or two short, the others have one or two to spare.
                        let off = if rng.random_range(0..4) == 0 { -1_i64 } else { 1 } * rng.random_range(1..3);
                        wanted.saturating_add_signed(off as isize)
                    } else {
                        2 * wanted + 4
                    };
                    let mass = |rng: &mut Pcg64| if alike { 0.0 } else { gauss(rng, spread_g) };
                    let own: Vec<(usize, f64)> = (0..there)
                        .map(|i| (stock.heads.len() + i, tenth(nominal_g + 7.0 * number as f64 + mass(&mut rng))))
                        .collect();
                    stock.heads.extend(vec![1; there]);
                    own
                })
                .collect();
            HeadModel { nominal_g, heads }
        })
        .collect();
    let clubs: usize = made.iter().map(|job| job.size).sum();
    let boxed = family == Family::Unweighed;
    let shafts: Vec<ShaftModel> = (0..shaft_models)
        .map(|m| {
            let of_it = |job: &&Job| job.shaft == m;
            let wanted: usize = made.iter().filter(of_it).map(|job| job.size).sum();
            let there = match () {
                () if alike => clubs + 5,
                () if scarce => wanted + 8,
                () => 2 * wanted + 10,
            };
            let from = stock.shafts.len();
            let shafts = (0..there)
                .map(|i| {
                    // Every third shaft of an unweighed box is weighed all the same.
                    let nominal = alike || (boxed && i % 3 != 0);
                    let off_g = if nominal { 0.0 } else { tenth(gauss(&mut rng, 1.1)) };
                    let off_mm = if balance && !nominal { gauss(&mut rng, 5.0).round() } else { 0.0 };
                    (from + i, off_g, off_mm, (m == 1).then_some(i % 13))
                })
                .collect();
            stock.shafts.extend(vec![1; there]);
            ShaftModel { cut_g: 96.0 + 14.0 * m as f64, step_g: 1.4, shafts }
        })
        .collect();
    let grips: Vec<GripModel> = (0..grip_models)
        .map(|m| {
            let nominal_g = 47.5 + 4.5 * m as f64;
            let from = stock.grips.len();
            let grips: Vec<(usize, f64)> = if boxed {
                stock.grips.push(u32::try_from(clubs).expect("few clubs") + 20);
                vec![(from, nominal_g)]
            } else {
                let wanted: usize = made.iter().filter(|job| job.grip == m).map(|job| job.size).sum();
                let there = if scarce { wanted + 10 } else { 3 * wanted / 2 + 10 };
                stock.grips.extend(vec![1; there]);
                let mass = |rng: &mut Pcg64| if alike { 0.0 } else { tenth(gauss(rng, 1.2)) };
                (0..there).map(|i| (from + i, nominal_g + mass(&mut rng))).collect()
            };
            GripModel { nominal_g, grips }
        })
        .collect();
    let tray: &[f64] = if family == Family::FewTips { &[2.0, 4.0, 7.0] } else { &[2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0] };
    let each = if family == Family::FewTips { clubs / 5 } else { clubs / 2 + 2 };
    stock.tips = tray.iter().map(|&grams| Tip { grams, count: u32::try_from(each).expect("few clubs") }).collect();
    let pairs: Vec<TipPair> = (0..tray.len())
        .flat_map(|lower| (lower..tray.len()).map(move |upper| (lower, upper)))
        .filter(|&(lower, upper)| tray[lower] + tray[upper] <= 9.0)
        // The upper one lies some 12 mm farther up.
        .map(|(lower, upper)| TipPair { lower, upper, lost_points: 12.0 * tray[upper] / POINT_GMM })
        .collect();
    let pairs: Arc<[TipPair]> = pairs.into();
    let sets = made
        .iter()
        .enumerate()
        .map(|(j, job)| {
            let clubs = (job.first..job.first + job.size)
                .map(|number| {
                    let off = 0.2 * gauss(&mut rng, 1.0);
                    let models = (&heads[job.head], &shafts[job.shaft], &grips[job.grip]);
                    club(job, number, off, models, &stock, &pairs, masses)
                })
                .collect();
            let priority =
                if family == Family::Urgent && j != 0 { 1.0 } else { 1.0 + f64::from(family == Family::Urgent) };
            JobSet { clubs, priority }
        })
        .collect();
    let weights = CostWeights { second_tip: 0.002, mass_per_g: 0.002, ..CostWeights::default() };
    DayProblem { sets, stock, weights }
}

fn club(
    job: &Job,
    number: usize,
    off_points: f64,
    (head, shaft, grip): (&HeadModel, &ShaftModel, &GripModel),
    stock: &Stock,
    pairs: &Arc<[TipPair]>,
    masses: bool,
) -> ClubNeed {
    let length_mm = 990.0 - 12.7 * number as f64 + job.longer_mm;
    let points_per_g = |arm_mm: f64| (arm_mm - FULCRUM_MM) / POINT_GMM;
    let per_head_g = points_per_g(length_mm - 4.0);
    let head_nominal_g = head.nominal_g + 7.0 * number as f64;
    let per_grip_g = GRIP_ARM_MM / POINT_GMM;
    // A gram of cut steel is 9 mm.
    let shaft_nominal_g = tenth(shaft.cut_g - shaft.step_g * number as f64 + job.longer_mm / 9.0);
    let balance_mm = 0.53 * length_mm;
    let shaft_points = |mass_g: f64, balance_mm: f64| mass_g * points_per_g(balance_mm);
    let nominal_points = shaft_points(shaft_nominal_g, balance_mm);
    let shafts = shaft.shafts.iter().filter_map(|&(part, off_g, off_mm, blank)| {
        // Of shafts with a blank for each number the neighbour's does too, at a cost.
        let apart = blank.map_or(0, |blank| blank.abs_diff(number));
        let mass_g = shaft_nominal_g + off_g;
        let points = shaft_points(mass_g, balance_mm + off_mm) - nominal_points;
        (apart < 2).then_some(Candidate { part, points, mass_g, extra_cost: 0.5 * apart as f64 })
    });
    let heads = head.heads[number].iter();
    // A head of which there is no other within a gram is kept back.
    let rare = |mass_g: f64| {
        let near = head.heads[number].iter().filter(|x| (x.1 - mass_g).abs() <= 1.0).count();
        0.002 / near.min(3) as f64 * f64::from(near < 3)
    };
    let heads = heads.map(|&(part, mass_g)| Candidate {
        part,
        points: per_head_g * (mass_g - head_nominal_g),
        mass_g,
        extra_cost: rare(mass_g),
    });
    let grips = grip.grips.iter().map(|&(part, mass_g)| Candidate {
        part,
        points: per_grip_g * (mass_g - grip.nominal_g),
        mass_g,
        extra_cost: 0.001 * f64::from((mass_g - grip.nominal_g).abs() > 2.0),
    });
    let target_g = head_nominal_g + shaft_nominal_g + grip.nominal_g + job.off_mass_g;
    ClubNeed {
        base_points: off_points - job.light_points,
        heads: heads.collect(),
        shafts: shafts.collect(),
        grips: grips.collect(),
        adapters: None,
        tips: (0..stock.tips.len())
            .map(|tip| TipFit { tip, points: stock.tips[tip].grams * points_per_g(length_mm - 40.0) })
            .collect(),
        tip_cap_g: 9.0,
        tip_pairs: Arc::clone(pairs),
        shaft_nominal_g,
        mass_target: masses.then_some(MassTarget { base_mass_g: 0.0, target_g }),
        head_scale: Some(HeadScale { points_per_g: per_head_g, zero_mass_g: head_nominal_g }),
        loss: job.loss.clone(),
    }
}
