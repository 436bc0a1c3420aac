//! The sheet that a player keeps: one page to print and to frame.

use super::club_beam::shape_of;
use super::{Framed, PageResult, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::player_sheet::{Felt, MadeOf, PlayerSheet};
use look::{DrawnClub, Nav, qr_code, set_drawing, whole_and_fraction};
use maud::{Markup, html};
use quantity::decimal;
use trade::job::JobState;
use trade::kind::Hand;
use trade::model::PartKind;
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/records/{job}/player", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let sheet = app.player_sheet(job).await?;
    let body = html! {
        p.no-print {
            (w.text("player-for-print")) " " a href={ "/records/" (job) } { (w.text("player-full-record")) }
        }
        (paper(&w, &sheet))
    };
    let title = w.text("player-title");
    let crumb = text!(w, "record-job-of", job = job, player = sheet.player);
    let page =
        framed(&w, &app, Framed { title: &title, active: Nav::Records, crumb, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

/// A figure in the reader's unit, without its sign: the head of its column has that.
fn bare(w: &Words, what: What, value: f64) -> String {
    match what {
        What::SwingWeight => w.swing_weight(value),
        What::FinishedLength => {
            let shown = w.length(value);
            shown.strip_suffix(w.length_sign()).map_or(shown.clone(), |figure| figure.trim_end().to_owned())
        }
        What::TotalMass => w.mass_figure(value),
        What::Cpm => w.printed(&decimal(value, 0)),
        _ => w.printed(&decimal(value, 1)),
    }
}

fn paper(w: &Words, sheet: &PlayerSheet) -> Markup {
    let hand = w.tell(&sheet.hand);
    let set = text!(w, "player-set", n = sheet.clubs.len(), hand = hand);
    let set = match sheet.last_reading_at.filter(|_| sheet.state == JobState::Finished) {
        Some(at) => text!(w, "player-set-finished", set = set, at = w.date(w.day_of(at))),
        None => text!(w, "player-with", a = set, b = w.text("player-draft")),
    };
    let drawn: Vec<DrawnClub> = sheet
        .clubs
        .iter()
        .filter_map(|club| {
            club.length_to_cap_mm.map(|length_mm| DrawnClub {
                shape: shape_of(club.kind),
                length_mm,
                lie_deg: club.lie_deg,
                name: w.club_short(&club.kind, &club.number),
                length: bare(w, What::FinishedLength, length_mm),
            })
        })
        .collect();
    html! {
        article.player-sheet {
            header {
                p.shop { (sheet.shop) }
                h2.long[sheet.player.chars().count() > 26] { (sheet.player) }
                p.set { (set) }
            }
            // Wider than a phone: moved by a finger, or by the keys.
            div.player-wide tabindex="0" role="region" aria-label=(w.text("player-table")) {
                (set_drawing(w, &drawn, sheet.hand == Hand::Left))
                (figures(w, sheet))
            }
            @if let Some(felt) = &sheet.felt { p.felt-means { (felt_means(w, felt)) } }
            div.made-of { @for line in made_of(w, sheet) { p { (line) } } }
            p.promised { (w.text("player-lengths")) @if let Some(promised) = promised(w, sheet) { " " (promised) } }
            footer {
                p.builder { @if let Some(builder) = &sheet.builder { (text!(w, "player-builder", builder = builder)) } }
                div.code { p { (text!(w, "player-job", job = sheet.job_number)) } (qr_code(&format!("job {}", sheet.job_number))) }
            }
        }
    }
}

fn figures(w: &Words, sheet: &PlayerSheet) -> Markup {
    let column = |what: What| {
        let sign = if what == What::TotalMass { w.mass_sign() } else { w.length_sign() };
        text!(w, "player-column", what = what.key(), sign = sign)
    };
    let shown = |what: What, value: Option<f64>| {
        let text = value.map_or_else(|| w.text("player-nothing"), |value| bare(w, what, value));
        let (whole, fraction) = whole_and_fraction(&text);
        html! { (whole) @if !fraction.is_empty() { span.fraction { (fraction) } } }
    };
    html! {
        table.player-figures {
            caption.hidden { (w.text("player-table")) }
            thead {
                tr { td {} @for what in &sheet.columns { th colspan="2" scope="colgroup" { (column(*what)) } } }
                tr.pair { th scope="col" { span.hidden { (w.text("player-club")) } }
                    @for _ in &sheet.columns { th scope="col" { (w.text("player-asked")) } th scope="col" { (w.text("player-built")) } } }
            }
            tbody {
                @for club in &sheet.clubs {
                    tr { th scope="row" { (w.club_short(&club.kind, &club.number)) }
                        @for pair in &club.figures { td.asked { (shown(pair.what, pair.asked)) } td.built { (shown(pair.what, pair.built)) } } }
                }
                @if let Some(felt) = &sheet.felt {
                    tr.felt { th scope="row" { (w.text("player-felt")) }
                        @for what in &sheet.columns {
                            @let read = felt.figures.iter().find(|figure| figure.what == *what);
                            td {} td { @if let Some(figure) = read { (shown(*what, Some(figure.value))) } }
                        } }
                }
            }
        }
    }
}

fn felt_means(w: &Words, felt: &Felt) -> String {
    let club = felt.kind.map_or_else(|| w.club_number(&felt.number), |kind| w.club(&kind, &felt.number));
    match felt.read_on {
        Some(day) => text!(w, "player-felt-means-read", club = club, read_on = w.date(day)),
        None => text!(w, "player-felt-means", club = club),
    }
}

/// Heads, shafts and grips in a line each; where the soft side lies with the shafts, the tape with the grips.
fn made_of(w: &Words, sheet: &PlayerSheet) -> Vec<String> {
    let with = |line: String, more: String| text!(w, "player-with", a = line, b = more);
    let line = |made_of: &MadeOf| {
        let line = text!(w, "player-made-of", kind = made_of.kind.key(), models = w.list(&made_of.models));
        match (made_of.kind, sheet.soft_side, sheet.wraps.map(|wraps| wraps.full)) {
            (PartKind::Shaft, Some(side), _) => with(line, text!(w, "player-soft-side", soft_side = side)),
            (PartKind::Grip, _, Some(n)) if n > 0 => with(line, text!(w, "player-wraps", n = n)),
            _ => line,
        }
    };
    sheet.made_of.iter().map(line).collect()
}

/// What the shop promises of the quantities that the sheet shows.
fn promised(w: &Words, sheet: &PlayerSheet) -> Option<String> {
    let promised = sheet.promised.filter(|_| sheet.columns.contains(&What::SwingWeight))?;
    let id = if sheet.columns.contains(&What::Cpm) { "player-promised-cpm" } else { "player-promised" };
    Some(w.text_with(
        id,
        &[
            ("swing_weight_points", words::figure(&promised.swing_weight_points)),
            ("length_mm", words::figure(&promised.length_mm)),
            ("loft_deg", words::figure(&promised.loft_deg.max(promised.lie_deg))),
            ("tolerance_cpm", words::figure(&promised.cpm)),
        ],
    ))
}
