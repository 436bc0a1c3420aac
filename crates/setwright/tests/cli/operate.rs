//! For whoever runs the machine: the settings and where they come from, what helps to find a fault, the log, and what one program
//! writes reaching the pages of another.

use crate::run::{Served, Shop};
use std::io::{BufRead, BufReader, Write};
use std::net::TcpStream;
use std::process::Stdio;
use std::time::{Duration, Instant};

#[test]
fn every_setting_is_told_with_where_it_comes_from_and_stands_in_the_guide() {
    let shop = Shop::empty();
    shop.write("setwright.toml", "listen = \"127.0.0.1:7999\"\nnames = [\"bench.local\"]\n");
    let mut command = shop.command(&["config", "--json", "--key-for-all"]);
    let settings = Shop::ran(
        {
            command.env("SETWRIGHT_LOG", "info");
            command
        },
        "",
    )
    .done()
    .json();
    let of = |name: &str| {
        let found = settings.as_array().expect("a list").iter().find(|s| s["name"] == name);
        let found = found.unwrap_or_else(|| panic!("{name} is not there"));
        (found["value"].as_str().expect("a value").to_owned(), found["from"].as_str().expect("a place").to_owned())
    };
    assert_eq!(of("listen"), ("127.0.0.1:7999".into(), "file".into()));
    assert_eq!(of("names"), ("bench.local".into(), "file".into()));
    assert_eq!(of("log"), ("info".into(), "environment".into()));
    assert_eq!(of("key_for_all"), ("true".into(), "command_line".into()));
    assert_eq!(of("open_to_network"), ("false".into(), "usual".into()));
    assert!(of("backups").0.ends_with("backups"));
    // The table of the guide has the same settings, no more and no fewer.
    let guide =
        std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/install.md")).expect("the guide");
    let rows: Vec<&str> = guide.lines().filter(|line| line.starts_with("| `") && line.contains("SETWRIGHT_")).collect();
    assert_eq!(rows.len(), settings.as_array().expect("a list").len());
    for setting in settings.as_array().expect("a list") {
        let text = |field: &str| setting[field].as_str().expect("a text").to_owned();
        let row = format!("| `{}` | `{}` | `{}` |", text("name"), text("option"), text("environment"));
        assert!(rows.iter().any(|line| line.starts_with(&row)), "{row}");
        assert!(text("explanation").len() > 20, "{setting}");
    }
    let told = shop.run(&["config"]).done().out;
    assert!(told.contains("listen = 127.0.0.1:7999  (from the configuration file)"), "{told}");
    let said = shop.run(&["config", "--log", "loud", "--json"]).problem(2, "invalid");
    assert!(said.contains("loud") && said.contains("debug"), "{said}");
}

#[test]
fn what_helps_to_find_a_fault_has_amounts_and_no_names() {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["key", "program", "Quilltop", "--json"]).done();
    let out = shop.run(&["support", "--out", "support.json"]).done().out;
    assert!(out.contains("holds no names"), "{out}");
    let text = shop.read("support.json");
    let document: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!((document["jobs"].as_i64(), document["keys_good"].as_i64()), (Some(1), Some(1)));
    assert_eq!(document["damage"], serde_json::json!([]));
    let sheet: serde_json::Value = serde_json::from_str(crate::run::SHEET).expect("a sheet");
    for name in [sheet["player"].as_str().expect("a player"), "Quilltop", &*shop.path("").display().to_string()] {
        assert!(!text.contains(name), "{name} in {text}");
    }
}

#[test]
fn what_the_command_line_writes_reaches_an_open_page_within_a_second_or_two() {
    let shop = Shop::stocked();
    let served = shop.serve("serve");
    let mut stream = TcpStream::connect(&served.address).expect("it listens");
    write!(stream, "GET /api/v1/live HTTP/1.1\r\nHost: localhost\r\n\r\n").expect("sent");
    stream.set_read_timeout(Some(Duration::from_secs(20))).expect("set");
    let mut lines = BufReader::new(stream).lines();
    // The stream is open once its head has come.
    while !lines.next().expect("a line").expect("a text").is_empty() {}
    let begun = Instant::now();
    shop.run(&["weigh", "--model", "WREN-I", "--number", "7", "--mass", "266.1", "--keep", "--json"]).done();
    let told = lines.map_while(Result::ok).any(|line| line == "event: job");
    assert!(told, "nothing came within {:?}", begun.elapsed());
    assert_eq!(served.stop(), Some(0));
}

#[test]
fn the_log_has_a_line_for_each_request_and_no_query() {
    let shop = Shop::stocked();
    let mut command = shop.command(&["serve", "--json", "--listen", "127.0.0.1:0", "--log", "info"]);
    command.stderr(Stdio::from(std::fs::File::create(shop.path("log")).expect("a file")));
    let served = Served::start(command);
    served.ask("GET", "/api/v1/find?text=Marsh", "");
    served.ask("GET", "/nowhere", "");
    assert_eq!(served.stop(), Some(0));
    let log = shop.read("log");
    let lines: Vec<&str> = log.lines().filter(|line| line.contains("setwright::request")).collect();
    assert_eq!(lines.len(), 2, "{log}");
    assert!(lines[0].contains("/api/v1/find") && lines[1].contains("404"), "{log}");
    assert!(!log.contains("Marsh"), "{log}");
}
