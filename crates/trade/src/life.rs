//! The life of a part: what was done with it, by whom and when, one entry after the other and none ever changed.

use crate::kind::closed_list;
use crate::part::Part;
use jiff::Timestamp;
use quantity::decimal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What can happen to a part.
    LifeStep {
        /// It came into stock.
        CameIn = "came_in", "came in";
        /// Held for a club.
        Held = "held", "held";
        /// No longer held: another part was planned, or the job was given up.
        Freed = "freed", "free again";
        /// In a club that was handed over.
        Used = "used", "used";
        /// Given back from a job to the shelf.
        Returned = "returned", "returned to the shelf";
        /// Pulled out of a club.
        Pulled = "pulled", "pulled out of its club";
        /// Put aside as unfit.
        Scrapped = "scrapped", "scrapped";
        /// Back in stock after it was put aside or pulled.
        Restored = "restored", "back in stock";
        /// A figure was wrong.
        Corrected = "corrected", "corrected";
        /// A shaft was cut, on purpose or by mistake.
        Cut = "cut", "cut";
        /// Another place, lot or count.
        Changed = "changed", "changed";
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
    /// What.
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
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// Who; empty where nobody said.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

impl LifeEntry {
    /// The entry in a sentence: “Corrected: mass 265.3 g, now 264.9 g.”
    #[must_use]
    pub fn words(&self) -> String {
        let mut text = String::from(self.step.word());
        match (self.job, &self.club) {
            (Some(job), Some(club)) => text.push_str(&format!(" {} the {club} of job {job}", preposition(self.step))),
            (Some(job), None) => text.push_str(&format!(" {} job {job}", preposition(self.step))),
            _ => {}
        }
        let figures: Vec<String> = self.figures.iter().map(FigureChange::words).collect();
        if !figures.is_empty() {
            text.push_str(": ");
            text.push_str(&figures.join(", "));
        }
        let mut letters = text.chars();
        let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
        format!("{first}{}.", letters.as_str())
    }
}

const fn preposition(step: LifeStep) -> &'static str {
    match step {
        LifeStep::Held => "for",
        LifeStep::Used => "in",
        LifeStep::Freed | LifeStep::Returned | LifeStep::Pulled | LifeStep::Scrapped => "from",
        _ => "with",
    }
}

impl FigureChange {
    /// `mass 265.3 g, now 264.9 g`; `mass 265.3 g` where nothing was known before.
    #[must_use]
    pub fn words(&self) -> String {
        let (name, unit) = match self.field.as_str() {
            "mass_g" => ("mass", " g"),
            "length_mm" => ("length", " mm"),
            "balance_point_mm" => ("balance point", " mm"),
            "cpm" => ("frequency", " cpm"),
            "tip_trimmed_mm" => ("off the tip", " mm"),
            "loft_deg" => ("loft", "°"),
            "lie_deg" => ("lie", "°"),
            "count" => ("count", ""),
            other => (other, ""),
        };
        let figure = |v: f64| format!("{}{unit}", decimal(v, if unit.is_empty() { 0 } else { 1 }));
        match (self.from, self.to) {
            (None, Some(to)) => format!("{name} {}", figure(to)),
            (Some(from), Some(to)) => format!("{name} {}, now {}", figure(from), figure(to)),
            (Some(from), None) => format!("{name} {}, no longer known", figure(from)),
            (None, None) => name.to_owned(),
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
                && before.reason.is_empty()
                && entry.reason.is_empty()
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
    let pairs = [
        ("mass_g", before.mass_g, after.mass_g),
        ("length_mm", before.length_mm, after.length_mm),
        ("balance_point_mm", before.balance_point_mm, after.balance_point_mm),
        ("cpm", before.cpm, after.cpm),
        ("tip_trimmed_mm", before.tip_trimmed_mm, after.tip_trimmed_mm),
        ("loft_deg", before.loft_deg, after.loft_deg),
        ("lie_deg", before.lie_deg, after.lie_deg),
        ("count", count(before), count(after)),
    ];
    pairs
        .into_iter()
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
            reason: String::new(),
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
        let told = LifeEntry { reason: "dropped".into(), ..entry(Freed, 2, 20) };
        assert_eq!(steps(vec![entry(Held, 2, 10), told, entry(Held, 2, 20)]), [Held, Freed, Held]);
    }
}
