//! What a reading means for its club, and what to do now.

use crate::belief::Believed;
use crate::cause::{Cause, Telling, inquire};
use crate::chance::{chance_words, finish_words};
use crate::club_state::{ClubState, StepState};
use crate::open_point::OpenPoint;
use crate::remedy::{Remedy, Spare};
use crate::target::Fit;
use quantity::decimal;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::job::Job;
use trade::reading::{Reading, Unit, What};
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

/// What a reading means, in words for the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Meaning {
    /// How it is meant.
    pub tone: Tone,
    /// What it says about the finish.
    pub words: String,
    /// What to do now.
    pub next: String,
    /// What may be behind a doubted reading of this club, the likeliest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub causes: Vec<Cause>,
    /// The measurement that would tell the leading causes apart.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub telling: Option<Telling>,
}

impl Meaning {
    fn new(tone: Tone, words: impl Into<String>, next: impl Into<String>) -> Self {
        Self { tone, words: words.into(), next: next.into(), causes: Vec::new(), telling: None }
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
    if believed.is_doubted(&reading.id) {
        return doubt_words(believed, reading, spares);
    }
    let mut meaning = believed_words(believed, state, reading, spares, remedies)?;
    // A reading that fits, of a club with one that does not: what it told about that one.
    let standing = believed.standing();
    if let Some(doubted) = standing.iter().rev().find(|r| r.club == state.club && believed.is_doubted(&r.id)) {
        let inquest = inquire(believed, doubted, spares)?;
        if !inquest.causes.is_empty() {
            let step = believed.assembly.job.step(&doubted.step).map_or("", |s| s.label.as_str()).to_lowercase();
            let telling = inquest.telling.as_ref().map_or("", |t| t.words.as_str());
            meaning.tone = Tone::Doubt;
            meaning.next = format!("The {step} {} is still doubted. {} {telling}", doubted.what, inquest.words());
            meaning.next.truncate(meaning.next.trim_end().len());
        }
        meaning.causes = inquest.causes;
        meaning.telling = inquest.telling;
    }
    Ok(meaning)
}

/// What a believed reading means.
fn believed_words(
    believed: &Believed<'_>,
    state: &ClubState,
    reading: &Reading,
    spares: &[Spare<'_>],
    remedies: &[Remedy],
) -> Result<Meaning, TradeError> {
    let job = believed.assembly.job;
    let Some(finish) = &state.finish else {
        return Ok(Meaning::new(Tone::Good, "Kept.", next_words(job, state)));
    };
    let says = format!("Finish {}, {}.", finish_words(finish), chance_words(finish.chance));
    let Some(club) = job.club(&state.club) else {
        return Ok(Meaning::new(Tone::Good, says, next_words(job, state)));
    };
    let step = state.steps.iter().find(|step| step.key == reading.step);
    if let (What::Loft | What::Lie, Some(step)) = (reading.what, step) {
        let head = believed.assembly.library.head(&club.target.head_model);
        return Ok(angle_words(step, head.map_or(0.0, |head| head.bend_limit_deg)));
    }
    // Held against doing nothing now, with the choices still to come.
    let ahead = crate::remedy::chance_ahead(believed, state, spares)?.unwrap_or(finish.chance);
    let best: Option<&Remedy> = remedies.first().filter(|r| r.chance_at_end > ahead + WORTH_DOING);
    let meaning = match best {
        Some(best) if ahead < GOOD_ENOUGH => Meaning::new(Tone::Act, says, best.words.clone()),
        None if ahead < 0.5 => Meaning::new(
            Tone::Act,
            says,
            format!(
                "It stands {} points {} its target. Read once more; what is still to come will not bring it back.",
                decimal(finish.deviation_points.abs(), 1),
                if finish.deviation_points < 0.0 { "under" } else { "over" }
            ),
        ),
        _ => Meaning::new(Tone::Good, says, next_words(job, state)),
    };
    Ok(match step {
        Some(step) => with_what_is_off(meaning, step),
        None => meaning,
    })
}

/// One verdict over all readings of a step. It begins with the other readings that are off target.
fn with_what_is_off(meaning: Meaning, step: &StepState) -> Meaning {
    let off = step.asks.iter().filter(|a| a.fit == Some(Fit::Off) && a.what != What::SwingWeight && !a.doubted);
    let said: Vec<String> = off
        .filter_map(|ask| {
            let (reading, target) = (ask.reading.as_ref()?, ask.target?);
            let off = OpenPoint::Off { what: ask.what, value: reading.value, unit: ask.unit, target };
            Some(format!("{}.", capital(&off.words())))
        })
        .collect();
    if said.is_empty() {
        return meaning;
    }
    let next = match meaning.tone {
        Tone::Good => "Put it right, or say why when the club is handed over.".to_owned(),
        _ => meaning.next,
    };
    Meaning { tone: Tone::Act, words: format!("{} {}", said.join(" "), meaning.words), next, ..meaning }
}

/// A remedy is named where it brings so much …
const WORTH_DOING: f64 = 0.05;

/// … and where the club is not as good as in already.
const GOOD_ENOUGH: f64 = 0.95;

fn next_words(job: &Job, state: &ClubState) -> String {
    match state.next_step.as_deref().and_then(|key| job.step(key)) {
        Some(step) => format!("Next: {}.", step.label.to_lowercase()),
        None => "This club is done.".into(),
    }
}

/// How far a reading lies off, in its own unit as people write it, what is likely behind it, and what would tell.
fn doubt_words(believed: &Believed<'_>, reading: &Reading, spares: &[Spare<'_>]) -> Result<Meaning, TradeError> {
    let expected = believed.expected(&reading.club, reading.what, &reading.on)?;
    let off = expected.map_or(String::new(), |e| {
        let off = reading.value - e.value;
        let side = if off < 0.0 { "under" } else { "over" };
        let unit = match reading.what.unit() {
            Unit::Points => "points".to_owned(),
            other => other.word().to_owned(),
        };
        format!("{} {unit} {side} what everything else says", decimal(off.abs(), 1))
    });
    let inquest = inquire(believed, reading, spares)?;
    let next = match (&inquest.telling, inquest.causes.is_empty()) {
        (_, true) => "Seat it again and read once more.".to_owned(),
        (Some(telling), _) => format!("{} {}", inquest.words(), telling.words),
        (None, _) => inquest.words(),
    };
    Ok(Meaning {
        causes: inquest.causes,
        telling: inquest.telling,
        ..Meaning::new(Tone::Doubt, format!("Doubted: {off}. It is kept, but not counted."), next)
    })
}

/// Loft and lie have no part in the swing weight: say of both how far to bend, and whether the head allows it.
fn angle_words(step: &StepState, limit_deg: f64) -> Meaning {
    let (mut words, mut next) = (Vec::new(), Vec::new());
    let mut tone = Tone::Good;
    for ask in step.asks.iter().filter(|ask| matches!(ask.what, What::Loft | What::Lie)) {
        let name = ask.what.word();
        let Some(reading) = &ask.reading else {
            next.push(format!("Read the {name} next."));
            continue;
        };
        let Some(target) = ask.target else { continue };
        let (read, asked) = (decimal(reading.value, 1), decimal(target.value, 1));
        if target.fit(reading.value) == Fit::Inside {
            words.push(format!("{} {read}° is on the sheet's {asked}°.", capital(name)));
            continue;
        }
        tone = Tone::Act;
        words.push(format!("{} {read}°, the sheet says {asked}°.", capital(name)));
        let by = target.value - reading.value;
        let way = match (ask.what, by > 0.0) {
            (What::Loft, true) => "weaker",
            (What::Loft, false) => "stronger",
            (_, true) => "upright",
            (_, false) => "flat",
        };
        let (by, limit) = (by.abs(), decimal(limit_deg, 1));
        next.push(if by <= limit_deg + 1e-9 {
            format!("Bend {}° {way}; the maker allows {limit}°.", decimal(by, 1))
        } else {
            format!("It must be bent {}° {way}, and the maker allows {limit}°: use another head.", decimal(by, 1))
        });
    }
    if next.is_empty() {
        next.push("Nothing to bend here.".to_owned());
    }
    Meaning::new(tone, words.join(" "), next.join(" "))
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
