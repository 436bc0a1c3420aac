//! Goal: what is changed, removed or inserted in the database later is seen and named. Method: a job with a row in every
//! sealed table, changed behind the store's back, one column at a time.

use crate::database::TestDb;
use crate::samples::{add_job, at, new_id, reading, with_job};
use bench::finished_club::FinishedClub;
use bench::glue::Batch;
use bench::record::Verdict;
use bench::seal::{SealFault, Sealed, Verified};
use fact::Told;
use store::{Event, Store};
use trade::id::{BatchId, EventId};
use trade::job::Job;
use trade::reading::{Reading, What};

async fn verified(db: &TestDb, job: i64) -> Verified {
    db.read().await.chain(job).await.expect("the chain").verify(None)
}

/// A row of the job in every sealed table; another job shares its batch.
async fn history(db: &TestDb) -> (Job, Job) {
    let job = with_job(db).await;
    let mut tx = db.write().await.signed("Wren");
    let other = add_job(&mut tx, &["6"]).await;
    let wrong = reading(&job, 0, What::SwingWeight, 14.7);
    tx.append_reading(&wrong, None, None).await.expect("appended");
    tx.take_back(&wrong.id, &Told::verbatim("digits swapped"), "Wren", at(610)).await.expect("noted");
    let doubted = Reading { replaces: Some(wrong.id.clone()), ..reading(&job, 0, What::SwingWeight, 41.7) };
    tx.append_reading(&doubted, None, Some("key 1")).await.expect("appended");
    tx.insist(&doubted.id, "read three times", "Wren", at(620)).await.expect("noted");
    let clubs = [&job.clubs[0], &job.clubs[1], &other.clubs[0]];
    let batch = Batch {
        id: BatchId(new_id()),
        number: 1,
        adhesive: "BOND-24".into(),
        lot: "A 7".into(),
        clubs: clubs.iter().map(|club| club.id.clone()).collect(),
        bead_share_percent: 5.0,
        room_c: 21.0,
        cold_reason: None,
        resin_g: 6.2,
        hardener_g: 0.1 + 0.2,
        beads_g: 0.6,
        mixed_at: at(3600),
        by: "Wren".into(),
        taken_back: None,
    };
    tx.insert_batch(&batch, Some("key 2")).await.expect("saved");
    tx.take_back_batch(&batch.id, "the other tin", "Jay", at(3700)).await.expect("noted");
    let event = Event {
        id: EventId(new_id()),
        at: at(4000),
        by: "Jay".into(),
        job: Some(job.id.clone()),
        club: Some(job.clubs[1].id.clone()),
        kind: "let_pass".into(),
        body: serde_json::json!({"reason": "Größe, Łukasz, 李"}),
    };
    tx.append_event(&event).await.expect("logged");
    let finished = FinishedClub {
        club: job.clubs[0].id.clone(),
        job: job.id.clone(),
        job_number: job.number,
        number: "6".into(),
        head_model: "LARK-2".into(),
        finished_at: at(5000),
        target_points: 32.0,
        deviation_points: -0.1 - 0.2,
        band_points: 0.17,
        tolerance_points: 0.5,
        verdict: Verdict::In,
    };
    tx.note_finished(&finished).await.expect("noted");
    // Said again it is not sealed again.
    tx.note_finished(&finished).await.expect("nothing to do");
    tx.commit().await.expect("saved");
    (job, other)
}

/// Takes away what keeps the tables from being changed, as somebody with the database in hand could.
async fn unguard(db: &TestDb) {
    for table in Sealed::ALL.iter().map(|table| table.key()).chain(["record_seal"]) {
        for deed in ["update", "delete"] {
            let on = if db.is_sqlite() { String::new() } else { format!(" ON {table}") };
            db.sql(&format!("DROP TRIGGER IF EXISTS {table}_no_{deed}{on}")).await.expect("dropped");
        }
    }
}

/// Makes again what keeps them from being changed, from the migrations; what is there already stays.
async fn guard(db: &TestDb) {
    let (own, ends) = if db.is_sqlite() { ("sqlite", "END;") } else { ("postgres", ";") };
    for file in ["0002_append_only", "0004_learned_append_only", "0010_forecast_and_batch", "0019_seals_append_only"] {
        let path = format!("{}/migrations/{file}.{own}.sql", env!("CARGO_MANIFEST_DIR"));
        let sql = std::fs::read_to_string(path).expect("SQL");
        for trigger in sql.split("CREATE TRIGGER ").skip(1) {
            let trigger = trigger.split_once(ends).map_or(trigger, |(trigger, _)| trigger);
            let _ = db.sql(&format!("CREATE TRIGGER {trigger}{ends}")).await;
        }
    }
}

