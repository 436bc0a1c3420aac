//! From targets and stock to a plan: candidates for every club, the best choice among them, cuts and expected readings.
//!
//! Moments add, so what a part does to a club's swing weight does not depend on the other parts; the choice is then the
//! exact problem of the `matching` crate. Cost, in its order: chance of finishing in tolerance, and then what
//! [`PlanWeights`] says of grams of tip weight, whole mass, frequency ([`frequency`]), evenness of the shafts, what is
//! left for others.

mod again;
mod day;
mod due;
pub mod frequency;
mod instead;
mod lack;
mod left_over;
mod locks;
mod options;
mod outlook;
mod picks;
mod reason;
mod seats;
mod supply;
mod to_come;
mod worth;

pub use again::{ChangeOfPlan, LineChange, PlanChange, Replan, propose_again, propose_again_with};
pub use day::{DayJob, DayPlan, WhichPlan, propose_day, propose_day_with};
pub use due::{DueDates, DueState, Goes, JobDue, OrderFor, Scarce, SolveDay, StandsInTheWay, ToOrder, TooFew};
pub use frequency::Lines;
pub use instead::{InsteadOf, InsteadWhy};
pub use lack::Lack;
pub use locks::{Lock, kept};
pub use options::{Law, PlanOption, SolveMore, options, options_with};
pub(crate) use picks::planned;
pub use picks::{Picks, Taken, expect, plan_of, plan_with};
pub use reason::PlanReason;
pub use supply::{HeldPart, Supply};
pub use worth::{Brings, DayWorth, HowItComesOut, JobWorth};

use self::instead::{Used, Whose, instead};
use self::lack::{lacks, name_missing};
use self::left_over::{HeadMasses, deviations, grip_cost};
use self::locks::lock;
use self::outlook::{Lists, Losses};
use self::reason::reasons;
use self::seats::{Given, Seat};
use bench::assembly::Assembly;
use fnv::FnvHasher;
use matching::{
    Candidate, Choice, ClubNeed, HeadScale, MassTarget, MatchError, SetProblem, SetSolution, Stock, Tip, TipFit,
    TipPair,
};
use std::collections::{BTreeMap, BTreeSet};
use std::hash::Hasher;
use std::sync::Arc;
use trade::action::Action;
use trade::adapter::AdapterModel;
use trade::error::TradeError;
use trade::fit::{self, BlankUse, Cut};
use trade::grip::GripModel;
use trade::head::{HeadModel, HeadNumber};
use trade::id::PartId;
use trade::job::{Job, JobClub};
use trade::model::{Library, PartKind};
use trade::part::{Part, PartState};
use trade::places::{Places, turned_g};
use trade::plan::{ClubPlan, Missing, Plan};
use trade::plan_weights::PlanWeights;
use trade::shaft::ShaftModel;
use trade::swing_weight::points_per_g;
use trade::tip_weight::{self, InTip};
use trade::wrap::tape_on;

/// One club with the parts that fit it.
struct Fitting<'a> {
    club: &'a JobClub,
    head_model: &'a HeadModel,
    head_number: &'a HeadNumber,
    shaft_model: &'a ShaftModel,
    /// The length and bore of adapter that it is planned with, where its head takes one.
    adapter: Option<&'a AdapterModel>,
    ferrule: Option<&'a Part>,
    places: Places,
    grip_model: &'a GripModel,
    head_masses: HeadMasses,
    /// Shafts with their cut and how their blank is used, beside the candidate of the same index.
    shafts: Vec<(usize, Cut, BlankUse)>,
    need: ClubNeed,
}

/// The stock as the matching sees it: parts by kind, in order.
struct Shelf<'a> {
    heads: Vec<&'a Part>,
    shafts: Vec<&'a Part>,
    grips: Vec<&'a Part>,
    tips: Vec<&'a Part>,
    ferrules: Vec<&'a Part>,
    adapters: Vec<&'a Part>,
    /// Screws that the heads of these jobs may have in place of their own: head model, and what each weighs more.
    screws: Vec<(String, f64)>,
    /// Pieces of bulk that clubs of these jobs have already: they are there for the same clubs.
    had: BTreeMap<PartId, u32>,
    /// What other jobs hold: named where it would do, never taken.
    held: &'a [HeldPart],
    lines: Lines,
}

