//! The examples of the description, sent one after the other to a shop with the files of `docs/example`.

use super::MODELS;
use crate::support::Bench;
use crate::support::described::{DESCRIPTION, fits};
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::collections::BTreeSet;

const PARTS: &str = include_str!("../../../../docs/example/parts.csv");
const SHEET: &str = include_str!("../../../../docs/example/sheet.json");

/// An operation that takes a JSON body.
pub struct Taker {
    pub method: &'static str,
    pub path: &'static str,
    pub schema: &'static Value,
    pub example: &'static Value,
}

/// An operation by its name.
pub fn taker(name: &str) -> Taker {
    let found = super::operations().into_iter().find(|(.., o)| o["operationId"] == name);
    let (method, path, operation) = found.unwrap_or_else(|| panic!("there is no operation {name}"));
    let content = &operation["requestBody"]["content"]["application/json"];
    Taker { method, path, schema: &content["schema"], example: &content["example"] }
}

/// A shop with the files of `docs/example`; their sheet is saved twice, and its first copy is job 1.
pub async fn shop() -> Bench {
    let bench = Bench::open().await;
    bench.made("/models/import", serde_json::from_str(MODELS).expect("models")).await;
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", PARTS.into()).await;
    assert_eq!((status, &kept["bad"]), (StatusCode::OK, &json!([])));
    let mut shop = bench.get("/shop").await;
    shop["adhesive"] = json!("DOLERITE");
    shop["tape"] = json!("TAPE-2S");
    shop["standards"] = json!([{ "key": "w200", "name": "200 g", "scale": "mass", "value": 200.0, "sd": 0.01 }]);
    let (status, answer) = bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{answer}");
    let sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    crate::support::job_of(&bench, sheet.clone()).await;
    bench.made("/sheets", sheet).await;
    bench
}

/// Every operation with a body, in an order in which a shop could do them, and what it must answer to its example. What
/// stands in the path is filled in; `{…}` is the last answer's.
pub const STORY: [(&str, &str, u16); 93] = [
    ("save_model", "", 201),
    ("import_models", "", 200),
    ("keep_usual_models", "", 200),
    ("add_parts", "", 201),
    ("judge_part", "", 200),
    ("weigh_in_part", "", 201),
    ("take_back_weigh_in", "", 204),
    ("change_part", "TP-01", 200),
    ("put_profile", "TP-02", 200),
    ("print_labels", "", 404),
    ("act_on_part", "S7-21", 200),
    ("save_layout", "", 201),
    ("place_orders", "", 201),
    ("receive_order", "1", 200),
    ("change_order", "1", 200),
    ("close_order", "1", 200),
    ("ask_for_heads", "", 200),
    ("export_heads_to_ask_for", "", 200),
    ("add_customer", "", 201),
    ("change_customer", "1", 200),
    ("expand_sheet", "", 200),
    ("check_sheet", "", 200),
    ("match_set", "", 200),
    ("match_day", "", 200),
    ("add_sheet", "", 201),
    ("change_sheet", "{id}", 200),
    ("save_prices", "", 200),
    ("add_sheet", "", 201),
    ("give_sheet", "{id}", 200),
    ("approve_sheet", "{id}", 201),
    ("put_quote", "{sheet_id}", 200),
    ("drop_job", "2", 204),
    ("take_name", "", 200),
    // Job 1 is under way.
    ("delete_customer", "1", 409),
    // A plan that nobody looked at is not accepted.
    ("accept_plan", "1", 409),
    ("order_for_job", "1", 409),
    ("list_plan_options", "1", 200),
    ("propose_plan", "1", 200),
    ("keep_readings", "1", 201),
    // The job has its plan.
    ("accept_picks", "1", 409),
    ("insist_on_reading", "1 {readings/0/id}", 200),
    ("take_back_reading", "1 {steps/6/asks/0/reading/id}", 200),
    ("propose_replan", "1", 200),
    ("accept_replan", "1", 409),
    ("swap_part", "1 4", 200),
    ("scan_at_club", "1 4", 200),
    ("mark_clubs", "", 201),
    ("clear_mark", "{0/id}", 200),
    ("take_set_fit", "1", 200),
    ("take_set_cpm", "1", 200),
    ("take_wraps", "1", 200),
    ("find_soft_side", "1 4", 200),
    ("read_two_planes", "1 4", 200),
    // Neither club was read with its head on, and nothing was exchanged before.
    ("exchange_parts", "1", 409),
    ("undo_exchange", "1", 404),
    ("pass_open_points", "1", 200),
    ("start_batch", "", 201),
    ("let_batch_pass", "1", 200),
    ("add_extra", "1 4", 200),
    ("let_step_pass", "1", 204),
    ("note_step_done", "1", 200),
    ("decline_offer", "1", 204),
    ("take_back_batch", "1", 200),
    // The clock is not doubted.
    ("confirm_clock", "", 409),
    ("check_scale", "mass", 201),
    ("take_back_check", "mass {kept/id}", 200),
    ("set_scale_trust", "mass", 200),
    ("add_calibration", "mass", 200),
    ("restart_scale_chart", "mass", 200),
    ("begin_gauge_study", "", 201),
    ("keep_study_reading", "{id}", 200),
    // A study that has just begun has found no noise yet.
    ("adopt_study_noise", "{study/id}", 422),
    // No job of this shop is finished, so it has learned nothing that could be held or forgotten.
    ("pin_learned", "", 409),
    ("reset_learned", "", 409),
    ("tell_shop", "", 200),
    ("withdraw_told", "", 200),
    ("skip_told", "", 200),
    ("add_club", "", 201),
    ("change_club", "C1", 200),
    ("measure_club", "C1", 201),
    ("add_sheet_again", "", 201),
    // Two of the three were never noted in this shop.
    ("build_match", "", 404),
    ("add_club_job", "", 201),
    ("save_job_kind", "", 200),
    ("give_key", "", 201),
    ("show_code", "", 201),
    // Other digits are shown.
    ("come_in", "", 403),
    ("withdraw_key", "1", 200),
    ("save_shop", "", 200),
    ("calculate_swing_weight", "", 200),
    ("calculate_inertia", "", 200),
    ("calculate_trim", "", 200),
    ("calculate_glue", "", 200),
];

