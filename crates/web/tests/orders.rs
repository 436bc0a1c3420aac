//! Goal: a job waits in sight for what is ordered for it, what comes leads to the scale, and what cannot be is asked about
//! or refused on the pages as in the API.
//! Method: the eight-club shop without heads for its 7, its clock moved by the test.

use crate::support::{Bench, job_of, sheet, stocked};
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::{Value, json};

/// Job 1 of eight clubs; its 7 has no head: those in stock are put aside.
async fn lacking(bench: &Bench) {
    stocked(bench).await;
    let parts = bench.get("/parts?model=WREN-I&number=7").await;
    for part in parts["parts"].as_array().expect("parts") {
        let path = format!("/parts/{}/life", part["code"].as_str().expect("a code"));
        bench.made(&path, json!({ "deed": "scrap", "reason": "for the test", "by": "Ada" })).await;
    }
    let sheet = sheet(bench, "Nobody Inparticular", "4-G, D2, 1 wrap").await;
    assert_eq!(job_of(bench, sheet).await, 1);
}

async fn waits(bench: &Bench) -> Vec<String> {
    let waits = bench.get("/waits").await;
    let words = |w: &Value| w["words"].as_str().expect("words").to_owned();
    waits
        .as_array()
        .expect("jobs")
        .iter()
        .flat_map(|j| j["waits"].as_array().expect("waits").iter().map(words))
        .collect()
}

#[tokio::test]
async fn a_job_waits_until_what_it_lacks_has_come() {
    let bench = Bench::open().await;
    lacking(&bench).await;
    assert_eq!(waits(&bench).await, ["lacks 1 head Wren iron 7, not ordered"]);
    let wanted = bench.get("/jobs/1/order").await;
    assert_eq!(
        (&wanted[0]["kind"], &wanted[0]["count"], &wanted[0]["clubs"]),
        (&json!("head"), &json!(1), &json!(["7"]))
    );
    // Five days on: 2 March 2026 is a Monday.
    let wish = json!({ "supplier": "Harrowgate Castings", "expected_on": "2026-03-07", "by": "Ada" });
    let placed = bench.made("/jobs/1/order", wish).await;
    assert_eq!((&placed[0]["order"], &placed[0]["open"]), (&json!(1), &json!(1)));
    assert_eq!(waits(&bench).await, ["waits for 1 head Wren iron 7, expected Saturday"]);
    bench.clock.advance(SignedDuration::from_hours(24 * 8));
    assert_eq!(
        waits(&bench).await,
        ["waits for 1 head Wren iron 7, 3 days overdue: they were expected on Saturday 7 Mar"]
    );
    let told = json!({ "expected_on": "2026-03-12", "by": "Ada" });
    bench.made("/orders/1/tell", told).await;
    assert_eq!(waits(&bench).await, ["waits for 1 head Wren iron 7, expected Thursday"]);
    // One that is far too heavy does not do in its place; one that does keeps nobody waiting, as the plan of the day says too.
    let head = |code: &str, mass_g: f64| json!([{ "code": code, "kind": "head", "model": "WREN-I", "number": "7", "mass_g": mass_g }]);
    bench.made("/parts", head("W7-HEAVY", 300.0)).await;
    assert_eq!(waits(&bench).await, ["waits for 1 head Wren iron 7, expected Thursday"]);
    bench.made("/parts", head("W7-DOES", 265.2)).await;
    let day = bench.made("/match/day", json!({ "seconds": 0.1 })).await;
    assert_eq!((&day["due"]["whole"], waits(&bench).await.len()), (&json!([1]), 0), "{day}");
    for code in ["W7-HEAVY", "W7-DOES"] {
        let gone = json!({ "deed": "scrap", "reason": "for the test", "by": "Ada" });
        bench.made(&format!("/parts/{code}/life"), gone).await;
    }
    assert_eq!(waits(&bench).await, ["waits for 1 head Wren iron 7, expected Thursday"]);

    for (body, status, words) in [
        (json!({ "count": 0, "by": "Ada" }), StatusCode::UNPROCESSABLE_ENTITY, "0 is not a number of parts"),
        (json!({ "count": -1, "by": "Ada" }), StatusCode::UNPROCESSABLE_ENTITY, "-1 is not a number of parts"),
        (json!({ "count": 2, "by": "Ada" }), StatusCode::CONFLICT, "2 are more than the 1 of order 1"),
        (json!({ "count": 1, "number": "44", "by": "Ada" }), StatusCode::UNPROCESSABLE_ENTITY, "has no number 44"),
        (json!({ "count": 1, "model": "MARL", "by": "Ada" }), StatusCode::CONFLICT, "MARL is a grip"),
        (json!({ "count": 1, "version": 0, "by": "Ada" }), StatusCode::CONFLICT, "was changed on another screen"),
    ] {
        let problem = bench.refused("POST", "/orders/1/receive", status, body.to_string()).await;
        assert!(problem["detail"].as_str().expect("words").contains(words), "{problem}");
    }
    // Another number came in its place: it is here, and the job lacks its 7 again.
    let came = bench
        .made("/orders/1/receive", json!({ "count": 1, "number": "8", "note": "all they had", "by": "Ada" }))
        .await;
    assert_eq!(
        (&came["number"], &came["order"]["substituted"], &came["order"]["state"]),
        (&json!("8"), &json!(1), &json!("here"))
    );
    assert_eq!(waits(&bench).await, ["lacks 1 head Wren iron 7, not ordered"]);
    bench.made("/jobs/1/order", json!({ "by": "Ada" })).await;
    let second = bench.get("/orders/2").await;
    assert_eq!(second["supplier"], "Harrowgate Castings", "of whom it was ordered last");
    bench.made("/orders/2/receive", json!({ "count": 1, "version": 0, "by": "Ada" })).await;
    let weighed = json!([{ "code": "H7-N", "kind": "head", "model": "WREN-I", "number": "7", "mass_g": 263.0 }]);
    bench.made("/parts", weighed).await;
    assert_eq!(waits(&bench).await, Vec::<String>::new());
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    assert_eq!(proposal["plan"]["missing"], json!([]));
    let page = bench.get("/orders?job=1").await;
    assert_eq!(page["total"], 2);
    let csv = bench.page("/api/v1/orders/export").await;
    assert!(csv.text.contains("1,Harrowgate Castings,head,WREN-I,7,1,") && csv.text.contains(",here,"), "{}", csv.text);
}

