//! Mass.

use serde::{Deserialize, Serialize};

use crate::{rounding::written, scalar::scalar};

/// Grams in an avoirdupois ounce. Source: UCUM 2.2, `oz_av` (exact).
pub const OZ_G: f64 = 28.349_523_125;
/// Grams in an avoirdupois pound. Source: UCUM 2.2, `lb_av` (exact).
pub const POUND_G: f64 = 453.592_37;
/// Grams in a grain. Source: UCUM 2.2, `gr` (exact).
pub const GRAIN_G: f64 = 0.064_798_91;

/// A mass. In JSON it is a plain number of grams: name the field `..._g`.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Mass(f64);

scalar!(Mass);

/// Unit in which a mass is read or written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MassUnit {
    /// Gram.
    Gram,
    /// Kilogram.
    Kilogram,
    /// Avoirdupois ounce.
    Ounce,
    /// Avoirdupois pound.
    Pound,
    /// Grain.
    Grain,
}

impl MassUnit {
    /// Grams in one of this unit.
    #[must_use]
    pub const fn grams(self) -> f64 {
        match self {
            Self::Gram => 1.0,
            Self::Kilogram => 1000.0,
            Self::Ounce => OZ_G,
            Self::Pound => POUND_G,
            Self::Grain => GRAIN_G,
        }
    }

    /// Symbol as printed and as read back.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Kilogram => "kg",
            Self::Ounce => "oz",
            Self::Pound => "lb",
            Self::Grain => "grain",
        }
    }
}

impl Mass {
    /// A mass of so many grams.
    #[must_use]
    pub const fn from_g(mass_g: f64) -> Self {
        Self(mass_g)
    }

    /// A mass of so many kilograms.
    #[must_use]
    pub const fn from_kg(mass_kg: f64) -> Self {
        Self(mass_kg * 1000.0)
    }

    /// A mass of so many avoirdupois ounces.
    #[must_use]
    pub const fn from_oz(mass_oz: f64) -> Self {
        Self(mass_oz * OZ_G)
    }

    /// A mass in a unit chosen at run time.
    #[must_use]
    pub const fn from_unit(value: f64, unit: MassUnit) -> Self {
        Self(value * unit.grams())
    }

    /// In grams.
    #[must_use]
    pub const fn g(self) -> f64 {
        self.0
    }

    /// In kilograms.
    #[must_use]
    pub const fn kg(self) -> f64 {
        self.0 / 1000.0
    }

    /// In avoirdupois ounces.
    #[must_use]
    pub const fn oz(self) -> f64 {
        self.0 / OZ_G
    }

    /// In a unit chosen at run time.
    #[must_use]
    pub const fn in_unit(self, unit: MassUnit) -> f64 {
        self.0 / unit.grams()
    }

    /// Text in a unit, with a fixed number of decimals, as [`parse_mass`](crate::parse_mass) reads it.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::{Mass, MassUnit};
    /// // 200 / 28.349523125 = 7.0548.
    /// assert_eq!(Mass::from_g(200.0).print(MassUnit::Ounce, 2), "7.05 oz");
    /// ```
    #[must_use]
    pub fn print(self, unit: MassUnit, decimals: u8) -> String {
        format!("{} {}", crate::decimal(self.in_unit(unit), decimals), unit.symbol())
    }
}

impl std::fmt::Display for Mass {
    /// Grams, with the formatter's precision or as many decimals as are needed: `8 g`, `{:.1}` gives `8.0 g`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} g", written(self.0, f.precision()))
    }
}
