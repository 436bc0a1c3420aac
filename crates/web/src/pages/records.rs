//! Records: what was built, against the sheet and the reference club; prints well.

use super::step_says::adapter_words;
use super::{Framed, PageResult, framed, say};
use crate::asked::{Asked, Path};
use crate::reader::Reader;
use app::App;
use app::job::JobLine;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::glue::Batch;
use bench::open_point::OpenPoint;
use bench::record::{ASKED_CONFIDENCE, ClubRecord, Lengths, LetPass, Line, Record, RecordReading, Verdict};
use look::{
    Action, ButtonKind, Cell, Column, Icon, Nav, Table, Tone, definitions, empty_state, link_button, rich, section,
    table, tag,
};
use maud::{Markup, html};
use serde::Deserialize;
use trade::job::JobState;
use trade::model::{Model, as_it_came};
use trade::plan::PlannedPart;
use trade::reading::What;
use words::{Words, text};

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

async fn index(State(app): State<App>, Reader(w): Reader, Asked(query): Asked<IndexQuery>) -> PageResult {
    let finished = app.finished_jobs(query.below, PAGE + 1).await?;
    let shown = &finished[..finished.len().min(PAGE as usize)];
    let earlier = shown.last().filter(|_| finished.len() > shown.len()).map(|j| j.number);
    let open = app.job_names(&[JobState::Planned]).await?;
    let list = |caption: &str, when: &str, jobs: &[JobLine]| {
        let row = |job: &JobLine| {
            let day = job.finished_at.map_or(job.due, |at| w.day_of(at));
            vec![
                Cell(
                    html! { a.job-link href={ "/records/" (job.number) } { (text!(w, "record-job-of", job = job.number, player = job.player)) } },
                ),
                Cell::from(job.clubs.join(" ")),
                Cell::from(w.date(day)),
            ]
        };
        table(&Table {
            caption: &w.text(caption),
            columns: ["record-head-job", "record-head-clubs", when].map(|id| Column::words(w.text(id))).to_vec(),
            rows: jobs.iter().map(row).collect(),
            cards: true,
            ..Table::default()
        })
    };
    let body = html! {
        p.actions { (link_button("/capability", &w.text("page-capability"), ButtonKind::Quiet, None, "")) " " (link_button("/learned", &w.text("record-learned"), ButtonKind::Quiet, None, "")) " " (link_button("/exports", &w.text("export-title"), ButtonKind::Quiet, Some(Icon::Export), "")) }
        @if finished.is_empty() && open.is_empty() {
            (empty_state(&w.text("record-none"), &w.text("record-none-next"), &[Action { href: "/bench", label: &w.text("frame-bench"), primary: true }]))
        }
        @if !shown.is_empty() { (section(&w.text("record-finished"), &html! {}, &list("record-finished-jobs", "record-head-finished", shown))) }
        @if let Some(below) = earlier { p.actions { (link_button(&format!("/records?below={below}"), &w.text("record-earlier"), ButtonKind::Quiet, None, "")) } }
        @if !open.is_empty() { (section(&w.text("record-at-bench"), &html! {}, &list("record-at-bench-jobs", "record-head-due", &open))) }
    };
    let title = w.text("record-titles");
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Records, body, ..Framed::default() })
        .await?
        .into_response())
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let record = app.record(job).await?;
    let models = app.models(None).await?;
    let body = html! {
        p.actions.no-print {
            (link_button(&format!("/api/v1/jobs/{job}/record"), &w.text("record-as-file"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button(&format!("/records/{job}/ledger"), &w.text("ledger-link"), ButtonKind::Quiet, None, ""))
            (link_button(&format!("/records/{job}/player"), &w.text("player-title"), ButtonKind::Quiet, Some(Icon::Print), ""))
            @if record.state == JobState::Finished { (super::again::again_link(&w, "job", &job.to_string())) }
            (link_button(&format!("/records/{job}/bill"), &text!(w, "price-bill", job = job), ButtonKind::Quiet, Some(Icon::Print), ""))
        }
        (summary(&w, &record, &models))
        @for club in &record.clubs { (club_part(&w, &record, club, &models)) }
    };
    let crumb = text!(w, "record-crumb", job = job, player = record.player, state = record.state);
    let title = w.text("record-title");
    let page =
        framed(&w, &app, Framed { title: &title, active: Nav::Records, crumb, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

fn summary(w: &Words, record: &Record, models: &[Model]) -> Markup {
    let mut rows = vec![
        (w.text("record-shop"), html! { (record.shop) }),
        (
            w.text("record-player"),
            html! { (text!(w, "record-player-hand", player = record.player, hand = record.hand)) },
        ),
        (w.text("record-due"), html! { (w.date(record.due)) }),
        (w.text("record-set"), html! { (w.tell(&record.rule)) }),
    ];
    if !record.hands.is_empty() {
        rows.push((w.text("record-made-by"), html! { (record.hands.join(", ")) }));
    }
    if let Some(last) = record.last_reading_at {
        rows.push((w.text("record-last-reading"), html! { (w.moment(last)) }));
    }
    if let Some(reference) = &record.reference {
        let figures = [
            Some(w.club_number(&reference.number)),
            reference.swing_weight_points.map(|points| w.swing_weight(points)),
            reference.total_mass_g.map(|mass_g| w.mass(mass_g)),
            reference.length_mm.map(|length_mm| w.length(length_mm)),
            reference.cpm.map(|cpm| say::value(w, What::Cpm, cpm)),
            Some(&reference.scale).filter(|s| !s.is_empty()).map(|s| text!(w, "record-reference-read-on", scale = s)),
        ];
        let figures: Vec<String> = figures.into_iter().flatten().collect();
        rows.push((w.text("record-reference"), html! { (figures.join(", ")) }));
    }
    for batch in &record.batches {
        rows.push((w.text("record-adhesive"), html! { (batch_words(w, batch, models)) }));
    }
    definitions(&rows)
}

pub(super) fn batch_words(w: &Words, batch: &Batch, models: &[Model]) -> String {
    let adhesive = models.iter().find(|m| m.code() == batch.adhesive).map_or(batch.adhesive.as_str(), Model::name);
    let more = |before: String, next: String| text!(w, "record-more", a = before, b = next);
    let mut said = text!(
        w,
        "record-batch",
        batch = batch.number,
        adhesive = adhesive,
        lot = batch.lot,
        mixed_at = batch.mixed_at,
        by = batch.by
    );
    if let Some(reason) = &batch.cold_reason {
        said = more(said, text!(w, "record-batch-cold", room_c = batch.room_c, reason = reason));
    }
    if let Some(reason) = &batch.taken_back {
        said = more(said, text!(w, "record-batch-taken-back", reason = reason));
    }
    said
}

fn club_part(w: &Words, record: &Record, club: &ClubRecord, models: &[Model]) -> Markup {
    let target = &club.target;
    let name = w.club(&target.club_kind, &target.number);
    let heads = [
        "record-value",
        "record-sheet",
        "record-built",
        "record-verdict",
        "record-off-by",
        "record-tolerance",
        "record-chance",
    ];
    section(
        &text!(w, "record-club", club = name),
        &html! { span.small { (text!(w, "record-card", card = club.card)) } },
        &html! {
            // The columns of all clubs stand under each other.
            div.record-lines { (table(&Table {
                caption: &text!(w, "record-club-lines", club = name),
                columns: heads
                    .iter().enumerate().map(|(i, head)| Column { head: w.text(head).into(), figures: i > 0 && i != 3 }).collect(),
                rows: club.lines.iter().map(|one| line_row(w, one)).collect(),
                cards: true,
                ..Table::default()
            })) }
            (verdict_words(w, club))
            p { (parts_words(w, club, models)) @if let Some(lengths) = &club.lengths { " " (lengths_words(w, lengths)) } }
            @for pass in &club.let_pass { p { (tag(Tone::Care, &w.text("record-override-tag"))) " "
                (override_words(w, record, pass)) } }
            @for passed in &club.passed { p { (tag(Tone::Care, &w.text("record-open-tag"))) " "
                (text!(w, "record-open", step = record.step_name(&passed.step), points = passed.points.iter().map(OpenPoint::fact).collect::<Vec<_>>(),
                    reason = passed.reason, by = passed.by, at_at = passed.at)) } }
            details { summary { (w.text("record-margins")) }
                ul.plain { @for margin in &club.margins { li { (w.told(&margin.fact)) " " span.small { (text!(w, "rules-clause", clause = margin.clause)) @if let Some(basis) = &margin.basis { ", " (w.told(basis)) } } } } }
                p.small { (w.text("record-margins-means")) }
            }
            details { summary { (w.text("record-readings")) }
                ul.plain { @for r in &club.readings { (reading_line(w, record, r)) } }
            }
        },
    )
}

fn override_words(w: &Words, record: &Record, pass: &LetPass) -> String {
    match (pass.batch, &pass.step) {
        (Some(batch), _) => text!(
            w,
            "record-override-batch",
            batch = batch,
            strength = pass.strength,
            reason = pass.reason,
            by = pass.by,
            at_at = pass.at
        ),
        (None, step) => text!(
            w,
            "record-override",
            step = record.step_name(step.as_deref().unwrap_or_default()),
            reason = pass.reason,
            by = pass.by,
            at_at = pass.at
        ),
    }
}

fn reading_line(w: &Words, record: &Record, r: &RecordReading) -> Markup {
    let reading = &r.reading;
    let (step, what) = (record.step_name(&reading.step), reading.what);
    let strong = |_: &str, inner: &str| html! { strong { (inner) } };
    html! {
        li.struck[!r.stands] {
            @if what == What::Done { (rich!(w, "record-step-done", strong, step = step)) } @else {
                (rich!(w, "record-reading", strong, step = step, what = what, read = say::as_read(w, what, reading.value, &reading.typed)))
            }
            @if let Some(f) = &reading.forecast {
                span.small { " " (text!(w, "record-reading-expected", forecast = say::forecast(w, what, f.value, f.band),
                    difference = say::difference(w, what, reading.value - f.value))) }
            }
            @if r.doubted { " " (tag(Tone::Doubt, &w.text("record-doubted"))) }
            @if reading.insisted { " " (tag(Tone::Care, &w.text("record-stood-by"))) }
            @if let Some(reason) = &reading.taken_back { " " (text!(w, "record-reading-taken-back", reason = reason)) }
            span.small { " " (text!(w, "record-by", by = reading.by, at_at = reading.at)) }
        }
    }
}

/// How long a club is with its cap and without, which of the two the sheet means, and what the rules measure.
fn lengths_words(w: &Words, lengths: &Lengths) -> String {
    let Lengths { to_cap_mm, to_shaft_end_mm, by_rules_mm, sheet_to, read } = *lengths;
    let id = if read { "record-lengths-built" } else { "record-lengths-asked" };
    let figures = [
        ("to_cap_mm", words::figure(&to_cap_mm)),
        ("to_shaft_end_mm", words::figure(&to_shaft_end_mm)),
        ("by_rules_mm", words::figure(&by_rules_mm)),
        ("sheet_to", words::figure(&sheet_to)),
    ];
    w.text_with(id, &figures)
}

/// The parts of a club by the names of their models, its cut and its batches.
fn parts_words(w: &Words, club: &ClubRecord, models: &[Model]) -> String {
    let part = |part: &PlannedPart| {
        if as_it_came::is(&part.model) {
            let id = if part.weighed { "record-part-came" } else { "record-part-came-unweighed" };
            return w.text_with(id, &[("kind", words::figure(&part.kind)), ("mass_g", words::figure(&part.mass_g))]);
        }
        let name = models.iter().find(|m| m.code() == part.model).map_or(part.model.as_str(), Model::name);
        let (kind, code, mass_g) = (part.kind, &part.code, part.mass_g);
        // “Tip weight 2 g” says what it is: the kind before it would say so twice.
        let kind = w.tell(&kind);
        let says_itself = name.to_lowercase().starts_with(&kind.to_lowercase());
        let name = if says_itself { name.to_owned() } else { text!(w, "record-part-name", kind = kind, name = name) };
        if part.lot.is_empty() {
            text!(w, "record-part", name = name, code = code, mass_g = mass_g)
        } else {
            text!(w, "record-part-lot", name = name, code = code, mass_g = mass_g, lot = part.lot)
        }
    };
    let mut parts = club.parts.iter().map(part);
    let first = parts.next().unwrap_or_default();
    let parts = parts.fold(first, |before, next| text!(w, "record-more", a = before, b = next));
    let adapter = club.parts.iter().find_map(|part| {
        models.iter().find_map(|model| match model {
            Model::Adapter(adapter) if adapter.code == part.model => Some(adapter_words(w, adapter, &club.target)),
            _ => None,
        })
    });
    let adapter = adapter.map(|set| if set.is_empty() { set } else { format!("{set}.") });
    let batches: Vec<String> = club.batches.iter().map(ToString::to_string).collect();
    let said = [
        Some(text!(w, "record-parts", parts = parts)),
        adapter.filter(|set| !set.is_empty()),
        club.cut_shaft_mm.map(|cut_mm| text!(w, "record-cut", cut_mm = cut_mm)),
        (!batches.is_empty()).then(|| text!(w, "record-glued", n = batches.len(), batches = batches.clone())),
    ];
    said.into_iter().flatten().collect::<Vec<_>>().join(" ")
}

fn line_row(w: &Words, line: &Line) -> Vec<Cell> {
    let show = |value: f64| say::value(w, line.what, value);
    let band = |half: f64| text!(w, "record-plus-minus", figure = say::band(w, line.what, half));
    let built = match (line.built, line.band) {
        (Some(value), Some(half)) => say::forecast(w, line.what, value, half),
        _ => w.text("record-not-read"),
    };
    let what = if line.within_set { text!(w, "record-within-set", what = line.what) } else { w.tell(&line.what) };
    vec![
        Cell::from(what),
        Cell::from(line.target.map_or_else(String::new, show)),
        Cell::from(built),
        Cell(match line.verdict {
            Verdict::In => tag(Tone::Good, &w.tell(&Verdict::In)),
            Verdict::Out => tag(Tone::Bad, &w.tell(&Verdict::Out)),
            Verdict::TooClose => tag(Tone::Care, &w.tell(&Verdict::TooClose)),
            Verdict::NotRead => html! {},
        }),
        Cell::from(line.difference.map_or_else(String::new, |off| say::difference(w, line.what, off))),
        Cell::from(line.target.and(line.tolerance).map_or_else(String::new, band)),
        Cell::from(line.probability.map_or_else(String::new, |share| percent(w, share))),
    ]
}

/// A probability as a share in a hundred that never claims to be certain, nor the confidence at which a value is called in
/// where it falls short of it.
fn percent(w: &Words, probability: f64) -> String {
    let asked = ASKED_CONFIDENCE * 100.0;
    match probability * 100.0 {
        p if p > 99.9 => w.text("record-chance-over"),
        p if p < 0.1 => w.text("record-chance-under"),
        p if p < asked && p.round() >= asked => text!(w, "record-chance-share", of_share = (p * 10.0).floor() / 1000.0),
        p if !(1.0..=99.0).contains(&p) => text!(w, "record-chance-share", of_share = p / 100.0),
        p => text!(w, "record-chance-whole", of_share = p / 100.0),
    }
}

/// How near to its target the swing weight must come out to be called in. For the builder: on paper the verdict is enough.
fn verdict_words(w: &Words, club: &ClubRecord) -> Markup {
    let swing_weight = club.lines.iter().find(|line| line.what == What::SwingWeight);
    let Some(line) = swing_weight.filter(|line| line.probability.is_some()) else { return html! {} };
    html! {
        p.small.no-print {
            @match (line.guard_band, line.tolerance) {
                (Some(guard), Some(tolerance)) => { (text!(w, "record-called-in", within_points = (tolerance - guard).max(0.0))) }
                _ if line.reach.is_none() => { (w.text("record-never-in")) }
                _ => {}
            }
            @if let Some(reach) = &line.reach { " " (w.sentence(reach)) }
        }
    }
}
