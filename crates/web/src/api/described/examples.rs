//! An example of every JSON body that an operation takes.
//!
//! They belong to the files of `docs/example`: models, parts and a sheet of an invented shop. A test holds each against its
//! schema and sends each to a shop with these files in it.

use crate::api::calc;
use serde_json::{Value, json};
use trade::shop::Shop;
use utoipa::openapi::RefOr;
use utoipa::openapi::path::Operation;

const MODELS: &str = include_str!("../../../../../docs/example/models.json");
const SHEET: &str = include_str!("../../../../../docs/example/sheet.json");

pub(super) fn add(operation: &mut Operation) {
    let Some(example) = operation.operation_id.as_deref().and_then(example) else { return };
    if let Some(RefOr::T(body)) = &mut operation.request_body
        && let Some(RefOr::T(content)) = body.content.get_mut("application/json")
    {
        content.example = Some(example);
    }
}

/// An example of the body of an operation.
fn example(operation: &str) -> Option<Value> {
    if let Some(topic) = calc::topic_of(operation) {
        return Some((topic.example)());
    }
    stock(operation)
        .or_else(|| customers(operation))
        .or_else(|| sheets_and_plans(operation))
        .or_else(|| bench(operation))
        .or_else(|| clubs(operation))
        .or_else(|| shop(operation))
}

/// Models of the example shop: the grip first, as it is the shortest that says something.
fn models() -> Vec<Value> {
    let mut models: Vec<Value> = serde_json::from_str(MODELS).unwrap_or_default();
    models.sort_by_key(|model| model["kind"] != "grip");
    models
}

/// The sheet of the example shop with its first two clubs, enough to see the form.
fn sheet() -> Value {
    let mut sheet: Value = serde_json::from_str(SHEET).unwrap_or_default();
    if let Some(clubs) = sheet["clubs"].as_array_mut() {
        clubs.truncate(2);
    }
    sheet
}

fn stock(operation: &str) -> Option<Value> {
    Some(match operation {
        "save_model" => models().into_iter().next()?,
        "keep_usual_models" => json!({ "codes": ["ANY-CAVITY", "ANY-STEEL-115", "ANY-GRIP"] }),
        "import_models" => Value::from(models().into_iter().take(2).collect::<Vec<_>>()),
        "add_parts" => json!([
            { "code": "S7-21", "kind": "head", "model": "SISKIN", "number": "7", "mass_g": 266.4, "lot": "S-103" },
            { "code": "TP-21", "kind": "shaft", "model": "TRAMONTANA-P", "mass_typed": "4.17 oz", "place": "rack TP" }
        ]),
        "change_part" => json!({ "version": 0, "place": "rack TP", "reason": "moved", "by": "Ada" }),
        "put_profile" => json!({
            "readings": [
                { "held_mm": 127, "weight_g": 205, "cpm": 262.4 }, { "held_mm": 200, "weight_g": 205, "cpm": 296.0 },
                { "held_mm": 300, "weight_g": 205, "cpm": 357.5 }
            ],
            "look": true, "by": "Ada"
        }),
        "judge_part" => json!({ "model": "SISKIN", "number": "7", "mass_g": 268.4 }),
        "weigh_in_part" => json!({
            "model": "SISKIN", "number": "7", "mass": "265.2", "code": "S7-31", "by": "Ada",
            "request_key": "c6b9a1f0-1"
        }),
        "take_back_weigh_in" => json!({ "code": "S7-31", "id": "c6b9a1f0-1", "by": "Ada" }),
        "act_on_part" => json!({ "deed": "scrap", "reason": "bent in the vice", "by": "Ada" }),
        "print_labels" => json!({ "codes": ["S7-21"], "copies": 2 }),
        "save_layout" => json!({
            "name": "Supplier A", "headings": ["Item", "Weight (g)"],
            "mapping": { "columns": { "code": "Item", "mass": "Weight (g)" },
                "fixed": { "kind": "head", "model": "SISKIN", "number": "7" } }
        }),
        "place_orders" => json!([{
            "model": "SISKIN", "number": "7", "count": 3, "from_g": 264, "to_g": 268, "supplier": "Supplier A",
            "expected_on": "2031-04-01", "by": "Ada"
        }]),
        "order_for_job" => json!({ "supplier": "Supplier A", "by": "Ada" }),
        "receive_order" => json!({ "count": 2, "by": "Ada" }),
        "change_order" => json!({ "expected_on": "2031-04-08", "note": "a week late", "by": "Ada" }),
        "close_order" => json!({ "reason": "bought elsewhere", "by": "Ada" }),
        "ask_for_heads" | "export_heads_to_ask_for" => json!({ "job": 1, "within_points": 0.3 }),
        _ => return None,
    })
}

