//! A backup is made beside a running bench, told before it is put back, refused while the bench has the shop, and brings the
//! shop back to its last reading; the shop that was there stays beside it.

use crate::run::{Served, Shop};
use serde_json::json;

fn files(folder: &std::path::Path, with: &str) -> Vec<std::path::PathBuf> {
    let Ok(files) = std::fs::read_dir(folder) else { return Vec::new() };
    let mut found: Vec<_> = files.map(|file| file.expect("a file").path()).collect();
    found.retain(|path| path.file_name().is_some_and(|name| name.to_string_lossy().contains(with)));
    found.sort();
    found
}

#[test]
fn a_backup_brings_the_shop_back() {
    let shop = Shop::stocked();
    shop.run(&["sheet", "add", "sheet.json"]).done();
    shop.run(&["plan", "1", "--accept"]).done();
    let served = shop.serve("serve");
    let read = |value: f64| {
        let body =
            json!({ "slot": 1, "step": "dry", "entries": [{ "what": "swing_weight", "value": value }], "by": "Ada" });
        let (status, text) = served.ask("POST", "/api/v1/jobs/1/readings", &body.to_string());
        assert_eq!(status, 201, "{text}");
    };
    read(20.0);
    // Beside the running bench.
    let made = shop.run(&["backup", "kept.db", "--json"]).done().json();
    assert_eq!((&made["held"]["readings"], &made["held"]["jobs"]), (&json!(1), &json!(1)), "{made}");
    shop.run(&["backup", "kept.db", "--json"]).problem(5, "store");
    read(20.1);
    read(20.2);
    // Told, and nothing changed; refused while the bench has the shop.
    let told = shop.run(&["restore", "kept.db"]);
    assert_eq!(told.code, 4, "{}", told.err);
    assert!(told.out.contains("1 reading") && told.out.contains("3 readings"), "{}", told.out);
    assert!(told.err.contains("--replace"), "{}", told.err);
    shop.run(&["restore", "kept.db", "--json"]).problem(4, "conflict");
    shop.run(&["restore", "kept.db", "--replace", "--json"]).problem(4, "store");
    let held = shop.run(&["check", "--json"]).done().json();
    assert_eq!(held["readings"], 3);
    drop(served);

    let restored = shop.run(&["restore", "kept.db", "--replace", "--json"]).done().json();
    assert_eq!(restored["held"], made["held"]);
    assert_eq!(shop.run(&["check", "--json"]).done().json(), made["held"]);
    // The shop that was there is whole beside it, and can be gone back to.
    let before = restored["before"].as_str().expect("kept").to_owned();
    assert_eq!(shop.run(&["check", &before, "--json"]).done().json(), held);
    shop.run(&["restore", &before, "--replace"]).done();
    assert_eq!(shop.run(&["check", "--json"]).done().json(), held);

    // A torn one is refused, and the shop stays.
    let kept = shop.path("kept.db");
    let mut bytes = std::fs::read(&kept).expect("read");
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..middle + 64].iter_mut().for_each(|byte| *byte ^= 0x5a);
    std::fs::write(&kept, bytes).expect("written");
    for arguments in [&["check", "kept.db", "--json"][..], &["restore", "kept.db", "--replace", "--json"]] {
        shop.run(arguments).problem(5, "store");
    }
    assert_eq!(shop.run(&["check", "--json"]).done().json(), held);
    shop.run(&["restore", "nowhere.db", "--json"]).problem(5, "store");
}

/// The bench makes one by itself as soon as it is open, and one more when it is asked; a shop without a folder says so.
#[test]
fn the_bench_makes_a_backup_each_day_by_itself() {
    let shop = Shop::stocked();
    let folder = shop.path("safe");
    let to = folder.to_str().expect("a plain path");
    let served = Served::start(shop.command(&["serve", "--json", "--listen", "127.0.0.1:0", "--backups", to]));
    let there =
        || files(&folder, ".db").into_iter().filter(|p| p.extension().is_some_and(|e| e == "db")).collect::<Vec<_>>();
    let begun = std::time::Instant::now();
    while there().is_empty() && begun.elapsed().as_secs() < 30 {
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    let first = there();
    assert_eq!(first.len(), 1, "{first:?}");
    let path = first[0].display().to_string();
    let held = shop.run(&["check", &path, "--json"]).done().json();
    assert_eq!(held, shop.run(&["check", "--json"]).done().json());
    let (status, state) = served.ask("GET", "/api/v1/backups", "");
    let state: serde_json::Value = serde_json::from_str(&state).expect("JSON");
    assert_eq!(status, 200);
    assert!(state["newest_at"].is_string() && state.get("wrong").is_none(), "{state}");
    // Another second, another name.
    std::thread::sleep(std::time::Duration::from_millis(1100));
    let (status, made) = served.ask("POST", "/api/v1/backups", "{}");
    assert_eq!(status, 201, "{made}");
    assert_eq!(there().len(), 2);
    let (_, today) = served.ask("GET", "/", "");
    assert!(!today.contains("not safe"), "nothing is wrong");
}
