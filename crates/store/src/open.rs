//! Opening: the address, what kind of database it is, and whether it is ours and sound.

use crate::engine::{Backend, Options, Pool, Transaction, begin_write, lock_writers};
use crate::error::StoreError;
use crate::remembered::Remembered;
use crate::schema;
use crate::tx::Tx;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A shop has a few tablets, and each page reads for some milliseconds.
const READERS: u32 = 8;

/// A database, open and checked. Clones share it.
#[derive(Debug, Clone)]
pub struct Store {
    readers: Pool,
    /// One connection: whoever wants to write waits for it in the order of asking, and holds no reader's connection
    /// meanwhile. A queue in front of the database is fair; the database's own lock is asked for again and again, and
    /// whoever asks at the right moment has it.
    writer: Pool,
    backend: Backend,
    /// How the file is opened, where the shop lies in one.
    file: Option<Options>,
    place: Arc<str>,
    remembered: Arc<Remembered>,
    new: bool,
}

impl Store {
    /// Opens the database at an address, makes the file where there is none, and brings its schema up to date.
    ///
    /// `sqlite:///abs/path.db` or `sqlite:rel.db` is a file (its folder must exist), `sqlite::memory:` a database that
    /// lives as long as the store and has one transaction at a time, `postgres://user@host/name` a database on a
    /// server.
    ///
    /// # Errors
    /// Each its own variant, nothing changed: [`StoreError::Address`], [`StoreError::CannotOpen`],
    /// [`StoreError::Server`], [`StoreError::NotADatabase`], [`StoreError::NotOurs`], [`StoreError::Newer`],
    /// [`StoreError::SchemaDamaged`], [`StoreError::ReadOnly`], [`StoreError::DiskFull`], [`StoreError::Busy`].
    pub async fn open(url: &str) -> Result<Self, StoreError> {
        Self::connect(Address::read(url)?, true).await
    }

    /// Opens a database that is there already and holds a shop; makes none.
    ///
    /// # Errors
    /// [`StoreError::NoShop`] where there is no such file, or nothing in it; otherwise as [`Store::open`].
    pub async fn open_existing(url: &str) -> Result<Self, StoreError> {
        let address = Address::read(url)?;
        if address.is_file() && !std::path::Path::new(&address.place).exists() {
            return Err(StoreError::NoShop { place: address.place });
        }
        Self::connect(address, false).await
    }

    async fn connect(address: Address, make: bool) -> Result<Self, StoreError> {
        let place: Arc<str> = address.place.as_str().into();
        let backend = address.options.backend();
        let mut new = address.in_memory;
        if !address.in_memory {
            // A connection outside of the pools first: a pool would hide the reason of a failure behind its retries.
            let connected = address.options.connect().await;
            let mut conn = connected.map_err(|e| read_only_or(StoreError::from_sqlx(e, &place)))?;
            let prepared = schema::prepare(&mut conn.lend(), &place, make).await.map_err(read_only_or);
            // Closed hard after a failure, so that the server drops the migration lock with the session.
            let closed = if prepared.is_ok() { conn.close().await } else { conn.close_hard().await };
            new = prepared?;
            closed.map_err(|e| StoreError::from_sqlx(e, &place))?;
        }
        let failed = |e| StoreError::from_sqlx(e, &place);
        let file = address.is_file().then(|| address.options.clone());
        let writer = address.options.clone().pool(1, false).await.map_err(failed)?;
        // A database in memory is its one connection.
        let readers = if address.in_memory {
            writer.with(async |mut conn| schema::prepare(&mut conn, &place, true).await).await.map_err(failed)??;
            writer.clone()
        } else {
            address.options.pool(READERS, true).await.map_err(failed)?
        };
        Ok(Self { readers, writer, backend, file, place, remembered: Arc::default(), new })
    }

    /// Whether the database was empty when it was opened, and its tables were made now.
    #[must_use]
    pub const fn is_new(&self) -> bool {
        self.new
    }