fn customers(operation: &str) -> Option<Value> {
    let customer = json!({
        "name": "Odell Farrowby", "hand": "right", "phone": "555 0117", "glove": "ML", "grip_diameter_mm": 23.1,
        "wraps": { "base": 1, "full": 2, "lower_hand": 0 }
    });
    Some(match operation {
        "add_customer" => customer,
        "change_customer" => json!({ "version": 0, "customer": customer }),
        "take_name" => json!({ "name": "Odell Farrowby", "customer": 1, "by": "Ada" }),
        "give_sheet" => json!({ "customer": 1, "by": "Ada" }),
        "save_prices" => json!({
            "currency": "EUR", "decimals": 2, "tax_text": "Tax included", "parts": [{ "model": "OLIVINE", "each_minor": 1295 }],
            "work": [{ "name": "Build", "per": "club", "each_minor": 2500, "usual": true }]
        }),
        "put_quote" => json!({ "lines": [{ "what": "Regrip", "count": 2, "each_minor": 650 }] }),
        "delete_customer" => json!({ "name": "Odell Farrowby", "by": "Ada" }),
        _ => return None,
    })
}

fn sheets_and_plans(operation: &str) -> Option<Value> {
    let fingerprint = "9f6c1f6f0c2b7a55";
    Some(match operation {
        "add_sheet" | "check_sheet" => sheet(),
        "change_sheet" => json!({ "version": 0, "sheet": sheet() }),
        "expand_sheet" => json!({
            "written": "4-G, +1/4, D2, 1 wrap", "rule": "constant_swing_weight",
            "models": { "heads": ["SISKIN"], "shafts": [{ "model": "TRAMONTANA-P" }],
                "grips": [{ "model": "OLIVINE" }], "ferrules": [{ "model": "FERRULE-370" }] }
        }),
        "approve_sheet" => json!({ "by": "Ada" }),
        "propose_plan" | "list_plan_options" | "propose_replan" => json!({ "locks": [{ "slot": 4, "code": "S7-02" }] }),
        "accept_plan" | "accept_replan" => json!({ "fingerprint": fingerprint, "by": "Ada" }),
        "accept_picks" => json!({
            "clubs": [{ "slot": 1, "codes": ["S4-01", "TP-01", "OL-01", "FER-370"] }],
            "reason": "the lightest head for this player", "by": "Ada"
        }),
        "swap_part" => json!({ "kind": "tip_weight", "code": "TRAY-6", "reason": "light when dry", "by": "Ada" }),
        "add_extra" => json!({ "action": "lead_tape", "mass_g": 1.5, "by": "Ada" }),
        "drop_job" => json!({ "reason": "the customer went elsewhere", "by": "Ada" }),
        "match_set" => json!({ "sheet": sheet(), "seconds": 1 }),
        "match_day" => json!({ "jobs": [1], "seconds": 1 }),
        _ => return None,
    })
}

fn bench(operation: &str) -> Option<Value> {
    Some(match operation {
        "keep_readings" => json!({
            "slot": 4, "step": "dry", "entries": [{ "what": "swing_weight", "typed": "D8.5" }], "by": "Ada"
        }),
        "take_back_reading" => json!({ "reason": "the club leaned on the vice", "by": "Ada" }),
        "insist_on_reading" => json!({ "reason": "read twice, re-seated", "by": "Ada" }),
        "let_step_pass" => json!({ "slot": 4, "step": "bend", "reason": "pulled by hand, it holds", "by": "Ada" }),
        "decline_offer" => json!({ "measure": "tape", "by": "Ada" }),
        "scan_at_club" => json!({ "code": "S7-02", "step": "dry", "by": "Ada" }),
        "start_batch" => json!({
            "job": 1, "slots": [4], "adhesive": "DOLERITE", "lot": "B-7", "room_c": 23,
            "reason": "the balance scale is away", "by": "Ada"
        }),
        "pass_open_points" => json!({ "step": "glue", "reason": "the balance scale is away", "by": "Ada" }),
        "note_step_done" => json!({ "step": "prepared", "by": "Ada" }),
        "let_batch_pass" => json!({ "strength": "full", "reason": "cured in the oven by its sheet", "by": "Ada" }),
        "take_set_fit" => json!({ "picks": [{ "slot": 3, "kind": "tip_weight", "code": "TRAY-6" }], "by": "Ada" }),
        "build_match" => json!({
            "clubs": ["C1", "C2", "C3"], "number": "7", "due": "2026-03-09", "by": "Ada",
            "models": { "head": "SISKIN", "shaft": "TRAMONTANA-P", "grip": "OLIVINE", "by_inertia": true }
        }),
        "take_wraps" => json!({
            "wraps": [{ "slot": 8, "wraps": { "base": 1, "full": 2, "lower_hand": 0 } }], "by": "Ada"
        }),
        "take_set_cpm" => json!({ "trims": [{ "slot": 8, "tip_trim_mm": 104.0 }], "by": "Ada" }),
        "find_soft_side" => json!({
            "sweep": {
                "angles_deg": [0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330],
                "frequencies_cpm": [252.0, 251.5, 250.5, 250.0, 250.5, 251.5, 252.0, 251.5, 250.5, 250.0, 250.5, 251.5]
            },
            "by": "Ada"
        }),
        "read_two_planes" => json!({ "along_line_cpm": 261.2, "heel_toe_cpm": 263.9, "by": "Ada" }),
        "exchange_parts" => json!({ "kind": "head", "slots": [4, 5], "by": "Ada" }),
        "undo_exchange" => json!({ "by": "Ada" }),
        "take_back_batch" => json!({ "reason": "the wrong club was ticked", "by": "Ada" }),
        _ => return None,
    })
}

