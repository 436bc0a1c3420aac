//! How a figure is shown in a text.
//!
//! The end of a figure's name says what it is: `_g` a mass, `_mm` a length, `_points` a difference of swing weights, `_deg` an
//! angle, `_cpm` a frequency, `_share` a part of a whole, `_on` a day, `_at` a moment. A text may ask for another form by a
//! function: `{ LETTER($now_points) }`, `{ MASS($by_g, digits: 2, signed: 1) }`.
//!
//! | function | shows |
//! |---|---|
//! | `MASS`, `LENGTH` | with `digits` decimals of a gram or an inch |
//! | `LETTER` | a swing weight on the letter scale: `D2.1`; with `digits: 0` a whole one as `D2` |
//! | `POINTS`, `ANGLE`, `CPM` | with `digits` decimals |
//! | `PLAIN` | the figure alone, with `digits` decimals, in the reader's unit |
//! | `PERCENT` | a share as a percentage |
//! | `DAY`, `CLOCK` | of a moment or day: `29 Nov`, `05:01` |
//! | `FIGURE` | as it was given, to six digits: `0.335 in`, `1600 mm`, `10000` |
//! | `WEEKDAY` | the day of the week of a day: `Tuesday` |
//! | `CAPITAL` | with a capital at its beginning |
//! | `CLUB` | nothing: the number of a club in one spelling, to choose by |
//!
//! `signed: 1` writes a plus as well as a minus. Where the decimals are a figure of the fact, it is the second in the
//! brackets: `{ MASS($by_g, $digits) }`.

use crate::units::{minus, signed};
use crate::{Words, text};
use fact::Figure;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::types::FluentType;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use quantity::{LengthUnit, MassUnit};
use std::borrow::Cow;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Mass,
    Length,
    Points,
    Angle,
    Frequency,
    Share,
    /// A bare figure with decimals, for a reader who has a comma before them.
    Bare,
    Day,
    Moment,
}

fn kind_of(name: &str) -> Option<Kind> {
    let kind = |end: &str| match end {
        "g" => Some(Kind::Mass),
        "mm" => Some(Kind::Length),
        "points" => Some(Kind::Points),
        "deg" => Some(Kind::Angle),
        "cpm" => Some(Kind::Frequency),
        "share" => Some(Kind::Share),
        "on" => Some(Kind::Day),
        "at" => Some(Kind::Moment),
        _ => None,
    };
    name.rsplit('_').next().and_then(kind)
}

/// A figure with what it takes to show it.
#[derive(Debug, Clone)]
struct Shown {
    kind: Kind,
    value: f64,
    text: String,
    words: Words,
}

impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        (self.kind, self.value.to_bits(), &self.text) == (other.kind, other.value.to_bits(), &other.text)
    }
}

impl FluentType for Shown {
    fn duplicate(&self) -> Box<dyn FluentType + Send> {
        Box::new(self.clone())
    }

    fn as_string(&self, _: &intl_memoizer::IntlLangMemoizer) -> Cow<'static, str> {
        Cow::Owned(self.plainly())
    }

    fn as_string_threadsafe(&self, _: &intl_memoizer::concurrent::IntlLangMemoizer) -> Cow<'static, str> {
        Cow::Owned(self.plainly())
    }
}

impl Shown {
    fn plainly(&self) -> String {
        let words = &self.words;
        match self.kind {
            Kind::Mass => words.mass(self.value),
            Kind::Length => words.length(self.value),
            Kind::Points => words.points(self.value),
            Kind::Angle => words.angle(self.value),
            Kind::Frequency => format!("{} cpm", words.printed(&quantity::decimal(self.value, 1))),
            Kind::Share => percent(words, self.value, 0),
            Kind::Bare => words.printed(&quantity::round_to(self.value, 9).to_string()),
            Kind::Day => self.text.parse().map_or_else(|_| self.text.clone(), |day| words.date(day)),
            Kind::Moment => self.text.parse().map_or_else(|_| self.text.clone(), |at| words.moment(at)),
        }
    }

