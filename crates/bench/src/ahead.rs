//! A set with all its choices still to come, as covariances: what extra measurements and an order of work are worth, in
//! clubs expected in tolerance.
//!
//! Every club that is not gripped yet has its finish, the readings that its steps ask before the weight in its tip, before
//! its grip and after it. `estimation::worth` goes through them in the order in which they would come.

use crate::belief::Believed;
use crate::remedy::{Progress, Spare, cure_step, pool_of};
use estimation::worth::{Batch, ClubAhead, Covariances, GripTurns, GripsAhead, Planned, chances};
use estimation::{OnClub, Probe};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::What;
use trade::step::Step;
use trade::tip_weight::tip_weight_fits;

/// Clubs that choosing the grips one after another must bring to be advised.
pub(crate) const TURNS_CLUBS: f64 = 0.2;

/// Combinations of usual and unusual means less likely than this are taken together, as one that scatters as they do on average:
/// what is worth measuring depends on them little, and each costs as much time as the likeliest.
const ALONE: f64 = 0.15;

/// Tip weights closer than this are one choice, g.
const ALIKE_G: f64 = 0.05;

/// An extra measurement: what is read now with which noise, and what of it is read on the club only after its cure.
pub(crate) struct Extra {
    pub readings: Vec<(Probe, f64)>,
    pub after_cure: Option<(Probe, f64)>,
    pub club: ClubId,
}

/// The same by places: what is read now, and what is read of which club after its cure.
type Placed = (Vec<Planned>, Option<(usize, Planned)>);

/// What the set looks like under one combination of usual and unusual means.
struct Start {
    /// How likely the combination is.
    weight: f64,
    covariances: Covariances,
    /// How far it expects the clubs that are glued to lie from where all combinations together expect them, points.
    off_points: Vec<f64>,
}

/// The clubs of a set that wait for their grips.
pub(crate) struct SetAhead {
    starts: Vec<Start>,
    /// What is asked and read, by their places.
    questions: Vec<Probe>,
    clubs: Vec<ClubAhead>,
    ids: Vec<ClubId>,
    /// Those glued already, by their places.
    glued: Vec<usize>,
    /// Those still to be glued.
    open: Vec<usize>,
    /// Those that are read after the cure and wait for their grips alone.
    cured: Vec<usize>,
    tables: Vec<Vec<GripsAhead>>,
    extras: Vec<Placed>,
    /// Readings to come of clubs whose grip is on and that were not read dry yet.
    wet: Vec<Planned>,
    /// Clubs of the set with a plan, and those expected inside of them that are gripped already.
    pub of_clubs: usize,
    settled: f64,
}

/// In which batches the clubs that are not glued yet are glued.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Glued {
    /// All together.
    Together,
    /// One first, read after the cure; its grip waits for the others.
    OneCured,
    /// One first, finished.
    OneFinished,
    /// One, another, then the rest; the first two finished.
    OneOneRest,
    /// One by one, each finished.
    OneByOne,
}

impl SetAhead {
    /// How the grips of the whole set will be chosen, as the advice will have it then.
    pub(crate) fn usual_turns(&self) -> GripTurns {
        if self.still_open() == 0 && self.cured().is_empty() {
            return GripTurns::AtOnce;
        }
        let inside = |turns| self.inside(&[], &Glued::Together, turns);
        let clubs = [GripTurns::AtOnce, GripTurns::OneFirst].map(inside);
        // More than one first is not counted on: it takes an hour of the solvent a club.
        if clubs[1] - clubs[0] >= TURNS_CLUBS { GripTurns::OneFirst } else { GripTurns::AtOnce }
    }

