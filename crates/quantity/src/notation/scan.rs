//! Walking through a text: signs, numbers, fractions, and what is left over.

use super::{Notation, NotationError, Problem};

/// More digits than this are no workshop figure, and would not be held exactly.
const DIGITS_MAX: usize = 15;

/// A number as it was read.
#[derive(Debug, Clone, Copy)]
pub(super) struct Number {
    /// What it comes to: 3.25 for `3 1/4`.
    pub value: f64,
    /// Written with a fraction, which means inches where no unit stands.
    pub is_fraction: bool,
    /// Byte where it starts.
    pub start: usize,
}

/// A place in a text that is being read.
pub(super) struct Scanner<'a> {
    input: &'a str,
    end: usize,
    at: usize,
    what: Notation,
}

impl<'a> Scanner<'a> {
    /// At the first character that is not white space.
    pub fn new(input: &'a str, what: Notation) -> Self {
        Self::within(input, input.len(), what)
    }

    /// As `new`, but nothing from byte `end` on is read.
    pub fn within(input: &'a str, end: usize, what: Notation) -> Self {
        let end = input[..end].trim_end().len();
        let mut scan = Self { input, end, at: 0, what };
        scan.skip_space();
        scan
    }

    /// Byte of the present place.
    pub fn position(&self) -> usize {
        self.at
    }

