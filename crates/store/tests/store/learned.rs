//! What the shop has learned is kept state after state; where clubs came out is kept once.

use crate::samples::{add_job, at, new_id, with_job};
use bench::finished_club::FinishedClub;
use bench::learned::{Learned, LearnedCause, LearnedFrom, LearnedValue, Scatter};
use bench::record::Verdict;
use bench::told::{Sureness, ToldFigure, ToldOf};
use store::LearnedRow;
use trade::id::{ClubId, EventId, JobId};
use trade::job::Job;

fn learned(mean_shift: f64) -> Learned {
    let value = |key: &str| LearnedValue {
        key: key.into(),
        mean_shift,
        prior_sd: 0.4,
        clubs: 8,
        jobs: 1,
        from: vec![LearnedFrom { job: 1, clubs: vec!["6".into(), "7".into()] }],
        pinned: false,
    };
    Learned {
        values: vec![value("adhesive:BOND-24"), value("delta:LARK-2")],
        covariance: vec![vec![0.1 + 0.2, 0.01], vec![0.01, 1.0 / 3.0]],
        scatter: vec![Scatter { key: "adhesive.piece".into(), sd: 0.3, prior_sd: 0.25, weight: 3.5, pinned: false }],
        told: vec![ToldFigure {
            of: ToldOf::Grip,
            model: "OLIVINE".into(),
            change_points: -9.5 - mean_shift,
            sure: Sureness::About,
            by: "Größe".into(),
            at: at(4),
        }],
        not_asked: mean_shift > 0.0,
    }
}

fn row(job: Option<&JobId>, mean_shift: f64) -> LearnedRow {
    LearnedRow {
        id: EventId(new_id()),
        at: at(5),
        by: "Jay".into(),
        cause: if job.is_some() { LearnedCause::Job } else { LearnedCause::Reset },
        job: job.cloned(),
        about: if job.is_some() { String::new() } else { "delta:LARK-2".into() },
        reason: if job.is_some() { String::new() } else { "new maker, Größe".into() },
        learned: learned(mean_shift),
    }
}

fn finished(job: &Job, club: usize) -> FinishedClub {
    FinishedClub {
        club: job.clubs[club].id.clone(),
        job: job.id.clone(),
        job_number: job.number,
        number: job.clubs[club].target.number.clone(),
        head_model: "LARK-2".into(),
        finished_at: at(60),
        target_points: 32.0,
        deviation_points: -0.1 - 0.2,
        band_points: 0.17,
        tolerance_points: 0.5,
        verdict: Verdict::TooClose,
    }
}

on_both! {
    async fn the_latest_state_counts_and_each_job_teaches_once(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        assert_eq!(tx.learned().await.expect("read"), None);
        let rows = [row(Some(&job.id), 0.1), row(None, 0.2), row(Some(&other.id), 0.3)];
        for row in &rows {
            tx.append_learned(row).await.expect("kept");
        }
        assert_eq!(tx.learned().await.expect("read").as_deref(), Some(&rows[2].learned));
        assert!(tx.append_learned(&row(Some(&job.id), 0.4)).await.expect_err("taught already").is_taken());
        assert!(tx.append_learned(&rows[1]).await.expect_err("the same identity").is_taken());
        assert!(tx.append_learned(&row(Some(&JobId(new_id())), 0.4)).await.expect_err("no such job").is_missing());
        assert!(tx.append_learned(&row(None, f64::NAN)).await.expect_err("no number").is_bad_entry());
        let newest_first: Vec<LearnedRow> = rows.iter().rev().cloned().collect();
        assert_eq!(*tx.learned_rows(100).await.expect("read"), newest_first);
        assert_eq!(*tx.learned_rows(1).await.expect("read"), newest_first[..1]);
        // What was known before a job taught: nothing before the first, the state set back before the second.
        assert_eq!(tx.learned_before(&job.id).await.expect("read"), None);
        assert_eq!(tx.learned_before(&other.id).await.expect("read").as_ref(), Some(&rows[1].learned));
        assert_eq!(tx.learned_before(&JobId(new_id())).await.expect("read"), None);
        tx.commit().await.expect("commit");
    }

    async fn a_club_is_noted_once(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let clubs = [finished(&job, 1), finished(&job, 0)];
        for club in &clubs {
            tx.note_finished(club).await.expect("kept");
        }
        let again = FinishedClub { deviation_points: 9.0, ..clubs[0].clone() };
        tx.note_finished(&again).await.expect("nothing to do");
        assert_eq!(*tx.finished_clubs().await.expect("read"), clubs);
        let astray = FinishedClub { club: ClubId(new_id()), ..clubs[0].clone() };
        assert!(tx.note_finished(&astray).await.expect_err("no such club").is_missing());
        let other = add_job(&mut tx, &["6"]).await;
        let wrong = FinishedClub { band_points: f64::INFINITY, ..finished(&other, 0) };
        assert!(tx.note_finished(&wrong).await.expect_err("no number").is_bad_entry());
        tx.commit().await.expect("commit");
    }

    async fn what_was_learned_cannot_be_changed(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        tx.append_learned(&row(Some(&job.id), 0.1)).await.expect("kept");
        tx.note_finished(&finished(&job, 0)).await.expect("kept");
        tx.commit().await.expect("commit");
        for attempt in [
            "UPDATE learned SET body = '{}'",
            "DELETE FROM learned",
            "UPDATE finished_club SET deviation_points = 0",
            "DELETE FROM finished_club",
        ] {
            let refused = db.sql(attempt).await.expect_err("refused");
            assert!(refused.to_string().contains("append-only"), "{attempt}: {refused}");
        }
        assert_eq!(db.read().await.learned().await.expect("read").as_deref(), Some(&learned(0.1)));
    }
}
