//! Grip size in the work: how thick the grip of each club will be where hands hold it, what tape brings it to the size that is
//! asked, and what that does to the swing weight.
//!
//! Thickness by the trade's rule and by rubber that keeps its volume (`clubphysics::grip_size`): a grip whose core is as thick as
//! the butt has its model's own diameter, a thicker butt and each layer beyond the base add what they are thick, which stretched
//! rubber thins. The rule takes no account of that, the volume all of it; anything between the two is as likely, so the forecast
//! lies in the middle and where it truly lies is one of the unknowns of a small belief, solved by the same engine as that of
//! frequencies: of the grip's model (its mouldings against the stated diameter), of the tape (how much of a layer's thickness
//! stays when it is squeezed), of the caliper, of the single club (its grip at either place, its butt). A reading of one club
//! so tells of the others of its model, too. Grips shrink in time and with heat by amounts that nobody states: a reading tells.

use crate::accuracy::read_on;
use crate::assembly::Assembly;
use clubphysics::grip_size::{diameter_in, diameter_of_kept_volume_in};
use estimation::{Belief, DOUBT_LIMIT, Forecast, JobModel, Observation, Probe, Quantity, Share, SharedPrior, Standing};
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::grip::{GripModel, LOWER_PLACE_MM, UPPER_PLACE_MM};
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::closed_list;
use trade::model::as_it_came;
use trade::reading::{Reading, What};
use trade::tape::TapeModel;
use trade::wrap::{Wraps, strip_mm};
use utoipa::ToSchema;

/// How far a model's mouldings may be off the diameter that is stated of it, mm (a judgement, no source).
const MODEL_SD_MM: f64 = 0.25;
/// How far a single grip may be off its model, mm: as a whole, and at one place alone (a judgement, no source).
const PIECE_SD_MM: f64 = 0.12;
const PLACE_SD_MM: f64 = 0.08;
/// How far a butt may be off its model's diameter, mm, and what each millimetre cut off it adds: it gets thinner toward the tip, by
/// some 6 mm over a metre, in steps or evenly (a judgement, no source).
const BUTT_SD_MM: f64 = 0.05;
const CUT_SD_MM_PER_MM: f64 = 0.003;
/// The butt of a shaft from elsewhere that nobody measured, mm: 0.580 to 0.620 in, mostly 0.600 (common practice, no source).
const UNKNOWN_BUTT_SD_MM: f64 = 0.25;
/// Share of a layer's thickness that squeezed tape is not known to keep (a judgement: shops state 0.010 and 0.015 in a layer).
const LAYER_SHARE_SD: f64 = 0.25;
/// Anything between the rule and the kept volume is as likely: the standard deviation of what lies evenly in a width of 1 (derived).
const SQUEEZE_SD: f64 = 0.288_675;
/// What a size may be off: half of 1/32 in, the step in which sizes are sold (common practice, no source).
pub const SIZE_TOLERANCE_MM: f64 = INCH_MM / 64.0;

closed_list! {
    /// Where a grip's thickness is taken.
    GripPlace {
        /// Under the upper hand, 2 in below the outside of the cap.
        Upper = "upper";
        /// Under the lower hand, 6 in below it.
        Lower = "lower";
    }
}

impl GripPlace {
    /// The place that a reading is taken at; none for all else that is read.
    #[must_use]
    pub const fn of(what: What) -> Option<Self> {
        match what {
            What::GripSize => Some(Self::Upper),
            What::GripSizeLower => Some(Self::Lower),
            _ => None,
        }
    }

    pub(crate) const fn read_as(self) -> What {
        match self {
            Self::Upper => What::GripSize,
            Self::Lower => What::GripSizeLower,
        }
    }

    pub(crate) const fn below_cap_mm(self) -> f64 {
        match self {
            Self::Upper => UPPER_PLACE_MM,
            Self::Lower => LOWER_PLACE_MM,
        }
    }
}

