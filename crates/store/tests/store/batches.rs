//! What came with the forecasts and the batches that can be taken back: columns, keys, and what the clock is held against.

use crate::samples::{at, new_id, reading, with_job};
use bench::glue::Batch;
use sqlx::{AnyConnection, Connection, Row};
use store::{Event, StoreError};
use trade::event_kind::EventKind;
use trade::id::{BatchId, ClubId, EventId};
use trade::reading::{Reading, StoodForecast, What};

fn batch(number: i64, clubs: &[&ClubId]) -> Batch {
    Batch {
        id: BatchId(new_id()),
        number,
        adhesive: "BOND-24".into(),
        lot: "A 7".into(),
        clubs: clubs.iter().map(|&club| club.clone()).collect(),
        bead_share_percent: 5.0,
        room_c: 21.0,
        cold_reason: None,
        resin_g: 6.2,
        hardener_g: 6.2,
        beads_g: 0.6,
        mixed_at: at(number * 3600),
        by: "Wren".into(),
        taken_back: None,
    }
}

on_both! {
    async fn the_forecast_that_stood_comes_back_with_its_reading(db: &TestDb) {
        let job = with_job(db).await;
        let forecast = StoodForecast { value: 0.1 + 0.2, band: 1.0 / 3.0, version: 7 };
        let of = |forecast| Reading { forecast, ..reading(&job, 0, What::SwingWeight, 41.7) };
        // With and without by turns: the driver must not keep the type of one for the other.
        let readings = [of(None), of(Some(forecast)), of(None), of(Some(StoodForecast { value: -3.5, ..forecast }))];
        let mut tx = db.write().await;
        for (i, reading) in readings.iter().enumerate() {
            tx.append_reading(reading, None, Some(&format!("key {i}"))).await.expect("appended");
        }
        for bad in [f64::NAN, f64::INFINITY] {
            for forecast in [StoodForecast { value: bad, ..forecast }, StoodForecast { band: bad, ..forecast }] {
                assert!(tx.append_reading(&of(Some(forecast)), None, None).await.expect_err("no number").is_bad_entry());
            }
        }
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        assert_eq!(tx.readings(&job.id).await.expect("read"), readings);
        assert_eq!(tx.reading(&readings[1].id).await.expect("read").and_then(|r| r.forecast), Some(forecast));
        let again = tx.reading_by_request_key("key 1").await.expect("read");
        assert_eq!(again.as_ref(), Some(&readings[1]));

        // Other programs find them in columns of their own.
        let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
        let sql = "SELECT forecast_value, forecast_band, forecast_version FROM reading
                   WHERE forecast_version IS NOT NULL ORDER BY seq";
        let rows = sqlx::query(sql).fetch_all(&mut conn).await.expect("rows");
        let figures: Vec<(f64, f64, i64)> = rows.iter().map(|row| (row.get(0), row.get(1), row.get(2))).collect();
        assert_eq!(figures, [(0.1 + 0.2, 1.0 / 3.0, 7), (-3.5, 1.0 / 3.0, 7)]);
        let empty = "SELECT COUNT(*) FROM reading WHERE forecast_value IS NULL AND forecast_band IS NULL
                     AND forecast_version IS NULL";
        let row = sqlx::query(empty).fetch_one(&mut conn).await.expect("a row");
        assert_eq!(row.get::<i64, _>(0), 2);
        conn.close().await.expect("closed");
    }

    async fn readings_are_counted_against_the_forecast_that_stood(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let stood = |value, band| Some(StoodForecast { value, band, version: 7 });
        let of = |value, forecast| Reading { forecast, ..reading(&job, 0, What::SwingWeight, value) };
        // Inside, on the edge, outside, without a forecast; one taken back, one read again.
        let (wrong, first) = (of(60.0, stood(40.0, 0.3)), of(41.0, stood(40.0, 0.3)));
        let again = Reading { replaces: Some(first.id.clone()), ..of(40.1, stood(40.0, 0.3)) };
        let old = Reading { at: at(-100 * 86_400), ..of(40.0, stood(40.0, 0.3)) };
        let kept = [of(40.2, stood(40.0, 0.3)), of(40.3, stood(40.0, 0.3)), of(39.6, stood(40.0, 0.3)), of(40.0, None)];
        for reading in kept.iter().chain([&wrong, &first, &again, &old]) {
            tx.append_reading(reading, None, None).await.expect("appended");
        }
        tx.take_back(&wrong.id, "digits swapped", "Wren", at(700)).await.expect("noted");
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        let counts = tx.forecasted(at(-86_400)).await.expect("read");
        let [only] = counts.as_slice() else { panic!("{counts:?}") };
        assert_eq!((&only.job, only.step.as_str(), only.what), (&job.id, kept[0].step.as_str(), What::SwingWeight));
        assert_eq!((only.held, only.of), (3, 4), "two of three and the one read again");
        assert!(tx.forecasted(at(86_400 * 400)).await.expect("read").is_empty());
    }

    async fn a_batch_is_found_by_its_number_and_by_its_key(db: &TestDb) {
        let job = with_job(db).await;
        let [a, b] = [&job.clubs[0].id, &job.clubs[1].id];
        let mut tx = db.write().await;
        let batches = [batch(1, &[b, a]), batch(2, &[a]), batch(3, &[])];
        for (batch, key) in batches.iter().zip([Some("cup 1"), None, None]) {
            tx.insert_batch(batch, key).await.expect("saved");
        }
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        assert_eq!(tx.batch_by_request_key("cup 1").await.expect("read").as_ref(), Some(&batches[0]));
        assert_eq!(tx.batch_by_request_key("cup 2").await.expect("read"), None);
        assert_eq!(tx.batch_by_request_key("").await.expect("read"), None, "a batch without a key has none");
        assert_eq!(tx.batch_by_number(2).await.expect("read").as_ref(), Some(&batches[1]));
        assert_eq!(tx.batch_by_number(9).await.expect("read"), None);
        drop(tx);
        // The database itself keeps one batch a key, should a program forget to ask.
        let mut tx = db.write().await;
        tx.insert_batch(&batch(4, &[a]), Some("cup 1")).await.expect_err("the key is used");
        drop(tx);
        assert_eq!(db.read().await.batches(None).await.expect("read"), batches);
    }

    async fn a_batch_is_taken_back_beside_it(db: &TestDb) {
        let job = with_job(db).await;
        let [a, b] = [&job.clubs[0].id, &job.clubs[1].id];
        let mut tx = db.write().await;
        let (wrong, right) = (batch(1, &[a, b]), batch(2, &[b]));
        tx.insert_batch(&wrong, Some("cup 1")).await.expect("saved");
        tx.insert_batch(&right, None).await.expect("saved");
        tx.take_back_batch(&wrong.id, "the wrong clubs, Größe", "Wren", at(700)).await.expect("noted");
        let refused = tx.take_back_batch(&wrong.id, "again", "Jay", at(701)).await.expect_err("already");
        assert!(matches!(&refused, StoreError::AlreadyTakenBack { why } if why == "the wrong clubs, Größe"), "{refused}");
        assert!(refused.is_conflict(), "{refused}");
        assert!(tx.take_back_batch(&BatchId(new_id()), "?", "Jay", at(701)).await.expect_err("unknown").is_missing());
        tx.commit().await.expect("commit");

        let marked = Batch { taken_back: Some("the wrong clubs, Größe".into()), ..wrong.clone() };
        let both = [marked.clone(), right];
        let mut tx = db.read().await;
        assert_eq!(tx.batch(&wrong.id).await.expect("read").as_ref(), Some(&marked));
        assert_eq!(tx.batch_by_number(1).await.expect("read").as_ref(), Some(&marked));
        assert_eq!(tx.batch_by_request_key("cup 1").await.expect("read").as_ref(), Some(&marked));
        assert_eq!(tx.batches(None).await.expect("read"), both);
        assert_eq!(tx.batches(Some(&job.id)).await.expect("read"), both);
        assert_eq!(tx.batches_since(at(0)).await.expect("read"), both);
        drop(tx);

        let mut attempts = vec!["UPDATE batch_taken_back SET why = ''", "DELETE FROM batch_taken_back"];
        if !db.is_sqlite() {
            attempts.push("TRUNCATE batch_taken_back");
        }
        for attempt in attempts {
            let refused = db.sql(attempt).await.expect_err(attempt);
            assert!(refused.to_string().contains("append-only"), "{attempt}: {refused}");
        }
        assert_eq!(db.read().await.batches(None).await.expect("read"), both);
    }

    async fn the_newest_entries_are_those_that_came_last_whatever_they_say(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        assert_eq!(tx.newest_entries(50).await.expect("read"), []);
        assert_eq!(tx.last_event_of(&[EventKind::ClockJumped]).await.expect("read"), None);
        // The clock was set back: the last readings say that they were earlier.
        for seconds in [5000, 100, 200] {
            let reading = Reading { at: at(seconds), ..reading(&job, 0, What::SwingWeight, 41.7) };
            tx.append_reading(&reading, None, None).await.expect("appended");
        }
        tx.insert_batch(&batch(1, &[]), None).await.expect("saved");
        let event = |kind: &str, seconds| Event {
            id: EventId(new_id()),
            at: at(seconds),
            by: "the program".into(),
            job: None,
            club: None,
            kind: kind.into(),
            body: serde_json::json!({ "from": "x" }),
        };
        let [jumped, confirmed, other] = [event("clock_jumped", 9), event("clock_confirmed", 8), event("shop_saved", 7)];
        for event in [&jumped, &confirmed, &other] {
            tx.append_event(event).await.expect("logged");
        }
        assert_eq!(tx.newest_entries(2).await.expect("read"), [200, 100, 3600, 7, 8].map(at));
        assert_eq!(tx.newest_entries(50).await.expect("read"), [200, 100, 5000, 3600, 7, 8, 9].map(at));
        let last = tx.last_event_of(&[EventKind::ClockJumped, EventKind::ClockConfirmed]).await.expect("read");
        assert_eq!(last.as_ref(), Some(&confirmed));
        assert_eq!(tx.last_event_of(&[EventKind::ClockJumped]).await.expect("read").as_ref(), Some(&jumped));
    }
}
