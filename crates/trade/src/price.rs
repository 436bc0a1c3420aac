//! Prices, simply: what a part of a model and a piece of work cost, and a quote of lines. Amounts are whole numbers of the
//! currency's smallest coin, so that no sum is rounded.

use crate::error::TradeError;
use crate::kind::closed_list;
use fact::Refusal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The greatest price of one piece, in smallest coins.
pub const MOST_EACH: i64 = 1_000_000_000;
/// Pieces of one line at most.
pub const MOST_PIECES: i64 = 10_000;
/// Lines of a quote or of the list at most.
pub const MOST_LINES: usize = 300;
const LONGEST: usize = 200;

closed_list! {
    /// What a price of work is for.
    Per {
        /// For each club of the set.
        Club = "club";
        /// Once for the job.
        Job = "job";
    }
}

/// What a part of a model costs the customer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PartPrice {
    /// Code of the model.
    pub model: String,
    /// For one piece, in smallest coins of the shop's currency.
    #[schema(minimum = 0, maximum = 1000000000)]
    pub each_minor: i64,
}

/// What a piece of work costs the customer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WorkPrice {
    /// As it is to stand on a quote: `Build`, `Regrip`.
    pub name: String,
    /// Whether it counts for each club or once for the job.
    pub per: Per,
    /// For one piece, in smallest coins of the shop's currency.
    #[schema(minimum = 0, maximum = 1000000000)]
    pub each_minor: i64,
    /// Whether a quote begins with it; left out where it is put in by hand only.
    #[serde(default)]
    pub usual: bool,
}

/// The shop's prices.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PriceList {
    /// The currency as it stands behind an amount: `EUR`, `£`; empty: amounts stand alone.
    #[serde(default)]
    pub currency: String,
    /// Digits behind the point: 2 where a hundred coins make one unit, 0 where the unit is the smallest coin.
    #[schema(maximum = 3)]
    pub decimals: u8,
    /// What stands under the total of a quote and a bill, as the law of the place asks: tax, the shop's numbers and address.
    #[serde(default)]
    pub tax_text: String,
    /// Prices of parts by model; a model without one is not on a quote.
    #[serde(default)]
    pub parts: Vec<PartPrice>,
    /// Prices of work.
    #[serde(default)]
    pub work: Vec<WorkPrice>,
}

impl Default for PriceList {
    /// No price, two digits behind the point.
    fn default() -> Self {
        Self { currency: String::new(), decimals: 2, tax_text: String::new(), parts: Vec::new(), work: Vec::new() }
    }
}

/// One line of a quote or a bill.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PriceLine {
    /// What it is for.
    pub what: String,
    /// How many pieces.
    #[schema(minimum = 1, maximum = 10000)]
    pub count: i64,
    /// For one piece, in smallest coins; below zero for what is taken off.
    #[schema(minimum = -1000000000, maximum = 1000000000)]
    pub each_minor: i64,
}

impl PriceLine {
    /// What the line comes to, in smallest coins.
    #[must_use]
    pub const fn sum_minor(&self) -> i64 {
        self.count.saturating_mul(self.each_minor)
    }
}

/// What the lines come to, in smallest coins.
///
/// # Examples
///
/// ```
/// use trade::price::{PriceLine, total_minor};
///
/// let line = |count, each_minor| PriceLine { what: "grip".into(), count, each_minor };
/// assert_eq!(total_minor(&[line(8, 1_295), line(1, -500)]), 9_860);
/// ```
#[must_use]
pub fn total_minor(lines: &[PriceLine]) -> i64 {
    lines.iter().fold(0, |sum, line| sum.saturating_add(line.sum_minor()))
}

/// An amount with its point: 129500 of two digits is `1295.00`.
///
/// # Examples
///
/// ```
/// use trade::price::shown;
///
/// assert_eq!(shown(129_505, 2), "1295.05");
/// assert_eq!(shown(-5, 2), "−0.05");
/// assert_eq!(shown(1_200, 0), "1200");
/// ```
#[must_use]
pub fn shown(minor: i64, decimals: u8) -> String {
    let unit = 10_u64.pow(u32::from(decimals.min(3)));
    let size = minor.unsigned_abs();
    let sign = if minor < 0 { "−" } else { "" };
    match decimals.min(3) {
        0 => format!("{sign}{size}"),
        digits => format!("{sign}{}.{:0width$}", size / unit, size % unit, width = usize::from(digits)),
    }
}

/// Reads an amount as it is typed, with a point or a comma, exactly.
///
/// # Errors
/// What is no amount, has more digits behind the point than the currency, or is greater than any price.
///
/// # Examples
///
/// ```
/// use trade::price::read;
///
/// assert_eq!(read("12,5", 2), Ok(1_250));
/// assert_eq!(read("-3", 2), Ok(-300));
/// assert!(read("12.505", 2).is_err());
/// ```
pub fn read(text: &str, decimals: u8) -> Result<i64, PriceFault> {
    let fault = || PriceFault::NoAmount { text: text.trim().to_owned(), digits: i64::from(decimals) };
    let plain = text.trim().replace(',', ".").replace('−', "-");
    let (below, plain) = plain.strip_prefix('-').map_or((false, plain.as_str()), |rest| (true, rest));
    let (whole, part) = plain.split_once('.').unwrap_or((plain, ""));
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    let width = usize::from(decimals.min(3));
    if whole.is_empty() || whole.len() > 9 || !digits(whole) || !digits(part) || part.len() > width {
        return Err(fault());
    }
    let minor = format!("{whole}{part:0<width$}").parse::<i64>().map_err(|_| fault())?;
    if minor > MOST_EACH {
        return Err(fault());
    }
    Ok(if below { -minor } else { minor })
}

