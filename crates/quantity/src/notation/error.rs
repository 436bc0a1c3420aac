//! Why a text could not be read.

use fact::{Fact, Told};
use serde::Serialize;

/// Which notation the text was read in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Notation {
    /// A length.
    Length,
    /// A difference of lengths, with its sign.
    LengthOffset,
    /// A mass.
    Mass,
    /// A difference of masses, with its sign.
    MassOffset,
    /// A swing weight: letter form or moment.
    SwingWeight,
    /// A difference of swing weight in points, with its sign.
    SwingWeightOffset,
    /// An angle.
    Angle,
    /// A difference of angles, with its sign.
    AngleOffset,
    /// A frequency.
    Frequency,
}

impl Notation {
    /// Its name in codes and documents: `length_offset`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::LengthOffset => "length_offset",
            Self::Mass => "mass",
            Self::MassOffset => "mass_offset",
            Self::SwingWeight => "swing_weight",
            Self::SwingWeightOffset => "swing_weight_offset",
            Self::Angle => "angle",
            Self::AngleOffset => "angle_offset",
            Self::Frequency => "frequency",
        }
    }

    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Length,
        Self::LengthOffset,
        Self::Mass,
        Self::MassOffset,
        Self::SwingWeight,
        Self::SwingWeightOffset,
        Self::Angle,
        Self::AngleOffset,
        Self::Frequency,
    ];
}

/// What is wrong with the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Problem {
    /// Nothing was written.
    Empty,
    /// A number was expected here.
    NumberExpected,
    /// A sign where only an absolute figure makes sense.
    SignNotAllowed,
    /// Both a sign and a word that gives the direction.
    TwoSigns,
    /// Digits that may be grouped in thousands: 1,234 or 1 234.
    DigitGrouping,
    /// A decimal figure followed by a fraction.
    FractionAfterDecimal,
    /// A fraction of one or more after a whole number, or one that divides by zero.
    BadFraction,
    /// More digits than any workshop figure has.
    TooLarge,
    /// A unit is needed to know what is meant.
    MissingUnit,
    /// A fraction without a unit where metric lengths are expected.
    FractionWithoutUnit,
    /// The unit is not one of this quantity.
    UnknownUnit,
    /// The unit means two things.
    AmbiguousUnit,
    /// A letter outside A to G.
    UnknownLetter,
    /// Points that do not belong to their letter: D10 is E0.
    BeyondLetter,
    /// Letter form and moment beside it do not agree.
    Disagree,
    /// Something follows that does not belong.
    Unexpected,
}

impl Problem {
    /// Its name in codes and documents: `unknown_unit`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::NumberExpected => "number_expected",
            Self::SignNotAllowed => "sign_not_allowed",
            Self::TwoSigns => "two_signs",
            Self::DigitGrouping => "digit_grouping",
            Self::FractionAfterDecimal => "fraction_after_decimal",
            Self::BadFraction => "bad_fraction",
            Self::TooLarge => "too_large",
            Self::MissingUnit => "missing_unit",
            Self::FractionWithoutUnit => "fraction_without_unit",
            Self::UnknownUnit => "unknown_unit",
            Self::AmbiguousUnit => "ambiguous_unit",
            Self::UnknownLetter => "unknown_letter",
            Self::BeyondLetter => "beyond_letter",
            Self::Disagree => "disagree",
            Self::Unexpected => "unexpected",
        }
    }

    /// All of them.
    pub const ALL: [Self; 16] = [
        Self::Empty,
        Self::NumberExpected,
        Self::SignNotAllowed,
        Self::TwoSigns,
        Self::DigitGrouping,
        Self::FractionAfterDecimal,
        Self::BadFraction,
        Self::TooLarge,
        Self::MissingUnit,
        Self::FractionWithoutUnit,
        Self::UnknownUnit,
        Self::AmbiguousUnit,
        Self::UnknownLetter,
        Self::BeyondLetter,
        Self::Disagree,
        Self::Unexpected,
    ];
}

/// A text that could not be read, and where reading stopped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotationError {
    /// Notation it was read in.
    pub what: Notation,
    /// What is wrong, and with it which advice is given.
    pub problem: Problem,
    /// The text as it was typed.
    pub input: String,
    /// Byte of `input` where reading stopped, from 0.
    pub at_byte: usize,
    /// What stands there, up to a dozen characters; empty at the end of the text.
    pub found: String,
    /// What was probably meant, where a slip is plain: `D9.7` for `D97`.
    pub meant: Option<String>,
}

impl NotationError {
    /// Place where reading stopped, counted in characters from 1.
    #[must_use]
    pub fn at_character(&self) -> usize {
        self.input[..self.at_byte].chars().count() + 1
    }
}

impl Fact for NotationError {
    fn told(&self) -> Told {
        // Where it is the whole of the text, a place in it would say nothing.
        let whole = self.found == self.input.trim();
        let found = (!whole && !self.found.is_empty()).then_some(&self.found);
        Told::new("notation.unreadable")
            .with("input", &self.input)
            .with("what", &Told::of_list("Notation", self.what.key()))
            .with("problem", &Told::of_list("NotationProblem", self.problem.key()))
            .with("n", &(!whole).then(|| self.at_character()))
            .with("found", &found)
            .with("example", &Told::of_list("NotationExample", self.what.key()))
            .with("meant", &self.meant)
    }
}

impl From<NotationError> for fact::Refusal {
    fn from(error: NotationError) -> Self {
        Self::new(&error)
    }
}

/// The form of a log.
impl std::fmt::Display for NotationError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for NotationError {}
