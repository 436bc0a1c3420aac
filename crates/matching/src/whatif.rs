//! What-if: what a new plan changes, and a few plans to choose from.

use crate::error::{MatchError, PartKind};
use crate::model::SetProblem;
use crate::solution::{Choice, SetSolution};

/// One difference between two plans of the same clubs.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// A club that was not built now is.
    Built {
        /// Index of the club.
        club: usize,
    },
    /// A club that was built no longer is.
    LeftOut {
        /// Index of the club.
        club: usize,
    },
    /// Another part of this kind.
    Part {
        /// Index of the club.
        club: usize,
        /// Head, shaft, grip or adapter.
        kind: PartKind,
        /// Part before, index in the stock.
        from: usize,
        /// Part now, index in the stock.
        to: usize,
    },
    /// Another tip weight.
    Tip {
        /// Index of the club.
        club: usize,
        /// Tip weight before, g; 0 where there was none.
        from_g: f64,
        /// Tip weight now, g; 0 where there is none any more.
        to_g: f64,
    },
}

/// What changes from one plan to another, club by club.
///
/// To plan anew in place, leave a single candidate for everything already cut, glued or locked, solve again, and compare.
///
/// # Errors
/// The plans must be of equally many clubs.
///
/// # Examples
///
/// ```
/// use matching::{Change, Choice, ClubCost, changes};
/// let before = Choice {
///     head: 0, shaft: 2, grip: 5, adapter: None, tips: vec![1], deviation_points: 0.0, tip_g: 4.0,
///     shaft_residual_g: 0.0, mass_residual_g: None, cost: ClubCost::default(),
/// };
/// let after = Choice { grip: 6, tips: vec![], tip_g: 0.0, ..before.clone() };
/// let changed = changes(&[Some(before)], &[Some(after)])?;
/// assert_eq!(changed[1], Change::Tip { club: 0, from_g: 4.0, to_g: 0.0 });
/// assert!(matches!(changed[0], Change::Part { from: 5, to: 6, .. }) && changed.len() == 2);
/// # Ok::<(), matching::MatchError>(())
/// ```
pub fn changes(before: &[Option<Choice>], after: &[Option<Choice>]) -> Result<Vec<Change>, MatchError> {
    if before.len() != after.len() {
        return Err(MatchError::PlanShape { got: after.len(), expected: before.len() });
    }
    let mut out = Vec::new();
    for (club, pair) in before.iter().zip(after).enumerate() {
        match pair {
            (None, None) => {}
            (None, Some(_)) => out.push(Change::Built { club }),
            (Some(_), None) => out.push(Change::LeftOut { club }),
            (Some(a), Some(b)) => {
                let parts = [
                    (PartKind::Head, a.head, b.head),
                    (PartKind::Shaft, a.shaft, b.shaft),
                    (PartKind::Grip, a.grip, b.grip),
                ];
                // The same club takes an adapter in both plans or in neither.
                let adapter = a.adapter.zip(b.adapter).map(|(from, to)| (PartKind::Adapter, from, to));
                let moved = parts.into_iter().chain(adapter).filter(|x| x.1 != x.2);
                out.extend(moved.map(|(kind, from, to)| Change::Part { club, kind, from, to }));
                if a.tips != b.tips {
                    out.push(Change::Tip { club, from_g: a.tip_g, to_g: b.tip_g });
                }
            }
        }
    }
    Ok(out)
}

/// A plan on the trade-off between tip weight and tightness.
#[derive(Debug, Clone, PartialEq)]
pub struct Alternative {
    /// Factor on the cost of tip weight under which this plan is best.
    pub tip_factor: f64,
    /// Tip weight in the whole set, g.
    pub tip_g: f64,
    /// Greatest planned deviation of a club from its target to either side, points, at least 0.
    pub worst_points: f64,
    /// The plan; its costs are counted under `tip_factor`.
    pub plan: SetSolution,
}

/// From tip weight ten times cheaper to ten times dearer than given: the trade-off of a set.
pub const TRADE_OFF: [f64; 5] = [0.1, 0.3, 1.0, 3.0, 10.0];

/// Best plans for tip weight so many times as dear as given (see [`TRADE_OFF`]), those that differ in tip weight or worst
/// deviation. `solve` plans each of them: [`solve_set`](crate::solve_set), or something that has the answer already; when it
/// has none because there is no more time, those found so far are given. One that fails its check does not take the others
/// with it: it is left out.
///
/// # Errors
/// Those of `solve`; a failed check only where nothing else was found.
///
/// # Examples
///
/// ```
/// use matching::{Limits, alternatives, instance, solve_set};
/// // The dearer tip weight is, the less of it the best plan takes, and the further off target a club may end.
/// let problem = instance::set(3, instance::Variant::Plain);
/// let plans = alternatives(&problem, &[0.1, 10.0], &mut |asked| solve_set(asked, Limits::default()).map(Some))?;
/// assert!(plans.len() == 2 && plans[0].tip_g > plans[1].tip_g && plans[0].worst_points < plans[1].worst_points);
/// # Ok::<(), matching::MatchError>(())
/// ```
pub fn alternatives(
    problem: &SetProblem,
    tip_factors: &[f64],
    solve: &mut dyn FnMut(&SetProblem) -> Result<Option<SetSolution>, MatchError>,
) -> Result<Vec<Alternative>, MatchError> {
    let mut out: Vec<Alternative> = Vec::new();
    let mut failed = None;
    let mut asked = problem.clone();
    for &tip_factor in tip_factors {
        asked.weights.tip_per_g = problem.weights.tip_per_g * tip_factor;
        let plan = match solve(&asked) {
            Ok(Some(plan)) => plan,
            Ok(None) => break,
            Err(fault @ MatchError::CheckFailed(_)) => {
                failed.get_or_insert(fault);
                continue;
            }
            Err(error) => return Err(error),
        };
        let tip_g = plan.clubs.iter().flatten().map(|c| c.tip_g).sum();
        let worst_points = plan.clubs.iter().flatten().map(|c| c.deviation_points.abs()).fold(0.0, f64::max);
        let near = |a: f64, b: f64, within: f64| (a - b).abs() < within;
        if !out.iter().any(|x| near(x.tip_g, tip_g, 0.05) && near(x.worst_points, worst_points, 0.01)) {
            out.push(Alternative { tip_factor, tip_g, worst_points, plan });
        }
    }
    match failed {
        Some(fault) if out.is_empty() => Err(fault),
        _ => Ok(out),
    }
}
