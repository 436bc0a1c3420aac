//! Answers for a person at a terminal.

use crate::failure::Failure;
use crate::terminal::line;
use bench::player_sheet::{AskedAndBuilt, PlayerClub, PlayerSheet};
use bench::record::{Line, Record, Verdict};
use quantity::decimal;
use serde_json::Value;
use trade::job::Job;
use trade::model::{Library, PartKind};
use trade::plan::{Plan, PlannedPart};
use trade::reading::{Unit, What};
use words::{Words, text};

/// A document as lines `field: value`.
///
/// # Errors
/// None; the same shape as the other answers.
pub fn document(value: &Value) -> Result<(), Failure> {
    /// The sentence of a fact that has been spoken.
    fn told(value: &Value) -> Option<&str> {
        value["code"].as_str().and(value["words"].as_str())
    }
    fn walk(indent: usize, key: &str, value: &Value) {
        let pad = "  ".repeat(indent);
        if let Some(words) = told(value) {
            line!("{pad}{key}: {words}");
            return;
        }
        match value {
            Value::Object(map) => {
                if !key.is_empty() {
                    line!("{pad}{key}:");
                }
                for (k, v) in map {
                    walk(indent + usize::from(!key.is_empty()), k, v);
                }
            }
            Value::Array(list) => {
                line!("{pad}{key}:");
                for item in list {
                    walk(indent + 1, "-", item);
                }
            }
            Value::String(text) => line!("{pad}{key}: {text}"),
            Value::Number(n) => {
                line!("{pad}{key}: {}", n.as_f64().map_or_else(|| n.to_string(), |n| decimal(n, 4)));
            }
            other => line!("{pad}{key}: {other}"),
        }
    }
    let mut spoken = value.clone();
    words::speak(&mut spoken, &super::reader());
    walk(0, "", &spoken);
    Ok(())
}

/// Columns under their headings: as wide as the widest cell, two spaces apart.
pub fn table(headings: &[impl AsRef<str>], rows: &[Vec<String>]) {
    let heading: Vec<String> = headings.iter().map(|h| h.as_ref().to_owned()).collect();
    let all = || std::iter::once(&heading).chain(rows);
    let widths: Vec<usize> = (0..headings.len())
        .map(|column| all().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0))
        .collect();
    for row in all() {
        let cells: Vec<String> = row.iter().zip(&widths).map(|(cell, width)| format!("{cell:<width$}")).collect();
        line!("{}", cells.join("  ").trim_end());
    }
}

/// A plan: what goes into each club, its cuts, and what it should read dry.
pub fn plan(w: &Words, job: &Job, plan: &Plan, library: &Library) {
    let adapters = plan.clubs.iter().flatten().any(|c| c.part(PartKind::Adapter).is_some());
    let screws = plan.clubs.iter().flatten().any(|c| c.screw(library).is_some());
    let rows: Vec<Vec<String>> = job
        .clubs
        .iter()
        .zip(&plan.clubs)
        .filter_map(|(club, chosen)| Some((club, chosen.as_ref()?)))
        .map(|(club, chosen)| {
            let none = || w.text("command-none");
            let code = |kind| chosen.part(kind).map_or_else(none, |p| p.code.clone());
            let tip_g: f64 = chosen.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| p.mass_g).sum();
            let expected = |step: &str| {
                chosen.expected.iter().find(|e| e.step == step).map_or_else(none, |e| {
                    text!(w, "plan-reading", expected_points = e.swing_weight_points, band_points = e.band_points)
                })
            };
            let mut row = vec![
                w.club_short(&club.target.club_kind, &club.target.number),
                code(PartKind::Head),
                code(PartKind::Shaft),
                code(PartKind::Grip),
            ];
            row.extend(adapters.then(|| code(PartKind::Adapter)));
            row.extend(screws.then(|| chosen.screw(library).map_or_else(none, |screw| screw.label.clone())));
            row.extend([
                if tip_g > 0.0 { w.mass(tip_g) } else { none() },
                w.length_to(chosen.tip_trim_mm, 2),
                w.length_to(chosen.butt_cut_mm, 2),
                w.length_to(chosen.cut_shaft_mm, 2),
                expected("dry"),
                expected("finish"),
                w.swing_weight_short(club.target.swing_weight_points),
            ]);
            row
        })
        .collect();
    if !rows.is_empty() {
        let mut headings = vec!["club", "head", "shaft", "grip"];
        headings.extend(adapters.then_some("adapter"));
        headings.extend(screws.then_some("screw"));
        headings.extend(["tip", "off-tip", "off-butt", "cut-to", "dry", "finish", "sheet"]);
        let headings: Vec<String> = headings.iter().map(|h| w.text(&format!("command-plan-column-{h}"))).collect();
        table(&headings, &rows);
    }
    for missing in &plan.missing {
        line!("{}", text!(w, "command-plan-missing", number = missing.number, lack = missing.fact));
        for other in &missing.instead {
            line!("  {}", text!(w, "command-match-or", other = other.fact));
        }
    }
    for (club, chosen) in job.clubs.iter().zip(&plan.clubs) {
        if let Some(frequency) = chosen.as_ref().and_then(|c| c.frequency) {
            line!("{}", text!(w, "command-plan-frequency", club = club.target.name(), shaft = frequency.fact()));
        }
    }
    for line in &plan.frequency {
        line!("{}", w.sentence(&line.fact));
    }
    if !rows.is_empty() {
        line!("{}", w.text(if plan.proven { "command-plan-proven" } else { "command-plan-best" }));
    }
}

