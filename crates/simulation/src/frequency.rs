//! Sets trimmed to a slope of frequencies: by the maker's chart, by a hand that reads each club and trims it, and by the bench's
//! advice; in shops whose shafts, clamps and heads are not what the belief starts from.
//!
//! The beam is the bench's own (`clubphysics::vibration`); its figures are not: a shaft whose stiffness has a soft or stiff spot
//! that no tilt can follow, a clamp that gives more than is usual, singles that scatter twice as much in every fourth shop.
//! Clubs count as on the slope within 2 cpm of the line that the chart is made for, through the middle club of the set: what
//! level a set has is taste, that its clubs climb alike is the work.

use crate::draw::{Draw, Stream};
use crate::error::SimulationError;
use crate::job::SimulatedJob;
use crate::settings::Settings;
use crate::sheet::job_of;
use crate::shop::SimulatedShop;
use crate::tally::{Count, Share, share};
use bench::assembly::Assembly;
use bench::learned::Learned;
use bench::scale_watch::ScaleWatch;
use bench::trim_to_cpm::{Slope, SlopeAsked, read_with, set_cpm};
use clubphysics::vibration::{BetweenRows, ClampedMode, LineRow, MeasuredFrom, RigidTip, StiffnessLine};
use desk::planner;

use fact::Fact;
use jiff::Timestamp;
use quantity::INCH_MM;
use serde::Serialize;
use trade::clamp::Clamp;
use trade::error::TradeError;
use trade::job::Job;
use trade::kind::Role;
use trade::model::{Library, PartKind};
use trade::plan::ClubPlan;
use trade::reading::{Reading, What};
use trade::shaft::ShaftMaterial;
use trade::shop::Shop;

/// What counts as on the slope, cpm.
pub const WITHIN_CPM: f64 = 2.0;
/// Weight at the tip of a raw shaft, g.
const TEST_WEIGHT_G: f64 = 205.0;
/// Noise of one clamped reading, cpm, and the step of the display.
const METER_SD_CPM: f64 = 0.4;
const METER_STEP_CPM: f64 = 0.1;
/// Truths off the priors (no source: what such shops might be like).
const LEVEL_SD: f64 = 0.2;
const TILT_SD: f64 = 0.2;
const SPOT_SD: f64 = 0.15;
const GIVES_MM: (f64, f64) = (9.0, 5.0);
const HEAD_MM: f64 = 3.0;
const PIECE_SD: f64 = 0.02;
const SAW_SD_MM: f64 = 0.8;
/// A hand that trims after a reading stops where it is not softer than this, cpm.
const GOOD_CPM: f64 = 0.75;
/// How much shorter of its chart that hand leaves a tip before it reads, mm.
const LEFT_MM: f64 = 12.7;
/// Most that any hand takes off beyond the chart, mm.
const MOST_MM: f64 = 38.1;

/// Frequency of a club of a plan in a clamp as usual, whose shaft is as its tube says but for this logarithm of stiffness: dry, or
/// of its raw shaft with a weight of `raw_with_g` grams at its tip.
///
/// # Errors
/// A model that the plan names and the library lacks; figures that no beam can have.
pub(crate) fn usual_cpm(
    library: &Library,
    plan: &ClubPlan,
    number: &str,
    stiffer: f64,
    raw_with_g: Option<f64>,
) -> Result<f64, TradeError> {
    let truth = Truth { level: stiffer, ..Truth::of_the_chart() };
    let clamp = Clamp { test_weight_g: raw_with_g, ..Clamp::default() };
    let tip_mm = if raw_with_g.is_some() { 0.0 } else { plan.tip_trim_mm };
    true_cpm(&truth, Own::default(), (library, plan, number), &clamp, (tip_mm, raw_with_g.is_none()))
}

/// What is true of a shop.
struct Truth {
    level: f64,
    tilt: f64,
    spot: (f64, f64),
    gives_mm: f64,
    head_mm: f64,
    inertia_g_cm2: f64,
    piece_sd: f64,
}

