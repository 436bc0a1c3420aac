//! Goal: a stranger can write a program against the API from its description alone.
//! Method: general tools that know nothing of this program judge the description, make clients from it in two languages,
//! and send requests made up from it. The tools are pinned (`python/requirements.txt`, `typescript/package-lock.json`) and
//! installed by `scripts/api-tools-for-tests`; the server is the real binary on a folder of its own.

#[path = "../cli/run.rs"]
#[allow(dead_code, reason = "the tests of the command line use the rest")]
mod run;

use run::{Served, Shop};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::LazyLock;

/// The tools, installed the first time.
static TOOLS: LazyLock<PathBuf> = LazyLock::new(|| {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../scripts/api-tools-for-tests");
    let told = Command::new(script).output().expect("scripts/api-tools-for-tests can be run");
    assert!(told.status.success(), "the tools were not installed: {}", String::from_utf8_lossy(&told.stderr));
    PathBuf::from(String::from_utf8(told.stdout).expect("a path").trim())
});

/// A program of the Python environment.
fn python(name: &str) -> Command {
    let mut command = Command::new(TOOLS.join("python/bin").join(name));
    command.env("PYTHONDONTWRITEBYTECODE", "1").env("NO_COLOR", "1").env_remove("PYTHONPATH");
    command
}

/// Where this test's own files are.
fn here(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/clients").join(name)
}

/// The files of the invented shop.
fn examples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/example")
}

/// What a program said; one that fails ends the test with it.
fn done(command: &mut Command) -> String {
    let Output { status, stdout, stderr } = command.output().unwrap_or_else(|e| panic!("{command:?}: {e}"));
    let (out, err) = (String::from_utf8_lossy(&stdout), String::from_utf8_lossy(&stderr));
    assert!(status.success(), "{command:?} failed:\n{out}\n{err}");
    out.into_owned()
}

/// A server, and its description in a file of the shop's folder.
fn served(shop: &Shop, command: &str) -> (Served, PathBuf) {
    let served = shop.serve(command);
    let (status, description) = served.ask("GET", "/api/v1/openapi.json", "");
    assert_eq!(status, 200, "{description}");
    shop.write("openapi.json", description);
    let file = shop.path("openapi.json");
    (served, file)
}

/// What a driver tells of the one set that it made, and what the shop says of it.
fn one_set_was_made(served: &Served, said: &str) {
    let told: Value = serde_json::from_str(said.lines().last().unwrap_or_default()).expect("a document");
    let models: Vec<Value> =
        serde_json::from_slice(&std::fs::read(examples().join("models.json")).expect("models")).expect("a list");
    let parts = std::fs::read_to_string(examples().join("parts.csv")).expect("parts").lines().count() - 1;
    assert_eq!((told["models"].as_u64(), told["parts"].as_u64()), (Some(models.len() as u64), Some(parts as u64)));
    assert_eq!((told["clubs"].as_u64(), told["job"].as_i64()), (Some(8), Some(1)), "{told}");
    // D8.5 is 38.5 points since A0; 349.8 g at 824 mm is D8.0 (both from the examples of the documents).
    assert_eq!((told["value"].as_f64(), told["swing_weight"].as_str()), (Some(38.5), Some("D8.0")), "{told}");
    assert!(told["remedies"][0].as_str().is_some_and(|first| first.contains("Tip ")), "{told}");
    let (status, job) = served.ask("GET", "/api/v1/jobs/1", "");
    assert!(status == 200 && job.contains("\"D8.5\""), "the reading is in the job: {job}");
}

#[test]
fn an_independent_validator_finds_the_description_valid_and_a_broken_one_not() {
    let shop = Shop::empty();
    let (_served, description) = served(&shop, "serve");
    done(python("openapi-spec-validator").arg(&description));
    let mut broken: Value = serde_json::from_str(&shop.read("openapi.json")).expect("a document");
    let answer = broken["paths"]["/shop"]["get"]["responses"]["200"].as_object_mut().expect("an answer");
    answer.remove("description");
    shop.write("broken.json", broken.to_string());
    let judged = python("openapi-spec-validator").arg(shop.path("broken.json")).output().expect("it runs");
    assert!(!judged.status.success(), "the judge sees what was wrong before");
}

