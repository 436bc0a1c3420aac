//! Readings: appended, said again, taken back, insisted on, never changed.

use crate::samples::{add_job, at, new_id, reading, with_job};
use fact::Told;
use store::StoreError;
use store::{Saved, Stored};
use trade::id::{ClubId, ReadingId};
use trade::reading::{Reading, What, standing};

/// A reason as somebody typed it.
fn typed(text: &str) -> Told {
    Told::verbatim(text)
}

on_both! {
    async fn a_reason_comes_back_as_it_was_given(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let fact = Told::new("because.other_part").with("kind", "tip weight").with("reason", "lighter");
        let reasons = [fact, typed("digits swapped"), typed(r#"{"code":"because.wrong","figures":{}}"#), typed("{}")];
        for reason in &reasons {
            let wrong = reading(&job, 0, What::SwingWeight, 14.7);
            tx.append_reading(&wrong, None, None).await.expect("appended");
            tx.take_back(&wrong.id, reason, "Wren", at(700)).await.expect("noted");
        }
        let kept: Vec<Told> = tx.readings(&job.id).await.expect("read").into_iter().filter_map(|r| r.taken_back).collect();
        assert_eq!(kept, reasons);
        // An earlier version kept its own reasons as sentences; they are told as they are.
        let before = reading(&job, 0, What::SwingWeight, 14.7);
        tx.append_reading(&before, None, None).await.expect("appended");
        tx.commit().await.expect("commit");
        db.sql(&format!(
            "INSERT INTO reading_taken_back (reading, why, said_by, said_at)
             VALUES ('{}', 'read before another grip was put in', 'Wren', '2025-10-01T00:00:00.000000000Z')",
            before.id.0
        ))
        .await
        .expect("as an earlier version wrote it");
        let read = db.read().await.readings(&job.id).await.expect("read");
        let kept = read.into_iter().find(|r| r.id == before.id).expect("there").taken_back;
        assert_eq!(kept, Some(typed("read before another grip was put in")));
    }

    async fn readings_come_back_in_the_order_of_arrival(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let readings = [
            reading(&job, 0, What::SwingWeight, 41.7),
            Reading { at: at(10), scale: None, ..reading(&job, 1, What::HeadMass, 261.3) },
            Reading { on: vec![], typed: String::new(), ..reading(&job, 0, What::Done, 0.0) },
            reading(&job, 0, What::SwingWeight, -3.5),
            Reading { insisted: true, ..reading(&job, 0, What::Cpm, 312.0) },
            reading(&job, 0, What::Lie, 62.25),
            reading(&job, 0, What::ShaftLength, 933.6),
        ];
        let mut versions = Vec::new();
        for reading in &readings {
            let appended = tx.append_reading(reading, None, None).await.expect("appended");
            assert_eq!((&appended.reading, appended.repeated), (reading, false));
            versions.push(appended.club_version);
        }
        assert_eq!(versions, [1, 1, 2, 3, 4, 5, 6], "each counts the version of its own club up");
        tx.append_reading(&reading(&other, 0, What::SwingWeight, 40.0), None, None).await.expect("another job's");
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        assert_eq!(tx.readings(&job.id).await.expect("read"), readings);
        assert_eq!(tx.readings(&other.id).await.expect("read").len(), 1);
        assert_eq!(tx.reading(&readings[3].id).await.expect("read").as_ref(), Some(&readings[3]));
        assert_eq!(tx.reading(&ReadingId(new_id())).await.expect("read"), None);
    }

    async fn a_reading_on_an_old_state_is_refused(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let first = tx.append_reading(&reading(&job, 0, What::SwingWeight, 41.7), Some(0), None).await.expect("appended");
        assert_eq!(first.club_version, 1);
        let late = reading(&job, 0, What::SwingWeight, 41.9);
        let refused = tx.append_reading(&late, Some(0), Some("tablet 2")).await.expect_err("an old version");
        let StoreError::Stale { what, saved_version } = &refused else { panic!("{refused}") };
        assert_eq!((what, *saved_version), (&Stored::Club { card: "J1-1".into() }, 1));
        assert_eq!(tx.readings(&job.id).await.expect("read").len(), 1);
        let again = tx.append_reading(&late, Some(1), Some("tablet 2")).await.expect("after loading anew");
        assert_eq!((again.club_version, again.repeated), (2, false));
        tx.append_reading(&reading(&job, 1, What::SwingWeight, 41.0), Some(0), None).await.expect("the other club's is 0");
    }

    async fn a_request_that_comes_again_writes_nothing(db: &TestDb) {
        let job = with_job(db).await;
        let first = reading(&job, 0, What::SwingWeight, 41.7);
        let mut tx = db.write().await;
        tx.append_reading(&first, Some(0), Some("key 1")).await.expect("appended");
        tx.append_reading(&reading(&job, 0, What::TotalMass, 415.2), Some(1), None).await.expect("appended");
        tx.commit().await.expect("commit");
        // The answer was lost: the tablet sends the same form again, later and under a new identity.
        let again = Reading { id: ReadingId(new_id()), at: at(900), ..first.clone() };
        let mut tx = db.write().await;
        let answer = tx.append_reading(&again, Some(0), Some("key 1")).await.expect("answered");
        assert_eq!((&answer.reading, answer.club_version, answer.repeated), (&first, 2, true));
        assert_eq!(tx.reading_by_request_key("key 1").await.expect("read").as_ref(), Some(&first));
        assert_eq!(tx.reading_by_request_key("key 2").await.expect("read"), None);
        assert_eq!(tx.readings(&job.id).await.expect("read").len(), 2);
        let other = reading(&job, 0, What::SwingWeight, 41.8);
        let refused = tx.append_reading(&other, Some(2), Some("key 1")).await.expect_err("another entry");
        assert!(matches!(&refused, StoreError::KeyReused { saved: Saved::Reading { typed, .. } } if typed.contains("41.7")), "{refused}");
        tx.append_reading(&other, Some(2), Some("key 2")).await.expect("appended");
    }

    async fn a_reading_is_taken_back_beside_it(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let wrong = reading(&job, 0, What::SwingWeight, 14.7);
        tx.append_reading(&wrong, None, None).await.expect("appended");
        let right = Reading { replaces: Some(wrong.id.clone()), ..reading(&job, 0, What::SwingWeight, 41.7) };
        tx.append_reading(&right, None, None).await.expect("appended");
        assert_eq!(tx.take_back(&wrong.id, &typed("digits swapped"), "Wren", at(700)).await.expect("noted"), 3);
        let refused = tx.take_back(&wrong.id, &typed("again"), "Jay", at(701)).await.expect_err("already");
        assert!(matches!(&refused, StoreError::AlreadyTakenBack { why } if *why == typed("digits swapped")), "{refused}");
        assert!(tx.take_back(&ReadingId(new_id()), &typed("?"), "Jay", at(701)).await.expect_err("unknown").is_missing());
        let marked = Reading { taken_back: Some(typed("digits swapped")), ..wrong.clone() };
        let all = tx.readings(&job.id).await.expect("read");
        assert_eq!(all, [marked.clone(), right.clone()]);
        assert_eq!(standing(&all), [&right]);
        assert_eq!(tx.job(&job.id).await.expect("read").expect("there").clubs[0].version, 3);
        let refused = tx.append_reading(&Reading { id: ReadingId(new_id()), ..marked }, None, None).await;
        assert!(refused.expect_err("taken back before it was there").is_bad_entry());
    }

    async fn a_doubted_reading_is_insisted_on_beside_it(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let doubted = reading(&job, 0, What::SwingWeight, 43.9);
        tx.append_reading(&doubted, None, None).await.expect("appended");
        assert_eq!(tx.insist(&doubted.id, "read three times", "Wren", at(700)).await.expect("noted"), 2);
        assert_eq!(tx.insist(&doubted.id, "yes", "Jay", at(701)).await.expect("nothing new"), 2);
        assert!(tx.insist(&ReadingId(new_id()), "?", "Jay", at(701)).await.expect_err("unknown").is_missing());
        let insisted = Reading { insisted: true, ..doubted };
        assert_eq!(tx.readings(&job.id).await.expect("read"), [insisted]);
    }

    async fn a_reading_belongs_to_what_exists(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let first = reading(&job, 0, What::SwingWeight, 41.7);
        tx.append_reading(&first, None, None).await.expect("appended");
        let base = || reading(&job, 0, What::SwingWeight, 41.7);
        let missing = [
            Reading { club: ClubId(new_id()), ..base() },
            Reading { club: other.clubs[0].id.clone(), ..base() },
            Reading { replaces: Some(ReadingId(new_id())), ..base() },
            Reading { replaces: Some(first.id.clone()), ..reading(&job, 1, What::SwingWeight, 41.7) },
        ];
        for wrong in missing {
            let refused = tx.append_reading(&wrong, None, None).await.expect_err("refers to nothing");
            assert!(refused.is_missing(), "{refused}");
        }
        assert!(tx.append_reading(&first, None, None).await.expect_err("the same identity").is_taken());
        for bad in [f64::NAN, f64::INFINITY] {
            for wrong in [Reading { value: bad, ..base() }, Reading { display_step: bad, ..base() }] {
                assert!(tx.append_reading(&wrong, None, None).await.expect_err("not a number").is_bad_entry());
            }
        }
        assert_eq!(tx.readings(&job.id).await.expect("read"), [first]);
        assert_eq!(tx.job(&job.id).await.expect("read").expect("there").clubs[0].version, 1, "refusals count nothing");
    }

    async fn the_database_itself_refuses_to_change_readings_and_the_log(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let kept = reading(&job, 0, What::SwingWeight, 41.7);
        tx.append_reading(&kept, None, None).await.expect("appended");
        tx.take_back(&kept.id, &typed("scale not zeroed"), "Wren", at(700)).await.expect("noted");
        tx.insist(&kept.id, "it was", "Jay", at(701)).await.expect("noted");
        tx.append_event(&store::Event {
            id: "e1".into(),
            at: at(702),
            by: "Jay".into(),
            job: Some(job.id.clone()),
            club: None,
            kind: "insisted".into(),
            body: serde_json::json!({}),
        }).await.expect("logged");
        tx.commit().await.expect("commit");
        let before = (db.read().await.readings(&job.id).await.expect("read"), db.read().await.events(None, 9).await.expect("read"));
        let mut attempts = vec![
            "UPDATE reading SET value = 40.0".to_owned(),
            "UPDATE reading_taken_back SET why = ''".to_owned(),
            "UPDATE reading_insisted SET why = ''".to_owned(),
            "UPDATE event SET kind = ''".to_owned(),
        ];
        let tables = ["reading_taken_back", "reading_insisted", "event", "reading"];
        attempts.extend(tables.map(|table| format!("DELETE FROM {table}")));
        if !db.is_sqlite() {
            attempts.extend(tables.map(|table| format!("TRUNCATE {table} CASCADE")));
        }
        for attempt in attempts {
            let refused = db.sql(&attempt).await.expect_err(&attempt);
            assert!(refused.to_string().contains("append-only"), "{attempt}: {refused}");
        }
        let after = (db.read().await.readings(&job.id).await.expect("read"), db.read().await.events(None, 9).await.expect("read"));
        assert_eq!(before, after);
    }
}
