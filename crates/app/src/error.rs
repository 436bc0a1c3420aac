//! The one error of the use cases, and the few kinds into which the edges sort it.

use clubphysics::PhysicsError;
use jiff::Timestamp;
use store::StoreError;
use thiserror::Error;
use workshop::WorkshopError;
use workshop::step::Strength;

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
    /// Something in the request.
    #[error("{what}. {next}")]
    Invalid {
        /// What is wrong.
        what: String,
        /// What to do next.
        next: String,
    },
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
}

impl AppError {
    pub(crate) fn not_found(what: &'static str, name: impl Into<String>, next: impl Into<String>) -> Self {
        Self::NotFound { what, name: name.into(), next: next.into() }
    }

    /// What kind of failure it is.
    #[must_use]
    pub fn kind(&self) -> Kind {
        match self {
            Self::Workshop(WorkshopError::Unknown { .. }) | Self::NotFound { .. } => Kind::NotFound,
            Self::Workshop(_) | Self::Physics(_) | Self::Notation(_) | Self::Recording(_) | Self::Invalid { .. } => {
                Kind::Invalid
            }
            Self::Waits { .. } | Self::NotGlued { .. } | Self::Conflict { .. } => Kind::Conflict,
            Self::Store(e) if e.is_missing() => Kind::NotFound,
            Self::Store(e) if e.is_bad_entry() => Kind::Invalid,
            Self::Store(e) if e.is_conflict() => Kind::Conflict,
            Self::Store(_) | Self::Internal(_) => Kind::Unavailable,
        }
    }

    /// A short, stable word for the failure, for programs.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Workshop(WorkshopError::Impossible { .. }) => "impossible_figure",
            Self::Workshop(WorkshopError::Unreadable { .. }) | Self::Notation(_) | Self::Recording(_) => "unreadable",
            Self::Workshop(WorkshopError::Unknown { .. }) | Self::NotFound { .. } => "not_found",
            Self::Workshop(_) => "refused",
            Self::Physics(PhysicsError::NotJson { .. }) => "invalid",
            Self::Physics(_) => "calculation",
            Self::Waits { .. } => "waits_for_cure",
            Self::NotGlued { .. } => "not_glued",
            Self::Conflict { .. } => "conflict",
            Self::Invalid { .. } => "invalid",
            Self::Internal(_) => "internal",
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
            Self::Physics(e) => e.field(),
            _ => None,
        }
    }
}
