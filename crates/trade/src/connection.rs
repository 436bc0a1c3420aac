//! How a scale is connected and what its lines look like, as the shop sets it once.

use crate::error::TradeError;
use crate::kind::closed_list;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What a connected scale shows.
    Shows {
        /// Mass.
        Mass = "mass";
        /// Swing weight of a club.
        SwingWeight = "swing_weight" was "balance";
    }
}

closed_list! {
    /// What a mark in a line says.
    MarkMeans {
        /// A line with the mark is settled, one without is not.
        Settled = "settled";
        /// A line with the mark is not settled, one without is.
        Moving = "moving";
    }
}

closed_list! {
    /// Parity bit of a serial line.
    Parity {
        /// None.
        None = "none";
        /// Even.
        Even = "even";
        /// Odd.
        Odd = "odd";
    }
}

/// The mark by which a scale says whether its value has settled.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SettledMark {
    /// The text of the mark, for example `S` or `?`.
    pub text: String,
    /// What it says.
    pub means: MarkMeans,
}

/// What a scale's lines look like. A line that does not fit is refused, never guessed at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LineFormat {
    /// The mark of a settled value; left out: a value counts as settled when it has not changed for a moment.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub settled: Option<SettledMark>,
    /// Unit of lines that carry none: g, kg, oz, lb, gr for a mass; `oz in` or points (`D2.5`) for a swing weight. Left out:
    /// a line without a unit is refused.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// Texts that say overload or underload.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub overload: Vec<String>,
    /// Texts of a good line to ignore, for example `GS` or `N`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ignore: Vec<String>,
    /// Lines that begin with one of these are skipped: headings, dates, serial numbers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub skip: Vec<String>,
}

impl Default for LineFormat {
    fn default() -> Self {
        Self { settled: None, unit: Some("g".into()), overload: Vec::new(), ignore: Vec::new(), skip: Vec::new() }
    }
}

/// A scale on a serial line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Connection {
    /// Short key of its own, for example `parts-scale`.
    #[schema(min_length = 1)]
    pub key: String,
    /// What people call it.
    #[schema(min_length = 1)]
    pub name: String,
    /// Whether its figures are masses or swing weights.
    pub shows: Shows,
    /// The port, for example `/dev/ttyUSB0` or `COM3`.
    #[schema(min_length = 1)]
    pub port: String,
    /// Speed, bits a second.
    #[serde(default = "usual_baud")]
    #[schema(minimum = 300, maximum = 1000000)]
    pub baud: u32,
    /// Data bits: 7 or 8.
    #[serde(default = "usual_bits")]
    #[schema(minimum = 7, maximum = 8)]
    pub data_bits: u8,
    /// Parity bit of a character, as the scale is set.
    #[serde(default = "usual_parity")]
    pub parity: Parity,
    /// Stop bits: 1 or 2.
    #[serde(default = "usual_stop_bits")]
    #[schema(minimum = 1, maximum = 2)]
    pub stop_bits: u8,
    /// What is sent once a second to a scale that only answers when it is asked; `\r` and `\n` are the end of a line.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub ask: String,
    /// What its lines look like.
    #[serde(default)]
    pub format: LineFormat,
}

fn usual_baud() -> u32 {
    9600
}

fn usual_bits() -> u8 {
    8
}

fn usual_parity() -> Parity {
    Parity::None
}

fn usual_stop_bits() -> u8 {
    1
}

impl Connection {
    /// Refuses a connection that could not work.
    ///
    /// # Errors
    /// An empty key or port, a speed or frame that no serial line has, a mark that is empty.
    pub fn check(&self) -> Result<(), TradeError> {
        let refused = |fault: ConnectionFault| Err(TradeError::refused(fault));
        let name = || self.name.clone();
        if self.key.is_empty() || self.name.is_empty() || self.port.is_empty() {
            return refused(ConnectionFault::Unnamed);
        }
        if !(300..=1_000_000).contains(&self.baud) {
            return refused(ConnectionFault::Speed { name: name(), baud: self.baud });
        }
        if !matches!(self.data_bits, 7 | 8) || !matches!(self.stop_bits, 1 | 2) {
            let (data_bits, stop_bits) = (self.data_bits, self.stop_bits);
            return refused(ConnectionFault::Frame { name: name(), data_bits, stop_bits });
        }
        let texts = self.format.settled.iter().map(|m| &m.text).chain(&self.format.overload).chain(&self.format.ignore);
        if texts.chain(&self.format.skip).any(|t| t.trim().is_empty()) {
            return refused(ConnectionFault::EmptyMark { name: name() });
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of the connection of a scale.
    pub(crate) enum ConnectionFault: "connection_fault" {
        Unnamed,
        Speed { name: String, baud: u32 },
        Frame { name: String, data_bits: u8, stop_bits: u8 },
        EmptyMark { name: String },
    }
}
