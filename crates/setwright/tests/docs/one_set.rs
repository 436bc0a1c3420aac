//! Goal: the page `docs/one-set.md` is true, and one set can be taken from files to its record with it.
//! Method: every command of the page runs in bash in a folder of its own, as it stands there; what the page shows as
//! output must be said. Only the port is another, and the hours of the cure are let pass with a reason.

use crate::folder::{Folder, blocks};
use serde_json::Value;
use std::process::Command;

const PAGE: &str = include_str!("../../../../docs/one-set.md");

/// The owner's word in place of the hours that a test cannot wait.
fn let_pass(folder: &Folder, steps: &[&str]) {
    for step in steps {
        folder.shell_done(&format!("setwright pass 1 4 {step} --reason 'a test does not wait' --by Owner"));
    }
}

#[test]
fn every_command_of_the_page_does_what_the_page_says() {
    let mut folder = Folder::new();
    let mut server = None;
    let mut said = String::new();
    let mut bends = 0;
    for block in blocks(PAGE) {
        match block.language {
            "text" => {
                for line in block.text.lines() {
                    assert!(said.lines().any(|l| l == line), "the page shows “{line}”, the program says:\n{said}");
                }
            }
            "sh" if block.text.contains("setwright serve") => server = Some(folder.serve()),
            "sh" => {
                if block.text.contains("1 4 cured ") {
                    waits(&folder, block.text);
                    let_pass(&folder, &["cured", "gripped", "finish"]);
                }
                if block.text.contains("1 4 bend ") {
                    bends += 1;
                    waits(&folder, block.text);
                    let_pass(&folder, &["bend", "hand_over"]);
                }
                said = folder.shell_done(block.text);
                if let Some(first) = block.text.lines().find(|l| l.starts_with("export ")) {
                    folder.preamble.push_str(&format!("{first}\n"));
                }
                looks_as_the_page_says(&folder, block.text, &said);
            }
            other => panic!("the page has a block of “{other}”"),
        }
    }
    assert!(server.is_some() && bends == 1, "the page was read whole");
    assert!(!folder.path("refused.csv").exists(), "nothing of the example is refused");
    the_record_is_told(&folder);
}

/// Before the cure the bench says until when it waits, and keeps nothing.
fn waits(folder: &Folder, text: &str) {
    let refused = folder.shell(text);
    assert_eq!(refused.status.code(), Some(4), "{refused:?}");
    let said = String::from_utf8_lossy(&refused.stderr).into_owned();
    assert!(said.contains(" waits for "), "{said}");
}

fn looks_as_the_page_says(folder: &Folder, text: &str, said: &str) {
    if text.contains("plan 1") {
        let clubs = said.lines().filter(|l| l.contains(" S") && l.contains(" TP-")).count();
        assert_eq!(clubs, 16, "eight clubs, proposed and accepted:\n{said}");
        assert!(said.contains("Proven best for the stated cost.\nThe parts are held."), "{said}");
    }
    if text.contains("1 4 dry ") {
        assert!(said.contains("Tip 6.0 g (now 4.0 g)"), "{said}");
        let last = said.lines().rev().nth(1).expect("what the tip's reading means");
        assert!(last.starts_with("Finish D2.0 ± "), "{said}");
    }
    if text.contains("take-back") {
        let of = |place: &str| said.lines().find(|l| l.starts_with(place)).expect("a line").to_owned();
        assert!(
            of("4 ").ends_with("E1.1 (Tip weight)") && of("5 ").ends_with(" -"),
            "the slip counts for nothing: {said}"
        );
    }
    if text.contains("1 4 finish ") {
        assert!(!said.contains("doubt"), "{said}");
    }
    if text.contains("glue start") {
        // The clocks by the data of this adhesive: 6 and 24 hours at 23 °C. The answer has them to the minute.
        let text = folder.shell_done("setwright glue list --json");
        let batch = serde_json::from_str::<Value>(&text).expect("a document")[0].clone();
        let time = |value: &Value| -> jiff::Timestamp { value.as_str().expect("a time").parse().expect("a time") };
        let mixed = time(&batch["batch"]["mixed_at"]);
        assert_eq!(time(&batch["handling_at"]).duration_since(mixed).as_hours(), 6);
        assert_eq!(time(&batch["full_cure_at"]).duration_since(mixed).as_hours(), 24);
    }
    if text.contains("curl") {
        let kept: Value = serde_json::from_str(said).expect("a document");
        assert_eq!(kept["readings"][0]["typed"], "D9", "{kept}");
    }
}

