//! Work on clubs from elsewhere: clubs that nobody knows, drawn off what the belief starts from, worked on as the bench
//! advises, and weighed up by the arithmetic of [`crate::club`].
//!
//! The advice sees what a shop would: what was read, the models without a maker, its own grips and shafts. What is in the old
//! club (adhesive, a weight in the tip, a plug in the butt) it does not see.

mod came;
mod tally;

use self::came::TrueArrival;
pub use self::tally::{Depth, KindLine, KindTally};
use crate::club::{Mass, TrueClub, cut_shaft};
use crate::draw::{Draw, Stream};
use crate::error::SimulationError;
use crate::models::{self, Nominal};
use crate::scale::STEP;
use crate::settings::Settings;
use crate::shop::{GripTruth, SimulatedShop};
use bench::assembly::Assembly;
use bench::belief::Finish;
use bench::learned::Learned;
use bench::scale_watch::ScaleWatch;
use desk::club_work::{AskedOfClub, nearest, pieces_of, row_of, work_of};
use jiff::Timestamp;
use trade::action::Action;
use trade::arrival::Arrival;
use trade::club::{Club, as_it_came};
use trade::error::TradeError;
use trade::id::{ClubId, JobId, SheetId};
use trade::job::{ClubWork, Job, JobClub, JobState};
use trade::job_kind::{JobKind, of_the_trade};
use trade::kind::{ClubKind, Hand, Role};
use trade::model::as_it_came::HeadMaterial;
use trade::model::{Library, PartKind};
use trade::part::Part;
use trade::plan::{ClubPlan, Extra};
use trade::reading::{Reading, What};
use trade::sheet::{SetRule, Sheet};
use trade::shop::Shop;
use trade::swing_weight::points_per_g;

/// The kinds that change a swing weight, and so are simulated; a bend does not.
pub const KINDS: [&str; 6] = ["regrip", "shorten", "lengthen", "rebalance", "reshaft", "loose_head"];

/// Everything that is on a whole club, a plug and lead among it.
const WHOLE: [Role; 8] =
    [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Tape, Role::Grip, Role::Extra];
/// The same without its grip and tape.
const BARE: [Role; 6] = [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Extra];
/// Grips in the shop.
const GRIPS: usize = 60;

/// One club of one kind, read to one depth.
struct Case<'a> {
    shop: &'a SimulatedShop,
    came: TrueArrival,
    /// The shop's own grips: true mass, and as weighed, with centre and cap of each.
    grips: Vec<(f64, f64, f64, f64)>,
    grip: GripTruth,
    nominal: Nominal,
    offset_points: f64,
    noise: Draw,
    settled: Shop,
    library: Library,
    learned: Learned,
    watch: ScaleWatch,
}

impl Case<'_> {
    fn shown(&mut self, true_points: f64) -> f64 {
        let noise = self.noise.normal(0.0, self.shop.noise_points);
        ((true_points + self.offset_points + noise) / STEP).round() * STEP
    }

    fn weighed(&mut self, true_g: f64) -> f64 {
        ((true_g + self.noise.normal(0.0, 0.05)) / STEP).round() * STEP
    }

    fn parts(&self) -> Vec<Part> {
        let grip = |(i, (_, weighed, ..)): (usize, &(f64, f64, f64, f64))| {
            let code = format!("G-{i:02}");
            let part = Part::new(&code, PartKind::Grip, &models::grip_code(0));
            Part { id: code.as_str().into(), mass_g: Some(*weighed), ..part }
        };
        self.grips.iter().enumerate().map(grip).collect()
    }
}

/// Works on a range of numbered clubs of one kind. A number always stands for the same club, whichever thread takes it.
///
/// # Errors
/// An unknown kind; advice that failed.
pub fn run_kind(
    settings: &Settings,
    kind: &str,
    clubs: std::ops::Range<u64>,
    step: &mut dyn FnMut(),
) -> Result<[KindTally; Depth::ALL.len()], SimulationError> {
    let found = of_the_trade().iter().find(|one| one.key == kind && KINDS.contains(&kind));
    let found = found.ok_or_else(|| SimulationError::Kind { kind: kind.to_owned() })?;
    let mut tallies: [KindTally; Depth::ALL.len()] = Default::default();
    for id in clubs {
        for (tally, depth) in tallies.iter_mut().zip(Depth::ALL) {
            one_club(settings, found, id, depth, tally).map_err(|e| SimulationError::Advice {
                shop: id,
                job: 0,
                way: kind.to_owned(),
                what: fact::Fact::told(&e.refusal().fact().clone()),
            })?;
        }
        step();
    }
    Ok(tallies)
}

