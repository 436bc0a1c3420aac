//! What a calendar of the shop holds: when jobs are due, when joints have their strength, when ordered parts are expected.
//!
//! The file is an iCalendar object (RFC 5545): lines of at most 75 octets that end in CR and LF, texts with their escapes,
//! days as days of the shop and times in UTC. Each entry keeps its identity for ever, so that a calendar that fetches the
//! file again moves what it has and doubles nothing.

use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use serde::Serialize;
use std::fmt::Write;
use utoipa::ToSchema;
use words::Words;

/// Most octets of a line without its end (RFC 5545, 3.1).
const LINE_OCTETS: usize = 75;
/// How often a calendar is asked to fetch the file again (RFC 7986, 5.7). Common practice, no source.
const FETCHED_EACH: &str = "PT30M";

/// An entry of the calendar.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CalendarEntry {
    /// Its identity, which stays the same while the day or time moves.
    pub uid: String,
    /// The day of the shop, where the entry is for a whole day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub on: Option<Date>,
    /// The time, where the entry is for a moment.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
    /// The page of the shop that tells more, from its root.
    pub page: String,
    /// What is then.
    #[serde(flatten)]
    pub what: CalendarWhat,
}

fact::facts! {
    /// What a [`CalendarEntry`] is about.
    pub enum CalendarWhat: "calendar" {
        /// A job is due.
        JobDue {
            /// Its running number.
            job: i64,
            /// Who plays its clubs.
            player: String,
            /// How many clubs it has.
            n: usize,
        },
        /// The joints of a batch may be handled.
        Handling {
            /// Number of the batch.
            batch: i64,
            /// Numbers of the jobs whose clubs were glued from it.
            jobs: Vec<i64>,
        },
        /// The joints of a batch have their full cure.
        FullCure {
            /// Number of the batch.
            batch: i64,
            /// Numbers of the jobs whose clubs were glued from it.
            jobs: Vec<i64>,
        },
        /// Ordered parts are expected.
        PartsExpected {
            /// Number of the order.
            order: i64,
            /// How many are still to come.
            n: i64,
            /// Code of their model.
            model: String,
        },
        /// Parts ordered of a supplier are expected.
        PartsExpectedFrom {
            /// Number of the order.
            order: i64,
            /// How many are still to come.
            n: i64,
            /// Code of their model.
            model: String,
            /// Of whom.
            supplier: String,
        },
    }
}

impl CalendarEntry {
    /// An entry of a whole day.
    #[must_use]
    pub fn on(uid: String, on: Date, page: String, what: CalendarWhat) -> Self {
        Self { uid, on: Some(on), at: None, page, what }
    }

    /// An entry of a moment.
    #[must_use]
    pub fn at(uid: String, at: Timestamp, page: String, what: CalendarWhat) -> Self {
        Self { uid, on: None, at: Some(at), page, what }
    }

    /// When it begins, for the order of a list; a day at its midnight in UTC.
    #[must_use]
    pub fn begins(&self) -> Timestamp {
        let day = || self.on.and_then(|on| on.to_zoned_datetime(TimeZone::UTC).ok()).map(|zoned| zoned.timestamp());
        self.at.or_else(day).unwrap_or(Timestamp::UNIX_EPOCH)
    }
}

/// The entries as an iCalendar file, made at a time. `shop` is what the calendar is called; with the `address` that the shop
/// is reached by, each entry leads to its page.
///
/// # Examples
///
/// ```
/// use desk::calendar::{CalendarEntry, CalendarWhat, to_ics};
///
/// let due = CalendarWhat::JobDue { job: 12, player: "A. Sample".into(), n: 8 };
/// let entry = CalendarEntry::on("0199c2a4-due@setwright".into(), jiff::civil::date(2026, 12, 4), "/plan/12".into(), due);
/// let words = words::Words::english(trade::shop::Units::default());
/// let file = to_ics("Bench", &[entry], &words, jiff::Timestamp::UNIX_EPOCH, None);
/// assert!(file.contains("DTSTART;VALUE=DATE:20261204\r\nDTEND;VALUE=DATE:20261205\r\n"));
/// ```
#[must_use]
pub fn to_ics(shop: &str, entries: &[CalendarEntry], w: &Words, made_at: Timestamp, address: Option<&str>) -> String {
    let mut file = Lines::default();
    file.add("BEGIN", "VCALENDAR");
    file.add("VERSION", "2.0");
    file.add("PRODID", "-//Setwright//Calendar//EN");
    file.add("CALSCALE", "GREGORIAN");
    file.add("NAME", &escaped(shop));
    file.add("REFRESH-INTERVAL;VALUE=DURATION", FETCHED_EACH);
    for entry in entries {
        file.add("BEGIN", "VEVENT");
        file.add("UID", &escaped(&entry.uid));
        file.add("DTSTAMP", &utc(made_at));
        if let Some(on) = entry.on {
            file.add("DTSTART;VALUE=DATE", &day(on));
            // The end is the first day after it (RFC 5545, 3.6.1).
            file.add("DTEND;VALUE=DATE", &day(on.tomorrow().unwrap_or(on)));
        }
        if let Some(at) = entry.at {
            // The second after: a clock that ends at a fraction of one is over by then.
            file.add("DTSTART", &utc(up_to_the_second(at)));
        }
        file.add("SUMMARY", &escaped(&words::capital(&w.tell(&entry.what))));
        // It tells of a day and keeps nobody busy.
        file.add("TRANSP", "TRANSPARENT");
        if let Some(address) = address {
            file.add("URL", &format!("{address}{}", entry.page));
        }
        file.add("END", "VEVENT");
    }
    file.add("END", "VCALENDAR");
    file.0
}

