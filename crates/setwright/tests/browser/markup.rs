//! Every page's HTML held against html-validate, an independent validator: its rules of the HTML standard, among them which
//! element may hold which. `scripts/html-validator-for-tests` installs it.

use crate::harness::Bench;
use crate::pages;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What the validator says of the files of a folder: `file: rule: message, at line:column`.
fn found(folder: &Path) -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let told =
        Command::new(root.join("../../scripts/html-validator-for-tests")).output().expect("the script can be run");
    assert!(told.status.success(), "html-validate was not installed: {}", String::from_utf8_lossy(&told.stderr));
    let tool = PathBuf::from(String::from_utf8(told.stdout).expect("a path").trim());
    // Through a file: what it writes to a pipe is cut off when it ends.
    let said = tempfile::NamedTempFile::new().expect("a file");
    let ended = Command::new("node")
        .arg(tool.join("node_modules/html-validate/bin/html-validate.js"))
        .arg("--config")
        .arg(root.join("tests/browser/html/rules.json"))
        .args(["--formatter", "json"])
        .arg(folder)
        .stdout(said.reopen().expect("a file"))
        .status()
        .expect("node can be run");
    let text = std::fs::read_to_string(said.path()).expect("text");
    let files: Value = serde_json::from_str(&text).unwrap_or_else(|error| panic!("{error}, {ended}: {text}"));
    let mut all = Vec::new();
    for file in files.as_array().expect("files") {
        let name = Path::new(file["filePath"].as_str().expect("a path")).file_name().expect("a name");
        for message in file["messages"].as_array().expect("messages") {
            let text = |key: &str| message[key].as_str().unwrap_or_default().to_owned();
            all.push(format!(
                "{}: {}: {}, at {}:{}",
                name.to_string_lossy(),
                text("ruleId"),
                text("message"),
                message["line"],
                message["column"]
            ));
        }
    }
    all
}

#[test]
fn every_page_is_valid_html() {
    let bench = Bench::open();
    let folder = tempfile::tempdir().expect("a folder");
    // The validator itself must find what is wrong, or silence means nothing: the five kinds that pages once had.
    for (at, wrong) in [
        "<span><form action=\"/\"><button type=\"submit\">a</button></form></span>",
        "<label>a <input type=\"text\"> <input type=\"text\"></label>",
        "<span><figure>a</figure></span>",
        "<span><ul><li>a</li></ul></span>",
        "<p><div>a</div></p>",
    ]
    .into_iter()
    .enumerate()
    {
        let page = format!("<!DOCTYPE html><html lang=\"en\"><head><title>a</title></head><body>{wrong}</body></html>");
        std::fs::write(folder.path().join(format!("wrong-{at}.html")), page).expect("written");
    }
    let pages = pages::all(&bench);
    assert!(pages.len() > 50, "the links led to {pages:?} only");
    for page in &pages {
        let name = page.trim_start_matches('/').replace(|c: char| !c.is_ascii_alphanumeric(), "-");
        let text = bench.page(page).expect("a page");
        std::fs::write(folder.path().join(format!("page-{name}.html")), text).expect("written");
    }
    let all = found(folder.path());
    for at in 0..5 {
        assert!(all.iter().any(|line| line.starts_with(&format!("wrong-{at}"))), "not found: {at} of {all:#?}");
    }
    let wrong: Vec<&String> = all.iter().filter(|line| line.starts_with("page-")).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}
