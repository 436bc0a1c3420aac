//! What a reading is held against: the figure that the sheet asks, with its tolerance.

use crate::assembly::Assembly;
use crate::grip_size::SIZE_TOLERANCE_MM;
use serde::{Deserialize, Serialize};
use trade::job::JobClub;
use trade::kind::{Role, closed_list};
use trade::reading::What;
use utoipa::ToSchema;

closed_list! {
    /// How a reading lies against what the sheet asks.
    Fit {
        /// Within its tolerance.
        Inside = "inside";
        /// Outside of it.
        Off = "off";
    }
}

/// The figure that the sheet asks for a reading, in the reading's unit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Target {
    /// What is asked.
    pub value: f64,
    /// Half width of the tolerance; more than 0.
    pub tolerance: f64,
}

impl Target {
    /// How a value lies against it. A value on the edge of the tolerance is inside.
    #[must_use]
    pub fn fit(&self, value: f64) -> Fit {
        // A difference of two decimal figures may come out some 1e-14 over.
        if (value - self.value).abs() <= self.tolerance + 1e-9 { Fit::Inside } else { Fit::Off }
    }
}

/// What the sheet asks of a reading with these pieces on the club; none where it asks nothing.
///
/// The swing weight has a target on the finished, dry club alone: every earlier reading has only a forecast.
#[must_use]
pub(crate) fn target_of(assembly: Assembly<'_>, club: &JobClub, what: What, on: &[Role]) -> Option<Target> {
    let (asked, tolerances) = (&club.target, &club.target.tolerances);
    let (value, tolerance) = match what {
        What::SwingWeight if asked.swing_weight_free => return None,
        What::SwingWeight if on.contains(&Role::Grip) && !on.contains(&Role::Solvent) => {
            (asked.swing_weight_points, tolerances.swing_weight_points)
        }
        What::FinishedLength => {
            let cap_mm = assembly.library.grip(&asked.grip_model).map_or(0.0, |grip| grip.cap_mm);
            (asked.length_to.to_cap_mm(asked.length_mm, cap_mm), tolerances.length_mm)
        }
        What::Loft => (asked.loft_deg, tolerances.loft_deg),
        What::Lie => (asked.lie_deg, tolerances.lie_deg),
        What::GripSize | What::GripSizeLower => (crate::grip_size::asked(club, what)?, SIZE_TOLERANCE_MM),
        What::Cpm => (asked.cpm?, tolerances.cpm),
        _ => return None,
    };
    (tolerance > 0.0).then_some(Target { value, tolerance })
}

#[cfg(test)]
mod tests {
    use super::{Fit, Target};

    #[test]
    fn the_edge_of_a_tolerance_is_inside() {
        let loft = Target { value: 50.0, tolerance: 0.5 };
        for (value, fit) in [(50.5, Fit::Inside), (49.5, Fit::Inside), (50.6, Fit::Off), (51.5, Fit::Off)] {
            assert_eq!(loft.fit(value), fit, "{value}");
        }
        // 32.1 + 0.3 is not 32.4 to the last bit.
        assert_eq!(Target { value: 32.1, tolerance: 0.3 }.fit(32.4), Fit::Inside);
    }
}
