//! What the reader's units change beside the figures: examples of entries, and what a bare figure means.

use quantity::{Length, LengthUnit, Mass, MassUnit, Units, parse_length, parse_mass};
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

/// Words that were made in grams and inches, in the person's units: `add 3 g to the tip` becomes
/// `add 0.106 oz to the tip`. A figure is taken for one only where its unit follows as a word of its own.
pub(crate) fn restated(w: &Words, words: &str) -> String {
    let units = w.units;
    if units == Units::default() {
        return words.to_owned();
    }
    let mut out = String::with_capacity(words.len());
    let mut rest = words;
    while let Some((before, figure, sign, after)) = next_figure(rest) {
        out.push_str(before);
        match (figure.parse::<f64>(), sign) {
            (Ok(g), "g") if units.mass != MassUnit::Gram => out.push_str(&w.mass(g)),
            (Ok(inch), "in") if units.length != LengthUnit::Inch => {
                out.push_str(&Length::from_inch(inch).print(units.length, 1));
            }
            _ => out.push_str(&rest[before.len()..rest.len() - after.len()]),
        }
        rest = after;
    }
    out + rest
}

/// The next `FIGURE g` or `FIGURE in`: what stands before, the figure, the sign, what follows.
fn next_figure(text: &str) -> Option<(&str, &str, &str, &str)> {
    let part_of_figure = |b: u8| b.is_ascii_digit() || b == b'.';
    for (at, _) in text.match_indices(' ') {
        let begin = text[..at].bytes().rposition(|b| !part_of_figure(b)).map_or(0, |i| i + 1);
        let before_ok = text[..begin].chars().next_back().is_none_or(|c| !c.is_alphanumeric() && !"-/".contains(c));
        let figure = &text[begin..at];
        if !before_ok || !figure.bytes().next().is_some_and(|b| b.is_ascii_digit()) {
            continue;
        }
        for sign in ["g", "in"] {
            let Some(after) = text[at + 1..].strip_prefix(sign) else { continue };
            // "2 in 10" and "4 in the tip" are no lengths: an inch stands at the end of its phrase.
            let ends = match sign {
                "g" => !after.starts_with(|c: char| c.is_alphanumeric() || c == '/'),
                _ => after.is_empty() || after.starts_with(['.', ',', ';', ')', ':']),
            };
            if ends {
                return Some((&text[..begin], figure, sign, after));
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

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

    #[test]
    fn words_are_restated_and_what_is_no_figure_is_left_alone() {
        let say = |units, text: &str| restated(&Words::english(units), text);
        assert_eq!(say(OUNCES, "Put 2 g in the tip, 9 in 10 inside."), "Put 0.071 oz in the tip, 9 in 10 inside.");
        assert_eq!(say(OUNCES, "Head H-12 g, 256.1 g."), "Head H-12 g, 9.034 oz.");
        assert_eq!(say(METRIC, "its length of 37.25 in, 2 in a set"), "its length of 946.2 mm, 2 in a set");
        assert_eq!(say(METRIC, "Put 2 g in the tip"), "Put 2 g in the tip");
        assert_eq!(say(OUNCES, "80 g/m² of tape, 30 grips"), "80 g/m² of tape, 30 grips");
        assert_eq!(say(Units::default(), "Put 2 g in"), "Put 2 g in");
    }
}