#[test]
fn a_client_generated_for_python_makes_a_set() {
    let shop = Shop::empty();
    let (served, description) = served(&shop, "serve");
    let clients = shop.path("clients");
    std::fs::create_dir(&clients).expect("a folder");
    done(
        python("openapi-python-client")
            .args(["generate", "--meta", "none", "--path"])
            .arg(&description)
            .arg("--config")
            .arg(here("python/openapi-python-client.yaml"))
            .arg("--output-path")
            .arg(clients.join("setwright_client")),
    );
    let driver = here("python/one_set.py");
    let types = ["--strict", "--follow-imports=silent", "--cache-dir"];
    done(python("mypy").args(types).arg(TOOLS.join("mypy-cache")).arg(&driver).env("MYPYPATH", &clients));
    let address = format!("http://{}", served.address);
    let said = done(python("python").arg(&driver).arg(address).arg(examples()).env("PYTHONPATH", &clients));
    one_set_was_made(&served, &said);
}

#[test]
fn a_client_generated_for_typescript_makes_a_set() {
    let shop = Shop::empty();
    let (served, description) = served(&shop, "serve");
    let node = TOOLS.join("node");
    let client = shop.path("client");
    std::fs::create_dir(&client).expect("a folder");
    std::os::unix::fs::symlink(node.join("node_modules"), client.join("node_modules")).expect("a link");
    for name in ["one-set.ts", "package.json", "tsconfig.json"] {
        std::fs::copy(here("typescript").join(name), client.join(name)).expect("copied");
    }
    let tool = |name: &str| {
        let mut command = Command::new(node.join("node_modules/.bin").join(name));
        command.current_dir(&client);
        command
    };
    // A field that has a value when it is left out may be left out.
    let loose = "--default-non-nullable=false";
    done(tool("openapi-typescript").arg(&description).args([loose, "--output", "schema.ts"]));
    // Checks every type, and writes the JavaScript.
    done(&mut tool("tsc"));
    let address = format!("http://{}", served.address);
    let said = done(Command::new("node").current_dir(&client).arg("out/one-set.js").arg(address).arg(examples()));
    one_set_was_made(&served, &said);
}

#[test]
fn no_generated_request_meets_an_answer_that_is_not_described() {
    let shop = Shop::empty();
    let (served, description) = served(&shop, "demo");
    let address = format!("http://{}/api/v1", served.address);
    let said = done(
        python("schemathesis")
            .current_dir(description.parent().expect("a folder"))
            .arg("--config-file")
            .arg(here("schemathesis.toml"))
            .args(["run", "openapi.json", "--no-color", "--url", &address]),
    );
    let figure = |before: &str| {
        let rest = said.split(before).nth(1).unwrap_or_else(|| panic!("no “{before}” in:\n{said}")).trim_start();
        let digits: String = rest.chars().take_while(char::is_ascii_digit).collect();
        digits.parse::<usize>().unwrap_or_else(|_| panic!("no figure after “{before}” in:\n{said}"))
    };
    let paths = serde_json::from_str::<Value>(&shop.read("openapi.json")).expect("a document")["paths"].clone();
    let paths = paths.as_object().map_or(0, serde_json::Map::len);
    assert!(figure("Tested:") >= paths - 1, "every address but the endless one was tried:\n{said}");
    // A busy machine comes less far in the time that the tool may take; what every run does whole are the examples and the
    // values at every limit.
    for phase in ["✅ Examples", "✅ Coverage"] {
        assert!(said.contains(phase), "{phase} was not done:\n{said}");
    }
    assert!(figure("Test cases:") > 1_500, "{said}");
}