fn case<'a>(settings: &Settings, shop: &'a SimulatedShop, id: u64) -> Case<'a> {
    let mut draw = Draw::of(settings.seed, Stream::Club, &[id, 77]);
    let came = TrueArrival::draw(&mut draw);
    let mut boxes = Draw::of(settings.seed, Stream::Parts, &[id, 77]);
    let grip = GripTruth::draw(settings, shop, 0);
    let nominal = Nominal::default();
    let s = shop.scatter;
    let grips = (0..GRIPS)
        .map(|_| {
            // A shop keeps grips of several sizes of one model to choose by mass.
            let mass_g = boxes.uniform(nominal.grip_g - 8.0, nominal.grip_g + 8.0);
            let weighed = ((mass_g + boxes.normal(0.0, 0.04)) * 10.0).round() / 10.0;
            (mass_g, weighed, boxes.normal(0.0, s.grip_centre_mm), boxes.normal(0.0, s.cap_mm))
        })
        .collect();
    let masses_g = vec![260.0; models::IRONS.len()];
    let library = models::library(&nominal, 0, &masses_g, s.grip_g);
    let settled =
        Shop { adhesive: Some("ADHESIVE".into()), tape: Some("TAPE".into()), steps: Vec::new(), ..Shop::default() };
    let mut day = Draw::of(settings.seed, Stream::Day, &[id, 77]);
    let offset_points = shop.habit_points + day.normal(0.0, s.day_points());
    let noise = Draw::of(settings.seed, Stream::Reading, &[id, 77]);
    let (learned, watch) = (Learned::default(), ScaleWatch::default());
    Case { shop, came, grips, grip, nominal, offset_points, noise, settled, library, learned, watch }
}

/// What a kind asks of a club: a length where it changes it, a swing weight where it is not to keep its own.
fn asked(kind: &JobKind, came: &TrueArrival, arrived: f64, draw: &mut Draw) -> AskedOfClub {
    let to_cap_mm = came.ground_mm() + came.cap_mm;
    let by_mm = draw.uniform(6.0, 25.0);
    let takes = |part| kind.takes.contains(&part);
    AskedOfClub {
        club: "C1".into(),
        kind: kind.key.clone(),
        grip_model: takes(PartKind::Grip).then(|| models::grip_code(0)),
        shaft_model: takes(PartKind::Shaft).then(|| "SHAFT".to_owned()),
        ferrule_model: takes(PartKind::Ferrule).then(|| "FERRULE".to_owned()),
        length_mm: match kind.key.as_str() {
            "shorten" => Some(to_cap_mm - by_mm),
            "lengthen" => Some(to_cap_mm + by_mm),
            "reshaft" => Some(to_cap_mm),
            _ => None,
        },
        extension_mass_g: (kind.key == "lengthen").then_some(6.0 + 0.2 * by_mm),
        swing_weight_points: (kind.key == "rebalance")
            .then(|| arrived + (draw.uniform(1.0, 4.0) * 10.0).round() / 10.0),
        ..AskedOfClub::default()
    }
}

