//! What can go wrong in the store, in words for the person who reads it: what happened, where, what to do next.

use fact::{Fact, Told};
use trade::error::Noun;
use trade::part::PartState;
use trade::reading::What;

/// A refusal or failure of the store.
///
/// Everything that a caller can run into by what people do (stale, taken, missing …) is found before anything is
/// written, so the transaction stays usable after it, on SQLite and PostgreSQL alike.
#[derive(Debug)]
#[non_exhaustive]
pub enum StoreError {
    /// The address of the database cannot be read.
    Address {
        /// The address, without a password.
        url: String,
        /// What is wrong with it.
        problem: String,
    },
    /// There is no database yet where one must be.
    NoShop {
        /// Where it was looked for.
        place: String,
    },
    /// The database was written by a newer version of this program.
    Newer {
        /// Where it is.
        place: String,
        /// Schema found.
        found: i64,
        /// Newest schema that this program knows.
        known: i64,
    },
    /// The file holds something else than a database.
    NotADatabase {
        /// The path.
        place: String,
    },
    /// The database belongs to another program.
    NotOurs {
        /// Where it is.
        place: String,
        /// One of the foreign tables.
        table: String,
    },
    /// A shop is there already where an archive is to be unpacked.
    NotEmpty {
        /// Where it is.
        place: String,
    },
    /// An archive that cannot be read, or is not whole.
    NotAnArchive {
        /// The line that was not taken, from 1.
        line: u64,
        /// Why.
        fault: Told,
    },
    /// The schema is not what the migrations make.
    SchemaDamaged {
        /// Where it is.
        place: String,
        /// What is missing or altered.
        problem: String,
    },
    /// The file may be read but not written.
    ReadOnly {
        /// Where it is.
        place: String,
    },
    /// No room for another byte.
    DiskFull {
        /// Where it is.
        place: String,
    },
    /// The file could not be opened or made.
    CannotOpen {
        /// Where it should be.
        place: String,
        /// What the system said.
        problem: String,
    },
    /// The server does not answer or turns us away.
    Server {
        /// Where it should be.
        place: String,
        /// What was said.
        problem: String,
    },
    /// The disk failed, or the file is torn.
    Disk {
        /// Where it is.
        place: String,
        /// What was said.
        problem: String,
    },
    /// The file is to be replaced or erased while another program has it open.
    InUseElsewhere {
        /// The path.
        place: String,
    },
    /// Something that only a file can have is asked of a database on a server or in memory.
    OnServer {
        /// Where it is.
        place: String,
    },
    /// A copy does not hold what the shop holds.
    CopyDiffers {
        /// Where it was to be.
        place: String,
    },
    /// A copy is damaged.
    Torn {
        /// The path.
        place: String,
        /// What the database said of it.
        problem: String,
    },
    /// Somebody else held the database for too long, or two writers met.
    Busy,
    /// Somebody else changed it in between.
    Stale {
        /// What was changed.
        what: Stored,
        /// Version that is saved now.
        saved_version: i64,
    },
    /// A code, number or identity that must be unique is there already.
    CodeTaken {
        /// The code, number or identity that is there already.
        code: String,
    },
    /// A part is not free.
    PartTaken {
        /// Code of the part.
        code: String,
        /// State it is in; `Free` for a counted bulk of which none is left.
        state: PartState,
        /// The job that has it.
        job_number: Option<i64>,
    },
    /// A customer's part is to go into a club of somebody else.
    PartOfCustomer {
        /// Code of the part.
        code: String,
        /// Code of the customer whose it is.
        owner: String,
    },
    /// A model is still named by something.
    InUse {
        /// Code of the model.
        code: String,
        /// What uses it.
        users: Vec<ModelUser>,
    },
    /// Something named does not exist.
    Missing {
        /// Kind of thing.
        what: Noun,
        /// Its code or identity.
        name: String,
    },
    /// A reading was taken back before.
    AlreadyTakenBack {
        /// The reason that was given then.
        why: Told,
    },
    /// A request came again under its old key with another content.
    KeyReused {
        /// The entry that is saved under the key.
        saved: Saved,
    },
    /// A value that no database column or document can hold faithfully.
    NotStorable {
        /// Which entry or figure, in words for the log: `a gauge study`.
        what: String,
        /// What is wrong.
        problem: String,
    },
    /// A row cannot be read back.
    Damaged {
        /// Which row.
        what: String,
        /// What is wrong.
        problem: String,
    },
    /// A program error: a change in a transaction that was opened for reading.
    NotWriting,
    /// Anything else that the database said.
    Database {
        /// Where it is.
        place: String,
        /// What it said.
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
                | Self::PartOfCustomer { .. }
                | Self::InUse { .. }
                | Self::AlreadyTakenBack { .. }
                | Self::KeyReused { .. }
                | Self::InUseElsewhere { .. }
                | Self::OnServer { .. }
                | Self::NotEmpty { .. }
        )
    }

    /// The entry itself cannot be saved.
    #[must_use]
    pub const fn is_bad_entry(&self) -> bool {
        matches!(self, Self::NotStorable { .. } | Self::NotAnArchive { .. })
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
                Self::Server { place, problem: "no connection within ten seconds".into() }
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

impl Fact for StoreError {
    fn told(&self) -> Told {
        match self {
            Self::Address { url, problem } => Told::new("store.address").with("url", url).with("log", problem),
            Self::NoShop { place } => Told::new("store.no_shop").with("place", place),
            Self::Newer { place, found, known } => {
                Told::new("store.newer").with("place", place).with("found", found).with("known", known)
            }
            Self::NotADatabase { place } => Told::new("store.not_a_database").with("place", place),
            Self::NotOurs { place, table } => Told::new("store.not_ours").with("place", place).with("table", table),
            Self::NotEmpty { place } => Told::new("store.not_empty").with("place", place),
            Self::NotAnArchive { line, fault } => {
                Told::new("store.not_an_archive").with("line", line).with("fault", fault)
            }
            Self::SchemaDamaged { place, problem } => {
                Told::new("store.schema_damaged").with("place", place).with("log", problem)
            }
            Self::ReadOnly { place } => Told::new("store.read_only").with("place", place),
            Self::DiskFull { place } => Told::new("store.disk_full").with("place", place),
            Self::CannotOpen { place, problem } => {
                Told::new("store.cannot_open").with("place", place).with("log", problem)
            }
            Self::Server { place, problem } => Told::new("store.server").with("place", place).with("log", problem),
            Self::Disk { place, problem } => Told::new("store.disk").with("place", place).with("log", problem),
            Self::InUseElsewhere { place } => Told::new("store.in_use_elsewhere").with("place", place),
            Self::OnServer { place } => Told::new("store.on_server").with("place", place),
            Self::CopyDiffers { place } => Told::new("store.copy_differs").with("place", place),
            Self::Torn { place, problem } => Told::new("store.torn").with("place", place).with("log", problem),
            Self::Busy => Told::new("store.busy"),
            Self::Stale { what, saved_version } => {
                Told::new("store.stale").with("what", what).with("version", saved_version)
            }
            Self::CodeTaken { code } => Told::new("store.code_taken").with("code", code),
            Self::PartTaken { code, state, job_number } => match state {
                PartState::Free => Told::new("store.box_empty").with("code", code),
                PartState::Ordered => Told::new("store.part_ordered").with("code", code),
                PartState::Pulled | PartState::Rejected => {
                    Told::new("store.part_aside").with("code", code).with("state", state)
                }
                PartState::Held | PartState::Used => {
                    Told::new("store.part_taken").with("code", code).with("state", state).with("job", job_number)
                }
            },
            Self::PartOfCustomer { code, owner } => {
                Told::new("store.part_of_customer").with("code", code).with("owner", owner)
            }
            Self::InUse { code, users } => Told::new("store.in_use").with("code", code).with("users", users),
            Self::Missing { what, name } => Told::new("store.missing").with("what", what).with("name", name),
            Self::AlreadyTakenBack { why } => Told::new("store.already_taken_back").with("why", why),
            Self::KeyReused { saved } => Told::new("store.key_reused").with("saved", saved),
            Self::NotStorable { what, problem } => {
                Told::new("store.not_storable").with("what", what).with("problem", problem)
            }
            Self::Damaged { what, problem } => Told::new("store.damaged").with("place", what).with("log", problem),
            Self::NotWriting => Told::new("store.not_writing"),
            Self::Database { place, source } => {
                Told::new("store.database").with("place", place).with("log", &source.to_string())
            }
        }
    }
}

fact::facts! {
    /// Something that is kept, in a sentence about it.
    pub enum Stored: "stored" {
        /// A part.
        Part {
            /// The shop's code on its label.
            code: String,
        },
        /// A club by its card.
        Club {
            /// Code of its card.
            card: String,
        },
        /// A job.
        Job {
            /// Its number.
            job: i64,
        },
        /// An order.
        Order {
            /// Its number.
            order: i64,
        },
        /// A customer.
        Customer {
            /// Their number.
            customer: i64,
        },
        /// A sheet.
        Sheet {
            /// For whom it is.
            player: String,
        },
    }
}

fact::facts! {
    /// What uses a model.
    pub enum ModelUser: "model_user" {
        /// The shop's own settings.
        Shop,
        /// Batches of adhesive.
        Batches {
            /// How many.
            n: i64,
        },
        /// Parts in stock.
        Parts {
            /// How many.
            n: i64,
        },
        /// Jobs.
        Jobs {
            /// How many.
            n: i64,
        },
        /// Sheets.
        Sheets {
            /// How many.
            n: i64,
        },
        /// Orders.
        Orders {
            /// How many.
            n: i64,
        },
        /// Other models.
        Models {
            /// How many.
            n: i64,
        },
        /// Anything else, by its name in the database.
        Other {
            /// How many.
            n: i64,
            /// Name of the table that refers to the model.
            name: String,
        },
    }
}

fact::facts! {
    /// An entry that is kept under a request key.
    pub enum Saved: "saved" {
        /// A reading.
        Reading {
            /// What was read.
            what: What,
            /// As it was typed.
            typed: String,
        },
        /// A reading of a study.
        StudyReading {
            /// As it was typed.
            typed: String,
        },
        /// A gauge study.
        Study {
            /// The instrument.
            scale: String,
        },
        /// Something that happened to a scale.
        ScaleEvent {
            /// What, as it was entered.
            text: String,
        },
    }
}

impl From<StoreError> for fact::Refusal {
    fn from(error: StoreError) -> Self {
        Self::new(&error)
    }
}

/// The form of a log.
impl std::fmt::Display for StoreError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for StoreError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Database { source, .. } => Some(source),
            _ => None,
        }
    }
}
