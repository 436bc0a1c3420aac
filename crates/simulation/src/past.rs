//! The truth behind the past of the invented shop: what the clubs of its finished jobs truly are, and what its
//! instruments show of them. Clubs are weighed up from accepted plans by this crate's own physics; shop, pieces, hands
//! and days scatter by its distributions. For irons and wedges: no adapter, no screw.

use crate::club::{Mass, TrueClub, cut_shaft};
use crate::draw::{Draw, Stream};
use crate::frequency::usual_cpm;
use crate::job::{Hand, hand};
use crate::settings::{Settings, World};
use crate::shop::{GripTruth, HeadTruth, SimulatedShop};
use fnv::FnvHasher;
use std::hash::Hasher;
use trade::error::TradeError;
use trade::fit::raw_shaft;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::{Library, PartKind};
use trade::part::Part;
use trade::plan::PlanLacks;
use trade::plan::{ClubPlan, PlannedPart};
use trade::reading::{Unit, What};
use trade::shop::Shop;
use trade::wrap::tape_on;

/// A careful shop: half the scatter of the simulation's.
const CAREFUL: f64 = 0.5;
/// Scatter of loft and lie of heads as they come (common practice, no source), and of what a bend leaves, °.
const HEAD_ANGLE_SD_DEG: f64 = 0.4;
const BENT_SD_DEG: f64 = 0.1;
/// Steps that instruments are read to: a gauge for loft and lie, °; degrees round the shaft; a meter, cpm; a rule, a
/// piece balanced on an edge, a caliper, mm.
const ANGLE_STEP_DEG: f64 = 0.25;
const SIDE_STEP_DEG: f64 = 5.0;
const CPM_STEP: f64 = 1.0;
const RULE_STEP_MM: f64 = 25.4 / 32.0;
const EDGE_STEP_MM: f64 = 0.5;
const CALIPER_STEP_MM: f64 = 0.1;
/// How far a shaft model is stiffer or softer than its tube, as a logarithm, at most; what single shafts that were not read as they
/// came in scatter, as a logarithm; what a cut and a clamping leave, cpm (common practice, no source).
const STIFFER_RANGE: f64 = 0.08;
const STIFFER_SD: f64 = 0.015;
const CPM_SD: f64 = 0.7;
/// Weight at the tip of a raw shaft in the invented shop, g.
const RAW_WITH_G: f64 = 205.0;

/// A shop with a past.
#[derive(Debug, Clone)]
pub struct PastShop {
    settings: Settings,
    truth: SimulatedShop,
}

/// A club as it truly is, and how its angles and its frequency are.
#[derive(Debug, Clone)]
pub struct PastClub {
    club: TrueClub,
    /// (loft, lie) of the loose head and of the bent club.
    loose_deg: (f64, f64),
    bent_deg: (f64, f64),
    soft_side_deg: f64,
    cpm: f64,
}

/// What a plan is put together from.
#[derive(Debug, Clone, Copy)]
pub struct Assembled<'a> {
    /// The models.
    pub library: &'a Library,
    /// The shop as it knows itself.
    pub shop: &'a Shop,
    /// Running number of the job.
    pub job: i64,
    /// The club of the job, with what its sheet asks.
    pub club: &'a JobClub,
    /// Which parts it gets, and how its shaft is cut.
    pub plan: &'a ClubPlan,
    /// The parts of the plan.
    pub parts: &'a [Part],
}

/// When and where something is read.
#[derive(Debug, Clone, Copy)]
pub struct Occasion {
    /// Running number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// Place of the step in the job.
    pub step: usize,
    /// The how-manieth reading of it.
    pub nth: u64,
    /// Day of the job, from 0.
    pub day: i64,
    /// Hours since that morning.
    pub hours: f64,
}

