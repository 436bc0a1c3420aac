//! Goal: parts chosen by hand are held all or none, a club that cannot be built is told what else would do, and what
//! counts in a plan is the shop's to say. Method: the API, and the shop's page as its form, on a small stock with two
//! heads a number.

use crate::support::answer::detail;
use crate::support::{Bench, job_of, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// The parts of a proposed club, by their codes.
fn codes(club: &Value) -> Vec<String> {
    let parts = club["parts"].as_array().expect("parts");
    parts.iter().map(|p| p["code"].as_str().expect("a code").to_owned()).collect()
}

async fn job(bench: &Bench, written: &str) -> i64 {
    let sheet = sheet(bench, "Nobody Inparticular", written).await;
    job_of(bench, sheet).await
}

async fn state(bench: &Bench, code: &str) -> Value {
    bench.get(&format!("/parts/{code}")).await["state"].clone()
}

#[tokio::test]
async fn picks_are_held_all_or_none() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    assert_eq!(job(&bench, "6-7, D2, 1 wrap").await, 1);
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    let clubs = proposal["plan"]["clubs"].as_array().expect("clubs");
    let (first, second) = (codes(&clubs[0]), codes(&clubs[1]));
    let picks = |clubs: Value| json!({ "clubs": clubs, "by": "Ada" }).to_string();
    let refused = |clubs: Value, status| bench.refused("POST", "/jobs/1/plan/picks", status, picks(clubs));

    // Nothing chosen is nothing to hold: the job must not go to the bench.
    let problem = refused(json!([]), StatusCode::CONFLICT).await;
    assert!(detail(&problem).contains("no parts for 6 and 7"), "{problem}");
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "open");

    // One head for two clubs, a code nobody knows, a club without its grip: none of it holds anything.
    let mut twice = second.clone();
    twice[0].clone_from(&first[0]);
    refused(json!([{ "slot": 1, "codes": first }, { "slot": 2, "codes": twice }]), StatusCode::UNPROCESSABLE_ENTITY)
        .await;
    refused(json!([{ "slot": 1, "codes": ["H-NONE"] }]), StatusCode::NOT_FOUND).await;
    let bare: Vec<&String> = first.iter().filter(|c| !c.starts_with('G')).collect();
    refused(json!([{ "slot": 1, "codes": bare }]), StatusCode::UNPROCESSABLE_ENTITY).await;
    assert_eq!(state(&bench, &first[0]).await, "free");

    // One of the two is enough; the other stays without a plan.
    let plan = bench.made("/jobs/1/plan/picks", json!({ "clubs": [{ "slot": 1, "codes": first }], "by": "Ada" })).await;
    assert_eq!(codes(&plan["clubs"][0]), first);
    assert_eq!(plan["clubs"][1], Value::Null);
    assert_eq!(state(&bench, &first[0]).await, "held");
    assert_eq!(state(&bench, &second[0]).await, "free");
    assert_eq!(bench.get("/jobs/1").await["job"]["state"], "planned");
    // And it is planned now, so the same again is too late.
    refused(json!([{ "slot": 2, "codes": second }]), StatusCode::CONFLICT).await;
}

#[tokio::test]
async fn what_cannot_be_built_is_told_what_else_would_do() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for number in 1..=3 {
        assert_eq!(job(&bench, "7, D2, 1 wrap").await, number);
    }
    let day = bench.made("/match/day", json!({ "seconds": 0.0 })).await;
    let missing: Vec<&Value> = day["jobs"]
        .as_array()
        .expect("jobs")
        .iter()
        .flat_map(|j| j["plan"]["missing"].as_array().expect("a list"))
        .collect();
    assert_eq!(missing.len(), 1, "two heads for three clubs: {missing:?}");
    let instead = missing[0]["instead"].as_array().expect("other parts");
    let words = |code: &str| {
        let found = instead.iter().find(|x| x["code"] == code);
        found.unwrap_or_else(|| panic!("no {code} in {instead:?}"))["fact"]["words"].as_str().expect("words").to_owned()
    };
    // Both sevens are taken, and said to be; of the neighbours the nearer ones are named.
    assert!(words("H70").contains("the 7-iron of job ") && words("H71").contains("the 7-iron of job "));
    assert!(words("H61").contains("the 6's head, 4.0° stronger"), "{}", words("H61"));
    assert!(instead.iter().all(|x| !x["code"].as_str().is_some_and(|c| c.starts_with("H5") || c.starts_with("H9"))));
    // A neighbour 7 g lighter needs several grams more in the tip than the seven itself would.
    let tip = |code: &str| instead.iter().find(|x| x["code"] == code).and_then(|x| x["tip_g"].as_f64()).expect("grams");
    assert!(tip("H61") - tip("H71") >= 4.0, "{instead:?}");
}

