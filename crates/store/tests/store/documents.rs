//! The shop, models and sheets: documents that come back as they went in.

use crate::samples::{adapter_model, at, box_of_ferrules, head, head_model, sheet, sheet_row, stock_models, with_job};
use desk::stock_file::{Layout, Mapping};
use store::ModelUser;
use store::StoreError;
use trade::id::SheetId;
use trade::model::{Model, PartKind};
use trade::shop::Shop;

on_both! {
    async fn the_shop_comes_back_as_saved(db: &TestDb) {
        assert_eq!(db.read().await.shop().await.expect("read"), None);
        let mut shop = Shop { name: "Fenside Clubs".into(), room_c: 19.7, ..Shop::default() };
        for name in ["Fenside Clubs", "Fenside Club Works"] {
            shop.name = name.into();
            let mut tx = db.write().await;
            tx.save_shop(&shop, at(1)).await.expect("save");
            tx.commit().await.expect("commit");
            assert_eq!(db.read().await.shop().await.expect("read").as_deref(), Some(&shop));
        }
    }

    async fn a_layout_is_remembered_by_its_name_and_forgotten(db: &TestDb) {
        let layout = |name: &str, heading: &str| Layout {
            name: name.into(),
            headings: vec![heading.into()],
            mapping: Mapping { columns: [("code".to_owned(), heading.to_owned())].into(), ..Mapping::default() },
        };
        let mut tx = db.write().await;
        for one in [layout("Moorland", "Sticker"), layout("Fen", "Id"), layout("MOORLAND", "Tag")] {
            tx.put_layout(&one, at(1)).await.expect("save");
        }
        tx.commit().await.expect("commit");
        let kept = db.read().await.layouts().await.expect("read");
        assert_eq!(kept, [layout("Fen", "Id"), layout("MOORLAND", "Tag")], "one a name, whatever its capitals");
        let mut tx = db.write().await;
        tx.remove_layout("fen").await.expect("forget");
        let gone = tx.remove_layout("fen").await.expect_err("there is none any more");
        assert!(matches!(gone, StoreError::Missing { .. }), "{gone}");
        assert_eq!(tx.layouts().await.expect("read").len(), 1);
    }

    async fn a_dropped_transaction_leaves_nothing(db: &TestDb) {
        let mut tx = db.write().await;
        tx.save_shop(&Shop::default(), at(1)).await.expect("save");
        assert!(tx.shop().await.expect("read").is_some(), "the transaction sees its own change");
        drop(tx);
        assert_eq!(db.read().await.shop().await.expect("read"), None);
    }

    async fn a_transaction_for_reading_refuses_changes_and_sees_one_state(db: &TestDb) {
        let mut before = db.read().await;
        assert!(before.models(None).await.expect("read").is_empty());
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        tx.commit().await.expect("commit");
        assert!(before.models(None).await.expect("read").is_empty(), "still the state that it began with");
        let refused = before.save_shop(&Shop::default(), at(1)).await.expect_err("a change");
        assert!(matches!(refused, StoreError::NotWriting), "{refused}");
        let refused = before.next_job_number().await.expect_err("a number to be used");
        assert!(matches!(refused, StoreError::NotWriting), "{refused}");
        drop(before);
        assert_eq!(db.read().await.models(None).await.expect("read").len(), 5);
    }

    async fn a_model_is_replaced_by_its_code(db: &TestDb) {
        let mut tx = db.write().await;
        assert_eq!(tx.put_model(&head_model(), at(0)).await.expect("new"), 1);
        let Model::Head(mut changed) = head_model() else { panic!("a head") };
        changed.numbers[0].mass_g = 260.9;
        let changed = Model::Head(changed);
        assert_eq!(tx.put_model(&changed, at(1)).await.expect("changed"), 2);
        assert_eq!(tx.model("LARK-2").await.expect("read"), Some(changed.clone()));
        assert_eq!(tx.model("lark-2").await.expect("read"), Some(changed), "capitals do not matter");
        assert_eq!(tx.model("LARK-3").await.expect("read"), None);
    }

    async fn a_code_means_one_model_of_one_kind(db: &TestDb) {
        let mut tx = db.write().await;
        tx.put_model(&head_model(), at(0)).await.expect("new");
        let Model::Adapter(mut adapter) = adapter_model() else { panic!("an adapter") };
        for code in ["LARK-2", "lark-2"] {
            adapter.code = code.into();
            let refused = tx.put_model(&Model::Adapter(adapter.clone()), at(1)).await.expect_err("the code is a head's");
            assert!(matches!(&refused, StoreError::CodeTaken { code } if code == "LARK-2"), "{refused}");
        }
        assert_eq!(tx.models(None).await.expect("read"), [head_model()], "and the transaction goes on");
    }

    async fn models_are_listed_by_kind_and_code(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        let codes = |models: Vec<Model>| models.iter().map(|m| m.code().to_owned()).collect::<Vec<_>>();
        assert_eq!(codes(tx.models(None).await.expect("read")), ["BOND-24", "LARK-2", "MOSS-50", "RING-1", "RUSH-110"]);
        assert_eq!(codes(tx.models(Some(PartKind::Grip)).await.expect("read")), ["MOSS-50"]);
        assert!(tx.models(Some(PartKind::Tape)).await.expect("read").is_empty());
    }

    async fn a_model_in_use_is_not_removed(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        tx.insert_part(&head("H6-1"), at(1)).await.expect("a head");
        tx.insert_part(&head("H6-2"), at(1)).await.expect("a head");
        tx.put_model(&adapter_model(), at(1)).await.expect("an adapter for it");
        tx.save_shop(&Shop { adhesive: Some("BOND-24".into()), ..Shop::default() }, at(1)).await.expect("saved");
        let refused = tx.remove_model("LARK-2").await.expect_err("used");
        let StoreError::InUse { code, users } = refused else { panic!("{refused}") };
        assert_eq!(code, "LARK-2");
        for user in [ModelUser::Parts { n: 2 }, ModelUser::Sheets { n: 1 }, ModelUser::Jobs { n: 1 }, ModelUser::Models { n: 1 }] {
            assert!(users.contains(&user), "{users:?}");
        }
        let refused = tx.remove_model("BOND-24").await.expect_err("used");
        assert!(matches!(&refused, StoreError::InUse { users, .. } if users.contains(&ModelUser::Shop)), "{refused}");
        // A sheet that drops a model does not free it while the job that was made from it stands.
        let mut row = tx.sheet(&job.sheet_id).await.expect("read").expect("there");
        row.sheet.clubs.clear();
        row.sheet.reference = None;
        tx.update_sheet(&row, at(2)).await.expect("saved");
        let refused = tx.remove_model("MOSS-50").await.expect_err("used");
        assert!(matches!(&refused, StoreError::InUse { users, .. } if *users == [ModelUser::Jobs { n: 1 }]), "{refused}");
    }

    async fn a_model_that_nothing_names_is_removed(db: &TestDb) {
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        tx.put_model(&adapter_model(), at(1)).await.expect("new");
        tx.remove_model("lark-sleeve").await.expect("removed");
        tx.remove_model("LARK-2").await.expect("nothing names it any more");
        assert_eq!(tx.model("LARK-2").await.expect("read"), None);
        let refused = tx.remove_model("LARK-2").await.expect_err("gone");
        assert!(refused.is_missing(), "{refused}");
        let refused = tx.insert_part(&box_of_ferrules("B1", 3), at(1)).await;
        refused.expect("the ferrule's model is still there");
    }

    async fn sheets_come_back_newest_first(db: &TestDb) {
        let mut tx = db.write().await;
        let mut rows = Vec::new();
        for (seconds, player) in [(5, "Ada Fenwick"), (9, "Bo Lindqvist"), (7, "Cy Marlow")] {
            let mut row = sheet_row(sheet(player, &["6"]));
            row.saved_at = at(seconds);
            tx.insert_sheet(&row).await.expect("saved");
            rows.push(row);
        }
        assert_eq!(tx.sheet(&rows[0].id).await.expect("read"), Some(rows[0].clone()));
        let listed = tx.sheets(2).await.expect("read");
        assert_eq!(listed, [rows[1].clone(), rows[2].clone()]);
        assert_eq!(tx.sheet(&SheetId("none".into())).await.expect("read"), None);
        let refused = tx.insert_sheet(&rows[0]).await.expect_err("the same identity");
        assert!(refused.is_taken(), "{refused}");
    }

    async fn a_sheet_is_not_saved_over_a_newer_one(db: &TestDb) {
        let mut tx = db.write().await;
        let mut row = sheet_row(sheet("Ada Fenwick", &["6"]));
        tx.insert_sheet(&row).await.expect("saved");
        row.sheet.note = "left knee".into();
        assert_eq!(tx.update_sheet(&row, at(3)).await.expect("saved"), 1);
        let saved = tx.sheet(&row.id).await.expect("read").expect("there");
        assert_eq!((saved.version, saved.saved_at, saved.sheet.note.as_str()), (1, at(3), "left knee"));
        let refused = tx.update_sheet(&row, at(4)).await.expect_err("still at version 0");
        assert!(matches!(refused, StoreError::Stale { saved_version: 1, .. }), "{refused}");
        row.id = SheetId("none".into());
        assert!(tx.update_sheet(&row, at(4)).await.expect_err("unknown").is_missing());
    }

    async fn a_figure_that_is_no_number_is_refused(db: &TestDb) {
        let mut tx = db.write().await;
        for bad in [f64::NAN, f64::INFINITY] {
            let mut wrong = sheet("Ada Fenwick", &["6"]);
            wrong.clubs[0].swing_weight_points = bad;
            let refused = tx.insert_sheet(&sheet_row(wrong)).await.expect_err("not a number");
            assert!(refused.is_bad_entry(), "{refused}");
            let refused = tx.save_shop(&Shop { room_c: bad, ..Shop::default() }, at(1)).await.expect_err("no number");
            assert!(refused.is_bad_entry(), "{refused}");
        }
        assert!(tx.sheets(10).await.expect("read").is_empty());
    }
}
