//! Readings: what was read, on what, by whom. Appended, never changed: what replaces a reading points at it.

use crate::error::Entry;
use crate::error::TradeError;
use crate::error::within;
use crate::id::{ClubId, JobId, ReadingId};
use crate::kind::{Role, closed_list};
use fact::{Fact, Told};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::HashSet;
use utoipa::ToSchema;

closed_list! {
    /// What can be read.
    What {
        /// Mass of the head.
        HeadMass = "head_mass";
        /// Mass of the adapter.
        AdapterMass = "adapter_mass";
        /// Mass of the cut shaft.
        ShaftMass = "shaft_mass";
        /// Mass of the ferrule.
        FerruleMass = "ferrule_mass";
        /// Mass of what goes into the tip.
        TipWeightMass = "tip_weight_mass";
        /// Mass of the tape of one club.
        TapeMass = "tape_mass";
        /// Mass of the grip.
        GripMass = "grip_mass";
        /// Mass of the whole club.
        TotalMass = "total_mass";
        /// Swing weight, on the 14-inch fulcrum.
        SwingWeight = "swing_weight" was "balance";
        /// Balance point from the butt.
        BalancePoint = "balance_point";
        /// Length of the cut shaft.
        ShaftLength = "shaft_length";
        /// Length of the club to the cap.
        FinishedLength = "finished_length";
        /// Loft.
        Loft = "loft";
        /// Lie.
        Lie = "lie";
        /// Centre of the grip from the outside of its cap, found on an edge.
        GripCentre = "grip_centre";
        /// Thickness of the grip's cap.
        CapThickness = "cap_thickness";
        /// Balance point of the cut shaft from its butt.
        ShaftBalancePoint = "shaft_balance_point";
        /// What the balance scale shows for the shop's check weight.
        CheckWeight = "check_weight";
        /// What the shop's balance scale shows for the reference club.
        ReferenceSwingWeight = "reference_swing_weight" was "reference_balance";
        /// Diameter of the grip under the upper hand, 2 in below the outside of its cap.
        GripSize = "grip_size";
        /// Diameter of the grip under the lower hand, 6 in below the outside of its cap.
        GripSizeLower = "grip_size_lower";
        /// Frequency in cycles per minute.
        Cpm = "cpm";
        /// Period of one full swing, there and back, of the whole club hung from a pivot.
        SwingPeriod = "swing_period";
        /// Swing inertia: moment of inertia about the butt, where a machine shows it or a pendulum gave it.
        SwingInertia = "swing_inertia";
        /// Direction of the soft side.
        SoftSide = "soft_side";
        /// Whether the empty balance scale shows zero: 1 yes, 0 no.
        EmptyScale = "empty_scale";
        /// Whether the ferrule is on: 1 yes, 0 no.
        FerruleOn = "ferrule_on";
        /// Whether the number on the sole is the club's: 1 yes, 0 no.
        HeadNumber = "head_number";
        /// Nothing read: the step is done.
        Done = "done";
    }
}

closed_list! {
    /// Unit of a reading's value.
    Unit {
        /// Grams.
        Gram = "g";
        /// Millimetres.
        Millimetre = "mm";
        /// Points since A0.
        Points = "points";
        /// Degrees.
        Degree = "deg";
        /// Cycles per minute.
        Cpm = "cpm";
        /// Seconds.
        Second = "s";
        /// Kilograms times square centimetres.
        KgCm2 = "kg_cm2";
        /// No value.
        None = "none";
    }
}

impl Unit {
    /// Its sign beside a figure, `g`; empty where there is no value.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Gram => "g",
            Self::Millimetre => "mm",
            Self::Points => "points",
            Self::Degree => "°",
            Self::Cpm => "cpm",
            Self::Second => "s",
            Self::KgCm2 => "kg·cm²",
            Self::None => "",
        }
    }
}

