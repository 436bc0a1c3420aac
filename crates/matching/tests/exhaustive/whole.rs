//! Goal: the jobs named can be built whole, and no other could be beside them. Method: all plans of random small days tried
//! (see [`least_of_all`]) at costs of which only an unbuilt club has any.

use super::{as_day, least_of_all, small_set};
use matching::{CostWeights, DayProblem, InTheWay, WholeJobs, whole_jobs};
use proptest::prelude::*;

/// Whether all clubs of these jobs can be built: then a plan costs nothing.
fn buildable(day: &DayProblem, jobs: &[usize]) -> bool {
    let mut sets: Vec<_> = jobs.iter().map(|&job| day.sets[job].clone()).collect();
    for club in sets.iter_mut().flat_map(|set| &mut set.clubs) {
        let lists = [&mut club.heads, &mut club.shafts, &mut club.grips].into_iter().chain(&mut club.adapters);
        lists.flatten().for_each(|part| part.extra_cost = 0.0);
        club.mass_target = None;
    }
    let weights = CostWeights {
        loss: 0.0,
        tip_per_g: 0.0,
        second_tip: 0.0,
        shaft_range_per_g: 0.0,
        mass_per_g: 0.0,
        ..CostWeights::default()
    };
    sets.is_empty() || least_of_all(&DayProblem { sets, stock: day.stock.clone(), weights }) == 0
}

/// The jobs of `more`, each that can be built beside `jobs` and those before it.
fn added(day: &DayProblem, jobs: &[usize], more: impl Iterator<Item = usize>) -> Vec<usize> {
    let mut all = jobs.to_vec();
    for job in more {
        all.push(job);
        if !buildable(day, &all) {
            all.pop();
        }
    }
    all.split_off(jobs.len())
}

/// The same by trying everything.
fn by_trying(day: &DayProblem) -> WholeJobs {
    let n = day.sets.len();
    let chosen = added(day, &[], 0..n);
    let mut in_the_way: Option<InTheWay> = None;
    for &job in &chosen {
        let rest: Vec<usize> = chosen.iter().copied().filter(|&other| other != job).collect();
        let builds = added(day, &rest, (0..n).filter(|other| !chosen.contains(other)));
        if builds.len() >= in_the_way.as_ref().map_or(2, |best| best.builds.len()) {
            in_the_way = Some(InTheWay { job, builds });
        }
    }
    WholeJobs { whole: (0..n).map(|job| chosen.contains(&job)).collect(), in_the_way, proven: true }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases.max(400), ..ProptestConfig::default() })]

    #[test]
    fn whole_jobs_are_those_that_trying_all_plans_finds(
        problem in small_set([4, 4, 4, 2], 2..=4),
        split in 1..3_usize,
    ) {
        let day = as_day(&problem, split, &[1.0, 1.7]);
        prop_assert_eq!(whole_jobs(&day, &mut || true).expect("valid problem"), by_trying(&day));
    }
}

#[test]
fn a_search_without_time_claims_nothing() {
    use matching::instance::{Size, Variant, day};
    let day = day(3, Size { jobs: 2, heads_per_number: 20, shafts: 60, grips: 50 }, Variant::Plain);
    let found = whole_jobs(&day, &mut || false).expect("valid problem");
    assert_eq!(found, WholeJobs { whole: vec![false, false], in_the_way: None, proven: false });
}
