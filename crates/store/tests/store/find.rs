//! Goal: the one field finds what was kept by parts of its words and with slips of the hand, what fits best first, and its lines
//! are those of what is there, whoever wrote it. Method: the history of 2,000 sets, on both databases, with and without the
//! means of the database.

use crate::database::TestDb;
use crate::history::{SETS, fill, player};
use crate::samples::{at, with_job};
use sqlx::{AnyConnection, Connection, Row};
use store::{CustomerRow, Store};
use trade::customer::Customer;

async fn keep(db: &TestDb, name: &str, note: &str) -> i64 {
    let mut tx = db.write().await;
    let number = tx.next_customer_number().await.expect("a number");
    let customer = Customer { note: note.into(), phone: "0171 555 0199".into(), ..Customer::named(name) };
    let row = CustomerRow { number, customer, deleted_at: None, version: 0, saved_at: at(9) };
    tx.insert_customer(&row).await.expect("saved");
    tx.commit().await.expect("saved");
    number
}

/// Kinds and things that are found, as text.
async fn found(db: &TestDb, text: &str, slips: bool) -> (Vec<String>, Option<String>, i64) {
    let found = db.read().await.find_entries(text, slips).await.expect("read");
    (found.entries.iter().map(|e| format!("{} {}", e.kind, e.thing)).collect(), found.meant, found.parts)
}

async fn lines(db: &TestDb) -> Vec<(String, String, String)> {
    let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
    let rows = sqlx::query("SELECT kind, thing, text FROM find_entry").fetch_all(&mut conn).await.expect("rows");
    let mut lines: Vec<_> = rows.iter().map(|row| (row.get(0), row.get(1), row.get(2))).collect();
    conn.close().await.expect("closed");
    lines.sort();
    lines
}

async fn the_history_is_found(db: &TestDb) {
    // Whole words, beginnings, parts of words; accents and capitals; in any order.
    for text in ["Łukasz Żółty", "lukasz zolty", "ŻÓŁ luk", "olty", "0171 555"] {
        assert_eq!(found(db, text, false).await.0.first().map(String::as_str), Some("customer 1"), "{text}");
    }
    assert_eq!(found(db, "left thumb", false).await.0, ["customer 1"], "by a note");
    let set = (0..SETS).find(|i| player(*i) == "Hesper Wainfleet").expect("a set") + 2;
    let (jobs, ..) = found(db, "hesper wainf", false).await;
    assert!(jobs.contains(&format!("job {set}")) || jobs.len() >= 5, "{jobs:?}");
    assert!(jobs.iter().all(|one| one.starts_with("job ")), "{jobs:?}");
    assert_eq!(found(db, "d-117", false).await.0.first().map(String::as_str), Some("lot D-117"));
    let (heads, _, parts) = found(db, "h3-77", false).await;
    assert!(heads.contains(&"part H3-77".to_owned()) && parts >= 11, "H3-77 and H3-770 to H3-779: {heads:?}");
    // One slip: wrong, missing, too many, swapped; and in the beginning of a word.
    for (typed, meant) in [
        ("wainfleat", "wainfleet"),
        ("winfleet", "wainfleet"),
        ("wainffleet", "wainfleet"),
        ("wianfleet", "wainfleet"),
        ("hesper wanifleet", "hesper wainfleet"),
        ("quillfaet", "quillfeather"),
        ("zolyt", "zolty"),
    ] {
        assert_eq!(found(db, typed, false).await.0, Vec::<String>::new(), "{typed}: nothing has it");
        let (entries, said, _) = found(db, typed, true).await;
        assert!(!entries.is_empty(), "{typed}");
        assert_eq!(said.as_deref(), Some(meant), "{typed}");
    }
    // Two slips in one word are another word; what would run in a query is only text.
    for text in ["wxinflext", "\" OR \"xq", "77777%", "___", "'; DROP TABLE job; --", "~~~", "()*^"] {
        assert_eq!(found(db, text, true).await.0, Vec::<String>::new(), "{text}");
    }
}

on_both! {
    async fn what_was_kept_is_found_by_parts_of_words_and_with_slips(db: &TestDb) {
        fill(db).await;
        assert_eq!(keep(db, "Łukasz Żółty", "left thumb bent").await, 1);
        the_history_is_found(db).await;
        // Without the means of the database all lines are looked through, and the same is found.
        let means = if db.is_sqlite() { "DROP TABLE find_fts" } else { "DROP INDEX IF EXISTS find_entry_trigrams" };
        if db.is_sqlite() {
            for trigger in ["insert", "update", "delete"] {
                db.sql(&format!("DROP TRIGGER find_fts_{trigger}")).await.expect("dropped");
            }
        }
        db.sql(means).await.expect("dropped");
        the_history_is_found(db).await;
        // Opened again, the means are made again.
        let again = Store::open(&db.url).await.expect("opened");
        the_history_is_found(db).await;
        again.close().await;
    }

    async fn the_lines_are_those_that_would_be_made_again(db: &TestDb) {
        let mut job = with_job(db).await;
        let number = keep(db, "Berta Quillon", "plays in May").await;
        let mut tx = db.write().await;
        job.sheet.note = "wants the old grip back".into();
        job.sheet.player = "Ada Größe".into();
        job.version = tx.save_job(&job).await.expect("saved");
        let mut row = tx.customer(number).await.expect("read").expect("there");
        row.customer.note = "plays in June".into();
        tx.update_customer(&row, at(10)).await.expect("saved");
        tx.commit().await.expect("saved");
        assert_eq!(found(db, "may", false).await.0, Vec::<String>::new(), "what was changed is not found any more");
        assert_eq!(found(db, "june", false).await.0, ["customer 1"]);
        assert_eq!(found(db, "old grip", false).await.0, ["job 1"]);
        let before = lines(db).await;
        let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("migrations/0017_find.sql");
        let all = std::fs::read_to_string(file).expect("SQL");
        db.sql("DELETE FROM find_entry").await.expect("emptied");
        for sql in all.lines().filter(|line| line.starts_with("INSERT INTO find_dirty")) {
            db.sql(sql).await.expect("noted");
        }
        let again = Store::open(&db.url).await.expect("opened");
        again.close().await;
        assert_eq!(lines(db).await, before);
        // A name that is deleted is not left in a word either.
        let mut tx = db.write().await;
        let mut row = tx.customer(number).await.expect("read").expect("there");
        row.customer = Customer::default();
        row.deleted_at = Some(at(11));
        tx.update_customer(&row, at(11)).await.expect("saved");
        tx.commit().await.expect("saved");
        assert_eq!(found(db, "quillon", true).await.0, Vec::<String>::new());
        let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
        let left = sqlx::query("SELECT word FROM find_word WHERE word = 'quillon'").fetch_optional(&mut conn).await;
        assert!(left.expect("read").is_none(), "the word is gone");
        conn.close().await.expect("closed");
    }
}
