//! The whole shop as a text that any program can read, and back into an empty database of either kind.
//!
//! A backup is a file of one database; an archive is of none. It moves a shop from SQLite to PostgreSQL and back, and can be read
//! when this program is long gone. Its form is JSON Lines: one document a line, in this order.
//!
//! 1. `{"archive": "setwright", "form": 1, "schema": 18, "shop": "…", "made_at": "…"}`
//! 2. for each table `{"table": "part", "columns": ["id", "seq", …]}`, then a line for each of its rows: its values in that
//!    order, as text, number or null. A table stands after those that it refers to.
//! 3. `{"end": true, "rows": 12345, "sha256": "…"}`: rows of all tables, and the SHA-256 (FIPS 180-4) of all bytes before this
//!    line, so that an archive that was cut short or changed on its way is told from a whole one.
//!
//! What is made from other tables, such as the lines of the search, is left out and made again. A shop of an older schema is
//! filled in at its schema, and brought up to date when it is next opened.

use crate::engine::{Backend, Connection, Options, Query, Row, Value, begin_write, lock_writers, query};
use crate::error::StoreError;
use crate::file::ShopFile;
use crate::open::{Address, Store};
use crate::schema;
use crate::side_file::{new_private, remove_files, with_suffix};
use crate::tables::{self, Holds, Table};
use bench::seal::hex;
use fact::Fact;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fs::File;
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::Path;

/// The form that this version writes, and the newest that it reads.
const FORM: u32 = 1;
/// What an archive says that it is.
const MARK: &str = "setwright";

/// What an archive holds, or a database that was filled from one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Archived {
    /// Name of the shop.
    pub shop: String,
    /// Schema that the shop had.
    pub schema: i64,
    /// When the archive was made.
    pub made_at: Timestamp,
    /// Rows by table, in the order of the archive.
    pub rows: Vec<(String, u64)>,
    /// SHA-256 of its lines before the last, in hexadecimal digits.
    pub sha256: String,
}

fact::facts! {
    /// Why a line of an archive is not taken.
    pub(crate) enum ArchiveFault: "archive_fault" {
        /// It does not begin as an archive does.
        NotBegun,
        /// A newer version of this program wrote it.
        NewerForm,
        /// It ends, or a line of it does, before its end.
        CutShort,
        /// Another table, or other columns, than its schema has.
        OtherTable,
        /// A row before the table that it belongs to.
        NoTable,
        /// A row with more or fewer values than its table has columns.
        Values,
        /// A text where a figure belongs, or the other way round.
        Kind,
        /// The sum of its bytes is another than its end says.
        Changed,
        /// Fewer rows than its end says, or more.
        Incomplete,
        /// What the system said.
        System { log: String },
    }
}

#[derive(Serialize, Deserialize)]
struct Head {
    archive: String,
    form: u32,
    schema: i64,
    shop: String,
    made_at: Timestamp,
}

#[derive(Serialize, Deserialize)]
struct TableHead {
    table: String,
    columns: Vec<String>,
}

#[derive(Serialize, Deserialize)]
struct End {
    end: bool,
    rows: u64,
    sha256: String,
}

/// One line of an archive after its first.
#[derive(Deserialize)]
#[serde(untagged)]
enum Line {
    Row(Vec<serde_json::Value>),
    Table(TableHead),
    End(End),
}

