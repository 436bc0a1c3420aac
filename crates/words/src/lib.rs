//! Every sentence of the product: a fact, units and a language become text.
//!
//! A language is a folder of texts, one file a noun of the trade: `texts/en/sheet.ftl`. A text may be edited there without
//! knowing any Rust. A second language is a second folder with the same files. The form of the files is that of Project
//! Fluent, an open localisation format: `name = text with a { $figure }`.
//!
//! [`Words`] is the reader for whom a text is made: the language, the units, the shop's time zone. It is an argument of
//! everything that shows something; nothing keeps it.
//!
//! # Examples
//!
//! ```
//! use fact::Told;
//! use quantity::{LengthUnit, MassUnit, Units};
//! use words::Words;
//!
//! let ounces = Words::english(Units { mass: MassUnit::Ounce, ..Units::default() });
//! assert_eq!(ounces.mass(28.349_52), "1.000 oz");
//! let told = Told::new("refusal.unknown").with("what", "head model").with("name", "H-9");
//! assert_eq!(ounces.tell(&told), "there is no head model “H-9”");
//! ```

#[cfg(test)]
mod tests;

mod amount;
pub mod check;
mod club;
mod files;
mod guide;
mod language;
mod rich;
mod shown;
mod speak;
mod units;

pub use amount::Amount;
pub use guide::Chapter;
pub use language::{Language, TextError};
pub use rich::Piece;
pub use speak::{may_have_facts, speak};
pub use units::signed;

use fact::{Fact, Figure, Refusal, Told};
use jiff::tz::TimeZone;
use quantity::{LengthUnit, MassUnit, Units};

/// For whom a text is made.
#[derive(Debug, Clone)]
pub struct Words {
    language: &'static Language,
    /// Units of masses and lengths.
    pub units: Units,
    zone: TimeZone,
    decimal_comma: bool,
}

/// A text of the catalogue with its figures by name: `text!(w, "job-due", on = date)`.
///
/// The name of a figure ends in its unit, as the names of a fact's figures do.
#[macro_export]
macro_rules! text {
    ($words:expr, $id:literal $(,)?) => { $words.text($id) };
    ($words:expr, $id:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $words.text_with($id, &[$((stringify!($name), $crate::figure(&$value))),+])
    };
}

/// A figure from anything that a fact may carry.
#[must_use]
pub fn figure(value: &(impl fact::ToFigure + ?Sized)) -> Figure {
    value.to_figure()
}

impl Words {
    /// For a reader of English, with the times of UTC.
    #[must_use]
    pub fn english(units: Units) -> Self {
        Self::new(Language::english(), units, TimeZone::UTC)
    }

    /// For a reader of a language, at a shop of this time zone. Figures have the decimal sign of the language.
    #[must_use]
    pub fn new(language: &'static Language, units: Units, zone: TimeZone) -> Self {
        Self { language, units, zone, decimal_comma: language.has_decimal_comma() }
    }

    /// The same reader, whose figures have a comma in place of the point: `264,3 g`. Entries are read either way.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let words = Words::english(Units::default()).with_decimal_comma(true);
    /// assert_eq!(words.mass(264.3), "264,3 g");
    /// assert_eq!(words.swing_weight(32.1), "D2,1");
    /// ```
    #[must_use]
    pub fn with_decimal_comma(self, decimal_comma: bool) -> Self {
        Self { decimal_comma, ..self }
    }

    /// Whether figures have a comma in place of the point.
    #[must_use]
    pub fn has_decimal_comma(&self) -> bool {
        self.decimal_comma
    }

    /// A figure that was written with a point and a hyphen, as this reader reads it: a true minus sign, and a comma where the
    /// reader wants one.
    #[must_use]
    pub fn printed(&self, figure: &str) -> String {
        let text = units::minus(figure);
        if self.decimal_comma { text.replace('.', ",") } else { text }
    }

    /// For a program: its documents carry millimetres and grams in the names of their fields, so that it is told in them.
    #[must_use]
    pub fn of_documents(language: &'static Language, zone: TimeZone) -> Self {
        let units = Units { length: LengthUnit::Millimetre, mass: MassUnit::Gram };
        Self::new(language, units, zone)
    }

