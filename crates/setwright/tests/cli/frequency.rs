//! Shafts that were measured, at a terminal.

use crate::run::{PARTS, Shop};
use serde_json::{Value, json};

/// The stock with every other shaft on its line and the others far off it.
fn measured() -> Shop {
    let shop = Shop::stocked();
    for (i, cpm) in ["262", "270", "262", "254", "262", "270", "262", "254"].iter().enumerate() {
        let code = format!("S{i}");
        shop.run(&["part", &code, "--deed", "correct", "--cpm", cpm, "--reason", "plucked"]).done();
    }
    shop
}

#[test]
fn a_match_keeps_to_the_line_and_says_so() {
    let plain = Shop::stocked().run(&["match", "--set", "sheet.json"]).done().out;
    assert!(!plain.contains("cpm"), "nothing was measured: {plain}");
    let shop = measured();
    let found = shop.run(&["match", "--set", "sheet.json", "--json"]).done().json();
    let off = |found: &Value| -> Vec<f64> {
        let clubs = found["plan"]["clubs"].as_array().expect("clubs");
        clubs.iter().map(|c| c["frequency"]["off_cpm"].as_f64().expect("measured")).collect()
    };
    assert_eq!(off(&found), [0.0; 3], "{found}");
    assert_eq!(found["plan"]["frequency"][0]["line_cpm"], json!(262.0));
    assert!(found["options"].as_array().expect("options").iter().all(|o| o["worst_cpm"].is_f64()), "{found}");
    let text = shop.run(&["match", "--set", "sheet.json"]).done().out;
    assert!(text.contains("0.0 cpm") && text.contains("its line is 262.0 cpm, of 8 measured"), "{text}");
    assert!(text.contains("shafts at most "), "{text}");
    // Without its weight the lightest shafts are as good.
    let weights = ["match", "--set", "sheet.json", "--json", "--weight", "cpm_per_tolerance=0"];
    let found = shop.run(&weights).done().json();
    assert!(off(&found).iter().any(|cpm| cpm.abs() > 7.0), "{found}");
    for (weight, words) in [
        ("cpm_per_tolerance=9", "plan_weights.cpm_per_tolerance is 9"),
        ("nonsense=0.1", "there is no weight “nonsense”"),
        ("cpm_per_tolerance", "is not NAME=VALUE"),
        ("cpm_per_tolerance=NaN", "plan_weights.cpm_per_tolerance is NaN"),
    ] {
        let refused = shop.run(&["match", "--set", "sheet.json", "--weight", weight]);
        assert_eq!(refused.code, 2, "{weight}: {}", refused.out);
        assert!(
            refused.err.replace(['\n', '│'], " ").split_whitespace().collect::<Vec<_>>().join(" ").contains(words),
            "{}",
            refused.err
        );
    }
}

#[test]
fn a_plan_tells_of_each_club_how_stiff_its_shaft_is() {
    let shop = measured();
    assert_eq!(PARTS.matches("SCREE-P").count(), 8);
    shop.run(&["sheet", "add", "sheet.json"]).done();
    let plan = shop.run(&["plan", "1"]).done().out;
    assert!(plan.contains("The 7-iron: Its shaft is on its frequency line, 262.0 cpm."), "{plan}");
}
