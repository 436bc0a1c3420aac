//! Matching beyond the plan of one job: a day's jobs together, plans made anew, plans to choose from, a sheet that is
//! not a job yet.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::needs::{PlanStock, lines_for, stock_of};
use crate::plan::{Exchanged, exchange, need_built};
use crate::proven::{Begun, Proven, Search};
use crate::searching::{DaySearch, Searching};
use crate::{App, AppError, load_library, load_shop};
use bench::assembly::Assembly;
use bench::scale_watch::ScaleWatch;
use desk::planner::{self, DayPlan, Lock, PlanOption, Replan, SolveDay, Taken, WhichPlan};
use desk::sheet_check::Severity;
use fact::Fact;
use matching::{DayProblem, DaySolution, MatchError, WholeJobs};
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use std::time::{Duration, Instant};
use store::Tx;
use trade::because::Because;
use trade::error::Noun;
use trade::error::TradeError;
use trade::event_kind::EventKind;
use trade::job::{Job, JobClub, JobState};
use trade::part::PartState;
use trade::plan::Plan;
use trade::plan_weights::PlanWeights;
use trade::price::check_lines;
use trade::sheet::Sheet;
use trade::shop::Shop;
use utoipa::ToSchema;

/// Longest search for a day's jobs, s.
pub(crate) const LONGEST_SEARCH_S: f64 = 120.0;

/// A request to plan a day.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DayRequest {
    /// Running numbers of the jobs; left out or empty: every job that waits for a plan.
    #[serde(default)]
    pub jobs: Vec<i64>,
    /// How long to search, s; the plan found by then is given, with its bound.
    #[serde(default = "usual_seconds")]
    #[schema(minimum = 0, maximum = 120)]
    pub seconds: f64,
    /// Seed of the search.
    #[serde(default)]
    #[schema(maximum = 9007199254740991_i64)]
    pub seed: u64,
    /// What counts for how much; left out: as the shop has it.
    #[serde(default)]
    pub weights: Option<PlanWeights>,
    /// Which plan is given; left out: the best for all jobs together.
    #[serde(default)]
    pub which: WhichPlan,
}

fn usual_seconds() -> f64 {
    1.0
}

/// A request to match one sheet without saving anything.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SetRequest {
    /// The clubs to find parts for, with what each of them asks.
    pub sheet: Sheet,
    /// "This part in this club."
    #[serde(default)]
    pub locks: Vec<Lock>,
    /// How long to search, s, the plans to choose from included; what is found by then is given, with its bound.
    #[serde(default = "usual_seconds")]
    #[schema(minimum = 0, maximum = 120)]
    pub seconds: f64,
    /// What counts for how much; left out: as the shop has it.
    #[serde(default)]
    pub weights: Option<PlanWeights>,
}

/// A plan for one sheet, with others to choose from.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SetMatch {
    /// The plan for what the sheet asks, the best that the search found.
    pub plan: Plan,
    /// Others: little in the tips or close to the target, equal swing weight or equal inertia. Fewer, or none, where the
    /// time was over before.
    pub options: Vec<PlanOption>,
}

/// Parts of one club, by their codes.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Picked {
    /// Place in the tray.
    pub slot: i64,
    /// Codes of head, shaft, grip, ferrule, adapter and tip weights; a code twice for two of one bulk.
    pub codes: Vec<String>,
    /// What the screw in its head weighs more than the one that it comes with, as in the plan that was chosen; left out: that
    /// one.
    #[serde(default, skip_serializing_if = "is_none")]
    pub screw_more_g: f64,
    /// Another swing weight to aim at, points since A0, where the set follows another law than the sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(alias = "balance_points")]
    pub swing_weight_points: Option<f64>,
}

fn is_none(more_g: &f64) -> bool {
    *more_g == 0.0
}

/// Holding parts that were chosen by hand, from a day's plan or from plans to choose from.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AcceptPicks {
    /// The clubs; those left out stay without a plan.
    pub clubs: Vec<Picked>,
    /// Why, where a neighbouring number's blank is used or another law followed.
    #[serde(default)]
    pub reason: String,
    /// Who.
    pub by: String,
}

/// A plan made anew, and the mark by which it is accepted.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ReplanProposal {
    /// What would change.
    #[serde(flatten)]
    pub replan: Replan,
    /// Send this back to accept exactly this.
    pub fingerprint: String,
}

/// Accepting a plan made anew.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AcceptReplan {
    /// The mark of the proposal that was looked at.
    pub fingerprint: String,
    /// The locks that it was made with.
    #[serde(default)]
    pub locks: Vec<Lock>,
    /// Who.
    pub by: String,
}

