//! The glue topic.

use crate::advice::Advice;
use serde_json::{Value, json};

use super::{
    BatchInput, BatchOutput, CureInput, GlueInput, GlueOutput, GlueRemark,
    batch::Batch,
    cure::{Cure, pot_life_share, too_large_a_cup},
    joint::{Joint, Pull},
    mix::{MixFor, amounts},
};
use crate::{
    PhysicsError,
    topic::{Topic, described, through_json},
    uncertainty::Inputs,
};

/// The topic as [`calc`](crate::calc) offers it.
pub const TOPIC: Topic = Topic {
    name: "glue",
    example,
    input: described::<GlueInput>,
    output: described::<GlueOutput>,
    run: |input| through_json(&input, glue),
};

fn example() -> Value {
    json!({
        "joint": { "bore_mm": 9.65, "bore_mm_sd": 0.02, "tip_mm": 9.40, "tip_mm_sd": 0.01, "depth_mm": 32.0, "density_g_ml": 1.15, "beyond_ring_g": 1.5, "beyond_ring_g_sd": 0.3 },
        "batch": {
            "joints": 8, "spare_percent": 40.0, "spare_percent_sd": 5.0, "ratio": "by_volume", "resin_parts": 1.0, "hardener_parts": 1.0,
            "resin_density_g_ml": 1.16, "hardener_density_g_ml": 1.05, "bead_share_percent": 2.0
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
/// Accuracy: rounding; values in `tests/val_glue.rs`. Times are as good as the points of the sheet, amounts as good as what
/// a joint takes beside its ring, which is a shop's own figure.
///
/// # Errors
///
/// [`PhysicsError`] where nothing is asked, a figure is impossible, or a part of the input lacks another it needs.
///
/// # Examples
///
/// ```
/// use clubphysics::glue::{GlueInput, PullInput, glue};
/// // A published worked value: 0.320 kg at 44.704 m/s (100 mph) on 2 m pulls with 319.75 N.
/// let pull = PullInput { head_mass_g: 320.0, head_speed_m_s: 44.704, radius_m: 2.0, ..PullInput::default() };
/// let pull = glue(&GlueInput { pull: Some(pull), ..GlueInput::default() })?.pull.unwrap();
/// assert!((pull.pull_n - 319.75).abs() < 0.01);
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn glue(input: &GlueInput) -> Result<GlueOutput, PhysicsError> {
    if input.joint.is_none() && input.batch.is_none() && input.cure.is_none() && input.pull.is_none() {
        return Err(PhysicsError::Missing { field: "joint".to_owned(), advice: Box::new(Advice::AskOfGlue) });
    }
    let mut inputs = Inputs::default();
    let joint = input.joint.as_ref().map(|joint| Joint::read(joint, &mut inputs)).transpose()?;
    let batch = input.batch.as_ref().map(|batch| Batch::read(batch, joint.is_some(), &mut inputs)).transpose()?;
    let cure = input.cure.as_ref().map(|cure| Cure::read(cure, &mut inputs)).transpose()?;
    let pull = input.pull.as_ref().map(|pull| Pull::read(pull, &mut inputs)).transpose()?;
    inputs.correlate_named(&input.correlations)?;
    let (filled, mixed, pulled, times) = inputs.results(|x| {
        let filled = joint.map(|joint| joint.results(x));
        let mixed = batch.map(|batch| batch.results(x, filled.map(|filled| filled.all_told_g)));
        let pulled = pull.map(|pull| pull.results(x, joint));
        let times = cure.as_ref().map(|cure| cure.results(x, mixed.map(|mixed| mixed.mix_g)));
        Ok((filled, mixed, pulled, times))
    })?;
    let joint_output = filled.map(Joint::output);
    let batch_output = batch.zip(mixed).map(|(batch, mixed)| batch.output(mixed));
    let mut warnings: Vec<GlueRemark> = joint_output.as_ref().and_then(Joint::warnings).into_iter().collect();
    if let (Some(asked), Some(output)) = (&input.batch, &batch_output) {
        warnings.extend(Batch::warnings(asked, output));
    }
    let mut cure_output = input.cure.as_ref().zip(times).map(|(asked, times)| Cure::output(asked, times));
    if let (Some(asked), Some(output), Some(batch), Some(mix)) =
        (&input.cure, &mut cure_output, &input.batch, &batch_output)
        && let Some(one_cup_min) = output.pot_life_min
    {
        output.warnings.extend(cups_of_a_batch(asked, batch, mix, one_cup_min));
    }
    Ok(GlueOutput {
        warnings,
        joint: joint_output,
        batch: batch_output,
        cure: cure_output,
        pull: input.pull.as_ref().zip(pulled).map(|(asked, pulled)| Pull::output(asked, pulled)),
    })
}

/// Whether one cup is good for all joints of the batch, by what it holds and how long it is good.
fn cups_of_a_batch(asked: &CureInput, batch: &BatchInput, mix: &BatchOutput, one_cup_min: f64) -> Vec<GlueRemark> {
    let mix_of = |joints: u32| {
        amounts(MixFor {
            joints,
            adhesive_a_joint_g: mix.in_joints_g / f64::from(batch.joints),
            spare_percent: batch.spare_percent,
            bead_share_percent: batch.bead_share_percent,
            hardener_a_gram_of_resin_g: mix.hardener_a_gram_of_resin_g,
        })
    };
    // What a small cup keeps of the sheet's pot life, a large one has lost.
    let share = |mix_g: f64| asked.pot_life_mass_g.map_or(1.0, |stated_g| pot_life_share(stated_g, mix_g));
    let pot_life_min = |joints: u32| one_cup_min / share(mix.mix_g) * share(mix_of(joints).mix_g);
    too_large_a_cup(asked, (batch.joints, mix.mix_g), pot_life_min, mix_of)
}
