//! One language: its texts, and how a text is written with its figures.

use crate::Words;
use crate::files::{ENGLISH, GERMAN};
use crate::guide::{self, Chapter};
use crate::shown;
use fact::Figure;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentError, FluentResource};
use fluent_langneg::{NegotiationStrategy, negotiate_languages, parse_accepted_languages};
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement, Resource};
use fluent_syntax::{parser, serializer};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::sync::LazyLock;
use unic_langid::LanguageIdentifier;

/// Why the texts of a language cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TextError(pub String);

impl fmt::Display for TextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for TextError {}

/// One language: its code and its texts.
pub struct Language {
    code: String,
    texts: FluentBundle<FluentResource>,
    figures: BTreeMap<String, BTreeSet<String>>,
    guide: Vec<Chapter>,
    decimal_comma: bool,
}

impl fmt::Debug for Language {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Language({}, {} texts)", self.code, self.figures.len())
    }
}

impl Language {
    /// English, which this program is written in.
    ///
    /// Its files are part of the program and read by a test; should one not be readable all the same, the names of the
    /// texts are shown in their place.
    #[must_use]
    pub fn english() -> &'static Self {
        static LANGUAGE: LazyLock<Language> = LazyLock::new(|| Language::readable("en", ENGLISH, guide::english()));
        &LANGUAGE
    }

    /// German, with the terms of German workshops (common practice, no source).
    #[must_use]
    pub fn german() -> &'static Self {
        static LANGUAGE: LazyLock<Language> = LazyLock::new(|| Language::readable("de", GERMAN, guide::german()));
        &LANGUAGE
    }

    /// Codes of the languages that there are, English first.
    pub const CODES: [&str; 2] = ["en", "de"];

    /// The language of a code; its texts are read when it is first asked for.
    ///
    /// # Examples
    ///
    /// ```
    /// use words::Language;
    ///
    /// assert_eq!(Language::of("de").map(Language::code), Some("de"));
    /// assert!(Language::of("la").is_none());
    /// ```
    #[must_use]
    pub fn of(code: &str) -> Option<&'static Self> {
        match code {
            "en" => Some(Self::english()),
            "de" => Some(Self::german()),
            _ => None,
        }
    }

    /// The first language of a wish that there is, else English. A wish is what a browser sends as `Accept-Language`, or a
    /// system has in `LANG`.
    ///
    /// # Examples
    ///
    /// ```
    /// use words::Language;
    ///
    /// assert_eq!(Language::asked("de-AT,de;q=0.9,en;q=0.8").code(), "de");
    /// assert_eq!(Language::asked("fr-FR,fr;q=0.9").code(), "en");
    /// assert_eq!(Language::asked("de_DE.UTF-8").code(), "de");
    /// ```
    #[must_use]
    pub fn asked(wish: &str) -> &'static Self {
        let plain = wish.split(['.', '@']).next().unwrap_or_default();
        // The weights of `Accept-Language` have points of their own.
        let wished = parse_accepted_languages(if wish.contains(',') || wish.contains(';') { wish } else { plain });
        let there = Self::CODES.map(|code| code.parse::<LanguageIdentifier>().unwrap_or_default());
        let best = negotiate_languages(&wished, &there, None, NegotiationStrategy::Lookup);
        let code = best.first().map_or_else(String::new, ToString::to_string);
        Self::of(&code).unwrap_or_else(Self::english)
    }

    /// Whether figures of this language have a comma where English has a point.
    #[must_use]
    pub fn has_decimal_comma(&self) -> bool {
        self.decimal_comma
    }

    /// The language's name in itself: `Deutsch`.
    #[must_use]
    pub fn own_name(&self) -> String {
        self.plain("language-name").unwrap_or_else(|| self.code.clone())
    }

    /// A text without figures, before there is a reader to show it to.
    fn plain(&self, id: &str) -> Option<String> {
        let pattern = self.texts.get_message(id)?.value()?;
        Some(self.texts.format_pattern(pattern, None, &mut Vec::new()).into_owned())
    }

    /// A language from its files: name and content of each.
    ///
    /// # Errors
    /// What is wrong with which file, beside what could be read.
    ///
    /// # Examples
    ///
    /// ```
    /// use words::Language;
    ///
    /// let german = Language::new("de", &[("glue.ftl", "glue-ready = ausgehärtet")]).expect("a text that reads");
    /// assert_eq!(german.code(), "de");
    /// assert!(german.has("glue-ready") && !german.has("glue-cold"));
    /// ```
    #[allow(clippy::result_large_err)] // Met once in the life of a program.
    pub fn new(code: &str, files: &[(&str, &str)]) -> Result<Self, (Self, Vec<TextError>)> {
        let mut errors = Vec::new();
        let id: LanguageIdentifier = code.parse().unwrap_or_else(|_| {
            errors.push(TextError(format!("“{code}” is not the code of a language; an example is “en”")));
            LanguageIdentifier::default()
        });
        let mut texts = FluentBundle::new_concurrent(vec![id]);
        // The marks would be seen by programs that read a page or an answer.
        texts.set_use_isolating(false);
        shown::add_functions(&mut texts);
        let mut figures = BTreeMap::new();
        for (name, content) in files {
            let resource = FluentResource::try_new((*content).to_owned()).unwrap_or_else(|(resource, found)| {
                errors.extend(found.iter().map(|e| TextError(format!("{name}: {e}"))));
                resource
            });
            for entry in resource.entries() {
                if let Entry::Message(message) = entry
                    && let Some(pattern) = &message.value
                {
                    let mut used = BTreeSet::new();
                    variables(pattern, &mut used);
                    message.attributes.iter().for_each(|attribute| variables(&attribute.value, &mut used));
                    figures.insert(message.id.name.to_owned(), used);
                }
            }
            if let Err(found) = texts.add_resource(resource) {
                errors.extend(found.iter().map(|e| TextError(format!("{name}: {e}"))));
            }
        }
        let mut language = Self { code: code.to_owned(), texts, figures, guide: Vec::new(), decimal_comma: false };
        language.decimal_comma = language.plain("decimal-sign").as_deref() == Some(",");
        if errors.is_empty() { Ok(language) } else { Err((language, errors)) }
    }

    /// A made-up language for tests: English with every letter of its texts changed by `change`. What a page shows
    /// unchanged was not made from a text.
    #[must_use]
    pub fn marked(change: fn(&str) -> String) -> Self {
        let files: Vec<(&str, String)> = ENGLISH.iter().map(|(name, text)| (*name, marked(text, change))).collect();
        let files: Vec<(&str, &str)> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
        let guide = guide::english().into_iter().map(|chapter| chapter.changed(change)).collect();
        Self::readable("en", &files, guide)
    }

    /// A language with its guide, as far as its files can be read.
    fn readable(code: &str, files: &[(&str, &str)], guide: Vec<Chapter>) -> Self {
        Self::new(code, files).unwrap_or_else(|(language, _)| language).with_guide(guide)
    }

    /// The same with the chapters of its guide.
    #[must_use]
    pub fn with_guide(mut self, guide: Vec<Chapter>) -> Self {
        self.guide = guide;
        self
    }

    /// The chapters of the guide, in their order.
    #[must_use]
    pub fn guide(&self) -> &[Chapter] {
        &self.guide
    }

    /// Code of the language (BCP 47).
    #[must_use]
    pub fn code(&self) -> &str {
        &self.code
    }

    /// Whether there is a text of this name.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.figures.contains_key(id)
    }

    /// Every text by its name, with the names of the figures that it uses.
    pub fn names(&self) -> impl Iterator<Item = (&str, &BTreeSet<String>)> {
        self.figures.iter().map(|(name, used)| (name.as_str(), used))
    }

    /// The text of a name with its figures. A name without a text is shown itself, in ⟪ ⟫; tests look for the mark.
    pub(crate) fn write<'a>(
        &self,
        id: &str,
        figures: impl Iterator<Item = (&'a str, &'a Figure)>,
        words: &Words,
    ) -> String {
        let Some(pattern) = self.texts.get_message(id).and_then(|message| message.value()) else {
            debug_assert!(false, "no text is named {id}");
            return format!("⟪{id}⟫");
        };
        self.filled(id, pattern, figures, words)
    }

    /// What to do next, where the text of this name says it beside itself:
    ///
    /// ```text
    /// sheet-no-club = the sheet does not say which clubs
    ///     .next = Write their numbers, for example 5-PW
    /// ```
    pub(crate) fn next<'a>(
        &self,
        id: &str,
        figures: impl Iterator<Item = (&'a str, &'a Figure)>,
        words: &Words,
    ) -> Option<String> {
        let next = self.texts.get_message(id)?.get_attribute("next")?;
        Some(self.filled(id, next.value(), figures, words))
    }

    fn filled<'a>(
        &self,
        id: &str,
        pattern: &Pattern<&str>,
        figures: impl Iterator<Item = (&'a str, &'a Figure)>,
        words: &Words,
    ) -> String {
        let mut args = FluentArgs::new();
        for (name, figure) in figures {
            args.set(name, shown::value(name, figure, words));
        }
        let mut errors: Vec<FluentError> = Vec::new();
        let text = self.texts.format_pattern(pattern, Some(&args), &mut errors);
        debug_assert!(errors.is_empty(), "{id}: {errors:?}");
        text.into_owned()
    }
}