/// Two heads, three jobs: API and page say which jobs can be built, whom the heads go to, what to order, and then which job
/// waits for the order; the plain plan is at hand.
#[tokio::test]
async fn a_day_says_which_due_dates_hold() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for number in 1..=3 {
        assert_eq!(job(&bench, "7, D2, 1 wrap").await, number);
    }
    let day = bench.made("/match/day", json!({ "seconds": 0.1 })).await;
    let due = &day["due"];
    assert_eq!((&due["whole"], &due["proven"]), (&json!([1, 2]), &json!(true)), "{due}");
    let order = &due["to_order"][0];
    assert_eq!((&order["kind"], &order["number"], &order["count"]), (&json!("head"), &json!("7"), &json!(1)));
    assert!(order["from_g"].as_f64() < order["to_g"].as_f64() && order["jobs"] == json!([3]), "{order}");
    let page = bench.page("/plan/day").await.text;
    assert!(page.contains("All clubs of jobs 1 and 2 can be built from what is here"), "{page}");
    assert!(page.contains("3 heads Siskin 7 wanted, 2 here") || page.contains("wanted, 2 here"), "{page}");
    assert!(page.contains("/orders/new?model="), "{page}");
    // Once it is on order and expected in time, the job waits for it; whatever comes too late does not help.
    let (model, by) = (order["model"].clone(), order["by_on"].clone());
    let line = json!({ "model": model, "number": "7", "count": 1, "expected_on": by, "supplier": "", "by": "Ada" });
    bench.made("/orders", json!([line])).await;
    let due = bench.made("/match/day", json!({ "seconds": 0.1 })).await["due"].clone();
    // All are due on one day, so that any one of them may be the one that waits.
    let jobs = due["jobs"].as_array().expect("jobs");
    let waiting: Vec<_> = jobs.iter().filter(|job| job["code"] == "planner_due.waits").collect();
    assert_eq!((jobs.len(), waiting.len(), &waiting[0]["waits"][0]["order"]), (3, 1, &json!(1)), "{due}");
    assert!(jobs.iter().all(|job| job["code"] == "planner_due.waits" || job["code"] == "planner_due.here"), "{due}");
    assert_eq!(due["to_order"], json!([]));
    // The plain plan, in each of the ways; what is neither is refused.
    let plain = bench.made("/match/day", json!({ "seconds": 0.1, "which": "in_turn" })).await;
    assert_eq!((&plain["which"], plain["worth"]["in_turn"]["unbuilt"].as_i64()), (&json!("in_turn"), Some(1)));
    assert!(bench.page("/plan/day?which=in_turn").await.text.contains("The plain plan"));
    let odd = json!({ "which": "sideways" }).to_string();
    assert_eq!(bench.refused("POST", "/match/day", StatusCode::UNPROCESSABLE_ENTITY, odd).await["pointer"], "/which");
}

