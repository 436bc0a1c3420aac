//! After the cure: which grip for which club, all clubs of the set that wait for theirs together.

use super::{Action, Case, Deed, Progress, Remedy, Spare};
use crate::belief::{Believed, Finish};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::part_codes::PartCodes;
use utoipa::ToSchema;

/// What a gram of difference between two equally good grips costs, in chances: it only breaks ties.
const TIE_PER_G: f64 = 1e-5;

/// A grip that a club could get.
#[derive(Debug, Clone)]
pub(crate) struct PoolGrip {
    pub code: String,
    pub mass_g: f64,
    /// The club that it is held for; none where it is free.
    pub held_for: Option<ClubId>,
    /// Points that it takes off the deviation, against the planned grip.
    pub takes_off_points: f64,
}

pub(crate) struct Pool {
    pub grips: Vec<PoolGrip>,
    /// Other clubs that wait for a grip of the same model.
    pub rivals: usize,
}

/// The grips that a club could get: those free and its own. Each single one is weighed; bulk that is only counted says
/// nothing of the piece that would be taken.
pub(crate) fn pool_of(believed: &Believed<'_>, club: &JobClub, spares: &[Spare<'_>]) -> Result<Pool, TradeError> {
    let model = believed.assembly.library.grip(&club.target.grip_model)?;
    let per_g = believed.assembly.effect_per_g(club, model.centre_mm)?;
    let now_g = club.plan.as_ref().and_then(|p| p.part(PartKind::Grip)).map_or(model.mass_g, |p| p.mass_g);
    let mut grips = Vec::new();
    if let Some(own) = club.plan.as_ref().and_then(|p| p.part(PartKind::Grip)) {
        grips.push(PoolGrip {
            code: own.code.clone(),
            mass_g: own.mass_g,
            held_for: Some(club.id.clone()),
            takes_off_points: 0.0,
        });
    }
    for spare in spares.iter().filter(|s| s.part.kind == PartKind::Grip && s.part.model == model.code) {
        if spare.part.is_free() && spare.part.count.is_none() && spare.part.mass_g.is_some() {
            grips.push(PoolGrip {
                code: spare.part.code.clone(),
                mass_g: spare.mass_g,
                held_for: None,
                takes_off_points: -per_g * (spare.mass_g - now_g),
            });
        }
    }
    let rivals = waiting(believed, &model.code).into_iter().filter(|c| c.id != club.id).count();
    Ok(Pool { grips, rivals })
}

/// Clubs of the job that wait for a grip of this model.
fn waiting<'a>(believed: &Believed<'a>, grip_model: &str) -> Vec<&'a JobClub> {
    let job = believed.assembly.job;
    job.clubs
        .iter()
        .filter(|c| c.plan.is_some() && c.target.grip_model == grip_model)
        .filter(|c| !Progress::of(believed, c).gripped)
        .collect()
}

/// The grip that a club should get when the whole set is looked at.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct GripPick {
    /// Identity of the club.
    pub club: ClubId,
    /// Place in the tray.
    pub slot: i64,
    /// Code of the grip.
    pub code: String,
    /// What that grip weighs.
    pub mass_g: f64,
    /// Whether it is another than the planned one.
    pub change: bool,
    /// Where the club would finish with it.
    pub finish: Finish,
}

/// Grips for every club that has been read after the cure and waits for one: the choice with the most clubs expected
/// in tolerance. Clubs that are not yet read keep their planned grips.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn assign_grips(believed: &Believed<'_>, spares: &[Spare<'_>]) -> Result<Vec<GripPick>, TradeError> {
    let mut models: BTreeMap<&str, ()> = BTreeMap::new();
    for club in &believed.assembly.job.clubs {
        models.insert(club.target.grip_model.as_str(), ());
    }
    let mut picks = Vec::new();
    for model in models.into_keys() {
        let Some(table) = Table::new(believed, model, spares, None)? else { continue };
        for (row, column) in table.best(None)?.0.into_iter().enumerate() {
            let (club, finish) = &table.clubs[row];
            let grip = &table.grips[column];
            let planned_g = club.plan.as_ref().and_then(|p| p.part(PartKind::Grip)).map_or(grip.mass_g, |p| p.mass_g);
            picks.push(GripPick {
                club: club.id.clone(),
                slot: club.slot,
                code: grip.code.clone(),
                mass_g: grip.mass_g,
                change: grip.held_for.as_ref() != Some(&club.id),
                finish: finish.moved((grip.mass_g - planned_g) * table.per_g[row]),
            });
        }
    }
    picks.sort_by_key(|p| p.slot);
    Ok(picks)
}

/// Chances of every waiting club with every grip.
struct Table<'a> {
    clubs: Vec<(&'a JobClub, Finish)>,
    grips: Vec<PoolGrip>,
    /// What a gram of grip does to each club, points.
    per_g: Vec<f64>,
    chance: Vec<Vec<f64>>,
    cost: Vec<Vec<f64>>,
}

