//! Readings and the questions that can be asked of a belief.

use crate::club::{OnClub, Role, Share};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What is read or asked for. Masses in grams, lengths in inches, swing weight in points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Quantity {
    /// Mass of all pieces of one role, whether on the club or beside it, grams.
    PartMass(Role),
    /// Arm of the piece of one role from its own datum, inches (mass-weighted when there are several).
    PartArm(Role),
    /// Thickness of the grip's cap, inches.
    CapThickness,
    /// Mass of what is on the club, grams.
    TotalMass,
    /// Swing weight of what is on the club, points above A0.
    SwingWeight,
    /// Distance of the balance point from the end that sits on the stop (the cap once the grip is on), inches.
    BalancePoint,
    /// Moment of inertia about the end that sits on the stop, g·in².
    Inertia,
    /// Period of one small full swing of the club hung from a pivot on its axis, seconds.
    SwingPeriod {
        /// Where the pivot is, from the end that sits on the stop, inches; nearer to it than the balance point.
        pivot_in: f64,
        /// Gravity where it swings, in/s².
        gravity_in_s2: f64,
    },
    /// Length to the butt end of the shaft, inches.
    ShaftLength,
    /// Length to the outside of the cap, inches.
    LengthToCap,
    /// A shared deviation itself, in its own unit: a strip of tape weighed by itself, a learned value.
    Shared(String),
    /// A sum of shared deviations, each with its factor.
    Combination(Vec<Share>),
    /// A check weight on the balance, points.
    CheckWeight {
        /// Its certified swing weight, points.
        true_points: f64,
        /// Its mass, grams: an error of the fulcrum acts on it.
        mass_g: f64,
        /// Key of the shared deviation that carries the weight's own uncertainty, points.
        #[serde(default)]
        shared: Option<String>,
    },
    /// A check mass on a weighing scale, grams.
    CheckMass {
        /// Its certified mass, grams.
        true_g: f64,
        /// Key of the shared deviation that carries the mass's own uncertainty, grams.
        #[serde(default)]
        shared: Option<String>,
    },
}

impl Quantity {
    /// Does it need a club?
    #[must_use]
    pub(crate) fn needs_club(&self) -> bool {
        !matches!(self, Self::Shared(_) | Self::Combination(_) | Self::CheckWeight { .. } | Self::CheckMass { .. })
    }

    /// Does it depend on which pieces are on the club?
    #[must_use]
    pub(crate) fn depends_on_stage(&self) -> bool {
        matches!(
            self,
            Self::TotalMass | Self::SwingWeight | Self::BalancePoint | Self::Inertia | Self::SwingPeriod { .. }
        )
    }
}

/// What is made of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// Believed; [`crate::JobModel::solve_with_doubt`] may set it aside.
    #[default]
    Believed,
    /// The builder stands by it: believed and never set aside.
    Insisted,
    /// Kept, shown, not believed; [`crate::JobModel::solve_with_doubt`] tests it anew.
    Doubted,
    /// Kept for the record only: never believed, never tested anew.
    Withdrawn,
}

/// One reading at the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Observation {
    /// Unique name; readings are taken in the order of their names, whatever order they arrived in.
    pub id: String,
    /// The club, unless the quantity belongs to none.
    #[serde(default)]
    pub club: Option<String>,
    /// What was read; it says the unit of `value`.
    pub quantity: Quantity,
    /// What was on the club.
    #[serde(default)]
    pub on: OnClub,
    /// The value shown, in the quantity's unit.
    pub value: f64,
    /// Standard deviation of the reading before rounding (re-seating, noise), same unit.
    pub sd: f64,
    /// Smallest step of the display, same unit; 0 when it does not round.
    #[serde(default)]
    pub resolution: f64,
    /// Key of the scale whose offset, gain and drift enter; none for an ideal one.
    #[serde(default)]
    pub scale: Option<String>,
    /// Hours since the job's own zero of time; only matters when the scale drifts.
    #[serde(default)]
    pub at_h: f64,
    /// What is made of it.
    #[serde(default)]
    pub standing: Standing,
}

