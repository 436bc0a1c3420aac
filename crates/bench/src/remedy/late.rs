//! What is left once the joint has cured: screws, lead, powder, weights in the butt, tape, a cut; and undoing.

use super::before_glue::Ahead;
use super::grips::{others_inside, pool_of};
use super::{Action, Case, Change, Deed, Remedy};
use crate::assembly::Assembly;
use estimation::OnClub;
use quantity::{INCH_MM, POINT_G_IN};
use trade::error::{TradeError, within};
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part_codes::PartCodes;
use trade::places::Places;
use trade::reading::What;
use trade::swing_weight::points_per_g;
use trade::wrap::Wraps;
use trade::wrap::tape_on;

/// Small weights are cut to half grams at the bench.
const STEP_G: f64 = 0.5;
/// Most that is added to a finished club before it is better taken apart, g (common practice, no source).
const MOST_ADDED_G: f64 = 8.0;
/// Where a weight in the butt sits: middle of a short plug from the end of the shaft, mm.
const PLUG_MM: f64 = 20.0;
/// Middle of powder and stopper above the tip, mm.
const POWDER_MM: f64 = 60.0;
/// A cut or an extension smaller than this is not worth the saw, mm (a judgement, no source).
const LEAST_CUT_MM: f64 = 0.5;
/// A finish that is as likely in as this needs nothing.
const GOOD_ENOUGH: f64 = 0.95;

/// Before the grip: besides another grip, whatever goes into the shaft or under the grip.
pub(crate) fn ungripped(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    if case.finish.chance >= GOOD_ENOUGH {
        return Ok(Vec::new());
    }
    let mut found = screws(case, None)?;
    found.extend(lead_tape(case)?);
    let powder_mm = case.plan.cut_shaft_mm - POWDER_MM + case.cap_mm()?;
    found.extend(added(case, Action::Powder, powder_mm, |mass_g| Deed::Powder { mass_g })?);
    found.extend(counterweight(case)?);
    found.extend(lower_hand(case)?);
    found.extend(length(case)?);
    found.extend(pull_head(case)?);
    // These leave the box of grips as it is.
    if let Some(others) = others_inside(case)? {
        for remedy in &mut found {
            remedy.set_inside = Some(others + remedy.chance_at_end);
        }
    }
    Ok(found)
}

/// With the grip on.
pub(crate) fn gripped(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    if case.finish.chance >= GOOD_ENOUGH {
        return Ok(Vec::new());
    }
    let mut found = screws(case, None)?;
    found.extend(lead_tape(case)?);
    found.extend(counterweight(case)?);
    found.extend(re_grip(case)?);
    found.extend(pull_head(case)?);
    Ok(found)
}

/// Another screw in the head. The first of the model's screws is the one that a head comes with.
pub(crate) fn screws(case: &Case<'_>, ahead: Option<&Ahead>) -> Result<Vec<Remedy>, TradeError> {
    let head = case.believed.assembly.library.head(&case.club.target.head_model)?;
    let Some(first) = head.screws.first() else { return Ok(Vec::new()) };
    let now_g = first.mass_g + case.plan.extras_g(Action::Screw);
    let arm_mm = case.head_arm_mm()?;
    head.screws
        .iter()
        .filter(|s| (s.mass_g - now_g).abs() > 0.05)
        .map(|screw| {
            let change = case.change(screw.mass_g - now_g, arm_mm)?;
            let chance = ahead.map(|a| a.chance(change.points));
            let deed = Deed::Screw { label: screw.label.clone(), mass_g: screw.mass_g };
            Ok(case.remedy(Action::Screw, None, change, chance, deed))
        })
        .collect()
}

fn lead_tape(case: &Case<'_>) -> Result<Option<Remedy>, TradeError> {
    let arm_mm = case.head_arm_mm()?;
    added(case, Action::LeadTape, arm_mm, |mass_g| Deed::LeadTape { mass_g })
}

fn counterweight(case: &Case<'_>) -> Result<Option<Remedy>, TradeError> {
    added(case, Action::Counterweight, PLUG_MM + case.cap_mm()?, |mass_g| Deed::Counterweight { mass_g })
}

/// A mass at a place that brings the finish nearest to its target, where that helps and is not too much.
fn added(
    case: &Case<'_>,
    action: Action,
    arm_mm: f64,
    deed: impl FnOnce(f64) -> Deed,
) -> Result<Option<Remedy>, TradeError> {
    let per_g = case.per_g(arm_mm)?;
    let grams = (-case.finish.deviation_points / per_g / STEP_G).round() * STEP_G;
    if !(STEP_G..=MOST_ADDED_G).contains(&grams) {
        return Ok(None);
    }
    Ok(Some(case.remedy(action, None, case.change(grams, arm_mm)?, None, deed(grams))))
}

/// One more strip under the lower hand: it makes the grip thicker there, so the player is asked.
fn lower_hand(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    let assembly = case.believed.assembly;
    let target = &case.club.target;
    let Some(code) = target.tape_in(assembly.shop) else { return Ok(Vec::new()) };
    let grip = assembly.library.grip(&target.grip_model)?;
    let shaft = assembly.library.shaft(&target.shaft_model)?;
    let strip = Wraps { base: 0, full: 0, lower_hand: 1 };
    let (mass_g, arm_mm, _) = tape_on(strip, assembly.library.tape(code)?, grip, shaft.butt_diameter_mm);
    let change = case.change(mass_g, arm_mm + grip.cap_mm)?;
    if change.points * case.finish.deviation_points >= 0.0 {
        return Ok(Vec::new());
    }
    Ok(vec![case.remedy(Action::LowerHandTape, None, change, None, Deed::LowerHandTape { mass_g })])
}

