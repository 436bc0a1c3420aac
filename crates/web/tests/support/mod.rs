//! A shop on a database of its own, and an eight-club set with its stock to build in it.

pub mod answer;
pub mod described;
pub mod truth;

use answer::Answer;
use app::{App, SetClock};
use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use described::Asked;
use jiff::Timestamp;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use serde_json::{Value, json};
use std::path::Path;
use std::sync::Arc;
use tower::ServiceExt;

/// The whole site on an empty database, with a clock that a test moves.
pub struct Bench {
    pub app: App,
    pub router: Router,
    pub clock: Arc<SetClock>,
    _folder: Option<tempfile::TempDir>,
}

impl Bench {
    pub async fn open() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let bench = Self::open_in(folder.path()).await;
        Self { _folder: Some(folder), ..bench }
    }

    pub async fn open_in(folder: &Path) -> Self {
        let url = format!("sqlite:{}", folder.join("shop.db").display());
        let start: Timestamp = "2026-03-02T08:00:00Z".parse().expect("a time");
        let clock = Arc::new(SetClock::at(start));
        let app = App::open(&url, clock.clone()).await.expect("a shop");
        Self { router: web::router(app.clone(), web::ServerNames::default()), app, clock, _folder: None }
    }

    /// Any request.
    pub async fn ask(&self, method: &str, address: &str, kind: &str, body: impl Into<Body>) -> Answer {
        let body = axum::body::to_bytes(body.into(), usize::MAX).await.expect("a body");
        let request = Request::builder()
            .method(method)
            .uri(address)
            .header(header::CONTENT_TYPE, kind)
            .body(Body::from(body.clone()))
            .expect("a request");
        let answer = Answer::of(self.router.clone().oneshot(request).await.expect("an answer")).await;
        described::hold(&Asked { method, address, kind, body: &body }, &answer);
        answer
    }

    /// A page.
    pub async fn page(&self, address: &str) -> Answer {
        self.ask("GET", address, "text/plain", Body::empty()).await
    }

    /// A form sent as a browser sends it.
    pub async fn form(&self, address: &str, fields: &[(&str, &str)]) -> Answer {
        let coded = |text| utf8_percent_encode(text, NON_ALPHANUMERIC);
        let body: Vec<String> = fields.iter().map(|(k, v)| format!("{}={}", coded(k), coded(v))).collect();
        self.ask("POST", address, "application/x-www-form-urlencoded", body.join("&")).await
    }

    /// A form that may hold files, as a browser sends it without one.
    pub async fn fields(&self, address: &str, fields: &[(&str, &str)]) -> Answer {
        let mut body = String::new();
        for (name, value) in fields {
            body.push_str(&format!("--edge\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n"));
        }
        body.push_str("--edge--\r\n");
        self.ask("POST", address, "multipart/form-data; boundary=edge", body).await
    }

    /// A form with a file, as a browser sends it.
    pub async fn upload(&self, address: &str, file: &[u8]) -> Answer {
        let mut body = b"--edge\r\nContent-Disposition: form-data; name=\"file\"; filename=\"f.csv\"\r\n\r\n".to_vec();
        body.extend_from_slice(file);
        body.extend_from_slice(b"\r\n--edge--\r\n");
        self.ask("POST", address, "multipart/form-data; boundary=edge", body).await
    }

    pub async fn send(&self, method: &str, path: &str, kind: &str, body: Vec<u8>) -> (StatusCode, Value) {
        let answer = self.ask(method, &format!("/api/v1{path}"), kind, body).await;
        (answer.status, answer.value())
    }

    pub async fn post(&self, path: &str, body: Value) -> (StatusCode, Value) {
        self.send("POST", path, "application/json", body.to_string().into_bytes()).await
    }

    pub async fn get(&self, path: &str) -> Value {
        let (status, value) = self.send("GET", path, "application/json", Vec::new()).await;
        assert_eq!(status, StatusCode::OK, "{path}: {value}");
        value
    }

    pub async fn made(&self, path: &str, body: Value) -> Value {
        let (status, value) = self.post(path, body).await;
        assert!(status.is_success(), "{path}: {status} {value}");
        value
    }

    /// What job 1 asks of a club at a step, as its state says it: expected, target, fit, reading.
    pub async fn asked(&self, slot: usize, step: &str, what: &str) -> Value {
        let view = self.get("/jobs/1").await;
        let named = |list: &Value, field: &str, name: &str| -> Value {
            let found = list.as_array().and_then(|list| list.iter().find(|entry| entry[field] == name));
            found.unwrap_or_else(|| panic!("no {name} in {list}")).clone()
        };
        named(&named(&view["clubs"][slot - 1]["steps"], "key", step)["asks"], "what", what)
    }

    /// What job 1 expects of the swing weight of a club at a step.
    pub async fn expected(&self, slot: usize, step: &str) -> f64 {
        self.asked(slot, step, "swing_weight").await["expected"]["value"].as_f64().expect("a forecast")
    }

    /// What the API must refuse: the problem, after a look at its form.
    pub async fn refused(&self, method: &str, path: &str, status: StatusCode, body: impl Into<Body>) -> Value {
        self.ask(method, &format!("/api/v1{path}"), "application/json", body).await.problem(status)
    }

    /// Everything that is saved, to hold against what is saved later.
    pub async fn picture(&self) -> Vec<String> {
        let mut picture = Vec::new();
        for path in
            ["/shop", "/models", "/parts", "/parts/export", "/sheets", "/jobs", "/jobs?state=finished", "/batches"]
        {
            picture.push(format!("{path}: {}", self.get(path).await));
        }
        let jobs = self.get("/jobs").await;
        for job in jobs.as_array().expect("jobs") {
            for path in [format!("/jobs/{}", job["number"]), format!("/jobs/{}/record", job["number"])] {
                picture.push(format!("{path}: {}", self.get(&path).await));
            }
        }
        picture
    }
}

