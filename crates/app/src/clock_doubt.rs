//! Why the machine's clock is not relied on.

use jiff::Timestamp;
use serde::Serialize;
use utoipa::ToSchema;

/// Why the machine's clock is not relied on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
#[serde(tag = "doubt", rename_all = "snake_case")]
pub enum ClockDoubt {
    /// It is behind an entry that was made before.
    BehindNewest {
        /// What it shows.
        #[schema(value_type = String, format = DateTime)]
        now: Timestamp,
        /// The newest entry.
        #[schema(value_type = String, format = DateTime)]
        newest: Timestamp,
    },
    /// It moved by more than the time that passed.
    Jumped {
        /// What it would show by the time that passed.
        #[schema(value_type = String, format = DateTime)]
        from: Timestamp,
        /// What it showed then.
        #[schema(value_type = String, format = DateTime)]
        to: Timestamp,
    },
}

impl fact::Fact for ClockDoubt {
    fn told(&self) -> fact::Told {
        match self {
            Self::BehindNewest { now, newest } => {
                fact::Told::new("clock_doubt.behind_newest").with("now_at", now).with("newest_at", newest)
            }
            Self::Jumped { from, to } => fact::Told::new("clock_doubt.jumped").with("from_at", from).with("to_at", to),
        }
    }
}
