//! Calculations.

use crate::config::Calc;
use crate::failure::Failure;
use app::AppError;
use serde_json::Value;
use std::io::Read;

/// Reads a document from standard input, calculates, and prints what came out.
///
/// # Errors
/// A document that cannot be read; what the calculation refuses.
pub fn calc(arguments: &Calc) -> Result<(), Failure> {
    let Some(topic) = &arguments.topic else {
        for topic in clubphysics::calc::topics() {
            println!("{:12} {}", topic.name, topic.summary);
        }
        return Ok(());
    };
    if arguments.example {
        let known = clubphysics::calc::topics().iter().find(|t| t.name == topic);
        let Some(known) = known else {
            return Err(app::calc::run(topic, Value::Null).map_or_else(Into::into, |_| unreadable("no such topic")));
        };
        return super::print_json(&(known.example)());
    }
    let mut text = String::new();
    std::io::stdin()
        .read_to_string(&mut text)
        .map_err(|e| Failure::usage(format!("standard input could not be read: {e}")))?;
    let input: Value = serde_json::from_str(&text).map_err(|e| {
        unreadable(&format!(
            "standard input is no JSON document: {e}. See one that works with: setwright calc {topic} --example"
        ))
    })?;
    let output = app::calc::run(topic, input).map_err(|e: AppError| Failure::from(e))?;
    if arguments.json { super::print_json(&output) } else { super::print::document(&output) }
}

fn unreadable(message: &str) -> Failure {
    Failure::usage(message)
}
