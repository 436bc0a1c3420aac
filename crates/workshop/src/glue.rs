//! A batch of mixed adhesive, and what waits for it.

use crate::assembly::Assembly;
use crate::error::{WorkshopError, within};
use crate::id::{BatchId, ClubId};
use crate::job::JobClub;
use crate::model::{AdhesiveModel, CurePoint};
use crate::step::{Step, Strength};
use clubphysics::glue::{SheetPoint, relative_rate, time_at};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A batch: one cup of adhesive and the clubs glued from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Batch {
    /// Identity.
    pub id: BatchId,
    /// The running number that people say.
    pub number: i64,
    /// Code of the adhesive model.
    pub adhesive: String,
    /// Lot on the tins.
    pub lot: String,
    /// Clubs glued from it.
    pub clubs: Vec<ClubId>,
    /// Share of spacers in the mass of the mix, percent.
    pub bead_share_percent: f64,
    /// Temperature of the room where it cures.
    pub room_c: f64,
    /// Resin weighed out.
    pub resin_g: f64,
    /// Hardener weighed out.
    pub hardener_g: f64,
    /// Spacers weighed out.
    pub beads_g: f64,
    /// When mixing began: the pot-life clock.
    #[schema(value_type = String, format = DateTime)]
    pub mixed_at: Timestamp,
    /// Who mixed it.
    pub by: String,
    /// Why it was taken back, where it was: entered wrongly, and no club is glued from it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<String>,
}

/// What a batch of adhesive takes and how long it gives and needs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Mix {
    /// Joints to glue.
    pub joints: i64,
    /// Resin to weigh out.
    pub resin_g: f64,
    /// Hardener to weigh out.
    pub hardener_g: f64,
    /// Spacers to weigh out.
    pub beads_g: f64,
    /// Resin by volume, for a metering pump.
    pub resin_ml: f64,
    /// Hardener by volume.
    pub hardener_ml: f64,
    /// Pot life in this room.
    pub pot_life_min: f64,
    /// Handling strength in this room.
    pub handling_h: f64,
    /// Full cure in this room.
    pub full_cure_h: f64,
}

/// Share more than the joints need, for what stays in the cup and on the stick. Common practice, no source.
const MIX_SPARE: f64 = 0.3;
/// Least mass that two parts can be weighed out to 1 % on a 0.1 g scale.
const MIX_LEAST_G: f64 = 10.0;

/// Amounts for so many joints, and the times of this room by the product's own sheet.
///
/// # Errors
/// No joints, or a room too cold or hot for the sheet's figures.
pub fn mix(
    adhesive: &AdhesiveModel,
    joints: usize,
    bead_share_percent: f64,
    room_c: f64,
) -> Result<Mix, WorkshopError> {
    if joints == 0 {
        return Err(WorkshopError::Refused {
            what: "a batch for no club".into(),
            next: "Choose the clubs to glue from it".into(),
        });
    }
    within("room_c", room_c, 5.0, 45.0, "°C")?;
    within("bead_share_percent", bead_share_percent, 0.0, 30.0, "%")?;
    let count = i64::try_from(joints).unwrap_or(i64::MAX);
    let whole_g = (joints as f64 * adhesive.joint_mass_g * (1.0 + MIX_SPARE)).max(MIX_LEAST_G);
    let beads_g = whole_g * bead_share_percent / 100.0;
    let resin_share = adhesive.resin_per_hardener_by_mass / (1.0 + adhesive.resin_per_hardener_by_mass);
    let resin_g = (whole_g - beads_g) * resin_share;
    let hardener_g = (whole_g - beads_g) * (1.0 - resin_share);
    // A larger cup keeps its own heat and goes off sooner; a smaller one is counted as the sheet's, to be careful.
    let cup = (adhesive.pot_life_mass_g / whole_g).min(1.0);
    Ok(Mix {
        joints: count,
        resin_g,
        hardener_g,
        beads_g,
        resin_ml: resin_g / adhesive.resin_density_g_per_ml,
        hardener_ml: hardener_g / adhesive.hardener_density_g_per_ml,
        pot_life_min: adhesive.pot_life_min * cup * cure_factor(adhesive.pot_life_at_c, room_c),
        handling_h: hours_at(&adhesive.handling, room_c)?,
        full_cure_h: hours_at(&adhesive.full_cure, room_c)?,
    })
}