    /// The language.
    #[must_use]
    pub fn language(&self) -> &'static Language {
        self.language
    }

    /// Code of the language (BCP 47): `en`.
    #[must_use]
    pub fn language_code(&self) -> &str {
        self.language.code()
    }

    /// The chapters of the guide.
    #[must_use]
    pub fn guide(&self) -> &'static [Chapter] {
        self.language.guide()
    }

    /// The time zone in which moments are shown.
    #[must_use]
    pub fn zone(&self) -> &TimeZone {
        &self.zone
    }

    /// A text without figures.
    #[must_use]
    pub fn text(&self, id: &str) -> String {
        self.text_with(id, &[])
    }

    /// A text with figures; most callers use [`text!`].
    #[must_use]
    pub fn text_with(&self, id: &str, figures: &[(&str, Figure)]) -> String {
        self.language.write(id, figures.iter().map(|(name, figure)| (*name, figure)), self)
    }

    /// A text whose phrases are marked, as `Go to <a>Sheets</a>.`, in its pieces.
    #[must_use]
    pub fn pieces(&self, id: &str, figures: &[(&str, Figure)]) -> Vec<Piece> {
        rich::pieces(self, id, figures)
    }

    /// A fact as a phrase: no capital, no full stop, unless the text has them.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::Told;
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let told = Told::new("refusal.unknown").with("what", "head model").with("name", "H-9");
    /// assert_eq!(Words::english(Units::default()).tell(&told), "there is no head model “H-9”");
    /// ```
    #[must_use]
    pub fn tell(&self, fact: &impl Fact) -> String {
        self.told(&fact.told())
    }

    /// The same for a fact as data.
    #[must_use]
    pub fn told(&self, told: &Told) -> String {
        match told.figure("what") {
            Some(Figure::Fact(what)) if told.code() == Refusal::IN_FULL => {
                let next = match told.figure("next") {
                    Some(Figure::Fact(next)) => Some(self.told(next)),
                    _ => self.next_of(what),
                };
                self.in_full(self.told(what), next)
            }
            Some(Figure::Fact(what)) if told.code() == Refusal::NEXT_OF => {
                self.next_of(what).unwrap_or_else(|| self.text("refusal-without-next"))
            }
            _ => self.language.write(&language::id_of(told.code()), told.figures(), self),
        }
    }

    /// A fact as a sentence: a capital at its beginning, a full stop at its end.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::Told;
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let told = Told::new("refusal.unknown").with("what", "head model").with("name", "H-9");
    /// assert_eq!(Words::english(Units::default()).sentence(&told), "There is no head model “H-9”.");
    /// ```
    #[must_use]
    pub fn sentence(&self, fact: &impl Fact) -> String {
        sentence(&self.tell(fact))
    }

    /// What is wrong and what to do next, in one text.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let refusal = Refusal::new(&Told::new("short_sheet.no_head_model"));
    /// assert_eq!(
    ///     Words::english(Units::default()).refusal(&refusal),
    ///     "the set has no head model. Choose at least one"
    /// );
    /// ```
    #[must_use]
    pub fn refusal(&self, refusal: &Refusal) -> String {
        self.in_full(self.told(refusal.fact()), self.next(refusal))
    }

    /// What to do next after a refusal, where there is something.
    #[must_use]
    pub fn next(&self, refusal: &Refusal) -> Option<String> {
        refusal.what_next().map_or_else(|| self.next_of(refusal.fact()), |next| Some(self.told(next)))
    }

    /// What to do next after a fact: what stands beside its text, or beside that of the fact which it has as its `what`.
    fn next_of(&self, told: &Told) -> Option<String> {
        let own = self.language.next(&language::id_of(told.code()), told.figures(), self);
        own.or_else(|| match told.figure("what") {
            Some(Figure::Fact(what)) => self.next_of(what),
            _ => None,
        })
    }

    /// The same where the words of the fact do not have it already.
    fn next_beside(&self, told: &Told) -> Option<String> {
        if told.code() == Refusal::IN_FULL { None } else { self.next_of(told) }
    }

    fn in_full(&self, what: String, next: Option<String>) -> String {
        match next {
            Some(next) => {
                self.text_with("refusal-with-next", &[("what", Figure::Text(what)), ("next", Figure::Text(next))])
            }
            None => what,
        }
    }

    /// Several as a list in a sentence: `a, b and c`.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let clubs = ["7", "8", "PW"].map(str::to_owned);
    /// assert_eq!(Words::english(Units::default()).list(&clubs), "7, 8 and PW");
    /// ```
    #[must_use]
    pub fn list(&self, items: &[String]) -> String {
        let pair = |id: &str, a: &str, b: &str| {
            self.text_with(id, &[("a", Figure::Text(a.to_owned())), ("b", Figure::Text(b.to_owned()))])
        };
        match items {
            [] => String::new(),
            [only] => only.clone(),
            [before @ .., last] => {
                let mut text = before[0].clone();
                for item in &before[1..] {
                    text = pair("list-more", &text, item);
                }
                pair("list-last", &text, last)
            }
        }
    }
}

/// A phrase with a capital at its beginning.
///
/// # Examples
///
/// ```
/// assert_eq!(words::capital("the head is too heavy"), "The head is too heavy");
/// ```
#[must_use]
pub fn capital(phrase: &str) -> String {
    let mut letters = phrase.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A phrase as a sentence: a capital at its beginning, a full stop at its end.
#[must_use]
pub fn sentence(phrase: &str) -> String {
    let mut text = capital(phrase);
    if text.is_empty() {
        return text;
    }
    if !text.ends_with(['.', '!', '?', ':', '…']) {
        text.push('.');
    }
    text
}
