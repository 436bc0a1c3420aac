//! What was typed into a form: read in the workshop's notation, kept as it was typed, each mistake beside its field.

use super::beside;
use super::measured::Measured;
use crate::cookies::{DONE, keep_for_next};
use crate::problem::EdgeFault;
use crate::tablet::Done;
use app::AppError;
use axum::extract::Multipart;
use axum::http::StatusCode;
use axum::response::{AppendHeaders, IntoResponse, Redirect, Response};
use fact::{Fact, Refusal};
use jiff::Timestamp;
use jiff::civil::Date;
use look::{Cell, Choice, Column, Field, Notice, Select, Table, Tone, field, select, table, text_area};
use maud::{Markup, html};
use percent_encoding::{AsciiSet, CONTROLS, NON_ALPHANUMERIC, utf8_percent_encode};
use quantity::{INCH_MM, LengthUnit, SwingWeight};
use std::collections::BTreeMap;
use trade::pendulum::{Pendulum, Timed};
use words::{Words, text};

/// The fields of a form as they were typed, and what was wrong with them.
#[derive(Debug, Default, Clone)]
pub(super) struct Entries {
    pairs: Vec<(String, String)>,
    wrong: BTreeMap<String, String>,
}

impl Entries {
    pub fn new(pairs: Vec<(String, String)>) -> Self {
        Self { pairs, wrong: BTreeMap::new() }
    }

    /// A multipart form: its texts, and the bytes of the file under `file` where one was chosen.
    pub async fn with_file(mut form: Multipart) -> Result<(Self, Option<Vec<u8>>), EdgeFault> {
        let (mut pairs, mut file) = (Vec::new(), None);
        let broken = |e: axum::extract::multipart::MultipartError| match e.status() {
            StatusCode::PAYLOAD_TOO_LARGE => {
                EdgeFault::TooLarge { size_mb: None, most_mb: app::stock::IMPORT_MAX_BYTES / (1024 * 1024) }
            }
            _ => EdgeFault::FileBroken,
        };
        while let Some(part) = form.next_field().await.map_err(broken)? {
            let name = part.name().unwrap_or_default().to_owned();
            let bytes = part.bytes().await.map_err(broken)?;
            if name == "file" {
                file = Some(bytes.to_vec()).filter(|b| !b.is_empty());
            } else {
                pairs.push((name, String::from_utf8_lossy(&bytes).into_owned()));
            }
        }
        Ok((Self::new(pairs), file))
    }

    /// As typed, without the blanks around it; empty where nothing was sent.
    pub fn text(&self, name: &str) -> &str {
        self.raw(name).trim()
    }

    /// As typed.
    pub fn raw(&self, name: &str) -> &str {
        self.pairs.iter().find(|(k, _)| k == name).map_or("", |(_, v)| v)
    }

    /// The text, where there is one.
    pub fn some(&self, name: &str) -> Option<String> {
        Some(self.text(name).to_owned()).filter(|t| !t.is_empty())
    }

