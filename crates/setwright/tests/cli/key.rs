//! Keys at the terminal: given, used at the running bench, listed, taken away.

use crate::run::{Served, Shop};
use serde_json::Value;

#[test]
fn keys_are_given_listed_and_taken_away_beside_a_running_bench() {
    let shop = Shop::stocked();
    assert!(shop.run(&["key", "list"]).done().out.contains("No key has been given yet"));
    let shown = shop.run(&["key", "tablet", "Bench 2", "--by", "Ines"]).done();
    let digits: String = shown.out.chars().rev().skip_while(|c| *c == '\n').take_while(char::is_ascii_digit).collect();
    assert!(shown.out.contains("“Bench 2”") && digits.len() == 6, "{}", shown.out);

    let given = shop.run(&["key", "program", "Stock list", "--days", "30", "--json"]).done().json();
    assert_eq!((given["role"].as_str(), given["holder"].as_str()), (Some("reader"), Some("program")));
    let secret = given["secret"].as_str().expect("a secret").to_owned();
    let served = Served::start(shop.command(&["serve", "--json", "--listen", "127.0.0.1:0", "--key-for-all"]));
    let ask = |key: &str| served.ask_with("GET", "/api/v1/parts", &[("Authorization", key)], "").0;
    assert_eq!(
        (served.ask("GET", "/api/v1/parts", "").0, ask("Bearer x"), ask(&format!("Bearer {secret}"))),
        (401, 401, 200)
    );

    let digits: String = digits.chars().rev().collect();
    let (status, body) = served.ask("POST", "/api/v1/keys/come-in", &format!(r#"{{"code":"{digits}"}}"#));
    assert_eq!(status, 201, "{body}");
    let came: Value = serde_json::from_str(&body).expect("JSON");
    assert_eq!(
        (came["name"].as_str(), came["given_by"].as_str(), came["number"].as_i64()),
        (Some("Bench 2"), Some("Ines"), Some(2))
    );

    let listed = shop.run(&["key", "withdraw", "1", "--by", "Ines"]).done().out;
    assert!(listed.contains("Bench 2 (builder") && listed.contains("by Ines"), "{listed}");
    assert_eq!(ask(&format!("Bearer {secret}")), 401, "out with the next request");
    shop.run(&["key", "withdraw", "9", "--json"]).problem(3, "not_found");
    shop.run(&["key", "program", " ", "--json"]).problem(2, "invalid");
    shop.run(&["key", "program", "x", "--days", "0", "--json"]).problem(2, "invalid");
    assert_eq!(served.stop(), Some(0));
}
