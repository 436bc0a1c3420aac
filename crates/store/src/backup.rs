//! Copies of a whole shop: made while it is in use, verified before they have their name, looked into, put back.
//!
//! Copying the file of a database in use loses what its write-ahead log still holds, and a file put back beside an old log is
//! torn when it is opened. So a copy is made by the database itself, and one is put back only where nobody has the file open.

use crate::engine::{Backend, Connection, Options, query};
use crate::error::StoreError;
use crate::file::ShopFile;
use crate::open::{Address, Store};
use crate::side_file::{copy, new_private, remove_side_files, remove_with_side_files, with_suffix};
use jiff::Timestamp;
use std::fs::File;
use std::path::{Path, PathBuf};

/// What a shop's database holds, counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contents {
    /// Number of its newest migration.
    pub schema: i64,
    /// Name of the shop.
    pub shop: String,
    /// Sheets, approved or not.
    pub sheets: i64,
    /// Jobs, those that are over among them.
    pub jobs: i64,
    /// Parts and boxes of equal parts, those that are gone among them.
    pub parts: i64,
    /// Readings at the bench, those that were taken back among them.
    pub readings: i64,
    /// When the last of these readings was taken; none where there is no reading.
    pub last_reading_at: Option<Timestamp>,
}

impl Contents {
    /// Whether this may be a copy of a shop that held `before` when the copy was begun and `after` when it was done: jobs and
    /// readings are never deleted.
    fn lies_between(&self, before: &Self, after: &Self) -> bool {
        let counts = |c: &Self| [c.jobs, c.readings];
        let [low, high, own] = [before, after, self].map(counts);
        self.schema == before.schema && own.iter().zip(low).zip(high).all(|((n, low), high)| (low..=high).contains(n))
    }
}

/// A copy that was verified.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Copied {
    /// Where it is.
    pub path: PathBuf,
    /// Its size.
    pub bytes: u64,
    /// What it holds.
    pub contents: Contents,
}

impl Store {
    /// Copies the whole shop into a new file while it is in use: what was acknowledged before the call is in it. The copy has
    /// its name only once it is on the disk, was opened, found undamaged, and its counts agree with the shop's. Only the
    /// owner of the process may read it.
    ///
    /// # Errors
    /// [`StoreError::OnServer`] for a shop on a server or in memory; [`StoreError::CannotOpen`] where the place is taken or
    /// cannot be written; [`StoreError::DiskFull`]; [`StoreError::CopyDiffers`] where it does not hold what the shop holds.
    pub async fn copy_to(&self, path: &Path) -> Result<Copied, StoreError> {
        let own_file = self.own_file()?;
        let place = path.display().to_string();
        let cannot = |e: std::io::Error| StoreError::CannotOpen { place: place.clone(), problem: e.to_string() };
        if path.exists() {
            return Err(cannot(std::io::Error::from(std::io::ErrorKind::AlreadyExists)));
        }
        let before = self.contents().await?;
        let beside = with_suffix(path, ".part");
        remove_with_side_files(&beside)?;
        // The database fills an empty file, so that it is nobody else's to read from the start.
        new_private(&beside).map_err(cannot)?;
        let copied = self.copy_into(own_file, &beside).await;
        let verified = match copied {
            Ok(()) => look_into(&beside).await,
            Err(error) => Err(error),
        };
        let contents = match verified {
            Ok(contents) => contents,
            Err(error) => {
                remove_with_side_files(&beside)?;
                return Err(error);
            }
        };
        let after = self.contents().await?;
        if !contents.lies_between(&before, &after) {
            remove_with_side_files(&beside)?;
            return Err(StoreError::CopyDiffers { place });
        }
        let bytes = on_disk(&beside).map_err(cannot)?;
        std::fs::rename(&beside, path).map_err(cannot)?;
        folder_on_disk(path).map_err(cannot)?;
        Ok(Copied { path: path.to_owned(), bytes, contents })
    }

    async fn copy_into(&self, own_file: &Options, path: &Path) -> Result<(), StoreError> {
        let failed = |e| self.failed(e);
        let mut conn = own_file.connect().await.map_err(failed)?;
        let copied = copy(&mut conn.lend(), path).await;
        conn.close().await.map_err(failed)?;
        copied.map_err(|e| StoreError::from_sqlx(e, &path.display().to_string()))
    }

    /// What the shop holds now.
    ///
    /// # Errors
    /// What the database says.
    pub async fn contents(&self) -> Result<Contents, StoreError> {
        self.readers().with(async |mut conn| contents(&mut conn).await).await.flatten().map_err(|e| self.failed(e))
    }

    /// What is damaged in the file, as the database tells it; empty where nothing is. `thorough` also holds every index and
    /// reference against the rows, which takes some ten times as long. Nothing is looked for in a database on a server,
    /// which keeps its own checks.
    ///
    /// # Errors
    /// What the database says where it cannot look.
    pub async fn damage(&self, thorough: bool) -> Result<Vec<String>, StoreError> {
        self.readers()
            .with(async |mut conn| damage(&mut conn, thorough).await)
            .await
            .flatten()
            .map_err(|e| self.failed(e))
    }
}

