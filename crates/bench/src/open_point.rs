//! What is open on a club before a step that cannot be undone: gluing it, and handing it over.
//!
//! One list for the pages, the API and the command line. Whoever goes on all the same gives a reason, once for all clubs,
//! and the record keeps it.

use crate::belief::{Believed, Finish};
use crate::club_state::{AskState, ClubState, StepState};
use crate::glue::{Batch, glued_from};
use crate::remedy::{Spare, chance_ahead};
use crate::target::{Fit, Target};
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::Job;
use trade::reading::{Unit, What};
use trade::step::Step;
use utoipa::ToSchema;

/// One thing that is open.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "open", rename_all = "snake_case")]
pub enum OpenPoint {
    /// A reading is doubted.
    Doubted {
        /// What the builder calls the step.
        step: String,
        /// What was read.
        what: What,
    },
    /// Something that would show a wrong part, or that the sheet asks for, was never read.
    Unread {
        /// What it is.
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
    },
    /// The head needs more bending than its maker allows.
    BeyondBending {
        /// Loft or lie.
        what: What,
        /// By how much it must be bent, degrees; more is weaker, or more upright.
        by_deg: f64,
        /// What the maker allows.
        limit_deg: f64,
    },
    /// The club will more likely finish outside of its tolerance than in it, the choices still to come counted in.
    OffTarget {
        /// Finish less target, as it stands.
        deviation_points: f64,
        /// Half width of the tolerance.
        tolerance_points: f64,
        /// Probability of finishing in tolerance with the grips that are free.
        chance: f64,
    },
    /// It is glued already.
    Glued {
        /// Number of the batch.
        batch: i64,
    },
}