/// A path with its parameters filled in.
pub fn filled(path: &str, places: &str, last: &Value) -> String {
    let mut filled = path.to_owned();
    for place in places.split_whitespace() {
        let value = match place.strip_prefix('{') {
            Some(at) => {
                let found = last.pointer(&format!("/{}", at.trim_end_matches('}')));
                found.and_then(Value::as_str).unwrap_or_else(|| panic!("{place} is not in {last}")).to_owned()
            }
            None => place.to_owned(),
        };
        let (from, to) = (filled.find('{').expect("a place"), filled.find('}').expect("its end"));
        filled.replace_range(from..=to, &value);
    }
    assert!(!filled.contains('{'), "{path}: {places}");
    filled
}

/// The plan of job 1 is held, as every bench needs one.
pub async fn accept(bench: &Bench) {
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    bench.made("/jobs/1/plan", json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" })).await;
}

#[tokio::test]
async fn every_example_fits_its_schema_and_works_in_a_shop() {
    let bench = shop().await;
    let mut last = Value::Null;
    for (name, places, wanted) in STORY {
        if name == "keep_readings" {
            accept(&bench).await;
        }
        let Taker { method, path, schema, example } = taker(name);
        fits(schema, example, name);
        let path = filled(path, places, &last);
        let body = example.to_string().into_bytes();
        let (status, answer) = bench.send(&method.to_uppercase(), &path, "application/json", body).await;
        assert_eq!(status, wanted, "{name} {path}: {answer}");
        // An answer that says nothing leaves the one before it.
        if status == StatusCode::OK || status == StatusCode::CREATED {
            last = answer;
        }
    }
}

#[test]
fn no_example_is_left_out() {
    let told: BTreeSet<&str> = STORY.iter().map(|(name, ..)| *name).collect();
    for (_, path, operation) in super::operations() {
        let Some(content) = operation["requestBody"]["content"].get("application/json") else { continue };
        let name = operation["operationId"].as_str().expect("a name");
        fits(&content["schema"], &content["example"], name);
        assert!(told.contains(name) || path.starts_with("/calc/"), "{name} is not in STORY");
    }
    assert!(DESCRIPTION["paths"].as_object().is_some_and(|p| p.len() > 90));
}