/// Columns of the sealed tables with the value that each is changed to.
fn columns() -> Vec<(Sealed, Vec<&'static str>)> {
    vec![
        (
            Sealed::Reading,
            vec![
                "id = id || 'x'",
                "seq = seq + 1000",
                "job = 'x'",
                "club = 'x'",
                "step = 'x'",
                "what = 'lie'",
                "value = value + 0.1",
                "balance_points = balance_points + 1e-9",
                "typed = 'x'",
                "on_club = 'head'",
                "scale = 'other'",
                "scale = NULL",
                "display_step = 0.2",
                "read_at = '2020-01-01T00:00:00.000000000Z'",
                "read_by = 'Jay'",
                "replaces = 'x'",
                "insisted = 1 - insisted",
                "request_key = 'x'",
                "forecast_value = 1.0",
                "forecast_band = 2.0",
                "forecast_version = 3",
                "pivot_m = 0.1",
            ],
        ),
        (Sealed::TakenBack, vec!["reading = 'x'", "why = 'x'", "said_by = 'Jay'", "said_at = 'x'"]),
        (Sealed::StoodBy, vec!["reading = 'x'", "why = 'x'", "said_by = 'Jay'", "said_at = 'x'"]),
        (
            Sealed::Event,
            vec![
                "id = 'x'",
                "seq = seq + 1000",
                "happened_at = 'x'",
                "done_by = 'x'",
                "job = NULL",
                "club = NULL",
                "kind = 'x'",
                "body = '{}'",
            ],
        ),
        (
            Sealed::Batch,
            vec![
                "id = 'x'",
                "number = 9",
                "adhesive = 'x'",
                "lot = 'A 8'",
                "bead_mass_fraction = 0.06",
                "room_k = 290.0",
                "resin_kg = 0.1",
                "hardener_kg = 0.1",
                "beads_kg = 0.1",
                "given = '{}'",
                "mixed_at = 'x'",
                "mixed_by = 'Jay'",
                "request_key = NULL",
            ],
        ),
        (Sealed::Glued, vec!["batch = 'x'", "place = 9", "club = 'x'"]),
        (Sealed::BatchTakenBack, vec!["batch = 'x'", "why = 'x'", "said_by = 'x'", "said_at = 'x'"]),
        (
            Sealed::Finished,
            vec![
                "club = 'x'",
                "seq = seq + 1000",
                "job = 'x'",
                "job_number = 9",
                "number = '9'",
                "head_model = 'x'",
                "finished_at = 'x'",
                "target_points = 33.0",
                "deviation_points = 0.0",
                "band_points = 0.1",
                "tolerance_points = 5.0",
                "verdict = 'out'",
            ],
        ),
        (
            Sealed::Asked,
            vec![
                "id = 'x'",
                "job = 'x'",
                "slot = 9",
                "card = 'x'",
                "target_body = '{}'",
                "plan_body = '{}'",
                "work_body = '{}'",
            ],
        ),
    ]
}

