//! Holding parts for clubs, using them, giving them back.

use crate::refused_words;
use crate::samples::{add_job, at, box_of_ferrules, head, new_id, with_job};
use store::{Hold, StoreError, Tx};
use trade::id::PartId;
use trade::job::Job;
use trade::part::{Part, PartState};

async fn saved(tx: &mut Tx, part: Part) -> Part {
    tx.insert_part(&part, at(1)).await.expect("saved");
    part
}

async fn now(tx: &mut Tx, part: &Part) -> Part {
    tx.part(&part.id).await.expect("read").expect("there")
}

fn hold_of(part: &Part, job: &Job, club: usize) -> Hold {
    Hold { part: part.id.clone(), club: job.clubs[club].id.clone(), code: part.code.clone(), kind: part.kind }
}

/// What the texts call a state.
fn word_of(state: PartState) -> String {
    words::Words::of_documents(words::Language::english(), jiff::tz::TimeZone::UTC).tell(&state)
}

on_both! {
    async fn a_single_part_is_held_once(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let part = saved(&mut tx, head("H6-1")).await;
        tx.hold(&part.id, &job.id, &job.clubs[0].id, at(2)).await.expect("free");
        let held = now(&mut tx, &part).await;
        assert_eq!(held, Part {
            state: PartState::Held,
            job: Some(job.id.clone()),
            club: Some(job.clubs[0].id.clone()),
            version: 1,
            ..part.clone()
        });
        for (again, club) in [(&job, 0), (&job, 1), (&other, 0)] {
            let refused = tx.hold(&part.id, &again.id, &again.clubs[club].id, at(3)).await.expect_err("taken");
            let StoreError::PartTaken { code, state, job_number } = &refused else { panic!("{refused}") };
            assert_eq!((code.as_str(), *state, *job_number), ("H6-1", PartState::Held, Some(job.number)));
        }
        assert_eq!(now(&mut tx, &part).await, held, "a refusal changes nothing");
    }

    async fn only_free_parts_are_held_and_only_for_clubs_of_the_job(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        for (i, state) in [PartState::Ordered, PartState::Used, PartState::Pulled, PartState::Rejected].into_iter().enumerate() {
            let part = saved(&mut tx, Part { state, ..head(&format!("H6-{i}")) }).await;
            let refused = tx.hold(&part.id, &job.id, &job.clubs[0].id, at(2)).await.expect_err("not free");
            assert!(matches!(&refused, StoreError::PartTaken { state: s, job_number: None, .. } if *s == state));
            assert!(refused_words(&refused).contains(&word_of(state)), "{refused}");
            let counted = saved(&mut tx, Part { state, ..box_of_ferrules(&format!("F-{i}"), 3) }).await;
            let refused = tx.hold(&counted.id, &job.id, &job.clubs[0].id, at(2)).await.expect_err("not free");
            assert!(refused.is_taken(), "{refused}");
        }
        let part = saved(&mut tx, head("H6-9")).await;
        let refused = tx.hold(&part.id, &job.id, &other.clubs[0].id, at(2)).await.expect_err("another job's club");
        assert!(refused.is_missing(), "{refused}");
        let unknown = PartId(new_id());
        let refused = tx.hold(&unknown, &job.id, &job.clubs[0].id, at(2)).await.expect_err("no such part");
        assert!(refused.is_missing(), "{refused}");
        assert!(tx.holds(&job.id).await.expect("read").is_empty());
    }

    async fn a_bulk_is_counted_down_and_back_up(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let ferrules = saved(&mut tx, box_of_ferrules("F-1", 3)).await;
        for club in [0, 1, 1] {
            tx.hold(&ferrules.id, &job.id, &job.clubs[club].id, at(2)).await.expect("some are left");
        }
        let empty = now(&mut tx, &ferrules).await;
        assert_eq!((empty.count, empty.state, empty.version, empty.job), (Some(0), PartState::Free, 3, None));
        let refused = tx.hold(&ferrules.id, &job.id, &job.clubs[0].id, at(3)).await.expect_err("none left");
        assert!(refused_words(&refused).contains("no F-1 is left"), "{refused}");
        let holds = tx.holds(&job.id).await.expect("read");
        assert_eq!(holds, [0, 1, 1].map(|club| hold_of(&ferrules, &job, club)));
        tx.release_club(&job.clubs[1].id, at(4)).await.expect("released");
        assert_eq!(now(&mut tx, &ferrules).await.count, Some(2));
        assert_eq!(tx.holds(&job.id).await.expect("read"), [hold_of(&ferrules, &job, 0)]);
        tx.release_club(&job.clubs[1].id, at(5)).await.expect("nothing to release");
        assert_eq!(now(&mut tx, &ferrules).await.count, Some(2), "released once");
        tx.release_job(&job.id, at(6)).await.expect("released");
        assert_eq!(now(&mut tx, &ferrules).await.count, Some(3));
    }

    async fn what_is_used_stays_used(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let ferrules = saved(&mut tx, box_of_ferrules("F-1", 10)).await;
        let heads = [saved(&mut tx, head("H6-1")).await, saved(&mut tx, head("H6-2")).await];
        for club in [1, 0] {
            tx.hold(&heads[club].id, &job.id, &job.clubs[club].id, at(2)).await.expect("free");
            tx.hold(&ferrules.id, &job.id, &job.clubs[club].id, at(2)).await.expect("free");
        }
        let all = [(&heads[0], 0), (&ferrules, 0), (&heads[1], 1), (&ferrules, 1)];
        let mut holds = tx.holds(&job.id).await.expect("read");
        holds.sort_by_key(|h| (h.club != job.clubs[0].id, h.code.starts_with('F')));
        assert_eq!(holds, all.map(|(part, club)| hold_of(part, &job, club)));
        tx.use_club_parts(&job.clubs[0].id, at(3)).await.expect("used");
        tx.release_job(&job.id, at(4)).await.expect("released");
        let [used, freed] = [now(&mut tx, &heads[0]).await, now(&mut tx, &heads[1]).await];
        assert_eq!((used.state, used.job, used.club), (PartState::Used, Some(job.id.clone()), Some(job.clubs[0].id.clone())));
        assert_eq!((freed.state, freed.job, freed.club, freed.version), (PartState::Free, None, None, 2));
        assert_eq!(now(&mut tx, &ferrules).await.count, Some(9), "one is in the club");
        assert!(tx.holds(&job.id).await.expect("read").is_empty());
        tx.hold(&freed.id, &job.id, &job.clubs[1].id, at(5)).await.expect("free again");
    }

    async fn releasing_one_job_leaves_the_others(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        let ferrules = saved(&mut tx, box_of_ferrules("F-1", 10)).await;
        let theirs = saved(&mut tx, head("H6-1")).await;
        tx.hold(&theirs.id, &other.id, &other.clubs[0].id, at(2)).await.expect("free");
        tx.hold(&ferrules.id, &other.id, &other.clubs[0].id, at(2)).await.expect("free");
        tx.hold(&ferrules.id, &job.id, &job.clubs[0].id, at(2)).await.expect("free");
        tx.release_job(&job.id, at(3)).await.expect("released");
        assert_eq!(tx.holds(&other.id).await.expect("read").len(), 2);
        assert_eq!(now(&mut tx, &theirs).await.state, PartState::Held);
        assert_eq!(now(&mut tx, &ferrules).await.count, Some(9));
    }
}
