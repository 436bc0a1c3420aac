//! Where the time comes from.

use jiff::{SignedDuration, Timestamp};
use std::sync::{LazyLock, Mutex};
use std::time::{Duration, Instant};

/// How far a tablet's clock and the server's may differ: an entry may bear a tablet's time.
pub(crate) const CLOCKS_DIFFER: SignedDuration = SignedDuration::from_mins(5);

/// A source of the time.
pub trait Clock: Send + Sync {
    /// Now, by the clock on the wall.
    fn now(&self) -> Timestamp;

    /// Time that has passed since some beginning, which setting the clock on the wall does not move.
    fn passed(&self) -> Duration;

    /// Whether [`passed`](Self::passed) goes on while the machine sleeps. Where it does not, the wall clock is ahead of it
    /// after each sleep, which is no fault.
    fn counts_sleep(&self) -> bool {
        true
    }
}

/// The machine's clock.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemClock;

impl SystemClock {
    /// Time since the machine was started, its sleep included: Linux tells it, to a hundredth of a second.
    fn since_boot() -> Option<Duration> {
        let text = std::fs::read_to_string("/proc/uptime").ok()?;
        let seconds: f64 = text.split_whitespace().next()?.parse().ok()?;
        Duration::try_from_secs_f64(seconds).ok()
    }
}

impl Clock for SystemClock {
    fn now(&self) -> Timestamp {
        Timestamp::now()
    }

    fn passed(&self) -> Duration {
        static BEGUN: LazyLock<Instant> = LazyLock::new(Instant::now);
        Self::since_boot().unwrap_or_else(|| BEGUN.elapsed())
    }

    fn counts_sleep(&self) -> bool {
        Self::since_boot().is_some()
    }
}

/// A clock that stands until it is moved: for tests and for the demonstration's past.
#[derive(Debug)]
pub struct SetClock(Mutex<(Timestamp, Duration)>);

impl SetClock {
    /// A clock that stands at a time.
    #[must_use]
    pub const fn at(time: Timestamp) -> Self {
        Self(Mutex::new((time, Duration::ZERO)))
    }

    /// Moves it on, as time passes.
    pub fn advance(&self, by: SignedDuration) {
        if let Ok(mut now) = self.0.lock() {
            now.0 += by;
            now.1 += by.unsigned_abs();
        }
    }

    /// Sets it to another time, as a hand or a network does: no time passes.
    pub fn set(&self, to: Timestamp) {
        if let Ok(mut now) = self.0.lock() {
            now.0 = to;
        }
    }

    fn read(&self) -> (Timestamp, Duration) {
        self.0.lock().map_or_else(|poisoned| *poisoned.into_inner(), |now| *now)
    }
}

impl Clock for SetClock {
    fn now(&self) -> Timestamp {
        self.read().0
    }

    fn passed(&self) -> Duration {
        self.read().1
    }
}

#[cfg(test)]
mod tests {
    use super::{Clock, SystemClock};
    use std::time::Duration;

    #[test]
    fn the_machines_time_passes() {
        let clock = SystemClock;
        let (before, wall) = (clock.passed(), clock.now());
        std::thread::sleep(Duration::from_millis(60));
        assert!(clock.passed() > before && clock.now() > wall);
    }
}
