//! What other screens are told.

use crate::AppError;
use crate::stock_list::ImportProgress;
use serde::Serialize;
use std::sync::{Mutex, PoisonError};
use tokio::sync::broadcast;

/// Something changed that another screen may be showing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LiveEvent {
    /// Number of the job; none where it concerns the whole shop.
    pub job: Option<i64>,
    /// What happened: "reading", "plan", "batch", "stock".
    pub what: &'static str,
}

/// Enough for every tablet of a shop to miss a second; a screen that lags further loads again.
const KEPT: usize = 256;

pub(crate) fn channel() -> broadcast::Sender<LiveEvent> {
    broadcast::channel(KEPT).0
}

/// How many changes of other programs were told.
#[derive(Debug, Default)]
pub(crate) struct OthersTold(Mutex<Option<i64>>);

impl crate::App {
    /// Tells the screens when another program, such as the command line or a second server, has changed the shop since this was
    /// last asked. The database numbers its states, so that no program has to tell another. Asked each second or oftener.
    ///
    /// # Errors
    /// What the store says.
    pub async fn hear_other_programs(&self) -> Result<bool, AppError> {
        let now = self.store.changes_of_others().await?;
        let mut told = self.others_told.0.lock().unwrap_or_else(PoisonError::into_inner);
        let before = *told.get_or_insert(now);
        if now <= before {
            return Ok(false);
        }
        *told = Some(now);
        drop(told);
        self.tell(None, "elsewhere");
        Ok(true)
    }

    /// Listens to what happens from now on.
    #[must_use]
    pub fn listen(&self) -> broadcast::Receiver<LiveEvent> {
        self.live.subscribe()
    }

    /// Hears how far imports have come from now on.
    #[must_use]
    pub fn hear_imports(&self) -> broadcast::Receiver<ImportProgress> {
        self.imports.subscribe()
    }

    /// Tells how far an import has come, to whoever sent it under this key.
    pub fn tell_import(&self, key: &str, done: usize, all: usize) {
        // Nobody listening is no error.
        let _ = self.imports.send(ImportProgress { key: key.to_owned(), done, all });
    }

    pub(crate) fn tell(&self, job: Option<i64>, what: &'static str) {
        // Nobody listening is no error.
        let _ = self.live.send(LiveEvent { job, what });
    }
}
