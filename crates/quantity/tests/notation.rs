//! Goal: what a builder writes is read as meant, and what could mean two things is refused with its place and an example.

use quantity::{
    LengthUnit, MassUnit, NotationError, Problem, parse_angle, parse_angle_offset, parse_frequency, parse_length,
    parse_length_offset, parse_mass, parse_mass_offset, parse_swing_weight_offset,
};
use rstest::rstest;

fn near(text: &str, got: Result<f64, NotationError>, want: f64) {
    let got = got.unwrap_or_else(|error| panic!("{text:?}: {error}"));
    // Reading a figure rounds once and scaling by the unit once more: 1e-12 relative is far above both.
    assert!((got - want).abs() <= 1e-12 * want.abs().max(1.0), "{text:?} gave {got}, want {want}");
}

#[rstest]
#[case("36 3/4", 933.45)]
#[case("36-3/4\"", 933.45)]
#[case("36–3/4″", 933.45)]
#[case("36 3/4 in", 933.45)]
#[case("36 3/4 in.", 933.45)]
#[case("36¾", 933.45)]
#[case("36 ¾ inches", 933.45)]
#[case("36-¾", 933.45)]
#[case("36.75", 933.45)]
#[case("36,75", 933.45)]
#[case("36 3⁄4 IN", 933.45)]
#[case("1 1/4\"", 31.75)]
#[case("1/2", 12.7)]
#[case("½\"", 12.7)]
#[case(".5 in", 12.7)]
#[case("2''", 50.8)]
#[case("93.3 cm", 933.0)]
#[case("93,3 cm", 933.0)]
#[case("98 cm", 980.0)]
#[case("940 mm", 940.0)]
#[case("940mm", 940.0)]
#[case("  0.94 m ", 940.0)]
#[case("0,125 in", 3.175)]
#[case("\u{a0}37\u{a0}in", 939.8)]
#[case("0", 0.0)]
fn lengths(#[case] text: &str, #[case] length_mm: f64) {
    near(text, parse_length(text, LengthUnit::Inch).map(quantity::Length::mm), length_mm);
}

#[rstest]
#[case("+1/2", 12.7)]
#[case("-1/4", -6.35)]
#[case("− 1/4 in", -6.35)]
#[case("+½", 12.7)]
#[case("-5 mm", -5.0)]
#[case("1/2 over", 12.7)]
#[case("1/2\" short", -12.7)]
#[case("3/4 in under", -19.05)]
#[case("std", 0.0)]
#[case("0", 0.0)]
fn length_offsets(#[case] text: &str, #[case] length_mm: f64) {
    near(text, parse_length_offset(text, LengthUnit::Inch).map(quantity::Length::mm), length_mm);
}

#[rstest]
#[case("8", 8.0)]
#[case("8 g", 8.0)]
#[case("8g", 8.0)]
#[case("2,5 g", 2.5)]
#[case("1.75oz", 49.611_665_468_75)]
#[case("1,75 oz", 49.611_665_468_75)]
#[case("1/8 oz", 3.543_690_390_625)]
#[case("0.35 kg", 350.0)]
#[case("5 grains", 0.323_994_55)]
fn masses(#[case] text: &str, #[case] mass_g: f64) {
    near(text, parse_mass(text, MassUnit::Gram).map(quantity::Mass::g), mass_g);
}

#[rstest]
#[case("61.5", 61.5)]
#[case("61,5°", 61.5)]
#[case("61 1/2 deg", 61.5)]
#[case("61° 30'", 61.5)]
#[case("61°30′", 61.5)]
fn angles(#[case] text: &str, #[case] angle_deg: f64) {
    near(text, parse_angle(text).map(quantity::Angle::deg), angle_deg);
}

#[rstest]
#[case("2 up", 2.0)]
#[case("1 flat", -1.0)]
#[case("2° upright", 2.0)]
#[case("+2", 2.0)]
#[case("-1.5°", -1.5)]
#[case("Standard", 0.0)]
fn angle_offsets(#[case] text: &str, #[case] angle_deg: f64) {
    near(text, parse_angle_offset(text).map(quantity::Angle::deg), angle_deg);
}

#[rstest]
#[case("262", 262.0)]
#[case("262.4 cpm", 262.4)]
#[case("4.375 Hz", 262.5)]
fn frequencies(#[case] text: &str, #[case] frequency_cpm: f64) {
    near(text, parse_frequency(text).map(quantity::Frequency::cpm), frequency_cpm);
}

