//! Days of every family against the clock: what the plan costs, what is proven, and when.
//!
//! `cargo bench -p matching --bench families -- [FAMILY …] [jobs=10,40,100] [seeds=0-2] [seconds=1,10]`; without
//! arguments ten jobs of all families. Each day is planned in a process of its own, so that the memory told is its own. Seconds are
//! those of the processor where the system tells them.

#[path = "../tests/families/draw.rs"]
mod draw;

use std::process::Command;
use std::sync::OnceLock;
use std::time::Instant;

use draw::{FAMILIES, Family, draw as draw_day};
use matching::{DayProblem, Limits, SetProblem, solve_day, solve_set};

fn main() {
    let args: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with("--")).collect();
    let told = |key: &str| args.iter().find_map(|a| a.strip_prefix(key)?.strip_prefix('='));
    let numbers = |text: &str| -> Vec<f64> { text.split(',').filter_map(|x| x.parse().ok()).collect() };
    let families: Vec<Family> = FAMILIES.into_iter().filter(|f| args.iter().any(|a| *a == format!("{f:?}"))).collect();
    let families = if families.is_empty() { FAMILIES.to_vec() } else { families };
    let jobs: Vec<usize> = numbers(told("jobs").unwrap_or("10")).iter().map(|&x| x as usize).collect();
    let seconds = numbers(told("seconds").unwrap_or("1,10"));
    let (from, to) = told("seeds").unwrap_or("0-2").split_once('-').expect("seeds=FROM-TO");
    let seeds = from.parse::<u64>().expect("a number")..=to.parse().expect("a number");
    if told("one").is_some() {
        let row = format!("{:?} | {} | {}", families[0], 8 * jobs[0], seeds.start());
        let problem = draw_day(families[0], jobs[0], *seeds.start());
        if told("apart").is_some() {
            one_by_one(&row, problem);
        } else {
            one(&row, &problem, &seconds);
        }
        return;
    }
    println!(
        "| family | clubs | seed | s | cost | bound | gap % | unbuilt | MB |\n|---|---|---|---|---|---|---|---|---|"
    );
    for &family in &families {
        for &jobs in &jobs {
            for seed in seeds.clone() {
                let mut own = Command::new(std::env::current_exe().expect("a name"));
                own.args(["one=", &format!("{family:?}"), &format!("jobs={jobs}"), &format!("seeds={seed}-{seed}")]);
                own.args([&format!("seconds={}", told("seconds").unwrap_or("1,10"))]);
                own.args(told("apart").map(|_| "apart="));
                assert!(own.status().expect("runs").success());
            }
        }
    }
}

/// A first plan by itself, then the day up to the last of the given times, noted at each.
fn one(row: &str, problem: &DayProblem, seconds: &[f64]) {
    let note = |s: f64, cost: f64, bound: f64, unbuilt: &str| {
        let gap = if cost > 0.0 { 100.0 * (cost - bound) / cost } else { 0.0 };
        println!("| {row} | {s:.2} | {cost:.4} | {bound:.4} | {gap:.2} | {unbuilt} | {} |", peak_mb());
    };
    let unbuilt = |plan: &matching::DaySolution| plan.unbuildable.len().to_string();
    let start = busy();
    let first = solve_day(problem, 1, &mut |_| false).expect("valid");
    note(busy() - start, first.cost, first.bound, &unbuilt(&first));
    let (last, before) = seconds.split_last().expect("a time");
    let mut due = before.iter().peekable();
    let start = busy();
    let plan = solve_day(problem, 1, &mut |now| {
        let passed = busy() - start;
        while let Some(&&limit) = due.peek()
            && passed >= limit
        {
            note(limit, now.cost, now.bound, "");
            due.next();
        }
        passed < *last
    });
    let plan = plan.expect("valid");
    note(busy() - start, plan.cost, plan.bound, &format!("{}, {} rounds", unbuilt(&plan), plan.rounds));
}

/// Set by set, the most urgent first, each with its proof on what the sets before have left.
fn one_by_one(row: &str, mut problem: DayProblem) {
    let start = busy();
    problem.sets.sort_by(|a, b| b.priority.total_cmp(&a.priority));
    let (mut cost, mut unbuilt) = (0.0, 0);
    for set in problem.sets {
        let alone = SetProblem { clubs: set.clubs, stock: problem.stock.clone(), weights: problem.weights };
        let plan = solve_set(&alone, Limits::default()).expect("valid");
        cost += plan.cost * set.priority;
        unbuilt += plan.unbuildable.len();
        for club in plan.clubs.iter().flatten() {
            problem.stock.heads[club.head] -= 1;
            problem.stock.shafts[club.shaft] -= 1;
            problem.stock.grips[club.grip] -= 1;
            club.tips.iter().for_each(|&tip| problem.stock.tips[tip].count -= 1);
        }
    }
    println!("| {row} | {:.2} | {cost:.4} | | | {unbuilt} | {} |", busy() - start, peak_mb());
}

/// Seconds that this process has had a processor, so that other work on the machine does not count; where the system does
/// not tell, seconds since the first call.
fn busy() -> f64 {
    static START: OnceLock<Instant> = OnceLock::new();
    let told = std::fs::read_to_string("/proc/self/schedstat").ok();
    let ns = told.and_then(|t| t.split(' ').next().and_then(|x| x.parse::<f64>().ok()));
    ns.map_or_else(|| START.get_or_init(Instant::now).elapsed().as_secs_f64(), |ns| ns * 1e-9)
}

/// Greatest memory of this process so far, MB, where the system tells.
fn peak_mb() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find(|l| l.starts_with("VmHWM")).unwrap_or_default();
    let kb: Option<u64> = line.split_whitespace().nth(1).and_then(|x| x.parse().ok());
    kb.map_or("?".into(), |kb| format!("{:.0}", kb as f64 / 1024.0))
}
