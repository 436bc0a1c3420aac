//! The reference club as the belief sees it: its true swing weight is a state, and whatever a scale showed of it is a
//! reading like any other, with what that scale was off by on that day and with noise. The deviation of a finish is its true
//! swing weight less that state. What both have in common, such as the offset of a scale on one day, cancels by itself.
//!
//! A scale's offset is its habit, which lasts, and a day's own part. So each day of a scale is an instrument of its own,
//! and the days of one scale are tied by its habit. The day on which the bench reads is the bench's own scale.

use jiff::Timestamp;
use jiff::civil::Date;

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
