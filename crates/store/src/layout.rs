//! What the columns of lists are, remembered by name.

use crate::column::{Columns, document, key, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use desk::stock_file::Layout;
use jiff::Timestamp;
use trade::error::Noun;

impl Tx {
    /// The remembered layouts by name.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn layouts(&mut self) -> Result<Vec<Layout>, StoreError> {
        let rows = self.rows(query("SELECT body FROM list_layout ORDER BY name_key")).await?;
        rows.iter().map(|row| row.body("body")).collect()
    }

    /// Remembers a layout, in place of the one with its name. Capitals do not matter.
    ///
    /// # Errors
    /// The database failed.
    pub async fn put_layout(&mut self, layout: &Layout, now: Timestamp) -> Result<(), StoreError> {
        let body = document(&format!("the columns of “{}”", layout.name), layout)?;
        let upsert = query(
            "INSERT INTO list_layout (name_key, name, body, saved_at) VALUES ($1, $2, $3, $4)
             ON CONFLICT (name_key) DO UPDATE SET name = excluded.name, body = excluded.body,
                 saved_at = excluded.saved_at",
        );
        let upsert = upsert.bind(key(&layout.name)).bind(layout.name.clone()).bind(body).bind(time_text(now));
        self.change(upsert).await?;
        Ok(())
    }

    /// Forgets a layout.
    ///
    /// # Errors
    /// [`StoreError::Missing`] where there is none of this name.
    pub async fn remove_layout(&mut self, name: &str) -> Result<(), StoreError> {
        let removed = self.change(query("DELETE FROM list_layout WHERE name_key = $1").bind(key(name))).await?;
        if removed == 0 {
            return Err(StoreError::Missing { what: Noun::Layout, name: name.to_owned() });
        }
        Ok(())
    }
}
