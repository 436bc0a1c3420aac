//! Goal: woods with adapters go from the stock to a plan that is held, by API and page: each adapter in one club, chosen
//! by its mass, kept where the builder says, a shortage told. Method: a driver and a 3-wood of the invented models, a few
//! weighed adapters.

use crate::support::Bench;
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// A shop with parts for a few woods and these adapters.
async fn shop(adapters: &[(&str, &str)]) -> Bench {
    let bench = Bench::open().await;
    bench.made("/models/import", json!(demo::models())).await;
    let mut csv = String::from("code,kind,model,number,mass_g,state,count\n");
    for i in 0..6 {
        csv.push_str(&format!("D{i},head,FIELDFARE,1,{:.1},free,\n", 190.6 + 0.7 * f64::from(i)));
        csv.push_str(&format!("T{i},head,FIELDFARE,3,{:.1},free,\n", 206.3 + 0.7 * f64::from(i)));
    }
    for i in 0..12 {
        csv.push_str(&format!("S{i},shaft,LEVANTER-W,,{:.1},free,\n", 64.0 + 0.1 * f64::from(i)));
        csv.push_str(&format!("G{i},grip,OLIVINE,,{:.1},free,\n", 50.2 + 0.2 * f64::from(i)));
    }
    csv.push_str("TW2,tip_weight,TIP-2,,,free,20\nTW4,tip_weight,TIP-4,,,free,20\n");
    csv.push_str("FB,ferrule,FERRULE-335,,,free,20\n");
    for (code, mass_g) in adapters {
        csv.push_str(&format!("{code},adapter,FIELDFARE-A,,{mass_g},free,\n"));
    }
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", csv.into_bytes()).await;
    assert_eq!((status, &kept["bad"]), (StatusCode::OK, &json!([])), "{kept}");
    bench
}

/// A job of a driver and a 3-wood.
async fn woods(bench: &Bench, player: &str) -> i64 {
    let models = json!({ "heads": ["FIELDFARE"], "shafts": [{ "model": "LEVANTER-W" }], "grips": [{ "model": "OLIVINE" }],
        "ferrules": [{ "model": "FERRULE-335" }] });
    let written = "driver, D2, 1 wrap";
    let asked = json!({ "written": written, "rule": "as_written", "models": models });
    let expanded = bench.made("/sheets/expand", asked).await;
    let driver = expanded[0]["club"].clone();
    let mut three = driver.clone();
    three["number"] = json!("3");
    three["length_mm"] = json!(driver["length_mm"].as_f64().expect("a length") - 50.8);
    three["loft_deg"] = json!(15.0);
    three["lie_deg"] = json!(57.5);
    let sheet = json!({ "player": player, "due": "2026-03-20", "hand": "right", "rule": "as_written", "written": written,
        "clubs": [driver, three] });
    crate::support::job_of(bench, sheet).await
}

fn adapters(plan: &Value) -> Vec<String> {
    let of = |club: &Value| {
        let parts = club["parts"].as_array().expect("parts");
        let adapter = parts.iter().find(|p| p["kind"] == "adapter").expect("a wood has an adapter");
        adapter["code"].as_str().expect("a code").to_owned()
    };
    plan["clubs"].as_array().expect("clubs").iter().map(of).collect()
}

