//! The glue topic.

use serde_json::{Value, json};

use super::{
    GlueInput, GlueOutput,
    batch::Batch,
    cure::Cure,
    joint::{Joint, Pull},
};
use crate::{
    PhysicsError,
    calc::{Topic, through_json},
    uncertainty::Inputs,
};

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "glue",
    title: "Glue",
    summary: "Adhesive in a joint and a batch, pot life and cure at a temperature, and the stress of the swing.",
    example,
    run: |input| through_json(&input, glue),
};

fn example() -> Value {
    json!({
        "joint": { "bore_mm": 9.65, "bore_mm_sd": 0.02, "tip_mm": 9.40, "tip_mm_sd": 0.01, "depth_mm": 32.0, "density_g_ml": 1.15 },
        "batch": {
            "joints": 8, "waste_share": 0.4, "waste_share_sd": 0.05, "ratio": "by_volume", "resin_parts": 1.0, "hardener_parts": 1.0,
            "resin_density_g_ml": 1.16, "hardener_density_g_ml": 1.05, "bead_share": 0.02
        },
        "cure": {
            "temperature_c": 20.0, "temperature_c_sd": 1.0,
            "pot_life": [{ "temperature_c": 25.0, "time_min": 40.0 }, { "temperature_c": 35.0, "time_min": 20.0 }],
            "pot_life_mass_g": 100.0,
            "full_cure": [{ "temperature_c": 25.0, "time_min": 1440.0 }, { "temperature_c": 60.0, "time_min": 120.0 }]
        },
        "pull": { "head_mass_g": 262.0, "head_speed_m_s": 38.0, "radius_m": 1.7, "shear_strength_mpa": 15.0 }
    })
}

/// Glue in a joint, in the cup, by the clock and under the swing.
///
/// Accuracy: rounding; values in `tests/val_glue.rs`. Times are as good as the two points of the sheet.
///
/// # Errors
///
/// [`PhysicsError`] where nothing is asked, a figure is impossible, or a part of the input lacks another it needs.
pub fn glue(input: &GlueInput) -> Result<GlueOutput, PhysicsError> {
    if input.joint.is_none() && input.batch.is_none() && input.cure.is_none() && input.pull.is_none() {
        return Err(PhysicsError::Missing { field: "joint".to_owned(), advice: "ask for joint, batch, cure or pull" });
    }
    let mut inputs = Inputs::default();
    let joint = input.joint.as_ref().map(|joint| Joint::read(joint, &mut inputs)).transpose()?;
    let batch = input.batch.as_ref().map(|batch| Batch::read(batch, joint.is_some(), &mut inputs)).transpose()?;
    let cure = input.cure.as_ref().map(|cure| Cure::read(cure, &mut inputs)).transpose()?;
    let pull = input.pull.as_ref().map(|pull| Pull::read(pull, &mut inputs)).transpose()?;
    inputs.correlate_named(&input.correlations)?;
    // In this order: joint, batch, pull, cure.
    let results = inputs.propagate(|x| {
        let of_joint = joint.map(|joint| joint.results(x));
        let mut results: Vec<_> = of_joint.into_iter().flatten().collect();
        results.extend(batch.iter().flat_map(|batch| batch.results(x, of_joint.map(|[_, _, adhesive]| adhesive))));
        results.extend(pull.iter().flat_map(|pull| pull.results(x, joint)));
        results.extend(cure.iter().flat_map(|cure| cure.results(x)));
        Ok(results)
    })?;
    let batch_first = joint.map_or(0, |_| Joint::RESULTS);
    let pull_first = batch_first + batch.map_or(0, |_| Batch::RESULTS);
    let cure_first = results.values().len() - cure.map_or(0, Cure::count);
    let joint_output = joint.map(|_| Joint::output(&results));
    let batch_output = batch.map(|_| Batch::output(&results, batch_first));
    let mix_g = batch_output.map(|batch| batch.mix_g);
    Ok(GlueOutput {
        warnings: joint_output.as_ref().and_then(Joint::warnings).into_iter().collect(),
        joint: joint_output,
        batch: batch_output,
        cure: cure.zip(input.cure.as_ref()).map(|(cure, asked)| cure.output(asked, &results, cure_first, mix_g)),
        pull: pull.map(|_| Pull::output(&results, pull_first, cure_first)),
    })
}
