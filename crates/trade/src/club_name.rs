//! A club by its kind and number, as a figure of a fact.

use crate::kind::ClubKind;

fact::facts! {
    /// A club as it is named: `7-iron`, `PW`, `driver`. The texts give the names; `Words::club` shows the same.
    pub enum ClubName: "club" {
        /// Driver or fairway wood.
        Wood {
            /// Its number as the sheet holds it.
            number: String,
        },
        /// Hybrid.
        Hybrid {
            /// Its number as the sheet holds it.
            number: String,
        },
        /// Iron; a pitching wedge of the set is one, too.
        Iron {
            /// Its number as the sheet holds it.
            number: String,
        },
        /// Wedge.
        Wedge {
            /// Its number as the sheet holds it.
            number: String,
        },
        /// Putter.
        Putter {
            /// Its number as the sheet holds it.
            number: String,
        },
    }
}

fact::facts! {
    /// A number whose kind of club is not known, or is told beside it.
    pub enum ClubNumber: "club" {
        /// The number.
        Number {
            /// As the sheet or the part holds it.
            number: String,
        },
    }
}

impl From<&str> for ClubNumber {
    fn from(number: &str) -> Self {
        Self::Number { number: number.to_owned() }
    }
}

impl ClubName {
    /// The name of a club from its kind and number.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::club_name::ClubName;
    /// use trade::kind::ClubKind;
    /// use words::Words;
    ///
    /// let words = Words::english(quantity::Units::default());
    /// assert_eq!(words.tell(&ClubName::of(ClubKind::Iron, "7")), "7-iron");
    /// assert_eq!(words.tell(&ClubName::of(ClubKind::Wood, "1")), "driver");
    /// ```
    #[must_use]
    pub fn of(kind: ClubKind, number: &str) -> Self {
        let number = number.to_owned();
        match kind {
            ClubKind::Wood => Self::Wood { number },
            ClubKind::Hybrid => Self::Hybrid { number },
            ClubKind::Iron => Self::Iron { number },
            ClubKind::Wedge => Self::Wedge { number },
            ClubKind::Putter => Self::Putter { number },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ClubName;
    use crate::kind::ClubKind;
    use words::Words;

    #[test]
    fn a_club_has_one_name_as_a_fact_and_by_its_kind_and_number() {
        let w = Words::english(quantity::Units::default());
        for kind in ClubKind::ALL {
            for number in ["1", "3", "7", "P", "54"] {
                assert_eq!(w.tell(&ClubName::of(*kind, number)), w.club(kind, number));
            }
        }
    }
}