impl Store {
    /// Writes the whole shop as an archive, in the state of one moment, while it is in use.
    ///
    /// # Errors
    /// What the database says; [`StoreError::CannotOpen`] where it cannot be written.
    pub async fn archive(&self, out: &mut (dyn Write + Send), made_at: Timestamp) -> Result<Archived, StoreError> {
        let mut tx = self.begin_reading().await?;
        let mut conn = tx.connection();
        let schema = schema::known_version(&mut conn, self.place()).await?;
        let tables = tables::of_schema(self.place(), schema).await?;
        let name = conn.row(query("SELECT name FROM shop")).await.map_err(|e| self.failed(e))?;
        let shop = name.map_or(Ok(String::new()), |row| row.get("name")).map_err(|e| self.failed(e))?;
        let mut lines = Lines { out, digest: Sha256::new(), place: self.place().to_owned() };
        lines.write(&Head { archive: MARK.to_owned(), form: FORM, schema, shop: shop.clone(), made_at })?;
        let mut rows = Vec::new();
        for table in &tables {
            let columns = table.names().map(str::to_owned).collect();
            lines.write(&TableHead { table: table.name.clone(), columns })?;
            rows.push((table.name.clone(), self.archive_rows(&mut conn, table, &mut lines).await?));
        }
        let sha256 = lines.hex();
        let all = rows.iter().map(|(_, n)| n).sum();
        lines.write(&End { end: true, rows: all, sha256: sha256.clone() })?;
        lines.flush()?;
        Ok(Archived { shop, schema, made_at, rows, sha256 })
    }

    /// The same into a new file, which only the owner of the process may read: it has its name only once it is on the disk.
    ///
    /// # Errors
    /// [`StoreError::CannotOpen`] where the place is taken or cannot be written; what the database says.
    pub async fn archive_to(&self, path: &Path, made_at: Timestamp) -> Result<Archived, StoreError> {
        let cannot =
            |e: std::io::Error| StoreError::CannotOpen { place: path.display().to_string(), problem: e.to_string() };
        if path.exists() {
            return Err(cannot(std::io::ErrorKind::AlreadyExists.into()));
        }
        let beside = with_suffix(path, ".part");
        remove_files(std::slice::from_ref(&beside))?;
        let mut out = BufWriter::new(new_private(&beside).map_err(cannot)?);
        let archived = self.archive(&mut out, made_at).await;
        let on_disk = |out: BufWriter<File>| out.into_inner().map_err(std::io::IntoInnerError::into_error)?.sync_all();
        let done = archived.and_then(|archived| {
            on_disk(out).and_then(|()| std::fs::rename(&beside, path)).map_err(cannot).map(|()| archived)
        });
        if done.is_err() {
            remove_files(&[beside])?;
        }
        done
    }

    async fn archive_rows(
        &self,
        conn: &mut Connection<'_>,
        table: &Table,
        lines: &mut Lines<'_>,
    ) -> Result<u64, StoreError> {
        let order = quoted(table.order.iter().map(String::as_str));
        // The names are this program's own, from its migrations.
        let sql = format!("SELECT {} FROM \"{}\" ORDER BY {order}", quoted(table.names()), table.name);
        let (mut count, mut failed) = (0, None);
        conn.each(query(sqlx::AssertSqlSafe(sql)), |row| {
            let written = values(&row, table).map_err(|e| self.failed(e)).and_then(|values| lines.write(&values));
            count += 1;
            written.map_err(|error| failed = Some(error)).is_ok()
        })
        .await
        .map_err(|e| self.failed(e))?;
        failed.map_or(Ok(count), Err)
    }
}

/// Names as a statement lists them.
fn quoted<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.map(|name| format!("\"{name}\"")).collect::<Vec<_>>().join(", ")
}

/// The values of a row, in the order of the columns.
fn values(row: &Row, table: &Table) -> Result<Vec<serde_json::Value>, sqlx::Error> {
    let value = |(at, (_, holds)): (usize, &(String, Holds))| {
        Ok(match holds {
            Holds::Text => row.get::<Option<String>, _>(at)?.into(),
            Holds::Whole => row.get::<Option<i64>, _>(at)?.into(),
            Holds::Real => row.get::<Option<f64>, _>(at)?.into(),
        })
    };
    table.columns.iter().enumerate().map(value).collect()
}

/// Lines that are written while their digest is taken.
struct Lines<'a> {
    out: &'a mut (dyn Write + Send),
    digest: Sha256,
    place: String,
}

