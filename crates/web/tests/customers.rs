//! Goal: a customer is kept, given their sheets, found from one field, exported whole and deleted on request, after which no
//! page, list, search or file of the shop says the name, while every reading stays. Method: the API and the pages.

use crate::support::{Bench, job_of, planned, reading, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

async fn ada(bench: &Bench) -> Value {
    bench
        .made(
            "/customers",
            json!({ "name": "Ada Fenwick", "hand": "right", "phone": "555 0117", "glove": "ML",
                "grip_diameter_mm": 23.1, "wraps": { "base": 1, "full": 3, "lower_hand": 1 } }),
        )
        .await
}

#[tokio::test]
async fn a_sheet_follows_its_customer() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let kept = ada(&bench).await;
    assert_eq!((kept["number"].as_i64(), kept["code"].as_str()), (Some(1), Some("CU-1")));
    // The name comes from the customer, whatever the sheet says.
    let mut set = sheet(&bench, "somebody", "6-7, D2").await;
    set["customer"] = json!(1);
    let number = job_of(&bench, set.clone()).await;
    assert_eq!(bench.get(&format!("/jobs/{number}")).await["job"]["sheet"]["player"], "Ada Fenwick");
    // A new name goes onto sheets, jobs and records.
    let mut changed = kept["customer"].clone();
    changed["name"] = json!("Ada Marsh");
    let body = json!({ "version": kept["version"], "customer": changed });
    let (status, answer) = bench.send("PUT", "/customers/1", "application/json", body.to_string().into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{answer}");
    assert_eq!(bench.get("/jobs").await[0]["player"], "Ada Marsh");
    assert_eq!(answer["jobs"][0]["number"], number);
    let (status, stale) = bench.send("PUT", "/customers/1", "application/json", body.to_string().into_bytes()).await;
    assert_eq!((status, stale["code"].as_str()), (StatusCode::CONFLICT, Some("store.stale")), "{stale}");
    // A customer that is not there is no customer.
    set["customer"] = json!(9);
    let (status, answer) = bench.post("/sheets", set).await;
    assert_eq!(status, StatusCode::NOT_FOUND, "{answer}");
}

#[tokio::test]
async fn tape_that_a_customer_likes_holds_where_the_sheet_says_none() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    ada(&bench).await;
    let short = |written: &str| {
        json!({ "written": written, "rule": "as_written", "customer": 1,
            "models": { "heads": ["WREN-I"], "shafts": [{ "model": "SCREE-P" }], "grips": [{ "model": "MARL" }] } })
    };
    let wraps = async |written: &str| bench.made("/sheets/expand", short(written)).await[0]["club"]["wraps"].clone();
    assert_eq!(wraps("7, D2").await, json!({ "base": 1, "full": 3, "lower_hand": 1 }));
    assert_eq!(wraps("7, D2, 2 wraps").await["full"], 2, "what is written counts");
    // The page begins with hand and name, and knows whose it is by the name.
    let page = bench.page("/sheets/new?customer=ada%20fenwick").await;
    assert!(
        page.text.contains("value=\"Ada Fenwick\"") && page.text.contains("name=\"customer\" value=\"1\""),
        "{}",
        page.text
    );
    let fields = [
        ("player", "ADA fenwick"),
        ("due", "2026-04-01"),
        ("hand", "right"),
        ("written", "7, D2"),
        ("rule", "as_written"),
        ("head", "WREN-I"),
        ("shaft", "SCREE-P"),
        ("grip", "MARL"),
        ("do", "save"),
    ];
    let saved = bench.form("/sheets/new", &fields).await;
    let sheet = bench.get(&saved.location).await["sheet"].clone();
    assert_eq!((sheet["customer"].as_i64(), sheet["player"].as_str()), (Some(1), Some("Ada Fenwick")));
    assert_eq!(sheet["clubs"][0]["wraps"]["full"], 3);
    // Two of one name: the page asks which.
    ada(&bench).await;
    let which = bench.form("/sheets/new", &fields).await;
    assert_eq!(which.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(which.text.contains("CU-1 and CU-2"), "{}", which.text);
    let by_code: Vec<_> = fields.iter().map(|(k, v)| (*k, if *k == "player" { "cu-2" } else { v })).collect();
    let saved = bench.form("/sheets/new", &by_code).await;
    assert_eq!(bench.get(&saved.location).await["sheet"]["customer"], 2);
}

#[tokio::test]
async fn names_of_before_are_offered_and_taken_by_one_touch() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for player in ["Ada Fenwick", "ada  fenwick", "Jem Orrin"] {
        let set = sheet(&bench, player, "7, D2").await;
        bench.made("/sheets", set).await;
    }
    let names = bench.get("/customers/names").await;
    assert_eq!(names.as_array().map(Vec::len), Some(2), "{names}");
    let page = bench.page("/customers").await;
    assert!(page.text.contains("2 sheets") && page.text.contains("Make a customer"), "{}", page.text);
    let taken = bench.form("/customers/names", &[("name", "Ada Fenwick"), ("customer", "")]).await;
    assert_eq!(taken.location, "/customers/1");
    let view = bench.get("/customers/1").await;
    assert_eq!(view["sheets"].as_array().map(Vec::len), Some(2));
    assert_eq!(view["customer"]["hand"], "right", "as their sheets say");
    assert_eq!(bench.get("/customers/names").await.as_array().map(Vec::len), Some(1));
    // One sheet is given to nobody again.
    let id = view["sheets"][0]["id"].as_str().expect("an id");
    let (status, free) = bench.post(&format!("/sheets/{id}/customer"), json!({ "customer": null, "by": "Jay" })).await;
    assert_eq!((status, &free["sheet"]["customer"]), (StatusCode::OK, &Value::Null), "{free}");
    let (status, none) = bench.post("/customers/names", json!({ "name": "Nobody At All" })).await;
    assert_eq!(status, StatusCode::NOT_FOUND, "{none}");
}

