//! The grip-size topic.

use crate::advice::{Advice, Clash};
use std::f64::consts::PI;

use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};
use serde_json::{Value, json};

use super::{GripRemark, GripSizeInput, GripSizeOutput, GripStation, GripStationOutput, TapeInput, TapeOutput};
use crate::{
    PhysicsError, check,
    real::{Dual, Real},
    topic::{Topic, described, through_json},
    uncertainty::{Estimate, Inputs, Point, Var, results},
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
    example,
    input: described::<GripSizeInput>,
    output: described::<GripSizeOutput>,
    run: |input| through_json(&input, grip_size),
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
///
/// # Examples
///
/// ```
/// // By hand: 0.600² + 0.900² − 0.580² = 0.8336, whose root is 0.91302; the trade's rule says 0.920.
/// let size_in: f64 = clubphysics::grip_size::diameter_of_kept_volume_in(0.900, 0.580, 0.600, 0.0);
/// assert!((size_in - 0.91302).abs() < 5e-6);
/// ```
#[must_use]
pub fn diameter_of_kept_volume_in<T: Real>(nominal_in: T, core_in: T, shaft_diameter_in: T, tape_growth_in: T) -> T {
    let over_tape_in = shaft_diameter_in + tape_growth_in;
    (over_tape_in.squared() + nominal_in.squared() - core_in.squared()).sqrt()
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
    let growth = Growth::read(tape, &mut inputs)?;
    let layer_mass = LayerMass::read(tape, butt, &mut inputs)?;
    inputs.correlate_named(&input.correlations)?;
    let position_in = tape.cap_in + tape.length_in / 2.0;
    let layers_at =
        |station: &GripStation| if station.below_cap_in <= tape.cap_in + tape.length_in { tape.layers } else { 0 };

    let results_with = |x: &Point<'_, Dual>, needed: f64| {
        let growth_in = growth.a_layer_in(x);
        let core_and_shaft = |station: &GripStation| {
            (station.core_in.map_or(x[core], Dual::fixed), station.shaft_diameter_in.map_or(x[butt], Dual::fixed))
        };
        let at = |station: &GripStation, layers: f64| {
            let (core_in, shaft_in) = core_and_shaft(station);
            diameter_in(Dual::fixed(station.nominal_in), core_in, shaft_in, growth_in * layers)
        };
        let kept = |station: &GripStation, layers: f64| {
            let (core_in, shaft_in) = core_and_shaft(station);
            diameter_of_kept_volume_in(Dual::fixed(station.nominal_in), core_in, shaft_in, growth_in * layers)
        };
        let bare_in = at(&stations[0], 0.0);
        let wanted_in = Dual::fixed(input.wanted_in.unwrap_or(bare_in.value));
        let layer_g = layer_mass.as_ref().map_or(Dual::fixed(0.0), |mass| mass.grams(x, tape));
        let a_layer_points = layer_g * ((position_in - FULCRUM_IN) / POINT_G_IN);
        let laid = f64::from(tape.layers);
        let built = Built {
            growth_a_layer_in: growth_in,
            layers: (wanted_in - bare_in) / growth_in,
            diameter_with_layers_needed_in: at(&stations[0], needed),
            layer_g,
            tape_g: layer_g * laid,
            a_layer_points,
            tape_points: a_layer_points * laid,
        };
        let sizes = stations.iter().map(|station| {
            let layers = f64::from(layers_at(station));
            Size { diameter_in: at(station, layers), of_kept_volume_in: kept(station, layers) }
        });
        Ok((built, sizes.collect::<Vec<_>>()))
    };
    // Whole layers are counted at the given figures; how sure the diameter with them is comes after.
    let (bare, _) = inputs.results(|x| results_with(x, 0.0))?;
    let layers_needed = input.wanted_in.map(|_| bare.layers.value.round().clamp(0.0, LAYERS_MAX));
    let (built, sizes) = inputs.results(|x| results_with(x, layers_needed.unwrap_or(0.0)))?;

    let outputs: Vec<_> = stations
        .iter()
        .zip(sizes)
        .map(|(station, size): (_, Size<Estimate>)| GripStationOutput {
            below_cap_in: station.below_cap_in,
            layers: layers_at(station),
            diameter_in: size.diameter_in.value,
            diameter_in_sd: size.diameter_in.sd,
            diameter_of_kept_volume_in: size.of_kept_volume_in.value,
            diameter_of_kept_volume_in_sd: size.of_kept_volume_in.sd,
        })
        .collect();
    Ok(GripSizeOutput {
        warnings: warnings(input, &outputs, built.layers.value, built.growth_a_layer_in.value),
        stations: outputs,
        growth_a_layer_in: built.growth_a_layer_in.value,
        growth_a_layer_in_sd: built.growth_a_layer_in.sd,
        layers_exact: input.wanted_in.map(|_| built.layers.value),
        layers_exact_sd: input.wanted_in.and(built.layers.sd),
        layers_needed: layers_needed.map(|layers| layers as u32),
        diameter_with_layers_needed_in: layers_needed.map(|_| built.diameter_with_layers_needed_in.value),
        diameter_with_layers_needed_in_sd: layers_needed.and(built.diameter_with_layers_needed_in.sd),
        tape: layer_mass.map(|_| TapeOutput {
            layer_mass_g: built.layer_g.value,
            layer_mass_g_sd: built.layer_g.sd,
            mass_g: built.tape_g.value,
            mass_g_sd: built.tape_g.sd,
            position_in,
            change_a_layer_points: built.a_layer_points.value,
            change_a_layer_points_sd: built.a_layer_points.sd,
            change_points: built.tape_points.value,
            change_points_sd: built.tape_points.sd,
        }),
    })
}

