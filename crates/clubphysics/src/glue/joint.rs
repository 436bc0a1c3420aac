//! The gap, and what the swing asks of it.

use crate::advice::Advice;
use std::f64::consts::PI;

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::mix::BEYOND_RING_G;
use super::remark::{GlueRemark, PullAssumption, PullReserve};
use crate::{
    PhysicsError, check, plausible,
    real::{Dual, Real},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// Gap at which bond lines are strongest, radial, in millimetres. Source: adhesives-industry guide §3.4.3 and lap-joint
/// studies: near 0.1–0.2 mm.
const BEST_GAP_MM: std::ops::RangeInclusive<f64> = 0.1..=0.2;
/// Cubic millimetres in a millilitre.
const MM3_IN_ML: f64 = 1000.0;

/// Tip and bore.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JointInput {
    /// Diameter of the bore in millimetres.
    pub bore_mm: f64,
    /// Standard deviation of `bore_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bore_mm_sd: Option<f64>,
    /// Diameter of the prepared tip in millimetres.
    pub tip_mm: f64,
    /// Standard deviation of `tip_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tip_mm_sd: Option<f64>,
    /// Depth of tip inside the bore in millimetres.
    pub depth_mm: f64,
    /// Standard deviation of `depth_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth_mm_sd: Option<f64>,
    /// Gap under the tip that fills too, in millimetres.
    #[serde(default)]
    pub bottom_gap_mm: f64,
    /// Standard deviation of `bottom_gap_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bottom_gap_mm_sd: Option<f64>,
    /// Density of the mixed adhesive in g/ml.
    pub density_g_ml: f64,
    /// Standard deviation of `density_g_ml`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub density_g_ml_sd: Option<f64>,
    /// What the joint takes beside the ring of the gap, in grams: inside the tip and around a tip weight, under the
    /// ferrule, squeezed out; 1.5 where left out (common practice, no source: joints take 1 to 3 g all told). Weigh a few
    /// clubs before and after gluing to know your own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beyond_ring_g: Option<f64>,
    /// Standard deviation of `beyond_ring_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beyond_ring_g_sd: Option<f64>,
}

/// The gap and what fills it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct JointOutput {
    /// Gap between tip and bore to each side, half the difference of the diameters, in millimetres.
    pub gap_mm: f64,
    /// Standard deviation of `gap_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_mm_sd: Option<f64>,
    /// Volume of the ring between tip and bore, and under the tip, in millilitres.
    pub volume_ml: f64,
    /// Standard deviation of `volume_ml`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub volume_ml_sd: Option<f64>,
    /// Adhesive that fills this ring, in grams.
    pub ring_g: f64,
    /// Standard deviation of `ring_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ring_g_sd: Option<f64>,
    /// What the joint takes beside the ring, in grams.
    pub beyond_ring_g: f64,
    /// Standard deviation of `beyond_ring_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beyond_ring_g_sd: Option<f64>,
    /// What the joint takes all told, in grams: this is what to mix for.
    pub adhesive_a_joint_g: f64,
    /// Standard deviation of `adhesive_a_joint_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g_sd: Option<f64>,
}

/// A swing.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PullInput {
    /// Mass beyond the joint, head and tip weight, in grams.
    pub head_mass_g: f64,
    /// Standard deviation of `head_mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head_mass_g_sd: Option<f64>,
    /// How fast the head moves along its path, in m/s; the pull grows with its square.
    pub head_speed_m_s: f64,
    /// Standard deviation of `head_speed_m_s`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head_speed_m_s_sd: Option<f64>,
    /// Radius of the head's path in metres.
    pub radius_m: f64,
    /// Standard deviation of `radius_m`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius_m_sd: Option<f64>,
    /// Shear strength of the adhesive on the product's sheet, in MPa.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shear_strength_mpa: Option<f64>,
    /// Standard deviation of `shear_strength_mpa`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shear_strength_mpa_sd: Option<f64>,
}

/// Force and stress.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PullOutput {
    /// Pull along the shaft in newtons.
    pub pull_n: f64,
    /// Standard deviation of `pull_n`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pull_n_sd: Option<f64>,
    /// Mean shear stress on the tip's face in MPa; needs `joint`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shear_mpa: Option<f64>,
    /// Standard deviation of `shear_mpa`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shear_mpa_sd: Option<f64>,
    /// How many times the strength on the sheet exceeds the stress of a slow straight pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength_over_stress: Option<f64>,
    /// Standard deviation of `strength_over_stress`; left out where that of the strength is not given, which is the
    /// largest by far.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength_over_stress_sd: Option<f64>,
    /// The same in words, with what it leaves out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength_over_stress_in_words: Option<PullReserve>,
    /// What the figures take for granted.
    pub assumptions: Vec<PullAssumption>,
}

