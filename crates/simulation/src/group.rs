//! Who builds what: strategies, and a group of jobs built by each of them.

use crate::advice::Measured;
use crate::bench;
use crate::error::SimulationError;
use crate::hands::{self, Skill};
use crate::job::SimulatedJob;
use crate::settings::Settings;
use crate::shop::SimulatedShop;
use crate::tally::Tally;
use ::bench::learned::Learned;

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
    /// In words.
    pub words: &'static str,
    /// Who builds.
    pub builder: Builder,
}

const NOTHING: Measured =
    Measured { check_weight: false, parts: false, each_tape: false, joints: false, cure_readings: 1 };
const FOUR: Measured = Measured { check_weight: true, parts: true, ..NOTHING };
const CHECKED: Measured = Measured { check_weight: true, ..NOTHING };

/// All strategies, in the order of the report.
pub const STRATEGIES: [Strategy; 12] = [
    Strategy { key: "rules", words: "round rules by hand", builder: Builder::Hand(Skill::Rules) },
    Strategy { key: "grips", words: "grips chosen by mass", builder: Builder::Hand(Skill::Grips) },
    Strategy { key: "corrects", words: "corrected club by club", builder: Builder::Hand(Skill::Corrects) },
    Strategy { key: "new_plain", words: "new shop, nothing measured", builder: Builder::New(NOTHING) },
    Strategy { key: "new_four", words: "new shop, four measurements", builder: Builder::New(FOUR) },
    Strategy {
        key: "new_four_3",
        words: "and 3 cure readings, tape weighed",
        builder: Builder::New(Measured { each_tape: true, cure_readings: 3, ..FOUR }),
    },
    Strategy {
        key: "new_joints",
        words: "four, clubs weighed at gluing",
        builder: Builder::New(Measured { joints: true, ..FOUR }),
    },
    Strategy {
        key: "new_joints_3",
        words: "and 3 cure readings, tape weighed",
        builder: Builder::New(Measured { joints: true, each_tape: true, cure_readings: 3, ..FOUR }),
    },
    Strategy { key: "known", words: "known shop, check weight", builder: Builder::Known(CHECKED) },
    Strategy {
        key: "known_3",
        words: "and 3 cure readings, tape weighed",
        builder: Builder::Known(Measured { each_tape: true, cure_readings: 3, ..CHECKED }),
    },
    Strategy { key: "ceiling", words: "every true mean known", builder: Builder::Ceiling(1) },
    Strategy { key: "ceiling_3", words: "and 3 cure readings", builder: Builder::Ceiling(3) },
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
        for (strategy, s) in STRATEGIES.iter().enumerate().filter(|(_, s)| wanted(s)) {
            let tally = match s.builder {
                Builder::Hand(skill) => hands::by_hand(settings, &shop, &job, skill),
                Builder::Ceiling(readings) => hands::ceiling(settings, &shop, &job, readings),
                Builder::New(measured) => bench::build(settings, &shop, &job, s.key, measured, Learned::nothing())?.0,
                Builder::Known(_) => continue,
            };
            outcomes.push(Outcome { strategy, shop: id, job: 0, judged: true, tally });
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
            outcomes.push(Outcome { strategy, shop: id, job: number, judged, tally });
            built();
        }
    }
    Ok(outcomes)
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
