//! The club put together: each piece with its mass, its arm and what is not known of either, for the belief.
//!
//! Arms are counted from the butt end of the bare shaft along its axis. The shaft's tip ends at the bottom of the bore
//! (lifted by a flange), the ground point lies `bore_to_ground` beyond it, the head's centre `offset` beyond that.
//! Scatter figures are priors of a new shop: wide, from the trade's common practice (no source) unless a line says
//! otherwise; the shop's own readings narrow them.

use crate::learned::{Learned, ScatterKey, Scattered, ValueKey};
use crate::scale_watch::ScaleWatch;
use crate::solvent::SOLVENT_G;
use estimation::{Club, JobModel, JointPrior, Piece, Prior, Role, ScalePrior, SharedPrior};
use quantity::INCH_MM;
use std::collections::BTreeMap;
use trade::action::Action;
use trade::check_weight::CHECK_WEIGHT;
use trade::error::TradeError;
use trade::grip::GripModel;
use trade::job::{Job, JobClub};
use trade::model::{Library, PartKind};
use trade::places::{Places, TURNINGS_G, turned_g};
use trade::plan::{ClubPlan, Extra};
use trade::scale::Scale;
use trade::sheet::SheetClub;
use trade::shop::Shop;
use trade::tip_weight;
use trade::wrap::tape_on;

/// Scatter of one joint's adhesive about the shop's mean, g.
const JOINT_PIECE_SD_G: f64 = 0.25;
/// What a shop does not know of a model's grip centre, mm, and the scatter of single grips.
const GRIP_CENTRE_SD_MM: (f64, f64) = (4.0, 0.7);
/// What a shop does not know of a model's cap thickness, mm, and the scatter of single grips.
const CAP_SD_MM: (f64, f64) = (0.3, 0.1);
/// What a shop does not know of a shaft model's balance point, mm, and the scatter of single shafts.
const SHAFT_CENTRE_SD_MM: (f64, f64) = (3.0, 2.0);
/// Share of what is cut off a shaft by which its model's mass line is not known (a judgement, no source).
const SHAFT_CUT_SHARE_SD: f64 = 0.07;
/// Share of a tape's stated mass per area that a shop does not know, and what a job's own hand adds to it.
const TAPE_SHARE_SD: (f64, f64) = (0.2, 0.03);
/// Scatter of the tape of one club about the job's mean, g for one layer.
const TAPE_PIECE_SD_G: f64 = 0.08;
/// What one job's mix and hand add to every joint's adhesive, g.
const JOINT_JOB_SD_G: f64 = 0.2;
/// Scatter of one grip's solvent, and of a job's, g.
const SOLVENT_SCATTER_SD_G: (f64, f64) = (0.5, 0.4);
/// Name of the shared deviation between what the reference club truly is and what the sheet says of it, points.
pub(crate) const REFERENCE: &str = "reference";
/// No reading is believed to the last bit, in the unit of its scale.
const LEAST_SD: f64 = 1e-3;
/// By how much two balance scales of two rooms disagree, points.
const BETWEEN_SCALES_SD_POINTS: f64 = 0.2;
/// Standard deviation of a saw cut, mm.
const CUT_SD_MM: f64 = 0.8;
/// Mass of a weighed part: its scale, its rounding and what clings to it, g.
const WEIGHED_SD_G: f64 = 0.06;
/// Scatter of heads, adapters and ferrules of one model where none was weighed, g.
const HEAD_MASS_SD_G: f64 = 2.0;
const ADAPTER_MASS_SD_G: f64 = 0.2;
const FERRULE_MASS_SD_G: f64 = 0.1;
/// A tip weight that was not weighed, about what its bag states, g.
const TIP_WEIGHT_MASS_SD_G: f64 = 0.1;
/// What a weighed shaft's mass is known to after its cuts, g: its scale, and the pieces that its mass line takes off.
const CUT_SHAFT_SD_G: f64 = 0.3;
/// How far a piece may lie from where it is taken to, mm: a head's centre about its model's, an adapter's about its middle
/// (it is thicker at one end), the ferrule, a tip weight, the adhesive (it runs up and down), what is added, tape, and
/// solvent, which may be anywhere in the grip.
const HEAD_PLACE_SD_MM: f64 = 0.4;
const ADAPTER_PLACE_SD_MM: f64 = 5.0;
const FERRULE_PLACE_SD_MM: f64 = 1.0;
const TIP_WEIGHT_PLACE_SD_MM: f64 = 1.0;
const ADHESIVE_PLACE_SD_MM: f64 = 3.0;
const EXTRA_PLACE_SD_MM: f64 = 2.0;
const TAPE_PLACE_SD_MM: f64 = 4.0;
const SOLVENT_PLACE_SD_MM: f64 = 10.0;

