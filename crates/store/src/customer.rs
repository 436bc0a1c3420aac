//! Customers: their rows, what belongs to them, and what is left of one who was deleted.

use crate::column::{Columns, Query, Row, anywhere, document, query, time_text};
use crate::engine::Backend;
use crate::error::{StoreError, Stored};
use crate::model::UsedBy;
use crate::open::Store;
use crate::sheet::SheetRow;
use crate::tx::Tx;
use jiff::Timestamp;
use trade::customer::{Customer, NameStands, code, name_key};
use trade::error::Noun;
use trade::id::{JobId, SheetId};
use trade::job::Job;

/// A customer as they are saved.
#[derive(Debug, Clone, PartialEq)]
pub struct CustomerRow {
    /// Running number; never given twice.
    pub number: i64,
    /// What is known of them; nothing at all once they were deleted.
    pub customer: Customer,
    /// When they were deleted on request, where they were.
    pub deleted_at: Option<Timestamp>,
    /// Goes up by one with every change.
    pub version: i64,
    /// When it was last saved.
    pub saved_at: Timestamp,
}

/// A customer as a list shows them.
#[derive(Debug, Clone, PartialEq)]
pub struct CustomerLine {
    /// Running number.
    pub number: i64,
    /// What is known of them.
    pub customer: Customer,
    /// How many sheets are theirs, approved or not.
    pub sheets: i64,
    /// How many jobs are theirs, those that are over among them.
    pub jobs: i64,
}

/// A name on sheets that belong to no customer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FreeName {
    /// As it stands on the latest of the sheets.
    pub name: String,
    /// How many sheets carry it.
    pub sheets: i64,
}

const COLUMNS: &str = "number, body, deleted_at, version, saved_at";

