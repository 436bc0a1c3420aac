//! The one error of the use cases, and the few kinds into which the edges sort it.

use bench::open_point::OpenClub;
use clubphysics::PhysicsError;
use fact::{Fact, Refusal, Told};
use jiff::Timestamp;
use std::fmt;
use store::StoreError;
use trade::error::TradeError;
use trade::error::{NotFound, Noun};
use trade::step::Strength;

/// Why a use case did not do what was asked. The variants are what a program tells apart; [`AppError::refusal`] is what is
/// wrong and what to do next.
#[derive(Debug)]
pub enum AppError {
    /// A rule of the trade.
    Trade(TradeError),
    /// The store.
    Store(StoreError),
    /// A calculation.
    Physics(PhysicsError),
    /// A recording that could not be read.
    Recording(instrument::RecordingError),
    /// A text in workshop notation that could not be read.
    Notation(quantity::NotationError),
    /// Something that was named is not there.
    NotFound(Refusal),
    /// A step before the joint is strong enough for it.
    Waits {
        /// What the builder calls the step that has to wait.
        step: String,
        /// What it needs.
        strength: Strength,
        /// When it will have it.
        until: Timestamp,
    },
    /// A step that needs the joint glued, which it is not.
    NotGlued {
        /// What the builder calls the step that needs a glued joint.
        step: String,
        /// What it needs.
        strength: Strength,
        /// Place in the tray.
        slot: i64,
    },
    /// The machine's clock cannot be relied on.
    ClockWrong(crate::clock_doubt::ClockDoubt),
    /// Something is open before a step that cannot be undone, and no reason was given for going on.
    Open {
        /// What the builder calls the step.
        step: String,
        /// The clubs with what is open on each.
        clubs: Vec<OpenClub>,
    },
    /// Two screens, or a page that is out of date.
    Conflict(Refusal),
    /// The program itself failed at something that it should have done. The text is for the log.
    Internal(String),
    /// One entry of a list; nothing of the list was saved.
    Entry {
        /// Its place in the list, from 0.
        index: usize,
        /// How many entries the list has.
        of: usize,
        /// What is wrong with it.
        source: Box<AppError>,
    },
    /// Something in the request.
    Invalid(Refusal),
    /// Whoever asked may not.
    Forbidden(Refusal),
}

fact::facts! {
    /// What stands in the way of a use case, beside what its own nouns refuse.
    pub enum WayFault: "way" {
        /// A step before the joint is strong enough.
        Waits {
            /// What the builder calls the step that has to wait.
            step: String,
            /// What it needs.
            strength: Strength,
            /// When it will have it.
            until_at: Timestamp,
        },
        /// A step before the club is glued.
        NotGlued {
            /// What the builder calls the step that needs a glued joint.
            step: String,
            /// What it needs.
            strength: Strength,
            /// Place in the tray.
            slot: i64,
        },
        /// Something is open before a step that cannot be undone.
        Open {
            /// What the builder calls the step that cannot be undone.
            step: String,
            /// What is open on each club.
            clubs: Vec<Told>,
        },
        /// What is open on one club.
        OpenClub {
            /// Number or letter of the club: `6`, `PW`.
            number: String,
            /// What is open.
            points: Vec<Told>,
        },
        /// The program itself failed.
        Internal {
            /// What happened, as the log has it.
            log: String,
        },
        /// One entry of a list.
        Entry {
            /// Its place, from 1.
            n: usize,
            /// What is wrong with it.
            what: Told,
        },
    }
}

/// The few kinds of failure that a page, a status code or an exit code tells apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// What was given cannot be.
    Invalid,
    /// What was named is not there.
    NotFound,
    /// Somebody else was first, or it is not the time yet.
    Conflict,
    /// Whoever asked may not.
    Forbidden,
    /// The store cannot serve now.
    Unavailable,
    /// The program itself is wrong; nothing that was given is.
    Fault,
}

impl AppError {
    /// Something that was named is not there, and where to look it up.
    #[must_use]
    pub fn not_found(what: Noun, name: impl Into<String>, next: &impl Fact) -> Self {
        Self::NotFound(Refusal::new(&NotFound::Named { what, name: name.into() }).next(next))
    }

    /// Something in the request.
    #[must_use]
    pub fn invalid(refusal: impl Into<Refusal>) -> Self {
        Self::Invalid(refusal.into())
    }

    /// Two screens, a page that is out of date, or a state that does not allow it.
    #[must_use]
    pub fn conflict(refusal: impl Into<Refusal>) -> Self {
        Self::Conflict(refusal.into())
    }

    /// Whoever asked may not.
    #[must_use]
    pub fn forbidden(refusal: impl Into<Refusal>) -> Self {
        Self::Forbidden(refusal.into())
    }

