//! The job from files to the record: import, export, sheet, plan, record.

use crate::run::{MODELS, PARTS, SHEET, Shop};
use serde_json::{Value, json};
use std::collections::BTreeSet;

#[test]
fn a_file_of_parts_comes_back_byte_for_byte_and_models_as_well() {
    let shop = Shop::stocked();
    assert_eq!(shop.run(&["export"]).done().out, PARTS);
    shop.run(&["export", "--out", "out.csv"]).done();
    assert_eq!(shop.read("out.csv"), PARTS);
    let models = shop.run(&["export", "--models"]).done();
    shop.write("again.json", &models.out);
    let other = Shop::empty();
    other.write("again.json", &models.out);
    let kept = other.run(&["import", "again.json", "--json"]).made().json();
    let given: Value = serde_json::from_str(MODELS).expect("models");
    assert_eq!(kept["kept"].as_array().map(Vec::len), given.as_array().map(Vec::len));
    assert_eq!(other.run(&["export", "--models"]).done().out, models.out);
    let listed = shop.run(&["export", "--json"]).done().json();
    assert_eq!(listed.as_array().map(Vec::len), Some(PARTS.lines().count() - 1));
}

#[test]
fn bad_rows_are_named_and_given_back_and_the_good_ones_kept() {
    let shop = Shop::empty();
    shop.write("models.json", MODELS);
    shop.run(&["import", "models.json"]).made();
    shop.write(
        "mixed.csv",
        "code,kind,model,number,mass_g\nA1,head,WREN-I,7,267.4\nA2,head,WREN-I,7,5 kg\nA3,head,WREN-I,7,-1\nA4,grip,MARL,,50.2\n",
    );
    let ran = shop.run(&["import", "mixed.csv", "--refused", "mend.csv"]);
    assert_eq!(ran.code, 2);
    insta::assert_snapshot!(ran.out, @r##"
    2 parts kept, 2 rows refused
      line 3, mass_g “5 kg”: 5000 g cannot be the mass of a head, which is between 120 g and 600 g. Check the figure and its unit
      line 4, mass_g “-1”: “-1” cannot be read as a mass: this figure has no sign. Write for example 8 g or 1.75 oz
    "##);
    insta::assert_snapshot!(ran.err, @r##"
    × 2 rows were refused; the others are kept. Correct the refused rows and
    │ import them again
    "##);
    let codes = |shop: &Shop| -> BTreeSet<String> {
        let listed = shop.run(&["export", "--json"]).done().json();
        listed.as_array().expect("parts").iter().map(|p| p["code"].as_str().unwrap_or_default().to_owned()).collect()
    };
    assert_eq!(codes(&shop), BTreeSet::from(["A1".to_owned(), "A4".to_owned()]));
    let mended =
        shop.read("mend.csv").replace("A2,head,WREN-I,7,5 kg", "A2,head,WREN-I,7,268.1").replace(",-1", ",266.6");
    shop.write("mend.csv", mended);
    let kept = shop.run(&["import", "mend.csv", "--json"]).done().json();
    assert_eq!((&kept["kept"], &kept["bad"]), (&json!(2), &json!([])));
    assert_eq!(codes(&shop).len(), 4);
    // In JSON the answer is the whole answer; the exit code says that some were refused.
    let ran = shop.run(&["import", "mixed.csv", "--json"]);
    assert_eq!(ran.code, 2);
    assert_eq!(ran.json()["bad"].as_array().map(Vec::len), Some(4), "all four are there or wrong: {}", ran.out);
}

/// Follows a reference of a schema, if it is one.
fn followed<'a>(root: &'a Value, schema: &'a Value) -> &'a Value {
    match schema["$ref"].as_str() {
        Some(place) => root
            .pointer(place.strip_prefix('#').expect("a reference within the document"))
            .unwrap_or_else(|| panic!("{place} leads nowhere")),
        None => schema,
    }
}

/// Whether a document keeps to a schema, as far as the words that ours uses go.
fn keeps_to(root: &Value, schema: &Value, document: &Value) -> Result<(), String> {
    let schema = followed(root, schema);
    for key in ["oneOf", "anyOf"] {
        if let Some(list) = schema[key].as_array() {
            let kept = list.iter().filter(|s| keeps_to(root, s, document).is_ok()).count();
            return if kept > 0 { Ok(()) } else { Err(format!("{document} is none of {key}")) };
        }
    }
    if let Some(list) = schema["enum"].as_array()
        && !list.contains(document)
    {
        return Err(format!("{document} is not in the list"));
    }
    let types: Vec<&str> = match &schema["type"] {
        Value::String(one) => vec![one],
        Value::Array(list) => list.iter().filter_map(Value::as_str).collect(),
        _ => vec![],
    };
    let is = |t: &&str| match *t {
        "object" => document.is_object(),
        "array" => document.is_array(),
        "string" => document.is_string(),
        "integer" => document.is_i64() || document.is_u64(),
        "number" => document.is_number(),
        "boolean" => document.is_boolean(),
        "null" => document.is_null(),
        other => panic!("the type {other} is none of JSON Schema"),
    };
    if !types.is_empty() && !types.iter().any(is) {
        return Err(format!("{document} is no {types:?}"));
    }
    if let Some(map) = document.as_object() {
        for name in schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str) {
            if !map.contains_key(name) {
                return Err(format!("{name} is missing"));
            }
        }
        for (name, value) in map {
            match schema["properties"].get(name) {
                Some(inner) => keeps_to(root, inner, value).map_err(|e| format!("{name}: {e}"))?,
                None if schema["additionalProperties"] == json!(false) => return Err(format!("{name} is not known")),
                None => {}
            }
        }
    }
    if let (Some(list), Some(items)) = (document.as_array(), schema.get("items")) {
        for item in list {
            keeps_to(root, items, item)?;
        }
    }
    Ok(())
}

#[test]
fn the_schema_of_a_sheet_is_a_json_schema_that_good_sheets_keep_to() {
    let shop = Shop::empty();
    let schema = shop.run(&["sheet", "schema"]).done().json();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    let sheet = followed(&schema, &schema);
    let fields: BTreeSet<&str> = sheet["properties"].as_object().expect("fields").keys().map(String::as_str).collect();
    assert_eq!(
        fields,
        BTreeSet::from(["player", "customer", "quote", "due", "hand", "note", "rule", "written", "reference", "clubs"])
    );
    let required: BTreeSet<&str> =
        sheet["required"].as_array().expect("required").iter().filter_map(Value::as_str).collect();
    assert_eq!(required, BTreeSet::from(["player", "due", "hand", "rule", "clubs"]));
    // No reference leads nowhere.
    let text = schema.to_string();
    for piece in text.split("\"$ref\":\"#").skip(1) {
        let place = piece.split('"').next().unwrap_or_default();
        assert!(schema.pointer(place).is_some(), "{place} leads nowhere");
    }
    let good: Value = serde_json::from_str(SHEET).expect("a sheet");
    keeps_to(&schema, &schema, &good).expect("the sheet of this test keeps to it");
    // What the program refuses, the schema refuses.
    let wrong = [
        ("/player", json!(7)),
        ("/hand", json!("both")),
        ("/clubs", json!({})),
        ("/clubs/0/length_mm", json!("36")),
        ("/clubs/0/wraps/base", json!("one")),
        ("/clubs/0/club_kind", json!("rake")),
    ];
    for (place, value) in wrong {
        let mut bad = good.clone();
        *bad.pointer_mut(place).expect("there") = value;
        assert!(keeps_to(&schema, &schema, &bad).is_err(), "{place}");
        shop.write("bad.json", bad.to_string());
        shop.run(&["sheet", "check", "bad.json", "--json"]).problem(2, "invalid");
    }
    let mut unknown = good.clone();
    unknown["clubs"][0]["colour"] = json!("red");
    assert!(keeps_to(&schema, &schema, &unknown).is_err(), "a field that is not known");
}

#[test]
fn a_sheet_is_checked_added_planned_and_recorded() {
    let shop = Shop::stocked();
    let found = shop.run(&["sheet", "check", "sheet.json", "--json"]).done().json();
    assert!(found.as_array().expect("findings").iter().all(|p| p["severity"] != "stop"), "{found}");
    let job = shop.run(&["sheet", "add", "sheet.json", "--json"]).done().json();
    assert_eq!((&job["number"], &job["state"]), (&json!(1), &json!("open")));

    let proposal = shop.run(&["plan", "1", "--json"]).done().json();
    assert_eq!(proposal["plan"]["missing"], json!([]), "{}", proposal["plan"]["missing"]);
    assert_eq!(proposal, shop.run(&["plan", "1", "--json"]).done().json(), "looking holds nothing");
    let kept = shop.run(&["plan", "1", "--keep", "2:H73", "--json"]).done().json();
    assert_eq!(code_of(&kept, 1, "head"), "H73");
    let held = |shop: &Shop| shop.run(&["export"]).done().out.matches(",held,").count();
    assert_eq!(held(&shop), 0);
    let accepted = shop.run(&["plan", "1", "--accept", "--by", "Ada", "--json"]).done().json();
    assert_eq!(accepted["fingerprint"], proposal["fingerprint"]);
    // Heads, shafts and grips are one part each; ferrules and weights are counted.
    assert_eq!(held(&shop), 9);
    let detail = shop.run(&["plan", "1", "--accept", "--json"]).problem(4, "conflict");
    assert!(detail.contains("job 1"), "{detail}");
    assert_eq!(held(&shop), 9);

    let record = shop.run(&["record", "1", "--json"]).done().json();
    assert_eq!(record["player"], "Nobody Inparticular");
    assert_eq!(record["clubs"].as_array().map(Vec::len), Some(3));
    let words = shop.run(&["record", "1"]).done().out;
    assert!(words.starts_with("Job 1, Nobody Inparticular, at the bench\n"), "{words}");
    assert_eq!(words.lines().filter(|l| l.contains("swing weight")).count(), 3, "{words}");
    // The player's sheet: asked beside built, and no chances.
    let sheet = shop.run(&["record", "1", "--player", "--json"]).done().json();
    assert_eq!((&sheet["player"], sheet["clubs"].as_array().map(Vec::len)), (&record["player"], Some(3)));
    assert!(!sheet.to_string().contains("probability"), "{sheet}");
    let words = shop.run(&["record", "1", "--player"]).done().out;
    assert!(words.starts_with("Nobody Inparticular, by "), "{words}");
    assert_eq!(words.lines().filter(|line| line.contains("→ –")).count(), 3, "{words}");
    // The same by the API of the same database.
    let served = shop.serve("serve");
    for (path, of_command) in [("record", record), ("player-sheet", sheet)] {
        let (status, text) = served.ask("GET", &format!("/api/v1/jobs/1/{path}"), "");
        assert_eq!(status, 200);
        assert_eq!(serde_json::from_str::<Value>(&text).expect("a document"), of_command);
    }
}

fn code_of(proposal: &Value, club: usize, kind: &str) -> String {
    let parts = proposal["plan"]["clubs"][club]["parts"].as_array().expect("parts");
    let part = parts.iter().find(|p| p["kind"] == kind).expect("a part");
    part["code"].as_str().expect("a code").to_owned()
}

#[test]
fn a_sheet_with_faults_is_named_by_exit_code_and_makes_no_job() {
    let shop = Shop::stocked();
    let mut sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    let seven = sheet["clubs"][1].clone();
    sheet["clubs"].as_array_mut().expect("clubs").push(seven);
    sheet["clubs"][0]["head_model"] = json!("WREN-L");
    shop.write("faulty.json", sheet.to_string());
    let ran = shop.run(&["sheet", "check", "faulty.json", "--json"]);
    assert_eq!(ran.code, 2);
    let found = ran.json();
    let stops: Vec<&str> = found
        .as_array()
        .expect("findings")
        .iter()
        .filter(|p| p["severity"] == "stop")
        .filter_map(|p| p["words"].as_str())
        .collect();
    assert!(stops.iter().any(|w| w.contains("twice")) && stops.iter().any(|w| w.contains("left-hand")), "{stops:?}");
    let words = shop.run(&["sheet", "check", "faulty.json"]);
    assert_eq!(words.code, 2);
    assert!(words.out.contains("is on the sheet twice"), "{words:?}");
    assert!(words.err.contains("must be put right"), "{words:?}");
    let detail = shop.run(&["sheet", "add", "faulty.json", "--json"]).problem(2, "invalid");
    assert!(detail.contains("left-hand"), "{detail}");
    shop.run(&["plan", "1", "--json"]).problem(3, "not_found");
}

#[test]
fn the_demonstration_greets_and_keeps_what_was_entered() {
    let shop = Shop::empty();
    let served = shop.serve("demo");
    assert_eq!(served.greeting["fresh"], true);
    let (status, jobs) = served.ask("GET", "/api/v1/jobs", "");
    assert_eq!(status, 200);
    let jobs: Value = serde_json::from_str(&jobs).expect("jobs");
    assert_eq!(jobs.as_array().map(Vec::len), Some(2));
    let entry =
        json!({ "slot": 1, "step": "dry", "by": "Ada", "entries": [{ "what": "swing_weight", "typed": "D9" }] });
    let (status, kept) = served.ask("POST", "/api/v1/jobs/1/readings", &entry.to_string());
    assert_eq!(status, 201, "{kept}");
    assert_eq!(served.stop(), Some(0));
    let again = shop.serve("demo");
    assert_eq!(again.greeting["fresh"], false);
    let (_, record) = again.ask("GET", "/api/v1/jobs/1/record", "");
    let record: Value = serde_json::from_str(&record).expect("a record");
    assert_eq!(record["clubs"][0]["readings"][0]["reading"]["typed"], "D9");
}