/// The name of a fact's text: `loft_check.too_weak` is `loft-check-too-weak`.
pub(crate) fn id_of(code: &str) -> String {
    code.replace(['.', '_'], "-")
}

/// Names of the figures that a text uses.
fn variables<S: AsRef<str>>(pattern: &Pattern<S>, found: &mut BTreeSet<String>) {
    fn inline<S: AsRef<str>>(expression: &InlineExpression<S>, found: &mut BTreeSet<String>) {
        match expression {
            InlineExpression::VariableReference { id } => {
                found.insert(id.name.as_ref().to_owned());
            }
            InlineExpression::FunctionReference { arguments, .. } => {
                arguments.positional.iter().for_each(|argument| inline(argument, found));
            }
            InlineExpression::Placeable { expression } => any(expression, found),
            _ => {}
        }
    }
    fn any<S: AsRef<str>>(expression: &Expression<S>, found: &mut BTreeSet<String>) {
        match expression {
            Expression::Inline(expression) => inline(expression, found),
            Expression::Select { selector, variants } => {
                inline(selector, found);
                variants.iter().for_each(|variant| variables(&variant.value, found));
            }
        }
    }
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            any(expression, found);
        }
    }
}

/// The texts of a file with their letters changed; figures, names and marks of phrases stay.
fn marked(content: &str, change: fn(&str) -> String) -> String {
    let mut resource: Resource<String> = match parser::parse(content.to_owned()) {
        Ok(resource) => resource,
        Err((resource, _)) => resource,
    };
    for entry in &mut resource.body {
        match entry {
            Entry::Message(message) => {
                if let Some(pattern) = &mut message.value {
                    mark(pattern, change);
                }
                message.attributes.iter_mut().for_each(|attribute| mark(&mut attribute.value, change));
            }
            Entry::Term(term) => mark(&mut term.value, change),
            _ => {}
        }
    }
    serializer::serialize(&resource)
}

fn mark(pattern: &mut Pattern<String>, change: fn(&str) -> String) {
    fn any(expression: &mut Expression<String>, change: fn(&str) -> String) {
        match expression {
            Expression::Select { variants, .. } => {
                variants.iter_mut().for_each(|variant| mark(&mut variant.value, change));
            }
            Expression::Inline(InlineExpression::StringLiteral { value }) => *value = outside_tags(value, change),
            Expression::Inline(InlineExpression::Placeable { expression }) => any(expression, change),
            Expression::Inline(_) => {}
        }
    }
    for element in &mut pattern.elements {
        match element {
            PatternElement::TextElement { value } => *value = outside_tags(value, change),
            PatternElement::Placeable { expression } => any(expression, change),
        }
    }
}

/// A text changed, with its marks of phrases, `<a>` and `</a>`, as they were.
fn outside_tags(text: &str, change: fn(&str) -> String) -> String {
    let (mut out, mut rest) = (String::new(), text);
    while let Some((before, tag, after)) = crate::rich::next_tag(rest) {
        out.push_str(&change(before));
        out.push_str(tag);
        rest = after;
    }
    out + &change(rest)
}
