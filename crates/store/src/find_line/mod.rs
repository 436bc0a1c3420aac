//! The lines of words that the one field looks through, kept with what they are about.

mod fold;

pub(crate) use fold::{folded, one_slip_apart};

use crate::column::{Columns, Row, is_fact, query};
use crate::engine::{Backend, Connection, begin_write, lock_writers};
use crate::error::StoreError;
use serde::Deserialize;
use sqlx::AssertSqlSafe;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

/// What stands before the line of everything but a part: no word has a letter of it. Parts are most of all lines, and are looked for by
/// themselves.
pub(crate) const NO_PART: &str = "~~~";
/// Things whose lines are written at once.
const AT_ONCE: usize = 300;
/// Letters of the shortest word in which a slip is looked for.
const SHORTEST: usize = 4;

/// How the lines of one kind of thing are made.
struct Source {
    kind: &'static str,
    /// Gives `thing` and what its line is made of; the things follow as a list in brackets.
    sql: &'static str,
    line: fn(&Row) -> Result<String, StoreError>,
    /// Whether its words are names that a hand slips in; the codes of parts are not.
    names: bool,
}

#[derive(Deserialize)]
struct Noted {
    #[serde(default)]
    note: String,
}

fn note(row: &Row, column: &'static str) -> Result<String, StoreError> {
    Ok(row.body::<Noted>(column)?.note)
}

/// What somebody wrote; a fact of the program has no line.
fn written(text: String) -> String {
    if is_fact(&text) { String::new() } else { text }
}

/// The reasons and remarks in the document of an entry of the log.
pub(crate) fn remarks(body: &serde_json::Value) -> String {
    let said = ["reason", "why", "note", "word"].iter().filter_map(|key| body.get(key)?.as_str());
    said.collect::<Vec<_>>().join(" ")
}

const SOURCES: [Source; 15] = [
    Source {
        kind: "customer",
        sql: "SELECT CAST(number AS TEXT) AS thing, search, body FROM customer
              WHERE deleted_at IS NULL AND CAST(number AS TEXT) IN ",
        line: |row| Ok(row.text("search")? + " " + &note(row, "body")?),
        names: true,
    },
    Source {
        kind: "sheet",
        sql: "SELECT id AS thing, player, body FROM sheet WHERE approved_job IS NULL AND id IN ",
        line: |row| Ok(row.text("player")? + " " + &note(row, "body")?),
        names: true,
    },
    Source {
        kind: "job",
        sql: "SELECT CAST(number AS TEXT) AS thing, player, sheet_body FROM job WHERE number IN ",
        line: |row| Ok(format!("job {} j{0} {} {}", row.text("thing")?, row.text("player")?, note(row, "sheet_body")?)),
        names: true,
    },
    Source {
        kind: "club",
        sql: "SELECT code AS thing, search FROM club WHERE code IN ",
        line: |row| row.text("search"),
        names: true,
    },
    Source {
        kind: "model",
        sql: "SELECT code AS thing, kind, name FROM model WHERE code IN ",
        line: |row| Ok(format!("{} {} {}", row.text("thing")?, row.text("name")?, row.text("kind")?)),
        names: true,
    },
    Source {
        kind: "part",
        sql: "SELECT code AS thing, search FROM part WHERE code IN ",
        line: |row| row.text("search"),
        names: false,
    },
    Source {
        kind: "lot",
        sql: "SELECT lot AS thing FROM (SELECT lot FROM part UNION SELECT lot FROM batch) l WHERE lot <> '' AND lot IN ",
        line: |row| Ok("lot ".to_owned() + &row.text("thing")?),
        names: true,
    },
    Source {
        kind: "order",
        sql: "SELECT CAST(number AS TEXT) AS thing, supplier, model, note FROM part_order WHERE number IN ",
        line: |row| {
            let (supplier, model) = (row.text("supplier")?, row.text("model")?);
            Ok(format!("order {} {supplier} {model} {}", row.text("thing")?, row.text("note")?))
        },
        names: true,
    },
    Source {
        kind: "batch",
        sql: "SELECT CAST(number AS TEXT) AS thing, lot, adhesive FROM batch WHERE number IN ",
        line: |row| Ok(format!("batch {} {} {}", row.text("thing")?, row.text("lot")?, row.text("adhesive")?)),
        names: true,
    },
    Source {
        kind: "event",
        sql: "SELECT id AS thing, body AS words FROM event WHERE id IN ",
        line: |row| Ok(remarks(&row.body("words")?)),
        names: true,
    },
    Source {
        kind: "club_event",
        sql: "SELECT id AS thing, body AS words FROM club_event WHERE id IN ",
        line: |row| Ok(remarks(&row.body("words")?)),
        names: true,
    },
    Source {
        kind: "taken_back",
        sql: "SELECT reading AS thing, why FROM reading_taken_back WHERE reading IN ",
        line: |row| Ok(written(row.text("why")?)),
        names: true,
    },
    Source {
        kind: "insisted",
        sql: "SELECT reading AS thing, why FROM reading_insisted WHERE reading IN ",
        line: |row| Ok(written(row.text("why")?)),
        names: true,
    },
    Source {
        kind: "mark",
        sql: "SELECT id AS thing, word FROM club_mark WHERE id IN ",
        line: |row| row.text("word"),
        names: true,
    },
    Source {
        kind: "cleared",
        sql: "SELECT mark AS thing, word FROM club_mark_cleared WHERE mark IN ",
        line: |row| row.text("word"),
        names: true,
    },
];