    /// A transaction that sees one consistent state and refuses every change.
    ///
    /// # Errors
    /// No connection could be had.
    pub async fn read(&self) -> Result<Tx, StoreError> {
        let inner = self.begin_reading().await?;
        Ok(Tx::new(inner, Arc::clone(&self.place), Arc::clone(&self.remembered), false))
    }

    /// The transaction that may change things. There is one at a time: a second caller waits for the first.
    ///
    /// # Errors
    /// [`StoreError::Busy`] after ten seconds of waiting; [`StoreError::ReadOnly`] where the file must not be written.
    pub async fn write(&self) -> Result<Tx, StoreError> {
        let begun = self.writer.begin(begin_write(self.backend)).await;
        let mut inner = begun.map_err(|e| StoreError::from_sqlx(e, &self.place))?;
        // Another program may write to the same database.
        lock_writers(&mut inner.connection()).await.map_err(|e| StoreError::from_sqlx(e, &self.place))?;
        Ok(Tx::new(inner, Arc::clone(&self.place), Arc::clone(&self.remembered), true))
    }

    /// How many changes other programs have made to the database, from an unknown beginning: it grows with each of theirs
    /// and with none of this store's. While one of its own is being made to last it may tell one less.
    ///
    /// # Errors
    /// The database failed.
    pub async fn changes_of_others(&self) -> Result<i64, StoreError> {
        let number = self.read().await?.state_number().await?.unwrap_or_default();
        Ok(number - self.remembered.own_changes.count())
    }

    /// Drops every table of this program with what is in them. For a demonstration that begins again; nothing brings it
    /// back.
    ///
    /// # Errors
    /// [`StoreError::Busy`] while others use them; what the database says.
    pub async fn erase(&self) -> Result<(), StoreError> {
        let mut tx = self.writer.begin(begin_write(self.backend)).await.map_err(|e| self.failed(e))?;
        lock_writers(&mut tx.connection()).await.map_err(|e| self.failed(e))?;
        schema::drop_all(&mut tx.connection()).await.map_err(|e| self.failed(e))?;
        tx.commit().await.map_err(|e| self.failed(e))
    }

    /// Where it is, as a person may be shown it.
    pub(crate) fn place(&self) -> &str {
        &self.place
    }

    /// A transaction that sees one consistent state, without what a [`Tx`] does around it.
    pub(crate) async fn begin_reading(&self) -> Result<Transaction<'static>, StoreError> {
        let begun = match self.backend {
            Backend::Sqlite => self.readers.begin("BEGIN DEFERRED").await,
            Backend::Postgres => self.readers.begin("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY").await,
        };
        begun.map_err(|e| self.failed(e))
    }

    pub(crate) const fn readers(&self) -> &Pool {
        &self.readers
    }

    /// How the shop's file is opened.
    pub(crate) fn own_file(&self) -> Result<&Options, StoreError> {
        self.file.as_ref().ok_or_else(|| StoreError::OnServer { place: self.place.to_string() })
    }

    pub(crate) fn failed(&self, error: sqlx::Error) -> StoreError {
        StoreError::from_sqlx(error, &self.place)
    }

    /// The folder in which the database file lies; none for one in memory or on a server.
    #[must_use]
    pub fn folder(&self) -> Option<PathBuf> {
        let file = Path::new(&*self.place);
        // A bare name lies in the present folder.
        let folder = file.parent().map(|f| if f.as_os_str().is_empty() { Path::new(".") } else { f });
        folder.filter(|_| self.backend == Backend::Sqlite && file.is_file()).map(Path::to_owned)
    }

    /// Waits for the running transactions and closes every connection.
    pub async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }
}

/// SQLite cannot open a file in a folder where it may not make its side files. Where the file itself can be read, the
/// folder is what must not be written.
fn read_only_or(error: StoreError) -> StoreError {
    match error {
        StoreError::CannotOpen { place, .. } if Path::new(&place).is_file() && std::fs::File::open(&place).is_ok() => {
            StoreError::ReadOnly { place }
        }
        other => other,
    }
}

