//! Differences as a sheet states them: `+1/2`, `-1/4`, `2 up`, `1/2 under`, `std`.

use super::{Notation, NotationError, Problem, angle, length, mass, scan::Scanner, unit};
use crate::{Angle, Length, LengthUnit, Mass, MassUnit, SwingMoment};

/// Words that stand behind a figure instead of a plus sign.
const MORE: [&str; 6] = ["over", "longer", "long", "upright", "up", "more"];
/// Words that stand behind a figure instead of a minus sign.
const LESS: [&str; 6] = ["under", "shorter", "short", "flat", "down", "less"];
/// Words for no difference.
const NONE: [&str; 3] = ["standard", "std", "same"];

/// Reads a difference of length: `+1/2`, `-1/4 in`, `+5 mm`, `1/2 over`, `std`.
///
/// # Errors
///
/// [`NotationError`] as for [`parse_length`](crate::parse_length), or where sign and word both give a direction.
///
/// # Examples
///
/// ```
/// use quantity::{LengthUnit, parse_length_offset};
/// // Half an inch is 12.7 mm, a quarter 6.35 mm.
/// assert_eq!(parse_length_offset("1/2 over", LengthUnit::Inch)?.mm(), 12.7);
/// assert_eq!(parse_length_offset("-1/4", LengthUnit::Inch)?.mm(), -6.35);
/// // A sign and a word may say two different things.
/// assert!(parse_length_offset("-1/4 over", LengthUnit::Inch).is_err());
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_length_offset(text: &str, default_unit: LengthUnit) -> Result<Length, NotationError> {
    signed(text, Notation::LengthOffset, |scan| length(scan, default_unit)).map(|(sign, size)| size * sign)
}

/// Reads a difference of mass: `+2 g`, `-0.1 oz`.
///
/// # Errors
///
/// [`NotationError`] as for [`parse_mass`](crate::parse_mass), or where sign and word both give a direction.
pub fn parse_mass_offset(text: &str, default_unit: MassUnit) -> Result<Mass, NotationError> {
    signed(text, Notation::MassOffset, |scan| mass(scan, default_unit)).map(|(sign, size)| size * sign)
}

/// Reads a difference of angle in degrees: `+2`, `-1°`, `2 up`, `1 flat`, `std`.
///
/// # Errors
///
/// [`NotationError`] as for [`parse_angle`](crate::parse_angle), or where sign and word both give a direction.
///
/// # Examples
///
/// ```
/// assert_eq!(quantity::parse_angle_offset("2 up")?.deg(), 2.0);
/// assert_eq!(quantity::parse_angle_offset("1 flat")?.deg(), -1.0);
/// assert_eq!(quantity::parse_angle_offset("std")?.deg(), 0.0);
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_angle_offset(text: &str) -> Result<Angle, NotationError> {
    signed(text, Notation::AngleOffset, angle).map(|(sign, size)| size * sign)
}

/// Reads a difference of swing weight in points: `+2`, `-1/2`, `+1.5 pt`, or as a moment `+3.5 oz in`.
///
/// # Errors
///
/// [`NotationError`] where the text is not one difference. A letter form is refused: it is a swing weight, not a difference.
///
/// # Examples
///
/// ```
/// // Two points of 1.75 oz·in each.
/// assert_eq!(quantity::parse_swing_weight_offset("+2")?.oz_in(), 3.5);
/// assert!(quantity::parse_swing_weight_offset("D2").is_err());
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_swing_weight_offset(text: &str) -> Result<SwingMoment, NotationError> {
    signed(text, Notation::SwingWeightOffset, |scan| {
        let number = scan.number()?;
        match scan.rest() {
            "" => Ok(SwingMoment::from_point_difference(number.value)),
            word if unit::is_points(word) => Ok(SwingMoment::from_point_difference(number.value)),
            word => unit::moment_oz_in(word)
                .map(|factor_oz_in| SwingMoment::from_oz_in(number.value * factor_oz_in))
                .ok_or_else(|| scan.fail(Problem::UnknownUnit)),
        }
    })
    .map(|(sign, size)| size * sign)
}

/// Direction and size of a difference; the size is read by `size`.
fn signed<T: Default>(
    text: &str,
    what: Notation,
    size: impl Fn(&mut Scanner<'_>) -> Result<T, NotationError>,
) -> Result<(f64, T), NotationError> {
    let trimmed = text.trim_end();
    if NONE.iter().any(|word| trimmed.trim_start().eq_ignore_ascii_case(word)) {
        return Ok((1.0, T::default()));
    }
    let (word_sign, figure_end) = direction_word(trimmed);
    let mut scan = Scanner::within(text, figure_end, what);
    match (scan.sign(), word_sign) {
        (Some(_), Some(_)) => Err(scan.fail_at(figure_end, Problem::TwoSigns)),
        (sign, word) => Ok((sign.or(word).unwrap_or(1.0), size(&mut scan)?)),
    }
}

/// Sign given by the last word, and the byte where the figure before it ends.
fn direction_word(text: &str) -> (Option<f64>, usize) {
    let start = text
        .rfind(|c: char| !c.is_alphabetic())
        .map_or(0, |at| at + text[at..].chars().next().map_or(1, char::len_utf8));
    let last = text[start..].to_lowercase();
    if MORE.contains(&last.as_str()) {
        (Some(1.0), start)
    } else if LESS.contains(&last.as_str()) {
        (Some(-1.0), start)
    } else {
        (None, text.len())
    }
}
