//! How the shop's scales stand, at a terminal: the same document as through the API.

use crate::run::Shop;
use serde_json::{Value, json};

/// A shop whose gram scale has two check weights.
fn weighed() -> Shop {
    let shop = Shop::stocked();
    let served = shop.serve("serve");
    let (_, text) = served.ask("GET", "/api/v1/shop", "");
    let mut settings: Value = serde_json::from_str(&text).expect("a shop");
    let weight = |key: &str, value: f64| {
        json!({ "key": key, "name": format!("{value} g weight"), "scale": "mass", "value": value, "sd": 0.01,
                "certified_on": "2025-06-01", "certificate": "K 7", "tolerance": 0.3 })
    };
    settings["standards"] = json!([weight("w200", 200.0), weight("w500", 500.0)]);
    let (status, answer) = served.ask("PUT", "/api/v1/shop", &settings.to_string());
    assert_eq!(status, 200, "{answer}");
    shop
}

#[test]
fn the_terminal_and_the_api_tell_the_same_of_a_scale() {
    let shop = weighed();
    let kept = shop.run(&["scale", "check", "mass", "200.1", "--by", "Ada", "--json"]).done().json();
    assert_eq!(kept["kept"]["what"]["reading"], 200.1);
    assert_eq!(kept["health"]["checked_today"], true);
    let one = shop.run(&["scale", "health", "mass", "--json"]).done().json();
    assert_eq!(one, kept["health"]);
    assert_eq!(one["trust"]["trusted"], true);
    let all = shop.run(&["scale", "health", "--json"]).done().json();
    assert_eq!(all.as_array().map(Vec::len), Some(2));
    assert_eq!(all[1], one);
    let served = shop.serve("serve");
    let (status, text) = served.ask("GET", "/api/v1/scales/mass/health", "");
    assert_eq!(status, 200);
    assert_eq!(serde_json::from_str::<Value>(&text).expect("a document"), one);
    let (_, text) = served.ask("GET", "/api/v1/scales/health", "");
    assert_eq!(serde_json::from_str::<Value>(&text).expect("a document"), all);
    drop(served);
    let words = shop.run(&["scale", "health"]).done().out;
    assert!(words.contains("checked today") && words.contains("no check weight"), "{words}");
}

#[test]
fn a_slip_is_asked_about_and_kept_on_a_second_word() {
    let shop = weighed();
    let asked = shop.run(&["scale", "check", "mass", "7.05"]);
    assert_eq!(asked.code, 4, "{asked:?}");
    assert!(asked.err.contains("7.05 oz would be right"), "{asked:?}");
    let asked = shop.run(&["scale", "check", "mass", "500.1", "--json"]);
    assert_eq!(asked.code, 4);
    assert_eq!(
        asked.json()["question"]["looks_like"],
        json!({ "kind": "other_standard", "standard": "w500", "name": "500 g weight" })
    );
    assert_eq!(shop.run(&["scale", "health", "mass", "--json"]).done().json()["events"], json!([]), "nothing kept");
    let kept = shop.run(&["scale", "check", "mass", "7.05 oz", "--request-key", "a", "--json"]).done().json();
    let again = shop.run(&["scale", "check", "mass", "7.05 oz", "--request-key", "a", "--json"]).done().json();
    assert_eq!((&again["repeated"], &again["kept"]), (&json!(true), &kept["kept"]));
    let kept = shop.run(&["scale", "check", "mass", "201", "--as-it-is"]).done();
    assert!(kept.out.contains("not trusted") && kept.out.contains("reads 1.0 g heavy since today"), "{kept:?}");
    shop.run(&["scale", "trust", "mass", "--reason", "x", "--json"]).problem(2, "invalid");
    let trusted = shop.run(&["scale", "trust", "mass", "--reason", "zeroed", "--by", "Ada", "--json"]).done().json();
    assert_eq!(trusted["trust"]["trusted"], true);
    assert_eq!(
        (&trusted["events"][0]["by"], &trusted["events"][0]["what"]["reason"]["words"]),
        (&json!("Ada"), &json!("zeroed"))
    );
}

#[test]
fn what_cannot_be_is_refused() {
    let shop = weighed();
    for shows in ["-3", "0", "NaN", "two hundred", "1e9"] {
        let ran = shop.run(&["scale", "check", "--", "mass", shows]);
        assert_eq!(ran.code, 2, "{shows}: {ran:?}");
    }
    shop.run(&["scale", "check", "mass", "200", "--weight", "none", "--json"]).problem(3, "not_found");
    shop.run(&["scale", "check", "none", "200", "--json"]).problem(3, "not_found");
    let detail = shop.run(&["scale", "check", "balance", "D1", "--json"]).problem(2, "invalid");
    assert!(detail.contains("has no check weight"), "{detail}");
    shop.run(&["scale", "trust", "mass", "--reason", "all is well", "--json"]).problem(4, "conflict");
    shop.run(&["scale", "calibrated", "mass", "--on", "2999-01-01", "--by-whom", "Ada", "--json"])
        .problem(2, "invalid");
    assert_eq!(shop.run(&["scale"]).code, 2, "a port or a word is needed");
}

#[test]
fn a_calibration_that_ran_out_takes_the_trust() {
    let shop = weighed();
    let calibrate = |due: &str| {
        let words =
            ["scale", "calibrated", "mass", "--on", "2020-01-01", "--by-whom", "Ada", "--next-due", due, "--json"];
        shop.run(&words).done().json()
    };
    let health = calibrate("2021-01-01");
    assert_eq!(health["trust"]["reasons"][0]["cause"], "overdue");
    assert_eq!(health["calibration"]["overdue"], true);
    assert_eq!(calibrate("2999-01-01")["trust"]["trusted"], true);
}

#[test]
fn the_demonstration_shows_one_sound_scale_and_one_that_is_not() {
    let shop = Shop::empty();
    drop(shop.serve("demo"));
    let url = format!("sqlite://{}", shop.path(".local/share/setwright/demo.db").display());
    let url = url.as_str();
    let all = shop.run(&["scale", "health", "--database", url, "--json"]).done().json();
    let of = |key: &str| {
        let all = all.as_array().expect("scales");
        all.iter().find(|h| h["gauge"]["key"] == key).cloned().expect("the scale")
    };
    let (balance, mass) = (of("balance"), of("mass"));
    assert_eq!((&balance["trust"]["trusted"], &mass["trust"]["trusted"]), (&json!(true), &json!(false)));
    assert_eq!(balance["charts"][0]["base"], 20);
    assert!(mass["trust"]["words"].as_str().expect("words").contains("g heavy since"), "{}", mass["trust"]["words"]);
    let studies = shop.run(&["scale", "studies", "--database", url, "--json"]).done().json();
    assert_eq!((&studies[0]["done"], &studies[0]["of"]), (&json!(90), &json!(90)));
    let id = studies[0]["id"].as_str().expect("an identity").to_owned();
    let words = shop.run(&["scale", "studies", &id, "--database", url]).done().out;
    assert!(words.contains("is the scale and the hands"), "{words}");
}
