//! Orders and the lives of parts: kept as they were said, appended to and never changed.

use crate::samples::{add_job, at, box_of_ferrules, head, new_id, part, with_job};
use jiff::civil::date;
use store::ModelUser;
use store::{LifeNote, OrderFilter, StoreError, Tx};
use trade::id::{EventId, JobId, OrderId, PartId};
use trade::job::Job;
use trade::life::{FigureChange, LifeEntry, LifeStep};
use trade::model::PartKind;
use trade::order::{ForJob, Order, OrderEvent, OrderLine, OrderState, OrderStep};

pub fn line(order: i64, jobs: &[&Job]) -> OrderLine {
    OrderLine {
        id: OrderId(new_id()),
        order,
        supplier: "Harrowgate Castings".into(),
        kind: PartKind::Head,
        model: "LARK-2".into(),
        number: Some("6".into()),
        count: 4,
        from_g: Some(259.3),
        to_g: None,
        jobs: jobs.iter().map(|j| ForJob { job: j.id.clone(), number: j.number, count: 1 }).collect(),
        note: "as soon as may be".into(),
        ordered_on: date(2026, 3, 2),
        expected_on: None,
        by: "Wren".into(),
        at: at(5),
    }
}

pub fn event(step: OrderStep, count: i64) -> OrderEvent {
    OrderEvent {
        id: EventId(new_id()),
        step,
        count,
        model: None,
        number: None,
        supplier: None,
        expected_on: None,
        note: String::new(),
        by: "Ada".into(),
        at: at(9),
    }
}

async fn numbers(tx: &mut Tx, filter: OrderFilter) -> Vec<i64> {
    let found = tx.orders(&filter).await.expect("read");
    let unlimited = OrderFilter { limit: None, offset: 0, ..filter.clone() };
    if filter.limit.is_none() {
        assert_eq!(tx.count_orders(&unlimited).await.expect("read"), i64::try_from(found.len()).expect("few"));
    }
    found.iter().map(|o| o.line.order).collect()
}

