//! Calculations.

use crate::config::Calc;
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use fact::Fact;
use serde_json::Value;
use std::io::Read;

/// Reads a document from standard input, calculates, and prints what came out.
///
/// # Errors
/// A document that cannot be read; what the calculation refuses.
pub fn calc(arguments: &Calc) -> Result<(), Failure> {
    let w = super::reader();
    let Some(topic) = &arguments.topic else {
        if arguments.json {
            let list: Vec<Value> = clubphysics::calc::topics()
                .iter()
                .map(|t| {
                    let (title, summary) = (w.tell(&t.title()), w.tell(&t.summary()));
                    serde_json::json!({ "name": t.name, "title": title, "summary": summary, "example": (t.example)() })
                })
                .collect();
            return super::print_json(&list);
        }
        for topic in clubphysics::calc::topics() {
            line!("{:12} {}", topic.name, w.tell(&topic.summary()));
        }
        return Ok(());
    };
    // Reject an unknown topic before waiting for standard input.
    let Some(known) = clubphysics::calc::topics().iter().find(|t| t.name == topic) else {
        return match app::calc::run(topic, Value::Null) {
            Err(error) => Err(error.into()),
            Ok(output) => super::print_json(&output),
        };
    };
    if arguments.example {
        return super::print_json(&(known.example)());
    }
    if let Some(path) = &arguments.recording {
        if topic != "pluck" {
            return Err(Failure::usage(CommandFault::NoRecording { topic: topic.to_owned() }));
        }
        let bytes = std::fs::read(path).map_err(|e| Failure::file(path, &e))?;
        let output = app::calc::pluck(&bytes)?;
        return if arguments.json { super::print_json(&output) } else { super::print::document(&output) };
    }
    let mut text = Vec::new();
    std::io::stdin().read_to_end(&mut text).map_err(|e| Failure::usage(CommandFault::Input { log: e.to_string() }))?;
    let input: Value = document::read(&text)
        .map_err(|e| Failure::usage(CommandFault::InputNotJson { topic: topic.to_owned(), what: e.told() }))?;
    let output = app::calc::run(topic, input)?;
    if arguments.json { super::print_json(&output) } else { super::print::document(&output) }
}
