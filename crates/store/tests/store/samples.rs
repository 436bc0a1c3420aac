//! A small invented shop.

use crate::database::TestDb;
use jiff::Timestamp;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use store::{SheetRow, Tx};
use trade::id::{ClubId, JobId, PartId, ReadingId, SheetId};
use trade::job::{Job, JobClub, JobState};
use trade::kind::Role;
use trade::model::{Model, PartKind};
use trade::part::Part;
use trade::plan::ClubPlan;
use trade::reading::{Reading, What};
use trade::sheet::{Sheet, SheetClub};

/// A time, `seconds` after the morning that all tests begin at.
pub fn at(seconds: i64) -> Timestamp {
    Timestamp::from_second(1_760_000_000 + seconds).expect("a time of this century")
}

pub fn new_id() -> String {
    uuid::Uuid::now_v7().to_string()
}

fn from<T: DeserializeOwned>(document: Value) -> T {
    serde_json::from_value(document).expect("a sound sample")
}

pub fn head_model() -> Model {
    let number = |number: &str, mass_g: f64, loft_deg: f64| {
        json!({"number": number, "mass_g": mass_g, "loft_deg": loft_deg, "lie_deg": 62.5, "bore_to_ground_mm": 38.1,
               "chart": {"length_mm": 939.8, "swing_weight_points": 32.0}})
    };
    from(json!({
        "kind": "head", "code": "LARK-2", "name": "Larkspur Two", "club_kind": "iron", "hand": "right",
        "bore_diameter_mm": 9.4, "bore_depth_mm": 30.0, "bend_limit_deg": 2.0, "chart_length_to": "cap",
        "numbers": [number("6", 261.3, 28.0), number("7", 268.0, 32.0)],
    }))
}

pub fn adapter_model() -> Model {
    from(json!({
        "kind": "adapter", "code": "LARK-SLEEVE", "name": "Larkspur sleeve", "mass_g": 5.2, "length_mm": 22.0,
        "bore_diameter_mm": 9.4, "fits_head_model": "LARK-2",
    }))
}

pub fn shaft_model() -> Model {
    from(json!({
        "kind": "shaft", "code": "RUSH-110", "name": "Rushlight 110", "label": "firm", "material": "steel",
        "tip": "parallel", "tip_diameter_mm": 9.4, "butt_diameter_mm": 15.2, "mass_sd_g": 0.7,
        "blanks": [{"mass_g": 117.1, "length_mm": 1041.4, "balance_point_mm": 517.3}],
    }))
}

pub fn grip_model() -> Model {
    from(json!({
        "kind": "grip", "code": "MOSS-50", "name": "Mossback 50", "mass_g": 50.5, "mass_sd_g": 1.0,
        "core_diameter_mm": 15.2, "length_mm": 267.0, "centre_mm": 104.0, "cap_mm": 4.0, "shape": "round",
    }))
}

pub fn ferrule_model() -> Model {
    from(json!({
        "kind": "ferrule", "code": "RING-1", "name": "Plain ring", "inside_diameter_mm": 9.4, "length_mm": 25.0,
        "mass_g": 1.4,
    }))
}

pub fn adhesive_model() -> Model {
    from(json!({
        "kind": "adhesive", "code": "BOND-24", "name": "Slow bond", "resin_per_hardener_by_mass": 1.0,
        "resin_per_hardener_by_volume": 1.0, "resin_density_g_per_ml": 1.15, "hardener_density_g_per_ml": 1.15,
        "pot_life_min": 60.0, "pot_life_at_c": 23.0, "pot_life_mass_g": 30.0,
        "handling": [{"hours": 8.0, "at_c": 23.0}], "full_cure": [{"hours": 24.0, "at_c": 23.0}],
        "joint_mass_g": 1.1, "joint_mass_sd_g": 0.25,
    }))
}

pub fn club(number: &str) -> SheetClub {
    from(json!({
        "number": number, "club_kind": "iron", "head_model": "LARK-2", "shaft_model": "RUSH-110",
        "grip_model": "MOSS-50", "ferrule_model": "RING-1", "length_mm": 946.15, "length_to": "cap",
        "swing_weight_points": 32.4, "loft_deg": 31.5, "lie_deg": 62.25,
    }))
}

