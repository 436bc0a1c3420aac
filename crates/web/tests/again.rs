//! Goal: a set, a customer's clubs or one club are built again from what was read of them, not from the old sheet. Method: the
//! invented shop's finished set, by the API and as a page.

use crate::demo_past::{demo, list};
use axum::http::StatusCode;
use serde_json::{Value, json};

#[tokio::test]
async fn a_set_is_asked_again_as_it_was_built() {
    let bench = demo().await;
    let found = bench.get("/again?job=3").await;
    assert_eq!((found["player"].as_str(), list(&found, "clubs").len()), (Some("Hesper Wainfleet"), 8));
    for club in list(&found, "clubs") {
        let code = club["like"].as_str().expect("a code");
        let figures = bench.get(&format!("/clubs/{code}")).await["club"]["figures"].clone();
        let read = |what: &str| -> Value {
            let all = figures.as_array().expect("figures");
            all.iter().find(|figure| figure["what"] == what).map_or(Value::Null, |figure| figure["value"].clone())
        };
        let row = &club["row"];
        assert_eq!(row["swing_weight_points"], read("swing_weight"), "{code}");
        assert_eq!((&row["length_mm"], &row["length_to"]), (&read("finished_length"), &json!("cap")), "{code}");
        assert_eq!((&row["loft_deg"], &row["lie_deg"]), (&read("loft"), &read("lie")), "{code}");
        assert_eq!((&row["cpm"], &row["total_mass_g"]), (&read("cpm"), &read("total_mass")), "{code}");
        // Each piece: what can be had of it today, or that nothing can.
        let pieces = list(club, "says").iter().filter(|says| {
            let code = says["code"].as_str().unwrap_or_default();
            ["same", "heavier", "lighter", "none_free", "none_weighed"].iter().any(|end| code == format!("again.{end}"))
        });
        assert_eq!(pieces.count(), 3, "{}", club["says"]);
    }
    let saved = bench.made("/again", json!({ "again": { "job": 3 }, "due": "2027-02-01", "note": "again" })).await;
    assert_eq!((saved["sheet"]["note"].as_str(), saved["sheet"]["rule"].as_str()), (Some("again"), Some("as_written")));
    let rows: Vec<&Value> = list(&found, "clubs").iter().map(|club| &club["row"]).collect();
    assert_eq!(list(&saved["sheet"], "clubs").iter().collect::<Vec<_>>(), rows);
    // A job at the bench is not built yet, and what is not there is refused.
    for (ask, status) in [
        ("?job=1", StatusCode::UNPROCESSABLE_ENTITY),
        ("?job=99", StatusCode::NOT_FOUND),
        ("?clubs=C999", StatusCode::NOT_FOUND),
        ("", StatusCode::UNPROCESSABLE_ENTITY),
    ] {
        let (answered, said) = bench.send("GET", &format!("/again{ask}"), "application/json", Vec::new()).await;
        assert_eq!(answered, status, "{ask}: {said}");
    }
}

#[tokio::test]
async fn one_club_that_was_lost_matches_itself_or_the_others() {
    let bench = demo().await;
    let set = bench.get("/again?job=3").await;
    let lost = set["clubs"][2]["like"].as_str().expect("a code").to_owned();
    let own = bench.get(&format!("/again?clubs={lost}")).await;
    let line = list(&own["others"], "targets");
    let of = |what: &str| line.iter().find(|target| target["what"] == what).expect("a line")["value"].clone();
    assert_eq!(own["clubs"][0]["row"], set["clubs"][2]["row"], "its own figures");
    let matched = bench.get(&format!("/again?clubs={lost}&as_others=true")).await;
    let row = &matched["clubs"][0]["row"];
    assert_eq!((&row["swing_weight_points"], &row["length_mm"]), (&of("swing_weight"), &of("finished_length")));
    // Half an inch a number: the line of the others finds the length of the one that is lost.
    let (line_mm, own_mm) = (row["length_mm"].as_f64().expect("mm"), own["clubs"][0]["row"]["length_mm"].as_f64());
    assert!((line_mm - own_mm.expect("mm")).abs() < 3.0, "{line_mm} {own_mm:?}");

    let page = bench.page(&format!("/again?club={lost}")).await.text;
    assert!(page.contains("To match the other clubs as they are today") && page.contains("Hesper Wainfleet"));
    assert!(bench.page(&format!("/clubs/{lost}")).await.text.contains(&format!("/again?club={lost}")));
    let sent = bench.form("/again", &[("club", &lost), ("due", "2027-02-01"), ("as_others", "1")]).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
    let sheet = bench.page(&sent.location).await.text;
    assert!(sheet.contains("Hesper Wainfleet") && sheet.contains(&format!("Again: {lost}")), "{sheet}");
    let no_day = bench.form("/again", &[("club", &lost), ("due", "")]).await;
    assert_eq!(no_day.status, StatusCode::UNPROCESSABLE_ENTITY);
}
