//! Why a plan takes these parts.

use super::{Fitting, Shelf, deviations};
use fact::Told;
use trade::fit::BlankUse;

fact::facts! {
    /// Why a club gets its parts.
    pub enum PlanReason: "planner_reason" {
        /// The head is lighter than its number's mass.
        HeadUnder {
            /// Its code.
            head: String,
            /// By how much.
            by_g: f64,
            /// The number's mass.
            nominal_g: f64,
        },
        /// The head is heavier than its number's mass.
        HeadOver {
            /// Its code.
            head: String,
            /// By how much.
            by_g: f64,
            /// The number's mass.
            nominal_g: f64,
        },
        /// No other head of its number is about as heavy.
        LastHead {
            /// How near another would have to be.
            within_g: f64,
        },
        /// What goes into the tip, and what it leaves.
        InTip {
            /// Weight that goes into the tip.
            tip_g: f64,
            /// Distance from the target.
            off_points: f64,
        },
        /// Nothing goes into the tip.
        NoTip {
            /// Distance from the target.
            off_points: f64,
        },
        /// Another screw goes into the head.
        Screw {
            /// What is stamped on it.
            screw: String,
            /// What it weighs more than the one that the head comes with; less than 0 where it weighs less.
            more_g: f64,
        },
        /// The whole club is lighter than the sheet asks.
        ClubUnder {
            /// The whole club.
            total_g: f64,
            /// By how much.
            by_g: f64,
        },
        /// The whole club is heavier than the sheet asks.
        ClubOver {
            /// The whole club.
            total_g: f64,
            /// By how much.
            by_g: f64,
        },
        /// The shaft is lighter than its model's line of masses.
        ShaftUnder {
            /// By how much.
            by_g: f64,
        },
        /// The shaft is heavier than its model's line of masses.
        ShaftOver {
            /// By how much.
            by_g: f64,
        },
        /// The blank is a neighbouring number's.
        NeighbourBlank {
            /// The number that the blank is made for: `6`, `PW`.
            number: String,
        },
        /// The grip is so light that it could put another club right.
        GripUnder {
            /// By how much less than its model.
            by_g: f64,
        },
        /// The grip is so heavy that it could put another club right.
        GripOver {
            /// By how much more than its model.
            by_g: f64,
        },
        /// The adapter is lighter than its model.
        AdapterUnder {
            /// Its code.
            adapter: String,
            /// By how much.
            by_g: f64,
            /// Its model's mass.
            nominal_g: f64,
        },
        /// The adapter is heavier than its model.
        AdapterOver {
            /// Its code.
            adapter: String,
            /// By how much.
            by_g: f64,
            /// Its model's mass.
            nominal_g: f64,
        },
        /// The sheet's lie needs more bend than the maker allows.
        LieBeyondLimit {
            /// What it needs; negative where flatter.
            bend_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
    }
}

/// Masses closer than this show alike, g.
const ALIKE_G: f64 = 0.05;

/// Why this choice.
pub(super) fn reasons(fitting: &Fitting<'_>, shelf: &Shelf<'_>, choice: &matching::Choice) -> Vec<Told> {
    let mut found = Vec::new();
    let head = shelf.heads[choice.head];
    let head_g = head.mass_g.unwrap_or_default();
    let nominal_g = fitting.head_number.mass_g;
    let (code, by_g) = (head.code.clone(), (head_g - nominal_g).abs());
    found.push(if head_g < nominal_g {
        PlanReason::HeadUnder { head: code, by_g, nominal_g }
    } else {
        PlanReason::HeadOver { head: code, by_g, nominal_g }
    });
    if fitting.head_masses.last(head_g) {
        found.push(PlanReason::LastHead { within_g: super::left_over::ALIKE_G });
    }
    let (_, more_g) = shelf.tips_and_screw(choice);
    if let Some(screw) = fitting.head_model.screw_of(more_g).filter(|_| more_g.abs() > 0.0) {
        found.push(PlanReason::Screw { screw: screw.label.clone(), more_g });
    }
    let off_points = choice.deviation_points.abs();
    found.push(if choice.tip_g > 0.0 {
        PlanReason::InTip { tip_g: choice.tip_g, off_points }
    } else {
        PlanReason::NoTip { off_points }
    });
    if let (Some(off_g), Some(asked_g)) = (choice.mass_residual_g, fitting.club.target.total_mass_g) {
        let (total_g, by_g) = (asked_g + off_g, off_g.abs());
        found.push(if off_g < 0.0 {
            PlanReason::ClubUnder { total_g, by_g }
        } else {
            PlanReason::ClubOver { total_g, by_g }
        });
    }
    let by_g = choice.shaft_residual_g.abs();
    if by_g >= ALIKE_G {
        let under = choice.shaft_residual_g < 0.0;
        found.push(if under { PlanReason::ShaftUnder { by_g } } else { PlanReason::ShaftOver { by_g } });
    }
    if let Some((part, _, BlankUse::Neighbour(_))) = fitting.shafts.iter().find(|(part, _, _)| *part == choice.shaft) {
        let number = shelf.shafts[*part].number.clone().unwrap_or_default();
        found.push(PlanReason::NeighbourBlank { number });
    }
    let grip = shelf.grips[choice.grip];
    if let Some(mass_g) = grip.mass_g.filter(|&mass_g| deviations(fitting.grip_model, mass_g).abs() >= 1.0) {
        let off_g = mass_g - fitting.grip_model.mass_g;
        let by_g = off_g.abs();
        found.push(if off_g < 0.0 { PlanReason::GripUnder { by_g } } else { PlanReason::GripOver { by_g } });
    }
    if let Some(adapter) = choice.adapter.map(|at| shelf.adapters[at])
        && let Some((mass_g, nominal_g)) = adapter.mass_g.zip(fitting.adapter.map(|model| model.mass_g))
        && adapter.count.is_none()
        && (mass_g - nominal_g).abs() >= ALIKE_G
    {
        let (code, by_g) = (adapter.code.clone(), (mass_g - nominal_g).abs());
        found.push(if mass_g < nominal_g {
            PlanReason::AdapterUnder { adapter: code, by_g, nominal_g }
        } else {
            PlanReason::AdapterOver { adapter: code, by_g, nominal_g }
        });
    }
    let setting = fitting.club.target.adapter_setting.as_deref();
    let turned_deg = fitting.adapter.map_or(0.0, |adapter| adapter.turns_deg(setting).1);
    let bend_deg = fitting.club.target.lie_deg - turned_deg - head.lie_deg.unwrap_or(fitting.head_number.lie_deg);
    let limit_deg = fitting.head_model.bend_limit_deg;
    if bend_deg.abs() > limit_deg + 1e-9 {
        found.push(PlanReason::LieBeyondLimit { bend_deg, limit_deg });
    }
    found.into_iter().map(Told::from).collect()
}
