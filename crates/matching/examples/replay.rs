//! Asks a question again that was kept because its plan failed the check.
//!
//! `replay FILE [SECONDS] [SEED]` reads what the program kept (`{"said": …, "set": …}` or `{"said": …, "day": …}`) and
//! prints what the search finds now. A day is searched for one second unless SECONDS is given.

use std::time::Instant;

use matching::{DayProblem, Limits, SetProblem, solve_day, solve_set};
use serde::Deserialize;

#[derive(Deserialize)]
struct Kept {
    said: String,
    set: Option<SetProblem>,
    day: Option<DayProblem>,
}

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let kept = arguments.first().map(std::fs::read_to_string);
    let Some(Ok(text)) = kept else {
        eprintln!("usage: replay FILE [SECONDS] [SEED]");
        std::process::exit(2);
    };
    let kept: Kept = match serde_json::from_str(&text) {
        Ok(kept) => kept,
        Err(error) => {
            eprintln!("this is no question that was kept: {error}");
            std::process::exit(2);
        }
    };
    println!("then: {}", kept.said);
    let given = |at: usize| arguments.get(at).and_then(|a| a.parse::<f64>().ok());
    if let Some(problem) = kept.set {
        match solve_set(&problem, Limits::default()) {
            Ok(plan) => println!("now: cost {}, bound {}, proven {}", plan.cost, plan.bound, plan.proven),
            Err(error) => println!("now: {error}"),
        }
    }
    if let Some(problem) = kept.day {
        let (begun, seconds) = (Instant::now(), given(1).unwrap_or(1.0));
        let seed = given(2).unwrap_or(0.0) as u64;
        match solve_day(&problem, seed, &mut |_| begun.elapsed().as_secs_f64() < seconds) {
            Ok(plan) => println!("now: cost {}, bound {}", plan.cost, plan.bound),
            Err(error) => println!("now: {error}"),
        }
    }
}
