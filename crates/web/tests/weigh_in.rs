//! Goal: parts are weighed in one by one and kept once, a mass that speaks for something else is asked about, a weigh-in
//! can be taken back, boxes are counted and weighed at use, a scan at the bench puts a part in or says whose it is, and
//! the columns of a list are remembered. Method: the API and the pages as programs and people use them; masses chosen by
//! hand against the models of the support module, whose numbers lie 7 g apart.

use crate::support::answer::detail;
use crate::support::{Bench, head_nominal_g, hidden, planned, reading, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// The 7 is the fourth number: 267 g.
fn seven(mass: &str) -> Value {
    json!({ "model": "WREN-I", "number": "7", "mass": mass, "by": "Ada" })
}

fn with(mut body: Value, more: &Value) -> Value {
    for (name, value) in more.as_object().expect("an object") {
        body[name] = value.clone();
    }
    body
}

async fn heads(bench: &Bench) -> Vec<(String, f64)> {
    let found = bench.get("/parts?model=WREN-I&number=7&state=free").await;
    let part = |p: &Value| (p["code"].as_str().expect("a code").to_owned(), p["mass_g"].as_f64().expect("a mass"));
    found["parts"].as_array().expect("parts").iter().map(part).collect()
}

#[tokio::test]
async fn a_part_is_kept_once_with_the_next_code() {
    assert!((head_nominal_g(3) - 267.0).abs() < 1e-9);
    let bench = Bench::open().await;
    stocked(&bench).await;
    // H70 and H71 are there.
    let kept = bench.made("/parts/weigh-in", with(seven("267.3"), &json!({ "request_key": "k-1" }))).await;
    let part = &kept["kept"]["part"];
    assert_eq!(
        (&part["code"], &part["mass_typed"], &kept["kept"]["next_code"]),
        (&json!("H72"), &json!("267.3"), &json!("H73"))
    );
    // Sent again, by this tablet or another at the same scale.
    let (status, again) = bench.post("/parts/weigh-in", with(seven("267.3"), &json!({ "request_key": "k-1" }))).await;
    assert_eq!((status, &again["kept"]["repeated"]), (StatusCode::OK, &json!(true)), "{again}");
    let (one, two) = tokio::join!(
        bench.post("/parts/weigh-in", with(seven("266.8"), &json!({ "request_key": "k-2" }))),
        bench.post("/parts/weigh-in", with(seven("266.8"), &json!({ "request_key": "k-2" })))
    );
    assert_eq!(one.1["kept"]["part"]["id"], two.1["kept"]["part"]["id"], "{one:?} {two:?}");
    assert_eq!(heads(&bench).await.len(), 4);
    // Two tablets propose the same code: each part gets its own.
    let proposed = json!({ "code": "H74", "code_proposed": true });
    let one = bench.made("/parts/weigh-in", with(seven("267.1"), &proposed)).await;
    let two = bench.made("/parts/weigh-in", with(seven("267.1"), &proposed)).await;
    assert_eq!((&one["kept"]["part"]["code"], &two["kept"]["part"]["code"]), (&json!("H74"), &json!("H75")));
    let (status, taken) = bench.post("/parts/weigh-in", with(seven("267.1"), &json!({ "code": "h74" }))).await;
    assert_eq!(status, StatusCode::CONFLICT, "a code that was typed is meant: {taken}");
}

#[tokio::test]
async fn a_mass_that_speaks_for_another_number_is_asked_and_kept_when_it_is_stood_by() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let (status, asked) = bench.post("/parts/weigh-in", seven("274.2")).await;
    assert_eq!(status, StatusCode::OK);
    let words = asked["questioned"]["words"].as_str().expect("words");
    assert!(words.starts_with("274.2 g: it looks like the next number, 8: 8-iron heads are "), "{words}");
    assert_eq!(heads(&bench).await.len(), 2, "nothing is kept");
    // Another mass than the one that was asked about is asked about again.
    let (_, asked) = bench.post("/parts/weigh-in", with(seven("273.9"), &json!({ "sure": "274.2" }))).await;
    assert!(asked.get("questioned").is_some(), "{asked}");
    let kept = bench.made("/parts/weigh-in", with(seven("274.2"), &json!({ "sure": "274.2" }))).await;
    assert_eq!(kept["kept"]["part"]["number"], "7");
    let judged = bench.post("/parts/judge", json!({ "model": "WREN-I", "number": "7", "mass_g": 345.0 })).await;
    assert_eq!((judged.0, &judged.1["questioned"]), (StatusCode::OK, &json!(true)));
    // A head that the maker lets nobody bend so far is kept, and told.
    let low = with(seven("266.9"), &json!({ "lie": "58.0" }));
    let kept = bench.made("/parts/weigh-in", low).await;
    assert!(
        kept["kept"]["judged"]["bend"][0]["words"]
            .as_str()
            .is_some_and(|w| w.contains("it can be bent to 56.0° to 60.0° only")),
        "{kept}"
    );
}

