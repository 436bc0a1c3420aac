//! Goal: every command is about the same shop wherever it runs, none makes a shop by accident, and the invented shop is
//! there as a whole or not at all. Method: the real program with the test's folder as its home, started in other
//! folders, killed while it loads.

use crate::run::{MODELS, Served, Shop, bare};
use serde_json::Value;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

const SHOP: &str = ".local/share/setwright/shop.db";
const DEMO: &str = ".local/share/setwright/demo.db";

/// Commands that look at a shop or change what is in it, and that must never make one.
const LOOKING: [&[&str]; 12] = [
    &["order", "list"],
    &["needs"],
    &["plan", "1"],
    &["record", "1"],
    &["export"],
    &["match", "--day"],
    &["advise", "1"],
    &["learned"],
    &["capability"],
    &["scale", "health"],
    &["part", "H7-001"],
    &["labels", "--codes", "H7-001", "--out", "labels.html"],
];

fn files(shop: &Shop) -> Vec<String> {
    fn into(folder: &Path, found: &mut Vec<String>) {
        for entry in std::fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() { into(&path, found) } else { found.push(path.display().to_string()) }
        }
    }
    let mut found = Vec::new();
    into(&shop.path(""), &mut found);
    found
}

/// Runs a command without any setting in another folder of the same user.
fn elsewhere(shop: &Shop, arguments: &[&str]) -> crate::run::Ran {
    std::fs::create_dir_all(shop.path("other")).expect("a folder");
    let mut command = bare(&shop.path(""), arguments);
    command.current_dir(shop.path("other"));
    Shop::ran(command, "")
}

#[test]
fn a_command_that_looks_makes_no_shop() {
    let shop = Shop::empty();
    for arguments in LOOKING {
        let ran = shop.run_bare(&[arguments, &["--json"]].concat());
        let said = ran.problem(3, "not_found");
        assert!(said.contains("there is no shop yet") && said.contains("setwright serve"), "{arguments:?}: {said}");
        let named = shop.run_bare(&[arguments, &["--json", "--database", "sqlite:typo.db"]].concat());
        assert!(named.problem(3, "not_found").contains("typo.db"), "{arguments:?}");
    }
    assert_eq!(files(&shop), Vec::<String>::new());
}

#[test]
fn all_commands_are_about_one_shop_wherever_they_run() {
    let shop = Shop::empty();
    shop.write("models.json", MODELS);
    let made = shop.run_bare(&["import", "models.json"]);
    assert_eq!(made.code, 0, "{made:?}");
    assert!(made.err.contains("A new shop was made at") && made.err.contains(SHOP), "{made:?}");
    let again = shop.run_bare(&["import", "models.json"]);
    assert!(!again.err.contains("new shop"), "it is there now: {again:?}");
    let here = shop.run_bare(&["export", "--models"]).done().out;
    assert_eq!(elsewhere(&shop, &["export", "--models"]).done().out, here);
    let models = serde_json::from_str::<Value>(&here).expect("models");
    assert!(models.as_array().is_some_and(|m| !m.is_empty()));
    assert_eq!(files(&shop).iter().filter(|f| f.contains(".db")).count(), 1, "{:?}", files(&shop));

    // Others of this machine cannot look into the folder.
    let mode = std::os::unix::fs::PermissionsExt::mode(
        &std::fs::metadata(shop.path(".local/share/setwright")).expect("the folder").permissions(),
    );
    assert_eq!(mode & 0o077, 0, "{mode:o}");
}

#[test]
fn the_nearest_word_decides_which_shop_it_is() {
    let shop = Shop::empty();
    shop.write("models.json", MODELS);
    // One part in each, to tell them apart.
    let grip = serde_json::from_str::<Value>(MODELS).expect("models");
    let grip = grip.as_array().and_then(|m| m.iter().find(|m| m["kind"] == "grip")).expect("a grip")["code"].clone();
    for name in ["config", "user", "env", "flag"] {
        let list = format!("code,kind,model,mass_g\nOF-{name},grip,{},50.0\n", grip.as_str().expect("a code"));
        shop.write("one.csv", list);
        let models = shop.run_bare(&["import", "models.json", "--database", &format!("sqlite:{name}.db")]);
        assert_eq!(models.code, 0, "{models:?}");
        let done = shop.run_bare(&["import", "one.csv", "--database", &format!("sqlite:{name}.db")]);
        assert_eq!(done.code, 0, "{done:?}");
    }
    let asked = |with: &[&str], env: Option<&str>, folder: &str| {
        let mut command = bare(&shop.path(""), &[&["export"], with].concat());
        command.current_dir(shop.path(folder));
        if let Some(url) = env {
            command.env("SETWRIGHT_DATABASE", url);
        }
        Shop::ran(command, "").done().out
    };
    std::fs::create_dir_all(shop.path(".config/setwright")).expect("a folder");
    std::fs::create_dir_all(shop.path("work")).expect("a folder");
    shop.write(
        ".config/setwright/setwright.toml",
        format!("database = \"sqlite:{}\"\n", shop.path("user.db").display()),
    );
    // A relative file lies beside the configuration, not where the command runs.
    shop.write("named.toml", "database = \"sqlite:config.db\"\n");
    let env = format!("sqlite:{}", shop.path("env.db").display());
    let flag = format!("sqlite:{}", shop.path("flag.db").display());
    assert!(asked(&[], None, "work").contains("OF-user"));
    assert!(asked(&["--config", "../named.toml"], None, "work").contains("OF-config"));
    assert!(asked(&["--config", "../named.toml"], Some(&env), "work").contains("OF-env"));
    assert!(asked(&["--config", "../named.toml", "--database", &flag], Some(&env), "work").contains("OF-flag"));
    shop.write("work/setwright.toml", format!("database = \"sqlite:{}\"\n", shop.path("config.db").display()));
    assert!(asked(&[], None, "work").contains("OF-config"), "the one in the folder is nearer");
}

