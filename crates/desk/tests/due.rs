//! Goal: what planning jobs together brings, which due dates hold, what waits for what, and what to order by when. Method: one
//! set of the demonstration shop as several jobs, on a stock cut down until the answer is known by hand.

use crate::set::Set;
use desk::ask::{AskClub, AskGround, ask};
use desk::planner::{
    Brings, DayPlan, DueState, Goes, SolveDay, StandsInTheWay, Supply, WhichPlan, propose_day, propose_day_with,
};
use jiff::ToSpan;
use jiff::civil::{Date, date};
use matching::{DayProblem, DaySolution, MatchError, WholeJobs};
use rstest::rstest;
use trade::id::JobId;
use trade::model::PartKind;
use trade::order::{ForJob, Order, OrderLine};
use trade::part::Part;

const TODAY: Date = date(2026, 3, 2);

/// The set as a job of its own, due in so many days, with these of its clubs.
fn job(number: i64, days: i64, clubs: &[&str]) -> Set {
    let mut set = Set::open();
    set.job.id = JobId(format!("job-{number}"));
    set.job.number = number;
    set.job.sheet.due = TODAY + days.days();
    set.job.clubs.retain(|club| clubs.contains(&club.target.number.as_str()));
    set
}

/// The stock with so many heads of these numbers, the others of the shop's as they are.
fn stock(set: &Set, heads: &[(&str, usize)]) -> Vec<Part> {
    let mut left: Vec<(&str, usize)> = heads.to_vec();
    let mut keep = |part: &Part| {
        let number = part.number.as_deref().unwrap_or_default();
        match left.iter_mut().find(|(n, _)| part.kind == PartKind::Head && part.model == "SISKIN" && *n == number) {
            Some((_, 0)) => false,
            Some((_, n)) => {
                *n -= 1;
                true
            }
            None => true,
        }
    };
    set.parts.iter().filter(|part| keep(part)).cloned().collect()
}

fn heads_on_order(count: i64, expected_on: Option<Date>, jobs: &[(i64, i64)]) -> Order {
    Order {
        line: OrderLine {
            id: "o".into(),
            order: 12,
            supplier: "Harrowgate Castings".into(),
            kind: PartKind::Head,
            model: "SISKIN".into(),
            number: Some("7".into()),
            count,
            from_g: None,
            to_g: None,
            jobs: jobs
                .iter()
                .map(|&(number, count)| ForJob { job: JobId(format!("job-{number}")), number, count })
                .collect(),
            note: String::new(),
            ordered_on: TODAY,
            expected_on,
            by: "Ines".into(),
            at: crate::set::time(0),
        },
        events: Vec::new(),
    }
}

fn plan(jobs: &[&Set], parts: &[Part], orders: &[Order]) -> DayPlan {
    let jobs: Vec<_> = jobs.iter().map(|set| set.assembly()).collect();
    propose_day(&jobs, Supply { parts, held: &[], orders }, TODAY, 1, &mut |p| p.steps < 20).unwrap()
}

fn states(day: &DayPlan) -> Vec<(i64, DueState)> {
    day.due.jobs.iter().map(|job| (job.number, job.fact.clone())).collect()
}

/// Three jobs and one head for the club of each: it goes to the one that is due first, whatever their numbers.
#[test]
fn a_scarce_head_goes_to_the_job_that_is_due_first_and_the_others_are_ordered() {
    let (a, b, c) = (job(3, 3, &["7"]), job(1, 10, &["7"]), job(2, 20, &["7"]));
    let day = plan(&[&b, &c, &a], &stock(&a, &[("7", 1)]), &[]);
    assert_eq!(day.jobs.iter().map(|job| job.number).collect::<Vec<_>>(), [3, 1, 2], "the earliest due first");
    assert_eq!((&day.due.whole[..], day.due.proven, &day.due.in_the_way), (&[3][..], true, &None));
    let (by_b, by_c) = (date(2026, 3, 11), date(2026, 3, 21));
    let order = |by_on| DueState::Order { by_on };
    assert_eq!(states(&day), [(3, DueState::Here), (1, order(by_b)), (2, order(by_c))]);
    // Both want the same head, so it is one order, to be here for the first of them.
    let [to_order] = &day.due.to_order[..] else { panic!("{:?}", day.due.to_order) };
    assert_eq!((to_order.kind, to_order.model.as_str(), to_order.count), (PartKind::Head, "SISKIN", 2));
    assert_eq!((to_order.number.as_deref(), to_order.by_on, &to_order.jobs[..]), (Some("7"), by_b, &[1, 2][..]));
    // The window is that of the page that says which heads to ask for.
    let target = &b.job.clubs[0].target;
    let asked = AskGround {
        library: &b.library,
        shop: &b.shop,
        parts: &stock(&a, &[("7", 1)]),
        supply: &[],
        cap_g: None,
        within_points: target.tolerances.swing_weight_points,
    };
    let window = &ask(&[AskClub::from(target)], asked).unwrap()[0];
    assert_eq!((to_order.from_g, to_order.to_g), (Some(window.from_g), Some(window.to_g)));
    let [scarce] = &day.due.scarce[..] else { panic!("{:?}", day.due.scarce) };
    let due = |set: &Set| set.job.sheet.due;
    assert_eq!(
        scarce.goes,
        [
            Goes::Here { job: 3, due_on: due(&a), n: 1 },
            Goes::Order { job: 1, due_on: due(&b), n: 1, by_on: by_b },
            Goes::Order { job: 2, due_on: due(&c), n: 1, by_on: by_c },
        ]
    );
}

