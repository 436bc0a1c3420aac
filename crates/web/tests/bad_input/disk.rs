//! A disk that runs full under the open shop: a real one, a small file system of the test's own in a mount namespace of
//! its own (`unshare`), so nothing is left behind.

use crate::support::answer::detail;
use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use serde_json::json;
use std::process::Command;

const DISK: &str = "SETWRIGHT_TEST_SMALL_DISK";

/// Runs this very test again with a file system of `size` in its hands, and fails as it fails. In that second run it
/// returns the folder.
fn on_a_small_disk(test: &str, size: &str) -> Option<std::path::PathBuf> {
    if let Some(folder) = std::env::var_os(DISK) {
        return Some(folder.into());
    }
    let folder = tempfile::tempdir().expect("a folder");
    let mut command = Command::new("unshare");
    command.arg("--mount");
    if std::os::unix::fs::MetadataExt::uid(&folder.path().metadata().expect("it is there")) != 0 {
        command.args(["--user", "--map-root-user"]);
    }
    let script = format!("mount -t tmpfs -o size={size} tmpfs \"${DISK}\" && exec \"$@\"");
    command.args(["sh", "-c", &script, "sh"]).arg(std::env::current_exe().expect("this program"));
    command.args(["--exact", &format!("bad_input::disk::{test}"), "--nocapture"]).env(DISK, folder.path());
    let output = command.output().expect("unshare (package util-linux)");
    let said = String::from_utf8_lossy(&output.stdout);
    let complained = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{complained}");
    None
}

#[tokio::test]
async fn a_full_disk_is_told_on_the_api_and_on_the_page_and_nothing_is_lost() {
    let test = "a_full_disk_is_told_on_the_api_and_on_the_page_and_nothing_is_lost";
    let Some(folder) = on_a_small_disk(test, "3m") else { return };
    let bench = Bench::open_in(&folder).await;
    planned(&bench).await;
    let long = "x".repeat(20_000);
    let mut kept = 0;
    let refused = loop {
        assert!(kept < 10_000, "the disk never gets full");
        let entry = json!([{ "what": "swing_weight", "value": 40.0, "typed": long }]);
        let entry = reading(1, "dry", entry).to_string();
        let answer = bench.ask("POST", "/api/v1/jobs/1/readings", "application/json", entry).await;
        if !answer.status.is_success() {
            break answer;
        }
        kept += 1;
    };
    let problem = refused.problem(StatusCode::SERVICE_UNAVAILABLE);
    assert!(detail(&problem).contains("full") && detail(&problem).contains("NOT saved"), "{problem}");
    assert!(kept > 0);

    // The page says the same, with what was typed still in its field. A short entry may find room for a while.
    let mut on_page = 0;
    let page = loop {
        assert!(on_page < 1_000, "the disk never gets full");
        let key = format!("k{on_page}");
        let page =
            bench.form("/bench/1/2", &[("step", "dry"), ("request_key", &key), ("read-swing_weight", "D9.7")]).await;
        if page.status != StatusCode::SEE_OTHER {
            break page;
        }
        on_page += 1;
    };
    page.says(StatusCode::SERVICE_UNAVAILABLE, &["NOT saved", "value=\"D9.7\""]);

    // All that was acknowledged is there, and reading goes on.
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["clubs"][0]["readings"].as_array().map(Vec::len), Some(kept));
    assert_eq!(record["clubs"][1]["readings"].as_array().map(Vec::len), Some(on_page));
    bench.page("/").await.says(StatusCode::OK, &["Nobody Inparticular"]);
}
