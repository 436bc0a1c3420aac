//! Encrypted connections of the real program. The other side is curl, with its own checks of certificates, told to trust the root
//! that the program made and nothing else.

use crate::run::{Served, Shop};
use serde_json::Value;
use std::process::Command;

/// What curl says to arguments: its exit code, and what it printed.
fn curl(arguments: &[&str]) -> (Option<i32>, String) {
    let out = Command::new("curl").args(["-sS", "--max-time", "20"]).args(arguments).output().expect("curl");
    (out.status.code(), String::from_utf8_lossy(&out.stdout).into_owned())
}

#[test]
fn a_tablet_comes_in_over_an_encrypted_connection_and_keeps_its_key_for_such_alone() {
    let shop = Shop::stocked();
    let serve = [
        "serve",
        "--json",
        "--listen",
        "127.0.0.1:0",
        "--https",
        "127.0.0.1:0",
        "--name",
        "bench.local",
        "--key-for-all",
    ];
    let served = Served::start(shop.command(&serve));
    let address = served.greeting["encrypted_address"].as_str().expect("an address").to_owned();
    let port = address.strip_prefix("https://bench.local:").expect("by its name").to_owned();
    let root = shop.path("tls/root.pem");
    let root = root.to_str().expect("a path");
    let there = format!("bench.local:{port}:127.0.0.1");
    let trusting = |path: &str, more: &[&str]| {
        let place = format!("{address}{path}");
        curl(&[&["--cacert", root, "--resolve", &there, &place], more].concat())
    };
    let (code, health) = trusting("/health", &[]);
    assert_eq!((code, health.as_str()), (Some(0), "{\"status\":\"ok\"}"));
    // curl's exit codes: 60 for a certificate that is not trusted (curl manual).
    assert_eq!(curl(&["--resolve", &there, &format!("{address}/health")]).0, Some(60));
    assert!(curl(&[&format!("http://127.0.0.1:{port}/")]).1.contains("write https:// before it"));
    // The certificate that a tablet gets is the root that was trusted here; the door stands as it does elsewhere.
    let certificate = shop.path("got.crt");
    let got = certificate.to_str().expect("a path");
    assert_eq!(trusting("/trust/setwright.crt", &["-o", got]).0, Some(0));
    assert_eq!(std::fs::read(got).expect("read")[..2], [0x30, 0x82], "DER");
    assert!(trusting("/stock", &["-i", "-H", "Accept: text/html"]).1.contains("/come-in?to="));
    // Six digits, and the key comes in a cookie that is never sent over an open line.
    let shown = shop.run(&["key", "tablet", "Bench 2", "--json"]).done().json();
    let digits = format!("code={}", shown["code"].as_str().expect("digits"));
    let (code, answer) = trusting("/come-in", &["-i", "--data", &digits]);
    assert_eq!(code, Some(0));
    let cookie =
        answer.lines().find(|line| line.to_ascii_lowercase().starts_with("set-cookie: key=")).expect("a cookie");
    assert!(cookie.contains("Secure") && cookie.contains("HttpOnly"), "{cookie}");
    assert_eq!(served.stop(), Some(0), "open connections keep nobody waiting");
    // The next start has the same root.
    let served = Served::start(shop.command(&serve));
    let address = served.greeting["encrypted_address"].as_str().expect("an address").to_owned();
    let there = format!("{}:127.0.0.1", address.trim_start_matches("https://"));
    assert_eq!(curl(&["--cacert", root, "--resolve", &there, &format!("{address}/health")]).0, Some(0));
    assert_eq!(served.stop(), Some(0));
}

#[test]
fn how_tablets_reach_the_machine_is_told_before_it_serves() {
    let shop = Shop::stocked();
    let here = shop.run(&["reach"]).done().out;
    assert!(here.contains("Nothing but this machine"), "{here}");
    let open = ["--listen", "192.168.1.20:7340", "--open-to-network", "--https", "192.168.1.20:7443"];
    let told: Value = shop.run(&[&["reach", "--json", "--name", "bench.local"], &open[..]].concat()).done().json();
    assert_eq!(told["address"], "https://bench.local:7443");
    assert_eq!((&told["trust_address"], &told["encrypted"]), (&"http://192.168.1.20:7340".into(), &true.into()));
    assert_eq!(told["root_sha256"], Value::Null, "the bench was never opened");
    let words = shop.run(&[&["reach"], &open[..]].concat()).done().out;
    assert!(
        words.contains("https://192.168.1.20:7443")
            && words.contains("http://192.168.1.20:7340")
            && words.contains('█')
    );
    let plain = shop.run(&["reach", "--listen", "192.168.1.20:7340", "--open-to-network"]).done().out;
    assert!(plain.contains("http://192.168.1.20:7340") && plain.contains("is not encrypted"), "{plain}");
}

#[test]
fn what_cannot_be_encrypted_with_is_said_before_anything_is_served() {
    let shop = Shop::stocked();
    shop.write("not.pem", "no certificate");
    let asked = |more: &[&str]| shop.run(&[&["serve", "--json", "--listen", "127.0.0.1:0"], more].concat());
    asked(&["--https", "192.168.1.20:7443"]).problem(2, "invalid");
    asked(&["--https", "127.0.0.1:0", "--certificate", "not.pem", "--certificate-key", "not.pem"])
        .problem(5, "outside");
    asked(&["--https", "127.0.0.1:0", "--network-name", "my bench"]).problem(2, "invalid");
    assert!(!shop.path("tls").exists(), "nothing is left behind");
    // A name that came into the settings after the root was made.
    let served = Served::start(shop.command(&["serve", "--json", "--listen", "127.0.0.1:0", "--https", "127.0.0.1:0"]));
    assert_eq!(served.stop(), Some(0));
    let later = asked(&["--https", "127.0.0.1:0", "--name", "bench.shop.example"]);
    later.problem(5, "outside");
    let problem = later.json();
    assert_eq!(problem["code"], "reach_fault.not_covered");
    assert!(problem["next"].as_str().is_some_and(|next| next.contains("remove the folder")), "{problem}");
}