/// A little off the butt, or a little on, within what the tolerance leaves of the length as it is believed now.
fn length(case: &Case<'_>) -> Result<Option<Remedy>, TradeError> {
    let target = &case.club.target;
    let bare: Vec<Role> =
        vec![Role::Head, Role::Adapter, Role::Screw, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive];
    let finished: Vec<Role> = OnClub::finished().iter().collect();
    let expected = |what: What, on: &[Role]| case.believed.expected(&case.club.id, what, on);
    let (Some(mass), Some(length)) = (expected(What::TotalMass, &bare)?, expected(What::FinishedLength, &finished)?)
    else {
        return Ok(None);
    };
    if target.inertia_kg_cm2.is_some() {
        // A cut moves inertia and swing weight each in its own measure.
        return Ok(None);
    }
    let over_mm = length.value - target.length_to.to_cap_mm(target.length_mm, case.cap_mm()?);
    let room_mm = target.tolerances.length_mm;
    // What may come off and what may come on; none of it where the club is out already.
    let (off_mm, on_mm) = ((room_mm + over_mm).max(0.0), (room_mm - over_mm).max(0.0));
    let shaft = case.plan.cut_shaft_mass_g / case.plan.cut_shaft_mm;
    // A millimetre off moves everything toward the stop and takes its own mass off the butt, on the light side.
    let per_mm = -mass.value / INCH_MM / POINT_G_IN - shaft * points_per_g(case.cap_mm()?);
    let by_mm = (-case.finish.deviation_points / per_mm).clamp(-on_mm, off_mm);
    if by_mm.abs() < LEAST_CUT_MM {
        return Ok(None);
    }
    let change = Change { more_g: -by_mm * shaft, points: by_mm * per_mm, arm_mm: 0.0 };
    let (action, deed) = if by_mm > 0.0 {
        (Action::Cut, Deed::Cut { by_mm })
    } else {
        (Action::ButtExtension, Deed::ButtExtension { by_mm: -by_mm })
    };
    Ok(Some(case.remedy(action, None, change, None, deed)))
}

/// The grip off and the best of those at hand on: the old one is usually lost.
fn re_grip(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    let model = case.believed.assembly.library.grip(&case.club.target.grip_model)?;
    let now_g = case.plan.part(PartKind::Grip).map_or(model.mass_g, |p| p.mass_g);
    let pool = pool_of(case.believed, case.club, case.spares)?;
    let after = |takes_off: f64| (case.finish.deviation_points - takes_off).abs();
    let best = pool
        .grips
        .iter()
        .filter(|g| g.held_for.is_none())
        .min_by(|a, b| after(a.takes_off_points).total_cmp(&after(b.takes_off_points)));
    let Some(grip) = best.filter(|g| after(g.takes_off_points) + 0.05 < after(0.0)) else { return Ok(Vec::new()) };
    let change = case.change(grip.mass_g - now_g, model.centre_mm)?;
    let deed = Deed::ReGrip { part: grip.code.clone(), mass_g: grip.mass_g };
    let part = Some((PartKind::Grip, PartCodes::one(&grip.code)));
    Ok(vec![case.remedy(Action::ReGrip, part, change, None, deed)])
}

/// The last way: heat the hosel, pull the head, and glue it again with the weight that is needed. Only offered where
/// nothing that stays on the club would do.
fn pull_head(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    const WORTH_A_DAY: f64 = 0.5;
    if case.finish.chance >= WORTH_A_DAY {
        return Ok(Vec::new());
    }
    let assembly = case.believed.assembly;
    let arm_mm = case.plan.cut_shaft_mm + case.cap_mm()?;
    let now_g = case.plan.mass_g(Role::TipWeight);
    let per_g = case.per_g(arm_mm)?;
    let most_g = assembly.shop.tip_weight_cap_g;
    let wanted_g = (now_g - case.finish.deviation_points / per_g).clamp(0.0, most_g);
    let step_g = 1.0;
    let tip_g = (wanted_g / step_g).round() * step_g;
    if (tip_g - now_g).abs() < 0.5 {
        return Ok(Vec::new());
    }
    let change = case.change(tip_g - now_g, arm_mm)?;
    Ok(vec![case.remedy(Action::PullHead, None, change, None, Deed::PullHead { tip_g })])
}

/// Where something that is added sits: from the butt end of the bare shaft, mm.
///
/// # Errors
/// An action that adds nothing; a club without a plan; a model that the library lacks.
pub fn place_of(assembly: Assembly<'_>, club: &JobClub, action: Action) -> Result<f64, TradeError> {
    let plan = club
        .plan
        .as_ref()
        .ok_or_else(|| TradeError::refused(ExtraFault::NoPlan { number: club.target.number.clone() }))?;
    let head = assembly.library.head(&club.target.head_model)?;
    let head_mm = Places::of_plan(plan, head.bore_depth_mm).head_mm(head.offset_prior_mm().0);
    match action {
        Action::Screw | Action::LeadTape => Ok(head_mm),
        Action::Powder => Ok(plan.cut_shaft_mm - POWDER_MM),
        Action::Counterweight => Ok(PLUG_MM),
        other => Err(TradeError::refused(ExtraFault::NotAdded { action: other })),
    }
}

/// Refuses a mass that nobody adds.
///
/// # Errors
/// [`TradeError::Impossible`].
pub fn check_extra(action: Action, mass_g: f64) -> Result<(), TradeError> {
    let low = if action == Action::Screw { -30.0 } else { 0.1 };
    within("mass_g", mass_g, low, 60.0, "g").map(|_| ())
}

fact::facts! {
    /// What is refused of something that is added to a finished plan.
    pub(crate) enum ExtraFault: "extra_fault" {
        NoPlan { number: String },
        NotAdded { action: Action },
    }
}
