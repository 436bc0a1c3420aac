//! What is to be fitted in each club of a set now: a weight into the tip, a grip to hang out, something added to a finished
//! club, or nothing; and the list to fetch it by.
//!
//! A part is given out once: weights by how many lie in the tray, grips by the choice for the whole set.

use crate::belief::{Believed, Finish};
use crate::club_state::{ClubState, Look};
use crate::remedy::{GripPick, Progress, Ranking, Remedy, Spare, assign_grips, ranking};
use crate::work_order::{GripOrder, grips_in_turn};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::action::Action;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::closed_list;
use trade::model::PartKind;
use trade::part_codes::PartCodes;
use utoipa::ToSchema;

closed_list! {
    /// What is still to be fitted in a club.
    FitStage {
        /// The weight in the tip: its joint is not glued.
        Tip = "tip";
        /// The grip: it is cured and read, and waits for it.
        Grip = "grip";
        /// Something added: the grip is on.
        Added = "added";
        /// Nothing yet: its joint cures, or the reading after the cure is still to come.
        Waits = "waits";
    }
}

/// A club of the set with what is to be fitted in it.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct FitRow {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Number or letter of the club: `6`, `PW`.
    pub number: String,
    /// What is still to be fitted.
    pub stage: FitStage,
    /// What is planned there now: weights in the tip, the grip; none where nothing is.
    pub now: PartCodes,
    /// What that weighs.
    pub now_g: f64,
    /// Where the club finishes as it is.
    pub finish: Finish,
    /// Chance of finishing in tolerance as it is, with the choices still to come.
    pub chance: f64,
    /// What is better; none where nothing helps, or while a reading of the club is doubted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub advised: Option<Advised>,
}

/// What is to be fitted in a club.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Advised {
    /// What is done.
    pub action: Action,
    /// Which part of the plan changes; none for what is added to it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kind: Option<PartKind>,
    /// Code of the part to take, or of two tip weights; none where the tip is left empty or no part is needed.
    pub code: PartCodes,
    /// What is fitted then, all told: the weight in the tip, the grip, what is added.
    pub mass_g: f64,
    /// Grams more (or less) on the club than now.
    pub more_g: f64,
    /// Where the club finishes with it.
    pub finish: Finish,
    /// Chance of finishing in tolerance with it, with the choices still to come.
    pub chance_at_end: f64,
    /// Another grip goes on and is read first; this one may change by what it tells.
    pub waits: bool,
}

/// Parts to fetch from one place.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Fetch {
    /// Where they lie; empty where nobody wrote it down.
    pub place: String,
    /// What they are.
    pub kind: PartKind,
    /// Code of the part, or of the bulk.
    pub code: String,
    /// What one weighs.
    pub mass_g: f64,
    /// How many.
    pub count: i64,
    /// Numbers of the clubs that they are for, in the order of the tray.
    pub clubs: Vec<String>,
}

/// What is to be fitted in a set.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SetFit {
    /// The clubs that have a plan, in the order of the tray.
    pub rows: Vec<FitRow>,
    /// What to fetch for the clubs whose tip or grip is still to be fitted, as it is once all that is advised is taken; by
    /// place.
    pub fetch: Vec<Fetch>,
}

impl SetFit {
    /// The rows whose advice is taken when all is taken: parts of the plan that are to be changed now.
    pub fn to_take(&self) -> impl Iterator<Item = (&FitRow, &Advised, PartKind)> {
        self.rows.iter().filter_map(|row| {
            let advised = row.advised.as_ref().filter(|advised| !advised.waits)?;
            Some((row, advised, advised.kind?))
        })
    }
}

