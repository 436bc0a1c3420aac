//! Goal: the frequency of a raw shaft comes in by form, weigh-in, list and API, is refused where it cannot be, and goes
//! out again. Method: the API and the pages as programs and people use them, on the stock of the support module.

use crate::support::answer::detail;
use crate::support::{Bench, stocked};
use axum::http::StatusCode;
use serde_json::json;

#[tokio::test]
async fn a_frequency_comes_in_with_a_weigh_in_and_is_asked_of_shafts_only() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let page = bench.page("/stock/new?model=SCREE-P").await;
    page.says(StatusCode::OK, &["name=\"cpm\"", "the shop's own weight at its tip"]);
    let head = bench.page("/stock/new?model=WREN-I&number=7").await;
    assert!(!head.text.contains("name=\"cpm\""), "a head has none");
    let entry = [("model", "SCREE-P"), ("number", ""), ("mass", "120.2"), ("code", "S50"), ("cpm", "262.5")];
    let kept = bench.form("/stock/new", &entry).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    assert_eq!(bench.get("/parts/S50").await["cpm"], json!(262.5));
    bench.page("/stock/new?model=SCREE-P").await.says(StatusCode::OK, &["262.5 cpm"]);
    // Without one a shaft is weighed in as ever.
    let plain = bench.made("/parts/weigh-in", json!({ "model": "SCREE-P", "mass": "120.1", "by": "Ada" })).await;
    assert_eq!(plain["kept"]["part"].get("cpm"), None);
    // A slip is told beside its field, and nothing is kept.
    let slip = [("model", "SCREE-P"), ("number", ""), ("mass", "120.2"), ("code", "S90"), ("cpm", "26.25")];
    let refused = bench.form("/stock/new", &slip).await;
    refused
        .says(StatusCode::UNPROCESSABLE_ENTITY, &["26.25 cpm cannot be the frequency of a shaft", "value=\"26.25\""]);
    let misplaced = json!({ "model": "WREN-I", "number": "7", "mass": "267.1", "cpm": "262", "by": "Ada" });
    let problem =
        bench.refused("POST", "/parts/weigh-in", StatusCode::UNPROCESSABLE_ENTITY, misplaced.to_string()).await;
    assert!(detail(&problem).contains("only a raw shaft has a frequency, and this is a head"), "{problem}");
    bench.refused("GET", "/parts/S90", StatusCode::NOT_FOUND, "").await;
}

#[tokio::test]
async fn a_frequency_is_changed_by_form_and_by_program_and_kept_in_the_life() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let page = bench.page("/stock/parts/S01").await;
    page.says(StatusCode::OK, &["Frequency as received"]);
    assert!(!bench.page("/stock/parts/H70").await.text.contains("Frequency"), "a head has none");
    let form = [("version", "0"), ("mass", "119.5"), ("cpm", "4.4 Hz"), ("state", "free"), ("reason", "plucked")];
    let changed = bench.form("/stock/parts/S01", &form).await;
    assert_eq!(changed.status, StatusCode::SEE_OTHER, "{}", changed.text);
    let cpm = bench.get("/parts/S01").await["cpm"].as_f64().expect("a frequency");
    assert!((cpm - 264.0).abs() < 1e-9, "{cpm}");
    let deed = json!({ "deed": "correct", "cpm": 265.5, "reason": "clamped again", "by": "Ada" });
    let life = bench.made("/parts/S01/life", deed).await;
    assert_eq!(life["part"]["cpm"], json!(265.5));
    bench
        .page("/stock/parts/S01")
        .await
        .says(StatusCode::OK, &["frequency 264.0 cpm, now 265.5 cpm", "value=\"265.5\""]);
    for wrong in ["49", "601", "soft"] {
        let form = [("version", "2"), ("mass", "119.5"), ("cpm", wrong), ("state", "free")];
        let refused = bench.form("/stock/parts/S01", &form).await;
        refused.says(StatusCode::UNPROCESSABLE_ENTITY, &[&format!("value=\"{wrong}\"")]);
    }
    for (code, cpm) in [("S02", json!(601.0)), ("S02", json!(-262.0)), ("H70", json!(262.0)), ("G00", json!(262.0))] {
        let deed = json!({ "deed": "correct", "cpm": cpm, "by": "Ada" });
        let problem = bench
            .refused("POST", &format!("/parts/{code}/life"), StatusCode::UNPROCESSABLE_ENTITY, deed.to_string())
            .await;
        assert!(detail(&problem).contains("cpm"), "{problem}");
    }
}

#[tokio::test]
async fn a_frequency_comes_with_a_list_and_goes_out_with_the_stock() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let list = "code,Product,Weight,Frequency\nN1,SCREE-P,120.4,261\nN2,SCREE-P,120.0,26\n";
    let looked = bench.fields("/stock/import", &[("text", list)]).await;
    looked.says(StatusCode::OK, &["<option value=\"cpm\" selected"]);
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", list.into()).await;
    assert_eq!((status, &kept["kept"]), (StatusCode::OK, &json!(1)), "{kept}");
    assert_eq!(
        kept["bad"][0]["problem"]["words"],
        "26 cpm cannot be the frequency of a shaft, which is between 50 cpm and 600 cpm"
    );
    assert_eq!(kept["bad"][0]["column"], "Frequency");
    let out = bench.ask("GET", "/api/v1/parts/export?text=N1", "", "").await;
    assert!(
        out.text.contains("balance_point_mm,cpm,loft_deg") && out.text.contains("N1,shaft,SCREE-P,,120.4,,,261,,"),
        "{}",
        out.text
    );
}
