//! What a store keeps of its earlier readings is never older than the database: not after a change by another program,
//! not after one that was undone, not for a transaction that still sees what was before.

use crate::samples::{at, head, head_model, shaft_model, stock_models};
use crate::scales::check;
use store::Store;
use trade::model::Model;
use trade::part::{Part, PartState};
use trade::shop::Shop;

/// The name of the first head model that a reader finds.
async fn head_name(store: &Store) -> Option<String> {
    let library = store.read().await.expect("a reader").library().await.expect("the models");
    library.get(head_model().code()).map(|m| m.name().to_owned())
}

fn renamed(name: &str) -> Model {
    match head_model() {
        Model::Head(head) => Model::Head(trade::head::HeadModel { name: name.into(), ..head }),
        other => other,
    }
}

async fn put(store: &Store, model: &Model) {
    let mut tx = store.write().await.expect("a writer");
    tx.put_model(model, at(1)).await.expect("saved");
    tx.commit().await.expect("commit");
}

on_both! {
    async fn another_program_changes_models_and_shop_and_it_is_seen_at_once(db: &TestDb) {
        let other = Store::open(&db.url).await.expect("the same database");
        assert_eq!(head_name(&db.store).await, None);
        for name in ["Sickle", "Scythe", "Sickle"] {
            put(&other, &renamed(name)).await;
            assert_eq!(head_name(&db.store).await.as_deref(), Some(name));
            assert_eq!(head_name(&other).await.as_deref(), Some(name));
        }
        let mut tx = other.write().await.expect("a writer");
        tx.put_model(&shaft_model(), at(2)).await.expect("saved");
        tx.remove_model(head_model().code()).await.expect("removed");
        tx.commit().await.expect("commit");
        assert_eq!(head_name(&db.store).await, None, "one model more and one less");
        for cap_g in [9.0, 4.0, 9.0] {
            let mut tx = other.write().await.expect("a writer");
            tx.save_shop(&Shop { tip_weight_cap_g: cap_g, ..Shop::default() }, at(1)).await.expect("saved");
            tx.commit().await.expect("commit");
            let shop = db.read().await.shop().await.expect("read").expect("a shop");
            assert_eq!(shop.tip_weight_cap_g, cap_g);
        }
        other.close().await;
    }

    async fn what_was_undone_or_is_not_seen_yet_is_not_remembered(db: &TestDb) {
        put(&db.store, &renamed("Sickle")).await;
        let mut before = db.read().await;
        let of = |library: &trade::model::Library| library.get(head_model().code()).map(|m| m.name().to_owned());
        assert_eq!(of(&before.library().await.expect("read")).as_deref(), Some("Sickle"));
        let mut tx = db.write().await;
        tx.put_model(&renamed("Scythe"), at(1)).await.expect("saved");
        assert_eq!(of(&tx.library().await.expect("read")).as_deref(), Some("Scythe"), "the writer sees it");
        drop(tx);
        assert_eq!(head_name(&db.store).await.as_deref(), Some("Sickle"), "it was undone");
        put(&db.store, &renamed("Billhook")).await;
        assert_eq!(head_name(&db.store).await.as_deref(), Some("Billhook"));
        assert_eq!(of(&before.library().await.expect("read")).as_deref(), Some("Sickle"), "still as it began");
        drop(before);
        assert_eq!(head_name(&db.store).await.as_deref(), Some("Billhook"));
    }

    async fn each_change_of_the_stock_is_counted_and_one_undone_is_not(db: &TestDb) {
        let other = Store::open(&db.url).await.expect("the same database");
        let masses = async |store: &Store| {
            let parts = store.read().await.expect("a reader").parts_in(PartState::Free).await.expect("read");
            parts.iter().map(|p| (p.code.clone(), p.mass_g)).collect::<Vec<_>>()
        };
        let mut tx = db.write().await;
        stock_models(&mut tx).await;
        tx.commit().await.expect("commit");
        assert_eq!(masses(&db.store).await, []);
        let mut part = Part { mass_g: Some(250.0), ..head("H-1") };
        let mut tx = other.write().await.expect("a writer");
        tx.insert_part(&part, at(1)).await.expect("saved");
        tx.commit().await.expect("commit");
        assert_eq!(masses(&db.store).await, [("H-1".to_owned(), Some(250.0))]);
        let mut before = db.read().await;
        assert_eq!(before.parts_in(PartState::Free).await.expect("read").len(), 1);
        // One change is undone after its writer has looked at it; another one is then counted in its place.
        let mut tx = db.write().await;
        tx.update_part(&Part { mass_g: Some(999.0), ..part.clone() }, at(2)).await.expect("saved");
        assert_eq!(tx.parts_in(PartState::Free).await.expect("read")[0].mass_g, Some(999.0), "the writer sees it");
        drop(tx);
        part.mass_g = Some(251.0);
        let mut tx = other.write().await.expect("a writer");
        part.version = tx.update_part(&part, at(2)).await.expect("saved");
        tx.commit().await.expect("commit");
        assert_eq!(masses(&db.store).await, [("H-1".to_owned(), Some(251.0))]);
        assert_eq!(before.parts_in(PartState::Free).await.expect("read")[0].mass_g, Some(250.0), "still as it began");
        drop(before);
        assert_eq!(masses(&db.store).await, [("H-1".to_owned(), Some(251.0))]);
        // Also what is done behind the store's back is counted: it is the database that counts.
        db.sql("UPDATE part SET state = 'pulled' WHERE code = 'H-1'").await.expect("changed");
        assert_eq!(masses(&db.store).await, []);
        db.sql("UPDATE part SET state = 'free' WHERE code = 'H-1'").await.expect("changed");
        assert_eq!(masses(&db.store).await.len(), 1);
        other.close().await;
    }

    async fn the_state_is_numbered_by_what_was_changed_by_whoever_it_was(db: &TestDb) {
        let other = Store::open(&db.url).await.expect("the same database");
        let number = async |store: &Store| {
            let mut tx = store.read().await.expect("a reader");
            tx.state_number().await.expect("read").expect("nothing was changed here")
        };
        let first = number(&db.store).await;
        // Looking changes nothing, nor does a transaction that is undone or that does nothing.
        drop(db.read().await);
        db.write().await.commit().await.expect("commit");
        let mut undone = db.write().await;
        assert_eq!(undone.state_number().await.expect("read"), Some(first));
        undone.put_model(&head_model(), at(1)).await.expect("saved");
        assert_eq!(undone.state_number().await.expect("read"), None, "what it sees may be undone");
        drop(undone);
        assert_eq!(number(&db.store).await, first);
        // Who looks on still sees the state from before.
        let mut before = db.read().await;
        assert_eq!(before.state_number().await.expect("read"), Some(first));
        let mut tx = other.write().await.expect("a writer");
        tx.put_model(&head_model(), at(1)).await.expect("saved");
        let second = tx.commit_numbered().await.expect("commit");
        assert!(second > first);
        assert_eq!((number(&db.store).await, number(&other).await), (second, second));
        assert_eq!(before.state_number().await.expect("read"), Some(first));
        drop(before);
        other.close().await;
        // Emptied and made again, it never shows a number that it had.
        db.store.erase().await.expect("erased");
        let again = Store::open(&db.url).await.expect("opened");
        assert!(number(&again).await > second, "it begins with the time of its making");
        again.close().await;
    }

    async fn checks_grow_by_those_of_others_and_not_by_those_undone(db: &TestDb) {
        let other = Store::open(&db.url).await.expect("the same database");
        let kept = async |store: &Store| {
            let events = store.read().await.expect("a reader").scale_events("mass").await.expect("read");
            events.iter().filter_map(|e| e.check().map(|c| c.reading)).collect::<Vec<_>>()
        };
        let append = async |store: &Store, reading: f64| {
            let mut tx = store.write().await.expect("a writer");
            tx.append_scale_event(&check(1, reading), None).await.expect("kept");
            tx.commit().await.expect("commit");
        };
        assert_eq!(kept(&db.store).await, [] as [f64; 0]);
        append(&db.store, 200.0).await;
        assert_eq!(kept(&db.store).await, [200.0]);
        let mut before = db.read().await;
        assert_eq!(before.scale_events("mass").await.expect("read").len(), 1);
        // One that is undone takes the next number, and another one then takes the same.
        let mut tx = db.write().await;
        tx.append_scale_event(&check(2, 999.0), None).await.expect("kept");
        assert_eq!(tx.scale_events("mass").await.expect("read").len(), 2, "the writer sees it");
        drop(tx);
        append(&other, 200.2).await;
        assert_eq!(kept(&db.store).await, [200.0, 200.2]);
        assert_eq!(before.scale_events("mass").await.expect("read").len(), 1, "still as it began");
        drop(before);
        append(&other, 199.9).await;
        assert_eq!(kept(&db.store).await, [200.0, 200.2, 199.9]);
        assert_eq!(kept(&other).await, [200.0, 200.2, 199.9]);
        other.close().await;
    }
}
