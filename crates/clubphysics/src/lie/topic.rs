//! The lie topic.

use crate::advice::Advice;
use serde_json::{Value, json};

use super::{
    AimInput, AimOutput, BendInput, BendOutput, BendRemark, BendStep, BounceOutput, LengthInput, LengthOutput,
    LieInput, LieOutput,
    kernel::{aim_error_deg, lie_at_length_deg},
};
use crate::{
    Bound, PhysicsError, check, plausible,
    real::{Dual, Real},
    topic::{Topic, described, through_json},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// Most to bend between two measurements where the shop states nothing. Common practice, no source.
const STEP_DEG: f64 = 1.0;
/// Beyond this many steps the wanted angle is a slip of the keys.
const STEPS_MAX: f64 = 100.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "lie",
    example,
    input: described::<LieInput>,
    output: described::<LieOutput>,
    run: |input| through_json(&input, lie),
};

fn example() -> Value {
    json!({
        "length": { "lie_deg": 60.0, "lie_deg_sd": 0.2, "length_mm": 952.5, "new_length_mm": 965.2, "hands_below_butt_mm": 101.6 },
        "aim": { "loft_deg": 46.0, "lie_error_deg": 1.0, "lie_error_deg_sd": 0.25, "distance_m": 110.0 },
        "bend": { "lie_deg": 61.0, "wanted_lie_deg": 63.0, "loft_deg": 30.0, "wanted_loft_deg": 29.0, "bounce_deg": 5.0, "limit_deg": 2.0 }
    })
}

/// Lie, loft and their bending.
///
/// Accuracy: rounding of a few trigonometric functions; values in `tests/val_lie.rs`.
///
/// # Errors
///
/// [`PhysicsError`] where nothing is asked, an angle or length is impossible, the hands cannot reach their height, or a
/// bend goes beyond the maker's limit without `allow_beyond_limit`.
///
/// # Examples
///
/// ```
/// use clubphysics::lie::{AimInput, LieInput, lie};
/// // By hand: atan(tan 46° · sin 1°) = 1.0354°, and at 110 m 110·tan 46°·sin 1° = 1.988 m.
/// let aim = AimInput { loft_deg: 46.0, lie_error_deg: 1.0, distance_m: Some(110.0), ..AimInput::default() };
/// let aim = lie(&LieInput { aim: Some(aim), ..LieInput::default() })?.aim.unwrap();
/// assert!((aim.aim_error_deg - 1.0354).abs() < 5e-5 && (aim.offset_m.unwrap() - 1.988).abs() < 5e-4);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn lie(input: &LieInput) -> Result<LieOutput, PhysicsError> {
    if input.length.is_none() && input.aim.is_none() && input.bend.is_none() {
        return Err(PhysicsError::Missing { field: "length".to_owned(), advice: Box::new(Advice::AskOfLie) });
    }
    let mut inputs = Inputs::default();
    let length = input.length.as_ref().map(|length| read_length(length, &mut inputs)).transpose()?;
    let aim = input.aim.as_ref().map(|aim| read_aim(aim, &mut inputs)).transpose()?;
    inputs.correlate_named(&input.correlations)?;
    let (turned, aimed) = inputs.results(|x| {
        let turned = length.zip(input.length.as_ref()).map(|(vars, length)| of_length(x, vars, length));
        let aimed = aim.zip(input.aim.as_ref()).map(|(vars, aim)| {
            let [loft_deg, error_deg] = vars.map(|var| x[var]);
            let error_deg = aim_error_deg(loft_deg, error_deg);
            let offset_m = (error_deg * 1f64.to_radians()).tan() * aim.distance_m.unwrap_or(0.0);
            Aimed { error_deg, offset_m }
        });
        Ok((turned.transpose()?, aimed))
    })?;
    Ok(LieOutput {
        length: turned.map(length_output),
        aim: input.aim.as_ref().zip(aimed).map(|(aim, aimed)| AimOutput {
            aim_error_deg: aimed.error_deg.value,
            aim_error_deg_sd: aimed.error_deg.sd,
            offset_m: aim.distance_m.map(|_| aimed.offset_m.value),
            offset_m_sd: aim.distance_m.and(aimed.offset_m.sd),
        }),
        bend: input.bend.as_ref().map(bend).transpose()?,
    })
}

/// An angle of lie.
fn lie_angle(field: &str, angle_deg: f64) -> Result<f64, PhysicsError> {
    const UPRIGHT_DEG: f64 = 90.0;
    check::positive(field, angle_deg, "deg")?;
    check::below(field, angle_deg, UPRIGHT_DEG, "deg", Advice::LieIsToTheGround)
}

