//! The small things of the joint and of the grip: tip weights, ferrules, adhesive, tape.

use crate::WorkshopError;
use crate::error::{plausible, within};
use clubphysics::plausible::{ADHESIVE_DENSITY_G_ML, TIP_DIAMETER_MM};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// One compartment of the tip-weight tray.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TipWeightModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the tray.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Nominal mass.
    #[schema(minimum = 0.1, maximum = 40)]
    pub mass_g: f64,
    /// Smallest tip diameter of the shafts it goes into.
    #[schema(minimum = 5, maximum = 20)]
    pub tip_min_mm: f64,
    /// Largest tip diameter of the shafts it goes into.
    #[schema(minimum = 5, maximum = 20)]
    pub tip_max_mm: f64,
    /// Length inside the shaft.
    #[schema(minimum = 0.5, maximum = 120)]
    pub length_mm: f64,
    /// Thickness of the flange that stays outside the tip; 0 where there is none. It lifts the tip off the bottom of
    /// the bore by as much.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 10)]
    pub flange_mm: f64,
}

/// A ferrule model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FerruleModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the bag.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Inside diameter; it fits tips of the same diameter.
    #[schema(minimum = 6, maximum = 20)]
    pub inside_diameter_mm: f64,
    /// Length.
    #[schema(minimum = 3, maximum = 80)]
    pub length_mm: f64,
    /// Nominal mass.
    #[schema(minimum = 0.1, maximum = 10)]
    pub mass_g: f64,
}

/// Time to a strength at a temperature, from the product's own sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CurePoint {
    /// Hours.
    #[schema(minimum = 0.01, maximum = 1000)]
    pub hours: f64,
    /// At this temperature.
    #[schema(minimum = 0, maximum = 150)]
    pub at_c: f64,
}

/// A two-part adhesive, by its own sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdhesiveModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the tin.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Parts of resin to one part of hardener, by mass.
    #[schema(minimum = 0.05, maximum = 100)]
    pub resin_per_hardener_by_mass: f64,
    /// Parts of resin to one part of hardener, by volume.
    #[schema(minimum = 0.05, maximum = 100)]
    pub resin_per_hardener_by_volume: f64,
    /// Density of the resin.
    #[schema(minimum = 0.5, maximum = 3)]
    pub resin_density_g_per_ml: f64,
    /// Density of the hardener.
    #[schema(minimum = 0.5, maximum = 3)]
    pub hardener_density_g_per_ml: f64,
    /// Pot life in minutes …
    #[schema(minimum = 0.5, maximum = 1440)]
    pub pot_life_min: f64,
    /// … at this temperature …
    #[schema(minimum = 5, maximum = 60)]
    pub pot_life_at_c: f64,
    /// … for this mass in one cup.
    #[schema(minimum = 1, maximum = 1000)]
    pub pot_life_mass_g: f64,
    /// Strong enough to handle, grip and put on the scale. One point of the sheet, or two at different temperatures.
    #[schema(min_items = 1, max_items = 2)]
    pub handling: Vec<CurePoint>,
    /// Full cure: strong enough to bend and to swing.
    #[schema(min_items = 1, max_items = 2)]
    pub full_cure: Vec<CurePoint>,
    /// What one joint takes, of resin, hardener and spacers together.
    #[schema(minimum = 0.1, maximum = 10)]
    pub joint_mass_g: f64,
    /// How well the mean of a shop's joints is known before it has been learned.
    #[schema(minimum = 0, maximum = 5)]
    pub joint_mass_sd_g: f64,
}

/// A tape under the grip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TapeModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the roll.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Mass per area with its adhesive, without its liner.
    #[schema(minimum = 10, maximum = 2000)]
    pub mass_per_area_g_per_m2: f64,
    /// Thickness as it lies on the shaft.
    #[schema(minimum = 0.01, maximum = 2)]
    pub thickness_mm: f64,
    /// Width of the roll.
    #[schema(minimum = 5, maximum = 200)]
    pub width_mm: f64,
}

