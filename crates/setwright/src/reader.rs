//! Who reads what the program prints.

use quantity::Units;
use words::{Language, Words};

/// In the language of this machine, in inches and grams, on its clock.
pub(crate) fn reader() -> Words {
    Words::new(language(), Units::default(), jiff::tz::TimeZone::system())
}

/// The language that the machine is set to, by the variables that POSIX has for it (IEEE Std 1003.1, 8.2), the strongest first;
/// English where there are no texts of it.
pub(crate) fn language() -> &'static Language {
    let set = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().filter_map(|name| std::env::var(name).ok());
    Language::asked(&set.into_iter().find(|wish| !wish.is_empty()).unwrap_or_default())
}