/// A day's plan that did not wait for its search.
#[derive(Debug, Clone)]
pub struct DaySoon {
    /// The plan.
    pub day: DayPlan,
    /// Its jobs as they were read for it, in its order.
    pub files: Vec<JobFile>,
    /// The search for a better one, where one goes on.
    pub search: Option<DaySearch>,
}

/// How long what stands beside the plan may take for a page.
const BESIDE_A_PAGE: Duration = Duration::from_millis(300);

/// A day's choices: the plan as a caller searches for it, and what stands beside it in a time of its own, which begins
/// when the plan is there.
struct Chosen<'p, D> {
    proven: &'p Proven,
    day: D,
    beside: Duration,
    end: Option<Instant>,
}

impl<D> Chosen<'_, D> {
    fn end(&mut self) -> Instant {
        *self.end.get_or_insert_with(|| Instant::now() + self.beside)
    }
}

impl<D: FnMut(&DayProblem) -> Result<DaySolution, MatchError>> SolveDay for Chosen<'_, D> {
    fn day(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        (self.day)(problem)
    }

    fn to_come(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        let end = self.end();
        self.proven.to_come(problem, end)
    }

    fn whole(&mut self, problem: &DayProblem) -> Result<WholeJobs, MatchError> {
        let end = self.end();
        self.proven.whole(problem, end)
    }
}

struct DayGround {
    files: Vec<JobFile>,
    stock: PlanStock,
}

fn need_seconds(seconds: f64) -> Result<f64, AppError> {
    if (0.0..=LONGEST_SEARCH_S).contains(&seconds) {
        return Ok(seconds);
    }
    Err(AppError::invalid(SearchFault::Seconds { value: seconds, most: LONGEST_SEARCH_S }))
}

/// A seed beyond what every reader of JSON keeps exactly could come back as another one (RFC 8259, 6).
const SEED_MAX: u64 = (1 << 53) - 1;

fn need_seed(seed: u64) -> Result<(), AppError> {
    if seed <= SEED_MAX {
        return Ok(());
    }
    Err(AppError::invalid(SearchFault::Seed { seed: seed.to_string(), most: SEED_MAX.to_string() }))
}

impl App {
    /// Plans a day's jobs on the stock that they share. Nothing is held. `watch` hears where the search stands; when it
    /// says `false`, the best plan so far is given.
    ///
    /// # Errors
    /// A time out of range; a job that does not exist or has its plan; what the store says.
    pub async fn plan_day(
        &self,
        request: &DayRequest,
        mut watch: impl FnMut(Searching) -> bool + Send + 'static,
    ) -> Result<DayPlan, AppError> {
        let seconds = need_seconds(request.seconds)?;
        need_seed(request.seed)?;
        let DayGround { files, stock } = self.day_ground(request).await?;
        let (seed, today, proven, which) = (request.seed, self.today(), self.proven.clone(), request.which);
        // The search would hold up the other tablets if it ran among their requests.
        let search = tokio::task::spawn_blocking(move || {
            let jobs: Vec<Assembly<'_>> = files.iter().map(JobFile::assembly).collect();
            let begun = Instant::now();
            let mut go_on = |progress: matching::Progress| {
                let elapsed = begun.elapsed().as_secs_f64();
                watch(Searching { cost: progress.cost, bound: progress.bound, seconds: elapsed }) && elapsed < seconds
            };
            let day = |problem: &DayProblem| proven.day(problem, Search { seconds, seed }, &mut go_on);
            // What stands beside the plan takes a tenth of its time.
            let beside = Duration::from_secs_f64(0.1 * seconds.min(5.0) + 0.1);
            let mut solve = Chosen { proven: &proven, day, beside, end: None };
            planner::propose_day_with(&jobs, stock.supply(), today, which, &mut solve)
        });
        let day = search.await.map_err(|e| AppError::Internal(format!("the search stopped: {e}")))?;
        Ok(day?)
    }

