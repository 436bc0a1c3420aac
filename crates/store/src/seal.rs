//! The chain of seals: an entry for each row that a job's record rests on, written with the row.

use crate::column::Holds::{self, Real, Text, Whole};
use crate::column::{Columns, Row, query, time_text};
use crate::engine::{Backend, Connection, begin_write, lock_writers};
use crate::error::StoreError;
use crate::tx::Tx;
use bench::seal::{Chain, Seal, Sealed, SealedRow, SealedValue};
use jiff::Timestamp;
use sqlx::AssertSqlSafe;
use trade::error::Noun;
use trade::id::JobId;

/// How the rows of a table are found and named.
struct Source {
    table: Sealed,
    /// The rows of a job `$1`, as `t`.
    of_job: &'static str,
    /// The column by which one of them, or those of one batch, are found.
    key: &'static str,
    /// What puts them into the order in which they came.
    order: &'static str,
    /// The columns that name a row.
    named_by: &'static [&'static str],
    /// The column with the time of the row, by which those of several tables are put in order when they are sealed late.
    at: Option<&'static str>,
    columns: &'static [(&'static str, Holds)],
}

const SOURCES: [Source; 9] = [
    Source {
        table: Sealed::Reading,
        of_job: "reading t WHERE t.job = $1",
        key: "t.id",
        order: "t.seq",
        named_by: &["id"],
        at: Some("read_at"),
        columns: &[
            ("id", Text),
            ("seq", Whole),
            ("job", Text),
            ("club", Text),
            ("step", Text),
            ("what", Text),
            ("unit", Text),
            ("value", Real),
            ("mass_kg", Real),
            ("length_m", Real),
            ("balance_points", Real),
            ("angle_rad", Real),
            ("frequency_hz", Real),
            ("typed", Text),
            ("on_club", Text),
            ("scale", Text),
            ("display_step", Real),
            ("read_at", Text),
            ("read_by", Text),
            ("replaces", Text),
            ("insisted", Whole),
            ("request_key", Text),
            ("forecast_value", Real),
            ("forecast_band", Real),
            ("forecast_version", Whole),
            ("time_s", Real),
            ("inertia_kg_m2", Real),
            ("pivot_m", Real),
        ],
    },
    Source {
        table: Sealed::TakenBack,
        of_job: "reading_taken_back t JOIN reading r ON r.id = t.reading WHERE r.job = $1",
        key: "t.reading",
        order: "t.said_at, t.reading",
        named_by: &["reading"],
        at: Some("said_at"),
        columns: &[("reading", Text), ("why", Text), ("said_by", Text), ("said_at", Text)],
    },
    Source {
        table: Sealed::StoodBy,
        of_job: "reading_insisted t JOIN reading r ON r.id = t.reading WHERE r.job = $1",
        key: "t.reading",
        order: "t.said_at, t.reading",
        named_by: &["reading"],
        at: Some("said_at"),
        columns: &[("reading", Text), ("why", Text), ("said_by", Text), ("said_at", Text)],
    },
    Source {
        table: Sealed::Event,
        of_job: "event t WHERE t.job = $1",
        key: "t.id",
        order: "t.seq",
        named_by: &["id"],
        at: Some("happened_at"),
        columns: &[
            ("id", Text),
            ("seq", Whole),
            ("happened_at", Text),
            ("done_by", Text),
            ("job", Text),
            ("club", Text),
            ("kind", Text),
            ("body", Text),
        ],
    },
    Source {
        table: Sealed::Batch,
        of_job: "batch t WHERE t.id IN
                 (SELECT g.batch FROM batch_club g JOIN job_club c ON c.id = g.club WHERE c.job = $1)",
        key: "t.id",
        order: "t.number",
        named_by: &["id"],
        at: Some("mixed_at"),
        columns: &[
            ("id", Text),
            ("number", Whole),
            ("adhesive", Text),
            ("lot", Text),
            ("bead_mass_fraction", Real),
            ("room_k", Real),
            ("resin_kg", Real),
            ("hardener_kg", Real),
            ("beads_kg", Real),
            ("given", Text),
            ("mixed_at", Text),
            ("mixed_by", Text),
            ("request_key", Text),
        ],
    },
    Source {
        table: Sealed::Glued,
        of_job: "batch_club t JOIN job_club c ON c.id = t.club JOIN batch b ON b.id = t.batch WHERE c.job = $1",
        key: "t.batch",
        order: "b.number, t.place",
        named_by: &["batch", "place"],
        at: None,
        columns: &[("batch", Text), ("place", Whole), ("club", Text)],
    },
    Source {
        table: Sealed::BatchTakenBack,
        of_job: "batch_taken_back t WHERE t.batch IN
                 (SELECT g.batch FROM batch_club g JOIN job_club c ON c.id = g.club WHERE c.job = $1)",
        key: "t.batch",
        order: "t.said_at, t.batch",
        named_by: &["batch"],
        at: Some("said_at"),
        columns: &[("batch", Text), ("why", Text), ("said_by", Text), ("said_at", Text)],
    },
    Source {
        table: Sealed::Finished,
        of_job: "finished_club t WHERE t.job = $1",
        key: "t.club",
        order: "t.seq",
        named_by: &["club"],
        at: Some("finished_at"),
        columns: &[
            ("club", Text),
            ("seq", Whole),
            ("job", Text),
            ("job_number", Whole),
            ("number", Text),
            ("head_model", Text),
            ("finished_at", Text),
            ("target_points", Real),
            ("deviation_points", Real),
            ("band_points", Real),
            ("tolerance_points", Real),
            ("verdict", Text),
        ],
    },
    // Only what the record shows of it: its version counts on, and what it is made of may be looked up anew.
    Source {
        table: Sealed::Asked,
        of_job: "job_club t WHERE t.job = $1",
        key: "t.id",
        order: "t.slot",
        named_by: &["id"],
        at: None,
        columns: &[
            ("id", Text),
            ("job", Text),
            ("slot", Whole),
            ("card", Text),
            ("target_body", Text),
            ("plan_body", Text),
            ("work_body", Text),
        ],
    },
];

