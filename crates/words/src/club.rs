//! The number of a club as the trade writes it: `driver`, `3-wood`, `4-hybrid`, `7-iron`, `PW`, `54° wedge`.
//!
//! Sheets and parts hold the number as the head carries it, in one of several spellings: `1` of a wood, `P` or `PW` of an
//! iron. The texts of `club.ftl` choose the name, so that another language has its own.

use crate::Words;
use crate::text;
use fact::{Fact, Told};
use fluent_bundle::FluentValue;

/// Wedges are numbered by their loft from here on, degrees; no set counts its clubs that far (common practice, no source).
const LOFT_NUMBERS_FROM: u32 = 40;

impl Words {
    /// A club by its kind and number: `7-iron`, `driver`, `PW`.
    ///
    /// The kind is a member of the trade's list of kinds, `club_kind.iron`; of anything else the number is shown alone.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::Told;
    /// use quantity::Units;
    /// use words::Words;
    ///
    /// let words = Words::english(Units::default());
    /// assert_eq!(words.club(&Told::of_list("ClubKind", "iron"), "7"), "7-iron");
    /// assert_eq!(words.club(&Told::of_list("ClubKind", "iron"), "P"), "PW");
    /// assert_eq!(words.club(&Told::of_list("ClubKind", "wood"), "1"), "driver");
    /// ```
    #[must_use]
    pub fn club(&self, kind: &impl Fact, number: &str) -> String {
        self.club_text("club", &kind.told(), number)
    }

    /// The same where space is short: `7`, `driver`, `3W`, `4H`, `PW`.
    #[must_use]
    pub fn club_short(&self, kind: &impl Fact, number: &str) -> String {
        self.club_text("club-short", &kind.told(), number)
    }

    /// A number whose kind of club is not known, or is told beside it: `7`, `PW`.
    #[must_use]
    pub fn club_number(&self, number: &str) -> String {
        text!(self, "club-number", number = number)
    }

    fn club_text(&self, form: &str, kind: &Told, number: &str) -> String {
        let id = kind.code().strip_prefix("club_kind.").map(|kind| format!("{form}-{kind}"));
        match id.filter(|id| self.language.has(id)) {
            Some(id) => self.text_with(&id, &[("number", crate::figure(number))]),
            None => self.club_number(number),
        }
    }
}

/// A number in one spelling, for a text to choose by: `PW` is `P`, `p` is `P`, `54` is `degrees`.
pub(crate) fn spelling<'a>(given: &[FluentValue<'a>]) -> FluentValue<'a> {
    let Some(FluentValue::String(number)) = given.first() else {
        return given.first().cloned().unwrap_or(FluentValue::Error);
    };
    let number = number.trim();
    match number.parse::<u32>() {
        Ok(loft) if loft >= LOFT_NUMBERS_FROM => FluentValue::from("degrees"),
        Ok(number) => FluentValue::from(number),
        Err(_) => {
            let capitals = number.to_uppercase();
            let letters: Vec<char> = capitals.chars().collect();
            match letters[..] {
                [letter, 'W'] if letter.is_alphabetic() => FluentValue::from(letter.to_string()),
                _ => FluentValue::from(capitals),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::Words;
    use fact::Told;
    use quantity::Units;

    fn named(kind: &str, number: &str) -> [String; 2] {
        let w = Words::english(Units::default());
        let kind = Told::of_list("ClubKind", kind);
        [w.club(&kind, number), w.club_short(&kind, number)]
    }

    #[test]
    fn clubs_have_the_names_of_the_trade() {
        for (kind, number, name, short) in [
            ("wood", "1", "driver", "driver"),
            ("wood", "3", "3-wood", "3W"),
            ("hybrid", "4", "4-hybrid", "4H"),
            ("iron", "7", "7-iron", "7"),
            ("iron", "1", "1-iron", "1"),
            ("iron", "P", "PW", "PW"),
            ("iron", "PW", "PW", "PW"),
            ("iron", "p", "PW", "PW"),
            ("iron", "G", "GW", "GW"),
            ("iron", "AW", "AW", "AW"),
            ("wedge", "S", "SW", "SW"),
            ("wedge", "L", "LW", "LW"),
            ("wedge", "54", "54° wedge", "54°"),
            ("putter", "1", "putter", "putter"),
            ("putter", "P", "putter", "putter"),
            ("putter", "2", "putter 2", "putter 2"),
        ] {
            assert_eq!(named(kind, number), [name, short], "{kind} {number}");
        }
    }

    #[test]
    fn a_number_alone_has_its_letters() {
        let w = Words::english(Units::default());
        assert_eq!(["7", "P", "SW", "3+"].map(|n| w.club_number(n)), ["7", "PW", "SW", "3+"]);
    }
}
