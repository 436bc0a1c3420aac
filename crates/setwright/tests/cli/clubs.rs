//! Clubs that live on, jobs on them and their readings: the whole path of a regrip and of a bend by command.

use crate::run::Shop;
use serde_json::{Value, json};

#[test]
fn a_club_from_elsewhere_is_noted_bent_and_handed_over_by_command() {
    let shop = Shop::stocked();
    let add = [
        "club",
        "add",
        "--player",
        "Odell Farrowby",
        "--number",
        "7",
        "--head-material",
        "forged",
        "--swing-weight",
        "D2.1",
        "--loft",
        "33",
        "--lie",
        "62",
        "--json",
    ];
    let club = shop.run(&add).done().json();
    assert_eq!((&club["club"]["code"], &club["life"][0]["deed"]), (&json!("C1"), &json!("arrived")));
    assert!(shop.run(&["club", "list", "farrowby"]).done().out.contains("C1"));
    assert!(shop.run(&["club", "list", "nobody"]).done().out.contains("No club found"));
    let read = shop.run(&["club", "read", "C1", "--total-mass", "432.7", "--json"]).done().json();
    assert_eq!(read["life"][1]["deed"], "measured");
    let kinds = shop.run(&["kind", "list", "--json"]).done().json();
    assert!(kinds.as_array().is_some_and(|k| k.iter().any(|kind| kind["kind"]["key"] == "regrip")), "{kinds}");

    let job = shop.run(&["club", "job", "--club", "C1", "--kind", "bend", "--loft", "34", "--json"]).done().json();
    assert_eq!(job["number"], 1);
    shop.run(&["club", "job", "--club", "C1", "--kind", "bend", "--loft", "34", "--json"]).problem(4, "conflict");
    shop.run(&["read", "1", "1", "arrived", "loft=33", "lie=62"]).done();
    let kept = shop.run(&["read", "1", "1", "bend", "loft=34", "lie=62", "--json"]).done().json();
    assert_eq!(kept["meaning"]["tone"], "good", "{}", kept["meaning"]);
    shop.run(&["read", "1", "1", "hand_over", "done="]).done();
    let shown = shop.run(&["club", "show", "c1"]).done().out;
    assert!(shown.contains("loft 33.0° → 34.0°"), "{shown}");
    shop.run(&["club", "show", "C7", "--json"]).problem(3, "not_found");
    shop.run(&["read", "1", "1", "bend", "colour=34", "--json"]).problem(2, "invalid");
}

#[test]
fn a_kind_of_the_shops_own_is_kept_and_taken_away_by_command() {
    let shop = Shop::stocked();
    let kind = json!({ "key": "lie_only", "label": "Lie only", "asks": ["lie"], "steps": [
        { "key": "bend", "label": "Bend", "asks": ["lie"], "on": ["head", "shaft", "grip"], "needs": "none" },
        { "key": "hand_over", "label": "Hand over", "asks": ["done"], "needs": "none" } ] });
    shop.write("kind.json", kind.to_string());
    shop.run(&["kind", "add", "kind.json"]).done();
    assert!(shop.run(&["kind", "list"]).done().out.contains("lie_only"));
    shop.run(&["club", "add", "--player", "A", "--number", "7"]).done();
    let job = shop.run(&["club", "job", "--club", "C1", "--kind", "lie_only", "--lie", "61", "--json"]).done().json();
    assert_eq!(job["steps"].as_array().map(Vec::len), Some(2), "the steps are the kind's own");
    shop.run(&["kind", "remove", "lie_only"]).done();
    shop.run(&["kind", "remove", "lie_only", "--json"]).problem(3, "not_found");
}

/// What the bench expects at a step of the first club of a job.
fn expected(shop: &Shop, job: i64, key: &str) -> f64 {
    let served = shop.serve("serve");
    let (_, view) = served.ask("GET", &format!("/api/v1/jobs/{job}"), "");
    let view: Value = serde_json::from_str(&view).expect("a job");
    let steps = view["clubs"][0]["steps"].as_array().expect("steps").clone();
    let step = steps.iter().find(|step| step["key"] == key).unwrap_or_else(|| panic!("no step {key}")).clone();
    step["asks"][0]["expected"]["value"].as_f64().expect("a forecast")
}

