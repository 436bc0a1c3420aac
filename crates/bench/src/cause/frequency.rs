//! What may be behind a frequency that does not fit: the clamp, the cut, the shaft, the head, the entry.
//!
//! Each cause is held against all frequencies of the set, as those of a swing weight are: what it does to each reading of the
//! club follows from the mode in which that reading was taken. How often each happens, and how far off it is: common practice,
//! no source.

use super::kinds::CauseKind as Kind;
use super::says::{CauseSays as Says, CauseToDo};
use super::slips::slips;
use super::telling::Telling;
use super::{Cause, Inquest, LEAST_BITS, LEAST_SHOWN, SETTLED, groups_of};
use crate::belief::Believed;
use crate::flex::{FlexCase, PERCENT};
use crate::remedy::Progress;
use estimation::{Change, Effect, Hypothesis, Misread, Observation};
use quantity::INCH_MM;
use std::collections::BTreeSet;
use trade::error::TradeError;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::{Reading, What};
use trade::reading_figure::ReadingFigure;

/// How far a butt is from where the clamp should hold it: mean and standard deviation, mm.
const OFF_CLAMP_MM: (f64, f64) = (10.0, 6.0);
/// Tip trims that are a number or two off: inches.
const OFF_TRIM_IN: [f64; 4] = [0.5, -0.5, 1.0, -1.0];
/// A head that is not firm on its shaft reads low, per cent of its frequency: mean and standard deviation.
const LOOSE_PERCENT: (f64, f64) = (-3.0, 2.0);
/// From one flex of a model to the next, hundredths of the frequency: about ten cycles.
const CLASS_PERCENT: (f64, f64) = (3.3, 1.2);
/// How much a grip in the clamp lets go of, mm.
const GRIP_MM: (f64, f64) = (11.0, 5.0);
/// How far off a frequency is that was noted wrong when the shaft came in, hundredths: a digit, or the neighbour's line.
const NOTED_PERCENT: f64 = 3.0;
/// What something else may do to one reading, hundredths.
const ELSE_PERCENT: f64 = 6.0;
/// Name of the reading that could be taken next: the club clamped again.
const AGAIN: &str = "planned:00";

/// One thing that may be wrong.
struct Candidate {
    kind: Kind,
    says: Says,
    hypothesis: Hypothesis,
}

/// What may be behind a frequency, weighed against all frequencies of the set; empty where its club is not forecast.
///
/// # Errors
/// Figures that the belief cannot work with.
pub(super) fn inquire(believed: &Believed<'_>, reading: &Reading) -> Result<Inquest, TradeError> {
    let assembly = believed.assembly;
    let Some(club) = assembly.job.club(&reading.club) else { return Ok(Inquest::default()) };
    let standing = believed.standing();
    let Some(case) = believed.flex().case(assembly, club, &standing)? else { return Ok(Inquest::default()) };
    let Some(asked) = case.observed.iter().find(|o| o.id == reading.id.as_str()).cloned() else {
        return Ok(Inquest::default());
    };
    let glued = Progress::of(believed, club).glued;
    let candidates = candidates(believed, club, reading, &case, glued)?;
    let hypotheses: Vec<Hypothesis> = candidates.iter().map(|c| c.hypothesis.clone()).collect();
    let about = about(&case, &hypotheses, &asked);
    let again = Observation { id: AGAIN.to_owned(), ..asked };
    let weighed = case.model.weigh(&case.observed, &about, &[again], &hypotheses)?;
    let (keys, groups) = groups_of(candidates.iter().map(|c| c.kind.key()));
    let sums = weighed.grouped(&groups)?;
    let mut causes = Vec::with_capacity(keys.len());
    for (group, key) in keys.iter().enumerate() {
        let of_group = (0..candidates.len()).filter(|i| groups[*i] == group);
        let best = of_group.max_by(|a, b| weighed.posterior[*a].total_cmp(&weighed.posterior[*b]));
        let Some(found) = best.map(|best| &candidates[best]) else { continue };
        causes.push(Cause {
            key: key.clone(),
            fact: found.says.clone(),
            probability: sums[group],
            shift_points: 0.0,
            what_to_do: CauseToDo::of(found.kind, &found.says, glued),
            exchange: None,
        });
    }
    causes.sort_by(|a, b| b.probability.total_cmp(&a.probability).then_with(|| a.key.cmp(&b.key)));
    let mut place = 0;
    causes.retain(|c| {
        place += 1;
        place <= 3 || c.probability >= LEAST_SHOWN
    });
    let settled = causes.first().is_some_and(|first| first.is_named() && first.probability >= SETTLED);
    let bits = weighed.information_bits(0, &groups)?;
    let worth_it = bits >= LEAST_BITS && !settled;
    let naming = weighed.chance_of_naming(0, &groups)?;
    Ok(Inquest { causes, telling: worth_it.then(|| Telling::clamp_again(reading, bits, naming)) })
}

