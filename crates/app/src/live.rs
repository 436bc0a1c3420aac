//! What other screens are told.

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

/// Enough for every tablet of a shop to miss a second; a screen that lags further loads anew.
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

    pub(crate) fn tell(&self, job: Option<i64>, what: &'static str) {
        // Nobody listening is no error.
        let _ = self.live.send(LiveEvent { job, what });
    }
}
