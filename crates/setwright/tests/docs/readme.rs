//! Goal: every line of the README's code blocks runs as it is printed. Method: the lines run in bash, one after the other, in
//! a folder that has what a fresh clone has of them, with the program where a release build leaves it. The two lines that
//! set everything up are run elsewhere (`scripts/demo-smoke`, and this is `./test`); here they must still be there.

use crate::folder::{Block, Folder, blocks};

const PAGE: &str = include_str!("../../../../README.md");

#[test]
fn every_line_of_the_readme_runs_as_printed() {
    let blocks = blocks(PAGE);
    let [start, lines] = blocks.as_slice() else { panic!("{} blocks", blocks.len()) };
    assert_eq!((start.language, lines.language), ("sh", "sh"));
    let set_up: Vec<&str> = start.text.lines().filter_map(|line| line.split(" #").next()).map(str::trim).collect();
    assert_eq!(set_up, ["cargo run --release -- demo", "./test"]);
    run_one_by_one(lines);
}

fn run_one_by_one(block: &Block) {
    let mut folder = Folder::new();
    folder.link_release_build();
    let mut commands = 0;
    let mut served = false;
    for line in block.text.lines().filter(|line| !line.trim().is_empty()) {
        if line.starts_with("export ") {
            folder.preamble.push_str(&format!("{line}\n"));
            folder.shell_done("test \"$(command -v setwright)\" = \"$PWD/target/release/setwright\"");
        } else if line.starts_with("setwright serve") {
            // It would not end; the shop that the lines made is served and its job is there.
            let server = folder.serve();
            let said = folder.shell_done("curl -fsS http://127.0.0.1:7340/plan/1");
            assert!(said.contains("Odell Farrowby"), "{said}");
            drop(server);
            served = true;
        } else {
            let said = folder.shell_done(line);
            let quiet = line.contains(" --out ");
            assert!(quiet || !said.trim().is_empty(), "{line} says nothing");
        }
        commands += 1;
    }
    assert!(served && commands > 15, "{commands} commands");
    assert!(!folder.path("bad.csv").exists(), "nothing of the example is refused");
    assert!(std::fs::read_to_string(folder.path("labels.html")).expect("labels").matches("<svg").count() == 2);
}

/// Goal: nothing that the README shows or leads to is missing. Method: each address of a link or a picture, in the folder.
#[test]
fn every_link_and_picture_of_the_readme_is_there() {
    let top = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut found = 0;
    for piece in PAGE.split("](").skip(1) {
        let address = piece.split(')').next().expect("an address");
        if address.starts_with("https://") {
            continue;
        }
        let file = address.split('#').next().expect("a file");
        assert!(top.join(file).is_file(), "the README leads to {address}");
        found += 1;
    }
    assert!(found > 15, "{found} links");
}