#[tokio::test]
async fn one_field_finds_names_jobs_codes_lots_and_orders() {
    let bench = Bench::open().await;
    planned(&bench).await;
    ada(&bench).await;
    let find = async |text: &str| {
        let address = format!("/find?text={}", text.replace(' ', "%20").replace('#', "%23"));
        bench.get(&address).await
    };
    assert_eq!(find("fenwick").await, json!([{ "customer": { "number": 1, "name": "Ada Fenwick" } }]));
    assert_eq!(find("CU-1").await, json!([{ "customer": { "number": 1, "name": "Ada Fenwick" } }]));
    let job = json!([{ "job": { "number": 1, "player": "Nobody Inparticular", "state": "planned" } }]);
    assert_eq!(find("job 1").await, job);
    assert_eq!(find("Job #1").await, job);
    assert_eq!(find("inparticular").await, job, "a name that belongs to no customer");
    let any = find("1").await;
    assert!(any[0]["job"].is_object() && any[1]["customer"].is_object(), "{any}");
    let card = bench.get("/jobs/1").await["job"]["clubs"][3]["card"].as_str().expect("a card").to_owned();
    assert_eq!(find(&card).await, json!([{ "club": { "job": 1, "slot": 4 } }]));
    let part = bench.get("/parts?limit=1").await["parts"][0].clone();
    let code = part["code"].as_str().expect("a code");
    assert_eq!(find(code).await, json!([{ "part": { "code": code, "kind": part["kind"] } }]));
    let model = find("wren-i").await;
    assert_eq!(model[0]["model"]["name"], "Wren iron", "{model}");
    assert!(model[1]["parts"]["count"].as_i64().is_some_and(|n| n > 7), "{model}");
    assert_eq!(find("order 5").await, json!([]));
    assert_eq!(find("100%").await, json!([]));
    // The field of Today leads there.
    assert_eq!(bench.page("/scan?code=job%201").await.location, "/bench/1");
    assert_eq!(bench.page("/scan?code=Ada%20Fenwick").await.location, "/customers/1");
    let several = bench.page("/scan?code=1").await;
    assert!(
        several.status == StatusCode::OK && several.text.contains("/customers/1") && several.text.contains("/bench/1")
    );
    let nothing = bench.page("/scan?code=qqq").await;
    assert!(nothing.status == StatusCode::NOT_FOUND && nothing.text.contains("Nothing fits “qqq”"), "{}", nothing.text);
}

