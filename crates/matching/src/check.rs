//! An independent look at every plan before it is handed out.
//!
//! Works from the question as given, not from the search's tables: each part at most as often as it is there, every part
//! among the club's candidates, caps kept, and the cost added up again. Each single cost comes from
//! [`cost`](crate::cost), as in the search, so the two sums must be equal to the quantum.

use std::collections::BTreeMap;

use crate::compiled::Compiled;
use crate::cost::{Built, Tariff, under_cap};
use crate::error::{MatchError, PartKind};
use crate::grid::{DeciGrams, Total};
use crate::model::{CostWeights, JobSet, Stock};
use crate::plan::choices;
use crate::solution::Choice;
use crate::table::Column;

/// The choices behind a search's columns, which must pass the check and cost what the search says (in price steps).
pub(crate) fn checked(
    p: &Compiled,
    sets: &[JobSet],
    stock: &Stock,
    weights: &CostWeights,
    columns: &[Option<Column>],
    cost: Total,
) -> Result<Vec<Vec<Option<Choice>>>, MatchError> {
    let plan = choices(p, sets, stock, weights, columns).map_err(MatchError::CheckFailed)?;
    let added = check(sets, stock, weights, &plan).map_err(MatchError::CheckFailed)?;
    if added == cost {
        return Ok(plan);
    }
    let (added, cost) = (added.quanta(), cost.quanta());
    Err(MatchError::CheckFailed(format!("the parts cost {added} quanta, and the search says {cost}")))
}

/// Adds up what a plan costs, or says what is wrong with it.
fn check(sets: &[JobSet], stock: &Stock, weights: &CostWeights, plan: &[Vec<Option<Choice>>]) -> Result<Total, String> {
    if plan.len() != sets.len() {
        return Err(format!("{} sets planned of {}", plan.len(), sets.len()));
    }
    let mut used: BTreeMap<(PartKind, usize), u32> = BTreeMap::new();
    let mut total = Total(0);
    for (i, (set, choices)) in sets.iter().zip(plan).enumerate() {
        if set.clubs.len() != choices.len() {
            return Err(format!("set {i}: {} clubs planned of {}", choices.len(), set.clubs.len()));
        }
        let tariff = Tariff::new(weights, set.priority);
        let mut residuals: Vec<DeciGrams> = Vec::new();
        for (j, (club, choice)) in set.clubs.iter().zip(choices).enumerate() {
            let Some(choice) = choice else {
                total += Total::from(tariff.unbuilt());
                continue;
            };
            let named = |e: String| format!("set {i} club {j}: {e}");
            let parts = [choice.head, choice.shaft, choice.grip];
            let built = Built::new(club, parts, choice.adapter, &choice.tips).map_err(named)?;
            if !under_cap(club, stock, choice.tips.iter().copied()) {
                return Err(named(format!("{} g of tip weight over the cap of {} g", choice.tip_g, club.tip_cap_g)));
            }
            total += Total::from(built.terms(&tariff, stock).map_err(named)?.total());
            residuals.push(built.residual());
            *used.entry((PartKind::Head, choice.head)).or_default() += 1;
            *used.entry((PartKind::Shaft, choice.shaft)).or_default() += 1;
            *used.entry((PartKind::Grip, choice.grip)).or_default() += 1;
            if let Some(adapter) = choice.adapter {
                *used.entry((PartKind::Adapter, adapter)).or_default() += 1;
            }
            for &tip in &choice.tips {
                *used.entry((PartKind::Tip, tip)).or_default() += 1;
            }
        }
        total += Total::from(tariff.range(residuals));
    }
    for ((kind, part), count) in used {
        let there = match kind {
            PartKind::Head => stock.heads[part],
            PartKind::Shaft => stock.shafts[part],
            PartKind::Grip => stock.grips[part],
            PartKind::Tip => stock.tips[part].count,
            PartKind::Adapter => stock.adapters[part],
        };
        if count > there {
            return Err(format!("{kind:?} {part} used {count} times of {there}"));
        }
    }
    Ok(total)
}
