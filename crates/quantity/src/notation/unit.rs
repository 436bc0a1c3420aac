//! Words for units, as people write them.

use crate::{LengthUnit, MassUnit, SwingMoment};

/// Lower case, without a full stop at the end.
fn plain(word: &str) -> String {
    word.trim_end_matches('.').trim_end().to_lowercase()
}

/// A unit of length.
pub(super) fn length(word: &str) -> Option<LengthUnit> {
    Some(match plain(word).as_str() {
        "in" | "inch" | "inches" | "\"" | "″" | "”" | "“" | "''" | "′′" | "’’" => LengthUnit::Inch,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => LengthUnit::Millimetre,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => LengthUnit::Centimetre,
        "m" | "metre" | "metres" | "meter" | "meters" => LengthUnit::Metre,
        _ => return None,
    })
}

/// A unit of mass.
pub(super) fn mass(word: &str) -> Option<MassUnit> {
    Some(match plain(word).as_str() {
        "g" | "gm" | "gram" | "grams" | "gramme" | "grammes" => MassUnit::Gram,
        "kg" | "kilogram" | "kilograms" => MassUnit::Kilogram,
        "oz" | "ounce" | "ounces" => MassUnit::Ounce,
        "lb" | "lbs" | "pound" | "pounds" => MassUnit::Pound,
        "grain" | "grains" => MassUnit::Grain,
        _ => return None,
    })
}

/// "gr" is the symbol of the grain and the habit of many for gram.
pub(super) fn is_ambiguous_mass(word: &str) -> bool {
    matches!(plain(word).as_str(), "gr" | "grs")
}

/// A word for points of swing weight.
pub(super) fn is_points(word: &str) -> bool {
    matches!(plain(word).as_str(), "pt" | "pts" | "point" | "points")
}

/// Ounce inches in a unit of moment.
pub(super) fn moment_oz_in(word: &str) -> Option<f64> {
    let joined: String = word
        .to_lowercase()
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, '.' | '·' | '⋅' | '*' | '×' | '-'))
        .collect();
    Some(match joined.as_str() {
        "ozin" | "inoz" | "ounceinch" | "ounceinches" | "inchounce" | "inchounces" => 1.0,
        "gin" | "ing" | "graminch" | "graminches" | "inchgram" | "inchgrams" => SwingMoment::from_g_in(1.0).oz_in(),
        "gcm" | "cmg" => SwingMoment::from_g_cm(1.0).oz_in(),
        "kgcm" => SwingMoment::from_g_cm(1000.0).oz_in(),
        _ => return None,
    })
}

/// A word for degrees.
pub(super) fn is_degrees(word: &str) -> bool {
    matches!(plain(word).as_str(), "°" | "º" | "deg" | "degs" | "degree" | "degrees")
}

/// A mark for minutes of arc.
pub(super) fn is_minutes(word: &str) -> bool {
    matches!(plain(word).as_str(), "'" | "′" | "’" | "min" | "minutes")
}

/// Cycles a minute in a unit of frequency.
pub(super) fn cycles_a_minute(word: &str) -> Option<f64> {
    Some(match plain(word).as_str() {
        "cpm" | "c/min" | "/min" | "cycles a minute" | "cycles per minute" | "cycles/min" => 1.0,
        "hz" | "hertz" => 60.0,
        _ => return None,
    })
}