#[tokio::test]
async fn a_deleted_customer_is_named_nowhere_and_the_readings_stay() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    planned(&bench).await;
    let taken = json!({ "name": "Nobody Inparticular", "by": "Jay" });
    let (status, view) = bench.post("/customers/names", taken).await;
    assert_eq!(status, StatusCode::OK, "{view}");
    let mut set = sheet(&bench, "", "7, D2").await;
    (set["customer"], set["note"]) = (json!(1), json!("Inparticular has a bad wrist"));
    bench.made("/sheets", set).await;
    let head = bench.get("/jobs/1").await["job"]["clubs"][0]["plan"]["parts"][0]["mass_g"].clone();
    bench.made("/jobs/1/readings", reading(1, "received", json!([{ "what": "head_mass", "value": head }]))).await;

    // All that is held is one document.
    let file = bench.get("/customers/1/export").await;
    assert_eq!(file["customer"]["name"], "Nobody Inparticular");
    assert_eq!(file["sheets"].as_array().map(Vec::len), Some(2));
    assert_eq!(file["jobs"][0]["record"]["clubs"][0]["readings"][0]["reading"]["value"], head);

    // A job under way stands against it, on the page as well.
    let ask = json!({ "name": "Nobody Inparticular", "by": "Jay" });
    let (status, refused) = bench.post("/customers/1/deletion", ask.clone()).await;
    assert_eq!(status, StatusCode::CONFLICT, "{refused}");
    assert!(bench.page("/customers/1/delete").await.text.contains("Job 1 is under way"));
    bench.app.drop_job(1, "does not want them any more", "Jay").await.expect("dropped");

    // The page says what goes and what stays; another name deletes nobody.
    let page = bench.page("/customers/1/delete").await;
    for words in
        ["1 sheet of which no job was made", "CU-1 stands there", "parts, lots, masses, readings", "Copies of the shop"]
    {
        assert!(page.text.contains(words), "{words}: {}", page.text);
    }
    let other = bench.form("/customers/1/delete", &[("name", "Nobody Else")]).await;
    assert_eq!(other.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(bench.page("/customers/1").await.status == StatusCode::OK);

    let done = bench.form("/customers/1/delete", &[("name", "nobody  inparticular")]).await;
    assert!(done.status == StatusCode::OK && done.text.contains("CU-1 stands where the name stood"), "{}", done.text);
    for address in [
        "/",
        "/customers",
        "/sheets",
        "/records",
        "/records/1",
        "/plan/1",
        "/bench",
        "/scan?code=inparticular",
        "/glue",
        "/api/v1/jobs/1",
        "/api/v1/jobs/1/record",
        "/api/v1/jobs?state=dropped",
        "/api/v1/sheets",
        "/api/v1/customers",
        "/api/v1/customers/1",
        "/api/v1/find?text=inparticular",
        "/customers/1",
    ] {
        let answer = bench.page(address).await;
        let echoed = address.contains("inparticular");
        let text = answer.text.to_lowercase();
        assert!(echoed || !text.contains("inparticular"), "{address}: {text}");
        assert!(!text.contains("wrist"), "{address}: {text}");
    }
    assert_eq!(bench.get("/find?text=inparticular").await, json!([]));
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["player"], "CU-1");
    assert_eq!(record["clubs"][0]["readings"][0]["reading"]["value"], head, "what was read stays");
    let (status, gone) = bench.send("GET", "/customers/1", "application/json", vec![]).await;
    assert_eq!(status, StatusCode::NOT_FOUND);
    assert!(gone["detail"].as_str().is_some_and(|d| d.contains("was deleted on")), "{gone}");
    assert_eq!(ada(&bench).await["number"], 2, "the number is never given again");

    // Not in the file either, nor in the log beside it.
    for name in ["shop.db", "shop.db-wal"] {
        let bytes = std::fs::read(folder.path().join(name)).unwrap_or_default();
        let holds = |text: &[u8]| bytes.windows(text.len()).any(|some| some == text);
        assert!(!holds(b"Inparticular") && !holds(b"inparticular"), "{name} still holds the name");
    }
}
