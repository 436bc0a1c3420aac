//! The plan: which parts go into which club, what is cut, and what every stage should read.

use crate::action::Action;
use crate::adapter::AdapterModel;
use crate::frequency_line::{FrequencyLine, ShaftFrequency};
use crate::head::ScrewOption;
use crate::id::PartId;
use crate::kind::Role;
use crate::model::{Library, PartKind};
use crate::stiffness_profile::ShaftProfile;
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A part as a plan uses it: copied, so that a record still reads right when stock has moved on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct PlannedPart {
    /// What it is for.
    pub kind: PartKind,
    /// The part, or the bulk it is taken from.
    pub part: PartId,
    /// The shop's code on its label.
    pub code: String,
    /// Code of its model.
    pub model: String,
    /// Mass that the plan counts with: its own where weighed, else its model's.
    pub mass_g: f64,
    /// Whether `mass_g` was weighed for this very piece.
    pub weighed: bool,
    /// Frequency of the raw shaft as it was read when it came in; none for other parts, for a shaft that was not read, and for
    /// one whose tip had been cut before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub raw_cpm: Option<f64>,
    /// What had been cut off the tip of this shaft before the job; none for other parts and for a fresh shaft.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tip_lost_mm: Option<f64>,
    /// How stiff this very shaft is along its length, as it was read before the cut; none for other parts and for a shaft that
    /// was not read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<ShaftProfile>,
    /// Maker's lot.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub lot: String,
    /// Where it lies.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub place: String,
}

/// Something that was added to a club beyond its planned parts, or a screw of its head that was changed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Extra {
    /// What was done.
    pub action: Action,
    /// Mass that came on; negative where it came off.
    pub mass_g: f64,
    /// Where it sits: from the butt end of the bare shaft.
    pub arm_mm: f64,
    /// When: readings before it were taken without it.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// What one club is made of, how it is cut, and what to expect.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubPlan {
    /// Head, shaft, grip and, where used, adapter, ferrule and tip weights.
    pub parts: Vec<PlannedPart>,
    /// The number of the head in hand.
    pub head_number: String,
    /// Cut off the tip.
    pub tip_trim_mm: f64,
    /// Cut off the butt after the tip.
    pub butt_cut_mm: f64,
    /// Length of the shaft after both cuts.
    pub cut_shaft_mm: f64,
    /// Mass of the shaft after both cuts, by its mass line.
    pub cut_shaft_mass_g: f64,
    /// Balance point of the cut shaft from its butt end.
    pub cut_shaft_balance_point_mm: f64,
    /// From the bottom of the tip to the ground along the axis: bore to ground, and what lifts the tip.
    pub tip_to_ground_mm: f64,
    /// Bend of loft and of lie that the sheet asks of this head, nominal or as received.
    pub bend_loft_deg: f64,
    /// See `bend_loft_deg`.
    pub bend_lie_deg: f64,
    /// What each reading of the step list should show.
    pub expected: Vec<Expected>,
    /// Moment of inertia about the butt that it will have; none in plans of earlier versions.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub swing_inertia: Option<ExpectedInertia>,
    /// Probability of finishing in tolerance, with the plan as it is.
    pub chance: f64,
    /// Why this choice; plans of earlier versions hold sentences.
    pub reasons: Vec<Told>,
    /// How its shaft lies against its frequency line; none where there is no line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub frequency: Option<ShaftFrequency>,
    /// What was added since.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub extras: Vec<Extra>,
    /// The number that the shaft's blank belongs to, where it is a neighbour's used on purpose.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub neighbour_blank: Option<String>,
}

/// What a step should read.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Expected {
    /// Key of the step at which the club is read.
    pub step: String,
    /// Swing weight as the shop's scale will show it, points since A0.
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// Half width of the 95 % band.
    pub band_points: f64,
}

/// What a club's swing inertia should be.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ExpectedInertia {
    /// Moment of inertia about the butt end of the finished club.
    pub value_kg_cm2: f64,
    /// Half width of its 95 % band.
    pub band_kg_cm2: f64,
}

/// A club that cannot be built from what is there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Missing {
    /// Number of the club.
    pub number: String,
    /// What is missing.
    pub kind: PartKind,
    /// Model that is missing.
    pub model: String,
    /// What is wrong and what to do.
    #[serde(flatten)]
    pub fact: Told,
    /// Lowest mass to ask the supplier for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub order_from_g: Option<f64>,
    /// Highest mass to ask the supplier for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub order_to_g: Option<f64>,
    /// Parts that would do in its place, nearest first of each sort.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub instead: Vec<Instead>,
}

