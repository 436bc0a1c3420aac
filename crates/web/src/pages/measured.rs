//! A mass or a length of a form: shown and typed in the reader's unit, kept in the document's.

use super::entries::{FormFault, plain, plain_number};
use fact::{Fact, Told};
use quantity::{Length, LengthUnit, Mass, MassUnit, NotationError, parse_length, parse_mass};
use words::Words;

/// Decimals of a figure in the document's unit that count: a tenth of a milligram, a tenth of a micrometre.
const DECIMALS: u8 = 4;
/// Decimals that a figure may need in another unit so that none of those is lost.
const MOST_DECIMALS: usize = 7;

/// The unit that a document keeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Measured {
    Gram,
    Millimetre,
    Inch,
}

/// Why a figure cannot be read.
#[derive(Debug)]
pub(super) enum Unread {
    Number(FormFault),
    Notation(NotationError),
}

impl Fact for Unread {
    fn told(&self) -> Told {
        match self {
            Self::Number(fault) => fault.told(),
            Self::Notation(error) => error.told(),
        }
    }
}

impl Measured {
    /// That of a sign; none where no reader has another unit for it.
    pub fn of(sign: &str) -> Option<Self> {
        [Self::Gram, Self::Millimetre, Self::Inch].into_iter().find(|measured| measured.sign() == sign)
    }

    /// Sign of the document's unit.
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// Sign of the reader's unit.
    pub fn reader_sign(self, w: &Words) -> &'static str {
        if self == Self::Gram { w.mass_sign() } else { w.length_sign() }
    }

    /// How many of the document's unit one of the reader's is; none where they are the same.
    fn factor(self, w: &Words) -> Option<f64> {
        match (self, w.units.mass, w.units.length) {
            (Self::Gram, MassUnit::Gram, _)
            | (Self::Millimetre, _, LengthUnit::Millimetre)
            | (Self::Inch, _, LengthUnit::Inch) => None,
            (Self::Gram, unit, _) => Some(unit.grams()),
            (Self::Millimetre, _, unit) => Some(unit.millimetres()),
            (Self::Inch, _, unit) => Some(unit.millimetres() / quantity::INCH_MM),
        }
    }

    /// A figure as the form shows it, in the reader's unit: with the fewest decimals that give back the document's figure.
    pub fn typed(self, w: &Words, value: f64) -> String {
        let Some(factor) = self.factor(w) else { return plain(value) };
        let wanted = quantity::round_to(value, DECIMALS);
        let theirs = value / factor;
        (0..=MOST_DECIMALS)
            .map(|decimals| format!("{theirs:.decimals$}"))
            .find(|text| {
                let back = text.parse::<f64>().map_or(f64::NAN, |shown| shown * factor);
                quantity::round_to(back, DECIMALS) == wanted
            })
            .unwrap_or_else(|| format!("{} {}", plain(value), self.sign()))
    }

    /// The same with a fraction of an inch, `36 3/4`, where it is one.
    pub fn typed_fraction(self, w: &Words, value: f64) -> String {
        let inches = if self == Self::Inch { value } else { value / quantity::INCH_MM };
        let sixteenths = inches * 16.0;
        if w.units.length == LengthUnit::Inch && (sixteenths - sixteenths.round()).abs() < 0.01 {
            return Length::from_inch(inches).print_inches().trim_end_matches("in").trim().to_owned();
        }
        self.typed(w, value)
    }

    /// Reads a figure: in the reader's unit where it has none of its own.
    pub fn read(self, w: &Words, text: &str) -> Result<f64, Unread> {
        let text = text.trim();
        let Ok(bare) = plain_number(text) else { return self.read_with_unit(w, text) };
        let Some(factor) = self.factor(w) else { return Ok(bare) };
        // What the form showed comes back as it was kept.
        let (exact, kept) = (bare * factor, quantity::round_to(bare * factor, DECIMALS));
        Ok(if self.typed(w, kept) == text { kept } else { exact })
    }

    /// A figure with a unit or a fraction, perhaps with a minus: a place may lie on the other side.
    fn read_with_unit(self, w: &Words, text: &str) -> Result<f64, Unread> {
        let (sign, figure) = match text.strip_prefix(['-', '−']) {
            Some(figure) => (-1.0, figure.trim_start()),
            None => (1.0, text),
        };
        if !figure.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == ',') {
            return Err(Unread::Number(FormFault::Number { text: text.to_owned() }));
        }
        let value = match self {
            Self::Gram => parse_mass(figure, w.units.mass).map(Mass::g),
            Self::Millimetre => parse_length(figure, w.units.length).map(Length::mm),
            Self::Inch => parse_length(figure, w.units.length).map(Length::inch),
        };
        value.map(|value| sign * value).map_err(Unread::Notation)
    }
}

#[cfg(test)]
mod tests {
    use super::Measured::{Gram, Inch, Millimetre};
    use quantity::{LengthUnit, MassUnit, Units};
    use words::Words;

    fn of(length: LengthUnit, mass: MassUnit) -> Words {
        Words::english(Units { length, mass })
    }

    #[test]
    fn a_figure_is_typed_in_the_readers_unit_and_comes_back_as_it_was() {
        let imperial = of(LengthUnit::Inch, MassUnit::Ounce);
        // 9.4 mm is 0.37008 in (1 in = 25.4 mm exactly); 268.4 g is 9.46753 oz (1 oz = 28.349 523 125 g exactly).
        assert_eq!(Millimetre.typed(&imperial, 9.4), "0.37008");
        assert_eq!(Gram.typed(&imperial, 268.4), "9.46753");
        let metric = of(LengthUnit::Millimetre, MassUnit::Gram);
        assert_eq!(Inch.typed(&metric, 37.5), "952.5");
        for step in 1..4000 {
            let value = f64::from(step) / 10.0;
            for measured in [Gram, Millimetre, Inch] {
                for words in [&imperial, &metric] {
                    let text = measured.typed(words, value);
                    assert_eq!(measured.read(words, &text).unwrap(), value, "{text}");
                }
            }
        }
        assert_eq!(Millimetre.typed_fraction(&imperial, 933.45), "36 3/4");
        assert_eq!(Millimetre.read(&imperial, "36 3/4").unwrap(), 933.45);
    }

    #[test]
    fn an_entry_with_its_own_unit_stays_valid() {
        let imperial = of(LengthUnit::Inch, MassUnit::Ounce);
        assert_eq!(Millimetre.read(&imperial, "9.4 mm").unwrap(), 9.4);
        assert_eq!(Millimetre.read(&imperial, "0.5").unwrap(), 12.7);
        assert_eq!(Millimetre.read(&imperial, "-2 mm").unwrap(), -2.0);
        assert_eq!(Gram.read(&imperial, "8 g").unwrap(), 8.0);
        assert_eq!(Inch.read(&of(LengthUnit::Millimetre, MassUnit::Gram), "0.58 in").unwrap(), 0.58);
        assert!(Gram.read(&imperial, "heavy").is_err());
        assert!(Gram.read(&imperial, "8 mm").is_err());
    }
}
