//! Where the pieces of a club lie: the one answer for the belief, the plan, the sheet's check and the remedies.
//!
//! Places count from the butt end of the bare shaft along its axis. The shaft's tip ends at the bottom of the head's bore,
//! lifted off it by an adapter or by the flange of a tip weight; the ground point lies `tip_to_ground` beyond the tip:
//! bore to ground, and what lifts the tip. So an adapter fills the stretch *beyond* the tip, and its middle lies half its
//! length beyond it. Tip weights lie inside the tip, one above the other; where each lies is said where they are stacked.
//! On a gripped club every place is further from the stop by the thickness of the cap.

use crate::error::TradeError;
use crate::model::{Library, PartKind};
use crate::plan::ClubPlan;
use crate::tip_weight::{self, InTip};

/// What turning takes off a ferrule: mean and standard deviation, g. Common practice, no source: weigh a few.
pub const TURNINGS_G: (f64, f64) = (0.3, 0.15);
/// A head's own inertia about its centre, across the shaft's axis, kg·cm²: 2 to 5, mean and standard deviation (common practice, no
/// source).
pub const HEAD_INERTIA_KG_CM2: (f64, f64) = (3.0, 1.2);

/// Mass of a ferrule on the finished club: turned down to the hosel.
#[must_use]
pub fn turned_g(ferrule_g: f64) -> f64 {
    ferrule_g - TURNINGS_G.0
}

/// The places of one club, from the butt end of its bare shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Places {
    /// Tip end of the cut shaft.
    pub tip_mm: f64,
    /// Where the shaft's axis meets the ground.
    pub ground_mm: f64,
    /// How far the tip goes into the head, or into its adapter.
    pub bore_depth_mm: f64,
}

impl Places {
    /// By the length of the cut shaft, what lies between its tip and the ground, and the depth of the bore.
    #[must_use]
    pub fn new(cut_shaft_mm: f64, tip_to_ground_mm: f64, bore_depth_mm: f64) -> Self {
        Self { tip_mm: cut_shaft_mm, ground_mm: cut_shaft_mm + tip_to_ground_mm, bore_depth_mm }
    }

    /// As a plan cuts the shaft.
    #[must_use]
    pub fn of_plan(plan: &ClubPlan, bore_depth_mm: f64) -> Self {
        Self::new(plan.cut_shaft_mm, plan.tip_to_ground_mm, bore_depth_mm)
    }

    /// Centre of the head, by its model's offset from the ground point.
    #[must_use]
    pub fn head_mm(&self, offset_mm: f64) -> f64 {
        self.ground_mm + offset_mm
    }

    /// Middle of an adapter: it lifts the tip by its length.
    #[must_use]
    pub fn adapter_mm(&self, length_mm: f64) -> f64 {
        self.tip_mm + length_mm / 2.0
    }

    /// Middle of a ferrule: it sits on the mouth of the bore.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::places::Places;
    ///
    /// // By hand: a shaft of 930 mm goes 32 mm into the head, so the bore's mouth is at 898 mm; a ferrule of 25 mm sits on it.
    /// let places = Places::new(930.0, 30.0, 32.0);
    /// assert_eq!(places.ferrule_mm(25.0), 885.5);
    /// ```
    #[must_use]
    pub fn ferrule_mm(&self, length_mm: f64) -> f64 {
        self.tip_mm - self.bore_depth_mm - length_mm / 2.0
    }

    /// Middle of the adhesive: half way down the bore.
    #[must_use]
    pub fn adhesive_mm(&self) -> f64 {
        self.tip_mm - self.bore_depth_mm / 2.0
    }
}

/// What the weights of a plan do to the swing weight of its club, points.
///
/// # Errors
/// A model that the library lacks.
pub fn tip_weight_points(library: &Library, plan: &ClubPlan, cap_mm: f64) -> Result<f64, TradeError> {
    let parts = plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight);
    let weights: Vec<InTip> =
        parts.map(|p| Ok(InTip::of(library.tip_weight(&p.model)?, p.mass_g))).collect::<Result<_, TradeError>>()?;
    let flanges_mm: f64 = weights.iter().map(|w| w.flange_mm).sum();
    Ok(tip_weight::points(plan.cut_shaft_mm + flanges_mm, cap_mm, &weights))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: a shaft of 1,000 mm whose tip an adapter of 30 mm lifts; 15 mm more to the ground, 25 mm of bore.
    #[test]
    fn pieces_lie_where_a_rule_would_find_them() {
        let places = Places::new(1000.0, 45.0, 25.0);
        assert_eq!(places.adapter_mm(30.0), 1015.0);
        assert_eq!(places.head_mm(-12.0), 1033.0);
        assert_eq!(places.ferrule_mm(20.0), 965.0);
        assert_eq!(places.adhesive_mm(), 987.5);
    }
}
