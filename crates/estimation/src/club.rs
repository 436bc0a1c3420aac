//! The pieces of a club and what is believed about each before any reading.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What a piece is on the club.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
#[repr(u8)]
pub enum Role {
    /// The head.
    Head,
    /// An adapter between shaft and a wood's head.
    Adapter,
    /// A screw that can be swapped in the head or that holds the adapter.
    Screw,
    /// The shaft as cut.
    Shaft,
    /// The ferrule as it is after turning.
    Ferrule,
    /// What turning takes off the ferrule: on the club until it is turned.
    Turnings,
    /// The weight in the shaft's tip.
    TipWeight,
    /// The adhesive of the joint.
    Adhesive,
    /// Tape under the grip.
    Tape,
    /// The grip.
    Grip,
    /// Solvent that has not yet dried out of the grip.
    Solvent,
    /// Anything else: lead tape, powder, a counterweight, a butt extension.
    Extra,
}

impl Role {
    /// All roles, from the head to the extras.
    pub const ALL: [Self; 12] = [
        Self::Head,
        Self::Adapter,
        Self::Screw,
        Self::Shaft,
        Self::Ferrule,
        Self::Turnings,
        Self::TipWeight,
        Self::Adhesive,
        Self::Tape,
        Self::Grip,
        Self::Solvent,
        Self::Extra,
    ];

    /// The key used in documents: `tip_weight`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Head => "head",
            Self::Adapter => "adapter",
            Self::Screw => "screw",
            Self::Shaft => "shaft",
            Self::Ferrule => "ferrule",
            Self::Turnings => "turnings",
            Self::TipWeight => "tip_weight",
            Self::Adhesive => "adhesive",
            Self::Tape => "tape",
            Self::Grip => "grip",
            Self::Solvent => "solvent",
            Self::Extra => "extra",
        }
    }

    /// The role with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|role| role.key() == key)
    }
}

impl fact::Fact for Role {
    fn told(&self) -> fact::Told {
        fact::Told::of_list("Role", self.key())
    }
}

impl fact::ToFigure for Role {
    fn to_figure(&self) -> fact::Figure {
        fact::Figure::Fact(fact::Fact::told(self))
    }
}

/// Which pieces are on the club at a stage: a set of roles, written in JSON as a list.
///
/// A role of which the club has no piece weighs nothing; every piece of a role in the set is on.
///
/// # Examples
///
/// ```
/// use estimation::{OnClub, Role};
/// let dry = OnClub::of(&[Role::Shaft, Role::Head]);
/// assert!(dry.contains(Role::Head) && !dry.with(Role::Grip).without(Role::Head).contains(Role::Head));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, ToSchema)]
#[serde(from = "Vec<Role>", into = "Vec<Role>")]
#[schema(value_type = Vec<Role>)]
pub struct OnClub(u16);

impl OnClub {
    /// No piece at all.
    pub const NONE: Self = Self(0);

    /// The set of the given roles.
    #[must_use]
    pub fn of(roles: &[Role]) -> Self {
        roles.iter().fold(Self::NONE, |set, role| set.with(*role))
    }

    /// Every role except solvent and turnings: a finished and dry club.
    #[must_use]
    pub fn finished() -> Self {
        Self::of(&Role::ALL).without(Role::Solvent).without(Role::Turnings)
    }

    /// Is the role on the club?
    #[must_use]
    pub fn contains(self, role: Role) -> bool {
        self.0 & (1 << role as u8) != 0
    }

    /// The same set with one role put on.
    #[must_use]
    pub fn with(self, role: Role) -> Self {
        Self(self.0 | (1 << role as u8))
    }

    /// The same set with one role taken off.
    #[must_use]
    pub fn without(self, role: Role) -> Self {
        Self(self.0 & !(1 << role as u8))
    }

    /// The roles in the set, from the head to the extras.
    pub fn iter(self) -> impl Iterator<Item = Role> {
        Role::ALL.into_iter().filter(move |role| self.contains(*role))
    }

    /// Is nothing on?
    #[must_use]
    pub fn is_empty(self) -> bool {
        self.0 == 0
    }
}

impl From<Vec<Role>> for OnClub {
    fn from(roles: Vec<Role>) -> Self {
        Self::of(&roles)
    }
}

impl From<OnClub> for Vec<Role> {
    fn from(set: OnClub) -> Self {
        set.iter().collect()
    }
}

/// How much of a shared deviation goes into a value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Share {
    /// Key of a [`crate::SharedPrior`].
    pub key: String,
    /// Factor on the shared deviation: usually 1; for tape the number of wraps.
    #[serde(default = "one")]
    pub gain: f64,
}

fn one() -> f64 {
    1.0
}

/// A value before any reading: `mean + the piece's own deviation + Σ gain · shared deviation`.
///
/// Several shared deviations may enter one value, which is how piece, job and shop are told apart: the adhesive of a
/// joint scatters by itself, with today's mix, and with the builder's hand.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Prior {
    /// Expected value before the shared deviations are added, in the unit of the field that holds it.
    pub mean: f64,
    /// Standard deviation of the piece's own deviation, same unit; 0 when it is known exactly.
    #[serde(default)]
    pub piece_sd: f64,
    /// Shared deviations that enter, none where the value is this piece's alone.
    #[serde(default)]
    pub shared: Vec<Share>,
}