results! {
    /// What the tape does as a whole.
    struct Built {
        growth_a_layer_in,
        /// That give the wanted diameter at the first station, not rounded.
        layers,
        diameter_with_layers_needed_in,
        layer_g,
        tape_g,
        a_layer_points,
        tape_points,
    }
}

results! {
    /// The grip at one station.
    struct Size {
        diameter_in,
        /// Where the rubber keeps its volume as it is stretched.
        of_kept_volume_in,
    }
}

/// Growth in diameter that a layer gives: as the shop knows it, else twice the tape's thickness.
#[derive(Clone, Copy)]
struct Growth {
    var: Var,
    factor: f64,
}

impl Growth {
    fn read(tape: &TapeInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        let field = "tape.growth_a_layer_in";
        let thickness = inputs.add("tape.thickness_in", tape.thickness_in, tape.thickness_in_sd)?;
        match (tape.growth_a_layer_in, tape.growth_a_layer_in_sd) {
            (Some(growth_in), sd) => Ok(Self { var: inputs.add(field, growth_in, sd)?, factor: 1.0 }),
            (None, Some(_)) => {
                let advice = Advice::DeviationApart;
                Err(PhysicsError::Missing { field: field.to_owned(), advice: Box::new(advice) })
            }
            (None, None) => Ok(Self { var: thickness, factor: 2.0 }),
        }
    }

    fn a_layer_in(self, x: &Point<'_, Dual>) -> Dual {
        x[self.var] * self.factor
    }
}

/// Where the mass of one layer comes from.
#[derive(Clone, Copy)]
enum LayerMass {
    Weighed(Var),
    /// Mass an area; the strip has the width of the tape, or one turn of the butt.
    Area(Var, Var),
}

impl LayerMass {
    /// `None` where neither a weighed layer nor a mass an area is known.
    fn read(tape: &TapeInput, butt: Var, inputs: &mut Inputs) -> Result<Option<Self>, PhysicsError> {
        let missing = |field: &str| {
            Err(PhysicsError::Missing { field: field.to_owned(), advice: Box::new(Advice::DeviationApart) })
        };
        if tape.layer_mass_g.is_none() && tape.layer_mass_g_sd.is_some() {
            return missing("tape.layer_mass_g");
        }
        if tape.areal_density_g_m2.is_none() && tape.areal_density_g_m2_sd.is_some() {
            return missing("tape.areal_density_g_m2");
        }
        if let Some(width_in) = tape.strip_width_in {
            check::positive("tape.strip_width_in", width_in, "in")?;
        }
        match (tape.layer_mass_g, tape.areal_density_g_m2) {
            (Some(_), Some(_)) => Err(PhysicsError::Contradiction {
                what: Clash::BothGiven { first: "tape.layer_mass_g".into(), second: "tape.areal_density_g_m2".into() },
                advice: Box::new(Advice::WeighedMassAlone),
            }),
            (Some(mass_g), None) => {
                let mass_g = check::not_negative("tape.layer_mass_g", mass_g, "g")?;
                Ok(Some(Self::Weighed(inputs.add("tape.layer_mass_g", mass_g, tape.layer_mass_g_sd)?)))
            }
            (None, Some(density_g_m2)) => {
                let density_g_m2 = check::not_negative("tape.areal_density_g_m2", density_g_m2, "g/m²")?;
                let density = inputs.add("tape.areal_density_g_m2", density_g_m2, tape.areal_density_g_m2_sd)?;
                Ok(Some(Self::Area(density, butt)))
            }
            (None, None) => Ok(None),
        }
    }

