//! The club put together: each piece with its mass, its arm and what is not known of either, for the belief.
//!
//! Arms are counted from the butt end of the bare shaft along its axis. The shaft's tip ends at the bottom of the bore
//! (lifted by a flange), the ground point lies `bore_to_ground` beyond it, the head's centre `offset` beyond that.
//! Scatter figures are priors of a new shop: wide, from the trade's common practice (no source) unless a line says
//! otherwise; the shop's own readings narrow them.

mod came;
pub(crate) mod inertia;
mod reference;
mod told;

use self::inertia::{g_in2, rod_g_in2, shaft_inertia_g_in2};
use crate::learned::{
    CAP_SD_MM, DRIFT_DAY_SD_POINTS, GRIP_CENTRE_SD_MM, Habit, Learned, ScatterKey, Scattered, TAPE_SHARE_SD, ValueKey,
    ferrule_key,
};
use crate::reference::{REFERENCE, REFERENCE_SD_POINTS};
use crate::scale_watch::ScaleWatch;
use crate::solvent::SOLVENT_G;
use estimation::{
    Club, JobModel, JointPrior, Mixture, Observation, OnClub, Piece, Prior, Probe, Quantity, Role, ScalePrior,
    SharedPrior, WideMean,
};
use quantity::INCH_MM;
use std::collections::{BTreeMap, BTreeSet};
use trade::action::Action;
use trade::adhesive::AdhesiveModel;
use trade::check_weight::CHECK_WEIGHT;
use trade::error::TradeError;
use trade::grip::GripModel;
use trade::job::{Job, JobClub};
use trade::model::{Library, PartKind, as_it_came};
use trade::places::{HEAD_INERTIA_KG_CM2, Places, TURNINGS_G, turned_g};
use trade::plan::{ClubPlan, Extra};
use trade::reading::What;
use trade::scale::Scale;
use trade::shaft::ShaftModel;
use trade::sheet::SheetClub;
use trade::shop::Shop;
use trade::tip_weight;
use trade::wrap::tape_on;

