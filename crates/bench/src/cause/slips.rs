//! What a typed value may have been meant to be.

use super::kinds::CauseKind;
use quantity::{INCH_MM, LengthUnit, MassUnit, OZ_G};
use trade::reading::{Reading, Unit, What};

/// One value that may have been meant.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Slip {
    pub kind: CauseKind,
    /// Meant value in the reading's unit.
    pub meant: f64,
    /// Its change with the value typed.
    pub stretch: f64,
    /// Share of the kind's probability.
    pub share: f64,
}

/// All values that a reading may have been meant to be, other than its own and possible at all.
pub(super) fn slips(reading: &Reading) -> Vec<Slip> {
    let mut all = Vec::new();
    let mut add = |kind, values: Vec<f64>, stretch: f64| {
        let (low, high) = reading.what.possible();
        let values: Vec<f64> =
            values.into_iter().filter(|v| (low..=high).contains(v) && (v - reading.value).abs() > 1e-6).collect();
        let share = 1.0 / values.len().max(1) as f64;
        all.extend(values.into_iter().map(|meant| Slip { kind, meant, stretch, share }));
    };
    let swapped = swapped_digits(&reading.typed);
    add(CauseKind::DigitsSwapped, swapped.iter().filter_map(|text| value(reading.what, text)).collect(), 1.0);
    let steps: &[f64] = match reading.what.unit() {
        // A letter, or a mark.
        Unit::Points => &[-10.0, -1.0, 1.0, 10.0],
        Unit::Gram => &[-10.0, -1.0, 1.0, 10.0],
        Unit::Millimetre => &[-INCH_MM, -INCH_MM / 2.0, INCH_MM / 2.0, INCH_MM],
        Unit::Degree | Unit::Cpm | Unit::None => &[],
    };
    add(CauseKind::Misread, steps.iter().map(|step| reading.value + step).collect(), 1.0);
    if reading.what.unit() == Unit::Gram {
        for factor in [OZ_G, 1.0 / OZ_G] {
            add(CauseKind::WrongUnit, vec![reading.value * factor], factor);
        }
    }
    all
}

/// The text with each two neighbouring digits, a point between them or not, in each other's place.
fn swapped_digits(text: &str) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let digits: Vec<usize> = (0..letters.len()).filter(|i| letters[*i].is_ascii_digit()).collect();
    digits
        .windows(2)
        .filter(|pair| letters[pair[0]] != letters[pair[1]] && pair[1] - pair[0] <= 2)
        .map(|pair| {
            let mut swapped = letters.clone();
            swapped.swap(pair[0], pair[1]);
            swapped.into_iter().collect()
        })
        .collect()
}

/// The value of a text in the unit of what was read; a plain number counts as one in that unit.
fn value(what: What, text: &str) -> Option<f64> {
    match what.unit() {
        Unit::Points => {
            let letters = quantity::parse_swing_weight(text).map(quantity::SwingMoment::points);
            letters.ok().or_else(|| text.trim().parse().ok())
        }
        Unit::Gram => quantity::parse_mass(text, MassUnit::Gram).ok().map(quantity::Mass::g),
        // A program sends plain millimetres, a person inches.
        Unit::Millimetre => text
            .trim()
            .parse::<f64>()
            .ok()
            .filter(|mm| *mm > 100.0)
            .or_else(|| quantity::parse_length(text, LengthUnit::Inch).ok().map(quantity::Length::mm)),
        Unit::Degree | Unit::Cpm | Unit::None => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neighbouring_digits_change_places() {
        assert_eq!(swapped_digits("D8.9"), ["D9.8"]);
        assert_eq!(swapped_digits("265.4"), ["625.4", "256.4", "264.5"]);
        assert!(swapped_digits("D1.1").is_empty());
        for text in ["C9.8", "29.8"] {
            assert!((value(What::SwingWeight, text).unwrap() - 29.8).abs() < 1e-9, "{text}");
        }
    }
}