/// What plans one set: [`prove`], or something that remembers what was proven of the very same problem.
pub type Solve<'s> = dyn FnMut(&SetProblem) -> Result<SetSolution, MatchError> + 's;

/// Plans one set within the usual limits.
///
/// # Errors
/// As [`matching::solve_set`].
pub fn prove(problem: &SetProblem) -> Result<SetSolution, MatchError> {
    matching::solve_set(problem, matching::Limits::default())
}

/// Proposes a plan for a whole job from the parts given: those free, and those this job holds already. What other jobs
/// hold is named where it would do.
///
/// # Errors
/// A model that the sheet names and the library lacks; a lock on a part that does not exist or does not fit.
pub fn propose<'a>(assembly: Assembly<'a>, supply: impl Into<Supply<'a>>, locks: &[Lock]) -> Result<Plan, TradeError> {
    propose_with(assembly, supply, locks, &mut prove)
}

/// As [`propose`], the choice made by `solve`.
///
/// # Errors
/// As [`propose`].
pub fn propose_with<'a>(
    assembly: Assembly<'a>,
    supply: impl Into<Supply<'a>>,
    locks: &[Lock],
    solve: &mut Solve<'_>,
) -> Result<Plan, TradeError> {
    let shelf = Shelf::new(assembly, &[assembly.job], supply.into());
    let ground = Ground::new(assembly, &shelf, locks, &mut Given::default())?;
    let solution = solve(&ground.problem(&shelf)?)?;
    ground.plan(&shelf, &solution)
}

/// A job's clubs with everything that fits them, ready to be matched.
struct Ground<'a> {
    assembly: Assembly<'a>,
    fittings: Vec<Fitting<'a>>,
    /// What is kept for its clubs.
    locks: Vec<Lock>,
    missing: Vec<Missing>,
}

impl<'a> Ground<'a> {
    /// The clubs of a job, each narrowed to the parts that are kept for it; `given` is what the jobs before have.
    fn new(assembly: Assembly<'a>, shelf: &Shelf<'a>, locks: &[Lock], given: &mut Given) -> Result<Self, TradeError> {
        let mut ground = Self::with_all(assembly, shelf, locks, given)?;
        lock(&mut ground.fittings, shelf, locks)?;
        Ok(ground)
    }

    /// As [`Ground::new`], with everything that fits; a lock says only which length of adapter a club is planned with.
    fn with_all(
        assembly: Assembly<'a>,
        shelf: &Shelf<'a>,
        locks: &[Lock],
        given: &mut Given,
    ) -> Result<Self, TradeError> {
        let mut missing = Vec::new();
        let mut fittings = Vec::new();
        let mut losses = Losses::default();
        let pairs = shelf.tip_pairs(assembly)?;
        for club in &assembly.job.clubs {
            let kept = locks.iter().filter(|l| l.slot == club.slot).find_map(|l| shelf.adapter(&l.code));
            let head = assembly.library.head(&club.target.head_model)?;
            let shaft = assembly.library.shaft(&club.target.shaft_model)?;
            let seat = given.seat(assembly, club, (head, shaft), shelf, kept)?;
            let ferrule = given.ferrule(club, assembly.job.sheet.customer, shelf);
            fittings.push(fitting(assembly, club, shelf, (seat, ferrule), &pairs, &mut losses, &mut missing)?);
        }
        Ok(Self { assembly, fittings, locks: locks.to_vec(), missing })
    }

