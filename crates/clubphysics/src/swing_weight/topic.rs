//! The swing weight topic.

use crate::advice::{Advice, Clash};
use quantity::{FULCRUM_IN, INCH_MM, OZ_G, SwingWeight};
use serde_json::{Value, json};

use super::{
    PartInput, SwingWeightInput, SwingWeightOutput,
    kernel::points,
    what_if::{Change, Hung, Whole},
};
use crate::{
    PhysicsError, check,
    plausible::{self, PartsRemark, parts_in_another_unit},
    real::Dual,
    topic::{Topic, described, through_json},
    uncertainty::{Inputs, Point, Var, results},
};

/// The older fulcrum.
const OLD_FULCRUM_IN: f64 = 12.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "swing-weight",
    example,
    input: described::<SwingWeightInput>,
    output: described::<SwingWeightOutput>,
    run: |input| through_json(&input, swing_weight),
};

fn example() -> Value {
    json!({
        "parts": [
            { "name": "head", "mass_g": 256.0, "mass_g_sd": 0.1, "position_mm": 950.0, "position_mm_sd": 2.0 },
            { "name": "shaft", "mass_g": 120.0, "mass_g_sd": 0.1, "position_mm": 467.5, "position_mm_sd": 1.0 },
            { "name": "grip", "mass_g": 50.0, "mass_g_sd": 0.3, "position_mm": 105.0, "position_mm_sd": 2.0 }
        ],
        "what_if": { "add": [{ "name": "tip weight", "mass_g": 2.0, "position_mm": 910.0 }] }
    })
}

/// The parts of a club among the inputs.
struct Parts {
    masses_and_places: Vec<(Var, Var)>,
    shared_mass: Option<Var>,
    shared_place: Option<Var>,
    /// Which part is the grip.
    grip: Option<usize>,
}

impl Parts {
    /// Mass and place of a part, with what all parts share.
    fn hung(&self, x: &Point<'_, Dual>, part: usize) -> Hung {
        let zero = Dual::fixed(0.0);
        let (mass, place) = self.masses_and_places[part];
        (x[mass] + self.shared_mass.map_or(zero, |var| x[var]), x[place] + self.shared_place.map_or(zero, |var| x[var]))
    }

    fn whole(&self, x: &Point<'_, Dual>) -> Whole<Dual> {
        let zero = Dual::fixed(0.0);
        let parts = (0..self.masses_and_places.len()).map(|part| self.hung(x, part));
        parts.fold(Whole { mass_g: zero, first_g_mm: zero }, |sum, (mass_g, place_mm)| Whole {
            mass_g: sum.mass_g + mass_g,
            first_g_mm: sum.first_g_mm + mass_g * place_mm,
        })
    }
}

results! {
    /// The club on the balance.
    struct Balanced {
        moment_oz_in,
        moment_g_cm,
        /// Since A0.
        points,
        mass_g,
        balance_point_mm,
        /// About a fulcrum at 12 in.
        moment_12_in_oz_in,
    }
}

/// Swing weight of a club.
///
/// Accuracy: 1e-9 relative against exact fractions (`tests/val_swing_weight.rs`); standard deviations are first order,
/// checked by simulation (`tests/val_topics_by_simulation.rs`).
///
/// # Errors
///
/// [`PhysicsError`] where the club is given in both ways or in neither, or a figure is impossible or in a wrong unit.
///
/// # Examples
///
/// ```
/// use clubphysics::swing_weight::{PartInput, SwingWeightInput, swing_weight};
/// // By hand, in inches from the fulcrum: 256·23 + 100·4 − 50·10 = 5788 g·in; 5788 / 28.349523125 = 204.166 oz·in, and
/// // (204.166 − 161) / 1.75 = 24.67 points: the 4.7 of the letter C.
/// let part = |mass_g, place_in: f64| PartInput { mass_g, position_mm: place_in * 25.4, ..PartInput::default() };
/// let parts = vec![part(256.0, 37.0), part(100.0, 18.0), part(50.0, 4.0)];
/// let club = swing_weight(&SwingWeightInput { parts: Some(parts), ..SwingWeightInput::default() })?;
/// assert!((club.moment_oz_in - 204.166).abs() < 0.0005);
/// assert_eq!(club.letter, "C4.7");
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn swing_weight(input: &SwingWeightInput) -> Result<SwingWeightOutput, PhysicsError> {
    let fulcrum_in = input.fulcrum_in.unwrap_or(FULCRUM_IN);
    plausible::FULCRUM_IN.check("fulcrum_in", fulcrum_in)?;
    let mut inputs = Inputs::default();
    let mut warnings = Vec::new();
    let club = match (&input.parts, input.total_mass_g, input.balance_point_mm) {
        (Some(parts), None, None) => read_parts(input, parts, &mut inputs, &mut warnings)?,
        (None, Some(mass_g), Some(place_mm)) => read_whole(input, mass_g, place_mm, &mut inputs)?,
        (Some(_), ..) => {
            return Err(PhysicsError::Contradiction { what: Clash::ClubTwice, advice: Box::new(Advice::OneOfTheTwo) });
        }
        (None, None, None) => return Err(missing("total_mass_g or parts")),
        (None, None, _) => return Err(missing("total_mass_g")),
        (None, _, None) => return Err(missing("balance_point_mm")),
    };
    let named_g = club.grip.and_then(|at| input.parts.as_ref()?.get(at)).map(|grip| grip.mass_g);
    let change = input.what_if.as_ref().map(|what_if| Change::read(what_if, named_g, &mut inputs)).transpose()?;
    if club.grip.is_none() && change.as_ref().is_some_and(Change::lengthens_without_grip) {
        warnings.push(PartsRemark::NoGrip);
    }
    inputs.correlate_named(&input.correlations)?;

    let fulcrum_mm = fulcrum_in * INCH_MM;
    let (now, changed) = inputs.results(|x| {
        let whole = club.whole(x);
        check::positive("total mass", whole.mass_g.value, "g")?;
        let moment_oz_in = whole.moment_oz_in(fulcrum_mm);
        let now = Balanced {
            moment_oz_in,
            moment_g_cm: moment_oz_in * (OZ_G * INCH_MM / 10.0),
            points: points(moment_oz_in),
            mass_g: whole.mass_g,
            balance_point_mm: whole.first_g_mm / whole.mass_g,
            moment_12_in_oz_in: whole.moment_oz_in(OLD_FULCRUM_IN * INCH_MM),
        };
        let grip = club.grip.map(|part| club.hung(x, part));
        let changed = change.as_ref().map(|change| change.results(x, (whole, grip), fulcrum_mm)).transpose()?;
        Ok((now, changed))
    })?;
    Ok(SwingWeightOutput {
        fulcrum_in,
        moment_oz_in: now.moment_oz_in.value,
        moment_oz_in_sd: now.moment_oz_in.sd,
        moment_g_cm: now.moment_g_cm.value,
        moment_g_cm_sd: now.moment_g_cm.sd,
        letter: SwingWeight::from_points(now.points.value).to_string(),
        points: now.points.value,
        points_sd: now.points.sd,
        total_mass_g: now.mass_g.value,
        total_mass_g_sd: now.mass_g.sd,
        balance_point_mm: now.balance_point_mm.value,
        balance_point_mm_sd: now.balance_point_mm.sd,
        moment_12_in_oz_in: now.moment_12_in_oz_in.value,
        moment_12_in_oz_in_sd: now.moment_12_in_oz_in.sd,
        what_if: change.zip(changed).map(|(change, changed)| change.output(changed)),
        warnings,
    })
}

