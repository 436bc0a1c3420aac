//! From readings to what may be believed of every club: the bridge between the trade's words and the Gaussian belief.

pub use crate::accuracy::BAND_95;
use crate::assembly::Assembly;
use crate::assembly::inertia::KG_CM2_PER_G_IN2;
use crate::clock::Clock;
use crate::flex::Flex;
use crate::grip_size::{GripPlace, expected};
use crate::reference::{REFERENCE, REFERENCE_MASS_G};
use crate::scale_watch::WatchedCheck;
use estimation::{
    Belief, DOUBT_LIMIT, EstimationError, Mixture, Normals, Observation, OnClub, Probe, Quantity, Standing, normal,
};
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::sync::Arc;
use trade::check_weight::CHECK_WEIGHT;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::places::{HEAD_INERTIA_KG_CM2, TURNINGS_G};
use trade::plan::ClubPlan;
use trade::reading::{Reading, StoodForecast, What, standing};
use trade::scale::Scale;
use trade::sheet::ANYWHERE_POINTS;
use trade::step::Step;
use trade::swing_weight::points_per_g;
use utoipa::ToSchema;

/// Version of the belief: counted up whenever the same readings would give other forecasts, so that forecasts that were
/// kept with readings can be told apart by what made them.
pub const BELIEF_VERSION: i64 = 6;
/// Standard deviation of a length read with a rule against a stop, mm.
const LENGTH_SD_MM: f64 = 0.4;
/// Standard deviation of a balance point found on an edge, mm.
const BALANCE_POINT_SD_MM: f64 = 1.0;
/// Standard deviation of the centre of a loose grip or a bare shaft found on an edge, mm.
pub(crate) const CENTRE_SD_MM: f64 = 0.8;
/// Standard deviation of a cap's thickness by caliper, mm.
pub(crate) const CAP_SD_MM: f64 = 0.1;
/// How much an inertia is off by a period that is a second off, kg·cm²: 2 · 2,700 over 1.88 s, as of a usual club from the butt.
const INERTIA_PER_S_KG_CM2: f64 = 2870.0;

/// Where a club will finish.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Finish {
    /// Swing weight of the finished, dry club on the scale that the target means, points since A0.
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// Half width of its 95 % band.
    pub band_points: f64,
    /// Half width of the band of the true swing weight, for likeness within the set. It may be narrower than `band_points`: how
    /// well the target itself is known, by the reading of the reference club, is part of the finish alone.
    pub own_band_points: f64,
    /// Probability that it lies in tolerance.
    pub chance: f64,
    /// Finish minus target.
    pub deviation_points: f64,
    /// Half width of the tolerance.
    pub tolerance_points: f64,
    /// Finish minus target as each combination of usual and unusual means has it; empty where it was read from a document.
    #[serde(skip)]
    #[schema(ignore)]
    pub spread: Normals,
}

impl Finish {
    /// The finish of a club that is asked for a swing weight; none for one that is not.
    #[must_use]
    pub fn where_asked(self) -> Option<Self> {
        (self.tolerance_points < ANYWHERE_POINTS).then_some(self)
    }

    /// The same moved by a known amount, points.
    #[must_use]
    pub fn moved(&self, by_points: f64) -> Self {
        let deviation = self.deviation_points + by_points;
        let (tolerance, spread) = (self.tolerance_points, self.spread.moved(by_points));
        let chance = if spread.parts().is_empty() {
            normal::between(-tolerance, tolerance, deviation, self.band_points / BAND_95)
        } else {
            spread.between(-tolerance, tolerance)
        };
        Self {
            swing_weight_points: self.swing_weight_points + by_points,
            chance,
            deviation_points: deviation,
            spread,
            ..*self
        }
    }
}

/// A forecast of one reading in the reading's own unit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Expectation {
    /// What the shop's instrument should show.
    pub value: f64,
    /// Half width of the 95 % band of what it will show.
    pub band: f64,
}

impl Expectation {
    /// The forecast as it is kept with a reading.
    #[must_use]
    pub const fn stood(self) -> StoodForecast {
        StoodForecast { value: self.value, band: self.band, version: BELIEF_VERSION }
    }
}

impl From<StoodForecast> for Expectation {
    fn from(stood: StoodForecast) -> Self {
        Self { value: stood.value, band: stood.band }
    }
}

