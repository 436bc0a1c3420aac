//! Simulated shops: what the advice is worth against builders without it.

use super::{print, print_json};
use crate::config::Simulate;
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use fact::Refusal;
use indicatif::{ProgressBar, ProgressStyle};
use quantity::decimal;
use simulation::frequency::{self, CpmLine, run_cpm};
use simulation::kind::{Depth, KINDS, KindLine, KindTally, run_kind};
use simulation::report::{BlunderLine, Line};
use simulation::{Outcome, Reference, Report, Settings, SimulationError, Trouble, World, run_group};
use std::collections::BTreeMap;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU32, Ordering};

/// Runs the simulation and prints its report.
///
/// # Errors
/// Settings that mean nothing; advice that failed.
pub fn simulate(arguments: &Simulate) -> Result<(), Failure> {
    let settings = settings_of(arguments)?;
    if let Some(kind) = &arguments.kind {
        return kinds(arguments, &settings, kind);
    }
    if arguments.measure == "cpm" {
        return frequencies(arguments, &settings);
    }
    let groups = settings.groups();
    let bar = if arguments.json { ProgressBar::hidden() } else { ProgressBar::new(0) };
    bar.set_length(u64::from(groups) * settings.steps_a_group());
    let style = ProgressStyle::with_template("{wide_bar} {pos}/{len} jobs, {eta} left");
    bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
    let outcomes = run(&settings, groups, arguments.threads, &bar).map_err(|e| match e {
        SimulationError::Setting { .. } => Failure::usage(Refusal::new(&e)),
        other => Failure::outside(Refusal::new(&other)),
    })?;
    bar.finish_and_clear();
    let report = simulation::report(&settings, &outcomes);
    if arguments.json { print_json(&report) } else { tables(&report) }
}

/// Clubs that a thread takes at once.
const CLUBS_AT_ONCE: u64 = 25;

/// Runs kinds of work on clubs from elsewhere and prints what came out.
fn kinds(arguments: &Simulate, settings: &Settings, kind: &str) -> Result<(), Failure> {
    let kinds: Vec<&str> = if kind == "all" { KINDS.to_vec() } else { vec![kind] };
    let clubs = u64::from(arguments.clubs.clamp(1, 100_000));
    let bar = if arguments.json { ProgressBar::hidden() } else { ProgressBar::new(clubs * kinds.len() as u64) };
    let mut lines = Vec::new();
    for kind in kinds {
        let tallies = of_kind(settings, kind, clubs, arguments.threads, &bar).map_err(|e| match e {
            SimulationError::Kind { .. } => Failure::usage(Refusal::new(&e)),
            other => Failure::outside(Refusal::new(&other)),
        })?;
        let counted = u32::try_from(clubs).unwrap_or(u32::MAX);
        lines.extend(tallies.iter().zip(Depth::ALL).map(|(tally, depth)| tally.line(kind, depth, counted)));
    }
    bar.finish_and_clear();
    if arguments.json {
        return print_json(&lines);
    }
    let row = |line: &KindLine| {
        vec![
            line.kind.replace('_', " "),
            line.depth.words().to_owned(),
            line.clubs.to_string(),
            percent(line.within_03),
            decimal(line.told_percent, 1),
            percent(line.held),
            decimal(line.band_points, 2),
            percent(line.held_at_finish),
            decimal(line.rms_points, 2),
            line.false_doubts.map_or_else(|| "-".into(), |s| decimal(s.percent, 2)),
        ]
    };
    let headings = [
        "kind",
        "read",
        "clubs",
        "% within 0.3",
        "told %",
        "band held %",
        "± points",
        "at finish %",
        "rms",
        "doubted %",
    ];
    print::table(&headings, &lines.iter().map(row).collect::<Vec<_>>());
    Ok(())
}

/// All clubs of a kind on some threads.
fn of_kind(
    settings: &Settings,
    kind: &str,
    clubs: u64,
    threads: u32,
    bar: &ProgressBar,
) -> Result<[KindTally; Depth::ALL.len()], SimulationError> {
    let parts = u32::try_from(clubs.div_ceil(CLUBS_AT_ONCE)).unwrap_or(u32::MAX);
    let found = on_threads(parts, threads, |part| {
        let from = u64::from(part) * CLUBS_AT_ONCE;
        run_kind(settings, kind, from..clubs.min(from + CLUBS_AT_ONCE), &mut || bar.inc(1))
    })?;
    let mut all: [KindTally; Depth::ALL.len()] = Default::default();
    for some in &found {
        all.iter_mut().zip(some).for_each(|(all, some)| all.join(some));
    }
    Ok(all)
}

