//! A batch of mixed adhesive, and what waits for it.

use crate::assembly::Assembly;
use clubphysics::glue::{
    Amounts, Cups, MixFor, Reach, SHEET_MARGIN_C, SPARE_PERCENT, SheetPoint, amounts, cups, pot_life_share, reach,
    time_at, work_min,
};
use clubphysics::plausible::{BEADS_PERCENT, JOINTS, ROOM_C};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use trade::adhesive::{AdhesiveModel, CurePoint};
use trade::error::{TradeError, plausible};
use trade::id::{BatchId, ClubId};
use trade::job::{Job, JobClub};
use trade::reading::{Reading, What};
use trade::step::{Step, Strength};
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
    /// Why it cures in a room that is colder than the product's sheet, where it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cold_reason: Option<String>,
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
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Mix {
    /// Joints to glue.
    pub joints: i64,
    /// What one joint takes all told, of resin, hardener and spacers: what the shop has learned, else the model's figure.
    pub joint_mass_g: f64,
    /// Whether the shop has learned it from its own clubs.
    pub joint_mass_learned: bool,
    /// Everything in the cup: what the joints need, 30 % more, and 10 g at least.
    pub mix_g: f64,
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
    /// Pot life in this room, of everything in one cup.
    pub pot_life_min: f64,
    /// Handling strength in this room.
    pub handling_h: f64,
    /// Full cure in this room.
    pub full_cure_h: f64,
    /// What to look at before the cup is filled.
    pub warnings: Vec<MixWarning>,
}

/// Something about a mix or its room that has to be known before the clock starts.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct MixWarning {
    /// What is so.
    #[serde(flatten)]
    pub fact: MixFact,
    /// What to do.
    pub next: MixNext,
}

fact::facts! {
    /// What a [`MixWarning`] is about.
    pub enum MixFact: "mix" {
        /// The room is colder than any time of the product's sheet, so no time of it holds: it may never cure.
        ColderThanSheet {
            /// Temperature of the room.
            room_c: f64,
            /// Lowest temperature of the sheet.
            sheet_c: f64,
            /// Warm the room to this.
            warm_to_c: f64,
        },
        /// The room is warmer than any time of the product's sheet.
        WarmerThanSheet {
            /// Temperature of the room.
            room_c: f64,
            /// Highest temperature of the sheet.
            sheet_c: f64,
        },
        /// One cup goes off before its last joint is glued: mix several, one after the other.
        SeveralCups {
            /// How long the work takes from one cup with everything.
            work_min: f64,
            /// Pot life of such a cup.
            pot_life_min: f64,
        },
        /// The adhesive goes off before even one joint is glued.
        TooFast {
            /// Pot life of the smallest cup.
            pot_life_min: f64,
        },
    }
}

fact::facts! {
    /// What to do about a [`MixFact`].
    pub enum MixNext: "mix_next" {
        /// Warm the room, or say why it cures all the same.
        WarmRoom {
            /// Temperature at which the sheet holds.
            to_c: f64,
        },
        /// Wait as for a cooler room.
        WaitAsFor {
            /// Highest temperature of the sheet.
            sheet_c: f64,
        },
        /// Mix several cups, one after the other.
        MixCups {
            /// How many.
            cups: u32,
            /// Joints from each; the last may have fewer.
            joints_a_cup: u32,
            /// Resin for one cup.
            resin_g: f64,
            /// Hardener for one cup.
            hardener_g: f64,
            /// Spacers for one cup.
            beads_g: f64,
        },
        /// Take a slower adhesive or a cooler room.
        ChangeAdhesive,
    }
}

/// Amounts for a number of joints, and the times of this room by the product's own sheet. The same functions as those of the
/// calculation `glue`.
///
/// `joint_mass_g` is what the shop has learned of a joint, see [`Learned::joint_mass_g`](crate::learned::Learned::joint_mass_g).
///
/// # Errors
/// No joints, or a figure that no batch has.
pub fn mix(
    adhesive: &AdhesiveModel,
    joints: usize,
    joint_mass_g: Option<f64>,
    bead_share_percent: f64,
    room_c: f64,
) -> Result<Mix, TradeError> {
    if joints == 0 {
        return Err(TradeError::refused(GlueFault::NoClubs));
    }
    plausible("joints", joints as f64, &JOINTS)?;
    plausible("room_c", room_c, &ROOM_C)?;
    plausible("bead_share_percent", bead_share_percent, &BEADS_PERCENT)?;
    let count = u32::try_from(joints).unwrap_or(u32::MAX);
    let of = |joints: u32| {
        amounts(MixFor {
            joints,
            adhesive_a_joint_g: joint_mass_g.unwrap_or(adhesive.joint_mass_g),
            spare_percent: SPARE_PERCENT,
            bead_share_percent,
            hardener_a_gram_of_resin_g: 1.0 / adhesive.resin_per_hardener_by_mass,
        })
    };
    // Checked once with its error; the sheet is the same for every cup.
    let sheet_min = pot_life_min(adhesive, 0.0, room_c)?;
    let good_for_min = |joints: u32| sheet_min * pot_life_share(adhesive.pot_life_mass_g, of(joints).mix_g);
    let whole = of(count);
    let mut warnings = room_warnings(adhesive, room_c);
    warnings.extend(cup_warning(count, good_for_min, of));
    Ok(Mix {
        joints: i64::from(count),
        joint_mass_g: joint_mass_g.unwrap_or(adhesive.joint_mass_g),
        joint_mass_learned: joint_mass_g.is_some(),
        mix_g: whole.mix_g,
        resin_g: whole.resin_g,
        hardener_g: whole.hardener_g,
        beads_g: whole.beads_g,
        resin_ml: whole.resin_g / adhesive.resin_density_g_per_ml,
        hardener_ml: whole.hardener_g / adhesive.hardener_density_g_per_ml,
        pot_life_min: good_for_min(count),
        handling_h: hours_at("handling", &adhesive.handling, room_c)?,
        full_cure_h: hours_at("full_cure", &adhesive.full_cure, room_c)?,
        warnings,
    })
}