/// Everything about a job that the belief needs besides its readings.
#[derive(Debug, Clone, Copy)]
pub struct Assembly<'a> {
    /// The job.
    pub job: &'a Job,
    /// The models.
    pub library: &'a Library,
    /// The shop.
    pub shop: &'a Shop,
    /// What the shop has learned from earlier jobs.
    pub learned: &'a Learned,
    /// What is known of the scales: the checks of the job's days, and which of them are not trusted.
    pub watch: &'a ScaleWatch,
}

impl Assembly<'_> {
    /// The whole job as the belief sees it before any reading. Clubs without an accepted plan are left out.
    ///
    /// # Errors
    /// A model that the plan names and the library lacks.
    pub fn job_model(&self) -> Result<JobModel, TradeError> {
        let planned: Vec<(&JobClub, &ClubPlan)> =
            self.job.clubs.iter().filter_map(|club| club.plan.as_ref().map(|plan| (club, plan))).collect();
        self.model_of(&planned)
    }

    /// One club alone, for a plan that is only being weighed up.
    ///
    /// # Errors
    /// See [`Assembly::job_model`].
    pub fn one_club_model(&self, club: &JobClub, plan: &ClubPlan) -> Result<JobModel, TradeError> {
        self.model_of(&[(club, plan)])
    }

    fn model_of(&self, planned: &[(&JobClub, &ClubPlan)]) -> Result<JobModel, TradeError> {
        let mut shared = Shared::default();
        let clubs =
            planned.iter().map(|(club, plan)| self.club(club, plan, &mut shared)).collect::<Result<Vec<_>, _>>()?;
        let reference = self.reference_reading();
        if let Some(reference) = &reference {
            shared.key(REFERENCE.into(), reference.sd_points());
        }
        if let Some(check) = &self.shop.check_weight {
            shared.key(CHECK_WEIGHT.into(), check.sd_points);
        }
        for check in &self.watch.checks {
            shared.key(check.shared_key(), check.read.certified_sd.max(1e-6));
        }
        let (shared, joint) = shared.with(self, reference.as_ref());
        Ok(JobModel { clubs, shared, scales: self.scales(), joint })
    }

    /// Whether the reference club was read on a scale that is not the shop's.
    pub(crate) fn reference_elsewhere(&self) -> bool {
        let shop = &self.shop.balance_scale.key;
        self.reference_points().is_some()
            && self.job.sheet.reference.as_ref().is_some_and(|r| !r.scale.is_empty() && &r.scale != shop)
    }

    /// What the sheet says that the reference club read, points.
    pub(crate) fn reference_points(&self) -> Option<f64> {
        self.job.sheet.reference.as_ref().and_then(|r| r.swing_weight_points)
    }

    /// What the reading of the reference club, from which the targets come, leaves open; none where the sheet gives none.
    fn reference_reading(&self) -> Option<ReferenceReading> {
        self.reference_points()?;
        let scale = &self.shop.balance_scale;
        let noise = self.shown_sd(scale);
        if self.reference_elsewhere() {
            let (noise_sd, habit_sd) = (noise.hypot(BETWEEN_SCALES_SD_POINTS), 0.0);
            return Some(ReferenceReading { noise_sd, habit_sd, day_sd: 0.0, same_day: false, habit_mean: 0.0 });
        }
        let habit = self.learned.habit(&scale.key, scale.offset_sd);
        Some(ReferenceReading {
            noise_sd: noise,
            habit_sd: (habit.sd * habit.sd - habit.today_sd * habit.today_sd).max(0.0).sqrt(),
            day_sd: habit.today_sd,
            same_day: self.watch.reference_same_day,
            habit_mean: habit.mean,
        })
    }

    fn scatter(&self, of: Scattered) -> f64 {
        self.learned.scatter_sd(of.key(), new_shop_scatter(of))
    }

    fn scales(&self) -> Vec<ScalePrior> {
        let prior = |scale: &Scale| {
            let habit = self.learned.habit(&scale.key, scale.offset_sd);
            ScalePrior {
                offset_mean: habit.mean,
                // A scale that is not trusted may be off by more than it states.
                offset_sd: habit.sd.hypot(self.watch.extra_sd(&scale.key)),
                noise_sd: self.noise_sd(scale),
                resolution: scale.display_step,
                ..ScalePrior::new(scale.key.clone())
            }
        };
        vec![prior(&self.shop.balance_scale), prior(&self.shop.mass_scale)]
    }

    /// What a scale may be off by today beyond its habit, in its unit: more where it is not trusted.
    pub(crate) fn today_sd(&self, scale: &Scale) -> f64 {
        self.learned.habit(&scale.key, scale.offset_sd).today_sd.hypot(self.watch.extra_sd(&scale.key))
    }

    /// Noise of one re-seated reading of a scale, as stated or as learned, in the scale's unit.
    pub(crate) fn noise_sd(&self, scale: &Scale) -> f64 {
        self.learned.scatter_sd(&ScatterKey::Noise(scale.key.clone()).to_string(), scale.noise_sd)
    }

    /// Noise of one re-seated reading with the rounding of the display, in the scale's unit. What is rounded to a step lies
    /// evenly within it: its standard deviation is the step by the root of twelve.
    pub(crate) fn shown_sd(&self, scale: &Scale) -> f64 {
        self.noise_sd(scale).hypot(scale.display_step / 12f64.sqrt()).max(LEAST_SD)
    }

    fn club(&self, club: &JobClub, plan: &ClubPlan, shared: &mut Shared) -> Result<Club, TradeError> {
        let target = &club.target;
        let grip = self.library.grip(&target.grip_model)?;
        let shaft = self.library.shaft(&target.shaft_model)?;
        let head = self.library.head(&target.head_model)?;
        let places = Places::of_plan(plan, head.bore_depth_mm);
        let cap = Prior::new(inch(grip.cap_mm), self.scatter(Scattered::CapPiece))
            .with_shared(shared.key(ValueKey::Cap(grip.code.clone()).to_string(), inch(CAP_SD_MM.0)));
        let mut made = Club::new(club.id.0.clone(), inch(places.ground_mm))
            .with_length_sd(inch(CUT_SD_MM))
            .with_cap(cap)
            .with_target(target.swing_weight_points, target.tolerances.swing_weight_points);

        let (offset_mm, offset_sd_mm) = head.offset_prior_mm();
        let delta = shared.key(ValueKey::Delta(head.code.clone()).to_string(), inch(offset_sd_mm));
        let mut head_mass = mass_of(plan, PartKind::Head, HEAD_MASS_SD_G);
        head_mass.mean += plan.extras.iter().filter(|e| in_head(e)).map(|e| e.mass_g).sum::<f64>();
        let arm = Prior::new(inch(places.head_mm(offset_mm)), inch(HEAD_PLACE_SD_MM)).with_shared(delta);
        made = made.with_piece(Piece::new(Role::Head, head_mass, arm).moving_with_length());
        if let Some(part) = plan.part(PartKind::Adapter) {
            let adapter = self.library.adapter(&part.model)?;
            let mass = mass_of(plan, PartKind::Adapter, ADAPTER_MASS_SD_G);
            let arm = Prior::new(inch(places.adapter_mm(adapter.length_mm)), inch(ADAPTER_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::Adapter, mass, arm).moving_with_length());
        }
        let centre = shared.key(ValueKey::ShaftCentre(shaft.code.clone()).to_string(), inch(SHAFT_CENTRE_SD_MM.0));
        // A model's mass line bulges: what its ends weigh is known on average only, and alike for all its shafts.
        let cut_off = shared.key(ValueKey::ShaftCut(shaft.code.clone()).to_string(), SHAFT_CUT_SHARE_SD);
        let removed_g = plan.part(PartKind::Shaft).map_or(0.0, |p| (p.mass_g - plan.cut_shaft_mass_g).max(0.0));
        made = made.with_piece(Piece::new(
            Role::Shaft,
            Prior::new(
                plan.cut_shaft_mass_g,
                if shaft_weighed(plan) { CUT_SHAFT_SD_G } else { shaft.mass_sd_g.max(CUT_SHAFT_SD_G) },
            )
            .with_shared_gain(cut_off, removed_g),
            Prior::new(inch(plan.cut_shaft_balance_point_mm), self.scatter(Scattered::ShaftCentrePiece))
                .with_shared(centre),
        ));
        for extra in plan.extras.iter().filter(|e| !in_head(e)) {
            let mass = Prior::new(extra.mass_g, WEIGHED_SD_G);
            made =
                made.with_piece(Piece::new(Role::Extra, mass, Prior::new(inch(extra.arm_mm), inch(EXTRA_PLACE_SD_MM))));
        }
        made = self.joint(made, club, plan, places, shared)?;
        self.grip_end(made, target, plan, grip, shaft.butt_diameter_mm, shared)
    }

    /// Ferrule, tip weight and adhesive.
    fn joint(
        &self,
        mut made: Club,
        club: &JobClub,
        plan: &ClubPlan,
        places: Places,
        shared: &mut Shared,
    ) -> Result<Club, TradeError> {
        let tip_mm = places.tip_mm;
        if let Some(part) = plan.part(PartKind::Ferrule) {
            let ferrule = self.library.ferrule(&part.model)?;
            let arm = Prior::new(inch(places.ferrule_mm(ferrule.length_mm)), inch(FERRULE_PLACE_SD_MM));
            // The whole ferrule is known; only how turning splits it is not: one deviation, with both signs.
            let turned = shared.key(format!("turned:{}", club.id), TURNINGS_G.1);
            let whole = mass_of(plan, PartKind::Ferrule, FERRULE_MASS_SD_G);
            made = made
                .with_piece(
                    Piece::new(
                        Role::Ferrule,
                        Prior::new(turned_g(whole.mean), whole.piece_sd).with_shared_gain(turned.clone(), -1.0),
                        arm.clone(),
                    )
                    .moving_with_length(),
                )
                .with_piece(
                    Piece::new(Role::Turnings, Prior::known(TURNINGS_G.0).with_shared(turned), arm)
                        .moving_with_length(),
                );
        }
        let in_tip = || plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight);
        let lengths_mm = in_tip().map(|part| self.library.tip_weight(&part.model).map(|model| model.length_mm));
        let lengths_mm: Vec<f64> = lengths_mm.collect::<Result<_, _>>()?;
        for (part, arm_mm) in in_tip().zip(tip_weight::arms_mm(tip_mm, lengths_mm)) {
            let sd = if part.weighed { WEIGHED_SD_G } else { TIP_WEIGHT_MASS_SD_G };
            let arm = Prior::new(inch(arm_mm), inch(TIP_WEIGHT_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::TipWeight, Prior::new(part.mass_g, sd), arm).moving_with_length());
        }
        if let Some(code) = club.target.adhesive.as_ref().or(self.shop.adhesive.as_ref()) {
            let adhesive = self.library.adhesive(code)?;
            let of = ValueKey::Adhesive(code.clone());
            let of_job = self.scatter(Scattered::AdhesiveJob);
            let mass = Prior::new(adhesive.joint_mass_g, self.scatter(Scattered::AdhesivePiece))
                .with_shared(shared.key(of.to_string(), adhesive.joint_mass_sd_g))
                .with_shared(shared.key(of.of_job(), of_job));
            let arm = Prior::new(inch(places.adhesive_mm()), inch(ADHESIVE_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::Adhesive, mass, arm).moving_with_length());
        }
        Ok(made)
    }

    /// Tape, grip and the solvent in it.
    fn grip_end(
        &self,
        mut made: Club,
        target: &SheetClub,
        plan: &ClubPlan,
        grip: &GripModel,
        butt_diameter_mm: f64,
        shared: &mut Shared,
    ) -> Result<Club, TradeError> {
        if let Some(code) = target.tape.as_ref().or(self.shop.tape.as_ref()) {
            let tape = self.library.tape(code)?;
            let (mass_g, arm_mm, layers) = tape_on(target.wraps, tape, grip, butt_diameter_mm);
            if layers > 0.0 {
                let of = ValueKey::Tape(code.clone());
                let of_job = self.scatter(Scattered::TapeJob);
                let mass = Prior::new(mass_g, self.scatter(Scattered::TapePiece) * layers.sqrt())
                    .with_shared_gain(shared.key(of.to_string(), TAPE_SHARE_SD.0), mass_g)
                    .with_shared_gain(shared.key(of.of_job(), of_job), mass_g);
                made = made.with_piece(Piece::new(Role::Tape, mass, Prior::new(inch(arm_mm), inch(TAPE_PLACE_SD_MM))));
            }
        }
        let centre = shared.key(ValueKey::GripCentre(grip.code.clone()).to_string(), inch(GRIP_CENTRE_SD_MM.0));
        let arm = Prior::new(inch(grip.centre_mm), self.scatter(Scattered::GripCentrePiece)).with_shared(centre);
        made =
            made.with_piece(Piece::new(Role::Grip, mass_of(plan, PartKind::Grip, grip.mass_sd_g), arm).from_grip_cap());
        let solvent = Prior::new(SOLVENT_G.0, self.scatter(Scattered::SolventPiece))
            .with_shared(shared.key(ValueKey::Solvent.to_string(), SOLVENT_G.1))
            .with_shared(shared.key(ValueKey::Solvent.of_job(), self.scatter(Scattered::SolventJob)));
        Ok(made.with_piece(Piece::new(
            Role::Solvent,
            solvent,
            Prior::new(inch(grip.length_mm / 2.0), inch(SOLVENT_PLACE_SD_MM)),
        )))
    }
}