impl Truth {
    fn draw(seed: u64, shop: u64) -> Self {
        let mut draw = Draw::of(seed, Stream::Form, &[shop, 7001]);
        Self {
            level: draw.normal(0.0, LEVEL_SD),
            tilt: draw.normal(0.0, TILT_SD),
            spot: (draw.normal(0.0, SPOT_SD), draw.uniform(0.35, 0.8)),
            gives_mm: draw.normal(GIVES_MM.0, GIVES_MM.1).max(0.0),
            head_mm: draw.normal(0.0, HEAD_MM),
            inertia_g_cm2: draw.normal(3000.0, 1000.0).max(500.0),
            piece_sd: if shop % 4 == 3 { 2.0 * PIECE_SD } else { PIECE_SD },
        }
    }

    /// As the maker's chart is made: nothing off what the tube says, a clamp as usual.
    const fn of_the_chart() -> Self {
        Self {
            level: 0.0,
            tilt: 0.0,
            spot: (0.0, 0.5),
            gives_mm: 4.0,
            head_mm: 0.0,
            inertia_g_cm2: 3000.0,
            piece_sd: 0.0,
        }
    }
}

/// One club's own.
#[derive(Clone, Copy, Default)]
struct Own {
    piece: f64,
    length_mm: f64,
    head_g: f64,
    raw_g: f64,
}

/// One set in one shop.
struct Set<'a> {
    truth: &'a Truth,
    job: Job,
    made: SimulatedJob,
    own: Vec<Own>,
    clamp: Clamp,
}

impl Set<'_> {
    /// Frequency of a club whose tip is cut so much in all, mm; of its raw shaft with the test weight where it has no head.
    fn cpm(&self, slot: usize, tip_mm: f64, with_head: bool) -> Result<f64, TradeError> {
        let of = (&self.made.library, self.plan(slot), self.job.clubs[slot].target.number.as_str());
        true_cpm(self.truth, self.own[slot], of, &self.clamp, (tip_mm, with_head))
    }

    fn plan(&self, slot: usize) -> &ClubPlan {
        static NONE: std::sync::OnceLock<ClubPlan> = std::sync::OnceLock::new();
        // Every club of a set has a plan; see `Set::new`.
        self.job.clubs[slot]
            .plan
            .as_ref()
            .unwrap_or_else(|| NONE.get_or_init(|| ClubPlan::uncut(Vec::new(), String::new())))
    }

    fn half_inches(&self, slot: usize) -> f64 {
        let length = |at: usize| self.job.clubs[at].target.length_mm;
        (length(0) - length(slot)) / (INCH_MM / 2.0)
    }
}

/// Frequency of a club whose tip is cut so much in all, mm; of its raw shaft with the test weight where it has no head.
fn true_cpm(
    truth: &Truth,
    own: Own,
    (library, plan, number): (&Library, &ClubPlan, &str),
    clamp: &Clamp,
    (tip_mm, with_head): (f64, bool),
) -> Result<f64, TradeError> {
    let shaft = plan.part(PartKind::Shaft).map_or("", |part| &part.model);
    let model = library.shaft(shaft)?;
    let Some(blank) = model.blank(plan.neighbour_blank.as_deref().unwrap_or(number)) else { return Ok(0.0) };
    let specific = match model.material {
        ShaftMaterial::Steel => 206e9 / 7850.0 * 0.86,
        ShaftMaterial::Composite => 70e9 / 1550.0,
    };
    let raw_mm = plan.cut_shaft_mm + plan.butt_cut_mm + plan.tip_trim_mm;
    let tilt = 6.0 * (blank.balance_point_mm / blank.length_mm - 0.5);
    let shaft_g = plan.part(PartKind::Shaft).map_or(blank.mass_g, |p| p.mass_g) + own.raw_g;
    let row = |i: u32| {
        let share = f64::from(i) / 40.0;
        let of_mass = |mass_g: f64| mass_g / raw_mm * 1000.0 * (1.0 + tilt * (2.0 * share - 1.0));
        let d_m = (model.butt_diameter_mm + (model.tip_diameter_mm - model.butt_diameter_mm) * share) / 1000.0;
        let tube = specific * of_mass(blank.mass_g) / 1000.0 * d_m * d_m / 8.0;
        let spot = truth.spot.0 * (-((share - truth.spot.1) / 0.12).powi(2)).exp();
        let form = truth.level + own.piece + truth.tilt * (2.0 * share - 1.0) + spot;
        LineRow { position_mm: raw_mm * share, stiffness_n_m2: tube * form.exp(), mass_g_m: of_mass(shaft_g) }
    };
    let rows: Vec<LineRow> = (0..=40).map(row).collect();
    let line = StiffnessLine::new(&rows, MeasuredFrom::Butt, BetweenRows::Straight, raw_mm)?;
    let held_mm = clamp.held_mm - truth.gives_mm;
    let (from_mm, end_mm, tip) = if with_head {
        let head = library.head(plan.part(PartKind::Head).map_or("", |part| &part.model))?;
        let tip_end_mm = raw_mm - tip_mm;
        let beyond_mm = head.bore_depth_mm + plan.tip_to_ground_mm + head.offset_prior_mm().0 + truth.head_mm;
        let head_g = plan.mass_g(Role::Head) + own.head_g;
        let stub_g = rows[40].mass_g_m * head.bore_depth_mm / 1000.0;
        let pieces = [(head_g, beyond_mm), (plan.mass_g(Role::Ferrule), 0.0), (stub_g, head.bore_depth_mm / 2.0)];
        let mass_g: f64 = pieces.iter().map(|p| p.0).sum();
        let centre_mm = pieces.iter().map(|p| p.0 * p.1).sum::<f64>() / mass_g;
        let spread: f64 = pieces.iter().map(|p| p.0 * (p.1 - centre_mm).powi(2)).sum();
        let tip = RigidTip {
            mass_kg: mass_g / 1000.0,
            offset_m: centre_mm / 1000.0,
            inertia_kg_m2: truth.inertia_g_cm2 * 1e-7 + spread * 1e-9,
        };
        let butt_mm = tip_end_mm - plan.cut_shaft_mm - own.length_mm;
        (butt_mm + held_mm, tip_end_mm - head.bore_depth_mm, tip)
    } else {
        let tip = RigidTip { mass_kg: clamp.test_weight_g.unwrap_or(TEST_WEIGHT_G) / 1000.0, ..RigidTip::default() };
        (held_mm, raw_mm, tip)
    };
    Ok(ClampedMode::new(&line, from_mm / 1000.0, end_mm / 1000.0, tip, 30)?.cpm())
}

