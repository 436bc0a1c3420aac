//! Running the program in a folder of its own.

use serde_json::Value;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

pub const PROGRAM: &str = env!("CARGO_BIN_EXE_setwright");
pub const MODELS: &str = include_str!("shop/models.json");
pub const PARTS: &str = include_str!("shop/parts.csv");
pub const SHEET: &str = include_str!("shop/sheet.json");

/// What one run said.
#[derive(Debug)]
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Ran {
    /// The answer as one whole document: nothing else may stand beside it.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|e| panic!("one document is wanted ({e}): {self:?}"))
    }

    pub fn done(self) -> Self {
        assert_eq!(self.code, 0, "{self:?}");
        assert_eq!(self.err, "", "{self:?}");
        self
    }

    /// Done in a shop that was made by it, which is said.
    pub fn made(self) -> Self {
        assert_eq!(self.code, 0, "{self:?}");
        assert!(self.err.starts_with("A new shop was made at ") && self.err.lines().count() == 1, "{self:?}");
        self
    }

    /// A refusal in JSON: its exit code, its kind, the same words as on standard error.
    pub fn problem(&self, code: i32, kind: &str) -> String {
        assert_eq!(self.code, code, "{self:?}");
        let problem = self.json();
        assert_eq!(problem["type"], format!("urn:setwright:problem:{kind}"), "{problem}");
        assert_eq!(problem["exit_code"], code);
        assert!(problem["title"].as_str().is_some_and(|t| !t.is_empty()));
        let detail = problem["detail"].as_str().expect("a detail");
        // On standard error the lines are broken to fit a terminal.
        let flat = |text: &str| text.replace('│', "").split_whitespace().collect::<String>();
        assert!(flat(&self.err).contains(&flat(detail)), "the same words twice: {self:?}");
        detail.to_owned()
    }
}

/// A folder to work in.
pub struct Shop {
    folder: tempfile::TempDir,
}

impl Shop {
    pub fn empty() -> Self {
        Self { folder: tempfile::tempdir().expect("a folder") }
    }

    /// With models, parts and files of the invented shop.
    pub fn stocked() -> Self {
        let shop = Self::empty();
        shop.write("models.json", MODELS);
        shop.write("parts.csv", PARTS);
        shop.write("sheet.json", SHEET);
        shop.run(&["import", "models.json"]).made();
        shop.run(&["import", "parts.csv"]).done();
        shop
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub fn write(&self, name: &str, text: impl AsRef<[u8]>) {
        std::fs::write(self.path(name), text).expect("written");
    }

    pub fn read(&self, name: &str) -> String {
        std::fs::read_to_string(self.path(name)).expect("read")
    }

    /// The program in this shop, not started yet.
    pub fn command(&self, arguments: &[&str]) -> Command {
        command(self.folder.path(), arguments)
    }

    pub fn run(&self, arguments: &[&str]) -> Ran {
        self.run_with(arguments, "")
    }

    pub fn run_with(&self, arguments: &[&str], input: &str) -> Ran {
        Self::ran(command(self.folder.path(), arguments), input)
    }

    /// Runs it without any setting.
    pub fn run_bare(&self, arguments: &[&str]) -> Ran {
        Self::ran(bare(self.folder.path(), arguments), "")
    }

    pub fn ran(mut command: Command, input: &str) -> Ran {
        let mut child = command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        // One that refuses its arguments may end before it reads.
        let _ = child.stdin.take().expect("its input").write_all(input.as_bytes());
        let ended = child.wait_with_output().expect("the program ends");
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
        Ran { code: ended.status.code().expect("an exit code"), out: text(ended.stdout), err: text(ended.stderr) }
    }

    pub fn serve(&self, command_name: &str) -> Served {
        Served::start(command(self.folder.path(), &[command_name, "--json", "--listen", "127.0.0.1:0"]))
    }
}

/// A program that serves until the test is over.
pub struct Served {
    child: Child,
    pub address: String,
    pub greeting: Value,
}

impl Served {
    /// Starts it and waits for its greeting, a document on one line.
    pub fn start(mut command: Command) -> Self {
        let mut child = command.stdin(Stdio::null()).stdout(Stdio::piped()).spawn().expect("the program starts");
        let mut line = String::new();
        BufReader::new(child.stdout.take().expect("its output")).read_line(&mut line).expect("a line");
        let greeting: Value = serde_json::from_str(&line).expect("a document");
        let address = greeting["address"].as_str().expect("an address").trim_start_matches("http://").to_owned();
        Self { child, address, greeting }
    }

    /// One request by hand: (status, body).
    pub fn ask(&self, method: &str, path: &str, body: &str) -> (u16, String) {
        self.ask_with(method, path, &[], body)
    }

    /// The same with more headers.
    pub fn ask_with(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &str) -> (u16, String) {
        let more: String = headers.iter().map(|(name, value)| format!("{name}: {value}\r\n")).collect();
        let mut stream = TcpStream::connect(&self.address).expect("it listens");
        let length = body.len();
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\n\
             Content-Length: {length}\r\n{more}\r\n{body}"
        )
        .expect("sent");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("an answer");
        let (head, body) = answer.split_once("\r\n\r\n").expect("a head and a body");
        let status = head.split(' ').nth(1).and_then(|s| s.parse().ok()).expect("a status");
        (status, body.to_owned())
    }

    /// Asks the program to stop, as a service manager does, and waits: its exit code.
    pub fn stop(mut self) -> Option<i32> {
        let done = Command::new("kill").args(["-TERM", &self.child.id().to_string()]).status().expect("kill");
        assert!(done.success());
        self.child.wait().expect("it ends").code()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The program as a user without any setting runs it, whose home is the folder.
pub fn bare(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(PROGRAM);
    command.args(arguments).current_dir(folder).env("NO_COLOR", "1").env("HOME", folder);
    for name in ["DATABASE", "LISTEN", "CONFIG", "NAME", "OPEN_TO_NETWORK", "BACKUPS", "HTTPS", "NETWORK_NAME"] {
        command.env_remove(format!("SETWRIGHT_{name}"));
    }
    for name in ["RUST_LOG", "XDG_DATA_HOME", "XDG_CONFIG_HOME"] {
        command.env_remove(name);
    }
    command
}

/// The same with the shop in the folder, where a test looks at it. The invented shop keeps its own place.
pub fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = bare(folder, arguments);
    if arguments.first() != Some(&"demo") {
        command.env("SETWRIGHT_DATABASE", "sqlite:setwright.db");
    }
    command
}