/// Volume of the gap between a tip and its bore, and under the tip: `π/4·((D² − d²)·depth + D²·bottom)`.
///
/// # Examples
///
/// ```
/// // By hand: π/4·(9.65² − 9.40²)·32 = 119.69 mm³.
/// let volume_mm3: f64 = clubphysics::glue::gap_volume_mm3(9.65, 9.40, 32.0, 0.0);
/// assert!((volume_mm3 - 119.69).abs() < 0.005);
/// ```
#[must_use]
pub fn gap_volume_mm3<T: Real>(bore_mm: T, tip_mm: T, depth_mm: T, bottom_gap_mm: T) -> T {
    ((bore_mm.squared() - tip_mm.squared()) * depth_mm + bore_mm.squared() * bottom_gap_mm) * (PI / 4.0)
}

/// Pull on the head of a swing: `m·v²/r`.
///
/// # Examples
///
/// ```
/// // Published worked value: 0.320 kg at 44.704 m/s on 2 m pulls with 319.75 N.
/// assert!((clubphysics::glue::pull_n(0.320_f64, 44.704, 2.0) - 319.75).abs() < 0.01);
/// ```
#[must_use]
pub fn pull_n<T: Real>(head_mass_kg: T, head_speed_m_s: T, radius_m: T) -> T {
    head_mass_kg * head_speed_m_s.squared() / radius_m
}

/// A joint among the inputs.
#[derive(Clone, Copy)]
pub(super) struct Joint {
    vars: [Var; 5],
    beyond_ring: Var,
}

results! {
    /// A joint and what fills it.
    pub(super) struct Filled {
        gap_mm,
        /// Of the ring.
        volume_ml,
        ring_g,
        beyond_ring_g,
        all_told_g,
    }
}

impl Joint {
    pub fn read(joint: &JointInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        const BORE_MAX_MM: f64 = 25.0;
        plausible::TIP_DIAMETER_MM.check("joint.tip_mm", joint.tip_mm)?;
        let advice = Advice::TipDoesNotFit;
        check::above("joint.bore_mm", joint.bore_mm, joint.tip_mm, "mm", advice)?;
        check::at_most("joint.bore_mm", joint.bore_mm, BORE_MAX_MM, "mm", Advice::DiameterInMm)?;
        plausible::BORE_DEPTH_MM.check("joint.depth_mm", joint.depth_mm)?;
        plausible::CAP_MM.check("joint.bottom_gap_mm", joint.bottom_gap_mm)?;
        plausible::ADHESIVE_DENSITY_G_ML.check("joint.density_g_ml", joint.density_g_ml)?;
        let beyond_ring_g = joint.beyond_ring_g.unwrap_or(BEYOND_RING_G);
        plausible::JOINT_ADHESIVE_G.check("joint.beyond_ring_g", beyond_ring_g)?;
        let vars = [
            inputs.add("joint.bore_mm", joint.bore_mm, joint.bore_mm_sd)?,
            inputs.add("joint.tip_mm", joint.tip_mm, joint.tip_mm_sd)?,
            inputs.add("joint.depth_mm", joint.depth_mm, joint.depth_mm_sd)?,
            inputs.add("joint.bottom_gap_mm", joint.bottom_gap_mm, joint.bottom_gap_mm_sd)?,
            inputs.add("joint.density_g_ml", joint.density_g_ml, joint.density_g_ml_sd)?,
        ];
        let beyond_ring = inputs.add("joint.beyond_ring_g", beyond_ring_g, joint.beyond_ring_g_sd)?;
        Ok(Self { vars, beyond_ring })
    }

    pub fn results(self, x: &Point<'_, Dual>) -> Filled<Dual> {
        let [bore_mm, tip_mm, depth_mm, bottom_gap_mm, density_g_ml] = self.vars.map(|var| x[var]);
        let volume_ml = gap_volume_mm3(bore_mm, tip_mm, depth_mm, bottom_gap_mm) / MM3_IN_ML;
        let (ring_g, beyond_ring_g) = (volume_ml * density_g_ml, x[self.beyond_ring]);
        let gap_mm = (bore_mm - tip_mm) / 2.0;
        Filled { gap_mm, volume_ml, ring_g, beyond_ring_g, all_told_g: ring_g + beyond_ring_g }
    }

    /// Face of the tip that is glued, in square millimetres.
    pub fn face_mm2(self, x: &Point<'_, Dual>) -> Dual {
        let [_, tip_mm, depth_mm, ..] = self.vars.map(|var| x[var]);
        tip_mm * depth_mm * PI
    }

