//! Amounts for a batch: two parts, beads, and something to spare.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{
    PhysicsError, check,
    real::Dual,
    uncertainty::{Inputs, Point, Propagated, Var},
};

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
    /// Standard deviation of `waste_share`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste_share_sd: Option<f64>,
    /// What the ratio counts.
    pub ratio: Ratio,
    /// Resin in the ratio.
    pub resin_parts: f64,
    /// Standard deviation of `resin_parts`, as of a pump that doses unevenly.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resin_parts_sd: Option<f64>,
    /// Hardener in the ratio.
    pub hardener_parts: f64,
    /// Standard deviation of `hardener_parts`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hardener_parts_sd: Option<f64>,
    /// Density of the resin in g/ml; needed for a ratio by volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resin_density_g_ml: Option<f64>,
    /// Standard deviation of `resin_density_g_ml`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resin_density_g_ml_sd: Option<f64>,
    /// Density of the hardener in g/ml; needed for a ratio by volume.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hardener_density_g_ml: Option<f64>,
    /// Standard deviation of `hardener_density_g_ml`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hardener_density_g_ml_sd: Option<f64>,
    /// Beads as a share of the mass of resin and hardener; 0.02 is 2 %.
    #[serde(default)]
    pub bead_share: f64,
    /// Standard deviation of `bead_share`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bead_share_sd: Option<f64>,
    /// Adhesive a joint in grams, where it is known from weighing and `joint` is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g: Option<f64>,
    /// Standard deviation of `adhesive_a_joint_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g_sd: Option<f64>,
}

/// Amounts to weigh out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct BatchOutput {
    /// Resin in grams.
    pub resin_g: f64,
    /// Standard deviation of `resin_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resin_g_sd: Option<f64>,
    /// Hardener in grams.
    pub hardener_g: f64,
    /// Standard deviation of `hardener_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardener_g_sd: Option<f64>,
    /// Beads in grams.
    pub beads_g: f64,
    /// Standard deviation of `beads_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beads_g_sd: Option<f64>,
    /// Everything in the cup, in grams.
    pub mix_g: f64,
    /// Standard deviation of `mix_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mix_g_sd: Option<f64>,
    /// What ends in the joints, in grams.
    pub in_joints_g: f64,
    /// Standard deviation of `in_joints_g`. The joints are taken as alike: one error for all, it does not average out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_joints_g_sd: Option<f64>,
    /// Hardener for one gram of resin.
    pub hardener_a_gram_of_resin_g: f64,
    /// Standard deviation of `hardener_a_gram_of_resin_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardener_a_gram_of_resin_g_sd: Option<f64>,
}

/// A batch among the inputs.
#[derive(Clone, Copy)]
pub(super) struct Batch {
    joints: f64,
    waste_share: Var,
    bead_share: Var,
    /// Resin, hardener.
    parts: [Var; 2],
    /// Resin, hardener; by volume only.
    densities: Option<[Var; 2]>,
    /// Where there is no joint to take it from.
    adhesive_a_joint: Option<Var>,
}

impl Batch {
    pub const RESULTS: usize = 6;

    pub fn read(batch: &BatchInput, has_joint: bool, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        check::at_least("batch.joints", f64::from(batch.joints), 1.0, "joints", "say how many joints are glued")?;
        check::not_negative("batch.waste_share", batch.waste_share, "(no unit)")?;
        check::below("batch.waste_share", batch.waste_share, 1.0, "(no unit)", "give a share: 0.3 for 30 %")?;
        check::not_negative("batch.bead_share", batch.bead_share, "(no unit)")?;
        check::below("batch.bead_share", batch.bead_share, 1.0, "(no unit)", "give a share: 0.02 for 2 %")?;
        check::positive("batch.resin_parts", batch.resin_parts, "parts")?;
        check::positive("batch.hardener_parts", batch.hardener_parts, "parts")?;
        refuse_lone_deviations(batch)?;
        Ok(Self {
            joints: f64::from(batch.joints),
            adhesive_a_joint: adhesive_a_joint(batch, has_joint, inputs)?,
            waste_share: inputs.add("batch.waste_share", batch.waste_share, batch.waste_share_sd)?,
            bead_share: inputs.add("batch.bead_share", batch.bead_share, batch.bead_share_sd)?,
            parts: [
                inputs.add("batch.resin_parts", batch.resin_parts, batch.resin_parts_sd)?,
                inputs.add("batch.hardener_parts", batch.hardener_parts, batch.hardener_parts_sd)?,
            ],
            densities: densities(batch, inputs)?,
        })
    }

