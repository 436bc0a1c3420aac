//! The words of a builder besides readings: jobs listed and given up, a reading taken back or stood by, another part, a joint let
//! pass. Each is done by command and looked at through the API.

use crate::run::{Served, Shop};
use serde_json::{Value, json};

fn view(served: &Served) -> Value {
    let (status, text) = served.ask("GET", "/api/v1/jobs/1", "");
    assert_eq!(status, 200, "{text}");
    serde_json::from_str(&text).expect("a document")
}

/// What was read of a club at a step, none where nothing stands.
fn read_at(view: &Value, slot: usize, step: &str) -> Option<String> {
    let steps = view["clubs"][slot - 1]["steps"].as_array().expect("steps");
    let step = steps.iter().find(|s| s["key"] == step).expect("the step");
    step["asks"][0]["reading"]["typed"].as_str().map(str::to_owned)
}

#[test]
fn a_job_is_listed_shown_and_given_up() {
    let shop = Shop::stocked();
    assert!(shop.run(&["job", "list"]).done().out.contains("No job is under way."));
    shop.run(&["sheet", "add", "sheet.json"]).done();
    assert!(
        shop.run(&["job", "list"])
            .done()
            .out
            .lines()
            .last()
            .is_some_and(|l| l.starts_with("1 ") && l.ends_with("choose the parts"))
    );
    shop.run(&["plan", "1", "--accept"]).done();
    let served = shop.serve("serve");
    let (_, by_api) = served.ask("GET", "/api/v1/jobs", "");
    let by_api: Value = serde_json::from_str(&by_api).expect("a document");
    assert_eq!(shop.run(&["job", "list", "--json"]).done().json(), by_api);
    assert_eq!(shop.run(&["job", "show", "1", "--json"]).done().json(), view(&served));
    let clubs = by_api[0]["clubs"].as_array().expect("clubs").len();
    assert_eq!(shop.run(&["job", "show", "1"]).done().out.lines().count(), clubs + 2, "a line a club under two");

    // A state that is none, a job that is none, no reason: nothing is done.
    let known = shop.run(&["job", "list", "--state", "begun", "--json"]).problem(2, "invalid");
    assert!(known.contains("finished"), "{known}");
    shop.run(&["job", "show", "9", "--json"]).problem(3, "not_found");
    shop.run(&["job", "drop", "1", "--reason", "", "--json"]).problem(2, "invalid");
    assert_eq!(view(&served)["job"]["state"], "planned");
    shop.run(&["job", "drop", "1", "--reason", "the player moved away", "--by", "Ada"]).done();
    assert_eq!(view(&served)["job"]["state"], "dropped");
    shop.run(&["job", "drop", "1", "--reason", "once more", "--json"]).problem(4, "conflict");
    assert_eq!(shop.run(&["job", "list", "--state", "dropped", "--json"]).done().json()[0]["number"], 1);
}

#[test]
fn a_reading_is_taken_back_or_stood_by_and_a_part_is_changed() {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["plan", "1", "--accept"]).done();
    let served = shop.serve("serve");

    // Nothing read yet: nothing to take back.
    let none = shop.run(&["take-back", "1", "1", "--json"]).problem(2, "invalid");
    assert!(none.contains("setwright job show 1"), "{none}");
    // A reading far off: doubted, with what may be behind it and what to do.
    let said = shop.run(&["read", "1", "1", "dry", "swing_weight=C1"]).done().out;
    assert!(said.lines().count() >= 2, "what it means and what to do: {said}");
    shop.run(&["stand-by", "1", "1", "--json"]).problem(2, "invalid");
    shop.run(&["stand-by", "1", "1", "--reason", "read twice", "--by", "Ada"]).done();
    let steps = view(&served)["clubs"][0]["steps"].clone();
    let dry = steps.as_array().expect("steps").iter().find(|s| s["key"] == "dry").expect("dry").clone();
    assert_eq!(
        (&dry["asks"][0]["reading"]["insisted"], &dry["asks"][0]["doubted"]),
        (&json!(true), &json!(false)),
        "{dry}"
    );

    let back = shop.run(&["take-back", "1", "1", "--reason", "another club's", "--json"]).done().json();
    assert_eq!(back["slot"], 1, "{back}");
    assert_eq!(read_at(&view(&served), 1, "dry"), None);
    shop.run(&["take-back", "1", "1", "--json"]).problem(2, "invalid");
    shop.run(&["take-back", "1", "1", "--reading", "no-such", "--json"]).problem(3, "not_found");
    // By its identity, where a later one stands.
    shop.run(&["read", "1", "1", "dry", "swing_weight=D8"]).done();
    let kept = shop.run(&["read", "1", "2", "dry", "swing_weight=D8", "--json"]).done().json();
    let id = kept["readings"][0]["id"].as_str().expect("its identity").to_owned();
    shop.run(&["take-back", "1", "2", "--reading", &id]).done();
    assert_eq!((read_at(&view(&served), 1, "dry"), read_at(&view(&served), 2, "dry")), (Some("D8".into()), None));

    // A tip weight comes out; what is no kind of part, or no part, changes nothing.
    let known = shop.run(&["change", "1", "1", "weight", "X", "--json"]).problem(2, "invalid");
    assert!(known.contains("tip_weight"), "{known}");
    shop.run(&["change", "1", "1", "head", "NO-SUCH", "--json"]).problem(3, "not_found");
    let plan = shop.run(&["change", "1", "1", "tip_weight", "none", "--reason", "heavy", "--json"]).done().json();
    assert!(plan["parts"].as_array().expect("parts").iter().all(|p| p["kind"] != "tip_weight"), "{plan}");
    assert!(shop.run(&["change", "1", "1", "tip_weight", "none"]).done().out.lines().count() == 2);
}

#[test]
fn a_joint_passes_before_its_time_for_a_reason() {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["plan", "1", "--accept"]).done();
    let start = ["glue", "start", "1", "--clubs", "1", "--lot", "B-7", "--adhesive", "BASALT", "--reason", "a test"];
    shop.run(&start).done();
    let read = ["read", "1", "1", "cured", "swing_weight=D9", "--json"];
    shop.run(&read).problem(4, "waits_for_cure");
    shop.run(&["pass", "1", "1", "cured", "--reason", "no", "--json"]).problem(2, "invalid");
    shop.run(&["pass", "1", "1", "painted", "--reason", "a good reason", "--json"]).problem(3, "not_found");
    shop.run(&read).problem(4, "waits_for_cure");
    assert!(
        shop.run(&["pass", "1", "1", "cured", "--reason", "a good reason"]).done().out.contains("may pass to cured")
    );
    shop.run(&read).done();
}