    /// None where no club of the set waits for its grip.
    pub fn of(believed: &Believed<'_>, spares: &[Spare<'_>], extras: &[Extra]) -> Result<Option<Self>, TradeError> {
        let job = believed.assembly.job;
        let mut questions = Questions::default();
        let mut made = Self {
            starts: Vec::new(),
            questions: Vec::new(),
            clubs: Vec::new(),
            ids: Vec::new(),
            glued: Vec::new(),
            open: Vec::new(),
            cured: Vec::new(),
            tables: Vec::new(),
            extras: Vec::new(),
            wet: Vec::new(),
            of_clubs: 0,
            settled: 0.0,
        };
        let mut boxes: Vec<(String, u64, Grips)> = Vec::new();
        for club in job.clubs.iter().filter(|c| c.plan.is_some()) {
            made.of_clubs += 1;
            let progress = Progress::of(believed, club);
            let Some(finish) = believed.finish(&club.id)? else { continue };
            if progress.gripped {
                made.settled += finish.chance;
                if is_wet(believed, club) {
                    let dry = questions.plan(believed, club, &[OnClub::finished().iter().collect()]);
                    made.wet.extend(dry);
                }
                continue;
            }
            let at = made.clubs.len();
            let row = made.row(&mut boxes, believed, club, spares)?;
            let step = if progress.glued { None } else { tray_step_points(believed, club, spares)? };
            let off = finish.deviation_points - boxes[row].2.mean_points;
            made.clubs.push(ClubAhead {
                finish: questions.ask(believed.assembly.finish_probe(&club.id)),
                before_tip: questions.plan(believed, club, &before_tip(believed, club)),
                before_grip: questions.plan(believed, club, &before_grip(believed, club, progress)),
                after_grip: questions.plan(believed, club, &[OnClub::finished().iter().collect()]),
                tray_step_points: step.unwrap_or(0.0),
                glued_off_points: step.is_none().then_some(off),
                grips: row,
            });
            made.ids.push(club.id.clone());
            if progress.cure_read {
                made.cured.push(at);
            }
            if progress.glued { &mut made.glued } else { &mut made.open }.push(at);
        }
        if made.clubs.is_empty() {
            return Ok(None);
        }
        made.tables = boxes
            .iter()
            .map(|(_, _, grips)| {
                GripsAhead::one_after_another(
                    made.clubs.len(),
                    grips.count,
                    grips.spread_points,
                    grips.tolerance_points,
                )
            })
            .collect();
        for extra in extras {
            let readings = extra.readings.iter().map(|(probe, sd)| (questions.ask(probe.clone()), *sd)).collect();
            let club = made.ids.iter().position(|other| *other == extra.club);
            let later = extra.after_cure.as_ref().zip(club);
            let later = later.map(|((probe, sd), club)| (club, (questions.ask(probe.clone()), *sd)));
            made.extras.push((readings, later));
        }
        let finishes: Vec<usize> = made.clubs.iter().map(|club| club.finish).collect();
        made.starts = starts(believed, &questions.0, &finishes)?;
        made.questions = questions.0;
        Ok(Some(made))
    }

    fn row(
        &self,
        boxes: &mut Vec<(String, u64, Grips)>,
        believed: &Believed<'_>,
        club: &JobClub,
        spares: &[Spare<'_>],
    ) -> Result<usize, TradeError> {
        let tolerance_points = club.target.swing_weight_tolerance();
        let same = |(model, tolerance, _): &(String, u64, Grips)| {
            *model == club.target.grip_model && *tolerance == tolerance_points.to_bits()
        };
        if let Some(row) = boxes.iter().position(same) {
            return Ok(row);
        }
        let found = Grips::of(believed, club, spares, tolerance_points)?;
        boxes.push((club.target.grip_model.clone(), tolerance_points.to_bits(), found));
        Ok(boxes.len() - 1)
    }

    /// Clubs of the set that are not glued yet.
    pub fn still_open(&self) -> usize {
        self.open.len()
    }

    /// Clubs that are read after the cure and wait for their grips alone.
    pub fn cured(&self) -> &[usize] {
        &self.cured
    }

    /// The club at a place.
    pub fn club(&self, at: usize) -> &ClubId {
        &self.ids[at]
    }

    /// Clubs of the whole set expected in tolerance with these extra measurements, this order and these turns of the grips.
    pub fn inside(&self, extras: &[usize], order: &Glued, turns: GripTurns) -> f64 {
        let mut clubs = std::borrow::Cow::Borrowed(&self.clubs);
        let mut readings: Vec<Planned> = Vec::new();
        for (now, later) in extras.iter().filter_map(|e| self.extras.get(*e)) {
            readings.extend(now);
            if let Some((club, planned)) = later {
                clubs.to_mut()[*club].before_grip.push(*planned);
            }
        }
        let batches = self.batches(&self.open, order);
        self.settled + self.expected(&readings, &clubs, &batches, turns)
    }

    /// Clubs expected inside of those that wait for their grips alone: the grips chosen now in this order, or once the grips
    /// that are on have dried and their clubs are read.
    pub fn inside_of_cured(&self, turns: GripTurns, dried: bool) -> f64 {
        let batch = [Batch { clubs: self.cured.clone(), finished: true }];
        let first = if dried { &self.wet[..] } else { &[] };
        self.expected(first, &self.clubs, &batch, turns)
    }

    /// Clubs expected in tolerance over all combinations.
    fn expected(&self, readings: &[Planned], clubs: &[ClubAhead], batches: &[Batch], turns: GripTurns) -> f64 {
        let of = |start: &Start| {
            let mut clubs = std::borrow::Cow::Borrowed(clubs);
            if self.starts.len() > 1 && !self.glued.is_empty() {
                for (club, off) in clubs.to_mut().iter_mut().zip(&start.off_points) {
                    club.glued_off_points = club.glued_off_points.map(|points| points + off);
                }
            }
            let inside = chances(&start.covariances, readings, &clubs, batches, turns, &self.tables);
            start.weight * inside.iter().sum::<f64>()
        };
        self.starts.iter().map(of).sum()
    }

    /// Whether a grip is on that has not been read dry yet.
    pub fn is_wet(&self) -> bool {
        !self.wet.is_empty()
    }

    fn batches(&self, open: &[usize], order: &Glued) -> Vec<Batch> {
        let batch = |clubs: &[usize], finished| Batch { clubs: clubs.to_vec(), finished };
        // Clubs that cure already are gripped with the others only where all go together.
        let begun = (!self.glued.is_empty()).then(|| batch(&self.glued, *order != Glued::Together || open.is_empty()));
        let one = 1.min(open.len());
        let two = 2.min(open.len());
        let rest = match order {
            Glued::Together => vec![batch(open, true)],
            Glued::OneCured => vec![batch(&open[..one], false), batch(&open[one..], true)],
            Glued::OneFinished => vec![batch(&open[..one], true), batch(&open[one..], true)],
            Glued::OneOneRest => {
                vec![batch(&open[..one], true), batch(&open[one..two], true), batch(&open[two..], true)]
            }
            Glued::OneByOne => open.iter().map(|at| batch(&[*at], true)).collect(),
        };
        begun.into_iter().chain(rest).collect()
    }

    /// Standard deviation of a club's finish with these extra measurements and the readings that its steps ask before its
    /// grip.
    pub fn sd_with(&self, believed: &Believed<'_>, club: &ClubId, extras: &[usize]) -> Result<f64, TradeError> {
        let Some(at) = self.ids.iter().position(|id| id == club) else { return Ok(0.0) };
        let asked = &self.clubs[at];
        let more = extras.iter().filter_map(|e| self.extras.get(*e));
        let more = more.flat_map(|(now, later)| now.iter().chain(later.iter().map(|(_, planned)| planned)));
        let readings = more.chain(&asked.before_tip).chain(&asked.before_grip);
        let planned: Vec<(Probe, f64)> = readings.map(|(at, sd)| (self.questions[*at].clone(), *sd)).collect();
        Ok(believed.sd_after(&self.questions[asked.finish], &planned)?)
    }
}