    /// Every value sent under a name, as check boxes do.
    pub fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.pairs.iter().filter(move |(k, _)| k == name).map(|(_, v)| v.as_str())
    }

    pub fn has(&self, name: &str, value: &str) -> bool {
        self.all(name).any(|v| v == value)
    }

    pub fn pairs(&self) -> &[(String, String)] {
        &self.pairs
    }

    pub fn set(&mut self, name: &str, value: impl Into<String>) {
        self.pairs.retain(|(k, _)| k != name);
        self.pairs.push((name.to_owned(), value.into()));
    }

    /// Puts a mistake beside its field; the first one stays.
    pub fn refuse(&mut self, name: &str, words: impl Into<String>) {
        self.wrong.entry(name.to_owned()).or_insert_with(|| words.into());
    }

    pub fn error(&self, name: &str) -> Option<&str> {
        self.wrong.get(name).map(String::as_str)
    }

    pub fn is_sound(&self) -> bool {
        self.wrong.is_empty()
    }

    /// Names of the fields with a mistake.
    pub fn mistakes(&self) -> impl Iterator<Item = &str> {
        self.wrong.keys().map(String::as_str)
    }

    /// The message over a page whose form has mistakes.
    pub fn notice(&self, w: &Words) -> Option<Notice> {
        let count = self.wrong.len();
        (count > 0).then(|| Notice {
            tone: Tone::Bad,
            text: text!(w, "form-wrong", n = count),
            next: w.text("form-wrong-next"),
        })
    }

    fn read<T, E: Fact>(&mut self, w: &Words, name: &str, read: impl Fn(&str) -> Result<T, E>) -> Option<T> {
        let text = self.text(name).to_owned();
        if text.is_empty() {
            return None;
        }
        match read(&text) {
            Ok(value) => Some(value),
            Err(error) => {
                self.refuse(name, beside(w, &Refusal::new(&error)));
                None
            }
        }
    }

    /// A plain number; a decimal comma is taken.
    pub fn number(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, plain_number)
    }

    /// A whole number from 0.
    pub fn count(&mut self, w: &Words, name: &str) -> Option<i64> {
        self.read(w, name, |t| {
            t.parse::<i64>().ok().filter(|n| *n >= 0).ok_or_else(|| FormFault::Count { text: t.to_owned() })
        })
    }

    /// A length in workshop notation, in the person's unit where none stands.
    pub fn length_mm(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, |t| quantity::parse_length(t, w.units.length)).map(quantity::Length::mm)
    }

    /// A mass or a length in the reader's unit where none stands, in the unit that its document keeps.
    pub fn measured(&mut self, w: &Words, name: &str, unit: Measured) -> Option<f64> {
        self.read(w, name, |t| unit.read(w, t))
    }

    /// A mass in workshop notation, in the person's unit where none stands.
    pub fn mass_g(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, |t| quantity::parse_mass(t, w.units.mass)).map(quantity::Mass::g)
    }

    /// A figure of a part in workshop notation, in the person's unit where none stands.
    pub fn part_figure(&mut self, w: &Words, field: &trade::part_field::Field) -> Option<f64> {
        self.read(w, field.name, |t| field.parse(t, w.units.mass, w.units.length))
    }

    pub fn angle_deg(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, quantity::parse_angle).map(quantity::Angle::deg)
    }

    pub fn cpm(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, quantity::parse_frequency).map(quantity::Frequency::cpm)
    }

    /// A swing weight as points since A0.
    pub fn swing_time(&mut self, w: &Words, name: &str, pendulum: &Pendulum) -> Option<Timed> {
        self.read(w, name, |text| pendulum.timed(text).map_err(|e| e.refusal()))
    }

    pub fn swing_weight_points(&mut self, w: &Words, name: &str) -> Option<f64> {
        self.read(w, name, quantity::parse_swing_weight).map(quantity::SwingMoment::points)
    }

    pub fn date(&mut self, w: &Words, name: &str) -> Option<Date> {
        self.read(w, name, |t| t.parse::<Date>().map_err(|_| FormFault::Date { text: t.to_owned() }))
    }

    /// The value that must be there.
    pub fn needed<T>(&mut self, name: &str, value: Option<T>, words: &str) -> Option<T> {
        if value.is_none() {
            self.refuse(name, words);
        }
        value
    }

    /// A field that shows what was typed and what was wrong with it; `shape` says the rest.
    pub fn field(&self, name: &str, label: &str, shape: Field<'_>) -> Markup {
        field(&Field { name, label, value: self.raw(name), error: self.error(name), ..shape })
    }

    pub fn area(&self, name: &str, label: &str, rows: u32, shape: Field<'_>) -> Markup {
        text_area(&Field { name, label, value: self.raw(name), error: self.error(name), ..shape }, rows)
    }

    /// A list to choose from, by value and words.
    pub fn select(&self, name: &str, label: &str, hint: &str, choices: &[(&str, impl AsRef<str>)]) -> Markup {
        let typed = self.raw(name);
        select(&Select {
            name,
            label,
            hint,
            error: self.error(name),
            choices: choices
                .iter()
                .map(|(value, label)| Choice { value, label: label.as_ref().into(), chosen: *value == typed })
                .collect(),
        })
    }
}

/// A number as people write it.
pub(super) fn plain_number(text: &str) -> Result<f64, FormFault> {
    let plain = text.trim().replace(',', ".").replace('−', "-");
    plain
        .parse::<f64>()
        .ok()
        .filter(|v| v.is_finite())
        .ok_or_else(|| FormFault::Number { text: text.trim().to_owned() })
}

/// With a capital letter at the front.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A length as it is typed: `36 3/4` where the inch takes a 1/16 and the person works in inches, else millimetres with
/// their unit.
pub(super) fn typed_length(w: &Words, mm: f64) -> String {
    if w.units.length != LengthUnit::Inch {
        return format!("{} mm", plain(mm));
    }
    let sixteenths = mm / INCH_MM * 16.0;
    if (sixteenths - sixteenths.round()).abs() < 0.01 {
        quantity::Length::from_mm(mm).print_inches().trim_end_matches("in").trim().to_owned()
    } else {
        format!("{} mm", plain(mm))
    }
}

/// A swing weight as it is typed.
pub(super) fn typed_swing_weight(points: f64) -> String {
    let swing_weight = SwingWeight::from_points(points);
    // Two decimals where the sheet has them; most have none or one.
    let tenths = points * 10.0;
    if (tenths - tenths.round()).abs() < 1e-6 { swing_weight.letter_short() } else { swing_weight.letter(2) }
}

