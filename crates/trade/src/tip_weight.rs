//! Weights in the tip of a shaft: where they lie, and what they do to the swing weight.
//!
//! The first lies at the end of the tip, a second one on top of it. A flange stays outside and lifts the tip off the bottom
//! of the bore, so that the shaft is cut shorter by as much and the weight sits where it would without. The plan, the
//! belief and what can still be done about a club all ask here.

use crate::error::TradeError;
use crate::error::{plausible, within};
use crate::swing_weight::points_per_g;
use clubphysics::plausible::TIP_DIAMETER_MM;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// One compartment of the tip-weight tray.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TipWeightModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the tray.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Nominal mass.
    #[schema(minimum = 0.1, maximum = 40)]
    pub mass_g: f64,
    /// Smallest tip diameter of the shafts it goes into.
    #[schema(minimum = 5, maximum = 20)]
    pub tip_min_mm: f64,
    /// Largest tip diameter of the shafts it goes into.
    #[schema(minimum = 5, maximum = 20)]
    pub tip_max_mm: f64,
    /// Length inside the shaft.
    #[schema(minimum = 0.5, maximum = 120)]
    pub length_mm: f64,
    /// Thickness of the flange that stays outside the tip; 0 where there is none. It lifts the tip off the bottom of
    /// the bore by as much.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 10)]
    pub flange_mm: f64,
}

impl TipWeightModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("mass_g", self.mass_g, 0.1, 40.0, "g")?;
        plausible("tip_min_mm", self.tip_min_mm, &TIP_DIAMETER_MM)?;
        within("tip_max_mm", self.tip_max_mm, self.tip_min_mm, 20.0, "mm")?;
        within("length_mm", self.length_mm, 0.5, 120.0, "mm")?;
        within("flange_mm", self.flange_mm, 0.0, 10.0, "mm").map(|_| ())
    }
}

/// Whether a tip weight goes into a tip.
#[must_use]
pub fn tip_weight_fits(weight: &TipWeightModel, tip_diameter_mm: f64) -> bool {
    (weight.tip_min_mm - 1e-9..=weight.tip_max_mm + 1e-9).contains(&tip_diameter_mm)
}

/// One weight as it goes into a tip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InTip {
    /// Its own mass.
    pub mass_g: f64,
    /// Length inside the shaft.
    pub length_mm: f64,
    /// Thickness of the flange that stays outside the tip; 0 where there is none.
    pub flange_mm: f64,
}

impl InTip {
    /// A piece of a model, with its own mass.
    #[must_use]
    pub fn of(model: &TipWeightModel, mass_g: f64) -> Self {
        Self { mass_g, length_mm: model.length_mm, flange_mm: model.flange_mm }
    }
}

/// Arms of the centres of stacked weights from the butt end of the bare shaft, the lowest first; `tip_mm` is the length of
/// the shaft.
pub fn arms_mm(tip_mm: f64, lengths_mm: impl IntoIterator<Item = f64>) -> impl Iterator<Item = f64> {
    lengths_mm.into_iter().scan(0.0, move |below_mm, length_mm| {
        let arm_mm = tip_mm - *below_mm - length_mm / 2.0;
        *below_mm += length_mm;
        Some(arm_mm)
    })
}

/// What stacked weights do to the swing weight, points, the lowest first. `bare_mm` is the length of the shaft as it would be
/// without a flange, `cap_mm` the thickness of the grip's cap.
///
/// # Examples
///
/// ```
/// use trade::tip_weight::{InTip, points};
///
/// // By hand: the centre of 2 g, 10 mm long, in a shaft of 900 mm under a cap of 3 mm is at 898 mm or 35.354 in, 21.354 in
/// // beyond the fulcrum: 2 × 21.354 / 49.6117 points.
/// let weight = InTip { mass_g: 2.0, length_mm: 10.0, flange_mm: 0.0 };
/// assert!((points(900.0, 3.0, &[weight]) - 0.8609).abs() < 0.0001);
/// ```
#[must_use]
pub fn points(bare_mm: f64, cap_mm: f64, weights: &[InTip]) -> f64 {
    let tip_mm = bare_mm - weights.iter().map(|w| w.flange_mm).sum::<f64>();
    let arms = arms_mm(tip_mm, weights.iter().map(|w| w.length_mm));
    weights.iter().zip(arms).map(|(w, arm_mm)| w.mass_g * points_per_g(arm_mm + cap_mm)).sum()
}

/// How much less two stacked weights do than each of them by itself, points. It does not depend on the club: the arms of
/// both change by the same lengths in every shaft.
#[must_use]
pub fn lost_points(lower: InTip, upper: InTip) -> f64 {
    let alone = |weight| points(0.0, 0.0, &[weight]);
    alone(lower) + alone(upper) - points(0.0, 0.0, &[lower, upper])
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
