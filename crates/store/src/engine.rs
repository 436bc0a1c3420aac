//! The two database engines behind one face: a query with its values, a row, a connection, a transaction, a pool.
//!
//! Every statement is written once, with `$1` for its values, which both engines take. Here alone the two are told apart
//! by type: a missing figure is bound as a NULL of its own type, which a common face of the library cannot do.

use futures_util::TryStreamExt;
use sqlx::pool::PoolOptions;
use sqlx::postgres::{PgConnectOptions, PgRow};
use sqlx::sqlite::{SqliteConnectOptions, SqliteRow};
use sqlx::{
    ColumnIndex, ConnectOptions, Connection as _, Database, Decode, PgConnection, PgPool, Postgres, Row as _,
    SqlSafeStr, SqlStr, Sqlite, SqliteConnection, SqlitePool, Type,
};
use std::time::Duration;

/// How long a caller waits for a connection or a lock before it is told that the database is busy.
const PATIENCE: Duration = Duration::from_secs(10);

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
pub(crate) async fn lock_writers(conn: &mut Connection<'_>) -> Result<(), sqlx::Error> {
    if conn.backend() == Backend::Postgres {
        conn.row(query("SELECT pg_advisory_xact_lock(7361041526)")).await?;
    }
    Ok(())
}

/// What every connection is set to.
pub(crate) async fn settle(conn: &mut Connection<'_>) -> Result<(), sqlx::Error> {
    let settings = match conn.backend() {
        Backend::Sqlite => {
            "PRAGMA busy_timeout = 10000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; \
             PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA secure_delete = ON;"
        }
        Backend::Postgres => "SET lock_timeout = 10000; SET synchronous_commit = on",
    };
    conn.run(settings).await
}

/// A value of a statement.
#[derive(Debug, Clone)]
pub(crate) enum Value {
    Text(Option<String>),
    Whole(Option<i64>),
    Real(Option<f64>),
}

macro_rules! values {
    ($($type:ty => $member:ident),*) => { $(
        impl From<$type> for Value {
            fn from(value: $type) -> Self {
                Self::$member(Some(value.into()))
            }
        }

        impl From<Option<$type>> for Value {
            fn from(value: Option<$type>) -> Self {
                Self::$member(value.map(Into::into))
            }
        }
    )* };
}
values! { String => Text, &str => Text, i64 => Whole, f64 => Real }

/// A statement with its values.
#[derive(Debug, Clone)]
pub(crate) struct Query {
    sql: SqlStr,
    values: Vec<Value>,
}

/// A statement without its values.
pub(crate) fn query(sql: impl SqlSafeStr) -> Query {
    Query { sql: sql.into_sql_str(), values: Vec::new() }
}

impl Query {
    /// With the value of its next place.
    pub(crate) fn bind(mut self, value: impl Into<Value>) -> Self {
        self.values.push(value.into());
        self
    }
}

/// The statement as an engine takes it.
macro_rules! bound {
    ($engine:ty, $query:expr) => {{
        let mut statement = sqlx::query::<$engine>($query.sql);
        for value in $query.values {
            statement = match value {
                Value::Text(text) => statement.bind(text),
                Value::Whole(whole) => statement.bind(whole),
                Value::Real(real) => statement.bind(real),
            };
        }
        statement
    }};
}

/// A row of an answer.
pub(crate) enum Row {
    Sqlite(SqliteRow),
    Postgres(PgRow),
}

impl Row {
    /// A column, by its name or its place.
    pub(crate) fn get<T, I>(&self, column: I) -> Result<T, sqlx::Error>
    where
        I: ColumnIndex<SqliteRow> + ColumnIndex<PgRow>,
        T: for<'r> Decode<'r, Sqlite> + Type<Sqlite> + for<'r> Decode<'r, Postgres> + Type<Postgres>,
    {
        match self {
            Self::Sqlite(row) => row.try_get(column),
            Self::Postgres(row) => row.try_get(column),
        }
    }
}

