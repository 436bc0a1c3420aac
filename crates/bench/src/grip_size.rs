//! Grip size in the work: how thick the grip of each club will be where hands hold it, what tape brings it to the size that is
//! asked, and what that does to the swing weight.
//!
//! Thickness by the trade's rule and by rubber that keeps its volume (`clubphysics::grip_size`): a grip whose core is as thick as the
//! butt has its model's own diameter, a thicker butt and each layer beyond the base add what they are thick, which stretched
//! rubber thins. The rule takes no account of that, the volume all of it; the forecast lies in the middle of the two, and half of
//! what they differ by is part of its standard deviation.

use crate::assembly::Assembly;
use crate::belief::BAND_95;
use clubphysics::grip_size::{diameter_in, diameter_of_kept_volume_in};
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::grip::{GripModel, LOWER_PLACE_MM, UPPER_PLACE_MM};
use trade::id::ClubId;
use trade::job::JobClub;
use trade::model::as_it_came;
use trade::reading::{Reading, What};
use trade::wrap::{Wraps, strip_mm, tape_on};
use utoipa::ToSchema;

/// How far a single grip may be off its model's diameter, mm: mouldings differ, and nobody states by how much (a judgement, no
/// source).
const PIECE_SD_MM: f64 = 0.15;
/// How far a butt may be off its model's diameter, mm, and what each millimetre cut off it adds: it gets thinner toward the tip, by
/// some 6 mm over a metre, in steps or evenly (a judgement, no source).
const BUTT_SD_MM: f64 = 0.05;
const CUT_SD_MM_PER_MM: f64 = 0.003;
/// Share of a layer's thickness that squeezed tape is not known to keep (a judgement: shops state 0.010 and 0.015 in for one layer).
const LAYER_SHARE_SD: f64 = 0.25;
/// One reading of soft rubber by a caliper that just touches, mm (a judgement, no source).
pub const CALIPER_SD_MM: f64 = 0.15;
/// Most layers that are advised over the base layer.
const MOST_LAYERS: u8 = 8;
/// What a size may be off: half of 1/32 in, the step in which sizes are sold (common practice, no source).
pub const SIZE_TOLERANCE_MM: f64 = INCH_MM / 64.0;

/// The grip of one club at one place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct GripAt {
    /// From the outside of the cap.
    pub below_cap_mm: f64,
    /// How thick it will be there.
    pub expected_mm: f64,
    /// Half width of its 95 % band.
    pub band_mm: f64,
    /// What is asked there, where a size is asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asked_mm: Option<f64>,
    /// What a caliper showed there, where it was read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub read_mm: Option<f64>,
}

/// Other tape that brings a grip nearer to its size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct WrapAdvice {
    /// The layers to lay.
    pub wraps: Wraps,
    /// How thick the grip will be at the upper hand.
    pub upper_mm: f64,
    /// How thick at the lower hand, where the model's diameter there is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<f64>,
    /// What the layers add to the mass.
    pub more_g: f64,
    /// What they do to the swing weight: more tape makes it lighter.
    pub by_points: f64,
}

/// The grip of one club of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct GripSizeOfClub {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Number or letter of the club.
    pub number: String,
    /// The layers as the sheet has them.
    pub wraps: Wraps,
    /// Upper hand and lower hand; empty where the grip's model does not say how thick it is.
    pub places: Vec<GripAt>,
    /// What reaches the size better; none where none is asked, or the layers are right.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub advised: Option<WrapAdvice>,
    /// Whether no number of layers reaches the size: the grip is too thick without any, or would take too many.
    pub out_of_reach: bool,
}

/// The grip of every club of a job.
///
/// # Errors
/// A model that the library lacks.
pub fn grip_sizes(assembly: Assembly<'_>, readings: &[Reading]) -> Result<Vec<GripSizeOfClub>, TradeError> {
    assembly.job.clubs.iter().map(|club| grip_size(assembly, club, readings)).collect()
}

/// The grip of one club.
///
/// # Errors
/// A model that the library lacks.
pub fn grip_size(
    assembly: Assembly<'_>,
    club: &JobClub,
    readings: &[Reading],
) -> Result<GripSizeOfClub, TradeError> {
    let target = &club.target;
    let case = Case::of(assembly, club)?;
    let standing = trade::reading::standing(readings);
    let read = |what: What| standing.iter().rev().find(|r| r.club == club.id && r.what == what).map(|r| r.value);
    let upper = case.as_ref().and_then(|case| Some((case.at(Place::Upper, target.wraps)?, What::GripSize)));
    let lower = case.as_ref().and_then(|case| Some((case.at(Place::Lower, target.wraps)?, What::GripSizeLower)));
    let places = [upper, lower].into_iter().flatten().map(|((below_cap_mm, expected_mm, sd_mm), what)| GripAt {
        below_cap_mm,
        expected_mm,
        band_mm: BAND_95 * sd_mm,
        asked_mm: asked(club, what),
        read_mm: read(what),
    });
    let places: Vec<GripAt> = places.collect();
    let (advised, out_of_reach) = case.as_ref().map_or((None, false), |case| case.advise(club));
    Ok(GripSizeOfClub {
        club: club.id.clone(),
        slot: club.slot,
        number: target.number.clone(),
        wraps: target.wraps,
        places,
        advised,
        out_of_reach,
    })
}

/// The size that the sheet asks where a reading is taken.
#[must_use]
pub fn asked(club: &JobClub, what: What) -> Option<f64> {
    match what {
        What::GripSize => club.target.grip_size_mm,
        What::GripSizeLower => club.target.grip_size_lower_mm,
        _ => None,
    }
}

#[derive(Clone, Copy)]
enum Place {
    Upper,
    Lower,
}

