//! Simulated shops from the terminal.

use crate::run::Shop;

#[test]
fn one_seed_gives_one_report_on_any_number_of_threads() {
    let shop = Shop::empty();
    let report = |threads: &str, seed: &str| {
        let arguments =
            ["simulate", "--jobs", "60", "--seed", seed, "--threads", threads, "--json", "--only", "corrects"];
        // The bounds below are of shops as the belief expects them, with a target that is known.
        let world = ["--world", "as-believed", "--reference", "perfect"];
        shop.run(&[&arguments[..], &world].concat()).done().json()
    };
    let one = report("1", "5");
    assert_eq!(one, report("3", "5"));
    assert_ne!(one["lines"], report("2", "6")["lines"]);
    assert_eq!(one["lines"][0]["clubs"], 480);
    let within = one["lines"][0]["within_03"]["percent"].as_f64().expect("a share");
    assert!((60.0..98.0).contains(&within), "{within}");
    assert!(!shop.path("setwright.db").exists(), "a simulation needs no database");
}

#[test]
fn the_table_names_each_builder_and_its_clubs() {
    let shop = Shop::empty();
    let ran = shop.run(&["simulate", "--jobs", "20", "--only", "ceiling"]).done();
    let lines: Vec<&str> = ran.out.lines().collect();
    assert!(lines[0].starts_with("builder") && lines[0].contains("% within 0.3"), "{ran:?}");
    assert!(lines[1].starts_with("every true mean known") && lines[1].contains("160"), "{ran:?}");
    assert_eq!(lines.len(), 3, "{ran:?}");
}

#[test]
fn what_cannot_be_simulated_is_named() {
    let shop = Shop::empty();
    let detail = shop.run(&["simulate", "--jobs", "0", "--json"]).problem(2, "invalid");
    assert!(detail.contains("number of jobs"), "{detail}");
    let detail = shop.run(&["simulate", "--trouble", "rain", "--json"]).problem(2, "invalid");
    assert!(detail.contains("“rain”") && detail.contains("heavy-adhesive"), "{detail}");
    let detail = shop.run(&["simulate", "--only", "wizard", "--json"]).problem(2, "invalid");
    assert!(detail.contains("“wizard”") && detail.contains("new_joints"), "{detail}");
}
