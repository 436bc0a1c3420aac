//! The whole shop as a text, for moving it to another database and for keeping it longer than any program.

use crate::backup::Held;
use crate::{App, AppError};
use jiff::Timestamp;
use serde::Serialize;
use std::collections::BTreeMap;
use std::path::Path;
use store::{Archived, Store, fill_from_file};
use utoipa::ToSchema;

/// An archive that was written, or that a shop was made from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Archive {
    /// The file.
    pub path: String,
    /// Number of the newest migration that the shop had when the archive was made.
    pub schema: i64,
    /// When it was made.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// Rows by table.
    pub rows: BTreeMap<String, u64>,
    /// SHA-256 of its lines before the last, in hexadecimal digits: the same figure means the same archive.
    pub sha256: String,
    /// What the shop holds.
    pub held: Held,
}

impl Archive {
    fn of(path: &Path, archived: Archived, held: Held) -> Self {
        let Archived { schema, made_at, rows, sha256, .. } = archived;
        Self { path: path.display().to_string(), schema, made_at, rows: rows.into_iter().collect(), sha256, held }
    }
}

impl App {
    /// Writes the whole shop into a new file, in the state of one moment, while it is in use.
    ///
    /// # Errors
    /// A place that is taken or cannot be written; what the store says.
    pub async fn archive_to(&self, path: &Path) -> Result<Archive, AppError> {
        let archived = self.store.archive_to(path, self.now()).await?;
        Ok(Archive::of(path, archived, self.held().await?))
    }
}

/// Sets up a new shop from an archive, in SQLite or PostgreSQL, and brings it up to date. An existing shop is never overwritten.
///
/// # Errors
/// A shop is there already; an archive that is cut short, changed or of a newer version; what the store says.
pub async fn unpack(url: &str, path: &Path) -> Result<Archive, AppError> {
    let archived = fill_from_file(url, path).await?;
    let store = Store::open_existing(url).await?;
    let held = store.contents().await;
    store.close().await;
    Ok(Archive::of(path, archived, held?.into()))
}