#[tokio::test]
async fn two_tablets_book_the_same_delivery_in_once() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    bench.made("/orders", json!([{ "model": "MARL", "count": 20, "by": "Ada" }])).await;
    let body = || json!({ "count": 20, "version": 0, "by": "Ada" });
    let (one, two) = tokio::join!(bench.post("/orders/1/receive", body()), bench.post("/orders/1/receive", body()));
    let statuses = [one.0, two.0];
    assert!(statuses.contains(&StatusCode::OK) && statuses.contains(&StatusCode::CONFLICT), "{one:?} {two:?}");
    assert_eq!(bench.get("/orders/1").await["received"], 20);
}

#[tokio::test]
async fn some_came_the_rest_does_not_and_a_cancelled_order_asks() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let order = json!([{ "model": "MARL", "count": 20, "supplier": "Pennon", "by": "Ada" }]);
    bench.made("/orders", order.clone()).await;
    let came = bench.made("/orders/1/receive", json!({ "count": 12, "by": "Ada" })).await;
    assert_eq!((&came["order"]["state"], &came["order"]["open"]), (&json!("partly_here"), &json!(8)));
    let short = json!({ "short": true, "reason": "sold out", "by": "Ada" });
    let closed = bench.made("/orders/1/close", short.clone()).await;
    assert_eq!((&closed["state"], &closed["open"]), (&json!("short"), &json!(0)));
    let again = bench.refused("POST", "/orders/1/close", StatusCode::CONFLICT, short.to_string()).await;
    assert!(again["detail"].as_str().expect("words").contains("nothing of order 1 is still to come"), "{again}");
    bench.made("/orders", order).await;
    bench.made("/orders/2/close", json!({ "reason": "too dear", "by": "Ada" })).await;
    let asked = bench
        .refused("POST", "/orders/2/receive", StatusCode::CONFLICT, json!({ "count": 3, "by": "Bo" }).to_string())
        .await;
    let words = asked["detail"].as_str().expect("words");
    assert!(words.contains("order 2 was cancelled by Ada (“too dear”)") && words.contains("confirm it"), "{words}");
    let here = bench.made("/orders/2/receive", json!({ "count": 3, "anyway": true, "by": "Bo" })).await;
    assert_eq!(here["order"]["received"], 3);
}

