//! What happens to a scale is kept once and never changed; gauge studies can be gone on with.

use crate::samples::{at, new_id, with_job};
use desk::scale_health::{StudyPlan, StudyStep};
use jiff::civil::date;
use store::{StudyReading, StudyRow};
use trade::id::{EventId, JobId};
use trade::scale_event::{CheckRead, Happened, ScaleEvent};
use trade::trust::TrustCause;

pub fn event(scale: &str, seconds: i64, what: Happened) -> ScaleEvent {
    ScaleEvent {
        id: EventId(new_id()),
        scale: scale.into(),
        at: at(seconds),
        kept_at: at(seconds + 1),
        day: date(2025, 10, 9),
        by: "Größe".into(),
        what,
    }
}

fn read(reading: f64) -> CheckRead {
    CheckRead {
        standard: "w200".into(),
        name: "200 g weight".into(),
        typed: format!("{reading}"),
        reading,
        certified: 200.0 + 0.1 / 3.0,
        certified_sd: 0.01,
        tolerance: 0.2,
        display_step: 0.1,
        noise_sd: 0.05,
        kept_though: None,
        job: None,
    }
}

pub fn check(seconds: i64, reading: f64) -> ScaleEvent {
    event("mass", seconds, Happened::Check(read(reading)))
}

fn study(scale: &str) -> StudyRow {
    let step = |builder, trial, part| StudyStep { builder, trial, part };
    StudyRow {
        id: new_id(),
        at: at(5),
        by: "Ada".into(),
        plan: StudyPlan {
            scale: scale.into(),
            parts: vec!["H1".into(), "H2".into()],
            builders: vec!["Ada".into(), "Jay".into()],
            trials: 2,
            order: vec![step(1, 0, 0), step(0, 0, 1)],
        },
    }
}

