//! How much adhesive to mix: one rule for the calculation, the bench and its pages.
//!
//! - The joints need what each of them takes, all told.
//! - The spare is mixed on top of that, percent of the need, for what stays in the cup and on the stick.
//! - The spacers are percent of the whole mix: of what is in the cup at the end.
//! - A cup holds the least that a shop's scale can weigh out.

use crate::real::Real;

/// Spare where none is given, percent of what the joints need. Common practice, no source.
pub const SPARE_PERCENT: f64 = 30.0;

/// What the last digit of the scale is worth on which a mix is weighed out, g. Common practice, no source.
pub const WEIGHED_TO_G: f64 = 0.1;

/// Least mass of a mix, g: two parts of 1 : 1 are weighed out to 1 % of each on a scale that shows 0.1 g, which may be
/// off by half of that (derived: 5 g to 0.05 g).
pub const MIX_LEAST_G: f64 = 10.0;

/// What a joint takes beside the ring of its gap, g: what runs up inside the tip and around a tip weight, the collar
/// under the ferrule, what is squeezed out and wiped off. Common practice, no source: joints take 1 to 3 g all told, and
/// the ring of one is 0.1 to 0.2 g. A shop that weighs clubs before and after gluing knows its own figure.
pub const BEYOND_RING_G: f64 = 1.5;

/// What a mix is for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MixFor<T = f64> {
    /// Joints to glue from this cup.
    pub joints: u32,
    /// What each of them takes, of resin, hardener and spacers together.
    pub adhesive_a_joint_g: T,
    /// Mixed beyond what the joints need, percent of the need.
    pub spare_percent: T,
    /// Spacers, percent of the whole mix.
    pub bead_share_percent: T,
    /// Hardener for one gram of resin.
    pub hardener_a_gram_of_resin_g: T,
}

/// Amounts to weigh out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amounts<T = f64> {
    /// Resin, in grams.
    pub resin_g: T,
    /// Hardener, in grams.
    pub hardener_g: T,
    /// Spacers, in grams.
    pub beads_g: T,
    /// Everything in the cup, in grams: resin, hardener and spacers.
    pub mix_g: T,
    /// What the joints need of it.
    pub in_joints_g: T,
    /// Whether the cup was filled up to [`MIX_LEAST_G`].
    pub filled_up: bool,
}

/// Amounts for a mix. Figures are taken as they are: whoever reads them refuses what is impossible.
///
/// Accuracy: rounding; the parts add up to the mix to 1e-9 (`tests/val_glue.rs`).
///
/// # Examples
///
/// ```
/// use clubphysics::glue::{MixFor, amounts};
/// let mix = amounts(MixFor {
///     joints: 8, adhesive_a_joint_g: 1.6, spare_percent: 30.0, bead_share_percent: 10.0, hardener_a_gram_of_resin_g: 1.0,
/// });
/// // 8 × 1.6 × 1.3 = 16.64 g, a tenth of it spacers.
/// assert!((mix.mix_g - 16.64_f64).abs() < 1e-9 && (mix.beads_g - 1.664).abs() < 1e-9);
/// ```
#[must_use]
pub fn amounts<T: Real>(of: MixFor<T>) -> Amounts<T> {
    let in_joints_g = of.adhesive_a_joint_g * f64::from(of.joints);
    let needed_g = in_joints_g * (of.spare_percent / 100.0 + 1.0);
    let filled_up = needed_g.value() < MIX_LEAST_G;
    let mix_g = if filled_up { T::constant(MIX_LEAST_G) } else { needed_g };
    let beads_g = mix_g * (of.bead_share_percent / 100.0);
    let resin_g = (mix_g - beads_g) / (of.hardener_a_gram_of_resin_g + 1.0);
    let hardener_g = resin_g * of.hardener_a_gram_of_resin_g;
    Amounts { resin_g, hardener_g, beads_g, mix_g, in_joints_g, filled_up }
}

/// Time to stir two parts and the spacers, min, and to glue one joint from the cup, min. Common practice, no source.
const STIR_MIN: f64 = 2.0;
const JOINT_MIN: f64 = 1.5;

/// Time that the joints of one cup take, from the first stir to the last joint.
#[must_use]
pub fn work_min(joints: u32) -> f64 {
    STIR_MIN + JOINT_MIN * f64::from(joints)
}

/// Cups that a batch has to be mixed in, one after the other, so that each can be used up while it is good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cups {
    /// How many.
    pub cups: u32,
    /// Joints from each; the last cup may have fewer.
    pub joints_a_cup: u32,
}

/// How many cups to mix, by the pot life of a cup for a number of joints. `None` where the pot life is too short for
/// one joint alone.
#[must_use]
pub fn cups(joints: u32, pot_life_min: impl Fn(u32) -> f64) -> Option<Cups> {
    (1..=joints)
        .map(|cups| Cups { cups, joints_a_cup: joints.div_ceil(cups) })
        .find(|split| work_min(split.joints_a_cup) <= pot_life_min(split.joints_a_cup))
        // Five cups of three joints may do for what six would be the first to be tried for.
        .map(|split| Cups { cups: joints.div_ceil(split.joints_a_cup), ..split })
}
