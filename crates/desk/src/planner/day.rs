//! A day's jobs on the stock that they share.

use super::due::{Asked, DueDates, SolveDay, due_dates};
use super::instead::Used;
use super::locks::{keep_from, kept, lock};
use super::worth::{DayWorth, worth};
use super::{Given, Ground, Shelf, Supply};
use bench::assembly::Assembly;
use jiff::civil::Date;
use matching::{DayProblem, DaySolution, JobSet, MatchError, Progress, SetSolution, Unbuildable, WholeJobs};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::plan::Plan;
use utoipa::ToSchema;

/// A job due today counts this much more than one that has a fortnight (a judgement, no source).
const MOST_URGENT: f64 = 2.0;
/// Days after which a job is in no hurry.
const NO_HURRY_DAYS: f64 = 14.0;

/// The plan of one of the day's jobs.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
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

/// Which plan of a day is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum WhichPlan {
    /// The best that is found for all jobs together.
    #[default]
    Together,
    /// The plain one: each job in its turn, the earliest due first, takes what suits it best of what is left.
    InTurn,
}

/// A plan for all jobs of a day.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct DayPlan {
    /// Which plan this is. The plain one is there only where there was time for it: then the other takes its place.
    pub which: WhichPlan,
    /// The jobs, the earliest due first.
    pub jobs: Vec<DayJob>,
    /// The stated cost of the choice, in units of one club that certainly misses its tolerance.
    pub cost: f64,
    /// A proven lower bound of that cost.
    pub bound: f64,
    /// (cost − bound) / cost: how far the plan may be from the best.
    pub gap: f64,
    /// Rounds of work done.
    pub rounds: u64,
    /// What planning together brings over planning each job in its turn; left out for a single job, or where there was no
    /// time to compare.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worth: Option<DayWorth>,
    /// Which due dates hold.
    pub due: DueDates,
}

/// How much a job counts by the days until it is due.
fn priority(due: Date, today: Date) -> f64 {
    let days = f64::from(today.until(due).map_or(0, |span| span.get_days())).clamp(0.0, NO_HURRY_DAYS);
    MOST_URGENT - (MOST_URGENT - 1.0) * days / NO_HURRY_DAYS
}

/// Plans jobs on shared stock: free parts, and what these jobs hold already; what is reserved for a club stays with it.
/// `go_on` is asked after each small step of work and ends the search by saying `false`; the best plan so far is returned,
/// with its bound. What else is worked out takes a fixed number of steps.
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
    propose_day_with(jobs, supply, today, WhichPlan::Together, &mut InSteps { seed, go_on })
}

/// A search by a caller's word, and fixed numbers of steps beside it.
struct InSteps<'g> {
    seed: u64,
    go_on: &'g mut dyn FnMut(Progress) -> bool,
}

/// Steps of about a millisecond for what stands beside a day's plan.
const BESIDE: u32 = 400;

fn in_steps(most: u32) -> impl FnMut() -> bool {
    let mut steps = 0;
    move || {
        steps += 1;
        steps <= most
    }
}

impl SolveDay for InSteps<'_> {
    fn day(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        matching::solve_day(problem, self.seed, self.go_on)
    }

    fn to_come(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        let mut go_on = in_steps(BESIDE);
        matching::solve_day(problem, self.seed, &mut |_| go_on())
    }

    fn whole(&mut self, problem: &DayProblem) -> Result<WholeJobs, MatchError> {
        matching::whole_jobs(problem, &mut in_steps(50 * BESIDE))
    }
}

/// As [`propose_day`], the choices made by `solve`, and either plan.
///
/// # Errors
/// As [`propose_day`].
pub fn propose_day_with<'a>(
    jobs: &[Assembly<'a>],
    supply: impl Into<Supply<'a>>,
    today: Date,
    which: WhichPlan,
    solve: &mut dyn SolveDay,
) -> Result<DayPlan, TradeError> {
    let mut jobs = jobs.to_vec();
    jobs.sort_by_key(|a| (a.job.sheet.due, a.job.number));
    let Some(first) = jobs.first() else {
        return Err(TradeError::refused(DayFault::NoJob));
    };
    let all: Vec<_> = jobs.iter().map(|a| a.job).collect();
    let supply = supply.into();
    let shelf = Shelf::new(*first, &all, supply);
    let grounds = grounds(&jobs, &shelf, supply)?;
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
    let mut solution = solve.day(&problem)?;
    let worth = worth(&all, &problem, &solution);
    let asked = Asked {
        grounds: &grounds,
        shelf: &shelf,
        problem: &problem,
        parts: supply.parts,
        orders: supply.orders,
        today,
    };
    let due = due_dates(&asked, solution.unbuildable.is_empty(), solve)?;
    let plain = solution.apart.take().filter(|_| which == WhichPlan::InTurn);
    let which = if plain.is_some() { WhichPlan::InTurn } else { WhichPlan::Together };
    if let Some(plain) = plain {
        (solution.sets, solution.cost, solution.unbuildable) = (plain.sets, plain.cost, plain.unbuildable);
    }
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
    let (cost, bound, rounds) = (solution.cost, solution.bound, solution.rounds);
    Ok(DayPlan { which, jobs: planned, cost, bound, gap, rounds, worth, due })
}

/// The clubs of all jobs. A part that is reserved for a club goes there, and into no club of another job.
fn grounds<'a>(jobs: &[Assembly<'a>], shelf: &Shelf<'a>, supply: Supply<'a>) -> Result<Vec<Ground<'a>>, TradeError> {
    let mut grounds = Vec::with_capacity(jobs.len());
    let mut given = Given::default();
    for assembly in jobs {
        let locks = kept(assembly.job, supply.parts, &[]);
        grounds.push(Ground::with_all(*assembly, shelf, &locks, &mut given)?);
    }
    for (i, assembly) in jobs.iter().enumerate() {
        let locks = kept(assembly.job, supply.parts, &[]);
        for (k, ground) in grounds.iter_mut().enumerate() {
            if k == i {
                lock(&mut ground.fittings, shelf, &locks)?;
            } else {
                keep_from(&mut ground.fittings, shelf, &locks);
            }
        }
    }
    Ok(grounds)
}

fact::facts! {
    /// What is refused of a plan for the day.
    pub(crate) enum DayFault: "day_fault" {
        NoJob,
    }
}
