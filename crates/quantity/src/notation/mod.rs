//! Reading the notation of the workshop.
//!
//! What a builder writes on a sheet or types with wet gloves is read strictly: a figure that could mean two things
//! (digit grouping, a fraction where millimetres are expected, "gr") is refused with an example, never guessed.

mod error;
mod offset;
mod scan;
mod unit;

pub use error::{Notation, NotationError, Problem};
pub use offset::{parse_angle_offset, parse_length_offset, parse_mass_offset, parse_swing_weight_offset};
use scan::Scanner;

use crate::{Angle, Frequency, Length, LengthUnit, Mass, MassUnit, SwingMoment, SwingWeight};

/// Reads a length: `36 3/4`, `36-3/4"`, `36¾ in`, `93.3 cm`, `93,3 cm`, `940 mm`.
///
/// # Errors
///
/// [`NotationError`] where the text is not one length, carries a sign (see [`parse_length_offset`]), groups its
/// digits, or writes a fraction without a unit while `default_unit` is metric.
///
/// # Examples
///
/// ```
/// use quantity::{LengthUnit, parse_length};
/// // 36.75 × 25.4 (an inch is 25.4 mm by definition).
/// assert_eq!(parse_length("36 3/4", LengthUnit::Inch)?.mm(), 933.45);
/// assert_eq!(parse_length("93,3 cm", LengthUnit::Inch)?.mm(), 933.0);
/// // A fraction is an inch to one reader and a slip to the next.
/// assert!(parse_length("36 3/4", LengthUnit::Millimetre).is_err());
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_length(text: &str, default_unit: LengthUnit) -> Result<Length, NotationError> {
    let mut scan = Scanner::new(text, Notation::Length);
    scan.refuse_sign()?;
    length(&mut scan, default_unit)
}

/// Number and unit of a length, to the end of the text.
fn length(scan: &mut Scanner<'_>, default_unit: LengthUnit) -> Result<Length, NotationError> {
    let number = scan.number()?;
    let unit = match scan.rest() {
        "" if number.is_fraction && default_unit != LengthUnit::Inch => {
            return Err(scan.fail_at(number.start, Problem::FractionWithoutUnit));
        }
        "" => default_unit,
        word => unit::length(word).ok_or_else(|| scan.fail(Problem::UnknownUnit))?,
    };
    Ok(Length::from_unit(number.value, unit))
}

/// Reads a mass: `8`, `8 g`, `1.75oz`, `1,75 oz`, `1/8 oz`.
///
/// # Errors
///
/// [`NotationError`] where the text is not one mass, carries a sign, groups its digits, or uses `gr`, which means
/// gram to one reader and grain to the next.
///
/// # Examples
///
/// ```
/// use quantity::{MassUnit, parse_mass};
/// // An eighth of 28.349523125 g (the avoirdupois ounce, exact since 1959).
/// assert_eq!(parse_mass("1/8 oz", MassUnit::Gram)?.g(), 28.349523125 / 8.0);
/// assert!(parse_mass("8 gr", MassUnit::Gram).is_err());
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_mass(text: &str, default_unit: MassUnit) -> Result<Mass, NotationError> {
    let mut scan = Scanner::new(text, Notation::Mass);
    scan.refuse_sign()?;
    mass(&mut scan, default_unit)
}

/// Number and unit of a mass, to the end of the text.
fn mass(scan: &mut Scanner<'_>, default_unit: MassUnit) -> Result<Mass, NotationError> {
    let number = scan.number()?;
    let unit = match scan.rest() {
        "" => default_unit,
        word if unit::is_ambiguous_mass(word) => return Err(scan.fail(Problem::AmbiguousUnit)),
        word => unit::mass(word).ok_or_else(|| scan.fail(Problem::UnknownUnit))?,
    };
    Ok(Mass::from_unit(number.value, unit))
}

/// Reads a swing weight: `D3.5`, `d 3.5`, `D3,5`, `e1`, `213.5 oz in`, `15400 g cm`, and the forms off the scale that
/// [`SwingWeight`] prints.
///
/// # Errors
///
/// [`NotationError`] where the text is neither a letter form nor a moment with its unit. A bare number is refused: it
/// could be points or a moment.
///
/// # Examples
///
/// ```
/// use quantity::parse_swing_weight;
/// // By hand: D2 is 32 points above A0, 161 + 1.75 × 32 oz·in.
/// assert_eq!(parse_swing_weight("D2")?.oz_in(), 217.0);
/// // (213.5 − 161) / 1.75 points are D0.
/// assert_eq!(parse_swing_weight("213.5 oz in")?.points(), 30.0);
/// assert!(parse_swing_weight("213.5").is_err());
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_swing_weight(text: &str) -> Result<SwingMoment, NotationError> {
    let mut scan = Scanner::new(text, Notation::SwingWeight);
    match scan.peek() {
        Some(letter) if letter.is_alphabetic() => letter_form(&mut scan),
        _ => {
            scan.refuse_sign()?;
            moment(&mut scan)
        }
    }
}

