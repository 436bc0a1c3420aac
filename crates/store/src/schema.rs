//! The numbered migrations, and the check that the schema still is what they made.

use crate::engine::{
    Backend, Connection, Options, OwnConnection, Transaction, begin_write, lock_writers, query, settle,
};
use crate::error::StoreError;
use crate::side_file::{copy, new_private, with_suffix};
use sqlx::SqlSafeStr;
use sqlx::migrate::{MigrateError, Migration, MigrationType, Migrator};
use std::collections::BTreeMap;
use std::path::Path;

/// The migrations in their order. Never edit one that has been released: add the next number.
fn migrations(backend: Backend) -> Vec<Migration> {
    // What the two databases write in the same way, and what each writes in its own.
    macro_rules! sql {
        ($both:literal) => {
            include_str!(concat!("../migrations/", $both, ".sql"))
        };
        (own $own:literal) => {
            match backend {
                Backend::Sqlite => include_str!(concat!("../migrations/", $own, ".sqlite.sql")),
                Backend::Postgres => include_str!(concat!("../migrations/", $own, ".postgres.sql")),
            }
        };
        ($both:literal, own $own:literal) => {
            match backend {
                Backend::Sqlite => concat!(sql!($both), include_str!(concat!("../migrations/", $own, ".sqlite.sql"))),
                Backend::Postgres => {
                    concat!(sql!($both), include_str!(concat!("../migrations/", $own, ".postgres.sql")))
                }
            }
        };
    }
    [
        (1, "tables", sql!("0001_tables")),
        (2, "append only", sql!(own "0002_append_only")),
        (3, "learned", sql!("0003_learned")),
        (4, "learned append only", sql!(own "0004_learned_append_only")),
        (5, "scale health", sql!("0005_scale_health", own "0005_scale_health_append_only")),
        (6, "orders and life", sql!(own "0006_orders_and_life")),
        (7, "list layouts", sql!("0007_list_layouts")),
        (8, "shaft frequency", sql!("0008_shaft_frequency")),
        (9, "pages", sql!("0009_pages", own "0009_pages_count")),
        (10, "forecast and batch", sql!(own "0010_forecast_and_batch")),
        (11, "data state", sql!(own "0011_data_state")),
        (12, "customers", sql!("0012_customers")),
        (13, "clubs", sql!("0013_clubs", own "0013_clubs_append_only")),
        (14, "shaft profiles", sql!("0014_shaft_profiles", own "0014_shaft_profiles_append_only")),
        (15, "access", sql!("0015_access")),
        (16, "club marks", sql!("0016_club_marks", own "0016_club_marks_append_only")),
        (17, "find", sql!("0017_find", own "0017_find_noted")),
        (18, "swing period", sql!("0018_swing_period")),
        (19, "seals", sql!("0019_seals", own "0019_seals_append_only")),
    ]
    .into_iter()
    .map(|(version, name, sql)| Migration::new(version, name.into(), MigrationType::Simple, sql.into_sql_str(), false))
    .collect()
}

/// The newest schema that this version knows.
pub(crate) fn newest() -> i64 {
    migrations(Backend::Sqlite).iter().map(|m| m.version).max().unwrap_or(0)
}

/// Brings a database up to date: refuses what is not ours or newer, settles the connection, migrates, checks. Returns
/// whether it was empty before; where none is to be made, an empty one is refused.
pub(crate) async fn prepare(conn: &mut Connection<'_>, place: &str, make: bool) -> Result<bool, StoreError> {
    let known = newest();
    // Looked at before anything is changed: even the change of the journal mode would touch a foreign file.
    let applied = applied_version(conn, place).await?;
    match applied {
        Some(found) if found > known => return Err(StoreError::Newer { place: place.to_owned(), found, known }),
        None if !make => return Err(StoreError::NoShop { place: place.to_owned() }),
        _ => {}
    }
    settle(conn).await.map_err(|e| StoreError::from_sqlx(e, place))?;
    if applied.is_some_and(|found| found < known) {
        copy_before(conn, place, known).await?;
    }
    migrate(conn, place).await?;
    check(conn, place).await?;
    crate::find_line::prepare(conn, place).await?;
    crate::seal::prepare(conn, place).await?;
    Ok(applied.is_none())
}

/// A file is copied before it is migrated, so that the version that wrote it can be gone back to. The copy of an earlier try
/// stays.
async fn copy_before(conn: &mut Connection<'_>, place: &str, known: i64) -> Result<(), StoreError> {
    let to = with_suffix(Path::new(place), &format!(".before-schema-{known}"));
    if conn.backend() == Backend::Postgres || !Path::new(place).is_file() || to.exists() {
        return Ok(());
    }
    let failed = |problem: String| StoreError::CannotOpen { place: to.display().to_string(), problem };
    new_private(&to).map_err(|e| failed(e.to_string()))?;
    let copied = copy(conn, &to).await;
    copied.map_err(|e| {
        // A half copy must not pass for a whole one the next time.
        let _ = std::fs::remove_file(&to);
        StoreError::from_sqlx(e, &to.display().to_string())
    })
}

