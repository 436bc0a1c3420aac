//! Causes: what may be behind a reading that does not fit, how likely each is, and the one measurement that would tell.
//!
//! Every cause is a hypothesis about the club's own pieces with what it does to *all* readings of the club: from some
//! step on (a neighbour's head, a ferrule that is missing), for one step (solvent in the grip), or for one reading (the
//! butt off the stop, digits swapped). Nothing being wrong and something that nobody thought of are among them. How
//! often each happens comes from common practice (no source); what each does comes from the plan, the models and the
//! pieces that lie in the shop.

mod anatomy;
mod case;
mod frequency;
mod kinds;
mod list;
mod says;
mod set;
mod slips;
mod telling;
mod together;

pub use kinds::CauseKind;
pub use says::{CauseSays, CauseToDo, Likely};
pub use telling::{Telling, TellingSays};
pub use together::all_joints;

use self::case::{Candidate, Case};
use crate::belief::{BAND_95, Believed};
use crate::chance::Odds;
use crate::remedy::{Progress, Spare};
use estimation::Weighed;
use fact::Fact;
use serde::Serialize;
use std::collections::BTreeMap;
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::model::PartKind;
use trade::reading::{Reading, Unit, What};
use utoipa::ToSchema;

/// A missing ferrule takes about 0.62 point off. It is doubted where the forecast's band, half its width, is no wider than
/// this: three standard deviations are then 0.62 point.
pub const FERRULE_SEEN_BAND_POINTS: f64 = 0.62 / 3.0 * BAND_95;

/// A measurement that tells less than this many bits is not worth the walk.
const LEAST_BITS: f64 = 0.05;
/// Causes less likely than this are not shown, but for the first three.
const LEAST_SHOWN: f64 = 0.005;
/// A second cause less likely than this is not named beside the first.
const LEAST_NAMED: f64 = 0.05;

/// One thing that may be behind a doubted reading.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Cause {
    /// Key of the cause; two at once joined by `+`.
    pub key: String,
    /// What it is here: "the 2 g weight is not in the tip".
    #[serde(flatten)]
    pub fact: CauseSays,
    /// Probability after all readings of the club.
    pub probability: f64,
    /// What it does to the swing weight that the scale shows, points; 0 where it concerns another reading only.
    pub shift_points: f64,
    /// What to do about it.
    pub what_to_do: CauseToDo,
    /// What two clubs have of each other, where it can be exchanged as they are: nothing is glued.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exchange: Option<Exchange>,
}

impl Cause {
    /// Whether it can be looked for: neither that nothing is wrong nor something that nobody thought of.
    #[must_use]
    pub fn is_named(&self) -> bool {
        ![CauseKind::Nothing, CauseKind::SomethingElse].iter().any(|kind| self.key == kind.key())
    }
}

/// Two clubs that have each other's piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
pub struct Exchange {
    /// What they have of each other.
    pub kind: PartKind,
    /// Their places in the tray, the lower first.
    pub slots: [i64; 2],
}

impl Exchange {
    fn of(believed: &Believed<'_>, says: &CauseSays) -> Option<Self> {
        let (kind, names) = match says {
            CauseSays::HeadsExchanged { first, second } => (PartKind::Head, [first, second]),
            CauseSays::TipsExchanged { first, second } => (PartKind::TipWeight, [first, second]),
            CauseSays::GripsExchanged { first, second } => (PartKind::Grip, [first, second]),
            _ => return None,
        };
        let job = believed.assembly.job;
        let find = |name: &ClubName| job.clubs.iter().find(|club| club.target.name() == *name);
        let clubs = [find(names[0])?, find(names[1])?];
        let glued = clubs.iter().any(|club| Progress::of(believed, club).glued);
        (kind == PartKind::Grip || !glued).then_some(Self { kind, slots: clubs.map(|club| club.slot) })
    }
}

/// What is made of a doubted reading.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct Inquest {
    /// Causes, the likeliest first; nothing being wrong and something else among them.
    pub causes: Vec<Cause>,
    /// The measurement that would tell the leading ones apart, where one is worth it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub telling: Option<Telling>,
}