/// How a reading and a quantity of the belief belong together: `reading = quantity × factor + shift`. Both ways go over
/// it, a reading into the belief and a forecast out of it.
struct Bridge<'a> {
    quantity: Quantity,
    /// The scale of the shop that it is read on, whose offset it has.
    scale: Option<&'a Scale>,
    /// Whether the hands of who reads count.
    by_hand: bool,
    factor: f64,
    shift: f64,
    /// Standard deviation of one reading, in its unit.
    sd: f64,
}

impl Bridge<'_> {
    fn plain(quantity: Quantity, sd: f64) -> Self {
        Self { quantity, scale: None, by_hand: false, factor: 1.0, shift: 0.0, sd }
    }

    fn quantity_of(&self, reading: f64) -> f64 {
        (reading - self.shift) / self.factor
    }

    fn reading_of(&self, quantity: f64) -> f64 {
        quantity * self.factor + self.shift
    }
}

/// A job with all its readings weighed up.
#[derive(Debug, Clone)]
pub struct Believed<'a> {
    /// What it was made from.
    pub assembly: Assembly<'a>,
    mixture: Arc<Mixture>,
    flex: Arc<Flex>,
    readings: &'a [Reading],
}

/// A belief as it was solved, apart from what it was solved from: what a program keeps to have the [`Believed`] of the same
/// job and readings again without solving.
#[derive(Debug, Clone)]
pub struct Solved(Arc<Mixture>, Arc<Flex>);