/// A connection that somebody else keeps.
pub(crate) enum Connection<'a> {
    Sqlite(&'a mut SqliteConnection),
    Postgres(&'a mut PgConnection),
}

/// The same in either engine.
macro_rules! either {
    ($on:expr, $inner:ident => $done:expr) => {
        match $on {
            Self::Sqlite($inner) => $done,
            Self::Postgres($inner) => $done,
        }
    };
}

impl Connection<'_> {
    pub(crate) const fn backend(&self) -> Backend {
        match self {
            Self::Sqlite(_) => Backend::Sqlite,
            Self::Postgres(_) => Backend::Postgres,
        }
    }

    pub(crate) async fn rows(&mut self, query: Query) -> Result<Vec<Row>, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(conn) => {
                bound!(Sqlite, query).fetch_all(&mut **conn).await?.into_iter().map(Row::Sqlite).collect()
            }
            Self::Postgres(conn) => {
                bound!(Postgres, query).fetch_all(&mut **conn).await?.into_iter().map(Row::Postgres).collect()
            }
        })
    }

    /// Hands each row to `take` as it comes, until that says that it has enough: none of them is kept.
    pub(crate) async fn each(&mut self, query: Query, mut take: impl FnMut(Row) -> bool) -> Result<(), sqlx::Error> {
        macro_rules! handed {
            ($engine:ident, $conn:expr) => {{
                let mut rows = bound!($engine, query).fetch(&mut **$conn);
                while let Some(row) = rows.try_next().await? {
                    if !take(Row::$engine(row)) {
                        break;
                    }
                }
            }};
        }
        match self {
            Self::Sqlite(conn) => handed!(Sqlite, conn),
            Self::Postgres(conn) => handed!(Postgres, conn),
        }
        Ok(())
    }

    pub(crate) async fn row(&mut self, query: Query) -> Result<Option<Row>, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(conn) => bound!(Sqlite, query).fetch_optional(&mut **conn).await?.map(Row::Sqlite),
            Self::Postgres(conn) => bound!(Postgres, query).fetch_optional(&mut **conn).await?.map(Row::Postgres),
        })
    }

    /// Changes something; returns how many rows.
    pub(crate) async fn change(&mut self, query: Query) -> Result<u64, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(conn) => bound!(Sqlite, query).execute(&mut **conn).await?.rows_affected(),
            Self::Postgres(conn) => bound!(Postgres, query).execute(&mut **conn).await?.rows_affected(),
        })
    }

    /// Statements without values, one after the other.
    pub(crate) async fn run(&mut self, sql: impl SqlSafeStr) -> Result<(), sqlx::Error> {
        let sql = sqlx::raw_sql(sql);
        match self {
            Self::Sqlite(conn) => sql.execute(&mut **conn).await.map(|_| ()),
            Self::Postgres(conn) => sql.execute(&mut **conn).await.map(|_| ()),
        }
    }

    /// A transaction that begins with this statement.
    pub(crate) async fn begin(&mut self, statement: &'static str) -> Result<Transaction<'_>, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(conn) => Transaction::Sqlite(conn.begin_with(statement).await?),
            Self::Postgres(conn) => Transaction::Postgres(conn.begin_with(statement).await?),
        })
    }
}

/// An open transaction; dropped, it undoes what was done in it.
pub(crate) enum Transaction<'c> {
    Sqlite(sqlx::Transaction<'c, Sqlite>),
    Postgres(sqlx::Transaction<'c, Postgres>),
}

impl Transaction<'_> {
    pub(crate) fn connection(&mut self) -> Connection<'_> {
        match self {
            Self::Sqlite(tx) => Connection::Sqlite(tx),
            Self::Postgres(tx) => Connection::Postgres(tx),
        }
    }

    pub(crate) async fn commit(self) -> Result<(), sqlx::Error> {
        either!(self, tx => tx.commit().await)
    }
}

/// A connection of one's own, outside of a pool.
pub(crate) enum OwnConnection {
    Sqlite(SqliteConnection),
    Postgres(PgConnection),
}

