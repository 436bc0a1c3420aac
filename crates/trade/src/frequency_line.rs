//! The frequency line of the raw shafts of a blank, and how a shaft lies against it; the planner computes both.

use fact::Told;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Where the raw shafts of one blank lie.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct FrequencyLine {
    /// Code of the shaft model.
    pub shaft_model: String,
    /// Number of the blank, for a taper tip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many of this blank in stock have a frequency.
    pub measured: u32,
    /// Where they lie; none where too few are measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub line_cpm: Option<f64>,
    /// The same as a fact, with why there is no line.
    #[serde(flatten)]
    pub fact: Told,
}

/// How a club's shaft lies against its line.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ShaftFrequency {
    /// Frequency of the raw shaft as received; none where it was not measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cpm: Option<f64>,
    /// Where raw shafts of its blank lie.
    pub line_cpm: f64,
    /// How many of them were measured.
    pub measured: u32,
    /// How much stiffer the club comes out than on the line; negative where softer, none where the shaft was not
    /// measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub off_cpm: Option<f64>,
    /// How far off the line the measured ones of its blank put this club: the root of their mean square.
    pub usual_cpm: f64,
}

fact::facts! {
    /// What is known of the raw shafts of a blank.
    pub enum BlankLine: "planner_line" {
        /// Where they lie.
        Line {
            /// Name of the shaft model.
            shaft: String,
            /// Number of the blank, for a taper tip.
            number: Option<String>,
            /// Where they lie.
            line_cpm: f64,
            /// How many were measured.
            measured: u32,
        },
        /// Too few are measured for a line.
        TooFew {
            /// Name of the shaft model.
            shaft: String,
            /// Number of the blank, for a taper tip.
            number: Option<String>,
            /// How many were measured.
            measured: u32,
            /// How many make a line.
            needed: usize,
        },
    }
}

fact::facts! {
    /// How a shaft lies against its line.
    pub enum ShaftOnLine: "planner_shaft" {
        /// It was not measured.
        NotMeasured {
            /// How far off the line the measured ones of its blank put the club.
            usual_cpm: f64,
        },
        /// It is on its line.
        OnLine {
            /// Frequency at which raw shafts of its blank lie, cycles per minute.
            line_cpm: f64,
        },
        /// It is stiffer than its line.
        Stiffer {
            /// By how much as received.
            by_cpm: f64,
            /// Frequency at which raw shafts of its blank lie, cycles per minute.
            line_cpm: f64,
            /// By how much in the club, where that is another figure.
            in_club_cpm: Option<f64>,
        },
        /// It is softer than its line.
        Softer {
            /// By how much as received.
            by_cpm: f64,
            /// Frequency at which raw shafts of its blank lie, cycles per minute.
            line_cpm: f64,
            /// By how much in the club, where that is another figure.
            in_club_cpm: Option<f64>,
        },
    }
}

/// Frequencies closer than this show alike, cpm.
const ALIKE_CPM: f64 = 0.05;

impl ShaftFrequency {
    /// The same as a fact.
    #[must_use]
    pub fn fact(&self) -> ShaftOnLine {
        let line_cpm = self.line_cpm;
        let (Some(cpm), Some(off_cpm)) = (self.cpm, self.off_cpm) else {
            return ShaftOnLine::NotMeasured { usual_cpm: self.usual_cpm };
        };
        let raw_cpm = cpm - line_cpm;
        let by_cpm = raw_cpm.abs();
        let in_club_cpm = ((off_cpm - raw_cpm).abs() >= ALIKE_CPM).then_some(off_cpm.abs());
        if by_cpm < ALIKE_CPM {
            ShaftOnLine::OnLine { line_cpm }
        } else if raw_cpm > 0.0 {
            ShaftOnLine::Stiffer { by_cpm, line_cpm, in_club_cpm }
        } else {
            ShaftOnLine::Softer { by_cpm, line_cpm, in_club_cpm }
        }
    }
}