#[tokio::test]
async fn a_driver_and_a_3_wood_are_planned_and_held() {
    let bench = shop(&[("AD-0", "5.0"), ("AD-1", "5.3"), ("AD-2", "4.8")]).await;
    assert_eq!(woods(&bench, "Nobody Inparticular").await, 1);
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    assert_eq!((&proposal["plan"]["missing"], &proposal["plan"]["proven"]), (&json!([]), &json!(true)));
    let chosen = adapters(&proposal["plan"]);
    assert_ne!(chosen[0], chosen[1]);
    // The page names them, each with its mass, and lets one be kept by a touch.
    let page = bench.page("/plan/1").await;
    page.says(StatusCode::OK, &["scope=\"col\">adapter</th>", &format!("value=\"1:{}\"", chosen[0])]);
    for code in ["AD-0", "AD-1", "AD-2"] {
        let kept = bench.made("/jobs/1/plan/propose", json!({ "locks": [{ "slot": 2, "code": code }] })).await;
        let kept = adapters(&kept["plan"]);
        assert!(kept[1] == code && kept[0] != code, "{kept:?}");
    }
    let accept = json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" });
    bench.made("/jobs/1/plan", accept).await;
    for code in &chosen {
        assert_eq!(bench.get(&format!("/parts/{code}")).await["state"], "held", "{code}");
    }
    // The job card says which adapter belongs into which club.
    let cards = bench.page("/plan/1/cards").await;
    cards.says(StatusCode::OK, &["adapter", &chosen[0], &chosen[1]]);
    // And which screw, where it is not the one of 4 g that the head comes with.
    let clubs = proposal["plan"]["clubs"].as_array().expect("clubs");
    let screws: Vec<f64> = clubs.iter().filter_map(|club| club["extras"][0]["mass_g"].as_f64()).collect();
    assert!(!screws.is_empty(), "{clubs:?}");
    for more_g in screws {
        cards.says(StatusCode::OK, &[&format!("screw {}", 4.0 + more_g)]);
    }
}

#[tokio::test]
async fn a_day_of_two_sets_of_woods_gives_no_adapter_twice() {
    let bench = shop(&[("AD-0", "5.0"), ("AD-1", "5.3"), ("AD-2", "4.8"), ("AD-3", "5.1")]).await;
    for player in ["Nobody Inparticular", "Somebody Else"] {
        woods(&bench, player).await;
    }
    bench.page("/plan/day").await.says(StatusCode::OK, &["Hold these parts", "scope=\"col\">adapter</th>"]);
    let day = bench.made("/match/day", json!({ "seconds": 0.2 })).await;
    let taken: Vec<String> = day["jobs"].as_array().expect("jobs").iter().flat_map(|j| adapters(&j["plan"])).collect();
    let set: BTreeSet<&String> = taken.iter().collect();
    assert_eq!((taken.len(), set.len()), (4, 4), "{taken:?}");
    // And what the day chose can be held, job by job.
    for (job, number) in day["jobs"].as_array().expect("jobs").iter().zip(1..) {
        let clubs: Vec<Value> = job["plan"]["clubs"]
            .as_array()
            .expect("clubs")
            .iter()
            .zip(1..)
            .map(|(club, slot)| {
                let codes: Vec<&Value> = club["parts"].as_array().expect("parts").iter().map(|p| &p["code"]).collect();
                json!({ "slot": slot, "codes": codes })
            })
            .collect();
        bench.made(&format!("/jobs/{number}/plan/picks"), json!({ "clubs": clubs, "by": "Ada" })).await;
    }
}

#[tokio::test]
async fn a_shortage_of_adapters_is_told_with_what_to_order() {
    let bench = shop(&[("AD-0", "5.0")]).await;
    woods(&bench, "Nobody Inparticular").await;
    bench.page("/plan/1").await.says(StatusCode::OK, &["Other clubs take the last adapter that fits: order one more."]);
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    let missing = proposal["plan"]["missing"].as_array().expect("missing");
    assert_eq!(missing.iter().map(|m| &m["kind"]).collect::<Vec<_>>(), ["adapter"]);
    assert_eq!(proposal["plan"]["clubs"].as_array().expect("clubs").iter().filter(|c| c.is_null()).count(), 1);
    // What another job holds is named.
    let accept = json!({ "fingerprint": proposal["fingerprint"], "partly": true, "by": "Ada" });
    bench.made("/jobs/1/plan", accept).await;
    woods(&bench, "Somebody Else").await;
    bench.page("/plan/2").await.says(
        StatusCode::OK,
        &["Fieldfare takes an adapter, and no free one fits it: order one.", "AD-0 (job 1 holds it for its"],
    );
}