/// One head here, one on order, jobs due in 3, 10 and 20 days: which of them waits for it follows from the day it comes.
#[rstest]
#[case::in_time_for_both(Some(5), &[], [1, 2])]
#[case::on_the_last_day(Some(9), &[], [1, 2])]
#[case::on_the_due_day(Some(10), &[], [2, 1])]
#[case::late_for_both(Some(30), &[], [0, 1])]
#[case::nobody_knows(None, &[], [0, 1])]
#[case::meant_for_a_job_elsewhere(Some(5), &[(9, 1)], [0, 0])]
fn which_job_waits_for_a_delivery_follows_from_the_day_it_comes(
    #[case] days: Option<i64>,
    #[case] meant: &[(i64, i64)],
    #[case] who: [i64; 2],
) {
    // The job that waits and holds its day, and the one for which parts are ordered; 0 for either of them and for none.
    let [waits, orders] = who;
    let (a, b, c) = (job(3, 3, &["7"]), job(1, 10, &["7"]), job(2, 20, &["7"]));
    let expected_on = days.map(|days| TODAY + days.days());
    let day = plan(&[&a, &b, &c], &stock(&a, &[("7", 1)]), &[heads_on_order(1, expected_on, meant)]);
    assert_eq!(day.due.whole, [3]);
    let holds: Vec<i64> = day
        .due
        .jobs
        .iter()
        .filter(|job| matches!(job.fact, DueState::Waits { complete_on } if Some(complete_on) == expected_on))
        .map(|job| job.number)
        .collect();
    let ordered: Vec<i64> = day.due.to_order.iter().flat_map(|order| &order.jobs).copied().collect();
    if waits > 0 {
        assert_eq!((&holds[..], &ordered[..]), (&[waits][..], &[orders][..]), "{:?}", day.due.jobs);
        let job = day.due.jobs.iter().find(|job| job.number == waits).unwrap();
        assert_eq!((job.waits.len(), job.waits[0].order, job.waits[0].count), (1, Some(12), 1));
    } else if orders > 0 {
        // One of the two waits for it, too long or not known how long; for the other one must be ordered.
        let late = |job: &&desk::planner::JobDue| match job.fact {
            DueState::Late { complete_on } => Some(complete_on) == expected_on,
            DueState::NoDay => expected_on.is_none(),
            _ => false,
        };
        assert_eq!((holds.len(), ordered.len()), (0, 1));
        assert_eq!(day.due.jobs.iter().filter(late).count(), 1, "{:?}", day.due.jobs);
    } else {
        assert_eq!((holds.len(), &ordered[..]), (0, &[1, 2][..]), "{:?}", day.due.jobs);
    }
}

/// One head of the 6 and one of the 7: the first job takes both, and without it two others can be built.
#[test]
fn a_job_that_stands_in_the_way_of_two_others_is_named() {
    let (a, b, c) = (job(1, 3, &["6", "7"]), job(2, 10, &["6"]), job(3, 20, &["7"]));
    let parts = stock(&a, &[("6", 1), ("7", 1)]);
    let day = plan(&[&a, &b, &c], &parts, &[]);
    assert_eq!(day.due.whole, [1]);
    assert_eq!(day.due.in_the_way, Some(StandsInTheWay { job: 1, builds: vec![2, 3] }));
    // With two of the 6, there is one for each, and none is in the way of more than one.
    let day = plan(&[&a, &b, &c], &stock(&a, &[("6", 2), ("7", 1)]), &[]);
    assert_eq!((&day.due.whole[..], &day.due.in_the_way), (&[1, 2][..], &None));
}

/// Clubs that each lack one part are spread over the jobs by a plan that only counts clubs; the jobs that can be built whole
/// are told all the same.
#[test]
fn enough_for_all_needs_no_order() {
    let (a, b) = (job(1, 3, &["6", "7"]), job(2, 10, &["6", "7"]));
    let day = plan(&[&a, &b], &stock(&a, &[]), &[]);
    assert_eq!((&day.due.whole[..], day.due.proven), (&[1, 2][..], true));
    assert!(day.due.to_order.is_empty() && day.due.scarce.is_empty());
    assert!(day.due.jobs.iter().all(|job| job.fact == DueState::Here));
}

/// Searches the day once and remembers what it was, so that both plans come of the same search.
struct Once(Option<DaySolution>);