impl Assembly<'_> {
    /// The readings that bear on masses, arms and lengths, as the belief takes them, with what is known besides.
    #[must_use]
    pub fn observations(&self, readings: &[Reading]) -> Vec<Observation> {
        let clock = self.clock(readings);
        let checks = self.watch.checks.iter().filter_map(|check| self.check_observation(check, &clock));
        let read = standing(readings).into_iter().filter_map(|r| self.observation(r, &clock));
        read.chain(checks).chain(self.known_besides(&standing(readings), &clock)).collect()
    }

    /// What is known before anything is read at the bench: what the sheet says of the reference club, and what builders said of
    /// their shop.
    #[must_use]
    pub fn known_before(&self) -> Vec<Observation> {
        self.known_besides(&[], &Clock::none())
    }

    fn known_besides(&self, read: &[&Reading], clock: &Clock) -> Vec<Observation> {
        let besides = self.reference_observations(|at| clock.hours(at)).into_iter();
        besides.chain(self.told_observations(read)).chain(self.known_of_clubs()).collect()
    }

    /// A check that was read apart from the job, as a reading of its belief: it settles what the scale is off by.
    fn check_observation(&self, check: &WatchedCheck, clock: &Clock) -> Option<Observation> {
        let read = &check.read;
        let shared = Some(check.shared_key());
        let (balance, mass) = (&self.shop.balance_scale, &self.shop.mass_scale);
        let (quantity, sd) = if check.scale == balance.key {
            let mass_g = self.shop.check_weight.as_ref().map_or(REFERENCE_MASS_G, |c| c.mass_g);
            let quantity = Quantity::CheckWeight { true_points: read.certified, mass_g, shared };
            (quantity, self.noise_sd(balance) * self.learned.hand(&check.by))
        } else if check.scale == mass.key {
            (Quantity::CheckMass { true_g: read.certified, shared }, self.noise_sd(mass))
        } else {
            return None;
        };
        let made = Observation::new(check.id.clone(), quantity, read.reading, sd);
        Some(made.rounded_to(read.display_step.max(0.0)).at(clock.hours(check.at)).on_scale(check.scale.clone()))
    }

    fn observation(&self, reading: &Reading, clock: &Clock) -> Option<Observation> {
        let of = self.job.club(&reading.club).filter(|club| club.plan.is_some())?;
        let club = &*self.as_read(of, self.job.is_of_club_as_it_came(reading));
        let plan = club.plan.as_ref()?;
        let bridge = self.bridge(club, plan, reading.what, reading.pivot_mm)?;
        let (grams, points) = self.added_since(club, plan, reading);
        let added = match reading.what {
            What::SwingWeight => points,
            What::TotalMass => grams,
            _ => 0.0,
        };
        let sd = bridge.sd * if bridge.by_hand { self.learned.hand(&reading.by) } else { 1.0 };
        let mut made = Observation::new(
            reading.id.0.clone(),
            bridge.quantity.clone(),
            bridge.quantity_of(reading.value + added),
            sd / bridge.factor,
        )
        .of_club(club.id.0.clone(), on_club(plan, &reading.on))
        .rounded_to(reading.display_step.max(0.0) / bridge.factor)
        .at(clock.hours(reading.at));
        if reading.insisted {
            made = made.standing(Standing::Insisted);
        }
        Some(match bridge.scale {
            Some(scale) => made.on_scale(scale.key.clone()),
            None => made,
        })
    }

    /// The club that a reading is of: as it came, or as it is made.
    fn as_read<'c>(&self, club: &'c JobClub, before: bool) -> Cow<'c, JobClub> {
        match club.as_it_came().filter(|_| before) {
            Some(came) => Cow::Owned(came),
            None => Cow::Borrowed(club),
        }
    }

    /// What had been read of clubs before the job, on whatever day and scale.
    fn known_of_clubs(&self) -> Vec<Observation> {
        let mut found = Vec::new();
        // The belief has no club without a plan, as it came or as it leaves.
        for club in self.job.clubs.iter().filter(|club| club.plan.is_some()) {
            let Some((work, came)) = club.work.as_ref().zip(club.as_it_came()) else { continue };
            for figure in &work.known {
                let Some(bridge) = came.plan.as_ref().and_then(|plan| self.bridge(&came, plan, figure.what, None))
                else {
                    continue;
                };
                // Another day of the scale: what it was off by then is not what it is off by today.
                let (offset_sd, step) = bridge.scale.map_or((0.0, 0.0), |s| (s.offset_sd, s.display_step));
                let sd = bridge.sd.hypot(offset_sd) / bridge.factor;
                let id = format!("known:{}:{}", club.id, figure.what.key());
                let on = on_club(&work.came.pieces, &OnClub::finished().iter().collect::<Vec<_>>());
                found.push(
                    Observation::new(id, bridge.quantity.clone(), bridge.quantity_of(figure.value), sd)
                        .of_club(came.id.0.clone(), on)
                        .rounded_to(step / bridge.factor),
                );
            }
        }
        found
    }

    /// The bridge between a reading and what the belief calls it; none for what this belief does not know (loft, lie …; of
    /// frequencies see [`crate::flex`]) and for a piece that the plan does not have.
    fn bridge(&self, club: &JobClub, plan: &ClubPlan, what: What, pivot_mm: Option<f64>) -> Option<Bridge<'_>> {
        let (balance, mass) = (&self.shop.balance_scale, &self.shop.mass_scale);
        let by_swing_weight = |quantity| {
            let plain = Bridge::plain(quantity, self.noise_sd(balance));
            Bridge { scale: Some(balance), by_hand: true, ..plain }
        };
        let by_mass = |quantity, sd: f64| Bridge { scale: Some(mass), ..Bridge::plain(quantity, sd) };
        let by_rule = |quantity, sd_mm: f64| Bridge { factor: INCH_MM, ..Bridge::plain(quantity, sd_mm) };
        Some(match what {
            What::SwingWeight => by_swing_weight(Quantity::SwingWeight),
            What::CheckWeight | What::ReferenceSwingWeight => by_swing_weight(self.known_weight(what)?),
            What::TotalMass => by_mass(Quantity::TotalMass, self.noise_sd(mass)),
            What::BalancePoint => by_rule(Quantity::BalancePoint, BALANCE_POINT_SD_MM),
            // The belief's length of a shaft reaches to the ground.
            What::ShaftLength => {
                Bridge { shift: -plan.tip_to_ground_mm, ..by_rule(Quantity::ShaftLength, LENGTH_SD_MM) }
            }
            What::FinishedLength => by_rule(Quantity::LengthToCap, LENGTH_SD_MM),
            What::GripCentre => by_rule(Quantity::PartArm(Role::Grip), CENTRE_SD_MM),
            What::CapThickness => by_rule(Quantity::CapThickness, CAP_SD_MM),
            What::ShaftBalancePoint => by_rule(Quantity::PartArm(Role::Shaft), CENTRE_SD_MM),
            What::SwingPeriod => {
                let pendulum = &self.shop.pendulum;
                let pivot_in = pivot_mm.unwrap_or(pendulum.pivot_mm) / INCH_MM;
                let quantity =
                    Quantity::SwingPeriod { pivot_in, gravity_in_s2: pendulum.gravity_m_s2 * 1000.0 / INCH_MM };
                Bridge { factor: pendulum.wide(), ..Bridge::plain(quantity, pendulum.period_sd_s()) }
            }
            What::SwingInertia => {
                // Most are timed; a machine that shows one does no better.
                let timed = INERTIA_PER_S_KG_CM2 * self.shop.pendulum.period_sd_s();
                let sd = timed.hypot(HEAD_INERTIA_KG_CM2.1);
                Bridge { factor: KG_CM2_PER_G_IN2, ..Bridge::plain(Quantity::Inertia, sd) }
            }
            other => {
                let role = other.mass_of()?;
                // A weighing of a piece that the plan does not have says nothing about the club.
                if !self.has(club, role) {
                    return None;
                }
                let plain = by_mass(Quantity::PartMass(role), self.noise_sd(mass));
                match role {
                    // A ferrule is weighed whole; the belief's is turned, by an amount that is known on average.
                    Role::Ferrule => Bridge { shift: TURNINGS_G.0, sd: plain.sd.hypot(TURNINGS_G.1), ..plain },
                    _ => plain,
                }
            }
        })
    }

    /// The swing weight of the finished, dry club on the scale that the target means. Where the target rests on the
    /// reference club, that is its true swing weight less how far the reference club's lies from the figure of the sheet.
    #[must_use]
    pub fn finish_probe(&self, club: &ClubId) -> Probe {
        let finish = true_finish(club);
        if let Some(change) = self.change_probe(club, finish.clone()) {
            return change;
        }
        if self.reference_points().is_some() { finish.less(REFERENCE) } else { finish }
    }

    /// What was added to a club after a reading: (grams, points at the stage that the reading was taken at). It was
    /// weighed and its place is known, so a reading from before it goes on counting.
    fn added_since(&self, club: &JobClub, plan: &ClubPlan, reading: &Reading) -> (f64, f64) {
        let gripped = reading.on.contains(&Role::Grip);
        let cap_mm = if gripped { self.library.grip(&club.target.grip_model).map_or(0.0, |g| g.cap_mm) } else { 0.0 };
        plan.extras.iter().filter(|e| e.at > reading.at).fold((0.0, 0.0), |(grams, points), e| {
            (grams + e.mass_g, points + e.mass_g * points_per_g(e.arm_mm + cap_mm))
        })
    }

    /// What the balance scale is held against: the check weight, or the reference club.
    pub(crate) fn known_weight(&self, what: What) -> Option<Quantity> {
        Some(match what {
            What::CheckWeight => {
                let check = self.shop.check_weight.as_ref()?;
                Quantity::CheckWeight {
                    true_points: check.swing_weight_points,
                    mass_g: check.mass_g,
                    shared: Some(CHECK_WEIGHT.into()),
                }
            }
            What::ReferenceSwingWeight => self.reference_on_scale()?,
            _ => return None,
        })
    }

    pub(crate) fn has(&self, club: &JobClub, role: Role) -> bool {
        club.plan.as_ref().is_some_and(|plan| match role {
            Role::Tape => {
                let w = club.target.wraps;
                club.target.tape_in(self.shop).is_some() && w.base + w.full + w.lower_hand > 0
            }
            role => plan.mass_g(role) > 0.0,
        })
    }
}