    /// Plans a day without waiting for the search: what was found before for the very same jobs and parts, or a first
    /// plan, which a search beside then betters. `further` searches on where what was found is not proven. Other screens
    /// are told when the search has ended; the next look shows what it found.
    ///
    /// # Errors
    /// As [`Self::plan_day`].
    pub async fn plan_day_soon(&self, request: &DayRequest, further: bool) -> Result<DaySoon, AppError> {
        let longest = Search { seconds: need_seconds(request.seconds)?, seed: request.seed };
        let DayGround { files, stock } = self.day_ground(request).await?;
        let (today, app, which) = (self.today(), self.clone(), request.which);
        let work = tokio::task::spawn_blocking(move || {
            let jobs: Vec<Assembly<'_>> = files.iter().map(JobFile::assembly).collect();
            let day = |problem: &DayProblem| {
                let known = app.proven.known_day(problem);
                let wanted = further || known.is_none();
                let found = match known {
                    Some(known) => known,
                    None => app.proven.search_day(problem, longest.seed, &mut |_| false)?,
                };
                if wanted
                    && found.gap() > 0.0
                    && let Some(begun) = app.proven.begin(longest.seconds)
                {
                    app.search_day(problem.clone(), longest, begun, found.clone());
                }
                Ok(found)
            };
            let mut solve = Chosen { proven: &app.proven, day, beside: BESIDE_A_PAGE, end: None };
            let day = planner::propose_day_with(&jobs, stock.supply(), today, which, &mut solve)?;
            let search = app.proven.beside();
            Ok::<_, TradeError>(DaySoon { day, files, search })
        });
        Ok(work.await.map_err(|e| AppError::Internal(format!("the plan stopped: {e}")))??)
    }

    /// Ends the search that goes on beside the requests, if there is one; what it has found by then is what the next look
    /// shows.
    pub fn stop_day_search(&self) {
        self.proven.stop();
    }

    /// Searches beside the requests and remembers what was found; where that fails its check, the plan that stands, so that
    /// the next look does not begin the same again.
    fn search_day(&self, problem: matching::DayProblem, search: Search, begun: Begun, stands: matching::DaySolution) {
        let app = self.clone();
        std::thread::spawn(move || {
            let found = app.proven.search_day(&problem, search.seed, &mut |progress| begun.go_on(progress));
            // It may have been stopped before its time.
            let search = Search { seconds: begun.seconds(), ..search };
            app.proven.keep_day(problem, search, found.unwrap_or(stands));
            // Who is told looks again at once, and may have another search to begin.
            drop(begun);
            app.tell(None, "plan");
        });
    }

    /// The jobs of a day and the parts that they share, read at one moment.
    async fn day_ground(&self, request: &DayRequest) -> Result<DayGround, AppError> {
        let mut tx = self.store.read().await?;
        let mut numbers = request.jobs.clone();
        if numbers.is_empty() {
            numbers = tx.job_lines(JobState::Open, None, i64::MAX).await?.into_iter().map(|j| j.number).collect();
        }
        numbers.sort_unstable();
        numbers.dedup();
        let mut files = Vec::with_capacity(numbers.len());
        for number in numbers {
            let mut file = JobFile::load(&mut tx, number).await?;
            crate::plan::need_open(&file)?;
            weigh_by(Arc::make_mut(&mut file.shop), request.weights)?;
            files.push(file);
        }
        files.sort_by_key(|file| (file.job.sheet.due, file.job.number));
        let theirs: Vec<&Job> = files.iter().map(|file| &file.job).collect();
        let stock = PlanStock::load(&mut tx, &theirs).await?.with_orders(&mut tx).await?;
        Ok(DayGround { files, stock })
    }