/// The page of a day says how good its plan is; a longer search can be asked for and ended; what is no time is refused.
#[tokio::test]
async fn a_day_is_searched_longer_and_ended_by_hand() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    // Nothing to plan: nothing is searched, and the page says so.
    let none = bench.form("/plan/day/search", &[("seconds", "10")]).await;
    assert!(none.text.contains("No job waits for a plan"), "{}", none.text);
    for _ in 1..=2 {
        job(&bench, "6-9, D2, 1 wrap").await;
    }
    for bad in ["soon", "-1", "1e9", "NaN"] {
        let refused = bench.form("/plan/day/search", &[("seconds", bad)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{bad}");
        assert!(refused.text.contains("is not a number of seconds") || refused.text.contains("0 to 120"), "{bad}");
        assert!(refused.text.contains("Job 1") && refused.text.contains("Job 2"), "the plan is still there");
    }
    // Ending what does not go on does no harm.
    assert_eq!(bench.form("/plan/day/stop", &[]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.form("/plan/day/search", &[("seconds", "60")]).await.status, StatusCode::SEE_OTHER);
    let page = bench.page("/plan/day").await.text;
    if page.contains("action=\"/plan/day/stop\"") {
        assert!(page.contains(" of 60 s") || page.contains(" of 2 s"), "{page}");
    } else {
        assert!(page.contains("Proven"), "{page}");
    }
    bench.form("/plan/day/stop", &[]).await;
    // It ends, and the page says how good what it found is.
    for _ in 0..400 {
        let page = bench.page("/plan/day").await.text;
        if !page.contains("action=\"/plan/day/stop\"") {
            assert!(page.contains("Proven") || page.contains("Search longer"), "{page}");
            return;
        }
        tokio::time::sleep(std::time::Duration::from_millis(25)).await;
    }
    panic!("the search did not end");
}

/// The fields of the shop's form as the page has them.
async fn shop_form(bench: &Bench) -> Vec<(String, String)> {
    let page = bench.page("/shop").await.text;
    let form = page.split_once("action=\"/shop\"").expect("the form").1;
    let form = form.split_once("</form>").expect("its end").0.to_owned();
    let value = |tag: &str, name: &str| {
        tag.split_once(&format!("{name}=\"")).and_then(|(_, r)| r.split_once('"')).map(|(v, _)| v.to_owned())
    };
    form.split("<input")
        .skip(1)
        .filter_map(|tag| {
            let tag = tag.split_once('>')?.0;
            Some((value(tag, "name")?, value(tag, "value").unwrap_or_default()))
        })
        .collect()
}

#[tokio::test]
async fn what_counts_in_a_plan_is_said_in_the_shop() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let mut fields = shop_form(&bench).await;
    let at = fields.iter().position(|(name, _)| name == "plan_weights.tip_per_g").expect("the weight of a gram");
    assert_eq!(fields[at].1, "0.5", "hundredths of a missed club");
    let mut send = async |text: &str| {
        fields[at].1 = text.to_owned();
        let pairs: Vec<(&str, &str)> = fields.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
        bench.form("/shop", &pairs).await
    };
    for wrong in ["-1", "101", "much"] {
        let answer = send(wrong).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
        assert!(answer.text.contains(&format!("value=\"{wrong}\"")), "what was typed stays");
        assert_eq!(bench.get("/shop").await["plan_weights"]["tip_per_g"], json!(0.005), "{wrong}");
    }
    assert_eq!(send("40").await.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.get("/shop").await["plan_weights"]["tip_per_g"], json!(0.4));
    let number = job(&bench, "6-7, D2, 1 wrap").await;
    let plan = bench.made(&format!("/jobs/{number}/plan/propose"), json!({})).await["plan"].clone();
    let in_tip = |plan: &Value| -> f64 {
        let parts = plan["clubs"].as_array().unwrap().iter().flat_map(|club| club["parts"].as_array().unwrap());
        parts.filter(|p| p["kind"] == "tip_weight").map(|p| p["mass_g"].as_f64().unwrap()).sum()
    };
    let dear = in_tip(&plan);
    let mut shop = bench.get("/shop").await;
    shop["plan_weights"]["tip_per_g"] = json!(7.0);
    bench.refused("PUT", "/shop", StatusCode::UNPROCESSABLE_ENTITY, shop.to_string()).await;
    shop["plan_weights"]["tip_per_g"] = json!(0.0);
    assert_eq!(bench.send("PUT", "/shop", "application/json", shop.to_string().into_bytes()).await.0, StatusCode::OK);
    let plan = bench.made(&format!("/jobs/{number}/plan/propose"), json!({})).await["plan"].clone();
    assert!(in_tip(&plan) > dear, "{} g when they cost nothing, {dear} g when they are dear", in_tip(&plan));
}

/// Sixteen clubs and twelve shafts: four clubs lack the same, and are told on one line a job; of the others the parts are named.
#[tokio::test]
async fn the_page_of_the_day_gathers_clubs_that_lack_the_same() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for number in 1..=2 {
        assert_eq!(job(&bench, "4-G, D2, 1 wrap").await, number);
    }
    let page = bench.page("/plan/day").await.text;
    let lacking = page.matches("Other clubs take the last").count();
    assert!((1..=2).contains(&lacking), "{lacking} {page}");
    let named: Vec<&str> =
        page.split("<summary>Parts of ").skip(1).filter_map(|rest| rest.split("</summary>").next()).collect();
    let clubs: usize = named.iter().map(|names| names.replace(" and ", ", ").split(", ").count()).sum();
    assert_eq!(clubs, 12, "{named:?}");
}
