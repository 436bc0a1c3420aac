//! Angle.

use serde::{Deserialize, Serialize};

use crate::{rounding::written, scalar::scalar};

/// An angle. In JSON it is a plain number of degrees: name the field `..._deg`.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Angle(f64);

scalar!(Angle);

impl Angle {
    /// An angle of so many degrees.
    #[must_use]
    pub const fn from_deg(angle_deg: f64) -> Self {
        Self(angle_deg)
    }

    /// In degrees.
    #[must_use]
    pub const fn deg(self) -> f64 {
        self.0
    }

    /// In radians.
    #[must_use]
    pub const fn rad(self) -> f64 {
        self.0.to_radians()
    }

    /// Text in degrees with a fixed number of decimals: `61.5°`.
    #[must_use]
    pub fn print(self, decimals: u8) -> String {
        format!("{}°", crate::decimal(self.0, decimals))
    }
}

impl std::fmt::Display for Angle {
    /// Degrees, with the formatter's precision or as many decimals as are needed: `61.5°`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}°", written(self.0, f.precision()))
    }
}
