//! What the shop has learned and how capable it is, on the command line.

use crate::run::Shop;
use serde_json::json;

#[test]
fn a_new_shop_says_that_it_has_learned_nothing_and_how_it_will() {
    let shop = Shop::stocked();
    let told = shop.run(&["learned"]).done().out;
    assert!(told.contains("learned nothing yet") && told.contains("each finished job"), "{told}");
    let document = shop.run(&["learned", "--json"]).done().json();
    assert_eq!(document, json!({ "values": [], "scatter": [] }));
    let told = shop.run(&["capability"]).done().out;
    assert!(told.contains("No club is finished yet"), "{told}");
    let mut found = shop.run(&["capability", "--json"]).done().json();
    assert!(found["bands"]["since_on"].take().is_string());
    let bands = json!({ "since_on": null, "by_step": [], "by_month": [] });
    assert_eq!(found, json!({ "by_month": [], "by_model": [], "bands": bands }));
}

#[test]
fn a_change_needs_a_reason_and_something_to_change() {
    let shop = Shop::stocked();
    assert_eq!(shop.run(&["learned", "--reset", "all"]).code, 2);
    assert_eq!(shop.run(&["learned", "--pin", "solvent", "--unpin", "solvent", "--reason", "both"]).code, 2);
    let refused = shop.run(&["learned", "--reset", "all", "--reason", "moved house", "--json"]);
    assert!(refused.code != 0);
    let detail = refused.json()["detail"].as_str().expect("a detail").to_owned();
    assert!(detail.contains("learned nothing yet") && detail.contains("Finish a job first"), "{detail}");
}

/// What a builder says is kept, shown, replaced and withdrawn, and what cannot be is asked back.
#[test]
fn a_builder_says_what_he_knows() {
    let shop = Shop::stocked();
    let said = |arguments: &[&str]| shop.run(&[&["learned"], arguments, &["--json"]].concat());
    let document = said(&["--tell", "joint", "--puts-on", "0.75", "--sure", "sure"]).done().json();
    let told = &document["told"][0];
    assert_eq!((&told["of"], &told["sure"]), (&json!("joint"), &json!("sure")));
    assert_eq!((&told["change_points"], &told["sd_points"]), (&json!(0.75), &json!(0.2)));
    let document = said(&["--tell", "joint", "--puts-on", "0.9"]).done().json();
    assert_eq!(document["told"].as_array().map(Vec::len), Some(1));
    assert_eq!(document["told"][0]["sd_points"], 0.3);
    let page = shop.run(&["learned"]).done().out;
    assert!(page.contains("A joint") && page.contains("your clubs say"), "{page}");
    for (arguments, says) in [
        (&["--tell", "joint", "--takes-off", "0.75"][..], "puts on"),
        (&["--tell", "joint", "--puts-on", "75"], "between"),
        (&["--tell", "joint"], "one figure"),
        (&["--tell", "joint", "--puts-on", "0.75", "--model", "NOBODY"], "NOBODY"),
        (&["--withdraw", "wrap"], "nobody has said"),
    ] {
        let refused = said(arguments);
        assert!(refused.code != 0);
        let detail = refused.json()["detail"].as_str().expect("a detail").to_owned();
        assert!(detail.contains(says), "{detail}");
    }
    let document = said(&["--withdraw", "joint", "--reason", "another tin"]).done().json();
    assert!(document.get("told").is_none(), "{document}");
}
