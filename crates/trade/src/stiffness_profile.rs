//! How stiff one very shaft is along its length, as the shop read it: the readings and the line that they tell.

use crate::error::{TradeError, within};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Most readings of one shaft: more would take a morning and tell nothing more.
pub const READINGS_MOST: usize = 24;
/// A shaft whose length differs by this much from the one that was read has been cut since, mm.
const SAME_LENGTH_MM: f64 = 2.0;

/// One reading of a raw shaft in a clamp: its frequency, or how far it goes down under a weight.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StiffnessReading {
    /// How much of the butt the clamp held.
    #[schema(minimum = 20, maximum = 1200)]
    pub held_mm: f64,
    /// Weight on the shaft.
    #[schema(minimum = 20, maximum = 5000)]
    pub weight_g: f64,
    /// Its centre beyond the tip end along the shaft's axis; negative where it sits or hangs on the shaft.
    #[serde(default)]
    #[schema(minimum = -600, maximum = 80)]
    pub weight_beyond_tip_mm: f64,
    /// The frequency, cycles a minute; left out where a deflection was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 50, maximum = 3000)]
    pub cpm: Option<f64>,
    /// How far the shaft went down at the weight when it was hung on, its own weight not counted; left out where a frequency was
    /// read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, maximum = 500)]
    pub deflection_mm: Option<f64>,
}

/// One place of a shaft with its stiffness.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProfileRow {
    /// From the tip end of the shaft as its maker made it.
    pub from_tip_mm: f64,
    /// Bending stiffness there, as the readings tell it.
    pub stiffness_n_m2: f64,
    /// One standard deviation of that.
    pub sd_percent: f64,
}

/// The stiffness along one shaft, from its own readings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ShaftProfile {
    /// What was read.
    pub readings: Vec<StiffnessReading>,
    /// The line from butt to tip that the readings and the model's line tell.
    pub rows: Vec<ProfileRow>,
    /// Length of the shaft when it was read.
    pub length_mm: f64,
    /// What had been cut off its tip before that.
    #[serde(default)]
    pub tip_trimmed_mm: f64,
    /// Who read it.
    pub by: String,
    /// When it was kept.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

impl ShaftProfile {
    /// Whether a shaft that long, with so much off its tip, is still as it was read.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::stiffness_profile::ShaftProfile;
    ///
    /// let read = ShaftProfile {
    ///     readings: Vec::new(),
    ///     rows: Vec::new(),
    ///     length_mm: 1041.0,
    ///     tip_trimmed_mm: 0.0,
    ///     by: "Ada".to_owned(),
    ///     at: jiff::Timestamp::UNIX_EPOCH,
    /// };
    /// assert!(read.is_of(1041.4, 0.0));
    /// assert!(!read.is_of(1015.6, 25.4), "cut at the tip since");
    /// ```
    #[must_use]
    pub fn is_of(&self, length_mm: f64, tip_trimmed_mm: f64) -> bool {
        (self.length_mm - length_mm).abs() <= SAME_LENGTH_MM
            && (self.tip_trimmed_mm - tip_trimmed_mm).abs() <= SAME_LENGTH_MM
    }
}

/// Refuses readings that no shaft of this length can give.
///
/// # Errors
/// None at all or too many, a figure out of range, a reading with both figures or neither.
pub fn check(readings: &[StiffnessReading], length_mm: f64) -> Result<(), TradeError> {
    if readings.is_empty() || readings.len() > READINGS_MOST {
        return Err(TradeError::refused(StiffnessFault::Count {
            n: readings.len() as i64,
            most: READINGS_MOST as i64,
        }));
    }
    for (i, read) in readings.iter().enumerate() {
        let name = |what: &str| format!("readings[{i}].{what}");
        within(name("held_mm"), read.held_mm, 20.0, (length_mm - LEAST_FREE_MM).max(21.0), "mm")?;
        within(name("weight_g"), read.weight_g, 20.0, 5000.0, "g")?;
        within(name("weight_beyond_tip_mm"), read.weight_beyond_tip_mm, -600.0, 80.0, "mm")?;
        match (read.cpm, read.deflection_mm) {
            (Some(cpm), None) => within(name("cpm"), cpm, CPM_LEAST, CPM_HELD_FAR, "cpm")?,
            (None, Some(deflection_mm)) => {
                let free_mm = length_mm + read.weight_beyond_tip_mm - read.held_mm;
                within(name("deflection_mm"), deflection_mm, 1.0, (SMALL_SLOPE * free_mm).max(1.1), "mm")?
            }
            _ => return Err(TradeError::refused(StiffnessFault::OneFigure { place: i as i64 + 1 })),
        };
    }
    Ok(())
}

/// The least that a clamped shaft reads, cpm (wide, to catch slips of the key only).
const CPM_LEAST: f64 = 50.0;
/// A shaft that is held over most of its length is far faster than any club, cpm (wide, to catch slips of the key only).
const CPM_HELD_FAR: f64 = 3000.0;
/// Least free shaft of a reading, mm.
const LEAST_FREE_MM: f64 = 250.0;
/// Greatest deflection as a share of the free length that is still in proportion to the weight within a 50th (derived from the
/// elastica: a deflection of a quarter is 1.7 % less than in proportion).
const SMALL_SLOPE: f64 = 0.25;

fact::facts! {
    /// What is refused of the readings of a shaft's stiffness.
    pub enum StiffnessFault: "stiffness_fault" {
        /// No readings, or far more than one shaft needs.
        Count {
            /// How many there are.
            n: i64,
            /// How many there may be.
            most: i64,
        },
        /// A reading with a frequency and a deflection, or with neither.
        OneFigure {
            /// Which reading, from 1.
            place: i64,
        },
        /// The shaft's model has no blank for its number.
        NoBlank {
            /// Code of the shaft.
            code: String,
        },
        /// A shaft that is in a club, put aside or not here yet.
        NotInHand {
            /// Code of the shaft.
            code: String,
        },
        /// A part that is not a shaft.
        NotAShaft {
            /// Code of the part.
            code: String,
        },
    }
}