fn rounded(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

/// A name as the step of a path.
fn named(name: &str) -> u64 {
    // FNV-1a, 64 bits: the same in every version of this program, so that a seed keeps drawing the same shop.
    let mut hash = FnvHasher::default();
    hash.write(name.as_bytes());
    hash.finish()
}

impl PastShop {
    /// The shop of a seed.
    #[must_use]
    pub fn of(seed: u64) -> Self {
        // The demonstration's past is one of a shop as the belief expects it.
        let settings = Settings { seed, scatter: CAREFUL, world: World::AsBelieved, ..Settings::default() };
        Self { truth: SimulatedShop::draw(&settings, 0), settings }
    }

    fn draw(&self, stream: Stream, path: &[u64]) -> Draw {
        Draw::of(self.settings.seed, stream, path)
    }

    /// What a part truly weighs: it was weighed once, on a day of its own.
    fn true_g(&self, part: &PlannedPart) -> f64 {
        let s = &self.truth.scatter;
        part.mass_g + self.draw(Stream::Parts, &[named(&part.code)]).normal(0.0, s.mass_noise_g.hypot(s.mass_offset_g))
    }

    /// Puts a club together from its plan.
    ///
    /// # Errors
    /// A model that the plan names and the library lacks; a plan without head, shaft or grip.
    pub fn club(&self, of: Assembled<'_>) -> Result<PastClub, TradeError> {
        let mine = hand(&self.truth, of.job.unsigned_abs(), of.club.slot.unsigned_abs());
        let (shaft_mm, cap_mm) = (of.plan.cut_shaft_mm + mine.cut_mm, self.cap_mm(of)?);
        let mut masses = vec![self.head(of, shaft_mm)?, self.shaft(of, shaft_mm)?];
        masses.extend(self.joint(of, shaft_mm, &mine)?);
        masses.extend(self.grip_end(of, &mine)?);
        let (model, number) = of.library.head_number(&of.club.target.head_model, &of.plan.head_number)?;
        let head = of.part(PartKind::Head)?;
        let own = of.parts.iter().find(|p| p.id == head.part);
        let mut draw = self.draw(Stream::Head, &[named(&head.code)]);
        let mut angle =
            |own: Option<f64>, nominal: f64| own.unwrap_or_else(|| nominal + draw.normal(0.0, HEAD_ANGLE_SD_DEG));
        let loose_deg =
            (angle(own.and_then(|p| p.loft_deg), number.loft_deg), angle(own.and_then(|p| p.lie_deg), number.lie_deg));
        // A head is bent as far as it may be.
        let bent = |draw: &mut Draw, from: f64, to: f64| {
            from + (to - from).clamp(-model.bend_limit_deg, model.bend_limit_deg) + draw.normal(0.0, BENT_SD_DEG)
        };
        let target = &of.club.target;
        let bent_deg = (bent(&mut draw, loose_deg.0, target.loft_deg), bent(&mut draw, loose_deg.1, target.lie_deg));
        let mut draw = self.draw(Stream::Parts, &[named(&of.part(PartKind::Shaft)?.code), 1]);
        let soft_side_deg = draw.uniform(0.0, 359.0);
        let shaft = of.part(PartKind::Shaft)?;
        let as_it_came = of.parts.iter().find(|p| p.id == shaft.part).and_then(|p| p.cpm);
        let stiffer = match as_it_came {
            // Twice the logarithm of how much faster it was than its tube.
            Some(raw) => 2.0 * (raw / usual_cpm(of.library, of.plan, &target.number, 0.0, Some(RAW_WITH_G))?).ln(),
            None => {
                let mut of_model = self.draw(Stream::Shop, &[named(&target.shaft_model)]);
                of_model.uniform(-STIFFER_RANGE, STIFFER_RANGE) + draw.normal(0.0, STIFFER_SD)
            }
        };
        let cpm = usual_cpm(of.library, of.plan, &target.number, stiffer, None)? + draw.normal(0.0, CPM_SD);
        let bore_to_ground_mm = of.plan.tip_to_ground_mm;
        let club = TrueClub { masses, cap_mm, shaft_mm, bore_to_ground_mm };
        Ok(PastClub { club, loose_deg, bent_deg, soft_side_deg, cpm })
    }

    fn head(&self, of: Assembled<'_>, shaft_mm: f64) -> Result<Mass, TradeError> {
        let part = of.part(PartKind::Head)?;
        let model = of.library.head(&part.model)?;
        let place = model.numbers.iter().position(|n| n.number == of.plan.head_number).unwrap_or(0);
        let truth = HeadTruth::draw(&self.settings, &self.truth, named(&model.code), model.numbers.len());
        let shift_mm = truth.offset_mm.get(place).copied().unwrap_or(0.0);
        let own_mm = self.draw(Stream::Parts, &[named(&part.code), 2]).normal(0.0, self.truth.scatter.head_offset_mm);
        let ground_mm = shaft_mm + of.plan.tip_to_ground_mm;
        Ok(Mass {
            role: Role::Head,
            mass_g: self.true_g(part),
            arm_mm: ground_mm + model.offset_prior_mm().0 + shift_mm + own_mm,
        })
    }

    fn shaft(&self, of: Assembled<'_>, shaft_mm: f64) -> Result<Mass, TradeError> {
        let planned = of.part(PartKind::Shaft)?;
        let model = of.library.shaft(&planned.model)?;
        let own = of.parts.iter().find(|p| p.id == planned.part);
        let nominal = Part { number: own.and_then(|p| p.number.clone()), ..Part::new("", PartKind::Shaft, "") };
        let raw = raw_shaft(model, own.unwrap_or(&nominal), &of.club.target.number)?;
        let own_mm =
            self.draw(Stream::Parts, &[named(&planned.code), 3]).normal(0.0, self.truth.scatter.shaft_centre_mm);
        // A shaft that was balanced on an edge has its balance point where it was read.
        let shift_mm = if own.is_some_and(|p| p.balance_point_mm.is_some()) { 0.0 } else { self.truth.shaft_centre_mm };
        let tip_mm = of.plan.tip_trim_mm;
        let (mass_g, arm_mm) = cut_shaft(
            self.true_g(planned),
            raw.length_mm,
            raw.balance_point_mm + shift_mm + own_mm,
            self.truth.shaft_bulge,
            raw.length_mm - tip_mm - shaft_mm,
            tip_mm,
        );
        Ok(Mass { role: Role::Shaft, mass_g, arm_mm })
    }

    fn joint(&self, of: Assembled<'_>, shaft_mm: f64, mine: &Hand) -> Result<Vec<Mass>, TradeError> {
        let mut masses = Vec::new();
        let bore_mm = of.library.head(&of.club.target.head_model)?.bore_depth_mm;
        if let Some(part) = of.plan.part(PartKind::Ferrule) {
            let arm_mm = shaft_mm - bore_mm - of.library.ferrule(&part.model)?.length_mm / 2.0;
            let turnings_g = (self.truth.turnings_g + mine.turnings_g).max(0.0);
            masses.push(Mass { role: Role::Ferrule, mass_g: part.mass_g + mine.ferrule_g - turnings_g, arm_mm });
            masses.push(Mass { role: Role::Turnings, mass_g: turnings_g, arm_mm });
        }
        let mut below_mm = 0.0;
        for part in of.plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight) {
            let long_mm = of.library.tip_weight(&part.model)?.length_mm;
            let arm_mm = shaft_mm - below_mm - long_mm / 2.0 - mine.tip_place_mm.abs();
            below_mm += long_mm;
            masses.push(Mass { role: Role::TipWeight, mass_g: part.mass_g + mine.tip_g(part.mass_g), arm_mm });
        }
        if let Some(code) = of.club.target.adhesive_in(of.shop) {
            // The shop's joints against what the middle of such shops takes, on this adhesive's own figure.
            let more_g = self.truth.joint_g - crate::shop::JOINT_NOMINAL_G;
            let mix_g = self.draw(Stream::Day, &[of.job.unsigned_abs(), 1]).normal(0.0, self.truth.scatter.mix_g);
            let mass_g = of.library.adhesive(code)?.joint_mass_g + more_g + mix_g + mine.joint_g;
            let arm_mm = shaft_mm - bore_mm / 2.0 + self.truth.joint_arm_mm;
            masses.push(Mass { role: Role::Adhesive, mass_g: mass_g.max(0.3), arm_mm });
        }
        Ok(masses)
    }

    fn grip_end(&self, of: Assembled<'_>, mine: &Hand) -> Result<Vec<Mass>, TradeError> {
        let target = &of.club.target;
        let part = of.part(PartKind::Grip)?;
        let model = of.library.grip(&part.model)?;
        let (truth, own_mm) = (self.grip_truth(&model.code), self.grip_own_mm(part));
        let arm_mm = model.centre_mm + truth.centre_mm - GripTruth::nominal().centre_mm + own_mm.0;
        let mut masses = vec![
            Mass { role: Role::Grip, mass_g: self.true_g(part), arm_mm },
            Mass { role: Role::Solvent, mass_g: self.truth.solvent_g + mine.solvent_g, arm_mm: model.length_mm / 2.0 },
        ];
        if let Some(code) = target.tape_in(of.shop) {
            let butt_mm = of.library.shaft(&target.shaft_model)?.butt_diameter_mm;
            let (nominal_g, arm_mm, layers) = tape_on(target.wraps, of.library.tape(code)?, model, butt_mm);
            let s = &self.truth.scatter;
            let of_job = 1.0 + self.draw(Stream::Day, &[of.job.unsigned_abs(), 2]).normal(0.0, s.tape_job_share);
            let mass_g = nominal_g * self.truth.tape_share * of_job + layers.sqrt() * mine.tape_g;
            masses.push(Mass { role: Role::Tape, mass_g, arm_mm: arm_mm + mine.tape_end_mm / 2.0 });
        }
        Ok(masses)
    }

    fn grip_truth(&self, model: &str) -> GripTruth {
        GripTruth::draw(&self.settings, &self.truth, named(model))
    }

    /// (centre, cap) of a single grip against its model's.
    fn grip_own_mm(&self, part: &PlannedPart) -> (f64, f64) {
        let s = &self.truth.scatter;
        let mut draw = self.draw(Stream::Grip, &[named(&part.code)]);
        (draw.normal(0.0, s.grip_centre_mm), draw.normal(0.0, s.cap_mm))
    }

    fn cap_mm(&self, of: Assembled<'_>) -> Result<f64, TradeError> {
        let part = of.part(PartKind::Grip)?;
        let model = of.library.grip(&part.model)?;
        let shift_mm = self.grip_truth(&model.code).cap_mm - GripTruth::nominal().cap_mm;
        Ok(model.cap_mm + shift_mm + self.grip_own_mm(part).1)
    }

    /// What the instrument shows that reads this of a club; none for what is not read of clubs of this past.
    #[must_use]
    pub fn shows(&self, club: &PastClub, what: What, on: &[Role], at: Occasion) -> Option<f64> {
        let s = &self.truth.scatter;
        let mut draw = self.reading(what, at);
        let glued = on.contains(&Role::Adhesive);
        Some(match what {
            What::SwingWeight => self.swing_weight_shown(club.club.swing_weight_points(on), at, &mut draw),
            What::Loft | What::Lie => {
                let (loft, lie) = if glued { club.bent_deg } else { club.loose_deg };
                rounded(if what == What::Loft { loft } else { lie }, ANGLE_STEP_DEG)
            }
            What::ShaftLength => rounded(club.club.shaft_mm + draw.normal(0.0, s.rule_mm), RULE_STEP_MM),
            What::FinishedLength => {
                let length_mm = club.club.shaft_mm + club.club.bore_to_ground_mm + club.club.cap_mm;
                rounded(length_mm + draw.normal(0.0, s.rule_mm), RULE_STEP_MM)
            }
            What::GripCentre => {
                let grip = club.club.masses.iter().find(|m| m.role == Role::Grip)?;
                rounded(grip.arm_mm + draw.normal(0.0, s.edge_mm), EDGE_STEP_MM)
            }
            What::CapThickness => rounded(club.club.cap_mm + draw.normal(0.0, s.caliper_mm), CALIPER_STEP_MM),
            What::Cpm => rounded(club.cpm, CPM_STEP),
            What::SoftSide => rounded(club.soft_side_deg, SIDE_STEP_DEG).rem_euclid(360.0),
            What::Done => 0.0,
            What::EmptyScale | What::FerruleOn | What::HeadNumber => return None,
            _ if what.unit() == Unit::Gram => {
                let role = what.mass_of();
                let true_g = role.map_or_else(|| club.club.mass_g(on), |role| club.club.mass_g(&[role]));
                self.mass_shown(true_g, at, &mut draw)
            }
            _ => return None,
        })
    }

    /// What the shop's balance scale shows for its check weight, whose own figure is not quite right.
    #[must_use]
    pub fn shows_check_weight(&self, points: f64, at: Occasion) -> f64 {
        let mut draw = self.reading(What::CheckWeight, at);
        self.swing_weight_shown(points + self.truth.check_error_points, at, &mut draw)
    }

    /// What the shop's balance scale shows for the reference club.
    #[must_use]
    pub fn shows_reference(&self, points: f64, at: Occasion) -> f64 {
        let mut draw = self.reading(What::ReferenceSwingWeight, at);
        self.swing_weight_shown(points, at, &mut draw)
    }

    /// What the shop's gram scale shows for a weight.
    #[must_use]
    pub fn shows_mass(&self, mass_g: f64, at: Occasion) -> f64 {
        let mut draw = self.reading(What::TotalMass, at);
        self.mass_shown(mass_g, at, &mut draw)
    }

    fn reading(&self, what: What, at: Occasion) -> Draw {
        let place = [at.job.unsigned_abs(), at.slot.unsigned_abs(), at.step as u64, at.day.unsigned_abs()];
        self.draw(Stream::Reading, &[&place[..], &[what as u64, at.nth]].concat())
    }

    fn of_day(&self, at: Occasion, which: u64, sd: f64) -> f64 {
        self.draw(Stream::Day, &[at.job.unsigned_abs(), at.day.unsigned_abs(), which]).normal(0.0, sd)
    }

    fn swing_weight_shown(&self, true_points: f64, at: Occasion, draw: &mut Draw) -> f64 {
        let s = &self.truth.scatter;
        let drift = self.of_day(at, 4, s.drift_points) * (at.hours / 8.0).clamp(0.0, 1.0);
        let off = self.of_day(at, 3, s.offset_points) + drift;
        rounded(true_points + off + draw.normal(0.0, self.truth.noise_points), 0.1)
    }

    fn mass_shown(&self, true_g: f64, at: Occasion, draw: &mut Draw) -> f64 {
        let s = &self.truth.scatter;
        rounded(true_g + self.of_day(at, 5, s.mass_offset_g) + draw.normal(0.0, s.mass_noise_g), 0.1)
    }
}

impl Assembled<'_> {
    fn part(&self, kind: PartKind) -> Result<&PlannedPart, TradeError> {
        self.plan
            .part(kind)
            .ok_or_else(|| TradeError::refused(PlanLacks::Part { number: self.club.target.number.clone(), kind }))
    }
}

#[cfg(test)]
mod tests {
    use super::named;

    /// Published values of FNV-1a, 64 bits (the list of test vectors of G. Fowler, L. C. Noll, K.-P. Vo, from memory; a
    /// loop in Python gives the same).
    #[test]
    fn a_name_gives_the_same_step_in_every_version() {
        assert_eq!(named(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(named("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(named("foobar"), 0x8594_4171_f739_67e8);
    }
}
