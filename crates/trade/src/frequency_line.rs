//! The frequency line of the raw shafts of a blank, and how a shaft lies against it; the planner computes both.

use quantity::decimal;
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
    /// The same in a sentence, with why there is no line.
    pub words: String,
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

impl ShaftFrequency {
    /// In a sentence.
    #[must_use]
    pub fn words(&self) -> String {
        let line = decimal(self.line_cpm, 1);
        let (Some(cpm), Some(off_cpm)) = (self.cpm, self.off_cpm) else {
            let usual = decimal(self.usual_cpm, 1);
            return format!("Its shaft has no frequency; others of its blank are some {usual} cpm off their line.");
        };
        let raw_cpm = cpm - self.line_cpm;
        if raw_cpm.abs() < 0.05 {
            return format!("Its shaft is on its frequency line, {line} cpm.");
        }
        let how = if raw_cpm > 0.0 { "stiffer" } else { "softer" };
        let club = if (off_cpm - raw_cpm).abs() < 0.05 {
            String::new()
        } else {
            format!(", {} cpm in the club", decimal(off_cpm.abs(), 1))
        };
        format!("Its shaft is {} cpm {how} than its line, {line} cpm{club}.", decimal(raw_cpm.abs(), 1))
    }
}