fn one_club(
    settings: &Settings,
    kind: &JobKind,
    id: u64,
    depth: Depth,
    tally: &mut KindTally,
) -> Result<(), TradeError> {
    let shop = SimulatedShop::draw(settings, id);
    let mut case = case(settings, &shop, id);
    let truth = case.came.club();
    let came_points = truth.swing_weight_points(&WHOLE);
    let arrived = case.shown(came_points);
    // The length is measured to half a millimetre where the kind needs it, and a rule errs.
    let mut draw = Draw::of(settings.seed, Stream::Figures, &[id, 77]);
    let length_mm = ((case.came.ground_mm() + case.came.cap_mm + draw.normal(0.0, 0.5)) * 2.0).round() / 2.0;
    let asked = asked(kind, &case.came, arrived, &mut draw);
    let arrival = Arrival { length_mm: Some(length_mm), ..Arrival::default() };
    let club = Club {
        code: "C1".into(),
        label: String::new(),
        player: "Simulated".into(),
        owner: None,
        hand: Hand::Right,
        made: as_it_came(ClubKind::Iron, case.came.number, HeadMaterial::Unknown, &arrival),
        grip_size_mm: None,
        figures: Vec::new(),
        version: 1,
    };
    let club = with_length(club, length_mm);
    let row = row_of(&case.library, kind, &club, &asked)?;
    let work = work_of(kind, &club, &asked);
    let mut job = job_of(kind, row, work.clone());
    let mut readings = Vec::new();
    let mut read = |step: &str, what: What, value: f64, second: i64| {
        let on = kind.steps.iter().find(|one| one.key == step).map(|one| one.on.clone()).unwrap_or_default();
        readings.push(reading(&job_id(), step, what, value, on, second, readings.len()));
    };
    read("arrived", What::SwingWeight, arrived, 60);
    if depth != Depth::Arrived && kind.takes.contains(&PartKind::Grip) {
        let (grip_g, tape_g) = (case.weighed(case.came.grip_g), case.weighed(case.came.tape_g));
        read("stripped", What::GripMass, grip_g, 120);
        read("stripped", What::TapeMass, tape_g, 121);
        if depth >= Depth::Bare && kind.key != "reshaft" {
            let bare = case.shown(truth.swing_weight_points(&BARE));
            read("stripped", What::SwingWeight, bare, 180);
        }
    }
    let pulled = kind.steps.iter().any(|one| one.key == "pulled");
    if pulled && depth != Depth::Arrived {
        let head_g = case.weighed(case.came.head_g);
        read("pulled", What::HeadMass, head_g, 240);
    }
    let mut shafts = Draw::of(settings.seed, Stream::Head, &[id, 77]);
    let new_shaft = NewShaft::draw(&case, &mut shafts);
    let ferrule =
        Part { id: "F".into(), mass_g: Some(case.nominal.ferrule_g), ..Part::new("F", PartKind::Ferrule, "FERRULE") };
    let parts = case.parts();
    let mut picks: Vec<&Part> = Vec::new();
    if kind.takes.contains(&PartKind::Shaft) {
        picks.push(&new_shaft.part);
    }
    if kind.takes.contains(&PartKind::Ferrule) {
        picks.push(&ferrule);
    }
    let grips: Vec<&Part> = parts.iter().collect();
    let takes_grip = kind.takes.contains(&PartKind::Grip);
    let plan_with = |case: &Case<'_>, job: &Job, picks: &[&Part]| -> Result<ClubPlan, TradeError> {
        let row = &job.clubs[0].target;
        pieces_of(&case.library, &work, row, picks, asked.extension_mass_g, Timestamp::UNIX_EPOCH)
    };
    job = job.with_targets_read(&readings);
    // Any grip of the model first: what is read without a grip speaks of all of them alike.
    let mut with_any = picks.clone();
    with_any.extend(takes_grip.then(|| grips[0]));
    job.clubs[0].plan = Some(plan_with(&case, &job, &with_any)?);
    if depth >= Depth::Bare && takes_grip && kind.key != "regrip" {
        // The club is read once more as it is after the work, before its grip goes on.
        let after = after_work(&case, kind, &asked, &new_shaft, None, None);
        let step = match kind.key.as_str() {
            "shorten" => "shortened",
            "lengthen" => "extended",
            _ => "cured",
        };
        let shown = case.shown(after.swing_weight_points(&BARE));
        let on = kind.steps.iter().find(|one| one.key == step).map(|one| one.on.clone()).unwrap_or_default();
        readings.push(reading(&job_id(), step, What::SwingWeight, shown, on, 400, readings.len()));
    }
    let (finish, _) = believed(&case, &job, &readings)?;
    let mut chosen = None;
    if takes_grip {
        let model = models::grip_code(0);
        let per_g = points_per_g(case.library.grip(&model)?.centre_mm);
        let any_g = grips[0].mass_g.unwrap_or_default();
        let off = finish.deviation_points + per_g * (case.nominal.grip_g - any_g);
        let grip = nearest(&grips, (&model, case.nominal.grip_g), off, per_g).unwrap_or(grips[0]);
        chosen = grips.iter().position(|one| one.code == grip.code);
        let mut with_grip = picks.clone();
        with_grip.push(grip);
        job.clubs[0].plan = Some(plan_with(&case, &job, &with_grip)?);
    }
    if let Some(grip) = chosen.filter(|_| depth == Depth::Measured) {
        for (what, value, second) in measured(&mut case, grip) {
            readings.push(reading(&job_id(), "finish", what, value, vec![Role::Grip], second, readings.len()));
        }
    }
    let mut added = None;
    if takes_grip || kind.key == "rebalance" {
        let (finish, _) = believed(&case, &job, &readings)?;
        added = what_brings_it_back(&case, &job, finish.deviation_points)?;
        if let (Some(extra), Some(plan)) = (&added, &mut job.clubs[0].plan) {
            plan.extras.push(extra.clone());
        }
    }
    let (finish, _) = believed(&case, &job, &readings)?;
    let made = after_work(&case, kind, &asked, &new_shaft, chosen, added.as_ref());
    let true_points = made.swing_weight_points(&WHOLE);
    // What it is to keep is kept in truth; a figure that is asked is asked in true points.
    let goal = asked.swing_weight_points.unwrap_or(came_points);
    let deviation = true_points - goal;
    tally.within_03.add(deviation.abs() <= 0.3 + 1e-3);
    tally.deviation.add(deviation);
    tally.chance.add(finish.chance);
    tally.band.add(finish.band_points);
    tally.held.add((deviation - finish.deviation_points).abs() <= finish.band_points);
    let shown = case.shown(true_points);
    let on = kind.steps.iter().find(|one| one.key == "finish").map(|one| one.on.clone()).unwrap_or_default();
    readings.push(reading(&job_id(), "finish", What::SwingWeight, shown, on, 600, readings.len()));
    let (finish, doubted) = believed(&case, &job, &readings)?;
    tally.held_at_finish.add((deviation - finish.deviation_points).abs() <= finish.band_points);
    for i in 0..readings.len() {
        tally.doubts.add(i < doubted);
    }
    Ok(())
}

