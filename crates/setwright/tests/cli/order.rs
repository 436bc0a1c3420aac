//! Orders, needs, sorting, head masses to ask for and the lives of parts.

use crate::run::{PARTS, Shop};
use serde_json::json;

/// A shop with the sheet's job and no head for its 7.
fn without_sevens() -> Shop {
    let shop = Shop::stocked();
    let other = Shop::empty();
    other.write("models.json", shop.run(&["export", "--models"]).done().out);
    let parts: Vec<&str> = PARTS.lines().filter(|l| !l.contains("head,WREN-I,7,")).collect();
    other.write("parts.csv", parts.join("\r\n"));
    other.write("sheet.json", crate::run::SHEET);
    other.run(&["import", "models.json"]).made();
    other.run(&["import", "parts.csv"]).done();
    other.run(&["sheet", "add", "sheet.json"]).done();
    other
}

#[test]
fn what_a_job_lacks_is_ordered_received_and_waited_for_no_more() {
    let shop = without_sevens();
    let looked = shop.run(&["order", "job", "1", "--look", "--json"]).done().json();
    assert_eq!(looked[0]["kind"], "head");
    assert_eq!((&looked[0]["number"], &looked[0]["count"], &looked[0]["ordered"]), (&json!("7"), &json!(1), &json!(0)));
    let placed = shop
        .run(&["order", "job", "1", "--supplier", "Harrowgate Castings", "--expected", "2099-03-10", "--json"])
        .done()
        .json();
    let order = &placed[0];
    assert_eq!((&order["order"], &order["state"], &order["open"]), (&json!(1), &json!("ordered"), &json!(1)));
    assert_eq!(order["jobs"][0]["number"], 1);
    let (from, to) = (order["from_g"].as_f64().expect("a mass"), order["to_g"].as_f64().expect("a mass"));
    assert!(from < to && from > 240.0 && to < 290.0, "{from} to {to}");
    let again = shop.run(&["order", "job", "1", "--json"]).problem(4, "conflict");
    assert!(again.contains("lacks nothing that is not ordered already"), "{again}");

    let more = shop.run(&["order", "receive", "1", "3", "--json"]).problem(4, "conflict");
    assert!(more.contains("3 are more than the 1 of order 1"), "{more}");
    let came = shop.run(&["order", "receive", "1", "1", "--json"]).done().json();
    assert_eq!((&came["to_weigh"], &came["model"], &came["number"]), (&json!(1), &json!("WREN-I"), &json!("7")));
    assert_eq!(came["order"]["state"], "here");
    let twice = shop.run(&["order", "receive", "1", "1", "--json"]).problem(4, "conflict");
    assert!(twice.contains("all of order 1 are here already"), "{twice}");
    let list = shop.run(&["order", "list"]).done();
    assert!(list.out.contains("1 of 1") && list.out.contains("all here"), "{}", list.out);
    assert_eq!(shop.run(&["order", "list", "--open"]).done().out, "Nothing is on order.\n");
    let csv = shop.run(&["order", "list", "--csv"]).done().out;
    assert!(
        csv.starts_with("order,supplier,kind,model,number,count,from_g,")
            && csv.contains("1,Harrowgate Castings,head,WREN-I,7,1,")
    );
}

