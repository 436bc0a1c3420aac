//! The real program and a real browser: started on free ports, ended by their own process ids.

use base64::prelude::*;
use serde_json::{Value, json};
use std::ffi::OsString;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::OnceLock;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use thirtyfour::prelude::*;
use thirtyfour::{ChromiumLikeCapabilities, LoggingPrefsLogLevel};

/// How long a page may take to show what it must; generous, since it only ends a failing test.
const PATIENCE: Duration = Duration::from_secs(20);

/// A process that ends when this is dropped.
struct Process(Child);

impl Drop for Process {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// Starts a command and reads its standard output until `found` makes something of a line; else says why it did not.
fn start<T>(command: &mut Command, found: impl Fn(&str) -> Option<T>) -> Result<(Process, T), String> {
    let child = command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn();
    let mut process = Process(child.map_err(|error| error.to_string())?);
    let mut out = BufReader::new(process.0.stdout.take().expect("standard output"));
    let mut told = String::new();
    loop {
        let mut line = String::new();
        let read = out.read_line(&mut line).expect("a line of text");
        if read == 0 {
            return Err(format!("it ended and said {told:?}"));
        }
        if let Some(value) = found(&line) {
            // Read on in the background, so that the process is never stopped by a full pipe.
            std::thread::spawn(move || std::io::copy(&mut out, &mut std::io::sink()));
            return Ok((process, value));
        }
        told.push_str(&line);
    }
}

/// The invented shop, served, and a driver for browsers.
pub struct Bench {
    sessions: std::cell::RefCell<Vec<String>>,
    driver_port: u16,
    _driver: Process,
    /// `http://127.0.0.1:PORT`.
    pub address: String,
    _server: Process,
    folder: TempDir,
}

/// Serves the invented shop from a folder; it is made there if it is not there yet.
fn demonstration(folder: &Path, more: &[&str]) -> (Process, String) {
    served(folder, "demo", more)
}

/// Serves the shop of a folder: `demo` the invented one, `serve` an empty one where there is none.
fn served(folder: &Path, how: &str, more: &[&str]) -> (Process, String) {
    let database = format!("sqlite:{}", folder.join("shop.db").display());
    let mut command = Command::new(env!("CARGO_BIN_EXE_setwright"));
    command.args([how, "--json", "--listen", "127.0.0.1:0", "--database", &database]).args(more);
    command.current_dir(folder);
    let server =
        start(&mut command, |line| serde_json::from_str::<Value>(line).ok()?["address"].as_str().map(str::to_owned));
    server.unwrap_or_else(|why| panic!("setwright did not start: {why}"))
}

/// The invented shop as it is made, by the names of its files: made once, since that takes longer than many a test.
fn made_once() -> &'static [(OsString, Vec<u8>)] {
    static MADE: OnceLock<Vec<(OsString, Vec<u8>)>> = OnceLock::new();
    MADE.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a temporary folder");
        drop(demonstration(folder.path(), &[]));
        let files = std::fs::read_dir(folder.path()).expect("the folder").map(|file| file.expect("a file"));
        // The database and what it has not yet taken in; its shared memory belongs to the process that is gone.
        let is_kept = |name: &OsString| name == "shop.db" || name == "shop.db-wal";
        let of_shop = files.filter(|file| is_kept(&file.file_name()));
        of_shop.map(|file| (file.file_name(), std::fs::read(file.path()).expect("a file of the shop"))).collect()
    })
}

impl Bench {
    /// Starts both.
    pub fn open() -> Self {
        Self::with(&[])
    }

