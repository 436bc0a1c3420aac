//! Where the time comes from.

use jiff::{SignedDuration, Timestamp};
use std::sync::Mutex;

/// A source of the time.
pub trait Clock: Send + Sync {
    /// Now.
    fn now(&self) -> Timestamp;
}

/// The machine's clock.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> Timestamp {
        Timestamp::now()
    }
}

/// A clock that stands until it is moved: for tests and for the demonstration's past.
#[derive(Debug)]
pub struct SetClock(Mutex<Timestamp>);

impl SetClock {
    /// A clock that stands at a time.
    #[must_use]
    pub const fn at(time: Timestamp) -> Self {
        Self(Mutex::new(time))
    }

    /// Moves it on.
    pub fn advance(&self, by: SignedDuration) {
        if let Ok(mut now) = self.0.lock() {
            *now += by;
        }
    }
}

impl Clock for SetClock {
    fn now(&self) -> Timestamp {
        self.0.lock().map_or_else(|poisoned| *poisoned.into_inner(), |now| *now)
    }
}