/// The readings that the causes are about.
fn about(case: &FlexCase, hypotheses: &[Hypothesis], asked: &Observation) -> BTreeSet<String> {
    let shifted = hypotheses.iter().flat_map(|h| &h.changes).flat_map(|c| &c.effects).map(|e| &e.reading);
    let named = shifted.chain(hypotheses.iter().flat_map(|h| &h.misread).map(|m| &m.reading)).chain([&asked.id]);
    let there = |id: &&String| case.observed.iter().any(|o| o.id == **id);
    named.filter(there).cloned().collect()
}

fn candidates(
    believed: &Believed<'_>,
    club: &JobClub,
    reading: &Reading,
    case: &FlexCase,
    glued: bool,
) -> Result<Vec<Candidate>, TradeError> {
    let mut all = Vec::new();
    let own = || case.own.iter();
    let effect = |id: &str, per_unit: f64| Effect { reading: id.to_owned(), per_unit };
    // What lasts is seen in the same reading taken again.
    let lasting = |on: &dyn Fn(&[Role]) -> bool, per_unit: &dyn Fn(&clubphysics::vibration::ClampedMode) -> f64| {
        let mut effects: Vec<Effect> =
            own().filter(|(_, roles, _)| on(roles)).map(|(id, _, mode)| effect(id, per_unit(mode))).collect();
        let asked = effects.iter().find(|e| e.reading == reading.id.as_str()).map(|e| e.per_unit);
        effects.extend(asked.map(|per_unit| effect(AGAIN, per_unit)));
        effects
    };
    let add =
        |all: &mut Vec<Candidate>, kind: Kind, says: Says, share: f64, (mean, sd): (f64, f64), effects: Vec<Effect>| {
            if effects.iter().any(|e| e.reading == reading.id.as_str() && e.per_unit != 0.0) {
                let prior = kind.prior() * share;
                let changes = vec![Change { mean, sd, effects }];
                all.push(Candidate {
                    kind,
                    says,
                    hypothesis: Hypothesis { changes, ..Hypothesis::nothing(kind.key(), prior) },
                });
            }
        };
    let Some((_, on, mode)) = own().find(|(id, ..)| id == reading.id.as_str()) else { return Ok(all) };
    let this = |per_unit: f64| vec![effect(reading.id.as_str(), per_unit)];
    let free = mode.by_free_mm * PERCENT;
    add(&mut all, Kind::ClampedOff, Says::ClampedShort, 0.7, OFF_CLAMP_MM, this(free));
    add(&mut all, Kind::ClampedOff, Says::ClampedDeep, 0.3, OFF_CLAMP_MM, this(-free));
    let any = |_: &[Role]| true;
    for off_in in OFF_TRIM_IN {
        let by_mm = off_in.abs() * INCH_MM;
        let says = if off_in > 0.0 { Says::TipTrimMore { by_mm } } else { Says::TipTrimLess { by_mm } };
        let effects = lasting(&any, &|mode| mode.by_tip_trim_mm * PERCENT);
        let share = if by_mm < 20.0 { 0.35 } else { 0.15 };
        add(&mut all, Kind::TipTrimOff, says, share, (off_in * INCH_MM, 1.5), effects);
    }
    if on.contains(&Role::Head) {
        // A dry joint can rattle; a glued one that reads slow is cracked or was never full.
        let loose = lasting(&|roles| roles.contains(&Role::Head), &|_| 1.0);
        let share = if glued { 0.3 } else { 1.0 };
        add(&mut all, Kind::HeadLoose, Says::HeadLoose, share, LOOSE_PERCENT, loose);
    }
    for (says, sign) in [(Says::StifferShaft, 1.0), (Says::SofterShaft, -1.0)] {
        let mean = sign * CLASS_PERCENT.0;
        add(&mut all, Kind::WrongFlex, says, 0.5, (mean, CLASS_PERCENT.1), lasting(&any, &|_| 1.0));
    }
    other_shafts(believed, club, case, &mut |says, share, amount| {
        add(&mut all, Kind::OtherShaft, says, share, amount, lasting(&any, &|_| 1.0));
    });
    if let Some(raw) = &case.raw {
        let noted = vec![effect(raw, 1.0)];
        let prior = Kind::RawNoted.prior();
        let changes = vec![Change { mean: 0.0, sd: NOTED_PERCENT, effects: noted }];
        let hypothesis = Hypothesis { changes, ..Hypothesis::nothing(Kind::RawNoted.key(), prior) };
        all.push(Candidate { kind: Kind::RawNoted, says: Says::RawNoted, hypothesis });
    }
    if !on.contains(&Role::Grip) {
        add(&mut all, Kind::GripOn, Says::GripOn, 1.0, GRIP_MM, this(free));
    }
    for slip in slips(reading) {
        let prior = slip.kind.prior() * slip.share;
        let Some(value) = case.observed.iter().find(|o| o.id == reading.id.as_str()).map(|o| o.value) else { continue };
        let meant = value + PERCENT * (slip.meant / reading.value.max(1.0)).ln();
        let misread = vec![Misread { reading: reading.id.0.clone(), meant, stretch: slip.stretch }];
        let meant = ReadingFigure::half(reading.what, slip.meant);
        let says =
            if slip.kind == Kind::DigitsSwapped { Says::DigitsSwapped { meant } } else { Says::Misread { meant } };
        all.push(Candidate {
            kind: slip.kind,
            says,
            hypothesis: Hypothesis { misread, ..Hypothesis::nothing(slip.kind.key(), prior) },
        });
    }
    add(&mut all, Kind::SomethingElse, Says::ElseReading, 0.5, (0.0, ELSE_PERCENT), this(1.0));
    add(&mut all, Kind::SomethingElse, Says::ElseClub, 0.5, (0.0, ELSE_PERCENT), lasting(&any, &|_| 1.0));
    let wrong: f64 = all.iter().map(|c| c.hypothesis.prior).sum();
    let nothing = Hypothesis::nothing(Kind::Nothing.key(), (1.0 - wrong).max(0.5));
    all.insert(0, Candidate { kind: Kind::Nothing, says: Says::NothingWrong, hypothesis: nothing });
    Ok(all)
}

