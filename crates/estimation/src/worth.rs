//! What measurements and an order of work are worth before any of them is made: clubs of a set expected in tolerance.
//!
//! Covariances do not depend on what readings will show. So a plan of measurements and an order of work is valued by
//! covariances alone: each planned reading is a rank-one step. With `a` the gradient of a club's finish against its target,
//! `v₁ = aᵀPa` when its weight for the tip is chosen and `v₂ = aᵀPa` when its grip is chosen, `σ_r² = v₂` stays unknown and
//! `σ_e² = v₁ − v₂` is told in between. Weights of a tray come in steps of `h` points, so that the best of them leaves a
//! rest that is uniform over ±h/2; then the nearest of `K` grips is taken, whose effects scatter by `s` (derived):
//!
//! ```text
//! P = ∫ p(D)·[Φ((D+h/2)/σ_e) − Φ((D−h/2)/σ_e)]/h dD
//! p(D) = ∫₀^∞ [φ((τ−x)/σ_r) − φ((τ+x)/σ_r)]/σ_r · {1 − [1 − Φ((D+x)/s) + Φ((D−x)/s)]^K} dx
//! ```

use crate::belief::Belief;
use crate::error::EstimationError as E;
use crate::normal;
use crate::reading::Probe;

/// Abscissas and weights of the Gauss–Legendre rule with eight points on −1 … 1 (computed with numpy's `leggauss(8)`).
const LEGENDRE: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_3),
];
/// Narrower than this no standard deviation is taken, points: the table's panels would not resolve it, and a tenth of a scale's
/// step cannot be told.
const LEAST_SD: f64 = 0.015;
/// Edges of the panels over the distance to the nearest grip, in tolerances: fine where a small distance is likely and about
/// the tolerance itself.
const DISTANCE_EDGES: [f64; 12] = [0.0, 0.05, 0.15, 0.35, 0.67, 1.0, 1.33, 1.67, 2.2, 3.2, 5.0, 8.0];
/// Width of the panels over the deviation, points.
const DEVIATION_PANEL: f64 = 0.22;

/// Grips of which one is still to be chosen, as a table for many questions.
///
/// # Examples
///
/// ```
/// // 60 grips that scatter by 0.2419 point, weights in steps of 0.88 point, tolerance 0.3: computed apart from this code, by
/// // quadrature with numpy.
/// let grips = estimation::worth::GripsAhead::new(60, 0.2419, 0.3);
/// assert!((grips.chance(0.30, 0.13, 0.88) - 0.9395).abs() < 5e-5);
/// ```
#[derive(Debug, Clone)]
pub struct GripsAhead {
    count: usize,
    spread_points: f64,
    tolerance_points: f64,
    /// Distances with their weights.
    distances: Vec<(f64, f64)>,
    /// Deviations with their weights, on one side of zero.
    deviations: Vec<(f64, f64)>,
    /// Chance that a grip lies within a distance of a deviation: one row a deviation.
    near: Vec<f64>,
}

impl GripsAhead {
    /// `count` grips, at least one, whose effects scatter by `spread_points`, for clubs of this tolerance.
    #[must_use]
    pub fn new(count: usize, spread_points: f64, tolerance_points: f64) -> Self {
        let ground = Ground::new(spread_points, tolerance_points);
        ground.of(count, spread_points)
    }

    /// What so many clubs find that choose from one box one after another: all of them, one less, and so on.
    #[must_use]
    pub fn one_after_another(clubs: usize, count: usize, spread_points: f64, tolerance_points: f64) -> Vec<Self> {
        let ground = Ground::new(spread_points, tolerance_points);
        (0..clubs.max(1)).map(|i| ground.of(count.saturating_sub(i), spread_points)).collect()
    }

