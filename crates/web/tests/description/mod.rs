//! Goal: the description of the API is whole and true, so that a program can be written against it without this source.
//! Method: its own rules are read from the document; models, answers and examples are held against its schemas by a general
//! JSON Schema validator; its limits are tried from both sides at the running API. (Beside this, every request of every
//! test of this crate is held against the description: `support/described.rs`.)

mod examples;
mod limits;

use crate::support::Bench;
use crate::support::described::{DESCRIPTION, fits, mistakes, resolved};
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

const MODELS: &str = include_str!("../../../../docs/example/models.json");

/// Every operation: its method, its path and what is said of it.
fn operations() -> Vec<(&'static str, &'static str, &'static Value)> {
    let paths = DESCRIPTION["paths"].as_object().expect("paths");
    let of_path = |(path, item): (&'static String, &'static Value)| {
        let methods = item.as_object().expect("methods");
        methods.iter().map(|(method, operation)| (method.as_str(), path.as_str(), operation)).collect::<Vec<_>>()
    };
    paths.iter().flat_map(of_path).collect()
}

/// The description of a part of the example shop, to refer to.
fn schema(name: &str) -> Value {
    json!({ "$ref": format!("#/components/schemas/{name}") })
}

#[test]
fn every_operation_can_be_understood() {
    let tags: BTreeSet<&str> =
        DESCRIPTION["tags"].as_array().expect("tags").iter().filter_map(|t| t["name"].as_str()).collect();
    let mut names = BTreeSet::new();
    for (method, path, operation) in operations() {
        let of = format!("{method} {path}");
        let name = operation["operationId"].as_str().unwrap_or_else(|| panic!("{of} has no name"));
        assert!(names.insert(name), "{name} is there twice");
        assert!(name.contains('_') && name.bytes().all(|b| b.is_ascii_lowercase() || b == b'_'), "{name}");
        assert!(operation["summary"].as_str().is_some_and(|s| s.len() > 3), "{of} does not say what it does");
        let [tag] = operation["tags"].as_array().map_or(&[] as &[Value], Vec::as_slice) else {
            panic!("{of} has no noun: put its path into NOUNS")
        };
        assert!(tags.contains(tag.as_str().expect("a name")), "{tag}");
        for parameter in operation["parameters"].as_array().into_iter().flatten() {
            let name = parameter["name"].as_str().expect("a name");
            let in_path = path.contains(&format!("{{{name}}}"));
            assert_eq!(parameter["in"], if in_path { "path" } else { "query" }, "{of} {name}");
            assert!(parameter["description"].is_string(), "{of}: what is {name}? Put it into PARAMETERS");
        }
        for (status, response) in operation["responses"].as_object().expect("responses") {
            let response = resolved(response);
            let said = response["description"].as_str().unwrap_or_default();
            assert!(said.len() > 5, "{of} does not say what {status} is: “{said}”");
            if status.starts_with(['4', '5']) {
                assert!(response["content"]["application/problem+json"].is_object(), "{of} {status}");
            }
        }
        if let Some(json) = operation["requestBody"]["content"].get("application/json") {
            assert!(json["example"] != Value::Null, "{of} has no example: put one into examples.rs");
            assert!(operation["responses"]["415"].is_object(), "{of}");
        }
    }
    assert_eq!(DESCRIPTION["servers"][0]["url"], "/api/v1");
    // This machine needs no key, everything else sends one.
    assert_eq!(DESCRIPTION["security"], json!([{}, { "key": [] }]));
    assert_eq!(DESCRIPTION["components"]["securitySchemes"]["key"]["scheme"], "bearer");
}

#[test]
fn every_field_says_what_it_is() {
    for (name, schema) in DESCRIPTION["components"]["schemas"].as_object().expect("schemas") {
        let forms = ["oneOf", "allOf", "anyOf"].into_iter().filter_map(|of| schema[of].as_array()).flatten();
        for form in forms.chain([schema]) {
            for (field, said) in form["properties"].as_object().into_iter().flatten() {
                assert!(said["description"].is_string(), "what is {name}.{field}?");
            }
            let closed_within = |part: &Value| resolved(part)["additionalProperties"] == json!(false);
            let both = form["allOf"].as_array().map_or(0, Vec::len);
            let closed = form["allOf"].as_array().into_iter().flatten().any(closed_within);
            assert!(both < 2 || !closed, "nothing can fit {name}: a part of it refuses the fields of the others");
        }
    }
}

