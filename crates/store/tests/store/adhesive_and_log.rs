//! Batches of adhesive and the log.

use crate::refused_words;
use crate::samples::{add_job, at, new_id, with_job};
use bench::glue::Batch;
use store::Event;
use trade::id::{BatchId, ClubId, EventId, JobId};

fn batch(number: i64, minutes: i64, clubs: &[&ClubId]) -> Batch {
    Batch {
        id: BatchId(new_id()),
        number,
        adhesive: "BOND-24".into(),
        lot: "A 7".into(),
        clubs: clubs.iter().map(|&c| c.clone()).collect(),
        bead_share_percent: 5.1,
        room_c: 19.3,
        cold_reason: (number == 2).then(|| "the maker says 20 h at 5 °C".to_owned()),
        resin_g: 6.23,
        hardener_g: 6.19,
        beads_g: 0.63,
        mixed_at: at(minutes * 60),
        by: "Wren".into(),
        taken_back: None,
    }
}

fn event(job: Option<&JobId>, kind: &str) -> Event {
    Event {
        id: EventId(new_id()),
        at: at(5),
        by: "Jay".into(),
        job: job.cloned(),
        club: None,
        kind: kind.into(),
        body: serde_json::json!({"why": "Größe", "parts": [1, 2.5, null]}),
    }
}

on_both! {
    async fn batches_know_their_clubs(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let [a, b, c] = [&job.clubs[0].id, &job.clubs[1].id, &other.clubs[0].id];
        assert_eq!(tx.next_batch_number().await.expect("a number"), 1);
        let batches = [batch(1, 0, &[b, a]), batch(2, 30, &[c, a]), batch(3, 60, &[c]), batch(4, 90, &[])];
        for batch in &batches {
            tx.insert_batch(batch, None).await.expect("saved");
        }
        assert_eq!(tx.next_batch_number().await.expect("a number"), 5);
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        assert_eq!(tx.batch(&batches[0].id).await.expect("read").as_ref(), Some(&batches[0]));
        assert_eq!(tx.batch(&BatchId(new_id())).await.expect("read"), None);
        assert_eq!(tx.batches(None).await.expect("read"), batches);
        assert_eq!(tx.batches(Some(&job.id)).await.expect("read"), batches[..2]);
        assert_eq!(tx.batches(Some(&other.id)).await.expect("read"), batches[1..3]);
        assert_eq!(tx.batches_since(at(60 * 60)).await.expect("read"), batches[2..]);
        let just_before = at(60 * 60).checked_sub(jiff::SignedDuration::from_nanos(1)).expect("a time");
        let just_after = at(60 * 60).checked_add(jiff::SignedDuration::from_nanos(1)).expect("a time");
        assert_eq!(tx.batches_since(just_before).await.expect("read"), batches[2..]);
        assert_eq!(tx.batches_since(just_after).await.expect("read"), batches[3..]);
    }

    async fn a_batch_is_of_what_exists(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let sound = batch(1, 0, &[&job.clubs[0].id]);
        tx.insert_batch(&sound, None).await.expect("saved");
        assert!(tx.insert_batch(&batch(1, 0, &[]), None).await.expect_err("the number").is_taken());
        assert!(tx.insert_batch(&batch(2, 0, &[&ClubId(new_id())]), None).await.expect_err("no such club").is_missing());
        let unknown = Batch { adhesive: "BOND-25".into(), ..batch(2, 0, &[]) };
        assert!(tx.insert_batch(&unknown, None).await.expect_err("no such adhesive").is_missing());
        let wrong = Batch { room_c: f64::NAN, ..batch(2, 0, &[]) };
        assert!(tx.insert_batch(&wrong, None).await.expect_err("not a number").is_bad_entry());
        let refused = tx.remove_model("BOND-24").await.expect_err("used");
        assert!(refused_words(&refused).contains("1 batch"), "{refused}");
        assert_eq!(tx.batches(None).await.expect("read"), [sound]);
    }

    async fn the_log_is_read_newest_first(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let events = [
            event(None, "shop_saved"),
            event(Some(&job.id), "plan_accepted"),
            event(Some(&other.id), "plan_accepted"),
            Event { club: Some(job.clubs[1].id.clone()), ..event(Some(&job.id), "reading_taken_back") },
        ];
        for event in &events {
            tx.append_event(event).await.expect("logged");
        }
        assert!(tx.append_event(&events[0]).await.expect_err("the same identity").is_taken());
        let astray = event(Some(&JobId(new_id())), "?");
        assert!(tx.append_event(&astray).await.expect_err("no such job").is_missing());
        let newest_first: Vec<Event> = events.iter().rev().cloned().collect();
        assert_eq!(tx.events(None, 100).await.expect("read"), newest_first);
        assert_eq!(tx.events(None, 1).await.expect("read"), newest_first[..1]);
        let of_job = tx.events(Some(&job.id), 100).await.expect("read");
        assert_eq!(of_job, [events[3].clone(), events[1].clone()]);
        assert_eq!(tx.events(Some(&job.id), 1).await.expect("read"), [events[3].clone()]);
    }
}