/// Writes the lines of all that was touched since, in the transaction of whoever touched it. Returns whether there was any.
pub(crate) async fn catch_up(conn: &mut Connection<'_>) -> Result<bool, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, "");
    if conn.row(query("SELECT 1 FROM find_dirty LIMIT 1")).await.map_err(failed)?.is_none() {
        return Ok(false);
    }
    let mut touched: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for row in conn.rows(query("SELECT DISTINCT kind, thing FROM find_dirty")).await.map_err(failed)? {
        touched.entry(row.text("kind")?).or_default().insert(row.text("thing")?);
    }
    let newest = conn.row(query("SELECT COALESCE(MAX(id), 0) AS id FROM find_entry")).await.map_err(failed)?;
    let mut id = newest.map_or(Ok(0), |row| row.whole("id"))?;
    let mut gone = false;
    for source in &SOURCES {
        let things: Vec<String> = touched.remove(source.kind).unwrap_or_default().into_iter().collect();
        for some in things.chunks(AT_ONCE) {
            gone |= write(conn, source, some, &mut id).await?;
        }
    }
    conn.run("DELETE FROM find_dirty").await.map_err(failed)?;
    if gone {
        // A name that was deleted must not stay behind as a word.
        words_again(conn).await?;
    }
    Ok(true)
}

/// A list of places for values: `($1, $2)`.
fn places(n: usize) -> String {
    let all: Vec<String> = (1..=n).map(|i| format!("${i}")).collect();
    format!("({})", all.join(", "))
}

/// Writes the lines of some things of a kind and takes away those of things that are gone; returns whether any name went.
async fn write(
    conn: &mut Connection<'_>,
    source: &Source,
    things: &[String],
    id: &mut i64,
) -> Result<bool, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, "");
    let numbered = source.sql.ends_with("number IN ");
    let mut lookup = query(AssertSqlSafe(source.sql.to_owned() + &places(things.len())));
    for thing in things {
        lookup = if numbered { lookup.bind(thing.parse::<i64>().unwrap_or(-1)) } else { lookup.bind(thing.clone()) };
    }
    let mut lines: BTreeMap<String, String> = BTreeMap::new();
    for row in conn.rows(lookup).await.map_err(failed)? {
        let line = folded(&(source.line)(&row)?);
        if line.trim().is_empty() {
            continue;
        }
        let line = if source.kind == "part" { line } else { NO_PART.to_owned() + &line };
        lines.insert(row.text("thing")?, line);
    }
    let gone: Vec<&String> = things.iter().filter(|thing| !lines.contains_key(*thing)).collect();
    let mut names_went = false;
    if !gone.is_empty() {
        let sql = format!("DELETE FROM find_entry WHERE kind = '{}' AND thing IN {}", source.kind, places(gone.len()));
        let mut delete = query(AssertSqlSafe(sql));
        for thing in gone {
            delete = delete.bind(thing.clone());
        }
        names_went = conn.change(delete).await.map_err(failed)? > 0 && source.kind == "customer";
    }
    if !lines.is_empty() {
        let mut sql = String::from("INSERT INTO find_entry (id, kind, thing, text) VALUES ");
        for i in 0..lines.len() {
            let (a, b, c) = (i * 3 + 1, i * 3 + 2, i * 3 + 3);
            // Writing to a string does not fail.
            let _ = write!(sql, "{}(${a}, '{}', ${b}, ${c})", if i > 0 { ", " } else { "" }, source.kind);
        }
        sql += " ON CONFLICT (kind, thing) DO UPDATE SET text = excluded.text";
        let mut insert = query(AssertSqlSafe(sql));
        for (thing, line) in &lines {
            *id += 1;
            insert = insert.bind(*id).bind(thing.clone()).bind(line.clone());
        }
        conn.change(insert).await.map_err(failed)?;
        if source.names {
            let words = lines.values().flat_map(|line| names_in(line)).collect();
            write_words(conn, &words).await?;
        }
    }
    Ok(names_went)
}

