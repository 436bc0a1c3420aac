//! The port: reading lines, asking, finding the scale again after it was unplugged.

use super::line::{LONGEST, ScaleLine, read_line};
use fact::{Refusal, facts};
use serialport::{DataBits, SerialPort, StopBits};
use std::io::Read;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};
use trade::connection::{Connection, Parity};

/// How long a read waits before it looks whether it should stop.
const WAIT: Duration = Duration::from_millis(100);
/// Pause before a lost port is tried again; it grows to the longest.
const RETRY: Duration = Duration::from_millis(250);
const LONGEST_RETRY: Duration = Duration::from_secs(3);
/// A scale that sends by itself and says nothing for so long is silent.
const SILENT: Duration = Duration::from_secs(5);
/// Bytes that come this soon after opening belong to a line that was begun before.
const SENDING: Duration = Duration::from_millis(250);
/// Lines handed on in a second at most: a flood must not fill the shop's memory or its screens.
const MOST_A_SECOND: u32 = 50;

/// What a scale's line has to say.
#[derive(Debug, Clone, PartialEq)]
pub enum Heard {
    /// The port is open.
    Connected,
    /// A line, as it came and as it is read.
    Line {
        /// The line without its end.
        raw: String,
        /// What it says.
        read: ScaleLine,
    },
    /// Nothing for some seconds.
    Silent,
    /// More lines than a scale sends; those beyond the limit are dropped.
    Flooding,
    /// The port is gone or could not be opened; it is tried again.
    Lost {
        /// What the system said: the port could not be opened, or reading from it failed.
        why: String,
    },
}

facts! {
    /// What is told of a scale besides its lines.
    pub enum ScaleSaid: "scale_heard" {
        /// Its port is open.
        Connected,
        /// Nothing comes.
        Silent,
        /// More lines than can be read.
        Flooding,
        /// Too much, or too little, on the scale.
        TooMuch,
        /// A line does not fit the format.
        Unreadable {
            /// What in the line does not fit, and what to set.
            why: Refusal,
        },
        /// The port is gone or could not be opened.
        Lost {
            /// What the system said: the port could not be opened, or reading from it failed.
            why: String,
        },
    }
}

/// What a scale said and when.
#[derive(Debug, Clone, PartialEq)]
pub struct ScaleEvent {
    /// Key of the scale.
    pub scale: String,
    /// Seconds since the port was opened first.
    pub at_s: f64,
    /// What came of the port then: a line, silence, or its loss.
    pub heard: Heard,
}

/// Running ports; they stop when this is dropped.
#[derive(Debug, Default)]
pub struct Ports {
    running: Vec<(Arc<AtomicBool>, JoinHandle<()>)>,
}

impl Ports {
    /// Starts listening to a scale in a thread of its own. `hear` must be quick.
    pub fn start(&mut self, connection: Connection, hear: impl FnMut(ScaleEvent) + Send + 'static) {
        let stop = Arc::new(AtomicBool::new(false));
        let stopped = Arc::clone(&stop);
        let thread = std::thread::spawn(move || listen(&connection, &stopped, hear));
        self.running.push((stop, thread));
    }

    /// Stops all and waits for them.
    pub fn stop(&mut self) {
        for (stop, _) in &self.running {
            stop.store(true, Ordering::Relaxed);
        }
        for (_, thread) in self.running.drain(..) {
            // A thread that panicked has nothing more to say.
            let _ = thread.join();
        }
    }
}

impl Drop for Ports {
    fn drop(&mut self) {
        self.stop();
    }
}

/// Opens a port as the connection says.
///
/// # Errors
/// No such port, no right to it, or settings that it does not take.
pub fn open(connection: &Connection) -> Result<Box<dyn SerialPort>, serialport::Error> {
    serialport::new(&connection.port, connection.baud)
        .data_bits(if connection.data_bits == 7 { DataBits::Seven } else { DataBits::Eight })
        .parity(match connection.parity {
            Parity::None => serialport::Parity::None,
            Parity::Even => serialport::Parity::Even,
            Parity::Odd => serialport::Parity::Odd,
        })
        .stop_bits(if connection.stop_bits == 2 { StopBits::Two } else { StopBits::One })
        .timeout(WAIT)
        .open()
}

