//! How what a scale shows too much changes over the hours and days of a job.

use crate::error::EstimationError as E;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Drift of a scale within the job. Its offset is what it shows too much at the first knot, on the first day.
///
/// Within a day, what it shows too much wanders from knot to knot, straight in between, and moves steadily one way at a rate
/// of that day. The scale is zeroed again each morning: each day's offset is its habit, the same every day, plus a part of that
/// day alone. The two parts are as large on every day as on the first.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Drift {
    /// Standard deviation of the wandering after one hour, in the scale's unit; it grows with the root of the hours.
    pub sd_per_root_h: f64,
    /// Times of the knots, hours, rising; the first and the last bound what can be read.
    pub knots_h: Vec<f64>,
    /// Standard deviation of a day's steady rate, in the scale's unit an hour.
    #[serde(default)]
    pub sd_per_h: f64,
    /// Hours into a day after which the steady drift stops, because the scale has warmed up; 0 if it never stops.
    #[serde(default)]
    pub steady_h: f64,
    /// Those of the knots at which another day begins, rising.
    #[serde(default)]
    pub days_h: Vec<f64>,
    /// Share of the offset's variance that all days have in common, 0 to 1; only where there is more than one day.
    #[serde(default)]
    pub habit_share: f64,
    /// Time that a question without a time is about where the scale was last read earlier, hours, within the knots: the morning
    /// after, say, before anything is read. None: the time of the latest reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub now_h: Option<f64>,
}

/// Where the states of a drift stand.
#[derive(Debug, Clone, Default)]
pub(crate) struct DriftLayout {
    knots_h: Vec<f64>,
    /// A state for each span between knots; none for a span into another day.
    spans: Vec<Option<usize>>,
    days: Vec<DayLayout>,
    steady_h: f64,
    habit_share: f64,
    /// What the scale's habit is beyond what its first day tells of it.
    habit: Option<usize>,
    offset: usize,
    now_h: Option<f64>,
}

#[derive(Debug, Clone)]
struct DayLayout {
    from_h: f64,
    /// What the scale is off by on this day beyond its habit; none on the first, where the offset itself says it.
    own: Option<usize>,
    rate: Option<usize>,
}

impl Drift {
    /// Whether a shared deviation is a steady rate of this scale on one of its days.
    #[must_use]
    pub fn is_rate(scale: &str, key: &str) -> bool {
        key.strip_prefix("scale:").and_then(|key| key.strip_prefix(scale)).is_some_and(|key| key.starts_with(":rate:"))
    }

    fn day_starts(&self) -> impl Iterator<Item = f64> {
        self.knots_h.first().copied().into_iter().chain(self.days_h.iter().copied())
    }

    fn check(&self, place: impl Fn(&str) -> String) -> Result<(), E> {
        E::not_negative(|| place("drift.sd_per_root_h"), self.sd_per_root_h)?;
        E::not_negative(|| place("drift.sd_per_h"), self.sd_per_h)?;
        E::not_negative(|| place("drift.steady_h"), self.steady_h)?;
        E::not_negative(|| place("drift.habit_share"), self.habit_share)?;
        E::not_negative(|| place("drift.habit_share"), 1.0 - self.habit_share)?;
        if self.knots_h.len() < 2 {
            return Err(E::TooFew { place: place("drift.knots_h"), count: self.knots_h.len(), least: 2 });
        }
        for (what, times) in [("drift.knots_h", &self.knots_h), ("drift.days_h", &self.days_h)] {
            for time in times {
                E::finite(|| place(what), *time)?;
            }
            if let Some(span) = times.windows(2).find(|span| span[1] <= span[0]) {
                return Err(E::Limits { place: place(what), lower: span[0], upper: span[1] });
            }
        }
        let (first, last) = (self.knots_h[0], self.knots_h[self.knots_h.len() - 1]);
        if let Some(now_h) = self.now_h.filter(|now_h| !(*now_h >= first && *now_h <= last)) {
            return Err(E::Limits { place: place("drift.now_h"), lower: first, upper: now_h });
        }
        let after_first = &self.knots_h[1..];
        match self.days_h.iter().find(|day| !after_first.contains(day)) {
            Some(day) => Err(E::Limits { place: place("drift.days_h"), lower: self.knots_h[0], upper: *day }),
            None => Ok(()),
        }
    }