/// A letter, points, and off the scale perhaps the moment in brackets.
fn letter_form(scan: &mut Scanner<'_>) -> Result<SwingMoment, NotationError> {
    const END_POINTS: f64 = 10.0;
    // The moment beside the letters is rounded to 0.1 oz·in, the letters may be rounded to a whole point.
    const AGREE_OZ_IN: f64 = 1.0;
    let start = scan.position();
    let letter = scan.letter().ok_or_else(|| scan.fail(Problem::UnknownLetter))?;
    let negative = scan.sign() == Some(-1.0);
    let number = scan.number()?;
    // `D04` is no way to write D4: the point was left out.
    if let ([b'0', tenths @ b'0'..=b'9'], false) = (scan.read_from(number.start).as_bytes(), negative) {
        let meant = Some(format!("{letter}0.{}", char::from(*tenths)));
        return Err(NotationError { meant, ..scan.fail_at(start, Problem::BeyondLetter) });
    }
    let within = match letter {
        'A' if negative => true,
        'G' => !negative,
        _ => !negative && number.value < END_POINTS,
    };
    if !within {
        let meant = (!negative).then(|| point_left_out(letter, number.value)).flatten();
        return Err(NotationError { meant, ..scan.fail_at(start, Problem::BeyondLetter) });
    }
    let points = if negative { -number.value } else { number.value };
    let tens = f64::from(u32::from(letter) - u32::from('A'));
    let swing_weight = SwingWeight::from_points(tens * 10.0 + points);
    match scan.rest() {
        "" => {}
        beside if beside.starts_with('(') && beside.ends_with(')') => {
            scan.open_bracket();
            let minus = scan.sign() == Some(-1.0);
            let number = scan.number()?;
            let unit = scan.rest().trim_end_matches(')').trim_end();
            let factor_oz_in = unit::moment_oz_in(unit).ok_or_else(|| scan.fail(Problem::UnknownUnit))?;
            let beside_oz_in = if minus { -number.value } else { number.value } * factor_oz_in;
            if (beside_oz_in - swing_weight.moment().oz_in()).abs() > AGREE_OZ_IN {
                return Err(scan.fail_at(number.start, Problem::Disagree));
            }
        }
        _ => return Err(scan.fail(Problem::Unexpected)),
    }
    Ok(swing_weight.moment())
}

/// What `D97` was meant to be: two digits whose point was left out. From 10 to 19 it may as well be the next letter.
fn point_left_out(letter: char, points: f64) -> Option<String> {
    let two_digits = points.fract() == 0.0 && (20.0..100.0).contains(&points);
    two_digits.then(|| format!("{letter}{:.1}", points / 10.0))
}

/// A number with a unit of moment, to the end of the text.
fn moment(scan: &mut Scanner<'_>) -> Result<SwingMoment, NotationError> {
    let number = scan.number()?;
    match scan.rest() {
        "" => Err(scan.fail_at(number.start, Problem::MissingUnit)),
        word if unit::is_points(word) => Ok(SwingMoment::from_points(number.value)),
        word => unit::moment_oz_in(word)
            .map(|factor_oz_in| SwingMoment::from_oz_in(number.value * factor_oz_in))
            .ok_or_else(|| scan.fail(Problem::UnknownUnit)),
    }
}

/// Reads an angle in degrees: `61.5`, `61.5°`, `61 1/2 deg`, `61° 30'`.
///
/// # Errors
///
/// [`NotationError`] where the text is not one angle or carries a sign (see [`parse_angle_offset`]).
///
/// # Examples
///
/// ```
/// // Thirty of sixty minutes are half a degree.
/// assert_eq!(quantity::parse_angle("61° 30'")?.deg(), 61.5);
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_angle(text: &str) -> Result<Angle, NotationError> {
    let mut scan = Scanner::new(text, Notation::Angle);
    scan.refuse_sign()?;
    angle(&mut scan)
}

/// Number and unit of an angle, perhaps with minutes, to the end of the text.
fn angle(scan: &mut Scanner<'_>) -> Result<Angle, NotationError> {
    const MINUTES_A_DEGREE: f64 = 60.0;
    let number = scan.number()?;
    let minutes = if scan.skip_degree_sign() && scan.peek().is_some() {
        let minutes = scan.number()?;
        if !unit::is_minutes(scan.rest()) {
            return Err(scan.fail(Problem::UnknownUnit));
        }
        if minutes.value >= MINUTES_A_DEGREE {
            return Err(scan.fail_at(minutes.start, Problem::TooLarge));
        }
        return Ok(Angle::from_deg(number.value + minutes.value / MINUTES_A_DEGREE));
    } else {
        scan.rest()
    };
    match minutes {
        "" => Ok(Angle::from_deg(number.value)),
        word if unit::is_degrees(word) => Ok(Angle::from_deg(number.value)),
        _ => Err(scan.fail(Problem::UnknownUnit)),
    }
}

/// Reads a frequency: `262`, `262 cpm`, `4.37 Hz`. Without a unit it is cycles a minute.
///
/// # Errors
///
/// [`NotationError`] where the text is not one frequency or carries a sign.
///
/// # Examples
///
/// ```
/// // 4.37 swings a second, sixty times that a minute.
/// assert!((quantity::parse_frequency("4.37 Hz")?.cpm() - 262.2).abs() < 1e-9);
/// # Ok::<(), quantity::NotationError>(())
/// ```
pub fn parse_frequency(text: &str) -> Result<Frequency, NotationError> {
    let mut scan = Scanner::new(text, Notation::Frequency);
    scan.refuse_sign()?;
    let number = scan.number()?;
    match scan.rest() {
        "" => Ok(Frequency::from_cpm(number.value)),
        word => unit::cycles_a_minute(word)
            .map(|factor_cpm| Frequency::from_cpm(number.value * factor_cpm))
            .ok_or_else(|| scan.fail(Problem::UnknownUnit)),
    }
}
