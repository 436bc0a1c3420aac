//! Wraps for a grip size: which layers of tape bring a grip to the size that is asked, what they do to the swing weight, and
//! whether size and swing weight want different tape.

use crate::belief::{BAND_95, Believed};
use crate::grip_size::{Case, GripPlace, Grips, SIZE_TOLERANCE_MM, asked};
use crate::remedy::Progress;
use fact::Told;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::reading::{Reading, What};
use trade::swing_weight::points_per_g;
use trade::wrap::{Wraps, tape_on};
use utoipa::ToSchema;

/// Most layers that are advised over the base layer: beyond it a larger grip is the better way (common practice, no source).
const MOST_LAYERS: u8 = 8;
/// A chance that falls by less is not worth a word.
const CHANCE_SEEN: f64 = 0.05;

/// The grip of one club at one place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct GripAt {
    /// Under which hand.
    pub place: GripPlace,
    /// How far that is below the outside of the cap.
    pub below_cap_mm: f64,
    /// How thick it is there, as far as the readings tell.
    pub diameter_mm: f64,
    /// Half width of its 95 % band.
    pub band_mm: f64,
    /// What is asked there, where a size is asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub asked_mm: Option<f64>,
    /// What a caliper showed there last, where it was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub read_mm: Option<f64>,
    /// Whether that reading is in doubt: it does not fit with the others.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub doubted: bool,
}

/// Other tape that brings a grip nearer to its size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct WrapAdvice {
    /// The layers to lay in place of those of the sheet.
    pub wraps: Wraps,
    /// How thick the grip will be under the upper hand.
    pub upper_mm: f64,
    /// How thick under the lower hand, where the model says how thick it is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<f64>,
    /// What the layers add to the mass beyond those of the sheet.
    pub more_g: f64,
    /// What they do to the swing weight: more tape makes it lighter.
    pub by_points: f64,
    /// Chance of the swing weight in tolerance as the tape is planned; none where no swing weight is asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chance_now: Option<f64>,
    /// The same with these layers.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chance_with: Option<f64>,
}

impl WrapAdvice {
    /// Whether size and swing weight want different tape.
    #[must_use]
    pub fn costs_swing_weight(&self) -> bool {
        self.chance_now.zip(self.chance_with).is_some_and(|(now, with)| with < now - CHANCE_SEEN)
    }
}

fact::facts! {
    /// What to do about a club's grip size.
    pub enum GripSizeSays: "grip_size_says" {
        /// The model of the grip does not say how thick it is.
        Unknown,
        /// No size is asked.
        NotAsked,
        /// Neither sheet nor shop names a tape, so nothing can be laid.
        NoTape,
        /// The tape of the sheet gives it.
        AsAsked,
        /// Other layers give it.
        Wraps {
            /// Layers over the full length.
            full: i64,
            /// Layers under the lower hand alone.
            lower: i64,
            /// What they do to the swing weight.
            by_points: f64,
        },
        /// Other layers give it, and cost the swing weight.
        WrapsCost {
            /// Layers over the full length.
            full: i64,
            /// Layers under the lower hand alone.
            lower: i64,
            /// What they do to the swing weight.
            by_points: f64,
        },
        /// The grip is too thick without any layer beyond the base.
        TooThick {
            /// By how much.
            by_mm: f64,
        },
        /// More layers would be needed than are trusted.
        TooThin {
            /// By how much it is too thin with the most of them.
            by_mm: f64,
        },
        /// The grip is on and lies off the size.
        OnAndOff {
            /// By how much: positive is too thick.
            by_mm: f64,
        },
    }
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
    /// What reaches the size better; none where none is asked, the layers are right, or the grip is on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub advised: Option<WrapAdvice>,
    /// What to do.
    #[serde(flatten)]
    pub fact: Told,
}

