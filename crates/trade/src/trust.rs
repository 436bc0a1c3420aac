//! Whether a scale is trusted, and what speaks against it.

use crate::gauge::{GaugeFigure, Way};
use crate::id::EventId;
use crate::kind::closed_list;
use estimation::chart::Pattern;
use fact::{Told, facts};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What speaks against a scale.
    TrustCause {
        /// A check lies outside its tolerance.
        Tolerance = "tolerance";
        /// A check lies farther out than the scale's own scatter explains.
        Beyond = "beyond";
        /// Two of three.
        TwoOfThree = "two_of_three";
        /// Four of five.
        FourOfFive = "four_of_five";
        /// Eight in a row.
        EightOnOneSide = "eight_on_one_side";
        /// Its calibration is overdue.
        Overdue = "overdue";
        /// Somebody said so.
        Word = "word";
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

facts! {
    /// What a check or the calendar says against a scale.
    pub enum TrustFinding: "trust_finding" {
        /// A check showed too much.
        TooMuch {
            /// What the scale showed.
            reading: GaugeFigure,
            /// Name of what was on it.
            standard: String,
            /// How much too much.
            by: GaugeFigure,
            /// How much is allowed.
            allowed: GaugeFigure,
        },
        /// A check showed too little.
        TooLittle {
            /// What the scale showed.
            reading: GaugeFigure,
            /// Name of what was on it.
            standard: String,
            /// How much too little.
            by: GaugeFigure,
            /// How much is allowed.
            allowed: GaugeFigure,
        },
        /// The last checks make a pattern that chance does not explain.
        Pattern {
            /// Name of what was on it.
            standard: String,
            /// Which pattern.
            cause: TrustCause,
        },
        /// Its calibration is overdue.
        Overdue {
            /// When it was due.
            due_on: Date,
        },
        /// The check that took its trust away was taken back.
        CheckTakenBack {
            /// Why, in the words of whoever took it back.
            reason: Told,
        },
        /// A check weight was read once more in place of an earlier reading.
        ReadAgain,
    }
}

facts! {
    /// Since when, as one says it on a day.
    pub enum Since: "since" {
        /// This day.
        Today,
        /// The day before.
        Yesterday,
        /// A day of the last week.
        Weekday {
            /// Which: Monday is 1.
            weekday: i32,
        },
        /// An earlier day.
        Day {
            /// Date of that day.
            day_on: Date,
        },
    }
}

impl Since {
    /// A day as it is told on another.
    #[must_use]
    pub fn of(day: Date, today: Date) -> Self {
        match (today - day).get_days() {
            0 => Self::Today,
            1 => Self::Yesterday,
            2..=6 => Self::Weekday { weekday: i32::from(day.weekday().to_monday_one_offset()) },
            _ => Self::Day { day_on: day },
        }
    }
}

facts! {
    /// What is said of a scale that is not trusted, with what to do.
    pub enum TrustSaid: "trust" {
        /// It passed its last check since.
        Passed {
            /// Name of the scale.
            scale: String,
            /// Since when it is not trusted.
            since: Since,
        },
        /// It is off by a known amount.
        Off {
            /// Name of the scale.
            scale: String,
            /// How much.
            off_by: GaugeFigure,
            /// Which way.
            way: Way,
            /// Since when.
            since: Since,
        },
        /// Only its calibration is overdue.
        Overdue {
            /// Name of the scale.
            scale: String,
            /// When it was due.
            due_on: Date,
        },
        /// Something else is wrong with it.
        NotTrusted {
            /// Name of the scale.
            scale: String,
            /// Why it is not trusted: what a check showed, or what somebody said.
            reason: Told,
            /// Since when.
            since: Since,
        },
    }
}

/// One thing that speaks against a scale now.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Reason {
    /// What shows that the scale is off.
    pub cause: TrustCause,
    /// What was found, or what somebody said of it.
    #[serde(flatten)]
    pub finding: Told,
}

/// Whether a scale is trusted today.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
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
    /// What is said of it, with what to do; none for a trusted scale.
    #[serde(flatten)]
    #[schema(schema_with = fact::schema_where_any)]
    pub said: Option<TrustSaid>,
    /// The latest check since then, where it was passed: the scale can be trusted again on it, with a reason.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub passed: Option<EventId>,
    /// By how much more its readings are uncertain than it states itself: one standard deviation, in its unit. 0 for a
    /// trusted scale.
    pub extra_sd: f64,
}