impl Lines<'_> {
    fn write(&mut self, line: &impl Serialize) -> Result<(), StoreError> {
        let failed = |problem: String| StoreError::CannotOpen { place: self.place.clone(), problem };
        let mut text = serde_json::to_vec(line).map_err(|e| failed(e.to_string()))?;
        text.push(b'\n');
        self.out.write_all(&text).map_err(|e| failed(e.to_string()))?;
        self.digest.update(&text);
        Ok(())
    }

    fn hex(&self) -> String {
        hex(&self.digest.clone().finalize())
    }

    fn flush(&mut self) -> Result<(), StoreError> {
        let place = self.place.clone();
        self.out.flush().map_err(|e| StoreError::CannotOpen { place, problem: e.to_string() })
    }
}

/// Fills an empty database from an archive: all of it, or nothing. A shop in a file has its name only once it is whole.
///
/// # Errors
/// [`StoreError::NotEmpty`] where a shop is there already; [`StoreError::NotAnArchive`] with the line that cannot be read or
/// does not fit, or where it was cut short or changed; [`StoreError::Newer`]; what the database says.
pub async fn fill_from_archive(url: &str, archive: &mut (dyn BufRead + Send)) -> Result<Archived, StoreError> {
    match ShopFile::of(url)? {
        Some(file) if file.exists() => Err(StoreError::NotEmpty { place: file.path().display().to_string() }),
        Some(file) => {
            let making = file.begin()?;
            let address = Address::read(making.url())?;
            match fill(&address.options, &address.place, archive).await {
                Ok(filled) => making.finish().map(|()| filled),
                Err(error) => {
                    making.give_up()?;
                    Err(error)
                }
            }
        }
        None => {
            let address = Address::read(url)?;
            fill(&address.options, &address.place, archive).await
        }
    }
}

/// The same from a file.
///
/// # Errors
/// As [`fill_from_archive`]; [`StoreError::CannotOpen`] for a file that cannot be read.
pub async fn fill_from_file(url: &str, path: &Path) -> Result<Archived, StoreError> {
    let file = File::open(path)
        .map_err(|e| StoreError::CannotOpen { place: path.display().to_string(), problem: e.to_string() })?;
    fill_from_archive(url, &mut BufReader::new(file)).await
}

async fn fill(options: &Options, place: &str, archive: &mut (dyn BufRead + Send)) -> Result<Archived, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let mut conn = options.connect().await.map_err(failed)?;
    let filled = fill_in(&mut conn.lend(), place, archive).await;
    // Closed hard after a failure, so that a server drops what was begun with the session. A file is closed in peace, so that
    // its journal goes away.
    let hard = filled.is_err() && options.backend() == Backend::Postgres;
    let closed = if hard { conn.close_hard().await } else { conn.close().await };
    let filled = filled?;
    closed.map_err(failed)?;
    Ok(filled)
}

async fn fill_in(
    conn: &mut Connection<'_>,
    place: &str,
    archive: &mut (dyn BufRead + Send),
) -> Result<Archived, StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let mut read = Reading { archive, digest: Sha256::new(), line: 0 };
    let head: Head = read.head()?;
    if schema::is_made(conn, place).await? {
        return Err(StoreError::NotEmpty { place: place.to_owned() });
    }
    if head.schema > schema::newest() {
        return Err(StoreError::Newer { place: place.to_owned(), found: head.schema, known: schema::newest() });
    }
    let tables = tables::of_schema(place, head.schema).await?;
    let mut tx = conn.begin(begin_write(conn.backend())).await.map_err(failed)?;
    lock_writers(&mut tx.connection()).await.map_err(failed)?;
    schema::migrate_in(&mut tx, place, head.schema).await?;
    let mut rows: Vec<(String, u64)> = Vec::new();
    let mut into: Option<(&Table, sqlx::SqlStr)> = None;
    let end = loop {
        match read.next()? {
            Line::Table(found) => {
                let is_new = rows.iter().all(|(name, _)| *name != found.table);
                let table = tables.iter().find(|table| table.name == found.table).filter(|_| is_new);
                let table = table.filter(|t| t.names().eq(found.columns.iter().map(String::as_str)));
                let table = table.ok_or_else(|| read.wrong(&ArchiveFault::OtherTable))?;
                rows.push((found.table, 0));
                into = Some((table, insert(table)));
            }
            Line::Row(values) => {
                let (Some((table, sql)), Some((_, count))) = (&into, rows.last_mut()) else {
                    return Err(read.wrong(&ArchiveFault::NoTable));
                };
                let row = bound(sql.clone(), table, values).map_err(|fault| read.wrong(&fault))?;
                tx.connection().change(row).await.map_err(failed)?;
                *count += 1;
            }
            Line::End(end) => break end,
        }
    };
    let all: u64 = rows.iter().map(|(_, n)| n).sum();
    if !end.end || all != end.rows || rows.len() != tables.len() {
        return Err(read.wrong(&ArchiveFault::Incomplete));
    }
    tx.commit().await.map_err(failed)?;
    Ok(Archived { shop: head.shop, schema: head.schema, made_at: head.made_at, rows, sha256: end.sha256 })
}

