//! Records: what was built, against the sheet and the reference club; prints well.

use super::{Framed, PageResult, framed, say};
use crate::reader::Reader;
use crate::units::restated;
use app::App;
use app::job::JobLine;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::response::IntoResponse;
use axum::routing::get;
use bench::open_point::OpenPoint;
use bench::record::ClubRecord;
use bench::record::Line;
use bench::record::Record;
use bench::record::Verdict;
use look::{
    Action, ButtonKind, Cell, Column, Icon, Nav, Table, Tone, definitions, empty_state, link_button, section, table,
    tag,
};
use maud::{Markup, html};
use quantity::{Length, SwingWeight, decimal};
use serde::Deserialize;
use trade::job::JobState;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/records", get(index)).route("/records/{job}", get(show))
}

/// Finished jobs on one page.
const PAGE: i64 = 100;

#[derive(Debug, Default, Deserialize)]
struct IndexQuery {
    /// Only jobs below this number.
    below: Option<i64>,
}

async fn index(State(app): State<App>, Reader(w): Reader, Query(query): Query<IndexQuery>) -> PageResult {
    let finished = app.finished_jobs(query.below, PAGE + 1).await?;
    let shown = &finished[..finished.len().min(PAGE as usize)];
    let earlier = shown.last().filter(|_| finished.len() > shown.len()).map(|j| j.number);
    let open = app.job_names(&[JobState::Planned]).await?;
    let list = |caption: &str, when: &str, jobs: &[JobLine]| {
        let row = |job: &JobLine| {
            let day = job.finished_at.map_or(job.due, |at| w.day_of(at));
            vec![
                Cell(html! { a.job-link href={ "/records/" (job.number) } { "Job " (job.number) " · " (job.player) } }),
                Cell::from(job.clubs.join(" ")),
                Cell::from(w.date(day)),
            ]
        };
        table(&Table {
            caption,
            columns: ["job", "clubs", when].map(Column::words).to_vec(),
            rows: jobs.iter().map(row).collect(),
            cards: true,
            ..Table::default()
        })
    };
    let body = html! {
        p.actions { (link_button("/capability", "Capability", ButtonKind::Quiet, None, "")) " " (link_button("/learned", "What the shop has learned", ButtonKind::Quiet, None, "")) }
        @if finished.is_empty() && open.is_empty() {
            (empty_state("No record yet.", "A record grows with the readings of a job.", &[Action { href: "/bench", label: "Bench", primary: true }]))
        }
        @if !shown.is_empty() { (section("Finished", &html! {}, &list("Finished jobs", "finished", shown))) }
        @if let Some(below) = earlier { p.actions { (link_button(&format!("/records?below={below}"), "Earlier ones", ButtonKind::Quiet, None, "")) } }
        @if !open.is_empty() { (section("At the bench, so far", &html! {}, &list("Jobs at the bench", "due", &open))) }
    };
    Ok(framed(&w, &app, Framed { title: "Records", active: Nav::Records, body, ..Framed::default() })
        .await?
        .into_response())
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let record = app.record(job).await?;
    let body = html! {
        p.actions.no-print {
            (link_button(&format!("/api/v1/jobs/{job}/record"), "Record as a file", ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        (summary(&w, &record))
        @for club in &record.clubs { (club_part(&w, club)) }
    };
    let crumb = format!("Job {job} · {} · {}", record.player, record.state.word());
    let page =
        framed(&w, &app, Framed { title: "Record", active: Nav::Records, crumb, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

fn summary(w: &Words, record: &Record) -> Markup {
    let mut rows = vec![
        ("shop", html! { (record.shop) }),
        ("player", html! { (record.player) ", " (record.hand) }),
        ("due", html! { (w.date(record.due)) }),
        ("set", html! { (record.rule) }),
    ];
    if !record.hands.is_empty() {
        rows.push(("made by", html! { (record.hands.join(", ")) }));
    }
    if let Some(last) = record.last_reading_at {
        rows.push(("last reading", html! { (w.moment(last)) }));
    }
    if let Some(reference) = &record.reference {
        let mut said = vec![format!("the {}", reference.number)];
        said.extend(reference.swing_weight_points.map(|figure| w.swing_weight(figure)));
        said.extend(reference.total_mass_g.map(|figure| w.mass(figure)));
        said.extend(reference.length_mm.map(|figure| w.length(figure)));
        said.extend(reference.cpm.map(|c| format!("{} cpm", decimal(c, 0))));
        if !reference.scale.is_empty() {
            said.push(format!("read on {}", reference.scale));
        }
        rows.push(("reference club", html! { (said.join(", ")) }));
    }
    for batch in &record.batches {
        rows.push(("adhesive", html! { "batch " (batch.number) ", " (batch.adhesive) ", lot " (batch.lot) ", mixed " (w.moment(batch.mixed_at)) " by " (batch.by)
            @if let Some(reason) = &batch.cold_reason { ", at " (decimal(batch.room_c, 0)) " °C, colder than its sheet: " (reason) }
            @if let Some(why) = &batch.taken_back { "; taken back: " (why) } }));
    }
    definitions(&rows)
}

fn club_part(w: &Words, club: &ClubRecord) -> Markup {
    let target = &club.target;
    let name = format!("{} {}", target.number, target.club_kind.word());
    section(
        &name,
        &html! { span.small { "card " (club.card) } },
        &html! {
            (table(&Table {
                caption: &format!("{name}: target and as built"),
                columns: ["value", "sheet", "built", "verdict", "off by", "tolerance", "chance of in"]
                    .iter().enumerate().map(|(i, head)| Column { head: (*head).into(), figures: i > 0 && i != 3 }).collect(),
                rows: club.lines.iter().map(|one| line_row(w, one)).collect(),
                cards: true,
                ..Table::default()
            }))
            (verdict_words(w, club))
            p { "Parts: " @for (i, part) in club.parts.iter().enumerate() {
                @if i > 0 { "; " } (part.kind) " " strong { (part.code) } " " (part.model) ", " (w.mass(part.mass_g))
                @if !part.lot.is_empty() { ", lot " (part.lot) }
            } "." @if let Some(cut) = club.cut_shaft_mm { " Shaft cut to " (w.length(cut)) "." }
            @if !club.batches.is_empty() { " Glued from batch " (club.batches.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")) "." } }
            @for pass in &club.let_pass { p { (tag(Tone::Care, "let pass")) " " (pass.step) ": " (pass.reason) " (" (pass.by) ", " (w.moment(pass.at)) ")" } }
            @for passed in &club.passed { p { (tag(Tone::Care, "with something open")) " " (passed.step.replace('_', " ")) ": "
                (restated(w, &passed.points.iter().map(OpenPoint::words).collect::<Vec<_>>().join("; "))) ". "
                (passed.reason) " (" (passed.by) ", " (w.moment(passed.at)) ")" } }
            details { summary { "Margins against the Equipment Rules" }
                ul.plain { @for margin in &club.margins { li { (w.told(&margin.fact)) " " span.small { (words::text!(w, "rules-clause", clause = margin.clause)) } } } }
                p.small { "Measured margins only. Whether a club may be played is for the governing bodies to rule." }
            }
            details { summary { "All readings" }
                ul.plain { @for r in &club.readings {
                    li.struck[!r.stands] { (r.reading.step) ", " (r.reading.what) ": " strong { (say::as_read(w, r.reading.what, r.reading.value, &r.reading.typed)) }
                        @if let Some(f) = &r.reading.forecast {
                            span.small { " expected " (say::forecast(w, r.reading.what, f.value, f.band)) ", "
                                (say::difference(w, r.reading.what, r.reading.value - f.value)) }
                        }
                        @if r.doubted { " " (tag(Tone::Doubt, "doubted")) }
                        @if r.reading.insisted { " " (tag(Tone::Care, "stood by")) }
                        @if let Some(why) = &r.reading.taken_back { " taken back: " (why) }
                        span.small { " " (r.reading.by) ", " (w.moment(r.reading.at)) } }
                } }
            }
        },
    )
}

fn line_row(w: &Words, line: &Line) -> Vec<Cell> {
    let show = |v: f64| match line.unit.as_str() {
        "points" => SwingWeight::from_points(v).letter(1),
        "mm" => w.length_to(v, 2),
        "°" => w.angle(v),
        unit => format!("{} {unit}", decimal(v, 1)),
    };
    let plain = |v: f64| match line.unit.as_str() {
        "mm" => decimal(Length::from_mm(v).inch(), 2),
        _ => decimal(v, 1),
    };
    let built = line.built.zip(line.band).map_or_else(
        || "not read".to_owned(),
        |(v, band)| format!("{} ± {}", show(v), plain(if line.unit == "mm" { band } else { band.max(0.05) })),
    );
    vec![
        Cell::from(line.what.clone()),
        Cell::from(line.target.map_or_else(String::new, show)),
        Cell::from(built),
        Cell(match line.verdict {
            Verdict::In => tag(Tone::Good, "in"),
            Verdict::Out => tag(Tone::Bad, "out"),
            Verdict::TooClose => tag(Tone::Care, "too close to say"),
            Verdict::NotRead => html! {},
        }),
        Cell::from(line.difference.map_or_else(String::new, |d| {
            let size = plain(d.abs());
            let nothing = size.chars().all(|c| matches!(c, '0' | '.'));
            let sign = if nothing {
                ""
            } else if d < 0.0 {
                "−"
            } else {
                "+"
            };
            format!("{sign}{size}")
        })),
        Cell::from(line.target.and(line.tolerance).map_or_else(String::new, |t| format!("± {}", plain(t)))),
        Cell::from(line.probability.map_or_else(String::new, |share| percent(w, share))),
    ]
}

/// A probability as a share in a hundred that never claims to be certain.
fn percent(w: &Words, probability: f64) -> String {
    match probability * 100.0 {
        p if p > 99.9 => "> 99.9 %".to_owned(),
        p if p < 0.1 => "< 0.1 %".to_owned(),
        p if !(1.0..=99.0).contains(&p) => format!("{} %", decimal(p, 1)),
        p => format!("{} %", decimal(p, 0)),
    }
}

/// What the verdict on the swing weight rests on: the chance, and how far inside a value must lie to be called in.
fn verdict_words(w: &Words, club: &ClubRecord) -> Markup {
    let swing_weight = club.lines.iter().find(|line| line.what == "swing weight");
    let Some((line, chance)) = swing_weight.and_then(|line| line.probability.map(|p| (line, p))) else {
        return html! {};
    };
    html! {
        p.small { "The swing weight lies in tolerance with a chance of " (percent(w, chance)) "; “in” or “out” is said from 95 % on. "
            @match (line.guard_band, line.tolerance) {
                (Some(guard), Some(tolerance)) => { "To be called in it must come out within ± "
                    (decimal((tolerance - guard).max(0.0), 2)) ": " (decimal(guard, 2)) " inside the tolerance." }
                _ => { "It is not known well enough for “in” to be said at all: read it once more, re-seated, or hold the scale against its check weight." }
            }
        }
    }
}
