//! What is open, what to fit, exchanged heads and the override of a cure: the same by command as by the API.

use crate::run::{Served, Shop};
use serde_json::{Value, json};

fn asked(served: &Served, method: &str, path: &str, body: &Value) -> Value {
    let (status, text) = served.ask(method, &format!("/api/v1{path}"), &body.to_string());
    assert!((200..300).contains(&status), "{path}: {status} {text}");
    serde_json::from_str(&text).unwrap_or(Value::Null)
}

fn read(served: &Served, slot: usize, step: &str, what: &str, value: f64) -> Value {
    let body = json!({ "slot": slot, "step": step, "entries": [{ "what": what, "value": value }], "by": "Ada" });
    asked(served, "POST", "/jobs/1/readings", &body)
}

/// A job with its plan, served: its clubs are read through the API.
fn at_the_bench() -> (Shop, Served, usize) {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["plan", "1", "--accept"]).done();
    let served = shop.serve("serve");
    let clubs = asked(&served, "GET", "/jobs/1", &json!({}))["clubs"].as_array().map_or(0, Vec::len);
    (shop, served, clubs)
}

fn expected(served: &Served, slot: usize) -> f64 {
    let view = asked(served, "GET", "/jobs/1", &json!({}));
    let steps = view["clubs"][slot - 1]["steps"].as_array().expect("steps").clone();
    let dry = steps.iter().find(|step| step["key"] == "dry").expect("the step").clone();
    dry["asks"][0]["expected"]["value"].as_f64().expect("a forecast")
}

#[test]
fn what_is_open_is_passed_by_command_as_by_the_api() {
    let (shop, served, clubs) = at_the_bench();
    let by_api = asked(&served, "GET", "/jobs/1/open?step=glue", &json!({}));
    assert_eq!(by_api.as_array().map(Vec::len), Some(clubs), "nothing is read yet");
    assert_eq!(shop.run(&["open", "1", "--before", "glue", "--json"]).done().json(), by_api);
    let next = asked(&served, "GET", "/jobs/1/open/next", &json!({}));
    assert_eq!(shop.run(&["open", "1", "--json"]).done().json(), next);
    assert!(shop.run(&["open", "1", "--before", "glue"]).done().out.contains("swing weight is not read"));

    let pass = ["open", "1", "--before", "glue", "--clubs", "1", "--json", "--pass"];
    shop.run(&[&pass[..], &["no"]].concat()).problem(2, "invalid");
    let passed = shop.run(&[&pass[..], &["the scale is away", "--by", "Ada"]].concat()).done().json();
    assert_eq!(passed[0]["passed"]["reason"], "the scale is away", "{passed}");
    assert_eq!(asked(&served, "GET", "/jobs/1/open?step=glue", &json!({})), passed);
    assert!(shop.run(&["open", "1", "--before", "glue"]).done().out.contains("passed: the scale is away (Ada)"));
    shop.run(&["open", "1", "--before", "paint", "--json"]).problem(3, "not_found");

    // One word for the batch.
    let batch = json!({ "job": 1, "slots": [1], "adhesive": "BASALT", "lot": "K-1", "room_c": 23, "by": "Ada" });
    asked(&served, "POST", "/batches", &batch);
    let given =
        ["glue", "override", "1", "--strength", "full", "--reason", "cured in the oven", "--by", "Ada", "--json"];
    let kept = shop.run(&given).done().json();
    assert_eq!(
        (&kept["let_pass"][0]["strength"], &kept["let_pass"][0]["by"]),
        (&json!("full"), &json!("Ada")),
        "{kept}"
    );
    assert_eq!(shop.run(&["glue", "list", "--json"]).done().json(), asked(&served, "GET", "/batches", &json!({})));
    assert!(shop.run(&["glue", "list"]).done().out.contains("cured in the oven (Ada"));
    let view = asked(&served, "GET", "/jobs/1", &json!({}));
    let gates = view["clubs"][0]["steps"].as_array().expect("steps").clone();
    assert!(gates.iter().all(|step| step["gate"]["gate"] != "waits"), "{view}");
    shop.run(&["glue", "override", "9", "--strength", "full", "--reason", "cured", "--json"]).problem(3, "not_found");
}

