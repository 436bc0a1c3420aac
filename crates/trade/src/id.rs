//! Identities. Text, so that one schema serves every database; made by the app (UUID version 7, so they sort by time).

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

macro_rules! identity {
    ($($(#[$doc:meta])* $name:ident),* $(,)?) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
        #[serde(transparent)]
        pub struct $name(pub String);

        impl $name {
            /// The identity as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl From<&str> for $name {
            fn from(text: &str) -> Self {
                Self(text.to_owned())
            }
        }
    )*};
}

identity! {
    /// A fitting sheet.
    SheetId,
    /// A job: the work on one sheet.
    JobId,
    /// One club of a job.
    ClubId,
    /// A single part, or a counted bulk of equal parts.
    PartId,
    /// One reading at the bench.
    ReadingId,
    /// A batch of mixed adhesive.
    BatchId,
    /// An order of parts.
    OrderId,
    /// An entry of the event log.
    EventId,
    /// A club that lives on, by the code on its label.
    ClubCode,
}
