//! Choices of parts that were proven before.
//!
//! A choice follows from its problem alone: what each part does in each club, what a miss costs, what is there. All of
//! that is read and worked out anew for every look, and only where the whole of it is the same as before, figure by
//! figure, is the choice not searched for again. So nothing has to be told when stock, models, the shop, a sheet or a
//! lock changes, by whichever program: another problem has another answer, and the same problem the same.

use matching::{DayProblem, DaySolution, Limits, MatchError, SetProblem, SetSolution};
use std::collections::VecDeque;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
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
    searching: Arc<AtomicBool>,
}

/// How a day was searched: its plan depends on it unless it is proven.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Search {
    /// Longest search, s.
    pub seconds: f64,
    /// Its seed.
    pub seed: u64,
}

impl Proven {
    /// The choice for one set: remembered, or searched for and remembered.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn set(&self, problem: &SetProblem) -> Result<SetSolution, MatchError> {
        self.set_until(problem, Instant::now() + USUAL)
    }

    /// As [`Self::set`], searching until a moment at the latest: the first plan is made all the same.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn set_until(&self, problem: &SetProblem, end: Instant) -> Result<SetSolution, MatchError> {
        let begun = Instant::now();
        let search = |problem: &SetProblem| {
            matching::solve_set_watched(problem, Limits::default(), &mut |_| Instant::now() < end)
        };
        let fitting: usize = problem.clubs.iter().map(|c| c.heads.len() + c.shafts.len() + c.grips.len()).sum();
        if fitting > MOST_FITTING {
            return search(problem);
        }
        // What little time left unproven may be proven at the next look.
        let settled = |found: &SetSolution| found.proven || end >= begun + USUAL;
        remembered(&self.sets, SETS, problem, search, settled)
    }

    /// One of several choices that are wanted by a moment: remembered, or searched for a third of the time that is left;
    /// none when there is no time left.
    ///
    /// # Errors
    /// As [`matching::solve_set`].
    pub fn one_more(&self, problem: &SetProblem, end: Instant) -> Result<Option<SetSolution>, MatchError> {
        let now = Instant::now();
        if now < end {
            return self.set_until(problem, now + (end - now) / 3).map(Some);
        }
        Ok(self.sets.lock().unwrap_or_else(PoisonError::into_inner).answer(problem))
    }

    /// As [`Self::one_more`], by the usual longest search from now on.
    pub fn several(&self) -> impl FnMut(&SetProblem) -> Result<Option<SetSolution>, MatchError> {
        let end = Instant::now() + USUAL;
        move |problem| self.one_more(problem, end)
    }

    /// The choice for a day: remembered, or found by `solve` and remembered.
    ///
    /// # Errors
    /// Those of `solve`.
    pub fn day(
        &self,
        problem: &DayProblem,
        search: Search,
        solve: impl FnOnce(&DayProblem) -> Result<DaySolution, MatchError>,
    ) -> Result<DaySolution, MatchError> {
        remembered(&self.days, DAYS, &(problem.clone(), search), |(problem, _)| solve(problem), |_| true)
    }
}

impl Proven {
    /// The choice for a day where it is remembered.
    pub fn known_day(&self, problem: &DayProblem, search: Search) -> Option<DaySolution> {
        let mut days = self.days.lock().unwrap_or_else(PoisonError::into_inner);
        days.answer(&(problem.clone(), search))
    }

    /// Begins a search beside the requests, over when what is returned is dropped; none where one is under way already.
    pub fn begin(&self) -> Option<Beside> {
        let begun = !self.searching.swap(true, Ordering::AcqRel);
        begun.then(|| Beside(Arc::clone(&self.searching)))
    }
}

/// A search beside the requests.
pub(crate) struct Beside(Arc<AtomicBool>);

impl Drop for Beside {
    fn drop(&mut self) {
        self.0.store(false, Ordering::Release);
    }
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
    let known = recent.lock().unwrap_or_else(PoisonError::into_inner).answer(question);
    if let Some(answer) = known {
        return Ok(answer);
    }
    let answer = search(question)?;
    if settled(&answer) {
        recent.lock().unwrap_or_else(PoisonError::into_inner).keep(question.clone(), answer.clone(), most);
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::{Proven, Recent, remembered};
    use matching::instance::{Variant, set};
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
        assert_eq!(proven.one_more(&problem, now), Ok(None));
        assert!(!proven.set_until(&problem, now).expect("a choice").proven);
        let settled = proven.set(&problem).expect("a choice");
        assert!(settled.proven);
        assert_eq!(proven.one_more(&problem, now), Ok(Some(settled)));
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
