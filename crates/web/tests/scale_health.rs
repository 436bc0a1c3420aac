//! Goal: scales are checked day by day on pages and through the API with one result; a slip is asked about and not lost;
//! a scale out of control says so at Today and at the bench and widens the forecast instead of stopping the work; the
//! gauge study is gone on with reading by reading. Method: forms as a browser sends them, and a clock that is moved.

use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::{Value, json};

/// Two check weights on the gram scale, entered on the page.
async fn weights(bench: &Bench) {
    for (name, value) in [("200 g weight", "200"), ("500 g weight", "500 g")] {
        let fields = [("name", name), ("scale", "mass"), ("value", value), ("sd", "0.01"), ("tolerance", "0.3")];
        let kept = bench.form("/scales/setup/weight", &fields).await;
        assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    }
}

async fn check(bench: &Bench, typed: &str) -> Value {
    bench.made("/scales/mass/checks", json!({ "typed": typed, "by": "Ada", "confirmed": true })).await
}

/// The shop's check club on the balance scale.
async fn check_club(bench: &Bench) {
    let mut shop = bench.get("/shop").await;
    shop["check_weight"] =
        json!({ "name": "check club", "swing_weight_points": 31.0, "sd_points": 0.05, "mass_g": 410.0 });
    let (status, answer) = bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{answer}");
}

