//! The grip-size topic.

use std::f64::consts::PI;

use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};
use serde_json::{Value, json};

use super::{GripSizeInput, GripSizeOutput, GripStation, GripStationOutput, TapeInput, TapeOutput};
use crate::{
    PhysicsError,
    calc::{Topic, through_json},
    check,
    real::{Dual, Real},
    uncertainty::Inputs,
};

/// Above this a diameter was surely given in millimetres. A grip may be 1.75 in across (Equipment Rules 2.3b).
const DIAMETER_MAX_IN: f64 = 2.5;
/// Grips are not longer than this.
const PLACE_MAX_IN: f64 = 24.0;
/// A finished grip may be this wide. Source: Equipment Rules effective 2019, clause 2.3b.
const RULES_WIDEST_IN: f64 = 1.75;
/// Nobody lays more.
const LAYERS_MAX: f64 = 40.0;

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "grip-size",
    title: "Grip size",
    summary: "Diameter along a grip on its shaft, layers of tape for a wanted size, and what the tape does to the balance.",
    example,
    run: |input| through_json(input, grip_size),
};

fn example() -> Value {
    json!({
        "core_in": 0.580, "butt_diameter_in": 0.600, "butt_diameter_in_sd": 0.001, "wanted_in": 0.940,
        "stations": [
            { "below_cap_in": 2.0, "nominal_in": 0.900 },
            { "below_cap_in": 6.0, "nominal_in": 0.770, "core_in": 0.540, "shaft_diameter_in": 0.555 }
        ],
        "tape": { "layers": 2, "thickness_in": 0.005, "length_in": 9.5, "areal_density_g_m2": 125.0, "strip_width_in": 2.0 }
    })
}

/// Diameter of a grip by the trade's rule: nominal, more by the shaft less the core, more by the growth of each layer.
///
/// # Examples
///
/// ```
/// let size_in = clubphysics::grip_size::diameter_in(0.900, 0.580, 0.600, 0.0);
/// assert!((size_in - 0.920_f64).abs() < 1e-12);
/// ```
#[must_use]
pub fn diameter_in<T: Real>(nominal_in: T, core_in: T, shaft_diameter_in: T, tape_growth_in: T) -> T {
    nominal_in + shaft_diameter_in - core_in + tape_growth_in
}

/// Diameter of a grip whose rubber keeps its volume and length: `√(d² + D₀² − core²)`, d over shaft and tape (derived).
#[must_use]
pub fn diameter_of_kept_volume_in(nominal_in: f64, core_in: f64, shaft_diameter_in: f64, tape_growth_in: f64) -> f64 {
    let over_tape_in = shaft_diameter_in + tape_growth_in;
    (over_tape_in * over_tape_in + nominal_in * nominal_in - core_in * core_in).sqrt()
}

