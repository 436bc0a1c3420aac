//! Lists with headings of their own, workbooks in and out, labels.

use crate::run::Shop;
use serde_json::json;

/// Written by openpyxl; see `make.py` beside it.
const SUPPLIER: &[u8] = include_bytes!("../../../desk/tests/front_desk/workbooks/supplier.xlsx");

#[test]
fn a_list_is_read_by_what_is_said_of_its_columns() {
    let shop = Shop::stocked();
    shop.write("list.xlsx", SUPPLIER);
    let said = ["import", "list.xlsx", "--sheet", "stock", "--map", "mass=Weight (oz)", "--unit", "mass=oz", "--set"];
    let ran = shop.run(&[&said[..], &["model=WREN-I", "--refused", "mend.csv"]].concat());
    assert_eq!(ran.code, 2, "{}", ran.err);
    let lines: Vec<&str> = ran.out.lines().collect();
    assert!(lines.contains(&"  columns not used: Colour"), "{}", ran.out);
    assert!(lines.iter().any(|l| l.starts_with("  line 8, Label “Q-2”: line 5 has this code too")), "{}", ran.out);
    let listed = shop.run(&["export", "--json"]).done().json();
    let part = listed.as_array().expect("parts").iter().find(|p| p["code"] == "Q-1").expect("the first row").clone();
    // 9.35 oz at 28.349523125 g.
    assert!((part["mass_g"].as_f64().expect("a mass") - 265.068_041_218_75).abs() < 1e-9);
    assert_eq!(part["mass_typed"], json!("9.35 oz"));
    assert!(shop.read("mend.csv").starts_with("problem,model,Label,(Colour),Iron,Weight (oz),Shelf\r\n"));
}

#[test]
fn a_workbook_goes_out_and_comes_back() {
    let shop = Shop::stocked();
    shop.run(&["export", "--out", "parts.xlsx"]).done();
    let ran = shop.run(&["import", "parts.xlsx", "--json"]);
    let answer = ran.json();
    let count = shop.run(&["export", "--json"]).done().json().as_array().map(Vec::len);
    // Every row is read, and refused only because its code is there already.
    assert_eq!(answer["bad"].as_array().map(Vec::len), count);
    for bad in answer["bad"].as_array().expect("rows") {
        let problem = &bad["problem"];
        assert_eq!(problem["code"], "cell_fault.code_in_stock", "{bad}");
        assert_eq!((&problem["words"], &bad["also"]), (&json!("a part in stock has this code"), &json!(null)), "{bad}");
    }
}

#[test]
fn what_is_said_wrongly_is_named() {
    let shop = Shop::stocked();
    shop.write("list.xlsx", SUPPLIER);
    for (option, value, words) in [
        ("--map", "mass", "has no “=”"),
        ("--map", "mass=Gewicht", "there is no column “Gewicht” for the mass"),
        ("--map", "colour=Colour", "“colour” is not kept of a part"),
        ("--unit", "mass=stone", "“stone” cannot be the unit of the mass"),
        ("--sheet", "Heads", "there is no sheet “Heads”. There are Stock"),
        ("--header-line", "2", "line 2 is empty"),
    ] {
        let detail =
            shop.run(&["import", "list.xlsx", "--set", "model=WREN-I", option, value, "--json"]).problem(2, "invalid");
        assert!(detail.contains(words), "{detail}");
    }
}

#[test]
fn labels_are_written_for_the_parts_that_are_named() {
    let shop = Shop::stocked();
    shop.run(&["labels", "--codes", "H60,h61,H60", "--strip", "--out", "labels.html"]).done();
    let page = shop.read("labels.html");
    assert_eq!(page.matches("<div class=\"part-label\">").count(), 2, "each part once");
    assert!(page.contains(">257.9 g</text>") && page.contains("size: 62mm 29mm"));
    let detail = shop.run(&["labels", "--codes", "H60,NONE", "--json"]).problem(3, "not_found");
    assert!(detail.contains("NONE"), "{detail}");
}

/// A mass that speaks for another number, and columns that are remembered for the next list.
#[test]
fn the_columns_of_a_list_are_remembered_for_the_next() {
    let shop = Shop::stocked();
    shop.write("one.csv", b"Sticker,Heft\nQ-1,9.41\n");
    shop.write("two.csv", b"heft,STICKER\n9.44,Q-2\n");
    let said = ["--map", "code=Sticker", "--map", "mass=Heft", "--unit", "mass=oz", "--set", "model=WREN-I"];
    let said = [&said[..], &["--set", "number=7", "--remember", "Moorland"]].concat();
    shop.run(&[&["import", "one.csv"][..], &said].concat()).done();
    shop.run(&["import", "two.csv", "--layout", "moorland"]).done();
    let listed = shop.run(&["export", "--json"]).done().json();
    let part = listed.as_array().expect("parts").iter().find(|p| p["code"] == "Q-2").expect("the second list").clone();
    // 9.44 oz at 28.349523125 g.
    assert!((part["mass_g"].as_f64().expect("a mass") - 267.619_498_3).abs() < 1e-9, "{part}");
    let missing = shop.run(&["import", "two.csv", "--layout", "nobody", "--json"]).problem(3, "not_found");
    assert!(missing.contains("nobody"), "{missing}");
}