    /// How many grips there are to choose from.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.count
    }

    /// By how much their effects scatter, points.
    #[must_use]
    pub const fn spread_points(&self) -> f64 {
        self.spread_points
    }

    /// Chance of finishing in tolerance when the weight in the tip is chosen in steps of `tray_step` points, `told_sd` is told
    /// after that, one of the grips is taken by it and `rest_sd` stays unknown. Points; a step of 0: nothing is left over by
    /// the weight.
    #[must_use]
    pub fn chance(&self, told_sd: f64, rest_sd: f64, tray_step: f64) -> f64 {
        let (told, half_step) = (told_sd.max(LEAST_SD), tray_step.max(0.0) / 2.0);
        if half_step < 1e-6 {
            return self.chance_from(0.0, told_sd, rest_sd);
        }
        // Both sides of zero are alike.
        let density = |d: f64| normal::between(d - half_step, d + half_step, 0.0, told) / half_step;
        self.over(rest_sd, density)
    }

    /// The same for a club whose weight is in already: it is expected to lie `off_points` from where the grips are on average.
    #[must_use]
    pub fn chance_from(&self, off_points: f64, told_sd: f64, rest_sd: f64) -> f64 {
        let told = told_sd.max(LEAST_SD);
        let at = |d: f64| normal::density((d - off_points) / told) / told;
        self.over(rest_sd, |d| at(d) + at(-d))
    }

    /// The double integral; `density` of a deviation on either side of zero.
    fn over(&self, rest_sd: f64, density: impl Fn(f64) -> f64) -> f64 {
        let rest = rest_sd.max(LEAST_SD);
        let tau = self.tolerance_points;
        let bump = |x: f64| (normal::density((tau - x) / rest) - normal::density((tau + x) / rest)) / rest;
        let kernel: Vec<f64> = self.distances.iter().map(|(x, weight)| weight * bump(*x)).collect();
        // Beyond the last distance a grip is always near enough.
        let far = DISTANCE_EDGES[DISTANCE_EDGES.len() - 1] * tau;
        let tail = normal::below((tau - far) / rest) - normal::below(-(tau + far) / rest);
        let mut sum = 0.0;
        for (row, (d, weight)) in self.near.chunks_exact(self.distances.len()).zip(&self.deviations) {
            let density = density(*d);
            if density > 1e-12 {
                let inside: f64 = row.iter().zip(&kernel).map(|(near, k)| near * k).sum();
                sum += weight * density * (inside + tail);
            }
        }
        sum.clamp(0.0, 1.0)
    }
}

/// What tables of one spread and tolerance have in common.
struct Ground {
    tau: f64,
    distances: Vec<(f64, f64)>,
    deviations: Vec<(f64, f64)>,
    /// Chance that one grip lies within a distance of a deviation.
    one: Vec<f64>,
}

impl Ground {
    fn new(spread_points: f64, tolerance_points: f64) -> Self {
        let tau = tolerance_points.max(LEAST_SD);
        let spread = spread_points.max(1e-6);
        let distances = nodes(DISTANCE_EDGES.iter().map(|edge| edge * tau));
        let reach = 5.0 * spread + tau + 1.5;
        let panels = (reach / DEVIATION_PANEL).ceil() as usize;
        let deviations = nodes((0..=panels).map(|i| i as f64 * DEVIATION_PANEL));
        let one = deviations
            .iter()
            .flat_map(|(d, _)| distances.iter().map(move |(x, _)| normal::between(d - x, d + x, 0.0, spread)))
            .collect();
        Self { tau, distances, deviations, one }
    }

    fn of(&self, count: usize, spread_points: f64) -> GripsAhead {
        let count = count.clamp(1, 100_000);
        GripsAhead {
            count,
            spread_points,
            tolerance_points: self.tau,
            distances: self.distances.clone(),
            deviations: self.deviations.clone(),
            near: self.one.iter().map(|one| 1.0 - (1.0 - one).powi(count as i32)).collect(),
        }
    }
}