/// Size of a grip on its shaft.
///
/// Accuracy: rounding; the rule itself holds to about 0.005 in (common practice, no source), and two shops state 0.010
/// and 0.015 in for the same layer.
///
/// # Errors
///
/// [`PhysicsError`] where a diameter is impossible or in a wrong unit, or tape has no thickness.
pub fn grip_size(input: &GripSizeInput) -> Result<GripSizeOutput, PhysicsError> {
    let stations = stations(input)?;
    let tape = &input.tape;
    check_tape(tape)?;
    if let Some(wanted_in) = input.wanted_in {
        diameter("wanted_in", wanted_in)?;
    }
    let mut inputs = Inputs::default();
    let core = inputs.add("core_in", diameter("core_in", input.core_in)?, input.core_in_sd)?;
    let butt_in = diameter("butt_diameter_in", input.butt_diameter_in)?;
    let butt = inputs.add("butt_diameter_in", butt_in, input.butt_diameter_in_sd)?;
    let thickness = inputs.add("tape.thickness_in", tape.thickness_in, tape.thickness_in_sd)?;
    let layer_mass_g = layer_mass_g(tape, input.butt_diameter_in)?;
    let layer_mass = inputs.add("tape.layer_mass_g", layer_mass_g.unwrap_or(0.0), tape.layer_mass_g_sd)?;
    let position_in = tape.cap_in + tape.length_in / 2.0;
    let layers_at =
        |station: &GripStation| if station.below_cap_in <= tape.cap_in + tape.length_in { tape.layers } else { 0 };

    let results = inputs.propagate(|x| {
        let growth_in = tape.growth_a_layer_in.map_or(x[thickness] * 2.0, Dual::fixed);
        let at = |station: &GripStation, layers: f64| {
            let core_in = station.core_in.map_or(x[core], Dual::fixed);
            let shaft_in = station.shaft_diameter_in.map_or(x[butt], Dual::fixed);
            diameter_in(Dual::fixed(station.nominal_in), core_in, shaft_in, growth_in * layers)
        };
        let bare_in = at(&stations[0], 0.0);
        let wanted_in = Dual::fixed(input.wanted_in.unwrap_or(bare_in.value));
        let mass_g = x[layer_mass] * f64::from(tape.layers);
        let points = mass_g * ((position_in - FULCRUM_IN) / POINT_G_IN);
        let mut results = vec![growth_in, (wanted_in - bare_in) / growth_in, bare_in, mass_g, points];
        results.extend(stations.iter().map(|station| at(station, f64::from(layers_at(station)))));
        Ok(results)
    })?;

    let growth_in = results.value(0);
    let layers_needed = input.wanted_in.map(|_| results.value(1).round().clamp(0.0, LAYERS_MAX));
    let outputs: Vec<_> = stations
        .iter()
        .enumerate()
        .map(|(i, station)| GripStationOutput {
            below_cap_in: station.below_cap_in,
            layers: layers_at(station),
            diameter_in: results.value(5 + i),
            diameter_in_sd: results.sd(5 + i),
            diameter_of_kept_volume_in: diameter_of_kept_volume_in(
                station.nominal_in,
                station.core_in.unwrap_or(input.core_in),
                station.shaft_diameter_in.unwrap_or(input.butt_diameter_in),
                growth_in * f64::from(layers_at(station)),
            ),
        })
        .collect();
    Ok(GripSizeOutput {
        warnings: warnings(input, &outputs, results.value(1), growth_in),
        stations: outputs,
        growth_a_layer_in: growth_in,
        layers_exact: input.wanted_in.map(|_| results.value(1)),
        layers_exact_sd: input.wanted_in.and_then(|_| results.sd(1)),
        layers_needed: layers_needed.map(|layers| layers as u32),
        diameter_with_layers_needed_in: layers_needed.map(|layers| results.value(2) + growth_in * layers),
        tape: layer_mass_g.map(|layer_mass_g| TapeOutput {
            layer_mass_g,
            mass_g: results.value(3),
            mass_g_sd: results.sd(3),
            position_in,
            change_a_layer_points: layer_mass_g * (position_in - FULCRUM_IN) / POINT_G_IN,
            change_points: results.value(4),
            change_points_sd: results.sd(4),
        }),
    })
}

fn diameter(field: &str, value_in: f64) -> Result<f64, PhysicsError> {
    check::positive(field, value_in, "in")?;
    check::at_most(field, value_in, DIAMETER_MAX_IN, "in", "this looks like millimetres; give the diameter in inches")
}

/// The places asked for, checked; the men's size at 2 in where none is given.
fn stations(input: &GripSizeInput) -> Result<Vec<GripStation>, PhysicsError> {
    let Some(stations) = &input.stations else {
        let usual = GripStation { below_cap_in: 2.0, nominal_in: 0.900, core_in: None, shaft_diameter_in: None };
        return Ok(vec![usual]);
    };
    check::enough("stations", stations.len(), 1, "list a place along the grip, or leave the list out")?;
    for (i, station) in stations.iter().enumerate() {
        let field = |name: &str| format!("stations[{i}].{name}");
        check::not_negative(&field("below_cap_in"), station.below_cap_in, "in")?;
        let advice = "this looks like millimetres; give the place in inches below the cap";
        check::at_most(&field("below_cap_in"), station.below_cap_in, PLACE_MAX_IN, "in", advice)?;
        diameter(&field("nominal_in"), station.nominal_in)?;
        let core_in = diameter(&field("core_in"), station.core_in.unwrap_or(input.core_in))?;
        let advice = "the core is inside the grip and must be narrower";
        check::above(&field("nominal_in"), station.nominal_in, core_in, "in", advice)?;
        if let Some(shaft_in) = station.shaft_diameter_in {
            diameter(&field("shaft_diameter_in"), shaft_in)?;
        }
    }
    Ok(stations.clone())
}

