//! The one measurement that tells the leading causes apart.

use super::case::{Case, Seen, Stage};
use crate::belief::Believed;
use crate::remedy::Progress;
use serde::Serialize;
use trade::kind::Role;
use trade::reading::{Reading, What};
use utoipa::ToSchema;

fact::facts! {
    /// What to measure, as an order.
    pub enum TellingSays: "telling" {
        /// The loose head on the scale.
        HeadMass,
        /// The same where it is on the shaft.
        HeadMassAssembled,
        /// The loose shaft on the scale.
        ShaftMass,
        /// The same where a head is on it.
        ShaftMassAssembled,
        /// The grip on the scale.
        GripMass,
        /// The club on the gram scale.
        TotalMass,
        /// The swing weight once more.
        SwingWeight,
        /// The bare shaft with a rule.
        ShaftLength,
        /// The same where a head is on it.
        ShaftLengthAssembled,
        /// The length to the cap.
        FinishedLength,
        /// The balance point.
        BalancePoint,
        /// The check weight on the balance scale.
        CheckWeight,
        /// The empty scale.
        EmptyScale,
        /// The ferrule.
        FerruleOn,
        /// The number on the sole.
        HeadNumber,
        /// The club in the clamp once more.
        ClampAgain,
        /// The same once more.
        Again,
    }
}

impl TellingSays {
    /// The order for what is to be measured; `assembled`: the head is on the shaft.
    const fn of(what: What, assembled: bool) -> Self {
        match (what, assembled) {
            (What::HeadMass, false) => Self::HeadMass,
            (What::HeadMass, true) => Self::HeadMassAssembled,
            (What::ShaftMass, false) => Self::ShaftMass,
            (What::ShaftMass, true) => Self::ShaftMassAssembled,
            (What::GripMass, _) => Self::GripMass,
            (What::TotalMass, _) => Self::TotalMass,
            (What::SwingWeight, _) => Self::SwingWeight,
            (What::ShaftLength, false) => Self::ShaftLength,
            (What::ShaftLength, true) => Self::ShaftLengthAssembled,
            (What::FinishedLength, _) => Self::FinishedLength,
            (What::BalancePoint, _) => Self::BalancePoint,
            (What::CheckWeight, _) => Self::CheckWeight,
            (What::EmptyScale, _) => Self::EmptyScale,
            (What::FerruleOn, _) => Self::FerruleOn,
            (What::HeadNumber, _) => Self::HeadNumber,
            _ => Self::Again,
        }
    }
}

/// A measurement that would tell causes apart, with what it takes to enter it.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Telling {
    /// What to measure.
    pub what: What,
    /// Key of the step to enter it at.
    pub step: String,
    /// What is on the club meanwhile.
    pub on: Vec<Role>,
    /// Whether it is read again: both readings count.
    pub again: bool,
    /// How much it is expected to tell, bits: one bit halves what is open.
    pub bits: f64,
    /// Chance that the cause named first after it is the true one.
    pub chance_of_naming: f64,
    /// About how many minutes it takes.
    pub minutes: f64,
    /// The order to measure it.
    #[serde(flatten)]
    pub fact: TellingSays,
}

/// About how many minutes a measurement takes at the bench (common practice, no source).
pub(super) const fn minutes(what: What) -> f64 {
    match what {
        What::EmptyScale | What::FerruleOn | What::HeadNumber => 0.05,
        What::SwingWeight => 0.5,
        What::TotalMass | What::FinishedLength | What::CheckWeight | What::GripMass => 1.0,
        What::HeadMass | What::BalancePoint => 2.0,
        _ => 3.0,
    }
}

/// Readings that could be taken of the club now, to follow the reading asked about.
pub(super) fn possible(believed: &Believed<'_>, reading: &Reading) -> Vec<Reading> {
    let assembly = believed.assembly;
    let Some(club) = assembly.job.club(&reading.club) else { return Vec::new() };
    let progress = Progress::of(believed, club);
    let shop = assembly.shop;
    let standing = believed.standing();
    let whole = |what: What| matches!(what, What::SwingWeight | What::TotalMass | What::BalancePoint);
    let last = standing.iter().filter(|r| r.club == club.id && whole(r.what)).max_by_key(|r| r.at).copied();
    let like = last.unwrap_or(reading);
    let latest = standing.iter().map(|r| r.at).max().unwrap_or(reading.at);
    let mut planned = Vec::new();
    let mut add = |what: What, on: &[Role], step: f64, scale: Option<&str>| {
        let mut made = Case::plan(planned.len(), like, what, on, step);
        made.at = latest;
        made.scale = scale.map(str::to_owned);
        planned.push(made);
    };
    let (balance, mass) = (&shop.balance_scale, &shop.mass_scale);
    if last.is_some() {
        add(What::SwingWeight, &like.on, balance.display_step, Some(&balance.key));
        add(What::TotalMass, &like.on, mass.display_step, Some(&mass.key));
        add(What::BalancePoint, &like.on, 0.0, None);
    }
    if progress.gripped {
        add(What::FinishedLength, &like.on, 0.0, None);
    } else {
        add(What::GripMass, &[], mass.display_step, Some(&mass.key));
    }
    if !progress.glued {
        add(What::HeadMass, &[], mass.display_step, Some(&mass.key));
        if progress.cut {
            add(What::ShaftLength, &[], 0.0, None);
            add(What::ShaftMass, &[], mass.display_step, Some(&mass.key));
        }
    }
    if shop.check_weight.is_some() {
        add(What::CheckWeight, &[], balance.display_step, Some(&balance.key));
    }
    planned
}

impl Telling {
    pub(super) fn of(seen: &Seen, bits: f64, chance_of_naming: f64, taken: &[Seen]) -> Self {
        let what = seen.reading.what;
        let again = taken.iter().any(|s| !s.planned && s.reading.what == what && s.reading.step == seen.reading.step);
        let assembled = taken.iter().any(|s| !s.planned && s.stage > Stage::Loose);
        Self {
            what,
            step: seen.reading.step.clone(),
            on: seen.reading.on.clone(),
            again,
            bits,
            chance_of_naming,
            minutes: minutes(what),
            fact: TellingSays::of(what, assembled),
        }
    }
}

impl Telling {
    /// The club clamped and read again.
    pub(super) fn clamp_again(asked: &Reading, bits: f64, chance_of_naming: f64) -> Self {
        Self {
            what: What::Cpm,
            step: asked.step.clone(),
            on: asked.on.clone(),
            again: true,
            bits,
            chance_of_naming,
            minutes: minutes(What::GripMass),
            fact: TellingSays::ClampAgain,
        }
    }

    /// A look that is answered yes or no, at the step of the reading asked about.
    pub(super) fn look(what: What, asked: &Reading, bits: f64, chance_of_naming: f64) -> Self {
        Self {
            what,
            step: asked.step.clone(),
            on: asked.on.clone(),
            again: true,
            bits,
            chance_of_naming,
            minutes: minutes(what),
            fact: TellingSays::of(what, false),
        }
    }
}

/// How much a measurement is worth: the chance of naming the cause after it, and a little for what it tells besides,
/// so that the next one finds less to do; each minute is taken off, since a second walk costs more than a longer look.
pub(super) fn worth(chance_of_naming: f64, bits: f64, what: What) -> f64 {
    chance_of_naming + 0.1 * bits - 0.01 * minutes(what)
}