#[tokio::test]
async fn one_result_three_ways() {
    let bench = Bench::open().await;
    lacking(&bench).await;
    let needs = bench.get("/needs").await;
    let seven = needs.as_array().expect("rows").iter().find(|n| n["number"] == "7" && n["kind"] == "head");
    let seven = seven.expect("the 7");
    assert_eq!((&seven["free"], &seven["needed_by_jobs"], &seven["short"]), (&json!(0), &json!(1), &json!(1)));
    let asks = bench.made("/ask", json!({ "job": 1 })).await;
    assert_eq!(asks.as_array().map(Vec::len), Some(8));
    assert!(asks[3]["from_g"].as_f64() < asks[3]["to_g"].as_f64());
    let sorted = bench.get("/parts/sorted?model=WREN-I&number=6&width_g=1").await;
    assert!(sorted["count"].as_u64() > Some(0));
    for (path, words) in [
        ("/parts/sorted?model=WREN-I&width_g=-1", "width_g is −1 g"),
        ("/parts/sorted?model=WREN-I&width_g=1&classes=3", "both given"),
    ] {
        let problem = bench.refused("GET", path, StatusCode::UNPROCESSABLE_ENTITY, "").await;
        assert!(problem["detail"].as_str().expect("words").contains(words), "{problem}");
    }
    let problem = bench.refused("POST", "/ask", StatusCode::UNPROCESSABLE_ENTITY, json!({}).to_string()).await;
    assert!(problem["detail"].as_str().expect("words").contains("no club is asked about"), "{problem}");
}

/// Where an answer leads.
fn leads_to(answer: &crate::support::answer::Answer) -> String {
    answer.location.clone()
}

