//! Goal: a club from elsewhere is timed, asked for an inertia, brought to it and handed over with it, by programs and by pages.
//! Method: a true club whose swing is worked out here by the formula of the physical pendulum.

use crate::club_work::{Real, note, read, shop_with_grips, tenth};
use crate::support::Bench;
use crate::support::answer::detail;
use axum::http::StatusCode;
use serde_json::{Value, json};

/// Inertia about the butt, kg·cm², and the period of a swing from the cap, s, 5° to either side: shaft and grip are rods of 906 and
/// 267 mm, the head has 3 kg·cm² of its own.
fn swings(real: &Real) -> (f64, f64) {
    let cap = real.grip.2;
    let rod = |g: f64, mm: f64| g * mm * mm / 12.0;
    let mut pieces = vec![
        (real.shaft.0, real.shaft.1 + cap, rod(real.shaft.0, 906.0)),
        (real.head.0, real.head.1 + cap, 3e5),
        (real.grip.0, real.grip.1, rod(real.grip.0, 267.0)),
        (real.tape.0, real.tape.1 + cap, 0.0),
    ];
    pieces.extend(real.added.iter().map(|(g, mm)| (*g, mm + cap, 0.0)));
    let inertia: f64 = pieces.iter().map(|(g, mm, own)| g * mm * mm + own).sum();
    let moment: f64 = pieces.iter().map(|(g, mm, _)| g * mm).sum();
    let small_s = std::f64::consts::TAU * (inertia / (moment * 9806.65)).sqrt();
    (inertia / 1e5, small_s * (1.0 + 5f64.to_radians().powi(2) / 16.0))
}

fn line<'a>(record: &'a Value, what: &str) -> &'a Value {
    record["clubs"][0]["lines"].as_array().unwrap().iter().find(|line| line["what"] == what).unwrap_or(&Value::Null)
}

async fn state(bench: &Bench) -> Value {
    bench.get("/jobs/1").await["clubs"][0].clone()
}