struct Case<'a> {
    grip: &'a GripModel,
    butt_mm: f64,
    butt_sd_mm: f64,
    /// Thickness of a layer; none where no tape is known.
    layer_mm: Option<f64>,
    tape: Option<&'a trade::tape::TapeModel>,
}

impl<'a> Case<'a> {
    /// None for a grip that came with the club, of which no model says anything.
    fn of(assembly: Assembly<'a>, club: &JobClub) -> Result<Option<Self>, TradeError> {
        let target = &club.target;
        let grip = assembly.library.grip(&target.grip_model)?;
        if as_it_came::is(&grip.code) {
            return Ok(None);
        }
        let shaft = assembly.library.shaft(&target.shaft_model)?;
        let tape = target.tape_in(assembly.shop).map(|code| assembly.library.tape(code)).transpose()?;
        let cut_mm = club.plan.as_ref().map_or(0.0, |plan| plan.butt_cut_mm.max(0.0));
        // Nobody measured the butt of a shaft from elsewhere: 0.580 to 0.620 in, mostly 0.600 (common practice, no source).
        let own_sd_mm = if as_it_came::is(&shaft.code) { 0.25 } else { BUTT_SD_MM };
        Ok(Some(Self {
            grip,
            butt_mm: shaft.butt_diameter_mm,
            butt_sd_mm: own_sd_mm.hypot(CUT_SD_MM_PER_MM * cut_mm),
            layer_mm: tape.map(|tape| tape.thickness_mm),
            tape,
        }))
    }

    /// Where, how thick and how sure, mm; none where the model does not say how thick the grip is there.
    fn at(&self, place: Place, wraps: Wraps) -> Option<(f64, f64, f64)> {
        let (below_cap_mm, own_mm) = match place {
            Place::Upper => (UPPER_PLACE_MM, self.grip.upper_mm?),
            Place::Lower => (LOWER_PLACE_MM, self.grip.lower_mm?),
        };
        // A grip's own size is meant with the one layer that carries it.
        let mut layers = f64::from(wraps.base) - 1.0 + f64::from(wraps.full);
        if below_cap_mm >= self.grip.cap_mm + strip_mm(self.grip) / 2.0 {
            layers += f64::from(wraps.lower_hand);
        }
        let growth_mm = 2.0 * self.layer_mm.unwrap_or(0.0) * layers;
        // The core and the shaft taper together: what they differ by at the butt they differ by below it.
        let (core_mm, shaft_mm) = (self.grip.core_diameter_mm, self.butt_mm);
        let rule_mm = diameter_in(own_mm, core_mm, shaft_mm, growth_mm);
        let volume_mm = diameter_of_kept_volume_in(own_mm, core_mm, shaft_mm, growth_mm);
        let model_sd_mm = (rule_mm - volume_mm).abs() / 2.0;
        let tape_sd_mm = LAYER_SHARE_SD * growth_mm.abs();
        let sd_mm = PIECE_SD_MM.hypot(self.butt_sd_mm).hypot(tape_sd_mm).hypot(model_sd_mm);
        Some((below_cap_mm, f64::midpoint(rule_mm, volume_mm), sd_mm))
    }

    /// The tape that comes nearest to the asked sizes, where it is other tape; and whether no tape reaches the upper hand's.
    fn advise(&self, club: &JobClub) -> (Option<WrapAdvice>, bool) {
        let now = club.target.wraps;
        let Some(asked_mm) = club.target.grip_size_mm else { return (None, false) };
        let Some(tape) = self.tape else { return (None, false) };
        let off = |wraps: Wraps, place: Place, asked: Option<f64>| {
            let (_, expected, _) = self.at(place, wraps)?;
            Some((expected - asked?).abs())
        };
        let total = |wraps: Wraps| {
            let lower = off(wraps, Place::Lower, club.target.grip_size_lower_mm).unwrap_or(0.0);
            off(wraps, Place::Upper, Some(asked_mm)).map(|upper| upper + lower)
        };
        let lower_layers = if club.target.grip_size_lower_mm.is_some() { MOST_LAYERS } else { now.lower_hand };
        let least_lower = if club.target.grip_size_lower_mm.is_some() { 0 } else { now.lower_hand };
        let all = (0..=MOST_LAYERS).flat_map(|full| {
            (least_lower..=lower_layers).map(move |lower_hand| Wraps { base: now.base.max(1), full, lower_hand })
        });
        // Of tape that does as well as another, the less.
        let count = |w: &Wraps| u32::from(w.full) * 2 + u32::from(w.lower_hand);
        let best = all
            .filter_map(|wraps| Some((wraps, total(wraps)?)))
            .min_by(|a, b| a.1.total_cmp(&b.1).then(count(&a.0).cmp(&count(&b.0))));
        let Some((wraps, _)) = best else { return (None, false) };
        let reached = off(wraps, Place::Upper, Some(asked_mm)).is_some_and(|off| off <= SIZE_TOLERANCE_MM);
        let moments = [wraps, now].map(|wraps| {
            let (mass_g, arm_mm, _) = tape_on(wraps, tape, self.grip, self.butt_mm);
            (mass_g, mass_g * trade::swing_weight::points_per_g(arm_mm + self.grip.cap_mm))
        });
        let advice = WrapAdvice {
            wraps,
            upper_mm: self.at(Place::Upper, wraps).map_or(0.0, |(_, mm, _)| mm),
            lower_mm: self.at(Place::Lower, wraps).map(|(_, mm, _)| mm),
            more_g: moments[0].0 - moments[1].0,
            by_points: moments[0].1 - moments[1].1,
        };
        (Some(advice).filter(|_| wraps != now), !reached)
    }
}
