//! Goal: a shop moves from one kind of database to the other and back with every row and figure; an archive that is cut short,
//! changed or of another program is refused and leaves nothing; one of an earlier schema is brought up to date.
//! Method: a shop with rows in every table, written by the store; the lines of the archives of three databases compared byte by
//! byte, and what the store reads from each; damage to each kind of line. The sums are computed here by another call of the library
//! of SHA-256, whose own tests hold it against FIPS 180-4.

use crate::earlier_schemas::{everything, fill, make, migrations, tables, work_goes_on};
use crate::refused_words;
use crate::samples::at;
use sha2::{Digest, Sha256};
use sqlx::{AnyConnection, Connection};
use std::path::PathBuf;
use store::{Archived, Store, StoreError, fill_from_archive};

const MADE: i64 = 4242;

async fn archived(store: &Store) -> (Archived, String) {
    let mut text = Vec::new();
    let archived = store.archive(&mut text, at(MADE)).await.expect("an archive");
    (archived, String::from_utf8(text).expect("text"))
}

async fn filled(url: &str, archive: &str) -> Result<Archived, StoreError> {
    fill_from_archive(url, &mut archive.as_bytes()).await
}

/// A place for a shop in a file, where there is none yet.
fn place(folder: &tempfile::TempDir, name: &str) -> (PathBuf, String) {
    let file = folder.path().join(name);
    let url = format!("sqlite://{}", file.display());
    (file, url)
}

fn newest() -> i64 {
    *migrations(true).keys().next_back().expect("migrations")
}

