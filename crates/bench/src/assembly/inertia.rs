//! Inertia about the butt: of a shaft and of rods about their own centres, and what a club that is to have an inertia is aimed at.

use super::{Assembly, inch};
use clubphysics::trim::Shaft;
use quantity::INCH_MM;
use trade::error::TradeError;
use trade::job::JobClub;
use trade::places::Places;
use trade::plan::ClubPlan;
use trade::swing_weight::points_per_g;

/// Kilograms times square centimetres in a gram times a square inch.
pub(crate) const KG_CM2_PER_G_IN2: f64 = INCH_MM * INCH_MM * 1e-5;
/// Kilograms times square centimetres in a gram times a square millimetre.
const KG_CM2_PER_G_MM2: f64 = 1e-5;

/// What a club is aimed at by its inertia.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct InertiaAim {
    /// What the sheet asks.
    pub target_kg_cm2: f64,
    /// Points of swing weight of so much mass at the head as makes one kg·cm².
    pub points_per_kg_cm2: f64,
}

impl Assembly<'_> {
    /// The aim of a club whose sheet asks an inertia; none for all others.
    ///
    /// # Errors
    /// A model that the library lacks.
    pub(crate) fn inertia_aim(&self, club: &JobClub) -> Result<Option<InertiaAim>, TradeError> {
        let (Some(target_kg_cm2), Some(plan)) = (club.target.inertia_kg_cm2, &club.plan) else { return Ok(None) };
        let head = self.library.head(&club.target.head_model)?;
        let places = Places::of_plan(plan, head.bore_depth_mm);
        let cap_mm = self.library.grip(&club.target.grip_model)?.cap_mm;
        let head_mm = places.head_mm(head.offset_prior_mm().0) + cap_mm;
        let points_per_kg_cm2 = points_per_g(head_mm) / (head_mm * head_mm * KG_CM2_PER_G_MM2);
        Ok(Some(InertiaAim { target_kg_cm2, points_per_kg_cm2 }))
    }

    /// What a gram at an arm from the stop does to what the club is aimed at, in points.
    ///
    /// # Errors
    /// A model that the library lacks.
    pub(crate) fn effect_per_g(&self, club: &JobClub, arm_mm: f64) -> Result<f64, TradeError> {
        Ok(match self.inertia_aim(club)? {
            Some(aim) => arm_mm * arm_mm * KG_CM2_PER_G_MM2 * aim.points_per_kg_cm2,
            None => points_per_g(arm_mm),
        })
    }
}

/// A rod's inertia about its middle.
pub(super) fn rod_g_in2(mass_g: f64, length_mm: f64) -> f64 {
    mass_g * inch(length_mm).powi(2) / 12.0
}

/// A cut shaft's inertia about its own centre, by the straight mass line that its mass, length and balance point give; as an even
/// rod where they give none.
pub(super) fn shaft_inertia_g_in2(plan: &ClubPlan) -> f64 {
    let (mass_g, length_mm) = (plan.cut_shaft_mass_g, plan.cut_shaft_mm);
    let shaft = Shaft { mass_g, length_mm, balance_point_mm: plan.cut_shaft_balance_point_mm };
    let own_g_mm2 = shaft.mass_line().map(|line| {
        let [mass_g, first, second] = line.part(0.0, length_mm).moments();
        second - first * first / mass_g
    });
    own_g_mm2.map_or_else(|_| rod_g_in2(mass_g, length_mm), |own| own / (INCH_MM * INCH_MM))
}

pub(super) fn g_in2(kg_cm2: f64) -> f64 {
    kg_cm2 / KG_CM2_PER_G_IN2
}
