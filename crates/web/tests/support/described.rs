//! Every answer of the API in every test is held against the description of the API: is the status documented, is the
//! content what is promised, was a body that was taken one that the description allows. The judge of the schemas is a
//! general JSON Schema validator (crate `jsonschema`, draft 2020-12, formats on).

use super::answer::Answer;
use axum::http::StatusCode;
use jsonschema::Validator;
use serde_json::{Map, Value, json};
use std::collections::HashMap;
use std::sync::{Arc, LazyLock, Mutex};

/// Where the API lies.
pub const ROOT: &str = "/api/v1";

/// The description as the API gives it.
pub static DESCRIPTION: LazyLock<Value> =
    LazyLock::new(|| serde_json::from_str(&web::openapi()).expect("the description is JSON"));

/// Made once each: the schemas refer to each other widely.
static VALIDATORS: LazyLock<Mutex<HashMap<String, Arc<Validator>>>> = LazyLock::new(Mutex::default);

/// A request to the API.
pub struct Asked<'a> {
    pub method: &'a str,
    pub address: &'a str,
    pub kind: &'a str,
    pub body: &'a [u8],
}

/// Holds an answer against the description.
pub fn hold(asked: &Asked, answer: &Answer) {
    let Some(path) = asked.address.strip_prefix(ROOT) else { return };
    let path = path.split('?').next().unwrap_or_default();
    let of = format!("{} {}", asked.method, asked.address);
    let Some((template, item)) = item_of(path) else {
        // What is not described is not there, but for a calculation by a wrong name, which is told the right ones.
        assert!(answer.status == StatusCode::NOT_FOUND || path.starts_with("/calc/"), "{of} is not described");
        return;
    };
    let Some(operation) = item.get(asked.method.to_lowercase()) else {
        assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED, "{of} is not described");
        return;
    };
    let status = answer.status.as_u16().to_string();
    let response = resolved(&operation["responses"][&status]);
    assert!(response.is_object(), "{of}: {status} is not among the answers of {template}: {}", answer.text);
    let kind = answer.kind.split(';').next().unwrap_or_default();
    match response["content"].as_object() {
        None => assert!(answer.text.is_empty(), "{of}: {status} promises nothing, but came: {}", answer.text),
        Some(content) => {
            let promised = content.get(kind);
            let promised = promised.unwrap_or_else(|| panic!("{of}: {status} came as {kind}, which is not described"));
            if kind.ends_with("json") {
                fits(&promised["schema"], &answer.value(), &format!("{of}: the answer {status}"));
            }
        }
    }
    let body = &operation["requestBody"]["content"][asked.kind]["schema"];
    if answer.status.is_success() && asked.kind == "application/json" && body.is_object() {
        let sent = serde_json::from_slice(asked.body).expect("a body that was taken is JSON");
        fits(body, &sent, &format!("{of}: the body that was taken"));
    }
}

/// The described path that an address fits, fixed words before parameters.
fn item_of(path: &str) -> Option<(&'static str, &'static Value)> {
    let words: Vec<&str> = path.split('/').collect();
    let paths = DESCRIPTION["paths"].as_object().expect("paths");
    paths
        .iter()
        .filter(|(template, _)| {
            let of: Vec<&str> = template.split('/').collect();
            of.len() == words.len() && of.iter().zip(&words).all(|(t, w)| t.starts_with('{') || t == w)
        })
        .min_by_key(|(template, _)| template.matches('{').count())
        .map(|(template, item)| (template.as_str(), item))
}

/// What a reference refers to.
pub fn resolved(value: &Value) -> &Value {
    match value["$ref"].as_str() {
        Some(to) => DESCRIPTION.pointer(to.trim_start_matches('#')).expect("what is referred to is there"),
        None => value,
    }
}

/// Panics where a document does not fit a schema of the description.
#[track_caller]
pub fn fits(schema: &Value, document: &Value, of: &str) {
    let mistakes = mistakes(schema, document);
    assert!(mistakes.is_empty(), "{of} does not fit its schema: {}\n{document}", mistakes.join("\n"));
}

/// What does not fit a schema of the description, each with its place.
pub fn mistakes(schema: &Value, document: &Value) -> Vec<String> {
    let key = schema.to_string();
    let known = VALIDATORS.lock().expect("no test panicked here").get(&key).cloned();
    let validator = known.unwrap_or_else(|| {
        let mut whole = schema.as_object().cloned().unwrap_or_else(Map::new);
        whole.insert("components".into(), json!({ "schemas": DESCRIPTION["components"]["schemas"] }));
        let made = jsonschema::draft202012::options().should_validate_formats(true).build(&Value::Object(whole));
        let made = Arc::new(made.unwrap_or_else(|e| panic!("{key} is no JSON Schema: {e}")));
        VALIDATORS.lock().expect("no test panicked here").insert(key, made.clone());
        made
    });
    validator.iter_errors(document).map(|e| format!("{}: {e}", e.instance_path())).collect()
}
