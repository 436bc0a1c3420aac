//! Figures whose kind is known only when the program runs: what a gauge measures, what the shop has learned.

use crate::units::signed;
use crate::{Words, text};
use quantity::{INCH_MM, LengthUnit, MassUnit, decimal};

/// What sort of figure it is, and with it the unit in which a reader sees it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Amount {
    /// A mass, g.
    Mass,
    /// A length, mm.
    Length,
    /// A difference of swing weights, points.
    Points,
    /// An angle, degrees.
    Angle,
    /// A frequency, cycles per minute.
    Frequency,
    /// A part of a whole: 0.05 is 5 %.
    Share,
    /// So many times as much.
    Times,
}

impl Words {
    /// A figure with its unit. `decimals` are those of the unit in which figures are kept; ounces and inches, the coarser
    /// units, have two more.
    #[must_use]
    pub fn amount(&self, of: Amount, value: f64, decimals: u8) -> String {
        let figure = self.amount_figure(of, value, decimals);
        match of {
            Amount::Mass => format!("{figure} {}", self.mass_sign()),
            Amount::Length => format!("{figure} {}", self.length_sign()),
            Amount::Points if figure.trim_end_matches('0') == self.printed("1.") => {
                text!(self, "figure-point", figure = figure)
            }
            Amount::Points => text!(self, "figure-points", figure = figure),
            Amount::Angle => format!("{figure}°"),
            Amount::Frequency => text!(self, "figure-cpm", figure = figure),
            Amount::Share => text!(self, "figure-percent", figure = figure),
            Amount::Times => text!(self, "figure-times", figure = figure),
        }
    }

    /// The same with its sign, also a plus; what shows as zero has none.
    #[must_use]
    pub fn signed_amount(&self, of: Amount, value: f64, decimals: u8) -> String {
        signed(self.amount(of, value, decimals), value)
    }

    /// A whole figure with its unit: `0 g`, `5 mm`.
    #[must_use]
    pub fn amount_whole(&self, of: Amount, value: i64) -> String {
        match of {
            Amount::Angle => format!("{value}°"),
            _ => format!("{value} {}", self.amount_sign(of)),
        }
    }

    /// The figure alone, in the reader's unit.
    #[must_use]
    pub fn amount_figure(&self, of: Amount, value: f64, decimals: u8) -> String {
        let text = match of {
            Amount::Mass if self.units.mass == MassUnit::Ounce => {
                decimal(quantity::Mass::from_g(value).oz(), decimals + 2)
            }
            Amount::Length if self.units.length == LengthUnit::Inch => decimal(value / INCH_MM, decimals + 2),
            Amount::Share => decimal(100.0 * value, decimals),
            _ => decimal(value, decimals),
        };
        self.printed(&text)
    }

    /// The reader's unit of such a figure, for a field or the head of a column: `g`, `in`, `points`.
    #[must_use]
    pub fn amount_sign(&self, of: Amount) -> String {
        match of {
            Amount::Mass => self.mass_sign().to_owned(),
            Amount::Length => self.length_sign().to_owned(),
            Amount::Points => self.text("unit-points"),
            Amount::Angle => self.text("unit-deg"),
            Amount::Frequency => self.text("unit-cpm"),
            Amount::Share => self.text("unit-percent"),
            Amount::Times => self.text("unit-times"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    #[test]
    fn an_amount_is_shown_in_the_readers_unit() {
        let grams = Words::english(Units { mass: MassUnit::Gram, length: LengthUnit::Millimetre });
        let ounces = Words::english(Units { mass: MassUnit::Ounce, length: LengthUnit::Inch });
        // 1 oz is 28.3495 g (NIST SP 811), 1 in is 25.4 mm.
        assert_eq!(grams.amount(Amount::Mass, 28.35, 1), "28.4 g");
        assert_eq!(ounces.amount(Amount::Mass, 28.35, 1), "1.000 oz");
        assert_eq!(grams.signed_amount(Amount::Length, -2.54, 1), "−2.5 mm");
        assert_eq!(ounces.signed_amount(Amount::Length, 2.54, 1), "+0.100 in");
        assert_eq!(grams.amount(Amount::Share, 0.053, 1), "5.3 %");
        assert_eq!(grams.amount(Amount::Points, 1.0, 2), "1.00 point");
        assert_eq!(grams.amount(Amount::Times, 1.2, 1), "1.2 ×");
        assert_eq!(grams.amount_sign(Amount::Frequency), "cpm");
    }
}