/// What is to be fitted in each club of a set now.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn set_fit(believed: &Believed<'_>, states: &[ClubState], spares: &[Spare<'_>]) -> Result<SetFit, TradeError> {
    let job = believed.assembly.job;
    let grips = assign_grips(believed, spares)?;
    let first = grips_in_turn(believed, spares)?.filter(|turns| turns.order != GripOrder::AtOnce);
    let first = first.and_then(|turns| turns.next_slot);
    let mut rows = Vec::new();
    let mut weights: Vec<(usize, Vec<Remedy>)> = Vec::new();
    for state in states {
        let (Some(club), Some(finish)) = (job.club(&state.club), state.finish) else { continue };
        let Some(plan) = &club.plan else { continue };
        let stage = stage(believed, club);
        let Ranking { remedies, chance_ahead } = ranking(believed, state, spares)?;
        let chance = chance_ahead.unwrap_or(finish.chance);
        let kind = if stage == FitStage::Tip { PartKind::TipWeight } else { PartKind::Grip };
        let now: Vec<_> = plan.parts.iter().filter(|p| p.kind == kind).collect();
        let mut row = FitRow {
            club: club.id.clone(),
            slot: club.slot,
            number: club.target.number.clone(),
            stage,
            now: now.iter().map(|p| p.code.clone()).collect(),
            // The sum of nothing is a negative zero.
            now_g: now.iter().map(|p| p.mass_g).sum::<f64>() + 0.0,
            finish,
            chance,
            advised: None,
        };
        // While a reading is in doubt, what it would take is not known.
        if state.look != Look::Doubted {
            match stage {
                FitStage::Tip => {
                    let off = finish.deviation_points.abs();
                    // A weight that puts a club off for a grip to bring it back counts on a grip that the other clubs of the
                    // set may want as well.
                    let nearer = |r: &Remedy| r.finish.deviation_points.abs() < off;
                    let tips = remedies.into_iter().filter(|r| r.action == Action::TipWeight && nearer(r)).collect();
                    weights.push((rows.len(), tips));
                }
                FitStage::Grip => {
                    let pick = grips.iter().find(|pick| pick.club == club.id && pick.change);
                    row.advised = pick.map(|pick| of_grip(&row, pick, first.is_some_and(|slot| slot != club.slot)));
                }
                FitStage::Added => {
                    let added = remedies.iter().find(|r| matches!(r.action, Action::LeadTape | Action::Counterweight));
                    row.advised = added.map(|remedy| of_remedy(remedy, remedy.more_g));
                }
                FitStage::Waits => {}
            }
        }
        rows.push(row);
    }
    give_out(&mut rows, weights, spares);
    let fetch = fetch(believed, &rows, spares);
    Ok(SetFit { rows, fetch })
}

/// What is still to be fitted in a club.
fn stage(believed: &Believed<'_>, club: &JobClub) -> FitStage {
    let progress = Progress::of(believed, club);
    let glues = believed.assembly.job.steps.iter().any(|step| step.glues);
    if progress.gripped {
        FitStage::Added
    } else if !progress.glued && glues {
        FitStage::Tip
    } else if progress.cure_read {
        FitStage::Grip
    } else {
        FitStage::Waits
    }
}

fn of_remedy(remedy: &Remedy, mass_g: f64) -> Advised {
    Advised {
        action: remedy.action,
        kind: remedy.kind,
        code: remedy.code.clone(),
        mass_g,
        more_g: remedy.more_g,
        finish: remedy.finish,
        chance_at_end: remedy.chance_at_end,
        waits: false,
    }
}

fn of_grip(row: &FitRow, pick: &GripPick, waits: bool) -> Advised {
    Advised {
        action: Action::Grip,
        kind: Some(PartKind::Grip),
        code: PartCodes::one(&pick.code),
        mass_g: pick.mass_g,
        more_g: pick.mass_g - row.now_g,
        finish: pick.finish,
        chance_at_end: pick.finish.chance,
        waits,
    }
}