impl<'a> Assembly<'a> {
    /// Weighs up all readings that stand. Every reading is tested against all others, whatever the order it came in.
    ///
    /// # Errors
    /// A model that the plan names and the library lacks; figures that the belief cannot work with.
    pub fn believe(self, readings: &'a [Reading]) -> Result<Believed<'a>, TradeError> {
        let mut model = self.job_model()?;
        let observations = self.observations(readings);
        self.let_drift(&mut model, readings);
        let mixture = self.weigh_up(&model, &observations, DOUBT_LIMIT)?;
        let flex = Flex::solve(self, &standing(readings), &mixture.doubt.set_aside)?;
        Ok(Believed { assembly: self, mixture: Arc::new(mixture), flex: Arc::new(flex), readings })
    }

    /// The belief as it was solved before. Only of the very job and readings that it was solved from.
    #[must_use]
    pub fn believed(self, readings: &'a [Reading], solved: &Solved) -> Believed<'a> {
        Believed { assembly: self, mixture: Arc::clone(&solved.0), flex: Arc::clone(&solved.1), readings }
    }
}

impl Believed<'_> {
    /// What was solved, to be kept; [`Assembly::believed`] gives the belief back.
    #[must_use]
    pub fn solved(&self) -> Solved {
        Solved(Arc::clone(&self.mixture), Arc::clone(&self.flex))
    }

    /// The readings that stand of the clubs as they are made here; those of clubs as they came are left out.
    #[must_use]
    pub fn standing(&self) -> Vec<&Reading> {
        let mut all = self.standing_all();
        all.retain(|reading| !self.assembly.job.is_of_club_as_it_came(reading));
        all
    }

    /// All readings that stand, those of clubs as they came too.
    #[must_use]
    pub fn standing_all(&self) -> Vec<&Reading> {
        standing(self.readings)
    }

    pub(crate) const fn readings(&self) -> &[Reading] {
        self.readings
    }

    /// The likeliest belief: with all means as usual, or with some of them far from usual.
    pub(crate) fn belief(&self) -> &Belief {
        &self.mixture.doubt.belief
    }

    /// The belief with all means as usual: what is learned is learned from it.
    pub(crate) fn usual_belief(&self) -> &Belief {
        self.mixture.usual()
    }

    /// What is believed of the frequencies.
    pub(crate) fn flex(&self) -> &Flex {
        &self.flex
    }

    /// The beliefs with means as usual and far from usual, each with its probability.
    pub(crate) fn mixture(&self) -> &Mixture {
        &self.mixture
    }

    /// What a reading should show on the shop's instruments; none for what the belief does not know (loft, lie …) and
    /// for a club without a plan.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn expected(&self, club: &ClubId, what: What, on: &[Role]) -> Result<Option<Expectation>, TradeError> {
        self.expected_of(club, false, what, on, None)
    }

