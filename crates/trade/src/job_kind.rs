//! Kinds of job are data: which steps a club goes through, which parts it gets, what its sheet asks and what must be read of
//! it on arrival. No kind is a code path. The shop has those of the trade (`data/job_kinds.json`) and makes its own.

use crate::error::{Entry, TradeError};
use crate::kind::{Role, closed_list};
use crate::model::PartKind;
use crate::reading::What;
use crate::step::{NEW_CLUB, Step, check_template, full_build, name_steps};
use serde::{Deserialize, Serialize};
use std::sync::LazyLock;
use utoipa::ToSchema;

closed_list! {
    /// What the sheet of a kind of job may ask.
    Asked {
        /// Model of the new grip.
        GripModel = "grip_model";
        /// Layers of tape under it.
        Wraps = "wraps";
        /// How thick the grip is to be where the hands hold it.
        GripSize = "grip_size";
        /// Which way the label of the grip faces.
        GripGraphics = "grip_graphics";
        /// Model of the new shaft.
        ShaftModel = "shaft_model";
        /// Model of the new ferrule.
        FerruleModel = "ferrule_model";
        /// The adhesive of the new joint.
        Adhesive = "adhesive";
        /// Length of the finished club.
        Length = "length";
        /// Mass of the piece that lengthens the shaft.
        ExtensionMass = "extension_mass";
        /// Swing weight of the finished club; left out: it keeps what it comes with.
        SwingWeight = "swing_weight";
        /// Moment of inertia about the butt, in place of a swing weight.
        SwingInertia = "swing_inertia";
        /// Loft.
        Loft = "loft";
        /// Lie.
        Lie = "lie";
    }
}

/// A kind of job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JobKind {
    /// Short key: `regrip`.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[a-z0-9_]+$")]
    pub key: String,
    /// What the shop calls it; empty for the kinds of the trade, which have their name in each language.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub label: String,
    /// Which parts of the club are new: all others stay as they came.
    #[serde(default)]
    pub takes: Vec<PartKind>,
    /// What its sheet asks.
    #[serde(default)]
    pub asks: Vec<Asked>,
    /// What must be known of a club from elsewhere when the job is made, because its plan rests on it.
    #[serde(default)]
    pub needs: Vec<What>,
    /// Whether the joint of head and shaft is opened though head and shaft stay: what held them may weigh something else
    /// afterwards, so nothing that was read before tells what is in it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub opens_joint: bool,
    /// The steps that a club goes through, in their order.
    #[schema(min_items = 1)]
    pub steps: Vec<Step>,
}

static OF_THE_TRADE: LazyLock<Vec<JobKind>> =
    LazyLock::new(|| serde_json::from_str(include_str!("../data/job_kinds.json")).unwrap_or_default());

/// The kinds of job that every shop knows. Order and content: common practice, no source.
#[must_use]
pub fn of_the_trade() -> &'static [JobKind] {
    &OF_THE_TRADE
}

impl JobKind {
    /// Whether it is one of the trade, with a name in each language.
    #[must_use]
    pub fn is_of_the_trade(&self) -> bool {
        self.label.is_empty()
    }

    /// Its steps with names in a language, where they have none of their own.
    #[must_use]
    pub fn named_steps(&self, text: impl Fn(&str) -> String) -> Vec<Step> {
        let mut steps = self.steps.clone();
        for step in &mut steps {
            if step.label.is_empty() {
                name_steps(std::slice::from_mut(step), &text);
            }
        }
        steps
    }

    /// Whether a figure of the sheet is asked.
    #[must_use]
    pub fn asks(&self, asked: Asked) -> bool {
        self.asks.contains(&asked)
    }

    /// Whether the club is read whole, with its grip on, before anything is done with it.
    #[must_use]
    pub fn reads_on_arrival(&self) -> bool {
        let whole =
            |step: &Step| step.before && step.asks.contains(&What::SwingWeight) && step.on.contains(&Role::Grip);
        self.steps.iter().any(whole)
    }