/// Nodes and weights of a rule of eight points a panel.
fn nodes(edges: impl Iterator<Item = f64>) -> Vec<(f64, f64)> {
    let edges: Vec<f64> = edges.collect();
    let panel = |ends: &[f64]| {
        let (centre, half) = (f64::midpoint(ends[0], ends[1]), (ends[1] - ends[0]) / 2.0);
        LEGENDRE
            .into_iter()
            .flat_map(move |(x, weight)| [(centre - half * x, half * weight), (centre + half * x, half * weight)])
    };
    edges.windows(2).flat_map(panel).collect()
}

/// Covariances of some questions, that planned readings narrow.
#[derive(Debug, Clone, PartialEq)]
pub struct Covariances {
    n: usize,
    p: Vec<f64>,
}

impl Covariances {
    /// Covariances of these questions under a belief, in their order.
    ///
    /// # Errors
    /// As [`Belief::forecast`].
    pub fn of(belief: &Belief, questions: &[Probe]) -> Result<Self, E> {
        Ok(Self::from_rows(&belief.joint(questions)?.covariance))
    }

    /// The same from a symmetric matrix, one row a question.
    #[must_use]
    pub fn from_rows(rows: &[Vec<f64>]) -> Self {
        Self { n: rows.len(), p: rows.concat() }
    }

    /// These and a share of others of the same questions, entry by entry.
    #[must_use]
    pub fn mixed(mut self, other: &Self, share: f64) -> Self {
        self.p.iter_mut().zip(&other.p).for_each(|(a, b)| *a += share * (b - *a));
        self
    }

    /// Variance of the question at this place.
    #[must_use]
    pub fn variance(&self, at: usize) -> f64 {
        self.p.get(at * self.n + at).copied().unwrap_or_default().max(0.0)
    }

    /// The question at this place is read once more with this noise: one rank-one step, whatever is read.
    pub fn read(&mut self, at: usize, noise_sd: f64) {
        let total = self.variance(at) + noise_sd * noise_sd;
        if at >= self.n || total <= 0.0 {
            return;
        }
        let column: Vec<f64> = self.p[at * self.n..(at + 1) * self.n].to_vec();
        for (row, a) in self.p.chunks_exact_mut(self.n).zip(&column) {
            // Many questions have nothing to do with each other.
            if *a != 0.0 {
                let factor = a / total;
                row.iter_mut().zip(&column).for_each(|(p, b)| *p -= factor * b);
            }
        }
    }
}

/// A planned reading: the place of its question, and its noise in standard deviations.
pub type Planned = (usize, f64);

/// One club of the set, by the places of its questions.
#[derive(Debug, Clone, PartialEq)]
pub struct ClubAhead {
    /// Its finish against its target.
    pub finish: usize,
    /// What is read before its weight is chosen.
    pub before_tip: Vec<Planned>,
    /// What is read between that choice and the choice of its grip.
    pub before_grip: Vec<Planned>,
    /// What is read once its grip is on.
    pub after_grip: Vec<Planned>,
    /// Step in which the weights of the tray move it, points.
    pub tray_step_points: f64,
    /// How far the deviation already stands from where the grips are, where its weight is in already; none while it is still
    /// to be chosen.
    pub glued_off_points: Option<f64>,
    /// Place of its table among the grips.
    pub grips: usize,
}

/// In which order the grips of clubs that have cured are chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GripTurns {
    /// All at once.
    AtOnce,
    /// One first, which is read before the others are chosen.
    OneFirst,
    /// Each is read before the next is chosen.
    InTurn,
}

/// Clubs that are glued together, by their places in the set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Batch {
    /// Those that are glued.
    pub clubs: Vec<usize>,
    /// Whether their grips go on before the next batch is glued; otherwise they wait for the others.
    pub finished: bool,
}

