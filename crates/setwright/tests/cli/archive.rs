//! An archive carries a shop to another database: the same parts, the same record, the same sum; nothing is unpacked over a shop,
//! and nothing of one that was cut short stays.

use crate::run::Shop;

#[test]
fn a_shop_is_carried_to_another_database() {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["plan", "1", "--accept"]).done();
    let made = shop.run(&["archive", "shop.jsonl", "--json"]).done().json();
    assert_eq!(made["held"]["jobs"], 1, "{made}");
    assert!(made["rows"]["part"].as_u64() > Some(5), "{made}");
    let text = std::fs::read_to_string(shop.path("shop.jsonl")).expect("the archive");
    for line in text.lines() {
        serde_json::from_str::<serde_json::Value>(line).unwrap_or_else(|e| panic!("{line}: {e}"));
    }
    // The place is taken; the shop is there.
    shop.run(&["archive", "shop.jsonl", "--json"]).problem(5, "store");
    shop.run(&["unpack", "shop.jsonl", "--json"]).problem(4, "store");

    let other = ["--database", "sqlite:other.db"];
    let with = |arguments: &[&str]| shop.run(&[arguments, &other].concat());
    std::fs::write(shop.path("cut.jsonl"), &text[..text.len() - 90]).expect("written");
    with(&["unpack", "cut.jsonl", "--json"]).problem(2, "store");
    assert!(!shop.path("other.db").exists());
    let unpacked = with(&["unpack", "shop.jsonl", "--json"]).done().json();
    assert_eq!((&unpacked["sha256"], &unpacked["held"]), (&made["sha256"], &made["held"]));
    for command in [&["record", "1", "--json"][..], &["job", "show", "1", "--json"], &["export"]] {
        assert_eq!(with(command).done().out, shop.run(command).done().out, "{command:?}");
    }
    let again = with(&["archive", "again.jsonl"]).done().out;
    assert!(again.contains("1 job") && again.contains("sum "), "{again}");
    let body =
        |text: &str| text.lines().skip(1).filter(|l| !l.starts_with("{\"end\"")).map(str::to_owned).collect::<Vec<_>>();
    let again = std::fs::read_to_string(shop.path("again.jsonl")).expect("the archive");
    assert!(body(&again) == body(&text), "the rows of the copy are others");
}
