//! The inertia topic.

use crate::advice::{Advice, Clash};
use serde_json::{Value, json};

use super::{
    InertiaInput, InertiaOutput, InertiaPart, PendulumInput, PendulumOutput,
    kernel::{GRAVITY_M_S2, amplitude_factor, inertia as about, pendulum_inertia_kg_m2, pendulum_period_s},
    series::Series,
};
use crate::{
    Bound, PhysicsError, check,
    plausible::{self, parts_in_another_unit},
    real::{Dual, Real},
    topic::{Topic, described, through_json},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// Grams times square millimetres in a kg·cm².
const G_MM2_IN_KG_CM2: f64 = 1e5;
/// kg·cm² in a kg·m².
const KG_CM2_IN_KG_M2: f64 = 1e4;
/// No club is swung wider to time it.
const AMPLITUDE_MAX_DEG: f64 = 90.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "inertia",
    example,
    input: described::<InertiaInput>,
    output: described::<InertiaOutput>,
    run: |input| through_json(&input, inertia),
};

fn example() -> Value {
    json!({
        "parts": [
            { "name": "head", "mass_g": 256.0, "mass_g_sd": 0.1, "position_mm": 950.0, "position_mm_sd": 2.0 },
            { "name": "shaft", "mass_g": 120.0, "position_mm": 467.5, "length_mm": 935.0 },
            { "name": "grip", "mass_g": 50.0, "position_mm": 105.0, "length_mm": 270.0 }
        ],
        "pendulum": {
            "period_s": 1.8805, "period_s_sd": 0.0005, "total_mass_g": 426.0, "total_mass_g_sd": 0.1,
            "balance_point_mm": 714.9, "balance_point_mm_sd": 0.5, "amplitude_deg": 8.0
        },
        "series": {
            "reference_length_mm": 950.0, "lengths_mm": [975.4, 962.7, 950.0, 937.3, 924.6],
            "head_mass_g": 256.0, "head_position_mm": 950.0,
            "shaft_mass_g": 120.0, "shaft_length_mm": 935.0, "shaft_position_mm": 467.5,
            "grip_mass_g": 50.0, "grip_length_mm": 270.0, "grip_position_mm": 105.0
        }
    })
}