impl Observation {
    /// A believed reading of an ideal, unrounded instrument that belongs to no club.
    #[must_use]
    pub fn new(id: impl Into<String>, quantity: Quantity, value: f64, sd: f64) -> Self {
        Self {
            id: id.into(),
            club: None,
            quantity,
            on: OnClub::NONE,
            value,
            sd,
            resolution: 0.0,
            scale: None,
            at_h: 0.0,
            standing: Standing::Believed,
        }
    }

    /// The same reading, of a club with these pieces on.
    #[must_use]
    pub fn of_club(mut self, club: impl Into<String>, on: OnClub) -> Self {
        self.club = Some(club.into());
        self.on = on;
        self
    }

    /// The same reading from a scale.
    #[must_use]
    pub fn on_scale(mut self, scale: impl Into<String>) -> Self {
        self.scale = Some(scale.into());
        self
    }

    /// The same reading rounded to steps of `resolution`.
    #[must_use]
    pub fn rounded_to(mut self, resolution: f64) -> Self {
        self.resolution = resolution;
        self
    }

    /// The same reading at a time, hours.
    #[must_use]
    pub fn at(mut self, at_h: f64) -> Self {
        self.at_h = at_h;
        self
    }

    /// The same reading with another standing.
    #[must_use]
    pub fn standing(mut self, standing: Standing) -> Self {
        self.standing = standing;
        self
    }

    /// Is it used by [`crate::JobModel::solve`]?
    #[must_use]
    pub fn is_believed(&self) -> bool {
        matches!(self.standing, Standing::Believed | Standing::Insisted)
    }

    /// The question that this reading answers, noise apart.
    #[must_use]
    pub fn probe(&self) -> Probe {
        Probe {
            club: self.club.clone(),
            quantity: self.quantity.clone(),
            on: self.on,
            scale: self.scale.clone(),
            at_h: Some(self.at_h),
            less: None,
            less_club: None,
        }
    }
}

/// A question to a belief: a quantity, at a stage, in truth or as a scale would show it without noise and rounding.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Probe {
    /// The club, unless the quantity belongs to none.
    #[serde(default)]
    pub club: Option<String>,
    /// What is asked for; it says the unit of the answer.
    pub quantity: Quantity,
    /// What is on the club.
    #[serde(default)]
    pub on: OnClub,
    /// The scale whose systematic error is included; none for the true value.
    #[serde(default)]
    pub scale: Option<String>,
    /// When, hours; none for the latest reading on that scale.
    #[serde(default)]
    pub at_h: Option<f64>,
    /// Key of a shared deviation that is taken off: a finish is asked for less how far the reference club truly lies from
    /// its figure, so that what both have in common cancels.
    #[serde(default)]
    pub less: Option<String>,
    /// Another club of which the same quantity is taken off: what work on a club has changed is asked for as the club less the
    /// club as it came. Every deviation of that other club must be a shared one.
    #[serde(default)]
    pub less_club: Option<OtherClub>,
}

/// A club whose quantity is taken off, with what is on it then.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct OtherClub {
    /// Name of the club within the job.
    pub club: String,
    /// The pieces that are on it when its quantity is asked for.
    pub on: OnClub,
}

impl Probe {
    /// The true value of a quantity of a club.
    #[must_use]
    pub fn of_club(club: impl Into<String>, quantity: Quantity, on: OnClub) -> Self {
        Self { club: Some(club.into()), quantity, on, scale: None, at_h: None, less: None, less_club: None }
    }

    /// A value that belongs to no club.
    #[must_use]
    pub fn of_job(quantity: Quantity) -> Self {
        Self { club: None, quantity, on: OnClub::NONE, scale: None, at_h: None, less: None, less_club: None }
    }

    /// The same as a scale would show it, without noise and rounding.
    #[must_use]
    pub fn on_scale(mut self, scale: impl Into<String>) -> Self {
        self.scale = Some(scale.into());
        self
    }

    /// The same less a shared deviation.
    #[must_use]
    pub fn less(mut self, key: impl Into<String>) -> Self {
        self.less = Some(key.into());
        self
    }

    /// The same less the same quantity of another club, all of whose deviations are shared ones.
    #[must_use]
    pub fn less_club(mut self, club: impl Into<String>, on: OnClub) -> Self {
        self.less_club = Some(OtherClub { club: club.into(), on });
        self
    }
}