/// What a copy holds, once nothing in it is found damaged. It is not changed, not even by migrations.
///
/// # Errors
/// [`StoreError::CannotOpen`] for a file that is missing; [`StoreError::NotADatabase`], [`StoreError::NotOurs`];
/// [`StoreError::Newer`] where this version cannot use it; [`StoreError::Torn`] where it is damaged.
pub async fn look_into(path: &Path) -> Result<Contents, StoreError> {
    let place = path.display().to_string();
    if !path.is_file() {
        let problem = std::io::Error::from(std::io::ErrorKind::NotFound).to_string();
        return Err(StoreError::CannotOpen { place, problem });
    }
    let failed = |e| StoreError::from_sqlx(e, &place);
    let mut conn = Address::read(&format!("sqlite://{place}?mode=ro"))?.options.connect().await.map_err(failed)?;
    let looked = look(&mut conn.lend(), &place).await;
    conn.close().await.map_err(failed)?;
    looked
}

async fn look(conn: &mut Connection<'_>, place: &str) -> Result<Contents, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    crate::schema::known_version(conn, place).await?;
    if let Some(problem) = damage(conn, true).await.map_err(failed)?.into_iter().next() {
        return Err(StoreError::Torn { place: place.to_owned(), problem });
    }
    contents(conn).await.map_err(failed)
}

impl ShopFile {
    /// Puts a copy in the place of the shop, where nobody has the shop open. The shop that was there is kept beside it under
    /// the name `aside`; where there was none, nothing is. The copy stays where it is.
    ///
    /// # Errors
    /// As [`look_into`], before anything is changed; [`StoreError::InUseElsewhere`] while another program has the shop open;
    /// [`StoreError::CannotOpen`] where a file cannot be written. The shop is in its place after any of them.
    pub async fn replace_with(&self, copy: &Path, aside: &Path) -> Result<Contents, StoreError> {
        let contents = look_into(copy).await?;
        let path = self.path();
        let place = path.display().to_string();
        let cannot = |e: std::io::Error| StoreError::CannotOpen { place: place.clone(), problem: e.to_string() };
        // First whole and on the disk, beside the place, so that the exchange itself is two changes of names.
        let beside = with_suffix(path, ".restoring");
        remove_with_side_files(&beside)?;
        let written = new_private(&beside).and_then(|mut to| std::io::copy(&mut File::open(copy)?, &mut to));
        written.and_then(|_| on_disk(&beside)).map_err(cannot)?;
        if path.exists() {
            self.leave_log().await?;
            remove_side_files(path)?;
            std::fs::rename(path, aside).map_err(cannot)?;
        }
        // A log without its file belongs to a shop that is gone.
        remove_side_files(path)?;
        std::fs::rename(&beside, path).map_err(cannot)?;
        folder_on_disk(path).map_err(cannot)?;
        Ok(contents)
    }
}

async fn contents(conn: &mut Connection<'_>) -> Result<Contents, sqlx::Error> {
    let sql = "SELECT (SELECT MAX(version) FROM _sqlx_migrations) AS newest,
                      (SELECT COUNT(*) FROM sheet) AS sheets, (SELECT COUNT(*) FROM job) AS jobs,
                      (SELECT COUNT(*) FROM part) AS parts, (SELECT COUNT(*) FROM reading) AS readings,
                      (SELECT MAX(read_at) FROM reading) AS last_at,
                      (SELECT MAX(name) FROM shop) AS shop";
    let Some(row) = conn.row(query(sql)).await? else { return Err(sqlx::Error::RowNotFound) };
    let last: Option<String> = row.get("last_at")?;
    Ok(Contents {
        schema: row.get("newest")?,
        shop: row.get::<Option<String>, _>("shop")?.unwrap_or_default(),
        sheets: row.get("sheets")?,
        jobs: row.get("jobs")?,
        parts: row.get("parts")?,
        readings: row.get("readings")?,
        last_reading_at: last.and_then(|at| at.parse().ok()),
    })
}

async fn damage(conn: &mut Connection<'_>, thorough: bool) -> Result<Vec<String>, sqlx::Error> {
    if conn.backend() == Backend::Postgres {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    let sql = if thorough { "PRAGMA integrity_check(20)" } else { "PRAGMA quick_check(20)" };
    match conn.rows(query(sql)).await {
        Ok(rows) => {
            for row in rows {
                found.push(row.get::<String, _>(0)?);
            }
        }
        // So badly damaged that the look itself ends at it.
        Err(sqlx::Error::Database(said)) => found.push(said.message().to_owned()),
        Err(error) => return Err(error),
    }
    found.retain(|line| line != "ok");
    if thorough && found.is_empty() {
        for row in conn.rows(query("SELECT \"table\", parent FROM pragma_foreign_key_check LIMIT 20")).await? {
            found.push(format!("{} → {}", row.get::<String, _>(0)?, row.get::<String, _>(1)?));
        }
    }
    Ok(found)
}

/// Waits until a file is on the disk; returns its size.
fn on_disk(path: &Path) -> std::io::Result<u64> {
    let file = File::open(path)?;
    file.sync_all()?;
    Ok(file.metadata()?.len())
}

/// Waits until the name of a file is on the disk.
fn folder_on_disk(path: &Path) -> std::io::Result<()> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
    File::open(folder)?.sync_all()
}
