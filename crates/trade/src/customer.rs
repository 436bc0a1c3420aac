//! Customer: whose the clubs are, how to reach them, and what of their hands a sheet asks for.

use crate::error::{TradeError, within};
use crate::kind::{Hand, closed_list};
use crate::wrap::Wraps;
use fact::Refusal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What every customer's code begins with.
const CODE: &str = "CU-";
/// Letters of the longest name, and of every other line.
const LONGEST_LINE: usize = 120;
/// Letters of the longest note.
const LONGEST_NOTE: usize = 2000;
/// Thinnest and thickest grip 2 in below its cap, mm: a child's and an oversize putter's (common practice, no source).
const GRIP_MM: (f64, f64) = (15.0, 50.0);

/// Somebody whom clubs are built for.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Customer {
    /// As it is to stand on sheets, job cards and records.
    pub name: String,
    /// The hand they play with; left out where it was not asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hand: Option<Hand>,
    /// Where to ring them; empty where they did not say.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub phone: String,
    /// Where to write to them; empty where they did not say.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub email: String,
    /// Street and town, as on a letter; empty where they did not say.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub address: String,
    /// Anything else that the shop should know of them.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Size of their glove as it stands on it: `ML`, `24`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub glove: String,
    /// How thick they like a grip 2 in (50.8 mm) below its cap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_diameter_mm: Option<f64>,
    /// The layers of tape that they like under a grip; a new sheet of theirs begins with them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wraps: Option<Wraps>,
}

impl Customer {
    /// Somebody of whom only the name is known.
    #[must_use]
    pub fn named(name: &str) -> Self {
        Self { name: name.trim().to_owned(), ..Self::default() }
    }

    /// The same without blanks around its texts.
    #[must_use]
    pub fn trimmed(mut self) -> Self {
        for text in
            [&mut self.name, &mut self.phone, &mut self.email, &mut self.address, &mut self.note, &mut self.glove]
        {
            *text = text.trim().to_owned();
        }
        self
    }

    /// Refuses a customer without a name, with one that is a customer's code, or with texts and figures that cannot be.
    ///
    /// # Errors
    /// What is wrong, at its field.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::customer::Customer;
    ///
    /// assert!(Customer::named("Ada Fenwick").check().is_ok());
    /// assert!(Customer::named("  ").check().is_err());
    /// ```
    pub fn check(&self) -> Result<(), TradeError> {
        let refused = |fault: &CustomerFault, at: &str| Err(TradeError::refused(Refusal::new(fault).at(at)));
        if self.name.trim().is_empty() {
            return refused(&CustomerFault::NoName, "name");
        }
        if number_of(&self.name).is_some() {
            return refused(&CustomerFault::NameIsCode { name: self.name.clone() }, "name");
        }
        for (field, text, most) in [
            ("name", &self.name, LONGEST_LINE),
            ("phone", &self.phone, LONGEST_LINE),
            ("email", &self.email, LONGEST_LINE),
            ("address", &self.address, LONGEST_NOTE),
            ("note", &self.note, LONGEST_NOTE),
            ("glove", &self.glove, LONGEST_LINE),
        ] {
            let letters = text.chars().count();
            if letters > most {
                return refused(&CustomerFault::TooLong { field: field.to_owned(), letters, most }, field);
            }
        }
        if let Some(mm) = self.grip_diameter_mm {
            within("grip_diameter_mm", mm, GRIP_MM.0, GRIP_MM.1, "mm")?;
        }
        Ok(())
    }
}

closed_list! {
    /// Where a name may stand that somebody typed into a reason or a note, which are never changed.
    NameStands {
        /// In the shop's log.
        Log = "log";
        /// In the reason of a reading that was taken back or stood by.
        Readings = "readings";
        /// In the reason of a batch that was taken back.
        Batches = "batches";
        /// In the life, the lot or the place of a part.
        Parts = "parts";
        /// In the notes of an order.
        Orders = "orders";
        /// In the label, the player or the life of a club.
        Clubs = "clubs";
        /// In what was said of a scale or of a learned value.
        Shop = "shop";
    }
}

/// The code of a customer, for labels, lists and where the name of a deleted one stood.
///
/// # Examples
///
/// ```
/// use trade::customer::{code, number_of};
///
/// assert_eq!(code(7), "CU-7");
/// assert_eq!(number_of("cu-7"), Some(7));
/// assert_eq!(number_of("Ada"), None);
/// ```
#[must_use]
pub fn code(number: i64) -> String {
    format!("{CODE}{number}")
}

/// The number of the customer that a code stands for. Capitals do not matter.
#[must_use]
pub fn number_of(text: &str) -> Option<i64> {
    let text = text.trim();
    let (head, number) = text.split_at_checked(CODE.len())?;
    let digits = number.bytes().all(|b| b.is_ascii_digit());
    if head.eq_ignore_ascii_case(CODE) && digits { number.parse().ok().filter(|n| *n > 0) } else { None }
}

/// What two spellings of one name have in common: capitals and the blanks between words do not matter.
#[must_use]
pub fn name_key(name: &str) -> String {
    name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

fact::facts! {
    /// What is refused of a customer.
    pub enum CustomerFault: "customer_fault" {
        /// Nobody is named.
        NoName,
        /// The name reads as the code of a customer.
        NameIsCode {
            /// The name that was given.
            name: String,
        },
        /// A text is longer than a line or a note may be.
        TooLong {
            /// Name of the field.
            field: String,
            /// Letters that it has.
            letters: usize,
            /// Letters that it may have.
            most: usize,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_customer_has_a_name_that_is_no_code_and_texts_of_a_size() {
        let field = |customer: &Customer| customer.check().map_err(|e| e.refusal().entry().map(str::to_owned));
        assert_eq!(field(&Customer::named("Ada Fenwick")), Ok(()));
        assert_eq!(field(&Customer::named(" \t")), Err(Some("name".into())));
        assert_eq!(field(&Customer::named("cu-12")), Err(Some("name".into())));
        assert_eq!(field(&Customer { glove: "x".repeat(121), ..Customer::named("A") }), Err(Some("glove".into())));
        let thick = Customer { grip_diameter_mm: Some(0.9), ..Customer::named("A") };
        assert_eq!(field(&thick), Err(Some("grip_diameter_mm".into())), "inches for millimetres");
    }

    #[test]
    fn a_code_comes_back_and_nothing_else_is_one() {
        for number in [1, 42, 9_999_999] {
            assert_eq!(number_of(&code(number)), Some(number));
        }
        for text in ["CU-", "CU-0", "CU--1", "CU-1x", "CU 1", "U-1", "", "é-1", "CU-99999999999999999999"] {
            assert_eq!(number_of(text), None, "{text}");
        }
        assert_eq!(name_key("  Ada   FENWICK "), "ada fenwick");
    }
}