on_both! {
    async fn events_come_back_in_the_order_in_which_they_were_kept(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let distrusted = Happened::Distrusted {
            cause: TrustCause::Tolerance,
            reason: fact::Told::verbatim("200.6 g"),
            check: None,
            since: date(2025, 10, 8),
            off_by: 0.6,
        };
        // A clock that was set back: the second check says that it was earlier.
        let at_bench = CheckRead { job: Some(job.id.clone()), ..read(200.3) };
        let events = [
            check(100, 200.1),
            check(40, 200.6),
            event("mass", 41, distrusted),
            event("balance", 50, Happened::NewBase { reason: "moved".into() }),
            event("mass", 200, Happened::Check(at_bench)),
        ];
        for event in &events {
            let kept = tx.append_scale_event(event, None).await.expect("kept");
            assert!(!kept.repeated && kept.event == *event);
        }
        let of_mass: Vec<ScaleEvent> = events.iter().filter(|e| e.scale == "mass").cloned().collect();
        assert_eq!(*tx.scale_events("mass").await.expect("read"), of_mass);
        assert_eq!(*tx.scale_events("none").await.expect("read"), []);
        assert_eq!(tx.scale_event(&events[3].id).await.expect("read").as_ref(), Some(&events[3]));
        // Words on trust whenever they were said, all else from the time on.
        let since = tx.scale_events_between(at(60), at(1_000_000)).await.expect("read");
        assert_eq!(since, [events[0].clone(), events[2].clone(), events[4].clone()]);
        assert_eq!(tx.newest_check(at(150)).await.expect("read"), Some(at(100)));
        assert_eq!(tx.newest_check(at(10)).await.expect("read"), None);
        tx.commit().await.expect("commit");
    }

    async fn the_same_request_is_kept_once(db: &TestDb) {
        let mut tx = db.write().await;
        let first = check(1, 200.1);
        tx.append_scale_event(&first, Some("key-1")).await.expect("kept");
        let again = tx.append_scale_event(&check(9, 200.1), Some("key-1")).await.expect("the first");
        assert!(again.repeated && again.event == first);
        let other = tx.append_scale_event(&check(9, 200.2), Some("key-1")).await.expect_err("another figure");
        assert!(other.is_conflict(), "{other}");
        assert_eq!(tx.scale_event_by_request_key("key-1").await.expect("read"), Some(first.clone()));
        assert!(tx.append_scale_event(&first, None).await.expect_err("the same identity").is_taken());
        assert!(tx.append_scale_event(&check(1, f64::NAN), None).await.expect_err("no number").is_bad_entry());
        let infinite = Happened::NoiseTaken { study: "s".into(), noise_sd: f64::INFINITY, before_sd: 0.1 };
        assert!(tx.append_scale_event(&event("mass", 1, infinite), None).await.expect_err("no number").is_bad_entry());
        let astray = Happened::Check(CheckRead { job: Some(JobId(new_id())), ..read(200.1) });
        assert!(tx.append_scale_event(&event("mass", 1, astray), None).await.expect_err("no such job").is_missing());
        assert_eq!(*tx.scale_events("mass").await.expect("read"), [first]);
        tx.commit().await.expect("commit");
    }

    async fn a_study_is_gone_on_with(db: &TestDb) {
        let mut tx = db.write().await;
        let (first, second) = (study("mass"), study("balance"));
        assert_eq!(tx.begin_study(&first, Some("s1")).await.expect("begun"), first);
        assert_eq!(tx.begin_study(&study("mass"), Some("s1")).await.expect("the first"), first);
        assert!(tx.begin_study(&second, Some("s1")).await.expect_err("another scale").is_conflict());
        assert!(tx.begin_study(&first, None).await.expect_err("the same identity").is_taken());
        tx.begin_study(&second, None).await.expect("begun");
        assert_eq!(tx.studies().await.expect("read"), [second.clone(), first.clone()]);
        let reading = |place: i64, value: f64| StudyReading {
            id: new_id(),
            study: first.id.clone(),
            place,
            typed: format!("{value} g"),
            reading: value,
            at: at(7),
            by: "Ada".into(),
        };
        let readings = [reading(0, 256.1), reading(1, 249.0), reading(0, 256.2)];
        for (i, reading) in readings.iter().enumerate() {
            assert!(!tx.append_study_reading(reading, Some(&format!("r{i}"))).await.expect("kept"));
        }
        assert!(tx.append_study_reading(&reading(0, 256.2), Some("r2")).await.expect("nothing to do"));
        assert!(tx.append_study_reading(&reading(1, 256.2), Some("r2")).await.expect_err("another place").is_conflict());
        assert!(tx.append_study_reading(&reading(1, f64::NAN), None).await.expect_err("no number").is_bad_entry());
        let astray = StudyReading { study: new_id(), ..reading(0, 1.0) };
        assert!(tx.append_study_reading(&astray, None).await.expect_err("no such study").is_missing());
        assert_eq!(tx.study_readings(&first.id).await.expect("read"), readings);
        assert_eq!(tx.study(&first.id).await.expect("read"), Some(first));
        assert_eq!(tx.study("none").await.expect("read"), None);
        tx.commit().await.expect("commit");
    }

    async fn what_happened_to_a_scale_cannot_be_changed(db: &TestDb) {
        let mut tx = db.write().await;
        let (kept, begun) = (check(1, 200.1), study("mass"));
        tx.append_scale_event(&kept, None).await.expect("kept");
        tx.begin_study(&begun, None).await.expect("begun");
        let reading = StudyReading {
            id: new_id(),
            study: begun.id.clone(),
            place: 0,
            typed: "1".into(),
            reading: 1.0,
            at: at(1),
            by: "Ada".into(),
        };
        tx.append_study_reading(&reading, None).await.expect("kept");
        tx.commit().await.expect("commit");
        for attempt in [
            "UPDATE scale_event SET reading = 0",
            "DELETE FROM scale_event",
            "UPDATE gauge_study SET body = '{}'",
            "DELETE FROM gauge_study",
            "UPDATE gauge_study_reading SET reading = 0",
            "DELETE FROM gauge_study_reading",
        ] {
            let refused = db.sql(attempt).await.expect_err("refused");
            assert!(refused.to_string().contains("append-only"), "{attempt}: {refused}");
        }
        let mut tx = db.read().await;
        assert_eq!(*tx.scale_events("mass").await.expect("read"), [kept]);
        assert_eq!(tx.study_readings(&begun.id).await.expect("read"), [reading]);
    }
}
