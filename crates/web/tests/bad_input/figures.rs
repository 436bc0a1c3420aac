//! Impossible figures: zero, negative, not a number, beyond all floats, kilograms for grams.

use crate::support::answer::detail;
use crate::support::{Bench, models, planned, reading, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

const UNPROCESSABLE: StatusCode = StatusCode::UNPROCESSABLE_ENTITY;

/// Masses that nothing in a club has, as numbers of a document.
const IMPOSSIBLE_G: [&str; 5] = ["0", "-1", "5000", "1e300", "-0.0"];
/// What is no number at all, or none that a float can hold.
const NO_NUMBER: [&str; 5] = ["\"NaN\"", "NaN", "1e999", "-1e999", "\"268,4\""];

#[tokio::test]
async fn a_part_of_an_impossible_mass_is_refused_and_its_neighbours_with_it() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    let post = |mass: &str| {
        format!(
            r#"[{{ "code": "NEW-1", "kind": "grip", "model": "MARL", "mass_g": 50.1 }},
                {{ "code": "NEW-2", "kind": "head", "model": "WREN-I", "number": "7", "mass_g": {mass} }}]"#
        )
    };
    for mass in IMPOSSIBLE_G {
        let problem = bench.refused("POST", "/parts", UNPROCESSABLE, post(mass)).await;
        assert_eq!(problem["type"], "urn:setwright:problem:impossible_figure", "{problem}");
        assert_eq!(
            (&problem["field"], &problem["pointer"]),
            (&json!("mass_g"), &json!("/1/mass_g")),
            "the second entry"
        );
        let given: f64 = mass.parse().expect("a number");
        let words = detail(&problem);
        // A figure of more digits than anybody reads is written with its power of ten.
        let shown = if given > 1e6 { "e300 g".to_owned() } else { format!("{given} g").replace('-', "−") };
        assert!(words.contains(&shown) && words.contains("between 120 g and 600 g"), "{words}");
    }
    for mass in NO_NUMBER {
        let problem = bench.refused("POST", "/parts", UNPROCESSABLE, post(mass)).await;
        assert!(detail(&problem).contains("line 2"), "the line is named: {problem}");
    }
    for typed in ["0", "-3 g", "5 kg", "NaN", "inf g", "1e3"] {
        let part = json!([{ "code": "NEW-2", "kind": "head", "model": "WREN-I", "number": "7", "mass_typed": typed }]);
        bench.refused("POST", "/parts", UNPROCESSABLE, part.to_string()).await;
    }
    for (mass, version) in [("5 kg", 1), ("0", 1)] {
        let change = json!({ "version": version, "mass_typed": mass, "by": "Ada" });
        let problem = bench.refused("PATCH", "/parts/H40", UNPROCESSABLE, change.to_string()).await;
        assert_eq!(problem["field"], "mass_g");
    }
    assert_eq!(bench.picture().await, before);
    // A mass that is left out, or null, is one that was not weighed yet: no mistake.
    let part = json!([{ "code": "NEW-3", "kind": "head", "model": "WREN-I", "number": "7", "mass_g": null }]);
    assert_eq!(bench.made("/parts", part).await[0]["mass_g"], Value::Null);
}

#[tokio::test]
async fn a_reading_that_cannot_be_is_refused_with_all_that_came_with_it() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.picture().await;
    let masses = ["head_mass", "shaft_mass", "ferrule_mass", "tip_weight_mass", "tape_mass", "grip_mass", "total_mass"];
    for what in masses {
        for value in IMPOSSIBLE_G {
            // A good reading stands before it in the same request: neither is kept.
            let body = format!(
                r#"{{ "slot": 1, "step": "weighed", "by": "Ada",
                    "entries": [{{ "what": "swing_weight", "value": 40.0 }}, {{ "what": "{what}", "value": {value} }}] }}"#
            );
            let problem = bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, body).await;
            assert_eq!(problem["type"], "urn:setwright:problem:impossible_figure", "{problem}");
            assert_eq!(problem["field"], what);
        }
        for value in NO_NUMBER {
            let body = format!(
                r#"{{ "slot": 1, "step": "weighed", "by": "Ada", "entries": [{{ "what": "{what}", "value": {value} }}] }}"#
            );
            bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, body).await;
        }
    }
    // Impossible figures are said before anything about the cure.
    for (what, value) in [("swing_weight", 500.0), ("finished_length", 0.0), ("loft", -3.0), ("lie", 5.0), ("cpm", 1e9)]
    {
        let entry = reading(1, "finish", json!([{ "what": what, "value": value }]));
        bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, entry.to_string()).await;
    }
    // A null is no reading: there is nothing to read, and it says how one is written.
    let entry = reading(1, "dry", json!([{ "what": "swing_weight", "value": null }]));
    let problem = bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, entry.to_string()).await;
    assert!(detail(&problem).contains("D3.5"), "{problem}");
    let problem =
        bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, reading(1, "dry", json!([])).to_string()).await;
    assert!(detail(&problem).contains("nothing was entered"), "{problem}");
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn the_same_quantity_twice_in_one_entry_is_refused() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.picture().await;
    let entries = json!([{ "what": "swing_weight", "value": 40.0 }, { "what": "swing_weight", "value": 40.4 }]);
    let problem =
        bench.refused("POST", "/jobs/1/readings", UNPROCESSABLE, reading(1, "dry", entries).to_string()).await;
    assert!(detail(&problem).contains("swing weight is entered twice"), "{problem}");
    assert_eq!(bench.picture().await, before);
}