/// The value of a hidden field of a page.
pub fn hidden<'a>(page: &'a str, name: &str) -> &'a str {
    let from = page.find(&format!("name=\"{name}\"")).unwrap_or_else(|| panic!("no field {name}"));
    page[from..].split_once("value=\"").and_then(|(_, rest)| rest.split_once('"')).expect("a value").0
}

pub const INCH: f64 = 25.4;
pub const NUMBERS: [&str; 8] = ["4", "5", "6", "7", "8", "9", "P", "G"];
/// Bottom of bore to ground, bore depth, grip centre and cap of the models below, mm.
pub const BORE_TO_GROUND: f64 = 30.0;
pub const BORE_DEPTH: f64 = 32.0;
pub const CENTRE: f64 = 104.0;
pub const CAP: f64 = 3.0;

/// Length to the cap of each number, mm: half an inch a number.
pub fn length_mm(i: usize) -> f64 {
    (38.5 - 0.5 * i as f64) * INCH
}

pub fn head_nominal_g(i: usize) -> f64 {
    246.0 + 7.0 * i as f64
}

pub fn models() -> Value {
    let numbers: Vec<Value> = NUMBERS
        .iter()
        .enumerate()
        .map(|(i, number)| {
            json!({
                "number": number, "mass_g": head_nominal_g(i), "loft_deg": 21.0 + 4.0 * i as f64,
                "lie_deg": 60.5 + 0.5 * i as f64, "bounce_deg": 3.0, "bore_to_ground_mm": BORE_TO_GROUND,
                "chart": { "length_mm": length_mm(i), "swing_weight_points": 32.0 }
            })
        })
        .collect();
    json!([
        { "kind": "head", "code": "WREN-I", "name": "Wren iron", "club_kind": "iron", "hand": "right",
          "bore_diameter_mm": 9.5, "bore_depth_mm": BORE_DEPTH, "offset_mm": 0.0, "offset_sd_mm": 3.0,
          "bend_limit_deg": 2.0, "chart_length_to": "cap", "numbers": numbers },
        { "kind": "head", "code": "WREN-L", "name": "Wren iron left", "club_kind": "iron", "hand": "left",
          "bore_diameter_mm": 9.5, "bore_depth_mm": BORE_DEPTH, "bend_limit_deg": 2.0, "chart_length_to": "cap",
          "numbers": numbers },
        { "kind": "shaft", "code": "SCREE-P", "name": "Scree parallel", "material": "steel", "tip": "parallel",
          "tip_diameter_mm": 9.4, "butt_diameter_mm": 15.2, "mass_sd_g": 1.0,
          "blanks": [{ "mass_g": 120.0, "length_mm": 1041.4, "balance_point_mm": 508.0 }] },
        { "kind": "grip", "code": "MARL", "name": "Marl round", "mass_g": 50.0, "mass_sd_g": 1.2,
          "core_diameter_mm": 15.2, "length_mm": 267.0, "centre_mm": CENTRE, "cap_mm": CAP, "shape": "round" },
        { "kind": "ferrule", "code": "FERR", "name": "Ferrule", "inside_diameter_mm": 9.4, "length_mm": 25.0,
          "mass_g": 1.5 },
        { "kind": "tip_weight", "code": "TW2", "name": "2 g", "mass_g": 2.0, "tip_min_mm": 9.3, "tip_max_mm": 9.5,
          "length_mm": 10.0 },
        { "kind": "tip_weight", "code": "TW4", "name": "4 g", "mass_g": 4.0, "tip_min_mm": 9.3, "tip_max_mm": 9.5,
          "length_mm": 14.0 },
        { "kind": "adhesive", "code": "BASALT", "name": "Basalt two-part", "resin_per_hardener_by_mass": 1.2,
          "resin_per_hardener_by_volume": 1.0, "resin_density_g_per_ml": 1.2, "hardener_density_g_per_ml": 1.0,
          "pot_life_min": 60.0, "pot_life_at_c": 23.0, "pot_life_mass_g": 100.0,
          "handling": [{ "hours": 6.0, "at_c": 23.0 }], "full_cure": [{ "hours": 24.0, "at_c": 23.0 }],
          "joint_mass_g": 1.6, "joint_mass_sd_g": 0.4 },
        { "kind": "tape", "code": "TAPE", "name": "Two-sided", "mass_per_area_g_per_m2": 115.0,
          "thickness_mm": 0.13, "width_mm": 50.0 }
    ])
}

