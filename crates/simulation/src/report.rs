//! What came out of all groups: one line a strategy.

use crate::group::{Builder, Outcome, STRATEGIES};
use crate::settings::Settings;
pub use crate::tally::Difference;
use crate::tally::{Count, READ, STAGES, Share, Tally, paired, share};

use serde::Serialize;
use std::collections::BTreeMap;

/// The whole report.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Report {
    /// What was simulated.
    pub settings: Settings,
    /// One a strategy.
    pub lines: Vec<Line>,
}

/// What one strategy reached.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Line {
    /// Key of the strategy.
    pub key: &'static str,
    /// What the strategy does, for a reader of the report.
    pub words: &'static str,
    /// Clubs judged.
    pub clubs: u32,
    /// Share within ±0.3 points of target, by the true swing weight on the scale that read the reference.
    pub within_03: Option<Share>,
    /// How much greater the share within ±0.3 is than that of a skilled hand in the same jobs, its shops being the clusters.
    pub against_hand: Option<Difference>,
    /// Share within ±0.5 points.
    pub within_05: Option<Share>,
    /// Mean of true finish less target, points.
    pub mean_points: f64,
    /// Root of the mean square of it, points.
    pub rms_points: f64,
    /// Root mean square of true finish less forecast when the last choice was made, points: what was not known.
    pub unknown_rms_points: f64,
    /// Root mean square of forecast less target after the last choice, points: what was not corrected.
    pub uncorrected_rms_points: f64,
    /// Mean chance within ±0.3 that was told after the last choice, percent; 0 where none is told.
    pub told_percent: f64,
    /// Grams in the tip, mean.
    pub tip_g: f64,
    /// Clubs taken apart again after gluing, per thousand.
    pub rework_per_1000: f64,
    /// Whether the 95 % band of the finish held, by stage.
    pub bands: Vec<Band>,
    /// Whether readings lay in the 95 % band of their forecast.
    pub readings: Vec<Read>,
    /// Good readings doubted at the end.
    pub false_doubts: Option<Share>,
    /// The same by what was read.
    pub false_doubts_by: BTreeMap<&'static str, Share>,
    /// Seeded blunders.
    pub blunders: Vec<BlunderLine>,
    /// Yield within ±0.3 by number of the shop's job, for a shop that learns.
    pub curve: Vec<CurvePoint>,
}

/// The band of the finish at one stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Band {
    /// Key of the stage at which the finish was forecast: `planned`, `dry`, `tip`, `cured` or `finish`.
    pub stage: &'static str,
    /// Share that held.
    pub held: Share,
    /// Mean half width, points.
    pub half_width_points: f64,
}

/// Readings against their forecast.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Read {
    /// Key of what was read: `check`, `dry`, `tip`, `cured`, `gripped` or `finish`.
    pub reading: &'static str,
    /// Share inside the band.
    pub inside: Share,
    /// Mean of the normalised innovation.
    pub z_mean: f64,
    /// Root mean square of it.
    pub z_rms: f64,
}

/// Blunders of one kind.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BlunderLine {
    /// Key of the blunder; `all` for the sum of them.
    pub kind: &'static str,
    /// Seeded, and seen by a reading.
    pub seeded: u32,
    /// Share found before hand-over.
    pub found: Option<Share>,
    /// Blunders that shifted their first reading by more than 4.65 standard deviations: share doubted at once.
    pub large_at_once: Option<Share>,
    /// The same blunders: share found before hand-over.
    pub large_found: Option<Share>,
    /// Share of those asked about whose true cause was named first, after the one measurement that would tell.
    pub named_first: Option<Share>,
    /// What was named first where it was another cause, with how often.
    pub named_instead: BTreeMap<String, u32>,
}

/// One job of a shop that learns.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CurvePoint {
    /// Jobs built before.
    pub jobs_before: u64,
    /// Yield within ±0.3.
    pub within_03: Share,
    /// Half width of the 95 % band when the last choice was made, points.
    pub half_width_points: f64,
}

/// A shift above this many standard deviations should be doubted 95 % of the time at a limit of 3 (derived).
const LARGE_SHIFT: f64 = 4.65;

/// Adds up what all groups made. The order of the outcomes does not matter beyond that of the groups.
#[must_use]
pub fn report(settings: &Settings, outcomes: &[Outcome]) -> Report {
    let lines = (0..STRATEGIES.len())
        .map(|strategy| outcomes.iter().filter(|o| o.strategy == strategy).collect::<Vec<_>>())
        .zip(&STRATEGIES)
        .filter(|(of, _)| !of.is_empty())
        .map(|(of, strategy)| {
            let learns = matches!(strategy.builder, Builder::Known(_));
            Line { key: strategy.key, words: strategy.words, ..line(&of, learns) }
        })
        .collect();
    Report { settings: settings.clone(), lines }
}