#[test]
fn a_mass_is_judged_and_a_part_weighed_in() {
    let shop = Shop::stocked();
    let said = ["weigh", "--model", "WREN-I", "--number", "7", "--mass"];
    let of = |more: &[&str]| shop.run(&[&said[..], more].concat());
    let judged = of(&["274.2", "--json"]).done().json();
    assert_eq!(judged["questioned"], json!(true), "{judged}");
    assert!(judged["words"].as_str().is_some_and(|w| w.contains("it looks like the next number, 8")), "{judged}");
    let before = shop.run(&["export", "--json"]).done().json().as_array().map(Vec::len);
    let asked = of(&["274.2", "--keep"]);
    assert_eq!(asked.code, 2, "{}", asked.out);
    assert_eq!(shop.run(&["export", "--json"]).done().json().as_array().map(Vec::len), before, "asked, not kept");
    let kept = of(&["274.2", "--keep", "--sure", "--json"]).done().json();
    assert_eq!(kept["kept"]["part"]["mass_g"], json!(274.2), "{kept}");
    let detail = of(&["27", "--json"]).problem(2, "impossible_figure");
    assert!(detail.contains("27"), "{detail}");
}

/// The frequency of a raw shaft: kept with a weigh-in, put right later, out again with the stock, refused elsewhere.
#[test]
fn a_shaft_is_weighed_in_with_its_frequency() {
    let shop = Shop::stocked();
    let shaft = ["weigh", "--model", "SCREE-P", "--mass", "120.0", "--keep", "--code", "S90", "--json"];
    let kept = shop.run(&[&shaft[..], &["--cpm", "262.5"]].concat()).done().json();
    assert_eq!(kept["kept"]["part"]["cpm"], json!(262.5), "{kept}");
    let right = ["part", "S90", "--deed", "correct", "--cpm", "263.5", "--reason", "clamped again", "--json"];
    let life = shop.run(&right).done().json();
    assert_eq!(life["part"]["cpm"], json!(263.5), "{life}");
    assert!(
        life["life"]
            .as_array()
            .is_some_and(|l| l.iter().any(|e| e["words"] == "Corrected: frequency 262.5 cpm, now 263.5 cpm."))
    );
    assert!(shop.run(&["export"]).done().out.contains("S90,shaft,SCREE-P,,120.0,,,263.5,,"));
    let slip = ["part", "S90", "--deed", "correct", "--cpm", "26", "--json"];
    assert!(shop.run(&slip).problem(2, "impossible_figure").contains("cpm is 26 cpm"));
    let head = ["weigh", "--model", "WREN-I", "--number", "7", "--mass", "267.0", "--keep", "--cpm", "262"];
    let refused = shop.run(&head);
    assert_eq!(refused.code, 2, "{}", refused.out);
    assert!(refused.err.contains("only a raw shaft"), "{}", refused.err);
}

#[test]
fn usual_models_are_listed_and_kept_once() {
    let shop = Shop::empty();
    let listed = shop.run(&["usual", "--kind", "grip"]).made();
    assert!(listed.out.contains("ANY-GRIP-MID") && listed.out.contains("Midsize grip"), "{}", listed.out);
    assert!(!listed.out.contains("ANY-CAVITY"), "{}", listed.out);
    let kept = shop.run(&["usual", "ANY-CAVITY", "ANY-STEEL-115", "ANY-GRIP"]).done();
    assert_eq!(kept.out.trim(), "3 models kept.");
    let again = shop.run(&["usual", "ANY-GRIP", "ANY-TAPE", "--json"]).done().json();
    assert_eq!(again, json!({ "kept": ["ANY-TAPE"], "were_there": ["ANY-GRIP"] }));
    // The list says which the shop has.
    let all = shop.run(&["usual", "--json"]).done().json();
    let there = all.as_array().expect("a list").iter().filter(|usual| usual["kept"] == true).count();
    assert_eq!(there, 4);
    let refused = shop.run(&["usual", "ANY-THING", "--json"]).problem(3, "not_found");
    assert!(refused.contains("ANY-THING"), "{refused}");
    let refused = shop.run(&["usual", "--kind", "club", "--json"]).problem(2, "invalid");
    assert!(refused.contains("tip_weight"), "{refused}");
}
