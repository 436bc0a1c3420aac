//! Frequency.

use serde::{Deserialize, Serialize};

use crate::{rounding::written, scalar::scalar};

/// A frequency of vibration. In JSON it is a plain number of cycles a minute: name the field `..._cpm`.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Frequency(f64);

scalar!(Frequency);

impl Frequency {
    /// So many cycles a minute.
    #[must_use]
    pub const fn from_cpm(frequency_cpm: f64) -> Self {
        Self(frequency_cpm)
    }

    /// So many cycles a second.
    #[must_use]
    pub const fn from_hz(frequency_hz: f64) -> Self {
        Self(frequency_hz * 60.0)
    }

    /// In cycles a minute.
    #[must_use]
    pub const fn cpm(self) -> f64 {
        self.0
    }

    /// In cycles a second.
    #[must_use]
    pub const fn hz(self) -> f64 {
        self.0 / 60.0
    }

    /// Text in cycles a minute with a fixed number of decimals: `262.0 cpm`.
    #[must_use]
    pub fn print(self, decimals: u8) -> String {
        format!("{} cpm", crate::decimal(self.0, decimals))
    }
}

impl std::fmt::Display for Frequency {
    /// Cycles a minute, with the formatter's precision or as many decimals as are needed: `262 cpm`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} cpm", written(self.0, f.precision()))
    }
}