#[test]
fn cancelled_and_then_received_is_asked_about() {
    let shop = Shop::stocked();
    let placed = shop.run(&["order", "add", "MARL", "20", "--expected", "2099-01-05", "--json"]).done().json();
    assert_eq!((&placed[0]["kind"], &placed[0]["count"]), (&json!("grip"), &json!(20)));
    shop.run(&["order", "tell", "1", "--supplier", "Pennon", "--expected", "2099-01-09"]).done();
    let refused = shop.run(&["order", "cancel", "1", "--json"]).problem(2, "invalid");
    assert!(refused.contains("a reason is needed"), "{refused}");
    let gone = shop.run(&["order", "cancel", "1", "--reason", "too dear", "--json"]).done().json();
    assert_eq!(
        (&gone["state"], &gone["supplier"], &gone["expected_on"]),
        (&json!("cancelled"), &json!("Pennon"), &json!("2099-01-09"))
    );
    let asked = shop.run(&["order", "receive", "1", "20", "--json"]).problem(4, "conflict");
    assert!(asked.contains("was cancelled by command line (“too dear”)"), "{asked}");
    let here = shop.run(&["order", "receive", "1", "20", "--anyway", "--json"]).done().json();
    assert_eq!((&here["order"]["state"], &here["order"]["received"]), (&json!("here"), &json!(20)));
}

#[test]
fn orders_that_cannot_be_are_refused_by_name() {
    let shop = Shop::stocked();
    for (arguments, code, words) in [
        (vec!["MARL", "0"], 2, "0 is not a number of parts"),
        (vec!["MARL", "-2"], 2, "-2 is not a number of parts"),
        (vec!["NONE", "2"], 3, "no model “NONE”"),
        (vec!["WREN-I", "2"], 2, "no number is given for Wren iron"),
        (vec!["WREN-I", "2", "--number", "44"], 2, "has no number 44"),
        (vec!["MARL", "2", "--number", "7"], 2, "has no number"),
        (vec!["WREN-I", "2", "--number", "7", "--from", "26"], 2, "from_g is 26 g"),
        (vec!["WREN-I", "2", "--number", "7", "--from", "270", "--to", "260"], 2, "run from 270 g to 260 g"),
        (vec!["MARL", "2", "--for", "9"], 3, "no job “9”"),
        (vec!["MARL", "2", "--for", "x"], 2, "is not JOB:COUNT"),
        (vec!["MARL", "2", "--expected", "Tuesday"], 2, "is not a date"),
        (vec!["MARL", "2", "--expected", "2001-01-01"], 2, "before it was ordered"),
    ] {
        let ran = shop.run(&[&["order", "add"][..], &arguments, &["--json"]].concat());
        assert_eq!(ran.code, code, "{arguments:?}: {ran:?}");
        assert!(ran.json()["detail"].as_str().expect("words").contains(words), "{arguments:?}: {}", ran.out);
    }
    assert_eq!(shop.run(&["order", "list", "--json"]).done().json(), json!([]));
    let refused = shop.run(&["order", "receive", "5", "1", "--json"]).problem(3, "not_found");
    assert!(refused.contains("no order “5”"), "{refused}");
}

#[test]
fn the_stock_stands_against_the_sheets_to_come() {
    let shop = without_sevens();
    let needs = shop.run(&["needs", "--short", "--json"]).done().json();
    let rows = needs.as_array().expect("rows");
    assert_eq!(rows.len(), 1, "{needs}");
    assert_eq!((&rows[0]["model"], &rows[0]["number"], &rows[0]["short"]), (&json!("WREN-I"), &json!("7"), &json!(1)));
    assert_eq!(rows[0]["jobs_short"], json!([{ "job": 1, "count": 1 }]));
    shop.run(&["order", "job", "1"]).done();
    let needs = shop.run(&["needs", "--short", "--json"]).done().json();
    assert_eq!((&needs[0]["on_order"], &needs[0]["to_order"]), (&json!(1), &json!(0)));
    let csv = shop.run(&["needs", "--csv"]).done().out;
    assert!(csv.starts_with("kind,model,number,free,") && csv.contains("head,WREN-I,7,0,0,0,1,1,0,1,0,1: 1"), "{csv}");
}

