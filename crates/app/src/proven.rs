//! Choices of parts that were proven before.
//!
//! A choice follows from its problem alone: what each part does in each club, what a miss costs, what is there. All of
//! that is read and worked out again for every look, and only where the whole of it is the same as before, figure by
//! figure, is the choice not searched for again. So nothing has to be told when stock, models, the shop, a sheet or a
//! lock changes, by whichever program: another problem has another answer, and the same problem the same.
//!
//! A day's search goes on beside the requests; there is one at a time, which can be looked at and stopped.

use crate::fault::{Faults, Question};
use crate::searching::{DaySearch, Searching};
use matching::{
    ClubNeed, DayProblem, DaySolution, JobSet, Limits, MatchError, Progress, SetProblem, SetSolution, WholeJobs,
};
use std::collections::VecDeque;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

/// Problems of one set that are remembered; one takes about 200 kB for eight clubs and a full stock.
const SETS: usize = 24;
/// Problems of a day.
const DAYS: usize = 4;
/// Parts that fit, all clubs counted, up to which a problem is remembered: about 3 MB.
const MOST_FITTING: usize = 100_000;
/// Longest search for one set where nothing else is asked. What a workshop has on its shelves takes milliseconds; a
/// hundred thousand parts that all differ are planned as well as that time allows, with the bound that it gave.
const USUAL: Duration = Duration::from_secs(2);

/// What was proven, shared by all clones of the program.
#[derive(Debug, Clone, Default)]
pub(crate) struct Proven {
    sets: Arc<Mutex<Recent<SetProblem, SetSolution>>>,
    days: Arc<Mutex<Recent<(DayProblem, Search), DaySolution>>>,
    to_come: Arc<Mutex<Recent<DayProblem, DaySolution>>>,
    whole: Arc<Mutex<Recent<DayProblem, WholeJobs>>>,
    beside: Arc<Mutex<Option<Beside>>>,
    /// How many searches were begun beside the requests.
    searches: Arc<AtomicU64>,
    faults: Faults,
}

/// How a day was searched: its plan depends on it unless it is proven.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Search {
    /// Longest search, s.
    pub seconds: f64,
    /// What the search's random choices start from: the same seed and problem give the same plan.
    pub seed: u64,
}

impl Proven {
    /// Nothing remembered yet; where the question is kept of a plan that fails its check.
    pub fn new(faults: Faults) -> Self {
        Self { faults, ..Self::default() }
    }

    /// The choice for one set: remembered, or searched for and remembered.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn set(&self, problem: &SetProblem) -> Result<SetSolution, MatchError> {
        self.set_until(problem, Instant::now() + USUAL, &mut |_| true)
    }

    /// As [`Self::set`], searching until a moment at the latest, and only as long as `go_on` says so: the first plan is
    /// made all the same.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn set_until(
        &self,
        problem: &SetProblem,
        end: Instant,
        go_on: &mut dyn FnMut(Progress) -> bool,
    ) -> Result<SetSolution, MatchError> {
        let begun = Instant::now();
        let mut search = |problem: &SetProblem| {
            let mut go_on = |progress| go_on(progress) && Instant::now() < end;
            matching::solve_set_watched(problem, Limits::default(), &mut go_on)
                .map_err(|e| self.faults.keep(e, Question::Set(problem)))
        };
        if fitting(&problem.clubs) > MOST_FITTING {
            return search(problem);
        }
        // What little time left unproven may be proven at the next look.
        let settled = |found: &SetSolution| found.proven || (end >= begun + USUAL && begun.elapsed() >= USUAL);
        remembered(&self.sets, SETS, problem, search, settled)
    }

    /// One of several choices that are wanted by a moment: remembered, or searched for a third of the time that is left;
    /// none when it would be begun after `last`, or `go_on` says that there is no time.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn one_more(
        &self,
        problem: &SetProblem,
        last: Instant,
        end: Instant,
        go_on: &mut dyn FnMut() -> bool,
    ) -> Result<Option<SetSolution>, MatchError> {
        let now = Instant::now();
        if now < last && go_on() {
            return self.set_until(problem, now + (end - now) / 3, &mut |_| go_on()).map(Some);
        }
        Ok(held(&self.sets).answer(problem))
    }

    /// As [`Self::one_more`], by the usual longest search from now on.
    pub fn several(&self) -> impl FnMut(&SetProblem) -> Result<Option<SetSolution>, MatchError> {
        let end = Instant::now() + USUAL;
        move |problem| self.one_more(problem, end, end, &mut || true)
    }

    /// The choice for a day: remembered, or searched for while `go_on` says so and remembered.
    ///
    /// # Errors
    /// As [`matching::solve_day`].
    pub fn day(
        &self,
        problem: &DayProblem,
        search: Search,
        go_on: &mut dyn FnMut(Progress) -> bool,
    ) -> Result<DaySolution, MatchError> {
        let solve = |(problem, search): &(DayProblem, Search)| self.search_day(problem, search.seed, go_on);
        remembered(&self.days, DAYS, &(problem.clone(), search), solve, |_| true)
    }

    /// Searches for the choice for a day while `go_on` says so; nothing is remembered.
    ///
    /// # Errors
    /// As [`matching::solve_day`].
    pub fn search_day(
        &self,
        problem: &DayProblem,
        seed: u64,
        go_on: &mut dyn FnMut(Progress) -> bool,
    ) -> Result<DaySolution, MatchError> {
        matching::solve_day(problem, seed, go_on).map_err(|e| self.faults.keep(e, Question::Day(problem)))
    }
}