fn check_tape(tape: &TapeInput) -> Result<(), PhysicsError> {
    const THICKNESS_MAX_IN: f64 = 0.1;
    let advice = "this looks like millimetres; give the thickness in inches";
    check::positive("tape.thickness_in", tape.thickness_in, "in")?;
    check::at_most("tape.thickness_in", tape.thickness_in, THICKNESS_MAX_IN, "in", advice)?;
    if let Some(growth_in) = tape.growth_a_layer_in {
        check::positive("tape.growth_a_layer_in", growth_in, "in")?;
    }
    check::at_most("tape.layers", f64::from(tape.layers), LAYERS_MAX, "layers", "count the layers again")?;
    check::positive("tape.length_in", tape.length_in, "in")?;
    check::at_most("tape.length_in", tape.length_in, PLACE_MAX_IN, "in", "give the tape's length in inches")?;
    check::not_negative("tape.cap_in", tape.cap_in, "in")?;
    Ok(())
}

/// Mass of one layer, weighed or from its area; `None` where neither is known.
fn layer_mass_g(tape: &TapeInput, butt_diameter_in: f64) -> Result<Option<f64>, PhysicsError> {
    const MM2_IN_M2: f64 = 1e6;
    match (tape.layer_mass_g, tape.areal_density_g_m2) {
        (Some(_), Some(_)) => Err(PhysicsError::Contradiction {
            what: "tape.layer_mass_g and tape.areal_density_g_m2 are both given".to_owned(),
            advice: "give the weighed mass alone, it is the better figure",
        }),
        (Some(mass_g), None) => check::not_negative("tape.layer_mass_g", mass_g, "g").map(Some),
        (None, Some(density_g_m2)) => {
            check::not_negative("tape.areal_density_g_m2", density_g_m2, "g/m²")?;
            let width_in = tape.strip_width_in.unwrap_or(PI * butt_diameter_in);
            check::positive("tape.strip_width_in", width_in, "in")?;
            Ok(Some(density_g_m2 * width_in * tape.length_in * INCH_MM * INCH_MM / MM2_IN_M2))
        }
        (None, None) if tape.layer_mass_g_sd.is_some() => {
            Err(PhysicsError::Missing { field: "tape.layer_mass_g".to_owned(), advice: "its sd is given alone" })
        }
        (None, None) => Ok(None),
    }
}

fn warnings(input: &GripSizeInput, stations: &[GripStationOutput], layers: f64, growth_in: f64) -> Vec<String> {
    const HALF_A_LAYER: f64 = -0.5;
    let mut warnings = Vec::new();
    if input.wanted_in.is_some() && layers < HALF_A_LAYER {
        let excess_in = quantity::decimal(-layers * growth_in, 3);
        warnings.push(format!("the grip is {excess_in} in larger than wanted without tape: take a larger core"));
    }
    if input.wanted_in.is_some() && layers > LAYERS_MAX {
        warnings.push(format!("more than {LAYERS_MAX} layers would be needed: take a larger grip"));
    }
    if let Some(widest) = stations.iter().find(|station| station.diameter_in > RULES_WIDEST_IN) {
        let size_in = quantity::decimal(widest.diameter_in, 3);
        warnings.push(format!("{size_in} in is beyond {RULES_WIDEST_IN} in, the limit of Equipment Rules 2.3b"));
    }
    warnings
}