    /// What is wrong, what to do next and at which entry.
    #[must_use]
    pub fn refusal(&self) -> Refusal {
        let fact = match self {
            Self::Trade(error) => return error.refusal(),
            Self::Physics(error) => return error.refusal(),
            Self::NotFound(refusal) | Self::Conflict(refusal) | Self::Invalid(refusal) | Self::Forbidden(refusal) => {
                return refusal.clone();
            }
            Self::Store(error) => error.told(),
            Self::Recording(error) => error.told(),
            Self::Notation(error) => error.told(),
            Self::ClockWrong(doubt) => doubt.told(),
            Self::Waits { step, strength, until } => {
                WayFault::Waits { step: step.clone(), strength: *strength, until_at: *until }.into()
            }
            Self::NotGlued { step, strength, slot } => {
                WayFault::NotGlued { step: step.clone(), strength: *strength, slot: *slot }.into()
            }
            Self::Open { step, clubs } => {
                let one = |club: &OpenClub| {
                    WayFault::OpenClub { number: club.number.clone(), points: club.facts.clone() }.into()
                };
                WayFault::Open { step: step.clone(), clubs: clubs.iter().map(one).collect() }.into()
            }
            Self::Internal(log) => WayFault::Internal { log: log.clone() }.into(),
            Self::Entry { index, of, source } => {
                let refusal = source.refusal();
                if *of <= 1 {
                    return refusal;
                }
                return refusal.within(|what| WayFault::Entry { n: index + 1, what }.into());
            }
        };
        Refusal::new(&fact)
    }

    /// Says of which entry of a list it is.
    pub(crate) fn of_entry(self, index: usize, of: usize) -> Self {
        Self::Entry { index, of, source: Box::new(self) }
    }

    /// What kind of failure it is.
    #[must_use]
    pub fn kind(&self) -> Kind {
        match self {
            Self::Entry { source, .. } => source.kind(),
            Self::Trade(TradeError::Fault(_)) | Self::Internal(_) => Kind::Fault,
            Self::Trade(TradeError::Unknown(_)) | Self::NotFound(_) => Kind::NotFound,
            Self::Trade(_) | Self::Physics(_) | Self::Notation(_) | Self::Recording(_) | Self::Invalid(_) => {
                Kind::Invalid
            }
            Self::Forbidden(_) => Kind::Forbidden,
            Self::Waits { .. }
            | Self::NotGlued { .. }
            | Self::ClockWrong(_)
            | Self::Open { .. }
            | Self::Conflict(_) => Kind::Conflict,
            Self::Store(e) if e.is_missing() => Kind::NotFound,
            Self::Store(e) if e.is_bad_entry() => Kind::Invalid,
            Self::Store(e) if e.is_conflict() => Kind::Conflict,
            Self::Store(_) => Kind::Unavailable,
        }
    }

    /// A short, stable word for the failure, for programs.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Entry { source, .. } => source.code(),
            Self::Trade(TradeError::Impossible(_)) => "impossible_figure",
            Self::Trade(TradeError::Unreadable(_)) | Self::Notation(_) | Self::Recording(_) => "unreadable",
            Self::Trade(TradeError::Unknown(_)) | Self::NotFound(_) => "not_found",
            Self::Trade(TradeError::Fault(_)) | Self::Internal(_) => "internal",
            Self::Trade(_) => "refused",
            Self::Physics(_) => "calculation",
            Self::Waits { .. } => "waits_for_cure",
            Self::NotGlued { .. } => "not_glued",
            Self::ClockWrong(_) => "clock",
            Self::Open { .. } => "open",
            Self::Conflict(_) => "conflict",
            Self::Invalid(_) => "invalid",
            Self::Forbidden(_) => "forbidden",
            Self::Store(e) if e.is_stale() => "stale",
            Self::Store(e) if e.is_taken() => "taken",
            Self::Store(e) if e.is_missing() => "not_found",
            Self::Store(e) if e.is_busy() => "busy",
            Self::Store(_) => "store",
        }
    }

    /// The field that the message belongs beside, where there is one.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Self::Trade(e) => e.field(),
            Self::Entry { source, .. } => source.field(),
            Self::Physics(e) => e.field(),
            _ => None,
        }
    }

    /// Where in a list that was sent it is, as a JSON pointer (RFC 6901): `/2/mass_g`, or the entry where it is not one
    /// field; none where no list was sent.
    #[must_use]
    pub fn pointer(&self) -> Option<String> {
        let Self::Entry { index, source, .. } = self else { return None };
        // What people read may be more than a name: `number 7: mass_g`.
        let plain = |field: &&str| field.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_');
        let field = source.field().filter(plain).map(|field| format!("/{field}")).unwrap_or_default();
        Some(format!("/{index}{field}"))
    }
}

impl From<AppError> for fact::Refusal {
    fn from(error: AppError) -> Self {
        error.refusal()
    }
}

/// The form of a log.
impl fmt::Display for AppError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.refusal().fmt(f)
    }
}

impl std::error::Error for AppError {}

macro_rules! from {
    ($($variant:ident($error:ty),)*) => { $(
        impl From<$error> for AppError {
            fn from(error: $error) -> Self {
                Self::$variant(error)
            }
        }
    )* };
}
from! {
    Trade(TradeError),
    Store(StoreError),
    Physics(PhysicsError),
    Recording(instrument::RecordingError),
    Notation(quantity::NotationError),
}