impl Prior {
    /// A value with its own standard deviation and nothing shared.
    #[must_use]
    pub fn new(mean: f64, piece_sd: f64) -> Self {
        Self { mean, piece_sd, shared: Vec::new() }
    }

    /// A value known exactly.
    #[must_use]
    pub fn known(mean: f64) -> Self {
        Self::new(mean, 0.0)
    }

    /// The same with a shared deviation added once.
    #[must_use]
    pub fn with_shared(self, key: impl Into<String>) -> Self {
        self.with_shared_gain(key, 1.0)
    }

    /// The same with `gain` times a shared deviation added.
    #[must_use]
    pub fn with_shared_gain(mut self, key: impl Into<String>, gain: f64) -> Self {
        self.shared.push(Share { key: key.into(), gain });
        self
    }
}

/// Where an arm is counted from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Datum {
    /// From the butt end of the bare shaft; once the grip is on, the cap's thickness is added.
    #[default]
    ShaftButt,
    /// From the outside of the grip's cap, as a loose grip is balanced on an edge: the cap's thickness is already in
    /// it.
    GripCap,
}

/// One weighed or estimated piece of a club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Piece {
    /// What it is on the club; a stage of the build names the roles that are on.
    pub role: Role,
    /// Its mass, grams; with several pieces of a role each has its own.
    pub mass_g: Prior,
    /// Distance of its centre from the [`Datum`] along the shaft's axis, inches.
    pub arm_in: Prior,
    /// Does it sit at the far end, and so move with the club's own deviation in length?
    #[serde(default)]
    pub moves_with_length: bool,
    /// Where the arm is counted from.
    #[serde(default)]
    pub arm_from: Datum,
    /// Inertia about its own centre, g·in², taken as known; only [`crate::Quantity::Inertia`] uses it.
    #[serde(default)]
    pub own_inertia_g_in2: f64,
}

impl Piece {
    /// A piece whose arm is counted from the butt end of the shaft and that does not move with the length.
    #[must_use]
    pub fn new(role: Role, mass_g: Prior, arm_in: Prior) -> Self {
        Self { role, mass_g, arm_in, moves_with_length: false, arm_from: Datum::ShaftButt, own_inertia_g_in2: 0.0 }
    }

    /// The same piece at the far end of the shaft.
    #[must_use]
    pub fn moving_with_length(mut self) -> Self {
        self.moves_with_length = true;
        self
    }

    /// The same piece with its arm counted from the outside of the grip's cap.
    #[must_use]
    pub fn from_grip_cap(mut self) -> Self {
        self.arm_from = Datum::GripCap;
        self
    }

    /// The same piece with an inertia about its own centre, g·in².
    #[must_use]
    pub fn with_own_inertia(mut self, own_inertia_g_in2: f64) -> Self {
        self.own_inertia_g_in2 = own_inertia_g_in2;
        self
    }
}

/// One club of the job, as it will be when every piece is on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Club {
    /// Name of the club within the job; unique.
    pub key: String,
    /// Its pieces, in any order; a role may occur more than once.
    pub pieces: Vec<Piece>,
    /// Length to the butt end of the shaft, inches, in the shop's convention for where it starts.
    pub shaft_length_in: f64,
    /// Standard deviation of the club's own error in that length, inches.
    #[serde(default)]
    pub length_sd_in: f64,
    /// Shared deviations that enter the length, inches: a club before and after work on it has the same error of length.
    #[serde(default)]
    pub length_shared: Vec<Share>,
    /// Thickness of the grip's cap, inches.
    #[serde(default)]
    pub cap_in: Prior,
    /// Swing weight to be reached, points.
    #[serde(default)]
    pub target_points: f64,
    /// Half width of what is accepted, points.
    #[serde(default)]
    pub tolerance_points: f64,
}

impl Club {
    /// A club without pieces and with an exact length to the butt end, inches.
    #[must_use]
    pub fn new(key: impl Into<String>, shaft_length_in: f64) -> Self {
        Self {
            key: key.into(),
            pieces: Vec::new(),
            shaft_length_in,
            length_sd_in: 0.0,
            length_shared: Vec::new(),
            cap_in: Prior::default(),
            target_points: 0.0,
            tolerance_points: 0.0,
        }
    }

    /// The same club with one more piece.
    #[must_use]
    pub fn with_piece(mut self, piece: Piece) -> Self {
        self.pieces.push(piece);
        self
    }

    /// The same club with an uncertain length, inches.
    #[must_use]
    pub fn with_length_sd(mut self, length_sd_in: f64) -> Self {
        self.length_sd_in = length_sd_in;
        self
    }

    /// The same club with a cap of the given thickness, inches.
    #[must_use]
    pub fn with_cap(mut self, cap_in: Prior) -> Self {
        self.cap_in = cap_in;
        self
    }

    /// The same club with a target and half width, points.
    #[must_use]
    pub fn with_target(mut self, target_points: f64, tolerance_points: f64) -> Self {
        self.target_points = target_points;
        self.tolerance_points = tolerance_points;
        self
    }
}
