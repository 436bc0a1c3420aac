//! The limits of the schemas are those that the API keeps: just beyond each, a body is refused.

use super::examples::{STORY, Taker, accept, filled, shop, taker};
use crate::support::described::{mistakes, resolved};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// A limit of a field.
struct Limit {
    /// Which keyword of the schema.
    keyword: &'static str,
    /// Where the field is in the body.
    place: String,
    /// A value just beyond the limit.
    beyond: Value,
}

#[tokio::test]
async fn a_body_beyond_a_limit_is_refused_and_changes_nothing() {
    let bench = shop().await;
    let (mut tried, mut kept) = (0, Vec::new());
    let mut last = Value::Null;
    for (name, places, _) in STORY {
        if name == "keep_readings" {
            accept(&bench).await;
        }
        let Taker { method, path, schema, example } = taker(name);
        let path = filled(path, places, &last);
        // Each entry of a list of models is judged by itself, and named in the answer.
        let limits = if name == "import_models" { Vec::new() } else { beyond(schema, example) };
        for (limit, body) in limits {
            assert!(!mistakes(schema, &body).is_empty(), "{name} {}: {body} is within", limit.place);
            let body = body.to_string().into_bytes();
            let (status, answer) = bench.send(&method.to_uppercase(), &path, "application/json", body).await;
            tried += 1;
            if status != StatusCode::UNPROCESSABLE_ENTITY {
                kept.push(format!("{name} {} {} {}: {status} {answer}", limit.place, limit.keyword, limit.beyond));
            }
        }
        let body = example.to_string().into_bytes();
        let (status, answer) = bench.send(&method.to_uppercase(), &path, "application/json", body).await;
        if status == StatusCode::OK || status == StatusCode::CREATED {
            last = answer;
        }
    }
    assert!(kept.is_empty(), "{} of {tried} were not refused:\n{}", kept.len(), kept.join("\n"));
    assert!(tried > 60, "{tried}");
}

/// Every model of the example files, since the examples of the description show few of the kinds.
#[tokio::test]
async fn a_model_at_a_limit_is_kept_and_beyond_it_refused() {
    let bench = shop().await;
    let models: Vec<Value> = serde_json::from_str(super::MODELS).expect("models");
    let schema = taker("save_model").schema;
    let mut tried = 0;
    for model in &models {
        for (limit, body) in beyond(schema, model) {
            let refused = bench.refused("POST", "/models", StatusCode::UNPROCESSABLE_ENTITY, body.to_string()).await;
            assert!(refused["detail"].is_string(), "{}", limit.place);
            tried += 1;
        }
        for (field, limit) in limits_of(schema, model) {
            let mut at = model.clone();
            *at.pointer_mut(&field).expect("a field") = json!(limit);
            let (status, answer) = bench.post("/models", at).await;
            // Another figure of the model may not go with this one; this one itself is possible. The largest tip is
            // never below the smallest.
            let name = field.rsplit('/').next().unwrap_or_default();
            let blamed = answer["detail"].as_str().is_some_and(|d| d.contains(&format!("{name} is {limit} ")));
            assert!(status.is_success() || !blamed || name == "tip_max_mm", "{field} = {limit}: {answer}");
        }
    }
    assert!(tried > 150, "{tried}");
}

/// Bodies that lie just beyond one limit of the schema each.
fn beyond(schema: &Value, body: &Value) -> Vec<(Limit, Value)> {
    let mut found = Vec::new();
    walk(schema, body, "", &mut |place, limits, there| {
        for (keyword, beyond) in values_beyond(limits, there) {
            let mut bad = body.clone();
            let (parent, field) = place.rsplit_once('/').unwrap_or_default();
            match bad.pointer_mut(parent) {
                Some(Value::Object(object)) if !place.is_empty() => {
                    object.insert(field.to_owned(), beyond.clone());
                }
                _ => match bad.pointer_mut(place) {
                    Some(at) => *at = beyond.clone(),
                    None => continue,
                },
            }
            found.push((Limit { keyword, place: place.to_owned(), beyond }, bad));
        }
    });
    found
}

/// Numeric limits of the fields that a document has: the place and the limit itself.
fn limits_of(schema: &Value, document: &Value) -> Vec<(String, f64)> {
    let mut found = Vec::new();
    walk(schema, document, "", &mut |place, limits, there| {
        let known = ["minimum", "maximum"].into_iter().filter_map(|k| limits[k].as_f64());
        if there.is_number() {
            found.extend(known.map(|limit| (place.to_owned(), limit)));
        }
    });
    found
}

fn values_beyond(limits: &Value, there: &Value) -> Vec<(&'static str, Value)> {
    let of = |keyword: &str| limits[keyword].as_f64();
    let whole = limits["type"] == "integer" || limits["type"][0] == "integer";
    // Far enough to be another figure, near enough to show where the limit is.
    let step = |limit: f64| if whole { 1.0 } else { limit.abs().max(0.1) * 0.01 };
    let number = |v: f64| if whole { json!(v as i64) } else { json!(v) };
    let text = |count: f64| json!("x".repeat(count as usize));
    let list = there.as_array().cloned().unwrap_or_default();
    let mut found = Vec::new();
    found.extend(of("minimum").map(|least| ("minimum", number(least - step(least)))));
    found.extend(of("maximum").map(|most| ("maximum", number(most + step(most)))));
    found.extend(of("minLength").map(|least| ("minLength", text(least - 1.0))));
    found.extend(of("maxLength").map(|most| ("maxLength", text(most + 1.0))));
    found.extend(limits["pattern"].is_string().then(|| ("pattern", json!(" "))));
    if let Some(first) = list.first() {
        found.extend(of("minItems").map(|least| ("minItems", json!(list[..least as usize - 1]))));
        found.extend(of("maxItems").map(|most| ("maxItems", json!(vec![first; most as usize + 1]))));
    }
    found
}

/// Visits every field that a schema describes; a field that the document leaves out is seen as null.
fn walk(schema: &Value, document: &Value, place: &str, see: &mut impl FnMut(&str, &Value, &Value)) {
    let schema = resolved(schema);
    see(place, schema, document);
    for form in ["oneOf", "anyOf", "allOf"].into_iter().filter_map(|of| schema[of].as_array()).flatten() {
        // Of several forms the one that the document has.
        if schema["allOf"].is_array() || mistakes(form, document).is_empty() {
            walk(form, document, place, see);
        }
    }
    for (field, inner) in schema["properties"].as_object().into_iter().flatten() {
        if document.is_object() {
            walk(inner, &document[field], &format!("{place}/{field}"), see);
        }
    }
    for (i, value) in document.as_array().into_iter().flatten().enumerate() {
        walk(&schema["items"], value, &format!("{place}/{i}"), see);
    }
}
