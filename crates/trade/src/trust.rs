//! Whether a scale is trusted, and what speaks against it.

use crate::id::EventId;
use crate::kind::closed_list;
use estimation::chart::Pattern;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What speaks against a scale.
    TrustCause {
        /// A check lies outside its tolerance.
        Tolerance = "tolerance", "outside its tolerance";
        /// A check lies farther out than the scale's own scatter explains.
        Beyond = "beyond", "farther out than its own scatter explains";
        /// Two of three.
        TwoOfThree = "two_of_three", "two of the last three checks far out on the same side";
        /// Four of five.
        FourOfFive = "four_of_five", "four of the last five checks clearly to the same side";
        /// Eight in a row.
        EightOnOneSide = "eight_on_one_side", "eight checks in a row on the same side of the usual";
        /// Its calibration is overdue.
        Overdue = "overdue", "calibration overdue";
        /// Somebody said so.
        Word = "word", "somebody said so";
    }
}

impl From<Pattern> for TrustCause {
    fn from(pattern: Pattern) -> Self {
        match pattern {
            Pattern::Beyond => Self::Beyond,
            Pattern::TwoOfThree => Self::TwoOfThree,
            Pattern::FourOfFive => Self::FourOfFive,
            Pattern::EightOnOneSide => Self::EightOnOneSide,
        }
    }
}

/// One thing that speaks against a scale now.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Reason {
    /// What.
    pub cause: TrustCause,
    /// In words.
    pub words: String,
}

/// Whether a scale is trusted today.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Trust {
    /// Whether it is.
    pub trusted: bool,
    /// Since when it is not.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub since: Option<Date>,
    /// What it shows too much since then, in its unit; none where no check says so.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_by: Option<f64>,
    /// What speaks against it.
    pub reasons: Vec<Reason>,
    /// In a sentence, with what to do; empty for a trusted scale.
    pub words: String,
    /// The latest check since then, where it was passed: the scale can be trusted again on it, with a reason.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub passed: Option<EventId>,
    /// By how much more its readings are uncertain than it states itself: one standard deviation, in its unit. 0 for a
    /// trusted scale.
    pub extra_sd: f64,
}
