//! Who builds what: strategies, and a group of jobs built by each of them.

use crate::advice::{Followed, Grips, Measured};
use crate::bench;
use crate::error::SimulationError;
use crate::hands::{self, Skill};
use crate::job::SimulatedJob;
use crate::settings::Settings;
use crate::shop::SimulatedShop;
use crate::tally::{Count, Tally};
use ::bench::learned::Learned;
use ::bench::told::Sureness;

/// Who builds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Builder {
    /// A hand.
    Hand(Skill),
    /// Setwright in a shop that has learned nothing.
    New(Measured),
    /// Setwright in a shop that carries what it learned from job to job.
    Known(Measured),
    /// Knows every true mean; so many cure readings.
    Ceiling(u64),
}

/// One strategy of the report.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strategy {
    /// Key in the report.
    pub key: &'static str,
    /// What the report calls it.
    pub words: &'static str,
    /// Who builds.
    pub builder: Builder,
}

const NOTHING: Measured = Measured {
    check_weight: false,
    parts: false,
    each_tape: false,
    joints: false,
    cure_readings: 1,
    offered: false,
    order: Followed::Together,
    grips: Grips::AtOnce,
    told: None,
};
const FOUR: Measured = Measured { check_weight: true, parts: true, grips: Grips::AsProposed, ..NOTHING };
const CHECKED: Measured = Measured { check_weight: true, grips: Grips::AsProposed, ..NOTHING };
const OFFERED: Measured = Measured { offered: true, grips: Grips::AsProposed, ..NOTHING };

const fn line(key: &'static str, words: &'static str, builder: Builder) -> Strategy {
    Strategy { key, words, builder }
}

/// All strategies, in the order of the report.
pub const STRATEGIES: [Strategy; 27] = [
    line("rules", "own figures by hand", Builder::Hand(Skill::Rules)),
    line("grips", "grips chosen by mass", Builder::Hand(Skill::Grips)),
    line("corrects", "skilled, corrected club by club", Builder::Hand(Skill::Corrects)),
    line("corrects_checked", "skilled, with check weight", Builder::Hand(Skill::Checked)),
    line("new_plain", "new shop, nothing measured, all grips at once", Builder::New(NOTHING)),
    line(
        "new_plain_grips",
        "nothing measured, grips as advised",
        Builder::New(Measured { grips: Grips::AsProposed, ..NOTHING }),
    ),
    line(
        "new_plain_order",
        "nothing measured, order and grips as advised",
        Builder::New(Measured { grips: Grips::AsProposed, order: Followed::AsProposed, ..NOTHING }),
    ),
    line("new_four", "new shop, four measurements", Builder::New(FOUR)),
    line(
        "new_four_3",
        "and 3 cure readings, tape weighed",
        Builder::New(Measured { each_tape: true, cure_readings: 3, ..FOUR }),
    ),
    line("new_offered", "new shop, bundle as offered", Builder::New(OFFERED)),
    line(
        "new_offered_order",
        "and order as advised",
        Builder::New(Measured { order: Followed::AsProposed, ..OFFERED }),
    ),
    line(
        "new_offered_order_3",
        "and 3 cure readings, tape weighed",
        Builder::New(Measured { order: Followed::AsProposed, each_tape: true, cure_readings: 3, ..OFFERED }),
    ),
    line(
        "told_plain",
        "own figures told as sure, nothing measured, grips as advised",
        Builder::New(Measured { told: Some(Sureness::Sure), grips: Grips::AsProposed, ..NOTHING }),
    ),
    line(
        "told_plain_order",
        "and order as advised",
        Builder::New(Measured {
            told: Some(Sureness::Sure),
            grips: Grips::AsProposed,
            order: Followed::AsProposed,
            ..NOTHING
        }),
    ),
    line(
        "told_plain_turn",
        "and each grip in turn",
        Builder::New(Measured {
            told: Some(Sureness::Sure),
            grips: Grips::InTurn,
            order: Followed::AsProposed,
            ..NOTHING
        }),
    ),
    line(
        "told_offered",
        "own figures told, bundle as offered",
        Builder::New(Measured { told: Some(Sureness::Figure), ..OFFERED }),
    ),
    line(
        "told_offered_order",
        "and each tape weighed, order as advised",
        Builder::New(Measured {
            told: Some(Sureness::Figure),
            each_tape: true,
            order: Followed::AsProposed,
            ..OFFERED
        }),
    ),
    line(
        "told_offered_order_2",
        "and 2 cure readings",
        Builder::New(Measured {
            told: Some(Sureness::Figure),
            each_tape: true,
            order: Followed::AsProposed,
            cure_readings: 2,
            ..OFFERED
        }),
    ),
    line(
        "told_offered_first",
        "own figures told, bundle, each tape weighed, one club cured first",
        Builder::New(Measured {
            told: Some(Sureness::Figure),
            each_tape: true,
            order: Followed::OneCuredFirst,
            ..OFFERED
        }),
    ),
    line(
        "told_offered_first_2",
        "and 2 cure readings",
        Builder::New(Measured {
            told: Some(Sureness::Figure),
            each_tape: true,
            order: Followed::OneCuredFirst,
            cure_readings: 2,
            ..OFFERED
        }),
    ),
    line("new_joints", "four, clubs weighed at gluing", Builder::New(Measured { joints: true, ..FOUR })),
    line(
        "new_joints_3",
        "and 3 cure readings, tape weighed",
        Builder::New(Measured { joints: true, each_tape: true, cure_readings: 3, ..FOUR }),
    ),
    line("known", "known shop, check weight", Builder::Known(CHECKED)),
    line(
        "known_3",
        "and 3 cure readings, tape weighed",
        Builder::Known(Measured { each_tape: true, cure_readings: 3, ..CHECKED }),
    ),
    line("known_offered", "known shop, bundle as offered", Builder::Known(OFFERED)),
    line("ceiling", "every true mean known", Builder::Ceiling(1)),
    line("ceiling_3", "and 3 cure readings", Builder::Ceiling(3)),
];

