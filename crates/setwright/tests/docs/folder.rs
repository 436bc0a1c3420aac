//! A folder as somebody has it who follows a page, and the page's commands run there.

use serde_json::Value;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};

const PROGRAM: &str = env!("CARGO_BIN_EXE_setwright");
/// The address that a page names; the test's own is put in its place.
const PORT: &str = "127.0.0.1:7340";

/// A fenced piece of the page.
pub struct Block {
    pub language: &'static str,
    pub text: &'static str,
}

/// The fenced pieces of a page.
pub fn blocks(page: &'static str) -> Vec<Block> {
    page.split("\n```")
        .skip(1)
        .step_by(2)
        .map(|piece| {
            let (language, text) = piece.split_once('\n').expect("a fence and its text");
            Block { language, text }
        })
        .collect()
}

/// A folder with the example files where the page expects them, and the program on the path.
pub struct Folder {
    folder: tempfile::TempDir,
    /// What every later command of the page builds on: the variable and the helper.
    pub preamble: String,
    address: String,
}

impl Folder {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/example");
        std::fs::create_dir_all(folder.path().join("docs/example")).expect("a folder");
        for file in std::fs::read_dir(&examples).expect("the examples") {
            let from = file.expect("a file").path();
            let name = from.file_name().expect("a name");
            std::fs::copy(&from, folder.path().join("docs/example").join(name)).expect("copied");
        }
        Self { folder, preamble: String::new(), address: PORT.to_owned() }
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Puts the program where a release build leaves it.
    pub fn link_release_build(&self) {
        let folder = self.path("target/release");
        std::fs::create_dir_all(&folder).expect("a folder");
        std::os::unix::fs::symlink(PROGRAM, folder.join("setwright")).expect("a link");
    }

    pub fn command(&self, program: &str) -> Command {
        let programs = Path::new(PROGRAM).parent().expect("a folder").display().to_string();
        let path = std::env::var("PATH").unwrap_or_default();
        let mut command = Command::new(program);
        command.current_dir(self.folder.path()).env("PATH", format!("{programs}:{path}")).env("NO_COLOR", "1");
        for name in ["SETWRIGHT_DATABASE", "SETWRIGHT_LISTEN", "RUST_LOG", "http_proxy", "all_proxy"] {
            command.env_remove(name);
        }
        command
    }

    pub fn shell(&self, text: &str) -> Output {
        let script = format!("set -euo pipefail\n{}{text}", self.preamble).replace(PORT, &self.address);
        self.command("bash").args(["-c", &script]).stdin(Stdio::null()).output().expect("bash")
    }

    pub fn shell_done(&self, text: &str) -> String {
        let output = self.shell(text);
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        assert!(output.status.success(), "{text}\n{said}\n{}", String::from_utf8_lossy(&output.stderr));
        said
    }

    pub fn serve(&mut self) -> Server {
        let (child, address) = self.start("serve", "sqlite:shop.db");
        address.trim_start_matches("http://").clone_into(&mut self.address);
        Server(child)
    }

    /// Starts `serve` or `demo` on a free port, and says its address.
    pub fn start(&self, command: &str, database: &str) -> (Child, String) {
        let mut child = self
            .command(PROGRAM)
            .args([command, "--json", "--listen", "127.0.0.1:0", "--database", database])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .expect("the program starts");
        let mut line = String::new();
        BufReader::new(child.stdout.take().expect("its output")).read_line(&mut line).expect("a line");
        let greeting: Value = serde_json::from_str(&line).expect("a document");
        (child, greeting["address"].as_str().expect("an address").to_owned())
    }
}

/// The bench of the page; it ends when this is dropped.
pub struct Server(Child);

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
