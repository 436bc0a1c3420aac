//! The two-part adhesive of a joint, as a model.

use crate::error::TradeError;
use crate::error::{plausible, within};
use crate::step::Strength;
use clubphysics::plausible::ADHESIVE_DENSITY_G_ML;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Time to a strength at a temperature, from the product's own sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CurePoint {
    /// How long the joint takes to that strength.
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
    /// What a millilitre of resin weighs, from the product's own sheet.
    #[schema(minimum = 0.5, maximum = 3)]
    pub resin_density_g_per_ml: f64,
    /// What a millilitre of hardener weighs, from the product's own sheet.
    #[schema(minimum = 0.5, maximum = 3)]
    pub hardener_density_g_per_ml: f64,
    /// Pot life on the product's own sheet, minutes, at `pot_life_at_c` for a cup of `pot_life_mass_g`.
    #[schema(minimum = 0.5, maximum = 1440)]
    pub pot_life_min: f64,
    /// Temperature that the pot life holds at.
    #[schema(minimum = 5, maximum = 60)]
    pub pot_life_at_c: f64,
    /// Mass of the mix in one cup that the pot life holds for.
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

impl AdhesiveModel {
    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("resin_per_hardener_by_mass", self.resin_per_hardener_by_mass, 0.05, 100.0, "parts")?;
        within("resin_per_hardener_by_volume", self.resin_per_hardener_by_volume, 0.05, 100.0, "parts")?;
        plausible("resin_density_g_per_ml", self.resin_density_g_per_ml, &ADHESIVE_DENSITY_G_ML)?;
        plausible("hardener_density_g_per_ml", self.hardener_density_g_per_ml, &ADHESIVE_DENSITY_G_ML)?;
        let by_volume =
            self.resin_per_hardener_by_volume * self.resin_density_g_per_ml / self.hardener_density_g_per_ml;
        let apart = (by_volume / self.resin_per_hardener_by_mass - 1.0).abs();
        if apart > 0.05 {
            return Err(TradeError::refused(AdhesiveFault::RatiosDisagree {
                code: self.code.clone(),
                by_volume: self.resin_per_hardener_by_volume,
                as_mass: by_volume,
                by_mass: self.resin_per_hardener_by_mass,
            }));
        }
        within("pot_life_min", self.pot_life_min, 0.5, 1440.0, "min")?;
        within("pot_life_at_c", self.pot_life_at_c, 5.0, 60.0, "°C")?;
        within("pot_life_mass_g", self.pot_life_mass_g, 1.0, 1000.0, "g")?;
        let code = || self.code.clone();
        for (strength, name, points) in
            [(Strength::Handling, "handling", &self.handling), (Strength::Full, "full_cure", &self.full_cure)]
        {
            if points.is_empty() || points.len() > 2 {
                return Err(TradeError::refused(AdhesiveFault::CureTimes { code: code(), strength, n: points.len() }));
            }
            for p in points {
                within(format!("{name}.hours"), p.hours, 0.01, 1000.0, "h")?;
                within(format!("{name}.at_c"), p.at_c, 0.0, 150.0, "°C")?;
            }
            if let [a, b] = points.as_slice()
                && ((a.at_c - b.at_c).abs() < 1.0 || (a.at_c < b.at_c) != (a.hours > b.hours))
            {
                return Err(TradeError::refused(AdhesiveFault::CureSlowerWithHeat { code: code(), strength }));
            }
        }
        within("joint_mass_g", self.joint_mass_g, 0.1, 10.0, "g")?;
        within("joint_mass_sd_g", self.joint_mass_sd_g, 0.0, 5.0, "g").map(|_| ())
    }
}

fact::facts! {
    /// What is refused of an adhesive.
    pub(crate) enum AdhesiveFault: "adhesive_fault" {
        RatiosDisagree { code: String, by_volume: f64, as_mass: f64, by_mass: f64 },
        CureTimes { code: String, strength: crate::step::Strength, n: usize },
        CureSlowerWithHeat { code: String, strength: crate::step::Strength },
    }
}