fn the_record_is_told(folder: &Folder) {
    let text = std::fs::read_to_string(folder.path("record.json")).expect("the record");
    let record: Value = serde_json::from_str(&text).expect("a document");
    let seven = &record["clubs"][3];
    let line = |what: &str| {
        seven["lines"].as_array().expect("lines").iter().find(|l| l["what"] == what).expect("a line").clone()
    };
    for what in ["finished_length", "loft", "lie"] {
        assert_eq!(line(what)["verdict"], "in", "{what}");
    }
    // The belief weighs four readings of one scale; it must stay with the last of them within the scale's own doubt.
    let built = line("swing_weight")["built"].as_f64().expect("a swing weight");
    assert!((built - 32.0).abs() < 0.4, "{built}");
    assert!(seven["parts"].as_array().expect("parts").iter().any(|p| p["code"] == "TRAY-6"), "{}", seven["parts"]);
    assert_eq!(record["batches"][0]["lot"], "B-7");
    let words = folder.shell_done("setwright record 1");
    let seven: Vec<&str> =
        words.lines().skip_while(|l| !l.starts_with("7-iron, card J1-4: head S7-")).take(9).collect();
    let row = |what: &str| {
        let found = seven.iter().find(|l| l.trim_start().starts_with(what));
        found.unwrap_or_else(|| panic!("no {what}: {words}")).trim_end()
    };
    let length = row("length to the cap");
    assert!(length.contains("37.25 in ± 0.03") && length.ends_with("  in"), "{words}");
    assert!(row("total mass").contains(" g ± "), "{words}");
    // What was not read says so.
    assert_eq!(words.matches("not read").count(), 7 * 4, "{words}");
    let stock = std::fs::read_to_string(folder.path("stock.csv")).expect("the stock");
    let free = |text: &str| text.lines().filter(|l| l.contains(",free,")).count();
    let before = std::fs::read_to_string(folder.path("docs/example/parts.csv")).expect("the parts");
    // A head, a shaft and a grip for each of eight clubs; ferrules and weights are counted and stay.
    assert_eq!(free(&stock), free(&before) - 24);
}

#[test]
fn the_files_come_back_byte_for_byte() {
    let folder = Folder::new();
    folder.shell_done(
        "export SETWRIGHT_DATABASE=sqlite:shop.db
         setwright import docs/example/models.json
         setwright import docs/example/parts.csv
         setwright export > parts.csv; cmp parts.csv docs/example/parts.csv
         setwright export --models > models.json; cmp models.json docs/example/models.json",
    );
}

#[test]
fn a_reference_club_that_contradicts_itself_is_told_by_how_much() {
    let folder = Folder::new();
    let mut sheet: Value =
        serde_json::from_slice(&std::fs::read(folder.path("docs/example/sheet.json")).expect("a sheet")).expect("JSON");
    // By hand: 428.6 g moved 4 cm is 1714.4 g·cm, and a point is 1.75 × 72.0078 = 126.01 g·cm: 13.6 points.
    sheet["reference"]["balance_point_mm"] = 680.4.into();
    std::fs::write(folder.path("contradicts.json"), sheet.to_string()).expect("written");
    let setup = "export SETWRIGHT_DATABASE=sqlite:shop.db
         setwright import docs/example/models.json > said.txt
         setwright import docs/example/parts.csv > said.txt\n";
    assert_eq!(folder.shell_done(&format!("{setup}setwright sheet check docs/example/sheet.json --json")).trim(), "[]");
    let checked =
        folder.shell("export SETWRIGHT_DATABASE=sqlite:shop.db; setwright sheet check contradicts.json --json");
    let found: Value = serde_json::from_slice(&checked.stdout).expect("findings");
    let said = found.to_string();
    assert_eq!(checked.status.code(), Some(2), "{said}");
    assert_eq!(found.as_array().map(Vec::len), Some(1), "{said}");
    assert_eq!(found[0]["severity"], "stop");
    // 680.4 mm are 26.787 in.
    for figure in ["428.6 g", "26.79 in", "13.6 points"] {
        assert!(said.contains(figure), "{figure}: {said}");
    }
    assert_eq!(found[0]["figures"]["at_mm"], 680.4);
}