impl Inquest {
    /// What is likely, and what to do about it where one stands out; none without a cause.
    #[must_use]
    pub fn likely(&self) -> Option<Likely> {
        let one_of_two = |first: &Cause, second: &Cause| Likely::OneOfTwo {
            first: first.fact.clone(),
            first_odds: Odds::of(first.probability),
            second: second.fact.clone(),
            second_odds: Odds::of(second.probability),
        };
        let (first, second) = (self.causes.first()?, self.causes.get(1).filter(|c| c.probability >= LEAST_NAMED));
        let (cause, odds, to_do) = (first.fact.clone(), Odds::of(first.probability), first.what_to_do.clone());
        Some(match second {
            // What has a name comes first: it can be looked at.
            Some(named) if first.key == CauseKind::SomethingElse.key() => one_of_two(named, first),
            _ if first.probability >= 0.5 => Likely::Most { cause, odds, to_do },
            Some(second) => one_of_two(first, second),
            None => Likely::Maybe { cause, odds, to_do },
        })
    }
}

/// What may be behind a reading, weighed against all readings of its club and, where a weight may have been swapped, of
/// the other clubs.
///
/// Empty where the reading says nothing about masses and arms or its club has no plan.
///
/// # Errors
/// Figures that the belief cannot work with; a model that the plan names and the library lacks.
pub fn inquire(believed: &Believed<'_>, reading: &Reading, spares: &[Spare<'_>]) -> Result<Inquest, TradeError> {
    if frequency::is_of(reading) {
        return frequency::inquire(believed, reading);
    }
    let possible = telling::possible(believed, reading);
    let Some(case) = Case::new(believed, reading, &possible, spares)? else { return Ok(Inquest::default()) };
    let candidates = case.candidates()?;
    let hypotheses: Vec<_> = candidates.iter().map(|c| c.hypothesis.clone()).collect();
    let planned = case.planned();
    let weighed = case.model.weigh(&case.observations, &case.about(&candidates), &planned, &hypotheses)?;
    let (keys, groups) = groups_of(candidates.iter().map(|c| c.hypothesis.key.as_str()));
    let glued = Progress::of(believed, case.club).glued;
    let sums = weighed.grouped(&groups)?;
    let mut causes = Vec::with_capacity(keys.len());
    for (group, key) in keys.iter().enumerate() {
        let best = (0..candidates.len())
            .filter(|i| groups[*i] == group)
            .max_by(|a, b| weighed.posterior[*a].total_cmp(&weighed.posterior[*b]));
        let Some(best) = best else { continue };
        let found = &candidates[best];
        causes.push(Cause {
            key: key.clone(),
            fact: says(found, &weighed, best),
            probability: sums[group],
            shift_points: shift_points(&case, found, &weighed, best),
            what_to_do: what_to_do(found, glued),
            exchange: Exchange::of(believed, &found.says),
        });
    }
    causes.sort_by(|a, b| b.probability.total_cmp(&a.probability).then_with(|| a.key.cmp(&b.key)));
    let mut place = 0;
    causes.retain(|c| {
        place += 1;
        place <= 3 || c.probability >= LEAST_SHOWN
    });
    let settled = causes.first().is_some_and(|first| first.is_named() && first.probability >= SETTLED);
    let telling = best_telling(&case, &candidates, &weighed, &groups)?;
    Ok(Inquest { causes, telling: telling.filter(|telling| !settled || telling.what.is_look()) })
}

/// What to do about a candidate; about both where two things went wrong.
fn what_to_do(found: &Candidate, glued: bool) -> CauseToDo {
    let of = |kind: CauseKind| CauseToDo::of(kind, &found.says, glued);
    match found.kinds.as_slice() {
        [first, second, ..] => CauseToDo::Both { first: of(*first).told(), second: of(*second).told() },
        [only] => of(*only),
        [] => CauseToDo::LookOver,
    }
}

/// Candidates by the name of their cause: the names, and of each candidate the place of its own.
fn groups_of<'k>(names: impl Iterator<Item = &'k str>) -> (Vec<String>, Vec<usize>) {
    let mut places: BTreeMap<&str, usize> = BTreeMap::new();
    let mut keys = Vec::new();
    let groups = names
        .map(|name| {
            *places.entry(name).or_insert_with(|| {
                keys.push(name.to_owned());
                keys.len() - 1
            })
        })
        .collect();
    (keys, groups)
}