/// The new grip's centre by an edge, its cap by a caliper, its tape on the scale.
fn measured(case: &mut Case<'_>, grip: usize) -> [(What, f64, i64); 3] {
    let (_, _, centre_mm, cap_mm) = case.grips[grip];
    let s = case.shop.scatter;
    let centre = case.grip.centre_mm + centre_mm + case.noise.normal(0.0, s.edge_mm);
    let cap = case.grip.cap_mm + cap_mm + case.noise.normal(0.0, s.caliper_mm);
    let tape_g = new_tape(case).0;
    let tape = case.weighed(tape_g);
    [
        (What::GripCentre, (centre * 2.0).round() / 2.0, 450),
        (What::CapThickness, (cap * 10.0).round() / 10.0, 451),
        (What::TapeMass, tape, 452),
    ]
}

/// Mass and place of the new tape, as it truly is.
fn new_tape(case: &Case<'_>) -> (f64, f64) {
    let nominal = &case.nominal;
    let strip_mm = nominal.grip_mm - nominal.cap_mm - 13.0 - case.shop.tape_short_mm;
    let area_m2 = strip_mm * std::f64::consts::PI * nominal.butt_mm * 1e-6;
    (area_m2 * nominal.tape_g_m2 * case.shop.tape_share, strip_mm / 2.0)
}

/// Less than this is not worth a weight, points.
const NOT_WORTH_POINTS: f64 = 0.1;

/// Lead on the head of a club that would finish light, a weight in the butt of one that would finish heavy.
fn what_brings_it_back(case: &Case<'_>, job: &Job, deviation_points: f64) -> Result<Option<Extra>, TradeError> {
    if deviation_points.abs() < NOT_WORTH_POINTS {
        return Ok(None);
    }
    let action = if deviation_points < 0.0 { Action::LeadTape } else { Action::Counterweight };
    let arm_mm = bench::remedy::place_of(assembly(case, job), &job.clubs[0], action)?;
    let mass_g = -deviation_points / points_per_g(arm_mm + case.nominal.cap_mm);
    let at = Timestamp::from_second(500).unwrap_or_default();
    Ok(Some(Extra { action, mass_g: (mass_g * 10.0).round() / 10.0, arm_mm, at }))
}

fn with_length(mut club: Club, length_mm: f64) -> Club {
    let what = What::FinishedLength;
    let at = Timestamp::UNIX_EPOCH;
    club.note([trade::club::ClubFigure { what, value: length_mm, unit: what.unit(), scale: None, at }]);
    club
}

