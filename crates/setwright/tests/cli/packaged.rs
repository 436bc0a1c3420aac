//! What a shop installs: made with the program that the tests run, unpacked, held against the tools of the system, and started.

use crate::run::{PROGRAM, Served, Shop};
use std::path::{Path, PathBuf};
use std::process::Command;

/// Runs a tool of the system; what it says where it fails is in the test's message.
fn done(command: &mut Command) -> String {
    let ran = command.output().unwrap_or_else(|e| panic!("{command:?}: {e}"));
    let (out, err) = (String::from_utf8_lossy(&ran.stdout), String::from_utf8_lossy(&ran.stderr));
    assert!(ran.status.success(), "{command:?} failed:\n{out}\n{err}");
    out.into_owned()
}

/// The commands as `--help` lists them.
fn commands(shop: &Shop) -> Vec<String> {
    let help = shop.run_bare(&["--help"]).done().out;
    let list = help.split_once("Commands:\n").expect("a list").1;
    let (list, _) = list.split_once("\n\n").expect("its end");
    let starts = list.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let names: Vec<String> =
        starts.map(|line| line.trim().split(' ').next().expect("a name").to_owned()).filter(|n| n != "help").collect();
    assert!(names.len() > 30, "{names:?}");
    names
}

#[test]
fn each_shell_completes_every_command_and_man_has_a_page_of_each() {
    let shop = Shop::empty();
    let commands = commands(&shop);
    for shell in ["bash", "zsh", "fish"] {
        let text = shop.run_bare(&["completions", shell]).done().out;
        for name in &commands {
            assert!(text.contains(name), "{shell} does not know {name}");
        }
        shop.write(shell, &text);
    }
    done(Command::new("bash").arg("-n").arg(shop.path("bash")));
    // Typed `ba` and the tabulator: `backup` is offered.
    let asked = "source ./bash; COMP_WORDS=(setwright ba); COMP_CWORD=1; _setwright setwright ba setwright; echo ${COMPREPLY[@]}";
    let mut bash = Command::new("bash");
    assert_eq!(done(bash.current_dir(shop.path("")).args(["-c", asked])).trim(), "backup");

    let folder = shop.path("man");
    shop.run_bare(&["manual", folder.to_str().expect("a path")]).done();
    let page = |name: &str| shop.read(&format!("man/{name}.1"));
    assert!(page("setwright").starts_with(".ie") && page("setwright").contains(".SH SUBCOMMANDS"));
    for name in &commands {
        assert!(page(&format!("setwright-{name}")).contains(".SH SYNOPSIS"), "{name}");
    }
    assert!(page("setwright-serve").contains("SETWRIGHT_LISTEN"), "what the environment says stands in it");
    // A folder that is a file is refused, by name.
    shop.write("taken", "");
    let refused = shop.run_bare(&["manual", "taken"]);
    assert!(refused.code == 5 && refused.err.contains("taken"), "{refused:?}");
}

/// The files that `scripts/package` made.
fn packed(into: &Path) -> Vec<PathBuf> {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../scripts/package");
    let said = done(Command::new(script).args(["--binary", PROGRAM]).env("CARGO_TARGET_DIR", into));
    said.lines().map(PathBuf::from).collect()
}

#[test]
fn the_package_holds_what_a_shop_needs_and_its_program_serves() {
    let shop = Shop::empty();
    let made = packed(&shop.path("out"));
    let [deb, tar] = &made[..] else { panic!("a package and a tar: {made:?}") };

    // Its head and its files, by the system's own tool.
    let field = |name: &str| done(Command::new("dpkg-deb").arg("--field").arg(deb).arg(name)).trim().to_owned();
    assert_eq!((field("Package"), field("Version")), ("setwright".into(), env!("CARGO_PKG_VERSION").into()));
    assert!(field("Depends").starts_with("libc6 (>= 2."), "{}", field("Depends"));
    let root = shop.path("root");
    done(Command::new("dpkg-deb").arg("--raw-extract").arg(deb).arg(&root));
    let has = |path: &str| root.join(path).is_file();
    for path in [
        "usr/share/bash-completion/completions/setwright",
        "usr/share/zsh/vendor-completions/_setwright",
        "usr/share/fish/vendor_completions.d/setwright.fish",
        "usr/share/man/man1/setwright.1.gz",
        "usr/share/man/man1/setwright-restore.1.gz",
        "usr/share/doc/setwright/copyright",
        "usr/share/doc/setwright/install.md",
        "usr/share/doc/setwright/third-party-licences.txt.gz",
        "usr/lib/sysusers.d/setwright.conf",
    ] {
        assert!(has(path), "{path} is missing");
    }
    // The owner's settings survive an upgrade.
    let kept = std::fs::read_to_string(root.join("DEBIAN/conffiles")).expect("a list");
    assert_eq!(kept.trim(), "/etc/setwright/setwright.toml");
    for script in ["postinst", "prerm", "postrm"] {
        done(Command::new("sh").arg("-n").arg(root.join("DEBIAN").join(script)));
    }

    // The unit, with the program where it was unpacked: valid, and locked up to what it needs.
    let unit = std::fs::read_to_string(root.join("usr/lib/systemd/system/setwright.service")).expect("a unit");
    let program = root.join("usr/bin/setwright");
    shop.write("setwright.service", unit.replace("/usr/bin/setwright", &program.display().to_string()));
    let mut verify = Command::new("systemd-analyze");
    done(verify.args(["verify", "--man=no"]).arg(shop.path("setwright.service")));
    // Tenths of its scale from 0 (locked) to 10 (open); this unit was at 1.6 when it was written.
    let mut security = Command::new("systemd-analyze");
    done(security.args(["security", "--offline=true", "--threshold=20"]).arg(shop.path("setwright.service")));

    // The settings as they come are those that the program takes; only where they point is the test's own.
    let settings = std::fs::read_to_string(root.join("etc/setwright/setwright.toml")).expect("settings");
    let data = shop.path("data");
    std::fs::create_dir(&data).expect("a folder");
    let here = settings
        .replace("/var/lib/setwright", &data.display().to_string())
        .replace("listen = \"127.0.0.1:7340\"", "listen = \"127.0.0.1:0\"");
    assert_eq!(here.matches("127.0.0.1:0").count(), 1, "{here}");
    shop.write("settings.toml", here);
    let mut serve = Command::new(&program);
    serve.args(["serve", "--json", "--config"]).arg(shop.path("settings.toml")).env("HOME", shop.path(""));
    let served = Served::start(serve);
    let (status, today) = served.ask("GET", "/", "");
    assert!(status == 200 && today.contains("Setwright"), "{status}");
    assert_eq!(served.greeting["open_to_network"], false, "{}", served.greeting);
    assert!(data.join("shop.db").is_file());
    assert_eq!(served.stop(), Some(0));

    // The tar has the same program.
    let listed = done(Command::new("tar").args(["--list", "--gzip", "--file"]).arg(tar));
    for file in
        ["/setwright\n", "/install.md\n", "/setwright.service\n", "/completions/zsh\n", "/third-party-licences.txt\n"]
    {
        assert!(listed.contains(file), "{file} is missing: {listed}");
    }
}
