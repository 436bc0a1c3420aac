//! What the reader's units change beside the figures: examples of entries, and what a bare figure means.

use quantity::{Length, LengthUnit, Mass, MassUnit, parse_length, parse_mass};
use trade::reading::Unit;
use words::Words;

/// An example of an entry in the person's units: that of inches or grams, and how to write it otherwise.
pub(crate) fn example(w: &Words, inches_or_grams: &'static str, otherwise: &'static str, unit: Unit) -> &'static str {
    let own = match unit {
        Unit::Millimetre => w.units.length == LengthUnit::Inch,
        Unit::Gram => w.units.mass == MassUnit::Gram,
        _ => true,
    };
    if own { inches_or_grams } else { otherwise }
}

/// An entry with its unit written out where the person's unit is not the one that the bench assumes: `933.5` becomes
/// `933.5 mm` for somebody who works in millimetres. What has its unit, or cannot be read at all, stays as it is.
pub(crate) fn explicit(w: &Words, unit: Unit, typed: &str) -> String {
    let bare = match unit {
        Unit::Millimetre if w.units.length != LengthUnit::Inch => bare(
            typed,
            |t| parse_length(t, LengthUnit::Inch).map(Length::mm),
            |t| parse_length(t, LengthUnit::Millimetre).map(Length::mm),
        ),
        Unit::Gram if w.units.mass != MassUnit::Gram => {
            bare(typed, |t| parse_mass(t, MassUnit::Gram).map(Mass::g), |t| parse_mass(t, MassUnit::Ounce).map(Mass::g))
        }
        _ => false,
    };
    if !bare {
        return typed.to_owned();
    }
    let sign = if unit == Unit::Gram { w.mass_sign() } else { w.length_sign() };
    format!("{} {sign}", typed.trim())
}

/// A length with its unit written out where it has none: for entries that are read in millimetres whoever types them.
pub(crate) fn length_with_unit(w: &Words, typed: &str) -> String {
    let inches = |t: &str| parse_length(t, LengthUnit::Inch).map(Length::mm);
    let millimetres = |t: &str| parse_length(t, LengthUnit::Millimetre).map(Length::mm);
    if bare(typed, inches, millimetres) { format!("{} {}", typed.trim(), w.length_sign()) } else { typed.to_owned() }
}

/// Whether a text carries no unit: then it means another thing to each reader.
fn bare<E>(text: &str, one: impl Fn(&str) -> Result<f64, E>, other: impl Fn(&str) -> Result<f64, E>) -> bool {
    // Nought is nought in any unit, and needs none.
    matches!((one(text), other(text)), (Ok(a), Ok(b)) if (a - b).abs() > 1e-9)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    const METRIC: Units = Units { length: LengthUnit::Millimetre, mass: MassUnit::Gram };
    const OUNCES: Units = Units { length: LengthUnit::Inch, mass: MassUnit::Ounce };

    #[test]
    fn a_bare_figure_means_the_persons_unit() {
        let typed = |units, unit, text| explicit(&Words::english(units), unit, text);
        assert_eq!(typed(METRIC, Unit::Millimetre, "933.5"), "933.5 mm");
        assert_eq!(typed(METRIC, Unit::Millimetre, "36 3/4 in"), "36 3/4 in");
        // A bare fraction is never millimetres; the reader refuses it or takes it as inches, as before.
        assert_eq!(typed(METRIC, Unit::Millimetre, "36 3/4"), "36 3/4");
        assert_eq!(typed(METRIC, Unit::Gram, "256.1"), "256.1");
        assert_eq!(typed(OUNCES, Unit::Gram, "9,03"), "9,03 oz");
        assert_eq!(typed(OUNCES, Unit::Gram, "256 g"), "256 g");
        assert_eq!(typed(OUNCES, Unit::Gram, "nine"), "nine");
        assert_eq!(typed(OUNCES, Unit::Points, "D2"), "D2");
        let length = |units, text| length_with_unit(&Words::english(units), text);
        assert_eq!(length(METRIC, "1168"), "1168 mm");
        assert_eq!(length(OUNCES, "46"), "46 in");
        assert_eq!(length(OUNCES, "46 1/2"), "46 1/2");
        assert_eq!(length(OUNCES, "1168 mm"), "1168 mm");
    }
}
