//! The file of a shop as a whole: made beside its place and put there when it is complete, or erased.

use crate::error::StoreError;
use crate::open::Address;
use crate::side_file::{remove_with_side_files, with_suffix};
use std::path::{Path, PathBuf};

/// A shop's database in a file.
#[derive(Debug, Clone)]
pub struct ShopFile {
    path: PathBuf,
    url: String,
}

impl ShopFile {
    /// The file of an address; none where it is in memory or on a server.
    ///
    /// # Errors
    /// [`StoreError::Address`]
    pub fn of(url: &str) -> Result<Option<Self>, StoreError> {
        let address = Address::read(url)?;
        let file = address.is_file().then(|| Self { path: PathBuf::from(&address.place), url: url.to_owned() });
        Ok(file)
    }

    /// Whether it is there.
    #[must_use]
    pub fn exists(&self) -> bool {
        self.path.exists()
    }

    /// Erases it, with the files that SQLite keeps beside it.
    ///
    /// # Errors
    /// [`StoreError::InUseElsewhere`] while another program has it open; [`StoreError::CannotOpen`].
    pub async fn erase(&self) -> Result<(), StoreError> {
        self.leave_log().await?;
        remove_with_side_files(&self.path)
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Takes everything of the write-ahead log into the file, where nobody else has it open.
    ///
    /// # Errors
    /// [`StoreError::InUseElsewhere`] while another program has it open; what the database says.
    pub(crate) async fn leave_log(&self) -> Result<(), StoreError> {
        let place = self.path.display().to_string();
        let failed = |e| StoreError::from_sqlx(e, &place);
        let mut conn = Address::read(&self.url)?.options.connect().await.map_err(failed)?;
        // Leaving the write-ahead log is refused while anybody else has the file open, which nothing else would tell.
        let alone = conn.lend().run("PRAGMA busy_timeout = 500; PRAGMA journal_mode = DELETE").await;
        let closed = conn.close().await;
        match alone.map_err(failed) {
            Err(StoreError::Busy) => return Err(StoreError::InUseElsewhere { place: place.clone() }),
            other => other?,
        }
        closed.map_err(failed)
    }

    /// Begins to make it, beside its place. What an earlier beginning left there is removed.
    ///
    /// # Errors
    /// [`StoreError::CannotOpen`]
    pub fn begin(&self) -> Result<Making, StoreError> {
        let beside = with_suffix(&self.path, ".loading");
        remove_with_side_files(&beside)?;
        Ok(Making { url: format!("sqlite://{}", beside.display()), beside, path: self.path.clone() })
    }
}

/// A shop's file that is being made beside its place. One that is never finished is no shop.
#[derive(Debug)]
pub struct Making {
    url: String,
    beside: PathBuf,
    path: PathBuf,
}

impl Making {
    /// Address to open meanwhile.
    #[must_use]
    pub fn url(&self) -> &str {
        &self.url
    }

    /// Removes what was made of it.
    ///
    /// # Errors
    /// [`StoreError::CannotOpen`]
    pub fn give_up(self) -> Result<(), StoreError> {
        remove_with_side_files(&self.beside)
    }

    /// Puts the file in its place, once every connection to it is closed.
    ///
    /// # Errors
    /// [`StoreError::CannotOpen`] where another file came there meanwhile, or the system refuses.
    pub fn finish(self) -> Result<(), StoreError> {
        let wal = with_suffix(&self.beside, "-wal");
        let left = wal.metadata().map(|m| m.len()).unwrap_or(0);
        let refused = |problem: String| StoreError::CannotOpen { place: self.path.display().to_string(), problem };
        if left > 0 {
            return Err(refused(format!("{} still holds entries", wal.display())));
        }
        if self.path.exists() {
            return Err(refused("another start made it meanwhile".into()));
        }
        std::fs::rename(&self.beside, &self.path).map_err(|e| refused(e.to_string()))?;
        remove_with_side_files(&self.beside)
    }
}
