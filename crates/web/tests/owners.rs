//! Goal: a customer's part goes only into that customer's clubs and is stock for nobody else, whatever way it is asked for.
//! Method: a shop whose one free 7 head is a customer's; the API and the pages.

use crate::support::{Bench, job_of, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// All free 7 heads of the shop are customer 1's.
async fn their_heads(bench: &Bench) -> Vec<String> {
    stocked(bench).await;
    bench.made("/customers", json!({ "name": "Ada Fenwick" })).await;
    let heads = bench.get("/parts?kind=head&number=7").await;
    let mut codes = Vec::new();
    for head in heads["parts"].as_array().expect("heads") {
        let code = head["code"].as_str().expect("a code").to_owned();
        let body = json!({ "version": head["version"], "owner": "CU-1", "reason": "brought", "by": "Jay" });
        let (status, kept) =
            bench.send("PATCH", &format!("/parts/{code}"), "application/json", body.to_string().into_bytes()).await;
        assert_eq!((status, kept["owner"].as_i64()), (StatusCode::OK, Some(1)), "{kept}");
        codes.push(code);
    }
    assert!(!codes.is_empty());
    codes
}

async fn job_for(bench: &Bench, customer: Option<i64>) -> i64 {
    let mut set = sheet(bench, "Jem Orrin", "7, D2").await;
    if let Some(number) = customer {
        set["customer"] = json!(number);
    }
    job_of(bench, set).await
}

#[tokio::test]
async fn a_plan_takes_a_customers_head_for_that_customer_alone() {
    let bench = Bench::open().await;
    let heads = their_heads(&bench).await;
    let (nobodys, theirs) = (job_for(&bench, None).await, job_for(&bench, Some(1)).await);

    let plan = bench.made(&format!("/jobs/{nobodys}/plan/propose"), json!({})).await;
    assert_eq!(plan["plan"]["clubs"][0], Value::Null, "{plan}");
    assert!(!plan["plan"]["missing"].to_string().contains(&heads[0]), "not even as what would do: {plan}");
    // By hand it is refused in words.
    let picks = json!({ "clubs": [{ "slot": 1, "codes": [heads[0], "S01", "G01"] }], "by": "Jay" });
    let (status, refused) = bench.post(&format!("/jobs/{nobodys}/plan/picks"), picks).await;
    assert!(status.is_client_error(), "{refused}");
    let held = json!({ "deed": "reserve", "job": nobodys, "slot": 1, "by": "Jay" });
    let (status, refused) = bench.post(&format!("/parts/{}/life", heads[0]), held).await;
    let words = refused["detail"].as_str().unwrap_or_default();
    assert!(status == StatusCode::CONFLICT && words.contains("belongs to CU-1"), "{refused}");

    // The day plans both together: the head goes to the customer's job, the other goes without.
    let day = bench.made("/match/day", json!({ "jobs": [nobodys, theirs], "seconds": 1 })).await;
    let of = |number: i64| {
        day["jobs"].as_array().expect("jobs").iter().find(|j| j["number"] == number).expect("the job")["plan"].clone()
    };
    assert_eq!(of(nobodys)["clubs"][0], Value::Null, "{day}");
    assert!(of(theirs)["clubs"][0].is_object(), "{day}");

    // So does a sheet that is matched by itself.
    let mut set = sheet(&bench, "Jem Orrin", "7, D2").await;
    let alone = bench.made("/match/set", json!({ "sheet": set.clone(), "seconds": 1 })).await;
    assert_eq!(alone["plan"]["clubs"][0], Value::Null, "{alone}");
    let lacks = alone["plan"]["missing"].as_array().expect("what is missing");
    assert!(lacks.iter().all(|lack| lack["kind"] == "head"), "the shop's own parts are there: {alone}");
    set["customer"] = json!(1);
    let own = bench.made("/match/set", json!({ "sheet": set, "seconds": 1 })).await;
    assert!(own["plan"]["clubs"][0].is_object(), "{own}");

    let plan = bench.made(&format!("/jobs/{theirs}/plan/propose"), json!({})).await;
    let accept = json!({ "fingerprint": plan["fingerprint"], "by": "Jay" });
    bench.made(&format!("/jobs/{theirs}/plan"), accept).await;
    let held = bench.get(&format!("/jobs/{theirs}")).await["job"]["clubs"][0]["plan"]["parts"][0]["code"].clone();
    assert!(heads.iter().any(|code| held == code.as_str()), "{held}");

    // Given to somebody else, the job would hold another's part.
    let id = bench.get("/customers/1").await["sheets"][0]["id"].as_str().expect("an id").to_owned();
    let (status, refused) = bench.post(&format!("/sheets/{id}/customer"), json!({ "customer": null })).await;
    assert!(
        status == StatusCode::CONFLICT && refused["detail"].to_string().contains("parts of another customer"),
        "{refused}"
    );
}

#[tokio::test]
async fn what_is_a_customers_is_no_stock_is_listed_and_keeps_them_from_being_deleted() {
    let bench = Bench::open().await;
    let heads = their_heads(&bench).await;
    job_for(&bench, None).await;
    let needs = bench.get("/needs").await;
    let seven = needs.as_array().expect("needs").iter().find(|n| n["kind"] == "head" && n["number"] == "7");
    assert_eq!(seven.map(|n| (n["free"].as_i64(), n["short"].as_i64())), Some((Some(0), Some(1))), "{needs}");
    let sorted = bench.get("/parts/sorted?model=WREN-I&number=7").await;
    assert!(!sorted.to_string().contains(&heads[0]), "{sorted}");

    let listed =
        async |owner: &str| bench.get(&format!("/parts?owner={owner}")).await["total"].as_i64().expect("a total");
    let theirs = i64::try_from(heads.len()).expect("few");
    assert_eq!((listed("CU-1").await, listed("1").await, listed("CU-9").await), (theirs, theirs, 0));
    assert_eq!(listed("shop").await + theirs, bench.get("/parts").await["total"].as_i64().expect("a total"));
    let page = bench.page("/stock?number=7&kind=head").await;
    assert!(page.text.contains("of CU-1"), "{}", page.text);
    assert!(bench.page("/customers/1").await.text.contains(&heads[0]));

    // A list says whose a part is, and what it says comes back.
    let list = "code,kind,model,number,mass_g,owner\nX1,head,WREN-I,7,265.1,CU-1\nX2,head,WREN-I,7,265.2,\nX3,head,WREN-I,7,265.2,Ada\n";
    let (_, kept) = bench.send("POST", "/parts/import", "text/csv", list.into()).await;
    assert_eq!((kept["kept"].as_i64(), kept["bad"][0]["column"].as_str()), (Some(2), Some("owner")), "{kept}");
    let out = bench.page("/api/v1/parts/export?code=X1").await.text;
    assert!(out.lines().nth(1).is_some_and(|line| line.ends_with(",CU-1")), "{out}");
    let unknown =
        json!([{ "code": "X4", "kind": "head", "model": "WREN-I", "number": "7", "mass_g": 265.0, "owner": 9 }]);
    let (status, refused) = bench.post("/parts", unknown).await;
    assert_eq!(status, StatusCode::NOT_FOUND, "{refused}");

    let (status, refused) = bench.post("/customers/1/deletion", json!({ "name": "Ada Fenwick", "by": "Jay" })).await;
    assert!(status == StatusCode::CONFLICT && refused["detail"].to_string().contains("X1"), "{refused}");
    let file = bench.get("/customers/1/export").await;
    assert_eq!(file["parts"].as_array().map(Vec::len), Some(heads.len() + 1));
}