/// The newest migration of a database that holds a shop this version knows.
pub(crate) async fn known_version(conn: &mut Connection<'_>, place: &str) -> Result<i64, StoreError> {
    let known = newest();
    match applied_version(conn, place).await? {
        Some(found) if found > known => Err(StoreError::Newer { place: place.to_owned(), found, known }),
        Some(found) => Ok(found),
        None => Err(StoreError::NoShop { place: place.to_owned() }),
    }
}

/// Drops every table, none while another refers to it.
pub(crate) async fn drop_all(conn: &mut Connection<'_>) -> Result<(), sqlx::Error> {
    let sql = match conn.backend() {
        Backend::Sqlite => {
            "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite!_%' ESCAPE '!'
             ORDER BY rowid DESC"
        }
        Backend::Postgres => {
            "SELECT CAST(table_name AS TEXT) AS name FROM information_schema.tables
             WHERE table_schema = current_schema()"
        }
    };
    let mut tables = Vec::new();
    for row in conn.rows(query(sql)).await? {
        tables.push(row.get::<String, _>("name")?);
    }
    if conn.backend() == Backend::Sqlite {
        // Its own tables go with it, and it would not go after them.
        conn.run("DROP TABLE IF EXISTS find_fts").await?;
        tables.retain(|table| !table.starts_with("find_fts"));
    }
    let cascade = if conn.backend() == Backend::Postgres { " CASCADE" } else { "" };
    if conn.backend() == Backend::Sqlite {
        tables = referring_first(conn, tables).await?;
    }
    for table in tables {
        // The name is one of this database's own, not anybody's entry.
        let drop = format!("DROP TABLE IF EXISTS \"{table}\"{cascade}");
        conn.run(sqlx::AssertSqlSafe(drop)).await?;
    }
    if conn.backend() == Backend::Postgres {
        // What the triggers call; SQLite keeps that within the trigger.
        conn.run("DROP FUNCTION IF EXISTS append_only, count_stock_change, note_find").await?;
    }
    Ok(())
}

/// Whether a database has tables of this program; one with tables of another program is refused.
pub(crate) async fn is_made(conn: &mut Connection<'_>, place: &str) -> Result<bool, StoreError> {
    Ok(applied_version(conn, place).await?.is_some())
}

/// SQLite's tables, each before those that it refers to. An older table may refer to a younger one, since a migration may add
/// such a column. Tables that refer to each other in a ring, which there are none, come last as they are.
pub(crate) async fn referring_first(
    conn: &mut Connection<'_>,
    mut left: Vec<String>,
) -> Result<Vec<String>, sqlx::Error> {
    let sql = "SELECT m.name AS child, f.\"table\" AS parent FROM sqlite_master m
               JOIN pragma_foreign_key_list(m.name) f WHERE m.type = 'table'";
    let mut refers: Vec<(String, String)> = Vec::new();
    for row in conn.rows(query(sql)).await? {
        refers.push((row.get("child")?, row.get("parent")?));
    }
    let mut ordered = Vec::new();
    loop {
        let referred = |table: &String| refers.iter().any(|(child, parent)| parent == table && child != table);
        let Some(at) = left.iter().position(|table| !referred(table)) else { break };
        let table = left.remove(at);
        refers.retain(|(child, _)| *child != table);
        ordered.push(table);
    }
    ordered.append(&mut left);
    Ok(ordered)
}

/// The newest migration that the database has; none for an empty database.
async fn applied_version(conn: &mut Connection<'_>, place: &str) -> Result<Option<i64>, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let sql = match conn.backend() {
        Backend::Sqlite => {
            "SELECT name FROM sqlite_master WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite!_%' ESCAPE '!' \
             ORDER BY name"
        }
        Backend::Postgres => {
            "SELECT CAST(table_name AS TEXT) AS name FROM information_schema.tables \
             WHERE table_schema = current_schema() ORDER BY 1"
        }
    };
    let mut tables = Vec::new();
    for row in conn.rows(query(sql)).await.map_err(failed)? {
        tables.push(row.get::<String, _>("name").map_err(failed)?);
    }
    if !tables.iter().any(|t| t == "_sqlx_migrations") {
        return match tables.into_iter().next() {
            Some(table) => Err(StoreError::NotOurs { place: place.to_owned(), table }),
            None => Ok(None),
        };
    }
    let newest = conn.row(query("SELECT MAX(version) AS newest FROM _sqlx_migrations")).await.map_err(failed)?;
    newest.map_or(Ok(None), |row| row.get("newest")).map_err(failed)
}

/// All pending migrations in one transaction, so that two programs that start at once do not trip over each other and
/// a failure leaves the old schema. It is a write transaction even when nothing is pending: that nothing can be written
/// is found out at the start and not at the first reading.
async fn migrate(conn: &mut Connection<'_>, place: &str) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let backend = conn.backend();
    let mut tx = conn.begin(begin_write(backend)).await.map_err(failed)?;
    lock_writers(&mut tx.connection()).await.map_err(failed)?;
    migrate_in(&mut tx, place, newest()).await?;
    // A write of nothing. Beginning alone would not show that a file is read-only.
    let touch = "UPDATE _sqlx_migrations SET success = success WHERE version = -1";
    tx.connection().change(query(touch)).await.map_err(failed)?;
    tx.commit().await.map_err(failed)
}

