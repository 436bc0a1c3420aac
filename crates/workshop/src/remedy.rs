//! What can still be done about a club that will not finish where it should, from what is really there.
//!
//! Two choices are weighed here, those that every set meets: which tip weight before the joint is glued, and which grip
//! after it has cured. Each is judged by the chance of finishing in tolerance, then by grams.

use crate::belief::{BAND_95, Believed, Finish, points_per_g};
use crate::bench::{ClubState, StepStatus, chance_words};
use crate::error::WorkshopError;
use crate::job::JobClub;
use crate::kind::Role;
use crate::model::PartKind;
use crate::part::Part;
use crate::plan::ClubPlan;
use estimation::normal;
use quantity::{Balance, decimal};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A free part that could take the place of a planned one.
#[derive(Debug, Clone, Copy)]
pub struct Spare<'a> {
    /// The part, or the bulk it would come from.
    pub part: &'a Part,
    /// The mass to count with: its own, or its model's.
    pub mass_g: f64,
}

/// One thing that can still be done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Remedy {
    /// What is changed.
    pub kind: PartKind,
    /// Code of the part to take; empty where a tip weight is left out.
    pub code: String,
    /// Grams more (or less) on the club than now.
    pub more_g: f64,
    /// Where the club would finish.
    pub finish: Finish,
    /// In a sentence.
    pub words: String,
}

/// What can still be done at this point of the club, the best first; empty where nothing is open.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn remedies(
    believed: &Believed<'_>,
    state: &ClubState,
    spares: &[Spare<'_>],
) -> Result<Vec<Remedy>, WorkshopError> {
    let job = believed.assembly.job;
    let (Some(club), Some(finish)) = (job.club(&state.club), &state.finish) else { return Ok(Vec::new()) };
    let Some(plan) = &club.plan else { return Ok(Vec::new()) };
    let done = |pick: &dyn Fn(&crate::step::Step) -> bool| {
        job.steps
            .iter()
            .zip(&state.steps)
            .any(|(step, s)| pick(step) && matches!(s.status, StepStatus::Done | StepStatus::Begun))
    };
    let glued = done(&|step| step.glues);
    let gripped = done(&|step| step.on.contains(&Role::Grip));
    let mut found = if !glued && job.steps.iter().any(|s| s.glues) {
        tip_weights(believed, club, plan, finish, spares)?
    } else if !gripped {
        grips(believed, club, plan, finish, spares)?
    } else {
        Vec::new()
    };
    found.sort_by(|a, b| {
        let rounded = |r: &Remedy| (r.finish.chance * 200.0).round();
        rounded(b).total_cmp(&rounded(a)).then(a.more_g.abs().total_cmp(&b.more_g.abs())).then(a.code.cmp(&b.code))
    });
    Ok(found)
}

fn tip_weights(
    believed: &Believed<'_>,
    club: &JobClub,
    plan: &ClubPlan,
    finish: &Finish,
    spares: &[Spare<'_>],
) -> Result<Vec<Remedy>, WorkshopError> {
    let assembly = believed.assembly;
    let cap_mm = assembly.library.grip(&club.target.grip_model)?.cap_mm;
    let tip_diameter_mm = assembly.library.shaft(&club.target.shaft_model)?.tip_diameter_mm;
    let now_g = plan.mass_g(Role::TipWeight);
    let mut found = Vec::new();
    for spare in spares.iter().filter(|s| s.part.kind == PartKind::TipWeight && s.part.is_free()) {
        let model = assembly.library.tip_weight(&spare.part.model)?;
        let fits = (model.tip_min_mm..=model.tip_max_mm).contains(&tip_diameter_mm);
        if !fits || spare.mass_g > assembly.shop.tip_weight_cap_g || (spare.mass_g - now_g).abs() < 0.05 {
            continue;
        }
        let per_g = points_per_g(plan.cut_shaft_mm - model.length_mm / 2.0 + cap_mm);
        let more_g = spare.mass_g - now_g;
        let after = moved(finish, more_g * per_g, finish.band_points);
        found.push(Remedy {
            kind: PartKind::TipWeight,
            code: spare.part.code.clone(),
            more_g,
            words: format!(
                "{} g in the tip in place of {}: finish {}, {}.",
                decimal(spare.mass_g, 1),
                if now_g > 0.0 { format!("{} g", decimal(now_g, 1)) } else { "none".into() },
                Balance::from_points(after.balance_points).letter(1),
                chance_words(after.chance)
            ),
            finish: after,
        });
    }
    if now_g > 0.0 {
        let per_g = points_per_g(plan.cut_shaft_mm + cap_mm);
        let after = moved(finish, -now_g * per_g, finish.band_points);
        found.push(Remedy {
            kind: PartKind::TipWeight,
            code: String::new(),
            more_g: -now_g,
            words: format!(
                "No weight in the tip: finish {}, {}.",
                Balance::from_points(after.balance_points).letter(1),
                chance_words(after.chance)
            ),
            finish: after,
        });
    }
    Ok(found)
}

fn grips(
    believed: &Believed<'_>,
    club: &JobClub,
    plan: &ClubPlan,
    finish: &Finish,
    spares: &[Spare<'_>],
) -> Result<Vec<Remedy>, WorkshopError> {
    let model = believed.assembly.library.grip(&club.target.grip_model)?;
    let per_g = points_per_g(model.centre_mm);
    let now = plan.part(PartKind::Grip);
    let now_g = plan.mass_g(Role::Grip);
    Ok(spares
        .iter()
        .filter(|s| s.part.kind == PartKind::Grip && s.part.model == model.code && s.part.is_free())
        .filter(|s| s.part.count.is_none() && now.is_none_or(|p| p.code != s.part.code))
        .map(|spare| {
            let more_g = spare.mass_g - now_g;
            let after = moved(finish, more_g * per_g, finish.band_points);
            Remedy {
                kind: PartKind::Grip,
                code: spare.part.code.clone(),
                more_g,
                words: format!(
                    "Take grip {} ({} g): finish {}, {}.",
                    spare.part.code,
                    decimal(spare.mass_g, 1),
                    Balance::from_points(after.balance_points).letter(1),
                    chance_words(after.chance)
                ),
                finish: after,
            }
        })
        .collect())
}

/// A finish moved by a known amount.
fn moved(finish: &Finish, by_points: f64, band_points: f64) -> Finish {
    let deviation = finish.deviation_points + by_points;
    let tolerance = finish.tolerance_points;
    Finish {
        balance_points: finish.balance_points + by_points,
        band_points,
        own_band_points: finish.own_band_points,
        chance: normal::between(-tolerance, tolerance, deviation, band_points / BAND_95),
        deviation_points: deviation,
        tolerance_points: tolerance,
    }
}
