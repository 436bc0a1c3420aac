//! What is open on a club before a step that cannot be undone: cutting its shaft, gluing it, bending it, handing it over.
//!
//! One list for the pages, the API and the command line. Whoever goes on all the same gives a reason, once for all clubs,
//! and the record keeps it.

mod find;
mod says;

pub use find::open_club;
pub use says::OpenFact;

use crate::target::Target;
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use trade::id::{ClubId, EventId, ReadingId};
use trade::job::Job;
use trade::kind::{Role, closed_list};
use trade::reading::{Unit, What};
use trade::step::{Caution, Step, Strength};
use utoipa::ToSchema;

closed_list! {
    /// What is done at a step that cannot be undone.
    Final {
        /// The shaft is cut.
        Cut = "cut";
        /// The joint is glued.
        Glue = "glue";
        /// The hosel is bent.
        Bend = "bend";
        /// The club leaves the shop.
        HandOver = "hand_over";
    }
}

impl Final {
    /// What cannot be undone at a step of a job; none where everything can. It follows from what the step says of itself:
    /// the last one hands over, where the shaft's length is asked it is cut, where loft or lie is asked of a glued club, or
    /// the caution of bending stands, it is bent.
    #[must_use]
    pub fn of(job: &Job, step: &Step) -> Option<Self> {
        let asks = |what: &[What]| step.asks.iter().any(|ask| what.contains(ask));
        let glued = step.on.contains(&Role::Adhesive);
        if step.glues {
            Some(Self::Glue)
        } else if step.before {
            None
        } else if job.is_last(step) {
            Some(Self::HandOver)
        } else if asks(&[What::Loft, What::Lie]) && (glued || step.caution == Some(Caution::Bending)) {
            Some(Self::Bend)
        } else {
            (asks(&[What::ShaftLength]) && !glued).then_some(Self::Cut)
        }
    }
}

/// One thing that is open.
///
/// Each that rests on a reading names it: whoever passed it over passed that reading over, and not the next one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "open", rename_all = "snake_case")]
pub enum OpenPoint {
    /// A reading is doubted.
    Doubted {
        /// What the builder calls the step.
        step: String,
        /// What was read.
        what: What,
        /// Identity of the doubted reading; none where it was not kept with the point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reading: Option<ReadingId>,
    },
    /// Something that would show a wrong part, or that the sheet asks for, was never read.
    Unread {
        /// The quantity that should have been read.
        what: What,
    },
    /// A reading lies outside of what the sheet asks.
    Off {
        /// What was read.
        what: What,
        /// The reading; for the swing weight, what is believed after all readings.
        value: f64,
        /// Unit of the figures.
        unit: Unit,
        /// What the sheet asks.
        target: Target,
        /// Identity of the reading that is off; none where it was not kept with the point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reading: Option<ReadingId>,
    },
    /// The head needs more bending than its maker allows.
    BeyondBending {
        /// Loft or lie.
        what: What,
        /// By how much it must be bent, degrees; more is weaker, or more upright.
        by_deg: f64,
        /// What the maker allows.
        limit_deg: f64,
        /// Setting of its adapter that comes nearest; none where it has no adapter with settings. `by_deg` is what is lacking at
        /// that setting, which is set and never bent.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        setting: Option<String>,
        /// Identity of the reading that asks for it; none where it was not kept with the point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reading: Option<ReadingId>,
    },
    /// The shaft was cut shorter than the sheet's tolerance of the length allows: it cannot be cut longer.
    CutShort {
        /// How much shorter than planned, mm.
        by_mm: f64,
        /// Identity of the reading of the cut shaft; none where it was not kept with the point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reading: Option<ReadingId>,
    },
    /// The club will more likely finish outside of its tolerance than in it, the choices still to come counted in.
    OffTarget {
        /// Finish less target, as it stands.
        deviation_points: f64,
        /// Half width of the tolerance.
        tolerance_points: f64,
        /// Probability of finishing in tolerance with the grips that are free.
        chance: f64,
        /// The last swing weight that was read of the club; none where none was.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reading: Option<ReadingId>,
    },
    /// It is glued already.
    Glued {
        /// Number of the batch.
        batch: i64,
    },
    /// Its joint has not the strength that the step needs.
    NotCured {
        /// Number of the batch, which an override belongs to.
        batch: i64,
        /// What the step needs.
        strength: Strength,
        /// When the joint will have it.
        #[schema(value_type = String, format = DateTime)]
        until: Timestamp,
    },
    /// It is in no batch of adhesive yet.
    NotGlued,
    /// A recall marked it, and nobody has looked yet.
    Marked {
        /// What to look at.
        word: String,
        /// Identity of the mark.
        mark: EventId,
    },
}