impl Proven {
    /// A plan in which parts count that are not here: remembered, or searched for until a moment.
    ///
    /// # Errors
    /// As [`matching::solve_day`].
    pub fn to_come(&self, problem: &DayProblem, end: Instant) -> Result<DaySolution, MatchError> {
        let search = |problem: &DayProblem| self.search_day(problem, 0, &mut |_| Instant::now() < end);
        if too_large(&problem.sets) {
            return search(problem);
        }
        remembered(&self.to_come, DAYS, problem, search, |_| true)
    }

    /// Which jobs can be built whole: remembered, or searched for until a moment.
    ///
    /// # Errors
    /// As [`matching::whole_jobs`].
    pub fn whole(&self, problem: &DayProblem, end: Instant) -> Result<WholeJobs, MatchError> {
        let search = |problem: &DayProblem| matching::whole_jobs(problem, &mut || Instant::now() < end);
        if too_large(&problem.sets) {
            return search(problem);
        }
        remembered(&self.whole, DAYS, problem, search, |found| found.proven)
    }

    /// The best choice for a day that is remembered, however it was searched for, with the best bound that is.
    pub fn known_day(&self, problem: &DayProblem) -> Option<DaySolution> {
        let days = held(&self.days);
        let mut known: Vec<&DaySolution> = days.0.iter().filter(|x| x.0.0 == *problem).map(|x| &x.1).collect();
        known.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        let bound = known.iter().map(|x| x.bound).fold(0.0, f64::max);
        known.first().map(|best| DaySolution { bound: bound.min(best.cost), ..(*best).clone() })
    }

    /// Remembers what a search of a day found.
    pub fn keep_day(&self, problem: DayProblem, search: Search, found: DaySolution) {
        held(&self.days).keep((problem, search), found, DAYS);
    }

    /// Begins a search beside the requests, over when what is returned is dropped; none where one is under way already
    /// that was not told to stop.
    pub fn begin(&self, seconds: f64) -> Option<Begun> {
        let mut beside = held(&self.beside);
        if beside.as_ref().is_some_and(|b| !b.stopped) {
            return None;
        }
        let begun = Instant::now();
        let number = self.searches.fetch_add(1, Ordering::Relaxed);
        *beside = Some(Beside { number, seconds, begun, cost: f64::INFINITY, bound: 0.0, stopped: false });
        Some(Begun { beside: Arc::clone(&self.beside), number, begun })
    }

    /// The search beside the requests, if there is one.
    pub fn beside(&self) -> Option<DaySearch> {
        let beside = held(&self.beside);
        beside.as_ref().map(|b| DaySearch {
            at: Searching { cost: b.cost, bound: b.bound, seconds: b.begun.elapsed().as_secs_f64() },
            asked_s: b.seconds,
        })
    }

