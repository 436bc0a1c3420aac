//! Length.

use serde::{Deserialize, Serialize};

use crate::{
    rounding::{shortest, written},
    scalar::scalar,
};

/// Millimetres in an inch. Source: UCUM 2.2, `[in_i]` (exact).
pub const INCH_MM: f64 = 25.4;

/// A length, or a difference of two lengths. In JSON it is a plain number of millimetres: name the field `..._mm`.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length(f64);

scalar!(Length);

/// Unit in which a length is read or written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Inch of 25.4 mm.
    Inch,
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Metre.
    Metre,
}

impl LengthUnit {
    /// Millimetres in one of this unit.
    #[must_use]
    pub const fn millimetres(self) -> f64 {
        match self {
            Self::Inch => INCH_MM,
            Self::Millimetre => 1.0,
            Self::Centimetre => 10.0,
            Self::Metre => 1000.0,
        }
    }

    /// Symbol as printed and as read back.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
        }
    }
}

impl Length {
    /// A length of so many millimetres.
    #[must_use]
    pub const fn from_mm(length_mm: f64) -> Self {
        Self(length_mm)
    }

    /// A length of so many metres.
    #[must_use]
    pub const fn from_m(length_m: f64) -> Self {
        Self(length_m * 1000.0)
    }

    /// A length of so many inches.
    #[must_use]
    pub const fn from_inch(length_in: f64) -> Self {
        // In this order a length in binary fractions of an inch is rounded only once: 36 3/4 in is 933.45 mm.
        Self(length_in * 254.0 / 10.0)
    }

    /// A length in a unit chosen at run time.
    #[must_use]
    pub const fn from_unit(value: f64, unit: LengthUnit) -> Self {
        match unit {
            LengthUnit::Inch => Self::from_inch(value),
            _ => Self(value * unit.millimetres()),
        }
    }

    /// In millimetres.
    #[must_use]
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// In centimetres.
    #[must_use]
    pub const fn cm(self) -> f64 {
        self.0 / 10.0
    }

    /// In metres.
    #[must_use]
    pub const fn m(self) -> f64 {
        self.0 / 1000.0
    }

    /// In inches.
    #[must_use]
    pub const fn inch(self) -> f64 {
        self.0 * 10.0 / 254.0
    }

    /// In a unit chosen at run time.
    #[must_use]
    pub const fn in_unit(self, unit: LengthUnit) -> f64 {
        match unit {
            LengthUnit::Inch => self.inch(),
            _ => self.0 / unit.millimetres(),
        }
    }

    /// Text in a unit, with a fixed number of decimals, as [`parse_length`](crate::parse_length) reads it.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::{Length, LengthUnit};
    /// // 940 / 25.4 = 37.0079.
    /// assert_eq!(Length::from_mm(940.0).print(LengthUnit::Inch, 2), "37.01 in");
    /// ```
    #[must_use]
    pub fn print(self, unit: LengthUnit, decimals: u8) -> String {
        format!("{} {}", crate::decimal(self.in_unit(unit), decimals), unit.symbol())
    }

    /// Inches as a builder writes them: a fraction down to 1/32 in where the length is one, else decimals.
    ///
    /// "Is one" means within a billionth of an inch, so a fraction that went through millimetres comes back as itself.
    /// A negative length carries a leading minus, as [`parse_length_offset`](crate::parse_length_offset) reads it.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::Length;
    /// assert_eq!(Length::from_inch(36.75).print_inches(), "36 3/4 in");
    /// assert_eq!(Length::from_mm(940.0).print_inches(), "37.007874016 in");
    /// ```
    #[must_use]
    pub fn print_inches(self) -> String {
        let inch = self.inch();
        match fraction(inch.abs()) {
            Some(text) if inch < 0.0 && text != "0" => format!("-{text} in"),
            Some(text) => format!("{text} in"),
            None => format!("{} in", shortest(inch)),
        }
    }

    /// Inches with their sign written, as an offset stands on a sheet: `+1/2 in`, `-1/4 in`, `0 in`.
    #[must_use]
    pub fn print_inches_signed(self) -> String {
        let text = self.print_inches();
        if text.starts_with('-') || text == "0 in" { text } else { format!("+{text}") }
    }
}

/// Whole number and reduced fraction in thirty-seconds, where the figure is one.
fn fraction(inch: f64) -> Option<String> {
    const PARTS: f64 = 32.0;
    const NEAR_INCH: f64 = 1e-9;
    const LONGEST_INCH: f64 = 1e6;
    if !inch.is_finite() || inch > LONGEST_INCH {
        return None;
    }
    let parts = (inch * PARTS).round();
    if (parts / PARTS - inch).abs() > NEAR_INCH {
        return None;
    }
    let whole = (parts / PARTS).floor();
    let (mut numerator, mut denominator) = ((parts - whole * PARTS) as u32, PARTS as u32);
    while numerator != 0 && numerator.is_multiple_of(2) {
        numerator /= 2;
        denominator /= 2;
    }
    Some(match (whole == 0.0, numerator) {
        (_, 0) => format!("{whole}"),
        (true, _) => format!("{numerator}/{denominator}"),
        (false, _) => format!("{whole} {numerator}/{denominator}"),
    })
}

impl std::fmt::Display for Length {
    /// Millimetres, with the formatter's precision or as many decimals as are needed: `933.45 mm`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} mm", written(self.0, f.precision()))
    }
}
