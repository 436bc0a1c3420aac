//! Which remedies help.

use super::{Case, Remedy, Spare, grips};
use crate::belief::Believed;
use crate::club_state::ClubState;
use trade::error::TradeError;

/// What a remedy must add to the chance of a club to be offered.
pub(crate) const WORTH_DOING: f64 = 0.05;

/// What can be done about a club, and what it is held against.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Ranking {
    /// The remedies that help, the best first.
    pub remedies: Vec<Remedy>,
    /// Chance of finishing in tolerance if nothing is changed now, under the same conditions; none for a club without a plan.
    pub chance_ahead: Option<f64>,
}

/// The remedies of a club that help, the best first: each against the club as it is, under the same conditions, so with the
/// same choices still to come; and none that takes a grip from another club which needs it more.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn remedies_that_help(
    believed: &Believed<'_>,
    state: &ClubState,
    spares: &[Spare<'_>],
) -> Result<Vec<Remedy>, TradeError> {
    Ok(ranking(believed, state, spares)?.remedies)
}

/// The same with the chance that they are held against.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn ranking(believed: &Believed<'_>, state: &ClubState, spares: &[Spare<'_>]) -> Result<Ranking, TradeError> {
    let Some(case) = Case::of(believed, state, spares) else { return Ok(Ranking::default()) };
    let base = case.chance_ahead()?;
    let set_base = if case.progress.gripped { None } else { grips::others_inside(&case)?.map(|others| others + base) };
    let mut remedies = case.remedies()?;
    remedies.retain(|remedy| {
        let for_set = remedy.set_inside.zip(set_base).is_none_or(|(with, without)| with > without + 1e-9);
        remedy.chance_at_end >= base + WORTH_DOING && (for_set || remedy.kind.is_none())
    });
    Ok(Ranking { remedies, chance_ahead: Some(base) })
}