/// A shaft out of the rack, as it truly is and as the shop knows it.
struct NewShaft {
    part: Part,
    mass_g: f64,
    centre_mm: f64,
    cut_error_mm: f64,
    joint_g: f64,
    turnings_g: f64,
}

impl NewShaft {
    fn draw(case: &Case<'_>, draw: &mut Draw) -> Self {
        let s = case.shop.scatter;
        let mass_g = draw.normal(case.nominal.shaft_g, s.shaft_g);
        let weighed = (mass_g * 10.0).round() / 10.0;
        let part = Part { id: "S".into(), mass_g: Some(weighed), ..Part::new("S", PartKind::Shaft, "SHAFT") };
        Self {
            part,
            mass_g,
            centre_mm: case.nominal.shaft_centre_mm + case.shop.shaft_centre_mm + draw.normal(0.0, s.shaft_centre_mm),
            cut_error_mm: draw.normal(0.0, s.cut_mm),
            joint_g: (case.shop.joint_g + draw.normal(0.0, s.joint_g)).max(0.3),
            turnings_g: (case.shop.turnings_g + draw.normal(0.0, s.turnings_g)).max(0.0),
        }
    }
}

/// The club after the work, as it truly is; without a grip where none is named.
fn after_work(
    case: &Case<'_>,
    kind: &JobKind,
    asked: &AskedOfClub,
    new: &NewShaft,
    grip: Option<usize>,
    added: Option<&Extra>,
) -> TrueClub {
    let came = &case.came;
    let mass = |role, mass_g, arm_mm| Mass { role, mass_g, arm_mm };
    let (shop, nominal) = (case.shop, &case.nominal);
    // The builder goes by the rule and by the caps of the models; the saw errs.
    let by_mm = match (kind.key.as_str(), asked.length_mm) {
        ("shorten" | "lengthen", Some(to_mm)) => {
            to_mm - nominal.cap_mm - (came.ground_mm() + came.cap_mm - OLD_CAP_MM) + new.cut_error_mm
        }
        _ => 0.0,
    };
    let mut masses = came.masses();
    masses.retain(|m| !(matches!(m.role, Role::Grip | Role::Tape) && kind.takes.contains(&PartKind::Grip)));
    let mut shaft_mm = came.shaft_mm;
    if by_mm < 0.0 {
        let (shaft_g, centre_mm) =
            cut_shaft(came.shaft_g, came.shaft_mm, came.shaft_centre_mm, came.shaft_bulge, -by_mm, 0.0);
        masses.retain(|m| m.role != Role::Shaft);
        masses.iter_mut().filter(|m| !matches!(m.role, Role::Grip | Role::Tape)).for_each(|m| m.arm_mm += by_mm);
        masses.push(mass(Role::Shaft, shaft_g, centre_mm));
        shaft_mm += by_mm;
    } else if by_mm > 0.0 {
        masses.iter_mut().filter(|m| !matches!(m.role, Role::Grip | Role::Tape)).for_each(|m| m.arm_mm += by_mm);
        // The piece reaches some 2 in into the shaft; its adhesive was not on the scale with it.
        let (inside_mm, glue_g) = (48.0 + new.cut_error_mm * 3.0, 0.3 * new.joint_g);
        masses.push(mass(Role::Extra, asked.extension_mass_g.unwrap_or(0.0) + glue_g - 0.6, (by_mm + inside_mm) / 2.0));
        shaft_mm += by_mm;
    }
    if kind.key == "reshaft" {
        shaft_mm = asked.length_mm.unwrap_or(0.0) - nominal.cap_mm - BELIEVED_TIP_TO_GROUND_MM + new.cut_error_mm;
        let trim_mm = nominal.tip_trim_mm[models::IRONS.iter().position(|(n, _)| *n == came.number).unwrap_or(3)];
        let butt_mm = nominal.shaft_mm - trim_mm - shaft_mm;
        let (shaft_g, centre_mm) =
            cut_shaft(new.mass_g, nominal.shaft_mm, new.centre_mm, shop.shaft_bulge, butt_mm, trim_mm);
        masses.retain(|m| m.role == Role::Head);
        masses.iter_mut().for_each(|m| m.arm_mm = shaft_mm + came.tip_to_ground_mm + came.head_beyond_mm);
        masses.push(mass(Role::Shaft, shaft_g, centre_mm));
    }
    if kind.takes.contains(&PartKind::Ferrule) {
        masses.retain(|m| m.role != Role::Adhesive);
        masses.push(mass(Role::Adhesive, new.joint_g, shaft_mm - 15.0 + shop.joint_arm_mm));
        let ferrule_mm = shaft_mm - 30.0 - nominal.ferrule_mm / 2.0;
        masses.push(mass(Role::Ferrule, nominal.ferrule_g - new.turnings_g, ferrule_mm));
    }
    if let Some(extra) = added {
        // Lead goes on the back of the head, a weight into the butt, each within some millimetres of where it is taken to be.
        let slip_mm = new.cut_error_mm * 4.0;
        let arm_mm = match extra.action {
            Action::LeadTape => shaft_mm + came.tip_to_ground_mm + came.head_beyond_mm + slip_mm,
            _ => extra.arm_mm + slip_mm,
        };
        masses.push(mass(Role::Extra, extra.mass_g, arm_mm));
    }
    let mut cap_mm = came.cap_mm;
    if let Some((mass_g, _, centre_mm, cap_off_mm)) = grip.map(|i| case.grips[i]) {
        cap_mm = case.grip.cap_mm + cap_off_mm;
        masses.push(mass(Role::Grip, mass_g, case.grip.centre_mm + centre_mm + shop.stretch_mm / 2.0));
        let (tape_g, tape_mm) = new_tape(case);
        masses.push(mass(Role::Tape, tape_g, tape_mm));
    }
    TrueClub { masses, cap_mm, shaft_mm, bore_to_ground_mm: came.tip_to_ground_mm }
}