    /// Starts both, the server with more arguments.
    pub fn with(more: &[&str]) -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        for (name, bytes) in made_once() {
            std::fs::write(folder.path().join(name), bytes).expect("a file of the shop");
        }
        let served = demonstration(folder.path(), more);
        Self::of(folder, served)
    }

    /// A shop that has nothing yet.
    pub fn empty() -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let served = served(folder.path(), "serve", &[]);
        Self::of(folder, served)
    }

    fn of(folder: TempDir, (server, address): (Process, String)) -> Self {
        let mut command = Command::new("chromedriver");
        command.arg("--port=0");
        let mut driver = || {
            start(&mut command, |line| {
                line.split_once("started successfully on port ")?.1.trim().trim_end_matches('.').parse().ok()
            })
        };
        // It chooses a free port of IPv6 and ends where another test has that number of IPv4.
        let started = driver().or_else(|_| driver()).or_else(|_| driver());
        let (driver, driver_port) = started.unwrap_or_else(|why| {
            panic!("chromedriver cannot be started. Run ./test, which installs it with the browser: {why}")
        });
        Self { sessions: <_>::default(), driver_port, _driver: driver, address, _server: server, folder }
    }

    /// What a command of the program answers on this shop, in JSON.
    pub fn command(&self, arguments: &[&str]) -> Value {
        let database = format!("sqlite:{}", self.folder.path().join("shop.db").display());
        let mut command = Command::new(env!("CARGO_BIN_EXE_setwright"));
        let out = command.args(arguments).args(["--json", "--database", &database]).output().expect("the program");
        serde_json::from_slice(&out.stdout).unwrap_or_else(|e| panic!("{arguments:?}: {e}: {out:?}"))
    }

    /// A browser of its own, as another tablet would be.
    pub async fn browser(&self) -> Browser {
        let mut wanted = DesiredCapabilities::chrome();
        let profile = self.folder.path().join(format!("profile-{}", self.sessions.borrow().len()));
        for argument in [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-dev-shm-usage",
            "--window-size=1024,768",
            // A name of somebody else that points at this machine.
            "--host-resolver-rules=MAP evil.example 127.0.0.1",
            &format!("--user-data-dir={}", profile.display()),
        ] {
            wanted.add_arg(argument).expect("an argument");
        }
        wanted.set_browser_log_level(LoggingPrefsLogLevel::All).expect("a log level");
        let driver = WebDriver::new(format!("http://127.0.0.1:{}", self.driver_port), wanted)
            .await
            .expect("chromium cannot be started. Run ./test, which installs it");
        self.sessions.borrow_mut().push(driver.session_id().to_string());
        Browser { driver, address: self.address.clone() }
    }

    /// A page as the server sends it; none where the address leads to something else, such as a file to keep.
    pub fn page(&self, path: &str) -> Option<String> {
        let host = self.address.strip_prefix("http://").expect("an http address").parse().expect("host and port");
        let answer = http(host, &format!("GET {path} HTTP/1.0\r\n\r\n")).expect("an answer");
        let (head, body) = answer.split_once("\r\n\r\n").expect("a head and a body");
        if head.starts_with("HTTP/1.0 30") || head.starts_with("HTTP/1.1 30") {
            return None;
        }
        assert!(head.contains(" 200 "), "{path}: {head}");
        head.to_lowercase().contains("content-type: text/html").then(|| body.to_owned())
    }

    /// What the API answers.
    pub fn api(&self, path: &str) -> Value {
        let host = self.address.strip_prefix("http://").expect("an http address").parse().expect("host and port");
        let answer = http(host, &format!("GET /api/v1{path} HTTP/1.0\r\n\r\n")).expect("an answer");
        let (head, body) = answer.split_once("\r\n\r\n").expect("a head and a body");
        assert!(head.contains(" 200 "), "{path}: {answer}");
        serde_json::from_str(body).expect("JSON")
    }

    /// The readings of a club of job 1 that stand, as typed, in the order of entry.
    pub fn readings(&self, slot: usize) -> Vec<String> {
        let record = self.api("/jobs/1/record");
        let readings = record["clubs"][slot - 1]["readings"].as_array().expect("readings").clone();
        let stands = |r: &&Value| r["stands"] == json!(true);
        readings.iter().filter(stands).map(|r| r["reading"]["typed"].as_str().expect("typed").to_owned()).collect()
    }
}

impl Drop for Bench {
    /// A driver that is killed would leave its browsers behind: they are closed first, also when a test failed.
    fn drop(&mut self) {
        let driver = SocketAddr::from(([127, 0, 0, 1], self.driver_port));
        for session in self.sessions.borrow().iter() {
            let _ = end_session(driver, session);
        }
    }
}