#[test]
fn a_shop_of_an_earlier_version_in_the_folder_is_not_passed_over() {
    let shop = Shop::stocked();
    for arguments in [["export", "--json"].as_slice(), &["import", "parts.csv", "--json"], &["serve", "--json"]] {
        let said = shop.run_bare(arguments).problem(2, "invalid");
        assert!(said.contains("setwright.db") && said.contains("--database"), "{said}");
    }
    assert!(!shop.path(SHOP).exists());
    assert!(shop.run_bare(&["export", "--database", "sqlite:setwright.db"]).done().out.contains("code"));
}

#[test]
fn an_address_that_is_taken_leaves_nothing_behind() {
    let shop = Shop::empty();
    let taken = std::net::TcpListener::bind("127.0.0.1:0").expect("a port");
    let address = taken.local_addr().expect("an address").to_string();
    for command in ["serve", "demo"] {
        shop.run_bare(&[command, "--listen", &address, "--json"]).problem(5, "outside");
    }
    assert_eq!(files(&shop), Vec::<String>::new());
}

#[test]
fn the_network_is_let_in_only_on_the_owners_word() {
    let shop = Shop::empty();
    let said = shop.run_bare(&["serve", "--listen", "0.0.0.0:0", "--json"]).problem(2, "invalid");
    assert!(said.contains("--open-to-network") && said.contains("needs a key"), "{said}");
    assert_eq!(files(&shop), Vec::<String>::new());

    let mut command = bare(&shop.path(""), &["serve", "--listen", "0.0.0.0:0", "--open-to-network", "--json"]);
    let told = std::fs::File::create(shop.path("told")).expect("a file");
    command.stderr(Stdio::from(told));
    let served = Served::start(command);
    assert_eq!(served.greeting["open_to_network"], true);
    assert!(served.greeting["listening"].as_str().expect("an address").starts_with("0.0.0.0:"));
    assert!(!served.address.starts_with("0.0.0.0"), "a tablet can open it: {}", served.address);
    // Over an address of the network, also from this machine, nobody is in without a key.
    let in_network = !served.address.starts_with("127.");
    assert_eq!(served.ask("GET", "/api/v1/parts", "").0, if in_network { 401 } else { 200 });
    assert_eq!(served.ask("GET", "/come-in", "").0, 200);
    let told = shop.read("told");
    assert!(told.contains("setwright key tablet") && told.contains("not encrypted"), "{told}");
    assert_eq!(served.stop(), Some(0));
    let said = shop.run_bare(&["serve", "--name", "http://bench.local", "--json"]).problem(2, "invalid");
    assert!(said.contains("bench.local"), "{said}");
}

/// How much of the invented shop there is.
fn amounts(served: &Served) -> [usize; 4] {
    ["/jobs", "/jobs?state=finished", "/orders", "/models"].map(|path| {
        let (status, body) = served.ask("GET", &format!("/api/v1{path}"), "");
        assert_eq!(status, 200, "{body}");
        let answer = serde_json::from_str::<Value>(&body).expect("JSON");
        let list = answer.as_array().or_else(|| answer["orders"].as_array());
        list.unwrap_or_else(|| panic!("{path}: {answer}")).len()
    })
}

fn demo(shop: &Shop, more: &[&str]) -> Served {
    Served::start(bare(&shop.path(""), &[&["demo", "--json", "--listen", "127.0.0.1:0"], more].concat()))
}

#[test]
fn a_demonstration_that_was_broken_off_is_begun_anew() {
    let shop = Shop::empty();
    let loading = shop.path(&format!("{DEMO}.loading"));
    for round in 0..3 {
        let mut child = bare(&shop.path(""), &["demo", "--listen", "127.0.0.1:0"])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("the program starts");
        // Once it has begun, sooner and later.
        while !loading.exists() {
            std::thread::sleep(Duration::from_millis(5));
        }
        std::thread::sleep(Duration::from_millis(200 * round));
        child.kill().expect("killed");
        child.wait().expect("it ended");
        assert!(!shop.path(DEMO).exists(), "round {round}: half a shop");
    }
    let served = demo(&shop, &[]);
    assert_eq!(served.greeting["fresh"], true);
    let whole = amounts(&served);
    assert!(whole.iter().all(|n| *n > 0), "{whole:?}");
    assert!(!loading.exists());
    drop(served);
    let again = demo(&shop, &[]);
    assert_eq!((&again.greeting["fresh"], amounts(&again)), (&Value::Bool(false), whole));
}