/// What the set looks like under the combinations of usual and unusual means; `finishes` are the places of the clubs' finishes
/// among the questions.
fn starts(believed: &Believed<'_>, questions: &[Probe], finishes: &[usize]) -> Result<Vec<Start>, TradeError> {
    let mut starts: Vec<Start> = Vec::new();
    let mut rest: Option<Start> = None;
    for part in &believed.mixture().parts {
        let joint = part.belief.joint(questions)?;
        let one = Start {
            weight: part.weight,
            covariances: Covariances::from_rows(&joint.covariance),
            off_points: finishes.iter().map(|at| joint.mean[*at]).collect(),
        };
        if part.weight >= ALONE {
            starts.push(one);
            continue;
        }
        rest = Some(match rest {
            Some(rest) => rest.with(&one),
            None => one,
        });
    }
    starts.extend(rest);
    let of_all: Vec<f64> =
        (0..finishes.len()).map(|i| starts.iter().map(|s| s.weight * s.off_points[i]).sum()).collect();
    for start in &mut starts {
        start.off_points.iter_mut().zip(&of_all).for_each(|(off, all)| *off -= all);
    }
    Ok(starts)
}

impl Start {
    /// Two taken together.
    fn with(self, other: &Self) -> Self {
        let weight = self.weight + other.weight;
        let share = other.weight / weight;
        let off_points = self.off_points.iter().zip(&other.off_points).map(|(a, b)| a + share * (b - a)).collect();
        Self { weight, covariances: self.covariances.mixed(&other.covariances, share), off_points }
    }
}

/// The grips that the clubs of one grip model and tolerance choose from.
struct Grips {
    count: usize,
    spread_points: f64,
    /// Mean of what they take off, against the planned grip of the first club.
    mean_points: f64,
    tolerance_points: f64,
}

