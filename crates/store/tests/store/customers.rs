//! Customers: kept by number, found by words, never numbered twice, and what is left of a deleted one.

use crate::samples::{add_job, at, sheet, sheet_row};
use store::{CustomerRow, StoreError};
use trade::customer::{Customer, NameStands};
use trade::wrap::Wraps;

fn row(number: i64, name: &str) -> CustomerRow {
    let wraps = Some(Wraps { base: 1, full: 2, lower_hand: 0 });
    let customer = Customer { phone: "555 0117".into(), grip_diameter_mm: Some(22.9), wraps, ..Customer::named(name) };
    CustomerRow { number, customer, deleted_at: None, version: 0, saved_at: at(1) }
}

on_both! {
    async fn a_customer_comes_back_is_changed_once_and_found_by_words(db: &TestDb) {
        let mut tx = db.write().await;
        for (number, name) in [(1, "Ada Fenwick"), (2, "Äneas O’Mere"), (3, "ada  fenwick")] {
            assert_eq!(tx.next_customer_number().await.expect("a number"), number);
            tx.insert_customer(&row(number, name)).await.expect("saved");
        }
        let taken = tx.insert_customer(&row(2, "Other")).await.expect_err("the number is taken");
        assert!(matches!(&taken, StoreError::CodeTaken { code } if code == "CU-2"), "{taken}");
        assert_eq!(tx.customer(2).await.expect("read"), Some(row(2, "Äneas O’Mere")));
        assert_eq!(tx.customer(9).await.expect("read"), None);
        assert_eq!(tx.customers_named(" ADA fenwick").await.expect("read"), [1, 3]);
        let found = async |tx: &mut store::Tx, text: &str| {
            let lines = tx.customer_lines(text, 99).await.expect("read");
            lines.iter().map(|line| line.number).collect::<Vec<_>>()
        };
        assert_eq!(found(&mut tx, "").await, [1, 3, 2], "by name");
        assert_eq!(found(&mut tx, "FEN ada").await, [1, 3]);
        assert_eq!(found(&mut tx, "cu-2").await, [2]);
        assert_eq!(found(&mut tx, "0117").await.len(), 3);
        assert!(found(&mut tx, "100% _").await.is_empty(), "no pattern of the database");

        let changed = CustomerRow { customer: Customer::named("Ada Marsh"), ..row(1, "") };
        assert_eq!(tx.update_customer(&changed, at(2)).await.expect("saved"), 1);
        let stale = tx.update_customer(&changed, at(3)).await.expect_err("out of date");
        assert!(stale.is_stale(), "{stale}");
        let missing = tx.update_customer(&row(8, "Nobody"), at(3)).await.expect_err("not there");
        assert!(missing.is_missing(), "{missing}");
    }

    async fn sheets_and_jobs_are_found_by_whose_they_are_and_free_names_are_told(db: &TestDb) {
        let mut tx = db.write().await;
        tx.insert_customer(&row(1, "Ada Fenwick")).await.expect("saved");
        let mut job = add_job(&mut tx, &["6", "7"]).await;
        let mut other = sheet_row(sheet("Ada  FENWICK", &["6"]));
        tx.insert_sheet(&other).await.expect("saved");
        let names = tx.free_names().await.expect("read");
        let both = [store::FreeName { name: "Ada  FENWICK".into(), sheets: 2 }];
        assert_eq!(names, both, "one name, as the latest sheet has it");
        assert_eq!(tx.sheets_of_name("ada fenwick").await.expect("read").len(), 2);

        job.sheet.customer = Some(1);
        tx.save_job(&job).await.expect("saved");
        other.sheet.customer = Some(1);
        tx.update_sheet(&other, at(5)).await.expect("saved");
        assert_eq!(tx.jobs_of_customer(1).await.expect("read")[0].number, job.number);
        assert_eq!(tx.sheets_of_customer(1).await.expect("read")[0].id, other.id);
        let line = &tx.customer_lines("", 9).await.expect("read")[0];
        assert_eq!((line.sheets, line.jobs), (1, 1));
        let refused = tx.remove_sheet(&job.sheet_id).await.expect_err("a job was made of it");
        assert!(refused.is_missing(), "{refused}");
        tx.remove_sheet(&other.id).await.expect("removed");
        assert_eq!(tx.sheet(&other.id).await.expect("read"), None);
        let unknown = sheet_row(trade::sheet::Sheet { customer: Some(77), ..sheet("B", &["6"]) });
        tx.insert_sheet(&unknown).await.expect_err("there is no customer 77");
    }

    async fn a_deleted_customer_keeps_the_number_and_is_found_nowhere(db: &TestDb) {
        let mut tx = db.write().await;
        tx.insert_customer(&row(1, "Ada Fenwick")).await.expect("saved");
        let gone = CustomerRow { customer: Customer::default(), deleted_at: Some(at(9)), ..row(1, "") };
        tx.update_customer(&gone, at(9)).await.expect("emptied");
        assert_eq!(tx.next_customer_number().await.expect("a number"), 2);
        assert!(tx.customer_lines("", 9).await.expect("read").is_empty());
        assert!(tx.customer_lines("cu-1", 9).await.expect("read").is_empty());
        assert!(tx.customers_named("").await.expect("read").is_empty());
        let left = tx.customer(1).await.expect("read").expect("the number stays");
        assert_eq!((left.customer, left.deleted_at), (Customer::default(), Some(at(9))));
    }

    async fn where_a_name_was_typed_into_a_reason_is_counted(db: &TestDb) {
        let mut tx = db.write().await;
        let job = add_job(&mut tx, &["6"]).await;
        assert!(tx.name_stands("Fenwick").await.expect("read").is_empty());
        let body = serde_json::json!({ "reason": "asked by Ada FENWICK" });
        let event = store::Event {
            id: trade::id::EventId(crate::samples::new_id()), at: at(3), by: "Jay".into(), job: Some(job.id.clone()),
            club: None, kind: "job_dropped".into(), body,
        };
        tx.append_event(&event).await.expect("logged");
        assert_eq!(tx.name_stands("ada fenwick").await.expect("read"), [(NameStands::Log, 1)]);
    }
}