#[tokio::test]
async fn the_pages_order_wait_and_lead_to_the_scale() {
    let bench = Bench::open().await;
    lacking(&bench).await;
    let today = bench.page("/").await;
    assert!(today.text.contains("lacks") && today.text.contains("1 head Wren iron 7, not ordered"), "{}", today.text);
    let plan = bench.page("/plan/1").await;
    assert!(plan.text.contains("Parts to order") && plan.text.contains("Order these for this job"));
    let ordered = bench.form("/plan/1/order", &[("supplier", "Harrowgate Castings"), ("expected", "2026-03-07")]).await;
    assert_eq!((ordered.status, leads_to(&ordered).as_str()), (StatusCode::SEE_OTHER, "/plan/1"), "{}", ordered.text);
    let sheet = bench.get("/sheets").await[0]["id"].as_str().expect("an id").to_owned();
    for address in ["/", "/plan/1", &format!("/sheets/{sheet}")] {
        let page = bench.page(address).await;
        assert!(page.text.contains("1 head Wren iron 7, expected Saturday"), "{address}: {}", page.text);
    }
    assert!(!bench.page("/plan/1").await.text.contains("Order these for this job"), "it is ordered");
    bench.clock.advance(SignedDuration::from_hours(24 * 6));
    let today = bench.page("/").await;
    assert!(
        today.text.contains("1 day overdue") && today.text.contains("overdue: they were expected yesterday"),
        "{}",
        today.text
    );

    let page = bench.page("/orders/1").await;
    assert!(
        page.text.contains("Parts came") && page.text.contains("Harrowgate Castings") && page.text.contains("job 1")
    );
    let more = bench.form("/orders/1/receive", &[("version", "0"), ("count", "2")]).await;
    assert_eq!(more.status, StatusCode::CONFLICT);
    assert!(
        more.text.contains("2 are more than the 1 of order 1")
            && more.text.contains("They came all the same: book them in"),
        "{}",
        more.text
    );
    for (count, words) in [("", "Enter how many came"), ("-1", "is not a count"), ("some", "is not a count")] {
        let refused = bench.form("/orders/1/receive", &[("version", "0"), ("count", count)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{count}");
        assert!(refused.text.contains(words), "{count}: {}", refused.text);
    }
    let came = bench.form("/orders/1/receive", &[("version", "0"), ("count", "1")]).await;
    assert_eq!(came.status, StatusCode::SEE_OTHER, "{}", came.text);
    assert_eq!(leads_to(&came), "/stock/new?model=WREN-I&number=7&order=1&to_weigh=1");
    let scale = bench.page(&leads_to(&came)).await;
    assert!(scale.text.contains("Order 1 is booked in.") && scale.text.contains("Wren iron"), "{}", scale.text);
    let twice = bench.form("/orders/1/receive", &[("version", "0"), ("count", "1")]).await;
    assert_eq!(twice.status, StatusCode::CONFLICT, "a form sent twice books nothing twice");
    assert_eq!(bench.get("/orders/1").await["received"], 1);
    assert!(bench.page("/orders").await.text.contains("Nothing is on order."));
    assert!(bench.page("/orders?show=all").await.text.contains("all here"));
}

#[tokio::test]
async fn the_other_pages_say_what_is_short_sort_and_ask() {
    let bench = Bench::open().await;
    assert!(bench.page("/stock/needs").await.text.contains("no sheet needs any"));
    assert!(bench.page("/stock/sort").await.text.contains("There are no models yet."));
    assert!(bench.page("/stock/ask").await.text.contains("There are no heads to order yet."));
    assert!(bench.page("/orders/new").await.text.contains("There are no models yet."));
    assert_eq!(bench.page("/orders/9").await.status, StatusCode::NOT_FOUND);
    lacking(&bench).await;
    let needs = bench.page("/stock/needs").await;
    assert!(needs.text.contains("/orders/new?model=WREN-I&amp;number=7&amp;count=1&amp;job=1"), "{}", needs.text);
    let new = bench.page("/orders/new?model=WREN-I&number=7&count=1").await;
    assert!(new.text.contains(r#"value="WREN-I" selected"#) && new.text.contains(r#"value="7""#), "{}", new.text);
    let wrong = bench.form("/orders/new", &[("model", "WREN-I"), ("number", "44"), ("count", "1")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.text.contains("has no number 44") && wrong.text.contains(r#"value="44""#), "{}", wrong.text);
    let placed = bench.form("/orders/new", &[("model", "MARL"), ("count", "12"), ("job", "1"), ("from", "49,5")]).await;
    assert_eq!(leads_to(&placed), "/orders/1", "{}", placed.text);
    assert_eq!(bench.get("/orders/1").await["from_g"], 49.5);
    let told = bench.form("/orders/1/tell", &[("version", "0"), ("supplier", "Pennon"), ("expected", "soon")]).await;
    assert!(told.status == StatusCode::UNPROCESSABLE_ENTITY && told.text.contains("is not a date"), "{}", told.text);
    let told =
        bench.form("/orders/1/tell", &[("version", "0"), ("supplier", "Pennon"), ("expected", "2026-03-09")]).await;
    assert_eq!(told.status, StatusCode::SEE_OTHER);
    let gone = bench.form("/orders/1/close", &[("version", "1"), ("reason", "too dear")]).await;
    assert_eq!(gone.status, StatusCode::SEE_OTHER, "{}", gone.text);
    let page = bench.page("/orders/1").await;
    assert!(
        page.text.contains("Cancelled") && page.text.contains("too dear") && page.text.contains("supplier Pennon"),
        "{}",
        page.text
    );

    let sorted = bench.page("/stock/sort?model=WREN-I&number=6&width=1&columns=4").await;
    assert!(sorted.text.contains("Weight classes") && sorted.text.contains("The tray, row by row"), "{}", sorted.text);
    for code in bench.get("/parts?model=WREN-I&number=6").await["parts"].as_array().expect("parts") {
        let code = code["code"].as_str().expect("a code");
        assert!(sorted.text.matches(code).count() >= 2, "{code} stands in its class and in the tray");
    }
    let refused = bench.page("/stock/sort?model=WREN-I&number=6&width=0").await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    let asked = bench.page("/stock/ask?job=1").await;
    assert!(asked.text.contains("Heads to order by weight") && asked.text.contains("Wren iron 7"), "{}", asked.text);
    let one = "/stock/ask?head=WREN-I&number=7&shaft=SCREE-P&grip=MARL&length=37&swing_weight=D2&mean=262&scatter=2";
    let one = bench.page(one).await;
    assert!(one.status == StatusCode::OK && one.text.contains("as the supplier states"), "{}", one.text);
    let half =
        bench.page("/stock/ask?head=WREN-I&number=7&shaft=SCREE-P&grip=MARL&length=37&swing_weight=D2&mean=262").await;
    assert!(half.text.contains("Enter both the mean and the scatter, or neither"), "{}", half.text);
}
