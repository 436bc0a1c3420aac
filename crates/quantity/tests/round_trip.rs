//! Goal: what is printed is read back as the same figure. Method: random figures of the size a workshop meets, printed
//! in every way the types can print, read, and compared; and random text, which must never panic.

use proptest::prelude::*;
use quantity::{
    Angle, Frequency, Length, LengthUnit, Mass, MassUnit, SwingMoment, SwingWeight, parse_angle, parse_angle_offset,
    parse_frequency, parse_length, parse_length_offset, parse_mass, parse_mass_offset, parse_swing_weight,
    parse_swing_weight_offset,
};

fn length_unit() -> impl Strategy<Value = LengthUnit> {
    prop_oneof![
        Just(LengthUnit::Inch),
        Just(LengthUnit::Millimetre),
        Just(LengthUnit::Centimetre),
        Just(LengthUnit::Metre)
    ]
}

fn mass_unit() -> impl Strategy<Value = MassUnit> {
    prop_oneof![
        Just(MassUnit::Gram),
        Just(MassUnit::Kilogram),
        Just(MassUnit::Ounce),
        Just(MassUnit::Pound),
        Just(MassUnit::Grain)
    ]
}

proptest! {
    /// Thirty-seconds go through millimetres and come back bit for bit.
    #[test]
    fn fractions_of_an_inch(parts in 0u32..3200) {
        let length = Length::from_inch(f64::from(parts) / 32.0);
        let text = length.print_inches();
        prop_assert!(!text.contains('.'), "{}", text);
        prop_assert_eq!(parse_length(&text, LengthUnit::Millimetre).unwrap(), length);
    }

    #[test]
    fn signed_fractions_of_an_inch(parts in -320i32..320) {
        let offset = Length::from_inch(f64::from(parts) / 32.0);
        prop_assert_eq!(parse_length_offset(&offset.print_inches_signed(), LengthUnit::Millimetre).unwrap(), offset);
    }

    /// Any length: as near as the nine decimals of an inch that are printed, and the text repeats itself.
    #[test]
    fn any_length_in_inches(length_mm in 0.0f64..2000.0) {
        let text = Length::from_mm(length_mm).print_inches();
        let back = parse_length(&text, LengthUnit::Millimetre).unwrap();
        prop_assert!((back.mm() - length_mm).abs() < 3e-8, "{} from {}", back, length_mm);
        prop_assert_eq!(back.print_inches(), text);
    }

    /// A figure with the decimals it is printed with is the same figure after reading, in every unit.
    #[test]
    fn lengths_with_decimals(steps in 0u32..2_000_000, decimals in 0u8..5, unit in length_unit()) {
        let length = Length::from_unit(f64::from(steps) / 10f64.powi(i32::from(decimals)), unit);
        let text = length.print(unit, decimals);
        prop_assert_eq!(parse_length(&text, LengthUnit::Inch).unwrap(), length);
    }

    #[test]
    fn masses_with_decimals(steps in 0u32..2_000_000, decimals in 0u8..5, unit in mass_unit()) {
        let mass = Mass::from_unit(f64::from(steps) / 10f64.powi(i32::from(decimals)), unit);
        prop_assert_eq!(parse_mass(&mass.print(unit, decimals), MassUnit::Ounce).unwrap(), mass);
    }

    #[test]
    fn display_of_millimetres_grams_degrees_and_cpm(steps in 0u32..100_000_000) {
        let value = f64::from(steps) / 1e4;
        prop_assert_eq!(parse_length(&Length::from_mm(value).to_string(), LengthUnit::Inch).unwrap(), Length::from_mm(value));
        prop_assert_eq!(parse_mass(&Mass::from_g(value).to_string(), MassUnit::Ounce).unwrap(), Mass::from_g(value));
        prop_assert_eq!(parse_angle(&Angle::from_deg(value).to_string()).unwrap(), Angle::from_deg(value));
        prop_assert_eq!(parse_frequency(&Frequency::from_cpm(value).to_string()).unwrap(), Frequency::from_cpm(value));
        prop_assert_eq!(parse_swing_weight(&SwingMoment::from_oz_in(value).to_string()).unwrap(), SwingMoment::from_oz_in(value));
    }

    /// Tenths of a point over the whole scale and far beyond both its ends.
    #[test]
    fn letters(tenths in -2000i32..2000) {
        let text = SwingWeight::from_points(f64::from(tenths) / 10.0).to_string();
        let back = SwingWeight::from(parse_swing_weight(&text).unwrap());
        prop_assert!((back.points() - f64::from(tenths) / 10.0).abs() < 1e-9, "{} gave {}", text, back.points());
        prop_assert_eq!(back.to_string(), text);
    }

    /// The letter never lies about the number: it is always within half of the last place printed.
    #[test]
    fn letters_of_any_points(points in 0.0f64..69.94, decimals in 0u8..4) {
        let text = SwingWeight::from_points(points).letter(decimals);
        let back = SwingWeight::from(parse_swing_weight(&text).unwrap()).points();
        prop_assert!((back - points).abs() <= 0.5 * 10f64.powi(-i32::from(decimals)) + 1e-9, "{} for {}", text, points);
    }

    /// No text makes a reader panic; positions of errors lie inside the text.
    #[test]
    fn any_text(text in "[-+−0-9a-gA-G .,/½¾\"″'°()ozmincupfltr\u{a0}]{0,14}") {
        let errors = [
            parse_length(&text, LengthUnit::Inch).err(),
            parse_length_offset(&text, LengthUnit::Millimetre).err(),
            parse_mass(&text, MassUnit::Gram).err(),
            parse_mass_offset(&text, MassUnit::Gram).err(),
            parse_swing_weight(&text).err(),
            parse_swing_weight_offset(&text).err(),
            parse_angle(&text).err(),
            parse_angle_offset(&text).err(),
            parse_frequency(&text).err(),
        ];
        for error in errors.into_iter().flatten() {
            prop_assert!(error.at_byte <= text.len() && text.is_char_boundary(error.at_byte), "{:?}", error);
            prop_assert!(error.to_string().starts_with("notation.unreadable"));
        }
    }

    #[test]
    fn truly_any_text(text in "\\PC{0,10}") {
        let _ = parse_swing_weight(&text);
        let _ = parse_angle_offset(&text);
        if let Ok(length) = parse_length(&text, LengthUnit::Inch) {
            prop_assert!(length.is_finite() && length.mm() >= 0.0);
        }
    }
}