/// Inertia of a club.
///
/// Accuracy: 1e-9 relative against exact fractions (`tests/val_inertia.rs`); standard deviations are first order,
/// checked by simulation (`tests/val_topics_by_simulation.rs`).
///
/// # Errors
///
/// [`PhysicsError`] where nothing is asked for, or a figure is impossible: a pivot at the balance point, swings of more
/// than 90°, a length that leaves no shaft.
///
/// # Examples
///
/// ```
/// use clubphysics::inertia::{InertiaInput, InertiaPart, inertia};
/// // An even rod about its end has mL²/3: 120 · 600² / 3 g·mm² are 144 kg·cm².
/// let rod = InertiaPart { mass_g: 120.0, position_mm: 300.0, length_mm: Some(600.0), ..InertiaPart::default() };
/// let club = inertia(&InertiaInput { parts: Some(vec![rod]), ..InertiaInput::default() })?;
/// assert!((club.inertia_about_butt_kg_cm2.unwrap() - 144.0).abs() < 1e-9);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn inertia(input: &InertiaInput) -> Result<InertiaOutput, PhysicsError> {
    check::finite("axis_mm", input.axis_mm, "mm")?;
    let gravity = check::positive("gravity_m_s2", input.gravity_m_s2.unwrap_or(GRAVITY_M_S2), "m/s²")?;
    if input.parts.is_none() && input.pendulum.is_none() && input.series.is_none() {
        return Err(PhysicsError::Missing {
            field: "parts".to_owned(),
            advice: Box::new(Advice::PartsPendulumOrSeries),
        });
    }
    let mut inputs = Inputs::default();
    let parts = input.parts.as_ref().map(|parts| read_parts(parts, &mut inputs)).transpose()?;
    let pendulum = input.pendulum.as_ref().map(|pendulum| read_pendulum(pendulum, &mut inputs)).transpose()?;
    input.pendulum.as_ref().map(|pendulum| refuse_miscounted_swings(pendulum, gravity)).transpose()?;
    let series = input.series.as_ref().map(|series| Series::read(series, &mut inputs)).transpose()?;
    inputs.correlate_named(&input.correlations)?;

    let (whole, swung, matched) = inputs.results(|x| {
        let whole = parts.as_ref().map(|parts| of_parts(x, parts, input.axis_mm, gravity)).transpose()?;
        let swung = pendulum.map(|pendulum| of_pendulum(x, pendulum, input.axis_mm, gravity));
        let matched = series.as_ref().map(|series| {
            let [head, place] = series.vars();
            series.results(x[head], x[place])
        });
        Ok((whole, swung, matched.transpose()?))
    })?;
    let value = |of: fn(&Whole<Estimate>) -> Estimate| whole.as_ref().map(|whole| of(whole).value);
    let sd = |of: fn(&Whole<Estimate>) -> Estimate| whole.as_ref().and_then(|whole| of(whole).sd);
    Ok(InertiaOutput {
        total_mass_g: value(|whole| whole.mass_g),
        total_mass_g_sd: sd(|whole| whole.mass_g),
        balance_point_mm: value(|whole| whole.balance_point_mm),
        balance_point_mm_sd: sd(|whole| whole.balance_point_mm),
        inertia_about_butt_kg_cm2: value(|whole| whole.about_butt_kg_cm2),
        inertia_about_butt_kg_cm2_sd: sd(|whole| whole.about_butt_kg_cm2),
        inertia_about_axis_kg_cm2: value(|whole| whole.about_axis_kg_cm2),
        inertia_about_axis_kg_cm2_sd: sd(|whole| whole.about_axis_kg_cm2),
        inertia_about_balance_point_kg_cm2: value(|whole| whole.about_balance_point_kg_cm2),
        inertia_about_balance_point_kg_cm2_sd: sd(|whole| whole.about_balance_point_kg_cm2),
        period_s: value(|whole| whole.period_s).filter(|period_s| period_s.is_finite()),
        period_s_sd: sd(|whole| whole.period_s).filter(|sd_s| sd_s.is_finite()),
        pendulum: swung.map(pendulum_output),
        series: series.zip(matched).map(|(series, matched)| series.rows(&matched)),
        warnings: parts_in_another_unit(input.parts.iter().flatten().map(|part| (part.mass_g, part.position_mm))),
    })
}

/// Own inertia of a part.
enum Own {
    Rod(f64),
    Given(Var),
    Point,
}

/// Mass, place and own inertia of each part.
fn read_parts(parts: &[InertiaPart], inputs: &mut Inputs) -> Result<Vec<(Var, Var, Own)>, PhysicsError> {
    check::enough("parts", parts.len(), 1, Advice::ListPartsOfClub)?;
    let mut read = Vec::with_capacity(parts.len());
    for (i, part) in parts.iter().enumerate() {
        let field = |name: &str| format!("parts[{i}].{name}");
        plausible::PART_MASS_G.check(&field("mass_g"), part.mass_g)?;
        plausible::PLACE_MM.check(&field("position_mm"), part.position_mm)?;
        let mass = inputs.add(field("mass_g"), part.mass_g, part.mass_g_sd)?;
        let place = inputs.add(field("position_mm"), part.position_mm, part.position_mm_sd)?;
        let own = match (part.length_mm, part.own_inertia_kg_cm2) {
            (Some(_), Some(_)) => {
                return Err(PhysicsError::Contradiction {
                    what: Clash::BothGiven { first: field("length_mm"), second: "own_inertia_kg_cm2".into() },
                    advice: Box::new(Advice::RodOrOwnInertia),
                });
            }
            (Some(length_mm), None) => Own::Rod(plausible::PLACE_MM.check(&field("length_mm"), length_mm)?),
            (None, Some(own)) => {
                check::not_negative(&field("own_inertia_kg_cm2"), own, "kg·cm²")?;
                Own::Given(inputs.add(field("own_inertia_kg_cm2"), own, part.own_inertia_kg_cm2_sd)?)
            }
            (None, None) => Own::Point,
        };
        read.push((mass, place, own));
    }
    Ok(read)
}