#[tokio::test]
async fn a_scale_is_checked_once_a_day_and_today_says_so() {
    let bench = Bench::open().await;
    let page = bench.page("/scales/mass/check").await;
    assert!(page.text.contains("nothing to be checked with"), "{}", page.text);
    assert!(!bench.page("/").await.text.contains("not checked"), "nothing to check with, nothing to ask for");
    weights(&bench).await;
    let today = bench.page("/").await;
    assert!(today.text.contains("Gram scale: check it before the first reading"), "{}", today.text);
    assert!(today.text.contains(r#"href="/scales/mass/check""#));
    let page = bench.page("/scales/mass/check").await;
    assert!(page.text.contains("200 g weight") && page.text.contains("200.0 g ± 0.3 g"), "{}", page.text);
    let fields = [("standard", "200-g-weight"), ("typed", "200.1"), ("request_key", "k1")];
    let kept = bench.form("/scales/mass/check", &fields).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    // The answer was lost, the tablet sends it again.
    assert_eq!(bench.form("/scales/mass/check", &fields).await.status, StatusCode::SEE_OTHER);
    let page = bench.page("/scales/mass?kept=1").await;
    assert!(page.text.contains("Kept: 200.1 g, 0.1 g too much."), "{}", page.text);
    assert!(page.text.contains("checked today") && page.text.contains("<svg"));
    assert!(!bench.page("/").await.text.contains("check it before the first reading"));
    let health = bench.get("/scales/mass/health").await;
    assert_eq!(health["charts"][0]["points"].as_array().map(Vec::len), Some(1), "once");
    assert_eq!(bench.get("/scales/health").await[1], health);
    // By the next morning it is to be checked again.
    bench.clock.advance(SignedDuration::from_hours(24));
    assert!(bench.page("/").await.text.contains("Gram scale: check it before the first reading"));
}

#[tokio::test]
async fn a_slip_is_asked_about_and_nothing_is_lost() {
    let bench = Bench::open().await;
    weights(&bench).await;
    let fields = [("standard", "200-g-weight"), ("typed", "7.05"), ("request_key", "k1")];
    let asked = bench.form("/scales/mass/check", &fields).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(asked.text.contains("7.05 oz would be right") && asked.text.contains("It was 7.05 oz"), "{}", asked.text);
    assert!(
        asked.text.contains(r#"value="7.05""#) && asked.text.contains(r#"value="k1""#),
        "what was typed is still there"
    );
    assert_eq!(bench.get("/scales/mass/health").await["events"], json!([]));
    let other = bench.form("/scales/mass/check", &[("standard", "200-g-weight"), ("typed", "500.1")]).await;
    assert!(other.text.contains("500 g weight was on it"), "{}", other.text);
    let instead = [fields.as_slice(), &[("instead", "7.05 oz"), ("asked_about", "7.05")]].concat();
    assert_eq!(bench.form("/scales/mass/check", &instead).await.status, StatusCode::SEE_OTHER);
    let taken = [("standard", "200-g-weight"), ("typed", "500.1"), ("other", "500-g-weight"), ("request_key", "k2")];
    assert_eq!(bench.form("/scales/mass/check", &taken).await.status, StatusCode::SEE_OTHER);
    // A new entry after a question is asked about anew, though the button said that the old one was right.
    let new = [("standard", "200-g-weight"), ("typed", "90"), ("asked_about", "7.05"), ("confirmed", "1")];
    assert_eq!(bench.form("/scales/mass/check", &new).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    // Enter presses the first button: what it stands for is not the new entry's.
    let entered = [("standard", "200-g-weight"), ("typed", "200.2"), ("asked_about", "7.05"), ("instead", "7.05 oz")];
    assert_eq!(bench.form("/scales/mass/check", &entered).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.get("/scales/mass/health").await["last_check"]["what"]["typed"], "200.2");
    let as_it_is = [("standard", "200-g-weight"), ("typed", "7.05"), ("asked_about", "7.05"), ("confirmed", "1")];
    assert_eq!(bench.form("/scales/mass/check", &as_it_is).await.status, StatusCode::SEE_OTHER);
    let page = bench.page("/scales/mass").await;
    assert!(page.text.contains("kept as it is") && page.text.contains("not trusted"), "{}", page.text);
    let health = bench.get("/scales/mass/health").await;
    let typed: Vec<&str> =
        health["events"].as_array().expect("events").iter().filter_map(|e| e["what"]["typed"].as_str()).collect();
    assert_eq!(typed, ["7.05", "200.2", "500.1", "7.05 oz"]);
    // The same key for another figure is no repetition.
    let reused = json!({ "typed": "200.2", "by": "Ada", "request_key": "k1" });
    assert_eq!(bench.post("/scales/mass/checks", reused).await.0, StatusCode::CONFLICT);
}

#[tokio::test]
async fn what_no_check_can_be_is_refused_beside_the_field() {
    let bench = Bench::open().await;
    weights(&bench).await;
    for typed in ["-3", "0", "NaN", "inf", "two", "", "1e9", "200 gr", "<b>"] {
        let refused = bench.form("/scales/mass/check", &[("typed", typed)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
        assert!(refused.text.contains("aria-invalid") && !refused.text.contains("<b>"), "{typed}");
        let body = json!({ "typed": typed, "by": "Ada" }).to_string();
        bench.refused("POST", "/scales/mass/checks", StatusCode::UNPROCESSABLE_ENTITY, body).await;
    }
    let late = json!({ "typed": "200", "by": "Ada", "at": "2026-01-01T08:00:00Z" }).to_string();
    bench.refused("POST", "/scales/mass/checks", StatusCode::UNPROCESSABLE_ENTITY, late).await;
    let early = json!({ "typed": "200", "by": "Ada", "at": "2026-03-02T09:00:00Z" }).to_string();
    bench.refused("POST", "/scales/mass/checks", StatusCode::UNPROCESSABLE_ENTITY, early).await;
    let unknown = json!({ "typed": "200", "by": "Ada", "weight": "w" }).to_string();
    bench.refused("POST", "/scales/mass/checks", StatusCode::UNPROCESSABLE_ENTITY, unknown).await;
    bench
        .refused("POST", "/scales/none/checks", StatusCode::NOT_FOUND, json!({ "typed": "1", "by": "A" }).to_string())
        .await;
    assert_eq!(bench.get("/scales/mass/health").await["events"], json!([]));
    for fields in [
        [("name", ""), ("scale", "mass"), ("value", "200"), ("sd", "0.01")],
        [("name", "w"), ("scale", "mass"), ("value", "-200"), ("sd", "0.01")],
        [("name", "w"), ("scale", "mass"), ("value", "200"), ("sd", "NaN")],
        [("name", "w"), ("scale", "mass"), ("value", "200"), ("sd", "-1")],
    ] {
        assert_eq!(
            bench.form("/scales/setup/weight", &fields).await.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{fields:?}"
        );
    }
    assert_eq!(bench.get("/shop").await["standards"].as_array().map(Vec::len), Some(2));
}

#[tokio::test]
async fn a_scale_out_of_tolerance_is_not_trusted_until_somebody_says_why() {
    let bench = Bench::open().await;
    weights(&bench).await;
    check(&bench, "200.1").await;
    bench.clock.advance(SignedDuration::from_hours(24));
    check(&bench, "200.6").await;
    bench.clock.advance(SignedDuration::from_hours(48));
    // Tuesday it was; today is Thursday.
    let words = "The gram scale reads 0.6 g heavy since Tuesday: check it before you rely on it.";
    assert!(bench.page("/").await.text.contains(words));
    bench.made("/models/import", crate::support::models()).await;
    assert!(bench.page("/stock/new?model=WREN-I&number=7").await.text.contains(words), "beside the entry of a part");
    let page = bench.page("/scales/mass").await;
    assert!(page.text.contains(words) && page.text.contains("where 0.3 g is allowed"), "{}", page.text);
    assert!(page.text.contains("Trust it on my word"));
    check(&bench, "200.0").await;
    let page = bench.page("/scales/mass").await;
    assert!(page.text.contains("It passed: trust it again"), "{}", page.text);
    let refused = bench.form("/scales/mass/trust", &[("trusted", "1"), ("reason", " ")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    let done = bench.form("/scales/mass/trust", &[("trusted", "1"), ("reason", "levelled <it>")]).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    let page = bench.page("/scales/mass").await;
    assert!(page.text.contains("trusted again") && page.text.contains("levelled &lt;it&gt;"), "{}", page.text);
    let health = bench.get("/scales/mass/health").await;
    assert_eq!(health["trust"]["trusted"], true);
    assert!(health["events"][0]["what"]["check"].is_string(), "on the check that it passed");
    assert_eq!(
        bench.form("/scales/mass/trust", &[("trusted", "1"), ("reason", "again")]).await.status,
        StatusCode::CONFLICT
    );
    // Taken away by hand, and given back on somebody's word.
    bench.form("/scales/mass/trust", &[("trusted", "0"), ("reason", "it fell down")]).await;
    assert!(bench.page("/").await.text.contains("it fell down"));
    let word = json!({ "trusted": true, "reason": "looked it over", "by": "Ada" });
    let health = bench.made("/scales/mass/trust", word).await;
    assert_eq!((&health["trust"]["trusted"], &health["events"][0]["by"]), (&json!(true), &json!("Ada")));
}

#[tokio::test]
async fn a_check_that_was_wrong_is_taken_back_and_the_trust_comes_back() {
    let bench = Bench::open().await;
    weights(&bench).await;
    let kept = check(&bench, "207.0").await;
    assert_eq!(kept["health"]["trust"]["trusted"], false);
    let id = kept["kept"]["id"].as_str().expect("an identity").to_owned();
    let refused = bench.form("/scales/mass/take-back", &[("check", &id), ("reason", "")]).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    let done = bench.form("/scales/mass/take-back", &[("check", &id), ("reason", "slip of the key")]).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    let health = bench.get("/scales/mass/health").await;
    assert_eq!((&health["trust"]["trusted"], &health["charts"]), (&json!(true), &json!([])));
    assert_eq!(health["events"].as_array().map(Vec::len), Some(4), "check, trust taken, taken back, trusted again");
    let again = json!({ "reason": "twice", "by": "Ada" }).to_string();
    bench.refused("POST", &format!("/scales/mass/checks/{id}/take-back"), StatusCode::CONFLICT, again.clone()).await;
    bench.refused("POST", "/scales/mass/checks/none/take-back", StatusCode::NOT_FOUND, again).await;
}

/// The forecast of the first club: what its swing weight should show, its finish, and the band of that.
async fn forecast(bench: &Bench) -> (f64, f64, f64) {
    let job = bench.get("/jobs/1").await;
    let club = &job["clubs"][0];
    let steps = club["steps"].as_array().expect("steps");
    let ask = steps.iter().flat_map(|s| s["asks"].as_array().expect("asks")).find(|a| a["what"] == "swing_weight");
    let figure = |v: &Value| v.as_f64().unwrap_or_else(|| panic!("a figure: {v}"));
    let finish = &club["finish"];
    (
        figure(&ask.expect("a swing weight")["expected"]["value"]),
        figure(&finish["swing_weight_points"]),
        figure(&finish["band_points"]),
    )
}

#[tokio::test]
async fn the_checks_of_the_day_feed_the_job_and_a_doubtful_scale_widens_it() {
    let bench = Bench::open().await;
    planned(&bench).await;
    check_club(&bench).await;
    let (expected, ..) = forecast(&bench).await;
    let dry = reading(1, "dry", json!([{ "what": "swing_weight", "value": expected }]));
    bench.made("/jobs/1/readings", dry).await;
    let (_, finish, before) = forecast(&bench).await;
    let checked =
        bench.made("/scales/balance/checks", json!({ "typed": "D2.2", "by": "Ada", "confirmed": true })).await;
    assert_eq!(checked["health"]["trust"]["trusted"], false, "1.2 points off");
    assert_eq!(checked["health"]["belief"]["checks"], 1);
    let offset = checked["health"]["belief"]["offset"].as_f64().expect("points");
    assert!((offset - 1.2).abs() < 0.05, "its check says what it is off by: {offset}");
    let (_, after, band) = forecast(&bench).await;
    assert!(band > before, "{band} against {before}: wider, and work goes on");
    // The club showed what was expected on a scale that reads 1.2 heavy, so it is lighter than was thought.
    assert!((finish - after - 1.2).abs() < 0.2, "{finish} became {after}");
    let bench_page = bench.page("/bench/1/1?step=dry").await;
    // The display of these tests has steps of 0.001.
    assert!(bench_page.text.contains("The balance scale reads 1.200 points heavy since today"));
    assert!(bench_page.text.contains(r#"href="/scales/balance/check""#));
    let grid = bench.page("/bench/1/grid/dry").await;
    assert!(grid.text.contains("reads 1.200 points heavy since today"));
    bench.made("/jobs/1/readings", reading(2, "dry", json!([{ "what": "swing_weight", "value": expected }]))).await;
    // A given-up job keeps the record that it had, whatever its scale shows later.
    bench.post("/jobs/1/drop", json!({ "reason": "not wanted", "by": "Ada" })).await;
    let record = bench.get("/jobs/1/record").await;
    bench.clock.advance(SignedDuration::from_mins(30));
    bench.made("/scales/balance/checks", json!({ "typed": "D3.9", "by": "Ada", "confirmed": true })).await;
    assert_eq!(bench.get("/jobs/1/record").await, record);
}

#[tokio::test]
async fn a_check_weight_read_at_the_bench_is_a_check_of_the_day() {
    let bench = Bench::open().await;
    planned(&bench).await;
    check_club(&bench).await;
    assert!(bench.page("/").await.text.contains("Balance scale: check it before the first reading"));
    let kept =
        bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "check_weight", "typed": "D1.1" }]))).await;
    let health = bench.get("/scales/balance/health").await;
    assert_eq!((&health["checked_today"], &health["last_check"]["what"]["typed"]), (&json!(true), &json!("D1.1")));
    assert!(health["last_check"]["what"]["job"].is_string());
    // Read again, it takes the place of the first; taken back, none is left.
    let again =
        bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "check_weight", "typed": "D1" }]))).await;
    let health = bench.get("/scales/balance/health").await;
    assert_eq!(health["charts"][0]["points"].as_array().map(Vec::len), Some(1));
    assert_ne!(kept["readings"][0]["id"], again["readings"][0]["id"]);
    let id = again["readings"][0]["id"].as_str().expect("an identity");
    let back =
        bench.post(&format!("/jobs/1/readings/{id}/take-back"), json!({ "why": "wrong club", "by": "Ada" })).await;
    assert!(back.0.is_success(), "{}", back.1);
    assert_eq!(bench.get("/scales/balance/health").await["checked_today"], false);
}