/// Sets trimmed to a slope of frequencies.
fn frequencies(arguments: &Simulate, settings: &Settings) -> Result<(), Failure> {
    let shops = arguments.jobs.max(1);
    let bar = if arguments.json { ProgressBar::hidden() } else { ProgressBar::new(u64::from(shops)) };
    let found = on_threads(shops, arguments.threads, |shop| {
        run_cpm(settings, u64::from(shop)..u64::from(shop) + 1, &mut || bar.inc(1))
    });
    let mut found = found.map_err(|e| Failure::outside(Refusal::new(&e)))?.into_iter();
    bar.finish_and_clear();
    let mut all = found.next().unwrap_or_default();
    found.for_each(|some| frequency::join(&mut all, some));
    let lines = frequency::lines(&all);
    if arguments.json {
        return print_json(&lines);
    }
    let row = |line: &CpmLine| {
        vec![
            line.hand.to_owned(),
            line.shop.to_owned(),
            line.sets.to_string(),
            percent(line.within),
            decimal(line.rms_cpm, 2),
            line.band_held.map_or_else(|| "-".into(), |held| percent(Some(held))),
            line.band_cpm.map_or_else(|| "-".into(), |band| decimal(band, 1)),
            decimal(line.readings_a_club, 0),
        ]
    };
    let headings = ["hand", "shop", "sets", "% within 2 cpm", "rms cpm", "band held %", "± cpm", "readings"];
    print::table(&headings, &lines.iter().map(row).collect::<Vec<_>>());
    Ok(())
}

fn settings_of(arguments: &Simulate) -> Result<Settings, Failure> {
    let troubles = arguments.trouble.iter().map(|key| {
        Trouble::from_key(key).ok_or_else(|| {
            let known = Trouble::ALL.into_iter().map(|trouble| trouble.key().to_owned()).collect();
            Failure::usage(CommandFault::NoTrouble { key: key.clone(), known })
        })
    });
    let settings = Settings {
        jobs: arguments.jobs,
        seed: arguments.seed,
        known_after: arguments.known_after,
        troubles: troubles.collect::<Result<_, _>>()?,
        blunders: arguments.blunders / 100.0,
        one_at_a_time: arguments.one_at_a_time,
        reference: of_list(&arguments.reference, Reference::ALL, Reference::key)?,
        world: of_list(&arguments.world, World::ALL, World::key)?,
        only: arguments.only.clone(),
        ..Settings::default()
    };
    settings.check().map_err(|e| Failure::usage(Refusal::new(&e)))?;
    let known: Vec<&str> = simulation::STRATEGIES.iter().map(|s| s.key).collect();
    if !known.iter().any(|k| k.contains(&settings.only)) {
        return Err(Failure::usage(CommandFault::NoBuilder {
            name: settings.only.clone(),
            known: known.into_iter().map(str::to_owned).collect(),
        }));
    }
    Ok(settings)
}

/// The one of a closed list that is named by this key.
fn of_list<T: Copy>(key: &str, all: &[T], key_of: fn(T) -> &'static str) -> Result<T, Failure> {
    let known = || all.iter().map(|one| key_of(*one).to_owned()).collect();
    let found = all.iter().copied().find(|one| key_of(*one) == key);
    found.ok_or_else(|| Failure::usage(CommandFault::NotInList { key: key.to_owned(), known: known() }))
}

/// All groups on some threads.
fn run(settings: &Settings, groups: u32, threads: u32, bar: &ProgressBar) -> Result<Vec<Outcome>, SimulationError> {
    let found = on_threads(groups, threads, |group| run_group(settings, group, &mut || bar.inc(1)))?;
    Ok(found.into_iter().flatten().collect())
}

/// What each part of a work comes to, in the order of the parts, worked out on some threads; the first failure ends it. A part
/// draws from its own streams, so that the result is the same on any number of threads.
fn on_threads<T: Send>(
    parts: u32,
    threads: u32,
    of: impl Fn(u32) -> Result<T, SimulationError> + Sync,
) -> Result<Vec<T>, SimulationError> {
    let next = AtomicU32::new(0);
    let found: Mutex<BTreeMap<u32, Result<T, SimulationError>>> = Mutex::new(BTreeMap::new());
    std::thread::scope(|scope| {
        for _ in 0..threads.max(1) {
            scope.spawn(|| {
                loop {
                    let part = next.fetch_add(1, Ordering::Relaxed);
                    if part >= parts {
                        break;
                    }
                    let one = of(part);
                    if one.is_err() {
                        next.store(parts, Ordering::Relaxed);
                    }
                    found.lock().unwrap_or_else(std::sync::PoisonError::into_inner).insert(part, one);
                }
            });
        }
    });
    found.into_inner().unwrap_or_else(std::sync::PoisonError::into_inner).into_values().collect()
}