/// Every figure of a model that is a mass, by kind: where it stands in the document.
const MODEL_MASSES: [(&str, &str); 6] = [
    ("WREN-I", "/numbers/3/mass_g"),
    ("SCREE-P", "/blanks/0/mass_g"),
    ("MARL", "/mass_g"),
    ("FERR", "/mass_g"),
    ("TW2", "/mass_g"),
    ("BASALT", "/joint_mass_g"),
];

#[tokio::test]
async fn a_model_of_an_impossible_mass_is_refused_alone_and_in_a_file() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    for (code, place) in MODEL_MASSES {
        let model = bench.get(&format!("/models/{code}")).await;
        for mass in [json!(0.0), json!(-1.0), json!(5000.0), json!(null), json!("NaN")] {
            let mut wrong = model.clone();
            *wrong.pointer_mut(place).expect("the mass is there") = mass.clone();
            bench.refused("POST", "/models", UNPROCESSABLE, wrong.to_string()).await;
            let kept = bench.made("/models/import", json!([wrong])).await;
            assert_eq!(kept["kept"], json!([]), "{code} with {mass}");
            assert_eq!(kept["bad"][0]["code"], code, "{kept}");
        }
        let beyond = model.to_string().replacen("mass_g\":", "mass_g\":1e999,\"x\":", 1);
        bench.refused("POST", "/models", UNPROCESSABLE, beyond).await;
    }
    assert_eq!(bench.picture().await, before);
    // In a file with good ones, those are kept.
    let mut file = models();
    file[3]["code"] = json!("MARL-2");
    file[4]["mass_g"] = json!(-1.0);
    file[4]["code"] = json!("FERR-2");
    let kept = bench.made("/models/import", file).await;
    assert_eq!(kept["bad"].as_array().map(Vec::len), Some(1), "{kept}");
    assert_eq!(kept["bad"][0]["code"], "FERR-2");
    assert_eq!(kept["bad"][0]["entry"], 5);
    bench.get("/models/MARL-2").await;
}

#[tokio::test]
async fn calculations_refuse_impossible_masses_by_name() {
    let bench = Bench::open().await;
    for mass in ["0", "-1", "5000", "\"NaN\"", "1e999", "null"] {
        let one = format!(r#"{{ "total_mass_g": {mass}, "balance_point_mm": 824.0 }}"#);
        let problem = bench.refused("POST", "/calc/swing-weight", UNPROCESSABLE, one).await;
        assert!(detail(&problem).len() > 30, "{problem}");
        let parts = format!(
            r#"{{ "parts": [{{ "name": "head", "mass_g": {mass}, "position_mm": 960 }},
                            {{ "name": "shaft", "mass_g": 110, "position_mm": 450 }}] }}"#
        );
        // A part without mass is legitimate (a grip that is left off); the whole club without mass is not.
        if mass != "0" {
            bench.refused("POST", "/calc/swing-weight", UNPROCESSABLE, parts).await;
        }
    }
    let problem = bench.refused("POST", "/calc/swing-wieght", UNPROCESSABLE, "{}").await;
    assert!(detail(&problem).contains("Did you mean swing-weight?"), "{problem}");
}

/// Every number of a document: its place.
fn numbers(value: &Value, place: &str, found: &mut Vec<String>) {
    match value {
        Value::Number(_) => found.push(place.to_owned()),
        // The first few stand for a long list of samples.
        Value::Array(list) => {
            list.iter().take(3).enumerate().for_each(|(i, v)| numbers(v, &format!("{place}/{i}"), found));
        }
        Value::Object(map) => map.iter().for_each(|(k, v)| numbers(v, &format!("{place}/{k}"), found)),
        _ => {}
    }
}

