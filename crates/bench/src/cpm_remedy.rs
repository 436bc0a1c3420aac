//! What can be done about a frequency that no tip cut brings to its aim any more, and what each does to the swing weight.

use crate::belief::Believed;
use crate::flex::Trimmed;
use crate::remedy::Progress;
use fact::{Fact, Told};
use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};
use trade::error::TradeError;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::places::Places;
use trade::plan::ClubPlan;
use trade::swing_weight::points_per_g;

/// A head of the same model that is this much lighter or heavier may be on the shelf; beyond it none is, g (common practice, no
/// source).
const HEAD_MOST_G: f64 = 6.0;
/// Less is not worth the work.
const LEAST_G: f64 = 0.5;
const LEAST_MM: f64 = 1.0;

fact::facts! {
    /// A way to bring a frequency nearer to its aim.
    pub enum CpmRemedy: "cpm_remedy" {
        /// A heavier head of the same model: slower.
        HeavierHead {
            /// How much heavier.
            by_g: f64,
            /// What that takes off the frequency.
            loss_cpm: f64,
            /// What it adds to the swing weight.
            by_points: f64,
        },
        /// A lighter head of the same model: faster.
        LighterHead {
            /// How much lighter.
            by_g: f64,
            /// What that adds to the frequency.
            gain_cpm: f64,
            /// What it adds to the swing weight, below zero.
            by_points: f64,
        },
        /// Off the butt, within the tolerance of length: faster.
        ShorterButt {
            /// How much.
            by_mm: f64,
            /// What that adds to the frequency.
            gain_cpm: f64,
            /// What it adds to the swing weight, below zero.
            by_points: f64,
        },
        /// Nothing small brings it there: another shaft.
        OtherShaft {
            /// How much must be made up.
            by_cpm: f64,
        },
    }
}

/// What can be done about a club that reads `off_cpm` more than it should, the least change first. First order from the mode that it
/// was forecast with; small against the band of the forecast.
pub(crate) fn remedies(
    believed: &Believed<'_>,
    club: &JobClub,
    now: &Trimmed,
    off_cpm: f64,
) -> Result<Vec<Told>, TradeError> {
    let Some(plan) = club.plan.as_ref() else { return Ok(Vec::new()) };
    let mut found = Vec::new();
    let progress = Progress::of(believed, club);
    let per_g = now.cpm.mean * now.mode.by_mass_g(now.mode.tip().offset_m);
    let by_g = (-off_cpm / per_g).clamp(-HEAD_MOST_G, HEAD_MOST_G);
    if !progress.glued && by_g.abs() >= LEAST_G {
        let arm_mm = head_arm_mm(believed, club, plan)?;
        let (change_cpm, by_points) = (by_g * per_g, by_g * points_per_g(arm_mm));
        found.push(if by_g > 0.0 {
            CpmRemedy::HeavierHead { by_g, loss_cpm: -change_cpm, by_points }.told()
        } else {
            CpmRemedy::LighterHead { by_g: -by_g, gain_cpm: change_cpm, by_points }.told()
        });
    }
    let per_mm = -now.cpm.mean * now.mode.by_free_mm;
    let by_mm = (-off_cpm / per_mm).min(club.target.tolerances.length_mm);
    if !progress.gripped && by_mm >= LEAST_MM {
        let by_points = shorter_points(plan, by_mm);
        found.push(CpmRemedy::ShorterButt { by_mm, gain_cpm: by_mm * per_mm, by_points }.told());
    }
    let most_cpm = (HEAD_MOST_G * per_g).abs();
    if off_cpm.abs() > most_cpm || found.is_empty() {
        found.push(CpmRemedy::OtherShaft { by_cpm: off_cpm.abs() }.told());
    }
    Ok(found)
}

/// Where the head's centre is from the outside of the grip's cap.
fn head_arm_mm(believed: &Believed<'_>, club: &JobClub, plan: &ClubPlan) -> Result<f64, TradeError> {
    let library = believed.assembly.library;
    let head = library.head(plan.part(PartKind::Head).map_or("", |part| &part.model))?;
    let cap_mm = library.grip(&club.target.grip_model)?.cap_mm;
    let places = Places::new(plan.cut_shaft_mm, plan.tip_to_ground_mm, head.bore_depth_mm);
    Ok(places.head_mm(head.offset_prior_mm().0) + cap_mm)
}

/// What a shorter butt does to the swing weight, points: every mass but the grip's comes nearer to the fulcrum, and the piece goes.
fn shorter_points(plan: &ClubPlan, by_mm: f64) -> f64 {
    let low_g: f64 = [Role::Head, Role::Ferrule, Role::TipWeight].iter().map(|role| plan.mass_g(*role)).sum();
    let piece_g = plan.cut_shaft_mass_g / plan.cut_shaft_mm * by_mm;
    let moved = -(low_g + plan.cut_shaft_mass_g) * by_mm / INCH_MM;
    let gone = piece_g * (FULCRUM_IN - by_mm / INCH_MM / 2.0);
    (moved + gone) / POINT_G_IN
}
