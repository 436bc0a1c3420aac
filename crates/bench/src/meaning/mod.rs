//! What a reading means for its club, and what to do now.

mod says;

pub use says::{AngleSays, AngleToDo, MeaningSays, NextSays, OffBy};

use crate::belief::{BAND_95, Believed, Finish};
use crate::cause::{Cause, CauseSays, Telling, all_joints, inquire};
use crate::chance::Chance;
use crate::club_state::{ClubState, StepState};
use crate::open_point::{OpenFact, OpenPoint};
use crate::reach::reach;
use crate::remedy::{Remedy, Spare, WORTH_DOING, chance_ahead};
use crate::target::Fit;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::job::Job;
use trade::reading::{Reading, What};
use utoipa::ToSchema;

/// How a sentence about a reading is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Tone {
    /// All is well.
    Good,
    /// Something can be done.
    Act,
    /// Something does not fit.
    Doubt,
}

/// What a reading means, for the bench.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Meaning {
    /// How it is meant.
    pub tone: Tone,
    /// What it says about the finish.
    #[serde(flatten)]
    pub fact: MeaningSays,
    /// What to do now.
    pub next: NextSays,
    /// What may be behind a doubted reading of this club, the likeliest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub causes: Vec<Cause>,
    /// The measurement that would tell the leading causes apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub telling: Option<Telling>,
    /// What all clubs of the set have in common, once that is likelier than not: all joints heavy or light.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_set: Option<CauseSays>,
}

impl Meaning {
    const fn new(tone: Tone, fact: MeaningSays, next: NextSays) -> Self {
        Self { tone, fact, next, causes: Vec::new(), telling: None, over_set: None }
    }
}

/// What a reading means for its club, and what to do now; `remedies` are those of the club, the best first.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn meaning(
    believed: &Believed<'_>,
    state: &ClubState,
    reading: &Reading,
    spares: &[Spare<'_>],
    remedies: &[Remedy],
) -> Result<Meaning, TradeError> {
    let over_set = all_joints(believed)?;
    if believed.is_doubted(&reading.id) {
        return Ok(Meaning { over_set, ..doubted(believed, reading, spares)? });
    }
    let mut meaning = believed_meaning(believed, state, reading, spares, remedies)?;
    // A reading that fits, of a club with one that does not: what it told about that one.
    let standing = believed.standing();
    if let Some(doubted) = standing.iter().rev().find(|r| r.club == state.club && believed.is_doubted(&r.id)) {
        let inquest = inquire(believed, doubted, spares)?;
        if let Some(likely) = inquest.likely() {
            let step = believed.assembly.job.step(&doubted.step).map_or(&doubted.step, |s| &s.label).clone();
            let telling = inquest.telling.as_ref().map(|t| t.fact.clone());
            meaning.tone = Tone::Doubt;
            meaning.next = NextSays::StillDoubted { what: doubted.what, step, likely, telling };
        }
        meaning.causes = inquest.causes;
        meaning.telling = inquest.telling;
    }
    meaning.over_set = over_set;
    Ok(meaning)
}

