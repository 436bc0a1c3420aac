//! What came out of work on clubs from elsewhere, by how much was read.

use crate::tally::{Count, Moments, Share, share};
use serde::Serialize;

/// What is read on arrival and before the last choice is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Depth {
    /// The swing weight of the whole club, once.
    Arrived,
    /// That, and the old grip and tape weighed; a pulled head weighed.
    Weighed,
    /// That, and the bare club read before the grip is chosen.
    Bare,
    /// That, and the new grip balanced on an edge, its cap under a caliper, its tape weighed.
    Measured,
}

impl Depth {
    /// All of them, the least first.
    pub const ALL: [Self; 4] = [Self::Arrived, Self::Weighed, Self::Bare, Self::Measured];

    /// How a report calls it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Arrived => "one reading on arrival",
            Self::Weighed => "and what came off weighed",
            Self::Bare => "and the bare club read",
            Self::Measured => "and the new grip measured",
        }
    }
}

/// What came out of many clubs of one kind, read to one depth.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KindLine {
    /// Key of the kind of job.
    pub kind: String,
    /// What was read.
    pub depth: Depth,
    /// Clubs judged.
    pub clubs: u32,
    /// Share whose true finish lies within ±0.3 points of what was asked.
    pub within_03: Option<Share>,
    /// Mean chance of that which was told when the last choice was made, percent.
    pub told_percent: f64,
    /// Whether the 95 % band of the finish held when the last choice was made.
    pub held: Option<Share>,
    /// Half width of that band, points: mean.
    pub band_points: f64,
    /// Whether the 95 % band held once the finished club was read.
    pub held_at_finish: Option<Share>,
    /// True finish less what was asked: root of the mean square, points.
    pub rms_points: f64,
    /// Good readings that were doubted.
    pub false_doubts: Option<Share>,
}

/// Counts of one line.
#[derive(Debug, Clone, Default)]
pub struct KindTally {
    pub(super) within_03: Count,
    pub(super) held: Count,
    pub(super) held_at_finish: Count,
    pub(super) chance: Moments,
    pub(super) band: Moments,
    pub(super) deviation: Moments,
    pub(super) doubts: Count,
}

impl KindTally {
    /// Adds another tally.
    pub fn join(&mut self, other: &Self) {
        self.within_03.join(other.within_03);
        self.held.join(other.held);
        self.held_at_finish.join(other.held_at_finish);
        self.chance.join(other.chance);
        self.band.join(other.band);
        self.deviation.join(other.deviation);
        self.doubts.join(other.doubts);
    }

    /// The line of a report. Each club is a shop of its own, so clubs are their own clusters.
    #[must_use]
    pub fn line(&self, kind: &str, depth: Depth, clubs: u32) -> KindLine {
        KindLine {
            kind: kind.to_owned(),
            depth,
            clubs,
            within_03: share(&[self.within_03]),
            told_percent: 100.0 * self.chance.mean(),
            held: share(&[self.held]),
            band_points: self.band.mean(),
            held_at_finish: share(&[self.held_at_finish]),
            rms_points: self.deviation.rms(),
            false_doubts: share(&[self.doubts]),
        }
    }
}