    /// Whether a part of a kind is kept for a club.
    fn keeps(&self, fitting: &Fitting<'_>, kind: PartKind, shelf: &Shelf<'_>) -> bool {
        let of_kind = |code: &str| {
            shelf
                .single()
                .into_iter()
                .any(|(k, parts)| k == kind && parts.iter().any(|p| p.code.eq_ignore_ascii_case(code)))
        };
        self.locks.iter().any(|lock| lock.slot == fitting.club.slot && of_kind(&lock.code))
    }

    fn needs(&self) -> Vec<ClubNeed> {
        self.fittings.iter().map(|f| f.need.clone()).collect()
    }

    fn problem(&self, shelf: &Shelf<'_>) -> Result<SetProblem, TradeError> {
        Ok(SetProblem {
            clubs: self.needs(),
            stock: shelf.stock(self.assembly)?,
            weights: self.assembly.shop.plan_weights.of_matching(),
        })
    }

    /// Which parts the clubs take; `by_job` where other jobs are planned along.
    fn used(&self, choices: &[Option<Choice>], by_job: bool) -> Used {
        let mut used = Used::default();
        for (fitting, choice) in self.fittings.iter().zip(choices) {
            let job = by_job.then_some(self.assembly.job.number);
            let whose = Whose { club: fitting.club.target.name(), job };
            choice.iter().for_each(|choice| used.note(choice, &whose));
        }
        used
    }

    fn plan(&self, shelf: &Shelf<'a>, solution: &SetSolution) -> Result<Plan, TradeError> {
        let used = self.used(&solution.clubs, false);
        self.plan_among(shelf, solution, &used)
    }

    /// As [`Ground::plan`], where other jobs take parts too.
    fn plan_among(&self, shelf: &Shelf<'a>, solution: &SetSolution, used: &Used) -> Result<Plan, TradeError> {
        let mut all_missing = self.missing.clone();
        for lack in &solution.unbuildable {
            let fitting = &self.fittings[lack.club];
            let kept = |kind, part| {
                let code = shelf.code(kind, part);
                self.locks.iter().any(|l| l.slot == fitting.club.slot && l.code.eq_ignore_ascii_case(code))
            };
            let mut missing = name_missing(fitting, lack, kept);
            missing.instead = instead(self.assembly, fitting, shelf, used, missing.kind)?;
            all_missing.push(missing);
        }
        let mut clubs = Vec::with_capacity(self.fittings.len());
        for (fitting, choice) in self.fittings.iter().zip(&solution.clubs) {
            clubs.push(match choice {
                Some(choice) => Some(club_plan(self.assembly, fitting, shelf, choice)?),
                None => None,
            });
        }
        expect(self.assembly, &mut clubs)?;
        let targets = self.assembly.job.clubs.iter().map(|c| &c.target);
        Ok(Plan {
            clubs,
            missing: all_missing,
            frequency: shelf.lines.told(self.assembly.library, targets),
            cost: solution.cost,
            bound: solution.bound,
            proven: solution.proven,
        })
    }
}

impl<'a> Shelf<'a> {
    /// What is free, and what the jobs hold already.
    fn new(assembly: Assembly<'_>, jobs: &[&Job], supply: Supply<'a>) -> Self {
        let mut had: BTreeMap<PartId, u32> = BTreeMap::new();
        let planned = jobs.iter().flat_map(|job| &job.clubs).filter_map(|c| c.plan.as_ref()).flat_map(|p| &p.parts);
        for part in planned {
            *had.entry(part.part.clone()).or_default() += 1;
        }
        let mine = |p: &Part| p.job.as_ref().is_some_and(|id| jobs.iter().any(|job| job.id == *id));
        let usable = |p: &&Part| {
            jobs.iter().any(|job| p.may_go_to(job.sheet.customer))
                && match p.count {
                    Some(_) => p.is_free() || (p.state == PartState::Free && had.contains_key(&p.id)),
                    None => p.is_free() || (p.state == PartState::Held && mine(p)),
                }
        };
        let of = |kind| supply.parts.iter().filter(usable).filter(|p| p.kind == kind).collect();
        Self {
            heads: of(PartKind::Head),
            shafts: of(PartKind::Shaft),
            grips: of(PartKind::Grip),
            tips: of(PartKind::TipWeight),
            ferrules: of(PartKind::Ferrule),
            adapters: of(PartKind::Adapter),
            screws: screws(assembly.library, jobs),
            held: supply.held,
            lines: supply.lines(assembly.library, assembly.shop),
            had,
        }
    }