results! {
    /// A club by its parts.
    struct Whole {
        mass_g,
        balance_point_mm,
        about_butt_kg_cm2,
        about_axis_kg_cm2,
        about_balance_point_kg_cm2,
        /// Hung on the axis; infinite where that is the balance point.
        period_s,
    }
}

fn of_parts(
    x: &Point<'_, Dual>,
    parts: &[(Var, Var, Own)],
    axis_mm: f64,
    gravity: f64,
) -> Result<Whole<Dual>, PhysicsError> {
    let zero = Dual::fixed(0.0);
    let figures: Vec<_> = parts
        .iter()
        .map(|(mass, place, own)| {
            let own_g_mm2 = match own {
                Own::Rod(length_mm) => x[*mass] * (length_mm * length_mm / 12.0),
                Own::Given(own) => x[*own] * G_MM2_IN_KG_CM2,
                Own::Point => zero,
            };
            (x[*mass], x[*place], own_g_mm2)
        })
        .collect();
    let mass_g = figures.iter().fold(zero, |sum, part| sum + part.0);
    check::positive("mass of all parts", mass_g.value, "g")?;
    let centre_mm = figures.iter().fold(zero, |sum, part| sum + part.0 * part.1) / mass_g;
    let [butt, axis, centre] = [zero, Dual::fixed(axis_mm), centre_mm]
        .map(|axis_mm| about(figures.iter().copied(), axis_mm) / G_MM2_IN_KG_CM2);
    let arm_m = (centre_mm - axis_mm) / 1000.0;
    // The club hangs on either side of the axis; without an arm it does not swing at all.
    let arm_m = if arm_m.value < 0.0 { -arm_m } else { arm_m };
    let period_s = if arm_m.value == 0.0 {
        Dual::fixed(f64::INFINITY)
    } else {
        pendulum_period_s(axis / KG_CM2_IN_KG_M2, mass_g / 1000.0, arm_m, gravity)
    };
    Ok(Whole {
        mass_g,
        balance_point_mm: centre_mm,
        about_butt_kg_cm2: butt,
        about_axis_kg_cm2: axis,
        about_balance_point_kg_cm2: centre,
        period_s,
    })
}

fn read_pendulum(pendulum: &PendulumInput, inputs: &mut Inputs) -> Result<[Var; 5], PhysicsError> {
    let field = |name: &str| format!("pendulum.{name}");
    check::positive(&field("period_s"), pendulum.period_s, "s")?;
    plausible::CLUB_MASS_G.check(&field("total_mass_g"), pendulum.total_mass_g)?;
    plausible::BALANCE_POINT_MM.check(&field("balance_point_mm"), pendulum.balance_point_mm)?;
    check::finite(&field("pivot_mm"), pendulum.pivot_mm, "mm")?;
    let advice = Advice::HangBelowPivot;
    check::below(&field("pivot_mm"), pendulum.pivot_mm, pendulum.balance_point_mm, "mm", advice)?;
    check::not_negative(&field("amplitude_deg"), pendulum.amplitude_deg, "deg")?;
    let advice = Advice::SwingLess;
    check::at_most(&field("amplitude_deg"), pendulum.amplitude_deg, AMPLITUDE_MAX_DEG, "deg", advice)?;
    Ok([
        inputs.add(field("period_s"), pendulum.period_s, pendulum.period_s_sd)?,
        inputs.add(field("total_mass_g"), pendulum.total_mass_g, pendulum.total_mass_g_sd)?,
        inputs.add(field("balance_point_mm"), pendulum.balance_point_mm, pendulum.balance_point_mm_sd)?,
        inputs.add(field("pivot_mm"), pendulum.pivot_mm, pendulum.pivot_mm_sd)?,
        inputs.add(field("amplitude_deg"), pendulum.amplitude_deg, pendulum.amplitude_deg_sd)?,
    ])
}

