//! Planning anew in place: after a part was rejected, a reading moved the belief or a lock changed. What is cut, glued or
//! gripped stays as it is.

use super::{Fitting, Given, Ground, Lock, Shelf, Solve, Supply, lock, prove};
use bench::assembly::Assembly;
use bench::belief::Believed;
use bench::chance::Chance;
use bench::remedy::Progress;
use fact::Told;
use serde::{Deserialize, Serialize};
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::job::{Job, JobClub};
use trade::model::PartKind;
use trade::part::Part;
use trade::places;
use trade::plan::{ClubPlan, Plan, PlannedPart};
use utoipa::ToSchema;

fact::facts! {
    /// How a change of shaft moves a club against its frequency line.
    pub enum LineChange: "planner_line_change" {
        /// Both shafts were measured.
        Moved {
            /// How far off with the new one.
            now_cpm: f64,
            /// How far off with the old one.
            was_cpm: f64,
        },
        /// Only the new one was measured.
        Found {
            /// How far off with it.
            now_cpm: f64,
        },
        /// Only the old one was measured.
        Lost {
            /// How far off with it.
            was_cpm: f64,
        },
    }
}

fact::facts! {
    /// A part that changes.
    pub enum ChangeOfPlan: "planner_change" {
        /// The new one is lighter.
        Lighter {
            /// Whose part changes.
            club: ClubName,
            /// What changes.
            kind: PartKind,
            /// Code now, two joined by ` + `; none where there is none.
            from: Option<String>,
            /// Code in the new plan.
            to: Option<String>,
            /// By how much.
            by_g: f64,
            /// What it does to the frequency, where that is known.
            line: Option<LineChange>,
            /// Chance of the club with the new plan.
            chance: Chance,
        },
        /// The new one is heavier, or weighs the same.
        Heavier {
            /// Whose part changes.
            club: ClubName,
            /// What changes.
            kind: PartKind,
            /// Code now, two joined by ` + `; none where there is none.
            from: Option<String>,
            /// Code in the new plan.
            to: Option<String>,
            /// By how much.
            by_g: f64,
            /// What it does to the frequency, where that is known.
            line: Option<LineChange>,
            /// Chance of the club with the new plan.
            chance: Chance,
        },
    }
}

/// One difference between the plan as it is and the new one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlanChange {
    /// Place in the tray.
    pub slot: i64,
    /// Number of the club.
    pub number: String,
    /// What changes.
    pub kind: PartKind,
    /// Codes now, joined by ` + `; empty for none.
    pub from: String,
    /// Codes in the new plan.
    pub to: String,
    /// The same with what it does to the club.
    #[serde(flatten)]
    pub fact: Told,
}

/// A plan made anew.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Replan {
    /// The new plan; clubs that are gripped keep theirs.
    pub plan: Plan,
    /// What changes, club by club.
    pub changes: Vec<PlanChange>,
    /// Places of the clubs with a doubted reading, which the plan does not count.
    #[serde(default)]
    pub doubted_slots: Vec<i64>,
    /// Clubs expected in tolerance as it is.
    pub inside_now: f64,
    /// Clubs expected in tolerance with the new plan.
    pub inside_then: f64,
}

/// Plans a job anew from what is free and what it holds, keeping what cannot be undone.
///
/// # Errors
/// As [`super::propose`]; figures that the belief cannot work with.
pub fn propose_again<'a>(
    believed: &Believed<'a>,
    supply: impl Into<Supply<'a>>,
    locks: &[Lock],
) -> Result<Replan, TradeError> {
    propose_again_with(believed, supply, locks, &mut prove)
}