/// What a believed reading means.
fn believed_meaning(
    believed: &Believed<'_>,
    state: &ClubState,
    reading: &Reading,
    spares: &[Spare<'_>],
    remedies: &[Remedy],
) -> Result<Meaning, TradeError> {
    let job = believed.assembly.job;
    let Some(finish) = &state.finish else {
        return Ok(Meaning::new(Tone::Good, MeaningSays::Kept, go_on(job, state)));
    };
    let step = state.steps.iter().find(|step| step.key == reading.step);
    if let (What::Loft | What::Lie, Some(step), Some(club)) = (reading.what, step, job.club(&state.club)) {
        let library = believed.assembly.library;
        let head = library.head(&club.target.head_model);
        let setting = crate::bend::better_setting(library, club, step);
        return Ok(angles(step, head.map_or(0.0, |head| head.bend_limit_deg), setting.as_deref()));
    }
    if job.club(&state.club).is_some_and(|club| club.target.swing_weight_free) {
        return Ok(Meaning::new(Tone::Good, MeaningSays::Kept, go_on(job, state)));
    }
    if let (What::Cpm, Some(found)) = (reading.what, step.and_then(|step| frequency(job, state, step))) {
        return Ok(found);
    }
    let ahead = chance_ahead(believed, state, spares)?.unwrap_or(finish.chance);
    let (tone, next) = what_next(believed, state, (finish, ahead), remedies)?;
    Ok(with_what_is_off(tone, next, (finish, ahead), step))
}

/// What to do about a finish, whose chance with the choices still to come is `ahead`. A club that will rather miss is never told to go on without a word.
fn what_next(
    believed: &Believed<'_>,
    state: &ClubState,
    (finish, ahead): (&Finish, f64),
    remedies: &[Remedy],
) -> Result<(Tone, NextSays), TradeError> {
    let job = believed.assembly.job;
    let off_points = finish.deviation_points;
    let (rather_out, aims_in) = (finish.chance < 0.5, off_points.abs() <= finish.tolerance_points);
    if !rather_out && is_built_in_tolerance(state) {
        let next = next_step(job, state);
        return Ok((Tone::Good, next.map_or(NextSays::InToleranceDone, |step| NextSays::InTolerance { step })));
    }
    let settles = if rather_out { None } else { reach(believed, &state.club)? };
    if let Some(reach) = settles.filter(|reach| reach.what().is_some()) {
        return Ok((Tone::Good, NextSays::Settle { reach }));
    }
    // Held against doing nothing now, with the choices still to come.
    let best = remedies.first().filter(|r| r.chance_at_end > ahead + WORTH_DOING && ahead < GOOD_ENOUGH);
    let next = match best.map(|best| best.fact.clone()) {
        Some(remedy) if rather_out => NextSays::RatherOut { remedy },
        Some(remedy) => NextSays::Remedy { remedy },
        None if !rather_out => return Ok((Tone::Good, go_on(job, state))),
        None if aims_in => narrower(believed, state, finish)?,
        None if ahead < 0.5 && off_points < 0.0 => NextSays::TooLight { by_points: -off_points },
        None if ahead < 0.5 => NextSays::TooHeavy { by_points: off_points },
        None if off_points < 0.0 => NextSays::LighterGripLater { chance: Chance::of(ahead) },
        None => NextSays::HeavierGripLater { chance: Chance::of(ahead) },
    };
    Ok((Tone::Act, next))
}

/// Whether the finished, dry club was read, and all readings together put it in tolerance.
fn is_built_in_tolerance(state: &ClubState) -> bool {
    let asks = state.steps.iter().flat_map(|step| &step.asks);
    asks.filter(|ask| ask.what == What::SwingWeight && !ask.doubted).any(|ask| ask.fit == Some(Fit::Inside))
}

/// The first reading that narrows a wide forecast: what can be read now comes before the steps to come.
fn narrower(believed: &Believed<'_>, state: &ClubState, finish: &Finish) -> Result<NextSays, TradeError> {
    let assembly = believed.assembly;
    let Some(club) = assembly.job.club(&state.club) else { return Ok(NextSays::Wide) };
    let job_steps = || assembly.job.steps.iter().zip(&state.steps);
    let reads = |read: bool| {
        let is = move |s: &StepState| s.asks.iter().any(|a| a.what == What::SwingWeight && a.reading.is_some() == read);
        job_steps().filter(move |(_, state)| is(state)).map(|(step, _)| step)
    };
    let on_club = |on: &[trade::kind::Role]| assembly.swing_weight_reading(club, on);
    let again = reads(true).next_back().map(|s| (on_club(&s.on), NextSays::WideReadAgain));
    let check = assembly.known_weight_reading(What::CheckWeight).map(|check| (check, NextSays::WideReadCheckWeight));
    let later = reads(false).map(|s| (on_club(&s.on), NextSays::WideReadStep { step: s.label.clone() }));
    let narrow_sd = WORTH_READING * finish.band_points / BAND_95;
    for (reading, says) in again.into_iter().chain(check).chain(later) {
        if believed.sd_after(&assembly.finish_probe(&state.club), &[reading])? < narrow_sd {
            return Ok(says);
        }
    }
    Ok(NextSays::Wide)
}

/// One verdict over all readings of a step. It begins with the other readings that are off target.
fn with_what_is_off(tone: Tone, next: NextSays, (finish, ahead): (&Finish, f64), step: Option<&StepState>) -> Meaning {
    let asks = step.into_iter().flat_map(|step| &step.asks);
    let off: Vec<OpenFact> = asks
        .filter(|a| a.fit == Some(Fit::Off) && a.what != What::SwingWeight && !a.doubted)
        .filter_map(|ask| {
            let (reading, target) = (ask.reading.as_ref()?, ask.target?);
            Some(OpenPoint::Off { what: ask.what, value: reading.value, unit: ask.unit, target, reading: None }.fact())
        })
        .collect();
    let finish_points = finish.swing_weight_points;
    // Never told as "± 0.0".
    let band_points = finish.band_points.max(0.05);
    let chance = Chance::of(finish.chance);
    match (off.is_empty(), tone) {
        (true, _) => {
            // Where nothing is left to choose they are the same.
            let ahead = Some(Chance::of(ahead)).filter(|ahead| *ahead != chance);
            Meaning::new(tone, MeaningSays::Finish { finish_points, band_points, chance, ahead }, next)
        }
        (false, tone) => {
            let next = if tone == Tone::Good { NextSays::PutRight } else { next };
            Meaning::new(Tone::Act, MeaningSays::OffSheet { off, finish_points, band_points, chance }, next)
        }
    }
}

/// A remedy is named where the club is not as good as in already.
const GOOD_ENOUGH: f64 = 0.95;

/// A reading is named where it leaves less than this share of a forecast's band.
const WORTH_READING: f64 = 0.95;

fn next_step(job: &Job, state: &ClubState) -> Option<String> {
    state.next_step.as_deref().and_then(|key| job.step(key)).map(|step| step.label.clone())
}

fn go_on(job: &Job, state: &ClubState) -> NextSays {
    next_step(job, state).map_or(NextSays::Done, |step| NextSays::Step { step })
}

/// How far a reading is off, in its own unit, what is likely behind it, and what would tell.
fn doubted(believed: &Believed<'_>, reading: &Reading, spares: &[Spare<'_>]) -> Result<Meaning, TradeError> {
    let expected = believed.expected_reading(reading)?;
    let fact = expected.map_or(MeaningSays::DoubtedOnly, |e| MeaningSays::Doubted {
        off: OffBy::of(reading.what, reading.value - e.value),
    });
    let inquest = inquire(believed, reading, spares)?;
    let telling = inquest.telling.as_ref().map(|t| t.fact.clone());
    let next = inquest.likely().map_or(NextSays::ReadAgain, |likely| NextSays::Likely { likely, telling });
    Ok(Meaning { causes: inquest.causes, telling: inquest.telling, ..Meaning::new(Tone::Doubt, fact, next) })
}

