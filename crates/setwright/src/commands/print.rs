//! Answers for a person at a terminal.

use crate::failure::Failure;
use quantity::{Balance, Length, decimal};
use serde_json::Value;
use workshop::job::Job;
use workshop::model::PartKind;
use workshop::plan::Plan;
use workshop::record::{Record, Verdict};

/// A document as lines `field: value`.
///
/// # Errors
/// None; the same shape as the other answers.
pub fn document(value: &Value) -> Result<(), Failure> {
    fn walk(indent: usize, key: &str, value: &Value) {
        let pad = "  ".repeat(indent);
        match value {
            Value::Object(map) => {
                if !key.is_empty() {
                    println!("{pad}{key}:");
                }
                for (k, v) in map {
                    walk(indent + usize::from(!key.is_empty()), k, v);
                }
            }
            Value::Array(list) => {
                println!("{pad}{key}:");
                for item in list {
                    walk(indent + 1, "-", item);
                }
            }
            Value::String(text) => println!("{pad}{key}: {text}"),
            Value::Number(n) => {
                println!("{pad}{key}: {}", n.as_f64().map_or_else(|| n.to_string(), |n| decimal(n, 4)));
            }
            other => println!("{pad}{key}: {other}"),
        }
    }
    walk(0, "", value);
    Ok(())
}

/// A plan.
pub fn plan(job: &Job, plan: &Plan) {
    for (club, chosen) in job.clubs.iter().zip(&plan.clubs) {
        let Some(chosen) = chosen else { continue };
        let code = |kind| chosen.part(kind).map_or("none", |p| p.code.as_str());
        let tip: f64 = chosen.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| p.mass_g).sum();
        println!(
            "{:>4}  head {}  shaft {}  grip {}  tip {} g  cut {} in  target {}",
            club.target.number,
            code(PartKind::Head),
            code(PartKind::Shaft),
            code(PartKind::Grip),
            decimal(tip, 1),
            decimal(Length::from_mm(chosen.cut_shaft_mm).inch(), 2),
            Balance::from_points(club.target.balance_points).letter_short(),
        );
    }
    for missing in &plan.missing {
        println!("{:>4}  {}", missing.number, missing.words);
    }
    println!("{}", if plan.proven { "Proven best for the stated cost." } else { "Best found so far." });
}

/// A record.
pub fn record(record: &Record) {
    println!("Job {}, {}, {}", record.job_number, record.player, record.state);
    for club in &record.clubs {
        for line in &club.lines {
            let figure = |v: Option<f64>| {
                v.map_or_else(
                    || "-".to_owned(),
                    |v| if line.unit == "points" { Balance::from_points(v).letter(1) } else { decimal(v, 1) },
                )
            };
            let verdict = match line.verdict {
                Verdict::NotRead => "",
                other => other.word(),
            };
            println!(
                "{:>4}  {:20} sheet {:>8}  built {:>8} {} {}",
                club.target.number,
                line.what,
                figure(line.target),
                figure(line.built),
                if line.unit == "points" { "" } else { line.unit.as_str() },
                verdict
            );
        }
    }
}
