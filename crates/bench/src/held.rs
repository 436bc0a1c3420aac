//! How often the shop's own forecasts have held: each reading keeps the forecast that stood before it, so that anybody can
//! count afterwards how many readings came to lie in the band that promised 95 of 100.

pub use estimation::share::{Count, Difference, Share, paired, share};
use jiff::civil::Date;
use serde::Serialize;
use std::collections::BTreeMap;
use trade::id::JobId;
use trade::reading::What;
use utoipa::ToSchema;

/// The readings of one job, step, quantity and month that had a forecast.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Forecasted {
    /// The job: its readings share a scale, an adhesive and a builder.
    pub job: JobId,
    /// Key of the step.
    pub step: String,
    /// What was read.
    pub what: What,
    /// The month in which it was read (UTC), for example `2026-03`.
    pub month: String,
    /// Readings within the 95 % band of their forecast.
    pub held: u32,
    /// All of them.
    pub of: u32,
}

/// How often the bands of one step's readings held.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct HeldAtStep {
    /// Key of the step.
    pub step: String,
    /// What is read there.
    pub what: What,
    /// Readings in the band, percent, with limits that count the readings of a job as one cluster.
    pub share: Share,
}

/// How often the bands held in one month.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct HeldInMonth {
    /// The month, for example `2026-03`.
    pub month: String,
    /// Readings in the band, percent, with limits that count the readings of a job as one cluster.
    pub share: Share,
}

/// How often the forecasts of the shop's own readings have held.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct BandsHeld {
    /// Readings from this day on (UTC) are counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub since_on: Option<Date>,
    /// All readings together; none where none had a forecast.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub all: Option<Share>,
    /// By step and what is read there, those with the most readings first.
    pub by_step: Vec<HeldAtStep>,
    /// By month, the earliest first.
    pub by_month: Vec<HeldInMonth>,
}

impl BandsHeld {
    /// Counts what the store has grouped.
    #[must_use]
    pub fn of(since_on: Date, counts: &[Forecasted]) -> Self {
        let mut by_step: Vec<HeldAtStep> = grouped(counts, |c| (c.step.clone(), c.what))
            .into_iter()
            .map(|((step, what), share)| HeldAtStep { step, what, share })
            .collect();
        by_step.sort_by_key(|group| std::cmp::Reverse(group.share.of));
        let by_month = grouped(counts, |c| c.month.clone());
        Self {
            since_on: Some(since_on),
            all: grouped(counts, |_| ()).pop().map(|(_, share)| share),
            by_step,
            by_month: by_month.into_iter().map(|(month, share)| HeldInMonth { month, share }).collect(),
        }
    }
}

fact::facts! {
    /// What a share of readings says of the promise of 95 in 100.
    pub enum Promise: "promise" {
        /// Fewer held than promised: even the upper limit is under it.
        TooSure,
        /// More held than promised: even the lower limit is over it.
        TooCareful,
        /// The promise lies within the limits.
        Kept,
        /// Too few readings to say: of fewer than twenty, 95 in 100 is not one.
        TooFew,
    }
}

impl Promise {
    /// What a share says.
    #[must_use]
    pub fn of(share: &Share) -> Self {
        match share.limits_percent {
            _ if share.of < 20 => Self::TooFew,
            [_, high] if high < 95.0 => Self::TooSure,
            [low, _] if low > 95.0 => Self::TooCareful,
            _ => Self::Kept,
        }
    }
}

/// The share of each group, its jobs being the clusters.
fn grouped<K: Ord>(counts: &[Forecasted], key: impl Fn(&Forecasted) -> K) -> Vec<(K, Share)> {
    let mut groups: BTreeMap<K, BTreeMap<&str, Count>> = BTreeMap::new();
    for count in counts {
        let jobs = groups.entry(key(count)).or_default();
        jobs.entry(&count.job.0).or_default().join(Count { yes: count.held, of: count.of });
    }
    let share_of = |jobs: BTreeMap<&str, Count>| share(&jobs.into_values().collect::<Vec<_>>());
    groups.into_iter().filter_map(|(key, jobs)| Some((key, share_of(jobs)?))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(job: &str, step: &str, month: &str, held: u32, of: u32) -> Forecasted {
        let (step, month) = (step.to_owned(), month.to_owned());
        Forecasted { job: JobId(job.into()), step, what: What::SwingWeight, month, held, of }
    }

    /// By hand: 7 + 8 + 6 of 24; dry 15 of 16, finish 6 of 8; March 7 of 8, April 14 of 16.
    #[test]
    fn readings_are_counted_by_step_and_month() {
        let counts = [
            counted("a", "dry", "2026-03", 7, 8),
            counted("b", "dry", "2026-04", 8, 8),
            counted("b", "finish", "2026-04", 6, 8),
        ];
        let held = BandsHeld::of(jiff::civil::date(2026, 1, 1), &counts);
        let all = held.all.expect("readings");
        assert_eq!((all.of, all.percent), (24, 87.5));
        let steps: Vec<_> = held.by_step.iter().map(|g| (g.step.as_str(), g.share.of, g.share.percent)).collect();
        assert_eq!(steps, [("dry", 16, 93.75), ("finish", 8, 75.0)]);
        let months: Vec<_> = held.by_month.iter().map(|g| (g.month.as_str(), g.share.percent)).collect();
        assert_eq!(months, [("2026-03", 87.5), ("2026-04", 87.5)]);
    }

    /// Two jobs, one with every reading inside and one with none: the readings of a job are one case, and the limits are
    /// as wide as two cases allow.
    #[test]
    fn readings_of_one_job_are_one_cluster() {
        let apart = [counted("a", "dry", "2026-03", 8, 8), counted("b", "dry", "2026-03", 0, 8)];
        let mixed = [counted("a", "dry", "2026-03", 4, 8), counted("b", "dry", "2026-03", 4, 8)];
        let width = |counts: &[Forecasted]| {
            let [low, high] =
                BandsHeld::of(jiff::civil::date(2026, 1, 1), counts).all.expect("readings").limits_percent;
            high - low
        };
        assert!(width(&apart) > 1.5 * width(&mixed), "{} against {}", width(&apart), width(&mixed));
    }

    #[test]
    fn a_shop_without_forecasts_has_no_share() {
        let held = BandsHeld::of(jiff::civil::date(2026, 1, 1), &[]);
        assert!(held.all.is_none() && held.by_step.is_empty() && held.by_month.is_empty());
    }
}