fn clubs(operation: &str) -> Option<Value> {
    Some(match operation {
        "add_club" => json!({
            "player": "Odell Farrowby", "hand": "right", "club_kind": "iron", "number": "7", "head_material": "forged",
            "arrival": { "swing_weight_points": 32.1, "total_mass_g": 432.7, "length_mm": 939.8 }, "by": "Ada"
        }),
        "change_club" => json!({ "label": "the old 7", "by": "Ada", "version": 1 }),
        "measure_club" => json!({ "arrival": { "loft_deg": 33.0, "lie_deg": 62.0 }, "by": "Ada", "version": 2 }),
        "add_sheet_again" => {
            json!({ "again": { "clubs": ["C1"] }, "due": "2031-04-01", "note": "one lost on holiday" })
        }
        "mark_clubs" => {
            json!({ "recall": { "part": "S7-02" }, "word": "look at the hosel", "clubs": ["J1-4"], "by": "Ada" })
        }
        "clear_mark" => json!({ "word": "the joint is sound", "by": "Ada" }),
        "add_club_job" => json!({
            "due": "2031-04-01", "by": "Ada",
            "clubs": [{ "club": "C1", "kind": "bend", "loft_deg": 32.5, "lie_deg": 61.5 }]
        }),
        "save_job_kind" => json!({
            "key": "lie_only", "label": "Lie only", "asks": ["lie"],
            "steps": [
                { "key": "bend", "label": "Bend", "asks": ["lie"], "on": ["head", "shaft", "grip"], "needs": "none",
                    "caution": "bending" },
                { "key": "hand_over", "label": "Hand over", "asks": ["done"], "needs": "none" }
            ]
        }),
        _ => return None,
    })
}

fn shop(operation: &str) -> Option<Value> {
    Some(match operation {
        "save_shop" => {
            serde_json::to_value(Shop::named(|id| words::Words::english(quantity::Units::default()).text(id))).ok()?
        }
        "give_key" => json!({ "name": "Stock list", "role": "reader", "days": 365, "by": "Ada" }),
        "show_code" => json!({ "name": "Bench 2", "role": "builder", "by": "Ada" }),
        "come_in" => json!({ "code": "482 913" }),
        "withdraw_key" => json!({ "by": "Ada" }),
        "pin_learned" => {
            json!({ "key": "adhesive:DOLERITE", "pinned": true, "reason": "a new tin behaves the same", "by": "Ada" })
        }
        "tell_shop" => {
            json!({ "of": "joint", "model": "DOLERITE", "puts_on_points": 0.75, "sure": "about", "by": "Ada" })
        }
        "withdraw_told" => json!({ "of": "joint", "model": "DOLERITE", "reason": "it was another tin", "by": "Ada" }),
        "skip_told" => json!({ "by": "Ada" }),
        "reset_learned" => json!({ "reason": "another adhesive from today", "by": "Ada" }),
        "check_scale" => json!({ "typed": "200.1", "by": "Ada" }),
        "take_back_check" => json!({ "reason": "the wrong weight was on", "by": "Ada" }),
        "set_scale_trust" => json!({ "trusted": false, "reason": "it fell off the bench", "by": "Ada" }),
        "confirm_clock" => json!({ "reason": "compared with the radio clock", "by": "Ada" }),
        "add_calibration" => {
            json!({ "on": "2026-03-01", "by_whom": "the scale's maker", "note": "certificate 118", "by": "Ada" })
        }
        "restart_scale_chart" => json!({ "reason": "moved to the new bench", "by": "Ada" }),
        "begin_gauge_study" => json!({
            "scale": "balance", "parts": ["club 1", "club 2", "club 3", "club 4", "club 5"], "builders": ["Ada", "Ben"], "trials": 2, "by": "Ada"
        }),
        "keep_study_reading" => json!({ "place": 0, "typed": "D2.1", "by": "Ada" }),
        "adopt_study_noise" => json!({ "by": "Ada" }),
        _ => return None,
    })
}
