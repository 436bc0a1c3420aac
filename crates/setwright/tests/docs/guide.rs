//! Goal: the chapters of `docs/guide` are true: their commands run, and what they call a button, a link or a heading is called so in the
//! program. Method: every command of a chapter runs in bash beside a shop with the example's models; every phrase in italics is
//! looked up in the English texts.

use crate::folder::{Folder, blocks};
use std::path::PathBuf;

fn folder_of(path: &str) -> Vec<(String, &'static str)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(path);
    let files = std::fs::read_dir(folder).expect("the folder").map(|file| file.expect("a file").path());
    let read = |path: PathBuf| {
        let name = path.file_name().and_then(|name| name.to_str()).expect("a name").to_owned();
        let text: &'static str = std::fs::read_to_string(path).expect("a text").leak();
        (name, text)
    };
    let mut all: Vec<(String, &'static str)> = files.filter(|path| path.is_file()).map(read).collect();
    all.sort();
    all
}

fn chapters() -> Vec<(String, &'static str)> {
    folder_of("../../docs/guide")
}

#[test]
fn the_commands_of_each_chapter_run() {
    let mut folder = Folder::new();
    folder.preamble = "export SETWRIGHT_DATABASE=sqlite:shop.db\n".to_owned();
    folder.shell_done("setwright import docs/example/models.json\nsetwright import docs/example/parts.csv");
    let mut ran = 0;
    for (name, text) in chapters() {
        for block in blocks(text) {
            match block.language {
                "sh" => {
                    folder.shell_done(block.text);
                    ran += block.text.lines().count();
                }
                "text" => {}
                other => panic!("{name} has a block of “{other}”"),
            }
        }
    }
    assert!(ran >= 8, "{ran} commands");
}

/// The phrases in italics of a text.
fn italics(text: &str) -> Vec<String> {
    let without_blocks: String = text.split("```").step_by(2).collect();
    let without_bold: String = without_blocks.split("**").step_by(2).collect();
    let pieces: Vec<&str> = without_bold.split('*').collect();
    pieces.iter().skip(1).step_by(2).map(|piece| piece.split_whitespace().collect::<Vec<_>>().join(" ")).collect()
}

#[test]
fn what_a_chapter_names_is_called_so_in_the_program() {
    assert_eq!(italics("**Stock**, *Weigh in*: *New\nhead* `*x*`"), ["Weigh in", "New head", "x"]);
    let texts: String = folder_of("../words/texts/en").into_iter().map(|(_, text)| text.to_lowercase()).collect();
    let mut unknown = Vec::new();
    for (name, text) in chapters() {
        for phrase in italics(text) {
            if !texts.contains(&phrase.to_lowercase()) {
                unknown.push(format!("{name}: {phrase}"));
            }
        }
    }
    assert!(unknown.is_empty(), "{unknown:#?}");
}

#[test]
fn every_link_of_the_guide_leads_to_a_file() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../docs/guide");
    for (name, text) in chapters() {
        for piece in text.split("](").skip(1) {
            let address = piece.split(')').next().expect("an address");
            let file = address.split('#').next().expect("a file");
            assert!(folder.join(file).is_file(), "{name} leads to {address}");
        }
    }
}