    /// Matches one sheet against the free stock. Nothing is saved and nothing held. `watch` hears where the search for the
    /// plan stands; when it says `false`, the best so far is given.
    ///
    /// # Errors
    /// A sheet with something that stops it, or a quote that none can have; models missing; a lock that cannot be kept; what the store says.
    pub async fn match_set(
        &self,
        request: &SetRequest,
        mut watch: impl FnMut(Searching) -> bool + Send + 'static,
    ) -> Result<SetMatch, AppError> {
        let longest = Duration::from_secs_f64(need_seconds(request.seconds)?);
        check_lines(&request.sheet.quote)?;
        let mut tx = self.store.read().await?;
        let problems = self.problems(&mut tx, &request.sheet).await?;
        // What stock lacks is named by the plan itself, with what to order.
        if let Some(stop) = problems.iter().find(|p| p.severity == Severity::Stop) {
            return Err(crate::sheet::stopped(stop));
        }
        let (library, mut shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        weigh_by(Arc::make_mut(&mut shop), request.weights)?;
        let job = Job::of_sheet(&request.sheet, shop.steps.clone(), self.now());
        let stock = PlanStock::load(&mut tx, &[&job]).await?;
        let learned = tx.learned().await?.unwrap_or_default();
        drop(tx);
        let (locks, proven) = (request.locks.clone(), self.proven.clone());
        let work = tokio::task::spawn_blocking(move || {
            let assembly =
                Assembly { job: &job, library: &library, shop: &shop, learned: &learned, watch: ScaleWatch::nothing() };
            let started = Instant::now();
            // Half of the time for the plan, the rest for those to choose from.
            let (half, all) = (started + longest / 2, started + longest);
            let mut at = Searching { cost: f64::INFINITY, bound: 0.0, seconds: 0.0 };
            let plan = planner::propose_with(assembly, stock.supply(), &locks, &mut |p| {
                proven.set_until(p, half, &mut |progress| {
                    let seconds = started.elapsed().as_secs_f64();
                    at = Searching { cost: progress.cost, bound: progress.bound, seconds };
                    watch(at)
                })
            })?;
            // Each of those to choose from takes about as long as the plan; what would end long after the time is not begun.
            let last = all.checked_sub(started.elapsed() / 2).unwrap_or(started);
            let options = planner::options_with(assembly, stock.supply(), &locks, &mut |p| {
                proven
                    .one_more(p, last, all, &mut || watch(Searching { seconds: started.elapsed().as_secs_f64(), ..at }))
            });
            let options = match options {
                // The plan stands; the fault is in the log and its question is kept.
                Err(TradeError::Fault(_)) => Vec::new(),
                other => other?,
            };
            Ok::<_, TradeError>(SetMatch { plan, options })
        });
        Ok(work.await.map_err(|e| AppError::Internal(format!("the search stopped: {e}")))??)
    }

    /// Plans to choose from for a job that waits for its plan.
    ///
    /// # Errors
    /// As [`App::propose`].
    pub async fn plan_options(&self, number: i64, locks: &[Lock]) -> Result<Vec<PlanOption>, AppError> {
        let file = self.job_file(number).await?;
        Ok(self.plan_options_of(file, locks).await?.1)
    }

    /// As [`Self::plan_options`], of a job that the caller has read already; gives it back.
    ///
    /// # Errors
    /// As [`App::propose`].
    pub async fn plan_options_of(
        &self,
        file: Arc<KeptJob>,
        locks: &[Lock],
    ) -> Result<(Arc<KeptJob>, Vec<PlanOption>), AppError> {
        crate::plan::need_open(&file)?;
        let stock = PlanStock::load(&mut self.store.read().await?, &[&file.job]).await?;
        let (locks, proven) = (planner::kept(&file.job, &stock.parts, locks), self.proven.clone());
        let work = tokio::task::spawn_blocking(move || {
            let options = planner::options_with(file.assembly(), stock.supply(), &locks, &mut proven.several())?;
            Ok::<_, TradeError>((file, options))
        });
        Ok(work.await.map_err(|e| AppError::Internal(format!("the search stopped: {e}")))??)
    }

    /// Plans a job anew in place, keeping what is cut, glued or gripped. Nothing is held yet.
    ///
    /// # Errors
    /// A job that is not at the bench; a lock that cannot be kept; what the store says.
    pub async fn plan_again(&self, number: i64, locks: &[Lock]) -> Result<ReplanProposal, AppError> {
        let mut tx = self.store.read().await?;
        let file = self.kept_job(&mut tx, number).await?;
        self.again(&mut tx, &file, locks).await
    }

    /// As [`Self::plan_again`], of a job that the caller has read already.
    ///
    /// # Errors
    /// As [`Self::plan_again`].
    pub async fn plan_again_of(&self, file: &KeptJob, locks: &[Lock]) -> Result<ReplanProposal, AppError> {
        self.again(&mut self.store.read().await?, file, locks).await
    }

    /// Accepts a plan made anew: parts that are no longer used are free, new ones held, all or none. Readings taken with
    /// a part that is gone are taken back with a reason.
    ///
    /// # Errors
    /// Stock or readings that changed since; what the store says.
    pub async fn accept_again(&self, number: i64, accept: &AcceptReplan) -> Result<Plan, AppError> {
        let mut tx = self.store.write().await?.signed(&accept.by);
        let file = self.kept_job(&mut tx, number).await?;
        let proposal = self.again(&mut tx, &file, &accept.locks).await?;
        if proposal.fingerprint != accept.fingerprint {
            return Err(AppError::conflict(SearchFault::Changed));
        }
        let changes = &proposal.replan.changes;
        let of_club =
            |club: &JobClub| changes.iter().filter(|c| c.slot == club.slot).map(|c| c.kind).collect::<Vec<_>>();
        let changed: Vec<Exchanged<'_>> = file
            .job
            .clubs
            .iter()
            .zip(&proposal.replan.plan.clubs)
            .map(|(club, plan)| (club, plan, of_club(club)))
            .filter(|(club, _, kinds)| !kinds.is_empty() || club.plan.is_none())
            .filter_map(|(club, plan, kinds)| {
                let why = |kind| (kind, Because::OtherPart { kind, reason: None }.told());
                plan.clone().map(|plan| Exchanged { club, plan, kinds: kinds.into_iter().map(why).collect() })
            })
            .collect();
        exchange(&mut tx, &file, &changed, &accept.by, self.now()).await?;
        let note = serde_json::json!({ "fingerprint": accept.fingerprint, "changes": changes });
        self.log(&mut tx, Some(&file.job.id), None, EventKind::PlanMadeAgain, &accept.by, note).await?;
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(proposal.replan.plan)
    }

    /// Holds parts that were chosen from a day's plan or from plans to choose from, all or none.
    ///
    /// # Errors
    /// No club chosen; a part that is not free or does not fit; a job that has its plan; what the store says.
    pub async fn accept_picks(&self, number: i64, accept: &AcceptPicks) -> Result<Plan, AppError> {
        let mut tx = self.store.write().await?.signed(&accept.by);
        let mut file = JobFile::load(&mut tx, number).await?;
        crate::plan::need_open(&file)?;
        let other_law = accept.clubs.iter().any(|c| c.swing_weight_points.is_some());
        if other_law {
            crate::need::need_reason(&accept.reason)?;
        }
        let mut taken = Vec::with_capacity(accept.clubs.len());
        for picked in &accept.clubs {
            let slot = file.club_at(picked.slot)?.slot;
            let mut parts = Vec::with_capacity(picked.codes.len());
            for code in &picked.codes {
                let missing = || AppError::not_found(Noun::Part, code.as_str(), &LookUp::StockChanged);
                let mut part = tx.part_by_code(code).await?.ok_or_else(missing)?;
                // What this very job has reserved is free for its plan.
                if part.state == PartState::Held && part.job.as_ref() == Some(&file.job.id) {
                    part.state = PartState::Free;
                }
                parts.push(part);
            }
            if let Some(points) = picked.swing_weight_points {
                trade::reading::check_value(trade::reading::What::SwingWeight, points)?;
                for club in file.job.clubs.iter_mut().filter(|c| c.slot == slot) {
                    club.target.swing_weight_points = points;
                }
            }
            taken.push((slot, parts, picked.screw_more_g));
        }
        let chosen: Vec<Taken<'_>> = taken
            .iter()
            .map(|(slot, parts, screw_more_g)| Taken { slot: *slot, parts, screw_more_g: *screw_more_g })
            .collect();
        let lines =
            lines_for(&mut tx, &file.library, &file.shop.clamp, taken.iter().flat_map(|(_, parts, _)| parts)).await?;
        let plan = planner::plan_of(file.assembly(), &chosen, &lines)?;
        need_built(&file, &plan, true)?;
        if plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
            crate::need::need_reason(&accept.reason)?;
        }
        let note = serde_json::json!({ "picked": accept.clubs, "reason": accept.reason.trim() });
        self.hold_plan(tx, &file.job, &plan, &accept.by, note).await?;
        Ok(plan)
    }

