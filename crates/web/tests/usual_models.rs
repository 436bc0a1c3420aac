//! Goal: a shop without a maker's sheet begins with usual models, keeps each once, and changes them as any other.
//! Method: the API and the page, before and after; what a weighing of a head says against one.

use crate::support::Bench;
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn usual_models_are_kept_once_and_changed_as_any_other() {
    let bench = Bench::open().await;
    let all = bench.get("/models/usual").await;
    let all = all.as_array().expect("a list").clone();
    assert!(all.len() >= 40 && all.iter().all(|usual| usual["kept"] == json!(false)), "{}", all.len());
    let heads = bench.get("/models/usual?kind=head").await;
    assert!(heads.as_array().expect("heads").iter().any(|head| head["code"] == "ANY-CAVITY-LEFT"));
    // A source beside a figure is a word of the list with its sentence in the page.
    let irons = all.iter().find(|usual| usual["code"] == "ANY-CAVITY").expect("irons");
    assert_eq!(irons["from"]["numbers.mass_g"], json!("seven_grams"));

    let asked = json!({ "codes": ["any-cavity", "ANY-GRIP", "ANY-GRIP"] });
    let done = bench.made("/models/usual", asked.clone()).await;
    assert_eq!(done, json!({ "kept": ["ANY-CAVITY", "ANY-GRIP"], "were_there": [] }));
    // The shop puts its own figures in.
    let mut own = bench.get("/models/ANY-CAVITY").await;
    assert_eq!(own["name"], json!("Cavity irons"));
    own["bore_depth_mm"] = json!(30.5);
    bench.made("/models", own.clone()).await;
    let again = bench.made("/models/usual", asked).await;
    assert_eq!((&again["kept"], &again["were_there"][0]), (&json!([]), &json!("ANY-CAVITY")));
    assert_eq!(bench.get("/models/ANY-CAVITY").await, own, "what the shop has changed stays");

    let page = bench.page("/stock/models/usual").await;
    page.says(
        StatusCode::OK,
        &["Usual models", "Blade irons, left-hand", "the same step of mass from number to number", "in your shop"],
    );
    let kept = bench.form("/stock/models/usual", &[("code", "ANY-DRIVER"), ("code", "ANY-WOOD-60")]).await;
    assert_eq!((kept.status, kept.location.as_str()), (StatusCode::SEE_OTHER, "/stock/models"));
    assert_eq!(bench.get("/models/ANY-WOOD-60").await["name"], json!("Graphite wood shaft, 60 g"));
    bench.form("/stock/models/usual", &[]).await.says(StatusCode::UNPROCESSABLE_ENTITY, &["No model is ticked"]);
}

#[tokio::test]
async fn a_code_that_no_usual_model_has_is_named_and_nothing_is_kept() {
    let bench = Bench::open().await;
    let body = json!({ "codes": ["ANY-GRIP", "ANY-THING"] }).to_string();
    let problem = bench.refused("POST", "/models/usual", StatusCode::NOT_FOUND, body).await;
    assert!(problem["detail"].as_str().expect("words").contains("ANY-THING"), "{problem}");
    assert_eq!(problem["type"], "urn:setwright:problem:not_found", "{problem}");
    let none =
        bench.refused("POST", "/models/usual", StatusCode::UNPROCESSABLE_ENTITY, json!({ "codes": [] }).to_string());
    assert!(none.await["detail"].as_str().expect("words").contains("usual model"));
    assert_eq!(bench.get("/models").await, json!([]));
}

/// A usual model says little of one head's mass: 8 g off its figure is no other number, and is not asked about.
#[tokio::test]
async fn a_weighing_corrects_a_usual_head_and_is_not_questioned() {
    let bench = Bench::open().await;
    bench.made("/models/usual", json!({ "codes": ["ANY-WEDGE", "ANY-CAVITY", "ANY-GRIP", "ANY-STEEL-115"] })).await;
    let weighed =
        |model: &str, number: &str, mass: &str| json!({ "model": model, "number": number, "mass": mass, "by": "Ada" });
    for (model, number, mass) in
        [("ANY-CAVITY", "7", "265.2"), ("ANY-STEEL-115", "", "121.5"), ("ANY-GRIP", "", "55.8")]
    {
        let answer: Value = bench.made("/parts/weigh-in", weighed(model, number, mass)).await;
        assert!(answer["kept"].is_object(), "{model}: {answer}");
    }
}
