//! The shop's one document.

use crate::column::{Columns, document, parsed, query, time_text};
use crate::error::StoreError;
use crate::model::UsedBy;
use crate::tx::Tx;
use jiff::Timestamp;
use std::sync::Arc;
use trade::shop::Shop;

impl Tx {
    /// The shop, once it was saved.
    ///
    /// # Errors
    /// The database failed, or the document in it is damaged.
    pub async fn shop(&mut self) -> Result<Option<Arc<Shop>>, StoreError> {
        let Some(row) = self.row(query("SELECT body FROM shop WHERE id = 1")).await? else { return Ok(None) };
        self.remembered().shop.of(vec![row.text("body")?], |text| parsed("body", &text[0])).map(Some)
    }

    /// Saves the shop in place of what was there.
    ///
    /// # Errors
    /// [`StoreError::NotStorable`] for a figure that is no number; the database failed.
    pub async fn save_shop(&mut self, shop: &Shop, now: Timestamp) -> Result<(), StoreError> {
        let body = document("the shop", shop)?;
        let upsert = query(
            "INSERT INTO shop (id, name, body, saved_at) VALUES (1, $1, $2, $3)
             ON CONFLICT (id) DO UPDATE SET name = excluded.name, body = excluded.body, saved_at = excluded.saved_at",
        );
        self.change(upsert.bind(shop.name.clone()).bind(body).bind(time_text(now))).await?;
        let models = shop.adhesive.iter().chain(&shop.tape).map(String::as_str);
        self.replace_model_uses(UsedBy::Shop, "1", models).await
    }
}
