//! Times by temperature.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{
    Bound, PhysicsError, check,
    real::{Dual, Real},
    uncertainty::{Inputs, Point, Propagated, Var},
};

/// Molar gas constant, exact since 2019 (SI brochure, 9th edition).
pub const GAS_CONSTANT_J_MOL_K: f64 = 8.314_462_618;
const ZERO_CELSIUS_K: f64 = 273.15;

/// A point of the product's sheet: so long at this temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetPoint {
    /// Temperature in degrees Celsius.
    pub temperature_c: f64,
    /// Time in minutes.
    pub time_min: f64,
}

/// A point of the product's sheet as it stands in a document.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetReading {
    /// Temperature in degrees Celsius.
    pub temperature_c: f64,
    /// Standard deviation of `temperature_c`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c_sd: Option<f64>,
    /// Time in minutes.
    pub time_min: f64,
    /// Standard deviation of `time_min`; sheets give round figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub time_min_sd: Option<f64>,
}

/// Times on the product's sheet and the temperature of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CureInput {
    /// Temperature of the shop in degrees Celsius.
    pub temperature_c: f64,
    /// Standard deviation of `temperature_c`, as of a shop that cools at night.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c_sd: Option<f64>,
    /// Pot life at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life: Option<[SheetReading; 2]>,
    /// Mass the sheet's pot life is stated for, in grams; often 100.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life_mass_g: Option<f64>,
    /// Handling strength at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub handling: Option<[SheetReading; 2]>,
    /// Full cure at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub full_cure: Option<[SheetReading; 2]>,
}

/// Times at the temperature of the shop. The product's own sheet always wins.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CureOutput {
    /// Pot life in minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot_life_min: Option<f64>,
    /// Standard deviation of `pot_life_min`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot_life_min_sd: Option<f64>,
    /// Time to handling strength in minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handling_min: Option<f64>,
    /// Standard deviation of `handling_min`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handling_min_sd: Option<f64>,
    /// Time to full cure in minutes: no club is swung before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_cure_min: Option<f64>,
    /// Standard deviation of `full_cure_min`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_cure_min_sd: Option<f64>,
    /// Activation energy of each time above, in kJ/mol, in their order.
    pub activation_energy_kj_mol: Vec<f64>,
    /// Their standard deviations, where a point of the sheet has one; zero for a time whose points have none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub activation_energy_kj_mol_sd: Option<Vec<f64>>,
    /// What to think about.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<String>,
}

/// How many times faster a reaction runs at a temperature than at a reference: `exp(Ea/R·(1/T₀ − 1/T))`.
///
/// # Examples
///
/// ```
/// let rate: f64 = clubphysics::glue::relative_rate(52.95, 35.0, 25.0);
/// assert!((rate - 2.0).abs() < 0.001);
/// ```
#[must_use]
pub fn relative_rate<T: Real>(activation_energy_kj_mol: T, temperature_c: T, reference_c: f64) -> T {
    rate(activation_energy_kj_mol, temperature_c, T::constant(reference_c))
}

fn per_kelvin<T: Real>(temperature_c: T) -> T {
    T::constant(1.0) / (temperature_c + ZERO_CELSIUS_K)
}

fn rate<T: Real>(energy_kj_mol: T, temperature_c: T, reference_c: T) -> T {
    let difference = per_kelvin(reference_c) - per_kelvin(temperature_c);
    (energy_kj_mol * difference * (1000.0 / GAS_CONSTANT_J_MOL_K)).exp()
}

/// Time at a temperature and activation energy in kJ/mol by two points of temperature and time that were checked.
fn line_through<T: Real>(points: [[T; 2]; 2], temperature_c: T) -> [T; 2] {
    let [[cold_c, cold_min], [warm_c, warm_min]] = points;
    let span = per_kelvin(cold_c) - per_kelvin(warm_c);
    let energy_kj_mol = (cold_min / warm_min).ln() / span * (GAS_CONSTANT_J_MOL_K / 1000.0);
    [cold_min / rate(energy_kj_mol, temperature_c, cold_c), energy_kj_mol]
}

/// Time at a temperature by the line through two points of a sheet, and the activation energy in kJ/mol.
///
/// # Errors
///
/// [`PhysicsError`] where temperatures are alike, times are not positive, or the warmer point takes longer.
pub fn time_at(field: &str, points: [SheetPoint; 2], temperature_c: f64) -> Result<(f64, f64), PhysicsError> {
    check_sheet(field, points)?;
    let [time_min, energy_kj_mol] = line_through(points.map(|p| [p.temperature_c, p.time_min]), temperature_c);
    Ok((time_min, energy_kj_mol))
}

fn check_sheet(field: &str, points: [SheetPoint; 2]) -> Result<(), PhysicsError> {
    const ALIKE_C: f64 = 0.5;
    for (i, point) in points.iter().enumerate() {
        temperature(&format!("{field}[{i}].temperature_c"), point.temperature_c)?;
        check::positive(&format!("{field}[{i}].time_min"), point.time_min, "min")?;
    }
    let [cold, warm] = if points[0].temperature_c <= points[1].temperature_c { points } else { [points[1], points[0]] };
    if warm.temperature_c - cold.temperature_c < ALIKE_C {
        return Err(PhysicsError::Contradiction {
            what: format!("both points of {field} are at {} °C", cold.temperature_c),
            advice: "take two temperatures from the sheet; with one the effect of temperature cannot be known",
        });
    }
    if warm.time_min > cold.time_min {
        return Err(PhysicsError::OutOfRange {
            field: format!("{field}, time at {} °C", warm.temperature_c),
            value: warm.time_min,
            bound: Bound::AtMost,
            limit: cold.time_min,
            unit: "min",
            advice: "warmth shortens every time; the two points are probably exchanged".into(),
        });
    }
    Ok(())
}