/// When a batch's clubs have a strength.
///
/// # Errors
/// A time beyond the calendar.
pub fn ready_at(
    batch: &Batch,
    adhesive: &AdhesiveModel,
    strength: Strength,
) -> Result<Option<Timestamp>, WorkshopError> {
    let hours = match strength {
        Strength::None => return Ok(None),
        Strength::Handling => hours_at(&adhesive.handling, batch.room_c)?,
        Strength::Full => hours_at(&adhesive.full_cure, batch.room_c)?,
    };
    batch.mixed_at.checked_add(jiff::SignedDuration::from_secs((hours * 3600.0).ceil() as i64)).map(Some).map_err(
        |_| WorkshopError::Refused {
            what: "the cure time lies beyond the calendar".into(),
            next: "Check the times of the adhesive".into(),
        },
    )
}

/// When the cup of a batch goes off.
///
/// # Errors
/// A time beyond the calendar.
pub fn pot_life_until(batch: &Batch, adhesive: &AdhesiveModel) -> Result<Timestamp, WorkshopError> {
    let whole_g = batch.resin_g + batch.hardener_g + batch.beads_g;
    let cup = if whole_g > 0.0 { (adhesive.pot_life_mass_g / whole_g).min(1.0) } else { 1.0 };
    let minutes = adhesive.pot_life_min * cup * cure_factor(adhesive.pot_life_at_c, batch.room_c);
    batch.mixed_at.checked_add(jiff::SignedDuration::from_secs((minutes * 60.0) as i64)).map_err(|_| {
        WorkshopError::Refused {
            what: "the pot life lies beyond the calendar".into(),
            next: "Check the pot life of the adhesive".into(),
        }
    })
}

/// The batch that a club is glued from: the latest one that was not taken back.
#[must_use]
pub fn glued_from<'b>(batches: &'b [Batch], club: &ClubId) -> Option<&'b Batch> {
    batches.iter().filter(|b| b.taken_back.is_none() && b.clubs.contains(club)).max_by_key(|b| b.mixed_at)
}

/// Whether a step of a club may be done now.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "gate", rename_all = "snake_case")]
pub enum Gate {
    /// Nothing stands against it.
    Open,
    /// The joint is not strong enough yet.
    Waits {
        /// The strength it needs.
        strength: Strength,
        /// When it will have it.
        #[schema(value_type = String, format = DateTime)]
        until: Timestamp,
    },
    /// The club is not in any batch of adhesive yet.
    NotGlued,
    /// The owner let it pass before its strength, with a reason that the record keeps.
    LetPass,
}

impl Gate {
    /// The gate of one step of one club. Only a job whose steps glue at all has gates.
    ///
    /// # Errors
    /// An adhesive that the library lacks.
    pub fn of(
        assembly: Assembly<'_>,
        club: &JobClub,
        step: &Step,
        batches: &[Batch],
        let_pass: bool,
        now: Timestamp,
    ) -> Result<Self, WorkshopError> {
        if step.needs == Strength::None || !assembly.job.steps.iter().any(|s| s.glues) {
            return Ok(Self::Open);
        }
        // The latest batch counts: a head that was pulled and glued again starts its cure anew.
        let batch = glued_from(batches, &club.id);
        let gate = match batch {
            None => Self::NotGlued,
            Some(batch) => match ready_at(batch, assembly.library.adhesive(&batch.adhesive)?, step.needs)? {
                Some(until) if until > now => Self::Waits { strength: step.needs, until },
                _ => Self::Open,
            },
        };
        Ok(if let_pass && gate != Self::Open { Self::LetPass } else { gate })
    }

    /// Whether a reading at this step is taken without a question.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        matches!(self, Self::Open | Self::LetPass)
    }
}

/// Activation energy where a sheet gives one temperature only: it doubles the rate from 25 to 35 °C (derived from the
/// suppliers' rule that pot life about halves per 10 °C).
const ACTIVATION_KJ_PER_MOL: f64 = 52.95;

/// How many times longer a cure takes at one temperature than at another.
fn cure_factor(from_c: f64, to_c: f64) -> f64 {
    1.0 / relative_rate(ACTIVATION_KJ_PER_MOL, to_c, from_c)
}

/// Hours to a strength at a temperature, by the sheet's one point or through its two.
fn hours_at(points: &[CurePoint], room_c: f64) -> Result<f64, WorkshopError> {
    let sheet = |p: &CurePoint| SheetPoint { temperature_c: p.at_c, time_min: p.hours * 60.0 };
    match points {
        [a, b] => Ok(time_at("cure", [sheet(a), sheet(b)], room_c)?.0 / 60.0),
        [a, ..] => Ok(a.hours * cure_factor(a.at_c, room_c)),
        [] => Ok(0.0),
    }
}