/// Waits for the first piece of the answer alone: the driver understands HTTP 1.1 only and leaves the connection open.
fn end_session(driver: SocketAddr, session: &str) -> std::io::Result<usize> {
    let mut stream = TcpStream::connect(driver)?;
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.write_all(format!("DELETE /session/{session} HTTP/1.1\r\nHost: localhost\r\n\r\n").as_bytes())?;
    stream.read(&mut [0; 64])
}

fn http(to: SocketAddr, request: &str) -> std::io::Result<String> {
    let mut stream = TcpStream::connect(to)?;
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.write_all(request.as_bytes())?;
    let mut answer = String::new();
    stream.read_to_string(&mut answer)?;
    Ok(answer)
}

impl Drop for Browser {
    /// A test that fails leaves the browser to [`Bench`]: the driver's own way to end it waits for the runtime that is
    /// stopped right here, for two minutes.
    fn drop(&mut self) {
        let _ = self.driver.clone().leak();
    }
}

/// One browser window.
pub struct Browser {
    pub driver: WebDriver,
    address: String,
}

impl Browser {
    /// Opens a page by its path.
    pub async fn open(&self, path: &str) {
        self.driver.goto(format!("{}{path}", self.address)).await.unwrap_or_else(|e| panic!("{path}: {e}"));
    }

    /// The value of a JavaScript expression.
    pub async fn value(&self, expression: &str) -> Value {
        self.try_value(expression).await.unwrap_or_else(|e| panic!("{expression}: {e}"))
    }

    async fn try_value(&self, expression: &str) -> WebDriverResult<Value> {
        Ok(self.driver.execute(format!("return ({expression});"), vec![]).await?.json().clone())
    }

    /// The text of the first element that a selector finds; empty where there is none.
    pub async fn text(&self, selector: &str) -> String {
        let found = self.value(&format!("document.querySelector({})?.textContent ?? ''", json!(selector))).await;
        found.as_str().unwrap_or_default().trim().to_owned()
    }

    /// Waits until a JavaScript expression is true. A page that is just being left counts as not yet.
    pub async fn until(&self, expression: &str) {
        self.until_within(PATIENCE, expression).await;
    }

    /// Waits so long and no longer.
    pub async fn until_within(&self, patience: Duration, expression: &str) {
        let begun = Instant::now();
        while !matches!(self.try_value(&format!("!!({expression})")).await, Ok(Value::Bool(true))) {
            if begun.elapsed() > patience {
                let page =
                    self.try_value("location.pathname + location.search + '\\n' + document.activeElement?.outerHTML + '=' + document.activeElement?.value + '\\n' + document.body.innerText").await;
                panic!(
                    "not within {patience:?}: {expression}\n{}",
                    page.unwrap_or_default().as_str().unwrap_or_default()
                );
            }
            tokio::time::sleep(Duration::from_millis(40)).await;
        }
    }

    /// Sends a form as the page that is open would.
    pub async fn post(&self, path: &str, form: &str) {
        let sent = format!(
            "fetch({}, {{ method: 'POST', body: new URLSearchParams({}) }}).then((a) => a.status)",
            json!(path),
            json!(form)
        );
        assert_eq!(self.value(&sent).await, json!(200), "{path}");
    }

    /// Sets the parts scale up on a pseudo-terminal, whose far end is given.
    #[cfg(unix)]
    pub async fn connect_scale(&self) -> serialport::TTYPort {
        use serialport::SerialPort;
        let (far, near) = serialport::TTYPort::pair().expect("a pseudo-terminal");
        let port = near.name().expect("a name");
        drop(near);
        self.open("/shop/scales").await;
        let scale = format!(
            "name=Parts scale&port={port}&baud=9600&data_bits=8&stop_bits=1&shows=mass&parity=none&mark=ST&means=settled&unit=g&overload=OL&ignore=&skip=&ask="
        );
        self.post("/shop/scales", &scale).await;
        far
    }