    /// The same at a step: of the club as it came where the step reads that.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn expected_at(
        &self,
        club: &ClubId,
        step: &Step,
        what: What,
        on: &[Role],
    ) -> Result<Option<Expectation>, TradeError> {
        self.expected_of(club, step.before, what, on, None)
    }

    /// What a reading should show, where it was taken and as the club was then.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn expected_reading(&self, reading: &Reading) -> Result<Option<Expectation>, TradeError> {
        let before = self.assembly.job.step(&reading.step).is_some_and(|step| step.before);
        self.expected_of(&reading.club, before, reading.what, &reading.on, reading.pivot_mm)
    }

    fn expected_of(
        &self,
        club: &ClubId,
        before: bool,
        what: What,
        on: &[Role],
        pivot_mm: Option<f64>,
    ) -> Result<Option<Expectation>, TradeError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        if found.plan.is_none() {
            return Ok(None);
        }
        if what == What::Cpm {
            let cpm = if before { None } else { self.flex.expected(self.assembly, found, on, true)? };
            return Ok(cpm.map(|cpm| Expectation { value: cpm.mean, band: BAND_95 * cpm.sd }));
        }
        if let Some(place) = GripPlace::of(what) {
            let readings = standing(self.readings);
            let thick = if before { None } else { expected(self.assembly, &readings, found, place)? };
            return Ok(thick.map(|thick| Expectation { value: thick.mean, band: BAND_95 * thick.sd }));
        }
        let found = &*self.assembly.as_read(found, before);
        let Some(plan) = &found.plan else { return Ok(None) };
        let Some(bridge) = self.assembly.bridge(found, plan, what, pivot_mm) else { return Ok(None) };
        let scale = bridge.scale.map(|scale| scale.key.as_str());
        let on = on_club(plan, on);
        let forecast = self.mixture.forecast(|belief| belief.forecast(&found.id.0, &bridge.quantity, on, scale))?;
        let value = bridge.reading_of(forecast.mean);
        Ok(Some(Expectation { value, band: BAND_95 * forecast.sd * bridge.factor }))
    }

    /// Where a club will finish, on the scale that its target means.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn finish(&self, club: &ClubId) -> Result<Option<Finish>, TradeError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        if found.plan.is_none() {
            return Ok(None);
        }
        let probe = self.assembly.finish_probe(club);
        let (target, tolerance) = (found.target.swing_weight_points, found.target.swing_weight_tolerance());
        let asked = self.assembly.asked_of(&probe, &found.target);
        let by_inertia = self.off_inertia(found)?;
        let spread = match by_inertia {
            Some(off) => off,
            None => self.mixture.normals(|belief| belief.answer(&probe))?.moved(-asked),
        };
        let deviation = spread.as_one();
        let own_sd = match by_inertia {
            Some(_) => deviation.sd,
            None => self.mixture.forecast(|belief| belief.answer(&true_finish(club)))?.sd,
        };
        Ok(Some(Finish {
            swing_weight_points: target + deviation.mean,
            band_points: BAND_95 * deviation.sd,
            own_band_points: BAND_95 * own_sd,
            chance: spread.between(-tolerance, tolerance),
            deviation_points: deviation.mean,
            tolerance_points: tolerance,
            spread,
        }))
    }

    /// How far a club that is asked for an inertia will be off it, in points at its head; none for all others.
    pub(crate) fn off_inertia(&self, club: &JobClub) -> Result<Option<Normals>, TradeError> {
        let Some(aim) = self.assembly.inertia_aim(club)? else { return Ok(None) };
        let found = self.mixture.normals(|belief| belief.answer(&finished_inertia(&club.id)))?;
        let off = found.scaled(KG_CM2_PER_G_IN2).moved(-aim.target_kg_cm2);
        Ok(Some(off.scaled(aim.points_per_kg_cm2)))
    }

    /// Standard deviation that a question will have once planned readings (question and noise, in sd) are taken.
    pub(crate) fn sd_after(&self, probe: &Probe, planned: &[(Probe, f64)]) -> Result<f64, EstimationError> {
        self.mixture.sd_after(probe, planned)
    }

    /// Mass of a role of the club as it came, where it was weighed then; none where it was not, and for a new club.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn piece_as_it_came(&self, club: &ClubId, role: Role) -> Result<Option<f64>, TradeError> {
        let weighed = self
            .standing_all()
            .into_iter()
            .any(|r| r.club == *club && r.what.mass_of() == Some(role) && self.assembly.job.is_of_club_as_it_came(r));
        let Some(came) = self.assembly.job.club(club).and_then(JobClub::as_it_came).filter(|_| weighed) else {
            return Ok(None);
        };
        let mass = Quantity::PartMass(role);
        let on = OnClub::of(&[role]);
        Ok(Some(self.mixture.mean(|belief| belief.forecast(&came.id.0, &mass, on, None).map(|f| f.mean))?))
    }

    /// Mass and arm of a role as believed: (mass g, arm mm from the butt end of the shaft); none where the club has no
    /// such piece.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn piece(&self, club: &ClubId, role: Role) -> Result<Option<(f64, f64)>, TradeError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        let present = match role {
            Role::Adhesive => found.target.adhesive_in(self.assembly.shop).is_some(),
            other => self.assembly.has(found, other),
        };
        if !present || found.plan.is_none() {
            return Ok(None);
        }
        let ask = |quantity| {
            self.mixture.mean(|belief| belief.forecast(&club.0, &quantity, OnClub::of(&[role]), None).map(|f| f.mean))
        };
        Ok(Some((ask(Quantity::PartMass(role))?, ask(Quantity::PartArm(role))? * INCH_MM)))
    }
}

/// The pieces that a reading speaks of; what was added to the club is on it at every stage from then on.
fn on_club(plan: &ClubPlan, on: &[Role]) -> OnClub {
    let on = OnClub::of(on);
    if plan.extras.is_empty() { on } else { on.with(Role::Extra) }
}

/// The true swing weight of the finished, dry club. What a scale is off by today is not part of it.
fn true_finish(club: &ClubId) -> Probe {
    Probe::of_club(club.0.clone(), Quantity::SwingWeight, OnClub::finished())
}

/// The inertia of the finished, dry club.
pub(crate) fn finished_inertia(club: &ClubId) -> Probe {
    Probe::of_club(club.0.clone(), Quantity::Inertia, OnClub::finished())
}