/// A record: each club with its parts, and what was asked beside what was built.
pub fn record(w: &Words, record: &Record) {
    let state = w.tell(&record.state);
    line!("{}", text!(w, "command-record-job", job = record.job_number, player = record.player, state = state));
    line!("{}", text!(w, "command-record-due", shop = record.shop, hand = record.hand, due_on = record.due));
    for club in &record.clubs {
        line!();
        let part = |p: &PlannedPart| text!(w, "command-record-part", kind = p.kind, code = p.code);
        let parts: Vec<String> = club.parts.iter().map(part).collect();
        let parts = if parts.is_empty() { w.text("command-record-unplanned") } else { parts.join(", ") };
        let name = w.club(&club.target.club_kind, &club.target.number);
        line!("{}", text!(w, "command-record-club", club = name, card = club.card, parts = parts));
        let rows: Vec<Vec<String>> = club
            .lines
            .iter()
            // A value that nobody asked for and nobody read says nothing.
            .filter(|line| line.target.is_some() || line.built.is_some())
            .map(|line| row_of(w, line))
            .collect();
        let heads = ["command-record-sheet", "command-record-built", "command-record-off-by"].map(|id| w.text(id));
        table(&["", &heads[0], &heads[1], &heads[2], ""], &rows);
        for reach in club.lines.iter().filter_map(|line| line.reach.as_ref()) {
            line!("  {}", w.sentence(reach));
        }
    }
}

/// The player's sheet: each club in a line, asked before built, and what was felt below them.
pub fn player_sheet(w: &Words, sheet: &PlayerSheet) {
    line!("{}", text!(w, "player-of", player = sheet.player, shop = sheet.shop));
    let heads: Vec<String> = sheet.columns.iter().map(|what| w.tell(what)).collect();
    let mut columns = vec![""];
    columns.extend(heads.iter().map(String::as_str));
    let asked_and_built = |pair: &AskedAndBuilt| {
        let shown = |value: Option<f64>| value.map_or_else(|| w.text("player-nothing"), |v| figure_of(w, pair.unit, v));
        text!(w, "player-asked-built", asked = shown(pair.asked), built = shown(pair.built))
    };
    let club = |club: &PlayerClub| {
        let name = w.club(&club.kind, &club.number);
        std::iter::once(name).chain(club.figures.iter().map(asked_and_built)).collect()
    };
    let mut rows: Vec<Vec<String>> = sheet.clubs.iter().map(club).collect();
    if let Some(felt) = &sheet.felt {
        let read = |what: &What| felt.figures.iter().find(|figure| figure.what == *what);
        let shown = |what: &What| read(what).map_or_else(String::new, |figure| figure_of(w, figure.unit, figure.value));
        rows.push(std::iter::once(w.text("player-felt")).chain(sheet.columns.iter().map(shown)).collect());
    }
    table(&columns, &rows);
    for made_of in &sheet.made_of {
        line!("{}", text!(w, "player-made-of", kind = made_of.kind.key(), models = w.list(&made_of.models)));
    }
}

/// A value of a reading in its unit.
pub(super) fn figure_of(w: &Words, unit: Unit, value: f64) -> String {
    match unit {
        Unit::Points => w.swing_weight(value),
        Unit::Gram => w.mass(value),
        Unit::Millimetre => w.length_to(value, 2),
        Unit::Degree => w.angle(value),
        Unit::Second => text!(w, "reading-seconds", figure_s = value),
        Unit::KgCm2 => text!(w, "reading-inertia", figure_kg_cm2 = value),
        Unit::Cpm | Unit::None => text!(w, "reading-cpm", figure_cpm = value),
    }
}

/// One value of a club in words: what, sheet, built with its band, difference, verdict.
fn row_of(w: &Words, line: &Line) -> Vec<String> {
    let figure = |value: f64| figure_of(w, line.unit, value);
    // Without its unit: the figure before it has it.
    let bare = |value: f64| match line.unit {
        Unit::Gram => w.mass_figure(value),
        Unit::Millimetre => w.length_figure_to(value, 2),
        Unit::KgCm2 => decimal(value, 0),
        _ => decimal(value, 1),
    };
    let built = match (line.built, line.band) {
        (Some(built), Some(band)) => text!(w, "reading-with-band", value = figure(built), band = bare(band)),
        (Some(built), None) => figure(built),
        (None, _) => w.text("record-not-read"),
    };
    let verdict = match line.verdict {
        Verdict::NotRead => String::new(),
        other => w.tell(&other),
    };
    let off = line.difference.map_or_else(String::new, |by| {
        let size = bare(by.abs());
        let nothing = size.chars().all(|c| !c.is_ascii_digit() || c == '0');
        match (nothing, by < 0.0) {
            (true, _) => size,
            (false, true) => format!("−{size}"),
            (false, false) => format!("+{size}"),
        }
    });
    let what = if line.within_set { text!(w, "record-within-set", what = line.what) } else { w.tell(&line.what) };
    vec![format!("  {what}"), line.target.map_or_else(|| "-".to_owned(), figure), built, off, verdict]
}
