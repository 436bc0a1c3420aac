//! The reference club as the belief sees it: its true swing weight is a state, and whatever a scale showed of it is a
//! reading like any other, with what that scale was off by on that day and with noise. The deviation of a finish is its true
//! swing weight less that state. What both have in common, such as the offset of a scale on one day, cancels by itself.
//!
//! A scale's offset is its habit, which lasts, and a day's own part. So each day of a scale is an instrument of its own,
//! and the days of one scale are tied by its habit. The day on which the bench reads is the bench's own scale.

use jiff::Timestamp;
use jiff::civil::Date;
use trade::scale::Scale;
use trade::sheet::{ReferenceClub, ReferenceReading};

/// Name of the shared deviation of the reference club's true swing weight from the figure that the targets come from, points.
pub(crate) const REFERENCE: &str = "reference";
/// What is known of that before anything showed it, one standard deviation, points: nothing. A prior of a few points would
/// tell the scales that read the club a little of their own offsets, which a club of which nothing is known cannot.
pub(crate) const REFERENCE_SD_POINTS: f64 = 100.0;
/// Mass of a reference club that the sheet does not give, g: only an error of the fulcrum's place acts on it.
pub(crate) const REFERENCE_MASS_G: f64 = 400.0;

fact::facts! {
    /// On which scale and day the reference club was read last, as seen from the bench.
    pub enum ReferenceRead: "reference_read" {
        /// On the bench's own scale, on a day of the bench.
        Here {
            /// How often.
            n: i64,
        },
        /// On the shop's own scale, on another day.
        OtherDay {
            /// That day, where it was noted.
            read_on: Option<Date>,
        },
        /// On another scale.
        OtherScale {
            /// Its name.
            scale: String,
            /// The day, where it was noted.
            read_on: Option<Date>,
        },
        /// Its true swing weight is known.
        Known,
    }
}

impl ReferenceRead {
    /// Of the readings on a sheet, of how many more at the bench (`at_bench`), and of which days are the bench's; none where
    /// the sheet has no figure of the club.
    #[must_use]
    pub fn of(
        club: &ReferenceClub,
        balance: &Scale,
        is_bench_day: impl Fn(Date) -> bool,
        at_bench: usize,
    ) -> Option<Self> {
        club.swing_weight_points?;
        let shown = club.shown();
        let own = |read: &ReferenceReading| balance.is_named(&read.scale);
        let here = shown.iter().filter(|read| own(read) && read.read_on.is_some_and(&is_bench_day)).count() + at_bench;
        if here > 0 {
            return Some(Self::Here { n: i64::try_from(here).unwrap_or(i64::MAX) });
        }
        let last = shown.iter().max_by_key(|read| (own(read), read.read_on));
        Some(match last {
            Some(read) if own(read) => Self::OtherDay { read_on: read.read_on },
            Some(read) if club.swing_weight_sd_points.is_none() => {
                Self::OtherScale { scale: read.scale.trim().to_owned(), read_on: read.read_on }
            }
            _ => Self::Known,
        })
    }

    /// Whether a reading on the bench's scale, on its day, would be the first.
    #[must_use]
    pub const fn is_elsewhere(&self) -> bool {
        matches!(self, Self::OtherDay { .. } | Self::OtherScale { .. })
    }
}

/// A balance scale on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct ScaleDay {
    /// Its name among the scales of the belief.
    pub key: String,
    /// The scale, whatever the day: the shop's key of it, or `elsewhere:` and the name of another.
    pub scale: String,
    /// When the bench began to read on it, where this is the bench's own scale on one of its days.
    pub bench_at: Option<Timestamp>,
}