fn source(table: Sealed) -> Option<&'static Source> {
    SOURCES.iter().find(|source| source.table == table)
}

impl Source {
    /// The rows of a job, or those of them that the key finds, with the time of each.
    async fn rows(
        &self,
        conn: &mut Connection<'_>,
        job: &str,
        key: Option<&str>,
    ) -> Result<Vec<(String, SealedRow)>, StoreError> {
        let columns: Vec<String> = self.columns.iter().map(|(column, _)| format!("t.{column}")).collect();
        let found_by = key.map_or_else(String::new, |_| format!(" AND {} = $2", self.key));
        let (columns, of_job, order) = (columns.join(", "), self.of_job, self.order);
        // The names are this program's own.
        let sql = format!("SELECT {columns} FROM {of_job}{found_by} ORDER BY {order}");
        let mut lookup = query(AssertSqlSafe(sql)).bind(job.to_owned());
        if let Some(key) = key {
            lookup = lookup.bind(key.to_owned());
        }
        let found = conn.rows(lookup).await.map_err(|e| StoreError::from_sqlx(e, ""))?;
        found.iter().map(|row| Ok((self.time(row)?, self.sealed(row)?))).collect()
    }

    fn time(&self, row: &Row) -> Result<String, StoreError> {
        self.at.map_or(Ok(String::new()), |at| row.text(at))
    }

    fn sealed(&self, row: &Row) -> Result<SealedRow, StoreError> {
        let mut values = std::collections::BTreeMap::new();
        for (column, holds) in self.columns {
            let value = match holds {
                Text => row.maybe_text(column)?.map(SealedValue::Text),
                Whole => row.maybe_whole(column)?.map(SealedValue::Whole),
                Real => row.maybe_real(column)?.map(SealedValue::Real),
            };
            if let Some(value) = value {
                values.insert((*column).to_owned(), value);
            }
        }
        let named = self.named_by.iter().filter_map(|column| match values.get(*column)? {
            SealedValue::Text(text) => Some(text.clone()),
            SealedValue::Whole(whole) => Some(whole.to_string()),
            SealedValue::Real(_) => None,
        });
        Ok(SealedRow { table: self.table, row: named.collect::<Vec<_>>().join(" "), values })
    }
}

macro_rules! seals_of_job {
    () => {
        "SELECT entry, sealed_table, sealed_row, row_sha256, sha256, late FROM record_seal WHERE job = $1 "
    };
}

/// The last entry of a job's chain.
async fn last(conn: &mut Connection<'_>, job: &str) -> Result<Option<Seal>, StoreError> {
    let lookup = query(concat!(seals_of_job!(), "ORDER BY entry DESC LIMIT 1"));
    let row = conn.row(lookup.bind(job.to_owned())).await.map_err(|e| StoreError::from_sqlx(e, ""))?;
    row.as_ref().map(seal_of).transpose()
}

