//! A day's jobs on the stock that they share.

use super::instead::Used;
use super::locks::{keep_from, kept, lock};
use super::{Given, Ground, Shelf, Supply};
use bench::assembly::Assembly;
use jiff::civil::Date;
use matching::{DayProblem, DaySolution, JobSet, MatchError, Progress, SetSolution, Unbuildable};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::plan::Plan;
use utoipa::ToSchema;

/// A job due today counts this much more than one that has a fortnight (a judgement, no source).
const MOST_URGENT: f64 = 2.0;
/// Days after which a job is in no hurry.
const NO_HURRY_DAYS: f64 = 14.0;

/// The plan of one of the day's jobs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct DayJob {
    /// Running number of the job.
    pub number: i64,
    /// Who the clubs of the job are for.
    pub player: String,
    /// How much it counts: 1 for a job in no hurry, 2 for one due now.
    pub priority: f64,
    /// Its plan. Cost and bound stand with the day, since the jobs share their stock.
    pub plan: Plan,
}

/// A plan for all jobs together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct DayPlan {
    /// The jobs, in the order given.
    pub jobs: Vec<DayJob>,
    /// The stated cost of the choice, in units of one club that certainly misses its tolerance.
    pub cost: f64,
    /// A proven lower bound of that cost.
    pub bound: f64,
    /// (cost − bound) / cost: how far the plan may be from the best.
    pub gap: f64,
    /// Rounds of work done.
    pub rounds: u64,
}

/// How much a job counts by the days until it is due.
fn priority(due: Date, today: Date) -> f64 {
    let days = f64::from(today.until(due).map_or(0, |span| span.get_days())).clamp(0.0, NO_HURRY_DAYS);
    MOST_URGENT - (MOST_URGENT - 1.0) * days / NO_HURRY_DAYS
}

/// Plans jobs on shared stock: free parts, and what these jobs hold already; what is reserved for a club stays with it.
/// `go_on` is asked after each small step of work and ends the search by saying `false`; the best plan so far is returned,
/// with its bound.
///
/// # Errors
/// As [`super::propose`]; no job at all.
pub fn propose_day<'a>(
    jobs: &[Assembly<'a>],
    supply: impl Into<Supply<'a>>,
    today: Date,
    seed: u64,
    go_on: &mut dyn FnMut(Progress) -> bool,
) -> Result<DayPlan, TradeError> {
    propose_day_with(jobs, supply, today, &mut |problem| matching::solve_day(problem, seed, go_on))
}

/// As [`propose_day`], the choice made by `solve`.
///
/// # Errors
/// As [`propose_day`].
pub fn propose_day_with<'a>(
    jobs: &[Assembly<'a>],
    supply: impl Into<Supply<'a>>,
    today: Date,
    solve: &mut dyn FnMut(&DayProblem) -> Result<DaySolution, MatchError>,
) -> Result<DayPlan, TradeError> {
    let Some(first) = jobs.first() else {
        return Err(TradeError::refused(DayFault::NoJob));
    };
    let all: Vec<_> = jobs.iter().map(|a| a.job).collect();
    let supply = supply.into();
    let shelf = Shelf::new(*first, &all, supply);
    let mut grounds = Vec::with_capacity(jobs.len());
    let mut given = Given::default();
    for assembly in jobs {
        let locks = kept(assembly.job, supply.parts, &[]);
        grounds.push(Ground::with_all(*assembly, &shelf, &locks, &mut given)?);
    }
    // A part that is reserved for a club goes there, and into no club of another job.
    for (i, assembly) in jobs.iter().enumerate() {
        let locks = kept(assembly.job, supply.parts, &[]);
        for (k, ground) in grounds.iter_mut().enumerate() {
            if k == i {
                lock(&mut ground.fittings, &shelf, &locks)?;
            } else {
                keep_from(&mut ground.fittings, &shelf, &locks);
            }
        }
    }
    let urgent: Vec<f64> = jobs.iter().map(|a| priority(a.job.sheet.due, today)).collect();
    let problem = DayProblem {
        sets: grounds
            .iter()
            .zip(&urgent)
            .map(|(ground, priority)| JobSet { clubs: ground.needs(), priority: *priority })
            .collect(),
        stock: shelf.stock(*first)?,
        weights: first.shop.plan_weights.of_matching(),
    };
    let solution = solve(&problem)?;
    let gap = solution.gap();
    let mut used = Used::default();
    for (ground, set) in grounds.iter().zip(&solution.sets) {
        used.extend(ground.used(&set.clubs, true));
    }
    let mut planned = Vec::with_capacity(jobs.len());
    for (i, ((ground, set), priority)) in grounds.into_iter().zip(solution.sets).zip(urgent).enumerate() {
        let lacking = solution.unbuildable.iter().filter(|u| u.set == i);
        let job = ground.assembly.job;
        let alone = SetSolution {
            clubs: set.clubs,
            shaft_range_g: set.shaft_range_g,
            shaft_range_cost: set.shaft_range_cost,
            cost: solution.cost,
            bound: solution.bound,
            proven: gap <= 0.0,
            nodes: solution.rounds,
            unbuildable: lacking.map(|u| Unbuildable { set: 0, ..*u }).collect(),
        };
        planned.push(DayJob {
            number: job.number,
            player: job.sheet.player.clone(),
            priority,
            plan: ground.plan_among(&shelf, &alone, &used)?,
        });
    }
    Ok(DayPlan { jobs: planned, cost: solution.cost, bound: solution.bound, gap, rounds: solution.rounds })
}

fact::facts! {
    /// What is refused of a plan for the day.
    pub(crate) enum DayFault: "day_fault" {
        NoJob,
    }
}
