//! Calculations: a document in, a document out, the same by library, program and API.

use crate::run::{PROGRAM, Shop};
use serde_json::{Value, json};
use std::process::{Command, Stdio};

#[test]
fn balance_from_mass_and_balance_point() {
    let shop = Shop::empty();
    let ran = shop
        .run_with(&["calc", "swing-weight", "--json"], r#"{"total_mass_g": 349.8, "balance_point_mm": 824.0}"#)
        .done();
    let answer = ran.json();
    // By hand: 349.8 g at 82.4 − 35.56 cm is 16384.632 g·cm; an ounce·inch is 72.007789 g·cm.
    let moment = answer["moment_g_cm"].as_f64().expect("a moment");
    assert!((moment - 16384.632).abs() < 1e-6, "{moment}");
    let ounces = answer["moment_oz_in"].as_f64().expect("a moment");
    assert!((ounces - 227.539_719).abs() < 1e-5, "{ounces}");
    assert_eq!(answer["letter"], "D8.0");
    assert!(!shop.path("setwright.db").exists(), "a calculation needs no database");
}

#[test]
fn swing_weight_from_parts_and_on_another_fulcrum() {
    let shop = Shop::empty();
    let parts = json!([
        { "name": "head", "mass_g": 250.0, "position_mm": 960.0 },
        { "name": "shaft", "mass_g": 110.0, "position_mm": 450.0 }
    ]);
    let input = json!({ "parts": parts }).to_string();
    let answer = shop.run_with(&["calc", "swing-weight", "--json"], &input).done().json();
    // By hand: 250 · 60.44 + 110 · 9.44 g·cm.
    let moment = answer["moment_g_cm"].as_f64().expect("a moment");
    assert!((moment - 16148.4).abs() < 1e-6, "{moment}");
    let input = json!({ "parts": parts, "fulcrum_in": 12.0 }).to_string();
    let answer = shop.run_with(&["calc", "swing-weight", "--json"], &input).done().json();
    // 250 · 65.52 + 110 · 14.52 g·cm.
    let moment = answer["moment_g_cm"].as_f64().expect("a moment");
    assert!((moment - 17977.2).abs() < 1e-6, "{moment}");
    assert_eq!(answer["fulcrum_in"], 12.0);
}

#[test]
fn an_answer_for_people_is_lines_of_words() {
    let shop = Shop::empty();
    let ran = shop.run_with(&["calc", "swing-weight"], r#"{"total_mass_g": 349.8, "balance_point_mm": 824.0}"#).done();
    insta::assert_snapshot!(ran.out, @r##"
    fulcrum_in: 14.0000
    moment_oz_in: 227.5397
    moment_g_cm: 16384.6320
    letter: D8.0
    points: 38.0227
    total_mass_g: 349.8000
    balance_point_mm: 824.0000
    moment_12_in_oz_in: 252.2174
    "##);
}

#[test]
fn every_topic_says_the_same_by_library_program_and_api_to_the_last_bit() {
    let shop = Shop::empty();
    let served = shop.serve("serve");
    let mut seen = 0;
    for topic in clubphysics::calc::topics() {
        let example = shop.run(&["calc", topic.name, "--example"]).done();
        assert_eq!(example.json(), (topic.example)(), "{}", topic.name);
        let mut by_library = clubphysics::calc::run(topic.name, (topic.example)()).expect("the example works");
        // The library answers with facts alone; program and API put a sentence beside each, in the same words.
        words::speak(&mut by_library, &words::Words::english(quantity::Units::default()));
        let by_library = by_library.to_string();
        // Both write floats so that they read back to the same bits; the texts of two equal documents are equal.
        let by_program = shop.run_with(&["calc", topic.name, "--json"], &example.out).done().json().to_string();
        let (status, text) = served.ask("POST", &format!("/api/v1/calc/{}", topic.name), &example.out);
        assert_eq!(status, 200, "{text}");
        let by_api = serde_json::from_str::<Value>(&text).expect("a document").to_string();
        assert_eq!(by_program, by_library, "{}", topic.name);
        assert_eq!(by_api, by_library, "{}", topic.name);
        seen += 1;
    }
    assert!(seen >= 8, "only {seen} topics");
    let listed = shop.run(&["calc", "--json"]).done().json();
    assert_eq!(listed.as_array().map(Vec::len), Some(seen));
    let (_, by_api) = served.ask("GET", "/api/v1/calc", "");
    assert_eq!(listed, serde_json::from_str::<Value>(&by_api).expect("a document"));
}

#[test]
fn impossible_figures_are_refused_alike_by_program_and_api() {
    let shop = Shop::empty();
    let served = shop.serve("serve");
    for input in [
        r#"{"total_mass_g": 0, "balance_point_mm": 824.0}"#,
        r#"{"total_mass_g": -349.8, "balance_point_mm": 824.0}"#,
        r#"{"total_mass_g": 5000, "balance_point_mm": 824.0}"#,
        r#"{"total_mass_g": "NaN", "balance_point_mm": 824.0}"#,
        r#"{"total_mass_g": 349.8, "balance_point_mm": 824.0, "colour": "red"}"#,
        r#"{"total_mass_g": 349.8}"#,
        r#"{"parts": []}"#,
        "{}",
        "[]",
        "7",
    ] {
        let detail = shop.run_with(&["calc", "swing-weight", "--json"], input).problem(2, "calculation");
        let (status, text) = served.ask("POST", "/api/v1/calc/swing-weight", input);
        let problem: Value = serde_json::from_str(&text).expect("a problem");
        assert_eq!((status, problem["detail"].as_str()), (422, Some(detail.as_str())), "{input}");
        // Without --json nothing stands on standard output.
        let plain = shop.run_with(&["calc", "swing-weight"], input);
        assert_eq!((plain.code, plain.out.as_str()), (2, ""), "{plain:?}");
        assert!(!plain.err.is_empty());
    }
    for input in ["", "NaN", r#"{"total_mass_g": NaN}"#, r#"{"total_mass_g": 1e999}"#, "{"] {
        let detail = shop.run_with(&["calc", "swing-weight", "--json"], input).problem(2, "invalid");
        assert!(detail.contains("calc swing-weight --example"), "{detail}");
    }
    let detail = shop.run(&["calc", "swing-wieght", "--json"]).problem(2, "calculation");
    assert!(detail.contains("Did you mean swing-weight?"), "{detail}");
}

#[test]
fn an_answer_that_cannot_be_written_is_no_success() {
    // A device that is always full, as a disk may be.
    let full = std::fs::OpenOptions::new().write(true).open("/dev/full").expect("/dev/full");
    let ended = Command::new(PROGRAM)
        .args(["calc", "glue", "--example"])
        .stdin(Stdio::null())
        .stdout(full)
        .stderr(Stdio::piped())
        .output()
        .expect("the program ends");
    assert_eq!(ended.status.code(), Some(5));
    let words = String::from_utf8_lossy(&ended.stderr).replace('│', " ");
    assert!(words.contains("could not be written to standard output"), "{words}");
}
