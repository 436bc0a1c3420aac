//! An entry at the bench: what was typed or sent, read in the workshop's notation.

use crate::AppError;
use fact::Told;
use quantity::{LengthUnit, MassUnit};
use serde::Deserialize;
use trade::pendulum::Pendulum;
use trade::reading::{Unit, What, check_value};
use trade::soft_side::SoftSideRead;
use utoipa::ToSchema;

/// One entry at the bench.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// What was read.
    pub what: What,
    /// The entry as typed, in workshop notation: `D8.9`, `36 3/4`, `8.1 oz`.
    #[serde(default)]
    pub typed: String,
    /// The value as a plain number in the unit of `what`, for programs; `typed` may then be left out.
    #[serde(default)]
    pub value: Option<f64>,
    /// Where the club hung while its swing was timed, from the outside of its cap; left out: the shop's own pivot.
    #[serde(default)]
    #[schema(minimum = -200, maximum = 500)]
    pub pivot_mm: Option<f64>,
    /// The club was seated again and read once more: both readings count. Left out, the entry takes the place of the
    /// one before it, as a correction does.
    #[serde(default)]
    pub again: bool,
}

/// The value of an entry in the unit of what was read.
pub(crate) fn value_of(entry: &Entry, pendulum: &Pendulum) -> Result<f64, AppError> {
    if let Some(value) = entry.value {
        return Ok(value);
    }
    let text = entry.typed.as_str();
    // A soft side may be written with how sure it is: `74 ± 4`.
    let text = if entry.what == What::SoftSide { SoftSideRead::apart(text).0 } else { text };
    Ok(match entry.what.unit() {
        Unit::Gram => quantity::parse_mass(text, MassUnit::Gram)?.g(),
        Unit::Points => quantity::parse_swing_weight(text)?.points(),
        Unit::Millimetre => quantity::parse_length(text, LengthUnit::Inch)?.mm(),
        Unit::Degree => quantity::parse_angle(text)?.deg(),
        Unit::Cpm => quantity::parse_frequency(text)?.cpm(),
        Unit::Second => pendulum.timed(text)?.period_s,
        Unit::KgCm2 => plain(entry.what, text)?,
        Unit::None if entry.what.is_look() => yes_or_no(entry.what, text)?,
        Unit::None => 0.0,
    })
}

/// A figure of which people write no unit but the one.
fn plain(what: What, text: &str) -> Result<f64, AppError> {
    let figure = text.trim().trim_end_matches("kg·cm²").trim_end_matches("kgcm2").trim_end().replace(',', ".");
    figure.parse().map_err(|_| AppError::invalid(EntryRefused::NoFigure { what, typed: text.trim().to_owned() }))
}

/// The answer of a look: 1 for yes, 0 for no.
fn yes_or_no(what: What, text: &str) -> Result<f64, AppError> {
    match text.trim().to_lowercase().as_str() {
        "yes" | "y" | "ja" | "j" | "1" => Ok(1.0),
        "no" | "n" | "nein" | "0" => Ok(0.0),
        _ => Err(AppError::invalid(EntryRefused::YesOrNo { what, typed: text.trim().to_owned() })),
    }
}

/// Two values of one quantity at once cannot both be meant.
pub(crate) fn need_once(entries: &[Entry]) -> Result<(), AppError> {
    let twice = entries.iter().enumerate().find(|(i, e)| entries[..*i].iter().any(|other| other.what == e.what));
    match twice {
        None => Ok(()),
        Some((_, entry)) => Err(AppError::invalid(EntryRefused::Twice { what: entry.what })),
    }
}

/// Reads an entry as it would be kept, for a page that wants to say which of several was wrong.
///
/// # Errors
/// A text that cannot be read; a value that cannot be.
pub fn check_typed(what: What, typed: &str, pendulum: &Pendulum) -> Result<f64, AppError> {
    let entry = Entry { what, typed: typed.to_owned(), value: None, pivot_mm: None, again: false };
    let value = value_of(&entry, pendulum)?;
    check_value(what, value)?;
    Ok(value)
}

fact::facts! {
    /// What is refused of readings at the bench.
    pub(crate) enum EntryRefused: "reading_refused" {
        Nothing { step: String },
        KeptBefore { entries: Vec<Told> },
        TakenBack,
        NotKept,
        Twice { what: What },
        AsKept { what: What, typed: String },
        YesOrNo { what: What, typed: String },
        NoFigure { what: What, typed: String },
    }
}