#[test]
fn the_demonstration_begins_again_on_request_and_touches_no_other_shop() {
    let shop = Shop::empty();
    let served = demo(&shop, &[]);
    let whole = amounts(&served);
    // Other commands find it when they are told of it.
    let said = elsewhere(&shop, &["order", "list", "--json"]).problem(3, "not_found");
    let url = said.split("--database ").last().expect("its address").trim_end_matches('.').to_owned();
    assert!(url.contains(DEMO), "{said}");
    let orders = elsewhere(&shop, &["order", "list", "--json", "--database", &url]).done().json();
    assert_eq!(orders.as_array().map(Vec::len), Some(3));
    assert_eq!(served.ask("POST", "/api/v1/jobs/2/drop", r#"{"reason":"tried it","by":"Ines"}"#).0, 204);
    assert_ne!(amounts(&served), whole);
    // While it is served it is not erased under whoever uses it.
    let refused = shop.run_bare(&["demo", "--reset", "--json", "--listen", "127.0.0.1:0"]).problem(4, "store");
    assert!(refused.contains("open"), "{refused}");
    assert_eq!(served.stop(), Some(0));
    let served = demo(&shop, &["--reset"]);
    assert_eq!((&served.greeting["fresh"], amounts(&served)), (&Value::Bool(true), whole));
    drop(served);

    let real = Shop::stocked();
    let before = real.run(&["export"]).done().out;
    for more in [["--json"].as_slice(), &["--json", "--reset"]] {
        let arguments = [&["demo", "--listen", "127.0.0.1:0", "--database", "sqlite:setwright.db"], more].concat();
        let refused = real.run(&arguments).problem(4, "conflict");
        assert!(refused.contains("another shop") && refused.contains("nothing was changed"), "{refused}");
    }
    assert_eq!(real.run(&["export"]).done().out, before);
}

/// The same on a server, and that no output shows its password. Left out where `SETWRIGHT_TEST_POSTGRES=none`.
#[test]
fn on_a_server_it_is_whole_too_and_no_password_is_shown() {
    let admin = std::env::var("SETWRIGHT_TEST_POSTGRES").expect("run ./test, or set SETWRIGHT_TEST_POSTGRES=none");
    if admin == "none" {
        return;
    }
    let name = format!("setwright_demo_{}", std::process::id());
    sql(&admin, &format!("CREATE DATABASE {name}"));
    let (server, query) = admin.split_once('?').map_or((admin.as_str(), String::new()), |(s, q)| (s, format!("?{q}")));
    let (scheme, rest) = server.split_once("://").expect("an address");
    let (login, _) = rest.split_once('@').unwrap_or(("postgres", rest));
    let place = server.rsplit_once('/').expect("a name").0.rsplit('@').next().expect("a host");
    let user = login.split(':').next().expect("a user");
    let url = format!("{scheme}://{user}:sesame@{place}/{name}{query}");
    let shop = Shop::empty();
    let start = |more: &[&str]| {
        let mut command = bare(&shop.path(""), &["demo", "--listen", "127.0.0.1:0", "--database", &url]);
        command.args(more);
        command
    };
    let mut child = start(&[]).stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("the program starts");
    let begun = || Shop::ran(start_looking(&shop, &url), "").out.contains("code");
    while !begun() {
        std::thread::sleep(Duration::from_millis(50));
    }
    child.kill().expect("killed");
    child.wait().expect("it ended");
    let served = Served::start({
        let mut command = start(&["--json"]);
        command.stderr(Stdio::from(std::fs::File::create(shop.path("told")).expect("a file")));
        command
    });
    assert_eq!(served.greeting["fresh"], true);
    let whole = amounts(&served);
    assert!(whole.iter().all(|n| *n > 0), "{whole:?}");
    assert!(!served.greeting.to_string().contains("sesame") && !shop.read("told").contains("sesame"));
    drop(served);
    let again = Served::start(start(&["--json"]));
    assert_eq!((&again.greeting["fresh"], amounts(&again)), (&Value::Bool(false), whole));
    drop(again);
    sql(&admin, &format!("DROP DATABASE {name} WITH (FORCE)"));
}

/// A look at the stock: it says a line of headings once there are tables.
fn start_looking(shop: &Shop, url: &str) -> Command {
    bare(&shop.path(""), &["export", "--database", url])
}

fn sql(url: &str, text: &str) {
    use sqlx::Connection;
    sqlx::any::install_default_drivers();
    let work = async {
        let mut connection = sqlx::AnyConnection::connect(url).await.expect("opened");
        sqlx::raw_sql(sqlx::AssertSqlSafe(text)).execute(&mut connection).await.expect("done");
        connection.close().await.expect("closed");
    };
    tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime").block_on(work);
}
