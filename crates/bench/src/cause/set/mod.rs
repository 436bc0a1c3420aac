//! Causes over the set: what two clubs have exchanged, what a run of readings has in common.
//!
//! Each is a hypothesis about readings of several clubs, weighed with the joint covariance of all of them, what they
//! share included: two clubs off by the same amount in opposite ways say more together than each by itself. How often
//! each happens is common practice (no source); the numbers in the tests come from an independent computation.

#[cfg(test)]
mod worked;

use estimation::{Change, Effect, Hypothesis};

/// Two heads exchanged, once a set: three quarters between neighbours, the rest among all other pairs.
const HEADS: f64 = 0.004;
const HEADS_OF_NEIGHBOURS: f64 = 0.75;
/// Two grips exchanged, once a set.
const GRIPS: f64 = 0.005;
/// Two unlike tip weights exchanged, once a set.
const TIPS: f64 = 0.006;
/// The scale off zero for a run of readings, once a step.
const OFF_ZERO: f64 = 0.01;
/// By how much a scale is off that was not zeroed, points.
pub(super) const OFF_ZERO_SD_POINTS: f64 = 1.0;
/// A ferrule off at the dry fit: until the club is glued, at the dry fit only, for good.
const FERRULE: [f64; 3] = [0.015, 0.003, 0.003];
/// What is not known of what a missing ferrule does, as a share of it.
const FERRULE_SHARE_SD: f64 = 0.05;

/// One piece of a club of the set, and the readings in which its mass shows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Member {
    /// Mass as planned, g.
    pub mass_g: f64,
    /// What a gram more of it adds to each reading.
    pub per_g: Vec<Effect>,
}

/// How likely it is that two given heads of a set of `clubs` are exchanged; `apart`: how many clubs lie between them and
/// one more.
pub(super) fn heads_prior(clubs: usize, apart: usize) -> f64 {
    let neighbours = clubs.saturating_sub(1).max(1);
    let others = pairs(clubs).saturating_sub(neighbours).max(1);
    if apart <= 1 {
        HEADS * HEADS_OF_NEIGHBOURS / neighbours as f64
    } else {
        HEADS * (1.0 - HEADS_OF_NEIGHBOURS) / others as f64
    }
}

/// How likely it is that two given grips of a set of `clubs` are exchanged.
pub(super) fn grips_prior(clubs: usize) -> f64 {
    GRIPS / pairs(clubs).max(1) as f64
}

/// How likely it is that two given tip weights are exchanged, by the number of pairs in the set that differ.
pub(super) fn tips_prior(unlike_pairs: usize) -> f64 {
    TIPS / unlike_pairs.max(1) as f64
}

const fn pairs(clubs: usize) -> usize {
    clubs * clubs.saturating_sub(1) / 2
}

/// The piece of each of two clubs is in the other; each is known to `sd_g`.
pub(super) fn exchange(key: &str, prior: f64, (one, other): (&Member, &Member), sd_g: f64) -> Hypothesis {
    let in_place_of =
        |own: &Member, found: &Member| Change { mean: found.mass_g - own.mass_g, sd: sd_g, effects: own.per_g.clone() };
    let changes = [in_place_of(one, other), in_place_of(other, one)];
    let changes = changes.into_iter().filter(|change| !change.effects.is_empty()).collect();
    Hypothesis { changes, ..Hypothesis::nothing(key, prior) }
}

/// A run of readings on one scale, in the order of time, that was taken on a scale off zero.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Run {
    /// Place of its first reading.
    pub from: usize,
    /// Place of its last reading.
    pub to: usize,
    /// Whether it may go on: nothing was read after it.
    pub open: bool,
    /// How likely it is.
    pub prior: f64,
}

/// All runs within a number of readings. The longer a run that has ended, the less likely it is: somebody would have noticed.
pub(super) fn runs(readings: usize) -> Vec<Run> {
    let mut all = Vec::with_capacity(pairs(readings + 1));
    for from in 0..readings {
        for to in from..readings {
            let open = to + 1 == readings;
            let weight = if open { 1.0 } else { 0.5_f64.powi((to - from).min(3) as i32) };
            all.push(Run { from, to, open, prior: weight });
        }
    }
    let total: f64 = all.iter().map(|run| run.prior).sum();
    all.iter_mut().for_each(|run| run.prior *= OFF_ZERO / total);
    all
}

/// The scale off zero by one amount for these readings.
pub(super) fn off_zero<'a>(key: &str, prior: f64, readings: impl Iterator<Item = &'a str>, sd: f64) -> Hypothesis {
    let effects = readings.map(|id| Effect { reading: id.to_owned(), per_unit: 1.0 }).collect();
    Hypothesis { changes: vec![Change { mean: 0.0, sd, effects }], ..Hypothesis::nothing(key, prior) }
}

/// How long a ferrule was off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FerruleOff {
    /// At the dry fit and with the weight; put on before the club was glued.
    UntilGlued,
    /// At the dry fit only.
    DryOnly,
    /// For good.
    StillOff,
}

/// The ferrule was off at the dry fit. `effects` are those of the whole ferrule: at the dry fit, with the weight in the
/// tip, after gluing. Spans of which no reading tells apart are one.
pub(super) fn ferrule_off(key: &str, effects: [&[Effect]; 3]) -> Vec<(FerruleOff, Hypothesis)> {
    let [dry, tip, glued] = effects;
    let spans = [
        (FerruleOff::UntilGlued, [true, false]),
        (FerruleOff::DryOnly, [false, false]),
        (FerruleOff::StillOff, [true, true]),
    ];
    spans
        .into_iter()
        .zip(FERRULE)
        .map(|((span, [with_tip, for_good]), prior)| {
            let on = dry.iter().chain(tip.iter().filter(|_| with_tip)).chain(glued.iter().filter(|_| for_good));
            let effects: Vec<Effect> = on.cloned().collect();
            // Each reading has a spread of its own: head and ferrule do not sit alike each time.
            let own = |e: &Effect| Change { mean: 0.0, sd: FERRULE_SHARE_SD, effects: vec![e.clone()] };
            let spread: Vec<Change> = effects.iter().map(own).collect();
            let whole = Change { mean: 1.0, sd: 0.0, effects };
            let changes = std::iter::once(whole).chain(spread).collect();
            (span, Hypothesis { changes, ..Hypothesis::nothing(key, prior) })
        })
        .collect()
}