/// What the temperature of a room means for a product by its own sheet. Full cure first: no club is swung before it.
#[must_use]
pub fn room_warnings(adhesive: &AdhesiveModel, room_c: f64) -> Vec<MixWarning> {
    let beyond = [&adhesive.full_cure, &adhesive.handling].into_iter().find_map(|points| {
        match reach(points.iter().map(|point| point.at_c), room_c) {
            Reach::Within => None,
            Reach::Colder(sheet_c) => {
                let warm_to_c = sheet_c - SHEET_MARGIN_C;
                Some(MixWarning {
                    fact: MixFact::ColderThanSheet { room_c, sheet_c, warm_to_c },
                    next: MixNext::WarmRoom { to_c: warm_to_c },
                })
            }
            Reach::Warmer(sheet_c) => Some(MixWarning {
                fact: MixFact::WarmerThanSheet { room_c, sheet_c },
                next: MixNext::WaitAsFor { sheet_c },
            }),
        }
    });
    beyond.into_iter().collect()
}

/// Refuses to start a cure clock in a room that is too cold for the product's sheet, unless somebody gives the reason why
/// it cures all the same.
///
/// # Errors
/// [`TradeError::Refused`] with the sheet's temperature and what to do.
pub fn refuse_cold_room(adhesive: &AdhesiveModel, room_c: f64, reason: Option<&str>) -> Result<(), TradeError> {
    let given = reason.is_some_and(|reason| !reason.trim().is_empty());
    let cold = room_warnings(adhesive, room_c).into_iter().find_map(|warning| match warning.fact {
        MixFact::ColderThanSheet { room_c, sheet_c, warm_to_c } => Some((room_c, sheet_c, warm_to_c)),
        _ => None,
    });
    match cold {
        Some((room_c, sheet_c, warm_to_c)) if !given => Err(TradeError::refused(GlueFault::RoomTooCold {
            adhesive: adhesive.name.clone(),
            room_c,
            sheet_c,
            warm_to_c,
        })),
        _ => Ok(()),
    }
}

/// Whether one cup is good for all joints.
fn cup_warning(joints: u32, good_for_min: impl Fn(u32) -> f64, of: impl Fn(u32) -> Amounts) -> Option<MixWarning> {
    Some(match cups(joints, &good_for_min) {
        Some(Cups { cups: 1, .. }) => return None,
        Some(Cups { cups, joints_a_cup }) => {
            let Amounts { resin_g, hardener_g, beads_g, .. } = of(joints_a_cup);
            MixWarning {
                fact: MixFact::SeveralCups { work_min: work_min(joints), pot_life_min: good_for_min(joints) },
                next: MixNext::MixCups { cups, joints_a_cup, resin_g, hardener_g, beads_g },
            }
        }
        None => MixWarning { fact: MixFact::TooFast { pot_life_min: good_for_min(1) }, next: MixNext::ChangeAdhesive },
    })
}

/// When a batch's clubs have a strength.
///
/// # Errors
/// A time beyond the calendar.
pub fn ready_at(batch: &Batch, adhesive: &AdhesiveModel, strength: Strength) -> Result<Option<Timestamp>, TradeError> {
    let hours = match strength {
        Strength::None => return Ok(None),
        Strength::Handling => hours_at("handling", &adhesive.handling, batch.room_c)?,
        Strength::Full => hours_at("full_cure", &adhesive.full_cure, batch.room_c)?,
    };
    batch
        .mixed_at
        .checked_add(jiff::SignedDuration::from_secs((hours * 3600.0).ceil() as i64))
        .map(Some)
        .map_err(|_| TradeError::refused(GlueFault::BeyondCalendar))
}

