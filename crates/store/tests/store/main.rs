//! The store's promises, each held on SQLite and on a real PostgreSQL.
//!
//! The address of a PostgreSQL server that may make databases comes from `SETWRIGHT_TEST_POSTGRES`
//! (`scripts/postgres-for-tests` starts one); each test makes a database of its own there. Where the variable is not
//! set, those tests fail and say so; `SETWRIGHT_TEST_POSTGRES=none` leaves them out on purpose.

#[macro_use]
mod database;
mod samples;

mod adhesive_and_log;
mod archive;
mod backup;
mod batches;
mod customers;
mod documents;
mod earlier_schemas;
mod figures;
mod find;
mod history;
mod holds;
mod jobs;
mod killed;
mod learned;
mod opening;
mod orders;
mod parts;
mod readings;
mod recall;
mod remembered;
mod scales;
mod seals;
mod two_at_once;
mod unwritable;

/// A refusal of the store as a program reads it.
fn refused_words(error: &store::StoreError) -> String {
    words::check::InWords::in_words(fact::Refusal::new(error))
}
