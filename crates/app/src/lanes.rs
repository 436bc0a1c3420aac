//! Lanes for work that takes the processor: away from the threads that answer pages, and a few at a time.
//!
//! A page takes some milliseconds and is made on the thread that answers. What takes longer would hold up every page
//! behind it, so it goes on a lane: what a builder at the bench waits for on one, lists, recordings and calculations on
//! the other, so that nobody at the bench waits for somebody's list. Each lane takes a few at once and leaves the other
//! cores to the pages.

use crate::App;
use std::sync::Arc;
use tokio::runtime::{Handle, RuntimeFlavor};
use tokio::sync::Semaphore;

/// Who waits for a piece of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Lane {
    /// A builder with a reading in hand: tens of milliseconds.
    Bench,
    /// Somebody at the desk: a list, a recording, a calculation; up to seconds.
    Desk,
}

/// The lanes of a program.
#[derive(Debug, Clone)]
pub(crate) struct Lanes {
    bench: Arc<Semaphore>,
    desk: Arc<Semaphore>,
}

impl Default for Lanes {
    fn default() -> Self {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        let each = || Arc::new(Semaphore::new((cores / 2).max(1)));
        Self { bench: each(), desk: each() }
    }
}

impl App {
    /// Does a piece of work on a lane, once it is its turn. Must not be called while a transaction is open that others
    /// wait for: they would wait for the lane as well.
    pub(crate) async fn on_lane<T>(&self, lane: Lane, work: impl FnOnce() -> T) -> T {
        let turns = match lane {
            Lane::Bench => &self.lanes.bench,
            Lane::Desk => &self.lanes.desk,
        };
        // The lanes are never closed; without a turn the work is done all the same.
        let _turn = turns.acquire().await;
        match Handle::current().runtime_flavor() {
            // Other requests of this thread go on with another one.
            RuntimeFlavor::MultiThread => tokio::task::block_in_place(work),
            // A test on one thread has nobody to hold up.
            _ => work(),
        }
    }
}
