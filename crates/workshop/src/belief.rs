//! From readings to what may be believed of every club: the bridge between the trade's words and the Gaussian belief.

use crate::assembly::{Assembly, TURNINGS_G};
use crate::error::WorkshopError;
use crate::id::{ClubId, ReadingId};
use crate::job::JobClub;
use crate::kind::Role;
use crate::reading::{Reading, What, standing};
use estimation::{Contribution, DOUBT_LIMIT, Doubt, Forecast, Observation, OnClub, Probe, Quantity, Standing};
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Half width of a 95 % band in standard deviations.
pub const BAND_95: f64 = 1.959_963_984_540_054;
/// Standard deviation of a length read with a rule against a stop, mm.
const LENGTH_SD_MM: f64 = 0.4;
/// Standard deviation of a balance point found on an edge, mm.
const BALANCE_POINT_SD_MM: f64 = 1.0;

/// Where a club will finish.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Finish {
    /// Balance of the finished, dry club on the scale that the target means, points since A0.
    pub balance_points: f64,
    /// Half width of its 95 % band.
    pub band_points: f64,
    /// Probability that it lies in tolerance.
    pub chance: f64,
    /// Finish minus target.
    pub deviation_points: f64,
    /// Half width of the tolerance.
    pub tolerance_points: f64,
}

/// A forecast of one reading in the reading's own unit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Expectation {
    /// What the shop's instrument should show.
    pub value: f64,
    /// Half width of the 95 % band of what it will show.
    pub band: f64,
}

/// Points that one gram at a place adds: arm from the end that sits on the stop.
#[must_use]
pub fn points_per_g(arm_from_stop_mm: f64) -> f64 {
    (arm_from_stop_mm / INCH_MM - estimation::FULCRUM_IN) / estimation::GRAM_INCH_PER_POINT
}

/// A job with all its readings weighed up.
#[derive(Debug, Clone)]
pub struct Believed<'a> {
    /// What it was made from.
    pub assembly: Assembly<'a>,
    doubt: Doubt,
    readings: &'a [Reading],
}