/// Refuses a period that no club of this balance point has, and says which count of swings it probably is.
///
/// The radius of gyration about the balance point tells: where it is imaginary, the inertia would be negative.
fn refuse_miscounted_swings(pendulum: &PendulumInput, gravity: f64) -> Result<(), PhysicsError> {
    let arm_m = (pendulum.balance_point_mm - pendulum.pivot_mm) / 1000.0;
    let wide = amplitude_factor(pendulum.amplitude_deg.to_radians());
    let (least_mm, most_mm) = plausible::GYRATION_MM.range();
    // A kilogram has the square of the radius as its inertia.
    let period_s = |radius_mm: f64| {
        let inertia = (radius_mm / 1000.0).powi(2) + arm_m * arm_m;
        pendulum_period_s(inertia, 1.0, arm_m, gravity) * wide
    };
    let (shortest_s, longest_s) = (period_s(least_mm), period_s(most_mm));
    let given_s = pendulum.period_s;
    if (shortest_s..=longest_s).contains(&given_s) {
        return Ok(());
    }
    let (bound, limit) = if given_s < shortest_s { (Bound::AtLeast, shortest_s) } else { (Bound::AtMost, longest_s) };
    let counted = [0.5, 2.0, 5.0, 10.0, 20.0];
    let counted = counted.into_iter().find(|swings| (shortest_s..=longest_s).contains(&(given_s / swings)));
    let advice = match counted {
        Some(swings) if swings < 1.0 => Advice::HalfSwing { one_s: given_s / swings },
        Some(swings) => Advice::SeveralSwings { n: swings as u32, one_s: given_s / swings },
        None => Advice::OneSwing { shortest_s, longest_s },
    };
    Err(PhysicsError::OutOfRange {
        field: "pendulum.period_s".to_owned(),
        value: given_s,
        bound,
        limit,
        unit: "s",
        advice: Box::new(advice),
    })
}

results! {
    /// A club by the period of its swing.
    struct Swung {
        about_pivot_kg_cm2,
        about_butt_kg_cm2,
        about_axis_kg_cm2,
        about_balance_point_kg_cm2,
        /// The period freed from its amplitude.
        small_period_s,
    }
}

fn of_pendulum(x: &Point<'_, Dual>, vars: [Var; 5], axis_mm: f64, gravity: f64) -> Swung<Dual> {
    let [period_s, mass_g, centre_mm, pivot_mm, amplitude_deg] = vars.map(|var| x[var]);
    let small_s = period_s / amplitude_factor(amplitude_deg * 1f64.to_radians());
    let (mass_kg, arm_m) = (mass_g / 1000.0, (centre_mm - pivot_mm) / 1000.0);
    let pivot = pendulum_inertia_kg_m2(mass_kg, arm_m, small_s, gravity);
    let centre = pivot - mass_kg * arm_m.squared();
    let moved = |arm_mm: Dual| centre + mass_kg * (arm_mm / 1000.0).squared();
    let [butt, axis] = [moved(centre_mm), moved(centre_mm - axis_mm)];
    let [pivot, butt, axis, centre] = [pivot, butt, axis, centre].map(|inertia| inertia * KG_CM2_IN_KG_M2);
    Swung {
        about_pivot_kg_cm2: pivot,
        about_butt_kg_cm2: butt,
        about_axis_kg_cm2: axis,
        about_balance_point_kg_cm2: centre,
        small_period_s: small_s,
    }
}

fn pendulum_output(swung: Swung<Estimate>) -> PendulumOutput {
    PendulumOutput {
        inertia_about_pivot_kg_cm2: swung.about_pivot_kg_cm2.value,
        inertia_about_pivot_kg_cm2_sd: swung.about_pivot_kg_cm2.sd,
        inertia_about_butt_kg_cm2: swung.about_butt_kg_cm2.value,
        inertia_about_butt_kg_cm2_sd: swung.about_butt_kg_cm2.sd,
        inertia_about_axis_kg_cm2: swung.about_axis_kg_cm2.value,
        inertia_about_axis_kg_cm2_sd: swung.about_axis_kg_cm2.sd,
        inertia_about_balance_point_kg_cm2: swung.about_balance_point_kg_cm2.value,
        inertia_about_balance_point_kg_cm2_sd: swung.about_balance_point_kg_cm2.sd,
        small_period_s: swung.small_period_s.value,
        small_period_s_sd: swung.small_period_s.sd,
    }
}