/// The reading of the reference club on the shop's own scale is a reading like any other: the club's true swing weight, what the
/// scale is always off by, what it was off by on that day, and noise. On a scale of another room only noise is left, that
/// of the difference between two scales included.
struct ReferenceReading {
    noise_sd: f64,
    /// What the scale is always off by is not known to better than this …
    habit_sd: f64,
    /// … and is believed to be this.
    habit_mean: f64,
    /// What one day adds.
    day_sd: f64,
    /// Whether it was read on a day on which the bench reads, so that the day's own is the same.
    same_day: bool,
}

impl ReferenceReading {
    /// Standard deviation of how far the club's true swing weight lies from its figure, points.
    fn sd_points(&self) -> f64 {
        self.noise_sd.hypot(self.habit_sd).hypot(self.day_sd)
    }

    /// Covariance of that with today's offset of the scale, whose variance is given: the scale read too much by as much
    /// as the club's true swing weight is less.
    fn covariance_with_offset(&self, offset_variance: f64) -> f64 {
        -if self.same_day { offset_variance } else { self.habit_sd * self.habit_sd }
    }
}

/// The shared deviations that occur, each once. A tape or a shaft used by several clubs keeps the widest prior.
#[derive(Default)]
struct Shared(BTreeMap<String, f64>);

