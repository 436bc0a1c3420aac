//! The steps of a job are data: a template of the shop, copied into each job when it is made.
//!
//! No step is a code path. A step says what it asks, what is on the club while it is read, which strength of the joint
//! it needs and which caution stands beside it. Steps may be left out or done in another order; what is not read only
//! leaves the band wider.

use crate::error::TradeError;
use crate::kind::{Role, closed_list};
use crate::reading::What;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// How strong the joint must be before a step.
    Strength {
        /// None needed.
        None = "none";
        /// Handling strength of the adhesive.
        Handling = "handling";
        /// Full cure of the adhesive.
        Full = "full";
    }
}

closed_list! {
    /// Which caution stands beside a step. The words are in [`crate::caution`].
    Caution {
        /// Saw, grinder, heat gun.
        Cutting = "cutting";
        /// Epoxy.
        Epoxy = "epoxy";
        /// Grip solvent.
        Solvent = "solvent";
        /// Bending a hosel.
        Bending = "bending";
        /// Swinging the finished club.
        Swing = "swing";
        /// Turning or sanding the ferrule.
        Turning = "turning";
        /// Roughening a tip, cleaning a hosel.
        Preparing = "preparing";
        /// Cutting an old grip off.
        Stripping = "stripping";
        /// Heating a hosel and pulling its head.
        Pulling = "pulling";
        /// Lead tape or powder.
        Lead = "lead";
        /// A club that may be broken: splinters, a head that flies.
        Damage = "damage";
    }
}

/// One step of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Short key, unique in the template.
    #[schema(min_length = 1, pattern = r"^[a-z0-9_]+$")]
    pub key: String,
    /// What the builder calls it.
    pub label: String,
    /// What to do, in a sentence.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub say: String,
    /// What is read; empty for a step that is only done.
    #[serde(default)]
    pub asks: Vec<What>,
    /// What is on the club while it is read.
    #[serde(default)]
    pub on: Vec<Role>,
    /// Strength of the joint that it waits for.
    pub needs: Strength,
    /// Whether this is where the joint is glued: a batch of adhesive goes here.
    #[serde(default)]
    pub glues: bool,
    /// The caution beside it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<Caution>,
    /// Whether it may be left out without a question.
    #[serde(default)]
    pub optional: bool,
    /// Whether what it asks is read of the club as it came, before anything is put on it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub before: bool,
    /// Keys of the kinds of job whose clubs go through it, in a job of several kinds; empty for all clubs. A new club is of
    /// the kind `new`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub only: Vec<String>,
}

/// Key of the kind of job of a club that is built new.
pub const NEW_CLUB: &str = "new";

impl Step {
    /// Whether the clubs of a kind of job go through it.
    #[must_use]
    pub fn is_of(&self, kind: &str) -> bool {
        self.only.is_empty() || self.only.iter().any(|one| one == kind)
    }
}

/// The steps that the trade takes with an assembled club, in the order that most shops use. A shop keeps its own copy
/// and changes it as it likes. Each is called by its key until `name_steps` gives it a name. Order and content: common
/// practice, no source.
#[must_use]
pub fn full_build() -> Vec<Step> {
    use Role::{Adapter, Adhesive, Extra, Ferrule, Grip, Head, Screw, Shaft, Solvent, Tape, TipWeight, Turnings};
    let dry = [Head, Adapter, Screw, Shaft, Ferrule, Turnings];
    let with = |base: &[Role], more: &[Role]| base.iter().chain(more).copied().collect::<Vec<_>>();
    let cured = [Head, Adapter, Screw, Shaft, Ferrule, TipWeight, Adhesive];
    let gripped = with(&cured, &[Tape, Grip, Extra]);
    let step = |key: &str, asks: &[What], on: Vec<Role>| Step {
        key: key.into(),
        label: key.into(),
        say: String::new(),
        asks: asks.to_vec(),
        on,
        needs: Strength::None,
        glues: false,
        caution: None,
        optional: false,
        before: false,
        only: Vec::new(),
    };
    vec![
        Step { optional: true, ..step("received", &[What::Loft, What::Lie], vec![]) },
        Step { optional: true, ..step("weighed", &[What::HeadMass, What::GripMass], vec![]) },
        Step { caution: Some(Caution::Cutting), ..step("cut", &[What::ShaftLength, What::ShaftMass], vec![]) },
        Step { optional: true, ..step("soft_side", &[What::SoftSide], vec![]) },
        Step { optional: true, ..step("cpm", &[What::Cpm], dry.to_vec()) },
        Step { caution: Some(Caution::Preparing), optional: true, ..step("prepared", &[What::Done], vec![]) },
        step("dry", &[What::SwingWeight], dry.to_vec()),
        step("tip", &[What::SwingWeight], with(&dry, &[TipWeight])),
        Step {
            glues: true,
            caution: Some(Caution::Epoxy),
            ..step("glue", &[What::Done], with(&dry, &[TipWeight, Adhesive]))
        },
        Step {
            needs: Strength::Handling,
            caution: Some(Caution::Turning),
            optional: true,
            ..step("turned", &[What::Done], cured.to_vec())
        },
        Step { needs: Strength::Handling, ..step("cured", &[What::SwingWeight], cured.to_vec()) },
        Step {
            needs: Strength::Handling,
            caution: Some(Caution::Solvent),
            ..step("gripped", &[What::SwingWeight], with(&gripped, &[Solvent]))
        },
        Step {
            needs: Strength::Handling,
            ..step("finish", &[What::SwingWeight, What::TotalMass, What::FinishedLength], gripped.clone())
        },
        Step {
            needs: Strength::Full,
            caution: Some(Caution::Bending),
            ..step("bend", &[What::Loft, What::Lie], gripped)
        },
        Step { needs: Strength::Full, caution: Some(Caution::Swing), ..step("hand_over", &[What::Done], vec![]) },
    ]
}

/// Names the steps of [`full_build`] in a language: what the builder calls each, and what to do, from the texts
/// `step-new-dry` and `step-new-dry-say`. The names are the shop's own from then on.
pub fn name_steps(steps: &mut [Step], text: impl Fn(&str) -> String) {
    for step in steps {
        let id = format!("step-new-{}", step.key.replace('_', "-"));
        step.label = text(&id);
        step.say = text(&format!("{id}-say"));
    }
}

/// Refuses a template that the bench could not follow.
///
/// # Errors
/// No steps, a key twice, an unsound key.
///
/// # Examples
///
/// ```
/// use trade::step::{check_template, full_build};
///
/// let mut steps = full_build();
/// check_template(&steps)?;
/// steps.push(steps[0].clone());
/// assert!(check_template(&steps).is_err(), "a key stands twice");
/// # Ok::<(), trade::error::TradeError>(())
/// ```
pub fn check_template(steps: &[Step]) -> Result<(), TradeError> {
    if steps.is_empty() {
        return Err(TradeError::refused(StepFault::NoSteps));
    }
    for (i, step) in steps.iter().enumerate() {
        let sound =
            !step.key.is_empty() && step.key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        if !sound {
            return Err(TradeError::unreadable(
                format!("steps[{i}].key"),
                &StepFault::BadKey { key: step.key.clone() },
            ));
        }
        if steps[..i].iter().any(|s| s.key == step.key) {
            return Err(TradeError::refused(StepFault::Twice { key: step.key.clone() }));
        }
    }
    Ok(())
}

fact::facts! {
    /// What is refused of the steps of a job.
    pub(crate) enum StepFault: "step_fault" {
        NoSteps,
        BadKey { key: String },
        Twice { key: String },
    }
}
