//! Goal: a putter goes from the sheet to the record with head, length, loft, lie, mass, counterweight and alignment, and nobody
//! asks for its swing weight unless the sheet does. Method: a shop of invented models; readings that match the sheet.

use crate::every_kind::shop_that_glues;
use crate::support::Bench;
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::{Value, json};

async fn shop_with_putters() -> Bench {
    let bench = shop_that_glues().await;
    let head = json!({ "kind": "head", "code": "DUNNOCK", "name": "Dunnock", "club_kind": "putter", "hand": "right", "bore_diameter_mm": 9.5,
        "bore_depth_mm": 25.0, "bend_limit_deg": 2.0, "chart_length_to": "cap", "numbers": [{ "number": "P", "mass_g": 350.0,
        "loft_deg": 3.0, "lie_deg": 71.0, "bore_to_ground_mm": 40.0, "chart": { "length_mm": 863.6, "swing_weight_points": 32.0 } }] });
    bench.made("/models", head).await;
    let heads: Vec<Value> = (0..3)
        .map(|i| json!({ "code": format!("DU-{i}"), "kind": "head", "model": "DUNNOCK", "number": "P", "mass_g": 349.0 + f64::from(i) }))
        .collect();
    bench.made("/parts", json!(heads)).await;
    bench
}

async fn expanded(bench: &Bench, written: &str) -> Value {
    let models = json!({ "heads": ["DUNNOCK"], "shafts": [{ "model": "RUSH" }], "grips": [{ "model": "OLIVINE" }], "ferrules": [{ "model": "FER" }] });
    let ask = json!({ "written": written, "rule": "as_written", "models": models });
    bench.made("/sheets/expand", ask).await[0]["club"].clone()
}

#[tokio::test]
async fn a_putter_is_built_without_a_swing_weight() {
    let bench = shop_with_putters().await;
    let mut club = expanded(&bench, "putter, 34 in, 1 wrap").await;
    assert_eq!(club["swing_weight_free"], true, "{club}");
    assert!(
        expanded(&bench, "putter, 34 in, D3, 1 wrap").await["swing_weight_free"].is_null(),
        "asked where it is written"
    );
    club["total_mass_g"] = json!(540.0);
    club["grip_graphics"] = json!("up");
    club["soft_side"] = json!("target");
    let sheet = json!({ "player": "Odell Farrowby", "due": "2026-03-20", "hand": "right", "rule": "as_written", "written": "", "clubs": [club] });
    let saved = bench.made("/sheets", sheet).await;
    let id = saved["id"].as_str().unwrap().to_owned();
    assert_eq!(saved["problems"].as_array().map_or(0, Vec::len), 0, "{saved}");
    // The club's own page leaves the field blank, and takes it so.
    let page = bench.page(&format!("/sheets/{id}/clubs/0")).await;
    page.says(StatusCode::OK, &["Leave it blank where none is asked"]);
    let job = bench.made(&format!("/sheets/{id}/approve"), json!({ "by": "Ada" })).await["number"].as_i64().unwrap();
    let proposal = bench.made(&format!("/jobs/{job}/plan/propose"), json!({})).await;
    assert_eq!(proposal["plan"]["missing"], json!([]), "{proposal}");
    bench.made(&format!("/jobs/{job}/plan"), json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" })).await;
    let kept = bench.get(&format!("/jobs/{job}")).await["job"]["clubs"][0]["plan"].clone();
    let in_tip = kept["parts"].as_array().unwrap().iter().any(|part| part["kind"] == "tip_weight");
    assert!(!in_tip, "nothing goes into the tip for a figure that nobody asks: {kept}");
    let steps = bench.get(&format!("/jobs/{job}")).await["clubs"][0]["steps"].clone();
    let mut glued = false;
    for step in steps.as_array().unwrap() {
        let key = step["key"].as_str().unwrap();
        let asks = step["asks"].as_array().unwrap();
        assert!(asks.iter().all(|ask| ask["what"] != "swing_weight"), "{step}");
        if step["gate"]["gate"] == "not_glued" && !glued {
            let batch = json!({ "job": job, "slots": [1], "adhesive": "BOND", "lot": "B-1", "room_c": 20, "by": "Ada", "reason": "looked at" });
            bench.made("/batches", batch).await;
            bench.clock.advance(SignedDuration::from_hours(30));
            glued = true;
        }
        let page = bench.page(&format!("/bench/{job}/1?step={key}")).await;
        assert!(page.status == StatusCode::OK && !page.text.contains("read-swing_weight"), "{key}");
        let entry = |ask: &Value| match ask["what"].as_str().unwrap() {
            "done" => Some(json!({ "what": "done" })),
            "soft_side" => Some(json!({ "what": "soft_side", "value": 90 })),
            what => {
                let figure = ask["target"]["value"].as_f64().or(ask["expected"]["value"].as_f64())?;
                Some(json!({ "what": what, "value": figure }))
            }
        };
        let entries: Vec<Value> = asks.iter().filter_map(entry).collect();
        if entries.is_empty() {
            continue;
        }
        // No reason is given: nothing is open on it, the hand-over included.
        let body = json!({ "slot": 1, "step": key, "entries": entries, "by": "Ada" });
        let kept = bench.made(&format!("/jobs/{job}/readings"), body).await;
        assert_ne!(kept["meaning"]["tone"], "doubt", "{kept}");
    }
    let record = bench.get(&format!("/jobs/{job}/record")).await;
    assert_eq!(record["state"], "finished", "{record}");
    let what: Vec<&str> =
        record["clubs"][0]["lines"].as_array().unwrap().iter().map(|l| l["what"].as_str().unwrap()).collect();
    assert!(!what.contains(&"swing_weight"), "{what:?}");
    for asked in ["finished_length", "loft", "lie", "total_mass"] {
        assert!(what.contains(&asked), "{asked} in {what:?}");
    }
    bench.page(&format!("/records/{job}")).await.says(StatusCode::OK, &["to the shaft end", "along the shaft axis"]);
    let margins = record["clubs"][0]["margins"].as_array().unwrap();
    assert!(
        margins.iter().all(|m| m["basis"]["code"].as_str().is_none_or(|code| code == "length_basis.axis")),
        "{margins:?}"
    );
}

#[tokio::test]
async fn a_counterweight_goes_into_a_putter() {
    let bench = shop_with_putters().await;
    let club = json!({ "player": "Odell Farrowby", "hand": "right", "club_kind": "putter", "number": "P", "arrival": {
        "length_mm": 863.6, "total_mass_g": 545.0, "loft_deg": 3.0, "lie_deg": 71.0 }, "by": "Ada" });
    bench.made("/clubs", club).await;
    let asked = json!({ "club": "C1", "kind": "regrip", "grip_model": "OLIVINE" });
    bench.made("/jobs", json!({ "due": "2026-03-09", "clubs": [asked], "by": "Ada" })).await;
    let extra = json!({ "action": "counterweight", "mass_g": 40.0, "by": "Ada" });
    let plan = bench.made("/jobs/1/clubs/1/extras", extra).await;
    assert_eq!(plan["extras"][0]["action"], "counterweight", "{plan}");
    assert_eq!(bench.page("/bench/1/1").await.status, StatusCode::OK);
}