impl Tx {
    /// The number for the next customer. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_customer_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM customer")).await
    }

    /// Saves a new customer, with the number and version that the row carries.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when the number is there already; [`StoreError::NotStorable`] for a figure that is no
    /// number.
    pub async fn insert_customer(&mut self, row: &CustomerRow) -> Result<(), StoreError> {
        if self.any(query("SELECT 1 FROM customer WHERE number = $1").bind(row.number)).await? {
            return Err(StoreError::CodeTaken { code: code(row.number) });
        }
        let insert = query(
            "INSERT INTO customer (number, name, name_key, search, body, deleted_at, version, saved_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        );
        let insert = insert
            .bind(row.number)
            .bind(row.customer.name.clone())
            .bind(name_key(&row.customer.name))
            .bind(search(row.number, &row.customer))
            .bind(document("the customer", &row.customer)?)
            .bind(row.deleted_at.map(time_text))
            .bind(row.version)
            .bind(time_text(row.saved_at));
        self.change(insert).await?;
        Ok(())
    }

    /// Saves a changed customer over the version that the row was loaded at. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when another change came first; [`StoreError::Missing`]; [`StoreError::NotStorable`].
    pub async fn update_customer(&mut self, row: &CustomerRow, now: Timestamp) -> Result<i64, StoreError> {
        let update = query(
            "UPDATE customer SET name = $1, name_key = $2, search = $3, body = $4, deleted_at = $5,
                 version = version + 1, saved_at = $6
             WHERE number = $7 AND version = $8",
        );
        let gone = row.deleted_at.is_some();
        let update = update
            .bind(row.customer.name.clone())
            .bind(name_key(&row.customer.name))
            .bind(if gone { String::new() } else { search(row.number, &row.customer) })
            .bind(document("the customer", &row.customer)?)
            .bind(row.deleted_at.map(time_text))
            .bind(time_text(now))
            .bind(row.number)
            .bind(row.version);
        if self.change(update).await? > 0 {
            return Ok(row.version + 1);
        }
        let saved = self.row(query("SELECT version FROM customer WHERE number = $1").bind(row.number)).await?;
        Err(match saved {
            Some(saved) => StoreError::Stale {
                what: Stored::Customer { customer: row.number },
                saved_version: saved.whole("version")?,
            },
            None => StoreError::Missing { what: Noun::Customer, name: code(row.number) },
        })
    }

    /// The customer with this number, also one who was deleted.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn customer(&mut self, number: i64) -> Result<Option<CustomerRow>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM customer WHERE number = $1");
        let row = self.row(query(sqlx::AssertSqlSafe(sql)).bind(number)).await?;
        row.as_ref().map(customer_of).transpose()
    }

    /// Customers by name, at most `limit`: all, or those of whom each word of a text occurs in code, name or contacts.
    /// Capitals do not matter.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn customer_lines(&mut self, text: &str, limit: i64) -> Result<Vec<CustomerLine>, StoreError> {
        let words: Vec<String> = text.split_whitespace().map(like).collect();
        let mut sql = "SELECT c.number, c.body,
                 (SELECT COUNT(*) FROM sheet s WHERE s.customer = c.number) AS sheets,
                 (SELECT COUNT(*) FROM job j WHERE j.customer = c.number) AS jobs
             FROM customer c WHERE c.deleted_at IS NULL"
            .to_owned();
        for place in 1..=words.len() {
            sql.push_str(&format!(" AND c.search LIKE ${place} ESCAPE '!'"));
        }
        sql.push_str(&format!(" ORDER BY c.name_key, c.number LIMIT ${}", words.len() + 1));
        let lookup = words.into_iter().fold(query(sqlx::AssertSqlSafe(sql)), Query::bind);
        let rows = self.rows(lookup.bind(limit.max(0))).await?;
        rows.iter()
            .map(|row| {
                Ok(CustomerLine {
                    number: row.whole("number")?,
                    customer: row.body("body")?,
                    sheets: row.whole("sheets")?,
                    jobs: row.whole("jobs")?,
                })
            })
            .collect()
    }

    /// The numbers of the customers with this name, lowest first. Capitals and the blanks between words do not matter.
    ///
    /// # Errors
    /// The database failed.
    pub async fn customers_named(&mut self, name: &str) -> Result<Vec<i64>, StoreError> {
        let lookup = query("SELECT number FROM customer WHERE name_key = $1 AND deleted_at IS NULL ORDER BY number");
        let rows = self.rows(lookup.bind(name_key(name))).await?;
        rows.iter().map(|row| row.whole("number")).collect()
    }

    /// The sheets of a customer, those saved last first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn sheets_of_customer(&mut self, number: i64) -> Result<Vec<SheetRow>, StoreError> {
        let lookup = query("SELECT id FROM sheet WHERE customer = $1 ORDER BY saved_at DESC, seq DESC");
        let mut found = Vec::new();
        for row in self.rows(lookup.bind(number)).await? {
            found.extend(self.sheet(&SheetId(row.text("id")?)).await?);
        }
        Ok(found)
    }

    /// The jobs of a customer, by number.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn jobs_of_customer(&mut self, number: i64) -> Result<Vec<Job>, StoreError> {
        let mut found = Vec::new();
        for row in self.rows(query("SELECT number FROM job WHERE customer = $1 ORDER BY number").bind(number)).await? {
            found.extend(self.job_by_number(row.whole("number")?).await?);
        }
        Ok(found)
    }

    /// Codes of the parts of a customer that are in the shop or on their way: free, held, ordered or pulled.
    ///
    /// # Errors
    /// The database failed.
    pub async fn parts_here_of(&mut self, number: i64) -> Result<Vec<String>, StoreError> {
        let lookup = query(
            "SELECT code FROM part WHERE owner = $1 AND state IN ('free', 'held', 'ordered', 'pulled')
                 AND (count IS NULL OR count > 0) ORDER BY seq",
        );
        self.rows(lookup.bind(number)).await?.iter().map(|row| row.text("code")).collect()
    }

    /// Codes of the parts that a job holds or used and that belong to another customer than this one.
    ///
    /// # Errors
    /// The database failed.
    pub async fn parts_of_job_not_of(&mut self, job: &JobId, customer: Option<i64>) -> Result<Vec<String>, StoreError> {
        let lookup = query(
            "SELECT code FROM part WHERE owner IS NOT NULL AND owner <> $2
                 AND (job = $1 OR id IN (SELECT part FROM part_hold WHERE job = $1)) ORDER BY seq",
        );
        let rows = self.rows(lookup.bind(job.0.clone()).bind(customer.unwrap_or(0))).await?;
        rows.iter().map(|row| row.text("code")).collect()
    }

    /// The names on sheets that belong to no customer, by name.
    ///
    /// # Errors
    /// The database failed.
    pub async fn free_names(&mut self) -> Result<Vec<FreeName>, StoreError> {
        let rows = self.rows(query("SELECT player FROM sheet WHERE customer IS NULL ORDER BY seq")).await?;
        let mut names: std::collections::BTreeMap<String, FreeName> = std::collections::BTreeMap::new();
        for row in rows {
            let name = row.text("player")?;
            let key = name_key(&name);
            if key.is_empty() {
                continue;
            }
            let one = names.entry(key).or_insert_with(|| FreeName { name: name.clone(), sheets: 0 });
            one.name = name;
            one.sheets += 1;
        }
        Ok(names.into_values().collect())
    }

    /// The sheets that carry a name and belong to no customer, those saved last first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn sheets_of_name(&mut self, name: &str) -> Result<Vec<SheetRow>, StoreError> {
        let wanted = name_key(name);
        let lookup = query("SELECT id, player FROM sheet WHERE customer IS NULL ORDER BY saved_at DESC, seq DESC");
        let mut found = Vec::new();
        for row in self.rows(lookup).await? {
            if name_key(&row.text("player")?) == wanted {
                found.extend(self.sheet(&SheetId(row.text("id")?)).await?);
            }
        }
        Ok(found)
    }

    /// Removes a sheet of which no job was made.
    ///
    /// # Errors
    /// [`StoreError::Missing`] when there is none, or a job was made of it.
    pub async fn remove_sheet(&mut self, id: &SheetId) -> Result<(), StoreError> {
        let remove = query(
            "DELETE FROM sheet WHERE id = $1 AND approved_job IS NULL
                 AND NOT EXISTS (SELECT 1 FROM job WHERE job.sheet_id = sheet.id)",
        );
        if self.change(remove.bind(id.0.clone())).await? == 0 {
            return Err(StoreError::Missing { what: Noun::Sheet, name: id.0.clone() });
        }
        self.replace_model_uses(UsedBy::Sheet, id.as_str(), None).await
    }

    /// In how many entries that are never changed, or that nobody looks through, a name stands.
    ///
    /// # Errors
    /// The database failed.
    pub async fn name_stands(&mut self, name: &str) -> Result<Vec<(NameStands, i64)>, StoreError> {
        let places: [(NameStands, &[&str]); 7] = [
            (NameStands::Log, &["SELECT COUNT(*) FROM event WHERE LOWER(body) LIKE $1 ESCAPE '!'"]),
            (
                NameStands::Readings,
                &[
                    "SELECT COUNT(*) FROM reading_taken_back WHERE LOWER(why) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM reading_insisted WHERE LOWER(why) LIKE $1 ESCAPE '!'",
                ],
            ),
            (NameStands::Batches, &["SELECT COUNT(*) FROM batch_taken_back WHERE LOWER(why) LIKE $1 ESCAPE '!'"]),
            (
                NameStands::Parts,
                &[
                    "SELECT COUNT(*) FROM part_life WHERE LOWER(reason) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM part WHERE LOWER(place) LIKE $1 ESCAPE '!' OR LOWER(lot) LIKE $1 ESCAPE '!'",
                ],
            ),
            (
                NameStands::Orders,
                &[
                    "SELECT COUNT(*) FROM part_order WHERE LOWER(note) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM part_order_event WHERE LOWER(note) LIKE $1 ESCAPE '!'",
                ],
            ),
            (
                NameStands::Clubs,
                &[
                    "SELECT COUNT(*) FROM club WHERE owner IS NULL AND LOWER(body) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM club_event WHERE LOWER(body) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM club_mark WHERE LOWER(word) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM club_mark_cleared WHERE LOWER(word) LIKE $1 ESCAPE '!'",
                ],
            ),
            (
                NameStands::Shop,
                &[
                    "SELECT COUNT(*) FROM learned WHERE LOWER(reason) LIKE $1 ESCAPE '!'",
                    "SELECT COUNT(*) FROM scale_event WHERE LOWER(body) LIKE $1 ESCAPE '!'",
                ],
            ),
        ];
        let wanted = like(name.trim());
        let mut found = Vec::new();
        for (place, lookups) in places {
            let mut n = 0;
            for sql in lookups {
                n += self.number(query(*sql).bind(wanted.clone())).await?;
            }
            if n > 0 {
                found.push((place, n));
            }
        }
        Ok(found)
    }
}

