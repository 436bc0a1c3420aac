//! Goal: what the binary is built of is known: where it comes from, what is in it twice, what nobody looks after any more. (Its
//! licences are looked at where the package is made, which a test does too.) Method: `cargo tree` of this system's build. Known faults of crates are listed elsewhere, by lists that need the
//! network: CONTRIBUTING says when to hold the lock file against one.

use super::root;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

/// Crates that are in the binary in two versions, with who asks for the older one.
const TWICE: [(&str, &str); 11] = [
    ("base64", "sqlx 0.9 and ourselves; rcgen reads PEM with the newer one"),
    ("bitflags", "serialport 4.10 and its nix"),
    ("block-buffer", "sqlx 0.9, by sha2 0.10"),
    ("cpufeatures", "sqlx 0.9, by sha2 0.10"),
    ("crypto-common", "sqlx 0.9, by sha2 0.10"),
    ("digest", "sqlx 0.9, by sha2 0.10"),
    ("getrandom", "ring 0.17"),
    ("hashbrown", "sqlx 0.9, by hashlink"),
    ("sha2", "sqlx 0.9; the assets and the keys have the newer one"),
    ("syn", "macros that have not moved to 3 yet; at build time only"),
    ("unicode-width", "miette 7.6"),
];

/// Crates that are no longer looked after, and why they are in all the same.
const LEFT_ALONE: [(&str, &str); 3] = [
    ("paste", "macros of nalgebra's simba, at build time only: nothing of it runs"),
    ("nix", "0.26 by serialport 4.10, for the calls of a serial line"),
    ("hound", "reads WAV, a form that does not change; our own fuzz found no fault in it"),
];

const TARGET: &str = "x86_64-unknown-linux-gnu";

/// The crates that the binary is built of, a line each: `name vVERSION`, with `(…)` where it comes from elsewhere than the public
/// registry; what is only in tests is left out.
fn built_of() -> BTreeSet<String> {
    let out = Command::new(env!("CARGO"))
        .args(["tree", "--locked", "--package", "setwright", "--edges", "normal,build", "--target", TARGET])
        .args(["--prefix", "none", "--format", "{p}"])
        .current_dir(root())
        .output()
        .expect("cargo");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    let text = String::from_utf8_lossy(&out.stdout);
    text.lines().map(|line| line.replace(" (proc-macro)", "").trim().to_owned()).filter(|l| !l.is_empty()).collect()
}

#[test]
fn every_crate_comes_from_the_public_registry_and_none_is_there_twice_unknown() {
    let mut versions: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let ours = root().canonicalize().expect("the project");
    for line in built_of() {
        let mut words = line.split(' ');
        let (name, version) = (words.next().expect("a name"), words.next().expect("a version"));
        let from: Vec<&str> = words.filter(|word| *word != "(*)").collect();
        let own = |path: &str| path.trim_matches(['(', ')']).starts_with(&*ours.to_string_lossy());
        assert!(from.iter().all(|path| own(path)), "{name} comes from {from:?}");
        versions.entry(name.to_owned()).or_default().insert(version.to_owned());
    }
    assert!(versions.len() > 150, "{} crates", versions.len());
    let twice: Vec<&str> = versions.iter().filter(|(_, of)| of.len() > 1).map(|(name, _)| name.as_str()).collect();
    assert_eq!(twice, TWICE.map(|(name, _)| name), "say who asks for the older one, or take it off the list");
    for (name, why) in LEFT_ALONE {
        assert!(versions.contains_key(name), "{name} is gone ({why}): take it off the list");
    }
}