    fn grams(self, x: &Point<'_, Dual>, tape: &TapeInput) -> Dual {
        const MM2_IN_M2: f64 = 1e6;
        match self {
            Self::Weighed(mass) => x[mass],
            Self::Area(density, butt) => {
                let width_in = tape.strip_width_in.map_or(x[butt] * PI, Dual::fixed);
                x[density] * width_in * (tape.length_in * INCH_MM * INCH_MM / MM2_IN_M2)
            }
        }
    }
}

fn diameter(field: &str, value_in: f64) -> Result<f64, PhysicsError> {
    check::positive(field, value_in, "in")?;
    check::at_most(field, value_in, DIAMETER_MAX_IN, "in", Advice::DiameterInInches)
}

/// The places asked for, checked; the men's size at 2 in where none is given.
fn stations(input: &GripSizeInput) -> Result<Vec<GripStation>, PhysicsError> {
    let Some(stations) = &input.stations else {
        let usual = GripStation { below_cap_in: 2.0, nominal_in: 0.900, core_in: None, shaft_diameter_in: None };
        return Ok(vec![usual]);
    };
    check::enough("stations", stations.len(), 1, Advice::ListAPlaceOnGrip)?;
    for (i, station) in stations.iter().enumerate() {
        let field = |name: &str| format!("stations[{i}].{name}");
        check::not_negative(&field("below_cap_in"), station.below_cap_in, "in")?;
        let advice = Advice::PlaceInInches;
        check::at_most(&field("below_cap_in"), station.below_cap_in, PLACE_MAX_IN, "in", advice)?;
        diameter(&field("nominal_in"), station.nominal_in)?;
        let core_in = diameter(&field("core_in"), station.core_in.unwrap_or(input.core_in))?;
        let advice = Advice::CoreNarrowerThanGrip;
        check::above(&field("nominal_in"), station.nominal_in, core_in, "in", advice)?;
        if let Some(shaft_in) = station.shaft_diameter_in {
            diameter(&field("shaft_diameter_in"), shaft_in)?;
        }
    }
    Ok(stations.clone())
}

fn check_tape(tape: &TapeInput) -> Result<(), PhysicsError> {
    const THICKNESS_MAX_IN: f64 = 0.1;
    let advice = Advice::ThicknessInInches;
    check::positive("tape.thickness_in", tape.thickness_in, "in")?;
    check::at_most("tape.thickness_in", tape.thickness_in, THICKNESS_MAX_IN, "in", advice)?;
    if let Some(growth_in) = tape.growth_a_layer_in {
        check::positive("tape.growth_a_layer_in", growth_in, "in")?;
    }
    check::at_most("tape.layers", f64::from(tape.layers), LAYERS_MAX, "", Advice::CountLayersAgain)?;
    check::positive("tape.length_in", tape.length_in, "in")?;
    check::at_most("tape.length_in", tape.length_in, PLACE_MAX_IN, "in", Advice::TapeLengthInInches)?;
    check::not_negative("tape.cap_in", tape.cap_in, "in")?;
    Ok(())
}

fn warnings(input: &GripSizeInput, stations: &[GripStationOutput], layers: f64, growth_in: f64) -> Vec<GripRemark> {
    const HALF_A_LAYER: f64 = -0.5;
    let mut warnings = Vec::new();
    if input.wanted_in.is_some() && layers < HALF_A_LAYER {
        warnings.push(GripRemark::LargeWithoutTape { by_mm: -layers * growth_in * INCH_MM });
    }
    if input.wanted_in.is_some() && layers > LAYERS_MAX {
        warnings.push(GripRemark::TooManyLayers { most: LAYERS_MAX as u32 });
    }
    if let Some(widest) = stations.iter().find(|station| station.diameter_in > RULES_WIDEST_IN) {
        warnings.push(GripRemark::BeyondRules {
            widest_mm: widest.diameter_in * INCH_MM,
            limit_mm: RULES_WIDEST_IN * INCH_MM,
        });
    }
    warnings
}
