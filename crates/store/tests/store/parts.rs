//! Parts: codes, figures, finding them again, two tablets on one part.

use crate::refused_words;
use crate::samples::{add_job, at, box_of_ferrules, head, new_id, part, stock_models, with_job};
use store::{PartFilter, StoreError};
use trade::error::Noun;
use trade::id::{ClubId, JobId, PartId};
use trade::model::PartKind;
use trade::part::named_fields::Wanted;
use trade::part::{Part, PartState};
use trade::part_field::Field;

on_both! {
    async fn a_part_comes_back_as_it_went_in(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let full = Part {
            length_mm: Some(1041.4),
            balance_point_mm: Some(517.3),
            lot: "lot 7 / grün".into(),
            place: "shelf B, box 2".into(),
            state: PartState::Held,
            job: Some(job.id.clone()),
            club: Some(job.clubs[1].id.clone()),
            version: 4,
            ..head("H6-1")
        };
        // With and without figures in turn: what one row leaves out must not decide how the next is written.
        let parts = [part("H6-0", PartKind::Head, "LARK-2"), full, part("H6-2", PartKind::Head, "LARK-2"), head("H6-3"),
            box_of_ferrules("F-1", 40)];
        for part in &parts {
            tx.insert_part(part, at(1)).await.expect("saved");
            assert_eq!(tx.part(&part.id).await.expect("read").as_ref(), Some(part));
        }
        tx.commit().await.expect("commit");
        let mut tx = db.read().await;
        assert_eq!(tx.parts(&PartFilter::default()).await.expect("read"), parts, "in the order of arrival");
        assert_eq!(tx.part_by_code("h6-1").await.expect("read").as_ref(), Some(&parts[1]), "capitals do not matter");
        assert_eq!(tx.part_by_code("H6-9").await.expect("read"), None);
        assert_eq!(tx.part(&PartId("none".into())).await.expect("read"), None);
    }

    async fn many_parts_come_back_as_they_went_in_or_none_of_them(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        // More than one statement takes, with and without figures in turn.
        let parts: Vec<Part> = (0..101)
            .map(|i| match i % 3 {
                0 => part(&format!("M-{i}"), PartKind::Head, "LARK-2"),
                1 => Part { length_mm: Some(1041.4), ..head(&format!("M-{i}")) },
                _ => box_of_ferrules(&format!("M-{i}"), i),
            })
            .collect();
        tx.insert_parts(&parts, at(1)).await.expect("saved");
        assert_eq!(tx.parts(&PartFilter::default()).await.expect("read"), parts, "in the order of the list");
        tx.insert_parts(&[], at(1)).await.expect("nothing to save");
        let held = Part {
            state: PartState::Held,
            job: Some(job.id.clone()),
            club: Some(job.clubs[1].id.clone()),
            ..head("N-1")
        };
        for (list, words) in [
            (vec![head("N-1"), head("m-100")], "M-100"),
            (vec![head("N-1"), head("n-1")], "n-1"),
            (vec![held], "a job holds"),
            (vec![part("N-1", PartKind::Head, "NONE")], "NONE"),
            (vec![head("N-1"), Part { mass_g: Some(f64::NAN), ..head("N-2") }], "N-2"),
        ] {
            let refused = tx.insert_parts(&list, at(2)).await.expect_err(words);
            assert!(refused_words(&refused).contains(words), "{refused}");
        }
        assert_eq!(tx.count_parts(&PartFilter::default()).await.expect("read"), 101);
    }

    async fn a_code_is_given_once(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let first = head("H6-1");
        tx.insert_part(&first, at(1)).await.expect("saved");
        for code in ["H6-1", "h6-1"] {
            let refused = tx.insert_part(&head(code), at(1)).await.expect_err("taken");
            assert!(matches!(&refused, StoreError::CodeTaken { code: c } if c == code), "{refused}");
        }
        let refused = tx.insert_part(&Part { code: "H6-2".into(), ..first.clone() }, at(1)).await.expect_err("same id");
        assert!(refused.is_taken(), "{refused}");
        let mut second = head("H6-2");
        tx.insert_part(&second, at(1)).await.expect("the transaction goes on after a refusal");
        second.code = "H6-1".into();
        assert!(tx.update_part(&second, at(2)).await.expect_err("taken").is_taken());
        let recased = Part { code: "h6-1".into(), ..first };
        assert_eq!(tx.update_part(&recased, at(2)).await.expect("its own code in small letters"), 1);
    }

    async fn what_a_part_refers_to_must_exist(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let unknown = part("H6-1", PartKind::Head, "LARK-9");
        let refused = tx.insert_part(&unknown, at(1)).await.expect_err("no such model");
        assert!(matches!(&refused, StoreError::Missing { what: Noun::Model, name } if name == "LARK-9"), "{refused}");
        let mut astray = head("H6-1");
        astray.job = Some(JobId(new_id()));
        assert!(tx.insert_part(&astray, at(1)).await.expect_err("no such job").is_missing());
        astray.job = None;
        astray.club = Some(ClubId(new_id()));
        assert!(tx.insert_part(&astray, at(1)).await.expect_err("no such club").is_missing());
        let held = Part { state: PartState::Held, ..head("H6-1") };
        assert!(tx.insert_part(&held, at(1)).await.expect_err("held for nobody").is_bad_entry());
        let negative = box_of_ferrules("F-1", -1);
        assert!(tx.insert_part(&negative, at(1)).await.expect_err("below zero").is_bad_entry());
        for bad in [f64::NAN, f64::NEG_INFINITY] {
            let wrong = Part { mass_g: Some(bad), ..head("H6-1") };
            assert!(tx.insert_part(&wrong, at(1)).await.expect_err("not a number").is_bad_entry());
        }
        assert_eq!(tx.count_parts(&PartFilter::default()).await.expect("read"), 0);
    }

    async fn parts_are_found_by_any_of_their_fields(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let weighed = |code: &str, mass_g: f64| Part { mass_g: Some(mass_g), ..head(code) };
        let parts = [
            Part { lot: "Lot 7".into(), ..weighed("A-1", 251.1) },
            Part { place: "Shelf B".into(), ..weighed("A-2", 251.3) },
            weighed("A-3", 251.5),
            Part { mass_g: None, mass_typed: String::new(), ..head("A-4") },
        ];
        tx.insert_parts(&parts, at(1)).await.expect("saved");
        let field = |key: &str| Field::by_key(key).expect("a field");
        let is = |key: &str, word: &str| (field(key), Wanted::Is(word.into()));
        for (fields, codes) in [
            (vec![is("lot", "LOT 7")], vec!["A-1"]),
            (vec![is("place", "shelf b")], vec!["A-2"]),
            (vec![is("code", "a-3")], vec!["A-3"]),
            (vec![is("kind", "grip")], vec![]),
            (vec![is("kind", "head"), is("state", "free")], vec!["A-1", "A-2", "A-3", "A-4"]),
            // The limits belong to it, and what was not weighed is neither above nor below.
            (vec![(field("mass_g"), Wanted::AtLeast(251.3))], vec!["A-2", "A-3"]),
            (vec![(field("mass_g"), Wanted::AtMost(251.3))], vec!["A-1", "A-2"]),
            (vec![(field("mass_g"), Wanted::AtLeast(251.2)), (field("mass_g"), Wanted::AtMost(251.4))], vec!["A-2"]),
        ] {
            let filter = PartFilter { fields: fields.clone(), ..PartFilter::default() };
            let found = tx.parts(&filter).await.expect("read");
            let found: Vec<&str> = found.iter().map(|part| part.code.as_str()).collect();
            assert_eq!(found, codes, "{fields:?}");
        }
    }

    async fn a_part_is_not_saved_over_a_newer_one(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let mut here = head("H6-1");
        tx.insert_part(&here, at(1)).await.expect("saved");
        here.place = "bench".into();
        here.mass_g = None;
        here.loft_deg = None;
        here.length_mm = Some(30.5);
        here.cpm = Some(261.5);
        assert_eq!(tx.update_part(&here, at(2)).await.expect("saved"), 1);
        let saved = tx.part(&here.id).await.expect("read").expect("there");
        assert_eq!(saved, Part { version: 1, ..here.clone() });
        let refused = tx.update_part(&here, at(3)).await.expect_err("still at version 0");
        assert!(refused.is_stale(), "{refused}");
        assert!(refused_words(&refused).contains("H6-1"), "{refused}");
        assert!(tx.update_part(&head("H6-9"), at(3)).await.expect_err("unknown").is_missing());
    }

    async fn parts_are_found_by_what_is_known_of_them(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let mut parts = vec![
            Part { lot: "Größe_7".into(), ..head("H6-1") },
            Part { number: Some("P".into()), place: "Shelf 100%".into(), ..head("HP-1") },
            part("S-1", PartKind::Shaft, "RUSH-110"),
            Part { state: PartState::Ordered, ..part("S-2", PartKind::Shaft, "RUSH-110") },
            box_of_ferrules("F-1", 12),
        ];
        for part in &parts {
            tx.insert_part(part, at(1)).await.expect("saved");
        }
        tx.hold(&parts[0].id, &job.id, &job.clubs[0].id, at(2)).await.expect("held");
        parts[0] = tx.part(&parts[0].id).await.expect("read").expect("there");
        let all = PartFilter::default;
        let text = |text: &str| PartFilter { text: Some(text.into()), ..all() };
        let cases: Vec<(PartFilter, &[usize])> = vec![
            (all(), &[0, 1, 2, 3, 4]),
            (PartFilter { kind: Some(PartKind::Shaft), ..all() }, &[2, 3]),
            (PartFilter { model: Some("LARK-2".into()), ..all() }, &[0, 1]),
            (PartFilter { number: Some("p".into()), ..all() }, &[1]),
            (PartFilter { state: Some(PartState::Free), kind: Some(PartKind::Shaft), ..all() }, &[2]),
            (PartFilter { job: Some(job.id.clone()), ..all() }, &[0]),
            (text("GRÖSSE_7"), &[]),
            (text("grÖße_7"), &[0]),
            (text("größe%7"), &[]),
            (text("rush S-2"), &[3]),
            (text("100%"), &[1]),
            (text("0_0"), &[]),
            (text("!"), &[]),
            (text("  "), &[0, 1, 2, 3, 4]),
            (PartFilter { limit: Some(2), offset: 1, ..all() }, &[1, 2]),
            (PartFilter { offset: 4, ..all() }, &[4]),
            (PartFilter { limit: Some(0), ..all() }, &[]),
        ];
        for (filter, wanted) in cases {
            let found = tx.parts(&filter).await.expect("read");
            let wanted: Vec<Part> = wanted.iter().map(|&i| parts[i].clone()).collect();
            assert_eq!(found, wanted, "{filter:?}");
            let unlimited = PartFilter { limit: None, offset: 0, ..filter };
            let all_of_it = tx.parts(&unlimited).await.expect("read").len();
            let counted = tx.count_parts(&unlimited).await.expect("counted");
            assert_eq!(usize::try_from(counted).expect("not negative"), all_of_it);
        }
        let other = add_job(&mut tx, &["6"]).await;
        assert!(tx.parts(&PartFilter { job: Some(other.id), ..all() }).await.expect("read").is_empty());
    }
}