fn insert(table: &Table) -> sqlx::SqlStr {
    let places: Vec<String> = (1..=table.columns.len()).map(|n| format!("${n}")).collect();
    let (columns, places) = (quoted(table.names()), places.join(", "));
    let sql = format!("INSERT INTO \"{}\" ({columns}) VALUES ({places})", table.name);
    // The names are this program's own, from its migrations.
    sqlx::SqlSafeStr::into_sql_str(sqlx::AssertSqlSafe(sql))
}

fn bound(sql: sqlx::SqlStr, table: &Table, values: Vec<serde_json::Value>) -> Result<Query, ArchiveFault> {
    use serde_json::Value as Json;
    if values.len() != table.columns.len() {
        return Err(ArchiveFault::Values);
    }
    let mut row = query(sql);
    for (value, (_, holds)) in values.into_iter().zip(&table.columns) {
        row = row.bind(match (holds, value) {
            (Holds::Text, Json::Null) => Value::Text(None),
            (Holds::Text, Json::String(text)) => Value::Text(Some(text)),
            (Holds::Whole, Json::Null) => Value::Whole(None),
            (Holds::Whole, Json::Number(n)) => Value::Whole(Some(n.as_i64().ok_or(ArchiveFault::Kind)?)),
            (Holds::Real, Json::Null) => Value::Real(None),
            (Holds::Real, Json::Number(n)) => Value::Real(Some(n.as_f64().ok_or(ArchiveFault::Kind)?)),
            _ => return Err(ArchiveFault::Kind),
        });
    }
    Ok(row)
}

/// An archive that is read line by line.
struct Reading<'a> {
    archive: &'a mut (dyn BufRead + Send),
    digest: Sha256,
    line: u64,
}

impl Reading<'_> {
    fn head(&mut self) -> Result<Head, StoreError> {
        let text = self.text()?;
        self.digest.update(&text);
        let head: Head = serde_json::from_slice(&text).map_err(|_| self.wrong(&ArchiveFault::NotBegun))?;
        if head.archive != MARK {
            return Err(self.wrong(&ArchiveFault::NotBegun));
        }
        if head.form > FORM {
            return Err(self.wrong(&ArchiveFault::NewerForm));
        }
        Ok(head)
    }

    /// The next line; the last one only where its sum is that of all lines before it.
    fn next(&mut self) -> Result<Line, StoreError> {
        let text = self.text()?;
        let line = serde_json::from_slice(&text).map_err(|_| self.wrong(&ArchiveFault::CutShort))?;
        if let Line::End(end) = &line
            && end.sha256 != hex(&self.digest.clone().finalize())
        {
            return Err(self.wrong(&ArchiveFault::Changed));
        }
        self.digest.update(&text);
        Ok(line)
    }

    fn text(&mut self) -> Result<Vec<u8>, StoreError> {
        self.line += 1;
        let mut text = Vec::new();
        let read = self.archive.read_until(b'\n', &mut text);
        read.map_err(|e| self.wrong(&ArchiveFault::System { log: e.to_string() }))?;
        if text.last() != Some(&b'\n') {
            return Err(self.wrong(&ArchiveFault::CutShort));
        }
        Ok(text)
    }

    fn wrong(&self, fault: &ArchiveFault) -> StoreError {
        StoreError::NotAnArchive { line: self.line, fault: fault.told() }
    }
}