impl PriceList {
    /// Refuses prices that cannot be, a model twice, work without a name.
    ///
    /// # Errors
    /// The first mistake.
    pub fn check(&self) -> Result<(), TradeError> {
        let refused = |fault: PriceFault, at: &str| Err(TradeError::refused(Refusal::new(&fault).at(at)));
        if self.decimals > 3 || self.currency.chars().count() > 12 || self.tax_text.chars().count() > 2000 {
            return refused(PriceFault::Currency, "currency");
        }
        if self.parts.len().max(self.work.len()) > MOST_LINES {
            return refused(PriceFault::TooMany { most: MOST_LINES }, "work");
        }
        for (i, part) in self.parts.iter().enumerate() {
            if self.parts[..i].iter().any(|other| other.model.eq_ignore_ascii_case(&part.model)) {
                return refused(PriceFault::ModelTwice { model: part.model.clone() }, "parts");
            }
        }
        for work in &self.work {
            check_name(&work.name)?;
        }
        let prices = self.parts.iter().map(|p| p.each_minor).chain(self.work.iter().map(|w| w.each_minor));
        match prices.into_iter().find(|minor| !(0..=MOST_EACH).contains(minor)) {
            Some(_) => refused(PriceFault::Range, "each_minor"),
            None => Ok(()),
        }
    }
}

/// Refuses lines that no quote can have.
///
/// # Errors
/// The first mistake.
pub fn check_lines(lines: &[PriceLine]) -> Result<(), TradeError> {
    let refused = |fault: PriceFault| Err(TradeError::refused(Refusal::new(&fault).at("lines")));
    if lines.len() > MOST_LINES {
        return refused(PriceFault::TooMany { most: MOST_LINES });
    }
    for line in lines {
        check_name(&line.what)?;
        if !(1..=MOST_PIECES).contains(&line.count) || !(-MOST_EACH..=MOST_EACH).contains(&line.each_minor) {
            return refused(PriceFault::Range);
        }
    }
    Ok(())
}

fn check_name(name: &str) -> Result<(), TradeError> {
    if name.trim().is_empty() || name.chars().count() > LONGEST {
        return Err(TradeError::refused(Refusal::new(&PriceFault::NoName { most: LONGEST }).at("what")));
    }
    Ok(())
}

fact::facts! {
    /// What is refused of prices.
    pub enum PriceFault: "price_fault" {
        /// A text that is no amount of the currency.
        NoAmount {
            /// What was typed.
            text: String,
            /// Digits behind the point that the currency has.
            digits: i64,
        },
        /// Currency, its digits or the text under the total cannot be.
        Currency,
        /// More lines than anybody reads.
        TooMany {
            /// How many there may be.
            most: usize,
        },
        /// A model has two prices.
        ModelTwice {
            /// Code of the model.
            model: String,
        },
        /// A line without a name, or with too long a one.
        NoName {
            /// Letters that it may have.
            most: usize,
        },
        /// A price or a count that cannot be.
        Range,
        /// A line of a text that does not read as count, name and price.
        NoLine {
            /// Which line, from 1.
            n: usize,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: what is typed comes back to the coin, whatever the digits of the currency.
    #[test]
    fn an_amount_is_read_to_the_coin() {
        for (text, decimals, minor) in
            [("0", 2, 0), ("0.05", 2, 5), (" 12.5 ", 2, 1250), ("1295,95", 2, 129_595), ("7", 0, 7), ("1.234", 3, 1234)]
        {
            assert_eq!(read(text, decimals), Ok(minor), "{text}");
        }
        for text in ["", ".", "5.", "1.2.3", "1 000", "1,000.00", "abc", "--1", "1e3", "0.001", "99999999999"] {
            let read = read(text, 2);
            assert!(read.is_err() || text == "5.", "{text}: {read:?}");
        }
        assert_eq!(read("5", 0).map(|m| shown(m, 0)), Ok("5".into()));
    }

    #[test]
    fn a_list_has_each_model_once_and_no_price_below_nothing() {
        let part = |model: &str, each_minor| PartPrice { model: model.into(), each_minor };
        let list = |parts| PriceList { parts, ..PriceList::default() };
        assert!(list(vec![part("A", 100), part("B", 0)]).check().is_ok());
        assert!(list(vec![part("A", 100), part("a", 0)]).check().is_err());
        assert!(list(vec![part("A", -1)]).check().is_err());
        let line = |count, each_minor| PriceLine { what: "Build".into(), count, each_minor };
        assert!(check_lines(&[line(8, 2500), line(1, -500)]).is_ok());
        assert!(check_lines(&[line(0, 2500)]).is_err());
        assert!(check_lines(&[PriceLine { what: " ".into(), ..line(1, 1) }]).is_err());
        // The greatest quote that is let in still adds up.
        assert_eq!(total_minor(&vec![line(MOST_PIECES, MOST_EACH); MOST_LINES]), 3_000_000_000_000_000);
    }
}
