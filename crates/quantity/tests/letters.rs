//! Goal: the letter scale is right at every edge, and never fails outside its letters.

use quantity::{NotationError, Problem, SwingMoment, SwingWeight, parse_swing_weight};
use rstest::rstest;

#[rstest]
#[case(0.0, "A0.0")]
#[case(9.94, "A9.9")]
#[case(9.96, "B0.0")]
#[case(9.95, "B0.0")]
#[case(29.142_857, "C9.1")]
#[case(32.0, "D2.0")]
#[case(69.94, "G9.9")]
#[case(-0.04, "A0.0")]
fn letters_at_their_edges(#[case] points: f64, #[case] text: &str) {
    assert_eq!(SwingWeight::from_points(points).to_string(), text);
}

/// Off the scale the letters count on and the moment is given: 161 + 1.75 × points, by hand.
#[rstest]
#[case(69.96, "G10.0 (283.4 oz in)")]
#[case(72.4, "G12.4 (287.7 oz in)")]
#[case(-3.2, "A-3.2 (155.4 oz in)")]
#[case(-92.0, "A-92.0 (0.0 oz in)")]
#[case(-100.0, "A-100.0 (-14.0 oz in)")]
fn off_the_scale_the_moment_stands_beside(#[case] points: f64, #[case] text: &str) {
    let swing_weight = SwingWeight::from_points(points);
    assert_eq!(swing_weight.to_string(), text);
    let back = SwingWeight::from(parse_swing_weight(text).expect("what is printed can be read"));
    assert!((back.points() - points).abs() < 0.051, "{points} came back as {}", back.points());
}

#[test]
fn more_decimals_move_the_edge() {
    assert_eq!(SwingWeight::from_points(39.96).letter(2), "D9.96");
    assert_eq!(SwingWeight::from_points(39.96).letter(0), "E0");
    assert_eq!(format!("{:.2}", SwingWeight::from_points(32.125)), "D2.13");
    assert_eq!(SwingWeight::from_points(32.04).letter_short(), "D2");
    assert_eq!(SwingWeight::from_points(32.5).letter_short(), "D2.5");
}

#[test]
fn what_is_no_number_has_no_letter() {
    assert_eq!(SwingWeight::from_points(f64::NAN).letter(1), "?");
    assert_eq!(SwingWeight::from_points(f64::NEG_INFINITY).letter(1), "?");
}

#[rstest]
#[case("D3.5", 33.5)]
#[case("d 3.5", 33.5)]
#[case("D3,5", 33.5)]
#[case("e1", 41.0)]
#[case(" C9.1 ", 29.1)]
#[case("D2 1/2", 32.5)]
#[case("d2½", 32.5)]
#[case("D0", 30.0)]
#[case("213.5 oz in", 30.0)]
#[case("213,5 oz·in", 30.0)]
#[case("231 in-oz", 40.0)]
#[case("32 points", 32.0)]
fn swing_weights_as_written(#[case] text: &str, #[case] points: f64) {
    let got = parse_swing_weight(text).unwrap_or_else(|error| panic!("{error}")).points();
    assert!((got - points).abs() < 1e-12, "{text}: {got}");
}

/// 213.5 oz·in × 28.349523125 g/oz = 6052.62 g·in; × 2.54 = 15373.7 g·cm, by hand.
#[rstest]
#[case("6052.623 g in", 213.5)]
#[case("15373.663 g·cm", 213.5)]
fn moments_in_grams(#[case] text: &str, #[case] moment_oz_in: f64) {
    let got = parse_swing_weight(text).unwrap_or_else(|error| panic!("{error}")).oz_in();
    assert!((got - moment_oz_in).abs() < 1e-4, "{text}: {got}");
}

#[rstest]
#[case("", Problem::Empty, 1)]
#[case("D", Problem::NumberExpected, 2)]
#[case("D10", Problem::BeyondLetter, 1)]
#[case("D-1", Problem::BeyondLetter, 1)]
#[case("G-1", Problem::BeyondLetter, 1)]
#[case("H2", Problem::UnknownLetter, 1)]
#[case("D3x", Problem::Unexpected, 3)]
#[case("32", Problem::MissingUnit, 1)]
#[case("213.5 oz", Problem::UnknownUnit, 7)]
#[case("8 g", Problem::UnknownUnit, 3)]
#[case("G12.4 (100 oz in)", Problem::Disagree, 8)]
#[case("D2.0 (214.7 feet)", Problem::UnknownUnit, 13)]
fn what_is_swing_weight_free_is_refused(#[case] text: &str, #[case] problem: Problem, #[case] at_character: usize) {
    let error: NotationError = parse_swing_weight(text).expect_err(text);
    assert_eq!((error.problem, error.at_character()), (problem, at_character), "{error}");
}

#[test]
fn the_moment_and_the_letter_are_one_scale() {
    let moment = SwingMoment::from_oz_in(212.0);
    assert_eq!(SwingWeight::from(moment).moment(), moment);
}
