//! Times by temperature.

use crate::advice::{Advice, Clash};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::mix::{Amounts, Cups, cups, work_min};
use super::remark::{CureTime, GlueRemark};
use crate::{
    Bound, PhysicsError, check, plausible,
    real::{Dual, Real},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// Molar gas constant, exact since 2019 (SI brochure, 9th edition).
pub const GAS_CONSTANT_J_MOL_K: f64 = 8.314_462_618;
const ZERO_CELSIUS_K: f64 = 273.15;

/// Activation energy where a sheet states a time at one temperature only, kJ/mol: it doubles the rate from 25 to 35 °C
/// (derived from the suppliers' rule that pot life about halves per 10 °C; handbook values 0.477 at 15 °C, 2.782 at 40 °C).
pub const ONE_POINT_ENERGY_KJ_MOL: f64 = 52.95;

/// How far beyond the temperatures of its sheet a time may be carried without a remark, °C. Sheets say 23 °C (the climate
/// of a test laboratory, ISO 291, from memory) or 25 °C for "room temperature", and shops work at 20 °C. Within 5 °C a time
/// by [`ONE_POINT_ENERGY_KJ_MOL`] changes by a factor of 1.44 at most (derived).
pub const SHEET_MARGIN_C: f64 = 5.0;

/// A point of the product's sheet: so long at this temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetPoint {
    /// Temperature that the sheet names, −20 to 150 °C.
    pub temperature_c: f64,
    /// Time that the sheet states there, in minutes, above 0.
    pub time_min: f64,
}

/// A point of the product's sheet as it stands in a document.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetReading {
    /// Temperature that the sheet names, −20 to 150 °C.
    pub temperature_c: f64,
    /// Standard deviation of `temperature_c`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c_sd: Option<f64>,
    /// Time that the sheet states there, in minutes, above 0.
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
    /// Pot life at one temperature of the sheet, or at two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life: Option<Vec<SheetReading>>,
    /// Mass in one cup for which the sheet states the pot life, in grams; often 100. With a `batch`, the pot life of a
    /// larger cup is shorter by the ratio of the masses.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pot_life_mass_g: Option<f64>,
    /// Handling strength at one temperature of the sheet, or at two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub handling: Option<Vec<SheetReading>>,
    /// Full cure at one temperature of the sheet, or at two.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub full_cure: Option<Vec<SheetReading>>,
}

/// Times at the temperature of the shop. The product's own sheet always wins.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CureOutput {
    /// Pot life in minutes, of the whole `batch` in one cup where there is one.
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
    /// Their standard deviations, where a point of the sheet has one; zero for a time whose points have none, or that has
    /// one point.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub activation_energy_kj_mol_sd: Option<Vec<f64>>,
    /// Remarks: a room far from the temperatures of the sheet, a cup that goes off before all joints are glued.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<GlueRemark>,
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

/// Time at a temperature and activation energy in kJ/mol by one or two points of temperature and time that were checked.
fn line_through<T: Real>(points: &[[T; 2]], temperature_c: T) -> [T; 2] {
    match *points {
        [[one_c, one_min], [other_c, other_min], ..] => {
            let span = per_kelvin(one_c) - per_kelvin(other_c);
            let energy_kj_mol = (one_min / other_min).ln() / span * (GAS_CONSTANT_J_MOL_K / 1000.0);
            [one_min / rate(energy_kj_mol, temperature_c, one_c), energy_kj_mol]
        }
        [[one_c, one_min]] => {
            let energy_kj_mol = T::constant(ONE_POINT_ENERGY_KJ_MOL);
            [one_min / rate(energy_kj_mol, temperature_c, one_c), energy_kj_mol]
        }
        [] => [T::constant(0.0); 2],
    }
}

/// Time at a temperature by a product's sheet, and the activation energy in kJ/mol: by the line through two points of the
/// sheet, or by one point and [`ONE_POINT_ENERGY_KJ_MOL`].
///
/// # Errors
///
/// [`PhysicsError`] where there is no point or more than two, temperatures are alike, times are not positive, or the
/// warmer point takes longer.
///
/// # Examples
///
/// ```
/// use clubphysics::glue::{SheetPoint, time_at};
/// // By the suppliers' rule a pot life about halves per 10 °C: 40 min at 25 °C are 20 min at 35 °C.
/// let sheet = [SheetPoint { temperature_c: 25.0, time_min: 40.0 }];
/// let (time_min, _) = time_at("pot_life", sheet, 35.0)?;
/// assert!((time_min - 20.0).abs() < 0.01);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn time_at(field: &str, points: impl AsRef<[SheetPoint]>, temperature_c: f64) -> Result<(f64, f64), PhysicsError> {
    let points = points.as_ref();
    check_sheet(field, points)?;
    let figures: Vec<_> = points.iter().map(|p| [p.temperature_c, p.time_min]).collect();
    let [time_min, energy_kj_mol] = line_through(&figures, temperature_c);
    Ok((time_min, energy_kj_mol))
}

