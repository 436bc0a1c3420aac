//! What other screens are told.

use crate::stock_list::ImportProgress;
use serde::Serialize;
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

impl crate::App {
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