/// Who trims.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Hand {
    Chart,
    Reads,
    Advised,
}

/// What came out of one way to trim, set by set.
#[derive(Debug, Clone, Default)]
pub struct CpmTally {
    within: Vec<Count>,
    held: Vec<Count>,
    squares: f64,
    bands: f64,
    readings: f64,
}

/// One way to trim, in a shop of one age.
#[derive(Debug, Clone, Serialize)]
pub struct CpmLine {
    /// Who trims: the chart, a hand that reads each club, the advice.
    pub hand: &'static str,
    /// Whether the shop is new or has built some sets.
    pub shop: &'static str,
    /// Sets that were built.
    pub sets: u32,
    /// Clubs within 2 cpm of the slope, counted over sets.
    pub within: Option<Share>,
    /// Root mean square of the distance from the slope, cpm.
    pub rms_cpm: f64,
    /// Readings within the 95 % band of their forecast, counted over sets; of the advice alone.
    pub band_held: Option<Share>,
    /// Mean half width of that band, cpm.
    pub band_cpm: Option<f64>,
    /// Readings of a frequency for each club.
    pub readings_a_club: f64,
}

/// Ways to trim and ages of a shop in the order of their lines.
const WAYS: [(Hand, &str, &str, bool); 6] = [
    (Hand::Chart, "the maker's chart", "new", false),
    (Hand::Reads, "reads each, trims", "new", false),
    (Hand::Advised, "advised", "new", false),
    (Hand::Chart, "the maker's chart", "known", true),
    (Hand::Reads, "reads each, trims", "known", true),
    (Hand::Advised, "advised", "known", true),
];

/// Builds sets in a range of shops; the first of each shop counts as new, the last as known.
///
/// # Errors
/// Advice that failed.
pub fn run_cpm(
    settings: &Settings,
    shops: std::ops::Range<u64>,
    step: &mut dyn FnMut(),
) -> Result<Vec<CpmTally>, SimulationError> {
    let mut tallies = vec![CpmTally::default(); WAYS.len()];
    for id in shops {
        one_shop(settings, id, &mut tallies).map_err(|e| SimulationError::Advice {
            shop: id,
            job: 0,
            way: "cpm".to_owned(),
            what: e.refusal().fact().told(),
        })?;
        step();
    }
    Ok(tallies)
}