    /// Types on the keyboard, to whatever has the focus.
    pub async fn keys(&self, text: impl AsRef<str>) {
        self.driver.action_chain().send_keys(text.as_ref()).perform().await.expect("keys");
    }

    /// Presses one letter that may lead to another page. The driver's own way types it again there when the page is left
    /// before it has heard of the key; the browser's is pressed once.
    pub async fn one_key(&self, letter: &str) {
        self.pressed(json!({ "key": letter, "text": letter })).await;
    }

    async fn pressed(&self, mut event: Value) {
        for kind in ["keyDown", "keyUp"] {
            event["type"] = json!(kind);
            // The answer is lost with the page that is left; what the key did is what a test looks at.
            let _ = self.driver.cdp().send_raw("Input.dispatchKeyEvent", event.clone()).await;
        }
    }

    /// Types and presses Enter.
    pub async fn enter(&self, text: &str) {
        if !text.is_empty() {
            self.keys(text).await;
        }
        self.pressed(json!({ "key": "Enter", "text": "\r", "windowsVirtualKeyCode": 13 })).await;
    }

    /// Replaces what stands in the field under the cursor, and presses Enter.
    pub async fn enter_instead(&self, text: &str) {
        self.driver
            .action_chain()
            .key_down(Key::Control)
            .send_keys("a")
            .key_up(Key::Control)
            .perform()
            .await
            .expect("keys");
        self.enter(text).await;
    }

    /// Moves the cursor to an element as the Tab key would, and presses Enter there.
    pub async fn press(&self, selector: &str) {
        self.until(&format!("document.querySelector({})", json!(selector))).await;
        self.value(&format!("document.querySelector({}).focus()", json!(selector))).await;
        self.enter("").await;
    }

    /// Sets the size of the page as a tablet or phone has it.
    pub async fn size(&self, width: u32, height: u32) {
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false }),
        )
        .await;
        self.cdp("Emulation.setTouchEmulationEnabled", json!({ "enabled": true })).await;
    }

    /// The dark scheme, or the light one.
    pub async fn dark(&self, dark: bool) {
        let scheme = json!([{ "name": "prefers-color-scheme", "value": if dark { "dark" } else { "light" } }]);
        self.cdp("Emulation.setEmulatedMedia", json!({ "features": scheme })).await;
    }

    /// Drops the network, or brings it back.
    pub async fn offline(&self, offline: bool) {
        let speed = json!({ "offline": offline, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 });
        self.cdp("Network.enable", json!({})).await;
        self.cdp("Network.emulateNetworkConditions", speed).await;
    }

    /// Runs a script at the beginning of every page to come, before any of the page's own.
    pub async fn before_each_page(&self, script: &str) {
        self.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script })).await;
    }

    /// Turns the scripts of pages off.
    pub async fn scripts_off(&self) {
        self.cdp("Emulation.setScriptExecutionDisabled", json!({ "value": true })).await;
    }

    /// The page as the printer gets it, a PDF. `paper_in` is what lies in the printer where the page asks for none.
    pub async fn print(&self, paper_in: (f64, f64)) -> Vec<u8> {
        let with = json!({ "preferCSSPageSize": true, "paperWidth": paper_in.0, "paperHeight": paper_in.1 });
        let printed = self.cdp("Page.printToPDF", with).await;
        BASE64_STANDARD.decode(printed["data"].as_str().expect("a file")).expect("base64")
    }

    async fn cdp(&self, command: &str, with: Value) -> Value {
        self.driver.cdp().send_raw(command, with).await.unwrap_or_else(|e| panic!("{command}: {e}"))
    }

    /// Errors that the pages wrote to the console since this was asked last.
    pub async fn console_errors(&self) -> Vec<String> {
        let log = self.driver.browser_log().await.expect("the console");
        log.into_iter().filter(|entry| entry.level == "SEVERE").map(|entry| entry.message).collect()
    }

    /// Closes the browser.
    pub async fn close(self) {
        self.driver.clone().quit().await.expect("an end");
    }
}