/// A frequency has no part in the swing weight: say how it lies against what the sheet asks or what was expected. None where
/// it misses, and where its step asks more: those have one verdict over all of the step.
fn frequency(job: &Job, state: &ClubState, step: &StepState) -> Option<Meaning> {
    let [ask] = step.asks.as_slice() else { return None };
    let read_cpm = ask.reading.as_ref()?.value;
    let fact = match (ask.target, ask.expected) {
        (Some(target), _) if target.fit(read_cpm) == Fit::Off => return None,
        (Some(target), _) => MeaningSays::CpmGood { read_cpm, asked_cpm: target.value },
        (None, Some(expected)) => {
            MeaningSays::CpmExpected { read_cpm, expected_cpm: expected.value, band_cpm: expected.band }
        }
        (None, None) => MeaningSays::Kept,
    };
    Some(Meaning::new(Tone::Good, fact, go_on(job, state)))
}

/// Loft and lie have no part in the swing weight: say of both how far to bend, and whether the head allows it.
fn angles(step: &StepState, limit_deg: f64, setting: Option<&str>) -> Meaning {
    let (mut said, mut to_do) = (Vec::new(), Vec::new());
    let mut tone = Tone::Good;
    for ask in step.asks.iter().filter(|ask| matches!(ask.what, What::Loft | What::Lie)) {
        let is_loft = ask.what == What::Loft;
        let Some(reading) = &ask.reading else {
            to_do.push(if is_loft { AngleToDo::ReadLoft } else { AngleToDo::ReadLie });
            continue;
        };
        let Some(target) = ask.target else { continue };
        let (read_deg, asked_deg) = (reading.value, target.value);
        if target.fit(read_deg) == Fit::Inside {
            said.push(if is_loft { AngleSays::LoftGood { read_deg } } else { AngleSays::LieGood { read_deg } });
            continue;
        }
        tone = Tone::Act;
        let by_deg = (read_deg - asked_deg).abs();
        said.push(match (is_loft, read_deg > asked_deg) {
            (true, true) => AngleSays::LoftWeak { read_deg, asked_deg, by_deg },
            (true, false) => AngleSays::LoftStrong { read_deg, asked_deg, by_deg },
            (false, true) => AngleSays::LieUpright { read_deg, asked_deg, by_deg },
            (false, false) => AngleSays::LieFlat { read_deg, asked_deg, by_deg },
        });
        to_do.push(match (is_loft, read_deg > asked_deg) {
            _ if setting.is_some() => AngleToDo::SetAdapter { setting: setting.unwrap_or_default().to_owned() },
            _ if by_deg > limit_deg + 1e-9 => AngleToDo::OtherHead { limit_deg },
            (true, true) => AngleToDo::BendStronger { by_deg, limit_deg },
            (true, false) => AngleToDo::BendWeaker { by_deg, limit_deg },
            (false, true) => AngleToDo::BendFlat { by_deg, limit_deg },
            (false, false) => AngleToDo::BendUpright { by_deg, limit_deg },
        });
    }
    to_do.dedup();
    let (mut said, mut to_do) = (said.into_iter(), to_do.into_iter());
    let fact = match (said.next(), said.next()) {
        (Some(first), Some(second)) => MeaningSays::Angles { first, second },
        (Some(angle), None) => MeaningSays::Angle { angle },
        _ => MeaningSays::Kept,
    };
    let next = match (to_do.next(), to_do.next()) {
        (Some(first), Some(second)) => NextSays::Angles { first, second },
        (Some(to_do), None) => NextSays::Angle { to_do },
        _ => NextSays::NothingToBend,
    };
    Meaning::new(tone, fact, next)
}