/// Scatter of one joint's adhesive about the shop's mean, g.
const JOINT_PIECE_SD_G: f64 = 0.25;
/// What a shop does not know of a shaft model's balance point, mm, and the scatter of single shafts.
const SHAFT_CENTRE_SD_MM: (f64, f64) = (3.0, 2.0);
/// Scatter of single shafts of a model about its stiffness, as a share: about 3 cycles a minute of 300 (a judgement, no source).
pub(crate) const STIFFNESS_PIECE_SD: f64 = 0.02;
/// Share of what is cut off a shaft by which its model's mass line is not known (a judgement, no source).
const SHAFT_CUT_SHARE_SD: f64 = 0.07;
/// Scatter of the tape of one club about the job's mean, g for one layer.
const TAPE_PIECE_SD_G: f64 = 0.08;
/// What one job's mix and hand add to every joint's adhesive, g.
const JOINT_JOB_SD_G: f64 = 0.2;
/// Scatter of one grip's solvent, and of a job's, g.
const SOLVENT_SCATTER_SD_G: (f64, f64) = (0.5, 0.4);
/// No reading is believed to the last bit, in the unit of its scale.
const LEAST_SD: f64 = 1e-3;
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
    /// The clubs with their targets, plans and steps.
    pub job: &'a Job,
    /// The models.
    pub library: &'a Library,
    /// The shop that builds them: its scales and its settings.
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
        let mut clubs = Vec::with_capacity(planned.len());
        for (club, plan) in planned {
            clubs.extend(self.with_the_club_as_it_came(club, plan, &mut shared)?);
        }
        if self.reference_points().is_some() {
            shared.key(REFERENCE.into(), REFERENCE_SD_POINTS);
        }
        for (_, tied) in self.told() {
            for (key, _, sd) in tied.shares {
                shared.key(key, sd);
            }
        }
        if let Some(check) = &self.shop.check_weight {
            shared.key(CHECK_WEIGHT.into(), check.sd_points);
        }
        for check in &self.watch.checks {
            shared.key(check.shared_key(), check.read.certified_sd.max(1e-6));
        }
        let (shared, joint) = shared.with(self);
        Ok(JobModel { clubs, shared, scales: self.scales(), joint })
    }

    fn scatter(&self, of: Scattered) -> f64 {
        self.learned.scatter_sd(of.key(), new_shop_scatter(of))
    }

    /// What a new shop does not know of the joints of an adhesive, g: of their mean, and of each one about it; none where
    /// this shop has learned it.
    pub(crate) fn unlearned_joint_sd_g(&self, adhesive: &AdhesiveModel) -> Option<(f64, f64)> {
        let key = ValueKey::Adhesive(adhesive.code.clone()).to_string();
        let of_job = self.scatter(Scattered::AdhesiveJob);
        let unlearned = self.learned.position(&key).is_none();
        unlearned.then(|| (adhesive.joint_mass_sd_g.hypot(of_job), self.scatter(Scattered::AdhesivePiece)))
    }

    /// The means of a model that may lie far from their figures until the shop has learned them: what the joints of each
    /// adhesive take first, then how far tapes, caps and centres of grips lie from what their makers say.
    fn wide_means(&self, model: &JobModel) -> Vec<WideMean> {
        let mut joints: BTreeSet<String> = BTreeSet::new();
        let mut others: BTreeSet<String> = BTreeSet::new();
        for target in self.job.clubs.iter().map(|club| &club.target) {
            let code = target.adhesive_in(self.shop);
            joints.extend(code.map(|code| ValueKey::Adhesive(code.clone()).to_string()));
            let tape = target.tape_in(self.shop);
            others.extend(tape.map(|code| ValueKey::Tape(code.clone()).to_string()));
            others.insert(ValueKey::Cap(target.grip_model.clone()).to_string());
            others.insert(ValueKey::GripCentre(target.grip_model.clone()).to_string());
        }
        // A shop that takes far more or less adhesive than usual also takes it less alike. None of them leans: the expected
        // masses stay those of the makers and the shop until a reading speaks.
        let means = joints.into_iter().map(WideMean::either_way).chain(others.into_iter().map(WideMean::of_mean_alone));
        let there = |mean: &WideMean| model.shared.iter().any(|shared| shared.key == mean.key);
        means.filter(|mean| self.learned.position(&mean.key).is_none() && there(mean)).collect()
    }

    /// A model of this job weighed up by what was observed, with each mean that the shop has not learned as usual or far from
    /// usual; a reading beyond `limit` standard deviations is set aside.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn weigh_up(&self, model: &JobModel, observed: &[Observation], limit: f64) -> Result<Mixture, TradeError> {
        Ok(model.solve_mixture(&self.wide_means(model), observed, limit)?)
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
        let own = [prior(&self.shop.balance_scale), prior(&self.shop.mass_scale)];
        own.into_iter().chain(self.other_scale_days().iter().map(|day| self.day_prior(day))).collect()
    }

    /// What a scale may be off by today beyond its habit, in its unit: more where it is not trusted.
    pub(crate) fn today_sd(&self, scale: &Scale) -> f64 {
        self.learned.habit(&scale.key, scale.offset_sd).today_sd.hypot(self.watch.extra_sd(&scale.key))
    }

    /// How far the balance scale may drift one way over a day, points, as the shop states it or as of any.
    pub(crate) fn stated_drift_day_sd(&self) -> f64 {
        self.shop.balance_scale.drift_sd_per_day.unwrap_or(DRIFT_DAY_SD_POINTS)
    }

    /// The same as learned, where the shop has learned it.
    pub(crate) fn drift_day_sd(&self) -> f64 {
        let key = ScatterKey::Drift(self.shop.balance_scale.key.clone()).to_string();
        self.learned.scatter_sd(&key, self.stated_drift_day_sd())
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

    /// A reading of a club's swing weight on the shop's scale, with its noise.
    pub(crate) fn swing_weight_reading(&self, club: &JobClub, on: &[Role]) -> (Probe, f64) {
        let scale = &self.shop.balance_scale;
        let probe = Probe::of_club(club.id.0.clone(), Quantity::SwingWeight, OnClub::of(on));
        (probe.on_scale(scale.key.clone()), self.shown_sd(scale))
    }

    /// The check weight or the reference club on the shop's scale, with its noise; none where the shop or the sheet has none.
    pub(crate) fn known_weight_reading(&self, what: What) -> Option<(Probe, f64)> {
        let scale = &self.shop.balance_scale;
        Some((Probe::of_job(self.known_weight(what)?).on_scale(scale.key.clone()), self.shown_sd(scale)))
    }

    fn club(&self, club: &JobClub, plan: &ClubPlan, shared: &mut Shared) -> Result<Club, TradeError> {
        let target = &club.target;
        let grip = self.library.grip(&target.grip_model)?;
        let shaft = self.library.shaft(&target.shaft_model)?;
        let head = self.library.head(&target.head_model)?;
        let places = Places::of_plan(plan, head.bore_depth_mm);
        let cap = match as_it_came::is(&grip.code) {
            true => Prior::new(inch(grip.cap_mm), inch(as_it_came::CAP_SD_MM)),
            false => Prior::new(inch(grip.cap_mm), self.scatter(Scattered::CapPiece))
                .with_shared(shared.key(ValueKey::Cap(grip.code.clone()).to_string(), inch(CAP_SD_MM.0))),
        };
        let came_from_elsewhere = as_it_came::is(&shaft.code);
        let length_sd_mm = if came_from_elsewhere { as_it_came::LENGTH_SD_MM } else { CUT_SD_MM };
        let mut made = Club::new(club.id.0.clone(), inch(places.ground_mm))
            .with_length_sd(inch(length_sd_mm))
            .with_cap(cap)
            .with_target(target.swing_weight_points, target.swing_weight_tolerance());

        let (offset_mm, offset_sd_mm) = head.offset_prior_mm();
        let head_from_elsewhere = as_it_came::is(&head.code);
        let head_sd_g =
            if head_from_elsewhere { as_it_came::HEAD_SD_G } else { head.mass_sd_g.unwrap_or(HEAD_MASS_SD_G) };
        let mut head_mass = mass_of(plan, PartKind::Head, head_sd_g);
        head_mass.mean += plan.extras.iter().filter(|e| in_head(e)).map(|e| e.mass_g).sum::<f64>();
        // A head of nobody's model shares its centre with no other.
        let arm = Prior::new(inch(places.head_mm(offset_mm)), inch(HEAD_PLACE_SD_MM));
        let arm = match head_from_elsewhere {
            true => Prior { piece_sd: arm.piece_sd.hypot(inch(offset_sd_mm)), ..arm },
            false => arm.with_shared(shared.key(ValueKey::Delta(head.code.clone()).to_string(), inch(offset_sd_mm))),
        };
        let head_inertia = g_in2(HEAD_INERTIA_KG_CM2.0);
        let piece = Piece::new(Role::Head, head_mass, arm).with_own_inertia(head_inertia);
        made = made.with_piece(piece.moving_with_length());
        if let Some(part) = plan.part(PartKind::Adapter) {
            let adapter = self.library.adapter(&part.model)?;
            let mass = mass_of(plan, PartKind::Adapter, ADAPTER_MASS_SD_G);
            let arm = Prior::new(inch(places.adapter_mm(adapter.length_mm)), inch(ADAPTER_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::Adapter, mass, arm).moving_with_length());
        }
        made = made.with_piece(self.shaft_piece(plan, shaft, shared));
        for extra in plan.extras.iter().filter(|e| !in_head(e)) {
            let mass = Prior::new(extra.mass_g, WEIGHED_SD_G);
            made =
                made.with_piece(Piece::new(Role::Extra, mass, Prior::new(inch(extra.arm_mm), inch(EXTRA_PLACE_SD_MM))));
        }
        made = self.joint(made, club, plan, places, shared)?;
        self.grip_end(made, target, plan, grip, shaft.butt_diameter_mm, shared)
    }

    fn shaft_piece(&self, plan: &ClubPlan, shaft: &ShaftModel, shared: &mut Shared) -> Piece {
        // A model's mass line bulges: what its ends weigh is known on average only, and alike for all its shafts.
        let cut_off = shared.key(ValueKey::ShaftCut(shaft.code.clone()).to_string(), SHAFT_CUT_SHARE_SD);
        let removed_g = plan.part(PartKind::Shaft).map_or(0.0, |p| (p.mass_g - plan.cut_shaft_mass_g).max(0.0));
        let sd_g = if shaft_weighed(plan) { CUT_SHAFT_SD_G } else { shaft.mass_sd_g.max(CUT_SHAFT_SD_G) };
        let mass = Prior::new(plan.cut_shaft_mass_g, sd_g).with_shared_gain(cut_off, removed_g);
        let centre_in = inch(plan.cut_shaft_balance_point_mm);
        let centre = match as_it_came::is(&shaft.code) {
            true => Prior::new(centre_in, inch(as_it_came::SHAFT_CENTRE_SD_MM)),
            false => Prior::new(centre_in, self.scatter(Scattered::ShaftCentrePiece)).with_shared(
                shared.key(ValueKey::ShaftCentre(shaft.code.clone()).to_string(), inch(SHAFT_CENTRE_SD_MM.0)),
            ),
        };
        Piece::new(Role::Shaft, mass, centre).with_own_inertia(shaft_inertia_g_in2(plan))
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
            let mut whole = mass_of(plan, PartKind::Ferrule, FERRULE_MASS_SD_G);
            if !part.weighed && self.ferrule_is_told(&part.model) {
                whole = whole.with_shared(ferrule_key(&part.model));
            }
            made = made
                .with_piece(
                    Piece::new(
                        Role::Ferrule,
                        Prior { mean: turned_g(whole.mean), ..whole }.with_shared_gain(turned.clone(), -1.0),
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
        if as_it_came::is(&club.target.shaft_model) && in_tip().next().is_none() {
            // Nobody saw into the tip of this shaft. What is in there stays with it, whatever is done at the joint.
            let (mean_g, sd_g) = as_it_came::HIDDEN_TIP_G;
            let arm = Prior::new(inch(tip_mm - as_it_came::HIDDEN_TIP_UP_MM), inch(TIP_WEIGHT_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::TipWeight, Prior::new(mean_g, sd_g), arm).moving_with_length());
        }
        if let Some(code) = club.target.adhesive_in(self.shop) {
            let adhesive = self.library.adhesive(code)?;
            let mass = self.joint_mass(club, plan, adhesive, shared);
            let arm = Prior::new(inch(places.adhesive_mm()), inch(ADHESIVE_PLACE_SD_MM));
            made = made.with_piece(Piece::new(Role::Adhesive, mass, arm).moving_with_length());
        }
        Ok(made)
    }

    /// What the adhesive of a joint weighs: of today's mix, of the mix of an earlier job, or whatever holds a club from
    /// elsewhere together.
    fn joint_mass(&self, club: &JobClub, plan: &ClubPlan, adhesive: &AdhesiveModel, shared: &mut Shared) -> Prior {
        if as_it_came::is(&adhesive.code) {
            return Prior::new(adhesive.joint_mass_g, adhesive.joint_mass_sd_g);
        }
        let of = ValueKey::Adhesive(adhesive.code.clone());
        let of_job = self.scatter(Scattered::AdhesiveJob);
        let lasting = shared.key(of.to_string(), adhesive.joint_mass_sd_g);
        let (piece_sd, old) = (self.scatter(Scattered::AdhesivePiece), is_old_joint(club, plan));
        if old {
            return Prior::new(adhesive.joint_mass_g, piece_sd.hypot(of_job)).with_shared(lasting);
        }
        Prior::new(adhesive.joint_mass_g, piece_sd).with_shared(lasting).with_shared(shared.key(of.of_job(), of_job))
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
        if let Some(code) = target.tape_in(self.shop) {
            let tape = self.library.tape(code)?;
            let (mass_g, arm_mm, layers) = tape_on(target.wraps, tape, grip, butt_diameter_mm);
            if layers > 0.0 {
                let of = ValueKey::Tape(code.clone());
                let of_job = self.scatter(Scattered::TapeJob);
                let mass = match as_it_came::is(code) {
                    true => Prior::new(mass_g, as_it_came::TAPE_SHARE_SD * mass_g),
                    false => Prior::new(mass_g, self.scatter(Scattered::TapePiece) * layers.sqrt())
                        .with_shared_gain(shared.key(of.to_string(), TAPE_SHARE_SD.0), mass_g)
                        .with_shared_gain(shared.key(of.of_job(), of_job), mass_g),
                };
                let piece = Piece::new(Role::Tape, mass, Prior::new(inch(arm_mm), inch(TAPE_PLACE_SD_MM)));
                made = made.with_piece(piece.with_own_inertia(rod_g_in2(mass_g, grip.length_mm)));
            }
        }
        let arm = match as_it_came::is(&grip.code) {
            true => Prior::new(inch(grip.centre_mm), inch(as_it_came::GRIP_CENTRE_SD_MM)),
            false => Prior::new(inch(grip.centre_mm), self.scatter(Scattered::GripCentrePiece)).with_shared(
                shared.key(ValueKey::GripCentre(grip.code.clone()).to_string(), inch(GRIP_CENTRE_SD_MM.0)),
            ),
        };
        let mass = mass_of(plan, PartKind::Grip, grip.mass_sd_g);
        let own = rod_g_in2(mass.mean, grip.length_mm);
        made = made.with_piece(Piece::new(Role::Grip, mass, arm).with_own_inertia(own).from_grip_cap());
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
    /// covariance; the offsets of scales with the habit that their days have in common.
    fn with(self, of: &Assembly<'_>) -> (Vec<SharedPrior>, Vec<JointPrior>) {
        let learned = of.learned;
        let values = self.0.keys().filter_map(|key| {
            let lasting = Lasting::Learned(learned.position(key)?);
            Some(Tied { key: key.clone(), lasting, own_variance: 0.0 })
        });
        let tied: Vec<Tied> = values.chain(offsets(of)).collect();
        let row = |(i, one): (usize, &Tied)| {
            let own = |j| if i == j { one.own_variance } else { 0.0 };
            tied.iter().enumerate().map(|(j, other)| one.lasting.covariance(&other.lasting, learned) + own(j)).collect()
        };
        let joint = JointPrior {
            covariance: tied.iter().enumerate().map(row).collect(),
            keys: tied.iter().map(|one| one.key.clone()).collect(),
        };
        let joint = if joint.keys.is_empty() { Vec::new() } else { vec![joint] };
        let shared = self
            .0
            .into_iter()
            .map(|(key, sd)| match learned.position(&key) {
                Some(at) => SharedPrior {
                    mean_shift: learned.values[at].mean_shift,
                    sd: learned.covariance[at][at].max(0.0).sqrt(),
                    key,
                },
                None => SharedPrior { mean_shift: 0.0, sd, key },
            })
            .collect();
        (shared, joint)
    }
}

/// What several deviations have in common.
#[derive(Debug, Clone, PartialEq)]
enum Lasting {
    /// A learned value, at its place: tied to the others by their joint covariance.
    Learned(usize),
    /// The habit of a scale that the shop has not learned yet, with its variance.
    Habit(String, f64),
}

impl Lasting {
    fn covariance(&self, other: &Self, learned: &Learned) -> f64 {
        match (self, other) {
            (Self::Learned(i), Self::Learned(j)) => learned.covariance[*i][*j],
            (Self::Habit(one, variance), Self::Habit(other, _)) if one == other => *variance,
            _ => 0.0,
        }
    }
}

/// A deviation that is tied to others, with the variance that is its own.
struct Tied {
    key: String,
    lasting: Lasting,
    own_variance: f64,
}

/// The offsets of scales that are tied to something: to learned values, or to the same scale's on another day. What a
/// scale is off by is its habit and the day's own.
fn offsets(of: &Assembly<'_>) -> Vec<Tied> {
    let (learned, shop) = (of.learned, of.shop);
    let days = of.other_scale_days();
    let position = |key: &str| {
        let scale = [&shop.balance_scale, &shop.mass_scale].into_iter().find(|scale| scale.key == key)?;
        learned.habit_position(&scale.key, scale.offset_sd)
    };
    let lasting = |scale: &str, habit: Habit| match position(scale) {
        Some(at) => Lasting::Learned(at),
        None => Lasting::Habit(scale.to_owned(), (habit.sd * habit.sd - habit.today_sd * habit.today_sd).max(0.0)),
    };
    let today = [&shop.balance_scale, &shop.mass_scale]
        .into_iter()
        .filter(|scale| position(&scale.key).is_some() || days.iter().any(|day| day.scale == scale.key));
    let today = today.map(|scale| Tied {
        key: ScalePrior::offset_key(&scale.key),
        lasting: lasting(&scale.key, learned.habit(&scale.key, scale.offset_sd)),
        own_variance: of.today_sd(scale).powi(2),
    });
    let other = days.iter().map(|day| {
        let habit = of.habit_of(&day.scale);
        Tied {
            key: ScalePrior::offset_key(&day.key),
            lasting: lasting(&day.scale, habit),
            own_variance: habit.today_sd * habit.today_sd,
        }
    });
    today.chain(other).collect()
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
        Scattered::StiffnessPiece => STIFFNESS_PIECE_SD,
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

/// Whether a club's joint was made before this job.
fn is_old_joint(club: &JobClub, plan: &ClubPlan) -> bool {
    came::is_view(club) || club.work.as_ref().is_some_and(|work| work.keeps_joint(plan))
}

fn shaft_weighed(plan: &ClubPlan) -> bool {
    plan.part(PartKind::Shaft).is_some_and(|p| p.weighed)
}