    /// What was read from byte `start` up to the present place.
    pub fn read_from(&self, start: usize) -> &'a str {
        self.input[start..self.at].trim_end()
    }

    /// Steps over space and gives what has not been read yet.
    pub fn rest(&mut self) -> &'a str {
        self.skip_space();
        &self.input[self.at..self.end]
    }

    /// Next character.
    pub fn peek(&self) -> Option<char> {
        self.input[self.at..self.end].chars().next()
    }

    /// An error at the present place.
    pub fn fail(&self, problem: Problem) -> NotationError {
        self.fail_at(self.at, problem)
    }

    /// An error at an earlier place.
    pub fn fail_at(&self, at_byte: usize, problem: Problem) -> NotationError {
        NotationError {
            what: self.what,
            problem,
            input: self.input.to_owned(),
            at_byte,
            found: self.input[at_byte..].chars().take(12).collect::<String>().trim_end().to_owned(),
            meant: None,
        }
    }

    /// A sign, if one stands here: +1 or −1.
    pub fn sign(&mut self) -> Option<f64> {
        let sign = match self.peek()? {
            '+' => 1.0,
            c if is_dash(c) => -1.0,
            _ => return None,
        };
        self.step();
        self.skip_space();
        Some(sign)
    }

    /// An error where a sign stands here.
    pub fn refuse_sign(&mut self) -> Result<(), NotationError> {
        match self.peek() {
            Some(c) if c == '+' || is_dash(c) => Err(self.fail(Problem::SignNotAllowed)),
            _ => Ok(()),
        }
    }

    /// A letter of the balance scale, in capitals.
    pub fn letter(&mut self) -> Option<char> {
        let letter = self.peek().map(|c| c.to_ascii_uppercase()).filter(|c| ('A'..='G').contains(c))?;
        self.step();
        self.skip_space();
        Some(letter)
    }

    /// Steps over a bracket and the space after it.
    pub fn open_bracket(&mut self) {
        self.skip_space();
        self.step();
        self.skip_space();
    }

    /// Steps over a degree sign; true where there was one.
    pub fn skip_degree_sign(&mut self) -> bool {
        self.skip_space();
        let there = matches!(self.peek(), Some('°' | 'º'));
        if there {
            self.step();
            self.skip_space();
        }
        there
    }

    /// A number: whole, decimal with point or comma, fraction, or whole and fraction.
    pub fn number(&mut self) -> Result<Number, NotationError> {
        let start = self.at;
        let whole = self.digits()?;
        if let Some(part) = self.vulgar() {
            return Ok(Number { value: value_of(whole) + part, is_fraction: true, start });
        }
        if self.decimal_mark_ahead() {
            return self.decimals(whole, start);
        }
        if whole.is_empty() {
            let nothing = self.input[..self.end].trim().is_empty();
            let problem = if nothing { Problem::Empty } else { Problem::NumberExpected };
            return Err(self.fail(problem));
        }
        if self.peek().is_some_and(is_slash) {
            let value = self.denominator(value_of(whole), start)?;
            return Ok(Number { value, is_fraction: true, start });
        }
        self.refuse_grouping(start)?;
        if let Some(part) = self.fraction_after_whole(start)? {
            return Ok(Number { value: value_of(whole) + part, is_fraction: true, start });
        }
        Ok(Number { value: value_of(whole), is_fraction: false, start })
    }

    /// What follows the decimal point or comma.
    fn decimals(&mut self, whole: &str, start: usize) -> Result<Number, NotationError> {
        let comma = self.peek() == Some(',');
        self.step();
        let part = self.digits()?;
        // "1,234" is a thousand to one reader and a little over one to the next; "0,125" is only ever a decimal.
        if comma && part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0') {
            return Err(self.fail_at(start, Problem::DigitGrouping));
        }
        self.refuse_grouping(start)?;
        let mut ahead = Self { ..*self };
        ahead.skip_space();
        if ahead.vulgar().is_some() {
            return Err(self.fail(Problem::FractionAfterDecimal));
        }
        let mut ahead = Self { ..*self };
        if ahead.fraction_after_whole(start).is_ok_and(|fraction| fraction.is_some()) {
            return Err(self.fail(Problem::FractionAfterDecimal));
        }
        if self.space_then_digit() {
            return Err(self.fail_at(start, Problem::DigitGrouping));
        }
        let whole = if whole.is_empty() { "0" } else { whole };
        let value = format!("{whole}.{part}").parse().map_err(|_| self.fail_at(start, Problem::NumberExpected))?;
        Ok(Number { value, is_fraction: false, start })
    }

    /// ` 3/4`, `-3/4` or ` ¾` behind a whole number. Digits behind a space without a slash are grouping.
    fn fraction_after_whole(&mut self, start: usize) -> Result<Option<f64>, NotationError> {
        let before = self.at;
        self.skip_space();
        let spaced = self.at > before;
        if let Some(part) = self.vulgar() {
            return Ok(Some(part));
        }
        let dashed = !spaced && self.peek().is_some_and(is_dash);
        if dashed {
            self.step();
            if let Some(part) = self.vulgar() {
                return Ok(Some(part));
            }
        }
        if !(spaced || dashed) || !self.peek().is_some_and(|c| c.is_ascii_digit()) {
            self.at = before;
            return Ok(None);
        }
        let fraction_start = self.at;
        let numerator = value_of(self.digits()?);
        if !self.peek().is_some_and(is_slash) {
            return Err(if dashed {
                self.fail_at(before, Problem::Unexpected)
            } else {
                self.fail_at(start, Problem::DigitGrouping)
            });
        }
        let part = self.denominator(numerator, fraction_start)?;
        if part >= 1.0 {
            return Err(self.fail_at(fraction_start, Problem::BadFraction));
        }
        Ok(Some(part))
    }

    /// The slash and what it divides by.
    fn denominator(&mut self, numerator: f64, start: usize) -> Result<f64, NotationError> {
        self.step();
        let digits = self.digits()?;
        if digits.is_empty() {
            return Err(self.fail(Problem::NumberExpected));
        }
        let denominator = value_of(digits);
        if denominator == 0.0 {
            return Err(self.fail_at(start, Problem::BadFraction));
        }
        if self.peek().is_some_and(is_slash) || self.decimal_mark_ahead() {
            return Err(self.fail(Problem::Unexpected));
        }
        Ok(numerator / denominator)
    }

    /// A second mark after digits: 1.234.567, 1'234, 1_234.
    fn refuse_grouping(&self, start: usize) -> Result<(), NotationError> {
        let mut ahead = self.input[self.at..self.end].chars();
        let mark = ahead.next().is_some_and(|c| matches!(c, '.' | ',' | '\'' | '’' | '_' | '′'));
        if mark && ahead.next().is_some_and(|c| c.is_ascii_digit()) {
            return Err(self.fail_at(start, Problem::DigitGrouping));
        }
        Ok(())
    }

    fn space_then_digit(&self) -> bool {
        let rest = &self.input[self.at..self.end];
        let trimmed = rest.trim_start();
        trimmed.len() < rest.len() && trimmed.starts_with(|c: char| c.is_ascii_digit())
    }

    fn decimal_mark_ahead(&self) -> bool {
        let mut ahead = self.input[self.at..self.end].chars();
        matches!(ahead.next(), Some('.' | ',')) && ahead.next().is_some_and(|c| c.is_ascii_digit())
    }

    /// A run of digits, perhaps none.
    fn digits(&mut self) -> Result<&'a str, NotationError> {
        let start = self.at;
        while self.peek().is_some_and(|c| c.is_ascii_digit()) {
            self.step();
        }
        let digits = &self.input[start..self.at];
        if digits.len() > DIGITS_MAX { Err(self.fail_at(start, Problem::TooLarge)) } else { Ok(digits) }
    }

    /// A fraction that is one character.
    fn vulgar(&mut self) -> Option<f64> {
        let value = match self.peek()? {
            '½' => 0.5,
            '¼' => 0.25,
            '¾' => 0.75,
            '⅛' => 0.125,
            '⅜' => 0.375,
            '⅝' => 0.625,
            '⅞' => 0.875,
            '⅓' => 1.0 / 3.0,
            '⅔' => 2.0 / 3.0,
            _ => return None,
        };
        self.step();
        Some(value)
    }

    fn step(&mut self) {
        self.at += self.peek().map_or(0, char::len_utf8);
    }

    fn skip_space(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.step();
        }
    }
}

/// Value of a run of at most 15 digits: exact. No digits are nothing.
fn value_of(digits: &str) -> f64 {
    digits.parse().unwrap_or(0.0)
}

fn is_dash(c: char) -> bool {
    matches!(c, '-' | '−' | '–' | '‐' | '‑')
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '⁄' | '∕')
}