fn listen(connection: &Connection, stop: &AtomicBool, mut hear: impl FnMut(ScaleEvent)) {
    let begun = Instant::now();
    let mut tell = |heard: Heard| {
        hear(ScaleEvent { scale: connection.key.clone(), at_s: begun.elapsed().as_secs_f64(), heard });
    };
    let mut pause = RETRY;
    let mut told_lost = false;
    while !stop.load(Ordering::Relaxed) {
        match open(connection) {
            Ok(port) => {
                (pause, told_lost) = (RETRY, false);
                tell(Heard::Connected);
                let why = read_lines(connection, port, stop, &mut tell);
                if let Some(why) = why {
                    tell(Heard::Lost { why });
                    told_lost = true;
                }
            }
            Err(error) => {
                if !told_lost {
                    tell(Heard::Lost { why: format!("{} could not be opened: {error}", connection.port) });
                    told_lost = true;
                }
            }
        }
        let until = Instant::now() + pause;
        while Instant::now() < until && !stop.load(Ordering::Relaxed) {
            std::thread::sleep(Duration::from_millis(25));
        }
        pause = (pause * 2).min(LONGEST_RETRY);
    }
}

/// Reads until the port is lost (then why) or the listening is to stop.
fn read_lines(
    connection: &Connection,
    mut port: Box<dyn SerialPort>,
    stop: &AtomicBool,
    tell: &mut impl FnMut(Heard),
) -> Option<String> {
    let mut lines = Lines::default();
    let (opened, mut heard_any) = (Instant::now(), !connection.ask.is_empty());
    let mut buffer = [0_u8; 512];
    let (mut last, mut silent) = (Instant::now(), false);
    let mut asked = Instant::now() - Duration::from_secs(2);
    let (mut second, mut told, mut flooding) = (Instant::now(), 0_u32, false);
    let ask = connection.ask.replace("\\r", "\r").replace("\\n", "\n");
    while !stop.load(Ordering::Relaxed) {
        if !ask.is_empty() && asked.elapsed() >= Duration::from_secs(1) {
            asked = Instant::now();
            if let Err(error) = std::io::Write::write_all(&mut port, ask.as_bytes()) {
                return Some(format!("{} took no question: {error}", connection.port));
            }
        }
        match port.read(&mut buffer) {
            Ok(0) => return Some(format!("{} closed", connection.port)),
            Ok(n) => {
                if !heard_any {
                    // A scale that is sending when the port is opened is in the middle of a line.
                    lines.torn = opened.elapsed() < SENDING;
                    heard_any = true;
                }
                (last, silent) = (Instant::now(), false);
                for raw in lines.take(&buffer[..n]) {
                    if second.elapsed() >= Duration::from_secs(1) {
                        (second, told, flooding) = (Instant::now(), 0, false);
                    }
                    told += 1;
                    if told > MOST_A_SECOND {
                        if !flooding {
                            tell(Heard::Flooding);
                            flooding = true;
                        }
                        continue;
                    }
                    let read = read_line(&raw, connection.shows, &connection.format);
                    tell(Heard::Line { raw, read });
                }
            }
            Err(error) if matches!(error.kind(), std::io::ErrorKind::TimedOut | std::io::ErrorKind::WouldBlock) => {
                if !silent && last.elapsed() >= SILENT {
                    silent = true;
                    tell(Heard::Silent);
                }
            }
            Err(error) if error.kind() == std::io::ErrorKind::Interrupted => {}
            Err(error) => return Some(format!("{} was lost: {error}", connection.port)),
        }
    }
    None
}

/// Bytes to lines: CR, LF or both end one. A line without an end does not grow for ever.
#[derive(Default)]
struct Lines {
    begun: Vec<u8>,
    /// The port was opened in the middle of a line: its rest says nothing.
    torn: bool,
}

impl Lines {
    fn take(&mut self, bytes: &[u8]) -> Vec<String> {
        let mut found = Vec::new();
        for byte in bytes {
            if matches!(byte, b'\r' | b'\n') {
                if !self.begun.is_empty() && !self.torn {
                    found.push(String::from_utf8_lossy(&self.begun).into_owned());
                }
                self.begun.clear();
                self.torn = false;
            } else if self.begun.len() <= LONGEST {
                self.begun.push(*byte);
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rest_of_a_line_that_was_begun_before_says_nothing() {
        let mut lines = Lines { torn: true, ..Lines::default() };
        assert_eq!(lines.take(b"6.1 g\r\nST,GS,+ 98.4 g\r"), ["ST,GS,+ 98.4 g"]);
        assert_eq!(Lines::default().take(b"98.4 g\r\n"), ["98.4 g"], "a scale that was silent sends whole lines");
    }

    #[test]
    fn a_line_without_an_end_does_not_grow() {
        let mut lines = Lines::default();
        for _ in 0..10_000 {
            assert!(lines.take(b"0123456789").is_empty());
        }
        let all = lines.take(b"\n");
        assert!(all[0].len() <= LONGEST + 1 && all[0].len() > LONGEST, "long enough to be refused");
    }
}