impl Shared {
    fn key(&mut self, key: String, sd: f64) -> String {
        let widest = self.0.entry(key.clone()).or_insert(sd);
        *widest = widest.max(sd);
        key
    }

    /// The shared deviations as priors, those that the shop has learned with what it learned and their joint
    /// covariance; the reference club's with that of the scale that read it.
    fn with(self, of: &Assembly<'_>, reference: Option<&ReferenceReading>) -> (Vec<SharedPrior>, Vec<JointPrior>) {
        let (learned, shop) = (of.learned, of.shop);
        // What a scale is off by is its habit, which is tied to the other values, and today's own.
        let scales = [&shop.balance_scale, &shop.mass_scale].into_iter().filter_map(|scale| {
            let at = learned.habit_position(&scale.key, scale.offset_sd)?;
            let today_sd = of.today_sd(scale);
            Some((ScalePrior::offset_key(&scale.key), at, today_sd * today_sd))
        });
        let values = self.0.keys().filter_map(|key| learned.position(key).map(|at| (key.clone(), at, 0.0)));
        let known: Vec<(String, usize, f64)> = values.chain(scales).collect();
        let row = |(i, own): (usize, f64)| {
            let row = known.iter().map(|(_, j, _)| learned.covariance[i][*j] + if i == *j { own } else { 0.0 });
            row.collect()
        };
        let mut joint = JointPrior {
            covariance: known.iter().map(|(_, i, own)| row((*i, *own))).collect(),
            keys: known.iter().map(|(key, _, _)| key.clone()).collect(),
        };
        if let Some(reference) = reference.filter(|r| r.habit_sd + r.day_sd > 0.0) {
            let habit = learned.habit_position(&shop.balance_scale.key, shop.balance_scale.offset_sd);
            join_reference(&mut joint, of, reference, |of_key| {
                let at = known.iter().find(|(key, _, _)| key == of_key).map(|(_, at, _)| *at);
                habit.zip(at).map_or(0.0, |(habit, at)| -learned.covariance[habit][at])
            });
        }
        let joint = if joint.keys.is_empty() { Vec::new() } else { vec![joint] };
        let shared = self
            .0
            .into_iter()
            .map(|(key, sd)| match (learned.position(&key), reference) {
                (Some(at), _) => SharedPrior {
                    mean_shift: learned.values[at].mean_shift,
                    sd: learned.covariance[at][at].max(0.0).sqrt(),
                    key,
                },
                (None, Some(reference)) if key == REFERENCE => {
                    SharedPrior { mean_shift: -reference.habit_mean, sd, key }
                }
                (None, _) => SharedPrior { mean_shift: 0.0, sd, key },
            })
            .collect();
        (shared, joint)
    }
}