/// Share of the sheet's pot life that a cup keeps: a larger cup than the sheet's holds its own heat and goes off sooner, by
/// the ratio of the masses. Common practice, no source; the true time depends on the shape of the cup too. A smaller cup
/// counts as the sheet's, to be careful.
///
/// # Examples
///
/// ```
/// // Twice the mass of the sheet keeps half of its pot life; half the mass gains nothing.
/// assert_eq!(clubphysics::glue::pot_life_share(100.0, 200.0_f64), 0.5);
/// assert_eq!(clubphysics::glue::pot_life_share(100.0, 50.0_f64), 1.0);
/// ```
#[must_use]
pub fn pot_life_share<T: Real>(stated_for_g: f64, mix_g: T) -> T {
    if mix_g.value() > stated_for_g { T::constant(stated_for_g) / mix_g } else { T::constant(1.0) }
}

/// How a room lies to the temperatures of a product's sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reach {
    /// Within them, or no further off than [`SHEET_MARGIN_C`].
    Within,
    /// Colder than the coldest, which is given: a time carried so far says nothing of whether it cures at all.
    Colder(f64),
    /// Warmer than the warmest, which is given.
    Warmer(f64),
}

/// How a room lies to the temperatures for which a sheet states a time. Without any, everything is within.
#[must_use]
pub fn reach(sheet_c: impl IntoIterator<Item = f64>, room_c: f64) -> Reach {
    let ends = sheet_c.into_iter().fold(None, |ends: Option<(f64, f64)>, at_c| {
        let (low, high) = ends.unwrap_or((at_c, at_c));
        Some((low.min(at_c), high.max(at_c)))
    });
    match ends {
        Some((coldest_c, _)) if room_c < coldest_c - SHEET_MARGIN_C => Reach::Colder(coldest_c),
        Some((_, warmest_c)) if room_c > warmest_c + SHEET_MARGIN_C => Reach::Warmer(warmest_c),
        _ => Reach::Within,
    }
}

fn check_sheet(field: &str, points: &[SheetPoint]) -> Result<(), PhysicsError> {
    const ALIKE_C: f64 = 0.5;
    check::enough(field, points.len(), 1, Advice::OnePointOrTwo)?;
    if points.len() > 2 {
        return Err(PhysicsError::Contradiction {
            what: Clash::Points { field: field.to_owned(), n: points.len() },
            advice: Box::new(Advice::OnePointOrTwoAround),
        });
    }
    for (i, point) in points.iter().enumerate() {
        plausible::SHEET_C.check(&format!("{field}[{i}].temperature_c"), point.temperature_c)?;
        check::positive(&format!("{field}[{i}].time_min"), point.time_min, "min")?;
    }
    let &[one, other] = points else { return Ok(()) };
    let [cold, warm] = if one.temperature_c <= other.temperature_c { [one, other] } else { [other, one] };
    if warm.temperature_c - cold.temperature_c < ALIKE_C {
        return Err(PhysicsError::Contradiction {
            what: Clash::SameTemperature { field: field.to_owned(), at_c: cold.temperature_c },
            advice: Box::new(Advice::TwoTemperatures),
        });
    }
    if warm.time_min > cold.time_min {
        return Err(PhysicsError::OutOfRange {
            field: format!("{field}, time at {} °C", warm.temperature_c),
            value: warm.time_min,
            bound: Bound::AtMost,
            limit: cold.time_min,
            unit: "min",
            advice: Box::new(Advice::WarmthShortens),
        });
    }
    Ok(())
}

/// Sheet and shop among the inputs.
#[derive(Debug, Clone)]
pub(super) struct Cure {
    shop: Var,
    /// Mass that the sheet's pot life is stated for.
    pot_life_mass_g: Option<f64>,
    /// Temperature and time of each point, for pot life, handling and full cure.
    sheets: [Option<Vec<[Var; 2]>>; 3],
}