impl Assembly<'_> {
    /// The readings that bear on masses, arms and lengths, as the belief takes them.
    #[must_use]
    pub fn observations(&self, readings: &[Reading]) -> Vec<Observation> {
        standing(readings).into_iter().filter_map(|r| self.observation(r)).collect()
    }

    fn observation(&self, reading: &Reading) -> Option<Observation> {
        let club = self.job.club(&reading.club)?;
        let plan = club.plan.as_ref()?;
        let on = OnClub::of(&reading.on);
        let balance = &self.shop.balance_scale;
        let mass = &self.shop.mass_scale;
        let make = |quantity, value: f64, sd: f64, step: f64| {
            let made = Observation::new(reading.id.0.clone(), quantity, value, sd)
                .of_club(club.id.0.clone(), on)
                .rounded_to(step);
            if reading.insisted { made.standing(Standing::Insisted) } else { made }
        };
        let step = reading.display_step.max(0.0);
        Some(match reading.what {
            What::Balance => {
                make(Quantity::Balance, reading.value, balance.noise_sd, step).on_scale(balance.key.clone())
            }
            What::TotalMass => make(Quantity::TotalMass, reading.value, mass.noise_sd, step).on_scale(mass.key.clone()),
            What::BalancePoint => {
                make(Quantity::BalancePoint, reading.value / INCH_MM, BALANCE_POINT_SD_MM / INCH_MM, step / INCH_MM)
            }
            What::ShaftLength => make(
                Quantity::ShaftLength,
                (reading.value + plan.tip_to_ground_mm) / INCH_MM,
                LENGTH_SD_MM / INCH_MM,
                step / INCH_MM,
            ),
            What::FinishedLength => {
                make(Quantity::LengthToCap, reading.value / INCH_MM, LENGTH_SD_MM / INCH_MM, step / INCH_MM)
            }
            What::FerruleMass if plan.part(crate::model::PartKind::Ferrule).is_some() => {
                make(Quantity::PartMass(Role::Ferrule), reading.value - TURNINGS_G.0, 0.16, step)
            }
            what => {
                let role = what.mass_of()?;
                // A weighing of a piece that the plan does not have says nothing about the club.
                if !self.has(club, role) {
                    return None;
                }
                make(Quantity::PartMass(role), reading.value, mass.noise_sd, step).on_scale(mass.key.clone())
            }
        })
    }

    fn has(&self, club: &JobClub, role: Role) -> bool {
        club.plan.as_ref().is_some_and(|plan| match role {
            Role::Tape => {
                let w = club.target.wraps;
                (club.target.tape.is_some() || self.shop.tape.is_some()) && w.base + w.full + w.lower_hand > 0
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
    pub fn believe(self, readings: &'a [Reading]) -> Result<Believed<'a>, WorkshopError> {
        let doubt = self.job_model()?.solve_with_doubt(&self.observations(readings), DOUBT_LIMIT)?;
        Ok(Believed { assembly: self, doubt, readings })
    }
}

impl Believed<'_> {
    /// The readings that stand.
    #[must_use]
    pub fn standing(&self) -> Vec<&Reading> {
        standing(self.readings)
    }

    pub(crate) const fn belief(&self) -> &estimation::Belief {
        &self.doubt.belief
    }

    /// Whether a reading is doubted: kept, shown, not believed.
    #[must_use]
    pub fn is_doubted(&self, reading: &ReadingId) -> bool {
        self.doubt.set_aside.iter().any(|id| id == reading.as_str())
    }

    /// What a reading should show on the shop's instruments; none for what the belief does not know (loft, cpm …) and
    /// for a club without a plan.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn expected(&self, club: &ClubId, what: What, on: &[Role]) -> Result<Option<Expectation>, WorkshopError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        let Some(plan) = &found.plan else { return Ok(None) };
        let balance = self.assembly.shop.balance_scale.key.as_str();
        let mass = self.assembly.shop.mass_scale.key.as_str();
        let (quantity, scale, shift, unit) = match what {
            What::Balance => (Quantity::Balance, Some(balance), 0.0, 1.0),
            What::TotalMass => (Quantity::TotalMass, Some(mass), 0.0, 1.0),
            What::BalancePoint => (Quantity::BalancePoint, None, 0.0, INCH_MM),
            What::ShaftLength => (Quantity::ShaftLength, None, -plan.tip_to_ground_mm, INCH_MM),
            What::FinishedLength => (Quantity::LengthToCap, None, 0.0, INCH_MM),
            other => match other.mass_of() {
                Some(role) if self.assembly.has(found, role) => (Quantity::PartMass(role), Some(mass), 0.0, 1.0),
                _ => return Ok(None),
            },
        };
        let forecast: Forecast = self.doubt.belief.forecast(&club.0, &quantity, OnClub::of(on), scale)?;
        Ok(Some(Expectation { value: forecast.mean * unit + shift, band: BAND_95 * forecast.sd * unit }))
    }

    /// Where a club will finish, on the scale that its target means.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn finish(&self, club: &ClubId) -> Result<Option<Finish>, WorkshopError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        if found.plan.is_none() {
            return Ok(None);
        }
        let forecast = self.doubt.belief.answer(&self.finish_probe(club))?;
        let target = found.target.balance_points;
        let tolerance = found.target.tolerances.balance_points;
        Ok(Some(Finish {
            balance_points: forecast.mean,
            band_points: BAND_95 * forecast.sd,
            chance: forecast.probability_within(target, tolerance),
            deviation_points: forecast.mean - target,
            tolerance_points: tolerance,
        }))
    }

    /// What makes the finish of a club uncertain, the largest first.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn finish_budget(&self, club: &ClubId) -> Result<Vec<Contribution>, WorkshopError> {
        Ok(self.doubt.belief.budget_of(&self.finish_probe(club))?)
    }

    /// Mass and arm of a role as believed: (mass g, arm mm from the butt end of the shaft); none where the club has no
    /// such piece.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn piece(&self, club: &ClubId, role: Role) -> Result<Option<(f64, f64)>, WorkshopError> {
        let Some(found) = self.assembly.job.club(club) else { return Ok(None) };
        let present = match role {
            Role::Adhesive => found.target.adhesive.is_some() || self.assembly.shop.adhesive.is_some(),
            other => self.assembly.has(found, other),
        };
        if !present || found.plan.is_none() {
            return Ok(None);
        }
        let ask = |quantity| {
            self.doubt.belief.forecast(&club.0, &quantity, OnClub::of(&[role]), None).map(|f: Forecast| f.mean)
        };
        Ok(Some((ask(Quantity::PartMass(role))?, ask(Quantity::PartArm(role))? * INCH_MM)))
    }

    /// The finish is judged on the scale that read the reference club: what it shows, its offset and all, is what the
    /// player felt. Where another scale read it, or none is named as the shop's, the shop's own scale defines the
    /// target only if no reference was read; else the true value counts and the difference stays uncertain.
    pub(crate) fn finish_probe(&self, club: &ClubId) -> Probe {
        let shop = &self.assembly.shop.balance_scale.key;
        let probe = Probe::of_club(club.0.clone(), Quantity::Balance, OnClub::finished());
        let elsewhere = self
            .assembly
            .job
            .sheet
            .reference
            .as_ref()
            .is_some_and(|r| r.balance_points.is_some() && !r.scale.is_empty() && &r.scale != shop);
        if elsewhere { probe } else { probe.on_scale(shop.clone()) }
    }
}
