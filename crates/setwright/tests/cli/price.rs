//! Prices at the terminal: the list, a quote from it, the bill.

use crate::run::{SHEET, Shop};
use serde_json::{Value, json};

#[test]
fn a_quote_is_taken_from_the_list_and_the_bill_says_it() {
    let shop = Shop::stocked();
    shop.write("sheet.json", SHEET);
    shop.run(&["sheet", "add", "sheet.json"]).done();
    let sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    let clubs = i64::try_from(sheet["clubs"].as_array().expect("clubs").len()).expect("few");
    let grip = sheet["clubs"][0]["grip_model"].as_str().expect("a grip");
    let list = json!({ "currency": "EUR", "decimals": 2, "tax_text": "Tax included",
        "parts": [{ "model": grip, "each_minor": 1295 }],
        "work": [{ "name": "Build", "per": "club", "each_minor": 2500, "usual": true },
            { "name": "Express", "per": "job", "each_minor": 1000 }] });
    shop.write("prices.json", list.to_string());
    shop.run(&["prices", "--set", "prices.json"]).done();
    assert_eq!(shop.run(&["prices"]).done().json()["work"][0]["name"], "Build");
    shop.write("bad.json", r#"{ "decimals": 2, "parts": [{ "model": "A", "each_minor": 12.5 }] }"#);
    assert_eq!(shop.run(&["prices", "--set", "bad.json"]).code, 2, "half a coin");

    let taken = shop.run(&["customer", "take", sheet["player"].as_str().expect("a player"), "--json"]).done().json();
    let id = taken["sheets"][0]["id"].as_str().expect("an id").to_owned();
    assert!(shop.run(&["bill", "1"]).done().out.contains("no quote"));
    let quote = shop.run(&["quote", &id, "--take", "--json"]).done().json();
    // By hand: each club a grip of 12.95 and 25.00 of work; what is not usual is not on it.
    assert_eq!(quote["total_minor"], clubs * (1295 + 2500));
    assert_eq!(quote["lines"].as_array().map(Vec::len), Some(2));
    let bill = shop.run(&["bill", "1"]).done();
    let total = format!("Total: {}.{:02} EUR\nTax included\n", clubs * 3795 / 100, clubs * 3795 % 100);
    assert!(bill.out.starts_with("Bill for job 1\n") && bill.out.ends_with(&total), "{}", bill.out);
}
