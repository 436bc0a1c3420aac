//! The clubs that come in, as they truly are.

use crate::club::{Mass, TrueClub};
use crate::draw::Draw;
use trade::kind::Role;

/// The club that came in, as it truly is; arms from the butt end of its shaft, the grip's from its cap.
pub(super) struct TrueArrival {
    pub(super) number: &'static str,
    pub(super) head_g: f64,
    pub(super) head_beyond_mm: f64,
    pub(super) tip_to_ground_mm: f64,
    pub(super) shaft_g: f64,
    pub(super) shaft_mm: f64,
    pub(super) shaft_centre_mm: f64,
    pub(super) shaft_bulge: f64,
    pub(super) joint_g: f64,
    pub(super) hidden_tip_g: f64,
    pub(super) plug_g: f64,
    pub(super) grip_g: f64,
    pub(super) grip_centre_mm: f64,
    pub(super) cap_mm: f64,
    pub(super) tape_g: f64,
    pub(super) tape_mm: f64,
}

/// The numbers that come in.
const NUMBERS: [(&str, f64); 6] = [("4", 4.0), ("5", 5.0), ("6", 6.0), ("7", 7.0), ("8", 8.0), ("9", 9.0)];

impl TrueArrival {
    /// Means and scatter off those of the belief (`trade::model::as_it_came`): heads heavier by 3 g and 6.5 g a number, shafts
    /// of two sorts and neither of the mean mass, lighter grips with their centre lower, thicker caps, a weight in every fourth tip, a
    /// plug in every tenth butt. All figures: a judgement, no source.
    pub(super) fn draw(draw: &mut Draw) -> Self {
        let (number, n) = NUMBERS[draw.below(NUMBERS.len())];
        let steel = draw.happens(0.6);
        let shaft_g = if steel { draw.normal(114.0, 9.0) } else { draw.normal(76.0, 11.0) };
        let length_in = 37.0 - 0.5 * (n - 7.0) + draw.uniform(-0.9, 1.0);
        let (cap_mm, tip_to_ground_mm) = (draw.uniform(2.4, 4.4), draw.uniform(24.0, 37.0));
        let shaft_mm = length_in * 25.4 - cap_mm - tip_to_ground_mm;
        let tip = if draw.happens(0.25) { draw.uniform(2.0, 8.0) } else { 0.0 };
        let plug = if draw.happens(0.1) { draw.uniform(3.0, 10.0) } else { 0.0 };
        Self {
            number,
            head_g: draw.normal(271.0 + 6.5 * (n - 7.0), 6.0),
            head_beyond_mm: draw.uniform(-5.0, 7.0),
            tip_to_ground_mm,
            shaft_g,
            shaft_mm,
            shaft_centre_mm: shaft_mm * draw.uniform(0.465, 0.535),
            shaft_bulge: draw.uniform(-0.1, 0.1),
            joint_g: draw.uniform(2.0, 5.0),
            hidden_tip_g: tip,
            plug_g: plug,
            grip_g: draw.normal(48.0, 6.0),
            grip_centre_mm: draw.uniform(100.0, 120.0),
            cap_mm,
            tape_g: draw.uniform(0.5, 4.5),
            tape_mm: draw.uniform(110.0, 140.0),
        }
    }

    pub(super) fn ground_mm(&self) -> f64 {
        self.shaft_mm + self.tip_to_ground_mm
    }

    pub(super) fn masses(&self) -> Vec<Mass> {
        let mass = |role, mass_g, arm_mm| Mass { role, mass_g, arm_mm };
        vec![
            mass(Role::Head, self.head_g, self.ground_mm() + self.head_beyond_mm),
            mass(Role::Shaft, self.shaft_g, self.shaft_centre_mm),
            mass(Role::Adhesive, self.joint_g, self.shaft_mm - 22.0),
            mass(Role::TipWeight, self.hidden_tip_g, self.shaft_mm - 8.0),
            mass(Role::Extra, self.plug_g, 25.0),
            mass(Role::Grip, self.grip_g, self.grip_centre_mm),
            mass(Role::Tape, self.tape_g, self.tape_mm),
        ]
    }

    pub(super) fn club(&self) -> TrueClub {
        TrueClub {
            masses: self.masses(),
            cap_mm: self.cap_mm,
            shaft_mm: self.shaft_mm,
            bore_to_ground_mm: self.tip_to_ground_mm,
        }
    }
}
