//! The life of a part: what was done with it, by whom and when, one entry after the other and none ever changed.

use crate::kind::closed_list;
use crate::part::Part;
use crate::part_field::{Field, Measure, figures};
use fact::{Fact, Told};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What can happen to a part.
    LifeStep {
        /// It came into stock.
        CameIn = "came_in";
        /// Held for a club.
        Held = "held";
        /// No longer held: another part was planned, or the job was given up.
        Freed = "freed";
        /// In a club that was handed over.
        Used = "used";
        /// Given back from a job to the shelf.
        Returned = "returned";
        /// Pulled out of a club.
        Pulled = "pulled";
        /// Put aside as unfit.
        Scrapped = "scrapped";
        /// Back in stock after it was put aside or pulled.
        Restored = "restored";
        /// A figure was wrong.
        Corrected = "corrected";
        /// A shaft was cut, on purpose or by mistake.
        Cut = "cut";
        /// Another place, lot or count.
        Changed = "changed";
    }
}

/// A figure of a part before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct FigureChange {
    /// The field: `mass_g`, `length_mm` …
    pub field: String,
    /// Before; none where it was not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<f64>,
    /// After; none where it is no longer known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<f64>,
}

/// One entry of a part's life.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct LifeEntry {
    /// What was done with the part, or what became of it.
    pub step: LifeStep,
    /// The job that it has to do with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Place of the club in its tray.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// Number of the club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub club: Option<String>,
    /// Figures before and after.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub figures: Vec<FigureChange>,
    /// Why, or a remark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<Told>,
    /// Who; empty where nobody said.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