    pub fn output(filled: Filled<Estimate>) -> JointOutput {
        JointOutput {
            gap_mm: filled.gap_mm.value,
            gap_mm_sd: filled.gap_mm.sd,
            volume_ml: filled.volume_ml.value,
            volume_ml_sd: filled.volume_ml.sd,
            ring_g: filled.ring_g.value,
            ring_g_sd: filled.ring_g.sd,
            beyond_ring_g: filled.beyond_ring_g.value,
            beyond_ring_g_sd: filled.beyond_ring_g.sd,
            adhesive_a_joint_g: filled.all_told_g.value,
            adhesive_a_joint_g_sd: filled.all_told_g.sd,
        }
    }

    pub fn warnings(joint: &JointOutput) -> Option<GlueRemark> {
        let (gap_mm, low_mm, high_mm) = (joint.gap_mm, *BEST_GAP_MM.start(), *BEST_GAP_MM.end());
        if gap_mm < low_mm {
            Some(GlueRemark::GapThin { gap_mm, low_mm, high_mm })
        } else if gap_mm > high_mm {
            Some(GlueRemark::GapWide { gap_mm })
        } else {
            None
        }
    }
}

/// A swing among the inputs.
#[derive(Clone, Copy)]
pub(super) struct Pull {
    vars: [Var; 3],
    strength: Option<Var>,
}

results! {
    pub(super) struct Force { pull_n }
}

results! {
    pub(super) struct Stress { shear_mpa }
}

results! {
    pub(super) struct Reserve { strength_over_stress }
}

/// The pull, the mean shear stress where there is a joint, and how many times the strength exceeds it where there is
/// stress.
pub(super) type Pulled<N> = (Force<N>, Option<Stress<N>>, Option<Reserve<N>>);

impl Pull {
    pub fn read(pull: &PullInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        plausible::HEAD_MASS_G.check("pull.head_mass_g", pull.head_mass_g)?;
        plausible::HEAD_SPEED_M_S.check("pull.head_speed_m_s", pull.head_speed_m_s)?;
        plausible::SWING_RADIUS_M.check("pull.radius_m", pull.radius_m)?;
        let field = "pull.shear_strength_mpa";
        let strength = match (pull.shear_strength_mpa, pull.shear_strength_mpa_sd) {
            (Some(mpa), sd) => Some(inputs.add(field, plausible::SHEAR_STRENGTH_MPA.check(field, mpa)?, sd)?),
            (None, Some(_)) => {
                let advice = Advice::DeviationApart;
                return Err(PhysicsError::Missing { field: field.to_owned(), advice: Box::new(advice) });
            }
            (None, None) => None,
        };
        let vars = [
            inputs.add("pull.head_mass_g", pull.head_mass_g, pull.head_mass_g_sd)?,
            inputs.add("pull.head_speed_m_s", pull.head_speed_m_s, pull.head_speed_m_s_sd)?,
            inputs.add("pull.radius_m", pull.radius_m, pull.radius_m_sd)?,
        ];
        Ok(Self { vars, strength })
    }

    pub fn results(self, x: &Point<'_, Dual>, joint: Option<Joint>) -> Pulled<Dual> {
        let [mass_g, speed_m_s, radius_m] = self.vars.map(|var| x[var]);
        let pull = pull_n(mass_g / 1000.0, speed_m_s, radius_m);
        let shear = joint.map(|joint| pull / joint.face_mm2(x));
        let reserve =
            self.strength.zip(shear).filter(|(_, shear)| shear.value > 0.0).map(|(var, shear)| x[var] / shear);
        let stress = shear.map(|shear_mpa| Stress { shear_mpa });
        let reserve = reserve.map(|strength_over_stress| Reserve { strength_over_stress });
        (Force { pull_n: pull }, stress, reserve)
    }

    pub fn output(input: &PullInput, (force, stress, reserve): Pulled<Estimate>) -> PullOutput {
        let shear_mpa = stress.map(|stress| stress.shear_mpa);
        let reserve = reserve.map(|reserve| reserve.strength_over_stress);
        PullOutput {
            pull_n: force.pull_n.value,
            pull_n_sd: force.pull_n.sd,
            shear_mpa: shear_mpa.map(|stress| stress.value),
            shear_mpa_sd: shear_mpa.and_then(|stress| stress.sd),
            strength_over_stress: reserve.map(|reserve| reserve.value),
            // The ± of a diameter alone would read as if the joint were known to a thousandth.
            strength_over_stress_sd: input.shear_strength_mpa_sd.and(reserve).and_then(|reserve| reserve.sd),
            strength_over_stress_in_words: reserve.map(|reserve| reserve_of(reserve.value)),
            assumptions: vec![PullAssumption::OnACircle, PullAssumption::StraightAndEven, PullAssumption::NotCounted],
        }
    }
}

/// A reserve as a person should read it: rounded down to one digit.
fn reserve_of(times: f64) -> PullReserve {
    if times < 1.0 {
        return PullReserve::Exceeded;
    }
    let digit = 10f64.powf(times.log10().floor());
    PullReserve::Times { times: (times / digit).floor() * digit }
}
