//! Goal: labels reach a printer whole, and one that is off, slow, open or out of labels is told in time. Method: a printer of our own
//! behind a TCP port of this machine, in every state; a file of the system as a device.

use desk::label::PrinterSaid;
use instrument::printer::{Patience, PrinterFault, send};
use std::io::{Read, Write};
use std::net::TcpListener;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};
use trade::label_printer::{PageLanguage, PrinterPlace};

const PATIENCE: Patience = Patience {
    connect: Duration::from_millis(800),
    answer: Duration::from_millis(400),
    take: Duration::from_millis(800),
};

/// What the printer does when it is called.
#[derive(Clone, Copy)]
enum State {
    /// Answers `~HS` with these two lines, then takes the pages.
    Says(&'static str, &'static str),
    /// Answers nothing and takes the pages.
    Silent,
    /// Takes the call and reads nothing.
    Stuck,
    /// Hangs up in the middle of the pages.
    HangsUp,
}

const READY: (&str, &str) = ("030,0,0,1245,000,0,0,0,000,0,0,0", "000,0,0,0,0,2,4,0,00000000,1,000");

/// A printer that is called once; what it was sent comes out of the channel.
fn printer(state: State) -> (PrinterPlace, Receiver<Vec<u8>>) {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let port = listener.local_addr().expect("an address").port();
    let (tell, told) = channel();
    std::thread::spawn(move || {
        let (mut call, _) = listener.accept().expect("a call");
        match state {
            State::Stuck => std::thread::sleep(Duration::from_secs(6)),
            State::HangsUp => {
                let mut piece = [0; 64];
                let _ = call.read(&mut piece);
            }
            State::Says(..) | State::Silent => {
                let mut heard = Vec::new();
                if let State::Says(first, second) = state {
                    let mut piece = [0; 64];
                    while !heard.ends_with(b"~HS") {
                        let n = call.read(&mut piece).expect("a question");
                        heard.extend_from_slice(&piece[..n]);
                    }
                    let said = format!("\u{2}{first}\u{3}\r\n\u{2}{second}\u{3}\r\n");
                    call.write_all(said.as_bytes()).expect("an answer");
                    heard.clear();
                }
                call.read_to_end(&mut heard).expect("the pages");
                tell.send(heard).expect("somebody listens");
            }
        }
    });
    (PrinterPlace::Network { host: "127.0.0.1".into(), port }, told)
}

#[test]
fn the_pages_reach_a_printer_that_is_ready_and_one_that_says_nothing() {
    let (place, told) = printer(State::Says(READY.0, READY.1));
    let pages = b"^XA^XZ".repeat(5000);
    assert_eq!(send(&place, PageLanguage::Zpl, &pages, PATIENCE), Ok(true));
    assert_eq!(told.recv_timeout(Duration::from_secs(5)).expect("the pages"), pages);
    for (language, question) in [(PageLanguage::Epl, &b""[..]), (PageLanguage::EscPos, &[16, 4, 2, 16, 4, 4][..])] {
        let (place, told) = printer(State::Silent);
        assert_eq!(send(&place, language, b"pages", PATIENCE), Ok(false));
        let heard = told.recv_timeout(Duration::from_secs(5)).expect("the pages");
        assert_eq!(heard, [question, b"pages"].concat());
    }
}

#[test]
fn nothing_is_sent_to_a_printer_that_cannot_print() {
    for (first, second, said) in [
        ("030,1,0,1245,000,0,0,0,000,0,0,0", READY.1, PrinterSaid::NoPaper),
        (READY.0, "000,0,1,0,0,2,4,0,00000000,1,000", PrinterSaid::Open),
        ("030,0,1,1245,000,0,0,0,000,0,0,0", READY.1, PrinterSaid::Paused),
    ] {
        let (place, told) = printer(State::Says(first, second));
        let refused = send(&place, PageLanguage::Zpl, b"^XA^XZ", PATIENCE).expect_err("refused");
        assert!(matches!(&refused, PrinterFault::CannotPrint { said: told, .. } if *told == said), "{refused:?}");
        assert_eq!(told.recv_timeout(Duration::from_secs(5)).expect("a call"), b"", "something was sent");
    }
}

#[test]
fn a_printer_that_is_off_or_stuck_is_told_in_time() {
    // A port that was free a moment ago.
    let port = TcpListener::bind("127.0.0.1:0").expect("a port").local_addr().expect("an address").port();
    let off = PrinterPlace::Network { host: "127.0.0.1".into(), port };
    assert!(matches!(send(&off, PageLanguage::Zpl, b"x", PATIENCE), Err(PrinterFault::Off { .. })));
    let nobody = PrinterPlace::Network { host: "printer.invalid".into(), port: 9100 };
    assert!(matches!(send(&nobody, PageLanguage::Zpl, b"x", PATIENCE), Err(PrinterFault::NoHost { .. })));
    // More than the system holds for a printer that reads nothing.
    let many = vec![b'x'; 32 << 20];
    for state in [State::Stuck, State::HangsUp] {
        let (place, _told) = printer(state);
        let begun = Instant::now();
        let stopped = send(&place, PageLanguage::Epl, &many, PATIENCE).expect_err("stopped");
        assert!(matches!(stopped, PrinterFault::Stopped { .. }), "{stopped:?}");
        assert!(begun.elapsed() < Duration::from_secs(5), "{:?}", begun.elapsed());
    }
}

#[test]
fn a_device_takes_the_pages_and_a_name_without_one_makes_no_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let device = folder.path().join("lp0");
    let place = PrinterPlace::Device(device.clone());
    assert!(matches!(send(&place, PageLanguage::Zpl, b"x", PATIENCE), Err(PrinterFault::Device { .. })));
    assert!(!device.exists(), "a file was made");
    std::fs::write(&device, b"").expect("a device");
    assert_eq!(send(&place, PageLanguage::Zpl, b"^XA^XZ", PATIENCE), Ok(false));
    assert_eq!(std::fs::read(&device).expect("the pages"), b"^XA^XZ");
}