impl Grips {
    fn of(
        believed: &Believed<'_>,
        club: &JobClub,
        spares: &[Spare<'_>],
        tolerance_points: f64,
    ) -> Result<Self, TradeError> {
        let pool = pool_of(believed, club, spares)?;
        let effects: Vec<f64> = pool.grips.iter().map(|g| g.takes_off_points).collect();
        let n = effects.len().max(1) as f64;
        let mean_points = effects.iter().sum::<f64>() / n;
        let squares: f64 = effects.iter().map(|c| (c - mean_points).powi(2)).sum();
        // The planned grips of the other clubs are in the box as well.
        Ok(Self {
            count: effects.len() + pool.rivals,
            spread_points: (squares / n).sqrt(),
            mean_points,
            tolerance_points,
        })
    }
}

/// Questions to the belief, each with its place.
#[derive(Default)]
struct Questions(Vec<Probe>);

impl Questions {
    fn ask(&mut self, probe: Probe) -> usize {
        self.0.push(probe);
        self.0.len() - 1
    }

    /// Readings of a club's swing weight with these pieces on.
    fn plan(&mut self, believed: &Believed<'_>, club: &JobClub, on: &[Vec<Role>]) -> Vec<Planned> {
        on.iter()
            .map(|on| {
                let (probe, sd) = believed.assembly.swing_weight_reading(club, on);
                (self.ask(probe), sd)
            })
            .collect()
    }
}

/// What is on the club at the readings of its swing weight that are asked before its weight is in, and are not there yet.
fn before_tip(believed: &Believed<'_>, club: &JobClub) -> Vec<Vec<Role>> {
    let steps = &believed.assembly.job.steps;
    let asked = steps.iter().take_while(|s| !s.glues).filter(|s| !s.optional && s.asks.contains(&What::SwingWeight));
    asked.filter(|s| !s.on.contains(&Role::TipWeight) && !is_read(believed, club, s)).map(|s| s.on.clone()).collect()
}

fn before_grip(believed: &Believed<'_>, club: &JobClub, progress: Progress) -> Vec<Vec<Role>> {
    let step = cure_step(&believed.assembly.job.steps).filter(|_| !progress.cure_read);
    step.map(|step| step.on.clone()).into_iter().filter(|_| club.plan.is_some()).collect()
}

/// Whether a club's grip is on and nothing was read with it dry.
pub(crate) fn is_wet(believed: &Believed<'_>, club: &JobClub) -> bool {
    let standing = believed.standing();
    let gripped = || standing.iter().filter(|r| r.club == club.id && r.on.contains(&Role::Grip));
    let dry = gripped().any(|r| r.what == What::SwingWeight && !r.on.contains(&Role::Solvent));
    gripped().next().is_some() && !dry
}

fn is_read(believed: &Believed<'_>, club: &JobClub, step: &Step) -> bool {
    let standing = believed.standing();
    standing.iter().any(|r| r.club == club.id && r.step == step.key && r.what == What::SwingWeight)
}

/// The mean step between the masses that one or two weights of the tray give, in points at this club's tip; none where there
/// is nothing to choose.
fn tray_step_points(believed: &Believed<'_>, club: &JobClub, spares: &[Spare<'_>]) -> Result<Option<f64>, TradeError> {
    let assembly = believed.assembly;
    let Some(plan) = &club.plan else { return Ok(None) };
    let tip_diameter_mm = assembly.library.shaft(&club.target.shaft_model)?.tip_diameter_mm;
    let mut single = vec![0.0];
    for spare in spares.iter().filter(|s| s.part.kind == PartKind::TipWeight && s.part.is_free()) {
        if tip_weight_fits(assembly.library.tip_weight(&spare.part.model)?, tip_diameter_mm) {
            single.push(spare.mass_g);
        }
    }
    let mut grams: Vec<f64> = Vec::new();
    for (i, a) in single.iter().enumerate() {
        grams.extend(single[i..].iter().map(|b| a + b).filter(|g| *g <= assembly.shop.tip_weight_cap_g + 1e-9));
    }
    grams.sort_by(f64::total_cmp);
    grams.dedup_by(|a, b| (*a - *b).abs() < ALIKE_G);
    let (Some(most), steps) = (grams.last(), grams.len().saturating_sub(1)) else { return Ok(None) };
    if steps == 0 {
        return Ok(None);
    }
    let cap_mm = assembly.library.grip(&club.target.grip_model)?.cap_mm;
    Ok(Some(most / steps as f64 * assembly.effect_per_g(club, plan.cut_shaft_mm + cap_mm)?))
}