impl Store {
    /// Takes what was overwritten or deleted out of the log that SQLite keeps beside the file, as far as nobody reads it just
    /// now. Nothing to do on a server or in memory.
    ///
    /// # Errors
    /// What the database says.
    pub async fn empty_log(&self) -> Result<(), StoreError> {
        let Ok(own) = self.own_file() else { return Ok(()) };
        let mut conn = own.connect().await.map_err(|e| self.failed(e))?;
        let done = match conn.lend().backend() {
            Backend::Sqlite => conn.lend().row(query("PRAGMA wal_checkpoint(TRUNCATE)")).await.map(|_| ()),
            Backend::Postgres => Ok(()),
        };
        conn.close().await.map_err(|e| self.failed(e))?;
        done.map_err(|e| self.failed(e))
    }
}

/// A text as a pattern that finds it anywhere, whatever its capitals.
fn like(text: &str) -> String {
    anywhere(&text.to_lowercase())
}

fn search(number: i64, customer: &Customer) -> String {
    [&code(number), &customer.name, &customer.phone, &customer.email, &customer.address]
        .map(String::as_str)
        .join("\n")
        .to_lowercase()
}

fn customer_of(row: &Row) -> Result<CustomerRow, StoreError> {
    Ok(CustomerRow {
        number: row.whole("number")?,
        customer: row.body("body")?,
        deleted_at: row.maybe_time("deleted_at")?,
        version: row.whole("version")?,
        saved_at: row.time("saved_at")?,
    })
}