/// Adds tallies of other shops.
pub fn join(all: &mut [CpmTally], some: Vec<CpmTally>) {
    for (all, some) in all.iter_mut().zip(some) {
        all.within.extend(some.within);
        all.held.extend(some.held);
        all.squares += some.squares;
        all.bands += some.bands;
        all.readings += some.readings;
    }
}

/// The lines of a report.
#[must_use]
pub fn lines(tallies: &[CpmTally]) -> Vec<CpmLine> {
    let line = |(tally, (_, hand, shop, _)): (&CpmTally, &(Hand, &'static str, &'static str, bool))| {
        let clubs: f64 = tally.within.iter().map(|c| f64::from(c.of)).sum::<f64>().max(1.0);
        let held: f64 = tally.held.iter().map(|c| f64::from(c.of)).sum();
        CpmLine {
            hand,
            shop,
            sets: u32::try_from(tally.within.len()).unwrap_or(u32::MAX),
            within: share(&tally.within),
            rms_cpm: (tally.squares / clubs).sqrt(),
            band_held: share(&tally.held),
            band_cpm: (held > 0.0).then(|| tally.bands / held),
            readings_a_club: tally.readings / clubs,
        }
    };
    tallies.iter().zip(&WAYS).map(line).collect()
}

fn one_shop(settings: &Settings, id: u64, tallies: &mut [CpmTally]) -> Result<(), TradeError> {
    let truth = Truth::draw(settings.seed, id);
    let simulated = SimulatedShop::draw(settings, id);
    let mut learned = Learned::default();
    for number in 0..=u64::from(settings.known_after) {
        let known = number == u64::from(settings.known_after);
        let counts = number == 0 || known;
        let set = new_set(settings, &simulated, &truth, id, number)?;
        let slope_cpm = chart_slope(settings, &simulated, id, number)?;
        for (at, (hand, _, _, of_known)) in WAYS.iter().enumerate() {
            // The advice alone has a past: its shop learns from every set.
            let wanted = counts && *of_known == (known && number > 0);
            let learns = *hand == Hand::Advised && !*of_known && !counts;
            if !wanted && !learns {
                continue;
            }
            let mut scratch = CpmTally::default();
            let tally = if wanted { &mut tallies[at] } else { &mut scratch };
            let built = match hand {
                Hand::Chart => chart(&set)?,
                Hand::Reads => reads(settings, &set, slope_cpm, tally, (id, number))?,
                Hand::Advised => {
                    let (built, after) = advised(settings, &set, slope_cpm, &learned, tally, (id, number))?;
                    learned = after;
                    built
                }
            };
            judge(&set, &built, slope_cpm, tally);
        }
    }
    Ok(())
}

fn new_set<'a>(
    settings: &Settings,
    shop: &SimulatedShop,
    truth: &'a Truth,
    id: u64,
    number: u64,
) -> Result<Set<'a>, TradeError> {
    let made = SimulatedJob::draw(settings, shop, number);
    let clamp = Clamp { test_weight_g: Some(TEST_WEIGHT_G), ..Clamp::default() };
    let setup = Shop { clamp, ..Shop::default() };
    let mut job = job_of(settings, &made, &setup);
    let watch = ScaleWatch::default();
    let plan = {
        let (library, learned) = (&made.library, Learned::nothing());
        planner::propose(Assembly { job: &job, library, shop: &setup, learned, watch: &watch }, &made.parts, &[])?
    };
    // A club without parts would be left out of every hand's set alike.
    job.clubs.iter_mut().zip(plan.clubs).for_each(|(club, plan)| club.plan = plan);
    job.clubs.retain(|club| club.plan.is_some());
    let own = (0..job.clubs.len() as u64)
        .map(|slot| {
            let mut draw = Draw::of(settings.seed, Stream::Club, &[id, number, slot, 7002]);
            Own {
                piece: draw.normal(0.0, truth.piece_sd),
                length_mm: draw.normal(0.0, SAW_SD_MM),
                head_g: draw.normal(0.0, 0.06),
                raw_g: draw.normal(0.0, 0.1),
            }
        })
        .collect();
    Ok(Set { truth, job, made, own, clamp })
}