/// The lines with a last one that fits them.
fn ended(lines: &[String], rows: usize) -> String {
    let body: String = lines.iter().map(|line| format!("{line}\n")).collect();
    let sum: String = Sha256::digest(body.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect();
    format!("{body}{{\"end\":true,\"rows\":{rows},\"sha256\":\"{sum}\"}}\n")
}

on_both! {
    async fn a_shop_moves_to_a_file_and_back_with_every_row(db: &TestDb) {
        let job = fill(&db.store, newest()).await;
        let expected = everything(&db.store, newest()).await;
        let (first, text) = archived(&db.store).await;
        for (table, rows) in &first.rows {
            assert!(*rows > 0, "put something into {table} to see whether it is carried");
        }
        assert_eq!(text.lines().count() as u64, 2 + first.rows.iter().map(|(_, rows)| rows + 1).sum::<u64>());

        let folder = tempfile::tempdir().expect("a folder");
        let (_, url) = place(&folder, "other.db");
        assert_eq!(filled(&url, &text).await.expect("filled"), first);
        let other = Store::open_existing(&url).await.expect("a shop");
        assert_eq!(everything(&other, newest()).await, expected);
        let (second, again) = archived(&other).await;
        assert!(again == text, "the archive of the copy is another");
        assert_eq!(second, first);

        // And back, where the shop was.
        db.store.erase().await.expect("erased");
        assert_eq!(filled(&db.url, &again).await.map(|filled| filled.sha256).ok(), (!db.is_sqlite()).then(|| first.sha256.clone()));
        if !db.is_sqlite() {
            let back = Store::open_existing(&db.url).await.expect("a shop");
            assert_eq!(everything(&back, newest()).await, expected);
            assert!(archived(&back).await.1 == text, "the archive of what came back is another");
            work_goes_on(&back, &job, newest()).await;
            back.close().await;
        }
        work_goes_on(&other, &job, newest()).await;
        other.close().await;
    }

    async fn an_archive_is_never_unpacked_over_a_shop(db: &TestDb) {
        fill(&db.store, newest()).await;
        let expected = everything(&db.store, newest()).await;
        let (_, text) = archived(&db.store).await;
        let refused = filled(&db.url, &text).await.expect_err("a shop is there");
        assert!(matches!(refused, StoreError::NotEmpty { .. }), "{refused:?}");
        assert_eq!(everything(&db.store, newest()).await, expected);
    }

    /// What is refused in the middle leaves an empty database.
    async fn what_is_refused_leaves_nothing(db: &TestDb) {
        fill(&db.store, newest()).await;
        let (_, text) = archived(&db.store).await;
        let lines: Vec<&str> = text.lines().collect();
        let rows = lines.iter().filter(|line| line.starts_with('[')).count();
        let row = lines.iter().position(|line| line.starts_with('[')).expect("a row");
        let changed = |at: usize, with: &str| {
            let mut all: Vec<String> = lines[..lines.len() - 1].iter().map(|line| (*line).to_owned()).collect();
            with.clone_into(&mut all[at]);
            all.retain(|line| !line.is_empty());
            ended(&all, rows)
        };
        let folder = tempfile::tempdir().expect("a folder");
        let (file, own) = place(&folder, "new.db");
        let url = if db.is_sqlite() {
            own
        } else {
            db.store.erase().await.expect("erased");
            db.url.clone()
        };
        let one_off = text.replacen("Wren", "Vren", 1);
        for (case, archive, words) in [
            ("empty", String::new(), "line 1 of the archive: it ends here before its end"),
            ("cut in a line", text[..text.len() / 2].to_owned(), "it ends here before its end"),
            ("cut after a line", lines[..row + 1].join("\n") + "\n", "it ends here before its end"),
            ("changed", one_off, "the sum of its bytes is another"),
            ("a list of something else", "[1, 2]\n".into(), "line 1 of the archive: it does not begin"),
            ("another program's", changed(0, r#"{"archive":"else","form":1,"schema":1,"shop":"","made_at":"2026-01-01T00:00:00Z"}"#), "it does not begin"),
            ("a newer form", changed(0, &lines[0].replacen("\"form\":1", "\"form\":2", 1)), "a newer version of this program wrote it"),
            ("a newer schema", changed(0, &lines[0].replacen(&format!("\"schema\":{}", newest()), "\"schema\":999", 1)), "schema 999"),
            ("a column less", changed(1, &lines[1].replacen("\"id\",", "", 1)), "a table or column that its schema does not have"),
            ("a table less", changed(1, ""), "a row before its table"),
            ("a value more", changed(row, &lines[row].replacen('[', "[1,", 1)), "too few or too many values"),
            ("a figure as text", changed(row, "[\"x\",2,3,4,5,6,7,8]"), "line"),
            ("a row less", changed(row, ""), "rows are missing"),
        ] {
            let refused = filled(&url, &archive).await.expect_err(case);
            let told = refused_words(&refused);
            assert!(told.contains(words), "{case}: {told}");
            assert!(!file.exists(), "{case}");
            let left = std::fs::read_dir(folder.path()).expect("the folder").count();
            assert_eq!(left, 0, "{case}");
        }
        filled(&url, &text).await.expect("the place is still empty");
    }

    /// An archive lasts longer than a version: it is filled in at its own schema, and brought up to date by opening.
    async fn an_archive_of_an_earlier_schema_is_brought_up_to_date(db: &TestDb) {
        sqlx::any::install_default_drivers();
        let folder = tempfile::tempdir().expect("a folder");
        let all = migrations(db.is_sqlite());
        for schema in [1, 5, 12, newest() - 1] {
            db.store.erase().await.expect("erased");
            let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
            make(&mut conn, &all, schema).await;
            let tables = tables(&mut conn, db, &all, schema).await;
            conn.close().await.expect("closed");
            db.store.erase().await.expect("erased");
            // The order of the tables is the store's own: it is taken from the shop of today.
            let today = Store::open(&db.url).await.expect("opened");
            let (_, text) = archived(&today).await;
            today.close().await;
            let order: Vec<String> = text.lines().filter_map(|line| line.strip_prefix("{\"table\":\"")?.split('"').next().map(str::to_owned)).collect();
            let mut lines = vec![format!(r#"{{"archive":"setwright","form":1,"schema":{schema},"shop":"Old","made_at":"2026-01-01T00:00:00Z"}}"#)];
            for name in &order {
                let Some(table) = tables.iter().find(|table| table.name == *name) else { continue };
                lines.push(serde_json::json!({ "table": name, "columns": table.columns }).to_string());
                if name == "shop" {
                    lines.push(r#"[1,"Old","{}","2026-01-01T00:00:00.000000000Z"]"#.to_owned());
                }
            }
            let (_, url) = place(&folder, &format!("of-{schema}.db"));
            let filled = filled(&url, &ended(&lines, 1)).await.unwrap_or_else(|e| panic!("schema {schema}: {}", refused_words(&e)));
            assert_eq!((filled.schema, filled.shop.as_str()), (schema, "Old"));
            let shop = Store::open_existing(&url).await.expect("brought up to date");
            assert_eq!(shop.contents().await.expect("counted").schema, newest(), "from schema {schema}");
            shop.close().await;
        }
    }
}
