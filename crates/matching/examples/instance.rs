//! Writes a seeded instance in whole numbers for other solvers, or plans it.
//!
//! `instance S|M|L Plain|TwoHeadModels|Shortage SEED` prints it as JSON; a number of seconds after it prints what this
//! crate's solver reaches in that time (of the processor, where the system tells). `peers/compare.py` reads both.

use std::sync::OnceLock;
use std::time::Instant;

use matching::instance::{Size, Variant, day};
use matching::{ClubNeed, DayProblem, Limits, SetProblem, Tip, solve_day, solve_set};

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let (Some(size), Some(variant), Some(seed)) = (
        args.first().and_then(|a| size(a)),
        args.get(1).and_then(|a| variant(a)),
        args.get(2).and_then(|a| a.parse().ok()),
    ) else {
        eprintln!("usage: instance S|M|L Plain|TwoHeadModels|Shortage SEED [SECONDS]");
        std::process::exit(2);
    };
    let problem = day(seed, size, variant);
    match args.get(3).and_then(|a| a.parse::<f64>().ok()) {
        None => println!("{}", json(&problem)),
        Some(seconds) => {
            let (cost, bound) = plan(problem, seconds);
            println!("{{\"cost\": {cost}, \"bound\": {bound}}}");
        }
    }
}

fn size(name: &str) -> Option<Size> {
    match name {
        "S" => Some(Size::S),
        "M" => Some(Size::M),
        "L" => Some(Size::L),
        _ => None,
    }
}

fn variant(name: &str) -> Option<Variant> {
    [Variant::Plain, Variant::TwoHeadModels, Variant::Shortage].into_iter().find(|v| format!("{v:?}") == name)
}

/// Cost and bound in quanta.
fn plan(mut problem: DayProblem, seconds: f64) -> (f64, f64) {
    let quantum = problem.weights.quantum;
    let (cost, bound) = if problem.sets.len() == 1 {
        let set = SetProblem { clubs: problem.sets.remove(0).clubs, stock: problem.stock, weights: problem.weights };
        let plan = solve_set(&set, Limits::default()).expect("valid instance");
        (plan.cost, plan.bound)
    } else {
        let start = busy();
        let plan = solve_day(&problem, 1, &mut |_| busy() - start < seconds).expect("valid instance");
        (plan.cost, plan.bound)
    };
    ((cost / quantum).round(), (bound / quantum).round())
}

/// Seconds that this process has had a processor, or else since its first call.
fn busy() -> f64 {
    static START: OnceLock<Instant> = OnceLock::new();
    let told = std::fs::read_to_string("/proc/self/schedstat").ok();
    let ns = told.and_then(|t| t.split(' ').next().and_then(|x| x.parse::<f64>().ok()));
    ns.map_or_else(|| START.get_or_init(Instant::now).elapsed().as_secs_f64(), |ns| ns * 1e-9)
}

/// A cost as the solver rounds it; see [`matching::CostWeights::quantum`].
fn quanta(problem: &DayProblem, cost: f64) -> i64 {
    (cost / problem.weights.quantum + 0.5 + 1e-6).floor() as i64
}

fn milli(points: f64) -> i64 {
    (points * 1000.0).round() as i64
}

fn json(problem: &DayProblem) -> String {
    let w = &problem.weights;
    let sets: Vec<String> = problem
        .sets
        .iter()
        .map(|set| {
            let clubs: Vec<String> = set.clubs.iter().map(|c| club(problem, c)).collect();
            format!("[{}]", clubs.join(",\n"))
        })
        .collect();
    let stock = &problem.stock;
    let tips: Vec<u32> = stock.tips.iter().map(|t| t.count).collect();
    format!(
        "{{\"range_per_dg\": {}, \"unbuilt\": {}, \"heads\": {:?}, \"shafts\": {:?}, \"grips\": {:?}, \"tips\": {tips:?},\n\
         \"sets\": [{}]}}",
        quanta(problem, w.shaft_range_per_g / 10.0),
        quanta(problem, w.unbuilt),
        stock.heads,
        stock.shafts,
        stock.grips,
        sets.join(",\n")
    )
}

/// Parts as [number, thousandths of a point, tenths of a gram of residual]; tip options as [points, cost, which].
fn club(problem: &DayProblem, c: &ClubNeed) -> String {
    let list = |parts: &[matching::Candidate], nominal_g: f64| -> Vec<[i64; 3]> {
        let part =
            |x: &matching::Candidate| [x.part as i64, milli(x.points), ((x.mass_g - nominal_g) * 10.0).round() as i64];
        parts.iter().map(part).collect()
    };
    let (heads, grips) = (list(&c.heads, 0.0), list(&c.grips, 0.0));
    let shafts = list(&c.shafts, c.shaft_nominal_g);
    let half = milli(c.loss.reach_points());
    let loss: Vec<i64> = (-half..=half)
        .map(|r| c.loss.cost(r as f64 / 1000.0).map_or(-1, |x| quanta(problem, x * problem.weights.loss)))
        .collect();
    format!(
        "{{\"base\": {}, \"heads\": {heads:?}, \"shafts\": {shafts:?}, \"grips\": {grips:?}, \"tips\": {:?}, \
         \"loss\": {loss:?}}}",
        milli(c.base_points),
        tip_options(problem, c)
    )
}

fn tip_options(problem: &DayProblem, c: &ClubNeed) -> Vec<Vec<i64>> {
    let tray: &[Tip] = &problem.stock.tips;
    let w = &problem.weights;
    let mut out = vec![vec![0, 0]];
    let fit = |tip: usize| c.tips.iter().find(|f| f.tip == tip);
    let mut push = |tips: &[usize], lost_points: f64| {
        let grams: f64 = tips.iter().map(|&t| tray[t].grams).sum();
        let Some(fits) = tips.iter().map(|&t| fit(t)).collect::<Option<Vec<_>>>() else { return };
        if grams <= c.tip_cap_g {
            let points = fits.iter().map(|f| milli(f.points)).sum::<i64>() - milli(lost_points);
            let second = if tips.len() > 1 { quanta(problem, w.second_tip) } else { 0 };
            let mut option = vec![points, quanta(problem, grams * w.tip_per_g) + second];
            option.extend(tips.iter().map(|&t| t as i64));
            out.push(option);
        }
    };
    c.tips.iter().for_each(|f| push(&[f.tip], 0.0));
    c.tip_pairs.iter().for_each(|p| push(&[p.lower, p.upper], p.lost_points));
    out
}