fn line(outcomes: &[&Outcome], learns: bool) -> Line {
    let mut shops: BTreeMap<u64, Tally> = BTreeMap::new();
    let mut hands: BTreeMap<u64, (Count, Count)> = BTreeMap::new();
    let mut all = Tally::default();
    for outcome in outcomes.iter().filter(|o| o.judged) {
        shops.entry(outcome.shop).or_default().join(&outcome.tally);
        let (one, hand) = hands.entry(outcome.shop).or_default();
        one.join(outcome.tally.within_03);
        hand.join(outcome.hand_within_03);
        all.join(&outcome.tally);
    }
    let over = |pick: &dyn Fn(&Tally) -> Count| share(&shops.values().map(pick).collect::<Vec<_>>());
    let bands = STAGES.iter().enumerate().filter_map(|(i, stage)| {
        Some(Band { stage, held: over(&|t| t.bands[i])?, half_width_points: all.widths[i].mean() })
    });
    let readings = READ.iter().enumerate().filter_map(|(i, reading)| {
        let inside = over(&|t| t.innovations[i])?;
        Some(Read { reading, inside, z_mean: all.z[i].mean(), z_rms: all.z[i].rms() })
    });
    let clubs = all.within_03.of;
    Line {
        key: "",
        words: "",
        clubs,
        within_03: over(&|t| t.within_03),
        against_hand: paired(&hands.into_values().collect::<Vec<_>>()),
        within_05: over(&|t| t.within_05),
        mean_points: all.deviation.mean(),
        rms_points: all.deviation.rms(),
        unknown_rms_points: all.error.rms(),
        uncorrected_rms_points: all.left.rms(),
        told_percent: 100.0 * all.chance.mean(),
        tip_g: all.tip_g.mean(),
        rework_per_1000: if clubs > 0 { 1000.0 * f64::from(all.rework) / f64::from(clubs) } else { 0.0 },
        bands: bands.collect(),
        readings: readings.collect(),
        false_doubts: over(&|t| t.false_doubts),
        false_doubts_by: all.false_doubts_by.iter().filter_map(|(what, c)| Some((*what, share(&[*c])?))).collect(),
        blunders: blunder_lines(&all),
        curve: if learns { curve(outcomes) } else { Vec::new() },
    }
}

fn blunder_lines(all: &Tally) -> Vec<BlunderLine> {
    let mut kinds: Vec<&'static str> = all.blunders.iter().map(|b| b.kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let of = |kind: &'static str| {
        let seen: Vec<_> = all.blunders.iter().filter(|b| kind == "all" || b.kind == kind).collect();
        let counted = |large: bool, pick: &dyn Fn(&crate::tally::BlunderSeen) -> bool| {
            let of = seen.iter().filter(|b| !large || b.shift_in_s > LARGE_SHIFT);
            let counts = of.map(|b| Count { yes: u32::from(pick(b)), of: 1 });
            share(&counts.collect::<Vec<_>>())
        };
        let mut named_instead = BTreeMap::new();
        for cause in seen.iter().filter(|b| b.named == Some(false)).filter_map(|b| b.first_cause.clone()) {
            *named_instead.entry(cause).or_insert(0) += 1;
        }
        BlunderLine {
            named_instead,
            kind,
            seeded: seen.len() as u32,
            found: counted(false, &|b| b.found),
            large_at_once: counted(true, &|b| b.at_once),
            large_found: counted(true, &|b| b.found),
            named_first: share(
                &seen.iter().filter_map(|b| Some(Count { yes: u32::from(b.named?), of: 1 })).collect::<Vec<_>>(),
            ),
        }
    };
    if kinds.is_empty() { Vec::new() } else { std::iter::once("all").chain(kinds).map(of).collect() }
}

fn curve(outcomes: &[&Outcome]) -> Vec<CurvePoint> {
    let mut jobs: BTreeMap<u64, Vec<&Tally>> = BTreeMap::new();
    for outcome in outcomes {
        jobs.entry(outcome.job).or_default().push(&outcome.tally);
    }
    jobs.into_iter()
        .filter_map(|(jobs_before, tallies)| {
            let within_03 = share(&tallies.iter().map(|t| t.within_03).collect::<Vec<_>>())?;
            let mut all = Tally::default();
            tallies.iter().for_each(|t| all.join(t));
            Some(CurvePoint { jobs_before, within_03, half_width_points: all.widths[3].mean() })
        })
        .collect()
}