    /// The states of a scale's drift, each with its key, mean and standard deviation, from the scale's key and the mean and
    /// standard deviation of its offset.
    pub(crate) fn states(&self, scale: &str, offset: (f64, f64)) -> Result<Vec<(String, f64, f64)>, E> {
        self.check(|what| format!("scales[{scale}].{what}"))?;
        let mut states = Vec::new();
        let mut add = |key, mean, sd| states.push((key, mean, sd));
        // A state a span and none for the first knot: a drift that did not begin at 0 could not be told from the offset.
        for (i, span) in self.knots_h.windows(2).enumerate().filter(|(_, span)| !self.days_h.contains(&span[1])) {
            add(span_key(scale, i), 0.0, self.sd_per_root_h * (span[1] - span[0]).sqrt());
        }
        if self.sd_per_h > 0.0 {
            for day in 0..=self.days_h.len() {
                add(rate_key(scale, day), 0.0, self.sd_per_h);
            }
        }
        if !self.days_h.is_empty() {
            // Given the first day's offset, the habit is `share` of it and scatters by the root of `share·(1 − share)`.
            let (share, own_share) = (self.habit_share, 1.0 - self.habit_share);
            let (mean, sd) = offset;
            add(habit_key(scale), own_share * mean, sd * (share * own_share).sqrt());
            for day in 1..=self.days_h.len() {
                add(own_key(scale, day), 0.0, sd * own_share.sqrt());
            }
        }
        Ok(states)
    }

    /// Where the states of a scale's drift stand, given the place of each key.
    pub(crate) fn layout(&self, scale: &str, offset: usize, index: &impl Fn(&str) -> Option<usize>) -> DriftLayout {
        DriftLayout {
            knots_h: self.knots_h.clone(),
            spans: (0..self.knots_h.len() - 1).map(|i| index(&span_key(scale, i))).collect(),
            days: (0..)
                .zip(self.day_starts())
                .map(|(day, from_h)| DayLayout {
                    from_h,
                    own: index(&own_key(scale, day)),
                    rate: index(&rate_key(scale, day)),
                })
                .collect(),
            steady_h: if self.steady_h > 0.0 { self.steady_h } else { f64::INFINITY },
            habit_share: self.habit_share,
            habit: index(&habit_key(scale)),
            offset,
            now_h: self.now_h,
        }
    }
}

impl DriftLayout {
    /// Time that a question without a time is about where the scale was not read yet, hours; 0 without drift.
    pub(crate) fn asked_h(&self) -> f64 {
        self.now_h.or(self.knots_h.first().copied()).unwrap_or(0.0)
    }

    /// What a reading at a time shows beyond the offset: states with their shares.
    pub(crate) fn terms(&self, scale: &str, at_h: f64) -> Result<Vec<(usize, f64)>, E> {
        let (Some(first), Some(last)) = (self.knots_h.first(), self.knots_h.last()) else { return Ok(Vec::new()) };
        if !(at_h >= *first && at_h <= *last) {
            return Err(E::OutsideDrift { scale: scale.to_owned(), at_h, from_h: *first, to_h: *last });
        }
        let Some((number, day)) = self.days.iter().enumerate().rfind(|(_, day)| day.from_h <= at_h) else {
            return Ok(Vec::new());
        };
        let within = |span: &&[f64]| span[0] >= day.from_h && span[0] < at_h;
        let wandered = self.knots_h.windows(2).zip(&self.spans).filter(|(span, _)| within(span));
        let mut terms: Vec<(usize, f64)> = wandered
            .filter_map(|(span, state)| Some(((*state)?, ((at_h - span[0]) / (span[1] - span[0])).min(1.0))))
            .collect();
        terms.extend(day.rate.map(|rate| (rate, (at_h - day.from_h).min(self.steady_h))));
        if number > 0 {
            terms.push((self.offset, self.habit_share - 1.0));
            terms.extend([self.habit, day.own].into_iter().flatten().map(|state| (state, 1.0)));
        }
        Ok(terms)
    }

    /// Number of the span between knots in which a time lies.
    pub(crate) fn span(&self, at_h: f64) -> usize {
        self.knots_h.iter().filter(|knot| **knot < at_h).count()
    }
}

fn span_key(scale: &str, span: usize) -> String {
    format!("scale:{scale}:drift:{span:05}")
}

fn own_key(scale: &str, day: usize) -> String {
    format!("scale:{scale}:day:{day:03}")
}

fn habit_key(scale: &str) -> String {
    format!("scale:{scale}:habit")
}

/// Key of a day's steady rate, the first day being 0, among the shared deviations.
fn rate_key(scale: &str, day: usize) -> String {
    format!("scale:{scale}:rate:{day:03}")
}
