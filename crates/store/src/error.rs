//! What can go wrong in the store, in words for the person who reads it: what happened, where, what to do next.

use thiserror::Error;
use trade::part::PartState;

/// A refusal or failure of the store.
///
/// Everything that a caller can run into by what people do (stale, taken, missing …) is found before anything is
/// written, so the transaction stays usable after it, on SQLite and PostgreSQL alike.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The address of the database cannot be read.
    #[error(
        "the database address “{url}” cannot be used: {problem}. Give sqlite:///path/to/file.db or postgres://user@host/name"
    )]
    Address {
        /// The address, without a password.
        url: String,
        /// What is wrong with it.
        problem: String,
    },
    /// There is no database yet where one must be.
    #[error(
        "there is no shop yet at {place}. `setwright serve` makes one; if yours lies elsewhere, name it with --database"
    )]
    NoShop {
        /// Where it was looked for.
        place: String,
    },
    /// The database was written by a newer version of this program.
    #[error(
        "the database {place} has schema {found}, and this version knows schemas up to {known}. Start the newer \
         version that wrote it; nothing was changed"
    )]
    Newer {
        /// Where it is.
        place: String,
        /// Schema found.
        found: i64,
        /// Newest schema that this program knows.
        known: i64,
    },
    /// The file holds something else than a database.
    #[error(
        "{place} is not a database file, or its beginning is damaged. Check the path; if it is the right one, keep this \
         file and put the last copy of it in its place. Nothing was changed"
    )]
    NotADatabase {
        /// The path.
        place: String,
    },
    /// The database belongs to another program.
    #[error(
        "the database {place} already holds the table “{table}” of another program. Nothing was changed: give this \
         program a database of its own"
    )]
    NotOurs {
        /// Where it is.
        place: String,
        /// One of the foreign tables.
        table: String,
    },
    /// The schema is not what the migrations make.
    #[error(
        "the database {place} was changed by hand: {problem}. Restore the last backup, or put back what is missing; \
         until then nothing is written to it"
    )]
    SchemaDamaged {
        /// Where it is.
        place: String,
        /// What is missing or altered.
        problem: String,
    },
    /// The file may be read but not written.
    #[error("the database {place} cannot be written. Give this user write permission on the file and on its folder")]
    ReadOnly {
        /// Where it is.
        place: String,
    },
    /// No room for another byte.
    #[error(
        "the disk of the database {place} is full, so the entry was NOT saved. Free some space, then enter it again; \
         everything acknowledged before is safe"
    )]
    DiskFull {
        /// Where it is.
        place: String,
    },
    /// The file could not be opened or made.
    #[error(
        "the database {place} cannot be opened: {problem}. Check that the folder exists and that this user may write in it"
    )]
    CannotOpen {
        /// Where it should be.
        place: String,
        /// What the system said.
        problem: String,
    },
    /// The server does not answer or turns us away.
    #[error(
        "the database server {place} cannot be used: {problem}. Check that it runs, the address, user and password, and that the database exists"
    )]
    Server {
        /// Where it should be.
        place: String,
        /// What was said.
        problem: String,
    },
    /// The disk failed, or the file is torn.
    #[error(
        "the disk of the database {place} fails: {problem}. The entry was NOT saved. Check the disk and its free space, and restore the last backup if this comes again"
    )]
    Disk {
        /// Where it is.
        place: String,
        /// What was said.
        problem: String,
    },
    /// The file is to be replaced or erased while another program has it open.
    #[error("another program has {place} open, so it was left as it is. Stop that program first")]
    InUseElsewhere {
        /// The path.
        place: String,
    },
    /// Somebody else held the database for too long, or two writers met.
    #[error("the database is busy with another entry, so this one was not saved. Enter it again")]
    Busy,
    /// Somebody else changed it in between.
    #[error(
        "{what} was changed on another screen in the meantime (it is at version {saved_version} now), so nothing was \
         overwritten. Load it anew, look at what changed, and enter it again"
    )]
    Stale {
        /// What was changed.
        what: String,
        /// Version that is saved now.
        saved_version: i64,
    },
    /// A code, number or identity that must be unique is there already.
    #[error("“{code}” is taken already. Choose another, or look up what carries it")]
    CodeTaken {
        /// The code.
        code: String,
    },
    /// A part is not free.
    #[error("{}", taken_words(code, *state, *job_number))]
    PartTaken {
        /// Code of the part.
        code: String,
        /// State it is in; `Free` for a counted bulk of which none is left.
        state: PartState,
        /// The job that has it.
        job_number: Option<i64>,
    },
    /// A model is still named by something.
    #[error(
        "the model “{code}” is still used by {users}. Take it out there first; a model that a job was built with stays for the record"
    )]
    InUse {
        /// Code of the model.
        code: String,
        /// What uses it.
        users: String,
    },
    /// Something named does not exist.
    #[error("there is no {what} “{name}”. Check the code, or make it first")]
    Missing {
        /// Kind of thing.
        what: &'static str,
        /// Its code or identity.
        name: String,
    },
    /// A reading was taken back before.
    #[error("this reading was taken back already (“{why}”). Nothing was changed: load the club anew")]
    AlreadyTakenBack {
        /// The reason that was given then.
        why: String,
    },
    /// A request came again under its old key with another content.
    #[error(
        "this form was sent before with another entry ({saved}), so the new one was not saved. Load the club anew and enter it again"
    )]
    KeyReused {
        /// The entry that is saved under the key.
        saved: String,
    },
    /// A value that no database column or document can hold faithfully.
    #[error("{what} cannot be saved: {problem}. Check the entry")]
    NotStorable {
        /// What it is.
        what: String,
        /// What is wrong.
        problem: String,
    },
    /// A row cannot be read back.
    #[error(
        "{what} in the database cannot be read: {problem}. It was changed by hand or the disk failed: restore the last backup"
    )]
    Damaged {
        /// Which row.
        what: String,
        /// What is wrong.
        problem: String,
    },
    /// A program error: a change in a transaction that was opened for reading.
    #[error("a change was tried in a transaction for reading. This is a fault of the program: please report it")]
    NotWriting,
    /// Anything else that the database said.
    #[error(
        "the database {place} refused the entry, so it was not saved. Try again; if it comes again, report it with the log"
    )]
    Database {
        /// Where it is.
        place: String,
        /// What it said.
        #[source]
        source: sqlx::Error,
    },
}

