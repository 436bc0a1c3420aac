//! The units in which a person reads and types.

use crate::{LengthUnit, MassUnit};
use serde::{Deserialize, Serialize};

/// The units in which a person reads and types.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Units {
    /// Inch or millimetre.
    pub length: LengthUnit,
    /// Gram or ounce.
    pub mass: MassUnit,
}

impl Default for Units {
    /// Inches and grams, as the trade mostly works (common practice, no source).
    fn default() -> Self {
        Self { length: LengthUnit::Inch, mass: MassUnit::Gram }
    }
}

impl Units {
    /// All that there are.
    pub const ALL: [Self; 4] = [
        Self { length: LengthUnit::Inch, mass: MassUnit::Gram },
        Self { length: LengthUnit::Millimetre, mass: MassUnit::Gram },
        Self { length: LengthUnit::Inch, mass: MassUnit::Ounce },
        Self { length: LengthUnit::Millimetre, mass: MassUnit::Ounce },
    ];

    /// Length and mass: `in-g`, `mm-oz`.
    #[must_use]
    pub fn key(self) -> String {
        format!("{}-{}", self.length.symbol(), self.mass.symbol())
    }

    /// From its key; the default for any other text.
    #[must_use]
    pub fn from_key(key: &str) -> Self {
        Self::ALL.into_iter().find(|u| u.key() == key).unwrap_or_default()
    }
}

impl From<Units> for String {
    fn from(units: Units) -> Self {
        units.key()
    }
}

impl TryFrom<String> for Units {
    type Error = String;

    fn try_from(key: String) -> Result<Self, Self::Error> {
        let found = Self::ALL.into_iter().find(|u| u.key() == key);
        found.ok_or_else(|| format!("“{key}” are no units. Choose in-g, mm-g, in-oz or mm-oz"))
    }
}
