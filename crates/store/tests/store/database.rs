//! A database for one test, on either backend, gone afterwards.

use sqlx::{AnyConnection, AssertSqlSafe, Connection};
use store::{Store, Tx};

/// A database of its own.
pub struct TestDb {
    /// Its address.
    pub url: String,
    /// The store that opened it first.
    pub store: Store,
    place: Place,
}

enum Place {
    /// Removed when it is dropped.
    Folder {
        _folder: tempfile::TempDir,
    },
    Server {
        admin_url: String,
        name: String,
    },
}

impl TestDb {
    pub async fn sqlite() -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let url = format!("sqlite://{}", folder.path().join("shop.db").display());
        let store = Store::open(&url).await.expect("a new database");
        Self { url, store, place: Place::Folder { _folder: folder } }
    }

    /// None where PostgreSQL was left out on purpose.
    pub async fn postgres() -> Option<Self> {
        let admin_url = std::env::var("SETWRIGHT_TEST_POSTGRES").unwrap_or_else(|_| {
            panic!(
                "SETWRIGHT_TEST_POSTGRES is not set: run `scripts/postgres-for-tests cargo nextest run -p store`, or \
                 set it to `none` to leave PostgreSQL out"
            )
        });
        if admin_url == "none" {
            eprintln!("PostgreSQL is left out: SETWRIGHT_TEST_POSTGRES=none");
            return None;
        }
        let name = format!("setwright_test_{}", uuid::Uuid::now_v7().simple());
        sql_at(&admin_url, &format!("CREATE DATABASE {name}")).await.expect("a new database on the server");
        let url = with_name(&admin_url, &name);
        let store = Store::open(&url).await.expect("the new database opens");
        Some(Self { url, store, place: Place::Server { admin_url, name } })
    }

    pub async fn read(&self) -> Tx {
        self.store.read().await.expect("a transaction for reading")
    }

    pub async fn write(&self) -> Tx {
        self.store.write().await.expect("a transaction for writing")
    }

    pub fn is_sqlite(&self) -> bool {
        matches!(self.place, Place::Folder { .. })
    }

    /// Runs SQL behind the store's back.
    pub async fn sql(&self, sql: &str) -> Result<u64, sqlx::Error> {
        sql_at(&self.url, sql).await
    }
}

impl Drop for TestDb {
    fn drop(&mut self) {
        let Place::Server { admin_url, name } = &self.place else { return };
        let (admin_url, drop) = (admin_url.clone(), format!("DROP DATABASE {name} WITH (FORCE)"));
        // Drop cannot wait for a future on this thread's own runtime.
        let dropped = std::thread::spawn(move || {
            let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
            runtime.block_on(sql_at(&admin_url, &drop)).map_err(std::io::Error::other)
        });
        if let Ok(Err(error)) = dropped.join() {
            eprintln!("the test database {name} stays: {error}");
        }
    }
}

async fn sql_at(url: &str, sql: &str) -> Result<u64, sqlx::Error> {
    sqlx::any::install_default_drivers();
    let mut conn = AnyConnection::connect(url).await?;
    let done = sqlx::raw_sql(AssertSqlSafe(sql)).execute(&mut conn).await;
    conn.close().await?;
    Ok(done?.rows_affected())
}

/// The server's address with the name of another database.
fn with_name(url: &str, name: &str) -> String {
    let (front, query) = url.split_once('?').map_or((url, String::new()), |(f, q)| (f, format!("?{q}")));
    let (server, _) = front.rsplit_once('/').expect("postgres://user@host/name");
    format!("{server}/{name}{query}")
}

/// Makes of each function two tests, one a backend.
macro_rules! on_both {
    ($($(#[$doc:meta])* async fn $name:ident($db:ident: &TestDb) $body:block)*) => {$(
        $(#[$doc])*
        mod $name {
            #[allow(unused_imports)]
            use super::*;

            async fn run($db: &crate::database::TestDb) $body

            #[tokio::test(flavor = "multi_thread", worker_threads = 2)]
            async fn sqlite() {
                run(&crate::database::TestDb::sqlite().await).await;
            }

            #[tokio::test(flavor = "multi_thread", worker_threads = 2)]
            async fn postgres() {
                if let Some(db) = crate::database::TestDb::postgres().await {
                    run(&db).await;
                }
            }
        }
    )*};
}
