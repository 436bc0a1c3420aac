//! Goal: a recall and its marks from the list to the last club looked at, by the API and as pages. Method: the invented shop's
//! bad tin of adhesive, and a scale and a builder of its past.

use crate::demo_past::{demo, list};
use axum::http::StatusCode;
use serde_json::{Value, json};

fn keys(found: &Value) -> Vec<String> {
    list(found, "clubs").iter().map(|club| club["key"].as_str().expect("a key").to_owned()).collect()
}

#[tokio::test]
async fn a_bad_lot_is_recalled_marked_and_cleared_club_by_club() {
    let bench = demo().await;
    let record = bench.get("/jobs/3/record").await;
    let lot = record["batches"][0]["lot"].as_str().expect("a lot").to_owned();
    let found = bench.get(&format!("/recall?lot={}", lot.to_lowercase())).await;
    assert!(keys(&found).len() >= 8, "{found}");
    let club = &list(&found, "clubs")[list(&found, "clubs").len() - 1];
    assert!(club["code"].is_string() && list(club, "reaches")[0]["code"] == "recall_reach.batch", "{club}");
    assert!(list(club, "read").iter().any(|figure| figure["what"] == "swing_weight"), "{club}");

    // The page says the same, prints, and has a file of addresses.
    let address = format!("/recall?lot={lot}");
    let page = bench.page(&address).await.text;
    for part in [format!("Recall: lot {lot}").as_str(), "Hesper Wainfleet", "glued from batch", "Mark them"] {
        assert!(page.contains(part), "{part}");
    }
    let file = bench.page(&format!("/api/v1/recall/addresses?lot={lot}")).await;
    assert!(file.text.starts_with("customer,name,address,email,phone,clubs,clubs_here,club_keys\r\n"), "{}", file.text);
    assert_eq!(file.text.lines().count(), 1 + list(&found, "players").len());

    // Marked once, though it is asked twice; a club that is not in it is refused, and so is a word that says nothing.
    let mark = json!({ "recall": { "lot": lot }, "word": "look at the joint", "by": "Ada" });
    let made = bench.made("/marks", mark.clone()).await;
    assert_eq!(made.as_array().map(Vec::len), Some(keys(&found).len()));
    assert_eq!(bench.made("/marks", mark.clone()).await, json!([]));
    for (field, value) in [("clubs", json!(["J99-1"])), ("clubs", json!([])), ("word", json!("  "))] {
        let mut wrong = mark.clone();
        wrong[field] = value;
        assert!(bench.post("/marks", wrong).await.0.is_client_error(), "{field}");
    }

    // It stands on the club's page, on Today and in the list, until a named person says what was found.
    let code = club["code"].as_str().expect("a code");
    assert!(bench.page(&format!("/clubs/{code}")).await.text.contains("look at the joint"));
    assert!(bench.page("/").await.text.contains("marked from a recall"));
    assert!(bench.page("/marks").await.text.contains("look at the joint"));
    let of_club = bench.get(&format!("/clubs/{code}")).await;
    let id = list(&of_club, "marks")[0]["id"].as_str().expect("an identity").to_owned();
    for by in ["", "bench"] {
        let word = json!({ "word": "joint is sound", "by": by });
        assert!(bench.post(&format!("/marks/{id}/clear"), word).await.0.is_client_error(), "{by}");
    }
    let nameless = bench.form(&format!("/marks/{id}/clear"), &[("word", "joint is sound"), ("back", "/marks")]).await;
    assert_eq!(nameless.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(nameless.text.contains("whoever clears a mark is named") || nameless.text.contains("Whoever"));
    let cleared = bench.made(&format!("/marks/{id}/clear"), json!({ "word": "joint is sound", "by": "Ada" })).await;
    assert_eq!(cleared["cleared"]["by"], "Ada");
    let again = bench.post(&format!("/marks/{id}/clear"), json!({ "word": "again", "by": "Ada" })).await;
    assert_eq!(again.0, StatusCode::CONFLICT);
    assert_eq!(bench.get("/marks").await.as_array().map(Vec::len), Some(keys(&found).len() - 1));
    assert!(bench.page(&format!("/clubs/{code}")).await.text.contains("joint is sound"));
}

#[tokio::test]
async fn a_marked_club_in_the_shop_is_met_at_the_bench_and_before_it_leaves() {
    let bench = demo().await;
    // Every club of the job at the bench has a head of this model or its neighbours; one is picked.
    let job = bench.get("/jobs/1").await;
    let head =
        list(&job["job"]["clubs"][0]["plan"], "parts").iter().find(|part| part["kind"] == "head").expect("a head");
    let part = head["code"].as_str().expect("a code");
    let found = bench.get(&format!("/recall?part={part}")).await;
    assert_eq!(keys(&found), [job["job"]["clubs"][0]["card"].as_str().expect("a card")]);
    assert_eq!(found["clubs"][0]["state"], "planned");
    let mark = json!({ "recall": { "part": part }, "word": "hosel: look for a crack", "by": "Ada" });
    bench.made("/marks", mark).await;
    for address in ["/bench/1/1", "/plan/1/cards"] {
        assert!(bench.page(address).await.text.contains("hosel: look for a crack"), "{address}");
    }
    let steps = list(&job["job"], "steps");
    let last = steps[steps.len() - 1]["key"].as_str().expect("a step");
    let grid = bench.page(&format!("/bench/1/grid/{last}")).await.text;
    assert!(grid.contains("hosel: look for a crack"));
    let open = bench.get(&format!("/jobs/1/open?step={last}")).await;
    let open_points: Vec<&Value> =
        open.as_array().into_iter().flatten().flat_map(|club| list(club, "points")).collect();
    assert!(open_points.iter().any(|point| point["open"] == "marked"), "{open}");
}

#[tokio::test]
async fn scale_builder_and_model_are_called_back_and_slips_are_refused() {
    let bench = demo().await;
    let record = bench.get("/jobs/3/record").await;
    let read = &list(&record["clubs"][0], "readings")[3];
    let (day, by) = (
        read["reading"]["at"].as_str().expect("a time")[..10].to_owned(),
        read["reading"]["by"].as_str().expect("a name"),
    );
    let scale = bench.get(&format!("/recall?scale=balance&from={day}&to={day}")).await;
    assert_eq!(scale["of"]["code"], "recall_of.scale_days");
    let builder = bench.get(&format!("/recall?builder={}", by.replace(' ', "%20"))).await;
    assert!(keys(&builder).len() >= 8, "{by}");
    let model = record["clubs"][0]["target"]["head_model"].as_str().expect("a model");
    let of_model = bench.get(&format!("/recall?model={}", model.to_lowercase())).await;
    assert!(keys(&of_model).len() >= 8);
    let tape = bench.get("/shop").await["tape"].as_str().map(str::to_owned);
    if let Some(tape) = tape {
        let taped = bench.get(&format!("/recall?model={tape}")).await;
        assert!(!keys(&taped).is_empty(), "the tape is on every set");
    }
    for wrong in ["", "?lot=A&part=B", "?lot=A&from=2026-01-01", "?scale=balance&to=2026-01-01"] {
        let (status, _) = bench.send("GET", &format!("/recall{wrong}"), "application/json", Vec::new()).await;
        assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
    }
    for wrong in ["?part=NO-PART", "?model=NO-MODEL", "?scale=no%20scale"] {
        let (status, said) = bench.send("GET", &format!("/recall{wrong}"), "application/json", Vec::new()).await;
        assert_eq!(status, StatusCode::NOT_FOUND, "{wrong}: {said}");
        assert_eq!(bench.page(&format!("/recall{wrong}")).await.status, StatusCode::NOT_FOUND, "{wrong}");
    }
    assert!(bench.page("/recall?lot=NO-LOT").await.text.contains("No club has anything to do with"));
}
