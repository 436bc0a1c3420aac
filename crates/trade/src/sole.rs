//! Where a head's sole rests: what the Equipment Rules' measure of length adds to the length along the shaft axis.
//!
//! The rules measure woods and irons with the sole against a plane at 60° (Part 2, 2.1c). What that adds follows from three
//! figures of the head and the lie (`clubphysics::trim`). A maker seldom prints them; measure them, or the usual ones of the
//! kind stand in and are told as such, with what they leave open.

use crate::head::HeadModel;
use crate::kind::ClubKind;
use clubphysics::trim::beyond_axis_length_mm;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The contact figures of a head's sole.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Sole {
    /// How high the shaft axis lies above the measuring table at the heel, mm: about the hosel's outside radius.
    pub heel_radius_mm: f64,
    /// From the shaft axis to where the sole rests on the ground at its lie, toward the toe, mm.
    pub contact_mm: f64,
    /// How round the sole is from heel to toe: its radius, mm.
    pub radius_mm: f64,
    /// Whether any of the three was not measured, so that the usual figure of the kind stands for it.
    pub assumed: bool,
}

/// How far usual figures lie off, one standard deviation, mm: heel radius, contact, and the radius of the sole. From memory.
const USUAL_SD_MM: (f64, f64, f64) = (0.7, 8.0, 80.0);

impl Sole {
    /// The usual figures of a kind of head: a wood rests farther from its hosel than an iron. From memory, no source.
    #[must_use]
    pub const fn usual(kind: ClubKind) -> Self {
        let (heel_radius_mm, contact_mm, radius_mm) = match kind {
            ClubKind::Wood => (6.0, 50.0, 280.0),
            ClubKind::Hybrid => (6.0, 45.0, 250.0),
            ClubKind::Iron | ClubKind::Wedge | ClubKind::Putter => (6.5, 38.0, 200.0),
        };
        Self { heel_radius_mm, contact_mm, radius_mm, assumed: true }
    }

    /// The figures of a head model; the usual ones for those that it lacks.
    #[must_use]
    pub fn of(head: &HeadModel) -> Self {
        let usual = Self::usual(head.club_kind);
        Self {
            heel_radius_mm: head.heel_radius_mm.unwrap_or(usual.heel_radius_mm),
            contact_mm: head.sole_contact_mm.unwrap_or(usual.contact_mm),
            radius_mm: head.sole_radius_mm.unwrap_or(usual.radius_mm),
            assumed: [head.heel_radius_mm, head.sole_contact_mm, head.sole_radius_mm].contains(&None),
        }
    }

    /// What the rules' measure adds at a lie to the length along the axis to the cap, mm; negative where it takes away.
    #[must_use]
    pub fn beyond_mm(&self, lie_deg: f64) -> f64 {
        beyond_axis_length_mm(lie_deg, self.heel_radius_mm, self.contact_mm, self.radius_mm)
    }

    /// What assumed figures leave open of it: half the width of a 95 % band, mm; 0 where all three were measured.
    #[must_use]
    pub fn open_mm(&self, lie_deg: f64) -> f64 {
        if !self.assumed {
            return 0.0;
        }
        let here = self.beyond_mm(lie_deg);
        let (heel, contact, radius) = USUAL_SD_MM;
        let moved = [
            Self { heel_radius_mm: self.heel_radius_mm + heel, ..*self },
            Self { contact_mm: self.contact_mm + contact, ..*self },
            Self { radius_mm: self.radius_mm + radius, ..*self },
        ];
        1.96 * moved.iter().map(|sole| (sole.beyond_mm(lie_deg) - here).powi(2)).sum::<f64>().sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand, with the formula of the rules' measure: sin 6° = 0.104528, 1 − cos 6° = 0.005478, sin 60° = 0.866025, tan 60° =
    /// 1.732051: (50·0.104528 + 280·0.005478)/0.866025 − 6/1.732051 = 7.8060 − 3.4641.
    #[test]
    fn a_flat_wood_is_longer_by_the_rules_than_along_its_axis() {
        let sole = Sole::usual(ClubKind::Wood);
        assert!((sole.beyond_mm(54.0) - 4.342).abs() < 0.002, "{}", sole.beyond_mm(54.0));
        assert!(sole.beyond_mm(60.0) < 0.0);
        // Contact 8 mm: 0.9656, heel 0.7 mm: 0.4041, radius 80 mm: 0.5060 mm.
        assert!((sole.open_mm(54.0) - 1.96 * 1.1628).abs() < 0.01, "{}", sole.open_mm(54.0));
        assert_eq!(Sole { assumed: false, ..sole }.open_mm(54.0), 0.0);
    }
}
