//! The two kinds of database, and how a connection to either is settled and a write begun.

use sqlx::{Any, AnyConnection};

/// Which database it is. Only what the two do not share asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Backend {
    /// SQLite, in a file or in memory.
    Sqlite,
    /// PostgreSQL.
    Postgres,
}

/// The statement that opens a write transaction.
pub(crate) const fn begin_write(backend: Backend) -> &'static str {
    match backend {
        Backend::Sqlite => "BEGIN IMMEDIATE",
        // Each statement sees all that was committed before it; the lock below keeps other writers out.
        Backend::Postgres => "BEGIN ISOLATION LEVEL READ COMMITTED",
    }
}

/// One writer at a time on PostgreSQL too: an advisory lock that ends with the transaction. The number is arbitrary.
pub(crate) async fn lock_writers(conn: &mut AnyConnection, backend: Backend) -> Result<(), sqlx::Error> {
    if backend == Backend::Postgres {
        sqlx::query::<Any>("SELECT pg_advisory_xact_lock(7361041526)").execute(conn).await?;
    }
    Ok(())
}

/// What every connection is set to.
pub(crate) async fn settle(conn: &mut AnyConnection, backend: Backend) -> Result<(), sqlx::Error> {
    let settings = match backend {
        Backend::Sqlite => {
            "PRAGMA busy_timeout = 10000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; \
             PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON;"
        }
        Backend::Postgres => "SET lock_timeout = 10000; SET synchronous_commit = on",
    };
    sqlx::raw_sql(settings).execute(conn).await?;
    Ok(())
}