on_both! {
    async fn an_order_comes_back_with_what_happened_to_it(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let other = add_job(&mut tx, &["6"]).await;
        assert_eq!(tx.next_order_number().await.expect("a number"), 1);
        let lines = [line(1, &[&other, &job]), OrderLine { expected_on: Some(date(2026, 3, 10)), to_g: Some(263.0), number: None,
            ..line(2, &[]) }, line(3, &[&job])];
        for line in &lines {
            tx.insert_order(line).await.expect("saved");
        }
        let events = [
            event(OrderStep::Received, 1),
            OrderEvent { supplier: Some("Pennon Forge".into()), expected_on: Some(date(2026, 4, 1)), ..event(OrderStep::Told, 0) },
            OrderEvent { number: Some("7".into()), model: Some("LARK-2".into()), note: "all they had".into(), ..event(OrderStep::Received, 3) },
        ];
        for (version, event) in (0..).zip(&events) {
            tx.append_order_event(&lines[0].id, event, Some(version)).await.expect("appended");
        }
        tx.append_order_event(&lines[2].id, &event(OrderStep::Cancelled, 0), None).await.expect("appended");
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        let first = tx.orders(&OrderFilter { number: Some(1), ..OrderFilter::default() }).await.expect("read");
        assert_eq!(first, [Order { line: lines[0].clone(), events: events.to_vec() }]);
        assert_eq!(first[0].state(), OrderState::Here);
        assert_eq!(numbers(&mut tx, OrderFilter::default()).await, [3, 2, 1], "the newest first");
        assert_eq!(numbers(&mut tx, OrderFilter { open: true, ..OrderFilter::default() }).await, [2]);
        assert_eq!(numbers(&mut tx, OrderFilter { job: Some(job.id.clone()), ..OrderFilter::default() }).await, [3, 1]);
        assert_eq!(numbers(&mut tx, OrderFilter { job: Some(job.id.clone()), open: true, ..OrderFilter::default() }).await, Vec::<i64>::new());
        assert_eq!(numbers(&mut tx, OrderFilter { limit: Some(1), offset: 1, ..OrderFilter::default() }).await, [2]);
        assert_eq!(numbers(&mut tx, OrderFilter { model: Some("RING-1".into()), ..OrderFilter::default() }).await, Vec::<i64>::new());
        assert_eq!(tx.last_supplier("LARK-2").await.expect("read").as_deref(), Some("Harrowgate Castings"));
        assert_eq!(tx.last_supplier("RING-1").await.expect("read"), None);
    }

    async fn what_cannot_be_an_order_is_refused(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let good = line(1, &[&job]);
        tx.insert_order(&good).await.expect("saved");
        assert!(tx.insert_order(&line(1, &[])).await.expect_err("the number is taken").is_taken());
        let cases = [
            OrderLine { model: "NONE".into(), ..line(2, &[]) },
            OrderLine { jobs: vec![ForJob { job: JobId(new_id()), number: 9, count: 1 }], ..line(2, &[]) },
        ];
        for bad in cases {
            assert!(tx.insert_order(&bad).await.expect_err("unknown").is_missing());
        }
        for bad in [
            OrderLine { count: 0, ..line(2, &[]) },
            OrderLine { from_g: Some(f64::NAN), ..line(2, &[]) },
        ] {
            assert!(tx.insert_order(&bad).await.expect_err("no order").is_bad_entry());
        }
        for bad in [event(OrderStep::Received, 0), event(OrderStep::Received, -2), event(OrderStep::Cancelled, 1)] {
            assert!(tx.append_order_event(&good.id, &bad, None).await.expect_err("no count").is_bad_entry());
        }
        let stale = tx.append_order_event(&good.id, &event(OrderStep::Received, 1), Some(3)).await.expect_err("stale");
        assert!(matches!(stale, StoreError::Stale { saved_version: 0, .. }), "{stale}");
        let unknown = OrderId(new_id());
        assert!(tx.append_order_event(&unknown, &event(OrderStep::Short, 0), None).await.expect_err("none").is_missing());
        let refused = tx.remove_model("LARK-2").await.expect_err("it is ordered");
        assert!(matches!(&refused, StoreError::InUse { users, .. } if users.contains(&ModelUser::Orders { n: 1 })), "{refused}");
    }

    async fn a_life_is_written_by_what_happens_to_a_part(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await.signed(" Wren ");
        let (one, ferrules) = (head("H6-1"), box_of_ferrules("F-1", 3));
        tx.insert_part(&one, at(1)).await.expect("saved");
        tx.insert_parts(&[ferrules.clone(), part("H6-2", PartKind::Head, "LARK-2")], at(1)).await.expect("saved");
        let (first, second) = (&job.clubs[0].id, &job.clubs[1].id);
        tx.hold(&one.id, &job.id, first, at(2)).await.expect("free");
        tx.hold(&ferrules.id, &job.id, second, at(2)).await.expect("free");
        tx.release_job(&job.id, at(3)).await.expect("released");
        tx.hold(&one.id, &job.id, second, at(4)).await.expect("free");
        tx.use_club_parts(second, at(5)).await.expect("used");
        let figures = [FigureChange { field: "mass_g".into(), from: Some(261.3), to: Some(260.9) }];
        let reason = fact::Told::verbatim("tape was on");
        let note = LifeNote { part: &one.id, step: LifeStep::Corrected, job: None, club: None, figures: &figures, reason: Some(&reason) };
        tx.append_life(note, at(6)).await.expect("appended");
        let unknown = PartId(new_id());
        assert!(tx.append_life(LifeNote { part: &unknown, ..note }, at(6)).await.expect_err("none").is_missing());
        let none = JobId(new_id());
        assert!(tx.append_life(LifeNote { job: Some(&none), ..note }, at(6)).await.expect_err("none").is_missing());
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        let life = tx.life(&one.id).await.expect("read");
        let steps: Vec<(LifeStep, Option<i64>, Option<&str>)> =
            life.iter().map(|e| (e.step, e.job, e.club.as_deref())).collect();
        assert_eq!(steps, [
            (LifeStep::CameIn, None, None),
            (LifeStep::Held, Some(1), Some("6")),
            (LifeStep::Freed, Some(1), Some("6")),
            (LifeStep::Held, Some(1), Some("7")),
            (LifeStep::Used, Some(1), Some("7")),
            (LifeStep::Corrected, None, None),
        ]);
        assert!(life.iter().all(|e| e.by == "Wren"));
        assert_eq!(life[5], LifeEntry { step: LifeStep::Corrected, job: None, slot: None, club: None,
            figures: figures.to_vec(), reason: Some(reason.clone()), by: "Wren".into(), at: at(6) });
        assert!(life[0].figures.iter().any(|f| f.field == "mass_g" && f.to == Some(261.3)), "{:?}", life[0]);
        let life = tx.life(&ferrules.id).await.expect("read");
        let steps: Vec<LifeStep> = life.iter().map(|e| e.step).collect();
        assert_eq!(steps, [LifeStep::CameIn, LifeStep::Held, LifeStep::Freed]);
    }

    async fn orders_and_lives_cannot_be_changed(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let order = line(1, &[&job]);
        tx.insert_order(&order).await.expect("saved");
        tx.append_order_event(&order.id, &event(OrderStep::Received, 1), None).await.expect("appended");
        tx.insert_part(&head("H6-1"), at(1)).await.expect("saved");
        tx.commit().await.expect("commit");
        for table in ["part_order", "part_order_job", "part_order_event", "part_life"] {
            let column = if table == "part_life" { "reason" } else if table == "part_order_job" { "count" } else { "note" };
            for attempt in [format!("UPDATE {table} SET {column} = {column}"), format!("DELETE FROM {table}")] {
                let refused = db.sql(&attempt).await.expect_err("refused");
                assert!(refused.to_string().contains("append-only"), "{attempt}: {refused}");
            }
        }
    }
}