#[tokio::test]
async fn every_model_fits_and_what_is_not_one_does_not() {
    let bench = Bench::open().await;
    assert!(::demo::load(&bench.app).await.expect("the invented shop"));
    let mut models = bench.get("/models").await.as_array().expect("models").clone();
    models.extend(serde_json::from_str::<Vec<Value>>(MODELS).expect("models"));
    let mut kinds = BTreeSet::new();
    for model in &models {
        fits(&schema("Model"), model, "a model");
        kinds.insert(model["kind"].as_str().expect("a kind"));
        for (field, wrong) in [("kind", json!("hat")), ("name", json!(5)), ("colour", json!("red"))] {
            let mut bad = model.clone();
            bad[field] = wrong;
            assert!(!mistakes(&schema("Model"), &bad).is_empty(), "{bad}");
        }
    }
    assert_eq!(kinds.len(), 8, "{kinds:?}");
}

/// The values that a path parameter can have in the demonstration.
async fn places(bench: &Bench) -> BTreeMap<&'static str, Vec<String>> {
    let texts = |list: &Value, field: &str| -> Vec<String> {
        let of = |v: &Value| v[field].as_str().map_or_else(|| v[field].to_string(), str::to_owned);
        list.as_array().expect("a list").iter().map(of).collect()
    };
    let mut jobs = texts(&bench.get("/jobs").await, "number");
    jobs.extend(texts(&bench.get("/jobs?state=finished").await, "number"));
    let first = bench.get(&format!("/jobs/{}", jobs[0])).await;
    BTreeMap::from([
        ("/jobs/{number}", jobs),
        ("{slot}", texts(&first["job"]["clubs"], "slot")),
        ("/customers/{number}", texts(&bench.get("/customers").await, "number")),
        ("/orders/{number}", texts(&bench.get("/orders").await["orders"], "number")),
        ("/sheets/{id}", texts(&bench.get("/sheets").await, "id")),
        ("/models/{code}", texts(&bench.get("/models").await, "code")),
        ("/parts/{code}", {
            let mut codes = texts(&bench.get("/parts?limit=40").await["parts"], "code");
            codes.extend(texts(&bench.get("/parts?limit=2&kind=shaft").await["parts"], "code"));
            codes
        }),
        ("/clubs/{code}", texts(&bench.get("/clubs?search=7").await, "code")),
        ("/cards/{code}", texts(&first["job"]["clubs"], "card")),
        ("/scan/{code}", texts(&bench.get("/parts?limit=2").await["parts"], "code")),
        ("/scales/{scale}", vec!["balance".into(), "mass".into()]),
        ("/gauge-studies/{study}", texts(&bench.get("/gauge-studies").await, "id")),
    ])
}

/// What an operation needs in its query; all else is left out.
fn query(path: &str) -> &'static str {
    match path {
        "/again" => "?job=3",
        "/find" => "?text=job%201",
        "/recall" | "/recall/addresses" => "?lot=D-101",
        "/glue/mix" => "?joints=8",
        "/jobs/{number}/open" => "?step=glue",
        "/match-set" => "?clubs=C1,C2,C3,C4&number=6",
        "/labels.svg" => "?codes=S4-01",
        "/parts/sorted" | "/parts/sorted/export" => "?model=SISKIN&number=7",
        _ => "",
    }
}

#[tokio::test]
async fn every_answer_of_the_demonstration_is_as_described() {
    let bench = Bench::open().await;
    assert!(::demo::load(&bench.app).await.expect("the invented shop"));
    let study = json!({ "scale": "balance", "parts": ["a", "b", "c", "d", "e"], "builders": ["Ada", "Ben"], "trials": 2, "by": "Ada" });
    bench.made("/gauge-studies", study).await;
    let places = places(&bench).await;
    let (mut asked, mut never) = (0, Vec::new());
    for (method, path, _) in operations() {
        // The live events do not end.
        if method != "get" || path == "/live" {
            continue;
        }
        let mut addresses = vec![path.to_owned()];
        for (place, values) in &places {
            let fill = |address: String| -> Vec<String> {
                let name = &place[place.find('{').expect("a parameter")..];
                if !address.contains(place) {
                    return vec![address];
                }
                values.iter().map(|v| address.replace(place, &place.replace(name, v))).collect()
            };
            addresses = addresses.into_iter().flat_map(fill).collect();
        }
        let mut good = 0;
        for address in addresses {
            assert!(!address.contains('{'), "{address}: say in `places` what this can be");
            let address = format!("/api/v1{address}{}", query(path));
            // Held against the description on the way.
            let answer = bench.ask("GET", &address, "", "").await;
            assert!(answer.status.is_success() || answer.status.is_client_error(), "{address}: {}", answer.text);
            good += usize::from(answer.status == StatusCode::OK);
            asked += 1;
        }
        if good == 0 {
            never.push(path);
        }
    }
    assert!(asked > 200, "{asked}");
    assert!(never.is_empty(), "these were never answered: {never:?}");
}