    /// How many pieces there are of a part, those included that the clubs of these jobs have of a bulk.
    fn count(&self, part: &Part) -> u32 {
        let had = self.had.get(&part.id).copied().unwrap_or_default();
        part.count.map_or(1, |n| u32::try_from(n.max(0)).unwrap_or(u32::MAX).saturating_add(had))
    }

    /// The weights of the tray among what goes in at the tip, and what the screw weighs more than the head's own.
    fn tips_and_screw(&self, choice: &Choice) -> (Vec<&'a Part>, f64) {
        let tips = choice.tips.iter().filter_map(|&tip| self.tips.get(tip).copied()).collect();
        let screw = choice.tips.iter().filter_map(|tip| self.screws.get(tip.checked_sub(self.tips.len())?));
        (tips, screw.map(|(_, more_g)| more_g).sum())
    }

    /// The weights in a tip that is glued are not there for another plan, nor for the same club.
    fn without_tips(&mut self, club: &JobClub) {
        for planned in club.plan.iter().flat_map(|plan| &plan.parts).filter(|p| p.kind == PartKind::TipWeight) {
            self.had.entry(planned.part.clone()).and_modify(|n| *n = n.saturating_sub(1));
        }
    }

    /// The code of a part as the matching numbers it.
    fn code(&self, kind: matching::PartKind, part: usize) -> &str {
        let parts = match kind {
            matching::PartKind::Head => &self.heads,
            matching::PartKind::Shaft => &self.shafts,
            matching::PartKind::Grip => &self.grips,
            matching::PartKind::Tip => &self.tips,
            matching::PartKind::Adapter => &self.adapters,
        };
        &parts[part].code
    }

    /// Where an adapter lies, by its code.
    fn adapter(&self, code: &str) -> Option<usize> {
        self.adapters.iter().position(|p| p.code.eq_ignore_ascii_case(code))
    }

    /// Each two weights of the tray that stay under the shop's cap, and what the upper one loses by lying on the other.
    fn tip_pairs(&self, assembly: Assembly<'_>) -> Result<Arc<[TipPair]>, TradeError> {
        let in_tip = |part: &&Part| {
            let model = assembly.library.tip_weight(&part.model)?;
            Ok(InTip::of(model, part.mass_g.unwrap_or(model.mass_g)))
        };
        let tray = self.tips.iter().map(in_tip).collect::<Result<Vec<InTip>, TradeError>>()?;
        let mut pairs = Vec::new();
        for (lower, &a) in tray.iter().enumerate() {
            for (upper, &b) in tray.iter().enumerate().skip(lower) {
                if a.mass_g + b.mass_g <= assembly.shop.tip_weight_cap_g + 1e-9 {
                    pairs.push(TipPair { lower, upper, lost_points: tip_weight::lost_points(a, b) });
                }
            }
        }
        // A screw goes into the head, whatever is in the tip.
        for lower in 0..tray.len() {
            pairs.extend((0..self.screws.len()).map(|s| TipPair { lower, upper: tray.len() + s, lost_points: 0.0 }));
        }
        Ok(pairs.into())
    }

    fn stock(&self, assembly: Assembly<'_>) -> Result<Stock, TradeError> {
        let capacity = |parts: &[&Part]| parts.iter().map(|p| self.count(p)).collect();
        let mut tips = Vec::with_capacity(self.tips.len());
        for part in &self.tips {
            let nominal_g = assembly.library.tip_weight(&part.model)?.mass_g;
            tips.push(Tip { grams: part.mass_g.unwrap_or(nominal_g), count: self.count(part) });
        }
        // Screws are not counted: the maker sells them as a set.
        tips.extend(self.screws.iter().map(|_| Tip { grams: 0.0, count: u32::MAX }));
        Ok(Stock {
            heads: capacity(&self.heads),
            shafts: capacity(&self.shafts),
            grips: capacity(&self.grips),
            adapters: capacity(&self.adapters),
            tips,
        })
    }
}