impl OpenPoint {
    /// As it is told: “loft 51.5°, the sheet asks 50.0° ± 0.5°”.
    #[must_use]
    pub fn fact(&self) -> OpenFact {
        match self.clone() {
            Self::Doubted { step, what, .. } => OpenFact::Doubted { step, what },
            Self::Unread { what } => OpenFact::Unread { what },
            Self::Off { what, value, unit, target, .. } => off_fact(what, value, unit, target),
            Self::BeyondBending { what, by_deg, setting: Some(setting), .. } => {
                let (up, by_deg) = (by_deg > 0.0, by_deg.abs());
                match (what, up) {
                    (What::Loft, true) => OpenFact::SetStrong { by_deg, setting },
                    (What::Loft, false) => OpenFact::SetWeak { by_deg, setting },
                    (_, true) => OpenFact::SetFlat { by_deg, setting },
                    (_, false) => OpenFact::SetUpright { by_deg, setting },
                }
            }
            Self::BeyondBending { what, by_deg, limit_deg, .. } => {
                let (up, by_deg) = (by_deg > 0.0, by_deg.abs());
                match (what, up) {
                    (What::Loft, true) => OpenFact::LoftStrong { by_deg, limit_deg },
                    (What::Loft, false) => OpenFact::LoftWeak { by_deg, limit_deg },
                    (_, true) => OpenFact::LieFlat { by_deg, limit_deg },
                    (_, false) => OpenFact::LieUpright { by_deg, limit_deg },
                }
            }
            Self::CutShort { by_mm, .. } => OpenFact::CutShort { by_mm },
            Self::OffTarget { deviation_points, .. } => {
                let by_points = deviation_points.abs();
                if deviation_points < 0.0 { OpenFact::Light { by_points } } else { OpenFact::Heavy { by_points } }
            }
            Self::Glued { batch } => OpenFact::Glued { batch },
            Self::NotCured { strength, until, .. } => OpenFact::NotCured { strength, until_at: until },
            Self::NotGlued => OpenFact::NotGlued,
            Self::Marked { word, .. } => OpenFact::Marked { word },
        }
    }

    /// Whether somebody who passed `before` over has passed this over as well: it is the same thing, of the same reading.
    /// What is believed of it may have moved with readings of other clubs.
    #[must_use]
    pub fn is_the_same(&self, before: &Self) -> bool {
        match (self, before) {
            (Self::Off { what, reading, .. }, Self::Off { what: what_before, reading: read_before, .. })
            | (
                Self::BeyondBending { what, reading, .. },
                Self::BeyondBending { what: what_before, reading: read_before, .. },
            ) => what == what_before && reading.is_some() && reading == read_before,
            (Self::Doubted { reading, .. }, Self::Doubted { reading: read_before, .. })
            | (Self::CutShort { reading, .. }, Self::CutShort { reading: read_before, .. }) => {
                reading.is_some() && reading == read_before
            }
            (Self::OffTarget { reading, .. }, Self::OffTarget { reading: read_before, .. }) => reading == read_before,
            _ => self == before,
        }
    }
}

fn off_fact(what: What, now: f64, unit: Unit, target: Target) -> OpenFact {
    let (asked, tolerance) = (target.value, target.tolerance);
    match unit {
        Unit::Points => {
            OpenFact::OffSwingWeight { what, now_points: now, asked_points: asked, tolerance_points: tolerance }
        }
        Unit::Gram => OpenFact::OffMass { what, now_g: now, asked_g: asked, tolerance_g: tolerance },
        Unit::Millimetre => OpenFact::OffLength { what, now_mm: now, asked_mm: asked, tolerance_mm: tolerance },
        Unit::Degree => OpenFact::OffAngle { what, now_deg: now, asked_deg: asked, tolerance_deg: tolerance },
        // What has no unit has no target either; that of an inertia is told with the swing weight.
        Unit::Cpm | Unit::Second | Unit::KgCm2 | Unit::None => {
            OpenFact::OffFrequency { what, now_cpm: now, asked_cpm: asked, tolerance_cpm: tolerance }
        }
    }
}

/// What is open on one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct OpenClub {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Number or letter of the club: `6`, `PW`.
    pub number: String,
    /// What is open, the weightiest first.
    pub points: Vec<OpenPoint>,
    /// The same as it is told.
    pub facts: Vec<Told>,
    /// Key of the step where each of them is read, looked at or put right.
    pub steps: Vec<String>,
    /// Who passed all of it over at this step already, and why: nobody is asked again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub passed: Option<PassedBy>,
}

/// Who went on with something open, and why.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PassedBy {
    /// The reason given.
    pub reason: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// That somebody went on with something open, and why.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Passed {
    /// Identity of the club.
    pub club: ClubId,
    /// Key of the step.
    pub step: String,
    /// What was open.
    pub points: Vec<OpenPoint>,
    /// The reason given.
    pub reason: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}
