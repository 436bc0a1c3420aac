//! Why a text could not be read.

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
    /// A text that this notation reads.
    #[must_use]
    pub const fn example(self) -> &'static str {
        match self {
            Self::Length => "36 3/4 in, 93.3 cm or 940 mm",
            Self::LengthOffset => "+1/2 in or -5 mm",
            Self::Mass => "8 g or 1.75 oz",
            Self::MassOffset => "+2 g or -0.1 oz",
            Self::SwingWeight => "D3.5 or 213.5 oz in",
            Self::SwingWeightOffset => "+2 or -1/2",
            Self::Angle => "61.5 or 61.5°",
            Self::AngleOffset => "+2, -1° or 2 up",
            Self::Frequency => "262 cpm or 4.37 Hz",
        }
    }

    /// Its name in a sentence.
    const fn name(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::LengthOffset => "a difference of length",
            Self::Mass => "a mass",
            Self::MassOffset => "a difference of mass",
            Self::SwingWeight => "a swing weight",
            Self::SwingWeightOffset => "a difference of swing weight",
            Self::Angle => "an angle",
            Self::AngleOffset => "a difference of angle",
            Self::Frequency => "a frequency",
        }
    }
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
    /// What happened, as a clause.
    const fn clause(self) -> &'static str {
        match self {
            Self::Empty => "nothing is written",
            Self::NumberExpected => "a number is expected here",
            Self::SignNotAllowed => "a sign stands before a figure that cannot have one",
            Self::TwoSigns => "the direction is given twice, by a sign and by a word",
            Self::DigitGrouping => {
                "these digits may be grouped in thousands; write them without grouping, decimals after a point"
            }
            Self::FractionAfterDecimal => "a fraction follows a decimal figure",
            Self::BadFraction => "the fraction must be less than one and must not divide by zero",
            Self::TooLarge => "the figure is too large here",
            Self::MissingUnit => "the number needs its unit or letter",
            Self::FractionWithoutUnit => {
                "a fraction without a unit is taken for inches, but metric is expected; add the unit"
            }
            Self::UnknownUnit => "the unit is not known here",
            Self::AmbiguousUnit => "this unit means gram to some and grain to others; write g or grain",
            Self::UnknownLetter => "the letters run from A to G",
            Self::BeyondLetter => "each letter has the points 0 to 9.9, only A runs below and only G beyond",
            Self::Disagree => "the moment beside the letter does not agree with it",
            Self::Unexpected => "this does not belong here",
        }
    }
}

/// A text that could not be read, where reading stopped, and an example that can be.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, Serialize)]
#[error("{input:?} cannot be read as {}: {}{}. Write for example {example}.",
    what.name(), self.place(), problem.clause())]
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
    /// A text that would have been read.
    pub example: &'static str,
}

impl NotationError {
    /// Place where reading stopped, counted in characters from 1.
    #[must_use]
    pub fn at_character(&self) -> usize {
        self.input[..self.at_byte].chars().count() + 1
    }

    /// Where in the text it is, unless it is the whole of it.
    fn place(&self) -> String {
        if self.found == self.input.trim() {
            return String::new();
        }
        let found = if self.found.is_empty() { "the end".to_owned() } else { format!("{:?}", self.found) };
        format!("at character {} ({found}) ", self.at_character())
    }
}
