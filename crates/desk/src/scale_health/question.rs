//! Entries of a check that look like a slip: asked about before they are kept, and kept all the same when the builder
//! says that they are right.

use quantity::MassUnit;
use serde::{Deserialize, Serialize};
use trade::gauge::{Gauge, Measures, Standard, print_error, print_value};
use utoipa::ToSchema;

/// How near to the suspected figure an entry must lie: a share of it, or the tolerance of the check if that is more.
const ALIKE: f64 = 0.02;
/// An entry this many tolerances off is asked about even where nothing explains it.
const FAR: f64 = 10.0;

/// What a doubtful entry may be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
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
        /// Its name.
        name: String,
    },
    /// Far off, and nothing explains it.
    FarOff,
}

/// An entry that is asked about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Doubtful {
    /// What it looks like.
    pub looks_like: LooksLike,
    /// What is odd, in a sentence.
    pub words: String,
    /// What to do, in a sentence.
    pub next: String,
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
    let shown = print_value(gauge, value);
    let wanted = print_value(gauge, standard.value);
    if let Some(typed_in) = other_unit(gauge.measures, standard.value, tolerance, typed, value) {
        return Some(Doubtful {
            words: format!("{shown} is far from the {wanted} of {}, but {typed_in} would be right", standard.name),
            next: format!("Was it {typed_in}? Say so, or keep {shown} as it is."),
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
            words: format!("{shown} is what {} should show, not {} ({wanted})", other.name, standard.name),
            next: format!("Was {} on it? Say so, or keep {shown} as it is.", other.name),
            looks_like: LooksLike::OtherStandard { standard: other.key.clone(), name: other.name.clone() },
        });
    }
    (error.abs() > FAR * tolerance).then(|| Doubtful {
        words: format!("{shown} is {} away from the {wanted} of {}", print_error(gauge, error), standard.name),
        next: format!("Look at what is on it and read again, or keep {shown} as it is."),
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
        Measures::Length => &[("in", quantity::INCH_MM), ("cm", 10.0), ("mm", 1.0 / quantity::INCH_MM)],
        Measures::SwingWeight | Measures::Frequency | Measures::Angle => &[],
    };
    units.iter().find(|(_, factor)| alike(*factor)).map(|(unit, _)| format!("{figure} {unit}"))
}
