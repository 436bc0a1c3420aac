//! What planning jobs together brings over planning one after the other.

use matching::{Choice, DayProblem, DaySolution};
use serde::Serialize;
use trade::job::Job;
use utoipa::ToSchema;

/// What is saved below this is nothing: a twentieth of a missed club, or 10 g of tip weight (a judgement, no source).
const NOTHING: f64 = 0.05;

fact::facts! {
    /// What planning jobs together brings over planning one after the other.
    pub enum Brings: "planner_brings" {
        /// Nothing to speak of.
        Nothing,
        /// More clubs can be built.
        Built {
            /// How many more.
            clubs: i64,
        },
        /// The same clubs are built and come out better.
        Better {
            /// How many more of them are expected in tolerance; less than 0 where tip weight is saved at their cost.
            more_inside: f64,
            /// How much more goes into their tips; less than 0 where less does.
            more_tip_g: f64,
        },
    }
}

/// How a plan comes out.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, ToSchema)]
pub struct HowItComesOut {
    /// Clubs that cannot be built.
    pub unbuilt: usize,
    /// Clubs expected in tolerance, with the readings and the choice of grips that are still to come.
    pub inside: f64,
    /// Weight in all tips.
    pub tip_g: f64,
}

impl HowItComesOut {
    fn and(self, other: Self) -> Self {
        Self {
            unbuilt: self.unbuilt + other.unbuilt,
            inside: self.inside + other.inside,
            tip_g: self.tip_g + other.tip_g,
        }
    }
}

/// How one job comes out, planned together with the others and in its turn.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct JobWorth {
    /// Running number of the job.
    pub number: i64,
    /// Planned together with the others.
    pub together: HowItComesOut,
    /// Planned in its turn, from what the jobs due before it leave.
    pub in_turn: HowItComesOut,
}

/// What planning jobs together brings over planning each in its turn, the earliest due first.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct DayWorth {
    /// All jobs, planned together.
    pub together: HowItComesOut,
    /// All jobs, each planned in its turn from what those due before it leave.
    pub in_turn: HowItComesOut,
    /// What planning together saves, as plans are counted: in clubs that are sure to miss, those of urgent jobs up to double.
    pub saves: f64,
    /// The jobs one by one, the earliest due first.
    pub jobs: Vec<JobWorth>,
    /// What it comes to.
    #[serde(flatten)]
    pub fact: Brings,
}

/// What a plan for the day brings; none for a single job, or where there was no time for the plain plan.
pub(super) fn worth(jobs: &[&Job], problem: &DayProblem, solution: &DaySolution) -> Option<DayWorth> {
    let apart = solution.apart.as_ref().filter(|_| jobs.len() > 1)?;
    let out = |set: usize, clubs: &[Option<Choice>]| {
        let mut out = HowItComesOut::default();
        for (need, choice) in problem.sets[set].clubs.iter().zip(clubs) {
            match choice {
                Some(choice) => {
                    out.inside += need.loss.probability(choice.deviation_points);
                    out.tip_g += choice.tip_g;
                }
                None => out.unbuilt += 1,
            }
        }
        out
    };
    let rows: Vec<JobWorth> = jobs
        .iter()
        .enumerate()
        .map(|(i, job)| JobWorth {
            number: job.number,
            together: out(i, &solution.sets[i].clubs),
            in_turn: out(i, &apart.sets[i].clubs),
        })
        .collect();
    let all = |of: &dyn Fn(&JobWorth) -> HowItComesOut| {
        rows.iter().map(of).fold(HowItComesOut::default(), HowItComesOut::and)
    };
    let (together, in_turn) = (all(&|row| row.together), all(&|row| row.in_turn));
    let saves = (apart.cost - solution.cost).max(0.0);
    let more = i64::try_from(in_turn.unbuilt).unwrap_or_default() - i64::try_from(together.unbuilt).unwrap_or_default();
    let fact = if saves < NOTHING {
        Brings::Nothing
    } else if more > 0 {
        Brings::Built { clubs: more }
    } else {
        Brings::Better { more_inside: together.inside - in_turn.inside, more_tip_g: together.tip_g - in_turn.tip_g }
    };
    Some(DayWorth { together, in_turn, saves, jobs: rows, fact })
}