    /// Ends the search beside the requests soon, with the best that it has found.
    pub fn stop(&self) {
        if let Some(beside) = held(&self.beside).as_mut() {
            beside.stopped = true;
        }
    }
}

/// What is known of a search beside the requests.
#[derive(Debug)]
struct Beside {
    /// Which search it is: the one before may be ending still.
    number: u64,
    seconds: f64,
    begun: Instant,
    cost: f64,
    bound: f64,
    stopped: bool,
}

/// A search beside the requests.
pub(crate) struct Begun {
    beside: Arc<Mutex<Option<Beside>>>,
    number: u64,
    begun: Instant,
}

impl Begun {
    /// Seconds since it began.
    pub fn seconds(&self) -> f64 {
        self.begun.elapsed().as_secs_f64()
    }

    /// Notes how far it has come; whether it may go on.
    pub fn go_on(&self, progress: Progress) -> bool {
        let mut beside = held(&self.beside);
        let Some(beside) = beside.as_mut().filter(|b| b.number == self.number) else { return false };
        (beside.cost, beside.bound) = (progress.cost, progress.bound);
        !beside.stopped && beside.begun.elapsed().as_secs_f64() < beside.seconds
    }
}

impl Drop for Begun {
    fn drop(&mut self) {
        held(&self.beside).take_if(|b| b.number == self.number);
    }
}

/// Parts that fit, all clubs counted.
fn fitting(clubs: &[ClubNeed]) -> usize {
    clubs.iter().map(|c| c.heads.len() + c.shafts.len() + c.grips.len()).sum()
}

fn too_large(sets: &[JobSet]) -> bool {
    sets.iter().map(|set| fitting(&set.clubs)).sum::<usize>() > MOST_FITTING
}

fn held<T>(shared: &Mutex<T>) -> MutexGuard<'_, T> {
    shared.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Answers by their questions, the last asked first.
#[derive(Debug)]
struct Recent<Q, A>(VecDeque<(Q, A)>);

impl<Q, A> Default for Recent<Q, A> {
    fn default() -> Self {
        Self(VecDeque::new())
    }
}

impl<Q: PartialEq + Clone, A: Clone> Recent<Q, A> {
    fn answer(&mut self, question: &Q) -> Option<A> {
        let at = self.0.iter().position(|(known, _)| known == question)?;
        let found = self.0.remove(at)?;
        let answer = found.1.clone();
        self.0.push_front(found);
        Some(answer)
    }

    fn keep(&mut self, question: Q, answer: A, most: usize) {
        self.0.retain(|(known, _)| *known != question);
        self.0.push_front((question, answer));
        self.0.truncate(most);
    }
}