#[tokio::test]
async fn what_cannot_be_is_refused_by_name_and_nothing_kept() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    for (body, status, words) in [
        (seven("26.7"), 422, "26.7 g cannot be the mass of a head"),
        (seven("0"), 422, "cannot be the mass of a head"),
        (seven("-267"), 422, "mass_g “-267”"),
        (seven("NaN"), 422, "mass_g “NaN”"),
        (seven(""), 422, "a head in the shop is weighed"),
        (with(seven("267"), &json!({ "number": "77" })), 422, "the model has no such number"),
        (with(seven("267"), &json!({ "model": "NONE" })), 404, "NONE"),
        (with(seven("267"), &json!({ "request_key": "a b" })), 422, "cannot be a request key"),
        (with(seven("267"), &json!({ "lie": "600" })), 422, "cannot be the lie of a head"),
        (json!({ "model": "MARL" }), 422, "neither a mass nor a count"),
        (json!({ "model": "MARL", "count": "1.5" }), 422, "count “1.5”"),
        (with(seven("267"), &json!({ "colour": "red" })), 422, "colour"),
    ] {
        let (found, answer) = bench.post("/parts/weigh-in", body.clone()).await;
        assert_eq!(found.as_u16(), status, "{body}: {answer}");
        assert!(detail(&answer).contains(words), "{body}: {answer}");
    }
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn a_weigh_in_is_taken_back_once_and_its_code_is_free_again() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let kept = bench.made("/parts/weigh-in", seven("267.3")).await;
    let (code, id) = (&kept["kept"]["part"]["code"], &kept["kept"]["part"]["id"]);
    let take_back = json!({ "code": code, "id": id, "by": "Ada" });
    for _ in 0..2 {
        assert_eq!(bench.post("/parts/take-back", take_back.clone()).await.0, StatusCode::NO_CONTENT);
    }
    let aside = bench.get("/parts/H72.back1").await;
    assert_eq!((&aside["id"], &aside["state"], &aside["mass_g"]), (id, &json!("rejected"), &json!(267.3)));
    let again = bench.made("/parts/weigh-in", seven("267.4")).await;
    assert_eq!(&again["kept"]["part"]["code"], code);
    // A head that a club holds is not taken back.
    let head = bench.get("/jobs/1").await["job"]["clubs"][3]["plan"]["parts"][0].clone();
    let (status, refused) =
        bench.post("/parts/take-back", json!({ "code": head["code"], "id": head["part"], "by": "Ada" })).await;
    assert_eq!(status, StatusCode::CONFLICT);
    assert!(detail(&refused).contains("changed or planned since"), "{refused}");
}

