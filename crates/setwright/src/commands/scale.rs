//! Trying out a scale on a serial line: its raw lines and what is read from them.

use super::{reader, say};
use crate::config::ScaleArguments;
use crate::failure::CommandFault;
use crate::failure::Failure;
use instrument::scale::{Heard, Ports, ScaleLine, ScaleSaid};
use std::sync::mpsc::channel;
use std::time::{Duration, Instant};
use trade::connection::{Connection, LineFormat, MarkMeans, Parity, SettledMark, Shows};
use words::text;

/// Prints what a scale sends for some seconds.
///
/// # Errors
/// Settings that no serial line has; a port that never opened.
pub fn scale(arguments: &ScaleArguments) -> Result<(), Failure> {
    let w = reader();
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
        if let Heard::Lost { why } = &event.heard {
            last.clone_from(why);
        }
        let line = match &event.heard {
            Heard::Connected => w.tell(&ScaleSaid::Connected),
            Heard::Silent => w.tell(&ScaleSaid::Silent),
            Heard::Flooding => w.tell(&ScaleSaid::Flooding),
            Heard::Lost { why } => w.tell(&ScaleSaid::Lost { why: why.clone() }),
            Heard::Line { raw, read } => {
                let read = match read {
                    ScaleLine::Refused { why } => text!(w, "scale-command-refused", why = why),
                    read => w.tell(&read.said()),
                };
                text!(w, "scale-command-line", raw = format!("{raw:?}"), read = read)
            }
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