fn seal_of(row: &Row) -> Result<Seal, StoreError> {
    Ok(Seal {
        entry: row.whole("entry")?,
        table: row.word("sealed_table", Sealed::from_key)?,
        row: row.text("sealed_row")?,
        row_sha256: row.text("row_sha256")?,
        sha256: row.text("sha256")?,
        late: row.flag("late")?,
    })
}

/// Appends entries for rows to the chain of a job.
async fn append(conn: &mut Connection<'_>, job: &str, rows: &[SealedRow], late: bool) -> Result<(), StoreError> {
    let mut previous = last(conn, job).await?;
    for row in rows {
        let seal = Seal::after(previous.as_ref(), job, row, late);
        let insert = query(
            "INSERT INTO record_seal (job, entry, sealed_table, sealed_row, row_sha256, sha256, late)
             VALUES ($1, $2, $3, $4, $5, $6, $7)",
        );
        let insert = insert
            .bind(job.to_owned())
            .bind(seal.entry)
            .bind(seal.table.key())
            .bind(seal.row.clone())
            .bind(seal.row_sha256.clone())
            .bind(seal.sha256.clone())
            .bind(i64::from(seal.late));
        conn.change(insert).await.map_err(|e| StoreError::from_sqlx(e, ""))?;
        previous = Some(seal);
    }
    Ok(())
}

/// Seals what is there when a database gets its chains. What was changed in it before cannot be seen, so each entry says that it
/// is late. Done once, in one transaction, by whichever program opens it first.
pub(crate) async fn prepare(conn: &mut Connection<'_>, place: &str) -> Result<(), StoreError> {
    let failed = |e| StoreError::from_sqlx(e, place);
    let backend = conn.backend();
    let begun = "SELECT 1 FROM record_seal_begun";
    if conn.row(query(begun)).await.map_err(failed)?.is_some() {
        return Ok(());
    }
    let mut tx = conn.begin(begin_write(backend)).await.map_err(failed)?;
    lock_writers(&mut tx.connection()).await.map_err(failed)?;
    let mut inner = tx.connection();
    if inner.row(query(begun)).await.map_err(failed)?.is_none() {
        for job in inner.rows(query("SELECT id FROM job ORDER BY number")).await.map_err(failed)? {
            seal_late(&mut inner, &job.text("id")?).await?;
        }
        // The database's own clock: what opens it has none.
        let now = match backend {
            Backend::Sqlite => "SELECT strftime('%Y-%m-%dT%H:%M:%fZ', 'now') AS now",
            Backend::Postgres => {
                "SELECT to_char(clock_timestamp() AT TIME ZONE 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS.MS\"Z\"') AS now"
            }
        };
        if let Some(row) = inner.row(query(now)).await.map_err(failed)? {
            let insert = query("INSERT INTO record_seal_begun (id, begun_at) VALUES (1, $1)");
            inner.change(insert.bind(time_text(row.time("now")?))).await.map_err(failed)?;
        }
    }
    tx.commit().await.map_err(failed)
}

async fn seal_late(conn: &mut Connection<'_>, job: &str) -> Result<(), StoreError> {
    let (mut rows, mut asked) = (Vec::new(), Vec::new());
    let mut mixed = std::collections::BTreeMap::new();
    for source in &SOURCES {
        for (at, row) in source.rows(conn, job, None).await? {
            match row.table {
                Sealed::Batch => {
                    mixed.insert(row.row.clone(), at.clone());
                    rows.push((at, row));
                }
                // A joint has the time of its batch.
                Sealed::Glued => {
                    let batch = row.row.split(' ').next().unwrap_or_default();
                    rows.push((mixed.get(batch).cloned().unwrap_or_default(), row));
                }
                Sealed::Asked => asked.push(row),
                _ => rows.push((at, row)),
            }
        }
    }
    // A sort that keeps the order of rows of one time.
    rows.sort_by(|a, b| a.0.cmp(&b.0));
    let finished =
        |asked: &SealedRow| rows.iter().any(|(_, row)| row.table == Sealed::Finished && row.row == asked.row);
    asked.retain(finished);
    let mut rows: Vec<SealedRow> = rows.into_iter().map(|(_, row)| row).collect();
    rows.append(&mut asked);
    append(conn, job, &rows, true).await
}

