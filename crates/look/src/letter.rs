//! How swing weight and signed figures are written in pictures.

/// Moment at A0 in oz·in and moment per point in oz·in: the trade's letter scale (constants from memory; the
/// apparatus is US patent 1,953,916).
const A0_OZ_IN: f64 = 161.0;
const POINT_OZ_IN: f64 = 1.75;

/// Writes points counted from A0 (`D0` is 30) with one decimal: `D8.9`.
///
/// Outside A0 to G9.9 the letters end, so the moment is written instead: `143.5 oz·in`. What is not a number is
/// written as a dash.
#[must_use]
pub fn letter(points: f64) -> String {
    if !points.is_finite() {
        return "–".to_owned();
    }
    let tenths = (points * 10.0).round();
    if !(0.0..700.0).contains(&tenths) {
        return format!("{:.1} oz·in", A0_OZ_IN + POINT_OZ_IN * points).replace('-', "−");
    }
    // In range 0..700, so the cast cannot lose anything.
    let tenths = tenths as u32;
    let name = char::from(b'A' + u8::try_from(tenths / 100).unwrap_or(6));
    format!("{name}{}.{}", tenths / 10 % 10, tenths % 10)
}

/// Like [`letter`], without a closing `.0`: `D0`, `D2.5`.
#[must_use]
pub fn letter_short(points: f64) -> String {
    let text = letter(points);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// A signed figure with a true minus sign: `+0.1`, `−9.0`; zero carries no sign.
#[must_use]
pub fn signed(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let plain = format!("{:.decimals$}", value.abs());
    let zero = plain.chars().all(|c| matches!(c, '0' | '.'));
    match (zero, value < 0.0) {
        (true, _) => plain,
        (false, true) => format!("−{plain}"),
        (false, false) => format!("+{plain}"),
    }
}

/// A mass in the person's unit: `256.1 g`, `9.034 oz`; a dash when it is not a number.
#[must_use]
pub fn grams(mass_g: f64) -> String {
    if mass_g.is_finite() { crate::units::mass(mass_g).replace('-', "−") } else { "–".to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_follow_the_scale() {
        // 213.5 oz·in is D0, 231 is E0: thirty and forty points over A0.
        assert_eq!(letter(30.0), "D0.0");
        assert_eq!(letter(38.9), "D8.9");
        assert_eq!(letter(29.96), "D0.0");
        assert_eq!(letter(29.94), "C9.9");
        assert_eq!(letter(0.0), "A0.0");
        assert_eq!(letter(69.9), "G9.9");
        assert_eq!(letter_short(30.0), "D0");
        assert_eq!(letter_short(32.5), "D2.5");
    }

    #[test]
    fn outside_the_letters_the_moment_is_written() {
        assert_eq!(letter(-10.0), "143.5 oz·in");
        assert_eq!(letter(70.0), "283.5 oz·in");
        assert_eq!(letter(-100.0), "−14.0 oz·in");
        assert_eq!(letter(f64::NAN), "–");
    }

    #[test]
    fn signs_are_true_and_zero_has_none() {
        assert_eq!(signed(0.1, 1), "+0.1");
        assert_eq!(signed(-9.0, 1), "−9.0");
        assert_eq!(signed(-0.04, 1), "0.0");
        assert_eq!(signed(f64::INFINITY, 1), "–");
        assert_eq!(grams(5.0), "5.0 g");
    }
}