/// When the cup of a batch goes off.
///
/// # Errors
/// A time beyond the calendar.
pub fn pot_life_until(batch: &Batch, adhesive: &AdhesiveModel) -> Result<Timestamp, TradeError> {
    let minutes = pot_life_min(adhesive, batch.resin_g + batch.hardener_g + batch.beads_g, batch.room_c)?;
    batch
        .mixed_at
        .checked_add(jiff::SignedDuration::from_secs((minutes * 60.0) as i64))
        .map_err(|_| TradeError::refused(GlueFault::PotLifeBeyondCalendar))
}

/// The batch that a club is glued from: the latest one that was not taken back.
#[must_use]
pub fn glued_from<'b>(batches: &'b [Batch], club: &ClubId) -> Option<&'b Batch> {
    batches.iter().filter(|b| b.taken_back.is_none() && b.clubs.contains(club)).max_by_key(|b| b.mixed_at)
}

/// What the reading of a gluing says. Two cups of one club may be mixed at the same minute: the number tells them apart.
#[must_use]
pub fn gluing_words(batch: &Batch) -> String {
    format!("batch {}", batch.number)
}

/// Whether a reading says that a club was glued from this batch.
#[must_use]
pub fn is_gluing(job: &Job, reading: &Reading, batch: &Batch) -> bool {
    batch.clubs.contains(&reading.club)
        && reading.typed == gluing_words(batch)
        && reading.what == What::Done
        && job.step(&reading.step).is_some_and(|step| step.glues)
}

/// The batches without the clubs whose gluing was taken back: a joint that was opened has no cure clock until it is glued again.
#[must_use]
pub fn still_glued(job: &Job, readings: &[Reading], mut batches: Vec<Batch>) -> Vec<Batch> {
    for batch in batches.iter_mut().filter(|batch| batch.taken_back.is_none()) {
        let of_batch = batch.clone();
        batch.clubs.retain(|club| {
            let mut gluings = readings.iter().filter(|r| r.club == *club && is_gluing(job, r, &of_batch)).peekable();
            gluings.peek().is_none() || gluings.any(|r| r.taken_back.is_none())
        });
    }
    batches
}

/// Somebody's word that a joint will do before its time, with a reason that the record keeps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CureOverride {
    /// The joints of a batch are taken to have a strength: all its clubs, at every step that needs no more than it.
    Batch {
        /// Number of the batch.
        batch: i64,
        /// What the joints are taken to be good for: handling, or all that needs full cure.
        strength: Strength,
    },
    /// One step of one club: of a club that is in no batch, and as it was kept before an override belonged to its batch.
    Step {
        /// Identity of the club.
        club: ClubId,
        /// Key of the step.
        step: String,
    },
}

impl CureOverride {
    /// Whether it opens a step of a club, which is glued from a batch or from none.
    fn opens(&self, club: &ClubId, step: &Step, glued: Option<&Batch>) -> bool {
        match self {
            Self::Batch { batch, strength } => {
                glued.is_some_and(|glued| glued.number == *batch) && *strength >= step.needs
            }
            Self::Step { club: of, step: key } => of == club && *key == step.key,
        }
    }
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
    /// Somebody let it pass before its strength, with a reason that the record keeps.
    LetPass,
}

impl Gate {
    /// The gate of one step of one club. Only a club whose own steps glue has gates.
    ///
    /// # Errors
    /// An adhesive that the library lacks.
    pub fn of(
        assembly: Assembly<'_>,
        club: &JobClub,
        step: &Step,
        batches: &[Batch],
        overrides: &[CureOverride],
        now: Timestamp,
    ) -> Result<Self, TradeError> {
        if step.needs == Strength::None || !assembly.job.steps_of(club).any(|s| s.glues) {
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
        let let_pass = gate != Self::Open && overrides.iter().any(|o| o.opens(&club.id, step, batch));
        Ok(if let_pass { Self::LetPass } else { gate })
    }

    /// Whether a reading at this step is taken without a question.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        matches!(self, Self::Open | Self::LetPass)
    }
}

/// Pot life of a cup in a room, by the sheet's one point.
fn pot_life_min(adhesive: &AdhesiveModel, mix_g: f64, room_c: f64) -> Result<f64, TradeError> {
    let sheet = [SheetPoint { temperature_c: adhesive.pot_life_at_c, time_min: adhesive.pot_life_min }];
    Ok(time_at("pot_life", sheet, room_c)?.0 * pot_life_share(adhesive.pot_life_mass_g, mix_g))
}

/// Hours to a strength at a temperature, by the sheet's one point or through its two.
fn hours_at(what: &str, points: &[CurePoint], room_c: f64) -> Result<f64, TradeError> {
    let sheet: Vec<SheetPoint> =
        points.iter().map(|p| SheetPoint { temperature_c: p.at_c, time_min: p.hours * 60.0 }).collect();
    Ok(time_at(what, sheet, room_c)?.0 / 60.0)
}

fact::facts! {
    /// What is refused of a batch of adhesive.
    pub(crate) enum GlueFault: "glue_fault" {
        NoClubs,
        BeyondCalendar,
        PotLifeBeyondCalendar,
        RoomTooCold { adhesive: String, room_c: f64, sheet_c: f64, warm_to_c: f64 },
    }
}
