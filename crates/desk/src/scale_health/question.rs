//! Entries of a check that look like a slip: asked about before they are kept, and kept all the same when the builder
//! says that they are right.

use fact::facts;
use quantity::MassUnit;
use serde::Serialize;
use trade::gauge::{Gauge, GaugeFigure, Measures, Standard};
use utoipa::ToSchema;

/// How near to the suspected figure an entry must lie: a share of it, or the tolerance of the check if that is more.
const ALIKE: f64 = 0.02;
/// An entry this many tolerances off is asked about even where nothing explains it.
const FAR: f64 = 10.0;

/// What a doubtful entry may be.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LooksLike {
    /// Read in another unit than it was taken in.
    OtherUnit {
        /// The entry with its unit, as it could have been typed.
        typed: String,
    },
    /// Another check weight of the shop.
    OtherStandard {
        /// Its key.
        standard: String,
        /// What people call that weight.
        name: String,
    },
    /// Far off, and nothing explains it.
    FarOff,
}

facts! {
    /// What is odd about an entry.
    pub enum Question: "check_question" {
        /// It would be right in another unit.
        OtherUnit {
            /// What was entered.
            shown: GaugeFigure,
            /// What was to be shown.
            wanted: GaugeFigure,
            /// Name of what was on the scale.
            standard: String,
            /// The entry with the unit in which it would be right.
            typed: String,
        },
        /// It is what another weight of the shop should show.
        OtherStandard {
            /// What was entered.
            shown: GaugeFigure,
            /// What was to be shown.
            wanted: GaugeFigure,
            /// Name of what was on the scale.
            standard: String,
            /// Name of the other.
            other: String,
        },
        /// Far off, and nothing explains it.
        FarOff {
            /// What was entered.
            shown: GaugeFigure,
            /// What was to be shown.
            wanted: GaugeFigure,
            /// Name of what was on the scale.
            standard: String,
            /// How far apart they are.
            by: GaugeFigure,
        },
    }
}

facts! {
    /// What to do about an odd entry.
    pub enum QuestionNext: "check_question_next" {
        /// Say that it was the other unit, or keep it.
        OtherUnit {
            /// What was entered.
            shown: GaugeFigure,
            /// The entry with the unit in which it would be right.
            typed: String,
        },
        /// Say that it was the other weight, or keep it.
        OtherStandard {
            /// What was entered.
            shown: GaugeFigure,
            /// Name of the other.
            other: String,
        },
        /// Read it again, or keep it.
        FarOff {
            /// What was entered.
            shown: GaugeFigure,
        },
    }
}

/// An entry that is asked about.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Doubtful {
    /// The likeliest slip behind the entry.
    pub looks_like: LooksLike,
    /// What is odd.
    #[serde(flatten)]
    pub said: Question,
    /// What to do.
    pub next: QuestionNext,
}

/// Whether an entry looks like a slip: a unit mixed up, another weight of the shop, or far off.
///
/// `value` is the entry in the gauge's unit, `typed` as it was typed, `others` every standard of the shop.
#[must_use]
pub fn question(gauge: &Gauge, standard: &Standard, others: &[Standard], typed: &str, value: f64) -> Option<Doubtful> {
    let tolerance = standard.tolerance_on(gauge);
    let error = value - standard.value;
    if error.abs() <= tolerance {
        return None;
    }
    let (shown, wanted, standard_name) = (gauge.reading(value), gauge.reading(standard.value), standard.name.clone());
    if let Some(typed_in) = other_unit(gauge.measures, standard.value, tolerance, typed, value) {
        return Some(Doubtful {
            next: QuestionNext::OtherUnit { shown: shown.clone(), typed: typed_in.clone() },
            said: Question::OtherUnit { shown, wanted, standard: standard_name, typed: typed_in.clone() },
            looks_like: LooksLike::OtherUnit { typed: typed_in },
        });
    }
    let near = |other: &&Standard| {
        other.scale == gauge.key
            && other.key != standard.key
            && (value - other.value).abs() <= other.tolerance_on(gauge)
    };
    if let Some(other) = others.iter().find(near) {
        return Some(Doubtful {
            next: QuestionNext::OtherStandard { shown: shown.clone(), other: other.name.clone() },
            said: Question::OtherStandard { shown, wanted, standard: standard_name, other: other.name.clone() },
            looks_like: LooksLike::OtherStandard { standard: other.key.clone(), name: other.name.clone() },
        });
    }
    (error.abs() > FAR * tolerance).then(|| Doubtful {
        next: QuestionNext::FarOff { shown: shown.clone() },
        said: Question::FarOff { shown, wanted, standard: standard_name, by: gauge.amount(error) },
        looks_like: LooksLike::FarOff,
    })
}

/// The entry with the unit in which it would be right, where there is one.
fn other_unit(measures: Measures, certified: f64, tolerance: f64, typed: &str, value: f64) -> Option<String> {
    // The figure alone, as it was typed, so that "7.05" becomes "7.05 oz".
    let figure: String = typed.trim().chars().take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ',')).collect();
    if figure.is_empty() {
        return None;
    }
    let alike = |factor: f64| (value * factor - certified).abs() <= (ALIKE * certified.abs()).max(tolerance);
    let units: &[(&str, f64)] = match measures {
        Measures::Mass => &[
            ("oz", MassUnit::Ounce.grams()),
            ("lb", MassUnit::Pound.grams()),
            ("kg", MassUnit::Kilogram.grams()),
            ("grain", MassUnit::Grain.grams()),
            ("g", 1.0 / MassUnit::Ounce.grams()),
        ],
        Measures::Length | Measures::Diameter => {
            &[("in", quantity::INCH_MM), ("cm", 10.0), ("mm", 1.0 / quantity::INCH_MM)]
        }
        Measures::SwingWeight | Measures::Frequency | Measures::Angle => &[],
    };
    units.iter().find(|(_, factor)| alike(*factor)).map(|(unit, _)| format!("{figure} {unit}"))
}