impl<'a> Table<'a> {
    /// None where no club waits. `with` is taken in even if it is not read after the cure yet.
    fn new(
        believed: &Believed<'a>,
        grip_model: &str,
        spares: &[Spare<'_>],
        with: Option<&ClubId>,
    ) -> Result<Option<Self>, TradeError> {
        let model = believed.assembly.library.grip(grip_model)?;
        let (mut clubs, mut per_g) = (Vec::new(), Vec::new());
        for club in waiting(believed, grip_model) {
            let ready = Progress::of(believed, club).cure_read || with == Some(&club.id);
            if let (true, Some(finish)) = (ready, believed.finish(&club.id)?) {
                clubs.push((club, finish));
                per_g.push(believed.assembly.effect_per_g(club, model.centre_mm)?);
            }
        }
        let mut grips: Vec<PoolGrip> = clubs
            .iter()
            .filter_map(|(club, _)| {
                let own = club.plan.as_ref()?.part(PartKind::Grip)?;
                Some(PoolGrip {
                    code: own.code.clone(),
                    mass_g: own.mass_g,
                    held_for: Some(club.id.clone()),
                    takes_off_points: 0.0,
                })
            })
            .collect();
        if grips.len() < clubs.len() || clubs.is_empty() {
            return Ok(None);
        }
        if let Some((first, _)) = clubs.first() {
            grips.extend(pool_of(believed, first, spares)?.grips.into_iter().filter(|g| g.held_for.is_none()));
        }
        let planned_g =
            |club: &JobClub| club.plan.as_ref().and_then(|p| p.part(PartKind::Grip)).map_or(model.mass_g, |p| p.mass_g);
        let chance: Vec<Vec<f64>> = clubs
            .iter()
            .zip(&per_g)
            .map(|((club, finish), per_g)| {
                let now_g = planned_g(club);
                grips.iter().map(|g| finish.moved((g.mass_g - now_g) * per_g).chance).collect()
            })
            .collect();
        let cost = chance
            .iter()
            .zip(&clubs)
            .map(|(row, (club, _))| {
                let now_g = planned_g(club);
                row.iter().zip(&grips).map(|(p, g)| 1.0 - p + TIE_PER_G * (g.mass_g - now_g).abs()).collect()
            })
            .collect();
        Ok(Some(Self { clubs, grips, per_g, chance, cost }))
    }

    /// The best choice for all clubs and the clubs expected in tolerance; with one grip taken out of the box for one
    /// club, if asked.
    fn best(&self, fixed: Option<(usize, usize)>) -> Result<(Vec<usize>, f64), TradeError> {
        let rows: Vec<Vec<f64>> = self
            .cost
            .iter()
            .enumerate()
            .map(|(r, row)| {
                row.iter()
                    .enumerate()
                    .map(|(k, cost)| match fixed {
                        Some((club, grip)) if (r == club) != (k == grip) => f64::INFINITY,
                        _ => *cost,
                    })
                    .collect()
            })
            .collect();
        let chosen = matching::assign(&rows)?;
        // There are at least as many grips as clubs, so each has one.
        let columns: Vec<usize> = chosen.into_iter().enumerate().map(|(r, k)| k.unwrap_or(r)).collect();
        let inside = columns.iter().enumerate().map(|(r, k)| self.chance[r][*k]).sum();
        Ok((columns, inside))
    }
}

pub(crate) fn remedies(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    let target = &case.club.target;
    let Some(table) = Table::new(case.believed, &target.grip_model, case.spares, Some(&case.club.id))? else {
        return Ok(Vec::new());
    };
    let Some(row) = table.clubs.iter().position(|(c, _)| c.id == case.club.id) else { return Ok(Vec::new()) };
    let model = case.believed.assembly.library.grip(&target.grip_model)?;
    let now_g = case.plan.part(PartKind::Grip).map_or(model.mass_g, |p| p.mass_g);
    let mut found = Vec::new();
    for (k, grip) in table.grips.iter().enumerate().filter(|(_, g)| g.held_for.as_ref() != Some(&case.club.id)) {
        let change = case.change(grip.mass_g - now_g, model.centre_mm)?;
        let from = grip.held_for.as_ref().and_then(|id| case.believed.assembly.job.club(id));
        let (part, mass_g) = (grip.code.clone(), grip.mass_g);
        let deed = match from {
            Some(other) => Deed::GripOfOther { part, mass_g, club: other.target.name() },
            None => Deed::Grip { part, mass_g },
        };
        let part = Some((PartKind::Grip, PartCodes::one(&grip.code)));
        let mut remedy = case.remedy(Action::Grip, part, change, None, deed);
        remedy.set_inside = Some(table.best(Some((row, k)))?.1);
        found.push(remedy);
    }
    Ok(found)
}

/// Clubs of the set that would be in tolerance if this one kept its planned grip, for actions that take no grip.
pub(crate) fn others_inside(case: &Case<'_>) -> Result<Option<f64>, TradeError> {
    let target = &case.club.target;
    let Some(table) = Table::new(case.believed, &target.grip_model, case.spares, Some(&case.club.id))? else {
        return Ok(None);
    };
    let row = table.clubs.iter().position(|(c, _)| c.id == case.club.id);
    let own = table.grips.iter().position(|g| g.held_for.as_ref() == Some(&case.club.id));
    let (Some(row), Some(own)) = (row, own) else { return Ok(None) };
    let (_, inside) = table.best(Some((row, own)))?;
    Ok(Some(inside - table.chance[row][own]))
}
