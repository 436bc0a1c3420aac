//! The tables of `README.md`: one set over thirty seeds, days against the clock.
//!
//! `cargo bench -p matching --bench figures -- [S] [M] [L]`; without arguments all of them (about four minutes).

use std::sync::OnceLock;
use std::time::Instant;

use matching::instance::{Size, Variant, day, set};
use matching::{Limits, solve_day, solve_set};

const VARIANTS: [Variant; 3] = [Variant::Plain, Variant::TwoHeadModels, Variant::Shortage];

fn main() {
    let args: Vec<String> = std::env::args().filter(|a| a.len() == 1).collect();
    let wanted = |name: &str| args.is_empty() || args.iter().any(|a| a == name);
    if wanted("S") {
        one_set();
    }
    if wanted("M") {
        days("M", Size::M, &[1.0, 10.0], 5);
    }
    if wanted("L") {
        days("L", Size::L, &[10.0], 3);
    }
}

fn one_set() {
    println!("| S | median ms | p95 ms | worst ms | proven of 30 |\n|---|---|---|---|---|");
    for variant in VARIANTS {
        let mut times = Vec::new();
        let mut proven = 0;
        for seed in 0..30 {
            let problem = set(seed, variant);
            let start = busy();
            let plan = solve_set(&problem, Limits::default()).expect("valid");
            times.push((busy() - start) * 1e3);
            proven += u32::from(plan.proven);
        }
        times.sort_by(f64::total_cmp);
        let middle = f64::midpoint(times[14], times[15]);
        println!("| {variant:?} | {middle:.1} | {:.1} | {:.1} | {proven} |", times[28], times[29]);
    }
}

fn days(name: &str, size: Size, seconds: &[f64], seeds: u64) {
    println!("| {name} | seed | s | cost | bound | gap % | unbuilt | peak MB |\n|---|---|---|---|---|---|---|---|");
    for variant in VARIANTS {
        for seed in 0..seeds {
            let problem = day(seed, size, variant);
            for &limit in seconds {
                let start = busy();
                let plan = solve_day(&problem, 1, &mut |_| busy() - start < limit).expect("valid");
                let (cost, bound, gap) = (plan.cost, plan.bound, 100.0 * plan.gap());
                let (unbuilt, peak) = (plan.unbuildable.len(), peak_mb());
                println!("| {variant:?} | {seed} | {limit} | {cost:.4} | {bound:.4} | {gap:.2} | {unbuilt} | {peak} |");
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

/// Greatest memory of this process so far, MB, where the system tells.
fn peak_mb() -> String {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find(|l| l.starts_with("VmHWM")).unwrap_or_default();
    let kb: Option<u64> = line.split_whitespace().nth(1).and_then(|x| x.parse().ok());
    kb.map_or("?".into(), |kb| format!("{:.0}", kb as f64 / 1024.0))
}
