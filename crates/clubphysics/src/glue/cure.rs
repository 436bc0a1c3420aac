//! Times by temperature.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{Bound, PhysicsError, check, real::Real};

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

/// Times on the product's sheet and the temperature of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CureInput {
    /// Temperature of the shop in degrees Celsius.
    pub temperature_c: f64,
    /// Pot life at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life: Option<[SheetPoint; 2]>,
    /// Mass the sheet's pot life is stated for, in grams; often 100.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life_mass_g: Option<f64>,
    /// Handling strength at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub handling: Option<[SheetPoint; 2]>,
    /// Full cure at two temperatures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub full_cure: Option<[SheetPoint; 2]>,
}

/// Times at the temperature of the shop. The product's own sheet always wins.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CureOutput {
    /// Pot life in minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pot_life_min: Option<f64>,
    /// Time to handling strength in minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handling_min: Option<f64>,
    /// Time to full cure in minutes: no club is swung before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_cure_min: Option<f64>,
    /// Activation energy of each time above, in kJ/mol, in their order.
    pub activation_energy_kj_mol: Vec<f64>,
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
    let inverse = T::constant(1.0 / (reference_c + ZERO_CELSIUS_K));
    let inverse_difference = inverse - T::constant(1.0) / (temperature_c + ZERO_CELSIUS_K);
    (activation_energy_kj_mol * inverse_difference * (1000.0 / GAS_CONSTANT_J_MOL_K)).exp()
}

/// Time at a temperature by the line through two points of a sheet, and the activation energy in kJ/mol.
///
/// # Errors
///
/// [`PhysicsError`] where temperatures are alike, times are not positive, or the warmer point takes longer.
pub fn time_at(field: &str, points: [SheetPoint; 2], temperature_c: f64) -> Result<(f64, f64), PhysicsError> {
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
            advice: "warmth shortens every time; the two points are probably exchanged",
        });
    }
    let inverse = |celsius: f64| 1.0 / (celsius + ZERO_CELSIUS_K);
    let span = inverse(cold.temperature_c) - inverse(warm.temperature_c);
    let energy_kj_mol = GAS_CONSTANT_J_MOL_K / 1000.0 * (cold.time_min / warm.time_min).ln() / span;
    Ok((cold.time_min / relative_rate(energy_kj_mol, temperature_c, cold.temperature_c), energy_kj_mol))
}

fn temperature(field: &str, temperature_c: f64) -> Result<f64, PhysicsError> {
    const COLDEST_C: f64 = -20.0;
    const HOTTEST_C: f64 = 150.0;
    check::at_least(field, temperature_c, COLDEST_C, "°C", "give the temperature in degrees Celsius")?;
    check::at_most(field, temperature_c, HOTTEST_C, "°C", "give the temperature in degrees Celsius")
}

/// Times at the temperature of the shop.
pub(super) fn cure(input: &CureInput, mix_g: Option<f64>) -> Result<CureOutput, PhysicsError> {
    temperature("cure.temperature_c", input.temperature_c)?;
    if let Some(mass_g) = input.pot_life_mass_g {
        check::positive("cure.pot_life_mass_g", mass_g, "g")?;
    }
    let mut energies = Vec::new();
    let mut warnings = Vec::new();
    let mut time = |field: &str, points: Option<[SheetPoint; 2]>| -> Result<Option<f64>, PhysicsError> {
        let Some(points) = points else { return Ok(None) };
        let (time_min, energy_kj_mol) = time_at(field, points, input.temperature_c)?;
        energies.push(energy_kj_mol);
        let [low, high] = points.map(|point| point.temperature_c);
        if input.temperature_c < low.min(high) || input.temperature_c > low.max(high) {
            warnings.push(format!("{field} is carried beyond the temperatures of the sheet"));
        }
        Ok(Some(time_min))
    };
    let pot_life_min = time("cure.pot_life", input.pot_life)?;
    let handling_min = time("cure.handling", input.handling)?;
    let full_cure_min = time("cure.full_cure", input.full_cure)?;
    if energies.is_empty() {
        return Err(PhysicsError::Missing {
            field: "cure.pot_life".to_owned(),
            advice: "give two points of the sheet for pot_life, handling or full_cure",
        });
    }
    if let (Some(stated_g), Some(mix_g)) = (input.pot_life_mass_g, mix_g)
        && mix_g > stated_g
    {
        warnings.push(format!(
            "{} g in one cup is more than the {stated_g} g the pot life is stated for: it will be shorter, and hot",
            quantity::decimal(mix_g, 0)
        ));
    }
    Ok(CureOutput { pot_life_min, handling_min, full_cure_min, activation_energy_kj_mol: energies, warnings })
}