#[test]
fn the_demonstration_carries_its_stock_into_another_shop() {
    let folder = Folder::new();
    let (mut child, address) = folder.start("demo", "sqlite:demo.db");
    // Once it answers it also listens to being stopped.
    folder.shell_done(&format!("curl -sS --fail {address}/api/v1/shop"));
    let stopped = Command::new("kill").arg(child.id().to_string()).status().expect("kill");
    assert!(stopped.success() && child.wait().expect("it ends").success(), "{address}");
    // A part that a job holds or used is not for another shop: those rows are named, the others kept. As free parts all
    // go.
    let said = folder.shell_done(
        "demo='--database sqlite:demo.db' other='--database sqlite:other.db'
         setwright export $demo --out held.csv
         setwright export --models $demo --out models.json
         setwright import models.json $other > said.txt
         code=0; setwright import held.csv --refused refused.csv $other > told.txt 2>&1 || code=$?
         echo \"code $code\"; grep -cE ',(held|used),' held.csv; grep -cE ',(held|used),' refused.csv
         sed -E 's/,(held|used),/,free,/' refused.csv > mended.csv
         setwright import mended.csv $other > said.txt
         setwright export $other | sort > there.csv; sed -E 's/,(held|used),/,free,/' held.csv | sort | cmp - there.csv
         sed -E 's/,(held|used),/,free,/' held.csv > free.csv
         setwright import models.json --database sqlite:third.db > said.txt
         setwright import free.csv --database sqlite:third.db > said.txt
         setwright export --database sqlite:third.db | cmp - free.csv
         setwright export --models --database sqlite:third.db | cmp - models.json",
    );
    // Eight clubs under way hold a head, a shaft and a grip each, fifteen of the past used theirs.
    assert_eq!(said, "code 2\n69\n69\n");
}

#[test]
fn the_scale_agrees_with_figures_worked_by_hand() {
    let folder = Folder::new();
    let swing_weight = |input: &str| -> Value {
        let said = folder.shell_done(&format!("echo '{input}' | setwright calc swing-weight --json"));
        serde_json::from_str(&said).expect("a document")
    };
    // 13.25 oz (of 28.349 523 125 g) at 30.00 in: 13.25 × (30 − 14) = 212.00 oz·in. The 14 in scale has D0 at 213.5
    // and 1.75 oz·in a point, so this is 0.857 points under D0: C9.1.
    let answer = swing_weight(r#"{"parts": [{"name": "club", "mass_g": 375.631181, "position_mm": 762.0}]}"#);
    assert!((answer["moment_oz_in"].as_f64().expect("a moment") - 212.0).abs() < 1e-4, "{answer}");
    assert_eq!(answer["letter"], "C9.1");
    // The same club as one mass, on the same fulcrum said aloud.
    let same = swing_weight(r#"{"total_mass_g": 375.631181, "balance_point_mm": 762.0, "fulcrum_in": 14}"#);
    assert_eq!(same["letter"], answer["letter"]);
    assert!((same["moment_g_cm"].as_f64().expect("a moment") - 375.631_181 * (76.2 - 35.56)).abs() < 1e-6);
}
