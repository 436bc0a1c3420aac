//! Amounts for a batch: two parts, spacers, and something to spare.

use crate::advice::{Advice, Clash};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::mix::{MIX_LEAST_G, MixFor, SPARE_PERCENT, WEIGHED_TO_G, amounts};
use super::remark::GlueRemark;
use crate::{
    PhysicsError, check, plausible,
    real::Dual,
    uncertainty::{Estimate, Inputs, Point, Var, results},
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
    /// Joints to glue with this mixing, 1 to 500.
    pub joints: u32,
    /// Mixed beyond what the joints need, for what stays in the cup and on the stick, in percent of the need; 30 where
    /// left out (common practice, no source).
    #[serde(default = "usual_spare_percent")]
    pub spare_percent: f64,
    /// Standard deviation of `spare_percent`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spare_percent_sd: Option<f64>,
    /// Whether the product's ratio counts grams or millilitres; the two differ by the densities.
    pub ratio: Ratio,
    /// Resin in the product's ratio, above 0: the 2 of "2 to 1".
    pub resin_parts: f64,
    /// Standard deviation of `resin_parts`, as of a pump that doses unevenly.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub resin_parts_sd: Option<f64>,
    /// Hardener in the product's ratio, above 0: the 1 of "2 to 1".
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
    /// Spacers in percent of the whole mix, as the bench counts them; 2 is 2 %.
    #[serde(default)]
    pub bead_share_percent: f64,
    /// Standard deviation of `bead_share_percent`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bead_share_percent_sd: Option<f64>,
    /// What one joint takes all told, of resin, hardener and spacers, in grams, where it is known from weighing and
    /// `joint` is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g: Option<f64>,
    /// Standard deviation of `adhesive_a_joint_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive_a_joint_g_sd: Option<f64>,
}

fn usual_spare_percent() -> f64 {
    SPARE_PERCENT
}

/// Amounts to weigh out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct BatchOutput {
    /// Resin to weigh out, in grams.
    pub resin_g: f64,
    /// Standard deviation of `resin_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resin_g_sd: Option<f64>,
    /// Hardener to weigh out, in grams.
    pub hardener_g: f64,
    /// Standard deviation of `hardener_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardener_g_sd: Option<f64>,
    /// Spacers to stir in, in grams; 0 where none are asked for.
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
    /// Resin in millilitres, for a metering pump; where its density is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resin_ml: Option<f64>,
    /// Standard deviation of `resin_ml`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub resin_ml_sd: Option<f64>,
    /// Hardener in millilitres; where its density is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardener_ml: Option<f64>,
    /// Standard deviation of `hardener_ml`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hardener_ml_sd: Option<f64>,
}

/// A batch among the inputs.
#[derive(Clone, Copy)]
pub(super) struct Batch {
    joints: u32,
    ratio: Ratio,
    spare_percent: Var,
    bead_share_percent: Var,
    /// Resin, hardener.
    parts: [Var; 2],
    /// Resin, hardener.
    densities: [Option<Var>; 2],
    /// Where there is no joint to take it from.
    adhesive_a_joint: Option<Var>,
}

results! {
    /// What goes into the cup.
    pub(super) struct Mixed {
        resin_g,
        hardener_g,
        beads_g,
        mix_g,
        /// Of the mix, what ends in the joints.
        in_joints_g,
        hardener_a_gram_of_resin_g,
        /// Nothing where the density is not known, as is the hardener's.
        resin_ml,
        hardener_ml,
    }
}

impl Batch {
    pub fn read(batch: &BatchInput, has_joint: bool, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        plausible::JOINTS.check("batch.joints", f64::from(batch.joints))?;
        plausible::SPARE_PERCENT.check("batch.spare_percent", batch.spare_percent)?;
        plausible::BEADS_PERCENT.check("batch.bead_share_percent", batch.bead_share_percent)?;
        check::positive("batch.resin_parts", batch.resin_parts, "")?;
        check::positive("batch.hardener_parts", batch.hardener_parts, "")?;
        refuse_lone_deviations(batch)?;
        Ok(Self {
            joints: batch.joints,
            ratio: batch.ratio,
            adhesive_a_joint: adhesive_a_joint(batch, has_joint, inputs)?,
            spare_percent: inputs.add("batch.spare_percent", batch.spare_percent, batch.spare_percent_sd)?,
            bead_share_percent: inputs.add(
                "batch.bead_share_percent",
                batch.bead_share_percent,
                batch.bead_share_percent_sd,
            )?,
            parts: [
                inputs.add("batch.resin_parts", batch.resin_parts, batch.resin_parts_sd)?,
                inputs.add("batch.hardener_parts", batch.hardener_parts, batch.hardener_parts_sd)?,
            ],
            densities: densities(batch, inputs)?,
        })
    }

    /// What a mix for some of the joints must hold.
    pub fn mix_for(self, x: &Point<'_, Dual>, joint_adhesive: Option<Dual>) -> MixFor<Dual> {
        let [resin_parts, hardener_parts] = self.parts.map(|var| x[var]);
        let by_parts = hardener_parts / resin_parts;
        let hardener_a_gram_of_resin_g = match (self.ratio, self.densities) {
            (Ratio::ByVolume, [Some(resin), Some(hardener)]) => by_parts * x[hardener] / x[resin],
            _ => by_parts,
        };
        MixFor {
            joints: self.joints,
            adhesive_a_joint_g: self.adhesive_a_joint.map(|var| x[var]).or(joint_adhesive).unwrap_or(Dual::fixed(0.0)),
            spare_percent: x[self.spare_percent],
            bead_share_percent: x[self.bead_share_percent],
            hardener_a_gram_of_resin_g,
        }
    }