impl TipWeightModel {
    pub(super) fn check(&self) -> Result<(), WorkshopError> {
        within("mass_g", self.mass_g, 0.1, 40.0, "g")?;
        plausible("tip_min_mm", self.tip_min_mm, &TIP_DIAMETER_MM)?;
        within("tip_max_mm", self.tip_max_mm, self.tip_min_mm, 20.0, "mm")?;
        within("length_mm", self.length_mm, 0.5, 120.0, "mm")?;
        within("flange_mm", self.flange_mm, 0.0, 10.0, "mm").map(|_| ())
    }
}

impl FerruleModel {
    pub(super) fn check(&self) -> Result<(), WorkshopError> {
        within("inside_diameter_mm", self.inside_diameter_mm, 6.0, 20.0, "mm")?;
        within("length_mm", self.length_mm, 3.0, 80.0, "mm")?;
        within("mass_g", self.mass_g, 0.1, 10.0, "g").map(|_| ())
    }
}

impl AdhesiveModel {
    pub(super) fn check(&self) -> Result<(), WorkshopError> {
        within("resin_per_hardener_by_mass", self.resin_per_hardener_by_mass, 0.05, 100.0, "parts")?;
        within("resin_per_hardener_by_volume", self.resin_per_hardener_by_volume, 0.05, 100.0, "parts")?;
        plausible("resin_density_g_per_ml", self.resin_density_g_per_ml, &ADHESIVE_DENSITY_G_ML)?;
        plausible("hardener_density_g_per_ml", self.hardener_density_g_per_ml, &ADHESIVE_DENSITY_G_ML)?;
        let by_volume =
            self.resin_per_hardener_by_volume * self.resin_density_g_per_ml / self.hardener_density_g_per_ml;
        let apart = (by_volume / self.resin_per_hardener_by_mass - 1.0).abs();
        if apart > 0.05 {
            return Err(WorkshopError::Refused {
                what: format!(
                    "the adhesive “{}” has ratios that contradict each other: {} : 1 by volume is {by_volume:.2} : 1 \
                     by mass with these densities, but {} : 1 is given",
                    self.code, self.resin_per_hardener_by_volume, self.resin_per_hardener_by_mass
                ),
                next: "Read both ratios and both densities again from the product's sheet".into(),
            });
        }
        within("pot_life_min", self.pot_life_min, 0.5, 1440.0, "min")?;
        within("pot_life_at_c", self.pot_life_at_c, 5.0, 60.0, "°C")?;
        within("pot_life_mass_g", self.pot_life_mass_g, 1.0, 1000.0, "g")?;
        for (name, points) in [("handling", &self.handling), ("full_cure", &self.full_cure)] {
            if points.is_empty() || points.len() > 2 {
                return Err(WorkshopError::Refused {
                    what: format!("the adhesive “{}” has {} times for {name}", self.code, points.len()),
                    next: "Give one time, or two at different temperatures, from the product's sheet".into(),
                });
            }
            for p in points {
                within(&format!("{name}.hours"), p.hours, 0.01, 1000.0, "h")?;
                within(&format!("{name}.at_c"), p.at_c, 0.0, 150.0, "°C")?;
            }
            if let [a, b] = points.as_slice()
                && ((a.at_c - b.at_c).abs() < 1.0 || (a.at_c < b.at_c) != (a.hours > b.hours))
            {
                return Err(WorkshopError::Refused {
                    what: format!("the two {name} times of “{}” do not get shorter with heat", self.code),
                    next: "Read them again from the product's sheet".into(),
                });
            }
        }
        within("joint_mass_g", self.joint_mass_g, 0.1, 10.0, "g")?;
        within("joint_mass_sd_g", self.joint_mass_sd_g, 0.0, 5.0, "g").map(|_| ())
    }
}

impl TapeModel {
    pub(super) fn check(&self) -> Result<(), WorkshopError> {
        within("mass_per_area_g_per_m2", self.mass_per_area_g_per_m2, 10.0, 2000.0, "g/m²")?;
        within("thickness_mm", self.thickness_mm, 0.01, 2.0, "mm")?;
        within("width_mm", self.width_mm, 5.0, 200.0, "mm").map(|_| ())
    }
}