/// Clubs of the set expected in tolerance, each by itself: extra readings first, then batch by batch.
///
/// `tables` are the grips that the i-th club to choose finds: see [`ClubAhead::grips`] for which row, and its place in the
/// order for which of them; the last counts for all beyond.
#[must_use]
pub fn chances(
    start: &Covariances,
    extra: &[Planned],
    clubs: &[ClubAhead],
    order: &[Batch],
    turns: GripTurns,
    tables: &[Vec<GripsAhead>],
) -> Vec<f64> {
    let mut course = Course { clubs, events: extra.iter().map(|planned| Event::Read(*planned)).collect() };
    let mut waiting: Vec<usize> = Vec::new();
    for batch in order {
        let of = || batch.clubs.iter().filter_map(|at| Some((*at, clubs.get(*at)?)));
        for (_, club) in of() {
            course.read(&club.before_tip);
        }
        course.events.extend(of().map(|(at, _)| Event::Tip(at)));
        for (_, club) in of() {
            course.read(&club.before_grip);
        }
        waiting.extend(of().map(|(at, _)| at));
        if batch.finished {
            course.grip(&std::mem::take(&mut waiting), turns);
        }
    }
    course.grip(&waiting, turns);
    course.run(start, tables)
}

/// One thing that happens while the clubs are built.
#[derive(Clone, Copy)]
enum Event {
    /// Something is read.
    Read(Planned),
    /// The weight in a club's tip is chosen.
    Tip(usize),
    /// A club's grip is chosen.
    Grip(usize),
}

/// All that happens, in its order.
struct Course<'a> {
    clubs: &'a [ClubAhead],
    events: Vec<Event>,
}

impl Course<'_> {
    fn read(&mut self, readings: &[Planned]) {
        self.events.extend(readings.iter().map(|planned| Event::Read(*planned)));
    }

    fn grip(&mut self, waiting: &[usize], turns: GripTurns) {
        let first = match turns {
            GripTurns::AtOnce => 0,
            GripTurns::OneFirst => 1.min(waiting.len()),
            GripTurns::InTurn => waiting.len(),
        };
        let (clubs, (in_turn, together)) = (self.clubs, waiting.split_at(first));
        for at in in_turn {
            self.events.push(Event::Grip(*at));
            self.read(&clubs[*at].after_grip);
        }
        self.events.extend(together.iter().map(|at| Event::Grip(*at)));
        for at in together {
            self.read(&clubs[*at].after_grip);
        }
    }

    /// The chance of each club.
    ///
    /// Each reading is eliminated from those that come after it and from the finishes alone, as in a factorisation: what was
    /// read is asked for no more, and what is read after the last choice changes nothing.
    fn run(mut self, start: &Covariances, tables: &[Vec<GripsAhead>]) -> Vec<f64> {
        while matches!(self.events.last(), Some(Event::Read(_))) {
            self.events.pop();
        }
        let read = self.events.iter().filter_map(|event| match event {
            Event::Read((at, _)) => Some(*at),
            Event::Tip(_) | Event::Grip(_) => None,
        });
        let mut places: Vec<usize> = read.collect();
        let readings = places.len();
        places.extend(self.clubs.iter().map(|club| club.finish));
        let mut left = Elimination::new(start, &places);
        let finish = |club: usize| readings + club;
        let (mut tip_variance, mut chosen) = (vec![0.0; self.clubs.len()], vec![0; tables.len()]);
        let mut found = vec![0.0; self.clubs.len()];
        for event in &self.events {
            match *event {
                Event::Read((_, sd)) => left.read(sd),
                Event::Tip(club) => tip_variance[club] = left.variance(finish(club)),
                Event::Grip(at) => {
                    let club = &self.clubs[at];
                    let row = tables.get(club.grips).zip(chosen.get_mut(club.grips));
                    let Some((row, taken)) = row else { continue };
                    let Some(grips) = row.get(*taken).or(row.last()) else { continue };
                    *taken += 1;
                    let rest = left.variance(finish(at));
                    let told = (tip_variance[at] - rest).max(0.0).sqrt();
                    found[at] = match club.glued_off_points {
                        Some(off) => grips.chance_from(off, told, rest.sqrt()),
                        None => grips.chance(told, rest.sqrt(), club.tray_step_points),
                    };
                }
            }
        }
        found
    }
}

