//! Which remedies help.

use super::{Case, Progress, Remedy, Spare, before_glue, grips, remedies};
use crate::belief::Believed;
use crate::club_state::ClubState;
use trade::error::TradeError;

/// What a remedy must add to the chance of a club to be offered.
pub(crate) const WORTH_DOING: f64 = 0.05;

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
    let mut found = remedies(believed, state, spares)?;
    let (Some(club), Some(finish)) = (believed.assembly.job.club(&state.club), state.finish) else {
        return Ok(Vec::new());
    };
    let Some(plan) = &club.plan else { return Ok(Vec::new()) };
    let case = Case { believed, club, plan, finish, spares, progress: Progress::of(believed, club) };
    // Before the reading after the cure the grips are still to be chosen, and what that reading will tell is counted.
    let to_come = !case.progress.gripped && !case.progress.cure_read;
    let base = if to_come { before_glue::Ahead::of(&case)?.chance(0.0) } else { finish.chance };
    let set_base = if case.progress.gripped { None } else { grips::others_inside(&case)?.map(|others| others + base) };
    found.retain(|remedy| {
        let for_set = remedy.set_inside.zip(set_base).is_none_or(|(with, without)| with > without + 1e-9);
        remedy.chance_at_end >= base + WORTH_DOING && (for_set || remedy.kind.is_none())
    });
    Ok(found)
}
