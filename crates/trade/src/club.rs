//! A club that lives on: what it is made of as far as known, whose it is, and all that was done with it.

use crate::arrival::Arrival;
use crate::club_name::ClubName;
use crate::id::{ClubCode, EventId};
use crate::kind::{ClubKind, Hand, LengthTo, closed_list};
use crate::model::PartKind;
use crate::model::as_it_came::{self, HeadMaterial};
use crate::plan::{ClubPlan, PlannedPart};
use crate::reading::{Unit, What};
use crate::sheet::{SheetClub, Tolerances};
use crate::wrap::Wraps;
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What a club is made of, as far as known: the models and layers that its row of a sheet would name, and its pieces with
/// their masses and places. A club from elsewhere has models without a maker ([`as_it_came()`]).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Made {
    /// Models, layers, length and angles, as a row of a sheet holds them.
    pub row: SheetClub,
    /// Its pieces, how it was cut, and what was added to it.
    pub pieces: ClubPlan,
}

/// A figure that was read of a club and that still holds.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClubFigure {
    /// What was read.
    pub what: What,
    /// Its value in `unit`.
    pub value: f64,
    /// Unit of `value`.
    pub unit: Unit,
    /// The scale it was read on: the shop's key of it, or the name of another; none where no scale is needed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<String>,
    /// When it was read.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// A club with a code of its own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = OwnedClub)]
pub struct Club {
    /// What its label says when it is scanned: `C12`.
    pub code: ClubCode,
    /// What people call it, where it has a name of its own: “the old 7”.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// Who plays it.
    pub player: String,
    /// Running number of the customer whose it is; none where no customer is noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub owner: Option<i64>,
    /// Whether it is for a right-handed or a left-handed player.
    pub hand: Hand,
    /// What it is made of, as far as known.
    pub made: Made,
    /// Outside diameter of its grip 50 mm below the cap, where it was measured: for the size of the next one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_size_mm: Option<f64>,
    /// What was read of it and still holds, one figure of each sort.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub figures: Vec<ClubFigure>,
    /// Goes up by one with every change.
    pub version: i64,
}

impl Club {
    /// The club as a figure of a fact: the 7-iron.
    #[must_use]
    pub fn name(&self) -> ClubName {
        self.made.row.name()
    }

    /// What was read of it and still holds.
    #[must_use]
    pub fn figure(&self, what: What) -> Option<&ClubFigure> {
        self.figures.iter().find(|figure| figure.what == what)
    }

    /// Notes figures: each takes the place of an earlier one of the same sort.
    pub fn note(&mut self, figures: impl IntoIterator<Item = ClubFigure>) {
        for figure in figures {
            self.figures.retain(|old| old.what != figure.what);
            self.figures.push(figure);
        }
    }

    /// Whether all that the club is made of was weighed here.
    #[must_use]
    pub fn built_here(&self) -> bool {
        !as_it_came::is(&self.made.row.head_model)
    }
}

closed_list! {
    /// What happened to a club.
    ClubDeed {
        /// Built here.
        Built = "built";
        /// It came from elsewhere and was noted.
        Arrived = "arrived";
        /// Read again.
        Measured = "measured";
        /// Worked on in a job.
        Worked = "worked";
        /// Its label, its owner or what is known of its pieces was changed by hand.
        Changed = "changed";
        /// Given up: lost, broken or sold.
        Retired = "retired";
    }
}

/// One entry in the life of a club. Appended, never changed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubEvent {
    /// Identity of the entry.
    pub id: EventId,
    /// Code of the club whose life it is.
    pub club: ClubCode,
    /// What happened.
    pub deed: ClubDeed,
    /// Running number of the job, where it was done in one: its record says more.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Place in the tray of that job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// Key of the kind of job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job_kind: Option<String>,
    /// What changed, each as a fact.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<Told>,
    /// What was read.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub figures: Vec<ClubFigure>,
    /// What somebody wrote beside it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

fact::facts! {
    /// How work changed a club.
    pub enum ClubChange: "club_change" {
        /// Another grip.
        Grip {
            /// What the old one weighed, as far as known.
            from_g: f64,
            /// What the new one weighs.
            to_g: f64,
        },
        /// Another shaft.
        Shaft {
            /// What the old one weighed as cut, as far as known.
            from_g: f64,
            /// What the new one weighs as cut.
            to_g: f64,
        },
        /// Longer or shorter, to the cap.
        Length {
            /// Before.
            from_mm: f64,
            /// After.
            to_mm: f64,
        },
        /// Bent in loft.
        Loft {
            /// Before.
            from_deg: f64,
            /// After.
            to_deg: f64,
        },
        /// Bent in lie.
        Lie {
            /// Before.
            from_deg: f64,
            /// After.
            to_deg: f64,
        },
        /// Something was added.
        Added {
            /// Lead tape, powder, an extension …
            action: crate::action::Action,
            /// How much.
            mass_g: f64,
        },
    }
}