impl What {
    /// Unit of its value.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::HeadMass
            | Self::AdapterMass
            | Self::ShaftMass
            | Self::FerruleMass
            | Self::TipWeightMass
            | Self::TapeMass
            | Self::GripMass
            | Self::TotalMass => Unit::Gram,
            Self::SwingWeight | Self::CheckWeight | Self::ReferenceSwingWeight => Unit::Points,
            Self::BalancePoint
            | Self::ShaftLength
            | Self::FinishedLength
            | Self::GripCentre
            | Self::CapThickness
            | Self::GripSize
            | Self::GripSizeLower
            | Self::ShaftBalancePoint => Unit::Millimetre,
            Self::Loft | Self::Lie | Self::SoftSide => Unit::Degree,
            Self::Cpm => Unit::Cpm,
            Self::SwingPeriod => Unit::Second,
            Self::SwingInertia => Unit::KgCm2,
            Self::EmptyScale | Self::FerruleOn | Self::HeadNumber | Self::Done => Unit::None,
        }
    }

    /// Whether it is a look that is answered yes (1) or no (0).
    #[must_use]
    pub const fn is_look(self) -> bool {
        matches!(self, Self::EmptyScale | Self::FerruleOn | Self::HeadNumber)
    }

    /// The part whose mass it is, where it is the mass of one.
    #[must_use]
    pub const fn mass_of(self) -> Option<Role> {
        match self {
            Self::HeadMass => Some(Role::Head),
            Self::AdapterMass => Some(Role::Adapter),
            Self::ShaftMass => Some(Role::Shaft),
            Self::FerruleMass => Some(Role::Ferrule),
            Self::TipWeightMass => Some(Role::TipWeight),
            Self::TapeMass => Some(Role::Tape),
            Self::GripMass => Some(Role::Grip),
            _ => None,
        }
    }

    /// The values that are possible at all, in its unit. Wide: slips of the key and of the unit only. Common practice,
    /// no source.
    #[must_use]
    pub const fn possible(self) -> (f64, f64) {
        match self {
            Self::HeadMass => (120.0, 600.0),
            Self::AdapterMass => (0.5, 40.0),
            Self::ShaftMass => (20.0, 250.0),
            Self::FerruleMass => (0.1, 10.0),
            Self::TipWeightMass => (0.1, 60.0),
            Self::TapeMass => (0.1, 60.0),
            Self::GripMass => (10.0, 250.0),
            Self::TotalMass => (200.0, 1000.0),
            Self::SwingWeight | Self::CheckWeight | Self::ReferenceSwingWeight => (-60.0, 160.0),
            Self::GripCentre => (40.0, 250.0),
            Self::CapThickness => (0.5, 12.0),
            Self::GripSize | Self::GripSizeLower => (12.0, 50.0),
            Self::ShaftBalancePoint => (150.0, 900.0),
            Self::BalancePoint => (300.0, 1200.0),
            Self::ShaftLength => (400.0, 1300.0),
            Self::FinishedLength => (400.0, 1350.0),
            Self::Loft => (0.0, 80.0),
            Self::Lie => (40.0, 80.0),
            Self::Cpm => (50.0, 600.0),
            Self::SwingPeriod => (1.0, 4.0),
            Self::SwingInertia => (500.0, 9000.0),
            Self::SoftSide => (0.0, 360.0),
            Self::EmptyScale | Self::FerruleOn | Self::HeadNumber => (0.0, 1.0),
            Self::Done => (0.0, 0.0),
        }
    }
}

/// One reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Reading {
    /// Identity.
    pub id: ReadingId,
    /// Identity of the job at the bench.
    pub job: JobId,
    /// Identity of the club that was read.
    pub club: ClubId,
    /// Key of the step it was read at.
    pub step: String,
    /// What was read.
    pub what: What,
    /// Its value in `unit`; 0 where nothing was read.
    pub value: f64,
    /// Unit of `value`.
    pub unit: Unit,
    /// The entry as it was typed.
    pub typed: String,
    /// What was on the club.
    pub on: Vec<Role>,
    /// The scale it was read on, where there is more than one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<String>,
    /// Step of the display in `unit`: a reading is known no better than this.
    pub display_step: f64,
    /// Where the club hung while its swing was timed, from the outside of its cap; none for all else.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pivot_mm: Option<f64>,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// Who.
    pub by: String,
    /// The reading that this one replaces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub replaces: Option<ReadingId>,
    /// Why it was taken back, where it was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<Told>,
    /// Whether the builder insisted on it though it was doubted.
    #[serde(default)]
    pub insisted: bool,
    /// What the bench expected before it came; none for what is not forecast, and for readings from before this was
    /// kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forecast: Option<StoodForecast>,
}

/// The forecast that stood when a reading came. It is kept with the reading for ever: what was expected is not changed by
/// what was read.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct StoodForecast {
    /// What the instrument was expected to show, in the reading's unit.
    pub value: f64,
    /// Half width of the 95 % band of what it would show, in the reading's unit.
    pub band: f64,
    /// Version of the belief that made it (`BELIEF_VERSION` of the crate `bench`).
    pub version: i64,
}

/// Refuses a value that nothing of this sort can have.
///
/// # Errors
/// [`TradeError::Impossible`] named after `what`.
pub fn check_value(what: What, value: f64) -> Result<(), TradeError> {
    let (low, high) = what.possible();
    within(Entry::Reading { what: what.told() }, value, low, high, what.unit().sign()).map(|_| ())
}

/// The readings that still stand: not taken back and not replaced by a later one that itself stands.
#[must_use]
pub fn standing(readings: &[Reading]) -> Vec<&Reading> {
    let replaced: HashSet<&ReadingId> =
        readings.iter().filter(|r| r.taken_back.is_none()).filter_map(|r| r.replaces.as_ref()).collect();
    readings.iter().filter(|r| r.taken_back.is_none() && !replaced.contains(&r.id)).collect()
}