/// An angle of loft: a putter or a driver may have next to none, never a right angle.
fn loft_angle(field: &str, angle_deg: f64) -> Result<f64, PhysicsError> {
    const LOFT_MIN_DEG: f64 = -10.0;
    const LOFT_MAX_DEG: f64 = 85.0;
    let advice = Advice::LoftFromVertical;
    check::at_least(field, angle_deg, LOFT_MIN_DEG, "deg", advice.clone())?;
    check::at_most(field, angle_deg, LOFT_MAX_DEG, "deg", advice)
}

fn read_length(length: &LengthInput, inputs: &mut Inputs) -> Result<[Var; 3], PhysicsError> {
    lie_angle("length.lie_deg", length.lie_deg)?;
    for (field, value_mm) in [("length.length_mm", length.length_mm), ("length.new_length_mm", length.new_length_mm)] {
        plausible::CLUB_LENGTH_MM.check(field, value_mm)?;
    }
    check::not_negative("length.hands_below_butt_mm", length.hands_below_butt_mm, "mm")?;
    let shorter_mm = length.length_mm.min(length.new_length_mm);
    let advice = Advice::HandsOnClub;
    check::below("length.hands_below_butt_mm", length.hands_below_butt_mm, shorter_mm, "mm", advice)?;
    Ok([
        inputs.add("length.lie_deg", length.lie_deg, length.lie_deg_sd)?,
        inputs.add("length.length_mm", length.length_mm, length.length_mm_sd)?,
        inputs.add("length.new_length_mm", length.new_length_mm, length.new_length_mm_sd)?,
    ])
}

results! {
    /// The lie at the new length.
    struct Turned {
        lie_deg,
        change_deg,
        first_order_change_deg,
    }
}

results! {
    /// Where a wrong lie points; the offset is nothing where no distance is given.
    struct Aimed { error_deg, offset_m }
}

fn of_length(x: &Point<'_, Dual>, vars: [Var; 3], length: &LengthInput) -> Result<Turned<Dual>, PhysicsError> {
    let [lie_deg, length_mm, new_length_mm] = vars.map(|var| x[var]);
    let hands_mm = length.hands_below_butt_mm;
    let height_mm = (length_mm.value - hands_mm) * lie_deg.value.to_radians().sin();
    let advice = Advice::ClubCannotReach;
    check::above("length.new_length_mm", new_length_mm.value, height_mm + hands_mm, "mm", advice)?;
    let new_deg = lie_at_length_deg(lie_deg, length_mm, new_length_mm, Dual::fixed(hands_mm));
    let relative = (new_length_mm - length_mm) / (length_mm - hands_mm);
    let first_order_deg = -(lie_deg * 1f64.to_radians()).tan() * relative * 1f64.to_degrees();
    Ok(Turned { lie_deg: new_deg, change_deg: new_deg - lie_deg, first_order_change_deg: first_order_deg })
}

fn length_output(turned: Turned<Estimate>) -> LengthOutput {
    LengthOutput {
        lie_deg: turned.lie_deg.value,
        lie_deg_sd: turned.lie_deg.sd,
        change_deg: turned.change_deg.value,
        change_deg_sd: turned.change_deg.sd,
        first_order_change_deg: turned.first_order_change_deg.value,
        first_order_change_deg_sd: turned.first_order_change_deg.sd,
    }
}

fn read_aim(aim: &AimInput, inputs: &mut Inputs) -> Result<[Var; 2], PhysicsError> {
    const LIE_ERROR_MAX_DEG: f64 = 45.0;
    loft_angle("aim.loft_deg", aim.loft_deg)?;
    check::finite("aim.lie_error_deg", aim.lie_error_deg, "deg")?;
    let advice = Advice::ErrorNotLie;
    check::at_most("aim.lie_error_deg", aim.lie_error_deg, LIE_ERROR_MAX_DEG, "deg", advice.clone())?;
    check::at_least("aim.lie_error_deg", aim.lie_error_deg, -LIE_ERROR_MAX_DEG, "deg", advice)?;
    if let Some(distance_m) = aim.distance_m {
        check::not_negative("aim.distance_m", distance_m, "m")?;
    }
    Ok([
        inputs.add("aim.loft_deg", aim.loft_deg, aim.loft_deg_sd)?,
        inputs.add("aim.lie_error_deg", aim.lie_error_deg, aim.lie_error_deg_sd)?,
    ])
}