impl Tx {
    /// Seals the rows of a table that the key finds, which were written just now.
    pub(crate) async fn seal(&mut self, job: &JobId, table: Sealed, key: &str) -> Result<(), StoreError> {
        let Some(source) = source(table) else { return Ok(()) };
        let mut conn = self.connection();
        let rows = source.rows(&mut conn, job.as_str(), Some(key)).await?;
        let rows: Vec<SealedRow> = rows.into_iter().map(|(_, row)| row).collect();
        append(&mut conn, job.as_str(), &rows, false).await
    }

    /// Seals what a club is asked to be and its plan, where that was sealed before and is another now.
    pub(crate) async fn seal_asked_again(&mut self, job: &JobId, club: &str) -> Result<(), StoreError> {
        let sealed = query("SELECT 1 FROM record_seal WHERE job = $1 AND sealed_table = $2 AND sealed_row = $3");
        let sealed = sealed.bind(job.0.clone()).bind(Sealed::Asked.key()).bind(club.to_owned());
        if self.any(sealed).await? { self.seal(job, Sealed::Asked, club).await } else { Ok(()) }
    }

    /// The jobs whose clubs were glued from a batch.
    pub(crate) async fn jobs_of_batch(&mut self, batch: &str) -> Result<Vec<JobId>, StoreError> {
        let lookup = query(
            "SELECT DISTINCT c.job AS job FROM batch_club g JOIN job_club c ON c.id = g.club WHERE g.batch = $1
             ORDER BY c.job",
        );
        let rows = self.rows(lookup.bind(batch.to_owned())).await?;
        rows.iter().map(|row| Ok(JobId(row.text("job")?))).collect()
    }

    /// The chain of a job with the rows that it seals, as they are now.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown job; the database failed, or a row is damaged.
    pub async fn chain(&mut self, job_number: i64) -> Result<Chain, StoreError> {
        let job = self.row(query("SELECT id FROM job WHERE number = $1").bind(job_number)).await?;
        let missing = || StoreError::Missing { what: Noun::Job, name: job_number.to_string() };
        let job = job.ok_or_else(missing)?.text("id")?;
        let seals = query(concat!(seals_of_job!(), "ORDER BY entry"));
        let seals = self.rows(seals.bind(job.clone())).await?;
        let seals = seals.iter().map(seal_of).collect::<Result<Vec<_>, _>>()?;
        let mut rows = Vec::new();
        for source in &SOURCES {
            let found = source.rows(&mut self.connection(), &job, None).await?;
            rows.extend(found.into_iter().map(|(_, row)| row));
        }
        let kept_from = self.seals_kept_from().await?;
        Ok(Chain { job, job_number, seals, rows, kept_from })
    }

    async fn seals_kept_from(&mut self) -> Result<Option<Timestamp>, StoreError> {
        let row = self.row(query("SELECT begun_at FROM record_seal_begun")).await?;
        row.map(|row| row.time("begun_at")).transpose()
    }

    /// The numbers of all jobs.
    ///
    /// # Errors
    /// The database failed.
    pub async fn job_numbers(&mut self) -> Result<Vec<i64>, StoreError> {
        let rows = self.rows(query("SELECT number FROM job ORDER BY number")).await?;
        rows.iter().map(|row| row.whole("number")).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::SOURCES;
    use crate::schema::newest;
    use crate::tables::of_schema;
    use bench::seal::Sealed;

    /// A column that comes later must be sealed too, and a table with a name of its own must be one.
    #[tokio::test]
    async fn every_column_of_a_sealed_table_is_sealed() {
        let tables = of_schema("", newest()).await.expect("the tables");
        for source in &SOURCES {
            let table = tables.iter().find(|table| table.name == source.table.key()).expect("a table");
            let left_out: &[&str] = match source.table {
                Sealed::Asked => &["card_key", "version", "made_of"],
                _ => &[],
            };
            let wanted: Vec<_> =
                table.columns.iter().filter(|(column, _)| !left_out.contains(&column.as_str())).cloned().collect();
            let listed: Vec<_> = source.columns.iter().map(|(column, holds)| ((*column).to_owned(), *holds)).collect();
            assert_eq!(listed, wanted, "{}", table.name);
        }
        assert_eq!(SOURCES.len(), Sealed::ALL.len());
    }
}