    async fn again(&self, tx: &mut Tx, file: &KeptJob, locks: &[Lock]) -> Result<ReplanProposal, AppError> {
        crate::need::need_at_bench(&file.job)?;
        let stock = stock_of(tx, &file.job).await?;
        let believed = file.believe()?;
        let locks = planner::kept(&file.job, &stock.parts, locks);
        let mut replan = planner::propose_again_with(&believed, stock.supply(), &locks, &mut |p| self.proven.set(p))?;
        let lacks = |club: &JobClub| club.work.is_some() && club.plan.is_none();
        if file.job.clubs.iter().any(lacks) {
            // A club that was there before gets what its kind of job takes, not another head.
            let mut job = file.job.clone();
            self.plan_works(tx, &mut job).await?;
            for (plan, club) in replan.plan.clubs.iter_mut().zip(&job.clubs).filter(|(_, club)| club.work.is_some()) {
                plan.clone_from(&club.plan);
            }
        }
        Ok(ReplanProposal { fingerprint: planner::fingerprint(&replan.plan), replan })
    }
}

/// What counts for how much, where it is not to be as the shop has it.
fn weigh_by(shop: &mut Shop, weights: Option<PlanWeights>) -> Result<(), AppError> {
    if let Some(weights) = weights {
        weights.check()?;
        shop.plan_weights = weights;
    }
    Ok(())
}

fact::facts! {
    /// What is refused of a search for a plan.
    pub(crate) enum SearchFault: "search_fault" {
        Seconds { value: f64, most: f64 },
        Seed { seed: String, most: String },
        Changed,
    }
}
