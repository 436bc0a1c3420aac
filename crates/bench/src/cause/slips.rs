//! What a typed value may have been meant to be.

use super::kinds::CauseKind;
use quantity::{INCH_MM, LengthUnit, MassUnit, OZ_G};
use trade::pendulum::Pendulum;
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
    misread(reading, &mut all);
    let mut add = |kind, values: Vec<f64>, stretch: f64| {
        let values: Vec<f64> = values.into_iter().filter(|v| is_another(reading, *v)).collect();
        let share = 1.0 / values.len().max(1) as f64;
        all.extend(values.into_iter().map(|meant| Slip { kind, meant, stretch, share }));
    };
    let swapped = swapped_digits(&reading.typed);
    add(CauseKind::DigitsSwapped, swapped.iter().filter_map(|text| value(reading.what, text)).collect(), 1.0);
    // A time is kept with how many swings it is of: 18.8/10.
    if reading.what == What::SwingPeriod
        && reading.typed.contains('/')
        && let Ok(timed) = Pendulum::default().timed(&reading.typed)
    {
        let swings = f64::from(timed.swings);
        let meant = [-1.0, 1.0].map(|more| reading.value * swings / (swings + more));
        add(CauseKind::SwingsMiscounted, meant.to_vec(), 1.0);
    }
    if reading.what.unit() == Unit::Gram {
        for factor in [OZ_G, 1.0 / OZ_G] {
            add(CauseKind::WrongUnit, vec![reading.value * factor], factor);
        }
    }
    all
}

/// A letter, a digit or a mark of the rule read one off.
///
/// Copying errors are of one digit about eight times in ten, and swap two neighbours once (J. Verhoeff, *Error Detecting Decimal
/// Codes*, Mathematical Centre Tracts 29, Amsterdam 1969, from memory). So a value that differs from what was typed in one
/// letter or digit is likelier meant than one that differs in two, as D9.9 from E0.9.
fn misread(reading: &Reading, all: &mut Vec<Slip>) {
    let steps: &[f64] = match reading.what.unit() {
        // A letter, or a mark.
        Unit::Points | Unit::Gram => &[-10.0, -1.0, 1.0, 10.0],
        Unit::Millimetre => &[-INCH_MM, -INCH_MM / 2.0, INCH_MM / 2.0, INCH_MM],
        Unit::Degree | Unit::Cpm | Unit::Second | Unit::KgCm2 | Unit::None => &[],
    };
    let one_off: Vec<f64> = one_sign_off(&reading.typed).iter().filter_map(|text| value(reading.what, text)).collect();
    let of_one_sign = |meant: f64| one_off.iter().any(|other| (other - meant).abs() < 1e-6);
    let meant: Vec<f64> = steps.iter().map(|step| reading.value + step).filter(|v| is_another(reading, *v)).collect();
    let marks = reading.what.unit() == Unit::Millimetre;
    all.extend(meant.iter().map(|&value| Slip {
        kind: CauseKind::Misread,
        meant: value,
        stretch: 1.0,
        share: match marks {
            true => 1.0 / meant.len() as f64,
            false if of_one_sign(value) => ONE_SIGN,
            false => TWO_SIGNS,
        },
    }));
}

/// Share of the kind of a value that differs from the typed one in a single letter or digit, and of one that differs in two.
/// Four with a single one are twice as likely as one kind of slip was taken to be before; larger shares would name this slip
/// where a butt is off its stop, which moves a reading by about as much (seen by the sweep over all causes).
const ONE_SIGN: f64 = 0.5;
const TWO_SIGNS: f64 = 0.1;

/// Whether a value could be read and is not the one that was.
fn is_another(reading: &Reading, value: f64) -> bool {
    let (low, high) = reading.what.possible();
    (low..=high).contains(&value) && (value - reading.value).abs() > 1e-6
}

/// The text with each letter of the scale and each digit one higher or lower, one at a time.
fn one_sign_off(text: &str) -> Vec<String> {
    let near = |sign: char| -> Vec<char> {
        let neighbours = [char::from_u32(u32::from(sign).wrapping_sub(1)), char::from_u32(u32::from(sign) + 1)];
        let alike = |other: &char| match sign {
            '0'..='9' => other.is_ascii_digit(),
            'A'..='G' => ('A'..='G').contains(other),
            'a'..='g' => ('a'..='g').contains(other),
            _ => false,
        };
        neighbours.into_iter().flatten().filter(alike).collect()
    };
    let signs: Vec<char> = text.chars().collect();
    (0..signs.len())
        .flat_map(|at| near(signs[at]).into_iter().map(move |other| (at, other)))
        .map(|(at, other)| {
            let mut changed = signs.clone();
            changed[at] = other;
            changed.into_iter().collect()
        })
        .collect()
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
        Unit::Second => Pendulum::default().timed(text).ok().map(|timed| timed.period_s),
        Unit::Degree | Unit::Cpm | Unit::KgCm2 | Unit::None => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_letter_or_digit_off_is_likelier_than_two() {
        assert_eq!(one_sign_off("D0.9"), ["C0.9", "E0.9", "D1.9", "D0.8"]);
        let reading = |what: What, typed: &str, value: f64| -> Reading {
            let read = serde_json::json!({
                "id": "r1", "job": "j1", "club": "c1", "step": "dry", "what": what.key(), "value": value,
                "unit": what.unit(), "typed": typed, "on": [], "display_step": 0.1,
                "at": "2026-03-02T09:00:00Z", "by": "Ada"
            });
            serde_json::from_value(read).unwrap()
        };
        let shares = |reading: &Reading| -> Vec<(f64, f64)> {
            let misread = slips(reading).into_iter().filter(|slip| slip.kind == CauseKind::Misread);
            misread.map(|slip| ((slip.meant - reading.value).round(), slip.share)).collect()
        };
        // A point lower than D0.9 is C9.9, two signs; a point higher is D1.9, one.
        let (one, two) = (ONE_SIGN, TWO_SIGNS);
        let typed = reading(What::SwingWeight, "D0.9", 30.9);
        assert_eq!(shares(&typed), [(-10.0, one), (-1.0, two), (1.0, one), (10.0, one)]);
        let typed = reading(What::HeadMass, "269.4", 269.4);
        assert_eq!(shares(&typed), [(-10.0, one), (-1.0, one), (1.0, two), (10.0, one)]);
    }

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