/// A database address taken apart.
pub(crate) struct Address {
    pub options: Options,
    in_memory: bool,
    /// What a person may be shown: the path of a file, the address of a server without its password.
    pub place: String,
}

impl Address {
    /// Whether it names a file, which need not be there.
    pub fn is_file(&self) -> bool {
        self.options.backend() == Backend::Sqlite && !self.in_memory
    }

    pub fn read(url: &str) -> Result<Self, StoreError> {
        let bad = |problem: String| StoreError::Address { url: shown_address(url), problem };
        if let Some(rest) = url.strip_prefix("sqlite:") {
            let (path, query) = rest.split_once('?').map_or((rest, None), |(path, query)| (path, Some(query)));
            let path = path.strip_prefix("//").unwrap_or(path);
            if path.is_empty() {
                return Err(bad("it names no file".into()));
            }
            let in_memory = path == ":memory:";
            let full = match query {
                _ if in_memory => "sqlite::memory:".to_owned(),
                Some(query) if query.split('&').any(|pair| pair.starts_with("mode=")) => {
                    format!("sqlite:{path}?{query}")
                }
                Some(query) => format!("sqlite:{path}?{query}&mode=rwc"),
                None => format!("sqlite:{path}?mode=rwc"),
            };
            let options = full.parse().map(Options::Sqlite).map_err(|e: sqlx::Error| bad(e.to_string()))?;
            Ok(Self { options, in_memory, place: path.to_owned() })
        } else if url.starts_with("postgres://") || url.starts_with("postgresql://") {
            let options = url.parse().map(Options::Postgres).map_err(|e: sqlx::Error| bad(e.to_string()))?;
            Ok(Self { options, in_memory: false, place: shown_address(url) })
        } else {
            Err(bad("it starts neither with sqlite: nor with postgres://".into()))
        }
    }
}

/// The address of a database as it may be shown: user and host, no password, no query.
#[must_use]
pub fn shown_address(url: &str) -> String {
    let url = url.split_once('?').map_or(url, |(front, _)| front);
    let Some((scheme, rest)) = url.split_once("://") else { return url.to_owned() };
    match rest.rsplit_once('@') {
        Some((login, host)) => {
            let user = login.split_once(':').map_or(login, |(user, _)| user);
            format!("{scheme}://{user}@{host}")
        }
        None => url.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{Address, shown_address};
    use crate::engine::{query, settle};

    /// A kill of the program cannot show whether a power cut would lose anything, so the settings are read back.
    #[tokio::test]
    async fn connections_are_settled_for_durability() {
        let folder = tempfile::tempdir().expect("a folder");
        let url = format!("sqlite://{}?mode=rwc", folder.path().join("shop.db").display());
        let options = Address::read(&url).expect("an address").options;
        let mut conn = options.connect().await.expect("a connection");
        let mut conn = conn.lend();
        settle(&mut conn).await.expect("settled");
        // 2 is FULL: <https://www.sqlite.org/pragma.html#pragma_synchronous>.
        let wanted = [("synchronous", 2), ("foreign_keys", 1), ("recursive_triggers", 1), ("busy_timeout", 10_000)];
        for (pragma, value) in wanted {
            let sql = sqlx::AssertSqlSafe(format!("PRAGMA {pragma}"));
            let row = conn.row(query(sql)).await.expect("an answer").expect("a row");
            assert_eq!(row.get::<i64, _>(0).expect("a number"), value, "{pragma}");
        }
        let row = conn.row(query("PRAGMA journal_mode")).await.expect("an answer").expect("a row");
        assert_eq!(row.get::<String, _>(0).expect("a word"), "wal");
    }

    #[test]
    fn a_password_is_never_shown() {
        for (url, shown) in [
            ("postgres://wren:se@same@bench:5432/shop?password=x", "postgres://wren@bench:5432/shop"),
            ("postgres://wren@bench/shop", "postgres://wren@bench/shop"),
            ("postgres://bench/shop", "postgres://bench/shop"),
            ("nonsense", "nonsense"),
        ] {
            assert_eq!(shown_address(url), shown);
        }
    }
}
