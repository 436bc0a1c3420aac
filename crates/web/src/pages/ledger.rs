//! The ledger of a job: everything that was written of it, in its order, and the chain that seals it. Prints well.

use super::records::batch_words;
use super::{Framed, PageResult, framed, say};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::ledger::{Ledger, LedgerEntry, LedgerReading};
use bench::seal::{FoundFault, PRINTED_DIGITS, Sealed, Verified};
use jiff::Timestamp;
use look::{ButtonKind, Cell, Column, Icon, Nav, Table, Tone, definitions, link_button, section, table, tag};
use maud::{Markup, html};
use trade::event_kind::EventKind;
use trade::model::{Model, as_it_came};
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/records/{job}/ledger", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let ledger = app.ledger(job).await?;
    let models = app.models(None).await?;
    let body = html! {
        p.no-print { (w.text("ledger-means")) }
        p.actions.no-print {
            (link_button(&format!("/api/v1/jobs/{job}/ledger"), &w.text("ledger-as-file"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button(&format!("/api/v1/jobs/{job}/ledger/entries"), &w.text("ledger-as-csv"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button(&format!("/records/{job}"), &w.text("record-title"), ButtonKind::Quiet, None, ""))
        }
        (summary(&w, &ledger))
        (parts(&w, &ledger, &models))
        @if !ledger.record.batches.is_empty() { (batches(&w, &ledger, &models)) }
        (margins(&w, &ledger))
        div.ledger-entries { (entries(&w, &ledger)) }
        (seal(&w, &ledger.seal))
    };
    let record = &ledger.record;
    let crumb = text!(w, "record-crumb", job = job, player = record.player, state = record.state);
    let title = w.text("ledger-title");
    let page =
        framed(&w, &app, Framed { title: &title, active: Nav::Records, crumb, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

fn summary(w: &Words, ledger: &Ledger) -> Markup {
    let record = &ledger.record;
    let mut rows = vec![
        (w.text("record-shop"), html! { (record.shop) }),
        (w.text("record-due"), html! { (w.date(record.due)) }),
        (w.text("record-set"), html! { (w.tell(&record.rule)) }),
    ];
    if !record.hands.is_empty() {
        rows.push((w.text("record-made-by"), html! { (record.hands.join(", ")) }));
    }
    if ledger.seal.entries > 0 {
        let (tone, id) =
            if ledger.seal.intact { (Tone::Good, "seal-short-intact") } else { (Tone::Bad, "seal-short-broken") };
        rows.push((w.text("ledger-digest"), tag(tone, &w.text(id))));
    }
    definitions(&rows)
}

/// Whether the record is as it was sealed, in one line.
fn state(w: &Words, seal: &Verified) -> Markup {
    html! {
        @if !seal.intact { (tag(Tone::Bad, &text!(w, "seal-broken", n = seal.faults.len()))) }
        @else if seal.entries == 0 { (w.text("seal-none")) }
        @else { (tag(Tone::Good, &text!(w, "seal-intact", n = seal.entries))) }
    }
}

fn columns<'a>(w: &Words, ids: &[&str], figures: &[usize]) -> Vec<Column<'a>> {
    let column = |(at, id): (usize, &&str)| Column { head: w.text(id).into(), figures: figures.contains(&at) };
    ids.iter().enumerate().map(column).collect()
}

fn parts(w: &Words, ledger: &Ledger, models: &[Model]) -> Markup {
    let mut rows = Vec::new();
    for club in &ledger.record.clubs {
        for part in &club.parts {
            let came = as_it_came::is(&part.model);
            let name = models.iter().find(|model| model.code() == part.model).map_or(part.model.as_str(), Model::name);
            rows.push(vec![
                Cell::from(w.club_short(&club.target.club_kind, &club.target.number)),
                Cell::from(w.tell(&part.kind)),
                Cell::from(if came { "–" } else { name }),
                Cell::from(part.code.as_str()),
                Cell::from(w.mass(part.mass_g)),
                Cell::from(part.lot.as_str()),
            ]);
        }
    }
    let heads = [
        "ledger-part-club",
        "ledger-part-kind",
        "ledger-part-name",
        "ledger-part-code",
        "ledger-part-mass",
        "ledger-part-lot",
    ];
    let title = w.text("ledger-parts");
    let list = Table { caption: &title, columns: columns(w, &heads, &[4]), rows, cards: true, ..Table::default() };
    section(&title, &html! {}, &html! { div.ledger-entries { (table(&list)) } })
}

fn batches(w: &Words, ledger: &Ledger, models: &[Model]) -> Markup {
    let moment = |at: Option<Timestamp>| Cell::from(at.map_or_else(|| "–".to_owned(), |at| w.moment(at)));
    let rows = ledger.record.batches.iter().map(|batch| {
        let clock = ledger.clocks.iter().find(|clock| clock.batch == batch.number);
        let glued = ledger.record.clubs.iter().filter(|club| batch.clubs.contains(&club.club));
        let glued: Vec<String> = glued.map(|club| w.club_short(&club.target.club_kind, &club.target.number)).collect();
        vec![
            Cell::from(batch.number.to_string()),
            Cell::from(batch_words(w, batch, models)),
            moment(clock.and_then(|clock| clock.usable_until)),
            moment(clock.and_then(|clock| clock.handling_from)),
            moment(clock.and_then(|clock| clock.cured_from)),
            Cell::from(glued.join(" ")),
        ]
    });
    let heads = [
        "ledger-batch",
        "ledger-batch-adhesive",
        "ledger-batch-usable",
        "ledger-batch-handling",
        "ledger-batch-cured",
        "ledger-batch-clubs",
    ];
    let title = w.text("ledger-batches");
    let list = Table {
        caption: &title,
        columns: columns(w, &heads, &[]),
        rows: rows.collect(),
        cards: true,
        ..Table::default()
    };
    section(&title, &html! {}, &table(&list))
}

fn margins(w: &Words, ledger: &Ledger) -> Markup {
    let clubs = ledger.record.clubs.iter().filter(|club| !club.margins.is_empty());
    section(
        &w.text("ledger-margins"),
        &html! {},
        &html! {
            ul.plain {
                @for club in clubs {
                    @let all = club.margins.iter().map(|margin| w.told(&margin.fact));
                    @let said = all.reduce(|before, next| text!(w, "record-more", a = before, b = next)).unwrap_or_default();
                    li { (text!(w, "ledger-margin-club", club = w.club(&club.target.club_kind, &club.target.number), margin = said)) }
                }
            }
            p.small { (w.text("record-margins-means")) }
        },
    )
}

fn entries(w: &Words, ledger: &Ledger) -> Markup {
    let heads = [
        "ledger-entry",
        "ledger-when",
        "ledger-club",
        "ledger-what",
        "ledger-read",
        "ledger-expected",
        "ledger-difference",
        "ledger-note",
        "ledger-digest",
    ];
    let title = w.text("ledger-entries");
    let list = Table {
        caption: &title,
        columns: columns(w, &heads, &[0, 4, 5, 6]),
        rows: ledger.entries.iter().map(|entry| entry_row(w, ledger, entry)).collect(),
        cards: true,
        ..Table::default()
    };
    section(&title, &html! {}, &table(&list))
}

fn entry_row(w: &Words, ledger: &Ledger, entry: &LedgerEntry) -> Vec<Cell> {
    let club = entry.slot.and_then(|slot| ledger.record.clubs.iter().find(|club| club.slot == slot));
    let read = |of: &dyn Fn(&LedgerReading) -> Option<String>| {
        let read = entry.reading.as_ref().filter(|reading| reading.what != What::Done);
        Cell::from(read.and_then(of).unwrap_or_default())
    };
    let when = match (entry.at, entry.by.is_empty()) {
        (Some(at), true) => w.moment(at),
        (Some(at), false) => text!(w, "ledger-by", at_at = at, by = entry.by),
        (None, _) => String::new(),
    };
    vec![
        Cell::from(entry.entry.to_string()),
        Cell(html! { span.ledger-when { (when) } }),
        Cell::from(club.map_or_else(String::new, |club| w.club_short(&club.target.club_kind, &club.target.number))),
        Cell::from(what(w, entry)),
        read(&|r| Some(say::as_read(w, r.what, r.value, &r.typed))),
        read(&|r| Some(say::forecast(w, r.what, r.forecast?, r.forecast_band?))),
        read(&|r| Some(say::difference(w, r.what, r.difference?))),
        Cell(note(w, entry)),
        Cell(html! { code.small { (entry.sha256.get(..8).unwrap_or_default()) } }),
    ]
}

fn what(w: &Words, entry: &LedgerEntry) -> String {
    let kind = w.tell(&entry.kind);
    match (&entry.reading, entry.kind) {
        (Some(reading), _) if reading.what == What::Done => text!(w, "ledger-row-done", step = reading.step),
        // A step that is named for what it reads says it once.
        (Some(reading), _) if reading.step.to_lowercase() == w.tell(&reading.what).to_lowercase() => {
            reading.step.clone()
        }
        (Some(reading), _) => text!(w, "ledger-row", step = reading.step, what = reading.what),
        (None, Sealed::Event) => deed_words(w, &entry.deed),
        (None, _) => match (entry.about_entry, entry.batch) {
            (Some(about), _) => text!(w, "ledger-about", kind = kind, entry = about),
            (None, Some(batch)) => text!(w, "ledger-of-batch", kind = kind, batch = batch),
            (None, None) => kind,
        },
    }
}

/// What was done, by the key that an entry of the log has.
#[must_use]
pub fn deed_words(w: &Words, deed: &str) -> String {
    // The log keeps the key of an earlier version.
    let again = EventKind::PlanMadeAgain;
    let deed = if EventKind::from(deed) == again { "plan_made_again" } else { deed };
    text!(w, "ledger-deed", deed = deed)
}

fn note(w: &Words, entry: &LedgerEntry) -> Markup {
    let reading = entry.reading.as_ref();
    html! {
        @if !entry.intact { (tag(Tone::Bad, &w.text("ledger-changed"))) " " }
        @if let Some(reading) = reading {
            @if reading.doubted { (tag(Tone::Doubt, &w.text("record-doubted"))) " " }
            @if let Some(ended) = reading.ended { (w.tell(&ended)) " " }
            @if let Some(other) = reading.replaces_entry { (text!(w, "ledger-replaces", entry = other)) }
        }
        @if let Some(reason) = &entry.reason { (w.told(reason)) }
    }
}

fn seal(w: &Words, seal: &Verified) -> Markup {
    section(
        &w.text("seal-title"),
        &html! {},
        &html! {
                    div.ledger-seal {
                        p { (state(w, seal)) }
                        @if !seal.faults.is_empty() { ul.plain { @for fault in &seal.faults { li { (fault_line(w, fault)) } } } }
                        @if let Some(from) = seal.kept_from.filter(|_| seal.late_entries > 0) {
                            p { (text!(w, "seal-late", from_at = from, n = seal.late_entries)) }
                        }
                        @if let Some(end) = &seal.end_sha256 {
                            p { (w.text("seal-end")) " " code { (in_groups(end)) } }
                            p.small { (w.text("seal-proves")) " "
        (w.text("seal-verify-by")) " "
                                code { "setwright record verify " (seal.job_number) " --end " (end.get(..PRINTED_DIGITS).unwrap_or(end)) } }
                        }
                    }
                },
    )
}

/// Digits in groups of eight, as an eye can hold them against others.
fn in_groups(digits: &str) -> String {
    let digits: Vec<char> = digits.chars().collect();
    digits.chunks(8).map(|group| group.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
}

/// What is wrong with an entry, as a line.
#[must_use]
pub fn fault_line(w: &Words, found: &FoundFault) -> String {
    let fault = w.tell(&found.fault);
    match (found.entry, found.table) {
        (Some(entry), Some(table)) => {
            text!(w, "seal-fault-line", entry = entry, kind = table, fault = fault, row = found.row)
        }
        (None, Some(table)) => text!(w, "seal-fault-line-unsealed", kind = table, fault = fault, row = found.row),
        (Some(entry), None) => text!(w, "seal-fault-line-entry", entry = entry, fault = fault),
        (None, None) => fault,
    }
}
