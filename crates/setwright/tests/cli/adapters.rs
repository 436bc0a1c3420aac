//! A driver and a 3-wood at a terminal: each adapter in one club, kept where it is asked for, held when accepted.

use crate::run::Shop;
use serde_json::{Value, json};

/// A shop with a job of a driver and a 3-wood, and three weighed adapters.
fn woods() -> Shop {
    let shop = Shop::empty();
    shop.write("models.json", serde_json::to_string(&demo::models()).expect("models"));
    let mut csv = String::from("code,kind,model,number,mass_g,state,count\n");
    for i in 0..4 {
        csv.push_str(&format!("D{i},head,FIELDFARE,1,{:.1},free,\n", 190.6 + 0.7 * f64::from(i)));
        csv.push_str(&format!("T{i},head,FIELDFARE,3,{:.1},free,\n", 206.3 + 0.7 * f64::from(i)));
        csv.push_str(&format!("S{i},shaft,LEVANTER-W,,{:.1},free,\n", 64.0 + 0.1 * f64::from(i)));
        csv.push_str(&format!("G{i},grip,OLIVINE,,{:.1},free,\n", 50.2 + 0.2 * f64::from(i)));
    }
    csv.push_str("TW2,tip_weight,TIP-2,,,free,20\nFB,ferrule,FERRULE-335,,,free,20\n");
    for (i, mass_g) in ["5.0", "5.3", "4.8"].iter().enumerate() {
        csv.push_str(&format!("AD-{i},adapter,FIELDFARE-A,,{mass_g},free,\n"));
    }
    shop.write("parts.csv", csv);
    let sheets = demo::sheets(jiff::civil::date(2099, 3, 2));
    let wood = sheets.into_iter().find(|s| s.clubs.iter().any(|c| c.head_model == "FIELDFARE")).expect("a wood");
    let mut sheet: Value = serde_json::to_value(wood).expect("a sheet");
    let mut three = sheet["clubs"][0].clone();
    three["number"] = json!("3");
    three["length_mm"] = json!(three["length_mm"].as_f64().expect("a length") - 50.8);
    // Heads as they come are some grams too light for this: screws are heavier ones.
    for club in [&mut sheet["clubs"][0], &mut three] {
        club["swing_weight_points"] = json!(club["swing_weight_points"].as_f64().expect("points") + 2.0);
    }
    (three["loft_deg"], three["lie_deg"]) = (json!(15.0), json!(57.5));
    sheet["clubs"].as_array_mut().expect("clubs").push(three);
    shop.write("sheet.json", sheet.to_string());
    shop.run(&["import", "models.json"]).made();
    shop.run(&["import", "parts.csv"]).done();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop
}

fn adapters(plan: &Value) -> Vec<String> {
    let of = |club: &Value| {
        let parts = club["parts"].as_array().expect("parts");
        let adapter = parts.iter().find(|p| p["kind"] == "adapter").expect("an adapter");
        adapter["code"].as_str().expect("a code").to_owned()
    };
    plan["clubs"].as_array().expect("clubs").iter().map(of).collect()
}

/// What is stamped on the screw of each club; they come with the one of 4 g.
fn screws(plan: &Value) -> Vec<String> {
    let of = |club: &Value| {
        let extras = club["extras"].as_array().expect("a screw");
        let screw = extras.iter().find(|x| x["action"] == "screw").expect("a screw");
        format!("{}", 4.0 + screw["mass_g"].as_f64().expect("a mass"))
    };
    plan["clubs"].as_array().expect("clubs").iter().map(of).collect()
}

#[test]
fn a_driver_and_a_3_wood_are_planned_kept_and_held() {
    let shop = woods();
    let plan = shop.run(&["plan", "1", "--json"]).done().json();
    let chosen = adapters(&plan["plan"]);
    let text = shop.run(&["plan", "1"]).done().out;
    let heading = text.lines().find(|line| line.contains("screw")).expect("a column").split("  ");
    let column = heading.filter(|cell| !cell.is_empty()).position(|cell| cell.trim() == "screw").expect("a column");
    for screw in screws(&plan["plan"]) {
        let cell =
            |line: &str| line.split("  ").filter(|cell| !cell.is_empty()).nth(column).map(str::trim).map(str::to_owned);
        assert!(text.lines().any(|line| cell(line).as_deref() == Some(&screw)), "{screw} {text}");
    }
    assert_ne!(chosen[0], chosen[1]);
    let kept = shop.run(&["plan", "1", "--keep", "2:AD-1", "--json"]).done().json();
    assert_eq!(adapters(&kept["plan"])[1], "AD-1");
    let text = shop.run(&["match", "--day", "--seconds", "0.1"]).done().out;
    assert_eq!(text.matches("  adapter AD-").count(), 2, "{text}");
    assert_eq!(text.matches("  screw ").count(), 2, "{text}");
    assert!(text.contains("Due dates:") && text.contains("all clubs can be built from what is here"), "{text}");
    let plain = shop.run(&["match", "--day", "--in-turn", "--seconds", "0.1", "--json"]).done().json();
    assert_eq!((&plain["which"], &plain["due"]["whole"]), (&"in_turn".into(), &serde_json::json!([1])));
    let refused = shop.run(&["plan", "1", "--keep", "2:AD-9", "--json"]).problem(2, "refused");
    assert!(refused.contains("it is not a free head, shaft, grip or adapter"), "{refused}");
    let held = shop.run(&["plan", "1", "--keep", "2:AD-1", "--accept"]).done().out;
    assert!(held.contains("AD-1") && held.contains("The parts are held."), "{held}");
}