/// What is asked of a club where a reading is taken, mm.
#[must_use]
pub fn asked(club: &JobClub, what: What) -> Option<f64> {
    let size = club.target.grip_size?;
    match GripPlace::of(what)? {
        GripPlace::Upper => Some(size.upper_mm),
        GripPlace::Lower => size.lower_mm,
    }
}

/// What a caliper should show of a club's grip at one place; none where the model of its grip does not say how thick it is.
///
/// # Errors
/// A model that the library lacks; figures that the belief cannot work with.
pub(crate) fn expected(
    assembly: Assembly<'_>,
    readings: &[&Reading],
    club: &JobClub,
    place: GripPlace,
) -> Result<Option<Forecast>, TradeError> {
    let Some(grips) = Grips::of(assembly, readings)? else { return Ok(None) };
    let Some(case) = grips.case(&club.id) else { return Ok(None) };
    let found = grips.forecast(case, place, club.target.wraps, true)?;
    let noise = read_on(assembly.shop, assembly.learned, place.read_as(), 0.0, 1);
    Ok(found.map(|found| Forecast { sd: found.sd.hypot(noise.map_or(0.0, |n| n.noise_sd)), ..found }))
}

/// What is believed of the grips of a job.
pub(crate) struct Grips<'a> {
    cases: Vec<(&'a JobClub, Case<'a>)>,
    belief: Belief,
    /// Readings in doubt: they do not fit with the others.
    pub aside: Vec<String>,
}

impl<'a> Grips<'a> {
    pub(crate) fn of(assembly: Assembly<'a>, readings: &[&Reading]) -> Result<Option<Self>, TradeError> {
        let mut cases = Vec::new();
        for club in assembly.job.clubs.iter().filter(|club| club.plan.is_some()) {
            if let Some(case) = Case::of(assembly, club)? {
                cases.push((club, case));
            }
        }
        if cases.is_empty() {
            return Ok(None);
        }
        let caliper = read_on(assembly.shop, assembly.learned, What::GripSize, 0.0, 1);
        let (noise_sd, offset_sd) = caliper.map_or((0.15, 0.05), |found| (found.noise_sd, found.offset_sd));
        let mut sds = BTreeMap::from([
            (LAYER.to_owned(), LAYER_SHARE_SD),
            (SQUEEZE.to_owned(), SQUEEZE_SD),
            (CALIPER.to_owned(), offset_sd.max(1e-6)),
        ]);
        for (_, case) in &cases {
            sds.extend([
                (model_key(case.grip), MODEL_SD_MM),
                (case.key("piece"), PIECE_SD_MM),
                (case.key("butt"), case.butt_sd_mm),
            ]);
            sds.extend(GripPlace::ALL.iter().map(|place| (case.key(place.key()), PLACE_SD_MM)));
        }
        let shared = sds.into_iter().map(|(key, sd)| SharedPrior::new(key, sd)).collect();
        let model = JobModel { clubs: Vec::new(), shared, scales: Vec::new(), joint: Vec::new() };
        let mut observed = Vec::new();
        for (club, case) in &cases {
            for reading in readings.iter().filter(|r| r.club == club.id && !assembly.job.is_of_club_as_it_came(r)) {
                let Some(found) = GripPlace::of(reading.what).and_then(|at| case.at(at, club.target.wraps)) else {
                    continue;
                };
                let mut shares = found.shares;
                shares.push(share(CALIPER, 1.0));
                let value = reading.value - found.expected_mm;
                let made = Observation::new(reading.id.0.clone(), Quantity::Combination(shares), value, noise_sd);
                observed.push(if reading.insisted { made.standing(Standing::Insisted) } else { made });
            }
        }
        let doubt = model.solve_with_doubt(&observed, DOUBT_LIMIT)?;
        Ok(Some(Self { cases, belief: doubt.belief, aside: doubt.set_aside }))
    }