#[tokio::test]
async fn the_page_weighs_without_script() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let start = bench.page("/stock/new?model=WREN-I").await;
    start.says(StatusCode::OK, &["Which number?", "number=7"]);
    let page = bench.page("/stock/new?model=WREN-I&number=7").await;
    page.says(StatusCode::OK, &["value=\"H72\"", "maker 267.0 g", "data-weigh"]);
    assert_eq!(page.text.matches("<circle").count(), 4, "two heads, on two papers");
    let fields =
        [("model", "WREN-I"), ("number", "7"), ("mass", "267,3"), ("code", "H72"), ("proposed", "H72"), ("lot", "L9")];
    let kept = bench.form("/stock/new", &fields).await;
    assert_eq!(
        (kept.status, kept.location.as_str()),
        (StatusCode::SEE_OTHER, "/stock/new?model=WREN-I&number=7&lot=L9&kept=H72")
    );
    let next = bench.page(&kept.location).await;
    next.says(StatusCode::OK, &["data-weigh-code=\"H72\"", "267.3 g", "value=\"H73\"", "Print its label"]);
    assert!(!next.text.contains("data-weigh-label"), "labels are printed where the shop wants it only");
    let on = [("print_labels", "1"), ("model", "WREN-I"), ("number", "7"), ("lot", "L9")];
    let on = bench.form("/stock/new/settings", &on).await;
    // The model and the number that are being weighed stay.
    assert_eq!((on.status, on.location.as_str()), (StatusCode::SEE_OTHER, "/stock/new?model=WREN-I&number=7&lot=L9"));
    let printed = bench.page(&kept.location).await;
    assert_eq!(printed.text.matches("data-weigh-label=\"H72\"").count(), 1);
    assert_eq!(printed.text.matches("class=\"part-label\"").count(), 1);
    let odd = [("model", "WREN-I"), ("number", "7"), ("mass", "274.2"), ("code", "H73"), ("proposed", "H73")];
    let asked = bench.form("/stock/new", &odd).await;
    asked.says(StatusCode::UNPROCESSABLE_ENTITY, &["274.2 ?", "It is the 8", "Keep it as it is", "value=\"274.2\""]);
    // What Enter sends is asked once more: only the button that says so keeps it as it is.
    assert!(!asked.text.contains("type=\"hidden\" name=\"sure\""), "{}", asked.text);
    assert!(asked.text.contains("name=\"sure\" value=\"274.2\""), "{}", asked.text);
    let again = bench.form("/stock/new", &odd).await;
    again.says(StatusCode::UNPROCESSABLE_ENTITY, &["274.2 ?", "Keep it as it is"]);
    let other = bench.form("/stock/new", &[&odd[..], &[("as", "8")]].concat()).await;
    assert_eq!(other.location, "/stock/new?model=WREN-I&number=7&kept=H82");
    bench
        .form("/stock/new", &[("model", "WREN-I"), ("mass", "267")])
        .await
        .says(StatusCode::UNPROCESSABLE_ENTITY, &["Choose the number first"]);
}

/// Grips in a box: counted when they come, one weighed when it is used.
#[tokio::test]
async fn a_box_is_counted_now_and_weighed_at_use() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let kept =
        bench.form("/stock/new", &[("model", "MARL"), ("count", "20"), ("code", "BOX-1"), ("proposed", "")]).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let scan = |code: &str| json!({ "code": code, "step": "weighed", "by": "Ada" });
    let put = bench.post("/jobs/1/clubs/1/scan", scan("box-1")).await.1;
    assert_eq!((&put["part"]["put_in"], &put["part"]["part"]["count"]), (&json!(true), &json!(19)), "{put}");
    let grip = |job: &Value| {
        let parts = job["job"]["clubs"][0]["plan"]["parts"].as_array().expect("parts").clone();
        parts.into_iter().find(|p| p["kind"] == "grip").expect("a grip")
    };
    let job = bench.get("/jobs/1").await;
    assert_eq!(
        (&grip(&job)["code"], &grip(&job)["mass_g"], &grip(&job)["weighed"]),
        (&json!("BOX-1"), &json!(50.0), &json!(false))
    );
    let band = |job: &Value| job["clubs"][0]["finish"]["band_points"].as_f64().expect("a band");
    let again = bench.post("/jobs/1/clubs/1/scan", scan("BOX-1")).await.1;
    assert_eq!((&again["part"]["is"]["is"], &again["part"]["put_in"]), (&json!("already"), &json!(false)), "{again}");
    assert_eq!(bench.get("/parts/BOX-1").await["count"], 19, "one piece, not two");
    let weighed = json!([{ "what": "grip_mass", "typed": "51.3" }]);
    let kept = bench.made("/jobs/1/readings", reading(1, "weighed", weighed)).await;
    assert_ne!(kept["meaning"]["tone"], "doubt", "{kept}");
    let after = bench.get("/jobs/1").await;
    assert!(band(&after) < band(&job), "weighed, it is known better: {} and {}", band(&after), band(&job));
}