/// The times of a sheet by their place in the document.
fn sheets(cure: &CureInput) -> [(&'static str, Option<&[SheetReading]>); 3] {
    [
        ("cure.pot_life", cure.pot_life.as_deref()),
        ("cure.handling", cure.handling.as_deref()),
        ("cure.full_cure", cure.full_cure.as_deref()),
    ]
}

results! {
    /// A time of the sheet at the shop's temperature.
    pub(super) struct Carried { time_min, energy_kj_mol }
}

/// Pot life, handling and full cure, where the sheet gives them.
pub(super) type Times<N> = [Option<Carried<N>>; 3];

impl Cure {
    pub fn read(cure: &CureInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        plausible::ROOM_C.check("cure.temperature_c", cure.temperature_c)?;
        if let Some(mass_g) = cure.pot_life_mass_g {
            check::positive("cure.pot_life_mass_g", mass_g, "g")?;
        }
        let shop = inputs.add("cure.temperature_c", cure.temperature_c, cure.temperature_c_sd)?;
        let mut found = [None, None, None];
        for ((field, points), found) in sheets(cure).into_iter().zip(&mut found) {
            let Some(points) = points else { continue };
            let plain: Vec<_> =
                points.iter().map(|p| SheetPoint { temperature_c: p.temperature_c, time_min: p.time_min }).collect();
            check_sheet(field, &plain)?;
            let mut vars = Vec::with_capacity(points.len());
            for (i, p) in points.iter().enumerate() {
                vars.push([
                    inputs.add(format!("{field}[{i}].temperature_c"), p.temperature_c, p.temperature_c_sd)?,
                    inputs.add(format!("{field}[{i}].time_min"), p.time_min, p.time_min_sd)?,
                ]);
            }
            *found = Some(vars);
        }
        if found.iter().all(Option::is_none) {
            return Err(PhysicsError::Missing {
                field: "cure.pot_life".to_owned(),
                advice: Box::new(Advice::PointsOfATime),
            });
        }
        Ok(Self { shop, pot_life_mass_g: cure.pot_life_mass_g, sheets: found })
    }

    /// What each sheet that was given says at the shop's temperature; the pot life is that of the mix in one cup.
    pub fn results(&self, x: &Point<'_, Dual>, mix_g: Option<Dual>) -> Times<Dual> {
        let carried = |sheet: &Option<Vec<[Var; 2]>>| {
            sheet.as_ref().map(|sheet| {
                let points: Vec<_> = sheet.iter().map(|point| point.map(|var| x[var])).collect();
                let [time_min, energy_kj_mol] = line_through(&points, x[self.shop]);
                Carried { time_min, energy_kj_mol }
            })
        };
        let [pot_life, handling, full_cure] = self.sheets.each_ref().map(carried);
        let share = match (self.pot_life_mass_g, mix_g) {
            (Some(stated_g), Some(mix_g)) => pot_life_share(stated_g, mix_g),
            _ => Dual::fixed(1.0),
        };
        let in_one_cup = |sheet: Carried<Dual>| Carried { time_min: sheet.time_min * share, ..sheet };
        [pot_life.map(in_one_cup), handling, full_cure]
    }

    pub fn output(input: &CureInput, times: Times<Estimate>) -> CureOutput {
        let energies = || times.iter().flatten().map(|carried| carried.energy_kj_mol);
        let [pot_life, handling, full_cure] = times.map(|carried| carried.map(|carried| carried.time_min));
        let value = |time: Option<Estimate>| time.map(|time| time.value);
        let sd = |time: Option<Estimate>| time.and_then(|time| time.sd);
        CureOutput {
            pot_life_min: value(pot_life),
            pot_life_min_sd: sd(pot_life),
            handling_min: value(handling),
            handling_min_sd: sd(handling),
            full_cure_min: value(full_cure),
            full_cure_min_sd: sd(full_cure),
            activation_energy_kj_mol: energies().map(|energy| energy.value).collect(),
            activation_energy_kj_mol_sd: energies()
                .any(|energy| energy.sd.is_some())
                .then(|| energies().map(|energy| energy.sd.unwrap_or(0.0)).collect()),
            warnings: beyond_the_sheet(input),
        }
    }
}

/// Remarks on times that are carried beyond the temperatures of their sheet.
fn beyond_the_sheet(input: &CureInput) -> Vec<GlueRemark> {
    let room_c = input.temperature_c;
    let times = [CureTime::PotLife, CureTime::Handling, CureTime::FullCure];
    let mut warnings = Vec::new();
    for ((_, points), time) in sheets(input).into_iter().zip(times) {
        let Some(points) = points else { continue };
        match (reach(points.iter().map(|point| point.temperature_c), room_c), time) {
            (Reach::Within, _) => {}
            (Reach::Colder(sheet_c), CureTime::PotLife) => {
                warnings.push(GlueRemark::PotLifeColder { room_c, sheet_c });
            }
            (Reach::Colder(sheet_c), time) => warnings.push(GlueRemark::CureColder { time, room_c, sheet_c }),
            (Reach::Warmer(sheet_c), time) => warnings.push(GlueRemark::Warmer { time, room_c, sheet_c }),
        }
    }
    warnings
}

/// Remarks on a cup that is larger than the sheet's, or that goes off before its joints are glued.
///
/// `pot_life_min` gives the pot life of a cup mixed for a number of joints.
pub(super) fn too_large_a_cup(
    input: &CureInput,
    (joints, mix_g): (u32, f64),
    pot_life_min: impl Fn(u32) -> f64,
    mix_of: impl Fn(u32) -> Amounts,
) -> Vec<GlueRemark> {
    let mut warnings = Vec::new();
    if let Some(stated_g) = input.pot_life_mass_g.filter(|stated_g| mix_g > *stated_g) {
        warnings.push(GlueRemark::CupLarge { mix_g, stated_g });
    }
    match cups(joints, &pot_life_min) {
        Some(Cups { cups: 1, .. }) => {}
        Some(Cups { cups, joints_a_cup }) => {
            let each = mix_of(joints_a_cup);
            warnings.push(GlueRemark::SeveralCups {
                joints,
                work_min: work_min(joints),
                good_min: pot_life_min(joints),
                cups,
                joints_a_cup,
                resin_g: each.resin_g,
                hardener_g: each.hardener_g,
                spacers_g: each.beads_g,
            });
        }
        None => warnings.push(GlueRemark::CupTooShort { good_min: pot_life_min(1) }),
    }
    warnings
}
