//! Amounts for a batch: two parts, beads, and something to spare.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{PhysicsError, check};

/// What the ratio on the product's sheet counts. By mass and by volume differ with the densities of the parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Ratio {
    /// Grams to grams.
    ByMass,
    /// Millilitres to millilitres.
    ByVolume,
}

/// A batch of two-part adhesive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BatchInput {
    /// Joints to glue.
    pub joints: u32,
    /// What stays in the cup, on the stick and is wiped off, as a share of the whole mix; 0.3 is 30 %.
    #[serde(default)]
    pub waste_share: f64,
    /// What the ratio counts.
    pub ratio: Ratio,
    /// Resin in the ratio.
    pub resin_parts: f64,
    /// Hardener in the ratio.
    pub hardener_parts: f64,
    /// Density of the resin in g/ml; needed for a ratio by volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resin_density_g_ml: Option<f64>,
    /// Density of the hardener in g/ml; needed for a ratio by volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hardener_density_g_ml: Option<f64>,
    /// Beads as a share of the mass of resin and hardener; 0.02 is 2 %.
    #[serde(default)]
    pub bead_share: f64,
    /// Adhesive a joint in grams, where it is known from weighing and `joint` is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g: Option<f64>,
}

/// Amounts to weigh out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct BatchOutput {
    /// Resin in grams.
    pub resin_g: f64,
    /// Hardener in grams.
    pub hardener_g: f64,
    /// Beads in grams.
    pub beads_g: f64,
    /// Everything in the cup, in grams.
    pub mix_g: f64,
    /// What ends in the joints, in grams.
    pub in_joints_g: f64,
    /// Hardener for one gram of resin.
    pub hardener_a_gram_of_resin_g: f64,
}

/// Amounts for a batch.
pub(super) fn batch(input: &BatchInput, joint_adhesive_g: Option<f64>) -> Result<BatchOutput, PhysicsError> {
    check::at_least("batch.joints", f64::from(input.joints), 1.0, "joints", "say how many joints are glued")?;
    check::not_negative("batch.waste_share", input.waste_share, "(no unit)")?;
    check::below("batch.waste_share", input.waste_share, 1.0, "(no unit)", "give a share: 0.3 for 30 %")?;
    check::not_negative("batch.bead_share", input.bead_share, "(no unit)")?;
    check::below("batch.bead_share", input.bead_share, 1.0, "(no unit)", "give a share: 0.02 for 2 %")?;
    check::positive("batch.resin_parts", input.resin_parts, "parts")?;
    check::positive("batch.hardener_parts", input.hardener_parts, "parts")?;
    let a_joint_g = match (joint_adhesive_g, input.adhesive_a_joint_g) {
        (Some(_), Some(_)) => {
            return Err(PhysicsError::Contradiction {
                what: "joint and batch.adhesive_a_joint_g are both given".to_owned(),
                advice: "give the weighed figure or the geometry, not both",
            });
        }
        (Some(adhesive_g), None) => adhesive_g,
        (None, Some(adhesive_g)) => check::positive("batch.adhesive_a_joint_g", adhesive_g, "g")?,
        (None, None) => {
            return Err(PhysicsError::Missing {
                field: "batch.adhesive_a_joint_g".to_owned(),
                advice: "give it, or describe the joint",
            });
        }
    };
    let hardener_a_gram = hardener_a_gram_of_resin(input)?;
    let in_joints_g = a_joint_g * f64::from(input.joints);
    let mix_g = in_joints_g / (1.0 - input.waste_share);
    let adhesive_g = mix_g / (1.0 + input.bead_share);
    let resin_g = adhesive_g / (1.0 + hardener_a_gram);
    Ok(BatchOutput {
        resin_g,
        hardener_g: resin_g * hardener_a_gram,
        beads_g: adhesive_g * input.bead_share,
        mix_g,
        in_joints_g,
        hardener_a_gram_of_resin_g: hardener_a_gram,
    })
}

fn hardener_a_gram_of_resin(input: &BatchInput) -> Result<f64, PhysicsError> {
    let by_parts = input.hardener_parts / input.resin_parts;
    if input.ratio == Ratio::ByMass {
        return Ok(by_parts);
    }
    let density = |field: &str, density_g_ml: Option<f64>| {
        let advice = "a ratio by volume needs the densities of both parts to be weighed out";
        let density_g_ml = density_g_ml.ok_or_else(|| PhysicsError::Missing { field: field.to_owned(), advice })?;
        check::positive(field, density_g_ml, "g/ml")
    };
    let hardener_g_ml = density("batch.hardener_density_g_ml", input.hardener_density_g_ml)?;
    Ok(by_parts * hardener_g_ml / density("batch.resin_density_g_ml", input.resin_density_g_ml)?)
}