/// The pending migrations up to one of them, in a transaction of the caller's.
pub(crate) async fn migrate_in(tx: &mut Transaction<'_>, place: &str, up_to: i64) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let backend = tx.connection().backend();
    // `run` would do the same, but the compiler cannot see that its future may move between threads.
    let wanted = migrations(backend).into_iter().filter(|m| m.version <= up_to).collect();
    let migrator = Migrator::with_migrations(wanted);
    let run = match tx {
        Transaction::Sqlite(tx) => migrator.run_direct(None, &mut **tx, false).await,
        Transaction::Postgres(tx) => migrator.run_direct(None, &mut **tx, false).await,
    };
    match run {
        Ok(()) => Ok(()),
        Err(MigrateError::Execute(e) | MigrateError::ExecuteMigration(e, _)) => Err(failed(e)),
        Err(other) => Err(StoreError::SchemaDamaged { place: place.to_owned(), problem: other.to_string() }),
    }
}

/// An empty database in memory with this schema, so that no list has to be kept by hand. It holds for both databases, since
/// tables, columns, indexes, triggers and keys carry the same names in both.
pub(crate) async fn reference(place: &str, schema: i64) -> Result<OwnConnection, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let mut reference = Options::in_memory().map_err(failed)?.connect().await.map_err(failed)?;
    let mut conn = reference.lend();
    let mut tx = conn.begin(begin_write(Backend::Sqlite)).await.map_err(failed)?;
    migrate_in(&mut tx, place, schema).await?;
    tx.commit().await.map_err(failed)?;
    Ok(reference)
}

/// Compares what is there with what the migrations make.
async fn check(conn: &mut Connection<'_>, place: &str) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let mut reference = reference(place, newest()).await?;
    let expected = inventory(&mut reference.lend()).await.map_err(failed)?;
    reference.close().await.map_err(failed)?;
    let found = inventory(conn).await.map_err(failed)?;
    let missing: Vec<&str> = expected
        .iter()
        .filter(|(name, count)| found.get(*name).is_none_or(|n| n < count))
        .map(|(name, _)| name.as_str())
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let problem = format!("missing: {}", missing.join(", "));
    Err(StoreError::SchemaDamaged { place: place.to_owned(), problem })
}

/// Names and numbers of what makes the schema safe.
async fn inventory(conn: &mut Connection<'_>) -> Result<BTreeMap<String, i64>, sqlx::Error> {
    let sql = match conn.backend() {
        Backend::Sqlite => {
            "SELECT 'column ' || m.name || '.' || c.name AS thing, 1 AS amount
               FROM sqlite_master m, pragma_table_info(m.name) c WHERE m.type = 'table'
             UNION ALL SELECT type || ' ' || name, 1 FROM sqlite_master
               WHERE type IN ('index', 'trigger') AND name NOT LIKE 'sqlite!_%' ESCAPE '!'
             UNION ALL SELECT 'unique key of ' || m.name, COUNT(*)
               FROM sqlite_master m, pragma_index_list(m.name) i
               WHERE m.type = 'table' AND i.\"unique\" = 1 GROUP BY m.name
             UNION ALL SELECT 'foreign key of ' || m.name, COUNT(*)
               FROM sqlite_master m, pragma_foreign_key_list(m.name) f WHERE m.type = 'table' GROUP BY m.name"
        }
        Backend::Postgres => {
            "SELECT 'column ' || CAST(table_name AS TEXT) || '.' || CAST(column_name AS TEXT) AS thing,
                    CAST(1 AS BIGINT) AS amount
               FROM information_schema.columns WHERE table_schema = current_schema()
             UNION ALL SELECT 'index ' || CAST(indexname AS TEXT), 1 FROM pg_indexes
               WHERE schemaname = current_schema()
             UNION ALL SELECT 'trigger ' || CAST(t.tgname AS TEXT), 1
               FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace
               WHERE n.nspname = current_schema() AND NOT t.tgisinternal AND t.tgenabled IN ('O', 'A')
             UNION ALL SELECT 'unique key of ' || CAST(c.relname AS TEXT), COUNT(*)
               FROM pg_index i JOIN pg_class c ON c.oid = i.indrelid JOIN pg_namespace n ON n.oid = c.relnamespace
               WHERE n.nspname = current_schema() AND i.indisunique AND i.indisvalid GROUP BY c.relname
             UNION ALL SELECT 'foreign key of ' || CAST(c.relname AS TEXT), COUNT(*)
               FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid JOIN pg_namespace n ON n.oid = c.relnamespace
               WHERE n.nspname = current_schema() AND k.contype = 'f' GROUP BY c.relname"
        }
    };
    let mut things = BTreeMap::new();
    for row in conn.rows(query(sql)).await? {
        things.insert(row.get("thing")?, row.get("amount")?);
    }
    Ok(things)
}