#[tokio::test]
async fn a_clock_that_was_set_back_is_said_and_loses_nothing() {
    let bench = Bench::open().await;
    weights(&bench).await;
    check(&bench, "200.0").await;
    bench.clock.advance(SignedDuration::from_hours(-30));
    let answer = check(&bench, "200.1").await;
    let words = answer["health"]["clock"]["words"].as_str().expect("said");
    assert!(words.contains("Set this machine's clock right"), "{words}");
    assert_eq!(answer["health"]["charts"][0]["points"].as_array().map(Vec::len), Some(2));
    assert_eq!(answer["health"]["last_check"]["what"]["typed"], "200.1", "the order is that of the entries");
    assert!(bench.page("/scales/mass").await.text.contains("nothing is lost"));
    bench.clock.advance(SignedDuration::from_hours(60));
    assert!(bench.get("/scales/mass/health").await.get("clock").is_none());
}

#[tokio::test]
async fn calibrations_are_kept_and_the_overdue_one_speaks_up() {
    let bench = Bench::open().await;
    weights(&bench).await;
    let bad = [("on", "2026-02-30"), ("by_whom", "Ada")];
    assert_eq!(bench.form("/scales/mass/calibrated", &bad).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    let ahead = [("on", "2026-03-03"), ("by_whom", "Ada")];
    assert!(bench.form("/scales/mass/calibrated", &ahead).await.text.contains("still to come"));
    let back = [("on", "2026-02-01"), ("by_whom", "Ada"), ("next_due", "2026-01-01")];
    assert!(bench.form("/scales/mass/calibrated", &back).await.text.contains("due again"));
    for _ in 0..9 {
        check(&bench, "200.1").await;
    }
    let good = [("on", "2026-02-01"), ("by_whom", "Wexholme"), ("next_due", "2026-03-05"), ("adjusted", "1")];
    assert_eq!(bench.form("/scales/mass/calibrated", &good).await.status, StatusCode::SEE_OTHER);
    let health = bench.get("/scales/mass/health").await;
    assert_eq!((&health["trust"]["trusted"], &health["charts"]), (&json!(true), &json!([])), "adjusted: begun anew");
    bench.clock.advance(SignedDuration::from_hours(24 * 4));
    let today = bench.page("/").await;
    assert!(today.text.contains("its calibration was due on 5 Mar 2026"), "{}", today.text);
    assert!(bench.page("/scales/mass").await.text.contains("overdue"));
    let word = json!({ "trusted": true, "reason": "it is fine", "by": "Ada" }).to_string();
    let problem = bench.refused("POST", "/scales/mass/trust", StatusCode::CONFLICT, word).await;
    assert!(problem["detail"].as_str().is_some_and(|d| d.contains("Enter its new calibration")), "{problem}");
}

#[tokio::test]
async fn another_gauge_is_checked_by_its_name() {
    let bench = Bench::open().await;
    let gauge =
        [("gauge_name", "Frequency gauge"), ("measures", "frequency"), ("display_step", "0.1"), ("noise_sd", "0.3")];
    assert_eq!(bench.form("/scales/setup/gauge", &gauge).await.status, StatusCode::SEE_OTHER);
    let weight =
        [("name", "Steel reed"), ("scale", "frequency-gauge"), ("value", "255 cpm"), ("sd", "0.2"), ("tolerance", "")];
    assert_eq!(bench.form("/scales/setup/weight", &weight).await.status, StatusCode::SEE_OTHER);
    let kept = bench.made("/scales/frequency-gauge/checks", json!({ "typed": "255.4", "by": "Ada" })).await;
    assert_eq!(kept["kept"]["what"]["reading"], 255.4);
    assert!(kept["health"].get("belief").is_none(), "the belief knows nothing of it");
    let page = bench.page("/scales/frequency-gauge").await;
    assert!(page.text.contains("255.4 cpm"), "{}", page.text);
    assert_eq!(bench.form("/scales/setup/remove", &[("gauge", "frequency-gauge")]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.page("/scales/frequency-gauge").await.status, StatusCode::NOT_FOUND);
    assert!(bench.get("/shop").await.get("standards").is_none());
}

#[tokio::test]
async fn a_gauge_study_is_stopped_gone_on_with_and_taken_over() {
    let bench = Bench::open().await;
    let few = [("scale", "mass"), ("trials", "2"), ("builders", "Ada"), ("parts", "1\n2\n3\n4\n5")];
    let refused = bench.form("/scales/studies/new", &few).await;
    assert!(
        refused.text.contains("too few") && refused.text.contains("10, 3 and 3 are recommended"),
        "{}",
        refused.text
    );
    let fields = [
        ("scale", "mass"),
        ("trials", "2"),
        ("builders", "Ada\nJay\n"),
        ("parts", "P1\nP2\nP3\nP4\nP5"),
        ("request_key", "s1"),
    ];
    let begun = bench.form("/scales/studies/new", &fields).await;
    assert_eq!(begun.status, StatusCode::SEE_OTHER, "{}", begun.text);
    bench.form("/scales/studies/new", &fields).await;
    let all = bench.get("/gauge-studies").await;
    assert_eq!(all.as_array().map(Vec::len), Some(1), "begun once");
    let id = all[0]["id"].as_str().expect("an identity").to_owned();
    let order = all[0]["plan"]["order"].as_array().expect("an order").clone();
    assert_eq!(order.len(), 20);
    // True masses two grams apart; a tenth of scatter.
    let value = |at: usize| 250.0 + 2.0 * order[at]["part"].as_f64().expect("a part") + 0.1 * f64::from(at as u32 % 3);
    let path = format!("/scales/studies/{id}");
    for at in 0..10 {
        let page = bench.page(&path).await;
        assert!(page.text.contains(&format!("Reading {} of 20", at + 1)), "{}", page.text);
        let typed = format!("{:.1}", value(at));
        let place = at.to_string();
        let kept = bench.form(&path, &[("place", &place), ("typed", &typed), ("request_key", &format!("r{at}"))]).await;
        assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    }
    assert!(bench.page("/scales").await.text.contains("10 of 20 read"), "it waits");
    // Far from what the part read before: asked, without giving the figure away.
    let asked = bench.form(&path, &[("place", "10"), ("typed", "8.9"), ("request_key", "x")]).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(asked.text.contains("read before"), "{}", asked.text);
    assert!((0..10).all(|at| !asked.text.contains(&format!("{:.1}", value(at)))), "{}", asked.text);
    let other = [("place", "10"), ("typed", "8.8"), ("asked_about", "8.9"), ("confirmed", "1")];
    assert_eq!(
        bench.form(&path, &other).await.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "a new entry is asked about anew"
    );
    for typed in ["-1", "", "NaN", "two"] {
        let refused = bench.form(&path, &[("place", "10"), ("typed", typed)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
    }
    bench
        .refused(
            "POST",
            &format!("/gauge-studies/{id}/readings"),
            StatusCode::NOT_FOUND,
            json!({ "place": 20, "typed": "250", "by": "A" }).to_string(),
        )
        .await;
    // The last one was wrong: read again.
    let page = bench.page(&format!("{path}?place=9")).await;
    assert!(page.text.contains("Reading 10 of 20"));
    bench.form(&path, &[("place", "9"), ("typed", &format!("{:.1}", value(9) + 0.1))]).await;
    for at in 10..20 {
        let body = json!({ "place": at, "typed": format!("{:.1}", value(at)), "by": "Ada" });
        assert_eq!(bench.made(&format!("/gauge-studies/{id}/readings"), body).await["kept"], true);
    }
    let study = bench.get(&format!("/gauge-studies/{id}")).await;
    let (share, classes) = (study["result"]["share_percent"].as_f64(), study["result"]["classes"].as_u64());
    assert!(share.is_some_and(|s| s > 0.5 && s < 10.0) && classes.is_some_and(|c| c > 10), "{}", study["result"]);
    let page = bench.page(&path).await;
    assert!(
        page.text.contains("Of the spread you see") && page.text.contains("by averages and ranges"),
        "{}",
        page.text
    );
    let noise = study["result"]["noise_sd"].as_f64().expect("grams");
    assert_eq!(bench.form(&format!("{path}/take-noise"), &[]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.get("/shop").await["mass_scale"]["noise_sd"].as_f64(), Some(noise));
    let health = bench.get("/scales/mass/health").await;
    assert_eq!(
        (&health["events"][0]["what"]["kind"], health["gauge"]["noise_sd"].as_f64()),
        (&json!("noise_taken"), Some(noise))
    );
    assert_eq!(bench.page("/scales/studies/none").await.status, StatusCode::NOT_FOUND);
}