fn missing(field: &str) -> PhysicsError {
    PhysicsError::Missing { field: field.to_owned(), advice: Box::new(Advice::TotalMassOrParts) }
}

fn read_whole(
    input: &SwingWeightInput,
    mass_g: f64,
    place_mm: f64,
    inputs: &mut Inputs,
) -> Result<Parts, PhysicsError> {
    refuse("shared_mass_g_sd", input.shared_mass_g_sd)?;
    refuse("shared_position_mm_sd", input.shared_position_mm_sd)?;
    plausible::CLUB_MASS_G.check("total_mass_g", mass_g)?;
    plausible::BALANCE_POINT_MM.check("balance_point_mm", place_mm)?;
    let mass = inputs.add("total_mass_g", mass_g, input.total_mass_g_sd)?;
    let place = inputs.add("balance_point_mm", place_mm, input.balance_point_mm_sd)?;
    Ok(Parts { masses_and_places: vec![(mass, place)], shared_mass: None, shared_place: None, grip: None })
}

/// Refuses a field that has no meaning for a club given whole.
fn refuse(field: &str, value: Option<f64>) -> Result<(), PhysicsError> {
    match value {
        None => Ok(()),
        Some(_) => Err(PhysicsError::Contradiction {
            what: Clash::WithoutParts { field: field.to_owned() },
            advice: Box::new(Advice::LeaveOutOrListParts),
        }),
    }
}

fn read_parts(
    input: &SwingWeightInput,
    parts: &[PartInput],
    inputs: &mut Inputs,
    warnings: &mut Vec<PartsRemark>,
) -> Result<Parts, PhysicsError> {
    check::enough("parts", parts.len(), 1, Advice::ListPartsOfClub)?;
    if input.total_mass_g_sd.is_some() || input.balance_point_mm_sd.is_some() {
        return Err(PhysicsError::Contradiction {
            what: Clash::DeviationsWithParts,
            advice: Box::new(Advice::DeviationsOfParts),
        });
    }
    let mut masses_and_places = Vec::with_capacity(parts.len());
    for (i, part) in parts.iter().enumerate() {
        let field = format!("parts[{i}].mass_g");
        plausible::PART_MASS_G.check(&field, part.mass_g)?;
        let mass = inputs.add(field, part.mass_g, part.mass_g_sd)?;
        let field = format!("parts[{i}].position_mm");
        plausible::PLACE_MM.check(&field, part.position_mm)?;
        masses_and_places.push((mass, inputs.add(field, part.position_mm, part.position_mm_sd)?));
    }
    warnings.extend(parts_in_another_unit(parts.iter().map(|part| (part.mass_g, part.position_mm))));
    let mut shared = |field: &str, sd: Option<f64>| sd.map(|sd| inputs.add(field, 0.0, Some(sd))).transpose();
    Ok(Parts {
        masses_and_places,
        shared_mass: shared("shared_mass_g", input.shared_mass_g_sd)?,
        shared_place: shared("shared_position_mm", input.shared_position_mm_sd)?,
        grip: parts.iter().position(|part| part.name.eq_ignore_ascii_case("grip")),
    })
}
