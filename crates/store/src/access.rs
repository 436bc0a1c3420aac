//! Keys of tablets and programs, and the digits that let a tablet in.

use crate::column::{Columns, Row, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use jiff::Timestamp;
use trade::access::{AccessKey, KeyHolder, KeyRole};

/// Digits that are shown to let a tablet in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoorCode {
    /// Running number.
    pub number: i64,
    /// What the shop will call the tablet.
    pub name: String,
    /// What it will be allowed.
    pub role: KeyRole,
    /// Who let it in.
    pub shown_by: String,
    /// When the digits are of no use any more.
    pub ends_at: Timestamp,
}

const COLUMNS: &str =
    "number, name, holder, role, given_at, given_by, ends_at, used_at, used_from, withdrawn_at, withdrawn_by";

impl Tx {
    /// The number for the next key. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_key_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM access_key")).await
    }

    /// Keeps a new key, by the hash of its secret.
    ///
    /// # Errors
    /// The database failed; a number or secret that is there already.
    pub async fn insert_key(&mut self, key: &AccessKey, secret_hash: &str) -> Result<(), StoreError> {
        let insert = query(
            "INSERT INTO access_key (number, secret_hash, name, holder, role, given_at, given_by, ends_at, used_at, used_from)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)",
        );
        let insert = insert
            .bind(key.number)
            .bind(secret_hash.to_owned())
            .bind(key.name.clone())
            .bind(key.holder.key().to_owned())
            .bind(key.role.key().to_owned())
            .bind(time_text(key.given_at))
            .bind(key.given_by.clone())
            .bind(key.ends_at.map(time_text))
            .bind(key.used_at.map(time_text))
            .bind(key.used_from.clone());
        self.change(insert).await?;
        Ok(())
    }

    /// Every key that was ever given, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn access_keys(&mut self) -> Result<Vec<AccessKey>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM access_key ORDER BY number DESC");
        self.rows(query(sqlx::AssertSqlSafe(sql))).await?.iter().map(key_of).collect()
    }

    /// The key whose secret has this hash, also one that was taken away.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn key_of_secret(&mut self, secret_hash: &str) -> Result<Option<AccessKey>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM access_key WHERE secret_hash = $1");
        let row = self.row(query(sqlx::AssertSqlSafe(sql)).bind(secret_hash.to_owned())).await?;
        row.as_ref().map(key_of).transpose()
    }

    /// The key with this number, also one that was taken away.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn access_key(&mut self, number: i64) -> Result<Option<AccessKey>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM access_key WHERE number = $1");
        let row = self.row(query(sqlx::AssertSqlSafe(sql)).bind(number)).await?;
        row.as_ref().map(key_of).transpose()
    }

    /// Notes that a key was used.
    ///
    /// # Errors
    /// The database failed.
    pub async fn note_key_used(&mut self, number: i64, at: Timestamp, from: &str) -> Result<(), StoreError> {
        let update = query("UPDATE access_key SET used_at = $1, used_from = $2 WHERE number = $3");
        self.change(update.bind(time_text(at)).bind(from.to_owned()).bind(number)).await?;
        Ok(())
    }

    /// Takes a key away. Returns whether there was one that had not been taken away before.
    ///
    /// # Errors
    /// The database failed.
    pub async fn withdraw_key(&mut self, number: i64, at: Timestamp, by: &str) -> Result<bool, StoreError> {
        let update = query(
            "UPDATE access_key SET withdrawn_at = $1, withdrawn_by = $2 WHERE number = $3 AND withdrawn_at IS NULL",
        );
        Ok(self.change(update.bind(time_text(at)).bind(by.to_owned()).bind(number)).await? > 0)
    }

    /// Keeps digits that are shown, by their hash. Returns their number.
    ///
    /// # Errors
    /// The database failed.
    pub async fn insert_door_code(&mut self, code: &DoorCode, code_hash: &str) -> Result<i64, StoreError> {
        let number = self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM door_code")).await?;
        let insert = query(
            "INSERT INTO door_code (number, code_hash, name, role, shown_by, ends_at) VALUES ($1, $2, $3, $4, $5, $6)",
        );
        let insert = insert
            .bind(number)
            .bind(code_hash.to_owned())
            .bind(code.name.clone())
            .bind(code.role.key().to_owned())
            .bind(code.shown_by.clone())
            .bind(time_text(code.ends_at));
        self.change(insert).await?;
        Ok(number)
    }

    /// The digits with this hash that are still good at a time and have let nobody in.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn door_code(&mut self, code_hash: &str, now: Timestamp) -> Result<Option<DoorCode>, StoreError> {
        let lookup = query(
            "SELECT number, name, role, shown_by, ends_at FROM door_code
             WHERE code_hash = $1 AND ends_at > $2 AND given_key IS NULL ORDER BY number DESC LIMIT 1",
        );
        let row = self.row(lookup.bind(code_hash.to_owned()).bind(time_text(now))).await?;
        let code = |row: &Row| {
            Ok(DoorCode {
                number: row.whole("number")?,
                name: row.text("name")?,
                role: row.word("role", KeyRole::from_key)?,
                shown_by: row.text("shown_by")?,
                ends_at: row.time("ends_at")?,
            })
        };
        row.as_ref().map(code).transpose()
    }

    /// Notes which key digits have given; they let nobody in any more.
    ///
    /// # Errors
    /// The database failed.
    pub async fn spend_door_code(&mut self, number: i64, given_key: i64) -> Result<(), StoreError> {
        let update = query("UPDATE door_code SET given_key = $1 WHERE number = $2");
        self.change(update.bind(given_key).bind(number)).await?;
        Ok(())
    }

    /// Ends every code that is shown.
    ///
    /// # Errors
    /// The database failed.
    pub async fn end_door_codes(&mut self, now: Timestamp) -> Result<(), StoreError> {
        let now = time_text(now);
        self.change(query("UPDATE door_code SET ends_at = $1 WHERE ends_at > $2").bind(now.clone()).bind(now)).await?;
        Ok(())
    }
}

fn key_of(row: &Row) -> Result<AccessKey, StoreError> {
    Ok(AccessKey {
        number: row.whole("number")?,
        name: row.text("name")?,
        holder: row.word("holder", KeyHolder::from_key)?,
        role: row.word("role", KeyRole::from_key)?,
        given_at: row.time("given_at")?,
        given_by: row.text("given_by")?,
        ends_at: row.maybe_time("ends_at")?,
        used_at: row.maybe_time("used_at")?,
        used_from: row.maybe_text("used_from")?,
        withdrawn_at: row.maybe_time("withdrawn_at")?,
        withdrawn_by: row.maybe_text("withdrawn_by")?,
    })
}