#[rstest]
#[case("+2", 2.0)]
#[case("-1/2", -0.5)]
#[case("1 1/2 pts", 1.5)]
#[case("+3.5 oz in", 2.0)]
fn swing_weight_offsets(#[case] text: &str, #[case] points: f64) {
    near(text, parse_swing_weight_offset(text).map(quantity::SwingMoment::point_difference), points);
}

#[rstest]
#[case("", Problem::Empty, 1)]
#[case("   ", Problem::Empty, 1)]
#[case("abc", Problem::NumberExpected, 1)]
#[case("1,234", Problem::DigitGrouping, 1)]
#[case("1,234 mm", Problem::DigitGrouping, 1)]
#[case("1 234 mm", Problem::DigitGrouping, 1)]
#[case("1\u{202f}234", Problem::DigitGrouping, 1)]
#[case("1'234", Problem::DigitGrouping, 1)]
#[case("1_000", Problem::DigitGrouping, 1)]
#[case("1.234.567", Problem::DigitGrouping, 1)]
#[case("1,234.5", Problem::DigitGrouping, 1)]
#[case("1.234,5", Problem::DigitGrouping, 1)]
#[case("36 34", Problem::DigitGrouping, 1)]
#[case("36.5 3/4", Problem::FractionAfterDecimal, 5)]
#[case("36.5½", Problem::FractionAfterDecimal, 5)]
#[case("36 5/4", Problem::BadFraction, 4)]
#[case("36 3/0", Problem::BadFraction, 4)]
#[case("3/0", Problem::BadFraction, 1)]
#[case("36 3/", Problem::NumberExpected, 6)]
#[case("36-38", Problem::Unexpected, 3)]
#[case("1/2/3", Problem::Unexpected, 4)]
#[case("36 kg", Problem::UnknownUnit, 4)]
#[case("36 in x", Problem::UnknownUnit, 4)]
#[case("1e3", Problem::UnknownUnit, 2)]
#[case("+1/2", Problem::SignNotAllowed, 1)]
#[case("-36", Problem::SignNotAllowed, 1)]
#[case("NaN", Problem::NumberExpected, 1)]
#[case("inf", Problem::NumberExpected, 1)]
#[case("12345678901234567", Problem::TooLarge, 1)]
#[case("36.", Problem::UnknownUnit, 3)]
#[case("３６", Problem::NumberExpected, 1)]
fn what_is_no_length_is_refused(#[case] text: &str, #[case] problem: Problem, #[case] at_character: usize) {
    let error = parse_length(text, LengthUnit::Inch).expect_err(text);
    assert_eq!((error.problem, error.at_character()), (problem, at_character), "{error}");
}

#[test]
fn a_bare_fraction_is_not_taken_for_millimetres() {
    let error = parse_length("36 3/4", LengthUnit::Millimetre).expect_err("inches are meant");
    assert_eq!(error.problem, Problem::FractionWithoutUnit);
    assert!(parse_length("36 3/4 in", LengthUnit::Millimetre).is_ok());
    assert!(parse_length("1/2 cm", LengthUnit::Millimetre).is_ok());
}

#[test]
fn a_unit_that_means_two_things_is_refused() {
    assert_eq!(parse_mass("8 gr", MassUnit::Gram).expect_err("gram or grain").problem, Problem::AmbiguousUnit);
}

#[test]
fn a_direction_given_twice_is_refused() {
    assert_eq!(parse_angle_offset("-2 up").expect_err("which?").problem, Problem::TwoSigns);
    assert_eq!(parse_mass_offset("--2 g", MassUnit::Gram).expect_err("which?").problem, Problem::NumberExpected);
}

#[test]
fn minutes_beyond_sixty_are_refused() {
    assert_eq!(parse_angle("61° 75'").expect_err("no such minute").problem, Problem::TooLarge);
}

/// What is wrong and where; the sentence is made of it by `words`, whose tests hold it.
#[test]
fn the_error_says_what_and_where() {
    let error = parse_length("36 3/0 in", LengthUnit::Inch).expect_err("divides by zero");
    assert_eq!((error.problem, error.at_character(), error.found.as_str()), (Problem::BadFraction, 4, "3/0 in"));
    let end = parse_length("36 3/", LengthUnit::Inch).expect_err("no denominator");
    assert_eq!((end.at_character(), end.found.as_str()), (6, ""));
}
