//! A transaction, and the few ways in which the queries of the other modules use it.

use crate::engine::{Backend, Connection, Query, Row, Transaction, query};
use crate::error::StoreError;
use crate::remembered::{OwnChanges, Remembered};
use std::sync::Arc;

const STATE_NUMBER: &str = "SELECT number FROM data_state";

/// An open transaction. Dropping it undoes whatever was done in it.
pub struct Tx {
    inner: Transaction<'static>,
    place: Arc<str>,
    remembered: Arc<Remembered>,
    writing: bool,
    /// Whether anything was changed in it.
    changed: bool,
    by: String,
}

impl std::fmt::Debug for Tx {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Tx").field("place", &self.place).field("writing", &self.writing).finish_non_exhaustive()
    }
}

impl Tx {
    pub(crate) const fn new(
        inner: Transaction<'static>,
        place: Arc<str>,
        remembered: Arc<Remembered>,
        writing: bool,
    ) -> Self {
        Self { inner, place, remembered, writing, changed: false, by: String::new() }
    }

    /// Whether it may change things.
    pub(crate) const fn writing(&self) -> bool {
        self.writing
    }

    /// What this and earlier transactions have read.
    pub(crate) fn remembered(&self) -> Arc<Remembered> {
        Arc::clone(&self.remembered)
    }

    /// The same transaction, done by somebody: the lives of the parts that it touches say so.
    #[must_use]
    pub fn signed(mut self, by: &str) -> Self {
        by.trim().clone_into(&mut self.by);
        self
    }

    /// Who it is done by; empty where nobody said.
    pub(crate) fn by(&self) -> &str {
        &self.by
    }

    /// Makes everything done in it last. When this returns, it is on disk.
    ///
    /// # Errors
    /// Nothing was saved: the disk is full or failed, or the connection was lost.
    pub async fn commit(self) -> Result<(), StoreError> {
        self.commit_numbered().await.map(|_| ())
    }

    /// [`commit`](Self::commit), and the number of the state that the database is in with it.
    ///
    /// # Errors
    /// As [`commit`](Self::commit).
    pub async fn commit_numbered(mut self) -> Result<i64, StoreError> {
        if self.changed {
            crate::find_line::catch_up(&mut self.connection()).await?;
        }
        let number = if self.changed {
            self.number(query("UPDATE data_state SET number = number + 1 RETURNING number")).await?
        } else {
            self.number(query(STATE_NUMBER)).await?
        };
        let Self { inner, place, changed, remembered, .. } = self;
        // Counted before it can be seen, so that nobody takes it for another program's.
        let begun = changed.then(|| OwnChanges::begin(&remembered));
        inner.commit().await.map_err(|e| StoreError::from_sqlx(e, &place))?;
        if let Some(begun) = begun {
            begun.made();
        }
        Ok(number)
    }

    /// The number of the state that the whole database is in as this transaction sees it: every transaction that changes
    /// anything counts it up, whichever program made it. What was read at a number need not be read again at the same.
    /// None once this transaction has changed something itself: what it sees may still be undone.
    ///
    /// # Errors
    /// The database failed.
    pub async fn state_number(&mut self) -> Result<Option<i64>, StoreError> {
        if self.changed {
            return Ok(None);
        }
        self.number(query(STATE_NUMBER)).await.map(Some)
    }

    /// Whether the one field has the database's own means to look inside of words.
    pub(crate) async fn find_is_indexed(&mut self) -> Result<bool, StoreError> {
        let found = crate::find_line::indexed(&mut self.connection()).await;
        found.map_err(|e| StoreError::from_sqlx(e, &self.place))
    }

    /// Which database it is on.
    pub(crate) fn backend(&mut self) -> Backend {
        self.connection().backend()
    }

    pub(crate) fn connection(&mut self) -> Connection<'_> {
        self.inner.connection()
    }

    /// All rows.
    pub(crate) async fn rows(&mut self, query: Query) -> Result<Vec<Row>, StoreError> {
        let rows = self.connection().rows(query).await;
        rows.map_err(|e| StoreError::from_sqlx(e, &self.place))
    }

    /// The first row, where there is one.
    pub(crate) async fn row(&mut self, query: Query) -> Result<Option<Row>, StoreError> {
        let row = self.connection().row(query).await;
        row.map_err(|e| StoreError::from_sqlx(e, &self.place))
    }

    /// The whole number in the first column of the only row.
    pub(crate) async fn number(&mut self, query: Query) -> Result<i64, StoreError> {
        let found = self.connection().row(query).await.and_then(|row| row.ok_or(sqlx::Error::RowNotFound)?.get(0));
        found.map_err(|e| StoreError::from_sqlx(e, &self.place))
    }

    /// Whether the query gives any row.
    pub(crate) async fn any(&mut self, query: Query) -> Result<bool, StoreError> {
        Ok(self.row(query).await?.is_some())
    }

    /// Changes something; returns how many rows.
    pub(crate) async fn change(&mut self, query: Query) -> Result<u64, StoreError> {
        if !self.writing {
            return Err(StoreError::NotWriting);
        }
        self.changed = true;
        let done = self.connection().change(query).await;
        done.map_err(|e| StoreError::from_sqlx(e, &self.place))
    }

    /// The next number of a sequence: one more than the highest. Safe, since there is one writer at a time.
    pub(crate) async fn next(&mut self, query: Query) -> Result<i64, StoreError> {
        if !self.writing {
            return Err(StoreError::NotWriting);
        }
        self.number(query).await
    }
}
