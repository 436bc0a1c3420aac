//! Goal: the factors between units are the published ones, and the figures a builder can check by hand come out.

use quantity::{
    A0_OZ_IN, Angle, FULCRUM_IN, Frequency, Length, LengthUnit, Mass, MassUnit, POINT_G_IN, POINT_OZ_IN, SwingMoment,
    SwingWeight, decimal, round_to,
};

fn close(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} ± {tolerance}");
}

/// Source: UCUM 2.2. Tolerance: none, the factors are exact by definition and so must be the constructors.
#[test]
fn factors_are_those_of_ucum() {
    assert_eq!(Length::from_inch(1.0).m(), 0.0254);
    assert_eq!(Mass::from_oz(1.0).kg(), 0.028_349_523_125);
    assert_eq!(Mass::from_unit(1.0, MassUnit::Pound).kg(), 0.453_592_37);
    assert_eq!(Mass::from_unit(1.0, MassUnit::Grain).g(), 0.064_798_91);
    assert_eq!(Length::from_unit(1.0, LengthUnit::Centimetre).mm(), 10.0);
    assert_eq!(Frequency::from_hz(1.0).cpm(), 60.0);
    close(Angle::from_deg(180.0).rad(), std::f64::consts::PI, 1e-15);
}

/// From memory: the scale's constants. Derived: 49.612 g·in and 126.01 g·cm a point, rounded as printed here.
#[test]
fn one_point_is_an_eighth_of_an_ounce_at_the_butt() {
    assert_eq!(SwingMoment::of(Mass::from_oz(0.125), Length::from_inch(28.0), Length::from_inch(14.0)).oz_in(), 1.75);
    close(POINT_G_IN, 49.611_665, 1e-6);
    close(SwingMoment::from_point_difference(1.0).g_cm(), 126.01, 0.005);
    assert_eq!((A0_OZ_IN, POINT_OZ_IN, FULCRUM_IN), (161.0, 1.75, 14.0));
    assert_eq!(SwingMoment::from_points(30.0).oz_in(), 213.5);
    assert_eq!(SwingMoment::from_points(40.0).oz_in(), 231.0);
}

/// Derived by hand from the constants: 13.25 oz × 16 in = 212.00 oz·in, (212 − 161)/1.75 = 29.14 points.
#[test]
fn thirteen_and_a_quarter_ounces_at_thirty_inches() {
    let moment = SwingMoment::of(Mass::from_oz(13.25), Length::from_inch(30.0), Length::from_inch(14.0));
    close(moment.oz_in(), 212.0, 1e-12);
    assert_eq!(SwingWeight::from(moment).to_string(), "C9.1");
}

/// Derived by hand: 349.8 g × (824 − 355.6) mm = 163 846.32 g·mm = 227.54 oz·in. Tolerance: half the last digit.
#[test]
fn three_hundred_and_fifty_grams_at_824_mm() {
    let moment = SwingMoment::of(Mass::from_g(349.8), Length::from_mm(824.0), Length::from_inch(14.0));
    close(moment.oz_in(), 227.54, 0.005);
    close(moment.g_cm(), 16_384.632, 1e-8);
    assert_eq!(SwingWeight::from(moment).letter(1), "D8.0");
    assert_eq!(SwingWeight::from(moment).letter_short(), "D8");
}

/// Derived: 0.1 oz × (31.5 − 14) in = 1.75 oz·in exactly; 13 oz × 0.25 in = 3.25 oz·in = 1.857 points.
#[test]
fn small_changes_in_points() {
    let tenth = SwingMoment::of(Mass::from_oz(0.1), Length::from_inch(31.5), Length::from_inch(14.0));
    close(tenth.point_difference(), 1.0, 1e-14);
    let quarter = SwingMoment::of(Mass::from_oz(13.0), Length::from_inch(0.25), Length::ZERO);
    close(quarter.point_difference(), 1.86, 0.005);
}

#[test]
fn sums_of_nothing_are_nothing_and_carry_no_minus() {
    let nothing: Mass = std::iter::empty().sum();
    assert!(nothing.g() == 0.0 && nothing.g().is_sign_positive());
    assert_eq!([2.0, 3.5].map(Mass::from_g).into_iter().sum::<Mass>(), Mass::from_g(5.5));
}

#[test]
fn rounding_is_that_of_the_bench() {
    // Halves that binary cannot hold go up as on paper: 0.35, 1.005 and 2.675 lie a hair below in binary.
    assert_eq!(round_to(0.35, 1), 0.4);
    assert_eq!(round_to(1.005, 2), 1.01);
    assert_eq!(round_to(-2.675, 2), -2.68);
    assert_eq!(round_to(0.349, 1), 0.3);
    assert_eq!(decimal(-0.04, 1), "0.0");
    assert_eq!(decimal(f64::NAN, 1), "NaN");
    assert_eq!(round_to(f64::INFINITY, 3), f64::INFINITY);
    assert_eq!(round_to(1e18, 3), 1e18);
    assert_eq!(round_to(123_456_789.0, 6), 123_456_789.0);
}