/// Ties the reference club's deviation to what the balance scale is off by, and so to whatever that is tied to.
/// `with_learned` gives its covariance with a value that the shop has learned.
fn join_reference(
    joint: &mut JointPrior,
    of: &Assembly<'_>,
    reference: &ReferenceReading,
    with_learned: impl Fn(&str) -> f64,
) {
    let scale = &of.shop.balance_scale;
    let offset = ScalePrior::offset_key(&scale.key);
    let add = |joint: &mut JointPrior, key: String, row: Vec<f64>, own: f64| {
        for (other, value) in joint.covariance.iter_mut().zip(&row) {
            other.push(*value);
        }
        joint.covariance.push(row.into_iter().chain([own]).collect());
        joint.keys.push(key);
    };
    if !joint.keys.contains(&offset) {
        let sd = of.learned.habit(&scale.key, scale.offset_sd).sd.hypot(of.watch.extra_sd(&scale.key));
        let row = vec![0.0; joint.keys.len()];
        add(joint, offset.clone(), row, sd * sd);
    }
    let row: Vec<f64> =
        joint
            .keys
            .iter()
            .enumerate()
            .map(|(i, key)| {
                if *key == offset {
                    reference.covariance_with_offset(joint.covariance[i][i])
                } else {
                    with_learned(key)
                }
            })
            .collect();
    // With everything of the same day in common only the noise is its own.
    let sd = reference.sd_points();
    let shared = row[joint.keys.iter().position(|key| *key == offset).unwrap_or(0)];
    let own = (sd * sd).max(if reference.same_day { -shared + reference.noise_sd.powi(2) } else { 0.0 });
    add(joint, REFERENCE.into(), row, own);
}