/// What a club from elsewhere is made of: models without a maker, of which what was measured on arrival is all that is known.
#[must_use]
pub fn as_it_came(kind: ClubKind, number: &str, material: HeadMaterial, arrival: &Arrival) -> Made {
    let usual = as_it_came::usual(kind, number);
    let head_model = as_it_came::head_code(kind, material);
    let shaft_model = as_it_came::shaft_code(kind);
    let to_cap_mm = arrival.length_mm.unwrap_or(usual.length_mm);
    let shaft_mm = to_cap_mm - CAP_MM - as_it_came::TIP_TO_GROUND_MM;
    let part = |kind: PartKind, model: &str, known: Option<f64>, usual_g: f64| PlannedPart {
        kind,
        part: "".into(),
        code: String::new(),
        model: model.to_owned(),
        mass_g: known.unwrap_or(usual_g),
        weighed: known.is_some(),
        raw_cpm: None,
        tip_lost_mm: None,
        profile: None,
        lot: String::new(),
        place: String::new(),
    };
    let shaft_g = arrival.shaft_mass_g.unwrap_or(usual.shaft_g);
    let parts = vec![
        part(PartKind::Head, &head_model, arrival.head_mass_g, usual.head_g),
        part(PartKind::Shaft, &shaft_model, arrival.shaft_mass_g, usual.shaft_g),
        part(PartKind::Grip, as_it_came::GRIP, arrival.grip_mass_g, GRIP_G),
    ];
    let pieces = ClubPlan {
        cut_shaft_mm: shaft_mm,
        cut_shaft_mass_g: shaft_g,
        cut_shaft_balance_point_mm: shaft_mm * as_it_came::SHAFT_BALANCE_SHARE,
        tip_to_ground_mm: as_it_came::TIP_TO_GROUND_MM,
        ..ClubPlan::uncut(parts, number.to_owned())
    };
    let row = SheetClub {
        number: number.to_owned(),
        club_kind: kind,
        head_model,
        shaft_model,
        grip_model: as_it_came::GRIP.to_owned(),
        ferrule_model: None,
        adhesive: Some(as_it_came::JOINT.to_owned()),
        tape: Some(as_it_came::TAPE.to_owned()),
        length_mm: to_cap_mm,
        length_to: LengthTo::Cap,
        swing_weight_points: arrival.swing_weight_points.unwrap_or(USUAL_POINTS),
        loft_deg: arrival.loft_deg.unwrap_or(usual.loft_deg),
        lie_deg: arrival.lie_deg.unwrap_or(usual.lie_deg),
        cpm: arrival.cpm,
        total_mass_g: None,
        inertia_kg_cm2: None,
        grip_size: None,
        grip_graphics: None,
        adapter_setting: None,
        swing_weight_free: kind == ClubKind::Putter && arrival.swing_weight_points.is_none(),
        shaft_graphics: None,
        soft_side: None,
        tip_weight: None,
        wraps: Wraps { base: 1, full: 0, lower_hand: 0 },
        tolerances: Tolerances::default(),
    };
    Made { row, pieces }
}

/// Swing weight of a club of which nothing was read: D1.
const USUAL_POINTS: f64 = 31.0;
/// Mass and cap of the grip that a club came with, before it is weighed: those of [`as_it_came::GRIP`].
const GRIP_G: f64 = 50.0;
const CAP_MM: f64 = 3.2;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Library;

    #[test]
    fn a_club_as_it_came_uses_the_figures_of_its_grip() {
        let library = Library::default();
        let grip = library.grip(as_it_came::GRIP).unwrap();
        assert_eq!((grip.mass_g, grip.cap_mm), (GRIP_G, CAP_MM));
    }

    /// By hand: 37 in to the cap less 3.2 mm of cap and 30 mm to the ground leave 906.6 mm of shaft.
    #[test]
    fn a_measured_length_gives_the_length_of_the_shaft() {
        let arrival = Arrival { length_mm: Some(939.8), ..Arrival::default() };
        let made = as_it_came(ClubKind::Iron, "7", HeadMaterial::Unknown, &arrival);
        assert!((made.pieces.cut_shaft_mm - 906.6).abs() < 1e-9);
        assert!(made.pieces.parts.iter().all(|part| !part.weighed));
    }
}