/// Screws that heads of these jobs may have in place of their own.
fn screws(library: &Library, jobs: &[&Job]) -> Vec<(String, f64)> {
    let clubs = jobs.iter().flat_map(|job| &job.clubs);
    let models: BTreeSet<&str> = clubs.map(|club| club.target.head_model.as_str()).collect();
    let heads = models.iter().filter_map(|code| library.head(code).ok());
    heads.flat_map(|head| head.screws_more_g().map(|more_g| (head.code.clone(), more_g))).collect()
}

/// Everything that fits one club, with what each part does to its swing weight.
fn fitting<'a>(
    assembly: Assembly<'a>,
    club: &'a JobClub,
    shelf: &Shelf<'a>,
    (seat, ferrule): (Option<Seat<'a>>, Option<&'a Part>),
    pairs: &Arc<[TipPair]>,
    losses: &mut Losses,
    missing: &mut Vec<Missing>,
) -> Result<Fitting<'a>, TradeError> {
    let target = &club.target;
    let library = assembly.library;
    let weights = assembly.shop.plan_weights;
    let (head_model, head_number) = library.head_number(&target.head_model, &target.number)?;
    let shaft_model = library.shaft(&target.shaft_model)?;
    let grip_model = library.grip(&target.grip_model)?;
    let cap_mm = grip_model.cap_mm;
    if let (Some(code), None) = (&target.ferrule_model, ferrule) {
        missing.push(lacks(club, PartKind::Ferrule, code, Lack::Ferrule));
    }
    let adapter = seat.as_ref().map(|s| s.model);
    let below_tip_mm = adapter.map_or(0.0, |model| model.lifts_mm(target.adapter_setting.as_deref()));
    let cut_mm = fit::cut_length_mm(target, head_number, grip_model, below_tip_mm)?;
    let places = Places::new(cut_mm, head_number.bore_to_ground_mm + below_tip_mm, head_model.bore_depth_mm);
    let head_arm_mm = places.head_mm(head_model.offset_prior_mm().0) + cap_mm;
    let adapter_bore = adapter.map(|model| model.bore_diameter_mm);
    let shaft_fits = fit::head_takes_shaft(head_model, adapter_bore, shaft_model);

    // A customer's part goes into that customer's clubs only.
    let customer = assembly.job.sheet.customer;
    let per_head_g = points_per_g(head_arm_mm);
    let its_heads: Vec<(usize, f64)> = shelf
        .heads
        .iter()
        .enumerate()
        .filter(|(_, p)| p.model == head_model.code && p.may_go_to(customer))
        .filter(|(_, p)| p.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&target.number)))
        .filter_map(|(part, p)| Some((part, p.mass_g?)))
        .collect();
    let head_masses = HeadMasses::of(its_heads.iter().map(|&(_, mass_g)| mass_g));
    let head = |(part, mass_g)| candidate(part, mass_g * per_head_g, mass_g, head_masses.cost(weights, mass_g));
    let heads: Vec<Candidate> = its_heads.into_iter().map(head).collect();
    let mut shafts = Vec::new();
    let mut shaft_candidates = Vec::new();
    for (part, p) in shelf.shafts.iter().enumerate().filter(|(_, p)| p.model == shaft_model.code && shaft_fits) {
        if !p.may_go_to(customer) {
            continue;
        }
        let Some(used) = fit::blank_use(shaft_model, p, &target.number) else { continue };
        if p.mass_g.is_none() {
            continue;
        }
        let raw = fit::raw_shaft(shaft_model, p, &target.number)?;
        let Some(cut) = fit::cut(shaft_model, raw, p.tip_trimmed_mm.unwrap_or(0.0), &target.number, cut_mm)? else {
            continue;
        };
        let neighbour = if used == BlankUse::Own { 0.0 } else { weights.neighbour_blank };
        let extra = neighbour + shelf.lines.cost(assembly.shop, shaft_model, p, target);
        let points = cut.shaft.mass_g * points_per_g(cut.shaft.balance_point_mm + cap_mm);
        shaft_candidates.push(candidate(part, points, cut.shaft.mass_g, extra));
        shafts.push((part, cut, used));
    }
    let per_grip_g = points_per_g(grip_model.centre_mm);
    let grips: Vec<Candidate> = shelf
        .grips
        .iter()
        .enumerate()
        .filter(|(_, p)| p.model == grip_model.code && p.may_go_to(customer))
        .map(|(part, p)| {
            let mass_g = p.mass_g.unwrap_or(grip_model.mass_g);
            let spent = p.mass_g.map_or(0.0, |mass_g| grip_cost(weights, grip_model, mass_g));
            candidate(part, mass_g * per_grip_g, mass_g, spent)
        })
        .collect();
    let adapters = adapter_candidates(assembly, seat.as_ref(), shelf, places, cap_mm)?;
    let mut tips = Vec::new();
    for (tip, p) in shelf.tips.iter().enumerate() {
        let model = library.tip_weight(&p.model)?;
        if target.may_have_tip_weight()
            && p.may_go_to(customer)
            && tip_weight::tip_weight_fits(model, shaft_model.tip_diameter_mm)
        {
            let mass_g = p.mass_g.unwrap_or(model.mass_g);
            tips.push(TipFit { tip, points: tip_weight::points(cut_mm, cap_mm, &[InTip::of(model, mass_g)]) });
        }
    }
    let screws = (shelf.tips.len()..).zip(&shelf.screws).filter(|(_, (head, _))| *head == head_model.code);
    tips.extend(screws.map(|(tip, (_, more_g))| TipFit { tip, points: more_g * per_head_g }));
    let (fixed_points, fixed_g) = fixed(assembly, club, shaft_model, ferrule, places)?;
    let nominal = fit::raw_shaft(shaft_model, &nominal_shaft(shaft_model, &target.number), &target.number)?;
    let shaft_nominal_g =
        fit::cut(shaft_model, nominal, 0.0, &target.number, cut_mm)?.map_or(nominal.mass_g, |c| c.shaft.mass_g);
    let outlook = outlook::outlook(
        assembly,
        club,
        shelf,
        &Lists { heads: &heads, shafts: &shaft_candidates, grips: &grips, adapters: &adapters, ferrule },
        losses,
    )?;
    let need = ClubNeed {
        base_points: outlook.base_points.unwrap_or(fixed_points - quantity::A0_POINTS - target.swing_weight_points),
        heads,
        shafts: shaft_candidates,
        grips,
        adapters: head_model.takes_adapter.then_some(adapters),
        tips,
        tip_cap_g: if target.may_have_tip_weight() { assembly.shop.tip_weight_cap_g } else { 0.0 },
        tip_pairs: pairs.clone(),
        shaft_nominal_g,
        mass_target: target.total_mass_g.map(|target_g| MassTarget { base_mass_g: fixed_g, target_g }),
        head_scale: Some(HeadScale { points_per_g: per_head_g, zero_mass_g: 0.0 }),
        loss: outlook.loss,
    };
    Ok(Fitting {
        club,
        head_model,
        head_number,
        shaft_model,
        adapter,
        ferrule,
        places,
        grip_model,
        head_masses,
        shafts,
        need,
    })
}

