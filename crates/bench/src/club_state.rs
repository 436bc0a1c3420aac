//! Where every club of a job stands, and what to expect of its next reading.

use crate::angle_effect::effects;
use crate::belief::{Believed, Expectation, Finish};
use crate::glue::{Batch, CureOverride, Gate};
use crate::swing_inertia::SwingInertia;
use crate::target::{Fit, Target, target_of};
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::closed_list;
use trade::reading::{Reading, Unit, What};
use trade::step::Step;
use utoipa::ToSchema;

closed_list! {
    /// How far a step of a club has come.
    StepStatus {
        /// Everything that it asks is read.
        Done = "done";
        /// Some of it is read.
        Begun = "begun";
        /// Nothing is read yet.
        Open = "open";
        /// A later step was read before it: left out, which only leaves the band wider.
        LeftOut = "left_out";
    }
}

closed_list! {
    /// How a club looks in the row.
    Look {
        /// Will finish in tolerance, as far as can be said.
        Inside = "inside";
        /// May finish in tolerance or not.
        Open = "open";
        /// Will finish outside if nothing is done.
        Off = "off";
        /// One of its readings is doubted.
        Doubted = "doubted";
        /// No plan, nothing to forecast.
        Unplanned = "unplanned";
    }
}

/// One thing that a step asks, with what is expected and what was read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct AskState {
    /// What is read.
    pub what: What,
    /// Unit of the figures.
    pub unit: Unit,
    /// What the shop's instrument should show; once it is read, what it should have shown: the forecast that stood before
    /// the reading came. None for a reading from before that was kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub expected: Option<Expectation>,
    /// What the sheet asks of this reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target: Option<Target>,
    /// How the reading lies against that; for the swing weight, how the finish does that all readings together give.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fit: Option<Fit>,
    /// The reading that stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<Reading>,
    /// Whether that reading is doubted.
    pub doubted: bool,
    /// What a loft or lie that is off does to the shot; empty for one that is as asked and for other readings.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub effects: Vec<Told>,
}

/// One step of one club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct StepState {
    /// Key of the step.
    pub key: String,
    /// What the builder calls it.
    pub label: String,
    /// How far it has come.
    pub status: StepStatus,
    /// What it waits for.
    pub gate: Gate,
    /// The readings and notes that belong to the step, each with what is expected.
    pub asks: Vec<AskState>,
}

/// One club of the job at the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubState {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Number of the club.
    pub number: String,
    /// What its card says when it is scanned: `J42-3`.
    pub card: String,
    /// Version to send back with the next reading.
    pub version: i64,
    /// Where it will finish.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub finish: Option<Finish>,
    /// Its swing inertia as it will be finished; none without a plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub swing_inertia: Option<SwingInertia>,
    /// How it looks in the row.
    pub look: Look,
    /// Its steps in the order of the job.
    pub steps: Vec<StepState>,
    /// Key of the step to do next; none when all is done.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_step: Option<String>,
}

/// What must be known besides the belief to say where a job stands.
#[derive(Debug, Clone, Copy)]
pub struct Surroundings<'a> {
    /// Batches that clubs of this job were glued from.
    pub batches: &'a [Batch],
    /// Joints that somebody let pass before their time.
    pub overrides: &'a [CureOverride],
    /// The moment for which it is asked, by the shop's clock.
    pub now: Timestamp,
}

/// Where every club of a job stands.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn bench(believed: &Believed<'_>, around: Surroundings<'_>) -> Result<Vec<ClubState>, TradeError> {
    believed.assembly.job.clubs.iter().map(|club| club_state(believed, around, club)).collect()
}