/// The lock is not held while an answer is searched for: two who ask the same at once both search.
fn remembered<Q: PartialEq + Clone, A: Clone, E>(
    recent: &Mutex<Recent<Q, A>>,
    most: usize,
    question: &Q,
    search: impl FnOnce(&Q) -> Result<A, E>,
    settled: impl FnOnce(&A) -> bool,
) -> Result<A, E> {
    let known = held(recent).answer(question);
    if let Some(answer) = known {
        return Ok(answer);
    }
    let answer = search(question)?;
    if settled(&answer) {
        held(recent).keep(question.clone(), answer.clone(), most);
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::{Proven, Recent, Search, remembered};
    use matching::instance::{Size, Variant, day, set};
    use matching::{DaySolution, Progress};
    use std::sync::Mutex;
    use std::time::Instant;

    #[test]
    fn the_same_question_is_searched_once_and_the_oldest_goes_first() {
        let recent = Mutex::new(Recent::<u32, u32>::default());
        let mut searched = Vec::new();
        let mut ask = |question: u32| {
            let search = |q: &u32| {
                searched.push(*q);
                if *q == 9 { Err("refused") } else { Ok(q + 100) }
            };
            remembered(&recent, 2, &question, search, |answer| *answer < 107)
        };
        assert_eq!((ask(1), ask(1), ask(2)), (Ok(101), Ok(101), Ok(102)));
        // 1 was asked last, so 3 takes the place of 2; a refusal is not kept.
        assert_eq!((ask(1), ask(3), ask(1), ask(2)), (Ok(101), Ok(103), Ok(101), Ok(102)));
        assert_eq!((ask(9), ask(9)), (Err("refused"), Err("refused")));
        // Nor is an answer that is not settled.
        assert_eq!((ask(7), ask(7)), (Ok(107), Ok(107)));
        assert_eq!(searched, [1, 2, 3, 2, 9, 9, 7, 7]);
    }

    #[test]
    fn what_had_no_time_is_searched_again_and_what_has_none_left_is_not_begun() {
        let proven = Proven::default();
        let problem = set(3, Variant::Plain);
        let now = Instant::now();
        assert_eq!(proven.one_more(&problem, now, now, &mut || true), Ok(None));
        assert!(!proven.set_until(&problem, now, &mut |_| true).expect("a choice").proven);
        let settled = proven.set(&problem).expect("a choice");
        assert!(settled.proven);
        assert_eq!(proven.one_more(&problem, now, now, &mut || true), Ok(Some(settled)));
    }

    #[test]
    fn a_search_beside_can_be_looked_at_and_stopped() {
        let proven = Proven::default();
        assert!(proven.beside().is_none());
        let begun = proven.begin(60.0).expect("none before");
        assert!(proven.begin(1.0).is_none(), "one at a time");
        let progress = Progress { cost: 2.0, bound: 1.5, steps: 7 };
        assert!(begun.go_on(progress));
        let seen = proven.beside().expect("it goes on");
        assert_eq!((seen.at.cost, seen.at.bound, seen.asked_s), (2.0, 1.5, 60.0));
        proven.stop();
        assert!(!begun.go_on(progress));
        // Another may begin while the stopped one is ending, and goes on when that has ended.
        let next = proven.begin(30.0).expect("the first was stopped");
        assert!(!begun.go_on(progress) && next.go_on(progress));
        drop(begun);
        assert_eq!(proven.beside().map(|b| b.asked_s), Some(30.0));
        assert!(next.go_on(progress));
        drop(next);
        assert!(proven.beside().is_none() && proven.begin(1.0).is_some());
    }

    #[test]
    fn of_a_days_searches_the_best_plan_and_the_best_bound_are_known() {
        let proven = Proven::default();
        let problem = day(4, Size { jobs: 2, heads_per_number: 9, shafts: 30, grips: 30 }, Variant::Plain);
        let mut steps = 0;
        let long = matching::solve_day(&problem, 1, &mut |_| {
            steps += 1;
            steps < 400
        })
        .expect("a plan");
        let dear = DaySolution { cost: long.cost + 1.0, bound: long.cost - 1e-4, ..long.clone() };
        for (seconds, found) in [(10.0, &long), (2.0, &dear)] {
            proven.keep_day(problem.clone(), Search { seconds, seed: 0 }, found.clone());
        }
        let known = proven.known_day(&problem).expect("known");
        assert_eq!((known.cost, known.bound), (long.cost, dear.bound));
        let other = day(5, Size { jobs: 2, heads_per_number: 9, shafts: 30, grips: 30 }, Variant::Plain);
        assert!(proven.known_day(&other).is_none());
    }

    #[test]
    fn a_part_that_weighs_otherwise_makes_another_problem() {
        let proven = Proven::default();
        let problem = set(3, Variant::Plain);
        let first = proven.set(&problem).expect("a choice");
        assert_eq!(proven.set(&problem).expect("the same"), first);
        let mut changed = problem.clone();
        let taken = first.clubs[0].as_ref().expect("built").head;
        // Another head for the one that was taken: 40 points too much, so that no plan wants it.
        for head in changed.clubs[0].heads.iter_mut().filter(|h| h.part == taken) {
            head.points += 40.0;
        }
        let anew = proven.set(&changed).expect("a choice");
        assert_ne!(anew.clubs[0].as_ref().expect("built").head, taken);
        assert_eq!(proven.set(&problem).expect("still known"), first);
    }
}
