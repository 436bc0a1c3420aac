//! Which jobs can be built whole: every club of a job at once, from the parts in stock.
//!
//! A plan for the day leaves as few clubs unbuilt as it can, and may spread them over many jobs, none of which is then
//! ready. Here a job counts only when all its clubs can be built beside those of the jobs before it. What a plan costs does
//! not matter for that, only whether there is one: all costs are nothing but that of a club left out.
//!
//! Each question "can these jobs all be built?" is settled by the cheapest of these that does: the next job finds all its
//! parts among what the others leave; some of the clubs surely go without by [`crate::shortage`]; all clubs as one set, proven
//! as in [`crate::exact`]; the day's search for larger ones.

use std::sync::Arc;

use crate::compile::compile;
use crate::compiled::{Club, Compiled, SetShape};
use crate::day::search;
use crate::error::MatchError;
use crate::exact;
use crate::grid::Total;
use crate::left::of_what_is_left;
use crate::model::{ClubNeed, CostWeights, DayProblem, JobSet};
use crate::oracle::SetOracle;
use crate::ruin::Plan;
use crate::shortage::crowds;
use crate::table::Column;

/// Search nodes for one set from what others leave, and for all clubs together.
const NODES: u64 = 20_000;
/// Largest number of clubs that are proven as one set; 20 take a few hundredths of a second.
const ONE_SET: usize = 24;
/// Steps of the day's search, of about a millisecond each.
const STEPS: u32 = 400;

/// Which jobs of a day can be built whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WholeJobs {
    /// One entry a job, in the order given: whether all its clubs can be built beside those of the jobs named before it.
    pub whole: Vec<bool>,
    /// The job that stands in the way of most others, where two or more could be built whole without it.
    pub in_the_way: Option<InTheWay>,
    /// Whether every answer is proven. Where the search could not tell in its time, a job counts as one that cannot be built.
    pub proven: bool,
}

/// A job without which others could be built whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InTheWay {
    /// Index of the job that is left for later.
    pub job: usize,
    /// Indices of the jobs, two at least, that can be built in its place beside all others that are whole.
    pub builds: Vec<usize>,
}

/// Which jobs can be built whole from the stock: the first given, then each that can be built beside those before it. So
/// give the jobs in the order in which they are due. `go_on` is asked after every small step of work and ends the search by
/// saying `false`; jobs that were not looked at then count as ones that cannot be built.
///
/// # Examples
/// ```
/// use matching::instance::{Size, Variant, day};
///
/// // Nine heads of each number for two sets of eight are plenty; one head of each number is enough for one of them.
/// let rich = day(7, Size { jobs: 2, heads_per_number: 9, shafts: 60, grips: 50 }, Variant::Plain);
/// assert_eq!(matching::whole_jobs(&rich, &mut || true)?.whole, [true, true]);
/// let mut poor = rich.clone();
/// let heads: Vec<usize> = poor.sets[0].clubs.iter().map(|club| club.heads[0].part).collect();
/// for club in poor.sets.iter_mut().flat_map(|set| &mut set.clubs) {
///     club.heads.retain(|head| heads.contains(&head.part));
///     // Whatever a club weighs, it is near enough here.
///     club.loss = matching::Loss::from_probability(50.0, matching::LossForm::Yield, |_| 1.0);
/// }
/// let found = matching::whole_jobs(&poor, &mut || true)?;
/// assert!(found.proven && found.whole == [true, false]);
/// # Ok::<(), matching::MatchError>(())
/// ```
///
/// # Errors
/// See [`MatchError`].
pub fn whole_jobs(problem: &DayProblem, go_on: &mut dyn FnMut() -> bool) -> Result<WholeJobs, MatchError> {
    let p = compile(&without_costs(&problem.sets), &problem.stock, &ONLY_UNBUILT)?;
    let mut asked = Asked { p: &p, stopped: false, proven: true, go_on };
    let mut chosen = Chosen { jobs: Vec::new(), plan: Vec::new() };
    for job in 0..p.sets.len() {
        asked.add(&mut chosen, job);
    }
    let mut whole = vec![false; p.sets.len()];
    chosen.jobs.iter().for_each(|&job| whole[job] = true);
    let in_the_way = asked.in_the_way(&chosen);
    Ok(WholeJobs { whole, in_the_way, proven: asked.proven && !asked.stopped })
}

/// Nothing counts but that a club is built.
const ONLY_UNBUILT: CostWeights = CostWeights {
    loss: 0.0,
    tip_per_g: 0.0,
    second_tip: 0.0,
    shaft_range_per_g: 0.0,
    mass_per_g: 0.0,
    unbuilt: 1.0,
    quantum: 1e-4,
};

/// The same clubs, whatever their parts cost and whoever is in a hurry. Parts that look the same then are one type more often.
fn without_costs(sets: &[JobSet]) -> Vec<JobSet> {
    let free = |club: &ClubNeed| {
        let mut club = ClubNeed { mass_target: None, ..club.clone() };
        let lists = [&mut club.heads, &mut club.shafts, &mut club.grips].into_iter().chain(&mut club.adapters);
        lists.flatten().for_each(|part| part.extra_cost = 0.0);
        club
    };
    sets.iter().map(|set| JobSet { clubs: set.clubs.iter().map(free).collect(), priority: 1.0 }).collect()
}

/// Jobs that can all be built, with parts for all their clubs.
#[derive(Clone)]
struct Chosen {
    jobs: Vec<usize>,
    /// One entry a job of `jobs`.
    plan: Plan,
}