/// Covariances of readings in their order, then of the finishes: the lower half, row after row.
struct Elimination {
    n: usize,
    next: usize,
    p: Vec<f64>,
    column: Vec<f64>,
}

impl Elimination {
    fn new(start: &Covariances, places: &[usize]) -> Self {
        let n = places.len();
        let mut p = vec![0.0; n * n];
        for (i, row) in p.chunks_exact_mut(n.max(1)).enumerate() {
            for (j, entry) in row[..=i].iter_mut().enumerate() {
                *entry = start.p.get(places[i] * start.n + places[j]).copied().unwrap_or_default();
            }
        }
        Self { n, next: 0, p, column: Vec::with_capacity(n) }
    }

    fn variance(&self, at: usize) -> f64 {
        self.p[at * self.n + at].max(0.0)
    }

    /// The next reading is taken, with this noise.
    fn read(&mut self, noise_sd: f64) {
        let (n, k) = (self.n, self.next);
        self.next += 1;
        let total = self.variance(k) + noise_sd * noise_sd;
        if total <= 0.0 {
            return;
        }
        self.column.clear();
        self.column.extend((k + 1..n).map(|i| self.p[i * n + k]));
        for (i, a) in (k + 1..n).zip(&self.column) {
            // Many readings have nothing to do with each other.
            if *a != 0.0 {
                let factor = a / total;
                let row = &mut self.p[i * n + k + 1..=i * n + i];
                row.iter_mut().zip(&self.column).for_each(|(p, b)| *p -= factor * b);
            }
        }
    }
}

/// A bundle of measurements: chosen one after another by what each brings a minute beyond those
/// before it, then one pass in which each is exchanged for one that was left out where that is better.
///
/// `worth(chosen)` is the clubs expected inside with these measurements. Gives the chosen ones in the order in which they were
/// found, each with the clubs that it brings beyond those before it, so that the gains add up to the bundle's. It stops when
/// the next would bring less than `least_a_minute`.
pub fn bundle(minutes: &[f64], least_a_minute: f64, mut worth: impl FnMut(&[usize]) -> f64) -> Vec<(usize, f64)> {
    let mut chosen: Vec<usize> = Vec::new();
    let mut now = worth(&chosen);
    grow(&mut chosen, &mut now, minutes, least_a_minute, &mut worth);
    for place in 0..chosen.len() {
        for other in 0..minutes.len() {
            // One that takes more time in place of one that takes less is another bundle, not an exchange.
            if chosen.contains(&other) || minutes[other] > minutes[chosen[place]] + 1e-9 {
                continue;
            }
            let mut tried = chosen.clone();
            tried[place] = other;
            let value = worth(&tried);
            if value > now + 1e-9 {
                (chosen, now) = (tried, value);
            }
        }
    }
    grow(&mut chosen, &mut now, minutes, least_a_minute, &mut worth);
    let mut before = worth(&[]);
    (1..=chosen.len())
        .map(|n| {
            let value = worth(&chosen[..n]);
            let gained = value - before;
            before = value;
            (chosen[n - 1], gained)
        })
        .collect()
}

fn grow(
    chosen: &mut Vec<usize>,
    now: &mut f64,
    minutes: &[f64],
    least_a_minute: f64,
    worth: &mut impl FnMut(&[usize]) -> f64,
) {
    loop {
        let mut best: Option<(usize, f64)> = None;
        for (other, takes) in minutes.iter().enumerate().filter(|(_, takes)| **takes > 0.0) {
            if chosen.contains(&other) {
                continue;
            }
            let mut tried = chosen.clone();
            tried.push(other);
            let value = worth(&tried);
            let a_minute = |(at, value): (usize, f64)| (value - *now) / minutes[at];
            if (value - *now) / takes >= least_a_minute
                && best.is_none_or(|found| a_minute((other, value)) > a_minute(found))
            {
                best = Some((other, value));
            }
        }
        let Some((other, value)) = best else { return };
        chosen.push(other);
        *now = value;
    }
}