/// What the shop takes an old cap and the way from the tip to the ground for, mm: the figures of `trade::model::as_it_came`.
const OLD_CAP_MM: f64 = 3.2;
const BELIEVED_TIP_TO_GROUND_MM: f64 = 30.0;

fn assembly<'a>(case: &'a Case<'_>, job: &'a Job) -> Assembly<'a> {
    Assembly { job, library: &case.library, shop: &case.settled, learned: &case.learned, watch: &case.watch }
}

/// The forecast of the finish, and how many readings are doubted.
fn believed(case: &Case<'_>, job: &Job, readings: &[Reading]) -> Result<(Finish, usize), TradeError> {
    let believed = assembly(case, job).believe(readings)?;
    let doubted = readings.iter().filter(|reading| believed.is_doubted(&reading.id)).count();
    let finish = believed.finish(&job.clubs[0].id)?;
    Ok((finish.ok_or_else(|| TradeError::refused(NoFinish::Unplanned))?, doubted))
}

fact::facts! {
    /// Why a club of a simulated job has no forecast.
    enum NoFinish: "no_finish" {
        Unplanned,
    }
}

fn job_id() -> JobId {
    JobId::from("job")
}

fn job_of(kind: &JobKind, row: trade::sheet::SheetClub, work: ClubWork) -> Job {
    let sheet = Sheet {
        player: "Simulated".into(),
        customer: None,
        due: jiff::civil::Date::constant(2026, 12, 1),
        hand: Hand::Right,
        note: String::new(),
        rule: SetRule::AsWritten,
        written: String::new(),
        reference: None,
        quote: Vec::new(),
        clubs: vec![row.clone()],
    };
    let club = JobClub {
        id: ClubId("club".into()),
        slot: 1,
        card: "J1-1".into(),
        target: row,
        work: Some(work),
        plan: None,
        version: 0,
    };
    Job {
        id: job_id(),
        number: 1,
        sheet_id: SheetId::from("sheet"),
        sheet,
        state: JobState::Planned,
        steps: kind.steps.clone(),
        made_at: Timestamp::UNIX_EPOCH,
        clubs: vec![club],
        version: 0,
    }
}

fn reading(job: &JobId, step: &str, what: What, value: f64, on: Vec<Role>, second: i64, nth: usize) -> Reading {
    Reading {
        id: format!("r{nth}").as_str().into(),
        job: job.clone(),
        club: ClubId("club".into()),
        step: step.to_owned(),
        what,
        value,
        unit: what.unit(),
        typed: String::new(),
        on,
        scale: None,
        display_step: STEP,
        at: Timestamp::from_second(second).unwrap_or_default(),
        by: "simulated".into(),
        replaces: None,
        taken_back: None,
        pivot_mm: None,
        insisted: false,
        forecast: None,
    }
}