/// Change from the measured to the wanted angle. An angle that is only measured stays.
fn change(field: &str, now_deg: Option<f64>, wanted_deg: Option<f64>) -> Result<f64, PhysicsError> {
    match (now_deg, wanted_deg) {
        (Some(now_deg), Some(wanted_deg)) => Ok(wanted_deg - now_deg),
        (None, Some(_)) => {
            Err(PhysicsError::Missing { field: field.to_owned(), advice: Box::new(Advice::MeasuredBesideWanted) })
        }
        (_, None) => Ok(0.0),
    }
}

fn bend(bend: &BendInput) -> Result<BendOutput, PhysicsError> {
    for (field, angle_deg) in [("bend.lie_deg", bend.lie_deg), ("bend.wanted_lie_deg", bend.wanted_lie_deg)] {
        angle_deg.map(|angle_deg| lie_angle(field, angle_deg)).transpose()?;
    }
    for (field, angle_deg) in [("bend.loft_deg", bend.loft_deg), ("bend.wanted_loft_deg", bend.wanted_loft_deg)] {
        angle_deg.map(|angle_deg| loft_angle(field, angle_deg)).transpose()?;
    }
    bend.bounce_deg.map(|bounce_deg| check::finite("bend.bounce_deg", bounce_deg, "deg")).transpose()?;
    check::not_negative("bend.limit_deg", bend.limit_deg, "deg")?;
    check::finite("bend.already_bent_lie_deg", bend.already_bent_lie_deg, "deg")?;
    check::finite("bend.already_bent_loft_deg", bend.already_bent_loft_deg, "deg")?;
    let step_deg = check::positive("bend.step_deg", bend.step_deg.unwrap_or(STEP_DEG), "deg")?;
    if bend.wanted_lie_deg.is_none() && bend.wanted_loft_deg.is_none() {
        return Err(PhysicsError::Missing {
            field: "bend.wanted_lie_deg".to_owned(),
            advice: Box::new(Advice::WantedLieOrLoft),
        });
    }
    let lie_change_deg = change("bend.lie_deg", bend.lie_deg, bend.wanted_lie_deg)?;
    let loft_change_deg = change("bend.loft_deg", bend.loft_deg, bend.wanted_loft_deg)?;
    let lie_total_deg = lie_change_deg + bend.already_bent_lie_deg;
    let loft_total_deg = loft_change_deg + bend.already_bent_loft_deg;
    let furthest_deg = lie_total_deg.abs().max(loft_total_deg.abs());
    let left_to_limit_deg = bend.limit_deg - furthest_deg;
    let mut warnings = Vec::new();
    if left_to_limit_deg < 0.0 {
        if !bend.allow_beyond_limit {
            let field = if lie_total_deg.abs() >= loft_total_deg.abs() {
                "bend.wanted_lie_deg"
            } else {
                "bend.wanted_loft_deg"
            };
            return Err(PhysicsError::OutOfRange {
                field: format!("bend in all, by {field}"),
                value: furthest_deg,
                bound: Bound::AtMost,
                limit: bend.limit_deg,
                unit: "deg",
                advice: Box::new(Advice::MakersLimitHolds),
            });
        }
        warnings.push(BendRemark::BeyondLimit { by_deg: -left_to_limit_deg, limit_deg: bend.limit_deg });
    }
    Ok(BendOutput {
        lie_change_deg,
        loft_change_deg,
        left_to_limit_deg,
        bounce: bend
            .bounce_deg
            .map(|bounce_deg| BounceOutput { bounce_deg: bounce_deg + loft_change_deg, change_deg: loft_change_deg }),
        steps: steps(bend, lie_change_deg, loft_change_deg, step_deg)?,
        warnings,
    })
}

/// Even steps, none greater than `step_deg`, the last one at the wanted angles.
fn steps(bend: &BendInput, lie_deg: f64, loft_deg: f64, step_deg: f64) -> Result<Vec<BendStep>, PhysicsError> {
    // 2° in steps of 1° are two steps, also where the subtraction left a rounding.
    const ROUNDING: f64 = 1e-9;
    let count = (lie_deg.abs().max(loft_deg.abs()) / step_deg - ROUNDING).ceil().max(0.0);
    check::at_most("bending steps", count, STEPS_MAX, "", Advice::CheckAnglesAndStep)?;
    let at = |now_deg: Option<f64>, change_deg: f64, share: f64| now_deg.map(|now_deg| now_deg + change_deg * share);
    let step = |i: u32| BendStep {
        lie_deg: at(bend.lie_deg, lie_deg, f64::from(i) / count),
        loft_deg: at(bend.loft_deg, loft_deg, f64::from(i) / count),
    };
    Ok((1..=count as u32).map(step).collect())
}