on_both! {
    async fn any_column_of_any_row_that_is_changed_is_named(db: &TestDb) {
        let (job, other) = history(db).await;
        let whole = verified(db, job.number).await;
        assert!(whole.intact, "{whole:?}");
        assert_eq!((whole.entries, whole.late_entries), (11, 0));
        assert!(verified(db, other.number).await.intact);
        unguard(db).await;
        let mut changed = 0;
        for (table, changes) in columns() {
            let name = table.key();
            db.sql(&format!("CREATE TABLE kept AS SELECT * FROM {name}")).await.expect("kept");
            // Foreign keys would refuse some of it; what the checks of a column refuse can be changed by nobody.
            let (off, key) = if db.is_sqlite() {
                ("PRAGMA foreign_keys = OFF;", "rowid")
            } else {
                ("SET session_replication_role = replica;", "ctid")
            };
            let one = if table == Sealed::Asked { format!("id = '{}'", job.clubs[0].id.0) } else {
                format!("{key} = (SELECT MIN({key}) FROM {name})")
            };
            for change in &changes {
                if db.sql(&format!("{off} UPDATE {name} SET {change} WHERE {one}")).await.is_err() {
                    continue;
                }
                changed += 1;
                let found = verified(db, job.number).await;
                assert!(!found.intact, "{name}: {change}");
                let named = |fault: &bench::seal::FoundFault| {
                    fault.table == Some(table) && matches!(fault.fault, SealFault::Changed | SealFault::Gone)
                };
                assert!(found.faults.iter().any(named), "{name}: {change}: {found:?}");
                db.sql(&format!("{off} DELETE FROM {name}; INSERT INTO {name} SELECT * FROM kept")).await.expect("put back");
                assert!(verified(db, job.number).await.intact, "{name}: {change}: put back");
            }
            // A row that goes, and one that comes.
            let after = format!("{off} DELETE FROM {name} WHERE {one}");
            db.sql(&after).await.expect("removed");
            let found = verified(db, job.number).await;
            assert!(found.faults.iter().any(|f| f.fault == SealFault::Gone && f.table == Some(table)), "{name}: {found:?}");
            db.sql(&format!("{off} DELETE FROM {name}; INSERT INTO {name} SELECT * FROM kept")).await.expect("put back");
            db.sql("DROP TABLE kept").await.expect("dropped");
        }
        assert!(changed > 60, "only {changed} changes got past the checks of the columns");
        db.sql(
            "INSERT INTO event (id, seq, happened_at, done_by, job, club, kind, body)
             SELECT 'later', 999, happened_at, done_by, job, club, kind, body FROM event",
        ).await.expect("inserted");
        let found = verified(db, job.number).await;
        assert_eq!(found.faults.len(), 1);
        assert_eq!((found.faults[0].fault, found.faults[0].row.as_str()), (SealFault::Added, "later"));
    }

    async fn an_entry_of_the_chain_that_is_changed_or_gone_is_named(db: &TestDb) {
        let (job, _) = history(db).await;
        let end = verified(db, job.number).await.end_sha256.expect("an end");
        assert!(db.sql("UPDATE record_seal SET late = 1").await.is_err(), "the database refuses it by itself");
        assert!(db.sql("DELETE FROM record_seal").await.is_err());
        unguard(db).await;
        db.sql("UPDATE record_seal SET late = 1 WHERE entry = 3").await.expect("changed");
        let found = verified(db, job.number).await;
        assert_eq!((found.faults[0].fault, found.faults[0].entry), (SealFault::SealChanged, Some(3)));
        db.sql("UPDATE record_seal SET late = 0 WHERE entry = 3").await.expect("changed");
        assert!(verified(db, job.number).await.intact);
        // The last row and its entry: seen against the printed end alone.
        db.sql("DELETE FROM record_seal WHERE entry > 9").await.expect("removed");
        db.sql("DELETE FROM finished_club").await.expect("removed");
        let chain = db.read().await.chain(job.number).await.expect("the chain");
        assert!(chain.verify(None).intact, "the limit that the guide tells of");
        assert_eq!(chain.verify(Some(&end)).faults[0].fault, SealFault::OtherEnd);
    }

    async fn two_servers_write_one_chain(db: &TestDb) {
        let job = with_job(db).await;
        let second = Store::open(&db.url).await.expect("a second server");
        let write = |store: Store, by: &'static str| {
            let job = job.clone();
            tokio::spawn(async move {
                for i in 0..20 {
                    let mut tx = store.write().await.expect("a transaction");
                    let read = Reading { by: by.into(), ..reading(&job, i % 2, What::SwingWeight, 41.0) };
                    tx.append_reading(&read, None, None).await.expect("appended");
                    tx.commit().await.expect("saved");
                }
            })
        };
        let (one, two) = (write(db.store.clone(), "Wren"), write(second.clone(), "Jay"));
        one.await.expect("done");
        two.await.expect("done");
        second.close().await;
        let found = verified(db, job.number).await;
        assert_eq!((found.intact, found.entries), (true, 40), "{found:?}");
    }

    async fn what_was_there_before_is_sealed_late_and_says_so(db: &TestDb) {
        let (job, _) = history(db).await;
        let before = verified(db, job.number).await;
        unguard(db).await;
        // As a database of an earlier version is when its schema was just brought up to date.
        db.sql("DELETE FROM record_seal").await.expect("emptied");
        let on = if db.is_sqlite() { "" } else { " ON record_seal_begun" };
        db.sql(&format!("DROP TRIGGER record_seal_begun_no_delete{on}; DELETE FROM record_seal_begun")).await.expect("emptied");
        assert!(Store::open(&db.url).await.is_err(), "the guards are missed");
        guard(db).await;
        let opened = Store::open(&db.url).await.expect("opened again");
        let mut tx = opened.read().await.expect("a transaction");
        let found = tx.chain(job.number).await.expect("the chain").verify(None);
        assert!(found.intact, "{found:?}");
        assert_eq!((found.entries, found.late_entries), (before.entries, before.entries));
        assert!(found.kept_from.is_some());
        drop(tx);
        let mut tx = opened.write().await.expect("a transaction");
        tx.append_reading(&reading(&job, 1, What::SwingWeight, 40.0), None, None).await.expect("appended");
        let found = tx.chain(job.number).await.expect("the chain").verify(None);
        assert_eq!((found.intact, found.entries - found.late_entries), (true, 1));
        tx.commit().await.expect("saved");
        opened.close().await;
    }

    async fn an_archive_takes_its_chain_along(db: &TestDb) {
        let (job, _) = history(db).await;
        let end = verified(db, job.number).await.end_sha256;
        let mut text = Vec::new();
        db.store.archive(&mut text, at(9000)).await.expect("archived");
        let folder = tempfile::tempdir().expect("a folder");
        let url = format!("sqlite://{}", folder.path().join("moved.db").display());
        store::fill_from_archive(&url, &mut std::io::Cursor::new(text)).await.expect("filled");
        let moved = Store::open(&url).await.expect("opened");
        let found = moved.read().await.expect("a transaction").chain(job.number).await.expect("the chain").verify(None);
        assert_eq!((found.intact, found.late_entries, found.end_sha256), (true, 0, end));
        moved.close().await;
    }
}