fact::facts! {
    /// An entry of a life as a sentence: what was done, with which club, which figures changed.
    pub enum LifeTold: "life" {
        /// It came into stock.
        CameIn {
            /// What was known of it then: its mass, length, loft …
            figures: Option<Vec<FigureTold>>,
        },
        /// Held for a club.
        Held {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// No longer held.
        Freed {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// In a club that was handed over.
        Used {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// Given back to the shelf.
        Returned {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// Pulled out of a club.
        Pulled {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// Put aside as unfit.
        Scrapped {
            /// Running number of the job.
            job: Option<i64>,
            /// Number of the club.
            club: Option<String>,
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// Back in stock.
        Restored {
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// A figure was wrong.
        Corrected {
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// A shaft was cut.
        Cut {
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
        /// Another place, lot or count.
        Changed {
            /// Figures that changed.
            figures: Option<Vec<FigureTold>>,
        },
    }
}

fact::facts! {
    /// A figure of a part before and after, by its unit.
    pub enum FigureTold: "life_figure" {
        /// A mass.
        Mass {
            /// Which.
            name: Told,
            /// Before.
            from_g: Option<f64>,
            /// After.
            to_g: Option<f64>,
        },
        /// A length.
        Length {
            /// Which.
            name: Told,
            /// Before.
            from_mm: Option<f64>,
            /// After.
            to_mm: Option<f64>,
        },
        /// A frequency.
        Frequency {
            /// Which.
            name: Told,
            /// Before.
            from_cpm: Option<f64>,
            /// After.
            to_cpm: Option<f64>,
        },
        /// An angle.
        Angle {
            /// Which.
            name: Told,
            /// Before.
            from_deg: Option<f64>,
            /// After.
            to_deg: Option<f64>,
        },
        /// A figure without a unit.
        Plain {
            /// Which.
            name: Told,
            /// Before.
            from: Option<f64>,
            /// After.
            to: Option<f64>,
        },
    }
}

impl LifeEntry {
    /// The entry as a fact.
    #[must_use]
    pub fn told(&self) -> LifeTold {
        let figures =
            (!self.figures.is_empty()).then(|| self.figures.iter().map(FigureChange::told).collect::<Vec<_>>());
        let (job, club) = (self.job, self.club.clone());
        match self.step {
            LifeStep::CameIn => LifeTold::CameIn { figures },
            LifeStep::Held => LifeTold::Held { job, club, figures },
            LifeStep::Freed => LifeTold::Freed { job, club, figures },
            LifeStep::Used => LifeTold::Used { job, club, figures },
            LifeStep::Returned => LifeTold::Returned { job, club, figures },
            LifeStep::Pulled => LifeTold::Pulled { job, club, figures },
            LifeStep::Scrapped => LifeTold::Scrapped { job, club, figures },
            LifeStep::Restored => LifeTold::Restored { figures },
            LifeStep::Corrected => LifeTold::Corrected { figures },
            LifeStep::Cut => LifeTold::Cut { figures },
            LifeStep::Changed => LifeTold::Changed { figures },
        }
    }
}

impl FigureChange {
    /// The figure as a fact; one that only an earlier version had is named by its field.
    #[must_use]
    pub fn told(&self) -> FigureTold {
        let (from, to) = (self.from, self.to);
        let Some(field) = Field::by_key(&self.field) else {
            return FigureTold::Plain { name: Told::verbatim(&self.field), from, to };
        };
        let name = field.told();
        match field.measure {
            Measure::Mass => FigureTold::Mass { name, from_g: from, to_g: to },
            Measure::Length => FigureTold::Length { name, from_mm: from, to_mm: to },
            Measure::Frequency => FigureTold::Frequency { name, from_cpm: from, to_cpm: to },
            Measure::Angle => FigureTold::Angle { name, from_deg: from, to_deg: to },
            Measure::Count | Measure::Word => FigureTold::Plain { name, from, to },
        }
    }
}

/// A life without what came to nothing: where another part of its club was exchanged, a part is let go and held for the
/// same club in one moment.
#[must_use]
pub fn without_exchanges(life: Vec<LifeEntry>) -> Vec<LifeEntry> {
    let mut kept: Vec<LifeEntry> = Vec::with_capacity(life.len());
    for entry in life {
        let let_go = kept.last().is_some_and(|before| {
            (before.step, entry.step) == (LifeStep::Freed, LifeStep::Held)
                && (before.job, before.slot, before.at) == (entry.job, entry.slot, entry.at)
                && entry.job.is_some()
                && before.figures.is_empty()
                && before.reason.is_none()
                && entry.reason.is_none()
        });
        if let_go {
            kept.pop();
        } else {
            kept.push(entry);
        }
    }
    kept
}

/// The figures in which two states of a part differ.
#[must_use]
pub fn differences(before: &Part, after: &Part) -> Vec<FigureChange> {
    let count = |part: &Part| part.count.map(|n| n as f64);
    let figures = figures().map(|(field, figure)| (field.key, (figure.get)(before), (figure.get)(after)));
    figures
        .chain([("count", count(before), count(after))])
        .filter(|(_, from, to)| from != to)
        .map(|(field, from, to)| FigureChange { field: field.to_owned(), from, to })
        .collect()
}

/// The figures of a part as it came in.
#[must_use]
pub fn figures_of(part: &Part) -> Vec<FigureChange> {
    let nothing = Part::new(&part.code, part.kind, &part.model);
    differences(&nothing, part)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(step: LifeStep, slot: i64, second: i64) -> LifeEntry {
        LifeEntry {
            step,
            job: Some(4),
            slot: Some(slot),
            club: Some("7".into()),
            figures: Vec::new(),
            reason: None,
            by: "Ada".into(),
            at: Timestamp::from_second(second).unwrap(),
        }
    }

    #[test]
    fn a_part_let_go_and_held_in_one_moment_has_stayed() {
        use LifeStep::{Freed, Held, Used};
        let steps = |life: Vec<LifeEntry>| without_exchanges(life).iter().map(|e| e.step).collect::<Vec<_>>();
        let stayed = vec![entry(Held, 2, 10), entry(Freed, 2, 20), entry(Held, 2, 20), entry(Used, 2, 30)];
        assert_eq!(steps(stayed), [Held, Used]);
        // To another club, later, or with a reason: that happened.
        let moved = vec![entry(Held, 2, 10), entry(Freed, 2, 20), entry(Held, 3, 20)];
        assert_eq!(steps(moved), [Held, Freed, Held]);
        let later = vec![entry(Held, 2, 10), entry(Freed, 2, 20), entry(Held, 2, 21)];
        assert_eq!(steps(later), [Held, Freed, Held]);
        let told = LifeEntry { reason: Some(Told::verbatim("dropped")), ..entry(Freed, 2, 20) };
        assert_eq!(steps(vec![entry(Held, 2, 10), told, entry(Held, 2, 20)]), [Held, Freed, Held]);
    }
}
