//! Clubs that live on, jobs on them and their readings: the whole path of a regrip and of a bend by command.

use crate::run::Shop;
use serde_json::json;

#[test]
fn a_club_from_elsewhere_is_noted_bent_and_handed_over_by_command() {
    let shop = Shop::stocked();
    let add = [
        "club",
        "add",
        "--player",
        "Odell Farrowby",
        "--number",
        "7",
        "--head-material",
        "forged",
        "--swing-weight",
        "D2.1",
        "--loft",
        "33",
        "--lie",
        "62",
        "--json",
    ];
    let club = shop.run(&add).done().json();
    assert_eq!((&club["club"]["code"], &club["life"][0]["deed"]), (&json!("C1"), &json!("arrived")));
    assert!(shop.run(&["club", "list", "farrowby"]).done().out.contains("C1"));
    assert!(shop.run(&["club", "list", "nobody"]).done().out.contains("No club found"));
    let read = shop.run(&["club", "read", "C1", "--total-mass", "432.7", "--json"]).done().json();
    assert_eq!(read["life"][1]["deed"], "measured");
    let kinds = shop.run(&["kind", "list", "--json"]).done().json();
    assert!(kinds.as_array().is_some_and(|k| k.iter().any(|kind| kind["kind"]["key"] == "regrip")), "{kinds}");

    let job = shop.run(&["club", "job", "--club", "C1", "--kind", "bend", "--loft", "34", "--json"]).done().json();
    assert_eq!(job["number"], 1);
    shop.run(&["club", "job", "--club", "C1", "--kind", "bend", "--loft", "34", "--json"]).problem(4, "conflict");
    shop.run(&["read", "1", "1", "arrived", "loft=33", "lie=62"]).done();
    let kept = shop.run(&["read", "1", "1", "bend", "loft=34", "lie=62", "--json"]).done().json();
    assert_eq!(kept["meaning"]["tone"], "good", "{}", kept["meaning"]);
    shop.run(&["read", "1", "1", "hand_over", "done="]).done();
    let shown = shop.run(&["club", "show", "c1"]).done().out;
    assert!(shown.contains("loft 33.0° → 34.0°"), "{shown}");
    shop.run(&["club", "show", "C7", "--json"]).problem(3, "not_found");
    shop.run(&["read", "1", "1", "bend", "colour=34", "--json"]).problem(2, "invalid");
}

#[test]
fn a_kind_of_the_shops_own_is_kept_and_taken_away_by_command() {
    let shop = Shop::stocked();
    let kind = json!({ "key": "lie_only", "label": "Lie only", "asks": ["lie"], "steps": [
        { "key": "bend", "label": "Bend", "asks": ["lie"], "on": ["head", "shaft", "grip"], "needs": "none" },
        { "key": "hand_over", "label": "Hand over", "asks": ["done"], "needs": "none" } ] });
    shop.write("kind.json", kind.to_string());
    shop.run(&["kind", "add", "kind.json"]).done();
    assert!(shop.run(&["kind", "list"]).done().out.contains("lie_only"));
    shop.run(&["club", "add", "--player", "A", "--number", "7"]).done();
    let job = shop.run(&["club", "job", "--club", "C1", "--kind", "lie_only", "--lie", "61", "--json"]).done().json();
    assert_eq!(job["steps"].as_array().map(Vec::len), Some(2), "the steps are the kind's own");
    shop.run(&["kind", "remove", "lie_only"]).done();
    shop.run(&["kind", "remove", "lie_only", "--json"]).problem(3, "not_found");
}