#[test]
fn parts_are_sorted_and_head_masses_named() {
    let shop = Shop::stocked();
    let ran = shop.run(&["sort", "WREN-I", "--number", "6", "--width", "2"]).done();
    insta::assert_snapshot!(ran.out, @r"
    A  256.0 to 258.0 g  1: H60 257.9
    B  258.0 to 260.0 g  0:
    C  260.0 to 262.0 g  2: H61 260.4, H62 261.9
    D  262.0 to 264.0 g  1: H63 263.2
    4 parts, mean 260.9 g, scatter 2.28 g
    ");
    let sorted = shop.run(&["sort", "WREN-I", "--number", "6", "--classes", "2", "--json"]).done().json();
    let counts: Vec<usize> = sorted["classes"]
        .as_array()
        .expect("classes")
        .iter()
        .map(|c| c["parts"].as_array().map_or(0, Vec::len))
        .collect();
    assert_eq!(counts.iter().sum::<usize>(), 4);
    let csv = shop.run(&["sort", "WREN-I", "--number", "6", "--csv"]).done().out;
    assert!(csv.starts_with("class,from_g,to_g,code,mass_g,row,column\r\nA,"), "{csv}");
    for (width, words) in [("0", "width_g is 0 g"), ("-1", "width_g is −1 g"), ("NaN", "width_g is NaN")] {
        let refused = shop.run(&["sort", "WREN-I", "--width", width, "--json"]).problem(2, "impossible_figure");
        assert!(refused.contains(words), "{refused}");
    }

    let asks = shop.run(&["ask", "--sheet", "sheet.json", "--supply", "WREN-I:7=263,2", "--json"]).done().json();
    let seven = asks.as_array().expect("clubs").iter().find(|a| a["number"] == "7").expect("the 7").clone();
    assert_eq!((&seven["mean_g"], &seven["supply_from"]), (&json!(263.0), &json!("stated")));
    let inside = seven["inside"].as_f64().expect("a chance");
    assert!((0.0..=1.0).contains(&inside) && seven["inside_any_shaft"].as_f64().expect("a chance") <= inside.max(0.5));
    let text = shop.run(&["ask", "--sheet", "sheet.json"]).done().out;
    assert!(text.contains("heads of") && text.contains("WREN-I 7"), "{text}");
    let refused = shop.run(&["ask", "--json"]).problem(2, "invalid");
    assert!(refused.contains("no club is asked about"), "{refused}");
    let refused = shop.run(&["ask", "--sheet", "sheet.json", "--supply", "263", "--json"]).problem(2, "invalid");
    assert!(refused.contains("is not MODEL:NUMBER=MEAN,SCATTER"), "{refused}");
}

#[test]
fn the_life_of_a_part_is_told() {
    let shop = Shop::stocked();
    shop.run(&["part", "H60", "--deed", "correct", "--mass", "258.4", "--reason", "tape was on", "--by", "Ada"]).done();
    let told = shop.run(&["part", "h60"]).done().out;
    assert!(told.contains("Corrected: mass 257.9 g, now 258.4 g. “tape was on”"), "{told}");
    let refused = shop.run(&["part", "H60", "--deed", "scrap", "--json"]).problem(2, "invalid");
    assert!(refused.contains("a reason is needed"), "{refused}");
    let life = shop.run(&["part", "H60", "--deed", "scrap", "--reason", "face is dented", "--json"]).done().json();
    assert_eq!(life["part"]["state"], "rejected");
    let steps: Vec<&str> =
        life["life"].as_array().expect("entries").iter().filter_map(|e| e["step"].as_str()).collect();
    assert_eq!(steps, ["came_in", "corrected", "scrapped"]);
    assert!(shop.run(&["part", "H60", "--csv"]).done().out.starts_with("at,by,step,job,club,figures,reason\r\n"));
    let refused = shop.run(&["part", "H60", "--deed", "polish", "--json"]).problem(2, "invalid");
    assert!(refused.contains("“polish” cannot be done with a part"), "{refused}");
    let refused = shop.run(&["part", "H60", "--deed", "pull", "--json"]).problem(4, "conflict");
    assert!(refused.contains("H60 is rejected and in no club"), "{refused}");
}