/// The words of a line in which a slip is looked for.
fn names_in(line: &str) -> impl Iterator<Item = &str> {
    line.split(' ').filter(|word| *word != NO_PART && word.chars().count() >= SHORTEST)
}

async fn write_words(conn: &mut Connection<'_>, words: &BTreeSet<&str>) -> Result<(), StoreError> {
    let all: Vec<&&str> = words.iter().collect();
    for some in all.chunks(AT_ONCE) {
        let mut sql = String::from("INSERT INTO find_word (word, letters) VALUES ");
        for i in 0..some.len() {
            let _ = write!(sql, "{}(${}, ${})", if i > 0 { ", " } else { "" }, i * 2 + 1, i * 2 + 2);
        }
        sql += " ON CONFLICT (word) DO NOTHING";
        let mut insert = query(AssertSqlSafe(sql));
        for word in some {
            insert = insert.bind(**word).bind(i64::try_from(word.chars().count()).unwrap_or(i64::MAX));
        }
        conn.change(insert).await.map_err(|e| StoreError::from_sqlx(e, ""))?;
    }
    Ok(())
}

/// Writes all words again, from the lines that there are.
async fn words_again(conn: &mut Connection<'_>) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, "");
    conn.run("DELETE FROM find_word").await.map_err(failed)?;
    let lines = conn.rows(query("SELECT text FROM find_entry WHERE kind <> 'part'")).await.map_err(failed)?;
    let lines: Vec<String> = lines.iter().map(|row| row.text("text")).collect::<Result<_, _>>()?;
    write_words(conn, &lines.iter().flat_map(|line| names_in(line)).collect()).await
}

/// The means of the database by which a word is found inside of a line without looking through all of them: on SQLite its
/// full-text index of three letters each, on PostgreSQL the same of `pg_trgm`. Where the extension may not be made, all lines
/// are looked through. Made when a shop is opened that has none; then the lines of all that is there.
pub(crate) async fn prepare(conn: &mut Connection<'_>, place: &str) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let backend = conn.backend();
    if backend == Backend::Postgres && !indexed(conn).await.map_err(failed)? {
        // By itself: what is refused undoes the transaction that it is in.
        if conn.run("CREATE EXTENSION IF NOT EXISTS pg_trgm").await.is_ok() {
            let index = "CREATE INDEX IF NOT EXISTS find_entry_trigrams ON find_entry USING gin (text gin_trgm_ops)";
            // Where the extension is of another schema, its operators are not seen, and all lines are looked through.
            let _ = conn.run(index).await;
        }
    }
    let mut tx = conn.begin(begin_write(backend)).await.map_err(failed)?;
    lock_writers(&mut tx.connection()).await.map_err(failed)?;
    let mut inner = tx.connection();
    if backend == Backend::Sqlite && !indexed(&mut inner).await.map_err(failed)? {
        inner.run(TRIGRAMS).await.map_err(failed)?;
    }
    catch_up(&mut inner).await?;
    tx.commit().await.map_err(failed)
}

const TRIGRAMS: &str = "
    CREATE VIRTUAL TABLE find_fts USING fts5(text, content='find_entry', content_rowid='id', tokenize='trigram case_sensitive 1');
    INSERT INTO find_fts (find_fts, rank) VALUES ('secure-delete', 1);
    INSERT INTO find_fts (find_fts) VALUES ('rebuild');
    CREATE TRIGGER find_fts_insert AFTER INSERT ON find_entry
    BEGIN
        INSERT INTO find_fts (rowid, text) VALUES (NEW.id, NEW.text);
    END;
    CREATE TRIGGER find_fts_update AFTER UPDATE ON find_entry
    BEGIN
        INSERT INTO find_fts (find_fts, rowid, text) VALUES ('delete', OLD.id, OLD.text);
        INSERT INTO find_fts (rowid, text) VALUES (NEW.id, NEW.text);
    END;
    CREATE TRIGGER find_fts_delete AFTER DELETE ON find_entry
    BEGIN
        INSERT INTO find_fts (find_fts, rowid, text) VALUES ('delete', OLD.id, OLD.text);
    END;";

/// Whether the means are there.
pub(crate) async fn indexed(conn: &mut Connection<'_>) -> Result<bool, sqlx::Error> {
    let sql = match conn.backend() {
        Backend::Sqlite => "SELECT 1 FROM sqlite_master WHERE name = 'find_fts'",
        Backend::Postgres => {
            "SELECT 1 FROM pg_indexes WHERE schemaname = current_schema() AND indexname = 'find_entry_trigrams'"
        }
    };
    Ok(conn.row(query(sql)).await?.is_some())
}