/// A number without closing zeros, at most four decimals.
pub(super) fn plain(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// What a value may not contain as one piece of an address: all but the unreserved characters of RFC 3986, 2.3.
const RESERVED: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// What a whole address may not contain: all but the reserved and unreserved characters of RFC 3986, 2, and `%`.
const NOT_OF_ADDRESSES: &AsciiSet =
    &CONTROLS.add(b' ').add(b'"').add(b'<').add(b'>').add(b'\\').add(b'^').add(b'`').add(b'{').add(b'|').add(b'}');

/// A value as one piece of an address.
pub(super) fn in_address(text: &str) -> String {
    utf8_percent_encode(text, RESERVED).to_string()
}

/// When an entry was typed that a tablet kept while the network was away; none for one that is sent at once.
///
/// # Errors
/// A text that is no time: the script of the page writes it, so nobody can correct it there.
pub(super) fn typed_at(text: &str) -> Result<Option<Timestamp>, AppError> {
    if text.is_empty() {
        return Ok(None);
    }
    text.parse().map(Some).map_err(|_| AppError::invalid(EdgeFault::NotEntryTime { text: text.to_owned() }))
}

/// The readings that a form says its screen knew, with spaces between.
pub(super) fn seen(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}

/// Leads on to an address of ours, where a sentence confirms what was done.
pub(super) fn go_on(address: &str, done: Done) -> Response {
    (AppendHeaders([keep_for_next(DONE, done.text())]), go_to(address)).into_response()
}

/// Leads on to an address of ours. What was typed may be part of it, such as a line break in the name of a step: what
/// cannot stand in an address (RFC 3986, 2) is written as a code.
pub(super) fn go_to(address: &str) -> Redirect {
    Redirect::to(&utf8_percent_encode(address, NOT_OF_ADDRESSES).to_string())
}

/// The query of an address, without what is empty.
pub(super) fn query(pairs: &[(&str, &str)]) -> String {
    let pairs: Vec<String> =
        pairs.iter().filter(|(_, v)| !v.is_empty()).map(|(k, v)| format!("{k}={}", in_address(v))).collect();
    if pairs.is_empty() { String::new() } else { format!("?{}", pairs.join("&")) }
}

/// A table of words and figures.
pub(super) fn words_table(caption: &str, columns: Vec<Column<'_>>, rows: Vec<Vec<Cell>>) -> Markup {
    table(&Table { caption, columns, rows, ..Table::default() })
}

/// The same with each row a card on a phone: for few rows whose last columns must not be out of sight.
pub(super) fn words_cards(caption: &str, columns: Vec<Column<'_>>, rows: Vec<Vec<Cell>>) -> Markup {
    table(&Table { caption, columns, rows, cards: true, ..Table::default() })
}

/// Fields that belong together, under a small heading.
pub(super) fn group(title: &str, body: &Markup) -> Markup {
    html! { div.section role="group" aria-label=(title) { h2 { (title) } (body) } }
}

fact::facts! {
    /// What cannot be read of an entry of a form.
    pub(crate) enum FormFault: "form_fault" {
        Number { text: String },
        Count { text: String },
        Date { text: String },
        Tip { text: String },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn what_is_typed_is_kept_and_its_mistake_named() {
        let mut form = Entries::new(vec![("length".into(), "36 3/4".into()), ("lie".into(), "sixty".into())]);
        assert_eq!(form.length_mm(&w(), "length"), Some(933.45));
        assert_eq!(form.angle_deg(&w(), "lie"), None);
        assert!(!form.is_sound());
        let shown = form.field("lie", "Lie", Field::default()).into_string();
        assert!(shown.contains(r#"value="sixty""#) && shown.contains("aria-invalid"), "{shown}");
    }

    #[test]
    fn lengths_come_back_as_they_are_typed() {
        assert_eq!(typed_length(&w(), 933.45), "36 3/4");
        assert_eq!(typed_length(&w(), 940.0), "940 mm");
        assert_eq!(typed_swing_weight(32.0), "D2");
        assert_eq!(typed_swing_weight(31.95), "D1.95");
        assert_eq!(plain(-0.00001), "0");
    }

    #[test]
    fn an_address_holds_any_code() {
        assert_eq!(query(&[("a", "H 7/é"), ("b", "")]), "?a=H%207%2F%C3%A9");
        assert_eq!(
            in_address("aZ9-._~ \"#%&+/:;<=>?@[\\]^`{|}"),
            "aZ9-._~%20%22%23%25%26%2B%2F%3A%3B%3C%3D%3E%3F%40%5B%5C%5D%5E%60%7B%7C%7D"
        );
    }

    #[test]
    fn an_address_of_ours_keeps_its_signs_and_codes_what_cannot_stand_in_one() {
        let to = |address: &str| {
            let response = go_to(address).into_response();
            response.headers()["location"].to_str().expect("plain letters").to_owned()
        };
        let signs = "/a-._~:/?#[]@!$&'()*+,;=%20";
        assert_eq!(to(signs), signs);
        assert_eq!(to("/x\r\ny \"<>\\^`{|}\u{7f}ü"), "/x%0D%0Ay%20%22%3C%3E%5C%5E%60%7B%7C%7D%7F%C3%BC");
    }
}
