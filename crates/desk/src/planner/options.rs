//! A few real plans to choose from: little in the tips or close to the target, equal swing weight or equal inertia.

use super::{Given, Ground, Lock, Shelf, Supply, prove};
use crate::mass_model::{Ingredients, MassModel};
use bench::assembly::Assembly;
use matching::{MatchError, SetProblem, SetSolution};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::job::Job;
use trade::kind::closed_list;
use trade::plan::Plan;
use utoipa::ToSchema;

closed_list! {
    /// What the clubs of a set have in common.
    Law {
        /// The swing weights of the sheet.
        SwingWeight = "swing_weight" was "balance";
        /// The moment of inertia about the butt of the set's middle club.
        Inertia = "inertia";
    }
}

/// One plan to choose from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlanOption {
    /// What the clubs have in common.
    pub law: Law,
    /// How dear tip weight was counted against the usual.
    pub tip_factor: f64,
    /// Tip weight in the whole set.
    pub tip_g: f64,
    /// Greatest planned deviation from what the law asks of a club.
    pub worst_points: f64,
    /// Greatest distance of a shaft from its frequency line, as it comes out in the club; none where no shaft of the
    /// plan was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worst_cpm: Option<f64>,
    /// Clubs expected in tolerance, with the readings and the choice of grips still to come.
    pub inside: f64,
    /// Swing weight asked of each club, in the order of the job; the sheet's own under its law.
    pub targets_points: Vec<f64>,
    /// Which parts each club gets.
    pub plan: Plan,
}

/// Plans under either law, for tip weight cheap to dear: those that differ in grams or in tightness, five at most. One
/// that fails its check is left out.
///
/// # Errors
/// As [`super::propose`]; a failed check only where there is no other plan.
pub fn options<'a>(
    assembly: Assembly<'a>,
    supply: impl Into<Supply<'a>>,
    locks: &[Lock],
) -> Result<Vec<PlanOption>, TradeError> {
    options_with(assembly, supply, locks, &mut |problem| prove(problem).map(Some))
}

/// What plans one set of several; none where there is no more time.
pub type SolveMore<'s> = dyn FnMut(&SetProblem) -> Result<Option<SetSolution>, MatchError> + 's;

/// As [`options`], each choice made by `solve`; when it makes none, those made so far are given.
///
/// # Errors
/// As [`options`].
pub fn options_with<'a>(
    assembly: Assembly<'a>,
    supply: impl Into<Supply<'a>>,
    locks: &[Lock],
    solve: &mut SolveMore<'_>,
) -> Result<Vec<PlanOption>, TradeError> {
    const MOST: usize = 5;
    let supply = supply.into();
    let mut found = Vec::new();
    let mut failed = None;
    let inertia = equal_inertia(assembly)?;
    for law in [Law::SwingWeight, Law::Inertia] {
        // Of equal swing weight the whole trade-off, of equal inertia the plan at the usual price only.
        let (job, factors) = match (law, &inertia) {
            (Law::SwingWeight, _) => (assembly.job, &matching::TRADE_OFF[..]),
            (Law::Inertia, Some(job)) => (job, &[1.0][..]),
            (Law::Inertia, None) => continue,
        };
        let under = Assembly { job, ..assembly };
        let shelf = Shelf::new(under, &[job], supply);
        let ground = Ground::new(under, &shelf, locks, &mut Given::default())?;
        let problem = ground.problem(&shelf)?;
        let mut alternatives = match matching::alternatives(&problem, factors, solve) {
            Ok(alternatives) => alternatives,
            Err(fault @ MatchError::CheckFailed(_)) => {
                failed.get_or_insert(fault);
                continue;
            }
            Err(error) => return Err(error.into()),
        };
        while law == Law::SwingWeight && alternatives.len() + usize::from(inertia.is_some()) > MOST {
            // The other law has its place; of the trade-off the plan farthest from the usual price goes first.
            let odd = |i: usize| alternatives[i].tip_factor.ln().abs();
            let worst = (0..alternatives.len()).max_by(|a, b| odd(*a).total_cmp(&odd(*b))).unwrap_or_default();
            alternatives.remove(worst);
        }
        for alternative in alternatives {
            let inside = alternative
                .plan
                .clubs
                .iter()
                .zip(&problem.clubs)
                .filter_map(|(choice, need)| choice.as_ref().map(|c| need.loss.probability(c.deviation_points)))
                .sum();
            let plan = ground.plan(&shelf, &alternative.plan)?;
            let off_cpm = plan.clubs.iter().flatten().filter_map(|c| c.frequency?.off_cpm);
            found.push(PlanOption {
                law,
                tip_factor: alternative.tip_factor,
                tip_g: alternative.tip_g,
                worst_points: alternative.worst_points,
                worst_cpm: off_cpm.map(f64::abs).reduce(f64::max),
                inside,
                targets_points: job.clubs.iter().map(|c| c.target.swing_weight_points).collect(),
                plan,
            });
        }
    }
    match failed {
        Some(fault) if found.is_empty() => Err(fault.into()),
        _ => Ok(found),
    }
}

/// The job with swing weights that give every club the inertia of its middle one; none for a single club, or where a club
/// has no mass model (a putter's grip, say, that leaves no shaft).
fn equal_inertia(assembly: Assembly<'_>) -> Result<Option<Job>, TradeError> {
    let mut job = assembly.job.clone();
    if job.clubs.len() < 2 {
        return Ok(None);
    }
    let mut models = Vec::with_capacity(job.clubs.len());
    for club in &job.clubs {
        let ingredients = Ingredients::of_sheet(&club.target, assembly.library, assembly.shop)?;
        match MassModel::of(&ingredients) {
            Ok(model) => models.push(model),
            Err(_) => return Ok(None),
        }
    }
    let middle = job.clubs.len() / 2;
    let head_g = models[middle].head_for_swing_weight_g(job.clubs[middle].target.swing_weight_points);
    let inertia = models[middle].inertia_kg_cm2(head_g);
    for (club, model) in job.clubs.iter_mut().zip(&models) {
        club.target.swing_weight_points = model.swing_weight_points(model.head_for_inertia_g(inertia), 0.0);
    }
    Ok(Some(job))
}
