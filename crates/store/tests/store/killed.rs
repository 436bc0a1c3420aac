//! A program killed at any instant: every reading that was acknowledged is there.

use crate::samples::{new_id, reading, with_job};
use sqlx::{AnyConnection, Connection, Row};
use std::io::{BufRead, BufReader, Write};
use std::process::{Command, Stdio};
use store::Store;
use trade::id::ReadingId;
use trade::job::Job;
use trade::reading::{Reading, What};

const CHILD: &str = "SETWRIGHT_TEST_KILLED_CHILD";

/// The child: appends readings one a transaction and says so on its output after each commit, until it is killed.
async fn append_until_killed(url: &str) {
    let store = Store::open(url).await.expect("the database is there");
    let job = store.read().await.expect("a reader").job_by_number(1).await.expect("read").expect("there");
    for n in 0..1_000_000_u32 {
        let mut tx = store.write().await.expect("a turn");
        let sent = Reading { id: ReadingId(new_id()), ..reading(&job, 0, What::SwingWeight, f64::from(n)) };
        tx.append_reading(&sent, None, None).await.expect("appended");
        tx.commit().await.expect("commit");
        let mut out = std::io::stdout().lock();
        writeln!(out, "saved {}", sent.id).and_then(|()| out.flush()).expect("said");
    }
}

/// Starts a child, waits for so many acknowledgements, kills it; returns all that it acknowledged.
fn kill_after(url: &str, acknowledgements: usize) -> Vec<ReadingId> {
    let this_test = "killed::acknowledged_readings_survive_a_kill";
    let mut child = Command::new(std::env::current_exe().expect("this program"))
        .args(["--exact", this_test, "--nocapture"])
        .env(CHILD, url)
        .stdout(Stdio::piped())
        .spawn()
        .expect("the child starts");
    let mut lines = BufReader::new(child.stdout.take().expect("its output")).lines();
    let mut acknowledged = Vec::new();
    let mut note = |line: std::io::Result<String>| {
        // A line that was cut off by the kill has no whole identity and was never acknowledged.
        if let Some(id) = line.expect("text").strip_prefix("saved ").filter(|id| id.len() == 36) {
            acknowledged.push(ReadingId(id.to_owned()));
        }
        acknowledged.len()
    };
    while note(lines.next().expect("the child goes on")) < acknowledgements {}
    child.kill().expect("killed");
    for line in lines {
        note(line);
    }
    let status = child.wait().expect("ended");
    assert!(!status.success(), "it did not end by itself");
    acknowledged
}

/// What SQLite itself says of the file.
async fn integrity(url: &str) -> String {
    let mut conn = AnyConnection::connect(url).await.expect("a connection");
    let row = sqlx::query("PRAGMA integrity_check").fetch_one(&mut conn).await.expect("an answer");
    row.try_get(0).expect("a text")
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn acknowledged_readings_survive_a_kill() {
    if let Ok(url) = std::env::var(CHILD) {
        return append_until_killed(&url).await;
    }
    let db = crate::database::TestDb::sqlite().await;
    let job: Job = with_job(&db).await;
    db.store.close().await;
    let mut acknowledged = Vec::new();
    // Few and many, so that a kill also meets a checkpoint of the log.
    for acknowledgements in [1, 7, 40, 200, 3, 600] {
        acknowledged.extend(kill_after(&db.url, acknowledgements));
        let store = Store::open(&db.url).await.expect("it opens again");
        let mut tx = store.read().await.expect("a reader");
        let found: Vec<ReadingId> = tx.readings(&job.id).await.expect("read").into_iter().map(|r| r.id).collect();
        for id in &acknowledged {
            assert!(found.contains(id), "{id} was acknowledged and is lost");
        }
        // Saved, but killed before it could say so: one a kill at the most.
        assert!(found.len() - acknowledged.len() <= 6, "{} saved, {} known", found.len(), acknowledged.len());
        let version = tx.job(&job.id).await.expect("read").expect("there").clubs[0].version;
        assert_eq!(usize::try_from(version).expect("positive"), found.len(), "reading and version go together");
        drop(tx);
        store.close().await;
        assert_eq!(integrity(&db.url).await, "ok");
    }
}