struct Asked<'a, 'g> {
    p: &'a Compiled,
    stopped: bool,
    proven: bool,
    go_on: &'g mut dyn FnMut() -> bool,
}

impl Asked<'_, '_> {
    /// Whether there is time.
    fn ask(&mut self) -> bool {
        self.stopped = self.stopped || !(self.go_on)();
        !self.stopped
    }

    /// Takes a job in if all its clubs can be built beside those chosen already; says whether it did.
    fn add(&mut self, chosen: &mut Chosen, job: usize) -> bool {
        if !self.ask() {
            return false;
        }
        if let Some(plan) = self.among_the_rest(chosen, job) {
            chosen.jobs.push(job);
            chosen.plan.push(plan);
            return true;
        }
        let mut jobs = chosen.jobs.clone();
        jobs.push(job);
        match self.together(&jobs) {
            Some(plan) => {
                *chosen = Chosen { jobs, plan };
                true
            }
            None => false,
        }
    }

    /// Parts for all clubs of a job from what the chosen jobs leave.
    fn among_the_rest(&mut self, chosen: &Chosen, job: usize) -> Option<Vec<Option<Column>>> {
        let mut rest = part_of(self.p, &[]);
        for (kind, ty) in chosen.plan.iter().flatten().flatten().flat_map(Column::uses) {
            rest.types[kind][ty].cap -= 1;
        }
        let clubs = &self.p.clubs[self.p.sets[job].clubs.clone()];
        rest.clubs = clubs.iter().map(|club| Arc::new(of_what_is_left(club, &rest))).collect();
        rest.sets = vec![SetShape { clubs: 0..clubs.len(), ..self.p.sets[job].clone() }];
        let (plan, _) = self.one_set(&rest);
        plan
    }

    /// Parts for all clubs of the only set; else whether it is proven that there are none.
    fn one_set(&mut self, p: &Compiled) -> (Option<Vec<Option<Column>>>, bool) {
        let mut watch = |now: exact::Status| self.ask() && now.cost > Total(0);
        let proof = exact::solve(SetOracle::new(p, 0), NODES, &mut watch);
        if proof.cost == Total(0) { (Some(proof.plan), false) } else { (None, proof.bound > Total(0)) }
    }

    /// Parts for all clubs of these jobs, where there are enough as far as the search can tell.
    fn together(&mut self, jobs: &[usize]) -> Option<Plan> {
        let p = part_of(self.p, jobs);
        // Where only a selection of the parts is planned from, all of them say what is short.
        let all = self.p.relaxed.as_ref().map(|all| part_of(all, jobs));
        if !crowds(all.as_ref().unwrap_or(&p)).is_empty() {
            return None;
        }
        let sizes: Vec<usize> = p.sets.iter().map(|set| set.clubs.len()).collect();
        let (found, none) = if p.clubs.len() <= ONE_SET {
            let one = SetShape { clubs: 0..p.clubs.len(), ..p.sets[0].clone() };
            let (plan, none) = self.one_set(&Compiled { sets: vec![one], ..p });
            let mut columns = plan.unwrap_or_default().into_iter();
            let plan: Plan = sizes.iter().map(|&n| columns.by_ref().take(n).collect()).collect();
            (plan, none)
        } else {
            let mut steps = 0;
            let (plan, cost, bound) = search(&p, 1, &mut |now| {
                steps += 1;
                now.cost > 0.0 && steps < STEPS && self.ask()
            });
            (if cost == Total(0) { plan } else { Plan::new() }, bound > Total(0))
        };
        if found.iter().map(Vec::len).eq(sizes) {
            return Some(found);
        }
        self.proven = self.proven && none && all.is_none();
        None
    }

    /// The chosen job without which most others could be built; of several the last.
    fn in_the_way(&mut self, chosen: &Chosen) -> Option<InTheWay> {
        let others: Vec<usize> = (0..self.p.sets.len()).filter(|job| !chosen.jobs.contains(job)).collect();
        // A job that can never be built stands behind none.
        let others: Vec<usize> =
            others.into_iter().filter(|&job| crowds(&part_of(self.all(), &[job])).is_empty()).collect();
        if others.len() < 2 {
            return None;
        }
        let mut best: Option<InTheWay> = None;
        for at in 0..chosen.jobs.len() {
            let mut without = chosen.clone();
            let job = without.jobs.remove(at);
            without.plan.remove(at);
            let builds: Vec<usize> = others.iter().copied().filter(|&other| self.add(&mut without, other)).collect();
            if builds.len() >= best.as_ref().map_or(2, |best| best.builds.len()) {
                best = Some(InTheWay { job, builds });
            }
        }
        best
    }

    /// The problem with all parts.
    fn all(&self) -> &Compiled {
        self.p.relaxed.as_deref().unwrap_or(self.p)
    }
}

/// Some jobs of a day with the whole stock.
fn part_of(p: &Compiled, jobs: &[usize]) -> Compiled {
    let mut clubs: Vec<Arc<Club>> = Vec::new();
    let mut sets = Vec::with_capacity(jobs.len());
    for &job in jobs {
        let from = clubs.len();
        clubs.extend_from_slice(&p.clubs[p.sets[job].clubs.clone()]);
        sets.push(SetShape { clubs: from..clubs.len(), ..p.sets[job].clone() });
    }
    Compiled { clubs, sets, types: p.types.clone(), quantum: p.quantum, relaxed: None }
}