/// Each kind by command alone from the note of the club to its record. What is glued was mixed two days ago, as a cup that is
/// entered late; what a step expects is what is read there, so that nothing is doubted.
#[test]
fn each_kind_goes_to_the_record_by_command() {
    let shop = Shop::stocked();
    let add = |number: &str| {
        let figures = ["--swing-weight", "D1", "--total-mass", "430", "--length", "37", "--loft", "33", "--lie", "62"];
        shop.run(&[&["club", "add", "--player", "Odell Farrowby", "--number", number][..], &figures].concat()).done();
    };
    let grip = ["--grip-model", "MARL"];
    let shaft = ["--shaft-model", "SCREE-P", "--ferrule-model", "FERR", "--adhesive", "BASALT"];
    let kinds: [(&str, Vec<&str>); 9] = [
        ("regrip", grip.to_vec()),
        ("bend", vec!["--lie", "61"]),
        ("shorten", [&grip[..], &["--length", "36", "--swing-weight", "C6"]].concat()),
        ("lengthen", [&grip[..], &["--length", "37 1/2", "--extension-mass", "9"]].concat()),
        ("rebalance", vec!["--swing-weight", "D3"]),
        ("reshaft", [&grip[..], &shaft[..], &["--length", "37", "--swing-weight", "D1"]].concat()),
        ("loose_head", vec!["--ferrule-model", "FERR", "--adhesive", "BASALT"]),
        ("rattle", vec![]),
        ("broken_shaft", [&grip[..], &shaft[..], &["--length", "37", "--swing-weight", "D1"]].concat()),
    ];
    let listed = shop.run(&["kind", "list", "--json"]).done().json();
    assert_eq!(listed.as_array().map(Vec::len), Some(kinds.len()), "a kind without its path: {listed}");
    for (i, (kind, asked)) in kinds.iter().enumerate() {
        add("7");
        let (club, number) = (format!("C{}", i + 1), (i + 1).to_string());
        let job = [&["club", "job", "--club", &club, "--kind", kind, "--json"][..], asked].concat();
        let job = shop.run(&job).done().json();
        let why = ["--reason", "read on paper"];
        let steps: Vec<Value> = job["steps"].as_array().expect("steps").clone();
        for step in &steps {
            if step["glues"] == json!(true) {
                let mixed = jiff::Timestamp::now().to_string();
                let batch = [
                    "glue",
                    "start",
                    &number,
                    "--clubs",
                    "1",
                    "--lot",
                    "L-1",
                    "--adhesive",
                    "BASALT",
                    "--room-c",
                    "23",
                ];
                shop.run(&[&batch[..], &["--mixed-at", &mixed], &why].concat()).done();
                let batches = shop.run(&["glue", "list", "--json"]).done().json()[0]["batch"]["number"].to_string();
                shop.run(&["glue", "override", &batches, "--strength", "full", "--reason", "cured in the oven"]).done();
            }
        }
        if *kind == "rebalance" {
            shop.run(&["club", "extra", &number, "1", "--action", "lead_tape", "--mass", "4.4"]).done();
            shop.run(&["club", "extra", &number, "1", "--action", "gold_leaf", "--mass", "4.4", "--json"])
                .problem(2, "invalid");
        }
        let read = |step: &str, what: &str| {
            shop.run(&[&["read", &number, "1", step, what][..], &why].concat()).done();
        };
        if steps.iter().any(|step| step["key"] == "arrived") && *kind != "bend" {
            read("arrived", "swing_weight=D1");
        }
        match *kind {
            "bend" => read("bend", "lie=61"),
            _ => {
                let points = expected(&shop, i as i64 + 1, "finish");
                // 161 oz·in are A0, and a point is 1.75 oz·in.
                read("finish", &format!("swing_weight={:.2} oz in", 161.0 + 1.75 * points));
            }
        }
        read("hand_over", "done=");
        let record = shop.run(&["record", &number, "--json"]).done().json();
        assert_eq!(record["state"], "finished", "{kind}: {record}");
        let shown = shop.run(&["club", "show", &club, "--json"]).done().json();
        assert_eq!(shown["life"][1]["job_kind"], *kind, "{shown}");
    }
    // One club to match the others; of one sort and read the same, so any line is flat.
    let found = shop.run(&["club", "match", "--club", "C1,C2,C3", "--number", "6", "--json"]);
    assert_eq!(found.code, 2, "all are sevens: no line goes through one place");
}