/// As [`propose_again`], the choice made by `solve`.
///
/// # Errors
/// As [`propose_again`].
pub fn propose_again_with<'a>(
    believed: &Believed<'a>,
    supply: impl Into<Supply<'a>>,
    locks: &[Lock],
    solve: &mut Solve<'_>,
) -> Result<Replan, TradeError> {
    // A club that was there before keeps its head and what else is not worked on: it is no matter of stock.
    let whole = believed.assembly.job;
    let built =
        Job { clubs: whole.clubs.iter().filter(|club| club.work.is_none()).cloned().collect(), ..whole.clone() };
    if built.clubs.is_empty() {
        let clubs = whole.clubs.iter().map(|club| club.plan.clone()).collect();
        let plan = Plan { clubs, missing: Vec::new(), frequency: Vec::new(), cost: 0.0, bound: 0.0, proven: true };
        return Ok(Replan { plan, changes: Vec::new(), doubted_slots: Vec::new(), inside_now: 0.0, inside_then: 0.0 });
    }
    let assembly = Assembly { job: &built, ..believed.assembly };
    let mut shelf = Shelf::new(assembly, &[assembly.job], supply.into());
    for club in assembly.job.clubs.iter().filter(|club| Progress::of(believed, club).glued) {
        shelf.without_tips(club);
    }
    let mut ground = Ground::with_all(assembly, &shelf, locks, &mut Given::default())?;
    let mut inside_now = 0.0;
    for fitting in &mut ground.fittings {
        inside_now += keep_done(believed, fitting, &shelf)?.unwrap_or(0.0);
    }
    lock(&mut ground.fittings, &shelf, locks)?;
    let problem = ground.problem(&shelf)?;
    let solution = solve(&problem)?;
    let chances: Vec<f64> = solution
        .clubs
        .iter()
        .zip(&problem.clubs)
        .map(|(choice, need)| choice.as_ref().map_or(0.0, |c| need.loss.probability(c.deviation_points)))
        .collect();
    let inside_then = chances.iter().sum();
    let mut plan = ground.plan(&shelf, &solution)?;
    let mut changes = Vec::new();
    for ((club, new), chance) in assembly.job.clubs.iter().zip(plan.clubs.iter_mut()).zip(chances) {
        match (&club.plan, new) {
            (Some(old), Some(new)) => {
                if Progress::of(believed, club).glued {
                    *new = with_grip(old, new);
                } else {
                    new.extras.clone_from(&old.extras);
                }
                changes.extend(changes_of(club, old, new, chance));
            }
            // A club whose parts are all used up by what is done keeps its plan.
            (Some(old), none) => *none = Some(old.clone()),
            _ => {}
        }
    }
    let doubted = |club: &&JobClub| believed.standing().iter().any(|r| r.club == club.id && believed.is_doubted(&r.id));
    let doubted_slots = assembly.job.clubs.iter().filter(doubted).map(|club| club.slot).collect();
    let mut of_built = std::mem::take(&mut plan.clubs).into_iter();
    for club in &whole.clubs {
        plan.clubs.push(if club.work.is_some() { club.plan.clone() } else { of_built.next().flatten() });
    }
    Ok(Replan { plan, changes, doubted_slots, inside_now, inside_then })
}

/// Leaves a single candidate for what is done, moves the club by what its readings say of the planned parts, and lets a
/// part that is there already be taken before another. Gives the chance of the club as it is, by the same measure as
/// that of the new plan: with the readings and the choice of grip still to come. None where a planned part is not to be
/// had any more.
fn keep_done(believed: &Believed<'_>, fitting: &mut Fitting<'_>, shelf: &Shelf<'_>) -> Result<Option<f64>, TradeError> {
    let Some(plan) = &fitting.club.plan else { return Ok(None) };
    let need = &mut fitting.need;
    // A screw that is in the head stays: it is changed at the bench, where the readings are.
    need.tips.retain(|fit| fit.tip < shelf.tips.len());
    let index =
        |parts: &[&Part], kind| plan.part(kind).and_then(|planned| parts.iter().position(|p| p.id == planned.part));
    let (head, shaft) = (index(&shelf.heads, PartKind::Head), index(&shelf.shafts, PartKind::Shaft));
    let grip = index(&shelf.grips, PartKind::Grip);
    let adapter = index(&shelf.adapters, PartKind::Adapter);
    let by = |list: &[matching::Candidate], part: Option<usize>| {
        part.and_then(|part| list.iter().find(|c| c.part == part)).map(|c| c.points)
    };
    let library = believed.assembly.library;
    let tip_points = places::tip_weight_points(library, plan, fitting.grip_model.cap_mm)?;
    // A club that takes none lacks none.
    let of_adapter = need.adapters.as_deref().map_or(Some(0.0), |list| by(list, adapter));
    let planned = [by(&need.heads, head), by(&need.shafts, shaft), by(&need.grips, grip), of_adapter];
    let planned: Option<f64> = planned.into_iter().sum();
    let mut chance = None;
    if let (Some(parts), Some(finish)) = (planned, believed.finish(&fitting.club.id)?) {
        let as_planned = need.base_points + parts + tip_points;
        need.base_points += finish.deviation_points - as_planned;
        chance = Some(need.loss.probability(finish.deviation_points));
    }
    let changed = believed.assembly.shop.plan_weights.changed_part;
    let lists = [(&mut need.heads, head), (&mut need.shafts, shaft), (&mut need.grips, grip)];
    for (list, mine) in lists.into_iter().chain(need.adapters.as_mut().map(|list| (list, adapter))) {
        for other in list.iter_mut().filter(|c| Some(c.part) != mine) {
            other.extra_cost += changed;
        }
    }
    let progress = Progress::of(believed, fitting.club);
    let only = |list: &mut Vec<matching::Candidate>, part: Option<usize>| {
        if let Some(part) = part {
            list.retain(|c| c.part == part);
        }
    };
    if progress.cut || progress.glued {
        only(&mut need.shafts, shaft);
    }
    if progress.glued {
        only(&mut need.heads, head);
        need.adapters.iter_mut().for_each(|list| only(list, adapter));
        // What is in the tip stays there: it goes into what is not chosen.
        need.base_points += tip_points;
        need.tips.clear();
    }
    if progress.gripped {
        only(&mut need.grips, grip);
    }
    Ok(chance)
}