/// Heads scatter by fixed amounts, two a number; shafts and grips likewise.
pub fn stock() -> Vec<u8> {
    let mut csv = String::from("code,kind,model,number,mass_g,lot,place,state,count\r\n");
    for (i, number) in NUMBERS.iter().enumerate() {
        for (j, off) in [-2.1, 0.4].iter().enumerate() {
            let mass = head_nominal_g(i) + off + 0.1 * i as f64;
            csv.push_str(&format!("H{number}{j},head,WREN-I,{number},{mass:.1},L1,rack,free,\r\n"));
        }
    }
    for i in 0..12 {
        let mass = 119.4 + 0.1 * i as f64;
        csv.push_str(&format!("S{i:02},shaft,SCREE-P,,{mass:.1},L2,rack,free,\r\n"));
        let mass = 48.8 + 0.2 * i as f64;
        csv.push_str(&format!("G{i:02},grip,MARL,,{mass:.1},L3,box,free,\r\n"));
    }
    csv.push_str("FB,ferrule,FERR,,1.5,,bag,free,40\r\nT2,tip_weight,TW2,,2.0,,tray,free,20\r\n");
    csv.push_str("T4,tip_weight,TW4,,4.0,,tray,free,20\r\n");
    csv.into_bytes()
}

/// One entry at the bench.
#[allow(clippy::needless_pass_by_value, reason = "every caller passes a json! literal")]
pub fn reading(slot: usize, step: &str, entries: Value) -> Value {
    json!({ "slot": slot, "step": step, "entries": entries, "by": "Ada" })
}

/// The same with why something that is open is passed over.
pub fn although(reading: Value, reason: &str) -> Value {
    let mut reading = reading;
    reading["reason"] = json!(reason);
    reading
}

/// Models, stock and shop, no sheet yet.
pub async fn stocked(bench: &Bench) {
    bench.made("/models/import", models()).await;
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", stock()).await;
    assert_eq!(status, StatusCode::OK, "{kept}");
    assert_eq!(kept["bad"], json!([]));
    let mut shop = bench.get("/shop").await;
    shop["adhesive"] = json!("BASALT");
    shop["tape"] = json!("TAPE");
    // An exact bench: a fine display, so that the readings of these tests are what they are.
    shop["balance_scale"]["display_step"] = json!(0.001);
    shop["balance_scale"]["noise_sd"] = json!(0.01);
    // Nothing off today and no wandering: what such a scale shows is the true swing weight, as these tests reckon it.
    shop["balance_scale"]["offset_sd"] = json!(0.001);
    shop["balance_scale"]["drift_sd_per_root_h"] = json!(0.0);
    shop["balance_scale"]["drift_sd_per_day"] = json!(0.0);
    let (status, answer) = bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{answer}");
}

/// A sheet as it would be saved, from what is written short.
pub async fn sheet(bench: &Bench, player: &str, written: &str) -> Value {
    let expanded = bench
        .made(
            "/sheets/expand",
            json!({ "written": written, "rule": "constant_swing_weight",
                "models": { "heads": ["WREN-I"], "shafts": [{ "model": "SCREE-P" }], "grips": [{ "model": "MARL" }],
                    "ferrules": [{ "model": "FERR" }] } }),
        )
        .await;
    let clubs: Vec<Value> = expanded.as_array().expect("clubs").iter().map(|e| e["club"].clone()).collect();
    json!({ "player": player, "due": "2026-03-20", "hand": "right", "rule": "constant_swing_weight", "written": written,
        "clubs": clubs })
}

/// A job of such a sheet, not planned yet: its number.
pub async fn job_of(bench: &Bench, sheet: Value) -> i64 {
    let saved = bench.made("/sheets", sheet).await;
    let id = saved["id"].as_str().expect("id");
    let job = bench.made(&format!("/sheets/{id}/approve"), json!({ "by": "Ada" })).await;
    job["number"].as_i64().expect("a number")
}

/// What accepts a plan as it is proposed now.
pub async fn proposed(bench: &Bench, job: i64) -> Value {
    let proposal = bench.made(&format!("/jobs/{job}/plan/propose"), json!({})).await;
    assert_eq!(proposal["plan"]["missing"], json!([]));
    assert_eq!(proposal["plan"]["proven"], json!(true));
    json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" })
}

/// Job 1: eight clubs, planned, ready for the bench.
pub async fn planned(bench: &Bench) {
    stocked(bench).await;
    let sheet = sheet(bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    assert_eq!(sheet["clubs"].as_array().map(Vec::len), Some(8));
    assert_eq!(job_of(bench, sheet).await, 1);
    let accept = proposed(bench, 1).await;
    bench.made("/jobs/1/plan", accept).await;
}
