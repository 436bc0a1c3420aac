//! The one error of the use cases, and the few kinds into which the edges sort it.

use bench::open_point::OpenClub;
use clubphysics::PhysicsError;
use jiff::Timestamp;
use store::StoreError;
use thiserror::Error;
use trade::WorkshopError;
use trade::step::Strength;

/// Why a use case did not do what was asked.
#[derive(Debug, Error)]
pub enum AppError {
    /// A rule of the workshop.
    #[error(transparent)]
    Workshop(#[from] WorkshopError),
    /// The store.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A calculation.
    #[error(transparent)]
    Physics(#[from] PhysicsError),
    /// A recording that could not be read.
    #[error(transparent)]
    Recording(#[from] instrument::RecordingError),
    /// A text in workshop notation that could not be read.
    #[error(transparent)]
    Notation(#[from] quantity::NotationError),
    /// Something that was named is not there.
    #[error("there is no {what} “{name}”. {next}")]
    NotFound {
        /// Kind of thing.
        what: &'static str,
        /// Name that was given.
        name: String,
        /// What to do next.
        next: String,
    },
    /// A step before the joint is strong enough for it.
    #[error("{step} waits for {strength} until {until}. Let it cure, or let the step pass with a reason")]
    Waits {
        /// The step.
        step: String,
        /// What it needs.
        strength: Strength,
        /// When it will have it.
        until: Timestamp,
    },
    /// A step that needs the joint glued, which it is not.
    #[error(
        "{step} needs {strength}, but club {slot} is in no batch of adhesive. Glue it, or let the step pass with a reason"
    )]
    NotGlued {
        /// The step.
        step: String,
        /// What it needs.
        strength: Strength,
        /// Place in the tray.
        slot: i64,
    },
    /// The machine's clock cannot be relied on.
    #[error("{}. {}", .0.words(), .0.next())]
    ClockWrong(crate::clock_watch::ClockDoubt),
    /// Something is open before a step that cannot be undone, and no reason was given for going on.
    #[error(
        "before “{step}” something is open: {}. Clear it, or give a reason for going on as it is",
        open_words(clubs)
    )]
    Open {
        /// What the builder calls the step.
        step: String,
        /// The clubs with what is open on each.
        clubs: Vec<OpenClub>,
    },
    /// Two screens, or a page that is out of date.
    #[error("{what}. {next}")]
    Conflict {
        /// What does not go together.
        what: String,
        /// What to do next.
        next: String,
    },
    /// The program itself failed at something that it should have done.
    #[error("{0}. Nothing was saved; try again, and keep the message if it comes back")]
    Internal(String),
    /// One entry of a list; nothing of the list was saved.
    #[error("{}{source}", if *of > 1 { format!("entry {} of the list: ", index + 1) } else { String::new() })]
    Entry {
        /// Its place in the list, from 0.
        index: usize,
        /// How many entries the list has.
        of: usize,
        /// What is wrong with it.
        source: Box<AppError>,
    },
    /// Something in the request.
    #[error("{what}. {next}")]
    Invalid {
        /// What is wrong.
        what: String,
        /// What to do next.
        next: String,
    },
}

/// "the 7: swing weight at “Dry” is doubted; the 8: swing weight is not read".
fn open_words(clubs: &[OpenClub]) -> String {
    let w = words::Words::english(quantity::Units::default());
    let one = |club: &OpenClub| {
        let points: Vec<String> = club.facts.iter().map(|fact| w.told(fact)).collect();
        format!("the {}: {}", club.number, points.join(", "))
    };
    clubs.iter().map(one).collect::<Vec<_>>().join("; ")
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
    /// The store cannot serve now.
    Unavailable,
    /// The program itself is wrong; nothing that was given is.
    Fault,
}

impl AppError {
    pub(crate) fn not_found(what: &'static str, name: impl Into<String>, next: impl Into<String>) -> Self {
        Self::NotFound { what, name: name.into(), next: next.into() }
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
            Self::Workshop(WorkshopError::Fault(_)) | Self::Internal(_) => Kind::Fault,
            Self::Workshop(WorkshopError::Unknown { .. }) | Self::NotFound { .. } => Kind::NotFound,
            Self::Workshop(_) | Self::Physics(_) | Self::Notation(_) | Self::Recording(_) | Self::Invalid { .. } => {
                Kind::Invalid
            }
            Self::Waits { .. }
            | Self::NotGlued { .. }
            | Self::ClockWrong(_)
            | Self::Open { .. }
            | Self::Conflict { .. } => Kind::Conflict,
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
            Self::Workshop(WorkshopError::Impossible { .. }) => "impossible_figure",
            Self::Workshop(WorkshopError::Unreadable { .. }) | Self::Notation(_) | Self::Recording(_) => "unreadable",
            Self::Workshop(WorkshopError::Unknown { .. }) | Self::NotFound { .. } => "not_found",
            Self::Workshop(WorkshopError::Fault(_)) | Self::Internal(_) => "internal",
            Self::Workshop(_) => "refused",
            Self::Physics(_) => "calculation",
            Self::Waits { .. } => "waits_for_cure",
            Self::NotGlued { .. } => "not_glued",
            Self::ClockWrong(_) => "clock",
            Self::Open { .. } => "open",
            Self::Conflict { .. } => "conflict",
            Self::Invalid { .. } => "invalid",
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
            Self::Workshop(e) => e.field(),
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
