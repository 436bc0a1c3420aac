//! Trying out a scale on a serial line: its raw lines and what is read from them.

use super::say;
use crate::config::ScaleArguments;
use crate::failure::CommandFault;
use crate::failure::Failure;
use instrument::scale::{Heard, Ports, ScaleLine};
use std::sync::mpsc::channel;
use std::time::{Duration, Instant};
use trade::connection::{Connection, LineFormat, MarkMeans, Parity, SettledMark, Shows};

/// Prints what a scale sends for some seconds.
///
/// # Errors
/// Settings that no serial line has; a port that never opened.
pub fn scale(arguments: &ScaleArguments) -> Result<(), Failure> {
    let mark = arguments.settled.as_ref().map(|t| (t, MarkMeans::Settled));
    let mark = mark.or_else(|| arguments.moving.as_ref().map(|t| (t, MarkMeans::Moving)));
    let connection = Connection {
        key: "scale".into(),
        name: "the scale".into(),
        shows: if arguments.swing_weight { Shows::SwingWeight } else { Shows::Mass },
        port: arguments.port.clone().unwrap_or_default(),
        baud: arguments.baud,
        data_bits: arguments.data_bits,
        parity: Parity::from_key(&arguments.parity)
            .ok_or_else(|| Failure::usage(CommandFault::NotAParity { text: arguments.parity.clone() }))?,
        stop_bits: arguments.stop_bits,
        ask: arguments.ask.clone(),
        format: LineFormat {
            settled: mark.map(|(text, means)| SettledMark { text: text.clone(), means }),
            unit: Some(arguments.unit.clone()).filter(|u| !u.is_empty()),
            overload: arguments.overload.clone(),
            ignore: arguments.ignore.clone(),
            skip: arguments.skip.clone(),
        },
    };
    connection.check().map_err(|e| Failure::usage(e.refusal()))?;
    let (send, heard) = channel();
    let mut ports = Ports::default();
    ports.start(connection, move |event| {
        // The receiver ends with the command.
        let _ = send.send(event);
    });
    let until = Instant::now() + Duration::from_secs_f64(arguments.seconds.clamp(0.1, 86_400.0));
    let mut opened = false;
    let mut last = String::new();
    while let Some(left) = until.checked_duration_since(Instant::now()) {
        let Ok(event) = heard.recv_timeout(left) else { break };
        opened |= event.heard == Heard::Connected;
        let line = match &event.heard {
            Heard::Connected => "connected".to_owned(),
            Heard::Silent => "nothing for some seconds".to_owned(),
            Heard::Flooding => "more lines than are read; some are dropped".to_owned(),
            Heard::Lost { why } => {
                last.clone_from(why);
                format!("{why}; tried again")
            }
            Heard::Line { raw, read } => format!("{raw:?}  →  {}", words(read)),
        };
        if arguments.json {
            let value = match &event.heard {
                Heard::Line { raw, read } => serde_json::json!({ "at_s": event.at_s, "raw": raw, "read": read }),
                _ => serde_json::json!({ "at_s": event.at_s, "event": line }),
            };
            say(&format!("{value}\n"))?;
        } else {
            say(&format!("{:8.2} s  {line}\n", event.at_s))?;
        }
    }
    ports.stop();
    if opened { Ok(()) } else { Err(Failure::outside(CommandFault::PortNeverOpened { log: last })) }
}

fn words(read: &ScaleLine) -> String {
    match read {
        ScaleLine::Value { measured, settled } => {
            let how = settled.map_or("", |s| if s { ", settled" } else { ", moving" });
            match measured {
                instrument::scale::Measured::MassG(g) => format!("{} g{how}", quantity::decimal(*g, 2)),
                instrument::scale::Measured::SwingWeightPoints(p) => {
                    format!("{}{how}", quantity::SwingWeight::from_points(*p).letter(2))
                }
            }
        }
        ScaleLine::Overload => "overload".to_owned(),
        ScaleLine::Nothing => "passed over".to_owned(),
        ScaleLine::Refused { why } => format!("refused: {}", super::reader().refusal(&why.clone().into())),
    }
}