fn candidate(part: usize, points: f64, mass_g: f64, extra_cost: f64) -> Candidate {
    Candidate { part, points, mass_g, extra_cost }
}

/// A shaft exactly as its model says, to know what the set's line of shaft masses is.
fn nominal_shaft(model: &ShaftModel, number: &str) -> Part {
    let number = model.blank(number).and_then(|b| b.number.clone());
    Part { number, ..Part::new("", PartKind::Shaft, &model.code) }
}

/// What each adapter of a seat does to the swing weight of a club.
fn adapter_candidates(
    assembly: Assembly<'_>,
    seat: Option<&Seat<'_>>,
    shelf: &Shelf<'_>,
    places: Places,
    cap_mm: f64,
) -> Result<Vec<Candidate>, TradeError> {
    let Some(seat) = seat else { return Ok(Vec::new()) };
    let per_g = points_per_g(places.adapter_mm(seat.model.length_mm) + cap_mm);
    let one = |&at: &usize| {
        let part = shelf.adapters[at];
        let mass_g = part.mass_g.unwrap_or(assembly.library.adapter(&part.model)?.mass_g);
        Ok(candidate(at, mass_g * per_g, mass_g, 0.0))
    };
    seat.adapters.iter().map(one).collect()
}

/// Points and grams of everything that is not chosen: turned ferrule, adhesive and tape.
fn fixed(
    assembly: Assembly<'_>,
    club: &JobClub,
    shaft: &ShaftModel,
    ferrule: Option<&Part>,
    places: Places,
) -> Result<(f64, f64), TradeError> {
    let target = &club.target;
    let grip = assembly.library.grip(&target.grip_model)?;
    let at = |arm_mm: f64| points_per_g(arm_mm + grip.cap_mm);
    let (mut points, mut grams) = (0.0, 0.0);
    let mut put = |mass_g: f64, arm_mm: f64| {
        points += mass_g * at(arm_mm);
        grams += mass_g;
    };
    if let Some(part) = ferrule {
        let model = assembly.library.ferrule(&part.model)?;
        put(turned_g(part.mass_g.unwrap_or(model.mass_g)), places.ferrule_mm(model.length_mm));
    }
    if let Some(code) = target.adhesive_in(assembly.shop) {
        put(assembly.library.adhesive(code)?.joint_mass_g, places.adhesive_mm());
    }
    if let Some(code) = target.tape_in(assembly.shop) {
        let (mass_g, arm_mm, _) = tape_on(target.wraps, assembly.library.tape(code)?, grip, shaft.butt_diameter_mm);
        put(mass_g, arm_mm);
    }
    Ok((points, grams))
}