#[tokio::test]
async fn a_scan_at_the_bench_says_whose_a_part_is() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let job = bench.get("/jobs/1").await;
    let head =
        |slot: usize| job["job"]["clubs"][slot - 1]["plan"]["parts"][0]["code"].as_str().expect("a code").to_owned();
    let scan = async |slot: i64, step: &str, code: &str| {
        let body = json!({ "code": code, "step": step, "by": "Ada" });
        bench.post(&format!("/jobs/1/clubs/{slot}/scan"), body).await.1["part"].clone()
    };
    let other = scan(1, "dry", &head(2)).await;
    assert_eq!((&other["is"]["is"], &other["is"]["slot"]), (&json!("other_club"), &json!(2)), "{other}");
    assert!(other["words"].as_str().is_some_and(|w| w.ends_with("belongs to the 5-iron of job 1.")), "{other}");
    assert_eq!(scan(1, "dry", &head(1)).await["is"]["is"], "already");
    // The other head of the number is free; at the step for tip weights it has no place.
    let free = bench.get("/parts?model=WREN-I&number=4&state=free").await["parts"][0]["code"]
        .as_str()
        .expect("a code")
        .to_owned();
    let wrong = scan(1, "tip", &free).await;
    assert_eq!(wrong["is"], json!({ "is": "other_step", "takes": ["tip_weight"] }));
    let five = bench.get("/parts?model=WREN-I&number=5&state=free").await["parts"][0]["code"]
        .as_str()
        .expect("a code")
        .to_owned();
    let odd = scan(1, "dry", &five).await;
    assert_eq!(odd["is"], json!({ "is": "does_not_fit", "wants": "WREN-I 4" }), "{odd}");
    // A reading with the planned head stands: it is asked first, and nothing is taken back.
    let dry =
        job["clubs"][0]["steps"].as_array().expect("steps").iter().find(|s| s["key"] == "dry").expect("dry")["asks"][0]
            ["expected"]["value"]
            .clone();
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": dry }]))).await;
    let asked = scan(1, "dry", &free).await;
    assert_eq!((&asked["is"], &asked["put_in"]), (&json!({ "is": "takes", "readings": 1 }), &json!(false)), "{asked}");
    let page = bench.form("/bench/1/1/scan", &[("code", free.as_str()), ("step", "dry")]).await;
    assert_eq!(page.location, format!("/bench/1/1?step=dry&scanned={free}"));
    bench.page(&page.location).await.says(StatusCode::OK, &["Put it in", "takes back the reading"]);
    let put = bench.form("/bench/1/1/scan", &[("code", free.as_str()), ("step", "dry"), ("sure", "1")]).await;
    bench.page(&put.location).await.says(StatusCode::OK, &["is the head of this 4-iron now"]);
    let missing = bench.form("/bench/1/1/scan", &[("code", "no-such"), ("step", "dry")]).await;
    bench.page(&missing.location).await.says(StatusCode::OK, &["no-such", "Scan the code again"]);
    // The card of another club leads there.
    let card = job["job"]["clubs"][4]["card"].as_str().expect("a card");
    assert_eq!(bench.form("/bench/1/1/scan", &[("code", card), ("step", "dry")]).await.location, "/bench/1/5");
}