impl StoreError {
    /// Somebody else changed it in between: load anew and show both.
    #[must_use]
    pub const fn is_stale(&self) -> bool {
        matches!(self, Self::Stale { .. })
    }

    /// A code or a part that somebody else has.
    #[must_use]
    pub const fn is_taken(&self) -> bool {
        matches!(self, Self::CodeTaken { .. } | Self::PartTaken { .. })
    }

    /// Something named does not exist.
    #[must_use]
    pub const fn is_missing(&self) -> bool {
        matches!(self, Self::Missing { .. } | Self::NoShop { .. })
    }

    /// Worth trying again as it is.
    #[must_use]
    pub const fn is_busy(&self) -> bool {
        matches!(self, Self::Busy)
    }

    /// What was asked for goes against what is saved; the person can change the entry.
    #[must_use]
    pub const fn is_conflict(&self) -> bool {
        matches!(
            self,
            Self::Stale { .. }
                | Self::CodeTaken { .. }
                | Self::PartTaken { .. }
                | Self::InUse { .. }
                | Self::AlreadyTakenBack { .. }
                | Self::KeyReused { .. }
                | Self::InUseElsewhere { .. }
        )
    }

    /// The entry itself cannot be saved.
    #[must_use]
    pub const fn is_bad_entry(&self) -> bool {
        matches!(self, Self::NotStorable { .. })
    }

    /// Translates what the database said at `place`.
    pub(crate) fn from_sqlx(source: sqlx::Error, place: &str) -> Self {
        let place = place.to_owned();
        match &source {
            sqlx::Error::Database(said) => {
                let problem = said.message().to_owned();
                let code = said.code().unwrap_or_default();
                let kind = if said.try_downcast_ref::<sqlx::postgres::PgDatabaseError>().is_some() {
                    postgres_kind(&code)
                } else {
                    sqlite_kind(&code)
                };
                match kind {
                    Kind::Busy => Self::Busy,
                    Kind::ReadOnly => Self::ReadOnly { place },
                    Kind::Full => Self::DiskFull { place },
                    Kind::CannotOpen => Self::CannotOpen { place, problem },
                    Kind::NotADatabase => Self::NotADatabase { place },
                    Kind::Disk => Self::Disk { place, problem },
                    Kind::Server => Self::Server { place, problem },
                    Kind::Other => Self::Database { place, source },
                }
            }
            sqlx::Error::PoolTimedOut if place.starts_with("postgres") => {
                Self::Server { place, problem: "no connection was to be had for ten seconds".into() }
            }
            sqlx::Error::PoolTimedOut => Self::Busy,
            sqlx::Error::Io(problem) => Self::Server { place, problem: problem.to_string() },
            sqlx::Error::Configuration(problem) => Self::Address { url: place, problem: problem.to_string() },
            sqlx::Error::ColumnDecode { index, source: problem } => {
                Self::Damaged { what: format!("the column {index}"), problem: problem.to_string() }
            }
            _ => Self::Database { place, source },
        }
    }
}

enum Kind {
    Busy,
    ReadOnly,
    Full,
    CannotOpen,
    NotADatabase,
    Disk,
    Server,
    Other,
}

/// SQLite's result codes (<https://www.sqlite.org/rescode.html>); the low byte is the primary code.
fn sqlite_kind(code: &str) -> Kind {
    match code.parse::<i64>().unwrap_or(0) & 0xff {
        5 | 6 => Kind::Busy,
        8 => Kind::ReadOnly,
        10 | 11 => Kind::Disk,
        13 => Kind::Full,
        14 => Kind::CannotOpen,
        26 => Kind::NotADatabase,
        _ => Kind::Other,
    }
}

/// PostgreSQL's error codes (its manual, appendix A).
fn postgres_kind(code: &str) -> Kind {
    match code {
        // Serialization failure, deadlock, lock not available, lock or statement timeout.
        "40001" | "40P01" | "55P03" | "57014" => Kind::Busy,
        "25006" => Kind::ReadOnly,
        "53100" => Kind::Full,
        "58030" | "XX001" | "XX002" => Kind::Disk,
        // Authorisation, no such database, no permission, too many connections, shutting down or starting up.
        "28000" | "28P01" | "3D000" | "42501" | "53300" | "57P01" | "57P02" | "57P03" => Kind::Server,
        _ => Kind::Other,
    }
}

fn taken_words(code: &str, state: PartState, job_number: Option<i64>) -> String {
    let of_job = job_number.map_or_else(String::new, |n| format!(" by job {n}"));
    match state {
        PartState::Free => format!("no {code} is left in the box. Count the box again, or choose another"),
        PartState::Held | PartState::Used => format!("{code} is {state} already{of_job}. Choose another part"),
        PartState::Ordered => format!("{code} is ordered and not here yet. Book it in first, or choose another part"),
        PartState::Pulled | PartState::Rejected => {
            format!("{code} is {state}. Put it back into stock first if it is good, or choose another part")
        }
    }
}

impl fact::Fact for StoreError {
    fn told(&self) -> fact::Told {
        fact::Told::verbatim(self.to_string())
    }
}