/// Whether an extra changes the head itself: screws, which may also get lighter.
pub(crate) fn in_head(extra: &Extra) -> bool {
    extra.action == Action::Screw
}

/// The scatter that a new shop starts with. Units as the value's: grams, inches, for a job's tape a share of its mass.
#[must_use]
pub(crate) fn new_shop_scatter(of: Scattered) -> f64 {
    match of {
        Scattered::AdhesivePiece => JOINT_PIECE_SD_G,
        Scattered::AdhesiveJob => JOINT_JOB_SD_G,
        Scattered::TapePiece => TAPE_PIECE_SD_G,
        Scattered::TapeJob => TAPE_SHARE_SD.1,
        Scattered::SolventPiece => SOLVENT_SCATTER_SD_G.0,
        Scattered::SolventJob => SOLVENT_SCATTER_SD_G.1,
        Scattered::CapPiece => inch(CAP_SD_MM.1),
        Scattered::GripCentrePiece => inch(GRIP_CENTRE_SD_MM.1),
        Scattered::ShaftCentrePiece => inch(SHAFT_CENTRE_SD_MM.1),
    }
}

fn inch(mm: f64) -> f64 {
    mm / INCH_MM
}

/// Mass of a chosen part: what its own weighing left open, or the scatter of its model where it was not weighed.
fn mass_of(plan: &ClubPlan, kind: PartKind, unweighed_sd_g: f64) -> Prior {
    plan.part(kind).map_or_else(
        || Prior::known(0.0),
        |part| Prior::new(part.mass_g, if part.weighed { WEIGHED_SD_G } else { unweighed_sd_g }),
    )
}

fn shaft_weighed(plan: &ClubPlan) -> bool {
    plan.part(PartKind::Shaft).is_some_and(|p| p.weighed)
}