pub fn sheet(player: &str, numbers: &[&str]) -> Sheet {
    let clubs: Vec<SheetClub> = numbers.iter().map(|n| club(n)).collect();
    from(json!({
        "player": player, "due": "2026-03-14", "hand": "right", "rule": "constant_swing_weight",
        "reference": {"number": "6", "swing_weight_points": 32.1, "scale": "balance", "grip_model": "MOSS-50"},
        "clubs": clubs,
    }))
}

pub fn plan(head: &Part) -> ClubPlan {
    from(json!({
        "parts": [{"kind": "head", "part": head.id, "code": head.code, "model": head.model, "mass_g": 261.3,
                   "weighed": true}],
        "head_number": "6", "tip_trim_mm": 12.7, "butt_cut_mm": 95.1, "cut_shaft_mm": 933.6,
        "cut_shaft_mass_g": 105.31, "cut_shaft_balance_point_mm": 461.2, "tip_to_ground_mm": 38.1,
        "bend_loft_deg": -0.5, "bend_lie_deg": 0.25,
        "expected": [{"step": "dry", "swing_weight_points": 41.7, "band_points": 0.35}],
        "chance": 0.981, "reasons": ["closest head that leaves room for a tip weight"],
    }))
}

pub fn part(code: &str, kind: PartKind, model: &str) -> Part {
    Part { id: PartId(new_id()), ..Part::new(code, kind, model) }
}

pub fn head(code: &str) -> Part {
    Part {
        number: Some("6".into()),
        mass_g: Some(261.3),
        mass_typed: "261.3 g".into(),
        loft_deg: Some(28.1),
        lie_deg: Some(62.4),
        ..part(code, PartKind::Head, "LARK-2")
    }
}

/// A counted box of ferrules.
pub fn box_of_ferrules(code: &str, count: i64) -> Part {
    Part { count: Some(count), ..part(code, PartKind::Ferrule, "RING-1") }
}

pub fn sheet_row(sheet: Sheet) -> SheetRow {
    SheetRow { id: SheetId(new_id()), sheet, approved_job: None, version: 0, saved_at: at(0) }
}

pub fn job(number: i64, sheet: &SheetRow) -> Job {
    let clubs = sheet.sheet.clubs.iter().zip(1..).map(|(target, slot)| JobClub {
        id: ClubId(new_id()),
        slot,
        card: format!("J{number}-{slot}"),
        target: target.clone(),
        work: None,
        plan: None,
        version: 0,
    });
    Job {
        id: JobId(new_id()),
        number,
        sheet_id: sheet.id.clone(),
        sheet: sheet.sheet.clone(),
        state: JobState::Open,
        steps: trade::step::full_build(),
        made_at: at(60),
        clubs: clubs.collect(),
        version: 0,
    }
}

pub fn reading(job: &Job, club: usize, what: What, value: f64) -> Reading {
    Reading {
        id: ReadingId(new_id()),
        job: job.id.clone(),
        club: job.clubs[club].id.clone(),
        step: "dry".into(),
        what,
        value,
        unit: what.unit(),
        typed: format!("{value}"),
        on: vec![Role::Head, Role::Shaft, Role::Ferrule],
        scale: Some("balance".into()),
        display_step: 0.1,
        at: at(600),
        by: "Wren".into(),
        replaces: None,
        taken_back: None,
        pivot_mm: None,
        insisted: false,
        forecast: None,
    }
}

/// Saves every model of the shop.
pub async fn stock_models(tx: &mut Tx) {
    for model in [head_model(), shaft_model(), grip_model(), ferrule_model(), adhesive_model()] {
        tx.put_model(&model, at(0)).await.expect("a new model");
    }
}

/// A database with the shop's models and one job of two clubs.
pub async fn with_job(db: &TestDb) -> Job {
    let mut tx = db.write().await;
    stock_models(&mut tx).await;
    let job = add_job(&mut tx, &["6", "7"]).await;
    tx.commit().await.expect("saved");
    job
}

/// One more job, with the next number.
pub async fn add_job(tx: &mut Tx, numbers: &[&str]) -> Job {
    let row = sheet_row(sheet("Ada Fenwick", numbers));
    tx.insert_sheet(&row).await.expect("a new sheet");
    let job = job(tx.next_job_number().await.expect("a number"), &row);
    tx.insert_job(&job).await.expect("a new job");
    job
}
