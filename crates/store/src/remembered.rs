//! Documents that were read from the database before, kept as they came out of their text.
//!
//! Reading the text of the models takes the database a fraction of the time that it takes to make models of it again.
//! What is kept is given out only where the database holds the very same text now, in the transaction that asks: a
//! change is seen at once, whoever made it and from wherever. Of what is only appended to, what is kept grows by the rows
//! that came since.

use crate::column::{Columns, Row};
use crate::error::StoreError;
use crate::learned_row::LearnedRow;
use bench::finished_club::FinishedClub;
use bench::learned::Learned;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use trade::model::Library;
use trade::model::Model;
use trade::part::Part;
use trade::part::PartState;
use trade::scale_event::ScaleEvent;
use trade::shop::Shop;

/// What all transactions of one store share.
#[derive(Default)]
pub(crate) struct Remembered {
    pub library: Kept<Library>,
    pub shop: Kept<Shop>,
    pub learned: Kept<Learned>,
    pub scale_events: Grown<ScaleEvent>,
    pub finished_clubs: Grown<FinishedClub>,
    pub learned_rows: Kept<Vec<LearnedRow>>,
    pub parts: Counted,
    pub own_changes: OwnChanges,
}

/// How many transactions of this store have changed the database, or are about to.
#[derive(Default)]
pub(crate) struct OwnChanges(AtomicI64);

impl OwnChanges {
    /// Counts one that is about to be made to last; dropped unless it [is made](Begun::made), it counts no more.
    pub fn begin(this: &Arc<Remembered>) -> Begun {
        this.own_changes.0.fetch_add(1, Ordering::SeqCst);
        Begun { of: Arc::clone(this), made: false }
    }

    pub fn count(&self) -> i64 {
        self.0.load(Ordering::SeqCst)
    }
}

/// A change that is about to be made to last.
pub(crate) struct Begun {
    of: Arc<Remembered>,
    made: bool,
}

impl Begun {
    /// It lasts.
    pub fn made(mut self) {
        self.made = true;
    }
}

impl Drop for Begun {
    fn drop(&mut self) {
        if !self.made {
            self.of.own_changes.0.fetch_sub(1, Ordering::SeqCst);
        }
    }
}

impl std::fmt::Debug for Remembered {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Remembered").finish_non_exhaustive()
    }
}

/// What was made of a text, or of several, beside that text.
pub(crate) struct Kept<T>(Mutex<Option<(Vec<String>, Arc<T>)>>);

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Self(Mutex::new(None))
    }
}

impl<T> Kept<T> {
    /// What was made of this very text before.
    pub fn known(&self, text: &[String]) -> Option<Arc<T>> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.as_ref().filter(|(of, _)| of == text).map(|(_, made)| Arc::clone(made))
    }

    /// What was made of this very text before; otherwise what `make` makes of it now.
    ///
    /// # Errors
    /// Those of `make`.
    pub fn of(
        &self,
        text: Vec<String>,
        make: impl FnOnce(&[String]) -> Result<T, StoreError>,
    ) -> Result<Arc<T>, StoreError> {
        if let Some(made) = self.known(&text) {
            return Ok(made);
        }
        let made = Arc::new(make(&text)?);
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some((text, Arc::clone(&made)));
        Ok(made)
    }
}

/// Rows with the number that they are good for.
type Numbered<T> = (i64, Arc<Vec<T>>);

/// The parts in a state at a count of the changes of the stock. The database counts each of them, whoever makes it.
#[derive(Default)]
pub(crate) struct Counted(Mutex<BTreeMap<&'static str, Numbered<Part>>>);

impl Counted {
    /// The parts in a state at this very count.
    pub fn at(&self, state: PartState, count: i64) -> Option<Arc<Vec<Part>>> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.get(state.key()).filter(|(of, _)| *of == count).map(|(_, parts)| Arc::clone(parts))
    }

    /// Keeps what was read at a count. Not by a transaction that writes: it may be undone, and its count be counted again.
    pub fn keep(&self, state: PartState, count: i64, parts: &Arc<Vec<Part>>) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.insert(state.key(), (count, Arc::clone(parts)));
    }
}

/// Rows of tables that are only appended to, by what was asked for, with the number of the last one.
///
/// There is one writer at a time and each row is numbered one above the highest, so a row that comes later has a higher
/// number. A transaction that writes must not grow what is kept: it may still be undone.
pub(crate) struct Grown<T>(Mutex<BTreeMap<String, Numbered<T>>>);

impl<T> Default for Grown<T> {
    fn default() -> Self {
        Self(Mutex::default())
    }
}

impl<T: Clone> Grown<T> {
    /// What is kept of an answer, with the number of its last row; nothing where the one who asks sees only rows up to
    /// an earlier one.
    pub fn known(&self, of: &str, newest: i64) -> Option<Numbered<T>> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.get(of).filter(|(last, _)| *last <= newest).cloned()
    }

    /// What was kept and the rows that came since, kept again unless the one who asks is writing.
    pub fn grown(&self, of: &str, newest: i64, known: Option<Numbered<T>>, more: Vec<T>, writing: bool) -> Arc<Vec<T>> {
        let mut rows = known.map(|(_, rows)| rows).unwrap_or_default();
        Arc::make_mut(&mut rows).extend(more);
        if !writing {
            let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
            kept.insert(of.to_owned(), (newest, Arc::clone(&rows)));
        }
        rows
    }
}

/// The text of a column of each row.
pub(crate) fn texts(rows: &[Row], column: &'static str) -> Result<Vec<String>, StoreError> {
    rows.iter().map(|row| row.text(column)).collect()
}

/// The library of these models.
pub(crate) fn library(bodies: &[String]) -> Result<Library, StoreError> {
    bodies.iter().map(|body| crate::column::parsed::<Model>("body", body)).collect()
}

#[cfg(test)]
mod tests {
    use super::{Grown, Kept};
    use std::sync::Arc;

    #[test]
    fn rows_grow_by_those_that_came_since_and_not_by_those_that_may_be_undone() {
        let grown = Grown::<i32>::default();
        assert!(grown.known("a", 9).is_none());
        assert_eq!(*grown.grown("a", 2, None, vec![1, 2], false), [1, 2]);
        let known = grown.known("a", 3);
        assert_eq!(known.as_ref().map(|(last, rows)| (*last, rows.len())), Some((2, 2)));
        // A writer sees its own row; nobody else does.
        assert_eq!(*grown.grown("a", 3, known, vec![3], true), [1, 2, 3]);
        assert_eq!(grown.known("a", 3).map(|(last, rows)| (last, rows.len())), Some((2, 2)));
        // Who sees less than is kept is given nothing of it, and other rows are others' rows.
        assert!(grown.known("a", 1).is_none() && grown.known("b", 9).is_none());
    }

    #[test]
    fn a_text_is_made_once_and_another_text_anew() {
        let kept = Kept::<usize>::default();
        let text = |t: &str| vec![t.to_owned()];
        let first = kept.of(text("abc"), |t| Ok(t[0].len())).expect("made");
        let again = kept.of(text("abc"), |_| panic!("it was made before")).expect("kept");
        assert!(Arc::ptr_eq(&first, &again));
        assert_eq!(*kept.of(text("abcd"), |t| Ok(t[0].len())).expect("made"), 4);
        // Only the last is kept, and a text that nothing can be made of takes nothing away.
        kept.of(text("?"), |_| Err(crate::StoreError::NotWriting)).expect_err("cannot be made");
        assert_eq!(*kept.of(text("abcd"), |_| panic!("it was made before")).expect("kept"), 4);
    }
}