fact::facts! {
    /// The same as it is told, each quantity with its unit.
    pub enum OpenFact: "open_point" {
        /// A reading is doubted.
        Doubted {
            /// What the builder calls the step.
            step: String,
            /// What was read.
            what: What,
        },
        /// It was never read.
        Unread {
            /// What it is.
            what: What,
        },
        /// A swing weight outside of what the sheet asks.
        OffSwingWeight {
            /// What it is.
            what: What,
            /// What is believed after all readings, points since A0.
            now_points: f64,
            /// What the sheet asks, points since A0.
            asked_points: f64,
            /// Half width of the tolerance.
            tolerance_points: f64,
        },
        /// A mass outside of what the sheet asks.
        OffMass {
            /// What it is.
            what: What,
            /// The reading.
            now_g: f64,
            /// What the sheet asks.
            asked_g: f64,
            /// Half width of the tolerance.
            tolerance_g: f64,
        },
        /// A length outside of what the sheet asks.
        OffLength {
            /// What it is.
            what: What,
            /// The reading.
            now_mm: f64,
            /// What the sheet asks.
            asked_mm: f64,
            /// Half width of the tolerance.
            tolerance_mm: f64,
        },
        /// An angle outside of what the sheet asks.
        OffAngle {
            /// What it is.
            what: What,
            /// The reading.
            now_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// Half width of the tolerance.
            tolerance_deg: f64,
        },
        /// A frequency outside of what the sheet asks.
        OffFrequency {
            /// What it is.
            what: What,
            /// The reading.
            now_cpm: f64,
            /// What the sheet asks.
            asked_cpm: f64,
            /// Half width of the tolerance.
            tolerance_cpm: f64,
        },
        /// The loft is weaker than the head may be bent.
        LoftWeak {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The loft is stronger than the head may be bent.
        LoftStrong {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The lie is flatter than the head may be bent.
        LieFlat {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The lie is more upright than the head may be bent.
        LieUpright {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The club will finish too light.
        Light {
            /// By how much.
            by_points: f64,
        },
        /// The club will finish too heavy.
        Heavy {
            /// By how much.
            by_points: f64,
        },
        /// It is glued already.
        Glued {
            /// Number of the batch.
            batch: i64,
        },
    }
}

impl OpenPoint {
    /// As it is told: “loft 51.5°, the sheet asks 50.0° ± 0.5°”.
    #[must_use]
    pub fn fact(&self) -> OpenFact {
        match self.clone() {
            Self::Doubted { step, what } => OpenFact::Doubted { step, what },
            Self::Unread { what } => OpenFact::Unread { what },
            Self::Off { what, value, unit, target } => off_fact(what, value, unit, target),
            Self::BeyondBending { what, by_deg, limit_deg } => {
                let (up, by_deg) = (by_deg > 0.0, by_deg.abs());
                match (what, up) {
                    (What::Loft, true) => OpenFact::LoftStrong { by_deg, limit_deg },
                    (What::Loft, false) => OpenFact::LoftWeak { by_deg, limit_deg },
                    (_, true) => OpenFact::LieFlat { by_deg, limit_deg },
                    (_, false) => OpenFact::LieUpright { by_deg, limit_deg },
                }
            }
            Self::OffTarget { deviation_points, .. } => {
                let by_points = deviation_points.abs();
                if deviation_points < 0.0 { OpenFact::Light { by_points } } else { OpenFact::Heavy { by_points } }
            }
            Self::Glued { batch } => OpenFact::Glued { batch },
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
        // What has no unit has no target either.
        Unit::Cpm | Unit::None => {
            OpenFact::OffFrequency { what, now_cpm: now, asked_cpm: asked, tolerance_cpm: tolerance }
        }
    }
}

/// What is open on one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct OpenClub {
    /// The club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Its number.
    pub number: String,
    /// What is open, the weightiest first.
    pub points: Vec<OpenPoint>,
    /// The same as it is told.
    pub facts: Vec<Told>,
}

/// That somebody went on with something open, and why.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Passed {
    /// The club.
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

/// What is open on a club before a step that cannot be undone; empty for any other step, and for a club without parts.
/// `spares` are the free parts, for what can still be chosen.
///
/// # Errors
/// A head model that the library lacks; figures that the belief cannot work with.
pub fn open_points(
    believed: &Believed<'_>,
    state: &ClubState,
    batches: &[Batch],
    spares: &[Spare<'_>],
    step: &Step,
) -> Result<Vec<OpenPoint>, TradeError> {
    if state.finish.is_none() || !is_final(believed.assembly.job, step) {
        return Ok(Vec::new());
    }
    let mut open = Vec::new();
    for step in &state.steps {
        let doubted = step.asks.iter().filter(|ask| ask.doubted);
        open.extend(doubted.map(|ask| OpenPoint::Doubted { step: step.label.clone(), what: ask.what }));
    }
    if step.glues {
        before_glue(believed, state, batches, step, &mut open)?;
        open.extend(off_target(believed, state, spares)?);
    } else {
        before_hand_over(state, step, &mut open);
    }
    Ok(open)
}

/// A club that is out as it stands may still come in by the grip that is chosen after the cure.
fn off_target(
    believed: &Believed<'_>,
    state: &ClubState,
    spares: &[Spare<'_>],
) -> Result<Option<OpenPoint>, TradeError> {
    let out = state.finish.filter(|f| f.deviation_points.abs() > f.tolerance_points);
    let Some(Finish { deviation_points, tolerance_points, chance, .. }) = out else { return Ok(None) };
    let chance = chance_ahead(believed, state, spares)?.unwrap_or(chance);
    Ok((chance < 0.5).then_some(OpenPoint::OffTarget { deviation_points, tolerance_points, chance }))
}

/// Whether a step cannot be undone: the joint is glued there, or the club leaves the shop.
#[must_use]
pub fn is_final(job: &Job, step: &Step) -> bool {
    step.glues || job.steps.last().is_some_and(|last| last.key == step.key)
}

fn before_glue(
    believed: &Believed<'_>,
    state: &ClubState,
    batches: &[Batch],
    glue: &Step,
    open: &mut Vec<OpenPoint>,
) -> Result<(), TradeError> {
    let job = believed.assembly.job;
    if let Some(batch) = glued_from(batches, &state.club) {
        open.push(OpenPoint::Glued { batch: batch.number });
    }
    let earlier = || job.steps.iter().zip(&state.steps).take_while(|(step, _)| step.key != glue.key);
    // A swing weight with the parts that are to be glued shows a wrong head, shaft or cut as nothing else does. Steps that
    // may be left out without a question are left out without one here, too.
    let read = |ask: &AskState| ask.what == What::SwingWeight && ask.reading.is_some();
    let asked = earlier().any(|(step, _)| !step.optional && step.asks.contains(&What::SwingWeight));
    if asked && !earlier().any(|(_, state)| state.asks.iter().any(read)) {
        open.push(OpenPoint::Unread { what: What::SwingWeight });
    }
    if let Some(club) = job.club(&state.club) {
        let limit_deg = believed.assembly.library.head(&club.target.head_model)?.bend_limit_deg;
        for what in [What::Loft, What::Lie] {
            if let Some((target, ask)) = last_read(earlier().map(|(_, state)| state), what)
                && let Some(reading) = &ask.reading
            {
                let by_deg = target.value - reading.value;
                if target.fit(reading.value) == Fit::Off && by_deg.abs() > limit_deg + 1e-9 {
                    open.push(OpenPoint::BeyondBending { what, by_deg, limit_deg });
                }
            }
        }
    }
    Ok(())
}

fn before_hand_over(state: &ClubState, last: &Step, open: &mut Vec<OpenPoint>) {
    // What the last step itself asks and is not read yet is about to be read.
    let asked = |step: &StepState, ask: &AskState| step.key != last.key || ask.reading.is_some();
    let asks = state.steps.iter().flat_map(|step| step.asks.iter().filter(move |ask| asked(step, ask)));
    let mut seen = Vec::new();
    for what in asks.filter(|ask| ask.target.is_some()).map(|ask| ask.what) {
        if seen.contains(&what) {
            continue;
        }
        seen.push(what);
        let Some((target, ask)) = last_read(state.steps.iter(), what) else {
            open.push(OpenPoint::Unread { what });
            continue;
        };
        // A doubted one is on the list already.
        if ask.fit == Some(Fit::Off) && !ask.doubted {
            let value = match (&ask.reading, state.finish.as_ref()) {
                (_, Some(finish)) if what == What::SwingWeight => target.value + finish.deviation_points,
                (Some(reading), _) => reading.value,
                (None, _) => continue,
            };
            open.push(OpenPoint::Off { what, value, unit: ask.unit, target });
        }
    }
}

/// The last reading of something that has a target, in the order of the steps.
fn last_read<'s>(steps: impl Iterator<Item = &'s StepState>, what: What) -> Option<(Target, &'s AskState)> {
    let asks = steps.flat_map(|step| &step.asks).filter(|ask| ask.what == what && ask.reading.is_some());
    asks.filter_map(|ask| Some((ask.target?, ask))).last()
}