impl OwnConnection {
    pub(crate) fn lend(&mut self) -> Connection<'_> {
        match self {
            Self::Sqlite(conn) => Connection::Sqlite(conn),
            Self::Postgres(conn) => Connection::Postgres(conn),
        }
    }

    pub(crate) async fn close(self) -> Result<(), sqlx::Error> {
        either!(self, conn => conn.close().await)
    }

    /// Ends the session at once, without a word to the server.
    pub(crate) async fn close_hard(self) -> Result<(), sqlx::Error> {
        either!(self, conn => conn.close_hard().await)
    }
}

/// Where a database is, and how it is opened.
#[derive(Debug, Clone)]
pub(crate) enum Options {
    Sqlite(SqliteConnectOptions),
    Postgres(PgConnectOptions),
}

impl Options {
    /// A database in memory, on SQLite.
    pub(crate) fn in_memory() -> Result<Self, sqlx::Error> {
        "sqlite::memory:".parse().map(Self::Sqlite)
    }

    pub(crate) const fn backend(&self) -> Backend {
        match self {
            Self::Sqlite(_) => Backend::Sqlite,
            Self::Postgres(_) => Backend::Postgres,
        }
    }

    pub(crate) async fn connect(&self) -> Result<OwnConnection, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(options) => OwnConnection::Sqlite(options.connect().await?),
            Self::Postgres(options) => OwnConnection::Postgres(options.connect().await?),
        })
    }

    /// Connections that are settled as they are made, at most so many at a time.
    pub(crate) async fn pool(self, connections: u32, reading: bool) -> Result<Pool, sqlx::Error> {
        fn limits<DB: Database>(connections: u32) -> PoolOptions<DB> {
            PoolOptions::new()
                .max_connections(connections)
                .acquire_timeout(PATIENCE)
                .idle_timeout(None)
                .max_lifetime(None)
                // A full disk makes SQLite roll back by itself, and the driver then counts a transaction that is not
                // there any more: such a connection is closed instead of being handed out again.
                .before_acquire(|conn, _| Box::pin(async move { Ok(!sqlx::Connection::is_in_transaction(conn)) }))
        }
        Ok(match self {
            Self::Sqlite(options) => {
                let pool = limits(connections).after_connect(move |conn, _| {
                    Box::pin(async move {
                        let mut conn = Connection::Sqlite(conn);
                        settle(&mut conn).await?;
                        if reading { conn.run("PRAGMA query_only = ON").await } else { Ok(()) }
                    })
                });
                Pool::Sqlite(pool.connect_with(options).await?)
            }
            Self::Postgres(options) => {
                let pool = limits(connections)
                    .after_connect(|conn, _| Box::pin(async move { settle(&mut Connection::Postgres(conn)).await }));
                Pool::Postgres(pool.connect_with(options).await?)
            }
        })
    }
}

/// Connections that are handed out and come back.
#[derive(Debug, Clone)]
pub(crate) enum Pool {
    Sqlite(SqlitePool),
    Postgres(PgPool),
}

impl Pool {
    /// A transaction that begins with this statement.
    pub(crate) async fn begin(&self, statement: &'static str) -> Result<Transaction<'static>, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(pool) => Transaction::Sqlite(pool.begin_with(statement).await?),
            Self::Postgres(pool) => Transaction::Postgres(pool.begin_with(statement).await?),
        })
    }

    /// Does something on one of the connections.
    pub(crate) async fn with<T>(&self, does: impl AsyncFnOnce(Connection<'_>) -> T) -> Result<T, sqlx::Error> {
        Ok(match self {
            Self::Sqlite(pool) => does(Connection::Sqlite(&mut *pool.acquire().await?)).await,
            Self::Postgres(pool) => does(Connection::Postgres(&mut *pool.acquire().await?)).await,
        })
    }

    pub(crate) async fn close(&self) {
        either!(self, pool => pool.close().await);
    }
}