    /// In the reader's unit, with no more digits than the figure has.
    fn as_given(&self) -> String {
        let (words, figure) = (&self.words, self.words.printed(&to_six_digits(self.value)));
        match self.kind {
            Kind::Mass if words.units.mass != MassUnit::Ounce => format!("{figure} {}", words.mass_sign()),
            Kind::Length if words.units.length != LengthUnit::Inch => format!("{figure} {}", words.length_sign()),
            Kind::Points if self.value == 1.0 => text!(words, "figure-point", figure = figure),
            Kind::Points => text!(words, "figure-points", figure = figure),
            Kind::Angle => format!("{figure}°"),
            Kind::Frequency => format!("{figure} cpm"),
            Kind::Bare => figure,
            _ => self.plainly(),
        }
    }

    /// The figure alone, in the reader's unit.
    fn alone(&self, digits: Option<u8>) -> String {
        let words = &self.words;
        let text = match (self.kind, digits) {
            (Kind::Mass, digits) => words.mass_to(self.value, digits.unwrap_or(1)),
            (Kind::Length, digits) => words.length_to(self.value, digits.unwrap_or(2)),
            (_, digits) => words.printed(&quantity::decimal(self.value, digits.unwrap_or(1))),
        };
        text.split(' ').next().unwrap_or_default().to_owned()
    }
}

fn percent(words: &Words, share: f64, digits: u8) -> String {
    format!("{} %", words.printed(&quantity::decimal(share * 100.0, digits)))
}

/// The figure of this name as the library of the texts takes it.
pub(crate) fn value<'a>(name: &str, figure: &Figure, words: &Words) -> FluentValue<'a> {
    let shown = |kind, value, text: &str| {
        FluentValue::Custom(Box::new(Shown { kind, value, text: text.to_owned(), words: words.clone() }))
    };
    match (figure, kind_of(name)) {
        (Figure::Number(value), Some(kind)) if !matches!(kind, Kind::Day | Kind::Moment) => shown(kind, *value, ""),
        // A text chooses by whole numbers only: those stay numbers.
        (Figure::Number(value), _) if words.has_decimal_comma() && value.fract() != 0.0 => {
            shown(Kind::Bare, *value, "")
        }
        (Figure::Number(value), _) => FluentValue::from(quantity::round_to(*value, 9)),
        // A whole number that came back from a document.
        (Figure::Count(count), Some(kind)) if !matches!(kind, Kind::Day | Kind::Moment) => {
            shown(kind, *count as f64, "")
        }
        (Figure::Count(count), _) => FluentValue::from(*count),
        (Figure::Text(text), Some(kind @ (Kind::Day | Kind::Moment))) => shown(kind, f64::NAN, text),
        (Figure::Text(text), _) => FluentValue::from(text.clone()),
        (Figure::Fact(told), _) => FluentValue::from(words.told(told)),
        (Figure::Absent, _) => FluentValue::from("none"),
        (Figure::List(items), _) => {
            let items: Vec<String> = items.iter().map(|item| written(name, item, words)).collect();
            FluentValue::from(words.list(&items))
        }
    }
}

/// One figure of a text or of a list, without the text around it.
#[cfg(test)]
pub(crate) fn as_text(name: &str, figure: &Figure, words: &Words) -> String {
    written(name, figure, words)
}

/// One figure of a list as text.
fn written(name: &str, figure: &Figure, words: &Words) -> String {
    match value(name, figure, words) {
        FluentValue::String(text) => text.into_owned(),
        FluentValue::Number(number) => number.as_string().into_owned(),
        FluentValue::Custom(shown) => shown.as_any().downcast_ref::<Shown>().map(Shown::plainly).unwrap_or_default(),
        FluentValue::None | FluentValue::Error => String::new(),
    }
}