/// The slope that the maker's chart is made for: of a set without scatter, cpm a half inch, by least squares.
fn chart_slope(settings: &Settings, shop: &SimulatedShop, id: u64, number: u64) -> Result<f64, TradeError> {
    let truth = Truth::of_the_chart();
    let mut set = new_set(settings, shop, &truth, id, number)?;
    set.own = vec![Own::default(); set.job.clubs.len()];
    let cpm = chart(&set)?;
    let x: Vec<f64> = (0..cpm.len()).map(|slot| set.half_inches(slot)).collect();
    let n = cpm.len().max(1) as f64;
    let (mx, my) = (x.iter().sum::<f64>() / n, cpm.iter().sum::<f64>() / n);
    let across: f64 = x.iter().zip(&cpm).map(|(x, y)| (x - mx) * (y - my)).sum();
    let along: f64 = x.iter().map(|x| (x - mx).powi(2)).sum();
    Ok(across / along.max(1e-9))
}

/// True frequencies of a set trimmed by the chart.
fn chart(set: &Set<'_>) -> Result<Vec<f64>, TradeError> {
    (0..set.own.len()).map(|slot| set.cpm(slot, set.plan(slot).tip_trim_mm, true)).collect()
}

fn shown(draw: &mut Draw, cpm: f64) -> f64 {
    ((cpm + draw.normal(0.0, METER_SD_CPM)) / METER_STEP_CPM).round() * METER_STEP_CPM
}

/// A hand that leaves each tip half an inch long, reads each club, trims by what half an inch usually does, reads once more and
/// trims what is still soft.
fn reads(
    settings: &Settings,
    set: &Set<'_>,
    slope_cpm: f64,
    tally: &mut CpmTally,
    (id, number): (u64, u64),
) -> Result<Vec<f64>, TradeError> {
    let mut draw = Draw::of(settings.seed, Stream::Reading, &[id, number, 7003]);
    let clubs = set.own.len();
    // What a millimetre does, by the maker's own chart: the middle of the set, nothing off.
    let chart_truth = Truth::of_the_chart();
    let middle = clubs / 2;
    let nominal = Set {
        truth: &chart_truth,
        job: set.job.clone(),
        made: set.made.clone(),
        own: vec![Own::default(); clubs],
        clamp: set.clamp,
    };
    let trim_mm = nominal.plan(middle).tip_trim_mm;
    let a_mm = (nominal.cpm(middle, trim_mm + 6.0, true)? - nominal.cpm(middle, trim_mm - 6.0, true)?) / 12.0;
    let left: Vec<f64> = (0..clubs).map(|slot| (set.plan(slot).tip_trim_mm - LEFT_MM).max(0.0)).collect();
    let first = (0..clubs).map(|slot| Ok(shown(&mut draw, set.cpm(slot, left[slot], true)?)));
    let first = first.collect::<Result<Vec<f64>, TradeError>>()?;
    let at_chart = |slot: usize| first[slot] + a_mm * (set.plan(slot).tip_trim_mm - left[slot]);
    let level = median((0..clubs).map(|slot| at_chart(slot) - slope_cpm * set.half_inches(slot)).collect());
    let mut built = Vec::with_capacity(clubs);
    for slot in 0..clubs {
        let aim = level + slope_cpm * set.half_inches(slot);
        let most = set.plan(slot).tip_trim_mm + set.plan(slot).butt_cut_mm.min(MOST_MM);
        let saw = |draw: &mut Draw, from: f64, by: f64| (from + by + draw.normal(0.0, SAW_SD_MM)).clamp(from, most);
        let mut tip_mm = left[slot];
        if aim > first[slot] {
            tip_mm = saw(&mut draw, tip_mm, (aim - first[slot]) / a_mm);
        }
        let again = shown(&mut draw, set.cpm(slot, tip_mm, true)?);
        if again < aim - GOOD_CPM {
            tip_mm = saw(&mut draw, tip_mm, (aim - again) / a_mm);
        }
        built.push(set.cpm(slot, tip_mm, true)?);
    }
    tally.readings += 2.0 * clubs as f64;
    Ok(built)
}