/// A regrip that asks a size, and a timed swing: by command alone.
#[test]
fn a_grip_is_brought_to_its_size_and_a_club_is_timed_by_command() {
    let shop = Shop::stocked();
    let models = shop.run(&["export", "--models", "--json"]).done().out;
    let mut models: Value = serde_json::from_str(&models).expect("models");
    for model in models.as_array_mut().expect("a list") {
        if model["code"] == "MARL" {
            (model["upper_mm"], model["lower_mm"]) = (json!(22.9), json!(19.7));
        }
    }
    let tape = json!({ "kind": "tape", "code": "TAPE-50", "name": "Tape 50", "mass_per_area_g_per_m2": 160.0,
        "thickness_mm": 0.16, "width_mm": 50.0 });
    models.as_array_mut().expect("a list").push(tape);
    shop.write("sized.json", models.to_string());
    shop.run(&["import", "sized.json"]).done();
    {
        let served = shop.serve("serve");
        let (_, settings) = served.ask("GET", "/api/v1/shop", "");
        let mut settings: Value = serde_json::from_str(&settings).expect("settings");
        settings["tape"] = json!("TAPE-50");
        served.ask("PUT", "/api/v1/shop", &settings.to_string());
    }
    let figures = ["--swing-weight", "D1", "--total-mass", "430", "--length", "37"];
    shop.run(&[&["club", "add", "--player", "Odell Farrowby", "--number", "7"][..], &figures].concat()).done();
    let job = ["club", "job", "--club", "C1", "--grip-model", "MARL"];
    shop.run(&[&job[..], &["--grip-size", "2.39 m", "--json"]].concat()).problem(2, "impossible_figure");
    shop.run(&[&job[..], &["--grip-size", "23.9 mm", "--json"]].concat()).done();
    let found = shop.run(&["grip-size", "1", "--json"]).done().json();
    let advised = &found[0]["advised"];
    assert!(advised["wraps"]["full"].as_i64().is_some_and(|full| full > 0), "{found}");
    assert!(advised["by_points"].as_f64().is_some_and(|points| points < 0.0), "{found}");
    let said = shop.run(&["grip-size", "1"]).done().out;
    assert!(said.contains("full layer"), "{said}");
    let taken = shop.run(&["grip-size", "1", "--take", "--json"]).done().json();
    assert_eq!(taken["taken"][0]["wraps"], advised["wraps"]);
    assert_eq!(taken["clubs"][0]["code"], "grip_size_says.as_asked");
    shop.run(&["grip-size", "1", "--take", "--json"]).problem(4, "conflict");
    shop.run(&["read", "1", "1", "arrived", "swing_weight=D1"]).done();
    let kept = shop.run(&["read", "1", "1", "finish", "grip_size=24.0 mm", "--json"]).done().json();
    assert!(kept["club"].is_object(), "{kept}");
    let found = shop.run(&["grip-size", "1", "--json"]).done().json();
    assert_eq!(found[0]["places"][0]["read_mm"], json!(24.0));
    let record = shop.run(&["record", "1", "--json"]).done().json();
    let lines = record["clubs"][0]["lines"].as_array().expect("lines");
    let line = lines.iter().find(|line| line["what"] == "grip_size").expect("a line of the grip");
    assert_eq!((&line["target"], &line["built"]), (&json!(23.9), &json!(24.0)));
    // Ten swings: the forecast of the time is met, and the inertia is told with a narrower band.
    let inertia = |shop: &Shop| -> (f64, f64) {
        let served = shop.serve("serve");
        let (_, view) = served.ask("GET", "/api/v1/jobs/1", "");
        let view: Value = serde_json::from_str(&view).expect("a job");
        let found = &view["clubs"][0]["swing_inertia"];
        let figure = |name: &str| found[name].as_f64().expect("a figure");
        (figure("value_kg_cm2"), figure("band_kg_cm2"))
    };
    let before = inertia(&shop);
    let read = ["read", "1", "1", "finish", "swing_period=18.6/10", "--reason", "read on paper", "--json"];
    shop.run(&read).done();
    let after = inertia(&shop);
    assert!(after.1 < before.1, "{before:?} {after:?}");
    shop.run(&["read", "1", "1", "finish", "swing_period=ten", "--json"]).problem(2, "unreadable");
}