#[tokio::test]
async fn the_columns_of_a_list_are_remembered_by_name() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let looked = bench.fields("/stock/import", &[("text", "Sticker,Club head,Heft\nQ-1,7,9.41\n")]).await;
    let held = hidden(&looked.text, "held").to_owned();
    let fields = [
        ("held", held.as_str()),
        ("header_line", "1"),
        ("header_line_was", "1"),
        ("all_model", "WREN-I"),
        ("heading_0", "Sticker"),
        ("means_0", "code"),
        ("heading_1", "Club head"),
        ("means_1", "number"),
        ("heading_2", "Heft"),
        ("means_2", "mass"),
        ("unit_2", "oz"),
        ("remember", " Moorland list "),
    ];
    let kept = bench.fields("/stock/import/keep", &fields).await;
    kept.says(StatusCode::OK, &["1 part kept", "remembered as", "Moorland list"]);
    // The next list of that supplier: other capitals, another order.
    let next = "heft,STICKER,Club  head\n9.44,Q-2,7\n9.70,Q-3,8\n";
    let known = bench.fields("/stock/import", &[("text", next)]).await;
    known.says(StatusCode::OK, &["This is a list like “Moorland list”", "Keep 2 parts", "value=\"Moorland list\""]);
    for chosen in
        ["value=\"mass\" selected", "value=\"code\" selected", "value=\"number\" selected", "value=\"oz\" selected"]
    {
        assert!(known.text.contains(chosen), "{chosen} is chosen for its column: {}", known.text);
    }
    // With one column more it is another list.
    let other = bench.fields("/stock/import", &[("text", "heft,sticker,club head,colour\n9.44,Q-2,7,red\n")]).await;
    assert!(!other.text.contains("This is a list like"), "{}", other.text);
    let (status, kept) =
        bench.send("POST", "/parts/import?layout=moorland%20list", "text/csv", next.as_bytes().to_vec()).await;
    assert_eq!((status, &kept["kept"]), (StatusCode::OK, &json!(2)), "{kept}");
    // 9.44 oz at 28.349523125 g.
    assert!((bench.get("/parts/Q-2").await["mass_g"].as_f64().expect("a mass") - 267.619_498_3).abs() < 1e-9);
    let layouts = bench.get("/layouts").await;
    assert_eq!(
        (&layouts[0]["name"], &layouts[0]["headings"]),
        (&json!("Moorland list"), &json!(["Sticker", "Club head", "Heft"]))
    );
    let (status, refused) = bench.post("/layouts", json!({ "name": " ", "headings": ["a"], "mapping": {} })).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{refused}");
    bench.page("/stock/import").await.says(StatusCode::OK, &["Remembered columns", "Moorland list"]);
    let gone = bench.form("/stock/import/forget", &[("name", "Moorland list")]).await;
    assert_eq!(gone.status, StatusCode::SEE_OTHER);
    assert_eq!(bench.get("/layouts").await, json!([]));
}

/// Whoever sends a list hears how far it has come, under the key that was sent with it.
#[tokio::test]
async fn a_long_list_tells_how_far_it_has_come() {
    let folder = tempfile::tempdir().expect("a folder");
    let bench = Bench::open_in(folder.path()).await;
    stocked(&bench).await;
    // A second program on the same shop, as the page's own would be, whose progress can be heard here.
    let url = format!("sqlite:{}", folder.path().join("shop.db").display());
    let app = app::App::open(&url, bench.clock.clone()).await.expect("the same shop");
    let mut bench = bench;
    bench.router = web::router(app.clone(), web::ServerNames::default());
    let mut heard = app.hear_imports();
    let rows: String = (0..1000).map(|i| format!("L{i},WREN-I,7,267.{}\n", i % 10)).collect();
    let text = format!("code,model,number,mass_g\n{rows}");
    let looked = bench.fields("/stock/import", &[("text", &text)]).await;
    let held = hidden(&looked.text, "held").to_owned();
    let fields = [
        ("held", held.as_str()),
        ("header_line", "1"),
        ("header_line_was", "1"),
        ("request_key", "my-list"),
        ("heading_0", "code"),
        ("means_0", "code"),
        ("heading_1", "model"),
        ("means_1", "model"),
        ("heading_2", "number"),
        ("means_2", "number"),
        ("heading_3", "mass_g"),
        ("means_3", "mass"),
    ];
    bench.fields("/stock/import/keep", &fields).await.says(StatusCode::OK, &["1000 parts kept"]);
    let mut told = Vec::new();
    while let Ok(how) = heard.try_recv() {
        assert_eq!((how.key.as_str(), how.all), ("my-list", 1000));
        told.push(how.done);
    }
    assert_eq!(told, [0, 400, 800, 1000]);
}