    pub fn results(self, x: &Point<'_, Dual>, joint_adhesive: Option<Dual>) -> Mixed<Dual> {
        let of = self.mix_for(x, joint_adhesive);
        let mix = amounts(of);
        let volume = |mass_g: Dual, density: Option<Var>| density.map_or(Dual::fixed(0.0), |var| mass_g / x[var]);
        Mixed {
            resin_g: mix.resin_g,
            hardener_g: mix.hardener_g,
            beads_g: mix.beads_g,
            mix_g: mix.mix_g,
            in_joints_g: mix.in_joints_g,
            hardener_a_gram_of_resin_g: of.hardener_a_gram_of_resin_g,
            resin_ml: volume(mix.resin_g, self.densities[0]),
            hardener_ml: volume(mix.hardener_g, self.densities[1]),
        }
    }

    pub fn output(self, mixed: Mixed<Estimate>) -> BatchOutput {
        let known = |density: Option<Var>, volume_ml: Estimate| density.map(|_| volume_ml);
        let [resin_density, hardener_density] = self.densities;
        let resin_ml = known(resin_density, mixed.resin_ml);
        let hardener_ml = known(hardener_density, mixed.hardener_ml);
        BatchOutput {
            resin_g: mixed.resin_g.value,
            resin_g_sd: mixed.resin_g.sd,
            hardener_g: mixed.hardener_g.value,
            hardener_g_sd: mixed.hardener_g.sd,
            beads_g: mixed.beads_g.value,
            beads_g_sd: mixed.beads_g.sd,
            mix_g: mixed.mix_g.value,
            mix_g_sd: mixed.mix_g.sd,
            in_joints_g: mixed.in_joints_g.value,
            in_joints_g_sd: mixed.in_joints_g.sd,
            hardener_a_gram_of_resin_g: mixed.hardener_a_gram_of_resin_g.value,
            hardener_a_gram_of_resin_g_sd: mixed.hardener_a_gram_of_resin_g.sd,
            resin_ml: resin_ml.map(|volume| volume.value),
            resin_ml_sd: resin_ml.and_then(|volume| volume.sd),
            hardener_ml: hardener_ml.map(|volume| volume.value),
            hardener_ml_sd: hardener_ml.and_then(|volume| volume.sd),
        }
    }

    /// What is worth knowing before the cup is filled.
    pub fn warnings(input: &BatchInput, output: &BatchOutput) -> Option<GlueRemark> {
        let needed_g = output.in_joints_g * (1.0 + input.spare_percent / 100.0);
        (needed_g < MIX_LEAST_G).then_some(GlueRemark::LeastMixed {
            needed_g,
            least_g: MIX_LEAST_G,
            scale_g: WEIGHED_TO_G,
        })
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
            Err(PhysicsError::Missing { field: (*field).to_owned(), advice: Box::new(Advice::DeviationApart) })
        }
        None => Ok(()),
    }
}

fn adhesive_a_joint(batch: &BatchInput, has_joint: bool, inputs: &mut Inputs) -> Result<Option<Var>, PhysicsError> {
    match batch.adhesive_a_joint_g {
        Some(_) if has_joint => Err(PhysicsError::Contradiction {
            what: Clash::BothGiven { first: "joint".into(), second: "batch.adhesive_a_joint_g".into() },
            advice: Box::new(Advice::WeighedOrGeometry),
        }),
        Some(adhesive_g) => {
            check::positive("batch.adhesive_a_joint_g", adhesive_g, "g")?;
            plausible::JOINT_ADHESIVE_G.check("batch.adhesive_a_joint_g", adhesive_g)?;
            inputs.add("batch.adhesive_a_joint_g", adhesive_g, batch.adhesive_a_joint_g_sd).map(Some)
        }
        None if has_joint => Ok(None),
        None => Err(PhysicsError::Missing {
            field: "batch.adhesive_a_joint_g".to_owned(),
            advice: Box::new(Advice::GiveOrDescribeJoint),
        }),
    }
}

fn densities(batch: &BatchInput, inputs: &mut Inputs) -> Result<[Option<Var>; 2], PhysicsError> {
    let mut density = |field: &str, density_g_ml: Option<f64>, sd: Option<f64>| {
        let advice = Advice::RatioVolumeNeedsDensities;
        match density_g_ml {
            None if batch.ratio == Ratio::ByVolume => {
                Err(PhysicsError::Missing { field: field.to_owned(), advice: Box::new(advice) })
            }
            None => Ok(None),
            Some(given) => plausible::ADHESIVE_DENSITY_G_ML
                .check(field, given)
                .and_then(|g_ml| inputs.add(field, g_ml, sd))
                .map(Some),
        }
    };
    Ok([
        density("batch.resin_density_g_ml", batch.resin_density_g_ml, batch.resin_density_g_ml_sd)?,
        density("batch.hardener_density_g_ml", batch.hardener_density_g_ml, batch.hardener_density_g_ml_sd)?,
    ])
}