    pub(crate) fn case(&self, club: &ClubId) -> Option<&Case<'a>> {
        self.cases.iter().find(|(other, _)| other.id == *club).map(|(_, case)| case)
    }

    /// How thick a grip is at a place on so much tape; as a caliper shows it where it is `read`.
    pub(crate) fn forecast(
        &self,
        case: &Case<'_>,
        place: GripPlace,
        wraps: Wraps,
        read: bool,
    ) -> Result<Option<Forecast>, TradeError> {
        let Some(mut found) = case.at(place, wraps) else { return Ok(None) };
        if read {
            found.shares.push(share(CALIPER, 1.0));
        }
        let answer = self.belief.answer(&Probe::of_job(Quantity::Combination(found.shares)))?;
        Ok(Some(Forecast { mean: answer.mean + found.expected_mm, sd: answer.sd }))
    }
}

const LAYER: &str = "grip_layer";
const SQUEEZE: &str = "grip_squeeze";
const CALIPER: &str = "grip_caliper";

fn model_key(grip: &GripModel) -> String {
    format!("grip_model:{}", grip.code)
}

fn share(key: impl Into<String>, gain: f64) -> Share {
    Share { key: key.into(), gain }
}

pub(crate) struct Case<'a> {
    club: &'a ClubId,
    pub grip: &'a GripModel,
    pub butt_mm: f64,
    butt_sd_mm: f64,
    pub tape: Option<&'a TapeModel>,
}

/// A thickness as a line of what is not known.
struct Linear {
    expected_mm: f64,
    shares: Vec<Share>,
}

impl<'a> Case<'a> {
    /// None for a grip that came with the club, of which no model says anything.
    fn of(assembly: Assembly<'a>, club: &'a JobClub) -> Result<Option<Self>, TradeError> {
        let target = &club.target;
        let grip = assembly.library.grip(&target.grip_model)?;
        if as_it_came::is(&grip.code) {
            return Ok(None);
        }
        let shaft = assembly.library.shaft(&target.shaft_model)?;
        let tape = target.tape_in(assembly.shop).map(|code| assembly.library.tape(code)).transpose()?;
        let cut_mm = club.plan.as_ref().map_or(0.0, |plan| plan.butt_cut_mm.max(0.0));
        let own_sd_mm = if as_it_came::is(&shaft.code) { UNKNOWN_BUTT_SD_MM } else { BUTT_SD_MM };
        let butt_sd_mm = own_sd_mm.hypot(CUT_SD_MM_PER_MM * cut_mm);
        Ok(Some(Self { club: &club.id, grip, butt_mm: shaft.butt_diameter_mm, butt_sd_mm, tape }))
    }

    fn key(&self, of: &str) -> String {
        format!("grip_{of}:{}", self.club)
    }

    /// None where the model does not say how thick the grip is there.
    fn at(&self, place: GripPlace, wraps: Wraps) -> Option<Linear> {
        let own_mm = match place {
            GripPlace::Upper => self.grip.upper_mm?,
            GripPlace::Lower => self.grip.lower_mm?,
        };
        // A grip's own size is meant with the one layer that carries it.
        let mut layers = f64::from(wraps.base) - 1.0 + f64::from(wraps.full);
        if place.below_cap_mm() >= self.grip.cap_mm + strip_mm(self.grip) / 2.0 {
            layers += f64::from(wraps.lower_hand);
        }
        let growth_mm = 2.0 * self.tape.map_or(0.0, |tape| tape.thickness_mm) * layers;
        // The core and the shaft taper together: what they differ by at the butt they differ by below it.
        let (core_mm, shaft_mm) = (self.grip.core_diameter_mm, self.butt_mm);
        let rule_mm = diameter_in(own_mm, core_mm, shaft_mm, growth_mm);
        let volume_mm = diameter_of_kept_volume_in(own_mm, core_mm, shaft_mm, growth_mm);
        let shares = vec![
            share(model_key(self.grip), 1.0),
            share(self.key("piece"), 1.0),
            share(self.key(place.key()), 1.0),
            share(self.key("butt"), 1.0),
            share(LAYER, growth_mm),
            share(SQUEEZE, rule_mm - volume_mm),
        ];
        Some(Linear { expected_mm: f64::midpoint(rule_mm, volume_mm), shares })
    }
}