/// What one strategy made of one job.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Place of the strategy in [`STRATEGIES`].
    pub strategy: usize,
    /// Jobs of one shop belong together.
    pub shop: u64,
    /// How many jobs the shop had built before.
    pub job: u64,
    /// Whether the job is judged, or only built to learn from.
    pub judged: bool,
    /// What came out.
    pub tally: Tally,
    /// What a skilled hand, correcting club by club without a check weight, made of the same job: clubs within ±0.3 points.
    pub hand_within_03: Count,
}

/// Builds one group: ten new shops with a job each by every strategy, and one shop that is learned and then judged by
/// ten jobs. `built` is called after every job.
///
/// # Errors
/// Settings that mean nothing; advice that failed.
pub fn run_group(settings: &Settings, group: u32, built: &mut dyn FnMut()) -> Result<Vec<Outcome>, SimulationError> {
    settings.check()?;
    let mut outcomes = Vec::new();
    let wanted = |s: &Strategy| s.key.contains(&settings.only);
    for fresh in 0..u64::from(Settings::JOBS_A_GROUP) {
        let id = u64::from(group) * 1000 + 1 + fresh;
        let shop = SimulatedShop::draw(settings, id);
        let job = SimulatedJob::draw(settings, &shop, 0);
        let hand_within_03 = skilled_hand(settings, &shop, &job);
        for (strategy, s) in STRATEGIES.iter().enumerate().filter(|(_, s)| wanted(s)) {
            let tally = match s.builder {
                Builder::Hand(skill) => hands::by_hand(settings, &shop, &job, skill),
                Builder::Ceiling(readings) => hands::ceiling(settings, &shop, &job, readings),
                Builder::New(measured) => bench::build(settings, &shop, &job, s.key, measured, Learned::nothing())?.0,
                Builder::Known(_) => continue,
            };
            outcomes.push(Outcome { strategy, shop: id, job: 0, judged: true, tally, hand_within_03 });
            built();
        }
    }
    let id = u64::from(group) * 1000;
    let shop = SimulatedShop::draw(settings, id);
    for (strategy, s) in STRATEGIES.iter().enumerate().filter(|(_, s)| wanted(s)) {
        let Builder::Known(measured) = s.builder else { continue };
        let mut learned = Learned::nothing().clone();
        for number in 0..u64::from(settings.known_after + Settings::JOBS_A_GROUP) {
            let job = SimulatedJob::draw(settings, &shop, number);
            let (tally, after) = bench::build(settings, &shop, &job, s.key, measured, &learned)?;
            learned = after;
            let judged = number >= u64::from(settings.known_after);
            let hand_within_03 = if judged { skilled_hand(settings, &shop, &job) } else { Count::default() };
            outcomes.push(Outcome { strategy, shop: id, job: number, judged, tally, hand_within_03 });
            built();
        }
    }
    Ok(outcomes)
}

/// Clubs within ±0.3 points that a skilled hand makes of a job.
fn skilled_hand(settings: &Settings, shop: &SimulatedShop, job: &SimulatedJob) -> Count {
    hands::by_hand(settings, shop, job, Skill::Corrects).within_03
}

impl Settings {
    /// How often `built` is called in one group.
    #[must_use]
    pub fn steps_a_group(&self) -> u64 {
        let ten = u64::from(Self::JOBS_A_GROUP);
        let steps = |s: &Strategy| match s.builder {
            Builder::Known(_) => ten + u64::from(self.known_after),
            _ => ten,
        };
        STRATEGIES.iter().filter(|s| s.key.contains(&self.only)).map(steps).sum()
    }
}
