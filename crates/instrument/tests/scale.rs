//! Goal: a scale on a serial line is heard whatever it does. Method: a pseudo-terminal pair stands for the cable; the far
//! end sends good, torn, noisy and far too many lines, says nothing, is pulled out and put back. Nothing here is timed:
//! each test waits for what must come, at most half a minute.

use instrument::scale::{Heard, Measured, Ports, ScaleEvent, ScaleLine};
use serialport::{SerialPort, TTYPort};
use std::io::{Read, Write};
use std::path::Path;
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;
use trade::connection::{Connection, LineFormat, MarkMeans, Parity, SettledMark, Shows};

/// A cable: the far end, and a name under which the near end is found as long as it is plugged in.
struct Cable {
    far: TTYPort,
}

fn plug(at: &Path) -> Cable {
    let (far, near) = TTYPort::pair().expect("a pseudo-terminal");
    let name = near.name().expect("a name");
    let _ = std::fs::remove_file(at);
    std::os::unix::fs::symlink(name, at).expect("a link");
    // The near end is the program's to open.
    drop(near);
    Cable { far }
}

fn scale(port: &Path) -> Connection {
    Connection {
        key: "parts".into(),
        name: "parts scale".into(),
        shows: Shows::Mass,
        port: port.display().to_string(),
        baud: 9600,
        data_bits: 8,
        parity: Parity::None,
        stop_bits: 1,
        ask: String::new(),
        format: LineFormat {
            settled: Some(SettledMark { text: "ST".into(), means: MarkMeans::Settled }),
            overload: vec!["OL".into()],
            ignore: vec!["GS".into()],
            ..LineFormat::default()
        },
    }
}

fn listen(connection: Connection) -> (Ports, Receiver<ScaleEvent>) {
    let (send, receive) = channel();
    let mut ports = Ports::default();
    ports.start(connection, move |event| {
        let _ = send.send(event);
    });
    (ports, receive)
}

fn until(events: &Receiver<ScaleEvent>, wanted: impl Fn(&Heard) -> bool) -> Vec<Heard> {
    let mut seen = Vec::new();
    loop {
        let event =
            events.recv_timeout(Duration::from_secs(30)).unwrap_or_else(|_| panic!("never came; heard {seen:?}"));
        assert_eq!(event.scale, "parts");
        seen.push(event.heard);
        if wanted(&seen[seen.len() - 1]) {
            return seen;
        }
    }
}

fn value(heard: &Heard) -> Option<f64> {
    match heard {
        Heard::Line { read: ScaleLine::Value { measured: Measured::MassG(g), .. }, .. } => Some(*g),
        _ => None,
    }
}

/// After this a line is not taken for the rest of one.
fn pause() {
    std::thread::sleep(Duration::from_millis(400));
}

#[test]
fn good_and_noisy_lines_are_told_apart() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("scale");
    let mut cable = plug(&at);
    let (_ports, events) = listen(scale(&at));
    until(&events, |h| *h == Heard::Connected);
    pause();
    cable.far.write_all(b"ST,GS,+  256.1 g\r\n\xff\xfe#!\r\nST,GS,  OL\r\nGS,+  98.4 g\n").unwrap();
    let seen = until(&events, |h| value(h) == Some(98.4));
    let lines: Vec<&ScaleLine> =
        seen.iter().filter_map(|h| if let Heard::Line { read, .. } = h { Some(read) } else { None }).collect();
    assert!(matches!(lines[0], ScaleLine::Value { settled: Some(true), .. }), "{lines:?}");
    assert!(matches!(lines[1], ScaleLine::Refused { .. }), "{lines:?}");
    assert_eq!(*lines[2], ScaleLine::Overload);
    assert!(matches!(lines[3], ScaleLine::Value { settled: Some(false), .. }), "{lines:?}");
}

#[test]
fn halves_that_come_apart_are_one_line() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("scale");
    let mut cable = plug(&at);
    let (_ports, events) = listen(scale(&at));
    until(&events, |h| *h == Heard::Connected);
    pause();
    cable.far.write_all(b"ST,GS,+  2").unwrap();
    pause();
    cable.far.write_all(b"56.1 g\r\n").unwrap();
    let seen = until(&events, |h| value(h).is_some());
    assert_eq!(value(&seen[seen.len() - 1]), Some(256.1));
}

#[test]
fn a_scale_that_is_pulled_out_is_found_again() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("scale");
    let cable = plug(&at);
    let (_ports, events) = listen(scale(&at));
    until(&events, |h| *h == Heard::Connected);
    std::fs::remove_file(&at).unwrap();
    drop(cable);
    until(&events, |h| matches!(h, Heard::Lost { .. }));
    let mut cable = plug(&at);
    until(&events, |h| *h == Heard::Connected);
    pause();
    cable.far.write_all(b"ST,GS,+  50.2 g\r\n").unwrap();
    until(&events, |h| value(h) == Some(50.2));
}

#[test]
fn a_flood_is_held_back_and_said() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("scale");
    let cable = plug(&at);
    let (_ports, events) = listen(scale(&at));
    until(&events, |h| *h == Heard::Connected);
    pause();
    let mut far = cable.far;
    let flood = std::thread::spawn(move || {
        // The reader keeps up, or the write would block for ever.
        for _ in 0..400 {
            far.write_all(b"ST,GS,+  256.1 g\r\n").unwrap();
        }
        far
    });
    let seen = until(&events, |h| *h == Heard::Flooding);
    assert!(
        seen.iter().filter(|h| value(h).is_some()).count() <= 60,
        "no more than a second's worth before it is said"
    );
    drop(flood.join().unwrap());
}

#[test]
fn silence_is_said_and_a_scale_that_waits_is_asked() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path().join("scale");
    let mut cable = plug(&at);
    let (_ports, events) = listen(Connection { ask: "P\\r\\n".into(), ..scale(&at) });
    until(&events, |h| *h == Heard::Silent);
    cable.far.set_timeout(Duration::from_secs(20)).unwrap();
    let mut asked = [0_u8; 1];
    cable.far.read_exact(&mut asked).unwrap();
    assert_eq!(&asked, b"P");
    cable.far.write_all(b"ST,GS,+  1.4 g\r\n").unwrap();
    until(&events, |h| value(h) == Some(1.4));
}

#[test]
fn several_scales_at_once_and_none_that_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    let (one, two) = (folder.path().join("one"), folder.path().join("two"));
    let (mut first, mut second) = (plug(&one), plug(&two));
    let (send, events) = channel();
    let mut ports = Ports::default();
    for (key, port) in [("one", &one), ("two", &two), ("gone", &folder.path().join("none"))] {
        let send = send.clone();
        ports.start(Connection { key: key.into(), ..scale(port) }, move |event| {
            let _ = send.send(event);
        });
    }
    pause();
    first.far.write_all(b"ST,GS,+  11.1 g\r\n").unwrap();
    second.far.write_all(b"ST,GS,+  22.2 g\r\n").unwrap();
    let (mut found, mut lost) = (Vec::new(), false);
    while found.len() < 2 || !lost {
        let event = events.recv_timeout(Duration::from_secs(30)).expect("all three are heard of");
        if let Some(g) = value(&event.heard) {
            found.push((event.scale.clone(), g));
        }
        lost |= event.scale == "gone" && matches!(event.heard, Heard::Lost { .. });
    }
    found.sort_by(|a, b| a.0.cmp(&b.0));
    assert_eq!(found, [("one".to_owned(), 11.1), ("two".to_owned(), 22.2)]);
}