/// As the bench advises: raw shafts are read as they come in, tips are trimmed as it says, each club is read once in its dry fit.
fn advised(
    settings: &Settings,
    set: &Set<'_>,
    slope_cpm: f64,
    learned: &Learned,
    tally: &mut CpmTally,
    (id, number): (u64, u64),
) -> Result<(Vec<f64>, Learned), TradeError> {
    let mut draw = Draw::of(settings.seed, Stream::Reading, &[id, number, 7004]);
    let mut setup = Shop { clamp: set.clamp, ..Shop::default() };
    setup.gauges.push(trade::gauge::Gauge {
        key: "frequency".into(),
        name: "frequency".into(),
        measures: trade::gauge::Measures::Frequency,
        display_step: METER_STEP_CPM,
        noise_sd: METER_SD_CPM,
        offset_sd: 0.0,
    });
    let watch = ScaleWatch::default();
    let mut job = set.job.clone();
    let on = read_with(&job);
    for slot in 0..job.clubs.len() {
        let raw = shown(&mut draw, set.cpm(slot, 0.0, false)?);
        let parts = job.clubs[slot].plan.iter_mut().flat_map(|plan| &mut plan.parts);
        parts.filter(|part| part.kind == PartKind::Shaft).for_each(|part| part.raw_cpm = Some(raw));
    }
    let library = &set.made.library;
    let mut readings: Vec<Reading> = Vec::new();
    let asked = SlopeAsked { slope: Slope::Step, step_cpm: slope_cpm, level_cpm: None };
    let found = {
        let assembly = Assembly { job: &job, library, shop: &setup, learned, watch: &watch };
        set_cpm(&assembly.believe(&readings)?, asked)?
    };
    // The level that was settled before the first cut holds for all clubs.
    let level_cpm = found.clubs.first().and_then(|club| club.aim_cpm);
    let (mut held, mut built) = (Count::default(), Vec::new());
    for slot in 0..job.clubs.len() {
        let assembly = Assembly { job: &job, library, shop: &setup, learned, watch: &watch };
        let found = set_cpm(&assembly.believe(&readings)?, SlopeAsked { level_cpm, ..asked })?;
        let planned_mm = set.plan(slot).tip_trim_mm;
        let told_mm = found.clubs.get(slot).and_then(|club| club.trim).map_or(0.0, |trim| trim.more_mm);
        let cut_mm = (planned_mm + told_mm + draw.normal(0.0, SAW_SD_MM)).max(0.0);
        if let Some(plan) = job.clubs[slot].plan.as_mut() {
            plan.tip_trim_mm += told_mm;
            plan.butt_cut_mm -= told_mm;
        }
        let true_cpm = set.cpm(slot, cut_mm, true)?;
        let value = shown(&mut draw, true_cpm);
        let assembly = Assembly { job: &job, library, shop: &setup, learned, watch: &watch };
        let club = job.clubs[slot].id.clone();
        if let Some(expected) = assembly.believe(&readings)?.expected(&club, What::Cpm, &on)? {
            held.add((value - expected.value).abs() <= expected.band);
            tally.bands += expected.band;
        }
        readings.push(reading_of(&job, slot, &on, value, readings.len()));
        built.push(true_cpm);
    }
    tally.held.push(held);
    tally.readings += 2.0 * built.len() as f64;
    let assembly = Assembly { job: &job, library, shop: &setup, learned, watch: &watch };
    let after = learned.after(&assembly.believe(&readings)?)?;
    Ok((built, after))
}

fn reading_of(job: &Job, slot: usize, on: &[Role], value: f64, n: usize) -> Reading {
    Reading {
        id: format!("cpm-{n:02}").as_str().into(),
        job: job.id.clone(),
        club: job.clubs[slot].id.clone(),
        step: "cpm".into(),
        what: What::Cpm,
        value,
        unit: What::Cpm.unit(),
        typed: String::new(),
        on: on.to_vec(),
        scale: None,
        display_step: METER_STEP_CPM,
        at: Timestamp::UNIX_EPOCH,
        by: "hand".into(),
        replaces: None,
        taken_back: None,
        pivot_mm: None,
        insisted: false,
        forecast: None,
    }
}

/// Counts the clubs of a set within 2 cpm of the slope through its middle.
fn judge(set: &Set<'_>, built: &[f64], slope_cpm: f64, tally: &mut CpmTally) {
    let off: Vec<f64> = (0..built.len()).map(|slot| built[slot] - slope_cpm * set.half_inches(slot)).collect();
    let level = median(off.clone());
    let mut within = Count::default();
    for off in &off {
        within.add((off - level).abs() <= WITHIN_CPM);
        tally.squares += (off - level).powi(2);
    }
    tally.within.push(within);
}

fn median(mut of: Vec<f64>) -> f64 {
    of.sort_by(f64::total_cmp);
    let n = of.len().max(1);
    of.get((n - 1) / 2).zip(of.get(n / 2)).map_or(0.0, |(a, b)| f64::midpoint(*a, *b))
}