fn club_plan(
    assembly: Assembly<'_>,
    fitting: &Fitting<'_>,
    shelf: &Shelf<'_>,
    choice: &Choice,
) -> Result<ClubPlan, TradeError> {
    let (tips, screw_more_g) = shelf.tips_and_screw(choice);
    let picks = Picks {
        head: shelf.heads[choice.head],
        shaft: shelf.shafts[choice.shaft],
        grip: shelf.grips[choice.grip],
        adapter: choice.adapter.map(|adapter| shelf.adapters[adapter]),
        ferrule: fitting.ferrule,
        tips,
        screw_more_g,
    };
    let plan = plan_with(assembly, fitting.club, &picks)?;
    let plan = ClubPlan { reasons: reasons(fitting, shelf, choice), ..plan };
    Ok(shelf.lines.note(fitting.shaft_model, picks.shaft, fitting.club, plan))
}

/// Whether two plans choose the same parts and screws: what was shown is what is accepted.
#[must_use]
pub fn fingerprint(plan: &Plan) -> String {
    // FNV-1a, 64 bits: a short, stable mark of equality between two proposals, not a defence against anyone.
    let mut hash = FnvHasher::default();
    for club in &plan.clubs {
        for part in club.iter().flat_map(|c| &c.parts) {
            hash.write(part.part.as_str().as_bytes());
            hash.write(b",");
        }
        let more_g = club.as_ref().map_or(0.0, |c| c.extras_g(Action::Screw));
        if more_g != 0.0 {
            hash.write(format!("screw {more_g:+.2}").as_bytes());
        }
        hash.write(b";");
    }
    format!("{:016x}", hash.finish())
}