    /// Resin, hardener, beads, the whole mix, what ends in the joints, hardener for a gram of resin.
    pub fn results(self, x: &Point<'_, Dual>, joint_adhesive: Option<Dual>) -> [Dual; Self::RESULTS] {
        let a_joint = self.adhesive_a_joint.map(|var| x[var]).or(joint_adhesive).unwrap_or(Dual::fixed(0.0));
        let [resin_parts, hardener_parts] = self.parts.map(|var| x[var]);
        let by_parts = hardener_parts / resin_parts;
        let hardener_a_gram = self.densities.map_or(by_parts, |[resin, hardener]| by_parts * x[hardener] / x[resin]);
        let in_joints = a_joint * self.joints;
        let mix = in_joints / (-x[self.waste_share] + 1.0);
        let adhesive = mix / (x[self.bead_share] + 1.0);
        let resin = adhesive / (hardener_a_gram + 1.0);
        [resin, resin * hardener_a_gram, adhesive * x[self.bead_share], mix, in_joints, hardener_a_gram]
    }

    pub fn output(results: &Propagated, first: usize) -> BatchOutput {
        let figure = |i: usize| (results.value(first + i), results.sd(first + i));
        let [resin, hardener, beads, mix, in_joints, a_gram] = std::array::from_fn(figure);
        BatchOutput {
            resin_g: resin.0,
            resin_g_sd: resin.1,
            hardener_g: hardener.0,
            hardener_g_sd: hardener.1,
            beads_g: beads.0,
            beads_g_sd: beads.1,
            mix_g: mix.0,
            mix_g_sd: mix.1,
            in_joints_g: in_joints.0,
            in_joints_g_sd: in_joints.1,
            hardener_a_gram_of_resin_g: a_gram.0,
            hardener_a_gram_of_resin_g_sd: a_gram.1,
        }
    }
}

/// A standard deviation without its figure is a slip that would else be dropped without a word.
fn refuse_lone_deviations(batch: &BatchInput) -> Result<(), PhysicsError> {
    let lone = [
        ("batch.resin_density_g_ml", batch.resin_density_g_ml, batch.resin_density_g_ml_sd),
        ("batch.hardener_density_g_ml", batch.hardener_density_g_ml, batch.hardener_density_g_ml_sd),
        ("batch.adhesive_a_joint_g", batch.adhesive_a_joint_g, batch.adhesive_a_joint_g_sd),
    ];
    match lone.iter().find(|(_, value, sd)| value.is_none() && sd.is_some()) {
        Some((field, ..)) => {
            Err(PhysicsError::Missing { field: (*field).to_owned(), advice: "its standard deviation is given alone" })
        }
        None => Ok(()),
    }
}

fn adhesive_a_joint(batch: &BatchInput, has_joint: bool, inputs: &mut Inputs) -> Result<Option<Var>, PhysicsError> {
    match batch.adhesive_a_joint_g {
        Some(_) if has_joint => Err(PhysicsError::Contradiction {
            what: "joint and batch.adhesive_a_joint_g are both given".to_owned(),
            advice: "give the weighed figure or the geometry, not both",
        }),
        Some(adhesive_g) => {
            let adhesive_g = check::positive("batch.adhesive_a_joint_g", adhesive_g, "g")?;
            inputs.add("batch.adhesive_a_joint_g", adhesive_g, batch.adhesive_a_joint_g_sd).map(Some)
        }
        None if has_joint => Ok(None),
        None => Err(PhysicsError::Missing {
            field: "batch.adhesive_a_joint_g".to_owned(),
            advice: "give it, or describe the joint",
        }),
    }
}

fn densities(batch: &BatchInput, inputs: &mut Inputs) -> Result<Option<[Var; 2]>, PhysicsError> {
    if batch.ratio == Ratio::ByMass {
        return Ok(None);
    }
    let mut density = |field: &str, density_g_ml: Option<f64>, sd: Option<f64>| {
        let advice = "a ratio by volume needs the densities of both parts to be weighed out";
        let density_g_ml = density_g_ml.ok_or_else(|| PhysicsError::Missing { field: field.to_owned(), advice })?;
        inputs.add(field, check::positive(field, density_g_ml, "g/ml")?, sd)
    };
    Ok(Some([
        density("batch.resin_density_g_ml", batch.resin_density_g_ml, batch.resin_density_g_ml_sd)?,
        density("batch.hardener_density_g_ml", batch.hardener_density_g_ml, batch.hardener_density_g_ml_sd)?,
    ]))
}