#[tokio::test]
async fn a_club_is_timed_and_brought_to_an_inertia() {
    let bench = shop_with_grips().await;
    let mut real = Real::seven();
    let (inertia, period_s) = swings(&real);
    let figures = |period_s: f64| {
        json!({ "swing_weight_points": tenth(real.points(true)), "total_mass_g": tenth(real.mass()), "length_mm": 939.8,
            "swing_period_s": period_s })
    };
    // A period alone, and half a swing counted, tell nothing: refused in words, nothing kept.
    let club = |arrival: Value| {
        json!({ "player": "Odell Farrowby", "hand": "right", "club_kind": "iron", "number": "7", "arrival": arrival, "by": "Ada" }).to_string()
    };
    let alone = club(json!({ "swing_period_s": period_s }));
    let problem = bench.refused("POST", "/clubs", StatusCode::UNPROCESSABLE_ENTITY, alone).await;
    assert!(detail(&problem).contains("without the mass and the swing weight"), "{problem}");
    let twice = club(figures(period_s * 2.0));
    let problem = bench.refused("POST", "/clubs", StatusCode::UNPROCESSABLE_ENTITY, twice).await;
    assert!(problem.to_string().contains("swings"), "{problem}");
    let kept = note(&bench, figures(period_s)).await;
    let figure =
        kept["club"]["figures"].as_array().unwrap().iter().find(|f| f["what"] == "swing_inertia").unwrap().clone();
    // The swing weight is known to a twentieth of a point and the mass to a twentieth of a gram.
    assert!((figure["value"].as_f64().unwrap() - inertia).abs() < 2.5, "{figure}, truly {inertia}");
    assert!(bench.page("/clubs/C1").await.text.contains("Swing inertia"));
    let both = json!({ "due": "2026-03-09", "by": "Ada",
        "clubs": [{ "club": "C1", "kind": "rebalance", "inertia_kg_cm2": inertia + 20.0, "swing_weight_points": 31.0 }] });
    let problem = bench.refused("POST", "/jobs", StatusCode::UNPROCESSABLE_ENTITY, both.to_string()).await;
    assert!(detail(&problem).contains("the one gives the other"), "{problem}");
    let goal = (inertia + 20.0).round();
    let job = json!({ "due": "2026-03-09", "by": "Ada", "clubs": [{ "club": "C1", "kind": "rebalance", "inertia_kg_cm2": goal }] });
    bench.made("/jobs", job).await;
    let on_arrival = json!([{ "what": "swing_weight", "value": tenth(real.points(true)) }, { "what": "total_mass", "value": tenth(real.mass()) },
        { "what": "swing_period", "typed": format!("{:.2}", period_s * 10.0) }]);
    read(&bench, 1, 1, "arrived", on_arrival).await;
    let now = state(&bench).await;
    let found = &now["swing_inertia"];
    let off = found["value_kg_cm2"].as_f64().unwrap() - inertia;
    assert!(off.abs() < found["band_kg_cm2"].as_f64().unwrap() && off.abs() < 15.0, "{found}, truly {inertia}");
    assert_eq!(found["target_kg_cm2"], json!(goal));
    // Lead on the head: noted with its mass, it brings the club there.
    let lacking = goal - found["value_kg_cm2"].as_f64().unwrap();
    let lead_g = tenth(lacking * 1e5 / 939.0_f64.powi(2));
    let version = now["version"].clone();
    let extra = json!({ "action": "lead_tape", "mass_g": lead_g, "by": "Ada", "version": version });
    bench.made("/jobs/1/clubs/1/extras", extra).await;
    real.added.push((lead_g, 936.0));
    let page = bench.page("/bench/1/1?step=finish").await;
    assert!(page.text.contains("Swing inertia") && page.text.contains("time 10 swings"), "{}", page.text);
    let (after, period_s) = swings(&real);
    let typed = format!("{:.2}/10 @ 0 mm", period_s * 10.0);
    let finished = json!([{ "what": "swing_weight", "value": tenth(real.points(true)) }, { "what": "total_mass", "value": tenth(real.mass()) },
        { "what": "swing_period", "typed": typed }]);
    read(&bench, 1, 1, "finish", finished).await;
    let record = bench.get("/jobs/1/record").await;
    let built = line(&record, "swing_inertia");
    assert!(
        (built["built"].as_f64().unwrap() - after).abs() < built["band"].as_f64().unwrap(),
        "{built}, truly {after}"
    );
    assert_eq!(built["target"], json!(goal));
    assert!(built["difference"].as_f64().unwrap().abs() < 12.0, "{built}");
    // The swing weight has the club's own, and the one that the inertia asks.
    let weight = line(&record, "swing_weight");
    assert!((weight["built"].as_f64().unwrap() - real.points(true)).abs() < 0.4, "{weight}");
    assert!(bench.page("/records/1").await.text.contains("kg·cm²"));
    let over = json!({ "slot": 1, "step": "hand_over", "entries": [{ "what": "done" }], "by": "Ada", "reason": "near enough for a player" });
    bench.made("/jobs/1/readings", over).await;
    let club = bench.get("/clubs/C1").await;
    let figure =
        club["club"]["figures"].as_array().unwrap().iter().find(|f| f["what"] == "swing_inertia").unwrap().clone();
    assert!((figure["value"].as_f64().unwrap() - after).abs() < 15.0, "{figure}, truly {after}");
}

/// The pendulum of the shop is set by its page, and a time that is none is said beside its field.
#[tokio::test]
async fn the_pendulum_is_set_by_its_page() {
    let bench = shop_with_grips().await;
    let fields = [
        ("form", "pendulum"),
        ("pivot_mm", "4 in"),
        ("swings", "30"),
        ("time_sd_s", "0.01"),
        ("amplitude_deg", "4"),
        ("gravity_m_s2", "9.81"),
    ];
    let kept = bench.form("/scales/setup/pendulum", &fields).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let shop = bench.get("/shop").await;
    assert_eq!(
        shop["pendulum"],
        json!({ "pivot_mm": 101.6, "swings": 30, "time_sd_s": 0.01, "amplitude_deg": 4.0, "gravity_m_s2": 9.81 })
    );
    assert!(bench.page("/clubs/new").await.text.contains("Time of 30 swings"));
    let wrong = [
        ("player", "Odell Farrowby"),
        ("club_kind", "iron"),
        ("number", "7"),
        ("hand", "right"),
        ("head_material", "unknown"),
        ("swing_time", "ten"),
    ];
    let refused = bench.form("/clubs/new", &wrong).await;
    assert!(
        refused.status == StatusCode::UNPROCESSABLE_ENTITY
            && refused.text.contains("is not the time of a number of swings"),
        "{}",
        refused.text
    );
}