    /// Refuses a kind that the bench could not follow.
    ///
    /// # Errors
    /// A key that is not one, or that the trade has; no name, of the kind or of a step that the trade does not name; no steps, or one twice; a new part whose model the sheet does not ask for.
    pub fn check(&self) -> Result<(), TradeError> {
        let sound = !self.key.is_empty()
            && self.key.len() <= 32
            && self.key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        if !sound {
            return Err(TradeError::unreadable("key", &KindFault::BadKey { key: self.key.clone() }));
        }
        if self.key == NEW_CLUB || of_the_trade().iter().any(|kind| kind.key == self.key) {
            return Err(TradeError::unreadable("key", &KindFault::OfTheTrade { key: self.key.clone() }));
        }
        if self.label.trim().is_empty() {
            return Err(TradeError::unreadable("label", &KindFault::NoLabel));
        }
        let full_build = full_build();
        let named: Vec<&str> = full_build
            .iter()
            .chain(of_the_trade().iter().flat_map(|kind| &kind.steps))
            .map(|s| s.key.as_str())
            .collect();
        if let Some(at) = self.steps.iter().position(|s| s.label.trim().is_empty() && !named.contains(&s.key.as_str()))
        {
            let entry = format!("steps[{at}].label");
            return Err(TradeError::unreadable(entry, &KindFault::NoStepLabel { step: self.steps[at].key.clone() }));
        }
        self.check_steps()
    }

    fn check_steps(&self) -> Result<(), TradeError> {
        check_template(&self.steps)?;
        for (part, model) in [
            (PartKind::Grip, Asked::GripModel),
            (PartKind::Shaft, Asked::ShaftModel),
            (PartKind::Ferrule, Asked::FerruleModel),
        ] {
            if self.takes.contains(&part) && !self.asks(model) {
                return Err(TradeError::unreadable(
                    Entry::from("asks"),
                    &KindFault::NoModel { kind: part, asked: model },
                ));
            }
        }
        if let Some(part) = self
            .takes
            .iter()
            .find(|part| !matches!(part, PartKind::Grip | PartKind::Shaft | PartKind::Ferrule | PartKind::TipWeight))
        {
            return Err(TradeError::unreadable(Entry::from("takes"), &KindFault::NotTaken { kind: *part }));
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of a kind of job.
    pub(crate) enum KindFault: "kind_fault" {
        BadKey { key: String },
        OfTheTrade { key: String },
        NoLabel,
        NoStepLabel { step: String },
        NoModel { kind: PartKind, asked: Asked },
        NotTaken { kind: PartKind },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ::words::Words;

    #[test]
    fn a_step_of_the_shops_own_has_a_name() {
        let bend = of_the_trade().iter().find(|kind| kind.key == "bend").expect("bend");
        let mut own = JobKind { key: "lie_only".into(), label: "Lie only".into(), ..bend.clone() };
        own.check().expect("steps that the trade names");
        own.steps[1].key = "tap".into();
        let refused = own.check().expect_err("nobody names it").refusal();
        assert_eq!(refused.entry(), Some("steps[1].label"));
        own.steps[1].label = "Tap it".into();
        own.check().expect("named");
    }

    #[test]
    fn the_kinds_of_the_trade_are_sound_and_have_names() {
        let w = Words::english(quantity::Units::default());
        assert!(of_the_trade().len() >= 5);
        for kind in of_the_trade() {
            kind.check_steps().unwrap_or_else(|e| panic!("{}: {e}", kind.key));
            let key = kind.key.replace('_', "-");
            for id in [format!("job-kind-{key}"), format!("job-kind-{key}-say")] {
                assert!(!w.text(&id).is_empty(), "{id}");
            }
            for step in kind.named_steps(|id| w.text(id)) {
                assert!(!step.label.is_empty() && !step.say.is_empty(), "{} {}", kind.key, step.key);
            }
            assert!(kind.steps.last().is_some_and(|step| step.asks == [What::Done]), "{}", kind.key);
        }
    }

    #[test]
    fn a_kind_of_the_shop_must_be_one_that_the_bench_can_follow() {
        let own = JobKind { key: "clean".into(), label: "Clean and read".into(), ..of_the_trade()[1].clone() };
        assert!(own.check().is_ok());
        let refused = [
            JobKind { key: "Clean up".into(), ..own.clone() },
            JobKind { key: "regrip".into(), ..own.clone() },
            JobKind { label: " ".into(), ..own.clone() },
            JobKind { steps: vec![], ..own.clone() },
            JobKind { takes: vec![PartKind::Grip], ..own.clone() },
            JobKind { takes: vec![PartKind::Head], ..own.clone() },
        ];
        for kind in refused {
            assert!(kind.check().is_err(), "{kind:?}");
        }
    }
}