/// Gives the weights of the tray out, to the club first that gains most by its best: each takes the best of which enough are
/// left.
fn give_out(rows: &mut [FitRow], mut weights: Vec<(usize, Vec<Remedy>)>, spares: &[Spare<'_>]) {
    let mut left: BTreeMap<&str, i64> = BTreeMap::new();
    for spare in spares.iter().filter(|s| s.part.kind == PartKind::TipWeight && s.part.is_free()) {
        left.insert(&spare.part.code, spare.part.count.unwrap_or(1));
    }
    let gain = |(row, tips): &(usize, Vec<Remedy>)| tips.first().map_or(0.0, |r| r.chance_at_end - rows[*row].chance);
    weights.sort_by(|a, b| gain(b).total_cmp(&gain(a)).then(a.0.cmp(&b.0)));
    for (row, tips) in weights {
        let enough = |remedy: &&Remedy| {
            remedy.code.iter().all(|code| {
                let wanted = remedy.code.iter().filter(|other| *other == code).count() as i64;
                left.get(code).is_some_and(|left| *left >= wanted)
            })
        };
        let Some(remedy) = tips.iter().find(enough) else { continue };
        for code in remedy.code.iter() {
            if let Some(left) = left.get_mut(code) {
                *left -= 1;
            }
        }
        rows[row].advised = Some(of_remedy(remedy, rows[row].now_g + remedy.more_g));
    }
}

/// The clubs whose planned grip is taken for another club while they take none themselves, each with a grip that is given up
/// for one: the two change places, so that no club is left without. Clubs by their places in the tray, grips by their codes;
/// `planned` is all that the plan holds, `taken` what goes on now.
#[must_use]
pub fn changing_places<'a>(planned: &[(i64, &'a str)], taken: &[(i64, &str)]) -> Vec<(i64, &'a str)> {
    let takes = |slot: i64| taken.iter().any(|(club, _)| *club == slot);
    let goes_on = |code: &str| taken.iter().any(|(_, grip)| *grip == code);
    let given_up = planned.iter().filter(|(slot, code)| takes(*slot) && !goes_on(code)).map(|(_, code)| *code);
    let left = planned.iter().filter(|(slot, code)| !takes(*slot) && goes_on(code)).map(|(slot, _)| *slot);
    left.zip(given_up).collect()
}

/// What to fetch for the clubs whose tip or grip is still to be fitted, by place.
fn fetch(believed: &Believed<'_>, rows: &[FitRow], spares: &[Spare<'_>]) -> Vec<Fetch> {
    let planned = || believed.assembly.job.clubs.iter().filter_map(|c| c.plan.as_ref()).flat_map(|p| &p.parts);
    let grips: Vec<_> = rows.iter().filter(|row| row.stage == FitStage::Grip).collect();
    let now: Vec<_> = grips.iter().filter_map(|row| Some((row.slot, row.now.iter().next()?))).collect();
    let taken: Vec<_> = grips
        .iter()
        .filter_map(|row| {
            let advised = row.advised.as_ref().filter(|advised| !advised.waits)?;
            Some((row.slot, advised.code.iter().next()?))
        })
        .collect();
    let moved = changing_places(&now, &taken);
    let mut found: Vec<Fetch> = Vec::new();
    for row in rows.iter().filter(|row| matches!(row.stage, FitStage::Tip | FitStage::Grip)) {
        let advised = row.advised.as_ref().filter(|advised| !advised.waits);
        let moved = moved.iter().find(|(slot, _)| *slot == row.slot).map(|(_, code)| PartCodes::one(*code));
        let holds = moved.as_ref().unwrap_or(&row.now);
        for code in advised.map_or(holds, |advised| &advised.code).iter() {
            let spare = spares.iter().find(|s| s.part.code == code);
            let of_spare = spare.map(|s| (s.part.place.clone(), s.part.kind, s.mass_g));
            let of_plan = || planned().find(|p| p.code == code).map(|p| (p.place.clone(), p.kind, p.mass_g));
            let Some((place, kind, mass_g)) = of_spare.or_else(of_plan) else { continue };
            if let Some(there) = found.iter_mut().find(|fetch| fetch.code == code) {
                there.count += 1;
                if there.clubs.last() != Some(&row.number) {
                    there.clubs.push(row.number.clone());
                }
            } else {
                let (code, clubs) = (code.to_owned(), vec![row.number.clone()]);
                found.push(Fetch { place, kind, code, mass_g, count: 1, clubs });
            }
        }
    }
    found.sort_by(|a, b| a.place.cmp(&b.place).then(a.kind.cmp(&b.kind)).then(a.mass_g.total_cmp(&b.mass_g)));
    found
}