impl Believed<'_> {
    /// The grip of every club of the job.
    ///
    /// # Errors
    /// A model that the library lacks; figures that the belief cannot work with.
    pub fn grip_sizes(&self) -> Result<Vec<GripSizeOfClub>, TradeError> {
        self.grip_sizes_of(&self.assembly.job.clubs)
    }

    /// The grip of one club of the job; what was read of the others counts as well.
    ///
    /// # Errors
    /// As [`Believed::grip_sizes`].
    pub fn grip_size(&self, club: &JobClub) -> Result<Option<GripSizeOfClub>, TradeError> {
        Ok(self.grip_sizes_of(std::slice::from_ref(club))?.pop())
    }

    fn grip_sizes_of(&self, clubs: &[JobClub]) -> Result<Vec<GripSizeOfClub>, TradeError> {
        let standing = self.standing_all();
        let grips = Grips::of(self.assembly, &standing)?;
        clubs.iter().map(|club| self.grip_of(grips.as_ref(), &standing, club)).collect()
    }

    fn grip_of(
        &self,
        grips: Option<&Grips<'_>>,
        standing: &[&Reading],
        club: &JobClub,
    ) -> Result<GripSizeOfClub, TradeError> {
        let target = &club.target;
        let mut found = GripSizeOfClub {
            club: club.id.clone(),
            slot: club.slot,
            number: target.number.clone(),
            wraps: target.wraps,
            places: Vec::new(),
            advised: None,
            fact: GripSizeSays::Unknown.into(),
        };
        let Some((grips, case)) = grips.and_then(|grips| Some((grips, grips.case(&club.id)?))) else {
            return Ok(found);
        };
        for place in GripPlace::ALL {
            let Some(thick) = grips.forecast(case, *place, target.wraps, false)? else { continue };
            let last = standing.iter().rev().find(|r| r.club == club.id && r.what == place.read_as());
            found.places.push(GripAt {
                place: *place,
                below_cap_mm: place.below_cap_mm(),
                diameter_mm: thick.mean,
                band_mm: BAND_95 * thick.sd,
                asked_mm: asked(club, place.read_as()),
                read_mm: last.map(|r| r.value),
                doubted: last.is_some_and(|r| grips.aside.contains(&r.id.0)),
            });
        }
        let Some(upper) = found.places.iter().find(|at| at.place == GripPlace::Upper) else { return Ok(found) };
        let Some(asked_mm) = upper.asked_mm else {
            return Ok(GripSizeOfClub { fact: GripSizeSays::NotAsked.into(), ..found });
        };
        let most_off_mm =
            found.places.iter().filter_map(|at| Some(at.diameter_mm - at.asked_mm?)).map(f64::abs).fold(0.0, f64::max);
        let off_mm = upper.diameter_mm - asked_mm;
        if Progress::of(self, club).gripped {
            found.fact = if most_off_mm <= SIZE_TOLERANCE_MM {
                GripSizeSays::AsAsked.into()
            } else {
                GripSizeSays::OnAndOff { by_mm: off_mm }.into()
            };
            return Ok(found);
        }
        let best = self.best_wraps(grips, case, club)?;
        let left_mm = best.map_or(off_mm, |best| best.upper_mm - asked_mm);
        found.fact = match best {
            None if off_mm.abs() > SIZE_TOLERANCE_MM => GripSizeSays::NoTape.into(),
            _ if left_mm > SIZE_TOLERANCE_MM => GripSizeSays::TooThick { by_mm: left_mm }.into(),
            _ if left_mm < -SIZE_TOLERANCE_MM => GripSizeSays::TooThin { by_mm: -left_mm }.into(),
            Some(best) if best.wraps != target.wraps => {
                let (full, lower) = (i64::from(best.wraps.full), i64::from(best.wraps.lower_hand));
                if best.costs_swing_weight() {
                    GripSizeSays::WrapsCost { full, lower, by_points: best.by_points }.into()
                } else {
                    GripSizeSays::Wraps { full, lower, by_points: best.by_points }.into()
                }
            }
            _ => GripSizeSays::AsAsked.into(),
        };
        found.advised = best.filter(|best| best.wraps != target.wraps);
        Ok(found)
    }

    /// The tape that comes nearest to the asked sizes; none where no tape is known.
    fn best_wraps(&self, grips: &Grips<'_>, case: &Case<'_>, club: &JobClub) -> Result<Option<WrapAdvice>, TradeError> {
        let (now, Some(tape)) = (club.target.wraps, case.tape) else { return Ok(None) };
        let build_up = asked(club, What::GripSizeLower).is_some();
        let lower_layers = if build_up { 0..=MOST_LAYERS } else { now.lower_hand..=now.lower_hand };
        let mut best: Option<(f64, u32, Wraps)> = None;
        for full in 0..=MOST_LAYERS {
            for lower_hand in lower_layers.clone() {
                let wraps = Wraps { base: now.base.max(1), full, lower_hand };
                let mut off_mm = 0.0;
                for place in GripPlace::ALL {
                    let Some(asked_mm) = asked(club, place.read_as()) else { continue };
                    let thick = grips.forecast(case, *place, wraps, false)?;
                    off_mm += thick.map_or(0.0, |thick| (thick.mean - asked_mm).abs());
                }
                // Of tape that does as well as another, the less.
                let layers = u32::from(full) * 2 + u32::from(lower_hand);
                if best.is_none_or(|(least_mm, least, _)| (off_mm, layers) < (least_mm - 1e-9, least)) {
                    best = Some((off_mm, layers, wraps));
                }
            }
        }
        let Some((_, _, mut wraps)) = best else { return Ok(None) };
        // Tape that is within the tolerance already is left as it is.
        let mut is_there = true;
        for place in GripPlace::ALL {
            let thick = grips.forecast(case, *place, now, false)?;
            if let Some((thick, asked_mm)) = thick.zip(asked(club, place.read_as())) {
                is_there &= (thick.mean - asked_mm).abs() <= SIZE_TOLERANCE_MM;
            }
        }
        if is_there {
            wraps = now;
        }
        let moment = |wraps: Wraps| {
            let (mass_g, arm_mm, _) = tape_on(wraps, tape, case.grip, case.butt_mm);
            (mass_g, mass_g * points_per_g(arm_mm + case.grip.cap_mm))
        };
        let (was, then) = (moment(now), moment(wraps));
        let by_points = then.1 - was.1;
        let finish = self.finish(&club.id)?.filter(|_| !club.target.swing_weight_free);
        let upper = grips.forecast(case, GripPlace::Upper, wraps, false)?;
        let Some(upper) = upper else { return Ok(None) };
        Ok(Some(WrapAdvice {
            wraps,
            upper_mm: upper.mean,
            lower_mm: grips.forecast(case, GripPlace::Lower, wraps, false)?.map(|thick| thick.mean),
            more_g: then.0 - was.0,
            by_points,
            chance_now: finish.as_ref().map(|finish| finish.chance),
            chance_with: finish.as_ref().map(|finish| finish.moved(by_points).chance),
        }))
    }
}
