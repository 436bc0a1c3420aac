//! A disk that is full and a disk that is read-only, both real: a small file system of the test's own, in a mount
//! namespace of its own (`unshare`), so nothing is left behind and no rights are needed beyond making one.

use crate::refused_words;
use crate::samples::{new_id, reading, with_job};
use std::path::Path;
use std::process::Command;
use store::{Store, StoreError};
use trade::id::ReadingId;
use trade::reading::{Reading, What};

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
    let owner = std::os::unix::fs::MetadataExt::uid(&folder.path().metadata().expect("it is there"));
    if owner != 0 {
        command.args(["--user", "--map-root-user"]);
    }
    let script = format!("mount -t tmpfs -o size={size} tmpfs \"${DISK}\" && exec \"$@\"");
    command.args(["sh", "-c", &script, "sh"]).arg(std::env::current_exe().expect("this program"));
    command.args(["--exact", &format!("unwritable::{test}"), "--nocapture"]).env(DISK, folder.path());
    let output = command.output().expect("unshare (package util-linux)");
    let said = String::from_utf8_lossy(&output.stdout);
    let complained = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && said.contains("1 passed"), "{said}\n{complained}");
    None
}

fn url(folder: &Path) -> String {
    format!("sqlite://{}", folder.join("shop.db").display())
}

#[tokio::test]
async fn a_full_disk_loses_nothing_that_was_acknowledged() {
    let Some(folder) = on_a_small_disk("a_full_disk_loses_nothing_that_was_acknowledged", "1500k") else { return };
    let store = Store::open(&url(&folder)).await.expect("there is room for it");
    let job = {
        let mut tx = store.write().await.expect("a turn");
        crate::samples::stock_models(&mut tx).await;
        let job = crate::samples::add_job(&mut tx, &["6"]).await;
        tx.commit().await.expect("commit");
        job
    };
    let mut acknowledged = Vec::new();
    let refused = loop {
        assert!(acknowledged.len() < 100_000, "the disk never gets full");
        let sent =
            Reading { id: ReadingId(new_id()), typed: "x".repeat(2_000), ..reading(&job, 0, What::SwingWeight, 41.7) };
        let saved = async {
            let mut tx = store.write().await?;
            tx.append_reading(&sent, None, None).await?;
            tx.commit().await
        };
        match saved.await {
            Ok(()) => acknowledged.push(sent),
            Err(refused) => break refused,
        }
    };
    assert!(matches!(refused, StoreError::DiskFull { .. }), "{refused}: {refused:?}");
    assert!(refused_words(&refused).contains("NOT saved"), "{refused}");
    assert!(!acknowledged.is_empty());
    let mut tx = store.read().await.expect("reading still works");
    assert_eq!(tx.readings(&job.id).await.expect("read"), acknowledged);
    drop(tx);
    store.close().await;
    let error = Store::open(&url(&folder.join("none"))).await.expect_err("no such folder");
    assert!(matches!(error, StoreError::CannotOpen { .. }), "{error}");
}

#[tokio::test]
async fn no_room_for_a_new_database_is_said() {
    let Some(folder) = on_a_small_disk("no_room_for_a_new_database_is_said", "40k") else { return };
    let refused = Store::open(&url(&folder)).await.expect_err("no room");
    assert!(matches!(refused, StoreError::DiskFull { .. }), "{refused}: {refused:?}");
}

#[tokio::test]
async fn a_read_only_disk_is_named() {
    let Some(folder) = on_a_small_disk("a_read_only_disk_is_named", "4m") else { return };
    let store = Store::open(&url(&folder)).await.expect("opened");
    store.close().await;
    let done = Command::new("mount").args(["-o", "remount,ro"]).arg(&folder).status().expect("mount");
    assert!(done.success());
    let refused = Store::open(&url(&folder)).await.expect_err("read-only");
    assert!(matches!(refused, StoreError::ReadOnly { .. }), "{refused}: {refused:?}");
    assert!(refused_words(&refused).contains("shop.db"), "{refused}");
}

#[tokio::test]
async fn a_file_opened_read_only_is_named() {
    let db = crate::database::TestDb::sqlite().await;
    with_job(&db).await;
    let refused = Store::open(&format!("{}?mode=ro", db.url)).await.expect_err("read-only");
    assert!(matches!(refused, StoreError::ReadOnly { .. }), "{refused}: {refused:?}");
}
