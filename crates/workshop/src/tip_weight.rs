//! Weights in the tip of a shaft: where they lie, and what they do to the swing weight.
//!
//! The first lies at the end of the tip, a second one on top of it. A flange stays outside and lifts the tip off the bottom
//! of the bore, so that the shaft is cut shorter by as much and the weight sits where it would without. The plan, the
//! belief and what can still be done about a club all ask here.

use crate::belief::points_per_g;
use crate::error::WorkshopError;
use crate::model::{Library, PartKind, TipWeightModel};
use crate::plan::ClubPlan;

/// One weight as it goes into a tip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct InTip {
    pub mass_g: f64,
    /// Inside the shaft.
    pub length_mm: f64,
    pub flange_mm: f64,
}

impl InTip {
    /// A piece of a model, with its own mass.
    pub fn of(model: &TipWeightModel, mass_g: f64) -> Self {
        Self { mass_g, length_mm: model.length_mm, flange_mm: model.flange_mm }
    }
}

/// Arms of the centres of stacked weights from the butt end of the bare shaft, the lowest first; `tip_mm` is the length of
/// the shaft.
pub(crate) fn arms_mm(tip_mm: f64, lengths_mm: impl IntoIterator<Item = f64>) -> impl Iterator<Item = f64> {
    lengths_mm.into_iter().scan(0.0, move |below_mm, length_mm| {
        let arm_mm = tip_mm - *below_mm - length_mm / 2.0;
        *below_mm += length_mm;
        Some(arm_mm)
    })
}

/// What stacked weights do to the swing weight, points, the lowest first. `bare_mm` is the length of the shaft as it would be
/// without a flange, `cap_mm` the thickness of the grip's cap.
pub(crate) fn points(bare_mm: f64, cap_mm: f64, weights: &[InTip]) -> f64 {
    let tip_mm = bare_mm - weights.iter().map(|w| w.flange_mm).sum::<f64>();
    let arms = arms_mm(tip_mm, weights.iter().map(|w| w.length_mm));
    weights.iter().zip(arms).map(|(w, arm_mm)| w.mass_g * points_per_g(arm_mm + cap_mm)).sum()
}

/// How much less two stacked weights do than each of them by itself, points. It does not depend on the club: the arms of
/// both change by the same lengths in every shaft.
pub(crate) fn lost_points(lower: InTip, upper: InTip) -> f64 {
    let alone = |weight| points(0.0, 0.0, &[weight]);
    alone(lower) + alone(upper) - points(0.0, 0.0, &[lower, upper])
}

/// What the weights of a plan do to the swing weight of its club, points.
///
/// # Errors
/// A model that the library lacks.
pub(crate) fn points_in_plan(library: &Library, plan: &ClubPlan, cap_mm: f64) -> Result<f64, WorkshopError> {
    let parts = plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight);
    let weights: Vec<InTip> =
        parts.map(|p| Ok(InTip::of(library.tip_weight(&p.model)?, p.mass_g))).collect::<Result<_, WorkshopError>>()?;
    let flanges_mm: f64 = weights.iter().map(|w| w.flange_mm).sum();
    Ok(points(plan.cut_shaft_mm + flanges_mm, cap_mm, &weights))
}

#[cfg(test)]
mod tests {
    use super::{InTip, arms_mm, lost_points, points};

    /// By hand, a point being 49.6117 g·in about 14 in: 2 g of 10 mm and 2 g of 12 mm with a flange of 1 mm in a shaft of
    /// 900 mm under a cap of 3 mm.
    #[test]
    fn the_upper_weight_lies_above_the_lower() {
        let lower = InTip { mass_g: 2.0, length_mm: 10.0, flange_mm: 0.0 };
        let upper = InTip { mass_g: 2.0, length_mm: 12.0, flange_mm: 1.0 };
        assert_eq!(arms_mm(900.0, [10.0, 12.0]).collect::<Vec<_>>(), [895.0, 884.0]);
        let by_hand = |arm_mm: f64| 2.0 * (arm_mm / 25.4 - 14.0) / 49.6117;
        // The flange takes a millimetre off the shaft.
        let (low, high) = (by_hand(899.0 - 5.0 + 3.0), by_hand(899.0 - 10.0 - 6.0 + 3.0));
        assert!((points(900.0, 3.0, &[lower, upper]) - (low + high)).abs() < 1e-4);
        // 1 mm less under the lower one, 10 mm under the upper one.
        let lost = (2.0 * 1.0 + 2.0 * 10.0) / 25.4 / 49.6117;
        assert!((lost_points(lower, upper) - lost).abs() < 1e-4, "{}", lost_points(lower, upper));
        let alone = points(900.0, 3.0, &[lower]) + points(900.0, 3.0, &[upper]);
        assert!((alone - lost_points(lower, upper) - points(900.0, 3.0, &[lower, upper])).abs() < 1e-9);
    }
}