impl SolveDay for Once {
    fn day(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        if let Some(found) = &self.0 {
            return Ok(found.clone());
        }
        let found = matching::solve_day(problem, 1, &mut |p| p.steps < 20)?;
        Ok(self.0.insert(found).clone())
    }

    fn to_come(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError> {
        matching::solve_day(problem, 1, &mut |_| false)
    }

    fn whole(&mut self, problem: &DayProblem) -> Result<WholeJobs, MatchError> {
        matching::whole_jobs(problem, &mut || true)
    }
}

/// Two 7-irons and two heads. The first wants a head between them, a little nearer to the heavy one, and takes that in its
/// turn; the second wants the heavy one. Together the first takes the light one, which may be out of the second's reach.
#[rstest]
#[case::better([-2.0, 1.5], 0.75)]
#[case::more_clubs([-4.0, 3.0], 1.5)]
fn what_planning_together_brings_is_told_and_the_plain_plan_is_at_hand(
    #[case] off_g: [f64; 2],
    #[case] more_points: f64,
) {
    let (a, mut b) = (job(1, 3, &["7"]), job(2, 13, &["7"]));
    let mut parts = stock(&a, &[("7", 2)]);
    parts.retain(|part| part.kind != PartKind::TipWeight);
    let target = a.job.clubs[0].target.clone();
    let asked = |parts| AskGround {
        library: &a.library,
        shop: &a.shop,
        parts,
        supply: &[],
        cap_g: Some(0.0),
        within_points: 0.0,
    };
    let bare_g = ask(&[AskClub::from(&target)], asked(&parts)).unwrap()[0].bare_g;
    let masses = off_g.map(|off_g| bare_g + off_g);
    let heads = parts.iter_mut().filter(|p| p.kind == PartKind::Head && p.number.as_deref() == Some("7"));
    heads.filter(|p| p.model == "SISKIN").zip(masses).for_each(|(head, mass_g)| head.mass_g = Some(mass_g));
    // A gram in the head is about half a point.
    b.job.clubs[0].target.swing_weight_points += more_points;
    let jobs = [a.assembly(), b.assembly()];
    let mut once = Once(None);
    let mut planned = |which| propose_day_with(&jobs, &parts, TODAY, which, &mut once).unwrap();
    let (together, plain) = (planned(WhichPlan::Together), planned(WhichPlan::InTurn));
    let heads = |day: &DayPlan| -> Vec<f64> {
        let clubs = day.jobs.iter().flat_map(|job| job.plan.clubs.iter().flatten());
        clubs.map(|club| club.part(PartKind::Head).unwrap().mass_g).collect()
    };
    assert_eq!(heads(&together), masses);
    let worth = together.worth.clone().unwrap();
    let unbuilt = worth.in_turn.unbuilt;
    assert_eq!(heads(&plain), [masses[1], masses[0]][..2 - unbuilt]);
    assert_eq!((together.which, plain.which), (WhichPlan::Together, WhichPlan::InTurn));
    assert_eq!(plain.worth, Some(worth.clone()), "either plan says the same of both");
    assert!((plain.cost - together.cost - worth.saves).abs() < 1e-9 && worth.saves > 0.05, "{worth:?}");
    assert!(worth.together.inside > worth.in_turn.inside + 0.05, "{worth:?}");
    // The whole is the sum of the jobs, and of what the plans themselves say of their clubs' tips.
    let inside: f64 = worth.jobs.iter().map(|job| job.together.inside).sum();
    assert!((inside - worth.together.inside).abs() < 1e-9);
    assert!(worth.jobs[0].together.inside < worth.jobs[0].in_turn.inside, "the first gives way: {worth:?}");
    match worth.fact {
        Brings::Better { more_inside, .. } => assert!(unbuilt == 0 && more_inside > 0.05),
        Brings::Built { clubs } => assert_eq!((clubs, unbuilt, plain.jobs[1].plan.missing.len()), (1, 1, 1)),
        Brings::Nothing => panic!("{worth:?}"),
    }
    assert_eq!(off_g[0] < -3.0, unbuilt == 1);
}

/// Where each has all that it wants, it comes out the same to a hundredth of a club, whatever tip weights it comes by; of a single
/// job nothing is said.
#[test]
fn where_planning_together_brings_nothing_it_says_so() {
    let (a, b) = (job(1, 3, &["6"]), job(2, 10, &["7"]));
    let worth = plan(&[&a, &b], &a.parts, &[]).worth.unwrap();
    assert_eq!((&worth.fact, worth.saves < 0.05), (&Brings::Nothing, true), "{worth:?}");
    let (together, in_turn) = (worth.together, worth.in_turn);
    assert_eq!((together.unbuilt, in_turn.unbuilt), (0, 0));
    assert!((together.inside - in_turn.inside).abs() < 0.01, "{worth:?}");
    assert_eq!(plan(&[&a], &a.parts, &[]).worth, None);
}