fn up_to_the_second(at: Timestamp) -> Timestamp {
    let over = SignedDuration::from_nanos(i64::from(at.subsec_nanosecond()));
    let whole = at.checked_sub(over).unwrap_or(at);
    if over.is_positive() { whole.checked_add(SignedDuration::from_secs(1)).unwrap_or(whole) } else { whole }
}

fn day(on: Date) -> String {
    on.strftime("%Y%m%d").to_string()
}

fn utc(at: Timestamp) -> String {
    at.strftime("%Y%m%dT%H%M%SZ").to_string()
}

/// A text with the escapes of RFC 5545, 3.3.11; control characters, which no text may have, are left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.replace("\r\n", "\n").chars() {
        match letter {
            '\\' | ';' | ',' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            '\t' => out.push(letter),
            control if control.is_control() => {}
            other => out.push(other),
        }
    }
    out
}

/// The lines of the file.
#[derive(Default)]
struct Lines(String);

impl Lines {
    /// Adds a content line, folded where it is too long: what goes on begins with a blank, and no letter is cut in two.
    fn add(&mut self, name: &str, value: &str) {
        let mut octets = 0;
        for letter in name.chars().chain([':']).chain(value.chars()) {
            if octets + letter.len_utf8() > LINE_OCTETS {
                self.0.push_str("\r\n ");
                octets = 1;
            }
            // Writing to a string does not fail.
            let _ = self.0.write_char(letter);
            octets += letter.len_utf8();
        }
        self.0.push_str("\r\n");
    }
}

#[cfg(test)]
mod tests {
    use super::{CalendarEntry, CalendarWhat, LINE_OCTETS, escaped, to_ics, up_to_the_second, utc};
    use jiff::Timestamp;
    use jiff::civil::date;
    use trade::shop::Units;
    use words::Words;

    fn file(player: &str) -> String {
        let due = CalendarWhat::JobDue { job: 7, player: player.to_owned(), n: 2 };
        let entries = [CalendarEntry::on("a-due@setwright".into(), date(2028, 2, 29), "/plan/7".into(), due)];
        to_ics("A, B; C", &entries, &Words::english(Units::default()), Timestamp::UNIX_EPOCH, None)
    }

    /// RFC 5545, 3.1: unfolding takes out each CRLF that a blank follows.
    fn unfolded(file: &str) -> Vec<String> {
        file.replace("\r\n ", "").split("\r\n").map(str::to_owned).collect()
    }

    #[test]
    fn long_lines_are_folded_between_letters_and_come_back_whole() {
        for player in ["Ł".repeat(60), "李".repeat(40), "x".repeat(300), "🏌".repeat(30)] {
            let file = file(&player);
            assert!(file.split("\r\n").all(|line| line.len() <= LINE_OCTETS), "{file}");
            assert!(file.split("\r\n").any(|line| line.starts_with(' ')), "{file}");
            let lines = unfolded(&file);
            assert!(lines.iter().any(|l| l.starts_with("SUMMARY:") && l.contains(&player)), "{lines:?}");
        }
    }

    /// The examples of RFC 5545, 3.3.11, and what a name could bring to end its line early.
    #[test]
    fn texts_have_their_escapes_and_no_name_begins_a_line() {
        let written = escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.");
        assert_eq!(written, "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
        assert_eq!(escaped("a;b,c\\d\u{7}"), "a\\;b\\,c\\\\d");
        let file = file("Eve\r\nEND:VCALENDAR");
        assert_eq!(file.matches("\r\nEND:VCALENDAR").count(), 1);
        assert!(file.contains("NAME:A\\, B\\; C\r\n"));
    }

    #[test]
    fn the_day_after_a_leap_day_ends_it() {
        let file = file("A");
        assert!(file.contains("DTSTART;VALUE=DATE:20280229\r\nDTEND;VALUE=DATE:20280301\r\n"), "{file}");
        assert!(file.ends_with("END:VEVENT\r\nEND:VCALENDAR\r\n"));
    }

    #[test]
    fn no_clock_is_told_before_it_ends() {
        let at: Timestamp = "2026-12-01T05:12:23.4Z".parse().expect("a time");
        assert_eq!(utc(up_to_the_second(at)), "20261201T051224Z");
        let whole: Timestamp = "2026-12-01T05:12:23Z".parse().expect("a time");
        assert_eq!(utc(up_to_the_second(whole)), "20261201T051223Z");
    }
}
