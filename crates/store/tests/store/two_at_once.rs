//! Two programs on one database: each opens it for itself, as two servers or a server and a script would.

use crate::database::TestDb;
use crate::samples::{at, box_of_ferrules, head, reading, with_job};
use std::sync::Arc;
use store::{Store, StoreError};
use tokio::sync::Barrier;
use trade::part::{Part, PartState};
use trade::reading::{Reading, What};

/// A second store on the same database.
async fn second(db: &TestDb) -> Store {
    Store::open(&db.url).await.expect("the database is there")
}

async fn add_part(db: &TestDb, part: &Part) {
    let mut tx = db.write().await;
    tx.insert_part(part, at(1)).await.expect("saved");
    tx.commit().await.expect("commit");
}

on_both! {
    async fn what_others_change_is_told_apart_from_ones_own(db: &TestDb) {
        with_job(db).await;
        let other = second(db).await;
        let told = async || db.store.changes_of_others().await.expect("read");
        let before = told().await;
        add_part(db, &head("H6-1")).await;
        drop(db.write().await);
        assert_eq!(told().await, before, "its own, and one that was given up");
        let mut tx = other.write().await.expect("a writer");
        tx.insert_part(&head("H6-2"), at(1)).await.expect("saved");
        assert_eq!(told().await, before, "not made to last yet");
        tx.commit().await.expect("commit");
        assert_eq!(told().await, before + 1);
        add_part(db, &head("H6-3")).await;
        assert_eq!(told().await, before + 1);
        other.close().await;
    }

    async fn a_part_goes_to_one_of_two_clubs(db: &TestDb) {
        let job = with_job(db).await;
        let stores = [db.store.clone(), second(db).await];
        for round in 0..30 {
            let part = head(&format!("H6-{round}"));
            add_part(db, &part).await;
            let start = Arc::new(Barrier::new(2));
            let tries: Vec<_> = stores.iter().enumerate().map(|(club, store)| {
                let (store, start, part) = (store.clone(), Arc::clone(&start), part.id.clone());
                let (job, club) = (job.id.clone(), job.clubs[club].id.clone());
                tokio::spawn(async move {
                    start.wait().await;
                    let mut tx = store.write().await?;
                    tx.hold(&part, &job, &club, at(2)).await?;
                    tx.commit().await?;
                    Ok::<_, StoreError>(club)
                })
            }).collect();
            let mut winners = Vec::new();
            for attempt in tries {
                match attempt.await.expect("no panic") {
                    Ok(club) => winners.push(club),
                    Err(refused) => assert!(
                        matches!(&refused, StoreError::PartTaken { state: PartState::Held, job_number: Some(1), .. }),
                        "{refused}"
                    ),
                }
            }
            assert_eq!(winners.len(), 1, "round {round}");
            let saved = db.read().await.part(&part.id).await.expect("read").expect("there");
            assert_eq!((saved.club.as_ref(), saved.version), (Some(&winners[0]), 1));
        }
        stores[1].close().await;
    }

    async fn a_part_is_held_or_scrapped_never_both(db: &TestDb) {
        let job = with_job(db).await;
        let stores = [db.store.clone(), second(db).await];
        let (mut held, mut scrapped) = (0, 0);
        for round in 0..30 {
            let part = head(&format!("H6-{round}"));
            add_part(db, &part).await;
            let start = Arc::new(Barrier::new(2));
            let (to_hold, of, club) = (part.id.clone(), job.id.clone(), job.clubs[0].id.clone());
            let (store, begin) = (stores[round % 2].clone(), Arc::clone(&start));
            let hold = tokio::spawn(async move {
                begin.wait().await;
                let mut tx = store.write().await?;
                tx.hold(&to_hold, &of, &club, at(2)).await?;
                tx.commit().await
            });
            let (store, looked_at) = (stores[(round + 1) % 2].clone(), part.clone());
            let scrap = tokio::spawn(async move {
                start.wait().await;
                let mut tx = store.write().await?;
                // As it was looked at on a tablet, before the other did anything.
                tx.update_part(&Part { state: PartState::Rejected, ..looked_at }, at(2)).await?;
                tx.commit().await
            });
            let (hold, scrap) = (hold.await.expect("no panic"), scrap.await.expect("no panic"));
            let saved = db.read().await.part(&part.id).await.expect("read").expect("there");
            match (&hold, &scrap) {
                (Ok(()), Err(refused)) => {
                    assert!(refused.is_stale(), "{refused}");
                    assert_eq!((saved.state, saved.club.as_ref()), (PartState::Held, Some(&job.clubs[0].id)));
                    held += 1;
                }
                (Err(refused), Ok(())) => {
                    assert!(matches!(refused, StoreError::PartTaken { state: PartState::Rejected, .. }), "{refused}");
                    assert_eq!((saved.state, saved.club), (PartState::Rejected, None));
                    scrapped += 1;
                }
                other => panic!("one of the two: {other:?}"),
            }
            // Its life tells only what happened: it came in, and one thing more where it is held.
            let life = db.read().await.life(&part.id).await.expect("read");
            assert_eq!(life.len(), if saved.state == PartState::Held { 2 } else { 1 });
        }
        assert_eq!(held + scrapped, 30);
        stores[1].close().await;
    }

    async fn the_second_waits_for_the_first_and_sees_what_it_did(db: &TestDb) {
        let job = with_job(db).await;
        let part = head("H6-1");
        add_part(db, &part).await;
        let other = second(db).await;
        let mut first = db.write().await;
        first.hold(&part.id, &job.id, &job.clubs[0].id, at(2)).await.expect("free");
        let (store, id, of, club) = (other.clone(), part.id.clone(), job.id.clone(), job.clubs[1].id.clone());
        let waiting = tokio::spawn(async move {
            let mut tx = store.write().await?;
            tx.hold(&id, &of, &club, at(3)).await
        });
        // A reader does not wait, and does not see what is not committed.
        let seen = other.read().await.expect("a reader").part(&part.id).await.expect("read").expect("there");
        assert_eq!(seen.state, PartState::Free);
        assert!(!waiting.is_finished());
        first.commit().await.expect("commit");
        let refused = waiting.await.expect("no panic").expect_err("taken by then");
        assert!(refused.is_taken(), "{refused}");
        other.close().await;
    }

    /// Tablets that come back from a network hole all write at once: pages are read meanwhile, and nobody is overtaken.
    async fn waiting_writers_hold_up_no_reader_and_are_served_in_their_order(db: &TestDb) {
        let first = db.write().await;
        let order = Arc::new(std::sync::Mutex::new(Vec::new()));
        let mut waiting = Vec::new();
        for i in 0..30 {
            let (store, order) = (db.store.clone(), Arc::clone(&order));
            waiting.push(tokio::spawn(async move {
                let tx = store.write().await?;
                order.lock().expect("no panic").push(i);
                tx.commit().await
            }));
            // Long enough that the next one asks after this one.
            tokio::time::sleep(std::time::Duration::from_millis(10)).await;
        }
        for _ in 0..20 {
            db.read().await.jobs(None).await.expect("read");
        }
        assert!(waiting.iter().all(|w| !w.is_finished()), "they wait for the first writer");
        first.commit().await.expect("commit");
        for written in waiting {
            written.await.expect("no panic").expect("none is refused");
        }
        assert_eq!(*order.lock().expect("no panic"), (0..30).collect::<Vec<_>>());
    }

    async fn a_box_is_never_overdrawn(db: &TestDb) {
        let job = with_job(db).await;
        let ferrules = box_of_ferrules("F-1", 11);
        add_part(db, &ferrules).await;
        let stores = [db.store.clone(), second(db).await];
        let tries: Vec<_> = (0..20).map(|i| {
            let (store, part) = (stores[i % 2].clone(), ferrules.id.clone());
            let (job, club) = (job.id.clone(), job.clubs[i % 2].id.clone());
            tokio::spawn(async move {
                let mut tx = store.write().await?;
                tx.hold(&part, &job, &club, at(2)).await?;
                tx.commit().await
            })
        }).collect();
        let mut held = 0;
        for attempt in tries {
            match attempt.await.expect("no panic") {
                Ok(()) => held += 1,
                Err(refused) => assert!(refused.is_taken(), "{refused}"),
            }
        }
        assert_eq!(held, 11);
        let mut tx = db.read().await;
        assert_eq!(tx.part(&ferrules.id).await.expect("read").expect("there").count, Some(0));
        assert_eq!(tx.holds(&job.id).await.expect("read").len(), 11);
        stores[1].close().await;
    }

    async fn two_tablets_on_one_club_cannot_both_write(db: &TestDb) {
        let job = with_job(db).await;
        let stores = [db.store.clone(), second(db).await];
        for round in 0..30_i32 {
            let start = Arc::new(Barrier::new(2));
            let tries: Vec<_> = stores.iter().map(|store| {
                let (store, start) = (store.clone(), Arc::clone(&start));
                let sent = reading(&job, 0, What::SwingWeight, f64::from(round));
                tokio::spawn(async move {
                    start.wait().await;
                    let mut tx = store.write().await?;
                    let appended = tx.append_reading(&sent, Some(i64::from(round)), None).await?;
                    tx.commit().await?;
                    Ok::<_, StoreError>(appended.club_version)
                })
            }).collect();
            let mut versions = Vec::new();
            for attempt in tries {
                match attempt.await.expect("no panic") {
                    Ok(version) => versions.push(version),
                    Err(refused) => assert!(refused.is_stale(), "{refused}"),
                }
            }
            assert_eq!(versions, [i64::from(round) + 1]);
        }
        assert_eq!(db.read().await.readings(&job.id).await.expect("read").len(), 30);
        stores[1].close().await;
    }

    async fn one_request_sent_twice_at_once_is_saved_once(db: &TestDb) {
        let job = with_job(db).await;
        let stores = [db.store.clone(), second(db).await];
        let sent = reading(&job, 0, What::SwingWeight, 41.7);
        for round in 0..10 {
            let tries: Vec<_> = stores.iter().map(|store| {
                let (store, key) = (store.clone(), format!("key {round}"));
                let sent = Reading { id: crate::samples::new_id().as_str().into(), ..sent.clone() };
                tokio::spawn(async move {
                    let mut tx = store.write().await?;
                    let appended = tx.append_reading(&sent, None, Some(&key)).await?;
                    tx.commit().await?;
                    Ok::<_, StoreError>(appended)
                })
            }).collect();
            let mut answers = Vec::new();
            for attempt in tries {
                answers.push(attempt.await.expect("no panic").expect("both are answered"));
            }
            assert_eq!(answers[0].reading, answers[1].reading);
            assert_eq!(answers.iter().filter(|a| a.repeated).count(), 1);
        }
        assert_eq!(db.read().await.readings(&job.id).await.expect("read").len(), 10);
        stores[1].close().await;
    }

    async fn numbers_are_not_given_twice(db: &TestDb) {
        with_job(db).await;
        let stores = [db.store.clone(), second(db).await];
        let tries: Vec<_> = (0..12).map(|i| {
            let store = stores[i % 2].clone();
            tokio::spawn(async move {
                let mut tx = store.write().await.expect("a turn");
                let job = crate::samples::add_job(&mut tx, &["6"]).await;
                tx.commit().await.expect("commit");
                job.number
            })
        }).collect();
        let mut numbers = Vec::new();
        for attempt in tries {
            numbers.push(attempt.await.expect("no panic"));
        }
        numbers.sort_unstable();
        assert_eq!(numbers, (2..=13).collect::<Vec<i64>>());
        stores[1].close().await;
    }

    async fn who_waits_too_long_is_told_so(db: &TestDb) {
        let other = second(db).await;
        let holding = db.write().await;
        let refused = other.write().await.expect_err("the first does not end");
        assert!(refused.is_busy(), "{refused}");
        drop(holding);
        other.write().await.expect("now it is free");
        other.close().await;
    }

    async fn a_new_database_may_be_opened_by_several_at_once(db: &TestDb) {
        // Back to an empty database, then everybody opens it at once.
        db.store.close().await;
        let url = if db.is_sqlite() {
            db.url.replace("shop.db", "second.db")
        } else {
            db.sql("DROP SCHEMA public CASCADE; CREATE SCHEMA public").await.expect("emptied");
            db.url.clone()
        };
        let tries: Vec<_> = (0..6).map(|_| {
            let url = url.clone();
            tokio::spawn(async move { Store::open(&url).await })
        }).collect();
        for attempt in tries {
            let store = attempt.await.expect("no panic").expect("opened");
            assert!(store.read().await.expect("a reader").models(None).await.expect("read").is_empty());
            store.close().await;
        }
    }
}