/// Where one club stands.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn club_state(believed: &Believed<'_>, around: Surroundings<'_>, club: &JobClub) -> Result<ClubState, TradeError> {
    let job = believed.assembly.job;
    let mut steps = Vec::with_capacity(job.steps.len());
    let finish = believed.finish(&club.id)?;
    for step in job.steps_of(club) {
        steps.push(step_state(believed, around, club, step, finish.as_ref())?);
    }
    let last_touched = steps.iter().rposition(|s| matches!(s.status, StepStatus::Done | StepStatus::Begun));
    if let Some(last) = last_touched {
        for step in &mut steps[..last] {
            if step.status == StepStatus::Open {
                step.status = StepStatus::LeftOut;
            }
        }
    }
    let from = last_touched.unwrap_or(0);
    let next_step =
        steps[from..].iter().find(|s| matches!(s.status, StepStatus::Open | StepStatus::Begun)).map(|s| s.key.clone());
    let doubted = steps.iter().flat_map(|s| &s.asks).any(|a| a.doubted);
    Ok(ClubState {
        club: club.id.clone(),
        slot: club.slot,
        number: club.target.number.clone(),
        card: club.card.clone(),
        version: club.version,
        swing_inertia: believed.swing_inertia(&club.id)?,
        look: look(finish.as_ref(), doubted),
        finish,
        steps,
        next_step,
    })
}

fn look(finish: Option<&Finish>, doubted: bool) -> Look {
    match finish {
        _ if doubted => Look::Doubted,
        None => Look::Unplanned,
        Some(f) if f.chance >= 0.8 => Look::Inside,
        Some(f) if f.deviation_points.abs() > f.tolerance_points => Look::Off,
        Some(_) => Look::Open,
    }
}

/// Whether a step that reads something reads it of this club.
fn is_asked(club: &JobClub, what: What) -> bool {
    match what {
        What::SwingWeight => !club.target.swing_weight_free,
        What::GripSize | What::GripSizeLower => crate::grip_size::asked(club, what).is_some(),
        _ => true,
    }
}

fn step_state(
    believed: &Believed<'_>,
    around: Surroundings<'_>,
    club: &JobClub,
    step: &Step,
    finish: Option<&Finish>,
) -> Result<StepState, TradeError> {
    let job_hand = believed.assembly.job.sheet.hand;
    let readings = believed.standing_all();
    let mut asks = Vec::with_capacity(step.asks.len());
    for &what in step.asks.iter().filter(|what| is_asked(club, **what)) {
        let reading =
            readings.iter().rev().find(|r| r.club == club.id && r.step == step.key && r.what == what).copied();
        let on = reading.map_or(step.on.as_slice(), |r| r.on.as_slice());
        let target = if step.before { None } else { target_of(believed.assembly, club, what, on) };
        let fit = target.zip(reading).map(|(target, reading)| match finish {
            Some(finish) if what == What::SwingWeight => target.fit(target.value + finish.deviation_points),
            _ => target.fit(reading.value),
        });
        let expected = match reading {
            Some(reading) => reading.forecast.map(Expectation::from),
            None => believed.expected_at(&club.id, step, what, on)?,
        };
        asks.push(AskState {
            what,
            unit: what.unit(),
            expected,
            target,
            fit,
            effects: reading.map_or_else(Vec::new, |reading| {
                effects(believed.assembly.library, &club.target, job_hand, what, reading.value)
            }),
            doubted: reading.is_some_and(|r| believed.is_doubted(&r.id)),
            reading: reading.cloned(),
        });
    }
    let read = asks.iter().filter(|a| a.reading.is_some()).count();
    let status = match read {
        // Only its swing weight would be read here, and none is asked of this club.
        0 if asks.is_empty() && !step.asks.is_empty() => StepStatus::LeftOut,
        0 => StepStatus::Open,
        n if n == asks.len() => StepStatus::Done,
        _ => StepStatus::Begun,
    };
    Ok(StepState {
        key: step.key.clone(),
        label: step.label.clone(),
        status,
        gate: Gate::of(believed.assembly, club, step, around.batches, around.overrides, around.now)?,
        asks,
    })
}