/// The shafts of the other clubs of the set, as far as both raw shafts were read: by how many hundredths each is stiffer or
/// softer in this club.
fn other_shafts(
    believed: &Believed<'_>,
    club: &JobClub,
    case: &FlexCase,
    found: &mut dyn FnMut(Says, f64, (f64, f64)),
) {
    let raw = |club: &JobClub| club.plan.as_ref()?.part(PartKind::Shaft)?.raw_cpm;
    let model = |club: &JobClub| Some(club.plan.as_ref()?.part(PartKind::Shaft)?.model.clone());
    let Some(own) = case.raw.as_ref().and_then(|_| raw(club)) else { return };
    let same_model = |other: &&JobClub| other.id != club.id && model(other) == model(club);
    let others: Vec<&JobClub> = believed.assembly.job.clubs.iter().filter(same_model).collect();
    let share = 1.0 / others.len().max(1) as f64;
    for other in others {
        // A taper blank of another number is another length: its frequency says nothing of this one's.
        let same_blank = other.plan.as_ref().zip(club.plan.as_ref()).is_some_and(|(a, b)| {
            let raw_mm = |plan: &trade::plan::ClubPlan| plan.cut_shaft_mm + plan.butt_cut_mm + plan.tip_trim_mm;
            (raw_mm(a) - raw_mm(b)).abs() < 3.0
        });
        if let Some(other_cpm) = raw(other).filter(|_| same_blank) {
            let by = PERCENT * (other_cpm / own).ln();
            found(Says::ShaftOfClub { club: other.target.name() }, share, (by, 0.3));
        }
    }
}

/// Whether a reading is one of frequencies, whose causes are these.
pub(super) fn is_of(reading: &Reading) -> bool {
    reading.what == What::Cpm
}
