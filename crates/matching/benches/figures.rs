//! The tables of `README.md`: one set over thirty seeds, days against the clock, a hundred thousand parts.
//!
//! `cargo bench -p matching --bench figures -- [S] [M] [L] [H] [Plain] [TwoHeadModels] [Shortage]`; without arguments all
//! of them (about eight minutes).

use std::sync::OnceLock;
use std::time::{Duration, Instant};

use matching::instance::{Size, Variant, day, first_set, set, unrounded, with_target_masses};
use matching::{Limits, SetProblem, solve_day, solve_set, solve_set_watched};

const VARIANTS: [Variant; 3] = [Variant::Plain, Variant::TwoHeadModels, Variant::Shortage];

fn main() {
    let args: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with('-')).collect();
    let (sizes, names): (Vec<String>, Vec<String>) = args.into_iter().partition(|a| a.len() == 1);
    let wanted = |size: &str| sizes.is_empty() || sizes.iter().any(|a| a == size);
    let variants: Vec<Variant> =
        VARIANTS.into_iter().filter(|v| names.is_empty() || names.contains(&format!("{v:?}"))).collect();
    if wanted("S") {
        one_set(&variants);
    }
    if wanted("M") {
        days("M", Size::M, &[1.0, 10.0], 5, &variants);
    }
    if wanted("L") {
        days("L", Size::L, &[10.0], 3, &variants);
    }
    if wanted("H") {
        hundred_thousand();
    }
}

fn one_set(variants: &[Variant]) {
    println!("| S | median ms | p95 ms | worst ms | proven of 30 |\n|---|---|---|---|---|");
    for variant in variants {
        thirty_sets(&format!("{variant:?}"), |seed| set(seed, *variant));
    }
    thirty_sets("Plain, target masses", |seed| {
        let mut problem = day(seed, Size::S, Variant::Plain);
        with_target_masses(&mut problem, 1.0);
        first_set(problem)
    });
}

fn thirty_sets(name: &str, draw: impl Fn(u64) -> SetProblem) {
    let mut times = Vec::new();
    let mut proven = 0;
    for seed in 0..30 {
        let problem = draw(seed);
        let mut least = f64::INFINITY;
        let mut sure = false;
        for _ in 0..3 {
            let start = settled();
            sure = solve_set(&problem, Limits::default()).expect("valid").proven;
            least = least.min((settled() - start) * 1e3);
        }
        times.push(least);
        proven += u32::from(sure);
    }
    times.sort_by(f64::total_cmp);
    let middle = f64::midpoint(times[14], times[15]);
    println!("| {name} | {middle:.1} | {:.1} | {:.1} | {proven} |", times[28], times[29]);
}

/// Each day is planned once, up to the last of the given times, and noted at each.
fn days(name: &str, size: Size, seconds: &[f64], seeds: u64, variants: &[Variant]) {
    println!("| {name} | seed | s | cost | bound | gap % | unbuilt | peak MB |\n|---|---|---|---|---|---|---|---|");
    for variant in variants {
        for seed in 0..seeds {
            let problem = day(seed, size, *variant);
            let row = |limit: f64, cost: f64, bound: f64, unbuilt: &str| {
                let (gap, peak) = (100.0 * (cost - bound) / cost, peak_mb());
                println!("| {variant:?} | {seed} | {limit} | {cost:.4} | {bound:.4} | {gap:.2} | {unbuilt} | {peak} |");
            };
            let (last, before) = seconds.split_last().expect("a time");
            let mut due = before.iter().peekable();
            let start = busy();
            let plan = solve_day(&problem, 1, &mut |now| {
                let passed = busy() - start;
                while let Some(&&limit) = due.peek()
                    && passed >= limit
                {
                    row(limit, now.cost, now.bound, "");
                    due.next();
                }
                passed < *last
            });
            let plan = plan.expect("valid");
            row(*last, plan.cost, plan.bound, &plan.unbuildable.len().to_string());
        }
    }
}

/// A hundred thousand parts that all differ: how long an answer takes when it is asked for in no time, in one second and in
/// ten.
fn hundred_thousand() {
    println!("| clubs | target mass | seed | asked s | took s | cost | bound | gap % | peak MB |");
    println!("|---|---|---|---|---|---|---|---|---|");
    for jobs in [1, 2, 10] {
        for masses in [false, true] {
            for seed in 0..3 {
                let mut problem = unrounded(seed, Size { jobs, ..Size::HUNDRED_THOUSAND }, Variant::Plain);
                if masses {
                    with_target_masses(&mut problem, 1.0);
                }
                for asked in [0.0, 1.0, 10.0] {
                    let start = settled();
                    let (cost, bound) = if jobs == 1 {
                        let one = first_set(problem.clone());
                        let go_on = &mut |_| busy() - start < asked;
                        let plan = solve_set_watched(&one, Limits::default(), go_on).expect("valid");
                        (plan.cost, plan.bound)
                    } else {
                        let plan = solve_day(&problem, 1, &mut |_| busy() - start < asked).expect("valid");
                        (plan.cost, plan.bound)
                    };
                    let gap = if cost > 0.0 { 100.0 * (cost - bound) / cost } else { 0.0 };
                    let (took, masses) = (settled() - start, if masses { "yes" } else { "" });
                    let row = format!("{} | {masses} | {seed} | {asked} | {took:.2}", 8 * jobs);
                    println!("| {row} | {cost:.4} | {bound:.4} | {gap:.2} | {} |", peak_mb());
                }
            }
        }
    }
}

/// Seconds that this process has had a processor, so that other work on the machine does not count; where the system does
/// not tell, seconds since the first call.
fn busy() -> f64 {
    static START: OnceLock<Instant> = OnceLock::new();
    let told = std::fs::read_to_string("/proc/self/schedstat").ok();
    let ns = told.and_then(|t| t.split(' ').next().and_then(|x| x.parse::<f64>().ok()));
    ns.map_or_else(|| START.get_or_init(Instant::now).elapsed().as_secs_f64(), |ns| ns * 1e-9)
}

/// [`busy`] to better than a millisecond: the system brings its figure up to date when a process goes to sleep.
fn settled() -> f64 {
    std::thread::sleep(Duration::from_micros(1));
    busy()
}

/// Greatest memory of this process so far, MB, where the system tells.
fn peak_mb() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find(|l| l.starts_with("VmHWM")).unwrap_or_default();
    let kb: Option<u64> = line.split_whitespace().nth(1).and_then(|x| x.parse().ok());
    kb.map_or("?".into(), |kb| format!("{:.0}", kb as f64 / 1024.0))
}