fn percent(share: Option<simulation::tally::Share>) -> String {
    share.map_or_else(
        || "-".into(),
        |s| {
            let limits = s.limits_percent.map(|l| decimal(l, 1));
            format!("{} ({} to {})", decimal(s.percent, 1), limits[0], limits[1])
        },
    )
}

/// Points of a hundred with their sign: a difference of nothing is nothing, not unknown.
fn difference(of: Option<simulation::report::Difference>) -> String {
    let signed = |points: f64| format!("{}{}", if points > 0.0 { "+" } else { "" }, decimal(points, 1));
    of.map_or_else(
        || "-".into(),
        |d| format!("{} ({} to {})", signed(d.percent), signed(d.limits_percent[0]), signed(d.limits_percent[1])),
    )
}

fn tables(report: &Report) -> Result<(), Failure> {
    let rows: Vec<Vec<String>> = report.lines.iter().map(yield_row).collect();
    let headings = [
        "builder",
        "clubs",
        "% within 0.3",
        "against the hand",
        "% within 0.5",
        "told %",
        "unknown",
        "left",
        "tip g",
        "rework ‰",
    ];
    print::table(&headings, &rows);
    let advised = || report.lines.iter().filter(|l| !l.bands.is_empty());
    if advised().next().is_some() {
        line!("\nShare of 95 % bands of the finish that held, by when it was forecast");
        let rows: Vec<Vec<String>> = advised()
            .map(|l| std::iter::once(l.words.into()).chain(l.bands.iter().map(|b| percent(Some(b.held)))).collect())
            .collect();
        print::table(&["builder", "planned", "dry", "tip", "cured", "finish"], &rows);
        line!("\nShare of readings inside the 95 % band of their forecast, and good readings doubted");
        let rows: Vec<Vec<String>> = advised()
            .map(|l| {
                let of = |key: &str| {
                    let read = l.readings.iter().find(|r| r.reading == key);
                    read.map_or_else(|| "-".into(), |r| decimal(r.inside.percent, 1))
                };
                let doubted = l.false_doubts.map_or_else(|| "-".into(), |s| format!("{} %", decimal(s.percent, 2)));
                vec![l.words.into(), of("dry"), of("tip"), of("cured"), of("gripped"), of("finish"), doubted]
            })
            .collect();
        print::table(&["builder", "dry", "tip", "cured", "gripped", "finish", "doubted"], &rows);
    }
    for line in report.lines.iter().filter(|l| !l.blunders.is_empty()) {
        line!("\nBlunders, {}", line.words);
        let rows: Vec<Vec<String>> = line.blunders.iter().map(blunder_row).collect();
        print::table(&["", "seeded", "% found", "large", "% doubted at once", "% found", "% named first"], &rows);
    }
    for line in report.lines.iter().filter(|l| !l.curve.is_empty()) {
        line!("\nLearning, {}: % within 0.3 by jobs built before", line.words);
        let of = |p: &simulation::report::CurvePoint| format!("{}: {}", p.jobs_before, decimal(p.within_03.percent, 1));
        line!("{}", line.curve.iter().map(of).collect::<Vec<_>>().join("  "));
    }
    Ok(())
}

fn yield_row(line: &Line) -> Vec<String> {
    vec![
        line.words.into(),
        line.clubs.to_string(),
        percent(line.within_03),
        difference(line.against_hand),
        percent(line.within_05),
        if line.told_percent > 0.0 { decimal(line.told_percent, 1) } else { "-".into() },
        decimal(line.unknown_rms_points, 3),
        decimal(line.uncorrected_rms_points, 3),
        decimal(line.tip_g, 1),
        decimal(line.rework_per_1000, 1),
    ]
}

fn blunder_row(line: &BlunderLine) -> Vec<String> {
    let large = line.large_found.map_or(0, |s| s.of);
    vec![
        line.kind.replace('_', " "),
        line.seeded.to_string(),
        percent(line.found),
        large.to_string(),
        percent(line.large_at_once),
        percent(line.large_found),
        percent(line.named_first),
    ]
}