fn temperature(field: &str, temperature_c: f64) -> Result<f64, PhysicsError> {
    const COLDEST_C: f64 = -20.0;
    const HOTTEST_C: f64 = 150.0;
    check::at_least(field, temperature_c, COLDEST_C, "°C", "give the temperature in degrees Celsius")?;
    check::at_most(field, temperature_c, HOTTEST_C, "°C", "give the temperature in degrees Celsius")
}

/// Sheet and shop among the inputs.
#[derive(Clone, Copy)]
pub(super) struct Cure {
    shop: Var,
    /// Temperature and time of both points, for pot life, handling and full cure.
    sheets: [Option<[[Var; 2]; 2]>; 3],
}

/// The times of a sheet by their place in the document.
fn sheets(cure: &CureInput) -> [(&'static str, Option<[SheetReading; 2]>); 3] {
    [("cure.pot_life", cure.pot_life), ("cure.handling", cure.handling), ("cure.full_cure", cure.full_cure)]
}

impl Cure {
    pub fn read(cure: &CureInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        temperature("cure.temperature_c", cure.temperature_c)?;
        if let Some(mass_g) = cure.pot_life_mass_g {
            check::positive("cure.pot_life_mass_g", mass_g, "g")?;
        }
        let shop = inputs.add("cure.temperature_c", cure.temperature_c, cure.temperature_c_sd)?;
        let mut found = [None; 3];
        for ((field, points), found) in sheets(cure).into_iter().zip(&mut found) {
            let Some(points) = points else { continue };
            check_sheet(field, points.map(|p| SheetPoint { temperature_c: p.temperature_c, time_min: p.time_min }))?;
            let mut point = |i: usize| -> Result<[Var; 2], PhysicsError> {
                let SheetReading { temperature_c, temperature_c_sd, time_min, time_min_sd } = points[i];
                Ok([
                    inputs.add(format!("{field}[{i}].temperature_c"), temperature_c, temperature_c_sd)?,
                    inputs.add(format!("{field}[{i}].time_min"), time_min, time_min_sd)?,
                ])
            };
            *found = Some([point(0)?, point(1)?]);
        }
        if found.iter().all(Option::is_none) {
            return Err(PhysicsError::Missing {
                field: "cure.pot_life".to_owned(),
                advice: "give two points of the sheet for pot_life, handling or full_cure",
            });
        }
        Ok(Self { shop, sheets: found })
    }

    /// How many results there are.
    pub fn count(self) -> usize {
        2 * self.sheets.iter().flatten().count()
    }

    /// Time and activation energy of each sheet that was given.
    pub fn results(self, x: &Point<'_, Dual>) -> impl Iterator<Item = Dual> {
        let shop = x[self.shop];
        let given = self.sheets.map(|sheet| sheet.map(|points| points.map(|point| point.map(|var| x[var]))));
        given.into_iter().flatten().flat_map(move |points| line_through(points, shop))
    }

    pub fn output(self, input: &CureInput, results: &Propagated, first: usize, mix_g: Option<f64>) -> CureOutput {
        let mut next = first;
        let mut figure = |given: bool| {
            given.then(|| {
                next += 2;
                next - 2
            })
        };
        let [pot_life, handling, full_cure] = self.sheets.map(|sheet| figure(sheet.is_some()));
        let value = |at: Option<usize>| at.map(|i| results.value(i));
        let sd = |at: Option<usize>| at.and_then(|i| results.sd(i));
        let energies: Vec<usize> = [pot_life, handling, full_cure].into_iter().flatten().map(|i| i + 1).collect();
        let energy_sds: Vec<Option<f64>> = energies.iter().map(|i| results.sd(*i)).collect();
        CureOutput {
            pot_life_min: value(pot_life),
            pot_life_min_sd: sd(pot_life),
            handling_min: value(handling),
            handling_min_sd: sd(handling),
            full_cure_min: value(full_cure),
            full_cure_min_sd: sd(full_cure),
            activation_energy_kj_mol: energies.iter().map(|i| results.value(*i)).collect(),
            activation_energy_kj_mol_sd: energy_sds
                .iter()
                .any(Option::is_some)
                .then(|| energy_sds.iter().map(|sd| sd.unwrap_or(0.0)).collect()),
            warnings: warnings(input, mix_g),
        }
    }
}

fn warnings(input: &CureInput, mix_g: Option<f64>) -> Vec<String> {
    let mut warnings = Vec::new();
    for (field, points) in sheets(input) {
        if let Some([one, other]) = points.map(|points| points.map(|point| point.temperature_c))
            && !(one.min(other)..=one.max(other)).contains(&input.temperature_c)
        {
            warnings.push(format!("{field} is carried beyond the temperatures of the sheet"));
        }
    }
    if let (Some(stated_g), Some(mix_g)) = (input.pot_life_mass_g, mix_g)
        && mix_g > stated_g
    {
        warnings.push(format!(
            "{} g in one cup is more than the {stated_g} g the pot life is stated for: it will be shorter, and hot",
            quantity::decimal(mix_g, 0)
        ));
    }
    warnings
}