#[tokio::test]
async fn no_figure_makes_a_calculation_break_or_answer_without_a_number() {
    let bench = Bench::open().await;
    let mut tried = 0;
    for topic in bench.get("/calc").await.as_array().expect("topics") {
        let name = topic["name"].as_str().expect("a name");
        let mut places = Vec::new();
        numbers(&topic["example"], "", &mut places);
        assert!(!places.is_empty(), "{name} takes no number");
        for place in places {
            for wrong in [json!(0.0), json!(-1.0), json!(1e-300), json!(1e300), json!("NaN"), json!([])] {
                let mut input = topic["example"].clone();
                *input.pointer_mut(&place).expect("a number") = wrong.clone();
                let answer =
                    bench.ask("POST", &format!("/api/v1/calc/{name}"), "application/json", input.to_string()).await;
                tried += 1;
                match answer.status {
                    StatusCode::OK => {
                        assert!(!answer.text.contains("null"), "{name}{place} = {wrong}: {}", answer.text);
                    }
                    status => {
                        assert_eq!(status, UNPROCESSABLE, "{name}{place} = {wrong}: {}", answer.text);
                        answer.problem(UNPROCESSABLE);
                    }
                }
            }
        }
    }
    assert!(tried > 300, "only {tried} tried");
}

async fn findings(bench: &Bench, sheet: &Value) -> Vec<(String, String)> {
    let found = bench.made("/sheets/check", sheet.clone()).await;
    let stops = found.as_array().expect("findings").iter().filter(|p| p["severity"] == "stop");
    stops
        .map(|p| {
            (p["field"].as_str().unwrap_or_default().to_owned(), p["words"].as_str().unwrap_or_default().to_owned())
        })
        .collect()
}

/// A sheet with a fault may be saved, but no job comes of it, by program or by page.
async fn cannot_be_approved(bench: &Bench, sheet: &Value, words: &str) {
    let found = findings(bench, sheet).await;
    assert!(found.iter().any(|(_, w)| w.contains(words)), "{found:?}");
    let saved = bench.made("/sheets", sheet.clone()).await;
    let id = saved["id"].as_str().expect("an id");
    let path = format!("/sheets/{id}/approve");
    let problem = bench.refused("POST", &path, UNPROCESSABLE, json!({ "by": "Ada" }).to_string()).await;
    assert!(detail(&problem).contains(words), "{problem}");
    bench.form(&path, &[]).await.says(UNPROCESSABLE, &["Not approved", words]);
    assert_eq!(bench.get("/jobs").await, json!([]));
    assert_eq!(bench.get(&format!("/sheets/{id}")).await["job"], Value::Null);
}

#[tokio::test]
async fn a_sheet_with_the_same_club_twice_makes_no_job() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let mut twice = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    let seven = twice["clubs"][3].clone();
    twice["clubs"].as_array_mut().expect("clubs").push(seven);
    cannot_be_approved(&bench, &twice, "this club is on the sheet twice").await;
}

#[tokio::test]
async fn a_left_hand_head_has_no_place_in_a_right_hand_set() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let mut mixed = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    mixed["clubs"][3]["head_model"] = json!("WREN-L");
    cannot_be_approved(&bench, &mixed, "Wren iron left is a left-hand head").await;
}

#[tokio::test]
async fn a_left_hand_head_cannot_be_put_in_later_either() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let part = json!([{ "code": "HL7", "kind": "head", "model": "WREN-L", "number": "7", "mass_g": 267.2 }]);
    bench.made("/parts", part).await;
    let before = bench.picture().await;
    let swap = json!({ "kind": "head", "code": "HL7", "by": "Ada" });
    let answer = bench.ask("POST", "/api/v1/jobs/1/clubs/4/parts", "application/json", swap.to_string()).await;
    assert!(answer.status.is_client_error(), "{}", answer.text);
    let problem = answer.problem(answer.status);
    assert!(detail(&problem).contains("left"), "{problem}");
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn figures_of_a_sheet_that_no_club_has_make_no_job() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let good = sheet(&bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    for (field, value) in [
        ("length_mm", 0.0),
        ("length_mm", -940.0),
        ("length_mm", 37.0),
        ("swing_weight_points", 1000.0),
        ("loft_deg", -1.0),
        ("lie_deg", 0.0),
        ("cpm", -1.0),
    ] {
        let mut wrong = good.clone();
        wrong["clubs"][2][field] = json!(value);
        let found = findings(&bench, &wrong).await;
        assert!(found.iter().any(|(f, _)| *f == format!("clubs[2].{field}")), "{field} {value}: {found:?}");
    }
    let beyond = good.to_string().replacen("\"length_mm\":", "\"length_mm\":1e999,\"x\":", 1);
    bench.refused("POST", "/sheets", UNPROCESSABLE, beyond).await;
    assert_eq!(bench.get("/sheets").await, json!([]));
}