#[test]
fn what_to_fit_is_taken_by_command_as_by_the_api() {
    let (shop, served, clubs) = at_the_bench();
    for slot in 1..=clubs {
        let off = if slot % 2 == 0 { -1.0 } else { 0.0 };
        let kept = read(&served, slot, "dry", "swing_weight", ((expected(&served, slot) + off) * 10.0).round() / 10.0);
        let id = kept["readings"][0]["id"].as_str().expect("an identity").to_owned();
        let word = json!({ "reason": "read twice", "by": "Ada" });
        asked(&served, "POST", &format!("/jobs/1/readings/{id}/insist"), &word);
    }
    let fit = asked(&served, "GET", "/jobs/1/fit", &json!({}));
    assert_eq!(shop.run(&["fit", "1", "--json"]).done().json(), fit);
    let advised = fit["rows"].as_array().expect("rows").iter().filter(|row| row.get("advised").is_some()).count();
    assert!(advised > 0, "{fit}");
    assert_eq!(shop.run(&["fit", "1"]).done().out.matches(" becomes ").count(), advised);
    let taken = shop.run(&["fit", "1", "--take", "--json"]).done().json();
    assert_eq!(taken["taken"].as_array().map(Vec::len), Some(advised), "{taken}");
    assert_eq!(taken["fit"], asked(&served, "GET", "/jobs/1/fit", &json!({})));
    shop.run(&["fit", "1", "--take", "--json"]).problem(4, "conflict");
    // One club by hand, and back.
    let before = &taken["before"][0];
    let text = |field: &str| before[field].as_str().expect("a text").to_owned();
    let pick = format!("{}:{}:{}", before["slot"], text("kind"), text("code"));
    let back = shop.run(&["fit", "1", "--take", "--pick", &pick, "--json"]).done().json();
    assert_eq!(&back["taken"][0], before, "{back}");
    shop.run(&["fit", "1", "--take", "--pick", "4", "--json"]).problem(2, "invalid");
}

#[test]
fn exchanged_heads_are_put_right_by_command_and_taken_back() {
    let (shop, served, _) = at_the_bench();
    for (slot, off) in [(1, 3.0), (2, -3.0)] {
        let value = ((expected(&served, slot) + off) * 10.0).round() / 10.0;
        read(&served, slot, "dry", "swing_weight", value);
    }
    let done = shop.run(&["exchange", "1", "--kind", "head", "--clubs", "1,2", "--json"]).done().json();
    assert_eq!((&done["slots"], done["readings"].as_array().map(Vec::len)), (&json!([1, 2]), Some(2)), "{done}");
    let undone = shop.run(&["exchange", "1", "--undo", "--json"]).done().json();
    assert_eq!(undone["readings"].as_array().map(Vec::len), Some(2), "{undone}");
    let record = asked(&served, "GET", "/jobs/1/record", &json!({}));
    let standing = |club: usize| {
        let readings = record["clubs"][club]["readings"].as_array().expect("readings");
        readings.iter().filter(|r| r["stands"] == true).count()
    };
    assert_eq!((standing(0), standing(1)), (1, 1), "{record}");
    shop.run(&["exchange", "1", "--undo", "--json"]).problem(3, "not_found");
    shop.run(&["exchange", "1", "--kind", "head", "--clubs", "1,1", "--json"]).problem(2, "invalid");
}

#[test]
fn a_step_is_noted_as_done_by_command_as_by_the_api() {
    let (shop, served, clubs) = at_the_bench();
    let done = |slot: usize| {
        let record = asked(&served, "GET", "/jobs/1/record", &json!({}));
        let readings = record["clubs"][slot - 1]["readings"].as_array().expect("readings").clone();
        readings.iter().filter(|r| r["reading"]["step"] == "prepared" && r["reading"]["what"] == "done").count()
    };
    // One club by its place, then all that are left; nothing is noted twice.
    let one = shop.run(&["done", "1", "prepared", "--clubs", "1", "--by", "Ada", "--json"]).done().json();
    assert_eq!(one["slots"], json!([1]), "{one}");
    let rest = shop.run(&["done", "1", "prepared"]).done().out;
    assert!(rest.contains(&(clubs - 1).to_string()), "{rest}");
    assert!((1..=clubs).all(|slot| done(slot) == 1), "{:?}", (1..=clubs).map(done).collect::<Vec<_>>());
    let by_api = asked(&served, "POST", "/jobs/1/done", &json!({ "step": "prepared", "by": "Ada" }));
    assert_eq!(shop.run(&["done", "1", "prepared", "--json"]).done().json(), by_api);
    assert_eq!(by_api["slots"], json!([]), "{by_api}");
    // A step that asks for a figure is not only done; one that the job does not have is not there.
    shop.run(&["done", "1", "dry", "--json"]).problem(4, "conflict");
    shop.run(&["done", "1", "paint", "--json"]).problem(3, "not_found");
}