/// Decimals asked for: written in the text, `digits: 2`, or a figure of the fact, `MASS($by_g, $digits)`.
fn digits(given: &[FluentValue<'_>], named: &FluentArgs<'_>) -> Option<u8> {
    match named.get("digits").or(given.get(1)) {
        Some(FluentValue::Number(number)) => Some(number.value as u8),
        _ => None,
    }
}

fn sign(named: &FluentArgs<'_>, text: String, value: f64) -> String {
    if named.get("signed").is_some() { signed(text, value) } else { text }
}

/// One function of the texts: how it shows a figure of ours, or a bare number.
type Form = fn(&Shown, Option<u8>) -> String;

const FORMS: &[(&str, Form)] = &[
    ("MASS", |s, digits| s.words.mass_to(s.value, digits.unwrap_or(1))),
    ("LENGTH", |s, digits| digits.map_or_else(|| s.words.length(s.value), |d| s.words.length_to(s.value, d))),
    ("LETTER", |s, digits| match digits {
        Some(0) => s.words.swing_weight_short(s.value),
        None | Some(1) => s.words.swing_weight(s.value),
        Some(d) => s.words.printed(&quantity::SwingWeight::from_points(s.value).letter(d)),
    }),
    ("POINTS", |s, digits| match digits {
        None | Some(1) => s.words.points(s.value),
        Some(d) => text!(s.words, "figure-points", figure = s.words.printed(&quantity::decimal(s.value, d))),
    }),
    ("ANGLE", |s, digits| format!("{}°", s.words.printed(&quantity::decimal(s.value, digits.unwrap_or(1))))),
    ("CPM", |s, digits| format!("{} cpm", s.words.printed(&quantity::decimal(s.value, digits.unwrap_or(1))))),
    ("PLAIN", Shown::alone),
    ("PERCENT", |s, digits| percent(&s.words, s.value, digits.unwrap_or(0))),
    ("DAY", |s, _| {
        let at = s.text.parse().ok().map(|at| s.words.day_of(at));
        at.or_else(|| s.text.parse().ok()).map_or_else(|| s.text.clone(), |day| s.words.day(day))
    }),
    ("WEEKDAY", |s, _| s.text.parse().map_or_else(|_| s.text.clone(), |day| s.words.weekday(day))),
    ("CLOCK", |s, _| s.text.parse().map_or_else(|_| s.text.clone(), |at| s.words.clock(at))),
];

pub(crate) fn add_functions(texts: &mut FluentBundle<FluentResource>) {
    for (name, form) in FORMS {
        // A name twice would be a mistake in the table above; the tests of the texts would meet it.
        let added = texts.add_function(name, move |given, named| show(*form, given, named));
        debug_assert!(added.is_ok(), "{name} is there twice");
    }
    let added = texts.add_function("CAPITAL", |given, _| capital(given));
    debug_assert!(added.is_ok());
    let added = texts.add_function("FIGURE", |given, _| as_given(given));
    debug_assert!(added.is_ok());
    let added = texts.add_function("CLUB", |given, _| crate::club::spelling(given));
    debug_assert!(added.is_ok());
}

fn show<'a>(form: Form, given: &[FluentValue<'a>], named: &FluentArgs<'_>) -> FluentValue<'a> {
    let digits = digits(given, named);
    match given.first() {
        Some(FluentValue::Custom(custom)) => custom
            .as_any()
            .downcast_ref::<Shown>()
            .map_or(FluentValue::Error, |shown| sign(named, form(shown, digits), shown.value).into()),
        Some(FluentValue::Number(number)) => {
            let text = minus(&quantity::decimal(number.value, digits.unwrap_or(1)));
            sign(named, text, number.value).into()
        }
        Some(text @ FluentValue::String(_)) => text.clone(),
        _ => FluentValue::Error,
    }
}

fn capital<'a>(given: &[FluentValue<'a>]) -> FluentValue<'a> {
    match given.first() {
        Some(FluentValue::String(text)) => FluentValue::from(crate::capital(text)),
        other => other.cloned().unwrap_or(FluentValue::Error),
    }
}

fn as_given<'a>(given: &[FluentValue<'a>]) -> FluentValue<'a> {
    match given.first() {
        Some(FluentValue::Custom(custom)) => custom
            .as_any()
            .downcast_ref::<Shown>()
            .map_or(FluentValue::Error, |shown| FluentValue::from(shown.as_given())),
        Some(FluentValue::Number(number)) => FluentValue::from(minus(&to_six_digits(number.value))),
        other => other.cloned().unwrap_or(FluentValue::Error),
    }
}

/// A figure as it was given where that is short, else to six digits: a limit that is worked out may have sixteen, of which
/// no one reads more than a few.
fn to_six_digits(value: f64) -> String {
    const SHORT: usize = 9;
    let exact = value.to_string();
    if exact.len() <= SHORT || !value.is_finite() {
        return exact;
    }
    let size = value.abs();
    if !(1e-6..1e9).contains(&size) {
        return format!("{value:.2e}");
    }
    // As many digits behind the point as those before it leave.
    let before = size.log10().floor() as i32 + 1;
    let rounded = format!("{:.*}", usize::try_from(6 - before).unwrap_or(0), value);
    let short = rounded.trim_end_matches('0').trim_end_matches('.');
    if rounded.contains('.') { short.to_owned() } else { rounded }
}