/// A part that would do for a club that cannot be built as the sheet says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Instead {
    /// What sort of part it is: head, shaft, grip …
    pub kind: PartKind,
    /// The shop's code on its label.
    pub code: String,
    /// Running number of the job that holds it, where it is not free.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_by: Option<i64>,
    /// Why the plan does not use it and what it would cost.
    pub fact: Told,
    /// About how far from its target the club would come out, points.
    pub deviation_points: f64,
    /// About how much would go into its tip, g.
    pub tip_g: f64,
}

/// A proposal for a whole job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Plan {
    /// One a club, in the order of the job's clubs; none where the club cannot be built.
    pub clubs: Vec<Option<ClubPlan>>,
    /// Clubs that cannot be built, each with the part that it lacks.
    pub missing: Vec<Missing>,
    /// The frequency lines that its shafts are held against, and why a blank has none; empty where no shaft of these
    /// models was ever measured.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub frequency: Vec<FrequencyLine>,
    /// The stated cost of the choice.
    pub cost: f64,
    /// A proven lower bound of that cost.
    pub bound: f64,
    /// Whether the choice is proven the best for the stated cost.
    pub proven: bool,
}

impl ClubPlan {
    /// Parts that nobody has cut, bent or forecast yet; the cut shaft has no length.
    #[must_use]
    pub const fn uncut(parts: Vec<PlannedPart>, head_number: String) -> Self {
        Self {
            parts,
            head_number,
            tip_trim_mm: 0.0,
            butt_cut_mm: 0.0,
            cut_shaft_mm: 0.0,
            cut_shaft_mass_g: 0.0,
            cut_shaft_balance_point_mm: 0.0,
            tip_to_ground_mm: 0.0,
            bend_loft_deg: 0.0,
            bend_lie_deg: 0.0,
            expected: Vec::new(),
            chance: 0.0,
            reasons: Vec::new(),
            swing_inertia: None,
            frequency: None,
            extras: Vec::new(),
            neighbour_blank: None,
        }
    }

    /// The first part of a kind.
    #[must_use]
    pub fn part(&self, kind: PartKind) -> Option<&PlannedPart> {
        self.parts.iter().find(|p| p.kind == kind)
    }

    /// The model of the adapter between shaft and head; none where there is no adapter.
    #[must_use]
    pub fn adapter<'a>(&self, library: &'a Library) -> Option<&'a AdapterModel> {
        library.adapter(&self.part(PartKind::Adapter)?.model).ok()
    }

    /// Sum of what was added by an action.
    #[must_use]
    pub fn extras_g(&self, action: Action) -> f64 {
        self.extras.iter().filter(|e| e.action == action).map(|e| e.mass_g).sum()
    }

    /// The screw in its head, where it is not the one that the head comes with.
    #[must_use]
    pub fn screw<'a>(&self, library: &'a Library) -> Option<&'a ScrewOption> {
        let more_g = self.extras_g(Action::Screw);
        let head = self.part(PartKind::Head).filter(|_| more_g != 0.0)?;
        library.head(&head.model).ok()?.screw_of(more_g)
    }

    /// Sum of the masses that the plan gives a role.
    #[must_use]
    pub fn mass_g(&self, role: Role) -> f64 {
        // An empty sum is −0.0, which would be shown with its sign.
        let of = |kind| self.parts.iter().filter(|p| p.kind == kind).map(|p| p.mass_g).sum::<f64>() + 0.0;
        match role {
            Role::Head => of(PartKind::Head),
            Role::Adapter => of(PartKind::Adapter),
            Role::Shaft => self.cut_shaft_mass_g,
            Role::Ferrule => of(PartKind::Ferrule),
            Role::TipWeight => of(PartKind::TipWeight),
            Role::Grip => of(PartKind::Grip),
            Role::Screw | Role::Turnings | Role::Adhesive | Role::Tape | Role::Solvent | Role::Extra => 0.0,
        }
    }
}

fact::facts! {
    /// What an accepted plan should have and has not.
    pub enum PlanLacks: "plan_lacks" {
        /// The plan of the … has no ….
        Part {
            /// Number of the club.
            number: String,
            /// What kind of part.
            kind: crate::model::PartKind,
        },
    }
}
