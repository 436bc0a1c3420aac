//! A label printer, in the network or at this machine: asked whether it can print, then given its pages as they are.
//!
//! Nothing is sent to a printer that says that it is out of labels or open. One that answers nothing, as print servers do, is
//! given the pages all the same. What a printer does with them afterwards nobody tells: the page is gone once it is sent.

use desk::label::{PrinterSaid, answer, question};
use fact::facts;
use std::fs::OpenOptions;
use std::io::{ErrorKind, Read, Write};
use std::net::{Shutdown, TcpStream, ToSocketAddrs};
use std::path::Path;
use std::time::{Duration, Instant};
use trade::label_printer::{PageLanguage, PrinterPlace};

/// How long a printer is waited for. A builder stands before it.
#[derive(Debug, Clone, Copy)]
pub struct Patience {
    /// Until it takes the call.
    pub connect: Duration,
    /// Until it tells its state.
    pub answer: Duration,
    /// Until it takes more of the pages.
    pub take: Duration,
}

impl Default for Patience {
    fn default() -> Self {
        Self { connect: Duration::from_secs(4), answer: Duration::from_millis(1500), take: Duration::from_secs(10) }
    }
}

facts! {
    /// Why pages did not reach a printer.
    pub enum PrinterFault: "printer_fault" {
        /// Nothing answers there.
        Off {
            /// Where it was looked for.
            place: String,
            /// What the system said.
            log: String,
        },
        /// No such name in the network.
        NoHost {
            /// The name.
            host: String,
        },
        /// The device is not there, or this program may not write to it.
        Device {
            /// The device.
            place: String,
            /// What the system said.
            log: String,
        },
        /// It stopped taking the pages.
        Stopped {
            /// Where it is.
            place: String,
            /// What the system said.
            log: String,
        },
        /// It says itself that it cannot print.
        CannotPrint {
            /// Where it is.
            place: String,
            /// What it says.
            said: PrinterSaid,
        },
    }
}

/// Sends pages. Gives whether the printer said that it can print; one that says nothing may still have printed.
///
/// # Errors
/// It is off, out of labels, open or stopped, or took only a part of the pages.
pub fn send(
    place: &PrinterPlace,
    language: PageLanguage,
    pages: &[u8],
    patience: Patience,
) -> Result<bool, PrinterFault> {
    match place {
        PrinterPlace::Network { host, port } => to_network(host, *port, language, pages, patience),
        PrinterPlace::Device(path) => to_device(path, pages).map(|()| false),
    }
}

fn to_network(
    host: &str,
    port: u16,
    language: PageLanguage,
    pages: &[u8],
    patience: Patience,
) -> Result<bool, PrinterFault> {
    let place = format!("{host}:{port}");
    let addresses = (host, port).to_socket_addrs().map_err(|_| PrinterFault::NoHost { host: host.to_owned() })?;
    let mut refused = None;
    let mut found = None;
    for address in addresses {
        match TcpStream::connect_timeout(&address, patience.connect) {
            Ok(stream) => {
                found = Some(stream);
                break;
            }
            Err(error) => refused = Some(error.to_string()),
        }
    }
    let Some(mut stream) = found else {
        return Err(match refused {
            Some(log) => PrinterFault::Off { place, log },
            None => PrinterFault::NoHost { host: host.to_owned() },
        });
    };
    let stopped = |e: std::io::Error| PrinterFault::Stopped { place: place.clone(), log: e.to_string() };
    stream.set_write_timeout(Some(patience.take)).map_err(stopped)?;
    let ready = match ask(&mut stream, language, patience.answer).map_err(stopped)? {
        Some(Some(said)) => return Err(PrinterFault::CannotPrint { place, said }),
        Some(None) => true,
        None => false,
    };
    stream.write_all(pages).and_then(|()| stream.flush()).map_err(stopped)?;
    // The end of the pages is told; what the printer does not read any more is not ours to wait for.
    let _ = stream.shutdown(Shutdown::Write);
    Ok(ready)
}

/// What the printer says of itself; none where it says nothing in time.
fn ask(stream: &mut TcpStream, language: PageLanguage, wait: Duration) -> std::io::Result<Option<Option<PrinterSaid>>> {
    let Some(question) = question(language) else { return Ok(None) };
    stream.write_all(question)?;
    let until = Instant::now() + wait;
    let (mut heard, mut piece) = (Vec::new(), [0_u8; 256]);
    loop {
        let left = until.saturating_duration_since(Instant::now());
        if left.is_zero() || heard.len() > 4096 {
            return Ok(None);
        }
        stream.set_read_timeout(Some(left))?;
        match stream.read(&mut piece) {
            Ok(0) => return Ok(None),
            Ok(n) => heard.extend_from_slice(&piece[..n]),
            Err(e) if matches!(e.kind(), ErrorKind::WouldBlock | ErrorKind::TimedOut) => return Ok(None),
            Err(e) => return Err(e),
        }
        if let Some(said) = answer(language, &heard) {
            return Ok(Some(said));
        }
    }
}

fn to_device(path: &Path, pages: &[u8]) -> Result<(), PrinterFault> {
    let place = path.display().to_string();
    // Never made: a name that is no device would otherwise become a file that nobody looks for.
    let device = OpenOptions::new().write(true).open(path);
    let mut device = device.map_err(|e| PrinterFault::Device { place: place.clone(), log: e.to_string() })?;
    let written = device.write_all(pages).and_then(|()| device.flush());
    written.map_err(|e| PrinterFault::Stopped { place, log: e.to_string() })
}