/// What a cause does to the swing weight that the scale shows.
fn shift_points(case: &Case<'_>, candidate: &Candidate, weighed: &Weighed, place: usize) -> f64 {
    let asked = &case.seen[case.asked];
    let amounts = &weighed.amounts[place];
    if asked.reading.what.unit() != Unit::Points {
        return match (candidate.alter, amounts.first()) {
            (Some(alter), Some(amount)) => case.points(alter) * amount.mean,
            _ => 0.0,
        };
    }
    let of_change = candidate.hypothesis.changes.iter().zip(amounts).map(|(change, amount)| {
        let on_asked = change.effects.iter().filter(|e| e.reading == asked.obs.id).map(|e| e.per_unit);
        on_asked.sum::<f64>() * amount.mean
    });
    let of_slip = candidate.hypothesis.misread.iter().filter(|m| m.reading == asked.obs.id);
    of_change.sum::<f64>() + of_slip.map(|m| asked.obs.value - m.meant).sum::<f64>()
}

/// What a candidate is here; of the joints, whether they are heavy or light shows in the readings only.
fn says(found: &Candidate, weighed: &Weighed, place: usize) -> CauseSays {
    match (&found.says, weighed.amounts[place].first()) {
        (CauseSays::JointsHeavy { .. }, Some(amount)) if amount.mean < 0.0 => {
            CauseSays::JointsLight { by_g: -amount.mean }
        }
        (CauseSays::JointsHeavy { .. }, Some(amount)) => CauseSays::JointsHeavy { by_g: amount.mean },
        (says, _) => says.clone(),
    }
}

/// A cause this likely is put right without another measurement, which costs more than to find it is not the one. A look costs
/// nothing and is still asked for.
const SETTLED: f64 = 0.95;

/// A scale that is off zero for a run of readings this likely, or a head of another number, is looked at before anything else
/// is measured: it takes three seconds. Whatever is read on such a scale meanwhile is off with it; no scale tells such a head
/// from a mass that was noted wrong.
const LOOK_AT_ONCE: f64 = 0.03;

fn best_telling(
    case: &Case<'_>,
    candidates: &[Candidate],
    weighed: &Weighed,
    groups: &[usize],
) -> Result<Option<Telling>, TradeError> {
    let mut best: Option<(f64, Telling)> = None;
    let asked = &case.seen[case.asked].reading;
    for what in [What::EmptyScale, What::FerruleOn, What::HeadNumber] {
        let shown = |c: &&Candidate| c.seen_by.iter().any(|state| state.look == what);
        if !candidates.iter().any(|c| shown(&c)) || case.is_looked_at(what) {
            continue;
        }
        let yes: Vec<f64> = candidates.iter().map(|c| c.says_yes(what, None)).collect();
        let look = weighed.after_look(&yes, groups)?;
        let at_once = |c: &Candidate| match what {
            What::EmptyScale => matches!(c.says, CauseSays::ScaleOffZero { .. }),
            What::HeadNumber => shown(&c),
            _ => false,
        };
        let likely: f64 = candidates.iter().zip(&weighed.posterior).filter(|(c, _)| at_once(c)).map(|(_, p)| p).sum();
        let telling = Telling::look(what, asked, look.bits, look.chance_of_naming);
        if likely >= LOOK_AT_ONCE {
            return Ok(Some(telling));
        }
        let worth = telling::worth(look.chance_of_naming, look.bits, what);
        if look.bits >= LEAST_BITS && best.as_ref().is_none_or(|(most, _)| worth > *most) {
            best = Some((worth, telling));
        }
    }
    for (i, seen) in case.seen.iter().filter(|s| s.planned).enumerate() {
        let bits = weighed.information_bits(i, groups)?;
        let chance = weighed.chance_of_naming(i, groups)?;
        let worth = telling::worth(chance, bits, seen.reading.what);
        if bits >= LEAST_BITS && best.as_ref().is_none_or(|(most, _)| worth > *most) {
            best = Some((worth, Telling::of(seen, bits, chance, &case.seen)));
        }
    }
    Ok(best.map(|(_, telling)| telling))
}
