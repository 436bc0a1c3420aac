//! Customers at the terminal: kept, changed, found, exported, told what goes and what stays, deleted.

use crate::run::{SHEET, Shop};
use serde_json::Value;

#[test]
fn a_customer_is_kept_found_exported_and_deleted_once_the_name_is_said() {
    let shop = Shop::stocked();
    shop.write("sheet.json", SHEET);
    shop.run(&["sheet", "add", "sheet.json"]).done();
    let sheet: Value = serde_json::from_str(SHEET).expect("a sheet");
    let player = sheet["player"].as_str().expect("a player");

    let listed = shop.run(&["customer", "list"]).done();
    assert!(listed.out.contains("No customer is kept yet") && listed.out.contains(player), "{}", listed.out);
    let taken = shop.run(&["customer", "take", player, "--json"]).done().json();
    assert_eq!((taken["number"].as_i64(), taken["jobs"][0]["number"].as_i64()), (Some(1), Some(1)));
    let changed = shop
        .run(&[
            "customer",
            "change",
            "1",
            "--name",
            "Ada Marsh",
            "--glove",
            "ML",
            "--grip-diameter",
            "0.92in",
            "--wraps",
            "2",
            "--json",
        ])
        .done()
        .json();
    assert_eq!(changed["customer"]["wraps"]["full"], 2);
    assert!((changed["customer"]["grip_diameter_mm"].as_f64().expect("a figure") - 23.368).abs() < 1e-9);
    assert_eq!(changed["customer"]["hand"], "right", "what is not given stays");
    let inches = shop.run(&["customer", "change", "1", "--grip-diameter", "0.92"]);
    assert!(inches.code == 2 && inches.err.contains("grip_diameter_mm is 0.92 mm"), "{}", inches.err);

    assert_eq!(shop.run(&["find", "marsh"]).done().out, "Customer Ada Marsh, CU-1\nJob 1 · Ada Marsh\n");
    assert_eq!(shop.run(&["find", "job 1"]).done().out, "Job 1 · Ada Marsh\n");
    assert_eq!(shop.run(&["find", "qqq"]).code, 3);
    shop.run(&["customer", "export", "1", "--out", "ada.json"]).done();
    let file: Value = serde_json::from_str(&shop.read("ada.json")).expect("one document");
    assert_eq!(
        (file["customer"]["name"].as_str(), file["jobs"][0]["state"].as_str()),
        (Some("Ada Marsh"), Some("open"))
    );

    // Told first; a job under way stands against it, and another name deletes nobody.
    let told = shop.run(&["customer", "delete", "1"]).done();
    assert!(told.out.contains("Job 1 is under way") && told.out.contains("What stays"), "{}", told.out);
    assert_eq!(shop.run(&["customer", "delete", "1", "--name", "Ada Marsh"]).code, 4);
    shop.run(&["customer", "add", "Jem Orrin", "--hand", "left"]).done();
    assert_eq!(shop.run(&["customer", "delete", "2", "--name", "Ada Marsh"]).code, 2);
    let told = shop.run(&["customer", "delete", "2"]).done();
    assert!(told.out.contains("Nothing was deleted"), "{}", told.out);
    let done = shop.run(&["customer", "delete", "2", "--name", "jem orrin"]).done();
    assert!(done.out.contains("CU-2 stands where the name stood"), "{}", done.out);
    assert_eq!(shop.run(&["customer", "show", "2"]).code, 3);
    assert_eq!(shop.run(&["find", "Jem Orrin"]).code, 3);
}
