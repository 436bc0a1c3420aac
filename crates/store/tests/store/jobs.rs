//! Jobs and their clubs.

use crate::refused_words;
use crate::samples::{add_job, head, job, new_id, plan, sheet, sheet_row, stock_models, with_job};
use store::StoreError;
use trade::id::{ClubId, JobId, SheetId};
use trade::job::JobState;

on_both! {
    async fn a_job_comes_back_with_its_clubs_in_the_order_of_the_tray(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let row = sheet_row(sheet("Ada Fenwick", &["6", "7", "8"]));
        tx.insert_sheet(&row).await.expect("saved");
        assert_eq!(tx.next_job_number().await.expect("a number"), 1);
        let mut first = job(42, &row);
        first.made_at = first.made_at.checked_add(jiff::SignedDuration::from_nanos(123_456_789)).expect("a time");
        first.clubs.reverse();
        first.clubs[0].plan = Some(plan(&head("H6-1")));
        tx.insert_job(&first).await.expect("saved");
        first.clubs.reverse();
        assert_eq!(tx.next_job_number().await.expect("a number"), 43);
        let second = add_job(&mut tx, &["6"]).await;
        assert_eq!(second.number, 43);
        tx.commit().await.expect("commit");

        let mut tx = db.read().await;
        assert_eq!(tx.job(&first.id).await.expect("read").as_ref(), Some(&first));
        assert_eq!(tx.job_by_number(42).await.expect("read").as_ref(), Some(&first));
        assert_eq!(tx.job_by_number(44).await.expect("read"), None);
        assert_eq!(tx.job(&JobId(new_id())).await.expect("read"), None);
        let card = tx.club_by_card(" j42-3".trim()).await.expect("read");
        assert_eq!(card, Some((first.id.clone(), first.clubs[2].id.clone())), "capitals do not matter");
        assert_eq!(tx.club_by_card("J42-4").await.expect("read"), None);
        assert_eq!(tx.jobs(None).await.expect("read"), [first.clone(), second.clone()]);
        assert_eq!(tx.jobs(Some(JobState::Open)).await.expect("read"), [first, second]);
        assert!(tx.jobs(Some(JobState::Planned)).await.expect("read").is_empty());
    }

    async fn a_number_a_card_and_a_slot_are_given_once(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let row = sheet_row(sheet("Ada Fenwick", &["6", "7"]));
        tx.insert_sheet(&row).await.expect("saved");
        tx.insert_job(&job(7, &row)).await.expect("saved");
        assert!(tx.insert_job(&job(7, &row)).await.expect_err("the number").is_taken());
        let mut wrong = job(8, &row);
        wrong.clubs[1].card = "j7-2".into();
        let refused = tx.insert_job(&wrong).await.expect_err("the card of job 7");
        assert!(matches!(&refused, StoreError::CodeTaken { code } if code == "j7-2"), "{refused}");
        wrong.clubs[1].card = "J8-1".into();
        assert!(tx.insert_job(&wrong).await.expect_err("one card twice").is_taken());
        wrong.clubs[1].card = "J8-2".into();
        wrong.clubs[1].slot = 1;
        assert!(tx.insert_job(&wrong).await.expect_err("one slot twice").is_bad_entry());
        wrong.clubs[1].slot = 2;
        wrong.sheet_id = SheetId(new_id());
        assert!(tx.insert_job(&wrong).await.expect_err("no such sheet").is_missing());
        wrong.sheet_id = row.id.clone();
        tx.insert_job(&wrong).await.expect("nothing was left behind by the refusals");
    }

    async fn the_job_itself_and_its_clubs_are_saved_apart(db: &TestDb) {
        let mut job = with_job(db).await;
        let mut tx = db.write().await;
        job.state = JobState::Planned;
        job.steps.truncate(3);
        job.sheet.note = "in a hurry".into();
        assert_eq!(tx.save_job(&job).await.expect("saved"), 1);
        let refused = tx.save_job(&job).await.expect_err("still at version 0");
        assert!(matches!(refused, StoreError::Stale { saved_version: 1, .. }), "{refused}");
        job.version = 1;
        let mut club = job.clubs[1].clone();
        club.plan = Some(plan(&head("H7-1")));
        club.target.swing_weight_points = 33.1;
        assert_eq!(tx.save_club(&club, &job.id).await.expect("saved"), 1);
        let refused = tx.save_club(&club, &job.id).await.expect_err("still at version 0");
        assert!(refused.is_stale() && refused_words(&refused).contains(&club.card), "{refused}");
        club.version = 1;
        job.clubs[1] = club.clone();
        assert_eq!(tx.job(&job.id).await.expect("read").as_ref(), Some(&job));
        club.plan = None;
        assert_eq!(tx.save_club(&club, &job.id).await.expect("saved"), 2);
        assert_eq!(tx.job(&job.id).await.expect("read").expect("there").clubs[1].plan, None);
        club.id = ClubId(new_id());
        assert!(tx.save_club(&club, &job.id).await.expect_err("no such club").is_missing());
        let other = add_job(&mut tx, &["6"]).await;
        assert!(tx.save_club(&other.clubs[0], &job.id).await.expect_err("another job's club").is_missing());
        job.id = JobId(new_id());
        assert!(tx.save_job(&job).await.expect_err("no such job").is_missing());
    }
}
