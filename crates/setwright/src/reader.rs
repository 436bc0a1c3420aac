//! Who reads what the program prints.

use quantity::Units;
use words::{Language, Words};

/// English, in inches and grams, on this machine's clock.
pub(crate) fn reader() -> Words {
    Words::new(Language::english(), Units::default(), jiff::tz::TimeZone::system())
}
