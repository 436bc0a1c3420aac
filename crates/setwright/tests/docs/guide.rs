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
    let mut unknown = Vec::new();
    for (language, folder) in [("en", "../../docs/guide"), ("de", "../../docs/guide/de")] {
        let texts = folder_of(&format!("../words/texts/{language}"));
        let texts: String = texts.into_iter().map(|(_, text)| text.to_lowercase()).collect();
        for (name, text) in folder_of(folder) {
            let phrases = italics(text).into_iter().filter(|phrase| !texts.contains(&phrase.to_lowercase()));
            unknown.extend(phrases.map(|phrase| format!("{language}, {name}: {phrase}")));
        }
    }
    assert!(unknown.is_empty(), "{unknown:#?}");
}

/// A chapter in another language has the blocks of the English one, letter for letter, and as many headings.
#[test]
fn each_chapter_is_there_in_german_with_its_commands() {
    let (english, german) = (chapters(), folder_of("../../docs/guide/de"));
    let english: Vec<_> = english.into_iter().filter(|(name, _)| name != "README.md").collect();
    let names = |of: &[(String, &str)]| of.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
    assert_eq!(names(&english), names(&german));
    let code =
        |text: &'static str| blocks(text).into_iter().map(|block| (block.language, block.text)).collect::<Vec<_>>();
    let headings = |text: &str| text.lines().filter(|line| line.starts_with('#')).count();
    for ((name, english), (_, german)) in english.into_iter().zip(german) {
        assert_eq!(code(english), code(german), "{name}");
        assert_eq!(headings(english), headings(german), "{name}");
        // As many pictures, those of the German one in German.
        let pictures = |text: &str, folder: &str| text.matches(&format!("]({folder}")).count();
        assert_eq!(english.matches("![").count(), pictures(english, "../pictures/"), "{name}");
        assert_eq!(pictures(english, "../pictures/"), pictures(german, "../../pictures/de/"), "{name}");
        assert_ne!(english.lines().next(), german.lines().next(), "{name} is in English");
    }
}

#[test]
fn every_link_of_the_guide_leads_to_a_file() {
    for at in ["../../docs/guide", "../../docs/guide/de"] {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(at);
        for (name, text) in folder_of(at) {
            for piece in text.split("](").skip(1) {
                let address = piece.split(')').next().expect("an address");
                let file = address.split('#').next().expect("a file");
                assert!(folder.join(file).is_file(), "{at}/{name} leads to {address}");
            }
        }
    }
}