/// A glued club: all as it is but the grip.
fn with_grip(old: &ClubPlan, new: &ClubPlan) -> ClubPlan {
    let mut kept = old.clone();
    if let Some(grip) = new.part(PartKind::Grip) {
        for part in kept.parts.iter_mut().filter(|p| p.kind == PartKind::Grip) {
            part.clone_from(grip);
        }
    }
    kept
}

/// How far both shafts are off their frequency line, where that is known.
fn line_change(old: &ClubPlan, new: &ClubPlan) -> Option<LineChange> {
    let off = |plan: &ClubPlan| plan.frequency.and_then(|f| f.off_cpm).map(f64::abs);
    match (off(old), off(new)) {
        (Some(was_cpm), Some(now_cpm)) => Some(LineChange::Moved { now_cpm, was_cpm }),
        (None, Some(now_cpm)) => Some(LineChange::Found { now_cpm }),
        (Some(was_cpm), None) => Some(LineChange::Lost { was_cpm }),
        (None, None) => None,
    }
}

fn changes_of(club: &JobClub, old: &ClubPlan, new: &ClubPlan, chance: f64) -> Vec<PlanChange> {
    [PartKind::Head, PartKind::Shaft, PartKind::Grip, PartKind::Adapter, PartKind::TipWeight]
        .into_iter()
        .filter_map(|kind| {
            let of = |plan: &ClubPlan| -> Vec<PlannedPart> {
                plan.parts.iter().filter(|p| p.kind == kind).cloned().collect()
            };
            let (from, to) = (of(old), of(new));
            let codes = |parts: &[PlannedPart]| parts.iter().map(|p| p.code.as_str()).collect::<Vec<_>>().join(" + ");
            if codes(&from) == codes(&to) {
                return None;
            }
            let grams = |parts: &[PlannedPart]| parts.iter().map(|p| p.mass_g).sum::<f64>();
            let more = grams(&to) - grams(&from);
            let line = if kind == PartKind::Shaft { line_change(old, new) } else { None };
            let coded = |parts: &[PlannedPart]| (!parts.is_empty()).then(|| codes(parts));
            let (club_name, chance, by_g) = (club.target.name(), Chance::of(chance), more.abs());
            let (was, now) = (coded(&from), coded(&to));
            let fact = if more < 0.0 {
                ChangeOfPlan::Lighter { club: club_name, kind, from: was, to: now, by_g, line, chance }
            } else {
                ChangeOfPlan::Heavier { club: club_name, kind, from: was, to: now, by_g, line, chance }
            };
            Some(PlanChange {
                slot: club.slot,
                number: club.target.number.clone(),
                kind,
                from: codes(&from),
                to: codes(&to),
                fact: fact.into(),
            })
        })
        .collect()
}
